//! A list of names: one a line, or the table of users that a school's system exports.

use super::name::shown_name;
use csv::{ReaderBuilder, StringRecord};

/// The names in this text, in its order.
///
/// Where the first line is that of `users.csv` in OneRoster 1.2 (CSV binding, section 4: `givenName`, `familyName`, `role`
/// or, in 1.1, the same), they are taken from those columns, of students only; else each line that is not empty is a name.
pub fn names_in(text: &str) -> Vec<String> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = ReaderBuilder::new()
        .flexible(true)
        .from_reader(text.as_bytes());
    let column = |head: &StringRecord, name: &str| head.iter().position(|cell| cell.trim() == name);
    let head = reader.headers().ok().cloned().unwrap_or_default();
    let (Some(given), Some(family)) = (column(&head, "givenName"), column(&head, "familyName"))
    else {
        return text
            .lines()
            .map(str::trim)
            .filter(|line| !line.is_empty())
            .map(str::to_owned)
            .collect();
    };
    let role = column(&head, "role");
    let records = reader.into_records().flatten();
    let students = records.filter(|record| {
        role.and_then(|role| record.get(role))
            .is_none_or(|role| role == "student")
    });
    students
        .map(|record| {
            let part = |at: usize| record.get(at).unwrap_or_default().trim().to_owned();
            format!("{} {}", part(given), part(family))
        })
        .collect()
}

/// Names as they are shown, and those of these that can be none, each in their order.
pub fn sorted_names(typed: Vec<String>) -> (Vec<String>, Vec<String>) {
    let (mut names, mut refused) = (Vec::new(), Vec::new());
    for typed in typed {
        match shown_name(&typed) {
            Some(name) => names.push(name),
            None => refused.push(typed),
        }
    }
    (names, refused)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_read_from_lines_and_from_a_table() {
        assert_eq!(
            names_in("\u{feff}Ann Low\r\n\n  Ben Oak \n"),
            ["Ann Low", "Ben Oak"]
        );
        // Columns of users.csv as OneRoster 1.2 orders them, from memory; the reader goes by their names.
        let table = "sourcedId,status,dateLastModified,enabledUser,username,givenName,familyName,role\n\
                     u1,active,,true,low,\"Ann, M.\",Low,student\nu2,active,,true,elm,Tom,Elm,teacher\n";
        assert_eq!(names_in(table), ["Ann, M. Low"]);
        assert_eq!(names_in(""), Vec::<String>::new());
    }
}
