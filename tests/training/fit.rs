//! Fitting the parameters of knowledge tracing: known rates are found again, and no round makes answers less likely.

use detent_training::practice::fit::{BOUND, FEWEST_ANSWERS, FEWEST_LEARNERS, fit};
use detent_training::practice::simulated::answers_with;
use detent_training::practice::{Answer, Rates, Skill};

const SKILL: Skill = Skill::Proof;

fn learners(rates: Rates, count: u64, answers: usize) -> Vec<Vec<Answer>> {
    (0..count)
        .map(|n| answers_with(rates, SKILL, answers, 20_261_127 + n))
        .collect()
}

/// Of 2000 learners with 20 answers each the rates come back within 0.05. The truth is the simulation's own.
#[test]
fn known_rates_are_found_again() {
    for (known, learn, slip, guess) in [
        (0.20, 0.10, 0.10, 0.20),
        (0.50, 0.20, 0.05, 0.30),
        (0.10, 0.05, 0.20, 0.10),
    ] {
        let rates = Rates::new(known, learn, slip, guess).expect("sound");
        let fitted = fit(SKILL, &learners(rates, 2000, 20)).expect("enough answers");
        println!("{rates:?}: {:?}", fitted.rates);
        for (found, truth) in [
            (fitted.rates.known(), known),
            (fitted.rates.learn(), learn),
            (fitted.rates.slip(), slip),
            (fitted.rates.guess(), guess),
        ] {
            assert!((found - truth).abs() < 0.05, "{found} is not {truth}");
        }
        assert_eq!((fitted.learners, fitted.answers), (2000, 40_000));
        assert!(!fitted.at_bound);
        let end = fitted.log_likelihoods.last().expect("there are rounds");
        assert!(*end >= fitted.built_in);
    }
}

#[test]
fn no_round_makes_the_answers_less_likely() {
    let rates = Rates::new(0.3, 0.15, 0.1, 0.25).expect("sound");
    let fitted = fit(SKILL, &learners(rates, 60, 20)).expect("enough answers");
    let likelihoods = &fitted.log_likelihoods;
    assert!(likelihoods.len() > 3, "{likelihoods:?}");
    assert!(likelihoods.is_sorted(), "{likelihoods:?}");
}

/// Coins say nothing of knowing; whatever is found stays within its bounds.
#[test]
fn answers_that_say_nothing_keep_guess_and_slip_below_a_half() {
    let coins = Rates::new(0.0, 0.0, 0.1, 0.6).expect("sound");
    let fitted = fit(SKILL, &learners(coins, 50, 20)).expect("enough answers");
    assert!(fitted.rates.slip() <= BOUND && fitted.rates.guess() <= BOUND);
}

#[test]
fn too_few_answers_are_refused_with_what_is_wanted() {
    let rates = Rates::of(SKILL);
    let few = fit(SKILL, &learners(rates, 4, 100)).expect_err("four learners");
    assert_eq!((few.learners, few.answers), (4, 400));
    let short = fit(SKILL, &learners(rates, 10, 5)).expect_err("fifty answers");
    assert!(
        short.to_string().contains(&FEWEST_ANSWERS.to_string()),
        "{short}"
    );
    assert!(
        short.to_string().contains(&FEWEST_LEARNERS.to_string()),
        "{short}"
    );
    let other = fit(Skill::Metering, &learners(rates, 50, 50)).expect_err("another skill");
    assert_eq!((other.learners, other.answers), (0, 0));
}
