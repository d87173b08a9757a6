//! The whole washer, one tick at a time.

use super::dial::Dial;
use super::drive::{Coupling, Drive};
use super::fault::{FailureMode, Op, Presence, Stress};
use super::mains::{Circuit, Switching, WIRES, motor_circuit};
use super::motor::{MotorCircuit, rms};
use super::params::{Param, Params};
use super::residual::ResidualDevice;
use super::signal::{SignalState, Signals};
use super::solution::{LoadAmps, Solution};
use super::solution_cache::SolutionCache;
use super::supply::Supply;
use super::water::{Water, WaterDrive, at_taps, at_valves, into_bucket};
use crate::interface::{
    Component, Connector, Direction, Rating, Relay, Relays, Terminal, WaterPipe,
};
use crate::units::{Span, TICK_S, Time};
use num_complex::Complex64;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde::{Deserialize, Serialize};

/// What laundry does to the drive is gone when it is taken out.
pub(super) fn empty_basket(params: &mut Params) {
    params.set(Param::LoadKg, 0.0);
    params.set(Param::LoadOffsetKgM, 0.0);
}

/// A contact input counts as closed below this, V.
const CONTACT_V: f64 = 1.5;
/// Share of rated voltage at which the board's line sense says "there".
const SENSE_SHARE: f64 = 0.6;
/// Share of rated voltage that the pump needs to start turning.
const PUMP_START_SHARE: f64 = 0.5;
/// Noise of the analogue inputs, V, half the width of its triangle.
const NOISE_V: f64 = 0.006;
/// How far a new pressure sensor's zero lies above the old one's, V (invented).
const NEW_ZERO_V: (f64, f64) = (0.14, 0.24);
/// Cam speed of a new clutch actuator beside the old one's (invented).
const NEW_CAM_SHARE: (f64, f64) = (0.88, 0.94);
/// Extra slosh at the pressure input while the agitator works, V.
const SLOSH_V: f64 = 0.03;

/// What the board's pins carry in one tick.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BoardPins {
    /// Bulk capacitor, V.
    pub bulk_v: f64,
    /// The switching supply gives the control its five volts.
    pub supplied: bool,
    /// Lid switch contact.
    pub lid_closed: bool,
    /// Mains behind the lid lock.
    pub locked_line: bool,
    /// Cam switch contact.
    pub cam: bool,
    /// Pulses of the speed pickup in this tick.
    pub pickup_pulses: u16,
    /// Pressure input, V.
    pub pressure_v: f64,
    /// Thermistor input, V.
    pub thermistor_v: f64,
    /// Current through the motor shunt, A rms.
    pub motor_a: f64,
}

/// A drift grows in this many steps, so that the networks are not solved anew at every tick.
const DRIFT_STEPS: f64 = 64.0;
/// Time constant of the control board's warmth, s.
const BOARD_WARM_S: f64 = 400.0;
/// Warmth of the board over the room for each watt that the control draws, K/W (invented).
const BOARD_K_W: f64 = 4.0;
/// Further warmth for each relay that is driven, K (invented).
const RELAY_K: f64 = 5.0;
/// No spell of an intermittent fault is running.
const ASLEEP: Time = Time(u64::MAX);

/// A fault that was placed, with its own random process when it is intermittent.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct ActiveFault {
    mode: FailureMode,
    /// How much of it is present, 0 to 1.
    share: f64,
    until: Time,
    rng: ChaCha8Rng,
}

impl ActiveFault {
    fn new(mode: &FailureMode, rng: ChaCha8Rng) -> ActiveFault {
        ActiveFault {
            mode: mode.clone(),
            share: if mode.presence == Presence::Steady {
                1.0
            } else {
                0.0
            },
            until: ASLEEP,
            rng,
        }
    }

    /// One tick. True when its share changed.
    fn step(&mut self, now: Time, worked: Span, stressed: impl Fn(Stress) -> bool) -> bool {
        let before = self.share;
        match self.mode.presence {
            Presence::Steady => {}
            Presence::Intermittent {
                good_s,
                bad_s,
                under,
            } => {
                if !under.is_none_or(stressed) {
                    self.until = ASLEEP;
                    self.share = 0.0;
                } else if self.until == ASLEEP {
                    self.until = now + spell(good_s, &mut self.rng);
                } else if now >= self.until {
                    self.share = 1.0 - self.share;
                    let mean_s = if self.share > 0.0 { bad_s } else { good_s };
                    self.until = now + spell(mean_s, &mut self.rng);
                }
            }
            Presence::Drift { full_after_s } => {
                let grown = (worked.seconds() / full_after_s).min(1.0);
                self.share = libm::floor(grown * DRIFT_STEPS) / DRIFT_STEPS;
            }
        }
        self.share != before
    }
}

