//! A board is described by clicks, keys and typed words alone, in both languages.

use super::*;
use crate::panels::workshop::tests::{Bench, bench, click};
use bevy_egui::egui::{Event, Key, Modifiers, PointerButton, Pos2};
use detent_content::{Language, Texts, read_own_board};
use detent_simulation::controller::{GestureStep, LampPlacement, Signs};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

fn open<'h>(harness: &'h Harness<'_, Bench>) -> &'h BoardWorkshop {
    harness.state().workshop.board.as_ref().expect("open")
}

/// A copy of a board of this name is taken up.
fn begin(harness: &mut Harness<'_, Bench>, texts: &Texts, board: &str) {
    click(harness, &texts.get(board));
    click(harness, &texts.get("workshop-board-copy"));
    assert_eq!(open(harness).mistakes(), []);
}

fn pointer(harness: &mut Harness<'_, Bench>, pos: Pos2, pressed: bool) {
    harness.event(Event::PointerMoved(pos));
    harness.event(Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    });
    harness.run_steps(2);
}

fn places(harness: &Harness<'_, Bench>) -> Vec<(u8, u8)> {
    match &open(harness).board().lamps.placement {
        LampPlacement::Free(places) => places.clone(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_board_is_described_and_kept_by_clicks_and_keys_alone() {
    for language in Language::ALL {
        let folder = tempfile::tempdir().expect("a folder");
        let texts = Texts::load(language);
        let mut harness = bench(language, folder.path());
        begin(&mut harness, &texts, "board-lone-lamp");
        // Other lamps, each where it is put.
        click(&mut harness, &texts.get("workshop-board-page-lamps"));
        click(&mut harness, &texts.get("workshop-board-signs-in-turn"));
        assert_eq!(open(&harness).board().lamps.signs.lamps(), 4);
        click(&mut harness, &texts.get("workshop-board-placed-free"));
        assert_eq!(open(&harness).mistakes(), []);
        let before = places(&harness);
        let label = |harness: &Harness<'_, Bench>| {
            let (across, down) = places(harness)[usize::from(open(harness).lamp)];
            let args = [
                ("lamp", Value::from(open(harness).lamp + 1)),
                ("across", across.into()),
                ("down", down.into()),
            ];
            texts.with("workshop-board-lamp-moves", &args)
        };
        // Arrow keys move the lamp that is chosen.
        click(&mut harness, "2");
        harness.get_by_label(&label(&harness)).focus();
        harness.run_steps(2);
        for key in [Key::ArrowDown, Key::ArrowDown, Key::ArrowLeft] {
            harness.key_press(key);
            harness.run_steps(2);
        }
        let moved = places(&harness);
        let by_keys = (before[1].0.saturating_sub(2), (before[1].1 + 4).min(100));
        assert_eq!(moved[1], by_keys);
        assert_eq!((moved[0], moved[2]), (before[0], before[2]));
        // A hand drags one across the console, as far as the field goes.
        let rect = harness.get_by_label(&label(&harness)).rect().shrink(6.0);
        pointer(&mut harness, rect.left_center(), true);
        let dragged = usize::from(open(&harness).lamp);
        harness.event(Event::PointerMoved(rect.left_top()));
        harness.run_steps(2);
        pointer(&mut harness, rect.left_top(), false);
        assert_eq!(places(&harness)[dragged], (0, 0));
        let others = |places: &[(u8, u8)]| [&places[..dragged], &places[dragged + 1..]].concat();
        assert_eq!(others(&places(&harness)), others(&moved));
        // A shorter way in.
        click(&mut harness, &texts.get("workshop-board-page-gesture"));
        let steps = open(&harness).board().gesture.steps.clone();
        let told = texts.gesture_step(&steps[3]);
        click(&mut harness, &format!("4.  {told}"));
        click(&mut harness, &texts.get("workshop-board-step-remove"));
        click(&mut harness, &texts.get("workshop-board-step-remove"));
        let expected: Vec<GestureStep> = [&steps[..3], &steps[5..]].concat();
        assert_eq!(open(&harness).board().gesture.steps, expected);
        assert_eq!(open(&harness).mistakes(), []);
        // It is kept, and jobs can be written for it at once.
        click(&mut harness, &texts.get("workshop-keep"));
        let file = folder.path().join("boards").join("own-board.ron");
        let kept = std::fs::read(&file).expect("kept");
        let board = read_own_board("own-board.ron", &kept).expect("sound");
        assert_eq!(&board, open(&harness).board());
        assert!(matches!(board.lamps.signs, Signs::InTurn { .. }));
        assert!(open(&harness).is_kept());
        click(&mut harness, &texts.get("workshop-leave"));
        click(&mut harness, &texts.get("workshop-new"));
        click(&mut harness, &texts.get("workshop-board-new-name"));
        let job = harness.state().workshop.open.as_ref().expect("a job");
        assert_eq!(job.scenario().board, "own-board");
    }
}

/// What is kept is found again.
#[test]
fn a_board_that_was_kept_is_gone_on_with() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = bench(Language::En, folder.path());
    begin(&mut harness, &texts, "board-arc-dial");
    click(&mut harness, &texts.get("workshop-keep"));
    click(&mut harness, &texts.get("workshop-leave"));
    click(&mut harness, "own-board");
    assert!(open(&harness).is_kept());
    // What is changed in it goes into the same file.
    click(&mut harness, &texts.get("workshop-board-page-service"));
    click(&mut harness, &texts.get("workshop-board-kept"));
    assert!(!open(&harness).is_kept());
    click(&mut harness, &texts.get("workshop-keep"));
    let library = harness.state().library.clone();
    assert_eq!(library.board("own-board"), Some(open(&harness).board()));
    assert_eq!(library.boards.len(), 4);
}

/// The number on the lamps is told in words, and moves on with the choice of a code.
#[test]
fn the_console_shows_a_number_and_says_it() {
    let folder = tempfile::tempdir().expect("a folder");
    for language in Language::ALL {
        let texts = Texts::load(language);
        let mut harness = bench(language, folder.path());
        for board in ["board-arc-dial", "board-key-pad", "board-lone-lamp"] {
            begin(&mut harness, &texts, board);
            let lamps = &open(&harness).board().lamps;
            let number = open(&harness).number;
            let words = texts.number_on_lamps(&lamps.signs, &lamps.placement, number);
            let words = texts.with("lamps-seen", &[("lamps", words.into())]);
            harness.get_by_label(&words);
            // Another code is chosen in the list of codes.
            click(&mut harness, &texts.get("workshop-board-page-codes"));
            let code = open(&harness).board().codes[7].clone();
            let meaning = texts.get(&format!("monitor-{}", code.monitor));
            click(&mut harness, &format!("{:02}  {meaning}", code.code));
            assert_eq!(open(&harness).number, code.code);
            assert_eq!(open(&harness).monitor, code.monitor);
            click(&mut harness, &texts.get("workshop-leave"));
        }
    }
}

/// A text that cannot be read says where, leaves the last good board on the console and is taken back.
#[test]
fn a_mistake_in_the_text_is_told_with_its_line() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = bench(Language::En, folder.path());
    begin(&mut harness, &texts, "board-lone-lamp");
    harness.run_steps(3);
    let library = harness.state().library.clone();
    let spoiled = open(&harness).text().replace("tap_ms: 800", "tap_ms: soon");
    let board = harness.state_mut().workshop.board.as_mut().expect("open");
    board.write(&library, spoiled.clone());
    harness.run_steps(3);
    harness.get_by_label_contains("Line 9, tap_ms:");
    harness.get_by_label(&texts.get("workshop-board-unreadable"));
    // It is shown as it is written.
    click(&mut harness, &texts.get("workshop-board-page-text"));
    assert_eq!(open(&harness).text(), spoiled);
    click(&mut harness, &texts.get("workshop-undo"));
    assert_eq!(open(&harness).mistakes(), []);
}

