//! The pages as text.

use super::seat_state::SeatState;
use super::*;
use crate::board::{AttemptView, BoardView, SeatView};
use detent_class_protocol::{
    AttemptId, ClassKind, DrillStatus, Standing, UnverifiedReason, Verdict,
};
use detent_content::{ContentLibrary, Language};

/// The texts of the pages with the built-in jobs.
pub(super) fn page_texts(language: Language) -> PageTexts {
    let library = ContentLibrary::builtin().expect("what is built in is sound");
    PageTexts::new(language, &library).expect("its scenarios are sound")
}

/// Names that somebody typed to do harm, and what they come to on a page.
const HOSTILE: [(&str, &str); 5] = [
    (
        "<script>alert(1)</script>",
        "&lt;script&gt;alert(1)&lt;/script&gt;",
    ),
    ("\" onload=\"alert(1)", "&quot; onload=&quot;alert(1)"),
    (
        "</template></bdi><img src=x>&amp;",
        "&lt;/template&gt;&lt;/bdi&gt;&lt;img src=x&gt;&amp;amp;",
    ),
    ("\u{202e}left\u{2066}to\u{7}", "leftto"),
    ("it's {name} ‹x›", "it's {name} ‹x›"),
];

fn attempt(number: u8, verdict: Verdict) -> AttemptView {
    AttemptView {
        attempt: AttemptId::of_bytes([number; 16]),
        job: "blinking-lock-lamp.ron".to_owned(),
        drill: None,
        deeds: 31,
        machine_s: 754,
        closed: true,
        verdict,
        unsafe_acts: 1,
        unsafe_now: false,
        stuck: false,
    }
}

fn seat(number: u32, name: &str) -> SeatView {
    SeatView {
        seat: number,
        name: name.to_owned(),
        joined: true,
        silent_s: Some(2),
        idle_s: Some(10),
        attempts: Vec::new(),
    }
}

fn board(seats: Vec<SeatView>) -> BoardView {
    BoardView {
        title: "Tuesday, <b>first</b> year".to_owned(),
        kind: ClassKind::Practice,
        standing: Standing::Open { left_s: Some(2400) },
        code: "ACDEFG".parse().expect("a code"),
        address: "http://192.0.2.7:8090/".to_owned(),
        jobs: vec!["blinking-lock-lamp.ron".to_owned()],
        drills: Vec::new(),
        seats,
        has_bench: true,
        trouble: None,
        undrawn: None,
    }
}

/// Markup alone: what the script is told, an attribute, is left out.
fn without_data(page: &str) -> String {
    let (before, rest) = page
        .split_once(" data-page=\"")
        .expect("data of the script");
    let (_, after) = rest.split_once('"').expect("its end");
    format!("{before}{after}")
}

#[test]
fn what_learners_typed_is_text_wherever_it_stands() {
    let long = "ñ".repeat(10_000);
    let mut seats: Vec<SeatView> = (1..)
        .zip(HOSTILE)
        .map(|(number, (name, _))| seat(number, name))
        .collect();
    seats.push(seat(9, &long));
    for (seat, (name, _)) in seats.iter_mut().zip(HOSTILE) {
        seat.attempts = vec![AttemptView {
            job: format!("{name}.ron"),
            ..attempt(1, Verdict::Waiting)
        }];
    }
    let board = BoardView {
        trouble: Some("disk <full>".to_owned()),
        ..board(seats)
    };
    for texts in Language::ALL.map(page_texts) {
        let page = board_page(&texts, &board, SeatChoice::default());
        let data = page.split_once(" data-page=\"").expect("data").1;
        let data = data.split_once('"').expect("its end").0;
        assert!(!data.contains(['<', '>']), "markup in the data");
        let markup = without_data(&page);
        for (typed, told) in HOSTILE {
            assert!(markup.contains(&format!(">{told}</bdi>")), "{typed}");
        }
        for evil in [
            "<script>alert",
            "onload=\"alert",
            "<img src=x",
            "<full>",
            "<b>first",
        ] {
            assert!(!page.contains(evil), "{evil}");
        }
        assert!(
            !markup.contains(['\u{202e}', '\u{2066}', '\u{7}']),
            "a character that steers"
        );
        assert!(!markup.contains(&"ñ".repeat(61)), "a name runs on");
        assert!(markup.contains(&format!("{}…", "ñ".repeat(60))));
    }
}

