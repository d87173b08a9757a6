//! Writes circuits for ngspice, runs it in batch mode and reads its answers.
//!
//! ngspice (Debian package `ngspice`, 3-clause BSD) is the reference that the network solver is
//! checked against; it is called as a program and is no part of the product.

// Each test and bench that takes this file in uses its own share of it.
#![allow(dead_code)]

pub mod ladder;

use detent_simulation::plant::network::{LEAK_S, Network, Node};
use num_complex::Complex64;
use std::collections::BTreeMap;
use std::f64::consts::TAU;
use std::fmt::{Display, Write as _};
use std::io::Write as _;
use std::process::{Command, Stdio};

/// Whether ngspice can be run. Where it is missing, says so on standard error, or panics when the
/// environment has `CI=true`: there it must not be missing.
pub fn available(what_for: &str) -> bool {
    let found = Command::new("ngspice")
        .arg("--version")
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    if !found {
        let message = format!("ngspice is not installed, so this was SKIPPED: {what_for}");
        assert!(std::env::var("CI").as_deref() != Ok("true"), "{message}");
        eprintln!("{message}");
    }
    found
}

/// A circuit in ngspice's own language.
#[derive(Clone, Debug, Default)]
pub struct Deck {
    lines: String,
}

impl Deck {
    /// A circuit from its element lines, without title and `.end`.
    pub fn new(lines: &str) -> Deck {
        let mut deck = Deck::default();
        for line in lines.lines().map(str::trim).filter(|l| !l.is_empty()) {
            deck.line(line);
        }
        deck
    }

    /// Add one element.
    pub fn line(&mut self, line: impl Display) {
        writeln!(self.lines, "{line}").expect("a string takes any text");
    }

    /// Add to each of these nodes the leak to ground that the solver has.
    pub fn leaks<N: Display>(&mut self, nodes: impl IntoIterator<Item = N>) {
        for node in nodes {
            self.line(format_args!("Rleak{node} {node} 0 {:e}", 1.0 / LEAK_S));
        }
    }

    /// A solver's direct-current network; its nodes are `n1`, `n2`….
    pub fn from_dc(network: &Network<f64>) -> Deck {
        let mut deck = Deck::default();
        for (at, (ends, y, emf)) in network.branches().enumerate() {
            let [a, b] = ends.map(name);
            let inner = deck.emf(at, &a, format_args!("DC {emf:e}"), emf != 0.0);
            deck.conductance(&format!("b{at}"), [&inner, &b], y);
        }
        for (at, (ends, y)) in network.two_ports().enumerate() {
            let ports = ends.map(|port| port.map(name));
            for (to, from, y) in elements(y) {
                let [a, b] = &ports[to];
                let [c, d] = &ports[from];
                deck.line(format_args!("Gp{at}y{to}{from} {a} {b} {c} {d} {y:e}"));
            }
        }
        deck.leaks((1..=network.node_count()).map(|n| format!("n{n}")));
        deck
    }

    /// A solver's phasor network at `hz`; its nodes are `n1`, `n2`…. Susceptance becomes a
    /// capacitor, negative where the element is inductive: ngspice takes it as a plain number, and
    /// unlike an inductor it leaves the operating point alone, which is worked out first.
    pub fn from_ac(network: &Network<Complex64>, hz: f64) -> Deck {
        let omega = TAU * hz;
        let mut deck = Deck::default();
        for (at, (ends, y, emf)) in network.branches().enumerate() {
            let [a, b] = ends.map(name);
            let (size, angle) = (emf.norm(), emf.arg().to_degrees());
            let inner = deck.emf(
                at,
                &a,
                format_args!("DC 0 AC {size:e} {angle:e}"),
                size != 0.0,
            );
            deck.conductance(&format!("b{at}"), [&inner, &b], y.re);
            if y.im != 0.0 {
                deck.line(format_args!("Cb{at} {inner} {b} {:e}", y.im / omega));
            }
        }
        for (at, (ends, y)) in network.two_ports().enumerate() {
            let ports = ends.map(|port| port.map(name));
            // A node per port whose voltage is the port's, turned back by a quarter: its current
            // flows into a capacitor of one ohm.
            for (port, [a, b]) in ports.iter().enumerate() {
                deck.line(format_args!("Gp{at}q{port} 0 p{at}q{port} {a} {b} 1"));
                deck.line(format_args!(
                    "Cp{at}q{port} p{at}q{port} 0 {:e}",
                    1.0 / omega
                ));
                deck.leaks([format!("p{at}q{port}")]);
            }
            for (to, from, y) in elements(y) {
                let [a, b] = &ports[to];
                let [c, d] = &ports[from];
                let Complex64 { re, im } = y;
                deck.line(format_args!("Gp{at}re{to}{from} {a} {b} {c} {d} {re:e}"));
                deck.line(format_args!(
                    "Gp{at}im{to}{from} {a} {b} 0 p{at}q{from} {im:e}"
                ));
            }
        }
        deck.leaks((1..=network.node_count()).map(|n| format!("n{n}")));
        deck
    }

