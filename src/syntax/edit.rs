//! Changes to a document: each touches no more of the text than it says, or leaves all as it was.

use super::document::{Document, range_of};
use super::error::{EditError, SyntaxError, SyntaxErrorKind};
use super::kind::{SyntaxKind, SyntaxNode};
use super::lexer::{self, is_blank};
use super::path;
use super::position::TextPosition;
use std::ops::Range;

/// A line's indentation is this much more than that of the brackets around it, where it has no
/// neighbor to go by.
const INDENTATION: &str = "    ";

impl Document {
    /// Put another value in the place of the one at a path.
    ///
    /// # Errors
    /// No such path, or the text is not one value.
    pub fn set(&mut self, path: &str, value_text: &str) -> Result<(), EditError> {
        let value_text = one_value(value_text)?;
        let range = self.range(path).ok_or_else(|| no_such(path))?;
        self.apply(vec![Change::replace(range, value_text)])
    }

    /// Add a field to a struct: behind the last of the fields named in `after` that are there, else
    /// before all others. It gets a line of its own where its neighbor has one.
    ///
    /// # Errors
    /// No struct is at the path, it has the field, the name is none, or the text is not one value.
    pub fn insert_field(
        &mut self,
        struct_path: &str,
        name: &str,
        value_text: &str,
        after: &[&str],
    ) -> Result<(), EditError> {
        let value_text = one_value(value_text)?;
        if !lexer::is_word(name) {
            return Err(EditError::NotAName(name.to_owned()));
        }
        let not_a_struct = || EditError::NotAStruct(struct_path.to_owned());
        let group = self.brackets(struct_path, SyntaxKind::Group, not_a_struct)?;
        let names = self.fields(struct_path).ok_or_else(not_a_struct)?;
        let plain = name.strip_prefix("r#").unwrap_or(name);
        if names.iter().any(|there| there == plain) {
            return Err(EditError::AlreadyThere(plain.to_owned()));
        }
        let neighbor = names
            .iter()
            .rposition(|there| after.contains(&there.as_str()));
        let index = neighbor.map_or(0, |neighbor| neighbor + 1);
        self.insert(&group, index, &format!("{name}: {value_text}"))
    }

    /// Add an item to a list, so that it stands at this index.
    ///
    /// # Errors
    /// No list is at the path, it is shorter than that, or the text is not one value.
    pub fn insert_item(
        &mut self,
        list_path: &str,
        index: usize,
        value_text: &str,
    ) -> Result<(), EditError> {
        let value_text = one_value(value_text)?;
        let not_a_list = || EditError::NotAList(list_path.to_owned());
        let list = self.brackets(list_path, SyntaxKind::List, not_a_list)?;
        let count = list.children().count();
        if index > count {
            return Err(EditError::NoSuchIndex { index, count });
        }
        self.insert(&list, index, value_text)
    }

    /// Add an entry to a map, behind all others.
    ///
    /// # Errors
    /// No map is at the path, it has the key, or one of the texts is not one value.
    pub fn insert_entry(
        &mut self,
        map_path: &str,
        key_text: &str,
        value_text: &str,
    ) -> Result<(), EditError> {
        let (key_text, value_text) = (one_value(key_text)?, one_value(value_text)?);
        let not_a_map = || EditError::NotAMap(map_path.to_owned());
        let map = self.brackets(map_path, SyntaxKind::Map, not_a_map)?;
        if path::entry(&map, key_text).is_some() {
            return Err(EditError::AlreadyThere(path::without_trivia(key_text)));
        }
        let index = map.children().count();
        self.insert(&map, index, &format!("{key_text}: {value_text}"))
    }

    /// Take out a field, an item or an entry with its comma, the rest of its line, and the comments
    /// that stand on lines of their own directly above it.
    ///
    /// # Errors
    /// No such path, or it is the whole.
    pub fn remove(&mut self, path: &str) -> Result<(), EditError> {
        let found = self.find(path).ok_or_else(|| no_such(path))?;
        let element = found.element.ok_or(EditError::Whole)?;
        let around = element.parent().ok_or(EditError::Whole)?;
        let brackets = Brackets::of(&around);
        let start = range_of(&element).start;
        let elements = brackets.elements.iter();
        let index = elements
            .take_while(|element| element.range.start < start)
            .count();
        self.apply(removal(self.text(), &brackets, index))
    }

    fn brackets(
        &self,
        path: &str,
        kind: SyntaxKind,
        otherwise: impl FnOnce() -> EditError,
    ) -> Result<SyntaxNode, EditError> {
        if self.find(path).is_none() {
            return Err(no_such(path));
        }
        self.bracket(path, kind).ok_or_else(otherwise)
    }

    /// Put an element into brackets, so that it stands at this index.
    fn insert(
        &mut self,
        around: &SyntaxNode,
        index: usize,
        element: &str,
    ) -> Result<(), EditError> {
        let changes = insertion(self.text(), &Brackets::of(around), index, element);
        self.apply(changes)
    }

