//! The drills: every task has one right answer and it can be known; the same seed asks the same; and what
//! they say of rhythm and readings agrees with the machine and with published figures of how fast hands are.

use detent_content::{ContentLibrary, builtin};
use detent_simulation::controller::{Gesture, GestureInput, GestureStep, LidMove, Outcome, Signs};
use detent_simulation::controller::{Selector, rehearse};
use detent_simulation::interface::{Button, Component, Direction};
use detent_simulation::plant::dial::error_chances;
use detent_simulation::units::{Span, Time};
use detent_training::bench::script::{ScriptStep, entry_steps};
use detent_training::bench::{Action, Condition, Display, cure, meter};
use detent_training::lesson::{MachineState, survey};
use detent_training::practice::drill::entry::Rhythm;
use detent_training::practice::drill::{
    SuppliedBoard, entry, lamps, look_up, meter as metering, next_test, part,
};
use detent_training::reason::evidence::Table;
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::sync::LazyLock;

static CONTENT_LIBRARY: LazyLock<ContentLibrary> =
    LazyLock::new(|| ContentLibrary::builtin().expect("the built-in content is sound"));

static SUPPLIED_BOARDS: LazyLock<Vec<SuppliedBoard<'static>>> =
    LazyLock::new(|| CONTENT_LIBRARY.supplied_boards());

/// What every fault shows on each board: the tables that the program brings with it.
static TABLES: LazyLock<Vec<Table>> = LazyLock::new(|| {
    let table = |supplied_board: &SuppliedBoard<'_>| {
        let table = builtin::table(&supplied_board.library, supplied_board.mains.rating());
        table.expect("it is of this content")
    };
    SUPPLIED_BOARDS.iter().map(table).collect()
});

fn supplied_board(
    place: &detent_training::practice::drill::SuppliedBoardId,
) -> SuppliedBoard<'static> {
    let here = SUPPLIED_BOARDS
        .iter()
        .find(|supplied_board| supplied_board.place() == *place);
    *here.expect("tasks are drawn from these boards")
}

/// Over two hundred seeds every board comes up, and hardly two tasks are alike.
#[track_caller]
fn check_varied(boards: impl IntoIterator<Item = String>, tasks: impl IntoIterator<Item = String>) {
    let seen: BTreeSet<String> = boards.into_iter().collect();
    let all: BTreeSet<String> = CONTENT_LIBRARY
        .boards
        .iter()
        .map(|board| board.id.clone())
        .collect();
    assert_eq!(seen, all);
    let different: BTreeSet<String> = tasks.into_iter().collect();
    assert!(different.len() >= 100, "{} different ones", different.len());
}

#[test]
fn over_two_hundred_seeds_the_tasks_vary() {
    let seeds = || 0..200_u64;
    let lamps: Vec<_> = seeds()
        .map(|seed| lamps::ask(&SUPPLIED_BOARDS, &[], 0, seed))
        .collect();
    check_varied(
        lamps.iter().filter_map(|task| task.board.clone()),
        lamps.iter().map(|task| format!("{task:?}")),
    );
    let kinds: BTreeSet<&str> = lamps.iter().map(|task| task.signs.key()).collect();
    assert_eq!(kinds.len(), 4, "{kinds:?}");
    let entry: Vec<_> = seeds()
        .map(|seed| entry::ask(&SUPPLIED_BOARDS, seed))
        .collect();
    check_varied(
        entry.iter().map(|task| task.place.board.clone()),
        entry.iter().map(|task| format!("{task:?}")),
    );
    let meter: Vec<_> = seeds()
        .map(|seed| metering::ask(&SUPPLIED_BOARDS, seed))
        .collect();
    check_varied(
        meter.iter().map(|task| task.place.board.clone()),
        meter.iter().map(|task| format!("{task:?}")),
    );
    let kinds: BTreeSet<&str> = meter.iter().map(|task| task.check.kind.key()).collect();
    assert_eq!(kinds.len(), 14, "{kinds:?}");
    let sound = meter
        .iter()
        .filter(|task| metering::solve(task).within)
        .count();
    assert!((60..140).contains(&sound), "{sound} of 200 are sound");
    let look_up: Vec<_> = seeds()
        .map(|seed| look_up::ask(&SUPPLIED_BOARDS, seed))
        .collect();
    check_varied(
        look_up.iter().map(|task| task.place.board.clone()),
        look_up.iter().map(|task| format!("{task:?}")),
    );
    let parts: Vec<_> = seeds()
        .map(|seed| part::ask(&SUPPLIED_BOARDS, seed))
        .collect();
    check_varied(
        parts.iter().map(|task| task.place.board.clone()),
        parts.iter().map(|task| format!("{task:?}")),
    );
    let wrong: BTreeSet<&str> = (parts.iter())
        .flat_map(|task| task.verdicts.iter().flatten())
        .map(part::Wrong::key)
        .collect();
    assert_eq!(
        wrong.len(),
        5,
        "every kind of mistake is offered: {wrong:?}"
    );
}

