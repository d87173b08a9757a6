//! A hundred ways to spoil a sound scenario, board, guide, examination or course: each gets the error that says
//! what is wrong, at its line and field. All are slips of people who write files by hand (common
//! practice, no source). What only a run of the machine can tell is no matter for a reader.

use detent_content::{
    ContentError, KnownBoard, Problem, builtin, check_class_plan, read_board, read_course,
    read_examination, read_guide, read_scenario,
};
use std::collections::BTreeSet;

/// A kind of file, which names the sound one that is spoiled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    Scenario,
    Board,
    Guide,
    Examination,
    Course,
    Plan,
}
use Kind::{Board, Course, Examination, Guide, Plan, Scenario};

const SOUND_SCENARIO: &str = r#"// An invented job.
(
    title: (en: "It hums", es: "Zumba"),
    complaint: (
        en: "It hums and the water stays in.",
        es: "Zumba y el agua no sale.",
    ),
    goal: (en: "Measure first.", es: "Medir primero."),
    course: Some((part: LookAlikes, number: 4, after: ["no-hot-water"])),
    board: "arc-dial",
    mains: V120Hz60,
    seed: 7,
    fault: DrawFrom([
        "drain-pump.seized",
        "drain-hose.blocked",
    ]),
    dial_wear: 0.5,
    stale_codes: [11, 23],
    par_minutes: 85.0,
    budget: 160.0,
    live_tests_allowed: false,
    points: (entry: 10.0, reading: 10.0, reasoning: 35.0, safety: 15.0, cost: 10.0, proof: 20.0),
)
"#;

/// What the sound job hides, as it is written.
const DRAW: &str = r#"DrawFrom([
        "drain-pump.seized",
        "drain-hose.blocked",
    ])"#;

const SOUND_GUIDE: &str = r#"// An invented guide.
(
    steps: [
        (
            say: (en: "Pull the plug.", es: "Desenchufe."),
            goal: Bench(Did(Unplug)),
            mark: ["plug"],
            shown: ["Unplug"],
        ),
        (
            say: (en: "Look inside.", es: "Mire dentro."),
            goal: Window(Looked(Inside)),
            shown: ["Wait(s: 5)", "OpenCabinet"],
            astray: [
                (
                    after: Did(Plug),
                    say: (en: "Pull it again.", es: "Vuelva a sacarlo."),
                    shown: ["Unplug"],
                ),
            ],
        ),
    ],
)
"#;

const SOUND_EXAMINATION: &str = r#"// An invented examination.
(
    title: (en: "Two jobs", es: "Dos trabajos"),
    jobs: [
        "dark-machine",
        "drain-code",
    ],
    minutes: 40,
    sheet: [Lamps, Codes],
)
"#;

const SOUND_COURSE: &str = r#"// An invented course.
(
    format: 1,
    title: (en: "Two jobs", es: "Dos trabajos"),
    author: "A. Instructor",
    license: "CC-BY-4.0",
    version: "1.2",
    plan: [
        "dark-machine",
        "drain-code",
    ],
    packed_with: "0.1.0",
    files: [
        (path: "parts.ron", sha256: "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"),
        (path: "scenarios/a.ron", sha256: "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"),
    ],
)
"#;

impl Kind {
    fn sound(self) -> &'static str {
        match self {
            Scenario => SOUND_SCENARIO,
            Board => builtin::text("assets/boards/arc-dial.ron").expect("it is built in"),
            Guide => SOUND_GUIDE,
            Examination => SOUND_EXAMINATION,
            Course => SOUND_COURSE,
            Plan => builtin::text("assets/templates/plan.en.ron").expect("it is built in"),
        }
    }

    /// Every error in a text; none when it is sound.
    fn errors(self, text: &str) -> Vec<ContentError> {
        let bytes = text.as_bytes();
        match self {
            Scenario => {
                let catalogue = builtin::catalogue().expect("a sound catalogue");
                let parts = builtin::parts().expect("sound parts");
                let board = read_board("b", Board.sound().as_bytes()).expect("a sound board");
                let boards = [KnownBoard::of(&board)];
                let read = read_scenario("spoiled.ron", bytes, &catalogue, &parts, &boards);
                read.err().into_iter().collect()
            }
            Board => read_board("spoiled.ron", bytes).err().unwrap_or_default(),
            Guide => read_guide("spoiled.ron", bytes).err().into_iter().collect(),
            Examination => {
                let known = ["dark-machine", "drain-code"];
                let read = read_examination("spoiled.ron", bytes, &known);
                read.err().into_iter().collect()
            }
            Course => {
                let known = ["dark-machine", "drain-code"];
                let read = read_course("spoiled.ron", bytes, Some(&known));
                read.err().unwrap_or_default()
            }
            Plan => {
                let known = ["exam-120-v-dial", "exam-no-live-tests"];
                let read = check_class_plan("spoiled.ron", bytes, &known);
                read.err().unwrap_or_default()
            }
        }
    }
}