/// Everything about the plant that changes as it runs, apart from what follows from it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct State {
    now: Time,
    plugged: bool,
    lid_open: bool,
    taps_shut: bool,
    basket_empty: bool,
    bolted: bool,
    bolt_travel_s: f64,
    cam_deg: f64,
    pump_turning: bool,
    water: Water,
    drive: Drive,
    supply: Supply,
    residual: ResidualDevice,
    dial: Dial,
    last_detent: Time,
    off_board: u64,
    off_load: u64,
    board_c: f64,
    /// Time for which the control drove any load.
    worked: Span,
    placed: Vec<ActiveFault>,
    params: Params,
    rng: ChaCha8Rng,
}

/// Whether the networks may be left alone while nothing in them changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SolvePolicy {
    /// Solve when a switch or a value changed.
    OnChange,
    /// Solve at every tick. Gives the same run to the bit; kept to prove it.
    Always,
}

/// The machine as physics.
#[derive(Clone)]
pub struct Plant {
    rating: Rating,
    sound: Params,
    state: State,
    policy: SolvePolicy,
    mains: Circuit<Complex64>,
    signals: Signals,
    solved_for: Option<Switching>,
    signals_for: Option<SignalState>,
    stale: bool,
    motor: MotorCircuit,
    solution: Solution,
    solution_cache: SolutionCache,
    pulses_arrive: bool,
    driven: Relays,
}

impl Plant {
    /// A sound machine, unplugged, dry, lid down. `seed` feeds every random process in it.
    pub fn new(sound: &Params, rating: Rating, seed: u64) -> Plant {
        let drive = Drive::at_rest(sound);
        let motor = motor_circuit(sound, rating, drive.winding_step);
        Plant {
            rating,
            sound: sound.clone(),
            state: State {
                now: Time::ZERO,
                plugged: false,
                lid_open: false,
                taps_shut: false,
                basket_empty: false,
                bolted: false,
                bolt_travel_s: 0.0,
                cam_deg: 270.0,
                pump_turning: false,
                water: Water::dry(sound),
                drive,
                supply: Supply::default(),
                residual: ResidualDevice::default(),
                dial: Dial::default(),
                last_detent: Time::ZERO,
                off_board: 0,
                off_load: 0,
                board_c: sound.get(Param::AmbientC),
                worked: Span::ZERO,
                placed: Vec::new(),
                params: sound.clone(),
                rng: ChaCha8Rng::seed_from_u64(seed),
            },
            policy: SolvePolicy::OnChange,
            mains: Circuit::new(None),
            signals: Signals::new(None),
            solved_for: None,
            signals_for: None,
            stale: true,
            motor,
            solution: Solution::default(),
            solution_cache: SolutionCache::default(),
            pulses_arrive: false,
            driven: Relays::NONE,
        }
    }

    /// Sets when the networks are solved. The run is the same either way.
    pub fn set_policy(&mut self, policy: SolvePolicy) {
        self.policy = policy;
    }

    /// Places a fault.
    pub fn inject_fault(&mut self, mode: &FailureMode) {
        let rng = ChaCha8Rng::seed_from_u64(self.state.rng.next_u64());
        self.state.placed.push(ActiveFault::new(mode, rng));
        self.refresh_params();
    }

