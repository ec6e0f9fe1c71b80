//! Targets: questions asked backwards. What is wanted is fixed, one figure is free, and the answer is that figure
//! with its grounds and, where it changes the formula, the formula's new text. A file and a line of the list for
//! each.
//!
//! What changes a formula is edited at the desk of the exchanges: the author's text in place, every weight held.

mod batch;
mod begin;
mod dose;
mod flour;
mod hydration;
mod in_time;
mod price;
mod reformulate;
mod syrup;
mod water;
mod yeast;

pub(crate) use dose::factor_for;
pub use dose::{Dose, Dosed, NoDose, When, find, yeast_for};
pub use in_time::{InTime, in_time};

use crate::exchange::{Desk, Exchanged, Part, Unfit, Wishes, finished, grams, opened, untasted};
use crate::forecast::Surroundings;
use formula::resolve::formula::Content;
use formula::{Book, Formula, Known};
use quantity::{Count, Fraction, Mass, Money, Temperature, TemperatureDifference, TimeSpan, Viscosity, Volume};

/// A target that can be solved for.
pub struct Target {
    /// Its name.
    pub name: &'static str,
    /// What is wanted and what is free, in a few words.
    pub about: &'static str,
    /// What it must or may be told.
    pub asks: &'static str,
    /// By what it reckons, with the source.
    pub grounds: &'static str,
    /// What of a formula it can be asked for, by name.
    pub fits: fn(&Formula) -> Vec<String>,
    solve: fn(&mut Desk, &Asked) -> Result<Answer, Unfit>,
}

/// Every target.
pub static ALL: &[&Target] = &[
    &yeast::TARGET,
    &begin::TARGET,
    &water::TARGET,
    &flour::TARGET,
    &hydration::TARGET,
    &syrup::TARGET,
    &batch::TARGET,
    &price::TARGET,
    &reformulate::TARGET,
];

/// What is asked; each target takes what it needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asked {
    /// The line that is free, by its name.
    pub of: Option<String>,
    /// The stage that is meant, by its name.
    pub stage: Option<String>,
    /// The figure that is wanted, as it is written: "62 %", "24 °C", "65 Brix", "4 l".
    pub to: Option<String>,
    /// An ingredient that may come in.
    pub with: Option<String>,
    /// When it is to be ready.
    pub ready: Option<Ready>,
    /// When it is begun, by the clock.
    pub begun: Option<TimeSpan>,
    /// How many.
    pub count: Option<f64>,
    /// How far each line may move from what it is.
    pub within: Option<Fraction>,
    /// Figures with what they should come to: a share of all flour, or what a piece may cost.
    pub aims: Vec<(String, Amount)>,
    /// Lines that stay as they are.
    pub keep: Vec<String>,
}

/// When something is to be ripe or risen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ready {
    /// Ripe, or risen, after so long.
    After(When),
    /// Ripe at a time of the day.
    RipeAt(TimeSpan),
    /// Risen at a time of the day.
    RisenAt(TimeSpan),
}

/// A figure of an answer.
#[derive(Clone, Debug)]
pub struct Figure {
    /// What it is, in words.
    pub what: String,
    /// The figure with its band and its grounds.
    pub known: Known<Amount>,
}

/// What an answer is in.
#[derive(Clone, Debug, PartialEq)]
pub enum Amount {
    /// A weight.
    Mass(Mass),
    /// A share.
    Share(Fraction),
    /// A temperature.
    Temperature(Temperature),
    /// A time.
    Time(TimeSpan),
    /// A time of the day, seconds after midnight; below zero the day before, above a day the day after.
    Clock(TimeSpan),
    /// A volume.
    Volume(Volume),
    /// A number of pieces.
    Count(Count),
    /// How many times as much.
    Factor(f64),
    /// How thick it pours.
    Viscosity(Viscosity),
    /// A difference of temperatures.
    Warming(TemperatureDifference),
    /// What is paid.
    Price(Money),
}

/// What could not be met.
#[derive(Clone, Debug, PartialEq)]
pub struct Unmet {
    /// What was wanted, by its name.
    pub aim: String,
    /// The figure that was wanted.
    pub wanted: Amount,
    /// The nearest that was found.
    pub reached: Amount,
    /// What stands against it.
    pub why: String,
}

