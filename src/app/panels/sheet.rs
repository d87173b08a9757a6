//! The service sheet: printed paper with pictures.

use super::{Face, kit};
use crate::app::state::Page;
use crate::app::tokens as t;
use crate::content::Value;
use crate::controller::{GestureStep, LidMove, Rotation};
use crate::plant::Button;
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, Painter, Pos2, Rect, RichText, Stroke, StrokeKind, Ui,
    Vec2, pos2, vec2,
};
use std::f32::consts::{PI, TAU};

pub(super) fn sheet_ui(ui: &mut Ui, face: &mut Face) {
    let pages = [
        (Page::Entry, "sheet-entry"),
        (Page::Lamps, "sheet-lamps"),
        (Page::Codes, "sheet-codes"),
        (Page::Menu, "sheet-menu"),
        (Page::Pins, "sheet-pins"),
    ];
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 4.0;
        let width = (ui.available_width() - 16.0) / 5.0;
        for (page, key) in pages {
            if kit::choice_sized(
                ui,
                face.desk.page == page,
                face.text(key),
                vec2(width, 30.0),
            )
            .clicked()
            {
                face.desk.page = page;
            }
        }
    });
    kit::paper(ui, |ui| {
        ui.horizontal(|ui| {
            let board = &face.bench.job().board;
            kit::print_heading(ui, face.text(&board.name));
        });
        ui.label(
            RichText::new(face.text("sheet-invented"))
                .size(t::SMALL)
                .color(t::PRINT_QUIET),
        );
        ui.add_space(4.0);
        match face.desk.page {
            Page::Entry => entry(ui, face),
            Page::Lamps => lamps(ui, face),
            Page::Codes => codes(ui, face),
            Page::Menu => menu(ui, face),
            Page::Pins => pins(ui, face),
        }
    });
}

fn arrow(painter: &Painter, points: &[Pos2], stroke: Stroke) {
    painter.add(egui::Shape::line(points.to_vec(), stroke));
    if let [.., a, b] = points {
        let back = (*a - *b).normalized() * 8.0;
        for turn in [0.5f32, -0.5] {
            let (sin, cos) = turn.sin_cos();
            let side = vec2(back.x * cos - back.y * sin, back.x * sin + back.y * cos);
            painter.line_segment([*b, *b + side], stroke);
        }
    }
}

fn dial(painter: &Painter, middle: Pos2, radius: f32) {
    for i in 0..24 {
        let a = i as f32 / 24.0 * TAU;
        let out = Vec2::angled(a);
        painter.line_segment(
            [middle + out * (radius + 2.5), middle + out * (radius + 5.5)],
            Stroke::new(1.0, t::PRINT_QUIET),
        );
    }
    painter.circle(middle, radius, t::PAPER_SHADE, Stroke::new(1.6, t::PRINT));
    painter.line_segment(
        [middle, middle - vec2(0.0, radius * 0.85)],
        Stroke::new(3.0, t::PRINT),
    );
}

/// The glyph on a button.
pub(super) fn glyph(painter: &Painter, middle: Pos2, size: f32, button: Button, ink: Color32) {
    match button {
        Button::Start => {
            let points =
                [vec2(-0.7, -1.0), vec2(1.0, 0.0), vec2(-0.7, 1.0)].map(|v| middle + v * size);
            painter.add(egui::Shape::convex_polygon(
                points.to_vec(),
                ink,
                Stroke::NONE,
            ));
        }
        Button::Stop => {
            painter.rect_filled(
                Rect::from_center_size(middle, Vec2::splat(size * 1.8)),
                CornerRadius::same(2),
                ink,
            );
        }
    }
}

