//! Steps of a script: single actions, and the small sequences that hands make of them.

use super::action::Action;
use super::cost::{self, LONGEST_JOB};
use super::view::Refusal;
use super::workplace::Bench;
use detent_simulation::controller::{ControlMode, Gesture, GestureStep, LidMove, Resets, Standing};
use detent_simulation::interface::{Button, Direction};
use detent_simulation::units::{Span, TICKS_PER_S, Time};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A tap on a button, from down to up.
const TAP: Span = Span::from_ms(150);
/// Entries in the longest list that buttons step through.
const MOST_STEPS: u8 = 100;
/// No control remembers longer than this without the plug, s.
const FORGETS_S: u64 = 600;
/// A hand moves on this long after a tap or a hold.
const NEXT: Span = Span::from_ms(150);

/// One line of a script that is more than a single [`Action`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum ScriptStep {
    /// Turn the dial by several detents at an even pace.
    Turn {
        /// Which way.
        way: Direction,
        /// How many detents.
        detents: u8,
        /// Time from one to the next, ms.
        every_ms: u64,
    },
    /// Choose a position: turn the knob the short way, or step through the list.
    Point {
        /// Position.
        to: u8,
        /// Time from one detent or press to the next, ms.
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
    /// Pull the plug, if it is in, and wait until the control has forgotten what it was doing.
    PowerDown,
    /// Look at the lamps and write down which are lit. Nothing else happens.
    Look,
    /// Do nothing but watch the lamps and write down each change.
    Watch {
        /// How long, s.
        s: u64,
    },
    /// Do nothing.
    Wait {
        /// How long, s.
        s: u64,
    },
    /// Do nothing for a moment.
    Rest {
        /// How long, ms.
        ms: u64,
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

impl ScriptStep {
    /// Names of the steps that are more than one action.
    pub const NAMES: [&'static str; 10] = [
        "Turn",
        "Point",
        "Tap",
        "Hold",
        "PowerDown",
        "Look",
        "Watch",
        "Wait",
        "Rest",
        "Until",
    ];
}

/// What a person can wait for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
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
    /// There is no such position to choose now.
    #[error("position {0} cannot be chosen on this panel now: see the service sheet")]
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
    /// The job would outlast the longest that there is.
    #[error(
        "this step would carry the job beyond its longest machine time, {} h: wait for less",
        hours(LONGEST_JOB)
    )]
    TooLong,
    /// A single step that no job has time for.
    #[error(
        "this step may take {} h and no job has more than {} h of machine time: write a shorter time",
        hours(*.0), hours(LONGEST_JOB)
    )]
    StepTooLong(Span),
}

/// Whole hours, rounded up.
fn hours(span: Span) -> u64 {
    span.0.div_ceil(3600 * TICKS_PER_S)
}

impl Condition {
    /// Whether it is so now.
    pub fn holds(self, bench: &Bench) -> bool {
        let machine = bench.machine();
        let plant = machine.plant();
        let control_status = machine.control().control_status();
        match self {
            Condition::Idle => control_status.mode == ControlMode::Idle,
            Condition::FaultHold => control_status.mode == ControlMode::Hold,
            Condition::ServiceReady => {
                control_status.mode == ControlMode::Service && control_status.routine.is_none()
            }
            Condition::Dark => control_status.mode.is_without_supply(),
            Condition::Unlocked => !plant.bolted(),
            Condition::Empty => plant.water().level_mm() < 5.0,
            Condition::Filled => plant.water().level_mm() > 80.0,
            Condition::Spinning => plant.basket_coupled() && plant.drive().pulley_rpm() > 100.0,
        }
    }
}

impl ScriptStep {
    /// The longest that it can take. The way to a position is not known before it is gone: the longest
    /// there is counts.
    fn longest(&self) -> Span {
        let presses = |times: u64, every_ms: u64| Span::from_ms(every_ms).saturating_mul(times);
        match self {
            ScriptStep::Until { limit_s, .. } => Span::from_s(*limit_s),
            ScriptStep::Point { every_ms, .. } => {
                let each = TAP
                    .saturating_add(NEXT)
                    .saturating_mul(u64::from(MOST_STEPS));
                presses(u64::from(MOST_STEPS), *every_ms).saturating_add(each)
            }
            ScriptStep::PowerDown => Span::from_s(FORGETS_S),
            _ => self.shortest(),
        }
    }

