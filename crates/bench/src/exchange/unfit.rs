//! Why an exchange cannot be made, and what the formula has instead.

use formula::ingredient::{did_you_mean, nearest};
use std::fmt;

/// Why an exchange cannot be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unfit {
    /// There is no exchange of that name.
    NoSuchExchange(String),
    /// The formula has nothing that it could be made with: what is wanted, and what there is.
    Nothing {
        /// What the exchange needs.
        wanted: String,
        /// What the formula has.
        has: Vec<String>,
    },
    /// Several fit: which is meant?
    Which {
        /// What is asked.
        wanted: String,
        /// The names that fit, each with its stage.
        fitting: Vec<String>,
    },
    /// The exchange must be told something, or told otherwise: what, and how it is said.
    NotSaid(&'static str, String),
    /// No ingredient has that name; the nearest one that has.
    NoSuchIngredient(String, Option<String>),
    /// The trade does not allow it here, and why.
    NotSo(String),
    /// The changed text would have a fault.
    Broken(String),
    /// A line would not weigh what it should.
    NotBalanced(String),
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchExchange(name) => write!(f, "there is no exchange called “{name}”"),
            Self::Nothing { wanted, .. } => write!(f, "the formula has no {wanted}"),
            Self::Which { wanted, .. } => write!(f, "which {wanted}?"),
            Self::NotSaid(option, _) => write!(f, "the exchange needs {option}"),
            Self::NoSuchIngredient(name, _) => write!(f, "no ingredient is called “{name}”"),
            Self::NotSo(why) => f.write_str(why),
            Self::Broken(fault) => write!(f, "the changed text would have a fault: {fault}"),
            Self::NotBalanced(line) => write!(f, "the changed text would not keep the weight of “{line}”"),
        }
    }
}

impl Unfit {
    /// What to do about it, if there is something to say.
    #[must_use]
    pub fn hint(&self) -> String {
        match self {
            Self::NoSuchExchange(name) => {
                let names: Vec<&str> = super::ALL.iter().map(|one| one.name).collect();
                let near = nearest(name, names.iter().copied());
                let near = near.map(|near| did_you_mean(near) + " ").unwrap_or_default();
                format!("{near}there are: {}", names.join(", "))
            }
            Self::Nothing { has, .. } if has.is_empty() => "it has no lines at all".to_owned(),
            Self::Nothing { has, .. } => format!("it has: {}", has.join(", ")),
            Self::Which { fitting, .. } => {
                format!("say --of with one of: {}; where the name stands twice, --stage too", fitting.join(", "))
            }
            Self::NotSaid(_, how) => how.clone(),
            Self::NoSuchIngredient(_, Some(near)) => did_you_mean(near),
            Self::NoSuchIngredient(_, None) => "`wellproved ingredients WORD` finds names".to_owned(),
            Self::Broken(_) | Self::NotBalanced(_) => {
                "the text is written in a way this exchange cannot follow: change it by hand".to_owned()
            }
            Self::NotSo(_) => String::new(),
        }
    }
}
