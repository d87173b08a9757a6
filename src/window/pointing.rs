//! What the pointer can be over, and where it is.

use bevy::prelude::*;
use detent_simulation::interface::{Button, Component as Part};

/// What a mesh stands for.
#[derive(Component, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pick {
    /// The knob: dial or rotary switch.
    Knob,
    /// A button on the console.
    Button(Button),
    /// The lid.
    Lid,
    /// The mains plug.
    Plug,
    /// A component.
    Part(Part),
}

/// Skin of a component, shown under the pointer or when chosen.
#[derive(Component)]
pub struct Outline(pub Part);

/// The mouse with its left button, or the first finger. Its place is in points, as everything in the
/// panels: logical pixels of the window divided by the panels' zoom.
#[derive(Clone, Copy, Default, Debug)]
pub struct Hand {
    /// None where it is outside.
    pub place: Option<Vec2>,
    /// Pressed in this frame.
    pub pressed: bool,
    /// Down now.
    pub down: bool,
    /// Let go in this frame.
    pub released: bool,
}

/// What the pointer does.
#[derive(Resource, Default)]
pub struct Pointing {
    /// What lies under the pointer.
    pub over: Option<Pick>,
    /// Where the pointer is, or was last, or has just come down, points.
    pub at: Vec2,
    /// The hand in this frame.
    pub hand: Hand,
    /// Where it went since the last frame, points.
    pub path: Vec<Vec2>,
    /// Nothing stands between the pointer and the scene, and the bench can be worked at.
    pub free: bool,
    /// What is held.
    pub grip: Option<Pick>,
}
