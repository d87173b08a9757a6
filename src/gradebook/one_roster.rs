//! The marks for a school's own gradebook: OneRoster 1.2, CSV binding (1EdTech, 2022).
//!
//! Jobs are line items in one category, marks are results; identifiers are ours, and learners are told by their pseudonyms.
//! Whoever takes the files in maps those to the school's own: a class on one computer knows neither organizations nor users.

use super::ClassGrades;
use super::class_grades::MOST_POINTS;
use super::marks_csv::{Table, points_cell, safe_cell};
use super::utc::day;

/// Identifier of the class, of its one category, of the session and of the school in every file.
const CLASS: &str = "detent-class";
const CATEGORY: &str = "detent-jobs";
const SESSION: &str = "detent-session";
const SCHOOL: &str = "detent-school";

/// Every file that a manifest has to tell of, in its order, and whether it is there.
const FILES: [(&str, bool); 21] = [
    ("academicSessions", false),
    ("categories", true),
    ("classes", false),
    ("classResources", false),
    ("courses", false),
    ("courseResources", false),
    ("demographics", false),
    ("enrollments", false),
    ("lineItemLearningObjectiveIds", false),
    ("lineItems", true),
    ("lineItemScoreScales", false),
    ("orgs", false),
    ("resources", false),
    ("resultLearningObjectiveIds", false),
    ("results", true),
    ("resultScoreScales", false),
    ("roles", false),
    ("scoreScales", false),
    ("userProfiles", false),
    ("userResources", false),
    ("users", false),
];

fn manifest() -> String {
    let mut table = Table::new(["propertyName", "value"]);
    table.push(["manifest.version", "1.0"]);
    table.push(["oneroster.version", "1.2"]);
    for (file, is_there) in FILES {
        let how = if is_there { "bulk" } else { "absent" };
        table.push([format!("file.{file}").as_str(), how]);
    }
    table.push(["source.systemName", "Detent"]);
    table.push(["source.systemCode", CLASS]);
    table.into_text()
}

fn categories() -> String {
    let mut table = Table::new(["sourcedId", "status", "dateLastModified", "title", "weight"]);
    table.push([CATEGORY, "", "", "Jobs", ""]);
    table.into_text()
}

fn line_items(grades: &ClassGrades, titles: &[String], days: (&str, &str)) -> String {
    let mut table = Table::new([
        "sourcedId",
        "status",
        "dateLastModified",
        "title",
        "description",
        "assignDate",
        "dueDate",
        "classSourcedId",
        "categorySourcedId",
        "academicSessionSourcedId",
        "resultValueMin",
        "resultValueMax",
        "schoolSourcedId",
    ]);
    let (least, most) = (points_cell(0.0), points_cell(MOST_POINTS));
    for (job, title) in grades.book.jobs().iter().zip(titles) {
        let (job, title) = (safe_cell(job), safe_cell(title));
        let cells = [
            &job, "", "", &title, "", days.0, days.1, CLASS, CATEGORY, SESSION, &least, &most,
            SCHOOL,
        ];
        table.push(cells);
    }
    table.into_text()
}

fn results(grades: &ClassGrades) -> String {
    let mut table = Table::new([
        "sourcedId",
        "status",
        "dateLastModified",
        "lineItemSourcedId",
        "studentSourcedId",
        "scoreStatus",
        "score",
        "scoreDate",
        "comment",
        "textScore",
        "classSourcedId",
        "inProgress",
        "incomplete",
        "late",
        "missing",
    ]);
    for learner in &grades.learners {
        for job in grades.book.jobs() {
            let mark = grades.mark(learner.seat, job);
            // What has no mark has no result: what was not verified is no zero.
            let Some(points) = mark.points else { continue };
            let counting = grades.book.counting(learner.seat, job);
            let marked_ms = mark
                .changed_ms
                .or(counting.map(|attempt| attempt.finished_ms));
            let (job, score) = (safe_cell(job), points_cell(points));
            let id = format!("{}.{job}", learner.pseudonym);
            let (date, comment) = (day(marked_ms.unwrap_or(0)), safe_cell(mark.comment));
            let cells = [
                id.as_str(),
                "",
                "",
                &job,
                &learner.pseudonym,
                "fully graded",
                &score,
                &date,
                &comment,
                "",
                CLASS,
                "",
                "",
                "",
                "",
            ];
            table.push(cells);
        }
    }
    table.into_text()
}

/// The files by their names. `titles` are those of the jobs, in their order; `begun_ms` and `closes_ms`, ms since 1970, are
/// the days on which the jobs were given and are due.
pub fn one_roster_files(
    grades: &ClassGrades,
    titles: &[String],
    (begun_ms, closes_ms): (u64, u64),
) -> [(&'static str, String); 4] {
    let days = (day(begun_ms), day(closes_ms));
    [
        ("manifest.csv", manifest()),
        ("categories.csv", categories()),
        (
            "lineItems.csv",
            line_items(grades, titles, (&days.0, &days.1)),
        ),
        ("results.csv", results(grades)),
    ]
}
