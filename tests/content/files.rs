//! Bad input: every reader answers with a typed error that names file, line and field, and no
//! bytes make one panic. All names, numbers and sentences here are invented.

use detent_content::{
    Catalogue, ContentError, KnownBoard, Parts, Problem, builtin, read_catalogue, read_checked,
    read_machine, read_parts, read_scenario, read_script,
};
use detent_simulation::controller::{Code, Monitor};
use detent_simulation::interface::Terminal;
use detent_simulation::plant::Param;
use detent_simulation::units::Time;
use detent_training::bench::Action;
use detent_training::bench::script::ScriptStep;
use detent_training::lesson::Mains;
use detent_training::record::{
    Answer, AttemptLog, Damage, Footer, Header, LONGEST_ATTEMPT_BYTES, LONGEST_FIRST_VISIT_BYTES,
    Seal, read_attempt,
};
use proptest::prelude::*;
use serde::Deserialize;

const PARTS: &str = r#"(
    rates: (labour_per_hour: 30.0, return_fee_share: 0.2, new_machine: 500.0, repair_share: 0.5, used_bad: 0.4, rebuilt_bad: 0.1), billing: (call_out_fee: 20.0, tax_share: 0.3, warranty_days: 90, consumables: (descaler: 1.0, hose_washer: 1.0, cover_seal: 1.0, hose_clamp: 1.0, cable_tie: 1.0, contact_cleaner: 2.0)),
    parts: [
        (
            number: "D-100",
            component: DrainPump,
            name_key: "part-pump",
            price: 60.0,
            wait_hours: 24.0,
        ),
        (
            number: "D-101",
            component: InletCold,
            name_key: "part-pump-other",
            price: 40.0,
            wait_hours: 2.0,
            boards: ["other"],
        ),
    ],
)"#;

const CATALOGUE: &str = r#"(
    modes: [
        (
            id: "drain-pump.seized",
            component: DrainPump,
            weight: 3.0,
            cured_by: "D-100",
            changes: [(PumpFree, Set(0.0))],
        ),
        (
            id: "drain-pump.open-winding",
            component: DrainPump,
            weight: 1.0,
            cured_by: "D-100",
            changes: [
                (PumpCoilOhms, Scale(1e6)),
                (PumpFree, Add(0.0)),
            ],
            presence: Intermittent(
                good_s: 60.0,
                bad_s: 5.0,
            ),
        ),
    ],
)"#;

const SCENARIO: &str = r#"(
    title: (en: "It hums", es: "Zumba"),
    complaint: (
        en: "It hums and the water stays in.",
        es: "Zumba y el agua no sale.",
    ),
    goal: (en: "Measure first.", es: "Medir primero."),
    board: "arc",
    mains: V120Hz60,
    seed: 7,
    fault: DrawFrom([
        "drain-pump.seized",
        "drain-pump.open-winding",
    ]),
    dial_wear: 0.5,
    stale_codes: [12, 31],
    par_minutes: 40.0,
    budget: 180.0,
    points: (
        entry: 10, reading: 10, reasoning: 30,
        safety: 20, cost: 10,
        proof: 20,
    ),
)"#;

/// Its digest was worked out with Python's hashlib, line by line.
const ATTEMPT: &str = concat!(
    "DetentAttempt(format:2,program:\"0.1.0\",scenario:\"scenarios/hum.ron\",scenario_sha256:",
    "\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\",seed:7)\n",
    "(at:100,do:Plug)\n",
    "(at:250,do:Detent(Right))\n",
    "(at:250,do:Probe(mode:Ohms,red:\"drain-pump.1\",black:\"drain-pump.2@board\"))\n",
    "End(at:900,state:\"00c0ffee\",answer:Shown(score:87.5),digest:",
    "\"63ac2c28ceaa566e8412852afea0af463b0c777bee0213b6677ff409429b0a1d\")\n",
);

/// As the first program wrote it.
const OLD_ATTEMPT: &str = concat!(
    "DetentAttempt(format:1,program:\"0.1.0\",scenario:\"scenarios/hum.ron\",scenario_sha256:",
    "\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\",seed:7)\n",
    "(at:100,do:Plug)\n",
    "End(at:900,state:\"00c0ffee\",score:87.5)\n",
);

/// A machine file with every plain parameter, one in each line.
fn machine() -> String {
    let mut text = String::from("(\nwire_ohms: 0.05,\ncontact_ohms: 0.01,\ncommon: {\n");
    for param in Param::all() {
        match param {
            Param::WireOhms(_) | Param::ContactOhms(_) | Param::SupplyOhms => {}
            plain => text.push_str(&format!("    {plain:?}: 1.5,\n")),
        }
    }
    text.push_str("    WireOhms(Cold1): 0.2,\n},\n");
    text.push_str("v120hz60: {\n    SupplyOhms: 0.3,\n},\n");
    text.push_str("v230hz50: {\n    SupplyOhms: 0.6,\n},\n)\n");
    text
}

fn parts() -> Parts {
    read_parts("parts.ron", PARTS.as_bytes()).expect("the fixture is sound")
}

fn catalogue() -> Catalogue {
    read_catalogue("catalogue.ron", CATALOGUE.as_bytes(), &parts()).expect("the fixture is sound")
}

fn boards() -> Vec<KnownBoard> {
    let name = "arc".to_owned();
    let monitors = [Monitor::FillNone, Monitor::DrainSlow, Monitor::SupplyLow];
    let codes = [12, 31, 99].into_iter().zip(monitors);
    let codes = codes
        .map(|(code, monitor)| Code { code, monitor })
        .collect();
    let mains = Mains::ALL.to_vec();
    vec![KnownBoard { name, codes, mains }]
}

/// `text` with its one `old` replaced.
#[track_caller]
fn with(text: &str, old: &str, new: &str) -> String {
    assert_eq!(
        text.matches(old).count(),
        1,
        "{old} stands once in the fixture"
    );
    text.replace(old, new)
}

