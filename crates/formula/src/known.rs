//! A figure that can answer "where from?" and "how sure?".

use crate::Place;
use std::borrow::Cow;

/// Where a figure comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Origin {
    /// Written in the text.
    Stated(Place),
    /// Measured in a trial of that name.
    Measured(String),
    /// Given with the question.
    Asked,
    /// Computed by an equation or rule from stated figures.
    Computed {
        /// What computed it, in words.
        by: &'static str,
        /// The source of the rule or of the data it used.
        source: Cow<'static, str>,
    },
    /// Taken for granted because nothing better is stated.
    Assumed {
        /// Whose figure it is.
        source: Cow<'static, str>,
    },
}

/// A figure with its origin and, where it is not exact, the band it may lie in.
#[derive(Clone, Debug, PartialEq)]
pub struct Known<T> {
    /// The figure.
    pub value: T,
    /// The 5 to 95 % band, where one is known.
    pub band: Option<(T, T)>,
    /// Where it comes from.
    pub origin: Origin,
}

impl<T> Known<T> {
    /// A figure as written at a place.
    pub const fn stated(value: T, place: Place) -> Self {
        Self { value, band: None, origin: Origin::Stated(place) }
    }

    /// A figure worked out by a rule.
    pub fn computed(value: T, by: &'static str, source: impl Into<Cow<'static, str>>) -> Self {
        Self { value, band: None, origin: Origin::Computed { by, source: source.into() } }
    }

    /// A figure taken for granted.
    pub fn assumed(value: T, source: impl Into<Cow<'static, str>>) -> Self {
        Self { value, band: None, origin: Origin::Assumed { source: source.into() } }
    }
}
