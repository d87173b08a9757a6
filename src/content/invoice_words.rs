//! Answers, quotes, invoices and call-backs in words that a customer understands.

use super::text::{Language, Texts, Value};
use detent_simulation::interface::Component;
use detent_training::bench::{
    Action, Appliance, BucketTest, Consumable, LeakCheck, Part, Question, QuoteGiven, Repair, cost,
    current,
};
use detent_training::lesson::{
    Answer, CustomerAccount, EarlierVisit, Invoice, InvoiceItem, InvoiceLine,
};

/// One printed line of an invoice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InvoiceRow {
    /// What for.
    pub label: String,
    /// The sum; none for a line of words.
    pub amount: Option<String>,
}

impl Texts {
    /// A sum to the cent, as the language writes it, in invented money.
    pub fn money(&self, money: f64) -> String {
        let money = self.digits(format!("{money:.2}"));
        match self.language() {
            Language::En => format!("¤{money}"),
            Language::Es => format!("{money}\u{a0}¤"),
        }
    }

    /// The same without cents.
    pub fn whole_money(&self, money: f64) -> String {
        match self.language() {
            Language::En => format!("¤{money:.0}"),
            Language::Es => format!("{money:.0}\u{a0}¤"),
        }
    }

    /// A quote with the customer's answer.
    pub fn quote_given(&self, given: &QuoteGiven) -> String {
        let key = if given.approved {
            "quote-approved"
        } else {
            "quote-declined"
        };
        let args = [
            ("amount", Value::from(self.money(given.amount))),
            ("minutes", Value::from(given.quote.minutes)),
        ];
        self.with(key, &args)
    }

    /// A machine's plate.
    pub fn appliance(&self, appliance: &Appliance) -> String {
        let args = [
            ("model", Value::from(appliance.model.as_str())),
            ("serial", Value::from(appliance.serial.as_str())),
        ];
        self.with("ask-appliance-answer", &args)
    }

    /// A question to the customer.
    pub fn question(&self, question: Question) -> String {
        self.get(&format!("ask-{question}"))
    }

    /// The customer's answer.
    pub fn answer(&self, answer: &Answer) -> String {
        match answer {
            Answer::Appliance(appliance) => self.appliance(appliance),
            Answer::Since(since) => self.get(&format!("customer-since-{since}")),
            Answer::Noticed { noticed, .. } if noticed.is_empty() => self.get("ask-nothing"),
            Answer::Noticed { noticed, after_min } => {
                let said: Vec<String> = (noticed.iter())
                    .map(|noticed| self.customer_noticed(*noticed, 1, *after_min))
                    .collect();
                said.join(" ")
            }
            Answer::Tried(tried) => self.get(&format!("tried-{tried}")),
            Answer::Shown(shown) => self.get(&format!("shown-{shown}")),
        }
    }

    /// What the customer says on the telephone: everything that was noticed.
    pub fn call_back(&self, account: &CustomerAccount) -> String {
        let noticed = account.noticed.iter();
        let said: Vec<String> = noticed
            .map(|noticed| self.customer_noticed(*noticed, 3, account.after_min))
            .collect();
        said.join(" ")
    }

    /// What is on file of the first visit, in one sentence.
    pub fn earlier_visit(&self, earlier: &EarlierVisit, parts: &[Part]) -> String {
        let told = |all: Vec<String>| {
            let none = || self.get("call-back-nothing");
            Value::from(if all.is_empty() {
                none()
            } else {
                all.join(", ")
            })
        };
        let codes = earlier.noted_codes.iter().map(|code| format!("{code:02}"));
        let repairs = earlier.repairs.iter().map(|repair| match repair {
            Repair::Fitted { part } => {
                let part = self.numbered(part, parts);
                self.with("call-back-fitted", &[("part", part.into())])
            }
            Repair::PutRight(component) => {
                let component = self.component(*component);
                self.with("call-back-put-right", &[("component", component.into())])
            }
        });
        let causes = earlier.report.causes.iter().map(|id| self.mode(id));
        let args = [
            ("codes", told(codes.collect())),
            ("repairs", told(repairs.collect())),
            ("causes", told(causes.collect())),
        ];
        self.with("call-back-earlier", &args)
    }

