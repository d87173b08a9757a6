//! A linear electrical network, solved by nodal analysis.
//!
//! Draw it as a [`Netlist`], build it, give its elements values, solve, read voltages and currents.
//! With `f64` it is a direct-current network, with [`num_complex::Complex64`] one of phasors at one
//! frequency. All units are SI: volts, amperes, siemens.
//!
//! A solve is a pure function of the values: no history, no threads, no fused multiply-add and no
//! platform mathematics, so equal values give equal bits on every machine.
//!
//! Why the elimination is our own: on a 40-node ladder with every value changed for each solve
//! (`tests/benches/network.rs`, two shared cores), faer's sparse LU with its symbolic part done once and
//! its memory kept took 2.9 µs a solve, this 1.3 µs; beside ngspice's AC sweep of the same ladder
//! that was 1.4 times and 3.0 to 3.4 times its points a second, where at least twice was wanted.
//! The textbook matrix also loses the digits of a gigaohm contact beside a milliohm wire, which
//! this keeps. faer still finds the order of elimination (approximate minimum degree), and is
//! what the unit tests compare with.

mod elimination;
mod netlist;
mod scalar;

pub use netlist::{Branch, Netlist, Node, TwoPort};
pub use scalar::Scalar;

use elimination::Elimination;

/// Admittance from every node to ground, S. It keeps a part of the circuit that nothing connects
/// from being without a solution. Far below any leakage that matters (1 TΩ).
pub const LEAK_S: f64 = 1e-12;

/// A circuit with values and, after [`Network::solve`], voltages.
#[derive(Clone, Debug)]
pub struct Network<T> {
    netlist: Netlist,
    elimination: Elimination,
    branches: Vec<BranchState<T>>,
    two_ports: Vec<TwoPortState<T>>,
    /// Branches that were ever given an EMF, ascending.
    sources: Vec<u32>,
    /// Working memory of the elimination; the last place takes what belongs nowhere.
    values: Vec<T>,
    inverses: Vec<T>,
    /// By position in the order of elimination; ground comes last.
    voltages: Vec<T>,
    admittances_changed: bool,
    sources_changed: bool,
    solves: u64,
}

#[derive(Clone, Debug)]
struct BranchState<T> {
    y: T,
    emf: T,
    /// Positions of the ends.
    ends: [u32; 2],
    /// Places in `values` that the admittance is added to.
    slots: [u32; 2],
}

#[derive(Clone, Debug)]
struct TwoPortState<T> {
    y: [[T; 2]; 2],
    /// Positions of the ends of each port.
    ends: [[u32; 2]; 2],
    /// For each element of `y`: the places that it is added to, then those it is taken from.
    slots: [[[u32; 4]; 2]; 2],
}

impl<T: Scalar> Network<T> {
    fn new(netlist: Netlist, elimination: Elimination) -> Network<T> {
        let nodes = netlist.node_count();
        let ground = nodes as u32;
        let nowhere = elimination.len() as u32;
        let position = |node: Node| match node {
            Node::GROUND => ground,
            node => elimination.position(node.index() - 1),
        };
        // What the voltage at `column` drives into `row`. The ground's own row is not kept, and
        // a node's effect on itself follows from the rest of its row.
        let slot = |row: u32, column: u32| match (row, column) {
            (row, _) if row == ground => nowhere,
            (row, column) if row == column => nowhere,
            (row, column) if column == ground => elimination.ground_slot(row),
            (row, column) => elimination.slot(row, column),
        };
        let branches: Vec<_> = (netlist.branches.iter())
            .map(|ends| {
                let [a, b] = ends.map(position);
                BranchState {
                    y: T::ZERO,
                    emf: T::ZERO,
                    ends: [a, b],
                    slots: [slot(a, b), slot(b, a)],
                }
            })
            .collect();
        let two_ports = (netlist.two_ports.iter())
            .map(|ends| {
                let ends = ends.map(|port| port.map(position));
                let slots = ends.map(|[a, b]| {
                    ends.map(|[c, d]| [slot(a, d), slot(b, c), slot(a, c), slot(b, d)])
                });
                TwoPortState {
                    y: [[T::ZERO; 2]; 2],
                    ends,
                    slots,
                }
            })
            .collect();
        Network {
            sources: Vec::with_capacity(branches.len()),
            values: vec![T::ZERO; nowhere as usize + 1],
            inverses: vec![T::ZERO; nodes],
            voltages: vec![T::ZERO; nodes + 1],
            netlist,
            elimination,
            branches,
            two_ports,
            admittances_changed: true,
            sources_changed: true,
            solves: 0,
        }
    }

    /// Set the admittance of a branch, S.
    #[inline]
    pub fn set_admittance(&mut self, branch: Branch, y: T) {
        let state = &mut self.branches[branch.0 as usize];
        if !state.y.same_bits(y) {
            state.y = y;
            self.admittances_changed = true;
        }
    }

    /// Set the EMF in series with a branch's admittance, V. It raises `a` over `b`: with nothing
    /// else connected, V(a) − V(b) = `emf`.
    #[inline]
    pub fn set_emf(&mut self, branch: Branch, emf: T) {
        let state = &mut self.branches[branch.0 as usize];
        if !state.emf.same_bits(emf) {
            state.emf = emf;
            self.sources_changed = true;
            // Room for every branch was set aside, so this does not allocate.
            if let Err(at) = self.sources.binary_search(&branch.0) {
                self.sources.insert(at, branch.0);
            }
        }
    }

