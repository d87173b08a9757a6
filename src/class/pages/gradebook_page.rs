//! The gradebook: the class by job, the jobs as items, and what can be taken along.

use super::frame::Page;
use super::gradebook_view::{GradebookView, NOTHING, learner_name, mark_cell};
use super::page_texts::PageTexts;
use super::shown::shown;
use detent_gradebook::{FEWEST_LEARNERS, ItemStatistics, LossCount, skills_of_learner};
use detent_training::practice::Skill;
use maud::{Markup, html};
use std::collections::BTreeSet;

/// The head of every page of the gradebook.
pub(super) fn book_head(
    page: &Page<'_>,
    heading: &str,
    back: (&str, String),
    view: &GradebookView,
    texts: &PageTexts,
) -> Markup {
    let title = shown(&view.grades.title);
    html! {
        header.top {
            div {
                p.kind { bdi { (title) } " · " (texts.kind(view.kind)) }
                h1 { bdi { (heading) } }
            }
            nav {
                a href=(back.1) { (texts.get(back.0)) }
                (page.other_languages(texts))
            }
        }
    }
}

/// A wide table that can be moved by keys.
pub(super) fn scrolled(label: &str, table: &Markup) -> Markup {
    html! { div.scroll role="group" aria-label=(label) tabindex="0" { (table) } }
}

fn marks_table(view: &GradebookView, texts: &PageTexts) -> Markup {
    let grades = &view.grades;
    let jobs = grades.book.jobs();
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-column-seat")) }
                    th scope="col" { (texts.get("pages-column-name")) }
                    th.figure scope="col" { (texts.get("pages-book-mean")) }
                    @for (place, job) in jobs.iter().enumerate() {
                        th.figure scope="col" { a href=(view.job_address(texts, place)) { (texts.job(job)) } }
                    }
                }
            }
            tbody {
                @for learner in &grades.learners {
                    tr {
                        td.figure { (learner.seat) }
                        th scope="row" { a href=(view.learner_address(texts, learner)) { bdi { (learner_name(learner)) } } }
                        td.figure {
                            (grades.mean(learner.seat).map_or_else(|| NOTHING.to_owned(), |mean| texts.points(mean)))
                        }
                        @for job in jobs {
                            @let counting = grades.book.counting(learner.seat, job);
                            td.figure {
                                (mark_cell(&grades.mark(learner.seat, job), counting.map(|a| a.result.passed), texts))
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Skills that any learner's jobs speak for, in their order, and each learner's share of the points in them.
fn skills_table(view: &GradebookView, texts: &PageTexts) -> Markup {
    let learners: Vec<_> = (view.grades.learners.iter())
        .map(|learner| (learner, skills_of_learner(&view.grades.book, learner.seat)))
        .collect();
    let skills: BTreeSet<Skill> = (learners.iter())
        .flat_map(|(_, skills)| skills.keys().copied())
        .collect();
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-column-name")) }
                    @for skill in &skills { th.figure scope="col" { (texts.skill(*skill)) } }
                }
            }
            tbody {
                @for (learner, of_learner) in &learners {
                    tr {
                        th scope="row" { a href=(view.learner_address(texts, learner)) { bdi { (learner_name(learner)) } } }
                        @for skill in &skills {
                            @let share = of_learner.get(skill).map(|summary| texts.percent(summary.kept));
                            td.figure { (share.unwrap_or_else(|| NOTHING.to_owned())) }
                        }
                    }
                }
            }
        }
    }
}

fn first_loss(losses: &[LossCount], texts: &PageTexts) -> String {
    losses.first().map_or_else(
        || NOTHING.to_owned(),
        |loss| format!("{} ({})", texts.loss_kind(loss.kind), loss.learners),
    )
}

/// The figure of a discrimination, or what stands where there is none.
pub(super) fn discrimination(job: &ItemStatistics, texts: &PageTexts) -> String {
    let told = job.discrimination.map(|found| texts.correlation(found));
    told.unwrap_or_else(|| NOTHING.to_owned())
}

/// The figure of a difficulty, or what stands where there is none.
pub(super) fn difficulty(job: &ItemStatistics, texts: &PageTexts) -> String {
    let told = job.difficulty.map(|share| texts.percent(share));
    told.unwrap_or_else(|| NOTHING.to_owned())
}

fn items_table(view: &GradebookView, texts: &PageTexts) -> Markup {
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-column-job")) }
                    th.figure scope="col" { (texts.get("pages-book-learners")) }
                    th.figure scope="col" { (texts.get("pages-book-passed")) }
                    th.figure scope="col" { (texts.get("pages-book-difficulty")) }
                    th.figure scope="col" { (texts.get("pages-book-discrimination")) }
                    th scope="col" { (texts.get("pages-book-item-losses")) }
                    th scope="col" { (texts.get("pages-book-unsafe")) }
                }
            }
            tbody {
                @for (place, job) in view.statistics.iter().enumerate() {
                    tr {
                        th scope="row" { a href=(view.job_address(texts, place)) { (texts.job(&job.job)) } }
                        td.figure { (job.learners) }
                        td.figure { (job.passed) }
                        td.figure { (difficulty(job, texts)) }
                        td.figure { (discrimination(job, texts)) }
                        td { (first_loss(&job.losses, texts)) }
                        td { (first_loss(&job.unsafe_acts, texts)) }
                    }
                }
            }
        }
    }
}

