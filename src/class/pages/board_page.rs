//! The instructor's board.

use super::frame::{Page, confirm_dialog};
use super::page_texts::PageTexts;
use super::seat_choice::{SeatChoice, SeatOrder, SeatsShown};
use super::seat_row::{COLUMNS, seat_row};
use super::seat_state::SeatState;
use super::shown::shown;
use crate::board::{BoardView, LONGEST_NOTICE, SeatView};
use detent_class_protocol::Standing;
use maud::{Markup, html};

/// A code in two groups, as it is read out.
pub(super) fn grouped_code(board: &BoardView) -> Markup {
    let code = board.code.to_string();
    let (left, right) = code.split_at(code.len() / 2);
    html! { span { (left) } " " span { (right) } }
}

/// The picture that a phone or tablet reads the address from.
pub(super) fn qr_picture(board: &BoardView, texts: &PageTexts) -> Markup {
    let told = texts.with("pages-join-qr", &[("address", shown(&board.address))]);
    html! { img.qr src="/qr.svg" alt=(told) width="148" height="148"; }
}

fn summary(
    board: &BoardView,
    seats: &[(&SeatView, Vec<SeatState>, bool)],
    texts: &PageTexts,
) -> Markup {
    let joined = board.seats.iter().filter(|seat| seat.joined).count();
    let are = |state| {
        let count = seats
            .iter()
            .filter(|(_, states, _)| states.contains(&state));
        ("count", count.count().to_string())
    };
    let here = [
        ("count", joined.to_string()),
        ("of", board.seats.len().to_string()),
    ];
    html! {
        ul.summary {
            li data-slot="here" { (texts.with("pages-summary-here", &here)) }
            li data-slot="stuck" { (texts.with("pages-summary-stuck", &[are(SeatState::Stuck)])) }
            li data-slot="unsafe" { (texts.with("pages-summary-unsafe", &[are(SeatState::Unsafe)])) }
        }
    }
}

/// The buttons that open, pause and close the class. What it is in is pressed.
fn standing_buttons(standing: Standing, texts: &PageTexts) -> Markup {
    let pressed = match standing {
        Standing::NotOpen { .. } => "",
        Standing::Open { .. } => "Open",
        Standing::Paused => "Paused",
        Standing::Closed => "Closed",
    };
    let open = match standing {
        Standing::NotOpen { .. } => "pages-standing-open-now",
        Standing::Open { .. } | Standing::Paused | Standing::Closed => "pages-standing-set-open",
    };
    let buttons = [
        ("Open", texts.get(open)),
        ("Paused", texts.get("pages-standing-pause")),
        ("Closed", texts.get("pages-standing-close")),
    ];
    html! {
        div.buttons role="group" aria-label=(texts.get("pages-standing-set")) {
            @for (standing, words) in buttons {
                button type="button" data-standing=(standing) disabled
                    aria-pressed=(if standing == pressed { "true" } else { "false" }) { (words) }
            }
        }
    }
}

fn choice_form(choice: SeatChoice, texts: &PageTexts) -> Markup {
    let order = |order: SeatOrder| texts.get(&format!("pages-sort-{}", order.name()));
    let shown = |shown: SeatsShown| texts.get(&format!("pages-show-{}", shown.name()));
    html! {
        form #choice method="get" {
            input type="hidden" name="lang" value=(texts.language().code());
            label { (texts.get("pages-sort")) " "
                select name="sort" {
                    @for each in SeatOrder::ALL {
                        option value=(each.name()) selected[each == choice.order] { (order(each)) }
                    }
                }
            }
            label { (texts.get("pages-show")) " "
                select name="show" {
                    @for each in SeatsShown::ALL {
                        option value=(each.name()) selected[each == choice.shown] { (shown(each)) }
                    }
                }
            }
            noscript { button { (texts.get("pages-apply")) } }
        }
    }
}

