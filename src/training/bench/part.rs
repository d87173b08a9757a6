//! A part at the counter, and what the shop charges.

use super::cost::{self, Consumable};
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;
use detent_simulation::units::Span;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// In what state a part is sold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Condition {
    /// From the maker.
    #[default]
    New,
    /// Out of another machine, as it was.
    Used,
    /// Out of another machine, taken apart and put right.
    Rebuilt,
}

impl Condition {
    /// The fixed name used in text keys.
    pub const fn name(self) -> &'static str {
        match self {
            Condition::New => "new",
            Condition::Used => "used",
            Condition::Rebuilt => "rebuilt",
        }
    }
}

/// One part that can be bought. Numbers and prices are invented.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Part number, no two alike.
    pub number: String,
    /// Revision of the drawing, a letter; none for work and for what was never revised.
    #[serde(default)]
    pub revision: Option<char>,
    /// The component that it replaces.
    pub component: Component,
    /// Name for people: the words themselves, or a key of the texts.
    pub name_key: String,
    /// Price, money.
    #[schemars(range(min = 0.0, max = 1_000_000))]
    pub price: f64,
    /// How long it takes to come, h. At most a year.
    #[schemars(range(min = 0.0, max = 8760))]
    pub wait_hours: f64,
    /// Boards of the machines that it fits. None named: every one, which is for the built-in parts alone. A part that
    /// does not fit can be bought all the same.
    #[serde(default)]
    pub boards: Vec<String>,
    /// In what state it is sold.
    #[serde(default)]
    pub condition: Condition,
    /// Number of the part that took its place: who orders this one gets that one.
    #[serde(default)]
    pub superseded_by: Option<String>,
    /// Whether it mends only what the catalogue says it cures, and leaves the rest of the component as it is.
    #[serde(default)]
    pub kit: bool,
    /// Time to fit it where it is not what its component usually takes, min. At most a day and a night.
    #[serde(default)]
    #[schemars(extend("exclusiveMinimum" = 0.0, "maximum" = 1440))]
    pub fitting_minutes: Option<f64>,
    /// Note on the counter's card, if any: a key of the texts.
    #[serde(default)]
    pub note_key: Option<String>,
}

impl Part {
    /// Whether it fits a machine with this board.
    pub fn fits(&self, board: &str) -> bool {
        self.boards.is_empty() || self.boards.iter().any(|b| b == board)
    }

    /// Time to take the old one out and put this one in.
    pub fn fitting(&self) -> Span {
        (self.fitting_minutes).map_or(cost::fitting(self.component), |minutes| {
            Span::from_s((60.0 * minutes) as u64)
        })
    }

    /// Whether fitting it ends this fault, if it fits at all.
    pub fn ends(&self, mode: &FailureMode) -> bool {
        self.component == mode.component && (!self.kit || mode.cured_by == self.number)
    }
}

/// The part that an order for `number` brings, later numbers taking the place of earlier ones.
pub fn current<'a>(counter: &'a [Part], number: &str) -> Option<&'a Part> {
    let by_number = |number: &str| counter.iter().find(|part| part.number == number);
    let mut part = by_number(number)?;
    // No chain is longer than the list; one that runs in a circle ends here too.
    for _ in 0..counter.len() {
        match &part.superseded_by {
            Some(next) => part = by_number(next)?,
            None => return Some(part),
        }
    }
    None
}

/// The new part that cures this failure mode on a machine with this board: the one that the catalogue
/// names or, where that is for another board, the one for this board; none where hands alone cure it.
pub fn cure<'a>(counter: &'a [Part], board: &str, mode: &FailureMode) -> Option<&'a Part> {
    if mode.needs_no_part() {
        return None;
    }
    let fits = |part: &&Part| part.component == mode.component && part.fits(board);
    let others = counter
        .iter()
        .filter(|part| part.superseded_by.is_none() && part.condition == Condition::New);
    current(counter, &mode.cured_by)
        .into_iter()
        .chain(others)
        .find(fits)
}

/// What the shop charges. All sums are invented.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rates {
    /// Labour, whole units of money an hour.
    pub labour_per_hour: f64,
    /// Share of a part's price that the counter keeps when it is brought back, 0 to 1.
    pub return_fee_share: f64,
    /// Price of a new machine of this kind, whole units of money.
    pub new_machine: f64,
    /// A repair that costs more than this share of a new machine is not worth it, 0 to 1.
    pub repair_share: f64,
    /// Chance that a used part has a fault of its own, 0 to 1.
    pub used_bad: f64,
    /// The same for a rebuilt one, 0 to 1.
    pub rebuilt_bad: f64,
}

/// What stands on an invoice besides work and parts. All figures are invented.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Billing {
    /// What the visit itself costs, whole units of money. It is agreed on when the visit is booked.
    pub call_out_fee: f64,
    /// Tax on the whole invoice, 0 to 1.
    pub tax_share: f64,
    /// Warranty on the parts fitted and the work, days.
    pub warranty_days: u16,
    /// What work by hand uses up.
    pub consumables: ConsumablePrices,
}

/// Prices of what work by hand uses up, whole units of money for one use. All of them are invented.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConsumablePrices {
    /// Of [`Consumable::Descaler`].
    pub descaler: f64,
    /// Of [`Consumable::HoseWasher`].
    pub hose_washer: f64,
    /// Of [`Consumable::CoverSeal`].
    pub cover_seal: f64,
    /// Of [`Consumable::HoseClamp`].
    pub hose_clamp: f64,
    /// Of [`Consumable::CableTie`].
    pub cable_tie: f64,
    /// Of [`Consumable::ContactCleaner`].
    pub contact_cleaner: f64,
}

impl ConsumablePrices {
    /// Price of one.
    pub fn of(&self, consumable: Consumable) -> f64 {
        match consumable {
            Consumable::Descaler => self.descaler,
            Consumable::HoseWasher => self.hose_washer,
            Consumable::CoverSeal => self.cover_seal,
            Consumable::HoseClamp => self.hose_clamp,
            Consumable::CableTie => self.cable_tie,
            Consumable::ContactCleaner => self.contact_cleaner,
        }
    }

    /// What putting a component right by hand uses up, whole units of money.
    pub fn hand_work(&self, component: Component) -> f64 {
        let used = cost::consumables(component).iter();
        used.map(|consumable| self.of(*consumable)).sum()
    }
}

impl Rates {
    /// The most that a repair may cost, whole units of money.
    pub fn repair_limit(&self) -> f64 {
        self.repair_share * self.new_machine
    }

    /// What so many minutes of work cost, whole units of money.
    pub fn labour(&self, minutes: f64) -> f64 {
        self.labour_per_hour * minutes / 60.0
    }

    /// Chance that a part sold in this condition has a fault of its own, 0 to 1.
    pub fn bad(&self, condition: Condition) -> f64 {
        match condition {
            Condition::New => 0.0,
            Condition::Used => self.used_bad,
            Condition::Rebuilt => self.rebuilt_bad,
        }
    }
}
