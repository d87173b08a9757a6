//! The language of the board's lamps: how a number looks, what each mode shows, how a fault hold is left.

use crate::panels::{PanelContext, kit};
use crate::scene::console::lamps::colour_of;
use crate::tokens as t;
use bevy_egui::egui::{
    Align2, Color32, CornerRadius, Grid, Label, Painter, Pos2, Rect, RichText, Sense, Shape,
    Stroke, Ui, Vec2, pos2, vec2,
};
use detent_content::{LampMode, Value, lamp_modes, mode_pictures};
use detent_simulation::controller::{LampPlacement, Sign, Signs, USUAL_CODES};
use detent_simulation::units::Span;
use detent_training::practice::drill::lamps::EXAMPLES;

/// The number of the example for flashes, which are counted, and where every number can be shown.
const FLASHED: u8 = EXAMPLES[0];
const EXAMPLE: u8 = EXAMPLES[1];
/// Width of a mode's name in the table of what the lamps show, and the room beside it.
const NAME_WIDTH: f32 = 112.0;
const BETWEEN: f32 = 12.0;

/// The lamps of the board in a small picture, those of `lit` lit.
pub(in crate::panels) fn picture(painter: &Painter, rect: Rect, signs: &Signs, lit: u16) {
    let colour = colour_of(signs);
    let on = |bit: u8| lit & (1 << bit) != 0;
    match signs {
        Signs::Segments => {
            let height = rect.height() * 0.86;
            for (first, x) in [(7, -0.36), (0, 0.36)] {
                let middle = rect.center() + vec2(x * height, 0.0);
                let digit = Rect::from_center_size(middle, vec2(height * 0.52, height));
                kit::digit(painter, digit, (lit >> first) as u8 & 0x7f, colour);
            }
        }
        Signs::Weights { tens, units } => {
            for (place, x) in weighted(rect, tens.len(), units.len())
                .into_iter()
                .enumerate()
            {
                let bit = (tens.len() + units.len() - 1 - place) as u8;
                let pitch = rect.width() / (tens.len() + units.len()) as f32;
                let radius = (rect.height() * 0.22).min(pitch * 0.31);
                kit::lamp(painter, x, rect.center().y, radius, on(bit), colour);
            }
        }
        Signs::Pictures { lamps, .. } | Signs::InTurn { lamps, .. } => {
            for n in 0..*lamps {
                let share = (f32::from(n) + 0.5) / f32::from(*lamps);
                let x = rect.left() + rect.width() * share;
                let radius = (rect.height() * 0.22).min(rect.width() / f32::from(*lamps) * 0.3);
                kit::lamp(
                    painter,
                    x,
                    rect.center().y,
                    radius,
                    on(*lamps - 1 - n),
                    colour,
                );
            }
        }
        Signs::Flashes { .. } => {
            let radius = (rect.height() * 0.28).min(16.0);
            kit::lamp(
                painter,
                rect.center().x,
                rect.center().y,
                radius,
                on(0),
                colour,
            );
        }
    }
}

/// A sign as its lamps stand on the console: lit, blinking, dark. Rows and columns are kept, and free places too.
fn placed(painter: &Painter, rect: Rect, signs: &Signs, placement: &LampPlacement, sign: Sign) {
    let count = signs.lamps();
    let row = || LampPlacement::Row.places(count).unwrap_or_default();
    let places = placement.places(count).unwrap_or_else(row);
    let free = matches!(placement, LampPlacement::Free(_));
    let (columns, rows) = match free {
        true => (3, 3),
        false => LampPlacement::columns_and_rows(&places),
    };
    let cells = vec2(f32::from(columns), f32::from(rows));
    let pitch = (rect.width() / cells.x).min(rect.height() / cells.y);
    for ((x, y), n) in places.iter().zip(0..count) {
        let (x, y) = (f32::from(*x), f32::from(*y));
        let from_middle = match free {
            true => (vec2(x, y) / 100.0 - vec2(0.5, 0.5)) * 2.0 * pitch,
            false => vec2(x - (cells.x - 1.0) / 2.0, y - (cells.y - 1.0) / 2.0) * pitch,
        };
        let at = rect.center() + from_middle;
        let (bit, radius) = (1_u16 << (count - 1 - n), (pitch * 0.28).min(11.0));
        let on = sign.lit & bit != 0;
        kit::lamp(painter, at.x, at.y, radius, on, colour_of(signs));
        if sign.blinks & bit != 0 {
            painter.circle_filled(at, radius * 0.5, colour_of(signs));
            for ray in 0..8 {
                let out = Vec2::angled(ray as f32 / 8.0 * std::f32::consts::TAU);
                let ends = [at + out * radius * 1.15, at + out * radius * 1.65];
                painter.line_segment(ends, Stroke::new(1.5, colour_of(signs)));
            }
        }
    }
}

