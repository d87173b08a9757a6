//! The manifest of a course: `course.ron` at the top of its folder or zip. It says what the course is called, who wrote
//! it, and, once it is packed, which bytes belong to it.

use super::error::{Allowed, ContentError, PackedDifference, Problem, Wanted};
use super::own_library::{OwnFile, OwnPlace};
use super::reader::{Finding, Page, repeated};
use super::scenario_file::unwritten;
use detent_training::lesson::Bilingual;
use detent_training::record::sha256_hex;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The format of courses that this program reads and packs.
pub const COURSE_FORMAT: u32 = 1;

/// This program's version.
pub const PROGRAM_VERSION: &str = env!("CARGO_PKG_VERSION");

/// Most numbers of a version.
const MOST_NUMBERS: usize = 4;

/// The digits of a SHA-256.
const SUM_DIGITS: usize = 64;

/// What a course says of itself.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Course {
    /// The format that it is in.
    pub format: u32,
    /// What it is called.
    pub title: Bilingual,
    /// Who wrote it.
    pub author: String,
    /// What others may do with it, such as `CC-BY-4.0`.
    pub license: String,
    /// Its own version: numbers with dots between, such as `1.2`.
    pub version: String,
    /// Its jobs in the order in which they are done, by file name: its own and built-in ones. It may be empty.
    #[serde(default)]
    pub plan: Vec<String>,
    /// The version of the program that packed it; empty where it was not packed.
    #[serde(default)]
    pub packed_with: String,
    /// The files as they were packed; empty where it was not packed.
    #[serde(default)]
    pub files: Vec<PackedFile>,
}

/// A file of a packed course.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PackedFile {
    /// Its path inside the course, such as `boards/key-pad.ron`.
    pub path: String,
    /// SHA-256 of its bytes, in lower-case hexadecimal digits.
    pub sha256: String,
}

/// What is read of a course of any format.
#[derive(Deserialize)]
struct Layout {
    format: u32,
    #[serde(default)]
    packed_with: String,
}

impl Course {
    /// What tells that this course was packed by a newer program than this one, where it was.
    pub(super) fn newer_program(&self) -> Option<Problem> {
        let newer = numbers(&self.packed_with) > numbers(PROGRAM_VERSION);
        newer.then(|| Problem::NewerProgram(self.packed_with.clone()))
    }
}

/// Reads a manifest. Where `known` is given, the plan may name these jobs only: file names without folder and ending.
///
/// # Errors
/// Every mistake in the file, in its order; [`Problem::NewerCourse`] alone for a newer format.
pub fn read_course(
    file: &str,
    bytes: &[u8],
    known: Option<&[&str]>,
) -> Result<Course, Vec<ContentError>> {
    read_with(file, bytes, |page, course| {
        let jobs: Vec<&str> = course.plan.iter().map(String::as_str).collect();
        let mut findings = repeated(page, &jobs, |n| format!("plan[{n}]"));
        let unknown = jobs.iter().enumerate();
        let unknown = unknown.filter(|(_, job)| known.is_some_and(|known| !known.contains(job)));
        findings.extend(unknown.map(|(n, job)| {
            let problem = Problem::NoJob((*job).to_owned());
            (format!("plan[{n}]"), problem)
        }));
        findings
    })
}

/// Reads the manifest of a course with these files, which have to be those that were packed if it was.
///
/// # Errors
/// As [`read_course`] without the plan, [`Problem::NotAsPacked`].
pub(super) fn read_packed_course(
    file: &str,
    bytes: &[u8],
    files: &[OwnFile],
) -> Result<Course, Vec<ContentError>> {
    read_with(file, bytes, |_, course| {
        let differences = differences(course, files).into_iter();
        let problems = differences.map(|(field, difference, path)| {
            let problem = Problem::NotAsPacked { difference, path };
            (field, problem)
        });
        problems.collect()
    })
}

fn read_with(
    file: &str,
    bytes: &[u8],
    also: impl Fn(&Page<'_>, &Course) -> Vec<Finding>,
) -> Result<Course, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    // A newer format has fields that would only confuse.
    if let Ok(Layout {
        format,
        packed_with,
    }) = page.parse()
        && format > COURSE_FORMAT
    {
        let problem = Problem::NewerCourse {
            format,
            packed_with,
        };
        page.judge_all((), vec![("format".to_owned(), problem)])?;
    }
    let course: Course = page.parse().map_err(|error| vec![error])?;
    let mut findings = check(&page, &course);
    findings.extend(also(&page, &course));
    page.judge_all(course, findings)
}

