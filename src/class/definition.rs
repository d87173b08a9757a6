//! What a class is.

use super::moment::Moment;
use detent_class_protocol::{ClassJob, ClassKind, Digest, Standing};
use serde::{Deserialize, Serialize};

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
    /// Each learner's machines are drawn from this.
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
        let jobs = self.jobs.iter();
        jobs.map(|job| {
            let parts: [&[u8]; 4] = [
                b"seed",
                &self.seed.to_be_bytes(),
                &seat.to_be_bytes(),
                job.as_bytes(),
            ];
            let digest = Digest::of_parts(&parts);
            let mut seed = [0; 8];
            seed.copy_from_slice(&digest.bytes()[..8]);
            // Small enough for every reader of JSON to keep it whole (RFC 8259, section 6: 53 bits).
            ClassJob {
                job: job.clone(),
                seed: u64::from_be_bytes(seed) >> 11,
            }
        })
        .collect()
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
}
