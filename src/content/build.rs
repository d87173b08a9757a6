//! Tells Cargo to look again when a file is added to a folder that is built in: `include_dir!` alone
//! notices changes only in the files that it has seen.

#![allow(
    clippy::disallowed_macros,
    reason = "what a build script prints is for Cargo"
)]

fn main() {
    println!("cargo:rerun-if-changed=../../assets");
    println!("cargo:rerun-if-changed=../../scenarios");
}
