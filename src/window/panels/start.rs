//! The start screen: choose a job, a seed, a language.

use super::{PanelContext, icon, kept, kit, variants, workshop};
use crate::attempts::Attempts;
use crate::class::ClassRes;
use crate::port::{JobSource, Offer};
use crate::practice::LearnerRes;
use crate::state::{Guidance, UiState, VariantList, say};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align, CornerRadius, Frame, Layout, Margin, RichText, ScrollArea, Stroke, TextEdit, Ui,
    vec2,
};
use detent_content::{LONGEST_NAME, Language, Value};
use detent_training::practice::{Learner, Standing};

/// Draws it.
pub(super) fn start_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    (jobs, class): (&dyn JobSource, &mut ClassRes),
) {
    let scrolls = scrolls(ui, class);
    in_panel(ui, scrolls, |ui| {
        panel_ui(ui, context, learner, (jobs, class))
    });
}

/// The panel of the start screen, which scrolls or is as high as the window.
pub(super) fn in_panel(ui: &mut Ui, scrolls: bool, contents: impl FnOnce(&mut Ui)) {
    let all = ui.max_rect();
    let margin = vec2(36.0, 30.0).min(all.size() * 0.04);
    let size = vec2(
        470.0_f32.min(all.width() - 2.0 * margin.x),
        all.height() - 2.0 * margin.y,
    );
    let place = egui::Rect::from_min_size(all.min + margin, size);
    ui.scope_builder(egui::UiBuilder::new().max_rect(place), |ui| {
        Frame::new()
            .fill(t::PANEL.gamma_multiply(0.96))
            .corner_radius(CornerRadius::same(16))
            .inner_margin(Margin::symmetric(22, 16))
            .show(ui, |ui| {
                ui.set_width(place.width() - 44.0);
                ui.set_height(place.height() - 32.0);
                if !scrolls {
                    return contents(ui);
                }
                ScrollArea::vertical()
                    .id_salt("start")
                    .auto_shrink(false)
                    .show(ui, |ui| {
                        contents(ui);
                        kit::scroll_by_keys(ui, true);
                    });
            });
    });
}

/// All of it scrolls where the window is low or a class stands before the jobs; else only the list of jobs does.
fn scrolls(ui: &Ui, class: &ClassRes) -> bool {
    is_short(ui) || class.link.is_some()
}

fn is_short(ui: &Ui) -> bool {
    const SHORT: f32 = 660.0;
    ui.ctx().content_rect().height() < SHORT
}

/// What stands on the panel.
fn panel_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    (jobs, class): (&dyn JobSource, &mut ClassRes),
) {
    name_and_language_ui(ui, context);
    ui.label(RichText::new(context.text("app-tagline")).size(18.0));
    kept::look_again(context, jobs);
    let first = class.joined().is_none() && is_first_start(learner, context.ui_state, jobs);
    if !first {
        let name = learner.name().map(str::to_owned);
        // Whoever has a seat in a class is named there.
        let is_told = name.is_some() || class.joined().is_none();
        let name = name.unwrap_or_else(|| context.text("practice-guest"));
        let who = context.with("start-who", &[("name", Value::from(name))]);
        ui.horizontal(|ui| {
            if is_told {
                kit::quiet(ui, who);
            }
            kit::at_right_end(ui, |ui| settings_ui(ui, context));
        });
    }
    ui.add_space(4.0);
    if context.ui_state.opening.is_some() {
        kit::quiet(ui, context.text("start-opening"));
        ui.disable();
    }
    if let Some((message, _)) = &context.ui_state.message {
        ui.label(RichText::new(message).color(t::BAD));
    }
    if let Some(storage_error) = jobs.attempts().and_then(Attempts::storage_error) {
        let text = storage_error.words(context.texts);
        ui.label(RichText::new(text).size(t::SMALL).color(t::BAD));
    }
    workshop::library::mistakes_ui(ui, context);
    // While an examination is open nothing else is done here, or its jobs could be tried out.
    if learner.sitting().is_some() {
        kit::quiet(ui, context.text("examination-is-open"));
        let back = context.text("examination-back");
        context.ui_state.examine = kit::main_button(ui, back, true).clicked();
        return;
    }
    if class.joined().is_some() {
        super::class::seat_ui(ui, context, class, jobs);
        // Its jobs could be tried out elsewhere.
        if class.is_examination() {
            return;
        }
    } else if class.link.is_some() && kit::go(ui, context.text("seat-rejoin")).clicked() {
        class.desk.without = false;
    }
    if first {
        first_start_ui(ui, context, learner, jobs);
        return;
    }
    let new = is_new(learner.learner(), jobs);
    if let Some(offer) = guided_offer(jobs)
        && first_ui(ui, context, new).clicked()
    {
        begin(context, jobs, offer);
    }
    elsewhere_ui(ui, context);
    if context.ui_state.variants.is_some() {
        variants::variants_ui(ui, context, jobs);
        return;
    }
    kept::shelf_choice_ui(ui, context, jobs);
    if context.ui_state.content_library {
        kept::kept_ui(ui, context, jobs);
    } else {
        let scrolls = scrolls(ui, class);
        jobs_ui(ui, context, learner.learner(), (jobs, scrolls));
    }
    ui.label(
        RichText::new(context.text("start-about"))
            .size(t::SMALL)
            .color(t::QUIET),
    );
}

