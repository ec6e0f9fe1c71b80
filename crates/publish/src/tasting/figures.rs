//! The figures of a test one by one, to as many places as tables of them are printed with.

use super::{Report, Table, fits_normal, percent, table::table};
use bench::tasting::{Choice, Finding, Order, Test};
use formula::read::Tasting;
use quantity::{Between, Fraction, print};

/// The figures of a finding; none where points speak for themselves.
pub fn figures(report: &Report) -> Option<Table> {
    let rows = match &report.findings.finding {
        Finding::Choice(choice) => of_choice(choice),
        Finding::Order(order) => of_order(report.tasting, order),
        Finding::Nothing | Finding::Points(_) => return None,
    };
    let row = |(name, value): (String, String)| vec![name, value];
    Some(table("The test in figures", &["figure", "value"], rows.into_iter().map(row).collect()))
}

type Rows = Vec<(String, String)>;

/// A chance to six places.
fn chance(chance: Fraction) -> String {
    match chance.as_ratio() {
        p if p.is_nan() => "not told".to_owned(),
        p if p < 5e-7 => "< 0.000001".to_owned(),
        p => format!("{p:.6}"),
    }
}

fn fixed(value: f64, places: usize) -> String {
    if !value.is_finite() {
        return "not told".to_owned();
    }
    format!("{value:.places$}").replace('-', "−")
}

fn share(share: Fraction) -> String {
    fixed(share.as_ratio(), 4)
}

fn between(limits: Between<Fraction>) -> String {
    format!("{} to {}", share(limits.from), share(limits.to))
}

fn of_choice(choice: &Choice) -> Rows {
    let sides = if choice.test == Test::PairedPreference { "two-sided" } else { "one-sided" };
    let mut rows = vec![
        ("by guessing alone, on the average".to_owned(), print::number(choice.guessed, 1)),
        (format!("chance of so many by guessing alone, exact, {sides}"), chance(choice.chance)),
        ("z of a large panel (go by the exact chance)".to_owned(), fixed(choice.deviations, 2)),
    ];
    for (risk, fewest) in &choice.levels {
        let fewest = fewest.map_or("no number".to_owned(), |fewest| fewest.to_string());
        rows.push((format!("evidence at {}: from", print::percent(*risk, 1)), fewest));
    }
    if matches!(choice.test, Test::Triangle | Test::DuoTrio) {
        let told = &choice.told;
        rows.push(("share who tell it, guesses taken off".to_owned(), share(told.share)));
        let normal = |words: String| if fits_normal(choice) { words } else { "not told of so few".to_owned() };
        rows.push(("its standard error".to_owned(), normal(share(told.error))));
        rows.push(("one-sided limits at 95 %, normal".to_owned(), normal(between(told.limits))));
        rows.push(("one-sided limits at 95 %, exact (Clopper and Pearson)".to_owned(), between(told.exact)));
    } else {
        rows.push(("share of the panel, two-sided limits at 95 %, exact".to_owned(), between(choice.share)));
    }
    if let Some(alike) = &choice.alike {
        let most = |most: Option<u32>| most.map_or("no number".to_owned(), |most| most.to_string());
        let whom = percent(alike.tolerated);
        rows.push((format!("alike for all but {whom}: at most, exact"), most(alike.most)));
        rows.push((format!("alike for all but {whom}: at most, by the normal limit"), most(alike.by_normal)));
    }
    rows
}

fn of_order(tasting: &Tasting, order: &Order) -> Rows {
    let risk = percent(tasting.risk);
    let mut rows = vec![("Friedman’s F".to_owned(), fixed(order.statistic, 2))];
    if order.is_exact {
        rows.push(("its chance, exact".to_owned(), chance(order.chance)));
    }
    rows.push((format!("its chance by chi-squared, {} degrees of freedom", order.sums.len() - 1), chance(order.by_chi_squared)));
    if let Some(critical) = order.critical(tasting.risk) {
        rows.push((format!("F is evidence at {risk}, counted out without ties: from"), fixed(critical, 2)));
    }
    rows.push(("agreement, Kendall’s W".to_owned(), fixed(order.agreement, 3)));
    rows.push((format!("least difference of a pair chosen beforehand, {risk}"), fixed(order.least_for_one, 2)));
    rows.push((format!("least difference of all pairs at once, {risk}"), print::number(order.least_for_all, 2)));
    if let Some(expected) = &order.expected {
        rows.push(("Page’s L".to_owned(), print::number(expected.statistic, 1)));
        rows.push((
            "its mean and standard deviation by chance".to_owned(),
            format!("{} and {}", print::number(expected.mean, 1), fixed(expected.deviation, 3)),
        ));
        rows.push(("its z".to_owned(), fixed(expected.deviations, 3)));
        let by = if expected.is_exact { "exact" } else { "normal" };
        rows.push((format!("its chance, one-sided, {by}"), chance(expected.chance)));
        for at in [5.0, 1.0].map(Fraction::percent) {
            if let Some(critical) = order.critical_of_expected(at) {
                rows.push((
                    format!("L is evidence at {}, counted out without ties: from", percent(at)),
                    print::number(critical, 1),
                ));
            }
        }
    }
    rows
}
