//! The drills of a class: each seat's own rounds, and marking them again.

use super::definition::ClassDefinition;
use super::verify::{Submitted, Verifier, unreadable, within};
use super::watch::WatchedDrill;
use detent_class_protocol::{ClassDrill, ClassKind, UnverifiedReason, Verdict};
use detent_training::practice::drill::{QuestionSource, RoundMarker};
use detent_training::record::{DrillHeader, DrillRecord, Seal, read_drill_round};
use detent_training::without_breaks;

/// So many rounds of one drill are a seat's own. Ours: more than anybody does in a class.
const MOST_ROUNDS: u64 = 1_000;

impl ClassDefinition {
    /// The drills of this seat, each with the seed of its own first round: no two seats are asked the same.
    pub fn drills_of(&self, seat: u32) -> Vec<ClassDrill> {
        let drills = self.drills.iter();
        drills
            .map(|drill| {
                let skill = drill.skill.name();
                let digest = self.derived(b"drill", &[&seat.to_be_bytes(), skill.as_bytes()]);
                ClassDrill {
                    drill: skill.to_owned(),
                    questions: drill.questions,
                    // Small enough for every reader of JSON to keep it whole (RFC 8259, section 6: 53 bits), a later
                    // round's too.
                    seed: digest.leading_number() >> 12,
                }
            })
            .collect()
    }

    /// Whether this is a round of this seat: the first one of one of its drills, and for practice each further one.
    fn is_round_of(&self, seat: u32, header: &DrillHeader) -> bool {
        let rounds = match self.kind {
            ClassKind::Practice => MOST_ROUNDS,
            ClassKind::Examination => 1,
        };
        self.drills_of(seat).iter().any(|drill| {
            drill.drill == header.skill.name()
                && drill.questions as usize == header.questions
                && (drill.seed..drill.seed + rounds).contains(&header.seed)
        })
    }
}

impl Verifier<'_> {
    /// Marks a finished round of a drill again, from its seed and what was given. `go_on` is asked after each slice.
    pub(super) fn verify_round(
        &self,
        submitted: &Submitted<'_>,
        go_on: impl FnMut() -> bool,
    ) -> Verdict {
        let record = match read_drill_round("handed-in.round", submitted.text, false) {
            Ok(record) => record,
            Err(error) => return unreadable(&error),
        };
        if record.seal != Seal::Holds {
            return Verdict::Mismatch;
        }
        let source = self.library.drill_source();
        match within(right_of(&source, &record), go_on) {
            None => Verdict::Unverified(UnverifiedReason::TooLong),
            Some(right) if right.is_none() || right != record.right => Verdict::Mismatch,
            Some(_) if !self.definition.is_round_of(submitted.seat, &record.header) => {
                Verdict::NotAssigned
            }
            Some(right) => {
                let questions = record.header.questions as f64;
                let points = right.map(|right| 100.0 * right as f64 / questions);
                Verdict::Verified { points }
            }
        }
    }
}

/// Right answers of a round, marked again; none where one of them is no answer to its question.
async fn right_of(source: &dyn QuestionSource, record: &DrillRecord) -> Option<usize> {
    let header = &record.header;
    let mut marker = RoundMarker::begin(header.skill, header.questions, header.seed);
    for answer in &record.answers {
        marker.mark_in_slices(source, &answer.given, 0.0).await?;
    }
    Some(marker.round().right())
}

/// A round that is marked as it comes in.
pub(super) struct RoundWatch {
    header: DrillHeader,
    marker: RoundMarker,
    /// An answer is none to its question: nothing more is marked.
    is_blind: bool,
}

impl RoundWatch {
    /// Follows the round as far as `text` goes, `before` being how far it was followed; none where that is no round.
    pub fn follow(
        before: Option<RoundWatch>,
        verifier: &Verifier<'_>,
        text: &str,
    ) -> Option<(RoundWatch, WatchedDrill)> {
        // Its end may lack, and so may that of its last line.
        let record = read_drill_round("watched.round", text, true).ok()?;
        let header = record.header;
        let mut watch = before
            .filter(|before| before.header == header)
            .unwrap_or_else(|| RoundWatch {
                marker: RoundMarker::begin(header.skill, header.questions, header.seed),
                header: header.clone(),
                is_blind: false,
            });
        let source = verifier.library.drill_source();
        let marked = watch.marker.round().done().len();
        for answer in record.answers.iter().skip(marked) {
            watch.is_blind = watch.is_blind || {
                let marked = watch.marker.mark_in_slices(&source, &answer.given, 0.0);
                without_breaks(marked).is_none()
            };
        }
        let watched = WatchedDrill {
            skill: header.skill,
            questions: header.questions,
            done: record.answers.len(),
            right: (!watch.is_blind).then(|| watch.marker.round().right()),
        };
        Some((watch, watched))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::definition::JobMachines;
    use detent_training::practice::{PlannedDrill, Skill};

    fn class(kind: ClassKind) -> ClassDefinition {
        let drill = |skill| PlannedDrill {
            skill,
            questions: 10,
        };
        ClassDefinition {
            title: "Tuesday".to_owned(),
            kind,
            jobs: Vec::new(),
            machines: JobMachines::Named,
            drills: vec![drill(Skill::LampReading), drill(Skill::SafeWork)],
            seed: 7,
            seats: 24,
            only_listed: false,
            opens_ms: None,
            closes_ms: None,
        }
    }

    #[test]
    fn each_seat_has_questions_of_its_own() {
        let class = class(ClassKind::Practice);
        assert_eq!(class.drills_of(3), class.drills_of(3));
        let mut seeds: Vec<u64> = (1..=500)
            .flat_map(|seat| class.drills_of(seat))
            .map(|drill| drill.seed)
            .collect();
        seeds.sort_unstable();
        assert_eq!(seeds.len(), 1_000);
        let apart = seeds.windows(2).all(|two| two[1] - two[0] >= MOST_ROUNDS);
        assert!(apart, "two seats share a round");
        assert!(seeds.iter().all(|seed| seed + MOST_ROUNDS < 1 << 53));
    }

    #[test]
    fn an_examination_has_one_round_and_practice_many() {
        for (kind, next) in [(ClassKind::Practice, true), (ClassKind::Examination, false)] {
            let class = class(kind);
            let own = class.drills_of(2).remove(0);
            let round = |skill, questions, seed| {
                class.is_round_of(2, &DrillHeader::new(skill, questions, seed))
            };
            assert!(round(Skill::LampReading, 10, own.seed));
            assert_eq!(round(Skill::LampReading, 10, own.seed + 1), next);
            assert!(!round(Skill::LampReading, 10, own.seed + MOST_ROUNDS));
            assert!(!round(Skill::LampReading, 9, own.seed));
            assert!(!round(Skill::SafeWork, 10, own.seed));
            assert!(!round(Skill::Proof, 10, own.seed));
        }
    }
}
