//! Spot the hazard: the picture of a bench, each thing in it with its number and its name, and why the one is wrong.

use super::hazard_picture::{self, HazardPicture};
use super::{Look, MARGIN, NARROW, foot_height, mark, option_ui, place_text, top_height};
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    Align, Color32, CornerRadius, FontId, Label, Layout, Rect, Response, RichText, Sense, Stroke,
    StrokeKind, Ui, WidgetInfo, WidgetType, vec2,
};
use detent_content::Value;
use detent_training::practice::drill::hazard::{HazardTask, ObjectState};
use detent_training::practice::drill::safe_work::Marked;

/// Room below the picture for what is seen of a thing, and for why it is wrong.
const TOLD_HEIGHT: f32 = 84.0;
/// The lowest picture in which things can be told apart.
const LEAST_HEIGHT: f32 = 280.0;
/// Height of a name, and the room in it that the number or the mark takes.
const NAME_HEIGHT: f32 = 24.0;
const NUMBER_WIDTH: f32 = 24.0;

/// Draws a picture with what was chosen and, once there is one, its judgement. Returns the thing that was just chosen,
/// by its place.
pub(super) fn hazard_ui(
    ui: &mut Ui,
    context: &PanelContext,
    task: &HazardTask,
    given: Option<usize>,
    marked: Option<&Marked>,
) -> Option<usize> {
    let top = ui.cursor().top();
    let work = RichText::new(context.texts.planned_work(task.work)).size(18.0);
    ui.add(Label::new(work).wrap());
    let ask = RichText::new(context.text("drill-safe-ask-hazard")).size(18.0);
    let ask = Label::new(ask.color(t::AMBER)).wrap();
    if ui.available_width() < NARROW {
        ui.add(ask);
        kit::quiet(ui, place_text(context, &task.place));
    } else {
        ui.horizontal(|ui| {
            ui.add(ask);
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                kit::quiet(ui, place_text(context, &task.place));
            });
        });
    }
    let used = ui.cursor().top() - top;
    let window = ui.ctx().content_rect().height();
    let most =
        window - top_height(ui.ctx()) - foot_height(ui.ctx()) - 2.0 * MARGIN.1 - used - TOLD_HEIGHT;
    let height = hazard_picture::height(ui.available_width(), most.max(LEAST_HEIGHT));
    let (room, painter) = kit::canvas(ui, height);
    let picture = HazardPicture::new(&painter, room, task, context.texts);
    picture.paint();
    let should = match marked {
        Some(Marked::Choice { should, .. }) => Some(*should),
        Some(Marked::Order(_)) | None => None,
    };
    let (mut looked_at, mut chosen) = (given, None);
    for (n, state) in task.objects.iter().enumerate() {
        let look = Look::of(n, given, should);
        let thing = thing_ui(ui, context, &picture, (n, *state), look);
        if thing.hovered() || thing.has_focus() {
            looked_at = Some(n);
        }
        if thing.clicked() {
            chosen = Some(n);
        }
    }
    if ui.available_width() < NARROW {
        chosen = names_ui(ui, context, task, given, should).or(chosen);
    }
    match (should, given) {
        (Some(should), Some(given)) => told_ui(ui, context, task, given, should),
        _ => {
            let state = looked_at.and_then(|n| task.objects.get(n));
            let text = match state {
                Some(state) => RichText::new(context.texts.object_state(*state, task.card_v)),
                None => RichText::new(context.text("drill-safe-look-closer")).color(t::QUIET),
            };
            ui.add(Label::new(text).wrap());
        }
    }
    chosen
}

/// The names in two columns, where the picture has room for their numbers only.
fn names_ui(
    ui: &mut Ui,
    context: &PanelContext,
    task: &HazardTask,
    given: Option<usize>,
    should: Option<usize>,
) -> Option<usize> {
    let mut chosen = None;
    let half = task.objects.len().div_ceil(2);
    ui.columns(2, |columns| {
        for (n, state) in task.objects.iter().enumerate() {
            let ui = &mut columns[usize::from(n >= half)];
            let name = context.texts.bench_object(state.object());
            let look = Look::of(n, given, should);
            if option_ui(ui, (n + 1) % 10, look, &name, |_| {}).clicked() {
                chosen = Some(n);
            }
        }
    });
    chosen
}

