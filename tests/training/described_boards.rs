//! Boards that were described in words first and then written as files, none of them built in: each sentence of a
//! description is held against the machine. The three boards are our own inventions.

use crate::stage::hands::{HandAction, perform, tap};
use detent_content::{ContentLibrary, Language, Texts, read_board};
use detent_simulation::controller::{
    Board, ControlMode, EntryRule, LampPlacement, Outcome, Routine, Selector, Sign, StoredCode,
};
use detent_simulation::interface::{Button, Direction, Mains};
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::Bench;
use detent_training::bench::script::ScriptStep;
use detent_training::lesson::survey;
use detent_training::practice::drill::entry::{Rhythm, odds, slowest_ms};
use std::cell::RefCell;
use std::collections::BTreeSet;

/// A lid lock whose coil is open: no water stands behind the lid, and no bolt holds it.
const FAULT: &str = "lid-lock.open-winding";

/// A description, and the board that was written from it.
struct Described {
    content_library: ContentLibrary,
    board: Board,
    sentences: Vec<&'static str>,
    followed: RefCell<BTreeSet<&'static str>>,
}

impl Described {
    fn read(words: &'static str, file: &str) -> Described {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        let board = read_board("board.ron", file.as_bytes());
        let board = board.unwrap_or_else(|errors| panic!("{errors:?}"));
        assert!(content_library.board(&board.id).is_none(), "not built in");
        let sentences = words.lines().filter_map(|line| line.strip_prefix("- "));
        Described {
            content_library,
            board,
            sentences: sentences.collect(),
            followed: RefCell::default(),
        }
    }

    /// What follows holds this sentence against the board.
    #[track_caller]
    fn says(&self, sentence: &str) {
        let said = self.sentences.iter().find(|said| **said == sentence);
        let said = said.unwrap_or_else(|| panic!("the description does not say: {sentence}"));
        self.followed.borrow_mut().insert(said);
    }

    /// Nothing that the description says was left out.
    fn all_followed(&self) {
        let followed = self.followed.borrow();
        let left: Vec<_> = (self.sentences.iter())
            .filter(|said| !followed.contains(*said))
            .collect();
        assert!(left.is_empty() && !followed.is_empty(), "{left:?}");
    }

    /// A machine with this board, these codes and these faults, awake.
    fn bench(&self, codes: &[u8], faults: &[&str]) -> Bench {
        let mains = Mains::V230Hz50;
        let library = self.content_library.library_of(&self.board, mains);
        let named = |id: &&str| library.modes.iter().find(|mode| mode.id == **id);
        let faults = faults.iter().map(|id| named(id).expect("a known fault"));
        let mut setup = library.setup(mains.rating(), faults.cloned().collect(), 1);
        setup.memory.codes = codes
            .iter()
            .map(|code| StoredCode {
                code: *code,
                cycles_ago: 1,
            })
            .collect();
        let mut bench = Bench::new(setup);
        bench.wait(Span::from_s(3));
        bench
    }

    /// In the fault hold of its lock, with these codes stored before.
    fn held(&self, codes: &[u8]) -> Bench {
        let mut bench = self.bench(codes, &[FAULT]);
        survey::wash(&mut bench);
        assert_eq!(mode(&bench), ControlMode::Hold);
        bench
    }

    /// In service mode, by the script of an easy pace.
    fn in_service(&self, codes: &[u8]) -> Bench {
        let mut bench = self.bench(codes, &[]);
        let entered = survey::enter_service(&mut bench);
        assert!(entered, "{:?}", last_try(&bench));
        bench
    }

