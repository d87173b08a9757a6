//! What the window needs from a bench, and nothing more. Panels read plain structs from here.

use super::attempts::{Attempts, StorageError};
use super::background::Work;
use super::film::{Film, FilmSource};
use super::library::LibraryPlace;
use super::workbench::OfferedJobs;
use super::workshop::OwnTexts;
use detent_content::{
    ContentError, ContentLibrary, JobVariant, OwnFile, ScenarioSource, Texts, VariantSeries,
};
use detent_simulation::controller::Board;
use detent_simulation::interface::Component;
use detent_simulation::units::Time;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, BenchView, Caution, Display, Entries, Part, Rates, Refusal};
use detent_training::lesson::{
    Bilingual, CallBack, CoursePart, CustomerAccount, EarlierVisit, Guide, Intake, Invoice, Points,
    Scenario, Score, SetUpError,
};
use detent_training::practice::{CourseJob, Examination};
use detent_training::reason::{ControlSuspicion, HandRecord, Hint, Review};
use std::sync::Arc;

/// Thinks a finished job over; none where no table of its board's faults is at hand.
pub type ReviewWork = Work<Option<Review>>;

/// Thinks over what somebody who is stuck could be told; none where nothing can be.
pub type HintWork = Work<Option<Hint>>;

/// The three days after a job: what the customer notices, if that makes a call.
pub type CallBackWork = Work<Option<CallBack>>;

/// Sets a bench up: the customer's wash, or a kept attempt done again.
pub type OpeningWork = Work<Result<Box<dyn BenchPort>, OpenError>>;

/// Why a bench could not be set up.
#[derive(Clone, Debug)]
pub enum OpenError {
    /// There is no such job.
    NoJob,
    /// Its guide cannot be used.
    Guide(ContentError),
    /// Its scenario cannot be set up.
    SetUp(SetUpError),
    /// No variant of the job could be proved.
    NoVariant,
    /// The attempt cannot be done again.
    Attempt(StorageError),
}

impl OpenError {
    /// What is wrong, in a sentence.
    pub fn words(&self, texts: &Texts) -> String {
        match self {
            OpenError::NoJob => texts.get("practice-job-gone"),
            OpenError::Guide(error) => texts.content_error(error),
            OpenError::SetUp(error) => texts.set_up_error(error),
            OpenError::NoVariant => texts.get("start-no-variant"),
            OpenError::Attempt(error) => error.words(texts),
        }
    }
}

/// A bench that the window can show and drive. What only a job that is scored and kept can do, no other need.
pub trait BenchPort: Send + Sync {
    /// One tick of 10 ms.
    fn step(&mut self);
    /// Do one thing now.
    ///
    /// # Errors
    /// [`Refusal`] when it is not physically possible; nothing has changed then.
    fn act(&mut self, action: Action) -> Result<(), Refusal>;
    /// The usual caution before `action`, if there is one.
    fn caution(&self, action: &Action) -> Option<Caution>;
    /// What the person sees now, borrowed: it may be asked for as often as is convenient.
    fn view(&self) -> BenchView<'_>;
    /// What the meter shows now, if it shows anything. Worked out anew: asked once a frame.
    fn meter_shows(&mut self) -> Option<Display>;
    /// What does not change during the job.
    fn job(&self) -> &Arc<Job>;
    /// Run one line of a script at once.
    ///
    /// # Errors
    /// Why it could not be done, in a sentence.
    fn run(&mut self, step: &ScriptStep) -> Result<(), String>;
    /// The result, once the report was handed in.
    fn score(&self) -> Option<&Score>;
    /// Thinks the job over, once the report was handed in.
    fn review(&self) -> Option<ReviewWork> {
        None
    }
    /// Thinks over what could be told now to somebody who is stuck.
    fn hint(&self) -> Option<HintWork> {
        None
    }
    /// Goes back to the machine after this `call`; none on a second visit.
    fn second_visit(&self, _call: &CallBack) -> Option<OpeningWork> {
        None
    }
    /// What the customer is billed, once the report was handed in.
    fn invoice(&self) -> Option<&Invoice> {
        None
    }
    /// Lets three days pass after the job, once the report was handed in.
    fn call_back(&self) -> Option<CallBackWork> {
        None
    }
    /// Is the control bad or is it this `hand`? None where that cannot be told. Shown and no more: neither score
    /// nor attempt knows of it.
    fn control_suspicion(&self, _hand: HandRecord) -> Option<ControlSuspicion> {
        None
    }
    /// The name under which this attempt is kept, once it is.
    fn kept_as(&self) -> Option<String> {
        None
    }
    /// The film that this bench shows, if it shows one.
    fn film(&self) -> Option<&Film> {
        None
    }
    /// The same, to be played.
    fn film_mut(&mut self) -> Option<&mut Film> {
        None
    }
    /// Remember how far the clock has come.
    fn mark(&mut self) {}
    /// Everything the person did, with its time on the bench.
    fn history(&self) -> Entries<'_, (Time, &Action)>;
}

