//! A question of any drill and an answer as it was given, so that whoever was not there can mark it again.

use super::{
    SuppliedBoard, SuppliedBoardId, entry, lamps, look_up, meter, next_test, part, proof, safe_work,
};
use crate::practice::Skill;
use crate::reason::evidence::Table;
use crate::record::Timed;
use crate::slices;
use detent_simulation::controller::Board;
use detent_simulation::interface::Component;
use detent_simulation::units::{Span, Time};
use serde::{Deserialize, Serialize};

/// Most deeds of one try at a gesture that are kept. Ours: a try has some twenty.
pub const MOST_DEEDS: usize = 1_000;
/// Latest end of a try at a gesture. Ours: whoever sits before one for hours has left.
const LATEST_END: Time = Time(Span::from_s(4 * 60 * 60).0);

/// What questions are drawn from. From the same source and the same seed comes the same question.
pub trait QuestionSource {
    /// Boards at the supplies that they are made for.
    fn supplied_boards(&self) -> &[SuppliedBoard<'_>];
    /// Boards that the course teaches to read, in its order.
    fn course(&self) -> &[&Board];
    /// What every fault shows on a board at its supply, where that is known.
    fn table(&self, place: &SuppliedBoardId) -> Option<&Table>;
}

/// A question.
#[derive(Clone, Debug, PartialEq)]
pub enum Task {
    /// Reading lamps.
    Lamps(lamps::LampReadingTask),
    /// Entry timing.
    Entry(entry::EntryTask),
    /// Meter.
    Meter(meter::MeterTask),
    /// Look-up.
    LookUp(look_up::CodeLookUpTask),
    /// Next test.
    NextTest(next_test::NextTestTask),
    /// Part.
    Part(part::PartChoiceTask),
    /// Safe work.
    SafeWork(Box<safe_work::SafeWorkTask>),
    /// Proof.
    Proof(proof::ProofTask),
}

/// An answer as it was given. Places are counted from 0.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Given {
    /// The number read off lamps, 0 to 99.
    Number(u8),
    /// What a hand did at a gesture, and the moment at which the try was over.
    Hand {
        /// What it did, in order.
        deeds: Vec<Timed>,
        /// When the try was over.
        until: Time,
    },
    /// The rows at the meter.
    Meter(meter::Given),
    /// Components that were ticked.
    Components(Vec<Component>),
    /// One of the options, by its place.
    Choice(usize),
    /// Places among the choices, in order.
    Places(Vec<usize>),
    /// Something that is too long to be kept; it counts as wrong.
    TooLong,
}

impl Given {
    /// What a hand did until the try was over.
    pub fn hand(deeds: Vec<Timed>, until: Time) -> Given {
        match deeds.len() <= MOST_DEEDS && until <= LATEST_END {
            true => Given::Hand { deeds, until },
            false => Given::TooLong,
        }
    }
}

/// No place twice, and none that is not there.
fn are_places(places: &[usize], choices: usize) -> bool {
    let mut seen = vec![false; choices];
    places.iter().all(|place| {
        let seen = seen.get_mut(*place);
        seen.is_some_and(|seen| !std::mem::replace(seen, true))
    })
}

impl Task {
    /// Draws the question of a round that follows `asked` others; none where there is nothing to ask from.
    pub fn first(
        skill: Skill,
        source: &dyn QuestionSource,
        asked: usize,
        seed: u64,
    ) -> Option<Task> {
        let boards = source.supplied_boards();
        if boards.is_empty() {
            return None;
        }
        let table = |place: &SuppliedBoardId| source.table(place);
        Some(match skill {
            Skill::LampReading => Task::Lamps(lamps::ask(boards, source.course(), asked, seed)),
            Skill::EntryTiming => Task::Entry(entry::ask(boards, seed)),
            Skill::Metering => Task::Meter(meter::ask(boards, seed)),
            Skill::CodeLookUp => Task::LookUp(look_up::ask(boards, seed)),
            Skill::NextTest => Task::NextTest(next_test::ask(boards, table, seed)?),
            Skill::PartChoice => Task::Part(part::ask(boards, seed)),
            Skill::SafeWork => Task::SafeWork(Box::new(safe_work::ask(boards, seed))),
            Skill::Proof => Task::Proof(proof::ask(boards, table, seed)),
        })
    }

