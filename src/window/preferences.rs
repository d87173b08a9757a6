//! The window goes by what the learner who is there prefers.

use super::key_bindings::KeyBindings;
use super::practice::LearnerRes;
use super::state::UiState;
use bevy::prelude::*;
use bevy_egui::EguiContexts;
use bevy_egui::egui::style::ScrollAnimation;
use detent_content::{Motion, TextSize};

/// Whether views are in their place at once instead of gliding there.
pub fn is_still(motion: Motion) -> bool {
    match motion {
        Motion::AsSystem => system_reduces_motion(),
        Motion::Reduced => true,
        Motion::Full => false,
    }
}

/// Whoever uses this browser wants less motion.
#[cfg(target_family = "wasm")]
fn system_reduces_motion() -> bool {
    use wasm_bindgen::prelude::*;

    #[wasm_bindgen]
    extern "C" {
        type MediaQueryList;
        #[wasm_bindgen(js_namespace = window, js_name = matchMedia)]
        fn match_media(query: &str) -> MediaQueryList;
        #[wasm_bindgen(method, getter)]
        fn matches(this: &MediaQueryList) -> bool;
    }

    match_media("(prefers-reduced-motion: reduce)").matches()
}

/// No window system is asked.
#[cfg(not(target_family = "wasm"))]
fn system_reduces_motion() -> bool {
    false
}

/// The panels go by what the learner who is there prefers.
fn follow_learner(learner: Res<LearnerRes>, mut ui_state: ResMut<UiState>) {
    if ui_state.preferences != *learner.preferences() {
        ui_state.preferences = learner.preferences().clone();
        ui_state.key_bindings = KeyBindings::of(&ui_state.preferences);
    }
}

/// How long a list glides and a popup takes to open, s, where things move.
const GLIDE_S: f32 = 1.0 / 12.0;

/// The fewest points across a window in which everything finds its place; WCAG 2.2, 1.4.10 asks for as many pixels.
const LEAST_WIDTH: f32 = 320.0;

/// How many times as large everything is drawn in a window so wide in its own points: as is preferred, but never so large
/// that there is no room left for it.
pub fn zoom_that_fits(preferred: TextSize, width: f32) -> f32 {
    let most = (width / LEAST_WIDTH).max(1.0);
    (f32::from(preferred.percent()) / 100.0).min(most)
}

/// Size and motion of the panels, when another is preferred. In between the size is the window’s own: Ctrl with plus
/// and minus.
fn set_panels(
    ui_state: Res<UiState>,
    mut contexts: EguiContexts,
    mut set: Local<Option<(f32, bool)>>,
) -> Result {
    let preferences = &ui_state.preferences;
    let ctx = contexts.ctx_mut()?;
    let width = ctx.content_rect().width() * ctx.zoom_factor();
    let zoom = zoom_that_fits(preferences.text_size, width);
    let wanted = (zoom, is_still(preferences.motion));
    let (before, still_before) = set.unwrap_or((1.0, false));
    if *set == Some(wanted) {
        return Ok(());
    }
    if wanted.0 != before {
        ctx.set_zoom_factor(wanted.0);
    }
    if wanted.1 != still_before {
        let still = wanted.1;
        ctx.all_styles_mut(|style| {
            style.animation_time = if still { 0.0 } else { GLIDE_S };
            style.scroll_animation = match still {
                true => ScrollAnimation::none(),
                false => ScrollAnimation::default(),
            };
        });
    }
    *set = Some(wanted);
    Ok(())
}