    /// Every code can be stored, is shown, and is read back from the lamps alone by the rules of the description; after
    /// the oldest the lamps are dark.
    fn every_code_is_read_back(&self, at: u8, read: impl Fn(&[u16]) -> Option<u8>) {
        let codes: Vec<u8> = self.board.codes.iter().map(|code| code.code).collect();
        let kept = usize::from(self.board.service.stored_codes);
        for some in codes.chunks(kept) {
            let mut bench = self.in_service(some);
            choose(&mut bench, at);
            let mut found = Vec::new();
            loop {
                let lamps = watch(&mut bench, 20);
                no_lamp_flashes_too_often(&lamps);
                if lamps[50..].iter().all(|lit| *lit == 0) {
                    break;
                }
                found.push(read(&lamps));
                assert!(found.len() <= kept, "{found:?}");
                script(&mut bench, ScriptStep::Tap(self.board.service.page));
            }
            let expected: Vec<_> = some.iter().map(|code| Some(*code)).collect();
            assert_eq!(found, expected);
        }
    }

    /// A customer's wash with the fault stores `code`, and the oldest of so many codes falls off the end.
    fn keeps(&self, kept: usize, code: u8) {
        let others = self.board.codes.iter().map(|other| other.code);
        let old: Vec<u8> = others.filter(|other| *other != code).take(kept).collect();
        let bench = self.held(&old);
        let memory = bench.machine().control().memory();
        let codes: Vec<u8> = memory.codes.iter().map(|stored| stored.code).collect();
        assert_eq!((codes.len(), codes[0]), (kept, code));
        assert_eq!(codes[1..], old[..kept - 1]);
    }

    /// A minute without power ends the hold; a tenth of it does not.
    fn power_ends_a_hold(&self) {
        let mut bench = self.held(&[]);
        for (seconds, then) in [(4, ControlMode::Hold), (60, ControlMode::Idle)] {
            hand(&mut bench, &[HandAction::Plug(false)]);
            wait(&mut bench, 1000 * seconds);
            hand(&mut bench, &[HandAction::Plug(true)]);
            wait(&mut bench, 3000);
            assert_eq!(mode(&bench), then, "{seconds} s");
        }
    }

    /// Most hands of the drill get in at the pace that suits them best, and a pace too slow for the window is none.
    fn most_hands_get_in(&self) {
        let gesture = &self.board.gesture;
        let slowest = slowest_ms(gesture);
        let share = |mean_ms: f64| {
            let spread_ms = 0.1 * mean_ms;
            let rhythm = Rhythm { mean_ms, spread_ms };
            odds(gesture, None, rhythm)
        };
        assert!(share(0.6 * slowest) > 0.9, "{slowest} ms");
        assert!(share(1.6 * slowest) < 0.1, "{slowest} ms");
    }
}

fn mode(bench: &Bench) -> ControlMode {
    bench.machine().control().control_status().mode
}

fn last_try(bench: &Bench) -> Option<Outcome> {
    let view = bench.machine().control().view();
    view.tries.last().map(|last| last.outcome)
}

fn hand(bench: &mut Bench, deeds: &[HandAction]) {
    for deed in deeds {
        perform(bench.machine_mut(), deed, |_| {});
    }
}

fn wait(bench: &mut Bench, ms: u64) {
    bench.wait(Span::from_ms(ms));
}

fn press(bench: &mut Bench, button: Button, ms: u64) {
    hand(bench, &[HandAction::Press(button, true)]);
    wait(bench, ms);
    hand(bench, &[HandAction::Press(button, false)]);
}

fn turn(bench: &mut Bench, way: Direction, detents: u8, every_ms: u64) {
    for n in 0..detents {
        if n > 0 {
            wait(bench, every_ms);
        }
        hand(bench, &[HandAction::Detent(way)]);
    }
}

fn script(bench: &mut Bench, step: ScriptStep) {
    step.run(bench).expect("it is free to do");
}

/// Starts what stands at a position of the menu.
fn choose(bench: &mut Bench, to: u8) {
    script(bench, ScriptStep::Point { to, every_ms: 250 });
    script(bench, ScriptStep::Rest { ms: 500 });
    script(bench, ScriptStep::Tap(Button::Start));
}

