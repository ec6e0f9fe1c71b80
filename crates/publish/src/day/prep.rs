//! What to do by day and hour, with the weights at each line: a list to tick off.

use super::words::{day, time, verb, what};
use crate::method::sentence;
use crate::words::wrap;
use crate::words::{Units, small};
use formula::resolve::formula::{Content, Shown, Word};
use plan::day::{Entry, Job, Timeline};
use quantity::print;

/// The list as text of that width: everything that needs hands, if only to set it going.
#[must_use]
pub fn prep(timeline: &Timeline, units: Units, width: usize) -> String {
    let mut out = String::new();
    let mut date = None;
    for entry in timeline.entries.iter().filter(|entry| timeline.jobs[entry.job].is_work || entry.is_set_going) {
        if date != Some(entry.begin.date()) {
            date = Some(entry.begin.date());
            let heading = day(&entry.begin);
            let gap = if out.is_empty() { "" } else { "\n" };
            out.push_str(&format!("{gap}{heading}\n{}\n", "─".repeat(heading.chars().count())));
        }
        out.push_str(&one(timeline, entry, units, width));
    }
    out
}

fn one(timeline: &Timeline, entry: &Entry, units: Units, width: usize) -> String {
    let job = &timeline.jobs[entry.job];
    let mut out = wrap(&format!("☐ {}  {} · {}", time(&entry.begin), verb(timeline, job), what(timeline, job)), width);
    if job.heats_oven {
        let heat = super::words::heat(timeline, job).map_or_else(String::new, |heat| format!(" to {heat}"));
        out.push_str(&format!("  Heat the oven{heat}.\n"));
        return out;
    }
    let weights = weights(timeline, job);
    if !weights.is_empty() {
        out.push_str(&indented(&weights.join("; "), width));
    }
    out.push_str(&indented(&words(timeline, job, units), width));
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
pub fn weights(timeline: &Timeline, job: &Job) -> Vec<String> {
    let formula = &timeline.dishes[job.dish].formula;
    let component = &formula.components[job.at.0];
    let step = &component.stages[job.at.1].steps[job.step];
    let weighed = step.words.iter().filter_map(|word| {
        let Word::Line { stage, line, mass, shown, .. } = word else { return None };
        let line = &component.stages[*stage].lines[*line];
        let is_weighed = *shown != Shown::Name && !matches!(line.content, Content::Stage(..));
        is_weighed.then(|| match line.pieces_of(*mass) {
            Some(pieces) => {
                format!("{} {} ({})", print::count(pieces), small(&line.counted_title(pieces)), print::mass(*mass))
            }
            None => format!("{} {}", print::mass(*mass), small(&line.title)),
        })
    });
    weighed.collect()
}
