//! Every fault's page is a test: the marked lines of its examples get that fault, no other line gets any.

#![allow(clippy::disallowed_methods, reason = "the pages' folder is read, to find one that no fault owns")]

use formula::fault::{self, Fault};
use formula::source::{MOST_BYTES, MOST_LINES, Source, line_and_column};
use formula::{Book, BookText, Diagnostic};
use std::collections::BTreeMap;

/// The file that a block without a name of its own is.
const EXAMPLE: &str = "formulas/example.toml";
/// What a marked line carries after its text.
const MARK: &str = "# fault: ";
/// The longest first sentence, which a list of faults shows in one line.
const LONGEST_SENTENCE: usize = 110;

/// A page taken apart.
#[derive(Default)]
struct Page<'p> {
    title: &'p str,
    first_line: &'p str,
    bad: Vec<Example<'p>>,
    good: Vec<Example<'p>>,
}

/// The blocks under one heading: a book, or words about one that no page can show.
#[derive(Default)]
struct Example<'p> {
    files: BTreeMap<&'p str, String>,
    is_told: bool,
}

/// A fault at the line of a file.
type Mark = (String, usize, String);

impl<'p> Page<'p> {
    fn read(text: &'p str) -> Self {
        let mut page = Self::default();
        let mut lines = text.lines();
        let mut good = false;
        while let Some(line) = lines.next() {
            if let Some(title) = line.strip_prefix("# ") {
                page.title = title;
            } else if line == "## Bad" {
                good = false;
                page.bad.push(Example::default());
            } else if line == "## Good" {
                good = true;
                page.good.push(Example::default());
            } else if let Some(kind) = line.strip_prefix("```") {
                let block: String = lines.by_ref().take_while(|line| *line != "```").map(|line| format!("{line}\n")).collect();
                let examples = if good { &mut page.good } else { &mut page.bad };
                examples.last_mut().expect("a block stands under Bad or Good").add(kind, block);
            } else if page.first_line.is_empty() {
                page.first_line = line;
            } else {
                assert!(!line.starts_with('#'), "{}: a heading that is neither Bad nor Good: {line}", page.title);
            }
        }
        page
    }
}

impl<'p> Example<'p> {
    fn add(&mut self, kind: &'p str, block: String) {
        match kind.split_once(' ') {
            Some(("toml", file)) => assert!(self.files.insert(file, block).is_none(), "{file} stands twice under one heading"),
            None if kind == "toml" => assert!(self.files.insert(EXAMPLE, block).is_none(), "two blocks without a name"),
            _ => {
                assert_eq!(kind, "text", "a block is toml, or text that tells of one");
                self.is_told = true;
            }
        }
    }

    /// The faults that the lines say they have.
    fn marks(&self) -> Vec<Mark> {
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

    /// The faults that are found in them, and what is said of each.
    fn found(&self) -> (Vec<Mark>, String) {
        let source = |(file, text): (&&str, &String)| ((*file).to_owned(), Source { file: (*file).into(), text: text.clone() });
        let mut found = work_out(BookText { files: self.files.iter().map(source).collect() });
        found.sort_by_key(|found| (found.place.file.clone(), found.place.span.start));
        let said = found.iter().map(|found| format!("\n  {:?}: {}", self.mark(found), found.message)).collect();
        (found.iter().map(|found| self.mark(found)).collect(), said)
    }

    fn mark(&self, found: &Diagnostic) -> Mark {
        let file = found.place.file.as_ref();
        let (line, _) = line_and_column(&self.files[file], found.place.span.start);
        (file.to_owned(), line, found.code.to_owned())
    }
}

/// Everything that is wrong with a book.
fn work_out(text: BookText) -> Vec<Diagnostic> {
    let opened = Book::open(text);
    let mut found = opened.diagnostics;
    for name in opened.value.formulas.keys() {
        found.extend(opened.value.formula(name).expect("the book lists it").diagnostics);
    }
    found
}

/// The codes of what is wrong with one formula.
fn codes_of(text: String) -> Vec<&'static str> {
    let source = Source { file: EXAMPLE.into(), text };
    let files = BTreeMap::from([(EXAMPLE.to_owned(), source)]);
    work_out(BookText { files }).iter().map(|found| found.code).collect()
}

/// The codes of what is wrong with a file's bytes before they are read.
fn codes_of_bytes(bytes: Vec<u8>) -> Vec<&'static str> {
    let taken = Source::from_bytes(EXAMPLE, bytes);
    assert_eq!(taken.value.is_none(), !taken.diagnostics.is_empty(), "a file is taken, or refused with a reason");
    taken.diagnostics.iter().map(|found| found.code).collect()
}

