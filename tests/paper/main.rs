//! Handouts and answer keys, read again by another program.

mod dump;
