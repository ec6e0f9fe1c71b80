//! What simmers, boils and is reduced: how much steam leaves, how sweet and thick it gets, how it pours.

use super::held::{Held, Products};
use super::surroundings::Surroundings;
use super::{middle, midway};
use formula::read::{Action, Condition, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Known, Stage, Step};
use quantity::{Area, Between, Fraction, Mass, Power, Temperature, TimeSpan, Viscosity};
use science::heat::surface_evaporation::Air;
use science::sugar::boiling_point::boiling_point;
use science::sugar::simmer::{Pan, evaporated};
use science::sugar::viscosity::{sucrose, viscosity};
use science::sugar::{boil_off, pour};

/// What is foreseen of a cooked stage.
#[derive(Clone, Debug)]
pub struct Pot {
    /// The component and stage.
    pub at: StageAt,
    /// What goes in, and what comes out and can be used.
    pub mass: (Mass, Mass),
    /// The water that its author says leaves as steam.
    pub stated: Mass,
    /// The water that this ring and pan drive off in the stated time.
    pub driven_off: Option<Known<Between<Mass>>>,
    /// Sugar in it when it goes in and when it comes out.
    pub brix: (Fraction, Fraction),
    /// What it boils at in the end, at this height above the sea.
    pub boils_at: Temperature,
    /// What the method wants of it, and the water that takes it there: below zero it is to be added.
    pub wanted: Option<Wanted>,
    /// How it pours when it is served, and at what temperature that is.
    pub pours: Option<Pours>,
}

/// A strength that a method asks for.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The strength.
    pub brix: Fraction,
    /// What it boils at then.
    pub boils_at: Temperature,
    /// The water to boil off from what goes in.
    pub water: Mass,
    /// How long that takes on this ring, from coming to the boil.
    pub takes: Between<TimeSpan>,
}

/// How a syrup runs from a spoon.
#[derive(Clone, Debug)]
pub struct Pours {
    /// How warm.
    pub at: Temperature,
    /// How thick, from the clear syrup alone.
    pub viscosity: Known<Viscosity>,
    /// The everyday liquid that pours most alike.
    pub like: Option<&'static str>,
    /// The water to boil off until it pours as the method says; below zero it is to be added.
    pub water: Option<Mass>,
}

/// Below this sugar a clear syrup is thin whatever is done with it.
const SYRUP: Fraction = Fraction::percent(20.0);
/// A steady boil may be kept with this share of a ring's power: common practice, no source.
const GENTLE: f64 = 0.3;
/// A lid that is on or half on keeps back all but this share at the most: common practice, no source.
const LID: f64 = 0.1;
/// The strongest syrup that is reckoned with.
const MOST: Fraction = Fraction::percent(85.0);

/// Foresees every cooked stage that boils.
pub fn pots(formula: &Formula, around: &Surroundings) -> Vec<Pot> {
    let mut products = Products::default();
    let cooked = formula.stages().filter(|(_, stage)| stage.kind == StageKind::Cooked && stage.steps.iter().any(boils));
    cooked.map(|(at, stage)| pot(formula, at, stage, around, &mut products)).collect()
}

pub const fn boils(step: &Step) -> bool {
    matches!(step.action, Action::Simmer | Action::Reduce | Action::Boil)
}

fn pot(formula: &Formula, at: StageAt, stage: &Stage, around: &Surroundings, products: &mut Products) -> Pot {
    let (before, after) = (products.mixed(formula, at), products.made(formula, at));
    let is_last = formula.components[at.0].stages.len() == at.1 + 1;
    let arriving = around.heat.ring.arriving();
    let wanted = stage.steps.iter().find_map(|step| match step.until {
        Some(Condition::Brix(brix)) => Some(wanted(&before, Fraction::percent(brix), around, arriving)),
        _ => None,
    });
    Pot {
        at,
        mass: (stage.mixed(), stage.made()),
        stated: stage.mixed() * stage.boil_off,
        driven_off: driven_off(stage, &before, around, arriving),
        brix: (before.brix(), after.brix()),
        boils_at: boiling_point(after.water, &after.dissolved(), around.pressure()),
        wanted,
        pours: (is_last && after.brix() >= SYRUP).then(|| pours(stage, &after, around)),
    }
}

