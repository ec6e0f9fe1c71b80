//! Days of the demo book.
#![allow(clippy::disallowed_methods, reason = "tests read the demo book from the disk")]

mod again;
mod alternatives;
mod brunch;
mod checker;
mod dates;
mod demo;
mod fixed;
mod held;
mod hours;
mod relief;
mod room;
mod seen;
