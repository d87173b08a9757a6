//! Mistakes in a board's file: each a typed error with file, line and field.

use detent_content::{
    ContentError, KnownBoard, Language, Problem, Texts, builtin, mode_pictures, read_board,
};
use detent_simulation::controller::{BoardFault, GestureStep, Routine, Signs};
use detent_simulation::interface::{Button, Mains};
use proptest::prelude::*;

const FILE: &str = "assets/boards/arc-dial.ron";

fn text() -> &'static str {
    builtin::text(FILE).expect("the board is built in")
}

/// The board with its one `old` replaced, and the line where `new` then stands.
#[track_caller]
fn bad(old: &str, new: &str) -> (Vec<ContentError>, usize) {
    assert_eq!(
        text().matches(old).count(),
        1,
        "{old} stands once in the board"
    );
    let text = text().replace(old, new);
    let at = text.find(new).expect("it was put there");
    let errors = read_board("b.ron", text.as_bytes()).expect_err("it is wrong");
    for error in &errors {
        assert_eq!(error.file, "b.ron");
        assert!(error.line > 0 && error.column > 0, "{error}");
    }
    (errors, text[..at].matches('\n').count() + 1)
}

#[test]
fn every_board_is_sound_and_has_its_file_s_name() {
    let mut names = Vec::new();
    for (path, text) in builtin::in_folder("assets/boards") {
        let board =
            read_board(&path, text.as_bytes()).unwrap_or_else(|errors| panic!("{errors:?}"));
        let known = KnownBoard::of(&board);
        assert_eq!(path, format!("assets/boards/{}.ron", known.name));
        assert!(known.codes.iter().all(|code| code.code <= 99) && !known.codes.is_empty());
        names.push(known.name);
    }
    assert!(names.len() >= 3, "{names:?}");
}

/// Our own: no lamps weigh 8, 4, 2 and 1, and the first board's gesture turns its dial one way only.
#[test]
fn lamps_and_gesture_of_the_boards_are_their_own() {
    let mut weighed = 0;
    for (path, text) in builtin::in_folder("assets/boards") {
        let board = read_board(&path, text.as_bytes()).expect("a sound board");
        if let Signs::Weights { tens, units } = &board.lamps.signs {
            weighed += 1;
            for weights in [tens, units] {
                assert_ne!(weights[..], [8, 4, 2, 1], "{path}");
                // Every digit can be told all the same.
                let sums = (0..1_u32 << weights.len()).map(|lit| {
                    let on = weights.iter().enumerate();
                    let on = on.filter(|(n, _)| lit >> n & 1 == 1);
                    on.map(|(_, weight)| u32::from(*weight)).sum::<u32>()
                });
                let sums: Vec<u32> = sums.collect();
                assert!((0..=9).all(|digit| sums.contains(&digit)), "{path}");
            }
        }
        if path == FILE {
            let ways = board.gesture.steps.iter().filter_map(|step| match step {
                GestureStep::Turn { to, .. } => Some(*to),
                _ => None,
            });
            let ways: Vec<_> = ways.collect();
            assert!(ways.len() >= 2 && ways.iter().all(|way| *way == ways[0]));
        }
    }
    assert!(weighed > 0);
}

#[test]
fn two_codes_alike() {
    let board = read_board(FILE, text().as_bytes()).expect("sound");
    let (first, second) = (board.codes[0].code, board.codes[1].code);
    let (errors, line) = bad(&format!("code: {second},"), &format!("code: {first} ,"));
    let error = errors.iter().find(|e| e.field == "codes[1].code");
    let error = error.unwrap_or_else(|| panic!("{errors:?}"));
    assert_eq!(error.line, line, "{error}");
    assert!(error.to_string().contains("codes[0]"), "{error}");
}

#[test]
fn a_gesture_that_can_never_be_met() {
    let (errors, line) = bad("min_ms: 1000, max_ms: 2500", "min_ms: 2500, max_ms: 1000");
    assert!(
        errors
            .iter()
            .any(|e| e.line == line && e.field.starts_with("gesture.steps[3]")),
        "{errors:?}"
    );
    let (errors, line) = bad("within_ms: 5500", "within_ms: 10");
    assert!(
        errors
            .iter()
            .any(|e| e.line == line && e.field.starts_with("gesture")),
        "{errors:?}"
    );
}

#[test]
fn a_fault_hold_that_nothing_ends() {
    let (errors, line) = bad(
        "resets: (hold: Some((button: Stop, ms: 2000)), lid_cycle: None)",
        "resets: (hold: None, lid_cycle: None, kept: true)",
    );
    let place = (errors[0].line, errors[0].field.as_str());
    assert_eq!(place, (line, "resets.kept"), "{errors:?}");
}

