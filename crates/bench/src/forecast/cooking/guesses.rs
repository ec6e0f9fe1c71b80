//! The band that guesses leave to the middle: how readily heat arrives, and how far the pores keep saturated.
//!
//! The two are independent, so that the worst of both at once is no forecast. Each is moved alone by its standard
//! uncertainty, the other as usual; what the middle then differs by is combined by the root of the sum of the squares
//! (JCGM 100:2008, the GUM, 5.1.2 with 5.1.3 note 2), and widened from a standard deviation to 5 to 95 %. Below and above
//! the usual figure count apart, because a middle that boils gets no hotter.

use super::moist;
use crate::forecast::BAND;
use quantity::{Between, Fraction, HeatTransfer, Temperature, TemperatureDifference};
use science::heat::surroundings::Transfer;

/// Pores keep saturated anywhere from not at all to wholly, where nobody knows better.
pub const ANY: Between<Fraction> = Between { from: Fraction::ZERO, to: Fraction::WHOLE };

/// At which end of a guess a piece is cooked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// Heat goes in less readily than usual.
    Poor,
    /// Heat goes in more readily than usual.
    Good,
}

impl End {
    /// That end of a range.
    pub fn of<T>(self, range: Between<T>) -> T {
        match self {
            Self::Poor => range.from,
            Self::Good => range.to,
        }
    }

    /// A coefficient off its usual figure by its standard uncertainty: its range is taken as a band of 5 to 95 %, and
    /// coefficients scatter by factors.
    pub fn contact(self, transfer: &Transfer) -> HeatTransfer {
        transfer.usual * libm::pow(self.of(transfer.range) / transfer.usual, 1.0 / BAND)
    }

    /// How far pores keep saturated, off the usual by its standard uncertainty: anywhere in the range alike, which is
    /// half its width by the root of three (the GUM, 4.3.7).
    pub fn pores(self, usual: Fraction, range: Between<Fraction>) -> Fraction {
        let (usual, end) = (usual.as_ratio(), self.of(range).as_ratio());
        Fraction::ratio(usual + (end - usual) / libm::sqrt(3.0))
    }
}

/// The band of the middle; `alone` gives it with each guess alone at an end. The water in a middle caps it at the boil.
pub fn band(usual: Temperature, boils: Temperature, alone: impl Fn(End) -> [Temperature; 2]) -> (Temperature, Temperature) {
    let off = |end: End| {
        let each = alone(end).map(|core| moist(core, boils).as_celsius() - usual.as_celsius());
        let counted = each.map(|off| if end == End::Poor { off.min(0.0) } else { off.max(0.0) });
        TemperatureDifference::kelvins(BAND * libm::hypot(counted[0], counted[1]))
    };
    // Nothing is to be gained where it boils already, and a cook takes its time to work out.
    let above = if usual >= boils { usual } else { moist(usual + off(End::Good), boils) };
    (usual - off(End::Poor), above)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOILS: Temperature = Temperature::celsius(100.0);

    fn told(usual: f64, poor: [f64; 2], good: [f64; 2]) -> (f64, f64) {
        let ends = |end: End| if end == End::Poor { poor } else { good }.map(Temperature::celsius);
        let (from, to) = band(Temperature::celsius(usual), BOILS, ends);
        (from.as_celsius(), to.as_celsius())
    }

    /// Two contributions of 3 and 4 make 5 (the GUM, 5.1.2, in the smallest whole numbers), widened by 1.645.
    #[test]
    fn independent_guesses_add_by_their_squares() {
        let (from, to) = told(80.0, [77.0, 76.0], [84.0, 83.0]);
        assert!((from - (80.0 - 5.0 * 1.645)).abs() < 1e-9 && (to - (80.0 + 5.0 * 1.645)).abs() < 1e-9, "{from} to {to}");
    }

    /// A guess that changes nothing leaves the other's band, and no band is wider than both laid end to end.
    #[test]
    fn a_guess_alone_keeps_its_own_band() {
        let (from, to) = told(80.0, [70.0, 80.0], [80.0, 82.0]);
        assert!((from - (80.0 - 16.45)).abs() < 1e-9 && (to - 83.29).abs() < 1e-9, "{from} to {to}");
    }

    /// A middle that boils gets no hotter, whatever is guessed.
    #[test]
    fn nothing_passes_the_boil() {
        assert_eq!(told(100.0, [100.0, 104.0], [109.0, 109.0]), (100.0, 100.0));
        assert_eq!(told(99.0, [99.0, 99.0], [109.0, 109.0]).1, 100.0);
    }

    /// The standard uncertainty of a rectangle is its width by the root of twelve (the GUM, 4.3.7, equation 7); 1.645 of
    /// them take a coefficient to the end of its range.
    #[test]
    fn guesses_move_by_their_standard_uncertainty() {
        let whole = Between { from: Fraction::ZERO, to: Fraction::WHOLE };
        let usual = Fraction::ratio(0.5);
        let spread = (End::Good.pores(usual, whole) - End::Poor.pores(usual, whole)).as_ratio() / 2.0;
        assert!((spread - 1.0 / libm::sqrt(12.0)).abs() < 1e-12);
        let griddle = &science::heat::surroundings::GRIDDLE;
        let moved = End::Poor.contact(griddle) / griddle.usual;
        assert!((libm::pow(moved, 1.645) - griddle.range.from / griddle.usual).abs() < 1e-12);
    }
}
