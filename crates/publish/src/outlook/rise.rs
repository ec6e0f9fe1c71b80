//! What ferments: how warm it is mixed, when it is ripe or risen.

use super::chart::bars;
use super::known::{self, degrees, learnt, time, whole};
use super::story::Story;
use crate::words::{Units, until};
use bench::forecast::{ByRule, Foreseen, HARMS_YEAST, Mixed, Point, Rise, SETS_EGG, Verdict, Warmed};
use bench::grounds::by;
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
            let ground = story.ground(&warmed.comes_to);
            story.say(&warmed_in_words(warmed, units, &ground));
        }
        let ground = story.ground(&mixed.computed);
        let by_liquid = if mixed.liquid.is_some() { story.by(by::LIQUID) } else { String::new() };
        story.say(&mixed_in_words(mixed, units, &ground, &by_liquid));
        if let Some(rule) = &mixed.by_rule {
            let ground = story.by(by::RULE);
            story.say(&rule_in_words(rule, units, &ground));
        }
    }
    for step in &rise.steps {
        let by_time = step.reached.as_ref().map(|reached| story.ground(&reached.from)).unwrap_or_default();
        let by_rise = story.ground(&step.risen);
        story.say(&step_in_words(step, units, &by_time, &by_rise));
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
    let (by_time, by_dose) = (story.ground(&window.from), story.by(by::DOSE));
    story.say(&format!(
        "To be at its best then, ripe from {} to {}{by_time}, it would take {}{by_dose}: `wellproved solve` with “yeast” and --ripe-after \"{}\" writes that.",
        time(window.from.value),
        time(window.to.value),
        doses.join(" and "),
        print::time(Between::just(one.ripe_after)),
    ));
}

/// A dose to two figures that count, as fine as it is.
fn fine(mass: Mass) -> String {
    format!("{}\u{a0}g", print::number(mass.as_grams(), if mass < Mass::grams(1.0) { 2 } else { 1 }))
}

/// Such a dose for other programs.
pub fn dose_json(formula: &Formula, one: &InTime) -> Value {
    let line = |line: &Dosed| {
        let (low, high) = one.dose.band;
        let needed = Known { band: Some((line.stated * low, line.stated * high)), ..by::DOSE.known(line.needed) };
        json!({
            "ingredient": line.name,
            "needed": known::figure(&needed, "gram", Mass::as_grams),
            "share-of-flour": known::by(by::DOSE, line.share.as_ratio(), "ratio"),
        })
    };
    json!({
        "stage": formula.stage(one.at).name,
        "ripe-after": known::stated(&formula.stage(one.at).place, one.ripe_after.as_hours(), "hours"),
        "lines": one.dose.lines.iter().map(line).collect::<Vec<_>>(),
        "ripe-from": known::hours(&one.dose.reached.from),
        "ripe-to": known::hours(&one.dose.reached.to),
    })
}

fn warmed_in_words(warmed: &Warmed, units: Units, ground: &str) -> String {
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
    format!("Warmed: {heated}, then {joined} cold: together at most {}{ground}; {safe}.", whole(comes_to, units))
}

fn mixed_in_words(mixed: &Mixed, units: Units, ground: &str, by_liquid: &str) -> String {
    let computed =
        format!("From its ingredients it comes to {}{}{ground}", degrees(mixed.computed.value, units), learnt(&mixed.computed));
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
            format!("{computed}; for the {wanted} of the method the {liquid} must be at {at}{hot}{by_liquid}{from}.")
        }
        (Some(wanted), Some((liquid, _))) => {
            let wanted = degrees(wanted, units);
            format!(
                "{computed}; {wanted} cannot be reached by the {liquid} alone{by_liquid}: warm or chill more than that. The rise is reckoned from what they come to."
            )
        }
    }
}

