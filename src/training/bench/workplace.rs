//! The bench itself: a machine, a person's hands, a meter, a parts counter and a clock.

use super::action::{Action, Grip, MeterMode, Turn};
use super::inspect::{Found, look};
use super::landmark::{Landmark, LandmarkKind, Watcher};
use super::meter::Meter;
use super::part::{Part, Rates, cure, current};
use super::report::Report;
use super::view::{
    BenchView, Caution, Display, Event, Happening, MeterTest, PartInHand, Reading, Refusal,
};
use super::{cost, meter};
use detent_simulation::controller::{Board, Memory, Try};
use detent_simulation::machine::Machine;
use detent_simulation::plant::{
    Component, Connector, FailureMode, Op, Param, Params, Pin, Plant, Presence, Probed, Rating,
    Terminal,
};
use detent_simulation::units::uniform;
use detent_simulation::units::{Span, TICKS_PER_S, Time};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Stored charge above this can hurt, V (limit of safe extra-low direct voltage, IEC 61140, from
/// memory).
const TOUCH_V: f64 = 60.0;
/// The plug's blades may carry this much one second after unplugging, V (IEC 60335-1, 22.5).
const BLADES_V: f64 = 34.0;
/// Water above this runs out when a part below the tub is opened, mm.
const FLOOD_MM: f64 = 20.0;
/// A basket faster than this can hurt, rev/min.
const TURNING_RPM: f64 = 30.0;

/// All that a bench is made from.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The control board.
    pub board: Board,
    /// What the board remembers from before.
    pub memory: Memory,
    /// The sound machine's parameters.
    pub sound: Params,
    /// Mains supply.
    pub rating: Rating,
    /// Wear of this machine's dial.
    pub dial_wear: f64,
    /// Faults in this machine.
    pub faults: Vec<FailureMode>,
    /// Every failure mode that the machine could have.
    pub modes: Vec<FailureMode>,
    /// What the counter sells.
    pub parts: Vec<Part>,
    /// What the shop charges.
    pub rates: Rates,
    /// Seed of every random draw.
    pub seed: u64,
    /// Meter work on the live machine is allowed.
    pub live_tests_allowed: bool,
    /// A lead of the meter is broken inside its insulation.
    pub lead_open: bool,
}

/// A part that was bought and not brought back.
#[derive(Clone, Debug)]
struct Held {
    number: String,
    fitted: bool,
    /// The fault that it brings with it, by its place in the catalogue.
    bad: Option<usize>,
}

/// A bench with one machine on it.
#[derive(Clone)]
pub struct Bench {
    machine: Machine,
    modes: Vec<FailureMode>,
    counter: Vec<Part>,
    rates: Rates,
    live_tests_allowed: bool,
    cabinet_open: bool,
    pulled: Vec<Connector>,
    probes: Option<(MeterMode, Pin, Pin)>,
    grip: Grip,
    meter: Meter,
    meter_tests: Vec<MeterTest>,
    notebook: Vec<Reading>,
    found: Vec<Found>,
    noted_codes: Vec<(Time, u8)>,
    parts: Vec<Held>,
    spent: f64,
    waited_hours: f64,
    events: Vec<Event>,
    history: Vec<(Time, Action)>,
    fitted: Vec<(Time, String)>,
    watcher: Watcher,
    report: Option<Report>,
    hidden: Vec<FailureMode>,
    began: Time,
    rng: ChaCha8Rng,
    /// What used parts are worth: drawn apart, so that buying one changes no reading.
    counter_rng: ChaCha8Rng,
}

impl Bench {
    /// Sets the machine up, plugged in and idle as the customer left it.
    pub fn new(setup: Setup) -> Bench {
        let mut plant = Plant::new(&setup.sound, setup.rating, setup.seed);
        plant.set_condition(Param::DialWear, setup.dial_wear);
        for fault in &setup.faults {
            plant.inflict(fault);
        }
        plant.set_plugged(true);
        let memory = if plant.params().get(Param::MemoryLost) > 0.5 {
            Memory::default()
        } else {
            setup.memory
        };
        Bench {
            machine: Machine::new(plant, &setup.board, memory),
            modes: setup.modes,
            counter: setup.parts,
            rates: setup.rates,
            live_tests_allowed: setup.live_tests_allowed,
            cabinet_open: false,
            pulled: Vec::new(),
            probes: None,
            grip: Grip::Clips,
            meter: Meter {
                lead_open: setup.lead_open,
                ..Meter::default()
            },
            meter_tests: Vec::new(),
            notebook: Vec::new(),
            found: Vec::new(),
            noted_codes: Vec::new(),
            parts: Vec::new(),
            spent: 0.0,
            waited_hours: 0.0,
            events: Vec::new(),
            history: Vec::new(),
            fitted: Vec::new(),
            watcher: Watcher::default(),
            report: None,
            hidden: setup.faults,
            began: Time::ZERO,
            rng: ChaCha8Rng::seed_from_u64(setup.seed ^ 0x6d65_7465_7221),
            counter_rng: ChaCha8Rng::seed_from_u64(setup.seed ^ 0x7368_656c_6621),
        }
    }

