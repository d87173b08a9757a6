//! A kind of file as its schema describes it: types with their fields and cases, in the order in which the file meets
//! them.

use detent_content::{FileKind, file_schema};
use serde_json::{Map, Value};

/// Everything that a kind of file may say.
pub(crate) struct FileReference {
    /// The types; the file itself is the first.
    pub types: Vec<TypeReference>,
}

/// A type that has a name.
pub(crate) struct TypeReference {
    pub name: String,
    /// What it is.
    pub told: String,
    pub body: Body,
}

/// What a type is made of.
pub(crate) enum Body {
    /// `(field: value, …)`
    Fields(Vec<Field>),
    /// One of several.
    Cases(Vec<Case>),
    /// One of these texts.
    Texts(Vec<String>),
}

/// A field with a name.
pub(crate) struct Field {
    pub name: String,
    /// What it means, without its unit.
    pub told: String,
    pub unit: Option<&'static str>,
    pub shape: Shape,
    pub limits: Limits,
    /// What it is where it is left out, as a file writes it; none where it must be there.
    pub default: Option<String>,
}

/// One of the values of an enumeration.
pub(crate) struct Case {
    pub name: String,
    /// What it means; empty where the name says it.
    pub told: String,
    pub holds: Holds,
}

/// What stands in the brackets behind a case.
pub(crate) enum Holds {
    Nothing,
    /// One value, or several without names.
    Value(Shape, Limits),
    Fields(Vec<Field>),
}

/// How a value is written.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Shape {
    TrueOrFalse,
    WholeNumber,
    Number,
    Letter,
    Text,
    List(Box<Shape>),
    Tuple(Vec<Shape>),
    /// From names of a type to values.
    Map(Option<String>, Box<Shape>),
    /// `Some(…)` or `None`.
    Optional(Box<Shape>),
    /// A type of this name.
    Type(String),
}

/// The bounds of a number, or of each number in a list.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Limits {
    pub least: Option<String>,
    pub most: Option<String>,
    pub above: Option<String>,
    pub below: Option<String>,
}

/// Units in which files count. A field's text names its own behind the last comma of its first sentence.
const UNITS: [&str; 18] = [
    "ms", "s", "min", "h", "mm", "V", "V/kPa", "Ω", "K", "°C", "A", "°", "rev/min", "money",
    "points", "cm", "Hz", "kPa",
];

impl FileReference {
    /// What this kind of file may say.
    pub fn of(kind: FileKind) -> FileReference {
        FileReference::of_schema(file_schema(kind).as_value())
    }

    /// The same of any type's schema, made by `schemars`.
    pub fn of_schema(schema: &Value) -> FileReference {
        let root = schema.as_object().expect("a schema is an object");
        let title = text(root, "title");
        let mut types = vec![type_of(title, root)];
        let mut next = 0;
        // Depth first: what a type names stands right behind it.
        while next < types.len() {
            let named = types[next].named_types();
            let mut at = next + 1;
            for name in named {
                if types.iter().any(|known| known.name == name) {
                    continue;
                }
                let defined = schema["$defs"][&name].as_object();
                let defined = defined.unwrap_or_else(|| panic!("{name} is defined"));
                types.insert(at, type_of(name, defined));
                at += 1;
            }
            next += 1;
        }
        FileReference { types }
    }

    /// The type of this name.
    pub fn named(&self, name: &str) -> Option<&TypeReference> {
        self.types.iter().find(|known| known.name == name)
    }

    /// The cases of the type of this name, if it has cases.
    pub fn cases(&self, name: &str) -> Option<&[Case]> {
        match &self.named(name)?.body {
            Body::Cases(cases) => Some(cases),
            Body::Fields(_) | Body::Texts(_) => None,
        }
    }
}

