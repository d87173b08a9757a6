//! Drills as somebody at the window does them: with keys, and by clicking.

use super::*;
use crate::drill::Recorded;
use crate::panels::tests::{Fixture as PanelsFixture, fixture};
use detent_content::Language;
use detent_simulation::controller::GestureStep;
use detent_simulation::interface::{Button as Knob, Direction};
use detent_training::practice::drill::hazard::HazardTask;
use detent_training::practice::drill::{
    QUESTIONS, RoundMarker, entry as entry_drill, meter as meter_drill, next_test,
    part as part_drill, proof, safe_work,
};
use detent_training::record::{DrillHeader, DrillText, read_drill_round};
use detent_training::without_breaks;
use egui::Event;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;

/// A drill under test with all that it needs.
struct Fixture {
    panels: PanelsFixture,
    learner: LearnerRes,
    drill: DrillRes,
    went: Option<Screen>,
}

fn harness<'a>(skill: Skill, seed: u64, language: Language) -> Harness<'a, Fixture> {
    let mut drill = DrillRes::default();
    drill.begin(skill, seed);
    let fixture = Fixture {
        panels: fixture(language),
        learner: LearnerRes::default(),
        drill,
        went: None,
    };
    let mut harness = Harness::builder()
        .with_size([1280.0, 720.0])
        .with_step_dt(0.01)
        .build_ui_state(
            |ui, fixture: &mut Fixture| {
                kit::apply_theme(ui.ctx());
                let context = &mut fixture.panels.context();
                let to = drill_ui(ui, context, &mut fixture.learner, &mut fixture.drill);
                fixture.went = to.or(fixture.went);
            },
            fixture,
        );
    harness.run_steps(2);
    harness
}

fn press(harness: &mut Harness<'_, Fixture>, key: Key) {
    harness.key_press(key);
    harness.run_steps(2);
}

fn click(harness: &mut Harness<'_, Fixture>, label: &str) {
    harness.get_by_label(label).click();
    harness.run_steps(2);
}

/// The key of a digit.
fn digit(n: usize) -> Key {
    let keys = [
        Key::Num0,
        Key::Num1,
        Key::Num2,
        Key::Num3,
        Key::Num4,
        Key::Num5,
        Key::Num6,
        Key::Num7,
        Key::Num8,
        Key::Num9,
    ];
    keys[n]
}

/// The present answer: right or not, if there is one.
fn answer(harness: &mut Harness<'_, Fixture>) -> Option<bool> {
    let sitting = harness.state_mut().drill.sitting()?;
    sitting.done.map(|done| done.right)
}

/// The present question's number, from 0.
fn number(harness: &mut Harness<'_, Fixture>) -> usize {
    let sitting = harness.state_mut().drill.sitting();
    sitting.map_or(0, |sitting| sitting.round.done().len())
}

/// The number that the lamps show.
fn shown(harness: &mut Harness<'_, Fixture>) -> usize {
    match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::Lamps(q) => usize::from(q.task.shown),
        _ => panic!("lamps are asked"),
    }
}

#[test]
fn lamps_are_read_with_the_keys() {
    let mut harness = harness(Skill::LampReading, 4, Language::En);
    let number_shown = shown(&mut harness);
    press(&mut harness, digit(number_shown / 10));
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), None, "one digit is no number");
    press(&mut harness, digit((number_shown + 3) % 10));
    press(&mut harness, Key::Backspace);
    press(&mut harness, digit(number_shown % 10));
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), Some(true));
    harness.get_by_label("Right");
    press(&mut harness, Key::Enter);
    assert_eq!((number(&mut harness), answer(&mut harness)), (1, None));
    harness.get_by_label("Question 2 of 10");
}

#[test]
fn lamps_are_read_by_clicking() {
    let mut harness = harness(Skill::LampReading, 5, Language::Es);
    let wrong = (shown(&mut harness) + 1) % 100;
    click(&mut harness, &(wrong / 10).to_string());
    click(&mut harness, &(wrong % 10).to_string());
    click(&mut harness, "Comprobar (Intro)");
    assert_eq!(answer(&mut harness), Some(false));
    harness.get_by_label("Incorrecto");
    click(&mut harness, "Siguiente (Intro)");
    assert_eq!(number(&mut harness), 1);
    let sitting = harness.state_mut().drill.sitting().expect("a round");
    assert_eq!(sitting.read.len(), 1);
}

