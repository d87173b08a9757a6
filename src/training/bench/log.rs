//! Everything that happened on a bench, in order, each with its tick. It is only ever added to; judging, the way
//! through a job, its account and the screens all read it.

use super::action::Action;
use super::bucket_test::BucketTest;
use super::inspect::Found;
use super::leak_check::LeakCheck;
use super::meter::MeterTest;
use super::milestone::Milestone;
use super::proving_run::FinishedRun;
use super::quote::QuoteGiven;
use super::view::{Event, Reading};
use detent_simulation::interface::Component;
use detent_simulation::units::Time;
use std::fmt;

/// One thing that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum LogEntry {
    /// The person began to do something.
    Action {
        /// When.
        at: Time,
        /// What.
        action: Action,
    },
    /// The machine went through something.
    Milestone(Milestone),
    /// A program ran to its end: which one.
    Ran(FinishedRun),
    /// Something unsafe or mistaken happened.
    Event(Event),
    /// The meter was tried on the proving source.
    MeterTest(MeterTest),
    /// A reading was taken.
    Reading(Reading),
    /// A component was looked at.
    Found(Found),
    /// A quote was given.
    Quoted(QuoteGiven),
    /// A bucket was filled at a tap.
    BucketTested(BucketTest),
    /// Somebody looked for leaks.
    LeakChecked(LeakCheck),
    /// Something was repaired.
    Repair {
        /// When.
        at: Time,
        /// How.
        repair: Repair,
    },
}

/// A code that was written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotedCode {
    /// When.
    pub at: Time,
    /// The code, as the trainee read it.
    pub code: u8,
    /// When it was struck out, if it was.
    pub struck: Option<Time>,
}

/// How something was repaired.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Repair {
    /// A part was fitted.
    Fitted {
        /// Its number on the counter today.
        part: String,
    },
    /// Something was put right that needed no part.
    PutRight(Component),
}

/// What kind of entry it is: the log keeps the places of each.
#[derive(Clone, Copy)]
enum Kind {
    Action,
    Note,
    Milestone,
    Ran,
    Event,
    MeterTest,
    Reading,
    Found,
    Quoted,
    BucketTested,
    LeakChecked,
    Repair,
}

/// Kinds of entry.
const KINDS: usize = Kind::Repair as usize + 1;

/// The log of one bench.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BenchLog {
    entries: Vec<LogEntry>,
    /// Places of the entries of each kind, so that no question walks through the others.
    places: [Vec<u32>; KINDS],
}

impl BenchLog {
    /// Adds what happened last.
    pub fn push(&mut self, entry: LogEntry) {
        let place = self.entries.len() as u32;
        let kind = match &entry {
            LogEntry::Action { action, .. } => {
                if matches!(action, Action::NoteCode(_)) {
                    self.places[Kind::Note as usize].push(place);
                }
                Kind::Action
            }
            LogEntry::Milestone(_) => Kind::Milestone,
            LogEntry::Ran(_) => Kind::Ran,
            LogEntry::Event(_) => Kind::Event,
            LogEntry::MeterTest(_) => Kind::MeterTest,
            LogEntry::Reading(_) => Kind::Reading,
            LogEntry::Found(_) => Kind::Found,
            LogEntry::Quoted(_) => Kind::Quoted,
            LogEntry::BucketTested(_) => Kind::BucketTested,
            LogEntry::LeakChecked(_) => Kind::LeakChecked,
            LogEntry::Repair { .. } => Kind::Repair,
        };
        self.places[kind as usize].push(place);
        self.entries.push(entry);
    }

    /// Everything, oldest first.
    pub fn entries(&self) -> &[LogEntry] {
        &self.entries
    }

    fn of<'a, T>(&'a self, kind: Kind, read: fn(&'a LogEntry) -> Option<T>) -> Entries<'a, T> {
        Entries {
            entries: &self.entries,
            places: &self.places[kind as usize],
            read,
        }
    }

    /// What the person did, with the time at which it began.
    pub fn actions(&self) -> Entries<'_, (Time, &Action)> {
        self.of(Kind::Action, |entry| match entry {
            LogEntry::Action { at, action } => Some((*at, action)),
            _ => None,
        })
    }

