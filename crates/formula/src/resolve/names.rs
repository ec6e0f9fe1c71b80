//! Binding names: each line to a stage, a component, an ingredient or another formula.

use super::formula::Content;
use super::{Found, OtherFormula, Surroundings};
use crate::diagnostic::told_enough;
use crate::fault;
use crate::ingredient::{Ingredient, did_you_mean, nearest};
use crate::read::{At, Draft, LineDraft, Uses};
use crate::source::LONGEST_CHAIN;
use quantity::Fraction;
use std::collections::BTreeMap;

/// A line with what it was bound to.
pub struct BoundLine<'d> {
    /// The line as written.
    pub draft: &'d LineDraft,
    /// What it is, unless its name means nothing.
    pub content: Option<Content>,
    /// Whether percentages are shares of it.
    pub is_flour: bool,
}

impl BoundLine<'_> {
    /// The share of its mass that is flour, a culture's flour counted in.
    pub fn flour_share(&self) -> Fraction {
        match &self.content {
            Some(Content::Ingredient(ingredient)) if ingredient.parts.is_empty() => {
                if self.is_flour {
                    Fraction::WHOLE
                } else {
                    Fraction::ZERO
                }
            }
            Some(Content::Ingredient(ingredient)) => ingredient.flour_share(),
            Some(Content::Formula(blend)) => {
                Fraction::ratio(blend.ingredients.iter().filter(|(_, flour, _)| *flour).map(|(_, _, grams)| grams).sum())
            }
            Some(Content::Stage(..)) | None => Fraction::ZERO,
        }
    }
}

/// All lines of a draft, bound, by component and stage.
pub struct Bound<'d> {
    stages: Vec<Vec<Vec<BoundLine<'d>>>>,
}

impl<'d> Bound<'d> {
    /// The lines of a stage.
    pub fn lines(&self, (component, stage): (usize, usize)) -> &[BoundLine<'d>] {
        &self.stages[component][stage]
    }

    /// The lines of a stage, to be changed.
    pub fn lines_mut(&mut self, (component, stage): (usize, usize)) -> &mut [BoundLine<'d>] {
        &mut self.stages[component][stage]
    }

    /// Every stage with its lines.
    pub fn all(&self) -> impl Iterator<Item = ((usize, usize), &[BoundLine<'d>])> {
        self.stages
            .iter()
            .enumerate()
            .flat_map(|(c, stages)| stages.iter().enumerate().map(move |(s, lines)| ((c, s), lines.as_slice())))
    }
}

/// Binds every line of a draft.
pub fn bind<'d>(draft: &'d Draft, around: &Surroundings, found: Found) -> Bound<'d> {
    report_twice(draft, found);
    let mut binder = Binder { draft, around, found };
    let mut stages = Vec::new();
    for (c, component) in draft.components.iter().enumerate() {
        let bound = component
            .stages
            .iter()
            .enumerate()
            .map(|(s, stage)| stage.lines.iter().map(|line| binder.bind_line((c, s), line)).collect());
        stages.push(bound.collect());
    }
    Bound { stages }
}

/// Two components, or two stages of a component, of one name.
fn report_twice(draft: &Draft, found: Found) {
    let mut report = |kind: &str, names: &mut dyn Iterator<Item = &At<String>>| {
        let mut seen = BTreeMap::new();
        for name in names.filter(|name| !name.value.is_empty()) {
            if seen.insert(name.value.clone(), ()).is_some() {
                let message = format!("a second {kind} is called “{}”", name.value);
                found.push(fault::NAME_TWICE.at(name.place(&draft.file), message).hint("give it a name of its own"));
            }
        }
    };
    report("component", &mut draft.components.iter().map(|component| &component.name));
    for component in &draft.components {
        report("stage", &mut component.stages.iter().map(|stage| &stage.name));
    }
}

struct Binder<'d, 'a> {
    draft: &'d Draft,
    around: &'a Surroundings<'a>,
    found: Found<'a>,
}

