//! Proof: which reading proves a cause against its rivals, and whether what was done after a repair proves it. The
//! first follows from what every fault shows when the machine is run with it, the second is done on a real bench and
//! judged by the rules that judge a job.

use super::{SuppliedBoard, SuppliedBoardId, below, draws, one_of, shuffle, supplied_board};
use crate::bench::script::ScriptStep;
use crate::bench::{
    Action, Bench, Display, Finding, MilestoneKind, SupplyStrength, cure, holds_water, meter,
};
use crate::lesson::{Loss, LossKind, left_unproved, survey};
use crate::reason::Probe;
use crate::reason::evidence::{End, Outcome, Seen, Table};
use detent_simulation::controller::Monitor;
use detent_simulation::interface::{Component, Pin, WaterPipe};
use detent_simulation::plant::{FailureMode, Presence};
use detent_simulation::units::{Span, Time};
use rand_chacha::ChaCha8Rng;

/// Readings to choose from.
const CHOICES: usize = 4;
/// Most of the other readings that rule out some rivals, but not all.
const PARTIAL: usize = 2;
/// Most rivals.
const RIVALS: usize = 2;
/// Situations drawn before one is given up.
const DRAWS: usize = 40;
/// Time for a machine to wake up.
const AWAKE: Span = Span::from_s(3);

/// What can be said of a repair's proof; none: it is proved. Its text is `proof-gap-{kind}`, `proof-gap-none`.
pub const GAPS: [Option<LossKind>; 5] = [
    None,
    Some(LossKind::NotCured),
    Some(LossKind::NotRecalibrated),
    Some(LossKind::NoProvingRun),
    Some(LossKind::NoLeakCheck),
];

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum ProofTask {
    /// Which reading proves the cause.
    Reading(ReadingTask),
    /// Is the repair proved.
    Repair(RepairTask),
}

/// A cause, its rivals, and readings of which one alone rules out every rival.
#[derive(Clone, Debug, PartialEq)]
pub struct ReadingTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The code that all of them raise.
    pub code: u8,
    /// The cause to be proved, a failure mode by its id.
    pub cause: String,
    /// Its rivals.
    pub rivals: Vec<String>,
    /// Readings, looks and buckets to choose from.
    pub options: Vec<Candidate>,
    should: usize,
}

/// A reading, a look or a bucket, and what it shows.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// What is done.
    pub probe: Probe,
    /// What the machine shows with the cause.
    pub with_cause: Shown,
    /// What it shows with each rival, and whether the reading rules that rival out.
    pub with_rivals: Vec<(Shown, bool)>,
}

/// What a reading, a look or a bucket shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Shown {
    /// On the meter.
    Reading(Display),
    /// To the eye.
    Findings(Vec<Finding>),
    /// In a bucket.
    Bucket(SupplyStrength),
}

/// A repair and what was done around it.
#[derive(Clone, Debug, PartialEq)]
pub struct RepairTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// The failure mode that was found, by its id.
    pub cause: String,
    /// What was done, in order, with what came of it.
    pub history: Vec<HistoryStep>,
    should: usize,
}

/// One thing that was done.
#[derive(Clone, Debug, PartialEq)]
pub enum HistoryStep {
    /// This part was fitted.
    Fitted(String),
    /// The control was recalibrated.
    Recalibrated(Outcome),
    /// A program was run.
    Ran(Outcome),
    /// Somebody looked under the machine: water in the tub, mm, and whether the floor was wet.
    LookedForLeaks {
        /// Depth of the water in the tub, mm.
        level_mm: f64,
        /// The floor was wet.
        wet: bool,
    },
}

/// An answer, judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// It is right.
    pub right: bool,
    /// The right one, by its place among the choices.
    pub should: usize,
    /// The one chosen.
    pub chosen: usize,
}

impl ProofTask {
    /// Board and supply.
    pub fn place(&self) -> &SuppliedBoardId {
        match self {
            ProofTask::Reading(task) => &task.place,
            ProofTask::Repair(task) => &task.place,
        }
    }

    /// Choices that there are.
    pub fn choices(&self) -> usize {
        match self {
            ProofTask::Reading(task) => task.options.len(),
            ProofTask::Repair(_) => GAPS.len(),
        }
    }
}

