//! The real bench and the built-in jobs behind the window's port.

use super::attempts::{AttemptSink, Attempts, StorageError};
use super::background::Work;
use super::film::{open_film, read_growing};
use super::library::LibraryPlace;
use super::port::{
    BenchPort, CallBackWork, CalledBack, CauseRow, DrawnVariant, HintWork, Job, JobSource, Kept,
    Offer, OnTheWay, OpenError, OpeningWork, RecordedAttempt, ReviewWork, SealedJob,
};
use super::workshop::{OwnTexts, own_boards_beside, own_jobs_beside};
use bevy::tasks::futures_lite::future::yield_now;
use detent_content::{
    ContentError, ContentLibrary, JobVariant, OwnFile, OwnPlace, ScenarioDraft, ScenarioSource,
    VariantSeries, replay_attempt_in_slices,
};
use detent_simulation::units::{Span, Time};
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench, BenchView, Caution, Display, Entries, Refusal};
use detent_training::lesson::technician::{Persona, work_in_slices};
use detent_training::lesson::{
    Bilingual, CallBack, Guide, Intake, Invoice, Mains, Scenario, Score, call_back_in_slices,
    judge, set_up_in_slices,
};
use detent_training::practice::Examination;
use detent_training::reason::{ControlSuspicion, HandRecord};
use detent_training::record::{Attempt, Footer, Header, LATEST, read_attempt, sha256_hex};
use std::borrow::Cow;
use std::sync::Arc;

/// What a library has on offer, read and checked.
pub struct OfferedJobs {
    content_library: Arc<ContentLibrary>,
    scenario_sources: Vec<ScenarioSource>,
    offers: Vec<Offer>,
    examinations: Vec<(String, Examination)>,
}

impl OfferedJobs {
    /// Every scenario of a library, and `own` before them if given.
    ///
    /// # Errors
    /// What is wrong with a file.
    pub fn of(
        content_library: ContentLibrary,
        own: Option<&str>,
    ) -> Result<OfferedJobs, ContentError> {
        let mut scenario_sources = content_library.scenarios()?;
        if let Some(name) = own {
            let mine = content_library.scenario(name)?;
            scenario_sources.retain(|t| t.file != mine.file);
            scenario_sources.insert(0, mine);
        }
        let offers = (scenario_sources.iter())
            .map(|source| offer(&content_library, source, &scenario_sources))
            .collect();
        let examinations = content_library.examinations(&scenario_sources)?;
        Ok(OfferedJobs {
            content_library: Arc::new(content_library),
            scenario_sources,
            offers,
            examinations,
        })
    }

    /// All that it is offered from, shared.
    pub fn content(&self) -> Arc<ContentLibrary> {
        Arc::clone(&self.content_library)
    }

    /// Puts a job on offer, behind the others, or in the place of the one from the same file.
    fn take_in(&mut self, source: ScenarioSource) {
        let offer = offer(&self.content_library, &source, &self.scenario_sources);
        let mut known = self.scenario_sources.iter();
        match known.position(|known| known.file == source.file) {
            Some(place) => {
                self.scenario_sources[place] = source;
                self.offers[place] = offer;
            }
            None => {
                self.scenario_sources.push(source);
                self.offers.push(offer);
            }
        }
    }

    /// Puts a board of one's own beside the others, or in the place of the own one of its name; all content with it, if it is
    /// sound.
    fn take_in_board(&mut self, board: OwnFile) -> Option<Arc<ContentLibrary>> {
        let mut with_it = ContentLibrary::clone(&self.content_library);
        with_it.take_in_board(board).ok()?;
        self.content_library = Arc::new(with_it);
        Some(self.content())
    }

    /// The same with every one of these. One that is not sound is left out; the workshop says what is wrong with it.
    fn take_in_own_boards(&mut self, own_boards: &dyn OwnTexts) {
        for stem in own_boards.stems() {
            if let Ok(text) = own_boards.read(&stem) {
                self.take_in_board(OwnFile {
                    place: OwnPlace::Boards,
                    file: own_boards.file(&stem),
                    bytes: text.into_bytes(),
                });
            }
        }
    }

