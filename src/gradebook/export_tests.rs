//! What is handed on to other programs, read back by other readers.

#[path = "../../tests/schema/mod.rs"]
mod schema;

use super::tests::{graded, lost, side};
use super::*;
use detent_training::lesson::{Bilingual, Dimension, Loss};
use serde_json::Value;
use std::collections::BTreeMap;

/// Names that would do harm in a spreadsheet or a file.
const HOSTILE: [(&str, &str); 7] = [
    ("=HYPERLINK(\"http://x\")", "'=HYPERLINK(\"http://x\")"),
    ("+1+1", "'+1+1"),
    ("-2", "'-2"),
    ("@SUM(A1)", "'@SUM(A1)"),
    ("  =1", "'  =1"),
    ("＝1", "'＝1"),
    ("Rosa \"Ro\", Ibáñez\r\n=1", "Rosa \"Ro\", Ibáñez  =1"),
];

fn learner(seat: u32, name: &str) -> ClassLearner {
    ClassLearner {
        seat,
        name: name.to_owned(),
        pseudonym: format!("learner-{seat}"),
    }
}

/// Three learners: one with two jobs, one with a changed mark and a comment, one with nothing.
fn class() -> ClassGrades {
    let mut second_visit = graded(1, "one", 9_000, 1.0);
    second_visit.result.is_second_visit = true;
    let mut with_sides = graded(1, "two", 1_772_439_300_000, 0.755);
    with_sides.result.score.dimensions.push(side(
        Dimension::Safety,
        0.0,
        0.0,
        vec![lost(0.0, Loss::Shock)],
    ));
    let attempts = vec![
        graded(1, "one", 5, 0.5),
        with_sides,
        second_visit,
        graded(2, "one", 7, 0.25),
    ];
    let jobs = vec!["one".to_owned(), "two".to_owned()];
    let changed = InstructorMark {
        version: 3,
        points: Some(60.0),
        comment: "=well done, \"Ben\"".to_owned(),
        changed_ms: Some(1_772_525_700_000),
    };
    ClassGrades {
        title: "Tuesday".to_owned(),
        learners: vec![learner(1, "Ann"), learner(2, "Ben"), learner(3, "Cy")],
        book: Gradebook::new(jobs, attempts, MarkRule::Best),
        changes: BTreeMap::from([((2, "one".to_owned()), changed)]),
    }
}

/// A table read by another reader: the `csv` crate, which follows RFC 4180.
fn read(table: &str) -> Vec<Vec<String>> {
    assert!(table.ends_with("\r\n") && !table.replace("\r\n", "").contains(['\r', '\n']));
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(table.as_bytes());
    let rows = reader.records().map(|row| row.expect("RFC 4180"));
    rows.map(|row| row.iter().map(str::to_owned).collect())
        .collect()
}

#[test]
fn marks_are_a_table_without_a_zero_for_what_is_not_there() {
    let class = class();
    assert_eq!(
        read(&marks_csv(&class, true)),
        [
            ["seat", "name", "one", "two", "mean"],
            ["1", "Ann", "50.0", "75.5", "62.8"],
            ["2", "Ben", "60.0", "", "60.0"],
            ["3", "Cy", "", "", ""],
        ]
    );
    let without_names = marks_csv(&class, false);
    assert_eq!(read(&without_names)[1][1], "learner-1");
    assert!(!without_names.contains("Ann") && !without_names.contains("Ben"));
}

/// OWASP, "CSV Injection", and RFC 4180.
#[test]
fn no_cell_is_a_formula() {
    let mut class = class();
    let names = HOSTILE.iter().zip(1..);
    class.learners = names.map(|((name, _), seat)| learner(seat, name)).collect();
    let rows = read(&marks_csv(&class, true));
    assert_eq!(rows.len(), 1 + HOSTILE.len());
    for ((_, safe), row) in HOSTILE.iter().zip(&rows[1..]) {
        assert_eq!(row[1], *safe);
    }
    for cell in rows.iter().flatten() {
        let first = cell.trim_start().chars().next();
        assert!(
            !first.is_some_and(|c| "=+-@\t\r\n＝＋－＠".contains(c)),
            "{cell}"
        );
    }
}

