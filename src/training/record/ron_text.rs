//! RON text: read it under limits, and find where in it a field stands.
//!
//! Shared by every reader of RON; it lives here because `record` is the first room that reads any.
//! Paths are written as in Rust: `codes[3].code`, `common[BeltGripNm]` for a map's key, `pair.1` for
//! a place in a tuple. The only value in a pair of brackets takes the brackets' own path, so the
//! name in `fault: Named("x")` is at `fault`.

use serde::de::DeserializeOwned;
use std::collections::BTreeMap;
use std::ops::Range;

/// Deepest nesting that is read. Our deepest file needs less than ten; the limit keeps a hostile
/// file from using up the stack.
const NESTING: usize = 48;

/// How our RON is read and written.
pub fn options() -> ron::Options {
    ron::Options::default().with_recursion_limit(NESTING)
}

/// A place in a text, both counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextPosition {
    pub line: usize,
    /// In characters.
    pub column: usize,
}

/// Text that is not the RON that was wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Misfit {
    pub position: TextPosition,
    /// Path of the field.
    pub field: String,
    pub error: ron::Error,
    /// For a whole number that does not fit: what is written, and the least and the greatest that do.
    pub range: Option<Box<WrongInteger>>,
}

/// A whole number outside the range of its field.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{found} is out of range; write a whole number from {least} to {most}")]
pub struct WrongInteger {
    pub found: String,
    pub least: i128,
    pub most: i128,
}

/// Read a value, or tell which field is wrong and where.
pub fn parse<T: DeserializeOwned>(options: &ron::Options, text: &str) -> Result<T, Misfit> {
    options.from_str(text).map_err(|spanned| {
        let outline = Outline::of(text);
        let end = offset(text, spanned.span.end.line, spanned.span.end.col);
        let start = offset(text, spanned.span.start.line, spanned.span.start.col);
        // The reader stops behind the token it rejects, which may be the first blank of the next line.
        let behind = text.get(start..end).unwrap_or("").trim_end().len();
        let at = if behind == 0 {
            start
        } else {
            start + behind - 1
        };
        let mut field = outline.path_at(at);
        // Blanks before what is rejected are not meant, as long as it is on the same line.
        let rejected = text.get(start..end).unwrap_or("");
        let blanks = rejected.len() - rejected.trim_start_matches([' ', '\t']).len();
        let mut position = find_position(text, start + blanks);
        match &spanned.code {
            // A bracket too many closes all of it too early: what is missing may stand behind.
            ron::Error::MissingStructField { .. } if outline.behind().is_some() => {
                let behind = outline.behind().unwrap_or(start);
                return Misfit {
                    position: find_position(text, behind),
                    field: String::new(),
                    error: ron::Error::TrailingCharacters,
                    range: None,
                };
            }
            ron::Error::MissingStructField { field: name, .. } => {
                // The parser notices at the closing bracket; people look at the opening one.
                let around = outline.around(at);
                position = around.map_or(position, |node| find_position(text, node.start));
                field = around.map_or_else(String::new, |node| outline.path_of(node));
                push_field(&mut field, name);
            }
            // The comma is missing behind the value before, which may be on a line further up.
            ron::Error::ExpectedComma => {
                let inside = outline.number_at(end).filter(|number| number.start < end);
                if inside.is_none()
                    && let Some(before) = outline.ending_before(end)
                {
                    position = find_position(text, before.end);
                    field = outline.path_of(before);
                }
            }
            // A decimal comma ends the number: what stands behind it is no name.
            ron::Error::SuggestRawIdentifier(found)
                if found.starts_with(|c: char| c.is_ascii_digit()) =>
            {
                let before = outline.ending_before(end);
                field = before.map_or(field, |node| outline.path_of(node));
            }
            ron::Error::ExpectedMapColon => {
                let name = last_word(text.get(..end).unwrap_or(""));
                let around = outline.around(at);
                field = around.map_or_else(String::new, |node| outline.path_of(node));
                push_field(&mut field, name);
            }
            ron::Error::NoSuchStructField { found, .. } if !ends_with(&field, found) => {
                push_field(&mut field, found);
            }
            ron::Error::DuplicateStructField { field: name, .. } if !ends_with(&field, name) => {
                push_field(&mut field, name);
            }
            _ => {}
        }
        let range = outline
            .number_at(at)
            .and_then(|number| wrong_integer::<T>(options, text, number));
        Misfit {
            position,
            field,
            error: spanned.code,
            range: range.map(Box::new),
        }
    })
}

