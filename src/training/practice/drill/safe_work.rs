//! Safe work: an order of steps before hands go in, what a deed would bring on a machine as it stands, and the one
//! thing that is wrong on a bench in a picture. The first two are done on a real bench; what its log says against them
//! is the answer.

use super::hazard::{self, HazardTask};
use super::{SuppliedBoard, SuppliedBoardId, below, draws, one_of, shuffle, supplied_board};
use crate::bench::script::{Condition, ScriptStep};
use crate::bench::{Action, Bench, Caution, Display, Grip, LogEntry, MeterMode, Refusal, Setup};
use crate::lesson::{LossKind, safety_losses, survey};
use detent_simulation::controller::Routine;
use detent_simulation::interface::{Component, Connector, Pin, Side, Terminal};
use detent_simulation::names;
use detent_simulation::plant::Param;
use detent_simulation::units::{Span, Time};
use rand_chacha::ChaCha8Rng;
use std::fmt;

/// Outcomes to choose from.
const CHOICES: usize = 5;
/// States of the machine that are tried for one deed, so that what it brings differs.
const STATES: usize = 8;
/// Questions of which one asks for an order, one for a hazard, and the others for what a deed brings.
const KINDS: usize = 4;
/// Time for a machine to wake up.
const AWAKE: Span = Span::from_s(3);
/// Longest time until water stands in the tub, s.
const RUN_UP_S: u64 = 120;
/// Longest time until the lid is locked, s.
const LOCKS_S: u64 = 60;
/// Time for a basket to come up to speed, s.
const SPIN_UP_S: u64 = 10;
/// A basket that coasts slower than this is about to stand: whether it hurts would be a matter of luck, rev/min.
const PLAIN_RPM: f64 = 60.0;
/// A burnt coil and a contact that sticks, Ω.
const OPEN_OHMS: f64 = 1.0e8;
const WELDED_OHMS: f64 = 0.04;
/// Failure mode of a bleeder that draws no charge down.
const BLEEDER_OPEN: &str = "board.bleeder-open";

names! {
    /// One thing that is done around dangerous work. Its text is `safe-step-{name}`.
    SafeStep {
        Unplug = "unplug", WaitAMinute = "wait-a-minute", OpenPanels = "open-panels",
        TestMeter = "test-meter", MeasureCharge = "measure-charge", Discharge = "discharge",
        ShutTaps = "shut-taps", BailOut = "bail-out", OpenLid = "open-lid", MeasureMains = "measure-mains",
        PullConnector = "pull-connector", CleanPump = "clean-pump", CleanScreen = "clean-screen",
        FitValve = "fit-valve", ReachIntoBasket = "reach-into-basket", MeasureOhms = "measure-ohms",
    }
}

/// Steps that a question may be about. Hands behind the panels and in the basket can meet more than the others: they
/// come up more often, so that "nothing" is right no more often than it must be.
const DEEDS: [SafeStep; 16] = [
    SafeStep::PullConnector,
    SafeStep::PullConnector,
    SafeStep::PullConnector,
    SafeStep::CleanPump,
    SafeStep::CleanPump,
    SafeStep::CleanPump,
    SafeStep::ReachIntoBasket,
    SafeStep::ReachIntoBasket,
    SafeStep::ReachIntoBasket,
    SafeStep::CleanScreen,
    SafeStep::OpenPanels,
    SafeStep::Discharge,
    SafeStep::MeasureOhms,
    SafeStep::BailOut,
    SafeStep::OpenLid,
    SafeStep::MeasureMains,
];

/// What a deed can bring besides nothing: every hazard of the bench. Its short text is `safe-outcome-{kind}`.
pub const OUTCOMES: [LossKind; 14] = [
    LossKind::Shock,
    LossKind::TouchedCharge,
    LossKind::OpenedLive,
    LossKind::OhmsOnLive,
    LossKind::Flood,
    LossKind::OpenedUnderPressure,
    LossKind::DischargedLive,
    LossKind::Scald,
    LossKind::LidSpinning,
    LossKind::HandInDrive,
    LossKind::LiveNotAllowed,
    LossKind::DischargedUnmeasured,
    LossKind::NotProvedDead,
    LossKind::MeterNotProved,
];

/// A bench as it stands when the question is asked. Two are equal when their machines are.
#[derive(Clone)]
pub struct BenchAtStart(Box<Bench>);

impl fmt::Debug for BenchAtStart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "BenchAtStart({:?})", self.0.machine().state_hash())
    }
}

