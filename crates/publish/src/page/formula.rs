//! A formula's page: head, what is needed, the stages, the formula table, what to mind.

use super::figure::{plain, unbroken, weight};
use super::stages::component_section;
use super::table::formula_section;
use super::{Leaf, Scripted, Shell, first_sentence, paragraphs};
use crate::needs::{Need, heading, needs};
use crate::reader::{self, Way};
use crate::site::page_name;
use crate::structured;
use crate::tongue::Tongue;
use crate::words::{Units, hours_told, makes};
use bench::cautions::cautions;
use formula::Formula;
use formula::arithmetic::mixture;
use formula::ingredient::{allergens, datasets};
use formula::resolve::formula::Content;
use maud::{Markup, PreEscaped, html};
use plan::{Hours, hours};
use quantity::{Between, Count, Fraction, Mass, TimeSpan, Volume};
use std::collections::BTreeSet;

/// The page of a formula.
#[must_use]
pub fn formula_page(formula: &Formula, leaf: &Leaf) -> String {
    // A formula may be written in a language of its own.
    let settings = &*leaf.settings.told_for(&formula.head);
    let leaf = &Leaf { settings, ..*leaf };
    let body = html! {
        (leaf.top())
        main {
            article {
                (head(formula, leaf))
                @if let Some(reader) = leaf.reader { (reader::controls(formula, settings, reader)) }
                (recipe(&Parts::of(formula, leaf), leaf))
                (leaf.day())
                (leaf.serving(formula))
                (leaf.evidence())
                (leaf.used_in())
                (leaf.on_paper())
                (foot(formula, leaf))
            }
        }
    };
    let shell = Shell {
        title: &formula.head.title,
        description: first_sentence(&formula.head.intro),
        settings,
        file: &page_name(&formula.name),
        alternates: leaf.alternates(formula),
        kind: "article",
        image: leaf.picture.and_then(|picture| Some((picture.address(settings)?, picture.alt.as_str()))),
        structured: Some(structured::recipe(formula, leaf)),
        scripted: leaf.reader.map(|reader| scripted(formula, leaf, reader)),
        style: "",
    };
    shell.wrap(body)
}

/// A part of the page that a way of raising it may change, by its name.
type Part = (String, Markup);

/// All of them: small ones, since each that is other in another way is carried once more.
struct Parts {
    /// What each component needs.
    needs: Vec<Part>,
    /// What one works with.
    equipment: Part,
    /// What is done, the table, and what to mind.
    rest: Vec<Part>,
}

impl Parts {
    fn of(formula: &Formula, leaf: &Leaf) -> Self {
        let units = Units::for_readers(leaf.settings);
        let components = || formula.components.iter().enumerate();
        let needs = components().map(|(c, one)| (format!("needs-{}", one.name), need_list(formula, c, units, leaf)));
        let done = components().map(|(c, one)| (format!("component-{}", one.name), component_section(formula, c, units)));
        let last =
            [("table".to_owned(), formula_section(formula, units.tongue)), ("care".to_owned(), care_section(formula, leaf))];
        Self {
            needs: needs.collect(),
            equipment: ("equipment".to_owned(), equipment(formula, units.tongue)),
            rest: done.chain(last).collect(),
        }
    }

    fn all(&self) -> impl Iterator<Item = &Part> {
        self.needs.iter().chain([&self.equipment]).chain(&self.rest)
    }
}

fn placed((name, part): &Part) -> Markup {
    html! { div data-part=(name) { (part) } }
}

/// The recipe: what is needed, what is done, the table, and what to mind.
fn recipe(parts: &Parts, leaf: &Leaf) -> Markup {
    let units = Units::for_readers(leaf.settings);
    html! {
        section.needs aria-labelledby="needs" {
            h2 id="needs" { (units.tongue.what_you_need()) }
            div.columns { @for part in &parts.needs { (placed(part)) } }
            p.fine data-spoons { (spoons_in_words(units)) }
            (placed(&parts.equipment))
        }
        @for part in &parts.rest { (placed(part)) }
    }
}

/// The scripts at the page's end, with the parts that are other in another way of raising it.
fn scripted(formula: &Formula, leaf: &Leaf, reader: &reader::Reader) -> Scripted {
    let own = Parts::of(formula, leaf);
    let other = |way: &Way| -> Vec<Part> {
        let differs = |(own, new): (&Part, &Part)| (own.1.0 != new.1.0).then(|| new.clone());
        own.all().zip(Parts::of(&way.formula, leaf).all()).filter_map(differs).collect()
    };
    let end = html! {
        @for way in &reader.ways {
            @for (name, part) in other(way) { template data-way=(way.key) data-of=(name) { (part) } }
        }
        script type="application/json" id="figures" { (PreEscaped(&reader.data)) }
        script type="module" { (PreEscaped(reader::SCRIPT.as_str())) }
    };
    Scripted { policy: reader::POLICY.as_str(), style: reader::STYLE.as_str(), end }
}

fn head(formula: &Formula, leaf: &Leaf) -> Markup {
    let main = formula.components.first();
    let (tongue, print) = (leaf.tongue(), leaf.tongue().print);
    html! {
        header.head {
            h1 { (formula.head.title) }
            @if let Some(author) = &leaf.settings.author { p.byline { (author) } }
            (paragraphs(&formula.head.intro))
            (leaf.photograph())
            dl.facts {
                @if let Some(main) = main {
                    div { dt { (tongue.makes()) } dd { span data-makes { (makes(main, tongue)) } } }
                    @if let Some(weight) = main.yields.scaling_weight.filter(|_| main.yields.pieces.is_some()) {
                        div { dt { (tongue.each()) } dd {
                            span data-each=(plain(weight.as_grams())) { (print.mass(weight)) } " " (tongue.raw())
                            @if main.yields.bake_loss > Fraction::ZERO || main.yields.after_scaling > Mass::ZERO {
                                ", " (tongue.about()) " " span data-done { (done_each(main, weight, tongue)) } " " (tongue.done())
                            }
                        } }
                    }
                    @if let Some(serves) = main.yields.serves { div { dt { (tongue.serves()) } dd { span data-n=(plain(Count::as_pieces(serves))) { (print.count(serves)) } } } }
                }
                (times(&hours(formula), tongue))
            }
            (leaf.tags(formula))
            (leaf.drawing(formula))
        }
    }
}