/// The range of the field in which the number at `number` stands, found by reading the text with other
/// numbers in its place; none where no whole number is wanted.
fn wrong_integer<T: DeserializeOwned>(
    options: &ron::Options,
    text: &str,
    number: std::ops::Range<usize>,
) -> Option<WrongInteger> {
    let found = text.get(number.clone())?;
    let digits = found.strip_prefix('-').unwrap_or(found);
    if digits.is_empty() || !digits.bytes().all(|b| b.is_ascii_digit() || b == b'_') {
        return None;
    }
    let (before, after) = (text.get(..number.start)?, text.get(number.end..)?);
    let fits = |number: i128| {
        let with_it = format!("{before}{number}");
        let other = format!("{with_it}{after}");
        match options.from_str::<T>(&other) {
            Ok(_) => true,
            // What stands behind it may be wrong too.
            Err(error) => {
                offset(&other, error.span.start.line, error.span.start.col) >= with_it.len()
            }
        }
    };
    let most = [
        i128::from(u64::MAX),
        i128::from(i64::MAX),
        i128::from(u32::MAX),
        i128::from(i32::MAX),
        i128::from(u16::MAX),
        i128::from(i16::MAX),
        i128::from(u8::MAX),
        i128::from(i8::MAX),
    ];
    let most = most.into_iter().find(|most| fits(*most))?;
    let least = if fits(-1) { -most - 1 } else { 0 };
    let inside = found
        .replace('_', "")
        .parse()
        .is_ok_and(|found: i128| (least..=most).contains(&found));
    (!inside).then(|| WrongInteger {
        found: found.to_owned(),
        least,
        most,
    })
}

/// The word at the end of a text, blanks behind it left out.
fn last_word(text: &str) -> &str {
    let text = text.trim_end();
    let before = text.trim_end_matches(|c: char| c.is_alphanumeric() || c == '_');
    &text[before.len()..]
}

fn push_field(path: &mut String, name: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(name);
}

fn ends_with(path: &str, name: &str) -> bool {
    path == name
        || path
            .strip_suffix(name)
            .is_some_and(|stem| stem.ends_with('.'))
}

/// Byte offset of a line and column, both from 1; the text's length when they lie outside.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let start = match line.saturating_sub(1) {
        0 => 0,
        skip => match text.match_indices('\n').nth(skip - 1) {
            Some((newline, _)) => newline + 1,
            None => return text.len(),
        },
    };
    let rest = text.get(start..).unwrap_or("");
    let within = rest
        .char_indices()
        .nth(column.saturating_sub(1))
        .map_or(rest.len(), |(at, _)| at);
    start + within
}

/// Line and column of a byte offset.
fn find_position(text: &str, offset: usize) -> TextPosition {
    Lines::of(text).position(offset)
}

/// Where each line of a text begins.
#[derive(Clone, Debug)]
struct Lines<'a> {
    text: &'a str,
    starts: Vec<usize>,
}

