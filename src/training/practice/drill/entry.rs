//! Entry timing: a try at a board's own gesture on its own dial, the rhythm of the hand in it, and what
//! that rhythm promises.

use super::{SuppliedBoard, SuppliedBoardId, draws, supplied_board, within};
use crate::bench::script::ScriptStep;
use crate::bench::{Action, Bench, Setup, cost};
use detent_simulation::controller::{
    Gesture, GestureInput, GestureStep, LidMove, Outcome, Selector, Tries, Try, rehearse,
};
use detent_simulation::interface::Button;
use detent_simulation::plant::dial::Dial;
use detent_simulation::units::uniform;
use detent_simulation::units::{Span, TICK_MS, Time};
use rand_chacha::ChaCha8Rng;

/// Runs that odds are counted from.
pub const RUNS: u32 = 400;
/// Seed of those runs: odds are the same whenever they are asked for, and neighbouring rhythms meet the
/// same luck.
const SEED: u64 = 11;
/// Spread of a hand that nothing is known of yet, as a share of its mean. Our own choice.
pub const USUAL_SPREAD: f64 = 0.15;
/// Shortest step that odds are drawn for, ms.
const FASTEST_MS: f64 = 50.0;
/// Points of the curve of odds.
const POINTS: u32 = 36;
/// Odds so near to the best ones are as good.
const AS_GOOD: f64 = 0.01;
/// A tapped button is up again after this share of a step. Our own choice.
const TAP: f64 = 0.4;
/// No step takes less than a tick.
const LEAST: Span = Span(1);
/// Settling time of a machine that has just got its mains.
const AWAKE: Span = Span::from_s(3);
/// The dial was not touched for so long before a try.
const RESTED: Span = Span::from_s(1);

/// A gesture to be done on a dial.
#[derive(Clone, Debug, PartialEq)]
pub struct EntryTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The gesture.
    pub gesture: Gesture,
    /// What is turned, if anything is.
    pub selector: Selector,
    /// Wear of the dial, 0 new to 1 worn out; none where no dial can skip.
    pub wear: Option<f64>,
    /// Seed of the machine's own draws.
    seed: u64,
}

/// The rhythm of a hand: the time from one motion to the next. Letting a tapped button go is no motion of its
/// own; a hold's own time, and a wait that the gesture asks for, do not count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rhythm {
    /// Mean, ms.
    pub mean_ms: f64,
    /// Standard deviation, ms.
    pub spread_ms: f64,
}

/// A try, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Service mode was entered.
    pub right: bool,
    /// How it ended.
    pub outcome: Outcome,
    /// The hand's rhythm; none where it made fewer than two steps.
    pub rhythm: Option<Rhythm>,
    /// Chance of entry at that rhythm, 0 to 1.
    pub odds: Option<f64>,
}

/// Chances of entry over step times.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Step time, ms, and chance of entry, 0 to 1.
    pub points: Vec<(f64, f64)>,
    /// The step time to aim at: the middle of those that are as good as the best, ms.
    pub best_ms: f64,
}

/// Draws a board and the wear of its dial.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> EntryTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    let wear = within(0.0, 1.0, rng);
    EntryTask::on(supplied_board, wear).again(seed)
}

impl EntryTask {
    /// This board's gesture on a dial of this wear, 0 to 1.
    pub fn on(supplied_board: &SuppliedBoard<'_>, wear: f64) -> EntryTask {
        let board = supplied_board.library.board;
        let selector = board.panel.selector;
        EntryTask {
            place: supplied_board.place(),
            gesture: board.gesture.clone(),
            selector,
            // The contacts of a switch and of buttons have nothing to skip.
            wear: matches!(selector, Selector::Dial { .. }).then_some(wear),
            seed: 0,
        }
    }

    /// The same board and dial, another try.
    #[must_use]
    pub fn again(&self, seed: u64) -> EntryTask {
        EntryTask {
            seed,
            ..self.clone()
        }
    }