/// The next variant of a job that was proved, if there is a further one, and where the one after it comes from.
pub type DrawnVariant = (VariantSeries, Option<JobVariant>);

/// A moment of the expert's way through a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnTheWay {
    /// Seed of the machine's draws.
    pub seed: u64,
    /// Machine time behind a deed.
    pub at: Time,
}

/// A job of a class that came closed, opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SealedJob {
    /// The file that an attempt at it names.
    pub file: String,
    /// The scenario's text.
    pub text: String,
    /// Seed of the machine's draws.
    pub seed: u64,
}

/// Where jobs come from.
pub trait JobSource: Send + Sync {
    /// The jobs on offer, in order.
    fn offers(&self) -> &[Offer];
    /// Digest of the content that they are made of, SHA-256.
    fn content_digest(&self) -> [u8; 32] {
        [0; 32]
    }
    /// The examinations on offer: file name without folder and ending, and what they ask.
    fn examinations(&self) -> &[(String, Examination)] {
        &[]
    }
    /// Set a bench up for one of the jobs.
    fn open(&self, offer: usize, seed: u64) -> OpeningWork;
    /// Draw and prove a variant of one of them: the first from this seed, or the next of the series. The same seed gives
    /// the same ones.
    fn draw_variant(
        &self,
        _offer: usize,
        _seed: u64,
        _series: Option<VariantSeries>,
    ) -> Work<Result<DrawnVariant, OpenError>> {
        Box::pin(async { Err(OpenError::NoVariant) })
    }
    /// Set a bench up for a variant that was drawn.
    fn open_variant(&self, _variant: &JobVariant) -> OpeningWork {
        Box::pin(async { Err(OpenError::NoVariant) })
    }
    /// The scenario of one of them.
    fn scenario_source(&self, _offer: usize) -> Option<&ScenarioSource> {
        None
    }
    /// Set a bench up for a job that is being written, at its beginning or somewhere on the expert's way. Nothing of it
    /// is kept.
    fn try_out(&self, _source: ScenarioSource, _from: Option<OnTheWay>) -> OpeningWork {
        Box::pin(async { Err(OpenError::NoJob) })
    }
    /// Where jobs of one's own are kept, if they are.
    fn own_jobs(&self) -> Option<&dyn OwnTexts> {
        None
    }
    /// Where boards of one's own are kept, if they are.
    fn own_boards(&self) -> Option<&dyn OwnTexts> {
        None
    }
    /// Take a board of one's own in, or in the place of the own one of its name: the content with it, if it is sound.
    fn take_in_board(&mut self, _board: OwnFile) -> Option<Arc<ContentLibrary>> {
        None
    }
    /// Put a job of one's own on offer, behind the others, or in the place of the one from the same file.
    fn take_in(&mut self, _source: ScenarioSource) {}
    /// Offer what another library has, the one in this place, instead of what there is. Jobs of one's own are kept there
    /// from now on.
    fn take_library(&mut self, _offered: OfferedJobs, _place: &LibraryPlace) {}
    /// Know these jobs of a class from now on, and no others; of two with one name the first is the one to do.
    fn take_in_sealed(&mut self, _jobs: Vec<SealedJob>) {}
    /// The scenario of the sealed job with this name, if it is here and sound.
    fn sealed_scenario(&self, _job: &str) -> Option<&Scenario> {
        None
    }
    /// Set a bench up for the sealed job with this name. Its attempt does not carry the scenario.
    fn open_sealed(&self, _job: &str) -> OpeningWork {
        Box::pin(async { Err(OpenError::NoJob) })
    }
    /// Where attempts are kept, if they are.
    fn attempts(&self) -> Option<&dyn Attempts>;
    /// What is in a kept attempt.
    ///
    /// # Errors
    /// Why it cannot be used.
    fn kept(&self, name: &str) -> Result<Kept, StorageError>;
    /// Do a kept attempt again up to its end; an unfinished one goes on from there.
    fn resume(&self, name: &str) -> OpeningWork;
    /// Show an attempt as a film.
    fn watch(&self, record: RecordedAttempt) -> OpeningWork {
        Box::pin(async move { Err(OpenError::Attempt(StorageError::Gone(record.name))) })
    }
}

