//! Courses: what is packed is opened again as it was, and a zip that could do harm is refused. The zips that could are
//! made here byte by byte (APPNOTE 6.3.10, sections 4.3 and 4.4, from memory), because no tool makes them.

use detent_content::{
    COURSE_FORMAT, ContentError, ContentLibrary, CourseZip, OwnFile, OwnPlace, PROGRAM_VERSION,
    PackedDifference, Problem, ZipProblem, disk, own_files, pack_course, read_course_zip,
};
use flate2::Compression;
use flate2::write::DeflateEncoder;
use std::io::{ErrorKind, Write};

const MANIFEST: &str = "// A course.\n(\n    format: 1,\n    title: (en: \"Two jobs\", es: \"Dos trabajos\"),\n    \
     author: \"A. Instructor\",\n    license: \"CC-BY-4.0\",\n    version: \"1.0\", // the first\n)\n";

/// A job that is built in, so that it is sound.
fn job() -> String {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let job = std::fs::read_to_string(root.join("scenarios/reset-by-moving-the-lid.ron"));
    let job = job.expect("it is there");
    let (before, course) = job.split_once("    course: ").expect("it is of the course");
    let (_, after) = course.split_once('\n').expect("a line");
    format!("{before}{after}")
}

/// The files of a course, by path.
fn course(manifest: &str) -> Vec<(String, Vec<u8>)> {
    [
        (OwnPlace::COURSE_FILE, manifest.to_owned()),
        ("scenarios/school-job.ron", job()),
        ("scenarios/señal.ron", job()),
    ]
    .map(|(path, text)| (path.to_owned(), text.into_bytes()))
    .to_vec()
}

fn own(manifest: &str) -> Vec<OwnFile> {
    own_files("school", course(manifest)).expect("all in their places")
}

/// A file in a zip, with everything that the zip says of it.
#[derive(Clone)]
struct Member {
    name: Vec<u8>,
    local_name: Option<Vec<u8>>,
    packed: Vec<u8>,
    method: u16,
    flags: u16,
    attributes: u32,
    size: u32,
    crc: u32,
    /// Listed in the directory.
    listed: bool,
    /// Where its own header stands, if not where it is written.
    at: Option<usize>,
}

impl Member {
    fn stored(name: impl AsRef<[u8]>, bytes: &[u8]) -> Member {
        let mut crc = flate2::Crc::new();
        crc.update(bytes);
        Member {
            name: name.as_ref().to_vec(),
            local_name: None,
            packed: bytes.to_vec(),
            method: 0,
            flags: 1 << 11,
            attributes: 0o100_644 << 16,
            size: bytes.len() as u32,
            crc: crc.sum(),
            listed: true,
            at: None,
        }
    }

    fn deflated(name: impl AsRef<[u8]>, bytes: &[u8]) -> Member {
        let mut encoder = DeflateEncoder::new(Vec::new(), Compression::best());
        encoder.write_all(bytes).expect("memory takes it");
        Member {
            packed: encoder.finish().expect("memory takes it"),
            method: 8,
            ..Member::stored(name, bytes)
        }
    }

    fn manifest() -> Member {
        Member::deflated(OwnPlace::COURSE_FILE, MANIFEST.as_bytes())
    }

    /// What stands in both headers of a file, from flags to length of the name.
    fn common(&self, name: &[u8]) -> Vec<u8> {
        let mut common = Vec::new();
        common.extend(self.flags.to_le_bytes());
        common.extend(self.method.to_le_bytes());
        common.extend([0, 0, 0x21, 0]);
        for number in [self.crc, self.packed.len() as u32, self.size] {
            common.extend(number.to_le_bytes());
        }
        common.extend((name.len() as u16).to_le_bytes());
        common
    }
}

