//! The rooms keep to their order, and those above `content` know no clock, file, screen, thread or
//! global. What clippy can see is in clippy.toml; this reads the source for the rest.

use std::fs;
use std::path::{Path, PathBuf};

/// Rooms that may touch the world: files, and for the last two the screen as well.
const WORLDLY: [&str; 3] = ["content", "cli", "app"];

/// In `src` but no rooms: the library's list of them, and the programs.
const NO_ROOMS: [&str; 3] = ["lib", "main", "bin"];

/// What rooms above `content` may not mention, and why.
const WORLD: &[(&str, &str)] = &[
    ("std::fs", "files"),
    ("std::net", "the network"),
    ("std::process", "other programs"),
    ("std::env::", "the surroundings of the program"),
    ("std::time", "a clock"),
    ("std::thread", "threads"),
    ("std::sync::atomic", "a global or threads"),
    ("std::sync::LazyLock", "a global"),
    ("std::sync::OnceLock", "a global"),
    ("std::sync::Mutex", "a global or threads"),
    ("std::sync::RwLock", "a global or threads"),
    ("std::sync::mpsc", "threads"),
    ("std::path", "files"),
    ("static mut", "a global"),
    ("thread_local!", "a global"),
    ("println!", "the screen"),
    ("eprintln!", "the screen"),
    ("print!", "the screen"),
    ("std::io::std", "the screen"),
];

/// Left behind by somebody who meant to come back.
const LEFTOVERS: [&str; 3] = ["dbg!", "todo!", "unimplemented!"];

/// Only `app` names these.
const WINDOW_CRATES: [&str; 3] = ["bevy", "bevy_egui", "egui"];

#[test]
fn no_room_uses_one_that_comes_after_it() {
    let rooms = rooms();
    let mut wrong = Vec::new();
    for source in sources() {
        for (line, room) in rooms_used(&source.code, &rooms) {
            if let Some(own) = &source.room
                && order(&rooms, room) > order(&rooms, own)
            {
                wrong.push(format!("{}:{line}: uses `{room}`", source.name()));
            }
        }
    }
    assert!(wrong.is_empty(), "later rooms used:\n{}", wrong.join("\n"));
}

#[test]
fn every_room_in_the_list_is_a_folder_or_file_and_the_other_way_round() {
    let mut listed = rooms();
    listed.sort();
    let mut found: Vec<String> = fs::read_dir(root().join("src"))
        .expect("src is there")
        .map(|entry| entry.expect("src can be listed").path())
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .filter(|name| !NO_ROOMS.contains(&name.as_str()))
        .collect();
    found.sort();
    assert_eq!(listed, found);
}

