//! Holds JSON against a kept JSON Schema. It knows the keywords that our schemas use and refuses any other,
//! so that nothing goes unchecked. (JSON Schema, draft 2020-12: core and validation.)

use serde_json::Value;

/// What is wrong with `value`, by its path; none when it fits.
pub fn mistakes(schema: &Value, value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    check(schema, schema, value, "$", &mut found);
    found
}

fn check(root: &Value, schema: &Value, value: &Value, path: &str, found: &mut Vec<String>) {
    let keywords = schema.as_object().expect("a schema is an object");
    for (keyword, rule) in keywords {
        let good = match keyword.as_str() {
            "$schema" | "$defs" | "title" | "description" | "format" | "default" => true,
            "$ref" => {
                let place = rule.as_str().and_then(|to| to.strip_prefix('#'));
                let target = place.and_then(|place| root.pointer(place));
                check(
                    root,
                    target.expect("it leads somewhere"),
                    value,
                    path,
                    found,
                );
                true
            }
            "type" => match rule {
                Value::Array(types) => types.iter().any(|one| is_of(value, one)),
                one => is_of(value, one),
            },
            "const" => value == rule,
            "enum" => rule.as_array().expect("a list").contains(value),
            "minimum" => value
                .as_f64()
                .is_none_or(|v| v >= rule.as_f64().expect("a number")),
            "maximum" => value
                .as_f64()
                .is_none_or(|v| v <= rule.as_f64().expect("a number")),
            "exclusiveMinimum" => value
                .as_f64()
                .is_none_or(|v| v > rule.as_f64().expect("a number")),
            "exclusiveMaximum" => value
                .as_f64()
                .is_none_or(|v| v < rule.as_f64().expect("a number")),
            "minLength" | "maxLength" => {
                let bound = rule.as_u64().expect("a count");
                value.as_str().is_none_or(|text| {
                    let length = text.chars().count() as u64;
                    if keyword == "minLength" {
                        length >= bound
                    } else {
                        length <= bound
                    }
                })
            }
            "pattern" => {
                assert_eq!(rule, "^[0-9a-f]+$", "the one pattern that is known here");
                let hex = |text: &str| {
                    !text.is_empty() && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
                };
                value.as_str().is_none_or(hex)
            }
            "anyOf" | "oneOf" => {
                let fits = |one: &&Value| {
                    let mut wrong = Vec::new();
                    check(root, one, value, path, &mut wrong);
                    wrong.is_empty()
                };
                let fitting = rule.as_array().expect("a list").iter().filter(fits).count();
                if keyword == "anyOf" {
                    fitting > 0
                } else {
                    fitting == 1
                }
            }
            "required" => {
                let names = rule.as_array().expect("a list");
                names
                    .iter()
                    .all(|name| value.get(name.as_str().expect("a name")).is_some())
            }
            "properties" => {
                for (name, of) in rule.as_object().expect("an object") {
                    if let Some(value) = value.get(name) {
                        check(root, of, value, &format!("{path}.{name}"), found);
                    }
                }
                true
            }
            "additionalProperties" => {
                for (name, value) in value.as_object().into_iter().flatten() {
                    let listed = schema["properties"].get(name).is_some();
                    match rule {
                        _ if listed => {}
                        Value::Bool(allowed) if *allowed => {}
                        Value::Bool(_) => found.push(format!("{path}.{name} is not in the schema")),
                        of => check(root, of, value, &format!("{path}.{name}"), found),
                    }
                }
                true
            }
            "propertyNames" => {
                for name in value
                    .as_object()
                    .into_iter()
                    .flatten()
                    .map(|(name, _)| name)
                {
                    let name = Value::from(name.as_str());
                    check(root, rule, &name, &format!("{path}, a name"), found);
                }
                true
            }
            "minItems" => {
                let least = rule.as_u64().expect("a count");
                (value.as_array()).is_none_or(|items| items.len() as u64 >= least)
            }
            "maxItems" => {
                let most = rule.as_u64().expect("a count");
                (value.as_array()).is_none_or(|items| items.len() as u64 <= most)
            }
            "prefixItems" => {
                let rules = rule.as_array().expect("a list");
                let items = value.as_array().into_iter().flatten();
                for (n, (value, rule)) in items.zip(rules).enumerate() {
                    check(root, rule, value, &format!("{path}[{n}]"), found);
                }
                true
            }
            "items" => {
                assert!(!keywords.contains_key("prefixItems"), "{path}: not both");
                for (n, value) in value.as_array().into_iter().flatten().enumerate() {
                    check(root, rule, value, &format!("{path}[{n}]"), found);
                }
                true
            }
            other => panic!("{path}: this test does not know the keyword {other}"),
        };
        if !good {
            found.push(format!("{path}: {value} does not fit {keyword}: {rule}"));
        }
    }
}

