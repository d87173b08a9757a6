//! A class on one computer: it takes what the learners do, does it again, and shows where everybody stands.

pub mod board;
pub mod definition;
pub mod drawing;
mod drills;
pub mod moment;
pub mod name;
mod name_list;
pub mod pages;
mod run;
mod secret;
pub mod server;
pub mod store;
pub mod verify;
pub mod watch;

pub use detent_class_protocol as protocol;
pub use name_list::names_in;
pub use run::{ClassError, ClassOptions, StartedClass, serve};
pub use secret::{join_code, secret_token, seed};