/// A number of digits in turn: the tens left, the units right.
pub(in crate::panels) fn in_turn(
    painter: &Painter,
    rect: Rect,
    signs: &Signs,
    placement: &LampPlacement,
    number: u8,
) {
    let Signs::InTurn { digits, .. } = signs else {
        return;
    };
    let (left, right) = rect.split_left_right_at_fraction(0.5);
    for (half, digit) in [(left, number / 10), (right, number % 10)] {
        if let Some(sign) = digits.get(usize::from(digit)) {
            placed(painter, half.shrink(3.0), signs, placement, *sign);
        }
    }
}

/// Where weighted lamps stand side by side, with a gap between tens and units.
pub(in crate::panels) fn weighted(rect: Rect, tens: usize, units: usize) -> Vec<f32> {
    let count = tens + units;
    let pitch = rect.width() / (count as f32 + 0.55);
    (0..count)
        .map(|place| {
            let gap = if place >= tens { 0.55 } else { 0.0 };
            rect.left() + (place as f32 + 0.5 + gap) * pitch
        })
        .collect()
}

/// The example of weighted lamps, with the sums under them.
fn sums(
    painter: &Painter,
    rect: Rect,
    context: &PanelContext,
    tens: &[u8],
    units: &[u8],
    signs: &Signs,
) {
    let lit = signs.lit(EXAMPLE, Span::ZERO);
    let count = tens.len() + units.len();
    let places = weighted(rect.shrink2(vec2(12.0, 0.0)), tens.len(), units.len());
    let weights: Vec<u8> = tens.iter().chain(units).copied().collect();
    for (place, x) in places.iter().enumerate() {
        let arch = ((place as f32 + 0.5) / count as f32 * 2.0 - 1.0).powi(2) * 16.0;
        let on = lit & (1 << (count - 1 - place)) != 0;
        kit::lamp(
            painter,
            *x,
            rect.top() + 26.0 + arch,
            10.0,
            on,
            colour_of(signs),
        );
        let y = rect.top() + 58.0 + arch * 0.6;
        kit::write(
            painter,
            *x,
            y,
            Align2::CENTER_CENTER,
            17.0,
            t::TEXT,
            weights[place],
        );
    }
    let group = |from: usize, of: &[u8]| {
        let lit: Vec<String> = (of.iter().enumerate())
            .filter(|(n, _)| lit & (1 << (count - 1 - from - n)) != 0)
            .map(|(_, weight)| weight.to_string())
            .collect();
        lit.join(" + ")
    };
    for (share, key, from, of, digit) in [
        (0.25, "sheet-tens", 0, tens, EXAMPLE / 10),
        (0.75, "sheet-units", tens.len(), units, EXAMPLE % 10),
    ] {
        let x = rect.left() + rect.width() * share;
        let (low, middle) = (rect.bottom(), Align2::CENTER_CENTER);
        kit::write(
            painter,
            x,
            low - 34.0,
            middle,
            16.0,
            t::TEXT,
            context.text(key),
        );
        let sum = format!("{} = {digit}", group(from, of));
        kit::write(painter, x, low - 14.0, middle, 17.0, t::LAMP_LIT, sum);
    }
}

