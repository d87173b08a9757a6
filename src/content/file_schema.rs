//! The JSON Schema of each kind of file that people write, and the JSON that it describes: what serde makes of the
//! same values.

use super::course_file::Course;
use super::error::ContentError;
use super::file_kind::FileKind;
use super::guide_file::GuideFile;
use super::parts::AddedParts;
use super::reader::Page;
use detent_simulation::controller::Board;
use detent_training::lesson::Scenario;
use detent_training::practice::{ClassPlan, Examination};
use ron::ser::PrettyConfig;
use schemars::{Schema, schema_for};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

/// JSON Schema (draft 2020-12) of this kind of file, its fields in the order of the types.
pub fn file_schema(kind: FileKind) -> Schema {
    match kind {
        FileKind::Scenario => schema_for!(Scenario),
        FileKind::Board => schema_for!(Board),
        FileKind::Guide => schema_for!(GuideFile),
        FileKind::Examination => schema_for!(Examination),
        FileKind::Parts => schema_for!(AddedParts),
        FileKind::Course => schema_for!(Course),
        FileKind::Plan => schema_for!(ClassPlan),
    }
}

/// A file of this kind as JSON. Only its form is looked at, not what [`file_schema`] cannot say.
///
/// # Errors
/// The text is not of this kind.
pub fn json_form(kind: FileKind, file: &str, bytes: &[u8]) -> Result<Value, ContentError> {
    fn of<T: DeserializeOwned + Serialize>(page: &Page<'_>) -> Result<Value, ContentError> {
        let value: T = page.parse()?;
        Ok(serde_json::to_value(&value).expect("files hold plain data under names"))
    }
    let page = Page::open(file, bytes)?;
    match kind {
        FileKind::Scenario => of::<Scenario>(&page),
        FileKind::Board => of::<Board>(&page),
        FileKind::Guide => of::<GuideFile>(&page),
        FileKind::Examination => of::<Examination>(&page),
        FileKind::Parts => of::<AddedParts>(&page),
        FileKind::Course => of::<Course>(&page),
        FileKind::Plan => of::<ClassPlan>(&page),
    }
}

/// JSON of this kind as the text of a file.
///
/// # Errors
/// The value is not of this kind.
pub fn ron_form(kind: FileKind, value: Value) -> Result<String, serde_json::Error> {
    fn of<T: DeserializeOwned + Serialize>(value: Value) -> Result<String, serde_json::Error> {
        let value: T = serde_json::from_value(value)?;
        let text = ron::ser::to_string_pretty(&value, PrettyConfig::default());
        Ok(text.expect("files hold plain data under names"))
    }
    match kind {
        FileKind::Scenario => of::<Scenario>(value),
        FileKind::Board => of::<Board>(value),
        FileKind::Guide => of::<GuideFile>(value),
        FileKind::Examination => of::<Examination>(value),
        FileKind::Parts => of::<AddedParts>(value),
        FileKind::Course => of::<Course>(value),
        FileKind::Plan => of::<ClassPlan>(value),
    }
}
