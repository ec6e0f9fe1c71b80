//! What is customary by kind of product, and whether a formula keeps to it.

use super::{Case, Product, Rule};
use formula::Diagnostic;
use quantity::{Fraction, print};
use std::collections::BTreeMap;
use std::sync::LazyLock;
use toml::de::{DeTable, DeValue};

/// What is customary for one kind of product.
#[derive(Clone, Debug, Default)]
pub struct Custom {
    /// What the kind is called.
    pub title: String,
    /// Whose word it is.
    pub source: String,
    ranges: BTreeMap<String, (Fraction, Fraction)>,
    /// The coolest middle, in °C, at which it is taken as baked.
    pub core: f64,
}

/// All customs by the kind's key.
static CUSTOMS: LazyLock<BTreeMap<String, Custom>> = LazyLock::new(|| {
    let (table, faults) = DeTable::parse_recoverable(include_str!("../../data/customs.toml"));
    debug_assert!(faults.is_empty(), "{faults:?}");
    let kinds = table.get_ref().iter();
    kinds.filter_map(|(kind, custom)| Some((kind.get_ref().to_string(), read(custom.get_ref().as_table()?)))).collect()
});

fn read(table: &DeTable) -> Custom {
    let mut custom = Custom::default();
    for (key, value) in table.iter() {
        let figures: Vec<f64> =
            value.get_ref().as_array().into_iter().flat_map(|list| list.iter()).filter_map(|one| number(one.get_ref())).collect();
        match (key.get_ref().as_ref(), value.get_ref(), &figures[..]) {
            ("title", DeValue::String(text), _) => custom.title = text.to_string(),
            ("source", DeValue::String(text), _) => custom.source = text.to_string(),
            ("core", value, _) => custom.core = number(value).unwrap_or_default(),
            (name, _, [from, to]) => {
                custom.ranges.insert(name.to_owned(), (Fraction::percent(*from), Fraction::percent(*to)));
            }
            _ => {}
        }
    }
    custom
}

fn number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Integer(number) => number.to_string().parse().ok(),
        DeValue::Float(number) => number.to_string().parse().ok(),
        _ => None,
    }
}

/// The customs of that kind, and all of them by key.
#[must_use]
pub fn custom(kind: &str) -> Option<&'static Custom> {
    CUSTOMS.get(kind)
}

/// The figures that have a customary range.
#[derive(Clone, Copy, Debug)]
pub enum Figure {
    /// All water but the flour's own.
    Hydration,
    /// Salt.
    Salt,
    /// Sugars of everything but flour.
    Sugars,
    /// Fat of everything but flour.
    Fat,
    /// All yeast as instant yeast.
    Yeast,
    /// Flour that is fermented beforehand.
    Prefermented,
}

impl Figure {
    const fn key(self) -> &'static str {
        match self {
            Self::Hydration => "hydration",
            Self::Salt => "salt",
            Self::Sugars => "sugars",
            Self::Fat => "fat",
            Self::Yeast => "yeast",
            Self::Prefermented => "prefermented",
        }
    }

    const fn words(self) -> &'static str {
        match self {
            Self::Hydration => "water, that of milk, egg and fruit counted in",
            Self::Salt => "salt",
            Self::Sugars => "sugars, the flour's own left out,",
            Self::Fat => "fat, the flour's own left out,",
            Self::Yeast => "yeast, counted as instant yeast,",
            Self::Prefermented => "flour that is fermented beforehand",
        }
    }

    /// The figure of a product; none where it has nothing of it, which is another rule's matter.
    fn of(self, product: &Product) -> Option<Fraction> {
        let figures = product.figures.as_ref()?;
        let share = match self {
            Self::Hydration => figures.true_hydration.value,
            Self::Salt => figures.salt,
            Self::Sugars => figures.sugars.value,
            Self::Fat => figures.fat.value,
            Self::Yeast => figures.leaven?.0,
            Self::Prefermented => product.overall.prefermented,
        };
        (share > Fraction::ZERO).then_some(share)
    }
}

/// Reports every product whose figure lies outside what is customary for its kind.
pub fn hold_to(case: &Case, rule: &Rule, figure: Figure, hint: &str, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let Some(custom) = product.custom() else { continue };
        let (Some(share), Some((from, to))) = (figure.of(product), custom.ranges.get(figure.key()).copied()) else { continue };
        if share >= from && share <= to {
            continue;
        }
        let message = format!(
            "{} {} of the total flour: for {} the trade keeps to {} to {} ({})",
            print::percent(share, if share < Fraction::percent(1.0) { 2 } else { 1 }),
            figure.words(),
            custom.title,
            print::percent(from, 2),
            print::percent(to, 1),
            custom.source,
        );
        found.push(rule.at(case.culprit(product, figure), message).hint(hint));
    }
}
