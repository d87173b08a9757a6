//! The browser's local storage. It answers at once and writes an item whole or not at all.

use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_namespace = localStorage, js_name = getItem, catch)]
    pub(super) fn get_item(key: &str) -> Result<Option<String>, JsValue>;
    #[wasm_bindgen(js_namespace = localStorage, js_name = setItem, catch)]
    pub(super) fn set_item(key: &str, value: &str) -> Result<(), JsValue>;
    #[wasm_bindgen(js_namespace = localStorage, js_name = removeItem, catch)]
    pub(super) fn remove_item(key: &str) -> Result<(), JsValue>;
}
