//! The one resource that owns the bench, and the desk: what the panels remember.

use super::access::lamps::LampWatch;
use super::attempts::StorageError;
use super::background::{Background, Work};
use super::film::{Film, ShownFilm};
use super::hands::HeldButtons;
use super::hints::ShownHint;
use super::key_bindings::{KeyBindings, KeyTaken};
use super::library::LibraryUiState;
use super::panels::spoken::Tapped;
use super::port::{BenchPort, DrawnVariant, Job, JobSource, Kept, OpenError, OpeningWork};
use super::stops::Stop;
use bevy::prelude::*;
use detent_content::{
    JobVariant, KeyAction, KeyPlace, Language, Preferences, Texts, VariantSeries,
};
use detent_simulation::controller::{Outcome, Tries};
use detent_simulation::interface::{Button, Component as Part, Pin};
use detent_simulation::units::Time;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{
    Action, Advice, BenchView, Caution, Display, Entries, Grip, Incident, MeterMode, Quote,
    Refusal, Report, Verdict,
};
pub use detent_training::lesson::WindowTab as Tab;
use detent_training::lesson::{
    Bilingual, CallBack, Guide, GuidePlace, Invoice, Score, WindowState, WindowStepsDone,
    WindowView,
};
use detent_training::practice::{CoachAdvice, Exercise, Learner, Moment};
use detent_training::reason::{ControlSuspicion, HandRecord, Review};
use std::collections::{BTreeSet, VecDeque};
use std::sync::Arc;

/// Owns the bench. Panels push actions; one system drains them and steps.
#[derive(Resource)]
pub struct BenchRes {
    bench: Box<dyn BenchPort>,
    /// What the meter showed at the last look.
    meter: Option<Display>,
    /// The tries that `control_suspicion` was made from.
    tries: Option<TriesMark>,
    /// Begun when the report was handed in.
    reviewing: Option<Background<Option<Review>>>,
    control_suspicion: Option<ControlSuspicion>,
    /// The hand that the tries are held against.
    hand: HandRecord,
    /// Begun with the review: what the customer notices three days later, if that makes a call.
    calling_back: Option<Background<Option<CallBack>>>,
    /// The result was taken already, or the attempt was opened finished.
    result_taken: bool,
    /// Actions not done yet.
    pub queue: VecDeque<Queued>,
    /// An action that waits for an answer to its caution.
    pub asked: Option<(Action, Caution)>,
    /// What hurt somebody or flooded the floor, until it was read: nothing goes on before.
    pub incident: Option<Incident>,
    /// Nobody looks at the bench: help lies over it, or another window has the focus.
    pub set_aside: bool,
    /// The teacher has stopped the class for a moment.
    pub class_paused: bool,
    /// Events that were looked at for such.
    events_seen: usize,
    /// The last refusal, until shown.
    pub refused: Option<Refusal>,
    /// A hand was at the console while the clock stood, until that is shown.
    pub refused_while_paused: bool,
    /// Somebody wanted to do something in a film, until that is shown.
    pub refused_in_film: bool,
    /// Ticks still to run at once ("wait").
    pub wait_ticks: u64,
    /// That wait is for whatever comes, not for a time.
    waits_for_stop: bool,
    /// What broke a wait or a fast clock off, until that is shown.
    pub broken_off: Option<Stop>,
    /// Ticks run here so far.
    ticks: u64,
    /// When the last turn or press was done.
    last_input: Option<u64>,
    /// How far the bench lags behind the hand so that what comes late keeps its rhythm, ticks.
    lag: u64,
    /// The hint that was last looked for.
    hint: Option<ShownHint>,
    /// Entries of the log that the guide was held against, and where it stands.
    guided: (usize, GuidePlace),
    /// Steps of the guide about the window that were done here.
    looked: WindowStepsDone,
}

/// What tells tries from those of a moment ago: they are only added to, and only the last one grows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct TriesMark {
    count: usize,
    /// When the last one began, s, its inputs, and how it ended.
    last: Option<(u32, usize, Outcome)>,
}

impl TriesMark {
    fn of(tries: Tries<'_>) -> TriesMark {
        let last = tries.last();
        TriesMark {
            count: tries.len(),
            last: last.map(|t| (t.began_s, t.lines.len(), t.outcome)),
        }
    }
}

/// Work that is begun once there is any, and goes on from frame to frame.
fn go_on_or_begin<T: Send + 'static>(
    work: &mut Option<Background<T>>,
    begin: impl FnOnce() -> Option<Work<T>>,
) {
    match work {
        Some(work) => work.go_on(),
        None => *work = begin().map(Background::begin),
    }
}

/// An action that waits for its tick.
#[derive(Clone, Debug)]
pub struct Queued {
    /// What is to be done.
    pub action: Action,
    /// The person was cautioned already.
    cautioned: bool,
    /// How long before the clock of the frame that queued it the hand did it, ticks, if that is known;
    /// negative for what the next frame's ticks are to hold.
    age: Option<i64>,
    /// Not before this tick.
    due: Option<u64>,
}

