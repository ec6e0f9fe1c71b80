//! The report of a tasting for other programs.

use super::table::tables;
use super::{Report, told};
use bench::tasting::{Choice, Finding, Order, PointPair, Points};
use formula::read::Tasting;
use serde_json::{Value, json};

/// The report as JSON; a figure that is no number is null.
#[must_use]
pub fn json(report: &Report) -> Value {
    let told = told(report);
    let (tasting, findings) = (report.tasting, report.findings);
    let samples = tasting.samples.iter().zip(report.made);
    json!({
        "tasting": tasting.name,
        "title": tasting.title,
        "method": tasting.method.word(),
        "question": tasting.question,
        "closed": report.closed,
        "samples": samples.map(|(one, made)| json!({ "name": one.name.value, "title": one.title, "made-by": made })).collect::<Vec<_>>(),
        "seats": findings.seats,
        "answered": findings.whole,
        "answered-in-part": findings.in_part,
        "balanced": findings.is_balanced,
        "risk-percent": tasting.risk.as_percent(),
        "conclusion": told.conclusion,
        "grounds": told.grounds,
        "limits": told.limits,
        "finding": match &findings.finding {
            Finding::Nothing => Value::Null,
            Finding::Choice(choice) => of_choice(choice),
            Finding::Order(order) => of_order(tasting, order),
            Finding::Points(scales) => scales.iter().map(|points| of_points(tasting, points)).collect(),
        },
        "tables": tables(report).iter().map(|table| json!({ "caption": table.caption, "head": table.head, "rows": table.rows })).collect::<Vec<_>>(),
    })
}

fn of_choice(choice: &Choice) -> Value {
    json!({
        "right": choice.right,
        "of": choice.of,
        "votes": choice.votes,
        "p": choice.chance.as_ratio(),
        "needed": choice.needed,
        "power-percent": choice.power.as_percent(),
        "discriminators": {
            "share": choice.told.share.as_ratio(),
            "standard-error": choice.told.error.as_ratio(),
            "normal-limits": [choice.told.limits.from.as_ratio(), choice.told.limits.to.as_ratio()],
            "exact-limits": [choice.told.exact.from.as_ratio(), choice.told.exact.to.as_ratio()],
        },
        "share-limits": [choice.share.from.as_ratio(), choice.share.to.as_ratio()],
        "alike": choice.alike.map(|alike| json!({ "most": alike.most, "is-so": alike.is_so })),
    })
}

fn of_order(tasting: &Tasting, order: &Order) -> Value {
    let name = |sample: usize| tasting.samples.get(sample).map(|one| one.name.value.clone());
    let pair = |pair: &bench::tasting::Pair| {
        json!({
            "more": name(pair.more), "less": name(pair.less), "difference": pair.difference, "differ": pair.differ,
            "differ-if-chosen-beforehand": pair.differ_alone, "before": pair.before, "of": pair.of,
            "share-limits": [pair.share.from.as_ratio(), pair.share.to.as_ratio()],
        })
    };
    json!({
        "rank-sums": order.sums,
        "F": order.statistic,
        "p": order.chance.as_ratio(),
        "exact": order.is_exact,
        "W": order.agreement,
        "least-difference": order.least_for_one,
        "least-difference-of-all-pairs": order.least_for_all,
        "pairs": order.pairs.iter().map(pair).collect::<Vec<_>>(),
        "groups": order.groups,
        "expected": order.expected.map(|one| json!({ "L": one.statistic, "p": one.chance.as_ratio(), "exact": one.is_exact })),
        "power-percent": order.power(tasting).as_percent(),
    })
}

fn of_points(tasting: &Tasting, points: &Points) -> Value {
    let name = |sample: usize| tasting.samples.get(sample).map(|one| one.name.value.clone());
    let pair = |pair: &PointPair| {
        json!({
            "more": name(pair.more), "less": name(pair.less), "differ": pair.differ,
            "signed-rank-sum": pair.ranks.positive, "p-signed-ranks": pair.ranks.chance.map(|chance| chance.as_ratio()),
            "p-of-all-pairs": pair.chance.as_ratio(), "mean-difference": pair.paired.difference, "t": pair.paired.t,
            "p-t": pair.paired.chance.as_ratio(), "limits": [pair.limits.from, pair.limits.to],
            "power-percent": pair.power.map(|power| power.as_percent()),
        })
    };
    json!({
        "F": points.statistic,
        "p": points.chance.as_ratio(),
        "exact": points.is_exact,
        "means": points.summaries.iter().map(|one| one.mean).collect::<Vec<_>>(),
        "medians": points.summaries.iter().map(|one| one.median).collect::<Vec<_>>(),
        "counts": points.summaries.iter().map(|one| one.counts).collect::<Vec<_>>(),
        "pairs": points.pairs.iter().map(pair).collect::<Vec<_>>(),
    })
}
