//! The finding of a tasting drawn: in words and figures as well as lines, in one ink, so that it prints.

use super::told::title;
use super::{Report, people};
use bench::tasting::{Choice, Finding, LIKING, Order, Points, Test};
use formula::read::{Method, Tasting};
use maud::{Markup, html};
use quantity::print;

const WIDTH: f64 = 720.0;
/// Where an axis begins and ends.
const LEFT: f64 = 24.0;
const RIGHT: f64 = WIDTH - 24.0;

/// The drawings of a report, one a scale; none where there is nothing to draw.
#[must_use]
pub fn chart(report: &Report) -> Vec<Markup> {
    match &report.findings.finding {
        Finding::Nothing => Vec::new(),
        Finding::Choice(choice) => vec![of_choice(report.tasting, choice)],
        Finding::Order(order) => vec![of_order(report.tasting, order)],
        Finding::Points(scales) => {
            scales.iter().enumerate().map(|(scale, points)| of_points(report.tasting, scale, points)).collect()
        }
    }
}

fn frame(height: f64, words: &str, inner: &Markup) -> Markup {
    html! {
        svg.tasting xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {WIDTH} {height}")) role="img" aria-label=(words) { (inner) }
    }
}

fn at(x: f64) -> String {
    format!("{x:.1}")
}

fn line(from: (f64, f64), to: (f64, f64), class: &str) -> Markup {
    html! { line class=(class) x1=(at(from.0)) y1=(at(from.1)) x2=(at(to.0)) y2=(at(to.1)) {} }
}

fn text(x: f64, y: f64, anchor: &str, words: &str) -> Markup {
    html! { text x=(at(x)) y=(at(y)) text-anchor=(anchor) { (words) } }
}

/// Where words at a place of the axis begin, so that they stay within the drawing.
fn anchor(x: f64) -> &'static str {
    match (x - LEFT) / (RIGHT - LEFT) {
        share if share < 0.25 => "start",
        share if share > 0.75 => "end",
        _ => "middle",
    }
}

/// A bar of right answers, with what guessing gives and what would be evidence.
fn of_choice(tasting: &Tasting, choice: &Choice) -> Markup {
    let of = f64::from(choice.of.max(1));
    let x = |count: f64| LEFT + (RIGHT - LEFT) * count / of;
    let what = match (choice.test, choice.favoured) {
        (Test::Triangle | Test::DuoTrio, _) => "right".to_owned(),
        (_, favoured) => format!("for “{}”", favoured.map_or("", |sample| title(tasting, sample))),
    };
    let guessed = of * choice.test.guess();
    let needed = choice.needed.map(f64::from);
    let words = format!(
        "{} of {} {what}; guessing alone gives {} on the average{}",
        choice.right,
        choice.of,
        print::number(guessed, 1),
        needed.map(|needed| format!("; {needed} would be evidence")).unwrap_or_default()
    );
    let (right, y) = (x(f64::from(choice.right)), 52.0);
    // The words stand before the line, away from that of evidence, where there is room.
    let before = x(guessed) > LEFT + 170.0;
    let inner = html! {
        (text(LEFT, 22.0, "start", &format!("{} of {} {what}", choice.right, choice.of)))
        rect.whole x=(at(LEFT)) y="34" width=(at(RIGHT - LEFT)) height="36" {}
        rect.part x=(at(LEFT)) y="34" width=(at(right - LEFT)) height="36" {}
        (line((x(guessed), y - 24.0), (x(guessed), 84.0), "dashed"))
        (text(x(guessed) + if before { 0.0 } else { 4.0 }, 108.0, if before { "end" } else { "start" }, &format!("guessing alone: {}", print::number(guessed, 1))))
        @if let Some(needed) = needed {
            (line((x(needed), y - 24.0), (x(needed), 116.0), "strong"))
            (text(x(needed), 142.0, anchor(x(needed)), &format!("evidence from {needed} on")))
        }
    };
    frame(154.0, &words, &inner)
}

