//! What every line should weigh, and the text brought to say so: weights and percentages written anew only
//! where they would otherwise tell another weight.

use super::Unfit;
use super::manuscript::{Manuscript, Part};
use formula::read::Amount;
use formula::resolve::formula::{Content, StageAt};
use formula::{Checked, Formula, Line, Severity};
use quantity::{Kind, Mass};
use std::collections::BTreeMap;

/// The weight of each line, by stage and name.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Balance(BTreeMap<(StageAt, String), Mass>);

/// Reads a text of the formula among the rest of its book.
pub type WorkOut<'w> = dyn Fn(&str) -> Checked<Formula> + 'w;

impl Balance {
    /// The weights as they are; what is said as a part of another stage follows from that stage.
    pub fn of(formula: &Formula) -> Self {
        let lines = formula.lines().filter(|(_, line)| !follows(line));
        Self(lines.map(|(at, line)| ((at, line.name.clone()), line.mass.value)).collect())
    }

    /// States a line's weight.
    pub fn set(&mut self, at: StageAt, line: &str, mass: Mass) {
        self.0.insert((at, line.to_owned()), mass);
    }

    /// A line's weight, or nothing.
    pub fn get(&self, at: StageAt, line: &str) -> Mass {
        self.0.get(&(at, line.to_owned())).copied().unwrap_or(Mass::ZERO)
    }

    /// What all lines of a stage weigh.
    pub fn stage(&self, at: StageAt) -> Mass {
        self.0.iter().filter(|((stage, _), _)| *stage == at).map(|(_, mass)| *mass).sum()
    }

    /// The same, with what follows from other stages at the weight that it had.
    pub fn stage_with_parts(&self, at: StageAt, before: &Formula) -> Mass {
        let parts = before.stage(at).lines.iter().filter(|line| follows(line));
        self.stage(at) + parts.map(|line| line.mass.value).sum()
    }

    /// Forgets a line.
    pub fn remove(&mut self, at: StageAt, line: &str) {
        self.0.remove(&(at, line.to_owned()));
    }

    /// Makes room for a stage that is put in before a place.
    pub fn stage_inserted(&mut self, before: StageAt) {
        self.shift(before.0, before.1, 1);
    }

    /// Forgets a stage that is taken out.
    pub fn stage_removed(&mut self, at: StageAt) {
        self.0.retain(|(stage, _), _| *stage != at);
        self.shift(at.0, at.1, -1);
    }

    fn shift(&mut self, component: usize, from: usize, by: isize) {
        let moved = |((c, s), name): (StageAt, String)| {
            let s = if c == component && s >= from { s.saturating_add_signed(by) } else { s };
            ((c, s), name)
        };
        self.0 = std::mem::take(&mut self.0).into_iter().map(|(key, mass)| (moved(key), mass)).collect();
    }

    /// Brings a text to these weights and gives the formula that it then tells.
    ///
    /// # Errors
    /// [`Unfit`] if the text has faults or cannot be brought there.
    pub fn hold(&self, manuscript: &mut Manuscript, work_out: &WorkOut) -> Result<Formula, Unfit> {
        // What is used of other stages first, because it may size them; then flours, because percentages are
        // shares of them.
        for _ in 0..6 {
            // On the way there may be faults that are gone once all weights are written.
            let formula = work_out(&manuscript.text).value;
            let of_stage = |line: &Line| matches!(line.content, Content::Stage(..));
            let written = self.write_others(&formula, manuscript, &of_stage)
                || self.write_flours(&formula, manuscript)
                || self.write_others(&formula, manuscript, &|_| true);
            if !written {
                break;
            }
        }
        self.proved(sound(work_out(&manuscript.text))?)
    }