/// Whoever begins to read lamps meets the boards of the course first, in its order; what is made up comes after them.
#[test]
fn lamp_reading_begins_with_the_boards_of_the_course() {
    let course = CONTENT_LIBRARY.boards_to_read().expect("a sound course");
    let ids: Vec<&str> = course.iter().map(|board| board.id.as_str()).collect();
    assert_eq!(ids, ["arc-dial", "key-pad", "lone-lamp"]);
    let board_at = |asked, seed| lamps::ask(&SUPPLIED_BOARDS, &course, asked, seed).board;
    for seed in 0..40 {
        for (asked, id) in ids.iter().enumerate() {
            assert_eq!(board_at(asked, seed).as_deref(), Some(*id), "{seed}");
        }
    }
    let later: Vec<Option<String>> = (0..80).map(|seed| board_at(ids.len(), seed)).collect();
    let invented = later.iter().filter(|board| board.is_none()).count();
    assert!((20..60).contains(&invented), "{invented} of 80");
}

/// What a hand with pencil and paper reads off the lamps: the sheet's own rule, worked out without the
/// control's code.
fn read(signs: &Signs, shown: u8) -> Option<u8> {
    let lit = signs.lit(shown, Span::ZERO);
    match signs {
        Signs::Weights { tens, units } => {
            let all: Vec<u8> = tens.iter().chain(units).copied().collect();
            let on = |n: usize| lit & (1 << (all.len() - 1 - n)) != 0;
            let sum = |range: std::ops::Range<usize>| -> u8 {
                range.filter(|n| on(*n)).map(|n| all[n]).sum()
            };
            Some(10 * sum(0..tens.len()) + sum(tens.len()..all.len()))
        }
        Signs::Segments => {
            let digit =
                |bits: u16| (0..10).find(|d| Signs::Segments.lit(*d, Span::ZERO) & 0x7f == bits);
            Some(10 * digit(lit >> 7 & 0x7f)? + digit(lit & 0x7f)?)
        }
        Signs::Pictures { table, .. } => {
            let mut same = table.iter().filter(|(_, picture)| *picture == lit);
            let found = same.next().map(|(number, _)| *number);
            found.filter(|_| same.next().is_none())
        }
        Signs::Flashes {
            long_ms, short_ms, ..
        } => {
            let count = |ms: u32| {
                let span = Span::from_ms(u64::from(ms));
                let flashes = signs.flashes(shown);
                flashes
                    .filter(|(on, length)| *on && *length == span)
                    .count() as u8
            };
            Some(10 * count(*long_ms) + count(*short_ms))
        }
        Signs::InTurn { .. } => {
            unreachable!("no built-in board and no invented language shows digits in turn")
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_number_on_the_lamps_can_be_read_and_only_it_is_right(seed: u64) {
        let task = lamps::ask(&SUPPLIED_BOARDS, &[], 0, seed);
        prop_assert_eq!(&task, &lamps::ask(&SUPPLIED_BOARDS, &[], 0, seed));
        prop_assert_eq!(read(&task.signs, task.shown), Some(task.shown));
        let right: Vec<u8> = (0..100).filter(|n| lamps::mark(&task, *n).right).collect();
        prop_assert_eq!(right, vec![task.shown]);
        if task.board.is_none() {
            let needed = lamps::numbers(&task.signs);
            let listed = needed.contains(&task.shown);
            prop_assert!(listed || task.signs.key() != "pictures");
            prop_assert!(task.signs.check(needed.into_iter()).is_empty());
        }
        // WCAG 2.2, 2.3.1: no more than three flashes in any second; and nobody waits a minute.
        let mut flashes: Vec<(bool, Span)> = task.signs.flashes(task.shown).collect();
        if task.signs.key() != "flashes" {
            flashes.clear();
        }
        let whole: u64 = flashes.iter().map(|(_, span)| span.0).sum();
        prop_assert!(whole < 60 * 100);
        for pair in flashes.windows(2) {
            prop_assert!(3 * (pair[0].1.ms() + pair[1].1.ms()) >= 1000, "{flashes:?}");
        }
    }

    #[test]
    fn a_check_with_the_meter_has_one_answer_clear_of_doubt(seed: u64) {
        let task = metering::ask(&SUPPLIED_BOARDS, seed);
        prop_assert_eq!(&task, &metering::ask(&SUPPLIED_BOARDS, seed));
        let mut right = Vec::new();
        for state in metering::State::ALL {
            for mode in metering::MODES {
                for range in 0..task.ranges.len() {
                    for within in [false, true] {
                        let given = metering::Given { state, mode, range, within };
                        if metering::mark(&task, given).right {
                            right.push(given);
                        }
                    }
                }
            }
        }
        prop_assert_eq!(&right, &vec![metering::solve(&task)]);
        prop_assert_eq!(task.ranges.len(), 4);
        // Whatever the meter's error, the reading stays on its side of the limits.
        if let (Display::Value(value), metering::Range::Between(low, high)) = (task.shown, task.sound) {
            let error = meter::accuracy(task.check.mode, value);
            for shown in [value - error, value + error] {
                let same = (low..=high).contains(&shown.max(0.0));
                prop_assert_eq!(same, right[0].within, "{} in {} to {}", value, low, high);
            }
        }
        // What sends a current of its own is never put on a live or charged machine.
        let safe = [metering::State::Bled, metering::State::Pulled].contains(&right[0].state);
        prop_assert!(safe || !task.check.mode.sends_current());
    }

    #[test]
    fn the_suspects_are_all_there_and_nothing_else_is_right(seed: u64) {
        let task = look_up::ask(&SUPPLIED_BOARDS, seed);
        prop_assert_eq!(&task, &look_up::ask(&SUPPLIED_BOARDS, seed));
        let board = supplied_board(&task.place).library.board;
        prop_assert_eq!(board.monitor_of(task.code), Some(task.monitor));
        let entry = board.sheet.iter().find(|s| s.monitor == task.monitor).expect("listed");
        // Beside the question lies the sheet's page of codes, whole and in order.
        prop_assert_eq!(task.page.len(), board.codes.len());
        prop_assert!(task.page.is_sorted_by_key(|line| line.code));
        for line in &task.page {
            prop_assert_eq!(board.monitor_of(line.code), Some(line.monitor));
            let listed = board.sheet.iter().find(|s| s.monitor == line.monitor);
            let listed = listed.map_or(&[][..], |s| &s.suspects);
            prop_assert_eq!(&line.suspects[..], listed);
        }
        prop_assert!(look_up::mark(&task, &entry.suspects).right);
        let unique: BTreeSet<Component> = task.options.iter().copied().collect();
        prop_assert_eq!(unique.len(), task.options.len());
        prop_assert!(task.options.len() >= entry.suspects.len() + 2);
        // One more or one less, and it is wrong.
        for option in &task.options {
            let mut ticked = entry.suspects.clone();
            match ticked.iter().position(|c| c == option) {
                Some(at) => drop(ticked.remove(at)),
                None => ticked.push(*option),
            }
            let marked = look_up::mark(&task, &ticked);
            prop_assert!(!marked.right && marked.missed.len() + marked.wrong.len() == 1);
        }
    }

    #[test]
    fn just_one_number_at_the_counter_is_the_one_to_order(seed: u64) {
        let task = part::ask(&SUPPLIED_BOARDS, seed);
        prop_assert_eq!(&task, &part::ask(&SUPPLIED_BOARDS, seed));
        let library = supplied_board(&task.place).library;
        let mode = library.modes.iter().find(|m| m.id == task.cause).expect("in the catalogue");
        let should = cure(library.parts, &library.board.id, mode).expect("curable");
        let right: Vec<usize> = (0..task.options.len()).filter(|n| part::mark(&task, *n).right).collect();
        prop_assert_eq!(right.len(), 1);
        let chosen = &task.options[right[0]];
        prop_assert_eq!(&chosen.number, &should.number);
        prop_assert!(chosen.fits(&library.board.id) && chosen.ends(mode));
        prop_assert!(chosen.condition == Condition::New && chosen.superseded_by.is_none());
        prop_assert_eq!(task.options.len(), 5);
        for (n, verdict) in task.verdicts.iter().enumerate() {
            prop_assert_eq!(verdict.is_none(), n == right[0]);
        }
    }

    #[test]
    fn the_same_seed_puts_the_same_dial_into_the_hand(seed: u64) {
        let task = entry::ask(&SUPPLIED_BOARDS, seed);
        prop_assert_eq!(&task, &entry::ask(&SUPPLIED_BOARDS, seed));
        prop_assert_eq!(task.wear.is_some(), matches!(task.selector, Selector::Dial { .. }));
        let other = task.again(seed ^ 1);
        prop_assert_eq!(&other.gesture, &task.gesture);
        prop_assert_eq!(other.wear, task.wear);
    }
}

// Meter.

/// The limits that the drill takes a sound reading to have are those that the simulated sound machine
/// keeps, in the same setting on the same pins.
#[test]
fn the_sound_machine_keeps_the_limits_of_every_check() {
    let mut met = BTreeSet::new();
    for supplied_board in SUPPLIED_BOARDS.iter() {
        let looks = survey::looks(&supplied_board.library, supplied_board.mains.rating(), None);
        for check in metering::all() {
            let sound = check.sound(&supplied_board.library, supplied_board.mains);
            let is_driven = matches!(check.kind, metering::Kind::Driven | metering::Kind::Current);
            let is_there = |state: MachineState| match check.state {
                metering::State::Bled => state == MachineState::Dead,
                metering::State::Pulled => state == MachineState::Pulled,
                metering::State::Live | metering::State::Unplugged if is_driven => {
                    state.routine().is_some()
                }
                metering::State::Live | metering::State::Unplugged => state == MachineState::Idle,
            };
            for taken in &looks.readings {
                let pins = (taken.red, taken.black) == (check.red, check.black)
                    || check.kind == metering::Kind::Current && taken.red == check.red;
                // A load that is at rest while another is tested carries nothing.
                let idle = matches!(taken.shown, Display::Value(v) if v < 1e-3);
                if is_there(taken.state)
                    && taken.mode == check.mode
                    && pins
                    && !(idle && taken.state.routine().is_some())
                {
                    met.insert(check.text_key);
                    assert!(
                        metering::is_within(taken.shown, sound),
                        "{} on {:?} {:?}: {:?} is outside {sound:?}",
                        check.text_key,
                        supplied_board.place(),
                        check.red,
                        taken
                    );
                }
            }
        }
    }
    println!("{} checks met: {met:?}", met.len());
    assert!(met.len() >= 20, "{met:?}");
}

// Entry timing.

/// Card, Moran and Newell, "The Psychology of Human-Computer Interaction" (1983), keystroke-level model,
/// read in secondary sources: a keystroke of a good typist and of an average one who is no typist,
/// the move of a hand from one device to another, and the thought before an act, s.
const K_SKILLED_S: f64 = 0.20;
const K_AVERAGE_S: f64 = 0.28;
const H_S: f64 = 0.40;
const M_S: f64 = 1.35;

/// The inputs of a gesture with a keystroke (`k_s`) for each motion of a finger, a move of the hand more for
/// the lid and after the plug, and a thought before each new step if `thinks`. Holds are held for their shortest
/// time, and a keystroke more.
fn by_keystrokes(gesture: &Gesture, k_s: f64, thinks: bool) -> Vec<(Span, GestureInput)> {
    let mut inputs = Vec::new();
    for step in &gesture.steps {
        let first = inputs.len();
        let mut push = |s: f64, input| inputs.push((Span::from_ms((s * 1000.0) as u64), input));
        match *step {
            GestureStep::Turn { to, detents, .. } => {
                (0..detents).for_each(|_| push(k_s, GestureInput::Detent(to)));
            }
            GestureStep::Press { button, times, .. } => (0..times).for_each(|_| {
                push(k_s, GestureInput::Down(button));
                push(k_s, GestureInput::Up(button));
            }),
            GestureStep::Hold { button, min_ms, .. } => {
                push(k_s, GestureInput::Down(button));
                push(f64::from(min_ms) / 1000.0 + k_s, GestureInput::Up(button));
            }
            GestureStep::Push { button, .. } => push(k_s, GestureInput::Down(button)),
            GestureStep::Release { button, .. } => push(k_s, GestureInput::Up(button)),
            GestureStep::Lid { to, .. } => push(H_S + k_s, GestureInput::Lid(to)),
            GestureStep::PowerUp { holding, .. } => push(k_s, GestureInput::PowerUp(holding)),
            GestureStep::Pause { .. } | GestureStep::Together { .. } => {
                unreachable!("no built-in gesture has {step:?} in it")
            }
        }
        if thinks && first > 0 {
            inputs[first].0 = inputs[first].0 + Span::from_ms((M_S * 1000.0) as u64);
        }
    }
    inputs
}

#[test]
fn every_gesture_is_possible_for_a_person_at_keystroke_level() {
    for board in &CONTENT_LIBRARY.boards {
        let gesture = &board.gesture;
        let time_s = |k_s, thinks| -> f64 {
            let inputs = by_keystrokes(gesture, k_s, thinks);
            let counted: u64 = inputs[1..].iter().map(|(gap, _)| gap.0).sum();
            Span(counted).ms() as f64 / 1000.0
        };
        println!(
            "{}: skilled {:.2} s, average {:.2} s, thinking before each step {:.2} s, window {:.2} s; slowest even step {:.0} ms",
            board.id,
            time_s(K_SKILLED_S, false),
            time_s(K_AVERAGE_S, false),
            time_s(K_AVERAGE_S, true),
            f64::from(gesture.within_ms) / 1000.0,
            entry::slowest_ms(gesture),
        );
        for k_s in [K_SKILLED_S, K_AVERAGE_S] {
            // The thought before the gesture is not counted by the window: it begins with the first input.
            let outcome = rehearse(gesture, by_keystrokes(gesture, k_s, false));
            assert_eq!(outcome, Outcome::Entered, "{} at {k_s} s", board.id);
        }
    }
}

/// Chance that detents with these chances of skipping and doubling are reported as so many in all.
fn exactly(detents: &[(f64, f64)]) -> f64 {
    let mut sums = vec![1.0];
    for (skip, double) in detents {
        let mut next = vec![0.0; sums.len() + 2];
        for (sum, chance) in sums.iter().enumerate() {
            next[sum] += chance * skip;
            next[sum + 1] += chance * (1.0 - skip - double);
            next[sum + 2] += chance * double;
        }
        sums = next;
    }
    sums[detents.len()]
}

/// Independent arithmetic, no published result: without spread and with nothing in the way of the window, odds
/// are the chance that each turn is reported as many detents as it has (one that was skipped and one that
/// was doubled make up for each other).
#[test]
fn odds_of_an_even_hand_are_the_dials_own_chances() {
    let turn = |to, detents| GestureStep::Turn {
        to,
        detents,
        window_ms: None,
    };
    let tap = GestureStep::Press {
        button: Button::Stop,
        times: 1,
        max_ms: 900,
        window_ms: None,
    };
    let gesture = Gesture {
        rest_ms: 500,
        within_ms: 9000,
        from: None,
        steps: vec![turn(Direction::Left, 4), turn(Direction::Right, 5), tap],
        ..Gesture::default()
    };
    for (wear, ms) in [(0.9, 60), (0.5, 100), (0.2, 50), (1.0, 300)] {
        let (rested, quick) = (
            error_chances(wear, Span::from_s(1)),
            error_chances(wear, Span::from_ms(ms)),
        );
        let exact = exactly(&[rested, quick, quick, quick]) * exactly(&[quick; 5]);
        let (mean_ms, spread_ms) = (ms as f64, 0.0);
        let rhythm = Rhythm { mean_ms, spread_ms };
        let drawn = entry::odds(&gesture, Some(wear), rhythm);
        // Three standard deviations of a share of 400 runs.
        let three = 3.0 * (exact * (1.0 - exact) / 400.0).sqrt();
        println!("wear {wear}, {ms} ms: {drawn} for {exact:.4}");
        assert!(
            (drawn - exact).abs() < three,
            "{wear} at {ms} ms: {drawn} for {exact}"
        );
    }
}

#[test]
fn the_best_rhythm_is_neither_hasty_nor_late() {
    for seed in 0..12 {
        let task = entry::ask(&SUPPLIED_BOARDS, seed);
        let curve = task.curve(entry::USUAL_SPREAD);
        let at = |ms: f64| {
            let nearest =
                |a: &&(f64, f64), b: &&(f64, f64)| (a.0 - ms).abs().total_cmp(&(b.0 - ms).abs());
            curve.points.iter().min_by(nearest).expect("points").1
        };
        let most = curve
            .points
            .iter()
            .map(|(_, odds)| *odds)
            .fold(0.0, f64::max);
        assert!(at(curve.best_ms) >= most - 0.03, "{task:?} {curve:?}");
        assert!(
            curve.points.last().expect("points").1 < 0.5 * most,
            "too slow is too late"
        );
        assert!(curve.best_ms > 90.0 && curve.best_ms < entry::slowest_ms(&task.gesture));
    }
}

/// The whole way on the real bench: a hand that does the gesture evenly gets in on a new dial, and its
/// rhythm is what it did.
#[test]
fn a_hand_on_the_bench_is_told_its_own_rhythm() {
    for supplied_board in SUPPLIED_BOARDS.iter() {
        let seed =
            (0..).find(|seed| entry::ask(&SUPPLIED_BOARDS, *seed).place == supplied_board.place());
        let mut task = entry::ask(&SUPPLIED_BOARDS, seed.expect("every board comes up"));
        task.wear = task.wear.map(|_| 0.0);
        let mut bench = task.bench(supplied_board);
        assert_eq!(
            task.mark(bench.machine().tries(), bench.history().iter()),
            None
        );
        // Resting and setting the knob comes before; the bench is at rest and without power already.
        let steps = entry_steps(&task.gesture);
        for step in steps.iter().filter(|step| **step != ScriptStep::PowerDown) {
            step.run(&mut bench).expect("a person can do this");
        }
        let marked = task
            .mark(bench.tries(), bench.history().iter())
            .expect("the try is over");
        assert!(marked.right, "{:?}: {marked:?}", supplied_board.place());
        let rhythm = marked.rhythm.expect("enough steps");
        assert!(
            (20.0..320.0).contains(&rhythm.mean_ms),
            "{:?}: {rhythm:?}",
            supplied_board.place()
        );
        println!(
            "{:?}: {rhythm:?}, odds {:?}",
            supplied_board.place(),
            marked.odds
        );
    }
}

#[test]
fn a_rhythm_counts_neither_the_hold_nor_what_the_lid_takes() {
    let gesture = Gesture {
        rest_ms: 800,
        within_ms: 14_000,
        from: None,
        steps: vec![
            GestureStep::Lid {
                to: LidMove::Up,
                window_ms: None,
            },
            GestureStep::Lid {
                to: LidMove::Down,
                window_ms: None,
            },
            GestureStep::Hold {
                button: Button::Start,
                min_ms: 1000,
                max_ms: 2000,
                window_ms: None,
            },
        ],
        ..Gesture::default()
    };
    // The lid takes a second of bench time by itself.
    let history = [
        (0, Action::OpenLid),
        (130, Action::CloseLid),
        (260, Action::Down(Button::Start)),
        (420, Action::Up(Button::Start)),
    ]
    .map(|(tick, action)| (Time(tick), action));
    let history = history.iter().map(|(at, action)| (*at, action));
    let rhythm = Rhythm::of(history, &gesture).expect("two steps");
    assert_eq!((rhythm.mean_ms, rhythm.spread_ms), (300.0, 0.0));
}

// Next test.

#[test]
fn the_next_test_has_one_best_and_three_that_cost_more() {
    let table = |place: &_| {
        let at = SUPPLIED_BOARDS
            .iter()
            .position(|supplied_board| supplied_board.place() == *place);
        at.map(|at| &TABLES[at])
    };
    let ask = |seed| next_test::ask(&SUPPLIED_BOARDS, table, seed);
    let tasks: Vec<next_test::NextTestTask> = (0..12).filter_map(ask).collect();
    let places: BTreeSet<String> = tasks.iter().map(|t| format!("{:?}", t.place)).collect();
    assert!(places.len() > 1, "always {places:?}");
    assert!(tasks.len() >= 10, "{} of 12 seeds give a task", tasks.len());
    assert_eq!(ask(3), ask(3));
    for task in &tasks {
        assert!(task.belief[0].1 <= 0.9, "nothing to choose: {task:?}");
        assert_eq!(task.options.len(), 4);
        let right: Vec<usize> = (0..4).filter(|n| next_test::mark(task, *n).right).collect();
        assert_eq!(right.len(), 1, "{task:?}");
        let best = task.options[right[0]].repair.1;
        for (n, other) in task.options.iter().enumerate() {
            // Whatever follows, the others are dearer.
            assert!(n == right[0] || other.repair.0 > best * 1.03, "{task:?}");
        }
        let share: f64 = task.belief.iter().map(|(_, share)| share).sum();
        assert!(share > 0.0 && share <= 1.0 + 1e-9);
        assert!(task.belief.is_sorted_by(|a, b| a.1 >= b.1));
    }
    let different: BTreeSet<String> = tasks.iter().map(|task| format!("{task:?}")).collect();
    assert_eq!(different.len(), tasks.len());
}

/// Whoever always takes what costs least now fares worse than by chance, which is one in four.
#[test]
fn the_cheapest_test_is_mostly_wrong() {
    let table = |place: &_| {
        let at = SUPPLIED_BOARDS
            .iter()
            .position(|supplied_board| supplied_board.place() == *place);
        at.map(|at| &TABLES[at])
    };
    let tasks = (0..40).filter_map(|seed| next_test::ask(&SUPPLIED_BOARDS, table, seed));
    let right: Vec<bool> = tasks
        .map(|task| next_test::mark(&task, next_test::cheapest(&task)).right)
        .collect();
    let count = right.iter().filter(|right| **right).count();
    println!("the cheapest is right in {count} of {}", right.len());
    assert!(right.len() >= 36 && 4 * count < right.len(), "{count}");
}

#[test]
fn without_a_table_nothing_is_asked() {
    assert_eq!(next_test::ask(&SUPPLIED_BOARDS, |_| None, 1), None);
}

/// Whatever the dial does, a try that was made is judged.
#[test]
fn every_try_is_over_at_its_end() {
    let seed = (0..).find(|seed| {
        entry::ask(&SUPPLIED_BOARDS, *seed)
            .wear
            .is_some_and(|wear| wear > 0.9)
    });
    let task = entry::ask(&SUPPLIED_BOARDS, seed.expect("one is drawn"));
    for seed in 0..60 {
        let task = task.again(seed * 7919);
        let mut bench = task.bench(&supplied_board(&task.place));
        for step in entry_steps(&task.gesture) {
            step.run(&mut bench).expect("a person can do this");
        }
        let marked = task.mark(bench.machine().tries(), bench.history().iter());
        assert!(marked.is_some(), "{seed}: {:?}", bench.machine().tries());
    }
}
