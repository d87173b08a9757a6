//! A written job, proved on the machines that it may give.

use super::board_proof::GestureShare;
use super::finding::{AuthoringFinding, PlacedFinding};
use crate::bench::Bench;
use crate::lesson::technician::{Persona, work_in_slices};
use crate::lesson::{
    CustomerAccount, CustomerObservation, Hidden, Scenario, SetUpError, judge, set_up_in_slices,
};
use crate::practice::drill::SuppliedBoard;
use crate::reason::evidence::{End, Outcome};
use crate::reason::{Review, review_in_slices};
use crate::slices::SliceEnd;
use crate::variant::{
    Demands, Difficulty, KnownFaults, LearnerGroup, PeopleAtWork, VariantError, hypotheses_of,
};
use detent_simulation::controller::{Monitor, Selector};
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;

/// Machines of a job that draws its fault.
const MACHINES: u64 = 3;
/// Of a hand of usual skill, so many tries should get in at the least. Our own choice: at this share an entry takes
/// about ten tries.
const LEAST_SHARE: f64 = 0.1;

/// By what a fault shows itself first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// Nothing is wrong: there is nothing to show.
    Nothing,
    /// Codes that the customer's wash stored.
    Codes,
    /// How the wash went: the customer noticed it.
    Wash,
    /// A test, a routine or a look by the technician.
    Tests,
    /// Nothing that is allowed.
    Never,
}

impl Shown {
    /// The fixed name used in text keys.
    pub const fn name(self) -> &'static str {
        match self {
            Shown::Nothing => "nothing",
            Shown::Codes => "codes",
            Shown::Wash => "wash",
            Shown::Tests => "tests",
            Shown::Never => "never",
        }
    }
}

/// A cause that is likely after the customer's wash.
#[derive(Clone, Debug, PartialEq)]
pub struct Rival {
    /// The failure mode; none for a machine with nothing wrong.
    pub mode: Option<String>,
    /// How likely it is then, 0 to 1.
    pub share: f64,
    /// Whether something that is allowed tells it from the hidden fault.
    pub told: bool,
    /// Whether one repair cures both.
    pub same_repair: bool,
}

/// One machine that the job may give, and how it goes on it.
#[derive(Clone, Debug, PartialEq)]
pub struct MachineProof {
    /// Seed of its draws.
    pub seed: u64,
    /// Hidden failure modes.
    pub modes: Vec<String>,
    /// By what it shows itself.
    pub shown: Shown,
    /// Codes that the customer's wash stored.
    pub codes: Vec<u8>,
    /// The likely causes after it, besides the hidden one; none listed for several faults at once.
    pub rivals: Vec<Rival>,
    /// The expert's bill, whole units of money; none where the expert got stuck.
    pub bill: Option<f64>,
    /// How difficult it is; none where the expert got stuck.
    pub difficulty: Option<Difficulty>,
    /// What simulated learners of each skill make of it.
    pub learners: Vec<LearnerGroup>,
    /// The expert's way and the planner's own on this machine; none where the expert got stuck.
    pub review: Option<Review>,
}

/// What the simulator says of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct ScenarioProof {
    /// The failure modes that may be drawn, each held against what is known of it; empty where chance decides nothing.
    pub drawn_from: Vec<String>,
    /// The machines that were tried, the scenario's own seed first.
    pub machines: Vec<MachineProof>,
    /// Shares of the tries at the entry gesture that get in, at the job's wear.
    pub gesture: Vec<GestureShare>,
    /// What is wrong.
    pub findings: Vec<PlacedFinding>,
}