fn is_of(value: &Value, kind: &Value) -> bool {
    match kind.as_str().expect("a type has a name") {
        "object" => value.is_object(),
        "array" => value.is_array(),
        "string" => value.is_string(),
        "number" => value.is_number(),
        "integer" => value.as_f64().is_some_and(|v| v.fract() == 0.0),
        "boolean" => value.is_boolean(),
        "null" => value.is_null(),
        other => panic!("no type is called {other}"),
    }
}

#[test]
fn what_does_not_fit_a_schema_is_found() {
    let schema = serde_json::json!({
        "type": "object", "required": ["a"], "additionalProperties": false,
        "properties": {
            "a": { "$ref": "#/$defs/small" },
            "b": { "type": ["string", "null"] },
            "pair": { "type": "array", "minItems": 2, "maxItems": 2 },
            "share": { "type": "number", "exclusiveMinimum": 0, "exclusiveMaximum": 1 },
            "two": { "type": "array", "prefixItems": [{ "type": "string" }, { "type": "integer" }] },
            "letter": { "type": "string", "minLength": 1, "maxLength": 1 },
            "map": { "type": "object", "propertyNames": { "enum": ["x"] }, "additionalProperties": { "type": "null" } },
        },
        "$defs": { "small": { "type": "integer", "maximum": 9 } },
    });
    let wrong = |value: Value| mistakes(&schema, &value).len();
    assert_eq!(wrong(serde_json::json!({ "a": 3, "b": null })), 0);
    assert_eq!(wrong(serde_json::json!({ "a": 10 })), 1);
    assert_eq!(wrong(serde_json::json!({ "a": 1.5 })), 1);
    assert_eq!(wrong(serde_json::json!({ "a": 1, "pair": [1, 2] })), 0);
    assert_eq!(wrong(serde_json::json!({ "a": 1, "pair": [1] })), 1);
    assert_eq!(wrong(serde_json::json!({ "a": 1, "pair": [1, 2, 3] })), 1);
    assert_eq!(wrong(serde_json::json!({ "b": "x" })), 1);
    assert_eq!(wrong(serde_json::json!({ "a": 1, "b": 2, "c": 3 })), 2);
    assert_eq!(wrong(serde_json::json!([])), 2);
    for (field, good, bad) in [
        ("share", serde_json::json!(0.5), serde_json::json!(0)),
        ("share", serde_json::json!(0.999), serde_json::json!(1)),
        (
            "two",
            serde_json::json!(["x", 1]),
            serde_json::json!(["x", "y"]),
        ),
        ("letter", serde_json::json!("é"), serde_json::json!("ab")),
        ("letter", serde_json::json!("a"), serde_json::json!("")),
        (
            "map",
            serde_json::json!({ "x": null }),
            serde_json::json!({ "y": null }),
        ),
        ("map", serde_json::json!({}), serde_json::json!({ "x": 1 })),
    ] {
        let with = |value: Value| wrong(serde_json::json!({ "a": 1, field: value }));
        assert_eq!((with(good), with(bad)), (0, 1), "{field}");
    }
}
