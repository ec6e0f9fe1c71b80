//! Trials side by side: what went in, what came out, and the photographs at the same scale.

use crate::lessons::{label, told};
use crate::words::wrap;
use bench::calibration::{Outcome, What};
use bench::forecast::Calibration;
use formula::Formula;
use formula::logging::figures;
use formula::read::Trial;
use quantity::print;

/// A photograph of a trial, ready for a page.
#[derive(Clone, Debug)]
pub struct Plate {
    /// Which trial.
    pub trial: usize,
    /// What it shows.
    pub shows: String,
    /// How wide that is, in millimetres, where it is told.
    pub across: Option<f64>,
    /// The picture as an address that holds it whole.
    pub source: String,
    /// Its width and height in dots.
    pub size: (u32, u32),
}

/// Trials side by side.
#[derive(Debug)]
pub struct Beside<'b> {
    /// The trials with their texts, in the order of days.
    pub trials: Vec<(&'b Trial, &'b str)>,
    /// What the formulas that were baked differ in, from each trial to the next; empty where they are the same.
    pub formulas: Vec<String>,
    /// What came out.
    pub outcomes: Vec<Outcome>,
    /// What is known of the kitchen.
    pub known: Calibration,
    /// The photographs.
    pub plates: Vec<Plate>,
    /// The formulas that were baked, one a trial.
    pub baked: Vec<Formula>,
}

/// A row: what it is, and what each trial says.
pub struct Row {
    /// What it is.
    pub name: String,
    /// What each trial says; empty where it was not noted.
    pub cells: Vec<String>,
    /// What is to be said of the difference.
    pub remark: String,
}

/// What came out of a bake, of all that is noted.
const OUTCOMES: [&str; 8] = ["temperature", "ph", "doubled-after", "ripe-after", "core", "pieces", "bake-loss", "height"];
/// What stands in a trial's head, or beside its figures.
const APART: [&str; 6] = ["title", "formula", "revision", "kitchen", "date", "course"];

