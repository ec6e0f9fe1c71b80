//! The day: everything that is made, counted back from serving.

mod clock;
mod fixed;
mod happened;
mod job;
mod model;
mod order;
mod planning;
mod seen;
pub(crate) mod span;
mod stays;
mod timeline;
mod tries;
mod usual;
mod workplace;

pub use clock::{Away, Why};
pub use fixed::{Begins, Fix, Fixed};
pub use happened::{Happened, Progress, StepName};
pub use job::{Dish, Job, Readies};
pub(crate) use model::FRESH;
pub use model::{AIMS, Want};
pub use order::Follows;
pub(crate) use planning::{Depth, again};
pub use planning::{MOST_JOBS, timeline};
pub use seen::{Learnt, Seen, Unused, What};
pub use span::{Span, Told};
pub use stays::{Space, Stay, Until};
pub use timeline::{Against, Entry, HowFar, Left, Refusal, Timeline, Unmet, Wanted};
pub use tries::{Tries, tries};
pub use usual::usual;
pub use workplace::{Station, Workplace};