/// What it takes to bring what a pot holds to a strength on this kitchen's ring.
pub fn reached(before: &Held, brix: Fraction, around: &Surroundings) -> Wanted {
    wanted(before, brix, around, around.heat.ring.arriving())
}

/// How warm a syrup is when it is poured: as its last cooling step says, else as the room.
pub fn poured_at(stage: &Stage, around: &Surroundings) -> Temperature {
    let cooled = stage.steps.iter().rev().find_map(|step| match step.until {
        Some(Condition::At(range)) if matches!(step.action, Action::Cool | Action::Hold | Action::Serve) => Some(midway(range)),
        _ => None,
    });
    cooled.unwrap_or(around.room.value)
}

fn wanted(before: &Held, brix: Fraction, around: &Surroundings, arriving: Between<Power>) -> Wanted {
    let syrup = before.sugars() + before.water;
    let water = boil_off::water(syrup, before.brix(), brix);
    let mut then = *before;
    then.water = before.water - water;
    let air = around.pressure();
    let time = |power: Power| boil_off::time(water.max(Mass::ZERO), power, air);
    Wanted {
        brix,
        boils_at: boiling_point(then.water, &then.dissolved(), air),
        water,
        takes: Between { from: time(arriving.to), to: time(arriving.from) },
    }
}

/// The steam of the stated time: at the boil as much as the ring's heat makes, below it what the surface lets go.
fn driven_off(stage: &Stage, before: &Held, around: &Surroundings, arriving: Between<Power>) -> Option<Known<Between<Mass>>> {
    let mut sum = Between { from: Mass::ZERO, to: Mass::ZERO };
    for step in stage.steps.iter().filter(|step| boils(step)) {
        let time = step.time.map(middle)?;
        let one = if step.action == Action::Simmer {
            simmered(step, time, before, around)
        } else {
            let boiled = |power: Power| boil_off::boiled(power, time, around.pressure());
            Between { from: boiled(arriving.from * GENTLE), to: boiled(arriving.to) }
        };
        sum = Between { from: sum.from + one.from, to: sum.to + one.to };
    }
    let capped = sum.map(|mass| if mass < before.water { mass } else { before.water });
    let source = science::sugar::boil_off::EQUATION.name;
    Some(Known::computed(capped, "the heat that arrives in the pan, and what leaves an open surface", source))
}

fn simmered(step: &Step, time: TimeSpan, before: &Held, around: &Surroundings) -> Between<Mass> {
    let across = around.heat.ring.across(step).value.as_metres();
    let syrup = step.temperature.map_or(Temperature::celsius(95.0), midway);
    let surface = Area::square_metres(std::f64::consts::FRAC_PI_4 * across * across);
    let pan = Pan { surface, syrup, water_activity: before.water_activity() };
    let open = evaporated(&pan, time, &Air { temperature: around.room.value, pressure: around.pressure(), ..Air::default() });
    let has_lid = step.equipment.iter().any(|one| one.contains("lid"));
    if has_lid { Between { from: open.from * LID, to: open.to } } else { open }
}

fn pours(stage: &Stage, after: &Held, around: &Surroundings) -> Pours {
    let at = poured_at(stage, around);
    let thick = viscosity(after.brix(), at);
    let asked = stage.steps.iter().find_map(|step| match step.until {
        Some(Condition::Pours(pascal_seconds)) => Some(Viscosity::pascal_seconds(pascal_seconds)),
        _ => None,
    });
    let water = asked.map(|asked| {
        let brix = sucrose(asked, at).min(MOST);
        boil_off::water(after.sugars() + after.water, after.brix(), brix)
    });
    let source = science::sugar::viscosity::EQUATION.name;
    // Pulp, pectin and acids thicken a fruit syrup beyond this: up to twice as thick is common practice, no source.
    let band = Some((thick * 0.8, thick * 2.0));
    Pours {
        at,
        viscosity: Known { band, ..Known::computed(thick, "the viscosity of a clear sugar syrup", source) },
        like: pour::like(thick).map(|landmark| landmark.name.as_str()),
        water,
    }
}
