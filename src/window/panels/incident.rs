//! What hurt somebody, or flooded the floor, is felt: it stops everything and says what happened and what would have
//! prevented it.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, Color32, Frame, Id, Margin, Modal, RichText, Stroke, vec2};

/// How long a shock whitens the screen, s: one flash, within the three a second of WCAG 2.2, 2.3.1.
const FLASH_S: f64 = 0.35;

pub(super) fn incident_ui(ctx: &egui::Context, context: &mut PanelContext) {
    let Some(incident) = context.bench.incident else {
        return;
    };
    let now_s = ctx.input(|i| i.time);
    let began = Id::new("incident began");
    let since_s = now_s - ctx.data_mut(|data| *data.get_temp_mut_or(began, now_s));
    let frame = Frame::new()
        .fill(t::CARD)
        .stroke(Stroke::new(3.0, t::DANGER.0))
        .corner_radius(10)
        .inner_margin(Margin::symmetric(20, 16));
    let modal = Modal::new(Id::new("incident"))
        .frame(frame)
        .backdrop_color(Color32::from_black_alpha(190));
    let shown = modal.show(ctx, |ui| {
        ui.set_width(500.0_f32.min(ui.ctx().content_rect().width() - 64.0));
        let name = context.text(&format!("incident-{incident}"));
        let title = ui.label(RichText::new(name).size(30.0).color(t::BAD));
        kit::dialog(ui, &title);
        let text = context.text(&format!("lost-{incident}"));
        ui.label(RichText::new(text).size(18.0));
        kit::quiet(ui, context.text("incident-fails"));
        ui.add_space(6.0);
        let go_on = kit::choice_sized(ui, true, context.text("caution-go-on"), vec2(220.0, 40.0));
        if ui.memory(|m| m.focused()).is_none() {
            go_on.request_focus();
        }
        go_on.clicked()
    });
    if incident.is_a_shock() && since_s < FLASH_S {
        let alpha = 255.0 * (1.0 - since_s / FLASH_S);
        let front = egui::LayerId::new(egui::Order::Foreground, Id::new("flash"));
        let white = Color32::from_white_alpha(alpha as u8);
        (ctx.layer_painter(front)).rect_filled(ctx.viewport_rect(), 0, white);
        ctx.request_repaint();
    }
    // A press beside it does not put it away: it has to be read.
    if shown.inner || ctx.input(|i| i.key_pressed(egui::Key::Escape)) {
        context.bench.incident = None;
        ctx.data_mut(|data| data.remove_temp::<f64>(began));
    }
}
