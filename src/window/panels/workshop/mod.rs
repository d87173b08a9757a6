//! The workshop: choose what to write, write it, try it, keep it.

mod fault;
pub mod library;
mod limits;
mod machine;
mod sentences;
#[cfg(test)]
mod tests;

use super::{PanelContext, kit};
use crate::attempts::Attempts;
use crate::port::JobSource;
use crate::state::{Guidance, Screen, say};
use crate::tokens as t;
use crate::workshop::{KeptJob, Workshop, WorkshopRes};
use bevy_egui::egui::{
    self, CornerRadius, DragValue, RichText, ScrollArea, TextEdit, Ui, UiBuilder, Vec2, vec2,
};
use detent_content::{ContentError, ContentLibrary, ScenarioChange, ScenarioDraft, Value};
use std::ops::RangeInclusive;

/// Least width of two columns side by side, points.
const BESIDE: f32 = 860.0;

/// Height of the foot before it was laid out for the first time, points.
const FOOT: f32 = 94.0;

/// Least height of a window whose foot stays where it is, points.
const LOW: f32 = 500.0;

/// Draws it; where to go from here, if anywhere.
pub(super) fn workshop_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    workshop: &mut WorkshopRes,
    jobs: &dyn JobSource,
    library: &ContentLibrary,
) -> Option<Screen> {
    let all = ui.max_rect();
    ui.painter().rect_filled(all, CornerRadius::ZERO, t::PANEL);
    let mut place = all.shrink2(vec2(16.0, 10.0));
    place.set_width(place.width().min(1180.0));
    let place = place.translate(vec2((all.width() - 32.0 - place.width()) / 2.0, 0.0));
    let mut to = None;
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        ui.horizontal(|ui| {
            let title = RichText::new(context.text("workshop-title"));
            ui.label(title.size(28.0).color(t::AMBER));
            kit::at_right_end(ui, |ui| {
                if kit::go_sized(ui, context.text("practice-back"), Vec2::ZERO).clicked() {
                    to = Some(Screen::Start);
                }
            });
        });
        if context.ui_state.opening.is_some() {
            kit::quiet(ui, context.fixed("start-opening"));
            ui.disable();
        }
        if let Some((message, _)) = &context.ui_state.message {
            ui.label(RichText::new(message).color(t::BAD));
        }
        let Some(mut open) = workshop.open.take() else {
            chooser_ui(ui, context, workshop, jobs, library);
            return;
        };
        library::mistakes_ui(ui, context);
        open.watch(ui.input(|i| i.time));
        let closed = editor_ui(ui, context, &mut open, (jobs, library), &mut workshop.kept);
        workshop.open = (!closed).then_some(open);
    });
    to
}

/// What is to be written: a new job, a copy, or one of one's own once more.
fn chooser_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    workshop: &mut WorkshopRes,
    jobs: &dyn JobSource,
    library: &ContentLibrary,
) {
    let mut begun: Option<Result<Workshop, ContentError>> = None;
    ScrollArea::vertical()
        .id_salt("workshop-chooser")
        .auto_shrink(false)
        .show(ui, |ui| {
            kit::card(ui, |ui| {
                ui.label(context.text("workshop-about"));
                ui.add_space(6.0);
                if kit::main_button(ui, context.text("workshop-new"), true).clicked() {
                    let draft = ScenarioDraft::new("own-job", context.ui_state.language);
                    begun = Some(Workshop::begin(draft, library));
                }
            });
            kit::card(ui, |ui| {
                kit::heading(ui, context.text("workshop-copy"));
                let language = context.ui_state.language;
                let offers = jobs.offers().iter();
                let titles: Vec<String> = offers
                    .map(|offer| say(language, &offer.title).to_owned())
                    .collect();
                let original = &mut workshop.original;
                let shown = titles.get(*original).map_or("", String::as_str);
                let width = ui.available_width().min(420.0);
                let chosen = Some(*original);
                let (list, taken) = kit::drop_down(ui, "original", width, shown, (&titles, chosen));
                *original = taken.unwrap_or(*original);
                list.widget_info(|| {
                    let name = format!("{}: {shown}", context.fixed("workshop-copy"));
                    egui::WidgetInfo::labeled(egui::WidgetType::ComboBox, true, name)
                });
                if kit::go(ui, context.text("workshop-copy-do")).clicked()
                    && let Some(source) = jobs.scenario_source(workshop.original)
                {
                    begun = Some(Workshop::copy_of(source, library));
                }
            });
            kit::card(ui, |ui| {
                kit::heading(ui, context.text("workshop-own"));
                let own = jobs.own_jobs().map(|own_jobs| own_jobs.stems());
                match own {
                    None => kit::quiet(ui, context.text("workshop-own-nowhere")),
                    Some(stems) if stems.is_empty() => {
                        kit::quiet(ui, context.text("workshop-own-none"));
                    }
                    Some(stems) => {
                        for stem in stems {
                            if kit::go(ui, stem.as_str()).clicked() {
                                begun = jobs.own_jobs().map(|own_jobs| {
                                    let text = own_jobs.read(&stem)?;
                                    Workshop::go_on(&stem, &text, library)
                                });
                            }
                        }
                    }
                }
            });
            library::library_ui(ui, context);
            kit::scroll_by_keys(ui, true);
        });
    match begun {
        Some(Ok(open)) => workshop.open = Some(open),
        Some(Err(error)) => {
            let now = ui.input(|i| i.time) as f32;
            context.ui_state.message = Some((context.texts.content_error(&error), now));
        }
        None => {}
    }
}

