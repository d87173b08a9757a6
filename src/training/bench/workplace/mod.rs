//! The bench itself: a machine, a person's hands, a meter, a parts counter and a clock.

mod commands;
mod evidence;
mod safety;
mod set_up;

use super::action::{Action, Grip, MeterMode};
use super::appliance::{Appliance, Question};
use super::cost::{self, Consumable};
use super::inspect::Found;
use super::last_wash::LastWash;
use super::leak_check::{LeakCheck, holds_water};
use super::log::{BenchLog, Entries, LogEntry, Repair};
use super::meter::{Follower, Meter, MeterTest};
use super::milestone::{Milestone, MilestoneDetector, MilestoneKind};
use super::part::{Billing, Condition, Part, Rates, cure, current};
use super::quote::{Quote, QuoteGiven};
use super::report::Report;
use super::view::{BenchView, Event, PartInHand, Reading, Refusal};
use crate::slices::{self, without_breaks};
use detent_simulation::controller::{ControlMode, Tries};
use detent_simulation::interface::{Component, Connector, Pin};
use detent_simulation::machine::Machine;
use detent_simulation::plant::{FailureMode, Param};
use detent_simulation::units::{Span, TICKS_PER_S, Time};
use rand_chacha::ChaCha8Rng;
pub use safety::{TOUCH_V, hands_inside};
pub use set_up::Setup;

/// A bench with one machine on it.
#[derive(Clone)]
pub struct Bench {
    machine: Machine,
    modes: Vec<FailureMode>,
    counter: Vec<Part>,
    rates: Rates,
    billing: Billing,
    customer_limit: Option<f64>,
    live_tests_allowed: bool,
    hints_allowed: bool,
    cabinet_open: bool,
    pulled: Vec<Connector>,
    probes: Option<(MeterMode, Pin, Pin)>,
    grip: Grip,
    meter: Meter,
    follower: Follower,
    /// The meter's error where the probes lie, −1 to 1 of the most that [`meter::noisy`](super::meter::noisy) adds:
    /// drawn with each reading, and the same for as long as they lie there.
    meter_error: f64,
    parts: Vec<PartInHand>,
    /// Water on the floor that was wiped up, L.
    wiped_l: f64,
    spent: f64,
    waited_hours: f64,
    log: BenchLog,
    milestone_detector: MilestoneDetector,
    report: Option<Report>,
    hidden: Vec<FailureMode>,
    began: Time,
    seed: u64,
    /// The customer called back: nothing here is at the customer's cost.
    called_back: bool,
    last_wash: LastWash,
    rng: ChaCha8Rng,
    /// What used parts are worth: drawn apart, so that buying one changes no reading.
    counter_rng: ChaCha8Rng,
}

impl Bench {
    /// The technician arrives: work time and the record of deeds count from here.
    pub fn begin(&mut self) {
        self.began = self.machine.now();
    }

    /// One tick in which the person does nothing new.
    pub fn step(&mut self) {
        self.machine.step();
        let seen = self.log.milestones().len();
        self.milestone_detector
            .observe(&self.machine, &mut self.log);
        let news = self.log.milestones().starting_at(seen);
        if (news.iter()).any(|l| l.kind == MilestoneKind::CalibrationPassed) {
            // A board that had only forgotten this machine knows it again.
            self.put_right(Component::Board);
        }
    }

    /// Waits.
    pub fn wait(&mut self, span: Span) {
        for _ in 0..span.0 {
            self.step();
        }
    }

    /// Does one thing. Time passes while it is done.
    ///
    /// # Errors
    /// A [`Refusal`] when it is not physically possible. Nothing has changed then.
    pub fn act(&mut self, action: &Action) -> Result<(), Refusal> {
        without_breaks(self.act_in_slices(action))
    }

