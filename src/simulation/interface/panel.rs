//! What a hand moves on the console.

use crate::names;

names! {
    /// A button on the console.
    Button { Start = "start", Stop = "stop", More = "more", Less = "less" }
}

names! {
    /// A direction of the knob, seen from the front.
    Direction {
        /// Anticlockwise.
        Left = "left",
        /// Clockwise.
        Right = "right",
    }
}

impl Direction {
    /// Which way a number of detents counts: less than none is left. None for no detents at all.
    pub const fn of_steps(steps: i8) -> Option<Direction> {
        match steps {
            ..0 => Some(Direction::Left),
            0 => None,
            1.. => Some(Direction::Right),
        }
    }

    /// −1 for left, 1 for right: what one detent adds to a position.
    pub const fn sign(self) -> i8 {
        match self {
            Direction::Left => -1,
            Direction::Right => 1,
        }
    }
}
