//! Every error is told in each language, with what it is about and without words of another language.

use detent_content::attempt_file::AttemptFileError;
use detent_content::disk::AttemptReadError;
use detent_content::{
    Allowed, AnswersCsvError, AnswersCsvProblem, AttemptSourceError, Choices, ContentError,
    ContentLibrary, JobVariantError, Language, NotSayable, PROGRAM_VERSION, PackedDifference,
    Problem, ProfileError, ReplayError, Texts, Wanted, ZipProblem, builtin, read_answers_csv,
    read_board, read_catalogue, read_examination, read_guide, read_machine, read_parts,
    read_profile, read_scenario, read_script,
};
use detent_simulation::controller::{BoardFault, Monitor, Stage};
use detent_simulation::interface::{Button, Component, Mains, Terminal};
use detent_simulation::units::{Span, Time};
use detent_syntax::document::Document;
use detent_syntax::error::{EditError, SyntaxErrorKind};
use detent_training::bench::Refusal;
use detent_training::bench::script::{Condition, StepError};
use detent_training::lesson::{CoursePart, SetUpError};
use detent_training::practice::fit::TooFew;
use detent_training::practice::{Skill, TargetError};
use detent_training::reason::{PathError, PlanError, PosteriorError};
use detent_training::record::ron_text::WrongInteger;
use detent_training::record::{
    Damage, Divergence, LogError, RecordError, SystemReason, read_attempt,
};
use detent_training::variant::{VariantError, VariantRefusal};
use std::io::ErrorKind;

/// Words that stand in our English sentences and in no Spanish one.
const ENGLISH: [&str; 24] = [
    "the", "is", "are", "of", "this", "here", "write", "there", "with", "and", "for", "it", "be",
    "expected", "found", "field", "file", "line", "than", "from", "to", "cannot", "choose", "has",
];

/// The words of `spanish` that are English and stand in no quotation.
pub fn leftover_english(spanish: &str) -> Vec<String> {
    let mut own = String::new();
    // Names of our own files, whatever they are, follow these words.
    let spanish = spanish.split("uno de estos: ").next().unwrap_or(spanish);
    let (mut quoted, mut code) = (0_usize, false);
    for c in spanish.chars() {
        match c {
            '«' => quoted += 1,
            '»' => quoted = quoted.saturating_sub(1),
            '`' => code = !code,
            c if quoted == 0 && !code => own.push(c),
            _ => {}
        }
    }
    // Names of files and fields stand in front, with marks inside or behind them.
    let words = own.split_whitespace().filter(|word| !word.ends_with(':'));
    let words = words.map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()));
    let left = words.filter(|word| ENGLISH.contains(word));
    left.map(str::to_owned).collect()
}

/// Holds an error's texts against each other: none lacks an argument or a key, the Spanish one is no English, and
/// each names what the error is about.
#[track_caller]
pub fn check_both(english: &str, spanish: &str, named: &[&str]) {
    assert_ne!(english, spanish);
    for told in [english, spanish] {
        let own = told.replace("{ $", "");
        assert!(!told.contains('‹') && own == told, "{told}");
        for name in named {
            assert!(told.contains(name), "{name} is not in: {told}");
        }
    }
    let left = leftover_english(spanish);
    assert!(left.is_empty(), "{left:?} in: {spanish}");
}

/// A text for each language.
fn texts() -> [Texts; 2] {
    Language::ALL.map(Texts::load)
}

fn choices(names: &[&str], of: usize) -> Box<Choices> {
    let names = names.iter().map(|name| (*name).to_owned()).collect();
    Box::new(Choices { names, of })
}

fn reason(kind: ErrorKind) -> SystemReason {
    let text = "os says".to_owned();
    SystemReason { kind, text }
}

fn own(text: &str) -> String {
    text.to_owned()
}