impl PartialEq for BenchAtStart {
    fn eq(&self, other: &BenchAtStart) -> bool {
        self.0.machine().state_hash() == other.0.machine().state_hash()
    }
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum SafeWorkTask {
    /// Put steps in order.
    Order(OrderTask),
    /// Say what a deed would bring.
    Deed(DeedTask),
    /// Spot what is wrong in a picture.
    Hazard(HazardTask),
}

/// Steps to put in order; the last of the sound order is what they are done for.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// What is known of the machine.
    pub facts: Facts,
    /// The steps, shuffled.
    pub steps: Vec<SafeStep>,
    /// One order that is safe; others may be too.
    pub sound: Vec<SafeStep>,
    /// The bench on which an order is tried.
    start: BenchAtStart,
}

/// A machine as it stands, a deed, and what it could bring.
#[derive(Clone, Debug, PartialEq)]
pub struct DeedTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// What is known of the machine.
    pub facts: Facts,
    /// The deed.
    pub deed: SafeStep,
    /// What it could bring; none: nothing, it is safe.
    pub options: Vec<Option<LossKind>>,
    /// What the bench says that it brings, by its place among the options.
    should: usize,
}

/// What can be known of a machine before the deed.
#[derive(Clone, Debug, PartialEq)]
pub struct Facts {
    /// Time since the plug was pulled, s; none while it is in.
    pub unplugged_s: Option<f64>,
    /// The panels are off.
    pub panels_off: bool,
    /// The bleeder across the bulk capacitor is known to be open.
    pub bleeder_open: bool,
    /// Both taps are shut.
    pub taps_shut: bool,
    /// The lid is up.
    pub lid_open: bool,
    /// Where the basket was spun with a lid lock that holds nothing: whether it still turns.
    pub basket_turns: Option<bool>,
    /// Live tests are allowed on this job.
    pub live_tests_allowed: bool,
    /// Water in the tub: depth, mm, and temperature, °C; none where it is empty.
    pub water: Option<(f64, f64)>,
    /// What was done about the stored charge since the plug was pulled, in order.
    pub proof: Vec<ChargeStep>,
}

/// Something done about the stored charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChargeStep {
    /// The meter was tried on the proving unit, and was good or not.
    MeterChecked(bool),
    /// The bulk capacitor was measured, and the meter showed this.
    Measured(Display),
    /// It was discharged.
    Discharged,
}

/// Why an order is not safe.
#[derive(Clone, Debug, PartialEq)]
pub enum Stumble {
    /// It is not possible then.
    Refused(Refusal),
    /// It brings this.
    Brings(LossKind),
    /// A caution stands against it.
    Caution(Caution),
}

/// An answer, judged.
#[derive(Clone, Debug, PartialEq)]
pub enum Marked {
    /// Of an order: the place of the step that went wrong first, and how; none where it is safe.
    Order(Option<(usize, Stumble)>),
    /// Of a deed or a picture.
    Choice {
        /// What the deed brings, or what is wrong, by its place among the choices.
        should: usize,
        /// What was chosen.
        chosen: usize,
    },
}

impl Marked {
    /// The answer is right.
    pub fn right(&self) -> bool {
        match self {
            Marked::Order(stumble) => stumble.is_none(),
            Marked::Choice { should, chosen } => should == chosen,
        }
    }
}

impl SafeWorkTask {
    /// Places that can be chosen.
    pub fn choices(&self) -> usize {
        match self {
            SafeWorkTask::Order(task) => task.steps.len(),
            SafeWorkTask::Deed(task) => task.options.len(),
            SafeWorkTask::Hazard(task) => task.objects.len(),
        }
    }

    /// How many places make a whole answer.
    pub fn wanted(&self) -> usize {
        match self {
            SafeWorkTask::Order(task) => task.steps.len(),
            SafeWorkTask::Deed(_) | SafeWorkTask::Hazard(_) => 1,
        }
    }

    /// One right answer, as places among the choices.
    pub fn solve(&self) -> Vec<usize> {
        match self {
            SafeWorkTask::Order(task) => {
                let mut places = Vec::new();
                for step in &task.sound {
                    let place = (0..task.steps.len())
                        .find(|n| task.steps[*n] == *step && !places.contains(n));
                    places.extend(place);
                }
                places
            }
            SafeWorkTask::Deed(task) => vec![task.should],
            SafeWorkTask::Hazard(task) => vec![task.should],
        }
    }
}

