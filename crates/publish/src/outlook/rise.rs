//! What ferments: how warm it is mixed, when it is ripe or risen.

use super::chart::bars;
use super::known::{self, degrees, learnt, time, whole};
use super::story::Story;
use crate::words::{Units, until};
use bench::forecast::{ByRule, Foreseen, HARMS_YEAST, Mixed, Point, Rise, SETS_EGG, Verdict, Warmed};
use bench::target::{Dosed, InTime};
use formula::{Formula, Known};
use quantity::{Between, Mass, Temperature, TemperatureDifference, TimeSpan, print};
use serde_json::{Value, json};

/// Tells a rise.
pub fn tell(story: &mut Story, rise: &Rise) {
    let units = story.units;
    story.stage(rise.at, &rise.title);
    if let Some(mixed) = &rise.mixed {
        for warmed in &mixed.warmed {
            story.say(&warmed_in_words(warmed, units));
        }
        story.say(&mixed_in_words(mixed, units));
        if let Some(rule) = &mixed.by_rule {
            story.say(&rule_in_words(rule, units));
        }
        story.ground(&mixed.computed);
    }
    for step in &rise.steps {
        story.say(&step_in_words(step, units));
        story.ground(&step.risen);
        if let Some(reached) = &step.reached {
            story.ground(&reached.from);
        }
    }
    story.draw(&chart(&rise.points, units));
    if !rise.outside.is_empty() {
        story.say(&format!("Outside what the model is held to: {}.", rise.outside.join("; ")));
    }
}

/// Tells the dose with which a preferment would be ripe in the time that the method gives it.
pub fn tell_dose(story: &mut Story, one: &InTime) {
    let (low, high) = one.dose.band;
    let doses: Vec<String> = one
        .dose
        .lines
        .iter()
        .map(|line| {
            let [needed, least, most] = [line.needed, line.stated * low, line.stated * high].map(fine);
            format!("{needed} of {} ({least} to {most}; {} of the stage's flour)", line.title, print::bakers_percent(line.share))
        })
        .collect();
    let window = &one.dose.reached;
    story.say(&format!(
        "To be at its best then, ripe from {} to {}, it would take {}: `wellproved solve` with “yeast” and --ripe-after \"{}\" writes that.",
        time(window.from.value),
        time(window.to.value),
        doses.join(" and "),
        print::time(Between::just(one.ripe_after)),
    ));
    story.ground(&window.from);
}

/// A dose to two figures that count, as fine as it is.
fn fine(mass: Mass) -> String {
    format!("{}\u{a0}g", print::number(mass.as_grams(), if mass < Mass::grams(1.0) { 2 } else { 1 }))
}

/// Such a dose for other programs.
pub fn dose_json(formula: &Formula, one: &InTime) -> Value {
    let line = |line: &Dosed| {
        let (low, high) = one.dose.band;
        json!({
            "ingredient": line.name,
            "gram": line.needed.as_grams(),
            "band-gram": [line.stated.as_grams() * low, line.stated.as_grams() * high],
            "share-of-flour": line.share.as_ratio(),
        })
    };
    json!({
        "stage": formula.stage(one.at).name,
        "ripe-after-hours": one.ripe_after.as_hours(),
        "lines": one.dose.lines.iter().map(line).collect::<Vec<_>>(),
        "ripe-from": known::hours(&one.dose.reached.from),
        "ripe-to": known::hours(&one.dose.reached.to),
    })
}

fn warmed_in_words(warmed: &Warmed, units: Units) -> String {
    let comes_to = warmed.comes_to.value;
    let safe = match (comes_to <= HARMS_YEAST, comes_to <= SETS_EGG) {
        (true, _) => "safe for yeast and egg",
        (false, true) => "too hot for yeast yet: let it cool before the yeast meets it",
        (false, false) => "too hot for yeast and egg: let it cool before they meet it",
    };
    let heated = format!("{} at {}", warmed.heated.join(" and "), units.temperature(Between::just(warmed.to)));
    if warmed.joined.is_empty() {
        return format!("Warmed: {heated}; {safe}.");
    }
    let joined = warmed.joined.join(" and ");
    format!("Warmed: {heated}, then {joined} cold: together at most {}; {safe}.", whole(comes_to, units))
}

fn mixed_in_words(mixed: &Mixed, units: Units) -> String {
    let computed =
        format!("From its ingredients it comes to {}{}", degrees(mixed.computed.value, units), learnt(&mixed.computed));
    match (mixed.wanted, &mixed.liquid) {
        (None, _) => format!("{computed}."),
        (Some(wanted), None) => {
            format!("{computed}; the method wants {}, but the rise is reckoned from what they come to.", degrees(wanted, units))
        }
        (Some(wanted), Some((liquid, at))) if mixed.is_within_reach() => {
            let hot = if at.as_celsius() > 50.0 { " (too hot to meet the yeast alone)" } else { "" };
            let is_near = (mixed.computed.value.as_celsius() - wanted.as_celsius()).abs() < 0.5;
            let (wanted, at) = (degrees(wanted, units), degrees(*at, units));
            let from = if is_near { "" } else { ", and the rise is reckoned from that warmth" };
            format!("{computed}; for the {wanted} of the method the {liquid} must be at {at}{hot}{from}.")
        }
        (Some(wanted), Some((liquid, _))) => {
            let wanted = degrees(wanted, units);
            format!(
                "{computed}; {wanted} cannot be reached by the {liquid} alone: warm or chill more than that. The rise is reckoned from what they come to."
            )
        }
    }
}

