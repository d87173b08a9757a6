//! Which key does what at the bench: the one table that the keys themselves, the list of keys and every label with a
//! key in it read.

use super::key_strokes::{KeyStroke, KeyStrokes};
use super::practice::LearnerRes;
use super::state::UiState;
use bevy::prelude::*;
use bevy_egui::egui;
use detent_content::{CharacterKeys, KeyAction, KeyPlace, Preferences};
use std::borrow::Cow;

/// Each place with its key as the window system tells it, as egui does, and with what is printed on it.
const PLACES: [(KeyPlace, KeyCode, egui::Key, &str); 52] = [
    (KeyPlace::A, KeyCode::KeyA, egui::Key::A, "A"),
    (KeyPlace::B, KeyCode::KeyB, egui::Key::B, "B"),
    (KeyPlace::C, KeyCode::KeyC, egui::Key::C, "C"),
    (KeyPlace::D, KeyCode::KeyD, egui::Key::D, "D"),
    (KeyPlace::E, KeyCode::KeyE, egui::Key::E, "E"),
    (KeyPlace::F, KeyCode::KeyF, egui::Key::F, "F"),
    (KeyPlace::G, KeyCode::KeyG, egui::Key::G, "G"),
    (KeyPlace::H, KeyCode::KeyH, egui::Key::H, "H"),
    (KeyPlace::I, KeyCode::KeyI, egui::Key::I, "I"),
    (KeyPlace::J, KeyCode::KeyJ, egui::Key::J, "J"),
    (KeyPlace::K, KeyCode::KeyK, egui::Key::K, "K"),
    (KeyPlace::L, KeyCode::KeyL, egui::Key::L, "L"),
    (KeyPlace::M, KeyCode::KeyM, egui::Key::M, "M"),
    (KeyPlace::N, KeyCode::KeyN, egui::Key::N, "N"),
    (KeyPlace::O, KeyCode::KeyO, egui::Key::O, "O"),
    (KeyPlace::P, KeyCode::KeyP, egui::Key::P, "P"),
    (KeyPlace::Q, KeyCode::KeyQ, egui::Key::Q, "Q"),
    (KeyPlace::R, KeyCode::KeyR, egui::Key::R, "R"),
    (KeyPlace::S, KeyCode::KeyS, egui::Key::S, "S"),
    (KeyPlace::T, KeyCode::KeyT, egui::Key::T, "T"),
    (KeyPlace::U, KeyCode::KeyU, egui::Key::U, "U"),
    (KeyPlace::V, KeyCode::KeyV, egui::Key::V, "V"),
    (KeyPlace::W, KeyCode::KeyW, egui::Key::W, "W"),
    (KeyPlace::X, KeyCode::KeyX, egui::Key::X, "X"),
    (KeyPlace::Y, KeyCode::KeyY, egui::Key::Y, "Y"),
    (KeyPlace::Z, KeyCode::KeyZ, egui::Key::Z, "Z"),
    (KeyPlace::Digit0, KeyCode::Digit0, egui::Key::Num0, "0"),
    (KeyPlace::Digit1, KeyCode::Digit1, egui::Key::Num1, "1"),
    (KeyPlace::Digit2, KeyCode::Digit2, egui::Key::Num2, "2"),
    (KeyPlace::Digit3, KeyCode::Digit3, egui::Key::Num3, "3"),
    (KeyPlace::Digit4, KeyCode::Digit4, egui::Key::Num4, "4"),
    (KeyPlace::Digit5, KeyCode::Digit5, egui::Key::Num5, "5"),
    (KeyPlace::Digit6, KeyCode::Digit6, egui::Key::Num6, "6"),
    (KeyPlace::Digit7, KeyCode::Digit7, egui::Key::Num7, "7"),
    (KeyPlace::Digit8, KeyCode::Digit8, egui::Key::Num8, "8"),
    (KeyPlace::Digit9, KeyCode::Digit9, egui::Key::Num9, "9"),
    (KeyPlace::Minus, KeyCode::Minus, egui::Key::Minus, "−"),
    (KeyPlace::Equals, KeyCode::Equal, egui::Key::Equals, "+"),
    (
        KeyPlace::OpenBracket,
        KeyCode::BracketLeft,
        egui::Key::OpenBracket,
        "[",
    ),
    (
        KeyPlace::CloseBracket,
        KeyCode::BracketRight,
        egui::Key::CloseBracket,
        "]",
    ),
    (
        KeyPlace::Backslash,
        KeyCode::Backslash,
        egui::Key::Backslash,
        "\\",
    ),
    (
        KeyPlace::Semicolon,
        KeyCode::Semicolon,
        egui::Key::Semicolon,
        ";",
    ),
    (KeyPlace::Quote, KeyCode::Quote, egui::Key::Quote, "'"),
    (
        KeyPlace::Backtick,
        KeyCode::Backquote,
        egui::Key::Backtick,
        "`",
    ),
    (KeyPlace::Comma, KeyCode::Comma, egui::Key::Comma, ","),
    (KeyPlace::Period, KeyCode::Period, egui::Key::Period, "."),
    (KeyPlace::Slash, KeyCode::Slash, egui::Key::Slash, "/"),
    (KeyPlace::F2, KeyCode::F2, egui::Key::F2, "F2"),
    (KeyPlace::F4, KeyCode::F4, egui::Key::F4, "F4"),
    (KeyPlace::F8, KeyCode::F8, egui::Key::F8, "F8"),
    (KeyPlace::F9, KeyCode::F9, egui::Key::F9, "F9"),
    (KeyPlace::F10, KeyCode::F10, egui::Key::F10, "F10"),
];

