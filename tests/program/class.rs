//! A class that is killed under load, again and again: what was acknowledged is there.
//!
//! `DETENT_KILLS=1000` kills it so often.

use detent_class::protocol::{
    AttemptId, AttemptStatus, Digest, PROTOCOL_VERSION, Segment, SegmentAnswer,
};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Duration;

/// Learners that send without a rest.
const LEARNERS: usize = 4;

/// A class that was started as a program of its own; it is killed with this.
pub(crate) struct Class {
    program: Child,
    /// Where it listens.
    at: SocketAddr,
    /// The code to join with.
    pub code: String,
    /// The address to join at.
    pub address: String,
    /// The board's address, with the teacher's token.
    pub board: String,
}

impl Class {
    fn kill(mut self) {
        self.program.kill().expect("killed");
        self.program.wait().expect("gone");
    }
}

impl Drop for Class {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// Starts the program and waits until learners can join.
pub(crate) fn start(folder: &Path, more: &[&str]) -> Class {
    let program = Command::new(env!("CARGO_BIN_EXE_detent"));
    start_at(program, "127.0.0.1", folder, more)
}

/// The same with this command, which may run it somewhere else.
fn start_at(mut program: Command, bind: &str, folder: &Path, more: &[&str]) -> Class {
    let mut program = program
        .args(["--lang", "en", "class", "--no-open"])
        .args(["--bind", bind, "--port", "0", "--data"])
        .arg(folder)
        .args(more)
        .stdout(Stdio::piped())
        .stderr(Stdio::inherit())
        .spawn()
        .expect("the program starts");
    let lines = BufReader::new(program.stdout.take().expect("piped")).lines();
    let mut told: Vec<String> = Vec::new();
    for line in lines.map_while(Result::ok) {
        let is_last = line.starts_with("Ctrl and C");
        told.push(line);
        if is_last {
            let behind = |what: &str| {
                let found = told.iter().find_map(|line| line.strip_prefix(what));
                found
                    .unwrap_or_else(|| panic!("{what}: {told:?}"))
                    .to_owned()
            };
            let address = behind("Learners join at ");
            let at = address.trim_start_matches("http://").trim_end_matches('/');
            return Class {
                program,
                at: at.parse().expect("an address with a port"),
                code: behind("Code to join with: "),
                address,
                board: behind("Your board, for you alone: "),
            };
        }
    }
    panic!("the class did not begin: {told:?}, {:?}", program.wait());
}

fn ask(at: SocketAddr, head: &str, body: &str) -> Option<String> {
    const PATIENCE: Duration = Duration::from_secs(10);
    let mut stream = TcpStream::connect_timeout(&at, PATIENCE).ok()?;
    stream.set_read_timeout(Some(PATIENCE)).ok()?;
    let length = body.len();
    let head = format!(
        "{head}\r\nhost: x\r\nconnection: close\r\ncontent-type: application/json\r\ncontent-length: {length}"
    );
    stream
        .write_all(format!("{head}\r\n\r\n{body}").as_bytes())
        .ok()?;
    let mut answer = String::new();
    stream.read_to_string(&mut answer).ok()?;
    let (head, body) = answer.split_once("\r\n\r\n")?;
    // An answer that was cut off is none.
    let length = head
        .lines()
        .find_map(|line| line.strip_prefix("content-length: "))?
        .parse::<usize>()
        .ok()?;
    (body.len() == length).then(|| body.to_owned())
}

/// Segments in one attempt.
const LONGEST: usize = 200;

/// A learner's program: what was acknowledged of each attempt.
struct Sender {
    token: String,
    learner: u8,
    attempts: Vec<Vec<Digest>>,
}

impl Sender {
    fn id(&self, attempt: usize) -> AttemptId {
        let mut id = [self.learner; 16];
        id[..8].copy_from_slice(&(attempt as u64).to_be_bytes());
        AttemptId::of_bytes(id)
    }

    /// Asks; none where the class is gone. Too many questions are asked again.
    fn ask(&self, at: SocketAddr, head: &str, body: &str) -> Option<String> {
        loop {
            let answer = ask(
                at,
                &format!("{head} HTTP/1.1\r\nauthorization: Bearer {}", self.token),
                body,
            )?;
            if !answer.contains("too many") {
                return Some(answer);
            }
            thread::sleep(Duration::from_millis(50));
        }
    }

