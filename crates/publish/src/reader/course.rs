//! What a page counts hours from: each stage's steps, what it uses, and what other formulas take.

use super::short;
use crate::tongue::Tongue;
use formula::read::Attention;
use formula::{Formula, Step};
use plan::Others;
use quantity::{Between, Count, TimeSpan};
use serde_json::{Map, Value, json};

/// A time range in minutes.
fn minutes(range: Between<TimeSpan>) -> Value {
    json!([short(range.from.as_minutes()), short(range.to.as_minutes())])
}

/// Every stage in working order: its key, title, the stages it uses, its steps, and how long what it uses of other
/// formulas takes.
pub fn stages(formula: &Formula, tongue: Tongue) -> Vec<Value> {
    let others = plan::others(formula);
    let told = formula.stages().map(|((c, s), stage)| {
        let uses: Vec<String> = stage.uses().map(|(c, s)| format!("{c}.{s}")).collect();
        let made = stage.uses_formulas().filter_map(|other| others.made.get(&other.name)).copied();
        let made = made.reduce(|a, b| Between { from: a.from.max(b.from), to: a.to.max(b.to) });
        let steps: Vec<Value> = stage.steps.iter().map(|step| one(step, formula.components[c].yields.pieces, tongue)).collect();
        let ready: Vec<&str> = stage.uses_formulas().map(|other| other.head.title.as_str()).collect();
        json!({
            "key": format!("{c}.{s}"), "title": stage.title, "uses": uses, "made": made.map(minutes), "ready": ready,
            "steps": steps,
        })
    });
    told.collect()
}

/// A step: what it does, its time, for how many pieces at once, whether it takes hands, whether it is at the heat; what
/// it has not is left out.
fn one(step: &Step, pieces: Option<Count>, tongue: Tongue) -> Value {
    let once = step.at_a_time.filter(|_| pieces.is_some()).map(Count::as_pieces);
    let parts = [
        ("does", Some(json!(tongue.action(step.action)))),
        ("time", step.time.map(minutes)),
        ("once", once.map(Value::from)),
        ("of", pieces.filter(|_| once.is_some()).map(|of| json!(of.as_pieces()))),
        ("hands", (step.attention == Attention::Active).then(|| json!(1))),
        ("hot", step.action.cooks().then(|| json!(1))),
    ];
    parts.into_iter().filter_map(|(name, value)| Some((name.to_owned(), value?))).collect::<Map<_, _>>().into()
}

/// What the other formulas take that this one uses: hands and heat.
pub fn others(formula: &Formula) -> Value {
    let others: Others = plan::others(formula);
    json!({ "preparing": minutes(others.preparing()), "cooking": minutes(others.cooking()) })
}