    /// The same in slices of a few milliseconds each: some things take half an hour.
    ///
    /// # Errors
    /// As [`Bench::act`].
    pub(crate) async fn act_in_slices(&mut self, action: &Action) -> Result<(), Refusal> {
        if self.report.is_some() {
            return Err(Refusal::Finished);
        }
        self.refuse(action)?;
        self.log.push(LogEntry::Action {
            at: self.machine.now(),
            action: action.clone(),
        });
        self.judge_safety(action);
        let span = match action {
            Action::Fit(number) => self.part(number).map_or(Span::ZERO, Part::fitting),
            other => cost::span(other),
        };
        // The way to the outlet comes before the plug goes in: what a control does as its supply comes up is
        // seen and heard. All else takes its time from the moment it is done; a probe settles before it is read.
        if matches!(action, Action::Plug) {
            slices::wait(self, span).await;
            self.perform(action);
        } else {
            self.perform(action);
            slices::wait(self, span).await;
        }
        match *action {
            Action::Probe {
                mode, red, black, ..
            } => self.note_reading(mode, red, black),
            Action::TestMeter => {
                let test = self.meter.tested(self.machine.now());
                self.log.push(LogEntry::MeterTest(test));
            }
            Action::Inspect(component) => self.note_finding(component),
            Action::Quote(ref quote) => self.note_answer(quote),
            Action::CheckForLeaks => self.note_leaks(),
            Action::BucketTest(pipe) => self.note_bucket(pipe),
            _ => {}
        }
        Ok(())
    }
}

/// What can be looked up without changing anything.
impl Bench {
    /// The machine.
    pub fn machine(&self) -> &Machine {
        &self.machine
    }

    /// The machine, for tools that are not a person at the bench (the simulator, tests).
    pub fn machine_mut(&mut self) -> &mut Machine {
        &mut self.machine
    }

    /// Ticks since the beginning.
    pub fn now(&self) -> Time {
        self.machine.now()
    }

    /// The customer looks and listens, one [`super::LOOK`] after the last time.
    pub(crate) fn customer_looks(&mut self) {
        self.last_wash.look(&self.machine);
    }

    /// What could be seen and heard in the customer's last wash.
    pub fn last_wash(&self) -> &LastWash {
        &self.last_wash
    }

    /// Every failure mode that the machine could have.
    pub fn modes(&self) -> &[FailureMode] {
        &self.modes
    }

    /// What the counter sells.
    pub fn counter(&self) -> &[Part] {
        &self.counter
    }

    /// The part that an order for `number` brings.
    pub fn part(&self, number: &str) -> Option<&Part> {
        current(&self.counter, number)
    }

    /// Whether a part fits this machine.
    pub fn fits(&self, part: &Part) -> bool {
        part.fits(&self.machine.board().id)
    }

    /// The new part that cures this failure mode in this machine; none where hands alone
    /// cure it.
    pub fn cure(&self, mode: &FailureMode) -> Option<&Part> {
        cure(&self.counter, &self.machine.board().id, mode)
    }

    /// The new part for a component of this machine, if the counter sells one.
    pub fn new_part(&self, component: Component) -> Option<&Part> {
        self.counter.iter().find(|part| {
            part.component == component
                && part.condition == Condition::New
                && part.superseded_by.is_none()
                && self.fits(part)
        })
    }

    /// What the parts come to that this machine needed, whole units of money: those that end its faults, and a line
    /// fuse where one has blown for their sake.
    pub fn needed_parts(&self) -> f64 {
        let cures = self.hidden.iter().filter_map(|mode| self.cure(mode));
        let blown = self.machine.plant().supply().fuses_blown > 0;
        let fuse = self.new_part(Component::LineFuse).filter(|_| blown);
        cures.chain(fuse).map(|part| part.price).sum()
    }

    /// What the shop charges.
    pub fn rates(&self) -> Rates {
        self.rates
    }

    /// What the shop's invoices add to work and parts.
    pub fn billing(&self) -> Billing {
        self.billing
    }

