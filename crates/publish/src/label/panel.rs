//! The nutrition tables of a label's sheet: the European declaration and the American facts.

use super::words::{self, INTAKE};
use bench::label::{Declaration, DeclarationLine, FactLine, Facts};
use maud::{Markup, html};
use quantity::print;

/// The European declaration: energy on one line in both units, kilojoules first.
pub fn declared(declaration: &Declaration) -> Markup {
    html! {
        table.declaration {
            caption { "Nutrition" }
            thead { tr {
                td {}
                th scope="col" { "per 100\u{a0}g" }
                @if let Some(portion) = declaration.portion {
                    th scope="col" { "per portion (" (print::large_mass(words::whole(portion))) ")" }
                    th scope="col" { "% RI*" }
                }
            } }
            tbody {
                @for line in &declaration.lines { (declared_line(line)) }
            }
        }
        @if declaration.portion.is_some() { p.small { "* " (INTAKE) } }
    }
}

fn declared_line(line: &DeclarationLine) -> Markup {
    // The energy has two lines of one name: the second has none to print.
    let title = if line.unit == "kcal" { "" } else { line.title };
    html! {
        tr {
            @if title.is_empty() { td {} } @else { th.part[line.is_part] scope="row" { (title) } }
            td { (words::figure(&line.in_100_g, line.unit)) }
            @if let Some(shown) = &line.in_portion {
                td { (words::figure(shown, line.unit)) }
                td { @if let Some(share) = line.intake { (print::percent(share, 0)) } }
            }
        }
    }
}

/// The American facts.
pub fn stated(facts: &Facts) -> Markup {
    let serving = &facts.serving;
    let (traces, lines): (Vec<&FactLine>, Vec<&FactLine>) = facts.lines.iter().partition(|line| line.is_trace);
    html! {
        div.facts {
            p.title { "Nutrition Facts" }
            p { (words::servings(serving)) }
            p.row { b { "Serving size" } b { (serving.measure) " (" (serving.gram) "g)" } }
            p.amount { "Amount per serving" }
            p.row.calories { b { "Calories" } b { (words::figure(&facts.calories, "")) } }
            table {
                thead { tr { td {} th scope="col" { "% Daily Value*" } } }
                tbody { @for line in lines { (fact(line)) } }
                tbody.traces { @for line in traces { (fact(line)) } }
            }
            p.small { (words::DAILY) }
        }
    }
}

fn fact(line: &FactLine) -> Markup {
    let (strong, rest) = words::fact(line);
    html! {
        tr class={ "depth" (line.depth) } {
            th scope="row" { @if !strong.is_empty() { b { (strong) } } (rest) }
            td { @if let Some(daily) = line.daily { (daily) "%" } }
        }
    }
}
