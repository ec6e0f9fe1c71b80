//! The sheet: each stage's lines with weight and percentage, whichever is typed the other follows.

use super::OnBench;
use super::remarks::{Remarks, remark};
use super::steps;
use crate::workbench::answer::PARTED;
use crate::workbench::page::addresses::{asking, of_formula};
use formula::read::{Amount, BookSettings, Kitchen};
use formula::resolve::formula::StageAt;
use formula::{Content, Formula, Line, Stage};
use maud::{Markup, html};
use publish::sheet::{ComponentSheet, LineSheet, StageSheet, components};
use publish::words::{bare_grams, bare_percent};
use quantity::{Kind, Mass, print};

/// The whole sheet of a formula.
pub fn markup(formula: &Formula, kitchen: &Kitchen, one: &OnBench, remarks: &Remarks) -> Markup {
    let sheets = components(formula, kitchen, &one.opened.book.settings);
    html! {
        div #sheet {
            @for (c, sheet) in sheets.iter().enumerate() { (component(formula, c, sheet, remarks)) }
            (names(one))
        }
    }
}

/// The figures of the sheet alone, part by part, without remarks and methods: what follows a key at once.
pub fn figures(formula: &Formula, kitchen: &Kitchen, settings: &BookSettings) -> Markup {
    let sheets = components(formula, kitchen, settings);
    html! {
        @for (c, sheet) in sheets.iter().enumerate() {
            @for (s, stage) in formula.components[c].stages.iter().enumerate() {
                @for (line, of_sheet) in stage.lines.iter().zip(&sheet.stages[s].lines) { (row((c, s), stage, line, of_sheet)) (PARTED) }
                (together((c, s), stage)) (PARTED)
            }
            (beside(c, sheet)) (PARTED)
        }
    }
}

/// What of the sheet follows while a figure is typed, part by part: what has not changed need not be exchanged.
pub fn following(formula: &Formula, kitchen: &Kitchen, one: &OnBench, remarks: &Remarks) -> Markup {
    let sheets = components(formula, kitchen, &one.opened.book.settings);
    html! {
        @for (c, sheet) in sheets.iter().enumerate() {
            (yields(formula, c, remarks)) (PARTED)
            @for (s, stage) in formula.components[c].stages.iter().enumerate() {
                (stage_markup(formula, (c, s), stage, &sheet.stages[s], remarks)) (PARTED)
            }
            (beside(c, sheet)) (PARTED)
        }
    }
}

fn component(formula: &Formula, c: usize, sheet: &ComponentSheet, remarks: &Remarks) -> Markup {
    let component = &formula.components[c];
    html! {
        section.component id={ "component-" (c) } {
            h2 { (component.title) }
            (yields(formula, c, remarks))
            @for (s, stage) in component.stages.iter().enumerate() {
                (stage_markup(formula, (c, s), stage, &sheet.stages[s], remarks))
            }
            @if sheet.overall.rows.len() > 1 {
                details open {
                    summary { "All stages side by side" }
                    (beside(c, sheet))
                }
            }
        }
    }
}

fn beside(c: usize, sheet: &ComponentSheet) -> Markup {
    html! { div id={ "beside-" (c) } { (publish::page::beside(sheet)) } }
}

fn yields(formula: &Formula, c: usize, remarks: &Remarks) -> Markup {
    let (yields, title) = (&formula.components[c].yields, &formula.components[c].title);
    let field = |key: &str, label: &str, value: String, unit: &str| {
        let id = format!("yield-{c}-{key}");
        html! {
            label for=(id) { (label) " "
                input id=(id) type="text" inputmode="decimal" size="5" value=(value) aria-label={ (label) ": " (title) }
                    data-gesture="word" data-at={ "yield-" (c) } data-key=(key) data-unit=(unit);
            }
        }
    };
    html! {
        @if let Some(place) = &yields.place {
            div.yields id={ "yields-" (c) } {
                @if let Some(pieces) = yields.pieces { (field("pieces", "Pieces", print::count(pieces), "")) }
                @if let Some(weight) = yields.scaling_weight { (field("scaling-weight", "Scaled at, g", bare_grams(weight), "g")) }
                @if let Some((tin, _)) = &yields.tin {
                    (field("tin", "In a tin of, l", print::number(tin.as_millilitres() / 1000.0, 3), "l"))
                    a.fine href=(asking(&of_formula(&formula.name, "/exchange"), &[("exchange", "tin")])) { "another tin, amounts along" }
                }
                (field("bake-loss", "Lost in the heat, %", bare_percent(yields.bake_loss), "%"))
                span.fine { "comes to " (print::large_mass(yields.done())) }
                (remarks.of_table(place))
            }
        }
    }
}

