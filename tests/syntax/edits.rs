//! Each change touches what it says and nothing else.

use detent_syntax::document::Document;
use detent_syntax::error::{EditError, SyntaxErrorKind};

fn document(text: &str) -> Document {
    Document::parse(text).expect(text)
}

#[track_caller]
fn check(text: &str, change: impl FnOnce(&mut Document) -> Result<(), EditError>, expected: &str) {
    let mut changed = document(text);
    change(&mut changed).expect("changed");
    assert_eq!(changed.text(), expected);
}

#[track_caller]
fn refused(text: &str, change: impl FnOnce(&mut Document) -> Result<(), EditError>) -> EditError {
    let mut changed = document(text);
    let error = change(&mut changed).expect_err("refused");
    assert_eq!(changed, document(text));
    error
}

const BOARD: &str = "// A board.
Board(
    name: \"a\", // its name
    codes: [
        // The first.
        (code: 11, sign: ','),
        (code: 12, sign: ';'),
    ],

    // Says what the belt
    // has to hold.
    map: {
        BeltGripNm: 3.0,
        WireOhms( Cold1 ): 1.0 // no comma
    },
    pair: (1, 2), fault: DrawFrom([\"a\",
        \"b\"]),
    named: Named(\"x\")
)
";

#[test]
fn values_are_found_by_path() {
    let board = document(BOARD);
    for (path, expected) in [
        ("name", "\"a\""),
        ("codes[1].code", "12"),
        ("codes[1]", "(code: 12, sign: ';')"),
        ("map[BeltGripNm]", "3.0"),
        ("map[WireOhms(Cold1)]", "1.0"),
        ("map[WireOhms( Cold1 )]", "1.0"),
        ("pair.1", "2"),
        ("fault[1]", "\"b\""),
        ("fault", "DrawFrom([\"a\",\n        \"b\"])"),
        ("named", "Named(\"x\")"),
        ("named.0", "\"x\""),
    ] {
        assert_eq!(board.value(path), Some(expected), "{path}");
    }
    for path in [
        "nothing",
        "codes[2]",
        "codes.0",
        "name.a",
        "codes[1",
        "map[Belt]",
        "pair.2",
        "named.1",
    ] {
        assert_eq!(board.value(path), None, "{path}");
    }
    let names = ["name", "codes", "map", "pair", "fault", "named"].map(str::to_owned);
    assert_eq!(board.fields(""), Some(names.to_vec()));
    assert_eq!(board.item_count("codes"), Some(2));
    assert_eq!(board.item_count("fault"), Some(2));
    let keys = ["BeltGripNm", "WireOhms(Cold1)"].map(str::to_owned);
    assert_eq!(board.keys("map"), Some(keys.to_vec()));
}

#[test]
fn a_value_is_set_in_its_place() {
    for value in board_values() {
        let range = document(BOARD).range(&value).expect("found");
        let expected = format!("{}[7]{}", &BOARD[..range.start], &BOARD[range.end..]);
        check(BOARD, |board| board.set(&value, " [7]\n"), &expected);
    }
}

fn board_values() -> Vec<String> {
    let values = document(BOARD).values();
    assert!(values.len() > 15);
    values.into_iter().map(|value| value.path).collect()
}

#[test]
fn a_field_is_put_where_it_is_wanted() {
    let own_lines = "A(\n    a: 1, // one\n    // two\n    b: 2,\n)";
    let put = |after: &'static [&str]| move |d: &mut Document| d.insert_field("", "c", "3", after);
    let behind_a = "A(\n    a: 1, // one\n    c: 3,\n    // two\n    b: 2,\n)";
    check(own_lines, put(&["a"]), behind_a);
    check(own_lines, put(&["a", "z"]), behind_a);
    let behind_b = "A(\n    a: 1, // one\n    // two\n    b: 2,\n    c: 3,\n)";
    check(own_lines, put(&["b", "a"]), behind_b);
    let first = "A(\n    c: 3,\n    a: 1, // one\n    // two\n    b: 2,\n)";
    check(own_lines, put(&[]), first);
    check(
        "(\n  a: 1 // one\n)",
        put(&["a"]),
        "(\n  a: 1, // one\n  c: 3\n)",
    );
    check(
        "(\r\n  a: 1,\r\n)",
        put(&["a"]),
        "(\r\n  a: 1,\r\n  c: 3,\r\n)",
    );
    check(
        "(\r\n  a: 1, // x\r\n)",
        put(&["a"]),
        "(\r\n  a: 1, // x\r\n  c: 3,\r\n)",
    );
    check("(\n  a: 1)", put(&["a"]), "(\n  a: 1,\n  c: 3)");
    check("(a: 1, b: 2)", put(&["a"]), "(a: 1, c: 3, b: 2)");
    check("(a: 1, b: 2)", put(&["b"]), "(a: 1, b: 2, c: 3)");
    check("(a: 1, b: 2,)", put(&["b"]), "(a: 1, b: 2, c: 3,)");
    check("(a: 1, b: 2)", put(&[]), "(c: 3, a: 1, b: 2)");
    check("A()", put(&[]), "A(c: 3)");
    check("A( )", put(&["a"]), "A(c: 3)");
    check("(\n)", put(&[]), "(\n    c: 3,\n)");
    check(
        "[(\n    // none\n)]",
        |d| d.insert_field("[0]", "c", "3", &[]),
        "[(\n    // none\n    c: 3,\n)]",
    );
    check("(/* none */)", put(&[]), "(/* none */c: 3)");
    check("Some((a: 1))", put(&["a"]), "Some((a: 1, c: 3))");
    check(
        "(a: (b: 1))",
        |d| d.insert_field("a", "r#type", "3", &["b"]),
        "(a: (b: 1, r#type: 3))",
    );
}

#[test]
fn an_item_and_an_entry_are_put_where_they_are_wanted() {
    let put = |index| move |d: &mut Document| d.insert_item("", index, "7");
    check("[1, 2]", put(0), "[7, 1, 2]");
    check("[1, 2]", put(1), "[1, 7, 2]");
    check("[1, 2]", put(2), "[1, 2, 7]");
    check("[]", put(0), "[7]");
    check(
        "[\n    1,\n    2,\n]",
        put(1),
        "[\n    1,\n    7,\n    2,\n]",
    );
    check(
        "[\n    // one\n    1,\n]",
        put(0),
        "[\n    7,\n    // one\n    1,\n]",
    );
    check("A([1])", put(1), "A([1, 7])");
    check("{}", |d| d.insert_entry("", "a", "1"), "{a: 1}");
    check(
        "{\n  a: 1,\n}",
        |d| d.insert_entry("", "B(2)", "2"),
        "{\n  a: 1,\n  B(2): 2,\n}",
    );
}

#[test]
fn what_is_removed_takes_its_comma_and_its_comment_along() {
    let remove = |path: &'static str| move |d: &mut Document| d.remove(path);
    let text = "(\n    a: 1, // one\n    // two\n    // and more\n    b: 2,\n\n    // not of c\n\n    c: 3,\n)";
    check(
        text,
        remove("a"),
        "(\n    // two\n    // and more\n    b: 2,\n\n    // not of c\n\n    c: 3,\n)",
    );
    check(
        text,
        remove("b"),
        "(\n    a: 1, // one\n\n    // not of c\n\n    c: 3,\n)",
    );
    let without_c =
        "(\n    a: 1, // one\n    // two\n    // and more\n    b: 2,\n\n    // not of c\n\n)";
    check(text, remove("c"), without_c);
    check("(\n  a: 1,\n  b: 2\n)", remove("b"), "(\n  a: 1\n)");
    check(
        "(\r\n  a: 1,\r\n  // x\r\n  b: 2,\r\n)",
        remove("b"),
        "(\r\n  a: 1,\r\n)",
    );
    check("(\n  a: 1,\n  b: 2)", remove("b"), "(\n  a: 1\n  )");
    check(
        "(\n  a: 1, b: 2,\n  c: 3,\n)",
        remove("a"),
        "(\n  b: 2,\n  c: 3,\n)",
    );
    check(
        "(\n  a: 1, b: 2,\n  c: 3,\n)",
        remove("b"),
        "(\n  a: 1, \n  c: 3,\n)",
    );
    check("(a: 1, b: 2, c: 3)", remove("a"), "(b: 2, c: 3)");
    check("(a: 1, b: 2, c: 3)", remove("b"), "(a: 1, c: 3)");
    check("(a: 1, b: 2, c: 3)", remove("c"), "(a: 1, b: 2)");
    check("(a: 1, b: 2,)", remove("b"), "(a: 1,)");
    check("[1, /* two */ 2]", remove("[1]"), "[1 /* two */ ]");
    check("[1]", remove("[0]"), "[]");
    check("{a: 1, B(2): 2}", remove("[B(2)]"), "{a: 1}");
    check("(a: Some(1))", remove("a.0"), "(a: Some())");
}

#[test]
fn what_cannot_be_is_refused_and_changes_nothing() {
    let value = |text: &'static str| match refused("(a: 1)", |d| d.set("a", text)) {
        EditError::NotAValue(error) => (error.offset, error.kind),
        other => panic!("{text}: {other}"),
    };
    assert_eq!(value(""), (0, SyntaxErrorKind::ExpectedValue));
    assert_eq!(value("1, b: 2"), (1, SyntaxErrorKind::BehindValue));
    assert_eq!(value("1)"), (1, SyntaxErrorKind::BehindValue));
    assert_eq!(value("(1"), (0, SyntaxErrorKind::UnclosedBracket('(')));
    assert_eq!(value("1 // x"), (1, SyntaxErrorKind::BehindValue));
    assert_eq!(value("/* x */ 1"), (0, SyntaxErrorKind::BehindValue));
    assert_eq!(
        value("#![enable(implicit_some)] 1"),
        (0, SyntaxErrorKind::BehindValue)
    );
    assert_eq!(value("\u{feff}1"), (0, SyntaxErrorKind::BehindValue));

    let path = |path: &str| EditError::NoSuchPath(path.to_owned());
    assert_eq!(refused("(a: 1)", |d| d.set("b", "1")), path("b"));
    assert_eq!(refused("(a: 1)", |d| d.remove("b")), path("b"));
    assert_eq!(refused("(a: 1)", |d| d.remove("")), EditError::Whole);
    assert_eq!(
        refused("(a: 1)", |d| d.insert_field("b", "c", "1", &[])),
        path("b")
    );
    let field = |text, name| refused(text, |d| d.insert_field("", name, "1", &[]));
    assert_eq!(
        field("(a: 1)", "a"),
        EditError::AlreadyThere("a".to_owned())
    );
    assert_eq!(
        field("(a: 1)", "r#a"),
        EditError::AlreadyThere("a".to_owned())
    );
    assert_eq!(
        field("(a: 1)", "b c"),
        EditError::NotAName("b c".to_owned())
    );
    assert_eq!(field("(a: 1)", "1"), EditError::NotAName("1".to_owned()));
    assert_eq!(field("(1, 2)", "b"), EditError::NotAStruct(String::new()));
    assert_eq!(field("[1]", "b"), EditError::NotAStruct(String::new()));
    let item = |text, index| refused(text, |d| d.insert_item("", index, "1"));
    assert_eq!(
        item("[1]", 2),
        EditError::NoSuchIndex { index: 2, count: 1 }
    );
    assert_eq!(item("(a: 1)", 0), EditError::NotAList(String::new()));
    let entry = |text, key| refused(text, |d| d.insert_entry("", key, "1"));
    assert_eq!(
        entry("{ A( 1 ): 1}", "A(1)"),
        EditError::AlreadyThere("A(1)".to_owned())
    );
    assert_eq!(entry("[1]", "a"), EditError::NotAMap(String::new()));

    let deep = format!("{}1{}", "[".repeat(64), "]".repeat(64));
    let inside = "[0]".repeat(64);
    let error = refused(&deep, |d| d.set(&inside, "[]"));
    assert!(
        matches!(error, EditError::Unreadable(error) if error.kind == SyntaxErrorKind::TooDeep)
    );
}
