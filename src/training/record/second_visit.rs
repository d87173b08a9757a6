//! The second visit after an attempt that is on file.

use super::attempt::Header;
use super::error::RecordError;
use crate::bench::Bench;
use crate::lesson::{CallBack, call_back_in_slices};
use crate::slices::without_breaks;

/// A second visit that begins, and the first line of its attempt.
pub struct SecondVisit {
    /// The customer who has called back, and the bench.
    pub call: CallBack,
    /// The header of the second visit's attempt; it carries the first one.
    pub header: Header,
}

/// The second visit after the job on the bench `done`, whose finished attempt is called `file` and holds the bytes
/// `first`; none where nobody calls back.
///
/// # Errors
/// What is wrong with that attempt; [`super::Damage::SecondVisit`] when it is a second visit itself.
pub fn second_visit(
    done: &Bench,
    file: &str,
    first: &[u8],
) -> Result<Option<SecondVisit>, RecordError> {
    without_breaks(second_visit_in_slices(done, file, first))
}

/// The same in slices of a few milliseconds each.
///
/// # Errors
/// As [`second_visit`].
pub async fn second_visit_in_slices(
    done: &Bench,
    file: &str,
    first: &[u8],
) -> Result<Option<SecondVisit>, RecordError> {
    let header = Header::of_second_visit(file, first)?;
    let call = call_back_in_slices(done).await;
    Ok(call.map(|call| SecondVisit { call, header }))
}
