//! What can be wrong with a job, a board or a guide that reads well.

use crate::bench::script::StepError;
use crate::lesson::{Loss, Mains};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::Component;
use detent_simulation::names;

/// Where fewer tries than this get in, nobody does. Our own choice.
const NOBODY: f64 = 0.02;

names! {
    /// How much a finding weighs. Its text is `author-severity-{name}`.
    Severity {
        /// Not to be given to a class.
        Error = "error",
        /// To be looked at.
        Warning = "warning",
    }
}

/// A finding and the field that it is about.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedFinding {
    /// Path of the field, such as `complaint.en`.
    pub field: String,
    /// What is found.
    pub finding: AuthoringFinding,
}

/// Something found by running the simulator, or in the words of a job.
#[derive(Clone, Debug, PartialEq)]
pub enum AuthoringFinding {
    /// Neither the customer's wash nor anything that is allowed shows this fault.
    NeverShows {
        /// The failure mode.
        mode: String,
    },
    /// A failure mode that is drawn for its code leaves none of those codes on this board.
    OtherCodeThanDrawn {
        /// The failure mode.
        mode: String,
        /// The codes that are asked for.
        codes: Vec<u8>,
    },
    /// The customer's wash leaves other codes than the author expects.
    OtherCodes {
        /// As written.
        expected: Vec<u8>,
        /// As stored, by number.
        raised: Vec<u8>,
    },
    /// A likely rival looks the same to everything that is allowed.
    RivalAlike {
        /// The hidden failure mode.
        mode: String,
        /// The rival; none for a machine with nothing wrong.
        rival: Option<String>,
        /// How likely the rival is after the customer's wash, 0 to 1.
        share: f64,
        /// Whether one repair cures both: then it matters less.
        same_repair: bool,
    },
    /// The worn dial slipped before the customer's wash, which then says nothing.
    DialSlipped,
    /// The scripted expert comes to a step that the machine refuses.
    ExpertStuck(Box<StepError>),
    /// The scripted expert does not pass.
    ExpertFails {
        /// What fails the whole job, if something does.
        by: Option<Box<Loss>>,
        /// Share of the points that the expert keeps, 0 to 1.
        share: f64,
    },
    /// The expert takes longer than the par time.
    TooSlow {
        /// The expert's work, min.
        minutes: f64,
        /// Par time, min.
        par: f64,
    },
    /// The expert's bill is above the budget.
    TooDear {
        /// The expert's bill, whole units of money.
        bill: f64,
        /// The budget.
        budget: f64,
    },
    /// Hardly a hand meets the gesture.
    GestureHardlyMet {
        /// Share of the tries of a hand of usual skill that get in, 0 to 1.
        share: f64,
    },
    /// A worn dial on a panel that has none.
    NoDialToWear,
    /// A text names a component that may have failed.
    GivesAway {
        /// The component.
        component: Component,
        /// The word.
        word: String,
    },
    /// The text is the same in both languages.
    SameInBothLanguages,
    /// A key of a text that there is not.
    UnknownText(String),
    /// No new control of this board can be bought.
    NoControlToBuy,
    /// The board stops a sound machine, or stores codes on it.
    SoundMachineAccused {
        /// The supply.
        mains: Mains,
        /// What accuses it.
        monitors: Vec<Monitor>,
    },
    /// A sound machine's wash does not come to its end.
    SoundMachineNeverDone {
        /// The supply.
        mains: Mains,
    },
    /// A sound machine cannot be recalibrated.
    SoundMachineNotRecalibrated {
        /// The supply.
        mains: Mains,
    },
    /// A guide with no job of its name beside it.
    NoJobForGuide,
    /// What a step of a guide shows does not reach its goal.
    GuideGoalMissed {
        /// The step, from 1.
        step: usize,
    },
    /// The machine refuses what a step of a guide shows.
    GuideStepRefused {
        /// The step, from 1.
        step: usize,
        /// Why.
        why: Box<StepError>,
    },
    /// The goal of a step of a guide is reached before the step begins: nobody comes to see it.
    GuideGoalAlready {
        /// The step, from 1.
        step: usize,
    },
    /// Whoever does what a guide shows is told of a way astray.
    GuideStraysItself {
        /// The step, from 1.
        step: usize,
    },
    /// Something unsafe or mistaken happens to whoever does what a step of a guide shows.
    GuideDoesHarm {
        /// The step, from 1.
        step: usize,
        /// What it takes.
        loss: Box<Loss>,
    },
    /// Whoever does all that a guide shows does not pass.
    GuideFails {
        /// What fails the whole job, if something does.
        by: Option<Box<Loss>>,
        /// Share of the points kept, 0 to 1.
        share: f64,
    },
    /// There is no table of this board: nothing could be proved.
    NoTable,
    /// A file of a course, by its path inside, that is not as it was packed.
    ChangedSincePacked(String),
    /// Nothing can be planned or believed: the message of the planner.
    NoPlan(String),
}