/// The zip of these members.
fn zip(members: &[Member]) -> Vec<u8> {
    let mut zip = Vec::new();
    let mut directory = Vec::new();
    let mut listed: u16 = 0;
    for member in members {
        let at = member.at.unwrap_or(zip.len());
        if member.at.is_none() {
            let name = member.local_name.as_ref().unwrap_or(&member.name);
            zip.extend(b"PK\x03\x04\x14\0");
            zip.extend(member.common(name));
            zip.extend([0, 0]);
            zip.extend(name);
            zip.extend(&member.packed);
        }
        if member.listed {
            listed += 1;
            directory.extend(b"PK\x01\x02\x14\x03\x14\0");
            directory.extend(member.common(&member.name));
            directory.extend([0; 8]);
            directory.extend(member.attributes.to_le_bytes());
            directory.extend((at as u32).to_le_bytes());
            directory.extend(&member.name);
        }
    }
    let start = zip.len() as u32;
    zip.extend(&directory);
    zip.extend(b"PK\x05\x06\0\0\0\0");
    zip.extend(listed.to_le_bytes());
    zip.extend(listed.to_le_bytes());
    zip.extend((directory.len() as u32).to_le_bytes());
    zip.extend(start.to_le_bytes());
    zip.extend([0, 0]);
    zip
}

/// A zip with these bytes so far from its end.
fn patched(mut zip: Vec<u8>, from_end: usize, bytes: &[u8]) -> Vec<u8> {
    let at = zip.len() - from_end;
    zip[at..at + bytes.len()].copy_from_slice(bytes);
    zip
}

/// The one error of a zip that is refused.
#[track_caller]
fn error(zip: &[u8]) -> ContentError {
    let mut errors = read_course_zip("a.zip", zip).expect_err("it is refused");
    assert_eq!(errors.len(), 1, "{errors:?}");
    errors.swap_remove(0)
}

#[track_caller]
fn refused(zip: &[u8], problem: ZipProblem, field: &str) {
    let error = error(zip);
    assert_eq!(error.file, "a.zip");
    assert_eq!(error.problem, Problem::Zip(problem), "{error}");
    assert_eq!(error.field, field);
}

/// A zip with a sound manifest and one more file of this name is refused.
#[track_caller]
fn refused_name(name: &str, problem: ZipProblem) {
    for method in [Member::stored, Member::deflated] {
        let other = method(name, b"(parts: [])");
        let shown: String = name.chars().take(120).collect();
        refused(&zip(&[other, Member::manifest()]), problem, &shown);
    }
}

#[test]
fn the_same_files_give_the_same_zip_and_come_out_of_it_as_they_were() {
    let files = own(MANIFEST);
    let packed = pack_course("a.zip", &files).expect("it is sound");
    let mut turned = files.clone();
    turned.reverse();
    let again = pack_course("b.zip", &turned).expect("it is sound");
    assert!(packed == again, "the order of the files is in the zip");
    let CourseZip { course, files: out } = read_course_zip("a.zip", &packed).expect("just packed");
    assert_eq!(course.title.es, "Dos trabajos");
    assert_eq!(course.packed_with, PROGRAM_VERSION);
    let listed: Vec<&str> = course.files.iter().map(|f| f.path.as_str()).collect();
    assert_eq!(listed, ["scenarios/school-job.ron", "scenarios/señal.ron"]);
    // All but the manifest to the byte; that has what was packed added, and its remarks kept.
    assert_eq!(out.len(), files.len());
    for (before, after) in files.iter().zip(&out) {
        assert_eq!(after.file, format!("a.zip/{}", before.inner_path()));
        if before.place != OwnPlace::Course {
            assert_eq!(before.bytes, after.bytes);
        } else {
            let text = String::from_utf8(after.bytes.clone()).expect("text");
            assert!(
                text.starts_with("// A course.\n(\n    format: 1,\n"),
                "{text}"
            );
            assert!(text.contains("// the first\n"), "{text}");
        }
    }
    // What came out packs to the same again.
    assert!(pack_course("a.zip", &out).expect("it is sound") == packed);
}