/// The name of the program, and the languages.
pub(super) fn name_and_language_ui(ui: &mut Ui, context: &mut PanelContext) {
    ui.horizontal(|ui| {
        ui.label(
            RichText::new(context.text("app-name"))
                .size(46.0)
                .color(t::AMBER),
        );
        kit::at_right_end(ui, |ui| {
            for language in [Language::En, Language::Es] {
                if kit::choice(
                    ui,
                    context.ui_state.language == language,
                    language.own_name(),
                )
                .clicked()
                {
                    context.ui_state.language = language;
                }
            }
        });
    });
}

/// To the other screens: side by side where their names fit, so that the list of jobs keeps its room.
fn elsewhere_ui(ui: &mut Ui, context: &mut PanelContext) {
    let [practise, examine, write] =
        ["start-practice", "start-examination", "start-workshop"].map(|key| context.text(key));
    let between = ui.spacing().item_spacing.x;
    let share = |of: f32| (ui.available_width() - (of - 1.0) * between) / of;
    let fits = [&practise, &examine, &write]
        .iter()
        .all(|text| kit::width(ui, text) + ROUND_WORDS <= share(3.0));
    let size = vec2(share(if fits { 3.0 } else { 2.0 }), 32.0);
    let go = |ui: &mut Ui, text: &str, size| kit::go_sized(ui, text, size).clicked();
    ui.horizontal(|ui| {
        context.ui_state.practise |= go(ui, &practise, size);
        context.ui_state.examine |= go(ui, &examine, size);
        if fits {
            context.ui_state.write |= go(ui, &write, size);
        }
    });
    if !fits {
        let size = vec2(ui.available_width(), 32.0);
        context.ui_state.write |= go(ui, &write, size);
    }
}

/// To the settings.
fn settings_ui(ui: &mut Ui, context: &mut PanelContext) {
    let text = context.text("start-settings");
    if kit::go_sized(ui, text, egui::Vec2::ZERO).clicked() {
        context.ui_state.keys = true;
    }
}

/// The first job that a guide leads through.
fn guided_offer(jobs: &dyn JobSource) -> Option<usize> {
    jobs.offers().iter().position(|offer| offer.guided)
}

/// Begins the job with every step of its guide.
fn begin(context: &mut PanelContext, jobs: &dyn JobSource, offer: usize) {
    context.ui_state.offer = offer;
    let seed = jobs.offers()[offer].seed;
    context.ui_state.seed = seed.to_string();
    context.ui_state.guidance = Guidance::EveryStep;
    context.ui_state.open(jobs.open(offer, seed));
}

/// Nobody has a name here yet, and nothing was tried or begun.
fn is_first_start(learner: &mut LearnerRes, ui_state: &UiState, jobs: &dyn JobSource) -> bool {
    !ui_state.everything
        && learner.keeps()
        && guided_offer(jobs).is_some()
        && is_new(learner.learner(), jobs)
        && learner.known().is_empty()
        && ui_state.kept.as_ref().is_none_or(Vec::is_empty)
}

/// The way in for whoever comes for the first time: a name, and one button.
fn first_start_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    jobs: &dyn JobSource,
) {
    ui.add_space(18.0);
    let label = ui.label(context.text("start-name"));
    let edit = TextEdit::singleline(&mut learner.ui_state.name)
        .char_limit(LONGEST_NAME)
        .min_size(vec2(0.0, 34.0))
        .vertical_align(egui::Align::Center)
        .desired_width(ui.available_width());
    ui.add(edit).labelled_by(label.id);
    kit::quiet(ui, context.text("start-name-note"));
    ui.add_space(14.0);
    let text = context.text("start-first");
    if kit::main_button(ui, text, true).clicked()
        && let Some(offer) = guided_offer(jobs)
    {
        if learner.ui_state.name.chars().any(char::is_alphanumeric) {
            learner.create(context.ui_state.language);
        }
        // Why a name could not be kept stands above.
        if learner.storage_error.is_none() {
            begin(context, jobs, offer);
        }
    }
    kit::quiet(ui, context.text("start-first-note"));
    ui.add_space(14.0);
    context.ui_state.everything = kit::go(ui, context.text("start-everything")).clicked();
    settings_ui(ui, context);
    ui.add_space(14.0);
    kit::quiet(ui, context.text("start-about"));
}

