//! The library: which one is open, what is wrong with it, and another one.

use crate::attempts::{FileExchange, LibraryForm};
use crate::library::LibraryPlace;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, RichText, TextEdit, Ui, vec2};
use detent_content::{ContentError, Value};
use std::path::PathBuf;

/// So many mistakes are told at once.
const TOLD: usize = 4;

/// What is wrong with the files of the library, if anything is. What was read before that stays on offer.
pub fn mistakes_ui(ui: &mut Ui, context: &PanelContext) {
    let mistakes = &context.ui_state.library.mistakes;
    if mistakes.is_empty() {
        return;
    }
    let bad = |text: String| RichText::new(text).size(t::SMALL).color(t::BAD);
    ui.add(egui::Label::new(bad(context.text("library-mistakes"))).wrap());
    first_mistakes_ui(ui, context, (mistakes, TOLD), |ui, mistake| {
        let text = context.texts.content_error(mistake);
        ui.add(egui::Label::new(bad(text)).wrap());
        if let Some(line) = &mistake.source_line {
            let line = RichText::new(line.text.trim_end()).monospace();
            ui.add(egui::Label::new(line.size(t::SMALL).color(t::QUIET)).truncate());
        }
    });
}

/// The first of these mistakes, so many at the most, and how many more there are.
pub(super) fn first_mistakes_ui(
    ui: &mut Ui,
    context: &PanelContext,
    (mistakes, most): (&[ContentError], usize),
    mistake_ui: impl Fn(&mut Ui, &ContentError),
) {
    for mistake in mistakes.iter().take(most) {
        mistake_ui(ui, mistake);
    }
    let more = mistakes.len().saturating_sub(most);
    if more > 0 {
        let args = [("count", Value::from(more))];
        kit::quiet(ui, context.with("workshop-more-mistakes", &args));
    }
}

/// Which one is open, and another one.
pub(super) fn library_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    file_exchange: Option<&dyn FileExchange>,
) {
    if !context.ui_state.library.has_folders && file_exchange.is_none() {
        return;
    }
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("library-title"));
        let name = context.ui_state.library.place.name();
        match &name {
            None => kit::quiet(ui, context.text("library-none")),
            Some(name) => {
                let args = [("place", Value::from(name.as_str()))];
                ui.add(egui::Label::new(context.with("library-open", &args)).wrap());
            }
        }
        mistakes_ui(ui, context);
        let size = vec2(0.0, 30.0);
        let mut wanted = match file_exchange {
            Some(file_exchange) => {
                ask_ui(ui, context, file_exchange);
                None
            }
            None => folder_ui(ui, context),
        };
        let close = context.text("library-close");
        if name.is_some() && kit::go_sized(ui, close, size).clicked() {
            wanted = Some(LibraryPlace::BuiltIn);
        }
        if wanted.is_some() {
            context.ui_state.library.wanted = wanted;
        }
    });
}

/// A folder or a zip is opened by its name.
fn folder_ui(ui: &mut Ui, context: &mut PanelContext) -> Option<LibraryPlace> {
    let label = ui.add(egui::Label::new(context.text("library-about")).wrap());
    let edit = TextEdit::singleline(&mut context.ui_state.library.typed)
        .min_size(vec2(0.0, 30.0))
        .vertical_align(egui::Align::Center)
        .desired_width(ui.available_width().min(420.0));
    ui.add(edit).labelled_by(label.id);
    let typed = context.ui_state.library.typed.trim();
    let ready = !typed.is_empty() && !context.ui_state.library.reading;
    let open = context.text("library-open-do");
    let clicked = kit::go_sized_if(ui, ready, open, vec2(0.0, 30.0)).clicked();
    clicked.then(|| LibraryPlace::Folder(PathBuf::from(typed)))
}

/// The browser asks for a folder or a zip.
fn ask_ui(ui: &mut Ui, context: &PanelContext, file_exchange: &dyn FileExchange) {
    ui.add(egui::Label::new(context.text("library-about-page")).wrap());
    ui.horizontal_wrapped(|ui| {
        for (form, key) in [
            (LibraryForm::Folder, "library-ask-folder"),
            (LibraryForm::Zip, "library-ask-zip"),
        ] {
            if kit::go_sized(ui, context.text(key), vec2(0.0, 30.0)).clicked() {
                file_exchange.ask_for_library(form);
            }
        }
    });
}
