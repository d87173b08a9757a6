//! The page's mirror of what egui draws, for reading software, and what that asks for.

use super::wake;
use crate::access::{mirror, request};
use bevy::prelude::*;
use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// Shows a change, as [`crate::access::mirror`] tells it.
    #[wasm_bindgen(js_namespace = detentPage, js_name = mirror)]
    fn show(change: &str);
}

/// Reading software wants this of the element with this id.
pub(super) fn ask(id: &str, what: &str, value: &str) {
    if request::ask(id, what, value) {
        wake();
    }
}

/// Both ways.
pub(super) fn plugin(app: &mut App) {
    mirror::plugin(app, show);
    request::plugin(app);
}
