//! The server as it is asked over HTTP, by learners, by the teacher, and by whoever should not.

use super::drills::{class_of_drills, round};
use super::stage::attempts::random_attempt;
use super::{code, definition, scope, token};
use detent_class::definition::{ClassDefinition, JobMachines};
use detent_class::moment::Moment;
use detent_class::pages::PageTexts;
use detent_class::protocol::{
    AttemptId, AttemptStatus, ClassKind, ClassView, Digest, DrillStatus, JoinAnswer, JoinRefusal,
    LONGEST_SEGMENT_BYTES, PROTOCOL_VERSION, SealedJobAnswer, SealedScenario, SecretToken, Segment,
    SegmentAnswer, Standing, Upload, Verdict, WatchedAttempt,
};
use detent_class::server::{ClassServer, ServerParts, ServerThreads, certificate, listen};
use detent_class::store::{Database, KeptClass};
use detent_content::ContentLibrary;
use detent_training::practice::Skill;
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

pub(super) const PROGRAM: &str = env!("CARGO_PKG_VERSION");

/// The clock of the servers of these tests, ms; it is never set back.
static CLOCK: AtomicU64 = AtomicU64::new(1_800_000_000_000);

/// Held by each test that moves the clock, or counts on its standing still.
static CLOCK_MOVES: Mutex<()> = Mutex::new(());

pub(super) fn clock() -> Moment {
    Moment(CLOCK.load(Ordering::Relaxed))
}

/// A class on this computer.
pub(super) struct Room {
    pub(super) address: SocketAddr,
    pub(super) server: Option<ClassServer>,
    threads: Option<ServerThreads>,
    runtime: Option<tokio::runtime::Runtime>,
}

impl Room {
    pub(super) fn open(path: &Path, definition: ClassDefinition) -> Room {
        let database = Database::open(path).expect("it opens");
        let scope = scope();
        let class = KeptClass {
            definition,
            code: code(),
        };
        let store = database.store(&scope);
        if store.class().expect("readable").is_none() {
            store
                .begin(&class.definition, class.code, &token(255), clock())
                .expect("begun");
        }
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            .enable_all()
            .build();
        let runtime = runtime.expect("a runtime");
        let listener = runtime
            .block_on(tokio::net::TcpListener::bind("127.0.0.1:0"))
            .expect("a port");
        let address = listener.local_addr().expect("its address");
        let library = Arc::new(ContentLibrary::builtin().expect("sound"));
        let parts = ServerParts {
            database,
            scope,
            class,
            page_texts: PageTexts::in_each_language(&library).expect("sound"),
            library,
            page: None,
            address: format!("http://{address}/"),
            clock,
            verifiers: 1,
        };
        let (server, threads) = ClassServer::begin(parts).expect("begun");
        runtime.spawn(listen(
            listener,
            server.router(),
            None,
            std::future::pending(),
        ));
        Room {
            address,
            server: Some(server),
            threads: Some(threads),
            runtime: Some(runtime),
        }
    }

    pub(super) fn close(mut self) {
        self.end();
    }

    fn end(&mut self) {
        if let Some(server) = self.server.take() {
            server.end();
        }
        if let Some(runtime) = self.runtime.take() {
            runtime.shutdown_timeout(Duration::from_millis(200));
        }
        if let Some(threads) = self.threads.take() {
            threads.join();
        }
    }

    pub(super) fn ask(
        &self,
        method: &str,
        path: &str,
        headers: &[(&str, &str)],
        body: &[u8],
    ) -> (u16, String, Vec<u8>) {
        let mut head = format!(
            "{method} {path} HTTP/1.1\r\nhost: {}\r\nconnection: close\r\n",
            self.address
        );
        for (name, value) in headers {
            head.push_str(&format!("{name}: {value}\r\n"));
        }
        head.push_str(&format!("content-length: {}\r\n\r\n", body.len()));
        let mut stream = TcpStream::connect(self.address).expect("it listens");
        stream
            .set_read_timeout(Some(Duration::from_secs(30)))
            .expect("set");
        stream.write_all(head.as_bytes()).expect("sent");
        // A server may refuse before it has read all of the body.
        let _ = stream.write_all(body);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        let end = answer
            .windows(4)
            .position(|window| window == b"\r\n\r\n")
            .expect("a head");
        let head = String::from_utf8_lossy(&answer[..end]).into_owned();
        let status = head
            .split(' ')
            .nth(1)
            .and_then(|status| status.parse().ok())
            .expect("a status");
        (status, head, answer[end + 4..].to_vec())
    }

    pub(super) fn post(&self, path: &str, headers: &[(&str, &str)], body: &Value) -> (u16, Value) {
        let headers = [headers, &[("content-type", "application/json")]].concat();
        let (status, _, body) = self.ask("POST", path, &headers, body.to_string().as_bytes());
        (status, serde_json::from_slice(&body).unwrap_or(Value::Null))
    }

    pub(super) fn join(
        &self,
        code: &str,
        name: &str,
        word: Option<&str>,
    ) -> Result<JoinAnswer, JoinRefusal> {
        let mut request = json!({"protocol": PROTOCOL_VERSION, "code": code, "name": name});
        if let Some(word) = word {
            request["word"] = word.into();
        }
        let (status, answer) = self.post("/api/join", &[], &request);
        match status {
            200 => Ok(serde_json::from_value(answer).expect("an answer")),
            _ => Err(serde_json::from_value(answer).expect("a refusal")),
        }
    }

