//! Handbooks: pages of plain Markdown, read into blocks that a window and a terminal can both show.
//!
//! Of Markdown there is only what both can show: headings of two levels, paragraphs, bulleted and numbered lists without
//! lists in them, `code`, **bold** and fenced blocks. Bold is kept for labels of the window.

use super::builtin;
use super::error::{ContentError, Problem};
use super::source_line::SourceLine;
use super::text::{Language, Texts, Value};
use detent_training::record::ron_text::TextPosition;
use pulldown_cmark::{CodeBlockKind, Event, HeadingLevel, Parser, Tag, TagEnd};

/// A block of a handbook.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HandbookBlock {
    /// A heading.
    Heading {
        /// 1 for the title, 2 for a chapter.
        level: u8,
        /// What it says.
        spans: Vec<HandbookSpan>,
    },
    /// A paragraph.
    Paragraph(Vec<HandbookSpan>),
    /// An item of a list; the items of one list stand one after the other.
    ListItem {
        /// What stands before it.
        mark: ListMark,
        /// What it says.
        spans: Vec<HandbookSpan>,
    },
    /// Lines that are typed, or that stand in a file.
    Code {
        /// Which.
        kind: CodeKind,
        /// The lines, without line breaks.
        lines: Vec<String>,
    },
}

/// A stretch of a heading, a paragraph or an item.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HandbookSpan {
    /// Plain text.
    Plain(String),
    /// A label of the window.
    Label(String),
    /// Something that is typed or stands in a file.
    Code(String),
}

/// What stands before an item of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListMark {
    /// A bullet.
    Bullet,
    /// Its number.
    Number(u64),
}

/// What the lines of a block of code are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CodeKind {
    /// Of a terminal (`console`): what is typed stands behind `$ `, what is answered below it; `…` stands for lines that
    /// are left out.
    Terminal,
    /// The whole text of the file of this name (`ron NAME`).
    File(String),
    /// A change of the file of this name (`diff NAME`): lines behind `- ` give way to those behind `+ `; lines behind two
    /// blanks stay.
    Change(String),
}

impl CodeKind {
    /// What stands above such lines, where they are of a file.
    pub fn heading(&self, texts: &Texts) -> Option<String> {
        let (key, file) = match self {
            CodeKind::Terminal => return None,
            CodeKind::File(file) => ("tutorial-file", file),
            CodeKind::Change(file) => ("tutorial-change", file),
        };
        Some(texts.with(key, &[("file", Value::from(file.as_str()))]))
    }
}

/// The tutorial for instructors.
///
/// # Errors
/// A mistake in the file.
pub fn instructors_tutorial(language: Language) -> Result<Vec<HandbookBlock>, ContentError> {
    let file = format!("assets/guide/instructors.{}.md", language.code());
    read_handbook(&file, builtin::text(&file)?)
}

/// Reads a handbook.
///
/// # Errors
/// [`Problem::BeyondHandbook`] for anything that is Markdown and no part of a handbook.
pub fn read_handbook(file: &str, text: &str) -> Result<Vec<HandbookBlock>, ContentError> {
    let mut reader = HandbookReader::default();
    for (event, range) in Parser::new(text).into_offset_iter() {
        if reader.take(event).is_none() {
            return Err(beyond(file, text, range.start));
        }
    }
    Ok(reader.blocks)
}

/// That what begins at this byte is no part of a handbook.
fn beyond(file: &str, text: &str, at: usize) -> ContentError {
    let before = &text[..at];
    let line = before.matches('\n').count() + 1;
    let in_line = before.rsplit('\n').next().unwrap_or_default();
    let column = in_line.chars().count() + 1;
    let position = TextPosition { line, column };
    ContentError {
        line,
        column,
        source_line: SourceLine::of(text, position).map(Box::new),
        ..ContentError::of_file(file, Problem::BeyondHandbook)
    }
}