    /// Make the changes, which are in order and do not overlap.
    fn apply(&mut self, changes: Vec<Change>) -> Result<(), EditError> {
        let mut changed = String::with_capacity(self.text().len());
        let mut at = 0;
        for change in changes {
            changed.push_str(&self.text()[at..change.range.start]);
            changed.push_str(&change.text);
            at = change.range.end;
        }
        changed.push_str(&self.text()[at..]);
        *self = Document::parse(&changed).map_err(EditError::Unreadable)?;
        Ok(())
    }
}

fn no_such(path: &str) -> EditError {
    EditError::NoSuchPath(path.to_owned())
}

/// The text without blanks around it, if it is one value and nothing else.
fn one_value(text: &str) -> Result<&str, EditError> {
    let bare = text.trim_matches(is_blank);
    let document = Document::parse(bare).map_err(EditError::NotAValue)?;
    if document.range("") == Some(0..bare.len()) {
        return Ok(bare);
    }
    // An attribute or a comment around it, which could swallow what comes behind.
    let offset = match document.range("") {
        Some(range) if range.start == 0 => range.end,
        _ => 0,
    };
    Err(EditError::NotAValue(SyntaxError {
        position: TextPosition::of_offset(bare, offset),
        offset,
        kind: SyntaxErrorKind::BehindValue,
    }))
}

/// What comes in the place of a range of bytes.
struct Change {
    range: Range<usize>,
    text: String,
}

impl Change {
    fn replace(range: Range<usize>, text: &str) -> Change {
        Change {
            range,
            text: text.to_owned(),
        }
    }

    fn insert(at: usize, text: &str) -> Change {
        Change::replace(at..at, text)
    }

    fn delete(range: Range<usize>) -> Change {
        Change::replace(range, "")
    }
}

/// Where a pair of brackets and what is in them stand in the text.
struct Brackets {
    /// Bytes between the brackets.
    inside: Range<usize>,
    elements: Vec<Element>,
}

struct Element {
    range: Range<usize>,
    /// Where its comma is.
    comma: Option<usize>,
}

impl Element {
    /// Where it ends with its comma.
    fn end(&self) -> usize {
        self.comma.map_or(self.range.end, |comma| comma + 1)
    }
}

impl Brackets {
    fn of(node: &SyntaxNode) -> Brackets {
        let mut inside = range_of(node);
        let mut elements: Vec<Element> = Vec::new();
        for child in node.children_with_tokens() {
            let range = child.text_range();
            let range = range.start().into()..range.end().into();
            match child.kind() {
                SyntaxKind::OpenParenthesis | SyntaxKind::OpenBracket | SyntaxKind::OpenBrace => {
                    inside.start = range.end;
                }
                kind if kind.is_closing() => inside.end = range.start,
                SyntaxKind::Comma => {
                    if let Some(last) = elements.last_mut() {
                        last.comma = Some(range.start);
                    }
                }
                _ if child.as_node().is_some() => elements.push(Element { range, comma: None }),
                _ => {}
            }
        }
        Brackets { inside, elements }
    }
}

fn insertion(text: &str, brackets: &Brackets, index: usize, element: &str) -> Vec<Change> {
    let line_end = line_end_of(text);
    let Some(before) = index.checked_sub(1) else {
        return first_insertion(text, brackets, element, line_end);
    };
    let before = &brackets.elements[before];
    let Some(indentation) = indentation_of_own_line(text, before.range.start) else {
        return match before.comma {
            Some(comma) => vec![Change::insert(comma + 1, &format!(" {element},"))],
            None => vec![Change::insert(before.range.end, &format!(", {element}"))],
        };
    };
    let own_line = format!("{line_end}{indentation}{element}");
    match before.comma {
        Some(comma) => match rest_of_line(text, comma + 1) {
            Some(at) => vec![Change::insert(at, &format!("{own_line},"))],
            None => vec![Change::insert(comma + 1, &format!(" {element},"))],
        },
        None => match rest_of_line(text, before.range.end) {
            Some(at) => vec![
                Change::insert(before.range.end, ","),
                Change::insert(at, &own_line),
            ],
            None => vec![Change::insert(before.range.end, &format!(",{own_line}"))],
        },
    }
}

