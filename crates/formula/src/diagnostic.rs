//! What is wrong, where, and what to do about it.

use crate::source::MOST_TOLD;
use std::ops::Range;
use std::sync::Arc;

/// A stretch of a file's text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The file, as named in the book.
    pub file: Arc<str>,
    /// The bytes concerned.
    pub span: Range<usize>,
}

/// How bad it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// It could be better.
    Advice,
    /// It is likely wrong.
    Warning,
    /// It cannot be computed.
    Error,
}

impl Severity {
    /// The word for it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Advice => "advice",
            Self::Warning => "warning",
            Self::Error => "error",
        }
    }
}

/// One replacement in a file's text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edit {
    /// What is replaced.
    pub place: Place,
    /// What stands there afterwards.
    pub text: String,
}

/// A change that would mend a fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// What it does, as an instruction.
    pub title: String,
    /// The replacements, which do not overlap.
    pub edits: Vec<Edit>,
}

/// One thing that is wrong at one place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    /// A readable phrase that names the fault, such as `unknown-ingredient`.
    pub code: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// Where in the text.
    pub place: Place,
    /// What is wrong, with the figures.
    pub message: String,
    /// What to do.
    pub hint: Option<String>,
    /// A change that would mend it.
    pub fix: Option<Fix>,
}

impl Diagnostic {
    /// The same with what to do.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    /// The same with a replacement of the marked text that would mend it.
    #[must_use]
    pub fn replace_with(mut self, title: impl Into<String>, text: impl Into<String>) -> Self {
        let edit = Edit { place: self.place.clone(), text: text.into() };
        self.fix = Some(Fix { title: title.into(), edits: vec![edit] });
        self
    }

    /// The same with a change elsewhere that would mend it.
    #[must_use]
    pub fn mended_by(mut self, title: impl Into<String>, edit: Edit) -> Self {
        self.fix = Some(Fix { title: title.into(), edits: vec![edit] });
        self
    }

    /// Whether it is a fault, which advice is not.
    #[must_use]
    pub fn is_fault(&self) -> bool {
        self.severity > Severity::Advice
    }
}

/// Whether so much is told already that one more fault of this kind would help nobody.
#[must_use]
pub fn told_enough(found: &[Diagnostic], code: &str) -> bool {
    found.len() >= MOST_TOLD && found.iter().any(|one| one.code == code)
}

/// A value, and what is wrong with the text it came from. Nothing stops at the first fault.
#[derive(Clone, Debug)]
pub struct Checked<T> {
    /// The value, as far as it could be worked out.
    pub value: T,
    /// What is wrong.
    pub diagnostics: Vec<Diagnostic>,
}

impl<T> Checked<T> {
    /// Goes on to the next stage, keeping what was found so far.
    pub fn then<U>(self, next: impl FnOnce(T) -> Checked<U>) -> Checked<U> {
        let mut found = self.diagnostics;
        let after = next(self.value);
        found.extend(after.diagnostics);
        Checked { value: after.value, diagnostics: found }
    }
}
