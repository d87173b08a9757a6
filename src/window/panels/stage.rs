//! What is written over the scene: captions, the dial's position, names, messages.

use super::{PanelContext, kit, spoken};
use crate::pointing::{Pick, Pointing};
use crate::scene::console::lamps::Shine;
use crate::scene::console::print::PrintedStroke;
use crate::scene::grips::{GripKind, Outline, SceneGrip};
use crate::state::{Guidance, MESSAGE_S};
use crate::stops::WET_FLOOR_L;
use crate::tokens as t;
use bevy_egui::egui::accesskit::Live;
use bevy_egui::egui::{
    self, Align2, Color32, CornerRadius, FontId, Pos2, Rect, RichText, Stroke, StrokeKind, Ui, vec2,
};
use detent_content::Value;
use detent_simulation::controller::Selector;
use detent_simulation::interface::Button;

fn pill(
    ui: &Ui,
    at: Pos2,
    anchor: Align2,
    text: &str,
    ink: Color32,
    edge: Color32,
    within: Rect,
) -> Rect {
    let painter = ui.painter();
    let wrap = within.width() - 60.0;
    let galley = painter.layout(text.to_owned(), FontId::proportional(t::BODY), ink, wrap);
    let rect = anchor.anchor_size(at, galley.size() + vec2(24.0, 12.0));
    // Nothing hangs over the edge of the scene.
    let room = within.shrink(6.0);
    let right = (room.left() - rect.left()).max(0.0) - (rect.right() - room.right()).max(0.0);
    let rect = rect.translate(vec2(right, (room.top() - rect.top()).max(0.0)));
    painter.rect(
        rect,
        CornerRadius::same(9),
        t::INK.gamma_multiply(0.94),
        Stroke::new(1.0, edge),
        StrokeKind::Inside,
    );
    painter.galley(rect.min + vec2(12.0, 6.0), galley, ink);
    rect
}

/// What the panels draw of the console, where the scene leaves it to them.
pub(super) struct ConsoleOverlay<'a> {
    /// Lit lamps.
    pub lit: &'a [Shine],
    /// Print.
    pub print: &'a [PrintedStroke],
    /// Where knob, buttons, lamps, lid and plug are.
    pub grips: &'a [SceneGrip],
}

/// Whether the guide's step needs it: by its own name, or by the name of a button that does the same to it.
fn is_needed(ui: &Ui, context: &PanelContext, kind: GripKind) -> bool {
    let marked = |key: &str| kit::is_marked(ui, &context.text(key));
    match kind {
        GripKind::Lamps => marked("sheet-lamps"),
        GripKind::Pick(Pick::Lid) => marked("do-open-lid") || marked("do-close-lid"),
        GripKind::Pick(Pick::Plug) => marked("do-plug") || marked("do-unplug"),
        GripKind::Pick(pick @ (Pick::Knob | Pick::Button(_) | Pick::Part(_))) => {
            kit::is_marked(ui, &name_of(context, pick))
        }
    }
}

/// A line round what the guide's step needs of the machine.
fn lit_grips(ui: &Ui, rect: Rect, context: &PanelContext, grips: &[SceneGrip]) {
    if context.ui_state.guidance == Guidance::Nothing {
        return;
    }
    let painter = ui.painter().with_clip_rect(rect);
    let line = Stroke::new(3.0, t::SKY);
    for grip in grips {
        if is_needed(ui, context, grip.kind) {
            match grip.outline {
                Outline::Ring(middle, radius) => {
                    painter.circle_stroke(Pos2::new(middle.x, middle.y), radius, line);
                }
                Outline::Corners(corners) => {
                    let corners = corners.map(|at| Pos2::new(at.x, at.y)).to_vec();
                    painter.add(egui::Shape::closed_line(corners, line));
                }
            }
        }
    }
}

