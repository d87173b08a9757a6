//! A class under load, with the generator on the same computer: how long a post takes, what the memory does, and where it
//! breaks. Beside it, in one run, a server that only says hello on the same runtime, and SQLite's own commits on the same
//! disk.
//!
//! ```sh
//! taskset -c 0,1 cargo bench --package detent-class --bench class_load -- 600
//! ```
//! The number is how many seconds 500 learners work at a human pace; without it, 60.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "it measures time, and prints"
)]

#[path = "../stage/mod.rs"]
mod stage;

use detent_class::definition::{ClassDefinition, JobMachines};
use detent_class::moment::Moment;
use detent_class::pages::PageTexts;
use detent_class::protocol::{AttemptId, ClassKind, Digest, Segment};
use detent_class::secret_token;
use detent_class::server::{ClassServer, ServerParts, listen};
use detent_class::store::{Database, KeptClass, Scope, Words};
use detent_content::ContentLibrary;
use stage::attempts::random_attempt;
use std::net::SocketAddr;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};
use tokio::io::{AsyncBufReadExt, AsyncReadExt, AsyncWriteExt, BufReader};
use tokio::net::TcpStream;
use tokio::net::tcp::{OwnedReadHalf, OwnedWriteHalf};

const LEARNERS: u32 = 500;
const BOARDS: usize = 50;
/// Between two deeds of one learner.
const PACE: Duration = Duration::from_secs(2);

fn clock() -> Moment {
    let since = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .expect("after 1970");
    Moment(since.as_millis() as u64)
}

/// One connection that stays.
struct Asker {
    read: BufReader<OwnedReadHalf>,
    write: OwnedWriteHalf,
}

impl Asker {
    async fn connect(address: SocketAddr) -> Asker {
        let stream = TcpStream::connect(address).await.expect("it listens");
        stream.set_nodelay(true).expect("set");
        let (read, write) = stream.into_split();
        Asker {
            read: BufReader::new(read),
            write,
        }
    }

    /// Asks and waits for the answer: its status.
    async fn ask(&mut self, head: &str, body: &str) -> u16 {
        let text = format!(
            "{head}host: x\r\ncontent-length: {}\r\n\r\n{body}",
            body.len()
        );
        self.write.write_all(text.as_bytes()).await.expect("sent");
        let (mut line, mut status, mut length) = (String::new(), 0, 0);
        loop {
            line.clear();
            self.read.read_line(&mut line).await.expect("answered");
            if let Some(rest) = line.strip_prefix("HTTP/1.1 ") {
                status = rest[..3].parse().expect("a status");
            }
            if let Some(rest) = line.strip_prefix("content-length: ") {
                length = rest.trim().parse().expect("a length");
            }
            if line == "\r\n" {
                break;
            }
        }
        let mut body = vec![0; length];
        self.read.read_exact(&mut body).await.expect("a body");
        status
    }
}

/// A learner who does one attempt after the other, a deed in each segment.
struct Learner {
    head: String,
    lines: Arc<[String]>,
    next: usize,
    attempt: u64,
    after: (u32, Digest),
    content: Digest,
    seat: u32,
}

impl Learner {
    fn segment(&mut self) -> String {
        if self.next == self.lines.len() {
            (self.next, self.after) = (0, (0, Digest::NONE));
            self.attempt += 1;
        }
        let mut id = [0; 16];
        id[..8].copy_from_slice(&self.attempt.to_be_bytes());
        id[8..12].copy_from_slice(&self.seat.to_be_bytes());
        let made_with = (env!("CARGO_PKG_VERSION"), self.content);
        let segment = Segment::new(
            AttemptId::of_bytes(id),
            self.after,
            made_with,
            &self.lines[self.next],
        );
        self.next += 1;
        self.after = (segment.sequence + 1, segment.digest);
        serde_json::to_string(&segment).expect("JSON")
    }
}

fn percentile(sorted: &[f64], share: f64) -> f64 {
    sorted[((sorted.len() - 1) as f64 * share) as usize]
}

/// Memory of this process, MiB.
fn memory() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status
        .lines()
        .find_map(|line| line.strip_prefix("VmRSS:"))
        .unwrap_or("0 kB");
    line.trim()
        .trim_end_matches(" kB")
        .trim()
        .parse::<f64>()
        .unwrap_or(0.0)
        / 1024.0
}

