//! The gradebook of a class: what is kept of each verified attempt, and what an instructor makes of it.

use super::http::{PROGRAM, Room, attempt, bearer, cookie, id, teacher, upload};
use super::stage::attempts::random_attempt;
use super::{definition, scope};
use detent_class::definition::ClassDefinition;
use detent_class::moment::Moment;
use detent_class::protocol::{ClassKind, Digest, JoinAnswer, SegmentAnswer, Verdict};
use detent_class::store::Database;
use detent_class::verify::{Submitted, Verifier};
use detent_content::{ContentLibrary, replay_attempt};
use detent_training::lesson::Dimension;
use detent_training::practice::skills_of;
use detent_training::record::read_attempt;
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::time::Duration;

/// All that doing it again shows, held against the replay itself.
#[test]
fn verifying_an_attempt_shows_all_of_it() {
    let library = ContentLibrary::builtin().expect("sound");
    let source = library.scenario("drain-code").expect("built in");
    let definition = definition();
    let seed = definition.jobs_of(1)[0].seed;
    let recorded = random_attempt(&library, &source, seed, 12);
    let text = String::from_utf8(recorded.bytes).expect("text");
    let verifier = Verifier {
        program: PROGRAM,
        library: &library,
        content: Digest::NONE,
        definition: &definition,
    };
    let submitted = |seat| Submitted {
        seat,
        program: PROGRAM,
        content: Digest::NONE,
        text: &text,
        drawn: &[],
    };
    let found = verifier
        .verify_in_full(&submitted(1), || true)
        .expect("sound");
    let read = read_attempt("x.attempt", text.as_bytes()).expect("read");
    let again = replay_attempt(&library, &source, "x.attempt", &read).expect("replayed");
    assert_eq!(found.score, again.score);
    assert!((100.0 * found.share() - recorded.score).abs() < 1e-9);
    assert_eq!(found.job, "drain-code");
    assert_eq!(found.arrived, again.bench.began());
    assert!(!found.is_second_visit);
    assert_eq!(
        (found.work_min, found.bill, found.waited_h),
        (
            again.bench.minutes(),
            again.bench.bill(),
            again.bench.waited_hours()
        )
    );
    let report = again.bench.report().expect("handed in");
    let named = found.named.as_ref().expect("handed in");
    assert_eq!((&named.causes, &named.part), (&report.causes, &report.part));
    assert_eq!(found.hidden.len(), again.bench.hidden().len());
    let of_safety = |d: &&detent_training::lesson::DimensionScore| d.dimension == Dimension::Safety;
    let unsafe_acts: usize = (again.score.dimensions.iter().filter(of_safety))
        .map(|side| side.lost.len())
        .sum();
    assert_eq!(found.unsafe_acts().count(), unsafe_acts);
    // Each side with points speaks for its skills, and no other does.
    let sides = again.score.dimensions.iter().filter(|side| side.of > 0.0);
    let skills: Vec<_> = sides
        .flat_map(|side| {
            skills_of(side.dimension)
                .iter()
                .map(move |skill| (*skill, side.kept / side.of))
        })
        .collect();
    let told: Vec<_> = found.skills.iter().map(|s| (s.skill, s.kept)).collect();
    assert_eq!(told, skills);
    // Somebody else hands it in: nothing of it is kept.
    assert_eq!(
        verifier.verify_in_full(&submitted(2), || true),
        Err(Verdict::NotAssigned)
    );
}

/// What the database at `path` has of verified attempts: seat, points.
fn kept_points(path: &Path) -> Vec<(u32, f64)> {
    let database = Database::open(path).expect("it opens");
    let scope = scope();
    let attempts = database.store(&scope).graded_attempts().expect("read");
    attempts
        .iter()
        .map(|attempt| (attempt.seat, 100.0 * attempt.result.share()))
        .collect()
}

