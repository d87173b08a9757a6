//! A drill: one question after the other, each judged at once, and a summary at the end.

pub(super) mod entry;
mod hazard;
mod hazard_picture;
mod lamps;
mod look_up;
mod meter;
mod next_test;
mod part;
mod proof;
mod safe_work;
mod summary;
#[cfg(test)]
mod tests;

use super::{PanelContext, fixed, kit};
use crate::drill::{Asked, Sitting};
use crate::practice::{DrillRes, LearnerRes, now};
use crate::state::Screen;
use crate::tokens as t;
use bevy_egui::egui::{
    self, Align, Button, Color32, CornerRadius, Frame, Key, Label, Layout, Margin, Modifiers,
    Response, RichText, ScrollArea, Sense, Stroke, StrokeKind, Ui, pos2, vec2,
};
use detent_content::{ContentLibrary, Value};
use detent_training::practice::drill::SuppliedBoardId;
use detent_training::practice::{Answer, Skill};

/// Narrower than this, what stands side by side stands one above the other.
const NARROW: f32 = 900.0;
/// Narrower than these, the head and the foot take two lines.
const SLIM_HEAD: f32 = 720.0;
const SLIM: f32 = 640.0;

fn has_slim_head(ctx: &egui::Context) -> bool {
    ctx.content_rect().width() < SLIM_HEAD
}

fn is_slim(ctx: &egui::Context) -> bool {
    ctx.content_rect().width() < SLIM
}

/// Height of what stands above a question, points.
fn top_height(ctx: &egui::Context) -> f32 {
    if has_slim_head(ctx) { 84.0 } else { 54.0 }
}

/// Height of what stands below it, points.
fn foot_height(ctx: &egui::Context) -> f32 {
    match has_foot_of_two_lines(ctx) {
        true => 136.0,
        // The hint beside the button takes a line more where there is little room for it.
        false if is_slim(ctx) => 72.0,
        false => 62.0,
    }
}

/// Whether the button stands below the hint: in a low window it would leave the question no room.
fn has_foot_of_two_lines(ctx: &egui::Context) -> bool {
    const LOW: f32 = 400.0;
    is_slim(ctx) && ctx.content_rect().height() >= LOW
}

/// What is left for a question between head and foot.
pub(super) fn question_room(ctx: &egui::Context) -> egui::Rect {
    let mut room = ctx.content_rect();
    room.min.y += top_height(ctx);
    room.max.y -= foot_height(ctx);
    room
}

/// The room around a question across and up.
const MARGIN: (f32, f32) = (16.0, 12.0);