#[test]
fn a_zip_is_a_library_without_a_disk() {
    let packed = pack_course("a.zip", &own(MANIFEST)).expect("it is sound");
    let library = ContentLibrary::of_zip("a.zip", &packed).expect("it is sound");
    assert_eq!(
        library.course().map(|course| course.title.en.as_str()),
        Some("Two jobs")
    );
    let job = library.scenario("school-job").expect("it is there");
    assert_eq!(job.file, "a.zip/scenarios/school-job.ron");
    assert!(library.guide(&job).expect("none is asked for").is_none());
    // The same from files as a page has them, and nothing is in the way of either.
    let mut all = course(MANIFEST);
    all.push(("notes.txt".to_owned(), b"not read".to_vec()));
    all.push(("scenarios/.hidden.ron".to_owned(), b"not read".to_vec()));
    let library = ContentLibrary::of_files("school", all).expect("it is sound");
    let job = library.scenario("school-job").expect("it is there");
    assert_eq!(job.file, "school/scenarios/school-job.ron");
    let misplaced = vec![("job.ron".to_owned(), Vec::new())];
    let errors = ContentLibrary::of_files("school", misplaced).expect_err("it is misplaced");
    assert_eq!(errors[0].problem, Problem::Misplaced);
}

#[test]
fn a_plan_names_jobs_that_there_are() {
    let with =
        |plan: &str| MANIFEST.replace("    version", &format!("    plan: [{plan}],\n    version"));
    let open = |plan: &str| {
        let packed = pack_course("a.zip", &own(&with(plan))).expect("it is sound in itself");
        ContentLibrary::of_zip("a.zip", &packed)
    };
    assert!(open("\"school-job\", \"drain-code\"").is_ok());
    let errors = open("\"drain-code\", \"no-such-job\"").expect_err("there is no such job");
    assert_eq!(errors.len(), 1);
    assert_eq!(errors[0].file, "a.zip/course.ron");
    assert_eq!((errors[0].line, errors[0].field.as_str()), (7, "plan[1]"));
    assert_eq!(errors[0].problem, Problem::NoJob("no-such-job".to_owned()));
}

#[test]
fn a_zip_of_another_tool_is_opened_with_its_folders() {
    let folder = |name: &str| Member {
        attributes: 0o040_755 << 16,
        ..Member::stored(name, b"")
    };
    let made = zip(&[
        folder("boards/"),
        folder("scenarios/"),
        Member::stored("scenarios/school-job.ron", job().as_bytes()),
        Member::manifest(),
    ]);
    let CourseZip { files, .. } = read_course_zip("a.zip", &made).expect("it is sound");
    assert_eq!(files.len(), 2);
    assert!(ContentLibrary::of_zip("a.zip", &made).is_ok());
}

#[test]
fn paths_that_lead_elsewhere_on_any_system_are_refused() {
    use ZipProblem::{Absolute, Backslash, Drive, Upward};
    for (name, problem) in [
        ("/etc/passwd", Absolute),
        ("\\\\host\\share\\a.ron", Absolute),
        ("../outside.ron", Upward),
        ("boards/../../outside.ron", Upward),
        ("boards/./a.ron", Upward),
        ("boards//a.ron", Upward),
        ("..", Upward),
        ("boards\\a.ron", Backslash),
        ("boards/..\\..\\a.ron", Backslash),
        ("C:a.ron", Drive),
        ("c:/a.ron", Drive),
        ("boards/a.ron:stream", Drive),
    ] {
        refused_name(name, problem);
    }
}

