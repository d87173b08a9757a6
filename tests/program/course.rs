//! Courses through the real program: packed, checked, opened, and used as they are.

use super::library::{OwnLibrary, changed};
use super::printed_json::fits;
use detent_content::{OwnFile, disk, pack_course};
use serde_json::Value;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use tempfile::TempDir;

const JOB: &str = "scenarios/school-job.ron";

/// A folder with a course in `school`: one job on a built-in board.
struct Bench {
    folder: TempDir,
}

impl Bench {
    fn new() -> Bench {
        let bench = Bench {
            folder: tempfile::tempdir().expect("a folder"),
        };
        let folder = bench.path("school");
        std::fs::create_dir_all(folder.join("scenarios")).expect("it can be made");
        let manifest = bench.path("school/course.ron");
        bench.told(&["new".as_ref(), "course".as_ref(), manifest.as_ref()]);
        let text = std::fs::read_to_string(&manifest).expect("it was written");
        let plan = [("\"no-hot-water\"", "\"school-job\"")];
        std::fs::write(&manifest, changed(&text, &plan)).expect("it can be written");
        // The job of the other library, on the board that it was made for.
        let job = OwnLibrary::new().read(JOB);
        let changes = [("school-lamp", "lone-lamp"), ("V230Hz50", "V120Hz60")];
        std::fs::write(folder.join(JOB), changed(&job, &changes)).expect("it can be written");
        bench
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn run(&self, args: &[&OsStr], language: &str) -> Output {
        Command::new(env!("CARGO_BIN_EXE_detent"))
            .args(args)
            .args(["--lang", language])
            .current_dir(self.folder.path())
            .env("XDG_CACHE_HOME", self.folder.path())
            .output()
            .expect("the program starts")
    }

    /// What is printed, where all is well.
    #[track_caller]
    fn told(&self, args: &[&OsStr]) -> String {
        let out = self.run(args, "en");
        let error = String::from_utf8_lossy(&out.stderr);
        assert!(
            out.status.success(),
            "{error}{}",
            String::from_utf8_lossy(&out.stdout)
        );
        let told = String::from_utf8(out.stdout).expect("text");
        assert!(!told.contains('‹'), "{told}");
        told
    }

    /// The same for arguments in one line.
    #[track_caller]
    fn says(&self, args: &str) -> String {
        let args: Vec<&OsStr> = args.split(' ').map(OsStr::new).collect();
        self.told(&args)
    }

    /// Refused with this exit status, in both languages; what was said in English.
    #[track_caller]
    fn refused(&self, args: &str, status: i32) -> String {
        let args: Vec<&OsStr> = args.split(' ').map(OsStr::new).collect();
        let told = ["en", "es"].map(|language| {
            let out = self.run(&args, language);
            let told = [out.stdout, out.stderr].concat();
            let told = String::from_utf8(told).expect("text");
            assert_eq!(out.status.code(), Some(status), "{told}");
            assert!(!told.contains('‹'), "{told}");
            told
        });
        assert_ne!(told[0], told[1]);
        let [english, _] = told;
        english
    }

    /// What lies in the folder, and what lies in the folders there.
    fn entries(&self) -> Vec<String> {
        let mut entries = Vec::new();
        let mut open = vec![self.folder.path().to_owned()];
        while let Some(folder) = open.pop() {
            for entry in std::fs::read_dir(&folder).expect("a folder") {
                let path = entry.expect("an entry").path();
                let name = path.strip_prefix(self.folder.path()).expect("inside");
                entries.push(name.display().to_string());
                if path.is_dir() {
                    open.push(path);
                }
            }
        }
        entries.sort();
        entries
    }

    fn write(&self, name: &str, bytes: &[u8]) {
        std::fs::write(self.path(name), bytes).expect("it can be written");
    }

    fn read(&self, name: &str) -> Vec<u8> {
        std::fs::read(self.path(name)).expect("it is there")
    }
}

/// The zip of a folder that nobody has checked.
fn zip_of(folder: &Path) -> Vec<u8> {
    let files: Vec<OwnFile> = disk::library_files(folder).expect("it can be read");
    pack_course("a.zip", &files).expect("it can be packed")
}

#[test]
fn a_course_is_packed_checked_opened_and_used() {
    let bench = Bench::new();
    let heading = "First week at the bench — version 1.0, by A. Instructor, license CC-BY-4.0";
    let checked = bench.says("course check school");
    assert!(checked.starts_with(heading), "{checked}");
    assert!(checked.contains("Errors: 0. Warnings: 0."), "{checked}");
    let packed = bench.says("course pack school --to a.zip");
    assert!(
        packed.contains(heading) && packed.contains("a.zip written: 2 files"),
        "{packed}"
    );
    // The same files, the same zip; nothing is written over.
    bench.says("course pack school --to b.zip");
    let zip = bench.read("a.zip");
    assert!(zip == bench.read("b.zip"));
    let over = bench.refused("course pack school --to a.zip", 2);
    assert!(over.contains("a.zip is there already"), "{over}");
    assert!(zip == bench.read("a.zip"));
    let report = fits("course-check-1", &bench.says("course check a.zip --json"));
    assert_eq!(report["course"]["packed_with"], env!("CARGO_PKG_VERSION"));
    assert_eq!(
        report["course"]["plan"],
        serde_json::json!(["drain-code", "school-job"])
    );
    let files = report["files"].as_array().expect("a list");
    let named: Vec<&Value> = files.iter().map(|file| &file["file"]).collect();
    assert_eq!(
        named,
        ["a.zip/course.ron", "a.zip/scenarios/school-job.ron"]
    );
    let proved = fits(
        "course-check-1",
        &bench.says("course check a.zip --prove --json"),
    );
    assert_eq!(
        proved["files"][1]["machines"].as_array().map(Vec::len),
        Some(1)
    );
    // Open, it is as it was, and packs to the same again.
    let opened = bench.says("course open a.zip --to opened");
    assert!(
        opened.contains("Folder opened written with 2 files"),
        "{opened}"
    );
    assert!(
        bench.read("school/scenarios/school-job.ron")
            == bench.read("opened/scenarios/school-job.ron")
    );
    assert!(zip_of(&bench.path("opened")) == zip);
    let over = bench.refused("course open a.zip --to opened", 2);
    assert!(over.contains("opened is there already"), "{over}");
    // Used as it is: the plan first, its jobs nowhere else.
    let listed = bench.says("scenarios --library a.zip");
    let lines: Vec<&str> = listed.lines().collect();
    assert_eq!(lines[0], heading);
    assert!(lines[1].starts_with("  drain-code "), "{listed}");
    assert!(lines[2].starts_with("  school-job "), "{listed}");
    assert_eq!(listed.matches("\n  drain-code ").count(), 1);
    bench.write("nothing.script", b"Wait(s: 1)\n");
    bench.says("play school-job nothing.script --save a.attempt --json --library a.zip");
    bench.says("replay a.attempt --library a.zip");
}

#[test]
fn own_boards_and_parts_are_used_out_of_a_zip_and_nothing_is_unpacked() {
    let bench = Bench::new();
    let own = OwnLibrary::new();
    own.write(
        "course.ron",
        &String::from_utf8(bench.read("school/course.ron")).expect("text"),
    );
    bench.write("own.zip", &zip_of(own.folder.path()));
    bench.write("nothing.script", b"Wait(s: 1)\n");
    let before = bench.entries();
    assert!(bench.says("parts --library own.zip").contains("S-1"));
    let sheet = bench.says("sheet --board school-lamp --library own.zip");
    assert!(sheet.starts_with("The school's lamp\n"), "{sheet}");
    bench.says("play school-job nothing.script --json --library own.zip");
    let checked = bench.says("course check own.zip");
    assert!(
        checked.contains("Files checked: 4. Errors: 0."),
        "{checked}"
    );
    assert_eq!(bench.entries(), before);
}

#[test]
fn nothing_with_an_error_is_packed() {
    let bench = Bench::new();
    let job = String::from_utf8(bench.read("school/scenarios/school-job.ron")).expect("text");
    let unknown = changed(&job, &[("(\n", "(\n    weather: 3,\n")]);
    bench.write("school/scenarios/school-job.ron", unknown.as_bytes());
    let told = bench.refused("course pack school --to a.zip", 1);
    assert!(
        told.contains("school-job.ron:") && told.contains("weather"),
        "{told}"
    );
    assert!(!bench.path("a.zip").exists());
    // What only the simulator can say.
    let slow = job.find("par_minutes: ").expect("it is there") + "par_minutes: ".len();
    let slow = format!(
        "{}9.0{}",
        &job[..slow],
        &job[job[slow..].find(',').expect("a comma") + slow..]
    );
    bench.write("school/scenarios/school-job.ron", slow.as_bytes());
    let told = bench.refused("course pack school --to a.zip", 1);
    assert!(told.contains("par_minutes: "), "{told}");
    assert!(!bench.path("a.zip").exists());
    // What is only wrong together with what is built in.
    bench.write("school/scenarios/drain-code.ron", job.as_bytes());
    let told = bench.refused("course check school", 1);
    assert!(told.contains("\"drain-code\" is already"), "{told}");
    std::fs::remove_file(bench.path("school/course.ron")).expect("it is there");
    for command in ["check school", "pack school --to a.zip"] {
        let status = if command.starts_with("check") { 1 } else { 2 };
        let told = bench.refused(&format!("course {command}"), status);
        assert!(told.contains("`course.ron`"), "{told}");
    }
}

#[test]
fn a_zip_that_leads_out_of_the_course_writes_nothing_at_all() {
    let bench = Bench::new();
    let mut zip = zip_of(&bench.path("school"));
    // The same length, in both of its headers.
    let (name, evil) = (JOB.as_bytes(), b"../outside/abcdefghi.ron");
    assert_eq!(name.len(), evil.len());
    let mut places = 0;
    for at in 0..zip.len() - name.len() {
        if zip[at..].starts_with(name) {
            zip[at..at + name.len()].copy_from_slice(evil);
            places += 1;
        }
    }
    assert_eq!(places, 2);
    bench.write("evil.zip", &zip);
    std::fs::create_dir(bench.path("outside")).expect("it can be made");
    let before = bench.entries();
    for (command, status) in [
        ("course open evil.zip --to opened", 2),
        ("course check evil.zip", 1),
        ("scenarios --library evil.zip", 2),
        ("parts --library evil.zip", 2),
    ] {
        let told = bench.refused(command, status);
        assert!(told.contains("../outside/abcdefghi.ron"), "{told}");
        assert!(told.contains("leads out of the course"), "{told}");
    }
    let json = bench.run(
        &["course", "check", "evil.zip", "--json"].map(OsStr::new),
        "en",
    );
    let report = fits(
        "course-check-1",
        &String::from_utf8(json.stdout).expect("text"),
    );
    assert_eq!(
        (&report["course"], &report["errors"]),
        (&Value::Null, &Value::from(1))
    );
    assert_eq!(report["files"][0]["findings"][0]["code"], "unreadable");
    assert_eq!(bench.entries(), before);
    // What is no zip, and no folder.
    bench.write("not.zip", b"hello");
    let told = bench.refused("scenarios --library not.zip", 2);
    assert!(told.contains("not.zip: this is not a zip"), "{told}");
    let told = bench.refused("course check no-such", 1);
    assert!(told.contains("no such folder"), "{told}");
}

#[test]
fn what_was_changed_since_it_was_packed_is_told() {
    let bench = Bench::new();
    bench.write("a.zip", &zip_of(&bench.path("school")));
    bench.says("course open a.zip --to opened");
    assert!(bench.says("course check opened").contains("Warnings: 0."));
    let job = bench.read("opened/scenarios/school-job.ron");
    bench.write(
        "opened/scenarios/school-job.ron",
        &[&job[..], b"// mine\n"].concat(),
    );
    let told = bench.says("course check opened");
    assert!(told.contains("opened/course.ron:"), "{told}");
    assert!(
        told.contains("files[0].sha256: scenarios/school-job.ron is not as it was"),
        "{told}"
    );
    assert!(told.contains("Errors: 0. Warnings: 1."), "{told}");
    bench.refused("course check opened --strict", 1);
    // It is still a library, and packs to another zip.
    bench.says("scenarios --library opened");
    assert!(zip_of(&bench.path("opened")) != bench.read("a.zip"));
}
