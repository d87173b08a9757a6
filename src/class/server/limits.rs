//! How often somebody may ask: by seat and never by address, since a class sits behind one.

use crate::moment::Moment;
use std::time::Duration;

/// A bucket that fills again: each question takes one out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bucket {
    left: f64,
    most: f64,
    per_s: f64,
    at: Moment,
}

impl Bucket {
    /// Full, with room for `most`, refilled by `per_s`.
    pub fn full(most: f64, per_s: f64, now: Moment) -> Bucket {
        Bucket {
            left: most,
            most,
            per_s,
            at: now,
        }
    }

    /// Takes one out.
    ///
    /// # Errors
    /// There is none: how long until there is one again.
    pub fn take(&mut self, now: Moment) -> Result<(), Duration> {
        self.check(now)?;
        self.left -= 1.0;
        Ok(())
    }

    /// Whether one could be taken out.
    ///
    /// # Errors
    /// As [`Self::take`].
    pub fn check(&mut self, now: Moment) -> Result<(), Duration> {
        let gone_s = now.0.saturating_sub(self.at.0) as f64 / 1000.0;
        self.at = now;
        self.left = (self.left + gone_s * self.per_s).min(self.most);
        if self.left >= 1.0 {
            return Ok(());
        }
        Err(Duration::from_secs_f64((1.0 - self.left) / self.per_s))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bucket_fills_again() {
        let mut bucket = Bucket::full(3.0, 0.5, Moment(0));
        for _ in 0..3 {
            assert_eq!(bucket.take(Moment(0)), Ok(()));
        }
        assert_eq!(bucket.take(Moment(0)), Err(Duration::from_secs(2)));
        assert_eq!(bucket.take(Moment(2_000)), Ok(()));
        assert!(bucket.take(Moment(2_000)).is_err());
        // A clock that is set back fills nothing and takes nothing.
        assert!(bucket.take(Moment(0)).is_err());
        for _ in 0..3 {
            assert_eq!(bucket.take(Moment(1_000_000)), Ok(()));
        }
        assert!(bucket.take(Moment(1_000_000)).is_err());
    }
}
