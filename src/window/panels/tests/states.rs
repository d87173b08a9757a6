//! Colors as they are drawn: every kind of control in every state, on every ground that it stands on.

use super::*;
use crate::tokens::tests::contrast;
use egui::{Color32, Pos2, Shape};

/// A kind of control.
type Draw = fn(&mut Ui) -> egui::Response;

const CONTROLS: [(&str, Draw); 13] = [
    ("button", |ui| kit::button(ui, "Word")),
    ("wide", |ui| kit::wide(ui, "Word")),
    ("deed", |ui| kit::deed(ui, icon::Icon::Plug, "Word")),
    ("small deed", |ui| {
        kit::small_deed(ui, icon::Icon::Plug, "Word")
    }),
    ("go", |ui| kit::go(ui, "Word")),
    ("tab", |ui| kit::tab(ui, false, "Word", egui::Vec2::ZERO)),
    ("open tab", |ui| {
        kit::tab(ui, true, "Word", egui::Vec2::ZERO)
    }),
    ("main", |ui| kit::main_button(ui, "Word", true)),
    ("choice", |ui| kit::choice(ui, false, "Word")),
    ("chosen", |ui| kit::choice(ui, true, "Word")),
    ("stepper", |ui| kit::stepper(ui, "+", "one more")),
    ("checkbox", |ui| kit::checkbox(ui, &mut false, "Word")),
    ("ticked", |ui| kit::checkbox(ui, &mut true, "Word")),
];

#[derive(Clone, Copy, Debug, PartialEq)]
enum State {
    Resting,
    Hovered,
    Pressed,
    Focused,
}

/// Every text that is drawn, with the ground that it lies on.
fn texts(
    shapes: &[egui::epaint::ClippedShape],
    ground: Color32,
) -> Vec<(String, Color32, Color32)> {
    let mut grounds: Vec<(egui::Rect, Color32)> = Vec::new();
    let mut found = Vec::new();
    for clipped in shapes {
        match &clipped.shape {
            Shape::Rect(rect) if rect.fill.a() == 255 => grounds.push((rect.rect, rect.fill)),
            Shape::Text(text) => {
                let middle = text.visual_bounding_rect().center();
                let under = grounds.iter().rev().find(|(rect, _)| rect.contains(middle));
                let under = under.map_or(ground, |(_, fill)| *fill);
                for section in &text.galley.job.sections {
                    let own = match section.format.color {
                        Color32::PLACEHOLDER => text.fallback_color,
                        color => color,
                    };
                    let ink = text.override_text_color.unwrap_or(own);
                    found.push((text.galley.text().to_owned(), ink, under));
                }
            }
            _ => {}
        }
    }
    found
}

/// The outlines of what is drawn.
fn outlines(shapes: &[egui::epaint::ClippedShape]) -> Vec<Color32> {
    let lines = shapes.iter().filter_map(|clipped| match &clipped.shape {
        Shape::Rect(rect) if rect.stroke.width > 0.0 => Some(rect.stroke.color),
        _ => None,
    });
    lines.collect()
}

/// WCAG 2.2: 1.4.3 (text, 4.5:1) and 1.4.11 (what says that it has the keys, 3:1).
#[test]
fn every_control_can_be_read_in_every_state() {
    for (ground_name, ground) in [("panel", tokens::PANEL), ("card", tokens::CARD)] {
        for (name, draw) in CONTROLS {
            for state in [
                State::Resting,
                State::Hovered,
                State::Pressed,
                State::Focused,
            ] {
                let what = format!("{name} on {ground_name}, {state:?}");
                let mut harness = Harness::builder().with_size([300.0, 80.0]).build_ui(|ui| {
                    kit::apply_theme(ui.ctx());
                    ui.painter().rect_filled(ui.max_rect(), 0, ground);
                    ui.horizontal(|ui| {
                        draw(ui);
                    });
                    focus::ring(ui.ctx());
                });
                harness.run_steps(2);
                let inside = Pos2::new(20.0, 24.0);
                match state {
                    State::Resting => {}
                    State::Hovered => harness.hover_at(inside),
                    State::Pressed => harness.drag_at(inside),
                    State::Focused => harness.key_press(egui::Key::Tab),
                }
                harness.run_steps(12);
                let shapes = &harness.output().shapes;
                let found = texts(shapes, ground);
                assert!(!found.is_empty(), "{what}");
                for (text, ink, under) in found {
                    let ratio = contrast(ink, under);
                    assert!(
                        ratio >= 4.5,
                        "{what}: {text} {ink:?} on {under:?}: {ratio:.2}"
                    );
                }
                let rings = outlines(shapes);
                let ringed = rings.contains(&tokens::SKY) && rings.contains(&tokens::INK);
                assert_eq!(ringed, state == State::Focused, "{what}: {rings:?}");
            }
        }
    }
}

/// Bright within dark: one of the two stands out from every ground that a control stands on or has.
#[test]
fn the_ring_is_seen_on_every_ground() {
    use tokens as t;
    let grounds = [
        t::INK,
        t::PANEL,
        t::CARD,
        t::FIELD,
        t::FIELD_HOT,
        t::DEED,
        t::AMBER,
        t::LCD,
        t::PAPER,
        t::PAPER_SHADE,
        t::GLASS,
        t::GOOD,
        t::BAD,
        t::DANGER.0,
        t::WARNING.0,
        t::CAUTION.0,
        Color32::WHITE,
        Color32::BLACK,
    ];
    for ground in grounds {
        let ratio = contrast(t::SKY, ground).max(contrast(t::INK, ground));
        assert!(ratio >= 3.0, "{ground:?}: {ratio:.2}");
    }
    assert!(contrast(t::SKY, t::INK) >= 3.0);
}

/// Edges of fields and boxes to tick, and what stands for itself in them: lists, sliders, text being typed.
#[test]
fn edges_and_marks_of_fields_stand_out_in_every_state() {
    let ctx = egui::Context::default();
    kit::apply_theme(&ctx);
    let style = ctx.style_of(egui::Theme::Dark);
    let widgets = &style.visuals.widgets;
    for (name, look) in [
        ("resting", &widgets.inactive),
        ("hovered", &widgets.hovered),
        ("pressed or focused", &widgets.active),
        ("open", &widgets.open),
    ] {
        for ground in [tokens::PANEL, tokens::CARD, tokens::INK] {
            let edge = contrast(look.bg_stroke.color, ground);
            assert!(edge >= 3.0, "{name}: edge {edge:.2}");
        }
        for fill in [look.bg_fill, look.weak_bg_fill] {
            let ink = contrast(look.fg_stroke.color, fill);
            assert!(ink >= 4.5, "{name}: {ink:.2}");
        }
    }
    let selection = &style.visuals.selection;
    assert!(contrast(selection.stroke.color, selection.bg_fill) >= 4.5);
    let typed = style.visuals.text_edit_bg_color();
    assert!(contrast(tokens::TEXT, typed) >= 4.5);
    // The bar of a page that scrolls.
    assert!(contrast(tokens::TEXT, style.visuals.extreme_bg_color) >= 3.0);
}
