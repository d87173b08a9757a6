//! The panels over the scene.

mod caution;
mod class;
mod coach;
mod control_suspicion;
mod customer;
mod drill;
mod examination;
mod film;
mod focus;
mod guide;
mod hint;
mod icon;
mod incident;
mod kept;
pub mod kit;
mod look;
mod meter;
mod misread;
mod parts;
mod plots;
mod practice;
mod quote;
mod report;
mod review;
mod score;
mod settings;
mod sheet;
pub mod spoken;
mod stage;
mod start;
#[cfg(test)]
mod tests;
mod ticket;
mod top;
mod variants;
mod workshop;

pub use workshop::tutorial;

use super::camera::SceneTarget;
use super::class::ClassRes;
use super::film::ShownFilm;
use super::flat::{self, FlatScene};
use super::pointing::Pointing;
use super::port::{BenchPort, Job, JobSource, RecordedAttempt};
use super::practice::{DrillRes, LearnerRes};
use super::preferences::is_still;
use super::rest::NextFrame;
use super::scene::console::KnobFeel;
use super::scene::console::lamps::Shining;
use super::scene::console::print::SharpPrint;
use super::scene::displayed::DisplayedMachine;
use super::scene::grips::SceneGrips;
use super::state::{BenchRes, Guidance, JobSourceRes, Onward, Screen, Tab, TextsRes, UiState};
use super::workshop::WorkshopRes;
use bevy::prelude::{
    App, IntoScheduleConfigs, NextState, PostUpdate, Rect, Res, ResMut, Result, State, Time,
    Update, in_state, resource_exists,
};
use bevy_egui::egui::{self, Frame, Margin, ScrollArea, Ui, UiBuilder, UiStackInfo};
use bevy_egui::{EguiContexts, EguiPrimaryContextPass, EguiTextureHandle};
use detent_content::{Texts, Value, Words};
use detent_simulation::interface::{Component as Part, Pin};
use detent_training::bench::Action;
use detent_training::practice::Learner;
use detent_training::reason::Review;
use stage::ConsoleOverlay;
use std::borrow::Cow;

/// What every panel draws from and writes to.
pub struct PanelContext<'a> {
    /// Texts.
    pub texts: &'a Texts,
    /// Bench.
    pub bench: &'a mut BenchRes,
    /// What the panels remember.
    pub ui_state: &'a mut UiState,
}

impl<'a> PanelContext<'a> {
    /// The text under `key`.
    pub fn text(&self, key: &str) -> String {
        self.fixed(key).into_owned()
    }

    /// The same, copied only where it must be: for what stands on the screen all the time.
    pub fn fixed(&self, key: &str) -> Cow<'a, str> {
        self.ui_state.key_bindings.label(key, self.texts.fixed(key))
    }

    /// The text under `key` with arguments.
    pub fn with(&self, key: &str, args: &[(&str, Value<'_>)]) -> String {
        self.texts.with(key, args)
    }

    /// A component's name.
    pub fn part(&self, part: Part) -> String {
        self.texts.component(part)
    }

    /// A pin as the service sheet names it.
    pub fn pin(&self, pin: Pin) -> String {
        self.texts.pin(&self.bench.job().board, pin)
    }

    /// Words for a job that was thought over.
    fn words<'b>(&'b self, review: &'b Review) -> Words<'b> {
        let job = self.bench.job();
        Words::of(
            (&review.repair_costs, &review.modes),
            self.texts,
            &job.parts,
            Some(&job.board),
        )
    }

    /// Do `action` at the next tick.
    pub fn act(&mut self, action: Action) {
        self.bench.push(action);
    }
}

/// Text key of a tab.
fn tab_key(tab: Tab) -> &'static str {
    match tab {
        Tab::Sheet => "tab-sheet",
        Tab::Meter => "tab-meter",
        Tab::Parts => "tab-parts",
        Tab::Report => "tab-report",
        Tab::Score => "tab-score",
    }
}

/// What stands on a tab. A film has its lost points where a job has its score.
fn tab_text<'a>(context: &PanelContext<'a>, tab: Tab) -> Cow<'a, str> {
    match (tab, context.bench.film()) {
        (Tab::Score, Some(_)) => context.fixed("tab-film"),
        (tab, _) => context.fixed(tab_key(tab)),
    }
}

