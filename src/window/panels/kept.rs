//! Attempts that are kept: gone on with, looked at, carried in and out, deleted.

use super::{Face, kit};
use crate::attempts::{Attempts, Trouble};
use crate::port::{BenchPort, Kept, Shop};
use crate::state::{KeptRow, say};
use crate::tokens as t;
use bevy_egui::egui::{self, Align, Frame, Layout, Margin, RichText, ScrollArea, Ui};
use detent_content::Value;

/// A bench opened, or why not.
pub(super) type Opened = Result<Box<dyn BenchPort>, String>;

/// What is wrong, in words.
pub(super) fn trouble_text(face: &Face, trouble: &Trouble) -> String {
    let (key, detail) = trouble.key_and_detail();
    face.with(key, &[("detail", Value::from(detail))])
}

/// Jobs or attempts.
pub(super) fn shelf_choice_ui(ui: &mut Ui, face: &mut Face, shop: &dyn Shop) {
    if shop.attempts().is_none() {
        return;
    }
    let count = face.desk.kept.as_ref().map_or(0, Vec::len);
    let mine = face.with("kept-mine", &[("count", Value::from(count))]);
    let width = (ui.available_width() - 8.0) / 2.0;
    ui.horizontal(|ui| {
        for (shelf, text) in [(false, face.text("kept-jobs")), (true, mine)] {
            let on = face.desk.shelf == shelf;
            if kit::choice_sized(ui, on, text, [width, 34.0].into()).clicked() {
                face.desk.shelf = shelf;
                face.desk.deleting = None;
            }
        }
    });
    ui.add_space(2.0);
}

/// The names, to be read when they are shown.
pub(super) fn look_again(face: &mut Face, shop: &dyn Shop) {
    if face.desk.kept.is_none() {
        let names = shop.attempts().map(Attempts::names).unwrap_or_default();
        let rows = names.into_iter().map(|name| KeptRow { name, read: None });
        face.desk.kept = Some(rows.collect());
    }
}

/// What is in the row's attempt, read if it was not yet.
fn read<'a>(row: &'a mut KeptRow, shop: &dyn Shop) -> &'a Result<Kept, Trouble> {
    row.read.get_or_insert_with(|| shop.kept(&row.name))
}

fn title(face: &Face, name: &str, kept: Option<&Kept>) -> String {
    match kept.and_then(|kept| kept.title.as_ref()) {
        Some(title) => say(face.desk.language, title).to_owned(),
        None => name.to_owned(),
    }
}

/// How far it went.
fn progress(face: &Face, kept: &Kept) -> String {
    let minutes = Value::from((kept.time_s / 60.0).ceil());
    let actions = Value::from(kept.actions);
    if kept.finished {
        return face.text("kept-finished");
    }
    face.with(
        "kept-unfinished",
        &[("actions", actions), ("minutes", minutes)],
    )
}

fn resume(face: &Face, shop: &dyn Shop, name: &str) -> Opened {
    shop.resume(name)
        .map_err(|trouble| trouble_text(face, &trouble))
}

/// The job that was broken off last.
pub(super) fn last_ui(ui: &mut Ui, face: &mut Face, shop: &dyn Shop) -> Option<Opened> {
    let row = face.desk.kept.as_mut()?.first_mut()?;
    let kept = read(row, shop).clone().ok()?;
    if kept.finished {
        return None;
    }
    let name = row.name.clone();
    let mut opened = None;
    kit::card(ui, |ui| {
        let text = format!(
            "{}: {}",
            title(face, &name, Some(&kept)),
            progress(face, &kept)
        );
        kit::quiet(ui, text);
        if kit::wide(ui, face.text("kept-go-on-last")).clicked() {
            opened = Some(resume(face, shop, &name));
        }
    });
    opened
}

