//! "Is the control bad, or is it my hand?": what failed tries at the entry gesture say.

use super::evidence;
use super::wald::{Sprt, Verdict, WaldError};
use detent_simulation::controller::{EntryError, GestureInput, Outcome, Tries, Try};
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;
use detent_simulation::plant::dial::error_chances;
use detent_simulation::units::Span;

/// Risk of taking a sound control for bad, and of the other way round. Our own choice.
pub const RISK: f64 = 0.05;

/// How used a hand is to the gesture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HandPractice {
    /// Met the gesture today.
    Newcomer,
    /// Does it every week.
    Practised,
}

impl HandPractice {
    /// Chance that this hand does the gesture as it means to, 0 to 1, the dial's contacts apart. A
    /// newcomer's is chosen so that the test answers after about twenty failed tries, where common practice
    /// (no source) begins to suspect the control; a practised hand's is our own choice.
    pub const fn success(self) -> f64 {
        match self {
            HandPractice::Newcomer => 0.25,
            HandPractice::Practised => 0.8,
        }
    }
}

/// The latest tries of one hand at the gesture.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct HandRecord {
    /// Tries that got in.
    pub entered: u32,
    /// All of them, at most [`HandRecord::MOST_TRIES`].
    pub tries: u32,
}

impl HandRecord {
    /// Tries that a record goes back: what a hand did long ago says little. Our own choice.
    pub const MOST_TRIES: u32 = 20;
    /// Tries that the newcomer's chance is worth before the hand's own count. Our own choice.
    const PRIOR_TRIES: f64 = 4.0;

    /// Of these tries, the latest first: whether each got in.
    pub fn of(latest: impl Iterator<Item = bool>) -> HandRecord {
        let mut record = HandRecord::default();
        for entered in latest.take(Self::MOST_TRIES as usize) {
            record.entered += u32::from(entered);
            record.tries += 1;
        }
        record
    }

    /// Chance that this hand does the gesture as it means to, 0 to 1: the mean of a beta distribution that begins
    /// at the newcomer's chance. It never falls below that: tries that break a timing window are not held
    /// against the control in any case.
    pub fn success(self) -> f64 {
        let newcomer = HandPractice::Newcomer.success();
        let entered = newcomer * Self::PRIOR_TRIES + f64::from(self.entered);
        (entered / (Self::PRIOR_TRIES + f64::from(self.tries))).max(newcomer)
    }
}

/// What one failed try says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hand {
    /// Chance that a sound control would have let this try in, 0 to 1: the dial's contacts at this
    /// person's own pace, and a hand that does what it means to. 0 where the person's own timing broke a rule.
    pub success: f64,
}

impl Hand {
    /// Reads a try on a dial of this wear, 0 to 1, by a person who does the gesture as meant with the chance
    /// `practice`, 0 to 1.
    pub fn of(attempt: &Try, wear: f64, practice: f64) -> Hand {
        if own_fault(attempt) {
            return Hand { success: 0.0 };
        }
        // What came after the detent that broke the rule would have let nobody in.
        let broken = attempt.lines.iter().position(|line| line.broke.is_some());
        let until = broken.map_or(attempt.lines.len(), |place| place + 1);
        let detents: Vec<u32> = (attempt.lines[..until].iter())
            .filter(|line| matches!(line.got, Some(GestureInput::Detent(_))))
            .map(|line| line.at_ms)
            .collect();
        let gaps = detents.windows(2).map(|two| two[1].saturating_sub(two[0]));
        let gaps = gaps.map(|ms| Span::from_ms(u64::from(ms)));
        Hand::at_pace(gaps, wear, practice)
    }

    /// A try whose detents follow each other after these times.
    pub fn at_pace(gaps: impl Iterator<Item = Span>, wear: f64, practice: f64) -> Hand {
        let right = gaps.map(|gap| {
            let (skip, double) = error_chances(wear, gap);
            1.0 - skip - double
        });
        Hand {
            success: right.fold(practice, |chance, one| chance * one),
        }
    }
}

/// The trace shows that the person was too late, too early or pressed the wrong thing.
fn own_fault(attempt: &Try) -> bool {
    match attempt.outcome {
        // A detent too many or too few may be the dial's own.
        Outcome::Broken(
            EntryError::TooManyDetents { .. }
            | EntryError::TooFewDetents { .. }
            | EntryError::WrongWay { .. },
        ) => false,
        // In a fault hold a sound control lets nobody in either.
        Outcome::Broken(_) | Outcome::InHold => true,
        Outcome::Open | Outcome::Entered => false,
    }
}

/// How the question stands after each try: "is the control bad or is it my hand?"
#[derive(Clone, Debug, PartialEq)]
pub struct ControlSuspicion {
    /// Logarithm of the odds at which the control is the likelier culprit by far.
    pub upper: f64,
    /// Logarithm of the odds at which it is the hand.
    pub lower: f64,
    /// Logarithm of the odds that the control is bad: before the first try, and after each that failed.
    pub log_odds: Vec<f64>,
    /// A try got in: the control is not to blame.
    pub cleared: bool,
    /// Failed tries in a row after which the control is suspect on a new dial turned calmly: a newcomer's, and
    /// a practised hand's.
    pub needed: [usize; 2],
    /// The hand that the tries were held against.
    pub hand: HandRecord,
    /// As `needed`, of that hand.
    pub needed_of_hand: usize,
}

impl ControlSuspicion {
    /// The tries speak against the control by far.
    pub fn is_bad(&self) -> bool {
        !self.cleared && self.log_odds.last().is_some_and(|odds| *odds >= self.upper)
    }

