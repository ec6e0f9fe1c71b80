//! The gram of every line: stages sized by their flours, their weight, their use or the yield.

use super::amounts::{Size, size_of};
use super::basis::{self, Basis};
use super::formula::Content;
use super::formula::StageAt;
use super::names::Bound;
use super::{Found, Surroundings};
use crate::fault;
use crate::read::{Draft, PercentOf, StageDraft};
use crate::{Known, Origin};
use quantity::{Fraction, Mass};
use std::collections::{BTreeMap, BTreeSet, VecDeque};

/// What was found for each stage.
#[derive(Default)]
pub struct Sizes {
    masses: BTreeMap<StageAt, Vec<Known<Mass>>>,
}

impl Sizes {
    /// The mass of each line of a stage, unbound ones as nothing.
    pub fn masses(&self, at: StageAt) -> &[Known<Mass>] {
        self.masses.get(&at).map_or(&[], Vec::as_slice)
    }
}

/// A stage on its way to being sized.
pub struct Sizing<'s> {
    /// The draft.
    pub draft: &'s Draft,
    /// Its bound lines.
    pub bound: &'s Bound<'s>,
    /// The size of each line as far as it can be said on its own.
    pub sizes: BTreeMap<StageAt, Vec<Option<Size>>>,
    /// The lines that use each stage.
    users: BTreeMap<StageAt, Vec<(StageAt, usize)>>,
    /// What is made by the stages that are sized already.
    pub made: BTreeMap<StageAt, Mass>,
    /// Each component's total flour, where percentages are shares of it.
    pub total_flour: BTreeMap<usize, Mass>,
    done: Sizes,
}

/// Sizes every stage; what has no size is reported once and counts as nothing.
pub fn work_out(draft: &Draft, bound: &Bound, around: &Surroundings, found: Found) -> Sizes {
    let mut sizes = BTreeMap::new();
    for (at, lines) in bound.all() {
        sizes.insert(at, lines.iter().map(|line| size_of(draft, line, around, found)).collect());
    }
    let users = users(bound);
    let mut sizing =
        Sizing { draft, bound, sizes, users, made: BTreeMap::new(), total_flour: BTreeMap::new(), done: Sizes::default() };
    basis::total_flours(&mut sizing, found);
    let mut open: BTreeSet<StageAt> = bound.all().map(|(at, _)| at).collect();
    let mut next: VecDeque<StageAt> = open.iter().copied().collect();
    while let Some(at) = next.pop_front() {
        // A stage is tried again when one that it uses, or that uses it, has been sized.
        if open.contains(&at) && sizing.try_stage(at, found) {
            open.remove(&at);
            next.extend(sizing.neighbours(at).filter(|other| open.contains(other)));
        }
    }
    sizing.give_up(&open, found);
    sizing.done
}

/// The lines that use each stage.
fn users(bound: &Bound) -> BTreeMap<StageAt, Vec<(StageAt, usize)>> {
    let mut users: BTreeMap<StageAt, Vec<(StageAt, usize)>> = BTreeMap::new();
    for (at, lines) in bound.all() {
        for (index, line) in lines.iter().enumerate() {
            if let Some(Content::Stage(c, s)) = line.content {
                users.entry((c, s)).or_default().push((at, index));
            }
        }
    }
    users
}

