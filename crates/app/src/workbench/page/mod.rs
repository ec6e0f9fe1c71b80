//! The pages, one a file, and the ways that lead to them.

mod book;
mod formula;
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
pub const WAYS: &[Way] = &[book::WAY, trial::WAY];

/// The ways from a formula to what else can be done with it; each address follows the formula's own.
pub const OF_A_FORMULA: &[Way] = &[];

/// Every page.
pub fn all() -> Router<Desk> {
    Router::new().merge(book::routes()).merge(formula::routes()).merge(trial::routes()).merge(why::routes())
}
