//! What the service sheet says in sentences: the steps of the entry gesture, and what the lamps mean.

use super::text::{Texts, Value};
use detent_simulation::controller::{Gesture, GestureStep, LampRules, SignReading, Signs, letters};
use detent_simulation::interface::Button;

/// A mode of the control, by the end of its texts' keys, and what the lamps show in it.
pub type LampMode = (&'static str, SignReading);

/// The modes in the order of the sheet.
pub fn lamp_modes(rules: &LampRules) -> [LampMode; 6] {
    [
        ("idle", rules.idle),
        ("program", rules.program),
        ("hold", rules.hold),
        ("service", rules.service),
        ("test", rules.test),
        ("recalibration", rules.recalibration),
    ]
}

/// The pictures that the lamps show one after the other in such a mode, besides numbers.
pub fn mode_pictures(signs: &Signs, shows: SignReading) -> Vec<u16> {
    match shows {
        SignReading::Dark | SignReading::Number | SignReading::Bar => Vec::new(),
        SignReading::All => vec![signs.all()],
        SignReading::Blink => vec![signs.all(), 0],
        SignReading::NumberAnd(one) | SignReading::Still(one) => vec![one],
        SignReading::Turns(one, other) => vec![one, other],
        SignReading::Letters(left, right) => vec![letters(left, right)],
    }
}

impl Texts {
    /// A button's name.
    pub fn button(&self, button: Button) -> String {
        self.get(&format!("button-{button}"))
    }

    /// How the gesture begins: what has to be so before its first step.
    pub fn before_gesture(&self, gesture: &Gesture) -> Vec<String> {
        let from_power = matches!(gesture.steps.first(), Some(GestureStep::PowerUp { .. }));
        let mut before = vec![self.get(if from_power {
            "sheet-entry-before-power"
        } else {
            "sheet-entry-before"
        })];
        before.extend(
            gesture.from.map(|position| {
                self.with("sheet-entry-from", &[("position", Value::from(position))])
            }),
        );
        before
    }

    /// What the lamps show in a mode.
    pub fn lamp_mode(&self, signs: &Signs, (mode, shows): LampMode) -> String {
        let number = self.get(&format!("number-{mode}"));
        let with = |key: &str| self.with(key, &[("number", Value::from(number.as_str()))]);
        let count = |key: &str| self.with(key, &[("lamps", Value::from(signs.lamps()))]);
        match shows {
            SignReading::Dark => count("sight-dark"),
            SignReading::All => count("sight-all"),
            SignReading::Blink => count("sight-blink"),
            SignReading::Number => with("sight-number"),
            SignReading::NumberAnd(_) => with("sight-number-and"),
            SignReading::Bar => with("sight-bar"),
            SignReading::Still(_) => self.get("sight-still"),
            SignReading::Turns(..) => self.get("sight-turns"),
            SignReading::Letters(left, right) => {
                let letters = Value::from(format!("{left}{right}").trim().to_owned());
                self.with("sight-letters", &[("letters", letters)])
            }
        }
    }
}
