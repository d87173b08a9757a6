//! What a stuck technician could be told: where to look, what to ask there, and what to do next and why. It is made
//! from what this bench has shown so far and names nothing that this does not support.

use super::account::GoodPractice;
use super::evidence::{End, Outcome, Table};
use super::hand::{ControlSuspicion, HandRecord};
use super::path::{PathError, Start, Walk, walk};
use super::plan::{PlanStep, Problem};
use super::repair_costs::{Probe, Remedy, RepairCosts, SERVICE};
use crate::bench::{
    Action, Bench, Caution, DeadProof, Display, Finding, Found, Grip, MeterTest, MilestoneKind,
    PartInHand, Reading, Refusal, RunProof,
};
use crate::lesson::{Library, Scenario};
use crate::slices::without_breaks;
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::{Component, Pin};
use detent_simulation::names;
use detent_simulation::units::Time;

/// Causes less likely than this are not named.
pub const LEAST_NAMED: f64 = 0.05;
/// A cause that a report can name is at least this likely.
const PROVED: f64 = 0.9;
/// A test tells two causes apart where what it shows under one differs by this share from what it shows under the
/// other.
const TOLD_APART: f64 = 0.5;

names! {
    /// A part of the machine, as wide as "where to look". Its text is `area-{name}`.
    Area {
        Power = "power", Console = "console", Lid = "lid", Fill = "fill", Drain = "drain",
        Drive = "drive", Level = "level", Temperature = "temperature", Basket = "basket",
        Wiring = "wiring",
    }
}

impl Area {
    /// Where a component belongs.
    pub const fn of(component: Component) -> Area {
        match component {
            Component::Supply | Component::Cord | Component::LineFuse | Component::Filter => {
                Area::Power
            }
            Component::Board | Component::Dial => Area::Console,
            Component::LidLock => Area::Lid,
            Component::Taps
            | Component::InletHoses
            | Component::InletCold
            | Component::InletHot => Area::Fill,
            Component::DrainPump | Component::DrainHose => Area::Drain,
            Component::Motor
            | Component::RunCapacitor
            | Component::ClutchActuator
            | Component::Pickup
            | Component::Belt => Area::Drive,
            Component::PressureSensor | Component::PressureHose => Area::Level,
            Component::Thermistor => Area::Temperature,
            Component::Tub | Component::Laundry | Component::Floor => Area::Basket,
            Component::Harness => Area::Wiring,
        }
    }
}

/// What a hint is about.
#[derive(Clone, Debug, PartialEq)]
pub enum HintTopic {
    /// The control holds a fault and lets nobody in.
    LeaveFaultHold,
    /// Nothing is known from the control yet: service mode.
    EnterServiceMode,
    /// Stored codes are not noted, or not as the lamps show them.
    ReadCodes,
    /// The wash that the customer meant was never asked for.
    StartWash,
    /// What has to be so before the next step is safe.
    MakeSafe(GoodPractice),
    /// The panels are in the way of the next step.
    OpenCabinet,
    /// The planner's next step.
    Step(PlanStep),
    /// The customer has not agreed to this part yet.
    QuotePart(String),
    /// A part that the planner would fit lies there.
    FitPart(String),
    /// The outlet has tripped, and what leaked is mended.
    ResetOutlet,
    /// The line fuse has blown, and what blew it is mended: this one is new.
    RenewFuse(String),
    /// The taps are still shut off from the work.
    OpenTaps,
    /// The control is to learn the machine, and laundry lies in its basket.
    EmptyBasket,
    /// The control has not learned the repaired machine.
    Recalibrate,
    /// Nothing has shown yet that the machine runs.
    ProveByRun,
    /// What holds water was opened, and nobody has looked since whether it leaks.
    CheckForLeaks,
    /// The machine runs, and the customer has not seen it run.
    ShowCustomer,
    /// Everything is done but the report.
    WriteReport,
}