/// An attempt to be watched.
#[derive(Clone, Debug)]
pub struct RecordedAttempt {
    /// Its name, for people.
    pub name: String,
    /// All of its text so far, or why there is none.
    pub text: Result<Vec<u8>, StorageError>,
    /// Its scenario, where it comes with it: name of the file, and text.
    pub scenario: Option<(String, String)>,
    /// Where it comes from.
    pub source: FilmSource,
}

/// What is in a kept attempt.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Title of the job; none when it is not among the jobs here.
    pub title: Option<Bilingual>,
    /// Actions so far.
    pub actions: usize,
    /// Machine time so far, s.
    pub time_s: f64,
    /// Handed in. What it was worth, only doing it again tells.
    pub finished: bool,
    /// The second visit, after the customer called back.
    pub second_visit: bool,
}

/// One job on offer.
#[derive(Clone, Debug)]
pub struct Offer {
    /// Title.
    pub title: Bilingual,
    /// The complaint in the customer's words.
    pub complaint: Bilingual,
    /// Text key of its board's name.
    pub board: String,
    /// Part of the course that it belongs to.
    pub part: Option<CoursePart>,
    /// Minutes a good technician should need.
    pub minutes: f64,
    /// Titles of the jobs to do before.
    pub after: Vec<Bilingual>,
    /// Seed used unless the player types another.
    pub seed: u64,
    /// A guide leads through it.
    pub guided: bool,
    /// What practice needs to know of it.
    pub course: CourseJob,
}

/// Everything about a job that stays the same.
#[derive(Clone, Debug)]
pub struct Job {
    /// The scenario's file name without folder and ending.
    pub file: String,
    /// It was drawn as a variant of a job on offer, and is kept nowhere.
    pub is_variant: bool,
    /// Title.
    pub title: Bilingual,
    /// The complaint in the customer's words.
    pub complaint: Bilingual,
    /// What the customer answers to questions, where there is one to ask.
    pub intake: Option<Intake>,
    /// What it teaches, told with the score: before, it would give the answer away.
    pub goal: Bilingual,
    /// Money the customer will pay at most for parts and work, whole units.
    pub budget: f64,
    /// What the shop charges.
    pub rates: Rates,
    /// Minutes a good technician should need.
    pub par_minutes: f64,
    /// Nominal mains voltage, V.
    pub mains_v: u32,
    /// Mains frequency, Hz.
    pub mains_hz: u32,
    /// Meter work on the live machine is allowed.
    pub live_tests_allowed: bool,
    /// Hints may be taken.
    pub hints_allowed: bool,
    /// There is what hints are made from.
    pub hints_at_hand: bool,
    /// Highest points for each side.
    pub points: Points,
    /// The board, whose printed sheet the trainee has.
    pub board: Board,
    /// What the counter sells.
    pub parts: Vec<Part>,
    /// Causes that the report can name, by component.
    pub causes: Vec<CauseRow>,
    /// What leads through it step by step, if anything does.
    pub guide: Option<Guide>,
    /// Why the technician is here for the second time, if so.
    pub called_back: Option<CalledBack>,
}

/// Why the technician is here for the second time.
#[derive(Clone, Debug)]
pub struct CalledBack {
    /// What is on file of the first visit.
    pub earlier: EarlierVisit,
    /// What the customer called about.
    pub account: CustomerAccount,
}

/// One cause that the report can name.
#[derive(Clone, Debug)]
pub struct CauseRow {
    /// Failure mode, such as `drain-pump.open-winding`.
    pub id: String,
    /// The component that fails.
    pub component: Component,
}

impl CauseRow {
    /// Text key of the cause in words.
    pub fn name_key(&self) -> String {
        format!("mode-{}", self.id.replace('.', "-"))
    }
}
