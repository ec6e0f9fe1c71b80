//! What would help where wishes give way, each tried out, in words and as JSON.

use super::wishes;
use super::words::{action, span, time_seen_from};
use crate::words::small;
use bench::target::Dosed;
use jiff::ZonedDateTime;
use plan::day::{Timeline, Want};
use plan::relief::{Help, Relief};
use quantity::print;
use serde_json::{Value, json};

/// A line each: "- 6.1 g of instant yeast instead of …; then every wish is granted".
pub fn told(timeline: &Timeline, relief: &Relief) -> String {
    let still = wishes::giving_way(&relief.then);
    let still: Vec<&str> = still.iter().map(|line| line.trim_start_matches("- ")).collect();
    let then = if still.is_empty() { "then every wish is granted".to_owned() } else { format!("but then {}", still.join(", ")) };
    format!("- {}; {then}", help(timeline, &relief.help))
}

fn help(timeline: &Timeline, help: &Help) -> String {
    match help {
        Help::Earlier(missed) => format!("started earlier: {}", begun(timeline, missed)),
        Help::AsItIs(job, after) => {
            let stage = small(title(timeline, *job));
            format!("the {stage} used after {}, when it is foreseen to be ripe with the yeast that it has", span(*after))
        }
        Help::Dose(job, doses, takes) => {
            let one = |dose: &Dosed| {
                format!("{} of {} instead of {}", print::mass(dose.needed), small(&dose.title), print::mass(dose.stated))
            };
            let doses: Vec<String> = doses.iter().map(one).collect();
            let word = action(timeline, &timeline.jobs[*job]).word();
            let stage = small(title(timeline, *job));
            format!("{} in the {stage}, with which “{word}” takes {}", doses.join(" and "), span(*takes))
        }
    }
}

/// The title of a job's stage.
fn title(timeline: &Timeline, job: usize) -> &str {
    let job = &timeline.jobs[job];
    &timeline.dishes[job.dish].formula.stage(job.at).title
}

/// More than so many things nobody would have begun in time by.
const TOLD: usize = 3;

/// "the overnight sponge before Sat 18:10, the quince liquor before Sat 20:45".
fn begun(timeline: &Timeline, missed: &[(usize, ZonedDateTime)]) -> String {
    let one = |(job, when): &(usize, ZonedDateTime)| {
        format!("the {} before {}", small(title(timeline, *job)), time_seen_from(when, &timeline.wanted))
    };
    let more = match missed.len().saturating_sub(TOLD) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    let told: Vec<String> = missed.iter().take(TOLD).map(one).collect();
    format!("{}{more}", told.join(", "))
}

/// How much more time serving as wished would take, where it is late, and when things would have to be started for it.
pub fn needed(timeline: &Timeline) -> Option<String> {
    let late = timeline.unmet.iter().find(|unmet| unmet.want == Want::Served)?;
    let missed = timeline.relief.iter().find_map(|one| match &one.help {
        Help::Earlier(missed) => Some(missed),
        Help::AsItIs(..) | Help::Dose(..) => None,
    });
    let when = missed.map_or_else(|| " than there is".to_owned(), |missed| format!(": start {}", begun(timeline, missed)));
    Some(format!("It needs {} more{when}.", span(late.gives_way.time())))
}

/// Whether it is still to be chosen; what had to be started before now is told as what is needed.
pub const fn is_open(relief: &Relief) -> bool {
    !matches!(relief.help, Help::Earlier(_))
}

/// The same for other programs.
pub fn json(timeline: &Timeline, relief: &Relief) -> Value {
    let mut told = match &relief.help {
        Help::Earlier(missed) => json!({
            "begin-by": missed.iter().map(|(job, when)| json!({ "job": job, "at": when.to_string() })).collect::<Vec<_>>(),
        }),
        Help::AsItIs(job, after) => {
            json!({ "job": job, "stage": name(timeline, *job), "used-after-minutes": after.as_minutes() })
        }
        Help::Dose(job, doses, takes) => json!({
            "job": job,
            "stage": name(timeline, *job),
            "takes-minutes": takes.as_minutes(),
            "doses": doses.iter().map(|dose| json!({
                "of": dose.name,
                "gram": dose.needed.as_grams(),
                "instead-of-gram": dose.stated.as_grams(),
            })).collect::<Vec<_>>(),
        }),
    };
    let still: Vec<String> =
        wishes::giving_way(&relief.then).iter().map(|line| line.trim_start_matches("- ").to_owned()).collect();
    told["gives-way"] = json!(still);
    told
}

fn name(timeline: &Timeline, job: usize) -> &str {
    let job = &timeline.jobs[job];
    &timeline.dishes[job.dish].formula.stage(job.at).name
}