fn tile(painter: &Painter, rect: Rect, step: &GestureStep) {
    kit::frame(painter, rect, Color32::WHITE, t::PRINT_QUIET);
    let middle = rect.center() - vec2(0.0, 4.0);
    let ink = Stroke::new(2.6, t::PRINT_ACCENT);
    match *step {
        GestureStep::Turn { to, detents, .. } => {
            let at = middle + vec2(0.0, 8.0);
            dial(painter, at, 17.0);
            let sweep = f32::from(detents) / 24.0 * TAU;
            let sign = if to == Rotation::Right { 1.0 } else { -1.0 };
            let points: Vec<Pos2> = (0..=16)
                .map(|i| at + Vec2::angled(-PI / 2.0 + sign * sweep * i as f32 / 16.0) * 29.0)
                .collect();
            arrow(painter, &points, ink);
            kit::write(
                painter,
                rect.right() - 6.0,
                rect.bottom() - 4.0,
                Align2::RIGHT_BOTTOM,
                17.0,
                t::PRINT_ACCENT,
                format!("{detents}×"),
            );
        }
        GestureStep::Press { button, .. } | GestureStep::Hold { button, .. } => {
            painter.circle(
                middle + vec2(0.0, 6.0),
                18.0,
                t::PAPER_SHADE,
                Stroke::new(1.6, t::PRINT),
            );
            glyph(painter, middle + vec2(0.0, 6.0), 7.0, button, t::PRINT);
            arrow(
                painter,
                &[middle - vec2(0.0, 34.0), middle - vec2(0.0, 15.0)],
                ink,
            );
            if let GestureStep::Hold { min_ms, max_ms, .. } = *step {
                let bar = Rect::from_min_max(
                    pos2(rect.left() + 8.0, rect.bottom() - 22.0),
                    pos2(rect.right() - 8.0, rect.bottom() - 17.0),
                );
                painter.rect_filled(bar, CornerRadius::same(2), t::PRINT_ACCENT);
                let text = format!(
                    "{}–{} s",
                    f64::from(min_ms) / 1000.0,
                    f64::from(max_ms) / 1000.0
                );
                kit::write(
                    painter,
                    rect.center().x,
                    rect.bottom() - 2.0,
                    Align2::CENTER_BOTTOM,
                    15.0,
                    t::PRINT_ACCENT,
                    text,
                );
            }
        }
        GestureStep::Lid { to, .. } => {
            let base = Rect::from_center_size(middle + vec2(0.0, 16.0), vec2(50.0, 18.0));
            painter.rect_stroke(
                base,
                CornerRadius::same(2),
                Stroke::new(1.6, t::PRINT),
                StrokeKind::Inside,
            );
            painter.line_segment(
                [base.left_top(), base.left_top() + vec2(32.0, -30.0)],
                Stroke::new(3.0, t::PRINT),
            );
            let (a, b) = (
                base.right_top() - vec2(6.0, 4.0),
                base.right_top() - vec2(14.0, 28.0),
            );
            arrow(
                painter,
                &if to == LidMove::Up { [a, b] } else { [b, a] },
                ink,
            );
        }
    }
}

/// A step of the gesture in words.
pub(super) fn step_words(face: &Face, step: &GestureStep) -> String {
    let key = |button: Button| face.text(&format!("name-{button}"));
    match *step {
        GestureStep::Turn { to, detents, .. } => {
            let way = if to == Rotation::Right {
                "step-turn-right"
            } else {
                "step-turn-left"
            };
            face.with(way, &[("detents", Value::from(detents))])
        }
        GestureStep::Press { button, .. } => {
            face.with("step-press", &[("button", Value::from(key(button)))])
        }
        GestureStep::Hold { button, .. } => {
            face.with("step-hold", &[("button", Value::from(key(button)))])
        }
        GestureStep::Lid {
            to: LidMove::Up, ..
        } => face.text("step-lid-up"),
        GestureStep::Lid {
            to: LidMove::Down, ..
        } => face.text("step-lid-down"),
    }
}

fn entry(ui: &mut Ui, face: &Face) {
    let gesture = &face.bench.job().board.gesture;
    ui.label(face.text("sheet-entry-before"));
    let count = gesture.steps.len().max(1) as f32;
    let (rect, painter) = kit::canvas(ui, 96.0);
    let width = ((rect.width() - 6.0 * (count - 1.0)) / count).min(96.0);
    for (i, step) in gesture.steps.iter().enumerate() {
        let left = rect.left() + i as f32 * (width + 6.0);
        tile(
            &painter,
            Rect::from_min_size(pos2(left, rect.top()), vec2(width, 96.0)),
            step,
        );
    }
    for (i, step) in gesture.steps.iter().enumerate() {
        ui.label(format!("{}.  {}", i + 1, step_words(face, step)));
    }
    ui.add_space(4.0);
    let within = Value::from(f64::from(gesture.within_ms) / 1000.0);
    let rest = Value::from(f64::from(gesture.rest_ms) / 1000.0);
    ui.label(
        RichText::new(face.with("sheet-entry-window", &[("seconds", within)]))
            .color(t::PRINT_ACCENT),
    );
    ui.label(face.with("sheet-entry-rest", &[("seconds", rest)]));
}

fn lamps(ui: &mut Ui, face: &Face) {
    ui.label(face.text("sheet-lamps-intro"));
    let (rect, painter) = kit::canvas(ui, 132.0);
    kit::frame(&painter, rect, t::GLASS, t::PRINT);
    let example = 0x37u8;
    for bit in (0..8u8).rev() {
        let place = f32::from(7 - bit) + if bit < 4 { 0.55 } else { 0.0 };
        let x = rect.left() + 30.0 + place * (rect.width() - 60.0) / 7.55;
        let arch = ((place - 3.775) / 3.775).powi(2) * 16.0;
        kit::lamp(
            &painter,
            x,
            rect.top() + 26.0 + arch,
            10.0,
            example & (1 << bit) != 0,
        );
        kit::write(
            &painter,
            x,
            rect.top() + 58.0 + arch * 0.6,
            Align2::CENTER_CENTER,
            17.0,
            t::TEXT,
            1 << (bit % 4),
        );
    }
    for (share, key, digit) in [
        (0.25, "sheet-tens", example >> 4),
        (0.75, "sheet-units", example & 15),
    ] {
        let x = rect.left() + rect.width() * share;
        let lit: Vec<String> = [8, 4, 2, 1]
            .into_iter()
            .filter(|w| digit & w != 0)
            .map(|w| w.to_string())
            .collect();
        kit::write(
            &painter,
            x,
            rect.bottom() - 34.0,
            Align2::CENTER_CENTER,
            16.0,
            t::TEXT,
            face.text(key),
        );
        kit::write(
            &painter,
            x,
            rect.bottom() - 14.0,
            Align2::CENTER_CENTER,
            17.0,
            t::LAMP_LIT,
            format!("{} = {digit}", lit.join(" + ")),
        );
    }
    ui.label(RichText::new(face.text("sheet-lamps-example")).color(t::PRINT_ACCENT));
    ui.label(face.text("sheet-lamps-pages"));
    ui.label(face.text("sheet-lamps-lock"));
}

