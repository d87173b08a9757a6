//! Spot the hazard: a technician's bench in a picture, the work that is about to be done there, and one thing that is
//! wrong for it. Which states are right for which work is common practice, no source.

use super::{SuppliedBoard, SuppliedBoardId, below, draws, one_of, supplied_board, within};
use detent_simulation::names;
use rand_chacha::ChaCha8Rng;
use std::f64::consts::SQRT_2;

/// Voltage that a discharged capacitor shows at most, V.
const DISCHARGED_V: f64 = 0.9;
/// Least share of the supply's peak that a charged one still has.
const STILL_CHARGED: f64 = 0.6;

names! {
    /// A thing in the picture, from left to right. Its name is `safe-object-{name}`.
    BenchObject {
        Plug = "plug", Taps = "taps", Hose = "hose", Bucket = "bucket", Capacitor = "capacitor",
        Lid = "lid", Floor = "floor", Belt = "belt", Meter = "meter", Screwdriver = "screwdriver",
        ProtectiveGear = "protective-gear",
    }
}

names! {
    /// A thing as it is drawn. What is seen of it is `safe-state-{name}`; where it can be the hazard, why and what to
    /// do is `safe-hazard-{name}`.
    ObjectState {
        PlugIn = "plug-in", PlugOut = "plug-out",
        TapsOpen = "taps-open", TapsShut = "taps-shut",
        HoseConnected = "hose-connected", HoseLoose = "hose-loose",
        BucketOnFloor = "bucket-on-floor", BucketOnTop = "bucket-on-top",
        CapacitorCovered = "capacitor-covered", CapacitorUnmeasured = "capacitor-unmeasured",
        CapacitorDischarged = "capacitor-discharged", CapacitorCharged = "capacitor-charged",
        LidDown = "lid-down", LidUp = "lid-up",
        FloorDry = "floor-dry", FloorWet = "floor-wet",
        BeltStill = "belt-still", BeltTurning = "belt-turning",
        MeterPutAside = "meter-put-aside", MeterVoltsAc = "meter-volts-ac", MeterVoltsDc = "meter-volts-dc",
        MeterOhms = "meter-ohms", MeterLeadInAmps = "meter-lead-in-amps", MeterLeadBare = "meter-lead-bare",
        ScrewdriverHung = "screwdriver-hung", ScrewdriverOnBoard = "screwdriver-on-board",
        ScrewdriverInBelt = "screwdriver-in-belt",
        GearWhole = "gear-whole", GlovesTorn = "gloves-torn", GlassesCracked = "glasses-cracked",
    }
}

names! {
    /// What is about to be done. Its text is `safe-planned-{name}`.
    PlannedWork {
        PullConnector = "pull-connector", MeasureMains = "measure-mains", MeasureCharge = "measure-charge",
        CleanScreen = "clean-screen", WatchDrive = "watch-drive", FillTub = "fill-tub",
    }
}

/// Things of which one is left out of a picture, where the work does not need it.
const OPTIONAL: [BenchObject; 4] = [
    BenchObject::Bucket,
    BenchObject::Meter,
    BenchObject::Screwdriver,
    BenchObject::ProtectiveGear,
];

impl ObjectState {
    /// The thing that is in this state.
    pub const fn object(self) -> BenchObject {
        use ObjectState as S;
        match self {
            S::PlugIn | S::PlugOut => BenchObject::Plug,
            S::TapsOpen | S::TapsShut => BenchObject::Taps,
            S::HoseConnected | S::HoseLoose => BenchObject::Hose,
            S::BucketOnFloor | S::BucketOnTop => BenchObject::Bucket,
            S::CapacitorCovered
            | S::CapacitorUnmeasured
            | S::CapacitorDischarged
            | S::CapacitorCharged => BenchObject::Capacitor,
            S::LidDown | S::LidUp => BenchObject::Lid,
            S::FloorDry | S::FloorWet => BenchObject::Floor,
            S::BeltStill | S::BeltTurning => BenchObject::Belt,
            S::MeterPutAside
            | S::MeterVoltsAc
            | S::MeterVoltsDc
            | S::MeterOhms
            | S::MeterLeadInAmps
            | S::MeterLeadBare => BenchObject::Meter,
            S::ScrewdriverHung | S::ScrewdriverOnBoard | S::ScrewdriverInBelt => {
                BenchObject::Screwdriver
            }
            S::GearWhole | S::GlovesTorn | S::GlassesCracked => BenchObject::ProtectiveGear,
        }
    }
}

