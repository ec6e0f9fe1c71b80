//! What a sheet says in sentences, on the terminal as on a page.

use super::{ComponentSheet, LineSheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::counted_in;
use bench::rules::Silenced;
use bench::weighing::{Remedy, Solution, Spoonful, Weighable};
use formula::arithmetic::Figures;
use formula::resolve::UNNAMED_PIECE;
use formula::resolve::formula::Yield;
use quantity::{Count, Fraction, Mass};

/// The figures above the tables, a line each.
pub fn head(component: &ComponentSheet, tongue: Tongue) -> Vec<String> {
    let mut lines = vec![makes(&component.yields, tongue)];
    if let Some(figures) = &component.figures {
        lines.extend(figures_in_words(figures, component.overall.total_flour, component.overall.prefermented, tongue));
    }
    lines
}

fn makes(yields: &Yield, tongue: Tongue) -> String {
    let print = tongue.print;
    let pieces = match (yields.pieces, yields.scaling_weight) {
        (Some(pieces), Some(weight)) => {
            tongue.sheet_pieces_of(format!("{} {}", print.count(pieces), word(yields, pieces, tongue)), print.mass(weight))
        }
        _ => print.large_mass(yields.done()),
    };
    let makes = tongue.sheet_makes(pieces);
    if yields.make_up_loss == Fraction::ZERO && yields.bake_loss == Fraction::ZERO {
        return makes;
    }
    let losses = tongue.sheet_losses(
        print.large_mass(yields.made),
        print.large_mass(yields.raw()),
        print.percent(yields.make_up_loss, 1),
        print.large_mass(yields.done()),
        print.percent(yields.bake_loss, 1),
    );
    format!("{makes}: {losses}")
}

/// What so many pieces are called; the language's own word where the author gives none.
fn word(yields: &Yield, pieces: Count, tongue: Tongue) -> &str {
    match yields.word(pieces) {
        _ if yields.piece.0 != UNNAMED_PIECE => yields.word(pieces),
        _ if pieces == Count::pieces(1.0) => tongue.piece(),
        _ => tongue.pieces(),
    }
}

fn figures_in_words(figures: &Figures, flour: Mass, prefermented: Fraction, tongue: Tongue) -> Vec<String> {
    let print = tongue.print;
    let percent = |share: Fraction| print.percent(share, 1);
    let mut lines = vec![
        tongue.sheet_flour(print.large_mass(flour), percent(prefermented), counted_in(&figures.flour_protein, tongue)),
        tongue.sheet_hydration(percent(figures.nominal_hydration), counted_in(&figures.true_hydration, tongue)),
        tongue.sheet_shares(
            print.percent(figures.salt, 2),
            counted_in(&figures.sugars, tongue),
            counted_in(&figures.fat, tongue),
            percent(figures.egg),
            counted_in(&figures.milk_solids, tongue),
        ),
    ];
    if let Some((usual, spread)) = &figures.leaven {
        let ends = || tongue.sheet_yeast_range(print.percent(spread.from, 2), print.percent(spread.to, 2));
        let range = if spread.is_single() { String::new() } else { format!(" {}", ends()) };
        lines.push(tongue.sheet_yeast(print.percent(*usual, 2), range));
    }
    lines
}

/// What becomes of a stage of which less goes on than was mixed: a part is kept back, or it boils down.
pub fn goes_on(stage: &StageSheet, tongue: Tongue) -> Option<String> {
    let lost = (stage.mixed - stage.made).as_grams();
    let told = |mass| tongue.print.large_mass(mass);
    (lost > 0.5).then(|| format!("{}.", tongue.sheet_goes_on(told(stage.mixed), told(stage.made))))
}

/// A rule that the author silenced, with the reason; what the rule found is said where the language is its own.
pub fn silenced_in_words(silenced: &Silenced, tongue: Tongue) -> String {
    let found = &silenced.found;
    let rule = if tongue.is_english() { format!("{}: {}", found.code, found.message) } else { found.code.to_owned() };
    tongue.sheet_silenced(rule, &silenced.reason)
}

/// What to do with an amount that no scale of the kitchen shows well, in English.
pub fn remedy_in_words(line: &LineSheet) -> Option<String> {
    remedy_told(line, Tongue::default())
}

/// The same in a language.
pub fn remedy_told(line: &LineSheet, tongue: Tongue) -> Option<String> {
    let weighable = line.weighable.as_ref()?;
    let remedy = weighable.remedy.as_ref()?;
    let spoonful = weighable.spoonful.as_ref().map(|one| by_the_spoon(one, tongue));
    let told = [Some(too_little(line, weighable, tongue)), Some(way_round(remedy, tongue)), spoonful];
    Some(told.into_iter().flatten().collect::<Vec<_>>().join(" "))
}

fn too_little(line: &LineSheet, weighable: &Weighable, tongue: Tongue) -> String {
    let print = tongue.print;
    tongue.sheet_little(
        &line.title,
        print.mass(line.mass),
        print.mass(weighable.scale.shows),
        print.percent(weighable.uncertainty, 1),
    )
}

fn way_round(remedy: &Remedy, tongue: Tongue) -> String {
    let print = tongue.print;
    let batches = print.number(rounded_up(remedy.smallest_batch), 1);
    match &remedy.solution {
        Some(Solution { weigh, water, take, .. }) => {
            tongue.sheet_stir(print.mass(*weigh), print.mass(*water), print.mass(*take), batches)
        }
        None => tongue.sheet_weighs_well(batches),
    }
}

fn by_the_spoon(spoonful: &Spoonful, tongue: Tongue) -> String {
    let percent = |share: Fraction| tongue.print.percent(share, 0);
    let measure = tongue.print.spoons(spoonful.volume, spoonful.system).map(|(told, _)| told).unwrap_or_default();
    tongue.sheet_spoon(measure, percent(spoonful.off), percent(spoonful.spread))
}

/// A number of batches to the next tenth, or to the next whole from ten on: never less than is needed.
fn rounded_up(batches: f64) -> f64 {
    let steps = if batches < 10.0 { 10.0 } else { 1.0 };
    (batches * steps - 1e-9).ceil() / steps
}
