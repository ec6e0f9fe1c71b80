//! Points of the references of heat, read as what its equations take.

use crate::harness::Inputs;
use quantity::{Density, Fraction, HeatTransfer, SpecificHeat, Temperature};
use science::heat::*;

pub fn has(at: &Inputs, symbol: &str) -> bool {
    at.number_or(symbol, f64::NAN).is_finite()
}

pub fn celsius(at: &Inputs, symbol: &str) -> Temperature {
    Temperature::celsius(at.number(symbol))
}

pub fn ratio(at: &Inputs, symbol: &str) -> Fraction {
    Fraction::ratio(at.number(symbol))
}

pub fn density(at: &Inputs, symbol: &str) -> Density {
    Density::kilograms_per_cubic_metre(at.number(symbol))
}

pub fn specific(at: &Inputs, symbol: &str) -> SpecificHeat {
    SpecificHeat::joules_per_kilogram_kelvin(at.number(symbol))
}

pub fn transfer(at: &Inputs, symbol: &str) -> HeatTransfer {
    HeatTransfer::watts_per_square_metre_kelvin(at.number(symbol))
}

pub fn component(at: &Inputs) -> Component {
    match at.word("component") {
        "water" => Component::Water,
        "protein" => Component::Protein,
        "fat" => Component::Fat,
        "carbohydrate" => Component::Carbohydrate,
        "fibre" => Component::Fibre,
        "ash" => Component::Ash,
        _ => Component::Ice,
    }
}

pub fn constant(at: &Inputs) -> WaterConstant {
    if at.word("constant") == "handbook" { WaterConstant::Handbook } else { WaterConstant::Original }
}

pub fn food(at: &Inputs) -> Composition {
    let share = |symbol| Fraction::ratio(at.number_or(symbol, 0.0));
    Composition {
        water: share("water"),
        protein: share("protein"),
        fat: share("fat"),
        carbohydrate: share("carbohydrate"),
        fibre: share("fibre"),
        ash: share("ash"),
        ice: share("ice"),
    }
}

pub fn arrangement(at: &Inputs) -> Arrangement {
    match at.word("arrangement") {
        "parallel" => Arrangement::Parallel,
        "series" => Arrangement::Series,
        _ => Arrangement::Geometric,
    }
}
