//! Look-up: the code, the service sheet's page of codes, and components to tick.

use super::{Above, Look, beside, digit_pressed, option_ui, place_text};
use crate::drill::Question;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{RichText, ScrollArea, Ui};
use detent_content::Value;
use detent_simulation::interface::Component;
use detent_training::practice::drill::look_up::{CodeLookUpTask, Marked};

/// The question of this drill.
type Asked = Question<CodeLookUpTask, Vec<Component>, Marked>;

/// Room that head and foot of the window take, and the least for the page.
const TAKEN_HEIGHT: f32 = 144.0;
const LEAST_HEIGHT: f32 = 240.0;

/// The sheet's page of codes.
fn page_ui(ui: &mut Ui, context: &PanelContext, task: &CodeLookUpTask) {
    kit::print_heading(ui, place_text(context, &task.place));
    ui.label(context.text("drill-look-up-page"));
    for line in &task.page {
        ui.horizontal_top(|ui| {
            let code = RichText::new(format!("{:02}", line.code)).size(20.0);
            ui.label(code.strong().color(t::PRINT_ACCENT));
            ui.vertical(|ui| {
                ui.label(context.text(&format!("code-{}", line.monitor)));
                let suspects: Vec<String> =
                    line.suspects.iter().map(|c| context.part(*c)).collect();
                let text = RichText::new(suspects.join(" · ")).size(t::SMALL);
                ui.label(text.color(t::PRINT_QUIET));
            });
        });
    }
}

pub(super) fn look_up_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    let ticked = digit_pressed(ui, context).and_then(|n| q.task.options.get(n).copied());
    if let Some(component) = ticked.filter(|_| q.marked.is_none()) {
        tick(q, component);
    }
    beside(
        ui,
        context,
        q,
        Above::Left,
        |ui, context, q| {
            let height = ui.ctx().content_rect().height() - TAKEN_HEIGHT;
            // The page is turned by itself: the components to tick stay in sight.
            ScrollArea::vertical()
                .id_salt("codes")
                .max_height(height.max(LEAST_HEIGHT))
                .show(ui, |ui| kit::paper(ui, |ui| page_ui(ui, context, &q.task)));
        },
        |ui, context, q| {
            let code = Value::from(format!("{:02}", q.task.code));
            let ask = context.with("drill-look-up-ask", &[("code", code)]);
            ui.label(RichText::new(ask).size(18.0));
            let options = q.task.options.clone();
            let half = options.len().div_ceil(2);
            ui.columns(2, |columns| {
                for (n, component) in options.into_iter().enumerate() {
                    let ui = &mut columns[usize::from(n >= half)];
                    let on = q.given.contains(&component);
                    let look = match &q.marked {
                        None => Look::Open(on),
                        Some(_) if q.task.suspects.contains(&component) => Look::Right(on),
                        Some(_) if on => Look::Wrong,
                        Some(_) => Look::Other,
                    };
                    let missed = matches!(look, Look::Right(false));
                    let response =
                        option_ui(ui, (n + 1) % 10, look, &context.part(component), |ui| {
                            if missed {
                                let text = context.text("drill-look-up-missed");
                                ui.label(RichText::new(text).size(t::SMALL).color(t::AMBER));
                            }
                        });
                    if response.clicked() {
                        tick(q, component);
                    }
                }
            });
            if let Some(marked) = &q.marked {
                ui.add_space(8.0);
                told_ui(ui, context, marked);
            }
        },
    );
}

/// Ticks a component, or takes the tick away.
fn tick(q: &mut Asked, component: Component) {
    match q.given.iter().position(|c| *c == component) {
        Some(at) => {
            q.given.remove(at);
        }
        None => q.given.push(component),
    }
}

fn told_ui(ui: &mut Ui, context: &PanelContext, marked: &Marked) {
    let names = |list: &[Component]| -> String {
        let names: Vec<String> = list.iter().map(|c| context.part(*c)).collect();
        names.join(", ")
    };
    kit::card(ui, |ui| {
        if marked.right {
            ui.label(RichText::new(context.text("drill-look-up-all")).color(t::GOOD));
        }
        for (key, list) in [
            ("drill-look-up-left-out", &marked.missed),
            ("drill-look-up-not-listed", &marked.wrong),
        ] {
            if !list.is_empty() {
                let args = [("components", Value::from(names(list)))];
                ui.label(RichText::new(context.with(key, &args)).color(t::BAD));
            }
        }
        kit::quiet(ui, context.text("sheet-codes-intro"));
    });
}
