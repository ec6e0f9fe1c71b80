//! The same figures as English writes them, for all that speaks English alone.

use super::ENGLISH;
use crate::{Between, Count, Fraction, Length, Mass, SpoonSystem, Temperature, TimeSpan, Volume};

macro_rules! in_english {
    ($($(#[$doc:meta])* $name:ident($($figure:ident: $kind:ty),+) -> $told:ty;)+) => {
        $($(#[$doc])* #[must_use] pub fn $name($($figure: $kind),+) -> $told { ENGLISH.$name($($figure),+) })+
    };
}

in_english! {
    /// A number with so many decimals, trailing zeros dropped, many digits in groups of three.
    number(value: f64, decimals: usize) -> String;
    /// A mass in gram: "350 g", "7.5 g", "0.86 g".
    mass(value: Mass) -> String;
    /// A mass as a large weight reads best: kilogram from 10 kg on.
    large_mass(value: Mass) -> String;
    /// A mass in ounces, or pounds and ounces from a pound on.
    ounces(value: Mass) -> String;
    /// A volume in millilitre, or litre from 1 l on.
    volume(value: Volume) -> String;
    /// A share in percent with so many decimals.
    percent(value: Fraction, decimals: usize) -> String;
    /// A baker's percentage: two decimals below one percent, else one.
    bakers_percent(value: Fraction) -> String;
    /// A count, with the common fractions as signs: "2", "1½".
    count(value: Count) -> String;
    /// Degrees Celsius: "23 °C", "180–190 °C".
    celsius(range: Between<Temperature>) -> String;
    /// Degrees Fahrenheit to the whole degree, or to the nearest five above 250 °F, as ovens and fat are set.
    fahrenheit(range: Between<Temperature>) -> String;
    /// A time: "45 s", "35 min", "1 h 30 min", "12–18 h", "2 d".
    time(range: Between<TimeSpan>) -> String;
    /// A length in the unit that suits it: "3 mm", "20 cm".
    length(range: Between<Length>) -> String;
    /// A length in inches to the nearest quarter, or eighth below an inch.
    inches(range: Between<Length>) -> String;
    /// The nearest spoon or cup measure a kitchen has, and how far it is off as a share.
    /// None where nothing a spoon can hold comes within a tenth.
    spoons(value: Volume, system: SpoonSystem) -> Option<(String, Fraction)>;
}
