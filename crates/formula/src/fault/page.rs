//! A page of explanation taken apart: its title, first sentence and examples, whose marked lines are tests.

use crate::source::{Source, line_and_column};
use crate::{BookText, Diagnostic};
use std::collections::BTreeMap;

/// The file that a block without a name of its own is.
pub const EXAMPLE: &str = "formulas/example.toml";
/// What a marked line carries after its text.
const MARK: &str = "# fault: ";
/// The longest first sentence, which a list of faults shows in one line.
const LONGEST_SENTENCE: usize = 110;

/// A page taken apart.
#[derive(Debug, Default)]
pub struct Page<'p> {
    /// The code it explains.
    pub title: &'p str,
    /// The sentence that a list shows.
    pub first_line: &'p str,
    /// Examples with faults.
    pub bad: Vec<Example<'p>>,
    /// Examples without.
    pub good: Vec<Example<'p>>,
    /// What is wrong with the page's own form.
    pub wrong: Vec<String>,
}

/// The blocks under one heading: a book, or words about one that no page can show.
#[derive(Debug, Default)]
pub struct Example<'p> {
    /// The blocks by file name.
    pub files: BTreeMap<&'p str, String>,
    /// Whether a block only tells of a fault.
    pub is_told: bool,
}

/// A fault at the line of a file.
pub type Mark = (String, usize, String);

impl<'p> Page<'p> {
    /// Takes a page apart.
    #[must_use]
    pub fn read(text: &'p str) -> Self {
        let mut page = Self::default();
        let mut lines = text.lines();
        let mut good = false;
        while let Some(line) = lines.next() {
            if let Some(title) = line.strip_prefix("# ") {
                page.title = title;
            } else if line == "## Bad" || line == "## Good" {
                good = line == "## Good";
                let examples = if good { &mut page.good } else { &mut page.bad };
                examples.push(Example::default());
            } else if let Some(kind) = line.strip_prefix("```") {
                let block: String = lines.by_ref().take_while(|line| *line != "```").map(|line| format!("{line}\n")).collect();
                let examples = if good { &mut page.good } else { &mut page.bad };
                let added = examples.last_mut().map(|example| example.add(kind, block));
                page.wrong.extend(added.unwrap_or_else(|| Err("a block stands under neither Bad nor Good".to_owned())).err());
            } else if page.first_line.is_empty() {
                page.first_line = line;
            } else if line.starts_with('#') {
                page.wrong.push(format!("a heading that is neither Bad nor Good: {line}"));
            }
        }
        page
    }

    /// What is wrong with the form of the page of that code.
    #[must_use]
    pub fn check_form(&self, code: &str) -> Vec<String> {
        let mut wrong = self.wrong.clone();
        let mut expect = |holds: bool, what: String| {
            if !holds {
                wrong.push(what);
            }
        };
        expect(self.title == code, format!("the title is “{}”", self.title));
        let sentence = self.first_line;
        let is_one = sentence.ends_with('.') && !sentence.trim_end_matches('.').contains(". ");
        expect(is_one, format!("the first line is one sentence, not “{sentence}”"));
        expect(sentence.chars().count() <= LONGEST_SENTENCE, "the first line is too long for a list".to_owned());
        expect(!self.bad.is_empty() && !self.good.is_empty(), "a bad or a good example is missing".to_owned());
        for example in self.bad.iter().filter(|example| !example.is_told) {
            expect(example.marks().iter().any(|(_, _, mark)| mark == code), "a bad example is not marked".to_owned());
        }
        for example in &self.good {
            let is_plain = !example.files.is_empty() && example.marks().is_empty();
            expect(is_plain, "a good example is a book without marks".to_owned());
        }
        wrong
    }

    /// What is wrong with the examples, where so much is found in a book.
    #[must_use]
    pub fn check_examples(&self, proof_read: impl Fn(BookText) -> Vec<Diagnostic>) -> Vec<String> {
        let mut wrong = Vec::new();
        for example in self.bad.iter().filter(|example| !example.is_told) {
            let (marks, (found, said)) = (example.marks(), example.found(&proof_read));
            if found != marks {
                wrong.push(format!("the bad example is marked {marks:?}, but gets {said}"));
            }
        }
        for example in &self.good {
            let (found, said) = example.found(&proof_read);
            if !found.is_empty() {
                wrong.push(format!("the good example gets {said}"));
            }
        }
        wrong
    }
}

impl<'p> Example<'p> {
    fn add(&mut self, kind: &'p str, block: String) -> Result<(), String> {
        let file = match kind.split_once(' ') {
            Some(("toml" | "csv", file)) => file,
            None if kind == "toml" => EXAMPLE,
            _ => {
                self.is_told = true;
                return if kind == "text" {
                    Ok(())
                } else {
                    Err(format!("a block is toml, rows of a log in csv, or text that tells of one: {kind}"))
                };
            }
        };
        let twice = self.files.insert(file, block).is_some();
        if twice { Err(format!("{file} stands twice under one heading")) } else { Ok(()) }
    }

    /// The faults that the lines say they have.
    #[must_use]
    pub fn marks(&self) -> Vec<Mark> {
        let mut marks = Vec::new();
        for (file, text) in &self.files {
            for (number, line) in text.lines().enumerate() {
                if let Some((_, code)) = line.split_once(MARK) {
                    marks.push(((*file).to_owned(), number + 1, code.to_owned()));
                }
            }
        }
        marks
    }

    /// The faults that are found in it, and what is said of each.
    fn found(&self, proof_read: impl Fn(BookText) -> Vec<Diagnostic>) -> (Vec<Mark>, String) {
        let source = |(file, text): (&&str, &String)| ((*file).to_owned(), Source { file: (*file).into(), text: text.clone() });
        let mut found = proof_read(BookText { files: self.files.iter().map(source).collect() });
        found.sort_by_key(|found| (found.place.file.clone(), found.place.span.start));
        let said = found.iter().map(|found| format!("\n  {:?}: {}", self.mark(found), found.message)).collect();
        (found.iter().map(|found| self.mark(found)).collect(), said)
    }

    fn mark(&self, found: &Diagnostic) -> Mark {
        let file = found.place.file.as_ref();
        let text = self.files.get(file).map_or("", String::as_str);
        let (line, _) = line_and_column(text, found.place.span.start);
        (file.to_owned(), line, found.code.to_owned())
    }
}
