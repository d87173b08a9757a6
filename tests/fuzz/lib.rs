//! Any bytes through every reader of files: none panics, none hangs, and each error has its place inside
//! the text. The first byte of an input names the reader, the others are the file.

#![allow(
    clippy::disallowed_types,
    reason = "what every input is held against is made once"
)]

use detent_content::{
    AnswersCsvProblem, Catalogue, ContentError, EXAMINATION_ENDING, GUIDE_ENDING, KnownBoard,
    Language, Parts, ProfileError, ProfileStore, Texts, builtin, listed_learners, own_files,
    pack_course, read_answers_csv, read_board, read_catalogue, read_class_plan, read_course,
    read_course_zip, read_examination, read_guide, read_machine, read_parts, read_profile,
    read_scenario, read_script,
};
use detent_simulation::controller::Board;
use detent_syntax::document::Document;
use detent_syntax::kind::SyntaxNode;
use detent_syntax::parser;
use detent_training::reason::evidence::Table;
use detent_training::record::read_attempt;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// A reader of files.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    Scenario,
    Board,
    Catalogue,
    Parts,
    Machine,
    Guide,
    Examination,
    Script,
    Attempt,
    UnfinishedAttempt,
    Profile,
    LearnerList,
    Table,
    AnswersCsv,
    Syntax,
    Course,
    CourseZip,
    Plan,
}

impl Reader {
    pub const ALL: [Reader; 18] = [
        Reader::Scenario,
        Reader::Board,
        Reader::Catalogue,
        Reader::Parts,
        Reader::Machine,
        Reader::Guide,
        Reader::Examination,
        Reader::Script,
        Reader::Attempt,
        Reader::UnfinishedAttempt,
        Reader::Profile,
        Reader::LearnerList,
        Reader::Table,
        Reader::AnswersCsv,
        Reader::Syntax,
        Reader::Course,
        Reader::CourseZip,
        Reader::Plan,
    ];

    /// The byte that stands for it: a letter, so that inputs that are text stay text.
    pub fn letter(self) -> u8 {
        let index = Reader::ALL.iter().position(|reader| *reader == self);
        b'a' + index.unwrap_or(0) as u8
    }

    fn of_letter(letter: u8) -> Reader {
        let index = usize::from(letter.wrapping_sub(b'a'));
        Reader::ALL[index % Reader::ALL.len()]
    }
}

/// Which reader an input is for, and the file in it.
pub fn split(input: &[u8]) -> Option<(Reader, &[u8])> {
    let (letter, file) = input.split_first()?;
    Some((Reader::of_letter(*letter), file))
}

/// Every file of the program and some small ones, as inputs to begin with.
pub fn seeds() -> Vec<Vec<u8>> {
    let reader_of = |name: &str| match name {
        "assets/parts.ron" => Some(Reader::Parts),
        "assets/catalogue.ron" => Some(Reader::Catalogue),
        "assets/machine.ron" => Some(Reader::Machine),
        _ if name.starts_with("assets/boards/") => Some(Reader::Board),
        _ if name.starts_with("assets/templates/course.") => Some(Reader::Course),
        _ if name.starts_with("assets/templates/plan.") => Some(Reader::Plan),
        _ if name.ends_with(GUIDE_ENDING) => Some(Reader::Guide),
        _ if name.ends_with(EXAMINATION_ENDING) => Some(Reader::Examination),
        _ if name.starts_with("scenarios/") => Some(Reader::Scenario),
        _ => None,
    };
    let mut seeds = Vec::new();
    for (name, bytes) in builtin::files() {
        let readers = reader_of(&name).map(|reader| [reader, Reader::Syntax]);
        for reader in readers.into_iter().flatten() {
            seeds.push([&[reader.letter()], bytes].concat());
        }
    }
    for (reader, text) in SMALL_FILES {
        seeds.push([&[reader.letter()], text.as_bytes()].concat());
    }
    let course = builtin::text("assets/templates/course.en.ron").expect("it is built in");
    let files = [("course.ron", course), ("parts.ron", "(parts: [])")];
    let files = files.map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec()));
    let files = own_files("course", files.to_vec()).expect("all in their places");
    let zip = pack_course("a.zip", &files).expect("it is sound");
    seeds.push([&[Reader::CourseZip.letter()], &zip[..]].concat());
    seeds
}