/// One problem of each kind, with what its text must name.
fn problems() -> Vec<(Problem, &'static [&'static str])> {
    let integer = WrongInteger {
        found: own("300"),
        least: 0,
        most: 255,
    };
    let mut all: Vec<(Problem, &'static [&'static str])> = vec![
        (Problem::Io(reason(ErrorKind::Other)), &["os says"]),
        (Problem::NoFile, &[]),
        (Problem::NotBuiltIn(own("a.ron, b.ron")), &["a.ron, b.ron"]),
        (Problem::NoScenario, &["detent scenarios"]),
        (Problem::BeyondHandbook, &["console"]),
        (Problem::Empty, &[]),
        (Problem::NotText, &["UTF-8"]),
        (Problem::TooLong { most: 4096 }, &["4096"]),
        (Problem::TooDeep, &[]),
        (Problem::Syntax(Box::new(ron::Error::ExpectedComma)), &[]),
        (Problem::MissingField(own("price")), &["price"]),
        (
            Problem::UnknownField {
                found: own("prize"),
                expected: choices(&["price", "number"], 2),
            },
            &["prize", "price, number"],
        ),
        (Problem::RepeatedField(own("price")), &["price"]),
        (
            Problem::UnknownName {
                found: own("Put"),
                expected: choices(&["Set", "Scale"], 30),
            },
            &["Put", "Set, Scale", "30"],
        ),
        (
            Problem::UnknownName {
                found: own("drain-pump.9"),
                expected: choices(&[], 0),
            },
            &["drain-pump.9"],
        ),
        (Problem::NotFinite(own("1e999")), &["1e999"]),
        (
            Problem::IntegerRange(Box::new(integer)),
            &["300", "0", "255"],
        ),
        (
            Problem::TooLittleTime {
                found: 4.0,
                least: 12.25,
            },
            &["4", "12.2"],
        ),
        (
            Problem::TooLittleMoney {
                found: 4.0,
                least: 81.0,
            },
            &["4", "81"],
        ),
        (
            Problem::CourseNumber {
                part: CoursePart::ALL[0],
                found: 9,
                expected: 3,
            },
            &["9", "3"],
        ),
        (
            Problem::Repeated {
                name: own("P-0701"),
                first_line: 12,
            },
            &["P-0701", "12"],
        ),
        (Problem::UnknownMode(own("belt.gone")), &["belt.gone"]),
        (Problem::NothingToDraw, &[]),
        (Problem::UnknownPart(own("P-0701")), &["P-0701"]),
        (Problem::UnfitPart(own("P-0701")), &["P-0701"]),
        (Problem::NoEnd(own("P-0701")), &["P-0701"]),
        (
            Problem::UnknownBoard {
                found: own("arch"),
                known: own("arc, key"),
            },
            &["arch", "arc, key"],
        ),
        (
            Problem::UnknownCode {
                board: own("arc"),
                code: 7,
            },
            &["arc", "07"],
        ),
        (Problem::WrongMains { board: own("arc") }, &["arc", "mains"]),
        (
            Problem::ForeignParam {
                param: own("PumpFree"),
                owner: Component::DrainPump,
                component: Component::Belt,
            },
            &["PumpFree", "drain-pump", "belt"],
        ),
        (
            Problem::MissingParam(own("PumpHeadM")),
            &["PumpHeadM", "common"],
        ),
        (
            Problem::Step(Box::new(ron::Error::Eof)),
            &["PowerDown", "README"],
        ),
        (Problem::NoTime(Box::new(StepError::TooLong)), &["48"]),
        (Problem::NoJob(own("wash")), &["wash"]),
        (Problem::NewerLayout(7), &["7"]),
        (Problem::NoName { most: 40 }, &["40"]),
        (Problem::Board(Box::new(BoardFault::Empty)), &[]),
        (
            Problem::NotSayable(NotSayable::Letters),
            &["Letters('E', '-')"],
        ),
        (
            Problem::NotSayable(NotSayable::TurnTo),
            &["Turn", "standing"],
        ),
        (Problem::NotSayable(NotSayable::TwoColors), &["blinks"]),
        (Problem::Misplaced, &["course.ron", "parts.ron"]),
        (
            Problem::NewerCourse {
                format: 7,
                packed_with: own("5.4.3"),
            },
            &["7", "5.4.3"],
        ),
        (
            Problem::NewerCourse {
                format: 7,
                packed_with: String::new(),
            },
            &["7"],
        ),
        (
            Problem::NewerProgram(own("5.4.3")),
            &["5.4.3", PROGRAM_VERSION],
        ),
        (Problem::NoVersion(own("first")), &["first", "1.2"]),
        (Problem::NoSum, &["files", "detent course pack"]),
    ];
    for difference in PackedDifference::ALL {
        let (difference, path) = (*difference, own("boards/a.ron"));
        let problem = Problem::NotAsPacked { difference, path };
        all.push((problem, &["boards/a.ron"]));
    }
    let zip_problems = ZipProblem::ALL.iter();
    all.extend(
        zip_problems
            .map(|problem| -> (Problem, &'static [&'static str]) { (Problem::Zip(*problem), &[]) }),
    );
    for allowed in Allowed::ALL {
        let (found, allowed) = (-7.5, *allowed);
        all.push((Problem::OutOfRange { found, allowed }, &["-7.5"]));
    }
    all.extend(
        Wanted::ALL
            .iter()
            .map(|wanted| -> (Problem, &'static [&'static str]) {
                (Problem::Nothing(*wanted), &[])
            }),
    );
    all
}

