//! A piece on a griddle, one side after the other.

use super::Heating;
use super::piece::Made;
use crate::forecast::surroundings::Surroundings;
use crate::forecast::{middle, midway};
use formula::Step;
use quantity::{Temperature, TimeSpan, print};
use science::heat::griddle::{Griddle, foresee, kitchen};
use science::heat::surroundings::GRIDDLE;

/// How long a piece is followed after it has left the griddle.
const REST: TimeSpan = TimeSpan::minutes(2.0);

pub fn heated(made: &Made, step: &Step, around: &Surroundings) -> Heating {
    let surface = step.temperature.map_or(Temperature::celsius(150.0), midway);
    let time = step.time.map_or(TimeSpan::ZERO, middle);
    let side = step.side_time.map_or(time * 0.5, middle);
    let griddle = Griddle { surface, transfer: GRIDDLE, sides: vec![side, side], rest: REST, air: kitchen(around.room.value) };
    let seen = foresee(&made.piece, &griddle);
    let mark = around.heat.mark(surface).map(|(mark, really)| {
        format!("the knob at “{mark}” brings the surface to {}", print::celsius(quantity::Between::just(*really)))
    });
    Heating { seen: seen.usual, core: seen.core, off: side * 2.0, assumed: Vec::new(), remarks: mark.into_iter().collect() }
}