#[track_caller]
fn expect(error: ContentError, file: &str, line: usize, field: &str) -> Problem {
    let place = (error.file.as_str(), error.line, error.field.as_str());
    assert_eq!(place, (file, line, field), "{error}");
    assert!(error.column >= 1, "{error}");
    assert!(
        error.to_string().starts_with(&format!("{file}:{line}:")),
        "{error}"
    );
    error.problem
}

#[track_caller]
fn bad_parts(old: &str, new: &str, line: usize, field: &str) -> Problem {
    let text = with(PARTS, old, new);
    let error = read_parts("parts.ron", text.as_bytes()).expect_err("it is wrong");
    expect(error, "parts.ron", line, field)
}

#[track_caller]
fn bad_catalogue(old: &str, new: &str, line: usize, field: &str) -> Problem {
    let text = with(CATALOGUE, old, new);
    let error = read_catalogue("cat.ron", text.as_bytes(), &parts()).expect_err("it is wrong");
    expect(error, "cat.ron", line, field)
}

#[track_caller]
fn bad_scenario(old: &str, new: &str, line: usize, field: &str) -> Problem {
    let text = with(SCENARIO, old, new);
    let error = read_scenario(
        "hum.ron",
        text.as_bytes(),
        &catalogue(),
        &parts(),
        &boards(),
    );
    expect(error.expect_err("it is wrong"), "hum.ron", line, field)
}

#[track_caller]
fn bad_machine(old: &str, new: &str, marker: &str, field: &str) -> Problem {
    let text = with(&machine(), old, new);
    let line = text
        .lines()
        .position(|l| l.contains(marker))
        .expect("it is there")
        + 1;
    let error = read_machine("machine.ron", text.as_bytes()).expect_err("it is wrong");
    expect(error, "machine.ron", line, field)
}

#[track_caller]
fn bad_attempt(file: &str, text: impl AsRef<[u8]>, line: usize, field: &str) -> Damage {
    let error = read_attempt(file, text.as_ref()).expect_err("it is damaged");
    let place = (error.file.as_str(), error.line, error.field.as_str());
    assert_eq!(place, (file, line, field), "{error}");
    assert!(
        error.to_string().starts_with(&format!("{file}:{line}: ")),
        "{error}"
    );
    error.problem
}

#[test]
fn sound_files_are_read() {
    assert_eq!(catalogue().modes.len(), 2);
    let scenario = read_scenario(
        "hum.ron",
        SCENARIO.as_bytes(),
        &catalogue(),
        &parts(),
        &boards(),
    );
    assert_eq!(scenario.expect("sound").points.proof, 20.0);

    let nominal = read_machine("machine.ron", machine().as_bytes()).expect("sound");
    let low = nominal.params(Mains::V120Hz60);
    let high = nominal.params(Mains::V230Hz50);
    assert_eq!(
        (low.get(Param::SupplyOhms), high.get(Param::SupplyOhms)),
        (0.3, 0.6)
    );
    assert_eq!(low.get(Param::PumpHeadM), 1.5);
    assert_eq!(low.get(Param::WireOhms(Terminal::Cold1)), 0.2);
    assert_eq!(low.get(Param::WireOhms(Terminal::Cold2)), 0.05);
    assert_eq!(high.get(Param::ContactOhms(Terminal::Therm2)), 0.01);

    let attempt = read_attempt("hum.attempt", ATTEMPT.as_bytes()).expect("sound");
    assert_eq!(attempt.actions.len(), 3);
    assert_eq!(attempt.last(), Time(900));
}

#[test]
fn mistakes_in_the_list_of_parts() {
    let problem = bad_parts("\"D-101\"", "\"D-100\"", 12, "parts[1].number");
    let expected = Problem::Repeated {
        name: "D-100".to_owned(),
        first_line: 5,
    };
    assert_eq!(problem, expected);

    let problem = bad_parts("price: 40.0", "price: -1", 15, "parts[1].price");
    assert!(matches!(problem, Problem::OutOfRange { found: -1.0, .. }));
    let problem = bad_parts("24.0", "inf", 9, "parts[0].wait_hours");
    assert_eq!(problem, Problem::NotFinite("inf".to_owned()));
    let problem = bad_parts("\"part-pump\"", "\"\"", 7, "parts[0].name_key");
    assert!(matches!(problem, Problem::Nothing(_)));
    let problem = bad_parts("boards:", "board:", 17, "parts[1].board");
    assert!(matches!(problem, Problem::UnknownField { .. }));
    let problem = bad_parts("            price: 40.0,\n", "", 11, "parts[1].price");
    assert_eq!(problem, Problem::MissingField("price".to_owned()));
    let problem = bad_parts("price: 40.0", "price: 1e308", 15, "parts[1].price");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_parts("hours: 24.0", "hours: 1e308", 9, "parts[0].wait_hours");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_parts("machine: 500.0", "machine: 1e308", 2, "rates.new_machine");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_parts("share: 0.2", "share: 1.2", 2, "rates.return_fee_share");
    assert!(matches!(problem, Problem::OutOfRange { found: 1.2, .. }));
    let problem = bad_parts("fee: 20.0", "fee: 1e308", 2, "billing.call_out_fee");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let field = "billing.consumables.contact_cleaner";
    let problem = bad_parts("cleaner: 2.0", "cleaner: -2.0", 2, field);
    assert!(matches!(problem, Problem::OutOfRange { found: -2.0, .. }));
    let problem = bad_parts("tax_share: 0.3", "tax_share: 1.2", 2, "billing.tax_share");
    assert!(matches!(problem, Problem::OutOfRange { found: 1.2, .. }));
    let problem = bad_parts("hour: 30.0", "hour: -3", 2, "rates.labour_per_hour");
    assert!(matches!(problem, Problem::OutOfRange { found: -3.0, .. }));
    let takes_over = |number: &str| format!("boards: [], superseded_by: Some(\"{number}\"),");
    let field = "parts[1].superseded_by";
    let problem = bad_parts("boards: [\"other\"],", &takes_over("D-7"), 17, field);
    assert_eq!(problem, Problem::UnknownPart("D-7".to_owned()));
    let problem = bad_parts("boards: [\"other\"],", &takes_over("D-101"), 17, field);
    assert_eq!(problem, Problem::NoEnd("D-101".to_owned()));
    let problem = bad_parts("40.0,\n", "40.0,\n price: 41.0,\n", 16, "parts[1].price");
    assert_eq!(problem, Problem::RepeatedField("price".to_owned()));
    let problem = bad_parts("60.0", "\"60\"", 8, "parts[0].price");
    assert!(matches!(problem, Problem::Syntax(_)));
}

