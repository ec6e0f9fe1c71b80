//! Figures of a page that a reader's settings may change: each carries what it is worked out from.

use crate::method::{Figure, Piece};
use maud::{Markup, html};
use quantity::{Between, Mass, Temperature};

/// Where in a formula a figure stands: the component and the stage.
pub type At = (usize, usize);

/// The key under which a reader's settings find a line.
#[must_use]
pub fn line_key(c: usize, s: usize, line: usize) -> String {
    format!("{c}.{s}.{line}")
}

/// The key of a step.
#[must_use]
pub fn step_key((c, s): At, step: usize) -> String {
    format!("{c}.{s}.{step}")
}

/// A figure to its last bit, so that the page rounds it as the program does.
#[must_use]
pub fn plain(value: f64) -> String {
    format!("{value}")
}

/// A weight under its key; `of` is what stands under that key, of which it may be a part.
#[must_use]
pub fn weight(mass: Mass, text: &str, key: &str, of: Mass) -> Markup {
    let part = (mass != of && of > Mass::ZERO).then(|| plain(of.as_grams()));
    html! { span data-g=(plain(mass.as_grams())) data-k=(key) data-of=[part] { (text) } }
}

fn ends(range: Between<Temperature>) -> String {
    let (from, to) = (plain(range.from.as_celsius()), plain(range.to.as_celsius()));
    if from == to { from } else { format!("{from} {to}") }
}

/// A piece of a sentence, its figure marked; a dash in it does not break the line.
pub fn piece(formula: &formula::Formula, (c, _): At, piece: &Piece) -> Markup {
    let text = unbroken(&piece.text);
    let component = &formula.components[c];
    match piece.figure {
        None => html! { (text) },
        Some(Figure::Weight(s, line, mass)) => {
            weight(mass, &text, &line_key(c, s, line), component.stages[s].lines[line].mass.value)
        }
        Some(Figure::Counted(s, line, count)) => {
            html! { span data-n=(plain(count.as_pieces())) data-k=(line_key(c, s, line)) data-called { (text) } }
        }
        Some(Figure::Mass(mass)) => html! { span data-g=(plain(mass.as_grams())) { (text) } },
        Some(Figure::Each(mass)) if c == 0 => html! { span data-each=(plain(mass.as_grams())) { (text) } },
        Some(Figure::Pieces(_)) if c == 0 => html! { span data-pieces { (text) } },
        Some(Figure::Number(count)) => html! { span data-n=(plain(count.as_pieces())) { (text) } },
        Some(Figure::Pieces(_) | Figure::Each(_)) => html! { (text) },
        Some(Figure::Temperature(range)) => html! { span data-c=(ends(range)) { (text) } },
        Some(Figure::Stands(range)) => html! { span data-c=(ends(range)) data-stands { (text) } },
        Some(Figure::Lasts(_)) => html! { span data-lasts { (text) } },
    }
}

/// A text whose ranges do not break at the line's end: a word joiner holds what follows a dash.
pub fn unbroken(text: &str) -> String {
    text.replace('–', "–\u{2060}")
}
