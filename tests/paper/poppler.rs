//! Poppler's programs, fed with the bytes of a PDF.

use std::fs;
use std::process::Command;

/// Runs one of them on a PDF with these arguments before and behind its name; none where it is not installed.
pub fn run(program: &str, pdf: &[u8], before: &[&str], behind: &[&str]) -> Option<Vec<u8>> {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("paper.pdf");
    fs::write(&file, pdf).expect("it can be written");
    let out = Command::new(program)
        .args(before)
        .arg(&file)
        .args(behind)
        .output();
    let Ok(out) = out else {
        let must = std::env::var("CI").is_ok_and(|ci| ci == "true");
        assert!(!must, "{program} is missing: install poppler-utils");
        eprintln!("skipped: {program} is missing");
        return None;
    };
    let told = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{program}: {told}");
    // It tells of everything that it had to mend. That `Suspects` is no boolean is a mistake of its own (ISO 32000-1,
    // table 321, from memory: boolean).
    let told = told.lines().filter(|line| !line.is_empty());
    for line in told {
        assert!(
            line.contains("Suspects object is wrong type (boolean)"),
            "{program}: {line}"
        );
    }
    Some(out.stdout)
}

/// The text of these pages, in the order of the structure.
pub fn text(pdf: &[u8], pages: Option<(u32, u32)>) -> Option<String> {
    let (from, to) = pages.unwrap_or((1, 9999));
    let (from, to) = (from.to_string(), to.to_string());
    let out = run("pdftotext", pdf, &["-f", &from, "-l", &to, "-raw"], &["-"])?;
    Some(String::from_utf8(out).expect("text"))
}

/// A page in shades of gray, a byte for each, row by row.
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub shades: Vec<u8>,
}

/// Every page with so many dots to the inch.
pub fn pictures(pdf: &[u8], dots: u32) -> Option<Vec<Picture>> {
    let dots = dots.to_string();
    let out = run("pdftoppm", pdf, &["-r", &dots, "-gray"], &[])?;
    let mut left = out.as_slice();
    let mut pages = Vec::new();
    // Pages follow each other, each in the Netpbm format PGM: `P5`, width, height, 255, bytes.
    while !left.is_empty() {
        let mut word = || {
            let end = left
                .iter()
                .position(u8::is_ascii_whitespace)
                .expect("a head");
            let (word, rest) = left.split_at(end);
            left = &rest[1..];
            String::from_utf8(word.to_vec()).expect("text")
        };
        assert_eq!(word(), "P5");
        let [width, height, most]: [usize; 3] =
            std::array::from_fn(|_| word().parse().expect("a number"));
        assert_eq!(most, 255);
        let (shades, rest) = left.split_at(width * height);
        left = rest;
        pages.push(Picture {
            width,
            height,
            shades: shades.to_vec(),
        });
    }
    Some(pages)
}