#[test]
fn mistakes_in_the_catalogue() {
    let problem = bad_catalogue(
        "\"drain-pump.open-winding\"",
        "\"drain-pump.seized\"",
        11,
        "modes[1].id",
    );
    assert!(matches!(problem, Problem::Repeated { first_line: 4, .. }));
    let problem = bad_catalogue("3.0", "0", 6, "modes[0].weight");
    assert!(matches!(problem, Problem::OutOfRange { found: 0.0, .. }));
    let problem = bad_catalogue("3.0", "NaN", 6, "modes[0].weight");
    assert_eq!(problem, Problem::NotFinite("NaN".to_owned()));
    let problem = bad_catalogue("1e6", "1e999", 16, "modes[1].changes[0].1");
    assert_eq!(problem, Problem::NotFinite("1e999".to_owned()));
    let old = "\"D-100\",\n            changes: [\n";
    let problem = bad_catalogue(
        old,
        "\"D-7\",\n            changes: [\n",
        14,
        "modes[1].cured_by",
    );
    assert_eq!(problem, Problem::UnknownPart("D-7".to_owned()));
    let problem = bad_catalogue(
        old,
        "\"D-101\",\n            changes: [\n",
        14,
        "modes[1].cured_by",
    );
    assert_eq!(problem, Problem::UnfitPart("D-101".to_owned()));
    let problem = bad_catalogue(
        "(PumpFree, Add(0.0))",
        "(BeltGripNm, Set(0))",
        17,
        "modes[1].changes[1].0",
    );
    assert!(matches!(problem, Problem::ForeignParam { .. }));
    let problem = bad_catalogue("(PumpFree, Set(0.0))", "", 8, "modes[0].changes");
    assert!(matches!(problem, Problem::Nothing(_)));
    let problem = bad_catalogue("Set(0.0)", "Put(0.0)", 8, "modes[0].changes[0].1");
    assert!(matches!(problem, Problem::UnknownName { ref found, .. } if found == "Put"));
    let problem = bad_catalogue("bad_s: 5.0", "bad_s: 1e308", 21, "modes[1].presence.bad_s");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_catalogue("bad_s: 5.0", "bad_s: 0", 21, "modes[1].presence.bad_s");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_catalogue(
        "bad_s: 5.0,",
        "bad_s: 5.0, under: Some(Wet(above_mm: -1)),",
        21,
        "modes[1].presence.under",
    );
    assert!(matches!(problem, Problem::OutOfRange { found: -1.0, .. }));
    // What hands can put right needs no part.
    let by_hand = "\"\",\n            by_hand: true, changes: [\n";
    let text = with(CATALOGUE, old, by_hand);
    let read = read_catalogue("cat.ron", text.as_bytes(), &parts());
    assert!(read.is_ok_and(|catalogue| catalogue.modes[1].needs_no_part()));
    let problem = bad_catalogue(
        old,
        "\"\",\n            changes: [\n",
        14,
        "modes[1].cured_by",
    );
    assert!(matches!(problem, Problem::Nothing(_)));
    let problem = bad_catalogue(
        "component: DrainPump,\n            weight: 1.0",
        "component: Turbine,\n            weight: 1.0",
        12,
        "modes[1].component",
    );
    assert!(matches!(problem, Problem::UnknownName { ref found, .. } if found == "Turbine"));
}

#[test]
fn mistakes_in_a_scenario() {
    let problem = bad_scenario(
        "\"drain-pump.seized\"",
        "\"drain-pump.stolen\"",
        12,
        "fault[0]",
    );
    assert_eq!(
        problem,
        Problem::UnknownMode("drain-pump.stolen".to_owned())
    );
    let problem = bad_scenario("\"arc\"", "\"square\"", 8, "board");
    assert!(matches!(problem, Problem::UnknownBoard { ref known, .. } if known == "arc"));
    let problem = bad_scenario("V120Hz60", "V999", 9, "mains");
    assert!(matches!(problem, Problem::UnknownName { .. }));
    for seed in ["18446744073709551616", "-7"] {
        let problem = bad_scenario("seed: 7", &format!("seed: {seed}"), 10, "seed");
        let said = problem.to_string();
        assert!(
            said.contains(seed) && said.ends_with("from 0 to 18446744073709551615"),
            "{said}"
        );
    }
    let problem = bad_scenario("0.5", "1.5", 15, "dial_wear");
    assert!(matches!(problem, Problem::OutOfRange { found: 1.5, .. }));
    let problem = bad_scenario("31]", "32]", 16, "stale_codes[1]");
    assert!(matches!(problem, Problem::UnknownCode { code: 32, .. }));
    let problem = bad_scenario("31]", "100]", 16, "stale_codes[1]");
    assert!(matches!(problem, Problem::OutOfRange { found: 100.0, .. }));
    let problem = bad_scenario("31]", "256]", 16, "stale_codes[1]");
    assert!(problem.to_string().ends_with("from 0 to 255"), "{problem}");
    let problem = bad_scenario("180.0", "0", 18, "budget");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_scenario("40.0", "-40", 17, "par_minutes");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    for (old, field, line) in [("180.0", "budget", 18), ("40.0", "par_minutes", 17)] {
        let problem = bad_scenario(old, "1e308", line, field);
        assert!(matches!(problem, Problem::OutOfRange { .. }), "{problem}");
    }
    // The pump costs 60, 2 and 20 min of ordering and fitting and 3 min of report at 30 an hour 12.50.
    let problem = bad_scenario("180.0", "72", 18, "budget");
    let (found, least) = (72.0, 72.5);
    assert_eq!(problem, Problem::TooLittleMoney { found, least });
    let problem = bad_scenario("40.0", "24.9", 17, "par_minutes");
    let (found, least) = (24.9, 25.0);
    assert_eq!(problem, Problem::TooLittleTime { found, least });
    let problem = bad_scenario("proof: 20", "proof: 19", 19, "points");
    assert!(matches!(problem, Problem::OutOfRange { found: 99.0, .. }));
    let problem = bad_scenario(
        "\"drain-pump.open-winding\"",
        "\"drain-pump.seized\"",
        13,
        "fault[1]",
    );
    assert!(matches!(problem, Problem::Repeated { first_line: 12, .. }));
    let problem = bad_scenario("proof: 20", "proof: -1", 22, "points.proof");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_scenario("\"Zumba y el agua no sale.\"", "\" \"", 5, "complaint.es");
    assert!(matches!(problem, Problem::Nothing(_)));
    let problem = bad_scenario(", es: \"Zumba\"", "", 2, "title.es");
    assert_eq!(problem, Problem::MissingField("es".to_owned()));
    let problem = bad_scenario("    budget: 180.0,\n", "", 1, "budget");
    assert_eq!(problem, Problem::MissingField("budget".to_owned()));
}