impl BenchRes {
    /// A bench ready to be worked at.
    pub fn new(bench: Box<dyn BenchPort>) -> BenchRes {
        BenchRes {
            result_taken: bench.view().finished,
            events_seen: bench.view().log.events().len(),
            incident: None,
            set_aside: false,
            class_paused: false,
            bench,
            meter: None,
            tries: None,
            reviewing: None,
            control_suspicion: None,
            hand: HandRecord::default(),
            calling_back: None,
            queue: VecDeque::new(),
            asked: None,
            refused: None,
            refused_while_paused: false,
            refused_in_film: false,
            wait_ticks: 0,
            waits_for_stop: false,
            broken_off: None,
            ticks: 0,
            last_input: None,
            lag: 0,
            hint: None,
            guided: (0, GuidePlace::default()),
            looked: WindowStepsDone::default(),
        }
    }

    /// Where the guide stands while the window is so. Told anew only when something happened.
    pub fn guide_place(&mut self, guide: &Guide, window: WindowState) -> GuidePlace {
        let log = self.bench.view().log;
        let entries = log.entries().len();
        if self.guided.0 != entries {
            self.guided = (entries, guide.place(log, &self.looked));
        }
        if guide.look(self.guided.1, window, &mut self.looked) {
            self.guided.1 = guide.place(log, &self.looked);
        }
        self.guided.1
    }

    /// The film that is watched here, if one is: then nothing can be done.
    pub fn film(&self) -> Option<&Film> {
        self.bench.film()
    }

    /// The same, to be played.
    pub fn film_mut(&mut self) -> Option<&mut Film> {
        self.bench.film_mut()
    }

    /// Nothing waits to be done, and the job goes on.
    pub fn is_free(&self) -> bool {
        let busy = self.is_held_up() || !self.queue.is_empty() || self.wait_ticks > 0;
        !busy && !self.view().finished
    }

