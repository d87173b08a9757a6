//! What nobody may guess, drawn by the system.

use detent_class_protocol::{JoinCode, SecretToken};

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

/// A new seed for the machines of a class.
pub fn seed() -> u64 {
    u64::from_be_bytes(bytes())
}

/// A new word to come back with: four syllables that are easy to say, of 50 kinds each, 6 million words; it holds for
/// minutes, once.
pub fn word() -> String {
    const FIRST: &[u8; 10] = b"bdfgklmnrt";
    const THEN: &[u8; 10] = b"aaeeiioouu";
    let drawn: [u8; 8] = bytes();
    let syllables = drawn.chunks_exact(2).enumerate().flat_map(|(n, pair)| {
        let rest = (n == 2).then_some('-');
        let syllable = [
            FIRST[usize::from(pair[0]) % 10],
            THEN[usize::from(pair[1]) % 10],
        ]
        .map(char::from);
        rest.into_iter().chain(syllable)
    });
    syllables.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_drawn_differs() {
        assert_ne!(secret_token(), secret_token());
        let word = word();
        assert_eq!(word.len(), 9, "{word}");
        assert!(
            word.chars().all(|c| c.is_ascii_lowercase() || c == '-'),
            "{word}"
        );
    }
}
