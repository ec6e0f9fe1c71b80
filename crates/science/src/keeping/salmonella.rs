//! *Salmonella* in egg, batter and dough: how long heat needs, food by food.

use super::history::Reading;
use super::lethality::{COUNTED_FROM, COUNTED_TO, Curve};
use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TemperatureDifference, TimeSpan};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::salmonella",
    source: "channaiah-2017",
    place: "D and z by food; each entry of the data names its paper",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 52.0, to: 66.0 }],
};

/// The entries of `data/salmonella.toml`, as text.
pub const DATA: &str = include_str!("../../data/salmonella.toml");

/// The decimal reductions that are taken as enough in flour and egg batters.
pub const ENOUGH: f64 = 5.0;

/// How fast *Salmonella* dies in a food.
#[derive(Clone, Debug, PartialEq)]
pub struct Food {
    /// The food.
    pub name: String,
    /// Whether it is one of the batters and doughs by whose worst a baked thing is judged.
    pub kind: Kind,
    /// Temperature in °C of the hottest measured point.
    pub measured_at: Temperature,
    /// Time for a tenth to survive there.
    pub decimal_time: TimeSpan,
    /// Warming that makes it ten times as fast.
    pub z: TemperatureDifference,
    /// Where the figures come from.
    pub origin: Origin,
}

/// What kind of food was studied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A batter or dough.
    Batter,
    /// Egg with or without sugar or salt.
    Egg,
}

static FOODS: LazyLock<Vec<Food>> = LazyLock::new(|| {
    entry::read(DATA, "food", |row| {
        Some(Food {
            name: row.word("name")?,
            kind: match row.word("kind")?.as_str() {
                "batter" => Kind::Batter,
                "egg" => Kind::Egg,
                _ => return None,
            },
            measured_at: Temperature::celsius(row.number("celsius")?),
            decimal_time: TimeSpan::minutes(row.number("decimal_minutes")?),
            z: TemperatureDifference::kelvins(row.number("z_kelvins")?),
            origin: row.origin()?,
        })
    })
});

/// Every food studied.
#[must_use]
pub fn foods() -> &'static [Food] {
    &FOODS
}

/// The food of that name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Food> {
    FOODS.iter().find(|food| food.name == name)
}

/// Returns the time after which a tenth survives at a temperature.
///
/// ```text
/// D = D_ref · 10^((T_ref − T)/z)
/// ```
///
/// | symbol  | meaning                                      | unit |
/// |---------|----------------------------------------------|------|
/// | `D`     | decimal reduction time                       | min  |
/// | `T_ref` | the hottest temperature that was measured    | °C   |
/// | `D_ref` | the time measured there                      | min  |
/// | `z`     | published z                                  | K    |
///
/// Measured between 52 and 66 °C; hotter is a straight line drawn on, good for ranking and margins, not as
/// proof. Papers in `data/salmonella.toml`.
///
/// ```
/// # use quantity::Temperature;
/// use science::keeping::salmonella::{decimal_time, named};
/// let muffin = named("muffin batter").expect("studied");
/// let five = decimal_time(muffin, Temperature::celsius(70.0)) * 5.0;
/// assert_eq!(format!("{:.1} min", five.as_minutes()), "11.2 min");
/// ```
#[must_use]
pub fn decimal_time(food: &Food, temperature: Temperature) -> TimeSpan {
    food.decimal_time * libm::pow(10.0, (food.measured_at - temperature) / food.z)
}

/// Returns the decimal reductions that a temperature history brings in a food.
///
/// Counted from 55 °C; from 85 °C on hotter counts no more.
///
/// ```
/// # use quantity::{Temperature, TimeSpan};
/// use science::keeping::{history::Reading, salmonella::{named, reductions}};
/// let at = |seconds, celsius| Reading { at: TimeSpan::seconds(seconds), temperature: Temperature::celsius(celsius) };
/// let muffin = named("muffin batter").expect("studied");
/// let held = reductions(&[at(0.0, 80.0), at(75.0, 80.0)], muffin);
/// assert!(held > 5.0);
/// ```
#[must_use]
pub fn reductions(readings: &[Reading], food: &Food) -> f64 {
    Curve::straight(food.measured_at, food.z, food.decimal_time, (COUNTED_FROM, COUNTED_TO)).over(readings)
}

/// Returns the least decimal reductions among the batters and doughs studied: what a baked thing is judged by.
///
/// ```
/// assert!(science::keeping::salmonella::worst_reductions(&[]).abs() < 1e-12);
/// ```
#[must_use]
pub fn worst_reductions(readings: &[Reading]) -> f64 {
    let batters = FOODS.iter().filter(|food| food.kind == Kind::Batter);
    batters.map(|food| reductions(readings, food)).reduce(f64::min).unwrap_or(0.0)
}
