//! What a stage's percentages are shares of, and the faults of having none or two.

use super::Found;
use super::amounts::Size;
use super::formula::Content;
use super::formula::StageAt;
use super::sizes::{Losses, Sizing};
use crate::fault;
use crate::read::{PercentOf, YieldDraft};
use quantity::{Fraction, Mass, print};

/// The flour that percentages are shares of.
pub enum Basis {
    /// So much flour.
    Flour(Mass),
    /// There are no percentages.
    NotNeeded,
    /// What it depends on is not sized yet.
    NotYet,
}

/// What the lines of a stage add up to, by kind.
#[derive(Default)]
struct Sums {
    fixed: Mass,
    fixed_flour: Mass,
    percent: Fraction,
    percent_flour: Fraction,
    /// Whether every line that is written counts; if not, a sum that is off is no fault of its own.
    is_whole: bool,
}

fn sums(sizing: &Sizing, at: StageAt, sizes: &[Option<Size>]) -> Sums {
    let is_whole = sizing.draft.unread.is_empty() && sizes.iter().all(Option::is_some);
    let mut sums = Sums { is_whole, ..Sums::default() };
    for (line, size) in sizing.bound.lines(at).iter().zip(sizes) {
        match size {
            Some(Size::Fixed(known)) => {
                sums.fixed += known.value;
                if line.is_flour {
                    sums.fixed_flour += known.value;
                }
            }
            Some(Size::Percent(share)) => {
                sums.percent += *share;
                if line.is_flour {
                    sums.percent_flour += *share;
                }
            }
            _ => {}
        }
    }
    sums
}

/// The basis of a stage whose line sizes are known.
pub fn of_stage(sizing: &Sizing, at: StageAt, sizes: &[Option<Size>], found: Found) -> Basis {
    let stage = sizing.stage(at);
    let sums = sums(sizing, at, sizes);
    if stage.percent_of == PercentOf::TotalFlour {
        return sizing.total_flour.get(&at.0).map_or(Basis::NotNeeded, |flour| Basis::Flour(*flour));
    }
    let stated = stage.flour.as_ref().or(stage.weight.as_ref());
    if let Some(stated) = stated
        && sums.is_whole
        && (sums.percent_flour <= Fraction::ZERO || (stage.flour.is_some() && stage.weight.is_some()))
    {
        let message = format!("the stage “{}” has its size twice: stated here, and by the weight of its lines", stage.name.value);
        let place = stated.place(&sizing.draft.file);
        found.push(
            fault::TWO_BASES
                .at(place, message)
                .hint("take out this figure, or write the flours as percentages that add up to 100 %"),
        );
    }
    if sums.percent <= Fraction::ZERO {
        return Basis::NotNeeded;
    }
    match (sums.fixed_flour > Mass::ZERO, sums.percent_flour > Fraction::ZERO) {
        (true, false) => Basis::Flour(sums.fixed_flour),
        (true, true) => {
            let message =
                format!("the stage “{}” has flours by weight and flours by percentage: two bases at once", stage.name.value);
            let place = first_percent_flour(sizing, at, sizes).unwrap_or_else(|| stage.name.place(&sizing.draft.file));
            found.push(
                fault::TWO_BASES.at(place, message).hint("write all flours by weight, or all as percentages with flour = \"…\""),
            );
            Basis::Flour(sums.fixed_flour)
        }
        (false, false) if !sums.is_whole => Basis::NotNeeded,
        (false, false) => {
            let place = first_percent(sizing, at, sizes).unwrap_or_else(|| stage.name.place(&sizing.draft.file));
            let message = format!("a percentage in the stage “{}”, which has no flour for it to be a share of", stage.name.value);
            let hint = "write a weight; or if something here counts as flour, say as-flour = true on its line";
            found.push(fault::PERCENTAGE_WITHOUT_FLOUR.at(place, message).hint(hint));
            Basis::NotNeeded
        }
        (false, true) => of_percentages(sizing, at, &sums, found),
    }
}

