//! Trials as they are logged: what is expected beside what is to be noted, what was noted with its corrections, and trials
//! side by side.

mod beside;
mod bowl;
mod expected;
mod followed;
mod report;
mod shown;
mod words;

pub use beside::{Beside, Plate, Row};
pub use bowl::{Level, planned};
pub use expected::{Expected, Moment, Weight, expected};
pub use followed::{Followed, followed, followed_json};
pub use shown::{Change, Shown, is_same_figure};
pub use words::{called, in_words, key_called};
