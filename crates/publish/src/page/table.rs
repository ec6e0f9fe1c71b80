//! The formula table: shares of all flour, totals, and each stage beside it.

use super::figure::plain;
use crate::tongue::Tongue;
use crate::words::{bare_grams_in, bare_percent_in};
use formula::arithmetic::{Counted, Figures, Overall, figures, overall};
use formula::{Component, Formula};
use maud::{Markup, html};
use quantity::{Fraction, Mass};

/// The overall formula of every component that has flour.
pub fn formula_section(formula: &Formula, tongue: Tongue) -> Markup {
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
                h2 id="formula" { (tongue.the_formula()) }
                p.fine { (tongue.shares_of_flour()) }
                @for (c, component, overall) in &with_flour { (component_table(*c, component, overall, tongue)) }
            }
        }
    }
}

/// One component's table with its figures.
fn component_table(c: usize, component: &Component, overall: &Overall, tongue: Tongue) -> Markup {
    let stages: Vec<&str> = component.stages.iter().map(|stage| stage.title.as_str()).collect();
    let label = tongue.formula_of(&component.title);
    let cells = Cells { component: Some(c), tongue };
    html! {
        (overall_table(overall, &stages, &component.title, &label, cells))
        @if let Some(figures) = figures(overall) { (figures_list(&figures, overall, c, tongue)) }
    }
}

/// An overall formula: shares of all flour where there is flour, totals, and what goes into each of several stages.
pub fn overall_table(overall: &Overall, stages: &[&str], caption: &str, label: &str, cells: Cells) -> Markup {
    let tongue = cells.tongue;
    let has_flour = overall.total_flour > Mass::ZERO;
    let shown = overall.beside(stages.len());
    html! {
        div.scroll tabindex="0" role="region" aria-label=(label) {
            table.weighed {
                caption { (caption) }
                thead { tr {
                    th scope="col" { (tongue.ingredient()) }
                    @if has_flour { th scope="col" { (tongue.percent_of_flour()) } }
                    th scope="col" { (tongue.total_grams()) }
                    @for s in &shown { th scope="col" { (stages[*s]) ", g" } }
                } }
                tbody {
                    @for (r, row) in overall.rows.iter().enumerate() {
                        tr {
                            th scope="row" { (row.kind.title()) }
                            @if has_flour { td { (cells.share(row.percent, r)) } }
                            td { (cells.gram(row.mass, &r.to_string())) }
                            @for s in &shown { td { (cells.gram(row.by_stage[*s], &format!("{r}.{s}"))) } }
                        }
                    }
                }
                tfoot { tr {
                    th scope="row" { (tongue.total()) }
                    @if has_flour {
                        td { (cells.share(Some(overall.percent()), ALL)) }
                    }
                    td { (cells.gram(overall.total, "all")) }
                    @for s in &shown { td { (cells.gram(overall.of_stage(*s), &format!("all.{s}"))) } }
                } }
            }
        }
    }
}

/// The row of the sums.
const ALL: usize = usize::MAX;

/// How the cells of a table are told.
#[derive(Clone, Copy)]
pub struct Cells {
    /// Which of the formula's components it is, where a reader may change it.
    pub component: Option<usize>,
    /// The language.
    pub tongue: Tongue,
}

impl Cells {
    /// A cell of gram; a reader's settings find it under its row, and its stage where it is of one.
    fn gram(self, mass: Mass, cell: &str) -> Markup {
        let text = bare_grams_in(mass, self.tongue);
        match self.component {
            Some(c) if !text.is_empty() => {
                html! { span data-g=(plain(mass.as_grams())) data-k=(format!("t.{c}.{cell}")) data-bare { (text) } }
            }
            _ => html! { (text) },
        }
    }

    /// A cell of percent.
    fn share(self, percent: Option<Fraction>, row: usize) -> Markup {
        let Some(percent) = percent else { return html! {} };
        let (text, row, decimals) = match row {
            ALL => (self.tongue.print.number(percent.as_percent(), 1), "all".to_owned(), Some("1")),
            row => (bare_percent_in(percent, self.tongue), row.to_string(), None),
        };
        match self.component {
            Some(c) => {
                html! { span data-p=(plain(percent.as_percent())) data-k=(format!("p.{c}.{row}")) data-to=[decimals] { (text) } }
            }
            None => html! { (text) },
        }
    }
}

fn figures_list(figures: &Figures, overall: &Overall, c: usize, tongue: Tongue) -> Markup {
    let told = |name: &str, share: Fraction, decimals: usize| {
        let (value, to) = (plain(share.as_percent()), decimals.to_string());
        html! { span data-p=(value) data-k=(format!("f.{c}.{name}")) data-to=(to) { (tongue.print.number(share.as_percent(), decimals)) } "\u{a0}%" }
    };
    let counted = |name: &str, figure: &Counted| {
        let names: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
        html! {
            @if !names.is_empty() { (tongue.at_least()) " " }
            (told(name, figure.value, 1))
            @if !names.is_empty() { " (" (tongue.not_counted(names.join(", "))) ")" }
        }
    };
    html! {
        dl.figures {
            div { dt { (tongue.prefermented_flour()) } dd { (told("prefermented", overall.prefermented, 1)) } }
            div { dt { (tongue.hydration_of_water()) } dd { (told("water", figures.nominal_hydration, 1)) } }
            div { dt { (tongue.hydration_of_all()) } dd { (counted("all-water", &figures.true_hydration)) } }
            div { dt { (tongue.salt()) } dd { (told("salt", figures.salt, 2)) } }
            div { dt { (tongue.sugars()) } dd { (counted("sugars", &figures.sugars)) } }
            div { dt { (tongue.fat()) } dd { (counted("fat", &figures.fat)) } }
            @if figures.egg > Fraction::ZERO { div { dt { (tongue.egg_share()) } dd { (told("egg", figures.egg, 1)) } } }
            @if let Some((usual, _)) = figures.leaven { div { dt { (tongue.yeast_as_instant()) } dd { (told("yeast", usual, 2)) } } }
        }
    }
}