    /// Replaces a component by a sound one: its faults leave with it, and so does what it carried.
    pub fn replace(&mut self, component: Component) {
        self.state
            .placed
            .retain(|placed| placed.mode.component != component);
        match component {
            Component::LineFuse => self.state.supply.renew_fuse(),
            Component::Board => self.state.supply.bulk_v = 0.0,
            // No two parts of a kind are alike: what the control had learned of the old one is
            // wrong for the new one until it is recalibrated.
            Component::PressureSensor => {
                let zero_v = self.sound.get(Param::PressureZeroV) + self.spread(NEW_ZERO_V);
                self.sound.set(Param::PressureZeroV, zero_v);
            }
            Component::ClutchActuator => {
                let rpm = self.sound.get(Param::ClutchRpm) * self.spread(NEW_CAM_SHARE);
                self.sound.set(Param::ClutchRpm, rpm);
                self.state.cam_deg = 270.0;
            }
            Component::Motor => {
                self.state.drive.winding_c = self.sound.get(Param::AmbientC);
                self.state.drive.copper_rise_k = 0.0;
                self.state.drive.protector_open = false;
            }
            // These carry nothing but their parameters.
            Component::Supply
            | Component::Cord
            | Component::Filter
            | Component::Dial
            | Component::LidLock
            | Component::InletCold
            | Component::InletHot
            | Component::DrainPump
            | Component::RunCapacitor
            | Component::Pickup
            | Component::PressureHose
            | Component::Thermistor
            | Component::Belt
            | Component::Tub
            | Component::DrainHose
            | Component::Harness
            | Component::Laundry
            | Component::Taps
            | Component::InletHoses
            | Component::Floor => {}
        }
        self.refresh_params();
    }

    /// Puts a component right without a part: its faults that need none leave. True when there
    /// was one. Whoever puts the taps right opens them.
    pub fn put_right(&mut self, component: Component) -> bool {
        self.state.taps_shut &= component != Component::Taps;
        let before = self.state.placed.len();
        self.state
            .placed
            .retain(|p| p.mode.component != component || !p.mode.needs_no_part());
        self.refresh_params();
        self.state.placed.len() < before
    }

    /// Ends the faults that `cured` says, and leaves everything else as it is.
    pub fn mend(&mut self, cured: impl Fn(&FailureMode) -> bool) {
        self.state.placed.retain(|placed| !cured(&placed.mode));
        self.refresh_params();
    }

    /// A draw between two bounds.
    fn spread(&mut self, (low, high): (f64, f64)) -> f64 {
        low + (high - low) * f64::from(self.state.rng.next_u32()) / 4_294_967_295.0
    }

    /// Changes one parameter for good, such as the wear of this machine's dial.
    pub fn set_condition(&mut self, param: Param, value: f64) {
        self.sound.set(param, value);
        self.refresh_params();
    }

    fn refresh_params(&mut self) {
        self.state.params = self.sound.clone();
        for placed in self.state.placed.iter().filter(|p| p.share > 0.0) {
            for (param, op) in &placed.mode.changes {
                let old = self.state.params.get(*param);
                let new = op.apply_share(old, placed.share);
                self.state.params.set(*param, new);
            }
        }
        if self.state.basket_empty {
            empty_basket(&mut self.state.params);
        }
        self.stale = true;
    }

    /// Puts the plug in or pulls it.
    pub fn set_plugged(&mut self, plugged: bool) {
        self.state.plugged = plugged;
    }

    /// Pushes the button of the outlet's residual current device back in.
    pub fn reset_outlet(&mut self) {
        self.state.residual.reset();
    }

    /// Lifts the lid or puts it down; the bolt does not let it move.
    pub fn set_lid_open(&mut self, open: bool) {
        if !self.state.bolted {
            self.state.lid_open = open;
        }
    }

    /// Gives the knob this many detents in one turn.
    pub fn set_detents(&mut self, detents: u8) {
        self.state.dial = Dial {
            detents: detents.max(1),
            ..Dial::default()
        };
    }

    /// Turns the dial by one detent; what its contacts reported goes to the board.
    pub fn detent(&mut self, way: Direction) -> super::dial::Report {
        let gap = self.state.now.since(self.state.last_detent);
        self.state.last_detent = self.state.now;
        let wear = self.state.params.get(Param::DialWear);
        let report = self.state.dial.detent(way, gap, wear, &mut self.state.rng);
        if self.contact_reads_closed(Param::EncoderOhms) {
            report
        } else {
            super::dial::Report::default()
        }
    }

    /// Whether the board sees this contact closed when it is: it pulls its input down far enough.
    fn contact_reads_closed(&self, contact: Param) -> bool {
        let p = &self.state.params;
        let ohms = p.get(contact);
        p.get(Param::RailV) * ohms / (ohms + p.get(Param::SensePullupOhms)) < CONTACT_V
    }

