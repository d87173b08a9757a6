//! What a learner can be good at.

use detent_simulation::names;
use schemars::JsonSchema;

names! {
    /// One skill that is practised and followed by itself. Each has a drill of its own.
    #[derive(JsonSchema)]
    Skill {
        /// The entry gesture.
        EntryTiming = "entry-timing",
        /// Reading a number off lamps.
        LampReading = "lamp-reading",
        /// Checks with the meter.
        Metering = "metering",
        /// From a code to its causes.
        CodeLookUp = "code-look-up",
        /// Choosing the next test.
        NextTest = "next-test",
        /// Choosing the part.
        PartChoice = "part-choice",
        /// Working safely.
        SafeWork = "safe-work",
        /// Proving a fault, and a repair.
        Proof = "proof",
    }
}