    pub(super) fn seat(&self, token: &SecretToken) -> ClassView {
        let (status, _, body) = self.ask(
            "GET",
            "/api/seat",
            &[("authorization", &bearer(token))],
            b"",
        );
        assert_eq!(status, 200);
        serde_json::from_slice(&body).expect("a view")
    }

    fn send(&self, token: &SecretToken, segment: &Segment) -> SegmentAnswer {
        let segment = serde_json::to_value(segment).expect("JSON");
        let (_, answer) = self.post(
            "/api/segments",
            &[("authorization", &bearer(token))],
            &segment,
        );
        serde_json::from_value(answer).expect("an answer")
    }

    pub(super) fn status(&self, token: &SecretToken, attempt: AttemptId) -> AttemptStatus {
        let path = format!("/api/attempts/{attempt}");
        let (_, _, body) = self.ask("GET", &path, &[("authorization", &bearer(token))], b"");
        serde_json::from_slice(&body).expect("a status")
    }

    /// The scenario of a sealed job, as it comes over the wire and as it is meant.
    fn sealed_job(&self, token: &SecretToken, job: &str) -> (Vec<u8>, SealedJobAnswer) {
        let path = format!("/api/jobs/{job}");
        let (status, _, body) = self.ask("GET", &path, &[("authorization", &bearer(token))], b"");
        assert_eq!(status, 200);
        let answer = serde_json::from_slice(&body).expect("an answer");
        (body, answer)
    }

    /// The same once it is drawn, opened.
    fn drawn_job(&self, token: &SecretToken, job: &str) -> (Vec<u8>, SealedScenario) {
        let until = Instant::now() + Duration::from_secs(120);
        loop {
            match self.sealed_job(token, job) {
                (body, SealedJobAnswer::Ready(sealed)) => {
                    return (body, SealedScenario::open(&sealed, job).expect("it opens"));
                }
                (_, SealedJobAnswer::NotYet) if Instant::now() < until => {
                    std::thread::sleep(Duration::from_millis(20));
                }
                (_, answer) => panic!("{answer:?}"),
            }
        }
    }

    /// Sends all of this text.
    pub(super) fn send_all(&self, token: &SecretToken, upload: &mut Upload, text: &str) {
        upload.told(&self.status(token, upload.attempt()), text);
        while let Some(segment) = upload.segment(text).cloned() {
            let answer = self.send(token, &segment);
            upload.answered(segment.digest, answer);
        }
        assert!(upload.is_there(text), "{:?}", upload.state());
    }