/// What is printed on a key.
pub fn print_on(place: KeyPlace) -> &'static str {
    let row = PLACES.iter().find(|row| row.0 == place);
    row.map_or("", |row| row.3)
}

/// The key that egui tells of, as the page names it.
#[cfg(any(test, target_family = "wasm"))]
pub fn code_in_panels(key: egui::Key) -> Option<KeyCode> {
    PLACES.iter().find(|row| row.2 == key).map(|row| row.1)
}

/// The place of a key; the two of the number pad that change the clock's speed stand for those above the letters.
fn place_of(key: KeyCode) -> Option<KeyPlace> {
    let key = match key {
        KeyCode::NumpadAdd => KeyCode::Equal,
        KeyCode::NumpadSubtract => KeyCode::Minus,
        key => key,
    };
    PLACES.iter().find(|row| row.1 == key).map(|row| row.0)
}

/// The place of a key that egui tells of.
fn place_in_panels(key: egui::Key) -> Option<KeyPlace> {
    PLACES.iter().find(|row| row.2 == key).map(|row| row.0)
}

/// It types a character.
fn types(place: KeyPlace) -> bool {
    !matches!(
        place,
        KeyPlace::F2 | KeyPlace::F4 | KeyPlace::F8 | KeyPlace::F9 | KeyPlace::F10
    )
}

/// The key that an action has unless another is chosen.
pub const fn usual_key(action: KeyAction) -> KeyPlace {
    match action {
        KeyAction::TurnLeft => KeyPlace::OpenBracket,
        KeyAction::TurnRight => KeyPlace::CloseBracket,
        KeyAction::Start => KeyPlace::S,
        KeyAction::Stop => KeyPlace::X,
        KeyAction::More => KeyPlace::I,
        KeyAction::Less => KeyPlace::K,
        KeyAction::Lid => KeyPlace::L,
        KeyAction::Plug => KeyPlace::P,
        KeyAction::Cabinet => KeyPlace::C,
        KeyAction::Discharge => KeyPlace::D,
        KeyAction::ViewConsole => KeyPlace::Digit1,
        KeyAction::ViewMachine => KeyPlace::Digit2,
        KeyAction::ViewInside => KeyPlace::Digit3,
        KeyAction::HidePanels => KeyPlace::H,
        KeyAction::TabSheet => KeyPlace::V,
        KeyAction::TabMeter => KeyPlace::M,
        KeyAction::TabParts => KeyPlace::B,
        KeyAction::TabReport => KeyPlace::R,
        KeyAction::TabScore => KeyPlace::G,
        KeyAction::WaitMinute => KeyPlace::T,
        KeyAction::WaitTenMinutes => KeyPlace::Y,
        KeyAction::WaitUntilStop => KeyPlace::U,
        KeyAction::Slower => KeyPlace::Minus,
        KeyAction::Faster => KeyPlace::Equals,
    }
}

