//! Figures by their names: "dough/mix", "sponge/ferment/height", "griddling/core", "dough/yeast-instant".

use super::Unnoted;
use crate::ingredient::nearest;
use crate::read::StepSeen;
use crate::resolve::formula::StageAt;
use crate::resolve::trial::{cooking_step, step_seen, step_words, waiting_step};
use crate::{Formula, Stage};
use quantity::{Kind, Measure};

/// Where a figure stands in a trial.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// The stage's component, where two have a stage of that name.
    pub component: Option<String>,
    /// The stage.
    pub stage: String,
    /// Which part of the trial it stands in.
    pub part: Part,
    /// The key there.
    pub key: &'static str,
}

/// A part of a trial.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// The mixing of a stage.
    Mix,
    /// A line of a stage.
    Line(String),
    /// A waiting step; whether it is the stage's first.
    Rise(StepSeen, bool),
    /// A reading of a waiting step, so long after it began.
    Reading(StepSeen, bool, String),
    /// A step on the heat; whether it is the stage's first on a griddle or in fat.
    Cook(StepSeen, bool),
}

/// The keys of each part that can be noted, with what each measures.
const MIX: [(&str, Option<Kind>); 2] = [("temperature", Some(Kind::Temperature)), ("ph", None)];
const LINE: [(&str, Option<Kind>); 2] = [("amount", Some(Kind::Mass)), ("temperature", Some(Kind::Temperature))];
const RISE: [(&str, Option<Kind>); 4] = [
    ("room", Some(Kind::Temperature)),
    ("lasted", Some(Kind::Time)),
    ("doubled-after", Some(Kind::Time)),
    ("ripe-after", Some(Kind::Time)),
];
const READING: [(&str, Option<Kind>); 4] =
    [("height", Some(Kind::Length)), ("volume", Some(Kind::Volume)), ("temperature", Some(Kind::Temperature)), ("ph", None)];
const COOK: [(&str, Option<Kind>); 7] = [
    ("core", Some(Kind::Temperature)),
    ("time", Some(Kind::Time)),
    ("thickness", Some(Kind::Length)),
    ("bake-loss", Some(Kind::Share)),
    ("pieces", Some(Kind::Count)),
    ("surface", Some(Kind::Temperature)),
    ("side-time", Some(Kind::Time)),
];

type Keys = &'static [(&'static str, Option<Kind>)];

impl Figure {
    /// The figure of a name such as "sponge/ferment/height", with the value that is noted of it: "67 mm" of
    /// "67 mm after 1 h 30 min". Where the name ends with a step or a line, the value's unit tells what it is.
    ///
    /// # Errors
    /// What of the name the formula does not have.
    pub fn read(name: &str, value: &str, formula: &Formula) -> Result<(Self, String), Unnoted> {
        let parts: Vec<&str> = name.split('/').map(str::trim).collect();
        let (at, component, rest) = stage(&parts, formula)?;
        let stage = formula.stage(at);
        let (value, after) = match value.rsplit_once(" after ") {
            Some((value, after)) => (value.trim(), Some(after.trim())),
            None => (value.trim(), None),
        };
        let (part, key) = part(formula, at, rest, value, after)?;
        let figure = Self { component, stage: stage.name.clone(), part, key };
        Ok((figure, value.to_owned()))
    }

    /// The figure's own name, whichever way it was asked for.
    #[must_use]
    pub fn name(&self) -> String {
        let component = self.component.as_ref().map(|name| format!("{name}/")).unwrap_or_default();
        let (stage, key) = (&self.stage, self.key);
        match &self.part {
            Part::Mix => format!("{component}{stage}/mix/{key}"),
            Part::Line(line) => format!("{component}{stage}/{line}/{key}"),
            Part::Rise(step, _) | Part::Cook(step, _) => format!("{component}{stage}/{}/{key}", step.word()),
            Part::Reading(step, _, after) => format!("{component}{stage}/{}/{key} after {after}", step.word()),
        }
    }
}

