//! Water: taps through valves into the tub, level, air dome, drain, siphon, leak.

use super::heat::water_kg_m3;
use super::params::{Param, Params};
use crate::interface::WaterPipe;
use crate::units::{GRAVITY_M_S2, TICK_S};
use serde::{Deserialize, Serialize};

/// Plan area of the sump below the basket floor, m².
const SUMP_M2: f64 = 0.06;
/// Height of the sump, mm.
const SUMP_MM: f64 = 50.0;
/// Plan area of the tub above it, m².
const TUB_M2: f64 = 0.15;
/// The tub overflows here, mm.
const RIM_MM: f64 = 420.0;
/// Opening of the air dome above the tub floor, mm.
pub(super) const DOME_MM: f64 = 15.0;
/// The drain hose holds a siphon down to this level, mm.
const SIPHON_BREAK_MM: f64 = 8.0;
/// Heat lost through the tub wall, W/K.
const LOST_W_K: f64 = 20.0;
/// Heat capacity of tub and basket, J/K: some 5 kg of plastic and as much of steel.
const TUB_J_K: f64 = 10e3;
/// Heat capacity of water, J/(L K).
const WATER_J_L_K: f64 = 4186.0;
/// While the machine stands a leak is reckoned in steps of this length, s.
const STANDING_STEP_S: f64 = 10.0;
/// Time constant of the thermistor in its pocket, s.
const POCKET_S: f64 = 12.0;

/// State of the water.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Water {
    /// In the tub, L.
    pub tub_l: f64,
    /// On the floor, L.
    pub floor_l: f64,
    /// Temperature in the tub, °C.
    pub water_c: f64,
    /// Temperature of the thermistor element, °C.
    pub therm_c: f64,
    /// Air pressure that has leaked out of the dome, kPa.
    pub lost_kpa: f64,
    /// Pressure at the sensor, kPa.
    pub sensed_kpa: f64,
    /// The drain hose is full of water.
    pub primed: bool,
    /// Flows of this tick, L/min: cold, hot, drain.
    pub flows_l_min: [f64; 3],
}

/// What drives the water in one tick.
#[derive(Clone, Copy, Debug)]
pub struct WaterDrive {
    /// Cold valve lifted.
    pub cold_open: bool,
    /// Hot valve lifted.
    pub hot_open: bool,
    /// Pump turning.
    pub pump_turning: bool,
    /// Both taps shut off.
    pub taps_shut: bool,
}

/// Flow through a valve, L/min, by the flow coefficient: Q [m³/h] = Kv √Δp [bar] for water of
/// relative density 1 (IEC 60534-2-1, from memory).
pub fn valve_l_min(kv_m3_h: f64, drop_kpa: f64) -> f64 {
    if kv_m3_h == 0.0 {
        return 0.0;
    }
    kv_m3_h * (drop_kpa.max(0.0) / 100.0).sqrt() * (1000.0 / 60.0)
}

/// Flow coefficient of a valve behind whatever else the water has to come through, m³/h at 1 bar: losses in series add
/// up as 1/Kv² (follows from the form above).
fn behind(kv_m3_h: f64, upstream_kv_m3_h: f64) -> f64 {
    if kv_m3_h == 0.0 || upstream_kv_m3_h == 0.0 {
        return 0.0;
    }
    let ratio = kv_m3_h / upstream_kv_m3_h;
    kv_m3_h / (1.0 + ratio * ratio).sqrt()
}

/// Hydrostatic pressure under `mm` of water at `c` °C, kPa.
pub fn hydrostatic_kpa(mm: f64, c: f64) -> f64 {
    water_kg_m3(c) * GRAVITY_M_S2 * mm * 1e-6
}

/// Depth above the tub floor, mm, of `litres` in the tub.
pub fn level_mm(litres: f64) -> f64 {
    let sump_l = SUMP_M2 * SUMP_MM;
    if litres <= sump_l {
        litres / SUMP_M2
    } else {
        SUMP_MM + (litres - sump_l) / TUB_M2
    }
}

