//! What a class is.

use super::moment::Moment;
use detent_class_protocol::{ClassId, ClassJob, ClassKind, Digest, Standing};
pub use detent_training::practice::MOST_SEATS;
use detent_training::practice::PlannedDrill;
use serde::{Deserialize, Serialize};
use std::time::Duration;

/// The name of a sealed job, before its number.
const SEALED_JOB: &str = "job-";

/// What a class is, as it was made.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClassDefinition {
    /// What it is called.
    pub title: String,
    /// What it is for.
    pub kind: ClassKind,
    /// Names of the scenarios' files, in the order in which they are to be done.
    pub jobs: Vec<String>,
    /// Whose machines the learners work at.
    #[serde(default)]
    pub machines: JobMachines,
    /// Drills that are to be done besides, no two of one skill.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub drills: Vec<PlannedDrill>,
    /// Each learner's machines are drawn from this. It stays here.
    pub seed: u64,
    /// Most seats.
    pub seats: u32,
    /// Whether only names on the list may join.
    pub only_listed: bool,
    /// When it opens by itself, ms since 1970.
    pub opens_ms: Option<u64>,
    /// When it closes by itself, ms since 1970.
    pub closes_ms: Option<u64>,
}

/// Whose machines the learners work at.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum JobMachines {
    /// Those of the scenarios that every program has, by their names.
    #[default]
    Named,
    /// The same, closed and under names that say nothing.
    SealedAsWritten,
    /// A variant of each scenario for each seat, drawn and proved by the server, closed.
    SealedVariants,
}

impl JobMachines {
    /// Whether scenarios are handed out closed.
    pub const fn are_sealed(self) -> bool {
        match self {
            JobMachines::Named => false,
            JobMachines::SealedAsWritten | JobMachines::SealedVariants => true,
        }
    }
}

/// What the teacher has done about it last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum TeacherStanding {
    /// Work goes on, whether or not the class would be open by itself yet, until it closes by itself.
    Open,
    /// Everybody is stopped.
    Paused,
    /// It is over.
    Closed,
}

impl ClassDefinition {
    /// The same, begun now: it opens by itself after `opens_in`, and closes by itself so long after that as it `lasts`;
    /// without these it keeps the times that it has.
    #[must_use]
    pub fn begun(self, now: Moment, opens_in: Option<Duration>, lasts: Option<Duration>) -> Self {
        let opens = opens_in.map(|opens_in| now.after(opens_in));
        let opens = opens.or(self.opens_ms.map(Moment));
        let closes = lasts.map(|lasts| opens.unwrap_or(now).after(lasts));
        ClassDefinition {
            opens_ms: opens.map(|opens| opens.0),
            closes_ms: closes.map(|closes| closes.0).or(self.closes_ms),
            ..self
        }
    }

    /// Which class it is. It follows from the seed, which is drawn when a class is made and kept with it.
    pub fn id(&self) -> ClassId {
        let digest = self.derived(b"class", &[]);
        let mut id = [0; 16];
        id.copy_from_slice(&digest.bytes()[..16]);
        ClassId::of_bytes(id)
    }

    /// Where the class stands; `teacher` is what the teacher has done about it last, none before anything was.
    pub fn standing(&self, teacher: Option<TeacherStanding>, now: Moment) -> Standing {
        let ends = self.closes_ms.map(Moment);
        let is_over = ends.is_some_and(|ends| ends <= now);
        let left_s = ends.map(|ends| ends.seconds_since(now).max(1));
        match teacher {
            Some(TeacherStanding::Closed) => Standing::Closed,
            None | Some(TeacherStanding::Open | TeacherStanding::Paused) if is_over => {
                Standing::Closed
            }
            Some(TeacherStanding::Paused) => Standing::Paused,
            Some(TeacherStanding::Open) => Standing::Open { left_s },
            None => match self.opens_ms.map(Moment) {
                Some(opens) if opens > now => Standing::NotOpen {
                    in_s: opens.seconds_since(now).max(1),
                },
                Some(_) | None => Standing::Open { left_s },
            },
        }
    }

    /// The jobs of this seat, each with the seed of its own machine: no two seats have the same, so that an attempt that
    /// was copied is at another learner's machine.
    pub fn jobs_of(&self, seat: u32) -> Vec<ClassJob> {
        let is_sealed = self.machines.are_sealed();
        let jobs = self.jobs.iter().zip(1_u32..);
        jobs.map(|(job, number)| {
            let digest = self.derived(b"seed", &[&seat.to_be_bytes(), job.as_bytes()]);
            ClassJob {
                job: if is_sealed {
                    format!("{SEALED_JOB}{number}")
                } else {
                    job.clone()
                },
                // Small enough for every reader of JSON to keep it whole (RFC 8259, section 6: 53 bits).
                seed: digest.leading_number() >> 11,
                is_sealed,
            }
        })
        .collect()
    }

