//! The learner's side of a class: the seat, what is sent, and what the class changes at the bench.
//!
//! Everything that is done is kept first where it is kept anyway; what of it is the class's is then sent from there, by
//! a [`Driver`] that knows no clock, file or network.

pub mod address;
pub mod drills;
pub mod driver;
mod http;
pub mod jobs;
pub mod kept;
pub mod shown;
#[cfg(test)]
mod tests;

use super::attempts::{Attempts, StorageError, read_text, whole_name};
use super::film::Film;
use super::port::SealedJob;
use super::practice::{LearnerRes, now};
use super::rest::NextFrame;
use super::state::{BenchRes, JobSourceRes, Screen, UiState};
use address::ServerAddress;
use bevy::platform::time::Instant;
use bevy::prelude::*;
use bevy::window::PrimaryWindow;
#[cfg(not(target_family = "wasm"))]
use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};
use bevy_egui::EguiPostUpdateSet;
use detent_class_protocol::{
    AttemptId, ClassDrill, Digest, JoinCode, JoinRequest, PROTOCOL_VERSION, Standing,
    sealed_scenario_file,
};
use detent_training::lesson::Score;
use detent_training::practice::answers_of_job;
use driver::{Answer, Driver, Failure, JoinProblem};
use http::{Http, Transport};
use kept::{ClassStore, Seat};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

/// The class that this window belongs to, if it belongs to one.
#[derive(Resource, Default)]
pub struct ClassRes {
    /// The way to its server.
    pub link: Option<ClassLink>,
    /// What the panels remember.
    pub desk: ClassDesk,
    /// A drill that is to be begun now, or gone on with.
    pub to_begin: Option<ClassDrill>,
    /// Results that are kept back until the class is closed: the job's file, its score, and the machine time that it
    /// took, s.
    kept_back: Vec<(String, Score, f64)>,
    /// The sealed jobs that the jobs on offer know of: how many, and for which seat.
    handed_over: (usize, Option<Seat>),
    /// The attempt at the bench, and its deeds that the driver knows of.
    noted: Option<(String, usize)>,
}

/// What the panels remember of the class.
#[derive(Default)]
pub struct ClassDesk {
    /// The code as typed.
    pub code: String,
    /// The name as typed.
    pub name: String,
    /// There is a word from the teacher.
    pub has_word: bool,
    /// It, as typed.
    pub word: String,
    /// What was typed cannot be a code, or a name.
    pub mistake: Option<JoinMistake>,
    /// Whoever is here wants to go on without the class for now.
    pub without: bool,
    /// Leaving the seat was asked for once.
    pub leaving: bool,
}

/// What is wrong with what was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JoinMistake {
    /// It is no code.
    Code,
    /// It is no name.
    Name,
}

/// An answer that may have come in.
type Waiting = Arc<Mutex<Option<Result<Answer, Failure>>>>;

/// The way to a class's server.
pub struct ClassLink {
    /// Where it is.
    pub address: ServerAddress,
    /// Where the seat is kept, if it is.
    store: Option<Box<dyn ClassStore>>,
    /// What carries questions, if anything does.
    transport: Option<Box<dyn Transport>>,
    /// What is asked and what came of it.
    pub driver: Driver,
    /// Where the answer to the question that is on its way comes in.
    waiting: Option<Waiting>,
    /// Digest of the content here.
    content: Digest,
    /// Why the seat is not kept, since that went wrong.
    pub storage_error: Option<StorageError>,
}

impl ClassLink {
    /// To the server at this address, with what was kept of its class.
    fn new(
        address: ServerAddress,
        store: Option<Box<dyn ClassStore>>,
        transport: Box<dyn Transport>,
        content: Digest,
    ) -> ClassLink {
        let kept = store.as_ref().and_then(|store| store.read(&address));
        ClassLink {
            address,
            store,
            transport: Some(transport),
            driver: Driver::new(kept.unwrap_or_default()),
            waiting: None,
            content,
            storage_error: None,
        }
    }

    /// The class is made with other content than there is here.
    pub fn differs_in_content(&self) -> bool {
        let view = self.driver.view();
        view.is_some_and(|view| view.content != self.content)
    }

    /// Keeps what is new of the seat.
    fn keep(&mut self) {
        if let Some(kept) = self.driver.take_to_keep()
            && let Some(store) = &self.store
        {
            self.storage_error = store.keep(&self.address, kept).err();
        }
    }
}

impl ClassRes {
    /// The seat is asked for: the screen for that comes before all others.
    pub fn wants_seat(&self) -> bool {
        let link = self.link.as_ref();
        link.is_some_and(|link| !link.driver.has_seat()) && !self.desk.without
    }

    /// The way to the class in which a seat is taken.
    pub fn joined(&self) -> Option<&ClassLink> {
        self.link.as_ref().filter(|link| link.driver.has_seat())
    }

