//! The digest that binds an attempt's lines together, deed by deed.
//!
//! It needs no key. It tells an attempt that was damaged or edited from one that stands as it was
//! recorded; it cannot tell who recorded it. Whoever works all of it out again for other deeds has made
//! another attempt, and that one must still replay to what it says.

use sha2::{Digest, Sha256};
use std::fmt::Write;

/// SHA-256 over the digest of everything before and the next line, from the first line on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Chain([u8; 32]);

impl Chain {
    /// Begins with the first line. Lines are given without their line break.
    pub fn begin(header: &str) -> Chain {
        Chain(Sha256::digest(header).into())
    }

    /// Binds the next line.
    pub fn link(&mut self, line: &str) {
        let mut digest = Sha256::new_with_prefix(self.0);
        digest.update(line);
        self.0 = digest.finalize().into();
    }

    /// Lower-case hexadecimal digits.
    pub fn hex(&self) -> String {
        hex(&self.0)
    }
}

/// SHA-256 as lower-case hexadecimal digits.
pub fn sha256_hex(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        // Memory takes every digit.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_digest_is_that_of_the_standard() {
        // FIPS 180-2, appendix B.1: SHA-256 of "abc".
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(sha256_hex(b"abc"), abc);
        assert_eq!(Chain::begin("abc").hex(), abc);
    }

    #[test]
    fn each_line_and_the_order_of_lines_are_bound() {
        let of = |lines: &[&str]| {
            let mut chain = Chain::begin("first");
            lines.iter().for_each(|line| chain.link(line));
            chain.hex()
        };
        assert_ne!(of(&["a", "b"]), of(&["b", "a"]));
        assert_ne!(of(&["a", "b"]), of(&["ab"]));
        assert_ne!(of(&["a"]), of(&["a", ""]));
        assert_eq!(of(&["a", "b"]), of(&["a", "b"]));
    }
}
