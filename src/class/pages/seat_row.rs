//! One seat as a row of the board's table. Where there is little room the style shows the row as a card, so that roles
//! and labels stand in the markup.

use super::page_texts::PageTexts;
use super::seat_state::{SeatState, shown_name};
use crate::board::{AttemptView, SeatView};
use detent_class_protocol::Verdict;
use maud::{Markup, html};

/// What stands where there is nothing to tell.
pub(super) const NOTHING: &str = "–";
/// So many finished attempts are told in a row; the rest stand in what "More" opens.
const MOST_RESULTS: usize = 3;

/// The keys of the columns, in order.
pub(super) const COLUMNS: [&str; 9] = [
    "pages-column-seat",
    "pages-column-name",
    "pages-column-state",
    "pages-column-job",
    "pages-column-deeds",
    "pages-column-machine-time",
    "pages-column-idle",
    "pages-column-attempts",
    "pages-column-more",
];

/// A verdict's class and sign.
pub(super) fn verdict_sign(verdict: &Verdict) -> (&'static str, &'static str) {
    match verdict {
        Verdict::Waiting => ("waiting", "…"),
        Verdict::Verified { .. } => ("verified", "✓"),
        Verdict::Mismatch | Verdict::NotAssigned => ("mismatch", "≠"),
        Verdict::Unverified(_) => ("unverified", "?"),
    }
}

/// Words with a class and a sign before them.
pub(super) fn tag(class: &str, sign: &str, words: &str) -> Markup {
    html! {
        li.tag.(class) {
            @if !sign.is_empty() { span.sign aria-hidden="true" { (sign) } }
            (words)
        }
    }
}

/// The states of a seat.
pub(super) fn state_tags(seat: &SeatView, states: &[SeatState], texts: &PageTexts) -> Markup {
    html! {
        @for state in states {
            (tag(state.name(), state.sign(), &state.told(seat, texts)))
        }
    }
}

fn result_tags(seat: &SeatView, texts: &PageTexts) -> Markup {
    let closed: Vec<&AttemptView> = (seat.attempts.iter()).filter(|a| a.closed).collect();
    html! {
        @for attempt in closed.iter().take(MOST_RESULTS) {
            @let (class, sign) = verdict_sign(&attempt.verdict);
            (tag(class, sign, &texts.come_to(attempt)))
        }
        @if closed.len() > MOST_RESULTS {
            (tag("rest", "", &format!("+{}", closed.len() - MOST_RESULTS)))
        }
    }
}

/// The row of a seat.
pub(super) fn seat_row(
    seat: &SeatView,
    states: &[SeatState],
    is_shown: bool,
    texts: &PageTexts,
) -> Markup {
    let name = shown_name(seat);
    let newest = seat.attempts.first();
    let told = |figure: Option<String>| figure.unwrap_or_else(|| NOTHING.to_owned());
    let named = ("name", name.clone());
    let more = texts.with(
        "pages-more-of",
        &[("seat", seat.seat.to_string()), named.clone()],
    );
    let download = texts.with("pages-download-newest", &[named]);
    let [
        number,
        _,
        state,
        job,
        deeds,
        machine_time,
        idle,
        attempts,
        _,
    ] = COLUMNS.map(|key| texts.get(key));
    let first = states.first().map_or("", |state| state.name());
    html! {
        tr role="row" data-seat=(seat.seat) data-state=(first) hidden[!is_shown] {
            td.number role="cell" data-label=(number) data-slot="number" { (seat.seat) }
            th.name role="rowheader" scope="row" { bdi data-slot="name" { (name) } }
            td.state role="cell" data-label=(state) {
                ul.tags data-slot="states" { (state_tags(seat, states, texts)) }
            }
            td.job role="cell" data-label=(job) data-slot="job" {
                (told(newest.map(|attempt| texts.work(attempt))))
            }
            td.figure role="cell" data-label=(deeds) data-slot="deeds" {
                (told(newest.map(|attempt| attempt.deeds.to_string())))
            }
            td.figure role="cell" data-label=(machine_time) data-slot="machine-time" {
                (told(newest.map(|attempt| texts.duration(attempt.machine_s))))
            }
            td.figure role="cell" data-label=(idle) data-slot="idle" {
                (told(seat.idle_s.map(|idle| texts.duration(idle))))
            }
            td.results role="cell" data-label=(attempts) {
                ul.tags data-slot="results" { (result_tags(seat, texts)) }
            }
            td.more role="cell" {
                button.more type="button" data-slot="more" aria-haspopup="dialog" aria-label=(more) disabled {
                    (texts.get("pages-more"))
                }
                a.button data-slot="download" aria-label=(download) download
                    href=[newest.map(|attempt| format!("/api/teacher/attempts/{}", attempt.attempt))]
                    hidden[newest.is_none()] { (texts.get("pages-download")) }
            }
        }
    }
}