impl TypeReference {
    /// Names of the types that it speaks of, in order.
    fn named_types(&self) -> Vec<String> {
        let mut named = Vec::new();
        match &self.body {
            Body::Fields(fields) => fields.iter().for_each(|field| field.shape.name(&mut named)),
            Body::Cases(cases) => {
                for case in cases {
                    match &case.holds {
                        Holds::Nothing => {}
                        Holds::Value(shape, _) => shape.name(&mut named),
                        Holds::Fields(fields) => {
                            fields.iter().for_each(|field| field.shape.name(&mut named));
                        }
                    }
                }
            }
            Body::Texts(_) => {}
        }
        named
    }
}

impl Shape {
    fn name(&self, named: &mut Vec<String>) {
        match self {
            Shape::TrueOrFalse
            | Shape::WholeNumber
            | Shape::Number
            | Shape::Letter
            | Shape::Text => {}
            Shape::List(of) | Shape::Optional(of) => of.name(named),
            Shape::Tuple(of) => of.iter().for_each(|shape| shape.name(named)),
            Shape::Map(key, of) => {
                named.extend(key.clone());
                of.name(named);
            }
            Shape::Type(name) => named.push(name.clone()),
        }
    }
}

fn type_of(name: String, schema: &Map<String, Value>) -> TypeReference {
    let body = if let Some(cases) = schema.get("oneOf").and_then(Value::as_array) {
        Body::Cases(cases.iter().flat_map(cases_of).collect())
    } else if let Some(names) = schema.get("enum").and_then(Value::as_array) {
        let names = strings(names);
        // A name of a case begins with a capital; what does not is written in quotation marks.
        match names
            .iter()
            .all(|name| name.starts_with(char::is_uppercase))
        {
            true => Body::Cases(names.into_iter().map(Case::bare).collect()),
            false => Body::Texts(names),
        }
    } else {
        Body::Fields(fields_of(schema))
    };
    TypeReference {
        name,
        told: text(schema, "description"),
        body,
    }
}

impl Case {
    fn bare(name: String) -> Case {
        Case {
            name,
            told: String::new(),
            holds: Holds::Nothing,
        }
    }
}

fn cases_of(schema: &Value) -> Vec<Case> {
    let schema = schema.as_object().expect("a schema is an object");
    let told = text(schema, "description");
    if let Some(name) = schema.get("const").and_then(Value::as_str) {
        let name = name.to_owned();
        return vec![Case {
            told,
            ..Case::bare(name)
        }];
    }
    if let Some(names) = schema.get("enum").and_then(Value::as_array) {
        return strings(names).into_iter().map(Case::bare).collect();
    }
    let inside = schema["properties"]
        .as_object()
        .expect("a case holds something");
    let (name, held) = inside.iter().next().expect("a case has a name");
    let held = held.as_object().expect("a schema is an object");
    let holds = match held.contains_key("properties") {
        true => Holds::Fields(fields_of(held)),
        false => Holds::Value(shape_of(held), Limits::of(held)),
    };
    let name = name.clone();
    vec![Case { name, told, holds }]
}

fn fields_of(schema: &Map<String, Value>) -> Vec<Field> {
    let properties = schema["properties"].as_object().expect("fields");
    let required = schema.get("required").and_then(Value::as_array);
    let required = required.map(|names| strings(names)).unwrap_or_default();
    let field = |(name, schema): (&String, &Value)| {
        let schema = schema.as_object().expect("a schema is an object");
        let shape = shape_of(schema);
        let (told, unit) = meaning(&text(schema, "description"));
        let default = match schema.get("default") {
            Some(default) => Some(written(default, &shape)),
            None if required.contains(name) => None,
            // What may be left out without a word is `None`.
            None => Some("None".to_owned()),
        };
        Field {
            name: name.clone(),
            told,
            unit,
            limits: Limits::of(schema),
            shape,
            default,
        }
    };
    properties.iter().map(field).collect()
}