/// Preferences.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, (follow_learner, set_panels).chain());
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::AppOptions;
    use crate::camera::MainCamera;
    use crate::key_bindings::KeyTaken;
    use crate::rest::tests::{paused, send_key};
    use crate::scene::motion::Motion as SceneMotion;
    use crate::state::{BenchRes, ViewKind};
    use bevy::input::ButtonState;
    use bevy::input::keyboard::Key;
    use bevy_egui::{EguiContext, PrimaryEguiContext};
    use detent_content::{
        CharacterKeys, KeyAction, KeyPlace, Language, Preferences, ProfileFolder,
    };
    use detent_training::bench::Action;

    fn bench() -> App {
        let mut app = paused(&AppOptions {
            start: Some((0, 71)),
            ..AppOptions::default()
        });
        (0..5).for_each(|_| app.update());
        app
    }

    /// Whoever is there prefers this from now on.
    fn prefer(app: &mut App, preferences: Preferences) {
        let mut learner = app.world_mut().resource_mut::<LearnerRes>();
        learner.prefer(preferences);
        (0..2).for_each(|_| app.update());
    }

    /// A bench whose learner prefers this motion.
    fn moving(motion: Motion) -> App {
        let mut app = bench();
        prefer(
            &mut app,
            Preferences {
                motion,
                ..Preferences::default()
            },
        );
        app
    }

    fn press(app: &mut App, key_code: KeyCode, letter: &str) {
        for state in [ButtonState::Pressed, ButtonState::Released] {
            send_key(app, key_code, Key::Character(letter.into()), state);
            app.update();
        }
    }

    fn is_plugged(app: &App) -> bool {
        app.world().resource::<BenchRes>().view().machine.plugged
    }

    #[test]
    fn a_new_key_is_taken_from_the_next_press_and_works_at_the_bench() {
        let mut app = bench();
        let plugged = is_plugged(&app);
        let ask = |app: &mut App| {
            let mut ui_state = app.world_mut().resource_mut::<UiState>();
            (ui_state.keys, ui_state.rebinding) = (true, Some(KeyAction::Plug));
        };
        ask(&mut app);
        press(&mut app, KeyCode::KeyX, "x");
        let ui_state = app.world().resource::<UiState>();
        let taken = Some((KeyPlace::X, KeyTaken(KeyAction::Stop)));
        assert_eq!((ui_state.key_taken, ui_state.rebinding), (taken, None));
        ask(&mut app);
        press(&mut app, KeyCode::KeyQ, "q");
        let learner = app.world().resource::<LearnerRes>();
        let keys = &learner.preferences().keys;
        assert_eq!(keys.get(&KeyAction::Plug), Some(&Some(KeyPlace::Q)));
        assert_eq!(is_plugged(&app), plugged, "the settings have the keys");
        app.world_mut().resource_mut::<UiState>().keys = false;
        press(&mut app, KeyCode::KeyP, "p");
        assert_eq!(is_plugged(&app), plugged, "its old key does nothing now");
        press(&mut app, KeyCode::KeyQ, "q");
        assert_ne!(is_plugged(&app), plugged);
    }

    #[test]
    fn letters_that_are_off_leave_the_machine_alone() {
        for (character_keys, works) in [(CharacterKeys::On, true), (CharacterKeys::Off, false)] {
            let mut app = bench();
            let plugged = is_plugged(&app);
            prefer(
                &mut app,
                Preferences {
                    character_keys,
                    ..Preferences::default()
                },
            );
            press(&mut app, KeyCode::KeyP, "p");
            assert_eq!(is_plugged(&app) != plugged, works, "{character_keys:?}");
        }
    }

    /// WCAG 2.2, 2.5.7: no dragging. Arrow keys type nothing, so that switching letters off leaves them.
    #[test]
    fn arrows_turn_the_knob_whatever_letters_do() {
        for character_keys in CharacterKeys::ALL {
            let mut app = bench();
            prefer(
                &mut app,
                Preferences {
                    character_keys,
                    ..Preferences::default()
                },
            );
            app.world_mut().resource_mut::<UiState>().speed = 1;
            let position = |app: &App| {
                let bench = app.world().resource::<BenchRes>();
                bench.view().machine.dial_position
            };
            let before = position(&app);
            press(&mut app, KeyCode::ArrowRight, "");
            (0..5).for_each(|_| app.update());
            assert_ne!(position(&app), before, "{character_keys:?}");
        }
    }

    #[test]
    fn the_view_is_there_at_once_where_nothing_is_to_move() {
        for (motion, jumps) in [(Motion::Full, false), (Motion::Reduced, true)] {
            let mut app = moving(motion);
            let target = |app: &mut App| {
                let mut eyes = app.world_mut().query::<&MainCamera>();
                eyes.single(app.world()).expect("one eye").target
            };
            app.world_mut().resource_mut::<UiState>().view = ViewKind::Cabinet;
            app.update();
            let first = target(&mut app);
            (0..80).for_each(|_| app.update());
            let last = target(&mut app);
            assert_eq!(first.distance(last) < 1e-3, jumps, "{motion:?}");
        }
    }

    #[test]
    fn what_moves_is_there_at_once_where_nothing_is_to_move() {
        for (motion, jumps) in [(Motion::Full, false), (Motion::Reduced, true)] {
            let mut app = moving(motion);
            app.world_mut()
                .resource_mut::<BenchRes>()
                .queue_some(Some(Action::OpenLid));
            (0..2).for_each(|_| app.update());
            let lid = |app: &App| app.world().resource::<SceneMotion>().lid;
            let first = lid(&app);
            (0..80).for_each(|_| app.update());
            assert!(lid(&app) > 0.99, "the lid is open");
            assert_eq!(first == 1.0, jumps, "{motion:?}");
        }
    }

    #[test]
    fn text_is_as_large_as_it_is_preferred() {
        let mut app = bench();
        for text_size in [TextSize::Percent200, TextSize::Percent125] {
            prefer(
                &mut app,
                Preferences {
                    text_size,
                    ..Preferences::default()
                },
            );
            let mut contexts = app
                .world_mut()
                .query_filtered::<&mut EguiContext, With<PrimaryEguiContext>>();
            let mut context = contexts.single_mut(app.world_mut()).expect("one context");
            let zoom = context.get_mut().zoom_factor();
            assert_eq!(zoom, f32::from(text_size.percent()) / 100.0);
        }
    }

    /// A learner's are kept with the answers; a guest's are there as long as the program.
    #[test]
    fn preferences_come_and_go_with_the_learner() {
        let folder = tempfile::tempdir().expect("a folder");
        let store = || Box::new(ProfileFolder::new(folder.path().to_owned()));
        let left_handed = Preferences {
            left_handed: true,
            ..Preferences::default()
        };
        let mut learner = LearnerRes::kept_in(store(), None);
        learner.prefer(Preferences {
            text_size: TextSize::Percent150,
            ..Preferences::default()
        });
        learner.ui_state.name = "Ana".to_owned();
        learner.create(Language::Es);
        assert_eq!(*learner.preferences(), Preferences::default());
        learner.prefer(left_handed.clone());
        learner.choose(None);
        assert_eq!(learner.preferences().text_size, TextSize::Percent150);
        let mut again = LearnerRes::kept_in(store(), None);
        again.choose(Some("ana-learner"));
        assert_eq!(*again.preferences(), left_handed);
        assert!(again.storage_error.is_none());
        let mut app = bench();
        app.insert_resource(again);
        (0..2).for_each(|_| app.update());
        assert!(app.world().resource::<UiState>().preferences.left_handed);
    }

    /// A phone's window keeps 320 points across; a wide one is drawn as large as is preferred.
    #[test]
    fn text_is_never_larger_than_there_is_room_for() {
        let largest = TextSize::ALL.into_iter().max_by_key(|size| size.percent());
        let largest = largest.expect("there are sizes");
        assert_eq!(largest.percent(), 200);
        assert_eq!(zoom_that_fits(largest, 1366.0), 2.0);
        assert_eq!(zoom_that_fits(largest, 640.0), 2.0);
        assert_eq!(zoom_that_fits(largest, 480.0), 1.5);
        assert_eq!(zoom_that_fits(largest, 300.0), 1.0);
    }
}
