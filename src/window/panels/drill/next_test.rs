//! Choosing the next test: belief as bars, and four things that could be done.

use super::{Above, Look, beside, digit_pressed, option_ui, place_text};
use crate::drill::Question;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{CornerRadius, Label, Rect, RichText, Sense, Ui, vec2};
use detent_content::Value;
use detent_simulation::controller::Board;
use detent_training::practice::drill::next_test::{Choice, EarlierAction, Marked, NextTestTask};

/// The question of this drill.
type Asked = Question<NextTestTask, Option<usize>, Marked>;

pub(super) fn next_test_ui(
    ui: &mut Ui,
    context: &mut PanelContext,
    board: Option<&Board>,
    q: &mut Asked,
) {
    if q.marked.is_none() {
        let chosen = digit_pressed(ui, context).filter(|n| *n < q.task.options.len());
        q.given = chosen.or(q.given);
    }
    beside(
        ui,
        context,
        q,
        Above::Left,
        |ui, context, q| kit::card(ui, |ui| belief_ui(ui, context, board, &q.task)),
        |ui, context, q| {
            let Question {
                task,
                given,
                marked,
            } = q;
            ui.label(RichText::new(context.text("drill-next-test-ask")).size(18.0));
            let should = marked.map(|marked| marked.should);
            for (n, choice) in task.options.iter().enumerate() {
                // What is as good as the best is right too.
                let mut look = Look::of(n, *given, should);
                if marked.is_some_and(|m| m.right && m.chosen == n) {
                    look = Look::Right(true);
                }
                let response =
                    option_ui(ui, n + 1, look, &deed(context, board, &choice.deed), |ui| {
                        // Its price would give the answer away: it is told afterwards.
                        if should.is_some() {
                            let cost = Value::from(choice.cost.round());
                            kit::quiet(ui, context.with("drill-next-test-cost", &[("cost", cost)]));
                            let colour = if should == Some(n) { t::GOOD } else { t::TEXT };
                            ui.label(RichText::new(repair(context, choice)).color(colour));
                        }
                    });
                if response.clicked() {
                    *given = Some(n);
                }
            }
        },
    );
}

/// Codes, what was tried, and the likeliest causes.
fn belief_ui(ui: &mut Ui, context: &PanelContext, board: Option<&Board>, task: &NextTestTask) {
    kit::quiet(ui, place_text(context, &task.place));
    let codes: Vec<String> = task.codes.iter().map(|code| format!("{code:02}")).collect();
    let codes = if codes.is_empty() {
        context.text("drill-next-test-no-codes")
    } else {
        context.with(
            "drill-next-test-codes",
            &[("codes", Value::from(codes.join(", ")))],
        )
    };
    ui.label(codes);
    for probe in &task.tested {
        let test = Value::from(context.texts.test(probe, board));
        kit::quiet(
            ui,
            context.with("drill-next-test-tested", &[("test", test)]),
        );
    }
    ui.add_space(4.0);
    kit::heading(ui, context.text("drill-next-test-belief"));
    for (mode, share) in &task.belief {
        let name = mode
            .as_ref()
            .map_or_else(|| context.text("mode-nothing"), |id| context.texts.mode(id));
        ui.add(Label::new(name).wrap());
        ui.horizontal(|ui| {
            let width = ui.available_width() - 64.0;
            let (rect, _) = ui.allocate_exact_size(vec2(width, 14.0), Sense::hover());
            ui.painter()
                .rect_filled(rect, CornerRadius::same(4), t::INK);
            let bar = Rect::from_min_size(rect.min, vec2(width * *share as f32, rect.height()));
            ui.painter().rect_filled(bar, CornerRadius::same(4), t::SKY);
            ui.label(context.texts.percent(*share, 0));
        });
    }
}

/// What is to be done, in words.
fn deed(context: &PanelContext, board: Option<&Board>, deed: &EarlierAction) -> String {
    match deed {
        EarlierAction::Test(probe) => context.texts.test(probe, board),
        EarlierAction::Repair(remedy) => context.texts.remedy(remedy, &context.bench.job().parts),
    }
}

/// What the repair is expected to cost when this is done now.
fn repair(context: &PanelContext, choice: &Choice) -> String {
    let (least, most) = choice.repair;
    let exact = most - least <= 0.01 * most;
    let key = if exact {
        "drill-next-test-repair"
    } else {
        "drill-next-test-repair-between"
    };
    let args = [
        ("least", Value::from(least.round())),
        ("most", Value::from(most.round())),
    ];
    context.with(key, if exact { &args[1..] } else { &args })
}
