//! The overall formula as bars: each ingredient's share of the flour, parted by the stage it is weighed into.

use formula::Formula;
use formula::arithmetic::{Row, overall};
use maud::{Markup, PreEscaped, html};
use quantity::{Fraction, Mass, print};

const WIDTH: f64 = 760.0;
const LABEL: f64 = 210.0;
const FIGURE: f64 = 70.0;
const ROW: f64 = 30.0;
const TOP: f64 = 76.0;

/// Stripes that tell stages apart without colour: the angle and the distance of the lines.
const STRIPES: [(f64, f64); 6] = [(0.0, 0.0), (45.0, 6.0), (135.0, 6.0), (0.0, 5.0), (90.0, 5.0), (45.0, 3.5)];

/// The chart of a formula's first component as a self-contained SVG; none where there is no flour.
#[must_use]
pub fn overall_chart(formula: &Formula) -> Option<String> {
    let component = formula.components.first()?;
    let overall = overall(formula, 0);
    if overall.total_flour <= Mass::ZERO {
        return None;
    }
    let longest = overall.rows.iter().filter_map(|row| row.percent).fold(Fraction::WHOLE, Fraction::max);
    let scale = (WIDTH - LABEL - FIGURE) / longest.as_ratio();
    let stages: Vec<usize> =
        (0..component.stages.len()).filter(|s| overall.rows.iter().any(|row| row.by_stage[*s] > Mass::ZERO)).collect();
    let height = TOP + ROW * overall.rows.len() as f64 + 16.0;
    let names: Vec<&str> = stages.iter().map(|s| component.stages[*s].title.as_str()).collect();
    let description = format!("Shares of all flour by ingredient, parted by stage: {}", names.join(", "));
    let markup = html! {
        svg xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {WIDTH} {height}")) role="img" aria-labelledby="chart-title chart-words" {
            title id="chart-title" { (formula.head.title) }
            desc id="chart-words" { (description) }
            style { (PreEscaped(STYLE)) }
            defs { @for (n, _) in stages.iter().enumerate() { (pattern(n)) } }
            rect.paper x="0" y="0" width=(WIDTH) height=(height) {}
            text.head x="16" y="28" { (formula.head.title) }
            (legend(&names))
            @for (n, row) in overall.rows.iter().enumerate() {
                (bar(row, &stages, TOP + ROW * n as f64, scale, overall.total_flour))
            }
        }
    };
    Some(markup.into_string())
}

/// How the drawing looks; it goes along in the drawing itself.
pub const STYLE: &str = "text{font:14px Georgia,'DejaVu Serif',serif;fill:#2a2520}.head{font-size:17px;font-weight:600}\
.figure{font-variant-numeric:tabular-nums}.paper{fill:#fbf8f2}.edge{stroke:#2a2520;stroke-width:1}.stripe{stroke:#2a2520;stroke-width:1.4}.ground{fill:#fbf8f2}.solid{fill:#8f3a1e}";

fn pattern(n: usize) -> Markup {
    let (angle, distance) = STRIPES[n % STRIPES.len()];
    html! {
        @if distance > 0.0 {
            pattern id=(format!("stripes{n}")) width=(distance) height=(distance) patternUnits="userSpaceOnUse" patternTransform=(format!("rotate({angle})")) {
                rect.ground width=(distance) height=(distance) {}
                line.stripe x1="0" y1="0" x2="0" y2=(distance) {}
            }
        }
    }
}

/// How a stage's part of a bar is filled: the first is solid, the others are striped.
fn fill(n: usize) -> Markup {
    let striped = STRIPES[n % STRIPES.len()].1 > 0.0;
    html! { @if striped { (format!("url(#stripes{n})")) } @else { "#8f3a1e" } }
}

fn legend(names: &[&str]) -> Markup {
    let mut x = 16.0;
    let places: Vec<(usize, &str, f64)> = names
        .iter()
        .enumerate()
        .map(|(n, name)| {
            let here = x;
            x += 46.0 + 7.6 * name.chars().count() as f64;
            (n, *name, here)
        })
        .collect();
    html! {
        @for (n, name, x) in places {
            rect.edge x=(x) y="42" width="22" height="14" fill=(fill(n).into_string()) {}
            text x=(x + 28.0) y="54" { (name) }
        }
    }
}

fn bar(row: &Row, stages: &[usize], y: f64, scale: f64, flour: Mass) -> Markup {
    let mut x = LABEL;
    let parts: Vec<(usize, f64, f64)> = stages
        .iter()
        .enumerate()
        .filter(|(_, s)| row.by_stage[**s] > Mass::ZERO)
        .map(|(n, s)| {
            let width = row.by_stage[*s] / flour * scale;
            let here = x;
            x += width;
            (n, here, width)
        })
        .collect();
    let figure = row.percent.map(print::bakers_percent).unwrap_or_default();
    html! {
        text x=(LABEL - 10.0) y=(y + 17.0) text-anchor="end" { (shortened(row.kind.title())) }
        @for (n, x, width) in parts {
            rect.edge x=(format!("{x:.1}")) y=(y + 3.0) width=(format!("{:.1}", width.max(1.0))) height=(ROW - 10.0) fill=(fill(n).into_string()) {}
        }
        text.figure x=(format!("{:.1}", x + 8.0)) y=(y + 17.0) { (figure) }
    }
}

/// A label that fits beside the bars.
fn shortened(title: &str) -> String {
    let most = 26;
    if title.chars().count() <= most { title.to_owned() } else { title.chars().take(most - 1).chain(['…']).collect() }
}