/// A hint, all rungs of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Hint {
    /// What it is about.
    pub topic: HintTopic,
    /// Causes that the next step is about, hypothesis and belief, the likeliest first: two that a test tells apart,
    /// those that a repair ends. None where no step of the planner's is at hand.
    pub causes: Vec<(usize, f64)>,
    /// Where that is; none where it is no part of the machine.
    pub area: Option<Area>,
    /// Names of the failure modes: hypothesis n + 1 is mode n, hypothesis 0 is "nothing is wrong".
    pub modes: Vec<String>,
    /// What steps stand for.
    pub repair_costs: RepairCosts,
}

/// What could be told to somebody whose job stands as `bench` does; none once the report is in.
///
/// # Errors
/// What was done cannot be done again with this scenario, library and seed.
pub fn hint(
    job: (&Scenario, u64),
    library: Library<'_>,
    table: &Table,
    bench: &Bench,
) -> Result<Option<Hint>, PathError> {
    without_breaks(hint_in_slices(job, library, table, bench))
}

/// The same in slices of a few milliseconds each.
///
/// # Errors
/// As [`hint`].
pub async fn hint_in_slices(
    (scenario, seed): (&Scenario, u64),
    library: Library<'_>,
    table: &Table,
    bench: &Bench,
) -> Result<Option<Hint>, PathError> {
    if bench.report().is_some() {
        return Ok(None);
    }
    let repair_costs = RepairCosts::of(&library, table, scenario.live_tests_allowed);
    let start = Start {
        scenario,
        library,
        table,
        repair_costs: &repair_costs,
        seed,
    };
    let (outcome, mut walk) = walk(start, bench).await?;
    let suspect = is_control_suspect(scenario, bench);
    if suspect {
        walk.find_service_mode_shut()?;
    }
    let (topic, step) = match before_any_step(&walk, &outcome, suspect) {
        Some(topic) => {
            let topic = match &topic {
                HintTopic::RenewFuse(fuse) => with_part(&walk.bench, fuse, topic.clone()),
                _ => topic,
            };
            (topic, None)
        }
        None => {
            let step = walk.sound()?;
            (with_step(&walk.bench, &repair_costs, step), Some(step))
        }
    };
    let shares = walk.belief.shares();
    let causes = match (&topic, step) {
        (_, Some(step)) => causes_of(&repair_costs.problem, step, &shares),
        (HintTopic::WriteReport, None) => proved(&walk, &shares).into_iter().collect(),
        (_, None) => Vec::new(),
    };
    let component = causes
        .first()
        .and_then(|(hypothesis, _)| hypothesis.checked_sub(1))
        .map(|mode| library.modes[mode].component);
    Ok(Some(Hint {
        topic,
        area: component.map(Area::of),
        causes,
        modes: library.modes.iter().map(|m| m.id.clone()).collect(),
        repair_costs,
    }))
}

/// Failed tries speak against the control by now. A hint is the same for everybody: it goes by a newcomer's hand.
fn is_control_suspect(scenario: &Scenario, bench: &Bench) -> bool {
    ControlSuspicion::of(
        bench.tries(),
        scenario.dial_wear,
        bench.modes(),
        HandRecord::default(),
    )
    .is_ok_and(|suspicion| suspicion.is_bad())
}

/// What comes before, or after, all that the planner knows of.
fn before_any_step(
    walk: &Walk<'_>,
    outcome: &Outcome,
    control_is_suspect: bool,
) -> Option<HintTopic> {
    let bench = &walk.bench;
    let ran = |kind: MilestoneKind| bench.passed(kind, bench.began());
    match outcome.end {
        End::Dark => {}
        End::NotAskedFor if !ran(MilestoneKind::ProgramStarted) => {
            return Some(HintTopic::StartWash);
        }
        End::NotAskedFor | End::Finished | End::Stopped | End::Open => {
            if walk.course.done & SERVICE == 0 && !control_is_suspect {
                let status = bench.machine().control().control_status();
                return Some(match status.mode {
                    ControlMode::Hold => HintTopic::LeaveFaultHold,
                    ControlMode::Off
                    | ControlMode::Starved
                    | ControlMode::Idle
                    | ControlMode::Program
                    | ControlMode::Service => HintTopic::EnterServiceMode,
                });
            }
            let standing = bench.log().standing_codes();
            let all_stand = outcome.codes.iter().all(|code| standing.contains(code));
            if walk.course.done & SERVICE != 0 && !all_stand {
                return Some(HintTopic::ReadCodes);
            }
        }
    }
    let (repaired, _) = bench.repairs().last()?;
    proof_missing_since(bench, repaired)
}

