//! A forecast as a readable story with small charts.

use crate::words::{Units, until};
use bench::forecast::{Cooking, Forecast, Foreseen, Mixed, Point, Rise, UNCALIBRATED, Verdict};
use formula::{Formula, Known, Origin};
use quantity::{Between, Temperature, TimeSpan, print};

/// The story of a forecast, lines broken at the width.
#[must_use]
pub fn text(formula: &Formula, forecast: &Forecast, units: Units, width: usize) -> String {
    let mut out = format!("{}\n{}\n\n", formula.head.title, "═".repeat(formula.head.title.chars().count()));
    let around = &forecast.surroundings;
    let place = |name: &str, known: &Known<Temperature>| {
        format!("{name} {}{}", units.temperature(Between::just(known.value)), assumed(known))
    };
    say(&mut out, &format!("In {}: {}, {}.", around.title, place("room", &around.room), place("fridge", &around.fridge)), width);
    for rise in &forecast.rises {
        rise_in_words(formula, rise, units, width, &mut out);
    }
    for cooking in &forecast.cookings {
        cooking_in_words(formula, cooking, units, width, &mut out);
    }
    if forecast.rises.is_empty() && forecast.cookings.is_empty() {
        say(&mut out, "Nothing here ferments or goes on a griddle, so there is nothing to foresee yet.", width);
    }
    for missing in &forecast.missing {
        say(&mut out, &format!("Not told: {missing}."), width);
    }
    say(&mut out, &format!("\n{} Look at the dough, not at the clock.", how_sure(formula, forecast)), width);
    out
}

/// Whose times they are, and how far they may be off: the books', or those of the kitchen's own trials.
fn how_sure(formula: &Formula, forecast: &Forecast) -> String {
    let calibration = &forecast.surroundings.calibration;
    let mut leavens: Vec<&str> = forecast.rises.iter().map(|rise| rise.leaven.as_str()).collect();
    leavens.sort_unstable();
    leavens.dedup();
    let mut told = Vec::new();
    for (leaven, vigour) in
        leavens.iter().map(|leaven| (leaven, calibration.vigour(leaven))).filter(|(_, known)| known.trials > 0)
    {
        let trials = if vigour.trials == 1 { "1 trial".to_owned() } else { format!("{} trials", vigour.trials) };
        told.push(format!(
            "Times of {} are learnt from {trials}: it is {} times as lively as in the books, and the next bake may be {} % quicker or slower.",
            called(formula, leaven),
            print::number(vigour.factor(), 2),
            print::number(vigour.next_band() * 100.0, 0)
        ));
    }
    if told.len() < leavens.len() || told.is_empty() {
        let share = print::number(UNCALIBRATED * 100.0, 0);
        let other = if told.is_empty() { "Times" } else { "The other times" };
        told.push(format!(
            "{other} are those of the books: a kitchen that has logged no rise yet may be {share} % quicker or slower."
        ));
    }
    told.join(" ")
}

/// What readers call a yeast or a culture of a formula.
fn called<'f>(formula: &'f Formula, leaven: &'f str) -> &'f str {
    let mut ingredients = formula.lines().flat_map(|(_, line)| line.ingredients());
    ingredients.find(|one| one.name == leaven).map_or(leaven, |one| &one.called)
}

/// Which trials a figure was learnt from, if it was.
fn learnt<T>(known: &Known<T>) -> String {
    match &known.origin {
        Origin::Measured(by) => format!(" ({by})"),
        _ => String::new(),
    }
}

fn assumed<T>(known: &Known<T>) -> &'static str {
    if matches!(known.origin, Origin::Assumed { .. }) { " (assumed)" } else { "" }
}

fn say(out: &mut String, line: &str, width: usize) {
    out.push_str(&crate::sheet::text::wrap(line, width));
}

fn rise_in_words(formula: &Formula, rise: &Rise, units: Units, width: usize, out: &mut String) {
    let component = &formula.components[rise.at.0].title;
    let heading = if formula.components.len() > 1 { format!("{component}: {}", rise.title) } else { rise.title.clone() };
    out.push_str(&format!("\n{heading}\n{}\n", "─".repeat(heading.chars().count())));
    if let Some(mixed) = &rise.mixed {
        say(out, &mixed_in_words(mixed, units), width);
    }
    for step in &rise.steps {
        say(out, &step_in_words(step, units), width);
    }
    out.push_str(&chart(&rise.points, units));
    if !rise.outside.is_empty() {
        say(out, &format!("Outside what the model is held to: {}.", rise.outside.join("; ")), width);
    }
}