/// Print over a scene that is drawn small.
fn sharp_print(ui: &Ui, rect: Rect, print: &[PrintedStroke]) {
    let painter = ui.painter().with_clip_rect(rect);
    for stroke in print {
        let points = stroke.points.iter().map(|p| Pos2::new(p.x, p.y)).collect();
        painter.line(points, Stroke::new(stroke.width, stroke.color));
    }
}

/// Lit lamps with disc, ring and halo, and lit bars, where the scene leaves them to us.
fn lit_lamps(ui: &Ui, rect: Rect, shining: &[Shine]) {
    let painter = ui.painter().with_clip_rect(rect);
    for lamp in shining {
        let (colour, radius) = (lamp.colour, lamp.radius);
        let middle = Pos2::new(lamp.at.x, lamp.at.y);
        let mut halo = egui::Mesh::default();
        halo.colored_vertex(middle, colour.gamma_multiply(0.55));
        for i in 0..=24 {
            let out = egui::Vec2::angled(i as f32 / 24.0 * std::f32::consts::TAU);
            halo.colored_vertex(middle + out * radius * 3.6, Color32::TRANSPARENT);
        }
        for i in 1..=24 {
            halo.add_triangle(0, i, i + 1);
        }
        painter.add(egui::Shape::mesh(halo));
        if lamp.corners.is_empty() {
            painter.circle_filled(middle, radius, colour);
            painter.circle_stroke(middle, radius * 1.5, Stroke::new(radius * 0.22, colour));
        } else {
            let corners = lamp.corners.iter().map(|p| Pos2::new(p.x, p.y)).collect();
            painter.add(egui::Shape::convex_polygon(corners, colour, Stroke::NONE));
        }
    }
}

/// Darkens the corners of the scene.
fn vignette(ui: &Ui, rect: Rect) {
    let mut mesh = egui::Mesh::default();
    let around = 48;
    for i in 0..=around {
        let out = egui::Vec2::angled(i as f32 / around as f32 * std::f32::consts::TAU);
        let half = rect.size() / 2.0;
        mesh.colored_vertex(rect.center() + out * half * 1.02, Color32::TRANSPARENT);
        mesh.colored_vertex(
            rect.center() + out * half * 1.46,
            Color32::from_black_alpha(120),
        );
    }
    for i in 0..around {
        let first = 2 * i;
        mesh.add_triangle(first, first + 1, first + 3);
        mesh.add_triangle(first, first + 3, first + 2);
    }
    ui.painter()
        .with_clip_rect(rect)
        .add(egui::Shape::mesh(mesh));
}

pub(super) fn name_of(context: &PanelContext, pick: Pick) -> String {
    match pick {
        Pick::Knob => context.text(match context.bench.job().board.panel.selector {
            Selector::Switch { .. } => "name-switch",
            Selector::Dial { .. } | Selector::Steps => "name-dial",
        }),
        Pick::Button(Button::Start) => context.text("name-start"),
        Pick::Button(Button::Stop) => context.text("name-stop"),
        Pick::Button(Button::More) => context.text("name-more"),
        Pick::Button(Button::Less) => context.text("name-less"),
        Pick::Lid => context.text("name-lid"),
        Pick::Plug => context.text("name-plug"),
        Pick::Part(part) => context.part(part),
    }
}