/// Every learner posts at this pace for so long; how long each post took, ms, sorted, and how many were refused.
async fn work(
    address: SocketAddr,
    learners: &mut [Learner],
    pace: Duration,
    span: Duration,
) -> (Vec<f64>, u64) {
    let took = Arc::new(Mutex::new(Vec::new()));
    let refused = Arc::new(AtomicU64::new(0));
    let until = Instant::now() + span;
    let count = learners.len() as u32;
    let tasks = learners.iter_mut().enumerate().map(|(n, learner)| {
        let (took, refused) = (Arc::clone(&took), Arc::clone(&refused));
        async move {
            // One after the other, not all at once.
            tokio::time::sleep(pace * n as u32 / count).await;
            let mut asker = Asker::connect(address).await;
            let mut due = Instant::now();
            let mut own = Vec::new();
            while due < until {
                tokio::time::sleep_until(due.into()).await;
                let body = learner.segment();
                let began = Instant::now();
                let status = asker.ask(&learner.head, &body).await;
                own.push(began.elapsed().as_secs_f64() * 1000.0);
                if status != 200 {
                    refused.fetch_add(1, Ordering::Relaxed);
                }
                due += pace;
                // Who is late does not catch up.
                due = due.max(Instant::now());
            }
            took.lock().expect("no panic").extend(own);
        }
    });
    futures_of(tasks.collect()).await;
    let mut took = std::mem::take(&mut *took.lock().expect("no panic"));
    took.sort_by(f64::total_cmp);
    (took, refused.load(Ordering::Relaxed))
}

/// Waits for all of them at once.
async fn futures_of(tasks: Vec<impl Future<Output = ()>>) {
    let mut tasks: Vec<_> = tasks.into_iter().map(Box::pin).collect();
    std::future::poll_fn(move |context| {
        tasks.retain_mut(|task| task.as_mut().poll(context).is_pending());
        if tasks.is_empty() {
            std::task::Poll::Ready(())
        } else {
            std::task::Poll::Pending
        }
    })
    .await;
}

fn told(name: &str, took: &[f64], span: Duration, refused: u64) {
    println!(
        "{name:34} {:8.0}/s  p50 {:7.2} ms  p99 {:7.2} ms  most {:8.2} ms  refused {refused}  memory {:.0} MiB",
        took.len() as f64 / span.as_secs_f64(),
        percentile(took, 0.5),
        percentile(took, 0.99),
        took.last().copied().unwrap_or_default(),
        memory(),
    );
}

