//! What the machine in the room shows: the job's at the bench, a shut one before it, the question's in a drill.

use crate::drill::DrillRes;
use crate::film::Film;
use crate::state::{BenchRes, Screen, UiState};
use bevy::prelude::*;
use detent_simulation::controller::{Board, Lamps};
use detent_simulation::interface::Button;

/// The machine as the scene draws it.
#[derive(Resource, Clone, Copy, Debug, Default, PartialEq)]
pub struct DisplayedMachine {
    /// Lamps lit now.
    pub lamps: Lamps,
    /// Where the knob points, in detents clockwise from the index.
    pub dial_position: u8,
    /// Detents or positions in one turn; none without a knob.
    pub dial_stops: Option<u8>,
    /// Buttons that are down.
    pub held: [bool; Button::ALL.len()],
    /// The plug is in the outlet.
    pub plugged: bool,
    /// The lid is up.
    pub lid_open: bool,
    /// The panels are off.
    pub cabinet_open: bool,
    /// Laundry lies in the basket.
    pub laundry: bool,
    /// The meter's probes are drawn where they are.
    pub probes: bool,
    /// Water depth in the tub, mm.
    pub level_mm: f64,
    /// Angle of the basket since the start, revolutions.
    pub basket_rev: f64,
    /// Angle of the agitator since the start, revolutions.
    pub agitator_rev: f64,
    /// Motor speed, rev/min, negative for direction B.
    pub motor_rpm: f64,
    /// How far the cabinet shakes, mm.
    pub shake_mm: f64,
    /// A drill's console is seen, not the bench's.
    pub of_drill: bool,
}

/// The board whose console is displayed.
pub fn displayed_board<'a>(screen: Screen, bench: &'a BenchRes, drill: &'a DrillRes) -> &'a Board {
    let console = (screen == Screen::Drill).then(|| drill.console(0.0));
    match console.flatten() {
        Some(console) => console.board,
        None => &bench.job().board,
    }
}

/// Looks at the bench or at the drill.
pub fn display(
    screen: Res<State<Screen>>,
    bench: Res<BenchRes>,
    drill: Res<DrillRes>,
    ui_state: Res<UiState>,
    time: Res<Time<Real>>,
    mut displayed: ResMut<DisplayedMachine>,
) {
    let view = bench.view();
    let machine = &view.machine;
    let stops = |board: &Board| board.panel.selector.turn();
    let shut = DisplayedMachine {
        lamps: machine.lamps,
        dial_position: machine.dial_position,
        dial_stops: stops(&bench.job().board),
        plugged: true,
        ..default()
    };
    let now = match screen.get() {
        Screen::Bench => DisplayedMachine {
            held: (bench.film()).map_or_else(|| ui_state.held.down(), Film::held),
            plugged: machine.plugged,
            lid_open: machine.lid_open,
            cabinet_open: view.cabinet_open,
            laundry: view.laundry_inside,
            probes: true,
            level_mm: machine.level_mm,
            basket_rev: machine.basket_rev,
            agitator_rev: machine.agitator_rev,
            motor_rpm: machine.motor_rpm,
            shake_mm: machine.shake_mm,
            ..shut
        },
        Screen::Drill => match drill.console(time.elapsed_secs_f64()) {
            Some(console) => DisplayedMachine {
                lamps: console.lamps,
                dial_position: console.dial_position,
                dial_stops: stops(console.board),
                held: console.held,
                plugged: console.plugged,
                lid_open: console.lid_open,
                of_drill: true,
                ..default()
            },
            None => shut,
        },
        // Nobody left the last machine open, with water in it and probes on its pins.
        Screen::Start
        | Screen::Practice
        | Screen::Examination
        | Screen::Workshop
        | Screen::Join => shut,
    };
    displayed.set_if_neq(now);
}

/// What is displayed.
pub fn plugin(app: &mut App) {
    app.init_resource::<DisplayedMachine>()
        .add_systems(Update, display);
}
