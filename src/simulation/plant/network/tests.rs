use super::*;
use faer::Mat;
use faer::linalg::solvers::Solve;
use faer::sparse::{SparseColMat, Triplet};
use faer::traits::ComplexField;
use num_complex::Complex64;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::f64::consts::{PI, TAU};

/// Voltages of all nodes from faer's sparse LU with pivoting, on the nodal matrix in textbook form.
fn by_faer<T: Scalar + ComplexField>(network: &Network<T>) -> Vec<T> {
    let nodes = network.node_count();
    let mut entries = Vec::new();
    let mut currents = Mat::<T>::zeros(nodes, 1);
    let mut stamp = |row: Node, column: Node, y: T| {
        if row != Node::GROUND && column != Node::GROUND {
            entries.push(Triplet::new(row.index() - 1, column.index() - 1, y));
        }
    };
    for node in 1..=nodes as u32 {
        stamp(Node(node), Node(node), T::real(LEAK_S));
    }
    for ([a, b], y, emf) in network.branches() {
        for (row, column, y) in [(a, a, y), (b, b, y), (a, b, -y), (b, a, -y)] {
            stamp(row, column, y);
        }
        for (node, current) in [(a, y * emf), (b, -(y * emf))] {
            if node != Node::GROUND {
                currents[(node.index() - 1, 0)] += current;
            }
        }
    }
    for (ports, y) in network.two_ports() {
        for (to, from) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            let ([a, b], [c, d], y) = (ports[to], ports[from], y[to][from]);
            for (row, column, y) in [(a, c, y), (b, d, y), (a, d, -y), (b, c, -y)] {
                stamp(row, column, y);
            }
        }
    }
    let matrix = SparseColMat::<usize, T>::try_new_from_triplets(nodes, nodes, &entries).unwrap();
    let x = matrix.sp_lu().unwrap().solve(&currents);
    (0..nodes).map(|node| x[(node, 0)]).collect()
}

/// Largest difference over largest voltage.
fn disagreement(network: &Network<Complex64>, others: &[Complex64]) -> f64 {
    let size = |v: Complex64| (v.re * v.re + v.im * v.im).sqrt();
    let largest = others.iter().map(|v| size(*v)).fold(0.0, f64::max);
    assert!(largest > 0.0, "the network is dead");
    let nodes = (1..).map(Node).zip(others);
    let off = nodes.map(|(node, v)| size(network.voltage(node) - v));
    off.fold(0.0, f64::max) / largest
}

struct Random {
    network: Network<Complex64>,
    branches: Vec<Branch>,
    ports: Vec<TwoPort>,
}

/// A connected passive network of 2 to 60 nodes: resistors from 0.1 Ω to 10 kΩ, reactances with some
/// loss, a few sources, and couplings like a motor's: resistive within a winding, one-sided between.
fn random_network(rng: &mut ChaCha8Rng) -> Random {
    let mut netlist = Netlist::new();
    let count = rng.random_range(2..=60);
    let mut nodes = vec![Node::GROUND];
    nodes.extend((0..count).map(|_| netlist.node()));
    let mut branches = Vec::new();
    for at in 1..=count {
        branches.push(netlist.branch(nodes[at], nodes[rng.random_range(0..at)]));
    }
    for _ in 0..count {
        let [a, b] = [0; 2].map(|_| nodes[rng.random_range(0..=count)]);
        branches.push(netlist.branch(a, b));
    }
    let mut ports = Vec::new();
    for _ in 0..rng.random_range(0..3) {
        let [a, b, c, d] = [0; 4].map(|_| nodes[rng.random_range(0..=count)]);
        ports.push(netlist.two_port(a, b, c, d));
    }
    let mut random = Random {
        network: netlist.build(),
        branches,
        ports,
    };
    for at in 0..random.branches.len() {
        random.set_branch(at, rng);
    }
    for at in 0..random.ports.len() {
        random.set_port(at, rng);
    }
    random.set_source(0, rng);
    random
}

