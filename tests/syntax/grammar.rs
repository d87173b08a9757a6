//! What ron reads the tree reads, and holds whole.

use detent_syntax::document::Document;
use detent_syntax::error::SyntaxErrorKind;
use detent_syntax::kind::SyntaxNode;
use detent_syntax::parser;
use proptest::prelude::*;

/// How our RON is read: no deeper than this.
fn ron_reads(text: &str) -> bool {
    ron::Options::default()
        .with_recursion_limit(48)
        .from_str::<ron::Value>(text)
        .is_ok()
}

#[track_caller]
fn check_good(text: &str) {
    assert!(ron_reads(text), "ron does not read {text:?}");
    let document = Document::parse(text).unwrap_or_else(|error| panic!("{text:?}: {error}"));
    assert_eq!(document.root().text().to_string(), text);
}

#[track_caller]
fn check_wrong(text: &str, offset: usize, kind: SyntaxErrorKind) {
    assert!(!ron_reads(text), "ron reads {text:?}");
    let error = Document::parse(text).expect_err(text);
    assert_eq!((error.offset, error.kind), (offset, kind), "{text:?}");
    let tree = SyntaxNode::new_root(parser::parse(text).tree);
    assert_eq!(tree.text().to_string(), text);
}

#[test]
fn whatever_ron_reads_is_read() {
    for number in [
        "1",
        "-1",
        "+1",
        "1_000",
        "0x1F",
        "0b1_0",
        "0o17",
        "-0xff",
        "1u8",
        "1_u64",
        "0x1i16",
        "1.",
        ".5",
        "-1.5e-3",
        "1e5",
        "1_0.0_1",
        "1f32",
        "1.5f64",
        "1e5f32",
        "inf",
        "-inf",
        "+NaN",
        "NaNf32",
        "-inff64",
        "b'a'",
        r"b'\x7f'",
        r"b'\''",
        "18446744073709551616",
        "1e999",
    ] {
        check_good(number);
    }
    for range in [
        "1..2",
        "1..=2",
        "..2",
        "..=2",
        "..",
        "1..",
        "1.5..2.5",
        "1...5",
        "...5",
        "inf..",
        "0..inf",
        "-1..=NaN",
        "b'a'..=b'z'",
    ] {
        check_good(range);
    }
    for characters in [
        "'a'",
        "'''",
        r"'\''",
        r"'\\'",
        r"'\u{e9}'",
        r"'\x41'",
        "'é'",
        "'\n'",
        r#""""#,
        r#""a\"b""#,
        "r\"\\\"",
        "r#\"a\"b\"#",
        r##"r#"é"#"##,
        r#"b"\xff""#,
        "br\"a\"",
        "br##\"a\"#\"##",
        r#""\xc3\xa9\u{10ffff}\0""#,
        "\"a\\\n   b\"",
        "\"a\\\r\n b\"",
    ] {
        check_good(characters);
    }
    for text in [
        "()",
        "( )",
        "a",
        "a()",
        "a ( ) ",
        "r#a.b-c",
        "_",
        "true",
        "None",
        "Some(1)",
        "Some(Some(1),)",
        "(1)",
        "(1,)",
        "(1, 2)",
        "(a: 1)",
        "(a: 1, b: (c: 2),)",
        "A(b: 1)",
        "A /* x */ (b /* y */ : 1)",
        "[1, 2,]",
        "[]",
        "{}",
        "{1: 2, \"a\": b, (1, 2): [3], A(1): None,}",
        "(r#type: 1)",
        "(a: 1, a: 2)",
        "(é: 1)",
        "#![enable(implicit_some)] 1",
        "#![enable(unwrap_newtypes, implicit_some,)]\n#![type = \"a\"] 1",
        "# ! [ schema = r\"x\" ] // c\n 1",
        " \t\r\n\u{85}\u{200e}\u{2028}1\u{b}\u{c}",
        "1 // end",
        "/* /* */ */ 1 /**/",
        "1 //",
        "[\"a\" /*,*/, /*]*/ 2]",
    ] {
        check_good(text);
    }
}

