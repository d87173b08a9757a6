//! A learner's side against a server that is not there: what is asked, when, and what comes of it.

use super::driver::{Answer, Driver, Failure, JoinProblem, Question, SendState};
use super::http::{Http, OnAnswer, Transport};
use super::kept::{KeptClass, Seat};
use super::shown::{demo_view, with_drills};
use super::*;
use crate::AppOptions;
use crate::attempts::Folder;
use crate::drill::DrillRes;
use crate::rest::tests::paused;
use crate::workbench::LibraryJobs;

use detent_class_protocol::{
    AttemptStatus, ClassDrill, ClassId, ClassJob, ClassKind, ClassNotice, ClassView, Digest,
    JoinAnswer, JoinRefusal, NONCE_BYTES, SealedJobAnswer, SealedScenario, SecretToken, Segment,
    SegmentAnswer,
};
use detent_training::bench::{Action, Report};
use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};

const TOKEN: SecretToken = SecretToken::of_bytes([7; 32]);
const CODE: &str = "ACDEFG";

fn s(seconds: u64) -> Duration {
    Duration::from_secs(seconds)
}

/// What a server does with what it is asked.
struct FakeServer {
    view: ClassView,
    /// Segments by their attempts, in order.
    segments: BTreeMap<AttemptId, Vec<Segment>>,
    knows_token: bool,
    disk_is_full: bool,
    /// What there is of sealed jobs.
    drawn: BTreeMap<String, SealedScenario>,
    /// What it says to every segment from now on, instead of keeping it.
    says: Option<SegmentAnswer>,
    asked: Vec<Question>,
}

impl FakeServer {
    fn new(kind: ClassKind) -> FakeServer {
        FakeServer {
            view: demo_view(kind),
            segments: BTreeMap::new(),
            knows_token: true,
            disk_is_full: false,
            drawn: BTreeMap::new(),
            says: None,
            asked: Vec::new(),
        }
    }

    fn text(&self, attempt: AttemptId) -> String {
        let segments = self.segments.get(&attempt).into_iter().flatten();
        segments.map(|segment| segment.text.as_str()).collect()
    }

    fn answer(
        &mut self,
        token: Option<SecretToken>,
        question: Question,
    ) -> Result<Answer, Failure> {
        self.asked.push(question.clone());
        if let Question::Join(request) = &question {
            return Ok(match request.code == CODE {
                true => Answer::Joined(Box::new(JoinAnswer {
                    token: TOKEN,
                    view: self.view.clone(),
                })),
                false => Answer::Refused(JoinRefusal::WrongCode),
            });
        }
        if token != Some(TOKEN) || !self.knows_token {
            return Err(Failure::UnknownSeat);
        }
        Ok(match question {
            Question::Join(_) | Question::Seat => Answer::Seat(Box::new(self.view.clone())),
            Question::Attempt(attempt) => {
                let segments = self.segments.get(&attempt).map_or(&[][..], Vec::as_slice);
                let nothing = AttemptStatus::nothing_of(attempt);
                Answer::Attempt(AttemptStatus {
                    next: u32::try_from(segments.len()).expect("a few"),
                    digest: segments.last().map_or(nothing.digest, |last| last.digest),
                    bytes: self.text(attempt).len() as u64,
                    text: Some(Digest::of_text(&self.text(attempt))),
                    ..nothing
                })
            }
            Question::SealedJob(job) => Answer::SealedJob(match self.drawn.get(&job) {
                Some(drawn) => {
                    SealedJobAnswer::Ready(drawn.seal(&job, [3; NONCE_BYTES]).expect("it is short"))
                }
                None => SealedJobAnswer::NotYet,
            }),
            Question::Segment(segment) => Answer::Segment(self.keep(segment)),
        })
    }

    fn keep(&mut self, segment: Segment) -> SegmentAnswer {
        assert_eq!(segment.check(), Ok(()));
        if let Some(says) = self.says {
            return says;
        }
        if self.disk_is_full {
            return SegmentAnswer::NotNow;
        }
        let known = self.segments.entry(segment.attempt).or_default();
        let place = segment.sequence as usize;
        match known.get(place) {
            Some(there) if *there == segment => {}
            Some(_) => {
                return SegmentAnswer::OtherBody {
                    sequence: segment.sequence,
                };
            }
            None if known.len() == place => known.push(segment),
            None => {}
        }
        let next = u32::try_from(known.len()).expect("a few");
        SegmentAnswer::Kept { next }
    }
}

fn request(code: &str) -> JoinRequest {
    JoinRequest {
        protocol: PROTOCOL_VERSION,
        code: code.to_owned(),
        name: "Rosa Ibáñez".to_owned(),
        word: None,
    }
}

/// Texts of attempts by the names of their files.
type Files = BTreeMap<String, String>;

/// Asks and answers all that there is to ask at this moment.
fn settle(driver: &mut Driver, server: &mut FakeServer, files: &Files, now: Duration) {
    while let Some((token, question)) = driver.next(now, &mut |name| files.get(name).cloned()) {
        let answer = server.answer(token, question);
        driver.answered(now, answer, (0.0, true));
    }
}

