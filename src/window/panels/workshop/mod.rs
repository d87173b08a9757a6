//! The workshop: choose what to write, write it, see it proved, try it, keep it.

mod board;
mod cabinet;
mod fault;
pub mod library;
mod limits;
mod machine;
mod paper;
mod proof;
mod sentences;
#[cfg(test)]
mod tests;
pub mod tutorial;
mod wash;

use super::{PanelContext, kit};
use crate::attempts::Attempts;
use crate::board_workshop::BoardWorkshop;
use crate::port::JobSource;
use crate::state::{Guidance, Screen, say};
use crate::tokens as t;
use crate::workshop::{KeptJob, OwnTexts, Workshop, WorkshopPage, WorkshopRes};
use bevy_egui::egui::style::NumberFormatter;
use bevy_egui::egui::{
    self, CornerRadius, DragValue, RichText, ScrollArea, TextEdit, Ui, UiBuilder, Vec2, vec2,
};
use detent_content::{
    ContentError, ContentLibrary, Language, ScenarioChange, ScenarioDraft, Texts, Value,
};
use detent_training::authoring::Severity;
use std::ops::RangeInclusive;
use std::sync::Arc;

/// Least width of two columns side by side, points.
const BESIDE: f32 = 840.0;
/// Width of the proof beside them, points.
const PROOF: f32 = 380.0;
/// Widest page without the proof beside it, and with it, points.
const WIDEST: f32 = 1180.0;
const WIDEST_BESIDE: f32 = 1600.0;
/// Between the form and the proof beside it, points.
const GAP: f32 = 12.0;

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
    library: &Arc<ContentLibrary>,
) -> Option<Screen> {
    let all = ui.max_rect();
    ui.painter().rect_filled(all, CornerRadius::ZERO, t::PANEL);
    let mut place = all.shrink2(vec2(16.0, 10.0));
    let beside = workshop.open.is_some() && place.width() >= BESIDE + GAP + PROOF;
    let widest = if beside { WIDEST_BESIDE } else { WIDEST };
    place.set_width(place.width().min(widest));
    let place = place.translate(vec2((all.width() - 32.0 - place.width()) / 2.0, 0.0));
    let mut to = None;
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        let language = context.texts.language();
        ui.style_mut().number_formatter = NumberFormatter::new(move |number, decimals| {
            language.digits(egui::emath::format_with_decimals_in_range(number, decimals))
        });
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
        if let Some(mut open) = workshop.board.take() {
            open.watch(ui.input(|i| i.time));
            let kept = &mut workshop.kept_board;
            let closed = board::board_ui(ui, context, &mut open, (jobs, library), kept);
            workshop.board = (!closed).then_some(open);
            return;
        }
        if let Some(mut tutorial) = workshop.tutorial.take() {
            let closed = tutorial::tutorial_ui(ui, context, &mut tutorial);
            workshop.tutorial = (!closed).then_some(tutorial);
            return;
        }
        let Some(mut open) = workshop.open.take() else {
            chooser_ui(ui, context, workshop, jobs, library);
            return;
        };
        library::mistakes_ui(ui, context);
        open.watch(ui.input(|i| i.time), library);
        let kept = &mut workshop.kept;
        let closed = editor_ui(ui, context, &mut open, (jobs, library), kept);
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
    let mut begun_board: Option<Result<BoardWorkshop, ContentError>> = None;
    ScrollArea::vertical()
        .id_salt("workshop-chooser")
        .auto_shrink(false)
        .show(ui, |ui| {
            kit::card(ui, |ui| {
                ui.label(context.text("workshop-about"));
                ui.add_space(6.0);
                if kit::go(ui, context.text("workshop-tutorial")).clicked() {
                    let language = context.ui_state.language;
                    workshop.tutorial = Some(tutorial::Tutorial::in_language(language));
                }
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
                let Some(own_jobs) = jobs.own_jobs() else {
                    kit::quiet(ui, context.text("workshop-own-nowhere"));
                    return;
                };
                if let Some(stem) = own_ui(ui, context, own_jobs) {
                    let text = own_jobs.read(&stem);
                    begun = Some(text.and_then(|text| Workshop::go_on(&stem, &text, library)));
                }
            });
            kit::card(ui, |ui| {
                begun_board = board_chooser_ui(ui, context, workshop, jobs, library);
            });
            let file_exchange = jobs.attempts().and_then(Attempts::file_exchange);
            library::library_ui(ui, context, file_exchange);
            kit::scroll_by_keys(ui, true);
        });
    let mut told = None;
    match begun {
        Some(Ok(open)) => workshop.open = Some(open),
        Some(Err(error)) => told = Some(error),
        None => {}
    }
    match begun_board {
        Some(Ok(open)) => workshop.board = Some(Box::new(open)),
        Some(Err(error)) => told = Some(error),
        None => {}
    }
    if let Some(error) = told {
        let now = ui.input(|i| i.time) as f32;
        context.ui_state.message = Some((context.texts.content_error(&error), now));
    }
}

