//! A text that is handed out closed: a job whose answer must not be read in passing.
//!
//! It is padded, so that its length tells nothing, and enciphered with XChaCha20-Poly1305: ChaCha20 and Poly1305 as RFC 8439
//! has them, with the longer nonce of draft-irtf-cfrg-xchacha-03, which may be drawn at random. The key is made from the nonce
//! and from words that stand below. So it keeps out whoever opens a file or looks into a page's storage, and not somebody who
//! takes the program apart: the machine runs at the learner's side, and there the program has to open it.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use chacha20poly1305::aead::{Aead, KeyInit, Payload};
use chacha20poly1305::{Key, XChaCha20Poly1305, XNonce};
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

/// Bytes of a nonce.
pub const NONCE_BYTES: usize = 24;
/// What is sealed fills a whole number of these, bytes. No built-in job fills more than one.
const BLOCK_BYTES: usize = 8_192;
/// Bytes of the text's length, before the text.
const LENGTH_BYTES: usize = 4;
/// Largest text that is sealed, bytes. A scenario has a few thousand.
pub const LARGEST_SEALED_TEXT: usize = 1 << 20;
/// What keys are made from, with a nonce.
const KEY_WORDS: &[u8] = b"a job that is handed out closed, format 1";

/// A closed text, as base64 outside.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SealedText(String);

/// The scenario of a job and the seed of its machine.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SealedScenario {
    /// The scenario's text.
    pub text: String,
    /// The seed.
    pub seed: u64,
}

impl SealedScenario {
    /// Closes it for this label: [`SealedText::seal`].
    ///
    /// # Errors
    /// [`TooLarge`].
    pub fn seal(&self, label: &str, nonce: [u8; NONCE_BYTES]) -> Result<SealedText, TooLarge> {
        let text = serde_json::to_string(self).map_err(|_| TooLarge)?;
        SealedText::seal(&text, label, nonce)
    }

    /// What is in there: [`SealedText::open`].
    ///
    /// # Errors
    /// [`NotSealed`], also where something else is in there.
    pub fn open(sealed: &SealedText, label: &str) -> Result<SealedScenario, NotSealed> {
        let text = sealed.open(label)?;
        serde_json::from_str(&text).map_err(|_| NotSealed)
    }
}

/// It cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("it was damaged, or closed for somebody or something else")]
pub struct NotSealed;

/// It cannot be closed: it is larger than [`LARGEST_SEALED_TEXT`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("a text of more than {LARGEST_SEALED_TEXT} bytes is not sealed")]
pub struct TooLarge;

impl SealedText {
    /// Closes `text`. It opens for the same `label` only, which is not secret; `nonce` is drawn anew for each text.
    ///
    /// # Errors
    /// [`TooLarge`].
    pub fn seal(text: &str, label: &str, nonce: [u8; NONCE_BYTES]) -> Result<SealedText, TooLarge> {
        if text.len() > LARGEST_SEALED_TEXT {
            return Err(TooLarge);
        }
        let length = u32::try_from(text.len()).map_err(|_| TooLarge)?;
        let whole = (LENGTH_BYTES + text.len()).next_multiple_of(BLOCK_BYTES);
        let mut padded = Vec::with_capacity(whole);
        padded.extend_from_slice(&length.to_be_bytes());
        padded.extend_from_slice(text.as_bytes());
        padded.resize(whole, 0);
        let payload = Payload {
            msg: &padded,
            aad: label.as_bytes(),
        };
        let closed = cipher(&nonce).encrypt(&XNonce::from(nonce), payload);
        let closed = closed.map_err(|_| TooLarge)?;
        Ok(SealedText(
            STANDARD.encode([nonce.as_slice(), &closed].concat()),
        ))
    }

    /// Opens it.
    ///
    /// # Errors
    /// [`NotSealed`] where a single character is another one, or the label is.
    pub fn open(&self, label: &str) -> Result<String, NotSealed> {
        let bytes = STANDARD.decode(&self.0).map_err(|_| NotSealed)?;
        let (nonce, closed) = bytes.split_first_chunk().ok_or(NotSealed)?;
        let payload = Payload {
            msg: closed,
            aad: label.as_bytes(),
        };
        let opened = cipher(nonce).decrypt(&XNonce::from(*nonce), payload);
        let opened = opened.map_err(|_| NotSealed)?;
        let (length, text) = opened
            .split_first_chunk::<LENGTH_BYTES>()
            .ok_or(NotSealed)?;
        let length = usize::try_from(u32::from_be_bytes(*length)).map_err(|_| NotSealed)?;
        let text = text.get(..length).ok_or(NotSealed)?;
        String::from_utf8(text.to_vec()).map_err(|_| NotSealed)
    }
}

