//! Words for what can be wrong with a board although its file reads well.

use super::files::number;
use crate::text::{Texts, Value};
use detent_simulation::controller::BoardFault;

impl Texts {
    /// What is wrong with a field of a board.
    pub fn board_fault(&self, fault: &BoardFault) -> String {
        let name = |key: &str, name: &str| self.with(key, &[("name", name.into())]);
        match fault {
            BoardFault::SameCode { code, first } => self.with(
                "file-board-same-code",
                &[
                    ("code", number(format!("{code:02}"))),
                    ("first", number(first)),
                ],
            ),
            BoardFault::CodeOutOfRange { code } => {
                self.with("file-board-code-range", &[("code", number(code))])
            }
            BoardFault::MonitorTwice(monitor) => name("file-board-monitor-twice", monitor.name()),
            BoardFault::NoCode(monitor) => name("file-board-no-code", monitor.name()),
            BoardFault::NoRule(monitor) => name("file-board-no-rule", monitor.name()),
            BoardFault::NoSheet(monitor) => name("file-board-no-sheet", monitor.name()),
            BoardFault::GestureTooShort {
                least_ms,
                window_ms,
            } => self.with(
                "file-board-gesture-too-short",
                &[("least", number(least_ms)), ("window", number(window_ms))],
            ),
            BoardFault::HoldImpossible { min_ms, max_ms } => self.with(
                "file-board-hold-impossible",
                &[("least", number(min_ms)), ("most", number(max_ms))],
            ),
            BoardFault::Empty => self.get("file-board-empty"),
            BoardFault::NoWayOut => self.get("file-board-no-way-out"),
            BoardFault::NoRoutine(routine) => name("file-board-no-routine", routine.name()),
            BoardFault::DigitCount { digits } => {
                self.with("file-board-digit-count", &[("digits", number(digits))])
            }
            BoardFault::DarkDigit { digit } => {
                self.with("file-board-dark-digit", &[("digit", number(digit))])
            }
            BoardFault::SameDigit { digit, first } => self.with(
                "file-board-same-digit",
                &[("digit", number(digit)), ("first", number(first))],
            ),
            BoardFault::LampTwice { lamps } => {
                name("file-board-lamp-twice", &format!("{lamps:#b}"))
            }
            BoardFault::NumberTakesTime => self.get("file-board-number-takes-time"),
            BoardFault::NoSuchLetter { character, nearest } => self.with(
                "file-board-no-letter",
                &[
                    ("character", Value::from(character.to_string())),
                    ("nearest", Value::from(nearest.to_string())),
                ],
            ),
            BoardFault::LettersWithoutSegments(kind) => {
                name("file-board-letters-without-segments", kind)
            }
            BoardFault::LettersAreNumber(left, right) => {
                name("file-board-letters-are-number", &format!("{left}{right}"))
            }
            BoardFault::PlacedByKind(kind) => name("file-board-placed-by-kind", kind),
            BoardFault::PlaceCount { places, lamps } => self.with(
                "file-board-place-count",
                &[("places", number(places)), ("lamps", number(lamps))],
            ),
            BoardFault::PlacesTooNear { first } => {
                self.with("file-board-places-near", &[("first", number(first))])
            }
            BoardFault::OtherSteps => self.get("file-board-other-steps"),
            BoardFault::StandingUnseen => self.get("file-board-standing-unseen"),
            BoardFault::OneButton(button) => name("file-board-one-button", button.name()),
            BoardFault::PauseAlone => self.get("file-board-pause-alone"),
            BoardFault::TurnsJoin => self.get("file-board-turns-join"),
            BoardFault::NoPosition {
                position,
                positions,
            } => self.with(
                "file-board-no-position",
                &[
                    ("position", number(position)),
                    ("last", number(positions.saturating_sub(1))),
                ],
            ),
            BoardFault::SamePosition { position, first } => self.with(
                "file-board-same-position",
                &[("position", number(position)), ("first", number(first))],
            ),
            BoardFault::Flashing { hz } => {
                self.with("file-board-flashing", &[("hz", number(format!("{hz:.2}")))])
            }
            BoardFault::NoButton(button) => name("file-board-no-button", button.name()),
            BoardFault::NoKnob => self.get("file-board-no-knob"),
            BoardFault::ButtonState(button, true) => name("file-board-not-pushed", button.name()),
            BoardFault::ButtonState(button, false) => name("file-board-not-free", button.name()),
            BoardFault::PowerLater => self.get("file-board-power-later"),
            BoardFault::NoSuchDigit { digit } => {
                self.with("file-board-no-digit", &[("digit", number(digit))])
            }
            BoardFault::LampCount { lamps } => {
                self.with("file-board-lamp-count", &[("lamps", number(lamps))])
            }
            BoardFault::NoPicture { number: shown } => {
                self.with("file-board-no-picture", &[("number", number(shown))])
            }
            BoardFault::TerminalTwice { terminal, first } => self.with(
                "file-board-terminal-twice",
                &[
                    ("terminal", terminal.name().into()),
                    ("first", first.as_str().into()),
                ],
            ),
            BoardFault::TerminalUnwired(terminal) => {
                name("file-board-terminal-unwired", terminal.name())
            }
            BoardFault::LabelTwice(label) => name("file-board-label-twice", label),
            BoardFault::Bounds {
                value,
                above,
                below,
            } => {
                let value = ("value", number(value));
                if below.is_infinite() {
                    let args = [value, ("above", number(above))];
                    return self.with("file-board-bounds-below", &args);
                }
                self.with(
                    "file-board-bounds",
                    &[value, ("above", number(above)), ("below", number(below))],
                )
            }
            BoardFault::SupplyUnmatched(mains) => {
                name("file-board-supply-unmatched", &format!("{mains:?}"))
            }
            BoardFault::StageCount(stage) => name("file-board-stage-count", stage.name()),
            BoardFault::TextKey(key) => name("file-board-text-key", key),
        }
    }
}