#[test]
fn a_check_with_the_meter_is_chosen_row_by_row() {
    let mut harness = harness(Skill::Metering, 2, Language::En);
    let should = match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::Meter(q) => meter_drill::solve(&q.task),
        _ => panic!("the meter is asked for"),
    };
    let state = meter_drill::State::ALL
        .iter()
        .position(|s| *s == should.state);
    let mode = meter_drill::MODES.iter().position(|m| *m == should.mode);
    assert!(
        harness
            .query_by_label("Measured correctly, the meter shows:")
            .is_none()
    );
    press(&mut harness, digit(state.expect("offered") + 1));
    press(&mut harness, digit(mode.expect("offered") + 1));
    press(&mut harness, digit(should.range + 1));
    harness.get_by_label("Measured correctly, the meter shows:");
    let verdict = if should.within {
        "1  Within tolerance"
    } else {
        "2  Out of tolerance"
    };
    click(&mut harness, verdict);
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), Some(true));
    harness.get_by_label("The service sheet says:");
}

#[test]
fn suspects_are_ticked_with_keys_and_clicks() {
    let mut harness = harness(Skill::CodeLookUp, 1, Language::En);
    let (suspects, options) = match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::LookUp(q) => (q.task.suspects.clone(), q.task.options.clone()),
        _ => panic!("a code is asked for"),
    };
    for (n, suspect) in suspects.iter().enumerate() {
        let place = options.iter().position(|c| c == suspect).expect("offered");
        if n % 2 == 0 {
            press(&mut harness, digit((place + 1) % 10));
        } else {
            let name = harness
                .state()
                .panels
                .texts
                .get(&format!("component-{suspect}"));
            harness
                .get_by_role_and_label(egui::accesskit::Role::RadioButton, &name)
                .click();
            harness.run_steps(2);
        }
    }
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), Some(true));
    harness.get_by_label("All of them, and nothing else.");
    // The sheet lies beside the question.
    harness.get_by_label("The codes page of the service sheet:");
}

#[test]
fn a_part_is_chosen_and_each_other_one_is_explained() {
    let mut harness = harness(Skill::PartChoice, 3, Language::En);
    let (right, label) = match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::Part(q) => {
            let right = part_drill::mark(&q.task, 0).should;
            let part = &q.task.options[right];
            (right, (part.number.clone(), part.name_key.clone()))
        }
        _ => panic!("a part is asked for"),
    };
    press(&mut harness, digit((right + 1) % 5 + 1));
    let name = harness.state().panels.texts.get(&label.1);
    let text = format!("{}   {name}", label.0);
    harness
        .get_by_role_and_label(egui::accesskit::Role::RadioButton, &text)
        .click();
    harness.run_steps(2);
    click(&mut harness, "Check (Enter)");
    assert_eq!(answer(&mut harness), Some(true));
    harness.get_by_label("New, current, and it cures this fault on this machine.");
    let reasons = [
        "Wrong component",
        "Made for another machine",
        "An old number",
        "It is used",
        "It is rebuilt",
        "The kit fixes",
    ];
    let told: usize = reasons
        .iter()
        .map(|start| harness.query_all_by_label_contains(start).count())
        .sum();
    assert!(told >= 4, "{told} reasons");
}

