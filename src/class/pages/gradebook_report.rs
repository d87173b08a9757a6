//! One learner's report, to be printed: for the teacher with every lost point, for the family in plain words. No other
//! learner stands on it.

use super::frame::Page;
use super::gradebook_learner::{lost_table, skills_table};
use super::gradebook_page::{book_head, scrolled};
use super::gradebook_view::{GradebookView, NOTHING, learner_name};
use super::page_texts::PageTexts;
use super::shown::shown;
use detent_gradebook::{ClassLearner, Mark, skills_of_learner};
use detent_training::lesson::PASS_SHARE;
use maud::{Markup, html};

/// Who reads a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReportReader {
    /// Whoever teaches: every lost point.
    Teacher,
    /// The family: plain words.
    Parent,
}

/// From this share of the points on a skill is told as on its way. Our own choice.
const ON_THE_WAY: f64 = 0.5;

impl ReportReader {
    /// The one that an address names.
    pub fn of_name(name: &str) -> Option<ReportReader> {
        match name {
            "teacher" => Some(ReportReader::Teacher),
            "parent" => Some(ReportReader::Parent),
            _ => None,
        }
    }

    const fn title(self) -> &'static str {
        match self {
            ReportReader::Teacher => "pages-book-report-teacher",
            ReportReader::Parent => "pages-book-report-parent",
        }
    }
}

fn marks(view: &GradebookView, texts: &PageTexts, learner: &ClassLearner) -> Markup {
    let grades = &view.grades;
    // A sign alone tells a reader on paper nothing. What an instructor changed is told by its points.
    let result = |mark: &Mark<'_>, is_pass: Option<bool>| match (mark.is_changed, is_pass) {
        (true, _) | (false, None) => String::new(),
        (false, Some(true)) => texts.get("pages-book-passed"),
        (false, Some(false)) => texts.get("pages-book-passed-not"),
    };
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-column-job")) }
                    th.figure scope="col" { (texts.get("pages-book-mark")) }
                    th scope="col" { (texts.get("pages-book-result")) }
                    th scope="col" { (texts.get("pages-book-comment")) }
                }
            }
            tbody {
                @for job in grades.book.jobs() {
                    @let mark = grades.mark(learner.seat, job);
                    @let counting = grades.book.counting(learner.seat, job);
                    tr {
                        th scope="row" { (texts.job(job)) }
                        td.figure { (mark.points.map_or_else(|| NOTHING.to_owned(), |points| texts.points(points))) }
                        td { (result(&mark, counting.map(|attempt| attempt.result.passed))) }
                        td { bdi { (mark.comment) } }
                    }
                }
            }
        }
    }
}

/// Skills in words.
fn skills_in_words(view: &GradebookView, texts: &PageTexts, learner: &ClassLearner) -> Markup {
    let skills = skills_of_learner(&view.grades.book, learner.seat);
    let words = |kept: f64| {
        texts.get(match kept {
            kept if kept >= PASS_SHARE => "pages-book-report-skill-good",
            kept if kept >= ON_THE_WAY => "pages-book-report-skill-some",
            _ => "pages-book-report-skill-weak",
        })
    };
    html! {
        table.book {
            tbody {
                @for (skill, summary) in &skills {
                    tr { th scope="row" { (texts.skill(*skill)) } td { (words(summary.kept)) } }
                }
            }
        }
    }
}

fn for_teacher(view: &GradebookView, texts: &PageTexts, learner: &ClassLearner) -> Markup {
    let counting = view.grades.book.all_counting(learner.seat);
    html! {
        (skills_table(view, learner.seat, texts))
        @for attempt in counting {
            section {
                h3 { (texts.job(&attempt.result.job)) }
                (scrolled(&texts.job(&attempt.result.job), &lost_table(attempt, texts)))
            }
        }
    }
}

fn for_parent(view: &GradebookView, texts: &PageTexts, learner: &ClassLearner) -> Markup {
    let counting = view.grades.book.all_counting(learner.seat);
    let unsafe_acts: usize = counting
        .map(|attempt| attempt.result.unsafe_acts().count())
        .sum();
    html! {
        (skills_in_words(view, texts, learner))
        p {
            @if unsafe_acts == 0 { (texts.get("pages-book-report-safe")) }
            @else { (texts.with("pages-book-report-unsafe", &[("count", unsafe_acts.to_string())])) }
        }
        h2 { (texts.get("pages-book-report-how")) }
        p { (texts.get("pages-book-report-how-parent")) }
    }
}

/// The report on the learner in this seat; none where there is none.
pub fn gradebook_report_page(
    texts: &PageTexts,
    view: &GradebookView,
    seat: u32,
    reader: ReportReader,
) -> Option<String> {
    let grades = &view.grades;
    let learner = grades.learner(seat)?;
    let name = learner_name(learner);
    let query = view.query();
    let heading = texts.with("pages-book-report-for", &[("name", name)]);
    let page = Page {
        title: format!("{heading} · {}", shown(&grades.title)),
        name: "gradebook report",
        script: None,
        data: None,
        query: &query,
    };
    let back = (
        "pages-book-back-learner",
        view.learner_address(texts, learner),
    );
    let mean = grades.mean(seat).map(|mean| {
        let points = [("points", texts.points(mean))];
        texts.with("pages-book-points", &points)
    });
    let body = html! {
        (book_head(&page, &heading, back, view, texts))
        main {
            div.on-screen {
                (view.banner(texts))
                p { (texts.get("pages-book-report-print")) }
            }
            section.panel {
                h2 { (texts.get(reader.title())) }
                @if let Some(mean) = mean { p.mean { (texts.get("pages-book-mean")) ": " (mean) } }
                @else { p { (texts.get("pages-book-mark-none")) } }
                (scrolled(&texts.get("pages-book-mark"), &marks(view, texts, learner)))
                h2 { (texts.get("pages-book-skills")) }
                @match reader {
                    ReportReader::Teacher => (for_teacher(view, texts, learner)),
                    ReportReader::Parent => (for_parent(view, texts, learner)),
                }
            }
        }
    };
    Some(page.around(texts, &body))
}
