//! What is kept, and what is refused.

use super::{begin, code, definition, join, scope, segments, some_result, token};
use detent_class::definition::TeacherStanding;
use detent_class::drawing::DrawnJob;
use detent_class::moment::Moment;
use detent_class::protocol::{AttemptId, Digest, JoinRefusal, Segment, SegmentAnswer, Verdict};
use detent_class::store::{Database, StoreError, Words, back_up};
use std::fs;

#[test]
fn a_segment_is_kept_once_and_in_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = begin(&folder.path().join("class.sqlite"));
    let (ann, ben) = (join(&disk, "Ann", 1), join(&disk, "Ben", 2));
    let sent = segments(1, &["one", "two", "End(3)"]);
    let append = |seat, segment: &Segment| {
        let appended = disk.store().append(seat, segment, Moment(3)).expect("kept");
        (appended.answer, appended.is_new, appended.closes)
    };
    let kept = |next| SegmentAnswer::Kept { next };
    assert_eq!(
        append(ann, &sent[1]),
        (SegmentAnswer::Gap { next: 0 }, false, false)
    );
    assert_eq!(append(ann, &sent[0]), (kept(1), true, false));
    assert_eq!(append(ann, &sent[0]), (kept(1), false, false), "twice");
    assert_eq!(
        append(ben, &sent[1]),
        (SegmentAnswer::NotYours, false, false)
    );
    assert_eq!(
        append(ann, &sent[2]),
        (SegmentAnswer::Gap { next: 1 }, false, false)
    );
    let other = Segment::new(
        sent[1].attempt,
        (1, sent[0].digest),
        ("0.1.0", Digest::NONE),
        "forged\n",
    );
    assert_eq!(append(ann, &sent[1]), (kept(2), true, false));
    assert_eq!(
        append(ann, &other),
        (SegmentAnswer::OtherBody { sequence: 1 }, false, false)
    );
    let after_other = Segment::new(
        sent[1].attempt,
        (2, other.digest),
        ("0.1.0", Digest::NONE),
        "more\n",
    );
    assert_eq!(
        append(ann, &after_other),
        (SegmentAnswer::OtherBody { sequence: 1 }, false, false)
    );
    assert_eq!(append(ann, &sent[2]), (kept(3), true, true));
    let late = Segment::new(
        sent[1].attempt,
        (3, sent[2].digest),
        ("0.1.0", Digest::NONE),
        "late\n",
    );
    assert_eq!(append(ann, &late), (SegmentAnswer::Finished, false, false));
    assert_eq!(
        append(ann, &sent[1]),
        (kept(3), false, false),
        "an old one comes late"
    );
    let (text, ..) = disk
        .store()
        .text(sent[0].attempt)
        .expect("read")
        .expect("there");
    assert_eq!(text, "one\ntwo\nEnd(3)\n");
    let there = disk
        .store()
        .attempt(sent[0].attempt)
        .expect("read")
        .expect("there");
    assert_eq!(
        (
            there.seat,
            there.status.next,
            there.status.bytes,
            there.status.closed
        ),
        (ann, 3, 15, true)
    );
}

#[test]
fn an_attempt_has_a_largest_size_and_a_seat_a_most_of_them() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = begin(&folder.path().join("class.sqlite"));
    let ann = join(&disk, "Ann", 1);
    let lines = format!("{}\n", "x".repeat(60_000));
    let mut after = (0, Digest::NONE);
    let answers: Vec<SegmentAnswer> = (0..80)
        .map(|_| {
            let segment = Segment::new(
                AttemptId::of_bytes([1; 16]),
                after,
                ("0.1.0", Digest::NONE),
                &lines,
            );
            after = (segment.sequence + 1, segment.digest);
            disk.store()
                .append(ann, &segment, Moment(3))
                .expect("read")
                .answer
        })
        .collect();
    let refused = answers
        .iter()
        .position(|answer| *answer == SegmentAnswer::TooMuch);
    assert_eq!(refused, Some(4 * 1024 * 1024 / 60_001));
    let begun = (0..500).map(|n: u32| {
        let mut id = [2; 16];
        id[..4].copy_from_slice(&n.to_be_bytes());
        let segment = Segment::new(
            AttemptId::of_bytes(id),
            (0, Digest::NONE),
            ("0.1.0", Digest::NONE),
            "x\n",
        );
        disk.store()
            .append(ann, &segment, Moment(3))
            .expect("read")
            .answer
    });
    let begun = begun
        .filter(|answer| matches!(answer, SegmentAnswer::Kept { .. }))
        .count();
    assert_eq!(begun, 399, "with the first, 400");
}

