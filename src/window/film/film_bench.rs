//! The bench of a film: everything to be seen and nothing to be done.

use super::whole_run::WholeRun;
use super::{Film, FilmSource};
use crate::attempts::StorageError;
use crate::port::{BenchPort, CalledBack, Job, ReviewWork};
use crate::workbench::job_at;
use detent_content::{ArrivalAtJob, ContentLibrary, ScenarioSource, arrive_in_slices};
use detent_simulation::units::Time;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, BenchView, Caution, Display, Entries, Refusal};
use detent_training::lesson::{Scenario, Score};
use detent_training::record::Attempt;
use std::sync::Arc;

/// A film with what its bench has to tell of the job.
struct FilmBench {
    film: Film,
    job: Arc<Job>,
    content_library: Arc<ContentLibrary>,
    scenario: Arc<Scenario>,
    seed: u64,
}

/// Opens an attempt as a film: at its beginning, or near its end where somebody works at it still. All of it is done
/// once, so that what is on the way is known.
///
/// # Errors
/// It belongs to another text of its scenario, that cannot be set up, or its first visit goes another way.
pub async fn open_film(
    content_library: Arc<ContentLibrary>,
    scenario_source: ScenarioSource,
    (name, source): (String, FilmSource),
    attempt: Attempt,
) -> Result<Box<dyn BenchPort>, StorageError> {
    let seed = attempt.header.seed;
    let arrival = arrive_in_slices(&content_library, &scenario_source, &name, &attempt).await?;
    let ArrivalAtJob {
        first,
        intake,
        bench,
    } = arrival;
    let called_back = first.map(|(earlier, account)| CalledBack { earlier, account });
    // What leads through a job leads nobody through watching it.
    let job = job_at(&content_library, &scenario_source, None, intake, &bench);
    let job = Arc::new(Job { called_back, ..job });
    let scenario = Arc::new(scenario_source.scenario);
    let attempt = Arc::new(attempt);
    let whole = WholeRun::begin(bench);
    let whole = whole.go_on(Arc::clone(&scenario), Arc::clone(&attempt));
    let whole = whole.await;
    let mut film = Film::begin((name, source), Arc::clone(&scenario), attempt, whole);
    if film.is_live() {
        film.go_to_newest();
    }
    Ok(Box::new(FilmBench {
        film,
        job,
        content_library,
        scenario,
        seed,
    }))
}

impl BenchPort for FilmBench {
    fn step(&mut self) {
        self.film.step();
    }

    /// Whoever watches has no hands here; [`super::Film`] does what was recorded.
    fn act(&mut self, _: Action) -> Result<(), Refusal> {
        Err(Refusal::Finished)
    }

    fn caution(&self, _: &Action) -> Option<Caution> {
        None
    }

    fn meter_shows(&mut self) -> Option<Display> {
        self.film.shown.bench.meter_shows()
    }

    fn view(&self) -> BenchView<'_> {
        self.film.bench().view()
    }

    fn job(&self) -> &Arc<Job> {
        &self.job
    }

    fn run(&mut self, _: &ScriptStep) -> Result<(), String> {
        Err(Refusal::Finished.to_string())
    }

    /// It is nobody's result any more: [`Film::score`] has it.
    fn score(&self) -> Option<&Score> {
        None
    }

    fn review(&self) -> Option<ReviewWork> {
        let score = Arc::clone(self.film.whole.score.as_ref()?);
        let (content_library, scenario) = (
            Arc::clone(&self.content_library),
            Arc::clone(&self.scenario),
        );
        let (seed, bench) = (self.seed, self.film.end().clone());
        Some(Box::pin(async move {
            let review = content_library.review_in_slices((&scenario, seed), &bench, &score);
            review.await.ok().flatten()
        }))
    }

    fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.film.bench().history()
    }

    fn film(&self) -> Option<&Film> {
        Some(&self.film)
    }

    fn film_mut(&mut self) -> Option<&mut Film> {
        Some(&mut self.film)
    }
}
