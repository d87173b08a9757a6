//! Where a database may lie.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a lock is a file of its own, beside the database"
)]

use super::StoreError;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::path::{Path, PathBuf};

/// File systems of other computers, as Linux names them.
const SHARES: [&str; 12] = [
    "9p",
    "afs",
    "ceph",
    "cifs",
    "fuse.glusterfs",
    "fuse.rclone",
    "fuse.sshfs",
    "ncpfs",
    "nfs",
    "nfs4",
    "smb3",
    "smbfs",
];

/// The kind of network share on which this file lies or would lie, where that can be told: on Linux by its mounts, on
/// Windows by a path that begins with another computer's name.
pub(super) fn network_share(file: &Path) -> Option<String> {
    if file.to_string_lossy().starts_with(r"\\") {
        return Some("UNC".to_owned());
    }
    let folder = file
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    let folder = fs::canonicalize(folder.unwrap_or(Path::new("."))).ok()?;
    let mounts = fs::read_to_string("/proc/self/mounts").ok()?;
    share_in(&mounts, &folder)
}

/// The same with this list of mounts, as in `/proc/self/mounts` (proc(5)).
fn share_in(mounts: &str, folder: &Path) -> Option<String> {
    let mounts = mounts.lines().filter_map(|line| {
        let mut fields = line.split(' ').skip(1);
        // Spaces in a path are written as octal numbers.
        let place = PathBuf::from(fields.next()?.replace("\\040", " "));
        Some((place, fields.next()?))
    });
    let (_, kind) = mounts
        .filter(|(place, _)| folder.starts_with(place))
        // Of two at one place the later one is seen.
        .max_by_key(|(place, _)| place.components().count())?;
    SHARES.contains(&kind).then(|| kind.to_owned())
}

/// The lock of a database, held as long as this is there.
pub(super) struct Lock(#[expect(dead_code, reason = "it only has to be open")] File);

/// Takes the lock beside the database; it goes with the program, however that ends.
pub(super) fn lock(file: &Path) -> Result<Lock, StoreError> {
    let mut name = file.as_os_str().to_owned();
    name.push(".lock");
    let path = PathBuf::from(name);
    let system = |error: std::io::Error| StoreError::System {
        file: path.clone(),
        reason: error.to_string(),
    };
    let lock = OpenOptions::new()
        .create(true)
        .truncate(false)
        .write(true)
        .open(&path)
        .map_err(system)?;
    match lock.try_lock() {
        Ok(()) => Ok(Lock(lock)),
        Err(TryLockError::WouldBlock) => Err(StoreError::Taken(file.to_owned())),
        Err(TryLockError::Error(error)) => Err(system(error)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_told_by_its_mount() {
        let mounts = "/dev/sda1 / ext4 rw 0 0\nserver:/home /home nfs4 rw 0 0\n/dev/sdb1 /home/ann ext4 rw 0 0\n\
                      //pc/class /mnt/the\\040class cifs rw 0 0\n";
        for (folder, kind) in [
            ("/var", None),
            ("/home/bob/class", Some("nfs4")),
            ("/home/ann/class", None),
            ("/mnt/the class", Some("cifs")),
            ("/homestead", None),
        ] {
            assert_eq!(
                share_in(mounts, Path::new(folder)).as_deref(),
                kind,
                "{folder}"
            );
        }
    }
}
