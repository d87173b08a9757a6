//! What the house brings: the fill hose off the machine, its end in a bucket, the tap opened as far as it goes. A fill
//! code with a sound valve comes from here (common practice, no source).

use detent_simulation::interface::WaterPipe;
use detent_simulation::names;
use detent_simulation::plant::water::bucket_kpa;
use detent_simulation::units::Time;

/// Less than this is weak, L/min: 4 gal/min at the outlet of a laundry's tap (International Plumbing Code, Table 604.3,
/// from memory).
const WEAK_L_MIN: f64 = 15.1;
/// Less than this is a few drops, L/min.
const NOTHING_L_MIN: f64 = 0.3;

names! {
    /// What a bucket test comes to. Its text is `bucket-{name}`.
    SupplyStrength {
        /// Nothing comes.
        Nothing = "nothing",
        /// Too little to fill in time.
        Weak = "weak",
        /// As much as a washer needs.
        Good = "good",
    }
}

impl SupplyStrength {
    /// What so many L/min are.
    pub fn of(flow_l_min: f64) -> SupplyStrength {
        if flow_l_min < NOTHING_L_MIN {
            SupplyStrength::Nothing
        } else if flow_l_min < WEAK_L_MIN {
            SupplyStrength::Weak
        } else {
            SupplyStrength::Good
        }
    }
}

/// One bucket filled at one tap.
#[derive(Clone, Debug, PartialEq)]
pub struct BucketTest {
    /// When.
    pub at: Time,
    /// At which tap.
    pub pipe: WaterPipe,
    /// Flow, L/min.
    pub flow_l_min: f64,
    /// Temperature of the water, °C; none where nothing comes.
    pub water_c: Option<f64>,
    /// Failure modes, by their place in the catalogue, that would have shown something else.
    /// For the score, not for the trainee's eyes.
    pub rules_out: Vec<bool>,
}

impl BucketTest {
    /// What it comes to.
    pub fn strength(&self) -> SupplyStrength {
        SupplyStrength::of(self.flow_l_min)
    }

    /// Pressure behind the tap while so much flows, kPa: an estimate.
    pub fn pressure_kpa(&self) -> f64 {
        bucket_kpa(self.flow_l_min)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 4 gal/min at 8 psi of flow pressure for a laundry tap, 1 gal = 3.785 L (International Plumbing Code, Table 604.3,
    /// from memory).
    #[test]
    fn what_the_plumbing_code_asks_of_a_laundry_tap_is_good_and_half_of_it_weak() {
        let asked_l_min = 4.0 * 3.785_411_784;
        assert_eq!(SupplyStrength::of(asked_l_min), SupplyStrength::Good);
        assert_eq!(SupplyStrength::of(0.5 * asked_l_min), SupplyStrength::Weak);
        assert_eq!(SupplyStrength::of(0.0), SupplyStrength::Nothing);
    }
}
