//! A document that stands alone: what is printed, cut out or sent on, with a look of its own.

use maud::{DOCTYPE, Markup, PreEscaped, html};

/// The whole document.
pub fn alone(title: &str, language: &str, style: &str, body: &Markup) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(style)) }
            }
            body { main { (body) } }
        }
    };
    page.into_string()
}
