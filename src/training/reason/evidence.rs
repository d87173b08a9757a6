//! How likely what is seen is under each hypothesis, found by running the machine with it: hypothesis
//! 0 is the sound machine, hypothesis n + 1 failure mode n of the catalogue. Readings are taken as drawn one
//! by one: that a fault which comes and goes stays away for a whole visit counts for too little.

use crate::bench::{
    Bench, Display, Finding, Grip, MeterMode, Milestone, MilestoneKind, SupplyStrength, meter,
    visible_findings,
};
use crate::lesson::{Library, MachineState, survey};
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::{Component, Pin, Rating, WaterPipe};
use detent_simulation::plant::{FailureMode, Op, Param, Presence, Probes};
use detent_simulation::units::{Span, by_name};
use libm::{erf, exp, sqrt};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Raised whenever this room makes other tables of the same content.
const VERSION: u32 = 5;
/// Washes that a fault which is always there is run through; draws hardly change them.
const STEADY_WASHES: u64 = 3;
/// Washes for a fault that comes and goes or grows.
const VARYING_WASHES: u64 = 12;
/// Times that a fault which sleeps until it is stressed is looked at.
const STRESSED_LOOKS: u64 = 4;
/// Chance that what is seen is nothing that the runs showed: another load of laundry, a slip of the
/// eye, a double fault. Our own choice.
pub const FLOOR: f64 = 0.01;
/// Standard deviation of a part's own value, share of it: two of them are the tolerance of 5 % that
/// [`meter::differ`] leaves.
const PART_SPREAD: f64 = 0.025;
/// Weight of "nothing is wrong" beside the catalogue's weights. Our own choice.
pub const NOTHING_WRONG: f64 = 8.0;
/// Chances below this are none.
const NEVER: f64 = 1e-6;

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum End {
    /// It came to its end.
    Finished,
    /// The control stopped it.
    Stopped,
    /// It was still going on, or had never begun.
    Open,
    /// The console is dark.
    Dark,
    /// Nothing was started: a worn dial slipped, so that the program which the customer meant was never
    /// asked for. That says nothing about the rest of the machine.
    NotAskedFor,
}

/// What is left to see after a run: how it ended and the codes that it stored, newest first.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Outcome {
    /// End.
    pub end: End,
    /// Codes.
    pub codes: Vec<u8>,
}

impl Outcome {
    /// Of the customer's wash, as the bench stands after it.
    pub fn of_wash(bench: &Bench) -> Outcome {
        let outcome = Outcome::of(bench, MilestoneKind::ProgramFinished);
        if outcome.end == End::Open && slipped(bench) {
            let (end, codes) = (End::NotAskedFor, Vec::new());
            return Outcome { end, codes };
        }
        outcome
    }

    fn of(bench: &Bench, finished: MilestoneKind) -> Outcome {
        let control = bench.machine().control();
        if control.control_status().mode == ControlMode::Off {
            let (end, codes) = (End::Dark, Vec::new());
            return Outcome { end, codes };
        }
        let milestones = bench.milestones();
        let end = if milestones.iter().any(|l| l.kind.stopped_by().is_some()) {
            End::Stopped
        } else if milestones.iter().any(|l| l.kind == finished) {
            End::Finished
        } else {
            End::Open
        };
        let fresh = control.memory().codes.iter().filter(|c| c.cycles_ago == 0);
        let codes = fresh.map(|c| c.code).collect();
        Outcome { end, codes }
    }
}

/// Whether the control stands at another program than the dial points at and has started none.
fn slipped(bench: &Bench) -> bool {
    let machine = bench.machine();
    let started = |l: &Milestone| l.kind == MilestoneKind::ProgramStarted;
    machine.board().panel.selector.turn().is_some()
        && machine.control().position() != machine.plant().dial_position()
        && !bench.milestones().iter().any(started)
}