/// The job that is being written; whether it is put away.
fn editor_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut Workshop,
    (jobs, library): (&dyn JobSource, &ContentLibrary),
    kept: &mut Option<detent_content::ScenarioSource>,
) -> bool {
    let mut changes = Vec::new();
    let mut foot = |ui: &mut Ui, context: &mut PanelContext, open: &mut Workshop| {
        foot_ui(ui, context, open, (jobs, library), kept)
    };
    // In a low window it would leave no room for the rest: there it stands behind it.
    let is_low = ui.available_height() < LOW;
    let mut closed = false;
    // Laid out last, since the keys come to it last; as high as it was in the last frame.
    let id = ui.id().with("foot");
    let height = ui.data(|data| data.get_temp(id)).unwrap_or(FOOT);
    let room = ui.available_rect_before_wrap();
    let (page, below) = match is_low {
        true => (room, None),
        false => {
            let (page, below) = room.split_top_bottom_at_y(room.bottom() - height);
            (page, Some(below.translate(vec2(0.0, 6.0))))
        }
    };
    ui.scope_builder(UiBuilder::new().max_rect(page), |ui| {
        ScrollArea::vertical()
            .id_salt("workshop")
            .auto_shrink(false)
            .show(ui, |ui| {
                page_ui(ui, context, open, library, &mut changes);
                if is_low {
                    closed = foot(ui, context, open);
                }
                kit::scroll_by_keys(ui, true);
            });
    });
    if let Some(below) = below {
        ui.scope_builder(UiBuilder::new().max_rect(below), |ui| {
            closed = foot(ui, context, open);
            let height = ui.min_rect().height() + 12.0;
            ui.data_mut(|data| data.insert_temp(id, height));
        });
    }
    for change in changes {
        open.change(library, &change);
    }
    closed
}

/// Everything that a job says.
fn page_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut Workshop,
    library: &ContentLibrary,
    changes: &mut Changes,
) {
    if ui.available_width() < BESIDE {
        sentences::sentences_ui(ui, context, open, changes);
        machine::machine_ui(ui, context, open, library, changes);
        fault::fault_ui(ui, context, open, library, changes);
        limits::limits_ui(ui, context, open, changes);
        return;
    }
    ui.spacing_mut().item_spacing.x = 12.0;
    ui.columns(2, |columns| {
        for column in columns.iter_mut() {
            column.spacing_mut().item_spacing.x = 8.0;
        }
        columns[0].vertical(|ui| {
            sentences::sentences_ui(ui, context, open, changes);
            limits::limits_ui(ui, context, open, changes);
        });
        columns[1].vertical(|ui| {
            machine::machine_ui(ui, context, open, library, changes);
            fault::fault_ui(ui, context, open, library, changes);
        });
    });
}

