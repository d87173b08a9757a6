//! Hands at a machine, tick by tick, so that a test can look after every one.

// Each test that takes this file in uses its own share of it.
#![allow(dead_code)]

use detent_simulation::controller::Board;
use detent_simulation::interface::{Button, Component, Connector, Direction};
use detent_simulation::machine::Machine;
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::Action;
use detent_training::bench::script::{Step, entry_steps};

/// No control remembers longer than this without the plug.
const FORGETS: Span = Span::from_s(150);

/// One thing done to the machine, or time that passes, ticks.
#[derive(Clone, Debug)]
pub enum Deed {
    Wait(u64),
    Detent(Direction),
    Press(Button, bool),
    Lid(bool),
    Plug(bool),
    Connector(Component, bool),
    BailOut,
}

/// Does it, and looks after every tick.
pub fn perform(machine: &mut Machine, deed: &Deed, mut look: impl FnMut(&Machine)) {
    match deed {
        Deed::Wait(ticks) => {
            for _ in 0..*ticks {
                machine.step();
                look(machine);
            }
        }
        Deed::Detent(way) => machine.detent(*way),
        Deed::Press(button, down) => machine.press(*button, *down),
        Deed::Lid(open) => machine.plant_mut().set_lid_open(*open),
        Deed::Plug(plugged) => machine.plant_mut().set_plugged(*plugged),
        Deed::Connector(component, pulled) => {
            let connector = Connector::Load(*component);
            machine.plant_mut().set_connector(&connector, &[], *pulled);
        }
        Deed::BailOut => machine.plant_mut().bail_out(),
    }
}

/// A press, and the hand's way back.
pub fn tap(button: Button, ticks: u64) -> [Deed; 4] {
    [
        Deed::Press(button, true),
        Deed::Wait(ticks),
        Deed::Press(button, false),
        Deed::Wait(15),
    ]
}

/// The board's entry gesture, at an easy pace.
pub fn entry(board: &Board) -> Vec<Deed> {
    let mut deeds = Vec::new();
    for step in entry_steps(&board.gesture) {
        match step {
            Step::Turn {
                way,
                detents,
                every_ms,
            } => {
                for _ in 0..detents {
                    deeds.extend([Deed::Detent(way), Deed::Wait(every_ms / 10)]);
                }
            }
            Step::Tap(button) => deeds.extend(tap(button, 15)),
            Step::Hold { button, ms } => deeds.extend(tap(button, ms / 10)),
            Step::Wait { s } => deeds.push(Deed::Wait(s * TICKS_PER_S)),
            Step::Rest { ms } => deeds.push(Deed::Wait(ms / 10)),
            Step::PowerDown => deeds.extend([Deed::Plug(false), Deed::Wait(FORGETS.0)]),
            Step::Do(Action::Down(button)) => deeds.push(Deed::Press(button, true)),
            Step::Do(Action::Up(button)) => deeds.push(Deed::Press(button, false)),
            Step::Do(Action::Plug) => deeds.extend([Deed::Plug(true), Deed::Wait(200)]),
            Step::Do(Action::OpenLid) => deeds.extend([Deed::Lid(true), Deed::Wait(60)]),
            Step::Do(Action::CloseLid) => deeds.extend([Deed::Lid(false), Deed::Wait(60)]),
            other => panic!("no hand does {other:?} in a gesture"),
        }
    }
    deeds
}

/// Where the knob stands after the board's entry gesture, begun at `at`.
pub fn after_entry(board: &Board, at: u8) -> u8 {
    let Some(turn) = board.panel.selector.turn() else {
        return 0;
    };
    let turned: i32 = entry_steps(&board.gesture)
        .iter()
        .map(|step| match step {
            Step::Turn { way, detents, .. } => i32::from(way.sign()) * i32::from(*detents),
            _ => 0,
        })
        .sum();
    (i32::from(at) + turned).rem_euclid(i32::from(turn)) as u8
}

/// From one position to another: the knob clockwise, or through the `list` by More.
pub fn choose(board: &Board, list: &[u8], from: u8, to: u8) -> Vec<Deed> {
    let mut deeds = Vec::new();
    match board.panel.selector.turn() {
        Some(turn) => {
            for _ in 0..(to + turn - from) % turn {
                deeds.extend([Deed::Detent(Direction::Right), Deed::Wait(16)]);
            }
        }
        None => {
            let place = |position| list.iter().position(|p| *p == position).unwrap_or(0);
            let presses = (place(to) + list.len() - place(from)) % list.len();
            for _ in 0..presses {
                deeds.extend(tap(Button::More, 12));
            }
        }
    }
    deeds.push(Deed::Wait(20));
    deeds
}

/// Positions of the programs, and of the routines of service mode.
pub fn lists(board: &Board) -> (Vec<u8>, Vec<u8>) {
    (
        board.programs.iter().map(|p| p.position).collect(),
        board.menu.iter().map(|m| m.position).collect(),
    )
}