    /// Whether the laundry was out of the basket at that time. A visit begins with it in.
    pub fn basket_was_empty(&self, at: Time) -> bool {
        let actions = self.actions().iter().rev();
        let mut until = actions.skip_while(|(began, _)| *began > at);
        until
            .find_map(|(_, action)| match action {
                Action::UnloadBasket => Some(true),
                Action::LoadBasket => Some(false),
                _ => None,
            })
            .unwrap_or(false)
    }

    /// Codes noted, as the trainee read them.
    pub fn noted_codes(&self) -> Entries<'_, (Time, u8)> {
        self.of(Kind::Note, |entry| match entry {
            LogEntry::Action {
                at,
                action: Action::NoteCode(code),
            } => Some((*at, *code)),
            _ => None,
        })
    }

    /// The same, with what was struck out.
    pub fn notes(&self) -> Vec<NotedCode> {
        let mut notes: Vec<NotedCode> = Vec::new();
        for (at, action) in self.actions().iter() {
            if let Action::NoteCode(code) = *action {
                let struck = None;
                notes.push(NotedCode { at, code, struck });
            }
            if let Action::StrikeCode(code) = *action {
                let standing = |note: &&mut NotedCode| note.code == code && note.struck.is_none();
                if let Some(note) = notes.iter_mut().rev().find(standing) {
                    note.struck = Some(at);
                }
            }
        }
        notes
    }

    /// Codes that were noted and not struck out, oldest first.
    pub fn standing_codes(&self) -> Vec<u8> {
        let notes = self.notes().into_iter();
        let standing = notes.filter(|note| note.struck.is_none());
        standing.map(|note| note.code).collect()
    }

    /// What the machine went through.
    pub fn milestones(&self) -> Entries<'_, &Milestone> {
        self.of(Kind::Milestone, |entry| match entry {
            LogEntry::Milestone(milestone) => Some(milestone),
            _ => None,
        })
    }

    /// Programs that ran to their end.
    pub(super) fn finished_runs(&self) -> Entries<'_, FinishedRun> {
        self.of(Kind::Ran, |entry| match entry {
            LogEntry::Ran(run) => Some(*run),
            _ => None,
        })
    }

    /// Unsafe or mistaken things.
    pub fn events(&self) -> Entries<'_, &Event> {
        self.of(Kind::Event, |entry| match entry {
            LogEntry::Event(event) => Some(event),
            _ => None,
        })
    }

    /// Tries of the meter on the proving source.
    pub fn meter_tests(&self) -> Entries<'_, &MeterTest> {
        self.of(Kind::MeterTest, |entry| match entry {
            LogEntry::MeterTest(test) => Some(test),
            _ => None,
        })
    }

    /// The notebook: a report cites a reading by its place here, counted from 0.
    pub fn readings(&self) -> Entries<'_, &Reading> {
        self.of(Kind::Reading, |entry| match entry {
            LogEntry::Reading(reading) => Some(reading),
            _ => None,
        })
    }

    /// What was found by looking, feeling and turning.
    pub fn found(&self) -> Entries<'_, &Found> {
        self.of(Kind::Found, |entry| match entry {
            LogEntry::Found(found) => Some(found),
            _ => None,
        })
    }

    /// Buckets filled at the taps.
    pub fn bucket_tests(&self) -> Entries<'_, &BucketTest> {
        self.of(Kind::BucketTested, |entry| match entry {
            LogEntry::BucketTested(test) => Some(test),
            _ => None,
        })
    }

    /// What was learned without a meter, by looking and with a bucket: when, and which failure modes it rules out.
    pub fn seen_by_hand(&self) -> impl Iterator<Item = (Time, &[bool])> {
        let found = self.found().iter().map(|f| (f.at, f.rules_out.as_slice()));
        let tests = self.bucket_tests().iter();
        found.chain(tests.map(|t| (t.at, t.rules_out.as_slice())))
    }

    /// Quotes given, each with the customer's answer.
    pub fn quotes(&self) -> Entries<'_, &QuoteGiven> {
        self.of(Kind::Quoted, |entry| match entry {
            LogEntry::Quoted(given) => Some(given),
            _ => None,
        })
    }

    /// Looks for leaks.
    pub fn leak_checks(&self) -> Entries<'_, &LeakCheck> {
        self.of(Kind::LeakChecked, |entry| match entry {
            LogEntry::LeakChecked(check) => Some(check),
            _ => None,
        })
    }

    /// What was repaired.
    pub fn repairs(&self) -> Entries<'_, (Time, &Repair)> {
        self.of(Kind::Repair, |entry| match entry {
            LogEntry::Repair { at, repair } => Some((*at, repair)),
            _ => None,
        })
    }
}

