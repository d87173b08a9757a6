//! A class on one computer: it takes what the learners do, does it again, and shows where everybody stands.

pub mod board;
pub mod pages;