/// Where to go from here, if anywhere.
pub(super) fn drill_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    learner: &mut LearnerRes,
    drill: &mut DrillRes,
) -> Option<Screen> {
    ui.painter()
        .rect_filled(ui.max_rect(), CornerRadius::ZERO, t::INK);
    let leaves = ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    let content_library = drill.content();
    let (Some(sitting), false) = (drill.sitting(), leaves) else {
        return Some(drill.leads_back_to());
    };
    let enter =
        takes_enter(sitting) && ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Enter));
    let time_s = ui.input(|i| i.time);
    let since_s = *sitting.since_s.get_or_insert(time_s);
    let took_s = time_s - since_s;
    let over = sitting.round.is_over();
    let mut leave = fixed(egui::Panel::top("drill-top"), top_height(ui.ctx()), (16, 8))
        .show(ui, |ui| top_ui(ui, context, sitting))
        .inner;
    let mut next = false;
    fixed(
        egui::Panel::bottom("drill-foot"),
        foot_height(ui.ctx()),
        (16, 10),
    )
    .show(ui, |ui| {
        match &sitting.asked {
            _ if over && sitting.recorded.is_some() => {
                leave |= main_ui(ui, context.text("seat-back"), true) || enter;
            }
            _ if over => {
                let (again, back) = summary::choices_ui(ui, context);
                next = again || enter;
                leave |= back;
            }
            Asked::Nothing => leave |= main_ui(ui, context.text("drill-leave"), true) || enter,
            asked => {
                // A try at a gesture is over when it is over.
                let by_itself = matches!(asked, Asked::Entry(_)) && sitting.done.is_none();
                let key = if sitting.done.is_some() {
                    "drill-next"
                } else {
                    "drill-check"
                };
                let ready = sitting.done.is_some() || asked.is_ready();
                let pressed = !by_itself && main_ui(ui, context.text(key), ready);
                next = ready && (pressed || enter || by_itself);
                verdict_ui(ui, context, sitting);
            }
        }
    });
    ScrollArea::vertical()
        .id_salt((sitting.skill.name(), sitting.round.done().len()))
        .auto_shrink(false)
        .show(ui, |ui| {
            Frame::new()
                .inner_margin(Margin::symmetric(MARGIN.0 as i8, MARGIN.1 as i8))
                .show(ui, |ui| {
                    body_ui(ui, context, &content_library, sitting, took_s)
                });
            kit::scroll_by_keys(ui, true);
        });
    if leave {
        return Some(drill.leads_back_to());
    }
    if next && over {
        drill.again();
    } else if next && sitting.done.is_some() {
        drill.go_on();
    } else if next && let Some((done, detail)) = sitting.check(took_s) {
        let answer = Answer {
            at: now(),
            skill: sitting.skill,
            right: done.right,
            took_s: done.took_s,
            detail,
        };
        sitting.record(done, answer.at);
        if sitting.is_sealed() {
            drill.kept_back.push(answer);
            drill.go_on();
        } else {
            learner.note(answer);
        }
    }
    None
}

/// Enter goes on where there is something to go on to; else it is for whatever has the focus.
fn takes_enter(sitting: &Sitting) -> bool {
    let whole = sitting.done.is_some() || sitting.asked.is_ready();
    whole || sitting.round.is_over() || matches!(sitting.asked, Asked::Nothing)
}

/// The skill, how far the round has come, and the way out: true to take it.
fn top_ui(ui: &mut Ui, context: &PanelContext, sitting: &Sitting) -> bool {
    let name = context.text(&format!("skill-{}", sitting.skill));
    let name = RichText::new(name).size(t::HEADING).color(t::AMBER);
    let leave = |ui: &mut Ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            kit::go_sized(ui, context.text("drill-leave-key"), egui::Vec2::ZERO).clicked()
        })
        .inner
    };
    if has_slim_head(ui.ctx()) {
        let left = ui.horizontal(|ui| {
            ui.label(name);
            leave(ui)
        });
        ui.horizontal(|ui| progress_ui(ui, context, sitting));
        return left.inner;
    }
    let left = ui.horizontal_centered(|ui| {
        ui.label(name);
        ui.add_space(8.0);
        progress_ui(ui, context, sitting);
        leave(ui)
    });
    left.inner
}

