//! Learners in the browser's local storage, as the same text that a file would hold.
//!
//! Local storage answers at once and writes an item whole or not at all. A browser gives it a few megabytes:
//! some twenty thousand answers. What does not fit is refused, and said.

use super::local_items::{get_item, remove_item, set_item};
use detent_content::{ProfileError, ProfileStore};
use detent_training::record::SystemReason;
use std::io::ErrorKind;
use wasm_bindgen::JsValue;

/// The item that lists the stems, one a line.
const LIST: &str = "detent.learners";

/// The item with the stem of whoever worked here last.
const LAST: &str = "detent.last-learner";

/// Learners in this browser.
pub(super) struct BrowserLearners;

fn key(stem: &str) -> String {
    format!("detent.learner.{stem}")
}

fn refused(stem: &str, error: &JsValue) -> ProfileError {
    ProfileError::Refused {
        file: stem.to_owned(),
        reason: SystemReason {
            kind: ErrorKind::Other,
            text: format!("{error:?}"),
        },
    }
}

fn keep_list(stems: &[String]) -> Result<(), ProfileError> {
    set_item(LIST, &stems.join("\n")).map_err(|e| refused(LIST, &e))
}

impl ProfileStore for BrowserLearners {
    fn place(&self) -> Option<String> {
        None
    }

    fn stems(&self) -> Vec<String> {
        let list = get_item(LIST).ok().flatten().unwrap_or_default();
        list.lines().map(str::to_owned).collect()
    }

    fn file(&self, stem: &str) -> String {
        stem.to_owned()
    }

    fn read(&self, stem: &str) -> Result<Option<Vec<u8>>, ProfileError> {
        let text = get_item(&key(stem)).map_err(|e| refused(stem, &e))?;
        Ok(text.map(String::into_bytes))
    }

    fn write(&self, stem: &str, text: &[u8]) -> Result<(), ProfileError> {
        let mut stems = self.stems();
        if !stems.iter().any(|known| known == stem) {
            stems.push(stem.to_owned());
            stems.sort();
            keep_list(&stems)?;
        }
        let text = String::from_utf8_lossy(text);
        set_item(&key(stem), &text).map_err(|e| refused(stem, &e))
    }

    fn remove(&self, stem: &str) -> Result<(), ProfileError> {
        remove_item(&key(stem)).map_err(|e| refused(stem, &e))?;
        let mut stems = self.stems();
        stems.retain(|known| known != stem);
        keep_list(&stems)
    }

    fn last_stem(&self) -> Option<String> {
        let last = get_item(LAST).ok().flatten()?;
        self.stems().into_iter().find(|stem| *stem == last)
    }

    fn keep_last_stem(&self, stem: Option<&str>) -> Result<(), ProfileError> {
        let kept = match stem {
            Some(stem) => set_item(LAST, stem),
            None => remove_item(LAST),
        };
        kept.map_err(|e| refused(LAST, &e))
    }
}
