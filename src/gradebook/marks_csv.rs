//! The marks as a table for spreadsheets.

use super::ClassGrades;

/// A cell that a spreadsheet takes for text and never for a formula: one that begins with `=`, `+`, `-`, `@`, a tab, a line
/// break or a null gets an apostrophe before it (OWASP, "CSV Injection"; ASVS 5.0, 1.2.10). Line breaks inside become blanks, so that no part of a
/// cell begins a line.
pub fn safe_cell(text: &str) -> String {
    let begins_formula = |c: char| matches!(c, '=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '\0');
    // The full-width forms count too: some spreadsheets make the plain ones of them.
    let is_wide = |c: char| matches!(c, '＝' | '＋' | '－' | '＠');
    let mut cell = String::with_capacity(text.len() + 1);
    if text
        .trim_start_matches(' ')
        .starts_with(|c| begins_formula(c) || is_wide(c))
    {
        cell.push('\'');
    }
    cell.extend(
        text.chars()
            .map(|c| if matches!(c, '\r' | '\n') { ' ' } else { c }),
    );
    cell
}

/// A table as RFC 4180 has it, CR and LF behind each row.
pub(crate) struct Table(csv::Writer<Vec<u8>>);

impl Table {
    /// With this row at its head.
    pub(crate) fn new<'a>(head: impl IntoIterator<Item = &'a str>) -> Table {
        let mut builder = csv::WriterBuilder::new();
        builder.terminator(csv::Terminator::CRLF);
        let mut table = Table(builder.from_writer(Vec::new()));
        table.push(head);
        table
    }

    /// Adds a row.
    pub(crate) fn push<'a>(&mut self, cells: impl IntoIterator<Item = &'a str>) {
        // Memory takes every row.
        let _ = self.0.write_record(cells);
    }

    /// All of it.
    pub(crate) fn into_text(self) -> String {
        let bytes = self.0.into_inner().unwrap_or_default();
        // It was put together from texts.
        String::from_utf8(bytes).unwrap_or_default()
    }
}

/// Points with one decimal; with a point, whatever the language, as programs read them.
pub(crate) fn points_cell(points: f64) -> String {
    format!("{:.1}", (10.0 * points).round() / 10.0)
}

/// The marks as CSV (RFC 4180, UTF-8): a head, then a row for each learner with the seat, the name or, without names, the
/// pseudonym, a column for each job, and the mean. What has no mark stays empty.
pub fn marks_csv(grades: &ClassGrades, with_names: bool) -> String {
    let jobs = grades.book.jobs();
    let who = if with_names { "name" } else { "pseudonym" };
    let head = ["seat", who].into_iter().map(str::to_owned);
    let head = head.chain(jobs.iter().map(|job| safe_cell(job)));
    let head: Vec<String> = head.chain(["mean".to_owned()]).collect();
    let mut table = Table::new(head.iter().map(String::as_str));
    for learner in &grades.learners {
        let who = if with_names {
            safe_cell(&learner.name)
        } else {
            learner.pseudonym.clone()
        };
        let cell = |points: Option<f64>| points.map(points_cell).unwrap_or_default();
        let mut cells = vec![learner.seat.to_string(), who];
        let marks = jobs
            .iter()
            .map(|job| cell(grades.mark(learner.seat, job).points));
        cells.extend(marks);
        cells.push(cell(grades.mean(learner.seat)));
        table.push(cells.iter().map(String::as_str));
    }
    table.into_text()
}