    /// Where the class stands now.
    pub fn standing(&self) -> Option<Standing> {
        self.link.as_ref()?.driver.standing(since_start())
    }

    /// An examination of the class is open, so that nothing else is done here.
    pub fn is_examination(&self) -> bool {
        (self.joined()).is_some_and(|link| link.driver.kept().is_sealed())
    }

    /// Asks for a seat with what was typed, unless that cannot be right.
    pub fn ask_for_seat(&mut self) {
        let desk = &mut self.desk;
        let name = desk.name.trim();
        desk.mistake = if desk.code.parse::<JoinCode>().is_err() {
            Some(JoinMistake::Code)
        } else if !name.chars().any(char::is_alphabetic) {
            Some(JoinMistake::Name)
        } else {
            None
        };
        let Some(link) = self.link.as_mut().filter(|_| desk.mistake.is_none()) else {
            return;
        };
        let word = Some(desk.word.trim()).filter(|word| desk.has_word && !word.is_empty());
        let request = JoinRequest {
            protocol: PROTOCOL_VERSION,
            code: desk.code.trim().to_owned(),
            name: name.to_owned(),
            word: word.map(str::to_owned),
        };
        link.driver.join(request, since_start());
    }

    /// Leaves the seat, so that another can be taken.
    pub fn leave(&mut self) {
        if let Some(link) = &mut self.link {
            link.driver.leave();
            link.waiting = None;
            link.keep();
        }
        self.desk = ClassDesk::default();
    }

    /// The content here is another one from now on, with this digest.
    pub fn know_content(&mut self, digest: [u8; 32]) {
        if let Some(link) = &mut self.link {
            link.content = Digest::of_bytes(digest);
        }
    }

    /// Keeps the result of a job back until the class is closed.
    pub fn keep_back(&mut self, result: (String, Score, f64)) {
        self.kept_back.push(result);
    }
}

/// The driver's clock.
fn since_start() -> Duration {
    static START: std::sync::OnceLock<Instant> = std::sync::OnceLock::new();
    START.get_or_init(Instant::now).elapsed()
}

/// Joins the class whose server is at this address: with the seat that was kept, else by asking for one.
pub fn join(app: &mut App, address: ServerAddress, store: Option<Box<dyn ClassStore>>) {
    let content = app.world().resource::<JobSourceRes>().0.content_digest();
    let link = ClassLink::new(address, store, Box::new(Http), Digest::of_bytes(content));
    let mut class = app.world_mut().resource_mut::<ClassRes>();
    class.link = Some(link);
    if class.wants_seat() {
        let mut next = app.world_mut().resource_mut::<NextState<Screen>>();
        next.set(Screen::Join);
    }
}

/// A number that nobody can foresee; all noughts where the system has none.
fn drawn<const N: usize>() -> [u8; N] {
    let mut bytes = [0; N];
    // Without a source two attempts would have one name, which the server refuses and tells.
    let _ = getrandom::fill(&mut bytes);
    bytes
}

/// What wakes the window when an answer is there.
#[cfg(not(target_family = "wasm"))]
type Waker<'a> = Option<Res<'a, EventLoopProxyWrapper>>;

/// Asks what is to be asked, and takes answers in.
fn exchange(
    mut class: ResMut<ClassRes>,
    jobs: Res<JobSourceRes>,
    windows: Query<&Window, With<PrimaryWindow>>,
    (screen, mut to): (Res<State<Screen>>, ResMut<NextState<Screen>>),
    mut next: ResMut<NextFrame>,
    #[cfg(not(target_family = "wasm"))] proxy: Waker<'_>,
) {
    let Some(link) = &mut class.link else {
        return;
    };
    let now = since_start();
    let arrived = link.waiting.as_ref().and_then(|waiting| {
        waiting
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take()
    });
    if let Some(answer) = arrived {
        link.waiting = None;
        let [draw] = drawn::<1>();
        let seen = windows.iter().all(|window| window.focused);
        let draw = f64::from(draw) / f64::from(u8::MAX);
        link.driver.answered(now, answer, (draw, seen));
        // What it says is seen through.
        next.settle();
    }
    let attempts = jobs.0.attempts();
    let elsewhere = attempts.and_then(Attempts::storage_error) == Some(StorageError::Elsewhere);
    let transport = link.transport.as_ref().filter(|_| !elsewhere);
    if let Some(transport) = transport {
        let mut read = |name: &str| text_of(attempts?, name);
        if let Some((token, question)) = link.driver.next(now, &mut read) {
            let waiting = Waiting::default();
            link.waiting = Some(Arc::clone(&waiting));
            #[cfg(not(target_family = "wasm"))]
            let proxy = proxy.map(|proxy| (**proxy).clone());
            let on_answer = move |answer| {
                *waiting.lock().unwrap_or_else(PoisonError::into_inner) = Some(answer);
                // A window that is closed has nothing left to show.
                #[cfg(not(target_family = "wasm"))]
                if let Some(proxy) = proxy {
                    let _ = proxy.send_event(WinitUserEvent::WakeUp);
                }
                #[cfg(target_family = "wasm")]
                super::web::wake();
            };
            transport.ask(&link.address, token, question, Box::new(on_answer));
        }
        if let Some(due) = link.driver.due_in(now) {
            next.wake_in(due);
        }
    }
    link.keep();
    let lost = link.driver.problem() == Some(&JoinProblem::SeatLost);
    if lost {
        class.desk.without = false;
    }
    match screen.get() {
        Screen::Start if class.wants_seat() => to.set(Screen::Join),
        Screen::Join if !class.wants_seat() => to.set(Screen::Start),
        Screen::Start
        | Screen::Join
        | Screen::Bench
        | Screen::Practice
        | Screen::Drill
        | Screen::Examination
        | Screen::Workshop => {}
    }
}