    /// The technician arrives: work time and the record of deeds count from here.
    pub fn begin(&mut self) {
        self.began = self.machine.now();
    }

    /// One tick in which the person does nothing new.
    pub fn step(&mut self) {
        self.machine.step();
        let seen = self.watcher.landmarks().len();
        self.watcher.look(&self.machine);
        let passed = |l: &Landmark| l.kind == LandmarkKind::CalibrationPassed;
        if self.watcher.landmarks()[seen..].iter().any(passed) {
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
        if self.report.is_some() {
            return Err(Refusal::Finished);
        }
        self.refuse(action)?;
        self.history.push((self.machine.now(), action.clone()));
        self.judge_safety(action);
        self.perform(action);
        let span = match action {
            Action::Fit(number) => self
                .part(number)
                .map_or(Span::ZERO, |p| cost::fitting(p.component)),
            other => cost::span(other),
        };
        // A probe settles before it is read.
        self.wait(span);
        match *action {
            Action::Probe {
                mode, red, black, ..
            } => self.note_reading(mode, red, black),
            Action::TestMeter => {
                let test = self.meter.tested(self.machine.now());
                self.meter_tests.push(test);
            }
            Action::Inspect(component) => self.note_finding(component),
            _ => {}
        }
        Ok(())
    }

    /// The usual caution before an action, as a text key, where there is one.
    pub fn caution(&self, action: &Action) -> Option<Caution> {
        let plant = self.machine.plant();
        let charged = plant.supply().bulk_v > TOUCH_V;
        match action {
            Action::OpenCabinet if plant.plugged() => Some("caution-open-live"),
            Action::Plug if self.cabinet_open => Some("caution-plug-open"),
            Action::OpenCabinet if charged => Some("caution-stored-charge"),
            action if plant.plugged() && touches_mains(action) => Some("caution-touch-live"),
            action if charged && touches_charge(action) => Some("caution-stored-charge"),
            Action::Inspect(c) | Action::PutRight(c) if in_basket(*c) && self.turns() => {
                Some("caution-moving")
            }
            Action::PutRight(Component::InletHoses) => Some("caution-hot-water"),
            Action::PutRight(Component::Floor) => Some("caution-heavy"),
            Action::Probe { mode, red, .. }
                if mode.sends_current() && plant.plugged() && needs_cabinet(*red) =>
            {
                Some("caution-ohms-live")
            }
            Action::Probe { .. } if plant.plugged() => Some("caution-live-test"),
            Action::Fit(number) if self.would_flood(number) => Some("caution-flood"),
            Action::OpenLid if self.turns() => Some("caution-moving"),
            _ => None,
        }
    }

    fn refuse(&self, action: &Action) -> Result<(), Refusal> {
        let already = || Err(Refusal::AlreadySo);
        let plant = self.machine.plant();
        match action {
            Action::Plug if plant.plugged() => already(),
            Action::Unplug if !plant.plugged() => already(),
            Action::OpenLid if plant.lid_open() => already(),
            Action::CloseLid if !plant.lid_open() => already(),
            Action::OpenLid if plant.bolted() => Err(Refusal::LidLocked),
            Action::Down(button) | Action::Up(button)
                if !self.machine.board().panel.buttons.contains(button) =>
            {
                Err(Refusal::NoButton(*button))
            }
            Action::OpenCabinet if self.cabinet_open => already(),
            Action::CloseCabinet if !self.cabinet_open => already(),
            Action::Pull(c) if self.pulled.contains(c) => already(),
            Action::Seat(c) if !self.pulled.contains(c) => already(),
            Action::Pull(_) | Action::Discharge | Action::Fit(_) if !self.cabinet_open => {
                Err(Refusal::CabinetClosed)
            }
            Action::Pull(c) if self.terminals(c).is_empty() => Err(Refusal::NoConnector(c.clone())),
            Action::Probe { red, black, .. } => self.refuse_probe(*red, *black),
            Action::Order(number) if self.part(number).is_none() => {
                Err(Refusal::NoPart(number.clone()))
            }
            Action::Fit(number) | Action::Return(number) if self.in_hand(number).is_none() => {
                Err(Refusal::NotInHand(number.clone()))
            }
            Action::Fit(number) if self.part(number).is_some_and(|p| !self.fits(p)) => {
                Err(Refusal::DoesNotFit(number.clone()))
            }
            Action::PutRight(c) if !c.can_be_put_right() => Err(Refusal::NeedsPart(*c)),
            Action::Inspect(c) if c.is_inside() && !self.cabinet_open => {
                Err(Refusal::CabinetClosed)
            }
            Action::Inspect(c) | Action::PutRight(c) if in_basket(*c) && !plant.lid_open() => {
                Err(Refusal::LidClosed)
            }
            Action::HoldDisplay if self.meter.held.is_some() => already(),
            Action::HoldDisplay if self.probes.is_none() => Err(Refusal::NothingToHold),
            Action::ReleaseDisplay if self.meter.held.is_none() => already(),
            Action::ReplaceMeterFuse if !self.meter.fuse_blown => already(),
            Action::Report(report) => self.refuse_report(report),
            _ => Ok(()),
        }
    }

    fn refuse_report(&self, report: &Report) -> Result<(), Refusal> {
        let unknown = |cause: &&String| !self.modes.iter().any(|m| m.id == **cause);
        if let Some(cause) = report.causes.iter().find(unknown) {
            return Err(Refusal::NoCause(cause.clone()));
        }
        if let Some(number) = &report.part
            && self.part(number).is_none()
        {
            return Err(Refusal::NoPart(number.clone()));
        }
        match report.proof.iter().find(|n| **n >= self.notebook.len()) {
            Some(n) => Err(Refusal::NoReading(*n)),
            None => Ok(()),
        }
    }

    fn refuse_probe(&self, red: Pin, black: Pin) -> Result<(), Refusal> {
        let blade = |pin| matches!(pin, Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth);
        let plugged = self.machine.plant().plugged();
        if plugged && (blade(red) || blade(black)) {
            return Err(Refusal::PlugInOutlet);
        }
        if !self.cabinet_open && (needs_cabinet(red) || needs_cabinet(black)) {
            return Err(Refusal::CabinetClosed);
        }
        Ok(())
    }

    fn judge_safety(&mut self, action: &Action) {
        let plant = self.machine.plant();
        let plugged = plant.plugged();
        let charged = plant.supply().bulk_v > TOUCH_V;
        let turning = plant.drive().pulley_rpm() > TURNING_RPM && plant.basket_coupled();
        let happening = match action {
            Action::OpenCabinet if plugged => Some(Happening::CabinetOpenedLive),
            Action::OpenLid if turning => Some(Happening::LidOpenedSpinning),
            action if plugged && touches_mains(action) => Some(Happening::Shock),
            action if charged && touches_charge(action) => Some(Happening::TouchedCharge),
            Action::Probe {
                mode, red, black, ..
            } if mode.sends_current() => {
                let on = plant.probed();
                // A ghost on an open wire has no strength to blow anything.
                let volts = if plugged {
                    on.volts_ac(*red, *black, meter::LOW_INPUT_OHMS)
                } else {
                    0.0
                };
                let left = on.volts_dc(*red, *black, meter::INPUT_OHMS).abs();
                let blades = matches!(red, Pin::PlugLine | Pin::PlugNeutral);
                // Five volts behind kilohms do not blow a fuse; they only spoil the reading.
                let strong = volts > meter::OHMS_FUSE_V
                    || left > if blades { BLADES_V } else { meter::OHMS_FUSE_V };
                (strong && !self.meter.fuse_blown).then_some(Happening::OhmsOnLive)
            }
            Action::Probe { .. } if plugged && !self.live_tests_allowed => {
                Some(Happening::LiveTestNotAllowed)
            }
            _ => None,
        };
        if let Some(what) = happening {
            self.happen(what);
        }
        if let Action::Fit(number) = action
            && self.would_flood(number)
        {
            self.happen(Happening::Flood);
        }
    }

    fn would_flood(&self, number: &str) -> bool {
        let below = [
            Component::DrainPump,
            Component::DrainHose,
            Component::Tub,
            Component::PressureHose,
        ];
        self.machine.plant().water().level_mm() > FLOOD_MM
            && self
                .part(number)
                .is_some_and(|p| below.contains(&p.component))
    }

    fn happen(&mut self, what: Happening) {
        self.meter.fuse_blown |= what == Happening::OhmsOnLive;
        self.events.push(Event {
            at: self.machine.now(),
            what,
        });
    }

    fn perform(&mut self, action: &Action) {
        let plant = self.machine.plant_mut();
        match action {
            Action::Plug => plant.set_plugged(true),
            Action::Unplug => plant.set_plugged(false),
            Action::OpenLid => plant.set_lid_open(true),
            Action::CloseLid => plant.set_lid_open(false),
            Action::Detent(turn) => self.machine.detent(*turn == Turn::Right),
            Action::Down(button) => self.machine.press(*button, true),
            Action::Up(button) => self.machine.press(*button, false),
            Action::OpenCabinet => self.cabinet_open = true,
            Action::CloseCabinet => {
                self.cabinet_open = false;
                self.probes = None;
            }
            Action::Discharge => plant.discharge(),
            Action::BailOut => plant.bail_out(),
            Action::Pull(connector) => self.set_connector(connector, true),
            Action::Seat(connector) => self.set_connector(connector, false),
            Action::Probe {
                mode,
                red,
                black,
                grip,
            } => {
                self.probes = Some((*mode, *red, *black));
                self.grip = *grip;
                // Turning the knob lets a held display go.
                self.meter.held = self.meter.held.filter(|(held, _)| held == mode);
            }
            Action::LiftProbes => self.probes = None,
            Action::HoldDisplay => {
                self.meter.held = self.probes.map(|(mode, _, _)| mode).zip(self.shown_now());
            }
            Action::ReleaseDisplay => self.meter.held = None,
            // Its result is noted when the time for it has passed.
            Action::TestMeter => {}
            Action::ReplaceMeterFuse => {
                self.meter.fuse_blown = false;
                self.spent += cost::METER_FUSE_PRICE;
            }
            // What is found is noted once the time for looking has passed.
            Action::Inspect(_) => {}
            Action::PutRight(component) => self.put_right(*component),
            Action::ReplaceLeads => self.meter.lead_open = false,
            Action::Order(number) => self.order(number),
            Action::Return(number) => self.take_back(number),
            Action::Fit(number) => self.fit(number),
            Action::NoteCode(code) => self.noted_codes.push((self.machine.now(), *code)),
            Action::Report(report) => self.report = Some(report.clone()),
        }
    }

    fn terminals(&self, connector: &Connector) -> Vec<Terminal> {
        match connector {
            Connector::Board(label) => self.machine.connector_pins(label).unwrap_or_default(),
            Connector::Load(c) => c.terminals().collect(),
        }
    }

    fn set_connector(&mut self, connector: &Connector, pulled: bool) {
        let pins = self.terminals(connector);
        self.machine
            .plant_mut()
            .set_connector(connector, &pins, pulled);
        if pulled {
            self.pulled.push(connector.clone());
        } else {
            self.pulled.retain(|c| c != connector);
        }
    }

    fn order(&mut self, number: &str) {
        let Some(part) = self.part(number) else {
            return;
        };
        let part = part.clone();
        self.spent += part.price;
        self.waited_hours += part.wait_hours;
        let bad = self.draw_bad(&part);
        self.parts.push(Held {
            number: part.number,
            fitted: false,
            bad,
        });
    }

    /// The fault that a part brings with it, if its condition and the draw will have it so.
    fn draw_bad(&mut self, part: &Part) -> Option<usize> {
        let chance = self.rates.bad(part.condition);
        if chance == 0.0 {
            return None;
        }
        let (is_bad, which) = (
            uniform(&mut self.counter_rng) < chance,
            uniform(&mut self.counter_rng),
        );
        let modes: Vec<usize> = (0..self.modes.len())
            .filter(|n| self.modes[*n].component == part.component)
            .collect();
        let place = (which * modes.len() as f64) as usize;
        is_bad.then(|| modes.get(place).copied()).flatten()
    }

    fn take_back(&mut self, number: &str) {
        let Some((place, price)) = self
            .in_hand(number)
            .zip(self.part(number).map(|part| part.price))
        else {
            return;
        };
        self.parts.remove(place);
        self.spent -= price * (1.0 - self.rates.return_fee_share);
    }

    fn fit(&mut self, number: &str) {
        let Some(part) = self.part(number).cloned() else {
            return;
        };
        let (number, component) = (part.number.clone(), part.component);
        // What hands put right, or a recalibration, was no reason for a new part.
        let cures = self
            .machine
            .plant()
            .faults()
            .any(|f| part.ends(f) && !f.needs_no_part());
        if !cures {
            self.happen(if component == Component::Board {
                Happening::GoodBoardReplaced
            } else {
                Happening::WrongPart
            });
        }
        if part.kit {
            self.machine.plant_mut().mend(|mode| part.ends(mode));
        } else {
            self.machine.replace(component);
        }
        if let Some(place) = self.in_hand(&number) {
            self.parts[place].fitted = true;
            if let Some(bad) = self.parts[place].bad {
                self.machine.plant_mut().inflict(&self.modes[bad]);
            }
        }
        self.fitted.push((self.machine.now(), number));
    }

    fn put_right(&mut self, component: Component) {
        if self.machine.plant_mut().put_right(component) {
            let done = component.name().to_owned();
            self.fitted.push((self.machine.now(), done));
        }
    }

    fn note_finding(&mut self, component: Component) {
        let plant = self.machine.plant();
        let findings = look(plant, plant.params(), component);
        let alike = |changes: &[_]| look(plant, &plant.params_if(changes), component) == findings;
        let rules_out = self.modes.iter().map(|m| !could_be(m, alike)).collect();
        self.found.push(Found {
            at: self.machine.now(),
            component,
            findings,
            rules_out,
        });
    }

    fn turns(&self) -> bool {
        self.machine.plant().drive().pulley_rpm() > TURNING_RPM
    }

    fn note_reading(&mut self, mode: MeterMode, red: Pin, black: Pin) {
        let plant = self.machine.plant();
        let grip = self.grip;
        let would_show = |on: &Probed| meter::ideal_held(on, mode, red, black, grip);
        let ideal = would_show(&plant.probed());
        let alike =
            |changes: &[_]| !meter::differ(mode, ideal, would_show(&plant.probed_if(changes)));
        // A meter that shows something of its own tells nothing about the machine.
        let meter_sound = self.meter.is_sound(mode);
        let rules_out = self.modes.iter();
        let rules_out = rules_out
            .map(|m| meter_sound && !could_be(m, alike))
            .collect();
        let live = plant.plugged();
        let draw = 2.0 * uniform(&mut self.rng) - 1.0;
        let shown = self.meter.shows(mode, meter::noisy(ideal, mode, draw));
        let at = self.machine.now();
        self.notebook.push(Reading {
            at,
            mode,
            red,
            black,
            grip,
            shown,
            meter_sound,
            live,
            rules_out,
        });
    }

    /// What the meter shows now, if it shows anything.
    fn shown_now(&self) -> Option<Display> {
        let held = self.meter.held.map(|(_, display)| display);
        held.or_else(|| {
            let (mode, red, black) = self.probes?;
            let on = self.machine.plant().probed();
            let ideal = meter::ideal_held(&on, mode, red, black, self.grip);
            Some(self.meter.shows(mode, ideal))
        })
    }

    /// Place among the parts bought of one that an order for `number` brought and that is not fitted.
    fn in_hand(&self, number: &str) -> Option<usize> {
        let number = &self.part(number)?.number;
        (self.parts.iter()).position(|held| held.number == *number && !held.fitted)
    }
}

/// True where a hand is on metal that carries mains while the plug is in.
fn touches_mains(action: &Action) -> bool {
    match action {
        Action::Pull(_) | Action::Seat(_) | Action::Fit(_) => true,
        Action::Inspect(component) => component.is_inside(),
        Action::Probe {
            grip: Grip::Fingers,
            red,
            black,
            ..
        } => bites(*red) || bites(*black),
        _ => false,
    }
}

/// True where a hand is on metal that can hold the bulk capacitor's charge.
fn touches_charge(action: &Action) -> bool {
    match action {
        Action::Pull(_) | Action::Fit(_) => true,
        Action::Inspect(component) => component.is_inside(),
        Action::Probe {
            grip: Grip::Fingers,
            red,
            black,
            ..
        } => is_bulk(*red) || is_bulk(*black),
        _ => false,
    }
}

/// True where mains voltage, or the charge that it leaves, can be under the probe.
fn bites(pin: Pin) -> bool {
    !matches!(pin, Pin::PlugEarth) && !matches!(pin, Pin::Wire(t, _) if !t.is_mains())
}

/// True for the bulk capacitor's test points.
fn is_bulk(pin: Pin) -> bool {
    matches!(pin, Pin::BulkPlus | Pin::BulkMinus)
}

/// Whether the machine with this fault could be as it was seen. `alike` compares it with the
/// machine that has some changes; a fault that is not always there may have been away.
fn could_be(mode: &FailureMode, alike: impl Fn(&[(Param, Op)]) -> bool) -> bool {
    alike(&mode.changes) || mode.presence != Presence::Steady && alike(&[])
}

/// What is reached through the lid.
fn in_basket(component: Component) -> bool {
    matches!(component, Component::Laundry | Component::Tub)
}

/// True for points behind the cabinet's panels.
fn needs_cabinet(pin: Pin) -> bool {
    !matches!(pin, Pin::PlugLine | Pin::PlugNeutral | Pin::PlugEarth)
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

    /// What the shop charges.
    pub fn rates(&self) -> Rates {
        self.rates
    }

    /// Work time so far, min, without waits for parts.
    pub fn minutes(&self) -> f64 {
        self.now().since(self.began).0 as f64 / (60 * TICKS_PER_S) as f64
    }

    /// What the work so far costs, whole units.
    pub fn labour(&self) -> f64 {
        self.rates.labour(self.minutes())
    }

    /// Tries of the meter on the proving source.
    pub fn meter_tests(&self) -> &[MeterTest] {
        &self.meter_tests
    }

    /// When the technician arrived.
    pub fn began(&self) -> Time {
        self.began
    }

    /// The technician's tries at the entry gesture, oldest first. Whoever turns the dial to choose a
    /// program makes no try; it is meant as one from the gesture's second step on.
    pub fn tries(&self) -> Vec<Try> {
        let began_s = self.began.seconds();
        let mut tries = self.machine.tries();
        tries.retain(|t| {
            f64::from(t.began_s) >= began_s && t.lines.iter().any(|line| line.step > 0)
        });
        tries
    }

    /// The faults that were put into the machine, cured or not.
    pub fn hidden(&self) -> &[FailureMode] {
        &self.hidden
    }

    /// Everything done so far, with its time.
    pub fn history(&self) -> &[(Time, Action)] {
        &self.history
    }

    /// What the machine went through so far.
    pub fn landmarks(&self) -> &[Landmark] {
        self.watcher.landmarks()
    }

    /// Parts fitted, by number, and components put right, by name, with their times.
    pub fn fitted(&self) -> &[(Time, String)] {
        &self.fitted
    }

    /// Readings so far.
    pub fn notebook(&self) -> &[Reading] {
        &self.notebook
    }

    /// What was found by looking so far.
    pub fn found(&self) -> &[Found] {
        &self.found
    }

    /// Codes noted so far.
    pub fn noted_codes(&self) -> &[(Time, u8)] {
        &self.noted_codes
    }

    /// Unsafe or mistaken things so far.
    pub fn events(&self) -> &[Event] {
        &self.events
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

    /// Whether the machine went through a landmark of this kind since `since`.
    pub fn passed(&self, kind: LandmarkKind, since: Time) -> bool {
        self.landmarks()
            .iter()
            .any(|l| l.at >= since && l.kind == kind)
    }

    /// What the person knows and holds.
    pub fn view(&self) -> BenchView {
        let mut machine = self.machine.view();
        machine.control.tries = self.tries();
        BenchView {
            machine,
            cabinet_open: self.cabinet_open,
            pulled: self.pulled.clone(),
            probes: self.probes,
            meter: self.shown_now(),
            held: self.meter.held.map(|(mode, _)| mode),
            meter_tests: self.meter_tests.clone(),
            notebook: self.notebook.clone(),
            found: self.found.clone(),
            noted_codes: self.noted_codes.clone(),
            parts: self
                .parts
                .iter()
                .map(|held| PartInHand {
                    number: held.number.clone(),
                    fitted: held.fitted,
                })
                .collect(),
            spent: self.spent,
            labour: self.labour(),
            minutes: self.minutes(),
            waited_hours: self.waited_hours,
            events: self.events.clone(),
            finished: self.report.is_some(),
        }
    }
}
