//! Every reason to lose points: what it says, on which side of the job it counts and what it takes. Its text is
//! `lost-{kind}`; what would have been sound, and what that is worth, is in [`crate::reason::Account`].

use super::score::Dimension;
use crate::bench::{Advice, HintRung, Incident, RunGap};
use detent_simulation::controller::EntryError;
use detent_simulation::interface::Component;
use detent_simulation::names;
use detent_simulation::units::by_name;
use serde::{Deserialize, Serialize};

/// A reason to lose points, with what there is to say about it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum Loss {
    /// A try at the entry gesture failed.
    FailedTry {
        /// The rule that ended it.
        rule: EntryError,
    },
    /// Service mode was never entered.
    NeverEntered,
    /// The plug was put back before the control forgot.
    RestTooShort {
        /// Time without power, s.
        seconds: f64,
    },
    /// A code was noted that the lamps had not shown.
    Misread {
        /// The code noted.
        noted: u8,
        /// Codes shown in the whole job, each once, oldest first.
        shown: Vec<u8>,
    },
    /// A code was never noted.
    CodeNotNoted {
        /// The code.
        code: u8,
        /// Codes that had to be noted.
        due: usize,
    },
    /// A sound control board was replaced.
    GoodBoardReplaced {
        /// Number of the board fitted, as it was asked for.
        part: String,
    },
    /// A part was fitted that does not cure the fault.
    WrongPart {
        /// Its number, as it was asked for.
        part: String,
    },
    /// A part was replaced that only had to be cleaned, adjusted, reseated or repaired with a kit.
    OverRepaired {
        /// Its number, as it was asked for.
        part: String,
    },
    /// A part was ordered before any reading or look told something about it.
    BoughtOnTheCode {
        /// Its number, as it was ordered.
        part: String,
    },
    /// The fault is still in the machine.
    NotCured,
    /// No report was handed in.
    NoReport,
    /// The report names other causes than the machine had.
    WrongCause {
        /// Failure modes named; none for "nothing is wrong".
        said: Vec<String>,
        /// Failure modes that the machine had.
        truth: Vec<String>,
    },
    /// The machine was cured, but the report looks for the fault somewhere else: the right part went in by luck.
    LuckyRepair {
        /// Failure modes named; none for "nothing is wrong".
        said: Vec<String>,
        /// Failure modes that the machine had.
        truth: Vec<String>,
    },
    /// The report names a part that does not cure the machine or does not fit it.
    WrongPartNamed {
        /// Number named, if one was.
        named: Option<String>,
        /// Numbers of the parts that cure the machine.
        needed: Vec<String>,
    },
    /// The customer was told something else than the fault calls for.
    WrongAdvice {
        /// What was said.
        given: Advice,
        /// What was called for.
        due: Advice,
    },
    /// Something live was touched.
    Shock,
    /// The insulation tester's probes were held with the fingers.
    TesterShock,
    /// Hands were inside before the stored charge was gone.
    TouchedCharge,
    /// The cabinet was opened with the plug in.
    OpenedLive,
    /// Ohms were measured on a live or charged circuit.
    OhmsOnLive,
    /// The machine was measured live in a job that does not allow it.
    LiveNotAllowed,
    /// With water in the tub a part below it was opened, or the machine was tilted.
    Flood,
    /// A hose came off with its tap open.
    OpenedUnderPressure,
    /// The lid was opened while the basket turned.
    LidSpinning,
    /// The bulk capacitor was discharged with the plug in.
    DischargedLive,
    /// A hand was in the basket or the drive while it turned.
    HandInDrive,
    /// Hands were in water that burns.
    Scald,
    /// Hands went in after the charge was bled, but before anyone measured that it is gone.
    DischargedUnmeasured,
    /// Hands went in before anyone proved the circuit dead.
    NotProvedDead,
    /// The circuit was tested with a meter that nobody had tried before and after.
    MeterNotProved,
    /// The work took longer than it should.
    Slow {
        /// Work, min.
        minutes: f64,
        /// Work that a good technician needs, min.
        par: f64,
    },
    /// More was spent than the repair needed.
    Overspent {
        /// Spent on parts, whole units of money.
        spent: f64,
        /// Price of the parts that cure the machine.
        needed: f64,
        /// What the customer had agreed to for parts and work.
        budget: f64,
    },
    /// Parts and work came to more than the customer had agreed to.
    OverBudget {
        /// Parts and work, whole units of money.
        bill: f64,
        /// What was agreed.
        budget: f64,
    },
    /// Parts and work came to more than the machine is worth repairing for.
    OverRepairLimit {
        /// Parts and work, whole units of money.
        bill: f64,
        /// What it is worth at most.
        limit: f64,
    },
    /// A part went in that the customer had not agreed to pay for.
    NotApproved {
        /// Its number.
        part: String,
    },
    /// Parts and work came to more than a tenth above what was quoted and agreed to.
    OverQuote {
        /// Parts and work, as the customer would be billed, whole units of money.
        bill: f64,
        /// What was quoted.
        quoted: f64,
    },
    /// The report cites nothing from before the repair.
    NoEvidence,
    /// What the report cites leaves other causes open.
    RivalsLeft {
        /// Other causes left open.
        open: usize,
        /// Other causes that the service sheet lists for the codes.
        rivals: usize,
    },
    /// No recalibration passed after the repair.
    NotRecalibrated,
    /// The last recalibration that passed after the repair weighed laundry in with the basket.
    CalibratedWithLaundry,
    /// No program ran to its end after the repair.
    NoProvingRun,
    /// Programs ran to their end after the repair, but none that came to what was repaired.
    RunFallsShort {
        /// What none of them came to.
        #[serde(with = "by_name")]
        gap: RunGap,
    },
    /// Something that holds water was opened, and nobody looked afterwards whether it leaks.
    NoLeakCheck {
        /// What was opened.
        #[serde(with = "by_name")]
        component: Component,
    },
    /// The machine was repaired and ran, and the customer was not shown that it runs.
    NotDemonstrated,
    /// A code was noted that the lamps had not shown, and struck out before anything was bought on it.
    CodeSlip {
        /// The code noted.
        noted: u8,
    },
    /// A hint was taken.
    HintTaken {
        /// How far it went.
        rung: HintRung,
    },
}