/// Hands the scenarios of sealed jobs to where jobs are opened.
fn hand_over_sealed_jobs(mut class: ResMut<ClassRes>, mut jobs: ResMut<JobSourceRes>) {
    let Some(link) = &class.link else {
        return;
    };
    let kept = link.driver.kept();
    let (count, seat) = &class.handed_over;
    let same_seat = match seat {
        Some(seat) => kept.sits_in(seat),
        None => !link.driver.has_seat(),
    };
    if *count == kept.sealed_jobs.len() && same_seat {
        return;
    }
    let there = (kept.sealed_jobs.len(), kept.seat());
    let scenarios = kept.sealed_scenarios();
    let scenarios = scenarios.into_iter().map(|(job, scenario)| SealedJob {
        file: sealed_scenario_file(job),
        text: scenario.text,
        seed: scenario.seed,
    });
    jobs.0.take_in_sealed(scenarios.collect());
    class.handed_over = there;
}

/// The whole text of an attempt, finished or not.
fn text_of(attempts: &dyn Attempts, name: &str) -> Option<String> {
    String::from_utf8(read_text(attempts, name).ok()?).ok()
}

/// What the class changes at the bench, and what is done there that is the class's.
fn note_work(
    mut class: ResMut<ClassRes>,
    mut bench: ResMut<BenchRes>,
    mut ui_state: ResMut<UiState>,
    mut learner: ResMut<LearnerRes>,
    screen: Res<State<Screen>>,
) {
    let at_bench = matches!(screen.get(), Screen::Bench | Screen::Drill);
    let paused = at_bench && class.standing() == Some(Standing::Paused);
    if bench.class_paused != paused {
        bench.class_paused = paused;
    }
    let sealed_now = class.is_examination();
    let class = &mut *class;
    if !sealed_now {
        for (file, score, took_s) in class.kept_back.drain(..) {
            for answer in answers_of_job(&file, &score, now(), took_s) {
                learner.note(answer);
            }
        }
    }
    let Some(link) = &mut class.link else {
        return;
    };
    let name = bench.kept_as();
    let deeds = bench.history().len();
    if let (Some(job), Some(name)) = (&ui_state.class_job, &name)
        && !link.driver.has(name)
    {
        let made_with = (env!("CARGO_PKG_VERSION"), link.content);
        link.driver
            .begin(name, AttemptId::of_bytes(drawn()), job, made_with);
    }
    let name = name.filter(|name| link.driver.has(name));
    let sealed = match &name {
        Some(name) => link.driver.seals(name),
        None => {
            let watched = bench.film().map(Film::name);
            let watched = watched.is_some_and(|name| link.driver.seals(name));
            watched || (ui_state.class_job.is_some() && sealed_now)
        }
    };
    if ui_state.sealed != sealed {
        ui_state.sealed = sealed;
    }
    let of_class = name.is_some() || ui_state.class_job.is_some();
    if ui_state.of_class != of_class {
        ui_state.of_class = of_class;
    }
    let now = name.map(|name| (whole_name(&name).to_owned(), deeds));
    if let Some((name, deeds)) = &now {
        let before = class.noted.as_ref().filter(|(noted, _)| noted == name);
        let new = before.map_or(0, |(_, noted)| deeds.saturating_sub(*noted));
        if new > 0 {
            link.driver.note_deeds(name, new);
        }
    }
    class.noted = now;
}

/// The class.
pub fn plugin(app: &mut App) {
    app.init_resource::<ClassRes>()
        // In the frame of a deed: whoever ends the program right after the first one finds the attempt to be the class's.
        .add_systems(
            PostUpdate,
            (
                drills::begin_round,
                drills::keep_round,
                note_work,
                exchange,
                hand_over_sealed_jobs,
            )
                .chain()
                .after(EguiPostUpdateSet::EndPass),
        );
}