/// The whole gesture of the arc-dial board with the keys, 200 ms a step.
#[test]
fn a_gesture_is_done_with_the_keys_and_its_rhythm_told() {
    let worn = |seed: &u64| {
        let mut drill = DrillRes::default();
        drill.begin(Skill::EntryTiming, *seed);
        match &drill.sitting().expect("a round").asked {
            Asked::Entry(trial) => trial.task.wear,
            _ => None,
        }
    };
    // A dial that is nearly new.
    let seed = (0..200).find(|seed| worn(seed).is_some_and(|wear| wear < 0.1));
    let mut harness = harness(
        Skill::EntryTiming,
        seed.expect("one is drawn"),
        Language::En,
    );
    harness.run_steps(150);
    let gesture = match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::Entry(trial) => trial.task.gesture.clone(),
        _ => panic!("a gesture is asked for"),
    };
    let key = |button| match button {
        Knob::Start => Key::S,
        Knob::Stop => Key::X,
        Knob::More => Key::I,
        Knob::Less => Key::K,
    };
    for step in gesture.steps {
        match step {
            GestureStep::Turn { to, detents, .. } => {
                let arrow = if to == Direction::Left {
                    Key::ArrowLeft
                } else {
                    Key::ArrowRight
                };
                for _ in 0..detents {
                    harness.key_press(arrow);
                    harness.run_steps(20);
                }
            }
            GestureStep::Press { button, .. } => {
                // Letting go is within the step.
                harness.key_down(key(button));
                harness.run_steps(8);
                harness.key_up(key(button));
                harness.run_steps(12);
            }
            GestureStep::Hold { button, min_ms, .. } => {
                harness.key_down(key(button));
                harness.run_steps(min_ms as usize / 10 + 30);
                harness.key_up(key(button));
                harness.run_steps(20);
            }
            _ => panic!("the arc-dial board has turns, a press and a hold"),
        }
    }
    assert_eq!(answer(&mut harness), Some(true));
    let sitting = harness.state_mut().drill.sitting().expect("a round");
    let marked: entry_drill::Marked = sitting.tries[0].clone();
    let rhythm = marked.rhythm.expect("many steps");
    // Two frames of a tick each are all that may be lost of it.
    assert!((rhythm.mean_ms - 200.0).abs() < 12.0, "{rhythm:?}");
    assert!(rhythm.spread_ms < 25.0, "{rhythm:?}");
    assert!(marked.odds.is_some_and(|odds| odds > 0.8), "{marked:?}");
    harness.get_by_label("Service mode entered");
    harness.get_by_label_contains("Your last rhythm:");
}

/// A finger turns by the big buttons: each time it comes down is one detent, whenever it is lifted.
#[test]
fn the_knob_turns_by_the_buttons_on_the_screen() {
    let mut harness = {
        let dial = |seed: &u64| {
            let mut drill = DrillRes::default();
            drill.begin(Skill::EntryTiming, *seed);
            matches!(&drill.sitting().expect("a round").asked, Asked::Entry(t) if t.task.wear.is_some())
        };
        let seed = (0..200).find(dial);
        harness(
            Skill::EntryTiming,
            seed.expect("one is drawn"),
            Language::En,
        )
    };
    let position = |harness: &mut Harness<'_, Fixture>| match &harness
        .state_mut()
        .drill
        .sitting()
        .expect("a round")
        .asked
    {
        Asked::Entry(trial) => trial.bench.view().machine.dial_position,
        _ => panic!("a gesture is asked for"),
    };
    let before = position(&mut harness);
    let middle = harness.get_by_label("Turn left").rect().center();
    for pressed in [true, false] {
        let button = egui::PointerButton::Primary;
        harness.event(Event::PointerMoved(middle));
        harness.event(Event::PointerButton {
            pos: middle,
            button,
            pressed,
            modifiers: Modifiers::NONE,
        });
        harness.run_steps(30);
    }
    let turn = 24;
    assert_eq!((before + turn - 1) % turn, position(&mut harness));
}

#[test]
fn the_next_test_says_what_each_choice_costs_or_that_there_is_no_table() {
    let mut harness = harness(Skill::NextTest, 1, Language::En);
    let best = match &harness.state_mut().drill.sitting().expect("a round").asked {
        Asked::NextTest(q) => Some(next_test::mark(&q.task, 0).should),
        _ => None,
    };
    let Some(best) = best else {
        harness.get_by_label_contains("There is nothing to ask about");
        press(&mut harness, Key::Enter);
        assert_eq!(harness.state().went, Some(Screen::Practice));
        return;
    };
    press(&mut harness, digit(best + 1));
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), Some(true));
    assert!(harness.query_all_by_label_contains("whole repair").count() >= 4);
}