/// What the two figures mean.
pub(super) fn figures_explained(texts: &PageTexts) -> Markup {
    let count = [("count", FEWEST_LEARNERS.to_string())];
    html! {
        dl.explained {
            div { dt { (texts.get("pages-book-difficulty")) } dd { (texts.get("pages-book-difficulty-help")) } }
            div {
                dt { (texts.get("pages-book-discrimination")) }
                dd { (texts.with("pages-book-discrimination-help", &count)) }
            }
        }
    }
}

/// A picture of the gradebook with a link to keep it.
pub(super) fn picture(address: &str, told: &str, texts: &PageTexts) -> Markup {
    html! {
        figure.plot {
            img src=(address) alt=(told) loading="lazy";
            figcaption { a.button href=(address) download { (texts.get("pages-book-download-plot")) } }
        }
    }
}

fn downloads(view: &GradebookView, texts: &PageTexts) -> Markup {
    let rule = view.grades.book.rule();
    let files = [
        ("pages-book-download-csv", "marks.csv"),
        ("pages-book-download-csv-pseudonyms", "pseudonyms.csv"),
        ("pages-book-download-roster", "one-roster.zip"),
        ("pages-book-download-xapi", "statements.jsonl"),
    ];
    html! {
        section.panel aria-labelledby="download-heading" {
            h2 #download-heading { (texts.get("pages-book-download")) }
            p { (texts.get("pages-book-download-note")) }
            ul.buttons {
                @for (key, file) in files {
                    li {
                        a.button download href={ "/api/teacher/gradebook/" (file) "?rule=" (rule) } { (texts.get(key)) }
                    }
                }
            }
        }
    }
}

/// The class by job.
pub fn gradebook_page(texts: &PageTexts, view: &GradebookView) -> String {
    let query = view.query();
    let heading = texts.get("pages-book");
    let page = Page {
        title: format!("{} · {heading}", shown(&view.grades.title)),
        name: "gradebook",
        script: None,
        data: None,
        query: &query,
    };
    let board = format!("/teacher/board?lang={}", texts.language().code());
    let is_empty = view.grades.book.seats().next().is_none();
    let plot_told = texts.get("pages-book-plot-items");
    let body = html! {
        (book_head(&page, &heading, ("pages-seat-back", board), view, texts))
        main {
            (view.banner(texts))
            section.panel aria-labelledby="learners-heading" {
                div.heading {
                    h2 #learners-heading { (texts.get("pages-book-learners")) }
                    (view.rule_form(texts))
                }
                @if is_empty { p { (texts.get("pages-book-none")) } }
                (scrolled(&texts.get("pages-book-learners"), &marks_table(view, texts)))
            }
            @if !is_empty {
                section.panel aria-labelledby="skills-heading" {
                    h2 #skills-heading { (texts.get("pages-book-skills")) }
                    (scrolled(&texts.get("pages-book-skills"), &skills_table(view, texts)))
                }
            }
            section.panel aria-labelledby="items-heading" {
                h2 #items-heading { (texts.get("pages-book-items")) }
                (scrolled(&texts.get("pages-book-items"), &items_table(view, texts)))
                (figures_explained(texts))
                (picture(&view.address(texts, "/items.svg"), &plot_told, texts))
            }
            (downloads(view, texts))
        }
    };
    page.around(texts, &body)
}