/// A class of a program that kept points alone goes on: its database is brought to the new layout, and its attempts are
/// done again once.
#[test]
fn an_attempt_verified_before_is_done_again_once_for_what_it_shows() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let room = Room::open(&path, definition());
    let ann = room.join("ACDEFG", "Ann", None).expect("a seat");
    let (text, points) = attempt(&ann.view, 6);
    room.send_all(&ann.token, &mut upload(&ann.view, 1), &text);
    assert!(matches!(
        room.verdict(&ann.token, id(1)),
        Verdict::Verified { .. }
    ));
    room.close();
    let kept = kept_points(&path);
    assert_eq!(kept.len(), 1);
    assert!((kept[0].1 - points).abs() < 1e-9);

    let layout = |path: &Path| {
        let database = rusqlite::Connection::open(path).expect("opened");
        database
            .pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0))
            .expect("a number")
    };
    // As layout 1 had it: the verdict without what it rests on.
    let old = rusqlite::Connection::open(&path).expect("opened");
    old.execute_batch(&back_to_layout_1()).expect("done");
    drop(old);
    assert_eq!(layout(&path), 1);
    assert_eq!(kept_points(&path), []);
    assert_eq!(layout(&path), 2);
    let to_verify = |path: &Path| {
        let database = Database::open(path).expect("it opens");
        let scope = scope();
        let content = Digest::of_bytes(ContentLibrary::builtin().expect("sound").digest());
        database
            .store(&scope)
            .to_verify(PROGRAM, content)
            .expect("read")
    };
    assert_eq!(to_verify(&path), [id(1)]);
    let room = Room::open(&path, definition());
    let until = std::time::Instant::now() + std::time::Duration::from_secs(60);
    while results(&path) == 0 && std::time::Instant::now() < until {
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
    assert_eq!(results(&path), 1);
    room.close();
    assert_eq!(kept_points(&path), kept);
    assert_eq!(to_verify(&path), []);
}

/// Results in the database at `path`, which a server has open.
fn results(path: &Path) -> u32 {
    let flags = rusqlite::OpenFlags::SQLITE_OPEN_READ_ONLY;
    let database = rusqlite::Connection::open_with_flags(path, flags).expect("opened");
    database
        .query_row("SELECT count(*) FROM attempt_result", (), |row| row.get(0))
        .expect("counted")
}

/// Takes away what layout 2 added.
fn back_to_layout_1() -> String {
    let added = include_str!("../../src/class/store/layout_2.sql").split("CREATE TABLE ");
    let tables = added
        .skip(1)
        .filter_map(|table| table.split_whitespace().next());
    let dropped: String = tables
        .map(|table| format!("DROP TABLE {table}; "))
        .collect();
    assert!(dropped.contains("DROP TABLE attempt_result; "));
    dropped + "PRAGMA user_version = 1;"
}

/// What an attempt is not, or is not any more, leaves no result behind.
#[test]
fn a_result_is_kept_once_and_only_of_an_attempt_that_is_there() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = super::begin(&folder.path().join("class.sqlite"));
    let seat = super::join(&disk, "Ann", 1);
    let library = ContentLibrary::builtin().expect("sound");
    let source = library.scenario("drain-code").expect("built in");
    let definition = definition();
    let recorded = random_attempt(&library, &source, definition.jobs_of(seat)[0].seed, 2);
    let text = String::from_utf8(recorded.bytes).expect("text");
    let verifier = Verifier {
        program: PROGRAM,
        library: &library,
        content: Digest::NONE,
        definition: &definition,
    };
    let submitted = Submitted {
        seat,
        program: PROGRAM,
        content: Digest::NONE,
        text: &text,
        drawn: &[],
    };
    let result = verifier.verify_in_full(&submitted, || true).expect("sound");
    let keep = |attempt| {
        disk.store()
            .keep_result(id(attempt), (PROGRAM, Digest::NONE), &result, Moment(9))
            .expect("kept")
    };
    assert!(!keep(1), "it is not there");
    for segment in super::segments(1, &["one"]) {
        // Nobody sits there, or any more.
        let appended = disk.store().append(seat + 1, &segment, Moment(3));
        let answer = appended.expect("kept").answer;
        assert_eq!(answer, SegmentAnswer::NotYours);
        disk.store()
            .append(seat, &segment, Moment(3))
            .expect("kept");
    }
    assert!(keep(1));
    assert!(!keep(1), "twice is once");
    assert_eq!(disk.store().result(id(1)).expect("read"), Some(result));
    assert_eq!(disk.store().result(id(2)).expect("read"), None);
}

