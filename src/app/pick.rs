//! What the pointer is over, and what pressing it does.

use crate::plant::{Button, Component as Part};
use bevy::prelude::*;

/// What a mesh stands for.
#[derive(Component, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pick {
    /// The dial.
    Dial,
    /// A button on the console.
    Button(Button),
    /// The lid.
    Lid,
    /// The mains plug.
    Plug,
    /// A component.
    Part(Part),
}
