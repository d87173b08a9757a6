//! Examples of each type, out of files that are read.

use super::model::{Body, FileReference, Holds, Shape};
use detent_content::{ContentError, FileKind, builtin, json_form};
use detent_syntax::document::Document;
use serde_json::Value;
use std::collections::BTreeMap;

/// A whole file of parts; there is none of an own library among the built-in files.
const PARTS: &str = r#"// The parts of an own library, for a board of its own. Number, price and waiting time are invented.
(
    parts: [
        (
            number: "S-1",
            component: Board,
            name_key: "Control of the school's machine",
            price: 150.0,
            wait_hours: 24.0,
            boards: ["school-lamp"],
        ),
        (
            number: "S-2",
            revision: Some('B'),
            component: DrainPump,
            name_key: "Drain pump of the school's machine",
            price: 24.0,
            wait_hours: 2.0,
            boards: ["school-lamp"],
            condition: Used,
            fitting_minutes: Some(40.0),
        ),
    ],
)
"#;

/// Boards that say what the built-in ones do not.
const DESCRIBED_BOARDS: [(&str, &str); 3] = [
    (
        "tests/boards/kite.ron",
        include_str!("../../../tests/boards/kite.ron"),
    ),
    (
        "tests/boards/six-field.ron",
        include_str!("../../../tests/boards/six-field.ron"),
    ),
    (
        "tests/boards/tower.ron",
        include_str!("../../../tests/boards/tower.ron"),
    ),
];

/// Most lines of an example of one type.
const MOST_LINES: usize = 24;

/// Files of this kind that examples are taken from, the one that shows the whole kind first.
pub(crate) fn files(kind: FileKind) -> Result<Vec<(String, &'static str)>, ContentError> {
    let first = |path: &str| Ok((path.to_owned(), builtin::text(path)?));
    let rest = |folder: &'static str, ending: &'static str| {
        let files = builtin::in_folder(folder);
        files.filter(move |(path, _)| path.ends_with(ending))
    };
    Ok(match kind {
        FileKind::Scenario => {
            let jobs = rest("scenarios", ".ron").filter(|(path, _)| path.matches('.').count() == 1);
            [first("assets/templates/scenario.en.ron")?]
                .into_iter()
                .chain(jobs)
                .collect()
        }
        FileKind::Guide => {
            let guides = rest("scenarios", ".guide.ron");
            [first("assets/templates/guide.en.ron")?]
                .into_iter()
                .chain(guides)
                .collect()
        }
        FileKind::Board => {
            let described = DESCRIBED_BOARDS.map(|(path, text)| (path.to_owned(), text));
            rest("assets/boards", ".ron").chain(described).collect()
        }
        FileKind::Examination => rest("scenarios", ".examination.ron").collect(),
        FileKind::Parts => vec![("parts.ron".to_owned(), PARTS)],
        FileKind::Course => vec![first("assets/templates/course.en.ron")?],
        FileKind::Plan => vec![first("assets/templates/plan.en.ron")?],
    })
}

/// A whole file of this kind where it is short; a board is not.
pub(crate) fn whole(kind: FileKind) -> Result<Option<&'static str>, ContentError> {
    Ok(match kind {
        FileKind::Board => None,
        FileKind::Scenario
        | FileKind::Guide
        | FileKind::Examination
        | FileKind::Parts
        | FileKind::Course
        | FileKind::Plan => files(kind)?.first().map(|(_, text)| *text),
    })
}

/// For each type by its name: one example, or one of each case that holds something, as they stand in files.
pub(crate) type Examples = BTreeMap<String, BTreeMap<String, String>>;

/// Examples out of the files of this kind.
pub(crate) fn examples(
    kind: FileKind,
    reference: &FileReference,
) -> Result<Examples, ContentError> {
    let mut found = Search {
        reference,
        examples: Examples::new(),
    };
    for (file, text) in files(kind)? {
        let value = json_form(kind, &file, text.as_bytes())?;
        let document = Document::parse(text).expect("a file that is read is RON");
        let start = Place {
            document: &document,
            path: String::new(),
            inside: 0,
        };
        let root = Shape::Type(reference.types[0].name.clone());
        found.visit(&root, &value, &start);
    }
    Ok(found.examples)
}

