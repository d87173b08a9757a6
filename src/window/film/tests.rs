use super::whole_run::{BenchAt, PlaceInFilm};
use super::*;
use crate::attempts::{Attempts, Folder, StorageError};
use crate::port::{BenchPort, JobSource, OpenError, RecordedAttempt};
use crate::state::BenchRes;
use crate::workbench::LibraryJobs;
use detent_content::read_script;
use detent_training::record::PART;
use tempfile::TempDir;

/// The job that the scripts do, and its seed.
const JOB: (&str, u64) = ("exam-120-v-dial", 137);

/// The job done well, and with every classic mistake.
pub(crate) const WHOLE_JOB: &str = include_str!("../../../tests/scripts/whole-job.script");
pub(crate) const CLASSIC_MISTAKES: &str =
    include_str!("../../../tests/scripts/classic-mistakes.script");

/// Kept attempts of one who works by scripts.
pub(crate) struct Kept {
    pub jobs: LibraryJobs,
    _folder: TempDir,
}

impl Kept {
    pub fn new() -> Kept {
        let folder = tempfile::tempdir().expect("a folder");
        let attempts: Arc<dyn Attempts> = Arc::new(Folder::new(folder.path().to_owned()));
        Kept {
            jobs: LibraryJobs::new(None, Some(attempts)).expect("the built-in jobs are sound"),
            _folder: folder,
        }
    }

    /// Does so many lines of a script, all where there are no more; the name of the attempt.
    pub fn work(&self, script: &str, lines: usize) -> String {
        let steps = read_script("a.script", script.as_bytes()).expect("the script is sound");
        let mut offers = self.jobs.offers().iter();
        let offer = offers.position(|offer| offer.course.file == JOB.0);
        let offer = offer.expect("the job is on offer");
        let mut bench = open(self.jobs.open(offer, JOB.1));
        for (line, step) in steps.iter().take(lines) {
            bench
                .run(step)
                .unwrap_or_else(|e| panic!("line {line}: {e}"));
        }
        bench.kept_as().expect("it is kept")
    }

    pub fn record(&self, name: &str) -> RecordedAttempt {
        RecordedAttempt::kept(self.jobs.attempts().expect("they are kept"), name)
    }

    pub fn watch(&self, record: RecordedAttempt) -> Box<dyn BenchPort> {
        open(self.jobs.watch(record))
    }
}

fn open(work: crate::port::OpeningWork) -> Box<dyn BenchPort> {
    without_breaks(work).unwrap_or_else(|error| panic!("{error:?}"))
}

fn film(bench: &mut Box<dyn BenchPort>) -> &mut Film {
    bench.film_mut().expect("a film")
}

/// Plays on until it stands still.
fn play_out(film: &mut Film) {
    film.play();
    for _ in 0..10_000_000 {
        film.wait();
        if matches!(film.next(), Next::Nothing) {
            return;
        }
        film.step();
    }
    panic!("it never ends");
}

fn state(film: &Film) -> String {
    film.bench().machine().state_hash()
}

/// The state behind so many deeds, done one after the other from the arrival on.
fn straight(film: &Film, done: usize) -> String {
    let mut at: BenchAt = film.whole.arrival().clone();
    let place = PlaceInFilm {
        done,
        at: Time::ZERO,
    };
    without_breaks(at.go_on(&film.attempt, place)).expect("as recorded");
    at.bench.machine().state_hash()
}

#[test]
fn a_film_ends_in_the_recorded_state_at_any_speed_and_from_anywhere() {
    let kept = Kept::new();
    let name = kept.work(WHOLE_JOB, usize::MAX);
    let mut bench = kept.watch(kept.record(&name));
    let film = film(&mut bench);
    let footer = film.attempt.footer.clone().expect("it is finished");
    for speed in FILM_SPEEDS {
        film.play_at(speed);
        play_out(film);
        assert_eq!(film.ending(), Some(&Ok(())), "×{speed}");
        assert_eq!(state(film), footer.state, "×{speed}");
        assert_eq!(film.now(), footer.at, "×{speed}");
        assert!(!film.is_playing());
    }
    // Played again after its end, it begins anew.
    film.play();
    film.wait();
    assert_eq!((film.steps_done(), film.ending()), (0, None));
    film.go_behind(film.steps().len() / 2);
    film.wait();
    play_out(film);
    assert_eq!((state(film), film.ending()), (footer.state, Some(&Ok(()))));
}

