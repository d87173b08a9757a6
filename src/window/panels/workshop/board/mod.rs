//! The workshop for boards: the console as it is described, the pages of what is described, and what is wrong with it.

mod codes;
mod console;
mod gesture;
mod lamps;
mod panel;
mod service;
#[cfg(test)]
mod tests;
mod timeline;

use super::library::first_mistakes_ui;
use super::{BESIDE, LOW, keep_ui, name_ui, number_ui, plain_button, with_foot};
use crate::board_workshop::{BoardPage, BoardWorkshop};
use crate::panels::drill::entry::try_ui;
use crate::panels::{PanelContext, kit};
use crate::port::JobSource;
use crate::tokens as t;
use crate::workshop::KeptJob;
use bevy_egui::egui::emath::Numeric;
use bevy_egui::egui::{self, RichText, ScrollArea, TextEdit, Ui, vec2};
use detent_content::{ContentLibrary, OwnFile, Value};
use detent_simulation::controller::Board;
use std::ops::RangeInclusive;
use std::sync::Arc;

/// Most mistakes that are told at once.
const MISTAKES: usize = 6;
/// Longest name of a board or a program, characters.
const LONGEST: usize = 80;

/// Draws it; whether it is put away.
pub(super) fn board_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut BoardWorkshop,
    (jobs, library): (&dyn JobSource, &Arc<ContentLibrary>),
    kept: &mut Option<OwnFile>,
) -> bool {
    let mut board = open.board().clone();
    let (mut written, mut changed) = (None, false);
    // Console and page scroll each by itself where they stand side by side.
    let apart = ui.available_width() >= BESIDE && ui.available_height() >= LOW;
    let closed = with_foot(
        ui,
        !apart,
        &mut (context, &mut *open),
        |ui, (context, open)| {
            written = page_ui(ui, context, open, library, (&mut board, apart));
            changed = board != *open.board();
        },
        |ui, (context, open)| foot_ui(ui, context, open, (jobs, library), kept),
    );
    if let Some(text) = written {
        open.write(library, text);
    } else if changed {
        // What the foot did is about the whole text.
        open.change(library, &board);
    }
    closed
}

/// Console and page, side by side where there is room; the text, where somebody wrote in it.
fn page_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut BoardWorkshop,
    library: &Arc<ContentLibrary>,
    (board, apart): (&mut Board, bool),
) -> Option<String> {
    let mut written = None;
    if !apart {
        seen_ui(ui, context, open, board);
        said_ui(ui, context, open, library, board, &mut written);
        return written;
    }
    ui.spacing_mut().item_spacing.x = 12.0;
    ui.columns(2, |columns| {
        for column in columns.iter_mut() {
            column.spacing_mut().item_spacing.x = 8.0;
        }
        let scrolled = |ui: &mut Ui, id: &str, main: bool, contents: &mut dyn FnMut(&mut Ui)| {
            ScrollArea::vertical()
                .id_salt(id)
                .auto_shrink(false)
                .show(ui, |ui| {
                    // A column would set its text in full lines, edge to edge.
                    ui.vertical(|ui| contents(ui));
                    kit::scroll_by_keys(ui, main);
                });
        };
        scrolled(&mut columns[0], "board-seen", false, &mut |ui| {
            seen_ui(ui, context, open, board);
        });
        scrolled(&mut columns[1], "board-said", true, &mut |ui| {
            said_ui(ui, context, open, library, board, &mut written);
        });
    });
    written
}

/// The console, and what is wrong.
fn seen_ui(ui: &mut Ui, context: &mut PanelContext, open: &mut BoardWorkshop, board: &mut Board) {
    kit::card(ui, |ui| console::console_ui(ui, context, open, board));
    if open.mistakes().is_empty() {
        return;
    }
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-board-mistakes"));
        let told = (open.mistakes(), MISTAKES);
        first_mistakes_ui(ui, context, told, |ui, error| {
            let args = [
                ("line", Value::from(error.line)),
                ("field", error.field.as_str().into()),
                ("problem", context.texts.problem(&error.problem).into()),
            ];
            let told = context.with("workshop-board-mistake", &args);
            let told = RichText::new(told).size(t::SMALL).color(t::BAD);
            ui.add(egui::Label::new(told).wrap());
        });
    });
}