/// A driver in a seat, a server, and the moment at which the seat was taken.
fn seated(kind: ClassKind) -> (Driver, FakeServer) {
    let (mut driver, mut server) = (Driver::new(KeptClass::default()), FakeServer::new(kind));
    driver.join(request(CODE), s(0));
    settle(&mut driver, &mut server, &Files::new(), s(0));
    assert!(driver.has_seat());
    server.asked.clear();
    (driver, server)
}

const FILE: &str = "drain-code-1.attempt";
const ID: AttemptId = AttemptId::of_bytes([1; 16]);

fn begin(driver: &mut Driver) {
    let made_with = ("0.1.0", Digest::NONE);
    driver.begin(&format!("{FILE}.part"), ID, "drain-code", made_with);
}

#[test]
fn without_a_seat_nothing_is_asked_and_the_window_sleeps() {
    let mut driver = Driver::new(KeptClass::default());
    assert_eq!(driver.due_in(s(0)), None);
    assert_eq!(driver.next(s(9), &mut |_| None), None);
    let mut server = FakeServer::new(ClassKind::Practice);
    driver.join(request("XXXXXX"), s(9));
    assert_eq!(driver.due_in(s(9)), Some(s(0)));
    settle(&mut driver, &mut server, &Files::new(), s(9));
    let refused = JoinProblem::Refused(JoinRefusal::WrongCode);
    assert_eq!(driver.problem(), Some(&refused));
    assert_eq!(driver.due_in(s(10)), None);
    assert!(driver.take_to_keep().is_none());
}

#[test]
fn a_seat_is_polled_every_five_seconds_and_unseen_every_ten() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    assert_eq!(
        driver.take_to_keep().and_then(|kept| kept.token),
        Some(TOKEN)
    );
    let nothing = &mut |_: &str| None;
    for (now, wait, seen) in [(5, 5, true), (10, 10, false), (20, 5, true)] {
        assert_eq!(driver.next(s(now - 1), nothing), None);
        let (token, question) = driver.next(s(now), nothing).expect("it is time");
        assert_eq!((token, &question), (Some(TOKEN), &Question::Seat));
        assert_eq!(driver.due_in(s(now)), None, "an answer is waited for");
        assert_eq!(driver.next(s(now), nothing), None, "one question at a time");
        let answer = server.answer(token, question);
        driver.answered(s(now), answer, (0.0, seen));
        assert_eq!(driver.due_in(s(now)), Some(s(wait)));
        // Only the time that is left is another one.
        assert!(driver.take_to_keep().is_none());
        server.view.standing = Standing::Open { left_s: Some(9) };
    }
}

#[test]
fn a_server_that_is_away_is_asked_again_later_and_later() {
    for (draw, share) in [(0.0, 1.0), (1.0, 0.75)] {
        let (mut driver, mut server) = seated(ClassKind::Practice);
        let mut now = s(5);
        for wait_s in [1, 2, 4, 8, 16, 30, 30] {
            let asked = driver.next(now, &mut |_| None);
            assert!(asked.is_some(), "at {now:?}");
            driver.answered(now, Err(Failure::NoAnswer), (draw, true));
            assert_eq!(driver.send_state(), SendState::Unreachable);
            let wait = s(wait_s).mul_f64(share);
            assert_eq!(driver.due_in(now), Some(wait));
            assert_eq!(driver.next(now + wait / 2, &mut |_| None), None);
            now += wait;
        }
        settle(&mut driver, &mut server, &Files::new(), now);
        assert_eq!(driver.send_state(), SendState::Sent);
        assert_eq!(driver.due_in(now), Some(s(5)));
    }
}

#[test]
fn what_is_done_is_sent_at_most_once_a_second() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    settle(&mut driver, &mut server, &files, s(1));
    assert_eq!(server.text(ID), files[FILE]);
    assert_eq!(driver.send_state(), SendState::Sent);
    files
        .get_mut(FILE)
        .expect("it is there")
        .push_str("two\nthree\n");
    driver.note_deeds(FILE, 2);
    let waiting = SendState::Waiting { deeds: 2 };
    assert_eq!(driver.send_state(), waiting);
    let asked = server.asked.len();
    settle(
        &mut driver,
        &mut server,
        &files,
        Duration::from_millis(1_900),
    );
    assert_eq!((server.asked.len(), driver.send_state()), (asked, waiting));
    assert_eq!(
        driver.due_in(Duration::from_millis(1_900)),
        Some(Duration::from_millis(100))
    );
    settle(&mut driver, &mut server, &files, s(2));
    assert_eq!(
        (server.text(ID), driver.send_state()),
        (files[FILE].clone(), SendState::Sent)
    );
    // It is looked once more whether that was all; then only the next poll is due.
    assert_eq!(driver.due_in(s(2)), Some(s(1)));
    settle(&mut driver, &mut server, &files, s(3));
    assert_eq!(driver.due_in(s(3)), Some(s(2)));
}