#[test]
fn only_the_app_names_the_window() {
    let mut wrong = Vec::new();
    for source in sources() {
        if source.room.as_deref() != Some("app") {
            for name in WINDOW_CRATES {
                let lines = lines_with(&source.code, name);
                wrong.extend(lines.map(|line| format!("{}:{line}: {name}", source.name())));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn rooms_above_content_know_nothing_of_the_world() {
    let mut wrong = Vec::new();
    for source in sources() {
        let Some(room) = &source.room else { continue };
        if WORLDLY.contains(&room.as_str()) {
            continue;
        }
        for (line, what) in world_mentions(&source.code) {
            wrong.push(format!("{}:{line}: {what}", source.name()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn nothing_is_left_over() {
    let mut wrong = Vec::new();
    for source in sources() {
        for name in LEFTOVERS {
            let lines = lines_with(&source.code, name);
            wrong.extend(lines.map(|line| format!("{}:{line}: {name}", source.name())));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

// The checks themselves, on source that breaks the rules.

#[test]
fn a_later_room_is_seen_in_every_way_of_naming_it() {
    let rooms: Vec<String> = ["plant", "bench", "app"].map(str::to_owned).into();
    for (code, expect) in [
        ("use crate::bench::Action;", vec![(1, "bench")]),
        ("\nfn f() { crate::app::run() }", vec![(2, "app")]),
        (
            "use crate::{plant::Pin, app::{a, b}};",
            vec![(1, "app"), (1, "plant")],
        ),
        ("use crate::{\n  bench,\n};", vec![(1, "bench")]),
        (
            "pub(crate) use super::super::bench::Action;",
            vec![(1, "bench")],
        ),
        (
            "use crate::plant_like::X; use bench::y; mycrate::app::x",
            vec![],
        ),
    ] {
        let mut found = rooms_used(&blank_out(code), &rooms);
        found.sort_unstable();
        assert_eq!(found, expect, "{code}");
    }
}

#[test]
fn the_world_is_seen_in_every_way_of_naming_it() {
    for code in [
        "use std::fs;",
        "use std::{fmt, fs::File};",
        "std::time::Instant::now()",
        "static mut X: u8 = 0;",
        "println!(\"\")",
        "use std::{io::{self, stdout}};",
        "std::env::var(x)",
    ] {
        assert!(!world_mentions(&blank_out(code)).is_empty(), "{code}");
    }
    for code in [
        "// std::fs and println!",
        "/* std::time */ let x = \"std::fs\";",
        "let x = r#\"say \" println! \"#; let c = '\"';",
        "env!(\"CARGO_PKG_VERSION\")",
        "use std::io::{self, Write};",
        "fn long<'a>(x: &'a str) {}",
    ] {
        assert_eq!(world_mentions(&blank_out(code)), [], "{code}");
    }
}

#[test]
fn words_are_found_whole_and_outside_text_only() {
    let code = blank_out("bevy_like(); x.egui_ui(); // egui\n\"bevy\"; bevy::run(); todo!()");
    assert_eq!(lines_with(&code, "bevy").collect::<Vec<_>>(), [2]);
    assert_eq!(lines_with(&code, "egui").count(), 0);
    assert_eq!(lines_with(&code, "todo!").collect::<Vec<_>>(), [2]);
}

struct Source {
    path: PathBuf,
    /// The room it belongs to; none for lib.rs and main.rs.
    room: Option<String>,
    /// Its text with comments and literals blanked out, line for line.
    code: String,
}

impl Source {
    fn name(&self) -> String {
        self.path.display().to_string()
    }
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The rooms in the order of src/lib.rs.
fn rooms() -> Vec<String> {
    let text = fs::read_to_string(root().join("src/lib.rs")).expect("src/lib.rs is there");
    let rooms: Vec<String> = text
        .lines()
        .filter_map(|line| line.trim().strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(str::to_owned)
        .collect();
    assert!(rooms.len() >= 10, "src/lib.rs lists every room: {rooms:?}");
    rooms
}

fn order(rooms: &[String], room: &str) -> usize {
    let at = rooms.iter().position(|r| r == room);
    at.unwrap_or_else(|| panic!("{room} is in src/lib.rs"))
}

/// Every source file under src.
fn sources() -> Vec<Source> {
    let src = root().join("src");
    let mut folders = vec![src.clone()];
    let mut sources = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder in src can be listed") {
            let path = entry.expect("an entry in src can be read").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let within = path.strip_prefix(&src).expect("it was found in src");
                let first = within.components().next().expect("it has a name");
                let first = Path::new(first.as_os_str()).file_stem();
                let room = first.and_then(|name| name.to_str()).map(str::to_owned);
                let room = room.filter(|name| !NO_ROOMS.contains(&name.as_str()));
                let text = fs::read_to_string(&path).expect("a source is UTF-8");
                let code = blank_out(&text);
                let path = Path::new("src").join(within);
                sources.push(Source { path, room, code });
            }
        }
    }
    sources.sort_by(|a, b| a.path.cmp(&b.path));
    assert!(sources.len() > 20, "src was read");
    sources
}

/// Blank out comments, strings and characters; line breaks stay.
fn blank_out(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let after_word = out.ends_with(|c: char| c.is_alphanumeric() || c == '_');
        let hidden = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if rest.starts_with("/*") {
            block_comment(rest)
        } else if let Some(length) = raw_string(rest).filter(|_| !after_word) {
            length
        } else if first == '"' {
            closing(&rest[1..], '"').map_or(rest.len(), |end| end + 1)
        } else if first == '\'' {
            character(rest)
        } else {
            0
        };
        if hidden > 0 {
            out.extend(
                rest[..hidden]
                    .chars()
                    .map(|c| if c == '\n' { '\n' } else { ' ' }),
            );
            rest = &rest[hidden..];
        } else {
            out.push(first);
            rest = &rest[first.len_utf8()..];
        }
    }
    out
}

fn block_comment(rest: &str) -> usize {
    let mut depth = 0;
    let mut at = 0;
    while at < rest.len() {
        let here = &rest.as_bytes()[at..];
        if here.starts_with(b"/*") {
            (depth, at) = (depth + 1, at + 2);
        } else if here.starts_with(b"*/") {
            (depth, at) = (depth - 1, at + 2);
            if depth == 0 {
                return at;
            }
        } else {
            at += 1;
        }
    }
    rest.len()
}

fn raw_string(rest: &str) -> Option<usize> {
    let body = rest.strip_prefix("br").or_else(|| rest.strip_prefix('r'))?;
    let hashes = body.bytes().take_while(|b| *b == b'#').count();
    let inside = body[hashes..].strip_prefix('"')?;
    let end = format!("\"{}", "#".repeat(hashes));
    let length = inside.find(&end).map_or(inside.len(), |at| at + end.len());
    Some(rest.len() - inside.len() + length)
}

/// Length up to and with the closing quote.
fn closing(rest: &str, quote: char) -> Option<usize> {
    let mut escaped = false;
    for (at, c) in rest.char_indices() {
        if escaped {
            escaped = false;
        } else if c == '\\' {
            escaped = true;
        } else if c == quote {
            return Some(at + c.len_utf8());
        }
    }
    None
}

/// Length of a character literal; 0 for a lifetime.
fn character(rest: &str) -> usize {
    let body = &rest[1..];
    let mut chars = body.char_indices();
    match (chars.next(), chars.next()) {
        (Some((_, '\\')), _) => closing(body, '\'').map_or(0, |end| end + 1),
        (Some(_), Some((at, '\''))) => at + 2,
        _ => 0,
    }
}

/// Lines, from 1, in which a word stands by itself.
fn lines_with<'a>(code: &'a str, word: &'a str) -> impl Iterator<Item = usize> + 'a {
    places(code, word).map(|at| line_of(code, at))
}

fn places<'a>(code: &'a str, word: &'a str) -> impl Iterator<Item = usize> + 'a {
    code.match_indices(word)
        .map(|(at, _)| at)
        .filter(move |at| {
            let in_word = |c: char| c.is_alphanumeric() || c == '_';
            let before = code[..*at].ends_with(in_word);
            let open_end = word.ends_with(|c| !in_word(c)) || word == "std::io::std";
            let behind = !open_end && code[at + word.len()..].starts_with(in_word);
            !before && !behind
        })
}

fn line_of(code: &str, at: usize) -> usize {
    code[..at].matches('\n').count() + 1
}

/// Every path in the code that begins at `start` (such as `crate::`), `{…}` written out, with its
/// line.
fn paths(code: &str, start: &str) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for at in places(code, start) {
        let mut written = Vec::new();
        expand(&code[at + start.len()..], start, &mut written);
        found.extend(written.into_iter().map(|path| (line_of(code, at), path)));
    }
    found
}

/// Write out the tree of paths at the beginning of `rest`; returns how much of it was used.
fn expand(rest: &str, prefix: &str, out: &mut Vec<String>) -> usize {
    let blank = rest.len() - rest.trim_start().len();
    if rest[blank..].starts_with('{') {
        let mut at = blank + 1;
        loop {
            at += expand(&rest[at..], prefix, out);
            let behind = rest[at..].trim_start();
            at = rest.len() - behind.len();
            match behind.chars().next() {
                Some(',') => at += 1,
                Some('}') => return at + 1,
                _ => return at,
            }
        }
    }
    let word = rest[blank..]
        .find(|c: char| !(c.is_alphanumeric() || c == '_'))
        .unwrap_or(rest.len() - blank);
    let path = format!("{prefix}{}", &rest[blank..blank + word]);
    let behind = blank + word;
    if word > 0 && rest[behind..].starts_with("::") {
        return behind + 2 + expand(&rest[behind + 2..], &format!("{path}::"), out);
    }
    // `self as name`, `X as Y`: the new name is no path.
    let renamed = rest[behind..].trim_start().strip_prefix("as ");
    out.push(path);
    renamed.map_or(behind, |new| {
        let end = new.find(|c: char| !(c.is_alphanumeric() || c == '_'));
        rest.len() - new.len() + end.unwrap_or(new.len())
    })
}

/// Rooms that the code names, with the line.
fn rooms_used<'a>(code: &str, rooms: &'a [String]) -> Vec<(usize, &'a str)> {
    let mut used = Vec::new();
    for start in ["crate::", "super::"] {
        for (line, path) in paths(code, start) {
            let path = path.trim_start_matches("super::");
            // Even one step up counts: in a room's mod.rs it leads to the root.
            let named = path.strip_prefix("crate::").unwrap_or(path);
            let first = named.split("::").next().unwrap_or("");
            if let Some(room) = rooms.iter().find(|room| *room == first)
                && !used.contains(&(line, room.as_str()))
            {
                used.push((line, room.as_str()));
            }
        }
    }
    used
}

/// Mentions of the world outside, with the line.
fn world_mentions(code: &str) -> Vec<(usize, &'static str)> {
    let mut found = Vec::new();
    let written_out = paths(code, "std::");
    for &(name, what) in WORLD {
        found.extend(lines_with(code, name).map(|line| (line, what)));
        for (line, path) in &written_out {
            let path = format!("{path}::");
            let here = path.starts_with(name) && places(&path, name).next() == Some(0);
            if here && !found.contains(&(*line, what)) {
                found.push((*line, what));
            }
        }
    }
    found
}