/// Every tab, in their order.
const TABS: [Tab; 5] = [Tab::Sheet, Tab::Meter, Tab::Parts, Tab::Report, Tab::Score];

fn tabs(ui: &mut Ui, context: &mut PanelContext) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 4.0;
        let width = (ui.available_width() - 16.0) / 5.0;
        for tab in TABS {
            if kit::tab(
                ui,
                context.ui_state.tab == tab,
                tab_text(context, tab),
                egui::vec2(width, 34.0),
            )
            .clicked()
            {
                context.ui_state.tab = tab;
            }
        }
    });
    ui.add_space(6.0);
    tab_page(ui, context);
}

/// The page of the tab that is open.
fn tab_page(ui: &mut Ui, context: &mut PanelContext) {
    if context.ui_state.tab == Tab::Sheet {
        sheet::pages_ui(ui, context);
    }
    ScrollArea::vertical()
        .id_salt((
            "tab",
            context.ui_state.visit,
            context.ui_state.tab,
            context.bench.view().finished,
        ))
        .auto_shrink(false)
        .show(ui, |ui| {
            let tag = UiStackInfo::default().with_tag(kit::SCROLLED_TO_MARKS);
            let page = UiBuilder::new().ui_stack_info(tag);
            let watched = context.bench.film().is_some();
            ui.scope_builder(page, |ui| match context.ui_state.tab {
                Tab::Sheet => sheet::sheet_ui(ui, context),
                Tab::Score if watched => film::page_ui(ui, context),
                Tab::Score => score::score_ui(ui, context),
                tab @ (Tab::Meter | Tab::Parts | Tab::Report) => {
                    // Whoever watches sees it and has no hands there.
                    ui.add_enabled_ui(!watched, |ui| match tab {
                        Tab::Meter => meter::meter_ui(ui, context),
                        Tab::Parts => parts::parts_ui(ui, context),
                        _ => report::report_ui(ui, context),
                    });
                }
            });
            kit::scroll_by_keys(ui, true);
        });
}

/// How much room the bench has.
#[derive(Clone, Copy, PartialEq, Eq)]
enum BenchRoom {
    /// Panels stand on both sides of the machine.
    Wide,
    /// They stand below it.
    Narrow,
    /// There is room for one thing at a time: a phone, or a small screen with large text.
    Small,
}

impl BenchRoom {
    fn of(size: egui::Vec2) -> BenchRoom {
        const NARROW: f32 = 1000.0;
        const SMALL: egui::Vec2 = egui::vec2(640.0, 440.0);
        if size.x < SMALL.x || size.y < SMALL.y {
            BenchRoom::Small
        } else if size.x < NARROW {
            BenchRoom::Narrow
        } else {
            BenchRoom::Wide
        }
    }
}

/// A panel of this size, with so much room left free across and up inside.
fn fixed(panel: egui::Panel, size: f32, margin: (i8, i8)) -> egui::Panel {
    framed(panel, margin).exact_size(size)
}

/// The same, as high as what is in it.
fn framed(panel: egui::Panel, (across, up): (i8, i8)) -> egui::Panel {
    let frame = Frame::new()
        .fill(super::tokens::PANEL)
        .inner_margin(Margin::symmetric(across, up));
    panel
        .resizable(false)
        .frame(frame)
        .show_separator_line(false)
}

/// The job ticket, with what can be done about the attempt itself.
fn ticket(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    ScrollArea::vertical()
        .id_salt(("ticket", context.ui_state.visit))
        .auto_shrink(false)
        .show(ui, |ui| {
            if context.bench.film().is_some() {
                ui.add_enabled_ui(false, |ui| ticket::watched_ticket_ui(ui, context));
                kit::scroll_by_keys(ui, false);
                return;
            }
            guide::guide_ui(ui, context);
            ticket::ticket_ui(ui, context);
            kept::save_ui(ui, context, jobs);
            kit::quiet(ui, context.fixed("ticket-protect"));
            // Last, since it grows with each rung.
            if !ticket::is_guided(context) {
                hint::hint_ui(ui, context);
            }
            kit::scroll_by_keys(ui, false);
        });
}