names! {
    /// Which reason to lose points, without what there is to say about it.
    LossKind {
        FailedTry = "failed-try", NeverEntered = "never-entered", RestTooShort = "rest-too-short",
        Misread = "misread", CodeNotNoted = "code-not-noted",
        GoodBoardReplaced = "good-board-replaced", WrongPart = "wrong-part",
        OverRepaired = "over-repaired", OpenedUnderPressure = "opened-under-pressure",
        BoughtOnTheCode = "bought-on-the-code", NotCured = "not-cured", NoReport = "no-report",
        WrongCause = "wrong-cause", LuckyRepair = "lucky-repair",
        WrongPartNamed = "wrong-part-named",
        WrongAdvice = "wrong-advice",
        Shock = "shock", TesterShock = "tester-shock", TouchedCharge = "touched-charge", OpenedLive = "opened-live",
        OhmsOnLive = "ohms-on-live", LiveNotAllowed = "live-not-allowed", Flood = "flood",
        LidSpinning = "lid-spinning", DischargedLive = "discharged-live",
        HandInDrive = "hand-in-drive", Scald = "scald",
        DischargedUnmeasured = "discharged-unmeasured", NotProvedDead = "not-proved-dead",
        MeterNotProved = "meter-not-proved",
        Slow = "slow", Overspent = "overspent", OverBudget = "over-budget",
        OverRepairLimit = "over-repair-limit",
        NotApproved = "not-approved", OverQuote = "over-quote",
        NoEvidence = "no-evidence", RivalsLeft = "rivals-left",
        NotRecalibrated = "not-recalibrated",
        CalibratedWithLaundry = "calibrated-with-laundry", NoProvingRun = "no-proving-run",
        RunFallsShort = "run-falls-short",
        NoLeakCheck = "no-leak-check", NotDemonstrated = "not-demonstrated",
        CodeSlip = "code-slip", HintTaken = "hint-taken",
    }
}