#[test]
fn a_message_says_what_to_do() {
    let text = with(SCENARIO, "\"drain-pump.seized\"", "\"x\"");
    let file = "scenarios/hum.ron";
    let error = read_scenario(file, text.as_bytes(), &catalogue(), &parts(), &boards());
    assert_eq!(
        error.expect_err("no such mode").to_string(),
        "scenarios/hum.ron:12: fault[0]: no failure mode is called \"x\"; \
         `detent faults` lists them all"
    );
}

#[test]
fn mistakes_in_the_machine_file() {
    let problem = bad_machine(
        "    PumpHeadM: 1.5,\n",
        "",
        "v120hz60",
        "v120hz60[PumpHeadM]",
    );
    assert_eq!(problem, Problem::MissingParam("PumpHeadM".to_owned()));
    let problem = bad_machine(
        "    SupplyOhms: 0.6,\n",
        "",
        "v230hz50",
        "v230hz50[SupplyOhms]",
    );
    assert_eq!(problem, Problem::MissingParam("SupplyOhms".to_owned()));
    let problem = bad_machine(
        "SupplyOhms: 0.6",
        "SupplyOhms: 0.6, LoadKg: 0.6",
        "LoadKg: 0.6",
        "v230hz50[LoadKg]",
    );
    assert!(matches!(problem, Problem::Repeated { .. }));
    let problem = bad_machine(
        "LoadKg: 1.5",
        "LoadKg: 1.5, BeltGripNm: 7.0",
        "7.0",
        "common[BeltGripNm]",
    );
    assert!(matches!(problem, Problem::Repeated { .. }));
    let problem = bad_machine("LoadKg: 1.5", "LoadKg: NaN", "NaN", "common[LoadKg]");
    assert_eq!(problem, Problem::NotFinite("NaN".to_owned()));
    let problem = bad_machine("LoadKg: 1.5", "LoadLb: 1.5", "LoadLb", "common[LoadLb]");
    assert!(matches!(problem, Problem::UnknownName { ref found, .. } if found == "LoadLb"));
    let problem = bad_machine("wire_ohms: 0.05", "wire_ohms: 0", "wire_ohms", "wire_ohms");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
    let problem = bad_machine(
        "WireOhms(Cold1)",
        "WireOhms(Cold9)",
        "Cold9",
        "common[WireOhms(Cold9)]",
    );
    assert!(matches!(problem, Problem::UnknownName { ref found, .. } if found == "Cold9"));
}

#[test]
fn a_type_that_checks_itself_has_all_its_findings_placed() {
    #[derive(Debug, Deserialize)]
    struct List {
        codes: Vec<u8>,
    }
    let check = |list: &List| -> Vec<(String, Problem)> {
        let odd = list
            .codes
            .iter()
            .enumerate()
            .filter(|(_, code)| *code % 2 == 1);
        odd.map(|(n, _)| {
            (
                format!("codes[{n}]"),
                Problem::UnknownPart("odd".to_owned()),
            )
        })
        .collect()
    };
    let text = b"(codes: [\n2,\n3,\n5,\n])";
    let errors = read_checked("list.ron", text, check).expect_err("two are odd");
    let places: Vec<_> = errors.iter().map(|e| (e.line, e.field.as_str())).collect();
    assert_eq!(places, [(3, "codes[1]"), (4, "codes[2]")]);
    assert!(errors[0].to_string().starts_with("list.ron:3: codes[1]: "));
    assert!(read_checked("list.ron", b"(codes: [2])", check).is_ok());
}

