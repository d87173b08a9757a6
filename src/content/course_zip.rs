//! A course as one zip: read with distrust, written the same each time. Nothing of it is run, and nothing is written:
//! what comes out are files in memory with paths that are safe on every system.

use super::course_file::{
    Course, PROGRAM_VERSION, PackedFile, read_course, read_packed_course, sums,
};
use super::error::{ContentError, Problem, ZipProblem};
use super::own_library::{MOST_BYTES, OwnFile, OwnPlace, check_amount};
use super::reader::{LONGEST_BYTES, without_mark};
use detent_syntax::document::Document;
use std::collections::{BTreeMap, BTreeSet};
use std::io::{Cursor, Read, Write};
use zip::read::ZipFile;
use zip::result::{ZipError, ZipResult};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipArchive, ZipWriter};

/// Length of the record that ends a zip, without a comment (APPNOTE 6.3.10, section 4.3.16, from memory).
const END_RECORD: usize = 22;

/// Most bytes of a file name; systems take 255 at least, together with what they put behind it.
const LONGEST_NAME: usize = 120;

/// Most bytes that one packed byte may become. Deflate comes to a thousand; texts come to ten.
const MOST_RATIO: u64 = 100;

/// Files up to this length may be packed as well as they can be.
const SHORT: u64 = 4096;

/// Names of devices on Windows, with or without an ending (Microsoft, "Naming Files, Paths, and Namespaces", from memory).
const DEVICES: [&str; 6] = ["con", "prn", "aux", "nul", "conin$", "conout$"];
const NUMBERED_DEVICES: [&str; 2] = ["com", "lpt"];

/// Kinds of a file in the upper half of its attributes (POSIX, `sys/stat.h`, values from memory): all of them, and an ordinary file.
const KIND_BITS: u32 = 0o170_000;
const ORDINARY_FILE: u32 = 0o100_000;

/// A course that was one zip.
#[derive(Clone, Debug, PartialEq)]
pub struct CourseZip {
    /// What it says of itself.
    pub course: Course,
    /// All its files, by path, the manifest among them. Each is called as the zip, `/` and its path inside.
    pub files: Vec<OwnFile>,
}

/// Reads a zip: where it is safe, whether it is a course of a format that is known, and whether its files are those that
/// were packed. What is in the files beside the manifest is not read.
///
/// # Errors
/// [`Problem::TooLong`], [`Problem::TooMuch`], [`Problem::Zip`] with the path of a file inside as its field, and what
/// [`read_course`](super::read_course) gives for the manifest.
pub fn read_course_zip(file: &str, bytes: &[u8]) -> Result<CourseZip, Vec<ContentError>> {
    let mut archive = open(file, bytes).map_err(|error| vec![error])?;
    let mut entries = Entries {
        file,
        archive: &mut archive,
    };
    let paths = entries.paths().map_err(|error| vec![error])?;
    let manifest = paths.get(OwnPlace::COURSE_FILE);
    let manifest = manifest.ok_or_else(|| vec![refused(file, "", ZipProblem::NoManifest)])?;
    let text = entries.read(*manifest, OwnPlace::COURSE_FILE);
    let text = text.map_err(|error| vec![error])?;
    let named = format!("{file}/{}", OwnPlace::COURSE_FILE);
    // A newer format may hold files that this program would only take for strange.
    if let Err(errors) = read_packed_course(&named, &text, &[])
        && errors
            .iter()
            .any(|error| matches!(error.problem, Problem::NewerCourse { .. }))
    {
        return Err(errors);
    }
    let files = entries.files(&paths).map_err(|error| vec![error])?;
    let course = read_packed_course(&named, &text, &files)?;
    Ok(CourseZip { course, files })
}