impl<'a> Lines<'a> {
    fn of(text: &'a str) -> Lines<'a> {
        let behind_breaks = text.match_indices('\n').map(|(at, _)| at + 1);
        let starts = std::iter::once(0).chain(behind_breaks).collect();
        Lines { text, starts }
    }

    fn position(&self, offset: usize) -> TextPosition {
        let line = self.starts.partition_point(|start| *start <= offset);
        let start = self.starts[line - 1];
        let line_text = self.text.get(start..).unwrap_or("").char_indices();
        let before = line_text.take_while(|(at, _)| start + at < offset);
        TextPosition {
            line,
            column: before.count() + 1,
        }
    }
}

/// The place of every value by its path, for looking up many.
#[derive(Clone, Debug)]
pub struct Places<'a> {
    lines: Lines<'a>,
    /// Where the first and the last value at a path begin and end.
    by_path: BTreeMap<String, (Range<usize>, Range<usize>)>,
}

/// A stretch of a text as language servers have it (Language Server Protocol 3.17, "Position"): lines and characters
/// from 0, characters in UTF-16 code units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextRange {
    /// Line and character of its beginning.
    pub start: (usize, usize),
    /// Line and character behind its end.
    pub end: (usize, usize),
}

impl TextRange {
    /// Of these bytes of a text.
    fn of(lines: &Lines<'_>, bytes: Range<usize>) -> TextRange {
        let place = |offset: usize| {
            let line = lines.starts.partition_point(|start| *start <= offset) - 1;
            let before = lines.text.get(lines.starts[line]..offset).unwrap_or("");
            (line, before.encode_utf16().count())
        };
        TextRange {
            start: place(bytes.start),
            end: place(bytes.end),
        }
    }

    /// From a position to the end of its line.
    pub fn rest_of_line(text: &str, position: TextPosition) -> TextRange {
        let start = offset(text, position.line, position.column);
        let rest = text.get(start..).unwrap_or("");
        let line = rest.split('\n').next().unwrap_or("").trim_end();
        TextRange::of(&Lines::of(text), start..start + line.len())
    }
}

impl Places<'_> {
    /// Where the value at `path` begins. A value that the file leaves out is found at the nearest
    /// value around it.
    pub fn position(&self, path: &str) -> TextPosition {
        self.lines.position(self.find(path).0.start)
    }

    /// Where the last value at `path` begins: a map may wrongly have one key twice.
    pub fn last_position(&self, path: &str) -> TextPosition {
        self.lines.position(self.find(path).1.start)
    }

    /// The stretch of the first value at `path`, found as [`Places::position`] finds it.
    pub fn range(&self, path: &str) -> TextRange {
        TextRange::of(&self.lines, self.find(path).0)
    }

    /// The stretch of the last value at `path`.
    pub fn last_range(&self, path: &str) -> TextRange {
        TextRange::of(&self.lines, self.find(path).1)
    }

    fn find(&self, path: &str) -> (Range<usize>, Range<usize>) {
        let mut wanted = path;
        loop {
            if let Some(found) = self.by_path.get(wanted) {
                return found.clone();
            }
            match wanted.rfind(['.', '[']) {
                Some(cut) => wanted = &wanted[..cut],
                None if !wanted.is_empty() => wanted = "",
                None => return (0..0, 0..0),
            }
        }
    }
}

/// How a value hangs in the one around it.
#[derive(Clone, Debug, PartialEq, Eq)]
enum PathSegment {
    Root,
    Field(String),
    Key(String),
    Item(usize),
    Place(usize),
}

#[derive(Clone, Debug)]
struct Node {
    parent: usize,
    step: PathSegment,
    /// Where the value's name begins, or the value itself where it has none.
    named_from: usize,
    start: usize,
    end: usize,
    children: usize,
    bracketed: bool,
}

/// Every value in a RON text with its path and place. Made from any text, broken RON included:
/// what cannot be understood is stepped over.
#[derive(Clone, Debug)]
pub struct Outline<'a> {
    text: &'a str,
    nodes: Vec<Node>,
}

