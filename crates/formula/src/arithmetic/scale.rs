//! Scaling a formula: to pieces, a total, a flour weight, a tin, an ingredient at hand, a factor.

use super::losses::needed;
use super::overall::overall;
use crate::ingredient::plain_name;
use crate::read::MOST_AMOUNT;
use crate::resolve::formula::{Content, Formula, Line, Word};
use crate::{Known, Origin};
use quantity::{Count, Density, Mass, Volume};
use std::fmt;

/// What a formula is scaled to.
#[derive(Clone, Debug, PartialEq)]
pub enum Target {
    /// So many pieces, at another scaling weight if one is given.
    Pieces(Count, Option<Mass>),
    /// So much raw, after make-up loss.
    Total(Mass),
    /// So much when done, after all losses.
    Done(Mass),
    /// So much flour in all.
    Flour(Mass),
    /// So many tins of a volume, from the tin the formula is written for.
    Tins(Volume, Count),
    /// A volume filled at a density: a ring of that area to that depth.
    Filled(Volume, Density),
    /// So much of one ingredient: "I have only 3 eggs"; its line's name.
    AtHand(String, Mass),
    /// So many times as much.
    Factor(f64),
}

/// Why a formula cannot be scaled to a target.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ScaleFault {
    /// It does not state what the target refers to.
    NotStated(&'static str),
    /// It has no line of that name.
    NoSuchLine(String),
    /// It has no flour.
    NoFlour,
    /// What was given is no weight, volume or count.
    NoAmountAtHand,
    /// Eggs of a size class were given of what is no egg; its title.
    NoEgg(String),
    /// A volume was given of what has no known density; its title.
    NoDensity(String),
    /// A count was given of what has no known piece weight; its title.
    NoPieceWeight(String),
    /// The factor is nothing, negative, or no number.
    NoFactor,
    /// The result is larger than anything a document may state.
    TooLarge,
}

impl fmt::Display for ScaleFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotStated(what) => write!(f, "the formula does not state {what}"),
            Self::NoSuchLine(name) => write!(f, "no line of the formula is called “{name}”"),
            Self::NoFlour => f.write_str("it has no flour"),
            Self::NoAmountAtHand => f.write_str("what is at hand must be a weight, a volume or a count"),
            Self::NoEgg(title) => write!(f, "“{title}” is no egg: only eggs have size classes"),
            Self::NoDensity(title) => write!(f, "no density is known for “{title}”, so that a volume cannot be weighed"),
            Self::NoPieceWeight(title) => write!(f, "no piece weight is known for “{title}”"),
            Self::NoFactor => f.write_str("the factor must be a number above nothing"),
            Self::TooLarge => f.write_str("that is more than any kitchen holds"),
        }
    }
}

/// The factor that takes a formula's main component to a target.
///
/// # Errors
/// [`ScaleFault`] if the formula lacks what the target refers to.
pub fn factor(formula: &Formula, target: &Target) -> Result<f64, ScaleFault> {
    let main = formula.components.first().ok_or(ScaleFault::NotStated("a component"))?;
    let yields = &main.yields;
    let factor = match target {
        Target::Pieces(count, weight) => {
            let pieces = yields.pieces.ok_or(ScaleFault::NotStated("its number of pieces"))?;
            let resized = match (weight, yields.scaling_weight) {
                (None, _) => 1.0,
                (Some(weight), Some(own)) => *weight / own,
                (Some(_), None) => return Err(ScaleFault::NotStated("its scaling weight")),
            };
            *count / pieces * resized
        }
        Target::Total(mass) => *mass / yields.raw(),
        Target::Done(mass) => {
            let losses = [yields.make_up_loss, yields.bake_loss];
            needed(*mass - yields.after_scaling, &losses).ok_or(ScaleFault::NoFactor)? / yields.made
        }
        Target::Flour(mass) => match overall(formula, 0).total_flour {
            flour if flour > Mass::ZERO => *mass / flour,
            _ => return Err(ScaleFault::NoFlour),
        },
        Target::Tins(volume, count) => {
            let (own, tins) = yields.tin.ok_or(ScaleFault::NotStated("the tin it is written for"))?;
            *volume * count.as_pieces() / (own * tins.as_pieces())
        }
        Target::Filled(volume, density) => *volume * *density / yields.raw(),
        Target::AtHand(name, mass) => *mass / weighed_of(formula, name)?,
        Target::Factor(factor) => *factor,
    };
    if factor.is_finite() && factor > 0.0 { Ok(factor) } else { Err(ScaleFault::NoFactor) }
}

