//! The folders of whoever builds the program: given other names while it is compiled, and looked for in what came out.

use std::path::{Path, PathBuf};

/// Folders of the machine that builds, each with the name that stands for it in what is built.
#[derive(Clone, Debug, Default)]
pub struct BuilderFolders(Vec<(PathBuf, &'static str)>);

impl BuilderFolders {
    /// Adds a folder, if there is one. The root of the file system is in every path and says nothing.
    pub fn with(mut self, folder: Option<PathBuf>, name: &'static str) -> BuilderFolders {
        let folder = folder.filter(|folder| folder.is_absolute() && folder.parent().is_some());
        self.0.extend(folder.map(|folder| (folder, name)));
        self
    }

    /// The compiler's flags that give them their other names. Of several that fit the compiler takes the last, so the
    /// longest, which may lie in a shorter one, comes last.
    pub fn flags(&self) -> Vec<String> {
        let mut folders: Vec<_> = self.0.iter().collect();
        folders.sort_by_key(|(folder, _)| folder.as_os_str().len());
        let flag = |(folder, name): &(PathBuf, &str)| {
            format!("--remap-path-prefix={}={name}", folder.display())
        };
        folders.into_iter().map(flag).collect()
    }

    /// The first of them that stands in these bytes, by its place there: the folder's whole name, not the beginning of
    /// a longer one.
    pub fn first_in(&self, bytes: &[u8]) -> Option<&Path> {
        let found = self.0.iter().filter_map(|(folder, _)| {
            let name = folder.as_os_str().as_encoded_bytes();
            let at = bytes.windows(name.len()).enumerate().position(|(at, w)| {
                let next = bytes.get(at + name.len());
                w == name && !next.is_some_and(|byte| is_in_a_name(*byte))
            });
            Some((at?, folder))
        });
        let first = found.min_by_key(|(at, folder)| (*at, folder.as_os_str().len()));
        first.map(|(_, folder)| folder.as_path())
    }
}

fn is_in_a_name(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || b"-_.".contains(&byte) || !byte.is_ascii()
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;

    fn folders() -> BuilderFolders {
        BuilderFolders::default()
            .with(Some("/home/ana/detent".into()), "detent")
            .with(Some("/home/ana".into()), "home")
            .with(Some("/opt/cargo".into()), "cargo")
            .with(Some("/".into()), "root")
            .with(Some("".into()), "nothing")
            .with(None, "nowhere")
    }

    #[test]
    fn the_first_folder_in_a_program_is_found() {
        let folders = folders();
        let found = |text: &[u8]| {
            folders
                .first_in(text)
                .map(|folder| folder.display().to_string())
        };
        assert_eq!(found(b"\x7fELF\0cargo/registry/src/lib.rs\0"), None);
        let text = b"\0\0/opt/cargo/registry/x.rs\0/home/ana/detent/src\0";
        assert_eq!(found(text).as_deref(), Some("/opt/cargo"));
        assert_eq!(found(b"x/home/ana/.config\0").as_deref(), Some("/home/ana"));
        assert_eq!(found(b"ends with /home/ana").as_deref(), Some("/home/ana"));
        // Another folder whose name begins alike is nobody's here.
        assert_eq!(found(b"/home/anabel/x /opt/cargo-web/y /home/ana-2"), None);
        assert_eq!(
            found(b"/home/anabel/x /home/ana/y").as_deref(),
            Some("/home/ana")
        );
        assert_eq!(found(b""), None);
    }

    #[test]
    fn flags_name_every_folder_and_the_longest_last() {
        let prefix = "--remap-path-prefix=";
        assert_eq!(
            folders().flags(),
            [
                format!("{prefix}/home/ana=home"),
                format!("{prefix}/opt/cargo=cargo"),
                format!("{prefix}/home/ana/detent=detent"),
            ]
        );
    }
}