    /// Work time so far, min, without waits for parts.
    pub fn minutes(&self) -> f64 {
        self.now().since(self.began).0 as f64 / (60 * TICKS_PER_S) as f64
    }

    /// What the work so far costs, whole units.
    pub fn labour(&self) -> f64 {
        self.rates.labour(self.minutes())
    }

    /// What work by hand has used up so far, oldest first.
    pub fn used_up(&self) -> impl Iterator<Item = Consumable> {
        (self.history().iter())
            .filter_map(|(_, action)| match action {
                Action::PutRight(component) => Some(cost::consumables(*component)),
                _ => None,
            })
            .flatten()
            .copied()
    }

    /// What that costs, whole units.
    pub fn consumables(&self) -> f64 {
        let prices = &self.billing.consumables;
        self.used_up().fold(0.0, |sum, used| sum + prices.of(used))
    }

    /// What the job comes to so far: parts, work and what the work used up, whole units.
    pub fn bill(&self) -> f64 {
        self.spent + self.labour() + self.consumables()
    }

    /// What a quote comes to here: see [`Quote::amount`].
    pub fn quoted(&self, quote: &Quote) -> f64 {
        quote.amount(&self.counter, &self.rates)
    }

    /// Tries of the meter on the proving source.
    pub fn meter_tests(&self) -> Entries<'_, &MeterTest> {
        self.log.meter_tests()
    }

    /// When the technician arrived.
    pub fn began(&self) -> Time {
        self.began
    }

    /// The technician's tries at the entry gesture, oldest first. Whoever uses the panel to choose a
    /// program makes no try: see [`Tries::meant_since`].
    pub fn tries(&self) -> Tries<'_> {
        self.machine.tries().meant_since(self.began.seconds())
    }

    /// The faults that were put into the machine, cured or not.
    pub fn hidden(&self) -> &[FailureMode] {
        &self.hidden
    }

    /// Everything done so far, with its time.
    pub fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.log.actions()
    }

    /// What the machine went through so far.
    pub fn milestones(&self) -> Entries<'_, &Milestone> {
        self.log.milestones()
    }

    /// Parts fitted and components put right so far.
    pub fn repairs(&self) -> Entries<'_, (Time, &Repair)> {
        self.log.repairs()
    }

    /// Readings so far.
    pub fn notebook(&self) -> Entries<'_, &Reading> {
        self.log.readings()
    }

    /// What was found by looking so far.
    pub fn found(&self) -> Entries<'_, &Found> {
        self.log.found()
    }

    /// Quotes given so far, each with the customer's answer.
    pub fn quotes(&self) -> Entries<'_, &QuoteGiven> {
        self.log.quotes()
    }

    /// What was opened that water comes to and has not been looked at since with water in it, if anything was: the
    /// last of it. A check counts with water in the tub, or after a program that ran to its end.
    pub fn leak_check_due(&self) -> Option<Component> {
        let opened = |action: &Action| match action {
            Action::Fit(number) => self.part(number).map(|part| part.component),
            Action::PutRight(component) => Some(*component),
            _ => None,
        };
        let (since, component) = self.history().iter().rev().find_map(|(at, action)| {
            let component = opened(action).filter(|c| holds_water(*c))?;
            Some((at, component))
        })?;
        let washed = self.first(MilestoneKind::ProgramFinished, since);
        let tells = |check: &LeakCheck| {
            check.at >= since && (check.has_water() || washed.is_some_and(|at| at <= check.at))
        };
        let checked = self.log.leak_checks().iter().any(tells);
        (!checked).then_some(component)
    }

    /// Whether a program has run to its end since the last repair, and the customer has not been shown since then that
    /// the machine runs.
    pub fn demonstration_due(&self) -> bool {
        let repaired = self.repairs().last().map_or(self.began, |(at, _)| at);
        let ran = self.first(MilestoneKind::ProgramFinished, repaired);
        let shown = |(at, question): (Time, Question)| {
            question == Question::Demonstration && ran.is_some_and(|ran| ran <= at)
        };
        ran.is_some() && !self.asked().any(shown)
    }

    /// Seed of every random draw.
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// What the machine's plate says.
    pub fn appliance(&self) -> Appliance {
        Appliance::of(&self.machine.board().id, self.seed)
    }

    /// What the customer was asked so far, oldest first.
    pub fn asked(&self) -> impl Iterator<Item = (Time, Question)> {
        self.history()
            .iter()
            .filter_map(|(at, action)| match action {
                Action::Ask(question) => Some((at, *question)),
                _ => None,
            })
    }

    /// Whether this is a visit after a call-back, which costs the customer nothing.
    pub fn is_called_back(&self) -> bool {
        self.called_back
    }

    /// Whether the machine as it stands cannot wash: a fault is in it, a connector hangs loose, the taps are shut, or
    /// the control stands in a fault hold or in service mode.
    pub(crate) fn leaves_something(&self) -> bool {
        let plant = self.machine.plant();
        let mode = self.machine.control().control_status().mode;
        plant.faults().next().is_some()
            || !self.pulled.is_empty()
            || plant.taps_shut()
            || matches!(mode, ControlMode::Hold | ControlMode::Service)
    }

    /// Codes noted so far.
    pub fn noted_codes(&self) -> Entries<'_, (Time, u8)> {
        self.log.noted_codes()
    }

    /// Unsafe or mistaken things so far.
    pub fn events(&self) -> Entries<'_, &Event> {
        self.log.events()
    }

    /// Everything that happened so far.
    pub fn log(&self) -> &BenchLog {
        &self.log
    }

    /// The report, once handed in.
    pub fn report(&self) -> Option<&Report> {
        self.report.as_ref()
    }

    /// Money spent on parts, return fees included, whole units.
    pub fn spent(&self) -> f64 {
        self.spent
    }

    /// Time waited for parts, h.
    pub fn waited_hours(&self) -> f64 {
        self.waited_hours
    }

    /// Whether the machine went through a milestone of this kind since `since`.
    pub fn passed(&self, kind: MilestoneKind, since: Time) -> bool {
        self.first(kind, since).is_some()
    }

    /// When it first went through a milestone of this kind since `since`.
    fn first(&self, kind: MilestoneKind, since: Time) -> Option<Time> {
        let mut milestones = self.milestones().iter();
        let first = milestones.find(|l| l.at >= since && l.kind == kind);
        first.map(|l| l.at)
    }

    /// Whether the basket was empty in the last recalibration that passed since `since`; none where none has.
    pub fn calibrated_empty(&self, since: Time) -> Option<bool> {
        let mut passed = self.milestones().iter();
        let last = passed.rfind(|l| l.at >= since && l.kind == MilestoneKind::CalibrationPassed)?;
        Some(self.log.basket_was_empty(last.at))
    }

    /// What the person knows and holds.
    pub fn view(&self) -> BenchView<'_> {
        let mut machine = self.machine.view();
        machine.control.tries = self.tries();
        BenchView {
            machine,
            cabinet_open: self.cabinet_open,
            taps_shut: self.machine.plant().taps_shut(),
            basket_empty: self.machine.plant().basket_empty(),
            laundry_inside: self.machine.plant().params().get(Param::LoadKg) > 0.0,
            outlet_tripped: self.machine.plant().outlet_tripped(),
            pulled: &self.pulled,
            probes: self.probes,
            held: self.meter.held.map(|(mode, _)| mode),
            log: &self.log,
            parts: &self.parts,
            spent: self.spent,
            labour: self.labour(),
            consumables: self.consumables(),
            bill: self.bill(),
            minutes: self.minutes(),
            waited_hours: self.waited_hours,
            finished: self.report.is_some(),
        }
    }
}
