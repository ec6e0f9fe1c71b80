//! Sentences that an author wrote: where they stand, what they claim, and whether they deny it.

use super::Case;
use super::case::plain;
use formula::{Formula, Place};

/// A sentence in small letters, with the place of the text it stands in.
#[derive(Clone)]
pub struct Sentence {
    /// Its words.
    pub words: String,
    /// Where the text stands.
    pub place: Place,
}

const DENIALS: [&str; 10] = ["not ", "never", "n't", "no one", "keep ", "away", "without", "avoid", "nor ", "cannot"];

impl Sentence {
    /// Whether it warns or denies.
    #[must_use]
    pub fn denies(&self) -> bool {
        DENIALS.iter().any(|word| self.words.contains(word))
    }

    /// Whether it holds one of these words as whole words.
    #[must_use]
    pub fn says(&self, words: &[&str]) -> bool {
        words.iter().any(|word| holds_word(&self.words, word))
    }
}

/// Whether a text holds a phrase that no letter or hyphen lengthens on either side.
#[must_use]
pub fn holds_word(text: &str, word: &str) -> bool {
    let is_inside = |c: char| c.is_alphanumeric() || c == '-';
    let (letters, wanted) = (text.as_bytes(), word.as_bytes());
    let Some(first) = wanted.first() else { return false };
    // Words and sentences are short: looking at each letter costs less than preparing a search.
    let begins = letters.iter().enumerate().filter(|(at, letter)| *letter == first && letters[*at..].starts_with(wanted));
    begins.map(|(at, _)| at).any(|at| {
        let (before, after) = (&text[..at], &text[at + word.len()..]);
        !before.chars().next_back().is_some_and(is_inside) && !after.chars().next().is_some_and(is_inside)
    })
}

/// The head's texts, sentence by sentence: title, intro, tags, notes, storage.
#[must_use]
pub fn head(formula: &Formula) -> Vec<Sentence> {
    let places = &formula.head.places;
    let mut all = Vec::new();
    let mut add = |text: &str, span: &std::ops::Range<usize>| part(text, &formula.place(span), &mut all);
    add(&formula.head.title, &places.title);
    add(&formula.head.intro, &places.intro);
    formula.head.tags.iter().zip(&places.tags).for_each(|(tag, span)| add(tag, span));
    formula.head.notes.iter().zip(&places.notes).for_each(|(note, span)| add(note, span));
    add(formula.head.storage.as_deref().unwrap_or_default(), &places.storage);
    all
}

/// All texts, those of steps included.
#[must_use]
pub fn all(case: &Case) -> Vec<Sentence> {
    case.head.iter().cloned().chain(case.formula.steps().flat_map(|(_, step)| of_step(step))).collect()
}

/// Parts a text into sentences.
fn part(text: &str, place: &Place, all: &mut Vec<Sentence>) {
    let sentences = text.split_inclusive(['.', '!', '?', ';', '\n']).filter(|sentence| !sentence.trim().is_empty());
    all.extend(sentences.map(|sentence| Sentence { words: sentence.trim().to_lowercase(), place: place.clone() }));
}

/// The sentences of one step.
#[must_use]
pub fn of_step(step: &formula::Step) -> Vec<Sentence> {
    let mut all = Vec::new();
    part(&plain(&step.words), &step.place, &mut all);
    all
}
