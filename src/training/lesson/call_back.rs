//! Three days after a job: a machine that was not put right stops again, and the customer calls.

use super::customer::{CustomerAccount, CustomerObservation};
use super::set_up::{customer_washes, unwatched};
use crate::bench::{Bench, Repair, Report};
use crate::slices::without_breaks;

/// Time from the end of a job to the customer's next wash, s. Our own choice.
const THREE_DAYS_S: f64 = 3.0 * 86_400.0;

/// What is on file of the first visit.
#[derive(Clone, Debug, PartialEq)]
pub struct EarlierVisit {
    /// Codes that were noted and not struck out.
    pub noted_codes: Vec<u8>,
    /// What was repaired.
    pub repairs: Vec<Repair>,
    /// What was written.
    pub report: Report,
}

/// A customer who has called back.
#[derive(Clone)]
pub struct CallBack {
    /// The first visit.
    pub earlier: EarlierVisit,
    /// What the customer noticed in the wash after the repair.
    pub account: CustomerAccount,
    /// The second visit, on which the technician has just come: the same machine with what is still wrong with it and
    /// the parts that went in. Its log begins anew.
    pub bench: Bench,
}

/// What the customer does three days after the job on this bench; none where all is well or nobody calls: no report
/// was handed in, or it told the customer that the machine is not repaired.
pub fn call_back(done: &Bench) -> Option<CallBack> {
    without_breaks(call_back_in_slices(done))
}

/// The same in slices of a few milliseconds each.
pub async fn call_back_in_slices(done: &Bench) -> Option<CallBack> {
    let report = done.report().filter(|report| report.calls_it_repaired())?;
    if !done.leaves_something() {
        return None;
    }
    let earlier = EarlierVisit {
        noted_codes: done.log().standing_codes(),
        repairs: done
            .repairs()
            .iter()
            .map(|(_, repair)| repair.clone())
            .collect(),
        report: report.clone(),
    };
    let mut bench = done.next_visit(THREE_DAYS_S);
    customer_washes(&mut bench, &mut unwatched).await;
    bench.begin();
    let account = CustomerAccount::of(&bench);
    // A fault that comes and goes can spare this wash.
    (account.noticed != [CustomerObservation::RanToEnd]).then_some(CallBack {
        earlier,
        account,
        bench,
    })
}
