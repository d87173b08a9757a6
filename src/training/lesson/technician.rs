//! People at a bench, each working with steps and actions as a person does: one who proves before buying, one
//! who guesses by what fails most, one who swaps the control, and four who work as the first does but for
//! one bad habit.

use super::advice;
use super::scenario::Scenario;
use super::survey::{self, INSULATED, LOADS};
use crate::bench::script::{Condition, ScriptStep, StepError, entry_steps};
use crate::bench::{
    Action, Advice, Bench, Caution, Display, Grip, MeterMode, MilestoneKind, Question, Quote,
    Repair, Report, Verdict,
};
use crate::slices::{SliceEnd, without_breaks};
use detent_simulation::controller::{ControlMode, Routine};
use detent_simulation::interface::{
    Button, Component, Connector, Direction, Pin, Side, Terminal, WaterPipe,
};
use detent_simulation::plant::FailureMode;
use detent_simulation::units::{Span, Time};

/// Tries at the entry gesture before anybody gives up.
pub(crate) const TRIES: usize = 6;
/// A circuit that shows no more than this is dead enough for an ohmmeter, V.
const DEAD_V: f64 = 5.0;
/// The longest recalibration and program that are waited for, s.
const RECALIBRATION_S: u64 = 900;
const PROGRAM_S: u64 = 4000;
/// The longest that hot water is left to cool, min.
const COOLS_MIN: u64 = 60;

type Done = Result<(), StepError>;

/// How somebody works.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Persona {
    /// Knows what is wrong and proves it before buying.
    Expert,
    /// Buys what fails most often among the parts that the service sheet lists for the code.
    Guesser,
    /// Works by the rules and swaps the control first.
    Swapper,
    /// As the expert, but discharges and trusts to that: no measurement, no check of the meter.
    SkipsProof,
    /// As the expert, but hands the machine back without a run.
    SkipsRun,
    /// As the expert, but feels for a loose connector before the plug is out.
    Touches,
    /// As the expert, but plugs in again ten seconds after unplugging.
    WaitsTooShort,
}

/// Works on `bench` until the report is handed in.
///
/// # Errors
/// The bench refuses a step: the machine is none of those that this hand knows.
pub fn work(persona: Persona, scenario: &Scenario, bench: Bench) -> Result<Bench, StepError> {
    without_breaks(work_in_slices(persona, scenario, bench))
}

/// The same in slices of one step each, so that whoever waits can do something else in between.
///
/// # Errors
/// As [`work`].
pub async fn work_in_slices(
    persona: Persona,
    scenario: &Scenario,
    bench: Bench,
) -> Result<Bench, StepError> {
    let mut hands = Technician {
        bench,
        scenario,
        persona,
    };
    match persona {
        Persona::Expert
        | Persona::SkipsProof
        | Persona::SkipsRun
        | Persona::Touches
        | Persona::WaitsTooShort => {
            hands.prove_and_repair().await?;
        }
        Persona::Guesser => hands.guess().await?,
        Persona::Swapper => hands.swap().await?,
    }
    Ok(hands.bench)
}

struct Technician<'a> {
    bench: Bench,
    scenario: &'a Scenario,
    persona: Persona,
}

/// Steps that could be taken next, how long they take, and which faults what they show rules out.
struct Plan {
    steps: Vec<ScriptStep>,
    seconds: f64,
    rules_out: Vec<bool>,
}

/// What the notebook holds of a diagnosis: numbers of readings, and faults not yet ruled out.
#[derive(Default)]
struct Diagnosis {
    readings: Vec<usize>,
    open: Vec<usize>,
}