    /// Puts jobs of one's own on offer. One that is not sound is not; the workshop says what is wrong with it.
    fn take_in_own(&mut self, own_jobs: &dyn OwnTexts) {
        for stem in own_jobs.stems() {
            let draft = own_jobs
                .read(&stem)
                .and_then(|text| ScenarioDraft::of_text(&stem, &text));
            let checked = draft.and_then(|draft| draft.checked(&self.content_library));
            if let Ok(source) = checked {
                let file = own_jobs.file(&stem);
                self.take_in(ScenarioSource { file, ..source });
            }
        }
    }
}

/// The scenarios of the library, or one of the player's own.
pub struct LibraryJobs {
    offered: OfferedJobs,
    /// Where attempts are kept, if they are.
    attempts: Option<Arc<dyn Attempts>>,
    /// Where jobs of one's own are kept, if they are.
    own_jobs: Option<Box<dyn OwnTexts>>,
    /// Where boards of one's own are kept, if they are.
    own_boards: Option<Box<dyn OwnTexts>>,
    /// Jobs of a class that came closed.
    sealed: Vec<OpenedJob>,
}

/// A job of a class that came closed, as this library reads it.
struct OpenedJob {
    source: ScenarioSource,
    sha256: String,
    seed: u64,
}

impl LibraryJobs {
    /// Every built-in scenario, and `own` before them if given.
    ///
    /// # Errors
    /// What is wrong with a file.
    pub fn new(
        own: Option<&str>,
        attempts: Option<Arc<dyn Attempts>>,
    ) -> Result<LibraryJobs, ContentError> {
        LibraryJobs::of(ContentLibrary::builtin()?, own, attempts)
    }

    /// Every scenario of a library, and `own` before them if given.
    ///
    /// # Errors
    /// What is wrong with a file.
    pub fn of(
        content_library: ContentLibrary,
        own: Option<&str>,
        attempts: Option<Arc<dyn Attempts>>,
    ) -> Result<LibraryJobs, ContentError> {
        let offered = OfferedJobs::of(content_library, own)?;
        Ok(LibraryJobs::offering(offered, attempts))
    }

    /// What is on offer.
    pub fn offering(offered: OfferedJobs, attempts: Option<Arc<dyn Attempts>>) -> LibraryJobs {
        LibraryJobs {
            offered,
            attempts,
            own_jobs: None,
            own_boards: None,
            sealed: Vec::new(),
        }
    }

    /// The same with jobs of one's own, and a place for further ones. A job there that is not sound is not on offer; the
    /// workshop says what is wrong with it.
    pub fn with_own_jobs(mut self, own_jobs: Box<dyn OwnTexts>) -> LibraryJobs {
        self.offered.take_in_own(own_jobs.as_ref());
        self.own_jobs = Some(own_jobs);
        self
    }

    /// The same with boards of one's own, and a place for further ones. A board there that is not sound is left out; the
    /// workshop says what is wrong with it. Jobs of one's own come after them.
    pub fn with_own_boards(mut self, own_boards: Box<dyn OwnTexts>) -> LibraryJobs {
        self.offered.take_in_own_boards(own_boards.as_ref());
        self.own_boards = Some(own_boards);
        self
    }

    /// All that is offered from, shared.
    pub fn content(&self) -> Arc<ContentLibrary> {
        self.offered.content()
    }