/// Tries a job, in slices of a few milliseconds each. `board` must be its own.
///
/// # Errors
/// It cannot be set up: it was not read against this catalogue.
pub async fn prove_scenario_in_slices(
    scenario: &Scenario,
    board: &SuppliedBoard<'_>,
    known: &KnownFaults,
) -> Result<ScenarioProof, SetUpError> {
    let mut findings = Vec::new();
    let mut machines: Vec<MachineProof> = Vec::new();
    let most = match scenario.fault.is_drawn() {
        true => MACHINES,
        false => 1,
    };
    for seed in (0..most).map(|n| scenario.seed.wrapping_add(n)) {
        let machine = Trial {
            scenario: &Scenario {
                seed,
                ..scenario.clone()
            },
            board,
            known,
            findings: &mut findings,
        };
        machines.push(machine.tried().await?);
    }
    let drawn_from = match scenario.fault.is_drawn() {
        true => board.library.candidates(&scenario.fault)?,
        false => Vec::new(),
    };
    let all_show = prove_draws(scenario, (board, known), &drawn_from, &mut findings);
    all_show.await;
    if let (Some(expected), Some(first)) = (&scenario.expected_codes, machines.first()) {
        let sorted = |codes: &[u8]| {
            let mut codes = codes.to_vec();
            codes.sort_unstable();
            codes
        };
        let (expected, raised) = (sorted(expected), sorted(&first.codes));
        if expected != raised {
            let finding = AuthoringFinding::OtherCodes { expected, raised };
            findings.push(placed("expected_codes", finding));
        }
    }
    let panel = board.library.board.panel.selector;
    let wear = scenario.dial_wear;
    if wear > 0.0 && !matches!(panel, Selector::Dial { .. }) {
        findings.push(placed("dial_wear", AuthoringFinding::NoDialToWear));
    }
    let gesture = GestureShare::each(board, wear).await;
    if let Some(usual) = GestureShare::usual(&gesture)
        && usual.share < LEAST_SHARE
    {
        let finding = AuthoringFinding::GestureHardlyMet { share: usual.share };
        findings.push(placed("dial_wear", finding));
    }
    // The same is told once, not for each machine.
    let mut told: Vec<PlacedFinding> = Vec::new();
    for finding in findings {
        if !told.contains(&finding) {
            told.push(finding);
        }
    }
    Ok(ScenarioProof {
        drawn_from: drawn_from.iter().map(|mode| mode.id.clone()).collect(),
        machines,
        gesture,
        findings: told,
    })
}

/// What may be drawn shows itself too, whether or not one of the machines had it, and by the code that is asked for. Of
/// the whole catalogue nobody expects that.
async fn prove_draws(
    scenario: &Scenario,
    (board, known): (&SuppliedBoard<'_>, &KnownFaults),
    drawn_from: &[&FailureMode],
    findings: &mut Vec<PlacedFinding>,
) {
    let codes = match &scenario.fault {
        Hidden::DrawFrom(_) => None,
        Hidden::DrawWhere(filter) => Some(&filter.codes[..]),
        Hidden::Draw | Hidden::Named(_) | Hidden::Several(_) | Hidden::Nothing => return,
    };
    // Only a list has a place for each.
    let place = |n: usize| match codes {
        None => format!("fault[{n}]"),
        Some(_) => "fault".to_owned(),
    };
    let codes = codes.unwrap_or_default();
    let asked: Vec<Monitor> = (codes.iter())
        .filter_map(|code| board.library.board.monitor_of(*code))
        .collect();
    for (n, mode) in drawn_from.iter().enumerate() {
        let Some(h) = board.library.modes.iter().position(|m| m.id == mode.id) else {
            continue;
        };
        if !known.shows(h + 1, scenario.live_tests_allowed) {
            let mode = mode.id.clone();
            findings.push(placed(&place(n), AuthoringFinding::NeverShows { mode }));
        }
        let found = known.monitors(board.library.board, h + 1);
        if !asked.is_empty() && !asked.iter().any(|monitor| found.contains(monitor)) {
            let finding = AuthoringFinding::OtherCodeThanDrawn {
                mode: mode.id.clone(),
                codes: codes.to_vec(),
            };
            findings.push(placed("fault.codes", finding));
        }
        SliceEnd::default().await;
    }
}

fn placed(field: &str, finding: AuthoringFinding) -> PlacedFinding {
    PlacedFinding {
        field: field.to_owned(),
        finding,
    }
}

/// One machine of a job, about to be tried.
struct Trial<'a> {
    scenario: &'a Scenario,
    board: &'a SuppliedBoard<'a>,
    known: &'a KnownFaults,
    findings: &'a mut Vec<PlacedFinding>,
}