fn board_faults() -> Vec<BoardFault> {
    let (monitor, button, terminal) = (Monitor::ALL[0], Button::More, Terminal::Cold1);
    vec![
        BoardFault::SameCode { code: 7, first: 2 },
        BoardFault::CodeOutOfRange { code: 0 },
        BoardFault::MonitorTwice(monitor),
        BoardFault::NoCode(monitor),
        BoardFault::NoRule(monitor),
        BoardFault::NoSheet(monitor),
        BoardFault::GestureTooShort {
            least_ms: 900,
            window_ms: 300,
        },
        BoardFault::HoldImpossible {
            min_ms: 900,
            max_ms: 300,
        },
        BoardFault::Empty,
        BoardFault::NoWayOut,
        BoardFault::TurnsJoin,
        BoardFault::NoPosition {
            position: 12,
            positions: 8,
        },
        BoardFault::SamePosition {
            position: 4,
            first: 1,
        },
        BoardFault::Flashing { hz: 9.0 },
        BoardFault::NoButton(button),
        BoardFault::NoKnob,
        BoardFault::ButtonState(button, true),
        BoardFault::ButtonState(button, false),
        BoardFault::PowerLater,
        BoardFault::NoSuchDigit { digit: 7 },
        BoardFault::LampCount { lamps: 40 },
        BoardFault::NoPicture { number: 31 },
        BoardFault::NoSuchLetter {
            character: 'W',
            nearest: 'U',
        },
        BoardFault::LettersWithoutSegments("weights"),
        BoardFault::LettersAreNumber('2', '3'),
        BoardFault::TerminalTwice {
            terminal,
            first: own("X2-5"),
        },
        BoardFault::TerminalUnwired(terminal),
        BoardFault::LabelTwice(own("X2")),
        BoardFault::Bounds {
            value: 7.0,
            above: 1.0,
            below: 3.0,
        },
        BoardFault::SupplyUnmatched(Mains::V230Hz50),
        BoardFault::StageCount(Stage::ALL[0]),
        BoardFault::TextKey(own("A B")),
    ]
}

fn damages() -> Vec<Damage> {
    let integer = WrongInteger {
        found: own("-1"),
        least: 0,
        most: 255,
    };
    vec![
        Damage::Empty,
        Damage::Foreign,
        Damage::NotText,
        Damage::NewerFormat { found: 9, known: 2 },
        Damage::NoSuchFormat(0),
        Damage::UnknownAction(own("Kick")),
        Damage::IntegerRange(Box::new(integer)),
        Damage::NotFinite(own("NaN")),
        Damage::OtherText,
        Damage::InFirstVisit {
            line: 4,
            problem: Box::new(Damage::Truncated),
        },
        Damage::OtherFirstVisit,
        Damage::SecondVisit,
        Damage::NotAHash(own("xyz")),
        Damage::TimeBackwards {
            before: Time(250),
            found: Time(249),
        },
        Damage::TooLate(Time(99)),
        Damage::TooLong { most: 4096 },
        Damage::Truncated,
        Damage::AfterEnd,
        Damage::ScenarioChanged {
            scenario: own("hum.ron"),
        },
    ]
}

fn divergences() -> Vec<Divergence> {
    let (line, at) = (7, Time(1200));
    let busy = Time(1300);
    vec![
        Divergence::Overlap { line, at, busy },
        Divergence::EndsEarly { line },
        Divergence::State { line },
        Divergence::Answer { line },
        Divergence::Score { line },
        Divergence::Seal { line },
        Divergence::FirstVisit(Box::new(Divergence::Seal { line })),
        Divergence::NoCallBack,
    ]
}

