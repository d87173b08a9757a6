//! Jobs and boards from the workshop in the browser's local storage, as the same text that a file would hold.

use super::local_items::{get_item, set_item};
use crate::attempts::StorageError;
use crate::workshop::OwnTexts;
use detent_content::{ContentError, Problem};
use wasm_bindgen::JsValue;

/// Jobs, or boards, in this browser.
pub(crate) struct BrowserTexts {
    /// The item that lists their names, one a line.
    list: &'static str,
    /// What stands before the name in the item of one.
    prefix: &'static str,
}

impl BrowserTexts {
    pub(crate) const JOBS: BrowserTexts = BrowserTexts {
        list: "detent.jobs",
        prefix: "detent.job.",
    };
    pub(crate) const BOARDS: BrowserTexts = BrowserTexts {
        list: "detent.boards",
        prefix: "detent.board.",
    };

    fn key(&self, stem: &str) -> String {
        format!("{}{stem}", self.prefix)
    }
}

fn refused(error: &JsValue) -> StorageError {
    StorageError::Refused(format!("{error:?}"))
}

impl OwnTexts for BrowserTexts {
    fn file(&self, stem: &str) -> String {
        format!("{stem}.ron")
    }

    fn stems(&self) -> Vec<String> {
        let list = get_item(self.list).ok().flatten().unwrap_or_default();
        list.lines().map(str::to_owned).collect()
    }

    fn read(&self, stem: &str) -> Result<String, ContentError> {
        let text = get_item(&self.key(stem)).ok().flatten();
        text.ok_or_else(|| ContentError::of_file(&self.file(stem), Problem::NoFile))
    }

    fn is_there(&self, stem: &str) -> Result<bool, StorageError> {
        let text = get_item(&self.key(stem)).map_err(|error| refused(&error))?;
        Ok(text.is_some())
    }

    fn takes_unfinished(&self) -> bool {
        true
    }

    fn keep(&self, stem: &str, text: &str) -> Result<String, StorageError> {
        set_item(&self.key(stem), text).map_err(|error| refused(&error))?;
        let mut stems = self.stems();
        if !stems.iter().any(|known| known == stem) {
            stems.push(stem.to_owned());
            stems.sort();
            set_item(self.list, &stems.join("\n")).map_err(|error| refused(&error))?;
        }
        Ok(self.file(stem))
    }
}