/// The stage at the head of a name, its component where that is needed, and the rest.
fn stage<'p>(parts: &'p [&'p str], formula: &Formula) -> Result<(StageAt, Option<String>, &'p [&'p str]), Unnoted> {
    let of_that_name: Vec<StageAt> =
        formula.stages().filter(|(_, stage)| Some(&stage.name.as_str()) == parts.first()).map(|(at, _)| at).collect();
    if let [at] = of_that_name[..] {
        return Ok((at, None, &parts[1..]));
    }
    let [component, name, rest @ ..] = parts else { return Err(no_stage(parts, formula)) };
    let found = formula.stages().find(|((c, _), stage)| stage.name == *name && formula.components[*c].name == *component);
    match found {
        Some((at, _)) => Ok((at, Some((*component).to_owned()), rest)),
        None => Err(no_stage(parts, formula)),
    }
}

fn no_stage(parts: &[&str], formula: &Formula) -> Unnoted {
    let names: Vec<&str> = formula.stages().map(|(_, stage)| stage.name.as_str()).collect();
    let asked = parts.first().copied().unwrap_or_default();
    if names.contains(&asked) {
        let hint = "put the component's name before it: COMPONENT/STAGE/…";
        return Unnoted::new(format!("several components have a stage “{asked}”"), hint);
    }
    let known = match nearest(asked, names.iter().copied()) {
        Some(near) => format!("did you mean “{near}”?"),
        None => format!("its stages are: {}", names.join(", ")),
    };
    Unnoted::new(format!("“{}” has no stage called “{asked}”", formula.head.title), known)
}

/// What of a stage is meant.
fn part(
    formula: &Formula,
    at: StageAt,
    rest: &[&str],
    value: &str,
    after: Option<&str>,
) -> Result<(Part, &'static str), Unnoted> {
    let stage = formula.stage(at);
    let (word, key) = match rest {
        [word] => (*word, None),
        [word, key] => (*word, Some(*key)),
        _ => return Err(how(stage)),
    };
    if stage.lines.iter().any(|line| line.name == word) {
        return Ok((Part::Line(word.to_owned()), chosen(&LINE, key, value)?));
    }
    if let Some(step) = StepSeen::named(word) {
        return of_step(formula, at, step, key, value, after).ok_or_else(|| no_step(stage, word))?;
    }
    // Without a step, the key says of which it is.
    let is_of = |keys: Keys| keys.iter().any(|(name, _)| *name == word);
    let first = |step: Option<usize>| step.map(|step| step_seen(stage, step));
    let waits = first(waiting_step(formula, at, None));
    let heats = first(cooking_step(formula, at, None).or_else(|| stage.steps.iter().position(|step| step.action.cooks())));
    let step = match word {
        _ if key.is_some() => None,
        "temperature" | "ph" if after.is_none() => return Ok((Part::Mix, chosen(&MIX, Some(word), value)?)),
        _ if is_of(&RISE) || is_of(&READING) => waits,
        _ if is_of(&COOK) => heats,
        _ => None,
    };
    match step.and_then(|step| of_step(formula, at, step, Some(word), value, after)) {
        Some(found) => found,
        None => Err(how(stage)),
    }
}

/// What of a step is meant; none where the stage has no such step.
fn of_step(
    formula: &Formula,
    at: StageAt,
    named: StepSeen,
    key: Option<&str>,
    value: &str,
    after: Option<&str>,
) -> Option<Result<(Part, &'static str), Unnoted>> {
    let stage = formula.stage(at);
    if let Some(step) = waiting_step(formula, at, Some(named)) {
        let is_first = waiting_step(formula, at, None) == Some(step);
        return Some(match after {
            Some(after) => chosen(&READING, key, value).map(|key| (Part::Reading(named, is_first, after.to_owned()), key)),
            None if key.is_some_and(|key| READING.iter().any(|(name, _)| *name == key)) => {
                let key = key.unwrap_or_default();
                let hint = format!("say how long after the step began: {key}=\"{value} after 1 h 30 min\"");
                Err(Unnoted::new(format!("when was the {key} read?"), hint))
            }
            None => chosen(&RISE, key, value).map(|key| (Part::Rise(named, is_first), key)),
        });
    }
    if let Some(step) = cooking_step(formula, at, Some(named)) {
        let is_first = cooking_step(formula, at, None) == Some(step);
        return Some(chosen(&COOK, key, value).map(|key| (Part::Cook(named, is_first), key)));
    }
    let is_there = named.number == 1 && stage.steps.iter().any(|step| step.action == named.action);
    is_there.then(|| chosen(&MIX, key, value).map(|key| (Part::Mix, key)))
}

/// The key that is named, or the one that measures what the value does.
fn chosen(keys: Keys, key: Option<&str>, value: &str) -> Result<&'static str, Unnoted> {
    let names = || keys.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
    if let Some(key) = key {
        let known = keys.iter().find(|(name, _)| *name == key).map(|(name, _)| *name);
        return known.ok_or_else(|| {
            Unnoted::new(format!("nothing called “{key}” is noted there"), format!("what is noted: {}", names()))
        });
    }
    let kind = value.parse::<Measure>().ok().map(|measure| measure.unit.kind());
    let found = keys.iter().find(|(_, known)| known.is_some() && *known == kind).map(|(name, _)| *name);
    found.ok_or_else(|| {
        let message = if value.is_empty() {
            "which figure is it?".to_owned()
        } else {
            format!("“{value}” does not tell what was measured")
        };
        Unnoted::new(message, format!("write a figure with its unit, or end the name with one of: {}", names()))
    })
}

fn no_step(stage: &Stage, word: &str) -> Unnoted {
    let steps = step_words(stage);
    Unnoted::new(format!("“{}” has no step “{word}”", stage.title), format!("its steps are: {}", steps.join(", ")))
}

fn how(stage: &Stage) -> Unnoted {
    let steps = step_words(stage);
    let lines: Vec<&str> = stage.lines.iter().map(|line| line.name.as_str()).collect();
    let hint = format!(
        "write STAGE/STEP, STAGE/STEP/FIGURE or STAGE/INGREDIENT; “{}” has the steps {} and the ingredients {}",
        stage.name,
        steps.join(", "),
        lines.join(", ")
    );
    Unnoted::new("that names no figure", hint)
}
