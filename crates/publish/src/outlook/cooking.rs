//! What a griddle, hot fat or an oven does.

use super::chart::bars;
use super::known::{learnt, origin, time, whole};
use super::story::Story;
use bench::forecast::{Cooking, Heated, PROBE, Surely};
use formula::read::Action;
use formula::{Known, Origin};
use quantity::{Between, Fraction, Temperature, TimeSpan, print};
use serde_json::{Value, json};

/// Tells a cooking.
pub fn tell(story: &mut Story, cooking: &Cooking) {
    let units = story.units;
    story.stage(cooking.at, &print::capital(cooking.action.word()));
    story.ground(&cooking.core);
    Cooking::RESTS_ON.iter().for_each(|(by, equation)| story.rests_on(by, equation));
    let range = |range: Between<Temperature>| units.temperature(range.map(|t| Temperature::celsius(t.as_celsius().round())));
    let usual = cooking.points.last().map_or_else(String::new, |last| format!("about {}, within ", whole(last.core, units)));
    let mut words = format!("The middle comes off at {usual}{}{}", range(cooking.core.value), learnt(&cooking.core));
    if let Some(wanted) = cooking.wanted {
        let verdict = reaches(cooking, wanted);
        words.push_str(&format!("; the {} that the method wants is {verdict}", units.temperature(Between::just(wanted))));
        if let Some(reached) = cooking.reached {
            words.push_str(&format!(" (usually after {})", time(reached)));
        }
    }
    let stated = story.formula.components[cooking.at.0].yields.bake_loss;
    story.say(&format!("{words}. {}", lost(cooking, stated)));
    story.draw(&chart(&cooking.points, units));
    story.say(&set_and_brown(cooking));
    story.say(&safe(cooking));
    let (batches, together) = cooking.batches;
    if batches > 1.0 {
        story.say(&format!("{} batches take {} together.", print::number(batches, 0), time(together)));
    }
    for remark in &cooking.remarks {
        story.say(&format!("{}.", print::capital(remark)));
    }
    if !cooking.assumed.is_empty() {
        story.say(&format!("Assumed: {}.", cooking.assumed.join("; ")));
    }
}

/// Whether the middle gets as warm as the method wants; only a griddle has a contact.
fn reaches(cooking: &Cooking, wanted: Temperature) -> &'static str {
    let on_griddle = cooking.action == Action::Griddle;
    match (cooking.core.value.from >= wanted, cooking.core.value.to >= wanted) {
        (true, _) if on_griddle => "reached even with a poor contact",
        (true, _) => "reached even where heat arrives slowly",
        (false, true) if on_griddle => "reached with a good contact, not with a poor one",
        (false, true) => "reached where heat arrives well, not where it arrives slowly",
        (false, false) => "not reached: give it longer, or make it thinner",
    }
}

/// What is lost, beside what the formula states.
fn lost(cooking: &Cooking, stated: Fraction) -> String {
    let mut words = format!("It has lost about {} by then", print::percent(cooking.loss, 0));
    if stated > Fraction::ZERO {
        words.push_str(&format!(", where the formula states {}", print::percent(stated, 0)));
    }
    if cooking.action == Action::Fry {
        words.push_str("; what fat it takes up is not counted");
    }
    format!("{words}.")
}

fn set_and_brown(cooking: &Cooking) -> String {
    let set = if cooking.is_set() { "The crumb has set in the middle" } else { "The crumb may not have set in the middle" };
    let Between { from, to } = cooking.browning.difference;
    let (least, most) = (colour(from), colour(to));
    let colour =
        if least == most { least.to_owned() } else { format!("from {least}, if lean, to {most}, if sweet or with milk") };
    format!(
        "{set}. It comes off {colour}: a rough figure, fitted to dried crumb (ΔE {} to {} of 52).",
        print::number(from, 0),
        print::number(to, 0)
    )
}

/// The colour of a face by its difference to the raw crumb; the borders are common practice, no source.
const fn colour(difference: f64) -> &'static str {
    match difference {
        d if d < 3.0 => "pale",
        d if d < 10.0 => "light gold",
        d if d < 22.0 => "golden brown",
        d if d < 36.0 => "brown",
        _ => "dark brown",
    }
}

fn safe(cooking: &Cooking) -> String {
    let count = |reductions: f64| if reductions > 12.0 { "more than 12".to_owned() } else { print::number(reductions, 1) };
    let verdict = match cooking.surely() {
        Surely::Enough => "enough by the usual criterion for batters with flour and egg, even by the lower bound of the model",
        Surely::Usually => {
            "enough by the usual criterion for batters with flour and egg as such pieces usually heat through, NOT by the lower bound of the model"
        }
        Surely::NotEnough => "NOT enough by the usual criterion for batters with flour and egg",
    };
    let reductions = cooking.reductions;
    format!(
        "Where it heats least, Salmonella is reduced {} times tenfold by the lower bound, {} times as usual: {verdict}. Guidance only; {PROBE}.",
        count(reductions.from),
        count(reductions.to),
    )
}

/// The middle as a row of bars, with its ends in words.
fn chart(points: &[Heated], units: crate::words::Units) -> String {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return String::new() };
    let (low, high) = (first.core.as_celsius(), points.iter().map(|point| point.core.as_celsius()).fold(0.0, f64::max));
    let bars = bars(points.iter().map(|point| point.core.as_celsius()), low, high);
    let hottest = points.iter().map(|point| point.face.as_celsius()).fold(first.face.as_celsius(), f64::max);
    let (from, to, face) = (whole(first.core, units), whole(last.core, units), whole(Temperature::celsius(hottest), units));
    format!("  core {bars} {from} to {to} in {}; face up to {face}\n", time(last.time))
}

/// A cooking for other programs.
pub fn json(cooking: &Cooking) -> Value {
    let Known { value: core, origin: from, .. } = &cooking.core;
    let points: Vec<Value> = cooking
        .points
        .iter()
        .map(|p| json!({ "minutes": p.time.as_minutes(), "core-celsius": p.core.as_celsius(), "face-celsius": p.face.as_celsius() }))
        .collect();
    json!({
        "action": cooking.action.word(),
        "core-celsius": [core.from.as_celsius(), core.to.as_celsius()],
        "usual-core-celsius": cooking.points.last().map(|last| last.core.as_celsius()),
        "wanted-celsius": cooking.wanted.map(Temperature::as_celsius),
        "reached-minutes": cooking.reached.map(TimeSpan::as_minutes),
        "side-minutes": cooking.side.map(TimeSpan::as_minutes),
        "set-share": cooking.set.as_ratio(),
        "colour-difference": [cooking.browning.difference.from, cooking.browning.difference.to],
        "salmonella-decimal-reductions": [cooking.reductions.from, cooking.reductions.to],
        "enough": cooking.surely() == Surely::Enough,
        "loss-percent": cooking.loss.as_percent(),
        "batches": cooking.batches.0,
        "course": points,
        "assumed": cooking.assumed,
        "remarks": cooking.remarks,
        "origin": origin(from),
        "rests-on": Cooking::RESTS_ON.map(|(by, source)| origin(&Origin::Computed { by, source: source.into() })),
    })
}