#[test]
fn no_page_has_an_inline_script_or_style_or_asks_elsewhere() {
    let board = board(vec![SeatView {
        attempts: vec![attempt(1, Verdict::Mismatch)],
        ..seat(1, "Marta Olmo")
    }]);
    for texts in Language::ALL.map(page_texts) {
        for page in pages(&texts, &board) {
            assert!(page.starts_with("<!DOCTYPE html>"));
            assert!(page.contains(&format!("<html lang=\"{}\">", texts.language().code())));
            for inline in [" style=", "<style", "javascript:", " onclick=", " onload="] {
                assert!(!page.contains(inline), "{inline}");
            }
            for script in page.split("<script").skip(1) {
                assert!(script.starts_with(" type=\"module\" src=\"/class/"));
                assert!(script.contains("\"></script>"), "a script has a text");
            }
            for attribute in ["src=\"", "href=\"", "action=\""] {
                for value in page.split(attribute).skip(1) {
                    let own = value.starts_with(['/', '?', '#']) && !value.starts_with("//");
                    assert!(own, "{attribute}{}", &value[..40]);
                    let path = value.split('"').next().expect("its end");
                    if path.starts_with("/class/") {
                        assert!(asset(path).is_some(), "{path}");
                    }
                }
            }
            assert!(!page.contains('‹'), "a text is missing");
            assert!(!without_hole(&page).contains("{$"), "a text has a hole");
        }
    }
    assert_eq!(asset("/class/../board.js"), None);
    let script = asset("/class/page.js").expect("a script").1;
    let script = std::str::from_utf8(script).expect("UTF-8");
    assert!(script.contains("textContent"));
    for path in [
        "/class/board.js",
        "/class/gradebook.js",
        "/class/page.js",
        "/class/projector.js",
        "/class/sign_in.js",
    ] {
        let script = std::str::from_utf8(asset(path).expect("a script").1).expect("UTF-8");
        for evil in [
            "innerHTML",
            "outerHTML",
            "insertAdjacent",
            "document.write",
            "eval(",
            "http:",
            "https:",
        ] {
            assert!(!script.contains(evil), "{path}: {evil}");
        }
    }
}

/// The page itself; what its script is told has open places on purpose.
fn without_hole(page: &str) -> String {
    if page.contains(" data-page=\"") {
        without_data(page)
    } else {
        page.to_owned()
    }
}

fn pages(texts: &PageTexts, board: &BoardView) -> Vec<String> {
    let one = AttemptId::of_bytes([1; 16]);
    vec![
        board_page(texts, board, SeatChoice::default()),
        projector_page(texts, board, None),
        projector_page(texts, board, Some(one)),
        projector_page(texts, board, Some(AttemptId::of_bytes([7; 16]))),
        sign_in_page(texts),
        no_page_page(texts, &board.address),
    ]
}

#[test]
fn the_projector_shows_no_name() {
    let board = board(vec![SeatView {
        attempts: vec![attempt(1, Verdict::Verified { points: Some(84.0) })],
        ..seat(1, "Marta Olmo")
    }]);
    let texts = page_texts(Language::En);
    for shown in [None, Some(AttemptId::of_bytes([1; 16]))] {
        let page = projector_page(&texts, &board, shown);
        assert!(!page.contains("Marta"), "{page}");
    }
    let page = projector_page(&texts, &board, Some(AttemptId::of_bytes([1; 16])));
    assert!(page.contains("The blinking lock") && page.contains("Verified: 84 of 100"));
    let page = projector_page(&texts, &board, None);
    assert!(page.contains("<span>ACD</span> <span>EFG</span>") && page.contains("1 joined"));
}

