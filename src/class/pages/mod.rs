//! The pages.
use crate::board::BoardView;
use axum::http::{HeaderValue, header};
use axum::response::{IntoResponse, Response};
use detent_class_protocol::AttemptId;
use detent_content::Language;

pub fn language_of(_query: Option<&str>, _accept: Option<&HeaderValue>) -> Language {
    Language::En
}
pub fn html(text: String) -> Response {
    (
        [(
            header::CONTENT_TYPE,
            HeaderValue::from_static("text/html; charset=utf-8"),
        )],
        text,
    )
        .into_response()
}
pub fn no_page_page(_language: Language, address: &str) -> String {
    address.to_owned()
}
pub fn sign_in_page(_language: Language) -> String {
    String::new()
}
pub fn board_page(_language: Language, _board: &BoardView) -> String {
    String::new()
}
pub fn projector_page(
    _language: Language,
    _board: &BoardView,
    _attempt: Option<AttemptId>,
) -> String {
    String::new()
}
pub fn asset(_path: &str) -> Option<(&'static str, &'static [u8])> {
    None
}
