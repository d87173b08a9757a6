//! What a bench is made from.

use super::Bench;
use crate::bench::action::Grip;
use crate::bench::last_wash::LastWash;
use crate::bench::log::BenchLog;
use crate::bench::meter::{Follower, Meter};
use crate::bench::milestone::MilestoneDetector;
use crate::bench::part::{Billing, Part, Rates};
use detent_simulation::controller::{Board, Memory};
use detent_simulation::interface::Rating;
use detent_simulation::machine::Machine;
use detent_simulation::plant::{FailureMode, Param, Params, Plant};
use detent_simulation::units::Time;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// All that a bench is made from.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The control board.
    pub board: Board,
    /// What the board remembers from before.
    pub memory: Memory,
    /// The sound machine's parameters.
    pub sound: Params,
    /// Mains supply.
    pub rating: Rating,
    /// Wear of this machine's dial.
    pub dial_wear: f64,
    /// Faults in this machine.
    pub faults: Vec<FailureMode>,
    /// Every failure mode that the machine could have.
    pub modes: Vec<FailureMode>,
    /// What the counter sells.
    pub parts: Vec<Part>,
    /// What the shop charges.
    pub rates: Rates,
    /// What its invoices add.
    pub billing: Billing,
    /// Seed of every random draw.
    pub seed: u64,
    /// What the customer will pay at most for parts and work, whole units of money; none: whatever it takes.
    pub customer_limit: Option<f64>,
    /// Meter work on the live machine is allowed.
    pub live_tests_allowed: bool,
    /// Hints may be taken.
    pub hints_allowed: bool,
    /// A lead of the meter is broken inside its insulation.
    pub lead_open: bool,
}

impl Bench {
    /// The same machine after so many seconds in which nobody used it: closed up, plugged in, with what is still
    /// wrong with it, as for a visit that the customer does not pay for. Nothing is noted yet.
    pub(crate) fn next_visit(&self, seconds: f64) -> Bench {
        let mut next = self.clone();
        let plant = next.machine.plant_mut();
        plant.stand(seconds);
        plant.set_lid_open(false);
        plant.set_basket_empty(false);
        plant.set_plugged(true);
        next.hidden = next.machine.plant().faults().cloned().collect();
        Bench {
            cabinet_open: false,
            probes: None,
            meter: Meter {
                held: None,
                ..next.meter
            },
            follower: Follower::default(),
            meter_error: 0.0,
            parts: Vec::new(),
            wiped_l: self.machine.plant().water().floor_l,
            spent: 0.0,
            waited_hours: 0.0,
            log: BenchLog::default(),
            report: None,
            last_wash: LastWash::default(),
            called_back: true,
            ..next
        }
    }

    /// Sets the machine up, plugged in and idle as the customer left it.
    pub fn new(setup: Setup) -> Bench {
        let mut plant = Plant::new(&setup.sound, setup.rating, setup.seed);
        plant.set_condition(Param::DialWear, setup.dial_wear);
        for fault in &setup.faults {
            plant.inject_fault(fault);
        }
        plant.set_plugged(true);
        let lost = |param| plant.params().get(param) > 0.5;
        let mut memory = if lost(Param::MemoryLost) {
            Memory::default()
        } else {
            setup.memory
        };
        memory.service_lost = lost(Param::ServiceLost);
        Bench {
            machine: Machine::new(plant, &setup.board, memory),
            modes: setup.modes,
            counter: setup.parts,
            rates: setup.rates,
            billing: setup.billing,
            customer_limit: setup.customer_limit,
            live_tests_allowed: setup.live_tests_allowed,
            hints_allowed: setup.hints_allowed,
            cabinet_open: false,
            pulled: Vec::new(),
            probes: None,
            grip: Grip::Clips,
            meter: Meter {
                lead_open: setup.lead_open,
                ..Meter::default()
            },
            follower: Follower::default(),
            meter_error: 0.0,
            parts: Vec::new(),
            wiped_l: 0.0,
            spent: 0.0,
            waited_hours: 0.0,
            log: BenchLog::default(),
            milestone_detector: MilestoneDetector::default(),
            report: None,
            hidden: setup.faults,
            seed: setup.seed,
            began: Time::ZERO,
            called_back: false,
            last_wash: LastWash::default(),
            rng: ChaCha8Rng::seed_from_u64(setup.seed ^ 0x6d65_7465_7221),
            counter_rng: ChaCha8Rng::seed_from_u64(setup.seed ^ 0x7368_656c_6621),
        }
    }
}
