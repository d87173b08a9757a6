//! What the customer should be told, from what was wrong with the machine.

use crate::bench::{Advice, Bench};
use detent_simulation::plant::Param;

/// The advice that the hidden faults call for. `par_minutes` is the work that a good technician needs.
pub(super) fn due(bench: &Bench, par_minutes: f64) -> Advice {
    let hidden = bench.hidden();
    if !worth_repairing(bench, par_minutes) {
        return Advice::Replace;
    }
    (hidden.iter().flat_map(|mode| &mode.changes))
        .map(|(param, _)| called_for_by(*param))
        .find(|advice| *advice != Advice::None)
        .unwrap_or(Advice::None)
}

/// Whether the parts that cure the machine and the work come to less than it is worth repairing for. A part that
/// takes longer to fit than the whole job should is reckoned with its own time.
fn worth_repairing(bench: &Bench, par_minutes: f64) -> bool {
    let hidden = bench.hidden();
    let needed = || hidden.iter().filter_map(|m| bench.cure(m));
    let parts: f64 = needed().map(|part| part.price).sum();
    let fitting: f64 = needed().map(|part| part.fitting().seconds() / 60.0).sum();
    let rates = bench.rates();
    hidden.is_empty() || parts + rates.labour(fitting.max(par_minutes)) <= rates.repair_limit()
}

/// What the customer can do so that a fault in this parameter does not come back.
fn called_for_by(param: Param) -> Advice {
    match param {
        Param::ColdTapKv | Param::HotTapKv => Advice::KeepTapOpen,
        Param::SupplyColdKpa | Param::SupplyHotKpa | Param::ColdPipeKv | Param::HotPipeKv => {
            Advice::CheckWater
        }
        Param::SupplyScale
        | Param::SupplyOhms
        | Param::PolarityReversed
        | Param::OutletGroundOhms => Advice::CheckOutlet,
        Param::ExtensionOhms => Advice::NoExtensionCord,
        // Grit from the mains gathers in the valve's screen.
        Param::ColdKv | Param::HotKv => Advice::CleanStrainer,
        Param::Suds => Advice::LessDetergent,
        Param::FloorRockMm => Advice::LevelMachine,
        _ => Advice::None,
    }
}
