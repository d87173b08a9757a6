//! The short code that is read off the board and typed in.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// Letters and digits that nobody takes for each other on a projector: no I, O, 0 or 1, and none that B, S, Z or U could
/// be read as.
const SYMBOLS: &[u8; 24] = b"ACDEFGHJKLMNPQRTVWXY3479";
/// Those of them that codes are drawn from: without a vowel, so that chance spells nothing. The others stand in codes that
/// were drawn before.
const DRAWN: &[u8; 21] = b"CDFGHJKLMNPQRTVWX3479";
/// So many of them.
const LENGTH: usize = 6;

/// Six letters and digits: 21⁶, 86 million codes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct JoinCode([u8; LENGTH]);

/// It is no code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("a code has {LENGTH} letters and digits, as it stands on the board")]
pub struct NotACode;

impl JoinCode {
    /// The code that these draws give. A draw of 0 to 251 stands for a symbol, each for as many; the rest are passed over.
    ///
    /// `None` where too few draws are left.
    pub fn drawn(draws: &[u8]) -> Option<JoinCode> {
        let even = (u8::MAX as usize / DRAWN.len()) * DRAWN.len();
        let mut symbols = (draws.iter())
            .filter(|draw| usize::from(**draw) < even)
            .map(|draw| DRAWN[usize::from(*draw) % DRAWN.len()]);
        let mut code = [0; LENGTH];
        for symbol in &mut code {
            *symbol = symbols.next()?;
        }
        Some(JoinCode(code))
    }
}

impl fmt::Display for JoinCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0
            .iter()
            .try_for_each(|symbol| write!(f, "{}", char::from(*symbol)))
    }
}

/// As it is typed: in either case, with spaces or a hyphen where the eye rests.
impl FromStr for JoinCode {
    type Err = NotACode;

    fn from_str(text: &str) -> Result<JoinCode, NotACode> {
        let mut code = [0; LENGTH];
        let mut symbols = text.bytes().filter(|byte| !matches!(byte, b' ' | b'-'));
        for symbol in &mut code {
            let typed = symbols.next().ok_or(NotACode)?.to_ascii_uppercase();
            *symbol = *SYMBOLS
                .iter()
                .find(|known| **known == typed)
                .ok_or(NotACode)?;
        }
        symbols.next().map_or(Ok(JoinCode(code)), |_| Err(NotACode))
    }
}

impl TryFrom<String> for JoinCode {
    type Error = NotACode;

    fn try_from(text: String) -> Result<JoinCode, NotACode> {
        text.parse()
    }
}

impl From<JoinCode> for String {
    fn from(code: JoinCode) -> String {
        code.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_read_as_it_is_typed() {
        let code = JoinCode::drawn(&[252, 0, 1, 2, 3, 4, 255, 5]).expect("enough draws");
        assert_eq!(code.to_string(), "CDFGHJ");
        for typed in ["CDFGHJ", "cdf ghj", "CDF-GHJ", " c d f g h j "] {
            assert_eq!(typed.parse(), Ok(code), "{typed}");
        }
        for typed in ["", "ACDEF", "ACDEFGH", "ACDEF0", "ACDÉFG", "ACDEF\u{202e}"] {
            assert_eq!(typed.parse::<JoinCode>(), Err(NotACode), "{typed}");
        }
        assert_eq!(JoinCode::drawn(&[0, 1, 2, 3, 4]), None);
        // One that was drawn before vowels were left out.
        let before: JoinCode = "ACDEFG".parse().expect("a code");
        assert_eq!(before.to_string(), "ACDEFG");
    }

    #[test]
    fn each_symbol_comes_as_often() {
        let mut count = [0; 256];
        for draw in 0..=u8::MAX {
            if let Some(code) = JoinCode::drawn(&[draw; LENGTH]) {
                count[usize::from(code.0[0])] += 1;
            }
        }
        for symbol in SYMBOLS {
            let is_vowel = b"AEY".contains(symbol);
            let times = if is_vowel { 0 } else { 12 };
            assert_eq!(
                count[usize::from(*symbol)],
                times,
                "{}",
                char::from(*symbol)
            );
        }
    }
}