/// Draws a question.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> SafeWorkTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    match below(KINDS, rng) {
        0 => SafeWorkTask::Order(order(supplied_board, seed, rng)),
        1 => SafeWorkTask::Hazard(hazard::picture(supplied_board, rng)),
        _ => SafeWorkTask::Deed(deed(supplied_board, seed, rng)),
    }
}

/// Judges places among the choices: for an order all of them, else one. An order is done on the bench.
pub fn mark(task: &SafeWorkTask, given: &[usize]) -> Marked {
    let choice = |should| Marked::Choice {
        should,
        chosen: given.first().copied().unwrap_or(task.choices()),
    };
    match task {
        SafeWorkTask::Order(task) => {
            let steps = given.iter().filter_map(|n| task.steps.get(*n).copied());
            Marked::Order(stumble(task, steps))
        }
        SafeWorkTask::Deed(task) => choice(task.should),
        SafeWorkTask::Hazard(task) => choice(task.should),
    }
}

/// Does the steps until one goes wrong.
fn stumble(task: &OrderTask, steps: impl Iterator<Item = SafeStep>) -> Option<(usize, Stumble)> {
    let mut bench = (*task.start.0).clone();
    for (n, step) in steps.enumerate() {
        let caution = match step.on(&bench) {
            ScriptStep::Do(action) => bench.caution(&action),
            _ => None,
        };
        // Behind an open bleeder nothing takes the charge away before the panels are off.
        let unavoidable = task.facts.bleeder_open && step == SafeStep::OpenPanels;
        let caution = caution.filter(|c| !(unavoidable && *c == Caution::StoredCharge));
        // What it brings says more than the caution against it.
        match (brought(&mut bench, step), caution) {
            (Err(refusal), _) => return Some((n, Stumble::Refused(refusal))),
            (Ok(Some(kind)), _) => return Some((n, Stumble::Brings(kind))),
            (Ok(None), Some(caution)) => return Some((n, Stumble::Caution(caution))),
            (Ok(None), None) => {}
        }
    }
    None
}

/// Does a step; what the log says against it, the worst first.
fn brought(bench: &mut Bench, step: SafeStep) -> Result<Option<LossKind>, Refusal> {
    let at = bench.now();
    match step.on(bench) {
        ScriptStep::Do(action) => bench.act(&action)?,
        // A wait is never refused.
        wait => {
            let _ = wait.run(bench);
        }
    }
    let lost = safety_losses(bench).into_iter();
    Ok(lost
        .filter(|(when, _)| *when >= at)
        .map(|(_, loss)| loss.kind())
        .next())
}

impl SafeStep {
    /// The step on this bench.
    fn on(self, bench: &Bench) -> ScriptStep {
        let charge = |mode| Action::Probe {
            mode,
            red: Pin::BulkPlus,
            black: Pin::BulkMinus,
            grip: Grip::Clips,
        };
        ScriptStep::Do(match self {
            SafeStep::WaitAMinute => return ScriptStep::Wait { s: 60 },
            SafeStep::Unplug => Action::Unplug,
            SafeStep::OpenPanels => Action::OpenCabinet,
            SafeStep::TestMeter => Action::TestMeter,
            SafeStep::MeasureCharge => charge(MeterMode::VoltsDc),
            SafeStep::MeasureOhms => charge(MeterMode::Ohms),
            SafeStep::Discharge => Action::Discharge,
            SafeStep::ShutTaps => Action::ShutTaps,
            SafeStep::BailOut => Action::BailOut,
            SafeStep::OpenLid => Action::OpenLid,
            SafeStep::MeasureMains => Action::Probe {
                mode: MeterMode::VoltsAc,
                red: Pin::Wire(Terminal::CordLine, Side::Board),
                black: Pin::Wire(Terminal::CordNeutral, Side::Board),
                grip: Grip::Clips,
            },
            SafeStep::PullConnector => Action::Pull(Connector::Load(Component::DrainPump)),
            SafeStep::CleanPump => Action::PutRight(Component::DrainPump),
            SafeStep::CleanScreen => Action::PutRight(Component::InletCold),
            SafeStep::FitValve => Action::Fit(valve(bench).unwrap_or_default()),
            SafeStep::ReachIntoBasket => Action::Inspect(Component::Laundry),
        })
    }

