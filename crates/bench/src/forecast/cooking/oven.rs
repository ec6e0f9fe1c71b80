//! A piece in an oven, or one heat after another.

use super::Heating;
use super::guesses::{Ends, FEW, Seen, Told, each, told};
use super::piece::Made;
use crate::forecast::surroundings::Surroundings;
use crate::forecast::{middle, midway};
use formula::{Origin, Step};
use quantity::{Between, Fraction, HeatTransfer, Temperature, TimeSpan, print};
use science::heat::cook::{Piece, SATURATION, Stage, course};
use science::heat::griddle::oven;
use science::heat::surroundings::{FAN_OVEN, STILL_OVEN, TUNNEL_OVEN, Transfer};
use science::heat::{Face, Shape, Surroundings as Air};

pub fn heated(made: &Made, steps: &[&Step], around: &Surroundings, ends: Ends) -> Heating {
    let transfer = if around.heat.fan.value { FAN_OVEN } else { STILL_OVEN };
    let heats = heats(steps, around);
    let off = heats.iter().map(|(_, lasts)| *lasts).sum();
    let stages = |convection: HeatTransfer| stages(&made.piece, &heats, convection);
    let usual = made.piece.saturation;
    let middle_of = |saturation: Fraction, convection: HeatTransfer| {
        course(&Piece { saturation, moments: FEW, ..made.piece }, &stages(convection)).core()
    };
    let as_usual = || {
        let seen = Seen::of(&made.piece, &stages(transfer.usual));
        let core = seen.expected.core();
        (seen, core)
    };
    let Told { seen, core, band } = told(made.boils(), ends, as_usual, |end| {
        each(|| middle_of(end.of(SATURATION), transfer.usual), || middle_of(usual, end.contact(&transfer)))
    });
    let mut assumed = vec!["moist air; ovens heat small pieces rather sooner than the model does".to_owned()];
    if is_assumed(&around.heat.fan.origin) {
        assumed.push("an oven without a fan".to_owned());
    }
    if steps.iter().filter_map(|step| step.temperature).all(|set| is_assumed(&around.heat.really(midway(set)).origin)) {
        assumed.push("an oven as hot as it is set".to_owned());
    }
    if is_assumed(&around.heat.recovery().origin) {
        assumed.push("an oven that falls by 25 °C when loaded and is back in 6 min".to_owned());
    }
    let remarks = steps.iter().filter_map(|step| off_by(step, around)).collect();
    Heating { seen, core, band, off, assumed, remarks }
}

const fn is_assumed(origin: &Origin) -> bool {
    matches!(origin, Origin::Assumed { .. })
}

/// The likeliest temperature of the middle at the end.
pub fn expected_core(made: &Made, steps: &[&Step], around: &Surroundings) -> Temperature {
    let transfer = if around.heat.fan.value { FAN_OVEN } else { STILL_OVEN };
    course(&made.piece, &stages(&made.piece, &heats(steps, around), around.off.of_transfer(&transfer))).core()
}

/// An oven with food in it is moist: a dew point near 60 °C, told against saturation at the oven's own heat. Common
/// practice, no source.
const MOIST: Fraction = Fraction::percent(1.5);

/// The oven's real heats one after the other: it falls when loaded and comes back.
fn heats(steps: &[&Step], around: &Surroundings) -> Vec<(Temperature, TimeSpan)> {
    let (falls, recovers) = around.heat.recovery().value;
    let mut heats = Vec::new();
    for (number, step) in steps.iter().enumerate() {
        let real = around.heat.really(step.temperature.map_or(Temperature::celsius(200.0), midway)).value + around.off.heat;
        let lasts = step.time.map_or(TimeSpan::ZERO, middle);
        let back = if number > 0 { TimeSpan::ZERO } else { recovers.min(lasts) };
        let lower_by = |share: f64| Temperature::celsius(real.as_celsius() - falls * share);
        heats.push((lower_by(0.75), back * 0.5));
        heats.push((lower_by(0.25), back * 0.5));
        heats.push((real, lasts - back));
    }
    heats.retain(|(_, lasts)| *lasts > TimeSpan::ZERO);
    heats
}

/// A slab lies on its tray with the top open; a long loaf or a ball meets the oven all round.
fn stages(piece: &Piece, heats: &[(Temperature, TimeSpan)], convection: HeatTransfer) -> Vec<Stage> {
    let tray: Transfer = TUNNEL_OVEN;
    let stage = |(air, lasts): &(Temperature, TimeSpan)| {
        let open = Face::Open(Air { humidity: MOIST, ..oven(*air, convection) });
        let below = match piece.shape {
            Shape::Slab => Face::Contact { transfer: tray.usual, against: *air },
            Shape::Cylinder | Shape::Sphere => Face::Insulated,
        };
        Stage { lasts: *lasts, below, above: open }
    };
    heats.iter().map(stage).collect()
}

/// What to set where the oven is not as hot as it says.
fn off_by(step: &Step, around: &Surroundings) -> Option<String> {
    let set = step.temperature.map(midway)?;
    let real = around.heat.really(set).value;
    let off = real.as_celsius() - set.as_celsius();
    let better = Temperature::celsius(((set.as_celsius() - off) / 5.0).round() * 5.0);
    (off.abs() >= 3.0).then(|| {
        let one = |t: Temperature| print::celsius(Between::just(Temperature::celsius(t.as_celsius().round())));
        format!("set to {} this oven is really at about {}: set it to {}", one(set), one(real), one(better))
    })
}
