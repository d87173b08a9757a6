//! An attempt on disk: begun, broken off, resumed and finished.

use detent_content::attempt_file::{AttemptFileError, AttemptWriter};
use detent_content::{Problem, disk};
use detent_simulation::interface::Direction;
use detent_simulation::units::Time;
use detent_training::bench::Action;
use detent_training::record::{Answer, Footer, Header, LATEST};
use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

fn header() -> Header {
    Header::new("scenarios/hum.ron", "(the text of a scenario)", 7)
}

fn footer() -> Footer {
    Footer {
        at: Time(90),
        state: "00c0ffee".to_owned(),
        answer: Answer::Shown { score: 87.5 },
    }
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("the folder is there");
    let name = |e: std::io::Result<fs::DirEntry>| e.expect("listed").file_name();
    let mut names: Vec<String> = entries.map(|e| name(e).display().to_string()).collect();
    names.sort();
    names
}

#[test]
fn each_action_is_in_the_file_at_once_and_the_end_gives_it_its_name() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let mut writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    for tick in 0..5 {
        writer
            .push(Time(tick), &Action::Detent(Direction::Left))
            .expect("there is space");
        let attempt = disk::attempt(writer.part()).expect("readable at every moment");
        assert_eq!(attempt.actions.len() as u64, tick + 1);
        assert!(!path.exists(), "not finished yet");
    }
    let finished = writer.finish(&footer()).expect("there is space");
    assert_eq!(finished, path);
    assert_eq!(names(folder.path()), ["job.attempt"]);
    let attempt = disk::attempt(&path).expect("finished");
    assert_eq!((attempt.actions.len(), attempt.footer), (5, Some(footer())));
}

#[test]
fn a_killed_program_loses_at_most_the_action_it_was_writing() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let mut writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    writer.push(Time(1), &Action::Plug).expect("there is space");
    writer
        .push(Time(2), &Action::OpenLid)
        .expect("there is space");
    let part = writer.part().to_owned();
    // What is left behind when the program is killed in the middle of a line: nothing is closed.
    std::mem::forget(writer);
    let mut file = fs::OpenOptions::new()
        .append(true)
        .open(&part)
        .expect("it is there");
    file.write_all(b"(at:3,do:Clo").expect("there is space");

    let (mut writer, attempt) = AttemptWriter::resume(&path).expect("it can go on");
    assert!(attempt.torn);
    assert_eq!(attempt.actions.len(), 2);
    writer
        .push(Time(4), &Action::CloseLid)
        .expect("there is space");
    writer.finish(&footer()).expect("there is space");
    let attempt = disk::attempt(&path).expect("finished");
    let times: Vec<u64> = attempt.actions.iter().map(|timed| timed.at.0).collect();
    assert_eq!(times, [1, 2, 4]);
    assert!(!attempt.torn);
}

/// Not a test: the program that the next test kills. It records for as long as it lives.
#[test]
#[ignore = "only the test below runs this, in a process of its own"]
fn record_until_killed() {
    let path = std::env::var_os("ATTEMPT").expect("the killing test names the file");
    let mut writer = AttemptWriter::create(Path::new(&path), &header()).expect("it is new");
    for tick in 0..LATEST.0 {
        writer
            .push(Time(tick), &Action::Order(tick.to_string()))
            .expect("there is space");
    }
}

#[test]
fn a_program_that_is_really_killed_leaves_every_earlier_action_behind() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let part = folder.path().join("job.attempt.part");
    let mut child = Command::new(std::env::current_exe().expect("this test has a file"))
        .args(["--exact", "attempt_file::record_until_killed", "--ignored"])
        .env("ATTEMPT", &path)
        .stdout(Stdio::null())
        .spawn()
        .expect("this test can be run again");
    let long = |part: &Path| fs::metadata(part).is_ok_and(|file| file.len() > 20_000);
    while !long(&part) {
        let ended = child.try_wait().expect("the child can be asked");
        assert_eq!(ended, None, "it ended before it was killed");
    }
    child.kill().expect("it can be killed");
    child.wait().expect("it ends");

    let (writer, attempt) = AttemptWriter::resume(&path).expect("it can go on");
    assert!(attempt.actions.len() > 500, "{}", attempt.actions.len());
    for (tick, timed) in attempt.actions.iter().enumerate() {
        let expected = (Time(tick as u64), Action::Order(tick.to_string()));
        assert_eq!((timed.at, timed.action.clone()), expected);
    }
    let (state, answer) = ("00".to_owned(), Answer::Withheld);
    let at = attempt.last();
    writer
        .finish(&Footer { at, state, answer })
        .expect("there is space");
    let finished = disk::attempt(&path).expect("finished");
    assert_eq!(finished.actions, attempt.actions);
}