/// A value in a file: its path, and in how many pairs of brackets it stands there that have no name of a field.
#[derive(Clone)]
struct Place<'a> {
    document: &'a Document,
    path: String,
    inside: usize,
}

impl Place<'_> {
    fn field(&self, name: &str) -> Self {
        let dot = if self.path.is_empty() { "" } else { "." };
        Place {
            path: format!("{}{dot}{name}", self.path),
            inside: 0,
            ..*self
        }
    }

    fn item(&self, key: &str) -> Self {
        Place {
            path: format!("{}[{key}]", self.path),
            inside: 0,
            ..*self
        }
    }

    fn deeper(&self) -> Self {
        Place {
            path: self.path.clone(),
            inside: self.inside + 1,
            ..*self
        }
    }

    /// Its text, moved to the left; none where the path leads nowhere.
    fn text(&self) -> Option<String> {
        let mut text = self.document.value(&self.path)?;
        for _ in 0..self.inside {
            let (_, behind) = text.split_once('(')?;
            text = behind.strip_suffix(')')?.trim();
        }
        let margin = text
            .lines()
            .skip(1)
            .map(|line| line.len() - line.trim_start().len());
        let margin = margin.min().unwrap_or(0);
        let lines = text.lines().enumerate();
        let lines = lines.map(|(n, line)| if n == 0 { line } else { &line[margin..] });
        Some(lines.collect::<Vec<_>>().join("\n"))
    }
}

struct Search<'a> {
    reference: &'a FileReference,
    examples: Examples,
}

impl Search<'_> {
    fn visit(&mut self, shape: &Shape, value: &Value, place: &Place<'_>) {
        match (shape, value) {
            (Shape::List(of), Value::Array(items)) => {
                for (n, item) in items.iter().enumerate() {
                    self.visit(of, item, &place.item(&n.to_string()));
                }
            }
            (Shape::Tuple(of), Value::Array(items)) => {
                for (n, (of, item)) in of.iter().zip(items).enumerate() {
                    self.visit(of, item, &place.field(&n.to_string()));
                }
            }
            (Shape::Map(_, of), Value::Object(entries)) => {
                for (key, value) in entries {
                    self.visit(of, value, &place.item(key));
                }
            }
            (Shape::Optional(of), value) if !value.is_null() => {
                self.visit(of, value, &place.deeper());
            }
            (Shape::Type(name), value) => self.visit_type(name, value, place),
            _ => {}
        }
    }

    fn visit_type(&mut self, name: &str, value: &Value, place: &Place<'_>) {
        let Some(of) = self.reference.named(name) else {
            return;
        };
        match &of.body {
            Body::Fields(fields) => {
                self.keep(name, "", place);
                for field in fields {
                    // A field that was left out has a value in JSON and no place in the file.
                    let at = place.field(&field.name);
                    if at.document.value(&at.path).is_some() {
                        self.visit(&field.shape, &value[&field.name], &at);
                    }
                }
            }
            Body::Cases(cases) => {
                let named = value.as_object().and_then(|case| case.iter().next());
                let Some((case_name, held)) = named else {
                    return;
                };
                self.keep(name, case_name, place);
                let case = cases.iter().find(|case| case.name == *case_name);
                match case.map(|case| &case.holds) {
                    Some(Holds::Value(shape, _)) => self.visit(shape, held, &place.deeper()),
                    Some(Holds::Fields(fields)) => {
                        for field in fields {
                            let at = place.field(&field.name);
                            if at.document.value(&at.path).is_some() {
                                self.visit(&field.shape, &held[&field.name], &at);
                            }
                        }
                    }
                    Some(Holds::Nothing) | None => {}
                }
            }
            Body::Texts(_) => {}
        }
    }

    /// Keeps the first example that is short enough.
    fn keep(&mut self, name: &str, case: &str, place: &Place<'_>) {
        let of = self.examples.entry(name.to_owned()).or_default();
        if !of.contains_key(case)
            && !place.path.is_empty()
            && let Some(text) = place.text()
            && text.lines().count() <= MOST_LINES
        {
            of.insert(case.to_owned(), text);
        }
    }
}