/// What a field means, and its unit if it has one.
fn meaning(told: &str) -> (String, Option<&'static str>) {
    let end = told.find(". ").unwrap_or(told.len().saturating_sub(1));
    let (first, rest) = told.split_at(end);
    let unit = first.rsplit_once(", ").and_then(|(before, unit)| {
        let unit = UNITS.into_iter().find(|known| *known == unit)?;
        Some((before, unit))
    });
    match unit {
        Some((before, unit)) => (format!("{before}{rest}"), Some(unit)),
        None => (told.to_owned(), None),
    }
}

fn shape_of(schema: &Map<String, Value>) -> Shape {
    if let Some(name) = schema.get("$ref").and_then(Value::as_str) {
        let name = name.strip_prefix("#/$defs/").expect("types are in $defs");
        return Shape::Type(name.to_owned());
    }
    if let Some(any) = schema.get("anyOf").and_then(Value::as_array) {
        let of = any[0].as_object().expect("a schema is an object");
        return Shape::Optional(Box::new(shape_of(of)));
    }
    let one = |name: &str| match name {
        "boolean" => Shape::TrueOrFalse,
        "integer" => Shape::WholeNumber,
        "number" => Shape::Number,
        "string" if schema.get("maxLength") == Some(&Value::from(1)) => Shape::Letter,
        "string" => Shape::Text,
        "array" => match schema.get("prefixItems").and_then(Value::as_array) {
            Some(items) => {
                let items = items.iter().filter_map(Value::as_object);
                Shape::Tuple(items.map(shape_of).collect())
            }
            None => {
                let items = schema["items"].as_object().expect("items of one shape");
                Shape::List(Box::new(shape_of(items)))
            }
        },
        "object" => {
            let values = schema["additionalProperties"].as_object();
            let values = shape_of(values.expect("values of one shape"));
            let keys = schema.get("propertyNames").and_then(Value::as_object);
            let keys = keys.map(shape_of).and_then(|keys| match keys {
                Shape::Type(name) => Some(name),
                _ => None,
            });
            Shape::Map(keys, Box::new(values))
        }
        other => panic!("no value of a file is of the type {other}"),
    };
    match &schema["type"] {
        Value::String(name) => one(name),
        Value::Array(names) => {
            let name = names[0].as_str().expect("a type has a name");
            Shape::Optional(Box::new(one(name)))
        }
        other => panic!("{other} is no type"),
    }
}

impl Limits {
    fn of(schema: &Map<String, Value>) -> Limits {
        let schema = match schema.get("items").and_then(Value::as_object) {
            Some(items) => items,
            None => schema,
        };
        let bound = |key: &str| schema.get(key).map(plain_number);
        Limits {
            // Whole numbers are never negative anyway.
            least: bound("minimum").filter(|_| {
                let counts = schema.get("format").and_then(Value::as_str);
                let plain = counts.is_some_and(|format| format.starts_with("uint"));
                !plain
                    || schema.get("minimum") != Some(&Value::from(0))
                    || schema.contains_key("maximum")
            }),
            most: bound("maximum"),
            above: bound("exclusiveMinimum"),
            below: bound("exclusiveMaximum"),
        }
    }
}

/// A bound as people write it: without a fraction of nothing.
fn plain_number(value: &Value) -> String {
    let written = value.to_string();
    let plain = written.strip_suffix(".0");
    plain.map_or(written.clone(), str::to_owned)
}

/// A default as a file writes it.
fn written(default: &Value, shape: &Shape) -> String {
    match (default, shape) {
        (Value::Null, _) => "None".to_owned(),
        (Value::String(name), Shape::Type(_)) => name.clone(),
        (other, _) => other.to_string(),
    }
}

fn strings(values: &[Value]) -> Vec<String> {
    let texts = values.iter().filter_map(Value::as_str);
    texts.map(str::to_owned).collect()
}

/// A text of a schema on one line; empty where there is none.
fn text(schema: &Map<String, Value>, key: &str) -> String {
    let text = schema.get(key).and_then(Value::as_str).unwrap_or_default();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
