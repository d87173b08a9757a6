//! Invoices in words that a customer understands.

use super::text::{Language, Texts, Value};
use detent_training::bench::{Part, current};
use detent_training::lesson::{Invoice, InvoiceItem, InvoiceLine};

/// One printed line of an invoice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InvoiceRow {
    /// What for.
    pub label: String,
    /// The sum; none for a line of words.
    pub amount: Option<String>,
}

impl Texts {
    /// A sum to the cent, as the language writes it.
    pub fn money(&self, money: f64) -> String {
        let money = format!("{money:.2}");
        match self.language() {
            Language::En => money,
            Language::Es => money.replace('.', ","),
        }
    }

    /// An invoice line by line, its sums and its warranty; `parts` is what the counter sells.
    pub fn invoice(&self, invoice: &Invoice, parts: &[Part]) -> Vec<InvoiceRow> {
        let sum = |label: String, amount: f64| InvoiceRow {
            label,
            amount: Some(self.money(amount)),
        };
        let mut rows: Vec<InvoiceRow> = (invoice.lines.iter())
            .map(|line| {
                let paid = if line.free.is_none() { line.value } else { 0.0 };
                sum(self.invoice_line(line, parts), paid)
            })
            .collect();
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