    /// The panels have to be off before it.
    const fn is_behind_panels(self) -> bool {
        match self {
            SafeStep::PullConnector
            | SafeStep::CleanPump
            | SafeStep::FitValve
            | SafeStep::Discharge
            | SafeStep::MeasureCharge
            | SafeStep::MeasureOhms
            | SafeStep::MeasureMains => true,
            SafeStep::Unplug
            | SafeStep::WaitAMinute
            | SafeStep::OpenPanels
            | SafeStep::TestMeter
            | SafeStep::ShutTaps
            | SafeStep::BailOut
            | SafeStep::CleanScreen
            | SafeStep::OpenLid
            | SafeStep::ReachIntoBasket => false,
        }
    }
}

/// The number of the cold valve at the counter.
fn valve(bench: &Bench) -> Option<String> {
    let fits = |part: &&crate::bench::Part| {
        part.component == Component::InletCold && bench.fits(part) && part.superseded_by.is_none()
    };
    bench.counter().iter().find(fits).map(|p| p.number.clone())
}

/// How a machine is brought into its state.
#[derive(Clone, Debug)]
struct Preparation {
    bleeder_open: bool,
    /// The routine that runs before, if one does.
    ran: Option<Routine>,
    panels_off: bool,
    /// Waits after the plug was pulled, s; none: it stays in.
    unplugged: Option<u64>,
    lid_open: bool,
    taps_shut: bool,
    live_tests_allowed: bool,
    proof: Vec<SafeStep>,
}

impl Preparation {
    /// The basket spins, and as it began the lid lock failed.
    fn spins(&self) -> bool {
        self.ran == Some(Routine::TestSpin)
    }
}

/// The machine, prepared; none where this machine cannot be brought there.
fn prepared(supplied_board: &SuppliedBoard<'_>, to: &Preparation, seed: u64) -> Option<Bench> {
    let library = &supplied_board.library;
    let open = library.modes.iter().find(|mode| mode.id == BLEEDER_OPEN);
    let faults = open.filter(|_| to.bleeder_open).cloned();
    let setup = library.setup(
        supplied_board.mains.rating(),
        faults.into_iter().collect(),
        seed,
    );
    let mut bench = Bench::new(Setup {
        live_tests_allowed: to.live_tests_allowed,
        ..setup
    });
    bench.wait(AWAKE);
    bench.begin();
    let act = |bench: &mut Bench, action: &Action| bench.act(action).ok();
    if let Some(routine) = to.ran {
        // Off and on again with the panels off: whoever watches the drive works so.
        if to.panels_off {
            act(&mut bench, &Action::Unplug)?;
            bench.wait(Span::from_s(60));
            act(&mut bench, &Action::OpenCabinet)?;
            act(&mut bench, &Action::Plug)?;
            bench.wait(AWAKE);
        }
        if !survey::enter_service(&mut bench) || !survey::start_routine(&mut bench, routine) {
            return None;
        }
        if to.spins() {
            spin_behind_a_failed_lock(&mut bench)?;
        } else {
            // A test of the service mode may end before the tub is that full: what is in it counts.
            let _ = ScriptStep::Until {
                what: Condition::Filled,
                limit_s: RUN_UP_S,
            }
            .run(&mut bench);
        }
    }
    if to.taps_shut {
        act(&mut bench, &Action::ShutTaps)?;
    }
    let opens_before = to.panels_off && to.ran.is_none() && to.unplugged.is_none();
    if opens_before {
        act(&mut bench, &Action::Unplug)?;
        bench.wait(Span::from_s(60));
        act(&mut bench, &Action::OpenCabinet)?;
        act(&mut bench, &Action::Plug)?;
        bench.wait(AWAKE);
    }
    if let Some(s) = to.unplugged {
        act(&mut bench, &Action::Unplug)?;
        bench.wait(Span::from_s(s));
        if to.panels_off && to.ran.is_none() {
            act(&mut bench, &Action::OpenCabinet)?;
        }
    }
    if to.lid_open && to.spins() {
        // Somebody else has lifted it: the question is about the hand.
        bench.machine_mut().plant_mut().set_lid_open(true);
    } else if to.lid_open {
        act(&mut bench, &Action::OpenLid)?;
    }
    let drive = bench.machine().plant().drive();
    if to.spins() && !drive.stands() && drive.pulley_rpm() < PLAIN_RPM {
        return None;
    }
    for step in &to.proof {
        if let ScriptStep::Do(action) = step.on(&bench) {
            act(&mut bench, &action)?;
        }
    }
    // What was done so far was safe: the question is about the deed alone.
    safety_losses(&bench).is_empty().then_some(bench)
}