    /// What the person sees.
    pub fn view(&self) -> BenchView<'_> {
        self.bench.view()
    }

    /// What the meter showed at the last look, if it showed anything.
    pub fn meter(&self) -> Option<Display> {
        self.meter
    }

    /// Whose hand it is, before the next look.
    pub fn know_hand(&mut self, hand: HandRecord) {
        if self.hand != hand {
            self.hand = hand;
            self.tries = None;
        }
    }

    /// Look again; once a frame, after its ticks.
    pub fn refresh(&mut self) {
        self.meter = self.bench.meter_shows();
        let view = self.bench.view();
        let tries = Some(TriesMark::of(view.machine.control.tries));
        let finished = view.finished;
        if self.tries != tries {
            self.tries = tries;
            self.control_suspicion = self.bench.control_suspicion(self.hand);
        }
        if let Some(hint) = &mut self.hint {
            hint.go_on();
        }
        if finished {
            go_on_or_begin(&mut self.calling_back, || self.bench.call_back());
        }
        // A film knows its end from its beginning on.
        if finished || self.film().is_some() {
            go_on_or_begin(&mut self.reviewing, || self.bench.review());
        }
    }

    /// What stays the same.
    pub fn job(&self) -> &Arc<Job> {
        self.bench.job()
    }

    /// The result, once there is one.
    pub fn score(&self) -> Option<&Score> {
        self.bench.score()
    }

    /// The finished job thought over, once that is done and where it can be.
    pub fn review(&self) -> Option<&Review> {
        match self.reviewing.as_ref()? {
            Background::Running(_) => None,
            Background::Done(review) => review.as_ref(),
        }
    }

    /// The finished job is being thought over.
    pub fn is_reviewing(&self) -> bool {
        matches!(self.reviewing, Some(Background::Running(_)))
    }

    /// Waits until the finished job is thought over.
    #[cfg(test)]
    pub fn wait_for_review(&mut self) {
        if let Some(reviewing) = &mut self.reviewing {
            reviewing.wait();
        }
        if let Some(calling_back) = &mut self.calling_back {
            calling_back.wait();
        }
    }

    /// Looks for what could be told to somebody who is stuck.
    pub fn look_for_hint(&mut self) {
        let entries = self.bench.view().log.entries().len();
        if let Some(work) = self.bench.hint() {
            self.hint = Some(ShownHint::look(work, entries, self.hint.take()));
        }
    }

    /// The hint that was last looked for.
    pub fn hint(&self) -> Option<&ShownHint> {
        self.hint.as_ref()
    }

    /// Takes the next rung of that hint.
    pub fn take_hint(&mut self) {
        if let Some(rung) = self.hint.as_mut().and_then(ShownHint::take) {
            self.push(Action::TakeHint(rung));
        }
    }

    /// What the customer is billed, once the job is handed in.
    pub fn invoice(&self) -> Option<&Invoice> {
        self.bench.invoice()
    }

    /// What the customer notices three days after the job and calls about, or that nobody calls, once that is known.
    pub fn call_back(&self) -> Option<Option<&CallBack>> {
        match self.calling_back.as_ref()? {
            Background::Running(_) => None,
            Background::Done(call) => Some(call.as_ref()),
        }
    }

    /// Goes back to the machine after the customer has called back.
    pub fn second_visit(&self) -> Option<OpeningWork> {
        self.bench.second_visit(self.call_back()??)
    }

    /// The job is being thought over, for its result or for a hint.
    pub fn is_thinking(&self) -> bool {
        let calling = matches!(self.calling_back, Some(Background::Running(_)));
        calling || self.is_reviewing() || self.hint.as_ref().is_some_and(ShownHint::is_looking)
    }

    /// Waits until a hint is found.
    #[cfg(test)]
    pub fn wait_for_hint(&mut self) {
        if let Some(hint) = &mut self.hint {
            hint.wait();
        }
    }

    /// Is the control bad or is it the hand?
    pub fn control_suspicion(&self) -> Option<&ControlSuspicion> {
        self.control_suspicion.as_ref()
    }

    /// The result of a job that was handed in here, once: the job's file name without folder and ending, its
    /// score, and the machine time that it took, s. None for an attempt that was opened finished, and for a second visit.
    pub fn take_result(&mut self) -> Option<(String, Score, f64)> {
        // What a learner can do shows in the first visit.
        if self.result_taken || self.job().called_back.is_some() {
            return None;
        }
        let score = self.bench.score()?.clone();
        self.result_taken = true;
        Some((self.job().file.clone(), score, self.view().machine.time_s))
    }

    /// The name under which this attempt is kept, once it is.
    pub fn kept_as(&self) -> Option<String> {
        self.bench.kept_as()
    }

    /// Everything the person did, with its time on the bench.
    pub fn history(&self) -> Entries<'_, (Time, &Action)> {
        self.bench.history()
    }

    /// Remember how far the clock has come.
    pub fn mark(&mut self) {
        self.bench.mark();
    }

    /// Run one line of a script at once.
    ///
    /// # Errors
    /// Why it could not be done, in a sentence.
    pub fn run(&mut self, step: &ScriptStep) -> Result<(), String> {
        self.bench.run(step)
    }

    /// Something must be read or answered before anything goes on, or nobody looks.
    pub fn is_held_up(&self) -> bool {
        self.asked.is_some() || self.incident.is_some() || self.set_aside || self.class_paused
    }

    /// What has happened since the last look that hurt somebody or flooded the floor.
    fn look_for_incidents(&mut self) {
        let events = self.bench.view().log.events();
        let news = events.starting_at(self.events_seen).iter();
        let hurt = news
            .map(|event| event.what)
            .find(|what| what.fails_the_job());
        self.events_seen = events.len();
        if hurt.is_some() {
            self.incident = hurt;
            self.stop_waiting();
        }
    }

    /// The time of an examination is over: the job is given up for it. Nothing that was queued is done any more.
    pub fn give_up(&mut self) {
        self.queue.clear();
        (self.asked, self.incident) = (None, None);
        self.stop_waiting();
        if let Err(refusal) = self.bench.act(Action::Report(Report::given_up())) {
            self.refused = Some(refusal);
        }
    }

    /// The machine's clock runs, at this speed or because somebody waits.
    pub fn runs(&self, speed: u32) -> bool {
        if let Some(film) = self.film() {
            return !self.is_held_up() && film.runs();
        }
        !self.is_held_up() && !self.view().finished && (speed > 0 || self.wait_ticks > 0)
    }

    /// Lets so many ticks run at once, beside those that run already.
    pub fn wait(&mut self, ticks: u64) {
        if self.film().is_some() {
            self.refused_in_film = true;
        } else {
            self.wait_ticks += ticks;
        }
    }

    /// Lets time run until something comes that ends a wait, two hours at most.
    pub fn wait_until_it_stops(&mut self) {
        if self.film().is_some() {
            self.refused_in_film = true;
            return;
        }
        self.wait_ticks = UNTIL_TICKS;
        self.waits_for_stop = true;
    }

    /// Somebody waits for whatever comes.
    pub fn waits_for_stop(&self) -> bool {
        self.waits_for_stop && self.wait_ticks > 0
    }

    /// Nothing is waited for any more.
    pub fn stop_waiting(&mut self) {
        self.wait_ticks = 0;
        self.waits_for_stop = false;
    }

    /// Where the lid will be once all that is queued is done: true for up.
    pub fn lid_will_be_up(&self) -> bool {
        let moves = self
            .queue
            .iter()
            .rev()
            .find_map(|queued| match queued.action {
                Action::OpenLid => Some(true),
                Action::CloseLid => Some(false),
                _ => None,
            });
        moves.unwrap_or(self.view().machine.lid_open)
    }

    /// Do `action` at the next tick.
    pub fn push(&mut self, action: Action) {
        self.push_aged(action, None);
    }

    /// Do `action` at the next tick, if there is one.
    pub fn queue_some(&mut self, action: Option<Action>) {
        if let Some(action) = action {
            self.push(action);
        }
    }

    /// Do `action`, which the hand did so many ticks before this frame's clock if that is known, as soon as
    /// its rhythm allows.
    pub fn push_aged(&mut self, action: Action, age: Option<i64>) {
        if self.film().is_some() {
            self.refused_in_film = true;
            return;
        }
        self.queue.push_back(Queued {
            action,
            cautioned: false,
            age,
            due: None,
        });
    }

    /// Do what the person was just cautioned about.
    pub fn go_on(&mut self) {
        if let Some((action, _)) = self.asked.take() {
            self.queue.push_front(Queued {
                action,
                cautioned: true,
                age: None,
                due: None,
            });
        }
    }

    /// Leave it.
    pub fn step_back(&mut self) {
        self.asked = None;
    }

    /// Spreads what came within a frame evenly over the `ticks` that the frame is worth: on a slow
    /// machine a frame may hold several turns and presses, and none of them may be lost, run together
    /// or become hastier than the hand was.
    pub fn spread(&mut self, ticks: u64) {
        // Nothing waits from before: a new gesture begins without the old one's lag.
        if self.queue.iter().all(|queued| queued.due.is_none()) && self.rested_for(NEW_GESTURE) {
            self.lag = 0;
        }
        for queued in self.queue.iter_mut().filter(|queued| queued.due.is_none()) {
            if let Some(age) = queued.age {
                let older = age.saturating_sub_unsigned(ticks);
                self.lag = self.lag.max(u64::try_from(older).unwrap_or(0));
                queued.due = Some((self.ticks + self.lag).saturating_add_signed(-older));
            }
        }
        let new = |queued: &&mut Queued| queued.due.is_none() && queued.action.is_gesture();
        let count = self.queue.iter_mut().filter(new).count() as u64;
        for (n, queued) in (1..).zip(self.queue.iter_mut().filter(new)) {
            queued.due = Some(self.ticks + n * ticks / (count + 1));
        }
    }

    /// No turn or press for so many ticks.
    fn rested_for(&self, ticks: u64) -> bool {
        self.last_input
            .is_none_or(|last| self.ticks >= last + ticks)
    }

    /// No hand was at the console for a while: what it does now it does by itself.
    pub fn hands_are_off(&self) -> bool {
        self.rested_for(NEW_GESTURE)
    }

    /// While the clock stands: deeds are done, each in its own time. The console is not worked: a machine that
    /// stands still sees no turn and no press.
    pub fn do_while_paused(&mut self) {
        if self.view().finished {
            self.queue.clear();
        }
        while !self.is_held_up() {
            let Some(next) = self.queue.pop_front() else {
                break;
            };
            match next.action {
                Action::Detent(_) | Action::Down(_) => self.refused_while_paused = true,
                // A button that was pressed before the clock was stopped is let go.
                action => self.do_now(action, next.cautioned),
            }
        }
    }

    /// Does an action, unless its caution has to be answered first.
    fn do_now(&mut self, action: Action, cautioned: bool) {
        if !cautioned && let Some(caution) = self.bench.caution(&action) {
            self.asked = Some((action, caution));
            return;
        }
        if let Err(refusal) = self.bench.act(action) {
            self.refused = Some(refusal);
        }
        self.look_for_incidents();
    }

    /// One tick: what is queued, at most one turn or press of it, then the machine.
    pub fn tick(&mut self) {
        if self.film().is_some() {
            self.ticks += 1;
            self.bench.step();
            return;
        }
        // The machine was handed back: nothing of it is worked on or charged any more.
        if self.view().finished {
            self.queue.clear();
            return;
        }
        while !self.is_held_up() {
            let Some(next) = self.queue.front().cloned() else {
                break;
            };
            let input = next.action.is_gesture();
            let rested = self.rested_for(SHORTEST_PRESS);
            if input && (!rested || next.due.is_some_and(|due| self.ticks < due)) {
                break;
            }
            self.queue.pop_front();
            self.do_now(next.action, next.cautioned);
            if self.asked.is_some() {
                return;
            }
            if input {
                self.last_input = Some(self.ticks);
                break;
            }
        }
        if !self.is_held_up() {
            self.ticks += 1;
            self.bench.step();
        }
    }
}

