//! A formula with every name bound and every amount in gram.

pub use super::step::{Shown, Step, Word};

use crate::ingredient::Ingredient;
use crate::read::{Amount, EggSize, Group, Head, Quiet, StageKind};
use crate::{Known, Place};
use quantity::{Between, Count, Fraction, Length, Mass, Temperature, Volume};
use std::sync::Arc;

/// A formula, worked out.
#[derive(Clone, Debug)]
pub struct Formula {
    /// The file it stands in.
    pub file: Arc<str>,
    /// The name by which other formulas call it.
    pub name: String,
    /// What stands before the components.
    pub head: Head,
    /// What is served together.
    pub components: Vec<Component>,
    /// What the author silenced.
    pub quiets: Vec<Quiet>,
}

/// A stage of a formula: which component, and which of its stages.
pub type StageAt = (usize, usize);

impl Formula {
    /// Every stage, in working order.
    pub fn stages(&self) -> impl Iterator<Item = (StageAt, &Stage)> {
        let components = self.components.iter().enumerate();
        components.flat_map(|(c, component)| component.stages.iter().enumerate().map(move |(s, stage)| ((c, s), stage)))
    }

    /// Every line with the stage it stands in.
    pub fn lines(&self) -> impl Iterator<Item = (StageAt, &Line)> {
        self.stages().flat_map(|(at, stage)| stage.lines.iter().map(move |line| (at, line)))
    }

    /// Every step with the stage it stands in.
    pub fn steps(&self) -> impl Iterator<Item = (StageAt, &Step)> {
        self.stages().flat_map(|(at, stage)| stage.steps.iter().map(move |step| (at, step)))
    }

    /// The stage at a place that one of this formula's own iterators or lines gave.
    #[must_use]
    pub fn stage(&self, (c, s): StageAt) -> &Stage {
        &self.components[c].stages[s]
    }

    /// A stretch of its file.
    #[must_use]
    pub fn place(&self, span: &std::ops::Range<usize>) -> Place {
        Place { file: Arc::clone(&self.file), span: span.clone() }
    }
}

/// What is served with the rest: muffins, syrup, whipped curd.
#[derive(Clone, Debug)]
pub struct Component {
    /// How the text calls it.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// What comes of it.
    pub yields: Yield,
    /// Its stages in working order.
    pub stages: Vec<Stage>,
    /// Where its name stands.
    pub place: Place,
}

/// What comes of a component.
#[derive(Clone, Debug)]
pub struct Yield {
    /// How many pieces.
    pub pieces: Option<Count>,
    /// The words for one piece and for more.
    pub piece: (String, String),
    /// What one piece weighs raw.
    pub scaling_weight: Option<Mass>,
    /// How thick a piece is when it meets the heat.
    pub thickness: Option<Length>,
    /// What the last stage makes, without what is added after scaling.
    pub made: Mass,
    /// What is added once the pieces are scaled.
    pub after_scaling: Mass,
    /// What stays in bowls, as a share of what is made.
    pub make_up_loss: Fraction,
    /// What heat drives off, as a share of the raw weight.
    pub bake_loss: Fraction,
    /// How many people it serves.
    pub serves: Option<Count>,
    /// The volume of the tin it is written for, and how many.
    pub tin: Option<(Volume, Count)>,
    /// Where it stands, if it is stated.
    pub place: Option<Place>,
}

impl Yield {
    /// What all weighs raw, after make-up.
    #[must_use]
    pub fn raw(&self) -> Mass {
        self.made * self.make_up_loss.left()
    }

    /// What all weighs when it is done.
    #[must_use]
    pub fn done(&self) -> Mass {
        self.raw() * self.bake_loss.left() + self.after_scaling
    }

    /// The word for so many pieces.
    #[must_use]
    pub fn word(&self, count: Count) -> &str {
        if count == Count::pieces(1.0) { &self.piece.0 } else { &self.piece.1 }
    }
}

/// A stage: a sponge, a soaker, the final mix, a syrup.
#[derive(Clone, Debug)]
pub struct Stage {
    /// How the text calls it.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// What it is.
    pub kind: StageKind,
    /// Its ingredients.
    pub lines: Vec<Line>,
    /// Its steps.
    pub steps: Vec<Step>,
    /// The flour weighed into it.
    pub flour: Mass,
    /// Water that leaves as steam, as a share of the mix.
    pub boil_off: Fraction,
    /// What stays behind, as a share of the rest.
    pub loss: Fraction,
    /// What is kept for next time.
    pub kept_back: Mass,
    /// Where its name stands.
    pub place: Place,
}

impl Stage {
    /// All that goes in.
    #[must_use]
    pub fn mixed(&self) -> Mass {
        self.lines.iter().map(|line| line.mass.value).sum()
    }