/// What an action is called in the list of keys, as a text key.
pub const fn action_text(action: KeyAction) -> &'static str {
    match action {
        KeyAction::TurnLeft => "key-turn-left",
        KeyAction::TurnRight => "key-turn-right",
        KeyAction::Start => "key-start",
        KeyAction::Stop => "key-stop",
        KeyAction::More => "key-more",
        KeyAction::Less => "key-less",
        KeyAction::Lid => "key-lid",
        KeyAction::Plug => "key-plug",
        KeyAction::Cabinet => "key-cabinet",
        KeyAction::Discharge => "key-discharge",
        KeyAction::ViewConsole => "key-view-console",
        KeyAction::ViewMachine => "key-view-machine",
        KeyAction::ViewInside => "key-view-inside",
        KeyAction::HidePanels => "key-hide",
        KeyAction::TabSheet => "key-tab-sheet",
        KeyAction::TabMeter => "key-tab-meter",
        KeyAction::TabParts => "key-tab-parts",
        KeyAction::TabReport => "key-tab-report",
        KeyAction::TabScore => "key-tab-score",
        KeyAction::WaitMinute => "key-wait",
        KeyAction::WaitTenMinutes => "key-wait-long",
        KeyAction::WaitUntilStop => "key-wait-until",
        KeyAction::Slower => "key-slower",
        KeyAction::Faster => "key-faster",
    }
}

/// The labels that end in the usual key of an action in brackets, as text keys.
const LABELS: [(&str, KeyAction); 13] = [
    ("do-close-cabinet", KeyAction::Cabinet),
    ("do-close-lid", KeyAction::Lid),
    ("do-discharge", KeyAction::Discharge),
    ("do-open-cabinet", KeyAction::Cabinet),
    ("do-open-lid", KeyAction::Lid),
    ("do-plug", KeyAction::Plug),
    ("do-unplug", KeyAction::Plug),
    ("name-less", KeyAction::Less),
    ("name-lid", KeyAction::Lid),
    ("name-more", KeyAction::More),
    ("name-plug", KeyAction::Plug),
    ("name-start", KeyAction::Start),
    ("name-stop", KeyAction::Stop),
];

/// A key that is asked for has something else to do already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct KeyTaken(pub KeyAction);

/// Which key does what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyBindings {
    keys: [Option<KeyPlace>; KeyAction::ALL.len()],
    characters: CharacterKeys,
}

impl Default for KeyBindings {
    fn default() -> Self {
        KeyBindings::of(&Preferences::default())
    }
}

impl KeyBindings {
    /// As somebody has chosen. Of two actions that a file gives the same key the first in the list has it.
    pub fn of(preferences: &Preferences) -> KeyBindings {
        let mut keys = [None; KeyAction::ALL.len()];
        for (n, action) in KeyAction::ALL.into_iter().enumerate() {
            let chosen = preferences.keys.get(&action).copied();
            let key = chosen.unwrap_or(Some(usual_key(action)));
            keys[n] = key.filter(|_| !keys[..n].contains(&key));
        }
        KeyBindings {
            keys,
            characters: preferences.character_keys,
        }
    }

    /// The key of an action, whether or not it does anything by itself now.
    pub fn key(&self, action: KeyAction) -> Option<KeyPlace> {
        let mut rows = KeyAction::ALL.iter().zip(self.keys);
        rows.find_map(|(other, key)| (*other == action).then_some(key))?
    }

    /// What has this key.
    fn at(&self, place: KeyPlace) -> Option<KeyAction> {
        let mut rows = KeyAction::ALL.into_iter().zip(self.keys);
        rows.find_map(|(action, key)| (key == Some(place)).then_some(action))
    }

