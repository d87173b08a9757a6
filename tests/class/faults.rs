//! Network, disk, clock and program fail, each as one seed draws it: every segment that was acknowledged is there, and each
//! attempt is graded once, with what doing it again gives.
//!
//! `DETENT_FAULT_SEEDS=10000` runs through so many seeds, `DETENT_FAULT_SEED=N` through one.

use super::stage::attempts::random_attempt;
use super::{begin, definition, join, some_result};
use detent_class::moment::Moment;
use detent_class::protocol::{
    AttemptId, AttemptStatus, Digest, Segment, SegmentAnswer, Upload, UploadState, Verdict,
};
use detent_class::store::{Appended, Disk, Ending, Store, StoreError};
use detent_class::verify::{Submitted, Verifier};
use detent_content::ContentLibrary;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::VecDeque;
use std::path::Path;

const PROGRAM: &str = env!("CARGO_PKG_VERSION");
const LEARNERS: usize = 3;

/// One learner's bench.
struct Learner {
    seat: u32,
    whole: String,
    /// Bytes that were done so far.
    done: usize,
    upload: Upload,
}

/// What is on its way.
enum Message {
    Segment {
        learner: usize,
        segment: Segment,
    },
    Ask {
        learner: usize,
    },
    Answer {
        learner: usize,
        digest: Digest,
        answer: SegmentAnswer,
    },
    Status {
        learner: usize,
        status: AttemptStatus,
    },
}

struct World<'a> {
    path: &'a Path,
    disk: Option<Disk>,
    rng: ChaCha8Rng,
    now: u64,
    learners: Vec<Learner>,
    network: VecDeque<Message>,
    /// Segments that were answered with "kept".
    acknowledged: Vec<(AttemptId, u32, Digest)>,
    is_full: bool,
}

