//! What people write, as JSON, against the kept schemas, and the limits of the schemas against the readers.

use crate::rust_files::root;
use crate::schema::mistakes;
use detent_content::{
    Catalogue, ContentError, FileKind, KnownBoard, Parts, builtin, check_class_plan,
    check_examination, check_guide, check_scenario, json_form, read_added_parts, read_board,
    read_course, ron_form,
};
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

const OWN_PARTS: &str = r#"(parts: [(
    number: "S-1", revision: Some('B'), component: Board, name_key: "Control", price: 150.0, wait_hours: 24.0,
    boards: ["school-lamp"], condition: Rebuilt, fitting_minutes: Some(40.0),
)])"#;

fn kept(kind: FileKind) -> Value {
    let path = root().join(format!("assets/schema/{kind}.json"));
    let text = fs::read_to_string(&path).expect("the schema is kept");
    serde_json::from_str(&text).expect("JSON")
}

/// Every file of content that people write, with what it is: built in, to begin with, and the boards of the tests.
fn files() -> Vec<(FileKind, String, String)> {
    let folders = ["assets/boards", "assets/templates", "scenarios"];
    let built_in = folders.into_iter().flat_map(builtin::in_folder);
    let mut files: Vec<(String, String)> = built_in
        .map(|(file, text)| (file, text.to_owned()))
        .collect();
    for entry in fs::read_dir(root().join("tests/boards")).expect("they are there") {
        let path = entry.expect("it can be listed").path();
        if path.extension().is_some_and(|ending| ending == "ron") {
            let text = fs::read_to_string(&path).expect("a board is a text");
            files.push((path.display().to_string(), text));
        }
    }
    files.push(("parts.ron".to_owned(), OWN_PARTS.to_owned()));
    let told = |(file, text): (String, String)| {
        let kind = FileKind::of(&file, text.as_bytes());
        (kind, file, text)
    };
    files.into_iter().map(told).collect()
}

#[test]
fn every_file_fits_the_schema_of_its_kind_and_comes_back_from_json() {
    let mut seen: BTreeMap<FileKind, usize> = BTreeMap::new();
    for (kind, file, text) in files() {
        let value = json_form(kind, &file, text.as_bytes()).expect(&file);
        let wrong = mistakes(&kept(kind), &value);
        assert!(wrong.is_empty(), "{file}: {wrong:#?}");
        let again = ron_form(kind, value.clone()).expect(&file);
        let again = json_form(kind, &file, again.as_bytes()).expect(&file);
        assert_eq!(value, again, "{file}");
        *seen.entry(kind).or_default() += 1;
    }
    assert_eq!(seen.len(), FileKind::ALL.len(), "{seen:?}");
    assert!(seen[&FileKind::Scenario] > 50 && seen[&FileKind::Board] == 6);
}

/// A change of one value by its JSON pointer; without a value it is taken out.
fn changed(value: &Value, pointer: &str, to: Option<Value>) -> Value {
    let mut value = value.clone();
    let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
    match (value.pointer_mut(parent).expect("it leads somewhere"), to) {
        (Value::Object(fields), Some(to)) => {
            fields.insert(name.to_owned(), to);
        }
        (Value::Object(fields), None) => {
            fields.remove(name).expect("it is there");
        }
        (Value::Array(items), Some(to)) => items[name.parse::<usize>().expect("an index")] = to,
        (parent, to) => panic!("{parent} cannot take {to:?}"),
    }
    value
}

