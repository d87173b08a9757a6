//! The job ticket: the customer's words, the machine, the limits, and how to stay unhurt.

use super::document::{Sheet, facts};
use super::draft::{BODY, Draft, NOTE, STRONG};
use detent_content::Value;

pub(super) fn ticket(draft: &mut Draft, sheet: &Sheet<'_>) {
    let (texts, scenario) = (sheet.texts, &sheet.job.source.scenario);
    draft.heading(1, sheet.said(&scenario.title), 0.0);
    draft.paragraph(&sheet.named(), NOTE);
    draft.space(4.0);
    draft.fields(&[
        (&texts.get("paper-name"), 0.62),
        (&texts.get("paper-date"), 0.38),
    ]);
    draft.heading(2, &texts.get("paper-ticket"), 40.0);
    let complaint = Value::from(sheet.said(&scenario.complaint));
    let complaint = texts.with("ticket-complaint", &[("complaint", complaint)]);
    draft.framed(&complaint, super::draft::WORDS);
    let rating = scenario.mains.rating();
    let rates = sheet.library.rates;
    let live = match scenario.live_tests_allowed {
        true => "ticket-live-yes",
        false => "ticket-live-no",
    };
    let minutes = Value::from(scenario.par_minutes);
    facts(
        draft,
        &texts.get("paper-ticket"),
        vec![
            (
                texts.get("paper-machine"),
                texts.get(&sheet.library.board.name),
            ),
            (
                texts.get("ticket-mains"),
                format!("{}\u{a0}V, {}\u{a0}Hz", rating.volts, rating.hz),
            ),
            (
                texts.get("paper-time"),
                texts.with("paper-minutes", &[("minutes", minutes)]),
            ),
            (
                texts.get("paper-budget"),
                texts.whole_money(scenario.budget),
            ),
            (
                texts.get("ticket-limit"),
                texts.whole_money(rates.repair_limit()),
            ),
            (
                texts.get("paper-labor"),
                texts.whole_money(rates.labour_per_hour),
            ),
            (texts.get("ticket-live"), texts.get(live)),
        ],
    );
    draft.heading(2, &texts.get("paper-safety"), 40.0);
    let live = match scenario.live_tests_allowed {
        true => "paper-safety-live",
        false => "paper-safety-no-live",
    };
    let cautions = [
        "paper-safety-unplug",
        "paper-safety-charge",
        "paper-safety-ohms",
        "paper-safety-water",
        "paper-safety-moving",
        live,
        "ticket-protect",
    ];
    let cautions: Vec<(Option<String>, String)> = (cautions.iter())
        .map(|key| (Some("–".to_owned()), texts.get(key)))
        .collect();
    draft.list(&cautions, 1, BODY);
    draft.framed(&texts.get("paper-local-codes"), STRONG);
    draft.paragraph(&texts.get("paper-invented"), BODY);
}
