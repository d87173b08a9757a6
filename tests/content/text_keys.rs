//! Every text that the rooms outside the window can ask for is there in every language. The keys
//! are taken from the program itself: its types, its content, and the literals in its source.

use detent_content::{ContentLibrary, DeedWords, Language, Texts, builtin, read_board};
use detent_simulation::controller::{EntryError, EntryRule, Monitor, PhaseKind};
use detent_simulation::interface::{Button, Component, Connector, Direction, Pin, Side, WaterPipe};
use detent_simulation::machine::Sound;
use detent_simulation::plant::Param;
use detent_simulation::units::{Span, TICKS_PER_S, Time};
use detent_training::bench::{
    Action, Advice, Caution, Condition, Consumable, Finding, Grip, HintRung, MeterMode,
    MilestoneKind, Question, Quote, Refusal, Report, RunGap, SignalWord, Verdict,
};
use detent_training::lesson::{
    CoursePart, Customer, CustomerObservation, Dimension, FreeOfCharge, LayTheory, Loss, LossKind,
    Mains, Shown, Since, StoredCode, Tried, WAYS, WashEnd,
};
use detent_training::practice::drill::hazard::{BenchObject, ObjectState, PlannedWork};
use detent_training::practice::drill::meter::pump_a;
use detent_training::practice::drill::proof::{self, GAPS, ProofTask};
use detent_training::practice::drill::safe_work::{self, OUTCOMES, SafeStep, SafeWorkTask};
use detent_training::practice::{Skill, Why};
use detent_training::reason::GoodPractice;
use detent_training::variant::VariantRefusal;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

#[test]
fn every_board_has_its_texts() {
    let mut keys = Vec::new();
    for (path, text) in builtin::in_folder("assets/boards") {
        let board = read_board(&path, text.as_bytes()).expect("built-in boards are sound");
        keys.extend(board.text_keys());
    }
    assert!(keys.iter().any(|key| key.starts_with("check-")));
    check(keys);
}

#[test]
fn everything_in_the_machine_has_its_texts() {
    let modes = builtin::catalogue()
        .expect("the built-in catalogue is sound")
        .modes;
    let named = |prefix: &str, name: &str| format!("{prefix}-{}", name.replace('.', "-"));
    check(Component::ALL.iter().map(|c| named("component", c.name())));
    check(Monitor::ALL.iter().map(|m| named("monitor", m.name())));
    check(Side::ALL.iter().map(|s| named("side", s.name())));
    check(modes.iter().map(|mode| named("mode", &mode.id)));
    check(Finding::ALL.iter().map(|f| named("finding", f.name())));
    check(["finding-nothing"]);
    let parts = builtin::parts().expect("the built-in list of parts is sound");
    check(
        parts
            .parts
            .iter()
            .flat_map(|p| p.note_key.iter().chain([&p.name_key])),
    );
    check(Advice::ALL.iter().map(|a| named("advice", a.name())));
    let conditions = [Condition::New, Condition::Used, Condition::Rebuilt];
    check(conditions.map(|c| named("condition", c.name())));
    check(Sound::ALL.iter().map(|s| named("sound", s.name())));
}

#[test]
fn every_end_and_phase_of_a_wash_is_told() {
    let monitor = Monitor::ALL[0];
    let ends = [
        WashEnd::Finished,
        WashEnd::Stopped(monitor),
        WashEnd::NeverStarted,
        WashEnd::WentDark,
        WashEnd::CalledOff,
        WashEnd::StillRunning,
    ];
    for texts in Language::ALL.map(Texts::load) {
        let told: BTreeSet<String> = ends.iter().map(|end| texts.wash_end(*end)).collect();
        assert_eq!(told.len(), ends.len(), "{told:?}");
        assert!(
            told.iter().all(|told| !told.contains(['‹', '{'])),
            "{told:?}"
        );
        let why = texts.get(&format!("monitor-{monitor}"));
        assert!(told.iter().any(|told| told.contains(&why)), "{told:?}");
        let stored = StoredCode {
            time: Time(90 * TICKS_PER_S),
            code: 7,
        };
        let told = texts.wash_code(&stored);
        assert!(
            told.contains("07") && told.contains(&texts.digits("1.5".to_owned())),
            "{told}"
        );
    }
    check(PhaseKind::ALL.iter().map(|p| format!("wash-phase-{p}")));
}

