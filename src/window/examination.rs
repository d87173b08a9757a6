//! What keeps an examination while a job of it is at the bench: the clock on the wall, pauses, the end of the time.

use super::practice::{LearnerRes, now};
use super::rest::NextFrame;
use super::state::{BenchRes, Screen, UiState};
use bevy::prelude::*;
use detent_training::practice::Moment;

/// The job at hand and since when the machine's clock has stood still.
#[derive(Default)]
struct Standing {
    job: String,
    since: Option<Moment>,
}

impl Standing {
    /// The clock runs or stands now; a pause that is over: since when it was one.
    fn note(&mut self, job: &str, stands: bool, now: Moment) -> Option<(String, Moment)> {
        let ended = (self.since)
            .filter(|_| !stands || self.job != job)
            .map(|since| (self.job.clone(), since));
        if ended.is_some() {
            self.since = None;
        }
        if stands && self.since.is_none() {
            self.since = Some(now);
            self.job = job.to_owned();
        }
        ended
    }
}

/// Every frame of an examination.
fn examine(
    mut bench: ResMut<BenchRes>,
    mut learner: ResMut<LearnerRes>,
    mut ui_state: ResMut<UiState>,
    screen: Res<State<Screen>>,
    mut standing: Local<Standing>,
    mut next: ResMut<NextFrame>,
) {
    let Some(sitting) = learner.sitting() else {
        return;
    };
    let now = now();
    let over = sitting.left_s(now) == 0;
    let at_bench = *screen.get() == Screen::Bench;
    if at_bench || *screen.get() == Screen::Examination {
        // The clock on the wall goes on.
        next.watch();
    }
    let job = ui_state
        .examined
        .as_ref()
        .map(|examined| examined.job.clone());
    let works = at_bench && job.is_some() && !bench.view().finished;
    let stands = works && !bench.runs(ui_state.speed);
    if let Some((job, since)) = standing.note(job.as_deref().unwrap_or_default(), stands, now) {
        learner.in_sitting(|sitting| sitting.note_pause(&job, since, now));
    }
    // Away from the bench another one may lie there still.
    if let Some(job) = job.as_ref().filter(|_| at_bench)
        && bench.job().file == *job
        && !bench.history().is_empty()
    {
        let attempt = bench.kept_as();
        learner.in_sitting(|sitting| sitting.note_work(job, attempt.as_deref(), now));
    }
    if !over {
        return;
    }
    if works {
        // Its result is taken in with the next frame.
        bench.give_up();
        return;
    }
    learner.close_sitting();
    ui_state.examine = at_bench && job.is_some();
    // What is opened next has nothing to do with it.
    ui_state.examined = None;
}

/// Examinations.
pub fn plugin(app: &mut App) {
    app.add_systems(PreUpdate, examine);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pause_ends_when_the_clock_runs_again_or_another_job_is_at_hand() {
        let mut standing = Standing::default();
        assert_eq!(standing.note("a", false, Moment(1)), None);
        assert_eq!(standing.note("a", true, Moment(2)), None);
        assert_eq!(standing.note("a", true, Moment(5)), None);
        let ended = standing.note("a", false, Moment(9));
        assert_eq!(ended, Some(("a".to_owned(), Moment(2))));
        assert_eq!(standing.note("a", true, Moment(10)), None);
        let ended = standing.note("b", true, Moment(12));
        assert_eq!(ended, Some(("a".to_owned(), Moment(10))));
        let ended = standing.note("", false, Moment(15));
        assert_eq!(ended, Some(("b".to_owned(), Moment(12))));
    }
}
