//! One question of a drill, what was given in answer so far, and its judgement.

use super::bench::DrillBench;
use crate::hands::HeldButtons;
use crate::state::BenchRes;
use detent_simulation::interface::Component;
use detent_simulation::units::{TICKS_PER_S, Time};
use detent_training::bench::MeterMode;
use detent_training::bench::script::{ScriptStep, entry_steps};
use detent_training::practice::Detail;
use detent_training::practice::drill::{
    Given, SuppliedBoard, Task, entry, hazard, lamps, look_up, meter, next_test, part, proof,
    safe_work,
};
use detent_training::record::Timed;

/// A task, what was given, and the judgement once there is one.
pub struct Question<T, G, M> {
    /// What is asked.
    pub task: T,
    /// What was given so far.
    pub given: G,
    /// The judgement.
    pub marked: Option<M>,
}

impl<T, G: Default, M> Question<T, G, M> {
    fn new(task: T) -> Question<T, G, M> {
        Question {
            task,
            given: G::default(),
            marked: None,
        }
    }
}

/// The rows of an answer at the meter, as far as they are chosen.
#[derive(Clone, Copy, Debug, Default)]
pub struct MeterGiven {
    /// State of the machine.
    pub state: Option<meter::State>,
    /// Setting.
    pub mode: Option<MeterMode>,
    /// Range, by its place.
    pub range: Option<usize>,
    /// Within tolerance.
    pub within: Option<bool>,
}

impl MeterGiven {
    /// The probes are on: the reading shows, and how it is taken does not change any more.
    pub fn is_set(&self) -> bool {
        self.state.is_some() && self.mode.is_some() && self.range.is_some()
    }

    fn whole(&self) -> Option<meter::Given> {
        Some(meter::Given {
            state: self.state?,
            mode: self.mode?,
            range: self.range?,
            within: self.within?,
        })
    }
}

/// A try at a gesture, on a bench of its own.
pub struct Trial {
    /// What is to be done.
    pub task: entry::EntryTask,
    /// The bench.
    pub bench: BenchRes,
    /// Hands on its buttons.
    pub held: HeldButtons,
    /// Odds over step times for this hand.
    pub curve: entry::Curve,
    /// The metronome is on.
    pub metronome: bool,
    /// Window time up to which the bench was stepped, s; none before the first frame.
    pub stepped_s: Option<f64>,
    /// The wheel's way not yet turned into detents.
    pub scrolled: f32,
    /// The judgement.
    pub marked: Option<entry::Marked>,
}

/// The present question.
pub enum Asked {
    /// Reading lamps: up to two digits.
    Lamps(Question<lamps::LampReadingTask, String, lamps::Marked>),
    /// Entry timing.
    Entry(Box<Trial>),
    /// Meter.
    Meter(Question<meter::MeterTask, MeterGiven, meter::Marked>),
    /// Look-up: components ticked.
    LookUp(Question<look_up::CodeLookUpTask, Vec<Component>, look_up::Marked>),
    /// Next test: one of the options.
    NextTest(Question<next_test::NextTestTask, Option<usize>, next_test::Marked>),
    /// Part: one of the options.
    Part(Question<part::PartChoiceTask, Option<usize>, part::Marked>),
    /// Safe work: places among the choices, in order.
    SafeWork(Box<Question<safe_work::SafeWorkTask, Vec<usize>, safe_work::Marked>>),
    /// Proof: one of the choices.
    Proof(Question<proof::ProofTask, Option<usize>, proof::Marked>),
    /// There is nothing to ask from.
    Nothing,
}

/// What came of an answer.
pub struct Verdict {
    /// It was right.
    pub right: bool,
    /// What is worth keeping of it.
    pub detail: Detail,
}