/// What is being read.
#[derive(Default)]
struct HandbookReader {
    blocks: Vec<HandbookBlock>,
    /// The block that is open.
    open: Option<OpenBlock>,
    spans: Vec<HandbookSpan>,
    is_bold: bool,
    /// The list that is open, with its next number if it has numbers.
    list: Option<Option<u64>>,
}

enum OpenBlock {
    Heading(u8),
    Paragraph,
    Item(ListMark),
    Code(CodeKind, String),
}

impl HandbookReader {
    /// Takes the next event; none for what is no part of a handbook.
    fn take(&mut self, event: Event<'_>) -> Option<()> {
        match event {
            Event::Start(tag) => self.start(tag),
            Event::End(tag) => self.end(tag),
            Event::Text(text) => self.text(&text),
            Event::Code(code) => self.span(HandbookSpan::Code(code.into_string())),
            Event::SoftBreak => self.text(" "),
            Event::InlineMath(_)
            | Event::DisplayMath(_)
            | Event::Html(_)
            | Event::InlineHtml(_)
            | Event::FootnoteReference(_)
            | Event::HardBreak
            | Event::Rule
            | Event::TaskListMarker(_) => None,
        }
    }

    fn start(&mut self, tag: Tag<'_>) -> Option<()> {
        match tag {
            Tag::Heading { level, .. } => {
                let level = match level {
                    HeadingLevel::H1 => 1,
                    HeadingLevel::H2 => 2,
                    HeadingLevel::H3 | HeadingLevel::H4 | HeadingLevel::H5 | HeadingLevel::H6 => {
                        return None;
                    }
                };
                self.begin(OpenBlock::Heading(level))
            }
            // Between the items of a list with blank lines each item is a paragraph.
            Tag::Paragraph if matches!(self.open, Some(OpenBlock::Item(_))) => {
                self.spans.is_empty().then_some(())
            }
            Tag::Paragraph => self.begin(OpenBlock::Paragraph),
            Tag::List(first) if self.list.is_none() => {
                self.list = Some(first);
                Some(())
            }
            Tag::Item => {
                let next = self.list.as_mut()?;
                let mark = next.map_or(ListMark::Bullet, ListMark::Number);
                *next = next.map(|number| number + 1);
                self.begin(OpenBlock::Item(mark))
            }
            Tag::CodeBlock(CodeBlockKind::Fenced(info)) => {
                let kind = CodeKind::of(&info)?;
                self.begin(OpenBlock::Code(kind, String::new()))
            }
            Tag::Strong => {
                self.is_bold = true;
                Some(())
            }
            _ => None,
        }
    }

    fn begin(&mut self, block: OpenBlock) -> Option<()> {
        let is_free = self.open.is_none();
        is_free.then(|| self.open = Some(block))
    }

    fn end(&mut self, tag: TagEnd) -> Option<()> {
        match tag {
            TagEnd::Strong => self.is_bold = false,
            TagEnd::List(_) => self.list = None,
            TagEnd::Paragraph if matches!(self.open, Some(OpenBlock::Item(_))) => {}
            _ => {
                let spans = std::mem::take(&mut self.spans);
                self.blocks.push(match self.open.take()? {
                    OpenBlock::Heading(level) => HandbookBlock::Heading { level, spans },
                    OpenBlock::Paragraph => HandbookBlock::Paragraph(spans),
                    OpenBlock::Item(mark) => HandbookBlock::ListItem { mark, spans },
                    OpenBlock::Code(kind, text) => HandbookBlock::Code {
                        kind,
                        lines: text.lines().map(str::to_owned).collect(),
                    },
                });
            }
        }
        Some(())
    }

