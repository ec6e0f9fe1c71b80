//! Why a command could not run at all.

use std::fmt;
use std::path::Path;

/// A failure with what was being done, what went wrong, and what to do.
#[derive(Clone, Debug)]
pub struct Failure {
    message: String,
    hint: Option<String>,
    /// What it says to those who need not know this machine's folders.
    abroad: Option<String>,
}

impl Failure {
    /// A failure in words.
    pub fn new(message: impl Into<String>) -> Self {
        Self { message: message.into(), hint: None, abroad: None }
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
        let name = path.file_name().unwrap_or_default().display();
        let abroad = Some(format!("could not {doing} {name}: {}", plain(error)));
        Self { abroad, ..Self::new(format!("could not {doing} {}: {}", path.display(), plain(error))) }
    }

    /// What it says to those who need not know where on this machine the book lies.
    pub fn abroad(&self) -> String {
        match (&self.abroad, &self.hint) {
            (Some(abroad), None) => abroad.clone(),
            (Some(abroad), Some(hint)) => format!("{abroad}\n  {hint}"),
            (None, _) => self.to_string(),
        }
    }

    /// The same with what it says abroad.
    #[must_use]
    pub fn told_abroad(mut self, abroad: impl Into<String>) -> Self {
        self.abroad = Some(abroad.into());
        self
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
