//! What a page tells other sites and programs of itself: where it stands, its feed, and what a link to it shows.

use super::Shell;
use crate::site::page_address;
use maud::{Markup, html};

/// The links and the Open Graph data of a page; nothing where the book states no address.
pub fn told(shell: &Shell) -> Markup {
    let settings = shell.settings;
    let address = page_address(settings, shell.file).filter(|_| !shell.file.is_empty());
    html! {
        @for (language, file) in &shell.alternates {
            link rel="alternate" hreflang=(language) href=(page_address(settings, file).unwrap_or_else(|| file.clone()));
        }
        @if let Some(address) = address {
            link rel="canonical" href=(address);
            @if let Some(feed) = page_address(settings, "feed.xml") {
                link rel="alternate" type="application/atom+xml" title=(settings.title) href=(feed);
            }
            meta property="og:type" content=(shell.kind);
            meta property="og:title" content=(shell.title);
            meta property="og:url" content=(address);
            meta property="og:site_name" content=(settings.title);
            meta property="og:locale" content=(settings.language.replace('-', "_"));
            @if !shell.description.is_empty() { meta property="og:description" content=(shell.description); }
            @if let Some((image, alt)) = &shell.image {
                meta property="og:image" content=(image);
                meta property="og:image:alt" content=(alt);
            }
        }
    }
}

/// A text as XML 1.0 may hold it: characters that it forbids are shown as the replacement character.
#[must_use]
pub fn xml_text(text: &str) -> String {
    let is_allowed = |c: char| matches!(c, '\t' | '\n' | '\r') || (c >= ' ' && !matches!(c, '\u{fffe}' | '\u{ffff}'));
    text.chars().map(|c| if is_allowed(c) { c } else { '\u{fffd}' }).collect()
}