impl AuthoringFinding {
    /// How much it weighs.
    pub const fn severity(&self) -> Severity {
        match self {
            AuthoringFinding::GestureHardlyMet { share } if *share < NOBODY => Severity::Error,
            AuthoringFinding::NeverShows { .. }
            | AuthoringFinding::OtherCodes { .. }
            | AuthoringFinding::RivalAlike {
                same_repair: false, ..
            }
            | AuthoringFinding::ExpertStuck(_)
            | AuthoringFinding::ExpertFails { .. }
            | AuthoringFinding::TooSlow { .. }
            | AuthoringFinding::TooDear { .. }
            | AuthoringFinding::GivesAway { .. }
            | AuthoringFinding::UnknownText(_)
            | AuthoringFinding::SoundMachineAccused { .. }
            | AuthoringFinding::SoundMachineNeverDone { .. }
            | AuthoringFinding::SoundMachineNotRecalibrated { .. }
            | AuthoringFinding::NoJobForGuide
            | AuthoringFinding::GuideGoalMissed { .. }
            | AuthoringFinding::GuideStepRefused { .. }
            | AuthoringFinding::GuideDoesHarm { .. }
            | AuthoringFinding::GuideFails { .. }
            | AuthoringFinding::NoPlan(_) => Severity::Error,
            AuthoringFinding::OtherCodeThanDrawn { .. }
            | AuthoringFinding::RivalAlike { .. }
            | AuthoringFinding::DialSlipped
            | AuthoringFinding::GestureHardlyMet { .. }
            | AuthoringFinding::NoDialToWear
            | AuthoringFinding::SameInBothLanguages
            | AuthoringFinding::NoControlToBuy
            | AuthoringFinding::ChangedSincePacked(_)
            | AuthoringFinding::GuideGoalAlready { .. }
            | AuthoringFinding::GuideStraysItself { .. }
            | AuthoringFinding::NoTable => Severity::Warning,
        }
    }

    /// Its fixed name, for other programs.
    pub const fn name(&self) -> &'static str {
        match self {
            AuthoringFinding::NeverShows { .. } => "never-shows",
            AuthoringFinding::OtherCodeThanDrawn { .. } => "other-code-than-drawn",
            AuthoringFinding::OtherCodes { .. } => "other-codes",
            AuthoringFinding::RivalAlike { .. } => "rival-alike",
            AuthoringFinding::DialSlipped => "dial-slipped",
            AuthoringFinding::ExpertStuck(_) => "expert-stuck",
            AuthoringFinding::ExpertFails { .. } => "expert-fails",
            AuthoringFinding::TooSlow { .. } => "too-slow",
            AuthoringFinding::TooDear { .. } => "too-dear",
            AuthoringFinding::GestureHardlyMet { .. } => "gesture-hardly-met",
            AuthoringFinding::NoDialToWear => "no-dial-to-wear",
            AuthoringFinding::GivesAway { .. } => "gives-away",
            AuthoringFinding::SameInBothLanguages => "same-in-both-languages",
            AuthoringFinding::UnknownText(_) => "unknown-text",
            AuthoringFinding::NoControlToBuy => "no-control-to-buy",
            AuthoringFinding::SoundMachineAccused { .. } => "sound-machine-accused",
            AuthoringFinding::SoundMachineNeverDone { .. } => "sound-machine-never-done",
            AuthoringFinding::SoundMachineNotRecalibrated { .. } => {
                "sound-machine-not-recalibrated"
            }
            AuthoringFinding::NoJobForGuide => "no-job-for-guide",
            AuthoringFinding::GuideGoalMissed { .. } => "guide-goal-missed",
            AuthoringFinding::GuideStepRefused { .. } => "guide-step-refused",
            AuthoringFinding::GuideGoalAlready { .. } => "guide-goal-already",
            AuthoringFinding::GuideStraysItself { .. } => "guide-strays-itself",
            AuthoringFinding::GuideDoesHarm { .. } => "guide-does-harm",
            AuthoringFinding::GuideFails { .. } => "guide-fails",
            AuthoringFinding::NoTable => "no-table",
            AuthoringFinding::ChangedSincePacked(_) => "changed-since-packed",
            AuthoringFinding::NoPlan(_) => "no-plan",
        }
    }
}
