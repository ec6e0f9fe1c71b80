//! Questions asked backwards: how much yeast makes it ripe, or risen, after so long.

mod yeast;

pub use yeast::{Dose, NoDose, When, yeast_for};
