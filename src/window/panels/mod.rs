//! The panels over the scene.

mod caution;
mod doubt;
mod drill;
mod help;
mod kept;
pub mod kit;
mod look;
mod meter;
mod misread;
mod parts;
mod practice;
mod report;
mod review;
mod score;
mod sheet;
mod stage;
mod start;
#[cfg(test)]
mod tests;
mod ticket;
mod top;

use super::pick::Pointing;
use super::port::{BenchPort, Shop};
use super::practice::{DrillRes, LearnerRes};
use super::scene::console::lamps::{Shine, Shining};
use super::state::{BenchRes, Desk, Screen, ShopRes, Tab, TextsRes};
use super::views::Lens;
use bevy::prelude::{
    App, IntoScheduleConfigs, NextState, Rect, Res, ResMut, Result, State, Time, Update,
    resource_exists,
};
use bevy_egui::egui::{self, Frame, Margin, ScrollArea, Ui, UiBuilder};
use bevy_egui::{EguiContexts, EguiPrimaryContextPass, EguiTextureHandle};
use detent_content::{Texts, Value, Words};
use detent_simulation::plant::{Component as Part, Pin};
use detent_training::bench::{Action, Refusal};
use detent_training::reason::Review;

/// What every panel draws from and writes to.
pub struct Face<'a> {
    /// Texts.
    pub texts: &'a Texts,
    /// Bench.
    pub bench: &'a mut BenchRes,
    /// What the panels remember.
    pub desk: &'a mut Desk,
}

impl Face<'_> {
    /// The text under `key`.
    pub fn text(&self, key: &str) -> String {
        self.texts.get(key)
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
    fn words<'a>(&'a self, review: &'a Review) -> Words<'a> {
        let job = self.bench.job();
        Words::of(review, self.texts, &job.parts, Some(&job.board))
    }

    /// Do `action` at the next tick.
    pub fn act(&mut self, action: Action) {
        self.bench.push(action);
    }
}

/// Why the bench refused, in words.
fn refusal_text(texts: &Texts, refusal: &Refusal) -> String {
    match refusal {
        Refusal::CabinetClosed => texts.get("refusal-cabinet-closed"),
        Refusal::LidClosed => texts.get("refusal-lid-closed"),
        Refusal::NeedsPart(_) => texts.get("refusal-needs-part"),
        Refusal::LidLocked => texts.get("refusal-lid-locked"),
        Refusal::NoButton(_) => texts.get("refusal-no-button"),
        Refusal::NoConnector(_) => texts.get("refusal-no-connector"),
        Refusal::NoPart(number) => {
            texts.with("refusal-no-part", &[("part", Value::from(number.as_str()))])
        }
        Refusal::DoesNotFit(number) => texts.with(
            "refusal-does-not-fit",
            &[("part", Value::from(number.as_str()))],
        ),
        Refusal::NotInHand(number) => texts.with(
            "refusal-not-in-hand",
            &[("part", Value::from(number.as_str()))],
        ),
        Refusal::NoCause(_) => texts.get("refusal-no-cause"),
        Refusal::NothingToHold => texts.get("refusal-nothing-to-hold"),
        Refusal::NoReading(_) => texts.get("refusal-no-reading"),
        Refusal::Finished => texts.get("refusal-finished"),
        Refusal::PlugInOutlet => texts.get("refusal-plug-in-outlet"),
        Refusal::AlreadySo => texts.get("refusal-already-so"),
    }
}