#[test]
fn seats_say_how_they_are_doing() {
    let closed = |number, verdict| attempt(number, verdict);
    let going = AttemptView {
        closed: false,
        ..attempt(1, Verdict::Waiting)
    };
    let with = |attempts: Vec<AttemptView>| SeatView {
        attempts,
        ..seat(1, "x")
    };
    use SeatState::*;
    let open = Standing::Open { left_s: None };
    let cases: Vec<(SeatView, Standing, Vec<SeatState>)> = vec![
        (
            SeatView {
                joined: false,
                idle_s: None,
                ..seat(1, "x")
            },
            open,
            vec![Absent],
        ),
        (seat(1, "x"), open, vec![NotBegun]),
        (seat(1, "x"), Standing::Paused, vec![Here]),
        (with(vec![going.clone()]), open, vec![Working]),
        (
            with(vec![AttemptView {
                unsafe_now: true,
                stuck: true,
                ..going.clone()
            }]),
            open,
            vec![Unsafe, Stuck],
        ),
        (
            with(vec![AttemptView {
                unsafe_now: true,
                stuck: true,
                ..going.clone()
            }]),
            Standing::Paused,
            vec![Unsafe],
        ),
        (
            SeatView {
                idle_s: Some(180),
                ..with(vec![going.clone()])
            },
            open,
            vec![Idle],
        ),
        (
            SeatView {
                idle_s: Some(179),
                ..with(vec![going.clone()])
            },
            open,
            vec![Working],
        ),
        (
            SeatView {
                silent_s: Some(60),
                idle_s: Some(900),
                ..with(vec![going.clone()])
            },
            open,
            vec![Idle, Silent],
        ),
        (
            SeatView {
                idle_s: Some(900),
                ..with(vec![closed(1, Verdict::Waiting)])
            },
            open,
            vec![Finished],
        ),
    ];
    for (seat, standing, expected) in cases {
        let board = BoardView {
            standing,
            ..board(vec![seat.clone()])
        };
        assert_eq!(SeatState::of(&seat, &board), expected, "{seat:?}");
    }
}

/// Only where the bench is served beside the board there is somewhere to watch an attempt.
#[test]
fn an_attempt_is_watched_at_the_bench_where_there_is_one() {
    for texts in Language::ALL.map(page_texts) {
        for has_bench in [true, false] {
            let board = BoardView {
                has_bench,
                ..board(vec![seat(1, "Ann")])
            };
            let page = board_page(&texts, &board, SeatChoice::default());
            assert_eq!(page.contains("data-slot=\"watch\""), has_bench);
            assert_eq!(page.contains(&texts.get("pages-watch")), has_bench);
        }
    }
}

/// A round of a drill is told by what is right in it, while it is made and after.
#[test]
fn a_drill_is_told_by_its_name_and_what_is_right() {
    let round = |closed, done, right| AttemptView {
        job: String::new(),
        drill: Some(DrillStatus {
            drill: "lamp-reading".to_owned(),
            done,
            questions: 10,
            right,
        }),
        deeds: done,
        machine_s: 0,
        unsafe_acts: 0,
        closed,
        ..attempt(1, Verdict::Verified { points: Some(80.0) })
    };
    let texts = page_texts(Language::En);
    for (round, told) in [
        (round(false, 4, Some(3)), "4 of 10 answered, 3 right"),
        (round(false, 4, None), "In progress"),
        (round(true, 10, Some(8)), "Verified: 8 of 10 right"),
        (round(true, 10, None), "Verified: 80 of 100"),
    ] {
        assert_eq!(texts.come_to(&round), told);
        assert_eq!(texts.work(&round), "Reading lamps");
    }
    let strange = AttemptView {
        drill: Some(DrillStatus {
            drill: "<b>\u{202e}x".to_owned(),
            done: 0,
            questions: 1,
            right: None,
        }),
        ..round(false, 0, None)
    };
    assert_eq!(texts.work(&strange), "<b>x");
    // The class is done where every job and every drill is.
    let seat = SeatView {
        attempts: vec![round(true, 10, Some(8))],
        ..seat(1, "Marta Olmo")
    };
    for (jobs, drills, finished) in [
        (&[][..], &["lamp-reading"][..], true),
        (&[], &["lamp-reading", "proof"], false),
        (&["blinking-lock-lamp.ron"], &["lamp-reading"], false),
        (&[""], &["lamp-reading"], false),
    ] {
        let all = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
        let board = BoardView {
            jobs: all(jobs),
            drills: all(drills),
            ..board(vec![seat.clone()])
        };
        let is_finished = SeatState::of(&seat, &board) == [SeatState::Finished];
        assert_eq!(is_finished, finished, "{jobs:?} {drills:?}");
    }
}