#[test]
fn seats_are_given_taken_and_come_back_to() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = begin(&folder.path().join("class.sqlite"));
    let try_to_join = |name: &str, word: Option<&str>, n: u8, only_listed: bool, now: u64| {
        let joined = disk.store().join(
            &Words { name, word },
            &token(n),
            (only_listed, 3),
            Moment(now),
        );
        joined.expect("kept").map(|joined| joined.seat)
    };
    disk.store()
        .add_names(&["Rosa Ibáñez".to_owned(), "rosa ibanez".to_owned()], 3)
        .expect("kept");
    assert_eq!(
        disk.store().seats().expect("read").len(),
        1,
        "one name in two spellings"
    );
    assert_eq!(try_to_join("ROSA IBÁÑEZ", None, 1, true, 10), Ok(1));
    assert_eq!(
        try_to_join("Rosa Ibanez", None, 2, true, 11),
        Err(JoinRefusal::NameTaken)
    );
    assert_eq!(
        try_to_join("Ann", None, 2, true, 11),
        Err(JoinRefusal::NotOnList)
    );
    assert_eq!(try_to_join("Ann", None, 2, false, 11), Ok(2));
    assert_eq!(try_to_join("Ben", None, 3, false, 11), Ok(3));
    assert_eq!(
        try_to_join("Cy", None, 4, false, 11),
        Err(JoinRefusal::Full)
    );

    assert_eq!(
        try_to_join("Ann", Some("bada-gelo"), 5, false, 12),
        Err(JoinRefusal::WrongWord),
        "none was given"
    );
    assert!(
        disk.store()
            .give_word(2, "bada-gelo", Moment(20))
            .expect("kept")
    );
    assert!(
        !disk
            .store()
            .give_word(9, "bada-gelo", Moment(20))
            .expect("kept"),
        "no such seat"
    );
    assert_eq!(
        try_to_join("Ann", Some("other"), 5, false, 21),
        Err(JoinRefusal::WrongWord)
    );
    assert_eq!(
        try_to_join("Ann", Some("Bada gelo"), 5, false, 22),
        Ok(2),
        "as it was said"
    );
    assert_eq!(
        try_to_join("Ann", Some("bada-gelo"), 6, false, 23),
        Err(JoinRefusal::WrongWord),
        "once"
    );
    disk.store()
        .give_word(2, "bada-gelo", Moment(100))
        .expect("kept");
    let too_late = 100 + 15 * 60 * 1000 + 1;
    assert_eq!(
        try_to_join("Ann", Some("bada-gelo"), 6, false, too_late),
        Err(JoinRefusal::WrongWord),
        "too old"
    );
    for n in [2, 5] {
        assert_eq!(
            disk.store().seat_of_token(&token(n)).expect("read"),
            Some(2),
            "both devices are in the seat"
        );
    }
    assert_eq!(disk.store().seat_of_token(&token(77)).expect("read"), None);
    // A fifth device puts out the first.
    for n in 40..43 {
        disk.store().give_word(2, "x", Moment(200)).expect("kept");
        assert_eq!(
            try_to_join("Ann", Some("x"), n, false, 201 + u64::from(n)),
            Ok(2)
        );
    }
    assert_eq!(disk.store().seat_of_token(&token(2)).expect("read"), None);
    assert_eq!(
        disk.store().seat_of_token(&token(42)).expect("read"),
        Some(2)
    );
}

#[test]
fn what_the_teacher_does_is_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let disk = begin(&path);
    assert_eq!(disk.store().standing().expect("read"), None);
    for standing in [
        TeacherStanding::Paused,
        TeacherStanding::Open,
        TeacherStanding::Closed,
    ] {
        disk.store()
            .set_standing(standing, Moment(5))
            .expect("kept");
        assert_eq!(disk.store().standing().expect("read"), Some(standing));
    }
    disk.store().say(None, "to all", Moment(6)).expect("kept");
    disk.store()
        .say(Some(2), "to two", Moment(6))
        .expect("kept");
    let said = |seat| {
        let notices = disk.store().notices(seat).expect("read");
        notices
            .into_iter()
            .map(|notice| notice.text)
            .collect::<Vec<_>>()
    };
    assert_eq!(
        (said(1), said(2)),
        (
            vec!["to all".to_owned()],
            vec!["to all".to_owned(), "to two".to_owned()]
        )
    );
    assert!(disk.store().is_teacher(&token(255)).expect("read"));
    disk.store().give_teacher(&token(254)).expect("kept");
    assert!(!disk.store().is_teacher(&token(255)).expect("read"));
    let kept = disk.store().class().expect("read").expect("there");
    assert_eq!((kept.definition, kept.code), (definition(), code()));
}

