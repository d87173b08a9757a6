//! Practice: knowledge tracing and review times against values from outside, and simulated learners.

use chrono::{DateTime, Duration};
use detent_training::practice::review::scheduler;
use detent_training::practice::simulated::{
    Help, LOST_OVERNIGHT, Policy, Recovery, Simulated, exercises_of_beginner, exercises_to_mastery,
    recover,
};
use detent_training::practice::{Answer, Detail, Memory, Moment, Rates, Skill, Target, Tracing};
use rs_fsrs::{Card, FSRS, Rating};

/// A. T. Corbett and J. R. Anderson (1995): the equations and the parameters of this example; the numbers
/// were made with a reference implementation of them.
#[test]
fn tracing_follows_corbett_and_anderson() {
    let rates = Rates::new(0.5, 0.4, 0.2, 0.2).expect("probabilities");
    let mut tracing = Tracing::new(rates);
    let expected = [
        0.52, 0.527869, 0.890355, 0.982080, 0.997275, 0.993514, 0.999022, 0.999853, 0.999648,
        0.999947,
    ];
    for (answer, known) in "0011101101".chars().zip(expected) {
        tracing.update(answer == '1');
        let got = tracing.known();
        assert!((got - known).abs() < 1e-6, "{got} is not {known}");
    }
}

/// One review of the reference implementation: see tests/fsrs/make.py.
struct Review {
    case: usize,
    days: i64,
    rating: Rating,
    stability_days: f64,
    difficulty: f64,
    interval_days: Option<i64>,
}

fn reviews(csv: &str) -> Vec<Review> {
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let rows = reader.records().map(|row| {
        let row = row.expect("the vectors are CSV");
        let number = |n: usize| row[n].parse::<f64>().expect("a number");
        Review {
            case: number(0) as usize,
            days: number(2) as i64,
            rating: [Rating::Again, Rating::Hard, Rating::Good, Rating::Easy]
                [number(3) as usize - 1],
            stability_days: number(4),
            difficulty: number(5),
            interval_days: row[6].parse().ok(),
        }
    });
    rows.collect()
}

/// FSRS as its crate runs it agrees with its reference implementation, PyPI `fsrs`, review by review.
fn check_fsrs(fsrs: &FSRS, csv: &str) {
    let reviews = reviews(csv);
    assert!(reviews.len() > 40);
    let start = DateTime::from_timestamp(1_669_725_000, 0).expect("2022-11-29 12:30 UTC");
    let (mut now, mut case, mut card) = (start, None, Card::default());
    for review in reviews {
        if case != Some(review.case) {
            case = Some(review.case);
            now = start;
            card = Card {
                due: start,
                last_review: start,
                ..Card::default()
            };
        }
        // Within a day the short steps' minutes pass, which the row does not tell.
        let due = card.due.max(now);
        now += Duration::days(review.days);
        if (due - now).num_days() == 0 {
            now = now.max(due);
        }
        card = fsrs.next(card, now, review.rating).card;
        let near = |a: f64, b: f64| (a - b).abs() < 2e-6 * b.max(1.0);
        assert!(
            near(card.stability, review.stability_days)
                && near(card.difficulty, review.difficulty)
                && review
                    .interval_days
                    .is_none_or(|days| days == card.scheduled_days),
            "case {}, {:?} after {} days: {card:?}",
            review.case,
            review.rating,
            review.days
        );
    }
}

#[test]
fn review_times_agree_with_the_reference_implementation() {
    check_fsrs(&scheduler(), include_str!("../fsrs/long.csv"));
}

#[test]
fn the_crate_s_short_steps_agree_with_the_reference_implementation_too() {
    check_fsrs(&FSRS::default(), include_str!("../fsrs/short.csv"));
}

/// The crate's own published example, run once: good six times, again twice, good five times.
#[test]
fn the_crate_gives_the_intervals_that_it_gave_when_it_was_pinned() {
    let mut now = DateTime::from_timestamp(1_669_725_000, 0).expect("2022-11-29 12:30 UTC");
    let mut card = Card {
        due: now,
        last_review: now,
        ..Card::default()
    };
    let (good, again) = (Rating::Good, Rating::Again);
    let ratings = [&[good; 6][..], &[again; 2], &[good; 5]].concat();
    let mut days = Vec::new();
    for rating in ratings {
        card = FSRS::default().next(card, now, rating).card;
        days.push(card.scheduled_days);
        now = card.due;
    }
    assert_eq!(days, [0, 4, 15, 48, 136, 351, 0, 0, 7, 13, 24, 43, 77]);
}