    /// Tries of a `hand` on a dial of this wear, 0 to 1, where controls fail as often as these modes say. An empty
    /// record is a newcomer's: what is not known of a hand is not held against the control.
    ///
    /// # Errors
    /// As [`Sprt::new`].
    pub fn of(
        tries: Tries<'_>,
        wear: f64,
        modes: &[FailureMode],
        hand: HandRecord,
    ) -> Result<ControlSuspicion, WaldError> {
        let mut test = control_on_trial(modes)?;
        let needed = |success| failures_needed(test, Hand { success });
        let needed_of_hand = needed(hand.success());
        let needed = [HandPractice::Newcomer, HandPractice::Practised]
            .map(|practice| needed(practice.success()));
        let mut log_odds = vec![test.log_ratio];
        let failed = |t: &&Try| matches!(t.outcome, Outcome::Broken(_));
        for attempt in tries.iter().filter(failed) {
            test = suspicion(test, &[Hand::of(attempt, wear, hand.success())]);
            log_odds.push(test.log_ratio);
        }
        Ok(ControlSuspicion {
            upper: test.upper,
            lower: test.lower,
            log_odds,
            cleared: tries.iter().any(|t| t.outcome == Outcome::Entered),
            needed,
            hand,
            needed_of_hand,
        })
    }
}

/// Wald's test, begun with the catalogue's odds that the control itself is bad.
///
/// # Errors
/// As [`Sprt::new`].
pub fn control_on_trial(modes: &[FailureMode]) -> Result<Sprt, WaldError> {
    let of_control = modes.iter().filter(|m| m.component == Component::Board);
    let bad: f64 = of_control.map(|m| m.weight).sum();
    let all: f64 = evidence::prior(modes).iter().sum();
    Ok(Sprt::new(RISK, RISK)?.with_odds(bad / (all - bad)))
}

/// The test of "the control is sound" against "the control never lets anyone in" after these
/// failures. Begun with the odds that the control is bad, it tells those odds after them.
fn suspicion(mut test: Sprt, failures: &[Hand]) -> Sprt {
    for hand in failures {
        test.see(1.0 - hand.success, 1.0);
    }
    test
}

/// Failed tries of this hand in a row that end the test.
pub fn failures_needed(mut test: Sprt, hand: Hand) -> usize {
    let mut failures = 0;
    while test.verdict() == Verdict::GoOn && hand.success > 0.0 {
        test = suspicion(test, &[hand]);
        failures += 1;
    }
    failures
}

#[cfg(test)]
mod tests {
    use super::*;

    fn failed(success: f64, times: usize) -> Sprt {
        let test = Sprt::new(0.05, 0.05).expect("risks");
        suspicion(test, &vec![Hand { success }; times])
    }

    #[test]
    fn twenty_failures_in_a_row_are_as_rare_as_they_are() {
        // Independent arithmetic, no published result: p to the twentieth.
        for (miss, expected) in [
            (0.5, 9.5367e-7),
            (0.8, 0.011_529_2),
            (0.9, 0.121_577),
            (0.95, 0.358_486),
        ] {
            let chance = 1.0 / failed(1.0 - miss, 20).odds();
            assert!((chance / expected - 1.0).abs() < 1e-5, "{chance}");
        }
        // The greatest success chance that twenty failures leave possible at 5 %.
        let bound = 1.0 - libm::pow(0.05, 0.05);
        assert!((bound - 0.139_108).abs() < 1e-6);
        let chance = 1.0 / failed(bound, 20).odds();
        assert!((chance - 0.05).abs() < 1e-9);
    }

    #[test]
    fn a_good_hand_suspects_the_control_soon_and_a_bad_hand_never() {
        assert_eq!(failed(0.95, 1).verdict(), Verdict::Second);
        assert_eq!(failed(0.5, 4).verdict(), Verdict::GoOn);
        assert_eq!(failed(0.5, 5).verdict(), Verdict::Second);
        assert_eq!(failed(0.0, 1000).verdict(), Verdict::GoOn);
    }

    #[test]
    fn a_record_moves_the_chance_from_the_newcomer_s_towards_its_own() {
        let of = |entered, tries| HandRecord { entered, tries }.success();
        // Independent arithmetic: (1 + entered) / (4 + tries).
        for (entered, tries, expected) in [
            (0, 0, 0.25),
            (3, 4, 0.5),
            (15, 20, 16.0 / 24.0),
            (20, 20, 0.875),
            (0, 20, 0.25),
        ] {
            let found = of(entered, tries);
            assert!((found - expected).abs() < 1e-12, "{entered} of {tries}");
        }
        let long = (0..90).map(|n| n < 10);
        let (entered, tries) = (10, 20);
        assert_eq!(HandRecord::of(long), HandRecord { entered, tries });
    }

    #[test]
    fn what_is_known_of_controls_comes_before_the_tries() {
        let test = Sprt::new(0.05, 0.05).expect("risks").with_odds(0.01);
        let told = |times: usize| suspicion(test, &vec![Hand { success: 0.9 }; times]);
        // One in a hundred, and ten times as likely with each failure.
        assert!((told(2).odds() - 1.0).abs() < 1e-9);
        assert_eq!(told(3).verdict(), Verdict::GoOn);
        assert_eq!(told(4).verdict(), Verdict::Second);
    }

    #[test]
    fn a_worn_dial_turned_fast_excuses_the_control() {
        let gaps = |ms| std::iter::repeat_n(Span::from_ms(ms), 6);
        let practised = HandPractice::Practised.success();
        let calm = Hand::at_pace(gaps(200), 0.0, practised).success;
        let hasty = Hand::at_pace(gaps(50), 0.9, practised).success;
        assert!((calm - practised).abs() < 1e-12);
        assert!(hasty < 0.3, "{hasty}");
    }
}
