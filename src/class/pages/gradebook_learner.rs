//! One learner: marks, attempts with every lost point, skills, what instructors changed, and what can be done about it.

use super::frame::{Page, confirm_dialog};
use super::gradebook_page::{book_head, picture, scrolled};
use super::gradebook_view::{GradebookView, NOTHING, learner_name, mark_cell};
use super::page_texts::PageTexts;
use super::shown::shown;
use crate::store::{MarkChange, MarkPart};
use detent_gradebook::{ClassLearner, GradedAttempt, Mark, skills_of_learner};
use maud::{Markup, html};

/// Longest comment or reason, characters.
pub const LONGEST_COMMENT: usize = 1_000;

/// What a learner's job was worth and why.
pub(super) fn lost_table(attempt: &GradedAttempt, texts: &PageTexts) -> Markup {
    html! {
        @if attempt.result.lost().next().is_none() { p { (texts.get("score-none-lost")) } }
        @else {
            table.book.lost {
                thead {
                    tr {
                        th.figure scope="col" { (texts.get("pages-book-lost-when")) }
                        th scope="col" { (texts.get("pages-book-lost-side")) }
                        th.figure scope="col" { (texts.get("pages-book-lost-points")) }
                        th scope="col" { (texts.get("pages-book-lost-reason")) }
                    }
                }
                tbody {
                    @for (side, lost) in attempt.result.lost() {
                        tr {
                            td.figure { (format!("{:.0}", attempt.result.minutes_to(lost).floor())) }
                            td { (texts.side(side)) }
                            td.figure { (texts.points(lost.points)) }
                            td { (texts.loss(&lost.loss)) }
                        }
                    }
                }
            }
        }
    }
}

/// What an attempt came to, in figures.
fn attempt_figures(attempt: &GradedAttempt, texts: &PageTexts) -> Markup {
    let result = &attempt.result;
    let named = result.named.as_ref().map(|named| {
        let part = named.part.as_deref().unwrap_or(NOTHING);
        format!("{} · {part}", texts.causes(&named.causes))
    });
    let seconds = (60.0 * result.work_min) as u32;
    let points = [("points", texts.points(100.0 * result.share()))];
    html! {
        dl.figures {
            div { dt { (texts.get("pages-book-lost-points")) } dd { (texts.with("pages-book-points", &points)) } }
            div { dt { (texts.get("pages-book-time")) } dd { (texts.duration(seconds)) } }
            div { dt { (texts.get("pages-book-cost")) } dd { (texts.money(result.bill)) } }
            div {
                dt { (texts.get("pages-book-cause")) }
                dd { (named.unwrap_or_else(|| texts.get("pages-book-cause-none"))) }
            }
            @for side in result.score.dimensions.iter().filter(|side| side.of > 0.0) {
                div {
                    dt { (texts.side(side.dimension)) }
                    dd { (texts.points(side.kept)) " / " (texts.points(side.of)) }
                }
            }
        }
    }
}

fn mark_form(place: usize, seat: u32, mark: &Mark<'_>, texts: &PageTexts) -> Markup {
    let id = |name: &str| format!("{name}-{place}");
    let changed = mark.points.filter(|_| mark.is_changed);
    html! {
        form.mark data-seat=(seat) data-place=(place) data-version=(mark.version) {
            fieldset disabled {
                label for=(id("points")) { (texts.get("pages-book-mark")) }
                input id=(id("points")) name="points" inputmode="decimal" autocomplete="off" size="6"
                    value=(changed.map(|points| texts.points(points)).unwrap_or_default())
                    aria-describedby={ (id("points-help")) " " (id("note")) };
                p.help id=(id("points-help")) {
                    (texts.get("pages-book-mark-help")) " "
                    @if let Some(points) = mark.computed {
                        (texts.with("pages-book-mark-computed", &[("points", texts.points(points))]))
                    }
                }
                label for=(id("reason")) { (texts.get("pages-book-mark-reason")) }
                input id=(id("reason")) name="reason" autocomplete="off" maxlength=(LONGEST_COMMENT)
                    aria-describedby=(id("note"));
                label for=(id("comment")) { (texts.get("pages-book-comment")) }
                textarea id=(id("comment")) name="comment" rows="2" maxlength=(LONGEST_COMMENT)
                    aria-describedby=(id("comment-help")) { (mark.comment) }
                p.help id=(id("comment-help")) { (texts.get("pages-book-comment-help")) }
                button { (texts.get("pages-book-mark-save")) }
            }
            p.note id=(id("note")) role="status" {}
        }
    }
}

fn job_section(
    view: &GradebookView,
    texts: &PageTexts,
    learner: &ClassLearner,
    (place, job): (usize, &str),
) -> Markup {
    let grades = &view.grades;
    let counting = grades.book.counting(learner.seat, job);
    let mark = grades.mark(learner.seat, job);
    html! {
        section.panel aria-labelledby={ "job-" (place) } {
            div.heading {
                h2 id={ "job-" (place) } { (texts.job(job)) }
                p.mark { (mark_cell(&mark, counting.map(|attempt| attempt.result.passed), texts)) }
            }
            @if mark.points.is_none() { p { (texts.get("pages-book-mark-none")) } }
            @for attempt in grades.book.attempts(learner.seat, job) {
                details open[counting == Some(attempt)] {
                    summary {
                        (texts.utc(attempt.finished_ms)) " · " (texts.points(100.0 * attempt.result.share()))
                        @if attempt.result.is_second_visit { " · " (texts.get("pages-book-second-visit")) }
                    }
                    (attempt_figures(attempt, texts))
                    (scrolled(&texts.job(job), &lost_table(attempt, texts)))
                }
            }
            details {
                summary { (texts.get("pages-book-mark-and-comment")) }
                (mark_form(place, learner.seat, &mark, texts))
            }
        }
    }
}