impl<'a> Outline<'a> {
    pub fn of(text: &'a str) -> Outline<'a> {
        let mut scanner = Scanner {
            text,
            at: 0,
            nodes: Vec::new(),
            open: Vec::new(),
        };
        scanner.run();
        Outline {
            text,
            nodes: scanner.nodes,
        }
    }

    /// Every place by path. Meant for texts that have been read well, whose names are short.
    pub fn places(&self) -> Places<'a> {
        let mut by_path = BTreeMap::new();
        for node in &self.nodes {
            let (_, last) = by_path
                .entry(self.path_of(node))
                .or_insert((node.start..node.end, node.start..node.end));
            *last = node.start..node.end;
        }
        let lines = Lines::of(self.text);
        Places { lines, by_path }
    }

    /// Names of the fields of the whole value.
    pub fn fields(&self) -> Vec<&str> {
        let outermost = self.nodes.iter().skip(1).filter(|node| node.parent == 0);
        outermost
            .filter_map(|node| match &node.step {
                PathSegment::Field(name) => Some(name.as_str()),
                _ => None,
            })
            .collect()
    }

    /// Path of the innermost value that covers a byte offset.
    fn path_at(&self, offset: usize) -> String {
        let covering =
            |node: &&Node| node.named_from <= offset && offset < node.end.max(node.start + 1);
        self.nodes
            .iter()
            .rev()
            .find(covering)
            .map_or_else(String::new, |node| self.path_of(node))
    }

    /// Where the number ends and begins that covers a byte offset.
    fn number_at(&self, offset: usize) -> Option<std::ops::Range<usize>> {
        let node = self
            .nodes
            .iter()
            .rev()
            .find(|node| !node.bracketed && node.start <= offset && offset < node.end)?;
        Some(node.start..node.end)
    }

    /// The innermost bracketed value that covers a byte offset.
    fn around(&self, offset: usize) -> Option<&Node> {
        self.nodes
            .iter()
            .rev()
            .find(|node| node.bracketed && node.start <= offset && offset < node.end)
    }

    /// The value that ends last before a byte offset.
    fn ending_before(&self, offset: usize) -> Option<&Node> {
        let ended = self.nodes.iter().filter(|node| node.end <= offset);
        // Of two that end together the outer one comes first.
        ended.rev().max_by_key(|node| node.end)
    }

    /// Where something stands behind the whole value.
    fn behind(&self) -> Option<usize> {
        let end = self.nodes.first()?.end;
        let mut scanner = Scanner {
            text: self.text,
            at: end,
            nodes: Vec::new(),
            open: Vec::new(),
        };
        scanner.skip_blank();
        (scanner.at < self.text.len()).then_some(scanner.at)
    }

    /// The first number that is not finite (`inf`, `NaN`, `1e999`): its path, place and text.
    pub fn not_finite(&self) -> Option<(String, TextPosition, &'a str)> {
        let node = self.nodes.iter().find(|node| {
            let text = self.text.get(node.start..node.end).unwrap_or("");
            !node.bracketed && is_not_finite(text)
        })?;
        let text = self.text.get(node.start..node.end).unwrap_or("");
        let shown = text.get(..24).unwrap_or(text);
        Some((
            self.path_of(node),
            find_position(self.text, node.start),
            shown,
        ))
    }

    fn path_of(&self, node: &Node) -> String {
        let mut steps = Vec::new();
        let mut here = node;
        while here.step != PathSegment::Root {
            let parent = &self.nodes[here.parent];
            steps.push((&here.step, parent.children));
            here = parent;
        }
        let mut path = String::new();
        for (step, siblings) in steps.into_iter().rev() {
            match step {
                PathSegment::Root => {}
                PathSegment::Field(name) => push_field(&mut path, name),
                PathSegment::Key(key) => path.push_str(&format!("[{key}]")),
                PathSegment::Item(index) => path.push_str(&format!("[{index}]")),
                PathSegment::Place(_) if siblings == 1 => {}
                PathSegment::Place(index) => push_field(&mut path, &index.to_string()),
            }
        }
        path
    }
}

