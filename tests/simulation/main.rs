//! The simulation against published values, reference programs and its own promises.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files, run programs, share what is slow to make, and print"
)]

mod boards;
mod closed_forms;
mod imports;
mod loads;
mod machine_network;
mod motor_torque;
mod network_allocation;
mod network_ngspice;
mod probes;
#[path = "../spice/mod.rs"]
mod spice;
#[path = "../stage/mod.rs"]
mod stage;
mod standards;
