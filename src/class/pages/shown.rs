//! What somebody else typed, as it is shown.

/// So many characters of a name are shown; a class takes no more.
const MOST_CHARACTERS: usize = 60;

/// What is left out: it can be seen nowhere, or it turns the direction of what stands behind it.
fn is_left_out(character: char) -> bool {
    character.is_control()
        || matches!(
            character,
            '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}' | '\u{e0000}'..='\u{e007f}'
        )
}

/// A name, of a person, a job or a file, as text that stays by itself: without characters that steer, cut where it is
/// too long, and a dash where nothing is left. It is still to be escaped. `page.js` does the same.
pub(super) fn shown(typed: &str) -> String {
    let mut characters = typed.chars().filter(|character| !is_left_out(*character));
    let mut shown: String = characters.by_ref().take(MOST_CHARACTERS).collect();
    if characters.next().is_some() {
        shown.push('…');
    }
    match shown.trim() {
        "" => "–".to_owned(),
        trimmed => trimmed.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_steers_nothing_and_is_not_long() {
        for (typed, expected) in [
            ("Marta Olmo", "Marta Olmo"),
            ("  Íñigo\t", "Íñigo"),
            (
                "a\u{202e}b\u{2067}c\u{2069}\u{2028}d\u{7}\u{1b}[1m",
                "abcd[1m",
            ),
            ("\u{202e}\u{feff} \n", "–"),
            ("", "–"),
            ("<script>alert(1)</script>", "<script>alert(1)</script>"),
            ("مريم", "مريم"),
        ] {
            assert_eq!(shown(typed), expected, "{typed:?}");
        }
        let long = shown(&"ñ".repeat(10_000));
        assert_eq!(long.chars().count(), MOST_CHARACTERS + 1);
        assert!(long.ends_with('…'));
        assert_eq!(shown(&"x".repeat(60)), "x".repeat(60));
    }
}
