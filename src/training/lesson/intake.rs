//! What the customer answers to questions, on the telephone or at the door: what was noticed in the last wash of this
//! very machine. Since when, and what was tried, are drawn; all of it is invented.

use super::complaint::Since;
use super::customer::{CustomerAccount, CustomerObservation};
use crate::bench::{Action, Appliance, Bench, BenchLog, MilestoneKind, Question};
use crate::draws::one_of;
use detent_simulation::names;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

names! {
    /// What the customer has tried. Its text is `tried-{name}`. Nothing that would have changed the machine.
    Tried {
        Nothing = "nothing", Waited = "waited", PressedAgain = "pressed-again",
        AskedNeighbor = "asked-neighbor",
    }
}

names! {
    /// What the customer says of the machine that is shown at the end. Its text is `shown-{name}`.
    Shown { NotYet = "not-yet", Stopped = "stopped", Washed = "washed" }
}

impl Shown {
    /// What the machine has shown since the last repair, or since the technician came, until the customer was asked last:
    /// how the last run of it ended.
    fn of(log: &BenchLog) -> Shown {
        let asked = log.actions().iter().rev();
        let mut asked = asked.filter(|(_, a)| **a == Action::Ask(Question::Demonstration));
        let until = asked.next().map(|(at, _)| at);
        let by_then = |at| until.is_none_or(|until| at <= until);
        let repaired = log
            .repairs()
            .iter()
            .map(|(at, _)| at)
            .rfind(|at| by_then(*at));
        let came = log.actions().first().map(|(at, _)| at);
        let Some(since) = repaired.or(came) else {
            return Shown::NotYet;
        };
        let milestones = log.milestones().iter().rev();
        let mut shown = milestones.filter(|m| m.at >= since && by_then(m.at));
        let ran = shown.find_map(|m| match m.kind {
            MilestoneKind::ProgramFinished => Some(Shown::Washed),
            MilestoneKind::Held(_) => Some(Shown::Stopped),
            MilestoneKind::PowerReset
            | MilestoneKind::ServiceEntered
            | MilestoneKind::ProgramStarted
            | MilestoneKind::ProgramCancelled
            | MilestoneKind::CalibrationStarted
            | MilestoneKind::CalibrationPassed
            | MilestoneKind::CalibrationFailed(_)
            | MilestoneKind::CodeShown(_)
            | MilestoneKind::CodesCleared => None,
        });
        ran.unwrap_or(Shown::NotYet)
    }
}

/// An answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// What the plate says.
    Appliance(Appliance),
    /// When it began.
    Since(Since),
    /// What was noticed; nothing where there was nothing to notice.
    Noticed {
        /// In the order of [`CustomerObservation::ALL`].
        noticed: Vec<CustomerObservation>,
        /// Time from Start to the end of the wash, min.
        after_min: u32,
    },
    /// What was tried.
    Tried(Tried),
    /// What the machine has shown.
    Shown(Shown),
}

/// All that a customer can be asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Intake {
    appliance: Appliance,
    since: Since,
    tried: Tried,
    account: CustomerAccount,
}

impl Intake {
    /// On a bench as it was set up, before anything is done there: what the customer noticed can be seen on it.
    pub fn of(bench: &Bench) -> Intake {
        let mut rng = ChaCha8Rng::seed_from_u64(bench.seed() ^ 0x696e_7461_6b65);
        Intake {
            appliance: bench.appliance(),
            since: one_of(Since::ALL, &mut rng).unwrap_or(Since::Yesterday),
            tried: one_of(Tried::ALL, &mut rng).unwrap_or(Tried::Nothing),
            account: CustomerAccount::of(bench),
        }
    }

    /// The answer to a question, by what has happened on the bench.
    pub fn answer(&self, question: Question, log: &BenchLog) -> Answer {
        let noticed = |wanted: &dyn Fn(CustomerObservation) -> bool| Answer::Noticed {
            noticed: (self.account.noticed.iter().copied())
                .filter(|noticed| wanted(*noticed))
                .collect(),
            after_min: self.account.after_min,
        };
        match question {
            Question::Appliance => Answer::Appliance(self.appliance.clone()),
            Question::Since => Answer::Since(self.since),
            Question::Happens => noticed(&|n| !n.is_of_panel() && !is_noise(n)),
            Question::Noises => noticed(&is_noise),
            Question::Panel => noticed(&CustomerObservation::is_of_panel),
            Question::Tried => Answer::Tried(self.tried),
            Question::Demonstration => Answer::Shown(Shown::of(log)),
        }
    }
}

/// What is heard rather than seen.
fn is_noise(noticed: CustomerObservation) -> bool {
    matches!(
        noticed,
        CustomerObservation::DrainsWhileFilling
            | CustomerObservation::Thumped
            | CustomerObservation::Hummed
            | CustomerObservation::Buzzed
            | CustomerObservation::RanFree
            | CustomerObservation::Clicked
    )
}
