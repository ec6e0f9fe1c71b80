//! What logged trials teach of a kitchen: the vigour of its leavens, how its doughs follow the room, the friction of
//! its mixer and the contact of its griddle.
//!
//! Each trial is foreseen as it was done and fitted by itself; what the trials say is then put together with what was
//! known before them. Nothing is dropped in silence: a trial that is out of line counts, and is asked about.

mod as_done;
mod beside;
mod drift;
mod fit;
mod knowledge;
mod lessons;
mod observation;
mod observed;
mod parameter;
mod slip;

pub use as_done::as_done;
pub use beside::{Outcome, beside};
pub use drift::{Drift, drift};
pub use knowledge::{Evidence, OUT_OF_LINE, strangeness, taught};
pub use lessons::{Compared, Errors, Lesson, Lessons, Seen, learn};
pub use observation::{Observation, Outlook, What};
pub use observed::{Observed, Saw, Untold, foreseen_anew};
pub use parameter::Parameter;
pub use slip::Question;

use formula::Formula;
use formula::read::{Kitchen, Trial};

/// A trial with the formula that was baked and the kitchen it was baked in.
#[derive(Clone, Debug)]
pub struct Logged<'t> {
    /// What was seen.
    pub trial: &'t Trial,
    /// The formula, worked out.
    pub formula: &'t Formula,
    /// The kitchen.
    pub kitchen: Kitchen,
}
