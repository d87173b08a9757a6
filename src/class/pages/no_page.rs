//! What stands at `/` where the packed page for browsers is missing.

use super::frame::Page;
use super::page_texts::PageTexts;
use super::shown::shown;
use maud::html;

/// Tells a learner how to join all the same, and the instructor how the page is made. `address` is the one to join at.
pub fn no_page_page(texts: &PageTexts, address: &str) -> String {
    let page = Page {
        title: texts.get("pages-no-page"),
        name: "no-page",
        script: None,
        data: None,
        query: "",
    };
    let body = html! {
        header.top {
            p.kind { "Detent" }
            nav { (page.other_languages(texts)) }
        }
        main {
            h1 { (texts.get("pages-no-page")) }
            p { (texts.get("pages-no-page-learner")) }
            p { (texts.get("pages-no-page-join")) }
            pre tabindex="0" { code { "detent window --join " (shown(address)) } }
            h2 { (texts.get("pages-no-page-instructor")) }
            p { (texts.get("pages-no-page-built")) }
            pre tabindex="0" { code { "cargo run --release --package detent-packaging" } }
            p { (texts.get("pages-no-page-restart")) }
        }
    };
    page.around(texts, &body)
}
