//! The gradebook's pages as text.

use super::tests::page_texts;
use super::*;
use crate::store::{MarkChange, MarkPart};
use detent_class_protocol::ClassKind;
use detent_content::Language;
use detent_gradebook::{
    AttemptResult, ClassGrades, ClassLearner, Gradebook, GradedAttempt, InstructorMark, MarkRule,
    NamedCause, SkillAnswer, item_statistics,
};
use detent_simulation::units::{Span, Time};
use detent_training::bench::Verdict;
use detent_training::lesson::{Deduction, Dimension, DimensionScore, Loss, LossKind, Score};
use detent_training::practice::Skill;
use std::collections::BTreeMap;

const JOBS: [&str; 2] = ["blinking-lock-lamp", "drain-code"];
const EVIL: &str = "<script>alert(1)</script>";

fn attempt(seat: u32, job: &str, kept: f64) -> GradedAttempt {
    let lost = |at_s, points, loss| Deduction {
        at: Time::ZERO + Span::from_s(at_s),
        points,
        loss,
    };
    let side = |dimension, of: f64, share: f64, lost| DimensionScore {
        dimension,
        of,
        kept: of * share,
        lost,
    };
    let misread = Loss::Misread {
        noted: 24,
        shown: vec![42],
    };
    let dimensions = vec![
        side(
            Dimension::Reading,
            20.0,
            kept,
            vec![lost(125, 5.0, misread)],
        ),
        side(
            Dimension::Reasoning,
            60.0,
            kept,
            vec![lost(600, 10.0, Loss::NotCured)],
        ),
        side(
            Dimension::Safety,
            20.0,
            0.9,
            vec![lost(61, 2.0, Loss::OpenedLive)],
        ),
    ];
    let skill = |skill, kept: f64| SkillAnswer {
        skill,
        right: kept >= 0.7,
        kept,
    };
    GradedAttempt {
        seat,
        attempt: format!("{seat:032x}"),
        begun_ms: 1_772_439_300_000,
        finished_ms: 1_772_441_100_000,
        result: AttemptResult {
            job: job.to_owned(),
            is_second_visit: false,
            passed: kept >= 0.7,
            arrived: Time::ZERO,
            score: Score { dimensions },
            work_min: 41.5,
            waited_h: 24.0,
            bill: 137.5,
            named: Some(NamedCause {
                verdict: Verdict::CausesNamed,
                causes: vec!["drain-pump.seized".to_owned()],
                part: Some("P-0701".to_owned()),
            }),
            hidden: vec!["drain-pump.seized".to_owned()],
            skills: vec![
                skill(Skill::LampReading, kept),
                skill(Skill::NextTest, kept),
                skill(Skill::SafeWork, 0.9),
            ],
        },
    }
}

/// Six learners, one of whom typed a name to do harm; the second one's mark was changed, the last one did nothing.
pub(super) fn view() -> GradebookView {
    let names = [
        EVIL,
        "Marta Olmo",
        "Íñigo Vara",
        "Ann Doe",
        "Pau Riba",
        "Lea Sol",
    ];
    let learners = names.iter().zip(1..);
    let learners: Vec<ClassLearner> = learners
        .map(|(name, seat)| ClassLearner {
            seat,
            name: (*name).to_owned(),
            pseudonym: format!("learner-{seat}"),
        })
        .collect();
    let attempts = (1..6).flat_map(|seat: u32| {
        let kept = 0.4 + 0.1 * f64::from(seat);
        [
            attempt(seat, JOBS[0], kept),
            attempt(seat, JOBS[1], kept / 1.5),
        ]
    });
    let rule = MarkRule::Best;
    let book = Gradebook::new(JOBS.map(str::to_owned).into(), attempts.collect(), rule);
    let seats: Vec<u32> = (1..=6).collect();
    let changed = InstructorMark {
        version: 2,
        points: Some(88.5),
        comment: format!("Good {EVIL}"),
        changed_ms: Some(1_772_525_700_000),
    };
    let change = MarkChange {
        number: 1,
        seat: 2,
        job: JOBS[0].to_owned(),
        what: MarkPart::Mark,
        who: "instructor".to_owned(),
        at_ms: 1_772_525_700_000,
        from: "64".to_owned(),
        to: "88.5".to_owned(),
        reason: EVIL.to_owned(),
    };
    GradebookView {
        statistics: item_statistics(&book, &seats),
        grades: ClassGrades {
            title: "Tuesday".to_owned(),
            learners,
            book,
            changes: BTreeMap::from([((2, JOBS[0].to_owned()), changed)]),
        },
        changes: vec![change],
        kind: ClassKind::Practice,
        keeps_back: false,
    }
}

/// Every page of the gradebook.
fn pages(texts: &PageTexts, view: &GradebookView) -> Vec<String> {
    let pages = [
        Some(gradebook_page(texts, view)),
        gradebook_job_page(texts, view, 0),
        gradebook_job_page(texts, view, 1),
        gradebook_learner_page(texts, view, 1),
        gradebook_learner_page(texts, view, 2),
        gradebook_learner_page(texts, view, 6),
        gradebook_report_page(texts, view, 2, ReportReader::Teacher),
        gradebook_report_page(texts, view, 2, ReportReader::Parent),
        gradebook_report_page(texts, view, 6, ReportReader::Parent),
    ];
    pages.map(|page| page.expect("there is one")).into()
}