    /// Holds what is there of an attempt against what was acknowledged: one more may be there, which was committed and
    /// never answered. Its number of segments and the digest of the last one, none where the class is gone.
    fn check(&self, at: SocketAddr, attempt: usize) -> Option<(usize, Digest)> {
        let acknowledged = &self.attempts[attempt];
        let answer = self.ask(at, &format!("GET /api/attempts/{}", self.id(attempt)), "")?;
        let status: AttemptStatus = serde_json::from_str(&answer).expect("a status");
        let there = status.next as usize;
        assert!(
            there == acknowledged.len() || there == acknowledged.len() + 1,
            "attempt {attempt} of learner {}: {there} of {} are there",
            self.learner,
            acknowledged.len()
        );
        if there == acknowledged.len() {
            assert_eq!(
                status.digest,
                acknowledged.last().copied().unwrap_or(Digest::NONE)
            );
        }
        Some((there, status.digest))
    }

    /// Goes on with the last attempt, and then with new ones, until told to stop or the class is gone.
    fn send(&mut self, at: SocketAddr, over: &AtomicBool) {
        let last = self.attempts.len() - 1;
        let Some((there, digest)) = self.check(at, last) else {
            return;
        };
        if there > self.attempts[last].len() {
            self.attempts[last].push(digest);
        }
        while !over.load(Ordering::Relaxed) {
            if self
                .attempts
                .last()
                .is_some_and(|attempt| attempt.len() == LONGEST)
            {
                self.attempts.push(Vec::new());
            }
            let attempt = self.attempts.len() - 1;
            let acknowledged = &self.attempts[attempt];
            let (n, previous) = (
                acknowledged.len(),
                acknowledged.last().copied().unwrap_or(Digest::NONE),
            );
            let text = format!("line {n} of {}\n", self.learner);
            let segment = Segment::new(
                self.id(attempt),
                (n as u32, previous),
                ("0.1.0", Digest::NONE),
                &text,
            );
            let body = serde_json::to_string(&segment).expect("JSON");
            let Some(answer) = self.ask(at, "POST /api/segments", &body) else {
                return;
            };
            match serde_json::from_str(&answer) {
                Ok(SegmentAnswer::Kept { .. }) => self.attempts[attempt].push(segment.digest),
                _ => panic!("{answer}"),
            }
        }
    }
}

/// Learners take their seats.
fn join(class: &Class) -> Vec<Sender> {
    let learners = (0..LEARNERS).map(|n| {
        let name = format!("Learner {}", char::from(b'A' + n as u8));
        let body =
            serde_json::json!({"protocol": PROTOCOL_VERSION, "code": class.code, "name": name});
        let answer = ask(class.at, "POST /api/join HTTP/1.1", &body.to_string());
        let answer: serde_json::Value =
            serde_json::from_str(&answer.expect("joined")).expect("JSON");
        let token = answer["token"].as_str().expect("a token").to_owned();
        Sender {
            token,
            learner: n as u8,
            attempts: vec![Vec::new()],
        }
    });
    learners.collect()
}

/// Holds what is there against all that was acknowledged; how many segments that is.
fn check_all(senders: &[Sender], at: SocketAddr) -> usize {
    let mut segments = 0;
    for sender in senders {
        for (n, attempt) in sender.attempts.iter().enumerate() {
            sender.check(at, n).expect("an answer");
            segments += attempt.len();
        }
    }
    segments
}

#[test]
fn a_class_that_is_killed_loses_nothing_that_it_acknowledged() {
    let folder = tempfile::tempdir().expect("a folder");
    let kills = std::env::var("DETENT_KILLS")
        .ok()
        .and_then(|kills| kills.parse().ok())
        .unwrap_or(12);
    let class = start(folder.path(), &[]);
    let mut senders = join(&class);
    let mut class = Some(class);
    for kill in 0..kills {
        let running = class.take().unwrap_or_else(|| start(folder.path(), &[]));
        let over = AtomicBool::new(false);
        thread::scope(|scope| {
            for sender in &mut senders {
                let (over, at) = (&over, running.at);
                scope.spawn(move || sender.send(at, over));
            }
            // Each time at another moment.
            thread::sleep(Duration::from_millis(20 + kill * 37 % 120));
            running.kill();
            over.store(true, Ordering::Relaxed);
        });
    }
    let running = start(folder.path(), &[]);
    let segments = check_all(&senders, running.at);
    assert!(
        segments >= kills as usize,
        "{segments} segments in {kills} rounds"
    );
    println!("{kills} times killed, {segments} segments acknowledged, none lost");
    running.kill();
}

/// A network of its own with nothing in it but the class; it is taken away with this.
struct Namespace {
    name: String,
    /// The end of the wire on this side.
    wire: String,
}

/// The class's address in its network, and ours.
const THERE: &str = "10.251.7.2";
const HERE: &str = "10.251.7.1/24";

impl Namespace {
    fn new() -> Namespace {
        let id = std::process::id() % 100_000;
        let namespace = Namespace {
            name: format!("detent{id}"),
            wire: format!("dt{id}a"),
        };
        let (name, here, there) = (&namespace.name, &namespace.wire, format!("dt{id}b"));
        run(&format!("ip netns add {name}"));
        run(&format!(
            "ip link add {here} type veth peer name {there} netns {name}"
        ));
        run(&format!("ip addr add {HERE} dev {here}"));
        run(&format!("ip link set {here} up"));
        run(&format!("ip -n {name} addr add {THERE}/24 dev {there}"));
        run(&format!("ip -n {name} link set {there} up"));
        run(&format!("ip -n {name} link set lo up"));
        namespace
    }

