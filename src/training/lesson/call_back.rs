//! Three days after a job: a machine that was not put right stops again, and the customer calls.

use super::customer::{CustomerAccount, CustomerObservation};
use super::set_up::{LAST_WASH, STOOD, wash_in_slices, watch};
use crate::bench::{Bench, Report};
use crate::slices::without_breaks;

/// Time from the end of a job to the customer's next wash, s. Our own choice.
const THREE_DAYS_S: f64 = 3.0 * 86_400.0;

/// A customer who has called back.
#[derive(Clone)]
pub struct CallBack {
    /// What the customer noticed in the wash after the repair.
    pub account: CustomerAccount,
    /// The second visit, on which the technician has just come: the same machine with what is still wrong with it and
    /// the parts that went in. Its log begins anew; what was noted, measured and done before is in the first one's.
    pub bench: Bench,
}

/// What the customer does three days after the job on this bench; none where all is well or nobody calls: no report
/// was handed in, or it told the customer that the machine is not repaired.
pub fn call_back(done: &Bench) -> Option<CallBack> {
    without_breaks(call_back_in_slices(done))
}

/// The same in slices of a few milliseconds each.
pub async fn call_back_in_slices(done: &Bench) -> Option<CallBack> {
    if !done.report().is_some_and(Report::calls_it_repaired) || !done.leaves_something() {
        return None;
    }
    let mut bench = done.next_visit(THREE_DAYS_S);
    wash_in_slices(&mut bench, LAST_WASH).await;
    watch(&mut bench, STOOD).await;
    bench.begin();
    let account = CustomerAccount::of(&bench);
    // A fault that comes and goes can spare this wash.
    (account.noticed != [CustomerObservation::RanToEnd]).then_some(CallBack { account, bench })
}
