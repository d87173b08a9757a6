//! Looking, feeling and turning by hand: what can be found without a meter. A finding follows from
//! the machine's parameters and state alone.

use detent_simulation::interface::{Component, Terminal, WaterPipe};
use detent_simulation::names;
use detent_simulation::plant::water::at_valves;
use detent_simulation::plant::{Param, Params, Plant};
use detent_simulation::units::Time;

names! {
    /// Something that eyes, hands or nose notice. Its text is `finding-{name}`.
    Finding {
        OutletBrowned = "outlet-browned", OutletReversed = "outlet-reversed",
        OutletNoGround = "outlet-no-ground", ExtensionCord = "extension-cord",
        CordBrowned = "cord-browned", FuseWireGone = "fuse-wire-gone",
        RelayScorched = "relay-scorched", StopSwitchCracked = "stop-switch-cracked",
        DialSoft = "dial-soft", DialCableBroken = "dial-cable-broken", BoltStiff = "bolt-stiff",
        ScreenClogged = "screen-clogged", ValveTrickles = "valve-trickles",
        ImpellerStuck = "impeller-stuck", ImpellerFouled = "impeller-fouled",
        ShaftStiff = "shaft-stiff", MotorHot = "motor-hot", GapWide = "gap-wide",
        AirHoseCracked = "air-hose-cracked", AirHoseBlocked = "air-hose-blocked",
        BeltOff = "belt-off", BeltSlack = "belt-slack", BasketStiff = "basket-stiff",
        TubDrips = "tub-drips", HoseKinked = "hose-kinked", HoseClogged = "hose-clogged",
        HoseEndLow = "hose-end-low", HoseEndHigh = "hose-end-high", HoseTooDeep = "hose-too-deep",
        PinBurnt = "pin-burnt", Suds = "suds", TooMuchLaundry = "too-much-laundry",
        LaundryOneSided = "laundry-one-sided", ColdTapShut = "cold-tap-shut",
        ColdTapThrottled = "cold-tap-throttled", HotTapShut = "hot-tap-shut",
        HotTapThrottled = "hot-tap-throttled", HosesCrossed = "hoses-crossed",
        MachineRocks = "machine-rocks",
        GearStripped = "gear-stripped",
        OutletTripped = "outlet-tripped",
        WindingSmells = "winding-smells",
    }
}

/// One look at one component.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// When.
    pub at: Time,
    /// What was looked at.
    pub component: Component,
    /// What was noticed; empty when there was nothing to see.
    pub findings: Vec<Finding>,
    /// Failure modes, by their place in the catalogue, that would have shown something else.
    /// For the score, not for the trainee's eyes.
    pub rules_out: Vec<bool>,
}