/// What is kept of one's own; the one to go on with.
fn own_ui(ui: &mut Ui, context: &PanelContext, own: &dyn OwnTexts) -> Option<String> {
    let stems = own.stems();
    if stems.is_empty() {
        kit::quiet(ui, context.text("workshop-own-none"));
    }
    let clicked = |stem: &String| kit::go(ui, stem.as_str()).clicked();
    let chosen: Vec<String> = stems.into_iter().filter(clicked).collect();
    chosen.into_iter().next()
}

/// Which board is to be described: a copy, or one of one's own once more.
fn board_chooser_ui(
    ui: &mut Ui,
    context: &PanelContext,
    workshop: &mut WorkshopRes,
    jobs: &dyn JobSource,
    library: &ContentLibrary,
) -> Option<Result<BoardWorkshop, ContentError>> {
    let mut begun = None;
    kit::heading(ui, context.text("workshop-board"));
    ui.label(context.text("workshop-board-about"));
    let original = (library.board(&workshop.original_board)).or(library.boards.first())?;
    let boards = library.boards.iter();
    let boards = boards.map(|board| (board.id.as_str(), context.text(&board.name)));
    if let Some(id) = kit::choices(ui, original.id.as_str(), boards) {
        workshop.original_board = id.to_owned();
    }
    if kit::go(ui, context.text("workshop-board-copy")).clicked() {
        begun = BoardWorkshop::copy_of(library, &original.id, context.texts);
    }
    if let Some(own_boards) = jobs.own_boards() {
        kit::quiet(ui, context.text("workshop-board-own"));
        if let Some(stem) = own_ui(ui, context, own_boards) {
            let text = own_boards.read(&stem);
            begun = Some(text.and_then(|text| BoardWorkshop::go_on(&stem, &text, library)));
        }
    }
    begun
}

/// A page with a foot below it, which stays where it is; in a low window it would leave no room for the rest: there it
/// stands behind the page. The page `scrolls` unless it does so by itself; what the foot says.
fn with_foot<S, R>(
    ui: &mut Ui,
    scrolls: bool,
    of: &mut S,
    page: impl FnOnce(&mut Ui, &mut S),
    foot: impl FnOnce(&mut Ui, &mut S) -> R,
) -> R {
    if ui.available_height() < LOW {
        return ScrollArea::vertical()
            .id_salt("workshop")
            .auto_shrink(false)
            .show(ui, |ui| {
                page(ui, of);
                let said = foot(ui, of);
                kit::scroll_by_keys(ui, true);
                said
            })
            .inner;
    }
    // Laid out last, since the keys come to it last; as high as it was in the last frame.
    let id = ui.id().with("foot");
    let height = ui.data(|data| data.get_temp(id)).unwrap_or(FOOT);
    let room = ui.available_rect_before_wrap();
    let (above, below) = room.split_top_bottom_at_y(room.bottom() - height);
    ui.scope_builder(UiBuilder::new().max_rect(above), |ui| {
        if !scrolls {
            page(ui, of);
            return;
        }
        ScrollArea::vertical()
            .id_salt("workshop")
            .auto_shrink(false)
            .show(ui, |ui| {
                page(ui, of);
                kit::scroll_by_keys(ui, true);
            });
    });
    let below = below.translate(vec2(0.0, 6.0));
    let foot = |ui: &mut Ui| {
        let said = foot(ui, of);
        let height = ui.min_rect().height() + 12.0;
        ui.data_mut(|data| data.insert_temp(id, height));
        said
    };
    ui.scope_builder(UiBuilder::new().max_rect(below), foot)
        .inner
}

/// The name of the file; whether it was changed.
fn name_ui(ui: &mut Ui, context: &PanelContext, name: &mut String, enabled: bool) -> bool {
    let label = ui.label(context.text("workshop-name"));
    let edit = TextEdit::singleline(name)
        .char_limit(60)
        .desired_width(210.0_f32.min(ui.available_width()))
        .min_size(vec2(0.0, 30.0))
        .vertical_align(egui::Align::Center);
    ui.add_enabled(enabled, edit)
        .labelled_by(label.id)
        .changed()
}

