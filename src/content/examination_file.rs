//! Examinations: `<name>.examination.ron` beside the scenarios that they name.

use super::error::{Allowed, ContentError, Problem, Wanted};
use super::reader::{Finding, Page, first, repeated};
use super::scenario_file::unwritten;
use detent_training::practice::{Examination, SheetPage};

/// How an examination's file ends.
pub const EXAMINATION_ENDING: &str = ".examination.ron";

/// Longest time of an examination, min: a working day.
const LONGEST_MIN: u32 = 480;

/// Read an examination whose jobs are among `known`: file names without folder and ending.
///
/// # Errors
/// The first mistake in the file.
pub fn read_examination(
    file: &str,
    bytes: &[u8],
    known: &[&str],
) -> Result<Examination, ContentError> {
    check_examination(file, bytes, known).map_err(first)
}

/// The same for whoever wants to know all that is wrong.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn check_examination(
    file: &str,
    bytes: &[u8],
    known: &[&str],
) -> Result<Examination, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let examination: Examination = page.parse().map_err(|error| vec![error])?;
    let mut findings: Vec<Finding> = Vec::new();
    findings.extend(unwritten("title", &examination.title));
    if examination.jobs.is_empty() {
        let problem = Problem::Nothing(Wanted::Job);
        findings.push(("jobs".to_owned(), problem));
    }
    for (n, job) in examination.jobs.iter().enumerate() {
        if !known.contains(&job.as_str()) {
            let problem = Problem::NoJob(job.clone());
            findings.push((format!("jobs[{n}]"), problem));
        }
    }
    let jobs: Vec<&str> = examination.jobs.iter().map(String::as_str).collect();
    findings.extend(repeated(&page, &jobs, |n| format!("jobs[{n}]")));
    let pages: Vec<&str> = (examination.sheet.iter())
        .map(|page: &SheetPage| page.name())
        .collect();
    findings.extend(repeated(&page, &pages, |n| format!("sheet[{n}]")));
    if !(1..=LONGEST_MIN).contains(&examination.minutes) {
        let problem = Problem::OutOfRange {
            found: f64::from(examination.minutes),
            allowed: Allowed::ExaminationMinutes,
        };
        findings.push(("minutes".to_owned(), problem));
    }
    page.judge_all(examination, findings)
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = "(
    title: (en: \"Two jobs\", es: \"Dos trabajos\"),
    jobs: [\"one\", \"two\"],
    minutes: 40,
    sheet: [Lamps, Codes],
)";

    fn read(text: &str) -> Result<Examination, String> {
        let read = read_examination("e.examination.ron", text.as_bytes(), &["one", "two"]);
        read.map_err(|error| error.to_string())
    }

    #[test]
    fn a_mistake_is_named_with_its_line_and_field() {
        let good = read(GOOD).expect("sound");
        assert_eq!(good.sheet, [SheetPage::Lamps, SheetPage::Codes]);
        for (from, to, told) in [
            ("\"two\"", "\"three\"", ":3: jobs[1]:"),
            ("\"two\"", "\"one\"", ":3: jobs[1]:"),
            ("40", "0", ":4: minutes:"),
            ("\"Two jobs\"", "\" \"", ":2: title.en:"),
            ("Codes", "Lamps", ":5: sheet[1]:"),
        ] {
            let error = read(&GOOD.replace(from, to)).expect_err(to);
            assert!(error.contains(told), "{to}: {error}");
        }
    }
}