/// A thing of the picture to be chosen: itself, or its name beside it.
fn thing_ui(
    ui: &Ui,
    context: &PanelContext,
    picture: &HazardPicture<'_>,
    (n, state): (usize, ObjectState),
    look: Look,
) -> Response {
    let name = context.texts.bench_object(state.object());
    let id = ui.id().with(("thing", n));
    let is_open = matches!(look, Look::Open(_));
    let (sense, plain) = match is_open {
        true => (Sense::click(), Sense::CLICK),
        false => (Sense::hover(), Sense::hover()),
    };
    let place = picture.place(state);
    let thing = ui.interact(place, id, sense);
    let plate = name_place(ui, picture, state, &name);
    let response = thing.union(ui.interact(plate, id.with("name"), plain));
    let on = matches!(look, Look::Open(true) | Look::Right(true) | Look::Wrong);
    let text = context.texts.object_state(state, picture.card_v());
    response.widget_info(|| {
        let text = format!("{name}: {text}");
        WidgetInfo::selected(WidgetType::RadioButton, is_open, on, text)
    });
    let (edge, width) = look.edge();
    let pointed = is_open && (response.hovered() || response.has_focus());
    let outline = match look {
        Look::Open(false) if pointed => Some(Stroke::new(2.0, t::SKY)),
        Look::Open(false) | Look::Other => None,
        Look::Open(true) | Look::Right(_) | Look::Wrong => Some(Stroke::new(width, edge)),
    };
    if let Some(ink) = outline {
        let corners = CornerRadius::same(8);
        (ui.painter()).rect_stroke(place, corners, ink, StrokeKind::Inside);
    }
    name_ui(
        ui,
        plate,
        (n, &name),
        look,
        if pointed { t::SKY } else { edge },
    );
    response
}

/// The room of a name; where there is little, only its number stands there, on the thing itself.
fn name_place(ui: &Ui, picture: &HazardPicture<'_>, state: ObjectState, name: &str) -> Rect {
    if ui.available_width() < NARROW {
        let corner = picture.place(state).min;
        return Rect::from_min_size(corner, vec2(NUMBER_WIDTH, NAME_HEIGHT));
    }
    let (at, anchor) = picture.label(state);
    let width = kit::width(ui, name) + 8.0;
    anchor.anchor_size(at, vec2(NUMBER_WIDTH + width, NAME_HEIGHT))
}

/// A name with the digit that chooses it, or the mark of its judgement.
fn name_ui(ui: &Ui, plate: Rect, (n, name): (usize, &str), look: Look, edge: Color32) {
    let fill = if look == Look::Open(true) {
        t::FIELD_HOT
    } else {
        t::CARD
    };
    let painter = ui.painter();
    let corners = CornerRadius::same(6);
    let ink = Stroke::new(1.5, edge);
    painter.rect(plate, corners, fill, ink, StrokeKind::Inside);
    let number = plate.left_center() + vec2(NUMBER_WIDTH / 2.0, 0.0);
    match look {
        Look::Right(_) => mark(ui, number, true),
        Look::Wrong => mark(ui, number, false),
        Look::Open(_) | Look::Other => {
            let digit = (n + 1) % 10;
            let middle = bevy_egui::egui::Align2::CENTER_CENTER;
            let font = FontId::proportional(t::BODY);
            painter.text(number, middle, digit, font, t::AMBER);
        }
    }
    if plate.width() > NUMBER_WIDTH + 1.0 {
        let from = plate.left_center() + vec2(NUMBER_WIDTH, 0.0);
        let left = bevy_egui::egui::Align2::LEFT_CENTER;
        painter.text(from, left, name, FontId::proportional(t::BODY), t::TEXT);
    }
}

/// Why the one is wrong and, where another was chosen, that this one is not.
fn told_ui(ui: &mut Ui, context: &PanelContext, task: &HazardTask, given: usize, should: usize) {
    let state = |n: usize| task.objects.get(n).copied();
    if let Some(hazard) = state(should) {
        let args = [
            (
                "object",
                Value::from(context.texts.bench_object(hazard.object())),
            ),
            ("why", Value::from(context.texts.hazard(hazard))),
        ];
        let text = context.with("drill-safe-hazard", &args);
        ui.add(Label::new(text).wrap());
    }
    if let Some(chosen) = state(given).filter(|_| given != should) {
        let name = context.texts.bench_object(chosen.object());
        let text = context.with("drill-safe-sound", &[("object", Value::from(name))]);
        kit::quiet(ui, text);
    }
}