#[test]
fn every_caution_has_a_text_and_a_signal_word() {
    check(Caution::ALL.iter().map(|c| format!("caution-{c}")));
    // The signal words of ANSI Z535.4 (from secondary sources); the translations are common practice, no source.
    let words = [
        (Language::En, ["DANGER", "WARNING", "CAUTION"]),
        (Language::Es, ["PELIGRO", "ADVERTENCIA", "ATENCIÓN"]),
    ];
    for (language, words) in words {
        let texts = Texts::load(language);
        let told: Vec<String> = (SignalWord::ALL.iter())
            .map(|word| texts.signal_word(*word))
            .collect();
        assert_eq!(told, words);
    }
    // A danger kills; what is only to be cautious about neither kills nor scalds, crushes, breaks or shocks.
    let texts = Texts::load(Language::En);
    for caution in Caution::ALL {
        let told = texts.get(&format!("caution-{caution}"));
        let says = |words: &[&str]| words.iter().any(|word| told.contains(word));
        match caution.signal_word() {
            SignalWord::Danger => assert!(says(&["kill", "burn"]), "{told}"),
            SignalWord::Warning => assert!(says(GRAVE) || *caution == Caution::NotProvedDead),
            SignalWord::Caution => assert!(!says(GRAVE), "{told}"),
        }
    }
}

/// What makes an injury a serious one.
const GRAVE: &[&str] = &[
    "kill",
    "shock",
    "scald",
    "crush",
    "break an arm",
    "hurt you",
];

#[test]
fn every_refusal_is_told_with_its_part() {
    let part = || "P-0701".to_owned();
    let refusals = [
        Refusal::CabinetClosed,
        Refusal::LidClosed,
        Refusal::NeedsPart(Component::Supply),
        Refusal::LidLocked,
        Refusal::NoConnector(Connector::Board("X9".to_owned())),
        Refusal::NoButton(Button::More),
        Refusal::NoPart(part()),
        Refusal::DoesNotFit(part()),
        Refusal::NotInHand(part()),
        Refusal::Finished,
        Refusal::NoCause("belt.gone".to_owned()),
        Refusal::NoReading(7),
        Refusal::NoLook(7),
        Refusal::NothingToHold,
        Refusal::PlugInOutlet,
        Refusal::NotNoted(52),
        Refusal::NoHints,
        Refusal::AlreadySo,
    ];
    for texts in Language::ALL.map(Texts::load) {
        for refusal in &refusals {
            let told = texts.refusal(refusal);
            assert!(!told.contains(['‹', '{']), "{refusal:?}: {told}");
            let with_part = format!("{refusal:?}").contains("P-0701");
            assert_eq!(told.contains("P-0701"), with_part, "{told}");
            match refusal {
                Refusal::NoButton(button) => {
                    assert!(
                        told.contains(&texts.get(&format!("button-{button}"))),
                        "{told}"
                    );
                }
                Refusal::NoCause(cause) => assert!(told.contains(cause), "{told}"),
                Refusal::NoReading(number) | Refusal::NoLook(number) => {
                    assert!(told.contains(&number.to_string()), "{told}");
                }
                _ => {}
            }
        }
    }
}

#[test]
fn every_broken_rule_and_every_dimension_has_its_text() {
    check(EntryRule::ALL.iter().map(|rule| format!("rule-{rule}")));
    check(EntryRule::ALL.iter().map(|rule| format!("broke-{rule}")));
    check(Dimension::ALL.iter().map(|d| format!("dimension-{d}")));
    let practices = GoodPractice::ALL.iter();
    check(practices.map(|practice| format!("sound-{practice}")));
    check(["mode-nothing"]);
    check(RunGap::ALL.iter().map(|gap| format!("run-gap-{gap}")));
    check(Question::ALL.iter().map(|asked| format!("ask-{asked}")));
    check(Shown::ALL.iter().map(|shown| format!("shown-{shown}")));
    check(Tried::ALL.iter().map(|tried| format!("tried-{tried}")));
    let free = FreeOfCharge::ALL.iter();
    check(free.map(|why| format!("invoice-free-{why}")));
    let consumables = Consumable::ALL.iter();
    check(consumables.map(|consumable| format!("consumable-{consumable}")));
}