/// Time constant with which `litres` in the tub cool, s: the heat capacity of water and tub over what the wall loses.
fn cooling_s(litres: f64) -> f64 {
    (TUB_J_K + WATER_J_L_K * litres) / LOST_W_K
}

/// A full-bore tap, its fill hose and nothing behind them, m³/h at 1 bar: some 29 L/min at 3 bar, which a bucket
/// under a laundry tap gets in a sound house (common practice, no source).
const OPEN_HOSE_KV: f64 = 1.0;

/// Water as the house brings it to a valve.
#[derive(Clone, Copy, Debug)]
pub struct HouseWater {
    /// Pressure while nothing flows, kPa; 0 where nothing comes through at all.
    pub kpa: f64,
    /// Flow coefficient of pipe and tap before it, m³/h at 1 bar.
    upstream_kv: f64,
    /// Temperature, °C.
    pub c: f64,
}

impl HouseWater {
    fn through(p: &Params, pipe: WaterPipe, tap_kv: f64) -> HouseWater {
        let (kpa, c, pipe_kv) = match pipe {
            WaterPipe::Cold => (Param::SupplyColdKpa, Param::SupplyColdC, Param::ColdPipeKv),
            WaterPipe::Hot => (Param::SupplyHotKpa, Param::SupplyHotC, Param::HotPipeKv),
        };
        let upstream_kv = behind(p.get(pipe_kv), tap_kv);
        HouseWater {
            kpa: if upstream_kv > 0.0 { p.get(kpa) } else { 0.0 },
            upstream_kv,
            c: p.get(c),
        }
    }

    /// Flow through a valve, L/min.
    pub fn flow_l_min(&self, valve_kv: f64) -> f64 {
        valve_l_min(behind(valve_kv, self.upstream_kv), self.kpa)
    }
}

/// What comes out of a tap's hose into a bucket, the tap opened as far as it goes: L/min and °C.
pub fn into_bucket(p: &Params, pipe: WaterPipe) -> (f64, f64) {
    let water = HouseWater::through(p, pipe, f64::INFINITY);
    (water.flow_l_min(OPEN_HOSE_KV), water.c)
}

/// Pressure behind the tap that such a flow into the bucket speaks of, kPa, while it flows.
pub fn bucket_kpa(flow_l_min: f64) -> f64 {
    let per_bar = valve_l_min(OPEN_HOSE_KV, 100.0);
    100.0 * (flow_l_min / per_bar) * (flow_l_min / per_bar)
}

/// Water in the hose of the cold tap and in that of the hot one.
pub fn at_taps(p: &Params, taps_shut: bool) -> [HouseWater; 2] {
    let tap = |pipe, tap_kv| {
        let tap_kv = if taps_shut { 0.0 } else { p.get(tap_kv) };
        HouseWater::through(p, pipe, tap_kv)
    };
    [
        tap(WaterPipe::Cold, Param::ColdTapKv),
        tap(WaterPipe::Hot, Param::HotTapKv),
    ]
}

/// Water at the cold valve and at the hot one.
pub fn at_valves(p: &Params, taps_shut: bool) -> [HouseWater; 2] {
    let mut valves = at_taps(p, taps_shut);
    if p.get(Param::HosesCrossed) > 0.5 {
        valves.reverse();
    }
    valves
}

impl Water {
    /// A dry tub at room temperature.
    pub fn dry(p: &Params) -> Water {
        let room = p.get(Param::AmbientC);
        Water {
            tub_l: 0.0,
            floor_l: 0.0,
            water_c: room,
            therm_c: room,
            lost_kpa: 0.0,
            sensed_kpa: 0.0,
            primed: false,
            flows_l_min: [0.0; 3],
        }
    }

    /// Depth above the tub floor, mm.
    pub fn level_mm(&self) -> f64 {
        level_mm(self.tub_l)
    }

