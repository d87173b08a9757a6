//! `detent course`: a course is packed into one zip, checked, and opened as a folder.

use super::Failure;
use super::check::{HowToReport, ToldFile, counts, judge, print_all, proved};
use super::output::Output;
use super::print::said;
use detent_content::{
    ContentLibrary, Course, CourseZip, FileReport, Language, OwnFile, Texts, Value,
    check_file_unproved, check_together, course_files, disk, manifest, pack_course,
    read_course_zip, unopened,
};
use schemars::JsonSchema;
use serde::Serialize;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub(super) struct CourseArgs {
    #[command(subcommand)]
    command: CourseCommand,
}

#[derive(Debug, clap::Subcommand)]
enum CourseCommand {
    Pack(PackArgs),
    Open(OpenArgs),
    Check(CheckArgs),
}

#[derive(Debug, clap::Args)]
struct PackArgs {
    #[arg(value_name = "FOLDER")]
    folder: PathBuf,
    #[arg(long, value_name = "FILE")]
    to: PathBuf,
}

#[derive(Debug, clap::Args)]
struct OpenArgs {
    #[arg(value_name = "FILE")]
    zip: PathBuf,
    #[arg(long, value_name = "FOLDER")]
    to: PathBuf,
}

#[derive(Debug, clap::Args)]
struct CheckArgs {
    #[arg(value_name = "COURSE")]
    course: PathBuf,
    #[arg(long)]
    prove: bool,
    #[command(flatten)]
    how: HowToReport,
}

/// Version of what `--json` prints.
const VERSION: u32 = 1;

pub(super) fn course(args: &CourseArgs, language: Language) -> Result<(), Failure> {
    let texts = Texts::load(language);
    match &args.command {
        CourseCommand::Pack(args) => pack(args, language, &texts),
        CourseCommand::Open(args) => open(args, language, &texts),
        CourseCommand::Check(args) => check(args, language, &texts),
    }
}

/// Checks a folder as `detent check` does, and packs it if there is no error.
fn pack(args: &PackArgs, language: Language, texts: &Texts) -> Result<(), Failure> {
    let to = disk::name(&args.to);
    let files = course_files(&args.folder).map_err(Failure::Library)?;
    let bytes = pack_course(&to, &files).map_err(Failure::Library)?;
    let (content_library, reports) = reports(&files, true, texts)?;
    let mut out = Output::standard();
    print_all(&mut out, &reports, (&content_library, texts), true)?;
    judge(&reports, false)?;
    disk::write_new(&args.to, &bytes).map_err(|error| not_written(&args.to, error))?;
    if let Some(course) = manifest(&files) {
        out.line(heading(&course, language, texts))?;
    }
    let told = [
        ("file", Value::from(to)),
        ("files", files.len().to_string().into()),
        ("bytes", bytes.len().to_string().into()),
    ];
    out.line(texts.with("cli-course-packed", &told))
}

/// Unpacks a zip whose files can all be read into a new folder.
fn open(args: &OpenArgs, language: Language, texts: &Texts) -> Result<(), Failure> {
    let zip = disk::name(&args.zip);
    let bytes = disk::zip_bytes(&args.zip)?;
    let CourseZip { course, files } = read_course_zip(&zip, &bytes).map_err(Failure::Library)?;
    let mut content_library = ContentLibrary::builtin()?;
    content_library
        .add(files.clone())
        .map_err(Failure::Library)?;
    let inside: Vec<(String, &[u8])> = (files.iter())
        .map(|own| (own.inner_path(), &own.bytes[..]))
        .collect();
    disk::write_folder(&args.to, &inside).map_err(|error| not_written(&args.to, error))?;
    let mut out = Output::standard();
    out.line(heading(&course, language, texts))?;
    let told = [
        ("folder", Value::from(disk::name(&args.to))),
        ("files", files.len().to_string().into()),
    ];
    out.line(texts.with("cli-course-opened", &told))
}

fn not_written(path: &Path, error: io::Error) -> Failure {
    let name = disk::name(path);
    match error.kind() {
        ErrorKind::AlreadyExists => Failure::NeverOver(name),
        _ => Failure::Write(name, error),
    }
}

