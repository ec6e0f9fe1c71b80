//! The band that guesses leave to the middle: how readily heat arrives, and how far the pores keep saturated.
//!
//! The two are independent, so that the worst of both at once is no forecast. Each is moved alone to the ends of its
//! range, which is taken as 5 to 95 %, the other as usual; what the middle then differs by is combined by the root of the
//! sum of the squares (JCGM 100:2008, the GUM, 5.1.2 with 5.1.3 note 2). Ends, not standard deviations, because a middle
//! that boils gets no hotter and the way down is steep; for the same reason below and above count apart.

use super::moist;
use quantity::{Between, HeatTransfer, Temperature, TemperatureDifference};
use science::heat::cook::{Piece, Stage, course};
use science::heat::course::Course;
use science::heat::surroundings::Transfer;

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

    /// A coefficient at that end.
    pub fn contact(self, transfer: &Transfer) -> HeatTransfer {
        self.of(transfer.range)
    }
}

/// Which ends of a band are worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// Both.
    Both,
    /// The upper one; the band begins at what is usual.
    Upper,
    /// Neither: there is no band.
    Neither,
}

/// A cook as usual, and its lower bound.
#[derive(Debug)]
pub struct Seen {
    /// With vapour in the pores, as far as it keeps saturated.
    pub expected: Course,
    /// By conduction alone.
    pub conduction_only: Course,
}

impl Seen {
    /// Cooks a piece, each way on a core of its own.
    pub fn of(piece: &Piece, stages: &[Stage]) -> Self {
        let (expected, conduction_only) = rayon::join(|| course(piece, stages), || course(&piece.conducting(), stages));
        Self { expected, conduction_only }
    }
}

/// Of a cook whose end alone counts so many moments are kept.
pub const FEW: u16 = 60;

/// What is foreseen of a middle, and where the guesses leave it.
pub struct Told {
    /// By the usual contact, and by conduction alone.
    pub seen: Seen,
    /// The middle by the usual contact.
    pub core: Temperature,
    /// From the least to the most, where that was asked.
    pub band: Option<(Temperature, Temperature)>,
}

/// Cooks as usual and at the ends of the guesses, on as many cores as there are; `alone` gives the middle with each guess
/// alone at an end.
pub fn told(
    boils: Temperature,
    ends: Ends,
    usual: impl FnOnce() -> (Seen, Temperature) + Send,
    alone: impl Fn(End) -> [Temperature; 2] + Sync,
) -> Told {
    let ((seen, core), poor) = rayon::join(usual, || (ends == Ends::Both).then(|| alone(End::Poor)));
    let core = moist(core, boils);
    let band = (ends != Ends::Neither).then(|| band(core, boils, poor, || alone(End::Good)));
    Told { seen, core, band }
}

/// Two middles, each on a core of its own.
pub fn each(one: impl FnOnce() -> Temperature + Send, other: impl FnOnce() -> Temperature + Send) -> [Temperature; 2] {
    rayon::join(one, other).into()
}

/// The band of the middle: the water in a middle caps it at the boil; without a lower end it begins at what is usual.
fn band(
    usual: Temperature,
    boils: Temperature,
    poor: Option<[Temperature; 2]>,
    good: impl FnOnce() -> [Temperature; 2],
) -> (Temperature, Temperature) {
    let off = |end: End, alone: [Temperature; 2]| {
        let each = alone.map(|core| moist(core, boils).as_celsius() - usual.as_celsius());
        let counted = each.map(|off| if end == End::Poor { off.min(0.0) } else { off.max(0.0) });
        TemperatureDifference::kelvins(libm::hypot(counted[0], counted[1]))
    };
    // Nothing is to be gained where it boils already, and a cook takes its time to work out.
    let above = if usual >= boils { usual } else { moist(usual + off(End::Good, good()), boils) };
    (poor.map_or(usual, |poor| usual - off(End::Poor, poor)), above)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOILS: Temperature = Temperature::celsius(100.0);

    fn told(usual: f64, poor: [f64; 2], good: [f64; 2]) -> (f64, f64) {
        let at = |ends: [f64; 2]| ends.map(Temperature::celsius);
        let (from, to) = band(Temperature::celsius(usual), BOILS, Some(at(poor)), || at(good));
        (from.as_celsius(), to.as_celsius())
    }

    /// Two contributions of 3 and 4 make 5 (the GUM, 5.1.2, in the smallest whole numbers).
    #[test]
    fn independent_guesses_add_by_their_squares() {
        let (from, to) = told(80.0, [77.0, 76.0], [84.0, 83.0]);
        assert!((from - 75.0).abs() < 1e-9 && (to - 85.0).abs() < 1e-9, "{from} to {to}");
    }

    /// A guess that changes nothing leaves the other's band, and no band is wider than both laid end to end.
    #[test]
    fn a_guess_alone_keeps_its_own_band() {
        let (from, to) = told(80.0, [70.0, 80.0], [80.0, 82.0]);
        assert!((from - 70.0).abs() < 1e-9 && (to - 82.0).abs() < 1e-9, "{from} to {to}");
    }

    /// A middle that boils gets no hotter, whatever is guessed.
    #[test]
    fn nothing_passes_the_boil() {
        assert_eq!(told(100.0, [100.0, 104.0], [109.0, 109.0]), (100.0, 100.0));
        assert_eq!(told(99.0, [99.0, 99.0], [109.0, 109.0]).1, 100.0);
    }
}
