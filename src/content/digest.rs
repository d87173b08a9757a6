//! What tells whether two programs have the same content.

use sha2::{Digest as _, Sha256};

/// SHA-256 of these bytes.
pub fn sha256(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// SHA-256 over the path of each file, with its length before it, and the SHA-256 of what is in it.
pub fn digest_of_files(files: impl Iterator<Item = (String, [u8; 32])>) -> [u8; 32] {
    let mut all = Sha256::new();
    for (path, digest) in files {
        all.update((path.len() as u64).to_be_bytes());
        all.update(path);
        all.update(digest);
    }
    all.finalize().into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{ContentLibrary, OwnFile, OwnPlace, builtin, own_files};

    fn of(files: &[(String, Vec<u8>)]) -> [u8; 32] {
        let files = files.iter();
        digest_of_files(files.map(|(path, bytes)| (path.clone(), sha256(bytes))))
    }

    #[test]
    fn any_changed_byte_changes_it() {
        let mut files = vec![
            ("a/b.ron".to_owned(), b"(id: 1)".to_vec()),
            ("a/c.ron".to_owned(), Vec::new()),
        ];
        let sound = of(&files);
        for byte in 0..files[0].1.len() {
            for bit in 0..8 {
                files[0].1[byte] ^= 1 << bit;
                assert_ne!(of(&files), sound, "byte {byte}, bit {bit}");
                files[0].1[byte] ^= 1 << bit;
            }
        }
        assert_eq!(of(&files), sound);
        let moved = [
            ("a/b.ro".to_owned(), b"n(id: 1)".to_vec()),
            files[1].clone(),
        ];
        assert_ne!(of(&moved), sound);
        files.swap(0, 1);
        assert_ne!(of(&files), sound);
    }

    /// Every file that is built in counts: the digest of the content is that of all of them.
    #[test]
    fn what_is_built_in_counts_file_by_file() {
        let all: Vec<_> = builtin::files()
            .map(|(path, bytes)| (path, sha256(bytes)))
            .collect();
        let content = ContentLibrary::builtin().expect("it is sound").digest();
        assert_eq!(digest_of_files(all.iter().cloned()), content);
        for (changed, (path, _)) in all.iter().enumerate() {
            let mut all = all.clone();
            all[changed].1[0] ^= 1;
            assert_ne!(digest_of_files(all.into_iter()), content, "{path}");
        }
    }

    fn library() -> Vec<(String, Vec<u8>)> {
        let (_, board) = builtin::in_folder("assets/boards").next().expect("a board");
        let text = |path: &str| builtin::text(path).expect("it is built in").as_bytes();
        let board = board.replacen("id: \"", "id: \"own-", 1).into_bytes();
        [
            ("boards/own.ron", board),
            (
                "scenarios/own.ron",
                text("assets/templates/scenario.en.ron").to_vec(),
            ),
            ("parts.ron", text("assets/parts.ron").to_vec()),
            (
                "course.ron",
                text("assets/templates/course.en.ron").to_vec(),
            ),
        ]
        .map(|(path, bytes)| (path.to_owned(), bytes))
        .to_vec()
    }

    /// As far as the files are sound, and beside: what is wrong with them is no matter here.
    fn digest_of(root: &str, files: Vec<(String, Vec<u8>)>) -> [u8; 32] {
        let content_library = ContentLibrary::builtin().expect("it is sound");
        let own = own_files(root, files).expect("they are files of a library");
        content_library.beside(&own).0.digest()
    }

    #[test]
    fn every_file_of_an_own_library_counts_wherever_it_lies() {
        let with_own = digest_of("here", library());
        assert_eq!(digest_of("/some/where/else", library()), with_own);
        let content_library = ContentLibrary::builtin().expect("it is sound");
        assert_ne!(content_library.digest(), with_own);
        for changed in 0..library().len() {
            let mut files = library();
            files[changed].1.push(b' ');
            assert_ne!(digest_of("here", files), with_own, "{changed}");
        }
    }

    #[test]
    fn a_board_that_is_taken_in_counts_where_it_is_of_the_library() {
        let mut content_library = ContentLibrary::builtin().expect("it is sound");
        let built_in = content_library.digest();
        let (_, board) = builtin::in_folder("assets/boards").next().expect("a board");
        let id = content_library.boards[0].id.clone();
        let file = |text: String| OwnFile {
            place: OwnPlace::Boards,
            file: "boards/mine.ron".to_owned(),
            bytes: text.into_bytes(),
        };
        let own = board.replacen(&format!("id: \"{id}\""), "id: \"mine\"", 1);
        assert_ne!(own, board);
        let one_more = |mut content_library: ContentLibrary| {
            let taken = content_library.take_in_board(file(format!("{own}\n")));
            assert_eq!(taken, Ok(()));
            content_library.digest()
        };
        assert_eq!(one_more(content_library.clone()), built_in);
        assert_eq!(content_library.add(vec![file(own.clone())]), Ok(()));
        assert_ne!(one_more(content_library.clone()), content_library.digest());
    }
}
