//! The bench for whoever does not see it: egui's tree of what stands on the screen, and what reading software asks for.

pub mod lamps;
// Natively the tree goes to the system as it is.
#[cfg(any(test, target_family = "wasm"))]
pub(crate) mod mirror;
#[cfg(not(target_family = "wasm"))]
mod native;
#[cfg(any(test, target_family = "wasm"))]
pub(crate) mod request;

use bevy::prelude::App;

/// Hands the tree over and takes requests in. A page does both by itself.
pub fn plugin(app: &mut App) {
    #[cfg(not(target_family = "wasm"))]
    native::plugin(app);
    #[cfg(target_family = "wasm")]
    let _ = app;
}