/// Packs the files of a course into a zip that is called `file`, and notes in its manifest which they are. The same files
/// give the same bytes, in whatever order they come.
///
/// # Errors
/// What is wrong with the manifest, and all that [`read_course_zip`] would say of the zip.
pub fn pack_course(file: &str, files: &[OwnFile]) -> Result<Vec<u8>, Vec<ContentError>> {
    let mut files = files.to_vec();
    let sums = sums(&files);
    let manifest = (files.iter_mut()).find(|own| own.place == OwnPlace::Course);
    let manifest = manifest.ok_or_else(|| vec![refused(file, "", ZipProblem::NoManifest)])?;
    let course = read_course(&manifest.file, &manifest.bytes, None)?;
    let packed = packed_manifest(manifest, &course, &sums);
    let unpackable = || vec![refused(file, "", ZipProblem::Unpackable)];
    manifest.bytes = packed.ok_or_else(unpackable)?.into_bytes();
    let bytes = write(&files).map_err(|_| unpackable())?;
    // Nothing is packed that could not be opened.
    read_course_zip(file, &bytes)?;
    Ok(bytes)
}

/// The text of a manifest with these files in it, and the version of this program; all else of it as it was.
fn packed_manifest(manifest: &OwnFile, course: &Course, sums: &[PackedFile]) -> Option<String> {
    let text = std::str::from_utf8(&manifest.bytes).ok()?;
    let mut document = Document::parse(without_mark(text)).ok()?;
    let lines: Vec<String> = (sums.iter())
        .map(|packed| {
            let PackedFile { path, sha256 } = packed;
            format!("        (path: {path:?}, sha256: {sha256:?}),\n")
        })
        .collect();
    let files = match lines.is_empty() {
        true => "[]".to_owned(),
        false => format!("[\n{}    ]", lines.concat()),
    };
    let program = format!("{PROGRAM_VERSION:?}");
    let version = ("packed_with", program.as_str(), ["version", "plan"]);
    let listed = ("files", files.as_str(), ["packed_with", "plan"]);
    for (name, value, after) in [version, listed] {
        match document.value(name) {
            Some(_) => document.set(name, value),
            None => document.insert_field("", name, value, &after),
        }
        .ok()?;
    }
    // It says what it said, and what was packed.
    let again = read_course(&manifest.file, document.text().as_bytes(), None).ok()?;
    let expected = Course {
        packed_with: PROGRAM_VERSION.to_owned(),
        files: sums.to_vec(),
        ..course.clone()
    };
    (again == expected).then(|| document.text().to_owned())
}

fn write(files: &[OwnFile]) -> ZipResult<Vec<u8>> {
    let by_path: BTreeMap<String, &OwnFile> =
        files.iter().map(|own| (own.inner_path(), own)).collect();
    let by_path = by_path.iter();
    zip_of(by_path.map(|(path, own)| (path.as_str(), own.bytes.as_slice())))
}

/// One zip of these files, paths and bytes, in their order; the same files give the same bytes.
///
/// # Errors
/// It would be larger than a zip can be, or two files have one path.
pub fn zip_of<'a>(files: impl IntoIterator<Item = (&'a str, &'a [u8])>) -> ZipResult<Vec<u8>> {
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::DEFAULT)
        .unix_permissions(0o644)
        .system(System::Unix);
    for (path, bytes) in files {
        writer.start_file(path, options)?;
        writer.write_all(bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

fn refused(file: &str, path: &str, problem: ZipProblem) -> ContentError {
    // A name may have 64 KiB, and nobody reads that.
    let field: String = path.chars().take(LONGEST_NAME).collect();
    ContentError {
        field,
        ..ContentError::of_file(file, Problem::Zip(problem))
    }
}

/// The directory of a zip that is all of the file: nothing stands before it, behind it or between its pieces, and it is of
/// the plain form without the fields for more than 4 GiB.
fn open<'a>(file: &str, bytes: &'a [u8]) -> Result<ZipArchive<Cursor<&'a [u8]>>, ContentError> {
    let problem = |problem| refused(file, "", problem);
    if bytes.len() > MOST_BYTES {
        let problem = Problem::TooLong { most: MOST_BYTES };
        return Err(ContentError::of_file(file, problem));
    }
    let end = bytes.len().checked_sub(END_RECORD);
    let end = end.filter(|end| bytes[*end..].starts_with(b"PK\x05\x06"));
    let end = match end {
        Some(end) => end,
        None if bytes.starts_with(b"PK") => return Err(problem(ZipProblem::Torn)),
        None => return Err(problem(ZipProblem::NoZip)),
    };
    let short = |at: usize| u64::from(u16::from_le_bytes([bytes[end + at], bytes[end + at + 1]]));
    let long = |at: usize| short(at) | short(at + 2) << 16;
    let (disk, directory_disk, here, entries) = (short(4), short(6), short(8), short(10));
    let (size, start) = (long(12), long(16));
    if [disk, directory_disk, here, entries].contains(&0xffff)
        || [size, start].contains(&0xffff_ffff)
    {
        return Err(problem(ZipProblem::Zip64));
    }
    if (disk, directory_disk) != (0, 0) || here != entries {
        return Err(problem(ZipProblem::SeveralParts));
    }
    // Two folders may be listed too.
    check_amount(file, entries.saturating_sub(2) as usize, 0)?;
    if start + size != end as u64 {
        return Err(problem(ZipProblem::Torn));
    }
    let archive = ZipArchive::new(Cursor::new(bytes)).map_err(|error| of_zip(file, "", &error))?;
    if archive.has_duplicate_names() {
        return Err(problem(ZipProblem::SameName));
    }
    if archive.len() as u64 != entries || archive.offset() != 0 {
        return Err(problem(ZipProblem::Torn));
    }
    Ok(archive)
}

