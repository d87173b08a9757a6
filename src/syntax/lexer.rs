//! A text cut into tokens, as ron 0.12 reads them.

use super::error::SyntaxErrorKind;
use super::kind::SyntaxKind;
use unicode_ident::{is_xid_continue, is_xid_start};

/// One token; all of them one after the other are the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Token {
    pub kind: SyntaxKind,
    /// In bytes.
    pub length: usize,
    /// What is wrong with the token itself.
    pub error: Option<SyntaxErrorKind>,
}

/// Every token of a text, from the first byte to the last.
pub fn tokens(text: &str) -> impl Iterator<Item = Token> {
    let mut at = 0;
    std::iter::from_fn(move || {
        let token = next_token(&text[at..], at == 0)?;
        at += token.length;
        Some(token)
    })
}

fn next_token(rest: &str, at_start: bool) -> Option<Token> {
    let first = rest.chars().next()?;
    let one = |kind| Token {
        kind,
        length: first.len_utf8(),
        error: None,
    };
    Some(match first {
        '\u{feff}' if at_start => one(SyntaxKind::ByteOrderMark),
        c if is_blank(c) => Token {
            kind: SyntaxKind::Blank,
            length: rest.find(|c| !is_blank(c)).unwrap_or(rest.len()),
            error: None,
        },
        '/' => comment(rest),
        ',' => one(SyntaxKind::Comma),
        ':' => one(SyntaxKind::Colon),
        '(' => one(SyntaxKind::OpenParenthesis),
        ')' => one(SyntaxKind::CloseParenthesis),
        '[' => one(SyntaxKind::OpenBracket),
        ']' => one(SyntaxKind::CloseBracket),
        '{' => one(SyntaxKind::OpenBrace),
        '}' => one(SyntaxKind::CloseBrace),
        '#' => one(SyntaxKind::Hash),
        '!' => one(SyntaxKind::Exclamation),
        '=' => one(SyntaxKind::Equals),
        '"' => escaped_string(rest, 1, Bytes::No),
        '\'' => character(rest, 1, SyntaxKind::Character),
        'b' if rest.starts_with("b\"") => escaped_string(rest, 2, Bytes::Yes),
        'b' if rest.starts_with("b'") => character(rest, 2, SyntaxKind::Byte),
        'b' if rest.starts_with("br\"") || rest.starts_with("br#") => raw_string(rest, 2),
        'r' if rest.starts_with("r\"") || rest.starts_with("r#\"") || rest.starts_with("r##") => {
            raw_string(rest, 1)
        }
        'r' if rest.starts_with("r#") => raw_word(rest),
        c if c == '_' || is_xid_start(c) => Token {
            kind: SyntaxKind::Word,
            length: rest.find(|c| !is_xid_continue(c)).unwrap_or(rest.len()),
            error: None,
        },
        '.' if rest.starts_with("..=") => Token {
            kind: SyntaxKind::Range,
            length: 3,
            error: None,
        },
        '.' if rest.starts_with("..") => Token {
            kind: SyntaxKind::Range,
            length: 2,
            error: None,
        },
        '0'..='9' | '.' | '+' | '-' => number(rest),
        other => Token {
            error: Some(SyntaxErrorKind::UnexpectedCharacter(other)),
            ..one(SyntaxKind::Unknown)
        },
    })
}

/// What ron takes for a blank, which is not all that Unicode does.
pub fn is_blank(c: char) -> bool {
    matches!(
        c,
        ' ' | '\t'
            | '\n'
            | '\r'
            | '\x0b'
            | '\x0c'
            | '\u{85}'
            | '\u{200e}'
            | '\u{200f}'
            | '\u{2028}'
            | '\u{2029}'
    )
}

/// Whether a text is one name, plain or raw (`r#…`).
pub fn is_word(text: &str) -> bool {
    let mut tokens = tokens(text);
    let word = tokens.next();
    word.is_some_and(|token| token.kind == SyntaxKind::Word && token.error.is_none())
        && tokens.next().is_none()
}