/// Nothing was tried and nothing practised under this name.
fn is_new(learner: &Learner, jobs: &dyn JobSource) -> bool {
    let tried = |offer: &Offer| learner.tried(&offer.course.file);
    let practised = |standing: &Standing| standing.answers > 0;
    !jobs.offers().iter().any(tried) && !learner.standings().iter().any(practised)
}

/// Whoever is new sees this button first.
fn first_ui(ui: &mut Ui, context: &PanelContext, new: bool) -> egui::Response {
    let text = context.text("start-guided");
    if new {
        kit::main_button(ui, text, true)
    } else {
        kit::go(ui, text)
    }
}

/// How far this learner has come with a job, from right to left: the best score in points of a hundred, and a tick
/// where it is passed, a ring where it was only tried. Words would leave the title no room.
fn standing_ui(ui: &mut Ui, context: &PanelContext, learner: &Learner, offer: &Offer) {
    let file = &offer.course.file;
    let Some(share) = learner.best_share(file) else {
        return;
    };
    let passed = learner.passed(file);
    let (key, color) = match passed {
        true => ("start-passed", t::GOOD),
        false => ("start-tried", t::AMBER),
    };
    ui.spacing_mut().item_spacing.x = 5.0;
    let points = format!("{:.0}", 100.0 * share);
    let best = RichText::new(points).size(t::SMALL).color(color);
    ui.add(egui::Label::new(best).selectable(false));
    let (rect, sign) = ui.allocate_exact_size(vec2(14.0, 14.0), egui::Sense::hover());
    match passed {
        true => icon::tick(ui.painter(), rect, color),
        false => icon::ring(ui.painter(), rect, color),
    }
    sign.widget_info(|| {
        egui::WidgetInfo::labeled(egui::WidgetType::Image, true, context.fixed(key))
    });
}

/// How long a job takes, and what comes before it.
fn around(context: &PanelContext, offer: &Offer) -> String {
    let minutes = context.with("start-minutes", &[("minutes", Value::from(offer.minutes))]);
    if offer.after.is_empty() {
        return minutes;
    }
    let titles = offer.after.iter();
    let titles: Vec<&str> = titles.map(|t| say(context.ui_state.language, t)).collect();
    let titles = Value::from(titles.join(", "));
    format!(
        "{minutes} {}",
        context.with("start-after", &[("titles", titles)])
    )
}

/// How high the list of jobs is at least, points.
const LEAST_LIST: f32 = 240.0;
/// Room below the list: seed, two buttons and a caution; the same where the words take more lines, points.
const FOOT: f32 = 142.0;
const NARROW_FOOT: f32 = 232.0;
/// Room in a button beside its words, points.
const ROUND_WORDS: f32 = 44.0;