    /// Whether the board sees the Stop button when it is pressed.
    pub fn stop_button_reads(&self) -> bool {
        self.contact_reads_closed(Param::StopButtonOhms)
    }

    /// Pulls or seats a connector; `pins` are the terminals of a board connector.
    pub fn set_connector(&mut self, connector: &Connector, pins: &[Terminal], pulled: bool) {
        let bit = |bits: u64, t: Terminal| bits | 1 << t.index();
        let (bits, field) = match connector {
            Connector::Board(_) => (pins.iter().copied().fold(0, bit), &mut self.state.off_board),
            Connector::Load(c) => (c.terminals().fold(0, bit), &mut self.state.off_load),
        };
        if pulled {
            *field |= bits;
        } else {
            *field &= !bits;
        }
    }

    /// Takes the laundry out of the basket, or puts it back in as it was.
    pub fn set_basket_empty(&mut self, empty: bool) {
        self.state.basket_empty = empty;
        self.refresh_params();
    }

    /// Shuts both taps off.
    pub fn shut_taps(&mut self) {
        self.state.taps_shut = true;
    }

    /// Takes the water out by hand.
    pub fn bail_out(&mut self) {
        self.state.water.tub_l = 0.0;
    }

    /// Bleeds both stored charges through a resistor.
    pub fn discharge(&mut self) {
        self.state.supply.bulk_v = 0.0;
        self.state.supply.filter_v = 0.0;
    }

    /// So much time in which nobody is at the machine: it cools, its stored charge runs out if the plug is out, and
    /// what leaks runs out. The clock of the work stands still. The taps are shut meanwhile.
    pub fn stand(&mut self, seconds: f64) {
        let p = &self.state.params;
        self.state.water.stand(p, seconds);
        self.state.drive.stand(p, seconds);
        if !self.energized() {
            self.state.supply.stand(p, seconds);
            let room = p.get(Param::AmbientC);
            let kept = libm::exp(-seconds / BOARD_WARM_S);
            self.state.board_c = room + (self.state.board_c - room) * kept;
        }
        self.stale = true;
    }

    /// One tick with the control's relays as given; returns what the board's pins carry.
    pub fn step(&mut self, relays: Relays) -> BoardPins {
        self.state.now.0 += 1;
        self.driven = relays;
        self.warm_board(relays);
        self.step_presence();
        self.step_actuators();
        self.step_mains(relays);
        let p = &self.state.params;
        let trip_a = p.get(Param::ResidualTripA);
        self.state.residual.step(self.solution.residual_a, trip_a);
        let energized = self.state.plugged && !self.state.residual.tripped;
        self.state.supply.step(
            p,
            energized,
            self.rating.volts,
            self.solution.board_v,
            self.solution.amps.line,
        );
        let level = self.state.water.level_mm();
        let drive = WaterDrive {
            cold_open: self.solution.amps.cold >= p.get(Param::ColdPullInA),
            hot_open: self.solution.amps.hot >= p.get(Param::HotPullInA),
            pump_turning: self.state.pump_turning,
            taps_shut: self.state.taps_shut,
        };
        self.state.water.step(p, drive);
        let coupling = self.coupling();
        let pulses = self
            .state
            .drive
            .step(p, &self.motor, self.solution.windings, coupling, level);
        self.step_signals();
        self.stale = false;
        self.pins(pulses)
    }

    fn step_mains(&mut self, relays: Relays) {
        let switching = self.switching(relays);
        let changed = self.stale || self.solved_for != Some(switching);
        if self.stale {
            self.solution_cache.clear();
        }
        if changed {
            self.motor = motor_circuit(&self.state.params, self.rating, switching.winding_c);
            self.solved_for = Some(switching);
        }
        match self.policy {
            SolvePolicy::OnChange if !changed => {}
            SolvePolicy::OnChange => match self.solution_cache.get(&switching) {
                Some(solution) => self.solution = solution,
                None => {
                    self.set_mains(&switching);
                    self.mains.solve();
                    self.solution = read_mains(&self.mains);
                    self.solution_cache.keep(switching, self.solution);
                }
            },
            SolvePolicy::Always => {
                self.set_mains(&switching);
                self.mains.solve_always();
                self.solution = read_mains(&self.mains);
            }
        }
    }

