//! Holds the files that are made from the program's own types against those types: JSON Schemas and pages of reference.

use schemars::{JsonSchema, Schema, schema_for};
use std::path::Path;

/// Set, the files are written anew instead of compared.
const UPDATE: &str = "DETENT_UPDATE_KEPT";

/// Holds the schema of `T`, which is printed, against `assets/schema/NAME-VERSION.json`.
#[track_caller]
pub(super) fn check_printed<T: JsonSchema>(name: &str, version: u32) {
    check_schema(&schema_for!(T), &format!("{name}-{version}.json"));
}

/// Holds a schema against the file of this name in `assets/schema`.
#[track_caller]
pub(super) fn check_schema(schema: &Schema, file: &str) {
    let made = serde_json::to_string_pretty(schema).expect("JSON") + "\n";
    check(&format!("assets/schema/{file}"), &made);
}

/// Holds a text against the file at this path of the project.
#[track_caller]
pub(super) fn check(path: &str, made: &str) {
    let file = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(path);
    if std::env::var_os(UPDATE).is_some() {
        let folder = file.parent().expect("it is in a folder");
        std::fs::create_dir_all(folder).expect("it can be made");
        std::fs::write(&file, made).expect("the file can be written");
    }
    let kept = std::fs::read_to_string(&file).expect("the file is kept");
    assert_eq!(
        kept, made,
        "{path} has changed: raise the version of a format if readers would break, then run this test with {UPDATE}=1"
    );
}