/// Brings the basket up to speed behind a lid that nothing holds: once it was locked, the lock's coil burns out and
/// its contact sticks, so that the control believes in a bolt that is not there.
fn spin_behind_a_failed_lock(bench: &mut Bench) -> Option<()> {
    let mut left = Span::from_s(LOCKS_S).0;
    while !bench.machine().plant().bolted() {
        left = left.checked_sub(1)?;
        bench.step();
    }
    let plant = bench.machine_mut().plant_mut();
    plant.set_condition(Param::LockCoilOhms, OPEN_OHMS);
    plant.set_condition(Param::LockContactOpenOhms, WELDED_OHMS);
    let (what, limit_s) = (Condition::Spinning, RUN_UP_S);
    ScriptStep::Until { what, limit_s }.run(bench).ok()?;
    bench.wait(Span::from_s(SPIN_UP_S));
    Some(())
}

/// What can be seen of a bench.
fn facts(bench: &Bench, to: &Preparation) -> Facts {
    let plant = bench.machine().plant();
    let unplugged = bench.history().iter().rev().find_map(|(at, action)| {
        let pulled = *action == Action::Unplug;
        pulled.then_some(at)
    });
    let unplugged = unplugged.filter(|_| !plant.plugged());
    let since = |at: Time| unplugged.is_some_and(|pulled| at >= pulled);
    let proof = bench
        .log()
        .entries()
        .iter()
        .filter_map(|entry| match entry {
            LogEntry::MeterTest(test) if since(test.at) => {
                Some(ChargeStep::MeterChecked(test.is_good()))
            }
            LogEntry::Reading(reading) if since(reading.at) => {
                Some(ChargeStep::Measured(reading.shown))
            }
            LogEntry::Action {
                at,
                action: Action::Discharge,
            } if since(*at) => Some(ChargeStep::Discharged),
            _ => None,
        });
    let water = plant.water();
    Facts {
        unplugged_s: unplugged.map(|at| bench.now().since(at).seconds()),
        panels_off: bench.view().cabinet_open,
        bleeder_open: to.bleeder_open,
        taps_shut: plant.taps_shut(),
        lid_open: plant.lid_open(),
        basket_turns: to.spins().then(|| !plant.drive().stands()),
        live_tests_allowed: to.live_tests_allowed,
        water: (water.level_mm() > 1.0).then(|| (water.level_mm(), water.water_c)),
        proof: proof.collect(),
    }
}

/// An order to be found.
fn order(supplied_board: &SuppliedBoard<'_>, seed: u64, rng: &mut ChaCha8Rng) -> OrderTask {
    use SafeStep::{
        BailOut, CleanPump, Discharge, FitValve, MeasureCharge, OpenPanels, PullConnector,
        ShutTaps, TestMeter, Unplug, WaitAMinute,
    };
    let waits = [
        Unplug,
        WaitAMinute,
        OpenPanels,
        TestMeter,
        MeasureCharge,
        TestMeter,
    ];
    let discharges = [
        Unplug,
        OpenPanels,
        TestMeter,
        Discharge,
        MeasureCharge,
        TestMeter,
    ];
    let bleeder_open = below(2, rng) == 0;
    let dead = if bleeder_open { discharges } else { waits };
    let (before, goal) = [
        (&[][..], PullConnector),
        (&[BailOut][..], CleanPump),
        (&[ShutTaps][..], FitValve),
    ][below(3, rng)];
    let mut sound = dead[..1].to_vec();
    sound.extend(before);
    sound.extend(&dead[1..]);
    sound.push(goal);
    let preparation = Preparation {
        bleeder_open,
        ran: (goal == CleanPump).then_some(Routine::TestCold),
        panels_off: false,
        unplugged: None,
        lid_open: false,
        taps_shut: false,
        live_tests_allowed: true,
        proof: Vec::new(),
    };
    let plain = Preparation {
        ran: None,
        ..preparation.clone()
    };
    // A plain machine can always be had.
    let mut bench = prepared(supplied_board, &preparation, seed)
        .or_else(|| prepared(supplied_board, &plain, seed))
        .expect("a sound machine stands ready");
    if goal == FitValve
        && let Some(number) = valve(&bench)
    {
        // The part is in the van.
        let _ = bench.act(&Action::Order(number));
    }
    let mut steps = sound.clone();
    shuffle(&mut steps, rng);
    OrderTask {
        place: supplied_board.place(),
        facts: facts(&bench, &preparation),
        steps,
        sound,
        start: BenchAtStart(Box::new(bench)),
    }
}

