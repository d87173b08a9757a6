//! Scenarios.

use super::catalogue::Catalogue;
use super::error::{Allowed, ContentError, Problem, Wanted};
use super::parts::{MOST_MONEY, Parts};
use super::reader::{Finding, Page, first, repeated};
use detent_simulation::controller::Code;
use detent_simulation::plant::FailureMode;
use detent_training::bench::cost::{self, LONGEST_JOB};
use detent_training::bench::{Action, cure};
use detent_training::lesson::{
    Bilingual, DrawFilter, Hidden, MOST_WEIGHT, Mains, Scenario, candidates,
};
use std::fmt::Debug;

/// A board that scenarios may name.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownBoard {
    /// File name under `assets/boards`, without extension.
    pub name: String,
    /// Every code that it can store, with the watch behind it.
    pub codes: Vec<Code>,
    /// Supplies that it is made for.
    pub mains: Vec<Mains>,
}

impl KnownBoard {
    fn has(&self, code: u8) -> bool {
        self.codes.iter().any(|known| known.code == code)
    }
}

/// Read a scenario: its faults must be in the catalogue, its board among `boards`, and what `parts` cost
/// within its budget.
///
/// # Errors
/// The first mistake in the file.
pub fn read_scenario(
    file: &str,
    bytes: &[u8],
    catalogue: &Catalogue,
    parts: &Parts,
    boards: &[KnownBoard],
) -> Result<Scenario, ContentError> {
    check_scenario(file, bytes, catalogue, parts, boards).map_err(first)
}

/// The same for whoever wants to know all that is wrong.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn check_scenario(
    file: &str,
    bytes: &[u8],
    catalogue: &Catalogue,
    parts: &Parts,
    boards: &[KnownBoard],
) -> Result<Scenario, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let scenario: Scenario = page.parse().map_err(|error| vec![error])?;
    let mut findings = Vec::new();
    check_texts(&scenario, &mut findings);
    check_fault(&scenario, catalogue, &mut findings);
    if let Hidden::DrawFrom(ids) | Hidden::Several(ids) = &scenario.fault {
        let ids: Vec<&str> = ids.iter().map(String::as_str).collect();
        findings.extend(repeated(&page, &ids, |n| format!("fault[{n}]")));
    }
    if let Hidden::DrawWhere(filter) = &scenario.fault {
        check_repeated(&page, filter, &mut findings);
    }
    check_board(&scenario, boards, &mut findings);
    check_numbers(&scenario, &mut findings);
    if findings.is_empty() {
        let codes = boards.iter().find(|board| board.name == scenario.board);
        let codes = codes.map_or(&[][..], |board| &board.codes[..]);
        let found_by = &catalogue.found_by;
        let hidden = candidates(&scenario.fault, &catalogue.modes, (codes, found_by));
        // Every name is known.
        let hidden = hidden.unwrap_or_default();
        if hidden.is_empty() && scenario.fault.is_drawn() {
            findings.push(("fault".to_owned(), Problem::NothingToDraw));
        } else {
            check_reach(&scenario, &hidden, parts, &mut findings);
        }
    }
    page.judge_all(scenario, findings)
}

fn check_texts(scenario: &Scenario, findings: &mut Vec<Finding>) {
    for (field, text) in [
        ("title", &scenario.title),
        ("complaint", &scenario.complaint),
        ("goal", &scenario.goal),
    ] {
        findings.extend(unwritten(field, text));
    }
}

/// The languages in which the sentence in `field` is not written.
pub(super) fn unwritten(field: &str, text: &Bilingual) -> impl Iterator<Item = Finding> {
    let languages = [("en", &text.en), ("es", &text.es)].into_iter();
    languages
        .filter(|(_, sentence)| sentence.trim().is_empty())
        .map(move |(language, _)| {
            let problem = Problem::Nothing(Wanted::BothLanguages);
            (format!("{field}.{language}"), problem)
        })
}

fn check_fault(scenario: &Scenario, catalogue: &Catalogue, findings: &mut Vec<Finding>) {
    let mut known = |path: String, id: &str| {
        if catalogue.mode(id).is_none() {
            findings.push((path, Problem::UnknownMode(id.to_owned())));
        }
    };
    match &scenario.fault {
        Hidden::Draw | Hidden::Nothing => {}
        Hidden::DrawWhere(filter) => {
            for (n, id) in filter.without.iter().enumerate() {
                known(format!("fault.without[{n}]"), id);
            }
            for (field, found) in [
                ("least_weight", filter.least_weight),
                ("most_weight", filter.most_weight),
            ] {
                if !(0.0..=MOST_WEIGHT).contains(&found) {
                    let allowed = Allowed::WeightBound;
                    let problem = Problem::OutOfRange { found, allowed };
                    findings.push((format!("fault.{field}"), problem));
                }
            }
        }
        Hidden::Named(id) => known("fault".to_owned(), id),
        Hidden::DrawFrom(ids) | Hidden::Several(ids) => {
            for (n, id) in ids.iter().enumerate() {
                known(format!("fault[{n}]"), id);
            }
            if ids.is_empty() {
                let problem = Problem::Nothing(Wanted::FailureMode);
                findings.push(("fault".to_owned(), problem));
            }
        }
    }
}

/// What a filter names twice in one list.
fn check_repeated(page: &Page<'_>, filter: &DrawFilter, findings: &mut Vec<Finding>) {
    fn written<T: Debug>(list: &[T]) -> Vec<String> {
        list.iter().map(|value| format!("{value:?}")).collect()
    }
    let lists = [
        ("components", written(&filter.components)),
        ("codes", written(&filter.codes)),
        ("kinds", written(&filter.kinds)),
        ("presences", written(&filter.presences)),
        ("without", filter.without.clone()),
    ];
    for (field, names) in &lists {
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        findings.extend(repeated(page, &names, |n| format!("fault.{field}[{n}]")));
    }
}

