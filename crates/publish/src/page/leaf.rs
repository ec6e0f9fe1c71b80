//! What stands on a formula's page besides the formula: its place in the book, its picture, a serving's nutrition.

use super::day::day_section;
use super::lists::{ingredient_id, tag_links};
use crate::needs::Need;
use crate::picture::Picture;
use crate::reader::Reader;
use crate::serving::Serving;
use crate::site::{Link, page_name};
use crate::tasting::Claim;
use crate::tongue::Tongue;
use formula::Formula;
use formula::read::BookSettings;
use maud::{Markup, html};
use plan::day::Timeline;

/// Something of a formula that lies beside its page to be printed.
#[derive(Clone, Debug)]
pub struct OnPaper {
    /// Its file, seen from the page.
    pub file: String,
    /// What it is, one of [`ON_PAPER`].
    pub name: &'static str,
}

/// What may lie beside a page to be printed.
pub const ON_PAPER: [&str; 3] = ["card", "sheet", "labels"];

/// A formula's place in its book.
#[derive(Clone, Copy)]
pub struct Leaf<'l> {
    /// The book's settings, as they hold for the formula.
    pub settings: &'l BookSettings,
    /// The book's language, which a formula may not share.
    pub book_language: &'l str,
    /// The formulas that its product goes into.
    pub used_in: &'l [Link],
    /// The same recipe in other languages.
    pub translations: &'l [Link],
    /// Its photograph, if there is one to show.
    pub picture: Option<&'l Picture>,
    /// What may be claimed of it, each with its evidence.
    pub claims: &'l [Claim],
    /// What lets its reader fit it to another kitchen, if that was worked out.
    pub reader: Option<&'l Reader>,
    /// What lies beside the page to be printed.
    pub on_paper: &'l [OnPaper],
    /// Its usual day, if it states when it is served.
    pub day: Option<&'l Timeline>,
}

impl<'l> Leaf<'l> {
    /// A page of which nothing more is known than its book's settings.
    #[must_use]
    pub fn alone(settings: &'l BookSettings) -> Self {
        let book_language = settings.language.as_str();
        Self {
            settings,
            book_language,
            translations: &[],
            used_in: &[],
            picture: None,
            claims: &[],
            reader: None,
            day: None,
            on_paper: &[],
        }
    }

    /// The language that the page speaks.
    pub fn tongue(&self) -> Tongue {
        Tongue::of(&self.settings.language)
    }

    /// The way back to the book.
    pub fn top(&self) -> Markup {
        let tongue = self.tongue();
        let title = if self.settings.title.is_empty() { tongue.formulas() } else { &self.settings.title };
        html! {
            header.top {
                nav aria-label=(tongue.book()) { a href="index.html" lang=[self.of_book()] { (title) } }
                @if !self.translations.is_empty() {
                    nav.translations aria-label=(tongue.in_other_languages()) {
                        @for link in self.translations {
                            @let language = link.language.as_deref().unwrap_or(self.book_language);
                            a href=(page_name(&link.name)) lang=(language) hreflang=(language) rel="alternate" {
                                (Tongue::name_of(language)) ": " (link.title)
                            }
                        }
                    }
                }
            }
        }
    }

    /// The language of the book's own words, where it is not the page's.
    pub fn of_book(&self) -> Option<&str> {
        (self.book_language != self.settings.language).then_some(self.book_language)
    }

    /// Every language in which the recipe stands, its own among them, with its page; none where there is but one.
    pub fn alternates(&self, formula: &Formula) -> Vec<(String, String)> {
        let of = |link: &Link| (link.language.as_deref().unwrap_or(self.book_language).to_owned(), page_name(&link.name));
        let mut all: Vec<(String, String)> = self.translations.iter().map(of).collect();
        if !all.is_empty() {
            all.insert(0, (self.settings.language.clone(), page_name(&formula.name)));
        }
        all
    }

    /// The photograph in the size that suits the reader's screen.
    pub fn photograph(&self) -> Markup {
        html! { @if let Some(picture) = self.picture { (picture.element()) } }
    }

    /// A drawing of the formula's course, where there is no photograph: never a picture of something else.
    pub fn drawing(&self, formula: &Formula) -> Markup {
        html! {
            @if self.picture.is_none() && let Some(drawing) = crate::chart::course_chart(formula, self.tongue()) { figure.course { (drawing) } }
        }
    }

    /// The formula's tags.
    pub fn tags(&self, formula: &Formula) -> Markup {
        html! {
            @if !formula.head.tags.is_empty() {
                p.tags { (tag_links(&formula.head.tags)) }
            }
        }
    }

    /// What an ingredient is called, leading to what else is made of it.
    pub fn ingredient(&self, need: &Need) -> Markup {
        html! {
            @if let Some(other) = &need.formula {
                a href=(page_name(other)) { (need.title) }
            } @else if let Some(one) = &need.ingredient {
                a.quiet href={ "ingredients.html#" (ingredient_id(&one.name)) } { (need.title) }
            } @else {
                (need.title)
            }
        }
    }

    /// What there is to print.
    pub fn on_paper(&self) -> Markup {
        html! {
            @if !self.on_paper.is_empty() {
                p.fine.on-paper {
                    @for (n, one) in self.on_paper.iter().enumerate() {
                        @if n > 0 { " · " }
                        a href=(one.file) type="application/pdf" { (quantity::print::capital(self.tongue().on_paper(one.name))) " (PDF)" }
                    }
                }
            }
        }
    }

    /// What blind tastings found of it, each leading to its evidence.
    pub fn evidence(&self) -> Markup {
        // What was found is worded in English, and marked so where the page is not.
        let english = (!self.tongue().is_english()).then_some("en");
        html! {
            @if !self.claims.is_empty() {
                section.evidence aria-labelledby="evidence" {
                    h2 #evidence { (self.tongue().tasted_blind()) }
                    @for claim in self.claims {
                        p { span lang=[english] { (claim.words) } " " a href=(claim.page) { (self.tongue().the_evidence()) } }
                        @if let Some(changed) = &claim.changed { p.fine lang=[english] { (changed) } }
                    }
                }
            }
        }
    }

    /// What is done when, where the formula states when it is served.
    pub fn day(&self) -> Markup {
        html! { @if let Some(day) = self.day { (day_section(day, self.tongue())) } }
    }

    /// The formulas that this one goes into.
    pub fn used_in(&self) -> Markup {
        html! {
            @if !self.used_in.is_empty() {
                section.used aria-labelledby="used" {
                    h2 #used { (self.tongue().goes_into()) }
                    ul.plain { @for link in self.used_in { li { a href=(page_name(&link.name)) lang=[link.language.as_deref().or(self.of_book()).filter(|language| *language != self.settings.language)] { (link.title) } } } }
                }
            }
        }
    }

    /// What is in a serving, where every figure of it is known.
    pub fn serving(&self, formula: &Formula) -> Markup {
        let tongue = self.tongue();
        html! {
            @if let Some(serving) = Serving::of(formula, tongue) {
                section.serving aria-labelledby="serving" {
                    h2 #serving { (tongue.in_a_serving()) }
                    p.fine { (serving.size) ". " (tongue.serving_from_tables()) }
                    dl.figures {
                        div { dt { (tongue.energy()) } dd { (serving.kilojoules) " (" (serving.kilocalories) ")" } }
                        @for line in &serving.lines { div { dt { (line.title) } dd { (line.content) } } }
                    }
                }
            }
        }
    }
}
