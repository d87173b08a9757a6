//! The packed page for browsers, served from its folder.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "files of the program, not of a user"
)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::{fs, io};

/// What tells the page that a class serves it.
const MARK: &str = "<meta name=\"detent-class\" content=\"1\">\n</head>";

/// A file as it is sent.
pub(super) struct PageFile {
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Its media type.
    pub media_type: &'static str,
    /// How it is packed, if it is.
    pub encoding: Option<&'static str>,
    /// Whether its name changes with what is in it.
    pub is_lasting: bool,
}

/// The files of the page, by the names that may be asked for. Nothing else is ever opened.
pub struct BenchPage {
    files: BTreeMap<String, PathBuf>,
}

impl BenchPage {
    /// The page in this folder; none where there is no packed page.
    ///
    /// # Errors
    /// What the system says of a folder that is there.
    pub fn in_folder(folder: &Path) -> io::Result<Option<BenchPage>> {
        if !folder.join("index.html").is_file() {
            return Ok(None);
        }
        let mut files = BTreeMap::new();
        for entry in fs::read_dir(folder)? {
            let entry = entry?;
            if let Ok(name) = entry.file_name().into_string()
                && entry.file_type()?.is_file()
                && !name.starts_with('.')
            {
                files.insert(name, entry.path());
            }
        }
        Ok(Some(BenchPage { files }))
    }

    /// Where the packer puts the page: beside the folder of the program, as `cargo run` builds it, or beside the program.
    pub fn usual_folders() -> Vec<PathBuf> {
        let program = std::env::current_exe().unwrap_or_default();
        let around = program.ancestors().skip(1).take(2);
        around.map(|folder| folder.join("browser")).collect()
    }

    /// This file, packed in a way that the browser takes.
    pub(super) fn file(&self, name: &str, accepts: &str) -> Option<io::Result<PageFile>> {
        let name = if name.is_empty() { "index.html" } else { name };
        // What is packed is asked for by the name of what is in it.
        let media_type = media_type(name)?;
        let path = self.files.get(name)?;
        if name == "index.html" {
            let file = fs::read_to_string(path).map(|html| PageFile {
                bytes: html.replacen("</head>", MARK, 1).into_bytes(),
                media_type,
                encoding: None,
                is_lasting: false,
            });
            return Some(file);
        }
        let packed = [("br", "br"), ("gzip", "gz")]
            .into_iter()
            .find_map(|(encoding, ending)| {
                let takes = accepts.split(',').any(|one| {
                    one.split(';')
                        .next()
                        .is_some_and(|one| one.trim() == encoding)
                });
                let path = self
                    .files
                    .get(&format!("{name}.{ending}"))
                    .filter(|_| takes)?;
                Some((path, encoding))
            });
        let (path, encoding) = match packed {
            Some((path, encoding)) => (path, Some(encoding)),
            None => (path, None),
        };
        let is_lasting = name.starts_with("detent-");
        Some(fs::read(path).map(|bytes| PageFile {
            bytes,
            media_type,
            encoding,
            is_lasting,
        }))
    }
}

fn media_type(name: &str) -> Option<&'static str> {
    let (_, ending) = name.rsplit_once('.')?;
    Some(match ending {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "webmanifest" => "application/manifest+json",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_files_of_the_page_are_served() {
        let folder = tempfile::tempdir().expect("a folder");
        assert!(
            BenchPage::in_folder(folder.path())
                .expect("readable")
                .is_none()
        );
        for (name, text) in [
            ("index.html", "<head></head>"),
            ("page.js", "plain"),
            ("page.js.br", "packed"),
            (".hidden.js", "secret"),
            ("notes.txt", "secret"),
        ] {
            fs::write(folder.path().join(name), text).expect("written");
        }
        let page = BenchPage::in_folder(folder.path())
            .expect("readable")
            .expect("a page");
        let text = |name: &str, accepts: &str| {
            let file = page.file(name, accepts)?.expect("read");
            Some((String::from_utf8(file.bytes).expect("text"), file.encoding))
        };
        assert!(text("", "").expect("there").0.contains("detent-class"));
        assert_eq!(
            text("page.js", "gzip, br;q=0.5"),
            Some(("packed".to_owned(), Some("br")))
        );
        assert_eq!(text("page.js", "gzip"), Some(("plain".to_owned(), None)));
        for name in [
            "../Cargo.toml",
            "page.js.br",
            ".hidden.js",
            "notes.txt",
            "nothing.js",
            "/etc/passwd",
            "a\0.js",
        ] {
            assert_eq!(text(name, ""), None, "{name}");
        }
    }
}
