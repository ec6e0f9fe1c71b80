//! The baker's arithmetic: overall formula, percentages, hydration, scaling, losses, blends.

mod weighed;
mod overall;
pub mod figures;
mod scale;
mod losses;
mod flours;
mod whole_eggs;
mod mixture;

pub use figures::{figures, Figures, Missing};
pub use flours::{blended_protein, two_flours, FlourFault};
pub use losses::{chain, needed};
pub use mixture::{mixture, Mixture};
pub use overall::{overall, Overall, Row, RowKind};
pub use scale::{factor, scaled, ScaleFault, Target};
pub use weighed::{blend, weighed, Weighed};
pub use whole_eggs::{whole_eggs, EggChoice};
