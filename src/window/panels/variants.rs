//! Variants of a job: drawn, proved and listed, to be done like any other job.

use super::{PanelContext, kit};
use crate::port::JobSource;
use crate::state::{Guidance, VariantList, say};
use crate::tokens as t;
use bevy_egui::egui::{RichText, ScrollArea, TextEdit, Ui};
use detent_content::{JobVariant, Value};

/// How many can be asked for; a class takes the most.
pub(super) const COUNTS: [usize; 3] = [6, 12, 24];

/// What was asked for on this page.
#[derive(Default)]
struct Asked {
    count: Option<usize>,
    opened: Option<JobVariant>,
    closed: bool,
}

/// Draws it where the list of jobs stands.
pub(super) fn variants_ui(ui: &mut Ui, context: &mut PanelContext, jobs: &dyn JobSource) {
    let Some(mut list) = context.ui_state.variants.take() else {
        return;
    };
    if list.go_on(jobs) {
        ui.ctx().request_repaint();
    }
    let offer = &jobs.offers()[list.offer];
    let title = Value::from(say(context.ui_state.language, &offer.title).to_owned());
    kit::heading(ui, context.with("variants-of", &[("title", title)]));
    kit::quiet(ui, context.text("start-variant-note"));
    let mut asked = Asked::default();
    draw_ui(ui, context, &list, &mut asked);
    progress_ui(ui, context, &list);
    ScrollArea::vertical()
        .id_salt("variants")
        .max_height(ui.available_height() - 44.0)
        .auto_shrink(false)
        .show(ui, |ui| {
            for variant in &list.drawn {
                variant_ui(ui, context, variant, &mut asked);
            }
        });
    asked.closed = kit::go(ui, context.text("variants-back")).clicked();
    if let Some(variant) = &asked.opened {
        context.ui_state.guidance = Guidance::Nothing;
        context.ui_state.open(jobs.open_variant(variant));
    }
    if let (Some(count), Ok(seed)) = (asked.count, context.ui_state.seed.parse()) {
        // Those that were drawn stay, if they come from the same seed.
        if list.seed != seed || list.error.is_some() {
            list = VariantList::new(list.offer, seed, count);
        }
        list.count = count;
    }
    context.ui_state.variants = (!asked.closed).then_some(list);
}

/// The seed, and how many are drawn from it.
fn draw_ui(ui: &mut Ui, context: &mut PanelContext, list: &VariantList, asked: &mut Asked) {
    ui.horizontal(|ui| {
        let label = ui.label(context.text("start-seed"));
        let edit = TextEdit::singleline(&mut context.ui_state.seed)
            .desired_width(90.0)
            .char_limit(18);
        ui.add(edit).labelled_by(label.id);
        context.ui_state.seed.retain(|c| c.is_ascii_digit());
        ui.label(context.text("variants-count"));
        for count in COUNTS {
            let on = list.count == count;
            if kit::choice(ui, on, count.to_string()).clicked() {
                asked.count = Some(count);
            }
        }
    });
}

/// How far the drawing has come, or why it goes no further.
fn progress_ui(ui: &mut Ui, context: &PanelContext, list: &VariantList) {
    if let Some(error) = &list.error {
        ui.label(RichText::new(error.words(context.texts)).color(t::BAD));
        return;
    }
    let figures = [
        ("proved", Value::from(list.drawn.len())),
        ("count", Value::from(list.count)),
        ("refused", Value::from(list.refused())),
    ];
    let key = match (list.drawing.is_some(), list.exhausted) {
        (true, _) => "variants-drawing",
        (false, true) => "variants-exhausted",
        (false, false) => "variants-drawn",
    };
    kit::quiet(ui, context.with(key, &figures));
}

/// What the customer says, how hard it is, and the way in. Nothing else is told before.
fn variant_ui(ui: &mut Ui, context: &PanelContext, variant: &JobVariant, asked: &mut Asked) {
    kit::card(ui, |ui| {
        let scenario = &variant.source.scenario;
        kit::heading(ui, say(context.ui_state.language, &scenario.title));
        let complaint = say(context.ui_state.language, &scenario.complaint);
        let args = [("complaint", Value::from(complaint.to_owned()))];
        let complaint = context.with("ticket-complaint", &args);
        ui.label(RichText::new(complaint).italics());
        kit::quiet(ui, context.texts.variant_difficulty(&variant.difficulty));
        if kit::go(ui, context.text("start-begin")).clicked() {
            asked.opened = Some(variant.clone());
        }
    });
}