/// A form with one text that goes to the server. The script opens it.
fn text_form(id: &str, heading: &str, label: &str, send: &str, rows: u32, most: usize) -> Markup {
    html! {
        form id=(id) {
            fieldset disabled {
                label for={ (id) "-text" } { (label) }
                textarea id={ (id) "-text" } name="text" rows=(rows) maxlength=(most) aria-describedby={ (id) "-note" } {}
                button aria-label={ (send) ": " (heading) } { (send) }
            }
            p.note id={ (id) "-note" } role="status" {}
        }
    }
}

/// What can be done for one seat; the script fills it in.
fn seat_dialog(texts: &PageTexts, has_bench: bool) -> Markup {
    html! {
        dialog #seat-dialog aria-labelledby="seat-heading" {
            header {
                h2 #seat-heading { span data-slot="seat" {} " " bdi data-slot="name" {} }
                button type="button" data-close { (texts.get("pages-seat-back")) }
            }
            div.columns {
                section aria-labelledby="attempts-heading" {
                    h3 #attempts-heading { (texts.get("pages-attempts")) }
                    p data-slot="no-attempts" { (texts.get("pages-attempts-none")) }
                    ul.attempts data-slot="attempts" {}
                }
                div {
                    section aria-labelledby="seat-message-heading" {
                        h3 #seat-message-heading { (texts.get("pages-message-seat")) }
                        (text_form(
                            "seat-message",
                            &texts.get("pages-message-seat"),
                            &texts.get("pages-message"),
                            &texts.get("pages-message-send"),
                            2,
                            LONGEST_NOTICE,
                        ))
                    }
                    section aria-labelledby="word-heading" {
                        h3 #word-heading { (texts.get("pages-word")) }
                        p { (texts.get("pages-word-explained")) }
                        button #word type="button" { (texts.get("pages-word-give")) }
                        p.word #word-note role="status" {}
                    }
                    section aria-labelledby="hand-in-heading" {
                        h3 #hand-in-heading { (texts.get("pages-hand-in")) }
                        form #hand-in {
                            label for="hand-in-file" { (texts.get("pages-hand-in-file")) }
                            input #hand-in-file type="file" name="file" accept=".attempt,.round" aria-describedby="hand-in-note";
                            button { (texts.get("pages-hand-in-send")) }
                            p.note #hand-in-note role="status" {}
                        }
                    }
                }
            }
        }
        template #attempt-template {
            li {
                p.job data-slot="job" {}
                ul.tags data-slot="tags" {}
                dl {
                    @for (key, slot) in [
                        ("pages-column-deeds", "deeds"),
                        ("pages-column-machine-time", "machine-time"),
                        ("pages-column-unsafe", "unsafe-acts"),
                    ] {
                        div { dt { (texts.get(key)) } dd data-slot=(slot) {} }
                    }
                }
                div.buttons {
                    @if has_bench {
                        a.button data-slot="watch" target="_blank" { (texts.get("pages-watch")) }
                    }
                    a.button data-slot="download" download { (texts.get("pages-download")) }
                    a.button data-slot="project" target="detent-projector" { (texts.get("pages-projector-this")) }
                }
            }
        }
    }
}