impl Beside<'_> {
    /// What each trial is called: its day, or its title where two are of a day.
    #[must_use]
    pub fn columns(&self) -> Vec<String> {
        let day = |trial: &Trial| trial.date.map(|date| date.to_string()).unwrap_or_default();
        let days: Vec<String> = self.trials.iter().map(|(trial, _)| day(trial)).collect();
        let is_alone = |one: &String| !one.is_empty() && days.iter().filter(|other| *other == one).count() == 1;
        self.trials
            .iter()
            .zip(&days)
            .map(|((trial, _), day)| if is_alone(day) { day.clone() } else { trial.title.clone() })
            .collect()
    }

    /// What went in and is not the same in all trials, and how many figures are.
    #[must_use]
    pub fn inputs(&self) -> (Vec<Row>, usize) {
        let is_input = |name: &str| {
            let key = name.rsplit('/').next().unwrap_or(name);
            let key = key.split(" after ").next().unwrap_or(key);
            let is_line =
                name.split('/').nth_back(1).is_some_and(|part| !["mix", "rise"].contains(&part)) && key == "temperature";
            name.contains('/')
                && !name.starts_with("photograph")
                && !APART.contains(&key)
                && (!OUTCOMES.contains(&key) || is_line && !name.contains(" after "))
                && key != "volume"
        };
        let (all, same): (Vec<Row>, Vec<Row>) =
            self.noted(&is_input).into_iter().partition(|row| row.cells.windows(2).any(|two| two[0] != two[1]));
        (all, same.len())
    }

    /// A figure in words; by its key where no formula knows it.
    fn called(&self, name: &str) -> String {
        self.baked.iter().find_map(|formula| super::in_words(name, formula)).unwrap_or_else(|| name.to_owned())
    }

    fn noted(&self, wanted: &dyn Fn(&str) -> bool) -> Vec<Row> {
        let told: Vec<Vec<(String, String)>> = self.trials.iter().map(|(_, text)| figures(text)).collect();
        let mut names: Vec<&String> = Vec::new();
        for (name, _) in told.iter().flatten().filter(|(name, _)| wanted(name)) {
            if !names.iter().any(|known| super::is_same_figure(known, name) || super::is_same_figure(name, known)) {
                names.push(name);
            }
        }
        let row = |name: &&String| {
            let find = |all: &Vec<(String, String)>| {
                let own = all.iter().find(|(other, _)| super::is_same_figure(name, other) || super::is_same_figure(other, name));
                own.map(|(_, value)| value.clone()).unwrap_or_default()
            };
            Row { name: self.called(name), cells: told.iter().map(find).collect(), remark: String::new() }
        };
        names.iter().map(row).collect()
    }

    /// What came out, each figure with its band, and whether trials differ by more than bakes do anyway.
    #[must_use]
    pub fn came_out(&self) -> Vec<Row> {
        let mut rows: Vec<Row> = self.outcomes.iter().map(|one| self.outcome(one)).collect();
        let is_other = |name: &str| matches!(name.rsplit('/').next(), Some("pieces" | "bake-loss" | "ph"));
        rows.extend(self.noted(&is_other));
        rows
    }

    fn outcome(&self, one: &Outcome) -> Row {
        let what = one.of.what;
        let band = if what.by_ratio() {
            format!(" ±{}\u{a0}%", print::number(100.0 * one.band(), 0))
        } else {
            format!(" ±{}\u{a0}K", print::number(one.band(), 1))
        };
        let cell = |seen: &Option<f64>| seen.map(|seen| format!("{}{band}", told(what, seen))).unwrap_or_default();
        let (first, last) = (one.seen.iter().position(Option::is_some), one.seen.iter().rposition(Option::is_some));
        let ends = first.zip(last).filter(|(first, last)| first < last);
        let apart = ends.and_then(|(first, last)| one.apart(first, last));
        let remark = apart.map(|apart| remark(what, apart, one.by_chance(&self.known))).unwrap_or_default();
        Row { name: format!("{}, {}", one.of.title, label(&one.of)), cells: one.seen.iter().map(cell).collect(), remark }
    }

    /// As text of that width.
    #[must_use]
    pub fn text(&self, width: usize) -> String {
        let head = format!("{} trials side by side", self.trials.len());
        let mut out = format!("{head}\n{}\n", "═".repeat(head.chars().count()));
        for ((trial, _), column) in self.trials.iter().zip(self.columns()) {
            out.push_str(&wrap(&format!("{column}: “{}”, {}", trial.title, trial.formula.value), width));
        }
        self.formulas.iter().for_each(|told| out.push_str(&wrap(told, width)));
        let (inputs, same) = self.inputs();
        out.push_str(&format!("\nWhat went in\n{}\n", "─".repeat(12)));
        out.push_str(&table(&self.columns(), &inputs, width));
        if same > 0 {
            out.push_str(&format!("{same} {} the same in all.\n", if same == 1 { "figure is" } else { "figures are" }));
        }
        out.push_str(&format!("\nWhat came out\n{}\n", "─".repeat(13)));
        out.push_str(&table(&self.columns(), &self.came_out(), width));
        out.push('\n');
        out.push_str(&wrap(CAUTION, width));
        out
    }
}

/// What can be concluded from bakes at the bench, and what cannot.
pub const CAUTION: &str = "A dash was not noted. Bands are what a reading may be off. A difference is called clear where it is more than readings and one bake and the next of the same would make; which of two is better to eat, only a blind tasting tells.";

fn remark(what: What, apart: f64, chance: f64) -> String {
    let size = if what.by_ratio() {
        format!("{}{}\u{a0}%", if apart < 0.0 { "−" } else { "+" }, print::number(100.0 * (libm::exp(apart) - 1.0).abs(), 0))
    } else {
        format!("{}{}\u{a0}K", if apart < 0.0 { "−" } else { "+" }, print::number(apart.abs(), 1))
    };
    format!("{size}, {}", if apart.abs() > chance { "clear" } else { "as by chance" })
}

fn table(columns: &[String], rows: &[Row], width: usize) -> String {
    if rows.is_empty() {
        return "Nothing that differs was noted.\n".to_owned();
    }
    let mut table = crate::sheet::ruled(width);
    let has_remarks = rows.iter().any(|row| !row.remark.is_empty());
    let heading = std::iter::once(String::new()).chain(columns.iter().cloned());
    table.set_header(heading.chain(has_remarks.then(|| "first to last".to_owned())));
    for row in rows {
        let cells = row.cells.iter().map(|cell| if cell.is_empty() { "–".to_owned() } else { cell.clone() });
        table.add_row(std::iter::once(row.name.clone()).chain(cells).chain(has_remarks.then(|| row.remark.clone())));
    }
    format!("{}\n", table.trim_fmt())
}
