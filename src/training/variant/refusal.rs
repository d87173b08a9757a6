//! Why a draft is not offered.

use detent_simulation::names;

names! {
    /// Why a draft is not offered. Its text is `variant-refused-{name}`.
    VariantRefusal {
        /// No second fault goes with the first.
        NoSecondFault = "no-second-fault",
        /// It is the original's own machine and fault.
        SameJob = "same-job",
        /// Neither the customer's wash nor anything that is allowed shows the fault.
        NeverShows = "never-shows",
        /// A likely rival looks the same to everything that is allowed.
        RivalsAlike = "rivals-alike",
        /// The worn dial slipped before the customer's wash, which then says nothing of another fault.
        DialSlipped = "dial-slipped",
        /// The best plan costs much less than the original's.
        PlanTooCheap = "plan-too-cheap",
        /// The best plan costs much more than the original's.
        PlanTooDear = "plan-too-dear",
        /// The expert comes to a step that the machine refuses.
        ExpertStuck = "expert-stuck",
        /// The expert does not pass.
        ExpertFails = "expert-fails",
        /// The expert needs more time or money than a job may have.
        ExpertTooSlow = "expert-too-slow",
        /// Of two faults only one ever shows itself.
        OneHidesTheOther = "one-hides-the-other",
        /// People do much better at it than at the original.
        TooEasy = "too-easy",
        /// People do much worse at it than at the original.
        TooHard = "too-hard",
    }
}
