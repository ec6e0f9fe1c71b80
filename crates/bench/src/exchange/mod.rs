//! Exchanges: one thing for another in a formula's own text, with what changes, what cannot be kept, and the
//! new times. A file and a line of the list for each.
//!
//! An exchange edits the author's text in place and states what every line should weigh (its balance); the
//! text is then read anew, and it is refused where a line would weigh anything else.

mod balance;
mod desk;
mod liquid;
mod manuscript;
mod mentions;
pub mod remarks;
mod times;
mod unfit;

mod altitude;
mod butter;
mod egg_parts;
mod egg_size;
mod flour;
mod honey;
mod leaven;
mod milk;
mod preferment;
mod straight;
mod tin;
mod yeast;

pub use times::NewTime;
pub use unfit::Unfit;

use crate::compare::{Comparison, compare};
use crate::forecast::Surroundings;
use crate::rules;
pub(crate) use balance::{Balance, grams};
pub(crate) use desk::{Desk, KEEP, figure, water_of};
pub(crate) use flour::takes_up;
pub use flour::with_protein;
pub use leaven::{is_culture_build, is_yeasted};
pub(crate) use manuscript::Manuscript;
pub use manuscript::Part;
pub(crate) use mentions::without as mentions_without;
pub(crate) use tin::{grow, write_yield};

use formula::arithmetic::mixture;
use formula::source::Source;
use formula::{Book, Diagnostic, Formula, Ingredient, Line, Origin, Pantry, Stage};
use quantity::{Fraction, Length, Mass, TimeSpan};
use std::collections::BTreeSet;

/// An exchange that can be made.
pub struct Exchange {
    /// Its name.
    pub name: &'static str,
    /// What it exchanges, in a few words.
    pub about: &'static str,
    /// What it must or may be told.
    pub asks: &'static str,
    /// By what it reckons, with the source.
    pub grounds: &'static str,
    /// The lines or stages of a formula that it can be made with, by name.
    pub fits: fn(&Formula) -> Vec<String>,
    /// What can take its place, by name, the likeliest first; nothing where that is a size that anybody types.
    pub offers: fn(&Formula, &Pantry) -> Vec<String>,
    make: fn(&mut Desk) -> Result<(), Unfit>,
}

/// The names of the ingredients that are so; those of the book's own first.
fn those(pantry: &Pantry, is_so: impl Fn(&Ingredient) -> bool) -> Vec<String> {
    let mut all: Vec<_> = pantry.all().filter(|one| is_so(one)).collect();
    all.sort_by_key(|one| !one.own);
    all.into_iter().map(|one| one.name.clone()).collect()
}

/// What is offered only where the formula has what it takes the place of.
fn only(has: bool, those: Vec<String>) -> Vec<String> {
    if has { those } else { Vec::new() }
}

/// Every exchange.
pub static ALL: &[&Exchange] = &[
    &leaven::EXCHANGE,
    &preferment::EXCHANGE,
    &straight::EXCHANGE,
    &yeast::EXCHANGE,
    &milk::EXCHANGE,
    &egg_size::EXCHANGE,
    &egg_parts::EXCHANGE,
    &butter::EXCHANGE,
    &honey::EXCHANGE,
    &flour::EXCHANGE,
    &tin::EXCHANGE,
    &altitude::EXCHANGE,
];

/// What is asked of an exchange; each takes what it needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wishes {
    /// The line or stage that is exchanged, by its name.
    pub of: Option<String>,
    /// The stage it stands in, where its name stands twice.
    pub stage: Option<String>,
    /// What takes its place.
    pub into: Option<String>,
    /// How much of it: a share.
    pub share: Option<Fraction>,
    /// The hydration of what is new.
    pub hydration: Option<Fraction>,
    /// How long what is new may take.
    pub time: Option<TimeSpan>,
    /// How high above the sea.
    pub altitude: Option<Length>,
    /// What it was made in, where the formula does not say.
    pub from: Option<String>,
    /// How many of what is new.
    pub count: Option<f64>,
}