/// Where no pointer gets: the place of a machine that is not shown.
const NOWHERE: Rect = Rect {
    min: bevy::math::Vec2::splat(-64.0),
    max: bevy::math::Vec2::splat(-32.0),
};

/// What stands side by side, or one below the other, at a bench with room for it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum BenchPart {
    Machine,
    Ticket,
    Tabs,
}

/// How wide the panels are, points.
const TICKET_WIDTH: f32 = 280.0;
const TABS_WIDTH: f32 = 412.0;

/// Where the parts of the bench that are shown stand, in the order in which the eye goes through them: so the keys do
/// too.
fn bench_parts(
    all: egui::Rect,
    narrow: bool,
    ui_state: &UiState,
) -> [Option<(BenchPart, egui::Rect)>; 3] {
    use BenchPart::{Machine, Tabs, Ticket};
    if ui_state.hidden {
        return [Some((Machine, all)), None, None];
    }
    let left_handed = ui_state.preferences.left_handed;
    if narrow {
        let (middle, foot) = all.split_top_bottom_at_fraction(0.48);
        let (left, right, at) = match left_handed {
            false => (Ticket, Tabs, foot.left() + TICKET_WIDTH),
            true => (Tabs, Ticket, foot.right() - TICKET_WIDTH),
        };
        let (left_place, right_place) = foot.split_left_right_at_x(at);
        return [(Machine, middle), (left, left_place), (right, right_place)].map(Some);
    }
    let [(left, left_width), (right, right_width)] = match left_handed {
        false => [(Ticket, TICKET_WIDTH), (Tabs, TABS_WIDTH)],
        true => [(Tabs, TABS_WIDTH), (Ticket, TICKET_WIDTH)],
    };
    let (left_place, rest) = all.split_left_right_at_x(all.left() + left_width);
    let (middle, right_place) = rest.split_left_right_at_x(rest.right() - right_width);
    [(left, left_place), (Machine, middle), (right, right_place)].map(Some)
}

/// What is shown where there is room for one thing at a time.
fn front_ui(ui: &mut Ui, context: &mut PanelContext) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(4.0, 2.0);
        ui.spacing_mut().button_padding.x = 6.0;
        let size = egui::vec2(0.0, 32.0);
        let (machine, ticket) = (context.ui_state.hidden, context.ui_state.ticket_in_front);
        if kit::tab(ui, machine, context.fixed("tab-machine"), size).clicked() {
            context.ui_state.hidden = true;
        }
        let on = !machine && ticket;
        if kit::tab(ui, on, context.fixed("tab-ticket"), size).clicked() {
            (context.ui_state.hidden, context.ui_state.ticket_in_front) = (false, true);
        }
        for tab in TABS {
            let on = !machine && !ticket && context.ui_state.tab == tab;
            if kit::tab(ui, on, tab_text(context, tab), size).clicked() {
                context.ui_state.open_tab(tab);
            }
        }
    });
}

/// A panel of this name in this place.
fn side(ui: &mut Ui, name: &str, place: egui::Rect, contents: impl FnOnce(&mut Ui)) {
    let ground = super::tokens::PANEL;
    (ui.painter()).rect_filled(place, egui::CornerRadius::ZERO, ground);
    let room = UiBuilder::new()
        .id_salt(name)
        .max_rect(place.shrink2(egui::vec2(10.0, 2.0)));
    ui.scope_builder(room, |ui| {
        ui.set_clip_rect(place.intersect(ui.clip_rect()));
        contents(ui);
    });
}

/// The machine with what hands keep down, or the review of what was done at it.
fn middle_ui(
    ui: &mut Ui,
    place: egui::Rect,
    context: &mut PanelContext,
    (pointing, overlay, now): (&Pointing, &ConsoleOverlay, f32),
) {
    let finished = context.bench.view().finished;
    let mut rest = place;
    // No hand does anything at a job that is done.
    if !finished {
        let (hands, below) = place.split_top_bottom_at_y(place.top() + 42.0);
        side(ui, "hands", hands, |ui| stage::hands_ui(ui, context));
        rest = below;
    }
    context.ui_state.stage = Rect::new(rest.left(), rest.top(), rest.right(), rest.bottom());
    let told = !context.ui_state.is_under_examination()
        && match context.bench.film() {
            Some(_) => context.ui_state.film_ways,
            None => finished,
        };
    if context.ui_state.tab == Tab::Score && told {
        review::review_ui(ui, rest, context);
    } else {
        stage::stage_ui(ui, rest, context, pointing, overlay, now);
    }
}