#[test]
fn tokens_and_words_are_not_in_the_database() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let disk = begin(&path);
    join(&disk, "Ann", 0x5a);
    disk.store()
        .give_word(1, "bada-gelo", Moment(3))
        .expect("kept");
    drop(disk);
    let mut files = fs::read(&path).expect("read");
    for ending in ["-wal", "-shm"] {
        files.extend(fs::read(format!("{}{ending}", path.display())).unwrap_or_default());
    }
    let holds = |what: &[u8]| files.windows(what.len()).any(|window| window == what);
    assert!(holds(b"Ann"));
    assert!(!holds(&[0x5a; 32]) && !holds("5a".repeat(32).as_bytes()) && !holds(b"bada"));
}

#[test]
fn a_database_that_cannot_be_used_is_told_and_left_as_it_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = |name: &str| folder.path().join(name);
    let refused = |name: &str| match Database::open(&path(name)) {
        Ok(_) => panic!("{name} was opened"),
        Err(error) => error,
    };
    // Two servers with one file.
    let held = begin(&path("class.sqlite"));
    assert!(matches!(refused("class.sqlite"), StoreError::Taken(_)));
    join(&held, "Ann", 1);
    drop(held);
    let again = begin(&path("class.sqlite"));
    assert_eq!(again.store().seats().expect("read").len(), 1);
    drop(again);

    fs::write(
        path("text.sqlite"),
        "this is no database, it is a text that somebody saved here\n".repeat(40),
    )
    .expect("written");
    let before = fs::read(path("text.sqlite")).expect("read");
    assert!(matches!(refused("text.sqlite"), StoreError::Foreign(_)));
    assert_eq!(fs::read(path("text.sqlite")).expect("read"), before);

    // Another program's database, and one of a newer Detent.
    let sqlite = |name: &str, text: &str| {
        let database = rusqlite::Connection::open(path(name)).expect("opened");
        database.execute_batch(text).expect("done");
    };
    sqlite("foreign.sqlite", "CREATE TABLE cake (name TEXT)");
    assert!(matches!(refused("foreign.sqlite"), StoreError::Foreign(_)));
    fs::copy(path("class.sqlite"), path("newer.sqlite")).expect("copied");
    sqlite("newer.sqlite", "PRAGMA user_version = 99");
    assert!(matches!(refused("newer.sqlite"), StoreError::Newer(_)));

    // A page in the middle is gone.
    fs::copy(path("class.sqlite"), path("damaged.sqlite")).expect("copied");
    let mut bytes = fs::read(path("damaged.sqlite")).expect("read");
    let page = bytes.len() / 2 / 4096 * 4096;
    bytes[page..page + 4096].fill(0xa5);
    fs::write(path("damaged.sqlite"), bytes).expect("written");
    assert!(matches!(
        refused("damaged.sqlite"),
        StoreError::Damaged { .. }
    ));
}

#[test]
fn a_copy_is_whole_while_the_class_goes_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let database = Database::open(&path).expect("it opens");
    let reader = database.readers();
    let scope = scope();
    database
        .store(&scope)
        .begin(&definition(), code(), &token(1), Moment(1))
        .expect("begun");
    database
        .store(&scope)
        .add_names(&["Ann".to_owned()], 3)
        .expect("kept");
    let copy = folder.path().join("copy.sqlite");
    back_up(&reader().expect("opened"), &copy).expect("copied");
    database
        .store(&scope)
        .add_names(&["Ben".to_owned()], 3)
        .expect("kept");
    let copied = Database::open(&copy).expect("a sound database");
    let names = |database: &Database| database.store(&scope).seats().expect("read").len();
    assert_eq!((names(&copied), names(&database)), (1, 2));
}

