//! What the program prints as JSON, against the kept schemas.

use crate::schema;
use serde_json::Value;
use std::fs;
use std::path::Path;

/// Holds what the program printed against the kept schema of this name, and gives it back.
#[track_caller]
pub fn fits(schema: &str, printed: &str) -> Value {
    let kept = format!("assets/schema/{schema}.json");
    let kept = Path::new(env!("CARGO_MANIFEST_DIR")).join(kept);
    let kept = fs::read_to_string(kept).expect("the schema is kept");
    let kept: Value = serde_json::from_str(&kept).expect("JSON");
    let value: Value = serde_json::from_str(printed).expect("JSON");
    let wrong = schema::mistakes(&kept, &value);
    assert!(wrong.is_empty(), "{wrong:#?}");
    value
}