#[test]
fn every_problem_of_a_file_is_told_with_its_arguments() {
    let [english, spanish] = texts();
    for (problem, named) in problems() {
        check_both(
            &english.problem(&problem),
            &spanish.problem(&problem),
            named,
        );
        assert_eq!(problem.to_string(), english.problem(&problem));
    }
    let error = ContentError {
        file: own("a.ron"),
        line: 3,
        column: 9,
        field: own("codes[3].code"),
        problem: Problem::Empty,
        source_line: None,
    };
    for texts in [&english, &spanish] {
        let told = texts.content_error(&error);
        assert!(told.starts_with("a.ron:3: codes[3].code: "), "{told}");
    }
    let whole = ContentError {
        line: 0,
        field: String::new(),
        ..error
    };
    let told = spanish.content_error(&whole);
    assert!(told.starts_with("a.ron: el archivo"), "{told}");
}

#[test]
fn what_the_system_says_is_told_in_each_language() {
    let [english, spanish] = texts();
    for kind in [
        ErrorKind::NotFound,
        ErrorKind::PermissionDenied,
        ErrorKind::AlreadyExists,
        ErrorKind::IsADirectory,
        ErrorKind::NotADirectory,
        ErrorKind::StorageFull,
        ErrorKind::ReadOnlyFilesystem,
        ErrorKind::BrokenPipe,
    ] {
        let reason = reason(kind);
        let told = [&english, &spanish].map(|texts| texts.system_reason(&reason));
        check_both(&told[0], &told[1], &[]);
        assert!(!told[0].contains("os says"), "{kind:?}");
    }
    let other = spanish.system_reason(&reason(ErrorKind::TimedOut));
    assert!(other.contains("«os says»"), "{other}");
}

fn syntax_errors() -> [SyntaxErrorKind; 15] {
    use SyntaxErrorKind as Kind;
    [
        Kind::UnexpectedCharacter('~'),
        Kind::UnclosedString,
        Kind::UnclosedComment,
        Kind::UnclosedBracket('('),
        Kind::MismatchedBracket {
            open: '(',
            close: ']',
        },
        Kind::WrongCharacter,
        Kind::WrongEscape,
        Kind::WrongNumber,
        Kind::WrongAttribute,
        Kind::ExpectedValue,
        Kind::ExpectedComma,
        Kind::ExpectedColon,
        Kind::MixedFields,
        Kind::TooDeep,
        Kind::BehindValue,
    ]
}

fn edit_errors() -> [EditError; 10] {
    let wrong = Document::parse("[1 2]").expect_err("a comma is missing");
    [
        EditError::NoSuchPath(own("codes[3]")),
        EditError::NotAStruct(own("codes")),
        EditError::NotAList(own("name")),
        EditError::NotAMap(own("name")),
        EditError::AlreadyThere(own("name")),
        EditError::NotAName(own("a b")),
        EditError::NoSuchIndex { index: 3, count: 2 },
        EditError::Whole,
        EditError::NotAValue(wrong),
        EditError::Unreadable(wrong),
    ]
}

/// These types belong to rooms without language files, whose own English must be that of the files.
#[test]
fn the_errors_of_other_rooms_are_told_as_they_tell_themselves() {
    let [english, spanish] = texts();
    let same = |display: String, told: [String; 2]| {
        assert_eq!(display, told[0]);
        check_both(&told[0], &told[1], &[]);
    };
    let both = |tell: &dyn Fn(&Texts) -> String| [tell(&english), tell(&spanish)];
    for fault in board_faults() {
        same(fault.to_string(), both(&|t| t.board_fault(&fault)));
    }
    for kind in syntax_errors() {
        same(kind.to_string(), both(&|t| t.syntax_error(kind)));
    }
    for error in edit_errors() {
        same(error.to_string(), both(&|t| t.edit_error(&error)));
    }
    for damage in damages() {
        same(damage.to_string(), both(&|t| t.damage(&damage)));
    }
    for divergence in divergences() {
        same(divergence.to_string(), both(&|t| t.divergence(&divergence)));
    }
    for error in [
        LogError::TimeBackwards {
            before: Time(9),
            found: Time(8),
        },
        LogError::TooLate(Time(99)),
        LogError::Finished,
        LogError::Broken,
    ] {
        same(error.to_string(), both(&|t| t.log_error(&error)));
    }
    for error in [
        SetUpError::UnknownMode(own("belt.gone")),
        SetUpError::EmptyDraw,
    ] {
        same(error.to_string(), both(&|t| t.set_up_error(&error)));
    }
    for error in [
        PlanError::Incurable(3),
        PlanError::Chances(3),
        PlanError::Sum(3, 4),
        PlanError::Bad(3),
    ] {
        same(error.to_string(), both(&|t| t.plan_error(&error)));
    }
    for error in [
        PosteriorError::Empty,
        PosteriorError::Bad { at: 3, value: -0.5 },
        PosteriorError::Length {
            found: 3,
            wanted: 4,
        },
        PosteriorError::Impossible,
    ] {
        same(error.to_string(), both(&|t| t.posterior_error(&error)));
    }
    let target = TargetError(0.2);
    same(target.to_string(), both(&|t| t.target_error(&target)));
    let no_table = VariantError::NoTable(own("arc"));
    same(no_table.to_string(), both(&|t| t.variant_error(&no_table)));
}

