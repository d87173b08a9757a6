//! What `detent best` prints.

#[test]
fn the_program_says_it_in_both_languages_from_the_built_in_table() {
    let folder = tempfile::tempdir().expect("a folder");
    for (language, found) in [
        ("en", "Drain pump: rotor seized"),
        ("es", "Bomba de desagüe"),
    ] {
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(["best", "standing-water", "--lang", language, "--cache"])
            .arg(folder.path())
            .output()
            .expect("the program starts");
        let told = String::from_utf8_lossy(&out.stdout);
        assert!(
            out.status.success(),
            "{}",
            String::from_utf8_lossy(&out.stderr)
        );
        assert!(told.contains(found) && !told.contains('‹'), "{told}");
        // Codes, five beliefs, five actions, the cost, the tries, and three headings and names.
        assert_eq!(told.lines().count(), 16, "{told}");
    }
}
