//! Tokens put together into a tree. Every text gives a tree that holds all of it; what does not fit is
//! kept where it stands, and the first thing that is wrong is told.

use super::error::SyntaxErrorKind;
use super::kind::{Ron, SyntaxKind};
use super::lexer::{self, Token};
use rowan::{Checkpoint, GreenNode, GreenNodeBuilder, Language};

/// Deepest nesting of brackets. More than any reader of ours follows, and little enough for the stack.
pub const DEEPEST: usize = 64;

/// The tree of any text, and what is wrong with it first, with its byte offset.
pub struct Parsed {
    pub tree: GreenNode,
    pub error: Option<(usize, SyntaxErrorKind)>,
}

/// Read a text.
pub fn parse(text: &str) -> Parsed {
    let mut parser = Parser {
        text,
        tokens: lexer::tokens(text).collect(),
        next: 0,
        offset: 0,
        depth: 0,
        builder: GreenNodeBuilder::new(),
        error: None,
    };
    parser.root();
    Parsed {
        tree: parser.builder.finish(),
        error: parser.error,
    }
}

struct Parser<'a> {
    text: &'a str,
    tokens: Vec<Token>,
    /// Index of the token that comes next, and its place in the text.
    next: usize,
    offset: usize,
    depth: usize,
    builder: GreenNodeBuilder<'static>,
    error: Option<(usize, SyntaxErrorKind)>,
}