impl LossKind {
    /// Somebody was hurt, or the customer's floor flooded: the job is failed, whatever else was won.
    pub const fn fails_the_job(self) -> bool {
        match self {
            LossKind::Shock
            | LossKind::TouchedCharge
            | LossKind::HandInDrive
            | LossKind::Scald
            | LossKind::Flood
            | LossKind::OpenedUnderPressure => true,
            LossKind::FailedTry
            | LossKind::NeverEntered
            | LossKind::RestTooShort
            | LossKind::Misread
            | LossKind::CodeNotNoted
            | LossKind::GoodBoardReplaced
            | LossKind::WrongPart
            | LossKind::OverRepaired
            | LossKind::BoughtOnTheCode
            | LossKind::NotCured
            | LossKind::NoReport
            | LossKind::WrongCause
            | LossKind::LuckyRepair
            | LossKind::WrongPartNamed
            | LossKind::WrongAdvice
            | LossKind::TesterShock
            | LossKind::OpenedLive
            | LossKind::OhmsOnLive
            | LossKind::LiveNotAllowed
            | LossKind::LidSpinning
            | LossKind::DischargedLive
            | LossKind::DischargedUnmeasured
            | LossKind::NotProvedDead
            | LossKind::MeterNotProved
            | LossKind::Slow
            | LossKind::Overspent
            | LossKind::OverBudget
            | LossKind::OverRepairLimit
            | LossKind::NotApproved
            | LossKind::OverQuote
            | LossKind::NoEvidence
            | LossKind::RivalsLeft
            | LossKind::NotRecalibrated
            | LossKind::CalibratedWithLaundry
            | LossKind::NoProvingRun
            | LossKind::RunFallsShort
            | LossKind::CodeSlip
            | LossKind::NoLeakCheck
            | LossKind::NotDemonstrated
            | LossKind::HintTaken => false,
        }
    }
}

impl Incident {
    /// Somebody was hurt, or the customer's floor flooded: whatever else goes well, the job is failed.
    pub fn fails_the_job(self) -> bool {
        Loss::of_happening(self, "").kind().fails_the_job()
    }

    /// True for what goes through the body as current.
    pub fn is_a_shock(self) -> bool {
        matches!(self, Incident::Shock | Incident::TouchedCharge)
    }
}

impl Loss {
    /// The loss that something unsafe or mistaken brings. `part` is the number that was being fitted.
    pub(super) fn of_happening(what: Incident, part: &str) -> Loss {
        match what {
            Incident::CabinetOpenedLive => Loss::OpenedLive,
            Incident::TouchedCharge => Loss::TouchedCharge,
            Incident::OhmsOnLive => Loss::OhmsOnLive,
            Incident::Shock => Loss::Shock,
            Incident::TesterShock => Loss::TesterShock,
            Incident::LiveTestNotAllowed => Loss::LiveNotAllowed,
            Incident::Flood => Loss::Flood,
            Incident::OpenedUnderPressure => Loss::OpenedUnderPressure,
            Incident::LidOpenedSpinning => Loss::LidSpinning,
            Incident::DischargedLive => Loss::DischargedLive,
            Incident::HandInDrive => Loss::HandInDrive,
            Incident::Scald => Loss::Scald,
            Incident::WrongPart => Loss::WrongPart {
                part: part.to_owned(),
            },
            Incident::OverRepaired => Loss::OverRepaired {
                part: part.to_owned(),
            },
            Incident::GoodBoardReplaced => Loss::GoodBoardReplaced {
                part: part.to_owned(),
            },
        }
    }

