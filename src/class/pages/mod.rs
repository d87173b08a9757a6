//! The pages that a class's server hands out, made here as text: the instructor's board, what is shown on the projector,
//! the way in for the instructor, and what a learner is told where no packed page is.
//!
//! Each page is a function of what it shows. Markup is made by `maud`, which escapes every text; what learners typed goes
//! through [`shown`](shown::shown) besides. A script keeps a page up to date from the server's stream of events, by the same
//! texts. There is no inline script and no inline style, so that [`CONTENT_SECURITY_POLICY`] can forbid both.

mod assets;
mod board_page;
mod frame;
mod gradebook_job;
mod gradebook_learner;
mod gradebook_page;
mod gradebook_plot;
mod gradebook_report;
mod gradebook_view;
mod language;
mod no_page;
mod page_texts;
mod projector;
mod seat_choice;
mod seat_row;
mod seat_state;
mod shown;
mod sign_in;

pub use assets::asset;
pub use board_page::board_page;
pub use gradebook_job::gradebook_job_page;
pub use gradebook_learner::{LONGEST_COMMENT, gradebook_learner_page};
pub use gradebook_page::gradebook_page;
pub use gradebook_plot::{items_plot, skills_plot};
pub use gradebook_report::{ReportReader, gradebook_report_page};
pub use gradebook_view::GradebookView;
pub use language::page_language;
pub use no_page::no_page_page;
pub use page_texts::PageTexts;
pub use projector::projector_page;
pub use seat_choice::{SeatChoice, SeatOrder, SeatsShown};
pub use sign_in::sign_in_page;

/// What the server says of every page in `Content-Security-Policy`.
pub const CONTENT_SECURITY_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

#[cfg(test)]
mod gradebook_tests;
#[cfg(test)]
mod tests;