/// All attempts.
pub(super) fn kept_ui(ui: &mut Ui, face: &mut Face, shop: &dyn Shop) -> Option<Opened> {
    let attempts = shop.attempts()?;
    let mut opened = None;
    let rows = face.desk.kept.iter_mut().flatten();
    let list: Vec<(String, Result<Kept, Trouble>)> = rows
        .map(|row| (row.name.clone(), read(row, shop).clone()))
        .collect();
    ScrollArea::vertical()
        .id_salt("kept")
        .max_height(ui.available_height() - 130.0)
        .auto_shrink(false)
        .show(ui, |ui| {
            if list.is_empty() {
                ui.label(face.text("kept-none"));
            }
            for (name, kept) in &list {
                if let Some(bench) = one_ui(ui, face, shop, name, kept) {
                    opened = Some(bench);
                }
            }
        });
    match (attempts.porter(), attempts.place()) {
        (Some(porter), _) => {
            if kit::wide(ui, face.text("kept-load")).clicked() {
                porter.ask_for_file();
            }
            kit::quiet(ui, face.text("kept-in-browser"));
        }
        (None, Some(place)) => {
            kit::quiet(
                ui,
                face.with("kept-in-folder", &[("place", Value::from(place))]),
            );
        }
        (None, None) => {}
    }
    opened
}

fn one_ui(
    ui: &mut Ui,
    face: &mut Face,
    shop: &dyn Shop,
    name: &str,
    kept: &Result<Kept, Trouble>,
) -> Option<Opened> {
    let attempts = shop.attempts()?;
    let mut opened = None;
    kit::card(ui, |ui| {
        ui.label(RichText::new(title(face, name, kept.as_ref().ok())).size(18.0));
        match kept {
            Ok(kept) => kit::quiet(ui, progress(face, kept)),
            Err(trouble) => {
                let text = trouble_text(face, trouble);
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
                let button = ui.button(face.text(key));
                if button.on_hover_text(name).clicked() {
                    opened = Some(resume(face, shop, name));
                }
            }
            if attempts.porter().is_some() && ui.button(face.text("kept-save")).clicked() {
                save_copy(attempts, name);
            }
            if face.desk.deleting.as_deref() != Some(name) {
                if ui.button(face.text("kept-delete")).clicked() {
                    face.desk.deleting = Some(name.to_owned());
                }
            } else if ui
                .button(RichText::new(face.text("kept-delete-sure")).color(t::BAD))
                .clicked()
            {
                face.desk.deleting = None;
                match attempts.remove(name) {
                    Ok(()) => face.desk.kept = None,
                    Err(trouble) => opened = Some(Err(trouble_text(face, &trouble))),
                }
            }
        });
    });
    opened
}

/// A band that says that the attempt is not kept, and offers a copy.
pub(super) fn trouble_ui(ui: &mut Ui, face: &mut Face, shop: &dyn Shop) {
    let Some(attempts) = shop.attempts() else {
        return;
    };
    let Some(trouble) = attempts.trouble() else {
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
                if attempts.porter().is_some()
                    && let Some(name) = face.bench.kept_as()
                    && ui.button(face.text("kept-save")).clicked()
                {
                    save_copy(attempts, &name);
                }
                ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                    let text = RichText::new(trouble_text(face, &trouble)).color(t::CAUTION.1);
                    ui.add(egui::Label::new(text).wrap());
                });
            });
        });
}

/// A copy of the attempt at hand, where it can be carried out.
pub(super) fn save_ui(ui: &mut Ui, face: &Face, shop: &dyn Shop) {
    if let Some(attempts) = shop.attempts()
        && attempts.porter().is_some()
        && let Some(name) = face.bench.kept_as()
        && kit::wide(ui, face.text("kept-save")).clicked()
    {
        save_copy(attempts, &name);
    }
}

fn save_copy(attempts: &dyn Attempts, name: &str) {
    if let Some(porter) = attempts.porter()
        && let Ok(bytes) = attempts.read(name)
    {
        porter.save_copy(name, &bytes);
    }
}

/// Files that the person gave since the last frame.
pub(super) fn take_in(face: &mut Face, shop: &dyn Shop) -> Option<String> {
    let porter = shop.attempts()?.porter()?;
    let (name, bytes) = porter.arrived()?;
    match porter.take_in(&name, &bytes) {
        Ok(_) => {
            face.desk.kept = None;
            face.desk.shelf = true;
            Some(face.with("kept-taken", &[("detail", Value::from(name))]))
        }
        Err(trouble) => Some(trouble_text(face, &trouble)),
    }
}