    /// What is taken out again, strained or lifted.
    #[must_use]
    pub fn taken_out(&self) -> Mass {
        self.lines.iter().map(|line| line.mass.value * line.taken_out).sum()
    }

    /// What comes out and can be used.
    #[must_use]
    pub fn made(&self) -> Mass {
        (self.mixed() * self.boil_off.left() - self.taken_out()) * self.loss.left() - self.kept_back
    }

    /// The share of everything weighed in that a weight of the product takes; what is kept back for next
    /// time has its share too.
    #[must_use]
    pub fn share(&self, product: Mass) -> f64 {
        let whole = self.made() + self.kept_back;
        if whole > Mass::ZERO { product / whole } else { 0.0 }
    }

    /// The stages whose products are weighed in, one for each line that does.
    pub fn uses(&self) -> impl Iterator<Item = StageAt> {
        self.lines.iter().filter_map(|line| match line.content {
            Content::Stage(c, s) => Some((c, s)),
            _ => None,
        })
    }

    /// The other formulas whose products are weighed in, one for each line that does.
    pub fn uses_formulas(&self) -> impl Iterator<Item = &Arc<Formula>> {
        self.lines.iter().filter_map(|line| match &line.content {
            Content::Formula(blend) => Some(&blend.formula),
            _ => None,
        })
    }

    /// What is added once the pieces are scaled.
    #[must_use]
    pub fn after_scaling(&self) -> Mass {
        self.lines.iter().filter(|line| line.after_scaling).map(|line| line.mass.value * line.taken_out.left()).sum()
    }
}

/// A line of a stage's ingredients.
#[derive(Clone, Debug)]
pub struct Line {
    /// Its name in the text.
    pub name: String,
    /// What it is.
    pub content: Content,
    /// How much of it.
    pub mass: Known<Mass>,
    /// How much, as written.
    pub written: Amount,
    /// How many pieces that is, where the author counts it.
    pub pieces: Option<Count>,
    /// What readers see.
    pub title: String,
    /// How it should be.
    pub note: Option<String>,
    /// How warm it goes in.
    pub temperature: Option<Between<Temperature>>,
    /// The share of it that is taken out again.
    pub taken_out: Fraction,
    /// Whether it is added once the pieces are scaled.
    pub after_scaling: bool,
    /// Whether percentages of this stage are shares of it.
    pub is_flour: bool,
    /// Where it stands.
    pub place: Place,
}

impl Line {
    /// The ingredient, if it is a single one.
    #[must_use]
    pub const fn ingredient(&self) -> Option<&Arc<Ingredient>> {
        match &self.content {
            Content::Ingredient(one) => Some(one),
            _ => None,
        }
    }

    /// The ingredients, those of another formula's product counted in.
    pub fn ingredients(&self) -> impl Iterator<Item = &Arc<Ingredient>> {
        let blend = match &self.content {
            Content::Formula(blend) => &blend.ingredients[..],
            _ => &[],
        };
        self.ingredient().into_iter().chain(blend.iter().map(|(one, ..)| one))
    }

    /// How many pieces a part of the line is, where the author counts it.
    #[must_use]
    pub fn pieces_of(&self, part: Mass) -> Option<Count> {
        self.pieces.filter(|_| self.mass.value > Mass::ZERO).map(|pieces| pieces * (part / self.mass.value))
    }

    /// The size class of its eggs: as written, or else the usual one.
    #[must_use]
    pub fn egg_size(&self, usual: EggSize) -> EggSize {
        match self.written {
            Amount::Eggs(_, size) => size,
            _ => usual,
        }
    }

    /// What so many pieces are called: eggs take their plural, other titles are the author's own.
    #[must_use]
    pub fn counted_title(&self, pieces: Count) -> String {
        let is_egg = matches!(&self.content, Content::Ingredient(one) if one.group == Group::Egg);
        let plural = if is_egg && pieces > Count::pieces(1.0) { "s" } else { "" };
        format!("{}{plural}", self.title)
    }
}

/// What a line is made of.
#[derive(Clone, Debug)]
pub enum Content {
    /// An ingredient.
    Ingredient(Arc<Ingredient>),
    /// A stage of the same formula: which component, which of its stages.
    Stage(usize, usize),
    /// The product of another formula.
    Formula(Arc<Blend>),
}

/// What another formula makes, as a mix of ingredients.
#[derive(Clone, Debug)]
pub struct Blend {
    /// The formula's name.
    pub name: String,
    /// The formula's title.
    pub title: String,
    /// How much it makes as written.
    pub made: Mass,
    /// What was weighed in for each gram that comes out; flour marked as its lines were.
    pub ingredients: Vec<(Arc<Ingredient>, bool, f64)>,
    /// The formula itself, as written: its steps take their time too.
    pub formula: Arc<Formula>,
}