/// What an instructor asks; body as text.
fn ask(room: &Room, path: &str) -> (u16, String, Vec<u8>) {
    room.ask("GET", path, &[("cookie", &cookie(255))], b"")
}

fn page(room: &Room, path: &str) -> String {
    let (status, _, body) = ask(room, path);
    assert_eq!(status, 200, "{path}");
    String::from_utf8(body).expect("text")
}

/// A class with Ann's verified attempt and Ben, who has done nothing; Ann's seat and points.
fn with_one_attempt(room: &Room) -> (JoinAnswer, f64) {
    let ann = room.join("ACDEFG", "Ann <b>", None).expect("a seat");
    room.join("ACDEFG", "=Ben", None).expect("a seat");
    let (text, points) = attempt(&ann.view, 6);
    room.send_all(&ann.token, &mut upload(&ann.view, 1), &text);
    assert!(matches!(
        room.verdict(&ann.token, id(1)),
        Verdict::Verified { .. }
    ));
    (ann, points)
}

/// Every address of the gradebook that is read.
const READ: [&str; 12] = [
    "/teacher/gradebook",
    "/teacher/gradebook/jobs/1",
    "/teacher/gradebook/learners/1",
    "/teacher/gradebook/learners/1/report/teacher",
    "/teacher/gradebook/learners/1/report/parent",
    "/teacher/gradebook/items.svg",
    "/teacher/gradebook/learners/1/skills.svg",
    "/api/teacher/gradebook/marks.csv",
    "/api/teacher/gradebook/pseudonyms.csv",
    "/api/teacher/gradebook/one-roster.zip",
    "/api/teacher/gradebook/statements.jsonl",
    "/api/teacher/gradebook/learners/1/all.json",
];

/// In an examination that is not closed the instructor sees marks; no learner does, and nobody else.
#[test]
fn the_gradebook_is_the_instructor_s_alone() {
    let folder = tempfile::tempdir().expect("a folder");
    let examination = ClassDefinition {
        kind: ClassKind::Examination,
        ..definition()
    };
    let room = Room::open(&folder.path().join("class.sqlite"), examination);
    let (ann, points) = with_one_attempt(&room);
    assert_eq!(
        room.seat(&ann.token).attempts[0].verdict,
        Verdict::Verified { points: None }
    );
    let token = bearer(&ann.token);
    let learner = [("authorization", token.as_str())];
    let wrong = cookie(7);
    let nobody: [&[(&str, &str)]; 3] = [&learner, &[("cookie", &wrong)], &[]];
    for path in READ {
        for headers in nobody {
            let (status, head, body) = room.ask("GET", path, headers, b"");
            assert!(matches!(status, 303 | 401), "{path} {status}");
            assert!(
                status == 401 || head.contains("location: /teacher"),
                "{head}"
            );
            let body = String::from_utf8_lossy(&body);
            assert!(
                !body.contains("Ann") && !body.contains("learner-"),
                "{body}"
            );
        }
        assert_eq!(ask(&room, path).0, 200, "{path}");
    }
    let told = page(&room, "/teacher/gradebook?lang=en");
    let tenths = (10.0 * points).round() / 10.0;
    assert!(told.contains(&format!("{tenths}")), "{told}");
    assert!(told.contains("This examination is still open"));
    assert!(told.contains("Ann &lt;b&gt;") && !told.contains("<b>"));
    let closed = json!({"standing": "Closed"});
    assert_eq!(teacher(&room, "/api/teacher/standing", &closed).0, 204);
    let told = page(&room, "/teacher/gradebook?lang=en");
    assert!(!told.contains("This examination is still open"));
    for path in [
        "/teacher/gradebook/jobs/0",
        "/teacher/gradebook/jobs/2",
        "/teacher/gradebook/learners/9",
        "/teacher/gradebook/learners/1/report/boss",
        "/api/teacher/gradebook/everything.csv",
        "/api/teacher/gradebook/learners/9/all.json",
    ] {
        assert_eq!(ask(&room, path).0, 404, "{path}");
    }
}

