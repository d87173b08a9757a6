//! What was practised, how well, and what comes next.

use super::Face;
use crate::app::port::Shop;
use crate::app::practice::{DrillRes, LearnerRes};
use crate::app::state::Screen;
use bevy_egui::egui::Ui;

/// Where to go from here, if anywhere.
pub(super) fn practice_ui(
    _ui: &mut Ui,
    _face: &mut Face,
    _learner: &mut LearnerRes,
    _drill: &mut DrillRes,
    _shop: &dyn Shop,
) -> Option<Screen> {
    Some(Screen::Start)
}