#[test]
fn jumps_back_and_forth_lead_to_the_same_state_as_a_straight_replay() {
    let kept = Kept::new();
    let name = kept.work(WHOLE_JOB, usize::MAX);
    let mut bench = kept.watch(kept.record(&name));
    let film = film(&mut bench);
    let count = film.steps().len();
    assert!(count > 20, "{count}");
    // Every seventh place in turn, so that each jump goes another way.
    for n in 0..=count {
        let steps = (7 * n) % (count + 1);
        film.go_behind(steps);
        film.wait();
        let last = steps.checked_sub(1);
        let done = last.map_or(0, |last| film.steps()[last].deeds.end);
        assert_eq!(film.steps_done(), steps);
        assert_eq!(state(film), straight(film, done), "behind {steps}");
    }
    film.go_behind(5);
    film.wait();
    film.go_on_one();
    film.wait();
    assert_eq!(film.steps_done(), 6);
    film.go_back_one();
    film.wait();
    film.go_back_one();
    film.wait();
    assert_eq!(film.steps_done(), 4);
    // Into the middle of a step, and back to where it begins.
    let turn = film.steps().iter().position(|step| step.deeds.len() > 3);
    let turn = turn.expect("the gesture has a turn");
    film.go_behind(turn);
    film.wait();
    film.playing = true;
    while film.shown.done < film.steps()[turn].deeds.start + 2 {
        film.step();
        film.wait();
    }
    film.go_back_one();
    film.wait();
    assert_eq!(film.shown.done, film.steps()[turn].deeds.start);
}

#[test]
fn a_lost_point_is_jumped_to_a_little_before_its_deed() {
    let kept = Kept::new();
    let name = kept.work(CLASSIC_MISTAKES, usize::MAX);
    let mut bench = kept.watch(kept.record(&name));
    let film = film(&mut bench);
    let moments: Vec<Time> = film.losses().iter().map(|loss| loss.at).collect();
    assert!(moments.len() > 3, "{moments:?}");
    for moment in moments.into_iter().rev() {
        film.go_to(moment);
        film.wait();
        let step = film.steps()[film.steps_done()].clone();
        assert!(film.now() <= step.at && step.at <= moment, "{moment}");
        let next = film.steps().get(film.steps_done() + 1);
        assert!(next.is_none_or(|next| next.at > moment), "{moment}");
    }
}

#[test]
fn nothing_can_be_done_in_a_film() {
    let kept = Kept::new();
    let name = kept.work(WHOLE_JOB, 6);
    let mut port = kept.watch(kept.record(&name));
    assert!(port.act(Action::Unplug).is_err());
    film(&mut port).wait();
    let mut bench = BenchRes::new(port);
    let before = bench.film().map(state);
    let deeds = bench.history().len();
    for action in [Action::Unplug, Action::Plug, Action::OpenLid] {
        bench.push(action);
        assert!(std::mem::take(&mut bench.refused_in_film));
    }
    bench.wait(100);
    bench.wait_until_it_stops();
    bench.do_while_paused();
    assert!(bench.refused_in_film && bench.queue.is_empty());
    assert_eq!(bench.wait_ticks, 0);
    assert_eq!(bench.film().map(state), before);
    assert_eq!(bench.history().len(), deeds);
    // Nor is it anybody's result.
    assert!(bench.take_result().is_none() && bench.kept_as().is_none());
}

/// The attempt of somebody who is still at it: what is done while it is watched comes in, and so does its end.
#[test]
fn an_attempt_that_grows_is_followed_to_its_end() {
    let kept = Kept::new();
    let whole = kept.record(&kept.work(WHOLE_JOB, usize::MAX));
    let text = whole.text.clone().expect("it is kept");
    let lines: Vec<&[u8]> = text.split_inclusive(|byte| *byte == b'\n').collect();
    let until = |lines_known: usize| lines[..lines_known].concat();
    let mut bench = kept.watch(RecordedAttempt {
        name: format!("{}{PART}", whole.name),
        text: Ok(until(20)),
        ..whole
    });
    let film = film(&mut bench);
    assert!(film.is_live() && film.score().is_none() && film.losses().is_empty());
    film.wait();
    // It begins near its end.
    assert_eq!(film.steps_done() + 1, film.steps().len());
    play_out(film);
    assert!(film.waits_for_more() && film.ending().is_none());
    let seen = (film.steps_done(), state(film));
    // What is torn, or of another attempt, says nothing.
    let torn = [until(20), lines[20][..3].to_vec()].concat();
    film.take_in(&torn).expect("a line may be torn");
    assert!(film.take_in(b"nothing of ours\n").is_err());
    film.wait();
    assert_eq!((film.steps_done(), state(film)), seen);
    for known in [21, 40, lines.len()] {
        film.take_in(&until(known)).expect("it goes on");
        film.wait();
        play_out(film);
        let deeds = (known - 1).min(film.attempt.actions.len());
        assert_eq!(film.shown.done, deeds, "{known} lines");
    }
    assert!(!film.is_live());
    assert_eq!(film.ending(), Some(&Ok(())));
    assert!(film.score().is_some());
}

