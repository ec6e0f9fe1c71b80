//! How much leaven it takes to be ready at a wished time.

use super::{Course, Fermentation};
use crate::numeric::root;
use crate::{Equation, Standing};
use quantity::TimeSpan;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::dose",
    source: "ferment-model",
    place: "the model turned round: a root in the logarithm of the dose",
    standing: Standing::Fitted,
    valid: &[],
};

/// Returns the dose, between two, with which a fermentation is ready at a wished time; nothing where
/// neither end of the range comes near enough.
///
/// ```text
/// ln t(dose) = ln t_wished
/// ```
///
/// | symbol     | meaning                                  | unit |
/// |------------|------------------------------------------|------|
/// | `dose`     | as the maker of the dough understands it | any  |
/// | `t`        | when the dough is ready, by the reader   | h    |
/// | `t_wished` | when it shall be                         | h    |
///
/// Works wherever more leaven is sooner ready. A dough not ready at three times the wish counts as
/// taking that long. Within a thousandth of the dose.
///
/// ```
/// # use quantity::{Mass, Temperature, TimeSpan};
/// # use science::ferment::*;
/// // Instant yeast for a lean dough that shall double in 4 h at 24 °C.
/// let dough = Dough { water: Mass::grams(650.0), salt: Mass::grams(20.0), ..Dough::default() };
/// let mixed = |grams| {
///     let yeast = Yeast { form: YeastForm::Instant, mass: Mass::grams(grams) };
///     Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, yeast), TemperaturePath::Constant(Temperature::celsius(24.0)))
/// };
/// let grams = dose(TimeSpan::hours(4.0), (0.1, 30.0), mixed, Course::doubled);
/// assert_eq!(format!("{:.1} g", grams.expect("some dose does it")), "2.1 g");
/// ```
#[must_use]
pub fn dose(
    wished: TimeSpan,
    (least, most): (f64, f64),
    mixed: impl Fn(f64) -> Fermentation,
    ready: impl Fn(&Course) -> Option<TimeSpan>,
) -> Option<f64> {
    let horizon = wished * 3.0;
    let late = |log: f64| {
        let course = mixed(libm::exp(log)).run(horizon);
        libm::log(ready(&course).unwrap_or(horizon) / wished)
    };
    root::find(late, (libm::log(least), libm::log(most)), 1e-3).map(libm::exp)
}