/// The instructor's board, as this choice shows it.
pub fn board_page(texts: &PageTexts, board: &BoardView, choice: SeatChoice) -> String {
    let query = format!("sort={}&show={}", choice.order.name(), choice.shown.name());
    let page = Page {
        title: format!("{} · {}", shown(&board.title), texts.get("pages-board")),
        name: "board",
        script: Some("board.js"),
        data: Some(texts.for_script(Some(board), None)),
        query: &query,
    };
    let seats = choice.seats(board);
    let nobody = SeatView {
        seat: 0,
        name: String::new(),
        joined: false,
        silent_s: None,
        idle_s: None,
        attempts: Vec::new(),
    };
    let trouble =
        |key: &str, what: Option<String>| what.map(|what| texts.with(key, &[("what", what)]));
    let undrawn = board.undrawn.as_ref().map(|job| texts.job(job));
    let undrawn = trouble("pages-undrawn", undrawn);
    let trouble = trouble("pages-trouble", board.trouble.clone());
    let language = texts.language().code();
    let body = html! {
        a.skip href="#seats" { (texts.get("pages-skip")) }
        header.top {
            div {
                p.kind { (texts.get("pages-board")) " · " (texts.kind(board.kind)) }
                h1 { bdi { (shown(&board.title)) } }
            }
            nav {
                a href={ "/teacher/gradebook?lang=" (language) } { (texts.get("pages-book-open")) }
                (page.other_languages(texts))
            }
        }
        main {
            noscript { p.banner { (texts.get("pages-no-script")) } }
            p.banner #lost hidden {}
            p.banner #signed-out hidden {
                (texts.get("pages-signed-out")) " "
                a href={ "/teacher?lang=" (language) } { (texts.get("pages-sign-in-again")) }
            }
            p.banner #trouble hidden[trouble.is_none()] { (trouble.unwrap_or_default()) }
            p.banner #undrawn hidden[undrawn.is_none()] { (undrawn.unwrap_or_default()) }
            div.overview {
                section.standing aria-labelledby="standing-heading" {
                    h2 #standing-heading { (texts.get("pages-standing")) }
                    p #standing { (texts.standing(board.standing)) }
                    (standing_buttons(board.standing, texts))
                    p.note #standing-note role="status" {}
                    (summary(board, &seats, texts))
                }
                section.join aria-labelledby="join-heading" {
                    div {
                        h2 #join-heading { (texts.get("pages-join-code")) }
                        p.code { (grouped_code(board)) }
                        p.address { (texts.get("pages-join-address")) ": " code { (shown(&board.address)) } }
                        a.button href={ "/teacher/projector?lang=" (language) } target="detent-projector" {
                            (texts.get("pages-projector-open"))
                        }
                    }
                    (qr_picture(board, texts))
                }
            }
            section #seats aria-labelledby="seats-heading" tabindex="-1" {
                div.heading {
                    h2 #seats-heading { (texts.get("pages-seats")) }
                    (choice_form(choice, texts))
                }
                table.seats role="table" aria-labelledby="seats-heading" {
                    thead role="rowgroup" {
                        tr role="row" {
                            @for key in COLUMNS { th role="columnheader" scope="col" { (texts.get(key)) } }
                        }
                    }
                    tbody role="rowgroup" {
                        @for (seat, states, is_shown) in &seats {
                            (seat_row(seat, states, *is_shown, texts))
                        }
                    }
                }
                p #nobody hidden[seats.iter().any(|(.., is_shown)| *is_shown)] { (texts.get("pages-list-none")) }
                template #seat-template { (seat_row(&nobody, &[], true, texts)) }
            }
            div.tools {
                section aria-labelledby="notice-heading" {
                    h2 #notice-heading { (texts.get("pages-message-all")) }
                    (text_form(
                        "notice",
                        &texts.get("pages-message-all"),
                        &texts.get("pages-message"),
                        &texts.get("pages-message-send"),
                        3,
                        LONGEST_NOTICE,
                    ))
                }
                section aria-labelledby="names-heading" {
                    h2 #names-heading { (texts.get("pages-names")) }
                    (text_form(
                        "names",
                        &texts.get("pages-names"),
                        &texts.get("pages-names-field"),
                        &texts.get("pages-names-add"),
                        3,
                        20_000,
                    ))
                }
            }
        }
        (confirm_dialog(texts, "close", [
            "pages-close-question", "pages-close-explained", "pages-close-keep", "pages-close-confirm",
        ]))
        (seat_dialog(texts, board.has_bench))
        div.unseen #told role="status" aria-atomic="false" {}
    };
    page.around(texts, &body)
}