#[test]
fn everything_that_a_customer_can_say_has_its_text_in_every_way() {
    let noticed = CustomerObservation::ALL.iter();
    check(noticed.flat_map(|n| (1..=WAYS).map(move |way| format!("customer-{n}-{way}"))));
    check(Customer::ALL.iter().map(|c| format!("customer-who-{c}")));
    check(Since::ALL.iter().map(|s| format!("customer-since-{s}")));
    check(
        LayTheory::ALL
            .iter()
            .map(|t| format!("customer-theory-{t}")),
    );
    check((1..=WAYS).map(|way| format!("customer-mistrust-{way}")));
    check(["customer-after", "customer-age"]);
}

#[test]
fn every_variant_has_its_texts() {
    let reasons = VariantRefusal::ALL.iter();
    check(reasons.map(|reason| format!("variant-refused-{reason}")));
    check(
        CoursePart::ALL
            .iter()
            .map(|part| format!("variant-goal-{part}")),
    );
    check(["variant-goal", "variant-title"]);
}

/// One deed of each kind, told by its button where it has one.
fn deeds() -> Vec<Action> {
    let probe = |mode, grip| Action::Probe {
        mode,
        red: Pin::BulkPlus,
        black: Pin::BulkMinus,
        grip,
    };
    let report = |verdict, causes: &[&str]| {
        Action::Report(Report {
            causes: causes.iter().map(|id| (*id).to_owned()).collect(),
            verdict,
            ..Report::given_up()
        })
    };
    let quote = Quote {
        parts: vec!["P-0701".to_owned()],
        minutes: 60,
    };
    let connector = Connector::Board("X2".to_owned());
    let (start, part) = (Button::Start, || "P-0701".to_owned());
    let mut deeds = vec![
        Action::Plug,
        Action::Unplug,
        Action::OpenLid,
        Action::CloseLid,
        Action::Detent(Direction::Left),
        Action::Detent(Direction::Right),
        Action::Down(start),
        Action::Up(start),
        Action::OpenCabinet,
        Action::CloseCabinet,
        Action::Discharge,
        Action::BailOut,
        Action::Pull(connector.clone()),
        Action::Seat(connector),
        Action::Pull(Connector::Load(Component::DrainPump)),
        probe(MeterMode::Ohms, Grip::Clips),
        probe(MeterMode::Ohms, Grip::Fingers),
        probe(MeterMode::AmpsClamp, Grip::Clips),
        Action::LiftProbes,
        Action::HoldDisplay,
        Action::ReleaseDisplay,
        Action::TestMeter,
        Action::ReplaceMeterFuse,
        Action::ReplaceLeads,
        Action::Order(part()),
        Action::Return(part()),
        Action::Fit(part()),
        Action::NoteCode(7),
        Action::StrikeCode(7),
        report(Verdict::GivenUp, &[]),
        report(Verdict::NothingWrong, &[]),
        report(Verdict::CausesNamed, &["lid-lock.contact-open"]),
        Action::ShutTaps,
        Action::Quote(quote),
        Action::CheckForLeaks,
        Action::ResetOutlet,
        Action::UnloadBasket,
        Action::LoadBasket,
    ];
    deeds.extend(Component::ALL.iter().map(|c| Action::Inspect(*c)));
    let by_hand = Component::ALL.iter().filter(|c| c.can_be_put_right());
    deeds.extend(by_hand.map(|c| Action::PutRight(*c)));
    deeds.extend(HintRung::ALL.iter().map(|rung| Action::TakeHint(*rung)));
    deeds.extend(Question::ALL.iter().map(|question| Action::Ask(*question)));
    deeds.extend(WaterPipe::ALL.iter().map(|pipe| Action::BucketTest(*pipe)));
    deeds
}

