//! A short search on every `cargo test`, the same each time: the kept inputs, spoiled files, and large
//! files that would take long if a reader went over them again and again.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the kept inputs are files, and a reader is timed"
)]

use detent_fuzz::{Reader, check, seeds, split};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

/// Spoiled files for each file.
const TIMES: usize = 25;
/// Longest file that is spoiled; longer ones are cut.
const LONGEST: usize = 6000;

#[test]
fn kept_inputs_are_stood() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus");
    let mut inputs = 0;
    for entry in fs::read_dir(folder).expect("a folder") {
        let input = fs::read(entry.expect("an entry").path()).expect("an input");
        let (reader, file) = split(&input).expect("not empty");
        check(reader, file);
        inputs += 1;
    }
    assert!(inputs > 0);
}

#[test]
fn every_reader_has_something_to_begin_with() {
    let seeds = seeds();
    for reader in Reader::ALL {
        let begun = seeds.iter().any(|seed| seed[0] == reader.letter());
        // Tables are long and of no text; spoiled ones are made from others' bytes.
        assert_eq!(begun, reader != Reader::Table, "{reader:?}");
    }
}

#[test]
fn spoiled_files_are_stood() {
    const PIECES: [&str; 24] = [
        "(",
        ")",
        "[",
        "]",
        "{",
        "}",
        ",",
        ":",
        "\"",
        "'",
        "\\",
        "//",
        "/*",
        "*/",
        "#",
        "r#\"",
        "..",
        "-",
        "1e999",
        "NaN",
        "99999999999999999999",
        "Some(",
        "é",
        "\u{feff}",
    ];
    let seeds = seeds();
    let mut random = ChaCha8Rng::seed_from_u64(14);
    for seed in &seeds {
        for _ in 0..TIMES {
            let mut input = seed.clone();
            input.truncate(LONGEST);
            for _ in 0..random.random_range(1..4) {
                let length = input.len();
                let at = random.random_range(1..length.max(2)).min(length);
                let end = (at + random.random_range(0..20)).min(length);
                match random.random_range(0..6) {
                    0 => input[at - 1] = random.random_range(0..=255_u8),
                    1 => drop(input.drain(at..end)),
                    2 => {
                        let doubled = input[at..end].to_vec();
                        input.splice(at..at, doubled);
                    }
                    3 => input.truncate(at),
                    4 => {
                        let other = &seeds[random.random_range(0..seeds.len())];
                        let from = random.random_range(0..other.len());
                        let piece = &other[from..(from + 30).min(other.len())];
                        input.splice(at..at, piece.iter().copied());
                    }
                    _ => {
                        let piece = PIECES[random.random_range(0..PIECES.len())];
                        input.splice(at..at, piece.bytes());
                    }
                }
                if input.is_empty() {
                    break;
                }
            }
            if let Some((reader, file)) = split(&input) {
                check(reader, file);
                check(Reader::Syntax, file);
                if random.random_range(0..20) == 0 {
                    check(Reader::Table, file);
                }
            }
        }
    }
}

#[test]
fn large_files_are_read_or_refused_in_well_under_a_second() {
    let large = |piece: &str| piece.repeat((64 << 10) / piece.len());
    let pieces = [
        "(",
        "[",
        "{",
        "((",
        "a(",
        "[[],",
        "Some(",
        "(a:",
        "{a:",
        "\"",
        "'",
        "/*",
        "//",
        "// x\n",
        "r#\"",
        "r#",
        "#",
        "1",
        "1 ",
        "-",
        ".",
        "..",
        "_",
        ",",
        ":",
        "\n",
        " ",
        "\\",
        "\"\\x",
        "\"\\n\",",
        "é",
        "\u{feff}",
        "(),",
        "a,",
        "(id:\"x\"),\n",
        "(at:1,do:Plug)\n",
        "Wait(s:1)\n",
        "Plug\n",
        "a: 1,",
        "\0",
    ];
    let beginnings = ["", "(", "(steps:["];
    let mut slowest = (Duration::ZERO, String::new());
    for piece in pieces {
        for beginning in beginnings {
            let file = format!("{beginning}{}", large(piece));
            for reader in Reader::ALL {
                let begun = Instant::now();
                check(reader, file.as_bytes());
                let took = begun.elapsed();
                if took > slowest.0 {
                    slowest = (took, format!("{reader:?} of {beginning:?} and {piece:?}"));
                }
            }
        }
    }
    assert!(slowest.0 < Duration::from_secs(1), "{slowest:?}");
}