#[test]
fn a_round_ends_with_its_summary_and_another_can_begin() {
    let mut harness = harness(Skill::LampReading, 9, Language::En);
    for n in 0..QUESTIONS {
        let wrong = usize::from(n == 3);
        let number = (shown(&mut harness) + wrong) % 100;
        press(&mut harness, digit(number / 10));
        press(&mut harness, digit(number % 10));
        press(&mut harness, Key::Enter);
        press(&mut harness, Key::Enter);
    }
    harness.get_by_label("9 of 10 right");
    harness.get_by_label("Which digit was read as which");
    click(&mut harness, "Another round");
    assert_eq!(number(&mut harness), 0);
    harness.get_by_label("Question 1 of 10");
    press(&mut harness, Key::Escape);
    assert_eq!(harness.state().went, Some(Screen::Practice));
}

/// Rounds of `skill` with their first questions, until each kind of question was asked.
fn rounds(skill: Skill) -> impl Iterator<Item = Harness<'static, Fixture>> {
    (1..=12).map(move |seed| harness(skill, seed, Language::En))
}

#[test]
fn steps_are_put_in_order_and_a_deed_is_judged_by_what_it_brings() {
    let (mut orders, mut deeds, mut pictures) = (0, 0, 0);
    for mut harness in rounds(Skill::SafeWork) {
        let Asked::SafeWork(q) = &harness.state_mut().drill.sitting().expect("a round").asked
        else {
            panic!("safe work is asked");
        };
        match &q.task {
            safe_work::SafeWorkTask::Order(_) => orders += 1,
            safe_work::SafeWorkTask::Deed(_) => deeds += 1,
            safe_work::SafeWorkTask::Hazard(_) => pictures += 1,
        }
        let keys = q.task.solve();
        for key in keys {
            press(&mut harness, digit((key + 1) % 10));
        }
        press(&mut harness, Key::Enter);
        assert_eq!(answer(&mut harness), Some(true));
        if orders > 0 && deeds > 0 && pictures > 0 {
            return;
        }
    }
    panic!("{orders} orders, {deeds} deeds and {pictures} pictures in twelve first questions");
}

/// A picture of safe work with what is in it.
fn picture(seed: u64, language: Language) -> (Harness<'static, Fixture>, HazardTask) {
    let mut harness = harness(Skill::SafeWork, seed, language);
    let boards = harness.state().drill.content();
    let asked = Asked::picture(&boards.supplied_boards(), seed);
    let Asked::SafeWork(q) = &asked else {
        panic!("safe work is asked");
    };
    let safe_work::SafeWorkTask::Hazard(task) = q.task.clone() else {
        panic!("a picture is asked about");
    };
    harness.state_mut().drill.sitting().expect("a round").asked = asked;
    harness.run_steps(2);
    (harness, task)
}

/// How a thing is told to whoever cannot see the picture.
fn told(harness: &Harness<'_, Fixture>, task: &HazardTask, n: usize) -> String {
    let texts = &harness.state().panels.texts;
    let state = task.objects[n];
    let name = texts.bench_object(state.object());
    format!("{name}: {}", texts.object_state(state, task.card_v))
}

#[test]
fn a_hazard_is_clicked_in_the_picture_and_told_with_what_to_do() {
    let (mut harness, task) = picture(3, Language::En);
    let right = safe_work::SafeWorkTask::Hazard(task.clone()).solve()[0];
    let wrong = (right + 1) % task.objects.len();
    for n in [right, wrong] {
        let label = told(&harness, &task, n);
        click(&mut harness, &label);
    }
    press(&mut harness, Key::Enter);
    assert_eq!(answer(&mut harness), Some(false));
    let texts = &harness.state().panels.texts;
    let why = texts.hazard(task.objects[right]);
    let name = texts.bench_object(task.objects[wrong].object());
    harness.get_by_label_contains(&why);
    harness.get_by_label(&format!("{name}: as it should be for this work."));
}