/// A supply that the board is made for needs levels, one that it is not made for has none.
#[test]
fn a_supply_without_levels_and_levels_without_a_supply() {
    let unmatched = |errors: &[ContentError], line, field, mains| {
        let error = errors.iter().find(|error| error.field == field);
        let error = error.unwrap_or_else(|| panic!("{field}: {errors:?}"));
        assert_eq!(error.line, line, "{error}");
        let expected = Problem::Board(Box::new(BoardFault::SupplyUnmatched(mains)));
        assert_eq!(error.problem, expected);
    };
    let levels = "        V230Hz50: (reset_v: 50.0, sag_v: 212.0),\n    },";
    let (errors, line) = bad(levels, "\n    },");
    unmatched(&errors, line - 2, "supply", Mains::V230Hz50);
    let (errors, line) = bad(
        "mains: [V120Hz60, V230Hz50],",
        "mains: [V120Hz60],          ",
    );
    let at = text()
        .lines()
        .position(|line| line.contains("V230Hz50: (reset_v"));
    assert!(at.is_some_and(|at| at > line));
    let line = at.map_or(0, |at| at + 1);
    unmatched(&errors, line, "supply[V230Hz50]", Mains::V230Hz50);
    let (errors, line) = bad(
        "V120Hz60: (reset_v: 50.0, sag_v: 110.0)",
        "V120Hz60: (reset_v: 50.0, sag_v:  40.0)",
    );
    let place = (errors[0].line, errors[0].field.as_str());
    assert_eq!(place, (line, "supply[V120Hz60].sag_v"), "{errors:?}");
}

/// What the newer words of the language can be wrong in: each mistake in a sound board is told at its line and field.
#[test]
fn each_mistake_in_the_newer_words_is_told_at_its_field() {
    let tower = include_str!("../boards/tower.ron");
    let fields = include_str!("../boards/six-field.ron");
    let kite = include_str!("../boards/kite.ron");
    let told = |text: &str, old: &str, new: &str, field: &str, fault: BoardFault| {
        assert_eq!(text.matches(old).count(), 1, "{old}");
        let text = text.replace(old, new);
        let errors = read_board("b.ron", text.as_bytes()).expect_err(new);
        let expected = Problem::Board(Box::new(fault));
        let error = errors.iter().find(|error| error.problem == expected);
        let error = error.unwrap_or_else(|| panic!("{new}: {errors:?}"));
        assert_eq!(error.field, field, "{error}");
        assert!(error.line > 1, "{error}");
    };
    let digits = "lamps.signs.digits";
    for (old, new, field, fault) in [
        (
            "(lit: 0b10001)",
            "()",
            &format!("{digits}[0]"),
            BoardFault::DarkDigit { digit: 0 },
        ),
        (
            "(lit: 0b00011)",
            "(lit: 0b00001)",
            &format!("{digits}[2]"),
            BoardFault::SameDigit { digit: 2, first: 1 },
        ),
        (
            "(blinks: 0b00011)",
            "(lit: 1, blinks: 0b00011)",
            &format!("{digits}[7]"),
            BoardFault::LampTwice { lamps: 1 },
        ),
        (
            "                (lit: 0b11111),\n",
            "",
            &digits.to_owned(),
            BoardFault::DigitCount { digits: 9 },
        ),
        (
            "gap_ms: 1000",
            "gap_ms: 400",
            &"lamps.signs.gap_ms".to_owned(),
            BoardFault::Bounds {
                value: 400.0,
                above: 499.0,
                below: f64::INFINITY,
            },
        ),
        (
            "service: Number",
            "service: NumberAnd(1)",
            &"lamps.service".to_owned(),
            BoardFault::NumberTakesTime,
        ),
        (
            "(position: 7, routine: Recalibrate)",
            "(position: 7, routine: TestHot)",
            &"menu".to_owned(),
            BoardFault::NoRoutine(Routine::Recalibrate),
        ),
        (
            "(position: 0, routine: Recall)",
            "(position: 0, routine: TestHot)",
            &"menu".to_owned(),
            BoardFault::NoRoutine(Routine::Recall),
        ),
        (
            "stored_codes: 4",
            "stored_codes: 21",
            &"service.stored_codes".to_owned(),
            BoardFault::Bounds {
                value: 21.0,
                above: 0.0,
                below: 21.0,
            },
        ),
        (
            "standing: Some((at: 3,",
            "standing: Some((at: 8,",
            &"gesture.steps[0].standing".to_owned(),
            BoardFault::NoPosition {
                position: 8,
                positions: 8,
            },
        ),
        (
            "selector: Switch(positions: 8)",
            "selector: Dial(detents: 8)",
            &"gesture.steps[0].standing".to_owned(),
            BoardFault::StandingUnseen,
        ),
        (
            "moves: 4, within_ms: 8000",
            "moves: 4, within_ms: 100",
            &"resets.lid_moves.within_ms".to_owned(),
            BoardFault::GestureTooShort {
                least_ms: 180,
                window_ms: 100,
            },
        ),
    ] {
        told(tower, old, new, field, fault);
    }
    told(
        fields,
        "Grid(columns: 3)",
        "Free([(0, 0), (10, 20)])",
        "lamps.placement",
        BoardFault::PlaceCount {
            places: 2,
            lamps: 6,
        },
    );
    told(
        kite,
        "(90, 45)",
        "(52, 20)",
        "lamps.placement[1]",
        BoardFault::PlacesTooNear { first: 0 },
    );
    let keys = builtin::text("assets/boards/key-pad.ron").expect("built in");
    let hold = "hold: Turns(0x2000, 0x0040)";
    for (letters, field, fault) in [
        (
            "Letters('W', '-')",
            "lamps.hold.0",
            BoardFault::NoSuchLetter {
                character: 'W',
                nearest: 'U',
            },
        ),
        (
            "Letters('F', 'M')",
            "lamps.hold.1",
            BoardFault::NoSuchLetter {
                character: 'M',
                nearest: 'n',
            },
        ),
        (
            "Letters('2', '3')",
            "lamps.hold",
            BoardFault::LettersAreNumber('2', '3'),
        ),
        ("Letters(' ', ' ')", "lamps.hold", BoardFault::Empty),
    ] {
        told(keys, hold, &format!("hold: {letters}"), field, fault);
    }
    told(
        tower,
        "service: Number",
        "service: Letters('S', 'E')",
        "lamps.service",
        BoardFault::LettersWithoutSegments("in-turn"),
    );
    let steps = "        or_steps: [\n            Together(buttons: (Start, Stop),";
    told(
        fields,
        steps,
        "        or_steps: [\n            Together(buttons: (Start, Start),",
        "gesture.or_steps[0].buttons",
        BoardFault::OneButton(Button::Start),
    );
    told(
        fields,
        steps,
        "        or_steps: [\n            Pause(min_ms: 500), Together(buttons: (Start, Stop),",
        "gesture.or_steps[0].min_ms",
        BoardFault::PauseAlone,
    );
    told(
        fields,
        steps,
        "        or_steps: [\n            Lid(to: Up), Together(buttons: (Start, Stop),",
        "gesture.or_steps",
        BoardFault::OtherSteps,
    );
    let (errors, line) = bad("lock_lamp: true,", "lock_lamp: true, placement: Column,");
    let place = (errors[0].line, errors[0].field.as_str());
    assert_eq!(place, (line, "lamps.placement"), "{errors:?}");
}

