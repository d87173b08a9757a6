//! Reading lamps: the lamps, the key to their language, and two digits to type.

use super::{Above, beside, digit_pressed};
use crate::drill::{Question, lit};
use crate::panels::{PanelContext, kit, sheet, spoken};
use crate::scene::console::lamps::colour_of;
use crate::tokens as t;
use bevy_egui::egui::accesskit::Live;
use bevy_egui::egui::{Button, Color32, Key, Modifiers, Rect, RichText, Ui, pos2, vec2};
use detent_content::Value;
use detent_simulation::controller::{LampPlacement, Signs};
use detent_simulation::units::Span;
use detent_training::practice::drill::lamps::{LampReadingTask, Marked};

/// The question of this drill.
type Asked = Question<LampReadingTask, String, Marked>;

/// Room that question, pad, head and foot of the window take.
const TAKEN_HEIGHT: f32 = 420.0;

/// Digits of the pad in its order.
const PAD: [[Option<u8>; 3]; 4] = [
    [Some(7), Some(8), Some(9)],
    [Some(4), Some(5), Some(6)],
    [Some(1), Some(2), Some(3)],
    [None, Some(0), None],
];

pub(super) fn lamps_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked, took_s: f64) {
    if q.marked.is_none() {
        if let Some(place) = digit_pressed(ui, context) {
            put(q, ((place + 1) % 10) as u8);
        }
        if ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Backspace)) {
            q.given.pop();
        }
    }
    beside(
        ui,
        context,
        q,
        Above::Left,
        |ui, context, q| {
            kit::card(ui, |ui| {
                ui.label(context.text("drill-lamps-ask"));
                shown_ui(ui, context, &q.task, took_s);
                given_ui(ui, context, q);
            });
        },
        |ui, context, q| {
            let signs = &q.task.signs;
            kit::paper(ui, |ui| {
                let name = match &q.task.board {
                    Some(board) => context.text(&format!("board-{board}")),
                    None => context.text("drill-lamps-invented"),
                };
                kit::print_heading(ui, name);
                ui.label(context.text(&format!("signs-{}", signs.key())));
                sheet::example(ui, context, signs, &LampPlacement::Usual);
            });
        },
    );
}

/// Types a digit; a third one begins anew.
fn put(q: &mut Asked, digit: u8) {
    if q.given.len() >= 2 {
        q.given.clear();
    }
    q.given.push(char::from(b'0' + digit));
}

/// What the lamps show, as an eye sees it: which are lit, or one flash after the other.
fn in_words(context: &PanelContext, task: &LampReadingTask) -> String {
    let lamps = (context.texts).number_on_lamps(&task.signs, &LampPlacement::Usual, task.shown);
    context.with("lamps-seen", &[("lamps", Value::from(lamps))])
}

/// The lamps as they are now.
fn shown_ui(ui: &mut Ui, context: &mut PanelContext, task: &LampReadingTask, took_s: f64) {
    let rest = ui.ctx().content_rect().height() - TAKEN_HEIGHT;
    let height = rest.min(super::console_height(ui)).max(130.0);
    let top = ui.cursor().min;
    if task.board.is_some() && super::console_ui(ui, context, height) {
        let area = Rect::from_min_size(top, vec2(ui.available_width(), height));
        spoken::live_line(ui, "lamps", area, Live::Polite, || in_words(context, task));
        return;
    }
    let (rect, painter) = kit::canvas(ui, 130.0);
    spoken::live_line(ui, "lamps", rect, Live::Polite, || in_words(context, task));
    kit::frame(&painter, rect, t::GLASS, t::EDGE);
    let lit = lit(task, took_s);
    let height = if matches!(task.signs, Signs::Segments) {
        12.0
    } else {
        22.0
    };
    let inner = rect.shrink2(vec2(18.0, height));
    sheet::picture(&painter, inner, &task.signs, lit);
}

/// What was typed, and the pad to type it with.
fn given_ui(ui: &mut Ui, context: &PanelContext, q: &mut Asked) {
    ui.add_space(6.0);
    ui.horizontal_top(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(132.0, 104.0), bevy_egui::egui::Sense::hover());
        kit::frame(ui.painter(), rect, t::LCD, t::EDGE);
        let text = format!("{:-<2}", q.given);
        let digits = Rect::from_min_max(
            rect.min + vec2(0.0, 18.0),
            pos2(rect.right() - 18.0, rect.bottom() - 18.0),
        );
        kit::segments(ui.painter(), digits, &text, t::LCD_ON);
        ui.add_space(10.0);
        ui.vertical(|ui| match q.marked {
            Some(marked) => told_ui(ui, context, marked, &q.task),
            None => pad_ui(ui, context, q),
        });
    });
}

fn pad_ui(ui: &mut Ui, context: &PanelContext, q: &mut Asked) {
    let width = ((ui.available_width() - 2.0 * ui.spacing().item_spacing.x) / 3.0).min(64.0);
    let size = vec2(width, 42.0);
    for row in PAD {
        ui.horizontal(|ui| {
            for digit in row {
                match digit {
                    Some(digit) => {
                        let text = RichText::new(digit.to_string()).size(20.0);
                        if ui.add_sized(size, Button::new(text)).clicked() {
                            put(q, digit);
                        }
                    }
                    None if row[0].is_none() && ui.min_rect().width() > width => {
                        let text = RichText::new(context.text("drill-lamps-back")).size(t::SMALL);
                        if ui.add_sized(size, Button::new(text)).clicked() {
                            q.given.pop();
                        }
                    }
                    None => {
                        ui.allocate_exact_size(size, bevy_egui::egui::Sense::hover());
                    }
                }
            }
        });
    }
}

/// Right or wrong, digit by digit.
fn told_ui(ui: &mut Ui, context: &PanelContext, marked: Marked, task: &LampReadingTask) {
    let colour = |right: bool| -> Color32 { if right { t::GOOD } else { t::BAD } };
    for (key, shown, read) in [
        ("sheet-tens", marked.shown / 10, marked.read / 10),
        ("sheet-units", marked.shown % 10, marked.read % 10),
    ] {
        let (name, right) = (context.text(key), shown == read);
        let args = [
            ("place", Value::from(name)),
            ("shown", Value::from(shown)),
            ("read", Value::from(read)),
        ];
        let key = if right {
            "drill-lamps-digit-right"
        } else {
            "drill-lamps-digit-wrong"
        };
        ui.label(
            RichText::new(context.with(key, &args))
                .size(18.0)
                .color(colour(right)),
        );
    }
    if let Some(sum) = sums(&task.signs, task.shown) {
        ui.label(RichText::new(sum).size(18.0).color(colour_of(&task.signs)));
    }
}

/// How the lit lamps add up, where they do.
fn sums(signs: &Signs, shown: u8) -> Option<String> {
    let Signs::Weights { tens, units } = signs else {
        return None;
    };
    let lit = signs.lit(shown, Span::ZERO);
    let all: Vec<u8> = tens.iter().chain(units).copied().collect();
    let group = |from: usize, to: usize| {
        let on = (from..to).filter(|n| lit & (1 << (all.len() - 1 - n)) != 0);
        let weights: Vec<String> = on.map(|n| all[n].to_string()).collect();
        if weights.is_empty() {
            "0".to_owned()
        } else {
            weights.join(" + ")
        }
    };
    let (left, right) = (group(0, tens.len()), group(tens.len(), all.len()));
    Some(format!(
        "{left} = {},  {right} = {}",
        shown / 10,
        shown % 10
    ))
}
