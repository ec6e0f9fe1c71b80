//! A piece on a griddle, one side after the other.

use super::Heating;
use super::guesses::{Ends, FEW, Seen, Told, each, told};
use super::piece::Made;
use crate::forecast::surroundings::Surroundings;
use crate::forecast::{middle, midway};
use formula::Step;
use quantity::{Between, Fraction, HeatTransfer, Temperature, TimeSpan, print};
use science::heat::cook::{Piece, course};
use science::heat::griddle::{Griddle, kitchen};

/// How long a piece is followed after it has left the griddle.
const REST: TimeSpan = TimeSpan::minutes(2.0);

pub fn heated(made: &Made, step: &Step, around: &Surroundings, ends: Ends) -> Heating {
    let (griddle, off) = griddle(step, around);
    let (pores, usual) = (around.calibration.pores(), made.piece.saturation);
    // What comes after the griddle does not count for the middle as it leaves it.
    let unrested = Griddle { rest: TimeSpan::ZERO, ..griddle.clone() };
    let middle_of = |saturation: Fraction, transfer: HeatTransfer| {
        course(&Piece { saturation, moments: FEW, ..made.piece }, &unrested.stages(transfer)).core()
    };
    let as_usual = || {
        let seen = Seen::of(&made.piece, &griddle.stages(griddle.transfer.usual));
        let core = seen.expected.core_at(off).unwrap_or(made.piece.start);
        (seen, core)
    };
    let Told { seen, core, band } = told(made.boils(), ends, as_usual, |end| {
        each(|| middle_of(end.of(pores), griddle.transfer.usual), || middle_of(usual, end.contact(&griddle.transfer)))
    });
    let mark = around
        .heat
        .mark(griddle.surface)
        .map(|(mark, really)| format!("the knob at “{mark}” brings the surface to {}", print::celsius(Between::just(*really))));
    Heating { seen, core, band, off, assumed: Vec::new(), remarks: mark.into_iter().collect() }
}

/// The likeliest temperature of the middle as it leaves the griddle, between the poorest and the best contact.
pub fn expected_core(made: &Made, step: &Step, around: &Surroundings) -> Option<Temperature> {
    let (griddle, off) = griddle(step, around);
    course(&made.piece, &griddle.stages(griddle.transfer.usual)).core_at(off)
}

/// The griddle as the kitchen's trials know it, and when the piece leaves it.
fn griddle(step: &Step, around: &Surroundings) -> (Griddle, TimeSpan) {
    let surface = step.temperature.map_or(Temperature::celsius(150.0), midway) + around.off.heat;
    let time = step.time.map_or(TimeSpan::ZERO, middle);
    let side = step.side_time.map_or(time * 0.5, middle);
    let transfer = around.calibration.griddle();
    (Griddle { surface, transfer, sides: vec![side, side], rest: REST, air: kitchen(around.room.value) }, side * 2.0)
}