#[test]
fn files_that_are_no_content_at_all() {
    let read = |bytes: &[u8]| read_parts("x.ron", bytes).expect_err("it is no list of parts");
    assert_eq!(expect(read(b""), "x.ron", 1, ""), Problem::Empty);
    assert_eq!(expect(read(b" \n\t"), "x.ron", 1, ""), Problem::Empty);
    assert_eq!(
        expect(read(b"(\n\n\xff\xfe"), "x.ron", 3, ""),
        Problem::NotText
    );
    assert!(matches!(
        expect(read(b"\x7fELF\x02\x01"), "x.ron", 1, ""),
        Problem::Syntax(_)
    ));
    let long = vec![b' '; 2 << 20];
    assert!(matches!(
        expect(read(&long), "x.ron", 1, ""),
        Problem::TooLong { .. }
    ));

    let deep = format!("(parts: {}", "[".repeat(100_000));
    let error = read(deep.as_bytes());
    assert_eq!((error.file.as_str(), error.line), ("x.ron", 1));
    // An unknown field is skipped over by a different way through the reader.
    #[derive(Debug, Deserialize)]
    struct Nothing {}
    let deep = format!("(x: {}", "[".repeat(100_000));
    let errors = read_checked("x.ron", deep.as_bytes(), |_: &Nothing| Vec::new());
    assert_eq!(errors.expect_err("too deep")[0].problem, Problem::TooDeep);
}

#[test]
fn damaged_attempts() {
    let sound = "hum.attempt";
    let part = "hum.attempt.part";
    assert_eq!(bad_attempt(sound, "", 1, ""), Damage::Empty);
    assert_eq!(
        bad_attempt(sound, "\u{89}PNG\r\n\u{1a}\n", 1, ""),
        Damage::Foreign
    );
    assert_eq!(
        bad_attempt(sound, b"\xff\xd8\xff\n\xe0", 1, ""),
        Damage::Foreign
    );
    assert_eq!(bad_attempt(sound, SCENARIO, 1, ""), Damage::Foreign);
    assert_eq!(bad_attempt(part, &ATTEMPT[..20], 1, ""), Damage::Truncated);

    let newer = with(ATTEMPT, "format:2,", "format:5,mood:Fine(5),");
    let problem = bad_attempt(sound, newer, 1, "format");
    assert_eq!(problem, Damage::NewerFormat { found: 5, known: 4 });
    let other_text = with(ATTEMPT, ",seed:7", ",seed:7,scenario_text:Some(\"()\")");
    let problem = bad_attempt(sound, other_text, 1, "scenario_text");
    assert_eq!(problem, Damage::OtherText);
    let never = with(ATTEMPT, "format:2", "format:0");
    assert_eq!(
        bad_attempt(sound, never, 1, "format"),
        Damage::NoSuchFormat(0)
    );
    let hash = with(ATTEMPT, "\"0123", "\"xyz3");
    assert!(matches!(
        bad_attempt(sound, hash, 1, "scenario_sha256"),
        Damage::NotAHash(_)
    ));
    let seedless = with(ATTEMPT, ",seed:7", "");
    assert!(matches!(
        bad_attempt(sound, seedless, 1, "seed"),
        Damage::Line(_)
    ));

    let unknown = with(ATTEMPT, "do:Plug", "do:Kick");
    let problem = bad_attempt(sound, unknown, 2, "do");
    assert_eq!(problem, Damage::UnknownAction("Kick".to_owned()));
    let unknown = with(ATTEMPT, "Right", "Up");
    let problem = bad_attempt(sound, unknown, 3, "do");
    assert_eq!(problem, Damage::UnknownAction("Up".to_owned()));
    let pin = with(ATTEMPT, "\"drain-pump.1\"", "\"drain-pump.9\"");
    let problem = bad_attempt(sound, pin, 4, "do.red");
    assert_eq!(problem, Damage::UnknownAction("drain-pump.9".to_owned()));
    let backwards = with(ATTEMPT, "(at:250,do:Probe", "(at:249,do:Probe");
    let problem = bad_attempt(sound, backwards, 4, "at");
    let (before, found) = (Time(250), Time(249));
    assert_eq!(problem, Damage::TimeBackwards { before, found });
    let late = with(ATTEMPT, "at:900", "at:18446744073709551615");
    assert!(matches!(
        bad_attempt(sound, late, 5, "at"),
        Damage::TooLate(_)
    ));
    let score = with(ATTEMPT, "87.5", "NaN");
    assert_eq!(
        bad_attempt(sound, score, 5, "answer.score"),
        Damage::NotFinite("NaN".to_owned())
    );
    let digest = with(ATTEMPT, "digest:\"", "digest:\"x");
    assert!(matches!(
        bad_attempt(sound, digest, 5, "digest"),
        Damage::NotAHash(_)
    ));
    let undigested = with(OLD_ATTEMPT, "format:1", "format:2");
    let error = read_attempt(sound, undigested.as_bytes()).expect_err("an end of the old format");
    assert_eq!(error.line, 3, "{error}");
    let long = vec![b' '; LONGEST_ATTEMPT_BYTES + 1];
    assert!(matches!(
        bad_attempt(sound, long, 1, ""),
        Damage::TooLong { .. }
    ));
    let state = with(ATTEMPT, "00c0ffee", "coffee");
    assert!(matches!(
        bad_attempt(sound, state, 5, "state"),
        Damage::NotAHash(_)
    ));
    let more = format!("{ATTEMPT}(at:901,do:Unplug)\n");
    assert_eq!(bad_attempt(sound, more, 6, ""), Damage::AfterEnd);

    // Truncated: between two lines, and inside one.
    let end = ATTEMPT.find("End").expect("it has an end");
    assert_eq!(
        bad_attempt(sound, &ATTEMPT[..end], 4, ""),
        Damage::Truncated
    );
    assert_eq!(
        bad_attempt(sound, &ATTEMPT[..end - 9], 4, ""),
        Damage::Truncated
    );
    assert_eq!(
        bad_attempt(sound, &ATTEMPT[..ATTEMPT.len() - 1], 5, ""),
        Damage::Truncated
    );

    // Only the last line of a part may be torn.
    let torn = read_attempt(part, &ATTEMPT.as_bytes()[..end - 9]).expect("a part may be torn");
    assert_eq!((torn.torn, torn.actions.len()), (true, 2));
    let inside = with(ATTEMPT, "Detent(Right))", "Detent(Ri");
    let error = read_attempt(part, inside.as_bytes()).expect_err("torn inside");
    assert_eq!((error.line, error.field.as_str()), (3, "do"), "{error}");
    let bytes = [&ATTEMPT.as_bytes()[..end], b"\xff\xff\n"].concat();
    assert_eq!(bad_attempt(part, bytes, 5, ""), Damage::NotText);
}

