//! A job without words, for tests of what its machine does.

use detent_training::lesson::{Bilingual, Hidden, Mains, Points, Scenario};

/// This board at this supply with this fault.
pub fn scenario(board: &str, mains: Mains, fault: Hidden) -> Scenario {
    let text = || Bilingual {
        en: "-".to_owned(),
        es: "-".to_owned(),
    };
    Scenario {
        title: text(),
        complaint: text(),
        goal: text(),
        course: None,
        board: board.to_owned(),
        mains,
        seed: 1,
        fault,
        dial_wear: 0.0,
        stale_codes: Vec::new(),
        expected_codes: None,
        par_minutes: 60.0,
        budget: 100.0,
        live_tests_allowed: false,
        hints_allowed: true,
        worn_lead: false,
        points: Points::default(),
    }
}
