//! When the panels are laid out anew: at once when somebody does something, a few times a second while only the
//! machine moves. In between the scene goes on, and the panels stand as they were.

use super::rest::NextFrame;
use super::shots::Shot;
use super::state::Screen;
use bevy::prelude::*;
use bevy_egui::{EguiContext, EguiInput, EguiPostUpdateSet, PrimaryEguiContext};
use std::time::Duration;

/// Between two layouts while only the machine moves: no slower than the clock's own frames.
const EVERY: Duration = Duration::from_millis(50);

/// Whether the panels are laid out in this frame.
#[derive(Resource, Default)]
struct PanelPace {
    due: bool,
    /// Time since the last layout.
    waited: Duration,
}

impl PanelPace {
    /// A frame came `delta` after the last one, and the panels are `wanted` in it or not.
    fn step(&mut self, delta: Duration, wanted: bool) {
        self.waited += delta;
        self.due = wanted || self.waited >= EVERY;
        if self.due {
            self.waited = Duration::ZERO;
        }
    }
}

fn is_due(pace: Res<PanelPace>) -> bool {
    pace.due
}

fn choose(
    screen: Res<State<Screen>>,
    real: Res<Time<Real>>,
    picture: Option<Res<Shot>>,
    panels: Single<(&mut EguiContext, &EguiInput), With<PrimaryEguiContext>>,
    mut pace: ResMut<PanelPace>,
    mut next: ResMut<NextFrame>,
) {
    let (mut context, input) = panels.into_inner();
    let wanted = *screen.get() != Screen::Bench
        || picture.is_some()
        || next.is_settling()
        || !input.events.is_empty()
        || context.get_mut().has_requested_repaint();
    pace.step(real.delta(), wanted);
    if !pace.due {
        // What the panels do not show yet they show in a later frame.
        next.ask();
    }
}

/// The pace of the panels.
pub fn plugin(app: &mut App) {
    app.init_resource::<PanelPace>()
        .configure_sets(
            PostUpdate,
            (
                EguiPostUpdateSet::EndPass.run_if(is_due),
                EguiPostUpdateSet::ProcessOutput.run_if(is_due),
                EguiPostUpdateSet::PostProcessOutput.run_if(is_due),
            ),
        )
        .add_systems(PostUpdate, choose.before(EguiPostUpdateSet::EndPass));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sixty_frames_a_second_lay_the_panels_out_fifteen_times() {
        let mut pace = PanelPace::default();
        let frame = Duration::from_micros(16_600);
        let layouts = |pace: &mut PanelPace, wanted: bool| {
            (0..60)
                .filter(|_| {
                    pace.step(frame, wanted);
                    pace.due
                })
                .count()
        };
        assert_eq!(layouts(&mut pace, false), 15);
        assert_eq!(layouts(&mut pace, true), 60);
        // Where a frame takes longer than the pace, every one shows the panels.
        pace.step(Duration::from_millis(60), false);
        assert!(pace.due);
    }
}