impl Asked {
    /// This question; nothing where there is none.
    pub fn of(task: Option<Task>, boards: &[SuppliedBoard<'_>]) -> Asked {
        match task {
            Some(Task::Lamps(task)) => Asked::Lamps(Question::new(task)),
            Some(Task::Entry(task)) => Trial::first(task, boards),
            Some(Task::Meter(task)) => Asked::Meter(Question::new(task)),
            Some(Task::LookUp(task)) => Asked::LookUp(Question::new(task)),
            Some(Task::NextTest(task)) => Asked::NextTest(Question::new(task)),
            Some(Task::Part(task)) => Asked::Part(Question::new(task)),
            Some(Task::SafeWork(task)) => Asked::SafeWork(Box::new(Question::new(*task))),
            Some(Task::Proof(task)) => Asked::Proof(Question::new(task)),
            None => Asked::Nothing,
        }
    }

    /// Draws a picture with a hazard in it.
    pub fn picture(boards: &[SuppliedBoard<'_>], seed: u64) -> Asked {
        let task = safe_work::SafeWorkTask::Hazard(hazard::ask(boards, seed));
        Asked::SafeWork(Box::new(Question::new(task)))
    }

    /// The next question of the same round. A hand keeps its curve and its metronome.
    pub fn next(&self, task: Option<Task>, boards: &[SuppliedBoard<'_>]) -> Asked {
        match (self, task) {
            (Asked::Entry(trial), Some(Task::Entry(task))) => trial.again(task, boards),
            (Asked::Nothing, _) => Asked::Nothing,
            (_, task) => Asked::of(task, boards),
        }
    }

    /// What was given, if it is a whole answer.
    pub fn given(&self) -> Option<Given> {
        let choice = |given: Option<usize>| given.map(Given::Choice);
        match self {
            Asked::Lamps(q) => q.given.parse().ok().map(Given::Number),
            Asked::Entry(trial) => trial.judged().map(|_| trial.given()),
            Asked::Meter(q) => q.given.whole().map(Given::Meter),
            Asked::LookUp(q) => (!q.given.is_empty()).then(|| Given::Components(q.given.clone())),
            Asked::NextTest(q) => choice(q.given),
            Asked::Part(q) => choice(q.given),
            Asked::SafeWork(q) => Some(Given::Places(q.given.clone())),
            Asked::Proof(q) => choice(q.given),
            Asked::Nothing => None,
        }
    }

    /// What was given is a whole answer.
    pub fn is_ready(&self) -> bool {
        match self {
            Asked::Lamps(q) => q.given.len() == 2,
            Asked::Entry(trial) => trial.judged().is_some(),
            Asked::Meter(q) => q.given.whole().is_some(),
            Asked::LookUp(q) => !q.given.is_empty(),
            Asked::NextTest(q) => q.given.is_some(),
            Asked::Part(q) => q.given.is_some(),
            Asked::SafeWork(q) => q.given.len() == q.task.wanted(),
            Asked::Proof(q) => q.given.is_some(),
            Asked::Nothing => false,
        }
    }

    /// Judges what was given; nothing while it is no whole answer.
    pub fn check(&mut self) -> Option<Verdict> {
        if !self.is_ready() {
            return None;
        }
        let plain = |right| Verdict {
            right,
            detail: Detail::None,
        };
        match self {
            Asked::Lamps(q) => {
                let marked = lamps::mark(&q.task, q.given.parse().ok()?);
                q.marked = Some(marked);
                let (shown, read) = (marked.shown, marked.read);
                Some(Verdict {
                    right: marked.right,
                    detail: Detail::Lamps { shown, read },
                })
            }
            Asked::Entry(trial) => {
                let marked = trial.judged()?;
                let verdict = Verdict {
                    right: marked.right,
                    detail: match (marked.rhythm, marked.odds) {
                        (Some(rhythm), Some(odds)) => Detail::Rhythm {
                            mean_ms: rhythm.mean_ms,
                            spread_ms: rhythm.spread_ms,
                            odds,
                        },
                        _ => Detail::None,
                    },
                };
                trial.marked = Some(marked);
                Some(verdict)
            }
            Asked::Meter(q) => {
                let marked = meter::mark(&q.task, q.given.whole()?);
                q.marked = Some(marked);
                Some(plain(marked.right))
            }
            Asked::LookUp(q) => {
                let marked = look_up::mark(&q.task, &q.given);
                let right = marked.right;
                q.marked = Some(marked);
                Some(plain(right))
            }
            Asked::NextTest(q) => {
                let marked = next_test::mark(&q.task, q.given?);
                q.marked = Some(marked);
                Some(plain(marked.right))
            }
            Asked::Part(q) => {
                let marked = part::mark(&q.task, q.given?);
                q.marked = Some(marked);
                Some(plain(marked.right))
            }
            Asked::SafeWork(q) => {
                let marked = safe_work::mark(&q.task, &q.given);
                let right = marked.right();
                q.marked = Some(marked);
                Some(plain(right))
            }
            Asked::Proof(q) => {
                let marked = proof::mark(&q.task, q.given?);
                q.marked = Some(marked);
                Some(plain(marked.right))
            }
            Asked::Nothing => None,
        }
    }

    /// Gives an answer as somebody might, rightly or not.
    pub fn fill_in(&mut self, right: bool) {
        match self {
            Asked::Lamps(q) => {
                let shown = q.task.shown;
                let read = if right {
                    shown
                } else {
                    shown / 10 * 10 + (shown + 4) % 10
                };
                q.given = format!("{read:02}");
            }
            Asked::Entry(trial) => trial.play(right),
            Asked::Meter(q) => {
                let should = meter::solve(&q.task);
                q.given = MeterGiven {
                    state: Some(if right {
                        should.state
                    } else {
                        meter::State::Unplugged
                    }),
                    mode: Some(should.mode),
                    range: Some(should.range),
                    within: Some(should.within == right),
                };
            }
            Asked::LookUp(q) => {
                q.given = q.task.suspects.clone();
                if !right {
                    let wrong = q
                        .task
                        .options
                        .iter()
                        .find(|c| !q.given.contains(c))
                        .copied();
                    q.given.remove(0);
                    q.given.extend(wrong);
                }
            }
            Asked::NextTest(q) => {
                let should = next_test::mark(&q.task, 0).should;
                q.given = Some((should + usize::from(!right)) % q.task.options.len());
            }
            Asked::Part(q) => {
                let should = part::mark(&q.task, 0).should;
                q.given = Some((should + usize::from(!right)) % q.task.options.len());
            }
            Asked::SafeWork(q) => {
                q.given = q.task.solve();
                if !right {
                    // Hands go in first, or the choice beside the right one.
                    q.given.reverse();
                    if q.given.len() == 1 {
                        q.given[0] = (q.given[0] + 1) % q.task.choices();
                    }
                }
            }
            Asked::Proof(q) => {
                let should = proof::mark(&q.task, 0).should;
                q.given = Some((should + usize::from(!right)) % q.task.choices());
            }
            Asked::Nothing => {}
        }
    }
}

impl Trial {
    fn first(task: entry::EntryTask, supplied_boards: &[SuppliedBoard<'_>]) -> Asked {
        let curve = task.curve(entry::USUAL_SPREAD);
        Trial::at(task, supplied_boards, curve, false)
    }

    fn at(
        task: entry::EntryTask,
        supplied_boards: &[SuppliedBoard<'_>],
        curve: entry::Curve,
        metronome: bool,
    ) -> Asked {
        let Some(supplied_board) = supplied_boards
            .iter()
            .find(|supplied_board| supplied_board.place() == task.place)
        else {
            return Asked::Nothing;
        };
        Asked::Entry(Box::new(Trial::with(
            task,
            supplied_board,
            curve,
            metronome,
        )))
    }

    fn with(
        task: entry::EntryTask,
        supplied_board: &SuppliedBoard<'_>,
        curve: entry::Curve,
        metronome: bool,
    ) -> Trial {
        let mut bench = BenchRes::new(Box::new(DrillBench::new(task.bench(supplied_board))));
        bench.refresh();
        Trial {
            task,
            bench,
            held: HeldButtons::default(),
            curve,
            metronome,
            stepped_s: None,
            scrolled: 0.0,
            marked: None,
        }
    }

    /// A try at the gesture of this board, on a new dial.
    pub fn of_board(supplied_board: &SuppliedBoard<'_>) -> Trial {
        let task = entry::EntryTask::on(supplied_board, 0.0);
        let curve = task.curve(entry::USUAL_SPREAD);
        Trial::with(task, supplied_board, curve, false)
    }

    /// Another one on the same board.
    pub fn of_board_again(&self, supplied_board: &SuppliedBoard<'_>, seed: u64) -> Trial {
        let task = self.task.again(seed);
        Trial::with(task, supplied_board, self.curve.clone(), self.metronome)
    }

    fn again(&self, task: entry::EntryTask, supplied_boards: &[SuppliedBoard<'_>]) -> Asked {
        let curve = self.curve.clone();
        Trial::at(task, supplied_boards, curve, self.metronome)
    }

    /// What the hand did so far.
    fn given(&self) -> Given {
        let history = self.bench.history();
        let deeds = history.iter().map(|(at, action)| Timed {
            at,
            action: action.clone(),
        });
        let until = self.bench.view().machine.time_s * TICKS_PER_S as f64;
        Given::hand(deeds.collect(), Time(until.round() as u64))
    }

    /// The try, judged, once it is over.
    pub fn judged(&self) -> Option<entry::Marked> {
        let tries = self.bench.view().machine.control.tries;
        self.task.mark(tries, self.bench.history().iter())
    }

    /// Draws the odds again for the hand that made these tries.
    pub fn redraw(&mut self, tries: &[entry::Marked]) {
        let shares: Vec<f64> = (tries.iter().filter_map(|marked| marked.rhythm))
            .map(|rhythm| rhythm.spread_ms / rhythm.mean_ms.max(1.0))
            .collect();
        if !shares.is_empty() {
            let share = shares.iter().sum::<f64>() / shares.len() as f64;
            self.curve = self.task.curve(share);
        }
    }

    /// Does the gesture as a script does, or begins it and lets it be.
    pub fn play(&mut self, right: bool) {
        let steps = entry_steps(&self.task.gesture);
        // The bench is at rest, and without power where it has to be.
        let steps: Vec<ScriptStep> = steps
            .into_iter()
            .filter(|step| *step != ScriptStep::PowerDown)
            .collect();
        let moves =
            |step: &ScriptStep| !matches!(step, ScriptStep::Wait { .. } | ScriptStep::Rest { .. });
        let last = steps.iter().rposition(moves).unwrap_or(0);
        let count = if right { steps.len() } else { last };
        for step in &steps[..count] {
            // A step that is refused shows in the try.
            let _ = self.bench.run(step);
        }
        if !right {
            let late = u64::from(self.task.gesture.within_ms) / 1000 + 2;
            let _ = self.bench.run(&ScriptStep::Wait { s: late });
            // A button that stays down keeps the try open: its coming up ends it.
            for button in entry::buttons(&self.task.gesture) {
                let _ = self
                    .bench
                    .run(&ScriptStep::Do(detent_training::bench::Action::Up(button)));
            }
            let _ = self.bench.run(&ScriptStep::Wait { s: 2 });
        }
        self.bench.refresh();
    }
}
