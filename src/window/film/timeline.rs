//! Where the moments of a film lie on its timeline: long waits are drawn short, as they are watched short.

use super::FilmStep;
use detent_simulation::units::{Span, Time};

/// A wait longer than this is drawn as long as this.
const LONGEST_DRAWN: Span = Span::from_s(30);

/// A timeline over all steps.
pub struct Timeline {
    /// Each step's moment, and the span drawn before it.
    steps: Vec<(Time, Span)>,
    /// The span that is drawn in all.
    whole: Span,
}

impl Timeline {
    /// From the arrival over these steps to the end.
    pub fn new(arrival: Time, steps: &[FilmStep], end: Time) -> Timeline {
        let (mut last, mut drawn) = (arrival, Span::ZERO);
        let mut places = vec![(arrival, drawn)];
        for step in steps {
            drawn = drawn.saturating_add(drawn_wait(last, step.at));
            last = step.at;
            places.push((last, drawn));
        }
        let whole = drawn.saturating_add(drawn_wait(last, end));
        Timeline {
            steps: places,
            whole,
        }
    }

    /// Where this moment lies, 0 to 1.
    pub fn share(&self, at: Time) -> f32 {
        let begun = self.steps.partition_point(|(moment, _)| *moment <= at);
        let Some((moment, before)) = begun.checked_sub(1).map(|last| self.steps[last]) else {
            return 0.0;
        };
        let drawn = before.saturating_add(drawn_wait(moment, at));
        (drawn.0 as f32 / self.whole.0.max(1) as f32).min(1.0)
    }

    /// So many steps begin at or before this place, 0 to 1.
    pub fn steps_before(&self, share: f32) -> usize {
        let drawn = f64::from(share.clamp(0.0, 1.0)) * self.whole.0 as f64;
        let places = &self.steps[1..];
        places.partition_point(|(_, before)| before.0 as f64 <= drawn)
    }
}

fn drawn_wait(from: Time, to: Time) -> Span {
    to.since(from).min(LONGEST_DRAWN)
}

#[cfg(test)]
mod tests {
    use super::super::steps::steps_of;
    use super::*;
    use detent_training::bench::Action;
    use detent_training::record::Timed;

    #[test]
    fn a_long_wait_is_drawn_short_and_every_moment_has_its_place() {
        let timed = |s: u64, action| Timed {
            at: Time::ZERO + Span::from_s(s),
            action,
        };
        let deeds = [timed(10, Action::Unplug), timed(1000, Action::OpenCabinet)];
        let end = Time::ZERO + Span::from_s(1010);
        let timeline = Timeline::new(Time::ZERO, &steps_of(&deeds), end);
        // 10 s, 30 s for 990, 10 s.
        let share = |s| timeline.share(Time::ZERO + Span::from_s(s));
        for (s, expected) in [
            (0, 0.0),
            (5, 0.1),
            (10, 0.2),
            (25, 0.5),
            (500, 0.8),
            (1000, 0.8),
            (1005, 0.9),
            (1010, 1.0),
            (9999, 1.0),
        ] {
            assert!((share(s) - expected).abs() < 1e-6, "{s} s: {}", share(s));
        }
        for (share, steps) in [
            (0.0, 0),
            (0.19, 0),
            (0.21, 1),
            (0.79, 1),
            (0.81, 2),
            (1.0, 2),
        ] {
            assert_eq!(timeline.steps_before(share), steps, "{share}");
        }
    }
}