    /// Waits until the attempt was done again.
    pub(super) fn verdict(&self, token: &SecretToken, attempt: AttemptId) -> Verdict {
        let until = Instant::now() + Duration::from_secs(60);
        loop {
            let verdict = self.status(token, attempt).verdict;
            if verdict != Verdict::Waiting || Instant::now() > until {
                return verdict;
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }

    /// Waits until so many answers of a round were looked at.
    fn watched(&self, token: &SecretToken, attempt: AttemptId, answers: u32) -> AttemptStatus {
        let until = Instant::now() + Duration::from_secs(60);
        loop {
            let status = self.status(token, attempt);
            let done = status.drill.as_ref().map(|drill| drill.done);
            if done == Some(answers) || Instant::now() > until {
                return status;
            }
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}

impl Drop for Room {
    fn drop(&mut self) {
        self.end();
    }
}

pub(super) fn bearer(token: &SecretToken) -> String {
    format!("Bearer {}", String::from(*token))
}

pub(super) fn cookie(n: u8) -> String {
    format!("detent-teacher={}", String::from(token(n)))
}

/// The teacher's page asks to change something.
pub(super) fn teacher(room: &Room, path: &str, body: &Value) -> (u16, Value) {
    room.post(
        path,
        &[("cookie", &cookie(255)), ("x-detent-class", "1")],
        body,
    )
}

/// The teacher's board as a page.
fn board_of(room: &Room) -> String {
    let (status, _, body) = room.ask("GET", "/teacher/board", &[("cookie", &cookie(255))], b"");
    assert_eq!(status, 200);
    String::from_utf8(body).expect("text")
}

pub(super) fn id(n: u8) -> AttemptId {
    AttemptId::of_bytes([n; 16])
}

/// An attempt at this seat's own machine; its text and points.
pub(super) fn attempt(view: &ClassView, steps: usize) -> (String, f64) {
    let library = ContentLibrary::builtin().expect("sound");
    let job = &view.jobs[0];
    let scenario_source = library.scenario(&job.job).expect("built in");
    let recorded = random_attempt(&library, &scenario_source, job.seed, steps);
    (
        String::from_utf8(recorded.bytes).expect("text"),
        recorded.score,
    )
}

pub(super) fn upload(view: &ClassView, n: u8) -> Upload {
    Upload::new(id(n), PROGRAM, view.content)
}

#[test]
fn three_learners_are_marked_whatever_happens_to_their_network() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let room = Room::open(&path, definition());
    let joined: Vec<JoinAnswer> = ["Ann", "Ben", "Cy"]
        .map(|name| room.join("acd-efg", name, None).expect("a seat"))
        .into();
    let made: Vec<(String, f64)> = joined
        .iter()
        .map(|answer| attempt(&answer.view, 8))
        .collect();
    let half = |n: usize| {
        let text = &made[n].0;
        let end = text[..text.len() / 2].rfind('\n').expect("several lines") + 1;
        &text[..end]
    };
    // Ann's comes half, then the server is started anew, and then the rest; Ben's comes at once; Cy hands in a file.
    let mut ann = upload(&joined[0].view, 1);
    room.send_all(&joined[0].token, &mut ann, half(0));
    room.close();
    let room = Room::open(&path, definition());
    room.send_all(
        &joined[0].token,
        &mut upload(&joined[0].view, 1),
        &made[0].0,
    );
    room.send_all(
        &joined[1].token,
        &mut upload(&joined[1].view, 2),
        &made[1].0,
    );
    room.send_all(&joined[2].token, &mut upload(&joined[2].view, 3), half(2));
    let headers = [("cookie", cookie(255)), ("x-detent-class", "1".to_owned())];
    let headers: Vec<(&str, &str)> = headers
        .iter()
        .map(|(name, value)| (*name, value.as_str()))
        .collect();
    let hand_in = |seat: u32, body: &[u8]| {
        let (status, _, answer) = room.ask(
            "POST",
            &format!("/api/teacher/seats/{seat}/hand-in?name=a.attempt"),
            &headers,
            body,
        );
        (
            status,
            serde_json::from_slice::<Value>(&answer).expect("JSON"),
        )
    };
    let (status, answer) = hand_in(3, made[2].0.as_bytes());
    assert_eq!(
        (status, answer["attempt"].as_str()),
        (200, Some(id(3).to_string().as_str())),
        "it goes on there"
    );
    let again = hand_in(3, made[2].0.as_bytes());
    assert_eq!(
        (again.0, &again.1["next"]),
        (200, &answer["next"]),
        "twice is once"
    );
    for (n, (_, points)) in made.iter().enumerate() {
        let verdict = room.verdict(&joined[n].token, id(n as u8 + 1));
        let Verdict::Verified {
            points: Some(found),
        } = verdict
        else {
            panic!("{verdict:?}");
        };
        assert!((found - points).abs() < 1e-9);
    }
    // A file that nobody began here, one that is none, one for nobody.
    let (other, _) = attempt(&joined[1].view, 3);
    assert_eq!(hand_in(2, other.as_bytes()).0, 200);
    assert_eq!(hand_in(2, b"nothing of the kind").0, 400);
    assert_eq!(hand_in(2, &made[1].0.as_bytes()[..200]).0, 400);
    assert_eq!(hand_in(9, other.as_bytes()).0, 404);
    let seats = room.seat(&joined[1].token);
    assert_eq!(seats.attempts.len(), 2);
}

/// Over the shoulder: what has come in so far, and the rest once it is there; nothing of what nobody sent.
#[test]
fn the_teacher_watches_an_attempt_as_it_grows() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let ann = room.join("acd-efg", "Ann", None).expect("a seat");
    let (text, _) = attempt(&ann.view, 8);
    let end = text[..text.len() / 2].rfind('\n').expect("several lines") + 1;
    let mut sent = upload(&ann.view, 1);
    let watched = |attempt: &str| {
        let path = format!("/api/teacher/attempts/{attempt}/watch");
        let (status, _, body) = room.ask("GET", &path, &[("cookie", &cookie(255))], b"");
        let answer = serde_json::from_slice::<WatchedAttempt>(&body);
        (status, answer.ok())
    };
    assert_eq!(watched(&id(1).to_string()), (404, None));
    for known in [&text[..end], &text] {
        room.send_all(&ann.token, &mut sent, known);
        let expected = WatchedAttempt {
            text: known.to_owned(),
            scenario: None,
            content: ann.view.content,
        };
        assert_eq!(watched(&id(1).to_string()), (200, Some(expected)));
    }
    for nothing in ["x", &id(2).to_string()] {
        assert_eq!(watched(nothing), (404, None), "{nothing}");
    }
}

#[test]
fn a_class_opens_by_itself_or_when_the_teacher_says_so_and_stays_open() {
    let _clock = CLOCK_MOVES.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a folder");
    let opens_in = |minutes: u64| ClassDefinition {
        opens_ms: Some(clock().0 + minutes * 60_000),
        ..definition()
    };
    let path = folder.path().join("by-itself.sqlite");
    let room = Room::open(&path, opens_in(2));
    let JoinAnswer { token, view } = room.join("ACDEFG", "Ann", None).expect("a seat");
    assert_eq!(view.standing, Standing::NotOpen { in_s: 120 });
    CLOCK.fetch_add(90_000, Ordering::Relaxed);
    assert_eq!(room.seat(&token).standing, Standing::NotOpen { in_s: 30 });
    CLOCK.fetch_add(30_000, Ordering::Relaxed);
    let open = Standing::Open { left_s: None };
    assert_eq!(room.seat(&token).standing, open);
    room.close();

    let path = folder.path().join("before.sqlite");
    let definition = opens_in(60);
    let room = Room::open(&path, definition.clone());
    let token = room.join("ACDEFG", "Ann", None).expect("a seat").token;
    assert!(board_of(&room).contains(">Open now<"));
    let now = json!({"standing": "Open"});
    assert_eq!(teacher(&room, "/api/teacher/standing", &now).0, 204);
    assert_eq!(room.seat(&token).standing, open);
    assert!(!board_of(&room).contains(">Open now<"));
    room.close();
    let room = Room::open(&path, definition);
    assert_eq!(room.seat(&token).standing, open, "after a restart");
}

#[test]
fn an_examination_tells_no_points_before_it_is_closed() {
    let folder = tempfile::tempdir().expect("a folder");
    let examination = ClassDefinition {
        kind: ClassKind::Examination,
        ..definition()
    };
    let room = Room::open(&folder.path().join("class.sqlite"), examination);
    let JoinAnswer { token, view } = room.join("ACDEFG", "Ann", None).expect("a seat");
    let (text, points) = attempt(&view, 5);
    room.send_all(&token, &mut upload(&view, 1), &text);
    assert_eq!(
        room.verdict(&token, id(1)),
        Verdict::Verified { points: None }
    );
    assert_eq!(
        teacher(
            &room,
            "/api/teacher/standing",
            &json!({"standing": "Paused"})
        )
        .0,
        204
    );
    assert_eq!(room.seat(&token).standing, Standing::Paused);
    assert_eq!(
        teacher(
            &room,
            "/api/teacher/standing",
            &json!({"standing": "Closed"})
        )
        .0,
        204
    );
    let view = room.seat(&token);
    assert_eq!(view.standing, Standing::Closed);
    let Verdict::Verified { points: Some(told) } = view.attempts[0].verdict else {
        panic!("{:?}", view.attempts);
    };
    assert!((told - points).abs() < 1e-9);
    assert_eq!(
        room.join("ACDEFG", "Late", None).map(|_| ()),
        Err(JoinRefusal::Closed)
    );
}

#[test]
fn joining_is_refused_with_its_reason() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let refused =
        |code: &str, name: &str, word| room.join(code, name, word).map(|_| ()).expect_err(name);
    assert_eq!(refused("AAAAAA", "Ann", None), JoinRefusal::WrongCode);
    assert_eq!(refused("", "Ann", None), JoinRefusal::WrongCode);
    assert_eq!(refused("ACDEFG", "  ", None), JoinRefusal::Name);
    assert_eq!(
        refused("ACDEFG", &"x".repeat(100_000), None),
        JoinRefusal::Name
    );
    let answer = room
        .join("ACDEFG", "Ann\u{202e}\u{0}", None)
        .expect("a seat");
    assert_eq!(answer.view.name, "Ann");
    assert_eq!(refused("ACDEFG", "ANN", None), JoinRefusal::NameTaken);
    assert_eq!(
        refused("ACDEFG", "Ann", Some("bada-gelo")),
        JoinRefusal::WrongWord
    );
    for name in ["Ben", "Cy"] {
        room.join("ACDEFG", name, None).expect("a seat");
    }
    assert_eq!(refused("ACDEFG", "Dee", None), JoinRefusal::Full);
    let (status, word) = teacher(&room, "/api/teacher/seats/1/word", &json!({}));
    assert_eq!(status, 200);
    let back = room
        .join("ACDEFG", "ann", word["word"].as_str())
        .expect("back in the seat");
    assert_eq!(room.seat(&back.token).name, "Ann");
    let old = json!({"protocol": 99, "code": "ACDEFG", "name": "Ann"});
    let (status, told) = room.post("/api/join", &[], &old);
    assert_eq!(
        (status, told),
        (400, json!({"Protocol": {"server": PROTOCOL_VERSION}}))
    );
}

/// Nobody finds the code by trying; whoever knows it joins again soon.
#[test]
fn a_code_cannot_be_guessed() {
    let _clock = CLOCK_MOVES.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let answers: Vec<JoinRefusal> = (0..40)
        .map(|_| {
            room.join("AAAAAA", "Ann", None)
                .map(|_| ())
                .expect_err("wrong")
        })
        .collect();
    assert_eq!(
        answers
            .iter()
            .filter(|answer| **answer == JoinRefusal::WrongCode)
            .count(),
        30
    );
    // Neither does the right code tell that it is right.
    let told = room
        .join("ACDEFG", "Ann", None)
        .map(|_| ())
        .expect_err("later");
    assert!(
        matches!(told, JoinRefusal::TooManyTries { wait_s: 1..=3 }),
        "{told:?}"
    );
    CLOCK.fetch_add(3_000, Ordering::Relaxed);
    room.join("ACDEFG", "Ann", None).expect("a seat");
}

#[test]
fn whoever_is_not_asked_gets_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let ann = room
        .join("ACDEFG", "<script>alert(1)</script>", None)
        .expect("a seat");
    let ben = room.join("ACDEFG", "Ben", None).expect("a seat");
    let (text, _) = attempt(&ann.view, 3);
    room.send_all(&ann.token, &mut upload(&ann.view, 1), &text);

