//! Paper: what is to be printed, already put into words by others, set in type as a tagged PDF.
//!
//! Texts reach the forms as data and never as markup, whatever they hold. The same words give the same bytes.

mod press;
mod sheet;
mod size;

pub use press::{Fault, labels, pdf};
pub use sheet::Sheet;
pub use size::Size;

/// What is printed; each is a form of its own in `forms/`, filled from data.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A recipe card for the kitchen.
    Card,
    /// A formula sheet for professionals.
    Sheet,
    /// A day's list of what to do.
    Prep,
    /// Labels on a sheet of them.
    Labels,
}

impl Form {
    /// Every form that fills paper of any size.
    pub const ALL: [Self; 3] = [Self::Card, Self::Sheet, Self::Prep];

    /// The form's own text: how it is set.
    const fn text(self) -> &'static str {
        match self {
            Self::Card => include_str!("../forms/card.typ"),
            Self::Sheet => include_str!("../forms/sheet.typ"),
            Self::Prep => include_str!("../forms/prep.typ"),
            Self::Labels => include_str!("../forms/labels.typ"),
        }
    }
}
