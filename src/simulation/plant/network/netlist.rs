//! What is connected to what, before any value is known.

use super::elimination::Elimination;
use super::{Network, Scalar};
use std::collections::BTreeSet;

/// A point of the circuit where branches meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Node(pub(super) u32);

impl Node {
    /// The reference that all voltages are measured from.
    pub const GROUND: Node = Node(0);

    /// Number of this node: 0 for ground, then in the order in which they were made.
    pub fn index(self) -> usize {
        self.0 as usize
    }
}

/// Two-terminal element: an admittance in series with an EMF.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Branch(pub(super) u32);

/// Element with two pairs of terminals that act on each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TwoPort(pub(super) u32);

/// A circuit being drawn. Add nodes and elements, then [`Netlist::build`].
///
/// Nodes belong to the netlist that made them; one from another netlist is either taken for the
/// node of the same number here or, beyond the last one, makes the adding function panic.
#[derive(Clone, Debug, Default)]
pub struct Netlist {
    nodes: u32,
    pub(super) branches: Vec<[Node; 2]>,
    pub(super) two_ports: Vec<[[Node; 2]; 2]>,
}

impl Netlist {
    /// An empty circuit: ground alone.
    pub fn new() -> Self {
        Self::default()
    }

    /// A new node.
    pub fn node(&mut self) -> Node {
        self.nodes += 1;
        Node(self.nodes)
    }

    /// A new element between `a` and `b`.
    pub fn branch(&mut self, a: Node, b: Node) -> Branch {
        self.check(&[a, b]);
        self.branches.push([a, b]);
        Branch(self.branches.len() as u32 - 1)
    }

    /// A new coupling of the pair `a1`, `b1` with the pair `a2`, `b2`.
    pub fn two_port(&mut self, a1: Node, b1: Node, a2: Node, b2: Node) -> TwoPort {
        self.check(&[a1, b1, a2, b2]);
        self.two_ports.push([[a1, b1], [a2, b2]]);
        TwoPort(self.two_ports.len() as u32 - 1)
    }

    /// The circuit ready to be given values and solved. Every element starts as an open circuit.
    pub fn build<T: Scalar>(self) -> Network<T> {
        let coupled = self.coupled();
        let elimination = Elimination::plan(self.nodes as usize, &coupled);
        Network::new(self, elimination)
    }

    /// Number of nodes besides ground.
    pub(super) fn node_count(&self) -> usize {
        self.nodes as usize
    }

    /// Unordered pairs of nodes, ground left out, that some element couples. Indices from 0.
    fn coupled(&self) -> BTreeSet<(usize, usize)> {
        let branches = self.branches.iter().map(|ends| &ends[..]);
        let ports = self.two_ports.iter().map(|ends| ends.as_flattened());
        let mut pairs = BTreeSet::new();
        for terminals in branches.chain(ports) {
            for a in terminals {
                for b in terminals {
                    if Node::GROUND < *a && a < b {
                        pairs.insert((a.index() - 1, b.index() - 1));
                    }
                }
            }
        }
        pairs
    }

    fn check(&self, nodes: &[Node]) {
        for node in nodes {
            assert!(
                node.0 <= self.nodes,
                "node {} is not of this netlist",
                node.0
            );
        }
    }
}