    // Another learner's attempt is not there, and nothing is added to it.
    assert_eq!(
        room.status(&ben.token, id(1)),
        AttemptStatus::nothing_of(id(1))
    );
    let first = Segment::new(id(1), (0, Digest::NONE), (PROGRAM, ben.view.content), "x\n");
    assert_eq!(room.send(&ben.token, &first), SegmentAnswer::NotYours);
    // A segment that was changed on its way.
    let mut forged = Segment::new(id(2), (0, Digest::NONE), (PROGRAM, ben.view.content), "x\n");
    forged.text = "y\n".to_owned();
    assert!(matches!(
        room.send(&ben.token, &forged),
        SegmentAnswer::Faulty(_)
    ));

    let token = bearer(&ann.token);
    let wrong_tokens = [
        "",
        "Bearer",
        "Bearer x",
        &token.replace("Bearer", "Basic"),
        &format!("{token}0"),
    ];
    for token in wrong_tokens
        .into_iter()
        .chain([bearer(&super::token(255)).as_str()])
    {
        for path in ["/api/seat", &format!("/api/attempts/{}", id(1))] {
            assert_eq!(
                room.ask("GET", path, &[("authorization", token)], b"").0,
                401,
                "{token} {path}"
            );
        }
        assert_eq!(
            room.post("/api/segments", &[("authorization", token)], &json!({}))
                .0,
            401
        );
    }
    // The teacher's: without a token, with a learner's, with another; and by another site, which cannot send the mark.
    let learners = format!("detent-teacher={}", String::from(ann.token));
    for cookie in ["", learners.as_str(), cookie(1).as_str()] {
        for path in [
            "/api/teacher/events",
            &format!("/api/teacher/attempts/{}", id(1)),
            &format!("/api/teacher/attempts/{}/watch", id(1)),
        ] {
            assert_eq!(
                room.ask("GET", path, &[("cookie", cookie)], b"").0,
                401,
                "{path}"
            );
        }
        let (status, head, _) = room.ask("GET", "/teacher/board", &[("cookie", cookie)], b"");
        assert!(
            status == 303 && head.contains("location: /teacher"),
            "{head}"
        );
        let headers = [("cookie", cookie), ("x-detent-class", "1")];
        for path in [
            "standing",
            "notices",
            "names",
            "seats/1/word",
            "seats/1/hand-in",
        ] {
            assert_eq!(
                room.post(&format!("/api/teacher/{path}"), &headers, &json!({}))
                    .0,
                401,
                "{path}"
            );
        }
    }
    let closing = json!({"standing": "Closed"});
    assert_eq!(
        room.post(
            "/api/teacher/standing",
            &[("cookie", &cookie(255))],
            &closing
        )
        .0,
        401,
        "without the mark"
    );
    assert_eq!(
        room.post(
            "/api/teacher/session",
            &[],
            &json!({"token": String::from(ann.token)})
        )
        .0,
        401
    );