impl Trial<'_> {
    fn find(&mut self, field: &str, finding: AuthoringFinding) {
        self.findings.push(placed(field, finding));
    }

    async fn tried(mut self) -> Result<MachineProof, SetUpError> {
        let (scenario, library) = (self.scenario, &self.board.library);
        let live = scenario.live_tests_allowed;
        let hypotheses = hypotheses_of(scenario, library, scenario.seed)?;
        let mode = |h: usize| h.checked_sub(1).map(|n| &library.modes[n]);
        let modes: Vec<String> = (hypotheses.iter())
            .filter_map(|h| mode(*h))
            .map(|mode| mode.id.clone())
            .collect();
        let bench = set_up_in_slices(scenario, library, scenario.seed).await?;
        let outcome = Outcome::of_wash(&bench);
        let at_dial = |h: &usize| mode(*h).is_some_and(|m| m.component == Component::Dial);
        if outcome.end == End::NotAskedFor && !hypotheses.iter().any(at_dial) {
            self.find("dial_wear", AuthoringFinding::DialSlipped);
        }
        let shown = self.shown(&bench, &outcome, &hypotheses, live);
        if shown == Shown::Never {
            for mode in &modes {
                self.find("fault", AuthoringFinding::NeverShows { mode: mode.clone() });
            }
        }
        let mut rivals = Vec::new();
        let mut planned_cost = 0.0;
        match self.known.belief(library, &outcome) {
            Ok(belief) => {
                if let [h] = hypotheses[..] {
                    rivals = self.rivals(h, &belief, live);
                }
                SliceEnd::default().await;
                match self.known.planned_cost(&belief, live) {
                    Ok(cost) => planned_cost = cost,
                    Err(error) => self.no_plan(&error),
                }
            }
            Err(error) => self.no_plan(&error),
        }
        SliceEnd::default().await;
        let mut proof = MachineProof {
            seed: scenario.seed,
            modes,
            shown,
            codes: outcome.codes,
            rivals,
            bill: None,
            difficulty: None,
            learners: Vec::new(),
            review: None,
        };
        match work_in_slices(Persona::Expert, scenario, bench.clone()).await {
            Err(error) => self.find("fault", AuthoringFinding::ExpertStuck(Box::new(error))),
            Ok(done) => {
                let score = judge(scenario, &done);
                if !score.passed() {
                    let by = score.failed_by().map(|lost| Box::new(lost.loss.clone()));
                    let share = score.total() / score.of();
                    self.find("fault", AuthoringFinding::ExpertFails { by, share });
                }
                let (minutes, bill) = (done.minutes(), done.bill());
                let (par, budget) = (scenario.par_minutes, scenario.budget);
                if minutes > par {
                    self.find("par_minutes", AuthoringFinding::TooSlow { minutes, par });
                }
                if bill > budget {
                    self.find("budget", AuthoringFinding::TooDear { bill, budget });
                }
                let people = PeopleAtWork::at(scenario, &bench).await;
                proof.bill = Some(bill);
                proof.difficulty = Some(Difficulty::of(planned_cost, (&done, &score), &people));
                proof.learners = Demands::of(&done, &score, people.guesser()).groups();
                let job = (scenario, scenario.seed);
                let review = review_in_slices(job, *library, self.known.table(), &done, &score);
                // A way that cannot be gone again is no fault of the author's.
                proof.review = review.await.ok();
            }
        }
        Ok(proof)
    }

    fn no_plan(&mut self, error: &VariantError) {
        let finding = AuthoringFinding::NoPlan(error.to_string());
        self.find("fault", finding);
    }

    /// By what the machine shows itself first.
    fn shown(&self, bench: &Bench, outcome: &Outcome, hypotheses: &[usize], live: bool) -> Shown {
        if hypotheses == [0] {
            return Shown::Nothing;
        }
        if !outcome.codes.is_empty() {
            return Shown::Codes;
        }
        let well = |noticed: &CustomerObservation| *noticed == CustomerObservation::RanToEnd;
        let account = CustomerAccount::of(bench);
        if outcome.end != End::NotAskedFor && !account.noticed.iter().all(well) {
            return Shown::Wash;
        }
        if hypotheses.iter().any(|h| self.known.shows(*h, live)) {
            Shown::Tests
        } else {
            Shown::Never
        }
    }

    /// The likely causes besides `h`, the likeliest first; finds those that nothing tells from it.
    fn rivals(&mut self, h: usize, belief: &[f64], live: bool) -> Vec<Rival> {
        let modes = self.board.library.modes;
        let id = |h: usize| h.checked_sub(1).map(|n| modes[n].id.clone());
        let steady = self.known.is_steady(modes, h);
        let mut rivals: Vec<Rival> = (self.known.rivals(h, belief))
            .map(|(r, share)| Rival {
                mode: id(r),
                share,
                told: self.known.tells(h, r, live),
                same_repair: self.known.same_repair(h, r),
            })
            .collect();
        rivals.sort_by(|a, b| b.share.total_cmp(&a.share));
        // That nothing is wrong is proved by a machine that washes, and what comes and goes shows in no table what it
        // shows while it is there: for those only the expert counts.
        if let (true, Some(mode)) = (steady, id(h)) {
            for rival in rivals.iter().filter(|rival| !rival.told) {
                let finding = AuthoringFinding::RivalAlike {
                    mode: mode.clone(),
                    rival: rival.mode.clone(),
                    share: rival.share,
                    same_repair: rival.same_repair,
                };
                self.findings.push(placed("fault", finding));
            }
        }
        rivals
    }
}
