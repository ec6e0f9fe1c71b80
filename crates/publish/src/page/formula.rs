//! A formula's page: head, what is needed, the stages, the formula table, what to mind.

use super::stages::component_section;
use super::table::formula_section;
use super::{Leaf, Shell, first_sentence, paragraphs};
use crate::needs::{Need, heading, needs};
use crate::site::page_name;
use crate::structured;
use crate::words::{Units, makes};
use bench::cautions::cautions;
use formula::Formula;
use formula::arithmetic::mixture;
use formula::ingredient::{allergens, datasets};
use formula::resolve::formula::Content;
use maud::{Markup, html};
use plan::{Hours, hours};
use quantity::{Between, Fraction, Mass, SpoonSystem, TimeSpan, Volume, print};
use std::collections::BTreeSet;

/// The page of a formula.
#[must_use]
pub fn formula_page(formula: &Formula, leaf: &Leaf) -> String {
    let settings = leaf.settings;
    let units = Units::of(settings);
    let body = html! {
        (leaf.top())
        main {
            article {
                (head(formula, leaf))
                (needs_section(formula, units, leaf))
                @for c in 0..formula.components.len() { (component_section(formula, c, units)) }
                (formula_section(formula))
                (leaf.serving(formula))
                (care_section(formula))
                (leaf.used_in())
                (foot(formula, leaf))
            }
        }
    };
    let shell = Shell {
        title: &formula.head.title,
        description: first_sentence(&formula.head.intro),
        settings,
        file: &page_name(&formula.name),
        kind: "article",
        image: leaf.picture.and_then(|picture| Some((picture.address(settings)?, picture.alt.as_str()))),
        structured: Some(structured::recipe(formula, leaf)),
    };
    shell.wrap(body)
}

fn head(formula: &Formula, leaf: &Leaf) -> Markup {
    let main = formula.components.first();
    html! {
        header.head {
            h1 { (formula.head.title) }
            @if let Some(author) = &leaf.settings.author { p.byline { (author) } }
            (paragraphs(&formula.head.intro))
            (leaf.photograph())
            dl.facts {
                @if let Some(main) = main {
                    div { dt { "Makes" } dd { (makes(main)) } }
                    @if let Some(weight) = main.yields.scaling_weight.filter(|_| main.yields.pieces.is_some()) {
                        div { dt { "Each" } dd {
                            (print::mass(weight)) " raw"
                            @if main.yields.bake_loss > Fraction::ZERO || main.yields.after_scaling > Mass::ZERO { ", about " (done_each(main, weight)) " done" }
                        } }
                    }
                    @if let Some(serves) = main.yields.serves { div { dt { "Serves" } dd { (print::count(serves)) } } }
                }
                (times(&hours(formula)))
            }
            (leaf.tags(formula))
            (leaf.drawing(formula))
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

fn needs_section(formula: &Formula, units: Units, leaf: &Leaf) -> Markup {
    html! {
        section.needs aria-labelledby="needs" {
            h2 id="needs" { "What you need" }
            div.columns {
                @for (c, component) in formula.components.iter().enumerate() {
                    div {
                        @if let Some(heading) = heading(formula, component) { h3 { (heading) } }
                        ul { @for need in needs(formula, c, units, leaf.settings.eggs) { (need_item(&need, leaf)) } }
                    }
                }
            }
            p.fine { (spoons_in_words(units)) }
            (equipment(formula))
        }
    }
}

/// Whose cups and spoons the list means.
fn spoons_in_words(units: Units) -> String {
    let system = units.household();
    let size = |volume: Volume| print::number(volume.as_millilitres(), 1);
    let name = match system {
        SpoonSystem::Metric => "metric",
        SpoonSystem::Australian => "Australian",
        SpoonSystem::UsCustomary => "US customary",
        SpoonSystem::UsLabel => "US label",
    };
    let (cup, tablespoon, teaspoon) = (size(system.cup()), size(system.tablespoon()), size(system.teaspoon()));
    format!(
        "Weights come first. Cups and spoons are {name}, spooned and levelled: cup {cup}\u{a0}ml, tablespoon {tablespoon}\u{a0}ml, teaspoon {teaspoon}\u{a0}ml."
    )
}

/// The same words as in the structured data, the amount set off.
fn need_item(need: &Need, leaf: &Leaf) -> Markup {
    html! {
        li {
            b.amount { (print::mass(need.mass)) } " "
            (leaf.ingredient(need))
            @if let Some(household) = &need.household { " (" (household) ")" }
            @if let Some(note) = &need.note { ", " (note) }
        }
    }
}

fn equipment(formula: &Formula) -> Markup {
    let all = structured::tools(formula);
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
            p {
                @if !contained.is_empty() { b { "Contains: " } (contained.join(", ")) ". " }
                "Check the label of everything you use."
            }
            dl {
                @for caution in &cautions {
                    div { dt { (caution.title) } dd { (caution.text) } }
                }
            }
            @if let Some(storage) = &formula.head.storage { h3 { "Keeping" } (paragraphs(storage)) }
            @if !formula.head.notes.is_empty() {
                h3 { "Notes" }
                ul { @for note in &formula.head.notes { li { (note) } } }
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

fn foot(formula: &Formula, leaf: &Leaf) -> Markup {
    let used = datasets_of(formula);
    html! {
        footer {
            @if let Some(source) = &formula.head.source { p { (source) } }
            @if !leaf.settings.title.is_empty() { p { "From " a href="index.html" { (leaf.settings.title) } } }
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