/// Columns and values of OneRoster 1.2, CSV binding (1EdTech, 2022), by secondary sources.
#[test]
fn a_school_s_gradebook_gets_the_columns_that_it_expects() {
    let titles = ["The first, with a comma".to_owned(), "=two".to_owned()];
    let files = one_roster_files(&class(), &titles, (1_772_439_300_000, 1_772_525_700_000));
    let table = |name: &str| {
        let (_, table) = files.iter().find(|(file, _)| *file == name).expect(name);
        read(table)
    };
    let manifest = table("manifest.csv");
    assert_eq!(manifest[0], ["propertyName", "value"]);
    assert_eq!(manifest[1], ["manifest.version", "1.0"]);
    assert_eq!(manifest[2], ["oneroster.version", "1.2"]);
    // Every file of the binding is told of, those that are there as a whole.
    let told: Vec<&[String]> = (manifest.iter())
        .filter(|row| row[0].starts_with("file."))
        .map(Vec::as_slice)
        .collect();
    assert_eq!(told.len(), 21);
    for row in told {
        let name = row[0].trim_start_matches("file.");
        let is_there = files.iter().any(|(file, _)| *file == format!("{name}.csv"));
        assert_eq!(row[1], if is_there { "bulk" } else { "absent" }, "{name}");
    }
    let items = table("lineItems.csv");
    assert_eq!(
        items[0].join(","),
        "sourcedId,status,dateLastModified,title,description,assignDate,dueDate,classSourcedId,categorySourcedId,\
         academicSessionSourcedId,resultValueMin,resultValueMax,schoolSourcedId"
    );
    assert_eq!(items.len(), 3);
    assert_eq!(items[1][3], "The first, with a comma");
    assert_eq!(items[2][3], "'=two");
    assert_eq!(items[1][5..7], ["2026-03-02", "2026-03-03"]);
    assert_eq!(items[1][10..12], ["0.0", "100.0"]);
    let categories = table("categories.csv");
    assert_eq!(
        categories[0].join(","),
        "sourcedId,status,dateLastModified,title,weight"
    );
    let results = table("results.csv");
    assert_eq!(
        results[0].join(","),
        "sourcedId,status,dateLastModified,lineItemSourcedId,studentSourcedId,scoreStatus,score,scoreDate,comment,\
         textScore,classSourcedId,inProgress,incomplete,late,missing"
    );
    assert_eq!(results.len(), 4, "what has no mark has no result");
    for row in &results[1..] {
        // In bulk, status and date of the last change stay empty.
        assert_eq!(row[1..3], ["", ""]);
        assert!(
            items.iter().any(|item| item[0] == row[3]),
            "its line item is there"
        );
        assert_eq!(row[5], "fully graded");
    }
    assert!(
        items[1..]
            .iter()
            .all(|item| categories.iter().any(|row| row[0] == item[8]))
    );
    let ben = &results[3];
    assert_eq!(
        (&*ben[4], &*ben[6], &*ben[7]),
        ("learner-2", "60.0", "2026-03-03")
    );
    assert_eq!(ben[8], "'=well done, \"Ben\"");
    let all: String = files.iter().map(|(_, table)| table.as_str()).collect();
    assert!(!all.contains("Ann"), "no name but what a comment says");
}

/// What a statement must be: xAPI 2.0 (IEEE 9274.1.1-2023), 4.2, from memory; RFC 9562; RFC 3339.
#[test]
fn statements_name_nobody_and_have_the_shape_that_a_store_wants() {
    let class = class();
    let title = Bilingual {
        en: "The first".to_owned(),
        es: "El primero".to_owned(),
    };
    let lines = xapi_lines(&class, "0123abcd", |job| (job == "one").then_some(&title));
    assert!(!lines.contains("Ann") && !lines.contains("mbox") && !lines.contains("mailto"));
    let statements: Vec<Value> = lines
        .lines()
        .map(|line| serde_json::from_str(line).expect("JSON"))
        .collect();
    assert_eq!(statements.len(), 4);
    let schema: Value =
        serde_json::from_str(include_str!("../../tests/schema/xapi_statement.json")).expect("JSON");
    // A mail address, or a score beyond its scale, is found.
    let mut wrong = statements[0].clone();
    wrong["actor"]["mbox"] = "mailto:ann@example.org".into();
    wrong["result"]["score"]["scaled"] = 1.5.into();
    assert_eq!(schema::mistakes(&schema, &wrong).len(), 2);
    let mut ids: Vec<&str> = Vec::new();
    for statement in &statements {
        assert_eq!(schema::mistakes(&schema, statement), [""; 0]);
        assert!(
            statement["actor"]["account"]["name"]
                .as_str()
                .is_some_and(|n| n.starts_with("learner-"))
        );
        for iri in [
            &statement["actor"]["account"]["homePage"],
            &statement["verb"]["id"],
            &statement["object"]["id"],
            &statement["object"]["definition"]["type"],
        ] {
            let iri = iri.as_str().expect("a text");
            assert!(
                iri.starts_with("https://detent.example/") && !iri.contains(' '),
                "{iri}"
            );
        }
        let id = statement["id"].as_str().expect("a text");
        let groups: Vec<usize> = id.split('-').map(str::len).collect();
        assert_eq!(groups, [8, 4, 4, 4, 12]);
        assert!(id.chars().all(|c| c == '-' || c.is_ascii_hexdigit()));
        assert_eq!(&id[14..15], "8", "version 8");
        assert!("89ab".contains(&id[19..20]), "variant 10");
        ids.push(id);
        let score = &statement["result"]["score"];
        let number = |key: &str| score[key].as_f64().expect("a number");
        assert!((-1.0..=1.0).contains(&number("scaled")));
        assert!((number("min")..=number("max")).contains(&number("raw")));
        assert_eq!(statement["result"]["duration"], "PT1800S");
        let moment = statement["timestamp"].as_str().expect("a text");
        assert!(chrono::DateTime::parse_from_rfc3339(moment).is_ok() && moment.ends_with('Z'));
    }
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 4, "no two have one name");
    assert_eq!(
        statements[0]["object"]["definition"]["name"]["es"],
        "El primero"
    );
    assert_eq!(
        statements[0]["verb"]["id"],
        "https://detent.example/verbs/failed"
    );
    // The same class gives the same names, another class others.
    assert_eq!(
        lines,
        xapi_lines(&class, "0123abcd", |job| (job == "one").then_some(&title))
    );
    assert!(!xapi_lines(&class, "other", |_| None).contains(ids[0]));
}

#[test]
fn a_changed_mark_stands_in_the_place_of_the_computed_one() {
    let class = class();
    let mark = class.mark(2, "one");
    assert_eq!((mark.points, mark.computed), (Some(60.0), Some(25.0)));
    assert!(mark.is_changed && mark.version == 3);
    let mark = class.mark(3, "one");
    assert_eq!((mark.points, mark.version, mark.comment), (None, 0, ""));
    assert_eq!(class.mean(3), None);
    assert_eq!(class.mean(2), Some(60.0));
}