impl Parser<'_> {
    fn root(&mut self) {
        self.start(SyntaxKind::Root);
        self.trivia();
        while self.peek() == Some(SyntaxKind::Hash) {
            self.attribute();
            self.trivia();
        }
        self.value();
        self.trivia();
        if self.peek().is_some() {
            self.wrong(SyntaxErrorKind::BehindValue);
        }
        self.rest();
        self.builder.finish_node();
    }

    /// `#![enable(names)]`, `#![type = "…"]` or `#![schema = "…"]`.
    fn attribute(&mut self) {
        const EXTENSIONS: [&str; 4] = [
            "unwrap_newtypes",
            "implicit_some",
            "unwrap_variant_newtypes",
            "explicit_struct_names",
        ];
        self.start(SyntaxKind::Attribute);
        let opened = [
            SyntaxKind::Hash,
            SyntaxKind::Exclamation,
            SyntaxKind::OpenBracket,
        ]
        .into_iter()
        .all(|kind| self.take(kind));
        let read = opened
            && match self.word() {
                Some("enable") => {
                    self.bump();
                    let mut good = self.take(SyntaxKind::OpenParenthesis);
                    let mut names = 0;
                    while good && self.peek() == Some(SyntaxKind::Word) {
                        good = self.word().is_some_and(|name| EXTENSIONS.contains(&name));
                        self.bump();
                        names += 1;
                        if !self.take(SyntaxKind::Comma) {
                            break;
                        }
                    }
                    good && names > 0 && self.take(SyntaxKind::CloseParenthesis)
                }
                Some("type" | "schema") => {
                    self.bump();
                    self.take(SyntaxKind::Equals) && {
                        self.trivia();
                        let bytes = self.rest_of_text().starts_with('b');
                        !bytes && self.take(SyntaxKind::String)
                    }
                }
                _ => false,
            }
            && self.take(SyntaxKind::CloseBracket);
        if !read {
            self.wrong(SyntaxErrorKind::WrongAttribute);
            // So that something is taken in any case: on to the end of the attribute or of the text.
            while self
                .peek()
                .is_some_and(|kind| kind != SyntaxKind::CloseBracket)
            {
                self.bump();
            }
            if self.peek().is_some() {
                self.bump();
            }
        }
        self.builder.finish_node();
    }

    /// One value, which may be missing.
    fn value(&mut self) {
        let Some(kind) = self.peek() else {
            return self.wrong(SyntaxErrorKind::ExpectedValue);
        };
        match kind {
            SyntaxKind::OpenParenthesis => {
                let here = self.builder.checkpoint();
                self.bracketed(here, SyntaxKind::Group);
            }
            SyntaxKind::OpenBracket => {
                let here = self.builder.checkpoint();
                self.bracketed(here, SyntaxKind::List);
            }
            SyntaxKind::OpenBrace => {
                let here = self.builder.checkpoint();
                self.bracketed(here, SyntaxKind::Map);
            }
            SyntaxKind::Word => self.named(),
            SyntaxKind::Number | SyntaxKind::Byte => {
                self.start(SyntaxKind::Scalar);
                self.bump();
                self.range_end();
                self.builder.finish_node();
            }
            SyntaxKind::Range => {
                self.start(SyntaxKind::Scalar);
                self.range_end();
                self.builder.finish_node();
            }
            SyntaxKind::Character | SyntaxKind::String | SyntaxKind::Unknown => {
                self.start(SyntaxKind::Scalar);
                self.bump();
                self.builder.finish_node();
            }
            SyntaxKind::Hash | SyntaxKind::Exclamation | SyntaxKind::Equals => {
                self.wrong(SyntaxErrorKind::ExpectedValue);
                self.start(SyntaxKind::Scalar);
                self.bump();
                self.builder.finish_node();
            }
            _ => self.wrong(SyntaxErrorKind::ExpectedValue),
        }
    }

    /// A name alone, or with brackets behind it.
    fn named(&mut self) {
        let here = self.builder.checkpoint();
        let not_finite = self.word().is_some_and(lexer::is_not_finite_word);
        self.bump();
        if not_finite && self.peek() == Some(SyntaxKind::Range) {
            self.builder
                .start_node_at(here, Ron::kind_to_raw(SyntaxKind::Scalar));
            self.range_end();
            self.builder.finish_node();
        } else if self.peek_behind_trivia() == Some(SyntaxKind::OpenParenthesis) {
            self.trivia();
            self.bracketed(here, SyntaxKind::Group);
        } else {
            self.builder
                .start_node_at(here, Ron::kind_to_raw(SyntaxKind::Scalar));
            self.builder.finish_node();
        }
    }

    /// `..` or `..=` with the number behind it, where they stand.
    fn range_end(&mut self) {
        if self.peek() != Some(SyntaxKind::Range) {
            return;
        }
        let inclusive = self.rest_of_text().starts_with("..=");
        self.bump();
        let number = match self.peek() {
            Some(SyntaxKind::Number | SyntaxKind::Byte) => true,
            Some(SyntaxKind::Word) => self.word().is_some_and(lexer::is_not_finite_word),
            _ => false,
        };
        if number {
            self.bump();
        } else if inclusive {
            self.wrong(SyntaxErrorKind::ExpectedValue);
        }
    }

    /// From an opening bracket to its closing one; what came since `from` belongs to it.
    fn bracketed(&mut self, from: Checkpoint, kind: SyntaxKind) {
        if self.depth == DEEPEST {
            self.wrong(SyntaxErrorKind::TooDeep);
            return self.rest();
        }
        let open_offset = self.offset;
        self.depth += 1;
        self.builder.start_node_at(from, Ron::kind_to_raw(kind));
        self.bump();
        let mut fields_named = None;
        loop {
            self.trivia();
            match self.peek() {
                None => {
                    let open = self.char_at(open_offset);
                    self.wrong_at(open_offset, SyntaxErrorKind::UnclosedBracket(open));
                    break;
                }
                Some(token) if token.is_closing() => {
                    let (open, close) = (self.char_at(open_offset), self.char_at(self.offset));
                    if !matches!((open, close), ('(', ')') | ('[', ']') | ('{', '}')) {
                        self.wrong(SyntaxErrorKind::MismatchedBracket { open, close });
                    }
                    self.bump();
                    break;
                }
                Some(SyntaxKind::Comma) => {
                    self.wrong(SyntaxErrorKind::ExpectedValue);
                    self.bump();
                }
                Some(SyntaxKind::Colon) => {
                    self.wrong(SyntaxErrorKind::UnexpectedCharacter(':'));
                    self.bump();
                }
                Some(_) => {
                    match kind {
                        SyntaxKind::Group => self.group_item(&mut fields_named),
                        SyntaxKind::Map => self.entry(),
                        _ => self.value(),
                    }
                    self.trivia();
                    match self.peek() {
                        Some(SyntaxKind::Comma) => self.bump(),
                        None => {}
                        Some(token) if token.is_closing() => {}
                        Some(_) => self.wrong(SyntaxErrorKind::ExpectedComma),
                    }
                }
            }
        }
        self.builder.finish_node();
        self.depth -= 1;
    }

    /// `name: value` or a value; a pair of brackets holds one of these kinds.
    fn group_item(&mut self, named: &mut Option<bool>) {
        let has_name = self.peek() == Some(SyntaxKind::Word)
            && self.kind_behind_trivia(self.next + 1) == Some(SyntaxKind::Colon);
        if *named.get_or_insert(has_name) != has_name {
            self.wrong(SyntaxErrorKind::MixedFields);
        }
        if has_name {
            self.start(SyntaxKind::Field);
            self.bump();
            self.trivia();
            self.bump();
            self.trivia();
            self.value();
            self.builder.finish_node();
        } else {
            self.value();
        }
    }

    fn entry(&mut self) {
        self.start(SyntaxKind::Entry);
        self.value();
        if self.peek_behind_trivia() == Some(SyntaxKind::Colon) {
            self.trivia();
            self.bump();
            self.trivia();
            self.value();
        } else {
            self.trivia();
            self.wrong(SyntaxErrorKind::ExpectedColon);
        }
        self.builder.finish_node();
    }

    fn start(&mut self, kind: SyntaxKind) {
        self.builder.start_node(Ron::kind_to_raw(kind));
    }

    fn peek(&self) -> Option<SyntaxKind> {
        self.tokens.get(self.next).map(|token| token.kind)
    }

    fn peek_behind_trivia(&self) -> Option<SyntaxKind> {
        self.kind_behind_trivia(self.next)
    }

    fn kind_behind_trivia(&self, from: usize) -> Option<SyntaxKind> {
        let mut kinds = self.tokens[from..].iter().map(|token| token.kind);
        kinds.find(|kind| !kind.is_trivia())
    }

    /// The word that comes next.
    fn word(&self) -> Option<&str> {
        let token = self.tokens.get(self.next)?;
        let text = self.text.get(self.offset..self.offset + token.length)?;
        (token.kind == SyntaxKind::Word).then_some(text)
    }

    fn rest_of_text(&self) -> &str {
        &self.text[self.offset..]
    }

    fn char_at(&self, offset: usize) -> char {
        self.text[offset..].chars().next().unwrap_or_default()
    }

    fn trivia(&mut self) {
        while self.peek().is_some_and(SyntaxKind::is_trivia) {
            self.bump();
        }
    }

    /// Take a token of this kind behind trivia; false where there is another.
    fn take(&mut self, kind: SyntaxKind) -> bool {
        self.trivia();
        let there = self.peek() == Some(kind);
        if there {
            self.bump();
            self.trivia();
        }
        there
    }

    /// Put the next token into the tree.
    fn bump(&mut self) {
        let Some(token) = self.tokens.get(self.next).copied() else {
            return;
        };
        if let Some(error) = token.error {
            self.wrong(error);
        }
        let text = &self.text[self.offset..self.offset + token.length];
        self.builder.token(Ron::kind_to_raw(token.kind), text);
        self.next += 1;
        self.offset += token.length;
    }

    /// Put all that is left into the tree as it is.
    fn rest(&mut self) {
        while self.peek().is_some() {
            self.bump();
        }
    }

    fn wrong(&mut self, kind: SyntaxErrorKind) {
        self.wrong_at(self.offset, kind);
    }

    fn wrong_at(&mut self, offset: usize, kind: SyntaxErrorKind) {
        self.error.get_or_insert((offset, kind));
    }
}
