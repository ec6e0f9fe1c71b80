//! What the yeast and the bacteria of a leaven can do.

use super::parameters::value;
use super::{Cardinal, CardinalAcidity, CultureOrganism, HeatDeath, SquareRootLaw, SugarUse};
use quantity::{Acidity, Amount, Fraction, Mass, Osmolality, Rate, Temperature, TemperatureDifference, TimeSpan};

/// The kinds of leaven that have constants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strain {
    /// Baker's yeast for ordinary doughs.
    Bakers,
    /// Baker's yeast bred for sweet doughs.
    Osmotolerant,
    /// A sourdough culture whose yeasts together use maltose.
    Sourdough,
    /// A sourdough culture whose only yeast is *Kazachstania humilis*, which uses no maltose.
    SourdoughWithoutMaltose,
}

/// How growth answers temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Growth {
    /// By cardinal temperatures: baker's yeast.
    Cardinal(Cardinal),
    /// By the equation for sourdough organisms.
    Culture(CultureOrganism),
}

/// The constants of a leaven's yeast and bacteria; every field may be set by whoever knows better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Organisms {
    /// Multiplies every rate of life: the one constant to calibrate a culture in its kitchen.
    pub vigour: f64,
    /// Carbon dioxide a gram of dry yeast makes an hour at 30 °C with all it wants.
    pub gas_at_30: Amount,
    /// Gas against temperature.
    pub gas_law: SquareRootLaw,
    /// Yeast growth against temperature.
    pub growth: Growth,
    /// Yeast that can grow in a kilogram of fresh flour.
    pub growth_room: Mass,
    /// Room at which growth is halved.
    pub half_room: Mass,
    /// Time at 27 °C before growth begins.
    pub lag: TimeSpan,
    /// How long the yeast takes to wake for making gas, at 27 °C.
    pub wakening: TimeSpan,
    /// Vigour lost by starving yeast.
    pub starving: Rate,
    /// Osmolality at which the yeast stops.
    pub osmotic_limit: Osmolality,
    /// Ethanol, in gram a kilogram of water, at which the yeast stops.
    pub ethanol_limit: f64,
    /// How the yeast uses sugars.
    pub sugars: SugarUse,
    /// Carbon dioxide from a mole of hexose.
    pub gas_yield: f64,
    /// How yeast dies of heat.
    pub heat: HeatDeath,
    /// Growth of the bacteria against temperature.
    pub bacteria: CultureOrganism,
    /// Growth of the bacteria against acidity.
    pub acidity: CardinalAcidity,
    /// Salt on flour at which the bacteria stop.
    pub salt_limit: Fraction,
    /// Sugar at which the bacteria grow half as fast.
    pub half_sugar: Amount,
    /// How the bacteria make acid.
    pub acid: AcidMaking,
}

/// How bacteria make acid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AcidMaking {
    /// Acid with each gram of new bacteria.
    pub with_growth: Amount,
    /// Acid of a gram of bacteria an hour at 30 °C without growth.
    pub at_rest: Amount,
    /// The distance from the sourest pH at which acid without growth is halved.
    pub at_rest_half: f64,
    /// Lactic acid among the acids, and carbon dioxide beside it.
    pub lactic_share: f64,
    /// Glucose set free for each maltose hexose used.
    pub glucose_left: f64,
}

impl Organisms {
    /// The constants of `data/ferment/` for a strain, at vigour 1.
    #[must_use]
    pub fn of(strain: Strain) -> Self {
        match strain {
            Strain::Bakers => Self::bakers(),
            Strain::Osmotolerant => Self {
                osmotic_limit: Osmolality::osmoles_per_kilogram(value("yeast.solutes.osmotolerant-limit")),
                ..Self::bakers()
            },
            Strain::Sourdough => Self::sourdough(value("culture.yeast.maltose-share")),
            Strain::SourdoughWithoutMaltose => Self::sourdough(value("culture.yeast.maltose-share-humilis")),
        }
    }