/// How far the round has come.
fn progress_ui(ui: &mut Ui, context: &PanelContext, sitting: &Sitting) {
    let done = sitting.round.done();
    let questions = sitting.round.questions();
    // More of them stand closer together.
    let step = 18.0_f32.min(10.0 * 18.0 / questions as f32);
    let size = vec2(questions as f32 * step, 22.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    for n in 0..questions {
        let middle = pos2(rect.left() + step * (n as f32 + 0.5), rect.center().y);
        let answer = done
            .get(n)
            .copied()
            .or(sitting.done.filter(|_| n == done.len()));
        match answer {
            Some(_) if sitting.is_sealed() => {
                ui.painter()
                    .circle_filled(middle, 5.0_f32.min(step / 2.0), t::SKY);
            }
            Some(answer) => mark(ui, middle, answer.right),
            None => {
                let edge = if n == done.len() { t::AMBER } else { t::EDGE };
                ui.painter()
                    .circle_stroke(middle, 5.0_f32.min(step / 2.0), Stroke::new(2.0, edge));
            }
        }
    }
    if !sitting.round.is_over() {
        let (number, of) = (Value::from(done.len() + 1), Value::from(questions));
        let text = context.with("drill-question", &[("number", number), ("of", of)]);
        ui.label(RichText::new(text).size(t::SMALL).color(t::QUIET));
    }
}

/// A tick or a cross.
fn mark(ui: &Ui, middle: egui::Pos2, right: bool) {
    let at = |x: f32, y: f32| middle + vec2(x, y);
    if right {
        let points = [at(-6.0, 0.0), at(-1.5, 5.0), at(6.0, -5.0)];
        let line = egui::Shape::line(points.to_vec(), Stroke::new(2.6, t::GOOD));
        ui.painter().add(line);
    } else {
        let ink = Stroke::new(2.6, t::BAD);
        ui.painter()
            .line_segment([at(-5.0, -5.0), at(5.0, 5.0)], ink);
        ui.painter()
            .line_segment([at(-5.0, 5.0), at(5.0, -5.0)], ink);
    }
}

/// The one button at the foot.
fn main_ui(ui: &mut Ui, text: String, enabled: bool) -> bool {
    let room = ui.max_rect();
    let (width, top) = match has_foot_of_two_lines(ui.ctx()) {
        true => (room.width(), room.bottom() - 44.0),
        false => (220.0_f32.min(room.width()), room.top()),
    };
    let rect = egui::Rect::from_min_size(pos2(room.right() - width, top), vec2(width, 40.0));
    let mut inside = ui.new_child(egui::UiBuilder::new().max_rect(rect));
    kit::main_button(&mut inside, text, enabled).clicked()
}

/// What came of the answer, beside the button.
fn verdict_ui(ui: &mut Ui, context: &PanelContext, sitting: &Sitting) {
    let Some(done) = sitting.done else {
        let hint = context.text(&format!("drill-hint-{}", sitting.skill));
        // Beside the button; the panel itself is as wide as the window.
        let mut room = ui.max_rect();
        match has_foot_of_two_lines(ui.ctx()) {
            true => room.max.y -= 48.0,
            false => room.max.x -= 236.0,
        }
        let mut beside = ui.new_child(egui::UiBuilder::new().max_rect(room));
        beside.add(Label::new(RichText::new(hint).size(t::SMALL).color(t::QUIET)).wrap());
        return;
    };
    let mut room = ui.max_rect();
    if has_foot_of_two_lines(ui.ctx()) {
        room.max.y -= 48.0;
    }
    let mut ui = ui.new_child(egui::UiBuilder::new().max_rect(room));
    ui.horizontal_centered(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(22.0, 26.0), Sense::hover());
        mark(ui, rect.center(), done.right);
        let (key, colour) = match (sitting.skill, done.right) {
            (Skill::EntryTiming, true) => ("drill-entered", t::GOOD),
            (Skill::EntryTiming, false) => ("drill-not-entered", t::BAD),
            (_, true) => ("drill-right", t::GOOD),
            (_, false) => ("drill-wrong", t::BAD),
        };
        ui.label(
            RichText::new(context.text(key))
                .size(t::HEADING)
                .color(colour),
        );
        kit::quiet(ui, seconds(context, done.took_s));
    });
}

fn body_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    content_library: &ContentLibrary,
    sitting: &mut Sitting,
    took_s: f64,
) {
    if sitting.round.is_over() {
        if sitting.is_sealed() {
            ui.label(context.text("seat-sealed-handed-in"));
        } else {
            summary::summary_ui(ui, context, sitting);
        }
        return;
    }
    match &mut sitting.asked {
        Asked::Lamps(q) => lamps::lamps_ui(ui, context, q, took_s),
        Asked::Entry(trial) => entry::entry_ui(ui, context, trial, &sitting.tries),
        Asked::Meter(q) => meter::meter_ui(ui, context, q),
        Asked::LookUp(q) => look_up::look_up_ui(ui, context, q),
        Asked::NextTest(q) => {
            let board = content_library.board(&q.task.place.board);
            next_test::next_test_ui(ui, context, board, q);
        }
        Asked::Part(q) => part::part_ui(ui, context, q),
        Asked::SafeWork(q) => safe_work::safe_work_ui(ui, context, q),
        Asked::Proof(q) => {
            let board = content_library.board(&q.task.place().board);
            proof::proof_ui(ui, context, board, q);
        }
        Asked::Nothing => {
            ui.label(context.text("drill-nothing"));
        }
    }
}