#[test]
fn the_first_verdict_stays() {
    let folder = tempfile::tempdir().expect("a folder");
    let disk = begin(&folder.path().join("class.sqlite"));
    let ann = join(&disk, "Ann", 1);
    for segment in segments(1, &["one", "End(2)"]) {
        disk.store().append(ann, &segment, Moment(3)).expect("kept");
    }
    let id = AttemptId::of_bytes([1; 16]);
    let to_verify = |program: &str| disk.store().to_verify(program, Digest::NONE).expect("read");
    assert_eq!(to_verify("0.1.0"), [id]);
    let judge = |points: f64| {
        let verdict = Verdict::Verified {
            points: Some(points),
        };
        disk.store()
            .judge(id, ("0.1.0", Digest::NONE), &verdict, Moment(4))
            .expect("kept")
    };
    assert_eq!((judge(80.0), judge(100.0)), (true, false));
    assert_eq!(to_verify("0.1.0"), [id], "what it shows is not kept yet");
    let made_with = ("0.1.0", Digest::NONE);
    let kept = (disk.store()).keep_result(id, made_with, &some_result(), Moment(5));
    assert!(kept.expect("kept"));
    assert_eq!(to_verify("0.1.0"), []);
    assert_eq!(to_verify("0.2.0"), [id], "a newer program looks again");
    let there = disk.store().attempt(id).expect("read").expect("there");
    assert_eq!(
        there.status.verdict,
        Verdict::Verified { points: Some(80.0) }
    );
}

/// A full disk: what was acknowledged is there, the rest is refused until there is room.
#[test]
fn a_full_disk_loses_nothing_that_was_acknowledged() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    let disk = begin(&path);
    let ann = join(&disk, "Ann", 1);
    disk.limit_pages(Some(disk.pages().expect("read") + 4))
        .expect("limited");
    let long = "x".repeat(3_000);
    let sent = segments(1, &[long.as_str(); 20]);
    let send = |segment: &Segment| {
        let segment = segment.clone();
        let mut answers =
            disk.write_together(vec![move |store: &detent_class::store::Store<'_>| {
                store.append(ann, &segment, Moment(3))
            }]);
        answers.pop().expect("one answer")
    };
    let kept = sent
        .iter()
        .take_while(|segment| send(segment).is_ok())
        .count();
    assert!((1..20).contains(&kept), "{kept}");
    assert!(matches!(send(&sent[kept]), Err(StoreError::Full)));
    let next = |disk: &detent_class::store::Disk| {
        disk.store()
            .attempt(AttemptId::of_bytes([1; 16]))
            .expect("read")
            .expect("there")
            .status
            .next
    };
    assert_eq!(next(&disk) as usize, kept);
    disk.limit_pages(None).expect("room again");
    assert!(sent[kept..].iter().all(|segment| send(segment).is_ok()));
    drop(disk);
    assert_eq!(next(&begin(&path)), 20);
}

/// A database as the first layout had it: it is brought to the newest, and nothing of it is lost.
#[test]
fn a_database_of_the_first_layout_goes_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("class.sqlite");
    {
        let old = rusqlite::Connection::open(&path).expect("it opens");
        old.pragma_update(None, "journal_mode", "WAL").expect("set");
        old.execute_batch(include_str!("../../src/class/store/schema.sql"))
            .expect("laid out");
        old.pragma_update(None, "application_id", 0x4474_436c_i64)
            .expect("set");
        old.pragma_update(None, "user_version", 1).expect("set");
        let scope = scope();
        detent_class::store::Store::new(&old, &scope)
            .begin(&definition(), code(), &token(255), Moment(1))
            .expect("begun");
    }
    let disk = begin(&path);
    let seat = join(&disk, "Ann", 1);
    let drawn = DrawnJob {
        job: "job-1".to_owned(),
        text: "Scenario()".to_owned(),
        seed: (1 << 53) - 1,
        draft: Some(4),
    };
    let store = disk.store();
    store.keep_drawn(seat, &drawn, Moment(3)).expect("kept");
    let other = DrawnJob {
        text: "another".to_owned(),
        ..drawn.clone()
    };
    store.keep_drawn(seat, &other, Moment(4)).expect("no error");
    assert_eq!(
        store.drawn_of(seat).expect("readable"),
        [drawn],
        "the first stays"
    );
    assert_eq!(store.drawn_of(seat + 1).expect("readable"), []);
    assert_eq!(
        store.drawn_drafts().expect("readable"),
        [("job-1".to_owned(), 4)]
    );
    drop(disk);
    let kept = Database::open(&path).expect("it opens");
    let scope = scope();
    let class = kept
        .store(&scope)
        .class()
        .expect("readable")
        .expect("there");
    assert_eq!((class.definition, class.code), (definition(), code()));
}
