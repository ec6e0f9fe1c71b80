//! The figures of a finding as tables, for every form of the report.

use super::figures::figures;
use super::told::title;
use super::{Report, percent};
use bench::tasting::{Choice, Finding, LIKING, Order, Points, Test};
use formula::read::{Method, Tasting};
use quantity::print;

/// A table: its caption, headings, and rows of which the first cell is the row's name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// The headings.
    pub head: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

/// The tables of a report.
#[must_use]
pub fn tables(report: &Report) -> Vec<Table> {
    let mut tables = match &report.findings.finding {
        Finding::Nothing => Vec::new(),
        Finding::Choice(choice) => vec![of_choice(report.tasting, choice)],
        Finding::Order(order) => of_order(report.tasting, order),
        Finding::Points(scales) => {
            scales.iter().enumerate().map(|(scale, points)| of_points(report.tasting, scale, points)).collect()
        }
    };
    tables.extend(figures(report));
    tables
}

pub(super) fn table(caption: &str, head: &[&str], rows: Vec<Vec<String>>) -> Table {
    Table { caption: caption.to_owned(), head: head.iter().map(|&one| one.to_owned()).collect(), rows }
}

fn of_choice(tasting: &Tasting, choice: &Choice) -> Table {
    let row = |name: &str, count: u32| vec![name.to_owned(), count.to_string()];
    let rows = match choice.test {
        Test::Triangle | Test::DuoTrio => vec![row("right", choice.right), row("not right", choice.of - choice.right)],
        Test::PairedDirected | Test::PairedPreference => {
            choice.votes.iter().enumerate().map(|(sample, votes)| row(title(tasting, sample), *votes)).collect()
        }
    };
    table("Answers", &["answer", "people"], rows)
}

fn of_order(tasting: &Tasting, order: &Order) -> Vec<Table> {
    let tasters = order.tasters.max(1) as f64;
    let mut samples: Vec<usize> = (0..order.sums.len()).collect();
    samples.sort_by(|a, b| order.sums[*a].total_cmp(&order.sums[*b]));
    let row = |sample: usize| {
        let sum = order.sums[sample];
        let groups: String = order.groups[sample].iter().map(|group| char::from(b'a' + (*group).min(25) as u8)).collect();
        vec![title(tasting, sample).to_owned(), print::number(sum, 1), format!("{:.2}", sum / tasters), groups]
    };
    let sums = samples.into_iter().map(row).collect();
    let pair = |pair: &bench::tasting::Pair| {
        let limits =
            if pair.of == 0 { String::new() } else { format!("{} to {}", percent(pair.share.from), percent(pair.share.to)) };
        let verdict = match (pair.differ, pair.differ_alone) {
            (true, _) => "yes",
            (false, true) => "only if chosen beforehand",
            (false, false) => "no",
        };
        vec![
            format!("{} – {}", title(tasting, pair.more), title(tasting, pair.less)),
            print::number(pair.difference, 1),
            format!("{} of {}", pair.before, pair.of),
            limits,
            verdict.to_owned(),
        ]
    };
    let pairs = order.pairs.iter().map(pair).collect();
    vec![
        table(
            "Ranks: 1 has most of it; samples that share a letter are not told apart",
            &["sample", "rank sum", "mean rank", "group"],
            sums,
        ),
        table(
            "Pairs: limits at 95 % are of each pair alone, not adjusted; “differ” is of all pairs at once",
            &["first – second", "rank sums differ by", "first put before", "of people, 95 %", "differ"],
            pairs,
        ),
    ]
}

fn of_points(tasting: &Tasting, scale: usize, points: &Points) -> Table {
    let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
    let (low, high) = attribute.map_or((LIKING[0], LIKING[8]), |one| (one.low.as_str(), one.high.as_str()));
    let row = |(sample, summary): (usize, &_)| {
        let summary: &bench::tasting::Summary = summary;
        let mut cells = vec![title(tasting, sample).to_owned(), format!("{:.2}", summary.mean), print::number(summary.median, 1)];
        cells.extend(summary.counts.iter().map(|count| if *count == 0 { "·".to_owned() } else { count.to_string() }));
        cells
    };
    let name = attribute.map_or("Liking", |one| &one.title);
    let caption = format!("{name}: how many gave each point, from 1 “{low}” to 9 “{high}”");
    let rows = points.summaries.iter().enumerate().map(row).collect();
    table(&caption, &["sample", "mean", "median", "1", "2", "3", "4", "5", "6", "7", "8", "9"], rows)
}
