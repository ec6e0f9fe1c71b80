//! Why a command could not run at all.

use std::fmt;
use std::path::Path;

/// A failure with what was being done, what went wrong, and what to do.
#[derive(Debug)]
pub struct Failure {
    message: String,
    hint: Option<String>,
}

impl Failure {
    /// A failure in words.
    pub fn new(message: impl Into<String>) -> Self {
        Self { message: message.into(), hint: None }
    }

    /// The same with what to do, if there is a word to say of it.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into()).filter(|hint| !hint.is_empty());
        self
    }

    /// What went wrong, and what to do.
    pub fn words(&self) -> (&str, &str) {
        (&self.message, self.hint.as_deref().unwrap_or_default())
    }

    /// Standard output that takes no more.
    pub fn output(error: &std::io::Error) -> Self {
        Self::new(format!("could not write the answer: {}", plain(error)))
    }

    /// A file or folder that could not be used.
    pub fn file(doing: &str, path: &Path, error: &std::io::Error) -> Self {
        Self::new(format!("could not {doing} {}: {}", path.display(), plain(error)))
    }
}

/// The system's word without its number.
fn plain(error: &std::io::Error) -> String {
    match error.kind() {
        std::io::ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        std::io::ErrorKind::PermissionDenied => "permission denied".to_owned(),
        _ => {
            let word = error.to_string();
            word.split(" (os error").next().unwrap_or(&word).to_lowercase()
        }
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)?;
        match &self.hint {
            Some(hint) => write!(f, "\n  {hint}"),
            None => Ok(()),
        }
    }
}

/// Why a command ended before it had done what was asked.
#[derive(Debug)]
pub enum Stopped {
    /// The documents have errors, which were told.
    Faults,
    /// It could not run.
    Failed(Failure),
}

impl From<Failure> for Stopped {
    fn from(failure: Failure) -> Self {
        Self::Failed(failure)
    }
}