    /// Which reason it is.
    pub fn kind(&self) -> LossKind {
        match self {
            Loss::FailedTry { .. } => LossKind::FailedTry,
            Loss::NeverEntered => LossKind::NeverEntered,
            Loss::RestTooShort { .. } => LossKind::RestTooShort,
            Loss::Misread { .. } => LossKind::Misread,
            Loss::CodeNotNoted { .. } => LossKind::CodeNotNoted,
            Loss::GoodBoardReplaced { .. } => LossKind::GoodBoardReplaced,
            Loss::WrongPart { .. } => LossKind::WrongPart,
            Loss::OverRepaired { .. } => LossKind::OverRepaired,
            Loss::BoughtOnTheCode { .. } => LossKind::BoughtOnTheCode,
            Loss::NotCured => LossKind::NotCured,
            Loss::NoReport => LossKind::NoReport,
            Loss::WrongCause { .. } => LossKind::WrongCause,
            Loss::LuckyRepair { .. } => LossKind::LuckyRepair,
            Loss::WrongPartNamed { .. } => LossKind::WrongPartNamed,
            Loss::WrongAdvice { .. } => LossKind::WrongAdvice,
            Loss::Shock => LossKind::Shock,
            Loss::TesterShock => LossKind::TesterShock,
            Loss::TouchedCharge => LossKind::TouchedCharge,
            Loss::OpenedLive => LossKind::OpenedLive,
            Loss::OhmsOnLive => LossKind::OhmsOnLive,
            Loss::LiveNotAllowed => LossKind::LiveNotAllowed,
            Loss::Flood => LossKind::Flood,
            Loss::OpenedUnderPressure => LossKind::OpenedUnderPressure,
            Loss::LidSpinning => LossKind::LidSpinning,
            Loss::DischargedLive => LossKind::DischargedLive,
            Loss::HandInDrive => LossKind::HandInDrive,
            Loss::Scald => LossKind::Scald,
            Loss::DischargedUnmeasured => LossKind::DischargedUnmeasured,
            Loss::NotProvedDead => LossKind::NotProvedDead,
            Loss::MeterNotProved => LossKind::MeterNotProved,
            Loss::Slow { .. } => LossKind::Slow,
            Loss::Overspent { .. } => LossKind::Overspent,
            Loss::OverBudget { .. } => LossKind::OverBudget,
            Loss::OverRepairLimit { .. } => LossKind::OverRepairLimit,
            Loss::NotApproved { .. } => LossKind::NotApproved,
            Loss::OverQuote { .. } => LossKind::OverQuote,
            Loss::NoEvidence => LossKind::NoEvidence,
            Loss::RivalsLeft { .. } => LossKind::RivalsLeft,
            Loss::NotRecalibrated => LossKind::NotRecalibrated,
            Loss::CalibratedWithLaundry => LossKind::CalibratedWithLaundry,
            Loss::NoProvingRun => LossKind::NoProvingRun,
            Loss::RunFallsShort { .. } => LossKind::RunFallsShort,
            Loss::CodeSlip { .. } => LossKind::CodeSlip,
            Loss::NoLeakCheck { .. } => LossKind::NoLeakCheck,
            Loss::NotDemonstrated => LossKind::NotDemonstrated,
            Loss::HintTaken { .. } => LossKind::HintTaken,
        }
    }

