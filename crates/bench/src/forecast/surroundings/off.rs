//! How far one of many kitchens is off what is said of it.

use quantity::{Fraction, HeatTransfer, TemperatureDifference};
use science::heat::cook::{SATURATION, USUAL_SATURATION};
use science::heat::surroundings::Transfer;

/// What a kitchen is off by; nought for the kitchen itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Off {
    /// Where things stand warm.
    pub room: TemperatureDifference,
    /// Where they stand cold.
    pub fridge: TemperatureDifference,
    /// What comes from the bowl.
    pub bowl: TemperatureDifference,
    /// How hot pans, fat and ovens are.
    pub heat: TemperatureDifference,
    /// How heat passes into pieces, in standard deviations.
    pub contact: f64,
    /// How far pores keep saturated, in standard deviations.
    pub pores: f64,
}

/// The width of a 5 to 95 % band in standard deviations.
const BAND: f64 = 2.0 * crate::forecast::BAND;

impl Off {
    /// A coefficient as far off its usual figure as this kitchen is, its range taken as a band of 5 to 95 %.
    #[must_use]
    pub fn of_transfer(&self, transfer: &Transfer) -> HeatTransfer {
        transfer.usual * libm::exp(self.contact * libm::log(transfer.range.to / transfer.range.from) / BAND)
    }

    /// How far pores keep saturated: the range is taken as a band of 5 to 95 %, below the usual and above it, and ends there.
    #[must_use]
    pub fn saturation(&self) -> Fraction {
        let usual = USUAL_SATURATION.as_ratio();
        let end = if self.pores < 0.0 { SATURATION.from } else { SATURATION.to };
        let off = (end.as_ratio() - usual).abs() * self.pores * 2.0 / BAND;
        Fraction::ratio((usual + off).clamp(SATURATION.from.as_ratio(), SATURATION.to.as_ratio()))
    }
}