/// Where a standard reading is taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// State of the machine.
    #[serde(with = "by_name")]
    pub state: MachineState,
    /// Meter setting.
    pub mode: MeterMode,
    /// Pin under the red probe.
    pub red: Pin,
    /// Pin under the black probe.
    pub black: Pin,
}

/// All that a machine shows to meter and eye at one time.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Signature {
    /// Share of the times at which it shows this, 0 to 1.
    pub share: f64,
    /// What the meter shows at each [`Point`]; none where the control does not let one come so far.
    pub shown: Vec<Option<Display>>,
    /// What is found at each [`Component`].
    pub findings: Vec<Vec<Finding>>,
    /// What a bucket test comes to at each [`WaterPipe`].
    pub buckets: [SupplyStrength; 2],
}

/// What the runs of one hypothesis showed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Seen {
    /// Ends of the washes.
    pub washes: Vec<Outcome>,
    /// Ends of the recalibrations; none where service mode cannot be entered.
    pub recalibrations: Vec<Option<Outcome>>,
    /// What it shows, by share.
    pub sights: Vec<Signature>,
}

/// What every hypothesis shows on one board and supply.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Table {
    /// Standard readings.
    pub points: Vec<Point>,
    /// Every hypothesis.
    pub seen: Vec<Seen>,
    /// Time of the shortest program, of a recalibration and of getting into service mode on the sound
    /// machine, s.
    pub proof_s: f64,
    /// As said.
    pub recalibration_s: f64,
    /// As said.
    pub service_s: f64,
}

/// A kept table that cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TableError {
    /// Of another board, catalogue, machine, list of parts or program.
    #[error("it was made for other content; make it again")]
    Stale,
    /// Bytes that are not what was written.
    #[error("it is damaged; make it again")]
    Damaged,
}

/// What a table was made from: SHA-256.
pub type Key = [u8; 32];

/// The key of the content: board, catalogue, machine, parts, supply, this room's version, and a wash of the
/// sound machine, which changes with the simulation itself.
pub fn key(library: &Library<'_>, rating: Rating) -> Key {
    let mut bench = survey::bench_with(library, rating, None, 1);
    survey::wash(&mut bench);
    let content = (
        (VERSION, library.board, library.sound, library.modes),
        (library.parts, library.rates, rating.volts, rating.hz),
        bench.machine().state_hash(),
    );
    // Writing plain values to memory has nothing to fail at.
    let bytes = postcard::to_stdvec(&content).unwrap_or_default();
    Sha256::digest(&bytes).into()
}

/// Runs one hypothesis: hypothesis `n` of the library, 0 for the sound machine. Each is a run of its
/// own, so that they may be made in any order or at once. `points` are those of [`points`].
pub fn observe(library: &Library<'_>, rating: Rating, points: &[Point], n: usize) -> Seen {
    let mode = n.checked_sub(1).and_then(|n| library.modes.get(n));
    let presence = mode.map_or(Presence::Steady, |m| m.presence);
    let seeds = match presence {
        Presence::Steady => 1..=STEADY_WASHES,
        _ => 1..=VARYING_WASHES,
    };
    let washes = seeds
        .map(|seed| {
            let mut bench = survey::bench_with(library, rating, mode, seed);
            survey::wash(&mut bench);
            Outcome::of_wash(&bench)
        })
        .collect();
    // What grows has grown by the time that the technician comes.
    let grown = mode.map(FailureMode::at_its_worst);
    let worst = grown.as_ref();
    let (tried, looks): (Option<&FailureMode>, Vec<(f64, survey::Observations)>) = match presence {
        Presence::Intermittent { under: Some(_), .. } => {
            let look = |seed| {
                (
                    1.0,
                    survey::looks_drawn(library, rating, mode, 100 + 3 * seed),
                )
            };
            (mode, (0..STRESSED_LOOKS).map(look).collect())
        }
        Presence::Intermittent { good_s, bad_s, .. } => {
            let there = survey::looks(library, rating, worst);
            let away = survey::looks(library, rating, None);
            (mode, vec![(bad_s, there), (good_s, away)])
        }
        Presence::Steady | Presence::Drift { .. } => {
            (worst, vec![(1.0, survey::looks(library, rating, worst))])
        }
    };
    let times = if tried == worst { 1 } else { STRESSED_LOOKS };
    let recalibrations = (0..times)
        .map(|seed| {
            let mut bench = survey::bench_with(library, rating, tried, 200 + seed);
            bench.wait(Span::from_s(3));
            let entered = survey::recalibrate(&mut bench)
                || bench
                    .milestones()
                    .iter()
                    .any(|l| l.kind == MilestoneKind::CalibrationStarted);
            entered.then(|| Outcome::of(&bench, MilestoneKind::CalibrationPassed))
        })
        .collect();
    let total: f64 = looks.iter().map(|(share, _)| share).sum();
    let sights = looks
        .into_iter()
        .map(|(share, looks)| sight(points, share / total, &looks))
        .collect();
    Seen {
        washes,
        recalibrations,
        sights,
    }
}