/// One way to spoil a file: in the text `old` is written as `new`.
struct Way {
    kind: Kind,
    what: &'static str,
    old: &'static str,
    new: &'static str,
    error: &'static str,
    field: &'static str,
    /// The text on whose first line the error is told; where it differs from the sound one, if not given.
    at: Option<&'static str>,
}

const fn way(
    kind: Kind,
    what: &'static str,
    (old, new): (&'static str, &'static str),
    error: &'static str,
    field: &'static str,
) -> Way {
    Way {
        kind,
        what,
        old,
        new,
        error,
        field,
        at: None,
    }
}

impl Way {
    const fn told_at(mut self, at: &'static str) -> Way {
        self.at = Some(at);
        self
    }
}

const WAYS: &[Way] = &[
    way(
        Board,
        "a code in letters",
        ("code: 11,", "code: \"E1\","),
        "NotSayable",
        "codes[0].code",
    ),
    way(
        Board,
        "lamps of two colors",
        (
            "lock_lamp: true",
            "colors: [Amber, Blue],\n        lock_lamp: true",
        ),
        "NotSayable",
        "lamps.colors",
    ),
    way(
        Board,
        "a turn to a position",
        ("Turn(to: Left, detents: 6)", "TurnTo(position: 6)"),
        "NotSayable",
        "gesture.steps[0]",
    ),
    way(
        Board,
        "a mode in letters where there are no segments",
        ("hold: Dark", "hold: Letters('F', '-')"),
        "LettersWithoutSegments",
        "lamps.hold",
    ),
    // Scenarios: what is no RON.
    way(
        Scenario,
        "a comma left out behind a field",
        ("seed: 7,", "seed: 7"),
        "ExpectedComma",
        "seed",
    ),
    way(
        Scenario,
        "a comma left out in a list",
        ("seized\",", "seized\""),
        "ExpectedComma",
        "fault[0]",
    ),
    way(
        Scenario,
        "a bracket left out",
        ("])),\n    board", "]),\n    board"),
        "ExpectedOptionEnd",
        "course",
    ),
    way(
        Scenario,
        "a bracket too many",
        ("Medir primero.\"),", "Medir primero.\")),"),
        "TrailingCharacters",
        "",
    ),
    way(
        Scenario,
        "a square bracket for a round one",
        ("\"Zumba\"),", "\"Zumba\"],"),
        "ExpectedComma",
        "title.es",
    ),
    way(
        Scenario,
        "a quote left out",
        ("es: \"Zumba\"", "es: Zumba"),
        "ExpectedString",
        "title.es",
    ),
    way(
        Scenario,
        "a quote never closed",
        ("proof: 20.0),\n)", "proof: \"20.0),\n)"),
        "ExpectedFloat",
        "points.proof",
    ),
    way(
        Scenario,
        "an equals sign for a colon",
        ("seed: 7", "seed = 7"),
        "ExpectedMapColon",
        "seed",
    ),
    way(
        Scenario,
        "a semicolon for a comma",
        ("seed: 7,", "seed: 7;"),
        "ExpectedComma",
        "seed",
    ),
    way(
        Scenario,
        "a comment never closed",
        ("// An invented", "/* An invented"),
        "UnclosedBlockComment",
        "",
    ),
    way(
        Scenario,
        "a decimal comma",
        ("85.0", "85,0"),
        "SuggestRawIdentifier",
        "par_minutes",
    ),
    way(
        Scenario,
        "an escape that there is not",
        ("It hums\"", "It \\hums\""),
        "InvalidEscape",
        "title.en",
    ),
    // Scenarios: fields and types.
    way(
        Scenario,
        "a field misspelled",
        ("budget:", "bugdet:"),
        "UnknownField",
        "bugdet",
    ),
    way(
        Scenario,
        "a field left out",
        ("    board: \"arc-dial\",\n", ""),
        "MissingField",
        "board",
    )
    .told_at("(\n    title"),
    way(
        Scenario,
        "a language left out",
        (", es: \"Zumba\"", ""),
        "MissingField",
        "title.es",
    ),
    way(
        Scenario,
        "a field twice",
        ("seed: 7,", "seed: 7,\n    seed: 8,"),
        "RepeatedField",
        "seed",
    )
    .told_at("seed: 8"),
    way(
        Scenario,
        "a side of the points twice",
        ("cost: 10.0", "entry: 10.0"),
        "RepeatedField",
        "points.entry",
    ),
    way(
        Scenario,
        "a supply that there is not",
        ("V120Hz60", "V110Hz60"),
        "UnknownName",
        "mains",
    ),
    way(
        Scenario,
        "a kind of fault that there is not",
        ("DrawFrom([", "Drawn(["),
        "UnknownName",
        "fault",
    ),
    way(
        Scenario,
        "a word for a number",
        ("seed: 7", "seed: seven"),
        "ExpectedInteger",
        "seed",
    ),
    way(
        Scenario,
        "a number for a text",
        ("board: \"arc-dial\"", "board: 7"),
        "ExpectedString",
        "board",
    ),
    way(
        Scenario,
        "a number for yes or no",
        ("allowed: false", "allowed: 0"),
        "ExpectedBoolean",
        "live_tests_allowed",
    ),
    way(
        Scenario,
        "a text for a list",
        ("[11, 23]", "\"11\""),
        "ExpectedArray",
        "stale_codes",
    ),
    way(
        Scenario,
        "a number below zero",
        ("seed: 7", "seed: -7"),
        "IntegerRange",
        "seed",
    ),
    way(
        Scenario,
        "a code of three digits",
        ("[11, 23]", "[11, 230]"),
        "OutOfRange",
        "stale_codes[1]",
    ),
    way(
        Scenario,
        "a code far too great",
        ("[11, 23]", "[11, 2300]"),
        "IntegerRange",
        "stale_codes[1]",
    ),
    way(
        Scenario,
        "a number without end",
        ("160.0", "1e999"),
        "NotFinite",
        "budget",
    ),
    way(
        Scenario,
        "a place in the course unwrapped",
        ("Some((part", "((part"),
        "ExpectedOption",
        "course",
    ),
    way(
        Scenario,
        "a part of the course that there is not",
        ("LookAlikes", "Lookalikes"),
        "UnknownName",
        "course.part",
    ),
    // Scenarios: what is read but cannot be.
    way(
        Scenario,
        "a title of blanks",
        ("\"It hums\"", "\"  \""),
        "Nothing",
        "title.en",
    ),
    way(
        Scenario,
        "a complaint left empty",
        ("\"Zumba y el agua no sale.\"", "\"\""),
        "Nothing",
        "complaint.es",
    ),
    way(
        Scenario,
        "a board that there is not",
        ("arc-dial", "arc-dail"),
        "UnknownBoard",
        "board",
    ),
    way(
        Scenario,
        "a code that the board lacks",
        ("[11, 23]", "[11, 24]"),
        "UnknownCode",
        "stale_codes[1]",
    ),
    way(
        Scenario,
        "a fault that the catalogue lacks",
        ("drain-hose.blocked", "drain-hose.bent"),
        "UnknownMode",
        "fault[1]",
    ),
    way(
        Scenario,
        "a fault to draw twice",
        ("drain-hose.blocked", "drain-pump.seized"),
        "Repeated",
        "fault[1]",
    ),
    way(
        Scenario,
        "no fault to draw",
        (
            "\"drain-pump.seized\",\n        \"drain-hose.blocked\",\n    ",
            "",
        ),
        "Nothing",
        "fault",
    )
    .told_at("fault: DrawFrom"),
    way(
        Scenario,
        "a component to draw from that there is not",
        (DRAW, "DrawWhere((components: [DrainPomp]))"),
        "UnknownName",
        "fault.components[0]",
    ),
    way(
        Scenario,
        "a kind of fault to draw that there is not",
        (DRAW, "DrawWhere((kinds: [Opened]))"),
        "UnknownName",
        "fault.kinds[0]",
    ),
    way(
        Scenario,
        "a way of being there that there is not",
        (DRAW, "DrawWhere((presences: [Sometimes]))"),
        "UnknownName",
        "fault.presences[0]",
    ),
    way(
        Scenario,
        "a field that no draw has",
        (DRAW, "DrawWhere((component: [Belt]))"),
        "UnknownField",
        "fault.component",
    ),
    way(
        Scenario,
        "a code to draw for that the board cannot store",
        (DRAW, "DrawWhere((codes: [98]))"),
        "UnknownCode",
        "fault.codes[0]",
    ),
    way(
        Scenario,
        "a draw without a fault that there is not",
        (DRAW, "DrawWhere((without: [\"belt.gone\"]))"),
        "UnknownMode",
        "fault.without[0]",
    ),
    way(
        Scenario,
        "a kind to draw twice",
        (DRAW, "DrawWhere((kinds: [Open, Open]))"),
        "Repeated",
        "fault.kinds[1]",
    ),
    way(
        Scenario,
        "a weight below nothing",
        (DRAW, "DrawWhere((least_weight: -1.0))"),
        "OutOfRange",
        "fault.least_weight",
    ),
    way(
        Scenario,
        "a draw that takes no fault of the catalogue",
        (DRAW, "DrawWhere((components: [Belt], kinds: [Short]))"),
        "NothingToDraw",
        "fault",
    ),
    way(
        Scenario,
        "a draw of faults more common than they may be",
        (DRAW, "DrawWhere((least_weight: 5.0, most_weight: 4.0))"),
        "NothingToDraw",
        "fault",
    ),
    way(
        Scenario,
        "wear above worn out",
        ("dial_wear: 0.5", "dial_wear: 50.0"),
        "OutOfRange",
        "dial_wear",
    ),
    way(
        Scenario,
        "wear below new",
        ("dial_wear: 0.5", "dial_wear: -0.5"),
        "OutOfRange",
        "dial_wear",
    ),
    way(
        Scenario,
        "no time",
        ("85.0", "0.0"),
        "OutOfRange",
        "par_minutes",
    ),
    way(
        Scenario,
        "too little time",
        ("85.0", "2.0"),
        "TooLittleTime",
        "par_minutes",
    ),
    way(
        Scenario,
        "more time than a job may take",
        ("85.0", "8500000.0"),
        "OutOfRange",
        "par_minutes",
    ),
    way(
        Scenario,
        "no money",
        ("160.0", "0.0"),
        "OutOfRange",
        "budget",
    ),
    way(
        Scenario,
        "too little money",
        ("160.0", "1.0"),
        "TooLittleMoney",
        "budget",
    ),
    way(
        Scenario,
        "points below zero",
        ("cost: 10.0", "cost: -10.0"),
        "OutOfRange",
        "points.cost",
    ),
    way(
        Scenario,
        "points that are not a hundred",
        ("cost: 10.0", "cost: 11.0"),
        "OutOfRange",
        "points",
    ),
    // Boards: fields and types.
    way(
        Board,
        "a comma left out",
        ("tap_ms: 800,", "tap_ms: 800"),
        "ExpectedComma",
        "tap_ms",
    ),
    way(
        Board,
        "a field misspelled",
        ("tap_ms", "tap"),
        "UnknownField",
        "tap",
    ),
    way(
        Board,
        "a field left out",
        ("    lock: (hold_limit_s: 240),\n", ""),
        "MissingField",
        "lock",
    )
    .told_at("(\n    id:"),
    way(
        Board,
        "a field in a row left out",
        ("(code: 11, monitor: FillNone)", "(code: 11)"),
        "MissingField",
        "codes[0].monitor",
    ),
    way(
        Board,
        "a monitor that there is not",
        (
            "(code: 11, monitor: FillNone)",
            "(code: 11, monitor: FillNever)",
        ),
        "UnknownName",
        "codes[0].monitor",
    ),
    way(
        Board,
        "a button that there is not",
        ("[Start, Stop]", "[Start, Halt]"),
        "UnknownName",
        "panel.buttons[1]",
    ),
    way(
        Board,
        "a decimal fraction for a whole number",
        ("debounce_ms: 30", "debounce_ms: 30.5"),
        "ExpectedComma",
        "debounce_ms",
    ),
    way(
        Board,
        "a position below zero",
        (
            "position: 1, routine: Recall",
            "position: -1, routine: Recall",
        ),
        "IntegerRange",
        "menu[0].position",
    ),
    way(
        Board,
        "a phase that there is not",
        ("Rest(seconds: 20)", "Pause(seconds: 20)"),
        "UnknownName",
        "programs[0].phases[7]",
    ),
    way(
        Board,
        "a supply twice",
        ("V230Hz50: (reset_v", "V120Hz60: (reset_v"),
        "SupplyUnmatched",
        "supply",
    )
    .told_at("supply: {"),
    // Boards: panel, lamps, numbers.
    way(
        Board,
        "no supply",
        ("[V120Hz60, V230Hz50]", "[]"),
        "Empty",
        "mains",
    ),
    way(
        Board,
        "a supply without levels",
        ("        V230Hz50: (reset_v: 50.0, sag_v: 212.0),\n", ""),
        "SupplyUnmatched",
        "supply",
    )
    .told_at("supply: {"),
    way(
        Board,
        "levels of a supply that it is not made for",
        ("[V120Hz60, V230Hz50]", "[V120Hz60]"),
        "SupplyUnmatched",
        "supply[V230Hz50]",
    )
    .told_at("V230Hz50: (reset_v"),
    way(
        Board,
        "a name that is neither a text key nor words",
        ("\"board-arc-dial\"", "\"board_arc\""),
        "TextKey",
        "name",
    ),
    way(
        Board,
        "no button to start",
        ("[Start, Stop]", "[Stop]"),
        "NoButton",
        "panel.buttons",
    ),
    way(
        Board,
        "a dial of no detents",
        ("detents: 24)", "detents: 1)"),
        "Bounds",
        "panel.selector",
    ),
    way(
        Board,
        "a lamp that flashes too fast",
        ("blink_ms: 500", "blink_ms: 100"),
        "Flashing",
        "lamps.blink_ms",
    ),
    way(
        Board,
        "digits that follow too fast",
        ("turns_ms: 800", "turns_ms: 80"),
        "Flashing",
        "lamps.turns_ms",
    ),
    way(
        Board,
        "weights without a seven",
        ("units: [5, 4, 2, 1]", "units: [5, 4, 1, 1]"),
        "NoSuchDigit",
        "lamps.signs.units",
    ),
    way(
        Board,
        "a contact that settles for too long",
        ("debounce_ms: 30", "debounce_ms: 3000"),
        "Bounds",
        "debounce_ms",
    ),
    way(
        Board,
        "a supply that sags below its reset",
        ("sag_v: 110.0", "sag_v: 40.0"),
        "Bounds",
        "supply[V120Hz60].sag_v",
    ),
    way(
        Board,
        "a sensor without a range",
        ("min_v: 0.2, max_v: 4.8", "min_v: 0.6, max_v: 4.8"),
        "Bounds",
        "pressure.zero_v",
    ),
    way(
        Board,
        "a thermistor of no resistance",
        ("r25_ohms: 10000.0", "r25_ohms: 0.0"),
        "Bounds",
        "thermistor.r25_ohms",
    ),
    way(
        Board,
        "an overload below the least current",
        ("overload_a: 9.0", "overload_a: 0.3"),
        "Bounds",
        "motor.min_a",
    )
    .told_at("min_a"),
    way(
        Board,
        "a spin that is reached beyond itself",
        ("reached_share: 0.85", "reached_share: 85.0"),
        "Bounds",
        "motor.reached_share",
    ),
    way(
        Board,
        "a tub that is drained below its floor",
        ("drained_mm: 18.0", "drained_mm: -18.0"),
        "Bounds",
        "water.drained_mm",
    ),
    way(
        Board,
        "an actuator that turns at once",
        ("ms_per_deg: 27.8", "ms_per_deg: 0.0"),
        "Bounds",
        "clutch_actuator.ms_per_deg",
    ),
    // Boards: lists that refer to each other.
    way(
        Board,
        "a code twice",
        ("(code: 12,", "(code: 11,"),
        "SameCode",
        "codes[1].code",
    ),
    way(
        Board,
        "a code of nothing",
        ("(code: 11,", "(code: 0,"),
        "CodeOutOfRange",
        "codes[0].code",
    ),
    way(
        Board,
        "a monitor with two codes",
        (
            "(code: 12, monitor: FillSlow)",
            "(code: 12, monitor: FillNone)",
        ),
        "NoCode",
        "codes",
    )
    .told_at("codes: ["),
    way(
        Board,
        "a monitor without a code",
        ("        (code: 11, monitor: FillNone),\n", ""),
        "NoCode",
        "codes",
    )
    .told_at("codes: ["),
    way(
        Board,
        "a monitor without a rule",
        ("        (monitor: CalibrationMissing, delay_ms: 10),\n", ""),
        "NoRule",
        "monitors",
    )
    .told_at("monitors: ["),
    way(
        Board,
        "no suspects",
        ("suspects: [PressureSensor, Harness, Board]", "suspects: []"),
        "Empty",
        "sheet[5].suspects",
    ),
    way(
        Board,
        "a check that is no text key",
        ("[\"check-recalibrate-first\"]", "[\"Recalibrate first\"]"),
        "TextKey",
        "sheet[20].checks[0]",
    ),
    way(
        Board,
        "a program at a position beyond the dial",
        ("position: 22,\n", "position: 24,\n"),
        "NoPosition",
        "programs[5].position",
    ),
    way(
        Board,
        "two programs at one position",
        (
            "position: 6,\n            name",
            "position: 2,\n            name",
        ),
        "SamePosition",
        "programs[1].position",
    ),
    way(
        Board,
        "a routine beyond the dial",
        ("(position: 22, routine", "(position: 42, routine"),
        "NoPosition",
        "menu[15].position",
    ),
    way(
        Board,
        "two routines at one position",
        ("(position: 3, routine", "(position: 1, routine"),
        "SamePosition",
        "menu[1].position",
    ),
    way(
        Board,
        "a fill from no valve",
        (
            "cold: false, hot: true, min_c: 38.0",
            "cold: false, hot: false, min_c: 38.0",
        ),
        "Empty",
        "programs[1].phases[0].cold",
    ),
    way(
        Board,
        "a fill above the tub",
        (
            "level_mm: 200.0, cold: true, hot: true",
            "level_mm: 2000.0, cold: true, hot: true",
        ),
        "Bounds",
        "programs[2].phases[0].level_mm",
    ),
    way(
        Board,
        "water that must be warmer than it may be",
        ("min_c: 38.0, max_c: 70.0", "min_c: 78.0, max_c: 70.0"),
        "Bounds",
        "programs[1].phases[0].min_c",
    ),
    // Boards: gesture, recalibration, pins.
    way(
        Board,
        "a turn of nothing",
        ("Turn(to: Left, detents: 6)", "Turn(to: Left, detents: 0)"),
        "Empty",
        "gesture.steps[0].detents",
    ),
    way(
        Board,
        "two turns the same way in a row",
        ("            Press(button: Stop, max_ms: 700),\n", ""),
        "TurnsJoin",
        "gesture.steps[1].to",
    ),
    way(
        Board,
        "a press of a button that the board lacks",
        (
            "Press(button: Stop, max_ms: 700)",
            "Press(button: More, max_ms: 700)",
        ),
        "NoButton",
        "gesture.steps[1].button",
    ),
    way(
        Board,
        "a hold that must be longer than it may be",
        ("min_ms: 1000, max_ms: 2500", "min_ms: 3000, max_ms: 2500"),
        "HoldImpossible",
        "gesture.steps[3].max_ms",
    ),
    way(
        Board,
        "a gesture that nobody can do in time",
        ("within_ms: 5500", "within_ms: 900"),
        "GestureTooShort",
        "gesture.within_ms",
    ),
    way(
        Board,
        "a reset by a button that the board lacks",
        (
            "Some((button: Stop, ms: 2000))",
            "Some((button: Less, ms: 2000))",
        ),
        "NoButton",
        "resets.hold.button",
    ),
    way(
        Board,
        "a stage of recalibration left out",
        ("            (stage: Cam, min_s: 12, limit_s: 30),\n", ""),
        "StageCount",
        "recalibration.stages",
    )
    .told_at("stages: ["),
    way(
        Board,
        "a terminal wired twice",
        ("terminal: CordNeutral", "terminal: CordLine"),
        "TerminalTwice",
        "connectors[0].pins[1].terminal",
    ),
    way(
        Board,
        "a terminal wired to nothing",
        (
            "                (pin: 4, terminal: Cam2, label: \"0V\"),\n",
            "",
        ),
        "TerminalUnwired",
        "connectors",
    )
    .told_at("connectors: ["),
    way(
        Board,
        "a pin twice",
        (
            "(pin: 2, terminal: CordNeutral",
            "(pin: 1, terminal: CordNeutral",
        ),
        "LabelTwice",
        "connectors[0].pins[1].pin",
    ),
    way(
        Board,
        "a connector twice",
        ("label: \"X2\"", "label: \"X1\""),
        "LabelTwice",
        "connectors[1].label",
    ),
    // Guides.
    way(
        Guide,
        "no steps",
        ("steps: [", "steps: [], was: ["),
        "UnknownField",
        "was",
    ),
    way(
        Guide,
        "a field of a step misspelled",
        (
            "shown: [\"Unplug\"],\n        ),\n        (",
            "show: [\"Unplug\"],\n        ),\n        (",
        ),
        "UnknownField",
        "steps[0].show",
    ),
    way(
        Guide,
        "a goal left out",
        ("            goal: Bench(Did(Unplug)),\n", ""),
        "MissingField",
        "steps[0].goal",
    )
    .told_at("        (\n            say: (en: \"Pull the"),
    way(
        Guide,
        "a goal that there is not",
        ("Bench(Did(Unplug))", "Bench(Pulled(Plug))"),
        "UnknownName",
        "steps[0].goal",
    ),
    way(
        Guide,
        "a view that there is not",
        ("Looked(Inside)", "Looked(Behind)"),
        "UnknownName",
        "steps[1].goal",
    ),
    way(
        Guide,
        "a sentence left empty",
        ("\"Desenchufe.\"", "\"\""),
        "Nothing",
        "steps[0].say.es",
    ),
    way(
        Guide,
        "a line that is no step",
        (
            "\"Unplug\"],\n        ),\n        (",
            "\"Unplugg\"],\n        ),\n        (",
        ),
        "Step",
        "steps[0].shown[0]",
    ),
    way(
        Guide,
        "a line with a wrong argument",
        ("Wait(s: 5)", "Wait(m: 5)"),
        "Step",
        "steps[1].shown[0]",
    ),
    way(
        Guide,
        "a line that no job has time for",
        ("Wait(s: 5)", "Wait(s: 999999999)"),
        "NoTime",
        "steps[1].shown[0]",
    ),
    way(
        Guide,
        "a way back that is no step",
        (
            "shown: [\"Unplug\"],\n                ),",
            "shown: [\"Pull\"],\n                ),",
        ),
        "Step",
        "steps[1].astray[0].shown[0]",
    ),
    way(
        Guide,
        "a control to mark that is no text",
        ("[\"plug\"]", "[plug]"),
        "ExpectedString",
        "steps[0].mark[0]",
    ),
    // Plans of classes.
    way(
        Plan,
        "a job that there is not",
        ("\"exam-no-live-tests\"", "\"exam-no-live-test\""),
        "NoJob",
        "jobs[1]",
    ),
    way(
        Plan,
        "a job twice",
        ("\"exam-no-live-tests\"", "\"exam-120-v-dial\""),
        "Repeated",
        "jobs[1]",
    ),
    way(
        Plan,
        "a skill twice",
        ("(skill: SafeWork", "(skill: LampReading"),
        "Repeated",
        "drills[1].skill",
    ),
    way(
        Plan,
        "a skill that there is not",
        ("(skill: SafeWork", "(skill: Whistling"),
        "UnknownName",
        "drills[1].skill",
    ),
    way(
        Plan,
        "no questions",
        ("questions: 5", "questions: 0"),
        "OutOfRange",
        "drills[1].questions",
    ),
    way(
        Plan,
        "an opening after more than a day",
        ("Some(5)", "Some(1441)"),
        "OutOfRange",
        "opens_in_minutes",
    ),
    way(
        Plan,
        "no time",
        ("Some(90)", "Some(0)"),
        "OutOfRange",
        "minutes",
    ),
    way(
        Plan,
        "more seats than a class has",
        ("Some(24)", "Some(2001)"),
        "OutOfRange",
        "seats",
    ),
    way(
        Plan,
        "a title left empty",
        ("title: \"B2\"", "title: \"\""),
        "Nothing",
        "title",
    ),
    way(
        Plan,
        "names in it",
        ("only_listed: false", "names: [\"Ann\"]"),
        "UnknownField",
        "names",
    ),
    // Examinations.
    way(
        Examination,
        "a job that there is not",
        ("\"drain-code\"", "\"drain-cod\""),
        "NoJob",
        "jobs[1]",
    ),
    way(
        Examination,
        "a job twice",
        ("\"drain-code\"", "\"dark-machine\""),
        "Repeated",
        "jobs[1]",
    ),
    way(
        Examination,
        "no jobs",
        ("\"dark-machine\",\n        \"drain-code\",\n    ", ""),
        "Nothing",
        "jobs",
    )
    .told_at("jobs: ["),
    way(
        Examination,
        "no time",
        ("minutes: 40", "minutes: 0"),
        "OutOfRange",
        "minutes",
    ),
    way(
        Examination,
        "more time than a day has",
        ("minutes: 40", "minutes: 4000"),
        "OutOfRange",
        "minutes",
    ),
    way(
        Examination,
        "a page twice",
        ("[Lamps, Codes]", "[Lamps, Lamps]"),
        "Repeated",
        "sheet[1]",
    ),
    way(
        Examination,
        "a page that there is not",
        ("[Lamps, Codes]", "[Lamps, Answers]"),
        "UnknownName",
        "sheet[1]",
    ),
    way(
        Examination,
        "a title left empty",
        ("\"Two jobs\"", "\"\""),
        "Nothing",
        "title.en",
    ),
    way(
        Examination,
        "a field left out",
        ("    minutes: 40,\n", ""),
        "MissingField",
        "minutes",
    )
    .told_at("(\n    title"),
    // Courses.
    way(
        Course,
        "a comma left out behind a field",
        ("\"A. Instructor\",", "\"A. Instructor\""),
        "ExpectedComma",
        "author",
    ),
    way(
        Course,
        "a field that there is not",
        ("author", "autor"),
        "UnknownField",
        "autor",
    ),
    way(
        Course,
        "a field left out",
        ("    author: \"A. Instructor\",\n", ""),
        "MissingField",
        "author",
    )
    .told_at("(\n    format"),
    way(
        Course,
        "a title left empty",
        ("\"Dos trabajos\"", "\"\""),
        "Nothing",
        "title.es",
    ),
    way(
        Course,
        "an author left empty",
        ("\"A. Instructor\"", "\" \""),
        "Nothing",
        "author",
    ),
    way(
        Course,
        "a license left empty",
        ("CC-BY-4.0", ""),
        "Nothing",
        "license",
    ),
    way(
        Course,
        "a format of the future",
        ("format: 1", "format: 2"),
        "NewerCourse",
        "format",
    ),
    way(
        Course,
        "a format that there never was",
        ("format: 1", "format: 0"),
        "OutOfRange",
        "format",
    ),
    way(
        Course,
        "a format below zero",
        ("format: 1", "format: -1"),
        "IntegerRange",
        "format",
    ),
    way(
        Course,
        "a version in words",
        ("\"1.2\"", "\"first\""),
        "NoVersion",
        "version",
    ),
    way(
        Course,
        "a version of one number",
        ("\"1.2\"", "1.2"),
        "ExpectedString",
        "version",
    ),
    way(
        Course,
        "a version with a number too large",
        ("\"1.2\"", "\"1.99999999999\""),
        "NoVersion",
        "version",
    ),
    way(
        Course,
        "a job that there is not",
        ("\"drain-code\"", "\"drain\""),
        "NoJob",
        "plan[1]",
    ),
    way(
        Course,
        "a job twice",
        ("\"drain-code\"", "\"dark-machine\""),
        "Repeated",
        "plan[1]",
    ),
    way(
        Course,
        "a file out of the course",
        ("scenarios/a.ron", "../a.ron"),
        "Misplaced",
        "files[1].path",
    ),
    way(
        Course,
        "a file twice",
        ("scenarios/a.ron", "parts.ron"),
        "Repeated",
        "files[1].path",
    ),
    way(
        Course,
        "a sum too short",
        ("parts.ron\", sha256: \"01", "parts.ron\", sha256: \"1"),
        "NoSum",
        "files[0].sha256",
    ),
    way(
        Course,
        "a sum with another letter",
        ("parts.ron\", sha256: \"01", "parts.ron\", sha256: \"G1"),
        "NoSum",
        "files[0].sha256",
    ),
];

