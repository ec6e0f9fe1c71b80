//! How sure a forecast is: what many kitchens show, and which of their differences count.

use super::known::{time, whole};
use super::story::Story;
use bench::draws::{Cause, Shown, Spread, What};
use formula::Formula;
use quantity::{Fraction, Temperature, TimeSpan, print};
use serde_json::{Value, json};

/// Tells what many kitchens show.
pub fn tell(story: &mut Story, spread: &Spread) {
    story.heading(&format!("How sure: {} kitchens that differ as kitchens do", print::number(spread.kitchens as f64, 0)));
    for shown in &spread.shown {
        let units = story.units;
        let figure = |value: f64| match shown.what {
            What::RipeFrom | What::RipeTo | What::Reached(_) => time(TimeSpan::hours(value)),
            What::Risen(_) => format!("{} times", print::number(value, 1)),
            What::Core(_) => whole(Temperature::celsius(value), units),
        };
        let (low, high) = shown.band;
        let happens = if shown.happens < Fraction::percent(99.5) {
            format!(", in {} of the kitchens at all", print::percent(shown.happens, 0))
        } else {
            String::new()
        };
        let words = format!(
            "{}, {}: {} ({} to {}){happens}",
            shown.title,
            what(shown.what),
            figure(shown.middle),
            figure(low),
            figure(high)
        );
        let blame = blame(story.formula, shown);
        story.say(&format!("{words}{blame}."));
    }
}

fn what(what: What) -> String {
    match what {
        What::RipeFrom => "ripe from".to_owned(),
        What::RipeTo => "ripe to".to_owned(),
        What::Reached(action) => format!("{}, reached after", action.word()),
        What::Risen(action) => format!("{}, risen by its end", action.word()),
        What::Core(action) => format!("{}, middle", action.word()),
    }
}

/// "; the room explains 71 % of the spread: measure it; then ...".
fn blame(formula: &Formula, shown: &Shown) -> String {
    let mut told = shown.blame.iter().take(3).map(|(cause, share)| (cause, print::percent(*share, 0)));
    let Some((first, share)) = told.next() else { return String::new() };
    let rest: Vec<String> = told.map(|(cause, share)| format!("{} {share}", name(formula, cause))).collect();
    let then = if rest.is_empty() { String::new() } else { format!("; then {}", rest.join(", ")) };
    format!("; {} explains {share} of the spread: {}{then}", name(formula, first), advice(first))
}

fn name(formula: &Formula, cause: &Cause) -> String {
    match cause {
        Cause::Room => "the room's temperature".to_owned(),
        Cause::Fridge => "the fridge's temperature".to_owned(),
        Cause::Bowl => "the temperature from the bowl".to_owned(),
        Cause::Vigour(leaven) => format!("the vigour of {}", called(formula, leaven)),
        Cause::Lag => "how fast it follows the room".to_owned(),
        Cause::Yeast(at) => format!("the weighing of the yeast in “{}”", formula.stage(*at).title),
        Cause::Salt(at) => format!("the weighing of the salt in “{}”", formula.stage(*at).title),
        Cause::Spoons => "how full spoons are".to_owned(),
        Cause::Heat => "how hot pan, fat or oven really is".to_owned(),
        Cause::Contact => "how heat passes into the piece".to_owned(),
        Cause::Pores => "how far steam helps it on".to_owned(),
        Cause::Thickness => "the thickness of the pieces".to_owned(),
    }
}

const fn advice(cause: &Cause) -> &'static str {
    match cause {
        Cause::Room | Cause::Fridge | Cause::Bowl => "measure it",
        Cause::Vigour(_) | Cause::Lag => "log a trial, and `wellproved learn` narrows it",
        Cause::Yeast(_) | Cause::Salt(_) => "weigh it on a finer scale",
        Cause::Spoons => "state grams",
        Cause::Heat => "measure it with a surface or oven thermometer",
        Cause::Contact | Cause::Pores => "probe one piece",
        Cause::Thickness => "roll or ladle them alike",
    }
}

fn called(formula: &Formula, leaven: &str) -> String {
    let mut ingredients = formula.lines().filter_map(|(_, line)| line.ingredient());
    ingredients.find(|one| one.name == leaven).map_or_else(|| leaven.to_owned(), |one| one.called.clone())
}

/// What many kitchens show, for other programs.
pub fn json(formula: &Formula, spread: &Spread) -> Value {
    let unit = |what: What| match what {
        What::RipeFrom | What::RipeTo | What::Reached(_) => "hours",
        What::Risen(_) => "times",
        What::Core(_) => "celsius",
    };
    let one = |shown: &Shown| {
        let blame = shown.blame.iter().map(|(cause, share)| json!({ "cause": name(formula, cause), "share": share.as_ratio() }));
        json!({
            "stretch": shown.title,
            "what": what(shown.what),
            "unit": unit(shown.what),
            "middle": shown.middle,
            "band": [shown.band.0, shown.band.1],
            "happens": shown.happens.as_ratio(),
            "blame": blame.collect::<Vec<_>>(),
        })
    };
    json!({ "kitchens": spread.kitchens, "shown": spread.shown.iter().map(one).collect::<Vec<_>>() })
}