    /// A sound machine with the task's board at its supply, ready for a try: awake and idle, or without power
    /// and at rest where the gesture begins with the plug.
    pub fn bench(&self, supplied_board: &SuppliedBoard<'_>) -> Bench {
        let rating = supplied_board.mains.rating();
        let mut bench = Bench::new(Setup {
            dial_wear: self.wear.unwrap_or_default(),
            ..supplied_board.library.setup(rating, Vec::new(), self.seed)
        });
        bench.wait(AWAKE);
        if matches!(
            self.gesture.steps.first(),
            Some(GestureStep::PowerUp { .. })
        ) {
            // Pulling a plug that is in, and waiting, is never refused.
            let _ = ScriptStep::PowerDown.run(&mut bench);
        }
        bench.begin();
        bench
    }

    /// Judges the last try of `tries` that is over, of a hand that did `history`; none while none is.
    pub fn mark<'a>(
        &self,
        tries: Tries<'_>,
        history: impl Iterator<Item = (Time, &'a Action)>,
    ) -> Option<Marked> {
        let over = |attempt: &Try| match attempt.outcome {
            Outcome::Open | Outcome::InHold => None,
            over @ (Outcome::Entered | Outcome::Broken(_)) => Some(over),
        };
        let outcome = tries.iter().rev().find_map(over)?;
        let rhythm = Rhythm::of(history, &self.gesture);
        Some(Marked {
            right: outcome == Outcome::Entered,
            outcome,
            rhythm,
            odds: rhythm.map(|rhythm| odds(&self.gesture, self.wear, rhythm)),
        })
    }

    /// Odds over step times, for a hand whose spread is this share of its mean.
    pub fn curve(&self, spread: f64) -> Curve {
        let slowest = slowest_ms(&self.gesture) * 1.3;
        let ratio = libm::pow(slowest / FASTEST_MS, 1.0 / f64::from(POINTS - 1));
        let point = |n: u32| {
            let mean_ms = FASTEST_MS * libm::pow(ratio, f64::from(n));
            let spread_ms = spread * mean_ms;
            let rhythm = Rhythm { mean_ms, spread_ms };
            (mean_ms, odds(&self.gesture, self.wear, rhythm))
        };
        let points: Vec<(f64, f64)> = (0..POINTS).map(point).collect();
        let most = points
            .iter()
            .fold(0.0_f64, |most, (_, odds)| most.max(*odds));
        let mut good = points.iter().filter(|(_, odds)| *odds >= most - AS_GOOD);
        let first = good.next().map_or(FASTEST_MS, |(ms, _)| *ms);
        let last = good.next_back().map_or(first, |(ms, _)| *ms);
        Curve {
            best_ms: (first + last) / 2.0,
            points,
        }
    }
}

impl Rhythm {
    /// Of what a hand did; none where it made fewer than two steps. The record of the hand is truer than
    /// what the control saw: a worn dial swallows detents.
    pub fn of<'a>(
        history: impl Iterator<Item = (Time, &'a Action)>,
        gesture: &Gesture,
    ) -> Option<Rhythm> {
        let mut motions: Vec<(Time, &Action)> = Vec::new();
        for next in history.filter(|(_, action)| action.is_gesture()) {
            let tapped = motions
                .last()
                .is_some_and(|last| is_tap(gesture, *last, next));
            if !tapped {
                motions.push(next);
            }
        }
        let mut gaps = Vec::new();
        for two in motions.windows(2) {
            let ((from, before), (at, after)) = (two[0], two[1]);
            let gap_ms = at.since(from + cost::span(before)).ms() as f64;
            let set_first = gesture.from.is_some() || gesture.standing().is_some();
            if set_first && gap_ms >= f64::from(gesture.rest_ms) {
                // The knob was set first; the try begins here.
                gaps.clear();
            } else if !waits(gesture, after, gap_ms) {
                gaps.push(gap_ms);
            }
        }
        if gaps.len() < 2 {
            return None;
        }
        let count = gaps.len() as f64;
        let mean_ms = gaps.iter().sum::<f64>() / count;
        let squares: f64 = gaps
            .iter()
            .map(|gap| (gap - mean_ms) * (gap - mean_ms))
            .sum();
        Some(Rhythm {
            mean_ms,
            spread_ms: libm::sqrt(squares / (count - 1.0)),
        })
    }
}

