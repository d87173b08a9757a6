//! What the tree is made of.

/// Kind of a token or a node.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[repr(u16)]
pub enum SyntaxKind {
    // Tokens that mean nothing to a reader.
    ByteOrderMark,
    Blank,
    LineComment,
    BlockComment,
    // Tokens with a text of their own.
    /// A name, `true`, `None`, `inf`.
    Word,
    Number,
    /// A byte in single quotes, as `b'a'`.
    Byte,
    Character,
    /// Any string: escaped, raw, of bytes.
    String,
    // Tokens that are always the same.
    Comma,
    Colon,
    OpenParenthesis,
    CloseParenthesis,
    OpenBracket,
    CloseBracket,
    OpenBrace,
    CloseBrace,
    /// `..` or `..=`.
    Range,
    Hash,
    Exclamation,
    Equals,
    /// Not RON.
    Unknown,
    // Nodes.
    /// The whole text.
    Root,
    /// `#![enable(…)]`, `#![type = "…"]`.
    Attribute,
    /// A value in one word, number, range, character or string.
    Scalar,
    /// `(…)` with or without a name before it: a tuple or a struct.
    Group,
    /// `[…]`
    List,
    /// `{…}`
    Map,
    /// `name: value` in a struct.
    Field,
    /// `key: value` in a map.
    Entry,
}

impl SyntaxKind {
    const ALL: [SyntaxKind; 30] = [
        SyntaxKind::ByteOrderMark,
        SyntaxKind::Blank,
        SyntaxKind::LineComment,
        SyntaxKind::BlockComment,
        SyntaxKind::Word,
        SyntaxKind::Number,
        SyntaxKind::Byte,
        SyntaxKind::Character,
        SyntaxKind::String,
        SyntaxKind::Comma,
        SyntaxKind::Colon,
        SyntaxKind::OpenParenthesis,
        SyntaxKind::CloseParenthesis,
        SyntaxKind::OpenBracket,
        SyntaxKind::CloseBracket,
        SyntaxKind::OpenBrace,
        SyntaxKind::CloseBrace,
        SyntaxKind::Range,
        SyntaxKind::Hash,
        SyntaxKind::Exclamation,
        SyntaxKind::Equals,
        SyntaxKind::Unknown,
        SyntaxKind::Root,
        SyntaxKind::Attribute,
        SyntaxKind::Scalar,
        SyntaxKind::Group,
        SyntaxKind::List,
        SyntaxKind::Map,
        SyntaxKind::Field,
        SyntaxKind::Entry,
    ];

    /// Blanks and comments, which stand between the tokens that mean something.
    pub fn is_trivia(self) -> bool {
        matches!(
            self,
            SyntaxKind::ByteOrderMark
                | SyntaxKind::Blank
                | SyntaxKind::LineComment
                | SyntaxKind::BlockComment
        )
    }

    /// Nodes that are a value.
    pub fn is_value(self) -> bool {
        matches!(
            self,
            SyntaxKind::Scalar | SyntaxKind::Group | SyntaxKind::List | SyntaxKind::Map
        )
    }

    /// Tokens that close a pair of brackets.
    pub fn is_closing(self) -> bool {
        matches!(
            self,
            SyntaxKind::CloseParenthesis | SyntaxKind::CloseBracket | SyntaxKind::CloseBrace
        )
    }
}

/// RON, as the tree's type needs it named.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ron {}

impl rowan::Language for Ron {
    type Kind = SyntaxKind;

    fn kind_from_raw(raw: rowan::SyntaxKind) -> SyntaxKind {
        SyntaxKind::ALL[usize::from(raw.0)]
    }

    fn kind_to_raw(kind: SyntaxKind) -> rowan::SyntaxKind {
        rowan::SyntaxKind(kind as u16)
    }
}

pub type SyntaxNode = rowan::SyntaxNode<Ron>;
pub type SyntaxToken = rowan::SyntaxToken<Ron>;

#[cfg(test)]
mod tests {
    use super::*;
    use rowan::Language;

    #[test]
    fn every_kind_comes_back_from_its_number() {
        for kind in SyntaxKind::ALL {
            assert_eq!(Ron::kind_from_raw(Ron::kind_to_raw(kind)), kind);
        }
    }
}
