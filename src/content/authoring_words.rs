//! What the simulator says of a job, in words.

use super::text::{Texts, Value};
use detent_training::authoring::{GestureShare, MachineProof, Rival};
use detent_training::lesson::Scenario;

impl Texts {
    /// A machine of a job: the seed of its draws, and what is wrong with it.
    pub fn proved_machine(&self, machine: &MachineProof) -> String {
        let modes: Vec<String> = machine.modes.iter().map(|mode| self.mode(mode)).collect();
        let modes = match modes.is_empty() {
            true => self.cause(None),
            false => modes.join(" + "),
        };
        let args = [
            ("seed", Value::from(machine.seed.to_string())),
            ("modes", modes.into()),
        ];
        self.with("author-machine", &args)
    }

    /// By what a machine shows itself, with the codes of the customer's wash.
    pub fn machine_shows(&self, machine: &MachineProof) -> String {
        let shown = self.get(&format!("author-shown-{}", machine.shown.name()));
        let codes = self.codes(&machine.codes);
        let args = [("shown", shown.into()), ("codes", codes.into())];
        self.with("author-shows", &args)
    }

    /// A cause that is likely after the customer's wash, and whether it can be told apart.
    pub fn rival(&self, rival: &Rival) -> String {
        let key = match (rival.told, rival.same_repair) {
            (true, false) => "author-rival-told",
            (true, true) => "author-rival-told-same-repair",
            (false, false) => "author-rival-untold",
            (false, true) => "author-rival-untold-same-repair",
        };
        let args = [
            ("rival", Value::from(self.cause(rival.mode.as_deref()))),
            ("share", Value::from(self.percent(rival.share, 0))),
        ];
        self.with(key, &args)
    }

    /// Time and money that the expert needs on a machine of this job.
    pub fn expert_needs(&self, machine: &MachineProof, scenario: &Scenario) -> String {
        let number =
            |of: f64, decimals: usize| Value::from(self.digits(format!("{of:.decimals$}")));
        match (&machine.difficulty, machine.bill) {
            (Some(difficulty), Some(bill)) => {
                let args = [
                    ("minutes", number(difficulty.expert_minutes, 1)),
                    ("par", number(scenario.par_minutes, 0)),
                    ("bill", number(bill, 2)),
                    ("budget", number(scenario.budget, 0)),
                    ("share", self.percent(difficulty.expert_share, 0).into()),
                ];
                self.with("author-expert", &args)
            }
            _ => self.get("author-expert-none"),
        }
    }

    /// What simulated learners make of a machine; none where the expert got stuck.
    pub fn simulated_learners(&self, machine: &MachineProof) -> Option<String> {
        let difficulty = machine.difficulty.as_ref()?;
        let groups: Vec<String> = (machine.learners.iter())
            .map(|group| {
                let level = self.get(&format!("author-learners-{}", group.level));
                let args = [
                    ("level", Value::from(level)),
                    ("passing", self.percent(group.passing, 0).into()),
                    ("mean", self.percent(group.mean_share, 0).into()),
                    ("spread", self.percent(group.spread, 0).into()),
                ];
                self.with("author-learners", &args)
            })
            .collect();
        let passing = self.percent(difficulty.chance_of_passing, 0);
        let args = [
            ("passing", Value::from(passing)),
            ("groups", groups.join("; ").into()),
        ];
        Some(self.with("author-difficulty", &args))
    }

    /// How often simulated hands meet the entry gesture.
    pub fn gesture_shares(&self, shares: &[GestureShare]) -> String {
        let hands: Vec<String> = (shares.iter())
            .map(|hand| {
                let args = [
                    ("spread", Value::from(self.percent(hand.spread, 0))),
                    ("share", self.percent(hand.share, 0).into()),
                    ("ms", Value::from(format!("{:.0}", hand.best_ms))),
                ];
                self.with("author-hand", &args)
            })
            .collect();
        self.with(
            "author-gesture",
            &[("hands", Value::from(hands.join("; ")))],
        )
    }
}