    /// The job that an attempt carries or names.
    fn source_of(&self, header: &Header) -> Option<Cow<'_, ScenarioSource>> {
        if header.scenario_text.is_some() {
            let carried = self.offered.content_library.carried_scenario(header);
            return carried.ok().flatten().map(Cow::Owned);
        }
        let mut sealed = self.sealed.iter();
        let sealed = sealed.find(|sealed| {
            sealed.source.file == header.scenario && sealed.sha256 == header.scenario_sha256
        });
        if let Some(sealed) = sealed {
            return Some(Cow::Borrowed(&sealed.source));
        }
        let mut sources = self.offered.scenario_sources.iter();
        let named = sources.find(|source| source.file == header.scenario);
        named.map(Cow::Borrowed)
    }

    fn sealed_job(&self, job: &str) -> Option<&OpenedJob> {
        let mut sealed = self.sealed.iter();
        sealed.find(|sealed| sealed.source.stem() == job)
    }

    /// An attempt to be watched, and the job that it names.
    ///
    /// # Errors
    /// It is none, damaged, of a newer program, or its scenario is not here.
    pub(super) fn read_recorded(
        &self,
        record: RecordedAttempt,
    ) -> Result<(Attempt, ScenarioSource), StorageError> {
        let attempt = read_growing(&record.name, &record.text?)?;
        let source = match record.scenario {
            Some((file, text)) => {
                let library = &self.offered.content_library;
                let source = library.scenario_source(file, text.into_bytes());
                source.map_err(StorageError::File)?
            }
            None => (self.source_of(&attempt.header))
                .ok_or_else(|| StorageError::NoScenario(attempt.header.scenario.clone()))?
                .into_owned(),
        };
        Ok((attempt, source))
    }

    /// A kept attempt, the job that it names, and where it is kept.
    fn read_kept(
        &self,
        name: &str,
    ) -> Result<(Arc<dyn Attempts>, Attempt, ScenarioSource), StorageError> {
        let attempts = self.attempts.clone();
        let attempts = attempts.ok_or_else(|| StorageError::Gone(name.to_owned()))?;
        let attempt = read_attempt(name, &attempts.read(name)?)?;
        let scenario_source = (self.source_of(&attempt.header))
            .ok_or_else(|| StorageError::Gone(attempt.header.scenario.clone()))?
            .into_owned();
        Ok((attempts, attempt, scenario_source))
    }
}

/// A job on offer, `among` all.
fn offer(
    content_library: &ContentLibrary,
    source: &ScenarioSource,
    among: &[ScenarioSource],
) -> Offer {
    let scenario = &source.scenario;
    Offer {
        title: scenario.title.clone(),
        complaint: scenario.complaint.clone(),
        board: content_library
            .board(&scenario.board)
            .map_or_else(String::new, |board| board.name.clone()),
        part: scenario.course.as_ref().map(|course| course.part),
        minutes: scenario.par_minutes,
        after: before(source, among),
        seed: scenario.seed,
        guided: matches!(content_library.guide(source), Ok(Some(_))),
        course: source.course_job(),
    }
}

/// Titles of the jobs that the course puts before this one.
fn before(scenario_source: &ScenarioSource, all: &[ScenarioSource]) -> Vec<Bilingual> {
    let after = scenario_source
        .scenario
        .course
        .iter()
        .flat_map(|c| &c.after);
    after
        .filter_map(|name| all.iter().find(|t| t.stem() == *name))
        .map(|t| t.scenario.title.clone())
        .collect()
}

impl JobSource for LibraryJobs {
    fn offers(&self) -> &[Offer] {
        &self.offered.offers
    }

    fn content_digest(&self) -> [u8; 32] {
        self.offered.content_library.digest()
    }

    fn examinations(&self) -> &[(String, Examination)] {
        &self.offered.examinations
    }

    fn open(&self, offer: usize, seed: u64) -> OpeningWork {
        let scenario_source = self.offered.scenario_sources.get(offer).cloned();
        let content_library = Arc::clone(&self.offered.content_library);
        let attempts = self.attempts.clone();
        Box::pin(async move {
            let scenario_source = scenario_source.ok_or(OpenError::NoJob)?;
            let guide = content_library.guide(&scenario_source);
            let guide = guide.map_err(OpenError::Guide)?;
            let header = scenario_source.header(seed);
            let log = Log::Begins {
                job: scenario_source.stem(),
                header,
            };
            let bench = begin(content_library, &scenario_source, guide, seed, log).await?;
            let opened: Box<dyn BenchPort> = Box::new(WorkBench { attempts, ..bench });
            Ok(opened)
        })
    }

    fn draw_variant(
        &self,
        offer: usize,
        seed: u64,
        series: Option<VariantSeries>,
    ) -> Work<Result<DrawnVariant, OpenError>> {
        let original = self.offered.scenario_sources.get(offer).cloned();
        let content_library = Arc::clone(&self.offered.content_library);
        Box::pin(async move {
            let mut series = match series {
                Some(series) => series,
                None => {
                    let original = original.ok_or(OpenError::NoJob)?;
                    VariantSeries::begin_in_slices(&content_library, &original, seed)
                        .await
                        .map_err(|_| OpenError::NoVariant)?
                }
            };
            let next = series.next_in_slices(&content_library).await;
            let next = next.map_err(|_| OpenError::NoVariant)?;
            Ok((series, next))
        })
    }