#[test]
fn names_that_some_system_does_not_take_are_refused() {
    use ZipProblem::{LongName, NameCharacters, Reserved};
    for (name, problem) in [
        ("boards/a\0.ron", NameCharacters),
        ("boards/a\n.ron", NameCharacters),
        ("boards/a\u{1b}[2J.ron", NameCharacters),
        ("boards/a\u{202e}nor.ron", NameCharacters),
        // An accent that stands alone: some systems join it to its letter.
        ("boards/se\u{301}.ron", NameCharacters),
        ("boards/a?.ron", NameCharacters),
        ("boards/a.ron.", NameCharacters),
        ("boards/a.ron ", NameCharacters),
        ("boards/ a.ron", NameCharacters),
        ("boards/con.ron", Reserved),
        ("boards/NUL", Reserved),
        ("scenarios/Com7.guide.ron", Reserved),
        ("scenarios/lpt¹.ron", Reserved),
        ("scenarios/aux .ron", Reserved),
        ("aux/a.ron", Reserved),
    ] {
        refused_name(name, problem);
    }
    let long = format!("boards/{}.ron", "a".repeat(117));
    refused_name(&long, LongName);
    let no_text = Member::stored(b"boards/\xff.ron", b"()");
    let made = zip(&[no_text, Member::manifest()]);
    refused(&made, NameCharacters, "boards/\u{fffd}.ron");
    for good in [
        "scenarios/common.ron",
        "scenarios/console.ron",
        "scenarios/com10.ron",
    ] {
        let made = zip(&[Member::stored(good, b"()"), Member::manifest()]);
        assert!(read_course_zip("a.zip", &made).is_ok(), "{good}");
    }
}

#[test]
fn two_names_of_one_file_are_refused() {
    for (one, other) in [
        ("scenarios/a.ron", "scenarios/a.ron"),
        ("scenarios/a.ron", "scenarios/A.ron"),
        ("scenarios/é.ron", "scenarios/É.ron"),
        // Two letters that have one capital.
        ("scenarios/s.ron", "scenarios/ſ.ron"),
        ("scenarios/k.ron", "scenarios/\u{212a}.ron"),
        ("scenarios", "scenarios/"),
    ] {
        let made = zip(&[
            Member::manifest(),
            Member::stored(one, b""),
            Member::stored(other, b""),
        ]);
        let field = if one == other { "" } else { other };
        refused(&made, ZipProblem::SameName, field);
    }
}

#[test]
fn what_is_no_plain_file_is_refused() {
    let with = |member: Member| zip(&[Member::manifest(), member]);
    let job = Member::stored("scenarios/a.ron", b"../../outside");
    // Link, device, pipe, socket; also where the zip says that it comes from a system that has none.
    for kind in [0o120_000_u32, 0o020_000, 0o060_000, 0o010_000, 0o140_000] {
        let member = Member {
            attributes: (kind | 0o777) << 16,
            ..job.clone()
        };
        let made = with(member);
        refused(&made, ZipProblem::Link, "scenarios/a.ron");
        let from = made.windows(6).rposition(|w| w == b"PK\x01\x02\x14\x03");
        let mut dos = made;
        dos[from.expect("a header") + 5] = 0;
        refused(&dos, ZipProblem::Link, "scenarios/a.ron");
    }
    for flags in [1, 1 | 1 << 6] {
        let member = Member {
            flags,
            ..job.clone()
        };
        refused(&with(member), ZipProblem::Encrypted, "scenarios/a.ron");
    }
    for method in [1, 6, 9, 12, 14, 93, 95, 97, 98, 1234] {
        let member = Member {
            method,
            ..job.clone()
        };
        refused(&with(member), ZipProblem::Method, "scenarios/a.ron");
    }
}

#[test]
fn what_no_course_has_is_refused() {
    for name in [
        "README.md",
        "boards/run.exe",
        "inner.zip",
        "scenarios/inner.zip",
        "job.ron",
        "scenarios/deep/a.ron",
        "scenarios/.a.ron",
        "Boards/a.ron",
        "tables/a.table",
        "tables/",
        "__MACOSX/a.ron",
    ] {
        refused_name_as_it_is(name);
    }
    // A folder with something in it.
    let full = Member::stored("boards/", b"abc");
    let made = zip(&[full, Member::manifest()]);
    refused(&made, ZipProblem::Strange, "boards/");
    let none = zip(&[Member::stored("parts.ron", b"(parts: [])")]);
    refused(&none, ZipProblem::NoManifest, "");
    refused(&zip(&[]), ZipProblem::NoManifest, "");
}

