//! A plan for a trial for other programs.

use super::{Laid, name, product};
use bench::trial::{Batch, Kind, Plan};
use serde_json::{Map, Value, json};

/// The plan as JSON.
#[must_use]
pub fn json(laid: &Laid) -> Value {
    let plan = laid.plan;
    let days = plan.days.iter().map(|day| day.iter().map(|one| batch(plan, one)).collect::<Vec<_>>());
    let question = &laid.question;
    json!({
        "factors": plan.factors.iter().map(|one| json!({ "name": one.name, "levels": one.levels })).collect::<Vec<_>>(),
        "made-up": kind(plan),
        "days": days.collect::<Vec<_>>(),
        "seed": plan.seed,
        "tasting": {
            "test": name(question.test),
            "tell-percent": question.tell.as_percent(),
            "significance-percent": question.significance.as_percent(),
            "wanted-power-percent": question.power.as_percent(),
            "panel": laid.panel.map(|panel| json!({
                "fewest": panel.fewest, "tasters": panel.tasters, "right": panel.right,
                "power-percent": panel.power.as_percent(),
            })),
        },
    })
}

fn batch(plan: &Plan, batch: &Batch) -> Value {
    let level = |(factor, level): (&bench::trial::Factor, &usize)| (factor.name.clone(), json!(factor.levels.get(*level)));
    let levels: Map<String, Value> = plan.factors.iter().zip(&batch.levels).map(level).collect();
    json!({ "bowl": batch.code, "levels": levels })
}

fn kind(plan: &Plan) -> Value {
    match &plan.kind {
        Kind::CompleteDays { times } => json!({ "kind": "complete days", "times-a-day": times }),
        Kind::Confounded { with_the_day, times } => {
            let given_up: Vec<String> = with_the_day.iter().map(|factors| product(plan, factors)).collect();
            json!({ "kind": "blocks", "not-told-from-the-day": given_up, "times": times })
        }
        Kind::BalancedPairs { each, together } => {
            json!({ "kind": "balanced incomplete blocks", "days-each": each, "days-each-two-together": together })
        }
        Kind::EvenDays { is_even } => json!({ "kind": "even days", "even": is_even }),
        Kind::Part { fraction, is_even } => {
            let alike: Vec<[String; 2]> =
                fraction.alike.iter().map(|both| both.each_ref().map(|one| product(plan, one))).collect();
            json!({ "kind": "fraction", "resolution": fraction.resolution, "alike": alike, "even": is_even })
        }
    }
}
