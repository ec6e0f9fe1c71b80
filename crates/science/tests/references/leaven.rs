//! leaven against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::{Density, Fraction, Mass, Pressure, Temperature};
use science::entry::count;
use science::leaven::{acid, baking_powder, fermented_sugar, gas_volume, neutralising, overrun, soda_gas};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("leaven::soda_gas", |at, _| {
        let driver = if at.word("driver") == "acid" { soda_gas::Driver::Acid } else { soda_gas::Driver::Heat };
        soda_gas::carbon_dioxide(grams(at, "m"), driver).as_grams()
    }),
    ("leaven::gas_volume", |at, _| {
        let gas = grams(at, "m") + soda_gas::carbon_dioxide(grams(at, "soda"), soda_gas::Driver::Acid);
        room(gas, at.number("T"), at.number_or("P", 101.325))
    }),
    ("leaven::neutralising", neutralise),
    ("leaven::acid", |at, _| {
        let acid = acid::named(at.word("name")).expect("a known acid");
        acid::soda_in(grams(at, "m"), Fraction::percent(at.number("c")), acid).as_grams()
    }),
    ("leaven::baking_powder", |at, _| {
        let share = if at.word("share") == "least" { baking_powder::LEAST_GAS } else { baking_powder::USUAL_GAS };
        room(baking_powder::carbon_dioxide(grams(at, "m"), share), 20.0, 101.325)
    }),
    ("leaven::fermented_sugar", |at, output| {
        let kind = match at.word("sugar") {
            "hexose" => fermented_sugar::Sugar::Hexose,
            _ => fermented_sugar::Sugar::Disaccharide,
        };
        let products = fermented_sugar::products(grams(at, "m"), kind);
        if output == "gas" { products.carbon_dioxide.as_grams() } else { products.ethanol.as_grams() }
    }),
    ("leaven::overrun", |at, _| {
        let density = |symbol| Density::grams_per_millilitre(at.number(symbol));
        overrun::overrun(density("before"), density("after")).as_percent()
    }),
];

fn grams(at: &Inputs, symbol: &str) -> Mass {
    Mass::grams(at.number_or(symbol, 0.0))
}

fn room(gas: Mass, celsius: f64, kilopascals: f64) -> f64 {
    gas_volume::volume(gas, Temperature::celsius(celsius), Pressure::kilopascals(kilopascals)).as_millilitres()
}

fn neutralise(at: &Inputs, output: &str) -> f64 {
    let value = Fraction::percent(at.number_or("value", 0.0));
    match output {
        "NV" => neutralising::value(at.number("n"), at.number("M")).as_percent(),
        "soda" => neutralising::soda_for(grams(at, "acid"), value).as_grams(),
        _ => neutralising::acid_for(grams(at, "soda"), value).as_grams(),
    }
}

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("leaven", CASES)
}

#[test]
fn every_reference_of_leaven_is_met() {
    rows();
}

#[test]
fn every_acid_of_the_data_is_read() {
    assert_eq!(acid::all().len(), count(acid::DATA, "acid"));
}
