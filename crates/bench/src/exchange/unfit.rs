//! Why an exchange cannot be made or a target not be reached, and what the formula has instead.

use formula::ingredient::did_you_mean;
use std::fmt;

/// Why an exchange cannot be made or a target not be reached.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unfit {
    /// There is no exchange of that name.
    NoSuchExchange(String),
    /// There is no target of that name.
    NoSuchTarget(String),
    /// The formula has nothing that it could be made with: what is wanted, and what there is.
    Nothing {
        /// What is needed.
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
    /// Several stages fit: which is meant?
    WhichStage {
        /// What is asked.
        wanted: String,
        /// The names of the stages that fit.
        fitting: Vec<String>,
    },
    /// It must be told something, or told otherwise: what, and how it is said.
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
            Self::NoSuchTarget(name) => write!(f, "there is no target called “{name}”"),
            Self::Nothing { wanted, .. } => write!(f, "the formula has no {wanted}"),
            Self::Which { wanted, .. } | Self::WhichStage { wanted, .. } => write!(f, "which {wanted}?"),
            Self::NotSaid(option, _) => write!(f, "it needs {option}"),
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
            Self::NoSuchExchange(name) => listed(name, super::ALL.iter().map(|one| one.name)),
            Self::NoSuchTarget(name) => listed(name, crate::target::ALL.iter().map(|one| one.name)),
            Self::Nothing { has, .. } if has.is_empty() => "it has no lines at all".to_owned(),
            Self::Nothing { has, .. } => format!("it has: {}", has.join(", ")),
            Self::Which { fitting, .. } => {
                format!("say --of with one of: {}; where the name stands twice, --stage too", fitting.join(", "))
            }
            Self::WhichStage { fitting, .. } => format!("say --stage with one of: {}", fitting.join(", ")),
            Self::NotSaid(_, how) => how.clone(),
            Self::NoSuchIngredient(_, Some(near)) => did_you_mean(near),
            Self::NoSuchIngredient(_, None) => "`wellproved ingredients WORD` finds names".to_owned(),
            Self::Broken(_) | Self::NotBalanced(_) => {
                "the text is written in a way that cannot be followed here: change it by hand".to_owned()
            }
            Self::NotSo(_) => String::new(),
        }
    }
}

fn listed(name: &str, all: impl Iterator<Item = &'static str>) -> String {
    let names: Vec<&str> = all.collect();
    let near = formula::ingredient::nearest(name, names.iter().copied());
    let near = near.map(|near| format!("did you mean “{near}”? ")).unwrap_or_default();
    format!("{near}there are: {}", names.join(", "))
}
