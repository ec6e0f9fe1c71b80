//! What a tasting found, in plain words with their limits.

use super::{Report, chance, joined, percent};
use bench::tasting::{Choice, Finding, Order, PointPair, Points, Test};
use formula::read::{Method, Tasting};
use quantity::print;

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

fn risk(tasting: &Tasting) -> String {
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
            format!("{right} of {of} chose “{one}”, the others “{other}” ({p}): that is no evidence of a difference."),
            vec![shared(choice)],
        ),
    };
    grounds.insert(0, format!("Of {of} answers {needed}; the chance is exact (binomial)."));
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

/// The share of discriminators with its limits.
fn told_apart(choice: &Choice) -> String {
    let told = &choice.told;
    format!(
        "Guesses taken off, about {} of people really tell: at least {}, at most {} (one-sided limits at 95 %, exact; by the normal approximation {} and {}).",
        percent(told.share),
        percent(told.exact.from),
        percent(told.exact.to),
        percent(told.limits.from),
        percent(told.limits.to)
    )
}

/// The share of votes with its limits.
fn shared(choice: &Choice) -> String {
    let share = f64::from(choice.right) / f64::from(choice.of.max(1));
    format!(
        "That is {} of the panel; of people like these, {} to {} (two-sided limits at 95 %, exact).",
        percent(quantity::Fraction::ratio(share)),
        percent(choice.share.from),
        percent(choice.share.to)
    )
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
    let conclusion = match (is_found, apart.is_empty()) {
        (true, false) => format!("{} ({tasters} people, {p}).", joined(&names(&apart))),
        (true, true) => format!("The samples differ in rank ({tasters} people, {p}), but no two of them surely do."),
        (false, _) => format!("{tasters} people ranked them, and no difference was found ({p})."),
    };
    let mut grounds = vec![format!(
        "Friedman’s F = {:.2} of {} samples, {p}, {by}. Tasters agree to {} of what they could (Kendall’s W).",
        order.statistic,
        order.sums.len(),
        print::number(order.agreement, 2)
    )];
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
    limits.push(format!(
        "Were there one sample that {} of people truly tell from the others, a panel of {tasters} would miss it about {} times in 100 (panels made up at random).",
        percent(tasting.tell),
        print::number(100.0 * order.power(tasting).left().as_ratio(), 0)
    ));
    limits.push("Ranks say which, not how much.".to_owned());
    Told { conclusion, grounds, limits }
}

fn of_points(tasting: &Tasting, scales: &[Points]) -> Told {
    let mut told = Told { conclusion: String::new(), grounds: Vec::new(), limits: Vec::new() };
    let mut conclusions = Vec::new();
    for (scale, points) in scales.iter().enumerate() {
        let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
        let head = attribute.map(|one| format!("{}: ", one.title)).unwrap_or_default();
        let more = attribute.map_or_else(|| more_than(tasting), |one| format!("was nearer to “{}” than", one.high));
        let pair = |pair: &PointPair| format!("“{}” {more} “{}”", title(tasting, pair.more), title(tasting, pair.less));
        let apart: Vec<String> = points.pairs.iter().filter(|one| one.differ).map(pair).collect();
        let p = chance(points.chance);
        conclusions.push(match apart.is_empty() {
            false => format!("{head}{} ({} people, {p}).", joined(&apart), points.tasters),
            true if points.chance <= tasting.risk => format!("{head}the samples differ ({p}), but no two of them surely do."),
            true => format!("{head}no difference was found ({} people, {p}).", points.tasters),
        });
        let by = match (points.statistic, points.is_exact) {
            (Some(statistic), true) => format!("Friedman’s F = {statistic:.2} over the ranks of the points, exact"),
            (Some(statistic), false) => format!("Friedman’s F = {statistic:.2} over the ranks of the points, by chi-squared"),
            (None, true) => "by the signed ranks of the differences (Wilcoxon), exact".to_owned(),
            (None, false) => "too many answers to count out".to_owned(),
        };
        told.grounds.push(format!("{head}{p}, {by}."));
        told.grounds.extend(points.pairs.iter().map(|one| format!("{head}{}", difference(tasting, one))));
    }
    told.conclusion = conclusions.join(" ");
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

/// Two samples' points: the mean difference with its limits, the tests, and what would have been missed.
fn difference(tasting: &Tasting, pair: &PointPair) -> String {
    let (more, less) = (title(tasting, pair.more), title(tasting, pair.less));
    let mut words = format!(
        "“{more}” less “{less}”: {} points on the average ({} to {}, limits at 95 %); signed ranks {}",
        print::number(pair.paired.difference, 2),
        print::number(pair.limits.from, 2),
        print::number(pair.limits.to, 2),
        chance(pair.chance)
    );
    if tasting.samples.len() > 2 {
        words.push_str(" for all pairs at once");
    }
    if !pair.paired.chance.as_ratio().is_nan() {
        words.push_str(&format!("; paired t = {}, {}", print::number(pair.paired.t, 2), chance(pair.paired.chance)));
    }
    if let Some(power) = pair.power {
        words.push_str(&format!(
            "; {} points apart would be missed {} times in 100",
            print::number(tasting.apart, 1),
            print::number(100.0 * power.left().as_ratio(), 0)
        ));
    }
    words.push('.');
    words
}
