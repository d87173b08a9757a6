//! The page of a kind of file, in Markdown. English alone, as the fields are.

use super::example::{self, Examples};
use super::model::{Body, Case, Field, FileReference, Holds, TypeReference};
use super::words::{limit_words, shape_words, value_words};
use detent_content::{ContentError, FileKind, Language, Texts};
use detent_training::bench::script::ScriptStep;
use schemars::schema_for;

/// Longest line.
const WIDTH: usize = 110;

/// The page of this kind of file.
///
/// # Errors
/// A file that examples are taken from is not sound.
pub(crate) fn page(kind: FileKind) -> Result<String, ContentError> {
    let texts = Texts::load(Language::En);
    let reference = FileReference::of(kind);
    let examples = example::examples(kind, &reference)?;
    let mut page = Page {
        texts,
        lines: Vec::new(),
    };
    page.heading(1, title(kind));
    page.paragraph(about(kind));
    page.paragraph(&format!(
        "A field that says nothing of being left out must be there. Whole numbers are never negative. `[…]` is a \
         list, `(…, …)` are values without names, `{{…: …}}` is a map; a text stands in quotation marks. `//` begins \
         a comment. For other programs the same is in `assets/schema/{kind}.json`, a JSON Schema of what serde makes \
         of such a file. This page is in English alone; `detent reference {kind}` prints it."
    ));
    if let Some(example) = example::whole(kind)? {
        page.heading(2, "Example");
        page.block(example);
    }
    for (n, of) in reference.types.iter().enumerate() {
        if n == 0 {
            page.heading(2, "The file");
        } else {
            page.heading(2, &of.name);
            page.paragraph(&of.told);
        }
        page.body(of);
        page.examples(of, &examples);
    }
    if kind == FileKind::Guide {
        page.script(&reference);
    }
    Ok(page.lines.join("\n") + "\n")
}

fn title(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Scenario => "Job",
        FileKind::Board => "Board",
        FileKind::Guide => "Guide",
        FileKind::Examination => "Examination",
        FileKind::Parts => "Parts",
        FileKind::Course => "Course",
        FileKind::Plan => "Plan of a class",
    }
}

/// What such a file is, where it lies, and how one is begun and checked.
fn about(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Scenario => {
            "One job: the ticket, the hidden fault and what counts. `scenarios/NAME.ron` in the folder of \
             `--library`, or any file that a command is given. `detent new scenario my-job.ron` begins one, \
             `detent check my-job.ron` says whether it can be done."
        }
        FileKind::Board => {
            "One control board: its panel, limits, programs, codes, service mode, pins and service sheet. \
             `boards/NAME.ron` in the folder of `--library`. `detent new board my-board.ron` begins a whole one, \
             `detent check my-board.ron` checks it."
        }
        FileKind::Guide => {
            "A guide through one job, step by step. It lies beside its job: `my-job.ron`, `my-job.guide.ron`. \
             `detent new guide my-job.guide.ron` begins one, `detent check my-job.guide.ron` checks it."
        }
        FileKind::Examination => {
            "A set of jobs within a time on the clock on the wall. `scenarios/NAME.examination.ron` beside the jobs \
             that it names. `detent check NAME.examination.ron` checks it."
        }
        FileKind::Parts => {
            "The parts that an own library adds to the counter, for boards of its own. `parts.ron` in the folder of \
             `--library`; `detent check FOLDER` checks it."
        }
        FileKind::Course => {
            "What a library that is handed on says of itself. `course.ron` at the top of its folder. \
             `detent new course course.ron` begins one, `detent course check FOLDER` checks all of it, \
             `detent course pack FOLDER --to course.zip` makes one zip of it."
        }
        FileKind::Plan => {
            "What is to be done in a class, for how long, and by how many. `NAME.plan.ron`, anywhere; it names no \
             learners. `detent new plan tuesday.plan.ron` begins one, `detent check tuesday.plan.ron` checks it, \
             `detent class --plan tuesday.plan.ron` begins the class."
        }
    }
}

struct Page {
    texts: Texts,
    lines: Vec<String>,
}

impl Page {
    fn heading(&mut self, level: usize, text: &str) {
        if self.lines.last().is_some_and(|line| !line.is_empty()) {
            self.lines.push(String::new());
        }
        self.lines.push(format!("{} {text}", "#".repeat(level)));
        self.lines.push(String::new());
    }

    fn paragraph(&mut self, text: &str) {
        self.wrapped("", text);
        self.lines.push(String::new());
    }