#[test]
fn errors_made_of_others_are_told_with_what_they_carry() {
    let [english, spanish] = texts();
    let both = |named: &[&str], tell: &dyn Fn(&Texts) -> String| {
        check_both(&tell(&english), &tell(&spanish), named);
    };
    let refused = Divergence::Refused {
        line: 7,
        at: Time(1200),
        refusal: Refusal::NoPart(own("P-0701")),
    };
    both(&["7", "P-0701"], &|t| t.divergence(&refused));
    let line = Damage::Line(Box::new(ron::Error::ExpectedInteger));
    both(&[], &|t| t.damage(&line));
    let record = || RecordError {
        file: own("a.attempt"),
        line: 4,
        field: own("at"),
        problem: Damage::Truncated,
    };
    both(&["a.attempt:4: at: "], &|t| t.record_error(&record()));
    let read = AttemptReadError::Record(record());
    both(&["a.attempt:4: at: "], &|t| t.attempt_read_error(&read));
    for error in [
        ReplayError::Record(record()),
        ReplayError::Differs {
            file: own("a.attempt"),
            divergence: Divergence::State { line: 4 },
        },
    ] {
        both(&["a.attempt:"], &|t| t.replay_error(&error));
        assert_eq!(error.to_string(), english.replay_error(&error));
    }
    let (file, scenario) = (|| own("a.attempt"), || own("hum.ron"));
    for error in [
        AttemptSourceError::NoScenarioName {
            file: file(),
            scenario: scenario(),
        },
        AttemptSourceError::NoScenario {
            file: file(),
            scenario: scenario(),
        },
        AttemptSourceError::AnotherText {
            file: file(),
            scenario: scenario(),
        },
    ] {
        both(
            &["a.attempt:1: scenario: ", "hum.ron", "--scenario"],
            &|t| t.attempt_source_error(&error),
        );
    }
    let denied = || reason(ErrorKind::PermissionDenied);
    for error in [
        AttemptFileError::Io {
            file: file(),
            reason: denied(),
        },
        AttemptFileError::Exists(file()),
        AttemptFileError::Log {
            file: file(),
            source: LogError::Io(denied()),
        },
        AttemptFileError::Damaged(record()),
    ] {
        both(&["a.attempt:"], &|t| t.attempt_file_error(&error));
    }
    for (error, named) in [
        (
            ProfileError::Refused {
                file: own("ana.profile"),
                reason: reason(ErrorKind::StorageFull),
            },
            "ana.profile:",
        ),
        (ProfileError::Changed(own("ana.profile")), "ana.profile:"),
        (ProfileError::NoName, ""),
        (ProfileError::Taken(own("Ana")), "Ana"),
    ] {
        both(&[named], &|t| t.profile_error(&error));
    }
    let path = PathError::Refused(Refusal::NoPart(own("P-0701")));
    both(&["P-0701"], &|t| t.path_error(&path));
    let original = VariantError::Original(VariantRefusal::ALL[0]);
    let original = JobVariantError::Variant(original);
    both(&[], &|t| t.job_variant_error(&original));
    let too_few = TooFew {
        skill: Skill::ALL[0],
        learners: 2,
        answers: 17,
    };
    both(&["2", "17", "60", "5"], &|t| t.too_few(&too_few));
    for (error, named) in [
        (StepError::NoPosition(99), "99"),
        (
            StepError::NeverCame {
                what: Condition::Dark,
                limit_s: 30,
            },
            "Dark",
        ),
        (StepError::TooLong, "48 h"),
        (StepError::StepTooLong(Span::from_s(49 * 3600)), "49 h"),
    ] {
        both(&[named], &|t| t.step_error(&error));
    }
    for problem in [
        AnswersCsvProblem::NoTable(own("bad row")),
        AnswersCsvProblem::NoColumn("took_s"),
        AnswersCsvProblem::Field {
            column: "took_s",
            found: own("never"),
            allowed: Allowed::Seconds,
        },
    ] {
        let error = AnswersCsvError {
            file: own("mine.csv"),
            line: 4,
            problem,
        };
        both(&["mine.csv:4:"], &|t| t.answers_csv_error(&error));
    }
}