/// The example of flashes as a strip: time runs to the right.
fn strip(painter: &Painter, rect: Rect, context: &PanelContext, signs: &Signs) {
    let whole: u64 = signs.flashes(FLASHED).map(|(_, span)| span.0).sum();
    let last = signs.flashes(FLASHED).last().map_or(0, |(_, span)| span.0);
    // Of the closing pause only the beginning is drawn.
    let shown = (whole - last * 3 / 4).max(1) as f32;
    let inner = rect.shrink2(vec2(14.0, 0.0));
    let x = |ticks: u64| inner.left() + inner.width() * (ticks as f32 / shown).min(1.0);
    let (top, low) = (rect.top() + 18.0, rect.top() + 54.0);
    painter.line_segment(
        [pos2(x(0), low), pos2(inner.right(), low)],
        Stroke::new(1.5, t::LAMP_RING),
    );
    let (mut at, mut ends) = (0, Vec::new());
    for (on, span) in signs.flashes(FLASHED) {
        if on {
            let block = Rect::from_min_max(pos2(x(at), top), pos2(x(at + span.0), low));
            painter.rect_filled(block, CornerRadius::same(2), colour_of(signs));
            ends.push((x(at), x(at + span.0)));
        }
        at += span.0;
    }
    let tens = usize::from(FLASHED / 10);
    for (key, group, digit) in [
        ("sheet-tens", &ends[..tens], FLASHED / 10),
        ("sheet-units", &ends[tens..], FLASHED % 10),
    ] {
        if let (Some((from, _)), Some((_, to))) = (group.first(), group.last()) {
            let middle = (from + to) / 2.0;
            let text = format!("{digit}");
            kit::write(
                painter,
                middle,
                low + 5.0,
                Align2::CENTER_TOP,
                20.0,
                colour_of(signs),
                text,
            );
            kit::write(
                painter,
                middle,
                low + 28.0,
                Align2::CENTER_TOP,
                16.0,
                t::TEXT,
                context.text(key),
            );
        }
    }
}

/// How a number looks in a language: the key to it.
pub(in crate::panels) fn example(
    ui: &mut Ui,
    context: &PanelContext,
    signs: &Signs,
    placement: &LampPlacement,
) {
    let ground = |ui: &mut Ui, height| {
        let (rect, painter) = kit::canvas(ui, height);
        kit::frame(&painter, rect, t::GLASS, t::PRINT);
        (rect, painter)
    };
    let number = match signs {
        Signs::Weights { tens, units } => {
            let (rect, painter) = ground(ui, 132.0);
            sums(&painter, rect, context, tens, units, signs);
            EXAMPLE
        }
        Signs::Segments => {
            let (rect, painter) = ground(ui, 112.0);
            let lit = signs.lit(EXAMPLE, Span::ZERO);
            picture(&painter, rect.shrink(8.0), signs, lit);
            EXAMPLE
        }
        Signs::Flashes { .. } => {
            let (rect, painter) = ground(ui, 106.0);
            strip(&painter, rect, context, signs);
            FLASHED
        }
        Signs::Pictures { blinks, .. } => {
            for number in 0..=99 {
                let Some(sign) = signs.sign(number) else {
                    continue;
                };
                ui.horizontal(|ui| {
                    let text = RichText::new(format!("{number:02}")).size(18.0);
                    ui.label(text.color(t::PRINT_ACCENT));
                    if placement.is_usual() && blinks.is_empty() {
                        let (rect, painter) = ground(ui, 30.0);
                        picture(&painter, rect.shrink(3.0), signs, sign.lit);
                    } else {
                        let (rect, painter) = ground(ui, height_of(signs, placement));
                        placed(&painter, rect.shrink(3.0), signs, placement, sign);
                    }
                });
            }
            if !blinks.is_empty() {
                ui.label(context.text("sheet-lamps-blinking"));
            }
            return;
        }
        Signs::InTurn { digits, .. } => {
            for (digit, sign) in digits.iter().enumerate() {
                ui.horizontal(|ui| {
                    let text = RichText::new(digit.to_string()).size(18.0);
                    ui.label(text.color(t::PRINT_ACCENT));
                    let (rect, painter) = ground(ui, height_of(signs, placement));
                    placed(&painter, rect.shrink(3.0), signs, placement, *sign);
                });
            }
            ui.label(context.text("sheet-lamps-blinking"));
            return;
        }
    };
    let text = context.with("sheet-lamps-example", &[("number", Value::from(number))]);
    ui.label(RichText::new(text).color(t::PRINT_ACCENT));
}

/// How high a picture of these lamps is.
fn height_of(signs: &Signs, placement: &LampPlacement) -> f32 {
    match placement {
        LampPlacement::Usual | LampPlacement::Row => 30.0,
        LampPlacement::Column => 20.0 * f32::from(signs.lamps()),
        LampPlacement::Grid { columns } => {
            24.0 * f32::from(signs.lamps().div_ceil((*columns).max(1)))
        }
        LampPlacement::Free(_) => 84.0,
    }
}

