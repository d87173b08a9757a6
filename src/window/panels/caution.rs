//! The caution before something that can hurt: signal word, what, how to avoid it, a choice.

use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{
    self, Color32, CornerRadius, Frame, Id, Margin, Modal, RichText, Sense, Stroke, Ui, pos2, vec2,
};
use detent_training::bench::SignalWord;

/// Ground and ink of a signal word's band.
fn colours(word: SignalWord) -> (Color32, Color32) {
    match word {
        SignalWord::Danger => t::DANGER,
        SignalWord::Warning => t::WARNING,
        SignalWord::Caution => t::CAUTION,
    }
}

/// Triangle with an exclamation mark, our own drawing of the usual alert sign.
fn sign(ui: &mut Ui, ground: Color32, ink: Color32) {
    let (rect, _) = ui.allocate_exact_size(vec2(46.0, 42.0), Sense::hover());
    let painter = ui.painter();
    let points = [
        pos2(rect.center().x, rect.top()),
        rect.right_bottom(),
        rect.left_bottom(),
    ];
    painter.add(egui::Shape::convex_polygon(
        points.to_vec(),
        ink,
        Stroke::new(2.0, ink),
    ));
    let x = rect.center().x;
    painter.rect_filled(
        egui::Rect::from_min_max(
            pos2(x - 2.6, rect.top() + 13.0),
            pos2(x + 2.6, rect.bottom() - 13.0),
        ),
        CornerRadius::same(2),
        ground,
    );
    painter.circle_filled(pos2(x, rect.bottom() - 7.0), 3.0, ground);
}

pub(super) fn caution_ui(ctx: &egui::Context, context: &mut PanelContext) {
    let Some((_, caution)) = context.bench.asked.clone() else {
        return;
    };
    let word = caution.signal_word();
    let (ground, ink) = colours(word);
    let frame = Frame::new()
        .fill(t::CARD)
        .corner_radius(CornerRadius::same(10))
        .stroke(Stroke::new(2.0, ground));
    let modal = Modal::new(Id::new("caution"))
        .frame(frame)
        .backdrop_color(Color32::from_black_alpha(150));
    modal.show(ctx, |ui| {
        let width = 520.0_f32.min(ui.ctx().content_rect().width() - 24.0);
        ui.set_width(width);
        ui.spacing_mut().item_spacing.y = 0.0;
        let band = CornerRadius {
            nw: 10,
            ne: 10,
            sw: 0,
            se: 0,
        };
        let title = Frame::new()
            .fill(ground)
            .corner_radius(band)
            .inner_margin(Margin::symmetric(18, 12))
            .show(ui, |ui| {
                ui.set_width(width - 36.0);
                ui.horizontal(|ui| {
                    sign(ui, ground, ink);
                    ui.add_space(6.0);
                    let word = context.texts.signal_word(word);
                    ui.label(RichText::new(word).size(34.0).color(ink))
                })
                .inner
            })
            .inner;
        kit::dialog(ui, &title);
        Frame::new()
            .inner_margin(Margin::symmetric(18, 14))
            .show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 10.0;
                ui.label(RichText::new(context.texts.caution(caution)).size(18.0));
                let each = ((width - 36.0 - 12.0) / 2.0).max(180.0);
                ui.horizontal_wrapped(|ui| {
                    let back = kit::choice_sized(
                        ui,
                        true,
                        context.text("caution-step-back"),
                        vec2(each, 40.0),
                    );
                    if ui.memory(|m| m.focused()).is_none() {
                        back.request_focus();
                    }
                    if back.clicked() {
                        context.bench.step_back();
                    }
                    if kit::choice_sized(ui, false, context.text("caution-go-on"), vec2(each, 40.0))
                        .clicked()
                    {
                        context.bench.go_on();
                    }
                });
            });
    });
}
