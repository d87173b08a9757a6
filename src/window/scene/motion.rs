//! Easing, and the eased positions of what moves.

use crate::preferences::is_still;
use crate::state::UiState;
use bevy::ecs::system::SystemParam;
use bevy::prelude::*;

/// Eased positions of what moves.
#[derive(Resource, Default)]
pub struct Motion {
    /// 0 panels on, 1 off.
    pub cabinet: f32,
    /// 0 lid down, 1 up.
    pub lid: f32,
    /// Water in the tub, mm.
    pub level_mm: f32,
}

/// Puts a thing in its place. One that is there already is not touched: what hangs on it would be worked out
/// and sent to the graphics card anew.
pub fn put(place: &mut Mut<Transform>, new: impl FnOnce(Transform) -> Transform) {
    let new = new(**place);
    place.set_if_neq(new);
}

/// How what moves gets to its goal in this frame: by and by, or at once for whoever wants nothing to glide.
#[derive(SystemParam)]
pub struct Easing<'w> {
    time: Res<'w, Time>,
    ui_state: Res<'w, UiState>,
}

impl Easing<'_> {
    /// Whether everything is in its place at once.
    pub fn is_still(&self) -> bool {
        is_still(self.ui_state.preferences.motion)
    }

    /// Time since the last frame, s.
    pub fn frame_s(&self) -> f32 {
        self.time.delta_secs()
    }

    /// Share of the way to the goal that is covered in this frame with time constant `lag_s`.
    pub fn share(&self, lag_s: f32) -> f32 {
        if self.is_still() {
            1.0
        } else {
            1.0 - (-self.frame_s() / lag_s).exp()
        }
    }

    /// Moves `value` towards `goal` with time constant `lag_s`.
    pub fn toward(&self, value: f32, goal: f32, lag_s: f32) -> f32 {
        value + (goal - value) * self.share(lag_s)
    }
}