    fn open_variant(&self, variant: &JobVariant) -> OpeningWork {
        let source = variant.source.clone();
        let content_library = Arc::clone(&self.offered.content_library);
        let attempts = self.attempts.clone();
        Box::pin(async move {
            let seed = source.scenario.seed;
            let log = Log::Begins {
                job: source.stem(),
                header: source.header(seed),
            };
            let bench = begin(content_library, &source, None, seed, log).await?;
            let opened: Box<dyn BenchPort> = Box::new(WorkBench { attempts, ..bench });
            Ok(opened)
        })
    }

    fn scenario_source(&self, offer: usize) -> Option<&ScenarioSource> {
        self.offered.scenario_sources.get(offer)
    }

    fn try_out(&self, source: ScenarioSource, from: Option<OnTheWay>) -> OpeningWork {
        let content_library = Arc::clone(&self.offered.content_library);
        Box::pin(async move {
            let seed = from.map_or(source.scenario.seed, |from| from.seed);
            let mut bench = begin(content_library, &source, None, seed, Log::Broken).await?;
            if let Some(from) = from {
                go_the_experts_way(&source.scenario, &mut bench.bench, from.at).await;
            }
            let opened: Box<dyn BenchPort> = Box::new(bench);
            Ok(opened)
        })
    }

    fn own_jobs(&self) -> Option<&dyn OwnTexts> {
        self.own_jobs.as_deref()
    }

    fn own_boards(&self) -> Option<&dyn OwnTexts> {
        self.own_boards.as_deref()
    }

    fn take_in_board(&mut self, board: OwnFile) -> Option<Arc<ContentLibrary>> {
        self.offered.take_in_board(board)
    }

    fn take_in(&mut self, source: ScenarioSource) {
        self.offered.take_in(source);
    }

    fn take_library(&mut self, offered: OfferedJobs, place: &LibraryPlace) {
        self.offered = offered;
        if self.own_boards.is_some() {
            self.own_boards = own_boards_beside(place);
        }
        if let Some(own_boards) = &self.own_boards {
            self.offered.take_in_own_boards(own_boards.as_ref());
        }
        if self.own_jobs.is_some() {
            self.own_jobs = own_jobs_beside(place);
        }
        if let Some(own_jobs) = &self.own_jobs {
            self.offered.take_in_own(own_jobs.as_ref());
        }
        let sealed = std::mem::take(&mut self.sealed).into_iter();
        let sealed = sealed.map(|sealed| SealedJob {
            file: sealed.source.file,
            text: sealed.source.text,
            seed: sealed.seed,
        });
        self.take_in_sealed(sealed.collect());
    }

    fn take_in_sealed(&mut self, jobs: Vec<SealedJob>) {
        let read = jobs.into_iter().filter_map(|job| {
            let content = &self.offered.content_library;
            let source = content.scenario_source(job.file, job.text.into_bytes());
            let source = source.ok()?;
            Some(OpenedJob {
                sha256: sha256_hex(source.text.as_bytes()),
                source,
                seed: job.seed,
            })
        });
        self.sealed = read.collect();
    }

    fn sealed_scenario(&self, job: &str) -> Option<&Scenario> {
        self.sealed_job(job).map(|sealed| &sealed.source.scenario)
    }

    fn open_sealed(&self, job: &str) -> OpeningWork {
        let found = self.sealed_job(job);
        let found = found.map(|sealed| (sealed.source.clone(), sealed.seed));
        let content_library = Arc::clone(&self.offered.content_library);
        let attempts = self.attempts.clone();
        Box::pin(async move {
            let (source, seed) = found.ok_or(OpenError::NoJob)?;
            let log = Log::Begins {
                job: source.stem(),
                header: Header::new(&source.file, &source.text, seed),
            };
            let bench = begin(content_library, &source, None, seed, log).await?;
            let opened: Box<dyn BenchPort> = Box::new(WorkBench { attempts, ..bench });
            Ok(opened)
        })
    }

    fn attempts(&self) -> Option<&dyn Attempts> {
        self.attempts.as_deref()
    }

    fn kept(&self, name: &str) -> Result<Kept, StorageError> {
        let attempts = self.attempts();
        let attempts = attempts.ok_or_else(|| StorageError::Gone(name.to_owned()))?;
        let attempt = read_attempt(name, &attempts.read(name)?)?;
        let end = attempts.seen_until(name).unwrap_or_default();
        Ok(Kept {
            title: self
                .source_of(&attempt.header)
                .map(|t| t.scenario.title.clone()),
            actions: attempt.actions.len(),
            time_s: attempt.last().max(end).seconds(),
            finished: attempt.footer.is_some(),
            second_visit: attempt.first_visit.is_some(),
        })
    }

