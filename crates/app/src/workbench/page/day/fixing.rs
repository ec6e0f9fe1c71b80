//! Steps that are fixed: at a time, not before it, not after it; and let go again.

use super::asked::{Asked, FIXED};
use super::{Pairs, asking};
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::door::Visitor;
use axum::extract::Query;
use jiff::ZonedDateTime;
use maud::{Markup, html};
use plan::day::{Begins, Timeline};
use publish::day::{Task, fixed};

/// When a step is to begin, to be said; the chart's script fills it in where a bar is dragged.
pub fn form(asked: &Asked, task: &Task, step: &str) -> Markup {
    html! {
        form.fields id={ "fix-" (task.job) } method="get" action="/day/fixed" data-anew {
            @for (key, value) in asked.without("ways") { input type="hidden" name=(key) value=(value); }
            input type="hidden" name="step" value=(step);
            label { "It begins" select name="begins" { @for (key, words) in FIXED { option value=(key) { (words) } } } }
            label { "When" input type="datetime-local" name="when" step="300" value=(task.begin.strftime("%Y-%m-%dT%H:%M").to_string()); }
            button { "Fix it" }
        }
    }
}

/// What is fixed, each to be let go. Where there is no day, it is told as it was written.
pub fn so_far(asked: &Asked, day: Option<&Timeline>) -> Markup {
    let said = asked.fixes();
    let words = |at: usize| day.and_then(|day| day.fixed.get(at).map(|one| fixed(day, one)));
    html! {
        @if !said.is_empty() {
            section aria-labelledby="fixed" {
                h3 #fixed { "Fixed" }
                ul.plain {
                    @for (at, (key, text)) in said.iter().enumerate() {
                        @let words = words(at).unwrap_or_else(|| text.replace('=', format!(" {} ", key.replace('-', " ")).as_str()));
                        li { (words) " " a href=(asking("/day", &asked.without_one(key, text))) data-anew { "let go" span.apart { ": " (words) } } }
                    }
                }
            }
        }
    }
}

/// What was fixed, put into the address of the day, with its date.
pub async fn fix(_visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    let asked = Asked { pairs };
    let amiss = |failure| Refusal::amiss(&failure);
    let zone = moment::zone(asked.get("zone")).map_err(amiss)?;
    let now = moment::now(asked.get("now"), &zone).map_err(amiss)?;
    let serve = moment::read(asked.serve(), &zone, &now).map_err(amiss)?;
    let step = asked.get("step").ok_or_else(|| Refusal::unfit("Which step?", "go back and open the step"))?;
    let begins = asked.get("begins").and_then(Begins::named);
    let begins = begins.ok_or_else(|| Refusal::unfit("Is it to begin then, not before or not after?", "go back and choose"))?;
    let when = asked.get("when").ok_or_else(|| Refusal::unfit("When?", "go back and say when the step is to begin"))?;
    let when = moment::read_until(when, &serve).map_err(amiss)?;
    see(&asking("/day", &with(&asked, step, begins, &when)))
}

/// The address with a step fixed: what was fixed of it before stays only where both can be said of one step.
fn with(asked: &Asked, step: &str, begins: Begins, when: &ZonedDateTime) -> Pairs {
    let gives_way = |name: &str, value: &str| {
        let is_its = value.split_once('=').is_some_and(|(other, _)| other.trim() == step);
        let other = Begins::named(name).filter(|_| is_its);
        other.is_some_and(|other| other == begins || other == Begins::At || begins == Begins::At)
    };
    let own = |name: &str| matches!(name, "step" | "begins" | "when");
    let kept = asked.pairs.iter().filter(|(name, value)| !own(name) && !gives_way(name, value) && !value.is_empty());
    let mut pairs: Pairs = kept.cloned().collect();
    pairs.push((begins.word().to_owned(), format!("{step}={}", when.strftime("%Y-%m-%d %H:%M"))));
    pairs
}