fn mixed_in_words(mixed: &Mixed, units: Units) -> String {
    let degrees = |t: Temperature| units.temperature(Between::just(Temperature::celsius((t.as_celsius() * 2.0).round() / 2.0)));
    let computed = format!("From its ingredients it comes to {}{}", degrees(mixed.computed.value), learnt(&mixed.computed));
    match (mixed.wanted, &mixed.liquid) {
        (None, _) => format!("{computed}."),
        (Some(wanted), None) => format!("{computed}; the method wants {}.", degrees(wanted)),
        (Some(wanted), Some((liquid, at))) if at.as_celsius() > 1.0 && at.as_celsius() < 60.0 => {
            let hot = if at.as_celsius() > 50.0 { " (too hot to meet the yeast alone)" } else { "" };
            format!("{computed}; for the {} of the method the {liquid} must be at {}{hot}.", degrees(wanted), degrees(*at))
        }
        (Some(wanted), Some((liquid, _))) => {
            format!("{computed}; {} cannot be reached by the {liquid} alone: warm or chill more than that.", degrees(wanted))
        }
    }
}

fn step_in_words(step: &Foreseen, units: Units) -> String {
    let stated = step.stated.map_or_else(|| "no stated time".to_owned(), print::time);
    let asked = step.until.as_ref().map(|condition| format!(", {}", until(condition, units))).unwrap_or_default();
    let head = format!("{} {stated}{asked}:", capital(step.action.word()));
    let risen = print::number(step.risen.value, 1);
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

fn band(known: &Known<TimeSpan>) -> String {
    known.band.map(|(from, to)| format!(" ({} to {})", time(from), time(to))).unwrap_or_default()
}

fn time(span: TimeSpan) -> String {
    print::time(print::rounded_time(Between::just(span)))
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

fn cooking_in_words(formula: &Formula, cooking: &Cooking, units: Units, width: usize, out: &mut String) {
    let component = &formula.components[cooking.at.0];
    let heading = format!("{}: {}", component.title, cooking.action.word());
    out.push_str(&format!("\n{heading}\n{}\n", "─".repeat(heading.chars().count())));
    let whole = |t: Temperature| Temperature::celsius(t.as_celsius().round());
    let mut words =
        format!("The middle comes off at {}{}", units.temperature(cooking.core.value.map(whole)), learnt(&cooking.core));
    if let Some(wanted) = cooking.wanted {
        let verdict = match (cooking.core.value.from >= wanted, cooking.core.value.to >= wanted) {
            (true, _) => "reached even with a poor contact",
            (false, true) => "reached with a good contact, not with a poor one",
            (false, false) => "not reached: give it longer, or make it thinner",
        };
        words.push_str(&format!("; the {} that the method wants is {verdict}", units.temperature(Between::just(wanted))));
    }
    say(out, &format!("{words}. It has lost about {} by then.", print::percent(cooking.loss, 0)), width);
    let reduced = if cooking.reductions > 12.0 { "more than 12".to_owned() } else { print::number(cooking.reductions, 1) };
    let enough = if cooking.is_enough() {
        "enough by the usual criterion for batters with flour and egg"
    } else {
        "NOT enough by the usual criterion for batters with flour and egg"
    };
    say(
        out,
        &format!(
            "By the lower bound of the model the heat reduces Salmonella {reduced} times tenfold where it is least: {enough}. Guidance only; {}.",
            bench::forecast::PROBE
        ),
        width,
    );
    let (batches, together) = cooking.batches;
    if batches > 1.0 {
        say(out, &format!("{} batches take {} together.", print::number(batches, 0), time(together)), width);
    }
}

const STEPS: [char; 8] = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/// The rise as a row of bars, with its ends in words.
fn chart(points: &[Point], units: Units) -> String {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return String::new() };
    let top = points.iter().map(|point| point.risen).fold(1.0_f64, f64::max);
    let bar = |point: &Point| {
        let share = if top > 1.0 { (point.risen - 1.0) / (top - 1.0) } else { 0.0 };
        STEPS[((share * 7.0).round() as usize).min(7)]
    };
    let bars: String = points.iter().map(bar).collect();
    let degrees = |point: &Point| units.temperature(Between::just(Temperature::celsius(point.temperature.as_celsius().round())));
    format!("  rise {bars} to {} times in {}; {} to {}\n", print::number(top, 1), time(last.time), degrees(first), degrees(last))
}