/// Everything at the bench.
fn bench_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    (jobs, class): (&dyn JobSource, &mut ClassRes),
    pointing: &Pointing,
    overlay: &ConsoleOverlay,
    now: f32,
) {
    spoken::follow_machine(context, now);
    kept::trouble_ui(ui, context, jobs);
    class::strip_ui(ui, context, class, jobs);
    let room = BenchRoom::of(ui.available_size());
    context.ui_state.one_at_a_time = room == BenchRoom::Small;
    match room {
        BenchRoom::Wide => fixed(egui::Panel::top("top"), 50.0, (12, 8)),
        BenchRoom::Narrow => fixed(egui::Panel::top("top-narrow"), 92.0, (12, 8)),
        BenchRoom::Small => framed(egui::Panel::top("top-small"), (8, 4)),
    }
    .show(ui, |ui| top::top_ui(ui, context, room));
    film::strip_ui(ui, context, room);
    match room {
        BenchRoom::Wide | BenchRoom::Narrow => {
            let all = ui.available_rect_before_wrap();
            let parts = bench_parts(all, room == BenchRoom::Narrow, context.ui_state);
            for (part, place) in parts.into_iter().flatten() {
                match part {
                    BenchPart::Machine => {
                        middle_ui(ui, place, context, (pointing, overlay, now));
                    }
                    BenchPart::Ticket => {
                        side(ui, "ticket", place, |ui| ticket(ui, context, jobs));
                    }
                    BenchPart::Tabs => side(ui, "tabs", place, |ui| tabs(ui, context)),
                }
            }
        }
        BenchRoom::Small => {
            framed(egui::Panel::top("front"), (8, 2)).show(ui, |ui| front_ui(ui, context));
            let place = ui.available_rect_before_wrap();
            if context.ui_state.hidden {
                middle_ui(ui, place, context, (pointing, overlay, now));
            } else {
                context.ui_state.stage = NOWHERE;
                side(ui, "front page", place, |ui| {
                    match context.ui_state.ticket_in_front {
                        true => ticket(ui, context, jobs),
                        false => tab_page(ui, context),
                    }
                });
            }
        }
    }
    caution::caution_ui(ui.ctx(), context);
    incident::incident_ui(ui.ctx(), context);
    class::paused_ui(ui.ctx(), context);
}

/// Everything ready for work at a bench that was opened.
fn open_job(
    context: &mut PanelContext,
    learner: &Learner,
    opened: Box<dyn BenchPort>,
    class: &ClassRes,
) {
    *context.bench = BenchRes::new(opened);
    let sealed = (context.bench.kept_as()).map_or_else(
        || context.ui_state.opening_class_job.is_some() && class.is_examination(),
        |name| (class.link.as_ref()).is_some_and(|link| link.driver.seals(&name)),
    );
    let sealed = match context.bench.film() {
        Some(film) => (class.link.as_ref()).is_some_and(|link| link.driver.seals(film.name())),
        None => sealed,
    };
    let tab = match context.bench.view().finished || context.bench.film().is_some() {
        true => Tab::Score,
        false => Tab::Sheet,
    };
    let (language, offer, seed, stage) = (
        context.ui_state.language,
        context.ui_state.offer,
        context.ui_state.seed.clone(),
        context.ui_state.stage,
    );
    let leads_back_to = context.ui_state.leads_back_to;
    let (flat, software) = (context.ui_state.flat, context.ui_state.software);
    let preferences = std::mem::take(&mut context.ui_state.preferences);
    let key_bindings = std::mem::take(&mut context.ui_state.key_bindings);
    let job = context.bench.job();
    let broken_off = !context.bench.history().is_empty();
    let class_job = context.ui_state.opening_class_job.take();
    let under_examination = context.ui_state.examined.is_some() || sealed;
    let guidance = if broken_off && job.guide.is_some() && !under_examination {
        Guidance::left_to(learner, &job.file)
    } else {
        context.ui_state.guidance
    };
    let looks_seen = context.bench.view().log.found().len();
    let examined = context.ui_state.examined.take();
    let shown_film = context.ui_state.shown_film.take();
    if let Some(film) = context.bench.film_mut() {
        match shown_film {
            Some(shown) => film.show(shown),
            None if is_still(preferences.motion) => {}
            None => film.play(),
        }
    }
    *context.ui_state = UiState {
        guidance,
        leads_back_to,
        flat,
        software,
        preferences,
        key_bindings,
        looks_seen,
        // Where there is room for one thing, what is on the way comes before the ticket.
        ticket_in_front: context.bench.film().is_none(),
        film_ways: shown_film == Some(ShownFilm::Ways),
        page: (examined.as_ref().and_then(|e| e.sheet.first().copied())).unwrap_or_default(),
        examined,
        sealed,
        class_job,
        visit: context.ui_state.visit + 1,
        language,
        offer,
        seed,
        stage,
        tab,
        ..UiState::default()
    };
}

