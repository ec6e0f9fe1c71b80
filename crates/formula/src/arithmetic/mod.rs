//! The baker's arithmetic: overall formula, percentages, hydration, scaling, losses, blends.

mod at_hand;
pub mod figures;
mod flours;
mod losses;
mod mixture;
mod overall;
mod scale;
mod weighed;
mod whole_eggs;

pub use at_hand::at_hand;
pub use figures::{Counted, Figures, Missing, figures};
pub use flours::{FlourFault, blended_protein, two_flours};
pub use losses::{chain, needed};
pub use mixture::{Mixture, mixture};
pub use overall::{Overall, Row, RowKind, overall, overall_of};
pub use scale::{ScaleFault, Scaled, Target, factor, scaled, scaled_to};
pub use weighed::{Weighed, blend, weighed};
pub use whole_eggs::{EggChoice, whole_eggs};
