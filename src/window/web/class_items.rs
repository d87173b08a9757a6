//! Seats in classes in the browser's local storage.

use super::local_items::{get_item, set_item};
use crate::attempts::StorageError;
use crate::class::address::ServerAddress;
use crate::class::kept::{ClassStore, KeptClass};

/// Seats in this browser.
pub(super) struct ClassItems;

fn key(address: &ServerAddress) -> String {
    format!("detent.class.{address}")
}

impl ClassStore for ClassItems {
    fn read(&self, address: &ServerAddress) -> Option<KeptClass> {
        let text = get_item(&key(address)).ok().flatten()?;
        serde_json::from_str(&text).ok()
    }

    fn keep(&self, address: &ServerAddress, kept: &KeptClass) -> Result<(), StorageError> {
        let text = serde_json::to_string(kept);
        let text = text.map_err(|error| StorageError::Refused(error.to_string()))?;
        set_item(&key(address), &text).map_err(|error| StorageError::Refused(format!("{error:?}")))
    }
}