impl Sizing<'_> {
    /// The stage as written.
    pub fn stage(&self, (c, s): StageAt) -> &StageDraft {
        &self.draft.components[c].stages[s]
    }

    /// The stages that use a stage, and those that it uses.
    fn neighbours(&self, at: StageAt) -> impl Iterator<Item = StageAt> {
        let users = self.users.get(&at).into_iter().flatten().map(|(user, _)| *user);
        let used = self.bound.lines(at).iter().filter_map(|line| match line.content {
            Some(Content::Stage(c, s)) => Some((c, s)),
            _ => None,
        });
        users.chain(used)
    }

    /// Sizes a stage if all it depends on is known.
    fn try_stage(&mut self, at: StageAt, found: Found) -> bool {
        let Some(fixed) = self.with_parts_taken(at) else { return false };
        let basis = match basis::of_stage(self, at, &fixed, found) {
            Basis::Flour(flour) => flour,
            Basis::NotNeeded => Mass::ZERO,
            Basis::NotYet => return false,
        };
        let by = match self.stage(at).percent_of {
            PercentOf::StageFlour => "baker's percentage of the stage's flour",
            PercentOf::TotalFlour => "baker's percentage of the component's total flour",
        };
        let masses = fixed
            .into_iter()
            .map(|size| match size {
                Some(Size::Fixed(known)) => known,
                Some(Size::Percent(share)) => Known::computed(basis * share, by, "the formula"),
                Some(Size::PartOf(..)) | None => Known::assumed(Mass::ZERO, "nothing: see the faults"),
            })
            .collect();
        self.settle(at, masses);
        true
    }

    /// The line sizes of a stage with parts of other stages turned into gram; none while one is unknown.
    fn with_parts_taken(&self, at: StageAt) -> Option<Vec<Option<Size>>> {
        let take = |size: &Option<Size>| match size {
            Some(Size::PartOf(other, part)) => {
                let mass = *self.made.get(other)? * *part;
                let origin = Origin::Computed { by: "part of another stage", source: "the formula".into() };
                Some(Some(Size::Fixed(Known { value: mass, band: None, origin })))
            }
            other => Some(other.clone()),
        };
        self.sizes[&at].iter().map(take).collect()
    }

    fn settle(&mut self, at: StageAt, masses: Vec<Known<Mass>>) {
        let out: Mass = self.bound.lines(at).iter().zip(&masses).map(|(line, mass)| mass.value * line.draft.taken_out).sum();
        let mixed: Mass = masses.iter().map(|mass| mass.value).sum();
        let made = Losses::of(self.stage(at)).made(mixed, out);
        self.made.insert(at, made.max(Mass::ZERO));
        self.done.masses.insert(at, masses);
    }

    /// What the users of a stage weigh of it, once all of them are sized.
    pub fn demand(&self, at: StageAt) -> Option<Mass> {
        let mut demand = Mass::ZERO;
        for (user, index) in self.users.get(&at)? {
            demand += match &self.sizes[user][*index] {
                Some(Size::Fixed(known)) => known.value,
                Some(Size::Percent(_)) => self.done.masses.get(user)?[*index].value,
                Some(Size::PartOf(..)) => return None,
                None => Mass::ZERO,
            };
        }
        Some(demand)
    }

    /// Reports the stages that have no size, one fault for the deepest of each chain.
    fn give_up(&mut self, open: &BTreeSet<StageAt>, found: Found) {
        for at in open {
            let waits_for_other =
                self.sizes[at].iter().any(|size| matches!(size, Some(Size::PartOf(other, _)) if open.contains(other)));
            let stage = self.stage(*at);
            let is_whole = self.draft.unread.is_empty() && self.sizes.values().flatten().all(Option::is_some);
            if is_whole && !waits_for_other {
                let message = format!("the stage “{}” has no size: its flours are percentages", stage.name.value);
                let hint = "state flour = \"500 g\" or weight = \"1 kg\", or use a weight of it in another stage; the last stage may take its size from the yield";
                found.push(fault::STAGE_WITHOUT_SIZE.at(stage.name.place(&self.draft.file), message).hint(hint));
            }
            let nothing = self.bound.lines(*at).iter().map(|_| Known::assumed(Mass::ZERO, "nothing: see the faults")).collect();
            self.settle(*at, nothing);
        }
    }
}

/// What a stage loses, and how much must be mixed for a wanted amount.
pub struct Losses {
    left: Fraction,
    after_out: Fraction,
    kept_back: Mass,
}

impl Losses {
    /// The losses of a stage.
    pub fn of(stage: &StageDraft) -> Self {
        let left = |loss: &Option<crate::read::At<Fraction>>| loss.as_ref().map_or(Fraction::WHOLE, |loss| loss.value.left());
        Self {
            left: left(&stage.boil_off),
            after_out: left(&stage.loss),
            kept_back: stage.kept_back.as_ref().map_or(Mass::ZERO, |mass| mass.value),
        }
    }

    /// What is made of a mix when so much of it is taken out.
    pub fn made(&self, mixed: Mass, taken_out: Mass) -> Mass {
        (mixed * self.left - taken_out) * self.after_out - self.kept_back
    }

    /// What must be mixed to make so much, where nothing is taken out.
    pub fn mix_for(&self, made: Mass) -> Mass {
        (made + self.kept_back) / (self.left.of(self.after_out)).as_ratio()
    }
}