    /// What a look for leaks showed.
    pub fn leak_check(&self, check: &LeakCheck) -> String {
        self.get(if check.is_wet() {
            "leak-wet"
        } else {
            "leak-dry"
        })
    }

    /// What a bucket test showed: at which tap, L/min, °C, what pressure that speaks of, and what to make of it.
    pub fn bucket_test(&self, test: &BucketTest) -> String {
        let strength = test.strength();
        let water = match test.water_c {
            None => self.get("bucket-dry"),
            Some(water_c) => self.with(
                "bucket-reading",
                &[
                    ("flow", Value::from((10.0 * test.flow_l_min).round() / 10.0)),
                    ("warmth", Value::from(water_c.round())),
                    (
                        "pressure",
                        Value::from((test.pressure_kpa() / 5.0).round() * 5.0),
                    ),
                ],
            ),
        };
        let at = self.get(&format!("bucket-at-{}", test.pipe));
        let strength = self.get(&format!("bucket-{strength}"));
        format!("{at}: {water} {strength}")
    }

    /// Something that work by hand uses up.
    pub fn consumable(&self, consumable: Consumable) -> String {
        self.get(&format!("consumable-{consumable}"))
    }

    /// What putting a component right by hand takes: time, and what it uses up.
    pub fn hand_work_takes(&self, component: Component) -> String {
        let minutes = cost::span(&Action::PutRight(component)).seconds() / 60.0;
        let time = self.with("hand-work-minutes", &[("minutes", Value::from(minutes))]);
        let used = cost::consumables(component).iter();
        let used = used.map(|consumable| self.consumable(*consumable));
        [time]
            .into_iter()
            .chain(used)
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// An invoice line by line, its sums and its warranty; `parts` is what the counter sells.
    pub fn invoice(&self, invoice: &Invoice, parts: &[Part]) -> Vec<InvoiceRow> {
        let sum = |label: String, amount: f64| InvoiceRow {
            label,
            amount: Some(self.money(amount)),
        };
        let machine = invoice.appliance.iter().map(|appliance| InvoiceRow {
            label: self.appliance(appliance),
            amount: None,
        });
        let lines = (invoice.lines.iter()).map(|line| {
            let paid = if line.free.is_none() { line.value } else { 0.0 };
            sum(self.invoice_line(line, parts), paid)
        });
        let mut rows: Vec<InvoiceRow> = machine.chain(lines).collect();
        let percent = Value::from((100.0 * invoice.tax_share).round());
        rows.push(sum(self.get("invoice-subtotal"), invoice.subtotal));
        let tax = self.with("invoice-tax", &[("percent", percent)]);
        rows.push(sum(tax, invoice.tax));
        rows.push(sum(self.get("invoice-total"), invoice.total));
        if let Some(days) = invoice.warranty_days {
            rows.push(InvoiceRow {
                label: self.with("invoice-warranty", &[("days", Value::from(days))]),
                amount: None,
            });
        }
        rows
    }

    /// What a line is for and, where the customer does not pay it, why.
    fn invoice_line(&self, line: &InvoiceLine, parts: &[Part]) -> String {
        let named = |number: &str| {
            let part = current(parts, number);
            let name = part.map_or_else(String::new, |p| self.get(&p.name_key));
            Value::from(format!("{number} {name}"))
        };
        let item = match &line.item {
            InvoiceItem::CallOut => self.get("invoice-call-out"),
            InvoiceItem::Labor { minutes, per_hour } => self.with(
                "invoice-labor",
                &[
                    ("minutes", Value::from(*minutes)),
                    ("rate", Value::from(self.money(*per_hour))),
                ],
            ),
            InvoiceItem::Consumable(consumable) => {
                let consumable = Value::from(self.consumable(*consumable));
                self.with("invoice-consumable", &[("consumable", consumable)])
            }
            InvoiceItem::Part { number } => self.with("invoice-part", &[("part", named(number))]),
            InvoiceItem::Restocking { number, share } => self.with(
                "invoice-restocking",
                &[
                    ("part", named(number)),
                    ("percent", Value::from((100.0 * share).round())),
                ],
            ),
        };
        match line.free {
            None => item,
            Some(why) => {
                let value = Value::from(self.money(line.value));
                let why = self.with(&format!("invoice-free-{why}"), &[("value", value)]);
                format!("{item}: {why}")
            }
        }
    }
}