/// What is left to prove after a repair, if nothing has gone against it since.
fn proof_missing_since(bench: &Bench, repaired: Time) -> Option<HintTopic> {
    let mut since = bench.milestones().iter().filter(|m| m.at >= repaired);
    if since.any(|m| m.kind.stopped_by().is_some()) {
        return None;
    }
    Some(if bench.view().outlet_tripped {
        HintTopic::ResetOutlet
    } else if let Some(fuse) = bench.new_part(Component::LineFuse)
        && fuse_is_known_to_be_blown(bench)
    {
        HintTopic::RenewFuse(fuse.number.clone())
    } else if bench.view().taps_shut {
        HintTopic::OpenTaps
    } else if bench.calibrated_empty(repaired) != Some(true) {
        recalibrate(bench, HintTopic::Recalibrate)
    } else if bench.run_proof() != RunProof::Complete {
        HintTopic::ProveByRun
    } else if bench.leak_check_due().is_some() {
        HintTopic::CheckForLeaks
    } else if bench.demonstration_due() {
        HintTopic::ShowCustomer
    } else {
        HintTopic::WriteReport
    })
}

/// The recalibration, or the laundry that is to come out before it.
fn recalibrate(bench: &Bench, topic: HintTopic) -> HintTopic {
    if bench.view().basket_empty {
        topic
    } else {
        HintTopic::EmptyBasket
    }
}

/// The line fuse has blown, and the bench has shown it: the wire was seen, the meter found no way through, or the
/// console stays dark at an outlet that holds.
fn fuse_is_known_to_be_blown(bench: &Bench) -> bool {
    let plant = bench.machine().plant();
    let seen = |found: &Found| found.findings.contains(&Finding::FuseWireGone);
    let at_fuse = |pin: Pin| matches!(pin, Pin::FuseIn | Pin::FuseOut);
    let measured = |r: &Reading| {
        at_fuse(r.red) && at_fuse(r.black) && r.meter_sound && r.shown == Display::OverRange
    };
    let mode = bench.machine().control().control_status().mode;
    let dark = plant.energized() && mode.is_without_supply();
    plant.supply().fuse_blown
        && (dark || bench.found().iter().any(seen) || bench.notebook().iter().any(measured))
}

/// The planner's step, or what stands between it and the hands.
fn with_step(bench: &Bench, repair_costs: &RepairCosts, step: PlanStep) -> HintTopic {
    let topic = HintTopic::Step(step);
    let action = match step {
        PlanStep::LastResort => return topic,
        PlanStep::Test(test) => match &repair_costs.probes[test] {
            Probe::Recalibrate => return recalibrate(bench, topic),
            Probe::Inspect(component) => Action::Inspect(*component),
            Probe::BucketTest(pipe) => Action::BucketTest(*pipe),
            Probe::Read(point) => {
                if !point.state.is_live() && bench.view().machine.plugged {
                    return HintTopic::MakeSafe(GoodPractice::Unplug);
                }
                Action::Probe {
                    mode: point.mode,
                    red: point.red,
                    black: point.black,
                    grip: Grip::Clips,
                }
            }
        },
        PlanStep::Repair(repair) => match &repair_costs.remedies[repair] {
            // Without a repair that shows that nothing was wrong.
            Remedy::Recalibrate => {
                return proof_missing_since(bench, bench.began()).unwrap_or(topic);
            }
            Remedy::PutRight(component) => Action::PutRight(*component),
            Remedy::Part(number) => return with_part(bench, number, topic),
        },
    };
    before_action(bench, action, topic)
}

/// A part that goes in next, or what stands between it and the hands; `topic` as long as it was not bought.
fn with_part(bench: &Bench, number: &str, topic: HintTopic) -> HintTopic {
    let agreed = (bench.log().approved_quote())
        .is_some_and(|given| given.quote.parts.iter().any(|part| part == number));
    if !agreed {
        return HintTopic::QuotePart(number.to_owned());
    }
    let in_hand = |part: &PartInHand| part.number == number && !part.fitted;
    if !bench.view().parts.iter().any(in_hand) {
        return topic;
    }
    before_action(bench, Action::Fit(number.to_owned()), topic)
}

