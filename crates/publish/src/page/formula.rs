//! A formula's page: head, what is needed, the stages, the formula table, what to mind.

use super::stages::component_section;
use super::table::formula_section;
use super::{first_sentence, paragraphs, Shell};
use crate::needs::{heading, needs, Need};
use crate::structured;
use crate::words::{makes, Units};
use bench::cautions::cautions;
use formula::arithmetic::mixture;
use formula::ingredient::{allergens, datasets};
use formula::read::BookSettings;
use formula::resolve::formula::Content;
use formula::Formula;
use maud::{html, Markup};
use plan::{hours, Hours};
use quantity::{print, Between, Mass, TimeSpan};
use std::collections::BTreeSet;

/// The page of a formula.
#[must_use]
pub fn formula_page(formula: &Formula, settings: &BookSettings) -> String {
    let units = Units::of(settings);
    let body = html! {
        header.top {
            @if !settings.title.is_empty() {
                nav aria-label="Book" { a href="index.html" { (settings.title) } }
            }
        }
        main {
            article {
                (head(formula, settings))
                (needs_section(formula, units, settings))
                @for c in 0..formula.components.len() { (component_section(formula, c, units)) }
                (formula_section(formula))
                (care_section(formula))
                (foot(formula, settings))
            }
        }
    };
    let shell = Shell {
        title: &formula.title,
        description: first_sentence(&formula.intro),
        language: &settings.language,
        structured: Some(structured::recipe(formula, settings)),
    };
    shell.wrap(body)
}

fn head(formula: &Formula, settings: &BookSettings) -> Markup {
    let main = formula.components.first();
    html! {
        header.head {
            h1 { (formula.title) }
            @if let Some(author) = &settings.author { p.byline { (author) } }
            (paragraphs(&formula.intro))
            @if let Some(photograph) = &formula.photograph {
                img src=(photograph.file) alt=(photograph.alt);
            }
            dl.facts {
                @if let Some(main) = main {
                    div { dt { "Makes" } dd { (makes(main)) } }
                    @if let Some(weight) = main.yields.scaling_weight.filter(|_| main.yields.pieces.is_some()) {
                        div { dt { "Each" } dd { (print::mass(weight)) " raw, about " (done_each(main, weight)) " done" } }
                    }
                    @if let Some(serves) = main.yields.serves { div { dt { "Serves" } dd { (print::count(serves)) } } }
                }
                (times(&hours(formula)))
            }
        }
    }
}

fn done_each(component: &formula::Component, weight: Mass) -> String {
    let pieces = component.yields.pieces.map_or(1.0, |pieces| pieces.as_pieces());
    let each = weight * component.yields.bake_loss.left() + component.yields.after_scaling / pieces;
    print::mass(Mass::grams(each.as_grams().round()))
}

fn times(hours: &Hours) -> Markup {
    html! {
        @for (label, span) in [("Hands on", hours.preparing), ("At the heat", hours.cooking), ("Start to table", hours.total)] {
            @if span.to > TimeSpan::ZERO {
                div { dt { (label) } dd { (time_element(print::rounded_time(span))) } }
            }
        }
    }
}

/// A time for people, and its upper end for programs.
fn time_element(span: Between<TimeSpan>) -> Markup {
    html! { time datetime=(span.to.iso_8601()) { (print::time(span)) } }
}

fn needs_section(formula: &Formula, units: Units, settings: &BookSettings) -> Markup {
    html! {
        section.needs aria-labelledby="needs" {
            h2 id="needs" { "What you need" }
            div.columns {
                @for (c, component) in formula.components.iter().enumerate() {
                    div {
                        @if let Some(heading) = heading(formula, component) { h3 { (heading) } }
                        ul { @for need in needs(formula, c, units, settings.eggs) { (need_item(&need)) } }
                    }
                }
            }
            (equipment(formula))
        }
    }
}

/// The same words as in the structured data, the amount set off.
fn need_item(need: &Need) -> Markup {
    html! {
        li {
            b.amount { (print::mass(need.mass)) } " " (need.title)
            @if let Some(household) = &need.household { " (" (household) ")" }
            @if let Some(note) = &need.note { ", " (note) }
        }
    }
}

fn equipment(formula: &Formula) -> Markup {
    let steps = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.steps);
    let all: BTreeSet<&str> = steps.flat_map(|step| &step.equipment).map(String::as_str).collect();
    html! {
        @if !all.is_empty() {
            p.equipment { b { "To work with: " } (all.into_iter().collect::<Vec<_>>().join(", ")) }
        }
    }
}

fn care_section(formula: &Formula) -> Markup {
    let cautions = cautions(formula);
    let contained = contained(formula);
    html! {
        section.care aria-labelledby="care" {
            h2 id="care" { "To mind" }
            @if !contained.is_empty() {
                p { b { "Contains: " } (contained.join(", ")) ". Check the label of everything you use." }
            }
            dl {
                @for caution in &cautions {
                    div { dt { (caution.title) } dd { (caution.text) } }
                }
            }
            @if let Some(storage) = &formula.storage { h3 { "Keeping" } (paragraphs(storage)) }
            @if !formula.notes.is_empty() {
                h3 { "Notes" }
                ul { @for note in &formula.notes { li { (note) } } }
            }
            p.fine { "Guidance only: your local food rules and your own judgement come first." }
        }
    }
}

/// The names of the listed allergens that go in, in the order of the list.
pub fn contained(formula: &Formula) -> Vec<&'static str> {
    let codes: BTreeSet<String> = (0..formula.components.len()).flat_map(|c| mixture(formula, c).allergens).collect();
    allergens().iter().filter(|allergen| codes.contains(&allergen.code)).map(|allergen| allergen.title.as_str()).collect()
}

fn foot(formula: &Formula, settings: &BookSettings) -> Markup {
    let used = datasets_of(formula);
    html! {
        footer {
            @if let Some(source) = &formula.source { p { (source) } }
            @if !settings.title.is_empty() { p { "From " a href="index.html" { (settings.title) } } }
            @if !used.is_empty() {
                p.fine {
                    "Water, sugars, fat and densities of the ingredients after: "
                    @for (n, dataset) in used.iter().enumerate() { @if n > 0 { " " } (dataset) }
                }
            }
        }
    }
}

/// The attributions of the datasets whose figures the page uses.
fn datasets_of(formula: &Formula) -> Vec<&'static str> {
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let mut keys = BTreeSet::new();
    for line in lines {
        match &line.content {
            Content::Ingredient(one) => keys.extend(one.singles().iter().filter_map(|(single, _)| single.source.dataset.clone())),
            Content::Formula(blend) => keys.extend(blend.ingredients.iter().filter_map(|(one, ..)| one.source.dataset.clone())),
            Content::Stage(..) => {}
        }
    }
    let used = datasets().iter().filter(|dataset| keys.contains(&dataset.key) && !dataset.attribution.is_empty());
    used.map(|dataset| dataset.attribution.as_str()).collect()
}
