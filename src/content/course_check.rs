//! What is wrong with the files of a course together, beside what is wrong with each.

use super::course_file::{differences, read_course};
use super::error::{ContentError, Problem, ZipProblem};
use super::file_check::FileReport;
use super::own_library::{OwnFile, OwnPlace, files_at};
use super::reader::without_mark;
use super::{ContentLibrary, Course, FileKind, disk};
use detent_training::authoring::{AuthoringFinding, PlacedFinding};
use std::path::Path;

/// The files of a course on the disk: in a folder, or in one zip.
///
/// # Errors
/// What [`files_at`] gives; [`ZipProblem::NoManifest`] for a folder without one.
pub fn course_files(path: &Path) -> Result<Vec<OwnFile>, Vec<ContentError>> {
    let (files, _) = files_at(path)?;
    if !files.iter().any(|own| own.place == OwnPlace::Course) {
        let problem = Problem::Zip(ZipProblem::NoManifest);
        return Err(vec![ContentError::of_file(&disk::name(path), problem)]);
    }
    Ok(files)
}

/// The manifest among the files of a course, if it is sound in itself.
pub fn manifest(files: &[OwnFile]) -> Option<Course> {
    let own = files.iter().find(|own| own.place == OwnPlace::Course)?;
    read_course(&own.file, &own.bytes, None).ok()
}

/// Reports of a course that cannot be opened, one for each file that is told of.
pub fn unopened(errors: Vec<ContentError>) -> Vec<FileReport> {
    let mut reports: Vec<FileReport> = Vec::new();
    for error in errors {
        if !reports.iter().any(|report| report.file == error.file) {
            reports.push(FileReport::unreadable(&error.file, FileKind::Course));
        }
        let report = reports.iter_mut().find(|report| report.file == error.file);
        let line = error.source_line.as_ref().map(|line| line.text.clone());
        if let Some(report) = report {
            // The text is not at hand, but the line is.
            let before = "\n".repeat(error.line.saturating_sub(1));
            report.put_error(&(before + &line.unwrap_or_default()), error);
        }
    }
    reports
}

/// Adds to the reports of the files what is wrong with them together: names that are taken, numbers of the course, and
/// what was changed since it was packed.
pub fn check_together(mut builtin: ContentLibrary, files: &[OwnFile], reports: &mut [FileReport]) {
    let errors = builtin.add(files.to_vec()).err();
    for error in errors.into_iter().flatten() {
        let own = files.iter().find(|own| own.file == error.file);
        let report = reports.iter_mut().find(|report| report.file == error.file);
        if let Some((own, report)) = own.zip(report) {
            report.put_error(without_mark(&String::from_utf8_lossy(&own.bytes)), error);
        }
    }
    let own = files.iter().find(|own| own.place == OwnPlace::Course);
    if let Some((own, course)) = own.zip(manifest(files)) {
        let found = differences(&course, files).into_iter();
        let found = found.map(|(field, _, path)| PlacedFinding {
            field,
            finding: AuthoringFinding::ChangedSincePacked(path),
        });
        let report = reports.iter_mut().find(|report| report.file == own.file);
        if let Some(report) = report {
            let text = String::from_utf8_lossy(&own.bytes);
            report.put(without_mark(&text), found.collect());
        }
    }
}