    /// The least that it takes.
    fn shortest(&self) -> Span {
        match self {
            ScriptStep::Turn {
                detents, every_ms, ..
            } => Span::from_ms(*every_ms).saturating_mul(u64::from(*detents)),
            ScriptStep::Tap(_) => TAP.saturating_add(NEXT),
            ScriptStep::Hold { ms, .. } => Span::from_ms(*ms).saturating_add(NEXT),
            ScriptStep::Wait { s } | ScriptStep::Watch { s } => Span::from_s(*s),
            ScriptStep::Rest { ms } => Span::from_ms(*ms),
            ScriptStep::Do(action) => cost::span(action),
            ScriptStep::Look
            | ScriptStep::Point { .. }
            | ScriptStep::PowerDown
            | ScriptStep::Until { .. } => Span::ZERO,
        }
    }

    /// Adds the least that this step takes to `so_far`, what the steps before it take at least.
    ///
    /// # Errors
    /// No job has time for it.
    pub fn add_to(&self, so_far: Span) -> Result<Span, StepError> {
        if self.longest() > LONGEST_JOB {
            return Err(StepError::StepTooLong(self.longest()));
        }
        let sum = so_far.saturating_add(self.shortest());
        if sum > LONGEST_JOB {
            return Err(StepError::TooLong);
        }
        Ok(sum)
    }