fn cipher(nonce: &[u8; NONCE_BYTES]) -> XChaCha20Poly1305 {
    let mut key = Sha256::new();
    key.update(KEY_WORDS);
    key.update(nonce);
    XChaCha20Poly1305::new(&Key::from(<[u8; 32]>::from(key.finalize())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// draft-irtf-cfrg-xchacha-03, appendix A.3.1: AEAD_XChaCha20_Poly1305.
    #[test]
    fn the_cipher_is_that_of_the_draft() {
        let text = b"Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, \
            sunscreen would be it.";
        let key: Vec<u8> = (0x80..0xa0).collect();
        let nonce: Vec<u8> = (0x40..0x58).collect();
        let aad = [
            0x50, 0x51, 0x52, 0x53, 0xc0, 0xc1, 0xc2, 0xc3, 0xc4, 0xc5, 0xc6, 0xc7,
        ];
        let cipher = XChaCha20Poly1305::new(&Key::try_from(key.as_slice()).expect("32 bytes"));
        let nonce = XNonce::try_from(nonce.as_slice()).expect("24 bytes");
        let closed = cipher.encrypt(
            &nonce,
            Payload {
                msg: text,
                aad: &aad,
            },
        );
        let closed = closed.expect("it is short");
        let (text, tag) = closed.split_at(text.len());
        assert_eq!(
            text[..16],
            [
                0xbd, 0x6d, 0x17, 0x9d, 0x3e, 0x83, 0xd4, 0x3b, 0x95, 0x76, 0x57, 0x94, 0x93, 0xc0,
                0xe9, 0x39
            ]
        );
        assert_eq!(
            tag,
            [
                0xc0, 0x87, 0x59, 0x24, 0xc1, 0xc7, 0x98, 0x79, 0x47, 0xde, 0xaf, 0xd8, 0x78, 0x0a,
                0xcf, 0x49
            ]
        );
    }

    #[test]
    fn texts_of_any_usual_length_look_alike() {
        let sealed = |length: usize| {
            let text = "x".repeat(length);
            SealedText::seal(&text, "job-1", [7; NONCE_BYTES]).expect("it is short")
        };
        assert_eq!(sealed(0).0.len(), sealed(8_188).0.len());
        assert!(sealed(8_189).0.len() > sealed(8_188).0.len());
        let large = "x".repeat(LARGEST_SEALED_TEXT + 1);
        assert_eq!(
            SealedText::seal(&large, "", [7; NONCE_BYTES]),
            Err(TooLarge)
        );
    }

    proptest! {
        #[test]
        fn what_is_sealed_opens_for_its_label_alone(
            text in ".{0,300}", label in "[a-z]{0,9}", other in "[a-z]{0,9}",
            nonce in any::<[u8; NONCE_BYTES]>(), place in any::<prop::sample::Index>(),
        ) {
            let sealed = SealedText::seal(&text, &label, nonce).expect("it is short");
            prop_assert_eq!(sealed.open(&label), Ok(text.clone()));
            prop_assert!(text.len() < 8 || !sealed.0.contains(&text));
            if other != label {
                prop_assert_eq!(sealed.open(&other), Err(NotSealed));
            }
            // Any other character in any place, or one less.
            let mut spoiled = sealed.0.into_bytes();
            let place = place.index(spoiled.len());
            spoiled[place] = if spoiled[place] == b'A' { b'B' } else { b'A' };
            let spoiled = String::from_utf8(spoiled).expect("ASCII");
            prop_assert_eq!(SealedText(spoiled.clone()).open(&label), Err(NotSealed));
            let cut = SealedText(spoiled[..place].to_owned());
            prop_assert_eq!(cut.open(&label), Err(NotSealed));
        }

        #[test]
        fn any_text_is_refused_without_a_panic(text in ".{0,200}") {
            prop_assert_eq!(SealedText(text).open("job-1"), Err(NotSealed));
        }
    }
}