/// Draws a question, with the table of each board at its supply; where there is none, about a repair.
pub fn ask<'t>(
    supplied_boards: &[SuppliedBoard<'_>],
    tables: impl Fn(&SuppliedBoardId) -> Option<&'t Table>,
    seed: u64,
) -> ProofTask {
    let rng = &mut draws(seed);
    let supplied_board = supplied_board(supplied_boards, rng);
    let table = tables(&supplied_board.place()).filter(|_| below(2, rng) == 0);
    let reading =
        table.and_then(|table| (0..DRAWS).find_map(|_| reading(supplied_board, table, rng)));
    match reading {
        Some(task) => ProofTask::Reading(task),
        None => ProofTask::Repair(repair(supplied_board, seed, rng)),
    }
}

/// Judges the choice, by its place.
pub fn mark(task: &ProofTask, chosen: usize) -> Marked {
    let should = match task {
        ProofTask::Reading(task) => task.should,
        ProofTask::Repair(task) => task.should,
    };
    Marked {
        right: chosen == should,
        should,
        chosen,
    }
}

/// One cause with rivals of the same code, if one reading tells it from all of them.
fn reading(
    supplied_board: &SuppliedBoard<'_>,
    table: &Table,
    rng: &mut ChaCha8Rng,
) -> Option<ReadingTask> {
    let library = &supplied_board.library;
    let entries: Vec<_> = library.board.sheet.iter().collect();
    let entry = one_of(&entries, rng)?;
    let code = library.board.code_of(entry.monitor)?;
    // What comes and goes shows now this and now that, and a single reading proves nothing against it.
    let raises = |n: &usize| {
        let mode = &library.modes[*n];
        mode.presence == Presence::Steady
            && entry.suspects.contains(&mode.component)
            && table.seen.get(n + 1).is_some_and(|seen| {
                seen.sights.len() == 1 && seen.washes.iter().all(|wash| wash.codes.contains(&code))
            })
    };
    let seen = |n: usize| &table.seen[n + 1];
    let mut modes: Vec<usize> = (0..library.modes.len()).filter(raises).collect();
    shuffle(&mut modes, rng);
    // The house or the valve? Among so many faults and readings the two buckets would hardly ever come up.
    let of_house = |n: &usize| seen(*n).sights[0].buckets != table.seen[0].sights[0].buckets;
    let house = modes.iter().any(of_house);
    if house && below(2, rng) == 0 {
        modes.sort_by_key(|n| !of_house(n));
    }
    let cause = *modes.first()?;
    let component = |n: usize| library.modes[n].component;
    let mut rivals: Vec<usize> = Vec::new();
    for n in &modes[1..] {
        let new = component(*n) != component(cause)
            && rivals.iter().all(|r| component(*r) != component(*n));
        if new && rivals.len() < RIVALS {
            rivals.push(*n);
        }
    }
    if rivals.is_empty() {
        return None;
    }
    let others: Vec<&Seen> = rivals.iter().map(|n| seen(*n)).collect();
    let mut all = candidates(table, seen(cause), &others);
    shuffle(&mut all, rng);
    if house {
        all.sort_by_key(|c| !matches!(c.probe, Probe::BucketTest(_)));
    }
    let ruled_out = |c: &Candidate| c.with_rivals.iter().filter(|(_, out)| *out).count();
    let at = all.iter().position(|c| ruled_out(c) == rivals.len())?;
    let right = all.swap_remove(at);
    all.retain(|c| ruled_out(c) < rivals.len());
    let concerned: Vec<Component> = std::iter::once(cause)
        .chain(rivals.iter().copied())
        .map(component)
        .collect();
    // What rules out some of them, and what is measured at one of them, is chosen by mistake.
    let (mut partial, mut rest): (Vec<Candidate>, Vec<Candidate>) =
        all.into_iter().partition(|c| ruled_out(c) > 0);
    partial.truncate(PARTIAL);
    rest.sort_by_key(|c| !concerned.contains(&place_of(&c.probe)));
    let mut options = vec![right.clone()];
    options.extend(partial.into_iter().chain(rest).take(CHOICES - 1));
    if options.len() < CHOICES {
        return None;
    }
    shuffle(&mut options, rng);
    let id = |n: &usize| library.modes[*n].id.clone();
    Some(ReadingTask {
        place: supplied_board.place(),
        code,
        cause: id(&cause),
        rivals: rivals.iter().map(id).collect(),
        should: options.iter().position(|o| *o == right).unwrap_or_default(),
        options,
    })
}

