//! A batch of a trial that was cooked.

use super::{OfStage, StepSeen, of_stage, read_length, read_temperature, read_time, takes_no_room};
use crate::read::fields::{Fields, Reader};
use crate::read::formula::{read_count, read_measure};
use crate::read::keys;
use crate::read::stage::read_word;
use crate::read::words::Action;
use quantity::{Fraction, Kind, Length, SpoonSystem, Temperature, TimeSpan};
use std::ops::Range;
use toml::de::DeTable;

/// A batch that was cooked.
#[derive(Clone, Debug)]
pub struct CookSeen {
    /// The stage.
    pub of: OfStage,
    /// Which step.
    pub step: Option<StepSeen>,
    /// How hot the griddle or the fat was.
    pub surface: Option<Temperature>,
    /// The time a side.
    pub side_time: Option<TimeSpan>,
    /// How long in all.
    pub time: Option<TimeSpan>,
    /// How thick the probed piece was.
    pub thickness: Option<Length>,
    /// How warm its middle was when it left the heat.
    pub core: Option<Temperature>,
    /// How many pieces came of it.
    pub pieces: Option<f64>,
    /// What share of its weight it lost.
    pub bake_loss: Option<Fraction>,
}

/// Reads a batch that was cooked.
pub fn read_cook(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> CookSeen {
    let fields = Fields::open(reader, table, span, &keys::COOK_SEEN);
    let thickness = read_length(reader, &fields, "thickness");
    if thickness.is_some_and(|thickness| thickness <= Length::ZERO) {
        takes_no_room(reader, fields.span());
    }
    let thickness = thickness.filter(|thickness| *thickness > Length::ZERO);
    CookSeen {
        of: of_stage(reader, &fields),
        step: read_word(reader, &fields, "step", Action::WORDS, StepSeen::named),
        surface: read_temperature(reader, &fields, "surface"),
        side_time: read_time(reader, &fields, "side-time"),
        time: read_time(reader, &fields, "time"),
        thickness,
        core: read_temperature(reader, &fields, "core"),
        pieces: read_count(reader, &fields, "pieces").map(|pieces| pieces.value.as_pieces()),
        bake_loss: read_measure(reader, &fields, "bake-loss", Kind::Share)
            .and_then(|share| share.value.share(SpoonSystem::Metric))
            .map(|share| (share.from + share.to) * 0.5),
    }
}
