//! Steps of a script: single actions, and the small sequences that hands make of them.

use super::action::{Action, Turn};
use super::view::Refusal;
use super::workplace::Bench;
use crate::controller::{Gesture, GestureStep, LidMove};
use crate::plant::Button;
use crate::plant::dial::DETENTS;
use crate::units::{Span, TICKS_PER_S};
use serde::{Deserialize, Serialize};

/// A tap on a button, from down to up.
const TAP: Span = Span::from_ms(150);
/// A hand moves on this long after a tap or a hold.
const NEXT: Span = Span::from_ms(150);

/// One line of a script that is more than a single [`Action`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Step {
    /// Turn the dial by several detents at an even pace.
    Turn {
        /// Which way.
        way: Turn,
        /// How many detents.
        detents: u8,
        /// Time from one to the next, ms.
        every_ms: u64,
    },
    /// Turn the dial the short way until its pointer stands at a position.
    Point {
        /// Detents clockwise from the index.
        to: u8,
        /// Time from one detent to the next, ms.
        every_ms: u64,
    },
    /// Push a button and let it go.
    Tap(Button),
    /// Push a button, hold it, let it go.
    Hold {
        /// Which.
        button: Button,
        /// How long, ms.
        ms: u64,
    },
    /// Look at the lamps and write down which are lit. Nothing else happens.
    Look,
    /// Do nothing.
    Wait {
        /// How long, s.
        s: u64,
    },
    /// Watch until something is so.
    Until {
        /// What.
        what: Condition,
        /// Give up after this long, s.
        limit_s: u64,
    },
    /// A single action.
    #[serde(skip)]
    Do(Action),
}

impl Step {
    /// Names of the steps that are more than one action.
    pub const NAMES: [&'static str; 7] = ["Turn", "Point", "Tap", "Hold", "Look", "Wait", "Until"];
}

/// What a person can wait for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Condition {
    /// The control waits for a program to be chosen.
    Idle,
    /// The control has stopped with a fault; the lock lamp blinks.
    FaultHold,
    /// Service mode, no routine running.
    ServiceReady,
    /// All lamps dark and the control without power.
    Dark,
    /// The lid can be opened.
    Unlocked,
    /// The tub is empty.
    Empty,
    /// There is a hand's depth of water in the tub.
    Filled,
    /// The basket turns.
    Spinning,
}

/// A step that could not be done.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum StepError {
    /// The bench refused.
    #[error(transparent)]
    Refused(#[from] Refusal),
    /// The dial has no such position.
    #[error("the dial has no position {0}: use 0 to 23")]
    NoPosition(u8),
    /// The wait ran out.
    #[error(
        "waited {limit_s} s and it was never {what:?}: raise limit_s, or look at what the machine did instead"
    )]
    NeverCame {
        /// What was waited for.
        what: Condition,
        /// How long, s.
        limit_s: u64,
    },
}

impl Condition {
    /// Whether it is so now.
    pub fn holds(self, bench: &Bench) -> bool {
        let machine = bench.machine();
        let plant = machine.plant();
        let glance = machine.control().glance();
        match self {
            Condition::Idle => glance.mode == "idle",
            Condition::FaultHold => glance.mode == "hold",
            Condition::ServiceReady => glance.mode == "service" && glance.routine.is_none(),
            Condition::Dark => matches!(glance.mode, "off" | "starved"),
            Condition::Unlocked => !plant.bolted(),
            Condition::Empty => plant.water().level_mm() < 5.0,
            Condition::Filled => plant.water().level_mm() > 80.0,
            Condition::Spinning => plant.basket_coupled() && plant.drive().pulley_rpm() > 100.0,
        }
    }
}

impl Step {
    /// Does it. Time passes on the bench.
    ///
    /// # Errors
    /// The bench refuses an action, or a wait runs out.
    pub fn run(&self, bench: &mut Bench) -> Result<(), StepError> {
        match self {
            Step::Do(action) => bench.act(action)?,
            Step::Turn {
                way,
                detents,
                every_ms,
            } => {
                for _ in 0..*detents {
                    bench.act(&Action::Detent(*way))?;
                    bench.wait(Span::from_ms(*every_ms));
                }
            }
            Step::Look => {}
            Step::Point { to, .. } if *to >= DETENTS => return Err(StepError::NoPosition(*to)),
            Step::Point { to, every_ms } => {
                let from = bench.machine().plant().dial_position();
                let right = (to + DETENTS - from) % DETENTS;
                let (way, detents) = if right <= DETENTS / 2 {
                    (Turn::Right, right)
                } else {
                    (Turn::Left, DETENTS - right)
                };
                Step::Turn {
                    way,
                    detents,
                    every_ms: *every_ms,
                }
                .run(bench)?;
            }
            Step::Tap(button) => hold(bench, *button, TAP)?,
            Step::Hold { button, ms } => hold(bench, *button, Span::from_ms(*ms))?,
            Step::Wait { s } => bench.wait(Span::from_s(*s)),
            Step::Until { what, limit_s } => {
                for _ in 0..limit_s * TICKS_PER_S {
                    if what.holds(bench) {
                        return Ok(());
                    }
                    bench.step();
                }
                return Err(StepError::NeverCame {
                    what: *what,
                    limit_s: *limit_s,
                });
            }
        }
        Ok(())
    }
}

fn hold(bench: &mut Bench, button: Button, span: Span) -> Result<(), StepError> {
    bench.act(&Action::Down(button))?;
    bench.wait(span);
    bench.act(&Action::Up(button))?;
    bench.wait(NEXT);
    Ok(())
}

/// The steps of a board's entry gesture at an easy pace.
pub fn entry_steps(gesture: &Gesture) -> Vec<Step> {
    let steps = gesture.steps.iter().map(|step| match step {
        GestureStep::Turn { to, detents, .. } => Step::Turn {
            way: *to,
            detents: *detents,
            every_ms: 180,
        },
        GestureStep::Press { button, .. } => Step::Tap(*button),
        GestureStep::Hold { button, min_ms, .. } => Step::Hold {
            button: *button,
            ms: u64::from(*min_ms) + 200,
        },
        GestureStep::Lid { to, .. } => Step::Do(if *to == LidMove::Up {
            Action::OpenLid
        } else {
            Action::CloseLid
        }),
    });
    // The hand rests before it begins.
    std::iter::once(Step::Wait { s: 2 }).chain(steps).collect()
}
