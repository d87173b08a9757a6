//! The wiring diagram's plan: which wires of a connector end at one component, and what lies between its
//! terminals.

use detent_simulation::controller::{BoardConnector, BoardPin};
use detent_simulation::interface::{Component, Terminal};

/// What lies between two terminals of a component.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Element {
    /// A winding.
    Winding,
    /// A contact.
    Contact,
    /// A capacitor.
    Capacitor,
    /// A resistor that follows the temperature.
    Thermistor,
    /// A sensor with a supply of its own.
    Sensor,
}

/// First and last terminal, what lies between them, and in which column it is drawn, from 0.
pub const ELEMENTS: [(Terminal, Terminal, Element, u8); 14] = [
    (Terminal::Cold1, Terminal::Cold2, Element::Winding, 0),
    (Terminal::Hot1, Terminal::Hot2, Element::Winding, 0),
    (Terminal::Pump1, Terminal::Pump2, Element::Winding, 0),
    // The wider one outside, so that no line crosses another.
    (Terminal::MotorA, Terminal::MotorCommon, Element::Winding, 1),
    (Terminal::MotorB, Terminal::MotorCommon, Element::Winding, 0),
    (Terminal::Cap1, Terminal::Cap2, Element::Capacitor, 0),
    (Terminal::Clutch1, Terminal::Clutch2, Element::Winding, 0),
    (Terminal::Cam1, Terminal::Cam2, Element::Contact, 0),
    (
        Terminal::LockCoil1,
        Terminal::LockCoil2,
        Element::Winding,
        0,
    ),
    (
        Terminal::LockLineIn,
        Terminal::LockLineOut,
        Element::Contact,
        1,
    ),
    (
        Terminal::LidSwitch1,
        Terminal::LidSwitch2,
        Element::Contact,
        0,
    ),
    (Terminal::Therm1, Terminal::Therm2, Element::Thermistor, 0),
    (
        Terminal::PickupSupply,
        Terminal::PickupOut,
        Element::Sensor,
        0,
    ),
    (
        Terminal::PressureSupply,
        Terminal::PressureOut,
        Element::Sensor,
        0,
    ),
];

/// The wires of a connector by the component where they end, in the order of the first pins, each group in the order of
/// its terminals: so no wire crosses another.
pub fn wire_groups(connector: &BoardConnector) -> Vec<(Component, Vec<&BoardPin>)> {
    let mut groups: Vec<(Component, Vec<&BoardPin>)> = Vec::new();
    for pin in &connector.pins {
        let component = pin.terminal.component();
        match groups.iter_mut().find(|(of, _)| *of == component) {
            Some((_, pins)) => pins.push(pin),
            None => groups.push((component, vec![pin])),
        }
    }
    for (_, pins) in &mut groups {
        pins.sort_by_key(|pin| pin.terminal.index());
    }
    groups
}

/// The digit at the end of a terminal's name, which is printed at it.
pub fn terminal_number(terminal: Terminal) -> &'static str {
    let name = terminal.name();
    &name[name.len() - 1..]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_terminal_but_the_cord_s_has_something_behind_it() {
        for terminal in Terminal::ALL {
            let drawn = ELEMENTS.iter().any(|(from, to, ..)| {
                (from.index()..=to.index()).contains(&terminal.index())
                    && from.component() == terminal.component()
            });
            assert!(
                drawn || terminal.component() == Component::Cord,
                "{terminal}"
            );
        }
    }

    #[test]
    fn every_pin_of_a_board_is_in_one_group_and_neighbors_are_in_order() {
        let content_library =
            crate::ContentLibrary::builtin().expect("the built-in content is sound");
        for connector in content_library
            .boards
            .iter()
            .flat_map(|board| &board.connectors)
        {
            let groups = wire_groups(connector);
            let pins: usize = groups.iter().map(|(_, pins)| pins.len()).sum();
            assert_eq!(pins, connector.pins.len());
            for (component, pins) in groups {
                assert!(pins.iter().all(|pin| pin.terminal.component() == component));
                assert!(pins.is_sorted_by_key(|pin| pin.terminal.index()));
            }
        }
    }
}
