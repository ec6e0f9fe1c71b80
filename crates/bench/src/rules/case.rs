//! What rules judge: a formula in a kitchen, with what several rules ask about it worked out once.

use super::customs::{Custom, Figure, custom};
use super::stages::{Stages, Traits};
use super::texts::{Sentence, head};
use crate::forecast::{Forecast, Foreseen, foresee_for_rules};
use formula::arithmetic::{Figures, Overall, RowKind, figures, overall_of};
use formula::read::{Action, BookSettings, Group, Kitchen, Leaven, StageKind};
use formula::resolve::formula::Word;
use formula::{Component, Content, Formula, Ingredient, Line, Place, Stage};
use quantity::{Between, Fraction, Mass, TimeSpan, print};

/// A formula in a kitchen.
pub struct Case<'c> {
    /// The formula.
    pub formula: &'c Formula,
    /// The kitchen it is made in.
    pub kitchen: &'c Kitchen,
    /// The settings of its book.
    pub settings: &'c BookSettings,
    /// Its components with flour, each with its figures.
    pub products: Vec<Product>,
    /// The sentences of its head: title, intro, tags, notes, storage.
    pub head: Vec<Sentence>,
    /// What it will do in that kitchen.
    pub forecast: Forecast,
    /// What is in its stages, and whether it is heated.
    pub stages: Stages,
}

/// A component with flour.
pub struct Product {
    /// Which component it is.
    pub component: usize,
    /// The overall formula of its dough or batter, without fillings and what is put on.
    pub overall: Overall,
    /// The baker's figures.
    pub figures: Option<Figures>,
    /// The kind of product, where its custom is known.
    pub kind: Option<&'static str>,
}

impl Product {
    /// What is customary for its kind.
    #[must_use]
    pub fn custom(&self) -> Option<&'static Custom> {
        custom(self.kind?)
    }
}

impl<'c> Case<'c> {
    /// Works out what rules ask about.
    #[must_use]
    pub fn of(formula: &'c Formula, kitchen: &'c Kitchen, settings: &'c BookSettings) -> Self {
        let stages = Stages::of(formula);
        let forecast = foresee_for_rules(formula, kitchen);
        let mut case = Self { formula, kitchen, settings, products: Vec::new(), head: head(formula), forecast, stages };
        for component in 0..formula.components.len() {
            let overall = dough(formula, component);
            if overall.total_flour > Mass::ZERO {
                let figures = figures(&overall);
                let kind = figures.as_ref().and_then(|figures| case.kind(component, &overall, figures));
                case.products.push(Product { component, overall, figures, kind });
            }
        }
        case
    }

    /// What is foreseen of every waiting step.
    pub fn foreseen(&self) -> impl Iterator<Item = &Foreseen> {
        self.forecast.rises.iter().flat_map(|rise| &rise.steps)
    }