/// The standard readings: those that the sound machine allows.
pub fn points(library: &Library<'_>, rating: Rating) -> Vec<Point> {
    let sound = survey::looks(library, rating, None);
    let point = |taken: survey::ReferenceReading| Point {
        state: taken.state,
        mode: taken.mode,
        red: taken.red,
        black: taken.black,
    };
    sound.readings.into_iter().map(point).collect()
}

fn sight(points: &[Point], share: f64, looks: &survey::Observations) -> Signature {
    let shown = |point: &Point| {
        let here = |t: &&survey::ReferenceReading| {
            (t.state, t.mode, t.red, t.black) == (point.state, point.mode, point.red, point.black)
        };
        looks.readings.iter().find(here).map(|t| t.shown)
    };
    let found = |component: &Component| {
        let at = looks.findings.iter().find(|(c, _)| c == component);
        at.map_or(Vec::new(), |(_, findings)| findings.clone())
    };
    Signature {
        share,
        shown: points.iter().map(shown).collect(),
        findings: Component::ALL.iter().map(found).collect(),
        buckets: looks.buckets,
    }
}

/// Weights of the hypotheses before anything is seen.
pub fn prior(modes: &[FailureMode]) -> Vec<f64> {
    let weights = modes.iter().map(|m| m.weight);
    std::iter::once(NOTHING_WRONG).chain(weights).collect()
}

impl Table {
    /// Puts together what [`observe`] saw of hypotheses 0, 1, 2… at these points.
    pub fn of(library: &Library<'_>, rating: Rating, points: Vec<Point>, seen: Vec<Seen>) -> Table {
        let mut bench = survey::bench_with(library, rating, None, 1);
        bench.wait(Span::from_s(3));
        // After a recalibration it is out.
        survey::empty_basket(&mut bench);
        let began = bench.now();
        survey::proving_run(&mut bench);
        let proof_s = bench.now().since(began).seconds();
        let mut bench = survey::bench_with(library, rating, None, 2);
        bench.wait(Span::from_s(3));
        survey::enter_service(&mut bench);
        let service_s = bench.now().seconds();
        let mut bench = survey::bench_with(library, rating, None, 2);
        bench.wait(Span::from_s(3));
        survey::recalibrate(&mut bench);
        let recalibration_s = bench.now().seconds() - service_s;
        Table {
            points,
            seen,
            proof_s,
            recalibration_s,
            service_s,
        }
    }

    /// As bytes to keep.
    pub fn to_bytes(&self, key: &Key) -> Vec<u8> {
        // Writing plain values to memory has nothing to fail at.
        let body = postcard::to_stdvec(self).unwrap_or_default();
        let sum: Key = Sha256::digest(&body).into();
        [&key[..], &sum, &body].concat()
    }