/// All that the lines of a name weigh in all components.
fn weighed_of(formula: &Formula, name: &str) -> Result<Mass, ScaleFault> {
    let mass: Mass = lines_named(formula, name).map(|line| line.mass.value).sum();
    if mass > Mass::ZERO { Ok(mass) } else { Err(ScaleFault::NoSuchLine(name.to_owned())) }
}

/// The lines of a name in all components: their own, or any of their ingredient's.
pub(super) fn lines_named<'f>(formula: &'f Formula, name: &str) -> impl Iterator<Item = &'f Line> + use<'f> {
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let wanted = plain_name(name);
    let is_wanted = move |one: &str| plain_name(one) == wanted;
    lines.filter(move |line| {
        let of_ingredient = match &line.content {
            Content::Ingredient(one) => is_wanted(&one.name) || one.also.iter().any(|also| is_wanted(also)),
            Content::Stage(..) | Content::Formula(_) => false,
        };
        is_wanted(&line.name) || of_ingredient
    })
}

/// A formula in another size.
#[derive(Clone, Debug)]
pub struct Scaled {
    /// How many times as large it is.
    pub factor: f64,
    /// The formula in that size.
    pub formula: Formula,
}

/// The formula at a target. Where it is written for a tin a piece, other tins hold a piece each.
///
/// # Errors
/// [`ScaleFault`] if the formula lacks what the target refers to, or the result is too large.
pub fn scaled_to(formula: &Formula, target: &Target) -> Result<Scaled, ScaleFault> {
    let by = factor(formula, target)?;
    let weight = match target {
        Target::Pieces(_, weight) => *weight,
        _ => None,
    };
    let mut large = scaled(formula, by, weight);
    if let (Target::Tins(volume, count), Some(main)) = (target, large.components.first_mut()) {
        let yields = &mut main.yields;
        let tins = formula.components[0].yields.tin.map(|(_, tins)| tins);
        if tins.is_some() && tins == formula.components[0].yields.pieces {
            yields.pieces = Some(*count);
            yields.scaling_weight = Some(yields.raw() / count.as_pieces());
        }
        yields.tin = Some((*volume, *count));
    }
    if is_within_limits(&large) { Ok(Scaled { factor: by, formula: large }) } else { Err(ScaleFault::TooLarge) }
}

/// Whether every figure is one that a document could state.
fn is_within_limits(formula: &Formula) -> bool {
    let stages = || formula.components.iter().flat_map(|component| &component.stages);
    let yields = || formula.components.iter().map(|component| &component.yields);
    let weights = stages().map(|stage| stage.mixed()).chain(yields().map(|yields| yields.made));
    let counts = yields().flat_map(|yields| [yields.pieces, yields.serves]).flatten();
    let figures = weights.map(Mass::as_grams).chain(counts.map(Count::as_pieces));
    // Written so that what is no number fails too.
    figures.into_iter().all(|figure| figure <= MOST_AMOUNT)
}

/// The formula so many times as large. Pieces keep their weight unless a weight is given.
#[must_use]
pub fn scaled(formula: &Formula, factor: f64, scaling_weight: Option<Mass>) -> Formula {
    let mut large = formula.clone();
    for component in &mut large.components {
        let yields = &mut component.yields;
        yields.made = yields.made * factor;
        yields.after_scaling = yields.after_scaling * factor;
        yields.pieces = yields.pieces.map(|pieces| pieces * factor);
        yields.serves = yields.serves.map(|serves| serves * factor);
        for stage in &mut component.stages {
            stage.flour = stage.flour * factor;
            stage.kept_back = stage.kept_back * factor;
            for line in &mut stage.lines {
                line.mass = times(&line.mass, factor);
                line.pieces = line.pieces.map(|pieces| pieces * factor);
            }
            for step in &mut stage.steps {
                step.decks = step.decks.map(|decks| decks * factor);
            }
            for word in stage.steps.iter_mut().flat_map(|step| &mut step.words) {
                if let Word::Line { mass, .. } = word {
                    *mass = *mass * factor;
                }
            }
        }
    }
    if let (Some(weight), Some(main)) = (scaling_weight, large.components.first_mut()) {
        let was = main.yields.scaling_weight.replace(weight);
        main.yields.pieces = main.yields.pieces.map(|pieces| was.map_or(pieces, |was| pieces * (was / weight)));
    }
    large
}

fn times(known: &Known<Mass>, factor: f64) -> Known<Mass> {
    let origin = match &known.origin {
        Origin::Stated(_) if (factor - 1.0).abs() > 1e-12 => Origin::Computed { by: "scaling", source: "the formula".into() },
        other => other.clone(),
    };
    Known { value: known.value * factor, band: known.band.map(|(from, to)| (from * factor, to * factor)), origin }
}