/// What the program drew is in no file, and goes with its attempt; every other attempt names its scenario's file.
#[test]
fn an_attempt_carries_its_scenario_where_that_was_drawn() {
    let text = "// drawn \"here\"\n(\n\ttitle: \u{e1},\n)\n";
    let header = Header::with_scenario("drawn.ron", text, 7);
    let log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
    let end = Footer {
        at: Time(9),
        state: "00c0ffee".to_owned(),
        answer: Answer::Withheld,
    };
    let bytes = log.finish(&end).expect("memory does not fail");
    let attempt = read_attempt("a.attempt", &bytes).expect("it reads back");
    assert_eq!(attempt.header, header);
    assert_eq!(attempt.header.scenario_text.as_deref(), Some(text));
    assert_eq!(attempt.seal, Seal::Holds);
    assert_eq!(attempt.check_scenario("a.attempt", text), Ok(()));
    let named = Header::new("hum.ron", SCENARIO, 7);
    assert_eq!((named.format, named.scenario_text), (2, None));
}

/// An unfinished second visit after `first`, which is put into its first line as it stands.
fn second_visit(first: &str) -> String {
    let mut header = Header::of_second_visit("hum.attempt", ATTEMPT.as_bytes()).expect("sound");
    header.first_visit = Some(first.to_owned());
    let log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
    String::from_utf8(log.into_inner()).expect("UTF-8")
}

#[test]
fn an_attempt_of_a_second_visit_carries_the_first_one() {
    let header = Header::of_second_visit("hum.attempt", ATTEMPT.as_bytes()).expect("sound");
    assert_eq!((header.format, header.seed), (4, 7));
    assert_eq!(header.first_visit.as_deref(), Some(ATTEMPT));
    let text = second_visit(ATTEMPT);
    let attempt = read_attempt("second.part", text.as_bytes()).expect("just written");
    assert_eq!(attempt.header, header);
    let first = attempt.first_visit.expect("it is carried");
    assert_eq!(
        *first,
        read_attempt("hum.attempt", ATTEMPT.as_bytes()).expect("sound")
    );
    // The oldest format and another end of line are carried as they are.
    for first in [OLD_ATTEMPT.to_owned(), ATTEMPT.replace('\n', "\r\n")] {
        let header = Header::of_second_visit("a.attempt", first.as_bytes()).expect("sound");
        assert_eq!((header.format, header.first_visit), (4, Some(first)));
    }
}

#[test]
fn a_spoiled_first_visit_is_refused_with_its_line() {
    let refused = |first: &str| {
        let text = second_visit(first);
        let inside = bad_attempt("second.part", text, 1, "first_visit");
        match inside {
            Damage::InFirstVisit { line, problem } => (line, *problem),
            other => (0, other),
        }
    };
    let end = ATTEMPT.find("End").expect("it has an end");
    assert_eq!(refused(""), (1, Damage::Empty));
    assert_eq!(refused("hello\n"), (1, Damage::Foreign));
    assert_eq!(refused(&ATTEMPT[..end]), (4, Damage::Truncated));
    let unknown = with(ATTEMPT, "do:Plug", "do:Kick");
    let kick = Damage::UnknownAction("Kick".to_owned());
    assert_eq!(refused(&unknown), (2, kick));
    let other = with(ATTEMPT, "seed:7", "seed:8");
    assert_eq!(refused(&other), (0, Damage::OtherFirstVisit));
    let other = with(ATTEMPT, "\"0123", "\"1123");
    assert_eq!(refused(&other), (0, Damage::OtherFirstVisit));
    assert_eq!(
        refused(&second_visit(ATTEMPT)),
        (1, Damage::SecondVisit),
        "it is refused before it is read any deeper"
    );
    let long = " ".repeat(LONGEST_FIRST_VISIT_BYTES + 1);
    let most = LONGEST_FIRST_VISIT_BYTES;
    assert_eq!(refused(&long), (1, Damage::TooLong { most }));

    // The same where the second visit is to begin.
    let begun = |first: &str| {
        Header::of_second_visit("hum.part", first.as_bytes()).map_err(|error| error.problem)
    };
    assert_eq!(begun(&ATTEMPT[..end]), Err(Damage::Truncated));
    assert_eq!(begun(&second_visit(ATTEMPT)), Err(Damage::SecondVisit));
}

#[test]
fn the_digest_of_a_second_visit_binds_the_first_one() {
    let text = second_visit(ATTEMPT);
    let attempt = read_attempt("a.part", text.as_bytes()).expect("just written");
    let log = AttemptLog::resume(text.into_bytes(), &attempt).expect("not finished");
    let end = Footer {
        at: Time(9),
        state: "00c0ffee".to_owned(),
        answer: Answer::Withheld,
    };
    let bytes = log.finish(&end).expect("memory does not fail");
    let text = String::from_utf8(bytes).expect("UTF-8");
    let seal = |text: &str| read_attempt("a.attempt", text.as_bytes()).map(|attempt| attempt.seal);
    assert_eq!(seal(&text), Ok(Seal::Holds));
    assert_eq!(seal(&with(&text, "at:100", "at:101")), Ok(Seal::Broken));
}

