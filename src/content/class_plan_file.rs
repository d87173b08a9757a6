//! Plans of classes: `<name>.plan.ron`, which `detent class --plan` begins a class with.

use super::error::{Allowed, ContentError, Problem, Wanted};
use super::reader::{Finding, Page, first, repeated};
use detent_training::practice::drill::MOST_QUESTIONS;
use detent_training::practice::{ClassPlan, MOST_SEATS};

/// How a plan's file ends.
pub const PLAN_ENDING: &str = ".plan.ron";

/// Longest time until a class opens by itself, min: a day.
const LONGEST_WAIT_MIN: u32 = 1_440;
/// Longest time that a class is open, min: 30 days.
const LONGEST_CLASS_MIN: u32 = 43_200;

/// Reads a plan whose jobs are among `known`: file names without folder and ending.
///
/// # Errors
/// The first mistake in the file.
pub fn read_class_plan(
    file: &str,
    bytes: &[u8],
    known: &[&str],
) -> Result<ClassPlan, ContentError> {
    check_class_plan(file, bytes, known).map_err(first)
}

/// The same for whoever wants to know all that is wrong.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn check_class_plan(
    file: &str,
    bytes: &[u8],
    known: &[&str],
) -> Result<ClassPlan, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let plan: ClassPlan = page.parse().map_err(|error| vec![error])?;
    let mut findings: Vec<Finding> = Vec::new();
    if plan.title.trim().is_empty() {
        findings.push(("title".to_owned(), Problem::Nothing(Wanted::Text)));
    }
    if plan.jobs.is_empty() && plan.drills.is_empty() {
        findings.push((String::new(), Problem::Nothing(Wanted::JobOrDrill)));
    }
    for (n, job) in plan.jobs.iter().enumerate() {
        if !known.contains(&job.as_str()) {
            findings.push((format!("jobs[{n}]"), Problem::NoJob(job.clone())));
        }
    }
    let jobs: Vec<&str> = plan.jobs.iter().map(String::as_str).collect();
    findings.extend(repeated(&page, &jobs, |n| format!("jobs[{n}]")));
    let drills: Vec<&str> = plan.drills.iter().map(|drill| drill.skill.name()).collect();
    findings.extend(repeated(&page, &drills, |n| format!("drills[{n}].skill")));
    let mut check = |field: String, found: Option<u32>, most: u32, allowed: Allowed| {
        if let Some(found) = found.filter(|found| !(1..=most).contains(found)) {
            let found = f64::from(found);
            findings.push((field, Problem::OutOfRange { found, allowed }));
        }
    };
    for (n, drill) in plan.drills.iter().enumerate() {
        let (field, questions) = (format!("drills[{n}].questions"), Some(drill.questions));
        check(field, questions, MOST_QUESTIONS as u32, Allowed::Questions);
    }
    for (field, found, most, allowed) in [
        (
            "opens_in_minutes",
            plan.opens_in_minutes,
            LONGEST_WAIT_MIN,
            Allowed::OpeningMinutes,
        ),
        (
            "minutes",
            plan.minutes,
            LONGEST_CLASS_MIN,
            Allowed::ClassMinutes,
        ),
        ("seats", plan.seats, MOST_SEATS, Allowed::Seats),
    ] {
        check(field.to_owned(), found, most, allowed);
    }
    page.judge_all(plan, findings)
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_training::practice::{ClassPurpose, PlannedDrill, Skill};

    const GOOD: &str = "(
    title: \"Tuesday\",
    kind: Examination,
    jobs: [\"one\", \"two\"],
    drills: [
        (skill: LampReading),
        (skill: Proof, questions: 5),
    ],
    opens_in_minutes: Some(10),
    minutes: Some(90),
    seats: Some(24),
    only_listed: true,
)";

    fn read(text: &str) -> Result<ClassPlan, String> {
        let read = read_class_plan("t.plan.ron", text.as_bytes(), &["one", "two"]);
        read.map_err(|error| error.to_string())
    }

    #[test]
    fn a_plan_is_read_with_what_it_leaves_out() {
        let drill = |skill, questions| PlannedDrill { skill, questions };
        let plan = ClassPlan {
            title: "Tuesday".to_owned(),
            kind: ClassPurpose::Examination,
            jobs: vec!["one".to_owned(), "two".to_owned()],
            drills: vec![drill(Skill::LampReading, 10), drill(Skill::Proof, 5)],
            opens_in_minutes: Some(10),
            minutes: Some(90),
            seats: Some(24),
            only_listed: true,
        };
        assert_eq!(read(GOOD), Ok(plan));
        let least = read("(title: \"T\", drills: [(skill: Metering)])").expect("sound");
        assert_eq!(least.kind, ClassPurpose::Practice);
        assert_eq!((least.minutes, least.seats), (None, None));
        assert!(least.jobs.is_empty() && !least.only_listed);
    }

    #[test]
    fn a_mistake_is_named_with_its_line_and_field() {
        for (from, to, told) in [
            ("\"Tuesday\"", "\" \"", ":2: title:"),
            ("\"two\"", "\"three\"", ":4: jobs[1]:"),
            ("\"two\"", "\"one\"", ":4: jobs[1]:"),
            ("Proof", "LampReading", ":7: drills[1].skill:"),
            ("questions: 5", "questions: 51", ":7: drills[1].questions:"),
            ("questions: 5", "questions: 0", ":7: drills[1].questions:"),
            ("Some(10)", "Some(1441)", ":9: opens_in_minutes:"),
            ("Some(90)", "Some(0)", ":10: minutes:"),
            ("Some(24)", "Some(2001)", ":11: seats:"),
            ("Examination", "Party", ":3: kind:"),
        ] {
            let error = read(&GOOD.replace(from, to)).expect_err(to);
            assert!(error.contains(told), "{to}: {error}");
        }
        assert!(read("(title: \"T\")").is_err());
    }
}
