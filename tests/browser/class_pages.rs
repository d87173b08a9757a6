//! The pages of a class in a real browser, before a server that is made up: tests/browser/class_pages.mjs.
//!
//! They need Node.js, a browser and the packages of tests/browser; the pictures stay in `tmp/pictures/class` of the target
//! directory, to be looked at.
//!
//! ```sh
//! DETENT_PLAYWRIGHT=…/node_modules/playwright-core cargo test -p detent-class --test class pages -- --ignored
//! ```
use detent_class::board::{AttemptView, BoardView, SeatView};
use detent_class::pages::{
    CONTENT_SECURITY_POLICY, PageTexts, SeatChoice, asset, board_page, no_page_page,
    projector_page, sign_in_page,
};
use detent_class_protocol::{AttemptId, ClassKind, Standing, UnverifiedReason, Verdict};
use detent_content::{ContentLibrary, Language};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

/// Invented names; one is a script, one turns the writing round, one is long.
const NAMES: [&str; 24] = [
    "Aarón Quiroga",
    "Bea Lindqvist",
    "<img src=x onerror=\"evil=1\"><script>evil=1</script>",
    "Ciro Vantongeren",
    "Dunia Abreu",
    "Edda Marlow",
    "Fermín Ozaeta",
    "Gwen Tarrant",
    "Hana Sobotka",
    "Íñigo Larrazabal Etxebarrieta de la Fuente y Montesquinza del Valle",
    "Jory Pemberwick",
    "Kira Olsson",
    "Leo Abad",
    "Mina Farouk",
    "\u{202e}Nahia Corta",
    "Otto Brandl",
    "Paz Villaverde",
    "Quim Soler",
    "Rhea Stamatis",
    "Sam Okoro",
    "Tove Aalto",
    "Unai Berriz",
    "Vera Klimt",
    "Wim de Graaf",
];
const JOBS: [&str; 3] = [
    "scenarios/blinking-lock-lamp.ron",
    "scenarios/dark-machine.ron",
    "scenarios/drain-code-several-causes.ron",
];

fn attempt(seat: u32, number: u8, verdict: Option<Verdict>) -> AttemptView {
    let mut id = [number; 16];
    id[0] = u8::try_from(seat).expect("few seats");
    AttemptView {
        attempt: AttemptId::of_bytes(id),
        job: JOBS[usize::from(number)].to_owned(),
        drill: None,
        deeds: 7 * seat % 61,
        machine_s: 173 * seat + 40,
        closed: verdict.is_some(),
        verdict: verdict.unwrap_or(Verdict::Waiting),
        unsafe_acts: seat % 3,
        unsafe_now: false,
        stuck: false,
    }
}

fn seat(number: u32, name: &str) -> SeatView {
    let done = match number % 6 {
        0 => Some(Verdict::Verified { points: Some(84.0) }),
        1 => Some(Verdict::Waiting),
        2 => Some(Verdict::Verified {
            points: Some(61.26),
        }),
        3 => None,
        4 => Some(Verdict::Mismatch),
        _ => Some(Verdict::Unverified(UnverifiedReason::OtherProgram)),
    };
    let joined = !matches!(number, 11 | 18 | 22);
    let mut attempts = Vec::new();
    if joined && number != 13 {
        if let Some(verdict) = done {
            attempts.push(attempt(number, 1, None));
            attempts.push(attempt(number, 0, Some(verdict)));
        } else {
            attempts.push(attempt(number, 0, None));
        }
        attempts[0].unsafe_now = number == 7;
        attempts[0].stuck = matches!(number, 5 | 9 | 16);
    }
    if number == 24 {
        let verdict = Verdict::Verified { points: None };
        attempts = vec![
            attempt(24, 2, Some(verdict.clone())),
            attempt(
                24,
                1,
                Some(Verdict::Verified {
                    points: Some(100.0),
                }),
            ),
            attempt(24, 0, Some(verdict)),
        ];
    }
    SeatView {
        seat: number,
        name: name.to_owned(),
        joined,
        silent_s: joined.then_some(if number == 20 { 260 } else { 3 }),
        idle_s: joined.then_some(if matches!(number, 2 | 16) { 420 } else { 12 }),
        attempts,
    }
}

