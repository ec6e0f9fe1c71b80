//! What a dough or batter is made of, and what that means for its ferment.

use super::parameters::value;
use super::{Buffer, OwnHeat, Release};
use crate::{Equation, Standing, Valid};
use quantity::{Acidity, Amount, Fraction, Mass, Pressure, Rate, Volume};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::stage",
    source: "physical-chemistry",
    place: "volumes and waters add up; densities and waters of the parts as their entries say",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "W", unit: "kg/kg flour", from: 0.59, to: 1.54 }],
};

/// What is in the bowl: everything, also what a preferment or culture carried into it, but of the
/// sugars only those added now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dough {
    /// All flour.
    pub flour: Mass,
    /// Water as such, and that of butter, honey and syrups.
    pub water: Mass,
    /// Milk.
    pub milk: Mass,
    /// Egg without shell.
    pub egg: Mass,
    /// Fat: oil, and the fat of butter.
    pub fat: Mass,
    /// Sucrose added now.
    pub sucrose: Mass,
    /// Glucose and fructose added now, as in honey.
    pub hexose: Mass,
    /// Salt.
    pub salt: Mass,
    /// How it holds gas.
    pub hold: Hold,
}

/// How a dough holds gas.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// The share of air when mixed.
    pub void: f64,
    /// Gas volume against the mixed volume at which as much is lost as is made.
    pub stretch: f64,
    /// Share of the gas in bubbles that leaks away in an hour, at 25 °C.
    pub leak: Rate,
}

/// Kinds of dough whose hold on gas is known, roughly.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoughKind {
    /// A pourable preferment with yeast, about equal weights.
    Liquid,
    /// A pourable sourdough culture.
    LiquidCulture,
    /// A kneaded dough with yeast.
    Dough,
    /// A kneaded dough with sourdough alone.
    CultureDough,
    /// A stiff preferment.
    Stiff,
    /// A sponge of half the flour or more.
    Sponge,
    /// A batter about as wet as flour is heavy.
    Batter,
    /// A thin batter.
    ThinBatter,
}

impl Hold {
    /// The constants of `data/ferment/dough.toml`.
    #[must_use]
    pub fn of(kind: DoughKind) -> Self {
        let name = match kind {
            DoughKind::Liquid => "liquid",
            DoughKind::LiquidCulture => "liquid-culture",
            DoughKind::Dough => "dough",
            DoughKind::CultureDough => "culture-dough",
            DoughKind::Stiff => "stiff",
            DoughKind::Sponge => "sponge",
            DoughKind::Batter => "batter",
            DoughKind::ThinBatter => "thin-batter",
        };
        let value = |of: &str| value(&format!("dough.hold.{name}-{of}"));
        Self { void: value("void"), stretch: value("stretch"), leak: Rate::per_hour(value("leak")) }
    }
}

/// A dough as its ferment sees it, for a kilogram of its flour; every field may be set by whoever
/// knows better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage {
    /// All water, the flour's own included.
    pub water: Mass,
    /// The flour's own water.
    pub flour_water: Mass,
    /// Volume without gas.
    pub gas_free_volume: Volume,
    /// Salt.
    pub salt: Mass,
    /// Dissolved particles beside salt and fermentable sugar.
    pub other_solutes: Amount,
    /// How it holds gas.
    pub hold: Hold,
    /// How it answers acid.
    pub buffer: Buffer,
    /// The pressure of the air: less on a mountain, where gas takes more room and dissolves less.
    pub air: Pressure,
    /// How much more gas it dissolves than its water would.
    pub dissolving: f64,
    /// How it warms itself.
    pub own_heat: OwnHeat,
    /// Hexose, maltose and releasable starch that fresh flour brings.
    pub flour_sugars: [Amount; 3],
    /// Sugar added, as hexose.
    pub added_hexose: Amount,
    /// How its amylases set maltose free.
    pub release: Release,
}

impl Default for Dough {
    /// A kilogram of flour and nothing else, to be kneaded.
    fn default() -> Self {
        let none = Mass::ZERO;
        Self {
            flour: Mass::kilograms(1.0),
            water: none,
            milk: none,
            egg: none,
            fat: none,
            sucrose: none,
            hexose: none,
            salt: none,
            hold: Hold::of(DoughKind::Dough),
        }
    }
}

impl Default for Stage {
    /// A lean dough of 65 % water without salt.
    fn default() -> Self {
        Dough { water: Mass::grams(650.0), ..Dough::default() }.stage()
    }
}