/// The button that keeps a text, of which the file's name is known and whether it is kept as it is; where it is to be
/// kept, if it was pressed. What a browser keeps is in no folder that could be handed on: there a copy can be saved, too.
fn keep_ui<'a>(
    ui: &mut Ui,
    texts: &Texts,
    (place, jobs): (Option<&'a dyn OwnTexts>, &dyn JobSource),
    (file, is_kept): &(String, bool),
    text: &str,
) -> Option<&'a dyn OwnTexts> {
    let button = |ui: &mut Ui, key: &str, enabled| plain_button(ui, texts.get(key), enabled);
    let keep = place.filter(|_| button(ui, "workshop-keep", !is_kept));
    if let Some(file_exchange) = jobs.attempts().and_then(Attempts::file_exchange)
        && button(ui, "workshop-copy-out", true)
    {
        file_exchange.save_copy(file, text.as_bytes());
    }
    keep
}

/// A button among others of a line; whether it was pressed. One that does nothing now is hollow.
fn plain_button(ui: &mut Ui, text: String, enabled: bool) -> bool {
    let (fill, ink) = match enabled {
        true => (t::FIELD, t::TEXT),
        false => (egui::Color32::TRANSPARENT, t::QUIET),
    };
    let button = egui::Button::new(RichText::new(text).color(ink)).fill(fill);
    // It goes to the next line as a whole where there is no room for it.
    let button = button.wrap_mode(egui::TextWrapMode::Extend);
    ui.add_enabled(enabled, button.min_size(vec2(0.0, 30.0)))
        .clicked()
}

/// The job that is being written; whether it is put away.
fn editor_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    open: &mut Workshop,
    (jobs, library): (&dyn JobSource, &Arc<ContentLibrary>),
    kept: &mut Option<detent_content::ScenarioSource>,
) -> bool {
    let beside = ui.available_width() >= BESIDE + GAP + PROOF;
    pages_ui(ui, context, open, beside);
    let mut changes = Vec::new();
    let shown = match open.view.page {
        WorkshopPage::Proof if beside => WorkshopPage::Job,
        page => page,
    };
    // Side by side, form and proof scroll by themselves; not in a low window, where all of it scrolls.
    let two = beside && shown == WorkshopPage::Job && ui.available_height() >= LOW;
    let mut from = None;
    // Each page keeps its own place.
    let closed = ui
        .push_id(shown as u8, |ui| {
            with_foot(
                ui,
                !two,
                &mut (&mut *context, &mut *open),
                |ui, (context, open)| {
                    let mut page = |ui: &mut Ui,
                                    context: &mut PanelContext,
                                    open: &mut Workshop| {
                        match shown {
                            WorkshopPage::Job => page_ui(ui, context, open, library, &mut changes),
                            WorkshopPage::Proof => {
                                from = proof::proof_ui(ui, context, open, library)
                            }
                            WorkshopPage::Wash => wash::wash_ui(ui, context, open, library),
                            WorkshopPage::Paper => {
                                paper::paper_ui(ui, context, open, (jobs, library))
                            }
                        }
                    };
                    if !two {
                        return page(ui, context, open);
                    }
                    let room = ui.available_rect_before_wrap();
                    let (left, right) = room.split_left_right_at_x(room.right() - PROOF);
                    let column =
                        |ui: &mut Ui, name: &str, room, contents: &mut dyn FnMut(&mut Ui)| {
                            ui.scope_builder(UiBuilder::new().max_rect(room), |ui| {
                                ScrollArea::vertical()
                                    .id_salt(name)
                                    .auto_shrink(false)
                                    .show(ui, contents);
                            });
                        };
                    let form = left.with_max_x(left.right() - GAP);
                    column(ui, "workshop", form, &mut |ui| {
                        page(ui, context, open);
                        kit::scroll_by_keys(ui, true);
                    });
                    column(ui, "workshop-proof", right, &mut |ui| {
                        from = proof::proof_ui(ui, context, open, library);
                        kit::scroll_by_keys(ui, false);
                    });
                },
                |ui, (context, open)| foot_ui(ui, context, open, (jobs, library), kept),
            )
        })
        .inner;
    if let (Some(from), Ok(source)) = (from, open.checked()) {
        context.ui_state.guidance = Guidance::Nothing;
        (context.ui_state).open(jobs.try_out(source.clone(), Some(from)));
    }
    for change in changes {
        open.change(library, &change);
    }
    closed
}

