//! What is in each stage's product, stages before it counted in, and whether it meets heat afterwards.

use super::case::plain;
use formula::ingredient::Figure;
use formula::read::{Action, Condition, Group, Leaven};
use formula::resolve::formula::{StageAt, Word};
use formula::{Content, Formula, Ingredient, Line, Stage, Step};
use quantity::{Between, Fraction, Mass, SpoonSystem, Temperature, print};
use std::collections::{BTreeMap, BTreeSet};

/// What a product holds that rules ask about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Traits(u8);

impl Traits {
    /// Flour as milled.
    pub const FLOUR: Self = Self(1);
    /// Egg as laid.
    pub const EGG: Self = Self(2);
    /// Milk, cream, fresh cheese.
    pub const MILK: Self = Self(4);
    /// Yeast of any form.
    pub const YEAST: Self = Self(8);
    /// Yeast or a sourdough culture.
    pub const LEAVEN: Self = Self(16);

    /// Whether it holds any of these.
    #[must_use]
    pub const fn has(self, other: Self) -> bool {
        self.0 & other.0 != 0
    }

    /// Both together.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// What an ingredient brings.
    #[must_use]
    pub fn of(one: &Ingredient) -> Self {
        let own = [
            ((one.group == Group::Flour || one.counts_as_flour) && !one.heat_treated, Self::FLOUR),
            (is_egg(one) && !one.heat_treated, Self::EGG),
            (one.group == Group::Dairy && !is_dry_dairy(one), Self::MILK),
            (one.yeast().is_some(), Self::YEAST.with(Self::LEAVEN)),
            (one.leaven == Some(Leaven::Culture), Self::LEAVEN),
        ];
        let own = own.into_iter().filter(|(has, _)| *has).map(|(_, trait_)| trait_);
        own.chain(one.parts.iter().map(|(part, _)| Self::of(part))).fold(Self::default(), Self::with)
    }
}

/// An author's own that names egg as an allergen, and no group, is taken for egg: a caution too many does no harm.
fn is_egg(one: &Ingredient) -> bool {
    one.group == Group::Egg || (one.own && one.group == Group::Other && one.carries(&["eggs"]))
}

/// Butter, powders, sugared and hard cheese, all under two fifths water, keep out of the fridge for a day
/// without harm: common practice, no source.
fn is_dry_dairy(one: &Ingredient) -> bool {
    one.composition.share(Figure::Water).is_some_and(|water| water < Fraction::percent(40.0))
}

/// Traits and heat of all stages.
#[derive(Debug, Default)]
pub struct Stages {
    traits: BTreeMap<StageAt, Traits>,
    users: BTreeMap<StageAt, Vec<(StageAt, usize)>>,
}

impl Stages {
    /// Works them out: what a stage holds goes on to every stage that uses it.
    #[must_use]
    pub fn of(formula: &Formula) -> Self {
        let mut all = Self::default();
        for (at, stage) in formula.stages() {
            let ingredients = stage.lines.iter().flat_map(Line::ingredients);
            let own = ingredients.map(|one| Traits::of(one)).fold(Traits::default(), Traits::with);
            all.traits.insert(at, own);
            for (l, line) in stage.lines.iter().enumerate() {
                if let Content::Stage(c, s) = line.content {
                    all.users.entry((c, s)).or_default().push((at, l));
                }
            }
        }
        let mut grown: Vec<StageAt> = all.traits.keys().copied().collect();
        while let Some(at) = grown.pop() {
            let own = all.traits(at);
            for (user, _) in all.users.get(&at).into_iter().flatten() {
                let held = all.traits.entry(*user).or_default();
                if held.with(own) != *held {
                    *held = held.with(own);
                    grown.push(*user);
                }
            }
        }
        all
    }

    /// What the product of a stage holds.
    #[must_use]
    pub fn traits(&self, at: StageAt) -> Traits {
        self.traits.get(&at).copied().unwrap_or_default()
    }

    /// The lines that use the product of a stage.
    pub fn users(&self, at: StageAt) -> impl Iterator<Item = (StageAt, usize)> {
        self.users.get(&at).into_iter().flatten().copied()
    }

    /// Everything that is done to what rises in a component, and to what it goes into.
    #[must_use]
    pub fn actions_from(&self, formula: &Formula, component: usize) -> BTreeSet<Action> {
        let stages = 0..formula.components[component].stages.len();
        let mut open: Vec<StageAt> = stages.map(|s| (component, s)).collect();
        let mut seen: BTreeSet<StageAt> = open.iter().copied().collect();
        let mut actions = BTreeSet::new();
        while let Some(at) = open.pop() {
            let steps = if self.traits(at).has(Traits::LEAVEN) { &formula.stage(at).steps[..] } else { &[] };
            actions.extend(steps.iter().map(|step| step.action));
            open.extend(self.users(at).map(|(user, _)| user).filter(|user| seen.insert(*user)));
        }
        actions
    }

    /// Whether a line meets heat in the step that first names it, in a later one, or in a stage its product goes into.
    #[must_use]
    pub fn is_heated(&self, formula: &Formula, at: StageAt, line: usize) -> bool {
        let mut open = vec![(at, line)];
        let mut seen = BTreeSet::new();
        while let Some((at, line)) = open.pop() {
            let stage = formula.stage(at);
            let first = first_use(stage, at.1, line);
            if stage.steps[first..].iter().any(heats) {
                return true;
            }
            open.extend(self.users(at).filter(|(user, _)| seen.insert(*user)));
        }
        false
    }
}

/// The step that first names a line; the first step where none does.
fn first_use(stage: &Stage, s: usize, line: usize) -> usize {
    let names = |step: &Step| {
        step.words.iter().any(|word| matches!(word, Word::Line { stage, line: l, .. } if *stage == s && *l == line))
    };
    stage.steps.iter().position(names).unwrap_or(0)
}

/// The heat from which a step is taken to cook what is in it.
const COOKING: Temperature = Temperature::celsius(65.0);

/// Whether a step brings food to a heat at which egg and flour are cooked.
#[must_use]
pub fn heats(step: &Step) -> bool {
    let hot = |range: &Between<Temperature>| range.to >= COOKING;
    let condition = match &step.until {
        Some(Condition::Core(range) | Condition::At(range)) => hot(range),
        _ => false,
    };
    let said = |word: &Word| match word {
        Word::Measure(measure) => measure.temperature().as_ref().is_some_and(hot),
        _ => false,
    };
    // An egg wash that is brushed on before baking goes into the oven with the rest.
    let washes = step.action == Action::Glaze && plain(&step.words).contains("before");
    step.action.cooks() || washes || condition || step.temperature.as_ref().is_some_and(hot) || step.words.iter().any(said)
}

/// Whether the author thinks of a line by volume.
#[must_use]
pub fn is_spooned(line: &Line) -> bool {
    matches!(&line.written, formula::read::Amount::Measure(measure) if measure.volume(SpoonSystem::Metric).is_some())
}

/// A weight as an author types it: with a plain space and digits in one piece.
#[must_use]
pub fn written(mass: Mass) -> String {
    print::mass(mass).replace('\u{202f}', "").replace(print::NO_BREAK_SPACE, " ")
}