/// Questions and answers get lost, the program ends in between, and the text grows all the while.
#[test]
fn everything_arrives_whatever_the_network_does() {
    for seed in 1..200_u64 {
        let mut random = seed;
        let mut draw = move || {
            // Numerical Recipes' linear congruential generator.
            random = random.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (random >> 16) % 100
        };
        let (mut driver, mut server) = seated(ClassKind::Practice);
        let mut files = Files::new();
        files.insert(FILE.to_owned(), "header\n".to_owned());
        begin(&mut driver);
        let mut now = s(0);
        for deed in 0..40 {
            let text = files.get_mut(FILE).expect("it is there");
            let line = if deed == 39 { "End(1)\n" } else { "deed\n" };
            text.push_str(line);
            driver.note_deeds(FILE, 1);
            for _ in 0..draw() % 4 {
                now += Duration::from_millis(700);
                let asked = driver.next(now, &mut |name| files.get(name).cloned());
                let Some((token, question)) = asked else {
                    continue;
                };
                if draw() < 20 {
                    // The program ends while it waits, and begins again.
                    let _ = server.answer(token, question);
                    driver = Driver::new(driver.kept().clone());
                    continue;
                }
                let answer = match draw() {
                    0..30 => Err(Failure::NoAnswer),
                    30..50 => {
                        let _ = server.answer(token, question);
                        Err(Failure::NoAnswer)
                    }
                    _ => server.answer(token, question),
                };
                driver.answered(now, answer, (0.5, true));
            }
        }
        for _ in 0..100 {
            now += s(1);
            settle(&mut driver, &mut server, &files, now);
        }
        assert_eq!(server.text(ID), files[FILE], "seed {seed}");
        assert_eq!(driver.send_state(), SendState::Sent, "seed {seed}");
        assert!(driver.kept().attempts[FILE].is_there, "seed {seed}");
        // All of it is known to be there: after a restart nothing of it is asked any more.
        let mut again = Driver::new(driver.kept().clone());
        server.asked.clear();
        settle(&mut again, &mut server, &files, s(0));
        assert_eq!(server.asked, [Question::Seat], "seed {seed}");
    }
}

#[test]
fn a_seat_that_is_lost_is_asked_for_and_what_was_done_is_sent_then() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    server.knows_token = false;
    settle(&mut driver, &mut server, &files, s(1));
    assert_eq!(driver.problem(), Some(&JoinProblem::SeatLost));
    assert_eq!((driver.has_seat(), driver.due_in(s(2))), (false, None));
    assert_eq!(driver.take_to_keep().and_then(|kept| kept.token), None);
    server.knows_token = true;
    driver.join(request(CODE), s(3));
    settle(&mut driver, &mut server, &files, s(3));
    assert_eq!(server.text(ID), files[FILE]);
}

#[test]
fn what_somebody_else_did_here_is_not_sent_from_this_seat() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    driver.leave();
    server.view.name = "Somebody Else".to_owned();
    driver.join(request(CODE), s(1));
    settle(&mut driver, &mut server, &files, s(9));
    assert_eq!(server.text(ID), "");
    server.view.name = "Rosa Ibáñez".to_owned();
    settle(&mut driver, &mut server, &files, s(99));
    assert_eq!(server.text(ID), files[FILE]);
}

/// One server, two classes of one title, one after the other.
#[test]
fn what_was_done_in_a_class_is_not_sent_to_another_of_the_same_title() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    let first = server.view.class;
    server.view.class = Some(ClassId::of_bytes([9; 16]));
    driver.join(request(CODE), s(1));
    settle(&mut driver, &mut server, &files, s(9));
    assert_eq!(server.text(ID), "");
    server.view.class = first;
    settle(&mut driver, &mut server, &files, s(99));
    assert_eq!(server.text(ID), files[FILE]);
}

#[test]
fn what_is_refused_for_good_is_told_and_the_rest_goes_on() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    server.says = Some(SegmentAnswer::TooMuch);
    settle(&mut driver, &mut server, &files, s(1));
    assert_eq!(driver.send_state(), SendState::Refused);
    assert_eq!(driver.refused().collect::<Vec<_>>(), [FILE]);
    server.says = None;
    let (other, other_id) = ("first-call-1.attempt", AttemptId::of_bytes([2; 16]));
    files.insert(other.to_owned(), "header\n".to_owned());
    driver.begin(other, other_id, "first-call", ("0.1.0", Digest::NONE));
    settle(&mut driver, &mut server, &files, s(3));
    assert_eq!(server.text(other_id), files[other]);
    assert_eq!(server.text(ID), "");
}

#[test]
fn a_server_without_room_gets_it_later() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let mut files = Files::new();
    files.insert(FILE.to_owned(), "header\none\n".to_owned());
    begin(&mut driver);
    server.disk_is_full = true;
    settle(&mut driver, &mut server, &files, s(1));
    assert_eq!(driver.send_state(), SendState::ServerFull);
    server.disk_is_full = false;
    settle(&mut driver, &mut server, &files, s(2));
    settle(&mut driver, &mut server, &files, s(3));
    assert_eq!(driver.send_state(), SendState::Sent);
    assert_eq!(server.text(ID), files[FILE]);
}

