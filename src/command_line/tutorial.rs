//! `detent tutorial`: the tutorial for instructors, to be read in a terminal.

use super::Failure;
use super::output::Output;
use detent_content::{
    HandbookBlock, HandbookSpan, Language, ListMark, Texts, instructors_tutorial,
};
use unicode_width::UnicodeWidthStr;

/// Longest line of sentences, columns.
const WIDTH: usize = 92;

/// Prints it.
pub(super) fn tutorial(language: Language) -> Result<(), Failure> {
    let texts = Texts::load(language);
    let mut out = Output::standard();
    let mut in_list = false;
    for (n, block) in instructors_tutorial(language)?.iter().enumerate() {
        let is_item = matches!(block, HandbookBlock::ListItem { .. });
        if n > 0 && !(in_list && is_item) {
            out.line("")?;
        }
        in_list = is_item;
        for line in lines(block, &texts) {
            out.line(line)?;
        }
    }
    Ok(())
}

/// The lines of a block.
fn lines(block: &HandbookBlock, texts: &Texts) -> Vec<String> {
    match block {
        HandbookBlock::Heading { level, spans } => {
            let heading = sentence(spans, texts);
            let rule = if *level == 1 { "=" } else { "-" };
            let rule = rule.repeat(heading.width());
            vec![heading, rule]
        }
        HandbookBlock::Paragraph(spans) => wrapped(&sentence(spans, texts), "", ""),
        HandbookBlock::ListItem { mark, spans } => {
            let mark = match mark {
                ListMark::Bullet => "- ".to_owned(),
                ListMark::Number(number) => format!("{number}. "),
            };
            let blanks = " ".repeat(mark.width());
            wrapped(&sentence(spans, texts), &mark, &blanks)
        }
        HandbookBlock::Code { kind, lines } => {
            let head = kind.heading(texts).map(|heading| format!("{heading}:"));
            let lines = lines.iter().map(|line| format!("    {line}"));
            head.into_iter().chain(lines).collect()
        }
    }
}

/// What spans say, labels in quotation marks.
fn sentence(spans: &[HandbookSpan], texts: &Texts) -> String {
    let said = spans.iter().map(|span| match span {
        HandbookSpan::Plain(text) | HandbookSpan::Code(text) => text.clone(),
        HandbookSpan::Label(label) => {
            texts.with("tutorial-label", &[("label", label.as_str().into())])
        }
    });
    said.collect()
}

/// A sentence in lines of at most [`WIDTH`] columns where its words allow it; `first` stands before the first line,
/// `others` before the rest.
fn wrapped(sentence: &str, first: &str, others: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = first.to_owned();
    let mut is_empty = true;
    for word in sentence.split_whitespace() {
        if !is_empty && line.width() + 1 + word.width() > WIDTH {
            lines.push(std::mem::replace(&mut line, others.to_owned()));
            is_empty = true;
        }
        if !is_empty {
            line.push(' ');
        }
        line.push_str(word);
        is_empty = false;
    }
    lines.push(line);
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_broken_between_words_and_nothing_is_lost() {
        let sentence = "a word and a-very-long-one ".repeat(12);
        let lines = wrapped(&sentence, "1. ", "   ");
        assert!(lines.len() > 2);
        assert!(lines.iter().all(|line| line.width() <= WIDTH));
        assert!(lines[0].starts_with("1. a word") && lines[1].starts_with("   "));
        let again: Vec<&str> = lines.iter().flat_map(|line| line.split(' ')).collect();
        let words = again.into_iter().filter(|word| !word.is_empty()).skip(1);
        assert!(words.eq(sentence.split_whitespace()));
        assert_eq!(wrapped(&"x".repeat(200), "", ""), ["x".repeat(200)]);
    }
}
