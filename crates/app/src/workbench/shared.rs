//! What was worked out of a book as it stands: once for everyone who looks at it, until the book is another.

use super::answer::Refusal;
use crate::book::Opened;
use maud::{Markup, PreEscaped};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// Answers to questions about one reading of the book.
#[derive(Debug, Default)]
pub struct WorkedOut(Mutex<Answers>);

#[derive(Default)]
struct Answers {
    of: Option<Arc<Opened>>,
    by_question: BTreeMap<String, Arc<Mutex<Option<String>>>>,
}

impl std::fmt::Debug for Answers {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Answers").field("questions", &self.by_question.len()).finish_non_exhaustive()
    }
}

/// So many answers are kept; rooms and hours are typed letter by letter.
const MOST: usize = 256;

impl WorkedOut {
    /// The answer to a question about the book, worked out by whoever asks first; others wait for it. What is refused
    /// is worked out anew.
    pub fn once(
        &self,
        opened: &Arc<Opened>,
        question: String,
        work: impl FnOnce() -> Result<Markup, Refusal>,
    ) -> Result<Markup, Refusal> {
        let slot = self.slot(opened, question);
        let mut answer = slot.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = &*answer {
            return Ok(PreEscaped(known.clone()));
        }
        let made = work()?;
        *answer = Some(made.0.clone());
        Ok(made)
    }

    fn slot(&self, opened: &Arc<Opened>, question: String) -> Arc<Mutex<Option<String>>> {
        let mut answers = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let is_of_it = answers.of.as_ref().is_some_and(|of| Arc::ptr_eq(of, opened));
        if !is_of_it || answers.by_question.len() >= MOST {
            *answers = Answers { of: Some(Arc::clone(opened)), by_question: BTreeMap::new() };
        }
        Arc::clone(answers.by_question.entry(question).or_default())
    }
}
