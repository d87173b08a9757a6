//! Names of learners: whatever somebody types.

use detent_class_protocol::LONGEST_NAME;

/// The name as it is shown: no spaces at its ends, one between its words, and nothing that steers a screen.
///
/// `None` where there is no letter in it, or it is too long.
pub fn shown_name(typed: &str) -> Option<String> {
    // A typed name is short; what is not is not gone through to its end.
    let words = typed
        .get(..typed.floor_char_boundary(16 * LONGEST_NAME))?
        .split_whitespace();
    let name = words.collect::<Vec<_>>().join(" ");
    let name: String = name.chars().filter(|c| !steers(*c)).collect();
    let fits = name.chars().count() <= LONGEST_NAME && typed.len() <= 16 * LONGEST_NAME;
    (fits && name.chars().any(char::is_alphabetic)).then_some(name)
}

/// Control characters, and those that turn or hide the text around them (UAX #9; General_Category Cf).
fn steers(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// What two spellings of one name have in common: the case of letters, and accents left out, do not tell them apart.
pub fn name_key(shown: &str) -> String {
    shown
        .chars()
        .flat_map(char::to_lowercase)
        .map(without_accent)
        .collect()
}

/// Letters of Western Europe without their accents.
fn without_accent(c: char) -> char {
    match c {
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => 'a',
        'ç' => 'c',
        'è' | 'é' | 'ê' | 'ë' => 'e',
        'ì' | 'í' | 'î' | 'ï' => 'i',
        'ñ' => 'n',
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' => 'o',
        'ù' | 'ú' | 'û' | 'ü' => 'u',
        'ý' | 'ÿ' => 'y',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_shown_as_it_was_meant() {
        for (typed, shown) in [
            ("  Rosa   Ibáñez\t", Some("Rosa Ibáñez")),
            ("<b>Ann</b>", Some("<b>Ann</b>")),
            ("Ann\u{202e}\u{0}", Some("Ann")),
            ("张伟", Some("张伟")),
            ("", None),
            ("  \u{200b} ", None),
            ("1234", None),
            (&"a".repeat(60), Some(&"a".repeat(60))),
            (&"a".repeat(61), None),
            (&" ".repeat(1_000_000), None),
        ] {
            assert_eq!(shown_name(typed).as_deref(), shown, "{typed:.80}");
        }
    }

    #[test]
    fn spellings_of_one_name_are_one() {
        assert_eq!(name_key("Rosa IBÁÑEZ"), name_key("rosa ibanez"));
        assert_ne!(name_key("Rosa"), name_key("Rose"));
    }
}
