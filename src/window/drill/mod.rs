//! The drill being done: its round, the present question with what was given so far, and its answers.

mod bench;
mod question;
mod recorded;
pub use question::{Asked, MeterGiven, Question, Trial, Verdict};
pub use recorded::Recorded;

use crate::state::Screen;
use bevy::prelude::*;
use detent_content::ContentLibrary;
use detent_simulation::controller::{Board, Lamps};
use detent_simulation::interface::Button;
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::practice::drill::lamps::LampReadingTask;
use detent_training::practice::drill::{
    Done, QUESTIONS, QuestionSource, Round, RoundMarker, Task, entry,
};
use detent_training::practice::{Answer, Detail, Skill};
use detent_training::record::DrillRecord;
use detent_training::without_breaks;
use std::sync::Arc;

/// The drill being done, if one is, and what questions are drawn from.
#[derive(Resource)]
pub struct DrillRes {
    content_library: Arc<ContentLibrary>,
    /// The round at hand.
    sitting: Option<Sitting>,
    /// Answers of rounds of which nothing is to be told yet.
    pub kept_back: Vec<Answer>,
}

/// The code lamps of a question that has been shown for `shown_s`, as bits.
pub fn lit(task: &LampReadingTask, shown_s: f64) -> u16 {
    let shown = Span((shown_s.max(0.0) * TICKS_PER_S as f64) as u64);
    task.signs.lit(task.shown, shown)
}

/// A board's console in a question.
pub struct DrillConsole<'a> {
    /// The board.
    pub board: &'a Board,
    /// Lamps lit now.
    pub lamps: Lamps,
    /// Where the knob points, in detents clockwise from the index.
    pub dial_position: u8,
    /// Buttons that are down.
    pub held: [bool; Button::ALL.len()],
    /// The plug is in the outlet.
    pub plugged: bool,
    /// The lid is up.
    pub lid_open: bool,
}

/// A drill to be pictured, and how far it has come.
#[derive(Clone, Copy, Debug)]
pub struct Shown {
    skill: Skill,
    /// The first question of safe work is the one with a picture.
    picture: bool,
    stage: Stage,
}

/// How far a pictured drill has come.
#[derive(Clone, Copy, Debug)]
enum Stage {
    /// The first question stands.
    Asked,
    /// It is answered, wrongly.
    Answered,
    /// All ten are.
    Over,
}

impl Shown {
    /// By name: `drill-lamps`, `drill-lamps-answered`, `drill-lamps-over`, and so for the other drills and for the
    /// picture of safe work, `drill-hazard`.
    pub fn named(name: &str) -> Option<Shown> {
        let name = name.strip_prefix("drill-")?;
        let cut = |end| name.strip_suffix(end);
        let (name, stage) = match (cut("-answered"), cut("-over")) {
            (Some(name), _) => (name, Stage::Answered),
            (_, Some(name)) => (name, Stage::Over),
            _ => (name, Stage::Asked),
        };
        let skill = match name {
            "entry" => Skill::EntryTiming,
            "lamps" => Skill::LampReading,
            "meter" => Skill::Metering,
            "look-up" => Skill::CodeLookUp,
            "next-test" => Skill::NextTest,
            "part" => Skill::PartChoice,
            "safe-work" | "hazard" => Skill::SafeWork,
            "proof" => Skill::Proof,
            _ => return None,
        };
        let picture = name == "hazard";
        Some(Shown {
            skill,
            picture,
            stage,
        })
    }
}

/// A round of a drill.
pub struct Sitting {
    /// The skill.
    pub skill: Skill,
    /// Questions and answers.
    pub round: Round,
    /// The present question.
    pub asked: Asked,
    /// When it was first seen, s of window time; none before.
    pub since_s: Option<f64>,
    /// Its answer, once given.
    pub done: Option<Done>,
    /// Numbers shown and read so far.
    pub read: Vec<(u8, u8)>,
    /// Tries at the gesture so far.
    pub tries: Vec<entry::Marked>,
    /// The same as a text that is kept, where it is.
    pub recorded: Option<Recorded>,
    /// Seed that it began with.
    seed: u64,
}

impl DrillRes {
    /// What questions are drawn from.
    pub fn content(&self) -> Arc<ContentLibrary> {
        Arc::clone(&self.content_library)
    }

