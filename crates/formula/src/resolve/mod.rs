//! Drafts into formulas: names bound, amounts in gram, sentences tied to figures.

mod amounts;
mod basis;
mod circles;
pub mod formula;
mod label;
mod method;
mod names;
mod sizes;
mod step;
pub mod trial;
mod unnamed;
mod usage;
mod yields;

use crate::read::{Draft, EggSize};
use crate::{Checked, Diagnostic, Pantry};
use formula::{Blend, Component, Content, Formula, Line, Stage};
use names::Bound;
use quantity::{Fraction, Mass, SpoonSystem};
use std::sync::Arc;
pub use yields::UNNAMED_PIECE;

/// What resolving needs to know besides the draft.
pub struct Surroundings<'s> {
    /// The ingredients.
    pub pantry: &'s Pantry,
    /// Whose spoons are meant, if the book says so.
    pub spoons: Option<SpoonSystem>,
    /// The egg meant where a line only says how many.
    pub eggs: EggSize,
    /// What another formula of the book makes.
    pub other_formula: &'s dyn Fn(&str) -> OtherFormula,
    /// The name of a formula of the book that was meant by an unknown one.
    pub nearest_formula: &'s dyn Fn(&str) -> Option<String>,
}

/// What is known of another formula by its name.
pub enum OtherFormula {
    /// What it makes.
    Makes(Arc<Blend>),
    /// There is none of that name.
    Unknown,
    /// It leads back to the formula that asks; the names on the way.
    Circle(Vec<String>),
    /// The chain of formulas that leads to it and on is too long.
    TooFar,
    /// It is there but cannot be worked out itself.
    Faulty,
}

/// Works a draft out; what cannot be is reported and counts as nothing.
#[must_use]
pub fn resolve(draft: &Draft, around: &Surroundings) -> Checked<Formula> {
    let mut found = Vec::new();
    let mut bound = names::bind(draft, around, &mut found);
    circles::cut(draft, &mut bound, &mut found);
    let sizes = sizes::work_out(draft, &bound, around, &mut found);
    let mut formula = assemble(draft, &bound, &sizes);
    yields::settle(&mut formula);
    // Where a line is missing, the sums are wrong without a fault of their own.
    if draft.unread.is_empty() && found.is_empty() {
        yields::check(draft, &formula, &mut found);
        usage::check(draft, &formula, &mut found);
        label::check(&formula, &mut found);
    }
    usage::check_units(draft, &mut found);
    usage::check_spoons(draft, around.spoons, &mut found);
    method::tie(draft, &mut formula, &mut found);
    found.dedup_by(|a, b| a.code == b.code && a.place == b.place && a.message == b.message);
    Checked { value: formula, diagnostics: found }
}

fn assemble(draft: &Draft, bound: &Bound, sizes: &sizes::Sizes) -> Formula {
    let components = draft.components.iter().enumerate().map(|(c, component)| Component {
        name: component.name.value.clone(),
        title: component.title.clone(),
        place: component.name.place(&draft.file),
        yields: yields::unsettled(component, &draft.file),
        stages: (0..component.stages.len()).map(|s| assemble_stage(draft, bound, sizes, (c, s))).collect(),
    });
    Formula {
        file: Arc::clone(&draft.file),
        name: draft.name.clone(),
        head: draft.head.clone(),
        components: components.collect(),
        quiets: draft.quiets.clone(),
    }
}

fn assemble_stage(draft: &Draft, bound: &Bound, sizes: &sizes::Sizes, at: (usize, usize)) -> Stage {
    let stage = &draft.components[at.0].stages[at.1];
    let share = |loss: &Option<crate::read::At<Fraction>>| loss.as_ref().map_or(Fraction::ZERO, |loss| loss.value);
    let lines: Vec<Line> = bound
        .lines(at)
        .iter()
        .zip(sizes.masses(at))
        .filter_map(|(line, mass)| {
            let content = line.content.clone()?;
            let title = line.draft.title.clone().unwrap_or_else(|| title_of(draft, at.0, &content));
            Some(Line {
                name: line.draft.name.value.clone(),
                content,
                mass: mass.clone(),
                written: line.draft.amount.value.clone(),
                pieces: line.draft.amount.value.pieces(),
                title,
                note: line.draft.note.clone(),
                temperature: line.draft.temperature,
                taken_out: line.draft.taken_out,
                after_scaling: line.draft.after_scaling,
                is_flour: line.is_flour,
                place: line.draft.amount.place(&draft.file),
            })
        })
        .collect();
    Stage {
        name: stage.name.value.clone(),
        title: stage.title.clone(),
        kind: stage.kind,
        place: stage.name.place(&draft.file),
        flour: lines.iter().filter(|line| line.is_flour).map(|line| line.mass.value).sum(),
        lines,
        steps: Vec::new(),
        boil_off: share(&stage.boil_off),
        loss: share(&stage.loss),
        kept_back: stage.kept_back.as_ref().map_or(Mass::ZERO, |mass| mass.value),
    }
}

fn title_of(draft: &Draft, component: usize, content: &Content) -> String {
    match content {
        Content::Ingredient(ingredient) => ingredient.called.clone(),
        Content::Stage(c, _) if *c != component => draft.components[*c].title.clone(),
        Content::Stage(c, s) => draft.components[*c].stages[*s].title.clone(),
        Content::Formula(blend) => blend.title.clone(),
    }
}

/// The shortest way to say a fault in a list of diagnostics.
pub(crate) type Found<'f> = &'f mut Vec<Diagnostic>;