    fn text(&mut self, text: &str) -> Option<()> {
        if let Some(OpenBlock::Code(_, lines)) = &mut self.open {
            lines.push_str(text);
            return Some(());
        }
        // The parser hands a sentence over in pieces.
        match (self.spans.last_mut(), self.is_bold) {
            (Some(HandbookSpan::Plain(last)), false) | (Some(HandbookSpan::Label(last)), true) => {
                last.push_str(text);
                Some(())
            }
            (_, false) => self.span(HandbookSpan::Plain(text.to_owned())),
            (_, true) => self.span(HandbookSpan::Label(text.to_owned())),
        }
    }

    fn span(&mut self, span: HandbookSpan) -> Option<()> {
        self.open.is_some().then(|| self.spans.push(span))
    }
}

impl CodeKind {
    /// By what stands behind the fence; none for anything else.
    fn of(info: &str) -> Option<CodeKind> {
        let (language, file) = info.split_once(' ').unwrap_or((info, ""));
        let file = file.trim();
        match (language, file.is_empty()) {
            ("console", true) => Some(CodeKind::Terminal),
            ("ron", false) => Some(CodeKind::File(file.to_owned())),
            ("diff", false) => Some(CodeKind::Change(file.to_owned())),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(text: &str) -> Vec<HandbookSpan> {
        vec![HandbookSpan::Plain(text.to_owned())]
    }

    #[test]
    fn each_kind_of_block_is_read() {
        let text = "# A title\n\n## A chapter\n\nOne sentence\nover two lines: press **Try it**, then `x`.\n\n\
               - first\n- second\n\n3. third\n4. fourth\n\n```console\n$ detent check\n  …\n```\n\n\
               ```ron a/b.ron\n(\n)\n```\n\n```diff a/b.ron\n- old\n+ new\n```\n";
        let read = read_handbook("h.md", text).expect("a handbook");
        let bullet = |text: &str| HandbookBlock::ListItem {
            mark: ListMark::Bullet,
            spans: plain(text),
        };
        let number = |number: u64, text: &str| HandbookBlock::ListItem {
            mark: ListMark::Number(number),
            spans: plain(text),
        };
        let code = |kind: CodeKind, lines: [&str; 2]| HandbookBlock::Code {
            kind,
            lines: lines.map(str::to_owned).to_vec(),
        };
        let file = || "a/b.ron".to_owned();
        let expected = [
            HandbookBlock::Heading {
                level: 1,
                spans: plain("A title"),
            },
            HandbookBlock::Heading {
                level: 2,
                spans: plain("A chapter"),
            },
            HandbookBlock::Paragraph(vec![
                HandbookSpan::Plain("One sentence over two lines: press ".to_owned()),
                HandbookSpan::Label("Try it".to_owned()),
                HandbookSpan::Plain(", then ".to_owned()),
                HandbookSpan::Code("x".to_owned()),
                HandbookSpan::Plain(".".to_owned()),
            ]),
            bullet("first"),
            bullet("second"),
            number(3, "third"),
            number(4, "fourth"),
            code(CodeKind::Terminal, ["$ detent check", "  …"]),
            code(CodeKind::File(file()), ["(", ")"]),
            code(CodeKind::Change(file()), ["- old", "+ new"]),
        ];
        assert_eq!(read, expected);
    }

    #[test]
    fn what_is_no_part_of_a_handbook_is_refused_with_its_line() {
        for beyond in [
            "### a third level",
            "*slanted*",
            "[a link](https://example.org)",
            "![a picture](a.png)",
            "<b>markup</b>",
            "> quoted",
            "---",
            "    indented code",
            "```\nof no kind\n```",
            "```ron\nof no file\n```",
            "```console x\nof a file\n```",
            "- a list\n  - in a list",
            "- an item\n\n  of two paragraphs",
            "one line  \nbroken",
        ] {
            let text = format!("# Title\n\n{beyond}\n");
            let error = read_handbook("h.md", &text).expect_err(beyond);
            assert_eq!(error.problem, Problem::BeyondHandbook, "{beyond}");
            assert!(error.line >= 3, "{beyond}: {}", error.line);
            assert!(error.source_line.is_some(), "{beyond}");
        }
    }
}
