//! Looking, feeling and turning by hand; putting right what needs no part.

use super::icon::Icon;
use super::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{self, RichText, Ui};
use detent_simulation::interface::{Component as Part, WaterPipe};
use detent_training::bench::Action;

/// Room for the name of a part, logical pixels; what can be done with it wraps beside it.
const NAME_WIDTH: f32 = 112.0;

pub(super) fn look_ui(ui: &mut Ui, context: &mut PanelContext) {
    let heading = context.text("look");
    let list = egui::CollapsingHeader::new(&heading)
        .id_salt("look")
        .show(ui, |ui| {
            kit::quiet(ui, context.text("look-intro"));
            for part in Part::ALL {
                ui.horizontal_top(|ui| {
                    let name = context.part(*part);
                    ui.allocate_ui(egui::vec2(NAME_WIDTH, 0.0), |ui| {
                        ui.set_width(NAME_WIDTH);
                        let label = RichText::new(&name).size(t::SMALL);
                        let label = ui.add(egui::Label::new(label).wrap());
                        kit::mark_as(ui, &name, label);
                    });
                    ui.vertical(|ui| {
                        ui.horizontal_wrapped(|ui| hands_on_ui(ui, context, *part));
                        match part {
                            Part::Taps => taps_ui(ui, context),
                            Part::Laundry => laundry_ui(ui, context),
                            Part::Supply => {
                                let tripped = context.bench.view().outlet_tripped;
                                let reset = context.text("do-reset-outlet");
                                let reset = kit::small_deed_if(ui, tripped, Icon::Outlet, reset);
                                if reset.clicked() {
                                    context.act(Action::ResetOutlet);
                                }
                            }
                            _ => {}
                        }
                    });
                });
            }
        });
    if list.fully_closed() {
        kit::mark_as(ui, &heading, list.header_response);
    }
    found_ui(ui, context);
}

/// What hands and eyes found, the latest last, so that nothing above it moves. What is new is scrolled to.
fn found_ui(ui: &mut Ui, context: &mut PanelContext) {
    let log = context.bench.view().log;
    let found = log.found();
    if found.is_empty() {
        kit::quiet(ui, context.text("found-empty"));
    }
    let is_news = found.len() > context.ui_state.looks_seen;
    let mut buckets = log.bucket_tests().iter().peekable();
    let bucket_ui = |ui: &mut Ui, test| {
        ui.label(RichText::new(context.texts.bucket_test(test)).size(t::SMALL));
    };
    for (n, look) in found.iter().enumerate() {
        while let Some(test) = buckets.next_if(|test| test.at <= look.at) {
            bucket_ui(ui, test);
        }
        let shown = ui.scope(|ui| {
            ui.horizontal(|ui| {
                ui.label(RichText::new(context.part(look.component)).color(t::AMBER));
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    kit::quiet(ui, look.at.to_string());
                });
            });
            if look.findings.is_empty() {
                kit::quiet(ui, context.text("finding-nothing"));
            }
            for finding in &look.findings {
                ui.label(RichText::new(context.text(&format!("finding-{finding}"))).size(t::SMALL));
            }
        });
        if is_news && n + 1 == found.len() {
            shown.response.scroll_to_me(None);
        }
    }
    for test in buckets {
        bucket_ui(ui, test);
    }
    context.ui_state.looks_seen = found.len();
}

/// What hands do with any part.
fn hands_on_ui(ui: &mut Ui, context: &mut PanelContext, part: Part) {
    if kit::small_deed(ui, Icon::Eye, context.text("do-inspect")).clicked() {
        context.act(Action::Inspect(part));
    }
    if part.can_be_put_right() {
        let hand_work = context.text(&format!("hand-work-{part}"));
        let deed = kit::small_deed(ui, Icon::Wrench, hand_work);
        let takes = context.texts.hand_work_takes(part);
        if deed.on_hover_text(takes).clicked() {
            context.act(Action::PutRight(part));
        }
    }
}

/// Shut them, or the bucket under each pipe while they are shut. Each keeps its place whether or not it can be done now.
fn taps_ui(ui: &mut Ui, context: &mut PanelContext) {
    let shut = context.bench.view().taps_shut;
    let text = context.text("do-shut-taps");
    if kit::small_deed_if(ui, !shut, Icon::Faucet, text).clicked() {
        context.act(Action::ShutTaps);
    }
    ui.horizontal_wrapped(|ui| {
        for pipe in WaterPipe::ALL {
            let bucket = context.text(&format!("do-bucket-{pipe}"));
            if kit::small_deed_if(ui, shut, Icon::Bucket, bucket).clicked() {
                context.act(Action::BucketTest(*pipe));
            }
        }
    });
}

/// Out of the basket, or back in.
fn laundry_ui(ui: &mut Ui, context: &mut PanelContext) {
    let (key, action) = if context.bench.view().basket_empty {
        ("do-load-basket", Action::LoadBasket)
    } else {
        ("do-unload-basket", Action::UnloadBasket)
    };
    if kit::small_deed(ui, Icon::Basket, context.text(key)).clicked() {
        context.act(action);
    }
}
