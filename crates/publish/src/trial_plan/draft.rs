//! A batch that is to be baked, as the draft of its trial.

use bench::trial::{Batch, Plan};

/// What bowls of a plan are called by: their title begins so.
pub(crate) const BOWL: &str = "Bowl ";
/// Why a draft is left out until it was baked.
pub const NOT_BAKED: &str = "not baked yet";

/// The trial of a batch before it was baked: what it is of, when, and its levels. Nothing is learnt from it yet.
#[must_use]
pub fn draft(plan: &Plan, batch: &Batch, formula: &str, date: &str) -> String {
    let level = |(factor, level): (&bench::trial::Factor, &usize)| {
        format!("{} {}", factor.name, factor.levels.get(*level).map_or("", String::as_str))
    };
    let levels: Vec<String> = plan.factors.iter().zip(&batch.levels).map(level).collect();
    let notes: Vec<String> = levels.iter().map(|level| quoted(level)).collect();
    format!(
        "# Planned by `wellproved design`, seed {}. Write down what was seen, and take out left-out once it is baked.\n\
         title = {}\nformula = {}\ndate = {date}\nleft-out = \"{NOT_BAKED}\"\nnotes = [{}]\n",
        plan.seed,
        quoted(&format!("{BOWL}{}: {}", batch.code, levels.join(", "))),
        quoted(formula),
        notes.join(", ")
    )
}

/// A text as TOML quotes it; signs that a text cannot hold are left out.
fn quoted(text: &str) -> String {
    let plain: String = text.chars().filter(|sign| !sign.is_control()).collect();
    format!("\"{}\"", plain.replace('\\', "\\\\").replace('"', "\\\""))
}