/// The trade's rule beside the balance, with the reason why they part.
fn rule_in_words(rule: &ByRule, units: Units, ground: &str) -> String {
    let degrees_of = |difference: TemperatureDifference| {
        format!("{} K ({} °F)", print::number(difference.as_kelvins(), 1), print::number(difference.as_fahrenheit_degrees(), 0))
    };
    format!(
        "The trade's rule of factors, with a friction factor of {}, says {} for the water{ground}: it leaves out how much there is of each; with {} it would agree.",
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

fn step_in_words(step: &Foreseen, units: Units, by_time: &str, by_rise: &str) -> String {
    let stated = step.stated.map_or_else(|| "no stated time".to_owned(), print::time);
    let asked = step.until.as_ref().map(|condition| format!(", {}", until(condition, units))).unwrap_or_default();
    let head = format!("{} {stated}{}{asked}:", print::capital(step.action.word()), elsewhere(step, units));
    let risen = times(step.risen.value);
    match (&step.reached, step.verdict) {
        (
            Some(window),
            Verdict::Agrees | Verdict::PastAndUsable | Verdict::PastThenSpent | Verdict::Spent | Verdict::Sooner | Verdict::Later,
        ) => {
            let is_window = window.from != window.to;
            let when = if is_window {
                let (from, to) = (time(window.from.value), time(window.to.value));
                let spent = step.spent.as_ref().filter(|_| step.verdict == Verdict::PastThenSpent);
                let until = spent.map(|spent| format!(", of use until about {}", time(spent.value))).unwrap_or_default();
                format!("ripe from {from} to {to}{until}{by_time}")
            } else {
                format!("after {}{}{by_time}", time(window.from.value), band(&window.from))
            };
            format!("{head} {when}; {} ({risen} times the volume by the end{by_rise}).", step.verdict.in_words())
        }
        (_, Verdict::NotAsked) => format!("{head} {risen} times the volume by the end{by_rise}."),
        (_, verdict) => format!("{head} {} ({risen} times the volume by the end{by_rise}).", verdict.in_words()),
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
pub fn json(formula: &Formula, rise: &Rise) -> Value {
    let place = &formula.stage(rise.at).place;
    let stated = |at: Temperature| known::stated(place, at.as_celsius(), "celsius");
    let mixed = rise.mixed.as_ref().map(|mixed| {
        json!({
            "computed": known::temperature(&mixed.computed),
            "wanted": mixed.wanted.map(stated),
            "liquid": mixed.liquid.as_ref().map(|(title, at)| {
                json!({ "ingredient": title, "at": known::by(by::LIQUID, at.as_celsius(), "celsius") })
            }),
            "by-rule": mixed.by_rule.map(|rule| json!({
                "water": known::by(by::RULE, rule.water.as_celsius(), "celsius"),
                "friction": known::by(by::RULE, rule.friction.as_kelvins(), "kelvin"),
                "agreeing-friction": known::by(by::RULE, rule.agreeing.as_kelvins(), "kelvin"),
            })),
            "warmed": mixed.warmed.iter().map(|one| warmed_json(one, stated(one.to))).collect::<Vec<_>>(),
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
        "course-origin": rise.steps.first().map(|step| known::origin(&step.risen.origin)),
        "outside": rise.outside,
    })
}

fn warmed_json(warmed: &Warmed, to: Value) -> Value {
    json!({
        "heated": warmed.heated,
        "to": to,
        "joined": warmed.joined,
        "comes-to": known::temperature(&warmed.comes_to),
    })
}

fn step(step: &Foreseen) -> Value {
    json!({
        "action": step.action.word(),
        "stated": step.stated.map(|stated| known::range(&Known::stated(stated, step.place.clone()), "hours", TimeSpan::as_hours)),
        "stands-at": step.stands.map(|stands| known::by(by::PLACE, stands.found.as_celsius(), "celsius")),
        "reached": step.reached.as_ref().map(|window| json!({ "from": known::hours(&window.from), "to": known::hours(&window.to) })),
        "spent-after": step.spent.as_ref().map(known::hours),
        "risen-at-end": known::figure(&step.risen, "times", |times| times),
        "verdict": step.verdict.in_words(),
    })
}