    /// Direct-current values of vectors such as `v(n1)` or `i(v1)`.
    pub fn solve_dc(&self, vectors: &[&str]) -> BTreeMap<String, f64> {
        let answers = self.run("op", vectors);
        answers.into_iter().map(|(k, v)| (k, v.re)).collect()
    }

    /// Phasors of vectors such as `v(n1)` or `i(v1)` at `hz`.
    pub fn solve_ac(&self, hz: f64, vectors: &[&str]) -> BTreeMap<String, Complex64> {
        self.run(&format!("ac lin 1 {hz:e} {hz:e}"), vectors)
    }

    /// The whole text for `ngspice -b`, with commands to run.
    pub fn text(&self, commands: &str) -> String {
        format!(
            "made by a test\n{}.control\nset numdgt=13\n{commands}\nquit\n.endc\n.end\n",
            self.lines
        )
    }

    fn run(&self, analysis: &str, vectors: &[&str]) -> BTreeMap<String, Complex64> {
        let print: Vec<String> = vectors.iter().map(|v| format!("print {v}")).collect();
        let text = self.text(&format!("{analysis}\n{}", print.join("\n")));
        let output = ngspice(&text);
        let answers = vectors.iter().map(|vector| {
            let value = (output.lines())
                .find_map(|line| parse(line, vector))
                .unwrap_or_else(|| {
                    panic!("no {vector} in ngspice's answer:\n{output}\nto\n{text}")
                });
            (vector.to_string(), value)
        });
        answers.collect()
    }

    /// The voltage source of branch `at`; returns the node behind it.
    fn emf(&mut self, at: usize, a: &str, value: impl Display, present: bool) -> String {
        if !present {
            return a.to_string();
        }
        self.line(format_args!("Vb{at} {a} m{at} {value}"));
        format!("m{at}")
    }

    fn conductance(&mut self, id: &str, [a, b]: [&str; 2], siemens: f64) {
        if siemens != 0.0 {
            self.line(format_args!("R{id} {a} {b} {:e}", 1.0 / siemens));
        }
    }
}

/// Run ngspice on this text and return what it prints. Panics when it fails.
pub fn ngspice(text: &str) -> String {
    let mut child = Command::new("ngspice")
        .arg("-b")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("ngspice starts");
    let mut input = child.stdin.take().expect("standard input is a pipe");
    input.write_all(text.as_bytes()).expect("ngspice reads");
    std::mem::drop(input);
    let output = child.wait_with_output().expect("ngspice ends");
    let printed = String::from_utf8_lossy(&output.stdout).into_owned();
    let complaints = String::from_utf8_lossy(&output.stderr);
    // The exit status alone does not tell: `quit` is reached after most errors too.
    let bad = ["Error", "error", "singular", "aborted"];
    let failed = !output.status.success() || bad.iter().any(|word| complaints.contains(word));
    assert!(
        !failed,
        "ngspice says:\n{complaints}\n{printed}\nto\n{text}"
    );
    printed
}

/// What ngspice calls the node `node` of a network written with `from_dc` or `from_ac`.
pub fn name(node: Node) -> String {
    match node {
        Node::GROUND => "0".to_string(),
        node => format!("n{}", node.index()),
    }
}

/// `v(n1) = 1.5e+00` or `v(n1) = 1.5e+00,-2.0e-01`.
fn parse(line: &str, vector: &str) -> Option<Complex64> {
    let (left, right) = line.split_once('=')?;
    if !left.trim().eq_ignore_ascii_case(vector) {
        return None;
    }
    let mut numbers = right.split(',').map(|n| n.trim().parse::<f64>());
    let re = numbers.next()?.ok()?;
    let im = match numbers.next() {
        Some(im) => im.ok()?,
        None => 0.0,
    };
    Some(Complex64::new(re, im))
}

fn elements<T: Copy>(y: [[T; 2]; 2]) -> impl Iterator<Item = (usize, usize, T)> {
    (0..4).map(move |at| (at / 2, at % 2, y[at / 2][at % 2]))
}
