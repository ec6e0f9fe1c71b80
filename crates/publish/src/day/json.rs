//! A day's timeline for other programs: moments as RFC 9557 writes them, times in minutes.

use super::words::{action, hands, station};
use plan::day::{AIMS, Entry, HowFar, Readies, Space, Stay, Timeline, Told, Until, Want, Why};
use quantity::TimeSpan;
use serde_json::{Value, json};

/// The timeline as JSON.
#[must_use]
pub fn json(timeline: &Timeline) -> Value {
    let tried = plan::day::tries(timeline, 1000);
    let reached = AIMS.iter().zip(&timeline.reached);
    json!({
        "kitchen": timeline.place.title,
        "measured": super::text::own_times(timeline),
        "wanted": timeline.wanted.to_string(),
        "served": timeline.served.to_string(),
        "formulas": timeline.dishes.iter().map(|dish| json!({ "name": dish.formula.name, "served": dish.is_served })).collect::<Vec<_>>(),
        "jobs": timeline.entries.iter().map(|entry| job(timeline, entry)).collect::<Vec<_>>(),
        "stands": timeline.stays.iter().map(stay).collect::<Vec<_>>(),
        "fixed": timeline.fixed.iter().map(|one| json!({
            "job": one.job, one.fix.begins.word(): one.fix.when.to_string(), "has-happened": one.has_happened,
        })).collect::<Vec<_>>(),
        "nobody-at-hand": timeline.left.iter().map(|left| json!({
            "why": if left.away.why == Why::Asleep { "asleep" } else { "out" },
            "wanted": [left.away.from.to_string(), left.away.to.to_string()],
            "kept": left.kept.as_ref().map(|(from, to)| [from.to_string(), to.to_string()]),
        })).collect::<Vec<_>>(),
        "gives-way": timeline.unmet.iter().map(|one| json!({
            "wish": want(timeline, one.want),
            how_far(one.gives_way).0: how_far(one.gives_way).1,
        })).collect::<Vec<_>>(),
        "conflicts": timeline.conflicts.iter().map(|group| group.iter().map(|one| json!({
            "wish": want(timeline, one.want),
            "alone": one.alone.map(|far| json!({ how_far(far).0: how_far(far).1 })),
        })).collect::<Vec<_>>()).collect::<Vec<_>>(),
        "reasons-cut-short": timeline.is_why_cut_short,
        "would-help": timeline.relief.iter().map(|one| super::relief::json(timeline, one)).collect::<Vec<_>>(),
        "tried": {
            "kitchens": tried.kitchens,
            "within-10-minutes": tried.in_time,
            "something-past-its-best": tried.past_best,
            "less-room-than-planned": tried.crowded,
            "minutes-late": { "half": minutes(tried.late.0), "one-in-twenty": minutes(tried.late.1) },
            "slack-minutes": tried.slack.iter().map(|span| minutes(*span)).collect::<Vec<_>>(),
        },
        "aims": reached.map(|(name, one)| json!({ "aim": name, "value": one.value, "bound": one.bound })).collect::<Vec<_>>(),
    })
}

fn minutes(span: TimeSpan) -> f64 {
    span.as_minutes()
}

fn job(timeline: &Timeline, entry: &Entry) -> Value {
    let job = &timeline.jobs[entry.job];
    let formula = &timeline.dishes[job.dish].formula;
    let component = &formula.components[job.at.0];
    json!({
        "job": entry.job,
        "begin": entry.begin.to_string(),
        "end": entry.end.to_string(),
        "needed": entry.needed.to_string(),
        "formula": formula.name,
        "component": component.name,
        "stage": component.stages[job.at.1].name,
        "step": job.step + 1,
        "action": match job.readies {
            None => action(timeline, job).word(),
            Some(Readies::Oven) => "heat-oven",
            Some(Readies::Soft(_)) => "take-out",
        },
        "hands": hands(job, entry),
        "stations": job.stations.iter().map(|one| station(*one)).collect::<Vec<_>>(),
        "minutes": { "early": minutes(job.span.early), "likely": minutes(job.span.likely), "late": minutes(job.span.late) },
        "time": match job.span.from { Told::Foreseen => "foreseen", Told::Stated => "stated", Told::Assumed => "assumed" },
    })
}

/// How far a wish gives way: in minutes, bowls or decilitres.
fn how_far(far: HowFar) -> (&'static str, f64) {
    match far {
        HowFar::Time(span) => ("minutes", minutes(span)),
        HowFar::Room(room) => ("room", f64::from(room)),
    }
}

fn stay(stay: &Stay) -> Value {
    let until = stay.until.iter().map(|until| match until {
        Until::Begins(job) => json!({ "begins": job }),
        Until::Done(job) => json!({ "done": job }),
        Until::Served => json!("served"),
    });
    let (space, amount) = match stay.space {
        Space::Bowls => ("bowls", f64::from(stay.amount)),
        Space::Oven => ("decks", f64::from(stay.amount) / 100.0),
        Space::Fridge => ("fridge-litres", f64::from(stay.amount) / 10.0),
    };
    json!({ "from-job": stay.from, "until": until.collect::<Vec<_>>(), space: amount })
}

fn want(timeline: &Timeline, want: Want) -> Value {
    match want {
        Want::Room(space) => json!({
            "room": match space {
                Space::Bowls => "bowls",
                Space::Fridge => "fridge",
                Space::Oven => "oven",
            }
        }),
        Want::Large(size) => json!({
            "room": "bowls",
            "of-litres": timeline.place.bowl_sizes.get(size).map(|(holds, _)| holds.as_millilitres() / 1000.0),
        }),
        Want::Fixed(at) => {
            let one = &timeline.fixed[at];
            json!({ "job": one.job, one.fix.begins.word(): one.fix.when.to_string() })
        }
        Want::Served => json!({ "serving": timeline.wanted.to_string() }),
        Want::Left(at) => {
            let left = timeline.left.iter().find(|left| left.at == at);
            json!({ "nobody-at-hand": left.map(|left| [left.away.from.to_string(), left.away.to.to_string()]) })
        }
        Want::AtItsBest(at) => {
            let one = &timeline.follows[at];
            json!({ "after-job": one.before, "before-job": one.after, "most-minutes": one.most.map(minutes) })
        }
    }
}