    /// Further questions are drawn from this; the one that is asked stays.
    pub fn take_content(&mut self, content_library: Arc<ContentLibrary>) {
        let sitting = self.sitting.take();
        let kept_back = std::mem::take(&mut self.kept_back);
        *self = DrillRes {
            sitting,
            kept_back,
            ..DrillRes::new(content_library)
        };
    }

    /// No drill yet; questions will be drawn from `content_library`.
    pub fn new(content_library: Arc<ContentLibrary>) -> DrillRes {
        DrillRes {
            content_library,
            sitting: None,
            kept_back: Vec::new(),
        }
    }

    /// The console that the present question is about, as it stands at `time_s` of the window; none where
    /// it is about none, or about one that was made up.
    pub fn console(&self, time_s: f64) -> Option<DrillConsole<'_>> {
        let sitting = self.sitting.as_ref()?;
        match &sitting.asked {
            Asked::Lamps(question) => {
                let board = self.content_library.board(question.task.board.as_ref()?)?;
                let shown_s = time_s - sitting.since_s.unwrap_or(time_s);
                Some(DrillConsole {
                    board,
                    lamps: Lamps {
                        code: lit(&question.task, shown_s),
                        lock: false,
                    },
                    dial_position: 0,
                    held: [false; Button::ALL.len()],
                    plugged: true,
                    lid_open: false,
                })
            }
            Asked::Entry(trial) => {
                let view = trial.bench.view();
                Some(DrillConsole {
                    board: &trial.bench.job().board,
                    lamps: view.machine.lamps,
                    dial_position: view.machine.dial_position,
                    held: trial.held.down(),
                    plugged: view.machine.plugged,
                    lid_open: view.machine.lid_open,
                })
            }
            Asked::Meter(_)
            | Asked::LookUp(_)
            | Asked::NextTest(_)
            | Asked::Part(_)
            | Asked::SafeWork(_)
            | Asked::Proof(_)
            | Asked::Nothing => None,
        }
    }

    /// The present question shows lamps that flash.
    pub fn lamps_flash(&self) -> bool {
        let asked = self.sitting.as_ref().map(|sitting| &sitting.asked);
        let Some(Asked::Lamps(question)) = asked else {
            return false;
        };
        question.task.signs.take_time()
    }

    /// Begins a drill of this skill with questions drawn from `seed`.
    pub fn begin(&mut self, skill: Skill, seed: u64) {
        let marker = RoundMarker::begin(skill, QUESTIONS, seed);
        self.sitting = Some(self.sitting_of(marker, skill, seed, None));
    }

    /// The round as far as it was marked, with its next question.
    fn sitting_of(
        &self,
        marker: RoundMarker,
        skill: Skill,
        seed: u64,
        recorded: Option<Recorded>,
    ) -> Sitting {
        let source = self.content_library.drill_source();
        let task = marker.next_task(&source);
        Sitting {
            skill,
            asked: Asked::of(task, source.supplied_boards()),
            round: marker.round().clone(),
            since_s: None,
            done: None,
            read: Vec::new(),
            tries: Vec::new(),
            seed,
            recorded,
        }
    }

    /// Begins a round that is recorded, or goes on with it behind the answers that it has. Whether these were given to
    /// the questions that follow from its seed here; else nothing is begun.
    pub fn begin_recorded(&mut self, recorded: Recorded, record: &DrillRecord) -> bool {
        let header = &record.header;
        let mut marker = RoundMarker::begin(header.skill, header.questions, header.seed);
        let source = self.content_library.drill_source();
        for answer in &record.answers {
            let took_s = f64::from(answer.took_ms) / 1000.0;
            let marked = marker.mark_in_slices(&source, &answer.given, took_s);
            if without_breaks(marked).is_none() {
                return false;
            }
        }
        let sitting = self.sitting_of(marker, header.skill, header.seed, Some(recorded));
        self.sitting = Some(sitting);
        true
    }

    /// The screen from which the round at hand was begun.
    pub fn leads_back_to(&self) -> Screen {
        let recorded = self.sitting.as_ref().map(|sitting| &sitting.recorded);
        match recorded {
            Some(Some(_)) => Screen::Start,
            Some(None) | None => Screen::Practice,
        }
    }

    /// Begins another round of the same skill.
    pub fn again(&mut self) {
        if let Some(sitting) = &self.sitting {
            let (skill, seed) = (sitting.skill, sitting.seed);
            self.begin(skill, seed.wrapping_add(1));
        }
    }

    /// The round at hand.
    pub fn sitting(&mut self) -> Option<&mut Sitting> {
        self.sitting.as_mut()
    }

    /// Writes the answer down and asks the next question, if one is left.
    pub fn go_on(&mut self) {
        let Some(sitting) = &mut self.sitting else {
            return;
        };
        let Some(done) = sitting.done.take() else {
            return;
        };
        sitting.round.note(done);
        if !sitting.round.is_over() {
            let source = self.content_library.drill_source();
            let (asked, seed) = (sitting.round.done().len(), sitting.round.seed());
            let task = match &sitting.asked {
                Asked::Entry(trial) => Some(Task::Entry(trial.task.again(seed))),
                Asked::Nothing => None,
                Asked::Lamps(_)
                | Asked::Meter(_)
                | Asked::LookUp(_)
                | Asked::NextTest(_)
                | Asked::Part(_)
                | Asked::SafeWork(_)
                | Asked::Proof(_) => Task::first(sitting.skill, &source, asked, seed),
            };
            sitting.asked = sitting.asked.next(task, source.supplied_boards());
            sitting.since_s = None;
        }
    }

    /// Begins a drill and goes on in it as far as a picture shows.
    pub fn show(&mut self, shown: Shown, seed: u64) {
        self.begin(shown.skill, seed);
        let boards = self.content_library.supplied_boards();
        if let Some(sitting) = self.sitting.as_mut().filter(|_| shown.picture) {
            sitting.asked = Asked::picture(&boards, seed);
        }
        match shown.stage {
            Stage::Asked => {}
            Stage::Answered => {
                self.show_answer(false);
            }
            Stage::Over => self.show_round(),
        }
    }

    /// Answers the present question as somebody might, rightly or not; false where nothing is asked.
    fn show_answer(&mut self, right: bool) -> bool {
        let Some(sitting) = &mut self.sitting else {
            return false;
        };
        sitting.asked.fill_in(right);
        sitting
            .check(2.0 + sitting.round.done().len() as f64 * 0.7)
            .is_some()
    }

    /// The same for a whole round: every fourth answer is wrong.
    fn show_round(&mut self) {
        while self.sitting.as_ref().is_some_and(|s| !s.round.is_over()) {
            let number = self.sitting.as_ref().map_or(0, |s| s.round.done().len());
            if !self.show_answer(number % 4 != 2) {
                return;
            }
            self.go_on();
        }
    }
}