fn done_each(component: &formula::Component, weight: Mass, tongue: Tongue) -> String {
    let pieces = component.yields.pieces.map_or(1.0, |pieces| pieces.as_pieces());
    let each = weight * component.yields.bake_loss.left() + component.yields.after_scaling / pieces;
    tongue.print.mass(Mass::grams(each.as_grams().round()))
}

fn times(hours: &Hours, tongue: Tongue) -> Markup {
    html! {
        @for (label, name, span) in hours_told(hours, tongue) { div { dt { (label) } dd { (time_element(name, span, tongue)) } } }
    }
}

/// A time for people, and its upper end for programs.
fn time_element(name: &str, span: Between<TimeSpan>, tongue: Tongue) -> Markup {
    html! { time data-hours=(name) datetime=(span.to.iso_8601()) { (unbroken(&tongue.print.time(span))) } }
}

/// What a component needs.
fn need_list(formula: &Formula, c: usize, units: Units, leaf: &Leaf) -> Markup {
    html! {
        @if let Some(heading) = heading(formula, &formula.components[c]) { h3 { (heading) } }
        ul {
            @for (n, need) in needs(formula, c, units, leaf.settings.eggs).iter().enumerate() {
                (need_item(need, &format!("n.{c}.{n}"), leaf))
            }
        }
    }
}

/// Whose cups and spoons the list means.
fn spoons_in_words(units: Units) -> String {
    let (system, tongue) = (units.household(), units.tongue);
    let size = |volume: Volume| tongue.print.number(volume.as_millilitres(), 1);
    let sizes = [system.cup(), system.tablespoon(), system.teaspoon()].map(size);
    tongue.spoons_and_cups(tongue.weights_first(), tongue.spoons(system), sizes)
}

/// The same words as in the structured data, the amount set off.
fn need_item(need: &Need, key: &str, leaf: &Leaf) -> Markup {
    let beside = need.household.as_ref().map(|household| format!(" ({household})"));
    let pieces = need.pieces.map(|pieces| plain(pieces.as_pieces()));
    html! {
        li data-line=(key) {
            b.amount { (weight(need.mass, &leaf.tongue().print.mass(need.mass), key, need.mass)) } " "
            (leaf.ingredient(need))
            span data-beside=(plain(need.mass.as_grams())) data-k=(key) data-count=[pieces] { (beside.unwrap_or_default()) }
            @if let Some(note) = &need.note { ", " (note) }
        }
    }
}

fn equipment(formula: &Formula, tongue: Tongue) -> Markup {
    let all = structured::tools(formula);
    html! {
        @if !all.is_empty() {
            p.equipment { b { (tongue.to_work_with()) " " } (all.into_iter().collect::<Vec<_>>().join(", ")) }
        }
    }
}

fn care_section(formula: &Formula, leaf: &Leaf) -> Markup {
    let cautions = cautions(formula);
    let tongue = leaf.tongue();
    let contained = contained(formula, tongue);
    html! {
        section.care aria-labelledby="care" {
            h2 id="care" { (tongue.to_mind()) }
            p {
                @if !contained.is_empty() { b { (tongue.contains()) " " } (contained.join(", ")) ". " }
                (tongue.check_labels())
            }
            dl {
                @for caution in &cautions {
                    div { dt { (tongue.caution(caution).0) } dd { (tongue.caution(caution).1) } }
                }
            }
            @if let Some(storage) = &formula.head.storage { h3 { (tongue.keeping()) } (paragraphs(storage)) }
            @if !formula.head.notes.is_empty() {
                h3 { (tongue.notes()) }
                ul { @for note in &formula.head.notes { li { (note) } } }
            }
            p.fine { (tongue.guidance_only()) }
        }
    }
}

/// The names of the listed allergens that go in, in the order of the list.
pub fn contained(formula: &Formula, tongue: Tongue) -> Vec<&'static str> {
    let codes: BTreeSet<String> = (0..formula.components.len()).flat_map(|c| mixture(formula, c).allergens).collect();
    allergens().iter().filter(|allergen| codes.contains(&allergen.code)).map(|allergen| tongue.allergen(allergen)).collect()
}

fn foot(formula: &Formula, leaf: &Leaf) -> Markup {
    let used = datasets_of(formula);
    html! {
        footer {
            @if let Some(source) = &formula.head.source { p { (source) } }
            @if !leaf.settings.title.is_empty() { p { (leaf.tongue().from()) " " a href="index.html" lang=[leaf.of_book()] { (leaf.settings.title) } } }
            @if !used.is_empty() {
                p.fine {
                    (leaf.tongue().figures_after()) " " (attributed(&used, leaf.tongue()))
                }
            }
        }
    }
}

/// Attributions in the words that their datasets ask for, which are English.
fn attributed(used: &[&str], tongue: Tongue) -> Markup {
    let words = used.join(" ");
    if tongue.is_english() {
        html! { (words) }
    } else {
        html! { span lang="en" { (words) } }
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