/// Rest after which what comes next has nothing to do with what was before, ticks.
const NEW_GESTURE: u64 = 400;

/// Shortest time from one turn or press to the next, ticks: longer than a board's debounce.
const SHORTEST_PRESS: u64 = 5;

/// Where jobs come from.
#[derive(Resource)]
pub struct JobSourceRes(pub Box<dyn JobSource>);

/// The sentence in this language.
pub fn say(language: Language, both: &Bilingual) -> &str {
    match language {
        Language::En => &both.en,
        Language::Es => &both.es,
    }
}

/// Where the camera is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum ViewKind {
    /// Console close-up.
    #[default]
    Panel,
    /// The whole machine.
    Machine,
    /// Inside.
    Cabinet,
}

impl ViewKind {
    /// As a guide names it.
    pub fn of_guide(self) -> WindowView {
        match self {
            ViewKind::Panel => WindowView::Console,
            ViewKind::Machine => WindowView::Machine,
            ViewKind::Cabinet => WindowView::Inside,
        }
    }

    /// The one that a guide names so.
    pub fn named_by_guide(view: WindowView) -> ViewKind {
        match view {
            WindowView::Console => ViewKind::Panel,
            WindowView::Machine => ViewKind::Machine,
            WindowView::Inside => ViewKind::Cabinet,
        }
    }
}

