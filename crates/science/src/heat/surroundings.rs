//! Heat transfer coefficients from pans, ovens, oil and air, each with its spread.

use crate::Standing;
use quantity::{Between, HeatTransfer};

/// A usual coefficient with the range in which it is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Transfer {
    /// What meets what.
    pub name: &'static str,
    /// What to reckon with.
    pub usual: HeatTransfer,
    /// The range in which it is found.
    pub range: Between<HeatTransfer>,
    /// A key of `sources/heat.toml`.
    pub source: &'static str,
    /// The place in the source.
    pub place: &'static str,
    /// How well it is founded.
    pub standing: Standing,
}

const fn transfer(name: &'static str, [from, usual, to]: [f64; 3], (source, place): (&'static str, &'static str)) -> Transfer {
    Transfer {
        name,
        usual: HeatTransfer::watts_per_square_metre_kelvin(usual),
        range: Between {
            from: HeatTransfer::watts_per_square_metre_kelvin(from),
            to: HeatTransfer::watts_per_square_metre_kelvin(to),
        },
        source,
        place,
        standing: Standing::FromMemory,
    }
}

const fn published(transfer: Transfer) -> Transfer {
    Transfer { standing: Standing::Published, ..transfer }
}

/// Batter on an oiled griddle: a guess between the published values for meat; wetter and oilier is higher.
pub const GRIDDLE: Transfer =
    transfer("batter on an oiled griddle", [200.0, 300.0, 650.0], ("contact-patty", "by analogy; for batter itself a guess"));
/// A flat piece pressed between two hot plates.
pub const PLATES: Transfer = published(transfer(
    "meat patty between hot plates of 177 to 204 °C",
    [250.0, 400.0, 650.0],
    ("contact-patty", "peaks early, then falls to an asymptote"),
));
/// Cakes in a tunnel oven, convection and radiation together, three quarters of it radiation.
pub const TUNNEL_OVEN: Transfer =
    published(transfer("cake in a tunnel oven, all heat", [20.0, 30.0, 48.0], ("baik-1999", "186 to 225 °C")));
/// A home oven without a fan, convection alone; radiation from its walls comes on top.
pub const STILL_OVEN: Transfer =
    transfer("home oven without a fan, convection alone", [4.0, 7.0, 10.0], ("trade", "15 to 25 in all, less radiation"));
/// A home oven with a fan, convection alone.
pub const FAN_OVEN: Transfer =
    transfer("home oven with a fan, convection alone", [10.0, 20.0, 30.0], ("trade", "25 to 45 in all, less radiation"));
/// Oil while the piece is still cold, or boils no more.
pub const QUIET_OIL: Transfer = published(transfer(
    "oil of 180 °C before and after the vigorous boil",
    [250.0, 300.0, 450.0],
    ("hubbard-farkas-1999", "potato cylinders"),
));
/// Oil stirred by the steam that escapes.
pub const BOILING_OIL: Transfer =
    published(transfer("oil stirred by steam", [600.0, 1100.0, 2000.0], ("hubbard-farkas-1999", "potato cylinders")));
/// Still kitchen air, convection alone.
pub const STILL_AIR: Transfer =
    transfer("still air, convection alone", [6.0, 8.0, 10.0], ("incropera-2007", "ch. 9, free convection"));
/// A covered bowl in a kitchen, convection and radiation together.
pub const COVERED_BOWL: Transfer =
    transfer("covered bowl in still air, all heat", [6.0, 9.0, 12.0], ("incropera-2007", "ch. 9, free convection and radiation"));
/// A tin or box on a fridge shelf.
pub const FRIDGE_SHELF: Transfer =
    transfer("box on a fridge shelf, all heat", [5.0, 8.0, 15.0], ("incropera-2007", "ch. 9; higher with a fan"));

/// All of them.
pub const TRANSFERS: &[Transfer] =
    &[GRIDDLE, PLATES, TUNNEL_OVEN, STILL_OVEN, FAN_OVEN, QUIET_OIL, BOILING_OIL, STILL_AIR, COVERED_BOWL, FRIDGE_SHELF];