#[test]
fn files_hold_names_only_where_they_are_needed() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    with_one_attempt(&room);
    let file = |name: &str| {
        let (status, head, body) = ask(&room, &format!("/api/teacher/gradebook/{name}"));
        assert_eq!(status, 200, "{name}");
        assert!(
            head.contains(&format!("attachment; filename=\"{name}\"")),
            "{head}"
        );
        body
    };
    let text = |name: &str| String::from_utf8(file(name)).expect("UTF-8");
    let marks = text("marks.csv");
    assert!(
        marks.contains("Ann <b>") && marks.contains("\r\n2,'=Ben,,\r\n"),
        "{marks}"
    );
    let first = text("pseudonyms.csv");
    assert!(!first.contains("Ann") && !first.contains("Ben"), "{first}");
    // Pseudonyms are drawn once.
    assert_eq!(text("pseudonyms.csv"), first);
    let pseudonym = first.lines().nth(1).and_then(|line| line.split(',').nth(1));
    let pseudonym = pseudonym.expect("a pseudonym");
    let statements = text("statements.jsonl");
    assert!(statements.contains(pseudonym) && !statements.contains("Ann"));
    assert_eq!(statements.lines().count(), 1);
    let mut zip =
        zip::ZipArchive::new(std::io::Cursor::new(file("one-roster.zip"))).expect("a zip");
    assert_eq!(zip.len(), 4);
    let mut results = String::new();
    let mut entry = zip.by_name("results.csv").expect("it is there");
    entry.read_to_string(&mut results).expect("UTF-8");
    assert!(
        results.contains(pseudonym) && !results.contains("Ann"),
        "{results}"
    );
    let all: Value =
        serde_json::from_str(&page(&room, "/api/teacher/gradebook/learners/1/all.json"))
            .expect("JSON");
    assert_eq!(all["name"], "Ann <b>");
    assert_eq!(all["pseudonym"], pseudonym);
    assert_eq!(all["attempts"].as_array().map(Vec::len), Some(1));
    assert!(
        all["attempts"][0]["text"]
            .as_str()
            .is_some_and(|text| text.contains("drain-code"))
    );
    assert_eq!(
        all["attempts"][0]["verdicts"][0]["result"]["job"],
        "drain-code"
    );
    assert!(!all.to_string().contains("=Ben"));
}

#[test]
fn a_report_names_nobody_else() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    with_one_attempt(&room);
    for language in ["en", "es"] {
        for reader in ["teacher", "parent"] {
            let path = format!("/teacher/gradebook/learners/1/report/{reader}?lang={language}");
            let report = page(&room, &path);
            assert!(report.contains("Ann &lt;b&gt;"), "{report}");
            assert!(!report.contains("=Ben"), "{report}");
            assert!(report.contains(&format!("<html lang=\"{language}\">")));
        }
    }
}

