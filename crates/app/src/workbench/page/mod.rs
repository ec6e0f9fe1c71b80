//! The pages, one a file, and the ways that lead to them.

mod addresses;
mod book;
mod changes;
mod compare;
mod day;
mod exchange;
mod formula;
mod history;
mod ingredients;
mod kitchens;
mod people;
mod press;
mod settings;
mod taste;
mod tastings;
mod trial;
mod why;
mod written;

pub use addresses::of_formula;

use super::answer::Refusal;
use super::desk::Desk;
use super::door::{Role, Visitor};
use ::formula::ingredient::plain_name;
use axum::Router;
use jiff::Timestamp;
use jiff::tz::TimeZone;

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
pub const WAYS: &[Way] =
    &[book::WAY, day::WAY, trial::WAY, tastings::WAY, ingredients::WAY, kitchens::WAY, press::WAY, people::WAY];

/// Where the book is printed.
pub const PRESS: &str = press::WAY.address;

/// The ways from a formula to what else can be done with it; each address follows the formula's own.
pub const OF_A_FORMULA: &[Way] = &[exchange::WAY, compare::WAY, history::WAY];

/// Every page.
pub fn all() -> Router<Desk> {
    let pages = [
        book::routes(),
        changes::routes(),
        compare::routes(),
        day::routes(),
        exchange::routes(),
        formula::routes(),
        history::routes(),
        ingredients::routes(),
        kitchens::routes(),
        people::routes(),
        press::routes(),
        settings::routes(),
        taste::routes(),
        tastings::routes(),
        trial::routes(),
        why::routes(),
    ];
    pages.into_iter().fold(Router::new(), Router::merge)
}

/// Refuses those who may only look.
fn may_write(visitor: &Visitor) -> Result<(), Refusal> {
    if visitor.role >= Role::Helper { Ok(()) } else { Err(Refusal::forbidden("That is not for tasters.")) }
}

/// The files that only the book's owner writes.
const OWNERS: [&str; 2] = ["book.toml", "prices.toml"];

/// Whether somebody may write a file of the book.
fn writes(visitor: &Visitor, file: &str) -> bool {
    visitor.role >= if OWNERS.contains(&file) { Role::Owner } else { Role::Helper }
}

/// Refuses those who may not write a file of the book.
fn may_write_file(visitor: &Visitor, file: &str) -> Result<(), Refusal> {
    may_write(visitor)?;
    if writes(visitor, file) { Ok(()) } else { Err(Refusal::forbidden(format!("Only the book’s owner changes {file}."))) }
}

/// Refuses whoever is not the book's owner.
fn may_own(visitor: &Visitor) -> Result<(), Refusal> {
    if visitor.role >= Role::Owner { Ok(()) } else { Err(Refusal::forbidden("That is for the book’s owner.")) }
}

/// A title as a file's name: small letters, digits and hyphens.
fn plain(title: &str) -> String {
    let kept: String = title.chars().map(|letter| if letter.is_alphanumeric() { letter } else { ' ' }).collect();
    let name: String = plain_name(&kept).chars().filter(|c| c.is_lowercase() || c.is_ascii_digit() || *c == '-').collect();
    name.trim_matches('-').to_owned()
}

/// A moment by the clock on this wall.
fn when(at: &Timestamp) -> String {
    at.to_zoned_datetime(TimeZone::try_system().unwrap_or(TimeZone::UTC)).strftime("%-d %B %Y, %H:%M").to_string()
}