/// Every standard reading, look and bucket that all of these machines allow.
fn candidates(table: &Table, cause: &Seen, rivals: &[&Seen]) -> Vec<Candidate> {
    let mut all = Vec::new();
    for (n, point) in table.points.iter().enumerate() {
        let shown = |seen: &Seen| seen.sights.first().and_then(|sight| sight.shown[n]);
        let Some(own) = shown(cause) else { continue };
        let with: Option<Vec<Display>> = rivals.iter().map(|seen| shown(seen)).collect();
        let Some(with) = with else { continue };
        all.push(Candidate {
            probe: Probe::Read(point.clone()),
            with_cause: Shown::Reading(own),
            with_rivals: (with.into_iter())
                .map(|shown| (Shown::Reading(shown), meter::differ(point.mode, own, shown)))
                .collect(),
        });
    }
    for component in Component::ALL {
        let found = |seen: &Seen| {
            let sight = seen.sights.first();
            sight.map_or(Vec::new(), |s| s.findings[component.index()].clone())
        };
        let own = found(cause);
        all.push(Candidate {
            probe: Probe::Inspect(*component),
            with_rivals: (rivals.iter())
                .map(|seen| (found(seen), found(seen) != own))
                .map(|(found, out)| (Shown::Findings(found), out))
                .collect(),
            with_cause: Shown::Findings(own),
        });
    }
    for pipe in WaterPipe::ALL {
        let filled = |seen: &Seen| seen.sights.first().map(|s| s.buckets[pipe.index()]);
        let Some(own) = filled(cause) else { continue };
        let with: Option<Vec<SupplyStrength>> = rivals.iter().map(|seen| filled(seen)).collect();
        let Some(with) = with else { continue };
        all.push(Candidate {
            probe: Probe::BucketTest(*pipe),
            with_cause: Shown::Bucket(own),
            with_rivals: (with.into_iter())
                .map(|filled| (Shown::Bucket(filled), filled != own))
                .collect(),
        });
    }
    all
}

/// The component at which something is measured or looked at.
fn place_of(probe: &Probe) -> Component {
    let of = |pin: Pin| match pin {
        Pin::Wire(terminal, _) => terminal.component(),
        _ => Component::Board,
    };
    match probe {
        Probe::Read(point) => of(point.red),
        Probe::Inspect(component) => *component,
        Probe::BucketTest(_) => Component::Taps,
        Probe::Recalibrate => Component::Board,
    }
}

/// What is done around a repair, before anything comes of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Deed {
    Fit,
    Recalibrate,
    Run,
    LookForLeaks,
}

/// A repair of which at most one thing is to be said. What is to come up is drawn first, so that no answer is right
/// much more often than another; what the answer is, the bench says.
fn repair(supplied_board: &SuppliedBoard<'_>, seed: u64, rng: &mut ChaCha8Rng) -> RepairTask {
    let library = &supplied_board.library;
    let board = library.board.id.as_str();
    let curable = |mode: &&FailureMode| {
        mode.presence == Presence::Steady
            && !mode.needs_no_part()
            && mode.component != Component::Board
            && cure(library.parts, board, mode).is_some()
    };
    let modes: Vec<&FailureMode> = library.modes.iter().filter(curable).collect();
    let wet: Vec<&FailureMode> = (modes.iter().copied())
        .filter(|mode| holds_water(mode.component))
        .collect();
    let mut machines = seed;
    loop {
        machines = machines.wrapping_add(1);
        let gap = one_of(&GAPS, rng).flatten();
        let of_water = gap == Some(LossKind::NoLeakCheck) || below(2, rng) == 0;
        let mode = one_of(if of_water { &wet } else { &modes }, rng);
        let Some(mode) = mode else { continue };
        let right = cure(library.parts, board, mode);
        let wrong = one_of(&modes, rng).filter(|other| other.component != mode.component);
        let part = match gap {
            Some(LossKind::NotCured) => wrong.and_then(|other| cure(library.parts, board, other)),
            _ => right,
        };
        let Some(part) = part else { continue };
        let setup = library.setup(supplied_board.mains.rating(), vec![mode.clone()], machines);
        let mut bench = Bench::new(setup);
        bench.wait(AWAKE);
        bench.begin();
        let plan = plan(gap, holds_water(part.component), rng);
        let mut history = Vec::with_capacity(plan.len());
        for deed in plan {
            history.extend(done(&mut bench, deed, &part.number));
        }
        if let Some(should) = said(&bench, &history) {
            return RepairTask {
                place: supplied_board.place(),
                cause: mode.id.clone(),
                history,
                should,
            };
        }
    }
}