/// Mean ranks on a line, with a measure of how far apart two must lie.
fn of_order(tasting: &Tasting, order: &Order) -> Markup {
    let (tasters, count) = (order.tasters.max(1) as f64, order.sums.len());
    let x = |rank: f64| LEFT + (RIGHT - LEFT) * (rank - 1.0) / (count as f64 - 1.0).max(1.0);
    let mut samples: Vec<usize> = (0..count).collect();
    samples.sort_by(|a, b| order.sums[*a].total_cmp(&order.sums[*b]));
    let row = |place: usize| 46.0 + 30.0 * place as f64;
    let bottom = row(count) + 4.0;
    let apart = (order.least_for_all / tasters).min(count as f64 - 1.0);
    let means: Vec<String> =
        samples.iter().map(|sample| format!("{} {:.2}", title(tasting, *sample), order.sums[*sample] / tasters)).collect();
    let words = format!("Mean ranks of {}: {}", people(order.tasters), means.join(", "));
    let inner = html! {
        (text(LEFT, 20.0, "start", "most of it"))
        (text(RIGHT, 20.0, "end", "least of it"))
        @for rank in 1..=count {
            (line((x(rank as f64), 30.0), (x(rank as f64), bottom), "light"))
            (text(x(rank as f64), bottom + 18.0, anchor(x(rank as f64)), &rank.to_string()))
        }
        @for (place, sample) in samples.iter().enumerate() {
            @let mean = order.sums[*sample] / tasters;
            circle.dot cx=(at(x(mean))) cy=(at(row(place))) r="7" {}
            @if x(mean) > WIDTH / 2.0 {
                (text(x(mean) - 13.0, row(place) + 5.0, "end", &format!("{} {mean:.2}", title(tasting, *sample))))
            } @else {
                (text(x(mean) + 13.0, row(place) + 5.0, "start", &format!("{} {mean:.2}", title(tasting, *sample))))
            }
        }
        (line((LEFT, bottom + 40.0), (LEFT + x(1.0 + apart) - x(1.0), bottom + 40.0), "strong"))
        (text(LEFT, bottom + 64.0, "start", "two means closer than this line are not told apart"))
    };
    frame(bottom + 74.0, &words, &inner)
}

/// How many gave each point, sample by sample, with the mean below.
fn of_points(tasting: &Tasting, scale: usize, points: &Points) -> Markup {
    let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
    let (low, high) = attribute.map_or((LIKING[0], LIKING[8]), |one| (one.low.as_str(), one.high.as_str()));
    let most = points.summaries.iter().flat_map(|one| one.counts).max().unwrap_or(1).max(1);
    let step = (RIGHT - LEFT) / 9.0;
    let (tall, row) = (54.0, 104.0);
    let x = |point: f64| LEFT + step * (point - 0.5);
    let means: Vec<String> =
        points.summaries.iter().enumerate().map(|(n, one)| format!("{} {:.2}", title(tasting, n), one.mean)).collect();
    let words = format!("Points from 1, {low}, to 9, {high}; means: {}", means.join(", "));
    let end = row * points.summaries.len() as f64;
    let inner = html! {
        @for (sample, summary) in points.summaries.iter().enumerate() {
            @let base = row * sample as f64 + 90.0;
            (text(LEFT, base - tall - 18.0, "start", &format!("{}: mean {:.2}, median {}", title(tasting, sample), summary.mean, print::number(summary.median, 1))))
            (line((LEFT, base), (RIGHT, base), "light"))
            @for (count, point) in summary.counts.iter().zip(1_u32..) {
                @if *count > 0 {
                    @let high = tall * f64::from(*count) / f64::from(most);
                    rect.part x=(at(x(f64::from(point)) - step * 0.3)) y=(at(base - high)) width=(at(step * 0.6)) height=(at(high)) {}
                    (text(x(f64::from(point)), base - high - 4.0, "middle", &count.to_string()))
                }
            }
            @if !summary.mean.is_nan() { path.dot d=(format!("M{m:.1} {y:.1} l6 9 h-12 z", m = x(summary.mean), y = base + 1.0)) {} }
        }
        @for point in 1..=9_u32 { (text(x(f64::from(point)), end + 14.0, "middle", &point.to_string())) }
        (text(LEFT, end + 34.0, "start", low))
        (text(RIGHT, end + 34.0, "end", high))
    };
    frame(end + 44.0, &words, &inner)
}
