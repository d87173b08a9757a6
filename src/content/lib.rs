//! Files read into validated types, with errors that name file, line and field.
//!
//! Each reader takes the file's name and its bytes, so that it works the same on a file from disk,
//! on one built into the program and in a test. [`disk`] is the one place that opens files.

mod answers_csv;
#[cfg(not(target_family = "wasm"))]
pub mod attempt_file;
mod authoring_words;
mod board_draft;
mod board_file;
pub mod builtin;
mod catalogue;
mod class_plan_file;
mod complaint_words;
mod content_library;
mod course_check;
mod course_file;
mod course_zip;
mod digest;
pub mod disk;
mod drill_source;
mod drill_words;
mod error;
mod error_words;
mod examination_file;
mod file_check;
mod file_kind;
mod file_schema;
mod film_words;
mod gesture_words;
mod guide_file;
mod handbook;
mod invoice_words;
mod lamp_words;
mod learner_list;
mod machine_file;
mod own_library;
mod parts;
mod preferences;
mod profile_file;
mod profile_folder;
mod reader;
mod replay;
mod scenario_draft;
mod scenario_file;
mod script_file;
mod sheet_words;
mod source_line;
pub mod table_file;
mod text;
mod variants;
mod wash_words;
pub mod wiring;
mod wording;
mod words;

pub use answers_csv::{
    AnswersCsvError, AnswersCsvProblem, answers_csv, day, day_and_time, file_date, read_answers_csv,
};
pub use board_draft::BoardDraft;
pub use board_file::read_board;
pub use catalogue::{Catalogue, read_catalogue};
pub use class_plan_file::{PLAN_ENDING, check_class_plan, read_class_plan};
pub use complaint_words::complaint_words;
pub use content_library::{AttemptSourceError, ContentLibrary, ScenarioSource};
pub use course_check::{check_together, course_files, manifest, unopened};
pub use course_file::{COURSE_FORMAT, Course, PROGRAM_VERSION, PackedFile, read_course};
pub use course_zip::{CourseZip, pack_course, read_course_zip, zip_of};
pub use drill_source::DrillSource;
pub use error::{
    Allowed, Choices, ContentError, NotSayable, PackedDifference, Problem, Wanted, ZipProblem,
};
pub use examination_file::{EXAMINATION_ENDING, check_examination, read_examination};
pub use file_check::{
    FileFinding, FileProof, FileReport, Found, KnownBoards, check_file_in_slices,
    check_file_unproved,
};
pub use file_kind::FileKind;
pub use file_schema::{file_schema, json_form, ron_form};
pub use film_words::DeedWords;
pub use guide_file::{GUIDE_ENDING, check_guide, read_guide};
pub use handbook::{
    CodeKind, HandbookBlock, HandbookSpan, ListMark, instructors_tutorial, read_handbook,
};
pub use invoice_words::InvoiceRow;
pub use learner_list::{LearnerInShort, ListedLearner, listed_learners};
pub use machine_file::{Nominal, read_machine};
pub use own_library::{OwnFile, OwnPlace, own_files, read_own_board};
pub use parts::{Parts, read_added_parts, read_parts};
pub use preferences::{
    CharacterKeys, KeyAction, KeyPlace, Motion, Preferences, SoundVolume, TextSize,
};
pub use profile_file::{
    KeptProfile, LONGEST_NAME, Profile, ProfileError, ProfileStore, read_profile,
};
pub use profile_folder::ProfileFolder;
pub use reader::{Finding, read_checked};
pub use replay::{
    ArrivalAtJob, ReplayError, ReplayedAttempt, arrive_in_slices, replay_attempt,
    replay_attempt_in_slices,
};
pub use scenario_draft::{ScenarioChange, ScenarioDraft, ScenarioSentence};
pub use scenario_file::{KnownBoard, check_scenario, read_scenario};
pub use script_file::{read_script, script_line};
pub use sheet_words::{LampMode, lamp_modes, mode_pictures};
pub use source_line::SourceLine;
pub use text::{Language, Texts, Value};
pub use variants::{JobVariant, JobVariantError, MOST_REFUSED, VariantSeries};
pub use words::Words;