#[test]
fn what_is_wrong_is_told_where_it_stands() {
    use SyntaxErrorKind as Kind;
    check_wrong("", 0, Kind::ExpectedValue);
    check_wrong("(a: 1", 0, Kind::UnclosedBracket('('));
    let close = |open, close| Kind::MismatchedBracket { open, close };
    check_wrong("[1)", 2, close('[', ')'));
    check_wrong("[1 2]", 3, Kind::ExpectedComma);
    check_wrong("[,]", 1, Kind::ExpectedValue);
    check_wrong("(a: )", 4, Kind::ExpectedValue);
    check_wrong("(a: 1, 2)", 7, Kind::MixedFields);
    check_wrong("(1, a: 2)", 4, Kind::MixedFields);
    check_wrong("{1 2}", 3, Kind::ExpectedColon);
    check_wrong("1 2", 2, Kind::BehindValue);
    check_wrong("\"abc", 0, Kind::UnclosedString);
    check_wrong("1 /* x", 2, Kind::UnclosedComment);
    check_wrong(r#""\q""#, 0, Kind::WrongEscape);
    check_wrong(r#""\xff""#, 0, Kind::WrongEscape);
    check_wrong(r#""\u{110000}""#, 0, Kind::WrongEscape);
    check_wrong("'ab'", 0, Kind::WrongCharacter);
    check_wrong("b'é'", 0, Kind::WrongCharacter);
    check_wrong("[1, 1x]", 4, Kind::WrongNumber);
    check_wrong("0b12", 0, Kind::WrongNumber);
    check_wrong("1._5", 0, Kind::WrongNumber);
    check_wrong("-", 0, Kind::WrongNumber);
    check_wrong("..=", 3, Kind::ExpectedValue);
    check_wrong("(a = 1)", 3, Kind::ExpectedComma);
    check_wrong("~", 0, Kind::UnexpectedCharacter('~'));
    check_wrong("#![enable(nothing)] 1", 17, Kind::WrongAttribute);
    check_wrong(&"[".repeat(65), 64, Kind::TooDeep);
}

#[test]
fn a_byte_order_mark_is_kept() {
    let document = Document::parse("\u{feff}(a: 1)").expect("read");
    assert_eq!(document.value("a"), Some("1"));
    assert_eq!(document.root().text().to_string(), "\u{feff}(a: 1)");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(4096) })]

    #[test]
    fn any_text_is_held_whole(text in "\\PC*") {
        let tree = SyntaxNode::new_root(parser::parse(&text).tree);
        prop_assert_eq!(tree.text().to_string(), text);
    }

    /// Pieces of RON in any order: here much is RON, and what ron reads is in no place refused.
    #[test]
    fn pieces_of_ron_are_read_as_ron_reads_them(
        text in "([\\[\\](){},:'\"#!.=+\\-_\n\\\\/* ]|1|5|x|e|inf|a|b|r|u8|f32|Some|A\\(|\\(1\\)|a: 1|\"b\"|\\[\\]|//|/\\*|\\*/|\\.\\.|#!\\[enable\\(implicit_some\\)\\]){0,12}",
    ) {
        let parsed = parser::parse(&text);
        let tree = SyntaxNode::new_root(parsed.tree);
        prop_assert_eq!(tree.text().to_string(), text.clone());
        // A slip of ron: with `implicit_some` it takes the `Some` in `Some 1` for none of the text.
        let slip = text.contains("implicit_some") && text.contains("Some");
        let reads = ron_reads(&text) && !slip;
        prop_assert!(!reads || parsed.error.is_none(), "{:?}: {:?}", text, parsed.error);
        // To ron, `Some` has exactly one value and `inf` none; to the tree they are names like others.
        let other_names = text.contains("Some") || text.contains("inf") && text.contains('(');
        if !other_names {
            prop_assert_eq!(parsed.error.is_none(), reads, "{:?}: {:?}", text, parsed.error);
        }
    }
}
