//! The pages, one a file, and the ways that lead to them.

mod book;
mod formula;
mod people;
mod taste;
mod tastings;
mod trial;
mod why;

use super::desk::Desk;
use super::door::Role;
use axum::Router;

/// A way that stands on every page.
pub struct Way {
    /// Where it leads.
    pub address: &'static str,
    /// How it is called.
    pub title: &'static str,
    /// Who may go there.
    pub role: Role,
}

/// The ways about, in their order.
pub const WAYS: &[Way] = &[book::WAY, trial::WAY, tastings::WAY, people::WAY];

/// The ways from a formula to what else can be done with it; each address follows the formula's own.
pub const OF_A_FORMULA: &[Way] = &[];

/// Every page.
pub fn all() -> Router<Desk> {
    let pages = [
        book::routes(),
        formula::routes(),
        people::routes(),
        taste::routes(),
        tastings::routes(),
        trial::routes(),
        why::routes(),
    ];
    pages.into_iter().fold(Router::new(), Router::merge)
}
