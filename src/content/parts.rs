//! The parts counter's list.

use super::error::{Allowed, ContentError, Problem, Wanted};
use super::reader::{Finding, Page, repeated};
use detent_training::bench::{Billing, Consumable, Part, Rates, current};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The most that anything here costs, whole units of money: more is a slip of the pen.
pub(super) const MOST_MONEY: f64 = 1e6;
/// The longest that a part is waited for, h: a year.
const LONGEST_WAIT_H: f64 = 8760.0;

/// The longest that a part takes to fit, min: a day and a night.
const LONGEST_FITTING_MIN: f64 = 1440.0;

/// Every part that can be bought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parts {
    /// What the shop charges.
    pub rates: Rates,
    /// What its invoices add.
    pub billing: Billing,
    /// The parts, in the order in which the counter shows them.
    pub parts: Vec<Part>,
}

impl Parts {
    /// The part of this number.
    pub fn part(&self, number: &str) -> Option<&Part> {
        self.parts.iter().find(|part| part.number == number)
    }
}

/// Read the list of parts.
///
/// # Errors
/// The first mistake in the file.
pub fn read_parts(file: &str, bytes: &[u8]) -> Result<Parts, ContentError> {
    let page = Page::open(file, bytes)?;
    let list: Parts = page.parse()?;
    let numbers: Vec<&str> = list.parts.iter().map(|p| p.number.as_str()).collect();
    let mut findings = repeated(&page, &numbers, |n| format!("parts[{n}].number"));
    if list.parts.is_empty() {
        let problem = Problem::Nothing(Wanted::Part);
        findings.push(("parts".to_owned(), problem));
    }
    findings.extend(check_money(&list.rates, &list.billing));
    for (n, part) in list.parts.iter().enumerate() {
        let in_part = check_part(part, &list.parts).into_iter();
        findings.extend(in_part.map(|(field, problem)| (format!("parts[{n}].{field}"), problem)));
    }
    page.judge(list, findings)
}

/// What is wrong with one part among all on the counter, paths beginning inside it.
fn check_part(part: &Part, counter: &[Part]) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    let mut found = |field: &str, problem| findings.push((field.to_owned(), problem));
    for (field, text) in [("number", &part.number), ("name_key", &part.name_key)] {
        if text.trim().is_empty() {
            found(field, Problem::Nothing(Wanted::Text));
        }
    }
    if let Some(minutes) = part.fitting_minutes
        && !(minutes > 0.0 && minutes <= LONGEST_FITTING_MIN)
    {
        let allowed = Allowed::FittingMinutes;
        found(
            "fitting_minutes",
            Problem::OutOfRange {
                found: minutes,
                allowed,
            },
        );
    }
    if let Some(next) = &part.superseded_by {
        match counter.iter().find(|part| part.number == *next) {
            None => found("superseded_by", Problem::UnknownPart(next.clone())),
            Some(later) if later.component != part.component => {
                found("superseded_by", Problem::UnfitPart(next.clone()));
            }
            Some(_) if current(counter, &part.number).is_none() => {
                found("superseded_by", Problem::NoEnd(part.number.clone()));
            }
            Some(_) => {}
        }
    }
    for (field, number, most, allowed) in [
        ("price", part.price, MOST_MONEY, Allowed::Money),
        (
            "wait_hours",
            part.wait_hours,
            LONGEST_WAIT_H,
            Allowed::WaitHours,
        ),
    ] {
        if !(0.0..=most).contains(&number) {
            found(
                field,
                Problem::OutOfRange {
                    found: number,
                    allowed,
                },
            );
        }
    }
    findings
}

/// Parts that an own library adds to the counter: the file `parts.ron` in its folder.
#[derive(Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Parts")]
pub(super) struct AddedParts {
    /// The parts, each for boards of the library's own.
    parts: Vec<Part>,
}

/// Read the parts that an own library adds to `counter`. They may add to the counter of machines with one of
/// `boards`, the library's own; what the shop charges, the parts that are there and those of other machines stay as
/// they are.
///
/// # Errors
/// Every mistake in the file, in its order; at least one.
pub fn read_added_parts(
    file: &str,
    bytes: &[u8],
    counter: &Parts,
    boards: &[&str],
) -> Result<Vec<Part>, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let added: AddedParts = page.parse().map_err(|error| vec![error])?;
    let numbers: Vec<&str> = added.parts.iter().map(|p| p.number.as_str()).collect();
    let mut findings = repeated(&page, &numbers, |n| format!("parts[{n}].number"));
    let all = [&counter.parts[..], &added.parts[..]].concat();
    for (n, part) in added.parts.iter().enumerate() {
        let mut in_part = check_part(part, &all);
        if counter.part(&part.number).is_some() {
            let problem = Problem::NameTaken(part.number.clone());
            in_part.push(("number".to_owned(), problem));
        }
        if part.boards.is_empty() {
            in_part.push(("boards".to_owned(), Problem::Nothing(Wanted::OwnBoard)));
        }
        for (k, board) in part.boards.iter().enumerate() {
            if !boards.contains(&board.as_str()) {
                let problem = Problem::NotOwnBoard(board.clone());
                in_part.push((format!("boards[{k}]"), problem));
            }
        }
        let in_part = in_part.into_iter();
        findings.extend(in_part.map(|(field, problem)| (format!("parts[{n}].{field}"), problem)));
    }
    page.judge_all(added.parts, findings)
}

fn check_money(rates: &Rates, billing: &Billing) -> Vec<Finding> {
    let shares = [
        ("rates.return_fee_share", rates.return_fee_share),
        ("rates.repair_share", rates.repair_share),
        ("rates.used_bad", rates.used_bad),
        ("rates.rebuilt_bad", rates.rebuilt_bad),
        ("billing.tax_share", billing.tax_share),
    ];
    let sums = [
        ("rates.labour_per_hour", rates.labour_per_hour),
        ("rates.new_machine", rates.new_machine),
        ("billing.call_out_fee", billing.call_out_fee),
    ];
    let shares = shares.map(|(field, found)| (field.to_owned(), found, 1.0, Allowed::Share));
    let sums = sums.map(|(field, found)| (field.to_owned(), found, MOST_MONEY, Allowed::Money));
    let consumables = Consumable::ALL.iter().map(|consumable| {
        let field = consumable.name().replace('-', "_");
        let price = billing.consumables.of(*consumable);
        let field = format!("billing.consumables.{field}");
        (field, price, MOST_MONEY, Allowed::Money)
    });
    (shares.into_iter().chain(sums).chain(consumables))
        .filter(|(_, found, most, _)| !(0.0..=*most).contains(found))
        .map(|(field, found, _, allowed)| (field, Problem::OutOfRange { found, allowed }))
        .collect()
}