#[test]
fn the_time_that_is_left_runs_here_too() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    for (standing, after_s, now) in [
        (
            Standing::NotOpen { in_s: 90 },
            30,
            Standing::NotOpen { in_s: 60 },
        ),
        (
            Standing::NotOpen { in_s: 90 },
            90,
            Standing::Open { left_s: None },
        ),
        (
            Standing::Open { left_s: Some(90) },
            30,
            Standing::Open { left_s: Some(60) },
        ),
        (Standing::Open { left_s: Some(90) }, 95, Standing::Closed),
        (
            Standing::Open { left_s: None },
            95,
            Standing::Open { left_s: None },
        ),
        (Standing::Paused, 95, Standing::Paused),
        (Standing::Closed, 95, Standing::Closed),
    ] {
        server.view.standing = standing;
        settle(&mut driver, &mut server, &Files::new(), s(100));
        driver.leave();
        driver.join(request(CODE), s(100));
        settle(&mut driver, &mut server, &Files::new(), s(100));
        assert_eq!(driver.standing(s(100 + after_s)), Some(now));
    }
    // What was heard before a restart stands until the server speaks.
    let restarted = Driver::new(driver.kept().clone());
    assert_eq!(restarted.standing(s(1_000)), Some(Standing::Closed));
}

#[test]
fn a_notice_is_shown_until_it_is_put_away() {
    let (mut driver, mut server) = seated(ClassKind::Practice);
    let shown = |driver: &Driver| driver.notice().map(|(number, _)| number);
    assert_eq!(shown(&driver), Some(1));
    driver.put_away(1);
    assert_eq!(shown(&driver), None);
    assert_eq!(
        shown(&Driver::new(driver.kept().clone())),
        None,
        "after a restart too"
    );
    server.view.notices.push(ClassNotice {
        number: 2,
        text: "Ten minutes left.".to_owned(),
    });
    settle(&mut driver, &mut server, &Files::new(), s(5));
    assert_eq!(shown(&driver), Some(2));
}

#[test]
fn an_examination_is_sealed_until_it_is_closed() {
    for (kind, sealed) in [(ClassKind::Practice, false), (ClassKind::Examination, true)] {
        let (mut driver, mut server) = seated(kind);
        begin(&mut driver);
        assert_eq!(driver.seals(FILE), sealed);
        assert_eq!(driver.seals(&format!("{FILE}.part")), sealed);
        // Whoever leaves the seat sees no more of it.
        let mut left = Driver::new(driver.kept().clone());
        left.leave();
        assert_eq!(left.seals(FILE), sealed);
        server.view.standing = Standing::Closed;
        settle(&mut driver, &mut server, &Files::new(), s(5));
        assert!(!driver.seals(FILE));
    }
}

fn sealed_job(name: &str) -> ClassJob {
    ClassJob {
        job: name.to_owned(),
        seed: 1,
        is_sealed: true,
    }
}

/// The machine of a sealed job, which is a job of the library under another name.
fn drawn(seed: u64) -> SealedScenario {
    let library = detent_content::ContentLibrary::builtin().expect("sound");
    let source = library.scenario("drain-code").expect("built in");
    SealedScenario {
        text: format!("{}\n// 5af3\n", source.text),
        seed,
    }
}

#[test]
fn a_sealed_job_is_asked_for_until_it_is_drawn_and_kept_closed() {
    let (mut driver, mut server) = seated(ClassKind::Examination);
    let jobs = vec![sealed_job("job-1"), sealed_job("job-2")];
    server.view.jobs.clone_from(&jobs);
    server.view.standing = Standing::NotOpen { in_s: 3 };
    let asked = |server: &FakeServer| {
        let of_jobs = server.asked.iter();
        (of_jobs.filter(|asked| matches!(asked, Question::SealedJob(_)))).count()
    };
    settle(&mut driver, &mut server, &Files::new(), s(5));
    assert_eq!(asked(&server), 0, "not before the class is open");
    server.view.standing = Standing::Open { left_s: None };
    settle(&mut driver, &mut server, &Files::new(), s(10));
    assert_eq!(asked(&server), 1, "one that is not drawn holds the next up");
    assert_eq!(driver.due_in(s(11)), Some(s(2)));
    server.drawn.insert("job-1".to_owned(), drawn(11));
    server.drawn.insert("job-2".to_owned(), drawn(12));
    settle(&mut driver, &mut server, &Files::new(), s(13));
    assert_eq!(asked(&server), 3);
    assert_eq!(driver.kept().missing_job(), None);
    assert_eq!(
        driver.due_in(s(13)),
        Some(s(2)),
        "only where the class stands"
    );
    let kept = serde_json::to_string(driver.kept()).expect("it can be written");
    assert!(
        !kept.contains("complaint") && !kept.contains("fault"),
        "{kept}"
    );
    // They are there after a restart; who sits there next does not have them.
    let kept: KeptClass = serde_json::from_str(&kept).expect("it can be read");
    let scenarios = kept.sealed_scenarios();
    assert_eq!(scenarios, [("job-1", drawn(11)), ("job-2", drawn(12))]);
    let mut other = kept.clone();
    other.take_in(ClassView {
        name: "Somebody else".to_owned(),
        ..server.view.clone()
    });
    assert!(!other.has_scenario("job-1"));
}