/// Sound files of the kinds that are not built in.
const SMALL_FILES: [(Reader, &str); 7] = [
    (
        Reader::Script,
        "// By hand.\nUnplug\nWait(s: 5)\nTurn(way: Left, detents: 6, every_ms: 200)\nTap(Stop)\n",
    ),
    (
        Reader::Attempt,
        concat!(
            "DetentAttempt(format:2,program:\"0.1.0\",scenario:\"scenarios/hum.ron\",scenario_sha256:",
            "\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\",seed:7)\n",
            "(at:100,do:Plug)\n(at:250,do:Detent(Right))\n",
            "(at:250,do:Probe(mode:Ohms,red:\"drain-pump.1\",black:\"drain-pump.2@board\"))\n",
            "End(at:900,state:\"00c0ffee\",answer:Shown(score:87.5),digest:",
            "\"63ac2c28ceaa566e8412852afea0af463b0c777bee0213b6677ff409429b0a1d\")\n",
        ),
    ),
    (
        Reader::UnfinishedAttempt,
        concat!(
            "DetentAttempt(format:2,program:\"0.1.0\",scenario:\"scenarios/hum.ron\",scenario_sha256:",
            "\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\",seed:7)\n",
            "(at:100,do:Plug)\n(at:250,do:Det",
        ),
    ),
    (
        Reader::Profile,
        "(format: 1, name: \"Ana\", answers: [(at: 5, skill: Metering, right: true, took_s: 2.5)])",
    ),
    (Reader::LearnerList, "(format: 1, name: \"Ana\")"),
    (
        Reader::AnswersCsv,
        "at,skill,right,took_s\n2026-11-28T05:00:00Z,metering,true,2.5\n\"2026-11-28T05:00:00Z\",x,no,\n",
    ),
    (
        Reader::Syntax,
        "#![enable(implicit_some)]\n// A \nX(r#a: r#\"\\\"#, b: [1..=2, 'c', b\"\\xff\", -0x1F_u8], c: {(1,): Some(\"\\u{e9}\")},)",
    ),
];

/// What files refer to.
struct Around {
    parts: Parts,
    catalogue: Catalogue,
    boards: Vec<KnownBoard>,
    texts: Texts,
}

static AROUND: LazyLock<Around> = LazyLock::new(|| {
    let boards = builtin::in_folder("assets/boards").map(|(name, text)| {
        let board = read_board(&name, text.as_bytes()).expect("a sound board");
        KnownBoard::of(&board)
    });
    Around {
        parts: builtin::parts().expect("sound parts"),
        catalogue: builtin::catalogue().expect("a sound catalogue"),
        boards: boards.collect(),
        texts: Texts::load(Language::Es),
    }
});

/// Name of the file in every error.
const FILE: &str = "a.file";

/// Put a file through a reader.
///
/// # Panics
/// When what must hold for any bytes does not.
pub fn check(reader: Reader, bytes: &[u8]) {
    let around = &*AROUND;
    match reader {
        Reader::Scenario => placed(
            read_scenario(
                FILE,
                bytes,
                &around.catalogue,
                &around.parts,
                &around.boards,
            ),
            bytes,
        ),
        Reader::Board => match read_board(FILE, bytes) {
            Ok(board) => good_board(&board),
            Err(errors) => {
                assert!(!errors.is_empty(), "refused without a reason");
                for error in &errors {
                    in_text(error, bytes);
                }
                let places = errors.iter().map(|error| (error.line, error.column));
                assert!(places.is_sorted(), "not in the order of the file");
            }
        },
        Reader::Catalogue => placed(read_catalogue(FILE, bytes, &around.parts), bytes),
        Reader::Parts => placed(read_parts(FILE, bytes), bytes),
        Reader::Machine => placed(read_machine(FILE, bytes), bytes),
        Reader::Guide => placed(read_guide(FILE, bytes), bytes),
        Reader::Examination => {
            let known = ["dark-machine", "drain-code"];
            placed(read_examination(FILE, bytes, &known), bytes);
        }
        Reader::Plan => {
            let known = ["exam-120-v-dial", "exam-no-live-tests"];
            placed(read_class_plan(FILE, bytes, &known), bytes);
        }
        Reader::Script => placed(read_script(FILE, bytes), bytes),
        Reader::Attempt => attempt("a.attempt", bytes),
        Reader::UnfinishedAttempt => attempt("a.part", bytes),
        Reader::Profile => placed(read_profile(FILE, bytes), bytes),
        Reader::LearnerList => {
            let store = OneProfile(bytes);
            let listed = listed_learners(&store);
            assert_eq!(listed.len(), 1);
            if let Err(ProfileError::Content(error)) = &listed[0].read {
                in_text(error, bytes);
            }
        }
        Reader::Table => {
            // With the sums right, so that what is behind them is read.
            let key = [7; 32];
            let sum = Sha256::digest(bytes);
            let kept = [&key[..], &sum[..], bytes].concat();
            if let Ok(table) = Table::from_bytes(&kept, &key) {
                let again = Table::from_bytes(&table.to_bytes(&key), &key);
                assert!(again.is_ok(), "what was written is not read");
            }
            let damaged = Table::from_bytes(bytes, &key);
            assert!(damaged.is_err() || bytes.starts_with(&key));
        }
        Reader::AnswersCsv => {
            if let Err(error) = read_answers_csv(FILE, bytes) {
                let lines = bytes.iter().filter(|b| matches!(b, b'\n' | b'\r')).count() as u64;
                assert!((1..=lines + 1).contains(&error.line), "{error:?}");
                if let AnswersCsvProblem::Field { column, .. } = &error.problem {
                    assert!(!column.is_empty());
                }
                told(&around.texts.answers_csv_error(&error));
            }
        }
        Reader::Syntax => syntax(bytes),
        Reader::Course => {
            for error in read_course(FILE, bytes, None).err().into_iter().flatten() {
                in_text(&error, bytes);
            }
        }
        Reader::CourseZip => course_zip(bytes),
    }
}

