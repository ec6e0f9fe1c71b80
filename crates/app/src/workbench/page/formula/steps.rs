//! The steps of a stage, their times, temperatures and conditions edited in place.

use super::remarks::Remarks;
use bench::exchange::Part;
use bench::gesture::written;
use formula::read::Condition;
use formula::resolve::formula::StageAt;
use formula::{Formula, Stage, Step};
use maud::{Markup, html};
use publish::words::until;
use quantity::print;

/// A stage's steps.
pub fn markup(formula: &Formula, at: StageAt, stage: &Stage, remarks: &Remarks) -> Markup {
    html! {
        @if !stage.steps.is_empty() {
            ol.steps {
                @for (n, step) in stage.steps.iter().enumerate() { (step_markup(formula, at, n, step, remarks)) }
            }
        }
    }
}

fn step_markup(formula: &Formula, at: StageAt, n: usize, step: &Step, remarks: &Remarks) -> Markup {
    let id = format!("step-{}-{}-{n}", at.0, at.1);
    let field = |key: &'static str, label: &str, value: Option<String>, size: u8| {
        let name = format!("{id}-{key}");
        let (word, stage) = (step.action.word(), &formula.stage(at).title);
        html! {
            @if let Some(value) = value {
                label for=(name) { (label) " "
                    input id=(name) type="text" size=(size) value=(value) aria-label={ (print::capital(word)) " of " (stage) ": " (label) }
                        data-gesture="word" data-at={ (at.0) "." (at.1) } data-step=(n) data-key=(key) data-unit="";
                }
            }
        }
    };
    html! {
        li id=(id) {
            b { (print::capital(step.action.word())) } " "
            span.fields {
                (field("time", "for", step.time.map(print::time), 10))
                (field("temperature", "at", step.temperature.map(print::celsius), 10))
                (field("until", "until", step.until.as_ref().map(condition), 24))
            }
            p.sentence { (publish::method::sentence(formula, at, step, publish::Units::default())) }
            @if let Some(sentence) = written(remarks.text(), Part::Step(at, n), "text") { (own_words(&formula.stage(at).title, (at, n), step, &sentence)) }
            (remarks.of_table(&step.place))
        }
    }
}

/// The sentence as it is written, to be written otherwise.
fn own_words(stage: &str, (at, n): (StageAt, usize), step: &Step, sentence: &str) -> Markup {
    let id = format!("step-{}-{}-{n}-text", at.0, at.1);
    html! {
        details id={ (id) "-own" } {
            summary { "Change the sentence" span.apart { ": " (step.action.word()) " of " (stage) } }
            textarea id=(id) rows=(sentence.len() / 60 + 2) aria-label={ (print::capital(step.action.word())) " of " (stage) ": the sentence" }
                data-gesture="word" data-at={ (at.0) "." (at.1) } data-step=(n) data-key="text" { "\n" (sentence) }
            p.fine { "{names} stand for ingredients of the stage, {time} and {temperature} for the step’s own. Enter writes it." }
        }
    }
}

/// A condition as it is typed.
fn condition(condition: &Condition) -> String {
    let words = until(condition, publish::Units::default());
    let typed = match condition {
        Condition::Core(range) => format!("{} core", print::celsius(*range)),
        Condition::At(range) => print::celsius(*range),
        Condition::Brix(value) => format!("{} Brix", print::number(*value, 1)),
        Condition::Pours(value) => format!("pours at {} Pa·s", print::number(*value, 2)),
        Condition::Ripe | Condition::RisenBy(_) | Condition::Words(_) => words,
    };
    typed.strip_prefix("until ").map_or(typed.clone(), str::to_owned)
}