/// What is found where a page can only tell of the fault.
fn generated(fault: &Fault) -> Vec<&'static str> {
    let most = usize::try_from(MOST_BYTES).expect("a megabyte can be counted");
    match fault.code {
        "not-text" => codes_of_bytes(b"title = \"Cr\xeape\"".to_vec()),
        "file-too-large" => codes_of_bytes(vec![b'#'; most + 1]),
        "too-many-lines" => codes_of(with_steps(MOST_LINES + 1)),
        code => panic!("{code} tells of its fault but no generated case shows it"),
    }
}

/// A formula of so many steps.
fn with_steps(steps: usize) -> String {
    let head = "title = \"Plum compote\"\n[[component]]\nname = \"compote\"\n[[component.stage]]\nname = \"compote\"\nkind = \"cooked\"\n\
        [component.stage.ingredients]\nplums = \"500 g\"\n";
    let step = "[[component.stage.step]]\naction = \"simmer\"\ntext = \"Stir {plums}.\"\n";
    format!("{head}{}", step.repeat(steps))
}

/// A formula of so many ingredient lines.
fn with_lines(lines: usize) -> String {
    let head = "title = \"Plum compote\"\n[[component]]\nname = \"compote\"\n[[component.stage]]\nname = \"compote\"\nkind = \"cooked\"\n\
        [component.stage.ingredients]\n";
    let lines: String =
        (0..lines).map(|number| format!("plum-{number} = {{ ingredient = \"plums\", amount = \"1 g\" }}\n")).collect();
    format!("{head}{lines}")
}

/// What is wrong with a fault's page.
fn check(fault: &Fault) -> Vec<String> {
    let page = Page::read(fault.page);
    let mut wrong = Vec::new();
    let mut expect = |holds: bool, what: String| {
        if !holds {
            wrong.push(format!("{}: {what}", fault.code));
        }
    };
    expect(page.title == fault.code, format!("the title is “{}”", page.title));
    let sentence = page.first_line;
    let is_one = sentence.ends_with('.') && !sentence.trim_end_matches('.').contains(". ");
    expect(is_one, format!("the first line is one sentence, not “{sentence}”"));
    expect(sentence.chars().count() <= LONGEST_SENTENCE, "the first line is too long for a list".to_owned());
    expect(!page.bad.is_empty() && !page.good.is_empty(), "a bad or a good example is missing".to_owned());
    for example in page.bad.iter().filter(|example| example.is_told) {
        expect(example.files.is_empty(), "an example that is only told has a block, too".to_owned());
        expect(generated(fault) == [fault.code], format!("the generated case gets {:?}", generated(fault)));
    }
    for example in page.bad.iter().filter(|example| !example.is_told) {
        let (marks, (found, said)) = (example.marks(), example.found());
        expect(marks.iter().any(|(_, _, code)| code == fault.code), "a bad example is not marked".to_owned());
        expect(found == marks, format!("the bad example is marked {marks:?}, but gets {said}"));
    }
    for example in &page.good {
        let (found, said) = example.found();
        expect(!example.files.is_empty() && example.marks().is_empty(), "a good example is a book without marks".to_owned());
        expect(found.is_empty(), format!("the good example gets {said}"));
    }
    wrong
}

#[test]
fn every_page_holds() {
    let wrong: Vec<String> = fault::ALL.iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_page_belongs_to_a_fault() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/fault");
    for entry in std::fs::read_dir(folder).expect("the pages' folder is there") {
        let name = entry.expect("it can be listed").file_name().into_string().expect("a page's name is plain");
        if let Some(code) = name.strip_suffix(".md") {
            assert!(fault::named(code).is_some(), "{name} is the page of no fault");
        }
    }
}

#[test]
fn a_file_of_just_the_size_is_taken() {
    let most = usize::try_from(MOST_BYTES).expect("a megabyte can be counted");
    assert_eq!(codes_of_bytes(vec![b'#'; most]), [""; 0]);
    assert_eq!(codes_of(with_steps(MOST_LINES)), [""; 0]);
}

#[test]
fn too_many_ingredients_are_refused_like_too_many_steps() {
    let found = codes_of(with_lines(MOST_LINES + 1));
    assert!(found.contains(&fault::TOO_MANY_LINES.code), "{found:?}");
}

#[test]
fn brackets_without_end_are_refused_and_not_followed() {
    for text in ["[".repeat(10_000), format!("tags = {}", "[".repeat(10_000)), format!("tags = {}", "{a=".repeat(10_000))] {
        assert_eq!(codes_of(text), [fault::NESTED_TOO_DEEP.code]);
    }
}
