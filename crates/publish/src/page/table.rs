//! The formula table: shares of all flour, totals, and each stage beside it.

use crate::words::{bare_grams, bare_percent, counted};
use formula::arithmetic::{Figures, Overall, figures, overall};
use formula::{Component, Formula};
use maud::{Markup, html};
use quantity::{Fraction, Mass, print};

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
fn component_table(component: &Component, overall: &Overall) -> Markup {
    let stages: Vec<&str> = component.stages.iter().map(|stage| stage.title.as_str()).collect();
    let label = format!("Formula of {}", component.title);
    html! {
        (overall_table(overall, &stages, &component.title, &label))
        @if let Some(figures) = figures(overall) { (figures_list(&figures, overall)) }
    }
}

/// An overall formula: shares of all flour where there is flour, totals, and what goes into each of several stages.
pub fn overall_table(overall: &Overall, stages: &[&str], caption: &str, label: &str) -> Markup {
    let has_flour = overall.total_flour > Mass::ZERO;
    let of_stage = |s: usize| -> Mass { overall.rows.iter().map(|row| row.by_stage[s]).sum() };
    let shown: Vec<usize> = (0..stages.len()).filter(|s| stages.len() > 1 && of_stage(*s) > Mass::ZERO).collect();
    html! {
        div.scroll tabindex="0" role="region" aria-label=(label) {
            table {
                caption { (caption) }
                thead { tr {
                    th scope="col" { "Ingredient" }
                    @if has_flour { th.number scope="col" { "% of flour" } }
                    th.number scope="col" { "total, g" }
                    @for s in &shown { th.number scope="col" { (stages[*s]) ", g" } }
                } }
                tbody {
                    @for row in &overall.rows {
                        tr {
                            th scope="row" { (row.kind.title()) }
                            @if has_flour { td.number { (row.percent.map(bare_percent).unwrap_or_default()) } }
                            td.number { (bare_grams(row.mass)) }
                            @for s in &shown { td.number { (bare_grams(row.by_stage[*s])) } }
                        }
                    }
                }
                tfoot { tr {
                    th scope="row" { "Total" }
                    @if has_flour {
                        td.number { (print::number(overall.rows.iter().filter_map(|row| row.percent).sum::<Fraction>().as_percent(), 1)) }
                    }
                    td.number { (bare_grams(overall.total)) }
                    @for s in &shown { td.number { (bare_grams(of_stage(*s))) } }
                } }
            }
        }
    }
}

fn figures_list(figures: &Figures, overall: &Overall) -> Markup {
    let percent = |share: Fraction| print::percent(share, 1);
    html! {
        dl.figures {
            div { dt { "Prefermented flour" } dd { (percent(overall.prefermented)) } }
            div { dt { "Hydration, water alone" } dd { (percent(figures.nominal_hydration)) } }
            div { dt { "Hydration, all water" } dd { (counted(&figures.true_hydration)) } }
            div { dt { "Salt" } dd { (print::percent(figures.salt, 2)) } }
            div { dt { "Sugars" } dd { (counted(&figures.sugars)) } }
            div { dt { "Fat" } dd { (counted(&figures.fat)) } }
            @if figures.egg > Fraction::ZERO { div { dt { "Egg" } dd { (percent(figures.egg)) } } }
            @if let Some((usual, _)) = figures.leaven { div { dt { "Yeast, as instant" } dd { (print::percent(usual, 2)) } } }
        }
    }
}