/// The own hand tries the gesture as it is described, and the share of simulated hands stands beside it.
#[test]
fn hands_try_the_gesture() {
    let folder = tempfile::tempdir().expect("a folder");
    let texts = Texts::load(Language::En);
    let mut harness = bench(Language::En, folder.path());
    begin(&mut harness, &texts, "board-key-pad");
    click(&mut harness, &texts.get("workshop-board-page-gesture"));
    let board = harness.state_mut().workshop.board.as_mut().expect("open");
    board.wait_for_shares();
    harness.run_steps(3);
    harness.get_by_label_contains("A practiced hand:");
    // What follows the shares keeps the keys while they are being found and once they are.
    let try_it = texts.get("workshop-board-hand-try");
    harness.get_by_label(&try_it).focus();
    harness.run_steps(2);
    for known in [false, true] {
        let board = harness.state_mut().workshop.board.as_mut().expect("open");
        match known {
            true => board.wait_for_shares(),
            false => board.forget_shares(),
        }
        harness.run_steps(1);
        let waiting = harness.query_by_label_contains("A practiced hand: …");
        assert_eq!(waiting.is_none(), known);
        assert!(harness.get_by_label(&try_it).is_focused(), "{known}");
    }
    click(&mut harness, &texts.get("workshop-board-hand-try"));
    let board = harness.state_mut().workshop.board.as_mut().expect("open");
    let hand = board.hand.as_mut().expect("begun");
    hand.trial.play(true);
    harness.run_steps(3);
    harness.get_by_label(&texts.get("workshop-board-hand-in"));
    click(&mut harness, &texts.get("workshop-board-hand-again"));
    let is_over = |harness: &Harness<'_, Bench>| {
        let hand = open(harness).hand.as_ref().expect("begun");
        hand.trial.marked.is_some()
    };
    assert!(!is_over(&harness));
    assert_eq!(
        open(&harness).hand.as_ref().map(|hand| hand.tries.len()),
        Some(1)
    );
    click(&mut harness, &texts.get("workshop-board-hand-back"));
    assert!(open(&harness).hand.is_none());
}
