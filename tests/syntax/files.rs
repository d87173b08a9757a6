//! Every RON file of ours comes back byte for byte.

use detent_syntax::document::Document;
use std::fs;
use std::path::{Path, PathBuf};

fn ron_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            ron_files(&path, found);
        } else if path.extension().is_some_and(|extension| extension == "ron") {
            found.push(path);
        }
    }
}

#[test]
fn every_file_comes_back_byte_for_byte() {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut files = Vec::new();
    for folder in ["scenarios", "assets"] {
        ron_files(&top.join(folder), &mut files);
    }
    assert!(files.len() > 10, "{files:?}");
    for file in files {
        let text = fs::read_to_string(&file).expect("UTF-8");
        let document = Document::parse(&text).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        assert_eq!(document.text(), text);
        assert_eq!(document.root().text().to_string(), text);
        // Every value is found again by its path.
        for value in document.values() {
            assert_eq!(
                document.range(&value.path),
                Some(value.range),
                "{}",
                value.path
            );
        }
    }
}