    /// Every ingredient of the formula, those of other formulas it uses counted in.
    pub fn ingredients(&self) -> impl Iterator<Item = &'c Ingredient> {
        self.formula.lines().flat_map(|(_, line)| line.ingredients().map(AsRef::as_ref))
    }

    /// Whether a component is made in pieces and brought to heat.
    #[must_use]
    pub fn is_cooked_in_pieces(&self, component: &Component) -> bool {
        let mut steps = component.stages.iter().flat_map(|stage| &stage.steps);
        steps.any(|step| matches!(step.action, Action::Bake | Action::Griddle | Action::Fry))
    }

    /// The kind of product, from its composition and steps; none where nothing ferments.
    fn kind(&self, component: usize, overall: &Overall, figures: &Figures) -> Option<&'static str> {
        let last = self.formula.components[component].stages.len().checked_sub(1)?;
        let traits = self.stages.traits((component, last));
        if !traits.has(Traits::LEAVEN) {
            return None;
        }
        let actions = self.stages.actions_from(self.formula, component);
        let is_loose = figures.true_hydration.value >= Fraction::percent(85.0);
        let flour = |test: &dyn Fn(&Ingredient) -> bool| share_of_flour(overall, test);
        let has_gluten = |one: &Ingredient| one.carries(super::claims::GLUTEN);
        Some(if actions.contains(&Action::Fry) {
            if is_loose { "frying-batter" } else { "fried-dough" }
        } else if actions.contains(&Action::Griddle) {
            "griddle-cake"
        } else if flour(&has_gluten) == Fraction::ZERO {
            "without-gluten"
        } else if flour(&|one| one.carries(&["rye"])) >= Fraction::percent(50.0) {
            "rye-bread"
        } else if figures.fat.value >= Fraction::percent(20.0) {
            "rich-dough"
        } else if figures.fat.value >= Fraction::percent(5.0)
            || figures.sugars.value >= Fraction::percent(5.0)
            || figures.egg >= Fraction::percent(5.0)
        {
            "enriched-dough"
        } else {
            "lean-bread"
        })
    }

    /// The line that gives most of a figure, or else the component's name.
    #[must_use]
    pub fn culprit(&self, product: &Product, figure: Figure) -> Place {
        let component = &self.formula.components[product.component];
        let weight = |line: &Line| match &line.content {
            Content::Ingredient(one) if !line.is_flour => line.mass.value.as_grams() * part(one, figure),
            Content::Stage(c, s) if matches!(figure, Figure::Prefermented) => {
                let made = self.formula.components.get(*c).and_then(|one| one.stages.get(*s));
                if made.is_some_and(|stage| stage.kind.is_preferment()) { line.mass.value.as_grams() } else { 0.0 }
            }
            _ => 0.0,
        };
        let lines = component.stages.iter().flat_map(|stage| &stage.lines);
        let most = lines.map(|line| (weight(line), line)).filter(|(weight, _)| *weight > 0.0).max_by(|a, b| a.0.total_cmp(&b.0));
        most.map_or_else(|| component.place.clone(), |(_, line)| line.place.clone())
    }
}

/// The overall formula of a component's dough or batter, without what is laid in, filled in or put on at making-up.
fn dough(formula: &Formula, component: usize) -> Overall {
    let is_put_on = |stage: &Stage| matches!(stage.kind, StageKind::MakeUp | StageKind::Inclusion);
    let has_dough = formula.components[component].stages.iter().any(|stage| stage.kind == StageKind::FinalMix);
    overall_of(formula, component, |stage| !has_dough || !is_put_on(stage))
}

/// The part of an ingredient that counts toward a figure.
fn part(one: &Ingredient, figure: Figure) -> f64 {
    let share = |figure| one.composition.share(figure).map_or(0.0, Fraction::as_ratio);
    let whole = |counts: bool| if counts { 1.0 } else { 0.0 };
    match figure {
        Figure::Hydration => share(formula::ingredient::Figure::Water),
        Figure::Sugars => share(formula::ingredient::Figure::Sugars),
        Figure::Fat => share(formula::ingredient::Figure::Fat),
        Figure::Salt => whole(one.group == Group::Salt),
        Figure::Yeast => whole(one.yeast().is_some()),
        Figure::Prefermented => whole(one.leaven == Some(Leaven::Culture)),
    }
}

fn share_of_flour(overall: &Overall, test: &dyn Fn(&Ingredient) -> bool) -> Fraction {
    let flours = overall.rows.iter().filter(|row| matches!(row.kind, RowKind::Flour(_)));
    let counted = flours.filter(|row| row.kind.ingredient().is_some_and(|one| test(one)));
    Fraction::ratio(counted.map(|row| row.mass).sum::<Mass>() / overall.total_flour)
}

/// The lines of its own stage that a step's sentence names, each once.
pub fn named<'s>(stage: &'s Stage, at: usize, words: &'s [Word]) -> impl Iterator<Item = &'s Line> {
    words.iter().filter_map(move |word| match word {
        Word::Line { stage: s, line, .. } if *s == at => stage.lines.get(*line),
        _ => None,
    })
}

/// What a word of a sentence reads as where only its plain words matter.
#[must_use]
pub fn plain(words: &[Word]) -> String {
    let mut text = String::new();
    for word in words {
        match word {
            Word::Text(words) => text.push_str(words),
            _ => text.push('·'),
        }
    }
    text.to_lowercase()
}

/// A time, rounded as a person would tell it.
pub fn time(span: TimeSpan) -> String {
    print::time(print::rounded_time(Between::just(span)))
}