/// What is noticed at `component` of `plant` if its parameters were `p`. The bounds are what a
/// practised eye or hand tells from sound (common practice, no source).
pub fn visible_findings(plant: &Plant, p: &Params, component: Component) -> Vec<Finding> {
    use Finding as F;
    let get = |param| p.get(param);
    let valve = |kv, leak, pipe: WaterPipe| {
        let water = at_valves(p, plant.taps_shut())[pipe.index()];
        vec![
            (get(kv) < 0.12, F::ScreenClogged),
            (water.flow_l_min(get(leak)) > 0.2, F::ValveTrickles),
        ]
    };
    // How far its handle is turned: a washer is filled from a tap that is wide open.
    let tap = |kv, shut, throttled| {
        [
            (get(kv) < 0.01, shut),
            ((0.01..0.3).contains(&get(kv)), throttled),
        ]
    };
    let belt_on = get(Param::BeltGripNm) > 0.1;
    let seen = match component {
        // A look at the outlet, and a tester with three lamps in it.
        Component::Supply => vec![
            (get(Param::SupplyOhms) > 0.8, F::OutletBrowned),
            (get(Param::PolarityReversed) > 0.5, F::OutletReversed),
            (get(Param::OutletGroundOhms) > 100.0, F::OutletNoGround),
            (get(Param::ExtensionOhms) > 0.05, F::ExtensionCord),
            // It stays out when what tripped it has been mended, and would never have come out where nothing leaks.
            (
                plant.outlet_tripped() && (leaks(p) || !leaks(plant.params())),
                F::OutletTripped,
            ),
        ],
        Component::Cord => {
            let browned = (0.3..1e6).contains(&get(Param::CordLineOhms));
            vec![(browned, F::CordBrowned)]
        }
        Component::LineFuse => {
            let gone = plant.supply().fuse_blown || get(Param::FuseOhms) > 1e3;
            vec![(gone, F::FuseWireGone)]
        }
        Component::Board => {
            let scorched = RELAY_CONTACTS
                .iter()
                .any(|param| (0.5..1e6).contains(&get(*param)));
            vec![
                (scorched, F::RelayScorched),
                (get(Param::StopButtonOhms) > 1e3, F::StopSwitchCracked),
            ]
        }
        Component::Dial => vec![
            (get(Param::DialWear) > 0.5, F::DialSoft),
            (get(Param::EncoderOhms) > 1e3, F::DialCableBroken),
        ],
        Component::LidLock => vec![(get(Param::LockTravelS) > 2.0, F::BoltStiff)],
        Component::InletCold => valve(Param::ColdKv, Param::ColdLeakKv, WaterPipe::Cold),
        Component::InletHot => valve(Param::HotKv, Param::HotLeakKv, WaterPipe::Hot),
        Component::DrainPump => vec![
            (get(Param::PumpFree) < 0.5, F::ImpellerStuck),
            (get(Param::PumpFlowLMin) < 25.0, F::ImpellerFouled),
        ],
        Component::Motor => vec![
            (get(Param::MotorDragNm) > 0.5, F::ShaftStiff),
            (plant.drive().winding_c > 80.0, F::MotorHot),
            // Varnish that has burned is smelled for weeks: turns that lie on each other, or a rotor that stood still
            // under current.
            (
                get(Param::MotorMagnetOhms) < SHORTED_TIMES * get(Param::MotorLeakOhms)
                    || get(Param::MotorDragNm) > STALLED_NM,
                F::WindingSmells,
            ),
        ],
        Component::Pickup => vec![(get(Param::PickupGap) < 0.6, F::GapWide)],
        Component::PressureHose => vec![
            (get(Param::HoseLeakS) < 2000.0, F::AirHoseCracked),
            (get(Param::HoseLagS) > 100.0, F::AirHoseBlocked),
        ],
        Component::Belt => vec![
            (!belt_on, F::BeltOff),
            (belt_on && get(Param::BeltGripNm) < 4.0, F::BeltSlack),
        ],
        Component::Tub => {
            let motor_nm = if belt_on {
                get(Param::MotorDragNm)
            } else {
                0.0
            };
            vec![
                (
                    get(Param::BasketDragNm) + 2.0 * motor_nm > 1.5,
                    F::BasketStiff,
                ),
                (get(Param::TubLeakKv) > 0.01, F::TubDrips),
            ]
        }
        Component::DrainHose => vec![
            (get(Param::HoseKink) > 0.3, F::HoseKinked),
            (get(Param::DrainHoseKv) < 1.5, F::HoseClogged),
            (get(Param::StandpipeM) < 0.5, F::HoseEndLow),
            (get(Param::StandpipeM) > 1.5, F::HoseEndHigh),
            (get(Param::HoseExcessM) > 0.3, F::HoseTooDeep),
        ],
        Component::Harness => {
            let burnt = Terminal::ALL
                .iter()
                .any(|t| get(Param::ContactOhms(*t)) > 0.3);
            vec![(burnt, F::PinBurnt)]
        }
        Component::Laundry => vec![
            (get(Param::Suds) > 0.3, F::Suds),
            (get(Param::LoadKg) > 6.0, F::TooMuchLaundry),
            (get(Param::LoadOffsetKgM) > 0.12, F::LaundryOneSided),
        ],
        Component::Taps => {
            if plant.taps_shut() {
                vec![(true, F::ColdTapShut), (true, F::HotTapShut)]
            } else {
                let cold = tap(Param::ColdTapKv, F::ColdTapShut, F::ColdTapThrottled);
                let hot = tap(Param::HotTapKv, F::HotTapShut, F::HotTapThrottled);
                cold.into_iter().chain(hot).collect()
            }
        }
        Component::InletHoses => vec![(get(Param::HosesCrossed) > 0.5, F::HosesCrossed)],
        Component::Floor => vec![(get(Param::FloorRockMm) > 2.0, F::MachineRocks)],
        Component::ClutchActuator => vec![(get(Param::ClutchRpm) < 0.5, F::GearStripped)],
        Component::Filter
        | Component::RunCapacitor
        | Component::PressureSensor
        | Component::Thermistor => Vec::new(),
    };
    seen.into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, finding)| finding)
        .collect()
}

/// A motor whose magnetizing reactance is no more than so many times its leakage has turns that lie on each other.
const SHORTED_TIMES: f64 = 5.0;
/// No motor turns against this, N·m.
const STALLED_NM: f64 = 20.0;
/// Insulation below this is bad, Ω.
const LEAKS_OHMS: f64 = 1e6;

/// Whether a live part has current to the cabinet.
fn leaks(p: &Params) -> bool {
    Param::all().any(|param| param.is_insulation() && p.get(param) < LEAKS_OHMS)
}

const RELAY_CONTACTS: [Param; 7] = [
    Param::RelayColdClosedOhms,
    Param::RelayHotClosedOhms,
    Param::RelayPumpClosedOhms,
    Param::RelayMotorAClosedOhms,
    Param::RelayMotorBClosedOhms,
    Param::RelayClutchClosedOhms,
    Param::RelayLockClosedOhms,
];
