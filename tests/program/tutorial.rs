//! The tutorial for instructors: what it says to type does what it says, and every label that it quotes is there.

use detent_content::{
    CodeKind, ContentLibrary, HandbookBlock, HandbookSpan, Language, ScenarioChange, ScenarioDraft,
    ScenarioSentence, Texts, instructors_tutorial,
};
use detent_training::lesson::Hidden;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

fn tutorial(language: Language) -> Vec<HandbookBlock> {
    instructors_tutorial(language).expect("a handbook")
}

/// A command of the tutorial with the lines that it answers.
struct Typed {
    command: String,
    answer: Vec<String>,
}

/// The commands of a terminal, each with its answer.
fn typed(lines: &[String]) -> Vec<Typed> {
    let mut all: Vec<Typed> = Vec::new();
    for line in lines {
        match line.strip_prefix("$ ") {
            Some(command) => all.push(Typed {
                command: command.to_owned(),
                answer: Vec::new(),
            }),
            None => {
                let last = all.last_mut().expect("a command comes first");
                last.answer.push(line.clone());
            }
        }
    }
    all
}

impl Typed {
    /// Runs it in this folder and holds what it prints against the answer. Only an answer with an error in it may end
    /// with a failure, and it must.
    fn run(&self, folder: &Path, language: Language) {
        let mut words = self.command.split(' ');
        assert_eq!(words.next(), Some("detent"), "{}", self.command);
        let out = Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(words)
            .current_dir(folder)
            .env("LANG", language.code())
            .env("XDG_CACHE_HOME", folder.join("cache"))
            .output()
            .expect("the program starts");
        // What it does first it says first; that something is wrong it says last.
        let printed = match out.status.success() {
            true => [out.stderr, out.stdout].concat(),
            false => [out.stdout, out.stderr].concat(),
        };
        let printed = String::from_utf8(printed).expect("text");
        // Nobody sees a blank that keeps two words in one line.
        let printed = printed.replace(['\u{a0}', '\u{202f}'], " ");
        let error = Texts::load(language).get("author-severity-error");
        let fails = self
            .answer
            .iter()
            .any(|line| line.contains(&format!(": {error}: ")));
        assert_eq!(out.status.success(), !fails, "{}:\n{printed}", self.command);
        let printed: Vec<&str> = printed.lines().collect();
        assert!(
            answers(&printed, &self.answer),
            "{}:\n{}\nis not what the tutorial says:\n{}",
            self.command,
            printed.join("\n"),
            self.answer.join("\n")
        );
    }
}

/// Whether these lines are the answer, in which `…` stands for any lines, or none. No answer is given where nothing is
/// said about it.
fn answers(printed: &[&str], answer: &[String]) -> bool {
    match answer {
        [] => true,
        [gap] if gap.trim() == "…" => true,
        [gap, rest @ ..] if gap.trim() == "…" => {
            (0..=printed.len()).any(|from| answers_whole(&printed[from..], rest))
        }
        lines => answers_whole(printed, lines),
    }
}

fn answers_whole(printed: &[&str], answer: &[String]) -> bool {
    match (printed, answer) {
        ([], []) => true,
        (_, [gap, ..]) if gap.trim() == "…" => answers(printed, answer),
        ([line, printed @ ..], [said, answer @ ..]) => {
            line.trim_end() == said.trim_end() && answers_whole(printed, answer)
        }
        ([], [_, ..]) | ([_, ..], []) => false,
    }
}

/// Changes a file as a block of the tutorial says; what goes must stand there exactly once.
fn change(path: &Path, lines: &[String]) {
    let text = std::fs::read_to_string(path).expect("the file is there");
    let side = |other: &str| -> String {
        let lines = lines.iter().filter(|line| !line.starts_with(other));
        lines.map(|line| format!("{}\n", &line[2..])).collect()
    };
    let (old, new) = (side("+ "), side("- "));
    let marked = |line: &String| ["+ ", "- ", "  "].iter().any(|mark| line.starts_with(mark));
    assert!(lines.iter().all(marked), "{lines:#?}");
    let found = text.matches(&old).count();
    assert_eq!(found, 1, "in {}:\n{old}", path.display());
    std::fs::write(path, text.replacen(&old, &new, 1)).expect("it can be written");
}

/// Types everything, writes every file and makes every change, in order.
fn follow(language: Language) {
    let folder = tempfile::tempdir().expect("a folder");
    let (mut commands, mut changes) = (0, 0);
    for block in tutorial(language) {
        let HandbookBlock::Code { kind, lines } = block else {
            continue;
        };
        match kind {
            CodeKind::Terminal => {
                for typed in typed(&lines) {
                    typed.run(folder.path(), language);
                    commands += 1;
                }
            }
            CodeKind::File(file) => {
                let path = folder.path().join(file);
                std::fs::create_dir_all(path.parent().expect("a folder")).expect("made");
                std::fs::write(path, lines.join("\n") + "\n").expect("it can be written");
            }
            CodeKind::Change(file) => {
                change(&folder.path().join(file), &lines);
                changes += 1;
            }
        }
    }
    assert!(commands > 10 && changes > 10, "{commands} {changes}");
    // What the tutorial ends with is good.
    let whole = Typed {
        command: "detent check --strict --quiet school --library school".to_owned(),
        answer: Vec::new(),
    };
    whole.run(folder.path(), language);
}

#[test]
fn what_the_english_tutorial_says_to_type_does_what_it_says() {
    follow(Language::En);
}

#[test]
fn what_the_spanish_tutorial_says_to_type_does_what_it_says() {
    follow(Language::Es);
}