/// The place of the job after this one on offer.
fn job_after(job: &Job, jobs: &dyn JobSource) -> Option<usize> {
    let mut files = jobs.offers().iter().map(|offer| &offer.course.file);
    let place = files.position(|file| *file == job.file)?;
    (place + 1 < jobs.offers().len()).then_some(place + 1)
}

/// Chooses the job after this one on the start screen, where it is read before it is begun. The last one stays chosen.
fn choose_next_job(context: &mut PanelContext, jobs: &dyn JobSource) {
    let ui_state = &mut *context.ui_state;
    if let Some(next) = job_after(context.bench.job(), jobs) {
        ui_state.offer = next;
        ui_state.seed = jobs.offers()[next].seed.to_string();
    }
    ui_state.offer_seen = None;
    ui_state.content_library = false;
}

#[allow(clippy::too_many_arguments)]
fn draw(
    mut contexts: EguiContexts,
    screen: Res<State<Screen>>,
    mut next: ResMut<NextState<Screen>>,
    (mut jobs, mut workshop): (ResMut<JobSourceRes>, ResMut<WorkshopRes>),
    texts: Res<TextsRes>,
    pointing: Res<Pointing>,
    lens: Res<SceneTarget>,
    (shining, print, grips): (Res<Shining>, Res<SharpPrint>, Res<SceneGrips>),
    (flat, displayed, feel): (Res<FlatScene>, Res<DisplayedMachine>, Res<KnobFeel>),
    time: Res<Time>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    mut learner: ResMut<LearnerRes>,
    (mut drill, mut class): (ResMut<DrillRes>, ResMut<ClassRes>),
    mut shown: bevy::prelude::Local<Option<egui::TextureId>>,
) -> Result {
    let first = shown.is_none();
    let scene = *shown
        .get_or_insert_with(|| contexts.add_image(EguiTextureHandle::Strong(lens.image.clone())));
    let ctx = contexts.ctx_mut()?.clone();
    if first {
        kit::apply_theme(&ctx);
        if !lens.software {
            kit::set_scene(&ctx, scene);
        }
    }
    focus::give_back(&ctx);
    focus::bring_into_sight(&ctx);
    let mut ui = Ui::new(
        ctx.clone(),
        "window".into(),
        UiBuilder::new()
            .layer_id(egui::LayerId::background())
            .max_rect(ctx.viewport_rect()),
    );
    let now = time.elapsed_secs();
    let stage = ui_state.stage;
    let whole = egui::Rect::from_min_max(egui::pos2(0.0, 0.0), egui::pos2(1.0, 1.0));
    let area = egui::Rect::from_min_max(
        egui::pos2(stage.min.x, stage.min.y),
        egui::pos2(stage.max.x, stage.max.y),
    );
    let is_flat = ui_state.flat;
    let flat_ui = |ui: &Ui, room: egui::Rect, context: &PanelContext| {
        let shown = flat::Shown {
            displayed: &displayed,
            feel: &feel,
            pointing: &pointing,
            bench: context.bench,
            ui_state: context.ui_state,
            texts: context.texts,
        };
        flat::paint(&ui.painter().with_clip_rect(room), &flat, &shown);
    };
    if !is_flat {
        ui.painter().image(scene, area, whole, egui::Color32::WHITE);
    }
    if let Some(refusal) = bench.refused.take() {
        ui_state.message = Some((texts.0.refusal(&refusal), now));
    }
    if std::mem::take(&mut bench.refused_in_film) {
        ui_state.message = Some((texts.0.get("film-no-hands"), now));
    }
    if std::mem::take(&mut bench.refused_while_paused) {
        ui_state.message = Some((texts.0.get("paused-no-hands"), now));
    }
    if let Some(stop) = bench.broken_off.take() {
        ui_state.message = Some((texts.0.get(stop.key()), now));
    }
    let mut context = PanelContext {
        texts: &texts.0,
        bench: &mut bench,
        ui_state: &mut ui_state,
    };
    if is_flat && *screen.get() != Screen::Drill {
        flat_ui(&ui, ui.clip_rect(), &context);
    }
    if let Some(message) = kept::take_in(&mut context, jobs.0.as_ref()) {
        context.ui_state.message = Some((message, now));
    }
    if matches!(screen.get(), Screen::Start | Screen::Bench | Screen::Drill) {
        practice::trouble_ui(&mut ui, &context, &learner);
    }
    match screen.get() {
        Screen::Start => {
            let all = ctx.viewport_rect();
            context.ui_state.stage = Rect::new(all.left(), all.top(), all.right(), all.bottom());
            start::start_ui(
                &mut ui,
                &mut context,
                &mut learner,
                (jobs.0.as_ref(), &mut class),
            );
            if std::mem::take(&mut context.ui_state.practise) {
                next.set(Screen::Practice);
            }
            if std::mem::take(&mut context.ui_state.examine) {
                next.set(Screen::Examination);
            }
            if std::mem::take(&mut context.ui_state.write) {
                next.set(Screen::Workshop);
            }
        }
        Screen::Join => {
            let all = ctx.viewport_rect();
            context.ui_state.stage = Rect::new(all.left(), all.top(), all.right(), all.bottom());
            class::join_ui(&mut ui, &mut context, &mut class);
        }
        Screen::Workshop => {
            let library = drill.content();
            let jobs = jobs.0.as_ref();
            let to = workshop::workshop_ui(&mut ui, &mut context, &mut workshop, jobs, &library);
            to.into_iter().for_each(|to| next.set(to));
        }
        Screen::Bench => {
            let jobs = jobs.0.as_ref();
            let overlay = ConsoleOverlay {
                lit: if is_flat { &[] } else { &shining.0 },
                print: if is_flat { &[] } else { &print.0 },
                grips: &grips.0,
            };
            bench_ui(
                &mut ui,
                &mut context,
                (jobs, &mut class),
                &pointing,
                &overlay,
                now,
            );
            let leave = std::mem::take(&mut context.ui_state.leave);
            let examine = std::mem::take(&mut context.ui_state.examine);
            if leave || examine {
                context.bench.mark();
                context.ui_state.kept = None;
                next.set(if context.ui_state.examined.is_some() || examine {
                    Screen::Examination
                } else {
                    context.ui_state.leads_back_to
                });
            }
            if let Some(onward) = context.ui_state.onward.take() {
                context.bench.mark();
                context.ui_state.kept = None;
                match onward {
                    // A job comes by itself once it is set up.
                    Onward::Exercise(exercise) => {
                        let to = practice::begin(&mut context, &mut drill, jobs, &exercise);
                        to.into_iter().for_each(|to| next.set(to));
                    }
                    Onward::WatchAgain => {
                        let name = context.bench.kept_as();
                        if let (Some(attempts), Some(name)) = (jobs.attempts(), name) {
                            let record = RecordedAttempt::kept(attempts, &name);
                            context.ui_state.open(jobs.watch(record));
                        }
                    }
                    Onward::NextJob => {
                        choose_next_job(&mut context, jobs);
                        next.set(Screen::Start);
                    }
                }
            }
        }
        Screen::Practice => {
            let jobs = jobs.0.as_ref();
            if let Some(to) =
                practice::practice_ui(&mut ui, &mut context, &mut learner, &mut drill, jobs)
            {
                next.set(to);
            }
        }
        Screen::Examination => {
            let jobs = jobs.0.as_ref();
            context.ui_state.examine = false;
            if let Some(to) = examination::examination_ui(&mut ui, &mut context, &mut learner, jobs)
            {
                next.set(to);
            }
        }
        Screen::Drill => {
            if context.bench.class_paused {
                class::paused_ui(ui.ctx(), &context);
            } else if let Some(to) =
                drill::drill_ui(&mut ui, &mut context, &mut learner, &mut drill)
            {
                next.set(to);
            }
            // In the place that the question has left for it.
            if is_flat && displayed.of_drill {
                flat_ui(&ui, drill::question_room(&ctx), &context);
            }
        }
    }
    if context.ui_state.keys && *screen.get() != Screen::Drill {
        settings::settings_ui(&ctx, &mut context, &mut learner);
    }
    match context.ui_state.opened() {
        Some(Ok(opened)) => {
            match screen.get() {
                from @ (Screen::Start | Screen::Practice | Screen::Workshop) => {
                    context.ui_state.leads_back_to = *from;
                }
                // Once more, the second visit: from where the first was begun. An examination knows its own jobs.
                Screen::Bench | Screen::Drill | Screen::Examination | Screen::Join => {}
            }
            open_job(&mut context, learner.learner(), opened, &class);
            next.set(Screen::Bench);
        }
        Some(Err(error)) => {
            // The screen that it was opened from shows it.
            context.ui_state.message = Some((error.words(context.texts), now));
            context.ui_state.opening_class_job = None;
            if context.ui_state.examined.take().is_none() {
                next.set(Screen::Start);
            }
        }
        None => {}
    }
    if let Some(kept) = workshop.kept.take() {
        jobs.0.take_in(kept);
    }
    if let Some(kept) = workshop.kept_board.take()
        && let Some(content) = jobs.0.take_in_board(kept)
    {
        drill.take_content(content);
    }
    let place = egui::pos2(pointing.at.x, pointing.at.y);
    ui_state.typing = ctx.text_edit_focused() || egui::Popup::is_any_open(&ctx);
    if *screen.get() == Screen::Bench && !ui_state.typing {
        keep_focus(&ctx);
    }
    focus::ring(&ctx);
    ui_state.covered = ctx
        .layer_id_at(place)
        .is_some_and(|layer| layer.order != egui::Order::Background);
    Ok(())
}

