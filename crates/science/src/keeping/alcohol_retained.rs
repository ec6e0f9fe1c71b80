//! How much alcohol stays in a dish after cooking.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, TimeSpan};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::alcohol_retained",
    source: "usda-retention-6",
    place: "alcohol",
    standing: Standing::Published,
    valid: &[Valid { symbol: "t", unit: "min", from: 0.0, to: 150.0 }],
};

/// The entries of `data/alcohol_retained.toml`, as text.
pub const DATA: &str = include_str!("../../data/alcohol_retained.toml");

/// How the alcohol was treated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Preparation {
    /// Stirred into something hot off the heat.
    AddedOffTheHeat,
    /// Poured over and lit.
    Flamed,
    /// No heat, stood overnight.
    NoHeatOvernight,
    /// Baked about 25 minutes without being stirred in.
    BakedNotStirred,
    /// Stirred in, then baked or simmered for this time.
    StirredIn(TimeSpan),
}

#[derive(Debug)]
struct Row {
    preparation: String,
    minutes: f64,
    retained: Fraction,
}

static ROWS: LazyLock<Vec<Row>> = LazyLock::new(|| {
    entry::read(DATA, "row", |row| {
        let _: Origin = row.origin()?;
        let retained = Fraction::percent(row.number("retained_percent")?);
        Some(Row { preparation: row.word("preparation")?, minutes: row.number("minutes")?, retained })
    })
});

/// How many rows were read from the data.
#[must_use]
pub fn rows() -> usize {
    ROWS.len()
}

/// Returns the share of the alcohol that stays.
///
/// ```text
/// off the heat 85 %   flamed 75 %   no heat overnight 70 %   baked 25 min, not stirred 45 %
/// stirred in:  15 min 40 %  30 min 35 %  1 h 25 %  1.5 h 20 %  2 h 10 %  2.5 h 5 %
/// ```
///
/// | symbol | meaning                  | unit |
/// |--------|--------------------------|------|
/// | `t`    | time of baking or simmering | min |
///
/// Between two times of the table the shorter one's share stands, so that no more is promised gone than was
/// measured; below 15 min the share of alcohol added off the heat. No cooking drives out all of it.
///
/// ```
/// # use quantity::TimeSpan;
/// use science::keeping::alcohol_retained::{Preparation, retained};
/// let share = retained(Preparation::StirredIn(TimeSpan::minutes(30.0)));
/// assert_eq!(share.as_percent(), 35.0);
/// ```
#[must_use]
pub fn retained(preparation: Preparation) -> Fraction {
    match preparation {
        Preparation::AddedOffTheHeat => first("off the heat"),
        Preparation::Flamed => first("flamed"),
        Preparation::NoHeatOvernight => first("no heat overnight"),
        Preparation::BakedNotStirred => first("baked, not stirred"),
        Preparation::StirredIn(time) => {
            let reached = of("stirred in").filter(|row| time.as_minutes() >= row.minutes).last();
            reached.map_or_else(|| first("off the heat"), |row| row.retained)
        }
    }
}

fn of(preparation: &'static str) -> impl Iterator<Item = &'static Row> {
    ROWS.iter().filter(move |row| row.preparation == preparation)
}

fn first(preparation: &'static str) -> Fraction {
    of(preparation).next().map_or(Fraction::WHOLE, |row| row.retained)
}
