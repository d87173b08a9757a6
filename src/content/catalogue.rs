//! The catalogue of failure modes.

use super::error::{Allowed, ContentError, Problem, Wanted};
use super::parts::Parts;
use super::reader::{Finding, Page, repeated};
use detent_simulation::interface::Component;
use detent_simulation::plant::{FailureMode, Op, Param, Presence, Stress};
use detent_training::lesson::{FoundBy, MOST_WEIGHT};
use serde::{Deserialize, Serialize};

/// Every way in which a component of the machine fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Catalogue {
    /// The modes, in the order of the file. Draws go by this order.
    pub modes: Vec<FailureMode>,
    /// Which of them each watch of a control finds in the customer's wash.
    #[serde(default)]
    pub found_by: FoundBy,
}

impl Catalogue {
    /// The mode of this name.
    pub fn mode(&self, id: &str) -> Option<&FailureMode> {
        self.modes.iter().find(|mode| mode.id == id)
    }
}

/// Read the catalogue; the parts that cure must be in `parts`.
///
/// # Errors
/// The first mistake in the file.
pub fn read_catalogue(file: &str, bytes: &[u8], parts: &Parts) -> Result<Catalogue, ContentError> {
    let page = Page::open(file, bytes)?;
    let catalogue: Catalogue = page.parse()?;
    let ids: Vec<&str> = catalogue.modes.iter().map(|m| m.id.as_str()).collect();
    let mut findings = repeated(&page, &ids, |n| format!("modes[{n}].id"));
    if catalogue.modes.is_empty() {
        let problem = Problem::Nothing(Wanted::Catalogue);
        findings.push(("modes".to_owned(), problem));
    }
    for (n, mode) in catalogue.modes.iter().enumerate() {
        let in_mode = check(mode, parts).into_iter();
        findings.extend(in_mode.map(|(field, problem)| (format!("modes[{n}].{field}"), problem)));
    }
    for (monitor, modes) in &catalogue.found_by {
        let path = |n: usize| format!("found_by.{monitor:?}[{n}]");
        let names: Vec<&str> = modes.iter().map(String::as_str).collect();
        findings.extend(repeated(&page, &names, path));
        for (n, id) in modes.iter().enumerate() {
            if catalogue.mode(id).is_none() {
                findings.push((path(n), Problem::UnknownMode(id.clone())));
            }
        }
    }
    page.judge(catalogue, findings)
}

/// The longest that a fault stays, stays away or grows, s: about a year.
const LONGEST_SPELL_S: f64 = 3e7;

/// What is wrong in one mode, paths beginning inside it.
fn check(mode: &FailureMode, parts: &Parts) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    let mut found = |field: &str, problem| findings.push((field.to_owned(), problem));
    if mode.id.trim().is_empty() {
        found("id", Problem::Nothing(Wanted::ModeName));
    }
    if !(mode.weight > 0.0 && mode.weight <= MOST_WEIGHT) {
        let allowed = Allowed::Weight;
        found("weight", out_of_range(mode.weight, allowed));
    }
    // A wiped memory needs no part either: recalibration teaches the board anew.
    let learned = |(param, _): &(Param, Op)| *param == Param::MemoryLost;
    let learns = mode.component == Component::Board && mode.changes.iter().all(learned);
    if mode.by_hand && !mode.component.can_be_put_right() {
        let problem = Problem::Nothing(Wanted::NoHands);
        found("by_hand", problem);
    }
    match parts.part(&mode.cured_by) {
        None if mode.cured_by.is_empty() && (mode.by_hand || learns) => {}
        None if mode.cured_by.is_empty() => {
            let problem = Problem::Nothing(Wanted::Cure);
            found("cured_by", problem);
        }
        None => found("cured_by", Problem::UnknownPart(mode.cured_by.clone())),
        Some(part) if part.component != mode.component => {
            found("cured_by", Problem::UnfitPart(mode.cured_by.clone()));
        }
        Some(_) => {}
    }
    if mode.changes.is_empty() {
        let problem = Problem::Nothing(Wanted::Change);
        found("changes", problem);
    }
    for (k, (param, op)) in mode.changes.iter().enumerate() {
        if param.component() != mode.component {
            let problem = Problem::ForeignParam {
                param: format!("{param:?}"),
                owner: param.component(),
                component: mode.component,
            };
            found(&format!("changes[{k}].0"), problem);
        }
        if let Op::Scale(factor) = *op
            && factor < 0.0
        {
            let problem = out_of_range(factor, Allowed::Factor);
            found(&format!("changes[{k}].1"), problem);
        }
    }
    let lengths = match mode.presence {
        Presence::Steady => Vec::new(),
        Presence::Intermittent {
            good_s,
            bad_s,
            under,
        } => {
            if let Some(bound) = under.map(bound).filter(|bound| *bound <= 0.0) {
                found("presence.under", out_of_range(bound, Allowed::Bound));
            }
            vec![("presence.good_s", good_s), ("presence.bad_s", bad_s)]
        }
        Presence::Drift { full_after_s } => vec![("presence.full_after_s", full_after_s)],
    };
    for (field, length_s) in lengths {
        if !(length_s > 0.0 && length_s <= LONGEST_SPELL_S) {
            let allowed = Allowed::Spell;
            found(field, out_of_range(length_s, allowed));
        }
    }
    findings
}

fn bound(stress: Stress) -> f64 {
    match stress {
        Stress::HotWinding { above_c } | Stress::HotBoard { above_c } => above_c,
        Stress::Spinning { above_rpm } => above_rpm,
        Stress::Wet { above_mm } => above_mm,
    }
}

fn out_of_range(found: f64, allowed: Allowed) -> Problem {
    Problem::OutOfRange { found, allowed }
}