fn stage_markup(formula: &Formula, at: StageAt, stage: &Stage, of_sheet: &StageSheet, remarks: &Remarks) -> Markup {
    let (c, s) = at;
    let has_flour = stage.flour > Mass::ZERO;
    html! {
        section.stage id={ "stage-" (c) "-" (s) } {
            h3 { (stage.title) @if let Some(kind) = kind_beside(stage) { " " span.fine { (kind) } } }
            (remarks.of_table(&stage.place))
            @if !stage.lines.is_empty() {
                div.scroll tabindex="0" role="region" aria-label={ "Ingredients: " (stage.title) } {
                    table.lines {
                        thead { tr {
                            th scope="col" { "Ingredient" }
                            th.number scope="col" { "g" }
                            @if has_flour { th.number scope="col" { "% of flour" } }
                            th.number scope="col" { "scale shows" }
                            th scope="col" { span.apart { "What can be done" } }
                        } }
                        tbody {
                            @for (l, line) in stage.lines.iter().enumerate() {
                                (line_markup(at, stage, line, &of_sheet.lines[l], remarks))
                            }
                        }
                        tfoot { (together(at, stage)) }
                    }
                }
                (adding(at, stage))
            }
            (steps::markup(formula, at, stage, remarks))
        }
    }
}

/// What the lines of a stage come to.
fn together((c, s): StageAt, stage: &Stage) -> Markup {
    html! {
        tr id={ "together-" (c) "-" (s) } {
            th scope="row" { "Together" }
            td.number {
                input id={ "total-" (c) "-" (s) } type="text" inputmode="decimal" size="7" value=(bare_grams(stage.mixed()))
                    aria-label={ (stage.title) " together, gram" } data-gesture="total" data-at={ (c) "." (s) } data-unit="g";
                span.unit aria-hidden="true" { "g" }
            }
            @if stage.flour > Mass::ZERO { td.number { (bare_percent(quantity::Fraction::ratio(stage.mixed() / stage.flour))) span.unit aria-hidden="true" { "%" } } }
            td colspan="2" { span.fine { "type a total: the rest moves, ticked lines stay" } }
        }
    }
}

/// What kind of stage it is, where its title does not say so.
fn kind_beside(stage: &Stage) -> Option<String> {
    let kind = stage.kind.word().replace('-', " ");
    (!stage.title.to_lowercase().contains(&kind)).then_some(kind)
}

fn line_markup(at: StageAt, stage: &Stage, line: &Line, of_sheet: &LineSheet, remarks: &Remarks) -> Markup {
    let key = key(at, line);
    let columns = if stage.flour > Mass::ZERO { "5" } else { "4" };
    html! {
        (row(at, stage, line, of_sheet))
        @if !remarks.of_line(&line.place).is_empty() {
            tr id={ "remark-" (key) } { td colspan=(columns) { @for one in remarks.of_line(&line.place) { (remark(one, None)) } } }
        }
        @if let Some(words) = publish::sheet::words::remedy_in_words(of_sheet) {
            tr id={ "remedy-" (key) } { td colspan=(columns) { p.fine { (words) } } }
        }
    }
}

/// A name for a line on the page.
fn key(at: StageAt, line: &Line) -> String {
    format!("{}-{}-{}", at.0, at.1, line.name)
}

/// A line with its figures.
fn row(at: StageAt, stage: &Stage, line: &Line, of_sheet: &LineSheet) -> Markup {
    let key = key(at, line);
    let place = format!("{}.{}", at.0, at.1);
    let has_flour = stage.flour > Mass::ZERO;
    let is_own_size = !(matches!(line.written, Amount::Part(_)) && matches!(line.content, Content::Stage(..)));
    html! {
        tr id={ "line-" (key) } {
            th scope="row" {
                @if let Content::Formula(blend) = &line.content { a href={ "/formula/" (blend.name) } { (line.title) } } @else { (line.title) }
                @if let Some(written) = as_written(line) { " " span.fine { (written) } }
                @if let Some(note) = &line.note { " " span.fine { (note) } }
            }
            td.number {
                @if is_own_size {
                    input id={ "g-" (key) } type="text" inputmode="decimal" size="7" value=(typed_grams(line))
                        aria-label={ (line.title) " in " (stage.title) ", gram" } data-gesture="amount" data-at=(place) data-line=(line.name) data-unit="g";
                    span.unit aria-hidden="true" { "g" }
                } @else { (bare_grams(line.mass.value)) span.unit aria-hidden="true" { "g" } }
            }
            @if has_flour {
                td.number {
                    @if is_own_size {
                        input id={ "p-" (key) } type="text" inputmode="decimal" size="6" value=(of_sheet.percent.map(bare_percent).unwrap_or_default())
                            aria-label={ (line.title) " in " (stage.title) ", percent of flour" } data-gesture="amount" data-at=(place) data-line=(line.name) data-unit="%";
                        span.unit aria-hidden="true" { "%" }
                    } @else { (of_sheet.percent.map(bare_percent).unwrap_or_default()) span.unit aria-hidden="true" { "%" } }
                }
            }
            td.number.shows { (of_sheet.weighable.as_ref().map(|one| print::mass(one.shown)).unwrap_or_default()) }
            td.doing { (doing(&place, &key, stage, line, is_own_size)) }
        }
    }
}

