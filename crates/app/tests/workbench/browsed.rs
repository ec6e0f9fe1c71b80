//! The workbench as a browser without scripts asks it: pages, and forms with the token that stands in them.

use crate::sandbox::Sandbox;
pub use crate::sandbox::demo;
use crate::served::{self, Answer};
use std::path::PathBuf;

/// A workbench that is open, and the book on it.
pub struct Browsed(served::Served);

impl Browsed {
    /// The demo book on the workbench.
    pub fn demo() -> Self {
        Self(served::Served::demo(&["--port", "0"]))
    }

    /// A folder on the workbench in which there is nothing.
    pub fn nothing() -> Self {
        let sandbox = Sandbox::empty();
        std::fs::create_dir(sandbox.path("saltmarsh")).expect("a folder");
        Self(served::Served::of(sandbox, &["--port", "0"], &[]))
    }

    /// A file of the book.
    pub fn path(&self, file: &str) -> PathBuf {
        self.0.book().join(file)
    }

    pub fn read(&self, file: &str) -> String {
        self.0.sandbox.read(&format!("saltmarsh/{file}"))
    }

    /// Asks for a page.
    pub fn get(&self, page: &str) -> Answer {
        self.0.get(page, "")
    }

    /// A page that is there.
    #[track_caller]
    pub fn page(&self, page: &str) -> String {
        let answer = self.get(page);
        assert_eq!(answer.status, 200, "{page}\n{}", answer.body);
        answer.body
    }

    /// Sends a form from a page of the workbench, with the token that stands there.
    #[track_caller]
    pub fn post(&self, page: &str, fields: &[(&str, &str)]) -> Answer {
        self.0.post(page, "", &self.get("/").token(), fields)
    }

    /// Sends a form that is followed by another page: where that is.
    #[track_caller]
    pub fn sent_on(&self, page: &str, fields: &[(&str, &str)]) -> String {
        let answer = self.post(page, fields);
        assert_eq!(answer.status, 303, "{page}\n{}", answer.body);
        answer.header("location").expect("where to").to_owned()
    }
}
