//! One amount into gram: by weight, density, piece weight or as a share still to be taken.

use super::formula::Content;
use super::names::BoundLine;
use super::{Found, Surroundings};
use crate::fault;
use crate::ingredient::{eggs, Ingredient};
use crate::read::{Amount, Draft, EggSize};
use crate::{Known, Origin};
use quantity::{Between, Fraction, Kind, Mass, Measure};

/// How large a line is, as far as it can be said on its own.
#[derive(Clone, Debug)]
pub enum Size {
    /// So many gram.
    Fixed(Known<Mass>),
    /// A share of a flour.
    Percent(Fraction),
    /// A part of what another stage makes.
    PartOf((usize, usize), Fraction),
}

/// The size of a line, or nothing with a fault.
pub fn size_of(draft: &Draft, line: &BoundLine, around: &Surroundings, found: Found) -> Option<Size> {
    let content = line.content.as_ref()?;
    let place = line.draft.amount.place(&draft.file);
    match &line.draft.amount.value {
        Amount::Part(part) => match content {
            Content::Stage(c, s) => Some(Size::PartOf((*c, *s), *part)),
            Content::Formula(blend) => {
                let by = "part of another formula";
                Some(Size::Fixed(Known::computed(blend.made * *part, by, blend.name.clone())))
            }
            Content::Ingredient(ingredient) => {
                let message = format!("“{}” is an ingredient: there is no whole of which this could be a part", ingredient.title);
                found.push(fault::WRONG_QUANTITY.at(place, message).hint("write a weight, a percentage, a count or a spoon"));
                None
            }
        },
        Amount::Eggs(count, size) => by_egg(draft, line, *count, *size, found),
        Amount::Measure(measure) => match measure.unit.kind() {
            Kind::Share => Some(Size::Percent(Fraction::percent(measure.value.middle()))),
            Kind::Mass => {
                let range = measure.mass(Default::default())?;
                Some(Size::Fixed(ranged(range, Origin::Stated(place))))
            }
            Kind::Volume => by_volume(draft, line, measure, around, found),
            _ => by_count(draft, line, measure.value, around, found),
        },
    }
}

/// A mass that may be a range: the middle counts, the ends are its band.
fn ranged(range: Between<Mass>, origin: Origin) -> Known<Mass> {
    let value = (range.from + range.to) * 0.5;
    Known { value, band: (!range.is_single()).then_some((range.from, range.to)), origin }
}

fn by_volume(draft: &Draft, line: &BoundLine, measure: &Measure, around: &Surroundings, found: Found) -> Option<Size> {
    let range = measure.volume(around.spoons.unwrap_or_default())?;
    let density = match line.content.as_ref()? {
        Content::Ingredient(ingredient) => ingredient.density.as_ref(),
        _ => None,
    };
    let Some((density, source)) = density else {
        let message = format!("no density is known for “{}”, so that a volume cannot be weighed", line.draft.name.value);
        let place = line.draft.amount.place(&draft.file);
        found.push(fault::NO_DENSITY.at(place, message).hint("write a weight, or state a density with its source in a file of ingredients/"));
        return None;
    };
    let origin = Origin::Computed { by: "volume times density", source: source.clone().into() };
    Some(Size::Fixed(ranged(range.map(|volume| volume * *density), origin)))
}

fn ingredient_of<'l>(line: &'l BoundLine) -> Option<&'l Ingredient> {
    match line.content.as_ref()? {
        Content::Ingredient(ingredient) => Some(ingredient),
        _ => None,
    }
}

fn by_egg(draft: &Draft, line: &BoundLine, count: Between<f64>, size: EggSize, found: Found) -> Option<Size> {
    let Some(one) = ingredient_of(line).and_then(|ingredient| eggs::one(ingredient, size)) else {
        let message = format!("“{}” is no egg: only eggs have size classes", line.draft.name.value);
        found.push(fault::WRONG_QUANTITY.at(line.draft.amount.place(&draft.file), message));
        return None;
    };
    let origin = Origin::Computed { by: "eggs by size class, without shell", source: "Delegated Regulation (EU) 2023/2465; USDA weight classes".into() };
    Some(Size::Fixed(ranged(count.map(|count| one * count), origin)))
}

fn by_count(draft: &Draft, line: &BoundLine, count: Between<f64>, around: &Surroundings, found: Found) -> Option<Size> {
    let ingredient = ingredient_of(line);
    if ingredient.is_some_and(|ingredient| eggs::one(ingredient, around.eggs).is_some()) {
        return by_egg(draft, line, count, around.eggs, found);
    }
    let Some(piece) = ingredient.and_then(|ingredient| ingredient.piece.as_ref()) else {
        let message = format!("no piece weight is known for “{}”", line.draft.name.value);
        let place = line.draft.amount.place(&draft.file);
        found.push(fault::NO_PIECE_WEIGHT.at(place, message).hint("write a weight with its unit, or state piece = { weighs = \"…\" } in a file of ingredients/"));
        return None;
    };
    let origin = Origin::Computed { by: "pieces times piece weight", source: piece.of.clone().into() };
    Some(Size::Fixed(ranged(count.map(|count| piece.weighs * count), origin)))
}