/// Answers at once.
struct AtOnce(Arc<Mutex<FakeServer>>);

impl Transport for AtOnce {
    fn ask(
        &self,
        _: &ServerAddress,
        token: Option<SecretToken>,
        question: Question,
        on_answer: OnAnswer,
    ) {
        let answer = self.0.lock().expect("sound").answer(token, question);
        on_answer(answer);
    }
}

/// A whole window in a class, and where its attempts are kept.
fn window_in_class(server: &Arc<Mutex<FakeServer>>, folder: &std::path::Path) -> App {
    let mut app = paused(&AppOptions::default());
    let attempts = Arc::new(Folder::new(folder.to_owned()));
    let jobs = LibraryJobs::new(None, Some(attempts)).expect("the built-in jobs are sound");
    app.insert_resource(JobSourceRes(Box::new(jobs)));
    let mut link = ClassLink::new(
        "host:1".parse().expect("an address"),
        Some(Box::new(kept::ClassFolder::beside(folder))),
        Box::new(AtOnce(Arc::clone(server))),
        Digest::NONE,
    );
    if !link.driver.has_seat() {
        link.driver.join(request(CODE), since_start());
    }
    app.world_mut().resource_mut::<ClassRes>().link = Some(link);
    app
}

/// Frames until it is so; they take as long as they take, as the driver's clock is the wall's.
#[track_caller]
fn until(app: &mut App, what: &str, is_so: impl Fn(&mut App) -> bool) {
    for _ in 0..1_500 {
        app.update();
        if is_so(app) {
            return;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    panic!("{what}");
}

fn screen(app: &mut App) -> Screen {
    *app.world().resource::<State<Screen>>().get()
}

#[test]
fn a_job_of_an_examination_is_sent_sealed_and_opened_when_the_class_is_closed() {
    let server = Arc::new(Mutex::new(FakeServer::new(ClassKind::Examination)));
    let folder = tempfile::tempdir().expect("a folder");
    let mut app = window_in_class(&server, folder.path());
    until(&mut app, "a seat", |app| {
        app.world().resource::<ClassRes>().joined().is_some()
    });
    let job = server.lock().expect("sound").view.jobs[1].clone();
    let world = app.world_mut();
    let jobs = &world.resource::<JobSourceRes>().0;
    let mut offers = jobs.offers().iter();
    let offer = offers.position(|offer| offer.course.file == job.job);
    let work = jobs.open(offer.expect("a built-in job"), job.seed);
    let mut ui_state = world.resource_mut::<UiState>();
    ui_state.opening_class_job = Some(job.job.clone());
    ui_state.open(work);
    until(&mut app, "the bench", |app| screen(app) == Screen::Bench);
    assert!(
        app.world().resource::<UiState>().sealed,
        "from the first frame on"
    );
    for action in [Action::Unplug, Action::Report(Report::given_up())] {
        app.world_mut().resource_mut::<BenchRes>().push(action);
        (0..3).for_each(|_| app.update());
    }
    assert!(app.world().resource::<BenchRes>().view().finished);
    let file = format!("{}-1.attempt", job.job);
    let kept = std::fs::read_to_string(folder.path().join(&file)).expect("it is kept");
    let came_in = Arc::clone(&server);
    until(&mut app, "it is sent", move |app| {
        let class = app.world().resource::<ClassRes>();
        let link = class.link.as_ref().expect("a class");
        let attempt = &link.driver.kept().attempts[&file];
        attempt.is_there && came_in.lock().expect("sound").text(attempt.attempt) == kept
    });
    assert!(kept_seed(&server, job.seed), "at the machine of this seat");
    assert!(app.world().resource::<UiState>().sealed);
    let points = |app: &App| {
        let learner = app.world().resource::<LearnerRes>();
        learner.learner().best_share(&job.job)
    };
    assert_eq!(points(&app), None, "nothing shows what it was worth");
    server.lock().expect("sound").view.standing = Standing::Closed;
    until(&mut app, "it is opened", |app| {
        !app.world().resource::<UiState>().sealed
    });
    app.update();
    assert!(points(&app).is_some());
}

/// What is kept of a sealed job does not tell its scenario; the program goes on with it after a restart.
#[test]
fn a_sealed_job_is_done_without_a_word_of_its_scenario_in_any_file() {
    let mut fake = FakeServer::new(ClassKind::Examination);
    fake.view.jobs = vec![sealed_job("job-1")];
    fake.drawn.insert("job-1".to_owned(), drawn(11));
    let server = Arc::new(Mutex::new(fake));
    let folder = tempfile::tempdir().expect("a folder");
    let mut app = window_in_class(&server, folder.path());
    let has_job = |app: &mut App| {
        let jobs = &app.world().resource::<JobSourceRes>().0;
        jobs.sealed_scenario("job-1").is_some()
    };
    until(&mut app, "the job", has_job);
    let world = app.world_mut();
    let work = world.resource::<JobSourceRes>().0.open_sealed("job-1");
    let mut ui_state = world.resource_mut::<UiState>();
    ui_state.opening_class_job = Some("job-1".to_owned());
    ui_state.open(work);
    until(&mut app, "the bench", |app| screen(app) == Screen::Bench);
    let mut bench = app.world_mut().resource_mut::<BenchRes>();
    bench.push(Action::Unplug);
    (0..3).for_each(|_| app.update());
    drop(app);
    let mut told = 0;
    for path in walk(folder.path()) {
        let text = std::fs::read_to_string(&path).expect("text");
        assert!(
            !text.contains("fault") && !text.contains("complaint"),
            "{text}"
        );
        told += usize::from(text.contains("job-1.ron"));
    }
    assert_eq!(told, 1, "the attempt names its job");
    let mut app = window_in_class(&server, folder.path());
    until(&mut app, "the job", has_job);
    let world = app.world_mut();
    let work = world
        .resource::<JobSourceRes>()
        .0
        .resume("job-1-1.attempt.part");
    world.resource_mut::<UiState>().open(work);
    until(&mut app, "the bench", |app| screen(app) == Screen::Bench);
    let world = app.world_mut();
    assert_eq!(world.resource::<BenchRes>().history().len(), 1);
    assert!(world.resource::<UiState>().sealed);
    world
        .resource_mut::<BenchRes>()
        .push(Action::Report(Report::given_up()));
    until(&mut app, "it is sent", |_| kept_seed(&server, 11));
}

/// Every file under this folder.
fn walk(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    let entries = std::fs::read_dir(folder).expect("a folder").flatten();
    let paths = entries.flat_map(|entry| match entry.path().is_dir() {
        true => walk(&entry.path()),
        false => vec![entry.path()],
    });
    paths.collect()
}

/// Whether the attempt that came in is at the machine of this seed.
fn kept_seed(server: &Mutex<FakeServer>, seed: u64) -> bool {
    let server = server.lock().expect("sound");
    let (attempt, _) = server.segments.first_key_value().expect("one came in");
    let text = server.text(*attempt);
    let read = detent_training::record::read_attempt("it", text.as_bytes());
    read.is_ok_and(|attempt| attempt.header.seed == seed && attempt.footer.is_some())
}

#[test]
fn the_machine_stands_while_the_teacher_pauses_the_class() {
    let server = Arc::new(Mutex::new(FakeServer::new(ClassKind::Practice)));
    let folder = tempfile::tempdir().expect("a folder");
    let mut app = window_in_class(&server, folder.path());
    until(&mut app, "a seat", |app| {
        app.world().resource::<ClassRes>().joined().is_some()
    });
    let mut to = app.world_mut().resource_mut::<NextState<Screen>>();
    to.set(Screen::Bench);
    app.world_mut().resource_mut::<UiState>().speed = 1;
    let goes_on = |app: &mut App| {
        let clock = |app: &App| app.world().resource::<BenchRes>().view().machine.time_s;
        let before = clock(app);
        (0..5).for_each(|_| app.update());
        clock(app) > before
    };
    (0..3).for_each(|_| app.update());
    assert!(goes_on(&mut app));
    server.lock().expect("sound").view.standing = Standing::Paused;
    until(&mut app, "the pause", |app| {
        app.world().resource::<BenchRes>().class_paused
    });
    assert!(!goes_on(&mut app));
    server.lock().expect("sound").view.standing = Standing::Open { left_s: None };
    until(&mut app, "the end of the pause", |app| {
        !app.world().resource::<BenchRes>().class_paused
    });
    assert!(goes_on(&mut app));
}

/// After a restart the same seat is there without a word; where the server knows it no more, it is asked for.
#[test]
fn a_restart_leads_back_into_the_seat() {
    let server = Arc::new(Mutex::new(FakeServer::new(ClassKind::Practice)));
    let folder = tempfile::tempdir().expect("a folder");
    for restart in 0..2 {
        let mut app = window_in_class(&server, folder.path());
        until(&mut app, "a seat", |app| {
            app.world().resource::<ClassRes>().joined().is_some()
        });
        until(&mut app, "asked", |_| {
            !server.lock().expect("sound").asked.is_empty()
        });
        let mut server = server.lock().expect("sound");
        let joins = server
            .asked
            .drain(..)
            .filter(|asked| matches!(asked, Question::Join(_)));
        assert_eq!(joins.count(), usize::from(restart == 0));
    }
    server.lock().expect("sound").knows_token = false;
    let mut app = window_in_class(&server, folder.path());
    until(&mut app, "the way in", |app| screen(app) == Screen::Join);
    let class = app.world().resource::<ClassRes>();
    let link = class.link.as_ref().expect("a class");
    assert_eq!(link.driver.problem(), Some(&JoinProblem::SeatLost));
}

/// One request after the other, each on a connection of its own.
fn serve(listener: &TcpListener, server: &Mutex<FakeServer>) {
    for stream in listener.incoming() {
        let mut stream = stream.expect("a connection");
        let (status, body) = respond(&mut stream, server);
        let length = body.len();
        let head = format!(
            "HTTP/1.1 {status}\r\nContent-Type: application/json\r\nContent-Length: {length}\r\nConnection: close\r\n\r\n"
        );
        stream.write_all(head.as_bytes()).expect("it listens");
        stream.write_all(&body).expect("it listens");
    }
}

fn respond(stream: &mut TcpStream, server: &Mutex<FakeServer>) -> (&'static str, Vec<u8>) {
    let mut lines = BufReader::new(stream);
    let mut next = || {
        let mut line = String::new();
        lines.read_line(&mut line).expect("a line");
        line.trim_end().to_owned()
    };
    let (first, mut token, mut length) = (next(), None, 0);
    let mut types = Vec::new();
    loop {
        let line = next();
        let Some((name, value)) = line.split_once(": ") else {
            break;
        };
        match name.to_ascii_lowercase().as_str() {
            "authorization" => token = value.strip_prefix("Bearer ").and_then(|t| t.parse().ok()),
            "content-length" => length = value.parse().expect("a number"),
            "content-type" => types.push(value.to_owned()),
            _ => {}
        }
    }
    let mut body = vec![0; length];
    lines.read_exact(&mut body).expect("all of it");
    // A class's server takes nothing else, and two of them for none.
    if length > 0 && types != ["application/json"] {
        return ("415 Unsupported Media Type", b"{}".to_vec());
    }
    let (method, path) = first
        .trim_end_matches(" HTTP/1.1")
        .split_once(' ')
        .expect("a request");
    let json = "it can be read";
    let question = match (method, path) {
        ("POST", "/api/join") => Question::Join(serde_json::from_slice(&body).expect(json)),
        ("GET", "/api/seat") => Question::Seat,
        ("POST", "/api/segments") => Question::Segment(serde_json::from_slice(&body).expect(json)),
        ("GET", path) if path.starts_with("/api/jobs/") => {
            Question::SealedJob(path.trim_start_matches("/api/jobs/").to_owned())
        }
        ("GET", path) => {
            let id = path.strip_prefix("/api/attempts/").expect("a known path");
            Question::Attempt(id.parse().expect("an identifier"))
        }
        _ => return ("404 Not Found", b"nothing".to_vec()),
    };
    let json = |value: serde_json::Result<Vec<u8>>| value.expect("it can be written");
    match server.lock().expect("sound").answer(token, question) {
        Ok(Answer::Joined(joined)) => ("200 OK", json(serde_json::to_vec(&joined))),
        Ok(Answer::Refused(refusal)) => ("403 Forbidden", json(serde_json::to_vec(&refusal))),
        Ok(Answer::Seat(view)) => ("200 OK", json(serde_json::to_vec(&view))),
        Ok(Answer::Attempt(status)) => ("200 OK", json(serde_json::to_vec(&status))),
        Ok(Answer::SealedJob(answer)) => ("200 OK", json(serde_json::to_vec(&answer))),
        Ok(Answer::Segment(answer)) => ("200 OK", json(serde_json::to_vec(&answer))),
        Err(Failure::UnknownSeat) => ("401 Unauthorized", Vec::new()),
        Err(Failure::NoAnswer | Failure::NotAClass) => ("404 Not Found", b"nothing".to_vec()),
    }
}

/// Asks over the network and waits.
fn ask(
    address: &ServerAddress,
    token: Option<SecretToken>,
    question: Question,
) -> Result<Answer, Failure> {
    let (to, from) = std::sync::mpsc::channel();
    let on_answer = Box::new(move |answer| to.send(answer).expect("somebody waits"));
    Http.ask(address, token, question, on_answer);
    from.recv_timeout(s(20)).expect("it calls back")
}

#[test]
fn a_learner_speaks_to_a_server_over_a_socket() {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let address = listener.local_addr().expect("an address").to_string();
    let address: ServerAddress = address.parse().expect("an address");
    let server = Arc::new(Mutex::new(FakeServer::new(ClassKind::Practice)));
    let serving = Arc::clone(&server);
    std::thread::spawn(move || serve(&listener, &serving));

    let wrong = ask(&address, None, Question::Join(request("XXXXXX")));
    assert_eq!(wrong, Ok(Answer::Refused(JoinRefusal::WrongCode)));
    let nobody = ask(
        &address,
        Some(SecretToken::of_bytes([8; 32])),
        Question::Seat,
    );
    assert_eq!(nobody, Err(Failure::UnknownSeat));
    let job = ask(
        &address,
        Some(TOKEN),
        Question::SealedJob("job-1".to_owned()),
    );
    assert_eq!(job, Ok(Answer::SealedJob(SealedJobAnswer::NotYet)));

    let mut driver = Driver::new(KeptClass::default());
    let mut files = Files::new();
    files.insert(
        FILE.to_owned(),
        format!("header\n{}End(1)\n", "a deed\n".repeat(20_000)),
    );
    driver.join(request(CODE), s(0));
    let mut now = s(0);
    for _ in 0..12 {
        while let Some((token, question)) = driver.next(now, &mut |name| files.get(name).cloned()) {
            let answer = ask(&address, token, question);
            driver.answered(now, answer, (0.0, true));
        }
        if driver.has_seat() && !driver.has(FILE) {
            begin(&mut driver);
        }
        now += s(1);
    }
    assert_eq!(driver.send_state(), SendState::Sent);
    let server = server.lock().expect("sound");
    assert_eq!(server.text(ID), files[FILE]);
    assert_eq!(server.segments[&ID].len(), 3, "64 KiB each");
    assert_eq!(driver.kept().seat(), Some(Seat::of(&server.view)));
    drop(server);

    // Nobody is there, or somebody else is.
    let free = TcpListener::bind("127.0.0.1:0").expect("a port");
    let nobody = free.local_addr().expect("an address").to_string();
    drop(free);
    let nobody: ServerAddress = nobody.parse().expect("an address");
    assert_eq!(ask(&nobody, None, Question::Seat), Err(Failure::NoAnswer));
    let other = TcpListener::bind("127.0.0.1:0").expect("a port");
    let at = other.local_addr().expect("an address").to_string();
    std::thread::spawn(move || {
        let (mut stream, _) = other.accept().expect("a connection");
        let mut request = [0; 4_096];
        let _ = stream.read(&mut request);
        let page = "HTTP/1.1 200 OK\r\nContent-Length: 12\r\nConnection: close\r\n\r\n<html></html";
        stream.write_all(page.as_bytes()).expect("it listens");
    });
    let other: ServerAddress = at.parse().expect("an address");
    assert_eq!(ask(&other, None, Question::Seat), Err(Failure::NotAClass));
}

/// Answers the question at hand somehow, as the panel does.
fn answer_question(app: &mut App) {
    let mut drill = app.world_mut().resource_mut::<DrillRes>();
    let sitting = drill.sitting().expect("a round");
    sitting.asked.fill_in(true);
    let (done, _) = sitting.check(1.5).expect("a whole answer");
    sitting.record(done, now());
    drill.go_on();
    app.update();
}

/// The drill that the class shows first is asked for, until its round is there.
fn begin_drill(app: &mut App) {
    until(app, "a seat", |app| {
        app.world().resource::<ClassRes>().joined().is_some()
    });
    let mut class = app.world_mut().resource_mut::<ClassRes>();
    let view = class.joined().and_then(|link| link.driver.view());
    let drill = view.expect("a class").drills[0].clone();
    class.to_begin = Some(drill);
    until(app, "the drill", |app| screen(app) == Screen::Drill);
}

/// The rounds that are kept here.
fn rounds_in(folder: &std::path::Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).expect("a folder");
    let names = entries.map(|entry| entry.expect("an entry").file_name());
    let names = names.filter_map(|name| name.into_string().ok());
    names.filter(|name| name.ends_with(".round")).collect()
}

/// It is kept with each answer, goes on after a restart where it was, is sent, and there is one.
#[test]
fn a_round_of_a_drill_is_kept_sent_and_gone_on_with_after_a_restart() {
    let view = with_drills(demo_view(ClassKind::Examination));
    let drill = ClassDrill {
        questions: 3,
        ..view.drills[1].clone()
    };
    let server = Arc::new(Mutex::new(FakeServer::new(ClassKind::Examination)));
    server.lock().expect("sound").view = ClassView {
        drills: vec![drill.clone()],
        attempts: Vec::new(),
        ..view
    };
    let folder = tempfile::tempdir().expect("a folder");
    {
        let mut app = window_in_class(&server, folder.path());
        begin_drill(&mut app);
        answer_question(&mut app);
    }
    let names = rounds_in(folder.path());
    let [name] = &names[..] else {
        panic!("{names:?}");
    };
    let read = |unfinished| {
        let text = std::fs::read_to_string(folder.path().join(name)).expect("it is kept");
        (
            detent_training::record::read_drill_round(name, &text, unfinished),
            text,
        )
    };
    let (first, text) = read(true);
    let first = first.expect("a part of a round");
    assert_eq!((first.answers.len(), first.right), (1, None));
    assert_eq!((first.header.seed, first.header.questions), (drill.seed, 3));
    let mut app = window_in_class(&server, folder.path());
    begin_drill(&mut app);
    for _ in 0..2 {
        answer_question(&mut app);
    }
    assert_eq!(rounds_in(folder.path()), names, "no other round was begun");
    let (whole, sent) = read(false);
    assert!(sent.starts_with(&text), "only added to");
    assert_eq!(whole.expect("a whole round").answers.len(), 3);
    let came_in = Arc::clone(&server);
    let name = name.clone();
    until(&mut app, "it is sent", move |app| {
        let class = app.world().resource::<ClassRes>();
        let link = class.link.as_ref().expect("a class");
        let round = &link.driver.kept().attempts[&name];
        let there = came_in.lock().expect("sound").text(round.attempt);
        round.is_there && round.is_finished && there == sent
    });
    // It is not among the attempts at jobs.
    let jobs = &app.world().resource::<JobSourceRes>().0;
    assert!(jobs.attempts().expect("a folder").names().is_empty());
}
