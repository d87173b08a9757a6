//! The board's firmware. Knows no plant, only its inputs and outputs.

mod io;
pub use io::{Inputs, Lamps, Outputs};

/// What the control is doing, for the instructor and the lesson.
#[derive(Clone, Debug, Default)]
pub struct ControlView {
    /// Short key of the mode: `off`, `idle`, `program`, `hold`, `service`.
    pub mode: &'static str,
}
