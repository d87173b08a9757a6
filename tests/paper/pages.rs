//! The pages as pictures: nothing runs over an edge, none is empty. The pictures stay in `tmp/pictures/paper` of the target
//! directory: look at them after a change.

use super::{EDITIONS, content, handout_of, key_of, one_for_each_board, poppler};
use detent_paper::PaperSize;
use std::fs;
use std::path::Path;

/// Dots to the inch: one for each two points.
const DOTS: u32 = 36;
/// Room that stays white at each edge, dots: 10 mm are 28 pt.
const EDGE: usize = 10;

#[track_caller]
fn check_pages(what: &str, paper: PaperSize, pdf: &[u8]) {
    let Some(pages) = poppler::pictures(pdf, DOTS) else {
        return;
    };
    assert!(!pages.is_empty());
    let (width, height) = paper.points();
    for (n, page) in pages.iter().enumerate() {
        let n = n + 1;
        assert!((page.width as f32 - width / 2.0).abs() <= 1.0, "{what}");
        assert!((page.height as f32 - height / 2.0).abs() <= 1.0, "{what}");
        let mut inked = 0;
        for (place, shade) in page.shades.iter().enumerate() {
            let (x, y) = (place % page.width, place / page.width);
            let inside =
                (EDGE..page.width - EDGE).contains(&x) && (EDGE..page.height - EDGE).contains(&y);
            assert!(inside || *shade > 250, "{what}, page {n}: ink at {x}, {y}");
            inked += usize::from(*shade < 160);
        }
        assert!(inked > 100, "{what}, page {n} is empty");
    }
}

/// Keeps them for whoever wants to look.
fn keep(what: &str, pdf: &[u8]) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures/paper");
    fs::create_dir_all(&folder).expect("a folder for pictures");
    fs::write(folder.join(format!("{what}.pdf")), pdf).expect("it can be written");
    let stem = folder.join(what);
    let stem = stem.to_str().expect("a plain path");
    poppler::run("pdftoppm", pdf, &["-r", "80", "-png"], &[stem]);
}

#[test]
fn every_board_s_pages_stay_on_the_paper() {
    let content_library = content();
    for source in one_for_each_board(&content_library) {
        let volts = source.scenario.mains.rating().volts;
        for edition in EDITIONS {
            let (language, paper) = edition;
            let what = |of: &str| {
                let board = &source.scenario.board;
                format!("{board}-{volts}-{}-{}-{of}", paper.name(), language.code())
            };
            let pdf = handout_of(&content_library, &source, edition).expect("it is made");
            check_pages(&what("handout"), paper, &pdf);
            keep(&what("handout"), &pdf);
            let pdf = key_of(&content_library, &source, edition).expect("it is made");
            check_pages(&what("key"), paper, &pdf);
            keep(&what("key"), &pdf);
        }
    }
}

#[test]
fn texts_that_nobody_should_write_stay_on_the_paper() {
    let content_library = content();
    let mut source = content_library.scenario("drain-code").expect("built in");
    let odd = "¿Ñ? 鼓 🧺 \u{202e}abc\u{0} \n\t\u{feff}";
    for length in [0, 1, 120] {
        let long = format!("{odd} {} ", "word".repeat(length)).repeat(1 + length / 10);
        for text in [&mut source.scenario.title, &mut source.scenario.complaint] {
            (text.en, text.es) = (long.clone(), long.clone());
        }
        for edition in [EDITIONS[0], EDITIONS[3]] {
            let (language, paper) = edition;
            let pdf = handout_of(&content_library, &source, edition);
            let what = format!("odd-{length}-{}-{}", paper.name(), language.code());
            check_pages(&what, paper, &pdf.expect("it is made"));
        }
    }
}