#[track_caller]
fn refused_name_as_it_is(name: &str) {
    let made = zip(&[Member::manifest(), Member::stored(name, b"")]);
    refused(&made, ZipProblem::Strange, name);
}

/// Bytes that deflate makes half as long, as no text of ours.
fn dull(length: usize) -> Vec<u8> {
    let mut state: u32 = 1;
    let digits = (0..length).map(|_| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        b"0123456789abcdef"[(state >> 28) as usize]
    });
    digits.collect()
}

#[test]
fn what_grows_out_of_all_bounds_is_refused() {
    let bomb = Member::deflated("scenarios/a.ron", &vec![b' '; 1 << 20]);
    assert!(bomb.packed.len() < 2000);
    let made = zip(&[Member::manifest(), bomb.clone()]);
    refused(&made, ZipProblem::Ratio, "scenarios/a.ron");
    // It is listed as small, as just not too large, or as nothing at all; and a short file as a longer one.
    let lies = [10, 4096, 100_000, 0].map(|size| Member {
        size,
        ..bomb.clone()
    });
    let short = Member {
        size: 50,
        ..Member::stored("scenarios/a.ron", b"()")
    };
    for lie in lies.into_iter().chain([short]) {
        let error = error(&zip(&[Member::manifest(), lie]));
        // Whoever unpacks it stops at the length that is listed.
        let expected = [ZipProblem::Size, ZipProblem::Torn].map(Problem::Zip);
        assert!(expected.contains(&error.problem), "{error}");
        assert_eq!(error.field, "scenarios/a.ron");
    }
    // One file too long, then all files together, then too many.
    let long = Member::deflated("scenarios/a.ron", &dull((1 << 20) + 1));
    let error_of_long = error(&zip(&[Member::manifest(), long]));
    assert_eq!(error_of_long.problem, Problem::TooLong { most: 1 << 20 });
    assert_eq!(error_of_long.field, "scenarios/a.ron");
    let one = Member::deflated("a", &dull(1 << 20));
    let mut many = vec![Member::manifest()];
    many.extend((0..32).map(|n| Member {
        name: format!("scenarios/a{n}.ron").into_bytes(),
        ..one.clone()
    }));
    let too_much = Problem::TooMuch {
        files: 1000,
        bytes: 32 << 20,
    };
    assert_eq!(error(&zip(&many)).problem, too_much);
    let mut many = vec![Member::manifest()];
    many.extend((0..1000).map(|n| Member::stored(format!("scenarios/a{n}.ron"), b"()")));
    assert_eq!(error(&zip(&many)).problem, too_much);
    let sixty_thousand = vec![Member::stored("scenarios/a.ron", b""); 60_000];
    assert_eq!(error(&zip(&sixty_thousand)).problem, too_much);
    let large = vec![0; (32 << 20) + 1];
    assert_eq!(error(&large).problem, Problem::TooLong { most: 32 << 20 });
}

