//! The exchanges and targets to choose from, and what the chosen one takes.

use super::WAY;
use super::question::{Kind, Question};
use crate::workbench::page::addresses::{asking, of_formula};
use crate::workbench::page::formula::OnBench;
use ::formula::Formula;
use bench::{exchange, target};
use maud::{Markup, html};

/// Both lists, what fits the formula first.
pub fn lists(formula: &Formula, asked: Option<&Kind>) -> Markup {
    let exchanges: Vec<Kind> = exchange::ALL.iter().map(|one| Kind::Exchange(one)).collect();
    let targets: Vec<Kind> = target::ALL.iter().map(|one| Kind::Target(one)).collect();
    html! {
        nav.choices aria-label="Exchanges and targets" {
            (list("Exchange one thing for another", "exchange", &exchanges, formula, asked))
            (list("Aim at a figure", "target", &targets, formula, asked))
        }
    }
}

fn list(title: &str, key: &str, all: &[Kind], formula: &Formula, asked: Option<&Kind>) -> Markup {
    let (fitting, others): (Vec<&Kind>, Vec<&Kind>) = all.iter().partition(|one| !one.fits(formula).is_empty());
    let page = of_formula(&formula.name, WAY.address);
    let is_open = |one: &Kind| asked.is_some_and(|asked| asked.stroke() == one.stroke());
    let link = |one: &Kind| {
        html! {
            li {
                a href={ (asking(&page, &[(key, one.name())])) "#asked" } aria-current=[is_open(one).then_some("page")] { (quantity::print::capital(&one.name().replace('-', " "))) }
                " " span.fine { (one.about()) }
            }
        }
    };
    html! {
        h2 { (title) }
        ul.plain aria-label=(title) { @for one in &fitting { (link(one)) } }
        @if !others.is_empty() {
            details open[others.iter().any(|one| is_open(one))] {
                summary { (others.len()) " more that find nothing here" }
                ul.plain { @for one in &others { (link(one)) } }
            }
        }
    }
}

/// What the chosen one takes, and the kitchen it is asked in.
pub fn form(one: &OnBench, formula: &Formula, question: &Question, kind: &Kind) -> Markup {
    let key = if matches!(kind, Kind::Exchange(_)) { "exchange" } else { "target" };
    let fits = kind.fits(formula);
    html! {
        form.fields method="get" action={ (of_formula(&formula.name, WAY.address)) "#made" } {
            input type="hidden" name=(key) value=(kind.name());
            input type="hidden" name="ask" value="yes";
            @for key in kind.takes() { (field(one, formula, question, kind, key, &fits)) }
            (kitchen(one, question))
            button { "Show what changes" }
        }
        p.fine { "Takes: " (kind.asks()) "." }
        datalist #ingredients { @for one in one.opened.book.pantry.all() { option value=(one.name) { (one.title) } } }
    }
}

/// A field in the words of the page.
const WORDS: &[(&str, &str, &str)] = &[
    ("into", "Into", ""),
    ("share", "Share of it, %", ""),
    ("hydration", "Hydration, %", ""),
    ("time", "Time it may take", "12 h"),
    ("altitude", "Altitude, m", "1800"),
    ("from", "The old tin", "round 24 x 6 cm"),
    ("count", "How many", ""),
    ("to", "What is wanted", ""),
    ("with", "What may come in", ""),
    ("ripe-after", "Ripe after", "10 h"),
    ("risen-after", "Risen after", "90 min"),
    ("ripe-at", "Ripe at", ""),
    ("risen-at", "Risen at", ""),
    ("begun", "Mixed at", ""),
    ("within", "Each line moves by at most, %", "20"),
];

fn field(one: &OnBench, formula: &Formula, question: &Question, kind: &Kind, key: &'static str, fits: &[String]) -> Markup {
    let value = question.get(key).unwrap_or_default();
    let offers = if key == "into" { kind.offers(formula, &one.opened.book.pantry) } else { Vec::new() };
    if !offers.is_empty() {
        return html! {
            label { "Into" select name=(key) { @for (name, title) in &offers { option value=(name) selected[*name == value] { (title) } } } }
        };
    }
    match key {
        "of" => choice("What of the formula", key, fits, &value, fits.len() != 1 || takes_stage(kind)),
        "stage" => {
            let stages: Vec<String> = formula.stages().map(|(_, stage)| stage.name.clone()).collect();
            let fitting: Vec<String> = stages.iter().filter(|stage| fits.contains(stage)).cloned().collect();
            choice("In the stage", key, if fitting.is_empty() { &stages } else { &fitting }, &value, true)
        }
        "aim" => html! {
            @for name in fits {
                @let key = format!("aim-{name}");
                label { (quantity::print::capital(&name.replace('-', " "))) (if name == "price" { " of a piece" } else { ", % of flour" })
                    input type="text" name=(key) value=(question.get(&key).unwrap_or_default()) size="8" placeholder=(if name == "price" { "0.60 EUR" } else { "" }); }
            }
        },
        "keep" => {
            let lines: Vec<String> = formula.lines().map(|(_, line)| line.name.clone()).collect();
            choice("A line that stays as it is", key, &lines, &value, true)
        }
        _ => {
            let (_, label, example) = WORDS.iter().find(|(own, ..)| *own == key).copied().unwrap_or((key, key, ""));
            let clock = matches!(key, "ripe-at" | "risen-at" | "begun");
            let named = matches!(key, "into" | "with");
            html! {
                label { (label)
                    @if clock { input type="time" name=(key) value=(value); }
                    @else { input type="text" name=(key) value=(value) size="14" placeholder=(example) list=[named.then_some("ingredients")] autocomplete="off"; }
                }
            }
        }
    }
}

/// Whether a stage may be said besides.
fn takes_stage(kind: &Kind) -> bool {
    kind.takes().contains(&"stage")
}

fn choice(label: &str, key: &str, names: &[String], value: &str, may_be_open: bool) -> Markup {
    let mut shown: Vec<&String> = Vec::new();
    for name in names {
        if !shown.contains(&name) {
            shown.push(name);
        }
    }
    html! {
        label { (label)
            select name=(key) {
                @if may_be_open { option value="" { "not said" } }
                @for name in shown { option value=(name) selected[name == value] { (name) } }
            }
        }
    }
}

fn kitchen(one: &OnBench, question: &Question) -> Markup {
    let chosen = question.get("kitchen").unwrap_or_else(|| one.opened.book.kitchen().name);
    html! {
        @if one.opened.book.kitchens.len() > 1 {
            label { "In the kitchen" select name="kitchen" {
                @for (name, kitchen) in &one.opened.book.kitchens { option value=(name) selected[*name == chosen] { (kitchen.title) } }
            } }
        }
        label { "Room, °C" input type="text" inputmode="decimal" size="5" name="room" value=(question.get("room").unwrap_or_default()); }
    }
}