/// Where the knob stands, and which buttons stay down without a hand.
pub(super) fn hands_ui(ui: &mut Ui, context: &mut PanelContext) {
    ui.horizontal_centered(|ui| {
        ui.spacing_mut().item_spacing.x = 8.0;
        let position = Value::from(context.bench.view().machine.dial_position);
        let at = match context.bench.job().board.panel.selector {
            Selector::Dial { .. } => Some("dial-at"),
            Selector::Switch { .. } => Some("dial-switch-at"),
            Selector::Steps => None,
        };
        if let Some(key) = at {
            let text = context.with(key, &[("position", position)]);
            ui.label(RichText::new(text).color(t::AMBER));
        }
        let kept: Vec<Button> = context.ui_state.held.kept().collect();
        for button in kept {
            let name = context.text(&format!("button-{button}"));
            let text = context.with("keep-down", &[("button", Value::from(name))]);
            let let_go = kit::choice(ui, true, text);
            if let_go.on_hover_text(context.text("keep-let-go")).clicked() {
                let action = context.ui_state.held.push(button, false);
                context.bench.queue_some(action);
            }
        }
        if context.bench.film().is_some() {
            return;
        }
        kit::at_right_end(ui, |ui| {
            let on = context.ui_state.held.keep_next;
            let choice = kit::choice(ui, on, context.text("keep-next"));
            if choice.on_hover_text(context.text("keep-how")).clicked() {
                context.ui_state.held.keep_next = !on;
            }
        });
    });
}

pub(super) fn stage_ui(
    ui: &mut Ui,
    rest: Rect,
    context: &mut PanelContext,
    pointing: &Pointing,
    overlay: &ConsoleOverlay,
    now: f32,
) {
    sharp_print(ui, rest, overlay.print);
    lit_lamps(ui, rest, overlay.lit);
    if !context.ui_state.flat {
        vignette(ui, rest);
    }
    lit_grips(ui, rest, context, overlay.grips);
    spoken::console_ui(ui, rest, context, overlay.grips, now);
    let view = context.bench.view();
    // What moves and sounds.
    let mut captions: Vec<String> = view
        .machine
        .sounds
        .iter()
        .map(|sound| context.text(&format!("sound-{sound}")))
        .collect();
    if view.machine.floor_l > WET_FLOOR_L {
        captions.insert(
            0,
            context.with(
                "sound-floor-wet",
                &[(
                    "litres",
                    Value::from((view.machine.floor_l * 10.0).round() / 10.0),
                )],
            ),
        );
    }
    let foot = rest.center_bottom() - vec2(0.0, 12.0);
    let text = if context.bench.set_aside && !context.ui_state.keys {
        context.text("paused-elsewhere")
    } else if captions.is_empty() {
        context.text("sound-none")
    } else {
        captions.join("  ·  ")
    };
    let heard = pill(
        ui,
        foot,
        Align2::CENTER_BOTTOM,
        &text,
        t::TEXT,
        t::LINE,
        rest,
    );
    spoken::live_line(ui, "heard", heard, Live::Polite, || text.clone());
    let mut head = rest.center_top() + vec2(0.0, 56.0);
    let finished = context.bench.view().finished;
    if let Some(stop) = context.ui_state.stopped.filter(|_| !finished) {
        let text = context.with("stopped", &[("why", Value::from(context.text(stop.key())))]);
        let told = pill(
            ui,
            head,
            Align2::CENTER_TOP,
            &text,
            t::AMBER,
            t::AMBER,
            rest,
        );
        spoken::live_line(ui, "stopped", told, Live::Polite, || text.clone());
        head.y = told.bottom() + 8.0;
    }
    if let Some((message, since)) = &context.ui_state.message {
        if now - since < MESSAGE_S {
            let told = pill(ui, head, Align2::CENTER_TOP, message, t::BAD, t::BAD, rest);
            spoken::live_line(ui, "message", told, Live::Assertive, || message.clone());
        } else {
            context.ui_state.message = None;
        }
    }
    if let Some(pick) = pointing.over {
        let at = match pick {
            // Beside the pointer it would lie over the lamps that must be read.
            Pick::Knob | Pick::Button(_) => foot - vec2(0.0, 36.0),
            Pick::Lid | Pick::Plug | Pick::Part(_) => {
                Pos2::new(pointing.at.x, pointing.at.y) - vec2(0.0, 14.0)
            }
        };
        let name = name_of(context, pick);
        pill(
            ui,
            at,
            Align2::CENTER_BOTTOM,
            &name,
            t::TEXT,
            t::AMBER,
            rest,
        );
    }
}