    // Paths.
    for path in [
        "/../Cargo.toml",
        "/%2e%2e/Cargo.toml",
        "/class/../../Cargo.toml",
        "/class/%2e%2e%2fx",
        "/etc/passwd",
        "//",
        "/class.sqlite",
    ] {
        let (status, _, body) = room.ask("GET", path, &[], b"");
        assert!(status == 404 || status == 400, "{path}: {status}");
        assert!(body.len() < 200, "{path}");
    }
    // The head of every answer.
    let (_, head, _) = room.ask("GET", "/", &[], b"");
    for needed in [
        "content-security-policy: default-src 'none'",
        "x-content-type-options: nosniff",
        "referrer-policy: no-referrer",
    ] {
        assert!(head.contains(needed), "{head}");
    }
    // The board says what was typed as text.
    let body = board_of(&room);
    assert!(!body.contains("<script>alert"), "{body}");
}

#[test]
fn what_is_too_large_too_slow_or_no_question_is_refused() {
    let clock = CLOCK_MOVES.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let ann = room.join("ACDEFG", "Ann", None).expect("a seat");
    let token = bearer(&ann.token);
    let headers = [
        ("authorization", token.as_str()),
        ("content-type", "application/json"),
    ];
    let largest = "x\n".repeat(LONGEST_SEGMENT_BYTES / 2);
    let segment = Segment::new(
        id(1),
        (0, Digest::NONE),
        (PROGRAM, ann.view.content),
        &largest,
    );
    assert_eq!(
        room.send(&ann.token, &segment),
        SegmentAnswer::Kept { next: 1 },
        "the largest"
    );
    let giant = vec![b'x'; 8 << 20];
    assert_eq!(room.ask("POST", "/api/segments", &headers, &giant).0, 413);
    assert_eq!(room.ask("POST", "/api/join", &headers, &giant).0, 400);
    for body in [
        "",
        "{",
        "[]",
        "null",
        "{\"attempt\":1}",
        "\u{0}",
        &"[".repeat(100_000),
    ] {
        let (status, ..) = room.ask("POST", "/api/segments", &headers, body.as_bytes());
        assert!((400..=422).contains(&status), "{status} {body:.20}");
    }
    // A second of questions without a break: this seat is told to wait, another is not.
    let ben = room.join("ACDEFG", "Ben", None).expect("a seat");
    let waits = (0..200)
        .filter(|_| room.ask("GET", "/api/seat", &headers[..1], b"").0 == 429)
        .count();
    assert!(waits > 60, "{waits}");
    room.seat(&ben.token);
    CLOCK.fetch_add(20_000, Ordering::Relaxed);
    drop(clock);
    room.seat(&ann.token);
    // Fifty that begin to ask and do not go on: others are answered.
    let slow: Vec<TcpStream> = (0..50)
        .map(|_| {
            let mut stream = TcpStream::connect(room.address).expect("it listens");
            stream
                .write_all(b"POST /api/segments HTTP/1.1\r\nhost: x\r\ncontent-le")
                .expect("sent");
            stream
        })
        .collect();
    room.seat(&ben.token);
    // They are put out after a while.
    let mut first = slow.into_iter().next().expect("one");
    first
        .set_read_timeout(Some(Duration::from_secs(40)))
        .expect("set");
    let mut rest = Vec::new();
    let began = Instant::now();
    let _ = first.read_to_end(&mut rest);
    assert!(
        began.elapsed() < Duration::from_secs(30),
        "{:?}",
        began.elapsed()
    );
}