/// What is wrong with a manifest in itself.
fn check(page: &Page<'_>, course: &Course) -> Vec<Finding> {
    let mut findings: Vec<Finding> = unwritten("title", &course.title).collect();
    if course.format == 0 {
        let problem = Problem::OutOfRange {
            found: 0.0,
            allowed: Allowed::Layout,
        };
        findings.push(("format".to_owned(), problem));
    }
    for (field, text) in [("author", &course.author), ("license", &course.license)] {
        if text.trim().is_empty() {
            findings.push((field.to_owned(), Problem::Nothing(Wanted::Text)));
        }
    }
    let packed_with = Some(&course.packed_with).filter(|version| !version.is_empty());
    let versions = [
        ("version", Some(&course.version)),
        ("packed_with", packed_with),
    ];
    for (field, version) in versions {
        if let Some(version) = version.filter(|version| numbers(version).is_none()) {
            let problem = Problem::NoVersion(version.clone());
            findings.push((field.to_owned(), problem));
        }
    }
    let paths: Vec<&str> = course.files.iter().map(|file| file.path.as_str()).collect();
    findings.extend(repeated(page, &paths, |n| format!("files[{n}].path")));
    for (n, packed) in course.files.iter().enumerate() {
        let place = OwnPlace::of(&packed.path).filter(|place| *place != OwnPlace::Course);
        if place.is_none() {
            findings.push((format!("files[{n}].path"), Problem::Misplaced));
        }
        let digits = (packed.sha256.bytes()).filter(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        if packed.sha256.len() != SUM_DIGITS || digits.count() != SUM_DIGITS {
            findings.push((format!("files[{n}].sha256"), Problem::NoSum));
        }
    }
    findings
}

/// The numbers of a version; none where it is no version.
fn numbers(version: &str) -> Option<Vec<u32>> {
    let number = |text: &str| {
        let plain = text.bytes().all(|b| b.is_ascii_digit());
        let number: u32 = text.parse().ok().filter(|_| plain)?;
        (number.to_string() == text).then_some(number)
    };
    let numbers: Vec<u32> = version.split('.').map(number).collect::<Option<_>>()?;
    (numbers.len() <= MOST_NUMBERS).then_some(numbers)
}

/// Where the files of a course are not those that were packed: field of the manifest, what differs, path inside the
/// course. Nothing where it was not packed.
pub(super) fn differences(
    course: &Course,
    files: &[OwnFile],
) -> Vec<(String, PackedDifference, String)> {
    if course.files.is_empty() {
        return Vec::new();
    }
    let there = sums(files);
    let mut found = Vec::new();
    for (n, packed) in course.files.iter().enumerate() {
        match there.iter().find(|file| file.path == packed.path) {
            None => found.push((
                format!("files[{n}].path"),
                PackedDifference::Gone,
                packed.path.clone(),
            )),
            Some(file) if file.sha256 != packed.sha256 => found.push((
                format!("files[{n}].sha256"),
                PackedDifference::Changed,
                packed.path.clone(),
            )),
            Some(_) => {}
        }
    }
    let listed = |path: &str| course.files.iter().any(|packed| packed.path == path);
    let added = there.into_iter().filter(|file| !listed(&file.path));
    found.extend(added.map(|file| ("files".to_owned(), PackedDifference::Added, file.path)));
    found
}

/// The files beside the manifest, by path, each with its SHA-256.
pub(super) fn sums(files: &[OwnFile]) -> Vec<PackedFile> {
    let beside = files.iter().filter(|file| file.place != OwnPlace::Course);
    let mut sums: Vec<PackedFile> = beside
        .map(|file| PackedFile {
            path: file.inner_path(),
            sha256: sha256_hex(&file.bytes),
        })
        .collect();
    sums.sort_by(|a, b| a.path.cmp(&b.path));
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn versions_are_numbers_with_dots_between() {
        assert_eq!(numbers("1.20"), Some(vec![1, 20]));
        for wrong in ["", "1.", "01", "1.x", "+1", "1.2.3.4.5", "99999999999"] {
            assert_eq!(numbers(wrong), None, "{wrong}");
        }
        assert!(numbers("0.10.0") > numbers("0.9.9"));
        assert!(numbers(PROGRAM_VERSION).is_some());
    }
}