/// The page in front, or the try at the gesture.
fn said_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut BoardWorkshop,
    library: &Arc<ContentLibrary>,
    board: &mut Board,
    written: &mut Option<String>,
) {
    if open.hand.is_some() {
        hand_ui(ui, context, open, library);
        return;
    }
    let pages = BoardPage::ALL.map(|page| {
        let key = match page {
            BoardPage::Panel => "workshop-board-page-panel",
            BoardPage::Lamps => "workshop-board-page-lamps",
            BoardPage::Gesture => "workshop-board-page-gesture",
            BoardPage::Service => "workshop-board-page-service",
            BoardPage::Codes => "workshop-board-page-codes",
            BoardPage::Text => "workshop-board-page-text",
        };
        (page, context.text(key))
    });
    if let Some(page) = kit::choices(ui, open.page, pages) {
        open.page = page;
    }
    if open.page == BoardPage::Text {
        *written = text_ui(ui, context, open);
        return;
    }
    if !open.is_readable() {
        ui.label(RichText::new(context.text("workshop-board-unreadable")).color(t::BAD));
        ui.disable();
    }
    match open.page {
        BoardPage::Panel => panel::panel_ui(ui, context, board),
        BoardPage::Lamps => lamps::lamps_ui(ui, context, open, board),
        BoardPage::Gesture => gesture::gesture_ui(ui, context, open, library, board),
        BoardPage::Service => service::service_ui(ui, context, board),
        BoardPage::Codes => codes::codes_ui(ui, context, open, board),
        BoardPage::Text => {}
    }
}

/// The gesture is tried with the own hand.
fn hand_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut BoardWorkshop,
    library: &Arc<ContentLibrary>,
) {
    let Some(hand) = &mut open.hand else {
        return;
    };
    hand.judge();
    kit::card(ui, |ui| {
        let gesture = &hand.trial.task.gesture;
        for before in context.texts.before_gesture(gesture) {
            ui.label(before);
        }
        for (n, step) in gesture.steps.iter().enumerate() {
            ui.label(format!("{}.  {}", n + 1, context.texts.gesture_step(step)));
        }
        let told = hand.trial.marked.as_ref().map(|marked| match marked.right {
            true => ("workshop-board-hand-in", t::GOOD),
            false => ("workshop-board-hand-out", t::BAD),
        });
        if let Some((key, color)) = told {
            ui.label(RichText::new(context.text(key)).color(color));
        }
    });
    try_ui(ui, context, &mut hand.trial, &hand.tries);
    let mut again = false;
    let mut back = false;
    ui.horizontal_wrapped(|ui| {
        let go = |ui: &mut Ui, key: &str| {
            kit::go_sized(ui, context.text(key), egui::Vec2::ZERO).clicked()
        };
        again = go(ui, "workshop-board-hand-again");
        back = go(ui, "workshop-board-hand-back");
    });
    if back {
        open.hand = None;
    } else if again {
        open.try_by_hand(library);
    }
}

/// The whole text, to be written in as well; what it is now, where it was changed.
fn text_ui(ui: &mut Ui, context: &PanelContext, open: &BoardWorkshop) -> Option<String> {
    let mut text = open.text().to_owned();
    let label = ui.label(context.text("workshop-board-text"));
    let edit = TextEdit::multiline(&mut text)
        .code_editor()
        .lock_focus(false)
        .desired_width(ui.available_width())
        .id_salt("board-text");
    let edit = ui.add(edit).labelled_by(label.id);
    edit.changed().then_some(text)
}

/// The id and what can be done with the whole; whether it is put away.
fn foot_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut BoardWorkshop,
    (jobs, library): (&dyn JobSource, &Arc<ContentLibrary>),
    kept: &mut Option<OwnFile>,
) -> bool {
    kit::reserved(ui, 22.0, |ui| state_ui(ui, context, open));
    let mut closed = false;
    ui.horizontal_wrapped(|ui| {
        let mut id = open.board().id.clone();
        if name_ui(ui, context, &mut id, open.is_readable()) {
            let board = Board {
                id,
                ..open.board().clone()
            };
            open.change(library, &board);
        }
        let texts = context.texts;
        let button =
            |ui: &mut Ui, key: &str, enabled: bool| plain_button(ui, texts.get(key), enabled);
        if button(ui, "workshop-undo", open.can_undo()) {
            open.undo(library);
        }
        if button(ui, "workshop-redo", open.can_redo()) {
            open.redo(library);
        }
        let file = (open.file(), open.is_kept());
        let place = (jobs.own_boards(), jobs);
        if let Some(own_boards) = keep_ui(ui, texts, place, &file, open.text()) {
            *kept = open.keep(own_boards);
        }
        closed = button(ui, "workshop-leave", true);
    });
    closed
}

