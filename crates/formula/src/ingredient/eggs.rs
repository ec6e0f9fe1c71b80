//! What an egg of a size class brings into the bowl.

use super::Ingredient;
use crate::read::{EggSize, Group};
use quantity::Mass;
use science::measure::egg::{Grading, class, parts};

/// The mass of one egg, yolk or white of that class without its shell; none for what is no egg.
#[must_use]
pub fn one(ingredient: &Ingredient, size: EggSize) -> Option<Mass> {
    if ingredient.group != Group::Egg {
        return None;
    }
    let (grading, name) = match size {
        EggSize::S | EggSize::M | EggSize::L | EggSize::Xl => (Grading::European, size.word().to_owned()),
        _ => (Grading::American, size.word().replace('-', " ")),
    };
    let egg = parts(class(grading, &name)?.usual);
    Some(match ingredient.piece_of_egg() {
        EggPart::White => egg.white,
        EggPart::Yolk => egg.yolk,
        EggPart::Whole => egg.without_shell,
    })
}

/// Which part of an egg an ingredient is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EggPart {
    /// White and yolk.
    Whole,
    /// The white alone.
    White,
    /// The yolk alone.
    Yolk,
}

impl Ingredient {
    /// Which part of an egg it is, judged by what sets yolk and white apart: their fat.
    #[must_use]
    pub fn piece_of_egg(&self) -> EggPart {
        match self.composition.get(super::Figure::Fat) {
            Some(fat) if fat < 2.0 => EggPart::White,
            Some(fat) if fat > 18.0 => EggPart::Yolk,
            _ => EggPart::Whole,
        }
    }
}