fn codes(ui: &mut Ui, face: &Face) {
    ui.label(face.text("sheet-codes-intro"));
    let board = &face.bench.job().board;
    let mut codes: Vec<_> = board.codes.iter().collect();
    codes.sort_by_key(|c| c.code);
    for (n, code) in codes.into_iter().enumerate() {
        let fill = if n % 2 == 0 { t::PAPER_SHADE } else { t::PAPER };
        egui::Frame::new()
            .fill(fill)
            .inner_margin(egui::Margin::symmetric(8, 6))
            .corner_radius(4)
            .show(ui, |ui| {
                ui.set_width(ui.available_width());
                ui.horizontal_top(|ui| {
                    ui.label(
                        RichText::new(format!("{:02}", code.code))
                            .size(24.0)
                            .color(t::PRINT_ACCENT),
                    );
                    ui.vertical(|ui| {
                        ui.label(
                            RichText::new(face.text(&format!("monitor-{}", code.monitor)))
                                .color(t::PRINT)
                                .strong(),
                        );
                        for entry in board.sheet.iter().filter(|e| e.monitor == code.monitor) {
                            let suspects: Vec<String> =
                                entry.suspects.iter().map(|c| face.part(*c)).collect();
                            ui.label(
                                RichText::new(suspects.join(" · "))
                                    .size(t::SMALL)
                                    .color(t::PRINT_QUIET),
                            );
                            let checks: Vec<String> = entry
                                .checks
                                .iter()
                                .map(|key| format!("– {}", face.text(key)))
                                .collect();
                            ui.label(RichText::new(checks.join("\n")).size(t::SMALL));
                        }
                    });
                });
            });
    }
}

fn menu(ui: &mut Ui, face: &Face) {
    ui.label(face.text("sheet-menu-intro"));
    let board = &face.bench.job().board;
    let (rect, painter) = kit::canvas(ui, 170.0);
    let middle = rect.center();
    dial(&painter, middle, 48.0);
    for i in 0..24u8 {
        let used = board.menu.iter().any(|m| m.position == i);
        let p = middle + Vec2::angled(f32::from(i) / 24.0 * TAU - PI / 2.0) * 69.0;
        let (size, ink) = if used {
            (16.0, t::PRINT_ACCENT)
        } else {
            (12.0, t::PRINT_QUIET)
        };
        kit::write(&painter, p.x, p.y, Align2::CENTER_CENTER, size, ink, i);
    }
    egui::Grid::new("menu")
        .num_columns(2)
        .striped(true)
        .spacing([14.0, 7.0])
        .show(ui, |ui| {
            for entry in &board.menu {
                ui.label(
                    RichText::new(entry.position.to_string())
                        .size(18.0)
                        .color(t::PRINT_ACCENT),
                );
                ui.label(face.text(&format!("routine-{}", entry.routine)));
                ui.end_row();
            }
        });
    ui.label(RichText::new(face.text("sheet-programs")).color(t::PRINT_ACCENT));
    egui::Grid::new("programs")
        .num_columns(2)
        .striped(true)
        .spacing([14.0, 7.0])
        .show(ui, |ui| {
            for program in &board.programs {
                ui.label(
                    RichText::new(program.position.to_string())
                        .size(18.0)
                        .color(t::PRINT_ACCENT),
                );
                ui.label(face.text(&program.name));
                ui.end_row();
            }
        });
}

fn pins(ui: &mut Ui, face: &Face) {
    ui.label(face.text("sheet-pins-intro"));
    for connector in &face.bench.job().board.connectors {
        kit::print_heading(ui, connector.label.clone());
        egui::Grid::new(&connector.label)
            .num_columns(3)
            .striped(true)
            .spacing([12.0, 5.0])
            .min_col_width(30.0)
            .show(ui, |ui| {
                for pin in &connector.pins {
                    let name = pin.terminal.name();
                    ui.label(RichText::new(pin.pin.to_string()).color(t::PRINT_ACCENT));
                    ui.label(RichText::new(&pin.label).monospace());
                    ui.label(format!(
                        "{}  {}",
                        face.part(pin.terminal.component()),
                        &name[name.len() - 1..]
                    ));
                    ui.end_row();
                }
            });
    }
}