#[test]
fn the_digest_of_an_attempt_tells_every_change() {
    let seal = |text: &str| read_attempt("a.attempt", text.as_bytes()).map(|attempt| attempt.seal);
    assert_eq!(seal(ATTEMPT), Ok(Seal::Holds));
    for (old, new) in [
        ("0.1.0", "0.1.1"),
        ("scenarios/hum.ron", "scenarios/hem.ron"),
        ("\"0123456789", "\"0123456788"),
        ("seed:7", "seed:8"),
        ("at:100", "at:101"),
        ("Right", "Left"),
        ("(at:100,do:Plug)\n", ""),
        (
            "(at:100,do:Plug)\n",
            "(at:100,do:Plug)\n(at:100,do:Unplug)\n",
        ),
        ("at:900", "at:901"),
        ("00c0ffee", "00c0ffef"),
        ("87.5", "88.5"),
        ("Shown(score:87.5)", "Withheld"),
    ] {
        assert_eq!(seal(&with(ATTEMPT, old, new)), Ok(Seal::Broken), "{new}");
    }
}

#[test]
fn an_attempt_of_the_first_format_is_read_and_gone_on_with() {
    let old = read_attempt("a.attempt", OLD_ATTEMPT.as_bytes()).expect("it is still read");
    assert_eq!(old.seal, Seal::Without);
    let score = 87.5;
    let footer = old.footer.expect("finished");
    assert_eq!(footer.answer, Answer::Shown { score });
    let end = OLD_ATTEMPT.find("End").expect("it has an end");
    let part = &OLD_ATTEMPT.as_bytes()[..end];
    let attempt = read_attempt("a.part", part).expect("a part");
    let log = AttemptLog::resume(part.to_vec(), &attempt).expect("not finished");
    let bytes = log.finish(&footer).expect("memory does not fail");
    assert_eq!(bytes, OLD_ATTEMPT.as_bytes());
}

#[test]
fn a_byte_order_mark_is_skipped() {
    let marked = |text: &str| format!("\u{feff}{text}").into_bytes();
    assert_eq!(read_parts("p", &marked(PARTS)), Ok(parts()));
    assert!(read_catalogue("c", &marked(CATALOGUE), &parts()).is_ok());
    assert!(read_machine("m", &marked(&machine())).is_ok());
    assert!(read_scenario("s", &marked(SCENARIO), &catalogue(), &parts(), &boards()).is_ok());
    let script = read_script("s", &marked("Unplug\n")).expect("a script");
    assert_eq!(script, [(1, ScriptStep::Do(Action::Unplug))]);
    let bytes = marked(ATTEMPT);
    let attempt = read_attempt("a", &bytes).expect("an attempt");
    assert_eq!(
        (attempt.seal, attempt.whole_bytes),
        (Seal::Holds, bytes.len())
    );
    // What stands behind it keeps its place, and a mark alone is nothing.
    let error = read_script("s", &marked("Unplug\nKick\n")).expect_err("no such step");
    assert_eq!((error.line, error.column), (2, 1));
    assert_eq!(
        read_parts("p", &marked("")).expect_err("nothing").problem,
        Problem::Empty
    );
}

#[test]
fn a_script_that_no_job_has_time_for_is_refused_at_its_line() {
    for line in [
        "Wait(s: 10000000)",
        "Wait(s: 18446744073709551615)",
        "Watch(s: 10000000)",
        "Until(what: Idle, limit_s: 10000000)",
        "Until(what: Idle, limit_s: 18446744073709551615)",
        "Rest(ms: 10000000000)",
        "Rest(ms: 18446744073709551615)",
        "Hold(button: Start, ms: 10000000000)",
        "Turn(way: Left, detents: 1, every_ms: 10000000000)",
        "Turn(way: Left, detents: 255, every_ms: 18446744073709551615)",
        "Point(to: 3, every_ms: 10000000000)",
    ] {
        let text = format!("Wait(s: 1)\n{line}\n");
        let error = read_script("long.script", text.as_bytes()).expect_err(line);
        assert_eq!(error.line, 2, "{line}: {error}");
        assert!(error.to_string().contains("48 h"), "{line}: {error}");
    }
    // A day is no mistake, and three of them are, at the line that is too much.
    let day = "Wait(s: 86400)\n";
    assert!(read_script("a.script", day.as_bytes()).is_ok());
    let error = read_script("a.script", day.repeat(3).as_bytes()).expect_err("three days");
    assert_eq!(error.line, 3);
}

#[test]
fn an_attempt_that_outlasts_the_longest_job_is_refused_at_its_line() {
    let late = with(ATTEMPT, "at:100,", "at:1000000000,");
    let problem = bad_attempt("hum.attempt", late, 2, "at");
    assert!(matches!(problem, Damage::TooLate(_)));
}

#[test]
fn an_attempt_at_a_scenario_that_was_changed_is_refused() {
    let header = Header::new("scenarios/hum.ron", SCENARIO, 7);
    let mut log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
    log.push(Time(1), &Action::Plug)
        .expect("memory does not fail");
    let bytes = log.into_inner();
    let attempt = read_attempt("hum.part", &bytes).expect("just written");
    assert_eq!(attempt.check_scenario("hum.part", SCENARIO), Ok(()));
    let changed = with(SCENARIO, "seed: 7", "seed: 8");
    let error = attempt
        .check_scenario("hum.part", &changed)
        .expect_err("it was changed");
    assert_eq!((error.line, error.field.as_str()), (1, "scenario_sha256"));
    assert!(matches!(error.problem, Damage::ScenarioChanged { .. }));
}

/// Put `bytes` through every reader; that none panics is what is tested.
fn read_everything(bytes: &[u8]) {
    let place = |line: usize, column: usize| assert!(line >= 1 && column >= 1);
    if let Err(e) = read_parts("f", bytes) {
        place(e.line, e.column);
    }
    if let Err(e) = read_catalogue("f", bytes, &parts()) {
        place(e.line, e.column);
    }
    if let Err(e) = read_machine("f", bytes) {
        place(e.line, e.column);
    }
    if let Err(e) = read_scenario("f", bytes, &catalogue(), &parts(), &boards()) {
        place(e.line, e.column);
    }
    for file in ["f.attempt", "f.part"] {
        match read_attempt(file, bytes) {
            Err(e) => place(e.line, 1),
            // What is read can be written, and is then the same.
            Ok(attempt) => {
                let mut log = AttemptLog::begin(Vec::new(), &attempt.header).expect("memory");
                for timed in &attempt.actions {
                    log.push(timed.at, &timed.action).expect("memory");
                }
                let bytes = match &attempt.footer {
                    Some(footer) => log.finish(footer).expect("memory"),
                    None => log.into_inner(),
                };
                let again = read_attempt("f.part", &bytes).expect("just written");
                assert_eq!(again.actions, attempt.actions);
                assert_eq!(again.footer, attempt.footer);
                assert_eq!(again.header, attempt.header);
            }
        }
    }
}