#[test]
fn an_answer_is_compared_line_by_line_but_for_what_is_left_out() {
    let printed = ["one", "two", "three", "four"];
    for (answer, fits) in [
        (&["…"][..], true),
        (&["one", "two", "three", "four"], true),
        (&["one", "…", "four"], true),
        (&["…", "three", "…"], true),
        (&["…", "four"], true),
        (&["one", "…"], true),
        (&["one"], false),
        (&["…", "two"], false),
        (&["two", "…"], false),
        (&["one", "…", "two", "…", "one", "…"], false),
    ] {
        let answer: Vec<String> = answer.iter().map(|line| (*line).to_owned()).collect();
        assert_eq!(answers(&printed, &answer), fits, "{answer:?}");
    }
}

/// Every text of the program as it stands, in one language.
fn all_texts(language: Language) -> BTreeSet<String> {
    let file = format!("assets/lang/{}.ftl", language.code());
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
    let file = std::fs::read_to_string(file).expect("the file is there");
    let lines = file.lines().filter(|line| !line.starts_with('#'));
    lines
        .filter_map(|line| Some(line.split_once(" = ")?.1.to_owned()))
        .collect()
}

fn spans(block: &HandbookBlock) -> &[HandbookSpan] {
    match block {
        HandbookBlock::Heading { spans, .. }
        | HandbookBlock::Paragraph(spans)
        | HandbookBlock::ListItem { spans, .. } => spans,
        HandbookBlock::Code { .. } => &[],
    }
}

#[test]
fn every_label_of_the_tutorial_is_one_of_the_program() {
    let library = ContentLibrary::builtin().expect("sound");
    let jobs = library.scenarios().expect("sound jobs");
    for language in Language::ALL {
        let mut known = all_texts(language);
        known.extend(Language::ALL.map(|l| l.own_name().to_owned()));
        known.extend(jobs.iter().map(|job| match language {
            Language::En => job.scenario.title.en.clone(),
            Language::Es => job.scenario.title.es.clone(),
        }));
        let blocks = tutorial(language);
        let labels = blocks.iter().flat_map(spans).filter_map(|span| match span {
            HandbookSpan::Label(label) => Some(label),
            HandbookSpan::Plain(_) | HandbookSpan::Code(_) => None,
        });
        let labels: Vec<&String> = labels.collect();
        assert!(labels.len() > 15, "{labels:?}");
        for label in labels {
            assert!(known.contains(label), "{language:?}: {label}");
        }
    }
}

/// The two are one tutorial: block by block of the same kind, with the same files and the same commands.
#[test]
fn both_languages_have_the_same_tutorial() {
    let shape = |language: Language| -> Vec<String> {
        let shape = |block: HandbookBlock| match block {
            HandbookBlock::Heading { level, .. } => format!("heading {level}"),
            HandbookBlock::Paragraph(_) => "paragraph".to_owned(),
            HandbookBlock::ListItem { mark, .. } => format!("{mark:?}"),
            HandbookBlock::Code { kind, lines } => {
                let commands = lines.iter().filter(|line| line.starts_with("$ "));
                format!("{kind:?} {:?}", commands.collect::<Vec<_>>())
            }
        };
        tutorial(language).into_iter().map(shape).collect()
    };
    assert_eq!(shape(Language::En), shape(Language::Es));
}

/// The job of the first exercise is what the workshop makes of a copy.
#[test]
fn the_copied_job_of_the_first_exercise_is_what_the_workshop_writes() {
    let library = ContentLibrary::builtin().expect("sound");
    let source = library.scenario("scenarios/drain-code.ron").expect("sound");
    for language in Language::ALL {
        let mut files = tutorial(language)
            .into_iter()
            .filter_map(|block| match block {
                HandbookBlock::Code {
                    kind: CodeKind::File(file),
                    lines,
                } => Some((file, lines.join("\n") + "\n")),
                _ => None,
            });
        let (file, written) = files.next().expect("the first exercise has a file");
        let mut draft = ScenarioDraft::copy_of(&source, "water-after-the-move");
        assert_eq!(file, "school/scenarios/water-after-the-move.ron");
        let said = ScenarioDraft::of_text("water-after-the-move", &written).expect("RON");
        let said = said.checked(&library).expect("sound").scenario;
        for (sentence, both) in [
            (ScenarioSentence::Title, &said.title),
            (ScenarioSentence::Complaint, &said.complaint),
        ] {
            for (language, text) in [(Language::En, &both.en), (Language::Es, &both.es)] {
                let change = ScenarioChange::Sentence(sentence, language, text.clone());
                draft.change(&change).expect("it is there");
            }
        }
        let fault = Hidden::Named("harness.pump-wire-open".to_owned());
        for change in [
            ScenarioChange::Fault(fault),
            ScenarioChange::ParMinutes(said.par_minutes),
            ScenarioChange::Budget(said.budget),
        ] {
            draft.change(&change).expect("it is there");
        }
        assert_eq!(draft.text(), written);
    }
}

#[test]
fn the_command_prints_the_tutorial_readably_in_both_languages() {
    for language in Language::ALL {
        let out = Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(["tutorial", "--lang", language.code()])
            .output()
            .expect("the program starts");
        assert!(out.status.success());
        let told = String::from_utf8(out.stdout).expect("text");
        assert!(!told.contains("**") && !told.contains("```") && !told.contains('‹'));
        let blocks = tutorial(language);
        for block in &blocks {
            if let HandbookBlock::Code { lines, .. } = block {
                for line in lines {
                    assert!(told.contains(&format!("    {line}\n")), "{line}");
                }
            }
        }
        let texts = Texts::load(language);
        let label = texts.with(
            "tutorial-label",
            &[("label", texts.get("workshop-try").into())],
        );
        assert!(told.contains(&label), "{label}");
    }
}