/// A skill's memory gives FSRS one review for each sitting, and nothing else: good reviews when they are
/// due are the reference's first case.
#[test]
fn a_skill_s_memory_is_one_card() {
    let expected = reviews(include_str!("../fsrs/long.csv"));
    let mut memory = Memory::new(Skill::NextTest);
    let mut at = Moment(1_669_725_000);
    for review in expected.iter().take_while(|r| r.case == 0).take(6) {
        for n in 0..4 {
            memory.note(&Answer {
                at: Moment(at.0 + n * 40),
                skill: Skill::NextTest,
                right: true,
                took_s: 30.0,
                detail: Detail::None,
            });
        }
        let days = memory.stability_days().expect("it was answered");
        assert!((days - review.stability_days).abs() < 1e-5 * days, "{days}");
        at = memory.due().expect("it was answered");
    }
}

const SEED: u64 = 20_261_125;

/// The mean of what so many learners, drawn one after the other, need.
fn mean_exercises(policy: Policy, spread: f64, learners: u64) -> f64 {
    let need = |n: u64| {
        let learner = Simulated::new(SEED + n, spread, LOST_OVERNIGHT);
        let need = exercises_to_mastery(learner, policy, SEED + n);
        need.expect("everybody gets there") as f64
    };
    (0..learners).map(need).sum::<f64>() / learners as f64
}

/// No published number exists for our rates: the learners are simulated, and the order of the three is the
/// check. The fixed order is the best of its kind.
#[test]
fn adaptive_practice_needs_fewer_exercises_than_a_fixed_order_and_than_chance() {
    for spread in [0.0, 0.5] {
        let of = |policy| mean_exercises(policy, spread, 150);
        let adaptive = of(Policy::Adaptive(Target::default()));
        let fixed = [1, 2, 5, 10].map(|block| of(Policy::Fixed(block)));
        let fixed = fixed.into_iter().fold(f64::INFINITY, f64::min);
        let random = of(Policy::Random);
        eprintln!("spread {spread}: adaptive {adaptive:.1}, fixed {fixed:.1}, random {random:.1}");
        assert!(adaptive < 0.9 * fixed && adaptive < 0.9 * random);
    }
}

#[test]
fn the_model_finds_out_what_simulated_learners_know() {
    for (spread, bias, rmse, verdict) in [(0.0, 0.05, 0.2, 0.99), (0.5, 0.05, 0.2, 0.99)] {
        let mut seen = [Recovery::default(), Recovery::default()];
        for n in 0..60 {
            let learner = Simulated::new(SEED + n, spread, LOST_OVERNIGHT);
            let one = recover(learner, Target::default(), SEED + n, 20, 500);
            for (all, one) in seen.iter_mut().zip(&one) {
                all.add(one);
            }
        }
        for seen in &seen {
            let (believed, known) = (seen.believed(), seen.known());
            eprintln!(
                "spread {spread}: believed {believed:.3}, known {known:.3}, RMSE {:.3}, verdict {:.3}, {:?}",
                seen.rmse(),
                seen.verdict(),
                seen.calibration()
            );
        }
        let [early, all] = seen;
        assert_eq!(all.looks(), 60 * 500 * 8);
        for seen in [early, all] {
            assert!((seen.believed() - seen.known()).abs() < bias);
            assert!(seen.rmse() < rmse && seen.verdict() > verdict);
        }
    }
}

/// The finding, under the assumptions of the model: the coach saves more than hints do, and both together most. No
/// published number exists for our rates; the order is the check.
#[test]
fn simulated_beginners_need_fewer_exercises_with_hints_and_with_a_coach() {
    let of = |hints, coach| {
        let help = Help { hints, coach };
        let need = |seed| exercises_of_beginner(help, seed).expect("everybody gets there") as f64;
        (0..400).map(need).sum::<f64>() / 400.0
    };
    let (alone, hints) = (of(false, false), of(true, false));
    let (coach, both) = (of(false, true), of(true, true));
    println!("alone {alone:.1}, hints {hints:.1}, coach {coach:.1}, both {both:.1}");
    assert!(hints < 0.9 * alone && coach < hints && both < 0.9 * coach);
}
