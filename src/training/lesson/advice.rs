//! What the customer should be told, from what was wrong with the machine.

use crate::bench::{Advice, Bench};
use detent_simulation::plant::Param;

/// The advice that the hidden faults call for. `par_minutes` is the work that a good technician needs.
pub(super) fn due(bench: &Bench, par_minutes: f64) -> Advice {
    let hidden = bench.hidden();
    let parts: f64 = hidden
        .iter()
        .filter_map(|m| bench.cure(m))
        .map(|p| p.price)
        .sum();
    let rates = bench.rates();
    if !hidden.is_empty() && parts + rates.labour(par_minutes) > rates.repair_limit() {
        return Advice::Replace;
    }
    (hidden.iter().flat_map(|mode| &mode.changes))
        .map(|(param, _)| called_for_by(*param))
        .find(|advice| *advice != Advice::None)
        .unwrap_or(Advice::None)
}

/// What the customer can do so that a fault in this parameter does not come back.
fn called_for_by(param: Param) -> Advice {
    match param {
        Param::SupplyColdKpa | Param::SupplyHotKpa => Advice::KeepTapOpen,
        Param::SupplyScale | Param::SupplyOhms => Advice::CheckOutlet,
        // Grit from the mains gathers in the valve's screen.
        Param::ColdKv | Param::HotKv => Advice::CleanStrainer,
        Param::Suds => Advice::LessDetergent,
        Param::FloorRockMm => Advice::LevelMachine,
        _ => Advice::None,
    }
}
