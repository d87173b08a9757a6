//! What a person does at the bench, its record and score, what to believe and do next, and what to
//! practise. Knows no clock, file, screen, thread or global.

pub mod authoring;
pub mod bench;
mod draws;
pub mod lesson;
pub mod practice;
pub mod reason;
pub mod record;
mod slices;
pub mod variant;
pub use slices::{wait as wait_in_slices, without_breaks};
