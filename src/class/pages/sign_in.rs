//! The way in for the instructor. The key comes in the fragment of the address, which no server is sent and no log has.

use super::frame::Page;
use super::page_texts::PageTexts;
use maud::html;

/// The page at `/teacher`: signs in with the key in its address, or asks for one.
pub fn sign_in_page(texts: &PageTexts) -> String {
    let page = Page {
        title: texts.get("pages-sign-in"),
        name: "sign-in",
        script: Some("sign_in.js"),
        data: Some(texts.for_script(None, None)),
        query: "",
    };
    let body = html! {
        header.top {
            p.kind { "Detent" }
            nav { (page.other_languages(texts)) }
        }
        main {
            h1 { (texts.get("pages-sign-in")) }
            noscript { p.banner { (texts.get("pages-no-script")) } }
            form #sign-in {
                fieldset disabled {
                    label for="key" { (texts.get("pages-sign-in-key")) }
                    input #key type="password" name="key" autocomplete="off" autocapitalize="off" spellcheck="false"
                        aria-describedby="where sign-in-note";
                    p #where { (texts.get("pages-sign-in-where")) }
                    button { (texts.get("pages-sign-in-go")) }
                }
                p.note #sign-in-note role="status" {}
            }
        }
    };
    page.around(texts, &body)
}