fn first_percent(sizing: &Sizing, at: StageAt, sizes: &[Option<Size>]) -> Option<crate::Place> {
    let lines = sizing.bound.lines(at);
    let (line, _) = lines.iter().zip(sizes).find(|(_, size)| matches!(size, Some(Size::Percent(_))))?;
    Some(line.draft.amount.place(&sizing.draft.file))
}

fn first_percent_flour(sizing: &Sizing, at: StageAt, sizes: &[Option<Size>]) -> Option<crate::Place> {
    let lines = sizing.bound.lines(at);
    let (line, _) = lines.iter().zip(sizes).find(|(line, size)| line.is_flour && matches!(size, Some(Size::Percent(_))))?;
    Some(line.draft.amount.place(&sizing.draft.file))
}

/// The flour of a stage written all in percentages: stated, or from its weight, its use or the yield.
fn of_percentages(sizing: &Sizing, at: StageAt, sums: &Sums, found: Found) -> Basis {
    let stage = sizing.stage(at);
    let from_weight = |mix: Mass| Basis::Flour(((mix - sums.fixed).max(Mass::ZERO)) / sums.percent.as_ratio());
    let basis = if let Some(flour) = &stage.flour {
        Basis::Flour(flour.value)
    } else if let Some(weight) = &stage.weight {
        from_weight(weight.value)
    } else if let Some(wanted) = wanted_by_yield(sizing, at) {
        from_weight(Losses::of(stage).mix_for(wanted))
    } else if let Some(demand) = sizing.demand(at) {
        from_weight(Losses::of(stage).mix_for(demand))
    } else {
        return Basis::NotYet;
    };
    let off = (sums.percent_flour - Fraction::WHOLE).abs();
    if sums.is_whole && off > Fraction::percent(0.05) {
        let message =
            format!("the flours of the stage “{}” add up to {}", stage.name.value, print::percent(sums.percent_flour, 2));
        let place = stage.name.place(&sizing.draft.file);
        found.push(fault::FLOURS_NOT_WHOLE.at(place, message).hint("flours written as percentages make up 100 % together"));
    }
    basis
}

/// What the yield asks the last stage of a component to make.
fn wanted_by_yield(sizing: &Sizing, (c, s): StageAt) -> Option<Mass> {
    let component = &sizing.draft.components[c];
    if s + 1 != component.stages.len() {
        return None;
    }
    let yields = component.yields.as_ref()?;
    let left = yields.make_up_loss.as_ref().map_or(Fraction::WHOLE, |loss| loss.value.left());
    Some(raw_of(yields)? / left.as_ratio())
}

/// The raw weight that a yield states.
pub fn raw_of(yields: &YieldDraft) -> Option<Mass> {
    let by_pieces = || Some(yields.scaling_weight.as_ref()?.value * yields.pieces.as_ref()?.value.as_pieces());
    yields.total.as_ref().map(|total| total.value).or_else(by_pieces)
}

/// Works out the total flour of each component that has percentages of it.
pub fn total_flours(sizing: &mut Sizing, found: Found) {
    for (c, component) in sizing.draft.components.iter().enumerate() {
        if component.stages.iter().all(|stage| stage.percent_of == PercentOf::StageFlour) {
            continue;
        }
        let lines = || (0..component.stages.len()).flat_map(|s| &sizing.sizes[&(c, s)]);
        let is_whole = sizing.draft.unread.is_empty() && lines().all(Option::is_some);
        let before = found.len();
        let flour = total_flour(sizing, c, found);
        if !is_whole {
            found.truncate(before);
        }
        if let Some(flour) = flour {
            sizing.total_flour.insert(c, flour);
        } else if is_whole {
            let message = format!(
                "the component “{}” has percentages of its total flour, and nothing says how much that is",
                component.name.value
            );
            let hint = "write one flour by weight, state the yield's pieces and scaling-weight, or let percentages be of the stage's flour";
            found.push(fault::STAGE_WITHOUT_SIZE.at(component.name.place(&sizing.draft.file), message).hint(hint));
        }
    }
}

