//! The board's firmware. Knows no plant, only its inputs and outputs and the names in `interface`.
//!
//! One call of [`Controller::step`] is one tick. It reads the inputs (`sense`, `debounce`), lets
//! the current mode say what it wants (`program`, `service`, `recalibrate`), passes the wish
//! through the interlocks (`drive`) and watches what comes back (`watch`).

mod board;
mod check;
mod control_status;
mod debounce;
mod drive;
mod firmware;
mod gesture;
mod io;
mod lamps;
mod memory;
mod mode;
mod monitor;
mod program;
mod recalibrate;
mod segments;
mod sense;
mod service;
mod signs;
mod tries;
mod view;
mod watch;

#[cfg(test)]
mod tests;

pub use board::{
    Board, BoardConnector, BoardPin, ButtonHold, ClutchActuatorRules, Code, LidCycle, LidMoves,
    LockRules, MenuEntry, MotorRules, PanelRules, Phase, PressureRules, Program, Recalibration,
    Resets, Rule, Selector, ServiceRules, SheetEntry, StageRule, SupplyRules, ThermistorRules,
    WaterRules,
};
pub use check::{BoardFault, BoardProblem, is_words};
pub use control_status::ControlStatus;
pub use firmware::Controller;
pub use gesture::{
    EntryError, EntryRule, Gesture, GestureInput, GestureStep, LidMove, Outcome, Standing,
    TraceLine, Try, rehearse,
};
pub use io::{Inputs, Lamps, Outputs};
pub use memory::{Calibration, Memory, StoredCode, USUAL_CODES};
pub use mode::{ControlMode, PhaseKind};
pub use monitor::{Monitor, Routine, Stage};
pub use segments::letter_of;
pub use signs::{LampPlacement, LampRules, Sign, SignReading, Signs, letters};
pub use tries::Tries;
pub use view::ControlView;
