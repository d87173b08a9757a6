//! Safe work: the machine as it stands, and steps to put in order or what a deed would bring; or a bench in a picture.

use super::{Above, Look, beside, digit_pressed, hazard, option_ui, place_text};
use crate::drill::Question;
use crate::panels::{PanelContext, kit};
use crate::tokens as t;
use bevy_egui::egui::{Label, RichText, Ui};
use detent_content::Value;
use detent_training::practice::drill::safe_work::{Marked, SafeWorkTask};

/// The question of this drill.
type Asked = Question<SafeWorkTask, Vec<usize>, Marked>;

pub(super) fn safe_work_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    if let Some(n) = digit_pressed(ui, context).filter(|n| *n < q.task.choices()) {
        choose(q, n);
    }
    if let SafeWorkTask::Hazard(task) = &q.task {
        let given = q.given.first().copied();
        if let Some(n) = hazard::hazard_ui(ui, context, task, given, q.marked.as_ref()) {
            choose(q, n);
        }
    } else {
        beside(ui, context, q, Above::Left, state_ui, choices_ui);
    }
}

/// Chooses a place: the next of an order, or, where it is in it already, takes it and what follows out again; else the
/// one that counts.
fn choose(q: &mut Asked, n: usize) {
    if q.marked.is_some() {
        return;
    }
    match (&q.task, q.given.iter().position(|given| *given == n)) {
        (SafeWorkTask::Deed(_) | SafeWorkTask::Hazard(_), _) => q.given = vec![n],
        (SafeWorkTask::Order(_), Some(at)) => q.given.truncate(at),
        (SafeWorkTask::Order(_), None) => q.given.push(n),
    }
}

fn state_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    let (place, facts) = match &q.task {
        SafeWorkTask::Order(task) => (&task.place, &task.facts),
        SafeWorkTask::Deed(task) => (&task.place, &task.facts),
        SafeWorkTask::Hazard(_) => return,
    };
    kit::card(ui, |ui| {
        kit::quiet(ui, place_text(context, place));
        kit::heading(ui, context.text("drill-safe-state"));
        for fact in context.texts.safe_facts(facts) {
            ui.add(Label::new(fact).wrap());
        }
    });
}

fn choices_ui(ui: &mut Ui, context: &mut PanelContext, q: &mut Asked) {
    let texts = context.texts;
    let (ask, options): (String, Vec<String>) = match &q.task {
        SafeWorkTask::Order(task) => (
            context.text("drill-safe-ask-order"),
            task.steps
                .iter()
                .map(|step| texts.safe_step(*step))
                .collect(),
        ),
        SafeWorkTask::Deed(task) => {
            let step = Value::from(texts.safe_step(task.deed));
            let options = task.options.iter();
            (
                context.with("drill-safe-ask-deed", &[("step", step)]),
                options.map(|brings| texts.safe_outcome(*brings)).collect(),
            )
        }
        SafeWorkTask::Hazard(_) => return,
    };
    ui.label(RichText::new(ask).size(18.0));
    for (n, option) in options.iter().enumerate() {
        let at = q.given.iter().position(|given| *given == n);
        let is_order = matches!(q.task, SafeWorkTask::Order(_));
        let look = match &q.marked {
            None => Look::Open(at.is_some()),
            Some(Marked::Choice { should, chosen }) => Look::of(n, Some(*chosen), Some(*should)),
            Some(Marked::Order(Some((wrong, _)))) if at == Some(*wrong) => Look::Wrong,
            Some(Marked::Order(Some((wrong, _)))) if at > Some(*wrong) => Look::Other,
            Some(Marked::Order(_)) => Look::Right(true),
        };
        let text = match at.filter(|_| is_order) {
            Some(at) => format!("{}.  {option}", at + 1),
            None => option.clone(),
        };
        if option_ui(ui, n + 1, look, &text, |_| {}).clicked() {
            choose(q, n);
        }
    }
    told_ui(ui, context, q);
}

/// What came of an order.
fn told_ui(ui: &mut Ui, context: &PanelContext, q: &Asked) {
    let (SafeWorkTask::Order(task), Some(Marked::Order(stumble))) = (&q.task, &q.marked) else {
        return;
    };
    let texts = context.texts;
    kit::card(ui, |ui| match stumble {
        None => {
            ui.label(RichText::new(context.text("drill-safe-order-safe")).color(t::GOOD));
        }
        Some((n, stumble)) => {
            let step = q.given.get(*n).and_then(|place| task.steps.get(*place));
            let step = step.map_or_else(String::new, |step| texts.safe_step(*step));
            let args = [
                ("number", Value::from(n + 1)),
                ("step", Value::from(step)),
                ("why", Value::from(texts.safe_stumble(stumble))),
            ];
            let text = context.with("drill-safe-order-wrong", &args);
            ui.add(Label::new(RichText::new(text).color(t::BAD)).wrap());
            let steps: Vec<String> = task.sound.iter().map(|s| texts.safe_step(*s)).collect();
            let args = [("steps", Value::from(steps.join("; ")))];
            let text = context.with("drill-safe-order-sound", &args);
            ui.add(Label::new(RichText::new(text).color(t::QUIET)).wrap());
        }
    });
}
