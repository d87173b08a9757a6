//! Easing, and the eased positions of what moves.

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

/// Moves `value` towards `goal` with time constant `lag_s`.
pub fn ease(value: f32, goal: f32, lag_s: f32, dt: f32) -> f32 {
    goal + (value - goal) * (-dt / lag_s).exp()
}
