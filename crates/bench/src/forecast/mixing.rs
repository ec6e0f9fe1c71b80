//! How warm a stage comes from the bowl, and how warm its liquid would have to be.

use super::warmed::{Portions, Warmed, warmed};
use super::{Surroundings, midway};
use formula::read::{Action, Group};
use formula::resolve::formula::Content;
use formula::{Ingredient, Known, Line, Stage};
use quantity::{Fraction, Heat, HeatCapacity, Mass, SpecificHeat, Temperature, TemperatureDifference, Volume};
use science::heat::mixing_temperature::{Mixing, Portion};
use science::heat::{factor_rule, liquid_temperature, mixing_temperature};

/// How warm a stage is when it has been mixed.
#[derive(Clone, Debug)]
pub struct Mixed {
    /// What its ingredients come to, by the balance of their heat.
    pub computed: Known<Temperature>,
    /// What its method says it should be.
    pub wanted: Option<Temperature>,
    /// The liquid that would bring it there: its title, and how warm.
    pub liquid: Option<(String, Temperature)>,
    /// What the trade's rule of factors says of that liquid, where it is water.
    pub by_rule: Option<ByRule>,
    /// What was warmed on the way.
    pub warmed: Vec<Warmed>,
}

/// The trade's rule beside the balance of heat: it counts room, flour, preferment and friction alike, whatever there
/// is of each.
#[derive(Clone, Copy, Debug)]
pub struct ByRule {
    /// What the rule says the water should be.
    pub water: Temperature,
    /// With this friction factor, the usual one.
    pub friction: TemperatureDifference,
    /// With this one it would agree with the balance.
    pub agreeing: TemperatureDifference,
}

/// Friction factors of a mixer and of hands, in degree Fahrenheit as the trade tells them: common practice, no source.
const FRICTION: [f64; 2] = [24.0, 6.0];

impl Mixed {
    /// What the ferment starts from: what the method wants where its liquid can bring that, or where it was seen, or
    /// else what is computed.
    #[must_use]
    pub fn start(&self, was_seen: bool) -> Temperature {
        self.wanted.filter(|_| was_seen || self.is_within_reach()).unwrap_or(self.computed.value)
    }

    /// Whether the liquid can be had as warm as it would have to be.
    #[must_use]
    pub fn is_within_reach(&self) -> bool {
        self.liquid.as_ref().is_some_and(|(_, at)| LIQUIDS.contains(&at.as_celsius()))
    }
}

/// How cold and how warm a liquid can be poured in, in degree Celsius: common practice, no source.
const LIQUIDS: std::ops::RangeInclusive<f64> = 1.0..=60.0;

/// The specific heat of what a stage brings that is a dough or batter itself.
const DOUGH: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(2970.0);
/// A bowl holds this many millilitres for each gram that is mixed in it: common practice, no source.
const ROOMY: f64 = 2.0;

/// Works out how warm a stage, of that number in its component, comes from the bowl. `brought` is how warm
/// each stage is that it uses.
pub fn mixed(
    (stage, number): (&Stage, usize),
    around: &Surroundings,
    brought: &dyn Fn(usize, usize) -> Option<Temperature>,
) -> Mixed {
    // What is added once the pieces are scaled, such as frying oil, never was in the bowl.
    let lines = stage.lines.iter().enumerate().filter(|(_, line)| !line.after_scaling);
    let mut portions: Portions = lines.filter_map(|(l, line)| Some((l, portion(line, around, brought)?))).collect();
    let warmed = warmed(stage, number, &mut portions);
    let portions: Vec<(usize, Portion)> =
        portions.into_iter().map(|(l, (mass, heat, temperature))| (l, Portion { mass, heat, temperature })).collect();
    let all: Vec<Portion> = portions.iter().map(|(_, portion)| *portion).collect();
    let mixing = mixing(stage, around, &all);
    let computed = mixing_temperature(&all, &mixing);
    let mixes = stage.steps.iter().filter(|step| is_mixing(step.action));
    let wanted = mixes.filter_map(|step| step.temperature).next_back().map(midway);
    let liquid = wanted.and_then(|wanted| {
        let (l, own) = portions
            .iter()
            .filter(|(l, _)| is_liquid(&stage.lines[*l]))
            .max_by(|a, b| a.1.mass.as_grams().total_cmp(&b.1.mass.as_grams()))?;
        let others: Vec<Portion> = portions.iter().filter(|(other, _)| other != l).map(|(_, portion)| *portion).collect();
        Some((stage.lines[*l].title.clone(), liquid_temperature(&others, &mixing, (own.mass, own.heat), wanted)))
    });
    let source = science::heat::mixing_temperature::EQUATION.name;
    let water = liquid.as_ref().filter(|(title, _)| stage.lines.iter().any(|line| line.title == *title && is_water(line)));
    let by_rule = wanted.zip(water).map(|(wanted, (_, water))| by_rule(stage, around, brought, wanted, *water));
    Mixed {
        computed: around.calibration.mixed(
            kneads(stage),
            Known::computed(computed, "the balance of heat in mixing, wetting of the flour counted", source),
        ),
        wanted,
        liquid,
        by_rule,
        warmed,
    }
}