/// An order of deeds that may leave this gap.
fn plan(gap: Option<LossKind>, wet: bool, rng: &mut ChaCha8Rng) -> Vec<Deed> {
    let mut after = vec![Deed::Recalibrate, Deed::Run];
    if below(2, rng) == 0 {
        after.swap(0, 1);
    }
    if wet || below(3, rng) == 0 {
        after.push(Deed::LookForLeaks);
    }
    let early = match gap {
        Some(LossKind::NotRecalibrated) => Some(Deed::Recalibrate),
        Some(LossKind::NoProvingRun) => Some(Deed::Run),
        Some(LossKind::NoLeakCheck) => Some(Deed::LookForLeaks),
        _ => None,
    };
    let mut all = Vec::new();
    if let Some(early) = early {
        after.retain(|deed| *deed != early);
        match (early, below(3, rng)) {
            (_, 0) => {}
            // Too early: the tub is dry.
            (Deed::LookForLeaks, 1) => after.insert(0, early),
            // Before the part went in.
            _ => all.push(early),
        }
    }
    all.push(Deed::Fit);
    all.extend(after);
    all
}

/// Does one thing; what there is to tell of it.
fn done(bench: &mut Bench, deed: Deed, part: &str) -> Option<HistoryStep> {
    // Whatever was begun is ended first: the control wakes up anew.
    let rest = [ScriptStep::PowerDown, ScriptStep::Do(Action::Plug)];
    let fitting = [
        Action::Order(part.to_owned()),
        Action::Unplug,
        Action::OpenCabinet,
        Action::Fit(part.to_owned()),
        Action::CloseCabinet,
        Action::Plug,
    ];
    let at = bench.now();
    match deed {
        Deed::Fit => {
            for action in &fitting {
                bench.act(action).ok()?;
            }
            Some(HistoryStep::Fitted(part.to_owned()))
        }
        Deed::LookForLeaks => {
            bench.act(&Action::CheckForLeaks).ok()?;
            let check = bench.log().leak_checks().last()?;
            Some(HistoryStep::LookedForLeaks {
                level_mm: check.level_mm,
                wet: check.is_wet(),
            })
        }
        Deed::Recalibrate | Deed::Run => {
            for step in &rest {
                step.run(bench).ok()?;
            }
            bench.wait(AWAKE);
            survey::leave_kept_hold(bench);
            Some(if deed == Deed::Recalibrate {
                survey::recalibrate(bench);
                HistoryStep::Recalibrated(outcome(bench, MilestoneKind::CalibrationPassed, at))
            } else {
                survey::proving_run(bench);
                HistoryStep::Ran(outcome(bench, MilestoneKind::ProgramFinished, at))
            })
        }
    }
}

/// How a run since `since` ended.
fn outcome(bench: &Bench, finished: MilestoneKind, since: Time) -> Outcome {
    let stopped: Option<Monitor> = (bench.milestones().iter())
        .filter(|l| l.at >= since)
        .find_map(|l| l.kind.stopped_by());
    let code = stopped.and_then(|monitor| bench.machine().board().code_of(monitor));
    let end = if stopped.is_some() {
        End::Stopped
    } else if bench.passed(finished, since) {
        End::Finished
    } else {
        End::Open
    };
    let codes = code.into_iter().collect();
    Outcome { end, codes }
}

/// What is to be said of the bench, by its place among [`GAPS`]; none where that is not plain from what was done.
fn said(bench: &Bench, history: &[HistoryStep]) -> Option<usize> {
    let place = |gap| GAPS.iter().position(|one| *one == gap);
    let fitted = history
        .iter()
        .rposition(|step| matches!(step, HistoryStep::Fitted(_)))?;
    let after = history[fitted..].iter();
    let mut ends = after.filter_map(|step| match step {
        HistoryStep::Recalibrated(outcome) | HistoryStep::Ran(outcome) => Some(outcome),
        HistoryStep::Fitted(_) | HistoryStep::LookedForLeaks { .. } => None,
    });
    if bench.machine().plant().faults().next().is_some() {
        let shows = ends.any(|outcome| outcome.end == End::Stopped && !outcome.codes.is_empty());
        return place(Some(LossKind::NotCured)).filter(|_| shows);
    }
    if ends.any(|outcome| outcome.end != End::Finished) {
        return None;
    }
    let left: Vec<LossKind> = left_unproved(bench).iter().map(Loss::kind).collect();
    match left[..] {
        [] => place(None),
        [kind] => place(Some(kind)),
        _ => None,
    }
}
