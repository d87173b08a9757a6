//! Standard output, line by line. Nothing that stands in a file can steer the terminal.

use super::Failure;
use std::borrow::Cow;
use std::fmt::Write as _;
use std::io::{StdoutLock, Write as _};

/// Standard output for one command.
pub(super) struct Output {
    out: StdoutLock<'static>,
}

impl Output {
    pub fn standard() -> Output {
        Output {
            out: std::io::stdout().lock(),
        }
    }

    /// Writes one line, its control characters shown.
    pub fn line(&mut self, line: impl AsRef<str>) -> Result<(), Failure> {
        writeln!(self.out, "{}", plain(line.as_ref())).map_err(Failure::Output)
    }

    /// Writes JSON; what serde_json leaves as it is in a text and a terminal obeys is escaped.
    pub fn json(&mut self, value: &impl serde::Serialize) -> Result<(), Failure> {
        let text = serde_json::to_string_pretty(value).map_err(|e| Failure::Output(e.into()))?;
        let mut escaped = String::with_capacity(text.len());
        for c in text.chars() {
            match c {
                // Between values these are layout; inside a text serde_json has escaped them.
                '\n' => escaped.push(c),
                c if steers(c) => {
                    let _ = write!(escaped, "\\u{:04x}", u32::from(c));
                }
                c => escaped.push(c),
            }
        }
        writeln!(self.out, "{escaped}").map_err(Failure::Output)
    }
}

/// The text with its control characters as `\u{1b}`.
pub(super) fn plain(text: &str) -> Cow<'_, str> {
    if !text.contains(steers) {
        return Cow::Borrowed(text);
    }
    let shown = text.chars().fold(String::new(), |mut shown, c| {
        if steers(c) {
            shown.extend(c.escape_unicode());
        } else {
            shown.push(c);
        }
        shown
    });
    Cow::Owned(shown)
}

/// Control characters (category Cc) and the marks that turn the direction of writing (Unicode Standard
/// Annex 9, section 2), which make a line look like another one.
fn steers(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{061c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_steers_a_terminal_is_shown_instead() {
        assert_eq!(
            plain("\u{1b}[2Jgone\r\u{9b}5n\u{202e}"),
            "\\u{1b}[2Jgone\\u{d}\\u{9b}5n\\u{202e}"
        );
        assert!(matches!(plain("Señal · 5 Ω"), Cow::Borrowed(_)));
    }
}
