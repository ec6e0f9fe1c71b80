//! A story for the terminal: headings, sentences broken at the width, and at its end where the figures come from.

use crate::words::Units;
use formula::resolve::formula::StageAt;
use formula::{Formula, Known, Origin};
use quantity::print;
use std::collections::BTreeMap;

/// A story as it grows.
pub struct Story<'f> {
    /// What it is about.
    pub formula: &'f Formula,
    /// The units it is told in.
    pub units: Units,
    width: usize,
    out: String,
    grounds: BTreeMap<String, String>,
}

impl<'f> Story<'f> {
    /// An empty story.
    pub fn new(formula: &'f Formula, units: Units, width: usize) -> Self {
        Self { formula, units, width, out: String::new(), grounds: BTreeMap::new() }
    }

    /// The title of the whole.
    pub fn title(&mut self, title: &str) {
        self.out.push_str(&format!("{title}\n{}\n\n", "═".repeat(title.chars().count())));
    }

    /// The heading of a chapter.
    pub fn heading(&mut self, heading: &str) {
        self.out.push_str(&format!("\n{heading}\n{}\n", "─".repeat(heading.chars().count())));
    }

    /// The heading of a chapter about a stage: with its component where the formula has several.
    pub fn stage(&mut self, (component, _): StageAt, title: &str) {
        let component = &self.formula.components[component].title;
        let is_one = self.formula.components.len() == 1 || component == title;
        self.heading(&if is_one { title.to_owned() } else { format!("{component}: {title}") });
    }

    /// A paragraph.
    pub fn say(&mut self, line: &str) {
        self.out.push_str(&crate::words::wrap(line, self.width));
    }

    /// A line as it is, such as a chart.
    pub fn draw(&mut self, line: &str) {
        self.out.push_str(line);
    }

    /// Takes note of what computed a figure, for the end.
    pub fn ground<T>(&mut self, known: &Known<T>) {
        match &known.origin {
            Origin::Computed { by, source } => {
                self.grounds.entry((*by).to_owned()).or_insert_with(|| why(source));
            }
            Origin::Measured(by) => {
                self.grounds
                    .entry(by.clone())
                    .or_insert_with(|| " — this kitchen's own trials, told by the command “learn”.".to_owned());
            }
            Origin::Stated(_) | Origin::Asked | Origin::Assumed { .. } => {}
        }
    }

    /// Takes note of an equation behind what is told, by its name, for the end.
    pub fn rests_on(&mut self, by: &str, equation: &str) {
        self.grounds.entry(by.to_owned()).or_insert_with(|| why(equation));
    }

    /// The whole story, grounds last.
    pub fn done(mut self) -> String {
        if !self.grounds.is_empty() {
            self.heading("Where the figures come from");
            for (by, why) in std::mem::take(&mut self.grounds) {
                self.say(&format!("• {}", print::capital(&format!("{by}{why}"))));
            }
        }
        self.out
    }
}

/// What a figure rests on, in the sentences that follow its name.
fn why(source: &str) -> String {
    match bench::grounds(source) {
        Some(grounds) => format!(", by the equation {} ({}). {}", grounds.equation, grounds.citation, grounds.standing),
        None if source.is_empty() => ".".to_owned(),
        None => format!(" ({source})."),
    }
}
