//! What a tasting found, in plain words with their limits.

use super::scales::of_points;
use super::{FEW, Report, chance, fits_normal, joined, people, percent};
use bench::tasting::{Choice, Finding, Order, Test};
use formula::read::{Method, Tasting};
use quantity::print::capital;
use quantity::{Fraction, print};

/// A finding in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// The conclusion in a sentence.
    pub conclusion: String,
    /// What stands behind it.
    pub grounds: Vec<String>,
    /// What it does not say.
    pub limits: Vec<String>,
}

/// What a method is called, with its standard.
#[must_use]
pub const fn method_name(method: Method) -> &'static str {
    match method {
        Method::Triangle => "triangle test (ISO 4120)",
        Method::DuoTrio => "duo-trio test (ISO 10399)",
        Method::Paired => "paired comparison (ISO 5495)",
        Method::Preference => "paired preference (ISO 5495)",
        Method::Ranking => "ranking (ISO 8587)",
        Method::Liking => "liking on nine points (Peryam & Pilgrim 1957)",
        Method::Description => "description on scales of nine points (ISO 4121)",
    }
}

/// What tasters are told before they agree, with the names of allergens; readers of all methods see the same words.
#[must_use]
pub fn consent(tasting: &Tasting, notice: &bench::tasting::Notice) -> Vec<String> {
    let names: Vec<String> = notice.allergens.iter().map(|one| one.title.clone()).collect();
    let mut words = vec![match names.is_empty() {
        true => "No listed allergen is known in what is served; ask if you must avoid anything.".to_owned(),
        false => format!("What is served contains {}. Ask if you must avoid anything else.", joined(&names)),
    }];
    if notice.alcohol {
        words.push("Alcohol went into it, which does not all cook off.".to_owned());
    }
    words.extend(tasting.notice.clone());
    words.push(
        "You need not take part, may stop at any time, and may have your answers removed. No name is asked: your answers are kept under the number of your seat."
            .to_owned(),
    );
    words
}

/// The title of a sample.
pub(super) fn title(tasting: &Tasting, sample: usize) -> &str {
    tasting.samples.get(sample).map_or("", |sample| &sample.title)
}

/// The words that stand between the one with more and the other: "was softer than".
pub(super) fn more_than(tasting: &Tasting) -> String {
    match (&tasting.comparative, tasting.method) {
        (_, Method::Preference) => "was preferred to".to_owned(),
        (Some(word), _) => format!("was {word} than"),
        (None, Method::Liking) => "was liked more than".to_owned(),
        (None, _) => "was put before".to_owned(),
    }
}

/// A finding in words.
#[must_use]
pub fn told(report: &Report) -> Told {
    let mut told = match &report.findings.finding {
        Finding::Nothing => Told {
            conclusion: "Nobody answered everything: there is nothing to tell.".to_owned(),
            grounds: Vec::new(),
            limits: Vec::new(),
        },
        Finding::Choice(choice) => of_choice(report.tasting, choice),
        Finding::Order(order) => of_order(report.tasting, order),
        Finding::Points(points) => of_points(report.tasting, points),
    };
    if !report.findings.is_balanced && report.findings.whole > 0 {
        told.limits.push(
            "Not every serving order was used equally often among those who answered everything: place and neighbour may have favoured a sample a little."
                .to_owned(),
        );
    }
    told
}

pub(super) fn risk(tasting: &Tasting) -> String {
    percent(tasting.risk)
}

