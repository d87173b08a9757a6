//! What the customer is told that the repair will come to, and the customer's answer. That no part goes in before the
//! customer has agreed to what it costs is common practice, no source.

use super::log::{BenchLog, LogEntry, Repair};
use super::part::{Part, Rates, current};
use detent_simulation::units::Time;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the whole repair will take. A later quote takes the place of an earlier one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Quote {
    /// Numbers of all parts, each as often as it is needed; those fitted already belong to it.
    pub parts: Vec<String>,
    /// Labor for the whole visit, min.
    pub minutes: u16,
}

impl Quote {
    /// What it comes to at a counter that sells `parts` and a shop that charges `rates`, whole units of money,
    /// without call-out fee and tax. Numbers that the counter does not have count nothing.
    pub fn amount(&self, parts: &[Part], rates: &Rates) -> f64 {
        let quoted = self.parts.iter();
        let quoted = quoted.filter_map(|number| current(parts, number));
        quoted.map(|part| part.price).sum::<f64>() + rates.labour(f64::from(self.minutes))
    }
}

/// A quote that was given.
#[derive(Clone, Debug, PartialEq)]
pub struct QuoteGiven {
    /// When the customer answered.
    pub at: Time,
    /// What was quoted, its parts by the numbers that an order for them brings.
    pub quote: Quote,
    /// Parts and labor, whole units of money, without call-out fee and tax: the fee was agreed on when the visit was
    /// booked, and the customer's limit is before tax.
    pub amount: f64,
    /// The customer agreed: it is within the limit.
    pub approved: bool,
}

impl BenchLog {
    /// The latest quote that the customer agreed to. One that was declined takes nothing back.
    pub fn approved_quote(&self) -> Option<&QuoteGiven> {
        self.quotes().iter().rfind(|given| given.approved)
    }

    /// Parts that went in without an approved quote that covers them, oldest first: each number covers as many as it
    /// was quoted for.
    pub fn fitted_without_approval(&self) -> Vec<(Time, &str)> {
        let mut approved: &[String] = &[];
        let mut fitted: Vec<&str> = Vec::new();
        let mut unapproved = Vec::new();
        for entry in self.entries() {
            match entry {
                LogEntry::Quoted(given) if given.approved => approved = &given.quote.parts,
                LogEntry::Repair {
                    at,
                    repair: Repair::Fitted { part },
                } => {
                    fitted.push(part);
                    let count = |numbers: &mut dyn Iterator<Item = &str>| {
                        numbers.filter(|number| number == part).count()
                    };
                    let quoted = count(&mut approved.iter().map(String::as_str));
                    if count(&mut fitted.iter().copied()) > quoted {
                        unapproved.push((*at, part.as_str()));
                    }
                }
                _ => {}
            }
        }
        unapproved
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quoted(at: u64, parts: &[&str], approved: bool) -> LogEntry {
        LogEntry::Quoted(QuoteGiven {
            at: Time(at),
            quote: Quote {
                parts: parts.iter().map(|number| (*number).to_owned()).collect(),
                minutes: 60,
            },
            amount: 100.0,
            approved,
        })
    }

    fn fitted(at: u64, part: &str) -> LogEntry {
        LogEntry::Repair {
            at: Time(at),
            repair: Repair::Fitted {
                part: part.to_owned(),
            },
        }
    }

    #[test]
    fn a_quote_covers_what_it_names_as_often_as_it_names_it() {
        let mut log = BenchLog::default();
        log.push(fitted(1, "A"));
        log.push(quoted(2, &["B", "B"], true));
        log.push(fitted(3, "B"));
        log.push(quoted(4, &["C"], false));
        log.push(fitted(5, "C"));
        log.push(fitted(6, "B"));
        log.push(fitted(7, "B"));
        log.push(quoted(8, &["C", "C"], true));
        log.push(fitted(9, "C"));
        log.push(fitted(10, "B"));
        let without: Vec<_> = log.fitted_without_approval();
        let at = |at, part| (Time(at), part);
        assert_eq!(without, [at(1, "A"), at(5, "C"), at(7, "B"), at(10, "B")]);
        assert_eq!(log.approved_quote().map(|given| given.at), Some(Time(8)));
        assert_eq!(log.quotes().len(), 3);
    }
}
