//! What reader and simulator say of the job: what is wrong, each leading to its field, and how people fare on it.

use super::{field_name, lead_to};
use crate::panels::{PanelContext, kit};
use crate::port::OnTheWay;
use crate::tokens as t;
use crate::workshop::{ProvedJob, Workshop, WorkshopPage};
use bevy_egui::egui::{Align, Button, Layout, Response, RichText, Ui, vec2};
use detent_content::{ContentLibrary, FileFinding, Value, Words};
use detent_training::authoring::{MachineProof, Severity};
use detent_training::lesson::Scenario;
use detent_training::reason::PathPoint;

/// Rivals that are listed.
const TOP: usize = 5;

/// How many errors and warnings there are, in words.
pub(super) fn counts(context: &PanelContext, proved: &ProvedJob) -> String {
    let told: Vec<String> = [
        (Severity::Error, "workshop-proof-errors"),
        (Severity::Warning, "workshop-proof-warnings"),
    ]
    .into_iter()
    .filter_map(|(severity, key)| {
        let count = proved.report.count(severity);
        let told = || context.with(key, &[("count", Value::from(count))]);
        (count > 0).then(told)
    })
    .collect();
    match told.is_empty() {
        true => context.text("workshop-proof-none"),
        false => told.join(", "),
    }
}

/// Draws it; from where on the expert's way the job is to be tried, if it is.
pub(super) fn proof_ui(
    ui: &mut Ui,
    context: &PanelContext,
    open: &mut Workshop,
    library: &ContentLibrary,
) -> Option<OnTheWay> {
    let mut from = None;
    let is_of_now = open.proof().of_now().is_some();
    let mut chosen = open.view.machine;
    let mut led = false;
    kit::card(ui, |ui| {
        kit::heading(ui, context.text("workshop-proof"));
        state_ui(ui, context, open);
        let Some(proved) = open.proof().last() else {
            return;
        };
        if proved.report.findings.is_empty() {
            ui.label(RichText::new(context.text("workshop-proof-sound")).color(t::GOOD));
        }
        for finding in &proved.report.findings {
            led |= finding_ui(ui, context, finding);
        }
    });
    if let Some((scenario, proof)) = open.proof().last().and_then(ProvedJob::proof) {
        kit::card(ui, |ui| {
            kit::heading(ui, context.text("workshop-proof-machines"));
            if proof.machines.len() > 1 {
                let machines = proof.machines.iter().enumerate();
                let machines = machines.map(|(n, machine)| {
                    let args = [("seed", Value::from(machine.seed.to_string()))];
                    (n, context.with("workshop-proof-seed", &args))
                });
                chosen = kit::choices(ui, chosen, machines).unwrap_or(chosen);
            }
            // A change may have left fewer of them.
            let machine = proof.machines.get(chosen).or(proof.machines.first());
            if let Some(machine) = machine {
                from = machine_ui(ui, context, (machine, scenario), library);
            }
        });
        kit::card(ui, |ui| {
            kit::heading(ui, context.text("workshop-proof-gesture"));
            ui.label(context.texts.gesture_shares(&proof.gesture));
        });
    }
    open.view.machine = chosen;
    if led {
        open.view.page = WorkshopPage::Job;
    }
    // What was proved of an earlier state is no way through this one.
    from.filter(|_| is_of_now)
}

/// Whether what follows is of the job as it is, and what is being done for it.
fn state_ui(ui: &mut Ui, context: &PanelContext, open: &Workshop) {
    let proof = open.proof();
    if !proof.is_under_way() {
        return;
    }
    let doing = match proof.step() {
        Some(step) => context.text(step.key()),
        None => context.text("workshop-proof-waits"),
    };
    kit::quiet(ui, doing);
    if proof.last().is_some() {
        let stale = context.text("workshop-proof-stale");
        ui.label(RichText::new(stale).size(t::SMALL).color(t::AMBER));
    }
}

/// A finding; whether it leads to its field now.
fn finding_ui(ui: &mut Ui, context: &PanelContext, finding: &FileFinding) -> bool {
    let severity = finding.severity();
    let color = match severity {
        Severity::Error => t::BAD,
        Severity::Warning => t::AMBER,
    };
    let weighs = context.text(&format!("author-severity-{severity}"));
    let found = context.texts.file_finding(finding);
    if finding.field.is_empty() {
        ui.label(RichText::new(format!("{weighs}: {found}")).color(color));
        return false;
    }
    let field = field_name(context, &finding.field);
    let told = RichText::new(format!("{weighs}: {field}: {found}")).color(color);
    let clicked = paragraph_button(ui, told).clicked();
    if clicked {
        lead_to(ui, &finding.field);
    }
    clicked
}

/// How it goes on one machine of the job; from where on the expert's way it is to be tried, if it is.
fn machine_ui(
    ui: &mut Ui,
    context: &PanelContext,
    (machine, scenario): (&MachineProof, &Scenario),
    library: &ContentLibrary,
) -> Option<OnTheWay> {
    let texts = context.texts;
    ui.label(RichText::new(texts.proved_machine(machine)).color(t::AMBER));
    ui.label(texts.machine_shows(machine));
    ui.label(texts.expert_needs(machine, scenario));
    if let Some(learners) = texts.simulated_learners(machine) {
        ui.label(learners);
    }
    for rival in machine.rivals.iter().take(TOP) {
        kit::quiet(ui, texts.rival(rival));
    }
    let review = machine.review.as_ref()?;
    let of_job = library.library(scenario);
    let words = Words::of(
        (&review.repair_costs, &review.modes),
        texts,
        of_job.parts,
        Some(of_job.board),
    );
    let mut from = None;
    ui.add_space(4.0);
    kit::heading(ui, context.text("author-way"));
    kit::quiet(ui, context.text("workshop-way-try"));
    for stop in &review.yours {
        let told = RichText::new(way_point(context, stop, &words)).size(t::SMALL);
        // At its end there is nothing left to try.
        let at = stop
            .at
            .filter(|at| review.yours.last().and_then(|last| last.at) != Some(*at));
        match at {
            Some(at) => {
                if paragraph_button(ui, told).clicked() {
                    let seed = machine.seed;
                    from = Some(OnTheWay { seed, at });
                }
            }
            None => {
                ui.label(told);
            }
        }
    }
    ui.add_space(4.0);
    kit::heading(ui, context.text("review-best"));
    for stop in &review.best {
        ui.label(RichText::new(way_point(context, stop, &words)).size(t::SMALL));
    }
    from
}

/// A button as wide as the panel, its words as a paragraph.
fn paragraph_button(ui: &mut Ui, told: RichText) -> Response {
    let size = vec2(ui.available_width(), 28.0);
    let from_left = Layout::top_down_justified(Align::Min);
    let row = ui.allocate_ui_with_layout(size, from_left, |ui| ui.add(Button::new(told).wrap()));
    row.inner
}

/// A deed with the time and the money that it all took so far.
fn way_point(context: &PanelContext, stop: &PathPoint, words: &Words<'_>) -> String {
    let minutes = context.texts.digits(format!("{:.1}", stop.minutes));
    let args = [
        ("minutes", Value::from(minutes)),
        ("money", context.texts.whole_money(stop.money).into()),
        ("deed", words.deed(&stop.deed).into()),
    ];
    context.with("workshop-way-point", &args)
}