/// A formula after an exchange.
#[derive(Debug)]
pub struct Exchanged {
    /// The formula's new text.
    pub text: String,
    /// The formula as it then is.
    pub formula: Formula,
    /// The formula before and after, side by side.
    pub comparison: Comparison,
    /// The lines that changed, stage by stage.
    pub lines: Vec<ChangedLine>,
    /// The times that are new.
    pub times: Vec<NewTime>,
    /// What cannot be kept, each in a few words.
    pub lost: Vec<String>,
    /// What must be minded.
    pub minded: Vec<String>,
    /// By what it was reckoned, with the source.
    pub grounds: &'static str,
    /// The equations behind its new figures, and what trials taught of them.
    pub rests_on: Vec<Origin>,
    /// What proof-reading finds in the new text that it did not find in the old.
    pub found: Vec<Diagnostic>,
}

/// A line that an exchange changed.
#[derive(Clone, Debug, PartialEq)]
pub struct ChangedLine {
    /// The stage's title.
    pub stage: String,
    /// The line's title.
    pub title: String,
    /// Its weight before, and as a share of its stage's flour.
    pub before: Option<(Mass, Option<Fraction>)>,
    /// The same after.
    pub after: Option<(Mass, Option<Fraction>)>,
}

/// Makes an exchange in a formula of a book.
///
/// # Errors
/// [`Unfit`] says why it cannot be made, and what the formula has.
pub fn exchange(name: &str, book: &Book, formula: &str, around: &Surroundings, wishes: &Wishes) -> Result<Exchanged, Unfit> {
    let one = named(name)?;
    let (source, before) = opened(book, formula)?;
    let mut desk = Desk::of(book, source, &before, around, wishes);
    (one.make)(&mut desk)?;
    untasted(&mut desk);
    finished(desk, one.grounds)
}

/// What comes of a change was never tasted.
pub(crate) fn untasted(desk: &mut Desk) {
    if desk.manuscript.remove_from_head("evidence") {
        desk.lost.push("the evidence of tastings: what was tasted was made by the formula as it was".to_owned());
    }
}

/// A formula after an exchange, for those who only cook it.
#[derive(Debug)]
pub struct Remade {
    /// The formula as it then is, its times settled.
    pub formula: Formula,
    /// What cannot be kept, each in a few words.
    pub lost: Vec<String>,
    /// What must be minded.
    pub minded: Vec<String>,
}

/// Makes an exchange, and neither compares nor proof-reads what comes of it: a fraction of the work.
///
/// # Errors
/// [`Unfit`] says why it cannot be made, and what the formula has.
pub fn remade(name: &str, book: &Book, formula: &str, around: &Surroundings, wishes: &Wishes) -> Result<Remade, Unfit> {
    let (source, before) = opened(book, formula)?;
    let mut desk = Desk::of(book, source, &before, around, wishes);
    (named(name)?.make)(&mut desk)?;
    let (_, formula) = settled(&mut desk)?;
    Ok(Remade { lost: desk.lost, minded: desk.minded, formula })
}

fn named(name: &str) -> Result<&'static Exchange, Unfit> {
    ALL.iter().copied().find(|one| one.name == name).ok_or_else(|| Unfit::NoSuchExchange(name.to_owned()))
}

/// The formula that lies changed on a desk, read anew, and the times that are new in it.
fn settled(desk: &mut Desk) -> Result<(Vec<NewTime>, Formula), Unfit> {
    desk.let_products_follow();
    let after = desk.hold()?;
    times::settle(desk, after)
}

/// A formula of a book and its text, if it has no faults.
pub(crate) fn opened<'b>(book: &'b Book, formula: &str) -> Result<(&'b Source, Formula), Unfit> {
    let lacking = || Unfit::Broken(format!("there is no formula called “{formula}”"));
    let source = book.formulas.get(formula).ok_or_else(lacking)?;
    Ok((source, balance::sound(book.formula(formula).ok_or_else(lacking)?)?))
}