#[test]
fn two_instructors_who_change_one_mark_do_not_overwrite_each_other() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let room = Room::open(&path, definition());
    let (_, points) = with_one_attempt(&room);
    let change = |version: u32, points: Option<f64>, comment: &str, reason: &str| {
        let body = json!({
            "seat": 1, "place": 0, "version": version, "points": points, "comment": comment, "reason": reason,
        });
        teacher(&room, "/api/teacher/gradebook/marks", &body)
    };
    let (status, first) = change(
        0,
        Some(81.25),
        "",
        "A blown fuse in the room cost ten minutes.",
    );
    assert_eq!((status, &first["version"]), (200, &json!(1)));
    // The second one saw the mark as it was before.
    let (status, stands) = change(0, Some(50.0), "Careful!", "Too slow.");
    assert_eq!(status, 409);
    assert_eq!(stands, json!({"version": 1, "points": 81.3, "comment": ""}));
    let (status, second) = change(1, Some(81.3), "Well measured.", "");
    assert_eq!(
        (status, &second["version"]),
        (200, &json!(2)),
        "a comment needs no reason"
    );
    assert_eq!(
        change(2, Some(90.0), "Well measured.", "").0,
        400,
        "a mark does"
    );
    assert_eq!(change(2, Some(101.0), "", "x").0, 400);
    assert_eq!(change(2, Some(-1.0), "", "x").0, 400);
    let (status, same) = change(2, Some(81.3), "Well measured.", "again");
    assert_eq!(
        (status, &same["version"]),
        (200, &json!(2)),
        "nothing changed"
    );
    let (status, back) = change(2, None, "Well measured.", "The fuse was fine.");
    assert_eq!((status, &back["version"]), (200, &json!(3)));
    let somewhere_else = json!({
        "seat": 9, "place": 0, "version": 0, "points": 1.0, "comment": "", "reason": "x",
    });
    assert_eq!(
        teacher(&room, "/api/teacher/gradebook/marks", &somewhere_else).0,
        404
    );
    let told = page(&room, "/teacher/gradebook/learners/1?lang=en");
    assert!(told.contains("Well measured.") && told.contains("A blown fuse in the room"));
    // Without the header that no other site can send, and without the cookie, nothing is changed.
    let body =
        json!({"seat": 1, "place": 0, "version": 3, "points": 1.0, "comment": "", "reason": "x"});
    for headers in [
        &[("cookie", cookie(255))][..],
        &[("x-detent-class", "1".to_owned())],
    ] {
        let headers: Vec<(&str, &str)> = headers.iter().map(|(k, v)| (*k, v.as_str())).collect();
        assert_eq!(
            room.post("/api/teacher/gradebook/marks", &headers, &body).0,
            401
        );
        assert_eq!(
            room.post("/api/teacher/seats/1/erase", &headers, &json!({}))
                .0,
            401
        );
    }
    room.close();
    // The log has every change, who, when, from, to and why; nothing of it is ever changed.
    let database = Database::open(&path).expect("it opens");
    let scope = scope();
    let changes = database.store(&scope).mark_changes(Some(1)).expect("read");
    let told: Vec<_> = (changes.iter())
        .map(|c| {
            (
                c.number,
                c.what.name(),
                &*c.who,
                &*c.from,
                &*c.to,
                &*c.reason,
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (
                1,
                "mark",
                "instructor",
                &*points.to_string(),
                "81.3",
                "A blown fuse in the room cost ten minutes."
            ),
            (2, "comment", "instructor", "", "Well measured.", ""),
            (3, "mark", "instructor", "81.3", "", "The fuse was fine."),
        ]
    );
    assert!(
        changes
            .iter()
            .all(|change| change.at_ms > 1_700_000_000_000)
    );
}

/// A board that is open is told of the whole class anew, so that the erased seat goes from it.
#[test]
fn an_erased_learner_goes_from_a_board_that_is_open() {
    let folder = tempfile::tempdir().expect("a folder");
    let room = Room::open(&folder.path().join("class.sqlite"), definition());
    room.join("ACDEFG", "Zephyrine", None).expect("a seat");
    room.join("ACDEFG", "Benedikt", None).expect("a seat");
    let mut stream = TcpStream::connect(room.address).expect("it listens");
    stream
        .set_read_timeout(Some(Duration::from_secs(20)))
        .expect("set");
    let head = format!(
        "GET /api/teacher/events HTTP/1.1\r\nhost: x\r\ncookie: {}\r\n\r\n",
        cookie(255)
    );
    stream.write_all(head.as_bytes()).expect("sent");
    let mut until = |wanted: &str| {
        let (mut told, mut bytes) = (String::new(), [0; 4096]);
        while !told.contains(wanted) {
            let count = stream.read(&mut bytes).expect("told in time");
            assert!(count > 0, "{told}");
            told.push_str(&String::from_utf8_lossy(&bytes[..count]));
        }
        told
    };
    assert!(until("Benedikt").contains("Zephyrine"));
    assert_eq!(
        teacher(&room, "/api/teacher/seats/1/erase", &json!({})).0,
        204
    );
    let told = until("\"trouble\"");
    assert!(
        told.contains("event: board") && told.contains("Benedikt"),
        "{told}"
    );
    assert!(!told.contains("Zephyrine"), "{told}");
}

/// Whether any file below this folder holds these bytes.
fn is_somewhere(folder: &Path, wanted: &str) -> Vec<String> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("listed").path();
        if path.is_dir() {
            found.extend(is_somewhere(&path, wanted));
            continue;
        }
        let bytes = std::fs::read(&path).expect("read");
        if bytes
            .windows(wanted.len())
            .any(|window| window == wanted.as_bytes())
        {
            found.push(path.display().to_string());
        }
    }
    found
}

