//! Digits and letters on seven segments: bit 0 is a (top), then clockwise b to f, bit 6 is g (middle).

/// Segments of a digit 0 to 9.
pub(super) const DIGITS: [u16; 10] = [0x3f, 0x06, 0x5b, 0x4f, 0x66, 0x6d, 0x7d, 0x07, 0x7f, 0x6f];

/// Letters and marks whose shape no digit has. Which case a letter has is chosen by what can be drawn: our own set.
const LETTERS: [(char, u16); 24] = [
    (' ', 0x00),
    ('-', 0x40),
    ('_', 0x08),
    ('A', 0x77),
    ('C', 0x39),
    ('E', 0x79),
    ('F', 0x71),
    ('G', 0x3d),
    ('H', 0x76),
    ('I', 0x30),
    ('J', 0x1e),
    ('L', 0x38),
    ('P', 0x73),
    ('U', 0x3e),
    ('b', 0x7c),
    ('c', 0x58),
    ('d', 0x5e),
    ('h', 0x74),
    ('n', 0x54),
    ('o', 0x5c),
    ('r', 0x50),
    ('t', 0x78),
    ('u', 0x1c),
    ('y', 0x6e),
];

/// Letters that cannot be drawn, or that would be a digit, each with what can be shown and comes nearest.
const NEAREST: [(&str, char); 24] = [
    ("a", 'A'),
    ("B", 'b'),
    ("D", 'd'),
    ("e", 'E'),
    ("f", 'F'),
    ("g", 'G'),
    ("i", 'I'),
    ("j", 'J'),
    ("KkXx", 'H'),
    ("l", 'L'),
    ("MmN", 'n'),
    ("O", '0'),
    ("p", 'P'),
    ("Qq", '9'),
    ("R", 'r'),
    ("Ss", '5'),
    ("T", 't'),
    ("VW", 'U'),
    ("vw", 'u'),
    ("Y", 'y'),
    ("Zz", '2'),
    ("Ññ", 'n'),
    (".,", '_'),
    ("=~", '-'),
];

/// Segments of a digit, a letter or a mark; none where seven segments cannot show it.
pub fn segments_of(character: char) -> Option<u16> {
    let digit = character.to_digit(10);
    let digit = digit.and_then(|digit| DIGITS.get(digit as usize)).copied();
    digit.or_else(|| {
        let mut letters = LETTERS.iter();
        letters.find(|(l, _)| *l == character).map(|(_, lit)| *lit)
    })
}

/// The letter that these segments show; none for a digit, a mark or anything else.
pub fn letter_of(lit: u16) -> Option<char> {
    let letter = LETTERS.iter().find(|(_, segments)| *segments == lit);
    letter.map(|(l, _)| *l).filter(|l| l.is_alphabetic())
}

/// What seven segments can show in the place of what they cannot.
pub(super) fn nearest(character: char) -> char {
    let mut nearest = NEAREST.iter();
    let found = nearest.find(|(cannot, _)| cannot.contains(character));
    found.map_or('-', |(_, can)| *can)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::controller::Signs;
    use crate::units::Span;

    /// These segments, drawn in three lines.
    fn drawn(lit: u16) -> String {
        let on = |bit: u8, ink: char| if lit & (1 << bit) != 0 { ink } else { ' ' };
        format!(
            " {} /{}{}{}/{}{}{}",
            on(0, '_'),
            on(5, '|'),
            on(6, '_'),
            on(1, '|'),
            on(4, '|'),
            on(3, '_'),
            on(2, '|')
        )
    }

    /// Which segments make which digit is common knowledge, no source; here it is drawn.
    #[test]
    fn segments_draw_the_digits() {
        let shapes = [
            " _ /| |/|_|",
            "   /  |/  |",
            " _ / _|/|_ ",
            " _ / _|/ _|",
            "   /|_|/  |",
            " _ /|_ / _|",
            " _ /|_ /|_|",
            " _ /  |/  |",
            " _ /|_|/|_|",
            " _ /|_|/ _|",
        ];
        for (digit, shape) in (0..).zip(shapes) {
            // The units stand in the lowest seven bits.
            let lit = Signs::Segments.lit(digit, Span::ZERO) & 0x7f;
            assert_eq!(drawn(lit), shape, "{digit}");
        }
    }

    /// The shapes are common practice, no source; here they are drawn.
    #[test]
    fn segments_draw_the_letters() {
        for (letter, shape) in [
            ('A', " _ /|_|/| |"),
            ('b', "   /|_ /|_|"),
            ('C', " _ /|  /|_ "),
            ('d', "   / _|/|_|"),
            ('E', " _ /|_ /|_ "),
            ('F', " _ /|_ /|  "),
            ('G', " _ /|  /|_|"),
            ('H', "   /|_|/| |"),
            ('h', "   /|_ /| |"),
            ('I', "   /|  /|  "),
            ('J', "   /  |/|_|"),
            ('L', "   /|  /|_ "),
            ('n', "   / _ /| |"),
            ('o', "   / _ /|_|"),
            ('c', "   / _ /|_ "),
            ('P', " _ /|_|/|  "),
            ('r', "   / _ /|  "),
            ('t', "   /|_ /|_ "),
            ('U', "   /| |/|_|"),
            ('u', "   /   /|_|"),
            ('y', "   /|_|/ _|"),
            ('-', "   / _ /   "),
            ('_', "   /   / _ "),
        ] {
            let lit = segments_of(letter).expect("it can be shown");
            assert_eq!(drawn(lit), shape, "{letter}");
        }
    }

    #[test]
    fn no_two_characters_look_alike_and_none_is_both_shown_and_refused() {
        let letters = LETTERS.iter().map(|(letter, lit)| (*letter, *lit));
        let digits = ('0'..='9').zip(DIGITS);
        let mut shapes: Vec<u16> = letters.chain(digits).map(|(_, lit)| lit).collect();
        let count = shapes.len();
        shapes.sort_unstable();
        shapes.dedup();
        assert_eq!((shapes.len(), count), (34, 34));
        // Every letter is shown, or has something else that is.
        for letter in ('A'..='Z').chain('a'..='z').chain("Ññ.,=~€Ω".chars()) {
            let shown = segments_of(letter).is_some();
            let listed = NEAREST.iter().any(|(cannot, _)| cannot.contains(letter));
            assert!(!(shown && listed), "{letter}");
            assert!(shown || segments_of(nearest(letter)).is_some(), "{letter}");
            assert!(shown || listed || !letter.is_ascii(), "{letter}");
        }
        assert_eq!((nearest('M'), nearest('W'), nearest('S')), ('n', 'U', '5'));
        assert_eq!(
            (letter_of(0x77), letter_of(0x3f), letter_of(0)),
            (Some('A'), None, None)
        );
    }
}