#[test]
fn no_attempt_is_written_over() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    let second = AttemptWriter::create(&path, &header());
    assert!(
        matches!(second, Err(AttemptFileError::Exists(_))),
        "{second:?}"
    );
    writer.finish(&footer()).expect("there is space");
    let before = fs::read(&path).expect("finished");
    let third = AttemptWriter::create(&path, &header());
    assert!(
        matches!(third, Err(AttemptFileError::Exists(_))),
        "{third:?}"
    );
    assert_eq!(fs::read(&path).expect("still there"), before);
    assert_eq!(names(folder.path()), ["job.attempt"]);
}

#[test]
fn two_attempts_that_finish_under_one_name_are_both_kept() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    // Another program finishes one of this name in the meantime.
    fs::write(&path, "another attempt").expect("there is space");
    let part = writer.part().to_owned();
    let refused = writer.finish(&footer());
    assert!(
        matches!(refused, Err(AttemptFileError::Exists(_))),
        "{refused:?}"
    );
    assert_eq!(fs::read(&path).expect("there"), b"another attempt");
    assert!(disk::attempt(&part).is_ok());
    assert_eq!(names(folder.path()), ["job.attempt", "job.attempt.part"]);
}

#[test]
fn a_new_attempt_can_take_the_place_of_a_broken_off_one_and_never_of_a_finished_one() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let mut writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    writer.push(Time(1), &Action::Plug).expect("there is space");
    drop(writer);
    let writer = AttemptWriter::replace(&path, &header()).expect("it takes its place");
    let attempt = disk::attempt(writer.part()).expect("new");
    assert!(attempt.actions.is_empty());
    writer.finish(&footer()).expect("there is space");
    let again = AttemptWriter::replace(&path, &header());
    assert!(
        matches!(again, Err(AttemptFileError::Exists(_))),
        "{again:?}"
    );
}

#[test]
#[cfg(unix)]
fn a_finished_attempt_can_be_read_by_those_who_may_read_other_files_here() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a temporary folder");
    let (path, other) = (folder.path().join("a.attempt"), folder.path().join("other"));
    fs::write(&other, "").expect("there is space");
    let writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    writer.finish(&footer()).expect("there is space");
    let mode = |path: &Path| fs::metadata(path).expect("there").permissions().mode();
    assert_eq!(mode(&path), mode(&other));
}

#[test]
fn what_cannot_be_resumed_says_why() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let none = AttemptWriter::resume(&path);
    assert!(matches!(none, Err(AttemptFileError::File(_))), "{none:?}");

    let part = folder.path().join("job.attempt.part");
    fs::write(&part, "not ours\n").expect("there is space");
    let error = AttemptWriter::resume(&path).expect_err("it is foreign");
    let place = format!("{}:1: ", part.display());
    assert!(error.to_string().starts_with(&place), "{error}");
    assert_eq!(fs::read(&part).expect("left alone"), b"not ours\n");
}

#[test]
fn a_log_whose_actions_do_not_go_forward_is_not_written() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("job.attempt");
    let mut writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    writer.push(Time(9), &Action::Plug).expect("there is space");
    let back = writer.push(Time(8), &Action::Unplug);
    assert!(
        matches!(back, Err(AttemptFileError::Log { .. })),
        "{back:?}"
    );
    writer
        .push(Time(9), &Action::Unplug)
        .expect("the same tick is no step back");
}

#[test]
fn a_file_that_is_not_there_is_named() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("none.ron");
    let error = disk::parts(&path).expect_err("there is none");
    assert!(matches!(error.problem, Problem::Io(_)));
    assert_eq!((error.file, error.line), (path.display().to_string(), 0));
    let error = disk::parts(folder.path()).expect_err("a folder is no file");
    assert!(matches!(error.problem, Problem::Io(_)));
}

/// Both visits are in one file, also after the second one was broken off.
#[test]
fn a_second_visit_is_broken_off_and_gone_on_with_like_a_first_one() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("first.attempt");
    let mut writer = AttemptWriter::create(&path, &header()).expect("the folder is empty");
    writer.push(Time(3), &Action::Plug).expect("there is space");
    writer.finish(&footer()).expect("there is space");
    let bytes = disk::attempt_bytes(&path).expect("finished");
    let second = Header::of_second_visit("first.attempt", &bytes).expect("a first visit");

    let path = folder.path().join("second.attempt");
    let mut writer = AttemptWriter::create(&path, &second).expect("the name is free");
    writer
        .push(Time(1), &Action::Unplug)
        .expect("a clock of its own");
    drop(writer);
    let (writer, attempt) = AttemptWriter::resume(&path).expect("it can go on");
    assert_eq!(attempt.actions.len(), 1);
    writer.finish(&footer()).expect("there is space");
    let attempt = disk::attempt(&path).expect("finished");
    let first = attempt.first_visit.expect("it is carried");
    assert_eq!((first.actions.len(), first.footer), (1, Some(footer())));
}
