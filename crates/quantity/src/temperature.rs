//! A temperature and a temperature difference, which are two different things.

use crate::define::arithmetic;

/// A temperature, stored in degree Celsius.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// Absolute zero.
    pub const ABSOLUTE_ZERO: Self = Self(-273.15);

    /// So many degrees Celsius.
    #[must_use]
    pub const fn celsius(value: f64) -> Self {
        Self(value)
    }
    /// So many degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(value: f64) -> Self {
        Self((value - 32.0) * 5.0 / 9.0)
    }
    /// So many kelvin.
    #[must_use]
    pub const fn kelvins(value: f64) -> Self {
        Self(value - 273.15)
    }
    /// The value in degrees Celsius.
    #[must_use]
    pub const fn as_celsius(self) -> f64 {
        self.0
    }
    /// The value in degrees Fahrenheit.
    #[must_use]
    pub const fn as_fahrenheit(self) -> f64 {
        self.0 * 9.0 / 5.0 + 32.0
    }
    /// The value in kelvin.
    #[must_use]
    pub const fn as_kelvins(self) -> f64 {
        self.0 + 273.15
    }
    /// Whether the value is an ordinary number.
    #[must_use]
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }
}

/// How much warmer one thing is than another, stored in kelvin. It converts without the 32.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct TemperatureDifference(f64);

impl TemperatureDifference {
    /// So many kelvin, which are degrees Celsius of difference.
    #[must_use]
    pub const fn kelvins(value: f64) -> Self {
        Self(value)
    }
    /// So many degrees Fahrenheit of difference.
    #[must_use]
    pub const fn fahrenheit_degrees(value: f64) -> Self {
        Self(value * 5.0 / 9.0)
    }
    /// The value in kelvin.
    #[must_use]
    pub const fn as_kelvins(self) -> f64 {
        self.0
    }
    /// The value in degrees Fahrenheit of difference.
    #[must_use]
    pub const fn as_fahrenheit_degrees(self) -> f64 {
        self.0 * 9.0 / 5.0
    }
}

arithmetic!(TemperatureDifference);

impl std::ops::Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
}

impl std::ops::Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, difference: TemperatureDifference) -> Self {
        Self(self.0 + difference.0)
    }
}

impl std::ops::Sub<TemperatureDifference> for Temperature {
    type Output = Self;
    fn sub(self, difference: TemperatureDifference) -> Self {
        Self(self.0 - difference.0)
    }
}