/// Screens of the window.
#[derive(States, Clone, Copy, PartialEq, Eq, Debug, Default, Hash)]
pub enum Screen {
    /// Choosing a job.
    #[default]
    Start,
    /// At the bench.
    Bench,
    /// What was practised and what comes next.
    Practice,
    /// In a drill.
    Drill,
    /// At an examination, between its jobs.
    Examination,
    /// Writing a job for others to do.
    Workshop,
    /// Asking for a seat in a class.
    Join,
}

/// Pages of the service sheet.
pub use detent_training::practice::SheetPage as Page;

/// A group of pins to choose from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PinGroup {
    /// Blades of the plug.
    Plug,
    /// Line fuse.
    Fuse,
    /// Bulk capacitor's test points.
    Bulk,
    /// Terminals of a component.
    Load(Part),
    /// Board's side of one of its connectors, by number in the board's list.
    Board(usize),
    /// Harness side of the same.
    Harness(usize),
}

/// A kept attempt on the start screen.
#[derive(Clone, Debug)]
pub struct KeptRow {
    /// Its name.
    pub name: String,
    /// What is in it or why it cannot be used, once read.
    pub read: Option<Result<Kept, StorageError>>,
}

/// The report being written.
#[derive(Clone, Debug)]
pub struct Draft {
    /// What it concludes, once that is chosen.
    pub verdict: Option<Verdict>,
    /// Ids of the causes chosen, with that verdict.
    pub causes: Vec<String>,
    /// Part chosen; none yet, "no part", or a number.
    pub part: Option<Option<String>>,
    /// Readings chosen.
    pub proof: BTreeSet<usize>,
    /// Looks chosen.
    pub looks: BTreeSet<usize>,
    /// What the customer is told.
    pub advice: Advice,
}

impl Draft {
    /// Concludes something that names no cause.
    pub fn conclude(&mut self, verdict: Verdict) {
        self.verdict = Some(verdict);
        self.causes.clear();
    }

    /// Names one more cause, or takes it back if it was named; with none left nothing is concluded yet.
    pub fn toggle(&mut self, cause: &str) {
        let before = self.causes.len();
        self.causes.retain(|named| named != cause);
        if self.causes.len() == before {
            self.causes.push(cause.to_owned());
        }
        self.verdict = (!self.causes.is_empty()).then_some(Verdict::CausesNamed);
    }

    /// The report, once it says all that it must: what was wrong, and which part that took. Who gives a job up
    /// need not say the part.
    pub fn report(&self) -> Option<Report> {
        let verdict = self.verdict?;
        let part = match (&self.part, verdict) {
            (Some(part), _) => part.clone(),
            (None, Verdict::GivenUp) => None,
            (None, Verdict::CausesNamed | Verdict::NothingWrong) => return None,
        };
        Some(Report {
            causes: self.causes.clone(),
            part,
            proof: self.proof.iter().copied().collect(),
            looks: self.looks.iter().copied().collect(),
            advice: self.advice,
            verdict,
        })
    }
}

impl Default for Draft {
    fn default() -> Self {
        Draft {
            verdict: None,
            causes: Vec::new(),
            part: None,
            proof: BTreeSet::new(),
            looks: BTreeSet::new(),
            advice: Advice::None,
        }
    }
}

/// How much a guide tells: less each time, until the job is done alone.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Guidance {
    /// Every step.
    EveryStep,
    /// Every other step; the rest on request.
    EveryOther,
    /// Nothing.
    #[default]
    Nothing,
}

impl Guidance {
    /// How much of the guide this learner has left at a job that was broken off: it fades from one time to the next.
    pub fn left_to(learner: &Learner, file: &str) -> Guidance {
        if learner.passed(file) {
            Guidance::Nothing
        } else if learner.tried(file) {
            Guidance::EveryOther
        } else {
            Guidance::EveryStep
        }
    }

    /// A step is told without a request.
    pub fn tells(self, step: usize) -> bool {
        match self {
            Guidance::EveryStep => true,
            Guidance::EveryOther => step.is_multiple_of(2),
            Guidance::Nothing => false,
        }
    }

    /// What comes next once a job is done so; none after one done alone.
    pub fn next(self) -> Option<Guidance> {
        match self {
            Guidance::EveryStep => Some(Guidance::EveryOther),
            Guidance::EveryOther => Some(Guidance::Nothing),
            Guidance::Nothing => None,
        }
    }
}

