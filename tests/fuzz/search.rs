//! Searches for bytes that a reader cannot stand, guided by which code they reach.
//!
//! Built by a stable compiler, which has no sanitizers, but counts what is reached:
//!
//! ```sh
//! RUSTFLAGS="-C passes=sancov-module -C llvm-args=-sanitizer-coverage-level=4 \
//!   -C llvm-args=-sanitizer-coverage-inline-8bit-counters -C llvm-args=-sanitizer-coverage-pc-table \
//!   -C codegen-units=1 -C debug-assertions" \
//!   cargo run --release --package detent-fuzz --features libfuzzer --target-dir target/fuzz \
//!   -- target/corpus tests/fuzz/corpus -max_len=65536 -timeout=5
//! ```
//!
//! What it finds becomes an input in `corpus`, which `short_run.rs` reads on every `cargo test`.

#![no_main]
#![allow(unsafe_code, reason = "the search is entered from C++")]

use libfuzzer_sys::fuzz_target;

fuzz_target!(|input: &[u8]| {
    if let Some((reader, file)) = detent_fuzz::split(input) {
        detent_fuzz::check(reader, file);
    }
});
