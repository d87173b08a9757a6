//! What reading software gets to know of the window, and what it may ask for.

// Natively the tree goes to the system as it is.
#[cfg(any(test, target_family = "wasm"))]
pub(crate) mod mirror;
#[cfg(any(test, target_family = "wasm"))]
pub(crate) mod request;