/// The board is told of what happens, and after a gap of what happened in it.
#[test]
fn the_board_is_live() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    let listen = |last: Option<&str>| {
        let mut stream = TcpStream::connect(room.address).expect("it listens");
        stream
            .set_read_timeout(Some(Duration::from_secs(20)))
            .expect("set");
        let last = last.map_or_else(String::new, |last| format!("last-event-id: {last}\r\n"));
        let head = format!(
            "GET /api/teacher/events HTTP/1.1\r\nhost: x\r\ncookie: {}\r\n{last}\r\n",
            cookie(255)
        );
        stream.write_all(head.as_bytes()).expect("sent");
        stream
    };
    // Reads on until this is told; all that was, and the number of the last event.
    let until = |stream: &mut TcpStream, wanted: &str| {
        let mut told = String::new();
        let mut bytes = [0; 4096];
        while !told.contains(wanted) {
            let count = stream.read(&mut bytes).expect("told in time");
            assert!(count > 0, "{told}");
            told.push_str(&String::from_utf8_lossy(&bytes[..count]));
        }
        let last = told
            .lines()
            .rev()
            .find_map(|line| line.strip_prefix("id: "))
            .unwrap_or_default()
            .to_owned();
        (told, last)
    };
    let mut stream = listen(None);
    let (told, _) = until(&mut stream, "\"seats\":[]");
    assert!(told.contains("event: board"), "{told}");
    let ann = room.join("ACDEFG", "Ann", None).expect("a seat");
    let (told, last) = until(&mut stream, "\"Ann\"");
    assert!(told.contains("event: seats"), "{told}");
    drop(stream);
    // In the gap something comes in; nothing else is told again.
    let (text, _) = attempt(&ann.view, 3);
    room.join("ACDEFG", "Ben", None).expect("a seat");
    room.send_all(&ann.token, &mut upload(&ann.view, 1), &text);
    let mut stream = listen(Some(&last));
    let (told, _) = until(&mut stream, "Verified");
    assert!(
        !told.contains("event: board") && told.contains("\"Ben\""),
        "{told}"
    );
    // A number that this server never gave: the whole board.
    let (told, _) = until(&mut listen(Some("1-1")), "\"Ann\"");
    assert!(told.contains("event: board"), "{told}");
    teacher(
        &room,
        "/api/teacher/standing",
        &json!({"standing": "Paused"}),
    );
    until(&mut stream, "\"Paused\"");
    teacher(
        &room,
        "/api/teacher/notices",
        &json!({"seat": 1, "text": "Look at the lamps again."}),
    );
    assert_eq!(
        room.seat(&ann.token).notices[0].text,
        "Look at the lamps again."
    );
}

/// With a certificate of the school's own the class is served by TLS, and plain questions get no answer.
#[test]
fn a_class_with_a_certificate_is_served_by_tls() {
    use rustls::pki_types::{CertificateDer, ServerName};
    use rustls::{ClientConfig, RootCertStore};
    use tokio_rustls::{TlsConnector, rustls};
    let folder = tempfile::tempdir().expect("a folder");
    let made = rcgen::generate_simple_self_signed(["bench.example.org".to_owned()]).expect("made");
    let path = |name: &str| folder.path().join(name);
    std::fs::write(path("chain.pem"), made.cert.pem()).expect("written");
    std::fs::write(path("key.pem"), made.signing_key.serialize_pem()).expect("written");
    std::fs::write(path("nothing.pem"), "nothing").expect("written");
    let refused = |chain: &str, key: &str| {
        certificate(&path(chain), &path(key))
            .map(|_| ())
            .expect_err("refused")
            .0
    };
    assert_eq!(refused("chain.pem", "nothing.pem"), path("nothing.pem"));
    assert_eq!(refused("nothing.pem", "key.pem"), path("nothing.pem"));
    assert_eq!(refused("missing.pem", "key.pem"), path("missing.pem"));
    let certificate = certificate(&path("chain.pem"), &path("key.pem")).expect("sound");

    let mut room = Room::open(&path("class.sqlite"), definition());
    let router = room.server.as_ref().expect("open").router();
    let runtime = room.runtime.as_ref().expect("open");
    let listener = runtime
        .block_on(tokio::net::TcpListener::bind("127.0.0.1:0"))
        .expect("a port");
    let address = listener.local_addr().expect("its address");
    runtime.spawn(listen(
        listener,
        router,
        Some(certificate),
        std::future::pending(),
    ));
    let answer = runtime.block_on(async {
        use tokio::io::{AsyncReadExt, AsyncWriteExt};
        let mut roots = RootCertStore::empty();
        roots
            .add(CertificateDer::from(made.cert.der().to_vec()))
            .expect("a certificate");
        let config =
            ClientConfig::builder_with_provider(Arc::new(rustls::crypto::ring::default_provider()))
                .with_safe_default_protocol_versions()
                .expect("known")
                .with_root_certificates(roots)
                .with_no_client_auth();
        let stream = tokio::net::TcpStream::connect(address)
            .await
            .expect("it listens");
        let name = ServerName::try_from("bench.example.org").expect("a name");
        let mut stream = TlsConnector::from(Arc::new(config))
            .connect(name, stream)
            .await
            .expect("trusted");
        stream
            .write_all(b"GET / HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n")
            .await
            .expect("sent");
        let mut answer = String::new();
        let _ = stream.read_to_string(&mut answer).await;
        answer
    });
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    let mut plain = TcpStream::connect(address).expect("it listens");
    plain
        .write_all(b"GET / HTTP/1.1\r\nhost: x\r\n\r\n")
        .expect("sent");
    let mut answer = Vec::new();
    let _ = plain.read_to_end(&mut answer);
    assert!(!answer.starts_with(b"HTTP"), "{answer:?}");
    room.end();
}

