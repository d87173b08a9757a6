//! What stands on the rating plate of a machine, and what can be asked about it. Models and serial numbers are invented.

use detent_simulation::names;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use schemars::JsonSchema;

names! {
    // Its text is `ask-{name}`.
    /// Something to ask the customer.
    #[derive(JsonSchema)]
    Question {
        /// The model and serial numbers on the plate.
        Appliance = "appliance",
        /// How long it has been so.
        Since = "since",
        /// What happens, and when.
        Happens = "happens",
        /// New noises.
        Noises = "noises",
        /// What the lamps show.
        Panel = "panel",
        /// What the customer has tried.
        Tried = "tried",
        /// To watch it run: is everything as it should be?
        Demonstration = "demonstration",
    }
}

impl Question {
    /// Whether the answer changes with what is done, so that it can be asked again: whether the machine is as it should
    /// be.
    pub fn can_be_asked_again(self) -> bool {
        self == Question::Demonstration
    }
}

/// A machine's plate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Appliance {
    /// Model, the same for every machine with this board.
    pub model: String,
    /// Serial number, of this machine alone.
    pub serial: String,
}

impl Appliance {
    /// The plate of the machine with this board that this seed draws.
    pub(super) fn of(board: &str, seed: u64) -> Appliance {
        let initials: String = board
            .split('-')
            .filter_map(|word| word.chars().next())
            .collect();
        let number = 100 + board.bytes().map(u32::from).sum::<u32>() % 900;
        let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0x706c_6174_6521);
        Appliance {
            model: format!("{}{number}", initials.to_uppercase()),
            serial: format!("{:08}", rng.next_u32() % 100_000_000),
        }
    }
}