#[test]
fn a_schema_refuses_what_the_reader_refuses() {
    let first = |wanted: FileKind| {
        let mut files = files().into_iter();
        let (_, file, text) = files
            .find(|(kind, ..)| *kind == wanted)
            .expect("one of each");
        json_form(wanted, &file, text.as_bytes()).expect("a sound file")
    };
    for (kind, pointer, to) in [
        (FileKind::Scenario, "/par_minutes", None),
        (FileKind::Scenario, "/par_minutes", Some(json!(0))),
        (FileKind::Scenario, "/par_minuts", Some(json!(60))),
        (FileKind::Scenario, "/mains", Some(json!("V110Hz60"))),
        (
            FileKind::Scenario,
            "/fault",
            Some(json!({ "Name": "belt.broken" })),
        ),
        (FileKind::Scenario, "/seed", Some(json!("seven"))),
        (FileKind::Scenario, "/title/fr", Some(json!("Titre"))),
        (FileKind::Scenario, "/points/proof", Some(json!(-1))),
        (FileKind::Board, "/codes/0/code", Some(json!(100))),
        (
            FileKind::Board,
            "/codes/0/monitor",
            Some(json!("FillNothing")),
        ),
        (
            FileKind::Board,
            "/panel/selector",
            Some(json!({ "Dial": { "detents": 1 } })),
        ),
        (
            FileKind::Board,
            "/panel/selector",
            Some(json!({ "Dial": { "detent": 24 } })),
        ),
        (
            FileKind::Board,
            "/panel/selector",
            Some(json!({ "Dial": { "detents": 24, "steps": 3 } })),
        ),
        (
            FileKind::Board,
            "/supply/V400Hz50",
            Some(json!({ "reset_v": 50.0, "sag_v": 100.0 })),
        ),
        (FileKind::Board, "/recalibration/zero_v", Some(json!([0.4]))),
        (FileKind::Board, "/gesture/steps", Some(json!([]))),
        (
            FileKind::Board,
            "/gesture/steps/0",
            Some(json!({ "Jump": { "times": 2 } })),
        ),
        (
            FileKind::Guide,
            "/steps/0/goal",
            Some(json!({ "Bench": "Restd" })),
        ),
        (
            FileKind::Guide,
            "/steps/0/goal",
            Some(json!({ "Bench": { "Did": "Unplugs" } })),
        ),
        (FileKind::Guide, "/steps/0/say", None),
        (FileKind::Guide, "/steps", Some(json!([]))),
        (FileKind::Examination, "/minutes", Some(json!(481))),
        (FileKind::Examination, "/sheet/0", Some(json!("Cover"))),
        (FileKind::Examination, "/jobs", Some(json!([]))),
        (FileKind::Plan, "/title", None),
        (FileKind::Plan, "/kind", Some(json!("Party"))),
        (FileKind::Plan, "/drills/0/questions", Some(json!(51))),
        (FileKind::Plan, "/drills/0/skill", Some(json!("Whistling"))),
        (FileKind::Plan, "/names", Some(json!(["Ann"]))),
        (FileKind::Parts, "/parts/0/revision", Some(json!("AB"))),
        (FileKind::Parts, "/parts/0/price", Some(json!(-1))),
        (FileKind::Parts, "/parts/0/colour", Some(json!("red"))),
    ] {
        let told = format!("{kind}{pointer}: {to:?}");
        let spoiled = changed(&first(kind), pointer, to);
        assert!(
            !mistakes(&kept(kind), &spoiled).is_empty(),
            "the schema takes {told}"
        );
        assert!(
            !Readers::load().errors_of_json(kind, spoiled).is_empty(),
            "the reader takes {told}"
        );
    }
}

/// All that the readers hold a file against.
struct Readers {
    catalogue: Catalogue,
    parts: Parts,
    boards: Vec<KnownBoard>,
    jobs: Vec<String>,
}

impl Readers {
    fn load() -> Readers {
        let boards = builtin::in_folder("assets/boards");
        let boards = boards.map(|(file, text)| read_board(&file, text.as_bytes()));
        let jobs = builtin::in_folder("scenarios").filter_map(|(file, _)| {
            let name = file.strip_prefix("scenarios/")?.strip_suffix(".ron")?;
            Some(name.to_owned())
        });
        Readers {
            catalogue: builtin::catalogue().expect("a sound catalogue"),
            parts: builtin::parts().expect("sound parts"),
            boards: boards
                .map(|board| KnownBoard::of(&board.expect("a sound board")))
                .collect(),
            jobs: jobs.collect(),
        }
    }