/// The lamps in each tick of so many seconds.
fn watch(bench: &mut Bench, seconds: u64) -> Vec<u16> {
    let mut lamps = Vec::new();
    for _ in 0..seconds * TICKS_PER_S {
        bench.step();
        lamps.push(bench.machine().outputs().lamps.code);
    }
    lamps
}

/// WCAG 2.2, success criterion 2.3.1: nothing flashes more than three times in any one second.
fn no_lamp_flashes_too_often(lamps: &[u16]) {
    for lamp in 0..16 {
        let lit = |code: &u16| code >> lamp & 1 == 1;
        for second in lamps.windows(TICKS_PER_S as usize) {
            let lightings = second
                .windows(2)
                .filter(|two| !lit(&two[0]) && lit(&two[1]));
            assert!(lightings.count() <= 3, "lamp {lamp}");
        }
    }
}

/// What an eye makes of lamps over a while in which they meant one thing: some stay lit, some come and go.
fn sign(lamps: &[u16]) -> Sign {
    let ever = lamps.iter().fold(0, |ever, lit| ever | lit);
    let lit = lamps.iter().fold(u16::MAX, |always, lit| always & lit);
    let blinks = ever & !lit;
    Sign { lit, blinks }
}

/// Two digits one after the other: what stands between a dark time of more than two seconds and the next, in two parts
/// that a dark time of more than half a second keeps apart.
fn digits(lamps: &[u16]) -> Option<[Sign; 2]> {
    let mut parts: Vec<(usize, &[u16])> = Vec::new();
    let mut dark = 0;
    let mut from = None;
    for (at, lit) in lamps.iter().enumerate() {
        if *lit != 0 {
            from = from.or(Some((dark, at)));
            dark = 0;
            continue;
        }
        dark += 1;
        if dark == 50
            && let Some((before, begun)) = from.take()
        {
            parts.push((before, &lamps[begun..=at - 50]));
        }
    }
    // Whole rounds only: each begins after a long dark time, and the one that was cut off by the look is left out.
    let first = parts.iter().skip(1).position(|(dark, _)| *dark > 200)? + 1;
    let [(_, tens), (between, units), ..] = parts[first..] else {
        return None;
    };
    assert!(between < 200, "{between}");
    Some([sign(tens), sign(units)])
}

/// A number of two digits by the rules for one.
fn number(lamps: &[u16], digit: impl Fn(Sign) -> Option<u8>) -> Option<u8> {
    let [tens, units] = digits(lamps)?;
    Some(10 * digit(tens)? + digit(units)?)
}

const fn lit(lit: u16) -> Sign {
    Sign { lit, blinks: 0 }
}

const fn blinking(blinks: u16) -> Sign {
    Sign { lit: 0, blinks }
}

/// Try after try on a fresh machine each: the outcome, and whether service mode was entered.
#[track_caller]
fn expect(described: &Described, rule: Option<EntryRule>, try_it: impl FnOnce(&mut Bench)) {
    let mut bench = described.bench(&[], &[]);
    wait(&mut bench, 2000);
    try_it(&mut bench);
    wait(&mut bench, 200);
    let entered = mode(&bench) == ControlMode::Service;
    let tries = bench.machine().control().view().tries;
    let outcomes: Vec<Outcome> = tries.iter().map(|attempt| attempt.outcome).collect();
    assert_eq!(entered, rule.is_none(), "{outcomes:?}");
    // What a hand goes on with after its mistake may look like another try.
    let broke = outcomes.iter().find_map(|outcome| match outcome {
        Outcome::Broken(error) => Some(error.rule()),
        Outcome::Open | Outcome::Entered | Outcome::InHold => None,
    });
    assert_eq!(broke, rule, "{outcomes:?}");
}

/// A hand at the tower; by itself it does all as described.
struct TowerHand {
    at: u8,
    stood_ms: u64,
    held_ms: u64,
    way: Direction,
    detents: u8,
    /// From letting Stop go to the turn, from the turn to the first press, from the one press to the other.
    waits_ms: [u64; 3],
}