/// What the parser of RON finds is told in our own words where it is common.
#[test]
fn what_is_wrong_with_ron_is_told_in_each_language() {
    let [english, spanish] = texts();
    use ron::Error as E;
    for error in [
        E::Eof,
        E::ExpectedArray,
        E::ExpectedArrayEnd,
        E::ExpectedBoolean,
        E::ExpectedChar,
        E::ExpectedComma,
        E::ExpectedFloat,
        E::ExpectedInteger,
        E::IntegerOutOfBounds,
        E::ExpectedOption,
        E::ExpectedMap,
        E::ExpectedMapColon,
        E::ExpectedMapEnd,
        E::ExpectedStructLike,
        E::ExpectedNamedStructLike("Board"),
        E::ExpectedStructLikeEnd,
        E::ExpectedUnit,
        E::ExpectedString,
        E::ExpectedStringEnd,
        E::ExpectedIdentifier,
        E::SuggestRawIdentifier(own("0")),
        E::SuggestRawIdentifier(own("a-b")),
        E::UnclosedBlockComment,
        E::TrailingCharacters,
        E::UnexpectedChar('%'),
        E::Message(own("the parser's words")),
    ] {
        check_both(&english.ron_error(&error), &spanish.ron_error(&error), &[]);
    }
    let unknown = E::NoSuchEnumVariant {
        expected: &["Right", "Left"],
        found: own("Up"),
        outer: None,
    };
    let told = [&english, &spanish].map(|texts| texts.ron_error(&unknown));
    check_both(&told[0], &told[1], &["Up", "Right, Left"]);
    let told = spanish.ron_error(&E::Message(own("the parser's words")));
    assert!(told.contains("«the parser's words»"), "{told}");
}

#[test]
fn english_words_are_noticed_outside_quotations_only() {
    assert_eq!(leftover_english("a.ron:3: is: the sum"), ["the"]);
    assert!(leftover_english("a.ron:3: aquí «the sum is» no va").is_empty());
    assert!(leftover_english("vea `the file` y ya").is_empty());
}

/// Each way to spoil a text at one place, if the place is inside a character nothing.
fn spoiled(text: &str, at: usize) -> Vec<String> {
    let Some((before, rest)) = text.split_at_checked(at) else {
        return Vec::new();
    };
    let after = rest.chars().next().map_or(rest, |c| &rest[c.len_utf8()..]);
    vec![
        before.to_owned(),
        format!("{before}{after}"),
        format!("{before}x{rest}"),
        format!("{before}9{rest}"),
        format!("{before}){rest}"),
        format!("{before}\"{rest}"),
    ]
}

