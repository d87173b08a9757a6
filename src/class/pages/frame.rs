//! What every page has around what it shows.

use super::page_texts::PageTexts;
use detent_content::Language;
use maud::{DOCTYPE, Markup, html};

/// A page's name for itself, its script and what it shows.
pub(super) struct Page<'a> {
    /// What stands on the tab.
    pub(super) title: String,
    /// Class of its body.
    pub(super) name: &'static str,
    /// File of its script.
    pub(super) script: Option<&'static str>,
    /// What the script is told.
    pub(super) data: Option<String>,
    /// Query of the same page without its language: `sort=name`.
    pub(super) query: &'a str,
}

impl Page<'_> {
    /// The whole page as text.
    pub(super) fn around(&self, texts: &PageTexts, body: &Markup) -> String {
        let language = texts.language().code();
        let page = html! {
            (DOCTYPE)
            html lang=(language) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    meta name="referrer" content="no-referrer";
                    title { (self.title) " · Detent" }
                    link rel="icon" href="/class/icon.svg";
                    link rel="stylesheet" href="/class/style.css";
                    @if let Some(script) = self.script {
                        script type="module" src={ "/class/" (script) } {}
                    }
                }
                body class=(self.name) data-page=[self.data.as_deref()] { (body) }
            }
        };
        page.into_string()
    }

    /// Links to the same page in the other languages.
    pub(super) fn other_languages(&self, texts: &PageTexts) -> Markup {
        let others = (Language::ALL.into_iter()).filter(|other| *other != texts.language());
        let and = if self.query.is_empty() { "" } else { "&" };
        html! {
            @for other in others {
                a.language hreflang=(other.code()) lang=(other.code())
                    href={ "?lang=" (other.code()) (and) (self.query) } { (other.own_name()) }
            }
        }
    }
}

/// A question before something that cannot be taken back, `NAME-dialog`. The texts: the question, what follows from it, the
/// way back, which has the keys, and the way on.
pub(super) fn confirm_dialog(
    texts: &PageTexts,
    name: &str,
    [question, explained, keep, confirm]: [&str; 4],
) -> Markup {
    let id = |part: &str| format!("{name}-{part}");
    html! {
        dialog id=(id("dialog")) aria-labelledby=(id("heading")) aria-describedby=(id("explained")) {
            h2 id=(id("heading")) { (texts.get(question)) }
            p id=(id("explained")) { (texts.get(explained)) }
            div.buttons {
                button type="button" data-close autofocus { (texts.get(keep)) }
                button.grave type="button" data-confirm { (texts.get(confirm)) }
            }
        }
    }
}