/// A time in words.
fn seconds(context: &PanelContext, took_s: f64) -> String {
    let seconds = Value::from((took_s * 10.0).round() / 10.0);
    context.with("drill-seconds", &[("seconds", seconds)])
}

/// The board and the supply that a question is about.
fn place_text(context: &PanelContext, place: &SuppliedBoardId) -> String {
    let rating = place.mains.rating();
    let board = context.text(&format!("board-{}", place.board));
    format!("{board} · {:.0} V, {:.0} Hz", rating.volts, rating.hz)
}

/// Which of two things stands above the other where there is no room for both side by side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Above {
    Left,
    Right,
}

/// Two things about `of` side by side, or one below the other.
fn beside<T>(
    ui: &mut Ui,
    context: &mut PanelContext,
    of: &mut T,
    above: Above,
    left: impl FnOnce(&mut Ui, &mut PanelContext, &mut T),
    right: impl FnOnce(&mut Ui, &mut PanelContext, &mut T),
) {
    if ui.available_width() < NARROW {
        match above {
            Above::Left => {
                left(ui, context, of);
                ui.add_space(8.0);
                right(ui, context, of);
            }
            Above::Right => {
                right(ui, context, of);
                ui.add_space(8.0);
                left(ui, context, of);
            }
        }
    } else {
        ui.spacing_mut().item_spacing.x = 16.0;
        ui.columns(2, |columns| {
            for column in columns.iter_mut() {
                column.spacing_mut().item_spacing.x = 8.0;
            }
            // A column would set its text in full lines, edge to edge.
            columns[0].vertical(|ui| left(ui, context, of));
            columns[1].vertical(|ui| right(ui, context, of));
        });
    }
}

/// How high a console may be in this width: higher, there would be more of the room around it and no more of it.
fn console_height(ui: &Ui) -> f32 {
    0.48 * ui.available_width()
}

/// The console of the question, where the scene is drawn at every frame or the machine is drawn flat; false where
/// it is not.
fn console_ui(ui: &mut Ui, context: &mut PanelContext, height: f32) -> bool {
    let scene = kit::scene(ui.ctx()).filter(|_| !context.ui_state.flat);
    if scene.is_none() && !context.ui_state.flat {
        return false;
    }
    let (rect, painter) = kit::canvas(ui, height);
    context.ui_state.stage =
        bevy::prelude::Rect::new(rect.left(), rect.top(), rect.right(), rect.bottom());
    if let Some(scene) = scene {
        let whole = egui::Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        painter.image(scene, rect, whole, Color32::WHITE);
    }
    true
}

/// How an option looks once it is judged.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Look {
    /// Not judged; chosen or not.
    Open(bool),
    /// Right, and chosen or not.
    Right(bool),
    /// Chosen, and wrong.
    Wrong,
    /// Neither.
    Other,
}

impl Look {
    /// Of one of several: the one chosen and, once it is judged, the right one.
    fn of(n: usize, chosen: Option<usize>, should: Option<usize>) -> Look {
        let on = chosen == Some(n);
        match should {
            None => Look::Open(on),
            Some(should) if should == n => Look::Right(on),
            Some(_) if on => Look::Wrong,
            Some(_) => Look::Other,
        }
    }

    /// Edge and its width.
    fn edge(self) -> (Color32, f32) {
        match self {
            Look::Open(true) => (t::AMBER, 2.5),
            Look::Open(false) => (t::EDGE, 1.0),
            Look::Right(_) => (t::GOOD, 2.5),
            Look::Wrong => (t::BAD, 2.5),
            Look::Other => (t::LINE, 1.0),
        }
    }
}

