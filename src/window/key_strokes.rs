//! The keys of a frame in their order, each with the modifier keys that were held at that moment: on a slow frame a
//! modifier key may be gone again before the key is looked at.

use bevy::input::ButtonState;
use bevy::input::InputSystems;
use bevy::input::keyboard::{Key, KeyboardFocusLost, KeyboardInput};
use bevy::prelude::*;

/// A modifier key, as the layout has it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Modifier {
    Shift,
    Control,
    Alt,
    AltGr,
    Super,
}

fn modifier_of(key: &Key) -> Option<Modifier> {
    match key {
        Key::Shift => Some(Modifier::Shift),
        Key::Control => Some(Modifier::Control),
        Key::Alt => Some(Modifier::Alt),
        Key::AltGraph => Some(Modifier::AltGr),
        Key::Super | Key::Meta => Some(Modifier::Super),
        _ => None,
    }
}

/// Modifier keys that are held, each by its place on the keyboard: with others held the layout may name it anew
/// when it is let go.
#[derive(Default)]
pub(super) struct HeldModifiers(Vec<(KeyCode, Modifier)>);

impl HeldModifiers {
    fn note(&mut self, event: &KeyboardInput) {
        self.0.retain(|(place, _)| *place != event.key_code);
        let modifier = modifier_of(&event.logical_key);
        if let Some(modifier) = modifier.filter(|_| event.state == ButtonState::Pressed) {
            self.0.push((event.key_code, modifier));
        }
    }

    fn stroke(&self, event: KeyboardInput) -> KeyStroke {
        let held = |wanted| self.0.iter().any(|(_, modifier)| *modifier == wanted);
        let (control, alt) = (held(Modifier::Control), held(Modifier::Alt));
        // Some systems tell of Ctrl and Alt where a layout has AltGr.
        let alt_gr = held(Modifier::AltGr) || (control && alt);
        KeyStroke {
            event,
            shift: held(Modifier::Shift),
            alt: alt && !control && !alt_gr && !held(Modifier::Super),
            alt_gr,
            command: held(Modifier::Super) || ((control || alt) && !alt_gr),
        }
    }
}

/// A key that went down or up.
pub struct KeyStroke {
    /// The key.
    pub event: KeyboardInput,
    /// Shift was held.
    pub shift: bool,
    /// Alt was held, and neither Ctrl nor the key of the window system.
    pub alt: bool,
    /// AltGr was held: the key stands for what it types, not for its letter.
    pub alt_gr: bool,
    /// Ctrl, Alt or the key of the window system was held: the key is a command of the window or the browser, and
    /// nothing is done to the machine.
    pub command: bool,
}

impl KeyStroke {
    /// It went down, and not because it is still held.
    pub fn is_press(&self) -> bool {
        self.event.state == ButtonState::Pressed && !self.event.repeat
    }
}

/// The keys of this frame.
#[derive(Resource, Default)]
pub struct KeyStrokes(Vec<KeyStroke>);

impl KeyStrokes {
    /// In their order.
    pub fn all(&self) -> &[KeyStroke] {
        &self.0
    }
}

/// Reads the keys of this frame.
pub(super) fn read(
    mut events: MessageReader<KeyboardInput>,
    mut lost: MessageReader<KeyboardFocusLost>,
    mut held: Local<HeldModifiers>,
    mut strokes: ResMut<KeyStrokes>,
) {
    strokes.0.clear();
    for event in events.read() {
        held.note(event);
        strokes.0.push(held.stroke(event.clone()));
    }
    // Whatever is let go in another window is not told here.
    if lost.read().count() > 0 {
        held.0.clear();
    }
}

/// The keys of each frame.
pub fn plugin(app: &mut App) {
    app.init_resource::<KeyStrokes>()
        .add_systems(PreUpdate, read.after(InputSystems));
}
