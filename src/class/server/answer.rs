//! What every answer carries, and what is answered when something goes wrong.

use crate::pages::CONTENT_SECURITY_POLICY;
use crate::store::StoreError;
use axum::Json;
use axum::http::{HeaderName, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;

/// The bench compiles its program in the page, draws into pictures and works on without a network.
pub(super) const BENCH_POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; \
    base-uri 'none'; frame-ancestors 'none'";

/// Adds what every answer carries.
pub(super) async fn with_headers(mut response: Response) -> Response {
    let headers = response.headers_mut();
    let all = [
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
    ];
    for (name, value) in all {
        headers.insert(name, HeaderValue::from_static(value));
    }
    let unless_said = [
        (header::CONTENT_SECURITY_POLICY, CONTENT_SECURITY_POLICY),
        (header::CACHE_CONTROL, "no-store"),
    ];
    for (name, value) in unless_said {
        headers
            .entry(name)
            .or_insert(HeaderValue::from_static(value));
    }
    response
}

/// Why a question has no good answer.
pub(super) enum Refused {
    /// Whoever asks has no seat, or is not the teacher.
    NotKnown,
    /// Too many questions in a row: how long to wait, s.
    TooMany(u32),
    /// What was asked about is not there.
    NotThere,
    /// What was sent cannot be used: why, in a sentence.
    Wrong(String),
    /// It could not be kept or read.
    Store(StoreError),
}

impl From<StoreError> for Refused {
    fn from(error: StoreError) -> Refused {
        Refused::Store(error)
    }
}

#[derive(Serialize)]
struct Told {
    error: String,
}

impl IntoResponse for Refused {
    fn into_response(self) -> Response {
        let (status, error) = match self {
            Refused::NotKnown => (StatusCode::UNAUTHORIZED, "join the class first".to_owned()),
            Refused::TooMany(wait_s) => {
                let wait = [(header::RETRY_AFTER, HeaderValue::from(wait_s))];
                let error = format!("too many questions; ask again in {wait_s} s");
                return (StatusCode::TOO_MANY_REQUESTS, wait, Json(Told { error })).into_response();
            }
            Refused::NotThere => (
                StatusCode::NOT_FOUND,
                "there is no such thing here".to_owned(),
            ),
            Refused::Wrong(error) => (StatusCode::BAD_REQUEST, error),
            Refused::Store(
                error @ (StoreError::Full
                | StoreError::Commit(_)
                | StoreError::Busy
                | StoreError::Ended),
            ) => (StatusCode::SERVICE_UNAVAILABLE, error.to_string()),
            Refused::Store(error) => (StatusCode::INTERNAL_SERVER_ERROR, error.to_string()),
        };
        (status, Json(Told { error })).into_response()
    }
}
