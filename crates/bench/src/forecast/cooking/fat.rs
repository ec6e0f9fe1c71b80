//! A piece in hot fat.

use super::Heating;
use super::guesses::{Ends, FEW, Seen, Told, each, told};
use super::piece::Made;
use crate::forecast::surroundings::Surroundings;
use crate::forecast::{middle, midway};
use formula::Step;
use formula::read::Fryer;
use quantity::{Count, Fraction, Mass, Temperature, TimeSpan, print};
use science::heat::cook::{Piece, SATURATION, Stage, course};
use science::heat::griddle::{immersed, immersed_by};

/// What a litre of frying fat takes up, kJ for each kelvin: 0.88 kg at 2.2 kJ/(kg K), from memory.
const FAT_CAPACITY: f64 = 1.94;
/// What food takes up until its water boils, kJ/(kg K): from memory.
const FOOD_HEAT: f64 = 3.0;

pub fn heated(made: &Made, step: &Step, around: &Surroundings, (weight, ends): (Option<Mass>, Ends)) -> Heating {
    let fat = step.temperature.map_or(Temperature::celsius(175.0), midway);
    let time = step.time.map_or(TimeSpan::ZERO, middle);
    let usual = made.piece.saturation;
    let middle_of =
        |saturation: Fraction, stages: &[Stage]| course(&Piece { saturation, moments: FEW, ..made.piece }, stages).core();
    let as_usual = || {
        let seen = Seen::of(&made.piece, &immersed(fat, time));
        let core = seen.expected.core();
        (seen, core)
    };
    let Told { seen, core, band } = told(made.boils(), ends, as_usual, |end| {
        let moved = immersed_by(fat, time, |transfer| end.contact(transfer));
        each(|| middle_of(end.of(SATURATION), &immersed(fat, time)), || middle_of(usual, &moved))
    });
    let remark = around.heat.fryer.as_ref().zip(weight).and_then(|(fryer, weight)| fall(made, step, fryer, weight));
    Heating {
        seen,
        core,
        band,
        off: time,
        assumed: vec!["fat that keeps its temperature".to_owned()],
        remarks: remark.into_iter().collect(),
    }
}

/// The likeliest temperature of the middle when it leaves the fat.
pub fn expected_core(made: &Made, step: &Step, around: &Surroundings) -> Temperature {
    let fat = step.temperature.map_or(Temperature::celsius(175.0), midway) + around.off.heat;
    course(&made.piece, &immersed(fat, step.time.map_or(TimeSpan::ZERO, middle))).core()
}

/// How far the fat falls at most when a batch goes in, and how long the fryer needs to make up for it.
fn fall(made: &Made, step: &Step, fryer: &Fryer, weight: Mass) -> Option<String> {
    let litres = fryer.holds?.as_millilitres() / 1000.0;
    let pieces = step.at_a_time.unwrap_or(Count::pieces(1.0)).as_pieces();
    let heat = weight.as_kilograms() * pieces * FOOD_HEAT * (100.0 - made.piece.start.as_celsius());
    let kelvins = heat / (litres * FAT_CAPACITY);
    let batch = if pieces > 1.5 { format!("{} pieces", print::number(pieces, 0)) } else { "a piece".to_owned() };
    let back = fryer.power.map_or_else(String::new, |power| {
        let seconds = heat * 1000.0 / power.as_watts();
        format!(", which the fryer makes up for in {} s or more", print::number((seconds / 10.0).ceil() * 10.0, 0))
    });
    Some(format!("{batch} at a time cool the fat by up to {} °C{back}", print::number(kelvins, 0)))
}