    /// Does it. Time passes on the bench.
    ///
    /// # Errors
    /// The bench refuses an action, a wait runs out, or there is no time for it: then nothing was done.
    pub fn run(&self, bench: &mut Bench) -> Result<(), StepError> {
        self.add_to(bench.now().since(Time::ZERO))?;
        match self {
            ScriptStep::Do(action) => bench.act(action)?,
            ScriptStep::Turn {
                way,
                detents,
                every_ms,
            } => {
                for _ in 0..*detents {
                    bench.act(&Action::Detent(*way))?;
                    bench.wait(Span::from_ms(*every_ms));
                }
            }
            ScriptStep::Look => {}
            ScriptStep::Point { to, every_ms } => {
                match bench.machine().board().panel.selector.turn() {
                    Some(turn) if *to >= turn => return Err(StepError::NoPosition(*to)),
                    Some(turn) => {
                        let from = bench.machine().plant().dial_position();
                        let right = (to + turn - from) % turn;
                        let (way, detents) = if right <= turn / 2 {
                            (Direction::Right, right)
                        } else {
                            (Direction::Left, turn - right)
                        };
                        ScriptStep::Turn {
                            way,
                            detents,
                            every_ms: *every_ms,
                        }
                        .run(bench)?;
                    }
                    None => {
                        let mut presses = 0;
                        while bench.machine().control().position() != *to {
                            if presses == MOST_STEPS {
                                return Err(StepError::NoPosition(*to));
                            }
                            presses += 1;
                            hold(bench, Button::More, TAP)?;
                            bench.wait(Span::from_ms(*every_ms));
                        }
                    }
                }
            }
            ScriptStep::PowerDown => {
                if bench.machine().plant().plugged() {
                    bench.act(&Action::Unplug)?;
                }
                for _ in 0..FORGETS_S * TICKS_PER_S {
                    if bench.machine().control().control_status().mode == ControlMode::Off {
                        break;
                    }
                    bench.step();
                }
            }
            ScriptStep::Tap(button) => hold(bench, *button, TAP)?,
            ScriptStep::Hold { button, ms } => hold(bench, *button, Span::from_ms(*ms))?,
            ScriptStep::Wait { s } | ScriptStep::Watch { s } => bench.wait(Span::from_s(*s)),
            ScriptStep::Rest { ms } => bench.wait(Span::from_ms(*ms)),
            ScriptStep::Until { what, limit_s } => {
                for _ in 0..Span::from_s(*limit_s).0 {
                    if bench.now().since(Time::ZERO) >= LONGEST_JOB {
                        return Err(StepError::TooLong);
                    }
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

/// A fault hold left in the board's own way; nothing where it has none but the plug.
pub fn reset_steps(resets: &Resets) -> Vec<ScriptStep> {
    if let Some(hold) = resets.hold {
        let (button, ms) = (hold.button, u64::from(hold.ms) + 200);
        return vec![ScriptStep::Hold { button, ms }];
    }
    let closings = resets.lid_cycle.as_ref().map_or(0, |lid| lid.cycles);
    // An odd number of moves begun on a closed lid is made even, so that it ends closed.
    let moves = resets.lid_moves.map_or(0, |lid| lid.moves.div_ceil(2));
    let closings = if closings > 0 { closings } else { moves };
    (0..closings)
        .flat_map(|_| [Action::OpenLid, Action::CloseLid].map(ScriptStep::Do))
        .collect()
}

fn hold(bench: &mut Bench, button: Button, span: Span) -> Result<(), StepError> {
    bench.act(&Action::Down(button))?;
    bench.wait(span);
    bench.act(&Action::Up(button))?;
    bench.wait(NEXT);
    Ok(())
}

/// The steps of a board's entry gesture at an easy pace.
pub fn entry_steps(gesture: &Gesture) -> Vec<ScriptStep> {
    // The hand rests before it begins.
    let mut steps = vec![ScriptStep::Wait { s: 2 }];
    if let Some(from) = gesture.from {
        let every_ms = 180;
        steps.push(ScriptStep::Point { to: from, every_ms });
        steps.push(ScriptStep::Wait { s: 2 });
    }
    let mut ahead = gesture.steps.iter().peekable();
    let gap = || ScriptStep::Rest {
        ms: u64::from(gesture.gap_ms),
    };
    // Past the shortest, and well before the longest.
    let aim = |min_ms: u32, max_ms: u32| {
        let past_ms = (max_ms.saturating_sub(min_ms) / 2).min(200);
        u64::from(min_ms + past_ms)
    };
    while let Some(step) = ahead.next() {
        if gesture.gap_ms > 0 {
            steps.push(gap());
        }
        match *step {
            GestureStep::Turn { to, detents, .. } => steps.push(ScriptStep::Turn {
                way: to,
                detents,
                every_ms: 180.max(u64::from(gesture.gap_ms) + 20),
            }),
            GestureStep::Press { button, times, .. } => (0..times).for_each(|n| {
                if n > 0 && gesture.gap_ms > 0 {
                    steps.push(gap());
                }
                steps.push(ScriptStep::Tap(button));
            }),
            GestureStep::Hold {
                button,
                min_ms,
                max_ms,
                ..
            } => steps.push(ScriptStep::Hold {
                button,
                ms: aim(min_ms, max_ms),
            }),
            GestureStep::Push { button, .. } => {
                steps.push(ScriptStep::Do(Action::Down(button)));
                steps.push(ScriptStep::Rest { ms: 150 });
            }
            GestureStep::Release { button, min_ms, .. } => {
                steps.push(ScriptStep::Rest {
                    ms: u64::from(min_ms) + 150,
                });
                steps.push(ScriptStep::Do(Action::Up(button)));
                steps.push(ScriptStep::Rest { ms: 150 });
            }
            GestureStep::Lid { to, .. } => steps.push(ScriptStep::Do(if to == LidMove::Up {
                Action::OpenLid
            } else {
                Action::CloseLid
            })),
            GestureStep::PowerUp { holding, standing } => {
                steps.push(ScriptStep::PowerDown);
                if let Some(Standing { at, min_ms }) = standing {
                    let (to, every_ms) = (at, 180);
                    steps.push(ScriptStep::Point { to, every_ms });
                    let s = u64::from(min_ms).div_ceil(1000) + 1;
                    steps.push(ScriptStep::Wait { s });
                }
                steps.extend(holding.map(|button| ScriptStep::Do(Action::Down(button))));
                steps.push(ScriptStep::Do(Action::Plug));
                // The hand comes back from the outlet, and the control's supply comes up; a hold that is measured
                // goes on meanwhile.
                let measured = |next: &&GestureStep| matches!(next, GestureStep::Release { min_ms, .. } if *min_ms > 0);
                if !ahead.peek().is_some_and(measured) {
                    steps.push(ScriptStep::Rest { ms: 1500 });
                }
            }
            GestureStep::Pause { min_ms } => steps.push(ScriptStep::Rest {
                ms: u64::from(min_ms) + 200,
            }),
            GestureStep::Together {
                buttons: (one, other),
                min_ms,
                max_ms,
                ..
            } => {
                let ms = aim(min_ms, max_ms).max(100);
                steps.extend([one, other].map(|button| ScriptStep::Do(Action::Down(button))));
                steps.push(ScriptStep::Rest { ms });
                steps.extend([one, other].map(|button| ScriptStep::Do(Action::Up(button))));
                steps.push(ScriptStep::Rest { ms: 150 });
            }
        }
    }
    steps
}
