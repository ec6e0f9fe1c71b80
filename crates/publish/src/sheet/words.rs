//! What a sheet says in sentences, on the terminal as on a page.

use super::{ComponentSheet, LineSheet};
use crate::words::counted;
use bench::rules::Silenced;
use bench::weighing::Remedy;
use formula::arithmetic::Figures;
use quantity::{Fraction, Mass, print};

/// The figures above the tables, a line each.
pub fn head(component: &ComponentSheet) -> Vec<String> {
    let yields = &component.yields;
    let mut lines = Vec::new();
    let pieces = match (yields.pieces, yields.scaling_weight) {
        (Some(pieces), Some(weight)) => format!("{} {} of {}", print::count(pieces), yields.word(pieces), print::mass(weight)),
        _ => print::large_mass(yields.done()),
    };
    let mut makes = format!("Makes {pieces}");
    if yields.make_up_loss > Fraction::ZERO || yields.bake_loss > Fraction::ZERO {
        makes.push_str(&format!(
            ": {} mixed, {} raw after {} make-up loss, {} done after {} bake loss",
            print::large_mass(yields.made),
            print::large_mass(yields.raw()),
            print::percent(yields.make_up_loss, 1),
            print::large_mass(yields.done()),
            print::percent(yields.bake_loss, 1),
        ));
    }
    lines.push(makes);
    if let Some(figures) = &component.figures {
        lines.extend(figures_in_words(figures, component.overall.total_flour, component.overall.prefermented));
    }
    lines
}

fn figures_in_words(figures: &Figures, flour: Mass, prefermented: Fraction) -> Vec<String> {
    let percent = |share: Fraction| print::percent(share, 1);
    let mut lines = vec![
        format!(
            "Total flour {}, of which prefermented {}; flour protein {}",
            print::large_mass(flour),
            percent(prefermented),
            counted(&figures.flour_protein)
        ),
        format!(
            "Hydration: nominal {} (water alone), true {} (the water of milk, egg, butter and all else counted)",
            percent(figures.nominal_hydration),
            counted(&figures.true_hydration)
        ),
        format!(
            "Salt {}, sugars {}, fat {}, egg {}, milk solids {}",
            print::percent(figures.salt, 2),
            counted(&figures.sugars),
            counted(&figures.fat),
            percent(figures.egg),
            counted(&figures.milk_solids)
        ),
    ];
    if let Some((usual, spread)) = &figures.leaven {
        let range = if spread.is_single() {
            String::new()
        } else {
            format!(" ({} to {} as sources differ)", print::percent(spread.from, 2), print::percent(spread.to, 2))
        };
        lines.push(format!("Yeast, as instant dry yeast: {}{range}", print::percent(*usual, 2)));
    }
    lines
}

/// A rule that the author silenced, with the reason.
pub fn silenced_in_words(silenced: &Silenced) -> String {
    format!("Silenced by its author, {}: {} ({}).", silenced.found.code, silenced.found.message, silenced.reason)
}

/// What to do with an amount that no scale of the kitchen shows well.
pub fn remedy_in_words(line: &LineSheet) -> Option<String> {
    let weighable = line.weighable.as_ref()?;
    let Remedy { solution, smallest_batch } = weighable.remedy.as_ref()?;
    let mut words = format!(
        "{}: {} is little for a scale in steps of {} (±{} standard uncertainty).",
        line.title,
        print::mass(line.mass),
        print::mass(weighable.scale.shows),
        print::percent(weighable.uncertainty, 1),
    );
    if let Some(solution) = solution {
        words.push_str(&format!(
            " Stir {} into {} of the water and use {} of that, the water being taken off; or make {} times the batch.",
            print::mass(solution.weigh),
            print::mass(solution.water),
            print::mass(solution.take),
            print::number(rounded_up(*smallest_batch), 1),
        ));
    } else {
        words.push_str(&format!(" It weighs well from {} times the batch on.", print::number(rounded_up(*smallest_batch), 1)));
    }
    if let Some(spoonful) = &weighable.spoonful {
        words.push_str(&format!(
            " By the spoon: {} ({} off, spoons differ by ±{}).",
            spoonful.measure,
            print::percent(spoonful.off, 0),
            print::percent(spoonful.spread, 0)
        ));
    }
    Some(words)
}

/// A number of batches to the next tenth, or to the next whole from ten on: never less than is needed.
fn rounded_up(batches: f64) -> f64 {
    let steps = if batches < 10.0 { 10.0 } else { 1.0 };
    (batches * steps - 1e-9).ceil() / steps
}
