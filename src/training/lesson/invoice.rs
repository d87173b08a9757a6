//! What the customer pays at the end of a visit, line by line. All figures are invented; that a shop bears its own
//! mistakes is common practice, no source.

use crate::bench::{
    Action, Advice, Appliance, Bench, Consumable, Incident, LogEntry, Part, Question, Repair,
    Report, Verdict,
};
use detent_simulation::names;

/// What a line is for.
#[derive(Clone, Debug, PartialEq)]
pub enum InvoiceItem {
    /// The visit itself.
    CallOut,
    /// Work.
    Labor {
        /// Time, whole minutes.
        minutes: u32,
        /// What an hour costs, whole units of money.
        per_hour: f64,
    },
    /// Something that work by hand used up.
    Consumable(Consumable),
    /// A part that was fitted.
    Part {
        /// Its number.
        number: String,
    },
    /// What the counter kept of a part that was taken back.
    Restocking {
        /// Its number.
        number: String,
        /// Share of its price, 0 to 1.
        share: f64,
    },
}

names! {
    /// Why the customer does not pay for a line. Its text is `invoice-free-{name}`.
    FreeOfCharge {
        /// The part cured nothing, or had to come out again: the shop's own loss, with the work of fitting it.
        FittedInVain = "fitted-in-vain",
        /// The part was not needed after all: nobody asked the customer whether to try it.
        OrderedInVain = "ordered-in-vain",
        /// The customer turned the repair down, or was told that it is not worth it: the call-out fee is all.
        NoRepair = "no-repair",
        /// The customer called back: the second visit is the shop's.
        CalledBack = "called-back",
    }
}

/// One line.
#[derive(Clone, Debug, PartialEq)]
pub struct InvoiceLine {
    /// What for.
    pub item: InvoiceItem,
    /// What it is worth, whole units of money, to the cent.
    pub value: f64,
    /// Why the customer does not pay it; none for what the customer pays.
    pub free: Option<FreeOfCharge>,
}

/// An invoice. Sums in whole units of money, to the cent.
#[derive(Clone, Debug, PartialEq)]
pub struct Invoice {
    /// The machine, if the customer was asked for its plate.
    pub appliance: Option<Appliance>,
    /// Its lines: call-out fee, labor, consumables in the order in which they were used up, parts in the order in which they were fitted, parts taken back.
    pub lines: Vec<InvoiceLine>,
    /// What the customer pays before tax.
    pub subtotal: f64,
    /// Tax, 0 to 1.
    pub tax_share: f64,
    /// Tax on the subtotal.
    pub tax: f64,
    /// What the customer pays.
    pub total: f64,
    /// Warranty on parts and labor, days; none where nothing was repaired.
    pub warranty_days: Option<u16>,
}

