//! The camera that sees the room, and the picture that it draws.

use bevy::prelude::*;

/// The camera that sees the room.
#[derive(Component)]
pub struct MainCamera {
    /// What it looks at, m.
    pub target: Vec3,
    /// From there to the camera; only the direction counts.
    pub away: Vec3,
    /// How much it must take in, across and up, m.
    pub size: Vec2,
}

/// The picture that the eye draws and the panels show.
#[derive(Resource)]
pub struct SceneTarget {
    /// The picture.
    pub image: Handle<Image>,
    /// No graphics card: every pixel is dear. Then moving things are drawn small, things at rest
    /// once and sharp, and lit lamps over the picture by the panels.
    pub software: bool,
    /// The picture is smaller than its place in the window in this frame.
    pub coarse: bool,
}

/// From a place in the window, points, to the eye's picture, whatever size that has in this frame.
pub fn to_picture(camera: &Camera, stage: Rect, window: Vec2) -> Vec2 {
    let size = camera.logical_viewport_size().unwrap_or_default();
    (window - stage.min) / stage.size() * size
}

/// From a place in the eye's picture to the window, points.
pub fn to_window(camera: &Camera, stage: Rect, place: Vec2) -> Vec2 {
    let size = camera.logical_viewport_size().unwrap_or(Vec2::ONE);
    place / size * stage.size() + stage.min
}