fn check_board(scenario: &Scenario, boards: &[KnownBoard], findings: &mut Vec<Finding>) {
    let board = boards.iter().find(|board| board.name == scenario.board);
    if board.is_none() {
        let names: Vec<&str> = boards.iter().map(|board| board.name.as_str()).collect();
        let problem = Problem::UnknownBoard {
            found: scenario.board.clone(),
            known: names.join(", "),
        };
        findings.push(("board".to_owned(), problem));
    }
    if let Some(board) = board
        && !board.mains.contains(&scenario.mains)
    {
        let board = board.name.clone();
        findings.push(("mains".to_owned(), Problem::WrongMains { board }));
    }
    let stale = scenario.stale_codes.iter().enumerate();
    let stale = stale.map(|(n, code)| (format!("stale_codes[{n}]"), code));
    let expected = scenario.expected_codes.iter().flatten().enumerate();
    let expected = expected.map(|(n, code)| (format!("expected_codes[{n}]"), code));
    let drawn = match &scenario.fault {
        Hidden::DrawWhere(filter) => &filter.codes[..],
        Hidden::Named(_)
        | Hidden::Draw
        | Hidden::DrawFrom(_)
        | Hidden::Several(_)
        | Hidden::Nothing => &[],
    };
    let drawn = drawn.iter().enumerate();
    let drawn = drawn.map(|(n, code)| (format!("fault.codes[{n}]"), code));
    for (path, code) in stale.chain(expected).chain(drawn) {
        if *code > 99 {
            let found = f64::from(*code);
            let allowed = Allowed::Code;
            findings.push((path, Problem::OutOfRange { found, allowed }));
        } else if let Some(board) = board
            && !board.has(*code)
        {
            let board = board.name.clone();
            findings.push((path, Problem::UnknownCode { board, code: *code }));
        }
    }
}

fn check_numbers(scenario: &Scenario, findings: &mut Vec<Finding>) {
    let mut range = |field: &str, found: f64, good: bool, allowed: Allowed| {
        if !good {
            findings.push((field.to_owned(), Problem::OutOfRange { found, allowed }));
        }
    };
    let wear = scenario.dial_wear;
    range(
        "dial_wear",
        wear,
        (0.0..=1.0).contains(&wear),
        Allowed::Wear,
    );
    let par = scenario.par_minutes;
    range(
        "par_minutes",
        par,
        par > 0.0 && par <= LONGEST_JOB.seconds() / 60.0,
        Allowed::JobMinutes,
    );
    let budget = scenario.budget;
    range(
        "budget",
        budget,
        budget > 0.0 && budget <= MOST_MONEY,
        Allowed::Budget,
    );
    let points = &scenario.points;
    let each = [
        ("points.entry", points.entry),
        ("points.reading", points.reading),
        ("points.reasoning", points.reasoning),
        ("points.safety", points.safety),
        ("points.cost", points.cost),
        ("points.proof", points.proof),
    ];
    for (field, of) in each {
        range(field, of, of >= 0.0, Allowed::Points);
    }
    let total: f64 = each.iter().map(|(_, of)| of).sum();
    let known = each.iter().all(|(_, of)| *of >= 0.0);
    range(
        "points",
        total,
        !known || (total - 100.0).abs() < 1e-6,
        Allowed::PointsTogether,
    );
}

/// Whether time and budget can be kept to at all, by whoever knows what may be hidden: the cheapest of those that may be
/// drawn is repaired and reported, and nothing else is done. What is not worth a repair is only reported.
fn check_reach(
    scenario: &Scenario,
    hidden: &[&FailureMode],
    parts: &Parts,
    findings: &mut Vec<Finding>,
) {
    let least = |faults: &[&FailureMode]| {
        let (mut seconds, mut prices) = (cost::REPORT_S as f64, 0.0);
        for fault in faults {
            match cure(&parts.parts, &scenario.board, fault) {
                Some(part) => {
                    let order = cost::span(&Action::Order(part.number.clone()));
                    seconds += (order + part.fitting()).seconds();
                    prices += part.price;
                }
                None if fault.component.can_be_put_right() => {
                    seconds += cost::span(&Action::PutRight(fault.component)).seconds();
                    prices += parts.billing.consumables.hand_work(fault.component);
                }
                None => {}
            }
        }
        if prices + parts.rates.labour(scenario.par_minutes) > parts.rates.repair_limit() {
            (seconds, prices) = (cost::REPORT_S as f64, 0.0);
        }
        let minutes = seconds / 60.0;
        (minutes, prices + parts.rates.labour(minutes))
    };
    let all: Vec<(f64, f64)> = match scenario.fault.is_drawn() {
        true => hidden.chunks(1).map(least).collect(),
        false => vec![least(hidden)],
    };
    let minutes = all.iter().map(|(m, _)| *m).fold(f64::INFINITY, f64::min);
    let money = all.iter().map(|(_, m)| *m).fold(f64::INFINITY, f64::min);
    if scenario.par_minutes < minutes {
        let problem = Problem::TooLittleTime {
            found: scenario.par_minutes,
            least: minutes,
        };
        findings.push(("par_minutes".to_owned(), problem));
    }
    if scenario.budget < money {
        let problem = Problem::TooLittleMoney {
            found: scenario.budget,
            least: money,
        };
        findings.push(("budget".to_owned(), problem));
    }
}