impl Dough {
    /// The same dough for a kilogram of its flour.
    ///
    /// ```text
    /// W = 0.14 + (m_water + 0.875·m_milk + 0.76·m_egg)/m_flour
    /// V_c = Σ (m/ρ)/m_flour
    /// n = 0.28·(0.875·m_milk + 0.76·m_egg)/m_flour
    /// G = (1.0526·m_sucrose + m_hexose)/(180.16·m_flour)
    /// ```
    ///
    /// | symbol | meaning                                              | unit         |
    /// |--------|------------------------------------------------------|--------------|
    /// | `W`    | all water, the flour's own included                  | kg/kg flour  |
    /// | `V_c`  | volume without gas                                   | L/kg flour   |
    /// | `n`    | what milk and egg have dissolved beside sugar        | osmol/kg flour |
    /// | `G`    | sugar added, as hexose; lactose is none to yeast     | mol/kg flour |
    /// | `ρ`    | flour 1.44, water 0.998, milk and egg 1.03, fat 0.92, sugar 1.59, salt 2.16 | kg/L |
    ///
    /// Volumes are taken to add up, which is within 2 % (dissolved sugar and salt take a little less).
    /// Without flour the figures are not finite, and a run says so.
    ///
    /// ```
    /// # use quantity::Mass;
    /// # use science::ferment::Dough;
    /// let stage = Dough { water: Mass::grams(650.0), ..Dough::default() }.stage();
    /// assert_eq!(format!("{:.3}", 1.65 / stage.gas_free_volume.as_litres()), "1.226");
    /// ```
    #[must_use]
    pub fn stage(&self) -> Stage {
        let per_flour = |mass: Mass| Mass::kilograms(mass / self.flour);
        let moist = self.milk * value("dough.water.milk") + self.egg * value("dough.water.egg");
        let flour_water = Mass::kilograms(value("dough.flour.water"));
        let milk = self.milk / self.flour;
        Stage {
            water: per_flour(self.water + moist) + flour_water,
            flour_water,
            gas_free_volume: self.gas_free_volume(),
            salt: per_flour(self.salt),
            other_solutes: Amount::moles(value("dough.solutes.milk-and-egg") * (moist / self.flour)),
            hold: self.hold,
            buffer: Buffer {
                start: Acidity::ph(value("culture.acidity.start")),
                end: Acidity::ph(value("culture.acidity.end")),
                scale: Amount::millimoles(value("culture.acidity.buffer") * (1.0 + value("culture.acidity.milk") * milk)),
            },
            air: Pressure::kilopascals(101.325),
            dissolving: value("dough.gas.dissolving"),
            own_heat: OwnHeat {
                per_mole: value("dough.heat.fermentation"),
                flour: value("dough.heat.flour"),
                water: value("dough.heat.water"),
                gas_yield: value("yeast.gas.yield"),
            },
            flour_sugars: ["hexose", "maltose", "starch"].map(|of| Amount::moles(value(&format!("dough.flour.{of}")))),
            added_hexose: hexose_of(per_flour(self.sucrose), per_flour(self.hexose)),
            release: Release::new(Rate::per_hour(value("dough.flour.release")), value("dough.flour.release-warming")),
        }
    }

    /// The room that all of it takes before any gas is in it.
    #[must_use]
    pub fn volume(&self) -> Volume {
        self.gas_free_volume() * self.flour.as_kilograms()
    }

    /// The volume of a kilogram of flour with all that belongs to it, without gas.
    fn gas_free_volume(&self) -> Volume {
        let parts = [
            (self.flour, "flour"),
            (self.water, "water"),
            (self.milk + self.egg, "milk-and-egg"),
            (self.fat, "fat"),
            (self.sucrose + self.hexose, "sugar"),
            (self.salt, "salt"),
        ];
        Volume::litres(parts.iter().map(|(mass, of)| *mass / self.flour / value(&format!("dough.density.{of}"))).sum())
    }

    /// Salt on flour.
    #[must_use]
    pub fn salt_share(&self) -> Fraction {
        Fraction::ratio(self.salt / self.flour)
    }
}

/// Sucrose takes up water and falls apart into glucose and fructose within minutes.
fn hexose_of(sucrose: Mass, hexose: Mass) -> Amount {
    Amount::moles((sucrose.as_grams() * 1.0526 + hexose.as_grams()) / 180.16)
}