impl Random {
    fn set_branch(&mut self, at: usize, rng: &mut ChaCha8Rng) {
        let siemens = libm::pow(10.0, rng.random_range(-4.0..1.0));
        // Up to ±80°: passive, never without loss.
        let angle = match rng.random_range(0..3) {
            0 => 0.0,
            _ => rng.random_range(-80.0..80.0) * PI / 180.0,
        };
        let y = Complex64::new(siemens * libm::cos(angle), siemens * libm::sin(angle));
        self.network.set_admittance(self.branches[at], y);
    }

    fn set_port(&mut self, at: usize, rng: &mut ChaCha8Rng) {
        let own = || Complex64::new(0.05, -0.08);
        let mut mutual =
            || Complex64::new(rng.random_range(-0.04..0.04), rng.random_range(-0.02..0.02));
        let y = [[own(), mutual()], [mutual(), own()]];
        self.network.set_two_port(self.ports[at], y);
    }

    fn set_source(&mut self, at: usize, rng: &mut ChaCha8Rng) {
        let emf = Complex64::new(rng.random_range(50.0..200.0), rng.random_range(-50.0..50.0));
        self.network.set_emf(self.branches[at], emf);
    }
}

/// Reference: faer 0.24's sparse LU with partial pivoting.
#[test]
fn random_networks_agree_with_faers_sparse_lu() {
    let mut rng = ChaCha8Rng::seed_from_u64(1);
    for round in 0..300 {
        let mut random = random_network(&mut rng);
        random.network.solve();
        let off = disagreement(&random.network, &by_faer(&random.network));
        assert!(off < 1e-9, "round {round}: off by {off:e}");
    }
}

/// Reference: faer 0.24's sparse LU with partial pivoting.
#[test]
fn direct_current_agrees_with_faers_sparse_lu() {
    let mut rng = ChaCha8Rng::seed_from_u64(2);
    for round in 0..100 {
        let mut netlist = Netlist::new();
        let nodes: Vec<Node> = (0..30).map(|_| netlist.node()).collect();
        let mut branches = vec![netlist.branch(nodes[0], Node::GROUND)];
        for at in 1..30 {
            let (a, b) = (nodes[at], nodes[rng.random_range(0..at)]);
            branches.push(netlist.branch(a, b));
            branches.push(netlist.branch(a, nodes[rng.random_range(0..30)]));
        }
        let mut network = netlist.build::<f64>();
        for branch in &branches {
            network.set_admittance(*branch, libm::pow(10.0, rng.random_range(-4.0..1.0)));
        }
        for branch in &branches[..3] {
            network.set_emf(*branch, rng.random_range(-12.0..12.0));
        }
        network.solve();
        for (node, expected) in nodes.iter().zip(by_faer(&network)) {
            let off = (network.voltage(*node) - expected).abs();
            assert!(off < 1e-9 * 12.0, "round {round}: off by {off:e} V");
        }
    }
}

/// Reference: our own arithmetic. Whatever flows into a node flows out again.
#[test]
fn currents_and_two_port_currents_sum_to_zero_at_every_node() {
    let mut rng = ChaCha8Rng::seed_from_u64(3);
    for _ in 0..50 {
        let mut random = random_network(&mut rng);
        random.network.solve();
        let network = &random.network;
        let mut sums: Vec<Complex64> = (1..=network.node_count() as u32)
            .map(|node| network.voltage(Node(node)) * LEAK_S)
            .collect();
        let mut add = |node: Node, current: Complex64| {
            if node != Node::GROUND {
                sums[node.index() - 1] += current;
            }
        };
        let mut largest = 0.0;
        for (branch, ([a, b], y, emf)) in random.branches.iter().zip(network.branches()) {
            let current = network.current(*branch);
            largest = f64::max(largest, (y * emf).norm());
            // Rounding of the two voltages, as the current through this branch.
            largest = largest.max((y * network.voltage(a)).norm());
            add(a, current);
            add(b, -current);
        }
        for (port, (ends, _)) in random.ports.iter().zip(network.two_ports()) {
            for (current, [a, b]) in network.two_port_current(*port).into_iter().zip(ends) {
                add(a, current);
                add(b, -current);
            }
        }
        for sum in sums {
            assert!(sum.norm() < 1e-12 * largest, "{sum} A of {largest} A");
        }
    }
}