/// What the bench needs to know of the examination that its job belongs to.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Examined {
    /// The job, by its scenario's file name without folder and ending.
    pub job: String,
    /// When the time is over.
    pub until: Moment,
    /// The pages of the service sheet that lie on the bench.
    pub sheet: Vec<Page>,
}

/// What the coach says of a finished job.
#[derive(Clone, Debug, PartialEq)]
pub struct Coached {
    /// The one thing to work on.
    pub advice: CoachAdvice,
    /// Title of the job that trains it, if a job does.
    pub title: Option<Bilingual>,
}

/// Where somebody goes on to from a finished job.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Onward {
    /// This drill or job.
    Exercise(Exercise),
    /// The job after it on offer, to be chosen on the start screen.
    NextJob,
    /// The same attempt once more, to be watched.
    WatchAgain,
}

/// All texts in the present language.
#[derive(Resource)]
pub struct TextsRes(pub Texts);

/// Labor that a quote begins with, min.
const QUOTED_MIN: u16 = 60;

/// The longest wait for the machine to come to an end or to stop, ticks: two hours.
const UNTIL_TICKS: u64 = 720_000;

/// How long a message stands on the bench, s.
pub const MESSAGE_S: f32 = 6.0;

/// Variants of one job, as many as are wanted.
pub struct VariantList {
    /// The job on offer that they are like.
    pub offer: usize,
    /// What they are drawn from.
    pub seed: u64,
    /// How many are wanted.
    pub count: usize,
    /// Those that were proved so far.
    pub drawn: Vec<JobVariant>,
    /// No further one could be proved.
    pub exhausted: bool,
    /// Why none can be drawn.
    pub error: Option<OpenError>,
    /// Where the next one comes from, while it is not on its way.
    series: Option<VariantSeries>,
    /// The next one on its way.
    pub drawing: Option<Background<Result<DrawnVariant, OpenError>>>,
}

impl VariantList {
    /// So many of this job.
    pub fn new(offer: usize, seed: u64, count: usize) -> VariantList {
        VariantList {
            offer,
            seed,
            count,
            drawn: Vec::new(),
            exhausted: false,
            error: None,
            series: None,
            drawing: None,
        }
    }

    /// Once a frame: takes in what is drawn and goes on to the next. Whether something is on its way.
    pub fn go_on(&mut self, jobs: &dyn JobSource) -> bool {
        if let Some(drawing) = &mut self.drawing {
            drawing.go_on();
        }
        match self.drawing.take() {
            Some(Background::Done(Ok((series, next)))) => {
                self.series = Some(series);
                self.exhausted = next.is_none();
                self.drawn.extend(next);
            }
            Some(Background::Done(Err(error))) => self.error = Some(error),
            running => self.drawing = running,
        }
        let over = self.exhausted || self.error.is_some() || self.drawn.len() >= self.count;
        if self.drawing.is_none() && !over {
            let next = jobs.draw_variant(self.offer, self.seed, self.series.take());
            self.drawing = Some(Background::begin(next));
        }
        self.drawing.is_some()
    }

    /// Drafts that were refused before the last one that was proved.
    pub fn refused(&self) -> u64 {
        let drafts = self.drawn.last().map_or(0, |variant| variant.number + 1);
        drafts - self.drawn.len() as u64
    }
}

/// A page of the settings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SettingsPage {
    /// Which key does what.
    #[default]
    Keys,
    /// Hands, motion and the size of text.
    Display,
}

