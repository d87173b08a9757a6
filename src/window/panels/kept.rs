//! Attempts that are kept: gone on with, looked at, carried in and out, deleted.

use super::{PanelContext, kit};
use crate::attempts::{Attempts, StorageError};
use crate::port::{JobSource, Kept, RecordedAttempt};
use crate::state::{KeptRow, say};
use crate::tokens as t;
use bevy_egui::egui::{self, Align, Frame, Layout, Margin, RichText, ScrollArea, Ui, Vec2};
use detent_content::Value;

/// Jobs or attempts.
pub(super) fn shelf_choice_ui(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    if jobs.attempts().is_none() {
        return;
    }
    let count = context.ui_state.kept.as_ref().map_or(0, Vec::len);
    let mine = context.with("kept-mine", &[("count", Value::from(count))]);
    let width = (ui.available_width() - 8.0) / 2.0;
    ui.horizontal(|ui| {
        for (content_library, text) in [(false, context.text("kept-jobs")), (true, mine)] {
            let on = context.ui_state.content_library == content_library;
            if kit::tab(ui, on, text, [width, 34.0].into()).clicked() {
                context.ui_state.content_library = content_library;
                context.ui_state.deleting = None;
            }
        }
    });
    ui.add_space(2.0);
}

/// The names, to be read when they are shown.
pub(super) fn look_again(context: &mut PanelContext, jobs: &dyn JobSource) {
    if context.ui_state.kept.is_none() {
        let names = jobs.attempts().map(Attempts::names).unwrap_or_default();
        let rows = names.into_iter().map(|name| KeptRow { name, read: None });
        context.ui_state.kept = Some(rows.collect());
    }
}

/// What is in the row's attempt, read if it was not yet.
fn read<'a>(row: &'a mut KeptRow, jobs: &dyn JobSource) -> &'a Result<Kept, StorageError> {
    row.read.get_or_insert_with(|| jobs.kept(&row.name))
}

fn title(context: &PanelContext, name: &str, kept: Option<&Kept>) -> String {
    match kept.and_then(|kept| kept.title.as_ref()) {
        Some(title) => say(context.ui_state.language, title).to_owned(),
        None => name.to_owned(),
    }
}

/// How far it went.
fn progress(context: &PanelContext, kept: &Kept) -> String {
    let minutes = Value::from((kept.time_s / 60.0).ceil());
    let actions = Value::from(kept.actions);
    let progress = if kept.finished {
        context.text("kept-finished")
    } else {
        context.with(
            "kept-unfinished",
            &[("actions", actions), ("minutes", minutes)],
        )
    };
    if kept.second_visit {
        let second = context.text("kept-second-visit");
        return format!("{second}, {progress}");
    }
    progress
}

/// The job that was broken off last.
pub(super) fn last_ui(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    let rows = context.ui_state.kept.as_deref_mut().unwrap_or_default();
    let Some(row) = rows.first_mut() else {
        return;
    };
    let kept = match read(row, jobs) {
        Ok(kept) if !kept.finished => kept.clone(),
        Ok(_) | Err(_) => return,
    };
    let name = row.name.clone();
    kit::card(ui, |ui| {
        let text = format!(
            "{}: {}",
            title(context, &name, Some(&kept)),
            progress(context, &kept)
        );
        kit::quiet(ui, text);
        if kit::go(ui, context.text("kept-go-on-last")).clicked() {
            context.ui_state.open(jobs.resume(&name));
        }
    });
}

/// All attempts.
pub(super) fn kept_ui(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    let Some(attempts) = jobs.attempts() else {
        return;
    };
    let rows = context.ui_state.kept.iter_mut().flatten();
    let list: Vec<(String, Result<Kept, StorageError>)> = rows
        .map(|row| (row.name.clone(), read(row, jobs).clone()))
        .collect();
    ScrollArea::vertical()
        .id_salt("kept")
        .max_height((ui.available_height() - 130.0).max(200.0))
        .auto_shrink(false)
        .show(ui, |ui| {
            if list.is_empty() {
                ui.label(context.text("kept-none"));
            }
            for (name, kept) in &list {
                one_ui(ui, context, (jobs, attempts), name, kept);
            }
        });
    match (attempts.file_exchange(), attempts.place()) {
        (Some(file_exchange), _) => {
            if kit::wide(ui, context.text("kept-load")).clicked() {
                file_exchange.ask_for_file();
            }
            kit::quiet(ui, context.text("kept-in-browser"));
        }
        (None, Some(place)) => {
            kit::quiet(
                ui,
                context.with("kept-in-folder", &[("place", Value::from(place))]),
            );
        }
        (None, None) => {}
    }
}

