//! What a file of content is, told by its name and what stands in it.

use super::{EXAMINATION_ENDING, GUIDE_ENDING, OwnPlace, PLAN_ENDING};
use detent_simulation::names;
use detent_training::record::ron_text::Outline;
use std::path::Path;

names! {
    /// A kind of file that authors write. Its text is `file-kind-{name}`.
    FileKind {
        /// A job.
        Scenario = "scenario",
        /// A board.
        Board = "board",
        /// The guide of a job.
        Guide = "guide",
        /// An examination.
        Examination = "examination",
        /// The parts of an own library.
        Parts = "parts",
        /// The manifest of a course.
        Course = "course",
        /// The plan of a class.
        Plan = "plan",
    }
}

/// Fields at the top that one kind has and no other.
const FIELDS: [(&str, FileKind); 16] = [
    ("drills", FileKind::Plan),
    ("opens_in_minutes", FileKind::Plan),
    ("only_listed", FileKind::Plan),
    ("seats", FileKind::Plan),
    ("gesture", FileKind::Board),
    ("connectors", FileKind::Board),
    ("codes", FileKind::Board),
    ("complaint", FileKind::Scenario),
    ("par_minutes", FileKind::Scenario),
    ("fault", FileKind::Scenario),
    ("steps", FileKind::Guide),
    ("jobs", FileKind::Examination),
    ("minutes", FileKind::Examination),
    ("parts", FileKind::Parts),
    ("author", FileKind::Course),
    ("license", FileKind::Course),
];

impl FileKind {
    /// What this file is; a scenario where nothing says otherwise.
    pub fn of(file: &str, bytes: &[u8]) -> FileKind {
        if file.ends_with(GUIDE_ENDING) {
            return FileKind::Guide;
        }
        if file.ends_with(EXAMINATION_ENDING) {
            return FileKind::Examination;
        }
        if file.ends_with(PLAN_ENDING) {
            return FileKind::Plan;
        }
        let text = String::from_utf8_lossy(bytes);
        let outline = Outline::of(&text);
        let fields = outline.fields();
        let told = FIELDS
            .iter()
            .find(|(field, _)| fields.iter().any(|f| f == field));
        let name = Path::new(file).file_name();
        match told {
            Some((_, kind)) => *kind,
            None if name.is_some_and(|name| name == OwnPlace::PARTS_FILE) => FileKind::Parts,
            None if name.is_some_and(|name| name == OwnPlace::COURSE_FILE) => FileKind::Course,
            None => FileKind::Scenario,
        }
    }
}