/// A sound file of some kind.
fn sound_file() -> impl Strategy<Value = Vec<u8>> {
    prop_oneof![
        Just(PARTS.to_owned()),
        Just(CATALOGUE.to_owned()),
        Just(SCENARIO.to_owned()),
        Just(ATTEMPT.to_owned()),
        Just(machine()),
    ]
    .prop_map(String::into_bytes)
}

proptest! {
    #[test]
    fn no_bytes_make_a_reader_panic(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        read_everything(&bytes);
    }

    #[test]
    fn no_text_makes_a_reader_panic(text in "\\PC{0,200}") {
        read_everything(text.as_bytes());
    }

    #[test]
    fn no_flipped_bytes_make_a_reader_panic(
        file in sound_file(),
        flips in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6),
    ) {
        let mut bytes = file;
        for (at, byte) in flips {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        read_everything(&bytes);
    }

    #[test]
    fn no_cut_or_doubled_stretch_makes_a_reader_panic(
        file in sound_file(),
        a in any::<prop::sample::Index>(),
        b in any::<prop::sample::Index>(),
        double in any::<bool>(),
    ) {
        let (a, b) = (a.index(file.len()), b.index(file.len()));
        let (a, b) = (a.min(b), a.max(b));
        let bytes = if double {
            [&file[..b], &file[a..]].concat()
        } else {
            [&file[..a], &file[b..]].concat()
        };
        read_everything(&bytes);
    }

    #[test]
    fn a_log_cut_anywhere_is_resumed_with_all_its_whole_lines(cut in 0..ATTEMPT.len()) {
        let end = ATTEMPT.find("End").expect("it has an end");
        let bytes = &ATTEMPT.as_bytes()[..cut.min(end)];
        let lines = bytes.iter().filter(|b| **b == b'\n').count();
        match read_attempt("f.part", bytes) {
            Ok(attempt) => prop_assert_eq!(attempt.actions.len() + 1, lines),
            Err(error) => prop_assert_eq!((lines, error.line), (0, 1)),
        }
    }
}

#[test]
fn the_end_of_an_attempt_keeps_every_bit_of_the_score() {
    for score in [0.1 + 0.2, 1.0 / 3.0, 100.0, 0.0, 5e-324] {
        let header = Header::new("s.ron", "", 0);
        let log = AttemptLog::begin(Vec::new(), &header).expect("memory does not fail");
        let (at, state, answer) = (Time(3), "ff".to_owned(), Answer::Shown { score });
        let bytes = log
            .finish(&Footer { at, state, answer })
            .expect("memory does not fail");
        let read = read_attempt("a", &bytes)
            .expect("just written")
            .footer
            .expect("finished");
        let Answer::Shown { score: again } = read.answer else {
            panic!("it was shown");
        };
        assert_eq!(again.to_bits(), f64::to_bits(score));
    }
}

#[test]
fn a_file_with_very_many_mistakes_is_refused_at_its_first() {
    // Looking through the whole text once for every mistake would take hours.
    let one = "(id:\"x\",component:Belt,weight:0,cured_by:\"x\",changes:[]),\n";
    let text = format!("(modes:[\n{}])", one.repeat(15_000));
    let error = read_catalogue("many.ron", text.as_bytes(), &parts()).expect_err("all wrong");
    let problem = expect(error, "many.ron", 2, "modes[0].weight");
    assert!(matches!(problem, Problem::OutOfRange { .. }));
}

#[test]
fn every_file_of_the_project_is_built_in_and_sound() {
    let root = std::path::Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
    let mut found = Vec::new();
    let mut folders = vec![root.join("assets"), root.join("scenarios")];
    while let Some(folder) = folders.pop() {
        // Scenarios come after the machine and its catalogue.
        let Ok(entries) = std::fs::read_dir(&folder) else {
            continue;
        };
        for entry in entries {
            let path = entry.expect("a folder of the project can be listed").path();
            if path.is_dir() {
                // Pages that the program makes; it carries none of them.
                if !path.ends_with("assets/reference") {
                    folders.push(path);
                }
            } else if path
                .extension()
                .is_some_and(|e| ["ron", "ftl", "md"].iter().any(|known| e == *known))
            {
                let name = path.strip_prefix(root).expect("it was found there");
                found.push(name.display().to_string().replace('\\', "/"));
            }
        }
    }
    found.sort();
    let mut listed: Vec<String> = builtin::files()
        .map(|(name, _)| name)
        .filter(|name| !name.ends_with(".table"))
        .collect();
    listed.sort();
    assert_eq!(listed, found, "what is built in and the folders");

    for name in &listed {
        match name.as_str() {
            "assets/parts.ron" => assert!(builtin::parts().is_ok(), "{:?}", builtin::parts()),
            "assets/catalogue.ron" => {
                assert!(builtin::catalogue().is_ok(), "{:?}", builtin::catalogue())
            }
            "assets/machine.ron" => assert!(builtin::machine().is_ok(), "{:?}", builtin::machine()),
            // Language files are tested in texts.rs, boards and scenarios with the controller.
            _ => {}
        }
    }
    let error = builtin::text("assets/none.ron").expect_err("there is none");
    assert!(
        error
            .to_string()
            .starts_with("assets/none.ron: is not built into"),
        "{error}"
    );
}