impl World<'_> {
    fn below(&mut self, n: usize) -> usize {
        self.rng.next_u32() as usize % n
    }

    fn disk(&mut self) -> &Disk {
        self.disk.get_or_insert_with(|| begin(self.path))
    }

    /// Takes one message off the network: any one, lost, doubled or as it is.
    fn deliver(&mut self, is_sound: bool) {
        if self.network.is_empty() {
            return;
        }
        let place = if is_sound {
            0
        } else {
            self.below(self.network.len())
        };
        let Some(message) = self.network.remove(place) else {
            return;
        };
        match if is_sound { 9 } else { self.below(10) } {
            0 | 1 => return,
            2 => {
                if let Message::Segment { learner, segment } = &message {
                    let (learner, segment) = (*learner, segment.clone());
                    self.network
                        .push_back(Message::Segment { learner, segment });
                }
            }
            _ => {}
        }
        match message {
            Message::Segment { learner, segment } => self.arrive(learner, segment, is_sound),
            Message::Ask { learner } => {
                let attempt = self.learners[learner].upload.attempt();
                let store = self.disk().store();
                let kept = store
                    .attempt(attempt)
                    .expect("readable")
                    .map(|kept| kept.status);
                let text = store
                    .text(attempt)
                    .expect("readable")
                    .map(|(text, ..)| Digest::of_text(&text));
                let status = kept.map_or_else(
                    || AttemptStatus::nothing_of(attempt),
                    |kept| AttemptStatus { text, ..kept },
                );
                self.network.push_back(Message::Status { learner, status });
            }
            Message::Answer {
                learner,
                digest,
                answer,
            } => self.learners[learner].upload.answered(digest, answer),
            Message::Status { learner, status } => {
                let Learner {
                    whole,
                    done,
                    upload,
                    ..
                } = &mut self.learners[learner];
                upload.told(&status, &whole[..*done]);
            }
        }
    }

    /// A segment arrives at the server, which may end before or after it commits.
    fn arrive(&mut self, learner: usize, segment: Segment, is_sound: bool) {
        let (seat, now) = (self.learners[learner].seat, Moment(self.now));
        let fate = if is_sound { 9 } else { self.below(12) };
        self.disk();
        let Some(disk) = self.disk.take() else {
            return;
        };
        let ending = [Ending::BeforeCommit, Ending::AfterCommit]
            .get(fate)
            .copied();
        if let Some(ending) = ending {
            disk.end_at_next_commit(ending);
        }
        let kept = segment.clone();
        let work = move |store: &Store<'_>| store.append(seat, &kept, now);
        let written: Vec<Result<Appended, StoreError>> = disk.write_together(vec![work]);
        let written = written.into_iter().next().expect("one answer");
        if ending.is_none() {
            self.disk = Some(disk);
        } else if written.is_err() {
            // Nobody was told. Had somebody been told, it would have to be there.
            return;
        }
        let answer = match written {
            Ok(appended) => appended.answer,
            Err(StoreError::Full | StoreError::Commit(_) | StoreError::Ended) => {
                SegmentAnswer::NotNow
            }
            Err(error) => panic!("{error}"),
        };
        if matches!(answer, SegmentAnswer::Kept { .. }) {
            self.acknowledged
                .push((segment.attempt, segment.sequence, segment.digest));
        }
        self.network.push_back(Message::Answer {
            learner,
            digest: segment.digest,
            answer,
        });
    }

    /// One learner's program looks what there is to send.
    fn send(&mut self, learner: usize) {
        let Learner {
            whole,
            done,
            upload,
            ..
        } = &mut self.learners[learner];
        match upload.state() {
            UploadState::Unknown => self.network.push_back(Message::Ask { learner }),
            UploadState::Sending { .. } => {
                if let Some(segment) = upload.segment(&whole[..*done]).cloned() {
                    self.network
                        .push_back(Message::Segment { learner, segment });
                }
            }
            state @ (UploadState::Refused(_) | UploadState::Differs) => panic!("{state:?}"),
        }
    }

    fn step(&mut self) {
        let learner = self.below(LEARNERS);
        match self.below(16) {
            0..4 => {
                let more = 1 + self.below(4);
                let Learner { whole, done, .. } = &mut self.learners[learner];
                for _ in 0..more {
                    let line = whole[*done..].find('\n').map_or(0, |end| end + 1);
                    *done += line;
                }
            }
            4..8 => self.send(learner),
            8..13 => self.deliver(false),
            // The learner's program is started again.
            13 => {
                let attempt = self.learners[learner].upload.attempt();
                self.learners[learner].upload = Upload::new(attempt, PROGRAM, Digest::NONE);
            }
            // The disk fills up, or there is room again.
            14 => {
                self.is_full = !self.is_full;
                let is_full = self.is_full;
                let disk = self.disk();
                let pages = is_full.then(|| disk.pages().expect("readable"));
                disk.limit_pages(pages).expect("limited");
            }
            // The clock jumps by up to a year, either way.
            _ => {
                let jump = u64::from(self.rng.next_u32()) * 7;
                self.now = if self.below(2) == 0 {
                    self.now.saturating_sub(jump)
                } else {
                    self.now + jump
                };
            }
        }
        self.now += 100;
    }
}