fn is_not_finite(word: &str) -> bool {
    let number = word
        .strip_suffix("f64")
        .or_else(|| word.strip_suffix("f32"))
        .unwrap_or(word);
    let digits = number.trim_start_matches(['+', '-']);
    let is_number = digits.starts_with(|c: char| c.is_ascii_digit() || c == '.');
    let value = || number.replace('_', "").parse::<f64>();
    matches!(digits, "inf" | "NaN") || is_number && value().is_ok_and(|v| !v.is_finite())
}

/// A bracket that is open: the node it belongs to and its kind.
struct Open {
    node: usize,
    bracket: u8,
}

struct Scanner<'a> {
    text: &'a str,
    at: usize,
    nodes: Vec<Node>,
    open: Vec<Open>,
}

impl<'a> Scanner<'a> {
    fn run(&mut self) {
        loop {
            self.skip_blank();
            match self.peek() {
                None => break,
                Some(b',') => self.at += 1,
                Some(b')' | b']' | b'}') => {
                    self.at += 1;
                    let Some(closed) = self.open.pop() else { break };
                    self.nodes[closed.node].end = self.at;
                    if self.open.is_empty() {
                        break;
                    }
                }
                Some(_) => {
                    if !self.value() {
                        break;
                    }
                }
            }
        }
        // Brackets that the text never closes reach to its end.
        for open in &self.open {
            self.nodes[open.node].end = self.text.len();
        }
    }

    /// Take one value, or the beginning of a bracketed one. False when the scan must stop.
    fn value(&mut self) -> bool {
        let named_from = self.at;
        let step = match self.open.last() {
            None if self.nodes.is_empty() => PathSegment::Root,
            None => return false,
            Some(open) => {
                let parent = open.node;
                let bracket = open.bracket;
                let index = self.nodes[parent].children;
                self.nodes[parent].children += 1;
                match bracket {
                    b'[' => PathSegment::Item(index),
                    b'{' => PathSegment::Key(self.key()),
                    _ => self
                        .field_name()
                        .map_or(PathSegment::Place(index), PathSegment::Field),
                }
            }
        };
        self.skip_blank();
        let start = self.at;
        let node = self.nodes.len();
        self.nodes.push(Node {
            parent: self.open.last().map_or(0, |open| open.node),
            step,
            named_from,
            start,
            end: start,
            children: 0,
            bracketed: false,
        });
        if matches!(self.peek(), None | Some(b',' | b')' | b']' | b'}')) {
            return true;
        }
        if !matches!(self.peek(), Some(b'(' | b'[' | b'{')) {
            self.atom();
            self.nodes[node].end = self.at;
            let behind = self.at;
            self.skip_blank();
            if self.peek() != Some(b'(') {
                self.at = behind;
                return true;
            }
        }
        if self.open.len() >= NESTING {
            return false;
        }
        let bracket = self.peek().unwrap_or(b'(');
        self.nodes[node].bracketed = true;
        self.open.push(Open { node, bracket });
        self.at += 1;
        true
    }

    /// `name:` of a struct's field, taken only when both are there.
    fn field_name(&mut self) -> Option<String> {
        let start = self.at;
        self.atom();
        let name = self.text.get(start..self.at).unwrap_or("").to_owned();
        self.skip_blank();
        let is_name = name.starts_with(|c: char| c.is_alphabetic() || c == '_');
        if is_name && self.peek() == Some(b':') {
            self.at += 1;
            return Some(name.strip_prefix("r#").unwrap_or(&name).to_owned());
        }
        self.at = start;
        None
    }