fn of_choice(tasting: &Tasting, choice: &Choice) -> Told {
    let (right, of) = (choice.right, choice.of);
    let is_found = choice.chance <= tasting.risk;
    let needed = match choice.needed {
        Some(needed) => format!("{needed} or more would be evidence at {}", risk(tasting)),
        None => format!("not even {of} of {of} would be evidence at {}", risk(tasting)),
    };
    let missed = format!(
        "With a panel of {of}, a difference that {} of people truly tell would be missed {} times in 100.",
        percent(tasting.tell),
        print::number(100.0 * choice.power.left().as_ratio(), 0)
    );
    let p = chance(choice.chance);
    let one = choice.favoured.map_or("", |sample| title(tasting, sample));
    let other = choice.favoured.map_or("", |sample| title(tasting, 1 - sample.min(1)));
    let (conclusion, mut grounds) = match choice.test {
        Test::Triangle | Test::DuoTrio => {
            let (first, second) = (title(tasting, 0), title(tasting, 1));
            let found = if choice.test == Test::Triangle { "found the odd one" } else { "found the one like the reference" };
            let conclusion = if is_found {
                format!("People can tell “{first}” from “{second}”: {right} of {of} {found} ({p}).")
            } else {
                format!("{right} of {of} {found} ({p}): that is no evidence that anybody tells “{first}” from “{second}”.")
            };
            (conclusion, vec![told_apart(choice)])
        }
        Test::PairedDirected | Test::PairedPreference if is_found => {
            (format!("“{one}” {} “{other}”: {right} of {of} said so ({p}).", more_than(tasting)), vec![shared(choice)])
        }
        Test::PairedDirected | Test::PairedPreference => (
            format!("{right} of {of} chose “{one}”, {} “{other}” ({p}): that is no evidence of a difference.", rest(of - right)),
            vec![shared(choice)],
        ),
    };
    grounds
        .insert(0, format!("Of {of} {} {needed}; the chance is exact (binomial).", if of == 1 { "answer" } else { "answers" }));
    let mut limits = Vec::new();
    if let Some(alike) = choice.alike {
        let most = alike.most.map_or("no number of right answers".to_owned(), |most| format!("at most {most} right answers"));
        grounds.push(format!(
            "Asked was whether they may be called alike, {} telling them apart at most, at a risk of {}: {most} allow it (exact binomial), and {right} were right. {}",
            percent(alike.tolerated),
            risk(tasting),
            if alike.is_so { "They may." } else { "They may not." }
        ));
    } else if !is_found {
        limits.push(format!("Not evidence of a difference is not evidence of being alike. {missed}"));
    } else {
        limits.push(missed);
    }
    limits.push(match choice.test {
        Test::Triangle | Test::DuoTrio => "A difference that is told says nothing of liking, nor of what differs.".to_owned(),
        Test::PairedDirected => {
            "One-sided, as the direction was fixed beforehand; it says nothing of how large the difference is.".to_owned()
        }
        Test::PairedPreference => {
            "What this panel chose is not what every eater would choose, unless they were drawn from them.".to_owned()
        }
    });
    Told { conclusion, grounds, limits }
}

/// Those who chose otherwise.
const fn rest(count: u32) -> &'static str {
    match count {
        0 => "nobody",
        1 => "the other one",
        _ => "the others",
    }
}

/// The share of discriminators with its limits.
fn told_apart(choice: &Choice) -> String {
    let told = &choice.told;
    let (from, to) = (percent(told.exact.from), percent(told.exact.to));
    if choice.of < FEW {
        return format!(
            "So few answers tell next to nothing of how many really tell: at least {from}, at most {to} of people (one-sided limits at 95 %, exact)."
        );
    }
    let normal = if fits_normal(choice) {
        format!("; by the normal approximation {} and {}", percent(told.limits.from), percent(told.limits.to))
    } else {
        String::new()
    };
    format!(
        "Guesses taken off, about {} of people really tell: at least {from}, at most {to} (one-sided limits at 95 %, exact{normal}).",
        percent(told.share)
    )
}

/// The share of votes with its limits.
fn shared(choice: &Choice) -> String {
    let (from, to) = (percent(choice.share.from), percent(choice.share.to));
    let limits = format!("of people like these, {from} to {to} (two-sided limits at 95 %, exact)");
    if choice.of < FEW {
        return format!("So few answers tell next to nothing of what others would choose: {limits}.");
    }
    let share = Fraction::ratio(f64::from(choice.right) / f64::from(choice.of.max(1)));
    format!("That is {} of the panel; {limits}.", percent(share))
}