fn main() {
    let seconds = std::env::args()
        .filter_map(|arg| arg.parse::<u64>().ok())
        .next()
        .unwrap_or(60);
    let folder = tempfile::tempdir().expect("a folder");
    let library = Arc::new(ContentLibrary::builtin().expect("sound"));
    let definition = ClassDefinition {
        title: "Load".to_owned(),
        kind: ClassKind::Practice,
        jobs: vec!["drain-code".to_owned()],
        machines: JobMachines::Named,
        drills: Vec::new(),
        seed: 7,
        seats: LEARNERS,
        only_listed: false,
        opens_ms: None,
        closes_ms: None,
    };
    let scenario_source = library.scenario("drain-code").expect("built in");
    let texts: Vec<Arc<[String]>> = (1..=8)
        .map(|seat| {
            let seed = definition.jobs_of(seat)[0].seed;
            let text = random_attempt(&library, &scenario_source, seed, 20).bytes;
            let text = String::from_utf8(text).expect("text");
            text.split_inclusive('\n').map(str::to_owned).collect()
        })
        .collect();

    let database = Database::open(&folder.path().join("class.sqlite")).expect("it opens");
    let scope = Scope {
        tenant: "local".to_owned(),
        class: "class".to_owned(),
    };
    let class = KeptClass {
        definition,
        code: "ACDEFG".parse().expect("a code"),
    };
    let teacher = secret_token();
    let store = database.store(&scope);
    store
        .begin(&class.definition, class.code, &teacher, clock())
        .expect("begun");
    let content = Digest::of_bytes(library.digest());
    let mut learners: Vec<Learner> = (0..LEARNERS)
        .map(|n| {
            let token = secret_token();
            let name = format!("Learner {n}");
            let words = Words { name: &name, word: None };
            let joined = store.join(&words, &token, (false, LEARNERS), clock()).expect("kept").expect("a seat");
            let token = String::from(token);
            Learner {
                head: format!(
                    "POST /api/segments HTTP/1.1\r\nauthorization: Bearer {token}\r\ncontent-type: application/json\r\n"
                ),
                lines: Arc::clone(&texts[n as usize % texts.len()]),
                next: 0,
                attempt: 0,
                after: (0, Digest::NONE),
                content,
                seat: joined.seat,
            }
        })
        .collect();
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build();
    let runtime = runtime.expect("a runtime");
    let bind = || {
        runtime
            .block_on(tokio::net::TcpListener::bind("127.0.0.1:0"))
            .expect("a port")
    };
    let listener = bind();
    let address = listener.local_addr().expect("an address");
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
    let (server, _threads) = ClassServer::begin(parts).expect("begun");
    runtime.spawn(listen(
        listener,
        server.router(),
        None,
        std::future::pending(),
    ));

    // The generator has threads of its own.
    let generator = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build();
    let generator = generator.expect("a runtime");
    let told_bytes = Arc::new(AtomicU64::new(0));
    for _ in 0..BOARDS {
        let (teacher, told_bytes) = (String::from(teacher), Arc::clone(&told_bytes));
        generator.spawn(async move {
            let mut stream = TcpStream::connect(address).await.expect("it listens");
            let head = format!("GET /api/teacher/events HTTP/1.1\r\nhost: x\r\ncookie: detent-teacher={teacher}\r\n\r\n");
            stream.write_all(head.as_bytes()).await.expect("sent");
            let mut bytes = vec![0; 64 << 10];
            while let Ok(count) = stream.read(&mut bytes).await {
                told_bytes.fetch_add(count as u64, Ordering::Relaxed);
                if count == 0 {
                    break;
                }
            }
        });
    }
    println!(
        "{LEARNERS} learners, a deed every {PACE:?}, {BOARDS} boards; memory before {:.0} MiB",
        memory()
    );
    let rounds = (seconds / 60).max(1);
    for round in 1..=rounds {
        let span = Duration::from_secs(seconds / rounds);
        let before = told_bytes.load(Ordering::Relaxed);
        let (took, refused) = generator.block_on(work(address, &mut learners, PACE, span));
        told(
            &format!("human pace, part {round} of {rounds}"),
            &took,
            span,
            refused,
        );
        let bytes = told_bytes.load(Ordering::Relaxed) - before;
        println!(
            "{:34} {:8.1} MB/s to the boards",
            "",
            bytes as f64 / 1e6 / span.as_secs_f64()
        );
    }
    let span = Duration::from_secs(10);
    for rate in [500, 1_000, 1_500, 2_000, 3_000, 4_000, 6_000, 8_000] {
        let pace = Duration::from_secs(1) * LEARNERS / rate;
        let (took, refused) = generator.block_on(work(address, &mut learners, pace, span));
        told(
            &format!("{rate} posts a second asked for"),
            &took,
            span,
            refused,
        );
    }

    // The same runtime and generator, and a server that says hello.
    let listener = bind();
    let hello = listener.local_addr().expect("an address");
    let router = axum::Router::new().route(
        "/api/segments",
        axum::routing::post(|_: String| async { "hello" }),
    );
    runtime.spawn(listen(listener, router, None, std::future::pending()));
    let (took, refused) = generator.block_on(work(hello, &mut learners, Duration::ZERO, span));
    told("hello, as fast as it goes", &took, span, refused);

    // SQLite's own commits, one row each and many.
    let path = folder.path().join("rows.sqlite");
    let rows = rusqlite::Connection::open(&path).expect("opened");
    rows.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE row (text TEXT)",
    )
    .expect("made");
    for together in [1, 16, 256] {
        let (began, mut count) = (Instant::now(), 0);
        while began.elapsed() < Duration::from_secs(5) {
            rows.execute_batch("BEGIN IMMEDIATE").expect("begun");
            for _ in 0..together {
                let mut row = rows
                    .prepare_cached("INSERT INTO row VALUES (?1)")
                    .expect("sound");
                row.execute(["(at:123456,do:Turn(Left))\n"]).expect("kept");
                count += 1;
            }
            rows.execute_batch("COMMIT").expect("committed");
        }
        let rate = f64::from(count) / began.elapsed().as_secs_f64();
        println!("SQLite, {together:3} rows in a commit: {rate:8.0} rows/s");
    }
    server.end();
}