    /// A map's key up to its colon, blanks taken out.
    fn key(&mut self) -> String {
        let start = self.at;
        let mut depth = 0_usize;
        while let Some(byte) = self.peek() {
            match byte {
                b':' if depth == 0 => break,
                b'(' | b'[' | b'{' => {
                    depth += 1;
                    self.at += 1;
                }
                b')' | b']' | b'}' if depth == 0 => break,
                b')' | b']' | b'}' => {
                    depth -= 1;
                    self.at += 1;
                }
                _ => self.atom(),
            }
            self.skip_blank();
        }
        let key = self.text.get(start..self.at).unwrap_or("");
        let key = key.split_whitespace().collect();
        if self.peek() == Some(b':') {
            self.at += 1;
        }
        key
    }

    /// One word, number, string or character; at least one character in any case.
    fn atom(&mut self) {
        let rest = self.rest();
        let prefix = rest
            .bytes()
            .take_while(|b| matches!(b, b'b' | b'r'))
            .count();
        let hashes = rest[prefix..].bytes().take_while(|b| *b == b'#').count();
        let opening = rest.as_bytes().get(prefix + hashes);
        let raw = rest[..prefix].contains('r');
        if prefix <= 2 && opening == Some(&b'"') && (hashes == 0 || raw) {
            let body = &rest[prefix + hashes + 1..];
            let length = if raw {
                let closing = format!("\"{}", "#".repeat(hashes));
                body.find(&closing).map(|end| end + closing.len())
            } else {
                quoted(body, '"')
            };
            let length = length.unwrap_or(body.len());
            self.at += prefix + hashes + 1 + length;
            return;
        }
        if prefix <= 1 && !raw && hashes == 0 && opening == Some(&b'\'') {
            let body = &rest[prefix + 1..];
            // A lone quote is no character: step over it alone.
            let length = quoted(body, '\'').filter(|length| *length <= 12);
            self.at += prefix + 1 + length.unwrap_or(0);
            return;
        }
        let in_word = |c: char| c.is_alphanumeric() || "_.+-#".contains(c);
        let word = rest.find(|c| !in_word(c)).unwrap_or(rest.len());
        let first = rest.chars().next().map_or(0, char::len_utf8);
        self.at += word.max(first);
    }

    fn skip_blank(&mut self) {
        loop {
            let rest = self.rest();
            let blank = rest.len() - rest.trim_start().len();
            let rest = &rest[blank..];
            self.at += blank;
            if rest.starts_with("//") {
                self.at += rest.find('\n').unwrap_or(rest.len());
            } else if rest.starts_with("/*") {
                self.at += block_comment(rest);
            } else if rest.starts_with("#![") && self.nodes.is_empty() {
                self.at += rest.find(']').map_or(rest.len(), |end| end + 1);
            } else {
                return;
            }
        }
    }

    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }
}

/// Length up to and with the closing quote that no backslash precedes.
fn quoted(body: &str, quote: char) -> Option<usize> {
    let mut escaped = false;
    for (at, c) in body.char_indices() {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            c if c == quote => return Some(at + c.len_utf8()),
            _ => {}
        }
    }
    None
}

