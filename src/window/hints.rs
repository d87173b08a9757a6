//! The hint at the bench: what was looked for, how much of it was taken, and whether it is still of now.

use super::background::Background;
use super::port::HintWork;
use detent_training::bench::{Action, BenchLog, HintRung, LogEntry};
use detent_training::reason::{Hint, HintTopic};

/// A hint that was looked for at some moment of a job.
pub struct ShownHint {
    hint: Background<Option<Hint>>,
    /// Entries of the log that it was made from.
    entries: usize,
    /// Rungs taken.
    taken: usize,
    /// What the one before was about, and how many of its rungs were taken: the same topic is not paid for twice.
    before: Option<(HintTopic, usize)>,
}

impl ShownHint {
    /// Begins to look, from so many entries of the log, after another.
    pub fn look(work: HintWork, entries: usize, before: Option<ShownHint>) -> ShownHint {
        ShownHint {
            hint: Background::begin(work),
            entries,
            taken: 0,
            before: before
                .and_then(|before| before.hint().map(|hint| (hint.topic.clone(), before.taken))),
        }
    }

    /// Once a frame.
    pub fn go_on(&mut self) {
        self.hint.go_on();
        if let (Background::Done(Some(hint)), Some((topic, taken))) = (&self.hint, &self.before) {
            if hint.topic == *topic {
                self.taken = self.taken.max(*taken);
            }
            self.before = None;
        }
    }

    /// It is still looked for.
    pub fn is_looking(&self) -> bool {
        matches!(self.hint, Background::Running(_))
    }

    /// What was found, if there is anything to tell.
    pub fn hint(&self) -> Option<&Hint> {
        match &self.hint {
            Background::Running(_) => None,
            Background::Done(hint) => hint.as_ref(),
        }
    }

    /// The rungs that were taken.
    pub fn taken(&self) -> &'static [HintRung] {
        &HintRung::ALL[..self.taken]
    }

    /// The next rung, while there is one.
    pub fn next(&self) -> Option<HintRung> {
        self.hint()?;
        HintRung::ALL.get(self.taken).copied()
    }

    /// Takes the next rung.
    pub fn take(&mut self) -> Option<HintRung> {
        let next = self.next()?;
        self.taken += 1;
        Some(next)
    }

    /// Nothing has happened since but that rungs were taken.
    pub fn is_of_now(&self, log: &BenchLog) -> bool {
        let hint = |entry: &LogEntry| {
            matches!(
                entry,
                LogEntry::Action {
                    action: Action::TakeHint(_),
                    ..
                }
            )
        };
        log.entries()[self.entries..].iter().all(hint)
    }

    /// Waits until it is found.
    #[cfg(test)]
    pub fn wait(&mut self) {
        self.hint.wait();
        self.go_on();
    }
}