/// What a target found, before the formula is read anew.
#[derive(Clone, Debug, Default)]
struct Answer {
    figures: Vec<Figure>,
    unmet: Vec<Unmet>,
}

/// A question answered.
#[derive(Debug)]
pub struct Solved {
    /// The target's name.
    pub target: &'static str,
    /// The formula's title.
    pub title: String,
    /// What was found.
    pub figures: Vec<Figure>,
    /// What could not be met, and why.
    pub unmet: Vec<Unmet>,
    /// The formula so changed, where the answer changes it.
    pub changed: Option<Exchanged>,
    /// What must be minded, where it does not.
    pub minded: Vec<String>,
    /// By what it was reckoned, with the source.
    pub grounds: &'static str,
}

/// Solves for a target in a formula of a book.
///
/// # Errors
/// [`Unfit`] says why it cannot be reached at all, or what must be said.
pub fn solve(name: &str, book: &Book, formula: &str, around: &Surroundings, asked: &Asked) -> Result<Solved, Unfit> {
    let one = ALL.iter().find(|one| one.name == name).ok_or_else(|| Unfit::NoSuchTarget(name.to_owned()))?;
    let (source, before) = opened(book, formula)?;
    let wishes = Wishes { of: asked.of.clone(), stage: asked.stage.clone(), ..Wishes::default() };
    let mut desk = Desk::of(book, source, &before, around, &wishes);
    let Answer { figures, unmet } = (one.solve)(&mut desk, asked)?;
    let minded = desk.minded.clone();
    let (changed, minded) = if desk.is_changed() {
        untasted(&mut desk);
        (Some(finished(desk, one.grounds)?), Vec::new())
    } else {
        (None, minded)
    };
    Ok(Solved { target: one.name, title: before.head.title.clone(), figures, unmet, changed, minded, grounds: one.grounds })
}

impl Answer {
    /// Adds a figure that an equation or rule gave.
    fn tell(&mut self, what: impl Into<String>, amount: Amount, by: &'static str, source: &'static str) {
        self.tell_known(what, Known::computed(amount, by, source));
    }

    /// Adds a figure with its band and grounds.
    fn tell_known(&mut self, what: impl Into<String>, known: Known<Amount>) {
        self.figures.push(Figure { what: what.into(), known });
    }
}

/// Lets the pieces of a component follow where it weighs so many times as much: as many of them, each lighter or
/// heavier.
fn let_pieces_follow(desk: &mut Desk, component: usize, ratio: f64) {
    let yields = &desk.before.components[component].yields;
    if !(ratio.is_finite() && ratio > 0.0) || (ratio - 1.0).abs() < 1e-4 {
        return;
    }
    // To the tenth of a gram below, so that there is enough for the last piece.
    let scaled = |mass: Mass| grams(Mass::grams((mass.as_grams() * ratio * 10.0).floor() / 10.0));
    if let (Some(weight), Some(_)) = (yields.scaling_weight, desk.manuscript.get(Part::Yield(component), "scaling-weight")) {
        desk.manuscript.set(Part::Yield(component), "scaling-weight", &scaled(weight), "pieces");
        desk.minded.push(format!("each {} is scaled at {} instead of {}", yields.piece.0, scaled(weight), grams(weight)));
    }
    desk.manuscript.set_if_there(Part::Yield(component), "total", &scaled(yields.raw()));
}

/// What goes into a component's product, in gram.
fn weighed_in(formula: &Formula, component: usize) -> f64 {
    let all = formula::arithmetic::weighed(formula, component);
    all.iter().filter(|part| !matches!(part.line.content, Content::Stage(..))).map(|part| part.mass.as_grams()).sum()
}

/// A figure of the house as an answer.
fn amount<T: Copy>(known: &Known<T>, of: impl Fn(T) -> Amount) -> Known<Amount> {
    Known { value: of(known.value), band: known.band.map(|(low, high)| (of(low), of(high))), origin: known.origin.clone() }
}