    /// Draws the next question of the same round. A gesture stays the same, so that the hand can find its rhythm.
    pub fn next(&self, source: &dyn QuestionSource, asked: usize, seed: u64) -> Option<Task> {
        match self {
            Task::Entry(task) => Some(Task::Entry(task.again(seed))),
            Task::Lamps(_)
            | Task::Meter(_)
            | Task::LookUp(_)
            | Task::NextTest(_)
            | Task::Part(_)
            | Task::SafeWork(_)
            | Task::Proof(_) => Task::first(self.skill(), source, asked, seed),
        }
    }

    /// The skill that it is about.
    pub const fn skill(&self) -> Skill {
        match self {
            Task::Lamps(_) => Skill::LampReading,
            Task::Entry(_) => Skill::EntryTiming,
            Task::Meter(_) => Skill::Metering,
            Task::LookUp(_) => Skill::CodeLookUp,
            Task::NextTest(_) => Skill::NextTest,
            Task::Part(_) => Skill::PartChoice,
            Task::SafeWork(_) => Skill::SafeWork,
            Task::Proof(_) => Skill::Proof,
        }
    }

    /// Whether this answer is right, in slices: a hand is followed on a bench. None where it is no answer to this
    /// question.
    pub async fn mark_in_slices(&self, source: &dyn QuestionSource, given: &Given) -> Option<bool> {
        match (self, given) {
            (_, Given::TooLong) => Some(false),
            (Task::Lamps(task), Given::Number(read)) => {
                (*read <= 99).then(|| lamps::mark(task, *read).right)
            }
            (Task::Entry(task), Given::Hand { deeds, until }) => {
                followed(task, source.supplied_boards(), deeds, *until).await
            }
            (Task::Meter(task), Given::Meter(given)) => {
                (given.range < task.ranges.len()).then(|| meter::mark(task, *given).right)
            }
            (Task::LookUp(task), Given::Components(ticked)) => {
                let place = |one: &Component| task.options.iter().position(|c| c == one);
                let places: Option<Vec<usize>> = ticked.iter().map(place).collect();
                let is_one = !ticked.is_empty() && are_places(&places?, task.options.len());
                is_one.then(|| look_up::mark(task, ticked).right)
            }
            (Task::NextTest(task), Given::Choice(chosen)) => {
                (*chosen < task.options.len()).then(|| next_test::mark(task, *chosen).right)
            }
            (Task::Part(task), Given::Choice(chosen)) => {
                (*chosen < task.options.len()).then(|| part::mark(task, *chosen).right)
            }
            (Task::Proof(task), Given::Choice(chosen)) => {
                (*chosen < task.choices()).then(|| proof::mark(task, *chosen).right)
            }
            (Task::SafeWork(task), Given::Places(places)) => {
                let is_one = places.len() == task.wanted() && are_places(places, task.choices());
                is_one.then(|| safe_work::mark(task, places).right())
            }
            (
                Task::Lamps(_)
                | Task::Entry(_)
                | Task::Meter(_)
                | Task::LookUp(_)
                | Task::NextTest(_)
                | Task::Part(_)
                | Task::Proof(_)
                | Task::SafeWork(_),
                Given::Number(_)
                | Given::Hand { .. }
                | Given::Meter(_)
                | Given::Components(_)
                | Given::Choice(_)
                | Given::Places(_),
            ) => None,
        }
    }
}

/// Does again what a hand did, on a bench of the task; whether service mode was entered. None where that cannot be done
/// as it is told, or no try was over then.
async fn followed(
    task: &entry::EntryTask,
    supplied_boards: &[SuppliedBoard<'_>],
    deeds: &[Timed],
    until: Time,
) -> Option<bool> {
    let mut boards = supplied_boards.iter();
    let board = boards.find(|board| board.place() == task.place)?;
    if deeds.len() > MOST_DEEDS || until > LATEST_END {
        return None;
    }
    let mut bench = task.bench(board);
    for deed in deeds {
        if deed.at < bench.now() || deed.at > until {
            return None;
        }
        let wait = deed.at.since(bench.now());
        slices::wait(&mut bench, wait).await;
        bench.act(&deed.action).ok()?;
    }
    if until < bench.now() {
        return None;
    }
    let wait = until.since(bench.now());
    slices::wait(&mut bench, wait).await;
    let marked = task.mark(bench.machine().tries(), bench.history().iter())?;
    Some(marked.right)
}