fn check(args: &CheckArgs, language: Language, texts: &Texts) -> Result<(), Failure> {
    let (files, (content_library, reports)) = match course_files(&args.course) {
        Ok(files) => {
            let reports = reports(&files, args.prove, texts)?;
            (files, reports)
        }
        Err(errors) => {
            let content_library = ContentLibrary::builtin()?;
            (Vec::new(), (content_library, unopened(errors)))
        }
    };
    let course = manifest(&files);
    let mut out = Output::standard();
    if args.how.json {
        out.json(&Told::of(course.as_ref(), &reports, texts))?;
    } else {
        if let Some(course) = course.filter(|_| !args.how.quiet) {
            out.line(heading(&course, language, texts))?;
        }
        print_all(
            &mut out,
            &reports,
            (&content_library, texts),
            args.how.quiet,
        )?;
    }
    judge(&reports, args.how.strict)
}

/// All about each file, with what is built in and the files beside it.
fn reports(
    files: &[OwnFile],
    prove: bool,
    texts: &Texts,
) -> Result<(ContentLibrary, Vec<FileReport>), Failure> {
    let builtin = ContentLibrary::builtin()?;
    // What is wrong with them is told when their turn comes.
    let (mut content_library, _) = builtin.beside(files);
    let named: Vec<(String, Vec<u8>)> = (files.iter())
        .map(|own| (own.file.clone(), own.bytes.clone()))
        .collect();
    let mut reports = match prove {
        true => proved(&mut content_library, &named, texts),
        false => (named.iter())
            .map(|(file, bytes)| check_file_unproved(&content_library, file, bytes))
            .collect(),
    };
    check_together(builtin, files, &mut reports);
    Ok((content_library, reports))
}

/// What a course says of itself, in one line.
pub(super) fn heading(course: &Course, language: Language, texts: &Texts) -> String {
    let args = [
        ("title", Value::from(said(&course.title, language))),
        ("version", course.version.as_str().into()),
        ("author", course.author.as_str().into()),
        ("license", course.license.as_str().into()),
    ];
    texts.with("cli-course-heading", &args)
}

/// All of it, for other programs.
#[derive(Serialize, JsonSchema)]
#[schemars(title = "Report of `detent course check --json`")]
#[serde(deny_unknown_fields)]
struct Told {
    /// Version of this format.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the course says of itself; none where it cannot be opened or its manifest is not sound.
    course: Option<ToldCourse>,
    /// Errors in all files: with one in it a course is not packed, and not opened.
    errors: usize,
    /// Warnings in all files.
    warnings: usize,
    /// The files, in the order in which they were checked.
    files: Vec<ToldFile>,
}

/// What a course says of itself.
#[derive(Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ToldCourse {
    /// Its title in English.
    title_en: String,
    /// Its title in Spanish.
    title_es: String,
    /// Who wrote it.
    author: String,
    /// What others may do with it.
    license: String,
    /// Its own version.
    version: String,
    /// Its jobs in order, by file name without folder and ending.
    plan: Vec<String>,
    /// Version of the program that packed it; none where it was not packed.
    packed_with: Option<String>,
}

impl Told {
    fn of(course: Option<&Course>, reports: &[FileReport], texts: &Texts) -> Told {
        let (errors, warnings) = counts(reports);
        Told {
            version: VERSION,
            course: course.map(ToldCourse::of),
            errors,
            warnings,
            files: reports.iter().map(|r| ToldFile::of(r, texts)).collect(),
        }
    }
}

impl ToldCourse {
    fn of(course: &Course) -> ToldCourse {
        let packed_with = Some(&course.packed_with).filter(|version| !version.is_empty());
        ToldCourse {
            title_en: course.title.en.clone(),
            title_es: course.title.es.clone(),
            author: course.author.clone(),
            license: course.license.clone(),
            version: course.version.clone(),
            plan: course.plan.clone(),
            packed_with: packed_with.cloned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kept_file;

    #[test]
    fn the_kept_schema_is_that_of_the_program() {
        kept_file::check_printed::<Told>("course-check", VERSION);
    }
}