fn of_order(tasting: &Tasting, order: &Order) -> Told {
    let is_found = order.chance <= tasting.risk;
    let names = |pairs: &[(usize, usize)]| -> Vec<String> {
        pairs
            .iter()
            .map(|(more, less)| format!("“{}” {} “{}”", title(tasting, *more), more_than(tasting), title(tasting, *less)))
            .collect()
    };
    let by = if order.is_exact { "exact" } else { "by chi-squared" };
    let p = chance(order.chance);
    let apart: Vec<(usize, usize)> = order.pairs.iter().filter(|pair| pair.differ).map(|pair| (pair.more, pair.less)).collect();
    let tasters = order.tasters;
    let who = people(tasters);
    let conclusion = match (is_found, apart.is_empty()) {
        (true, false) => format!("{} ({who}, {p}).", joined(&names(&apart))),
        (true, true) => format!("The samples differ in rank ({who}, {p}), but no two of them surely do."),
        (false, _) => format!("{} ranked them, and no difference was found ({p}).", capital(&who)),
    };
    let agree = if tasters > 1 && order.agreement.is_finite() {
        format!(" Tasters agree to {} of what they could (Kendall’s W).", print::number(order.agreement, 2))
    } else {
        String::new()
    };
    let mut grounds = if order.statistic.is_finite() {
        vec![format!("Friedman’s F = {:.2} of {} samples, {p}, {by}.{agree}", order.statistic, order.sums.len())]
    } else {
        vec!["All ranks are shared: there is nothing to tell the samples apart by.".to_owned()]
    };
    let table = if order.is_from_table { "Newell & MacFarlane 1987" } else { "by Bonferroni’s rule" };
    grounds.push(format!(
        "All pairs at once, rank sums must differ by {} ({table}); a pair that was chosen before tasting, by {}.",
        print::number(order.least_for_all, 1),
        print::number(order.least_for_one, 2)
    ));
    if let Some(expected) = &order.expected {
        let way: Vec<String> = tasting.expected.iter().map(|sample| format!("“{}”", title(tasting, *sample))).collect();
        let verdict =
            if expected.chance <= tasting.risk { "They came as expected" } else { "They did not surely come as expected" };
        grounds.push(format!(
            "{verdict} before tasting, {}: Page’s L = {}, {}, one-sided, {}.",
            way.join(" before "),
            print::number(expected.statistic, 1),
            chance(expected.chance),
            if expected.is_exact { "exact" } else { "by the normal approximation" }
        ));
    }
    let mut limits = Vec::new();
    if !is_found {
        limits.push("No difference found is no evidence of being alike.".to_owned());
    }
    limits.extend(too_few(tasting, order));
    let missed = 100.0 * order.power(tasting).left().as_ratio();
    limits.extend(missed.is_finite().then(|| {
        format!(
            "Were there one sample that {} of people truly tell from the others, a panel of {tasters} would miss it about {} times in 100 (panels made up at random).",
            percent(tasting.tell),
            print::number(missed, 0)
        )
    }));
    limits.push("Ranks say which, not how much.".to_owned());
    Told { conclusion, grounds, limits }
}

/// What a panel of so few cannot show, whatever it says.
fn too_few(tasting: &Tasting, order: &Order) -> Option<String> {
    let samples = order.sums.len();
    // All agreeing is one way of each of the first taster's, out of all ways of everybody.
    let orders: f64 = (1..=samples).map(|one| one as f64).product();
    let least = Fraction::ratio(orders.powi(1 - i32::try_from(order.tasters).unwrap_or(i32::MAX)));
    let (who, risk) = (people(order.tasters), risk(tasting));
    if least > tasting.risk {
        return Some(format!(
            "With {who} no ranking reaches {risk}, however much they agree: the least there can be is {}.",
            chance(least)
        ));
    }
    let widest = order.tasters as f64 * (samples as f64 - 1.0);
    (order.least_for_all > widest)
        .then(|| format!("With {who} no two of {samples} samples are told apart at {risk}, however much they agree."))
}
