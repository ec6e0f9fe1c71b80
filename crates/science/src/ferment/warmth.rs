//! Everything in a fermenting dough that depends on its temperature alone.

use super::gas_rate::square_root_law;
use super::gas_volume::atmospheric_volume;
use super::{Growth, Organisms, Stage, culture_growth, death, dissolved_gas, starch_release, yeast_growth};
use quantity::{Acidity, Temperature};
use std::cell::Cell;

/// What a temperature does, in moles, litres, hours.
#[derive(Clone, Copy)]
pub(super) struct Warmth {
    temperature: f64,
    pub gas: f64,
    pub yeast: f64,
    pub bacteria: f64,
    pub release: f64,
    pub dissolved: f64,
    pub dying: f64,
    pub molar: f64,
}

/// What temperatures do to one dough, looked up in a table where a run stays within smooth laws.
pub(super) struct Warmths<'a> {
    stage: &'a Stage,
    organisms: &'a Organisms,
    first: f64,
    table: Vec<[f64; 5]>,
    last: Cell<Option<Warmth>>,
}

/// Twice a kelvin: the laws change by a factor e over 3 K at the least, so that six neighbours give
/// them within a ten-millionth.
const NODES_A_KELVIN: f64 = 2.0;
/// Below this width a run sees too few temperatures for a table to pay.
const NARROW: f64 = 0.1;
const NOT_SOUR: Acidity = Acidity::ph(7.0);

impl<'a> Warmths<'a> {
    /// Prepares for the temperatures of a run, in °C; without them each is worked out by itself.
    pub(super) fn new(stage: &'a Stage, organisms: &'a Organisms, range: Option<(f64, f64)>) -> Self {
        let mut warming = Self { stage, organisms, first: 0.0, table: Vec::new(), last: Cell::new(None) };
        if let Some((low, high)) = range.filter(|range| warming.is_smooth(*range)) {
            let count = ((high - low) * NODES_A_KELVIN).ceil() as usize + 6;
            warming.first = low - 2.0 / NODES_A_KELVIN;
            let nodes = (0..count).map(|i| warming.first + i as f64 / NODES_A_KELVIN);
            warming.table = nodes.map(|node| warming.laws(Temperature::celsius(node))).collect();
        }
        warming
    }

    /// Whether no law begins or ends near the range.
    fn is_smooth(&self, (low, high): (f64, f64)) -> bool {
        let organisms = self.organisms;
        let growth = match &organisms.growth {
            Growth::Cardinal(yeast) => [yeast.lowest, yeast.highest],
            Growth::Culture(yeast) => [Temperature::ABSOLUTE_ZERO, yeast.highest],
        };
        let gas = [organisms.gas_law.lowest, organisms.gas_law.highest];
        let other = [organisms.bacteria.highest, organisms.heat.from];
        let ends = growth.into_iter().chain(gas).chain(other);
        high - low > NARROW
            && high - low < 60.0
            && ends.map(Temperature::as_celsius).all(|end| end < low - 3.0 || end > high + 3.0)
    }

    /// What a temperature does; the last is kept, since neighbouring looks share it.
    #[inline]
    pub(super) fn at(&self, dough: Temperature) -> Warmth {
        match self.last.get() {
            Some(last) if last.temperature == dough.as_celsius() => last,
            _ => {
                let laws = self.looked_up(dough.as_celsius()).unwrap_or_else(|| self.laws(dough));
                let warmth = self.warmth(dough, laws);
                self.last.set(Some(warmth));
                warmth
            }
        }
    }

    fn warmth(&self, dough: Temperature, [gas, yeast, bacteria, release, dissolved]: [f64; 5]) -> Warmth {
        let dying = death(dough, &self.organisms.heat).as_per_hour();
        let molar = atmospheric_volume(dough);
        Warmth { temperature: dough.as_celsius(), gas, yeast, bacteria, release, dissolved, dying, molar }
    }

    fn laws(&self, dough: Temperature) -> [f64; 5] {
        let organisms = self.organisms;
        let yeast = match &organisms.growth {
            Growth::Cardinal(yeast) => yeast_growth(dough, yeast),
            Growth::Culture(yeast) => culture_growth(dough, yeast),
        };
        [
            square_root_law(dough, &organisms.gas_law),
            yeast.as_per_hour(),
            culture_growth(dough, &organisms.bacteria).as_per_hour(),
            starch_release(dough, NOT_SOUR, &self.stage.release).as_per_hour(),
            dissolved_gas(dough).as_moles(),
        ]
    }

    /// The laws from the polynomial through six neighbours in the table.
    fn looked_up(&self, celsius: f64) -> Option<[f64; 5]> {
        let place = (celsius - self.first) * NODES_A_KELVIN - 2.0;
        let before = place.floor();
        let nodes = self.table.get(before.max(0.0) as usize..)?.get(..6)?;
        let u = place - before.max(0.0);
        let (a, b, c, d, e, f) = (u + 2.0, u + 1.0, u, u - 1.0, u - 2.0, u - 3.0);
        let (ab, cd, ef) = (a * b, c * d, e * f);
        let weights = [
            b * cd * ef / -120.0,
            a * cd * ef / 24.0,
            ab * d * ef / -12.0,
            ab * c * ef / 12.0,
            ab * cd * f / -24.0,
            ab * cd * e / 120.0,
        ];
        Some(std::array::from_fn(|law| nodes.iter().zip(weights).map(|(node, weight)| node[law] * weight).sum()))
    }
}