    /// Paths of the fields in which the reader finds something; `*` where the value has not even the right form.
    fn errors_of_json(&self, kind: FileKind, value: Value) -> Vec<String> {
        match ron_form(kind, value) {
            Ok(text) => {
                let errors = self.errors(kind, text.as_bytes());
                errors.into_iter().map(|error| error.field).collect()
            }
            Err(_) => vec!["*".to_owned()],
        }
    }

    fn errors(&self, kind: FileKind, bytes: &[u8]) -> Vec<ContentError> {
        let file = "probed.ron";
        let errors = match kind {
            FileKind::Scenario => {
                check_scenario(file, bytes, &self.catalogue, &self.parts, &self.boards).err()
            }
            FileKind::Board => read_board(file, bytes).err(),
            FileKind::Guide => check_guide(file, bytes).err(),
            FileKind::Examination => {
                let jobs: Vec<&str> = self.jobs.iter().map(String::as_str).collect();
                check_examination(file, bytes, &jobs).err()
            }
            FileKind::Parts => read_added_parts(file, bytes, &self.parts, &["school-lamp"]).err(),
            FileKind::Course => read_course(file, bytes, None).err(),
            FileKind::Plan => {
                let jobs: Vec<&str> = self.jobs.iter().map(String::as_str).collect();
                check_class_plan(file, bytes, &jobs).err()
            }
        };
        errors.unwrap_or_default()
    }
}

/// A number in a file that the schema gives a limit.
struct Limited {
    /// JSON pointer.
    pointer: String,
    /// Path as readers tell it.
    path: String,
    /// Values beside its limits: just allowed, just refused.
    allowed: Vec<Value>,
    refused: Vec<Value>,
}

/// Walks through a file with its schema.
struct Walk<'a> {
    root: &'a Value,
    /// By type, case and field.
    found: BTreeMap<String, Limited>,
}

impl Walk<'_> {
    fn visit(&mut self, schema: &Value, value: &Value, name: &str, pointer: &str, path: &str) {
        if let Some(to) = schema["$ref"].as_str() {
            let target = self.root.pointer(&to[1..]).expect("it leads somewhere");
            let name = to.rsplit('/').next().unwrap_or(to);
            return self.visit(target, value, name, pointer, path);
        }
        if let (Some(any), false) = (schema["anyOf"].as_array(), value.is_null()) {
            return self.visit(&any[0], value, name, pointer, path);
        }
        if let (Some(cases), Some(held)) = (schema["oneOf"].as_array(), value.as_object()) {
            let (case, held) = held.iter().next().expect("a case has a name");
            let fitting = cases.iter().find_map(|one| one["properties"].get(case));
            let pointer = format!("{pointer}/{case}");
            let name = format!("{name}.{case}");
            return self.visit(
                fitting.expect("a case of the schema"),
                held,
                &name,
                &pointer,
                path,
            );
        }
        match value {
            Value::Object(fields) => {
                for (field, value) in fields {
                    let pointer = format!("{pointer}/{field}");
                    if let Some(of) = schema["properties"].get(field) {
                        let dot = if path.is_empty() { "" } else { "." };
                        let path = format!("{path}{dot}{field}");
                        self.visit(of, value, &format!("{name}.{field}"), &pointer, &path);
                    } else {
                        let of = &schema["additionalProperties"];
                        self.visit(of, value, name, &pointer, &format!("{path}[{field}]"));
                    }
                }
            }
            Value::Array(items) => {
                for (n, value) in items.iter().enumerate() {
                    let pointer = format!("{pointer}/{n}");
                    match schema["prefixItems"].get(n) {
                        Some(of) => self.visit(of, value, name, &pointer, &format!("{path}.{n}")),
                        None => {
                            let path = format!("{path}[{n}]");
                            self.visit(&schema["items"], value, name, &pointer, &path);
                        }
                    }
                }
            }
            Value::Number(_) => self.note(schema, name, pointer, path),
            Value::Null | Value::Bool(_) | Value::String(_) => {}
        }
    }

    fn note(&mut self, schema: &Value, name: &str, pointer: &str, path: &str) {
        let schema = schema.as_object().expect("a schema is an object");
        let whole = is_whole(schema);
        let step = if whole { 1.0 } else { 0.001 };
        let bound = |key: &str| schema.get(key).and_then(Value::as_f64);
        let number = |value: f64| match whole {
            true => json!(value as i64),
            false => json!(value),
        };
        let (mut allowed, mut refused) = (Vec::new(), Vec::new());
        for (key, outward) in [("minimum", -step), ("maximum", step)] {
            if let Some(bound) = bound(key)
                && !is_of_its_type(schema, bound)
            {
                allowed.push(number(bound));
                refused.push(number(bound + outward));
            }
        }
        for (key, inward) in [("exclusiveMinimum", step), ("exclusiveMaximum", -step)] {
            if let Some(bound) = bound(key) {
                allowed.push(number(bound + inward));
                refused.push(number(bound));
            }
        }
        if !refused.is_empty() {
            self.found
                .entry(name.to_owned())
                .or_insert_with(|| Limited {
                    pointer: pointer.to_owned(),
                    path: path.to_owned(),
                    allowed,
                    refused,
                });
        }
    }
}