/// A mode may be shown as two letters where there are segments, and is then told as them.
#[test]
fn letters_stand_for_a_mode_on_seven_segments() {
    let keys = builtin::text("assets/boards/key-pad.ron").expect("built in");
    let text = keys.replace("hold: Turns(0x2000, 0x0040)", "hold: Letters('F', '-')");
    let board = read_board("b.ron", text.as_bytes()).expect("it is sound");
    // F on the left, bits 7 to 13, and the middle bar on the right.
    assert_eq!(
        mode_pictures(&board.lamps.signs, board.lamps.hold),
        [0x71 << 7 | 0x40]
    );
    for (language, words) in [
        (Language::En, "the letters “F-”"),
        (Language::Es, "las letras «F-»"),
    ] {
        let texts = Texts::load(language);
        let told = texts.lamp_mode(&board.lamps.signs, ("hold", board.lamps.hold));
        assert_eq!(told, words);
        let lit = texts.code_lamps(&board.lamps.signs, 0x71 << 7 | 0x77);
        assert!(lit.contains('F') && lit.contains('A'), "{lit}");
    }
}

#[test]
fn a_monitor_that_does_not_exist() {
    let (errors, line) = bad(
        "monitor: FillNone, delay_ms",
        "monitor: FillNever, delay_ms",
    );
    let place = (errors[0].line, errors[0].field.as_str());
    assert_eq!(place, (line, "monitors[0].monitor"));
    assert!(
        matches!(&errors[0].problem, Problem::UnknownName { found, .. } if found == "FillNever")
    );
}

proptest! {
    #[test]
    fn no_flipped_bytes_make_the_reader_panic(
        flips in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..4),
    ) {
        let mut bytes = text().as_bytes().to_vec();
        for (at, byte) in flips {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        for error in read_board("b.ron", &bytes).err().unwrap_or_default() {
            prop_assert!(error.line >= 1 && error.column >= 1);
        }
    }
}
