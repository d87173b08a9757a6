//! Digests and identifiers, as hexadecimal digits outside.

use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};
use std::fmt;
use std::str::FromStr;

/// It is not so many pairs of hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{bytes} bytes are written as {} hexadecimal digits", bytes * 2)]
pub struct NotHexadecimal {
    /// How many bytes there must be.
    pub bytes: usize,
}

fn read<const N: usize>(text: &str) -> Result<[u8; N], NotHexadecimal> {
    let wrong = NotHexadecimal { bytes: N };
    if text.len() != 2 * N
        || !text
            .bytes()
            .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
    {
        return Err(wrong);
    }
    let mut bytes = [0; N];
    for (byte, at) in bytes.iter_mut().zip((0..).step_by(2)) {
        *byte = u8::from_str_radix(&text[at..at + 2], 16).map_err(|_| wrong)?;
    }
    Ok(bytes)
}

/// Bytes that are written as hexadecimal digits in lower case.
macro_rules! hexadecimal {
    ($(#[$doc:meta])* $name:ident, $bytes:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub struct $name([u8; $bytes]);

        impl $name {
            /// Of these bytes.
            pub const fn of_bytes(bytes: [u8; $bytes]) -> $name {
                $name(bytes)
            }

            /// Its bytes.
            pub const fn bytes(&self) -> &[u8; $bytes] {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
            }
        }

        impl FromStr for $name {
            type Err = NotHexadecimal;

            fn from_str(text: &str) -> Result<$name, NotHexadecimal> {
                read(text).map($name)
            }
        }

        impl TryFrom<String> for $name {
            type Error = NotHexadecimal;

            fn try_from(text: String) -> Result<$name, NotHexadecimal> {
                text.parse()
            }
        }

        impl From<$name> for String {
            fn from(value: $name) -> String {
                value.to_string()
            }
        }
    };
}

hexadecimal! {
    /// SHA-256.
    Digest, 32
}

hexadecimal! {
    /// Names an attempt among all that were ever made: drawn where it is begun.
    AttemptId, 16
}

hexadecimal! {
    /// Names a class among all that were ever made: two may have one title, and one server may have another class
    /// tomorrow.
    ClassId, 16
}

hexadecimal! {
    /// What lets a browser or a window back into its seat, or the teacher to the board: whoever has it is believed. It
    /// is never shown by `Debug`.
    SecretToken, 32
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Digest({self})")
    }
}

impl fmt::Debug for AttemptId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "AttemptId({self})")
    }
}

impl fmt::Debug for ClassId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "ClassId({self})")
    }
}

impl fmt::Debug for SecretToken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("SecretToken(…)")
    }
}

impl Digest {
    /// Before the first segment.
    pub const NONE: Digest = Digest([0; 32]);

    /// Of these parts, each with its length before it, so that no two lists of parts have the same bytes.
    pub fn of_parts(parts: &[&[u8]]) -> Digest {
        let mut digest = Sha256::new();
        for part in parts {
            digest.update((part.len() as u64).to_be_bytes());
            digest.update(part);
        }
        Digest(digest.finalize().into())
    }

    /// Its first eight bytes as a number: for a seed.
    pub fn leading_number(&self) -> u64 {
        let [a, b, c, d, e, f, g, h, ..] = self.0;
        u64::from_be_bytes([a, b, c, d, e, f, g, h])
    }

    /// Of an attempt's text.
    pub fn of_text(text: &str) -> Digest {
        Digest::of_parts(&[b"text", text.as_bytes()])
    }
}

impl SecretToken {
    /// What is kept of it where it is checked: whoever reads that cannot use it.
    pub fn digest(&self) -> Digest {
        Digest::of_parts(&[b"token", &self.0])
    }
}

impl AttemptId {
    /// Of an attempt that was handed in as a file: the same file is the same attempt.
    pub fn of_file(seat: &str, text: &[u8]) -> AttemptId {
        let digest = Digest::of_parts(&[b"file", seat.as_bytes(), text]);
        let mut bytes = [0; 16];
        bytes.copy_from_slice(&digest.0[..16]);
        AttemptId(bytes)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read() {
        let digest = Digest::of_parts(&[b"a"]);
        assert_eq!(digest.to_string().parse(), Ok(digest));
        for wrong in [
            "",
            "0",
            "0g",
            &"AB".repeat(32),
            &"ab".repeat(31),
            &"é".repeat(32),
        ] {
            assert_eq!(
                wrong.parse::<Digest>(),
                Err(NotHexadecimal { bytes: 32 }),
                "{wrong}"
            );
        }
    }

    #[test]
    fn parts_are_told_apart() {
        assert_ne!(
            Digest::of_parts(&[b"ab", b"c"]),
            Digest::of_parts(&[b"a", b"bc"])
        );
        assert_ne!(Digest::of_parts(&[b"a", b""]), Digest::of_parts(&[b"a"]));
    }

    #[test]
    fn a_token_is_in_no_log() {
        let token = SecretToken::of_bytes([7; 32]);
        assert!(!format!("{token:?}").contains("07"));
        assert_ne!(token.digest().to_string(), token.to_string());
    }
}
