//! Fresh, active dry and instant yeast: how much of one does the work of another.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction, Mass};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "measure::yeast",
    source: "hamelman-2004",
    place: "yeast conversions, fresh to dry",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 }],
};

/// The entries of `data/yeast.toml`, as text.
pub const DATA: &str = include_str!("../../data/yeast.toml");

/// How baker's yeast is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Form {
    /// Compressed, moist.
    Fresh,
    /// Dried granules that want soaking.
    ActiveDry,
    /// Fine dry grains that go into the flour.
    Instant,
}

/// What is known of a form.
#[derive(Clone, Debug, PartialEq)]
pub struct FormFigures {
    /// The form.
    pub form: Form,
    /// Mass that does the work of one of fresh yeast, by the source.
    pub usual: f64,
    /// The same as other sources have it, lowest to highest.
    pub spread: Between<f64>,
    /// Dry matter.
    pub solids: Fraction,
    /// Where the figures come from.
    pub origin: Origin,
}

static FORMS: LazyLock<Vec<FormFigures>> = LazyLock::new(|| {
    entry::read(DATA, "form", |row| {
        Some(FormFigures {
            form: match row.word("form")?.as_str() {
                "fresh" => Form::Fresh,
                "active-dry" => Form::ActiveDry,
                "instant" => Form::Instant,
                _ => return None,
            },
            usual: row.number("usual")?,
            spread: Between { from: row.number("lowest")?, to: row.number("highest")? },
            solids: Fraction::percent(row.number("solids_percent")?),
            origin: row.origin()?,
        })
    })
});

/// What is known of every form.
#[must_use]
pub fn forms() -> &'static [FormFigures] {
    &FORMS
}

/// What is known of a form.
#[must_use]
pub fn figures(form: Form) -> Option<&'static FormFigures> {
    FORMS.iter().find(|figures| figures.form == form)
}

/// A mass of one form that does the work of another's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Equivalent {
    /// By the usual factors.
    pub usual: Mass,
    /// As sources differ.
    pub spread: Between<Mass>,
}

/// Returns how much of another form does the work of this yeast.
///
/// ```text
/// m_b = m_a · f_b / f_a      f: fresh 1, active dry 0.40, instant 0.33
/// ```
///
/// | symbol | meaning                                      | unit |
/// |--------|----------------------------------------------|------|
/// | `m`    | mass of yeast                                | g    |
/// | `f`    | mass that does the work of 1 of fresh yeast  | –    |
///
/// Valid for any mass. Makers and books differ: the spread runs from the lowest of one over the highest
/// of the other to the reverse. Hamelman (2004) for the usual factors.
///
/// ```
/// # use quantity::Mass;
/// use science::measure::yeast::{Form, equivalent};
/// let dry = equivalent(Mass::grams(30.0), Form::Fresh, Form::Instant).usual;
/// assert_eq!(format!("{:.1} g", dry.as_grams()), "9.9 g");
/// ```
#[must_use]
pub fn equivalent(mass: Mass, of: Form, into: Form) -> Equivalent {
    let same = Equivalent { usual: mass, spread: Between::just(mass) };
    if of == into {
        return same;
    }
    match (figures(of), figures(into)) {
        (Some(of), Some(into)) => Equivalent {
            usual: mass * (into.usual / of.usual),
            spread: Between { from: mass * (into.spread.from / of.spread.to), to: mass * (into.spread.to / of.spread.from) },
        },
        _ => same,
    }
}