/// What a mode shows: pictures in turn, and words.
fn sight(ui: &mut Ui, context: &PanelContext, mode: LampMode) {
    let signs = &context.bench.job().board.lamps.signs;
    let pictures = mode_pictures(signs, mode.1);
    ui.vertical(|ui| {
        ui.label(context.texts.lamp_mode(signs, mode));
        if !pictures.is_empty() {
            ui.horizontal(|ui| {
                for lit in pictures {
                    let wide = f32::from(signs.lamps().min(8)) * 11.0 + 12.0;
                    let placement = &context.bench.job().board.lamps.placement;
                    let size = match signs {
                        _ if !placement.is_usual() => {
                            vec2(wide.max(60.0), height_of(signs, placement))
                        }
                        Signs::Segments => vec2(58.0, 46.0),
                        Signs::Flashes { .. } => vec2(40.0, 40.0),
                        _ => vec2(wide.max(40.0), 28.0),
                    };
                    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
                    kit::frame(ui.painter(), rect, t::GLASS, t::PRINT);
                    if placement.is_usual() {
                        picture(ui.painter(), rect.shrink(3.0), signs, lit);
                    } else {
                        let sign = Sign { lit, blinks: 0 };
                        placed(ui.painter(), rect.shrink(3.0), signs, placement, sign);
                    }
                }
            });
        }
    });
}

/// A line with a tick or a cross before it.
fn works(ui: &mut Ui, does: bool, text: String) {
    ui.horizontal_top(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(14.0, 18.0), Sense::hover());
        let at = |x: f32, y: f32| -> Pos2 { rect.center() + vec2(x, y) };
        let ink = |colour: Color32| Stroke::new(2.4, colour);
        if does {
            let tick = [at(-5.0, 0.0), at(-1.0, 5.0), at(6.0, -5.0)];
            ui.painter().add(Shape::line(tick.to_vec(), ink(t::PRINT)));
        } else {
            ui.painter()
                .line_segment([at(-4.5, -4.5), at(4.5, 4.5)], ink(t::PRINT_ACCENT));
            ui.painter()
                .line_segment([at(-4.5, 4.5), at(4.5, -4.5)], ink(t::PRINT_ACCENT));
        }
        ui.add(Label::new(text).wrap());
    });
}

/// How a fault hold is left on this board, and what does nothing although other boards have it.
fn resets(ui: &mut Ui, context: &PanelContext) {
    let resets = &context.bench.job().board.resets;
    kit::print_heading(ui, context.text("sheet-reset"));
    for (does, text) in context.texts.hold_resets(resets) {
        works(ui, does, text);
    }
}

pub(super) fn lamps(ui: &mut Ui, context: &PanelContext) {
    let board = &context.bench.job().board;
    let rules = &board.lamps;
    ui.label(context.text(&format!("signs-{}", rules.signs.key())));
    example(ui, context, &rules.signs, &rules.placement);
    let button = context.text(&format!("button-{}", board.service.page));
    ui.label(context.with("sheet-lamps-pages", &[("button", Value::from(button))]));
    if board.service.stored_codes != USUAL_CODES {
        let codes = Value::from(board.service.stored_codes);
        ui.label(context.with("sheet-stored-codes", &[("codes", codes)]));
    }
    ui.label(context.text(if rules.lock_lamp {
        "sheet-lamps-lock"
    } else {
        "sheet-lamps-no-lock"
    }));
    kit::print_heading(ui, context.text("sheet-sights"));
    let told = ui.available_width() - NAME_WIDTH - BETWEEN;
    Grid::new("sights")
        .num_columns(2)
        .striped(true)
        .spacing([BETWEEN, 7.0])
        .show(ui, |ui| {
            for mode in lamp_modes(rules) {
                ui.vertical(|ui| {
                    ui.set_width(NAME_WIDTH);
                    let name = RichText::new(context.text(&format!("lamps-{}", mode.0)));
                    ui.label(name.color(t::PRINT_ACCENT));
                });
                ui.vertical(|ui| {
                    ui.set_width(told);
                    sight(ui, context, mode);
                });
                ui.end_row();
            }
        });
    resets(ui, context);
}
