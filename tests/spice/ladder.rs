//! A ladder of 40 nodes with resistors, inductors and capacitors, for the solver and for ngspice.

use super::Deck;
use detent_simulation::plant::network::{Branch, Netlist, Network, Node};
use num_complex::Complex64;

/// Number of nodes.
pub const NODES: usize = 40;
/// Source voltage, V.
pub const SOURCE_V: f64 = 120.0;
/// Source resistance, Ω.
pub const SOURCE_OHMS: f64 = 0.5;

/// One element with its value in SI units.
#[derive(Clone, Copy, Debug)]
pub enum Element {
    R(f64),
    L(f64),
    C(f64),
}

impl Element {
    /// Admittance at angular frequency `omega`, S.
    pub fn admittance(self, omega: f64) -> Complex64 {
        match self {
            Element::R(ohms) => Complex64::new(1.0 / ohms, 0.0),
            Element::L(henry) => Complex64::new(0.0, -1.0 / (omega * henry)),
            Element::C(farads) => Complex64::new(0.0, omega * farads),
        }
    }
}

/// Elements with their ends, by node number (0 is ground), source left out. No two are alike.
pub fn elements() -> Vec<(usize, usize, Element)> {
    let mut elements = Vec::new();
    for node in 1..=NODES {
        let spread = 1.0 + 0.013 * node as f64;
        if node > 1 {
            let series = match node % 3 {
                0 => Element::R(1.5 * spread),
                1 => Element::L(0.004 * spread),
                _ => Element::L(0.011 * spread),
            };
            elements.push((node - 1, node, series));
        }
        elements.push((node, 0, Element::R(4700.0 * spread)));
        if node % 2 == 0 {
            elements.push((node, 0, Element::C(0.47e-6 * spread)));
        }
    }
    elements
}

/// The ladder in the solver.
pub struct Ladder {
    pub network: Network<Complex64>,
    pub source: Branch,
    /// In order along the ladder.
    pub nodes: Vec<Node>,
    pub last: Node,
    elements: Vec<(Branch, Element)>,
}

impl Ladder {
    pub fn new() -> Ladder {
        let mut netlist = Netlist::new();
        let mut nodes = vec![Node::GROUND];
        nodes.extend((0..NODES).map(|_| netlist.node()));
        let source = netlist.branch(nodes[1], Node::GROUND);
        let elements = (elements().into_iter())
            .map(|(a, b, element)| (netlist.branch(nodes[a], nodes[b]), element))
            .collect();
        let mut network = netlist.build();
        network.set_admittance(source, Complex64::new(1.0 / SOURCE_OHMS, 0.0));
        network.set_emf(source, Complex64::new(SOURCE_V, 0.0));
        Ladder {
            network,
            source,
            last: nodes[NODES],
            nodes: nodes.split_off(1),
            elements,
        }
    }

    /// One of its branches.
    pub fn branch(&self, at: usize) -> Branch {
        self.elements[at].0
    }

    /// Set every element for angular frequency `omega`.
    pub fn tune(&mut self, omega: f64) {
        for (branch, element) in &self.elements {
            let y = element.admittance(omega);
            self.network.set_admittance(*branch, y);
        }
    }
}

/// The ladder in ngspice, from the elements' own values; its nodes are `n1` to `n40`.
pub fn deck() -> Deck {
    let mut deck = Deck::default();
    deck.line(format_args!("Vsource s 0 DC 0 AC {SOURCE_V:e}"));
    deck.line(format_args!("Rsource s n1 {SOURCE_OHMS:e}"));
    for (at, (a, b, element)) in elements().into_iter().enumerate() {
        let [a, b] = [a, b].map(|n| {
            if n == 0 {
                "0".to_string()
            } else {
                format!("n{n}")
            }
        });
        match element {
            Element::R(ohms) => deck.line(format_args!("R{at} {a} {b} {ohms:e}")),
            Element::L(henry) => deck.line(format_args!("L{at} {a} {b} {henry:e}")),
            Element::C(farads) => deck.line(format_args!("C{at} {a} {b} {farads:e}")),
        }
    }
    deck
}
