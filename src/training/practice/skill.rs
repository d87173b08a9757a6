//! What a learner can be good at.

use detent_simulation::names;

names! {
    /// One skill that is practised and followed by itself. Each has a drill of its own.
    Skill {
        EntryTiming = "entry-timing", LampReading = "lamp-reading", Metering = "metering",
        CodeLookUp = "code-look-up", NextTest = "next-test", PartChoice = "part-choice",
        SafeWork = "safe-work", Proof = "proof",
    }
}
