//! What to do by day and hour, with the weights at each line: a list to tick off.

use super::words::{heat_of, time, verb_in, what_in};
use crate::method::sentence;
use crate::tongue::Tongue;
use crate::words::{Units, counted_title, in_sentence, small_in, wrap};
use formula::resolve::formula::{Content, Shown, Word};
use plan::day::{Entry, Job, Readies, Timeline};

/// Whether the list tells of an entry: everything that needs hands, if only to set it going.
pub fn is_told(timeline: &Timeline, entry: &Entry) -> bool {
    timeline.jobs[entry.job].is_work || entry.is_set_going
}

/// What the list tells of an entry.
pub struct Told {
    /// Its day.
    pub day: String,
    /// Its time.
    pub time: String,
    /// What is done to what.
    pub what: String,
    /// What is weighed for it.
    pub weights: Vec<String>,
    /// The step's sentence, if it is one of the method.
    pub words: Option<String>,
}

/// An entry in words.
pub fn told(timeline: &Timeline, entry: &Entry, units: Units) -> Told {
    let (job, tongue) = (&timeline.jobs[entry.job], units.tongue);
    Told {
        day: tongue.day(&entry.begin),
        time: time(&entry.begin),
        what: format!("{} · {}", verb_in(timeline, job, tongue), what_in(timeline, job, tongue)),
        weights: if job.is_step() { weights(timeline, job, units.tongue) } else { Vec::new() },
        words: job.is_step().then(|| words(timeline, job, units)),
    }
}

/// What is done to make ready for a step, which no step of the method says.
pub fn made_ready(timeline: &Timeline, job: &Job, tongue: Tongue) -> String {
    let print = tongue.print;
    let Some(Readies::Soft(lines)) = &job.readies else {
        let heat = heat_of(timeline, job).map(|heat| print.celsius(heat));
        return heat.map_or_else(|| tongue.day_heat_the_oven().to_owned(), |heat| tongue.day_heat_the_oven_to(heat));
    };
    let stage = timeline.dishes[job.dish].formula.stage(job.at);
    let lines = lines.iter().map(|line| &stage.lines[*line]);
    let told = lines.map(|line| format!("{} {}", print.large_mass(line.mass.value), small_in(&line.title, tongue)));
    tongue.day_soft(told.reduce(|one, other| tongue.day_and(&one, &other)).unwrap_or_default())
}

/// The list as text of that width.
#[must_use]
pub fn prep(timeline: &Timeline, units: Units, width: usize) -> String {
    let mut out = String::new();
    let mut day = String::new();
    for entry in timeline.entries.iter().filter(|entry| is_told(timeline, entry)) {
        let one = told(timeline, entry, units);
        if day != one.day {
            let gap = if out.is_empty() { "" } else { "\n" };
            out.push_str(&format!("{gap}{}\n{}\n", one.day, "─".repeat(one.day.chars().count())));
            day.clone_from(&one.day);
        }
        out.push_str(&wrap(&format!("☐ {}  {}", one.time, one.what), width));
        if !one.weights.is_empty() {
            out.push_str(&indented(&one.weights.join("; "), width));
        }
        let words = one.words.unwrap_or_else(|| made_ready(timeline, &timeline.jobs[entry.job], units.tongue));
        out.push_str(&indented(&words, width));
    }
    out
}

fn indented(text: &str, width: usize) -> String {
    let lines = wrap(text, width.saturating_sub(2));
    lines.lines().map(|line| format!("  {}\n", line.trim_start())).collect()
}

/// The step's sentence.
pub fn words(timeline: &Timeline, job: &Job, units: Units) -> String {
    let formula = &timeline.dishes[job.dish].formula;
    sentence(formula, job.at, &formula.stage(job.at).steps[job.step], units)
}

/// What is weighed for a step: "80 g strong white flour".
pub fn weights(timeline: &Timeline, job: &Job, tongue: Tongue) -> Vec<String> {
    let print = tongue.print;
    let formula = &timeline.dishes[job.dish].formula;
    let component = &formula.components[job.at.0];
    let step = &component.stages[job.at.1].steps[job.step];
    let weighed = step.words.iter().filter_map(|word| {
        let Word::Line { stage, line, mass, shown, .. } = word else { return None };
        let line = &component.stages[*stage].lines[*line];
        let is_weighed = *shown != Shown::Name && !matches!(line.content, Content::Stage(..));
        is_weighed.then(|| match line.pieces_of(*mass) {
            Some(pieces) => {
                format!("{} {} ({})", print.count(pieces), counted_title(line, pieces, tongue), print.mass(*mass))
            }
            None => format!("{} {}", print.mass(*mass), in_sentence(line, tongue)),
        })
    });
    weighed.collect()
}
