//! The nutrition tables of a label's sheet: the European declaration and the American facts.

use super::words;
use crate::tongue::Tongue;
use bench::label::{Declaration, DeclarationLine, FactLine, Facts};
use maud::{Markup, html};

/// The European declaration: energy on one line in both units, kilojoules first.
pub fn declared(declaration: &Declaration, tongue: Tongue) -> Markup {
    html! {
        table.declaration {
            caption { (tongue.label_nutrition()) }
            thead { tr {
                td {}
                th scope="col" { (tongue.label_per_100_g()) }
                @if let Some(portion) = declaration.portion {
                    th scope="col" { (tongue.label_per_portion(tongue.print.large_mass(words::whole(portion)))) }
                    th scope="col" { (tongue.label_of_intake()) }
                }
            } }
            tbody {
                @for line in &declaration.lines { (declared_line(line, tongue)) }
            }
        }
        @if declaration.portion.is_some() { p.small { "* " (tongue.label_intake()) } }
    }
}

fn declared_line(line: &DeclarationLine, tongue: Tongue) -> Markup {
    // The energy has two lines of one name: the second has none to print.
    let title = if line.unit == "kcal" { "" } else { words::nutrient(line.title, tongue) };
    html! {
        tr {
            @if title.is_empty() { td {} } @else { th.part[line.is_part] scope="row" { (title) } }
            td { (words::figure(&line.in_100_g, line.unit, tongue)) }
            @if let Some(shown) = &line.in_portion {
                td { (words::figure(shown, line.unit, tongue)) }
                td { @if let Some(share) = line.intake { (tongue.print.percent(share, 0)) } }
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
            p.row.calories { b { "Calories" } b { (words::figure(&facts.calories, "", Tongue::default())) } }
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