#[test]
fn a_job_of_an_examination_comes_closed_to_its_own_seat_and_not_before_the_class_opens() {
    let _moves = CLOCK_MOVES.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let examination = ClassDefinition {
        kind: ClassKind::Examination,
        machines: JobMachines::SealedVariants,
        opens_ms: Some(clock().0 + 60_000),
        ..definition()
    };
    let room = Room::open(&path, examination.clone());
    let JoinAnswer { token, view } = room.join("ACDEFG", "Ann", None).expect("a seat");
    let other = room.join("ACDEFG", "Ben", None).expect("a seat").token;
    let [job] = &*view.jobs else {
        panic!("{:?}", view.jobs);
    };
    assert!(job.is_sealed && job.job == "job-1");
    // By no name before the class is open, and only to whoever has a seat.
    assert_eq!(room.sealed_job(&token, "job-1").1, SealedJobAnswer::NotYet);
    for name in ["drain-code", "job-2", "job-0", "..%2fjob-1", "%00"] {
        assert_eq!(room.sealed_job(&token, name).1, SealedJobAnswer::NoJob);
    }
    let (status, ..) = room.ask("GET", "/api/jobs/job-1", &[], b"");
    assert_eq!(status, 401);
    CLOCK.fetch_add(60_000, Ordering::Relaxed);
    let (body, mine) = room.drawn_job(&token, "job-1");
    let (other_body, others) = room.drawn_job(&other, "job-1");
    assert_ne!(mine.text, others.text, "each seat has its own");
    // What goes over the wire and lies in the page's storage says nothing, and both are of one length.
    let library = ContentLibrary::builtin().expect("sound");
    let source = library.scenario_source("job-1.ron".to_owned(), mine.text.clone().into());
    let source = source.expect("it is a scenario");
    let wire = String::from_utf8(body).expect("text");
    assert_eq!(wire.len(), other_body.len());
    for told in ["title", "fault", "board", "complaint", "drain"] {
        assert!(mine.text.contains(told) || told == "drain", "{told}");
        assert!(!wire.contains(told), "{told}: {wire}");
    }
    // The same after a restart: it was drawn once.
    let (text, points) = {
        let recorded = random_attempt(&library, &source, mine.seed, 5);
        let text = String::from_utf8(recorded.bytes).expect("text");
        (text, recorded.score)
    };
    room.close();
    let room = Room::open(&path, examination);
    assert_eq!(room.drawn_job(&token, "job-1").1, mine);
    room.send_all(&token, &mut upload(&view, 1), &text);
    assert_eq!(
        room.verdict(&token, id(1)),
        Verdict::Verified { points: None }
    );
    assert_eq!(room.seat(&token).attempts[0].job.as_deref(), Some("job-1"));
    // The instructor's board has the job by its title in the library.
    let (_, _, board) = room.ask("GET", "/teacher/board", &[("cookie", &cookie(255))], b"");
    let board = String::from_utf8(board).expect("text");
    assert!(board.contains("drain-code") && !board.contains("job-1"));
    // Watched at the bench, it has its scenario with it.
    let path = format!("/api/teacher/attempts/{}/watch", id(1));
    let (_, _, body) = room.ask("GET", &path, &[("cookie", &cookie(255))], b"");
    let watched: WatchedAttempt = serde_json::from_slice(&body).expect("an attempt");
    let scenario = watched.scenario.expect("it is drawn");
    assert_eq!(
        (scenario.file.as_str(), &scenario.text),
        ("job-1.ron", &mine.text)
    );
    // Copied by the neighbor it is at no machine of theirs.
    room.send_all(&other, &mut upload(&view, 2), &text);
    assert_eq!(room.verdict(&other, id(2)), Verdict::Mismatch);
    teacher(
        &room,
        "/api/teacher/standing",
        &json!({"standing": "Closed"}),
    );
    let Verdict::Verified { points: Some(told) } = room.verdict(&token, id(1)) else {
        panic!("it is told after the close");
    };
    assert!((told - points).abs() < 1e-9);
}