fn is_whole(schema: &Map<String, Value>) -> bool {
    match &schema["type"] {
        Value::Array(types) => types.contains(&json!("integer")),
        one => one == "integer",
    }
}

/// The bound is the least or the most that such a whole number can be at all: nobody has chosen it.
fn is_of_its_type(schema: &Map<String, Value>, bound: f64) -> bool {
    let most = match schema.get("format").and_then(Value::as_str) {
        Some("uint8") => f64::from(u8::MAX),
        Some("uint16") => f64::from(u16::MAX),
        Some("uint32" | "uint64" | "uint") => f64::INFINITY,
        _ => return false,
    };
    bound == 0.0 || bound == most
}

/// Fields that something else bounds as well, so that their outermost value is refused in the sound file: the board's
/// codes, the knob's positions, the repair's least time and cost, or a number that it has to be above.
const BOUND_BY_OTHERS: [&str; 11] = [
    "MenuEntry.position",
    "Phase.Agitate.pause_ms",
    "Phase.Fill.level_mm",
    "Program.position",
    "Scenario.budget",
    "Scenario.expected_codes",
    "Scenario.par_minutes",
    "Scenario.stale_codes",
    "StageRule.limit_s",
    "SupplyRules.sag_v",
    "ThermistorRules.max_v",
];

#[test]
fn the_limits_of_the_schemas_are_those_of_the_readers() {
    let readers = Readers::load();
    let mut probed = BTreeSet::new();
    let mut wrong = Vec::new();
    let files = files();
    for kind in FileKind::ALL {
        let schema = kept(*kind);
        for (_, file, text) in files.iter().filter(|(of, ..)| of == kind) {
            let value = json_form(*kind, file, text.as_bytes()).expect(file);
            let mut walk = Walk {
                root: &schema,
                found: BTreeMap::new(),
            };
            let title = schema["title"].as_str().expect("a title");
            walk.visit(&schema, &value, title, "", "");
            for (name, limited) in walk.found {
                if !probed.insert(format!("{kind}: {name}")) {
                    continue;
                }
                let fields = |to: &Value| {
                    let spoiled = changed(&value, &limited.pointer, Some(to.clone()));
                    readers.errors_of_json(*kind, spoiled)
                };
                let path = limited.path.as_str();
                for to in &limited.refused {
                    let fields = fields(to);
                    let here = |field: &String| {
                        field == "*"
                            || !field.is_empty()
                                && (path.starts_with(field) || field.starts_with(path))
                    };
                    if !fields.iter().any(here) {
                        wrong.push(format!("{kind}: {name}: {to} is taken"));
                    }
                }
                let refused_here = |to: &Value| fields(to).iter().any(|field| field == path);
                let refused = limited.allowed.iter().find(|to| refused_here(to));
                let by_others = BOUND_BY_OTHERS.contains(&name.as_str());
                if refused.is_some() != by_others {
                    wrong.push(format!(
                        "{kind}: {name}: {refused:?} is refused, {by_others}"
                    ));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(probed.len() > 40, "{}: {probed:#?}", probed.len());
}