#[test]
fn an_erased_learner_is_in_no_file_any_more() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let room = Room::open(&path, definition());
    let name = "Zephyrine Quillfeather";
    let zoe = room.join("ACDEFG", name, None).expect("a seat");
    let ben = room
        .join("ACDEFG", "Benedikt Overmeadow", None)
        .expect("a seat");
    for (n, answer) in [(1, &zoe), (2, &ben)] {
        let (text, _) = attempt(&answer.view, 4);
        room.send_all(&answer.token, &mut upload(&answer.view, n), &text);
        room.verdict(&answer.token, id(n));
    }
    let notice = json!({"seat": 1, "text": "Zephyrine, look at the lamps."});
    assert_eq!(teacher(&room, "/api/teacher/notices", &notice).0, 204);
    let mark = json!({
        "seat": 1, "place": 0, "version": 0, "points": 50.0, "comment": "Zephyrine works well.", "reason": "x",
    });
    assert_eq!(teacher(&room, "/api/teacher/gradebook/marks", &mark).0, 200);
    let record: Value =
        serde_json::from_str(&page(&room, "/api/teacher/gradebook/learners/1/all.json"))
            .expect("JSON");
    let pseudonym = record["pseudonym"].as_str().expect("one").to_owned();
    // A copy, as the program makes them.
    let copies = folder.path().join(detent_class::store::COPIES);
    std::fs::create_dir(&copies).expect("made");
    let server = room.server.as_ref().expect("open");
    server
        .back_up(&copies.join("class-1.sqlite"))
        .expect("copied");
    let words = ["Zephyrine", "zephyrine", pseudonym.as_str()];
    for word in words {
        assert!(
            is_somewhere(folder.path(), word).len() >= 2,
            "{word}: database and copy"
        );
    }
    assert_eq!(
        teacher(&room, "/api/teacher/seats/1/erase", &json!({})).0,
        204
    );
    for word in words {
        assert_eq!(is_somewhere(folder.path(), word), [""; 0], "{word}");
    }
    // Her device is not known any more; the board has her no more; the other learner is untouched.
    let token = bearer(&zoe.token);
    assert_eq!(
        room.ask("GET", "/api/seat", &[("authorization", &token)], b"")
            .0,
        401
    );
    let told = page(&room, "/teacher/gradebook");
    assert!(!told.contains("Zephyrine") && told.contains("Benedikt"));
    assert!(!page(&room, "/teacher/board").contains("Zephyrine"));
    assert_eq!(room.seat(&ben.token).attempts.len(), 1);
    assert!(matches!(
        room.verdict(&ben.token, id(2)),
        Verdict::Verified { .. }
    ));
    // Twice is told.
    assert_eq!(
        teacher(&room, "/api/teacher/seats/1/erase", &json!({})).0,
        404
    );
    room.close();
    for word in words {
        assert_eq!(is_somewhere(folder.path(), word), [""; 0], "{word}");
    }
    let database = Database::open(&path).expect("it opens");
    let scope = scope();
    let seats = database.store(&scope).seats().expect("read");
    assert_eq!(seats.len(), 1);
    drop(database);
    // No table that knows seats knows hers, whoever added it; each table knows seats, attempts, or the class alone.
    let database = rusqlite::Connection::open(&path).expect("opened");
    let mut tables = database
        .prepare("SELECT name FROM sqlite_schema WHERE type = 'table'")
        .expect("sound");
    let tables = tables.query_map((), |row| row.get::<_, String>(0));
    for table in tables.expect("read").map(|name| name.expect("a name")) {
        let count = |condition: &str| {
            let query = format!("SELECT count(*) FROM {table} WHERE {condition}");
            database.query_row(&query, (), |row| row.get::<_, u32>(0))
        };
        match (
            count("seat = 1"),
            count("attempt = x'01010101010101010101010101010101'"),
        ) {
            (Ok(rows), _) | (Err(_), Ok(rows)) => assert_eq!(rows, 0, "{table}"),
            (Err(_), Err(_)) => assert!(["class", "standing"].contains(&&*table), "{table}"),
        }
    }
}
