//! The overall formula: each ingredient's total over all stages, as a share of the total flour.

use super::weighed::weighed;
use crate::ingredient::Ingredient;
use crate::read::{Group, Leaven, StageKind};
use crate::resolve::formula::{Content, Formula, Stage};
use quantity::{Fraction, Mass};
use std::sync::Arc;

/// The overall formula of a component.
#[derive(Clone, Debug)]
pub struct Overall {
    /// All flour of the component, a culture's counted in.
    pub total_flour: Mass,
    /// The share of that flour which is fermented beforehand.
    pub prefermented: Fraction,
    /// Its rows: flours, water, salt, leaven, the rest, and what is added ready-made.
    pub rows: Vec<Row>,
    /// Everything together.
    pub total: Mass,
}

impl Overall {
    /// What goes into a stage.
    #[must_use]
    pub fn of_stage(&self, stage: usize) -> Mass {
        self.rows.iter().filter_map(|row| row.by_stage.get(stage)).copied().sum()
    }

    /// The stages that stand beside the whole: of several, those in which something is weighed.
    #[must_use]
    pub fn beside(&self, stages: usize) -> Vec<usize> {
        (0..stages).filter(|stage| stages > 1 && self.of_stage(*stage) > Mass::ZERO).collect()
    }

    /// All shares together.
    #[must_use]
    pub fn percent(&self) -> Fraction {
        self.rows.iter().filter_map(|row| row.percent).sum()
    }
}

/// A row of the overall formula.
#[derive(Clone, Debug)]
pub struct Row {
    /// What it is.
    pub kind: RowKind,
    /// How much over all stages.
    pub mass: Mass,
    /// As a share of the total flour; none where there is no flour.
    pub percent: Option<Fraction>,
    /// How much in each stage of the component.
    pub by_stage: Vec<Mass>,
    /// How much of it stays in the mix itself: what is taken out again, laid in by a stage of kind
    /// inclusion, or added after scaling does not wet, sweeten or enrich it.
    pub in_mix: Mass,
}

/// What a row of the overall formula is.
#[derive(Clone, Debug)]
pub enum RowKind {
    /// An ingredient that counts as flour.
    Flour(Arc<Ingredient>),
    /// Any other ingredient.
    Ingredient(Arc<Ingredient>),
    /// Another component or formula, added ready-made; its title.
    ReadyMade(String),
}

impl RowKind {
    /// What readers see.
    #[must_use]
    pub fn title(&self) -> &str {
        match self {
            Self::Flour(ingredient) | Self::Ingredient(ingredient) => &ingredient.called,
            Self::ReadyMade(title) => title,
        }
    }

    /// The ingredient, if it is one.
    #[must_use]
    pub const fn ingredient(&self) -> Option<&Arc<Ingredient>> {
        match self {
            Self::Flour(ingredient) | Self::Ingredient(ingredient) => Some(ingredient),
            Self::ReadyMade(_) => None,
        }
    }

    /// The trade's order: flours, water, salt, leaven, others, what is ready-made.
    fn rank(&self) -> u8 {
        match self {
            Self::Flour(_) => 0,
            Self::Ingredient(ingredient) if ingredient.is_water() => 1,
            Self::Ingredient(ingredient) if ingredient.group == Group::Salt => 2,
            Self::Ingredient(ingredient) if ingredient.is_alive() => 3,
            Self::Ingredient(_) => 4,
            Self::ReadyMade(_) => 5,
        }
    }

    fn is_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Flour(a), Self::Flour(b)) | (Self::Ingredient(a), Self::Ingredient(b)) => a.name == b.name,
            (Self::ReadyMade(a), Self::ReadyMade(b)) => a == b,
            _ => false,
        }
    }
}

/// Works out the overall formula of a component. Cultures are counted as their flour and water.
#[must_use]
pub fn overall(formula: &Formula, component: usize) -> Overall {
    overall_of(formula, component, |_| true)
}

/// The overall formula of those of a component's stages that count.
#[must_use]
pub fn overall_of(formula: &Formula, component: usize, counts: impl Fn(&Stage) -> bool) -> Overall {
    let stages = formula.components[component].stages.len();
    let mut rows: Vec<Row> = Vec::new();
    let mut add = |kind: RowKind, stage: usize, mass: Mass, in_mix: Fraction| {
        let at = rows.iter().position(|row| row.kind.is_same(&kind)).unwrap_or_else(|| {
            rows.push(Row { kind, mass: Mass::ZERO, percent: None, by_stage: vec![Mass::ZERO; stages], in_mix: Mass::ZERO });
            rows.len() - 1
        });
        rows[at].mass += mass;
        rows[at].by_stage[stage] += mass;
        rows[at].in_mix += mass * in_mix;
    };
    let mut fermented = Mass::ZERO;
    for part in weighed(formula, component).iter().filter(|part| part.stage.0 == component && counts(formula.stage(part.stage))) {
        let stage = part.stage.1;
        let kind = formula.components[component].stages[stage].kind;
        let is_preferment = kind.is_preferment();
        let is_added = kind == StageKind::Inclusion || part.line.after_scaling;
        let in_mix = if is_added { Fraction::ZERO } else { part.line.taken_out.left() };
        match &part.line.content {
            Content::Ingredient(ingredient) if ingredient.parts.is_empty() => {
                if part.line.is_flour && is_preferment {
                    fermented += part.mass;
                }
                add(kind_of(ingredient, part.line.is_flour), stage, part.mass, in_mix);
            }
            Content::Ingredient(mixed) => {
                for (single, share) in mixed.singles() {
                    let mass = part.mass * share;
                    let is_fermented = is_preferment || mixed.leaven == Some(Leaven::Culture);
                    if single.counts_as_flour && is_fermented {
                        fermented += mass;
                    }
                    add(kind_of(&single, single.counts_as_flour), stage, mass, in_mix);
                }
            }
            Content::Stage(c, _) if *c == component => {}
            Content::Stage(..) | Content::Formula(_) => {
                add(RowKind::ReadyMade(part.line.title.clone()), stage, part.mass, in_mix)
            }
        }
    }
    finish(rows, fermented)
}

fn kind_of(ingredient: &Arc<Ingredient>, is_flour: bool) -> RowKind {
    if is_flour { RowKind::Flour(Arc::clone(ingredient)) } else { RowKind::Ingredient(Arc::clone(ingredient)) }
}

fn finish(mut rows: Vec<Row>, fermented: Mass) -> Overall {
    rows.sort_by_key(|row| row.kind.rank());
    let total_flour: Mass = rows.iter().filter(|row| matches!(row.kind, RowKind::Flour(_))).map(|row| row.mass).sum();
    let share = |mass: Mass| (total_flour > Mass::ZERO).then(|| Fraction::ratio(mass / total_flour));
    for row in &mut rows {
        row.percent = share(row.mass);
    }
    let total = rows.iter().map(|row| row.mass).sum();
    Overall { total_flour, prefermented: share(fermented).unwrap_or_default(), rows, total }
}