#[test]
fn every_deed_of_a_replay_has_its_words() {
    let (board_file, text) = builtin::in_folder("assets/boards").next().expect("a board");
    let board = read_board(&board_file, text.as_bytes()).expect("built-in boards are sound");
    let parts = builtin::parts().expect("sound").parts;
    let kinds = [
        MilestoneKind::PowerReset,
        MilestoneKind::ServiceEntered,
        MilestoneKind::ProgramStarted,
        MilestoneKind::ProgramCancelled,
        MilestoneKind::ProgramFinished,
        MilestoneKind::Held(Monitor::ALL[0]),
        MilestoneKind::CalibrationStarted,
        MilestoneKind::CalibrationPassed,
        MilestoneKind::CalibrationFailed(Monitor::ALL[0]),
        MilestoneKind::CodeShown(42),
        MilestoneKind::CodesCleared,
    ];
    for texts in Language::ALL.map(Texts::load) {
        let words = DeedWords {
            texts: &texts,
            board: &board,
            parts: &parts,
        };
        let deeds = deeds();
        let mut told: BTreeSet<String> = deeds.iter().map(|deed| words.deed(deed)).collect();
        assert_eq!(
            told.len(),
            deeds.len(),
            "two deeds are told alike: {told:#?}"
        );
        told.insert(words.turned(Direction::Left, 6));
        told.insert(words.pressed(Button::Start, Span::from_ms(1300)));
        let number = texts.digits("1.3".to_owned());
        assert!(told.iter().any(|told| told.contains(&number)));
        let machine: BTreeSet<String> = (kinds.iter())
            .map(|kind| texts.milestone(*kind, true))
            .collect();
        assert_eq!(machine.len(), kinds.len());
        assert!(machine.iter().any(|told| told.contains("42")));
        // A code that may still be misread is not told.
        let kept_back = texts.milestone(MilestoneKind::CodeShown(42), false);
        assert!(!kept_back.contains("42"), "{kept_back}");
        told.extend(machine.into_iter().chain([kept_back]));
        let unfinished: Vec<&String> = told.iter().filter(|t| t.contains(['‹', '{'])).collect();
        assert!(unfinished.is_empty(), "{unfinished:?}");
    }
}

/// One loss of each kind, with what its text must name.
fn losses() -> Vec<(Loss, &'static [&'static str])> {
    let part = || "P-0701".to_owned();
    let rule = EntryError::Late { step: 0, by_ms: 1 };
    vec![
        (Loss::FailedTry { rule }, &[]),
        (Loss::NeverEntered, &[]),
        (Loss::RestTooShort { seconds: 9.4 }, &["9"]),
        (
            Loss::Misread {
                noted: 5,
                shown: vec![42, 7],
            },
            &["05", "42, 07"],
        ),
        (Loss::CodeNotNoted { code: 7, due: 2 }, &["07"]),
        (Loss::GoodBoardReplaced { part: part() }, &[]),
        (Loss::WrongPart { part: part() }, &[]),
        (Loss::OverRepaired { part: part() }, &["P-0701"]),
        (Loss::OpenedUnderPressure, &[]),
        (Loss::BoughtOnTheCode { part: part() }, &["P-0701"]),
        (Loss::NotCured, &[]),
        (Loss::NoReport, &[]),
        (
            Loss::WrongCause {
                said: Vec::new(),
                truth: vec!["belt.broken".to_owned()],
            },
            &[],
        ),
        (
            Loss::LuckyRepair {
                said: vec!["drain-pump.open-winding".to_owned()],
                truth: vec!["belt.broken".to_owned()],
            },
            &[],
        ),
        (
            Loss::WrongPartNamed {
                named: None,
                needed: vec![part(), "P-1801".to_owned()],
            },
            &["P-0701, P-1801"],
        ),
        (
            Loss::WrongAdvice {
                given: Advice::None,
                due: Advice::Replace,
            },
            &[],
        ),
        (Loss::Shock, &[]),
        (Loss::TesterShock, &[]),
        (Loss::TouchedCharge, &[]),
        (Loss::OpenedLive, &[]),
        (Loss::OhmsOnLive, &[]),
        (Loss::LiveNotAllowed, &[]),
        (Loss::Flood, &[]),
        (Loss::LidSpinning, &[]),
        (Loss::DischargedLive, &[]),
        (Loss::HandInDrive, &[]),
        (Loss::Scald, &[]),
        (Loss::DischargedUnmeasured, &[]),
        (Loss::NotProvedDead, &[]),
        (Loss::MeterNotProved, &[]),
        (
            Loss::Slow {
                minutes: 91.6,
                par: 60.0,
            },
            &["92", "60"],
        ),
        (
            Loss::Overspent {
                spent: 103.0,
                needed: 48.0,
                budget: 320.0,
            },
            &["103", "48"],
        ),
        (
            Loss::OverBudget {
                bill: 214.0,
                budget: 180.0,
            },
            &["214", "180"],
        ),
        (
            Loss::OverRepairLimit {
                bill: 377.0,
                limit: 352.0,
            },
            &["377", "352"],
        ),
        (Loss::NotApproved { part: part() }, &["P-0701"]),
        (
            Loss::OverQuote {
                bill: 133.0,
                quoted: 110.0,
            },
            &["133", "110"],
        ),
        (Loss::NoEvidence, &[]),
        (Loss::RivalsLeft { open: 2, rivals: 5 }, &["2", "5"]),
        (Loss::NotRecalibrated, &[]),
        (Loss::CalibratedWithLaundry, &[]),
        (Loss::NoProvingRun, &[]),
        (
            Loss::RunFallsShort {
                gap: RunGap::HotWater,
            },
            &[],
        ),
        (
            Loss::NoLeakCheck {
                component: Component::DrainPump,
            },
            &[],
        ),
        (Loss::NotDemonstrated, &[]),
        (Loss::CodeSlip { noted: 52 }, &["52"]),
        (
            Loss::HintTaken {
                rung: HintRung::WhatToAsk,
            },
            &[],
        ),
    ]
}

