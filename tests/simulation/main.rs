//! The simulation against published values, reference programs and its own promises.

mod boards;
mod imports;
mod loads;
mod machine_network;
mod network_allocation;
mod network_ngspice;
mod probes;
#[path = "../spice/mod.rs"]
mod spice;
#[path = "../stage/mod.rs"]
mod stage;
mod standards;