impl TowerHand {
    const RIGHT: TowerHand = TowerHand {
        at: 3,
        stood_ms: 2500,
        held_ms: 2200,
        way: Direction::Right,
        detents: 2,
        waits_ms: [500, 500, 500],
    };

    fn try_it(&self, bench: &mut Bench) {
        hand(bench, &[HandAction::Plug(false)]);
        wait(bench, 90_000);
        turn(bench, Direction::Right, self.at, 200);
        wait(bench, self.stood_ms);
        hand(bench, &[HandAction::Press(Button::Stop, true)]);
        hand(bench, &[HandAction::Plug(true)]);
        while !bench.machine().control().powered() {
            bench.step();
        }
        wait(bench, self.held_ms);
        hand(bench, &[HandAction::Press(Button::Stop, false)]);
        wait(bench, self.waits_ms[0]);
        turn(bench, self.way, self.detents, 250);
        for ms in &self.waits_ms[1..] {
            wait(bench, *ms);
            press(bench, Button::Start, 150);
        }
    }
}

#[test]
fn the_tower_is_as_described() {
    let tower = Described::read(
        include_str!("../boards/tower.md"),
        include_str!("../boards/tower.ron"),
    );
    let board = &tower.board;

    tower.says("A rotary switch of eight positions chooses the program.");
    assert_eq!(board.panel.selector, Selector::Switch { positions: 8 });
    tower.says("Five lamps stand in a column, and there is no lock lamp.");
    assert_eq!(board.lamps.signs.lamps(), 5);
    let down: Vec<(u8, u8)> = (0..5).map(|row| (0, row)).collect();
    assert_eq!(board.lamps.placement.places(5), Some(down));
    assert!(!board.lamps.lock_lamp);

    tower.says("One to five is so many lamps lit, counted from the bottom.");
    tower.says("Six to nine is one to four lamps blinking, counted from the bottom.");
    tower.says("A nought is the lowest and the highest lamp, lit.");
    let from_bottom = |n: u8| (1_u16 << n) - 1;
    let digit = |seen: Sign| {
        let is = |digit: &u8| match digit {
            0 => seen == lit(0b10001),
            1..=5 => seen == lit(from_bottom(*digit)),
            _ => seen == blinking(from_bottom(digit - 5)),
        };
        (0..10).find(is)
    };
    tower.says("The menu has eight places and leaves out what does not fit: the codes are at 0, and recalibration is at 7.");
    assert_eq!(board.menu.len(), 8);
    assert_eq!(board.routine_at(0), Some(Routine::Recall));
    assert_eq!(board.routine_at(7), Some(Routine::Recalibrate));
    tower.every_code_is_read_back(0, |lamps| number(lamps, digit));
    let mut bench = tower.in_service(&[]);
    choose(&mut bench, 7);
    assert!(bench.machine().control().control_status().calibrating);

    tower.says("A number comes one digit at a time: the tens for two seconds, one second dark, the units for two seconds, three seconds dark, and again.");
    let mut bench = tower.in_service(&[33]);
    choose(&mut bench, 0);
    let lamps = watch(&mut bench, 20);
    let begins = lamps.windows(2).position(|two| two[0] == 0 && two[1] != 0);
    let begins = begins.expect("it is shown");
    let edges: Vec<usize> = (begins..lamps.len())
        .filter(|at| (lamps[*at] == 0) != (lamps[*at - 1] == 0))
        .collect();
    let spans: Vec<usize> = edges.windows(2).map(|two| two[1] - two[0]).collect();
    let round = [200, 100, 200, 300];
    let shift = (0..4).find(|shift| {
        spans[..5]
            .iter()
            .zip(round.iter().cycle().skip(*shift))
            .all(|(a, b)| a == b)
    });
    assert!(shift.is_some(), "{spans:?}");

    let (right, go) = (TowerHand::RIGHT, |rule, hand: TowerHand| {
        expect(&tower, rule, |bench| hand.try_it(bench));
    });
    go(None, right);
    tower.says("To enter the service program, leave the switch at position 3 for at least two seconds without power.");
    go(
        None,
        TowerHand {
            stood_ms: 2000,
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::StoodTooShort),
        TowerHand {
            stood_ms: 1000,
            ..TowerHand::RIGHT
        },
    );
    for at in [2, 4] {
        go(
            Some(EntryRule::StoodTooShort),
            TowerHand {
                at,
                ..TowerHand::RIGHT
            },
        );
    }
    tower.says("Give power with Stop held, and let it go after one and a half to three seconds.");
    for (held_ms, rule) in [
        (1400, Some(EntryRule::HoldTooShort)),
        (1500, None),
        (2900, None),
        (3050, Some(EntryRule::Late)),
    ] {
        go(
            rule,
            TowerHand {
                held_ms,
                ..TowerHand::RIGHT
            },
        );
    }
    tower.says("Turn two positions to the right.");
    go(
        Some(EntryRule::TooFewDetents),
        TowerHand {
            detents: 1,
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::TooManyDetents),
        TowerHand {
            detents: 3,
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::WrongWay),
        TowerHand {
            way: Direction::Left,
            ..TowerHand::RIGHT
        },
    );
    tower.says("Press Start twice in the four seconds that follow.");
    go(
        None,
        TowerHand {
            waits_ms: [500, 500, 3100],
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        TowerHand {
            waits_ms: [500, 500, 3400],
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        TowerHand {
            waits_ms: [500, 4100, 300],
            ..TowerHand::RIGHT
        },
    );
    tower.says("All of it takes at most twelve seconds.");
    go(
        None,
        TowerHand {
            waits_ms: [5900, 1500, 1500],
            ..TowerHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        TowerHand {
            waits_ms: [6300, 1500, 1500],
            ..TowerHand::RIGHT
        },
    );
    tower.most_hands_get_in();

    tower.says("It keeps four codes, the newest first.");
    tower.says("A lid lock whose coil is open stores 38.");
    tower.keeps(4, 38);
    tower.says("Four moves of the lid in eight seconds, up and down counted alike, end a stop after a fault.");
    for (moves, every_ms, then) in [
        (3, 2000, ControlMode::Hold),
        (4, 2600, ControlMode::Idle),
        (4, 2800, ControlMode::Hold),
    ] {
        let mut bench = tower.held(&[]);
        for n in 0..moves {
            hand(&mut bench, &[HandAction::Lid(n % 2 == 0)]);
            wait(&mut bench, every_ms);
        }
        assert_eq!(mode(&bench), then, "{moves} moves, one in {every_ms} ms");
    }
    tower.says("A minute without power ends it as well.");
    tower.power_ends_a_hold();
    tower.all_followed();
}

/// A hand at the six-field board; by itself it does all as described.
struct SixFieldHand {
    /// The one that goes down first, and the other.
    pair: [Button; 2],
    apart_ms: u64,
    held_ms: u64,
    /// From the one button to the other coming up.
    lag_ms: u64,
    then: [Button; 2],
    /// From the step before to each press, and how long each lasts.
    waits_ms: [u64; 2],
    press_ms: u64,
}

impl SixFieldHand {
    const RIGHT: SixFieldHand = SixFieldHand {
        pair: [Button::Start, Button::Stop],
        apart_ms: 100,
        held_ms: 2800,
        lag_ms: 50,
        then: [Button::More, Button::Less],
        waits_ms: [1500, 600],
        press_ms: 150,
    };

    fn try_it(&self, bench: &mut Bench) {
        let pair = self.pair;
        hand(bench, &[HandAction::Press(pair[0], true)]);
        wait(bench, self.apart_ms);
        hand(bench, &[HandAction::Press(pair[1], true)]);
        wait(bench, self.held_ms);
        hand(bench, &[HandAction::Press(pair[0], false)]);
        wait(bench, self.lag_ms);
        hand(bench, &[HandAction::Press(pair[1], false)]);
        for (button, ms) in self.then.into_iter().zip(self.waits_ms) {
            wait(bench, ms);
            press(bench, button, self.press_ms);
        }
    }
}

#[test]
fn the_six_field_board_is_as_described() {
    let fields = Described::read(
        include_str!("../boards/six-field.md"),
        include_str!("../boards/six-field.ron"),
    );
    let board = &fields.board;

    fields.says("There is no knob: More and Less step through the programs and the routines.");
    assert_eq!(board.panel.selector, Selector::Steps);
    let mut bench = fields.bench(&[], &[]);
    let position = |bench: &Bench| bench.machine().control().position();
    let first = position(&bench);
    hand(&mut bench, &tap(Button::More, 15));
    assert_ne!(position(&bench), first);
    hand(&mut bench, &tap(Button::Less, 15));
    assert_eq!(position(&bench), first);
    fields.says("Six lamps stand in two rows of three, and a lock lamp beside them.");
    let places = [(0, 0), (1, 0), (2, 0), (0, 1), (1, 1), (2, 1)];
    assert_eq!(board.lamps.placement.places(6), Some(places.to_vec()));
    assert!(board.lamps.lock_lamp);

    fields.says("Each code has a picture of its own, and from 51 on one of its lamps blinks.");
    let drawn: BTreeSet<(u16, u16)> = (board.codes.iter())
        .map(|code| board.lamps.signs.sign(code.code).expect("a picture"))
        .map(|sign| (sign.lit, sign.blinks))
        .collect();
    assert_eq!(drawn.len(), board.codes.len());
    fields.every_code_is_read_back(1, |lamps| {
        let seen = sign(&lamps[100..]);
        let of = |code: u8| board.lamps.signs.sign(code) == Some(seen);
        let code = board
            .codes
            .iter()
            .map(|code| code.code)
            .find(|code| of(*code))?;
        assert_eq!(seen.blinks.count_ones(), u32::from(code >= 51));
        Some(code)
    });

    let go = |rule, hand: SixFieldHand| expect(&fields, rule, |bench| hand.try_it(bench));
    go(None, SixFieldHand::RIGHT);
    fields.says("To enter the service program, press Start and Stop in the same moment, no more than three tenths of a second apart.");
    go(
        None,
        SixFieldHand {
            apart_ms: 0,
            ..SixFieldHand::RIGHT
        },
    );
    go(
        None,
        SixFieldHand {
            pair: [Button::Stop, Button::Start],
            apart_ms: 290,
            ..SixFieldHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        SixFieldHand {
            apart_ms: 320,
            ..SixFieldHand::RIGHT
        },
    );
    fields.says("Hold both for two to four seconds.");
    for (held_ms, rule) in [
        (1900, Some(EntryRule::HoldTooShort)),
        (2020, None),
        (3980, None),
        (4050, Some(EntryRule::HoldTooLong)),
    ] {
        go(
            rule,
            SixFieldHand {
                held_ms,
                ..SixFieldHand::RIGHT
            },
        );
    }
    fields.says("Then leave everything alone for at least one second.");
    go(
        Some(EntryRule::TooSoon),
        SixFieldHand {
            waits_ms: [900, 600],
            ..SixFieldHand::RIGHT
        },
    );
    go(
        None,
        SixFieldHand {
            waits_ms: [1050, 600],
            ..SixFieldHand::RIGHT
        },
    );
    fields.says("Then press More and Less once each, in either order, each within four seconds.");
    go(
        None,
        SixFieldHand {
            then: [Button::Less, Button::More],
            ..SixFieldHand::RIGHT
        },
    );
    for button in [Button::More, Button::Less] {
        go(
            Some(EntryRule::OutOfOrder),
            SixFieldHand {
                then: [button, button],
                ..SixFieldHand::RIGHT
            },
        );
    }
    go(
        Some(EntryRule::Late),
        SixFieldHand {
            waits_ms: [4100, 600],
            ..SixFieldHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        SixFieldHand {
            waits_ms: [1500, 4100],
            ..SixFieldHand::RIGHT
        },
    );
    fields.says("All of it takes at most twelve seconds.");
    let slow = |held_ms, rule| {
        let hand = SixFieldHand {
            apart_ms: 290,
            lag_ms: 210,
            held_ms,
            press_ms: 200,
            waits_ms: [3700, 3700],
            ..SixFieldHand::RIGHT
        };
        go(rule, hand);
    };
    slow(3500, None);
    slow(3850, Some(EntryRule::Late));
    fields.most_hands_get_in();

    fields.says("The list of routines is short: codes, clearing, pump, spin, lock, recalibration.");
    let routines: Vec<Routine> = board.menu.iter().map(|entry| entry.routine).collect();
    let short = [
        Routine::Recall,
        Routine::Clear,
        Routine::TestPump,
        Routine::TestSpin,
        Routine::TestLock,
        Routine::Recalibrate,
    ];
    assert_eq!(routines, short);
    fields.says("It keeps three codes, the newest first.");
    fields.says("A lid lock whose coil is open stores 31.");
    fields.keeps(3, 31);
    fields.says(
        "Less held for three seconds ends a stop after a fault, and moving the lid does nothing.",
    );
    let mut bench = fields.held(&[]);
    for n in 0..8 {
        hand(&mut bench, &[HandAction::Lid(n % 2 == 0)]);
        wait(&mut bench, 700);
    }
    press(&mut bench, Button::Less, 2900);
    wait(&mut bench, 500);
    assert_eq!(mode(&bench), ControlMode::Hold);
    press(&mut bench, Button::Less, 3200);
    wait(&mut bench, 500);
    assert_eq!(mode(&bench), ControlMode::Idle);
    fields.all_followed();
}

/// A hand at the kite; by itself it does all as described.
struct KiteHand {
    from: u8,
    rest_ms: u64,
    way: Direction,
    detents: u8,
    gap_ms: u64,
    /// From the turn to the lid going up, from there to its going down, from there to Start.
    waits_ms: [u64; 3],
    held_ms: u64,
}

impl KiteHand {
    const RIGHT: KiteHand = KiteHand {
        from: 5,
        rest_ms: 1500,
        way: Direction::Right,
        detents: 3,
        gap_ms: 500,
        waits_ms: [800, 800, 800],
        held_ms: 1400,
    };

    fn try_it(&self, bench: &mut Bench) {
        turn(bench, Direction::Right, self.from, 200);
        wait(bench, self.rest_ms);
        turn(bench, self.way, self.detents, self.gap_ms);
        for (open, ms) in [true, false].into_iter().zip(self.waits_ms) {
            wait(bench, ms);
            hand(bench, &[HandAction::Lid(open)]);
        }
        wait(bench, self.waits_ms[2]);
        press(bench, Button::Start, self.held_ms);
    }
}

#[test]
fn the_kite_is_as_described() {
    let kite = Described::read(
        include_str!("../boards/kite.md"),
        include_str!("../boards/kite.ron"),
    );
    let board = &kite.board;

    kite.says("A dial of sixteen detents chooses the program.");
    assert_eq!(board.panel.selector, Selector::Dial { detents: 16 });
    kite.says("Four lamps stand like the corners of a kite, each with its number beside it, and there is a lock lamp.");
    let LampPlacement::Free(places) = &board.lamps.placement else {
        panic!("{:?}", board.lamps.placement);
    };
    let [top, right, bottom, left] = places[..] else {
        panic!("{places:?}");
    };
    assert!(top.0 == bottom.0 && top.1 < left.1 && left.1 == right.1 && right.1 < bottom.1);
    assert!(board.lamps.lock_lamp);
    let texts = Texts::load(Language::En);
    let first = texts.lamp_signs(&board.lamps.signs, &board.lamps.placement, &[lit(0b1000)]);
    assert!(first.contains("number beside"), "{first}");

    kite.says("One to four is the lamp of that number, lit.");
    kite.says("Five to eight is lamp one to four, blinking.");
    kite.says("A nought is all four lit, and a nine is all four blinking.");
    kite.says("A number comes one digit at a time: tens, a short dark gap, units, a longer pause.");
    let lamp = |n: u8| 0b1000_u16 >> (n - 1);
    let digit = |seen: Sign| {
        let is = |digit: &u8| match digit {
            0 => seen == lit(0b1111),
            1..=4 => seen == lit(lamp(*digit)),
            9 => seen == blinking(0b1111),
            _ => seen == blinking(lamp(digit - 4)),
        };
        (0..10).find(is)
    };
    kite.every_code_is_read_back(1, |lamps| number(lamps, digit));

    let go = |rule, hand: KiteHand| expect(&kite, rule, |bench| hand.try_it(bench));
    go(None, KiteHand::RIGHT);
    kite.says("To enter the service program, point the dial at 5 and leave it alone for a second.");
    for hand in [
        KiteHand {
            from: 4,
            ..KiteHand::RIGHT
        },
        KiteHand {
            from: 6,
            ..KiteHand::RIGHT
        },
        KiteHand {
            rest_ms: 600,
            ..KiteHand::RIGHT
        },
    ] {
        let mut bench = kite.bench(&[], &[]);
        hand.try_it(&mut bench);
        wait(&mut bench, 300);
        assert_eq!(mode(&bench), ControlMode::Idle);
    }
    kite.says("Turn three detents to the right, with at least three tenths of a second from one to the next.");
    go(
        None,
        KiteHand {
            gap_ms: 300,
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::TooSoon),
        KiteHand {
            gap_ms: 280,
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::TooFewDetents),
        KiteHand {
            detents: 2,
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::TooManyDetents),
        KiteHand {
            detents: 4,
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::WrongWay),
        KiteHand {
            way: Direction::Left,
            ..KiteHand::RIGHT
        },
    );
    kite.says("Open the lid within four seconds, and close it within four.");
    go(
        None,
        KiteHand {
            waits_ms: [3900, 3900, 800],
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        KiteHand {
            waits_ms: [4050, 800, 800],
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        KiteHand {
            waits_ms: [800, 4050, 800],
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::TooSoon),
        KiteHand {
            waits_ms: [200, 800, 800],
            ..KiteHand::RIGHT
        },
    );
    kite.says("Hold Start for one to two seconds.");
    for (held_ms, rule) in [
        (950, Some(EntryRule::HoldTooShort)),
        (1020, None),
        (1980, None),
        (2050, Some(EntryRule::HoldTooLong)),
    ] {
        go(
            rule,
            KiteHand {
                held_ms,
                ..KiteHand::RIGHT
            },
        );
    }
    kite.says("All of it takes at most fifteen seconds.");
    go(
        None,
        KiteHand {
            waits_ms: [3500, 3500, 5000],
            ..KiteHand::RIGHT
        },
    );
    go(
        Some(EntryRule::Late),
        KiteHand {
            waits_ms: [3500, 3500, 5700],
            ..KiteHand::RIGHT
        },
    );
    kite.most_hands_get_in();

    kite.says("It keeps nine codes, the newest first.");
    kite.says("A lid lock whose coil is open stores 39.");
    kite.keeps(9, 39);
    kite.says(
        "Only a minute without power ends a stop after a fault: neither a button nor the lid does.",
    );
    let mut bench = kite.held(&[]);
    for n in 0..8 {
        hand(&mut bench, &[HandAction::Lid(n % 2 == 0)]);
        wait(&mut bench, 700);
    }
    for button in [Button::Stop, Button::Start] {
        press(&mut bench, button, 8000);
        wait(&mut bench, 500);
    }
    assert_eq!(mode(&bench), ControlMode::Hold);
    kite.power_ends_a_hold();
    kite.all_followed();
}