#[test]
fn every_point_lost_is_told_with_its_arguments() {
    let losses = losses();
    let told: Vec<LossKind> = losses.iter().map(|(loss, _)| loss.kind()).collect();
    assert_eq!(told, LossKind::ALL, "one of each kind, in order");
    for texts in Language::ALL.map(Texts::load) {
        let advice = |advice: &Advice| texts.get(&format!("advice-{advice}"));
        for (loss, named) in &losses {
            let mut named: Vec<String> = named.iter().map(|name| (*name).to_owned()).collect();
            match loss {
                Loss::FailedTry { rule } => named.push(texts.broken_rule(*rule)),
                Loss::WrongCause { .. } => {
                    named.extend([texts.get("mode-nothing"), texts.mode("belt.broken")]);
                }
                Loss::LuckyRepair { said, truth } => {
                    named.extend([texts.mode(&said[0]), texts.mode(&truth[0])]);
                }
                Loss::RunFallsShort { gap } => named.push(texts.get(&format!("run-gap-{gap}"))),
                Loss::NoLeakCheck { component } => named.push(texts.component(*component)),
                Loss::WrongPartNamed { .. } => named.push(texts.get("report-no-part")),
                Loss::WrongAdvice { given, due } => named.extend([advice(given), advice(due)]),
                _ => {}
            }
            let told = texts.loss(loss);
            // An argument that was not given shows in braces, a missing text in angle quotes.
            assert!(!told.contains(['‹', '{']), "{told}");
            for name in named {
                assert!(told.contains(&name), "{name} is not in: {told}");
            }
        }
    }
}

#[test]
fn the_commands_have_their_texts() {
    for (file, prefix, known) in [
        ("print", "cli-", "cli-score"),
        ("practice", "cli-practice-", "cli-practice-random"),
        ("failure", "cli-", "cli-error-no-board"),
        ("learners", "cli-learners-", "cli-learners-name"),
        ("replay", "cli-replay-", "cli-replay-same"),
        ("wash", "wash-", "wash-trace-title"),
    ] {
        let keys = literals(&source(&format!("src/command_line/{file}.rs")), prefix);
        assert!(keys.contains(known), "{keys:?}");
        check(keys);
    }
}