    /// A text in lines, each behind so many blanks as the first has characters in front.
    fn wrapped(&mut self, front: &str, text: &str) {
        let margin = " ".repeat(front.chars().count());
        let mut line = front.to_owned();
        let mut begun = false;
        for word in words(text) {
            let length = line.chars().count() + 1 + word.chars().count();
            if begun && length > WIDTH {
                self.lines
                    .push(std::mem::replace(&mut line, margin.clone()));
            } else if begun {
                line.push(' ');
            }
            line.push_str(&word);
            begun = true;
        }
        self.lines.push(line);
    }

    fn block(&mut self, text: &str) {
        self.lines.push("```ron".to_owned());
        self.lines
            .extend(text.trim_end().lines().map(str::to_owned));
        self.lines.push("```".to_owned());
    }

    fn body(&mut self, of: &TypeReference) {
        match &of.body {
            Body::Fields(fields) => fields.iter().for_each(|field| self.field("- ", field)),
            Body::Cases(cases) if cases.iter().all(Case::is_bare) => {
                let names: Vec<String> = cases.iter().map(|case| code(&case.name)).collect();
                self.wrapped("", &names.join(", "));
            }
            Body::Cases(cases) => cases.iter().for_each(|case| self.case(case)),
            Body::Texts(names) => {
                let names: Vec<String> = names
                    .iter()
                    .map(|name| code(&format!("{name:?}")))
                    .collect();
                self.wrapped("", &names.join(", "));
            }
        }
    }

    fn field(&mut self, front: &str, field: &Field) {
        let value = value_words(field, &self.texts, &link, &|value| code(value));
        let said = format!("{}: {value}. {}", code(&field.name), field.told);
        self.wrapped(front, &said);
    }

    fn case(&mut self, case: &Case) {
        match &case.holds {
            Holds::Nothing => {
                self.wrapped("- ", &format!("{}: {}", code(&case.name), case.told));
            }
            Holds::Value(shape, limits) => {
                let mut value = vec![shape_words(shape, &self.texts, &link)];
                value.extend(limit_words(limits, &self.texts));
                let name = code(&format!("{}(…)", case.name));
                self.wrapped(
                    "- ",
                    &format!("{name} with {}: {}", value.join(", "), case.told),
                );
            }
            Holds::Fields(fields) => {
                let name = code(&format!("{}(…)", case.name));
                self.wrapped("- ", &format!("{name}: {}", case.told));
                fields.iter().for_each(|field| self.field("  - ", field));
            }
        }
    }

    /// One example of a type, or one of each case that holds something.
    fn examples(&mut self, of: &TypeReference, examples: &Examples) {
        let Some(found) = examples.get(&of.name).filter(|found| !found.is_empty()) else {
            return;
        };
        self.lines.push(String::new());
        match &of.body {
            Body::Fields(_) => found.values().for_each(|text| self.block(text)),
            Body::Cases(cases) => {
                let of_each = cases.iter().filter_map(|case| found.get(&case.name));
                let of_each: Vec<&str> = of_each.map(String::as_str).collect();
                self.block(&of_each.join("\n"));
            }
            Body::Texts(_) => {}
        }
    }

    /// The lines in which a guide, and a script, say what hands do.
    fn script(&mut self, reference: &FileReference) {
        self.heading(2, "Lines of a script");
        self.paragraph(
            "One step a line, as in the file that `detent play` is given: one of the steps below, or an \
             [Action](#action) by itself.",
        );
        let steps = FileReference::of_schema(schema_for!(ScriptStep).as_value());
        for (n, of) in steps.types.iter().enumerate() {
            if reference.named(&of.name).is_some() {
                continue;
            }
            if n > 0 {
                self.heading(2, &of.name);
                self.paragraph(&of.told);
            }
            self.body(of);
        }
    }
}

impl Case {
    /// It holds nothing, and its name says all.
    fn is_bare(&self) -> bool {
        self.told.is_empty() && matches!(self.holds, Holds::Nothing)
    }
}

/// The words of a text; what stands between two backquotes is one.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match words.last_mut() {
            Some(last) if last.matches('`').count() % 2 == 1 => {
                last.push(' ');
                last.push_str(word);
            }
            _ => words.push(word.to_owned()),
        }
    }
    words
}

fn code(text: &str) -> String {
    format!("`{text}`")
}

fn link(name: &str) -> String {
    format!("[{name}](#{})", name.to_lowercase())
}