#[test]
fn a_zip_that_contradicts_itself_is_refused() {
    let good = [
        Member::manifest(),
        Member::stored("scenarios/a.ron", b"(a: 1)"),
    ];
    let whole = zip(&good);
    assert!(read_course_zip("a.zip", &whole).is_ok());
    let torn = ZipProblem::Torn;
    // Something before it, behind it, between its pieces; a piece of it.
    refused(&[b"#!/bin/sh\n", &whole[..]].concat(), torn, "");
    refused(&[b"PK\x03\x04", &whole[..]].concat(), torn, "");
    refused(&[&whole[..], b"\0"].concat(), torn, "");
    refused(&whole[..whole.len() - 1], torn, "");
    let commented = patched(whole.clone(), 2, &[3, 0]);
    refused(&[&commented[..], b"hi!"].concat(), torn, "");
    for bytes in [&b""[..], b"PK", b"hello", &[0; 100]] {
        let expected = if bytes.starts_with(b"PK") {
            torn
        } else {
            ZipProblem::NoZip
        };
        refused(bytes, expected, "");
    }
    // One more or one fewer than are listed.
    for entries in [1, 3] {
        let count = [entries, 0, entries, 0];
        refused(&patched(whole.clone(), 14, &count), torn, "");
    }
    // Its own header calls the file something else, or it is in no directory.
    let [manifest, job] = good.clone();
    let renamed = Member {
        local_name: Some(b"scenarios/b.ron".to_vec()),
        ..job.clone()
    };
    refused(&zip(&[manifest.clone(), renamed]), torn, "");
    let hidden = Member {
        listed: false,
        ..Member::stored("boards/b.ron", b"()")
    };
    refused(&zip(&[manifest.clone(), hidden, job.clone()]), torn, "");
    // Two files out of the same bytes, as some bombs are made.
    let twice = Member {
        name: b"scenarios/b.ron".to_vec(),
        at: Some(0),
        ..manifest.clone()
    };
    refused(&zip(&[manifest.clone(), job.clone(), twice]), torn, "");
    // Other bytes than the sum is of.
    let spoiled = Member {
        crc: job.crc ^ 1,
        ..job
    };
    refused(&zip(&[manifest, spoiled]), torn, "scenarios/a.ron");
}

#[test]
fn forms_for_more_than_a_course_are_refused() {
    let whole = zip(&[Member::manifest()]);
    let large = ZipProblem::Zip64;
    refused(&patched(whole.clone(), 14, &[0xff; 4]), large, "");
    refused(&patched(whole.clone(), 10, &[0xff; 4]), large, "");
    refused(&patched(whole.clone(), 6, &[0xff; 4]), large, "");
    refused(
        &patched(whole.clone(), 18, &[1, 0]),
        ZipProblem::SeveralParts,
        "",
    );
    // The end for large zips in front of a common one that tells the same.
    let end = whole.len() - 22;
    let locator = [&b"PK\x06\x07"[..], &[0; 16]].concat();
    let with_locator = [&whole[..end], &locator, &whole[end..]].concat();
    refused(&with_locator, ZipProblem::Torn, "");
}

/// Whatever byte is changed: the zip is refused, or the same files come out of it.
#[test]
fn a_changed_byte_never_gives_other_files() {
    let packed = pack_course("a.zip", &own(MANIFEST)).expect("it is sound");
    let whole = read_course_zip("a.zip", &packed).expect("just packed");
    let mut opened = 0;
    for at in 0..packed.len() {
        for change in [0xff, 1] {
            let mut changed = packed.clone();
            changed[at] ^= change;
            if let Ok(read) = read_course_zip("a.zip", &changed) {
                assert!(read == whole, "byte {at}");
                opened += 1;
            }
        }
    }
    // Dates, and who made it, say nothing of the files.
    assert!(opened < packed.len() / 10, "{opened} of {}", packed.len());
    for length in 0..packed.len() {
        assert!(read_course_zip("a.zip", &packed[..length]).is_err());
    }
}

