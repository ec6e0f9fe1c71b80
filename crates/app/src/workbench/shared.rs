//! What was worked out of a book: once for everyone who looks at it, as long as what it rests on stands.

use super::answer::Refusal;
use maud::{Markup, PreEscaped};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// Answers to questions, each with a mark of what it rests on.
#[derive(Default)]
pub struct WorkedOut(Mutex<BTreeMap<String, Arc<Mutex<Option<String>>>>>);

/// So many answers are kept; rooms and hours are typed letter by letter.
const MOST: usize = 256;

impl WorkedOut {
    /// The answer to a question, worked out by whoever asks first; others wait for it. What is refused is worked out
    /// anew.
    pub fn once(&self, question: String, work: impl FnOnce() -> Result<Markup, Refusal>) -> Result<Markup, Refusal> {
        let slot = self.slot(question);
        let mut answer = slot.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(known) = &*answer {
            return Ok(PreEscaped(known.clone()));
        }
        let made = work()?;
        *answer = Some(made.0.clone());
        Ok(made)
    }

    fn slot(&self, question: String) -> Arc<Mutex<Option<String>>> {
        let mut answers = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if answers.len() >= MOST {
            answers.clear();
        }
        Arc::clone(answers.entry(question).or_default())
    }
}
