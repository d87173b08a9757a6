//! What a hand moves on the console.

use crate::names;
use schemars::JsonSchema;

names! {
    /// A button on the console.
    #[derive(JsonSchema)]
    Button {
        /// Starts what is chosen.
        Start = "start",
        /// Stops it.
        Stop = "stop",
        /// Steps up the list, on panels without a knob.
        More = "more",
        /// Steps down the list, on panels without a knob.
        Less = "less",
    }
}

names! {
    /// A direction of the knob, seen from the front.
    #[derive(JsonSchema)]
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