/// The pages of a job side by side; the proof is none where it stands beside the form.
fn pages_ui(ui: &mut Ui, context: &PanelContext, open: &mut Workshop, beside: bool) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        let found = (open.proof().of_now()).filter(|proved| !proved.report.findings.is_empty());
        let proof = match found {
            Some(proved) => {
                let told = proof::counts(context, proved);
                let args = [("told", Value::from(told))];
                context.with("workshop-page-proof-of", &args)
            }
            None => context.text("workshop-page-proof"),
        };
        let pages = [
            (WorkshopPage::Job, context.text("workshop-page-job")),
            (WorkshopPage::Proof, proof),
            (WorkshopPage::Wash, context.text("workshop-page-wash")),
            (WorkshopPage::Paper, context.text("workshop-page-paper")),
        ];
        for (page, name) in pages {
            if page == WorkshopPage::Proof && beside {
                continue;
            }
            let now = open.view.page;
            let on =
                now == page || beside && (now, page) == (WorkshopPage::Proof, WorkshopPage::Job);
            if kit::tab(ui, on, name, vec2(0.0, 30.0)).clicked() {
                open.view.page = page;
            }
        }
    });
}

/// Where it lies which field is to get the keys.
fn led_to() -> egui::Id {
    egui::Id::new("workshop led to")
}

/// Leads to what changes this field: it gets the keys once it is laid out.
fn lead_to(ui: &Ui, field: &str) {
    ui.data_mut(|data| data.insert_temp(led_to(), field.to_owned()));
    ui.ctx().request_repaint();
}

/// What changes the field at `path`, or one within it.
fn field<R>(ui: &mut Ui, path: &str, contents: impl FnOnce(&mut Ui) -> R) -> R {
    let shown = ui.scope(contents);
    let led: Option<String> = ui.data(|data| data.get_temp(led_to()));
    let is_it = led.is_some_and(|led| {
        let rest = led.strip_prefix(path);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
    });
    if is_it {
        ui.data_mut(|data| data.remove_temp::<String>(led_to()));
        let (layer, place) = (ui.layer_id(), shown.response.rect);
        let first = ui.ctx().viewport(|viewport| {
            let mut widgets = viewport.this_pass.widgets.get_layer(layer);
            let here = |widget: &&egui::WidgetRect| {
                widget.enabled
                    && widget.sense.is_focusable()
                    && place.expand(1.0).contains_rect(widget.rect)
            };
            widgets.find(here).map(|widget| widget.id)
        });
        if let Some(first) = first {
            ui.memory_mut(|memory| memory.request_focus(first));
        }
        ui.scroll_to_rect(place, Some(egui::Align::Center));
    }
    shown.inner
}

/// What a field of a job is called on its page; its path where it has no line there.
fn field_name(context: &PanelContext, path: &str) -> String {
    let (field, within) = path
        .split_once(['.', '['])
        .map_or((path, None), |(field, within)| (field, Some(within)));
    let key = format!("workshop-field-{}", field.replace('_', "-"));
    if !context.texts.has(&key) {
        return path.to_owned();
    }
    let name = context.text(&key);
    let language = within.and_then(|within| {
        let mut languages = Language::ALL.into_iter();
        languages.find(|language| language.code() == within)
    });
    match language {
        Some(language) => format!("{name} ({})", language.own_name()),
        None => name,
    }
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
        name_ui(ui, context, open.stem(), true);
        let texts = context.texts;
        let button =
            |ui: &mut Ui, key: &str, enabled: bool| plain_button(ui, texts.get(key), enabled);
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
            context.ui_state.open(jobs.try_out(source, None));
        }
        let file = (format!("{}.ron", open.stem()), open.is_kept());
        if let Some(own_jobs) = keep_ui(ui, texts, (jobs.own_jobs(), jobs), &file, open.text()) {
            *kept = open.keep(own_jobs);
        }
        closed = button(ui, "workshop-leave", true);
    });
    closed
}

/// What is wrong with the text, or what became of it.
fn state_ui(ui: &mut Ui, context: &PanelContext, open: &Workshop) {
    let (text, color) = match (&open.kept.last, open.checked()) {
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
                ("field", Value::from(field_name(context, &error.field))),
                ("problem", Value::from(problem)),
            ];
            (context.with("workshop-wrong", &args), t::BAD)
        }
        (Some(KeptJob::In(place)), Ok(_)) => {
            let args = [("place", Value::from(place.as_str()))];
            (context.with("workshop-kept", &args), t::GOOD)
        }
        (None, Ok(_)) => match open.proof().of_now() {
            Some(proved) => {
                let color = match proved.report.count(Severity::Error) {
                    0 => t::QUIET,
                    _ => t::BAD,
                };
                let args = [("told", Value::from(proof::counts(context, proved)))];
                (context.with("workshop-sound-proved", &args), color)
            }
            None => (context.text("workshop-sound"), t::QUIET),
        },
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
            .custom_parser(|typed| typed.trim().replace(',', ".").parse().ok())
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