/// A round of a drill goes the way of an attempt: sent, marked again, kept back in an examination, handed in as a file.
#[test]
fn a_round_of_a_drill_is_sent_marked_and_told_like_an_attempt() {
    let folder = tempfile::tempdir().expect("a folder");
    let class = class_of_drills(ClassKind::Examination);
    let room = Room::open(&folder.path().join("class.sqlite"), class);
    let library = ContentLibrary::builtin().expect("sound");
    let ann = room.join("ACDEFG", "Ann", None).expect("a seat");
    let drill_of = |view: &ClassView| {
        let mut drills = view.drills.iter();
        let found = drills.find(|drill| drill.drill == Skill::CodeLookUp.name());
        found.expect("it is one of the class").clone()
    };
    let drill = drill_of(&ann.view);
    let (text, right) = round(&library, &drill, 0);
    // Half of it, and then the rest.
    let two_lines = text.match_indices('\n').nth(1).expect("two lines").0 + 1;
    let mut upload = upload(&ann.view, 1);
    room.send_all(&ann.token, &mut upload, &text[..two_lines]);
    room.send_all(&ann.token, &mut upload, &text);
    let sealed = Verdict::Verified { points: None };
    assert_eq!(room.verdict(&ann.token, id(1)), sealed);
    let status = room.watched(&ann.token, id(1), drill.questions);
    let told = DrillStatus {
        drill: drill.drill.clone(),
        done: drill.questions,
        questions: drill.questions,
        right: None,
    };
    assert_eq!((status.drill, status.job), (Some(told.clone()), None));
    assert!(board_of(&room).contains(&format!("{right} of {} right", drill.questions)));
    // Ben hands in a file; Cy hands in Ben's.
    let headers = [("cookie", cookie(255)), ("x-detent-class", "1".to_owned())];
    let headers: Vec<(&str, &str)> = headers
        .iter()
        .map(|(name, value)| (*name, value.as_str()))
        .collect();
    let ben = room.join("ACDEFG", "Ben", None).expect("a seat");
    let (of_ben, right_of_ben) = round(&library, &drill_of(&ben.view), 0);
    let cy = room.join("ACDEFG", "Cy", None).expect("a seat");
    let mut handed_in = Vec::new();
    for seat in [2, 3] {
        let path = format!("/api/teacher/seats/{seat}/hand-in?name=a.round");
        let (status, _, body) = room.ask("POST", &path, &headers, of_ben.as_bytes());
        assert_eq!(status, 200);
        let answer: AttemptStatus = serde_json::from_slice(&body).expect("a status");
        handed_in.push(answer.attempt);
    }
    assert_eq!(room.verdict(&ben.token, handed_in[0]), sealed);
    assert_eq!(room.verdict(&cy.token, handed_in[1]), Verdict::NotAssigned);
    let half = &of_ben[..of_ben.len() / 2];
    let path = "/api/teacher/seats/2/hand-in?name=a.round";
    assert_eq!(room.ask("POST", path, &headers, half.as_bytes()).0, 400);
    // It is given out as it came in.
    let path = format!("/api/teacher/attempts/{}", handed_in[0]);
    let (status, head, body) = room.ask("GET", &path, &headers, b"");
    assert_eq!((status, &body[..]), (200, of_ben.as_bytes()));
    assert!(head.contains(".round\""), "{head}");
    // What was right is told when the class is closed.
    let closing = json!({"standing": "Closed"});
    assert_eq!(teacher(&room, "/api/teacher/standing", &closing).0, 204);
    for (token, attempt, right) in [
        (&ann.token, id(1), right),
        (&ben.token, handed_in[0], right_of_ben),
    ] {
        let status = room.watched(token, attempt, drill.questions);
        let points = 100.0 * right as f64 / f64::from(drill.questions);
        let verdict = Verdict::Verified {
            points: Some(points),
        };
        assert_eq!(status.verdict, verdict);
        let right = u32::try_from(right).ok();
        assert_eq!(
            status.drill,
            Some(DrillStatus {
                right,
                ..told.clone()
            })
        );
    }
}

/// Whoever knows a seed knows the questions: an examination tells none before it is open.
#[test]
fn an_examination_tells_no_seed_of_a_drill_before_it_is_open() {
    let _clock = CLOCK_MOVES.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = tempfile::tempdir().expect("a folder");
    for (kind, before) in [(ClassKind::Practice, 8), (ClassKind::Examination, 0)] {
        let class = ClassDefinition {
            opens_ms: Some(clock().0 + 60_000),
            ..class_of_drills(kind)
        };
        let path = folder.path().join(format!("{kind:?}.sqlite"));
        let room = Room::open(&path, class);
        let JoinAnswer { token, view } = room.join("ACDEFG", "Ann", None).expect("a seat");
        assert_eq!(view.drills.len(), before, "{kind:?}");
        let open = json!({"standing": "Open"});
        assert_eq!(teacher(&room, "/api/teacher/standing", &open).0, 204);
        assert_eq!(room.seat(&token).drills.len(), 8, "{kind:?}");
    }
}
