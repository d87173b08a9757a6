//! What the tests that run whole machines share: the built-in content and a machine to run.

// Each test and bench that takes this file in uses its own share of it.
#![allow(dead_code)]

pub mod attempts;
pub mod hands;

use detent_content::ContentLibrary;
use detent_simulation::controller::Board;
use detent_simulation::interface::{Rating, Relay, Relays};
use detent_simulation::plant::{FailureMode, Params, Plant};
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench};
use detent_training::lesson::{Library, Mains, survey};

/// Both supplies.
pub const MAINS: [Mains; 2] = [Mains::V120Hz60, Mains::V230Hz50];

/// The built-in content, and the board at hand.
pub struct Stage {
    content_library: ContentLibrary,
    board: usize,
}

impl Stage {
    /// Reads the built-in content; the first board is at hand.
    pub fn new() -> Stage {
        Stage::with(0)
    }

    /// The same with another board, by its place on the shelf.
    pub fn with(board: usize) -> Stage {
        let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
        Stage {
            content_library,
            board,
        }
    }

    /// A stage for every board.
    pub fn every() -> Vec<Stage> {
        (0..Stage::new().content_library.boards.len())
            .map(Stage::with)
            .collect()
    }

    /// The board at hand.
    pub fn board(&self) -> &Board {
        &self.content_library.boards[self.board]
    }

    /// Everything that was read.
    pub fn content_library(&self) -> &ContentLibrary {
        &self.content_library
    }

    /// The board with the sound machine for `mains`.
    pub fn library(&self, mains: Mains) -> Library<'_> {
        self.content_library.library_of(self.board(), mains)
    }

    /// The failure mode of this name.
    #[track_caller]
    pub fn mode(&self, id: &str) -> &FailureMode {
        let mode = self
            .content_library
            .catalogue
            .modes
            .iter()
            .find(|m| m.id == id);
        mode.unwrap_or_else(|| panic!("the catalogue has no {id}"))
    }

    /// The sound machine's parameters.
    pub fn sound(&self, mains: Mains) -> &Params {
        self.content_library.machine.params(mains)
    }

    /// A calibrated machine on the bench, plugged in, with one fault or none.
    pub fn bench(&self, mains: Mains, fault: Option<&str>, seed: u64) -> Bench {
        let mode = fault.map(|id| self.mode(id));
        survey::bench_with(&self.library(mains), mains.rating(), mode, seed)
    }

    /// The same, awake: its control has been under power for 3 s.
    pub fn awake(&self, mains: Mains, fault: Option<&str>, seed: u64) -> Bench {
        let mut bench = self.bench(mains, fault, seed);
        bench.wait(Span::from_s(3));
        bench
    }

    /// A machine with these faults, awake, the technician just come.
    pub fn called_to(&self, mains: Mains, faults: &[&str]) -> Bench {
        let faults = faults.iter().map(|id| self.mode(id).clone()).collect();
        let mut bench = Bench::new(self.library(mains).setup(mains.rating(), faults, 4));
        bench.wait(Span::from_s(3));
        bench.begin();
        bench
    }

    /// A plant without a control, plugged in.
    pub fn plant(&self, mains: Mains) -> Plant {
        plant(self.sound(mains), mains.rating())
    }
}

/// Does these actions, one after the other; none may be refused.
#[track_caller]
pub fn act(bench: &mut Bench, actions: impl IntoIterator<Item = Action>) {
    for action in actions {
        (bench.act(&action)).unwrap_or_else(|refusal| panic!("{action:?}: {refusal}"));
    }
}

/// A plant without a control, plugged in.
pub fn plant(sound: &Params, rating: Rating) -> Plant {
    let mut plant = Plant::new(sound, rating, 1);
    plant.set_plugged(true);
    plant
}

/// The relays named.
pub fn relays(driven: &[Relay]) -> Relays {
    (driven.iter()).fold(Relays::NONE, |set, relay| set.with(*relay, true))
}

/// Steps a plant under these relays.
pub fn drive(plant: &mut Plant, driven: &[Relay], span: Span) {
    for _ in 0..span.0 {
        plant.step(relays(driven));
    }
}
