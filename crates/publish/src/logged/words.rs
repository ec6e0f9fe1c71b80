//! Steps and figures of a trial in words, as nobody says them by the keys of a file.

use formula::read::StepSeen;
use formula::resolve::formula::StageAt;
use formula::resolve::trial::{cooking_step, step_seen, waiting_step};
use formula::{Formula, Stage};

/// What each key of a trial is called beside its field and in a list.
const KEYS: [(&str, &str); 19] = [
    ("height", "height in the jar"),
    ("volume", "how much room it took"),
    ("temperature", "how warm"),
    ("doubled-after", "doubled after"),
    ("ripe-after", "ripe after"),
    ("room", "the air there"),
    ("lasted", "took in all"),
    ("core", "the middle"),
    ("time", "took in all"),
    ("pieces", "pieces"),
    ("bake-loss", "lost in baking"),
    ("surface", "griddle or fat"),
    ("side-time", "a side"),
    ("thickness", "how thick"),
    ("ph", "pH"),
    ("course", "readings of a logger"),
    ("file", "the picture"),
    ("shows", "it shows"),
    ("across", "from edge to edge"),
];

/// What a key of a trial is called.
#[must_use]
pub fn key_called(key: &str) -> &str {
    KEYS.iter().find(|(name, _)| *name == key).map_or(key, |(_, called)| called)
}

/// A step as it is called where a stage may have several of its name.
#[must_use]
pub fn called(step: StepSeen) -> String {
    let word = step.action.word();
    match step.number {
        1 => word.to_owned(),
        2 => format!("second {word}"),
        3 => format!("third {word}"),
        number => format!("{word} number {number}"),
    }
}

/// A figure's name in words, "Levain, rye flour" for "levain/flour-rye/amount"; nothing where the formula has no such stage.
#[must_use]
pub fn in_words(name: &str, formula: &Formula) -> Option<String> {
    let parts: Vec<&str> = name.split('/').collect();
    match parts[..] {
        ["notes"] => Some("A note".to_owned()),
        ["left-out"] => Some("Left out, since".to_owned()),
        ["photograph", key] => Some(format!("Photograph, {}", key_called(key))),
        [component, stage, of, key] => {
            let is_meant = |(c, _): StageAt, own: &Stage| own.name == stage && formula.components[c].name == component;
            let (at, _) = formula.stages().find(|(at, own)| is_meant(*at, own))?;
            Some(format!("{}: {}", formula.components[at.0].title, of_stage(formula, at, of, key)))
        }
        [stage, of, key] => formula.stages().find(|(_, own)| own.name == stage).map(|(at, _)| of_stage(formula, at, of, key)),
        _ => None,
    }
}

fn of_stage(formula: &Formula, at: StageAt, of: &str, key: &str) -> String {
    let stage = formula.stage(at);
    let (key, after) = key.split_once(" after ").map_or((key, None), |(key, after)| (key, Some(after)));
    let told = key_called(key);
    if let Some(line) = stage.lines.iter().find(|line| line.name == of) {
        return if key == "amount" {
            format!("{}, {}", stage.title, line.title)
        } else {
            format!("{}, {}: {told}", stage.title, line.title)
        };
    }
    // A file need not name a stage's first step.
    let first = match of {
        "rise" => waiting_step(formula, at, None),
        "cook" => cooking_step(formula, at, None),
        _ => None,
    };
    let step = StepSeen::named(of).or_else(|| first.map(|step| step_seen(stage, step)));
    let step = step.map_or_else(|| of.to_owned(), called);
    let after = after.map(|after| format!(" after {after}")).unwrap_or_default();
    format!("{}, {step}: {told}{after}", stage.title)
}
