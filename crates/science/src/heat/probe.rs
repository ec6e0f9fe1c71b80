//! One probe reading turned into the contact of a griddle: from then on the model is that kitchen's.

use super::cook::{Piece, course};
use super::griddle::Griddle;
use quantity::{HeatTransfer, Temperature};

/// The poorest and the best contact that a reading is allowed to mean, in W/(m² K); beyond them something
/// else is wrong: the thickness, the pan's temperature, or the place of the probe.
const CREDIBLE: [f64; 2] = [50.0, 2000.0];
/// Halvings on a logarithmic scale, to a thousandth.
const HALVINGS: usize = 12;

/// Returns the contact with which the core is as probed when it leaves the griddle, if any is credible.
///
/// Everything else is taken as given, above all how far the bubbles keep saturated. The core rises with
/// the contact, so the interval is halved.
///
/// ```
/// # use quantity::*;
/// # use science::heat::{Composition, cook::Piece, griddle::{Griddle, kitchen}, probe::contact_from_probe, surroundings};
/// # let batter = Composition { water: Fraction::percent(52.0), carbohydrate: Fraction::percent(48.0), ..Composition::default() };
/// # let rho = Density::kilograms_per_cubic_metre(800.0);
/// # let cake = Piece::new(Length::millimetres(12.0), batter, rho, Temperature::celsius(22.0));
/// # let griddle = Griddle {
/// #     surface: Temperature::celsius(139.0),
/// #     transfer: surroundings::GRIDDLE,
/// #     sides: vec![TimeSpan::seconds(150.0); 2],
/// #     rest: TimeSpan::ZERO,
/// #     air: kitchen(Temperature::celsius(22.0)),
/// # };
/// let good = contact_from_probe(&cake, &griddle, Temperature::celsius(90.0));
/// let poor = contact_from_probe(&cake, &griddle, Temperature::celsius(80.0));
/// assert!(good > poor && poor.is_some());
/// assert_eq!(contact_from_probe(&cake, &griddle, Temperature::celsius(130.0)), None);
/// ```
#[must_use]
pub fn contact_from_probe(piece: &Piece, griddle: &Griddle, probed: Temperature) -> Option<HeatTransfer> {
    let off = griddle.sides.iter().copied().sum();
    let core = |h: f64| {
        let stages = griddle.stages(HeatTransfer::watts_per_square_metre_kelvin(h));
        course(piece, &stages).core_at(off).unwrap_or(piece.start)
    };
    let [mut low, mut high] = CREDIBLE;
    if !(core(low) <= probed && probed <= core(high)) {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = (low * high).sqrt();
        if core(middle) < probed { low = middle } else { high = middle }
    }
    Some(HeatTransfer::watts_per_square_metre_kelvin((low * high).sqrt()))
}