#[test]
fn what_was_changed_is_played_as_far_as_it_goes_and_said_to_differ() {
    let kept = Kept::new();
    let whole = kept.record(&kept.work(WHOLE_JOB, usize::MAX));
    let text = String::from_utf8(whole.text.clone().expect("it is kept")).expect("text");
    let changed = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        let mut bench = kept.watch(RecordedAttempt {
            text: Ok(text.replacen(from, to, 1).into_bytes()),
            ..whole.clone()
        });
        let film = film(&mut bench);
        play_out(film);
        let ending = film.ending().cloned().expect("it has an end");
        assert!(film.score().is_none() && film.losses().is_empty());
        (ending, film.shown.done, film.attempt.actions.len())
    };
    let (ending, done, deeds) = changed("answer:Shown(score:", "answer:Shown(score:1");
    assert!(
        matches!(ending, Err(Divergence::Score { .. })),
        "{ending:?}"
    );
    assert_eq!(done, deeds);
    // The plug cannot be pulled twice.
    let (ending, done, deeds) = changed("do:OpenCabinet", "do:CloseCabinet");
    assert!(
        matches!(ending, Err(Divergence::Refused { .. })),
        "{ending:?}"
    );
    assert!(0 < done && done < deeds, "{done} of {deeds}");
}

#[test]
fn what_is_no_attempt_or_not_of_here_is_refused_in_its_own_way() {
    let kept = Kept::new();
    let whole = kept.record(&kept.work(WHOLE_JOB, 3));
    let text = String::from_utf8(whole.text.clone().expect("it is kept")).expect("text");
    let refused = |text: &str| {
        let record = RecordedAttempt {
            text: Ok(text.as_bytes().to_vec()),
            ..whole.clone()
        };
        match without_breaks(kept.jobs.watch(record)) {
            Err(OpenError::Attempt(error)) => error,
            Err(error) => panic!("{error:?}"),
            Ok(_) => panic!("it opens"),
        }
    };
    use detent_training::record::Damage;
    let problem = |error: StorageError| match error {
        StorageError::Damaged(error) => error.problem,
        error => panic!("{error:?}"),
    };
    assert_eq!(problem(refused("a shopping list\n")), Damage::Foreign);
    let newer = text.replacen("format:2", "format:99", 1);
    assert!(matches!(
        problem(refused(&newer)),
        Damage::NewerFormat { found: 99, .. }
    ));
    let elsewhere = text.replacen(JOB.0, "no-such-job", 1);
    assert!(matches!(refused(&elsewhere), StorageError::NoScenario(_)));
    let (before, digest) = text.split_once("scenario_sha256:\"").expect("a digest");
    let other = if digest.starts_with('0') { "1" } else { "0" };
    let other = format!("{before}scenario_sha256:\"{other}{}", &digest[1..]);
    assert!(matches!(
        problem(refused(&other)),
        Damage::ScenarioChanged { .. }
    ));
}

/// A server sends the scenario of a job that is in no library here along.
#[test]
fn a_scenario_that_comes_along_is_the_one_that_is_shown() {
    let kept = Kept::new();
    let whole = kept.record(&kept.work(WHOLE_JOB, 6));
    let mut offers = kept.jobs.offers().iter();
    let offer = offers.position(|offer| offer.course.file == JOB.0);
    let source = offer.and_then(|offer| kept.jobs.scenario_source(offer));
    let source = source.expect("it is on offer");
    let file = format!("scenarios/{}-of-elsewhere.ron", JOB.0);
    let text = whole.text.clone().expect("it is kept");
    let text = String::from_utf8(text).expect("text");
    let renamed = text.replacen(&source.file, &file, 1);
    assert_ne!(renamed, text);
    let record = RecordedAttempt {
        text: Ok(renamed.into_bytes()),
        scenario: Some((file.clone(), source.text.clone())),
        ..whole
    };
    let mut bench = kept.watch(record);
    assert!(bench.job().file.ends_with("-of-elsewhere"));
    let film = film(&mut bench);
    film.wait();
    assert!(!film.steps().is_empty());
}
