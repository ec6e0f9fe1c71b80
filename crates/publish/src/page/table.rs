//! The formula table: shares of all flour, totals, and each stage beside it.

use super::figure::plain;
use crate::words::{bare_grams, bare_percent};
use formula::arithmetic::{Counted, Figures, Overall, figures, overall};
use formula::{Component, Formula};
use maud::{Markup, html};
use quantity::{Fraction, Mass, print};

/// The overall formula of every component that has flour.
pub fn formula_section(formula: &Formula) -> Markup {
    let with_flour: Vec<(usize, &Component, Overall)> = formula
        .components
        .iter()
        .enumerate()
        .map(|(c, component)| (c, component, overall(formula, c)))
        .filter(|(_, _, overall)| overall.total_flour > Mass::ZERO)
        .collect();
    html! {
        @if !with_flour.is_empty() {
            section.formula aria-labelledby="formula" {
                h2 id="formula" { "The formula" }
                p.fine { "Percentages are shares of all flour, which is 100 %." }
                @for (c, component, overall) in &with_flour { (component_table(*c, component, overall)) }
            }
        }
    }
}

/// One component's table with its figures.
fn component_table(c: usize, component: &Component, overall: &Overall) -> Markup {
    let stages: Vec<&str> = component.stages.iter().map(|stage| stage.title.as_str()).collect();
    let label = format!("Formula of {}", component.title);
    html! {
        (overall_table(overall, &stages, &component.title, &label, Some(c)))
        @if let Some(figures) = figures(overall) { (figures_list(&figures, overall, c)) }
    }
}

/// An overall formula: shares of all flour where there is flour, totals, and what goes into each of several stages.
/// Where a reader may change it, `component` says which of the formula's it is.
pub fn overall_table(overall: &Overall, stages: &[&str], caption: &str, label: &str, component: Option<usize>) -> Markup {
    let has_flour = overall.total_flour > Mass::ZERO;
    let shown = overall.beside(stages.len());
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
                    @for (r, row) in overall.rows.iter().enumerate() {
                        tr {
                            th scope="row" { (row.kind.title()) }
                            @if has_flour { td.number { (share(row.percent, component, r)) } }
                            td.number { (gram(row.mass, component, &r.to_string())) }
                            @for s in &shown { td.number { (gram(row.by_stage[*s], component, &format!("{r}.{s}"))) } }
                        }
                    }
                }
                tfoot { tr {
                    th scope="row" { "Total" }
                    @if has_flour {
                        td.number { (share(Some(overall.percent()), component, ALL)) }
                    }
                    td.number { (gram(overall.total, component, "all")) }
                    @for s in &shown { td.number { (gram(overall.of_stage(*s), component, &format!("all.{s}"))) } }
                } }
            }
        }
    }
}

/// The row of the sums.
const ALL: usize = usize::MAX;

/// A cell of gram; a reader's settings find it under its row, and its stage where it is of one.
fn gram(mass: Mass, component: Option<usize>, cell: &str) -> Markup {
    let text = bare_grams(mass);
    match component {
        Some(c) if !text.is_empty() => {
            html! { span data-g=(plain(mass.as_grams())) data-k=(format!("t.{c}.{cell}")) data-bare { (text) } }
        }
        _ => html! { (text) },
    }
}

/// A cell of percent.
fn share(percent: Option<Fraction>, component: Option<usize>, row: usize) -> Markup {
    let Some(percent) = percent else { return html! {} };
    let (text, row, decimals) = match row {
        ALL => (print::number(percent.as_percent(), 1), "all".to_owned(), Some("1")),
        row => (bare_percent(percent), row.to_string(), None),
    };
    match component {
        Some(c) => {
            html! { span data-p=(plain(percent.as_percent())) data-k=(format!("p.{c}.{row}")) data-to=[decimals] { (text) } }
        }
        None => html! { (text) },
    }
}

fn figures_list(figures: &Figures, overall: &Overall, c: usize) -> Markup {
    let told = |name: &str, share: Fraction, decimals: usize| {
        let (value, to) = (plain(share.as_percent()), decimals.to_string());
        html! { span data-p=(value) data-k=(format!("f.{c}.{name}")) data-to=(to) { (print::number(share.as_percent(), decimals)) } "\u{a0}%" }
    };
    let counted = |name: &str, figure: &Counted| {
        let names: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
        html! {
            @if !names.is_empty() { "at least " }
            (told(name, figure.value, 1))
            @if !names.is_empty() { " (not counted: " (names.join(", ")) ")" }
        }
    };
    html! {
        dl.figures {
            div { dt { "Prefermented flour" } dd { (told("prefermented", overall.prefermented, 1)) } }
            div { dt { "Hydration, water alone" } dd { (told("water", figures.nominal_hydration, 1)) } }
            div { dt { "Hydration, all water" } dd { (counted("all-water", &figures.true_hydration)) } }
            div { dt { "Salt" } dd { (told("salt", figures.salt, 2)) } }
            div { dt { "Sugars" } dd { (counted("sugars", &figures.sugars)) } }
            div { dt { "Fat" } dd { (counted("fat", &figures.fat)) } }
            @if figures.egg > Fraction::ZERO { div { dt { "Egg" } dd { (told("egg", figures.egg, 1)) } } }
            @if let Some((usual, _)) = figures.leaven { div { dt { "Yeast, as instant" } dd { (told("yeast", usual, 2)) } } }
        }
    }
}