    /// From bytes that [`Self::to_bytes`] wrote for the same key.
    ///
    /// # Errors
    /// As named.
    pub fn from_bytes(bytes: &[u8], key: &Key) -> Result<Table, TableError> {
        let (kept, rest) = bytes.split_at_checked(32).ok_or(TableError::Damaged)?;
        let (sum, body) = rest.split_at_checked(32).ok_or(TableError::Damaged)?;
        if kept != key {
            return Err(TableError::Stale);
        }
        if sum != Key::from(Sha256::digest(body)) {
            return Err(TableError::Damaged);
        }
        postcard::from_bytes(body).map_err(|_| TableError::Damaged)
    }

    /// Likelihood of the end of a wash under each hypothesis: the share of its runs that ended so, and
    /// [`FLOOR`] spread over all that was ever seen.
    pub fn wash(&self, outcome: &Outcome) -> Vec<f64> {
        if outcome.end == End::NotAskedFor {
            return vec![1.0; self.seen.len()];
        }
        let runs: Vec<Vec<(f64, &Outcome)>> =
            (self.seen.iter()).map(|s| even(s.washes.iter())).collect();
        likelihood(&runs, &outcome)
    }

    /// The same for the end of a recalibration; none if service mode cannot be entered.
    pub fn recalibration(&self, outcome: &Option<Outcome>) -> Vec<f64> {
        likelihood(&self.recalibrations(), &outcome)
    }

    /// The same for what is found at a component.
    pub fn findings(&self, component: Component, found: &[Finding]) -> Vec<f64> {
        likelihood(&self.found(component), &found)
    }

    /// The same for what a bucket test comes to.
    pub fn bucket(&self, pipe: WaterPipe, strength: SupplyStrength) -> Vec<f64> {
        likelihood(&self.buckets(pipe), &strength)
    }

    /// Likelihood density of a reading at a standard point under each hypothesis.
    pub fn reading(&self, point: usize, shown: Display) -> Vec<f64> {
        let mode = self.points[point].mode;
        let of = |seen: &Seen| {
            let each = seen.sights.iter();
            let each =
                each.map(|s| s.share * s.shown[point].map_or(0.0, |v| density(mode, v, shown)));
            soften(mode, shown, each.sum())
        };
        self.seen.iter().map(of).collect()
    }

    fn recalibrations(&self) -> Vec<Vec<(f64, &Option<Outcome>)>> {
        (self.seen.iter())
            .map(|seen| even(seen.recalibrations.iter()))
            .collect()
    }

    fn found(&self, component: Component) -> Vec<Vec<(f64, &[Finding])>> {
        (self.seen.iter())
            .map(|seen| {
                let sights = seen.sights.iter();
                sights
                    .map(|s| (s.share, s.findings[component.index()].as_slice()))
                    .collect()
            })
            .collect()
    }

    fn buckets(&self, pipe: WaterPipe) -> Vec<Vec<(f64, SupplyStrength)>> {
        (self.seen.iter())
            .map(|seen| {
                let sights = seen.sights.iter();
                sights.map(|s| (s.share, s.buckets[pipe.index()])).collect()
            })
            .collect()
    }

    /// For a test, each outcome's chance under each hypothesis: of the end of a recalibration.
    pub fn recalibration_chances(&self) -> Vec<Vec<f64>> {
        chances(&self.recalibrations())
    }

    /// Of what is found at a component.
    pub fn finding_chances(&self, component: Component) -> Vec<Vec<f64>> {
        chances(&self.found(component))
    }

    /// Of what a bucket test comes to.
    pub fn bucket_chances(&self, pipe: WaterPipe) -> Vec<Vec<f64>> {
        chances(&self.buckets(pipe))
    }