#[test]
fn the_query_says_who_is_shown_first_and_who_at_all() {
    let stuck = SeatView {
        attempts: vec![AttemptView {
            closed: false,
            stuck: true,
            ..attempt(1, Verdict::Waiting)
        }],
        ..seat(3, "Aarón")
    };
    let absent = SeatView {
        joined: false,
        ..seat(1, "Zoe")
    };
    let board = board(vec![absent, seat(2, "mina"), stuck]);
    for (query, order, shown) in [
        ("", [3, 2, 1], [true, true, true]),
        ("sort=help&lang=es", [3, 2, 1], [true, true, true]),
        ("sort=name", [3, 2, 1], [true, true, true]),
        ("sort=seat&show=help", [1, 2, 3], [false, false, true]),
        ("show=absent&sort=<b>", [3, 2, 1], [false, false, true]),
    ] {
        let seats = SeatChoice::of_query(query).seats(&board);
        let numbers: Vec<u32> = seats.iter().map(|(seat, ..)| seat.seat).collect();
        let are_shown: Vec<bool> = seats.iter().map(|(.., is_shown)| *is_shown).collect();
        assert_eq!(
            (&numbers[..], &are_shown[..]),
            (&order[..], &shown[..]),
            "{query}"
        );
    }
    let texts = page_texts(Language::Es);
    let page = board_page(&texts, &board, SeatChoice::of_query("sort=name&show=help"));
    assert!(page.contains("<option value=\"name\" selected>Por nombre</option>"));
    assert!(page.contains("href=\"?lang=en&amp;sort=name&amp;show=help\""));
    assert!(page.contains("2 de 3 en clase"));
}

#[test]
fn each_standing_is_told_and_pressed() {
    let texts = page_texts(Language::En);
    for (standing, told, pressed) in [
        (Standing::NotOpen { in_s: 600 }, "It opens in 10 min.", 0),
        (
            Standing::Open { left_s: Some(2400) },
            "It closes in 40 min.",
            1,
        ),
        (Standing::Open { left_s: None }, ">Open</p>", 1),
        (Standing::Paused, "Everybody waits.", 1),
        (Standing::Closed, "still comes in.", 1),
    ] {
        let board = BoardView {
            standing,
            ..board(Vec::new())
        };
        let page = board_page(&texts, &board, SeatChoice::default());
        assert!(page.contains(told), "{told}");
        assert_eq!(
            page.matches("aria-pressed=\"true\"").count(),
            pressed,
            "{told}"
        );
    }
}

#[test]
fn every_state_and_verdict_has_words_and_none_hangs_on_color() {
    let verdicts = [
        Verdict::Waiting,
        Verdict::Verified { points: None },
        Verdict::Verified { points: Some(55.5) },
        Verdict::Mismatch,
        Verdict::NotAssigned,
        Verdict::Unverified(UnverifiedReason::OtherProgram),
        Verdict::Unverified(UnverifiedReason::OtherContent),
        Verdict::Unverified(UnverifiedReason::TooLong),
    ];
    for texts in Language::ALL.map(page_texts) {
        let mut told: Vec<String> = (SeatState::ALL.iter())
            .map(|state| state.told(&seat(1, "x"), &texts))
            .chain(verdicts.iter().map(|verdict| texts.verdict(verdict)))
            .collect();
        assert!(
            told.iter()
                .all(|words| !words.is_empty() && !words.contains('‹'))
        );
        told.sort();
        let count = told.len();
        told.dedup();
        assert_eq!(told.len(), count, "two say the same: {told:?}");
    }
    assert!(SeatState::ALL.is_sorted(), "the order of who needs help");
}

/// By day print on paper, by night the bench.
#[test]
fn the_colors_are_the_bench_s() {
    let (tokens, style) = (
        include_str!("../../window/tokens.rs"),
        include_str!("style.css"),
    );
    let dark = style
        .split_once("(prefers-color-scheme: dark)")
        .expect("a dark scheme")
        .1;
    let dark = dark.split_once("\n}").expect("its end").0;
    let mut count = 0;
    for color in dark.split('#').skip(1) {
        let (red, green, blue) = (&color[..2], &color[2..4], &color[4..6]);
        let token = format!("0x{red}, 0x{green}, 0x{blue}");
        assert!(tokens.contains(&token), "#{red}{green}{blue}");
        count += 1;
    }
    assert_eq!(count, 15);
}
