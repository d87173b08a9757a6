//! When the panels are laid out anew: at once when somebody does something, a few times a second while only the
//! machine moves. In between the scene goes on, and the panels stand as they were.

use super::rest::NextFrame;
use super::shots::Shot;
use super::state::Screen;
use bevy::asset::AssetEventSystems;
use bevy::prelude::*;
use bevy_egui::egui::ClippedPrimitive;
use bevy_egui::{EguiContext, EguiInput, EguiPostUpdateSet, EguiRenderOutput, PrimaryEguiContext};
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

/// What the panels drew last.
#[derive(Resource, Default)]
struct LastPaint(Vec<ClippedPrimitive>);

/// The render world takes away what it is to draw: in a frame without a layout it gets the last one's again.
fn draw_again(
    pace: Res<PanelPace>,
    mut last: ResMut<LastPaint>,
    mut output: Single<&mut EguiRenderOutput, With<PrimaryEguiContext>>,
) {
    if pace.due {
        last.0.clone_from(&output.paint_jobs);
    } else {
        output.paint_jobs.clone_from(&last.0);
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
        next.panels_stand();
    }
}

/// The pace of the panels.
pub fn plugin(app: &mut App) {
    app.init_resource::<PanelPace>()
        .init_resource::<LastPaint>()
        .configure_sets(
            PostUpdate,
            (
                EguiPostUpdateSet::EndPass.run_if(is_due),
                EguiPostUpdateSet::ProcessOutput.run_if(is_due),
                // Else a letter that is shown for the first time stays blank until the next frame.
                (EguiPostUpdateSet::PostProcessOutput.run_if(is_due)).before(AssetEventSystems),
            ),
        )
        .add_systems(
            PostUpdate,
            (
                choose.before(EguiPostUpdateSet::EndPass),
                draw_again.after(EguiPostUpdateSet::PostProcessOutput),
            ),
        );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::UiState;
    use crate::{AppOptions, add_bench, without_window_system};
    use bevy::time::TimeUpdateStrategy;

    /// Frames, and those of them in which nothing was handed over to be drawn.
    #[derive(Resource, Default)]
    struct HandedOver {
        frames: u32,
        blank: u32,
    }

    /// Takes the panels away to be drawn, as the render world does.
    fn take(mut outputs: Query<&mut EguiRenderOutput>, mut handed_over: ResMut<HandedOver>) {
        for mut output in &mut outputs {
            let taken = std::mem::take(&mut *output);
            handed_over.frames += 1;
            handed_over.blank += u32::from(taken.paint_jobs.is_empty());
        }
    }

    #[test]
    fn no_frame_is_without_the_panels() {
        let options = AppOptions {
            start: Some((0, 71)),
            ..AppOptions::default()
        };
        let mut app = without_window_system(&options, false);
        add_bench(&mut app, &options).expect("the built-in jobs are sound");
        let frame = Duration::from_millis(10);
        app.insert_resource(TimeUpdateStrategy::ManualDuration(frame))
            .init_resource::<HandedOver>()
            .add_systems(Last, take);
        app.world_mut().resource_mut::<UiState>().speed = 1;
        app.finish();
        app.cleanup();
        let mut without_layout = 0;
        for _ in 0..100 {
            app.update();
            without_layout += u32::from(!app.world().resource::<PanelPace>().due);
        }
        let handed_over = app.world().resource::<HandedOver>();
        assert_eq!((handed_over.frames, handed_over.blank), (100, 0));
        assert!(without_layout > 20, "{without_layout}");
    }

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