/// Name of the kind of error, which says what is wrong.
fn name(problem: &Problem) -> String {
    let told = match problem {
        Problem::Syntax(error) => format!("{error:?}"),
        Problem::Board(fault) => format!("{fault:?}"),
        other => format!("{other:?}"),
    };
    let end = told.find(|c: char| !c.is_alphanumeric());
    told[..end.unwrap_or(told.len())].to_owned()
}

/// Line of a byte, from 1.
fn line_of(text: &str, offset: usize) -> usize {
    text[..offset].matches('\n').count() + 1
}

impl Way {
    fn spoiled(&self) -> String {
        let sound = self.kind.sound();
        assert!(sound.contains(self.old), "{}: nothing to spoil", self.what);
        sound.replacen(self.old, self.new, 1)
    }

    fn line(&self, spoiled: &str) -> usize {
        let sound = self.kind.sound();
        let offset = match self.at {
            Some(at) => spoiled
                .find(at)
                .unwrap_or_else(|| panic!("{}: no such place", self.what)),
            None => {
                let old = self.old.bytes();
                let same = old
                    .zip(self.new.bytes())
                    .take_while(|(a, b)| a == b)
                    .count();
                sound.find(self.old).expect("it is spoiled there") + same
            }
        };
        line_of(spoiled, offset)
    }
}