    /// One tick.
    pub fn step(&mut self, p: &Params, drive: WaterDrive) {
        let level = self.level_mm();
        let inlet = |open: bool, kv, leak, water: HouseWater| {
            water.flow_l_min(p.get(if open { kv } else { leak }))
        };
        let [at_cold, at_hot] = at_valves(p, drive.taps_shut);
        let cold = inlet(drive.cold_open, Param::ColdKv, Param::ColdLeakKv, at_cold);
        let hot = inlet(drive.hot_open, Param::HotKv, Param::HotLeakKv, at_hot);
        let drain = self.drain_l_min(p, level, drive.pump_turning);
        let leak_kv = p.get(Param::TubLeakKv);
        let leak = if level > 0.0 && leak_kv > 0.0 {
            valve_l_min(leak_kv, hydrostatic_kpa(level, self.water_c))
        } else {
            0.0
        };
        self.flows_l_min = [cold, hot, drain];

        let minutes = TICK_S / 60.0;
        let inflow_l = (cold + hot) * minutes;
        if inflow_l > 0.0 {
            let heat = cold * at_cold.c + hot * at_hot.c;
            let mixed_c = heat / (cold + hot);
            self.water_c += (mixed_c - self.water_c) * inflow_l / (self.tub_l + inflow_l);
        }
        let room = p.get(Param::AmbientC);
        self.water_c += (room - self.water_c) * (TICK_S / cooling_s(self.tub_l));
        let around = if level > 20.0 { self.water_c } else { room };
        self.therm_c += (around - self.therm_c) * (TICK_S / POCKET_S);

        let out_l = ((drain + leak) * minutes).min(self.tub_l + inflow_l);
        self.tub_l = (self.tub_l + inflow_l - out_l).max(0.0);
        if drain + leak > 0.0 {
            self.floor_l += out_l * leak / (drain + leak);
        }
        let over_l = (self.level_mm() - RIM_MM) * TUB_M2;
        if over_l > 0.0 {
            self.tub_l -= over_l;
            self.floor_l += over_l;
        }
        self.step_dome(p);
    }

    /// So much time in which nothing happens but that the water cools, and what leaks runs out. The taps are shut
    /// meanwhile.
    pub(super) fn stand(&mut self, p: &Params, seconds: f64) {
        let room = p.get(Param::AmbientC);
        let leak_kv = p.get(Param::TubLeakKv);
        let mut left_s = seconds;
        let cooled = |water_c: f64, litres: f64, seconds: f64| {
            room + (water_c - room) * libm::exp(-seconds / cooling_s(litres))
        };
        while leak_kv > 0.0 && left_s > 0.0 && self.tub_l > 0.01 {
            let step_s = left_s.min(STANDING_STEP_S);
            let head_kpa = hydrostatic_kpa(self.level_mm(), self.water_c);
            let out_l = valve_l_min(leak_kv, head_kpa) * step_s / 60.0;
            let out_l = out_l.min(self.tub_l);
            self.water_c = cooled(self.water_c, self.tub_l, step_s);
            self.tub_l -= out_l;
            self.floor_l += out_l;
            left_s -= step_s;
        }
        self.water_c = cooled(self.water_c, self.tub_l, left_s);
        // The air in the hose leaks until next to nothing is left, or is as tight as before.
        let full_kpa = self.lost_kpa.max(self.dome_kpa());
        let kept = libm::exp(-seconds / p.get(Param::HoseLeakS));
        self.lost_kpa = full_kpa + (self.lost_kpa - full_kpa) * kept;
        self.primed = false;
    }

    /// Pressure under the air dome if none of its air is lost, kPa.
    fn dome_kpa(&self) -> f64 {
        let under_mm = self.level_mm() - DOME_MM;
        if under_mm > 0.0 {
            hydrostatic_kpa(under_mm, self.water_c)
        } else {
            0.0
        }
    }