fn one_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    (jobs, attempts): (&dyn JobSource, &dyn Attempts),
    name: &str,
    kept: &Result<Kept, StorageError>,
) {
    kit::card(ui, |ui| {
        ui.label(RichText::new(title(context, name, kept.as_ref().ok())).size(18.0));
        match kept {
            Ok(kept) => kit::quiet(ui, progress(context, kept)),
            Err(storage_error) => {
                let text = storage_error.words(context.texts);
                ui.label(RichText::new(text).size(t::SMALL).color(t::BAD));
            }
        }
        ui.horizontal_wrapped(|ui| {
            if let Ok(kept) = kept {
                let key = if kept.finished {
                    "kept-look"
                } else {
                    "kept-go-on"
                };
                let button = kit::go_sized(ui, context.text(key), Vec2::ZERO);
                if button.on_hover_text(name).clicked() {
                    context.ui_state.open(jobs.resume(name));
                }
                let again = kit::go_sized(ui, context.text("film-again"), Vec2::ZERO);
                if again.clicked() {
                    let record = RecordedAttempt::kept(attempts, name);
                    context.ui_state.open(jobs.watch(record));
                }
            }
            if attempts.file_exchange().is_some() && ui.button(context.text("kept-save")).clicked()
            {
                save_copy(attempts, name);
            }
            if context.ui_state.deleting.as_deref() != Some(name) {
                if ui.button(context.text("kept-delete")).clicked() {
                    context.ui_state.deleting = Some(name.to_owned());
                }
            } else if ui
                .button(RichText::new(context.text("kept-delete-sure")).color(t::BAD))
                .clicked()
            {
                context.ui_state.deleting = None;
                match attempts.remove(name) {
                    Ok(()) => context.ui_state.kept = None,
                    Err(storage_error) => {
                        let text = storage_error.words(context.texts);
                        context.ui_state.message = Some((text, 0.0));
                    }
                }
            }
        });
    });
}

/// A band that says that the attempt is not kept, and offers a copy.
pub(super) fn trouble_ui(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    let Some(attempts) = jobs.attempts() else {
        return;
    };
    let Some(storage_error) = attempts.storage_error() else {
        return;
    };
    let frame = Frame::new()
        .fill(t::CAUTION.0)
        .inner_margin(Margin::symmetric(12, 4));
    egui::Panel::top("trouble")
        .frame(frame)
        .show_separator_line(false)
        .show(ui, |ui| {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if attempts.file_exchange().is_some()
                    && let Some(name) = context.bench.kept_as()
                    && ui.button(context.text("kept-save")).clicked()
                {
                    save_copy(attempts, &name);
                }
                ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                    let text =
                        RichText::new(storage_error.words(context.texts)).color(t::CAUTION.1);
                    ui.add(egui::Label::new(text).wrap());
                });
            });
        });
}

/// A copy of the attempt at hand, where it can be carried out.
pub(super) fn save_ui(ui: &mut Ui, context: &PanelContext, jobs: &dyn JobSource) {
    if let Some(attempts) = jobs.attempts()
        && attempts.file_exchange().is_some()
        && let Some(name) = context.bench.kept_as()
        && kit::wide(ui, context.text("kept-save")).clicked()
    {
        save_copy(attempts, &name);
    }
}

fn save_copy(attempts: &dyn Attempts, name: &str) {
    if let Some(file_exchange) = attempts.file_exchange()
        && let Ok(bytes) = attempts.read(name)
    {
        file_exchange.save_copy(name, &bytes);
    }
}

/// Files that the person gave since the last frame.
pub(super) fn take_in(context: &mut PanelContext, jobs: &dyn JobSource) -> Option<String> {
    let file_exchange = jobs.attempts()?.file_exchange()?;
    let (name, bytes) = file_exchange.arrived()?;
    match file_exchange.take_in(&name, &bytes) {
        Ok(_) => {
            context.ui_state.kept = None;
            context.ui_state.content_library = true;
            Some(context.with("kept-taken", &[("detail", Value::from(name))]))
        }
        Err(storage_error) => Some(storage_error.words(context.texts)),
    }
}