    /// A program in this network.
    fn program(&self) -> Command {
        let mut program = Command::new("ip");
        program.args(["netns", "exec", &self.name, env!("CARGO_BIN_EXE_detent")]);
        program
    }

    /// So many packets of a hundred are lost in each direction.
    fn lose(&self, percent: u32) {
        let wire = &self.wire;
        run("nft add table inet detent_test");
        run("nft flush table inet detent_test");
        for (chain, direction) in [("output", "oifname"), ("input", "iifname")] {
            run(&format!(
                "nft add chain inet detent_test {chain} {{ type filter hook {chain} priority 0; }}"
            ));
            run(&format!(
                "nft add rule inet detent_test {chain} {direction} {wire} numgen random mod 100 < {percent} drop"
            ));
        }
    }

    /// The wire is cut, or whole again.
    fn cut(&self, is_cut: bool) {
        let state = if is_cut { "down" } else { "up" };
        run(&format!("ip link set {} {state}", self.wire));
    }

    /// No more than so many kilobits a second leave this side; what does not fit waits up to two seconds.
    fn slow(&self, kilobits: u32) {
        run(&format!(
            "tc qdisc replace dev {} root tbf rate {kilobits}kbit burst 3000 latency 2s",
            self.wire
        ));
    }
}

impl Drop for Namespace {
    fn drop(&mut self) {
        for command in [
            "nft delete table inet detent_test".to_owned(),
            format!("ip link del {}", self.wire),
            format!("ip netns del {}", self.name),
        ] {
            // What is not there is taken away already.
            let mut words = command.split(' ');
            let _ = Command::new(words.next().unwrap_or_default())
                .args(words)
                .stderr(Stdio::null())
                .status();
        }
    }
}

#[track_caller]
fn run(command: &str) {
    let mut words = command.split(' ');
    let status = Command::new(words.next().unwrap_or_default())
        .args(words)
        .status();
    let status = status.unwrap_or_else(|error| panic!("{command}: {error}"));
    assert!(status.success(), "{command}");
}

/// The class is on another network, over a wire that loses, is cut and is slow; in between it is killed.
#[test]
#[ignore = "makes a network of its own: for root, with ip, tc and nft"]
fn a_class_over_a_bad_network_loses_nothing_that_it_acknowledged() {
    let folder = tempfile::tempdir().expect("a folder");
    let network = Namespace::new();
    let begin = || start_at(network.program(), THERE, folder.path(), &[]);
    let mut class = begin();
    let mut senders = join(&class);
    let bad: [(&str, &dyn Fn()); 6] = [
        ("sound", &|| {}),
        ("2 of 100 lost", &|| network.lose(2)),
        ("20 of 100 lost", &|| network.lose(20)),
        ("cut", &|| {
            network.lose(0);
            network.cut(true);
        }),
        ("256 kbit/s", &|| {
            network.cut(false);
            network.slow(256);
        }),
        ("256 kbit/s, 10 of 100 lost", &|| network.lose(10)),
    ];
    let mut before = 0;
    for (what, make_bad) in bad {
        make_bad();
        let over = AtomicBool::new(false);
        thread::scope(|scope| {
            for sender in &mut senders {
                let (over, at) = (&over, class.at);
                scope.spawn(move || {
                    while !over.load(Ordering::Relaxed) {
                        sender.send(at, over);
                    }
                });
            }
            thread::sleep(Duration::from_secs(8));
            over.store(true, Ordering::Relaxed);
        });
        let acknowledged: usize = senders.iter().flat_map(|s| &s.attempts).map(Vec::len).sum();
        println!("{what}: {} segments acknowledged", acknowledged - before);
        assert_eq!(acknowledged == before, what == "cut", "{what}");
        before = acknowledged;
        class.kill();
        class = begin();
    }
    network.lose(0);
    network.slow(100_000);
    assert_eq!(check_all(&senders, class.at), before);
    println!("{before} segments acknowledged, none lost");
}