#[test]
fn solving_always_and_only_when_something_changed_gives_the_same_bits() {
    let mut rng = ChaCha8Rng::seed_from_u64(4);
    for _ in 0..20 {
        let mut lazy = random_network(&mut rng);
        let mut eager = lazy.network.clone();
        let mut skipped = 0;
        for step in 0..200 {
            let at = rng.random_range(0..lazy.branches.len());
            match rng.random_range(0..6) {
                0 => lazy.set_branch(at, &mut rng),
                1 => lazy.set_source(at, &mut rng),
                2 if !lazy.ports.is_empty() => lazy.set_port(0, &mut rng),
                3 => {
                    let branch = lazy.branches[at];
                    lazy.network.set_emf(branch, Complex64::ZERO);
                }
                _ => {}
            }
            for (at, (_, y, emf)) in lazy.network.branches().enumerate() {
                eager.set_admittance(lazy.branches[at], y);
                eager.set_emf(lazy.branches[at], emf);
            }
            for (at, (_, y)) in lazy.network.two_ports().enumerate() {
                eager.set_two_port(lazy.ports[at], y);
            }
            skipped += u32::from(!lazy.network.solve());
            eager.solve_always();
            for node in (1..=eager.node_count() as u32).map(Node) {
                assert!(
                    lazy.network.voltage(node).same_bits(eager.voltage(node)),
                    "step {step}, node {}",
                    node.index()
                );
            }
        }
        assert!(skipped > 20, "only {skipped} solves left out");
        assert_eq!(eager.solves(), 200);
        assert_eq!(lazy.network.solves(), 200 - u64::from(skipped));
    }
}

#[test]
fn history_leaves_no_trace() {
    let mut rng = ChaCha8Rng::seed_from_u64(5);
    let mut random = random_network(&mut rng);
    random.network.solve();
    let fresh = random.network.clone();
    let branch = random.branches[1];
    let y = fresh.branches().nth(1).unwrap().1;
    random
        .network
        .set_admittance(branch, Complex64::new(1e9, 3.0));
    random.network.set_emf(branch, Complex64::new(5.0, 0.0));
    assert!(random.network.solve());
    random.network.set_admittance(branch, y);
    random.network.set_emf(branch, Complex64::ZERO);
    assert!(random.network.solve());
    for node in (1..=fresh.node_count() as u32).map(Node) {
        assert!(random.network.voltage(node).same_bits(fresh.voltage(node)));
    }
}

#[test]
fn nothing_changed_means_nothing_done() {
    let mut netlist = Netlist::new();
    let node = netlist.node();
    let source = netlist.branch(node, Node::GROUND);
    let load = netlist.branch(node, Node::GROUND);
    let mut network = netlist.build::<f64>();
    assert!(network.solve());
    assert!(!network.solve());
    network.set_admittance(source, 1.0);
    network.set_emf(source, 12.0);
    network.set_admittance(load, 2.0);
    assert!(network.solve());
    network.set_admittance(load, 2.0);
    network.set_emf(source, 12.0);
    assert!(!network.solve());
    assert_eq!(network.solves(), 2);
    assert!((network.voltage(node) - 4.0).abs() < 1e-11);
    assert!((network.current(load) - 8.0).abs() < 1e-11);
    assert!((network.current(source) + 8.0).abs() < 1e-11);
}

/// Ohm's law: an open circuit shows the EMF, `a` over `b`.
#[test]
fn an_emf_raises_a_over_b() {
    let mut netlist = Netlist::new();
    let (a, b) = (netlist.node(), netlist.node());
    let source = netlist.branch(a, b);
    let mut network = netlist.build::<f64>();
    network.set_admittance(source, 10.0);
    network.set_emf(source, 9.0);
    network.solve();
    assert!((network.drop(a, b) - 9.0).abs() < 1e-10);
}

