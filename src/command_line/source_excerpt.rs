//! The line of a file on which an error is, with a mark under what is meant.

use super::output::plain;
use detent_content::SourceLine;
use unicode_width::UnicodeWidthStr;

/// What a tab is shown as.
const TAB: &str = "    ";

/// Lines for a terminal, in characters that do not steer it. The mark is one caret where something is missing.
pub(super) fn source_excerpt(line: usize, source: &SourceLine) -> [String; 3] {
    let shown = |text: &str| plain(&text.replace('\t', TAB)).into_owned();
    let number = line.to_string();
    let margin = " ".repeat(number.len());
    let before = shown(&source.text[..source.marked.start]);
    let marked = shown(&source.text[source.marked.clone()]);
    let behind = shown(&source.text[source.marked.end..]);
    let blanks = " ".repeat(before.width());
    let carets = "^".repeat(marked.width().max(1));
    [
        format!(" {margin} |"),
        format!(" {number} | {before}{marked}{behind}"),
        format!(" {margin} | {blanks}{carets}"),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, meant: &str, expected: [&str; 2]) {
        let start = text.find(meant).expect("it is in the line");
        let source = SourceLine {
            text: text.to_owned(),
            marked: start..start + meant.len(),
        };
        let [margin, line, mark] = source_excerpt(12, &source);
        assert_eq!(margin, "    |");
        assert_eq!([line.as_str(), mark.as_str()], expected);
    }

    #[test]
    fn the_mark_stands_under_what_is_meant() {
        check(
            "    board: \"arc\",",
            "\"arc\"",
            [" 12 |     board: \"arc\",", "    |            ^^^^^"],
        );
        check("\tseed: x", "x", [" 12 |     seed: x", "    |           ^"]);
        // Two columns for each of the wide characters, none for an accent that stands alone.
        check(
            "\"洗濯\": e\u{301}, 7",
            "7",
            [" 12 | \"洗濯\": e\u{301}, 7", "    |            ^"],
        );
        check("seed: 7", "", [" 12 | seed: 7", "    | ^"]);
    }

    #[test]
    fn nothing_in_a_file_steers_the_terminal() {
        check(
            "\u{1b}[2J: \u{202e}x, 7",
            "7",
            [
                " 12 | \\u{1b}[2J: \\u{202e}x, 7",
                "    |                       ^",
            ],
        );
    }
}