/// What the library that reads zips says, in our terms.
fn of_zip(file: &str, path: &str, error: &ZipError) -> ContentError {
    let problem = match error {
        ZipError::UnsupportedArchive(_) | ZipError::InvalidPassword => ZipProblem::Encrypted,
        ZipError::CompressionMethodNotSupported(_) => ZipProblem::Method,
        // The library adds to these.
        _ => ZipProblem::Torn,
    };
    refused(file, path, problem)
}

/// What is listed in a zip.
struct Entries<'a, 'b> {
    file: &'a str,
    archive: &'a mut ZipArchive<Cursor<&'b [u8]>>,
}

impl Entries<'_, '_> {
    /// The files by path, with their numbers. All paths are safe, and no two mean one file on any system.
    fn paths(&mut self) -> Result<BTreeMap<String, usize>, ContentError> {
        let mut paths = BTreeMap::new();
        let mut folded = BTreeSet::new();
        let mut bytes_in_all: u64 = 0;
        for number in 0..self.archive.len() {
            let entry = self.archive.by_index_raw(number);
            let entry = entry.map_err(|error| of_zip(self.file, "", &error))?;
            let shown = String::from_utf8_lossy(entry.name_raw()).into_owned();
            let problem = |problem| refused(self.file, &shown, problem);
            let path = checked_path(entry.name_raw()).map_err(problem)?;
            if !folded.insert(folded_path(&path)) {
                return Err(problem(ZipProblem::SameName));
            }
            check_entry(&entry).map_err(problem)?;
            bytes_in_all = bytes_in_all.saturating_add(entry.size());
            check_amount(self.file, 0, bytes_in_all.try_into().unwrap_or(usize::MAX))?;
            if entry.size() > LONGEST_BYTES as u64 {
                let most = LONGEST_BYTES;
                return Err(ContentError {
                    field: shown,
                    ..ContentError::of_file(self.file, Problem::TooLong { most })
                });
            }
            paths.insert(path, number);
        }
        // The directory and what it points to say the same, and no byte is of two files.
        let consistent = self.archive.validate_header_consistency();
        consistent.map_err(|error| of_zip(self.file, "", &error))?;
        Ok(paths)
    }

    /// The bytes of one file, as many as are listed.
    fn read(&mut self, number: usize, path: &str) -> Result<Vec<u8>, ContentError> {
        let entry = self.archive.by_index(number);
        let mut entry = entry.map_err(|error| of_zip(self.file, path, &error))?;
        let size = entry.size();
        let mut bytes = Vec::new();
        // One byte more than listed tells a bomb from an honest file.
        let read = (&mut entry).take(size + 1).read_to_end(&mut bytes);
        if bytes.len() as u64 != size {
            return Err(refused(self.file, path, ZipProblem::Size));
        }
        read.map_err(|_| refused(self.file, path, ZipProblem::Torn))?;
        Ok(bytes)
    }