/// The jobs on offer.
///
/// Where all of the panel `scrolls`, its keys are not the list's.
fn jobs_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &Learner,
    (jobs, scrolls): (&dyn JobSource, bool),
) {
    kept::last_ui(ui, context, jobs);
    let [begin, vary] = ["start-begin", "start-variant"].map(|key| context.text(key));
    let half = (ui.available_width() - ui.spacing().item_spacing.x) / 2.0;
    // On a phone the words may need the whole width.
    let fits = [&begin, &vary].map(|text| kit::width(ui, text) + ROUND_WORDS <= half) == [true; 2];
    let foot = if fits { FOOT } else { NARROW_FOOT };
    let mut focused = false;
    let list = ScrollArea::vertical()
        .max_height((ui.available_height() - foot).max(LEAST_LIST))
        .auto_shrink(false)
        .show(ui, |ui| {
            let mut part = None;
            for (n, offer) in jobs.offers().iter().enumerate() {
                if offer.part != part {
                    part = offer.part;
                    ui.add_space(6.0);
                    let heading = match part {
                        Some(part) => context.text(&format!("course-{part}")),
                        None => context.text("workshop-own"),
                    };
                    kit::heading(ui, heading);
                }
                let on = context.ui_state.offer == n;
                let edge = if on { t::AMBER } else { t::LINE };
                let response = Frame::new()
                    .fill(if on { t::FIELD } else { t::CARD })
                    .stroke(Stroke::new(if on { 2.0 } else { 1.0 }, edge))
                    .corner_radius(CornerRadius::same(10))
                    .inner_margin(Margin::symmetric(12, 6))
                    .show(ui, |ui| {
                        ui.set_width(ui.available_width());
                        let title = RichText::new(say(context.ui_state.language, &offer.title))
                            .size(18.0)
                            .color(if on { t::AMBER } else { t::TEXT });
                        let board = RichText::new(context.text(&offer.board))
                            .size(t::SMALL)
                            .color(t::QUIET);
                        ui.allocate_ui_with_layout(
                            vec2(ui.available_width(), 22.0),
                            egui::Layout::right_to_left(egui::Align::Center),
                            |ui| {
                                ui.add(egui::Label::new(board).selectable(false));
                                standing_ui(ui, context, learner, offer);
                                let left = egui::Layout::left_to_right(egui::Align::Center);
                                // A closed row is one line high whatever stands beside the title.
                                ui.with_layout(left.with_main_wrap(on), |ui| {
                                    let title = egui::Label::new(title).selectable(false);
                                    ui.add(if on { title } else { title.truncate() });
                                });
                            },
                        );
                        // A long list stays short: the complaint is told when a job is chosen.
                        if on {
                            let words =
                                RichText::new(say(context.ui_state.language, &offer.complaint))
                                    .italics()
                                    .size(t::SMALL)
                                    .color(t::TEXT);
                            ui.add(egui::Label::new(words).selectable(false));
                            let more = RichText::new(around(context, offer))
                                .size(t::SMALL)
                                .color(t::QUIET);
                            ui.add(egui::Label::new(more).selectable(false));
                        }
                    })
                    .response;
                let id = ui.id().with(("offer", n));
                let response = ui.interact(response.rect, id, egui::Sense::click());
                focused |= response.gained_focus();
                response.widget_info(|| {
                    egui::WidgetInfo::selected(
                        egui::WidgetType::RadioButton,
                        true,
                        on,
                        say(context.ui_state.language, &offer.title),
                    )
                });
                if on && context.ui_state.offer_seen != Some(n) {
                    context.ui_state.offer_seen = Some(n);
                    response.scroll_to_me(None);
                }
                if response.clicked() {
                    context.ui_state.offer = n;
                    context.ui_state.seed = offer.seed.to_string();
                }
            }
            if !scrolls {
                kit::scroll_by_keys(ui, true);
            }
        });
    if focused {
        // The list has followed the keys; what it lies on has to follow, too.
        ui.scroll_to_rect(list.inner_rect, None);
    }
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(context.text("start-seed"));
        ui.add(
            TextEdit::singleline(&mut context.ui_state.seed)
                .desired_width(120.0)
                .min_size(vec2(0.0, 28.0))
                .vertical_align(egui::Align::Center)
                .char_limit(18),
        )
        .labelled_by(label.id);
        context.ui_state.seed.retain(|c| c.is_ascii_digit());
        kit::quiet(ui, context.text("start-seed-hint"));
    });
    let seed = context.ui_state.seed.trim().parse::<u64>();
    let (mut begins, mut varies) = (false, false);
    let (across, width) = if fits {
        (Layout::left_to_right(Align::Center), half)
    } else {
        (Layout::top_down(Align::Min), ui.available_width())
    };
    let rows = vec2(ui.available_width(), 36.0);
    ui.allocate_ui_with_layout(rows, across, |ui| {
        ui.allocate_ui(vec2(width, 36.0), |ui| {
            let begin = if is_new(learner, jobs) {
                kit::go_sized_if(ui, seed.is_ok(), begin, vec2(width, 36.0))
            } else {
                kit::main_button(ui, begin, seed.is_ok())
            };
            begins = begin.clicked();
        });
        ui.allocate_ui(vec2(width, 36.0), |ui| {
            let vary = kit::go_sized_if(ui, seed.is_ok(), vary, vec2(width, 36.0));
            varies = vary
                .on_hover_text(context.text("start-variant-note"))
                .clicked();
        });
    });
    if let Ok(seed) = seed
        && (begins || varies)
    {
        let offer = context.ui_state.offer;
        if varies {
            context.ui_state.variants = Some(VariantList::new(offer, seed, variants::COUNTS[0]));
            return;
        }
        let work = jobs.open(offer, seed);
        context.ui_state.guidance = Guidance::Nothing;
        context.ui_state.open(work);
    }
}