    fn watch(&self, record: RecordedAttempt) -> OpeningWork {
        let content_library = Arc::clone(&self.offered.content_library);
        let (name, source) = (record.name.clone(), record.source.clone());
        let found = self.read_recorded(record);
        Box::pin(async move {
            let (attempt, scenario_source) = found.map_err(OpenError::Attempt)?;
            let work = open_film(content_library, scenario_source, (name, source), attempt);
            work.await.map_err(OpenError::Attempt)
        })
    }

    fn resume(&self, name: &str) -> OpeningWork {
        let found = self.read_kept(name);
        let content_library = Arc::clone(&self.offered.content_library);
        let name = name.to_owned();
        Box::pin(async move {
            let (attempts, attempt, scenario_source) = found.map_err(OpenError::Attempt)?;
            let work = resume(attempts, content_library, scenario_source, name, attempt);
            let opened: Box<dyn BenchPort> = Box::new(work.await.map_err(OpenError::Attempt)?);
            Ok(opened)
        })
    }
}

/// Does on a bench where nothing is done yet what the expert has done by `until`; nothing where the expert cannot do the
/// job. A report is not handed in.
async fn go_the_experts_way(scenario: &Scenario, bench: &mut Bench, until: Time) {
    /// Machine time between two breaks.
    const SLICE: Span = Span::from_s(5);
    let Ok(done) = work_in_slices(Persona::Expert, scenario, bench.clone()).await else {
        return;
    };
    let deeds = done.history().iter().map(|(at, action)| (at, Some(action)));
    for (at, action) in deeds.chain([(until, None)]) {
        let at = at.min(until);
        while bench.now() < at {
            bench.wait(at.since(bench.now()).min(SLICE));
            yield_now().await;
        }
        match action {
            Some(action) if at < until && !matches!(action, Action::Report(_)) => {
                // What the expert could do there can be done again: the machine is the same to the tick.
                let done_again = bench.act(action);
                debug_assert!(done_again.is_ok(), "{action:?}: {done_again:?}");
            }
            Some(_) | None => {}
        }
    }
}

/// Sets a job up, kept nowhere yet.
async fn begin(
    content_library: Arc<ContentLibrary>,
    scenario_source: &ScenarioSource,
    guide: Option<Guide>,
    seed: u64,
    log: Log,
) -> Result<WorkBench, OpenError> {
    let scenario = &scenario_source.scenario;
    let bench = set_up_in_slices(scenario, &content_library.library(scenario), seed).await;
    let bench = bench.map_err(OpenError::SetUp)?;
    Ok(WorkBench {
        job: Arc::new(job_at(
            &content_library,
            scenario_source,
            guide,
            Intake::of(&bench),
            &bench,
        )),
        bench,
        scenario: Arc::new(scenario.clone()),
        content_library,
        seed,
        score: None,
        invoice: None,
        attempts: None,
        log,
        kept: 0,
    })
}

/// Does a kept attempt again.
async fn resume(
    attempts: Arc<dyn Attempts>,
    content_library: Arc<ContentLibrary>,
    scenario_source: ScenarioSource,
    name: String,
    attempt: Attempt,
) -> Result<WorkBench, StorageError> {
    let replayed = replay_attempt_in_slices(&content_library, &scenario_source, &name, &attempt);
    let done = replayed.await?;
    let mut bench = done.bench;
    let score = bench.report().is_some().then_some(done.score);
    let log = if attempt.footer.is_some() {
        Log::Ended(name)
    } else {
        let end = attempts.seen_until(&name).unwrap_or_default().min(LATEST);
        bench.wait(end.since(bench.now()));
        Log::Grows(attempts.go_on(&name)?)
    };
    // A mistake in its guide does not stand in an attempt's way; a second visit has none.
    let guide = match done.first {
        None => content_library.guide(&scenario_source).ok().flatten(),
        Some(_) => None,
    };
    let called_back = (done.first).map(|(earlier, account)| CalledBack { earlier, account });
    Ok(WorkBench {
        job: Arc::new(Job {
            called_back,
            ..job_at(
                &content_library,
                &scenario_source,
                guide,
                done.intake,
                &bench,
            )
        }),
        kept: bench.history().len(),
        invoice: score.is_some().then(|| Invoice::of(&bench)),
        bench,
        content_library,
        scenario: Arc::new(scenario_source.scenario),
        seed: attempt.header.seed,
        score,
        attempts: Some(attempts),
        log,
    })
}

