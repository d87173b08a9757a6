//! (next)

use super::Maker;
use bevy::prelude::*;

/// Builds the loads.
pub fn build(_make: &mut Maker, _root: Entity) {}

/// The loads.
pub fn plugin(_app: &mut App) {}
