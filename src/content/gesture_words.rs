//! An entry gesture in words: its steps, and what is asked beside them.

use super::text::{Texts, Value};
use detent_simulation::controller::{Gesture, GestureStep, LidMove};
use detent_simulation::interface::{Button, Direction};

fn seconds(ms: u32) -> Value<'static> {
    Value::from(f64::from(ms) / 1000.0)
}

impl Texts {
    /// A step of the gesture.
    pub fn gesture_step(&self, step: &GestureStep) -> String {
        let name = |button: Button| Value::from(self.get(&format!("button-{button}")));
        let press = |key: &str, button| self.with(key, &[("button", name(button))]);
        let between = |key: &str, button, from_ms, to_ms| {
            let args = [
                ("button", name(button)),
                ("from", seconds(from_ms)),
                ("to", seconds(to_ms)),
            ];
            self.with(key, &args)
        };
        let words = match *step {
            GestureStep::Turn { to, detents, .. } => {
                let key = match to {
                    Direction::Left => "step-turn-left",
                    Direction::Right => "step-turn-right",
                };
                self.with(key, &[("detents", Value::from(detents))])
            }
            GestureStep::Press {
                button, times: 1, ..
            } => press("step-press", button),
            GestureStep::Press { button, times, .. } => self.with(
                "step-press-times",
                &[("button", name(button)), ("times", Value::from(times))],
            ),
            GestureStep::Hold {
                button,
                min_ms,
                max_ms,
                ..
            } => between("step-hold", button, min_ms, max_ms),
            GestureStep::Push { button, .. } => press("step-push", button),
            GestureStep::Release {
                button,
                min_ms,
                window_ms: Some(window_ms),
            } if min_ms > 0 => return between("step-release-between", button, min_ms, window_ms),
            GestureStep::Release { button, .. } => press("step-release", button),
            GestureStep::Lid {
                to: LidMove::Up, ..
            } => self.get("step-lid-up"),
            GestureStep::Lid {
                to: LidMove::Down, ..
            } => self.get("step-lid-down"),
            GestureStep::PowerUp { holding: None, .. } => self.get("step-power-up"),
            GestureStep::PowerUp {
                holding: Some(button),
                ..
            } => press("step-power-up-holding", button),
            GestureStep::Pause { min_ms } => {
                self.with("step-pause", &[("seconds", seconds(min_ms))])
            }
            GestureStep::Together {
                buttons: (one, other),
                min_ms,
                max_ms,
                ..
            } => {
                let args = [
                    ("one", name(one)),
                    ("other", name(other)),
                    ("from", seconds(min_ms)),
                    ("to", seconds(max_ms)),
                ];
                self.with("step-together", &args)
            }
        };
        match step.window_ms() {
            Some(window_ms) => {
                let args = [
                    ("step", Value::from(words)),
                    ("seconds", seconds(window_ms)),
                ];
                self.with("step-within", &args)
            }
            None => words,
        }
    }

    /// What a gesture asks beside its steps and its whole window: the switch before power comes, how near each other
    /// two buttons have to be, the shortest gap, another order.
    pub fn gesture_notes(&self, gesture: &Gesture) -> Vec<String> {
        let mut notes = Vec::new();
        if let Some(standing) = gesture.standing() {
            let at = Value::from(standing.at);
            let args = [("position", at), ("seconds", seconds(standing.min_ms))];
            notes.push(self.with("sheet-entry-standing", &args));
        }
        for step in &gesture.steps {
            if let GestureStep::Together {
                buttons: (one, other),
                apart_ms,
                ..
            } = *step
            {
                let name = |button| Value::from(self.get(&format!("button-{button}")));
                let args = [
                    ("one", name(one)),
                    ("other", name(other)),
                    ("seconds", seconds(apart_ms)),
                ];
                notes.push(self.with("sheet-entry-together", &args));
            }
        }
        if gesture.gap_ms > 0 {
            notes.push(self.with("sheet-entry-gap", &[("seconds", seconds(gesture.gap_ms))]));
        }
        if !gesture.or_steps.is_empty() {
            let steps: Vec<String> = (gesture.or_steps.iter())
                .map(|step| self.gesture_step(step))
                .collect();
            let steps = Value::from(steps.join(" → "));
            notes.push(self.with("sheet-entry-or", &[("steps", steps)]));
        }
        notes
    }
}
