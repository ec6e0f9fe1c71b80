//! The energy that a formula's heats take: wide bands, by custom.

use crate::forecast::{Forecast, boils};
use formula::Formula;
use formula::read::Action;
use quantity::{Between, Power, TimeSpan};

/// What a heat takes.
#[derive(Clone, Debug)]
pub struct Energy {
    /// What is done, and of what.
    pub title: String,
    /// Whether it is a ring rather than the oven or a fryer.
    pub on_the_hob: bool,
    /// Kilowatt-hours.
    pub kilowatt_hours: Between<f64>,
}

/// Common practice, no source: a home oven's power, how long it and a pan of fat take to get hot, and how much of
/// its power a heat that is held draws.
const OVEN: Power = Power::kilowatts(2.4);
const FRYER: Power = Power::kilowatts(2.0);
const OVEN_HEATS_UP: TimeSpan = TimeSpan::minutes(15.0);
const FAT_HEATS_UP: TimeSpan = TimeSpan::minutes(12.0);
const HELD: Between<f64> = Between { from: 0.25, to: 0.6 };

/// The energy of every cooking and pot.
#[must_use]
pub fn energy(formula: &Formula, forecast: &Forecast) -> Vec<Energy> {
    let ring = forecast.surroundings.heat.ring.power.value;
    let fryer = forecast.surroundings.heat.fryer.as_ref().and_then(|fryer| fryer.power).unwrap_or(FRYER);
    let mut all = Vec::new();
    for cooking in &forecast.cookings {
        let lasts = cooking.batches.1;
        let (power, heats_up, on_the_hob) = match cooking.action {
            Action::Bake => (OVEN, OVEN_HEATS_UP, false),
            Action::Fry => (fryer, FAT_HEATS_UP, false),
            _ => (ring, TimeSpan::minutes(5.0), true),
        };
        let title = format!("{}: {}", formula.components[cooking.at.0].title, cooking.action.word());
        all.push(Energy { title, on_the_hob, kilowatt_hours: HELD.map(|held| used(power, heats_up, lasts * held)) });
    }
    for pot in &forecast.pots {
        let stage = formula.stage(pot.at);
        let times = stage.steps.iter().filter(|step| boils(step)).filter_map(|step| step.time);
        let lasts: TimeSpan = times.map(crate::forecast::middle).sum();
        let hours = HELD.map(|held| used(ring, TimeSpan::minutes(6.0), lasts * held));
        all.push(Energy { title: stage.title.clone(), on_the_hob: true, kilowatt_hours: hours });
    }
    all
}

fn used(power: Power, heats_up: TimeSpan, then: TimeSpan) -> f64 {
    power.as_kilowatts() * (heats_up + then).as_hours()
}