/// Every thing is a target, and the whole picture stands in the window, at the sizes and in the languages that it is
/// made for.
#[test]
fn every_thing_of_a_picture_can_be_hit_at_each_size() {
    for (language, size) in [
        (Language::En, [1366.0, 768.0]),
        (Language::Es, [1024.0, 600.0]),
        (Language::Es, [820.0, 1180.0]),
    ] {
        let (mut harness, task) = picture(5, language);
        harness.set_size(size.into());
        harness.run_steps(2);
        for n in 0..task.objects.len() {
            let label = told(&harness, &task, n);
            let place = harness.get_by_label(&label).rect();
            assert!(
                place.width().min(place.height()) >= 24.0,
                "{label}: {place}"
            );
            let window = egui::Rect::from_min_size(egui::Pos2::ZERO, size.into());
            assert!(window.contains_rect(place), "{label}: {place}");
            harness.get_by_label(&label).focus();
            harness.run_steps(2);
            // Looked at, it is told below the picture as well.
            let state = task.objects[n];
            let seen = harness
                .state()
                .panels
                .texts
                .object_state(state, task.card_v);
            harness.get_by_label(&seen);
        }
    }
}

/// What is chosen or judged keeps its place, and so does all below it.
#[test]
fn a_chosen_option_moves_no_other() {
    for skill in [
        Skill::PartChoice,
        Skill::SafeWork,
        Skill::Metering,
        Skill::CodeLookUp,
    ] {
        let mut harness = harness(skill, 3, Language::En);
        let options = |harness: &Harness<'_, Fixture>| -> Vec<egui::Pos2> {
            let role = match skill {
                Skill::Metering => egui::accesskit::Role::Button,
                _ => egui::accesskit::Role::RadioButton,
            };
            let all = harness.query_all_by_role(role);
            all.map(|option| option.rect().min).collect()
        };
        let before = options(&harness);
        assert!(before.len() > 4, "{skill}");
        for key in [Key::Num1, Key::Num2] {
            press(&mut harness, key);
            assert_eq!(options(&harness), before, "{skill}");
        }
    }
}

/// What is said at the foot stands beside the button, at a tablet's width too.
#[test]
fn the_hint_at_the_foot_keeps_clear_of_the_button() {
    let mut harness = harness(Skill::SafeWork, 1, Language::Es);
    harness.set_size([820.0, 1180.0].into());
    harness.run_steps(3);
    let texts = &harness.state().panels.texts;
    let hint = harness
        .get_by_label(&texts.get("drill-hint-safe-work"))
        .rect();
    let button = harness.get_by_label(&texts.get("drill-check")).rect();
    assert!(hint.right() <= button.left(), "{hint} {button}");
}

#[test]
fn whether_a_repair_is_proved_is_answered_with_a_key() {
    for mut harness in rounds(Skill::Proof).take(3) {
        let Asked::Proof(q) = &harness.state_mut().drill.sitting().expect("a round").asked else {
            panic!("proof is asked");
        };
        let should = proof::mark(&q.task, 0).should;
        press(&mut harness, digit(should + 1));
        press(&mut harness, Key::Enter);
        assert_eq!(answer(&mut harness), Some(true));
    }
}

/// A round of a class, recorded under a name, with this many questions.
fn recorded<'a>(skill: Skill, questions: usize, sealed: bool) -> Harness<'a, Fixture> {
    let mut harness = harness(skill, 3, Language::En);
    let header = DrillHeader::new(skill, questions, 77);
    let text = DrillText::begin(&header).expect("words");
    let record = read_drill_round("new.round", text.text(), true).expect("just begun");
    let recorded = Recorded::new("new.round", text, (sealed, true));
    assert!(harness.state_mut().drill.begin_recorded(recorded, &record));
    harness.run_steps(2);
    harness
}

/// All that was recorded of the round at hand.
fn text_of_round(harness: &mut Harness<'_, Fixture>) -> String {
    let sitting = harness.state_mut().drill.sitting().expect("a round");
    let recorded = sitting.recorded.as_mut().expect("it is recorded");
    let (text, _) = recorded.take_to_keep().expect("something is new");
    text.to_owned()
}