/// A button comes up that was pressed just now: the end of a tap, no step by itself.
fn is_tap(
    gesture: &Gesture,
    (down_at, before): (Time, &Action),
    (at, after): (Time, &Action),
) -> bool {
    let gap_ms = at.since(down_at).ms() as f64;
    match (before, after) {
        (Action::Down(down), Action::Up(up)) => down == up && !waits(gesture, after, gap_ms),
        _ => false,
    }
}

/// The time before this motion is one that the gesture asks for, not the hand's rhythm.
fn waits(gesture: &Gesture, motion: &Action, gap_ms: f64) -> bool {
    let Action::Up(up) = motion else { return false };
    gesture.steps.iter().any(|step| match *step {
        GestureStep::Hold { button, min_ms, .. } => {
            button == *up && 2.0 * gap_ms >= f64::from(min_ms)
        }
        GestureStep::Release { button, min_ms, .. } => button == *up && min_ms > 0,
        _ => false,
    })
}

/// One motion of a gesture and the time before it besides the hand's own step.
struct Motion {
    input: GestureInput,
    /// What the motion before took, or what the gesture makes one wait.
    own: Span,
    /// The hand waits for this long in place of a step.
    hold: Option<Span>,
    /// The end of a tap, which is within a step.
    tap: bool,
}

/// The motions of a gesture, in order.
fn motions(gesture: &Gesture) -> Vec<Motion> {
    let mut motions: Vec<Motion> = Vec::new();
    let mut own = Span::ZERO;
    let ms = |ms: u32| Span::from_ms(u64::from(ms));
    let mut ahead = gesture.steps.iter().peekable();
    while let Some(step) = ahead.next() {
        let mut push = |input, waited, hold, action: Option<Action>| {
            let own_before = own + waited;
            own = action.map_or(Span::ZERO, |action| cost::span(&action));
            motions.push(Motion {
                input,
                own: own_before,
                hold,
                tap: false,
            });
        };
        let none = Span::ZERO;
        match *step {
            GestureStep::Turn { to, detents, .. } => {
                (0..detents).for_each(|_| push(GestureInput::Detent(to), none, None, None));
            }
            GestureStep::Press { button, times, .. } => (0..times).for_each(|_| {
                push(GestureInput::Down(button), none, None, None);
                push(GestureInput::Up(button), none, None, None);
            }),
            GestureStep::Hold {
                button,
                min_ms,
                max_ms,
                ..
            } => {
                push(GestureInput::Down(button), none, None, None);
                // A third of the way in: past the shortest, and not waiting for the longest.
                let aim = ms(min_ms + (max_ms - min_ms) / 3);
                push(GestureInput::Up(button), none, Some(aim), None);
            }
            GestureStep::Push { button, .. } => push(GestureInput::Down(button), none, None, None),
            GestureStep::Release { button, min_ms, .. } => {
                push(GestureInput::Up(button), ms(min_ms), None, None);
            }
            GestureStep::Lid { to, .. } => {
                let action = match to {
                    LidMove::Up => Action::OpenLid,
                    LidMove::Down => Action::CloseLid,
                };
                push(GestureInput::Lid(to), none, None, Some(action));
            }
            GestureStep::PowerUp { holding, .. } => {
                // A hold that is measured from the moment of power leaves no time for the way back from the outlet.
                let measured = |next: &&GestureStep| matches!(next, GestureStep::Release { min_ms, .. } if *min_ms > 0);
                let way_back = (!ahead.peek().is_some_and(measured)).then_some(Action::Plug);
                push(GestureInput::PowerUp(holding), none, None, way_back);
            }
            GestureStep::Pause { min_ms } => own = own + ms(min_ms),
            GestureStep::Together {
                buttons: (one, other),
                apart_ms,
                min_ms,
                max_ms,
                ..
            } => {
                push(GestureInput::Down(one), none, None, None);
                push(
                    GestureInput::Down(other),
                    none,
                    Some(ms(apart_ms / 3)),
                    None,
                );
                let aim = ms(min_ms + (max_ms - min_ms) / 3);
                push(GestureInput::Up(one), none, Some(aim), None);
                push(GestureInput::Up(other), none, Some(ms(apart_ms / 3)), None);
            }
        }
    }
    for n in 1..motions.len() {
        let (before, motion) = (motions[n - 1].input, motions[n].input);
        motions[n].tap = gesture.steps.iter().any(|step| match *step {
            GestureStep::Press { button, .. } => {
                (before, motion) == (GestureInput::Down(button), GestureInput::Up(button))
                    && motions[n].hold.is_none()
            }
            _ => false,
        });
    }
    motions
}

