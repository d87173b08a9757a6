//! What can be heard, as sound beside its caption: by itself where that needs no package to build, on Linux with the
//! feature `audio`.

#[cfg(any(
    feature = "audio",
    windows,
    target_vendor = "apple",
    target_family = "wasm"
))]
mod playing;
#[cfg(any(
    test,
    feature = "audio",
    windows,
    target_vendor = "apple",
    target_family = "wasm"
))]
mod samples;

use bevy::prelude::App;

/// Whether this program plays what is heard, or only says it.
pub const IS_PLAYED: bool = cfg!(any(
    feature = "audio",
    windows,
    target_vendor = "apple",
    target_family = "wasm"
));

/// Sound for the bench, where there is any.
pub fn plugin(app: &mut App) {
    #[cfg(any(
        feature = "audio",
        windows,
        target_vendor = "apple",
        target_family = "wasm"
    ))]
    playing::plugin(app);
    #[cfg(not(any(
        feature = "audio",
        windows,
        target_vendor = "apple",
        target_family = "wasm"
    )))]
    let _ = app;
}