/// What does not change during the job at this bench.
pub(super) fn job_at(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    guide: Option<Guide>,
    intake: Intake,
    bench: &Bench,
) -> Job {
    let scenario = &scenario_source.scenario;
    let (mains_v, mains_hz) = match scenario.mains {
        Mains::V120Hz60 => (120, 60),
        Mains::V230Hz50 => (230, 50),
    };
    let mut causes: Vec<CauseRow> = (bench.modes().iter())
        .map(|mode| CauseRow {
            id: mode.id.clone(),
            component: mode.component,
        })
        .collect();
    causes.sort_by_key(|cause| cause.component.index());
    Job {
        file: scenario_source.stem(),
        title: scenario.title.clone(),
        complaint: scenario.complaint.clone(),
        is_variant: scenario_source.is_variant(),
        intake: Some(intake),
        goal: scenario.goal.clone(),
        budget: scenario.budget,
        rates: bench.rates(),
        par_minutes: scenario.par_minutes,
        mains_v,
        mains_hz,
        live_tests_allowed: scenario.live_tests_allowed,
        hints_allowed: scenario.hints_allowed,
        hints_at_hand: content_library.can_be_thought_over(scenario, bench),
        points: scenario.points,
        board: bench.machine().board().clone(),
        parts: bench.counter().to_vec(),
        causes,
        guide,
        called_back: None,
    }
}

/// How an attempt is kept.
enum Log {
    /// Not any more.
    Broken,
    /// From the first action on: a job that was only looked at leaves nothing behind.
    Begins { job: String, header: Header },
    /// As it goes.
    Grows(Box<dyn AttemptSink>),
    /// Whole, under this name.
    Ended(String),
}

/// One job at the real bench, kept as it goes.
struct WorkBench {
    bench: Bench,
    content_library: Arc<ContentLibrary>,
    scenario: Arc<Scenario>,
    seed: u64,
    job: Arc<Job>,
    /// Once the report was handed in.
    score: Option<Score>,
    /// The same.
    invoice: Option<Invoice>,
    attempts: Option<Arc<dyn Attempts>>,
    log: Log,
    /// Actions kept so far.
    kept: usize,
}

impl WorkBench {
    /// Scores the job when the report is in.
    fn judge_once(&mut self) {
        if self.score.is_none() && self.bench.report().is_some() {
            self.score = Some(judge(&self.scenario, &self.bench));
            self.invoice = Some(Invoice::of(&self.bench));
        }
    }

    /// Name and text of this attempt, where it is kept to its end.
    fn kept_whole(&self) -> Option<(String, Vec<u8>)> {
        let (Log::Ended(name), Some(attempts)) = (&self.log, &self.attempts) else {
            return None;
        };
        match attempts.read(name) {
            Ok(bytes) => Some((name.clone(), bytes)),
            Err(error) => {
                attempts.complain(error);
                None
            }
        }
    }

    /// Keeps what is new; gives up keeping this attempt when that fails.
    fn keep(&mut self) {
        let Some(attempts) = self.attempts.clone() else {
            return;
        };
        let log = std::mem::replace(&mut self.log, Log::Broken);
        match self.kept(log, attempts.as_ref()) {
            Ok(log) => self.log = log,
            Err(storage_error) => attempts.complain(storage_error),
        }
    }

    fn kept(&mut self, log: Log, attempts: &dyn Attempts) -> Result<Log, StorageError> {
        let mut attempt_sink = match log {
            Log::Begins { job, header } if !self.bench.history().is_empty() => {
                attempts.begin(&job, &header)?
            }
            Log::Grows(attempt_sink) => attempt_sink,
            as_it_is => return Ok(as_it_is),
        };
        for (at, action) in self.bench.history().starting_at(self.kept).iter() {
            attempt_sink.push(at, action)?;
            self.kept += 1;
        }
        let Some(score) = &self.score else {
            return Ok(Log::Grows(attempt_sink));
        };
        let footer = Footer::of(&self.bench, score);
        attempt_sink.finish(&footer).map(Log::Ended)
    }
}