/// An element that is to come before all others.
fn first_insertion(text: &str, brackets: &Brackets, element: &str, line_end: &str) -> Vec<Change> {
    let inside = &text[brackets.inside.clone()];
    if let Some(first) = brackets.elements.first() {
        let own_line = indentation_of_own_line(text, first.range.start);
        return match own_line.zip(rest_of_line(text, brackets.inside.start)) {
            Some((indentation, at)) => {
                let element = format!("{line_end}{indentation}{element},");
                vec![Change::insert(at, &element)]
            }
            None => vec![Change::insert(
                brackets.inside.start,
                &format!("{element}, "),
            )],
        };
    }
    // Nothing in them but blanks and comments.
    let last_line = inside.trim_end_matches([' ', '\t']);
    if last_line.ends_with('\n') {
        let indentation = &inside[last_line.len()..];
        let at = brackets.inside.start + last_line.len();
        let element = format!("{indentation}{INDENTATION}{element},{line_end}");
        vec![Change::insert(at, &element)]
    } else if inside.trim_matches(is_blank).is_empty() {
        vec![Change::replace(brackets.inside.clone(), element)]
    } else {
        vec![Change::insert(brackets.inside.end, element)]
    }
}

fn removal(text: &str, brackets: &Brackets, index: usize) -> Vec<Change> {
    let element = &brackets.elements[index];
    let before = index
        .checked_sub(1)
        .map(|before| &brackets.elements[before]);
    let next = brackets.elements.get(index + 1);
    let floor = before.map_or(brackets.inside.start, Element::end);
    let mut changes = Vec::new();
    if let (None, Some(comma)) = (element.comma, before.and_then(|before| before.comma)) {
        // The last one had no comma, and so the new last one has none.
        changes.push(Change::delete(comma..comma + 1));
    }
    let Some(indentation) = indentation_of_own_line(text, element.range.start) else {
        let end = blanks_from(text, element.end());
        let range = match next {
            Some(_) => element.range.start..end,
            None if text[floor..element.range.start]
                .trim_matches(is_blank)
                .is_empty() =>
            {
                floor..element.end()
            }
            None => element.range.start..element.end(),
        };
        changes.push(Change::delete(range));
        return changes;
    };
    let line_start = element.range.start - indentation.len();
    let from = comments_above(text, floor, line_start);
    match rest_of_line(text, element.end()) {
        Some(at) => {
            let behind = text[at..].find('\n').map_or(text.len(), |end| at + end + 1);
            changes.push(Change::delete(from..behind));
        }
        // Something else stands on its line and keeps the indentation.
        None => {
            changes.push(Change::delete(from..line_start));
            let end = blanks_from(text, element.end());
            changes.push(Change::delete(element.range.start..end));
        }
    }
    changes
}

/// What lines of this text end with.
fn line_end_of(text: &str) -> &'static str {
    let first = text.find('\n');
    let returned = first.is_some_and(|first| text[..first].ends_with('\r'));
    if returned { "\r\n" } else { "\n" }
}

/// The blanks before `start`, if nothing else stands before it on its line.
fn indentation_of_own_line(text: &str, start: usize) -> Option<&str> {
    let before = &text[..start];
    let line = before.rfind('\n')? + 1;
    let indentation = &before[line..];
    let blank = indentation.bytes().all(|b| matches!(b, b' ' | b'\t'));
    blank.then_some(indentation)
}

/// End of the blanks from `at` on the same line.
fn blanks_from(text: &str, at: usize) -> usize {
    let rest = &text[at..];
    at + (rest.len() - rest.trim_start_matches([' ', '\t']).len())
}

/// Where the line ends on which `at` stands, if there are only blanks and comments until then.
fn rest_of_line(text: &str, at: usize) -> Option<usize> {
    let mut end = at;
    for token in lexer::tokens(&text[at..]) {
        let token_text = &text[end..end + token.length];
        match token.kind {
            SyntaxKind::LineComment => {
                // A carriage return belongs to the end of the line.
                return Some(end + token_text.trim_end_matches('\r').len());
            }
            SyntaxKind::BlockComment if token_text.contains('\n') => return None,
            SyntaxKind::BlockComment => {}
            SyntaxKind::Blank => {
                if let Some(newline) = token_text.find('\n') {
                    let line = token_text[..newline].trim_end_matches('\r');
                    return Some(end + line.len());
                }
            }
            _ => return None,
        }
        end += token.length;
    }
    Some(end)
}

/// Beginning of the lowest comments that stand on lines of their own and reach down to `line_start`,
/// not further up than `floor`.
fn comments_above(text: &str, floor: usize, line_start: usize) -> usize {
    let mut tokens = Vec::new();
    let mut at = floor;
    for token in lexer::tokens(text.get(floor..line_start).unwrap_or("")) {
        tokens.push((token.kind, at, &text[at..at + token.length]));
        at += token.length;
    }
    let mut from = line_start;
    // Line ends since the last comment, counted from below.
    let mut line_ends = 0;
    for (kind, start, token) in tokens.into_iter().rev() {
        match kind {
            SyntaxKind::Blank => line_ends += token.matches('\n').count(),
            _ if line_ends > 1 => break,
            _ => {
                line_ends = 0;
                if let Some(indentation) = indentation_of_own_line(text, start) {
                    from = start - indentation.len();
                }
            }
        }
    }
    from
}
