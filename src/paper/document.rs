//! The two documents: what stands in them, one sheet for each learner.

use super::draft::{BODY, Draft, NOTE, STRONG};
use super::output::{About, pdf};
use super::{
    PaperError, PaperSize, SheetJob, codes, form, gesture, key, lamps, menu, ticket, wires,
};
use detent_content::{ContentLibrary, Language, Texts, Value};
use detent_training::lesson::{Bilingual, Library};

/// What the sections of one sheet are made from.
#[derive(Clone, Copy)]
pub(super) struct Sheet<'a> {
    pub job: SheetJob<'a>,
    pub library: Library<'a>,
    pub texts: &'a Texts,
    /// Which sheet of how many.
    pub place: (usize, usize),
}

impl Sheet<'_> {
    pub fn said<'t>(&self, text: &'t Bilingual) -> &'t str {
        match self.texts.language() {
            Language::En => &text.en,
            Language::Es => &text.es,
        }
    }

    /// Which sheet this is, and which variant.
    pub fn named(&self) -> String {
        let number = |n: u64| Value::from(n.to_string());
        match self.job.variant {
            Some((variant, seed)) => self.texts.with(
                "paper-sheet-variant",
                &[
                    ("sheet", number(self.place.0 as u64 + 1)),
                    ("sheets", number(self.place.1 as u64)),
                    ("variant", number(variant)),
                    ("seed", number(seed)),
                ],
            ),
            None => (self.texts).with("paper-sheet-seed", &[("seed", number(self.job.seed))]),
        }
    }
}

/// Lays out each job's sheet.
fn lay_out(
    content_library: &ContentLibrary,
    jobs: &[SheetJob<'_>],
    language: Language,
    mut section: impl FnMut(&Sheet<'_>) -> Result<(), PaperError>,
) -> Result<(), PaperError> {
    for (n, job) in jobs.iter().enumerate() {
        let scenario = &job.source.scenario;
        let volts = scenario.mains.rating().volts as u32;
        let texts = Texts::load(language).for_supply(volts);
        section(&Sheet {
            job: *job,
            library: content_library.library(scenario),
            texts: &texts,
            place: (n, jobs.len()),
        })?;
    }
    Ok(())
}

/// The handout of these jobs, one after the other, each on pages of its own.
///
/// # Errors
/// [`PaperError::Refused`] where the document is none that everybody can read.
pub fn handout(
    content_library: &ContentLibrary,
    jobs: &[SheetJob<'_>],
    language: Language,
    paper: PaperSize,
) -> Result<Vec<u8>, PaperError> {
    let mut draft = Draft::new(paper);
    let mut title = String::new();
    lay_out(content_library, jobs, language, |sheet| {
        let texts = sheet.texts;
        title = texts.get("paper-handout");
        draft.sheet();
        ticket::ticket(&mut draft, sheet);
        form::form(&mut draft, sheet);
        gesture::gesture(&mut draft, sheet);
        menu::menu(&mut draft, sheet);
        lamps::lamps(&mut draft, sheet);
        wires::wires(&mut draft, sheet);
        codes::codes(&mut draft, sheet);
        feet(&mut draft, sheet, "paper-handout");
        Ok(())
    })?;
    let about = About {
        title: &titled(&title, jobs, language),
        language: language.code(),
    };
    pdf(draft, &about)
}

/// The answers to these jobs.
///
/// # Errors
/// A machine cannot be set up, the planner finds no way, or [`PaperError::Refused`].
pub fn answer_key(
    content_library: &ContentLibrary,
    jobs: &[SheetJob<'_>],
    language: Language,
    paper: PaperSize,
) -> Result<Vec<u8>, PaperError> {
    let mut draft = Draft::new(paper);
    let mut title = String::new();
    lay_out(content_library, jobs, language, |sheet| {
        let texts = sheet.texts;
        if sheet.place.0 == 0 {
            title = texts.get("paper-answer-key");
            draft.sheet();
            draft.heading(1, &title, 0.0);
            draft.paragraph(&texts.get("paper-key-intro"), BODY);
        } else {
            draft.space(12.0);
        }
        key::key(&mut draft, content_library, sheet)?;
        if sheet.place.0 + 1 == sheet.place.1 {
            feet(&mut draft, sheet, "paper-answer-key");
        }
        Ok(())
    })?;
    let about = About {
        title: &titled(&title, jobs, language),
        language: language.code(),
    };
    pdf(draft, &about)
}

/// The document's title, with the job's where there is only one.
fn titled(title: &str, jobs: &[SheetJob<'_>], language: Language) -> String {
    match jobs {
        [only] => {
            let job = &only.source.scenario.title;
            let job = match language {
                Language::En => &job.en,
                Language::Es => &job.es,
            };
            format!("{title}: {job}")
        }
        _ => title.to_owned(),
    }
}

fn feet(draft: &mut Draft, sheet: &Sheet<'_>, key: &str) {
    let texts = sheet.texts;
    let what = texts.get(key);
    let left = match (key, sheet.job.variant) {
        ("paper-answer-key", _) => what,
        (_, Some(_)) => format!("{what} · {}", sheet.named()),
        (_, None) => format!("{what} · {}", sheet.said(&sheet.job.source.scenario.title)),
    };
    draft.feet(&left, |page, of| {
        let args = [
            ("page", Value::from(page.to_string())),
            ("pages", Value::from(of.to_string())),
        ];
        texts.with("paper-page", &args)
    });
}

/// A table of facts: what, and its value.
pub(super) fn facts(draft: &mut Draft, about: &str, facts: Vec<(String, String)>) {
    use super::draft::{Cell, TableShape};
    let shape = TableShape {
        about,
        columns: &[0.32, 0.68],
        heads: &[],
        row: 16.5,
        row_heads: true,
    };
    let rows: Vec<Vec<Cell<'_>>> = (facts.into_iter())
        .map(|(what, value)| vec![Cell::Strong(what), Cell::Text(value)])
        .collect();
    draft.table(&shape, &rows);
}

/// What stands under a board's pages: that it is invented.
pub(super) fn invented(draft: &mut Draft, sheet: &Sheet<'_>) {
    let board = sheet.texts.get(&sheet.library.board.name);
    draft.paragraph(&board, STRONG);
    draft.paragraph(&sheet.texts.get("sheet-invented"), NOTE);
}