/// The edge of an option as thick as its look wants it. It is drawn over the option: a frame grows with its edge, and
/// would move what stands beside and below it.
fn thick_edge(ui: &Ui, rect: egui::Rect, corners: CornerRadius, look: Look) {
    let (edge, width) = look.edge();
    (ui.painter()).rect_stroke(rect, corners, Stroke::new(width, edge), StrokeKind::Inside);
}

/// A big option with the digit that chooses it; whatever else belongs to it is drawn below its text.
fn option_ui(
    ui: &mut Ui,
    digit: usize,
    look: Look,
    text: &str,
    more: impl FnOnce(&mut Ui),
) -> Response {
    let (edge, _) = look.edge();
    let fill = if matches!(look, Look::Open(true)) {
        t::FIELD_HOT
    } else {
        t::FIELD
    };
    let drawn = Frame::new()
        .fill(fill)
        .stroke(Stroke::new(1.0, edge))
        .corner_radius(CornerRadius::same(9))
        .inner_margin(Margin::symmetric(12, 8))
        .show(ui, |ui| {
            ui.set_width(ui.available_width());
            ui.horizontal_top(|ui| {
                let (rect, _) = ui.allocate_exact_size(vec2(20.0, 20.0), Sense::hover());
                match look {
                    Look::Right(_) => mark(ui, rect.center(), true),
                    Look::Wrong => mark(ui, rect.center(), false),
                    Look::Open(_) | Look::Other => {
                        let ink = RichText::new(digit.to_string()).color(t::QUIET);
                        let inside = egui::UiBuilder::new().max_rect(rect);
                        let mut inside = ui.new_child(inside);
                        inside.add(Label::new(ink).selectable(false));
                    }
                }
                ui.vertical(|ui| {
                    ui.add(Label::new(text).wrap().selectable(false));
                    more(ui);
                });
            });
        });
    thick_edge(ui, drawn.response.rect, CornerRadius::same(9), look);
    let id = ui.id().with(("option", digit));
    let sense = if matches!(look, Look::Open(_)) {
        Sense::click()
    } else {
        Sense::hover()
    };
    let response = ui.interact(drawn.response.rect, id, sense);
    response.widget_info(|| {
        let on = matches!(look, Look::Open(true) | Look::Right(true) | Look::Wrong);
        egui::WidgetInfo::selected(egui::WidgetType::RadioButton, true, on, text)
    });
    response
}

/// One of a row of choices; judged, the right one has its edge and the wrong one too.
fn pick_ui(ui: &mut Ui, look: Look, text: &str) -> bool {
    let (edge, _) = look.edge();
    let on = matches!(look, Look::Open(true));
    let ink = RichText::new(text).color(if on { t::ON_AMBER } else { t::TEXT });
    let fill = if on { t::AMBER } else { t::FIELD };
    let button = Button::new(ink)
        .fill(fill)
        .stroke(Stroke::new(1.0, edge))
        .min_size(vec2(0.0, 36.0))
        .selected(on);
    let button = ui.add(button);
    thick_edge(ui, button.rect, CornerRadius::same(7), look);
    button.clicked() && matches!(look, Look::Open(_))
}

/// The digit that was pressed in this frame, as the place of an option: 1 is the first, 0 the tenth.
fn digit_pressed(ui: &Ui, context: &PanelContext) -> Option<usize> {
    let keys = [
        Key::Num1,
        Key::Num2,
        Key::Num3,
        Key::Num4,
        Key::Num5,
        Key::Num6,
        Key::Num7,
        Key::Num8,
        Key::Num9,
        Key::Num0,
    ];
    let free = |i: &egui::InputState| context.ui_state.key_bindings.allows_digits(i.modifiers);
    let pressed = |i: &egui::InputState| keys.iter().position(|key| i.key_pressed(*key));
    ui.input(|i| pressed(i).filter(|_| free(i)))
}
