//! A step as a trial calls it: by its action, and by a number where a stage has several of that action.

use crate::read::Action;

/// A step of a stage: "bake", and "bake-2" for the stage's second one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct StepSeen {
    /// What is done.
    pub action: Action,
    /// Which of the stage's steps of that action it is, from one.
    pub number: usize,
}

impl From<Action> for StepSeen {
    fn from(action: Action) -> Self {
        Self { action, number: 1 }
    }
}

impl StepSeen {
    /// What the word stands for; the first step has no number.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        if let Some(action) = Action::named(word) {
            return Some(action.into());
        }
        let (action, number) = word.rsplit_once('-')?;
        let number =
            number.parse().ok().filter(|number: &usize| *number > 1 && number.to_string() == word[action.len() + 1..])?;
        Some(Self { action: Action::named(action)?, number })
    }

    /// The word for it.
    #[must_use]
    pub fn word(self) -> String {
        let word = self.action.word();
        if self.number > 1 { format!("{word}-{}", self.number) } else { word.to_owned() }
    }
}
