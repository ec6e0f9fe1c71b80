//! What points on scales say, in plain words with their limits.

use super::told::{Told, more_than, risk, title};
use super::{FEW, chance, joined, people};
use bench::tasting::{PointPair, Points};
use formula::read::{Method, Tasting};
use quantity::print::capital;
use quantity::{Fraction, print};

pub fn of_points(tasting: &Tasting, scales: &[Points]) -> Told {
    let mut told = Told { conclusion: String::new(), grounds: Vec::new(), limits: Vec::new() };
    let mut conclusions = Vec::new();
    for (scale, points) in scales.iter().enumerate() {
        let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
        let headed = |words: &str| attribute.map_or_else(|| capital(words), |one| format!("{}: {words}", one.title));
        let more = attribute.map_or_else(|| more_than(tasting), |one| format!("was nearer to “{}” than", one.high));
        let pair = |pair: &PointPair| format!("“{}” {more} “{}”", title(tasting, pair.more), title(tasting, pair.less));
        let apart: Vec<String> = points.pairs.iter().filter(|one| one.differ).map(pair).collect();
        let (p, who) = (chance(points.chance), people(points.tasters));
        conclusions.push(headed(&match apart.is_empty() {
            false => format!("{} ({who}, {p}).", joined(&apart)),
            true if points.chance <= tasting.risk => format!("the samples differ ({p}), but no two of them surely do."),
            true => format!("no difference was found ({who}, {p})."),
        }));
        told.grounds.push(headed(&grounds(points, &p)));
        told.grounds.extend(points.pairs.iter().map(|one| headed(&difference(tasting, points, one))));
    }
    told.conclusion = conclusions.join(" ");
    told.limits.extend(scales.first().and_then(|points| too_few(tasting, points)));
    told.limits.push(
        "The means, their differences and limits hold only if the steps of the scale are even: read the medians and counts first."
            .to_owned(),
    );
    if scales.len() > 1 {
        told.limits.push(format!(
            "Of {} scales tested at {} each, one may differ by chance alone more easily than that.",
            scales.len(),
            risk(tasting)
        ));
    }
    told.limits
        .push("No difference found is no evidence of being alike; a trained panel’s liking is not that of customers.".to_owned());
    told
}

/// By which test, and how likely it is by chance.
fn grounds(points: &Points, p: &str) -> String {
    match (points.statistic, points.is_exact) {
        (Some(statistic), _) if statistic.is_nan() => "everybody gave all samples the same points.".to_owned(),
        (Some(statistic), true) => format!("Friedman’s F = {statistic:.2} over the ranks of the points, exact: {p}."),
        (Some(statistic), false) => format!("Friedman’s F = {statistic:.2} over the ranks of the points, by chi-squared: {p}."),
        (None, true) => format!("by the signed ranks of the differences (Wilcoxon), exact: {p}."),
        (None, false) => "there are too many answers to count out.".to_owned(),
    }
}

/// What a panel of so few cannot show, whatever it says: all of them giving one sample more is the least likely there is.
fn too_few(tasting: &Tasting, points: &Points) -> Option<String> {
    let least = |tasters: usize| {
        let alone = 2.0_f64.powi(1 - i32::try_from(tasters).unwrap_or(i32::MAX));
        Fraction::ratio((alone * points.pairs.len() as f64).min(1.0))
    };
    if least(points.tasters) <= tasting.risk {
        return None;
    }
    let needed = (points.tasters..=64).find(|tasters| least(*tasters) <= tasting.risk)?;
    let all = if points.pairs.len() > 1 { " for all pairs at once" } else { "" };
    Some(format!(
        "With {} no two samples can be told apart at {}, whatever they say: the least there can be{all} is {}. It takes {needed} tasters at least.",
        people(points.tasters),
        risk(tasting),
        chance(least(points.tasters))
    ))
}

/// "1 point", "1.5 points".
fn counted(points: f64) -> String {
    let shown = print::number(points, 2);
    let word = if shown == "1" || shown == "−1" { "point" } else { "points" };
    format!("{shown} {word}")
}

/// Two samples' points: the mean difference with its limits, the tests, and what would have been missed.
fn difference(tasting: &Tasting, points: &Points, pair: &PointPair) -> String {
    let (more, less) = (title(tasting, pair.more), title(tasting, pair.less));
    let mut words = format!("“{more}” less “{less}”: {} on the average", counted(pair.paired.difference));
    let is_many = points.pairs.len() > 1;
    // Limits and t are of this pair alone, while the chance by signed ranks is of all pairs at once.
    let alone = if is_many { " of this pair alone, not adjusted" } else { "" };
    let has_spread = pair.limits.from < pair.limits.to && pair.limits.to.is_finite();
    if points.tasters < FEW as usize {
        words.push_str("; so few answers tell nothing of the spread");
    } else if has_spread {
        let (from, to) = (print::number(pair.limits.from, 2), print::number(pair.limits.to, 2));
        words.push_str(&format!(" ({from} to {to}, limits at 95 %{alone})"));
    } else {
        words.push_str("; everybody’s difference is the same, so that nothing is told of the spread");
    }
    words.push_str(&format!("; signed ranks {}{}", chance(pair.chance), if is_many { " for all pairs at once" } else { "" }));
    if points.tasters >= FEW as usize && has_spread && !pair.paired.chance.as_ratio().is_nan() {
        words.push_str(&format!("; paired t = {}, {}{alone}", print::number(pair.paired.t, 2), chance(pair.paired.chance)));
    }
    if let Some(power) = pair.power.filter(|_| points.tasters >= FEW as usize) {
        let missed = print::number(100.0 * power.left().as_ratio(), 0);
        words.push_str(&format!("; {} apart would be missed {missed} times in 100", counted(tasting.apart)));
    }
    words.push('.');
    words
}