impl PlannedWork {
    /// How a thing has to be for this work.
    pub const fn sound(self, object: BenchObject) -> ObjectState {
        use ObjectState as S;
        use PlannedWork as W;
        match object {
            BenchObject::Plug => match self {
                W::MeasureMains | W::WatchDrive | W::FillTub => S::PlugIn,
                W::PullConnector | W::MeasureCharge | W::CleanScreen => S::PlugOut,
            },
            BenchObject::Taps => S::TapsShut,
            BenchObject::Hose => S::HoseConnected,
            BenchObject::Bucket => S::BucketOnFloor,
            BenchObject::Capacitor => match self {
                W::PullConnector => S::CapacitorDischarged,
                W::MeasureCharge => S::CapacitorUnmeasured,
                W::MeasureMains | W::CleanScreen | W::WatchDrive | W::FillTub => {
                    S::CapacitorCovered
                }
            },
            BenchObject::Lid => S::LidDown,
            BenchObject::Floor => S::FloorDry,
            BenchObject::Belt => match self {
                W::WatchDrive => S::BeltTurning,
                W::PullConnector
                | W::MeasureMains
                | W::MeasureCharge
                | W::CleanScreen
                | W::FillTub => S::BeltStill,
            },
            BenchObject::Meter => match self {
                W::MeasureMains => S::MeterVoltsAc,
                W::MeasureCharge => S::MeterVoltsDc,
                W::PullConnector | W::CleanScreen | W::WatchDrive | W::FillTub => S::MeterPutAside,
            },
            BenchObject::Screwdriver => S::ScrewdriverHung,
            BenchObject::ProtectiveGear => S::GearWhole,
        }
    }

    /// What can be wrong for this work: each of these endangers it beyond dispute.
    pub const fn hazards(self) -> &'static [ObjectState] {
        use ObjectState as S;
        match self {
            PlannedWork::PullConnector => &[
                S::PlugIn,
                S::CapacitorCharged,
                S::CapacitorUnmeasured,
                S::BeltTurning,
                S::FloorWet,
                S::BucketOnTop,
            ],
            PlannedWork::MeasureMains => &[
                S::MeterOhms,
                S::MeterLeadInAmps,
                S::MeterLeadBare,
                S::GlovesTorn,
                S::GlassesCracked,
                S::ScrewdriverOnBoard,
                S::FloorWet,
                S::BucketOnTop,
            ],
            PlannedWork::MeasureCharge => &[
                S::PlugIn,
                S::MeterOhms,
                S::MeterLeadInAmps,
                S::MeterLeadBare,
                S::GlovesTorn,
                S::BeltTurning,
            ],
            PlannedWork::CleanScreen => &[S::TapsOpen, S::PlugIn, S::FloorWet],
            PlannedWork::WatchDrive => &[S::LidUp, S::ScrewdriverInBelt, S::FloorWet],
            PlannedWork::FillTub => &[S::HoseLoose, S::ScrewdriverOnBoard, S::BucketOnTop],
        }
    }

    /// The work cannot be done without it.
    const fn needs(self, object: BenchObject) -> bool {
        match self {
            PlannedWork::MeasureMains | PlannedWork::MeasureCharge => {
                matches!(object, BenchObject::Meter | BenchObject::ProtectiveGear)
            }
            PlannedWork::CleanScreen => matches!(object, BenchObject::Bucket),
            PlannedWork::PullConnector | PlannedWork::WatchDrive | PlannedWork::FillTub => false,
        }
    }
}

/// A picture in which one thing is wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct HazardTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// What is about to be done.
    pub work: PlannedWork,
    /// What is in the picture, from left to right.
    pub objects: Vec<ObjectState>,
    /// What the card on the capacitor says, where it was measured, V.
    pub card_v: f64,
    /// The one that is wrong, by its place among the objects.
    pub(super) should: usize,
}

/// Draws a picture from a seed.
pub fn ask(supplied_boards: &[SuppliedBoard<'_>], seed: u64) -> HazardTask {
    let rng = &mut draws(seed);
    picture(supplied_board(supplied_boards, rng), rng)
}

/// Draws a picture: the work first, so that one with many hazards does not come up more often.
pub(super) fn picture(supplied_board: &SuppliedBoard<'_>, rng: &mut ChaCha8Rng) -> HazardTask {
    let work = one_of(PlannedWork::ALL, rng).expect("there is work");
    let hazard = one_of(work.hazards(), rng).expect("each work has its hazards");
    let dispensable: Vec<BenchObject> = (OPTIONAL.into_iter())
        .filter(|object| *object != hazard.object() && !work.needs(*object))
        .collect();
    let left_out = one_of(&dispensable, rng);
    let states = BenchObject::ALL.iter().copied();
    let objects: Vec<ObjectState> = states
        .filter(|object| Some(*object) != left_out)
        .map(|object| match (work.sound(object), hazard) {
            (_, hazard) if object == hazard.object() => hazard,
            // While it is plugged in, the card on the capacitor would say what is true no more.
            (ObjectState::CapacitorDischarged, ObjectState::PlugIn) => {
                ObjectState::CapacitorCovered
            }
            (sound, _) => sound,
        })
        .collect();
    let peak_v = supplied_board.mains.rating().volts * SQRT_2;
    let card_v = match hazard {
        ObjectState::CapacitorCharged => within(STILL_CHARGED * peak_v, peak_v, rng),
        _ => f64::from(below(10, rng) as u32) * DISCHARGED_V / 9.0,
    };
    HazardTask {
        place: supplied_board.place(),
        work,
        should: (objects.iter().position(|state| *state == hazard)).unwrap_or_default(),
        objects,
        card_v,
    }
}