impl Sitting {
    /// Judges what was given, if it is a whole answer and was not judged yet; what there is to keep of it.
    pub fn check(&mut self, took_s: f64) -> Option<(Done, Detail)> {
        if self.done.is_some() {
            return None;
        }
        let Verdict { right, detail } = self.asked.check()?;
        if let Detail::Lamps { shown, read } = detail {
            self.read.push((shown, read));
        }
        let sealed = self.is_sealed();
        // How tries went, and what they promise, is told by what is drawn of them.
        if let Asked::Entry(trial) = &mut self.asked
            && !sealed
        {
            self.tries.extend(trial.marked.clone());
            trial.redraw(&self.tries);
        }
        let done = Done { right, took_s };
        self.done = Some(done);
        Some((done, detail))
    }
}

#[cfg(test)]
impl Default for DrillRes {
    fn default() -> Self {
        DrillRes::new(Arc::new(ContentLibrary::builtin().expect("it is sound")))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_training::practice::drill::QUESTIONS;

    #[test]
    fn every_skill_asks_ten_questions() {
        for skill in Skill::ALL.iter().copied() {
            let mut drill = DrillRes::default();
            drill.begin(skill, 3);
            let asked = drill
                .sitting()
                .is_some_and(|s| !matches!(s.asked, Asked::Nothing));
            assert!(asked, "{skill}");
            drill.show_round();
            let sitting = drill.sitting().expect("it goes on to its end");
            assert_eq!(sitting.round.done().len(), QUESTIONS, "{skill}");
            // A worn dial has its own will.
            if skill != Skill::EntryTiming {
                assert_eq!(sitting.round.right(), QUESTIONS - 2, "{skill}");
            }
        }
    }

    #[test]
    fn an_answer_is_judged_once() {
        let mut drill = DrillRes::default();
        drill.begin(Skill::LampReading, 1);
        let sitting = drill.sitting().expect("begun");
        assert!(sitting.check(1.0).is_none(), "nothing was given yet");
        sitting.asked.fill_in(true);
        assert!(sitting.check(1.0).is_some_and(|(done, _)| done.right));
        assert!(sitting.check(1.0).is_none());
        assert_eq!(sitting.read.len(), 1);
    }
}