    /// Set the admittance matrix of a two-port, S: currents into its `a` ends = `y` · voltages from
    /// `a` to `b`. It need not be symmetric: a motor at speed couples its windings one way unlike
    /// the other.
    #[inline]
    pub fn set_two_port(&mut self, port: TwoPort, y: [[T; 2]; 2]) {
        let state = &mut self.two_ports[port.0 as usize];
        let pairs = || y.as_flattened().iter().zip(state.y.as_flattened());
        if !pairs().all(|(new, old)| new.same_bits(*old)) {
            state.y = y;
            self.admittances_changed = true;
        }
    }

    /// Back to how it was built: every element an open circuit, no voltage anywhere. Whatever is set and
    /// solved from here on gives what a new network would give, bit for bit.
    pub fn reset(&mut self) {
        for branch in &mut self.branches {
            branch.y = T::ZERO;
            branch.emf = T::ZERO;
        }
        for port in &mut self.two_ports {
            port.y = [[T::ZERO; 2]; 2];
        }
        self.sources.clear();
        self.voltages.fill(T::ZERO);
        self.admittances_changed = true;
        self.sources_changed = true;
    }

    /// Bring the voltages up to date. Does nothing, and returns false, when no value has changed
    /// since the last time; eliminates anew only when an admittance has.
    pub fn solve(&mut self) -> bool {
        if !self.admittances_changed && !self.sources_changed {
            return false;
        }
        self.feed_currents();
        if self.admittances_changed {
            self.eliminate();
        } else {
            self.elimination.feed(&self.values, &mut self.voltages);
        }
        self.substitute();
        true
    }

    /// As [`Network::solve`], with the same result bit for bit, but never leaves anything out.
    pub fn solve_always(&mut self) {
        self.feed_currents();
        self.eliminate();
        self.substitute();
    }

    /// Voltage of a node over ground, V.
    #[inline]
    pub fn voltage(&self, node: Node) -> T {
        match node {
            Node::GROUND => T::ZERO,
            node => self.voltages[self.elimination.position(node.index() - 1) as usize],
        }
    }

    /// Voltage of `a` over `b`, V.
    #[inline]
    pub fn drop(&self, a: Node, b: Node) -> T {
        self.voltage(a) - self.voltage(b)
    }

    /// Current from `a` to `b` through a branch, A.
    ///
    /// It comes from the difference of two voltages, so their rounding shows: some 1e-10 A through a
    /// milliohm at mains voltage.
    pub fn current(&self, branch: Branch) -> T {
        let state = &self.branches[branch.0 as usize];
        state.y * (self.across(state.ends) - state.emf)
    }

    /// Currents into the `a` ends of a two-port and out of its `b` ends, A.
    pub fn two_port_current(&self, port: TwoPort) -> [T; 2] {
        let state = &self.two_ports[port.0 as usize];
        let [v1, v2] = state.ends.map(|ends| self.across(ends));
        state.y.map(|[y1, y2]| y1 * v1 + y2 * v2)
    }

    /// How often the voltages were worked out.
    pub fn solves(&self) -> u64 {
        self.solves
    }

    /// Number of nodes besides ground.
    pub fn node_count(&self) -> usize {
        self.netlist.node_count()
    }

    /// Every branch: its ends, admittance in S and EMF in V. For writing the circuit out.
    pub fn branches(&self) -> impl Iterator<Item = ([Node; 2], T, T)> + '_ {
        let ends = self.netlist.branches.iter();
        ends.zip(&self.branches).map(|(e, s)| (*e, s.y, s.emf))
    }

    /// Every two-port: the ends of each port and the admittance matrix in S.
    pub fn two_ports(&self) -> impl Iterator<Item = ([[Node; 2]; 2], [[T; 2]; 2])> + '_ {
        let ends = self.netlist.two_ports.iter();
        ends.zip(&self.two_ports).map(|(e, s)| (*e, s.y))
    }

    fn across(&self, [a, b]: [u32; 2]) -> T {
        self.voltages[a as usize] - self.voltages[b as usize]
    }

    /// Each EMF as the current that it drives into its branch's ends when they are held at ground.
    fn feed_currents(&mut self) {
        self.voltages.fill(T::ZERO);
        for source in &self.sources {
            let branch = &self.branches[*source as usize];
            let current = branch.y * branch.emf;
            let [a, b] = branch.ends.map(|end| end as usize);
            self.voltages[a] += current;
            self.voltages[b] += -current;
        }
    }

    /// Always from nothing: adding only what changed would leave rounding from the past.
    fn eliminate(&mut self) {
        self.values.fill(T::ZERO);
        for position in 0..self.netlist.node_count() as u32 {
            self.values[self.elimination.ground_slot(position) as usize] = T::real(LEAK_S);
        }
        for branch in &self.branches {
            for slot in branch.slots {
                self.values[slot as usize] += branch.y;
            }
        }
        for port in &self.two_ports {
            let slots = port.slots.as_flattened();
            for (y, [to1, to2, from1, from2]) in port.y.as_flattened().iter().zip(slots) {
                self.values[*to1 as usize] += *y;
                self.values[*to2 as usize] += *y;
                self.values[*from1 as usize] += -*y;
                self.values[*from2 as usize] += -*y;
            }
        }
        let values = &mut self.values[..self.elimination.len()];
        (self.elimination).factor(values, &mut self.inverses, &mut self.voltages);
    }

    fn substitute(&mut self) {
        (self.elimination).substitute(&self.values, &self.inverses, &mut self.voltages);
        self.voltages[self.netlist.node_count()] = T::ZERO;
        self.admittances_changed = false;
        self.sources_changed = false;
        self.solves += 1;
    }
}

#[cfg(test)]
mod tests;
