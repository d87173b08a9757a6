//! Measures of the machine that its parts share.

/// Cabinet width, m.
pub const WIDTH: f32 = 0.68;
/// Cabinet depth, m.
pub const DEPTH: f32 = 0.66;
/// Underside of the top deck, m.
pub const DECK_Y: f32 = 0.90;
/// Thickness of the deck, m.
pub const DECK: f32 = 0.028;
/// Inside bottom of the tub, m.
pub const TUB_Y: f32 = 0.42;
/// Radius of the tub, m.
pub const TUB_R: f32 = 0.255;
