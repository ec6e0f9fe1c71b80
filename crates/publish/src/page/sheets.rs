//! Formula sheets as a page for the screen or the printer.

use super::Shell;
use super::table::{Cells, overall_table};
use crate::sheet::words::{goes_on, head, remedy_told, silenced_in_words};
use crate::sheet::{ComponentSheet, LineSheet, Sheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::{bare_grams_in, bare_percent_in};
use formula::read::BookSettings;
use maud::{Markup, html};
use quantity::print::capital;

/// One page with the sheets of formulas, each begun on a new sheet of paper.
#[must_use]
pub fn sheets(sheets: &[Sheet], settings: &BookSettings) -> String {
    let title = match sheets {
        [one] => one.title.as_str(),
        _ => settings.title.as_str(),
    };
    let body = html! {
        main {
            @for sheet in sheets {
                article.sheet lang=[(sheet.language != settings.language).then_some(&sheet.language)] {
                    h1 { (sheet.title) }
                    @for component in &sheet.components { (component_markup(sheet, component)) }
                    p.fine { (capital(&sheet.tongue.sheet_weighed_for(&sheet.kitchen))) "." }
                    @for silenced in &sheet.silenced { p.fine { (silenced_in_words(silenced, sheet.tongue)) } }
                }
            }
        }
    };
    Shell::plain(title, "", settings, "").wrap(body)
}

fn component_markup(sheet: &Sheet, component: &ComponentSheet) -> Markup {
    let (within, tongue) = (format!("{}, {}", sheet.title, component.title), sheet.tongue);
    html! {
        section.component {
            @if sheet.components.len() > 1 { h2 { (component.title) } }
            ul.plain { @for line in head(component, tongue) { li { (line) } } }
            (overall_markup(component, &within, tongue))
            @for stage in component.stages.iter().filter(|stage| !stage.lines.is_empty()) { (stage_markup(stage, &within, tongue)) }
        }
    }
}

/// A component's overall formula with each of its stages beside it, in English.
#[must_use]
pub fn beside(component: &ComponentSheet) -> Markup {
    html! {
        ul.plain { @for line in head(component, Tongue::default()) { li { (line) } } }
        (overall_markup(component, &component.title, Tongue::default()))
    }
}

fn overall_markup(component: &ComponentSheet, within: &str, tongue: Tongue) -> Markup {
    let stages: Vec<&str> = component.stages.iter().map(|stage| stage.title.as_str()).collect();
    overall_table(
        &component.overall,
        &stages,
        tongue.sheet_overall(),
        &tongue.sheet_overall_of(within),
        Cells { component: None, tongue },
    )
}

fn stage_markup(stage: &StageSheet, within: &str, tongue: Tongue) -> Markup {
    let has_flour = stage.lines.iter().any(|line| line.percent.is_some());
    html! {
        div.scroll tabindex="0" role="region" aria-label={ (within) ": " (stage.title) } {
            table {
                caption { (stage.title) " (" (tongue.kind(stage.kind)) ")" }
                thead { tr {
                    th scope="col" { (tongue.ingredient()) }
                    @if has_flour { th.number scope="col" { (tongue.percent_of_its_flour()) } }
                    th.number scope="col" { "g" }
                    th.number scope="col" { (tongue.sheet_scale_shows()) }
                    th scope="col" { (capital(tongue.sheet_note())) }
                } }
                tbody { @for line in &stage.lines { (line_row(line, has_flour, tongue)) } }
            }
        }
        @if let Some(words) = goes_on(stage, tongue) { p.fine { (words) } }
        @for words in stage.lines.iter().filter_map(|line| remedy_told(line, tongue)) { p.fine { (words) } }
    }
}

fn line_row(line: &LineSheet, has_flour: bool, tongue: Tongue) -> Markup {
    html! {
        tr {
            th scope="row" { (line.title) }
            @if has_flour { td.number { (line.percent.map(|share| bare_percent_in(share, tongue)).unwrap_or_default()) } }
            td.number { (bare_grams_in(line.mass, tongue)) }
            td.number { (line.weighable.as_ref().map(|one| tongue.print.mass(one.shown)).unwrap_or_default()) }
            td { (line.note.as_deref().unwrap_or_default()) }
        }
    }
}
