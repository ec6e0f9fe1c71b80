//! A story as it is told, part by part, and for the terminal: headings, sentences broken at the width, and at its
//! end where the figures come from.

use super::known;
use crate::words::Units;
use bench::grounds::By;
use formula::resolve::formula::StageAt;
use formula::{Formula, Known};

/// A part of a story.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Told {
    /// The title of the whole.
    Title(String),
    /// The heading of a chapter.
    Heading(String),
    /// A paragraph.
    Saying(String),
    /// Rows that stand as they are, such as a chart.
    Drawing(String),
}

/// A story as it grows.
pub struct Story<'f> {
    /// What it is about.
    pub formula: &'f Formula,
    /// The units it is told in.
    pub units: Units,
    told: Vec<Told>,
    grounds: Vec<String>,
}

impl<'f> Story<'f> {
    /// An empty story.
    pub const fn new(formula: &'f Formula, units: Units) -> Self {
        Self { formula, units, told: Vec::new(), grounds: Vec::new() }
    }

    /// The title of the whole.
    pub fn title(&mut self, title: &str) {
        self.told.push(Told::Title(title.to_owned()));
    }

    /// The heading of a chapter.
    pub fn heading(&mut self, heading: &str) {
        self.told.push(Told::Heading(heading.to_owned()));
    }

    /// The heading of a chapter about a stage: with its component where the formula has several.
    pub fn stage(&mut self, (component, _): StageAt, title: &str) {
        let component = &self.formula.components[component].title;
        let is_one = self.formula.components.len() == 1 || component == title;
        self.heading(&if is_one { title.to_owned() } else { format!("{component}: {title}") });
    }

    /// A paragraph.
    pub fn say(&mut self, line: &str) {
        self.told.push(Told::Saying(line.to_owned()));
    }

    /// A line as it is, such as a chart.
    pub fn draw(&mut self, line: &str) {
        self.told.push(Told::Drawing(line.to_owned()));
    }

    /// The number in brackets that leads from a figure to what computed or taught it, at the end.
    pub fn ground<T>(&mut self, known: &Known<T>) -> String {
        known::ground(&known.origin).map(|ground| self.mark(ground)).unwrap_or_default()
    }

    /// The same for what computes a figure.
    pub fn by(&mut self, by: By) -> String {
        self.ground(&by.known(()))
    }

    /// The number of a ground, in the order in which they are told first.
    fn mark(&mut self, ground: String) -> String {
        let known = self.grounds.iter().position(|one| *one == ground);
        let number = known.unwrap_or_else(|| {
            self.grounds.push(ground);
            self.grounds.len() - 1
        });
        format!("\u{a0}[{}]", number + 1)
    }

    /// The whole story, grounds last.
    pub fn done(mut self) -> Vec<Told> {
        if !self.grounds.is_empty() {
            self.heading("Where the figures come from");
            for (number, ground) in std::mem::take(&mut self.grounds).iter().enumerate() {
                self.say(&format!("[{}] {ground}", number + 1));
            }
        }
        self.told
    }
}

/// A story for the terminal, lines broken at the width.
pub fn laid_out(story: &[Told], width: usize) -> String {
    let under = |line: &str, sign: &str| sign.repeat(line.chars().count());
    let part = |told: &Told| match told {
        Told::Title(title) => format!("{title}\n{}\n\n", under(title, "═")),
        Told::Heading(heading) => format!("\n{heading}\n{}\n", under(heading, "─")),
        Told::Saying(line) => crate::words::wrap(line, width),
        Told::Drawing(rows) => rows.clone(),
    };
    story.iter().map(part).collect()
}