#[test]
fn the_files_that_are_spoiled_are_sound() {
    for kind in [Scenario, Board, Guide, Examination, Course, Plan] {
        assert_eq!(kind.errors(kind.sound()), [], "{kind:?}");
    }
}

#[test]
fn a_hundred_ways_to_spoil_a_file_are_told_at_their_place() {
    assert!(WAYS.len() >= 100, "{}", WAYS.len());
    let named: BTreeSet<(Kind, &str)> = WAYS.iter().map(|way| (way.kind, way.what)).collect();
    assert_eq!(named.len(), WAYS.len(), "two ways have one name");
    let mut wrong = Vec::new();
    for way in WAYS {
        let spoiled = way.spoiled();
        let line = way.line(&spoiled);
        let expected = (way.error.to_owned(), line, way.field.to_owned());
        let errors = way.kind.errors(&spoiled);
        let told = errors.iter();
        let told = told.map(|error| (name(&error.problem), error.line, error.field.clone()));
        let told: Vec<_> = told.collect();
        if !told.contains(&expected) {
            wrong.push(format!(
                "{:?}, {}: {told:?}, not {expected:?}",
                way.kind, way.what
            ));
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of {}:\n{}",
        wrong.len(),
        WAYS.len(),
        wrong.join("\n")
    );
}
