//! (next)

use bevy::prelude::*;

/// The probes.
pub fn plugin(_app: &mut App) {}
