//! A drill: one question after the other.

use super::Face;
use crate::app::practice::{DrillRes, LearnerRes};
use crate::app::state::Screen;
use bevy_egui::egui::Ui;

/// Where to go from here, if anywhere. `now` is the window's time, s.
pub(super) fn drill_ui(
    _ui: &mut Ui,
    _face: &mut Face,
    _learner: &mut LearnerRes,
    _drill: &mut DrillRes,
    _now: f32,
) -> Option<Screen> {
    Some(Screen::Practice)
}
