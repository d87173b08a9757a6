//! Hands at a machine, tick by tick, so that a test can look after every one.

// Each test that takes this file in uses its own share of it.
#![allow(dead_code)]

use detent_simulation::controller::Board;
use detent_simulation::interface::{Button, Component, Connector, Direction};
use detent_simulation::machine::Machine;
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::Action;
use detent_training::bench::script::{ScriptStep, entry_steps};

/// No control remembers longer than this without the plug.
const FORGETS: Span = Span::from_s(150);

/// One thing done to the machine, or time that passes, ticks.
#[derive(Clone, Debug)]
pub enum HandAction {
    Wait(u64),
    Detent(Direction),
    Press(Button, bool),
    Lid(bool),
    Plug(bool),
    Connector(Component, bool),
    BailOut,
}

/// Does it, and looks after every tick.
pub fn perform(machine: &mut Machine, deed: &HandAction, mut look: impl FnMut(&Machine)) {
    match deed {
        HandAction::Wait(ticks) => {
            for _ in 0..*ticks {
                machine.step();
                look(machine);
            }
        }
        HandAction::Detent(way) => machine.detent(*way),
        HandAction::Press(button, down) => machine.press(*button, *down),
        HandAction::Lid(open) => machine.plant_mut().set_lid_open(*open),
        HandAction::Plug(plugged) => machine.plant_mut().set_plugged(*plugged),
        HandAction::Connector(component, pulled) => {
            let connector = Connector::Load(*component);
            machine.plant_mut().set_connector(&connector, &[], *pulled);
        }
        HandAction::BailOut => machine.plant_mut().bail_out(),
    }
}

/// A press, and the hand's way back.
pub fn tap(button: Button, ticks: u64) -> [HandAction; 4] {
    [
        HandAction::Press(button, true),
        HandAction::Wait(ticks),
        HandAction::Press(button, false),
        HandAction::Wait(15),
    ]
}

/// The board's entry gesture, at an easy pace.
pub fn entry(board: &Board) -> Vec<HandAction> {
    let mut deeds = Vec::new();
    for step in entry_steps(&board.gesture) {
        match step {
            ScriptStep::Turn {
                way,
                detents,
                every_ms,
            } => {
                for _ in 0..detents {
                    deeds.extend([HandAction::Detent(way), HandAction::Wait(every_ms / 10)]);
                }
            }
            ScriptStep::Tap(button) => deeds.extend(tap(button, 15)),
            ScriptStep::Hold { button, ms } => deeds.extend(tap(button, ms / 10)),
            ScriptStep::Wait { s } => deeds.push(HandAction::Wait(s * TICKS_PER_S)),
            ScriptStep::Rest { ms } => deeds.push(HandAction::Wait(ms / 10)),
            ScriptStep::PowerDown => {
                deeds.extend([HandAction::Plug(false), HandAction::Wait(FORGETS.0)])
            }
            ScriptStep::Do(Action::Down(button)) => deeds.push(HandAction::Press(button, true)),
            ScriptStep::Do(Action::Up(button)) => deeds.push(HandAction::Press(button, false)),
            ScriptStep::Do(Action::Plug) => {
                deeds.extend([HandAction::Plug(true), HandAction::Wait(200)])
            }
            ScriptStep::Do(Action::OpenLid) => {
                deeds.extend([HandAction::Lid(true), HandAction::Wait(60)])
            }
            ScriptStep::Do(Action::CloseLid) => {
                deeds.extend([HandAction::Lid(false), HandAction::Wait(60)])
            }
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
            ScriptStep::Turn { way, detents, .. } => i32::from(way.sign()) * i32::from(*detents),
            _ => 0,
        })
        .sum();
    (i32::from(at) + turned).rem_euclid(i32::from(turn)) as u8
}

/// From one position to another: the knob clockwise, or through the `list` by More.
pub fn choose(board: &Board, list: &[u8], from: u8, to: u8) -> Vec<HandAction> {
    let mut deeds = Vec::new();
    match board.panel.selector.turn() {
        Some(turn) => {
            for _ in 0..(to + turn - from) % turn {
                deeds.extend([HandAction::Detent(Direction::Right), HandAction::Wait(16)]);
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
    deeds.push(HandAction::Wait(20));
    deeds
}

/// Positions of the programs, and of the routines of service mode.
pub fn lists(board: &Board) -> (Vec<u8>, Vec<u8>) {
    (
        board.programs.iter().map(|p| p.position).collect(),
        board.menu.iter().map(|m| m.position).collect(),
    )
}
