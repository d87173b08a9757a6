//! A text and its tree.

use super::error::SyntaxError;
use super::kind::{SyntaxKind, SyntaxNode};
use super::parser;
use super::path::{self, Found};
use super::position::TextPosition;
use rowan::GreenNode;
use std::ops::Range;

/// A RON text that has been read well, with every byte of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Document {
    text: String,
    tree: GreenNode,
}

/// What kind of thing stands at a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ValueKind {
    /// One word, number, range, character or string.
    Scalar,
    /// `(…)` with or without a name before it.
    Group,
    /// `[…]`
    List,
    /// `{…}`
    Map,
}

/// A value, its path and its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Value {
    pub path: String,
    pub kind: ValueKind,
    /// In bytes.
    pub range: Range<usize>,
}

impl Document {
    /// Read a text.
    ///
    /// # Errors
    /// The first thing in it that is not RON.
    pub fn parse(text: &str) -> Result<Document, SyntaxError> {
        let parsed = parser::parse(text);
        match parsed.error {
            None => Ok(Document {
                text: text.to_owned(),
                tree: parsed.tree,
            }),
            Some((offset, kind)) => Err(SyntaxError {
                position: TextPosition::of_offset(text, offset),
                offset,
                kind,
            }),
        }
    }

    pub fn text(&self) -> &str {
        &self.text
    }

    /// Root of the tree, whose text is the document's.
    pub fn root(&self) -> SyntaxNode {
        SyntaxNode::new_root(self.tree.clone())
    }

    /// Source text of the value at a path.
    pub fn value(&self, path: &str) -> Option<&str> {
        self.text.get(self.range(path)?)
    }

    /// Bytes of the value at a path.
    pub fn range(&self, path: &str) -> Option<Range<usize>> {
        Some(range_of(&self.find(path)?.value))
    }

    /// Where the value at a path begins.
    pub fn position(&self, path: &str) -> Option<TextPosition> {
        let start = self.range(path)?.start;
        Some(TextPosition::of_offset(&self.text, start))
    }

    pub fn kind(&self, path: &str) -> Option<ValueKind> {
        ValueKind::of(&self.find(path)?.value)
    }

    /// Names of the fields of the struct at a path, in their order; none where there is no struct.
    pub fn fields(&self, path: &str) -> Option<Vec<String>> {
        let group = self.bracket(path, SyntaxKind::Group)?;
        let mut fields = Vec::new();
        for child in group.children() {
            fields.push(path::field_name(&child)?);
        }
        Some(fields)
    }

    /// Number of items of the list at a path; none where there is no list.
    pub fn item_count(&self, path: &str) -> Option<usize> {
        Some(self.bracket(path, SyntaxKind::List)?.children().count())
    }

    /// Keys of the map at a path, without blanks and comments; none where there is no map.
    pub fn keys(&self, path: &str) -> Option<Vec<String>> {
        let map = self.bracket(path, SyntaxKind::Map)?;
        map.children()
            .map(|entry| path::entry_key(&entry))
            .collect()
    }

    /// Every value with its path, each before what is in it. A value that shares the path of the
    /// brackets around it has `.0` behind it.
    pub fn values(&self) -> Vec<Value> {
        let mut values = Vec::new();
        if let Some(whole) = path::value_in(&self.root()) {
            collect(&whole, String::new(), &mut values);
        }
        values
    }

    pub(crate) fn find(&self, path: &str) -> Option<Found> {
        path::find(&self.root(), path)
    }

    /// The brackets of a kind at a path, seen through others with one value.
    pub(crate) fn bracket(&self, path: &str, kind: SyntaxKind) -> Option<SyntaxNode> {
        let mut value = self.find(path)?.value;
        loop {
            match path::only_value(&value) {
                Some(only) => value = only,
                None => return (value.kind() == kind).then_some(value),
            }
        }
    }
}

impl ValueKind {
    fn of(value: &SyntaxNode) -> Option<ValueKind> {
        match value.kind() {
            SyntaxKind::Scalar => Some(ValueKind::Scalar),
            SyntaxKind::Group => Some(ValueKind::Group),
            SyntaxKind::List => Some(ValueKind::List),
            SyntaxKind::Map => Some(ValueKind::Map),
            _ => None,
        }
    }
}

pub(crate) fn range_of(node: &SyntaxNode) -> Range<usize> {
    let range = node.text_range();
    range.start().into()..range.end().into()
}

fn collect(value: &SyntaxNode, path: String, values: &mut Vec<Value>) {
    let Some(kind) = ValueKind::of(value) else {
        return;
    };
    values.push(Value {
        path: path.clone(),
        kind,
        range: range_of(value),
    });
    if let Some(only) = path::only_value(value) {
        // The brackets in brackets are looked through once more for each `.0`.
        if only.kind() == SyntaxKind::Scalar {
            return collect(&only, with_step(&path, "0"), values);
        }
        let inside = values.len();
        collect(&only, path, values);
        // It is reached as the brackets themselves are.
        values.remove(inside);
        return;
    }
    for (index, element) in value.children().enumerate() {
        let path = match value.kind() {
            SyntaxKind::List => format!("{path}[{index}]"),
            SyntaxKind::Map => match path::entry_key(&element) {
                Some(key) => format!("{path}[{key}]"),
                None => continue,
            },
            _ => match path::field_name(&element) {
                Some(name) => with_step(&path, &name),
                None => with_step(&path, &index.to_string()),
            },
        };
        if let Some(own) = path::own_value(&element) {
            collect(&own, path, values);
        }
    }
}

fn with_step(path: &str, step: &str) -> String {
    if path.is_empty() {
        step.to_owned()
    } else {
        format!("{path}.{step}")
    }
}
