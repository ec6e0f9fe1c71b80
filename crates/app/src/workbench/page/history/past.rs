//! A text of the past: of a revision, after a stroke, or kept aside.

use crate::memory::{aside, told};
use crate::workbench::answer::Refusal;
use store::{Kind, Store, Stroke};

/// Which text of the past.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Past {
    Revision(i64),
    Stroke(i64),
    Aside(i64),
}

impl Past {
    /// The one of that name: "revision-3".
    pub fn named(name: &str) -> Option<Self> {
        let (kind, number) = name.split_once('-')?;
        let number: i64 = number.parse().ok().filter(|number| *number > 0)?;
        match kind {
            "revision" => Some(Self::Revision(number)),
            "stroke" => Some(Self::Stroke(number)),
            "aside" => Some(Self::Aside(number)),
            _ => None,
        }
    }

    /// Its name.
    pub fn name(self) -> String {
        match self {
            Self::Revision(number) => format!("revision-{number}"),
            Self::Stroke(number) => format!("stroke-{number}"),
            Self::Aside(number) => format!("aside-{number}"),
        }
    }

    /// What it is called.
    pub fn in_words(self) -> String {
        match self {
            Self::Revision(number) => format!("Revision {number}"),
            Self::Stroke(number) => format!("What stood after stroke {number}"),
            Self::Aside(number) => format!("Kept aside, {number}"),
        }
    }

    /// What it says.
    pub async fn text(self, store: &Store, formula: &str) -> Result<String, Refusal> {
        let gone = || Refusal::no_such(format!("{} is not among what is remembered.", self.in_words()));
        if let Self::Revision(number) = self {
            return store.text(Kind::Formula, formula, number).await.map_err(|_| gone());
        }
        let stroke = self.stroke(store, formula).await?.ok_or_else(gone)?;
        store.kept(&stroke.after).await.map_err(told)?.ok_or_else(gone)
    }

    async fn stroke(self, store: &Store, formula: &str) -> Result<Option<Stroke>, Refusal> {
        let (name, number) = match self {
            Self::Revision(_) => return Ok(None),
            Self::Stroke(number) => (formula.to_owned(), number),
            Self::Aside(number) => (aside(formula), number),
        };
        let all = store.strokes(Kind::Formula, &name).await.map_err(told)?;
        Ok(all.into_iter().find(|one| one.number == number))
    }

    /// What was kept aside and is taken up is no longer aside.
    pub async fn settle(self, store: &Store, formula: &str) -> Result<(), Refusal> {
        if !matches!(self, Self::Aside(_)) {
            return Ok(());
        }
        let Some(stroke) = self.stroke(store, formula).await? else { return Ok(()) };
        Ok(store.mark(&stroke, true).await.map_err(told)?)
    }
}