// What hands do.
impl Technician<'_> {
    fn act(&mut self, action: Action) -> Done {
        Ok(self.bench.act(&action)?)
    }

    /// Does it unless it is so already.
    fn see_to(&mut self, action: Action) {
        let _ = self.bench.act(&action);
    }

    async fn step(&mut self, step: ScriptStep) -> Done {
        let done = step.run(&mut self.bench);
        SliceEnd::default().await;
        done
    }

    fn mode(&self) -> ControlMode {
        self.bench.machine().control().control_status().mode
    }

    fn unplug(&mut self) {
        self.see_to(Action::Unplug);
    }

    /// Power off until the control has forgotten, and on again.
    async fn power_up(&mut self) -> Done {
        if self.persona == Persona::WaitsTooShort {
            self.unplug();
            self.step(ScriptStep::Wait { s: 10 }).await?;
        } else {
            self.step(ScriptStep::PowerDown).await?;
        }
        self.act(Action::Plug)?;
        self.step(ScriptStep::Wait { s: 3 }).await?;
        survey::leave_kept_hold(&mut self.bench);
        Ok(())
    }

    /// The entry gesture, again if a worn dial spoilt it; false when it never works.
    async fn enter(&mut self) -> Result<bool, StepError> {
        self.see_to(Action::CloseLid);
        let steps = entry_steps(&self.bench.machine().board().gesture);
        for _ in 0..TRIES {
            if self.mode() != ControlMode::Idle {
                self.power_up().await?;
            }
            // The hand rests, so that the last try is over.
            self.step(ScriptStep::Wait { s: 8 }).await?;
            if !steps.iter().all(|step| step.run(&mut self.bench).is_ok()) {
                self.see_to(Action::CloseLid);
                continue;
            }
            self.step(ScriptStep::Wait { s: 1 }).await?;
            if self.mode() == ControlMode::Service {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Chooses a position. Where a worn dial has lost count the pointer goes once more round, past the
    /// index, from which the control counts anew.
    async fn choose(&mut self, to: u8) -> Done {
        self.step(ScriptStep::Point { to, every_ms: 200 }).await?;
        for _ in 0..TRIES {
            if self.bench.machine().control().position() == to {
                break;
            }
            let detents = self
                .bench
                .machine()
                .board()
                .panel
                .selector
                .turn()
                .unwrap_or(0);
            self.step(ScriptStep::Turn {
                way: Direction::Right,
                detents,
                every_ms: 200,
            })
            .await?;
        }
        self.step(ScriptStep::Wait { s: 1 }).await
    }

    /// Starts a routine from the menu; false when this board has none such.
    async fn start(&mut self, routine: Routine) -> Result<bool, StepError> {
        let Some(to) = self.bench.machine().board().position_of(routine) else {
            return Ok(false);
        };
        self.choose(to).await?;
        self.step(ScriptStep::Tap(Button::Start)).await?;
        Ok(true)
    }

    async fn stop(&mut self) -> Done {
        self.step(ScriptStep::Tap(Button::Stop)).await?;
        self.step(ScriptStep::Wait { s: 1 }).await?;
        Ok(())
    }

    async fn leave_service(&mut self) -> Done {
        for _ in 0..3 {
            if self.mode() == ControlMode::Service {
                self.stop().await?;
            }
        }
        Ok(())
    }

    /// Reads every stored code and notes each new one.
    async fn read_codes(&mut self) -> Done {
        let board = self.bench.machine().board();
        let page = board.service.page;
        // Flashes and digits in turn take their time.
        let s = if board.lamps.signs.take_time() { 15 } else { 3 };
        if !self.start(Routine::Recall).await? {
            return Ok(());
        }
        self.step(ScriptStep::Watch { s }).await?;
        while let Some(code) = self.bench.machine().control().control_status().code_shown {
            if !self.bench.noted_codes().iter().any(|(_, c)| c == code) {
                self.act(Action::NoteCode(code))?;
            }
            self.step(ScriptStep::Tap(page)).await?;
            self.step(ScriptStep::Watch { s }).await?;
        }
        self.stop().await?;
        Ok(())
    }

    /// Rest without power, service mode, codes. A dark machine says nothing.
    async fn first_look(&mut self) -> Done {
        if self.mode().is_without_supply() {
            return Ok(());
        }
        self.power_up().await?;
        if self.enter().await? {
            self.read_codes().await?;
            self.leave_service().await?;
        }
        Ok(())
    }

    /// Plug out, panels off, and the circuit proved dead with a meter that is proved before and after.
    async fn make_dead(&mut self) -> Done {
        if self.persona == Persona::Touches {
            self.see_to(Action::OpenCabinet);
            self.act(Action::Inspect(Component::Harness))?;
        }
        self.unplug();
        self.see_to(Action::OpenCabinet);
        if self.persona == Persona::SkipsProof {
            self.act(Action::Discharge)?;
            return Ok(());
        }
        self.test_meter()?;
        let volts = self.probe(MeterMode::VoltsDc, Pin::BulkPlus, Pin::BulkMinus)?;
        if !matches!(volts, Display::Value(v) if v.abs() < DEAD_V) {
            self.act(Action::Discharge)?;
            self.probe(MeterMode::VoltsDc, Pin::BulkPlus, Pin::BulkMinus)?;
        }
        self.test_meter()?;
        Ok(())
    }

    /// Tries the meter on the proving source, and puts the spare leads on if it fails.
    fn test_meter(&mut self) -> Done {
        self.act(Action::TestMeter)?;
        if self
            .bench
            .meter_tests()
            .last()
            .is_some_and(|t| !t.is_good())
        {
            self.act(Action::ReplaceLeads)?;
            self.act(Action::TestMeter)?;
        }
        Ok(())
    }

    fn probe(&mut self, mode: MeterMode, red: Pin, black: Pin) -> Result<Display, StepError> {
        self.act(probe(mode, red, black))?;
        let reading = self.bench.notebook().last();
        Ok(reading.map_or(Display::Dead, |r| r.shown))
    }

    /// Tells the customer what it comes to with this part: all parts that are in, and as much time as a good
    /// technician needs for the whole job, or as the customer's limit leaves.
    fn quote(&mut self, number: &str) -> Done {
        let in_already = self
            .bench
            .repairs()
            .iter()
            .filter_map(|(_, repair)| match repair {
                Repair::Fitted { part } => Some(part.clone()),
                Repair::PutRight(_) => None,
            });
        let parts: Vec<String> = in_already.chain([number.to_owned()]).collect();
        let minutes = 0;
        let prices = self.bench.quoted(&Quote {
            parts: parts.clone(),
            minutes,
        });
        let left = (self.scenario.budget - prices).max(0.0);
        let affordable = 60.0 * left / self.bench.rates().labour_per_hour;
        let minutes = self.scenario.par_minutes.min(affordable) as u16;
        self.act(Action::Quote(Quote { parts, minutes }))
    }

    /// Asks the customer, buys a part and fits it.
    async fn fit(&mut self, number: &str) -> Done {
        self.quote(number)?;
        self.act(Action::Order(number.to_owned()))?;
        self.open_up(Action::Fit(number.to_owned())).await
    }

    /// Puts a component right without a part.
    async fn work_by_hand(&mut self, component: Component) -> Done {
        self.see_to(Action::OpenLid);
        self.open_up(Action::PutRight(component)).await
    }

    /// Opens something that may hold water: what is in the tub is bailed out first, once it has cooled, and taps are
    /// shut off meanwhile.
    async fn open_up(&mut self, action: Action) -> Done {
        if self.bench.caution(&action) == Some(Caution::Flood) {
            self.let_cool(&Action::BailOut).await?;
            self.act(Action::BailOut)?;
        }
        let under_pressure = self.bench.caution(&action) == Some(Caution::HotWater);
        if under_pressure {
            self.act(Action::ShutTaps)?;
        }
        self.act(action)?;
        if under_pressure {
            self.act(Action::PutRight(Component::Taps))?;
        }
        Ok(())
    }

    /// Waits until the water in the tub burns nobody who does this.
    async fn let_cool(&mut self, action: &Action) -> Done {
        for _ in 0..COOLS_MIN {
            if self.bench.caution(action) != Some(Caution::Scald) {
                break;
            }
            self.step(ScriptStep::Wait { s: 60 }).await?;
        }
        Ok(())
    }

    /// Panels on, plug in.
    async fn close_up(&mut self) -> Done {
        self.see_to(Action::LiftProbes);
        self.see_to(Action::CloseLid);
        self.see_to(Action::CloseCabinet);
        self.see_to(Action::ResetOutlet);
        self.see_to(Action::Plug);
        self.step(ScriptStep::Wait { s: 3 }).await?;
        Ok(())
    }

    /// Recalibrates with the laundry out of the basket, where the control would weigh it in with the machine; false
    /// when it was broken off or service mode cannot be entered.
    async fn recalibrate(&mut self) -> Result<bool, StepError> {
        self.let_cool(&Action::UnloadBasket).await?;
        survey::empty_basket(&mut self.bench);
        let began = self.bench.now();
        if !self.enter().await? {
            return Ok(false);
        }
        self.start(Routine::Recalibrate).await?;
        let limit_s = RECALIBRATION_S;
        let what = Condition::ServiceReady;
        let _ = ScriptStep::Until { what, limit_s }.run(&mut self.bench);
        Ok(self.passed(MilestoneKind::CalibrationPassed, began))
    }

    /// Runs the short program with the customer's laundry to its end; false when the control stops it.
    async fn run(&mut self) -> Result<bool, StepError> {
        survey::load_basket(&mut self.bench);
        let began = self.bench.now();
        let programs = &self.bench.machine().board().programs;
        let short = programs.iter().find(|p| p.name == "program-short");
        let to = short.or(programs.first()).map_or(0, |p| p.position);
        self.choose(to).await?;
        self.step(ScriptStep::Tap(Button::Start)).await?;
        self.step(ScriptStep::Wait { s: 2 }).await?;
        for _ in 0..PROGRAM_S {
            if self.mode() != ControlMode::Program {
                break;
            }
            self.bench.wait(Span::from_s(1));
            SliceEnd::default().await;
        }
        Ok(self.passed(MilestoneKind::ProgramFinished, began))
    }

    fn passed(&self, kind: MilestoneKind, since: Time) -> bool {
        self.bench.passed(kind, since)
    }

    /// Recalibration and a run, and what they bring to light.
    async fn try_machine(&mut self) -> Result<bool, StepError> {
        self.close_up().await?;
        if self.mode() != ControlMode::Idle {
            self.power_up().await?;
        }
        let calibrated = self.recalibrate().await?;
        if !calibrated {
            self.read_codes_again().await?;
            survey::load_basket(&mut self.bench);
            return Ok(false);
        }
        self.leave_service().await?;
        if self.persona == Persona::SkipsRun {
            return Ok(true);
        }
        let ran = self.run().await?;
        if ran && self.bench.leak_check_due().is_some() {
            self.act(Action::CheckForLeaks)?;
        }
        if !ran {
            self.power_up().await?;
            if self.enter().await? {
                self.read_codes_again().await?;
            }
        }
        Ok(ran)
    }

    async fn read_codes_again(&mut self) -> Done {
        if self.mode() == ControlMode::Service {
            self.read_codes().await?;
            self.leave_service().await?;
        }
        Ok(())
    }

    fn report(
        &mut self,
        causes: Vec<String>,
        part: Option<String>,
        proof: Vec<usize>,
        advice: Advice,
    ) -> Done {
        // Before the invoice the customer sees that the machine runs.
        if self.bench.demonstration_due() {
            self.act(Action::Ask(Question::Demonstration))?;
        }
        let verdict = if causes.is_empty() {
            Verdict::NothingWrong
        } else {
            Verdict::CausesNamed
        };
        self.act(Action::Report(Report {
            causes,
            part,
            proof,
            looks: Vec::new(),
            advice,
            verdict,
        }))?;
        Ok(())
    }
}

fn probe(mode: MeterMode, red: Pin, black: Pin) -> Action {
    let grip = Grip::Clips;
    Action::Probe {
        mode,
        red,
        black,
        grip,
    }
}

// The expert.
impl Technician<'_> {
    async fn prove_and_repair(&mut self) -> Done {
        self.first_look().await?;
        let hidden: Vec<FailureMode> = self.bench.hidden().to_vec();
        let mut proof = Vec::new();
        let advice = advice::due(&self.bench, self.scenario.par_minutes);
        if advice == Advice::Replace {
            proof.extend(self.diagnose(&hidden).await?);
        } else {
            for mode in &hidden {
                proof.extend(self.diagnose(&hidden).await?);
                self.repair(mode).await?;
                self.try_machine().await?;
            }
            if hidden.is_empty() {
                self.try_machine().await?;
            }
        }
        let part = hidden.iter().filter_map(|m| self.part_for(m)).next_back();
        let causes = hidden.iter().map(|m| m.id.clone()).collect();
        self.report(causes, part, proof, advice)?;
        Ok(())
    }

    fn part_for(&self, mode: &FailureMode) -> Option<String> {
        self.bench.cure(mode).map(|part| part.number.clone())
    }

    async fn repair(&mut self, mode: &FailureMode) -> Done {
        if let Some(number) = self.part_for(mode) {
            self.fit(&number).await?;
        } else if mode.component.can_be_put_right() {
            self.work_by_hand(mode.component).await?;
        }
        // A fuse blows for a reason: once that is mended, it is its turn.
        let blown = self.bench.machine().plant().supply().fuse_blown;
        if let Some(number) = self.bench.new_part(Component::LineFuse).filter(|_| blown) {
            let number = number.number.clone();
            self.fit(&number).await?;
        }
        // What is left is learned anew by recalibration.
        Ok(())
    }

    /// Measures and looks until no rival is left that could be told apart, or nothing more tells.
    /// Numbers of the readings that do.
    async fn diagnose(&mut self, hidden: &[FailureMode]) -> Result<Vec<usize>, StepError> {
        let mut diagnosis = Diagnosis {
            open: self.rivals(hidden),
            ..Diagnosis::default()
        };
        self.make_dead().await?;
        let plans = self.dead_plans().await;
        self.carry_out(plans, &mut diagnosis).await?;
        if self.scenario.live_tests_allowed && !diagnosis.open.is_empty() {
            self.measure_live(&mut diagnosis).await?;
            self.make_dead().await?;
        }
        Ok(diagnosis.readings)
    }

    /// Faults, by their place in the catalogue, of the other components that the service sheet lists for
    /// the codes noted; without a code, of all others. Of several faults, none alone explains the machine.
    fn rivals(&self, hidden: &[FailureMode]) -> Vec<usize> {
        let suspects = self.suspects();
        let tripped = self.bench.view().outlet_tripped;
        let rival = |m: &FailureMode| {
            let listed = suspects.is_empty() || suspects.contains(&m.component);
            // A tripped outlet speaks of a leak to ground and of nothing else; one that holds, of none.
            listed
                && m.leaks_to_ground() == tripped
                && hidden.iter().all(|h| h.component != m.component)
                || hidden.len() > 1 && hidden.contains(m)
        };
        let modes = self.bench.modes().iter().enumerate();
        modes.filter(|(_, m)| rival(m)).map(|(n, _)| n).collect()
    }

    /// What the service sheet lists for the codes noted, in its order.
    fn suspects(&self) -> Vec<Component> {
        let board = self.bench.machine().board();
        let monitors = self.bench.noted_codes().iter();
        let monitors = monitors.filter_map(|(_, code)| board.monitor_of(code));
        let entries = monitors.filter_map(|m| board.sheet.iter().find(|e| e.monitor == m));
        entries.flat_map(|entry| entry.suspects.clone()).collect()
    }

    /// Everything that an ohmmeter and a look can show of the machine as it lies open.
    async fn dead_plans(&self) -> Vec<Plan> {
        let ohms = |red, black| vec![ScriptStep::Do(probe(MeterMode::Ohms, red, black))];
        let loads = LOADS
            .iter()
            .map(|(red, black)| ohms(load(*red), load(*black)));
        let terminals = Terminal::ALL.iter();
        let wires = terminals.map(|t| ohms(Pin::Wire(*t, Side::Board), load(*t)));
        let farads = probe(
            MeterMode::Microfarads,
            load(Terminal::Cap1),
            load(Terminal::Cap2),
        );
        let fixed = [
            ohms(Pin::BulkPlus, Pin::BulkMinus),
            ohms(Pin::PlugLine, Pin::FuseIn),
            ohms(Pin::FuseIn, Pin::FuseOut),
            ohms(Pin::FuseOut, load(Terminal::CordLine)),
            ohms(Pin::FuseOut, load(Terminal::CordNeutral)),
            vec![ScriptStep::Do(farads)],
        ];
        let insulation = INSULATED.iter().map(|red| {
            let plug = Connector::Load(match red {
                Pin::Wire(terminal, _) => terminal.component(),
                _ => Component::Cord,
            });
            vec![
                ScriptStep::Do(Action::Pull(plug.clone())),
                ScriptStep::Do(probe(MeterMode::Insulation, *red, Pin::PlugEarth)),
                ScriptStep::Do(Action::Seat(plug)),
            ]
        });
        let looks = Component::ALL.iter().map(|component| {
            let look = ScriptStep::Do(Action::Inspect(*component));
            match component {
                Component::Laundry | Component::Tub => vec![
                    ScriptStep::Do(Action::OpenLid),
                    look,
                    ScriptStep::Do(Action::CloseLid),
                ],
                _ => vec![look],
            }
        });
        let buckets = WaterPipe::ALL.iter().map(|pipe| {
            vec![
                ScriptStep::Do(Action::ShutTaps),
                ScriptStep::Do(Action::BucketTest(*pipe)),
                ScriptStep::Do(Action::PutRight(Component::Taps)),
            ]
        });
        let mut plans = Vec::new();
        let readings = loads.chain(wires).chain(fixed).chain(insulation);
        for steps in readings.chain(looks).chain(buckets) {
            plans.extend(self.think_through(&self.bench, steps));
            SliceEnd::default().await;
        }
        plans
    }

    /// What these steps would show; none when they cannot be taken or would do harm.
    fn think_through(&self, bench: &Bench, steps: Vec<ScriptStep>) -> Option<Plan> {
        let mut bench = bench.clone();
        let (began, read) = (bench.now(), bench.notebook().len());
        let harm = bench.events().len();
        if !steps.iter().all(|step| step.run(&mut bench).is_ok()) || bench.events().len() > harm {
            return None;
        }
        let mut rules_out = vec![false; bench.modes().len()];
        let read = bench.notebook().starting_at(read).iter();
        let seen = read.map(|r| r.rules_out.as_slice());
        // All that is done by hand takes time.
        let by_hand = bench.log().seen_by_hand().filter(|(at, _)| *at > began);
        for out in seen.chain(by_hand.map(|(_, out)| out)) {
            for (n, out) in out.iter().enumerate() {
                rules_out[n] |= *out;
            }
        }
        Some(Plan {
            steps,
            seconds: bench.now().since(began).seconds(),
            rules_out,
        })
    }

    /// The plan that rules out most in its time, again and again until none rules out any more.
    async fn carry_out(&mut self, plans: Vec<Plan>, diagnosis: &mut Diagnosis) -> Done {
        loop {
            let worth = |plan: &Plan| {
                let open = diagnosis.open.iter();
                open.filter(|n| plan.rules_out[**n]).count() as f64 / plan.seconds
            };
            let best = (plans.iter()).max_by(|a, b| worth(a).total_cmp(&worth(b)));
            // A fault is seen for oneself, even where it has no rival.
            let Some(best) = best.filter(|plan| worth(plan) > 0.0) else {
                return Ok(());
            };
            let read = self.bench.notebook().len();
            for step in &best.steps {
                self.step(step.clone()).await?;
            }
            diagnosis.readings.extend(read..self.bench.notebook().len());
            diagnosis.open.retain(|n| !best.rules_out[*n]);
        }
    }

    /// Drives one load after another from service mode and measures what arrives, panels off and
    /// hands away.
    async fn measure_live(&mut self, diagnosis: &mut Diagnosis) -> Done {
        self.see_to(Action::LiftProbes);
        self.see_to(Action::CloseLid);
        self.act(Action::Plug)?;
        self.step(ScriptStep::Wait { s: 3 }).await?;
        if !self.enter().await? {
            return Ok(());
        }
        let neutral = Pin::Wire(Terminal::CordNeutral, Side::Board);
        for (routine, hot, cold) in TESTS {
            if diagnosis.open.is_empty() {
                break;
            }
            // What the test would show is thought through on a machine that stands as this one.
            let mut trial = Technician {
                bench: self.bench.clone(),
                scenario: self.scenario,
                persona: self.persona,
            };
            if !trial.start(routine).await? {
                continue;
            }
            trial.step(ScriptStep::Wait { s: 3 }).await?;
            let across = [
                (MeterMode::VoltsAc, load(hot), load(cold)),
                (MeterMode::AmpsClamp, load(hot), load(cold)),
                (MeterMode::VoltsAc, Pin::Wire(hot, Side::Board), neutral),
                (MeterMode::VoltsAc, load(Terminal::LockLineOut), neutral),
                (MeterMode::AmpsClamp, load(Terminal::MotorCommon), neutral),
            ];
            let sensors = SENSORS.iter().flat_map(|(signal, ground)| {
                let sides = [Side::Board, Side::Load].into_iter();
                sides.map(|side| {
                    let ground = Pin::Wire(*ground, Side::Board);
                    (MeterMode::VoltsDc, Pin::Wire(*signal, side), ground)
                })
            });
            let pulses = (
                MeterMode::Hertz,
                Pin::Wire(Terminal::PickupOut, Side::Board),
                Pin::Wire(Terminal::PickupGround, Side::Board),
            );
            let probes = across.into_iter().chain(sensors).chain([pulses]);
            let mut plans = Vec::new();
            for (mode, red, black) in probes {
                let steps = vec![ScriptStep::Do(probe(mode, red, black))];
                plans.extend(self.think_through(&trial.bench, steps));
                SliceEnd::default().await;
            }
            let tells = |plan: &Plan| diagnosis.open.iter().any(|n| plan.rules_out[*n]);
            if !plans.iter().any(tells) {
                continue;
            }
            self.start(routine).await?;
            self.step(ScriptStep::Wait { s: 3 }).await?;
            self.carry_out(plans, diagnosis).await?;
            self.stop().await?;
            self.step(ScriptStep::Wait { s: 10 }).await?;
            if self.mode() != ControlMode::Service && !self.enter().await? {
                return Ok(());
            }
        }
        self.see_to(Action::LiftProbes);
        self.leave_service().await?;
        Ok(())
    }
}

const fn load(terminal: Terminal) -> Pin {
    Pin::Wire(terminal, Side::Load)
}

/// Sensor signals and their grounds.
const SENSORS: [(Terminal, Terminal); 3] = [
    (Terminal::PressureOut, Terminal::PressureGround),
    (Terminal::Therm1, Terminal::Therm2),
    (Terminal::Cam1, Terminal::Cam2),
];

/// Tests of loads, with the two ends of what each drives.
const TESTS: [(Routine, Terminal, Terminal); 7] = [
    (Routine::TestPump, Terminal::Pump1, Terminal::Pump2),
    (Routine::TestCold, Terminal::Cold1, Terminal::Cold2),
    (Routine::TestHot, Terminal::Hot1, Terminal::Hot2),
    (Routine::TestLock, Terminal::LockCoil1, Terminal::LockCoil2),
    (Routine::TestClutch, Terminal::Clutch1, Terminal::Clutch2),
    (Routine::TestMotorA, Terminal::MotorA, Terminal::MotorCommon),
    (Routine::TestMotorB, Terminal::MotorB, Terminal::MotorCommon),
];

// The other two.
impl Technician<'_> {
    /// Up to three parts, the likeliest first, each tried with a recalibration and a run.
    async fn guess(&mut self) -> Done {
        self.first_look().await?;
        let mut likely: Vec<(f64, &FailureMode)> = Vec::new();
        let modes = self.bench.modes().to_vec();
        for component in self.suspects() {
            let of_it: Vec<&FailureMode> =
                modes.iter().filter(|m| m.component == component).collect();
            let weight = of_it.iter().map(|m| m.weight).sum();
            let commonest = of_it.iter().max_by(|a, b| a.weight.total_cmp(&b.weight));
            if let Some(mode) = commonest
                && !likely.iter().any(|(_, m)| m.component == component)
            {
                likely.push((weight, mode));
            }
        }
        likely.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut last = None;
        for (_, mode) in likely.iter().take(3) {
            self.unplug();
            self.see_to(Action::OpenCabinet);
            self.see_to(Action::Discharge);
            self.repair(mode).await?;
            last = Some(*mode);
            if self.try_machine().await? {
                break;
            }
        }
        let part = last.and_then(|mode| self.part_for(mode));
        let causes = last.iter().map(|mode| mode.id.clone()).collect();
        self.report(causes, part, Vec::new(), Advice::None)?;
        Ok(())
    }

    /// A new control, by the book and without a measurement.
    async fn swap(&mut self) -> Done {
        self.first_look().await?;
        let modes = self.bench.modes().to_vec();
        let of_board = modes
            .iter()
            .filter(|m| m.component == Component::Board && !m.needs_no_part());
        let mode = of_board.max_by(|a, b| a.weight.total_cmp(&b.weight));
        let Some(mode) = mode else {
            return Ok(());
        };
        self.make_dead().await?;
        self.repair(mode).await?;
        self.try_machine().await?;
        let part = self.part_for(mode);
        self.report(vec![mode.id.clone()], part, Vec::new(), Advice::None)?;
        Ok(())
    }
}