/// Chance of entry, 0 to 1, of a hand with this rhythm on a dial of this wear (none: contacts that cannot
/// err): the share of [`RUNS`] runs through the control's own automaton. Step times are drawn from a
/// normal distribution.
pub fn odds(gesture: &Gesture, wear: Option<f64>, rhythm: Rhythm) -> f64 {
    let motions = motions(gesture);
    let rng = &mut draws(SEED);
    let entered =
        (0..RUNS).filter(|_| run(gesture, &motions, wear, rhythm, rng) == Outcome::Entered);
    entered.count() as f64 / f64::from(RUNS)
}

/// One run.
fn run(
    gesture: &Gesture,
    motions: &[Motion],
    wear: Option<f64>,
    rhythm: Rhythm,
    rng: &mut ChaCha8Rng,
) -> Outcome {
    let mut dial = Dial::default();
    let mut since_detent = RESTED;
    let (mut gap, mut tapped) = (Span::ZERO, Span::ZERO);
    let mut inputs = Vec::with_capacity(motions.len());
    for (n, motion) in motions.iter().enumerate() {
        let mean_ms = motion.hold.map_or(rhythm.mean_ms, |hold| hold.ms() as f64);
        let ticks = |ms: f64| Span((ms / TICK_MS as f64 + 0.5).max(0.0) as u64).max(LEAST);
        let step = if n == 0 {
            Span::ZERO
        } else if motion.tap {
            tapped = ticks(TAP * rhythm.mean_ms);
            tapped
        } else {
            // A step goes from motion to motion; the tap in it is a part of it.
            let drawn = ticks(mean_ms + rhythm.spread_ms * normal(rng));
            let rest = drawn.0.saturating_sub(std::mem::take(&mut tapped).0);
            motion.own + Span(rest).max(LEAST)
        };
        gap = gap + step;
        since_detent = since_detent + step;
        let mut times = 1;
        if let (GestureInput::Detent(to), Some(wear)) = (motion.input, wear) {
            let report = dial.detent(to, since_detent, wear, rng);
            since_detent = Span::ZERO;
            times = report.steps.unsigned_abs();
        }
        for _ in 0..times {
            inputs.push((std::mem::take(&mut gap), motion.input));
        }
    }
    rehearse(gesture, inputs)
}

