//! What the tests of this room share, and that a result comes whole through JSON.

use super::{AttemptResult, GradedAttempt, NamedCause, SkillAnswer};
use detent_simulation::controller::EntryError;
use detent_simulation::units::Time;
use detent_training::bench::Verdict;
use detent_training::lesson::{Deduction, Dimension, DimensionScore, Loss, Score};
use detent_training::practice::Skill;

/// An attempt of this seat that kept this share of 100 points, all on one side.
pub fn graded(seat: u32, job: &str, begun_ms: u64, share: f64) -> GradedAttempt {
    GradedAttempt {
        seat,
        attempt: format!("{seat:08x}{begun_ms:024x}"),
        begun_ms,
        finished_ms: begun_ms + 1,
        result: AttemptResult {
            job: job.to_owned(),
            is_second_visit: false,
            passed: share >= 0.7,
            arrived: Time(1),
            score: Score {
                dimensions: vec![side(Dimension::Reasoning, 100.0, 100.0 * share, Vec::new())],
            },
            work_min: 30.0,
            waited_h: 0.0,
            bill: 0.0,
            named: None,
            hidden: vec!["belt.broken".to_owned()],
            skills: Vec::new(),
        },
    }
}

/// One side of a score.
pub fn side(dimension: Dimension, of: f64, kept: f64, lost: Vec<Deduction>) -> DimensionScore {
    DimensionScore {
        dimension,
        of,
        kept,
        lost,
    }
}

/// Points lost for this reason.
pub fn lost(points: f64, loss: Loss) -> Deduction {
    Deduction {
        at: Time(7),
        points,
        loss,
    }
}

#[test]
fn a_result_comes_whole_through_json() {
    let mut attempt = graded(1, "one", 5, 0.5);
    let rule = EntryError::Late { step: 1, by_ms: 40 };
    let losses = vec![
        lost(1.0, Loss::FailedTry { rule }),
        lost(2.5, Loss::Shock),
        lost(
            0.1,
            Loss::Misread {
                noted: 24,
                shown: vec![42, 7],
            },
        ),
        lost(0.0, Loss::RivalsLeft { open: 1, rivals: 3 }),
        lost(0.3, Loss::RestTooShort { seconds: 9.25 }),
    ];
    attempt.result.score.dimensions[0].lost = losses;
    attempt.result.skills = vec![SkillAnswer {
        skill: Skill::NextTest,
        right: false,
        kept: 0.1 + 0.2,
    }];
    attempt.result.named = Some(NamedCause {
        verdict: Verdict::CausesNamed,
        causes: vec!["belt.broken".to_owned()],
        part: Some("P-0701".to_owned()),
    });
    // Six ticks of 10 ms after the arrival.
    let (_, first) = attempt.result.lost().next().expect("a loss");
    assert!((attempt.result.minutes_to(first) - 0.001).abs() < 1e-12);
    let text = serde_json::to_string(&attempt.result).expect("JSON");
    let again: AttemptResult = serde_json::from_str(&text).expect("the same");
    assert_eq!(again, attempt.result);
    assert_eq!(
        again.misread().map(|code| code.noted).collect::<Vec<_>>(),
        [24]
    );
    let unknown = text.replacen('{', "{\"more\":1,", 1);
    assert!(serde_json::from_str::<AttemptResult>(&unknown).is_err());
}