/// The skills that a learner's jobs speak for.
pub(super) fn skills_table(view: &GradebookView, seat: u32, texts: &PageTexts) -> Markup {
    let skills = skills_of_learner(&view.grades.book, seat);
    html! {
        table.book {
            thead {
                tr {
                    th scope="col" { (texts.get("pages-book-skill")) }
                    th.figure scope="col" { (texts.get("pages-book-skill-jobs")) }
                    th.figure scope="col" { (texts.get("pages-book-skill-kept")) }
                }
            }
            tbody {
                @for (skill, summary) in &skills {
                    tr {
                        th scope="row" { (texts.skill(*skill)) }
                        td.figure { (summary.right) " / " (summary.jobs) }
                        td.figure { (texts.percent(summary.kept)) }
                    }
                }
            }
        }
    }
}

fn changes_table(changes: &[&MarkChange], texts: &PageTexts) -> Markup {
    let cell = |text: &str| {
        if text.is_empty() {
            NOTHING.to_owned()
        } else {
            text.to_owned()
        }
    };
    let value = |change: &MarkChange, text: &str| match (change.what, text.parse::<f64>()) {
        (MarkPart::Mark, Ok(points)) => texts.points(points),
        (MarkPart::Mark, Err(_)) | (MarkPart::Comment, _) => cell(text),
    };
    let what = |change: &MarkChange| match change.what {
        MarkPart::Mark => texts.get("pages-book-mark"),
        MarkPart::Comment => texts.get("pages-book-comment"),
    };
    html! {
        @if changes.is_empty() { p { (texts.get("pages-book-changes-none")) } }
        @else {
            table.book {
                thead {
                    tr {
                        @for key in ["when", "who", "job", "what", "from", "to", "reason"] {
                            th scope="col" {
                                @if key == "job" { (texts.get("pages-column-job")) }
                                @else { (texts.get(&format!("pages-book-changes-{key}"))) }
                            }
                        }
                    }
                }
                tbody {
                    @for change in changes {
                        tr {
                            td { (texts.utc(change.at_ms)) }
                            td {
                                @if change.who == "instructor" { (texts.get("pages-book-changes-who-instructor")) }
                                @else { (change.who) }
                            }
                            td { (texts.job(&change.job)) }
                            td { (what(change)) }
                            td { bdi { (value(change, &change.from)) } }
                            td { bdi { (value(change, &change.to)) } }
                            td { bdi { (cell(&change.reason)) } }
                        }
                    }
                }
            }
        }
    }
}

/// The page of the learner in this seat; none where there is none.
pub fn gradebook_learner_page(
    texts: &PageTexts,
    view: &GradebookView,
    seat: u32,
) -> Option<String> {
    let grades = &view.grades;
    let learner = grades.learner(seat)?;
    let name = learner_name(learner);
    let query = view.query();
    let page = Page {
        title: format!("{name} · {}", shown(&grades.title)),
        name: "gradebook",
        script: Some("gradebook.js"),
        data: Some(texts.for_script(None, None)),
        query: &query,
    };
    let path = |rest: &str| view.address(texts, &format!("/learners/{seat}{rest}"));
    let changes: Vec<&MarkChange> = (view.changes.iter().rev())
        .filter(|change| change.seat == seat)
        .collect();
    let plot_told = format!("{}: {name}", texts.get("pages-book-plot-skills"));
    let body = html! {
        (book_head(&page, &name, ("pages-book-back", view.address(texts, "")), view, texts))
        main {
            noscript { p.banner { (texts.get("pages-no-script")) } }
            (view.banner(texts))
            section.panel {
                ul.buttons {
                    li { a.button href=(path("/report/teacher")) { (texts.get("pages-book-report-teacher")) } }
                    li { a.button href=(path("/report/parent")) { (texts.get("pages-book-report-parent")) } }
                    li {
                        a.button download href={ "/api/teacher/gradebook/learners/" (seat) "/all.json" } {
                            (texts.get("pages-book-export-learner"))
                        }
                    }
                    li { button.grave #erase type="button" data-seat=(seat) disabled { (texts.get("pages-book-erase")) } }
                }
                p.note #erase-note role="status" {}
                (view.rule_form(texts))
            }
            section.panel aria-labelledby="skills-heading" {
                h2 #skills-heading { (texts.get("pages-book-skills")) }
                (skills_table(view, seat, texts))
                (picture(&path("/skills.svg"), &plot_told, texts))
            }
            @for (place, job) in grades.book.jobs().iter().enumerate() {
                (job_section(view, texts, learner, (place, job)))
            }
            section.panel aria-labelledby="changes-heading" {
                h2 #changes-heading { (texts.get("pages-book-changes")) }
                (scrolled(&texts.get("pages-book-changes"), &changes_table(&changes, texts)))
            }
        }
        (confirm_dialog(texts, "erase", [
            "pages-book-erase", "pages-book-erase-explained", "pages-book-erase-keep", "pages-book-erase-confirm",
        ]))
        div.unseen #told role="status" aria-atomic="false" {}
    };
    Some(page.around(texts, &body))
}