/// The formula that lies changed on a desk, read anew, its times settled, held against what it was.
pub(crate) fn finished(mut desk: Desk, grounds: &'static str) -> Result<Exchanged, Unfit> {
    let (times, after) = settled(&mut desk)?;
    let (before, book, around) = (desk.before, desk.book, desk.around);
    let new = new_allergens(before, &after);
    let of_words = std::mem::take(&mut desk.of_words);
    desk.minded.extend(of_words);
    if !new.is_empty() {
        desk.minded.push(format!("an allergen comes in: {}; name it wherever what is contained is listed", new.join(", ")));
    }
    desk.minded.push("the words of introduction, notes, storage and method are the author's: read them once more".to_owned());
    let found = newly_found(before, &after, book);
    Ok(Exchanged {
        comparison: compare(&[before, &after], around, &["before".to_owned(), "after".to_owned()]),
        lines: changed_lines(before, &after),
        times,
        lost: desk.lost,
        minded: desk.minded,
        grounds,
        rests_on: desk.rests_on,
        found,
        text: desk.manuscript.text,
        formula: after,
    })
}

/// The allergens of the formula after that it did not hold before, by their codes.
fn new_allergens(before: &Formula, after: &Formula) -> Vec<String> {
    let all = |formula: &Formula| -> BTreeSet<String> {
        (0..formula.components.len()).flat_map(|component| mixture(formula, component).allergens).collect()
    };
    all(after).difference(&all(before)).cloned().collect()
}

/// What proof-reading finds now and did not find before, by the fault's name and words.
fn newly_found(before: &Formula, after: &Formula, book: &Book) -> Vec<Diagnostic> {
    let kitchen = book.kitchen();
    let known = rules::proof_read(before, &kitchen, &book.settings);
    let is_new = |found: &Diagnostic| !known.iter().any(|one| one.code == found.code);
    rules::proof_read(after, &kitchen, &book.settings).into_iter().filter(is_new).collect()
}

/// What is told of a line's change: of a whole stage that goes on only what is more than a fiftieth.
fn noticed(line: &Line) -> Mass {
    match line.content {
        formula::Content::Ingredient(_) => Mass::grams(0.02).min(line.mass.value * 0.005),
        _ => line.mass.value * 0.02,
    }
}

/// The lines of the stages that differ, found again by the names of stage and line; what is gone comes first.
fn changed_lines(before: &Formula, after: &Formula) -> Vec<ChangedLine> {
    let names = |formula: &Formula| -> Vec<(String, String)> {
        formula.stages().map(|(at, stage)| (formula.components[at.0].name.clone(), stage.name.clone())).collect()
    };
    let now = names(after);
    let gone = names(before).into_iter().filter(|name| !now.contains(name));
    gone.chain(now.iter().cloned()).flat_map(|name| changed_in(stage_named(before, &name), stage_named(after, &name))).collect()
}

fn stage_named<'f>(formula: &'f Formula, (component, stage): &(String, String)) -> Option<&'f Stage> {
    let component = formula.components.iter().find(|one| one.name == *component)?;
    component.stages.iter().find(|one| one.name == *stage)
}

/// The lines of one stage that differ.
fn changed_in(before: Option<&Stage>, after: Option<&Stage>) -> Vec<ChangedLine> {
    let lines = |stage: Option<&Stage>| stage.map(|stage| stage.lines.clone()).unwrap_or_default();
    let figure = |stage: Option<&Stage>, line: &Line| {
        let flour = stage.map_or(Mass::ZERO, |stage| stage.flour);
        (line.mass.value, (flour > Mass::ZERO).then(|| Fraction::ratio(line.mass.value / flour)))
    };
    let (old, new) = (lines(before), lines(after));
    let title = before.or(after).map(|stage| stage.title.clone()).unwrap_or_default();
    let mut changed = Vec::new();
    for line in &old {
        let now = new.iter().find(|other| other.name == line.name);
        if now.is_none_or(|now| (now.mass.value - line.mass.value).abs() >= noticed(line)) {
            let (before, after) = (Some(figure(before, line)), now.map(|now| figure(after, now)));
            changed.push(ChangedLine { stage: title.clone(), title: line.title.clone(), before, after });
        }
    }
    for line in new.iter().filter(|line| !old.iter().any(|old| old.name == line.name)) {
        changed.push(ChangedLine {
            stage: title.clone(),
            title: line.title.clone(),
            before: None,
            after: Some(figure(after, line)),
        });
    }
    changed
}