/// What the panels remember.
#[derive(Resource)]
pub struct UiState {
    /// Language.
    pub language: Language,
    /// Camera.
    pub view: ViewKind,
    /// The machine is drawn flat instead of as a scene.
    pub flat: bool,
    /// The processor draws the window, so that there is no scene.
    pub software: bool,
    /// Right tab.
    pub tab: Tab,
    /// Time runs this many times as fast.
    pub speed: u32,
    /// Why the clock was paused without a hand, until it runs again.
    pub stopped: Option<Stop>,
    /// Side panels hidden.
    pub hidden: bool,
    /// There is room for one thing at a time.
    pub one_at_a_time: bool,
    /// Page of the service sheet.
    pub page: Page,
    /// Pins shown at the meter.
    pub pin_group: PinGroup,
    /// The pointer is over a window or a menu, not over the scene.
    pub covered: bool,
    /// Keys are for a text field or an open list, not for the machine. A button that has the focus leaves them
    /// to the machine, but for Tab, Enter and the space bar.
    pub typing: bool,
    /// Back to where this job was begun, please.
    pub leave: bool,
    /// Variants of a job are looked at.
    pub variants: Option<VariantList>,
    /// Whoever is here for the first time wants to see everything that there is.
    pub everything: bool,
    /// The screen from which this job was begun.
    pub leads_back_to: Screen,
    /// On to the practice screen, please.
    pub practise: bool,
    /// On to the examination, please.
    pub examine: bool,
    /// On to the workshop, please.
    pub write: bool,
    /// The job at the bench is done under examination.
    pub examined: Option<Examined>,
    /// The job that is being set up, by its scenario's file name without folder and ending, where it is one of the class.
    pub opening_class_job: Option<String>,
    /// The same of the job at the bench.
    pub class_job: Option<String>,
    /// The attempt at the bench is of the class.
    pub of_class: bool,
    /// What the job at the bench is worth is kept back until the class is closed.
    pub sealed: bool,
    /// Closing the set was asked for once.
    pub closing: bool,
    /// What the coach says, once the job is finished.
    pub coached: Option<Coached>,
    /// On from this job, please.
    pub onward: Option<Onward>,
    /// Benches that were opened so far: each begins at the top of every page.
    pub visit: u32,
    /// The job on the start screen that was last scrolled to.
    pub offer_seen: Option<usize>,
    /// What is looked for among the codes of the sheet.
    pub code_search: String,
    /// The code that was chosen in the index, until it is scrolled to.
    pub code_wanted: Option<u8>,
    /// What is looked for among the causes.
    pub cause_search: String,
    /// What is looked for among the parts.
    pub part_search: String,
    /// Looks whose findings were shown.
    pub looks_seen: usize,
    /// Keys and other settings are shown.
    pub keys: bool,
    /// What the lamps showed since the job was opened.
    pub lamps: LampWatch,
    /// The console's button that has the focus: the space bar presses it.
    pub focused_button: Option<Button>,
    /// The button that the space bar holds down.
    pub focused_press: Option<Button>,
    /// A button that reading software presses.
    pub tapped: Option<Tapped>,
    /// What the learner who is there prefers.
    pub preferences: Preferences,
    /// Which key does what, by that.
    pub key_bindings: KeyBindings,
    /// The action that waits for its new key.
    pub rebinding: Option<KeyAction>,
    /// A key that was asked for, and what it does already.
    pub key_taken: Option<(KeyPlace, KeyTaken)>,
    /// Page of the settings.
    pub settings_page: SettingsPage,
    /// Where there is room for one panel: the ticket is it, not a tab.
    pub ticket_in_front: bool,
    /// Component chosen in the cabinet.
    pub selected: Option<Part>,
    /// Hands on the buttons.
    pub held: HeldButtons,
    /// Meter knob.
    pub mode: MeterMode,
    /// How the probes are kept on their pins.
    pub grip: Grip,
    /// The pin for the red probe.
    pub red: Option<Pin>,
    /// Pin for the black probe.
    pub black: Option<Pin>,
    /// The next pin clicked goes to the red probe.
    pub red_next: bool,
    /// The quote being made.
    pub quoted: Quote,
    /// Digits being noted.
    pub digits: [u8; 2],
    /// Report.
    pub draft: Draft,
    /// Attempts that are kept, read when they are first shown; none when it is time to look again.
    pub kept: Option<Vec<KeptRow>>,
    /// The start screen shows them, not the jobs.
    pub content_library: bool,
    /// The attempt about to be deleted, once more asked for.
    pub deleting: Option<String>,
    /// The library that is open.
    pub library: LibraryUiState,
    /// Offer chosen on the start screen.
    pub offer: usize,
    /// Seed as typed.
    pub seed: String,
    /// A message to show, and when it came (s of window time).
    pub message: Option<(String, f32)>,
    /// A bench being set up; the screen waits for it.
    pub opening: Option<Background<Result<Box<dyn BenchPort>, OpenError>>>,
    /// Rectangle left for the scene, points: min and max.
    pub stage: Rect,
    /// How much the job's guide tells, where it has one.
    pub guidance: Guidance,
    /// The step that was told on request, where it was left open.
    pub told: Option<usize>,
    /// What is still to be shown of a step, line by line.
    pub showing: VecDeque<ScriptStep>,
    /// Beside a film both ways through its job are shown, not the machine.
    pub film_ways: bool,
    /// Where a film that is opened stands still, for a picture of it.
    pub shown_film: Option<ShownFilm>,
}

impl UiState {
    /// No help is given with the job at the bench, and what it is worth is kept back: an examination, of one's own or of a
    /// class, is open.
    pub fn is_under_examination(&self) -> bool {
        self.examined.is_some() || self.sealed
    }

    /// Begins to set a bench up.
    pub fn open(&mut self, work: OpeningWork) {
        self.opening = Some(Background::begin(work));
    }

    /// The bench that was being set up, once it is ready, or why it is not.
    pub fn opened(&mut self) -> Option<Result<Box<dyn BenchPort>, OpenError>> {
        self.opening.as_mut()?.go_on();
        match self.opening.take()? {
            Background::Done(opened) => Some(opened),
            running @ Background::Running(_) => {
                self.opening = Some(running);
                None
            }
        }
    }

    /// Looks at the machine from there, in front of everything where there is room for one thing.
    pub fn show_view(&mut self, view: ViewKind) {
        self.view = view;
        self.hidden |= self.one_at_a_time;
    }

    /// Opens a tab, in front of machine and ticket where there is room for one of them.
    pub fn open_tab(&mut self, tab: Tab) {
        self.tab = tab;
        self.hidden = false;
        self.ticket_in_front = false;
    }

