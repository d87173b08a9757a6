//! What a technician does around the repair: the invoice.

use crate::stage::Stage;
use detent_simulation::units::Span;
use detent_training::bench::{Action, Advice, Bench, Report, Verdict};
use detent_training::lesson::{FreeOfCharge, Invoice, InvoiceItem, Mains};

const MAINS: Mains = Mains::V120Hz60;

/// A bench with these faults, open and discharged, the technician just come.
fn bench(stage: &Stage, faults: &[&str]) -> Bench {
    let faults = faults.iter().map(|id| stage.mode(id).clone()).collect();
    let mut bench = Bench::new(stage.library(MAINS).setup(MAINS.rating(), faults, 4));
    bench.wait(Span::from_s(3));
    bench.begin();
    bench
}

#[track_caller]
fn act(bench: &mut Bench, actions: impl IntoIterator<Item = Action>) {
    for action in actions {
        (bench.act(&action)).unwrap_or_else(|refusal| panic!("{action:?}: {refusal}"));
    }
}

fn open_up() -> [Action; 3] {
    [Action::Unplug, Action::OpenCabinet, Action::Discharge]
}

fn buy(number: &str) -> [Action; 2] {
    [
        Action::Order(number.to_owned()),
        Action::Fit(number.to_owned()),
    ]
}

fn report(causes: &[&str], advice: Advice, verdict: Verdict) -> Action {
    Action::Report(Report {
        causes: causes.iter().map(|id| (*id).to_owned()).collect(),
        part: None,
        proof: Vec::new(),
        advice,
        verdict,
    })
}

/// Waits until the work comes to so many minutes.
fn work_until(bench: &mut Bench, minutes: f64) {
    bench.wait(Span::from_ms(
        (60_000.0 * (minutes - bench.minutes())) as u64,
    ));
}

#[track_caller]
fn check_line(invoice: &Invoice, item: InvoiceItem, value: f64, free: Option<FreeOfCharge>) {
    let mut lines = invoice.lines.iter().filter(|line| line.item == item);
    let line = lines.next();
    let line = line.unwrap_or_else(|| panic!("no {item:?} in {invoice:?}"));
    assert_eq!((line.value, line.free), (value, free), "{item:?}");
    assert_eq!(lines.next(), None);
}

fn part(number: &str) -> InvoiceItem {
    InvoiceItem::Part {
        number: number.to_owned(),
    }
}

fn labor(minutes: u32) -> InvoiceItem {
    InvoiceItem::Labor {
        minutes,
        per_hour: 48.0,
    }
}

/// Reckoned by hand: 36 for coming out, 50 min at 48 an hour are 40, a lock for 48: 124, with a tenth of tax 136.40.
#[test]
fn the_customer_pays_the_visit_the_work_and_the_part_with_tax() {
    let stage = Stage::new();
    let mut bench = bench(&stage, &["lid-lock.contact-open"]);
    act(&mut bench, open_up());
    // Who orders the earlier number is billed the one that came.
    act(&mut bench, buy("P-0703"));
    work_until(&mut bench, 50.0);
    let invoice = Invoice::of(&bench);
    check_line(&invoice, InvoiceItem::CallOut, 36.0, None);
    check_line(&invoice, labor(50), 40.0, None);
    check_line(&invoice, part("P-0701"), 48.0, None);
    assert_eq!(invoice.lines.len(), 3);
    assert_eq!(
        (invoice.subtotal, invoice.tax, invoice.total),
        (124.0, 12.4, 136.4)
    );
    assert_eq!(invoice.parts_and_labor(), 88.0);
    assert_eq!(invoice.warranty_days, Some(90));
}

/// A drain pump takes 20 min to fit. The lock was sound, so neither it nor its 20 min are the customer's; neither is
/// the fee for the motor that went back, 15 % of 160.
#[test]
fn what_was_done_in_vain_is_the_shops_loss() {
    let stage = Stage::new();
    let mut bench = bench(&stage, &["drain-pump.open-winding"]);
    act(&mut bench, open_up());
    act(&mut bench, buy("P-0701"));
    act(
        &mut bench,
        [
            Action::Order("P-1101".to_owned()),
            Action::Return("P-1101".to_owned()),
        ],
    );
    act(&mut bench, buy("P-1001"));
    work_until(&mut bench, 80.0);
    let invoice = Invoice::of(&bench);
    let in_vain = Some(FreeOfCharge::FittedInVain);
    check_line(&invoice, part("P-0701"), 48.0, in_vain);
    check_line(&invoice, part("P-1001"), 55.0, None);
    check_line(&invoice, labor(60), 48.0, None);
    let restocking = InvoiceItem::Restocking {
        number: "P-1101".to_owned(),
        share: 0.15,
    };
    check_line(
        &invoice,
        restocking,
        24.0,
        Some(FreeOfCharge::OrderedInVain),
    );
    assert_eq!(invoice.subtotal, 36.0 + 48.0 + 55.0);
    // The bill that the score goes by is the shop's: all that was spent.
    assert!((bench.spent() - (48.0 + 24.0 + 55.0)).abs() < 1e-9);

    // A second pump takes the place of the first, which comes out again.
    act(&mut bench, buy("P-1001"));
    let invoice = Invoice::of(&bench);
    let pumps: Vec<_> = (invoice.lines.iter())
        .filter(|line| line.item == part("P-1001"))
        .map(|line| line.free)
        .collect();
    assert_eq!(pumps, [in_vain, in_vain], "the second one cured nothing");
}

#[test]
fn without_a_repair_that_the_customer_wants_the_call_out_fee_is_all() {
    let stage = Stage::new();
    let after = |deeds: &[Action], end: Action| {
        let mut bench = bench(&stage, &["motor.seized", "drain-hose.kinked"]);
        act(&mut bench, deeds.iter().cloned().chain([end]));
        Invoice::of(&bench)
    };
    let free = |invoice: &Invoice| invoice.lines[1].free;
    for (advice, verdict) in [
        (Advice::Replace, Verdict::CausesNamed),
        (Advice::None, Verdict::GivenUp),
    ] {
        let end = || report(&["motor.seized"], advice, verdict);
        let left = after(&[], end());
        assert_eq!(free(&left), Some(FreeOfCharge::NoRepair));
        assert_eq!((left.subtotal, left.total), (36.0, 39.6));
        assert_eq!(left.warranty_days, None);
        // Hands put the hose right: that was work.
        let put_right = Action::PutRight(detent_simulation::interface::Component::DrainHose);
        let worked = after(&[put_right], end());
        assert_eq!(free(&worked), None);
        assert_eq!(worked.warranty_days, Some(90));
    }
    // Work that found nothing wrong is work.
    let sound = after(&[], report(&[], Advice::None, Verdict::NothingWrong));
    assert_eq!(free(&sound), None);
}
