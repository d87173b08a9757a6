//! Holds the JSON Schemas in `assets/schema` against the types that are printed.

use schemars::{JsonSchema, schema_for};
use std::path::Path;

/// Set, the schemas are written anew instead of compared.
const UPDATE: &str = "DETENT_UPDATE_KEPT";

/// Holds the schema of `T` against `assets/schema/NAME-VERSION.json`.
#[track_caller]
pub(super) fn check<T: JsonSchema>(name: &str, version: u32) {
    let made = serde_json::to_string_pretty(&schema_for!(T)).expect("JSON") + "\n";
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/schema");
    let path = folder.join(format!("{name}-{version}.json"));
    if std::env::var_os(UPDATE).is_some() {
        std::fs::create_dir_all(&folder).expect("it can be made");
        std::fs::write(&path, &made).expect("the schema can be written");
    }
    let kept = std::fs::read_to_string(&path).expect("the schema is kept");
    assert_eq!(
        kept, made,
        "the format has changed: raise its version if readers would break, then run this test with {UPDATE}=1"
    );
}
