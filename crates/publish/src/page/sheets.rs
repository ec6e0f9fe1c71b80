//! Formula sheets as a page for the screen or the printer.

use super::Shell;
use super::table::{Cells, overall_table};
use crate::sheet::words::{head, remedy_in_words, silenced_in_words};
use crate::sheet::{ComponentSheet, LineSheet, Sheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::{bare_grams, bare_percent};
use formula::read::BookSettings;
use maud::{Markup, html};
use quantity::print;

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
                article.sheet {
                    h1 { (sheet.title) }
                    @for component in &sheet.components { (component_markup(sheet, component)) }
                    p.fine { "Weighed for " (sheet.kitchen) "." }
                    @for silenced in &sheet.silenced { p.fine { (silenced_in_words(silenced)) } }
                }
            }
        }
    };
    Shell::plain(title, "", settings, "").wrap(body)
}

fn component_markup(sheet: &Sheet, component: &ComponentSheet) -> Markup {
    let within = format!("{}, {}", sheet.title, component.title);
    html! {
        section.component {
            @if sheet.components.len() > 1 { h2 { (component.title) } }
            ul.plain { @for line in head(component) { li { (line) } } }
            (overall_markup(component, &within))
            @for stage in component.stages.iter().filter(|stage| !stage.lines.is_empty()) { (stage_markup(stage, &within)) }
        }
    }
}

/// A component's overall formula with each of its stages beside it.
#[must_use]
pub fn beside(component: &ComponentSheet) -> Markup {
    html! {
        ul.plain { @for line in head(component) { li { (line) } } }
        (overall_markup(component, &component.title))
    }
}

fn overall_markup(component: &ComponentSheet, within: &str) -> Markup {
    let stages: Vec<&str> = component.stages.iter().map(|stage| stage.title.as_str()).collect();
    overall_table(
        &component.overall,
        &stages,
        "Overall formula",
        &format!("Overall formula of {within}"),
        Cells { component: None, tongue: Tongue::default() },
    )
}

fn stage_markup(stage: &StageSheet, within: &str) -> Markup {
    html! {
        div.scroll tabindex="0" role="region" aria-label={ (within) ": " (stage.title) } {
            table {
                caption { (stage.title) " (" (stage.kind.word()) ")" }
                thead { tr {
                    th scope="col" { "Ingredient" }
                    th.number scope="col" { "% of its flour" }
                    th.number scope="col" { "g" }
                    th.number scope="col" { "scale shows" }
                    th scope="col" { "Note" }
                } }
                tbody { @for line in &stage.lines { (line_row(line)) } }
            }
        }
        @for words in stage.lines.iter().filter_map(remedy_in_words) { p.fine { (words) } }
    }
}

fn line_row(line: &LineSheet) -> Markup {
    html! {
        tr {
            th scope="row" { (line.title) }
            td.number { (line.percent.map(bare_percent).unwrap_or_default()) }
            td.number { (bare_grams(line.mass)) }
            td.number { (line.weighable.as_ref().map(|one| print::mass(one.shown)).unwrap_or_default()) }
            td { (line.note.as_deref().unwrap_or_default()) }
        }
    }
}
