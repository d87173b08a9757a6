//! Moments of the server's clock, which come in as arguments.

use std::time::Duration;

/// Milliseconds since the beginning of 1970, UTC.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment(pub u64);

impl Moment {
    /// So much later.
    pub const fn after(self, span: Duration) -> Moment {
        Moment(self.0.saturating_add(span.as_millis() as u64))
    }

    /// Whole seconds from `earlier` to this; 0 where that is later, as after a clock was set back.
    pub const fn seconds_since(self, earlier: Moment) -> u32 {
        let seconds = self.0.saturating_sub(earlier.0) / 1000;
        if seconds > u32::MAX as u64 {
            u32::MAX
        } else {
            seconds as u32
        }
    }
}
