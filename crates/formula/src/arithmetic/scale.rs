//! Scaling a formula: to pieces, a total, a flour weight, a tin, an ingredient at hand, a factor.

use super::losses::needed;
use super::overall::overall;
use crate::resolve::formula::{Content, Formula, Word};
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
    /// The factor is nothing, negative, or no number.
    NoFactor,
}

impl fmt::Display for ScaleFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotStated(what) => write!(f, "the formula does not state {what}"),
            Self::NoSuchLine(name) => write!(f, "no line of the formula is called “{name}”"),
            Self::NoFactor => f.write_str("the factor must be a number above nothing"),
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
        Target::Flour(mass) => *mass / overall(formula, 0).total_flour,
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
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let is_named = |line: &&crate::Line| {
        line.name == name || matches!(&line.content, Content::Ingredient(one) if one.name == name || one.also.iter().any(|also| also == name))
    };
    let mass: Mass = lines.filter(is_named).map(|line| line.mass.value).sum();
    if mass > Mass::ZERO { Ok(mass) } else { Err(ScaleFault::NoSuchLine(name.to_owned())) }
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