/// Reference: the voltage divider. Two open contacts of 1 GΩ and 2 GΩ with milliohm wires between
/// them: a matrix with stored diagonals gets three digits right here.
#[test]
fn gigaohms_beside_milliohms_keep_their_digits() {
    let mut netlist = Netlist::new();
    let chain: Vec<Node> = (0..6).map(|_| netlist.node()).collect();
    let source = netlist.branch(chain[0], Node::GROUND);
    let links: Vec<Branch> = (chain.windows(2))
        .map(|pair| netlist.branch(pair[0], pair[1]))
        .collect();
    let last = netlist.branch(chain[5], Node::GROUND);
    let mut network = netlist.build::<f64>();
    network.set_admittance(source, 1e3);
    network.set_emf(source, 120.0);
    for link in &links {
        network.set_admittance(*link, 1e3);
    }
    network.set_admittance(links[1], 1e-9);
    network.set_admittance(last, 0.5e-9);
    network.solve();
    // Four nodes behind the first contact leak, 1e-12 S each.
    let expected = 120.0 * 1e-9 / (1e-9 + 0.5e-9 + 4.0 * LEAK_S);
    let off = (network.voltage(chain[3]) - expected).abs() / expected;
    assert!(off < 1e-12, "off by {off:e}");
    let rounded = (by_faer(&network)[3] - expected).abs() / expected;
    assert!(
        rounded > 1e-6,
        "the textbook form does as well: {rounded:e}"
    );
}

/// Reference: an ideal gyrator turns a capacitor into an inductor, L = C/g² (circuit theory,
/// Tellegen 1948, from memory).
#[test]
fn a_two_port_need_not_be_symmetric() {
    let (g, farads, omega) = (0.01, 2e-6, TAU * 60.0);
    let mut netlist = Netlist::new();
    let (top, far) = (netlist.node(), netlist.node());
    let source = netlist.branch(top, Node::GROUND);
    let capacitor = netlist.branch(far, Node::GROUND);
    let gyrator = netlist.two_port(top, Node::GROUND, far, Node::GROUND);
    let mut network = netlist.build::<Complex64>();
    let real = |x| Complex64::new(x, 0.0);
    network.set_admittance(source, real(1.0));
    network.set_emf(source, real(1.0));
    network.set_admittance(capacitor, Complex64::new(0.0, omega * farads));
    network.set_two_port(gyrator, [[real(0.0), real(g)], [real(-g), real(0.0)]]);
    network.solve();
    let impedance = Complex64::new(0.0, omega * farads / (g * g));
    let expected = impedance / (impedance + 1.0);
    assert!((network.voltage(top) - expected).norm() < 1e-9);
    let [into, _] = network.two_port_current(gyrator);
    assert!((into - expected / impedance).norm() < 1e-9);
}

#[test]
fn loose_parts_and_loops_on_one_node_do_no_harm() {
    let mut netlist = Netlist::new();
    let (a, b, alone) = (netlist.node(), netlist.node(), netlist.node());
    let island = netlist.branch(a, b);
    let own = netlist.branch(a, a);
    let earth = netlist.branch(Node::GROUND, Node::GROUND);
    let mut network = netlist.build::<f64>();
    for branch in [island, own, earth] {
        network.set_admittance(branch, 5.0);
        network.set_emf(branch, 3.0);
    }
    network.solve();
    assert!((network.drop(a, b) - 3.0).abs() < 1e-9);
    assert!(network.voltage(alone) == 0.0);
}

/// Reference: at resonance an inductor and a capacitor in series are a short circuit (circuit
/// theory). With no loss in either, the node between them has nothing but its leak to divide by:
/// the worst that a network without pivoting can meet.
#[test]
fn a_lossless_series_resonance_is_solved() {
    let mut netlist = Netlist::new();
    let (top, between) = (netlist.node(), netlist.node());
    let source = netlist.branch(top, Node::GROUND);
    let inductor = netlist.branch(top, between);
    let capacitor = netlist.branch(between, Node::GROUND);
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, Complex64::new(1.0 / 20.0, 0.0));
    network.set_emf(source, Complex64::new(100.0, 0.0));
    // 1/37.7 S each, as 0.1 H and 70.4 µF have at 60 Hz.
    network.set_admittance(inductor, Complex64::new(0.0, -1.0 / 37.7));
    network.set_admittance(capacitor, Complex64::new(0.0, 1.0 / 37.7));
    network.solve();
    let current = network.current(capacitor);
    assert!((current - 5.0).norm() < 1e-6, "{current} A");
    let across = network.voltage(between);
    let expected = Complex64::new(0.0, -5.0 * 37.7);
    assert!((across - expected).norm() < 1e-6, "{across} V");
}
