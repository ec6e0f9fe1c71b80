//! The frame of every page: head, way about, and the place for what happens meanwhile.

use super::door::{Role, Visitor};
use super::page::WAYS;
use maud::{DOCTYPE, Markup, html};

/// What a page is wrapped in.
pub struct Frame<'f> {
    title: &'f str,
    visitor: Option<&'f Visitor>,
    here: &'f str,
    live: bool,
    looks: &'static [&'static str],
    script: &'static str,
}

/// What the bench's own pages look like and do.
const LOOKS: &[&str] = &["workbench.css", "pages.css", "print.css"];
const SCRIPT: &str = "workbench.js";

impl<'f> Frame<'f> {
    /// A page for a visitor; `here` is the address among the ways about.
    pub const fn of(visitor: &'f Visitor, title: &'f str, here: &'f str) -> Self {
        Self { title, visitor: Some(visitor), here, live: true, looks: LOOKS, script: SCRIPT }
    }

    /// A page that leads nowhere else.
    pub const fn alone(title: &'f str) -> Self {
        Self { title, visitor: None, here: "", live: false, looks: LOOKS, script: SCRIPT }
    }

    /// A page for a visitor who sees nothing but it: without the ways about.
    pub const fn apart(visitor: &'f Visitor, title: &'f str) -> Self {
        Self { title, visitor: Some(visitor), ..Self::alone(title) }
    }

    /// A taster's sheet, with a look and a script of its own.
    pub const fn taster(title: &'f str) -> Self {
        Self { looks: &["taste.css"], script: "taste.js", ..Self::alone(title) }
    }

    /// The whole page.
    pub fn wrap(&self, body: &Markup) -> String {
        let token = self.visitor.map(|visitor| visitor.token.as_str()).unwrap_or_default();
        let page = html! {
            (DOCTYPE)
            html lang="en-GB" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    meta name="token" content=(token);
                    meta name="referrer" content="same-origin";
                    link rel="icon" href="data:,";
                    title { (self.title) " · Wellproved" }
                    @for look in self.looks { link rel="stylesheet" href=(super::asset::address(look)); }
                    script type="module" src=(super::asset::address(self.script)) {}
                }
                body data-live[self.live] {
                    @if self.live && let Some(visitor) = self.visitor { (ways(visitor, self.here)) }
                    (body)
                    div #happened role="status" aria-live="polite" {}
                }
            }
        };
        page.into_string()
    }
}

fn ways(visitor: &Visitor, here: &str) -> Markup {
    html! {
        a.skip href="#work" { "To the work" }
        header.top {
            nav aria-label="About the book" {
                ul {
                    @for way in WAYS.iter().filter(|way| visitor.role >= way.role) {
                        li { a href=(way.address) aria-current=[(way.address == here).then_some("page")] { (way.title) } }
                    }
                }
            }
            @if visitor.role < Role::Owner { p.fine { "You are here as " (visitor.role.word()) } }
            @if !visitor.session.is_empty() {
                form method="post" action="/leave" { (token(visitor)) button { "Leave" } }
            }
            p #also-here.fine role="status" hidden {}
        }
    }
}

/// The hidden field that shows that a form is a page's own.
pub fn token(visitor: &Visitor) -> Markup {
    html! { input type="hidden" name="token" value=(visitor.token); }
}
