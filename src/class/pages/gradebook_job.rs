//! One job as an item: how it went, what went wrong in it, and for whom.

use super::frame::Page;
use super::gradebook_page::{book_head, difficulty, discrimination, figures_explained, scrolled};
use super::gradebook_view::{GradebookView, learner_name, mark_cell};
use super::page_texts::PageTexts;
use super::shown::shown;
use detent_gradebook::{ItemStatistics, LossCount};
use maud::{Markup, html};

fn loss_table(losses: &[LossCount], texts: &PageTexts) -> Markup {
    html! {
        @if losses.is_empty() { p { (texts.get("pages-book-unsafe-none")) } }
        @else {
            table.book {
                thead {
                    tr {
                        th scope="col" { (texts.get("pages-book-lost-reason")) }
                        th.figure scope="col" { (texts.get("pages-book-learners")) }
                        th.figure scope="col" { (texts.get("pages-book-lost-points")) }
                    }
                }
                tbody {
                    @for loss in losses {
                        tr {
                            th scope="row" { (texts.loss_kind(loss.kind)) }
                            td.figure { (loss.learners) }
                            td.figure { (texts.points(loss.points)) }
                        }
                    }
                }
            }
        }
    }
}

fn misread_table(job: &ItemStatistics, texts: &PageTexts) -> Markup {
    let codes = |codes: &[u8]| {
        let codes: Vec<String> = codes.iter().map(|code| format!("{code:02}")).collect();
        codes.join(", ")
    };
    html! {
        @if job.misread.is_empty() { p { (texts.get("pages-book-unsafe-none")) } }
        @else {
            table.book {
                thead {
                    tr {
                        th scope="col" { (texts.get("pages-book-item-misread")) }
                        th.figure scope="col" { (texts.get("pages-book-learners")) }
                        th scope="col" { (texts.get("pages-book-item-misread-shown")) }
                    }
                }
                tbody {
                    @for code in &job.misread {
                        tr {
                            th scope="row" { (codes(&[code.noted])) }
                            td.figure { (code.learners) }
                            td { (codes(&code.shown)) }
                        }
                    }
                }
            }
        }
    }
}

fn learners_table(view: &GradebookView, texts: &PageTexts, job: &ItemStatistics) -> Markup {
    let grades = &view.grades;
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-column-name")) }
                    th.figure scope="col" { (texts.get("pages-book-mark")) }
                    th scope="col" { (texts.get("pages-column-attempts")) }
                }
            }
            tbody {
                @for learner in &grades.learners {
                    @let counting = grades.book.counting(learner.seat, &job.job);
                    @let count = grades.book.attempts(learner.seat, &job.job).len().to_string();
                    tr {
                        th scope="row" {
                            a href=(view.learner_address(texts, learner)) { bdi { (learner_name(learner)) } }
                        }
                        td.figure {
                            (mark_cell(
                                &grades.mark(learner.seat, &job.job),
                                counting.map(|attempt| attempt.result.passed),
                                texts,
                            ))
                        }
                        td { (texts.with("pages-book-attempt-count", &[("count", count)])) }
                    }
                }
            }
        }
    }
}

/// The page of the job in this place; none where there is none.
pub fn gradebook_job_page(texts: &PageTexts, view: &GradebookView, place: usize) -> Option<String> {
    let job = view.statistics.get(place)?;
    let grades = &view.grades;
    let query = view.query();
    let heading = texts.job(&job.job);
    let page = Page {
        title: format!("{heading} · {}", shown(&grades.title)),
        name: "gradebook",
        script: None,
        data: None,
        query: &query,
    };
    let passed = [
        ("count", job.passed.to_string()),
        ("of", job.learners.to_string()),
    ];
    let body = html! {
        (book_head(&page, &heading, ("pages-book-back", view.address(texts, "")), view, texts))
        main {
            (view.banner(texts))
            section.panel {
                dl.figures {
                    div { dt { (texts.get("pages-book-learners-count")) } dd { (job.learners) } }
                    div { dt { (texts.get("pages-book-passed")) } dd { (texts.with("pages-book-passed-count", &passed)) } }
                    div { dt { (texts.get("pages-book-difficulty")) } dd { (difficulty(job, texts)) } }
                    div { dt { (texts.get("pages-book-discrimination")) } dd { (discrimination(job, texts)) } }
                }
                (figures_explained(texts))
            }
            div.tables {
                section aria-labelledby="losses-heading" {
                    h2 #losses-heading { (texts.get("pages-book-item-losses")) }
                    (scrolled(&texts.get("pages-book-item-losses"), &loss_table(&job.losses, texts)))
                }
                section aria-labelledby="unsafe-heading" {
                    h2 #unsafe-heading { (texts.get("pages-book-unsafe")) }
                    (scrolled(&texts.get("pages-book-unsafe"), &loss_table(&job.unsafe_acts, texts)))
                }
                section aria-labelledby="misread-heading" {
                    h2 #misread-heading { (texts.get("pages-book-item-misread")) }
                    (scrolled(&texts.get("pages-book-item-misread"), &misread_table(job, texts)))
                }
            }
            section.panel aria-labelledby="learners-heading" {
                h2 #learners-heading { (texts.get("pages-book-learners")) }
                (scrolled(&texts.get("pages-book-learners"), &learners_table(view, texts, job)))
            }
        }
    };
    Some(page.around(texts, &body))
}
