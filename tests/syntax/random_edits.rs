//! Random changes to random texts mean what the same changes mean to the value that ron reads.

use detent_syntax::document::Document;
use proptest::prelude::*;
use ron::Value;
use ron::value::Map;

/// One change: what, where and with what, each taken modulo what there is.
type Edit = (u8, u16, u8);

/// What is put in.
const VALUES: [&str; 8] = [
    "1",
    "-2.5",
    "\"a, ) \\\" ] // b\"",
    "r#\"x \" ] y\"#",
    "(a: 1, b: [2])",
    "[]",
    "[1,\n    // two\n    2,\n]",
    "{1: /* , */ 2}",
];

const NAMES: [&str; 4] = ["a", "b", "c", "d"];

fn read(text: &str) -> Value {
    ron::from_str(text).unwrap_or_else(|error| panic!("{error}\n{text}"))
}

fn values() -> impl Strategy<Value = Value> {
    let scalar = prop::sample::select(VALUES.as_slice()).prop_map(read);
    scalar.prop_recursive(4, 40, 4, |inside| {
        let field = (prop::sample::select(NAMES.as_slice()), inside.clone());
        let fields = prop::collection::vec(field, 1..4);
        let group = fields.prop_map(|fields| {
            let fields = fields.into_iter();
            let fields = fields.map(|(name, value)| (Value::String(name.to_owned()), value));
            Value::Map(fields.collect())
        });
        let entries = prop::collection::vec((0_u8..5, inside.clone()), 0..4);
        let map = entries.prop_map(|entries| {
            let entries = entries.into_iter();
            Value::Map(entries.map(|(key, value)| (number(key), value)).collect())
        });
        let list = prop::collection::vec(inside.clone(), 0..4).prop_map(Value::Seq);
        let some = inside.prop_map(|value| Value::Option(Some(Box::new(value))));
        prop_oneof![3 => group, 1 => map, 2 => list, 1 => some]
    })
}

fn number(number: u8) -> Value {
    Value::Number(ron::value::Number::U8(number))
}

/// Writes a value with blanks and comments, drawn from a few bytes, wherever some may stand.
struct Writer<'a> {
    text: String,
    style: std::iter::Cycle<std::slice::Iter<'a, u8>>,
}

impl Writer<'_> {
    fn draw(&mut self) -> u8 {
        *self.style.next().expect("some bytes of style")
    }

    fn trivia(&mut self) {
        let trivia = [
            "",
            " ",
            "\n    ",
            "\n",
            " // c ) ,\n  ",
            "/* ] */",
            "\n    // own ( line\n    ",
            "\r\n\t",
            " /* two\nlines */ ",
            "\n\n    // one\n    // two\n  ",
        ];
        let draw = usize::from(self.draw());
        self.text.push_str(trivia[draw % trivia.len()]);
    }

    fn value(&mut self, value: &Value) {
        match value {
            Value::Map(map) if is_struct(value) => {
                let named = self.draw().is_multiple_of(2);
                self.text.push_str(if named { "Name(" } else { "(" });
                for (index, (name, value)) in map.iter().enumerate() {
                    let Value::String(name) = name else {
                        unreachable!("a struct")
                    };
                    self.between(index);
                    self.text.push_str(name);
                    self.field(value);
                }
                self.end(')', map.len());
            }
            Value::Map(map) => {
                self.text.push('{');
                for (index, (key, value)) in map.iter().enumerate() {
                    self.between(index);
                    self.text.push_str(&ron::to_string(key).expect("a number"));
                    self.field(value);
                }
                self.end('}', map.len());
            }
            Value::Seq(items) => {
                self.text.push('[');
                for (index, item) in items.iter().enumerate() {
                    self.between(index);
                    self.value(item);
                }
                self.end(']', items.len());
            }
            Value::Option(Some(inside)) => {
                self.text.push_str("Some(");
                self.trivia();
                self.value(inside);
                self.end(')', 1);
            }
            scalar => self
                .text
                .push_str(&ron::to_string(scalar).expect("a scalar")),
        }
    }

    fn between(&mut self, index: usize) {
        if index > 0 {
            self.trivia();
            self.text.push(',');
        }
        self.trivia();
    }

    fn field(&mut self, value: &Value) {
        self.trivia();
        self.text.push(':');
        self.trivia();
        self.value(value);
    }

    fn end(&mut self, bracket: char, count: usize) {
        self.trivia();
        if count > 0 && self.draw().is_multiple_of(2) {
            self.text.push(',');
            self.trivia();
        }
        self.text.push(bracket);
    }
}

/// ron reads a struct as a map whose keys are strings; no other map here has such keys.
fn is_struct(value: &Value) -> bool {
    matches!(value, Value::Map(map) if matches!(map.keys().next(), Some(Value::String(_))))
}

/// To ron, `()` is nothing and `Name()` a list of nothing: here both are the latter.
fn without_names(value: &Value) -> Value {
    match value {
        Value::Unit => Value::Seq(Vec::new()),
        Value::Seq(items) => Value::Seq(items.iter().map(without_names).collect()),
        Value::Option(Some(inside)) => Value::Option(Some(Box::new(without_names(inside)))),
        Value::Map(map) => {
            let entries = map.iter();
            let entries = entries.map(|(key, value)| (key.clone(), without_names(value)));
            Value::Map(entries.collect())
        }
        other => other.clone(),
    }
}