#[test]
fn no_page_of_the_gradebook_has_an_inline_script_or_asks_elsewhere() {
    let view = view();
    for texts in Language::ALL.map(page_texts) {
        for page in pages(&texts, &view) {
            for evil in [
                " style=",
                "<style",
                "javascript:",
                " onclick=",
                "<script>alert",
            ] {
                assert!(!page.contains(evil), "{evil}");
            }
            for attribute in ["src=\"", "href=\""] {
                for value in page.split(attribute).skip(1) {
                    assert!(value.starts_with(['/', '?', '#']) && !value.starts_with("//"));
                }
            }
            let markup = page.split(" data-page=\"").next().expect("the head");
            assert!(!markup.contains('‹'), "a text is missing: {markup}");
            assert!(!page.contains('‹'), "a text is missing");
            // Every field has a label, every picture words, every name of an element is there once.
            for id in page.split(" id=\"").skip(1) {
                let id = id.split('"').next().expect("its end");
                assert_eq!(page.matches(&format!(" id=\"{id}\"")).count(), 1, "{id}");
            }
            for field in page
                .split("<textarea ")
                .skip(1)
                .chain(page.split("<input ").skip(1))
            {
                let field = field.split('>').next().expect("its end");
                let id = field
                    .split("id=\"")
                    .nth(1)
                    .and_then(|id| id.split('"').next());
                let is_labeled = id.is_some_and(|id| page.contains(&format!("for=\"{id}\"")));
                assert!(is_labeled || field.contains("type=\"hidden\""), "{field}");
            }
            assert!(
                page.split("<img ")
                    .skip(1)
                    .all(|image| image.contains("alt=\""))
            );
        }
    }
}

#[test]
fn the_gradebook_tells_marks_statistics_and_changes() {
    let view = view();
    let texts = page_texts(Language::En);
    let told = gradebook_page(&texts, &view);
    // Marta's changed mark, and the mean of it and of the other: (88.5 + 0.4 · 80 + 0.9 · 20) / 2.
    assert!(told.contains("88.5") && told.contains("(changed)") && told.contains(">69.3<"));
    assert!(told.contains("Fault still in the machine (5)"));
    assert!(told.contains("Cabinet opened with the plug in (5)"));
    // Both jobs rise with the learner: they go with each other as well as can be.
    assert_eq!(
        view.statistics[0]
            .discrimination
            .map(|r| (100.0 * r).round()),
        Some(100.0)
    );
    assert!(told.contains("1.00"));
    // Lea has done nothing, Pau's share in reading lamps is (0.9 + 0.9 / 1.5) / 2.
    assert!(told.contains("Reading lamps") && told.contains(">75%<"));
    let job = gradebook_job_page(&texts, &view, 0).expect("it is there");
    assert!(job.contains("3 of 5<") && job.contains(">24<") && job.contains(">42<"));
    let learner = gradebook_learner_page(&texts, &view, 2).expect("there");
    assert!(learner.contains("data-version=\"2\"") && learner.contains("value=\"88.5\""));
    assert!(learner.contains("2026-03-03 08:15 UTC"));
    let nothing = gradebook_learner_page(&texts, &view, 6).expect("there");
    assert!(nothing.contains("That is not a zero."));
    let spanish = gradebook_page(&page_texts(Language::Es), &view);
    assert!(spanish.contains("88,5") && spanish.contains("(cambiada)"));
    assert_eq!(gradebook_job_page(&texts, &view, 2), None);
    assert_eq!(gradebook_learner_page(&texts, &view, 7), None);
}

#[test]
fn a_report_is_about_one_learner() {
    let view = view();
    for texts in Language::ALL.map(page_texts) {
        for reader in [ReportReader::Teacher, ReportReader::Parent] {
            let report = gradebook_report_page(&texts, &view, 2, reader).expect("there");
            assert!(report.contains("Marta Olmo"));
            for other in ["Vara", "Doe", "Riba", "Sol<", "alert(1)</script>"] {
                assert!(!report.contains(other), "{other}");
            }
        }
        let parent = gradebook_report_page(&texts, &view, 3, ReportReader::Parent).expect("there");
        let teacher =
            gradebook_report_page(&texts, &view, 3, ReportReader::Teacher).expect("there");
        let reason = texts.loss(&Loss::NotCured);
        assert!(teacher.contains(&reason) && !parent.contains(&reason));
    }
}

/// A picture is a file of its own: well-formed, with a name, and no color alone tells anything.
#[test]
fn pictures_are_whole_files_with_their_figures() {
    let view = view();
    for texts in Language::ALL.map(page_texts) {
        let learner = view.grades.learner(1).expect("there");
        for picture in [
            items_plot(&texts, &view),
            skills_plot(&texts, &view, learner),
        ] {
            assert!(picture.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg "));
            assert!(picture.contains("xmlns=\"http://www.w3.org/2000/svg\""));
            assert!(picture.contains("role=\"img\" aria-label=\""));
            assert!(!picture.contains("<script") && !picture.contains(" style="));
            assert_eq!(
                picture.matches("<text").count(),
                picture.matches("</text>").count()
            );
            assert!(picture.contains('%'));
        }
    }
}

#[test]
fn every_reason_has_a_short_name() {
    for texts in Language::ALL.map(page_texts) {
        let mut told: Vec<String> = (LossKind::ALL.iter())
            .map(|kind| texts.loss_kind(*kind))
            .collect();
        assert!(
            told.iter()
                .all(|words| !words.contains('‹') && words.chars().count() <= 52)
        );
        told.sort();
        told.dedup();
        assert_eq!(told.len(), LossKind::ALL.len(), "two say the same");
    }
}
