//! Jobs, moments and stations in words.

use crate::tongue::Tongue;
use crate::words::small_in;
use formula::read::{Action, StageKind};
use jiff::ZonedDateTime;
use plan::day::{Entry, Job, Readies, Station, Timeline, Why};
use quantity::{Between, Temperature, TimeSpan, print};

/// What a job is done to: "Potato muffins: overnight sponge".
pub fn what(timeline: &Timeline, job: &Job) -> String {
    what_in(timeline, job, Tongue::default())
}

/// The same in a language.
pub fn what_in(timeline: &Timeline, job: &Job, tongue: Tongue) -> String {
    let component = &timeline.dishes[job.dish].formula.components[job.at.0];
    let stage = &component.stages[job.at.1];
    if component.stages.len() == 1 || component.title == stage.title {
        return component.title.clone();
    }
    format!("{}: {}", component.title, small_in(&stage.title, tongue))
}

/// What a job's product is called within a sentence: "the potato dough"; once it is made up, "the potato muffins".
pub fn thing(timeline: &Timeline, job: &Job) -> String {
    thing_in(timeline, job, Tongue::default())
}

/// The same in a language.
pub fn thing_in(timeline: &Timeline, job: &Job, tongue: Tongue) -> String {
    let component = &timeline.dishes[job.dish].formula.components[job.at.0];
    let stage = &component.stages[job.at.1];
    let title = if stage.kind == StageKind::MakeUp { &component.title } else { &stage.title };
    tongue.day_the(small_in(title, tongue))
}

/// What is done: "ferment", "heat the oven".
pub fn verb(timeline: &Timeline, job: &Job) -> String {
    verb_in(timeline, job, Tongue::default())
}

/// The same in a language.
pub fn verb_in(timeline: &Timeline, job: &Job, tongue: Tongue) -> String {
    match &job.readies {
        None => tongue.action(action(timeline, job)).to_owned(),
        Some(Readies::Oven) => tongue.day_heat_oven().to_owned(),
        Some(Readies::Soft(lines)) => {
            let stage = timeline.dishes[job.dish].formula.stage(job.at);
            let titles = lines.iter().map(|line| small_in(&stage.lines[*line].title, tongue));
            tongue.day_take_out(titles.reduce(|one, other| tongue.day_and_the(&one, &other)).unwrap_or_default())
        }
    }
}

/// What a job's step does.
pub fn action(timeline: &Timeline, job: &Job) -> Action {
    timeline.dishes[job.dish].formula.stage(job.at).steps[job.step].action
}

/// The temperature of an oven, griddle or fat, where the step states one.
pub fn heat(timeline: &Timeline, job: &Job) -> Option<String> {
    heat_of(timeline, job).map(print::celsius)
}

/// The same as a figure.
pub fn heat_of(timeline: &Timeline, job: &Job) -> Option<Between<Temperature>> {
    let step = &timeline.dishes[job.dish].formula.stage(job.at).steps[job.step];
    let is_warmed = matches!(step.action, Action::Hold | Action::Rewarm);
    step.temperature.filter(|_| is_warmed || job.stations.iter().any(|station| station.is_hot()))
}

/// Whether hands are needed, and for how long.
pub const fn hands(job: &Job, entry: &Entry) -> &'static str {
    match (job.is_work, entry.is_set_going) {
        (true, _) => "throughout",
        (false, true) => "to set it going",
        (false, false) => "none",
    }
}

/// A station's word, in JSON and in the catalogues.
pub const fn station(station: Station) -> &'static str {
    match station {
        Station::Hands => "hands",
        Station::Ring => "ring",
        Station::Oven => "oven",
        Station::Griddle => "griddle",
        Station::Mixer => "mixer",
        Station::Proofer => "proofer",
    }
}

/// "09:30".
pub fn time(moment: &ZonedDateTime) -> String {
    moment.strftime("%H:%M").to_string()
}

/// "Sunday 29 November".
pub fn day(moment: &ZonedDateTime) -> String {
    moment.strftime("%A %-d %B").to_string()
}

/// "09:30", with its day where that is another one than a given moment's.
pub fn time_seen_from(moment: &ZonedDateTime, seen: &ZonedDateTime) -> String {
    if moment.date() == seen.date() { time(moment) } else { moment.strftime("%a %H:%M").to_string() }
}

/// A time span in words: "1 h 20 min".
pub fn span(span: TimeSpan) -> String {
    span_in(span, Tongue::default())
}

/// The same in a language.
pub fn span_in(span: TimeSpan, tongue: Tongue) -> String {
    tongue.print.time(Between::just(TimeSpan::minutes(span.as_minutes().round())))
}

/// A time span that is only foreseen, as it is worth telling.
pub fn about(span: TimeSpan) -> String {
    print::time(print::rounded_time(Between::just(span)))
}

/// How long it is from one moment to another.
pub fn between(from: &ZonedDateTime, to: &ZonedDateTime) -> TimeSpan {
    TimeSpan::seconds(to.timestamp().duration_since(from.timestamp()).as_secs_f64())
}

/// When nobody is at hand, as it could be kept, and why: what is served in the night parts it.
pub fn rests(timeline: &Timeline) -> Vec<(&ZonedDateTime, &ZonedDateTime, Why)> {
    let served = &timeline.served;
    let mut rests = Vec::new();
    for left in &timeline.left {
        let Some((from, to)) = &left.kept else { continue };
        if from < served && served < to {
            rests.extend((between(from, served) >= WORTH_LYING_DOWN).then_some((from, served, left.away.why)));
            rests.push((served, to, left.away.why));
        } else {
            rests.push((from, to, left.away.why));
        }
    }
    rests
}

/// For less than that before serving nobody lies down: common practice, no source.
const WORTH_LYING_DOWN: TimeSpan = TimeSpan::hours(1.0);

/// The titles of what is served, a line each.
pub fn served(timeline: &Timeline) -> Vec<&str> {
    timeline.dishes.iter().filter(|dish| dish.is_served).map(|dish| dish.formula.head.title.as_str()).collect()
}