/// A line's weight as it stands in its field: what was typed in gram stays to the digit.
fn typed_grams(line: &Line) -> String {
    let is_weight = matches!(line.written, Amount::Measure(measure) if measure.unit.kind() == Kind::Mass);
    let grams = (line.mass.value.as_grams() * 1000.0).round() / 1000.0;
    if is_weight && grams != 0.0 { grams.to_string() } else { bare_grams(line.mass.value) }
}

/// How an amount is written where that is neither gram nor percent.
fn as_written(line: &Line) -> Option<String> {
    match line.written {
        Amount::Measure(measure) if matches!(measure.unit.kind(), Kind::Mass | Kind::Share) => None,
        Amount::Measure(measure) => Some(measure.to_string()),
        Amount::Eggs(..) => {
            line.pieces.map(|pieces| format!("{} {}", print::count(pieces), line.counted_title(pieces).to_lowercase()))
        }
        Amount::Part(_) => None,
    }
}

fn doing(place: &str, key: &str, stage: &Stage, line: &Line, is_own_size: bool) -> Markup {
    let is_share = matches!(line.written, Amount::Measure(measure) if measure.unit.kind() == Kind::Share);
    let first = stage.lines.first().is_some_and(|one| one.name == line.name);
    let last = stage.lines.last().is_some_and(|one| one.name == line.name);
    let title = &line.title;
    let holds = if is_share { "% holds" } else { "g holds" };
    html! {
        @if is_own_size && !line.is_flour && stage.flour > Mass::ZERO {
            button.held[is_share] type="button" id={ "hold-" (key) }
                data-gesture=(if is_share { "hold-weight" } else { "hold-share" }) data-at=(place) data-line=(line.name)
                aria-label={ (holds) ": " (title) ", " (if is_share { "press to hold its weight" } else { "press to follow the flour" }) } title=(if is_share { "Follows the flour; click to hold its weight" } else { "Holds its weight; click to follow the flour" }) { (holds) }
        }
        button type="button" id={ "up-" (key) } disabled[first] data-gesture="up" data-at=(place) data-line=(line.name) aria-label={ (title) ": up" } title="Up" { "↑" }
        button type="button" id={ "down-" (key) } disabled[last] data-gesture="down" data-at=(place) data-line=(line.name) aria-label={ (title) ": down" } title="Down" { "↓" }
        button type="button" id={ "out-" (key) } data-gesture="take-out" data-at=(place) data-line=(line.name) aria-label={ (title) ": take out" } title="Take out" { "×" }
        @if is_own_size {
            label.stays { input type="checkbox" id={ "stays-" (key) } data-stays=(line.name) aria-label={ (title) ": stays when a total is typed" }; " stays" }
        }
    }
}

fn adding(at: StageAt, stage: &Stage) -> Markup {
    let (c, s) = at;
    html! {
        form.adding data-adding data-at={ (c) "." (s) } {
            label for={ "add-" (c) "-" (s) } { "Add " }
            input id={ "add-" (c) "-" (s) } type="text" name="line" list="ingredients" autocomplete="off" placeholder="an ingredient"
                aria-label={ "Add an ingredient to " (stage.title) };
            input id={ "much-" (c) "-" (s) } type="text" name="amount" size="8" placeholder="50 g" aria-label={ "How much of it, into " (stage.title) };
            button aria-label={ "Add to " (stage.title) } { "Add" }
        }
    }
}

/// Every ingredient by name, for typing.
fn names(one: &OnBench) -> Markup {
    html! {
        datalist #ingredients {
            @for one in one.opened.book.pantry.all() { option value=(one.name) { (one.title) } }
        }
    }
}