impl Invoice {
    /// For the job on this bench as it stands. It tells which parts cured something, so it is for whoever may know
    /// the answer.
    ///
    /// The customer pays the call-out fee, the work with what it used up, and every part that cured something and stayed in. The shop
    /// bears what was fitted or ordered in vain, with the work of fitting it, what was never fitted and is still in
    /// the van, and its own meter's fuses. Where nothing was repaired and the customer turned the repair down, was
    /// told to replace the machine, or the job was given up, the call-out fee is all. A visit after a call-back costs
    /// the customer nothing.
    pub fn of(bench: &Bench) -> Invoice {
        let fitted = fitted(bench);
        let repaired = fitted.iter().any(|(_, in_vain)| !in_vain)
            || (bench.repairs().iter()).any(|(_, r)| matches!(r, Repair::PutRight(_)));
        let wasted_minutes: f64 = (fitted.iter())
            .filter(|(_, in_vain)| *in_vain)
            .map(|(part, _)| part.fitting().seconds() / 60.0)
            .sum();
        let (rates, billing) = (bench.rates(), bench.billing());
        let minutes = (bench.minutes() - wasted_minutes).max(0.0).round();
        let no_repair = (!repaired && not_wanted(bench)).then_some(FreeOfCharge::NoRepair);
        let mut lines = vec![
            InvoiceLine {
                item: InvoiceItem::CallOut,
                value: cents(billing.call_out_fee),
                free: None,
            },
            InvoiceLine {
                item: InvoiceItem::Labor {
                    minutes: minutes as u32,
                    per_hour: rates.labour_per_hour,
                },
                value: cents(rates.labour(minutes)),
                free: no_repair,
            },
        ];
        lines.extend(bench.used_up().map(|consumable| InvoiceLine {
            item: InvoiceItem::Consumable(consumable),
            value: cents(billing.consumables.of(consumable)),
            free: no_repair,
        }));
        lines.extend(fitted.into_iter().map(|(part, in_vain)| InvoiceLine {
            item: InvoiceItem::Part {
                number: part.number.clone(),
            },
            value: cents(part.price),
            free: in_vain.then_some(FreeOfCharge::FittedInVain),
        }));
        let taken_back = bench
            .history()
            .iter()
            .filter_map(|(_, action)| match action {
                Action::Return(number) => bench.part(number),
                _ => None,
            });
        lines.extend(taken_back.map(|part| InvoiceLine {
            item: InvoiceItem::Restocking {
                number: part.number.clone(),
                share: rates.return_fee_share,
            },
            value: cents(part.price * rates.return_fee_share),
            free: Some(FreeOfCharge::OrderedInVain),
        }));
        if bench.is_called_back() {
            for line in &mut lines {
                line.free = line.free.or(Some(FreeOfCharge::CalledBack));
            }
        }
        let paid = lines.iter().filter(|line| line.free.is_none());
        // An empty sum of floats is −0, which would be printed.
        let subtotal = cents(paid.fold(0.0, |sum, line| sum + line.value));
        let tax = cents(subtotal * billing.tax_share);
        let asked = bench
            .asked()
            .any(|(_, question)| question == Question::Appliance);
        Invoice {
            appliance: asked.then(|| bench.appliance()),
            lines,
            subtotal,
            tax_share: billing.tax_share,
            tax,
            total: cents(subtotal + tax),
            warranty_days: repaired.then_some(billing.warranty_days),
        }
    }

    /// What the customer pays for parts and work, without call-out fee and tax, whole units of money: what a quote
    /// and the customer's limit are about.
    pub fn parts_and_labor(&self) -> f64 {
        let counts = |line: &&InvoiceLine| line.free.is_none() && line.item != InvoiceItem::CallOut;
        self.lines
            .iter()
            .filter(counts)
            .map(|line| line.value)
            .sum()
    }
}

/// Rounds to whole cents.
fn cents(money: f64) -> f64 {
    (100.0 * money).round() / 100.0
}

/// The parts that were fitted, in order, and whether in vain: it cured nothing, or another one of the same
/// component took its place later. A kit goes into what is there and takes nobody's place.
fn fitted(bench: &Bench) -> Vec<(&Part, bool)> {
    let mut fitted: Vec<(&Part, bool)> = Vec::new();
    let mut cured_nothing = false;
    for entry in bench.log().entries() {
        match entry {
            LogEntry::Action { .. } => cured_nothing = false,
            // Both are noted while the part is being fitted, before the repair itself.
            LogEntry::Event(event) => {
                cured_nothing |= matches!(
                    event.what,
                    Incident::WrongPart | Incident::GoodBoardReplaced
                );
            }
            LogEntry::Repair {
                repair: Repair::Fitted { part },
                ..
            } => {
                let Some(part) = bench.part(part) else {
                    continue;
                };
                for (earlier, in_vain) in &mut fitted {
                    *in_vain |= !part.kit && !earlier.kit && earlier.component == part.component;
                }
                fitted.push((part, cured_nothing));
            }
            _ => {}
        }
    }
    fitted
}

/// Nobody wants the repair: the customer declined the last quote, the machine is to be replaced, or the job was given up.
fn not_wanted(bench: &Bench) -> bool {
    let declined = bench.quotes().last().is_some_and(|given| !given.approved);
    let ended =
        |report: &Report| report.advice == Advice::Replace || report.verdict == Verdict::GivenUp;
    declined || bench.report().is_some_and(ended)
}