#[test]
fn what_is_recorded_is_what_was_given_and_is_marked_the_same_again() {
    for skill in Skill::ALL.iter().copied() {
        let mut harness = recorded(skill, 3, false);
        let mut right = 0;
        for n in 0..3 {
            let sitting = harness.state_mut().drill.sitting().expect("a round");
            sitting.asked.fill_in(n != 1);
            // A try at a gesture is over by itself; everything else is checked.
            harness.run_steps(3);
            if skill != Skill::EntryTiming {
                press(&mut harness, Key::Enter);
            }
            right += usize::from(answer(&mut harness).expect("it is judged"));
            press(&mut harness, Key::Enter);
        }
        let text = text_of_round(&mut harness);
        let record = read_drill_round("new.round", &text, false).expect("it is whole");
        assert_eq!(
            (record.answers.len(), record.right),
            (3, Some(right)),
            "{skill}"
        );
        let library = harness.state_mut().drill.content();
        let source = library.drill_source();
        let mut marker = RoundMarker::begin(skill, 3, 77);
        for given in &record.answers {
            let marked = marker.mark_in_slices(&source, &given.given, 0.0);
            assert!(without_breaks(marked).is_some(), "{skill}: {given:?}");
        }
        assert_eq!(marker.round().right(), right, "{skill}");
    }
}

#[test]
fn a_sealed_round_tells_nothing_and_comes_to_its_end() {
    let texts = detent_content::Texts::load(Language::En);
    let mut harness = recorded(Skill::PartChoice, 2, true);
    for _ in 0..2 {
        let sitting = harness.state_mut().drill.sitting().expect("a round");
        sitting.asked.fill_in(false);
        press(&mut harness, Key::Enter);
        for key in ["drill-right", "drill-wrong", "drill-part-right"] {
            let label = texts.get(key);
            assert!(harness.query_by_label(&label).is_none(), "{key}");
        }
    }
    harness.get_by_label(&texts.get("seat-sealed-handed-in"));
    let state = harness.state_mut();
    assert_eq!(state.drill.kept_back.len(), 2);
    assert!(state.learner.answers().is_empty());
    let text = text_of_round(&mut harness);
    assert!(read_drill_round("new.round", &text, false).is_ok());
    click(&mut harness, &texts.get("seat-back"));
    assert_eq!(harness.state().went, Some(Screen::Start));
}

/// The window is closed after the first answer and opened again.
#[test]
fn a_round_that_was_broken_off_goes_on_with_its_next_question() {
    let mut harness = recorded(Skill::CodeLookUp, 3, false);
    let sitting = harness.state_mut().drill.sitting().expect("a round");
    sitting.asked.fill_in(true);
    press(&mut harness, Key::Enter);
    let text = text_of_round(&mut harness);
    press(&mut harness, Key::Enter);
    let second = |harness: &mut Harness<'_, Fixture>| match &harness
        .state_mut()
        .drill
        .sitting()
        .expect("a round")
        .asked
    {
        Asked::LookUp(q) => q.task.clone(),
        _ => panic!("another drill"),
    };
    let expected = second(&mut harness);
    let mut again = DrillRes::default();
    let record = read_drill_round("new.round", &text, true).expect("a part");
    let go_on = Recorded::new("new.round", DrillText::go_on(&text), (false, false));
    assert!(again.begin_recorded(go_on, &record));
    harness.state_mut().drill = again;
    assert_eq!(second(&mut harness), expected);
    let sitting = harness.state_mut().drill.sitting().expect("a round");
    assert_eq!((sitting.round.done().len(), sitting.round.right()), (1, 1));
    // Answers to other questions are not gone on with.
    let other = text.replacen("skill:CodeLookUp", "skill:Metering", 1);
    let record = read_drill_round("new.round", &other, true).expect("a part");
    let go_on = Recorded::new("new.round", DrillText::go_on(&other), (false, false));
    assert!(!DrillRes::default().begin_recorded(go_on, &record));
}
