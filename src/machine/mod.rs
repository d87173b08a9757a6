//! Wires plant and controller together, steps them, and hands out a read-only view.

mod view;
pub use view::MachineView;