#[test]
fn files_that_are_not_those_that_were_packed_are_told_at_the_manifest() {
    let packed = pack_course("a.zip", &own(MANIFEST)).expect("it is sound");
    let whole = read_course_zip("a.zip", &packed)
        .expect("just packed")
        .files;
    let told = |files: &[OwnFile]| {
        let members: Vec<Member> = (files.iter())
            .map(|own| Member::deflated(own.inner_path(), &own.bytes))
            .collect();
        let errors = read_course_zip("a.zip", &zip(&members)).expect_err("it was changed");
        let told = errors.into_iter().map(|error| {
            assert_eq!(error.file, "a.zip/course.ron");
            assert!(error.line > 7, "{error:?}");
            (error.field, error.problem)
        });
        told.collect::<Vec<_>>()
    };
    let not_as_packed = |difference, path: &str| Problem::NotAsPacked {
        difference,
        path: path.to_owned(),
    };
    let (job, other) = ("scenarios/school-job.ron", "scenarios/other.ron");
    let mut changed = whole.clone();
    let own = changed.iter_mut().find(|own| own.inner_path() == job);
    own.expect("it is there").bytes.push(b'\n');
    assert_eq!(
        told(&changed),
        [(
            "files[0].sha256".to_owned(),
            not_as_packed(PackedDifference::Changed, job)
        )]
    );
    let mut renamed = whole.clone();
    let own = renamed.iter_mut().find(|own| own.inner_path() == job);
    own.expect("it is there").file = other.to_owned();
    assert_eq!(
        told(&renamed),
        [
            (
                "files".to_owned(),
                not_as_packed(PackedDifference::Added, other)
            ),
            (
                "files[0].path".to_owned(),
                not_as_packed(PackedDifference::Gone, job)
            ),
        ]
    );
}

#[test]
fn a_course_of_a_newer_format_says_what_it_needs() {
    let newer = MANIFEST
        .replace("format: 1,", "format: 2,\n    packed_with: \"7.1.0\",")
        .replace("version", "pictures: [\"a.png\"],\n    version");
    // With files of kinds that this program does not know.
    let made = zip(&[
        Member::stored("pictures/a.png", b"\x89PNG"),
        Member::stored(OwnPlace::COURSE_FILE, newer.as_bytes()),
    ]);
    let found = error(&made);
    assert_eq!((found.line, found.field.as_str()), (3, "format"));
    let problem = Problem::NewerCourse {
        format: COURSE_FORMAT + 1,
        packed_with: "7.1.0".to_owned(),
    };
    assert_eq!(found.problem, problem);
    assert!(found.to_string().contains("7.1.0"), "{found}");
    // A field in a job that this program does not know, in a course that a newer program has packed.
    let newer = MANIFEST.replace("format: 1,", "format: 1,\n    packed_with: \"7.1.0\",");
    let job = job().replacen("(\n", "(\n    weather: Rain,\n", 1);
    let made = zip(&[
        Member::stored("scenarios/a.ron", job.as_bytes()),
        Member::stored(OwnPlace::COURSE_FILE, newer.as_bytes()),
    ]);
    let errors = ContentLibrary::of_zip("a.zip", &made).expect_err("the job is refused");
    assert_eq!(errors[0].problem, Problem::NewerProgram("7.1.0".to_owned()));
    assert!(matches!(errors[1].problem, Problem::UnknownField { .. }));
    assert_eq!(errors.len(), 2);
}

#[test]
fn a_folder_is_written_whole_or_not_at_all() {
    let parent = tempfile::tempdir().expect("a folder");
    let folder = parent.path().join("school");
    let files = [
        ("course.ron".to_owned(), MANIFEST.as_bytes()),
        ("scenarios/a.ron".to_owned(), b"()"),
    ];
    disk::write_folder(&folder, &files).expect("it can be written");
    let text = std::fs::read_to_string(folder.join("course.ron")).expect("it is there");
    assert_eq!(text, MANIFEST);
    let again = disk::write_folder(&folder, &files).expect_err("it is there");
    assert_eq!(again.kind(), ErrorKind::AlreadyExists);
    // One file twice cannot be written: then there is no folder.
    let twice = [files[0].clone(), files[0].clone()];
    assert!(disk::write_folder(&parent.path().join("twice"), &twice).is_err());
    let left: Vec<_> = (std::fs::read_dir(parent.path()).expect("a folder"))
        .map(|entry| entry.expect("an entry").file_name())
        .collect();
    assert_eq!(left, ["school"]);
}
