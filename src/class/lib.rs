//! A class on one computer: it takes what the learners do, does it again, and shows where everybody stands.

pub mod board;
pub mod definition;
pub mod moment;
pub mod name;
pub mod pages;
mod secret;
pub mod server;
pub mod store;
pub mod verify;
pub mod watch;

pub use secret::{join_code, secret_token, seed};