    /// Of a reading, sorted into values that a meter tells apart. Noise and a part's own spread can carry
    /// a reading over the middle between two of them.
    pub fn reading_chances(&self, point: usize) -> Vec<Vec<f64>> {
        let mode = self.points[point].mode;
        let shown = |seen: &Seen| -> Vec<(f64, Option<Display>)> {
            seen.sights
                .iter()
                .map(|s| (s.share, s.shown[point]))
                .collect()
        };
        let all: Vec<Vec<(f64, Option<Display>)>> = self.seen.iter().map(shown).collect();
        let mut values: Vec<f64> = (all.iter().flatten())
            .filter_map(|(_, shown)| match shown {
                Some(Display::Value(v)) => Some(*v),
                _ => None,
            })
            .collect();
        values.sort_by(f64::total_cmp);
        let apart = |two: &[f64]| {
            let [a, b] = [two[0], two[1]];
            meter::differ(mode, Display::Value(a), Display::Value(b)).then_some(0.5 * (a + b))
        };
        let mut bounds = vec![f64::NEG_INFINITY];
        bounds.extend(values.windows(2).filter_map(apart));
        bounds.push(f64::INFINITY);
        let mut rows: Vec<Vec<f64>> = bounds
            .windows(2)
            .map(|two| {
                let within = |sights: &Vec<(f64, Option<Display>)>| {
                    let share = |(share, shown): &(f64, Option<Display>)| match shown {
                        Some(Display::Value(v)) => {
                            let sd = spread(mode, *v);
                            share * (normal((two[1] - v) / sd) - normal((two[0] - v) / sd))
                        }
                        _ => 0.0,
                    };
                    sights.iter().map(share).sum()
                };
                all.iter().map(within).collect()
            })
            .collect();
        for other in [Some(Display::OverRange), Some(Display::Dead), None] {
            let so = |sights: &Vec<(f64, Option<Display>)>| {
                let same = sights.iter().filter(|(_, shown)| *shown == other);
                same.map(|(share, _)| share).sum()
            };
            rows.push(all.iter().map(so).collect());
        }
        tidy(rows)
    }
}

/// Likelihood density of what the meter shows now at this bench, whatever state it is in, if only one
/// thing were wrong with the machine, or nothing, and all that can be seen from outside were as it is.
pub fn reading_here(
    bench: &Bench,
    (mode, red, black, grip): (MeterMode, Pin, Pin, Grip),
    shown: Display,
) -> Vec<f64> {
    let plant = bench.machine().plant();
    let mut probes = Probes::on(red, black);
    let mut would_show = |changes: &[_]| {
        let ideal = meter::ideal(&plant.probed_if(changes), mode, &mut probes, grip);
        density(mode, ideal, shown)
    };
    let sound = would_show(&[]);
    let of = |fault: &FailureMode| {
        let there = present(fault.presence);
        let likely = there * would_show(&fault.changes) + (1.0 - there) * sound;
        soften(mode, shown, likely)
    };
    let modes = bench.modes().iter().map(of);
    std::iter::once(soften(mode, shown, sound))
        .chain(modes)
        .collect()
}

/// The same for what is found at a component.
pub fn finding_here(bench: &Bench, component: Component, found: &[Finding]) -> Vec<f64> {
    let plant = bench.machine().plant();
    seen_here(bench, |changes| {
        visible_findings(plant, &plant.params_if(changes), component) == found
    })
}

/// The same for what a bucket test comes to.
pub fn bucket_here(bench: &Bench, pipe: WaterPipe, strength: SupplyStrength) -> Vec<f64> {
    let plant = bench.machine().plant();
    seen_here(bench, |changes| {
        SupplyStrength::of(plant.into_bucket_if(pipe, changes).0) == strength
    })
}

/// Likelihood of what was seen if a machine with some changes would look the `same`.
fn seen_here(bench: &Bench, same: impl Fn(&[(Param, Op)]) -> bool) -> Vec<f64> {
    let would = |changes: &[_]| if same(changes) { 1.0 - FLOOR } else { FLOOR };
    let sound = would(&[]);
    let of = |fault: &FailureMode| {
        let there = present(fault.presence);
        there * would(&fault.changes) + (1.0 - there) * sound
    };
    std::iter::once(sound)
        .chain(bench.modes().iter().map(of))
        .collect()
}