    /// The side of the job on which it counts. A few count on a second one too: see the judge.
    pub fn side(&self) -> Dimension {
        match self {
            Loss::FailedTry { .. } | Loss::NeverEntered | Loss::RestTooShort { .. } => {
                Dimension::Entry
            }
            Loss::Misread { .. } | Loss::CodeNotNoted { .. } | Loss::CodeSlip { .. } => Dimension::Reading,
            Loss::GoodBoardReplaced { .. }
            | Loss::WrongPart { .. }
            | Loss::OverRepaired { .. }
            | Loss::BoughtOnTheCode { .. }
            | Loss::NotCured
            | Loss::NoReport
            | Loss::WrongCause { .. }
            | Loss::LuckyRepair { .. }
            | Loss::WrongPartNamed { .. }
            | Loss::WrongAdvice { .. }
            // Where reasoning has no points, the judge takes it from the side that has most.
            | Loss::HintTaken { .. } => Dimension::Reasoning,
            Loss::Shock
            | Loss::TesterShock
            | Loss::TouchedCharge
            | Loss::OpenedLive
            | Loss::OhmsOnLive
            | Loss::LiveNotAllowed
            | Loss::Flood
            | Loss::OpenedUnderPressure
            | Loss::LidSpinning
            | Loss::DischargedLive
            | Loss::HandInDrive
            | Loss::Scald
            | Loss::DischargedUnmeasured
            | Loss::NotProvedDead
            | Loss::MeterNotProved => Dimension::Safety,
            Loss::Slow { .. }
            | Loss::Overspent { .. }
            | Loss::OverBudget { .. }
            | Loss::OverRepairLimit { .. }
            | Loss::NotApproved { .. }
            | Loss::OverQuote { .. } => Dimension::Cost,
            Loss::NoEvidence
            | Loss::RivalsLeft { .. }
            | Loss::NotRecalibrated
            | Loss::CalibratedWithLaundry
            | Loss::NoProvingRun
            | Loss::RunFallsShort { .. }
            | Loss::NoLeakCheck { .. }
            | Loss::NotDemonstrated => Dimension::Proof,
        }
    }

    /// Share of a side's points that it takes there.
    pub fn share(&self, side: Dimension) -> f64 {
        match self {
            Loss::FailedTry { .. } => 0.15,
            Loss::RestTooShort { .. } => 0.20,
            Loss::Misread { .. } => 0.50,
            Loss::CodeNotNoted { due, .. } => 1.0 / *due as f64,
            Loss::GoodBoardReplaced { .. } if side == Dimension::Reasoning => 0.60,
            // Who swaps a sound control made nothing of what was drilled.
            Loss::GoodBoardReplaced { .. } => 1.0,
            Loss::WrongPart { .. } => 0.35,
            Loss::OverRepaired { .. } => 0.20,
            Loss::BoughtOnTheCode { .. } => 0.40,
            // Of the cost as well: time and money bought nothing.
            Loss::NeverEntered | Loss::NotCured => 1.0,
            Loss::NoReport if side == Dimension::Proof => UNPROVEN,
            Loss::NoReport => WRONG_CAUSE,
            Loss::WrongCause { said, truth } => {
                let right = truth.iter().filter(|id| said.contains(id)).count();
                let wrong = said.iter().filter(|id| !truth.contains(id)).count();
                let missed = truth.len() - right;
                if truth.is_empty() {
                    // A sound machine was given up, or something named that it does not have.
                    return WRONG_CAUSE;
                }
                WRONG_CAUSE * (wrong + missed) as f64 / (wrong + truth.len()) as f64
            }
            // Nothing was concluded rightly, so all of the reasoning goes, and what is cited proved nothing. Points
            // lie where a job's goal is: in a drill so few on these two that part of what was drilled goes as
            // well. With every layout of points in the course that leaves no more than 70 in 100, and no pass.
            Loss::LuckyRepair { .. } => match side {
                Dimension::Reasoning => 1.0,
                Dimension::Proof => UNPROVEN,
                Dimension::Entry | Dimension::Reading | Dimension::Safety | Dimension::Cost => 0.40,
            },
            Loss::WrongPartNamed { .. } => 0.15,
            Loss::WrongAdvice { .. } => 0.10,
            Loss::Shock | Loss::HandInDrive => 1.0,
            Loss::TouchedCharge | Loss::Scald | Loss::Flood | Loss::OpenedUnderPressure => 0.7,
            Loss::OpenedLive | Loss::OhmsOnLive | Loss::LidSpinning | Loss::DischargedLive => 0.5,
            Loss::TesterShock => 0.2,
            Loss::LiveNotAllowed => 0.4,
            // Each time the plug was out: as dangerous as an open cabinet, only that nothing happened.
            Loss::NotProvedDead | Loss::DischargedUnmeasured => 0.5,
            Loss::MeterNotProved => 0.25,
            Loss::Slow { minutes, par } => (0.5 * (minutes - par) / par).min(0.5),
            Loss::Overspent {
                spent,
                needed,
                budget,
            } => ((spent - needed) / budget).min(1.0),
            Loss::OverBudget { .. } | Loss::OverRepairLimit { .. } => 0.5,
            Loss::NotApproved { .. } | Loss::OverQuote { .. } => 0.10,
            Loss::NoEvidence => UNPROVEN,
            Loss::RivalsLeft { open, rivals } => UNPROVEN * *open as f64 / *rivals as f64,
            Loss::NotRecalibrated => 0.25,
            // What nobody has seen wash is not known to be repaired. Of the side that the job is most about as well, so
            // much that with every layout of points in the course it is no pass.
            Loss::NoProvingRun if side == Dimension::Proof => 1.0,
            Loss::NoProvingRun => 0.70,
            Loss::RunFallsShort { .. } => 1.0,
            // It learned all but one figure right.
            Loss::CalibratedWithLaundry => 0.15,
            Loss::CodeSlip { .. } => 0.10,
            Loss::NoLeakCheck { .. } => 0.10,
            // It proves nothing that the run has not: a courtesy, and the end of many a dispute.
            Loss::NotDemonstrated => 0.05,
            Loss::HintTaken { rung } => match rung {
                HintRung::WhereToLook => 0.04,
                HintRung::WhatToAsk => 0.08,
                HintRung::WhatToDo => 0.16,
            },
        }
    }
}