fn comment(rest: &str) -> Token {
    if rest.starts_with("//") {
        return Token {
            kind: SyntaxKind::LineComment,
            length: rest.find('\n').unwrap_or(rest.len()),
            error: None,
        };
    }
    if !rest.starts_with("/*") {
        return Token {
            kind: SyntaxKind::Unknown,
            length: 1,
            error: Some(SyntaxErrorKind::UnexpectedCharacter('/')),
        };
    }
    let bytes = rest.as_bytes();
    let (mut at, mut depth) = (2, 1_usize);
    while depth > 0 && at < bytes.len() {
        match &bytes[at..(at + 2).min(bytes.len())] {
            b"/*" => (at, depth) = (at + 2, depth + 1),
            b"*/" => (at, depth) = (at + 2, depth - 1),
            _ => at += 1,
        }
    }
    Token {
        kind: SyntaxKind::BlockComment,
        length: at,
        error: (depth > 0).then_some(SyntaxErrorKind::UnclosedComment),
    }
}

/// `r#name`, where a name may hold dots and signs.
fn raw_word(rest: &str) -> Token {
    let in_name = |c: char| matches!(c, '.' | '+' | '-') || is_xid_continue(c);
    let name = rest[2..].find(|c| !in_name(c)).unwrap_or(rest.len() - 2);
    Token {
        kind: SyntaxKind::Word,
        length: 2 + name,
        error: (name == 0).then_some(SyntaxErrorKind::UnexpectedCharacter('#')),
    }
}

/// A raw string, of which `prefix` bytes stand before the hashes.
fn raw_string(rest: &str, prefix: usize) -> Token {
    let hashes = rest[prefix..].bytes().take_while(|b| *b == b'#').count();
    let opening = prefix + hashes;
    if rest.as_bytes().get(opening) != Some(&b'"') {
        return Token {
            kind: SyntaxKind::Unknown,
            length: opening,
            error: Some(SyntaxErrorKind::UnexpectedCharacter('#')),
        };
    }
    let closing = format!("\"{}", "#".repeat(hashes));
    let length = rest[opening + 1..].find(&closing);
    Token {
        kind: SyntaxKind::String,
        length: length.map_or(rest.len(), |length| opening + 1 + length + closing.len()),
        error: length.is_none().then_some(SyntaxErrorKind::UnclosedString),
    }
}

/// Whether escapes give bytes or characters.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Bytes {
    Yes,
    No,
}

/// A string whose first character stands at `body`.
fn escaped_string(rest: &str, body: usize, bytes: Bytes) -> Token {
    let mut at = body;
    let mut error = None;
    loop {
        let Some(next) = rest[at..].find(['"', '\\']) else {
            return Token {
                kind: SyntaxKind::String,
                length: rest.len(),
                error: Some(SyntaxErrorKind::UnclosedString),
            };
        };
        at += next;
        if rest.as_bytes()[at] == b'"' {
            return Token {
                kind: SyntaxKind::String,
                length: at + 1,
                error,
            };
        }
        let behind = &rest[at + 1..];
        let continued = ["\r\n", "\n"]
            .into_iter()
            .find(|end| behind.starts_with(end));
        let length = match continued {
            Some(end) => Some(end.len()),
            None => escape(behind, bytes),
        };
        if length.is_none() {
            error = error.or(Some(SyntaxErrorKind::WrongEscape));
        }
        // A wrong escape still takes the character behind the backslash with it.
        let taken = behind.chars().next().map_or(0, char::len_utf8);
        at += 1 + length.unwrap_or(taken);
    }
}

/// Length of an escape behind its backslash. A character above 7 bits may be written as the bytes of
/// its UTF-8, one `\x` for each.
fn escape(rest: &str, bytes: Bytes) -> Option<usize> {
    match rest.as_bytes().first()? {
        b'\'' | b'"' | b'\\' | b'n' | b'r' | b't' | b'0' => Some(1),
        b'u' => unicode_escape(rest),
        b'x' => {
            let mut read = vec![hex_byte(rest.get(1..3)?)?];
            let mut length = 3;
            while bytes == Bytes::No && std::str::from_utf8(&read).is_err() {
                let more = rest.get(length..length + 4)?.strip_prefix("\\x")?;
                read.push(hex_byte(more)?);
                length += 4;
                if read.len() == 4 && std::str::from_utf8(&read).is_err() {
                    return None;
                }
            }
            Some(length)
        }
        _ => None,
    }
}

fn hex_byte(digits: &str) -> Option<u8> {
    let hex = digits.bytes().all(|b| b.is_ascii_hexdigit());
    hex.then(|| u8::from_str_radix(digits, 16).ok())?
}