/// The rule of three factors, or of four where the stage takes up a preferment.
fn by_rule(
    stage: &Stage,
    around: &Surroundings,
    brought: &dyn Fn(usize, usize) -> Option<Temperature>,
    wanted: Temperature,
    water: Temperature,
) -> ByRule {
    let flour = stage.lines.iter().find(|line| line.is_flour);
    let flour = flour.and_then(|line| {
        line.temperature.map_or_else(|| line.ingredient().map(|one| around.stored(one).value), |range| Some(midway(range)))
    });
    let mut parts = vec![around.room.value, flour.unwrap_or(around.room.value)];
    parts.extend(stage.uses().find_map(|(c, s)| brought(c, s)));
    let friction = TemperatureDifference::fahrenheit_degrees(FRICTION[usize::from(!kneads(stage))]);
    ByRule {
        water: factor_rule(wanted, &parts, friction),
        friction,
        agreeing: factor_rule::agreeing_friction(wanted, &parts, water),
    }
}

/// Whether a stage comes from the bowl with the temperature of such a step.
#[must_use]
pub const fn is_mixing(action: Action) -> bool {
    matches!(action, Action::Mix | Action::Knead | Action::Cream)
}

fn kneads(stage: &Stage) -> bool {
    stage.steps.iter().any(|step| step.action == Action::Knead)
}

/// What goes into the bowl besides the ingredients: wetting, the mixer's work, the bowl itself.
fn mixing(stage: &Stage, around: &Surroundings, portions: &[Portion]) -> Mixing {
    let capacity: f64 = portions.iter().map(|p| p.mass.as_kilograms() * p.heat.as_joules_per_kilogram_kelvin()).sum();
    let bowl = around.vessel(Volume::millilitres(stage.mixed().as_grams() * ROOMY)).and_then(super::surroundings::capacity);
    Mixing {
        newly_wetted: stage.lines.iter().filter(|line| line.is_flour).map(|line| line.mass.value).sum(),
        work: Heat::joules(if kneads(stage) { around.calibration.friction.middle * capacity } else { 0.0 }),
        room: around.room.value,
        bowl: bowl.unwrap_or(HeatCapacity::joules_per_kelvin(0.0)),
        ..Mixing::default()
    }
}

fn portion(
    line: &Line,
    around: &Surroundings,
    brought: &dyn Fn(usize, usize) -> Option<Temperature>,
) -> Option<(Mass, SpecificHeat, Temperature)> {
    let stated = line.temperature.map(midway);
    let (heat, usual) = match &line.content {
        Content::Ingredient(ingredient) => (specific_heat(ingredient), around.stored(ingredient).value),
        Content::Stage(c, s) => (DOUGH, brought(*c, *s).unwrap_or(around.room.value)),
        Content::Formula(_) => (DOUGH, around.room.value),
    };
    (line.mass.value > Mass::ZERO).then(|| (line.mass.value, heat, stated.unwrap_or(usual)))
}

fn is_water(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_water())
}

fn is_liquid(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_water() || one.group == Group::Liquid || one.is_milk())
}

/// Whether it is butter, or what else of milk is mostly fat.
pub fn is_butter(ingredient: &Ingredient) -> bool {
    let fat = ingredient.composition.share(formula::ingredient::Figure::Fat);
    ingredient.group == Group::Dairy && fat > Some(Fraction::percent(60.0))
}

/// Specific heats of the common ingredients, in the words of the science room's table.
fn specific_heat(ingredient: &Ingredient) -> SpecificHeat {
    let name = match ingredient.group {
        _ if ingredient.is_water() => "water",
        Group::Flour | Group::Starch => "flour",
        Group::Egg => "egg",
        Group::Sugar => "sugar",
        Group::Fat => "oil",
        _ if is_butter(ingredient) => "butter",
        Group::Dairy | Group::Liquid => "milk",
        _ => "",
    };
    let known = science::heat::ingredient_heats::named(name).map(|entry| entry.heat);
    // What is in no table is reckoned by its water: dry food about 1.6 kJ/(kg K), water 4.18.
    known.unwrap_or_else(|| {
        let water =
            ingredient.composition.share(formula::ingredient::Figure::Water).unwrap_or(Fraction::percent(50.0)).as_ratio();
        SpecificHeat::joules_per_kilogram_kelvin(1600.0 + 2580.0 * water)
    })
}