impl<'d> Binder<'d, '_> {
    fn bind_line(&mut self, at: (usize, usize), line: &'d LineDraft) -> BoundLine<'d> {
        let content = match &line.uses {
            Uses::OwnName => self.own_name(at, &line.name),
            Uses::Ingredient(name) => self.ingredient(name),
            Uses::Stage(name) => self.stage(at, name),
            Uses::Component(name) => self.component(at, name),
            Uses::Formula(name) => self.formula(name),
        };
        if let Some(Content::Ingredient(ingredient)) = &content {
            self.notice_untranslated(ingredient, line);
        }
        let is_flour = match &content {
            Some(Content::Ingredient(ingredient)) => {
                line.as_flour.unwrap_or(ingredient.counts_as_flour && ingredient.parts.is_empty())
            }
            _ => false,
        };
        BoundLine { draft: line, content, is_flour }
    }

    /// An ingredient that readers would see in English on a page of another language.
    fn notice_untranslated(&mut self, ingredient: &Ingredient, line: &LineDraft) {
        if line.title.is_none() && self.around.pantry.is_untranslated(ingredient) {
            let message =
                format!("“{}” has no name in the book's language: readers see “{}”", ingredient.name, ingredient.called);
            let found = fault::NAME_UNTRANSLATED.at(line.name.place(&self.draft.file), message);
            self.found.push(found.hint("give the line a `title` of your own"));
        }
    }

    fn own_name(&mut self, at: (usize, usize), name: &At<String>) -> Option<Content> {
        if let Some(content) = self.find_stage(at, &name.value).or_else(|| self.find_component(at, &name.value)) {
            return Some(content);
        }
        if let Some(ingredient) = self.around.pantry.find(&name.value) {
            return Some(Content::Ingredient(ingredient.clone()));
        }
        match (self.around.other_formula)(&name.value) {
            OtherFormula::Unknown => self.unknown_ingredient(at, name),
            other => self.bind_formula(name, other),
        }
    }

    fn find_stage(&self, (c, own): (usize, usize), name: &str) -> Option<Content> {
        let stages = &self.draft.components[c].stages;
        let s = stages.iter().enumerate().position(|(s, stage)| stage.name.value == name && s != own)?;
        Some(Content::Stage(c, s))
    }

    fn find_component(&self, (own, _): (usize, usize), name: &str) -> Option<Content> {
        let components = &self.draft.components;
        let c = components.iter().enumerate().position(|(c, component)| component.name.value == name && c != own)?;
        let last = components[c].stages.len().checked_sub(1)?;
        Some(Content::Stage(c, last))
    }

    fn unknown_ingredient(&mut self, (c, _): (usize, usize), name: &At<String>) -> Option<Content> {
        if told_enough(self.found, fault::UNKNOWN_INGREDIENT.code) {
            return None;
        }
        let stages = self.draft.components[c].stages.iter().map(|stage| stage.name.value.as_str());
        let components = self.draft.components.iter().map(|component| component.name.value.as_str());
        let near = nearest(&name.value, stages.chain(components)).or_else(|| self.around.pantry.nearest(&name.value));
        let message = format!("“{}” is no ingredient, stage, component or formula", name.value);
        let found = fault::UNKNOWN_INGREDIENT.at(name.place(&self.draft.file), message);
        self.found.push(match near {
            Some(near) => found.hint(did_you_mean(near)).replace_with(format!("write “{near}”"), near),
            None => found.hint("search with `wellproved ingredients WORD`, or describe it in a file of ingredients/"),
        });
        None
    }

    fn ingredient(&mut self, name: &At<String>) -> Option<Content> {
        if let Some(ingredient) = self.around.pantry.find(&name.value) {
            return Some(Content::Ingredient(ingredient.clone()));
        }
        let near = self.around.pantry.nearest(&name.value).map(str::to_owned);
        self.unknown(&fault::UNKNOWN_INGREDIENT, name, "ingredient", near)
    }

    fn stage(&mut self, at: (usize, usize), name: &At<String>) -> Option<Content> {
        if let Some(content) = self.find_stage(at, &name.value) {
            return Some(content);
        }
        let names = self.draft.components[at.0].stages.iter().map(|stage| stage.name.value.as_str());
        let near = nearest(&name.value, names).map(str::to_owned);
        self.unknown(&fault::UNKNOWN_STAGE, name, "other stage of this component", near)
    }

    fn component(&mut self, at: (usize, usize), name: &At<String>) -> Option<Content> {
        if let Some(content) = self.find_component(at, &name.value) {
            return Some(content);
        }
        let names = self.draft.components.iter().map(|component| component.name.value.as_str());
        let near = nearest(&name.value, names).map(str::to_owned);
        self.unknown(&fault::UNKNOWN_COMPONENT, name, "other component of this formula", near)
    }

    fn formula(&mut self, name: &At<String>) -> Option<Content> {
        let other = (self.around.other_formula)(&name.value);
        self.bind_formula(name, other)
    }

    fn bind_formula(&mut self, name: &At<String>, other: OtherFormula) -> Option<Content> {
        match other {
            OtherFormula::Makes(blend) => Some(Content::Formula(blend)),
            OtherFormula::Faulty => {
                let message = format!("the formula “{}” cannot be worked out itself", name.value);
                let found = fault::FAULTY_FORMULA.at(name.place(&self.draft.file), message);
                self.found.push(found.hint("mend its own faults first"));
                None
            }
            OtherFormula::TooFar => {
                let message =
                    format!("“{}” is reached by way of more than {LONGEST_CHAIN} formulas that each use the next", name.value);
                let found = fault::NESTED_TOO_DEEP.at(name.place(&self.draft.file), message);
                self.found.push(found.hint("let one of them weigh its ingredients itself"));
                None
            }
            OtherFormula::Unknown => {
                let near = (self.around.nearest_formula)(&name.value);
                self.unknown(&fault::UNKNOWN_FORMULA, name, "formula of this book", near)
            }
            OtherFormula::Circle(path) => {
                let message = format!("“{}” leads back to itself: {}", name.value, path.join(" → "));
                let found = fault::CIRCULAR_FORMULAS.at(name.place(&self.draft.file), message);
                self.found.push(found.hint("one of them must do without the other"));
                None
            }
        }
    }

    fn unknown(&mut self, fault: &fault::Fault, name: &At<String>, what: &str, near: Option<String>) -> Option<Content> {
        let mut found = fault.at(name.place(&self.draft.file), format!("there is no {what} called “{}”", name.value));
        found.hint = near.map(|near| did_you_mean(&near));
        self.found.push(found);
        None
    }
}
