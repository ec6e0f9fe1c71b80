//! What comes of a component, stated figures held against what is mixed.

use super::Found;
use super::basis::raw_of;
use super::formula::{Formula, Yield};
use crate::fault;
use crate::read::{ComponentDraft, Draft, YieldDraft};
use quantity::{Count, Fraction, Mass, print};
use std::sync::Arc;

/// What a piece is called where its author gives it no name.
pub const UNNAMED_PIECE: &str = "piece";
/// A mix may fall short of its yield by this share before it is a fault.
const SHORT: Fraction = Fraction::percent(0.5);
/// A mix may leave this share over before that is worth a word.
const OVER: Fraction = Fraction::percent(5.0);

/// The yield as written, before the mix is known.
pub fn unsettled(component: &ComponentDraft, file: &Arc<str>) -> Yield {
    let nothing = YieldDraft::default();
    let written = component.yields.as_ref().unwrap_or(&nothing);
    let share = |loss: &Option<crate::read::At<Fraction>>| loss.as_ref().map_or(Fraction::ZERO, |loss| loss.value);
    Yield {
        pieces: written.pieces.as_ref().map(|pieces| pieces.value),
        piece: written.piece.clone().unwrap_or_else(|| (UNNAMED_PIECE.to_owned(), "pieces".to_owned())),
        scaling_weight: written.scaling_weight.as_ref().map(|weight| weight.value),
        thickness: written.thickness,
        made: Mass::ZERO,
        after_scaling: Mass::ZERO,
        make_up_loss: share(&written.make_up_loss),
        bake_loss: share(&written.bake_loss),
        serves: written.serves,
        place: component.yields.as_ref().map(|stated| crate::Place { file: Arc::clone(file), span: stated.span.clone() }),
        tin: written.tin.map(|tin| (tin, written.tins.unwrap_or(Count::pieces(1.0)))),
    }
}

/// Completes every yield from what is mixed.
pub fn settle(formula: &mut Formula) {
    for component in &mut formula.components {
        let Some(last) = component.stages.last() else { continue };
        let yields = &mut component.yields;
        yields.after_scaling = last.after_scaling();
        yields.made = last.made() - yields.after_scaling;
        match (yields.pieces, yields.scaling_weight) {
            (Some(pieces), None) => yields.scaling_weight = Some(yields.raw() / pieces.as_pieces()),
            (None, Some(weight)) if weight > Mass::ZERO => {
                yields.pieces = Some(Count::pieces((yields.raw() / weight + 1e-9).floor()));
            }
            _ => {}
        }
    }
}

/// Reports the yields that the mix does not make, or clearly exceeds.
pub fn check(draft: &Draft, formula: &Formula, found: Found) {
    for (component, written) in formula.components.iter().zip(&draft.components) {
        if let (Some(stated), Some(_)) = (&written.yields, component.stages.last()) {
            hold_against(draft, stated, &component.yields, found);
        }
    }
}

fn hold_against(draft: &Draft, stated: &YieldDraft, yields: &Yield, found: Found) {
    let place = || crate::Place { file: draft.file.clone(), span: mark(stated) };
    if let (Some(total), Some(pieces), Some(weight)) = (&stated.total, &stated.pieces, &stated.scaling_weight) {
        let by_pieces = weight.value * pieces.value.as_pieces();
        if (by_pieces - total.value).abs() > total.value * SHORT {
            let message = format!(
                "{} pieces of {} are {}, but the total is stated as {}",
                print::count(pieces.value),
                print::mass(weight.value),
                print::mass(by_pieces),
                print::mass(total.value)
            );
            found.push(
                fault::YIELD_IMPOSSIBLE.at(total.place(&draft.file), message).hint("take out the figure that is not meant"),
            );
            return;
        }
    }
    let Some(wanted) = raw_of(stated) else { return };
    let (raw, missing) = (yields.raw(), wanted - yields.raw());
    let figures = format!(
        "the yield asks for {}, and the mix of {} leaves {} after a make-up loss of {}",
        print::large_mass(wanted),
        print::large_mass(yields.made),
        print::large_mass(raw),
        print::percent(yields.make_up_loss, 1),
    );
    if missing > wanted * SHORT {
        let hint = format!("mix {} more, or ask for less", print::large_mass(missing / yields.make_up_loss.left().as_ratio()));
        found.push(fault::YIELD_IMPOSSIBLE.at(place(), figures).hint(hint));
    } else if -missing > wanted * OVER {
        let hint = format!("{} are left over: raise the yield, or mix less", print::large_mass(-missing));
        found.push(fault::YIELD_LEAVES_OVER.at(place(), figures).hint(hint));
    }
}

/// The figure of a yield that is marked: its total, scaling weight or pieces.
fn mark(stated: &YieldDraft) -> std::ops::Range<usize> {
    let total = stated.total.as_ref().map(|at| &at.span);
    let weight = stated.scaling_weight.as_ref().map(|at| &at.span);
    let pieces = stated.pieces.as_ref().map(|at| &at.span);
    total.or(weight).or(pieces).unwrap_or(&stated.span).clone()
}
