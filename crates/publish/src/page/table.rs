//! The formula table: shares of all flour, totals, and each stage beside it.

use crate::sheet::text::known;
use formula::arithmetic::{figures, overall, Figures, Overall};
use formula::{Component, Formula};
use maud::{html, Markup};
use quantity::{print, Fraction, Mass};

/// The overall formula of every component that has flour.
pub fn formula_section(formula: &Formula) -> Markup {
    let with_flour: Vec<(&Component, Overall)> = formula
        .components
        .iter()
        .enumerate()
        .map(|(c, component)| (component, overall(formula, c)))
        .filter(|(_, overall)| overall.total_flour > Mass::ZERO)
        .collect();
    html! {
        @if !with_flour.is_empty() {
            section.formula aria-labelledby="formula" {
                h2 id="formula" { "The formula" }
                p.fine { "Percentages are shares of all flour, which is 100 %." }
                @for (component, overall) in &with_flour { (component_table(component, overall)) }
            }
        }
    }
}

/// One component's table with its figures.
pub fn component_table(component: &Component, overall: &Overall) -> Markup {
    let many = component.stages.len() > 1;
    let shown: Vec<usize> = (0..component.stages.len()).filter(|s| overall.rows.iter().any(|row| row.by_stage[*s] > Mass::ZERO)).collect();
    html! {
        div.scroll tabindex="0" role="region" aria-label={ "Formula of " (component.title) } {
            table {
                caption { (component.title) }
                thead { tr {
                    th scope="col" { "Ingredient" }
                    th.number scope="col" { "%" }
                    th.number scope="col" { "g" }
                    @if many { @for s in &shown { th.number scope="col" { (component.stages[*s].title) ", g" } } }
                } }
                tbody {
                    @for row in &overall.rows {
                        tr {
                            th scope="row" { (row.kind.title()) }
                            td.number { (row.percent.map(bare_percent).unwrap_or_default()) }
                            td.number { (bare_grams(row.mass)) }
                            @if many { @for s in &shown { td.number { (bare_grams(row.by_stage[*s])) } } }
                        }
                    }
                }
                tfoot { tr {
                    th scope="row" { "Total" }
                    td.number { (print::number(overall.rows.iter().filter_map(|row| row.percent).sum::<Fraction>().as_percent(), 1)) }
                    td.number { (bare_grams(overall.total)) }
                    @if many { @for s in &shown {
                        td.number { (bare_grams(overall.rows.iter().map(|row| row.by_stage[*s]).sum())) }
                    } }
                } }
            }
        }
        @if let Some(figures) = figures(overall) { (figures_list(&figures, overall)) }
    }
}

fn figures_list(figures: &Figures, overall: &Overall) -> Markup {
    let percent = |share: Fraction| print::percent(share, 1);
    html! {
        dl.figures {
            div { dt { "Prefermented flour" } dd { (percent(overall.prefermented)) } }
            div { dt { "Hydration, water alone" } dd { (percent(figures.nominal_hydration)) } }
            div { dt { "Hydration, all water" } dd { (known(&figures.true_hydration)) } }
            div { dt { "Salt" } dd { (print::percent(figures.salt, 2)) } }
            div { dt { "Sugars" } dd { (known(&figures.sugars)) } }
            div { dt { "Fat" } dd { (known(&figures.fat)) } }
            @if figures.egg > Fraction::ZERO { div { dt { "Egg" } dd { (percent(figures.egg)) } } }
            @if let Some((usual, _)) = figures.leaven { div { dt { "Yeast, as instant" } dd { (print::percent(usual, 2)) } } }
        }
    }
}

/// A percentage for a column headed "%".
pub fn bare_percent(share: Fraction) -> String {
    print::bakers_percent(share).trim_end_matches(['%', print::NO_BREAK_SPACE]).to_owned()
}

/// A weight for a column headed "g"; empty where there is none.
pub fn bare_grams(mass: Mass) -> String {
    if mass == Mass::ZERO { String::new() } else { print::mass(mass).trim_end_matches(['g', print::NO_BREAK_SPACE]).to_owned() }
}
