//! The piece that meets the heat: its shape, thickness and what it is made of.

use crate::forecast::Point;
use crate::forecast::surroundings::Surroundings;
use formula::Formula;
use formula::arithmetic::{Mixture, mixture};
use formula::ingredient::Figure;
use formula::read::Action;
use quantity::{Between, Density, Fraction, Length, Mass, Temperature, Volume, print};
use science::heat::cook::Piece;
use science::heat::{Composition, Shape, boiling_point, equal_radius};

/// A piece, and what was taken for granted about it.
pub struct Made {
    pub piece: Piece,
    /// Whether its thickness or tin is stated.
    pub is_size_stated: bool,
    pub assumed: Vec<String>,
}

impl Made {
    /// What water boils at where it is cooked.
    pub fn boils(&self) -> Temperature {
        boiling_point(self.piece.pressure)
    }
}

/// How far a piece has risen when nothing is foreseen of its rise: common practice, no source.
const RISEN: f64 = 1.6;
/// Heat puffs up even what has hardly risen, to this at the least: common practice, no source.
const LEAST: f64 = 1.3;
/// What a batter or dough without gas weighs, in gram per millilitre: common practice, no source.
const GAS_FREE: f64 = 1.1;

/// Into how many cells it is cut: the coarsest that the model was made for, far finer than the bands of contact
/// and pores are wide.
const CELLS: u16 = 24;

/// Of how many moments its course is told.
const MOMENTS: u16 = 100;

/// The piece of a component, raw; none where neither thickness, tin nor weight tells its size.
pub fn piece(formula: &Formula, component: usize, action: Action, around: &Surroundings, risen: Option<&Point>) -> Option<Made> {
    let yields = &formula.components[component].yields;
    let density = Density::grams_per_millilitre(GAS_FREE / risen.map_or(RISEN, |point| point.risen).clamp(LEAST, 3.0));
    let mut assumed = Vec::new();
    let bakes = action == Action::Bake;
    let stated = yields.thickness.filter(|thickness| *thickness > Length::ZERO);
    let (shape, thickness) = match (stated, &yields.tin, yields.scaling_weight) {
        (Some(thickness), None, Some(weight)) if bakes => {
            assumed.push(format!(
                "round pieces as thick as stated, {} across",
                print::length(Between::just(across(weight, density, thickness)))
            ));
            (Shape::Sphere, equal_radius::sphere(thickness, across(weight, density, thickness)))
        }
        (Some(thickness), ..) => (Shape::Slab, thickness),
        (None, Some((tin, _)), _) if bakes => {
            assumed.push("a loaf tin 2.4 times as long as wide and 0.8 times as high, full".to_owned());
            (Shape::Cylinder, loaf_radius(*tin))
        }
        (None, _, Some(weight)) if bakes => {
            assumed.push("pieces as round as a ball, somewhat flattened, for want of a thickness in the yield".to_owned());
            (Shape::Sphere, ball_radius(weight, density) * FLATTENED)
        }
        _ => return None,
    };
    let start = risen.map_or(around.room.value, |point| point.temperature);
    let made = Piece {
        shape,
        cells: CELLS,
        moments: MOMENTS,
        saturation: around.off.saturation(),
        pressure: around.pressure(),
        ..Piece::new(thickness, composition(&mixture(formula, component)), density, start)
    };
    Some(Made { piece: made, is_size_stated: yields.thickness.is_some() || yields.tin.is_some(), assumed })
}

/// A ball that has settled on its tray heats through as one of this share of its radius: an engineering guess.
const FLATTENED: f64 = 0.8;

/// How wide a round piece of that weight and thickness is.
fn across(weight: Mass, density: Density, thickness: Length) -> Length {
    let millilitres = weight.as_grams() / density.as_grams_per_millilitre();
    let area = millilitres * 1000.0 / thickness.as_millimetres();
    Length::millimetres((2.0 * libm::sqrt(area / std::f64::consts::PI)).round())
}

fn ball_radius(weight: Mass, density: Density) -> Length {
    let millilitres = weight.as_grams() / density.as_grams_per_millilitre();
    Length::millimetres(10.0 * libm::cbrt(millilitres * 3.0 / (4.0 * std::f64::consts::PI)))
}

/// The radius of the long round loaf that heats through as slowly as a bar of the tin's width and height.
fn loaf_radius(tin: Volume) -> Length {
    let width = Length::millimetres(10.0 * libm::cbrt(tin.as_millilitres() / (2.4 * 0.8)));
    equal_radius::cylinder([width, width * 0.8])
}

/// The shares of what conducts and stores heat; what no source tells counts as carbohydrate.
fn composition(mix: &Mixture) -> Composition {
    let share = |figure| Fraction::ratio((mix.total(figure).0 / mix.ingoing.as_grams()).clamp(0.0, 1.0));
    let (water, protein, fat) = (share(Figure::Water), share(Figure::Protein), share(Figure::Fat));
    let (fibre, ash) = (share(Figure::Fibre), share(Figure::Ash));
    let rest = Fraction::WHOLE - water - protein - fat - fibre - ash;
    Composition { water, protein, fat, fibre, ash, carbohydrate: rest.max(Fraction::ZERO), ice: Fraction::ZERO }
}