/// The trade's rule beside the balance, with the reason why they part.
fn rule_in_words(rule: &ByRule, units: Units) -> String {
    let degrees_of = |difference: TemperatureDifference| {
        format!("{} K ({} °F)", print::number(difference.as_kelvins(), 1), print::number(difference.as_fahrenheit_degrees(), 0))
    };
    format!(
        "The trade's rule of factors, with a friction factor of {}, says {} for the water: it leaves out how much there is of each; with {} it would agree.",
        degrees_of(rule.friction),
        degrees(rule.water, units),
        degrees_of(rule.agreeing),
    )
}

fn elsewhere(step: &Foreseen, units: Units) -> String {
    step.stands.map_or_else(String::new, |stands| {
        let found = degrees(stands.found, units);
        format!(" at this kitchen's {found} where the method asks for {}", units.temperature(stands.asked))
    })
}

fn step_in_words(step: &Foreseen, units: Units) -> String {
    let stated = step.stated.map_or_else(|| "no stated time".to_owned(), print::time);
    let asked = step.until.as_ref().map(|condition| format!(", {}", until(condition, units))).unwrap_or_default();
    let head = format!("{} {stated}{}{asked}:", print::capital(step.action.word()), elsewhere(step, units));
    let risen = times(step.risen.value);
    match (&step.reached, step.verdict) {
        (Some(window), Verdict::Agrees | Verdict::PastAndUsable | Verdict::Spent | Verdict::Sooner | Verdict::Later) => {
            let is_window = window.from != window.to;
            let when = if is_window {
                format!("ripe from {} to {}", time(window.from.value), time(window.to.value))
            } else {
                format!("after {}{}", time(window.from.value), band(&window.from))
            };
            format!("{head} {when}; {} ({risen} times the volume by the end).", step.verdict.in_words())
        }
        (_, Verdict::NotAsked) => format!("{head} {risen} times the volume by the end."),
        (_, verdict) => format!("{head} {} ({risen} times the volume by the end).", verdict.in_words()),
    }
}

/// How many times the volume: finer while it is little.
fn times(risen: f64) -> String {
    print::number(risen, if risen < 1.1 { 2 } else { 1 })
}

fn band(known: &Known<TimeSpan>) -> String {
    known.band.map(|(from, to)| format!(" ({} to {})", time(from), time(to))).unwrap_or_default()
}

/// The rise as a row of bars, with its ends in words.
fn chart(points: &[Point], units: Units) -> String {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return String::new() };
    let top = points.iter().map(|point| point.risen).fold(1.0_f64, f64::max);
    let bars = bars(points.iter().map(|point| point.risen), 1.0, top);
    let (from, to) = (whole(first.temperature, units), whole(last.temperature, units));
    format!("  rise {bars} to {} times in {}; {from} to {to}\n", times(top), time(last.time))
}

/// A rise for other programs.
pub fn json(rise: &Rise) -> Value {
    let mixed = rise.mixed.as_ref().map(|mixed| {
        json!({
            "computed": known::temperature(&mixed.computed),
            "wanted-celsius": mixed.wanted.map(Temperature::as_celsius),
            "liquid": mixed.liquid.as_ref().map(|(title, at)| json!({ "ingredient": title, "celsius": at.as_celsius() })),
            "by-rule": mixed.by_rule.map(|rule| json!({
                "water-celsius": rule.water.as_celsius(),
                "friction-kelvin": rule.friction.as_kelvins(),
                "agreeing-friction-kelvin": rule.agreeing.as_kelvins(),
            })),
            "warmed": mixed.warmed.iter().map(warmed_json).collect::<Vec<_>>(),
        })
    });
    let points: Vec<Value> = rise
        .points
        .iter()
        .map(|point| json!({ "hours": point.time.as_hours(), "risen": point.risen, "celsius": point.temperature.as_celsius() }))
        .collect();
    json!({
        "title": rise.title,
        "leaven": rise.leaven,
        "mixed": mixed,
        "steps": rise.steps.iter().map(step).collect::<Vec<_>>(),
        "course": points,
        "outside": rise.outside,
    })
}

fn warmed_json(warmed: &Warmed) -> Value {
    json!({
        "heated": warmed.heated,
        "to-celsius": warmed.to.as_celsius(),
        "joined": warmed.joined,
        "comes-to": known::temperature(&warmed.comes_to),
    })
}

fn step(step: &Foreseen) -> Value {
    json!({
        "action": step.action.word(),
        "stated-hours": step.stated.map(|stated| [stated.from.as_hours(), stated.to.as_hours()]),
        "stands-at-celsius": step.stands.map(|stands| stands.found.as_celsius()),
        "reached": step.reached.as_ref().map(|window| json!({ "from": known::hours(&window.from), "to": known::hours(&window.to) })),
        "risen-at-end": step.risen.value,
        "verdict": step.verdict.in_words(),
    })
}
