//! Paths followed through a tree.

use super::kind::{SyntaxKind, SyntaxNode};
use super::lexer;

/// One step of a path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Step<'a> {
    /// A field's name, or the place of a value in a tuple.
    Dot(&'a str),
    /// An index into a list, or a map's key.
    Bracket(&'a str),
}

/// What a path leads to.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    /// The value itself.
    pub value: SyntaxNode,
    /// What stands in the brackets around it: the field, the entry, or the value again. None for the
    /// whole.
    pub element: Option<SyntaxNode>,
}

/// The steps of a path; none where it is not written as one.
pub(crate) fn steps(path: &str) -> Option<Vec<Step<'_>>> {
    let mut steps = Vec::new();
    let mut rest = path;
    while !rest.is_empty() {
        if let Some(inside) = rest.strip_prefix('[') {
            let end = closing(inside)?;
            steps.push(Step::Bracket(&inside[..end]));
            rest = &inside[end + 1..];
        } else {
            let name = match rest.strip_prefix('.') {
                Some(behind) if !steps.is_empty() => behind,
                None if steps.is_empty() => rest,
                _ => return None,
            };
            let end = name.find(['.', '[']).unwrap_or(name.len());
            if end == 0 {
                return None;
            }
            steps.push(Step::Dot(&name[..end]));
            rest = &name[end..];
        }
    }
    Some(steps)
}

/// Offset of the bracket that closes one which was opened before this text.
fn closing(inside: &str) -> Option<usize> {
    let (mut at, mut depth) = (0, 0_usize);
    for token in lexer::tokens(inside) {
        match token.kind {
            SyntaxKind::CloseBracket if depth == 0 => return Some(at),
            SyntaxKind::OpenBracket => depth += 1,
            SyntaxKind::CloseBracket => depth -= 1,
            _ => {}
        }
        at += token.length;
    }
    None
}

/// What is at a path under the root of a text.
pub(crate) fn find(root: &SyntaxNode, path: &str) -> Option<Found> {
    let mut found = Found {
        value: value_in(root)?,
        element: None,
    };
    for step in steps(path)? {
        found = follow(&found.value, &step)?;
    }
    Some(found)
}

fn follow(value: &SyntaxNode, step: &Step<'_>) -> Option<Found> {
    // A pair of brackets with one value in it is seen through, so the value answers first.
    let through = only_value(value);
    if let Some(found) = through.as_ref().and_then(|only| follow(only, step)) {
        return Some(found);
    }
    let element = match (value.kind(), step) {
        (SyntaxKind::Group, Step::Dot(name)) => {
            field(value, name).or_else(|| places(value).nth(name.parse().ok()?))
        }
        (SyntaxKind::List, Step::Bracket(index)) => places(value).nth(index.parse().ok()?),
        (SyntaxKind::Map, Step::Bracket(key)) => entry(value, key),
        _ => None,
    }?;
    Some(Found {
        value: own_value(&element)?,
        element: Some(element),
    })
}

/// The only value in a pair of parentheses, where it has no name.
pub(crate) fn only_value(value: &SyntaxNode) -> Option<SyntaxNode> {
    if value.kind() != SyntaxKind::Group {
        return None;
    }
    let mut children = value.children();
    let only = children.next().filter(|child| child.kind().is_value());
    only.filter(|_| children.next().is_none())
}

/// A struct's field of this name.
pub(crate) fn field(group: &SyntaxNode, name: &str) -> Option<SyntaxNode> {
    group
        .children()
        .find(|child| field_name(child).as_deref() == Some(name))
}

/// A map's entry with this key; blanks and comments do not count.
pub(crate) fn entry(map: &SyntaxNode, key: &str) -> Option<SyntaxNode> {
    let wanted = without_trivia(key);
    map.children()
        .find(|child| entry_key(child).as_ref() == Some(&wanted))
}

fn places(value: &SyntaxNode) -> impl Iterator<Item = SyntaxNode> {
    value.children().filter(|child| child.kind().is_value())
}

/// Name of a field as it is read: without `r#`.
pub(crate) fn field_name(element: &SyntaxNode) -> Option<String> {
    if element.kind() != SyntaxKind::Field {
        return None;
    }
    let name = element.first_token()?;
    let name = name.text();
    Some(name.strip_prefix("r#").unwrap_or(name).to_owned())
}

/// A map entry's key without blanks and comments.
pub(crate) fn entry_key(element: &SyntaxNode) -> Option<String> {
    if element.kind() != SyntaxKind::Entry {
        return None;
    }
    let key = element.children().find(|child| child.kind().is_value())?;
    let tokens = key.descendants_with_tokens();
    let tokens = tokens.filter_map(rowan::NodeOrToken::into_token);
    let meant = tokens.filter(|token| !token.kind().is_trivia());
    Some(meant.map(|token| token.text().to_owned()).collect())
}

pub(crate) fn without_trivia(text: &str) -> String {
    let mut at = 0;
    let mut kept = String::new();
    for token in lexer::tokens(text) {
        if !token.kind.is_trivia() {
            kept.push_str(&text[at..at + token.length]);
        }
        at += token.length;
    }
    kept
}

/// The value of a field or an entry, or the value that stands there without a name.
pub(crate) fn own_value(element: &SyntaxNode) -> Option<SyntaxNode> {
    match element.kind() {
        SyntaxKind::Field => value_in(element),
        SyntaxKind::Entry => places(element).nth(1),
        _ => Some(element.clone()),
    }
}

pub(crate) fn value_in(node: &SyntaxNode) -> Option<SyntaxNode> {
    places(node).next()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_falls_into_its_steps() {
        use Step::{Bracket, Dot};
        let check =
            |path, expected: &[Step<'_>]| assert_eq!(steps(path).as_deref(), Some(expected));
        check("", &[]);
        check("codes[3].code", &[Dot("codes"), Bracket("3"), Dot("code")]);
        check("[2].0", &[Bracket("2"), Dot("0")]);
        check(
            "common[Wire([\"]\"])]",
            &[Dot("common"), Bracket("Wire([\"]\"])")],
        );
        for wrong in [".a", "a..b", "a.", "a[", "a[1]b", "a]"] {
            let known = matches!(wrong, "a]");
            assert_eq!(steps(wrong).is_some(), known, "{wrong}");
        }
    }
}