/// Share of the time that a fault is there.
fn present(presence: Presence) -> f64 {
    match presence {
        Presence::Steady | Presence::Drift { .. } => 1.0,
        Presence::Intermittent { good_s, bad_s, .. } => bad_s / (good_s + bad_s),
    }
}

/// Standard deviation of a reading: the meter's noise, even over half its accuracy either way, and the
/// part's own spread.
fn spread(mode: MeterMode, value: f64) -> f64 {
    let noise = meter::accuracy(mode, value);
    let part = PART_SPREAD * value;
    sqrt(noise * noise / 12.0 + part * part)
}

/// Normal distribution function.
fn normal(z: f64) -> f64 {
    0.5 * (1.0 + erf(z / core::f64::consts::SQRT_2))
}

/// Density per unit of the mode at `shown` where a sound part would show `ideal`; 1 for two displays
/// alike that are no values.
fn density(mode: MeterMode, ideal: Display, shown: Display) -> f64 {
    match (ideal, shown) {
        (Display::Value(ideal), Display::Value(shown)) => {
            let sd = spread(mode, ideal);
            let z = (shown - ideal) / sd;
            exp(-0.5 * z * z) / (sd * sqrt(core::f64::consts::TAU))
        }
        (ideal, shown) => f64::from(u8::from(ideal == shown)),
    }
}

/// With [`FLOOR`] for whatever the runs did not show: a value anywhere up to twice itself, in density.
fn soften(mode: MeterMode, shown: Display, likely: f64) -> f64 {
    let anywhere = match shown {
        Display::Value(v) => 0.5 / (v.abs() + meter::accuracy(mode, v)),
        _ => 0.5,
    };
    (1.0 - FLOOR) * likely + FLOOR * anywhere
}

fn even<T>(runs: impl ExactSizeIterator<Item = T>) -> Vec<(f64, T)> {
    let share = 1.0 / runs.len() as f64;
    runs.map(|run| (share, run)).collect()
}

/// Everything that any hypothesis shows, once.
fn kinds<T: Ord + Copy>(all: &[Vec<(f64, T)>]) -> Vec<T> {
    let mut kinds: Vec<T> = all.iter().flatten().map(|(_, kind)| *kind).collect();
    kinds.sort_unstable();
    kinds.dedup();
    kinds
}

fn share_of<T: PartialEq>(runs: &[(f64, T)], kind: &T) -> f64 {
    let same = runs.iter().filter(|(_, other)| other == kind);
    same.map(|(share, _)| share).sum()
}

fn likelihood<T: Ord + Copy>(all: &[Vec<(f64, T)>], seen: &T) -> Vec<f64> {
    let anything = FLOOR / (kinds(all).len() + 1) as f64;
    let of = |runs: &Vec<(f64, T)>| (1.0 - FLOOR) * share_of(runs, seen) + anything;
    all.iter().map(of).collect()
}

fn chances<T: Ord + Copy>(all: &[Vec<(f64, T)>]) -> Vec<Vec<f64>> {
    let row = |kind: T| all.iter().map(|runs| share_of(runs, &kind)).collect();
    tidy(kinds(all).into_iter().map(row).collect())
}

/// Leaves out what never happens and makes the rest add up to 1.
fn tidy(mut rows: Vec<Vec<f64>>) -> Vec<Vec<f64>> {
    for chance in rows.iter_mut().flatten() {
        if *chance < NEVER {
            *chance = 0.0;
        }
    }
    rows.retain(|row| row.iter().any(|chance| *chance > 0.0));
    for h in 0..rows.first().map_or(0, Vec::len) {
        let sum: f64 = rows.iter().map(|row| row[h]).sum();
        for row in &mut rows {
            row[h] /= sum;
        }
    }
    rows
}
