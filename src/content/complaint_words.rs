//! What a customer says, in words.

use super::text::{Language, Texts, Value};
use detent_training::lesson::{Bilingual, Complaint, CustomerObservation, Mains};

impl Texts {
    /// One thing that the customer noticed, in one of [`detent_training::lesson::WAYS`] ways, counted from 1;
    /// `after_min` is the time from Start to the end of the wash, min.
    pub fn customer_noticed(
        &self,
        noticed: CustomerObservation,
        way: u8,
        after_min: u32,
    ) -> String {
        let key = format!("customer-{noticed}-{way}");
        self.with(&key, &[("minutes", Value::from(after_min))])
    }

    /// A whole complaint.
    pub fn complaint(&self, complaint: &Complaint) -> String {
        let who = complaint
            .who
            .map(|who| self.get(&format!("customer-who-{who}")));
        let age = complaint
            .age_years
            .map(|years| self.with("customer-age", &[("years", Value::from(years))]));
        let told = complaint
            .told
            .iter()
            .map(|(noticed, way)| self.customer_noticed(*noticed, *way, complaint.after_min));
        // Whoever has seen it run to its end without anything odd says at least why the technician is there.
        let mistrust = match complaint.told[..] {
            [(CustomerObservation::RanToEnd, way)] => {
                Some(self.get(&format!("customer-mistrust-{way}")))
            }
            _ => None,
        };
        let since = complaint
            .since
            .map(|since| self.get(&format!("customer-since-{since}")));
        let theory = complaint
            .theory
            .map(|theory| self.get(&format!("customer-theory-{theory}")));
        let sentences: Vec<String> = (who.into_iter().chain(age))
            .chain(told)
            .chain(mistrust)
            .chain(since)
            .chain(theory)
            .collect();
        sentences.join(" ")
    }
}

/// A complaint in both languages, in the words of where the supply is.
pub fn complaint_words(complaint: &Complaint, mains: Mains) -> Bilingual {
    let volts = mains.rating().volts as u32;
    let said = |language| Texts::load(language).for_supply(volts).complaint(complaint);
    Bilingual {
        en: said(Language::En),
        es: said(Language::Es),
    }
}