/// Length of a block comment with the ones nested in it.
fn block_comment(rest: &str) -> usize {
    let bytes = rest.as_bytes();
    let (mut at, mut depth) = (0, 0_usize);
    while at < bytes.len() {
        match &bytes[at..(at + 2).min(bytes.len())] {
            b"/*" => (at, depth) = (at + 2, depth + 1),
            b"*/" => {
                (at, depth) = (at + 2, depth - 1);
                if depth == 0 {
                    return at;
                }
            }
            _ => at += 1,
        }
    }
    rest.len()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const TEXT: &str = r####"#![enable(implicit_some)]
// A comment with ( and ".
Board(
    name: "a, ) b \" c", /* nested /* twice */ ) */
    codes: [
        (code: 11, raw: r#"x " ] y"#),
        ( code:
            12, sign: ','),
    ],
    map: {
        BeltGripNm: 3.0,
        WireOhms( Cold1 ): 1e999,
    },
    pair: (1, -inf),
    fault: DrawFrom(["a",
        "b"]),
)"####;

    #[track_caller]
    fn check(path: &str, line: usize) {
        assert_eq!(
            Outline::of(TEXT).places().position(path).line,
            line,
            "{path}"
        );
    }

    #[test]
    fn every_kind_of_path_is_found() {
        check("", 3);
        check("name", 4);
        check("codes", 5);
        check("codes[0]", 6);
        check("codes[0].code", 6);
        check("codes[0].raw", 6);
        check("codes[1]", 7);
        check("codes[1].code", 8);
        check("codes[1].sign", 8);
        check("map[BeltGripNm]", 11);
        check("map[WireOhms(Cold1)]", 12);
        check("pair.0", 14);
        check("pair.1", 14);
        check("fault[0]", 15);
        check("fault[1]", 16);
    }

    #[test]
    fn a_whole_number_out_of_range_says_the_range_of_its_field() {
        #[derive(Debug, serde::Deserialize)]
        struct Numbers {
            #[expect(dead_code, reason = "only read")]
            small: u8,
            #[expect(dead_code, reason = "only read")]
            middle: (u32, i16),
            #[expect(dead_code, reason = "only read")]
            large: u64,
        }
        let range = |text: &str| {
            let misfit = parse::<Numbers>(&options(), text).expect_err("out of range");
            let range = misfit.range.map(|range| (range.least, range.most));
            (misfit.field, range)
        };
        let said = |field: &str, least: i128, most: i128| (field.to_owned(), Some((least, most)));
        let small = "(small: 256, middle: (1, 1), large: 1)";
        assert_eq!(range(small), said("small", 0, 255));
        let negative = "(small: -1, middle: (1, 1), large: 1)";
        assert_eq!(range(negative), said("small", 0, 255));
        let first = "(small: 1, middle: (4294967296, 1), large: 1)";
        assert_eq!(range(first), said("middle.0", 0, 4_294_967_295));
        let second = "(small: 1, middle: (1, 32768), large: 1)";
        assert_eq!(range(second), said("middle.1", -32_768, 32_767));
        let large = "(small: 1, middle: (1, 1), large: 18446744073709551616)";
        assert_eq!(range(large), said("large", 0, i128::from(u64::MAX)));
        assert_eq!(range("(small: true, middle: (1, 1), large: 1)").1, None);
        assert_eq!(range("(small: 1.5, middle: (1, 1), large: 1)").1, None);
    }

    #[test]
    fn a_value_left_out_is_found_at_the_one_around_it() {
        check("codes[1].text.en", 7);
        check("codes[9]", 5);
        check("nothing[3].like.this", 3);
    }

    #[test]
    fn numbers_that_are_not_finite_are_found() {
        let (path, position, text) = Outline::of(TEXT).not_finite().expect("1e999 is there");
        assert_eq!(
            (path.as_str(), position.line, text),
            ("map[WireOhms(Cold1)]", 12, "1e999")
        );
        let (path, ..) = Outline::of("(a: (1, -inf))")
            .not_finite()
            .expect("-inf is there");
        assert_eq!(path, "a.1");
        assert_eq!(Outline::of("(a: \"inf\", b: 1e300)").not_finite(), None);
    }

    proptest! {
        #[test]
        fn no_text_makes_the_outline_panic(text in "\\PC*", path in "[a-z.\\[\\]0-9é]*", at in 0_usize..99) {
            let outline = Outline::of(&text);
            let position = outline.places().position(&path);
            prop_assert!(position.line >= 1 && position.column >= 1);
            outline.path_at(at);
            outline.not_finite();
        }

        #[test]
        fn no_ron_like_text_makes_the_outline_panic(text in "([(\\[{}\\]):,\"'#r/*\\\\é\n ]|ab|//|r#\"){0,80}") {
            let outline = Outline::of(&text);
            outline.places().position("ab[0].ab");
            outline.path_at(text.len() / 2);
        }
    }
}
