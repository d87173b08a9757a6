//! The project's own sources, for tests that read them.

use std::fs;
use std::path::{Path, PathBuf};

/// The project's folder.
pub fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// Every Rust file of a folder of the project, with its text.
pub fn rust_files(folder: &str) -> Vec<(PathBuf, String)> {
    let mut folders = vec![root().join(folder)];
    let mut files = Vec::new();
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("a folder of the project") {
            let path = entry.expect("it can be listed").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let text = fs::read_to_string(&path).expect("a source is UTF-8");
                files.push((path, text));
            }
        }
    }
    files
}
