//! Stages of a cook on a griddle, in an oven and in hot oil, and a griddle cook as a range.

use super::cook::{Cook, Piece, Stage, cook, course};
use super::surroundings::{BOILING_OIL, QUIET_OIL, STILL_AIR, Transfer};
use super::{Face, Surroundings};
use quantity::{Between, Fraction, HeatTransfer, Temperature, TimeSpan};

/// The emissivity of batter, crumb and crust, as of most things that are no metal.
pub const EMISSIVITY: Fraction = Fraction::ratio(0.9);

/// The air of a kitchen about a pan.
#[must_use]
pub const fn kitchen(air: Temperature) -> Surroundings {
    Surroundings { air, walls: air, convection: STILL_AIR.usual, emissivity: EMISSIVITY, humidity: Fraction::ratio(0.5) }
}

/// The hot, dry air and walls of an oven; `convection` leaves out radiation, which is added.
#[must_use]
pub const fn oven(air: Temperature, convection: HeatTransfer) -> Surroundings {
    Surroundings { air, walls: air, convection, emissivity: EMISSIVITY, humidity: Fraction::ZERO }
}

/// Returns the stages of a piece that lies on one side after the other, flipped between, then rests in air.
#[must_use]
pub fn turned(hot: Face, open: Surroundings, sides: &[TimeSpan], rest: TimeSpan) -> Vec<Stage> {
    let open = Face::Open(open);
    let side = |(turn, lasts): (usize, &TimeSpan)| {
        let (below, above) = if turn % 2 == 0 { (hot, open) } else { (open, hot) };
        Stage { lasts: *lasts, below, above }
    };
    let mut stages: Vec<_> = sides.iter().enumerate().map(side).collect();
    stages.push(Stage { lasts: rest, below: open, above: open });
    stages
}

/// Returns the stages of a slab in a tin: the tin's metal passes on what the oven gives, the top is open.
#[must_use]
pub fn baked(oven: Surroundings, tin: HeatTransfer, lasts: TimeSpan) -> Vec<Stage> {
    let below = Face::Contact { transfer: tin, against: oven.walls };
    vec![Stage { lasts, below, above: Face::Open(oven) }]
}

/// Returns the stages of a piece wholly in oil, which is quiet, stirred by steam, and quiet again, a third
/// of the time each: the thirds are a guess. For a slab below and above, for a round piece outside.
#[must_use]
pub fn immersed(oil: Temperature, lasts: TimeSpan) -> Vec<Stage> {
    immersed_by(oil, lasts, |transfer| transfer.usual)
}

/// Returns the same stages with another coefficient of each range than the usual one.
#[must_use]
pub fn immersed_by(oil: Temperature, lasts: TimeSpan, coefficient: impl Fn(&Transfer) -> HeatTransfer) -> Vec<Stage> {
    let stage = |transfer: &Transfer| {
        let face = Face::Contact { transfer: coefficient(transfer), against: oil };
        Stage { lasts: lasts / 3.0, below: face, above: face }
    };
    [&QUIET_OIL, &BOILING_OIL, &QUIET_OIL].map(stage).to_vec()
}

/// A griddle and what is done on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Griddle {
    /// The temperature of its surface.
    pub surface: Temperature,
    /// How readily it gives heat to the piece.
    pub transfer: Transfer,
    /// How long each side lies on it.
    pub sides: Vec<TimeSpan>,
    /// How long the piece rests in air afterwards.
    pub rest: TimeSpan,
    /// The air above.
    pub air: Surroundings,
}

impl Griddle {
    /// The stages with one coefficient of the range.
    #[must_use]
    pub fn stages(&self, transfer: HeatTransfer) -> Vec<Stage> {
        turned(Face::Contact { transfer, against: self.surface }, self.air, &self.sides, self.rest)
    }
}

/// A griddle cook as a range: never a single figure.
#[derive(Debug)]
pub struct Foreseen {
    /// With the usual coefficient, beside its lower bound by conduction alone.
    pub usual: Cook,
    /// The core's temperature when it leaves the griddle, over the ranges of the contact and of the pores.
    pub core: Between<Temperature>,
}

/// What the reader is told beside every verdict.
pub const PROBE: &str = "a model, not a measurement: probe the middle of one piece and go by that reading";

/// Returns a griddle cook with the range in which the core may be when it leaves the griddle.
///
/// The range runs from the poorest contact with pure conduction to the best contact with saturated
/// bubbles. It asks for one probe reading, see [`PROBE`].
#[must_use]
pub fn foresee(piece: &Piece, griddle: &Griddle) -> Foreseen {
    let off = griddle.sides.iter().copied().sum();
    let corner = |saturation: Fraction, transfer: HeatTransfer| {
        let course = course(&Piece { saturation, ..*piece }, &griddle.stages(transfer));
        course.core_at(off).unwrap_or(piece.start)
    };
    Foreseen {
        usual: cook(piece, &griddle.stages(griddle.transfer.usual)),
        core: Between {
            from: corner(Fraction::ZERO, griddle.transfer.range.from),
            to: corner(Fraction::WHOLE, griddle.transfer.range.to),
        },
    }
}
