//! Numbers that know what they measure: reading "1 1/2 tsp" and printing "23 °C".
//!
//! Values are stored in the trade's plain scale (gram, millilitre, degree Celsius, second,
//! millimetre); other units exist only where a number enters or leaves.

mod between;
mod define;
mod everyday;
mod fraction;
mod measure;
mod money;
mod number;
mod physical;
pub mod print;
mod spoons;
mod temperature;
mod time_span;
mod unit;

pub use between::Between;
pub use everyday::{Area, Count, Density, Length, Mass, Volume};
pub use fraction::Fraction;
pub use measure::{Fault, Measure};
pub use money::{Money, MoneyFault};
pub use number::{NumberFault, read_number};
pub use physical::*;
pub use spoons::SpoonSystem;
pub use temperature::{Temperature, TemperatureDifference};
pub use time_span::TimeSpan;
pub use unit::{Kind, Unit};
