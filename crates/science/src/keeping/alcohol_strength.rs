//! Strength of spirits: density, share by mass and by volume.

use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::alcohol_strength",
    source: "oiml-r22",
    place: "general formula of the density of ethanol and water",
    standing: Standing::Published,
    valid: &[Valid { symbol: "p", unit: "–", from: 0.0, to: 1.0 }, Valid { symbol: "t", unit: "°C", from: -20.0, to: 40.0 }],
};

/// Coefficients of powers 0 to 11 of the share by mass at 20 °C, kg/m³.
const A: [f64; 12] = [
    9.982_012_3e2,
    -1.929_769_495e2,
    3.891_238_958e2,
    -1.668_103_923e3,
    1.352_215_441e4,
    -8.829_278_388e4,
    3.062_874_042e5,
    -6.138_381_234e5,
    7.470_172_998e5,
    -5.478_461_354e5,
    2.234_460_334e5,
    -3.903_285_426e4,
];
/// Coefficients of powers 1 to 6 of the temperature above 20 °C, for water.
const B: [f64; 6] = [-2.061_851_3e-1, -5.268_254_2e-3, 3.613_001_3e-5, -3.895_770_2e-7, 7.169_354e-9, -9.973_923_1e-11];
/// Coefficients of the share's powers 1 to 11 with the temperature's first power.
const C1: [f64; 11] = [
    1.693_443_461_530_087e-1,
    -1.046_914_743_455_169e1,
    7.196_353_469_546_523e1,
    -7.047_478_054_272_792e2,
    3.924_090_430_035_045e3,
    -1.210_164_659_068_747e4,
    2.248_646_550_400_788e4,
    -2.605_562_982_188_164e4,
    1.852_373_922_069_467e4,
    -7.420_201_433_430_137e3,
    1.285_617_841_998_974e3,
];
/// Coefficients of the share's powers 1 to 10 with the temperature's second power.
const C2: [f64; 10] = [
    -1.193_013_005_057_01e-2,
    2.517_399_633_803_461e-1,
    -2.170_575_700_536_993,
    1.353_034_988_843_029e1,
    -5.029_988_758_547_014e1,
    1.096_355_666_577_57e2,
    -1.422_753_946_421_155e2,
    1.080_435_942_856_23e2,
    -4.414_153_236_817_392e1,
    7.442_971_530_188_783,
];
/// Coefficients of the share's powers 1 to 9 with the temperature's third power.
const C3: [f64; 9] = [
    -6.802_995_733_503_803e-4,
    1.876_837_790_289_664e-2,
    -2.002_561_813_734_156e-1,
    1.022_992_966_719_22,
    -2.895_696_483_903_638,
    4.810_060_584_300_675,
    -4.672_147_440_794_683,
    2.458_043_105_903_461,
    -5.411_227_621_436_812e-1,
];
/// Coefficients of the share's powers 1 to 4 with the temperature's fourth power.
const C4: [f64; 4] = [4.075_376_675_622_027e-6, -8.763_058_573_471_11e-6, 6.515_031_360_099_368e-6, -1.515_784_836_987_21e-6];
/// Coefficients of the share's powers 1 and 2 with the temperature's fifth power.
const C5: [f64; 2] = [-2.788_074_354_782_409e-8, 1.345_612_883_493_354e-8];

fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// Returns the density of ethanol and water.
///
/// ```text
/// ρ = Σ A_k·p^(k−1) + Σ B_k·θ^k + Σ Σ C_ik·p^k·θ^i,   θ = t − 20 °C
/// ```
///
/// | symbol | meaning                  | unit  |
/// |--------|--------------------------|-------|
/// | `ρ`    | density                  | kg/m³ |
/// | `p`    | ethanol by mass          | –     |
/// | `t`    | temperature              | °C    |
///
/// Valid for 0 ≤ p ≤ 1 and −20 °C ≤ t ≤ 40 °C; outside, the polynomial runs away. OIML R 22 (1975).
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let spirit = science::keeping::alcohol_strength::density(Fraction::ratio(0.31), Temperature::celsius(13.0));
/// assert_eq!(format!("{:.2}", spirit.as_kilograms_per_cubic_metre()), "956.42");
/// ```
#[must_use]
pub fn density(by_mass: Fraction, at: Temperature) -> Density {
    let (p, theta) = (by_mass.as_ratio(), at.as_celsius() - 20.0);
    let warmth = theta * polynomial(&B, theta);
    let crossed = p
        * theta
        * polynomial(
            &[polynomial(&C1, p), polynomial(&C2, p), polynomial(&C3, p), polynomial(&C4, p), polynomial(&C5, p)],
            theta,
        );
    Density::kilograms_per_cubic_metre(polynomial(&A, p) + warmth + crossed)
}

/// Returns the density of pure ethanol at 20 °C.
///
/// ```
/// let pure = science::keeping::alcohol_strength::pure();
/// assert_eq!(format!("{:.2}", pure.as_kilograms_per_cubic_metre()), "789.24");
/// ```
#[must_use]
pub fn pure() -> Density {
    density(Fraction::WHOLE, Temperature::celsius(20.0))
}

/// Returns the strength by volume at 20 °C from the share by mass: `q = p·ρ(p)/ρ(1)`.
///
/// ```
/// # use quantity::Fraction;
/// let strength = science::keeping::alcohol_strength::by_volume(Fraction::percent(33.30));
/// assert_eq!(format!("{:.1} % vol", strength.as_percent()), "40.0 % vol");
/// ```
#[must_use]
pub fn by_volume(by_mass: Fraction) -> Fraction {
    Fraction::ratio(by_mass.as_ratio() * (density(by_mass, Temperature::celsius(20.0)) / pure()))
}

/// Returns the share by mass from the strength by volume at 20 °C, to 1e-12, by halving; below zero and
/// above the whole it gives the ends.
///
/// ```
/// # use quantity::Fraction;
/// let share = science::keeping::alcohol_strength::by_mass(Fraction::percent(40.0));
/// assert_eq!(format!("{:.2} %", share.as_percent()), "33.30 %");
/// ```
#[must_use]
pub fn by_mass(by_volume_20: Fraction) -> Fraction {
    if by_volume_20.as_ratio().is_nan() {
        return by_volume_20;
    }
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..42 {
        let middle = f64::midpoint(low, high);
        if by_volume(Fraction::ratio(middle)) < by_volume_20 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Fraction::ratio(f64::midpoint(low, high))
}