fn tabs(ui: &mut Ui, face: &mut Face) {
    let tabs = [
        (Tab::Sheet, "tab-sheet"),
        (Tab::Meter, "tab-meter"),
        (Tab::Parts, "tab-parts"),
        (Tab::Report, "tab-report"),
        (Tab::Score, "tab-score"),
    ];
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 4.0;
        let width = (ui.available_width() - 16.0) / 5.0;
        for (tab, key) in tabs {
            if kit::choice_sized(
                ui,
                face.desk.tab == tab,
                face.text(key),
                egui::vec2(width, 34.0),
            )
            .clicked()
            {
                face.desk.tab = tab;
            }
        }
    });
    ui.add_space(6.0);
    ScrollArea::vertical()
        .id_salt(format!(
            "tab-{:?}-{}",
            face.desk.tab,
            face.bench.view().finished
        ))
        .auto_shrink(false)
        .show(ui, |ui| match face.desk.tab {
            Tab::Sheet => sheet::sheet_ui(ui, face),
            Tab::Meter => meter::meter_ui(ui, face),
            Tab::Parts => parts::parts_ui(ui, face),
            Tab::Report => report::report_ui(ui, face),
            Tab::Score => score::score_ui(ui, face),
        });
}

/// Narrower than this, the side panels stand below the scene.
const NARROW: f32 = 1000.0;

/// A panel of this size, with so much room left free across and up inside.
fn fixed(panel: egui::Panel, size: f32, (across, up): (i8, i8)) -> egui::Panel {
    let frame = Frame::new()
        .fill(super::tokens::PANEL)
        .inner_margin(Margin::symmetric(across, up));
    panel
        .exact_size(size)
        .resizable(false)
        .frame(frame)
        .show_separator_line(false)
}

/// The job ticket, with what can be done about the attempt itself.
fn ticket(ui: &mut Ui, face: &mut Face, shop: &dyn Shop) {
    ScrollArea::vertical()
        .id_salt("ticket")
        .auto_shrink(false)
        .show(ui, |ui| {
            ticket::ticket_ui(ui, face);
            kept::save_ui(ui, face, shop);
        });
}

/// Everything at the bench.
fn bench_ui(
    ui: &mut Ui,
    face: &mut Face,
    shop: &dyn Shop,
    pointing: &Pointing,
    shining: &[Shine],
    now: f32,
) {
    kept::trouble_ui(ui, face, shop);
    let narrow = ui.available_width() < NARROW;
    fixed(
        egui::Panel::top("top"),
        if narrow { 92.0 } else { 50.0 },
        (12, 8),
    )
    .show(ui, |ui| top::top_ui(ui, face, narrow));
    let left = |margin| fixed(egui::Panel::left("ticket"), 272.0, margin);
    if !face.desk.hidden && narrow {
        let height = ui.available_height() * 0.52;
        fixed(egui::Panel::bottom("foot"), height, (10, 6)).show(ui, |ui| {
            left((0, 0)).show(ui, |ui| ticket(ui, face, shop));
            ui.add_space(6.0);
            tabs(ui, face);
        });
    } else if !face.desk.hidden {
        left((10, 2)).show(ui, |ui| ticket(ui, face, shop));
        fixed(egui::Panel::right("tabs"), 412.0, (10, 2)).show(ui, |ui| tabs(ui, face));
    }
    fixed(egui::Panel::top("hands"), 42.0, (10, 4)).show(ui, |ui| stage::hands_ui(ui, face));
    let rest = ui.available_rect_before_wrap();
    face.desk.stage = Rect::new(rest.left(), rest.top(), rest.right(), rest.bottom());
    if face.desk.tab == Tab::Score && face.bench.view().finished {
        review::review_ui(ui, rest, face);
    } else {
        stage::stage_ui(ui, rest, face, pointing, shining, now);
    }
    caution::caution_ui(ui.ctx(), face);
    if face.desk.keys {
        help::help_ui(ui.ctx(), face);
    }
}

/// Everything ready for work at a bench that was opened.
fn sit_down(face: &mut Face, opened: Box<dyn BenchPort>) {
    *face.bench = BenchRes::new(opened);
    let tab = match face.bench.view().finished {
        true => Tab::Score,
        false => Tab::Sheet,
    };
    let (language, offer, seed, stage) = (
        face.desk.language,
        face.desk.offer,
        face.desk.seed.clone(),
        face.desk.stage,
    );
    *face.desk = Desk {
        language,
        offer,
        seed,
        stage,
        tab,
        ..Desk::default()
    };
}