#[test]
fn every_skill_and_every_reason_to_practise_has_its_text() {
    check(Skill::ALL.iter().map(|skill| format!("skill-{skill}")));
    check(Why::ALL.map(Why::key));
}

#[test]
fn every_question_of_safe_work_and_proof_has_its_texts() {
    check(SafeStep::ALL.iter().map(|step| format!("safe-step-{step}")));
    check(OUTCOMES.iter().map(|kind| format!("safe-outcome-{kind}")));
    check(
        BenchObject::ALL
            .iter()
            .map(|object| format!("safe-object-{object}")),
    );
    check(
        ObjectState::ALL
            .iter()
            .map(|state| format!("safe-state-{state}")),
    );
    check(
        PlannedWork::ALL
            .iter()
            .map(|work| format!("safe-planned-{work}")),
    );
    let hazards = PlannedWork::ALL.iter().flat_map(|work| work.hazards());
    check(hazards.map(|state| format!("safe-hazard-{state}")));
    let gap = |gap: &Option<LossKind>| {
        gap.map_or("proof-gap-none".to_owned(), |k| format!("proof-gap-{k}"))
    };
    check(GAPS.iter().map(gap));
    let keys = literals(&source("src/content/drill_words.rs"), "safe-fact-");
    assert!(keys.contains("safe-fact-measured"), "{keys:?}");
    check(keys);
    check(literals(
        &source("src/content/drill_words.rs"),
        "proof-did-",
    ));
}

#[test]
fn questions_of_safe_work_and_proof_are_told_with_their_arguments() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let boards = content_library.supplied_boards();
    for texts in Language::ALL.map(Texts::load) {
        let mut told: Vec<String> = Vec::new();
        for seed in 0..30 {
            match safe_work::ask(&boards, seed) {
                SafeWorkTask::Order(order) => told.extend(texts.safe_facts(&order.facts)),
                SafeWorkTask::Deed(deed) => {
                    told.extend(texts.safe_facts(&deed.facts));
                    told.extend(deed.options.iter().map(|o| texts.safe_outcome(*o)));
                }
                SafeWorkTask::Hazard(hazard) => {
                    let states = hazard.objects.iter();
                    told.extend(states.map(|s| texts.object_state(*s, hazard.card_v)));
                }
            }
            if let ProofTask::Repair(repair) = proof::ask(&boards, |_| None, seed) {
                let parts = boards[0].library.parts;
                told.extend(repair.history.iter().map(|s| texts.proof_step(s, parts)));
            }
        }
        let bad: Vec<_> = told.iter().filter(|t| t.contains(['‹', '{'])).collect();
        assert!(told.len() > 100 && bad.is_empty(), "{bad:?}");
    }
}

#[test]
fn the_service_sheet_tells_the_values_of_the_sound_machine() {
    let machine = builtin::machine().expect("the built-in machine is sound");
    let told = [
        ("check-inlet-coil-ohms", Param::ColdCoilOhms),
        ("check-inlet-coil-ohms", Param::HotCoilOhms),
        ("check-lock-coil-ohms", Param::LockCoilOhms),
        ("check-motor-winding-ohms", Param::MotorAOhms),
        ("check-motor-winding-ohms", Param::MotorBOhms),
        ("check-pump-coil-ohms", Param::PumpCoilOhms),
        ("check-clutch-actuator-coil-ohms", Param::ClutchCoilOhms),
    ];
    for language in Language::ALL {
        let texts = Texts::load(language);
        let written = |value: f64, unit: &str| match language {
            Language::En => format!(" {value} {unit}"),
            Language::Es => format!(" {value} {unit}").replace('.', ","),
        };
        let check = |key: &str, value: f64, unit: &str| {
            let (told, value) = (texts.get(key), written(value, unit));
            assert!(told.contains(&value), "{key} lacks{value}: {told}");
        };
        for mains in [Mains::V120Hz60, Mains::V230Hz50] {
            let sound = machine.params(mains);
            for (key, param) in told {
                check(key, sound.get(param), "Ω");
            }
            let kilo = sound.get(Param::ThermR25Ohms) / 1000.0;
            check("check-thermistor-ohms", kilo, "kΩ");
            check(
                "check-pressure-output",
                sound.get(Param::PressureZeroV),
                "V",
            );
            check(
                "check-pressure-output",
                sound.get(Param::PressureVPerKpa),
                "V",
            );
            let microfarads = 1.0e6 * sound.get(Param::CapFarads);
            let microfarads = (10.0 * microfarads).round() / 10.0;
            check("check-capacitor-microfarads", microfarads, "µF");
            check("check-pickup-supply", sound.get(Param::RailV), "V");
            check("check-pressure-supply", sound.get(Param::RailV), "V");
            check("check-pump-amps", pump_a(sound, mains.rating()), "A");
            check("check-drain-hose-height", sound.get(Param::StandpipeM), "m");
        }
    }
}