    fn set_mains(&mut self, switching: &Switching) {
        self.mains.set(&self.state.params, self.rating, switching);
    }

    /// The board warms up by what it draws and by the coils of its relays.
    fn warm_board(&mut self, relays: Relays) {
        if relays != Relays::NONE {
            self.state.worked.0 += 1;
        }
        let p = &self.state.params;
        let mut rest_c = p.get(Param::AmbientC) + RELAY_K * f64::from(relays.0.count_ones());
        if self.state.supply.running {
            rest_c += BOARD_K_W * p.get(Param::BoardLoadW);
        }
        self.state.board_c += (rest_c - self.state.board_c) * (TICK_S / BOARD_WARM_S);
    }

    fn step_presence(&mut self) {
        let (now, worked) = (self.state.now, self.state.worked);
        let winding_c = self.state.drive.winding_c;
        let board_c = self.state.board_c;
        let level_mm = self.state.water.level_mm();
        let basket_rpm = if self.coupling() == Coupling::Basket {
            self.state.drive.pulley_rpm()
        } else {
            0.0
        };
        let stressed = |stress| match stress {
            Stress::HotWinding { above_c } => winding_c > above_c,
            Stress::HotBoard { above_c } => board_c > above_c,
            Stress::Spinning { above_rpm } => basket_rpm > above_rpm,
            Stress::Wet { above_mm } => level_mm > above_mm,
        };
        let mut changed = false;
        for placed in &mut self.state.placed {
            changed |= placed.step(now, worked, stressed);
        }
        if changed {
            self.refresh_params();
        }
    }

    /// Moves what the last solution's currents move: bolt, cam, pump rotor. A bolt that is out stays out
    /// while the basket turns, whatever becomes of the current: a coasting basket is never within reach.
    fn step_actuators(&mut self) {
        let p = &self.state.params;
        let drawn = self.solution.amps.lock >= p.get(Param::LockPullInA) && !self.state.lid_open;
        let travel_s = p.get(Param::LockTravelS);
        if drawn {
            self.state.bolt_travel_s = (self.state.bolt_travel_s + TICK_S).min(travel_s);
            self.state.bolted = self.state.bolt_travel_s >= travel_s;
        } else if !(self.state.bolted && self.basket_turns()) {
            self.state.bolt_travel_s = 0.0;
            self.state.bolted = false;
        }
        if self.solution.amps.clutch >= p.get(Param::ClutchPullInA) {
            let deg = self.state.cam_deg + p.get(Param::ClutchRpm) * 6.0 * TICK_S;
            self.state.cam_deg = if deg >= 360.0 { deg - 360.0 } else { deg };
        }
        self.state.pump_turning = p.get(Param::PumpFree) > 0.5
            && self.solution.amps.pump >= p.get(Param::PumpPullInA)
            && self.solution.pump_v >= PUMP_START_SHARE * self.rating.volts;
    }

    fn switching(&self, relays: Relays) -> Switching {
        let mains_bits = (1u64 << WIRES) - 1;
        Switching {
            plugged: self.state.plugged,
            outlet_tripped: self.state.residual.tripped,
            relays,
            bolted: self.state.bolted,
            pump_turning: self.state.pump_turning,
            protector_open: self.state.drive.protector_open,
            fuse_blown: self.state.supply.fuse_blown,
            // A motor that coasts with its relays open is not part of the solution.
            speed_step: if self.windings_live(relays) {
                self.state.drive.speed_step
            } else {
                0
            },
            winding_c: self.state.drive.winding_step,
            off_board: (self.state.off_board & mains_bits) as u32,
            off_load: (self.state.off_load & mains_bits) as u32,
        }
    }

    fn windings_live(&self, relays: Relays) -> bool {
        let welded = |param| self.state.params.get(param) < 1000.0;
        relays.has(Relay::MotorA)
            || relays.has(Relay::MotorB)
            || welded(Param::RelayMotorAOpenOhms)
            || welded(Param::RelayMotorBOpenOhms)
    }

    /// The basket is coupled on one half of the cam, the agitator on the other.
    fn coupling(&self) -> Coupling {
        if self.state.cam_deg < 170.0 || self.state.cam_deg >= 350.0 {
            Coupling::Basket
        } else {
            Coupling::Agitator
        }
    }