fn run(seed: u64, path: &Path, verifier: &Verifier<'_>, texts: &[(String, f64)]) {
    let disk = begin(path);
    let learners = texts.iter().enumerate();
    let learners = learners.map(|(n, (whole, _))| {
        let attempt = AttemptId::of_bytes([n as u8 + 1; 16]);
        Learner {
            seat: join(
                &disk,
                &format!("Learner {}", char::from(b'A' + n as u8)),
                n as u8,
            ),
            whole: whole.clone(),
            done: 0,
            upload: Upload::new(attempt, PROGRAM, Digest::NONE),
        }
    });
    let learners: Vec<Learner> = learners.collect();
    let mut world = World {
        path,
        disk: Some(disk),
        rng: ChaCha8Rng::seed_from_u64(seed),
        now: 1_000_000,
        learners,
        network: VecDeque::new(),
        acknowledged: Vec::new(),
        is_full: false,
    };
    for _ in 0..400 {
        world.step();
    }
    // Everything works again; what was still on its way comes late.
    world.disk().limit_pages(None).expect("room");
    for learner in &mut world.learners {
        learner.done = learner.whole.len();
    }
    for _ in 0..200 {
        (0..LEARNERS).for_each(|learner| world.send(learner));
        while !world.network.is_empty() {
            world.deliver(true);
        }
        if world
            .learners
            .iter()
            .all(|learner| learner.upload.is_there(&learner.whole))
        {
            break;
        }
    }
    drop(world.disk.take());

    let disk = begin(path);
    for (attempt, sequence, digest) in &world.acknowledged {
        let text = disk.store().text(*attempt).expect("readable");
        assert!(text.is_some(), "seed {seed}: {attempt} is gone");
        let again = world
            .learners
            .iter()
            .find(|learner| learner.upload.attempt() == *attempt)
            .expect("its learner");
        // The same place holds the same digest: an acknowledged segment is answered as it was.
        let kept = disk
            .store()
            .segment_digest(*attempt, *sequence)
            .expect("readable");
        assert_eq!(
            kept,
            Some(*digest),
            "seed {seed}: segment {sequence} of seat {}",
            again.seat
        );
    }
    let mut graded = 0;
    // Two workers that take the same attempts grade each once.
    for _ in 0..2 {
        for attempt in (0..LEARNERS).map(|n| AttemptId::of_bytes([n as u8 + 1; 16])) {
            let kept = disk
                .store()
                .attempt(attempt)
                .expect("readable")
                .expect("there");
            assert!(kept.status.closed, "seed {seed}: {attempt}");
            let (text, program, content) = disk
                .store()
                .text(attempt)
                .expect("readable")
                .expect("there");
            let submitted = Submitted {
                seat: kept.seat,
                program: &program,
                content,
                text: &text,
                drawn: &[],
            };
            let (whole, points) = &texts[kept.seat as usize - 1];
            assert_eq!(&text, whole, "seed {seed}: seat {}", kept.seat);
            // Doing the same text again gives the same: it is done in every hundredth world only.
            let verdict = match seed % 100 {
                0 => verifier.verify(&submitted, || true),
                _ => Verdict::Verified {
                    points: Some(*points),
                },
            };
            assert_eq!(
                verdict,
                Verdict::Verified {
                    points: Some(*points)
                },
                "seed {seed}"
            );
            let made_with = (PROGRAM, Digest::NONE);
            let result =
                disk.store()
                    .keep_result(attempt, made_with, &some_result(), Moment(world.now));
            let first = disk.store().judge(
                attempt,
                (PROGRAM, Digest::NONE),
                &verdict,
                Moment(world.now),
            );
            let first = first.expect("kept");
            assert_eq!(result.expect("kept"), first, "seed {seed}");
            graded += usize::from(first);
        }
    }
    assert_eq!(graded, LEARNERS, "seed {seed}");
    assert_eq!(
        disk.store()
            .to_verify(PROGRAM, Digest::NONE)
            .expect("readable"),
        [],
        "seed {seed}"
    );
}

#[test]
fn nothing_that_was_acknowledged_is_lost_whatever_fails() {
    let library = ContentLibrary::builtin().expect("sound");
    let definition = definition();
    let verifier = Verifier {
        program: PROGRAM,
        library: &library,
        content: Digest::NONE,
        definition: &definition,
    };
    let scenario_source = library.scenario("drain-code").expect("built in");
    let texts: Vec<(String, f64)> = (1..=LEARNERS as u32)
        .map(|seat| {
            let seed = definition.jobs_of(seat)[0].seed;
            let recorded = random_attempt(&library, &scenario_source, seed, 4);
            let text = String::from_utf8(recorded.bytes).expect("text");
            let submitted = Submitted {
                seat,
                program: PROGRAM,
                content: Digest::NONE,
                text: &text,
                drawn: &[],
            };
            match verifier.verify(&submitted, || true) {
                Verdict::Verified {
                    points: Some(points),
                } => (text, points),
                verdict => panic!("{verdict:?}"),
            }
        })
        .collect();
    let number = |name: &str| {
        std::env::var(name)
            .ok()
            .and_then(|value| value.parse::<u64>().ok())
    };
    let seeds = match number("DETENT_FAULT_SEED") {
        Some(seed) => seed..seed + 1,
        None => 0..number("DETENT_FAULT_SEEDS").unwrap_or(300),
    };
    // In memory where there is such a folder: a thousand databases are made.
    let memory = Path::new("/dev/shm");
    let folder = match memory.is_dir() {
        true => tempfile::tempdir_in(memory),
        false => tempfile::tempdir(),
    };
    let folder = folder.expect("a folder");
    for seed in seeds {
        let path = folder.path().join(format!("{seed}.sqlite"));
        run(seed, &path, &verifier, &texts);
        for ending in ["", "-wal", "-shm", ".lock"] {
            let _ = std::fs::remove_file(format!("{}{ending}", path.display()));
        }
    }
}