/// What comes out of a zip lies inside the course and can be packed again; what is refused says so.
fn course_zip(bytes: &[u8]) {
    match read_course_zip(FILE, bytes) {
        Ok(zip) => {
            for own in &zip.files {
                let inside = own.file.strip_prefix("a.file/");
                let inside = inside.expect("in the zip");
                assert_eq!(own.inner_path(), inside);
                assert!(inside.split('/').count() <= 2 && !inside.contains(".."));
            }
            assert!(pack_course(FILE, &zip.files).is_ok());
        }
        Err(errors) => {
            assert!(!errors.is_empty(), "refused without a reason");
            for error in errors {
                told(&AROUND.texts.content_error(&error));
            }
        }
    }
}

/// A board that was read is known by what it says.
fn good_board(board: &Board) {
    assert!(board.check().is_empty());
    assert_eq!(KnownBoard::of(board).name, board.id);
}

fn placed<T>(read: Result<T, ContentError>, bytes: &[u8]) {
    if let Err(error) = read {
        in_text(&error, bytes);
    }
}

/// The place of an error is inside the text, and there are words for it.
fn in_text(error: &ContentError, bytes: &[u8]) {
    assert!(!error.file.is_empty());
    let text = String::from_utf8_lossy(bytes);
    let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
    let line = text.split('\n').nth(error.line.wrapping_sub(1));
    let line = line.unwrap_or_else(|| panic!("no line {}: {error:?}", error.line));
    let columns = 1..=line.chars().count() + 1;
    assert!(columns.contains(&error.column), "{error:?} in {line:?}");
    told(&AROUND.texts.content_error(error));
}

fn told(words: &str) {
    assert!(!words.trim().is_empty());
}

fn attempt(file: &str, bytes: &[u8]) {
    if let Err(error) = read_attempt(file, bytes) {
        assert!(error.file.starts_with(file), "{error:?}");
        let lines = bytes.iter().filter(|b| **b == b'\n').count();
        assert!((1..=lines + 1).contains(&error.line), "{error:?}");
        told(&AROUND.texts.record_error(&error));
    }
}

/// The tree holds the whole text, reads what ron reads, and a change touches nothing else.
fn syntax(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let tree = SyntaxNode::new_root(parser::parse(text).tree);
    assert!(tree.text() == text, "the tree is not the text");
    let ron_reads = ron::Options::default()
        .with_recursion_limit(48)
        .from_str::<ron::Value>(text);
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            // A slip of ron: with `implicit_some` it takes the `Some` in `Some 1` for none of the text.
            let slip = text.contains("implicit_some") && text.contains("Some");
            assert!(ron_reads.is_err() || slip, "{error}");
            assert!(error.offset <= text.len() && text.is_char_boundary(error.offset));
            return;
        }
    };
    assert_eq!(document.text(), text);
    let values = document.values();
    let mut firsts = BTreeMap::new();
    for value in &values {
        firsts.entry(value.path.as_str()).or_insert(&value.range);
    }
    let repeated = firsts.len() < values.len();
    for (path, range) in firsts.into_iter().take(24) {
        // A raw name may hold a dot, which no path can say; of two fields with one name the first is meant.
        if document.range(path).as_ref() != Some(range) {
            assert!(repeated || text.contains("r#"), "{path} is elsewhere");
            continue;
        }
        let mut changed = document.clone();
        changed.set(path, "(7, \"a\")").ok();
        if changed != document {
            let expected = format!("{}(7, \"a\"){}", &text[..range.start], &text[range.end..]);
            assert_eq!(changed.text(), expected);
        }
        changed.remove(path).ok();
        changed.insert_item(path, 0, "[]").ok();
        changed.insert_field(path, "a", "()", &[]).ok();
        changed.insert_entry(path, "a", "{}").ok();
        assert!(Document::parse(changed.text()).is_ok());
    }
}

/// A store with one profile.
struct OneProfile<'a>(&'a [u8]);

impl ProfileStore for OneProfile<'_> {
    fn place(&self) -> Option<String> {
        None
    }

    fn stems(&self) -> Vec<String> {
        vec!["one".to_owned()]
    }

    fn file(&self, stem: &str) -> String {
        format!("{stem}.learner")
    }

    fn read(&self, _: &str) -> Result<Option<Vec<u8>>, ProfileError> {
        Ok(Some(self.0.to_vec()))
    }

    fn write(&self, stem: &str, _: &[u8]) -> Result<(), ProfileError> {
        panic!("{stem} is written by who only reads")
    }

    fn remove(&self, stem: &str) -> Result<(), ProfileError> {
        panic!("{stem} is removed by who only reads")
    }

    fn last_stem(&self) -> Option<String> {
        None
    }

    fn keep_last_stem(&self, _: Option<&str>) -> Result<(), ProfileError> {
        panic!("a last stem is kept by who only reads")
    }
}