/// An action's topic, or what has to be done before the action.
fn before_action(bench: &Bench, action: Action, topic: HintTopic) -> HintTopic {
    match bench.refuse(&action) {
        Err(Refusal::CabinetClosed) if !bench.view().machine.plugged => {
            return HintTopic::OpenCabinet;
        }
        Err(Refusal::CabinetClosed | Refusal::PlugInOutlet) => {
            return HintTopic::MakeSafe(GoodPractice::Unplug);
        }
        Ok(()) | Err(_) => {}
    }
    if let Some(practice) = bench.caution(&action).and_then(|c| practice(bench, c)) {
        return HintTopic::MakeSafe(practice);
    }
    match action {
        Action::Fit(number) => HintTopic::FitPart(number),
        _ => topic,
    }
}

/// What answers a caution; none where it goes with the step.
fn practice(bench: &Bench, caution: Caution) -> Option<GoodPractice> {
    match caution {
        Caution::OpenLive
        | Caution::TouchLive
        | Caution::OhmsLive
        | Caution::DischargeLive
        | Caution::PlugOpen => Some(GoodPractice::Unplug),
        Caution::StoredCharge => Some(GoodPractice::Discharge),
        Caution::NotProvedDead => Some(match bench.dead_proof_now() {
            DeadProof::Missing if bench.meter_tests().iter().any(MeterTest::is_good) => {
                GoodPractice::Discharge
            }
            DeadProof::Missing => GoodPractice::ProveMeter,
            DeadProof::DischargedUnmeasured => GoodPractice::MeasureDead,
            DeadProof::MeterNotChecked | DeadProof::Complete => GoodPractice::ProveMeter,
        }),
        Caution::Moving => Some(GoodPractice::WaitSpin),
        Caution::HotWater => Some(GoodPractice::ShutTaps),
        Caution::Flood => Some(GoodPractice::BailOut),
        Caution::Scald => Some(GoodPractice::LetCool),
        Caution::Heavy | Caution::LiveTest | Caution::InsulationOnControl => None,
        Caution::InsulationInHand => Some(GoodPractice::UseClips),
    }
}

/// Hypotheses that are likely enough to be named, the likeliest first.
fn likeliest(shares: &[f64]) -> impl Iterator<Item = (usize, f64)> + Clone {
    let mut ranked: Vec<(usize, f64)> = shares.iter().copied().enumerate().collect();
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    ranked.into_iter().take_while(|(_, s)| *s >= LEAST_NAMED)
}

/// The cause that a report can name: hardly in doubt and, after a repair, one that it has ended.
fn proved(walk: &Walk<'_>, shares: &[f64]) -> Option<(usize, f64)> {
    let ended = |hypothesis: usize| walk.repaired.as_ref().is_none_or(|ended| ended[hypothesis]);
    likeliest(shares).find(|(hypothesis, share)| *share >= PROVED && ended(*hypothesis))
}

/// The causes that a step is about.
fn causes_of(problem: &Problem, step: PlanStep, shares: &[f64]) -> Vec<(usize, f64)> {
    let ranked = likeliest(shares);
    match step {
        PlanStep::LastResort => ranked.take(2).collect(),
        PlanStep::Repair(repair) => {
            let cures = &problem.repairs[repair].cures;
            ranked.filter(|(h, _)| cures.contains(h)).take(2).collect()
        }
        PlanStep::Test(test) => {
            let chances = &problem.tests[test].chances;
            let differ = |a: usize, b: usize| {
                let apart = chances.iter().map(|chance| (chance[a] - chance[b]).abs());
                apart.sum::<f64>() / 2.0 >= TOLD_APART
            };
            let pairs = ranked.clone().enumerate().flat_map(|(n, one)| {
                let others = ranked.clone().skip(n + 1);
                others.map(move |other| [one, other])
            });
            let mut pairs = pairs.filter(|[one, other]| differ(one.0, other.0));
            match pairs.next() {
                Some(pair) => pair.to_vec(),
                None => ranked.take(1).collect(),
            }
        }
    }
}
