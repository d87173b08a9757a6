//! A class that is killed under load, again and again: what was acknowledged is there.
//!
//! `DETENT_KILLS=1000` kills it so often.

use detent_class::protocol::{AttemptId, AttemptStatus, Digest, Segment, SegmentAnswer};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
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
    port: u16,
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
    let mut program = Command::new(env!("CARGO_BIN_EXE_detent"))
        .args([
            "--lang",
            "en",
            "class",
            "--no-open",
            "--bind",
            "127.0.0.1",
            "--port",
            "0",
            "--data",
        ])
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
            let port = address
                .trim_end_matches('/')
                .rsplit(':')
                .next()
                .and_then(|port| port.parse().ok());
            return Class {
                program,
                port: port.expect("a port"),
                code: behind("Code to join with: "),
                address,
                board: behind("Your board, for you alone: "),
            };
        }
    }
    panic!("the class did not begin: {told:?}, {:?}", program.wait());
}

fn ask(port: u16, head: &str, body: &str) -> Option<String> {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).ok()?;
    stream
        .set_read_timeout(Some(Duration::from_secs(10)))
        .ok()?;
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
    fn ask(&self, port: u16, head: &str, body: &str) -> Option<String> {
        loop {
            let answer = ask(
                port,
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
    fn check(&self, port: u16, attempt: usize) -> Option<(usize, Digest)> {
        let acknowledged = &self.attempts[attempt];
        let answer = self.ask(port, &format!("GET /api/attempts/{}", self.id(attempt)), "")?;
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
    fn send(&mut self, port: u16, over: &AtomicBool) {
        let last = self.attempts.len() - 1;
        let Some((there, digest)) = self.check(port, last) else {
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
            let Some(answer) = self.ask(port, "POST /api/segments", &body) else {
                return;
            };
            match serde_json::from_str(&answer) {
                Ok(SegmentAnswer::Kept { .. }) => self.attempts[attempt].push(segment.digest),
                _ => panic!("{answer}"),
            }
        }
    }
}

#[test]
fn a_class_that_is_killed_loses_nothing_that_it_acknowledged() {
    let folder = tempfile::tempdir().expect("a folder");
    let kills = std::env::var("DETENT_KILLS")
        .ok()
        .and_then(|kills| kills.parse().ok())
        .unwrap_or(12);
    let class = start(folder.path(), &[]);
    let mut senders: Vec<Sender> = (0..LEARNERS)
        .map(|n| {
            let name = format!("Learner {}", char::from(b'A' + n as u8));
            let body =
                serde_json::json!({"protocol": 1, "code": class.code, "name": name}).to_string();
            let answer = ask(class.port, "POST /api/join HTTP/1.1", &body).expect("joined");
            let answer: serde_json::Value = serde_json::from_str(&answer).expect("JSON");
            let token = answer["token"].as_str().expect("a token").to_owned();
            Sender {
                token,
                learner: n as u8,
                attempts: vec![Vec::new()],
            }
        })
        .collect();
    let mut class = Some(class);
    for kill in 0..kills {
        let running = class.take().unwrap_or_else(|| start(folder.path(), &[]));
        let over = AtomicBool::new(false);
        thread::scope(|scope| {
            for sender in &mut senders {
                let (over, port) = (&over, running.port);
                scope.spawn(move || sender.send(port, over));
            }
            // Each time at another moment.
            thread::sleep(Duration::from_millis(20 + kill * 37 % 120));
            running.kill();
            over.store(true, Ordering::Relaxed);
        });
    }
    let running = start(folder.path(), &[]);
    let mut segments = 0;
    for sender in &senders {
        for (n, attempt) in sender.attempts.iter().enumerate() {
            sender.check(running.port, n).expect("an answer");
            segments += attempt.len();
        }
    }
    assert!(
        segments >= kills as usize,
        "{segments} segments in {kills} rounds"
    );
    println!("{kills} times killed, {segments} segments acknowledged, none lost");
    running.kill();
}