/// A deed on a machine as it stands. What each deed brings is drawn first among all that the states tried make it
/// bring, so that no answer is right much more often than another.
fn deed(supplied_board: &SuppliedBoard<'_>, seed: u64, rng: &mut ChaCha8Rng) -> DeedTask {
    loop {
        let deed = one_of(&DEEDS, rng).expect("there are deeds");
        let mut seen: Vec<(Option<LossKind>, Facts)> = Vec::new();
        for n in 0..STATES as u64 {
            let preparation = state(deed, rng);
            let Some(mut bench) = prepared(supplied_board, &preparation, seed.wrapping_add(n))
            else {
                continue;
            };
            let facts = facts(&bench, &preparation);
            if let Ok(brings) = brought(&mut bench, deed) {
                seen.push((brings, facts));
            }
        }
        let mut kinds: Vec<Option<LossKind>> = seen.iter().map(|(brings, _)| *brings).collect();
        kinds.sort_unstable();
        kinds.dedup();
        // "Nothing" can answer every deed: it comes half as often as anything else.
        let mut drawn = kinds.clone();
        drawn.extend(kinds.iter().filter(|kind| kind.is_some()));
        // What always brings the same asks nothing.
        let Some(should) = one_of(&drawn, rng).filter(|_| kinds.len() > 1) else {
            continue;
        };
        let of_kind: Vec<&Facts> = (seen.iter())
            .filter(|(brings, _)| *brings == should)
            .map(|(_, facts)| facts)
            .collect();
        let Some(facts) = one_of(&of_kind, rng) else {
            continue;
        };
        // What the deed brings elsewhere stands beside it first.
        let mut options = vec![should];
        let mut others: Vec<Option<LossKind>> = OUTCOMES.iter().copied().map(Some).collect();
        shuffle(&mut others, rng);
        for other in [None].into_iter().chain(kinds).chain(others) {
            if options.len() < CHOICES && !options.contains(&other) {
                options.push(other);
            }
        }
        shuffle(&mut options, rng);
        return DeedTask {
            place: supplied_board.place(),
            facts: facts.clone(),
            deed,
            should: options
                .iter()
                .position(|o| *o == should)
                .unwrap_or_default(),
            options,
        };
    }
}

/// Draws a state in which a deed can be done.
fn state(deed: SafeStep, rng: &mut ChaCha8Rng) -> Preparation {
    use SafeStep::{Discharge, MeasureCharge, TestMeter};
    let proofs: [&[SafeStep]; 6] = [
        &[],
        &[MeasureCharge],
        &[TestMeter, MeasureCharge],
        &[TestMeter, MeasureCharge, TestMeter],
        &[TestMeter, Discharge, TestMeter],
        &[TestMeter, Discharge, MeasureCharge, TestMeter],
    ];
    let mut chance = |one_in: usize| below(one_in, rng) == 0;
    let behind = deed.is_behind_panels();
    let ran = match deed {
        SafeStep::CleanPump if chance(2) => Some(Routine::TestCold),
        SafeStep::OpenLid => Some(Routine::TestSpin),
        SafeStep::ReachIntoBasket if chance(2) => Some(Routine::TestSpin),
        SafeStep::ReachIntoBasket | SafeStep::BailOut if chance(2) => Some(Routine::TestHot),
        SafeStep::ReachIntoBasket | SafeStep::BailOut => Some(Routine::TestCold),
        _ => None,
    };
    let unplugged = if ran == Some(Routine::TestSpin) {
        // A basket coasts for seconds, not for minutes.
        Some([1, 60][below(2, rng)])
    } else {
        (!chance(3)).then(|| [5, 60, 300][below(3, rng)])
    };
    let can_prove = behind && deed != Discharge && unplugged.is_some();
    Preparation {
        bleeder_open: behind && below(3, rng) == 0,
        ran,
        panels_off: behind,
        unplugged,
        lid_open: matches!(deed, SafeStep::ReachIntoBasket | SafeStep::BailOut),
        taps_shut: below(2, rng) == 0,
        live_tests_allowed: below(2, rng) == 0,
        proof: match one_of(&proofs, rng) {
            Some(proof) if can_prove => proof.to_vec(),
            _ => Vec::new(),
        },
    }
}