/// The entries of one kind in a log, oldest first; a place among them is found at once.
pub struct Entries<'a, T> {
    entries: &'a [LogEntry],
    places: &'a [u32],
    /// Takes an entry of this kind apart.
    read: fn(&'a LogEntry) -> Option<T>,
}

impl<T> Clone for Entries<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Entries<'_, T> {}

impl<'a, T> Entries<'a, T> {
    /// How many there are.
    pub fn len(self) -> usize {
        self.places.len()
    }

    /// Whether there are none.
    pub fn is_empty(self) -> bool {
        self.places.is_empty()
    }

    /// The one at a place among them, counted from 0.
    pub fn get(self, place: usize) -> Option<T> {
        let place = *self.places.get(place)?;
        (self.read)(&self.entries[place as usize])
    }

    /// The oldest.
    pub fn first(self) -> Option<T> {
        self.get(0)
    }

    /// The latest.
    pub fn last(self) -> Option<T> {
        self.get(self.len().checked_sub(1)?)
    }

    /// Those from a place on.
    pub fn starting_at(self, place: usize) -> Entries<'a, T> {
        Entries {
            places: self.places.get(place..).unwrap_or_default(),
            ..self
        }
    }

    /// One after the other.
    pub fn iter(self) -> impl DoubleEndedIterator<Item = T> + Clone {
        let Entries {
            entries,
            places,
            read,
        } = self;
        let entries = places.iter().map(move |place| &entries[*place as usize]);
        entries.filter_map(read)
    }
}

impl<T: fmt::Debug> fmt::Debug for Entries<'_, T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::{Incident, MilestoneKind};

    #[test]
    fn each_kind_is_counted_by_itself_and_the_whole_stays_in_order() {
        let mut log = BenchLog::default();
        let at = Time;
        let action = |n, action| LogEntry::Action { at: at(n), action };
        let shock = Event {
            at: at(2),
            what: Incident::Shock,
        };
        let kind = MilestoneKind::PowerReset;
        log.push(action(1, Action::OpenCabinet));
        log.push(LogEntry::Event(shock.clone()));
        log.push(action(3, Action::NoteCode(42)));
        log.push(LogEntry::Milestone(Milestone { at: at(4), kind }));
        log.push(action(5, Action::NoteCode(7)));

        assert_eq!(log.entries().len(), 5);
        assert_eq!(log.actions().len(), 3);
        assert_eq!(log.actions().first(), Some((at(1), &Action::OpenCabinet)));
        assert_eq!(log.actions().get(3), None);
        let codes: Vec<_> = log.noted_codes().iter().collect();
        assert_eq!(codes, [(at(3), 42), (at(5), 7)]);
        assert_eq!(log.noted_codes().starting_at(1).first(), Some((at(5), 7)));
        assert!(log.noted_codes().starting_at(9).is_empty());
        assert_eq!(log.events().last(), Some(&shock));
        assert_eq!(
            log.milestones().iter().next_back().map(|l| l.kind),
            Some(kind)
        );
        assert!(log.readings().is_empty() && log.readings().last().is_none());
    }
}
