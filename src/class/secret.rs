//! What nobody may guess, drawn by the system.

use detent_class_protocol::{JoinCode, NONCE_BYTES, SecretToken};

/// Letters and digits that spell nothing and are not taken for each other.
const SYMBOLS: &[u8; 20] = b"dfghjklmnprtvwx34679";

fn bytes<const N: usize>() -> [u8; N] {
    let mut bytes = [0; N];
    #[expect(
        clippy::expect_used,
        reason = "a computer without random numbers can keep no class apart from another"
    )]
    getrandom::fill(&mut bytes).expect("the system draws random numbers");
    bytes
}

/// A new token.
pub fn secret_token() -> SecretToken {
    SecretToken::of_bytes(bytes())
}

/// A new code to join with.
pub fn join_code() -> JoinCode {
    loop {
        if let Some(code) = JoinCode::drawn(&bytes::<16>()) {
            return code;
        }
    }
}

/// A new nonce for a sealed text.
pub(crate) fn nonce() -> [u8; NONCE_BYTES] {
    bytes()
}

/// A new seed for the machines of a class.
pub fn seed() -> u64 {
    u64::from_be_bytes(bytes())
}

/// A new word to come back with: six letters and digits, 64 million words; it holds for minutes, once. There is no vowel
/// in it, so that chance spells nothing.
pub fn word() -> String {
    let drawn: [u8; 6] = bytes();
    let symbols = drawn.map(|draw| char::from(SYMBOLS[usize::from(draw) % SYMBOLS.len()]));
    let (first, then) = symbols.split_at(3);
    let half = |symbols: &[char]| symbols.iter().collect::<String>();
    format!("{}-{}", half(first), half(then))
}

/// A new pseudonym: ten letters and digits without vowels, so that chance spells nothing. Drawn, and not made from the
/// name: nobody finds the name by trying all there are.
pub fn pseudonym() -> String {
    let drawn: [u8; 10] = bytes();
    let symbols = drawn.map(|draw| char::from(SYMBOLS[usize::from(draw) % SYMBOLS.len()]));
    format!("learner-{}", symbols.iter().collect::<String>())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_drawn_differs() {
        assert_ne!(secret_token(), secret_token());
        let word = word();
        assert_eq!(word.len(), 7, "{word}");
        assert!(
            word.chars()
                .all(|c| (c.is_ascii_alphanumeric() || c == '-') && !"aeiou".contains(c)),
            "{word}"
        );
    }
}
