//! A class that is killed under load, again and again: what was acknowledged is there.
//!
//! `DETENT_KILLS=1000` kills it so often.

use detent_class::protocol::{AttemptId, Digest, Segment, SegmentAnswer};
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

/// Learners that send without a rest.
const LEARNERS: usize = 4;

struct Class {
    program: Child,
    port: u16,
    code: String,
}

/// Starts the program and waits until learners can join.
fn start(folder: &Path, port: u16) -> Class {
    let port_arg = port.to_string();
    let mut program = Command::new(env!("CARGO_BIN_EXE_detent"))
        .args([
            "--lang",
            "en",
            "class",
            "--no-open",
            "--bind",
            "127.0.0.1",
            "--port",
            &port_arg,
            "--data",
        ])
        .arg(folder)
        .stdout(Stdio::piped())
        .stderr(Stdio::inherit())
        .spawn()
        .expect("the program starts");
    let lines = BufReader::new(program.stdout.take().expect("piped")).lines();
    let (mut code, mut found) = (String::new(), port);
    for line in lines.map_while(Result::ok) {
        if let Some(told) = line.strip_prefix("Code to join with: ") {
            code = told.to_owned();
        }
        if let Some(address) = line.strip_prefix("Learners join at http://127.0.0.1:") {
            found = address.trim_end_matches('/').parse().expect("a port");
        }
        if line.starts_with("Ctrl and C") {
            return Class {
                program,
                port: found,
                code,
            };
        }
    }
    panic!("the class did not begin: {:?}", program.wait());
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

/// What was acknowledged, by attempt: the digest of each segment.
type Acknowledged = Arc<Mutex<BTreeMap<AttemptId, Vec<Digest>>>>;

/// Sends segments of one attempt after the other until told to stop, each until it is acknowledged or the class is gone.
fn send(
    port: u16,
    token: &str,
    first: &mut u32,
    learner: u8,
    acknowledged: &Acknowledged,
    over: &AtomicBool,
) {
    while !over.load(Ordering::Relaxed) {
        *first += 1;
        let mut id = [learner; 16];
        id[..4].copy_from_slice(&first.to_be_bytes());
        let mut after = (0, Digest::NONE);
        for n in 0..20 {
            let text = format!("line {n} of {learner}\n");
            let segment = Segment::new(
                AttemptId::of_bytes(id),
                after,
                ("0.1.0", Digest::NONE),
                &text,
            );
            let body = serde_json::to_string(&segment).expect("JSON");
            let Some(answer) = ask(
                port,
                &format!("POST /api/segments HTTP/1.1\r\nauthorization: Bearer {token}"),
                &body,
            ) else {
                return;
            };
            if let Ok(SegmentAnswer::Kept { .. }) = serde_json::from_str(&answer) {
                let mut acknowledged = acknowledged.lock().expect("no one panicked");
                acknowledged
                    .entry(segment.attempt)
                    .or_default()
                    .push(segment.digest);
            } else {
                // This seat asks too often, which is not what is tried here.
                assert!(answer.contains("too many"), "{answer}");
                thread::sleep(Duration::from_millis(50));
                break;
            }
            after = (segment.sequence + 1, segment.digest);
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
    let acknowledged = Acknowledged::default();
    let class = start(folder.path(), 0);
    let tokens: Vec<String> = (0..LEARNERS)
        .map(|n| {
            let name = format!("Learner {}", char::from(b'A' + n as u8));
            let body =
                serde_json::json!({"protocol": 1, "code": class.code, "name": name}).to_string();
            let answer = ask(class.port, "POST /api/join HTTP/1.1", &body).expect("joined");
            let answer: serde_json::Value = serde_json::from_str(&answer).expect("JSON");
            answer["token"].as_str().expect("a token").to_owned()
        })
        .collect();
    let mut firsts = [0; LEARNERS];
    let mut class = Some(class);
    for kill in 0..kills {
        let mut running = class.take().unwrap_or_else(|| start(folder.path(), 0));
        let over = AtomicBool::new(false);
        thread::scope(|scope| {
            for (n, first) in firsts.iter_mut().enumerate() {
                let (token, acknowledged, over) = (&tokens[n], &acknowledged, &over);
                scope.spawn(move || send(running.port, token, first, n as u8, acknowledged, over));
            }
            // Each time at another moment.
            thread::sleep(Duration::from_millis(20 + kill * 37 % 120));
            running.program.kill().expect("killed");
            over.store(true, Ordering::Relaxed);
        });
        running.program.wait().expect("gone");
    }
    let mut running = start(folder.path(), 0);
    let acknowledged = acknowledged.lock().expect("no one panicked");
    let segments: usize = acknowledged.values().map(Vec::len).sum();
    assert!(
        segments > 20 * kills as usize,
        "{segments} segments in {kills} rounds"
    );
    for (attempt, digests) in &*acknowledged {
        let learner = attempt.bytes()[15] as usize;
        let head = format!(
            "GET /api/attempts/{attempt} HTTP/1.1\r\nauthorization: Bearer {}",
            tokens[learner]
        );
        let answer = loop {
            let answer = ask(running.port, &head, "").expect("an answer");
            if !answer.contains("too many") {
                break answer;
            }
            thread::sleep(Duration::from_millis(100));
        };
        let status: serde_json::Value = serde_json::from_str(&answer).expect("JSON");
        let there = status["next"].as_u64().expect("a number") as usize;
        // One more may be there, which was committed and never answered.
        assert!(
            there == digests.len() || there == digests.len() + 1,
            "{attempt}: {there} of {}",
            digests.len()
        );
        if there == digests.len() {
            let last = digests.last().expect("one at least").to_string();
            assert_eq!(status["digest"].as_str(), Some(last.as_str()), "{attempt}");
        }
    }
    println!("{kills} times killed, {segments} segments acknowledged, none lost");
    running.program.kill().expect("killed");
    running.program.wait().expect("gone");
}