    /// What is to be pressed for an action, as it is printed; none where no key does it now.
    pub fn hint(&self, action: KeyAction) -> Option<Cow<'static, str>> {
        let place = self.key(action)?;
        match (types(place), self.characters) {
            (false, _) | (true, CharacterKeys::On) => Some(Cow::Borrowed(print_on(place))),
            (true, CharacterKeys::WithAlt) => Some(Cow::Owned(format!("Alt+{}", print_on(place)))),
            (true, CharacterKeys::Off) => None,
        }
    }

    /// Whether keys that type a character do anything now, by themselves or with Alt held.
    fn allows(&self, alt: bool) -> bool {
        match self.characters {
            CharacterKeys::On => true,
            CharacterKeys::WithAlt => alt,
            CharacterKeys::Off => false,
        }
    }

    /// What the key stands for, whatever is held with it: whoever lets a key go lets its button go.
    pub fn stands_for(&self, key: KeyCode) -> Option<KeyAction> {
        self.at(place_of(key)?)
    }

    /// What a stroke does. With AltGr a key stands for what it types, and brackets are where the layout has them.
    pub fn done_by(&self, stroke: &KeyStroke) -> Option<KeyAction> {
        if !stroke.is_press() {
            return None;
        }
        let typed = match &stroke.event.logical_key {
            bevy::input::keyboard::Key::Character(typed) if typed == "[" => {
                Some(KeyPlace::OpenBracket)
            }
            bevy::input::keyboard::Key::Character(typed) if typed == "]" => {
                Some(KeyPlace::CloseBracket)
            }
            _ => None,
        };
        let by_place = place_of(stroke.event.key_code).filter(|_| !stroke.alt_gr);
        let place = typed.or(by_place)?;
        let action = self.at(place)?;
        let free = match (types(place), self.characters) {
            (false, _) | (true, CharacterKeys::On) => !stroke.command,
            (true, CharacterKeys::WithAlt) => stroke.alt,
            (true, CharacterKeys::Off) => false,
        };
        free.then_some(action)
    }

    /// What a key that egui tells of does.
    pub fn done_in_panels(&self, key: egui::Key, modifiers: egui::Modifiers) -> Option<KeyAction> {
        let place = place_in_panels(key)?;
        let free = !types(place) || self.allows(modifiers.alt);
        self.at(place).filter(|_| free)
    }

    /// What the key that egui tells of stands for, whatever is held with it.
    pub fn stands_for_in_panels(&self, key: egui::Key) -> Option<KeyAction> {
        self.at(place_in_panels(key)?)
    }

    /// Whether a digit chooses an option now.
    pub fn allows_digits(&self, modifiers: egui::Modifiers) -> bool {
        self.allows(modifiers.alt)
    }

    /// The text under this key, with the key that does the same now in place of the usual one.
    pub fn label<'a>(&self, text_key: &str, text: Cow<'a, str>) -> Cow<'a, str> {
        let Some((_, action)) = LABELS.iter().find(|(key, _)| *key == text_key) else {
            return text;
        };
        let usual = print_on(usual_key(*action));
        let hint = self.hint(*action);
        if hint.as_deref() == Some(usual) {
            return text;
        }
        let Some(words) = text.strip_suffix(&format!(" ({usual})")) else {
            return text;
        };
        Cow::Owned(match hint {
            Some(hint) => format!("{words} ({hint})"),
            None => words.to_owned(),
        })
    }
}

/// Gives an action a key, or none.
///
/// # Errors
/// The key has something else to do.
pub fn bind(
    preferences: &mut Preferences,
    action: KeyAction,
    key: Option<KeyPlace>,
) -> Result<(), KeyTaken> {
    let taken = key.and_then(|key| KeyBindings::of(preferences).at(key));
    if let Some(other) = taken.filter(|other| *other != action) {
        return Err(KeyTaken(other));
    }
    if key == Some(usual_key(action)) {
        preferences.keys.remove(&action);
    } else {
        preferences.keys.insert(action, key);
    }
    Ok(())
}

/// The action that waits for its new key takes the next one that can be given.
fn take_new_key(
    strokes: Res<KeyStrokes>,
    mut learner: ResMut<LearnerRes>,
    mut ui_state: ResMut<UiState>,
) {
    let Some(action) = ui_state.rebinding else {
        return;
    };
    let pressed = strokes.all().iter().find(|stroke| stroke.is_press());
    let Some(key) = pressed.map(|stroke| stroke.event.key_code) else {
        return;
    };
    let key = match key {
        KeyCode::Escape => {
            ui_state.rebinding = None;
            return;
        }
        KeyCode::Backspace | KeyCode::Delete => None,
        key => match place_of(key) {
            Some(place) => Some(place),
            None => return,
        },
    };
    ui_state.rebinding = None;
    let mut preferences = learner.preferences().clone();
    let bound = bind(&mut preferences, action, key);
    ui_state.key_taken = bound.err().and_then(|taken| Some((key?, taken)));
    if ui_state.key_taken.is_none() {
        learner.prefer(preferences);
    }
}