/// T = flour by weight + flour by percentage of T; where all is percentage, T follows from the yield.
fn total_flour(sizing: &Sizing, c: usize, found: Found) -> Option<Mass> {
    let component = &sizing.draft.components[c];
    let mut parts = Parts::default();
    for s in 0..component.stages.len() {
        parts.add_stage(sizing, (c, s));
    }
    let rest = parts.share.left();
    if parts.weighed > Mass::ZERO && rest > Fraction::percent(0.05) {
        return Some(parts.weighed / rest.as_ratio());
    }
    if rest.abs() > Fraction::percent(0.05) || parts.weighed > Mass::ZERO {
        let message =
            format!("the flours of “{}” add up to {} of its total flour", component.name.value, print::percent(parts.share, 2));
        let place = component.name.place(&sizing.draft.file);
        found.push(
            fault::FLOURS_NOT_WHOLE
                .at(place, message)
                .hint("flours of all stages, a culture's counted in, make up 100 % together"),
        );
    }
    let wanted = wanted_by_yield(sizing, (c, component.stages.len() - 1))?;
    Some((wanted - parts.fixed).max(Mass::ZERO) / parts.percent.as_ratio())
}

/// What the lines of a component say of its total flour.
#[derive(Default)]
struct Parts {
    /// Flour by weight.
    weighed: Mass,
    /// Flour as a share of the total flour.
    share: Fraction,
    /// Everything by weight.
    fixed: Mass,
    /// Everything as a share of the total flour.
    percent: Fraction,
}

impl Parts {
    fn add_stage(&mut self, sizing: &Sizing, at: StageAt) {
        let stage = sizing.stage(at);
        let of_total = stage.percent_of == PercentOf::TotalFlour;
        for (line, size) in sizing.bound.lines(at).iter().zip(&sizing.sizes[&at]) {
            let (flour, counts) = match line.content {
                // A stage that is sized by its use is counted here, any other by its own lines.
                Some(Content::Stage(c, s)) => (share_of_stage(sizing, (c, s)), c == at.0 && is_sized_by_use(sizing, (c, s))),
                _ => (line.flour_share(), true),
            };
            match size {
                Some(Size::Fixed(known)) if counts => {
                    self.weighed += known.value * flour;
                    self.fixed += known.value;
                }
                Some(Size::Percent(of)) if counts && of_total => {
                    self.share += of.of(flour);
                    self.percent += *of;
                }
                _ => {}
            }
        }
        if let (false, Some(flour)) = (of_total, &stage.flour) {
            self.weighed += flour.value;
        }
    }
}

/// Whether all flours of a stage are percentages and nothing states how large it is.
fn is_sized_by_use(sizing: &Sizing, at: StageAt) -> bool {
    let stage = sizing.stage(at);
    let sums = sums(sizing, at, &sizing.sizes[&at]);
    let open = stage.flour.is_none() && stage.weight.is_none() && sums.fixed_flour <= Mass::ZERO;
    open && stage.percent_of == PercentOf::StageFlour && sums.percent_flour > Fraction::ZERO
}

/// The share of flour in a stage written all in percentages, a culture's flour counted in.
fn share_of_stage(sizing: &Sizing, at: StageAt) -> Fraction {
    let (mut flour, mut all) = (0.0, 0.0);
    for (line, size) in sizing.bound.lines(at).iter().zip(&sizing.sizes[&at]) {
        if let Some(Size::Percent(of)) = size {
            flour += of.of(line.flour_share()).as_ratio();
            all += of.as_ratio();
        }
    }
    let mixed = if all > 0.0 { flour / all } else { 0.0 };
    // What boils off leaves the flour in less; what stays behind takes flour and all.
    let boiled = sizing.stage(at).boil_off.as_ref().map_or(1.0, |loss| loss.value.left().as_ratio());
    Fraction::ratio(mixed / boiled)
}