    pub(super) fn signal_state(&self, pickup_low: bool) -> SignalState {
        SignalState {
            pickup_low,
            ..self.signal_state_under(&self.state.params)
        }
    }

    pub(super) fn signal_state_under(&self, p: &Params) -> SignalState {
        let zero_deg = p.get(Param::CamZeroDeg);
        let mut past_edge = self.state.cam_deg - zero_deg;
        if past_edge < 0.0 {
            past_edge += 360.0;
        }
        let low_bits = |bits: u64| (bits >> WIRES) as u32;
        SignalState {
            powered: self.state.supply.would_run(p),
            lid_closed: !self.state.lid_open,
            cam_closed: past_edge < 180.0,
            pressure_kpa: libm::round(self.state.water.sensed_kpa * 500.0) / 500.0,
            therm_c: libm::round(self.state.water.therm_c * 10.0) / 10.0,
            pickup_low: false,
            off_board: low_bits(self.state.off_board),
            off_load: low_bits(self.state.off_load),
        }
    }

    fn step_signals(&mut self) {
        let at = self.signal_state(false);
        if !self.stale && self.signals_for == Some(at) && self.policy == SolvePolicy::OnChange {
            return;
        }
        // A pulse reaches the board when its input really swings between the two levels.
        let low = SignalState {
            pickup_low: true,
            ..at
        };
        self.signals.settle(&self.state.params, &low);
        let low_v = self.signals.input_v(Terminal::PickupOut);
        self.signals.settle(&self.state.params, &at);
        let high_v = self.signals.input_v(Terminal::PickupOut);
        self.pulses_arrive = low_v < CONTACT_V && high_v > 3.0;
        self.signals_for = Some(at);
    }

    fn pins(&mut self, pulses: u16) -> BoardPins {
        let (n1, n2) = self.noise();
        let slosh = if self.state.drive.stands() || self.coupling() == Coupling::Basket {
            0.0
        } else {
            SLOSH_V
        };
        let analogue = |v: f64, noise: f64| (v + noise).clamp(0.0, 5.0);
        BoardPins {
            bulk_v: self.state.supply.bulk_v,
            supplied: self.state.supply.running,
            lid_closed: self.signals.input_v(Terminal::LidSwitch1) < CONTACT_V,
            locked_line: self.solution.locked_v > SENSE_SHARE * self.rating.volts,
            cam: self.signals.input_v(Terminal::Cam1) < CONTACT_V,
            pickup_pulses: if self.pulses_arrive { pulses } else { 0 },
            pressure_v: analogue(
                self.signals.input_v(Terminal::PressureOut),
                n1 * (NOISE_V + slosh),
            ),
            thermistor_v: analogue(self.signals.input_v(Terminal::Therm1), n2 * NOISE_V),
            motor_a: self.solution.amps.motor * self.state.params.get(Param::MotorSenseGain),
        }
    }

    /// Two triangular draws in −1..1 from one word.
    fn noise(&mut self) -> (f64, f64) {
        let word = self.state.rng.next_u32();
        let part = |shift: u32| f64::from((word >> shift) & 0xff) / 255.0;
        (part(0) - part(8), part(16) - part(24))
    }
}

fn read_mains(mains: &Circuit<Complex64>) -> Solution {
    let at = |t| rms(mains.wire_current(t));
    Solution {
        amps: LoadAmps {
            cold: at(Terminal::Cold1),
            hot: at(Terminal::Hot1),
            pump: at(Terminal::Pump1),
            clutch: at(Terminal::Clutch1),
            lock: at(Terminal::LockCoil1),
            motor: at(Terminal::MotorCommon),
            line: rms(mains.line_current()),
        },
        windings: mains.winding_currents(),
        board_v: rms(mains.board_voltage()),
        locked_v: rms(mains.locked_voltage()),
        pump_v: rms(mains.pump_voltage()),
        residual_a: rms(mains.residual_current()),
    }
}

/// Length of a spell with mean `mean_s`, exponentially distributed.
fn spell(mean_s: f64, rng: &mut ChaCha8Rng) -> Span {
    let uniform = (f64::from(rng.next_u32()) + 0.5) / 4_294_967_296.0;
    Span((-libm::log(uniform) * mean_s / TICK_S) as u64 + 1)
}

/// What can be looked up about the plant without changing it.
impl Plant {
    /// Ticks since the beginning.
    pub fn now(&self) -> Time {
        self.state.now
    }