#[allow(clippy::too_many_arguments)]
fn draw(
    mut contexts: EguiContexts,
    screen: Res<State<Screen>>,
    mut next: ResMut<NextState<Screen>>,
    shop: Res<ShopRes>,
    texts: Res<TextsRes>,
    pointing: Res<Pointing>,
    lens: Res<Lens>,
    shining: Res<Shining>,
    time: Res<Time>,
    mut bench: ResMut<BenchRes>,
    mut desk: ResMut<Desk>,
    mut learner: ResMut<LearnerRes>,
    mut drill: ResMut<DrillRes>,
    mut shown: bevy::prelude::Local<Option<egui::TextureId>>,
) -> Result {
    let first = shown.is_none();
    let scene = *shown
        .get_or_insert_with(|| contexts.add_image(EguiTextureHandle::Strong(lens.image.clone())));
    let ctx = contexts.ctx_mut()?.clone();
    if first {
        kit::dress(&ctx);
    }
    let mut ui = Ui::new(
        ctx.clone(),
        "window".into(),
        UiBuilder::new()
            .layer_id(egui::LayerId::background())
            .max_rect(ctx.viewport_rect()),
    );
    let now = time.elapsed_secs();
    let stage = desk.stage;
    let whole = egui::Rect::from_min_max(egui::pos2(0.0, 0.0), egui::pos2(1.0, 1.0));
    let area = egui::Rect::from_min_max(
        egui::pos2(stage.min.x, stage.min.y),
        egui::pos2(stage.max.x, stage.max.y),
    );
    ui.painter().image(scene, area, whole, egui::Color32::WHITE);
    if let Some(refusal) = bench.refused.take() {
        desk.message = Some((refusal_text(&texts.0, &refusal), now));
    }
    let mut face = Face {
        texts: &texts.0,
        bench: &mut bench,
        desk: &mut desk,
    };
    if let Some(message) = kept::take_in(&mut face, shop.0.as_ref()) {
        face.desk.message = Some((message, now));
    }
    if matches!(screen.get(), Screen::Bench | Screen::Drill) {
        practice::trouble_ui(&mut ui, &face, &learner);
    }
    match screen.get() {
        Screen::Start => {
            let all = ctx.viewport_rect();
            face.desk.stage = Rect::new(all.left(), all.top(), all.right(), all.bottom());
            match start::start_ui(&mut ui, &mut face, shop.0.as_ref()) {
                Some(Ok(opened)) => {
                    sit_down(&mut face, opened);
                    next.set(Screen::Bench);
                }
                Some(Err(problem)) => face.desk.message = Some((problem, now)),
                None => {}
            }
            if std::mem::take(&mut face.desk.practise) {
                next.set(Screen::Practice);
            }
        }
        Screen::Bench => {
            let shop = shop.0.as_ref();
            bench_ui(&mut ui, &mut face, shop, &pointing, &shining.0, now);
            if face.desk.leave {
                face.desk.leave = false;
                face.bench.mark();
                face.desk.kept = None;
                next.set(Screen::Start);
            }
        }
        Screen::Practice => {
            let shop = shop.0.as_ref();
            if let Some(to) =
                practice::practice_ui(&mut ui, &mut face, &mut learner, &mut drill, shop)
            {
                next.set(to);
            }
        }
        Screen::Drill => {
            if let Some(to) = drill::drill_ui(&mut ui, &mut face, &mut learner, &mut drill) {
                next.set(to);
            }
        }
    }
    let place = egui::pos2(pointing.at.x, pointing.at.y);
    desk.covered = ctx
        .layer_id_at(place)
        .is_some_and(|layer| layer.order != egui::Order::Background);
    Ok(())
}

fn speak(desk: Res<Desk>, mut texts: ResMut<TextsRes>) {
    if texts.0.language() != desk.language {
        texts.0 = Texts::load(desk.language);
    }
}

/// The panels.
pub fn plugin(app: &mut App) {
    app.add_systems(Update, speak).add_systems(
        EguiPrimaryContextPass,
        draw.run_if(resource_exists::<TextsRes>),
    );
}
