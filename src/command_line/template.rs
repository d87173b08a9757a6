//! `detent new`: a file to begin with, which `detent check` takes.

use super::Failure;
use super::output::Output;
use detent_content::{Language, Texts, builtin, disk};
use detent_simulation::names;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

names! {
    /// What can be begun. The name of its file, where none is given, is in [`usual_name`].
    Template {
        /// A job.
        Scenario = "scenario",
        /// A board.
        Board = "board",
        /// The guide of a job.
        Guide = "guide",
        /// The manifest of a course.
        Course = "course",
        /// An examination.
        Examination = "examination",
        /// The plan of a class.
        Plan = "plan",
    }
}

#[derive(Debug, clap::Args)]
pub(super) struct NewArgs {
    #[arg(value_name = "KIND")]
    kind: Template,
    #[arg(value_name = "FILE")]
    file: Option<PathBuf>,
}

/// The board that a new one begins as.
const FIRST_BOARD: &str = "assets/boards/lone-lamp.ron";

/// Writes a file to begin with and says where, in a folder that is made if there is none; never over one that is there.
pub(super) fn begin(args: &NewArgs, language: Language) -> Result<(), Failure> {
    let usual = PathBuf::from(usual_name(args.kind));
    let path = args.file.as_ref().unwrap_or(&usual);
    let file = path.display().to_string();
    let text = text(args.kind, path, language)?;
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    if let Some(folder) = folder {
        std::fs::create_dir_all(folder)
            .map_err(|error| Failure::Folder(folder.display().to_string(), error))?;
    }
    disk::write_new(path, text.as_bytes()).map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => Failure::NeverOver(file.clone()),
        _ => Failure::Write(file.clone(), error),
    })?;
    let told = Texts::load(language).with("cli-new-written", &[("file", file.into())]);
    Output::standard().line(told)
}

/// The name of a file that nobody has named.
fn usual_name(kind: Template) -> &'static str {
    match kind {
        Template::Scenario => "new-job.ron",
        Template::Board => "new-board.ron",
        Template::Guide => "new-job.guide.ron",
        Template::Course => "course.ron",
        Template::Examination => "new.examination.ron",
        Template::Plan => "new.plan.ron",
    }
}

fn text(kind: Template, path: &Path, language: Language) -> Result<String, Failure> {
    let code = language.code();
    Ok(match kind {
        Template::Scenario
        | Template::Guide
        | Template::Course
        | Template::Examination
        | Template::Plan => {
            builtin::text(&format!("assets/templates/{kind}.{code}.ron"))?.to_owned()
        }
        Template::Board => {
            let stem = path.file_stem().unwrap_or_default().to_string_lossy();
            let texts = Texts::load(language);
            let first = builtin::text(FIRST_BOARD)?;
            // What the file says of itself in front is true of the first one only.
            let body = first.find('(').map_or(first, |start| &first[start..]);
            let named = body
                .replacen("\"lone-lamp\"", &format!("{stem:?}"), 1)
                .replacen(
                    "\"board-lone-lamp\"",
                    &format!("{:?}", texts.get("cli-new-board-name")),
                    1,
                );
            format!("// {}\n{named}", texts.get("cli-new-board"))
        }
    })
}
