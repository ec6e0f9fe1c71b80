//! The formula sheet: the overall formula, each stage beside it, the figures and the weights.

mod csv;
mod json;
pub mod text;
pub mod words;

pub use self::csv::csv;
pub use json::json;
pub use text::{RULED, right_align, ruled, text};

use crate::tongue::Tongue;
use bench::rules::{Silenced, judge};
use bench::weighing::{Shift, Weighable, shifts, weigh};
use formula::arithmetic::{Figures, Overall, figures, overall};
use formula::read::{BookSettings, Kitchen, StageKind};
use formula::resolve::formula::Yield;
use formula::{Formula, Line};
use quantity::{Fraction, Mass};

/// A formula's sheet.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// The formula's name.
    pub name: String,
    /// The formula's title.
    pub title: String,
    /// The language of its formula, as BCP 47 writes it.
    pub language: String,
    /// How that is told.
    pub tongue: Tongue,
    /// What its weights were rounded for.
    pub kitchen: String,
    /// Its components.
    pub components: Vec<ComponentSheet>,
    /// What its author knows better than a rule of the trade, and why.
    pub silenced: Vec<Silenced>,
}

/// A component's part of the sheet.
#[derive(Clone, Debug)]
pub struct ComponentSheet {
    /// The component's title.
    pub title: String,
    /// What comes of it.
    pub yields: Yield,
    /// Its overall formula.
    pub overall: Overall,
    /// The figures it is read by; none without flour.
    pub figures: Option<Figures>,
    /// Its stages.
    pub stages: Vec<StageSheet>,
    /// What rounding to the scales does to its shares.
    pub shifts: Vec<Shift>,
}

/// A stage's part of the sheet.
#[derive(Clone, Debug)]
pub struct StageSheet {
    /// The stage's title.
    pub title: String,
    /// What it is.
    pub kind: StageKind,
    /// Its lines.
    pub lines: Vec<LineSheet>,
    /// All that goes in.
    pub mixed: Mass,
    /// What comes out.
    pub made: Mass,
}

/// A line of a stage.
#[derive(Clone, Debug)]
pub struct LineSheet {
    /// What it is.
    pub title: String,
    /// How it should be.
    pub note: Option<String>,
    /// Its share of the stage's own flour; none where the stage has none.
    pub percent: Option<Fraction>,
    /// What the formula asks.
    pub mass: Mass,
    /// What the scale shows, and what to do where it cannot.
    pub weighable: Option<Weighable>,
}

/// Lays out a formula's sheet for a kitchen.
#[must_use]
pub fn sheet(formula: &Formula, kitchen: &Kitchen, settings: &BookSettings) -> Sheet {
    Sheet {
        name: formula.name.clone(),
        title: formula.head.title.clone(),
        language: settings.language_of(&formula.head).to_owned(),
        tongue: Tongue::of(settings.language_of(&formula.head)),
        kitchen: kitchen.title.clone(),
        components: components(formula, kitchen, settings),
        silenced: judge(formula, kitchen, settings).silenced,
    }
}

/// The components' parts of the sheet alone, for those who have it proof-read elsewhere.
#[must_use]
pub fn components(formula: &Formula, kitchen: &Kitchen, settings: &BookSettings) -> Vec<ComponentSheet> {
    let weighed = weigh(formula, kitchen, settings.spoons.unwrap_or_default());
    (0..formula.components.len()).map(|c| component_sheet(formula, c, &weighed)).collect()
}

fn component_sheet(formula: &Formula, c: usize, weighed: &[Weighable]) -> ComponentSheet {
    let component = &formula.components[c];
    let overall = overall(formula, c);
    let stages = component.stages.iter().enumerate().map(|(s, stage)| StageSheet {
        title: stage.title.clone(),
        kind: stage.kind,
        lines: stage.lines.iter().enumerate().map(|(l, line)| line_sheet(line, stage.flour, find(weighed, (c, s, l)))).collect(),
        mixed: stage.mixed(),
        made: stage.made(),
    });
    ComponentSheet {
        title: component.title.clone(),
        yields: component.yields.clone(),
        figures: figures(&overall),
        stages: stages.collect(),
        shifts: shifts(formula, c, weighed),
        overall,
    }
}

fn find(weighed: &[Weighable], at: (usize, usize, usize)) -> Option<&Weighable> {
    weighed.binary_search_by(|one| one.at.cmp(&at)).ok().map(|index| &weighed[index])
}

fn line_sheet(line: &Line, flour: Mass, weighable: Option<&Weighable>) -> LineSheet {
    LineSheet {
        title: line.title.clone(),
        note: line.note.clone(),
        percent: (flour > Mass::ZERO).then(|| Fraction::ratio(line.mass.value / flour)),
        mass: line.mass.value,
        weighable: weighable.cloned(),
    }
}
