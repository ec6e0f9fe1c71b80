//! The tasks of a day, each with what can be told of it: done, begun, risen so far, so warm.

use super::asked::{Asked, TOLD};
use super::{Pairs, asking, fixing};
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::door::Visitor;
use axum::extract::Query;
use jiff::{SignedDuration, ZonedDateTime};
use maud::{Markup, html};
use plan::day::{StepName, Timeline, Wanted};
use publish::day::{Task, tasks};

/// What is served and begins later than so long from now is told by its form alone, not by a tap.
const SOON: SignedDuration = SignedDuration::from_hours(24);

/// The tasks in order of time, day by day.
pub fn list(asked: &Asked, wanted: &Wanted, day: &Timeline) -> Markup {
    let soon = wanted.now.checked_add(SOON).ok();
    // On the day itself every step may be tapped: what was not told pushes the others far away.
    let is_near = |task: &Task| soon.as_ref().is_none_or(|soon| task.begin < *soon || wanted.serve < *soon);
    let all = tasks(day);
    let mut days: Vec<&str> = all.iter().map(|task| task.day.as_str()).collect();
    days.dedup();
    html! {
        @for date in days {
            h3 { (date) }
            ol.tasks { @for task in all.iter().filter(|task| task.day == date) { (item(asked, task, is_near(task))) } }
        }
    }
}

fn item(asked: &Asked, task: &Task, is_near: bool) -> Markup {
    html! {
        li id={ "task-" (task.job) } {
            b { (task.time) } " " (task.words) " " span.fine { "(" (task.hands) ")" }
            @if let Some(step) = task.step.as_ref().filter(|_| !asked.has("way")) { (form(asked, task, step, is_near)) }
        }
    }
}

/// What really happened at a task.
fn form(asked: &Asked, task: &Task, step: &StepName, is_near: bool) -> Markup {
    let named = crate::asked::steps::named(step);
    let own = format!("tell-{}", task.job);
    html! {
        @if is_near {
            span.now {
                @if !task.is_going { button form=(own) name="just" value="begun" { "Begun now" span.apart { ": " (task.words) } } }
                button form=(own) name="just" value="done" { "Done now" span.apart { ": " (task.words) } }
            }
        }
        details {
            summary { "Say what happened, or when it is to begin" span.apart { ": " (task.words) } }
            form.fields id=(own) method="get" action="/day/told" data-anew {
                @for (key, value) in asked.without("ways") { input type="hidden" name=(key) value=(value); }
                input type="hidden" name="step" value=(named);
                label { "It is" select name="what" {
                    option value="begun" { "begun" }
                    option value="done" { "done" }
                    option value="risen" { "risen by, %" }
                    option value="warm" { "so warm, °C" }
                } }
                label { "So much" input type="text" inputmode="decimal" name="much" size="5" placeholder="50"; }
                label { "At (now if left out)" input type="time" name="when"; }
                button { "Plan the rest anew" }
            }
            @if !task.is_going { (fixing::form(asked, task, &named)) }
        }
    }
}

/// What was told so far, each to be taken back.
pub fn told_so_far(asked: &Asked) -> Markup {
    let all = TOLD.iter().flat_map(|(key, word)| asked.all(key).into_iter().map(move |text| (*key, *word, text)));
    let all: Vec<(&str, &str, String)> = all.collect();
    html! {
        @if !all.is_empty() {
            section aria-labelledby="so-far" {
                h3 #so-far { "Told so far" }
                ul.plain {
                    @for (key, word, text) in &all {
                        @let (step, what) = text.split_once('=').unwrap_or((text, ""));
                        li { (step.split('/').collect::<Vec<_>>().join(", ")) ": " (word) " " (what) " "
                            a href=(asking("/day", &asked.without_one(key, text))) data-anew { "take back" span.apart { ": " (step) " " (word) } } }
                    }
                }
            }
        }
    }
}

/// What was told, put into the address of the day: the moment with its date, so that it means the same tomorrow.
pub async fn told(_visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    let asked = Asked { pairs };
    let amiss = |failure| Refusal::amiss(&failure);
    let zone = moment::zone(asked.get("zone")).map_err(amiss)?;
    let now = moment::now(asked.get("now"), &zone).map_err(amiss)?;
    // A tap says what happens just now, whatever stands in the fields.
    let just = asked.get("just");
    let when = asked.get("when").filter(|_| just.is_none());
    let when = when.map_or(Ok(now.clone()), |text| moment::read_past(text, &zone, &now)).map_err(amiss)?;
    let step = asked.get("step").ok_or_else(|| Refusal::unfit("Which step?", "go back and click the task"))?;
    let much = || {
        let text = asked.get("much").map(|text| text.trim_end_matches(['%', ' ']));
        text.ok_or_else(|| Refusal::unfit("How much?", "go back and write how far it has risen, or how warm it is"))
    };
    let (key, text) = match just.or(asked.get("what")).unwrap_or_default() {
        "done" => ("done", format!("{step}={}", dated(&when))),
        "begun" => ("begun", format!("{step}={}", dated(&when))),
        "risen" => ("seen", format!("{step}={} risen by {} %", dated(&when), much()?)),
        "warm" => ("seen", format!("{step}={} {} °C", dated(&when), much()?.trim_end_matches("°C").trim())),
        _ => return Err(Refusal::unfit("What happened?", "go back and choose: begun, done, risen, warm")),
    };
    let own = |name: &str| matches!(name, "step" | "what" | "much" | "when" | "just");
    // What is told anew of a step takes the place of what was told of it before.
    let same = |name: &str, value: &str| {
        let is_course = matches!(name, "done" | "begun");
        is_course && matches!(key, "done" | "begun") && value.split_once('=').is_some_and(|(other, _)| other == step)
    };
    let kept = asked.pairs.iter().filter(|(name, value)| !own(name) && !same(name, value) && !value.is_empty());
    let mut pairs: Pairs = kept.cloned().collect();
    pairs.push((key.to_owned(), text));
    see(&asking("/day", &pairs))
}

fn dated(when: &ZonedDateTime) -> String {
    when.strftime("%Y-%m-%d %H:%M").to_string()
}