/// Arrow keys turn the knob at the bench; they do not take the focus from the button that has it.
fn keep_focus(ctx: &egui::Context) {
    let arrows = egui::EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..egui::EventFilter::default()
    };
    ctx.memory_mut(|memory| {
        if let Some(id) = memory.focused() {
            memory.set_focus_lock_filter(id, arrows);
        }
    });
}

fn speak(ui_state: Res<UiState>, bench: Res<BenchRes>, mut texts: ResMut<TextsRes>) {
    let volts = bench.job().mains_v;
    if texts.0.language() != ui_state.language || texts.0.supply_volts() != Some(volts) {
        texts.0 = Texts::load(ui_state.language).for_supply(volts);
    }
}

/// The panels.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, speak)
        .add_systems(
            PostUpdate,
            (
                watch_flashing_lamps.run_if(in_state(Screen::Drill)),
                watch_console.run_if(in_state(Screen::Workshop)),
            ),
        )
        .add_systems(
            EguiPrimaryContextPass,
            draw.run_if(resource_exists::<TextsRes>),
        );
}

/// Lamps that flash in a question change by themselves.
fn watch_flashing_lamps(drill: Res<DrillRes>, mut next: ResMut<NextFrame>) {
    if drill.lamps_flash() {
        next.watch();
    }
}

/// The same on the console of a board that is being described.
fn watch_console(workshop: Res<WorkshopRes>, mut next: ResMut<NextFrame>) {
    let open = workshop.board.as_ref();
    if open.is_some_and(|open| open.board().lamps.signs.take_time()) {
        next.watch();
    }
}