/// Length of `u{…}` with one to six digits of a character that exists.
fn unicode_escape(rest: &str) -> Option<usize> {
    let digits = rest.strip_prefix("u{")?;
    let end = digits.find('}').filter(|end| (1..=6).contains(end))?;
    let digits = &digits[..end];
    let hex = digits.bytes().all(|b| b.is_ascii_hexdigit());
    let code = hex.then(|| u32::from_str_radix(digits, 16).ok())??;
    char::from_u32(code).map(|_| "u{}".len() + end)
}

/// A character in single quotes, which begins at `body`.
fn character(rest: &str, body: usize, kind: SyntaxKind) -> Token {
    let inside = &rest[body..];
    let length = match inside.chars().next() {
        None => None,
        Some('\\') => one_character_escape(&inside[1..], kind).map(|length| 1 + length),
        Some(c) if kind == SyntaxKind::Character || c.is_ascii() => Some(c.len_utf8()),
        Some(_) => None,
    };
    let closed = length.filter(|length| inside[*length..].starts_with('\''));
    match closed {
        Some(length) => Token {
            kind,
            length: body + length + 1,
            error: None,
        },
        // A lone quote is no character: step over it alone.
        None => Token {
            kind: SyntaxKind::Unknown,
            length: body,
            error: Some(SyntaxErrorKind::WrongCharacter),
        },
    }
}

/// Length of an escape that gives one byte, or one character that needs no more than one escape.
fn one_character_escape(rest: &str, kind: SyntaxKind) -> Option<usize> {
    let bytes = match kind {
        SyntaxKind::Byte => Bytes::Yes,
        _ => Bytes::No,
    };
    let length = escape(rest, bytes)?;
    let several = rest.starts_with('x') && length > 3;
    let wide = kind == SyntaxKind::Byte && rest.starts_with('u');
    (!several && !wide).then_some(length)
}

fn number(rest: &str) -> Token {
    let in_number = |c: char| matches!(c, '.' | '+' | '-') || is_xid_continue(c);
    let run = rest.find(|c| !in_number(c)).unwrap_or(rest.len());
    let run = rest[..run].find("..").unwrap_or(run);
    let wrong = !is_number(&rest[..run]);
    Token {
        kind: SyntaxKind::Number,
        length: run,
        error: wrong.then_some(SyntaxErrorKind::WrongNumber),
    }
}

fn is_number(text: &str) -> bool {
    let unsigned = text.strip_prefix(['+', '-']).unwrap_or(text);
    is_not_finite_word(unsigned) || is_whole_number(unsigned) || is_float(text)
}

/// `inf` and `NaN`, with the width behind them or without.
pub(crate) fn is_not_finite_word(word: &str) -> bool {
    let plain = word
        .strip_suffix("f32")
        .or_else(|| word.strip_suffix("f64"))
        .unwrap_or(word);
    matches!(plain, "inf" | "NaN")
}

fn is_whole_number(text: &str) -> bool {
    const WIDTHS: [&str; 10] = [
        "i8", "i16", "i32", "i64", "i128", "u8", "u16", "u32", "u64", "u128",
    ];
    let prefixed = [("0b", 2), ("0o", 8), ("0x", 16)]
        .into_iter()
        .find_map(|(prefix, base)| Some((text.strip_prefix(prefix)?, base)));
    let (digits, base) = prefixed.unwrap_or((text, 10));
    let digits = WIDTHS
        .into_iter()
        .find_map(|width| digits.strip_suffix(width))
        .unwrap_or(digits);
    !digits.is_empty()
        && !digits.starts_with('_')
        && digits.chars().all(|c| c == '_' || c.is_digit(base))
}

fn is_float(text: &str) -> bool {
    let plain = text
        .strip_suffix("f32")
        .or_else(|| text.strip_suffix("f64"))
        .unwrap_or(text);
    let mut digits = String::with_capacity(plain.len());
    let mut underscore = false;
    for c in plain.chars() {
        match c {
            '_' if underscore => continue,
            '0'..='9' | 'e' | 'E' => underscore = true,
            '.' => underscore = false,
            '+' | '-' => {}
            _ => return false,
        }
        digits.push(c);
    }
    digits.parse::<f64>().is_ok()
}
