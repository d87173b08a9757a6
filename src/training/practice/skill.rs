//! What a learner can be good at.

use detent_simulation::names;

names! {
    /// One skill that is practised and followed by itself. Each of the first six has a drill of its own;
    /// the last two are practised in whole jobs alone.
    Skill {
        EntryTiming = "entry-timing", LampReading = "lamp-reading", Metering = "metering",
        CodeLookUp = "code-look-up", NextTest = "next-test", PartChoice = "part-choice",
        SafeWork = "safe-work", Proof = "proof",
    }
}

impl Skill {
    /// Whether there is a drill for it.
    pub fn has_drill(self) -> bool {
        !matches!(self, Skill::SafeWork | Skill::Proof)
    }
}