/// The longest even step with which a hand that never errs still gets in, ms.
pub fn slowest_ms(gesture: &Gesture) -> f64 {
    let enters = |ms: u64| {
        let rhythm = Rhythm {
            mean_ms: ms as f64,
            spread_ms: 0.0,
        };
        run(gesture, &motions(gesture), None, rhythm, &mut draws(SEED)) == Outcome::Entered
    };
    let (mut good, mut bad) = (TICK_MS, u64::from(gesture.within_ms));
    while bad - good > TICK_MS {
        let middle = (good + bad) / 2;
        if enters(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    good as f64
}

/// A draw from the standard normal distribution (Box and Muller, 1958).
fn normal(rng: &mut ChaCha8Rng) -> f64 {
    let (u, v) = (1.0 - uniform(rng), uniform(rng));
    libm::sqrt(-2.0 * libm::log(u)) * libm::cos(core::f64::consts::TAU * v)
}

/// Buttons that have to stay down while others are pressed: one hand on a mouse cannot.
pub fn needs_keeping(gesture: &Gesture) -> bool {
    gesture.steps.iter().any(|step| {
        matches!(
            step,
            GestureStep::Push { .. }
                | GestureStep::Together { .. }
                | GestureStep::PowerUp {
                    holding: Some(_),
                    ..
                }
        )
    })
}

/// Buttons that the gesture asks for, each once.
pub fn buttons(gesture: &Gesture) -> Vec<Button> {
    let of = |step: &GestureStep| match *step {
        GestureStep::Press { button, .. }
        | GestureStep::Hold { button, .. }
        | GestureStep::Push { button, .. }
        | GestureStep::Release { button, .. } => [Some(button), None],
        GestureStep::PowerUp { holding, .. } => [holding, None],
        GestureStep::Together { buttons, .. } => [Some(buttons.0), Some(buttons.1)],
        GestureStep::Turn { .. } | GestureStep::Lid { .. } | GestureStep::Pause { .. } => {
            [None, None]
        }
    };
    let used: Vec<Button> = gesture.steps.iter().flat_map(of).flatten().collect();
    let all = Button::ALL.iter().copied();
    all.filter(|button| used.contains(button)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_simulation::interface::Direction;

    fn gesture() -> Gesture {
        Gesture {
            rest_ms: 500,
            within_ms: 4000,
            from: None,
            steps: vec![
                GestureStep::Turn {
                    to: Direction::Left,
                    detents: 3,
                    window_ms: None,
                },
                GestureStep::Hold {
                    button: Button::Start,
                    min_ms: 1000,
                    max_ms: 1600,
                    window_ms: None,
                },
            ],
            ..Gesture::default()
        }
    }

    #[test]
    fn a_rhythm_is_mean_and_spread_of_the_steps_without_the_hold() {
        let turn = Action::Detent(Direction::Left);
        let (down, up) = (Action::Down(Button::Start), Action::Up(Button::Start));
        let history = [
            (0, &turn),
            (20, &turn),
            (50, &turn),
            (75, &down),
            (195, &up),
        ];
        let history = || {
            history
                .into_iter()
                .map(|(tick, action)| (Time(tick), action))
        };
        let rhythm = Rhythm::of(history(), &gesture()).expect("three steps");
        // 200, 300 and 250 ms: our own arithmetic.
        assert!((rhythm.mean_ms - 250.0).abs() < 1e-9);
        assert!((rhythm.spread_ms - 50.0).abs() < 1e-9);
        assert_eq!(Rhythm::of(history().take(2), &gesture()), None);
    }

    #[test]
    fn letting_a_tapped_button_go_is_no_step() {
        let gesture = Gesture {
            steps: vec![GestureStep::Press {
                button: Button::Stop,
                times: 3,
                max_ms: 500,
                window_ms: None,
            }],
            ..gesture()
        };
        let (down, up) = (Action::Down(Button::Stop), Action::Up(Button::Stop));
        let history = [(0, &down), (9, &up), (30, &down), (33, &up), (60, &down)]
            .map(|(tick, action)| (Time(tick), action));
        let rhythm = Rhythm::of(history.into_iter(), &gesture).expect("two steps");
        assert_eq!((rhythm.mean_ms, rhythm.spread_ms), (300.0, 0.0));
        assert_eq!(odds(&gesture, None, rhythm), 1.0);
    }

    #[test]
    fn a_calm_hand_gets_in_and_a_hasty_one_on_a_worn_dial_does_not() {
        let rhythm = |mean_ms| Rhythm {
            mean_ms,
            spread_ms: 0.1 * mean_ms,
        };
        let gesture = gesture();
        assert_eq!(odds(&gesture, Some(0.0), rhythm(250.0)), 1.0);
        assert!(odds(&gesture, Some(1.0), rhythm(60.0)) < 0.6);
        assert_eq!(odds(&gesture, None, rhythm(60.0)), 1.0, "nothing can skip");
        assert_eq!(odds(&gesture, None, rhythm(1500.0)), 0.0, "too slow");
    }

    /// 4 s less the 1.2 s of the hold is left for three steps: our own arithmetic.
    #[test]
    fn the_slowest_step_fills_the_window() {
        let slowest = slowest_ms(&gesture());
        assert!((slowest - 2800.0 / 3.0).abs() < 15.0, "{slowest}");
    }
}
