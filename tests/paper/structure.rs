//! That everybody can read the documents: PDF/UA-1, tags, language, title, embedded fonts; and that the same bytes come
//! out each time.

use super::{EDITIONS, Edition, content, handout_of, key_of, one_for_each_board, poppler};
use detent_content::Language;
use detent_paper::PaperSize;

/// Every built-in job in one edition; what the validator finds wrong comes back as an error.
#[track_caller]
fn every_job_is_printed(edition: Edition) {
    let content_library = content();
    let jobs = content_library.scenarios().expect("they are sound");
    assert!(jobs.len() >= 55);
    for source in &jobs {
        for (what, made) in [
            ("handout", handout_of(&content_library, source, edition)),
            ("key", key_of(&content_library, source, edition)),
        ] {
            let bytes = made.unwrap_or_else(|error| panic!("{} {what}: {error}", source.file));
            // What ISO 14289-1 (from memory: 5, identification) asks for, in the metadata, which are not packed.
            let declared = bytes
                .windows(b"pdfuaid:part".len())
                .any(|w| w == b"pdfuaid:part");
            assert!(declared, "{} {what}", source.file);
        }
    }
}

#[test]
fn every_job_passes_the_validator_in_english_on_a4() {
    every_job_is_printed(EDITIONS[0]);
}

#[test]
fn every_job_passes_the_validator_in_english_on_letter() {
    every_job_is_printed(EDITIONS[1]);
}

#[test]
fn every_job_passes_the_validator_in_spanish_on_a4() {
    every_job_is_printed(EDITIONS[2]);
}

#[test]
fn every_job_passes_the_validator_in_spanish_on_letter() {
    every_job_is_printed(EDITIONS[3]);
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    let content_library = content();
    let source = content_library.scenario("drain-code").expect("built in");
    for edition in EDITIONS {
        for make in [handout_of, key_of] {
            let made = || make(&content_library, &source, edition).expect("it is made");
            assert_eq!(made(), made());
        }
    }
}

#[test]
fn title_language_size_and_fonts_are_those_of_the_document() {
    let content_library = content();
    let source = content_library.scenario("drain-code").expect("built in");
    for (language, paper) in EDITIONS {
        let pdf = handout_of(&content_library, &source, (language, paper)).expect("it is made");
        let (Some(info), Some(fonts)) = (
            poppler::run("pdfinfo", &pdf, &[], &[]),
            poppler::run("pdffonts", &pdf, &[], &[]),
        ) else {
            return;
        };
        let info = String::from_utf8(info).expect("text");
        let title = match language {
            Language::En => "Training handout: Standing water",
            Language::Es => "Hoja de prácticas: Agua estancada",
        };
        // ISO 216, and ANSI/ASME Y14.1 (both from memory): 210 × 297 mm, 8.5 × 11 in.
        let size = match paper {
            PaperSize::A4 => "595.28 x 841.89 pts (A4)",
            PaperSize::Letter => "612 x 792 pts (letter)",
        };
        for told in [title, size, "Tagged:          yes"] {
            assert!(info.contains(told), "{told} is not in {info}");
        }
        assert!(!info.contains("CreationDate"), "{info}");
        let language = format!("/Lang ({})", language.code());
        let has = |what: &str| pdf.windows(what.len()).any(|w| w == what.as_bytes());
        assert!(
            has(&language) || has(&language.replace(' ', "")),
            "{language}"
        );
        let fonts = String::from_utf8(fonts).expect("text");
        let fonts: Vec<&str> = fonts.lines().skip(2).collect();
        assert!(!fonts.is_empty());
        for font in fonts {
            // Embedded, a subset, with a map to Unicode.
            let yes = font
                .split_whitespace()
                .filter(|word| *word == "yes")
                .count();
            assert_eq!(yes, 3, "{font}");
        }
    }
}

#[test]
fn headings_tables_and_drawings_are_tagged_and_drawings_have_words() {
    let content_library = content();
    for source in one_for_each_board(&content_library) {
        let edition = (Language::Es, PaperSize::A4);
        let pdf = handout_of(&content_library, &source, edition).expect("it is made");
        let Some(tree) = poppler::run("pdfinfo", &pdf, &["-struct"], &[]) else {
            return;
        };
        let tree = String::from_utf8_lossy(&tree);
        let count = |tag: &str| tree.lines().filter(|line| line.trim() == tag).count();
        let begins = |tag: &str| {
            let has = |line: &&str| line.trim_start().starts_with(tag);
            tree.lines().filter(has).count()
        };
        assert_eq!(begins("H1"), 1);
        assert!(begins("H2") >= 8, "{tree}");
        assert!(begins("Table") >= 7);
        // Every row has a cell that heads it, every table with heads a row of them.
        assert!(begins("TH") > begins("TR"));
        assert!(begins("Figure") >= 3);
        assert!(begins("LBody") >= 20 && begins("LI") >= begins("LBody"));
        assert_eq!(
            count("Figure"),
            begins("Figure"),
            "a drawing without attributes of layout"
        );
    }
}
