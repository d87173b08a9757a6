//! The console as it is described: it shows a number as the control would, and lamps that stand freely are moved on it.

use super::{count_ui, list_ui};
use crate::board_workshop::BoardWorkshop;
use crate::flat::console::{ConsoleState, Face, paint};
use crate::panels::{PanelContext, kit};
use crate::scene::console::lamps::colour_of;
use crate::scene::console::layout::{FACE_SIZE, LampId, Layout};
use crate::tokens as t;
use bevy_egui::egui::{self, EventFilter, Key, Response, RichText, Sense, Ui, vec2};
use detent_content::Value;
use detent_simulation::controller::{Board, LampPlacement, Lamps};
use detent_simulation::units::{Span, TICKS_PER_S};

/// Most lamps that a console can have.
const MOST_LAMPS: u8 = 16;
/// An arrow key moves a lamp so far, hundredths of the field.
const STEP: i16 = 2;
/// Widest drawing, points.
const WIDEST: f32 = 640.0;

/// Draws it, with the number that it shows.
pub(super) fn console_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    board: &mut Board,
) {
    if !(1..=MOST_LAMPS).contains(&board.lamps.signs.lamps()) {
        kit::quiet(ui, context.text("workshop-board-no-console"));
        return;
    }
    let now_s = ui.input(|i| i.time);
    let since_s = *open.shown_since_s.get_or_insert(now_s);
    let layout = Layout::of(&board.panel, &board.lamps);
    let width = ui.available_width().min(WIDEST);
    let is_free = is_free(board) && open.is_readable() && open.hand.is_none();
    let sense = match is_free {
        true => Sense::click_and_drag(),
        false => Sense::hover(),
    };
    let size = vec2(width, width * FACE_SIZE.y / FACE_SIZE.x);
    let (rect, response) = ui.allocate_exact_size(size, sense);
    let face = Face::at(rect.center(), width / FACE_SIZE.x);
    let state = match &open.hand {
        Some(hand) => {
            let machine = hand.trial.bench.view().machine;
            ConsoleState {
                lamps: machine.lamps,
                turned: f32::from(machine.dial_position),
                held: hand.trial.held.down(),
            }
        }
        None => {
            let at = Span(((now_s - since_s).max(0.0) * TICKS_PER_S as f64) as u64);
            let code = board.lamps.signs.lit(open.number, at);
            let lamps = Lamps { code, lock: false };
            ConsoleState {
                lamps,
                ..ConsoleState::default()
            }
        }
    };
    let painter = ui.painter_at(rect);
    paint(
        &painter,
        &layout,
        face,
        colour_of(&board.lamps.signs),
        &state,
    );
    if is_free {
        move_lamps(ui, context, open, board, (&layout, face, &response));
    }
    if open.hand.is_some() {
        return;
    }
    let number = open.number;
    let name = context.text("workshop-board-number");
    count_ui(ui, name, &mut open.number, 0..=99);
    let mut codes: Vec<(u8, String)> = (board.codes.iter())
        .map(|code| {
            let meaning = context.text(&format!("monitor-{}", code.monitor));
            (code.code, format!("{:02} {meaning}", code.code))
        })
        .collect();
    codes.sort();
    let name = context.text("workshop-board-code");
    if let Some(code) = list_ui(ui, "code-shown", &name, open.number, &codes) {
        open.number = code;
    }
    if open.number != number {
        open.shown_since_s = Some(now_s);
    }
    let lamps = &board.lamps;
    let words = (context.texts).number_on_lamps(&lamps.signs, &lamps.placement, open.number);
    let words = context.with("lamps-seen", &[("lamps", Value::from(words))]);
    ui.add(egui::Label::new(RichText::new(words).color(t::AMBER)).wrap());
}

/// Whether each lamp stands where it was put.
fn is_free(board: &Board) -> bool {
    let lamps = usize::from(board.lamps.signs.lamps());
    matches!(&board.lamps.placement, LampPlacement::Free(places) if places.len() == lamps)
        && super::lamps::can_be_placed(&board.lamps.signs)
}

/// The hand or the arrow keys move a lamp.
fn move_lamps(
    ui: &Ui,
    context: &PanelContext,
    open: &mut BoardWorkshop,
    board: &mut Board,
    (layout, face, response): (&Layout, Face, &Response),
) {
    let count = board.lamps.signs.lamps();
    let LampPlacement::Free(places) = &mut board.lamps.placement else {
        return;
    };
    open.lamp = open.lamp.min(count - 1);
    let pointer = response.interact_pointer_pos();
    // The lamp under the pointer where it comes down, not where it has come to when that counts as dragging.
    let begins = response.is_pointer_button_down_on() && ui.input(|i| i.pointer.any_pressed());
    if let Some(at) = pointer.filter(|_| begins) {
        let lamps = face.lamps(layout).filter_map(|(id, middle, _)| match id {
            LampId::Code(bit) => Some((count - 1 - bit, middle.distance(at))),
            LampId::Lock => None,
        });
        let nearest = lamps.min_by(|(_, a), (_, b)| a.total_cmp(b));
        open.lamp = nearest.map_or(0, |(lamp, _)| lamp);
    }
    let chosen = &mut places[usize::from(open.lamp)];
    if let Some(at) = pointer.filter(|_| response.dragged()) {
        *chosen = layout.free_place(face.to_face(at));
    }
    if response.has_focus() {
        let arrows = EventFilter {
            horizontal_arrows: true,
            vertical_arrows: true,
            ..EventFilter::default()
        };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, arrows));
        let presses = |key| ui.input(|i| i.num_presses(key)) as i16;
        let across = presses(Key::ArrowRight) - presses(Key::ArrowLeft);
        let down = presses(Key::ArrowDown) - presses(Key::ArrowUp);
        let moved = |from: u8, steps: i16| (i16::from(from) + STEP * steps).clamp(0, 100) as u8;
        *chosen = (moved(chosen.0, across), moved(chosen.1, down));
    }
    let bit = count - 1 - open.lamp;
    let here = face.lamps(layout).find(|(id, ..)| *id == LampId::Code(bit));
    if let Some((_, middle, radius)) = here {
        let ring = egui::Stroke::new(2.0, t::SKY);
        ui.painter().circle_stroke(middle, radius * 2.0, ring);
    }
    let args = [
        ("lamp", Value::from(open.lamp + 1)),
        ("across", chosen.0.into()),
        ("down", chosen.1.into()),
    ];
    let told = || context.with("workshop-board-lamp-moves", &args);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::WidgetType::Button, true, told()));
}
