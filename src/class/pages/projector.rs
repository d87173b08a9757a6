//! What is shown to the whole room: how to join, or one attempt. No name stands here.

use super::board_page::{grouped_code, qr_picture};
use super::frame::Page;
use super::page_texts::PageTexts;
use super::seat_row::{tag, verdict_sign};
use super::seat_state::SeatState;
use super::shown::shown;
use crate::board::{AttemptView, BoardView};
use detent_class_protocol::AttemptId;
use maud::{Markup, html};

/// The page that is put on the projector: how to join, or, where one is chosen, how an attempt is going.
pub fn projector_page(texts: &PageTexts, board: &BoardView, attempt: Option<AttemptId>) -> String {
    let query = attempt.map_or_else(String::new, |attempt| format!("attempt={attempt}"));
    let page = Page {
        title: texts.get("pages-projector"),
        name: "projector",
        script: Some("projector.js"),
        data: Some(texts.for_script(None, attempt.map(|attempt| attempt.to_string()))),
        query: &query,
    };
    let shown_attempt = attempt.map(|wanted| {
        let mut attempts = board.seats.iter().flat_map(|seat| &seat.attempts);
        attempts.find(|attempt| attempt.attempt == wanted)
    });
    let body = html! {
        header.top {
            p.kind { bdi { (shown(&board.title)) } " · " (texts.kind(board.kind)) }
            nav {
                @if attempt.is_some() {
                    a href={ "?lang=" (texts.language().code()) } { (texts.get("pages-projector-join")) }
                }
                (page.other_languages(texts))
            }
        }
        main {
            p.banner #lost hidden {}
            @match shown_attempt {
                Some(attempt) => (one_attempt(texts, attempt)),
                None => (how_to_join(texts, board)),
            }
        }
        div.unseen #told role="status" aria-atomic="false" {}
    };
    page.around(texts, &body)
}

fn how_to_join(texts: &PageTexts, board: &BoardView) -> Markup {
    let joined = board.seats.iter().filter(|seat| seat.joined).count();
    html! {
        h1 { (texts.get("pages-projector-join")) }
        div.how {
            ol {
                li { p { (texts.get("pages-projector-step-open")) } p.address { (shown(&board.address)) } }
                li { p { (texts.get("pages-projector-step-code")) } p.code { (grouped_code(board)) } }
            }
            (qr_picture(board, texts))
        }
        p.joined #joined { (texts.with("pages-projector-joined", &[("count", joined.to_string())])) }
    }
}

fn one_attempt(texts: &PageTexts, attempt: Option<&AttemptView>) -> Markup {
    html! {
        p.kind { (texts.get("pages-projector-attempt")) }
        h1 #job { (attempt.map_or_else(String::new, |attempt| texts.work(attempt))) }
        p #gone hidden[attempt.is_some()] { (texts.get("pages-projector-gone")) }
        ul.tags #tags {
            @if let Some(attempt) = attempt {
                @if attempt.unsafe_now {
                    @let state = SeatState::Unsafe;
                    (tag(state.name(), state.sign(), &texts.get("pages-state-unsafe")))
                }
                @if attempt.closed {
                    @let (class, sign) = verdict_sign(&attempt.verdict);
                    (tag(class, sign, &texts.come_to(attempt)))
                } @else {
                    (tag("working", "", &texts.come_to(attempt)))
                }
            }
        }
        dl #figures hidden[attempt.is_none()] {
            div {
                dt { (texts.get("pages-column-deeds")) }
                dd #deeds { (attempt.map_or(0, |attempt| attempt.deeds)) }
            }
            div {
                dt { (texts.get("pages-column-machine-time")) }
                dd #machine-time { (texts.duration(attempt.map_or(0, |attempt| attempt.machine_s))) }
            }
        }
    }
}