/// Every path in a value.
fn paths(value: &Value, path: String, found: &mut Vec<String>) {
    found.push(path.clone());
    match value {
        Value::Map(map) => {
            for (key, value) in map.iter() {
                let path = match key {
                    Value::String(name) if path.is_empty() => name.clone(),
                    Value::String(name) => format!("{path}.{name}"),
                    key => format!("{path}[{}]", ron::to_string(key).expect("a number")),
                };
                paths(value, path, found);
            }
        }
        Value::Seq(items) => {
            for (index, item) in items.iter().enumerate() {
                paths(item, format!("{path}[{index}]"), found);
            }
        }
        Value::Option(Some(inside)) => {
            let own = found.len();
            paths(inside, path, found);
            // The brackets and what is in them have one path.
            found.remove(own);
        }
        _ => {}
    }
}

/// The value that a path means, and the last of its steps.
fn parent_of<'a, 'p>(value: &'a mut Value, path: &'p str) -> (&'a mut Value, &'p str) {
    match path.rfind(['.', '[']) {
        Some(cut) => (
            seen_through(at(value, &path[..cut])),
            path[cut..].trim_matches(['.', '[', ']']),
        ),
        None => (seen_through(value), path),
    }
}

fn seen_through(value: &mut Value) -> &mut Value {
    match value {
        Value::Option(Some(inside)) => seen_through(inside),
        other => other,
    }
}

fn key(map: &Map, step: &str) -> Value {
    let named = matches!(map.keys().next(), Some(Value::String(_)));
    if named {
        Value::String(step.to_owned())
    } else {
        read(step)
    }
}

fn at<'a>(mut value: &'a mut Value, path: &str) -> &'a mut Value {
    let steps = path.split(['.', '[', ']']).filter(|step| !step.is_empty());
    for step in steps {
        value = match seen_through(value) {
            Value::Map(map) => {
                let key = key(map, step);
                map.get_mut(&key).expect("a key")
            }
            Value::Seq(items) => &mut items[step.parse::<usize>().expect("an index")],
            other => panic!("{other:?} has no {step}"),
        };
    }
    value
}

/// Make a change to both; ron says which changes can be made.
fn change(document: &mut Document, value: &mut Value, (what, place, with): Edit) {
    let mut found = Vec::new();
    paths(value, String::new(), &mut found);
    let path = &found[usize::from(place) % found.len()];
    let text = VALUES[usize::from(with) % VALUES.len()];
    let target = seen_through(at(value, path));
    match (what % 4, target) {
        (0, _) => {
            let before = document.text().to_owned();
            let range = document.range(path).expect("a path");
            document.set(path, text).expect("set");
            let expected = format!("{}{text}{}", &before[..range.start], &before[range.end..]);
            assert_eq!(document.text(), expected);
            *at(value, path) = read(text);
        }
        (1, _) if path.is_empty() => assert!(document.remove(path).is_err()),
        (1, _) => {
            document.remove(path).expect("removed");
            let (around, step) = parent_of(value, path);
            match around {
                Value::Seq(items) => {
                    items.remove(step.parse().expect("an index"));
                }
                Value::Map(map) => {
                    let named = key(map, step);
                    map.remove(&named).expect("a key");
                    if map.is_empty() && matches!(named, Value::String(_)) {
                        *around = Value::Unit;
                    }
                }
                other => panic!("{other:?} has no {step}"),
            }
        }
        (_, Value::Seq(items)) => {
            let index = usize::from(with) % (items.len() + 1);
            document.insert_item(path, index, text).expect("an item");
            items.insert(index, read(text));
        }
        (_, around @ Value::Unit) => {
            document
                .insert_field(path, "a", text, &[])
                .expect("a field");
            let field = (Value::String("a".to_owned()), read(text));
            *around = Value::Map([field].into_iter().collect());
        }
        (_, Value::Map(map)) => {
            let is_struct = matches!(map.keys().next(), Some(Value::String(_)));
            let name = NAMES[usize::from(place) % NAMES.len()];
            let key_text = if is_struct {
                name.to_owned()
            } else {
                place.to_string()
            };
            let key = if is_struct {
                Value::String(key_text.clone())
            } else {
                read(&key_text)
            };
            let changed = if is_struct {
                let after = [NAMES[usize::from(with) % NAMES.len()]];
                document.insert_field(path, name, text, &after)
            } else {
                document.insert_entry(path, &key_text, text)
            };
            assert_eq!(changed.is_err(), map.get(&key).is_some());
            if changed.is_ok() {
                map.insert(key, read(text));
            }
        }
        (_, _) => assert!(document.insert_item(path, 0, text).is_err()),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(512) })]

    #[test]
    fn random_changes_mean_what_they_mean_to_ron(
        mut value in values(),
        style in prop::collection::vec(any::<u8>(), 1..60),
        edits in prop::collection::vec(any::<Edit>(), 1..12),
    ) {
        let mut writer = Writer { text: String::new(), style: style.iter().cycle() };
        writer.trivia();
        writer.value(&value);
        writer.trivia();
        let mut document = Document::parse(&writer.text).expect("RON");
        prop_assert_eq!(&read(document.text()), &value);
        for edit in edits {
            let before = document.text().to_owned();
            change(&mut document, &mut value, edit);
            let now: Value = ron::from_str(document.text())
                .map_err(|error| TestCaseError::fail(format!("{error}\n{before}\n---\n{}", document.text())))?;
            prop_assert_eq!(without_names(&now), without_names(&value), "{}\n---\n{}", before, document.text());
        }
    }
}