/// What is wrong, and what can be done with the whole; whether it is put away.
fn foot_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut Workshop,
    (jobs, library): (&dyn JobSource, &ContentLibrary),
    kept: &mut Option<detent_content::ScenarioSource>,
) -> bool {
    kit::reserved(ui, 40.0, |ui| state_ui(ui, context, open));
    let mut closed = false;
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(context.text("workshop-name"));
        let edit = TextEdit::singleline(open.stem())
            .char_limit(60)
            .desired_width(210.0_f32.min(ui.available_width()))
            .min_size(vec2(0.0, 30.0))
            .vertical_align(egui::Align::Center);
        ui.add(edit).labelled_by(label.id);
        let size = vec2(0.0, 30.0);
        let texts = context.texts;
        let button = |ui: &mut Ui, key: &str, enabled: bool| {
            let button = egui::Button::new(texts.get(key)).min_size(size);
            ui.add_enabled(enabled, button).clicked()
        };
        if button(ui, "workshop-undo", open.can_undo()) {
            open.undo(library);
        }
        if button(ui, "workshop-redo", open.can_redo()) {
            open.redo(library);
        }
        let sound = open.checked().ok().cloned();
        if button(ui, "workshop-try", sound.is_some())
            && let Some(source) = sound
        {
            context.ui_state.guidance = Guidance::Nothing;
            context.ui_state.open(jobs.try_out(source));
        }
        match (
            jobs.own_jobs(),
            jobs.attempts().and_then(Attempts::file_exchange),
        ) {
            (Some(own_jobs), _) => {
                if button(ui, "workshop-keep", !open.is_kept()) {
                    *kept = open.keep(own_jobs);
                }
            }
            (None, Some(file_exchange)) => {
                if button(ui, "workshop-copy-out", true) {
                    let name = format!("{}.ron", open.stem());
                    file_exchange.save_copy(&name, open.text().as_bytes());
                }
            }
            (None, None) => {}
        }
        closed = button(ui, "workshop-leave", true);
    });
    closed
}

/// What is wrong with the text, or what became of it.
fn state_ui(ui: &mut Ui, context: &PanelContext, open: &Workshop) {
    let (text, color) = match (&open.last_kept, open.checked()) {
        (Some(KeptJob::Taken), _) => (context.text("workshop-name-taken"), t::BAD),
        (Some(KeptJob::NoName), _) => (context.text("workshop-name-note"), t::BAD),
        (Some(KeptJob::Unfinished), _) => (context.text("workshop-unfinished"), t::BAD),
        (Some(KeptJob::Failed(error)), _) => (error.words(context.texts), t::BAD),
        (Some(KeptJob::ChangedElsewhere), _) => {
            (context.text("workshop-changed-elsewhere"), t::BAD)
        }
        (_, Err(error)) => {
            let problem = context.texts.problem(&error.problem);
            let args = [
                ("field", Value::from(error.field.as_str())),
                ("problem", Value::from(problem)),
            ];
            (context.with("workshop-wrong", &args), t::BAD)
        }
        (Some(KeptJob::In(place)), Ok(_)) => {
            let args = [("place", Value::from(place.as_str()))];
            (context.with("workshop-kept", &args), t::GOOD)
        }
        (None, Ok(_)) => (context.text("workshop-sound"), t::QUIET),
    };
    ui.add(egui::Label::new(RichText::new(text).size(t::SMALL).color(color)).wrap());
}

/// A number with its name; the new one, where it was changed.
fn number_ui(
    ui: &mut Ui,
    name: String,
    mut now: f64,
    range: RangeInclusive<f64>,
    step: f64,
) -> Option<f64> {
    ui.horizontal(|ui| {
        let value = DragValue::new(&mut now)
            .range(range)
            .speed(step / 4.0)
            .fixed_decimals(if step < 1.0 { 2 } else { 0 })
            .update_while_editing(false);
        let value = ui.add_sized([72.0, 28.0], value);
        let label = ui.add(egui::Label::new(name).wrap());
        value.labelled_by(label.id).changed().then_some(now)
    })
    .inner
}

/// A box to tick; the new state, where it was changed.
fn flag_ui(ui: &mut Ui, name: String, mut now: bool) -> Option<bool> {
    kit::checkbox(ui, &mut now, name).changed().then_some(now)
}

/// What was changed on the page.
type Changes = Vec<ScenarioChange>;