/// Whether something is wrong, or what became of the board.
fn state_ui(ui: &mut Ui, context: &PanelContext, open: &BoardWorkshop) {
    let (text, color) = match &open.kept.last {
        Some(KeptJob::Taken) => (context.text("workshop-board-name-taken"), t::BAD),
        Some(KeptJob::NoName) => (context.text("workshop-board-name-note"), t::BAD),
        Some(KeptJob::Unfinished) => (context.text("workshop-board-unfinished"), t::BAD),
        Some(KeptJob::Failed(error)) => (error.words(context.texts), t::BAD),
        Some(KeptJob::ChangedElsewhere) => (context.text("workshop-changed-elsewhere"), t::BAD),
        Some(KeptJob::In(place)) => {
            let place = [("place", Value::from(place.as_str()))];
            (context.with("workshop-kept", &place), t::GOOD)
        }
        None if open.mistakes().is_empty() => (context.text("workshop-sound"), t::QUIET),
        None => {
            let count = [("count", Value::from(open.mistakes().len()))];
            (context.with("workshop-board-wrong", &count), t::BAD)
        }
    };
    ui.add(egui::Label::new(RichText::new(text).size(t::SMALL).color(color)).wrap());
}

/// A whole number with its name.
fn count_ui<N: Numeric>(ui: &mut Ui, name: String, now: &mut N, range: RangeInclusive<N>) {
    let (least, most) = (range.start().to_f64(), range.end().to_f64());
    if let Some(changed) = number_ui(ui, name, now.to_f64(), least..=most, 1.0) {
        *now = N::from_f64(changed.round());
    }
}

/// A time in seconds with its name.
fn seconds_ui(ui: &mut Ui, name: String, ms: &mut u32, longest_s: f64) {
    if let Some(changed) = number_ui(ui, name, f64::from(*ms) / 1000.0, 0.0..=longest_s, 0.05) {
        *ms = (changed * 1000.0).round() as u32;
    }
}

/// A value that need not be there: a box to tick, and what is in it.
fn option_ui<T>(
    ui: &mut Ui,
    name: String,
    now: &mut Option<T>,
    usual: impl FnOnce() -> T,
    inside: impl FnOnce(&mut Ui, &mut T),
) {
    let mut on = now.is_some();
    if kit::checkbox(ui, &mut on, name).changed() {
        *now = on.then(usual);
    }
    if let Some(value) = now {
        ui.indent("option", |ui| inside(ui, value));
    }
}

/// A list that opens; the other one that was chosen, if one was.
fn list_ui<T: Copy + PartialEq>(
    ui: &mut Ui,
    id: &str,
    name: &str,
    now: T,
    all: &[(T, String)],
) -> Option<T> {
    let rows: Vec<String> = all.iter().map(|(_, told)| told.clone()).collect();
    let chosen = all.iter().position(|(value, _)| *value == now);
    let told = chosen.map_or("", |chosen| rows[chosen].as_str());
    ui.label(name);
    let width = ui.available_width().min(300.0);
    let (list, taken) = kit::drop_down(ui, id, width, told, (&rows, chosen));
    list.widget_info(|| {
        let name = format!("{name}: {told}");
        egui::WidgetInfo::labeled(egui::WidgetType::ComboBox, true, name)
    });
    let taken = taken.and_then(|taken| all.get(taken));
    taken.map(|(value, _)| *value).filter(|taken| *taken != now)
}

/// A line of text with its name.
fn line_ui(ui: &mut Ui, name: String, now: &mut String, id: &str) {
    let label = ui.label(name);
    let edit = TextEdit::singleline(now)
        .char_limit(LONGEST)
        .min_size(vec2(0.0, 28.0))
        .desired_width(ui.available_width())
        .vertical_align(egui::Align::Center)
        .id_salt(id);
    ui.add(edit).labelled_by(label.id);
}
