//! A class as its learner sees it: the way in, its jobs on the start screen, and what of it shows at the bench.

mod join;
mod seat;
mod strip;

pub(super) use join::join_ui;
pub(super) use seat::seat_ui;
pub(super) use strip::{paused_ui, sealed_ui, strip_ui};
