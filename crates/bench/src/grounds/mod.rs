//! What a computed figure rests on: the equation by its name, where it comes from, and how well it is founded.

pub mod by;

pub use by::By;
use science::{Equation, Standing};

/// What an equation rests on.
#[derive(Clone, Copy, Debug)]
pub struct Grounds {
    /// The equation's name, as `docs/equations.md` lists it.
    pub equation: &'static str,
    /// Author, title and year of its source.
    pub citation: &'static str,
    /// How well it is founded, as a sentence.
    pub standing: &'static str,
}

/// The grounds of an equation; none where a figure rests on something else, such as the formula itself.
#[must_use]
pub fn grounds(equation: &str) -> Option<Grounds> {
    let found: &'static Equation = science::equations().into_iter().find(|one| one.name == equation)?;
    let standing = match found.standing {
        Standing::Published => "The equation is as its source prints it.",
        Standing::Fitted => {
            "The equation is published; constants of it are fitted to published observations, so take the band seriously."
        }
        Standing::CommonPractice => "It is a custom of the trade without a citable source.",
        Standing::FromMemory => "It is quoted from memory; the source could not be seen.",
    };
    Some(Grounds { equation: found.name, citation: science::source::citation_of(found.source).unwrap_or(found.source), standing })
}