fn board() -> BoardView {
    BoardView {
        title: "Level 2, <Tuesday> morning".to_owned(),
        kind: ClassKind::Practice,
        standing: Standing::Open {
            left_s: Some(2_430),
        },
        code: "ACD347".parse().expect("a code"),
        address: "http://192.0.2.117:8090/".to_owned(),
        jobs: JOBS.map(str::to_owned).into(),
        drills: Vec::new(),
        seats: (1..).zip(NAMES).map(|(n, name)| seat(n, name)).collect(),
        has_bench: true,
        trouble: None,
        undrawn: None,
    }
}

/// The same class later: seat 21 is unsafe, 12 is stuck, 4 goes on, 11 has joined, 25 has come.
fn later() -> BoardView {
    let mut later = board();
    for seat in &mut later.seats {
        match seat.seat {
            21 => seat.attempts[0].unsafe_now = true,
            12 => seat.attempts[0].stuck = true,
            4 => seat.attempts[0].deeds += 1,
            11 => {
                seat.joined = true;
                seat.idle_s = Some(0);
                seat.silent_s = Some(0);
            }
            _ => {}
        }
    }
    later.seats.push(SeatView {
        seat: 25,
        name: "</template><script>evil=2</script>".to_owned(),
        joined: true,
        silent_s: Some(1),
        idle_s: None,
        attempts: Vec::new(),
    });
    later
}

fn write_pages(folder: &Path) {
    let library = ContentLibrary::builtin().expect("what is built in is sound");
    let (board, later) = (board(), later());
    let write = |name: &str, bytes: &[u8]| {
        fs::write(folder.join(name), bytes).expect("a folder for what passes");
    };
    for language in Language::ALL {
        let texts = PageTexts::new(language, &library).expect("the scenarios are sound");
        let choice = SeatChoice::of_query("sort=seat");
        let one = Some(board.seats[6].attempts[0].attempt);
        let done = Some(board.seats[23].attempts[1].attempt);
        for (name, page) in [
            ("board", board_page(&texts, &board, choice)),
            (
                "board-help",
                board_page(&texts, &board, SeatChoice::default()),
            ),
            ("later", board_page(&texts, &later, choice)),
            ("projector", projector_page(&texts, &board, None)),
            ("projector-attempt", projector_page(&texts, &board, one)),
            ("projector-done", projector_page(&texts, &board, done)),
            ("sign-in", sign_in_page(&texts)),
            ("no-page", no_page_page(&texts, &board.address)),
        ] {
            write(&format!("{name}.{}.html", language.code()), page.as_bytes());
        }
    }
    let files = [
        "board.js",
        "page.js",
        "projector.js",
        "sign_in.js",
        "style.css",
        "icon.svg",
    ];
    let types = files.map(|file| {
        let (kind, bytes) = asset(&format!("/class/{file}")).expect("a file of the pages");
        write(file, bytes);
        (
            format!("/class/{file}"),
            json!({ "file": file, "type": kind }),
        )
    });
    let code = qrcode::QrCode::new(&board.address).expect("a short address");
    let picture = code.render::<qrcode::render::svg::Color<'_>>().build();
    write("qr.svg", picture.as_bytes());
    let facts = json!({
        "board": board,
        "later": later,
        "files": types.into_iter().collect::<serde_json::Map<_, _>>(),
        "policy": CONTENT_SECURITY_POLICY,
    });
    write("facts.json", facts.to_string().as_bytes());
}

fn drive() -> Value {
    let folder = tempfile::tempdir().expect("a folder for what passes");
    write_pages(folder.path());
    let pictures = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures/class");
    fs::create_dir_all(&pictures).expect("the target folder can be written");
    let playwright = std::env::var("DETENT_PLAYWRIGHT").expect("the folder of playwright-core");
    let modules = Path::new(&playwright).parent().expect("among others");
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/browser/class_pages.mjs");
    let done = Command::new("node")
        .args([&script, modules, folder.path(), &pictures])
        .stderr(Stdio::inherit())
        .output()
        .expect("node starts");
    assert!(done.status.success(), "its reason is above");
    serde_json::from_slice(&done.stdout).expect("a line of JSON")
}