/// What the driver of the page clicks and waits for. It runs for minutes, and a label that was worded
/// anew would fail it three times before anybody saw why.
#[test]
fn the_labels_that_the_pages_driver_looks_for_are_on_the_screen() {
    let driver = source("tests/browser/drive.mjs");
    let asked = after(&driver, "says(\"");
    assert!(asked.contains("trouble-full"), "{asked:?}");
    check(asked);

    let mut shown: BTreeSet<String> = BTreeSet::new();
    for language in Language::ALL {
        let texts = builtin::text(language.file()).expect("the language files are built in");
        let messages = texts.lines().filter_map(|line| line.split_once(" = "));
        shown.extend(messages.map(|(_, message)| message.to_owned()));
    }
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let jobs = content_library.scenarios().expect("the built-in jobs");
    shown.extend(jobs.into_iter().map(|job| job.scenario.title.en));
    let not_texts = ["Ada Ruiz", "dial", "#again"];
    let clicked = [
        "click(\"",
        "tap(\"",
        "places(\"",
        "begin(\"",
        "enterBench(\"",
    ];
    let clicked: BTreeSet<&str> = clicked
        .iter()
        .flat_map(|call| after(&driver, call))
        .collect();
    assert!(clicked.contains("Measure and record"), "{clicked:?}");
    let unknown: Vec<&str> = clicked
        .into_iter()
        // "1  Console" is a key and a text, "Begin: Reading lamps" a text and a text.
        .filter(|label| {
            let text = label.rsplit("  ").next().unwrap_or(label);
            let mut parts = text.split(": ");
            !not_texts.contains(label)
                && !shown.contains(text)
                && !parts.all(|part| shown.contains(part))
        })
        .collect();
    assert!(unknown.is_empty(), "nothing on the screen says {unknown:?}");
}

#[test]
fn a_missing_text_is_noticed() {
    assert_eq!(missing(["common-yes", "no-such-key"]), ["no-such-key"]);
}

#[track_caller]
fn check<S: AsRef<str>>(keys: impl IntoIterator<Item = S>) {
    let missing = missing(keys);
    assert!(missing.is_empty(), "no such texts: {missing:#?}");
}

/// Those of `keys` that some language lacks.
fn missing<S: AsRef<str>>(keys: impl IntoIterator<Item = S>) -> Vec<String> {
    let all = Language::ALL.map(Texts::load);
    let mut missing: Vec<String> = keys
        .into_iter()
        .map(|key| key.as_ref().to_owned())
        .filter(|key| all.iter().any(|texts| !texts.has(key)))
        .collect();
    missing.sort();
    missing.dedup();
    missing
}

/// A source without its unit tests.
fn source(path: &str) -> String {
    let path = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../..")).join(path);
    let text = fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    text.split("#[cfg(test)]").next().unwrap_or("").to_owned()
}

/// What stands in `code` between each `opening` and the next quotation mark.
fn after<'a>(code: &'a str, opening: &str) -> BTreeSet<&'a str> {
    let rest = code.split(opening).skip(1);
    rest.filter_map(|rest| rest.split('"').next()).collect()
}

/// String literals in `code` that begin with `prefix`.
fn literals(code: &str, prefix: &str) -> BTreeSet<String> {
    let quoted = code.split('"').skip(1).step_by(2);
    quoted
        .filter(|text| text.starts_with(prefix))
        .map(str::to_owned)
        .collect()
}