/// Share of the reasoning that a report takes whose causes are all wrong, or that is not there.
const WRONG_CAUSE: f64 = 0.40;
/// Share of the proof that a report takes which proves nothing, or that is not there.
const UNPROVEN: f64 = 0.50;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_written_loss_names_its_kind() {
        let loss = Loss::Misread {
            noted: 52,
            shown: vec![42],
        };
        let json = serde_json::to_value(&loss).expect("plain data");
        let expected = serde_json::json!({ "reason": "misread", "noted": 52, "shown": [42] });
        assert_eq!(json, expected);
        assert_eq!(json["reason"], loss.kind().name());
    }

    #[test]
    fn what_fails_the_job_fails_it_as_it_happens_and_in_the_score() {
        for incident in Incident::ALL {
            let kind = Loss::of_happening(*incident, "P-0701").kind();
            assert_eq!(kind.fails_the_job(), incident.fails_the_job(), "{incident}");
            // The same words tell of both.
            assert!(!incident.fails_the_job() || kind.name() == incident.name());
        }
    }

    #[test]
    fn what_is_half_wrong_takes_half() {
        let ids = |ids: &[&str]| ids.iter().map(|id| (*id).to_owned()).collect();
        let wrong = |said: &[&str], truth: &[&str]| Loss::WrongCause {
            said: ids(said),
            truth: ids(truth),
        };
        let reasoning = Dimension::Reasoning;
        assert_eq!(wrong(&["a"], &["b"]).share(reasoning), 0.40);
        assert_eq!(wrong(&["a"], &["a", "b"]).share(reasoning), 0.20);
        let left = Loss::RivalsLeft { open: 1, rivals: 4 };
        assert_eq!(left.share(left.side()), 0.125);
        let slow = |minutes| Loss::Slow {
            minutes,
            par: 100.0,
        };
        assert_eq!(slow(150.0).share(Dimension::Cost), 0.25);
        assert_eq!(slow(900.0).share(Dimension::Cost), 0.5);
    }
}