    /// Pump curve H = H0 (1 − (Q/Q0)²) against lift and hose loss; without the pump, a siphon
    /// when the outlet lies below the water and the hose is still full.
    fn drain_l_min(&mut self, p: &Params, level: f64, pump_turning: bool) -> f64 {
        if level <= SIPHON_BREAK_MM && !pump_turning || level <= 0.0 {
            self.primed = false;
            return 0.0;
        }
        let lift_m = p.get(Param::StandpipeM) - p.get(Param::HoseExcessM) - level / 1000.0;
        // Q [L/min] = Kv √(ρ g h / 1 bar)·1000/60, so the hose's head per flow² is its inverse.
        let kv = p.get(Param::DrainHoseKv) * (1.0 - p.get(Param::HoseKink));
        let hose_m_per_q2 = {
            let q_at_1m = valve_l_min(kv, GRAVITY_M_S2);
            1.0 / (q_at_1m * q_at_1m)
        };
        if pump_turning {
            let head = p.get(Param::PumpHeadM);
            let q0 = p.get(Param::PumpFlowLMin);
            let spare_m = head - lift_m;
            self.primed = spare_m > 0.0;
            if self.primed {
                return (spare_m / (head / (q0 * q0) + hose_m_per_q2)).sqrt();
            }
            return 0.0;
        }
        // A siphon needs no pump once the outlet lies low; a low outlet also primes itself when
        // the water stands above the hose's crest.
        if lift_m < 0.0 && (self.primed || level > 150.0) {
            self.primed = true;
            return (-lift_m / hose_m_per_q2).sqrt();
        }
        self.primed &= lift_m < 0.0;
        0.0
    }

    fn step_dome(&mut self, p: &Params) {
        let full_kpa = self.dome_kpa();
        if full_kpa == 0.0 {
            self.lost_kpa = 0.0;
        }
        self.lost_kpa += (full_kpa - self.lost_kpa) * (TICK_S / p.get(Param::HoseLeakS)).min(1.0);
        let dome_kpa = full_kpa - self.lost_kpa;
        self.sensed_kpa +=
            (dome_kpa - self.sensed_kpa) * (TICK_S / p.get(Param::HoseLagS)).min(1.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn valve_flow_follows_its_coefficient() {
        // IEC 60534-2-1 in the water form (from memory): Kv 0.5 at 1 bar 8.333 L/min, at 3 bar 14.434 L/min
        // (checked against the PyPI package fluids 1.3.1).
        assert!((valve_l_min(0.5, 100.0) - 8.333).abs() < 1e-3);
        assert!((valve_l_min(0.5, 300.0) - 14.434).abs() < 1e-3);
    }

    /// Two losses in one line add up: 1/Kv² is the sum of both (IEC 60534-2-1's form turned round, from memory). Two
    /// of Kv 0.5 at 2 bar have 1 bar each, which is the figure above; one without loss before it changes nothing.
    #[test]
    fn losses_in_one_line_add_up() {
        assert!((valve_l_min(behind(0.5, 0.5), 200.0) - 8.333).abs() < 1e-3);
        assert_eq!(behind(0.35, 1.0e9), 0.35);
        assert_eq!(behind(0.35, f64::INFINITY), 0.35);
        assert_eq!([behind(0.0, 0.0), behind(0.35, 0.0)], [0.0, 0.0]);
    }

    /// The estimate takes the flow back to the pressure that it came from.
    #[test]
    fn a_bucket_tells_the_pressure_while_it_fills() {
        for kpa in [12.0, 55.0, 300.0] {
            let l_min = valve_l_min(OPEN_HOSE_KV, kpa);
            assert!((bucket_kpa(l_min) - kpa).abs() < 1e-9);
        }
        // 3 bar fill a 10 L bucket in 21 s.
        assert!((600.0 / valve_l_min(OPEN_HOSE_KV, 300.0) - 20.8).abs() < 0.1);
    }

    #[test]
    fn hydrostatic_pressure_uses_the_density_of_water() {
        // ρ g h with IAPWS density, 0.3 m at 20 °C: 2936.7 Pa.
        let reference = GRAVITY_M_S2 * 0.3 / seuif97::pt(0.101_325, 20.0, seuif97::OV);
        assert!((reference - 2936.7).abs() < 0.1);
        assert!((hydrostatic_kpa(300.0, 20.0) * 1000.0 - reference).abs() < 0.2);
    }

    #[test]
    fn level_and_volume_meet_at_the_sump() {
        assert_eq!(level_mm(0.0), 0.0);
        assert!((level_mm(3.0) - 50.0).abs() < 1e-9);
        assert!((level_mm(40.5) - 300.0).abs() < 1e-9);
    }
}