    fn write_flours(&self, formula: &Formula, manuscript: &mut Manuscript) -> bool {
        let mut changed = false;
        for (at, stage) in formula.stages() {
            let off = |line: &&Line| line.is_flour && !self.is_held(at, line);
            if !stage.lines.iter().any(|line| off(&line)) {
                continue;
            }
            // Flours by percentage get their size from elsewhere: they are then all written as weights.
            let are_percentages = stage.lines.iter().any(|line| line.is_flour && is_percentage(line));
            for line in stage.lines.iter().filter(|line| line.is_flour && (are_percentages || off(line))) {
                manuscript.set_amount(at, &line.name, &grams(self.get(at, &line.name)));
                changed = true;
            }
            manuscript.remove(Part::Stage(at), "flour");
            manuscript.remove(Part::Stage(at), "weight");
        }
        changed
    }

    fn write_others(&self, formula: &Formula, manuscript: &mut Manuscript, which: &dyn Fn(&Line) -> bool) -> bool {
        let mut changed = false;
        for (at, line) in formula.lines().filter(|(at, line)| which(line) && !follows(line) && !self.is_held(*at, line)) {
            let wanted = self.get(at, &line.name);
            manuscript.set_amount(at, &line.name, &percentage(line, wanted).unwrap_or_else(|| grams(wanted)));
            changed = true;
        }
        changed
    }

    fn is_held(&self, at: StageAt, line: &Line) -> bool {
        let wanted = self.get(at, &line.name);
        (line.mass.value - wanted).abs() <= tolerance(wanted)
    }

    /// The formula, if it holds these lines at these weights and no others.
    fn proved(&self, formula: Formula) -> Result<Formula, Unfit> {
        let off = formula.lines().find(|(at, line)| !follows(line) && !self.is_held(*at, line));
        if let Some((_, line)) = off {
            return Err(Unfit::NotBalanced(line.name.clone()));
        }
        let has = |at: StageAt, name: &str| formula.lines().any(|(other, line)| other == at && line.name == name);
        match self.0.iter().find(|((at, name), mass)| **mass > Mass::ZERO && !has(*at, name)) {
            Some(((_, name), _)) => Err(Unfit::NotBalanced(name.clone())),
            None => Ok(formula),
        }
    }
}

/// The formula of a text without errors.
pub fn sound(checked: Checked<Formula>) -> Result<Formula, Unfit> {
    match checked.diagnostics.into_iter().find(|found| found.severity == Severity::Error) {
        Some(found) => Err(Unfit::Broken(found.message)),
        None => Ok(checked.value),
    }
}

/// Whether a line is as large as a part of another stage makes it.
fn follows(line: &Line) -> bool {
    matches!(line.written, Amount::Part(_)) && matches!(line.content, Content::Stage(..))
}

fn is_percentage(line: &Line) -> bool {
    matches!(line.written, Amount::Measure(measure) if measure.unit.kind() == Kind::Share)
}

/// How far a written weight may be from the one that is meant: finer than what is lost on any bench scale.
fn tolerance(wanted: Mass) -> Mass {
    Mass::grams(if wanted < Mass::grams(10.0) { 0.0006 } else { 0.006 })
}

/// A weight with as few decimals as tell it.
pub fn grams(mass: Mass) -> String {
    let close = |text: &String| text.parse::<f64>().is_ok_and(|value| (Mass::grams(value) - mass).abs() <= tolerance(mass));
    let text = (0..5).map(|decimals| format!("{:.decimals$}", mass.as_grams())).find(close);
    format!("{} g", text.unwrap_or_else(|| format!("{:.6}", mass.as_grams())))
}

/// A weight as the percentage that the line is written in; none for a line that is written otherwise.
fn percentage(line: &Line, wanted: Mass) -> Option<String> {
    let Amount::Measure(measure) = line.written else { return None };
    let (written, now) = (measure.value.middle(), line.mass.value);
    if !is_percentage(line) || written <= 0.0 || now <= Mass::ZERO || line.is_flour {
        return None;
    }
    let percent = written * (wanted / now);
    let close =
        |text: &String| text.parse::<f64>().is_ok_and(|value| (now * (value / written) - wanted).abs() <= tolerance(wanted));
    (0..9).map(|decimals| format!("{percent:.decimals$}")).find(close).map(|text| format!("{text} %"))
}