/// Every kind of file that comes with the program, spoiled in many places: what is said of it in Spanish names
/// the file, the line and the field, and has no English of ours left in it.
#[test]
fn spoiled_files_are_told_in_spanish_with_file_line_and_field() {
    let [english, spanish] = texts();
    let library = ContentLibrary::builtin().expect("the built-in content is sound");
    let known = library.known_boards();
    let parts = builtin::parts().expect("sound");
    let catalogue = builtin::catalogue().expect("sound");
    let file = "the.file";
    let profile = "(format: 1, name: \"Ana\", target: 0.8, language: Some(\"es\"), answers: [(at: 5, \
                   skill: \"proof\", right: true, took_s: 20.0)])";
    let script =
        "Turn(way: Left, detents: 4, every_ms: 220)\nPoint(position: 3, every_ms: 200)\nUnplug\n";
    let csv = "at,skill,right,took_s\n2026-11-27T12:30:00Z,proof,1,20\n";
    type Read<'a> = Box<dyn Fn(&str) -> Vec<ContentError> + 'a>;
    let one = |result: Result<(), ContentError>| result.err().into_iter().collect::<Vec<_>>();
    let built_in = |path: &str| builtin::text(path).expect("it is built in").to_owned();
    let first = |folder: &str, ending: &str| {
        let mut files = builtin::in_folder(folder);
        let found = files.find(|(path, _)| path.ends_with(ending));
        found.expect("there is one").1.to_owned()
    };
    let kinds: Vec<(String, Read<'_>)> = vec![
        (
            built_in("assets/parts.ron"),
            Box::new(|text| one(read_parts(file, text.as_bytes()).map(drop))),
        ),
        (
            built_in("assets/catalogue.ron"),
            Box::new(|text| one(read_catalogue(file, text.as_bytes(), &parts).map(drop))),
        ),
        (
            built_in("assets/machine.ron"),
            Box::new(|text| one(read_machine(file, text.as_bytes()).map(drop))),
        ),
        (
            first("assets/boards", ".ron"),
            Box::new(|text| read_board(file, text.as_bytes()).err().unwrap_or_default()),
        ),
        (
            built_in("scenarios/drain-code.ron"),
            Box::new(|text| {
                let read = read_scenario(file, text.as_bytes(), &catalogue, &parts, &known);
                one(read.map(drop))
            }),
        ),
        (
            first("scenarios", ".guide.ron"),
            Box::new(|text| one(read_guide(file, text.as_bytes()).map(drop))),
        ),
        (
            first("scenarios", ".examination.ron"),
            Box::new(|text| one(read_examination(file, text.as_bytes(), &["x"]).map(drop))),
        ),
        (
            own(profile),
            Box::new(|text| one(read_profile(file, text.as_bytes()).map(drop))),
        ),
        (
            own(script),
            Box::new(|text| one(read_script(file, text.as_bytes()).map(drop))),
        ),
    ];
    let check = |place: String, english: String, spanish: String| {
        let named = [place.as_str()];
        check_both(&english, &spanish, &named);
    };
    let mut told = 0;
    for (text, read) in &kinds {
        let step = (text.len() / 120).max(1);
        let mut here = 0;
        for text in (0..text.len())
            .step_by(step)
            .flat_map(|at| spoiled(text, at))
        {
            for error in read(&text) {
                let place = match error.field.as_str() {
                    "" => format!("{file}:{}: ", error.line),
                    field => format!("{file}:{}: {field}: ", error.line),
                };
                check(
                    place,
                    english.content_error(&error),
                    spanish.content_error(&error),
                );
                here += 1;
            }
        }
        assert!(here > 50, "only {here} mistakes in {text}");
        told += here;
    }
    for text in (0..csv.len()).flat_map(|at| spoiled(csv, at)) {
        if let Err(error) = read_answers_csv(file, text.as_bytes()) {
            let place = format!("{file}:{}:", error.line);
            let words = [&english, &spanish].map(|texts| texts.answers_csv_error(&error));
            let [english, spanish] = words;
            check(place, english, spanish);
            told += 1;
        }
    }
    let attempt = concat!(
        "DetentAttempt(format:2,program:\"0.1.0\",scenario:\"scenarios/hum.ron\",scenario_sha256:",
        "\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\",seed:7)\n",
        "(at:100,do:Plug)\n",
        "(at:250,do:Probe(mode:Ohms,red:\"drain-pump.1\",black:\"drain-pump.2@board\"))\n",
        "End(at:900,state:\"00c0ffee\",answer:Shown(score:87.5),digest:\"63ac\")\n",
    );
    for text in (0..attempt.len()).flat_map(|at| spoiled(attempt, at)) {
        if let Err(error) = read_attempt(file, text.as_bytes()) {
            let place = match error.field.as_str() {
                "" => format!("{file}:{}: ", error.line),
                field => format!("{file}:{}: {field}: ", error.line),
            };
            check(
                place,
                english.record_error(&error),
                spanish.record_error(&error),
            );
            told += 1;
        }
    }
    assert!(told > 2000, "{told}");
}