/// New keys.
pub fn plugin(app: &mut App) {
    app.add_systems(PreUpdate, take_new_key.after(super::key_strokes::read));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::panels::kit;
    use crate::tokens as t;
    use bevy::input::ButtonState;
    use bevy::input::keyboard::{Key, KeyboardInput};
    use detent_content::{Language, Texts};
    use egui_kittest::Harness;
    use std::collections::BTreeSet;

    fn stroke(key_code: KeyCode) -> KeyStroke {
        KeyStroke {
            event: KeyboardInput {
                key_code,
                logical_key: Key::Dead(None),
                state: ButtonState::Pressed,
                text: None,
                repeat: false,
                window: Entity::PLACEHOLDER,
            },
            shift: false,
            alt: false,
            alt_gr: false,
            command: false,
        }
    }

    #[test]
    fn every_action_has_a_key_of_its_own_and_every_key_one_place() {
        let bindings = KeyBindings::default();
        let keys: BTreeSet<_> = KeyAction::ALL.map(|action| bindings.key(action)).into();
        assert_eq!(keys.len(), KeyAction::ALL.len());
        assert!(!keys.contains(&None));
        for (place, code, in_panels, print) in PLACES {
            assert_eq!(place_of(code), Some(place));
            assert_eq!(place_in_panels(in_panels), Some(place));
            assert_eq!(code_in_panels(in_panels), Some(code));
            assert_eq!(print_on(place), print);
        }
    }

    #[test]
    fn a_key_that_is_given_does_what_the_old_one_did() {
        let mut preferences = Preferences::default();
        let start = KeyAction::Start;
        assert_eq!(bind(&mut preferences, start, Some(KeyPlace::Q)), Ok(()));
        let taken = bind(&mut preferences, start, Some(KeyPlace::X));
        assert_eq!(taken, Err(KeyTaken(KeyAction::Stop)));
        let bindings = KeyBindings::of(&preferences);
        assert_eq!(bindings.done_by(&stroke(KeyCode::KeyQ)), Some(start));
        assert_eq!(bindings.done_by(&stroke(KeyCode::KeyS)), None);
        // Its old key is free, also for another.
        let lid = KeyAction::Lid;
        assert_eq!(bind(&mut preferences, lid, Some(KeyPlace::S)), Ok(()));
        assert_eq!(bind(&mut preferences, start, None), Ok(()));
        assert_eq!(KeyBindings::of(&preferences).key(start), None);
        let usual = Some(usual_key(lid));
        assert_eq!(bind(&mut preferences, lid, usual), Ok(()));
        assert_eq!(bind(&mut preferences, start, Some(KeyPlace::S)), Ok(()));
        assert_eq!(preferences, Preferences::default());
    }

    #[test]
    fn letters_do_nothing_where_they_are_off_and_wait_for_alt_where_they_are_with_it() {
        for (characters, bare, with_alt, hint) in [
            (CharacterKeys::On, true, false, Some("P")),
            (CharacterKeys::WithAlt, false, true, Some("Alt+P")),
            (CharacterKeys::Off, false, false, None),
        ] {
            let mut preferences = Preferences {
                character_keys: characters,
                ..Preferences::default()
            };
            assert_eq!(
                bind(&mut preferences, KeyAction::Lid, Some(KeyPlace::F2)),
                Ok(())
            );
            let bindings = KeyBindings::of(&preferences);
            let mut plug = stroke(KeyCode::KeyP);
            assert_eq!(bindings.done_by(&plug).is_some(), bare, "{characters:?}");
            // With Alt it is a command of the window, unless it is ours.
            (plug.alt, plug.command) = (true, true);
            assert_eq!(
                bindings.done_by(&plug).is_some(),
                with_alt,
                "{characters:?}"
            );
            assert_eq!(bindings.hint(KeyAction::Plug).as_deref(), hint);
            // Keys that type nothing are not concerned.
            let lid = bindings.done_by(&stroke(KeyCode::F2));
            assert_eq!(lid, Some(KeyAction::Lid));
        }
    }

    #[test]
    fn labels_name_the_key_that_does_it_now() {
        for language in Language::ALL {
            let texts = Texts::load(language);
            for (text_key, action) in LABELS {
                let text = texts.get(text_key);
                let usual = print_on(usual_key(action));
                let words = text.strip_suffix(&format!(" ({usual})"));
                let words = words.unwrap_or_else(|| panic!("{text_key}: {text}"));
                let mut preferences = Preferences::default();
                let label = |preferences: &Preferences| {
                    let bindings = KeyBindings::of(preferences);
                    bindings.label(text_key, texts.fixed(text_key)).into_owned()
                };
                assert_eq!(label(&preferences), text);
                assert_eq!(bind(&mut preferences, action, Some(KeyPlace::W)), Ok(()));
                assert_eq!(label(&preferences), format!("{words} (W)"));
                preferences.character_keys = CharacterKeys::Off;
                assert_eq!(label(&preferences), words);
            }
        }
    }

    /// Every key's print can be drawn.
    #[test]
    fn what_is_printed_on_keys_is_in_the_fonts() {
        let mut harness = Harness::new_ui(|ui| {
            kit::apply_theme(ui.ctx());
            ui.label("A");
        });
        harness.run_steps(2);
        let font = egui::FontId::proportional(t::BODY);
        for (_, _, _, print) in PLACES {
            for sign in print.chars() {
                let has = harness.ctx.fonts_mut(|fonts| fonts.has_glyph(&font, sign));
                assert!(has, "{print}");
            }
        }
    }
}