    /// The place of a job in the class, by the name that it has there.
    pub fn place_of(&self, job: &str) -> Option<usize> {
        if !self.machines.are_sealed() {
            return self.jobs.iter().position(|named| named == job);
        }
        let number: usize = job.strip_prefix(SEALED_JOB)?.parse().ok()?;
        let place = number.checked_sub(1)?;
        (place < self.jobs.len()).then_some(place)
    }

    /// The library's scenario behind a job of the class.
    pub fn original_of(&self, job: &str) -> Option<&str> {
        self.jobs.get(self.place_of(job)?).map(String::as_str)
    }

    /// A digest for this purpose that follows from the class's seed and these parts, and that nobody knows who does not know
    /// the seed.
    pub(crate) fn derived(&self, purpose: &[u8], parts: &[&[u8]]) -> Digest {
        let seed = self.seed.to_be_bytes();
        Digest::of_parts(&[&[purpose, &seed], parts].concat())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn class() -> ClassDefinition {
        ClassDefinition {
            title: "Tuesday".to_owned(),
            kind: ClassKind::Practice,
            jobs: vec!["one".to_owned(), "two".to_owned()],
            machines: JobMachines::Named,
            drills: Vec::new(),
            seed: 7,
            seats: 24,
            only_listed: false,
            opens_ms: Some(10_000),
            closes_ms: Some(20_000),
        }
    }

    #[test]
    fn a_class_stands_where_clock_and_teacher_say() {
        let (open, paused, closed) = (
            Some(TeacherStanding::Open),
            Some(TeacherStanding::Paused),
            Some(TeacherStanding::Closed),
        );
        for (teacher, ms, standing) in [
            (None, 4_000, Standing::NotOpen { in_s: 6 }),
            (None, 10_000, Standing::Open { left_s: Some(10) }),
            (None, 19_999, Standing::Open { left_s: Some(1) }),
            (None, 20_000, Standing::Closed),
            // Opened before its time.
            (open, 4_000, Standing::Open { left_s: Some(16) }),
            (open, 20_000, Standing::Closed),
            (paused, 4_000, Standing::Paused),
            (paused, 15_000, Standing::Paused),
            (paused, 25_000, Standing::Closed),
            (closed, 15_000, Standing::Closed),
        ] {
            let now = class().standing(teacher, Moment(ms));
            assert_eq!(now, standing, "{teacher:?} at {ms} ms");
        }
    }

    #[test]
    fn a_class_lasts_from_when_it_opens() {
        let minutes = |minutes: u64| Some(Duration::from_secs(60 * minutes));
        let plain = || ClassDefinition {
            opens_ms: None,
            closes_ms: None,
            ..class()
        };
        for (opens_in, lasts, opens_ms, closes_ms) in [
            (None, None, None, None),
            (None, minutes(90), None, Some(5_400_500)),
            (minutes(10), None, Some(600_500), None),
            (minutes(10), minutes(90), Some(600_500), Some(6_000_500)),
        ] {
            let begun = plain().begun(Moment(500), opens_in, lasts);
            let times = (begun.opens_ms, begun.closes_ms);
            assert_eq!(times, (opens_ms, closes_ms), "{opens_in:?} {lasts:?}");
        }
        assert_eq!(class().begun(Moment(500), None, None), class());
    }

    #[test]
    fn a_class_is_told_from_one_of_the_same_title() {
        let other = ClassDefinition { seed: 8, ..class() };
        assert_ne!(class().id(), other.id());
        let renamed = ClassDefinition {
            title: "Wednesday".to_owned(),
            ..class()
        };
        assert_eq!(class().id(), renamed.id());
    }

    #[test]
    fn each_seat_has_machines_of_its_own() {
        let mut seeds: Vec<u64> = (1..=500)
            .flat_map(|seat| class().jobs_of(seat))
            .map(|job| job.seed)
            .collect();
        assert_eq!(class().jobs_of(3), class().jobs_of(3));
        seeds.sort_unstable();
        seeds.dedup();
        assert_eq!(seeds.len(), 1000);
        assert!(seeds.iter().all(|seed| *seed < 1 << 53));
    }

    #[test]
    fn a_sealed_job_is_known_by_its_number_alone() {
        let sealed = ClassDefinition {
            machines: JobMachines::SealedVariants,
            ..class()
        };
        let jobs = sealed.jobs_of(3);
        assert_eq!(jobs[1].job, "job-2");
        assert!(jobs[1].is_sealed && !class().jobs_of(3)[1].is_sealed);
        assert_eq!(jobs[1].seed, class().jobs_of(3)[1].seed);
        assert_eq!(sealed.original_of("job-2"), Some("two"));
        for strange in [
            "job-0",
            "job-3",
            "job-",
            "two",
            "job--1",
            "job-99999999999999999999",
        ] {
            assert_eq!(sealed.original_of(strange), None, "{strange}");
        }
        assert_eq!(class().original_of("two"), Some("two"));
        assert_eq!(class().original_of("job-2"), None);
    }
}
