//! What a class is.

use super::moment::Moment;
use detent_class_protocol::{ClassJob, ClassKind, Digest, Standing};
use serde::{Deserialize, Serialize};

/// The name of a sealed job, before its number.
const SEALED_JOB: &str = "job-";

/// Most seats of a class.
pub const MOST_SEATS: u32 = 2_000;

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
    /// Work goes on, within the times of the class.
    Open,
    /// Everybody is stopped.
    Paused,
    /// It is over.
    Closed,
}

impl ClassDefinition {
    /// Where the class stands.
    pub fn standing(&self, teacher: TeacherStanding, now: Moment) -> Standing {
        let ends = self.closes_ms.map(Moment);
        match teacher {
            TeacherStanding::Closed => Standing::Closed,
            TeacherStanding::Open | TeacherStanding::Paused
                if ends.is_some_and(|ends| ends <= now) =>
            {
                Standing::Closed
            }
            TeacherStanding::Paused => Standing::Paused,
            TeacherStanding::Open => match self.opens_ms.map(Moment) {
                Some(opens) if opens > now => Standing::NotOpen {
                    in_s: opens.seconds_since(now).max(1),
                },
                _ => Standing::Open {
                    left_s: ends.map(|ends| ends.seconds_since(now).max(1)),
                },
            },
        }
    }

    /// The jobs of this seat, each with the seed of its own machine: no two seats have the same, so that an attempt that
    /// was copied is at another learner's machine.
    pub fn jobs_of(&self, seat: u32) -> Vec<ClassJob> {
        let is_sealed = self.machines.are_sealed();
        let jobs = self.jobs.iter().zip(1_u32..);
        jobs.map(|(job, number)| {
            let digest = self.secret(&[&seat.to_be_bytes(), job.as_bytes()]);
            let mut seed = [0; 8];
            seed.copy_from_slice(&digest.bytes()[..8]);
            ClassJob {
                job: if is_sealed {
                    format!("{SEALED_JOB}{number}")
                } else {
                    job.clone()
                },
                // Small enough for every reader of JSON to keep it whole (RFC 8259, section 6: 53 bits).
                seed: u64::from_be_bytes(seed) >> 11,
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

    /// A number that follows from the class's seed and these parts, and that nobody knows who does not know the seed.
    pub(crate) fn secret(&self, parts: &[&[u8]]) -> Digest {
        let seed = self.seed.to_be_bytes();
        let own: [&[u8]; 2] = [b"seed", &seed];
        Digest::of_parts(&[&own[..], parts].concat())
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
            seed: 7,
            seats: 24,
            only_listed: false,
            opens_ms: Some(10_000),
            closes_ms: Some(20_000),
        }
    }

    #[test]
    fn a_class_stands_where_clock_and_teacher_say() {
        let at = |teacher, ms| class().standing(teacher, Moment(ms));
        assert_eq!(
            at(TeacherStanding::Open, 4_000),
            Standing::NotOpen { in_s: 6 }
        );
        assert_eq!(
            at(TeacherStanding::Open, 10_000),
            Standing::Open { left_s: Some(10) }
        );
        assert_eq!(
            at(TeacherStanding::Open, 19_999),
            Standing::Open { left_s: Some(1) }
        );
        assert_eq!(at(TeacherStanding::Open, 20_000), Standing::Closed);
        assert_eq!(at(TeacherStanding::Paused, 15_000), Standing::Paused);
        assert_eq!(at(TeacherStanding::Paused, 25_000), Standing::Closed);
        assert_eq!(at(TeacherStanding::Closed, 15_000), Standing::Closed);
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