    fn bakers() -> Self {
        Self {
            vigour: 1.0,
            gas_at_30: Amount::moles(value("yeast.gas.at-30")),
            gas_law: law("yeast.gas.lowest", "yeast.gas.highest", "yeast.gas.bend"),
            growth: Growth::Cardinal(Cardinal {
                lowest: Temperature::celsius(value("yeast.growth.lowest")),
                optimum: Temperature::celsius(value("yeast.growth.optimum")),
                highest: Temperature::celsius(value("yeast.growth.highest")),
                rate: Rate::per_hour(value("yeast.growth.rate")),
            }),
            growth_room: Mass::grams(value("yeast.growth.room")),
            half_room: Mass::grams(value("yeast.growth.half-room")),
            lag: TimeSpan::hours(value("yeast.growth.lag")),
            wakening: TimeSpan::hours(value("yeast.form.instant-wakening")),
            starving: Rate::per_hour(value("yeast.starving.loss")),
            osmotic_limit: Osmolality::osmoles_per_kilogram(value("yeast.solutes.ordinary-limit")),
            ethanol_limit: value("yeast.ethanol.limit"),
            sugars: SugarUse {
                half_hexose: Amount::moles(value("yeast.uptake.half-hexose")),
                half_maltose: Amount::moles(value("yeast.uptake.half-maltose")),
                repression: Amount::moles(value("yeast.uptake.repression")),
                maltose_share: value("yeast.uptake.maltose-share"),
            },
            gas_yield: value("yeast.gas.yield"),
            heat: HeatDeath {
                at_60: TimeSpan::minutes(value("yeast.death.minutes-at-60")),
                step: TemperatureDifference::kelvins(value("yeast.death.step")),
                from: Temperature::celsius(value("yeast.death.from")),
            },
            bacteria: organism("culture.bacteria"),
            acidity: CardinalAcidity {
                lowest: Acidity::ph(value("culture.bacteria.ph-lowest")),
                optimum: Acidity::ph(value("culture.bacteria.ph-optimum")),
                highest: Acidity::ph(value("culture.bacteria.ph-highest")),
            },
            salt_limit: Fraction::ratio(value("culture.bacteria.salt-limit") / 1000.0),
            half_sugar: Amount::moles(value("culture.bacteria.half-sugar")),
            acid: AcidMaking {
                with_growth: Amount::millimoles(value("culture.acid.with-growth")),
                at_rest: Amount::millimoles(value("culture.acid.at-rest")),
                at_rest_half: value("culture.acid.at-rest-half"),
                lactic_share: value("culture.acid.lactic-share"),
                glucose_left: value("culture.acid.glucose-left"),
            },
        }
    }

    fn sourdough(maltose_share: f64) -> Self {
        let bakers = Self::bakers();
        Self {
            gas_law: law("culture.yeast.gas-lowest", "culture.yeast.gas-highest", "culture.yeast.gas-bend"),
            growth: Growth::Culture(organism("culture.yeast")),
            growth_room: Mass::grams(value("culture.yeast.growth-room")),
            lag: TimeSpan::hours(value("culture.yeast.growth-lag")),
            wakening: TimeSpan::hours(value("culture.yeast.wakening")),
            sugars: SugarUse { maltose_share, ..bakers.sugars },
            ..bakers
        }
    }
}

fn law(lowest: &str, highest: &str, bend: &str) -> SquareRootLaw {
    SquareRootLaw {
        lowest: Temperature::celsius(value(lowest)),
        highest: Temperature::celsius(value(highest)),
        bend: value(bend),
    }
}

fn organism(group: &str) -> CultureOrganism {
    let value = |name: &str| value(&format!("{group}.growth-{name}"));
    CultureOrganism {
        a: Rate::per_hour(value("a")),
        b: value("b"),
        c: value("c"),
        highest: Temperature::celsius(value("highest")),
    }
}
