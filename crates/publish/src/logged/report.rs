//! Trials side by side as a page of its own: tables, and photographs at the same scale.

use super::beside::{Beside, CAUTION, Plate, Row};
use crate::page::alone;
use maud::{Markup, html};

/// How many dots of the page a millimetre takes, at the most.
const DOTS_A_MILLIMETRE: f64 = 3.0;
/// How wide a photograph stands on the page where its scale is not told, and how wide the widest may stand.
const WIDTH: f64 = 360.0;

const STYLE: &str = ":root{color-scheme:light dark}body{font:16px/1.5 system-ui,sans-serif;max-width:70rem;margin:2rem auto;padding:0 1rem;color:#222;background:#fff}\
table{border-collapse:collapse;font-variant-numeric:tabular-nums}th,td{padding:.3rem .8rem .3rem 0;text-align:left;vertical-align:top;border-bottom:1px solid #8886}\
.wide{overflow-x:auto}.plates{display:flex;gap:1rem;align-items:flex-end;overflow-x:auto}.plates>figure{flex:none}figure{margin:0}figcaption{font-size:.9rem}img{display:block}\
.clear{font-weight:600}@media(prefers-color-scheme:dark){body{color:#eee;background:#191714}}@media print{body{margin:0;color:#000;background:#fff}figure,tr{break-inside:avoid}.plates{flex-wrap:wrap;overflow:visible}}";

impl Beside<'_> {
    /// The whole report as one file.
    #[must_use]
    pub fn page(&self) -> String {
        let title = self.title();
        let body = html! { h1 { (title) } (self.html()) };
        alone(&title, "en-GB", STYLE, &body)
    }

    /// How many stand side by side, as a heading.
    #[must_use]
    pub fn title(&self) -> String {
        format!("{} trials side by side", self.trials.len())
    }

    /// The same as part of a page that has a look and a heading of its own.
    #[must_use]
    pub fn html(&self) -> Markup {
        let (inputs, same) = self.inputs();
        let columns = self.columns();
        html! {
            ul { @for ((trial, _), column) in self.trials.iter().zip(&columns) { li { b { (column) } ": " (trial.title) ", " (trial.formula.value) } } }
            @for told in &self.formulas { p { (told) } }
            h2 { "What went in" }
            (table("Figures that went in", &columns, &inputs))
            @if same > 0 { p { (same) " more are the same in all." } }
            h2 { "What came out" }
            (table("Figures that came out", &columns, &self.came_out()))
            p { (CAUTION) }
            (self.plates(&columns))
        }
    }

    /// The photographs of the same thing side by side; a millimetre is as wide in each of them whose width is told.
    fn plates(&self, columns: &[String]) -> Markup {
        let mut shown: Vec<&str> = self.plates.iter().map(|plate| plate.shows.as_str()).collect();
        shown.sort_unstable();
        shown.dedup();
        html! {
            @if !shown.is_empty() { h2 { "Photographs" } }
            @for shows in shown {
                @let plates: Vec<&Plate> = self.plates.iter().filter(|plate| plate.shows == shows).collect();
                @let widest = plates.iter().filter_map(|plate| plate.across).fold(0.0, f64::max);
                @let scale = if widest > 0.0 { (WIDTH * 1.4 / widest).min(DOTS_A_MILLIMETRE) } else { 1.0 };
                h3 { (shows) }
                @if widest > 0.0 { p { "At the same scale: the bar is 20 mm." svg width=(format!("{:.0}", 20.0 * scale)) height="10" role="img" aria-label="20 millimetres" { rect width="100%" height="4" y="3" fill="currentColor" {} } } }
                div.plates tabindex="0" role="region" aria-label=(format!("Photographs: {shows}")) {
                    @for plate in plates {
                        @let width = plate.across.map_or(WIDTH, |across| across * scale);
                        figure {
                            img src=(plate.source) width=(format!("{width:.0}")) height=(format!("{:.0}", width * f64::from(plate.size.1) / f64::from(plate.size.0.max(1))))
                                alt=(format!("{shows}, {}", columns.get(plate.trial).map_or("", String::as_str)));
                            figcaption {
                                (columns.get(plate.trial).map_or("", String::as_str))
                                @if plate.across.is_none() { ", scale not told" }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn table(label: &str, columns: &[String], rows: &[Row]) -> Markup {
    let has_remarks = rows.iter().any(|row| !row.remark.is_empty());
    html! {
        @if rows.is_empty() { p { "Nothing that differs was noted." } } @else {
            div.wide tabindex="0" role="region" aria-label=(label) {
                table {
                    thead { tr { td {} @for column in columns { th scope="col" { (column) } } @if has_remarks { th scope="col" { "first to last" } } } }
                    tbody {
                        @for row in rows {
                            tr {
                                th scope="row" { (row.name) }
                                @for cell in &row.cells { td { @if cell.is_empty() { "–" } @else { (cell) } } }
                                @if has_remarks { td.clear[row.remark.ends_with("clear")] { (row.remark) } }
                            }
                        }
                    }
                }
            }
        }
    }
}