    /// Puts the probe whose turn it is on a pin; the other is next.
    pub fn put_probe(&mut self, pin: Pin) {
        if self.red_next {
            self.red = Some(pin);
        } else {
            self.black = Some(pin);
        }
        self.red_next = !self.red_next;
    }
}

impl Default for UiState {
    fn default() -> Self {
        UiState {
            language: Language::En,
            view: ViewKind::Machine,
            flat: false,
            software: false,
            tab: Tab::Sheet,
            speed: 1,
            stopped: None,
            hidden: false,
            one_at_a_time: false,
            page: Page::Entry,
            pin_group: PinGroup::Bulk,
            covered: false,
            typing: false,
            leave: false,
            leads_back_to: Screen::Start,
            coached: None,
            onward: None,
            variants: None,
            everything: false,
            practise: false,
            examine: false,
            write: false,
            examined: None,
            opening_class_job: None,
            class_job: None,
            of_class: false,
            sealed: false,
            closing: false,
            visit: 0,
            offer_seen: None,
            code_search: String::new(),
            code_wanted: None,
            cause_search: String::new(),
            part_search: String::new(),
            looks_seen: 0,
            keys: false,
            lamps: LampWatch::default(),
            focused_button: None,
            focused_press: None,
            tapped: None,
            preferences: Preferences::default(),
            key_bindings: KeyBindings::default(),
            rebinding: None,
            key_taken: None,
            settings_page: SettingsPage::default(),
            ticket_in_front: true,
            selected: None,
            held: HeldButtons::default(),
            mode: MeterMode::Ohms,
            grip: Grip::Clips,
            red: None,
            black: None,
            red_next: true,
            quoted: Quote {
                parts: Vec::new(),
                minutes: QUOTED_MIN,
            },
            digits: [0, 0],
            draft: Draft::default(),
            kept: None,
            content_library: false,
            deleting: None,
            library: LibraryUiState::default(),
            offer: 0,
            seed: String::new(),
            message: None,
            opening: None,
            stage: Rect::new(0.0, 0.0, 1280.0, 720.0),
            guidance: Guidance::Nothing,
            told: None,
            showing: VecDeque::new(),
            film_ways: false,
            shown_film: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo::DemoBench;
    use detent_simulation::interface::{Button, Direction};

    /// When each of the queued turns is done, ticks from now.
    fn times(bench: &mut BenchRes, ticks: u64) -> Vec<u64> {
        let mut times = Vec::new();
        for tick in 0..ticks {
            let before = bench.queue.len();
            bench.tick();
            times.extend(std::iter::repeat_n(tick, before - bench.queue.len()));
        }
        times
    }

    #[test]
    fn turns_of_one_frame_are_spread_over_it_and_leave_nothing_behind() {
        let mut bench = BenchRes::new(Box::new(DemoBench::new()));
        for _ in 0..3 {
            bench.push(Action::Detent(Direction::Left));
        }
        bench.spread(100);
        assert_eq!(times(&mut bench, 100), [25, 50, 75]);
        // The next frame is short: its turn is not hurried by the frame before.
        bench.push(Action::Detent(Direction::Right));
        bench.spread(30);
        assert_eq!(times(&mut bench, 30), [15]);
    }

    #[test]
    fn turns_whose_age_is_known_keep_their_rhythm_however_late_they_come() {
        let mut bench = BenchRes::new(Box::new(DemoBench::new()));
        // A frame of 2 ticks brings what the hand did 60, 40 and 20 ticks ago.
        for age in [60, 40, 20] {
            bench.push_aged(Action::Detent(Direction::Left), Some(age));
        }
        bench.spread(2);
        assert_eq!(times(&mut bench, 2), [0]);
        bench.push_aged(Action::Detent(Direction::Left), Some(10));
        bench.spread(50);
        assert_eq!(times(&mut bench, 110), [18, 38, 98]);
    }

    #[test]
    fn what_came_after_the_frame_began_waits_for_its_place_in_the_next() {
        let mut bench = BenchRes::new(Box::new(DemoBench::new()));
        // The clock trails by a frame: a short one brings what the hand did 30 ticks after its end.
        bench.push_aged(Action::Down(Button::Start), Some(-30));
        bench.spread(2);
        assert!(times(&mut bench, 2).is_empty());
        // The long one that follows brings the end of a press of 170 ticks.
        bench.push_aged(Action::Up(Button::Start), Some(-20));
        bench.spread(180);
        assert_eq!(times(&mut bench, 180), [30]);
        bench.spread(40);
        assert_eq!(times(&mut bench, 40), [20]);
    }

    #[test]
    fn turns_never_run_together() {
        let mut bench = BenchRes::new(Box::new(DemoBench::new()));
        for _ in 0..5 {
            bench.push(Action::Detent(Direction::Left));
        }
        bench.spread(2);
        assert_eq!(times(&mut bench, 25), [0, 5, 10, 15, 20]);
    }
}
