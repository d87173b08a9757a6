//! Which language a page is in.

use detent_content::Language;

/// A value of a query, `sort=name&lang=es`. The pages ask with plain words alone, so nothing is decoded.
pub(super) fn query_value<'a>(query: &'a str, name: &str) -> Option<&'a str> {
    let mut pairs = query.split('&').filter_map(|pair| pair.split_once('='));
    pairs.find_map(|(key, value)| (key == name).then_some(value))
}

/// The language that the query asks for with `lang`; else the one that the browser would rather have
/// (`Accept-Language`, RFC 9110, section 12.5.4); else English.
pub fn page_language(query: &str, accept_language: &str) -> Language {
    let asked = query_value(query, "lang").and_then(of_tag);
    asked.unwrap_or_else(|| preferred(accept_language))
}

/// The language of a tag as `es-ES`, where the program speaks it.
fn of_tag(tag: &str) -> Option<Language> {
    let code = tag.split('-').next()?.trim();
    Language::ALL
        .into_iter()
        .find(|language| code.eq_ignore_ascii_case(language.code()))
}

fn preferred(accept_language: &str) -> Language {
    let mut best = (0.0, Language::default());
    for range in accept_language.split(',') {
        let mut parts = range.split(';');
        let language = parts.next().and_then(of_tag);
        let weight = parts.find_map(|part| part.trim().strip_prefix("q=")?.parse::<f64>().ok());
        let weight = weight.unwrap_or(1.0);
        if let Some(language) = language
            && weight > best.0
        {
            best = (weight, language);
        }
    }
    best.1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_is_in_the_language_that_is_asked_for_or_the_browser_would_rather_have() {
        for (query, accept, expected) in [
            ("", "", Language::En),
            ("lang=es", "en", Language::Es),
            ("sort=name&lang=en", "es", Language::En),
            ("lang=fr", "es-ES,es;q=0.9,en;q=0.8", Language::Es),
            ("lang=", "en-US,en;q=0.9,es;q=0.8", Language::En),
            ("", "fr-FR, es;q=0.4, en;q=0.6", Language::En),
            ("", "ES", Language::Es),
            ("", "es;q=0, en;q=0.1", Language::En),
            ("", "es;q=NaN", Language::En),
            ("lang=es%22%3E", "<script>", Language::En),
        ] {
            assert_eq!(page_language(query, accept), expected, "{query} {accept}");
        }
    }
}
