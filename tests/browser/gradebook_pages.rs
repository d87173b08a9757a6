//! The gradebook of a class that is really served, in a real browser: tests/browser/gradebook_pages.mjs.
//!
//! It needs what `class_pages.rs` needs; the pictures stay in `tmp/pictures/gradebook` of the target directory.

use super::http::{Room, id, upload};
use super::simulated_class::text_of;
use super::{definition, token};
use detent_class::definition::ClassDefinition;
use detent_class::protocol::{Upload, Verdict};
use detent_content::ContentLibrary;
use detent_training::lesson::technician::Persona;
use serde_json::{Value, json};
use std::path::Path;
use std::process::{Command, Stdio};

/// Invented names; one is long, one a script.
const NAMES: [&str; 6] = [
    "Íñigo Larrazabal Etxebarrieta de la Fuente",
    "Mina Farouk",
    "<script>evil=1</script>",
    "Otto Brandl",
    "Rhea Stamatis",
    "Tove Aalto",
];
const JOBS: [&str; 4] = [
    "drain-code",
    "no-hot-water",
    "lock-clicks-and-stops",
    "dark-machine",
];

/// Six learners: most did three jobs, well or badly, and nobody did the fourth.
fn fill(room: &Room, definition: &ClassDefinition) {
    let library = ContentLibrary::builtin().expect("sound");
    let mut number = 0;
    for (seat, name) in (1..).zip(NAMES) {
        let joined = room.join("ACDEFG", name, None).expect("a seat");
        let of_seat = [
            Persona::Expert,
            Persona::SkipsProof,
            Persona::Swapper,
            Persona::WaitsTooShort,
            Persona::SkipsRun,
            Persona::Touches,
        ];
        for place in 0..3 {
            let persona = of_seat[(seat as usize + place) % of_seat.len()];
            let text = text_of(&library, definition, (seat, place), persona);
            number += 1;
            let mut upload: Upload = upload(&joined.view, number);
            room.send_all(&joined.token, &mut upload, &text);
            let verdict = room.verdict(&joined.token, id(number));
            assert!(matches!(verdict, Verdict::Verified { .. }), "{verdict:?}");
        }
    }
}

#[test]
#[ignore = "needs Node.js, a browser and the packages of tests/browser"]
fn the_gradebook_works_in_a_browser() {
    let folder = tempfile::tempdir().expect("a folder");
    let definition = ClassDefinition {
        jobs: JOBS.map(str::to_owned).into(),
        seats: 8,
        ..definition()
    };
    let room = Room::open(&folder.path().join("class.sqlite"), definition.clone());
    fill(&room, &definition);
    let pictures = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures/gradebook");
    std::fs::create_dir_all(&pictures).expect("the target folder can be written");
    let playwright = std::env::var("DETENT_PLAYWRIGHT").expect("the folder of playwright-core");
    let modules = Path::new(&playwright).parent().expect("among others");
    let script =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/browser/gradebook_pages.mjs");
    let done = Command::new("node")
        .args([script.as_path(), modules])
        .arg(format!("http://{}", room.address))
        .arg(String::from(token(255)))
        .arg(&pictures)
        .stderr(Stdio::inherit())
        .output()
        .expect("node starts");
    assert!(done.status.success(), "its reason is above");
    let found: Value = serde_json::from_slice(&done.stdout).expect("a line of JSON");
    assert_eq!(found["troubles"], json!([]));
    // WCAG 2.2, A and AA, in both languages, at each size, and the dialog; nothing is wider than the window.
    let looks = found["looks"].as_object().expect("pages");
    assert_eq!(looks.len(), 2 * 4 * 5 + 1);
    let broken: Vec<_> = (looks.iter())
        .filter(|(_, look)| look["violations"] != json!([]) || look["wider"] != json!([]))
        .collect();
    assert!(broken.is_empty(), "{broken:#?}");
    for (name, look) in looks {
        assert_eq!(look["broken_pictures"], 0, "{name}");
        assert!(look["passed"].as_u64() > Some(12), "{name}: {look}");
    }
    for printed in ["teacher_en", "teacher_es", "parent_en", "parent_es"] {
        assert_eq!(
            found[format!("print_{printed}")],
            0,
            "{printed}: what is for the screen is printed"
        );
    }
    let notes = &found["notes"];
    assert_eq!(notes["wrong"], "A mark is a number from 0 to 100.");
    assert_eq!(notes["without_reason"], "A changed mark needs a reason.");
    assert_eq!(notes["saved"], "Saved.");
    let stale = notes["stale"].as_str().expect("a sentence");
    assert!(
        stale.contains("mark 77.5") && stale.contains("“Well done.”"),
        "{stale}"
    );
    assert_eq!(found["stands"], "77.5");
    assert_eq!(notes["after_loading"], "Saved.");
    assert_eq!(
        (&found["left"], &found["learners_left"]),
        (&json!(false), &json!(5))
    );
}