#[test]
#[ignore = "needs Node.js, a browser and the packages of tests/browser"]
fn the_pages_of_a_class_work_in_a_browser() {
    let found = drive();
    assert_eq!(found["troubles"], json!([]));

    // WCAG 2.2, A and AA, in both languages, at each size; nothing is wider than the window.
    let looks = found["looks"].as_object().expect("pages");
    assert_eq!(looks.len(), 2 * (7 * 4 + 2 * 3));
    for (name, look) in looks {
        assert_eq!(look["violations"], json!([]), "{name}");
        assert_eq!(look["wider"], json!([]), "{name}");
        assert!(look["passed"].as_u64() > Some(12), "{name}: {look}");
    }
    assert!(
        found["nameless"].to_string().contains("button-name"),
        "a button without a name is not found"
    );
    assert_eq!(found["small"], json!([]), "targets under 24 px");

    // The script shows what the server shows, at first and after events.
    for language in ["en", "es"] {
        let same = &found["same"][language];
        assert_eq!(same["rows"], 24);
        assert_eq!(same["first"], json!([]), "{language}");
        assert_eq!(same["later"], json!([]), "{language}");
    }
    assert_eq!(
        found["evil"],
        json!([Value::Null, 0]),
        "a name ran as a script"
    );

    let events = &found["events"];
    assert_eq!(events["changed_rows"], json!([4, 11, 12, 21, 25]));
    assert_eq!(events["focus_in_row"], json!(["more", "21", true]));
    assert_eq!(events["typed"], json!("Switch off at the wall before you"));
    assert_eq!(events["order"], json!([7, 21, 5, 9, 12, 16]));
    assert_eq!(
        events["said"],
        json!([
            "Seat 12, Kira Olsson: stuck. Seat 21, Tove Aalto: unsafe just now.",
            null
        ])
    );
    assert_eq!(
        events["summary"],
        json!(["23 of 25 here", "4 stuck", "2 unsafe now"])
    );

    let keys = &found["keys"];
    assert_eq!(keys["first"], "Skip to the seats");
    assert_eq!(keys["skipped"], "seats");
    assert_eq!(keys["dialog"], json!([true, "Seat 1 · Aarón Quiroga"]));
    assert_eq!(keys["back"], json!([false, "more", "1"]));

    let posts = found["posts"].as_array().expect("what was sent");
    let expected = json!([
        ["/api/teacher/notices", { "seat": null, "text": "Five minutes more" }],
        ["/api/teacher/notices", { "seat": 2, "text": "Look at the lid" }],
        ["/api/teacher/seats/2/word", {}],
        ["/api/teacher/seats/2/hand-in?name=a%20%22b%22.attempt", "bytes of an attempt"],
        ["/api/teacher/seats/2/hand-in?name=bad.attempt", "no attempt"],
        ["/api/teacher/names", { "text": "Ana\nBo" }],
        ["/api/teacher/standing", { "standing": "Paused" }],
        ["/api/teacher/standing", { "standing": "Closed" }],
    ]);
    assert_eq!(
        posts.as_slice(),
        expected.as_array().expect("a list").as_slice()
    );
    let notes = &found["notes"];
    assert_eq!(notes["all"], json!(["Sent.", ""]));
    assert_eq!(notes["word"], "The word: otter");
    assert_eq!(
        notes["hand_in"],
        json!([
            "Taken in: a \"b\".attempt. Waiting to be checked",
            "line 1 is no <b>attempt</b>"
        ])
    );
    assert_eq!(notes["draft"], json!(["", "half a sentence"]));
    assert_eq!(
        notes["failed"],
        json!([
            "The computer that runs the class does not answer. Try again.",
            "lost?"
        ])
    );

    let lost = &found["lost"];
    let told = lost["told"].as_str().expect("a sentence");
    assert!(
        told.starts_with("No connection to the class since "),
        "{told}"
    );
    let said = lost["back"].as_array().expect("what is said");
    assert_eq!(
        said[..2],
        [told.into(), Value::from("Connected to the class again.")]
    );
    assert_eq!(lost["signed_out"], true);

    let silent = [
        "No connection to the class",
        "Connected to the class again.",
    ];
    assert_eq!(found["silent"], json!([[], [], silent]));

    let sign_in = &found["sign_in"];
    assert_eq!(sign_in["went"], "/teacher/board?lang=en");
    assert_eq!(
        sign_in["refused"],
        json!([
            "That is not the key of this class. Copy it from the window where the class was started.",
            "/teacher?lang=en"
        ])
    );
    assert_eq!(sign_in["pasted"], "/teacher/board?lang=en");

    assert_eq!(found["projector"], json!(["21 joined", "22 joined", false]));
    assert_eq!(found["without_script"], json!(["name", 24, true]));
}