    /// Rated supply.
    pub fn rating(&self) -> Rating {
        self.rating
    }

    /// The parameters as they are now, faults included.
    pub fn params(&self) -> &Params {
        &self.state.params
    }

    /// Everything that the rest of a run depends on, as bytes for hashing.
    pub fn state_bytes(&self) -> Vec<u8> {
        postcard::to_allocvec(&self.state).expect("plain state always serialises into memory")
    }

    /// Water in the tub and on the floor.
    pub fn water(&self) -> &Water {
        &self.state.water
    }

    /// Motor, pulley, basket.
    pub fn drive(&self) -> &Drive {
        &self.state.drive
    }

    /// Stored charges and the fuse.
    pub fn supply(&self) -> &Supply {
        &self.state.supply
    }

    /// Load currents.
    pub fn amps(&self) -> LoadAmps {
        self.solution.amps
    }

    /// Plug in the outlet.
    pub fn plugged(&self) -> bool {
        self.state.plugged
    }

    /// The outlet's residual current device has opened both conductors.
    pub fn outlet_tripped(&self) -> bool {
        self.state.residual.tripped
    }

    /// Mains comes to the machine as far as its plug.
    pub fn energized(&self) -> bool {
        self.state.plugged && !self.state.residual.tripped
    }

    /// The laundry was taken out.
    pub fn basket_empty(&self) -> bool {
        self.state.basket_empty
    }

    /// Both taps were shut off.
    pub fn taps_shut(&self) -> bool {
        self.state.taps_shut
    }

    /// Pressure at the cold valve and at the hot one, kPa.
    pub fn inlet_kpa(&self) -> [f64; 2] {
        at_valves(&self.state.params, self.state.taps_shut).map(|water| water.kpa)
    }

    /// Pressure in the hose of a tap, kPa.
    pub fn tap_kpa(&self, pipe: WaterPipe) -> f64 {
        let taps = at_taps(&self.state.params, self.state.taps_shut);
        taps[pipe.index()].kpa
    }

    /// What the open hose of a tap brings into a bucket: L/min and °C.
    pub fn into_bucket(&self, pipe: WaterPipe) -> (f64, f64) {
        into_bucket(&self.state.params, pipe)
    }

    /// The same of the machine with some changes.
    pub fn into_bucket_if(&self, pipe: WaterPipe, changes: &[(Param, Op)]) -> (f64, f64) {
        into_bucket(&self.params_if(changes), pipe)
    }

    /// Lid up.
    pub fn lid_open(&self) -> bool {
        self.state.lid_open
    }

    /// Bolt out.
    pub fn bolted(&self) -> bool {
        self.state.bolted
    }

    /// Where the dial points.
    pub fn dial_position(&self) -> u8 {
        self.state.dial.position
    }

    /// The basket is coupled to the drive.
    pub fn basket_coupled(&self) -> bool {
        self.coupling() == Coupling::Basket
    }

    /// The basket itself turns, under power or coasting.
    pub fn basket_turns(&self) -> bool {
        self.basket_coupled() && !self.state.drive.stands()
    }

    /// Pump rotor turning.
    pub fn pump_turning(&self) -> bool {
        self.state.pump_turning
    }

    /// Failure modes still in the machine.
    pub fn faults(&self) -> impl Iterator<Item = &FailureMode> {
        self.state.placed.iter().map(|placed| &placed.mode)
    }

    /// How often each network was solved: mains, low-voltage.
    pub fn solves(&self) -> (u64, u64) {
        (self.mains.solves(), self.signals.solves())
    }

    /// The parameters of this machine without its faults.
    pub(super) fn sound(&self) -> &Params {
        &self.sound
    }

    /// What decides the mains network now.
    pub(super) fn mains_state(&self) -> Switching {
        self.switching(self.driven)
    }

    /// The mains network as it is laid out, whatever its values are.
    pub(super) fn mains_layout(&self) -> Circuit<Complex64> {
        self.mains.clone()
    }

    /// The mains network as it was last solved (for exporting and checking it).
    pub fn mains(&self) -> Circuit<Complex64> {
        let mut plant = self.clone();
        if let Some(switching) = self.solved_for {
            plant.set_mains(&switching);
            plant.mains.solve();
        }
        plant.mains
    }
}