    /// All files of the course; there is nothing else in the zip but the folders that they are in.
    fn files(&mut self, paths: &BTreeMap<String, usize>) -> Result<Vec<OwnFile>, ContentError> {
        let folder = |path: &str| {
            let path = path.strip_suffix('/');
            path.is_some_and(|path| OwnPlace::FOLDERS.iter().any(|(name, _)| *name == path))
        };
        let mut files = Vec::new();
        for (path, number) in paths.iter().filter(|(path, _)| !folder(path)) {
            let Some(place) = OwnPlace::of(path) else {
                return Err(refused(self.file, path, ZipProblem::Strange));
            };
            check_amount(self.file, files.len() + 1, 0)?;
            files.push(OwnFile {
                place,
                file: format!("{}/{path}", self.file),
                bytes: self.read(*number, path)?,
            });
        }
        Ok(files)
    }
}

/// Refuses what is no plain file or folder.
fn check_entry<R: Read>(entry: &ZipFile<'_, R>) -> Result<(), ZipProblem> {
    let kind = entry.external_attributes() >> 16 & KIND_BITS;
    if entry.is_dir() {
        return match (entry.size(), entry.compressed_size()) {
            (0, 0..=2) => Ok(()),
            _ => Err(ZipProblem::Strange),
        };
    }
    if entry.is_symlink() || ![0, ORDINARY_FILE].contains(&kind) {
        return Err(ZipProblem::Link);
    }
    if entry.encrypted() {
        return Err(ZipProblem::Encrypted);
    }
    let known = [CompressionMethod::Stored, CompressionMethod::Deflated];
    if !known.contains(&entry.compression()) {
        return Err(ZipProblem::Method);
    }
    if entry.size() > SHORT && entry.size() / MOST_RATIO > entry.compressed_size() {
        return Err(ZipProblem::Ratio);
    }
    Ok(())
}

/// A path that leads nowhere but into the course, on every system; a folder's ends with `/`.
fn checked_path(raw: &[u8]) -> Result<String, ZipProblem> {
    let path = std::str::from_utf8(raw).map_err(|_| ZipProblem::NameCharacters)?;
    if path.starts_with(['/', '\\']) {
        return Err(ZipProblem::Absolute);
    }
    if path.contains('\\') {
        return Err(ZipProblem::Backslash);
    }
    if path.contains(':') {
        return Err(ZipProblem::Drive);
    }
    let names = path.strip_suffix('/').unwrap_or(path);
    for name in names.split('/') {
        check_name(name)?;
    }
    Ok(path.to_owned())
}

fn check_name(name: &str) -> Result<(), ZipProblem> {
    if ["", ".", ".."].contains(&name) {
        return Err(ZipProblem::Upward);
    }
    if name.len() > LONGEST_NAME {
        return Err(ZipProblem::LongName);
    }
    // Letters with marks that stand alone are left out too: some systems join them, and two names become one.
    let plain = |c: char| c.is_alphanumeric() || " -_.".contains(c);
    if !name.chars().all(plain) || name.ends_with(['.', ' ']) || name.starts_with(' ') {
        return Err(ZipProblem::NameCharacters);
    }
    let stem = name.split('.').next().unwrap_or(name).trim_end();
    let stem = stem.to_lowercase();
    let numbered = NUMBERED_DEVICES.iter().any(|device| {
        let rest = stem.strip_prefix(device);
        rest.is_some_and(|rest| rest.chars().count() == 1 && rest.contains(char::is_numeric))
    });
    if numbered || DEVICES.contains(&stem.as_str()) {
        return Err(ZipProblem::Reserved);
    }
    Ok(())
}

/// The same for two paths that some system takes for one.
fn folded_path(path: &str) -> String {
    path.trim_end_matches('/').to_uppercase().to_lowercase()
}
