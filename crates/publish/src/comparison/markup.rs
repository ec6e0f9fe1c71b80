//! Formulas side by side on a page.

use super::courses;
use super::text::{cells, heading, times};
use bench::compare::{Comparison, Difference, Part};
use maud::{Markup, html};

/// So wide are rises laid over each other drawn, in letters.
const WIDTH: usize = 76;

/// The parts of a comparison whose rows differ at least so much, a table each; none that would be empty.
#[must_use]
pub fn markup(comparison: &Comparison, least: Difference) -> Markup {
    let has_rows = |part: &&Part| part.rows.iter().any(|row| row.difference >= least);
    html! {
        @for part in comparison.parts.iter().filter(has_rows) {
            h3 { (heading(part)) @if least > Difference::None { ", as far as it differs" } }
            (table(&comparison.columns, part, least))
            @let drawn = courses(&comparison.columns, part, WIDTH);
            @if !drawn.is_empty() { pre.drawing tabindex="0" { (drawn.trim_matches('\n')) } }
        }
        p.fine {
            "Percentages are shares of all flour of a component. Slight is less than is noticed, clear is noticed, large makes another product of it (common practice, no source)."
            (times(comparison))
        }
    }
}

fn table(columns: &[String], part: &Part, least: Difference) -> Markup {
    let heading = heading(part);
    html! {
        div.scroll tabindex="0" role="group" aria-label=(heading) {
            table.compared {
                thead { tr {
                    td {}
                    @for column in columns { th.number scope="col" { (column) } }
                    th.number scope="col" { "apart" } th scope="col" { "difference" }
                } }
                tbody {
                    @for row in part.rows.iter().filter(|row| row.difference >= least) {
                        @let told = cells(row, columns.len());
                        tr class=(row.difference.word()) {
                            th scope="row" { (told[0]) }
                            @for cell in &told[1..told.len() - 1] { td.number { (cell) } }
                            td { (row.difference.word()) }
                        }
                    }
                }
            }
        }
    }
}
