//! What a griddle, hot fat or an oven does.

use super::chart::bars;
use super::known::{self, learnt, origin, time, whole};
use super::story::Story;
use bench::forecast::{Browning, Cooking, Heated, PROBE, Surely};
use bench::grounds::by;
use formula::read::Action;
use formula::{Known, Origin};
use quantity::{Between, Fraction, Temperature, TimeSpan, print};
use serde_json::{Value, json};

/// Tells a cooking.
pub fn tell(story: &mut Story, cooking: &Cooking) {
    let units = story.units;
    story.stage(cooking.at, &print::capital(cooking.action.word()));
    let round = |t: Temperature| Temperature::celsius(t.as_celsius().round());
    let (usual, within) = (round(cooking.core.value), cooking.core_range().map(round));
    let spread = if within == Between::just(usual) { String::new() } else { format!(", within {}", units.temperature(within)) };
    let ground = story.ground(&cooking.core);
    let mut words = format!("The middle comes off at about {}{spread}{}{ground}", whole(usual, units), learnt(&cooking.core));
    if let Some(wanted) = cooking.wanted {
        let verdict = reaches(cooking, wanted);
        words.push_str(&format!("; the {} that the method wants is {verdict}", units.temperature(Between::just(wanted))));
        if let Some(reached) = &cooking.reached {
            words.push_str(&format!(" (usually after {})", time(reached.value)));
        }
    }
    let stated = story.formula.components[cooking.at.0].yields.bake_loss;
    let ground = story.ground(&cooking.loss);
    story.say(&format!("{words}. {}{ground}.", lost(cooking, stated)));
    story.draw(&chart(&cooking.points, units));
    let grounds = (story.ground(&cooking.set), story.ground(&cooking.browning));
    story.say(&set_and_brown(cooking, &grounds));
    let ground = story.ground(&cooking.reductions);
    story.say(&safe(cooking, &ground));
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
    let Between { from, to } = cooking.core_range();
    match (from >= wanted, to >= wanted) {
        (true, _) if on_griddle => "reached even with a poor contact",
        (true, _) => "reached even where heat arrives slowly",
        (false, true) if on_griddle => "reached with a good contact, not with a poor one",
        (false, true) => "reached where heat arrives well, not where it arrives slowly",
        (false, false) => "not reached: give it longer, or make it thinner",
    }
}

/// What is lost, beside what the formula states.
fn lost(cooking: &Cooking, stated: Fraction) -> String {
    let mut words = format!("It has lost about {} by then", print::percent(cooking.loss.value, 0));
    if stated > Fraction::ZERO {
        words.push_str(&format!(", where the formula states {}", print::percent(stated, 0)));
    }
    if cooking.action == Action::Fry {
        words.push_str("; what fat it takes up is not counted");
    }
    words
}

fn set_and_brown(cooking: &Cooking, (by_starch, by_colour): &(String, String)) -> String {
    let set = if cooking.is_set() { "The crumb has set in the middle" } else { "The crumb may not have set in the middle" };
    let Between { from, to } = cooking.browning.value.difference;
    let (least, most) = (colour(from), colour(to));
    let colour =
        if least == most { least.to_owned() } else { format!("from {least}, if lean, to {most}, if sweet or with milk") };
    format!(
        "{set}{by_starch}. It comes off {colour}: a rough figure, fitted to dried crumb (ΔE {} to {} of 52{by_colour}).",
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

fn safe(cooking: &Cooking, ground: &str) -> String {
    let count = |reductions: f64| if reductions > 12.0 { "more than 12".to_owned() } else { print::number(reductions, 1) };
    let verdict = match cooking.surely() {
        Surely::Enough => "enough by the usual criterion for batters with flour and egg, even by the lower bound of the model",
        Surely::Usually => {
            "enough by the usual criterion for batters with flour and egg as such pieces usually heat through, NOT by the lower bound of the model"
        }
        Surely::NotEnough => "NOT enough by the usual criterion for batters with flour and egg",
    };
    let reductions = cooking.reductions.value;
    format!(
        "Where it heats least, Salmonella is reduced {} times tenfold by the lower bound, {} times as usual{ground}: {verdict}. Guidance only; {PROBE}.",
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
    let points: Vec<Value> = cooking
        .points
        .iter()
        .map(|p| json!({ "minutes": p.time.as_minutes(), "core-celsius": p.core.as_celsius(), "face-celsius": p.face.as_celsius() }))
        .collect();
    let Browning { difference, above_150 } = cooking.browning.value;
    let (colour, germs) = (cooking.browning.origin.clone(), cooking.reductions.origin.clone());
    let minutes = |time: TimeSpan| known::stated(&cooking.place, time.as_minutes(), "minutes");
    let plain =
        |value, origin: &Origin, unit| known::figure(&Known { value, band: None, origin: origin.clone() }, unit, |value| value);
    json!({
        "action": cooking.action.word(),
        "core": known::temperature(&cooking.core),
        "wanted": cooking.wanted.map(|wanted| known::stated(&cooking.place, wanted.as_celsius(), "celsius")),
        "reached": cooking.reached.as_ref().map(|reached| known::figure(reached, "minutes", TimeSpan::as_minutes)),
        "side": cooking.side.map(minutes),
        "set-share": known::share(&cooking.set),
        "colour-difference": {
            "if-lean": plain(difference.from, &colour, "CIE 1976 ΔE"),
            "if-sweet": plain(difference.to, &colour, "CIE 1976 ΔE"),
        },
        "face-above-150-celsius": plain(above_150.as_minutes(), &cooking.core.origin, "minutes"),
        "salmonella-decimal-reductions": {
            "by-the-lower-bound": plain(cooking.reductions.value.from, &germs, "times tenfold"),
            "as-usual": plain(cooking.reductions.value.to, &germs, "times tenfold"),
        },
        "enough": cooking.surely() == Surely::Enough,
        "loss": known::figure(&cooking.loss, "percent", Fraction::as_percent),
        "batches": known::by(by::YIELD, cooking.batches.0, "batches"),
        "batches-together": known::by(by::YIELD, cooking.batches.1.as_minutes(), "minutes"),
        "course": points,
        "course-origin": origin(&cooking.loss.origin),
        "assumed": cooking.assumed,
        "remarks": cooking.remarks,
    })
}