impl BenchPort for WorkBench {
    fn step(&mut self) {
        self.bench.step();
    }

    fn act(&mut self, action: Action) -> Result<(), Refusal> {
        self.bench.act(&action)?;
        self.judge_once();
        self.keep();
        Ok(())
    }

    fn caution(&self, action: &Action) -> Option<Caution> {
        self.bench.caution(action)
    }

    fn meter_shows(&mut self) -> Option<Display> {
        self.bench.meter_shows()
    }

    fn view(&self) -> BenchView<'_> {
        self.bench.view()
    }

    fn job(&self) -> &Arc<Job> {
        &self.job
    }

    fn run(&mut self, step: &ScriptStep) -> Result<(), String> {
        let done = step.run(&mut self.bench).map_err(|e| e.to_string());
        self.judge_once();
        self.keep();
        done
    }

    fn score(&self) -> Option<&Score> {
        self.score.as_ref()
    }

    fn review(&self) -> Option<ReviewWork> {
        let score = self.score.clone()?;
        let (content_library, scenario) = (
            Arc::clone(&self.content_library),
            Arc::clone(&self.scenario),
        );
        let (seed, bench) = (self.seed, self.bench.clone());
        Some(Box::pin(async move {
            let review = content_library.review_in_slices((&scenario, seed), &bench, &score);
            review.await.ok().flatten()
        }))
    }

    fn hint(&self) -> Option<HintWork> {
        let (content_library, scenario) = (
            Arc::clone(&self.content_library),
            Arc::clone(&self.scenario),
        );
        let (seed, bench) = (self.seed, self.bench.clone());
        Some(Box::pin(async move {
            let hint = content_library.hint_in_slices((&scenario, seed), &bench);
            hint.await.ok().flatten()
        }))
    }

    fn invoice(&self) -> Option<&Invoice> {
        self.invoice.as_ref()
    }

    fn call_back(&self) -> Option<CallBackWork> {
        self.bench.report()?;
        let bench = self.bench.clone();
        Some(Box::pin(async move { call_back_in_slices(&bench).await }))
    }

    fn second_visit(&self, call: &CallBack) -> Option<OpeningWork> {
        if self.bench.is_called_back() {
            return None;
        }
        let (call, first) = (call.clone(), self.kept_whole());
        let (content_library, scenario) = (
            Arc::clone(&self.content_library),
            Arc::clone(&self.scenario),
        );
        let (job, attempts, seed) = (Arc::clone(&self.job), self.attempts.clone(), self.seed);
        Some(Box::pin(async move {
            let log = match first {
                Some((file, bytes)) => Log::Begins {
                    job: job.file.clone(),
                    header: Header::of_second_visit(&file, &bytes)
                        .map_err(|error| OpenError::Attempt(error.into()))?,
                },
                // What nobody kept nothing can go on from.
                None => Log::Broken,
            };
            let opened: Box<dyn BenchPort> = Box::new(WorkBench {
                job: Arc::new(Job {
                    intake: Some(Intake::of(&call.bench)),
                    guide: None,
                    hints_at_hand: false,
                    called_back: Some(CalledBack {
                        earlier: call.earlier,
                        account: call.account,
                    }),
                    ..Job::clone(&job)
                }),
                bench: call.bench,
                content_library,
                scenario,
                seed,
                score: None,
                invoice: None,
                attempts,
                log,
                kept: 0,
            });
            Ok(opened)
        }))
    }

    fn control_suspicion(&self, hand: HandRecord) -> Option<ControlSuspicion> {
        let wear = self.scenario.dial_wear;
        ControlSuspicion::of(self.bench.tries(), wear, self.bench.modes(), hand).ok()
    }

    fn kept_as(&self) -> Option<String> {
        match &self.log {
            Log::Grows(attempt_sink) => Some(attempt_sink.name()),
            Log::Ended(name) => Some(name.clone()),
            Log::Broken | Log::Begins { .. } => None,
        }
    }

    fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.bench.history()
    }

    fn mark(&mut self) {
        if let Log::Grows(attempt_sink) = &mut self.log {
            attempt_sink.mark(self.bench.now());
        }
    }
}
