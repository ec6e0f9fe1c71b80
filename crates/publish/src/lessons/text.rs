//! What trials taught as a readable report.

use super::Report;
use super::figures::{figure, label, strip};
use super::sentences::{counted, errors, is_told, lesson_in_words, pace, questions, remark, slips, taught};
use crate::words::wrap;
use bench::calibration::Compared;
use quantity::print;

/// The report, lines broken at the width.
#[must_use]
pub fn text(report: &Report, width: usize) -> String {
    let title = format!("What the trials taught: {}", report.kitchen);
    let mut out = format!("{title}\n{}\n\n", "═".repeat(title.chars().count()));
    let mut say = |line: &str| out.push_str(&wrap(line, width));
    if !report.lessons.trials.iter().any(is_told) {
        say(
            "No trial of this kitchen is logged yet: the forecast is that of the books. A trial is a file in trials/, see docs/document.md.",
        );
        return out;
    }
    say(&counted(report));
    report.lessons.lessons.iter().filter_map(|lesson| pace(report, lesson)).for_each(|told| say(&told));
    for lesson in &report.lessons.lessons {
        let name = print::capital(&report.name(&lesson.parameter));
        out.push_str(&format!("\n{name}\n{}\n", "─".repeat(name.chars().count())));
        lesson_in_words(report, lesson).iter().for_each(|told| out.push_str(&wrap(told, width)));
    }
    if report.lessons.lessons.is_empty() {
        out.push_str(&wrap(
            "\nThey say nothing that the forecast could learn from: no rise was read, no bowl, no middle.",
            width,
        ));
    }
    for one in slips(report) {
        out.push_str(&wrap(&format!("\n{}; put it right with `wellproved trial note`.", one.words), width));
    }
    for one in questions(report) {
        out.push_str(&wrap(&format!("\n{} Put the file right, or write left-out = \"why\" into it.", one.words), width));
    }
    let errors = errors(report);
    if !errors.is_empty() {
        out.push_str(&format!("\nHow far off the forecast is\n{}\n", "─".repeat(27)));
        errors.iter().for_each(|told| out.push_str(&wrap(told, width)));
    }
    out.push_str(&super::drift::text(report, width));
    out.push_str(&chart(report, width));
    out
}

/// What was seen beside what is foreseen, trial by trial.
fn chart(report: &Report, width: usize) -> String {
    let mut out = format!("\nForeseen and seen\n{}\n", "─".repeat(17));
    out.push_str(&wrap(
        "In the middle │ what was seen; ○ foreseen by the books, ● as learnt; “then”, where it differs, what the trials before that one led to expect; → what it taught. Times and volumes from half to double, temperatures 10 K to either side.",
        width,
    ));
    for (trial, seen) in report.lessons.trials.iter().enumerate().filter(|(_, seen)| is_told(seen)) {
        out.push_str(&wrap(&format!("\n{}{}", print::capital(&report.called(trial)), remark(seen)), width));
        let mut title = "";
        for one in &seen.figures {
            if one.seen.title != title {
                title = &one.seen.title;
                out.push_str(&format!("  {title}\n"));
            }
            out.push_str(&row(one, width));
        }
        taught(report, trial).iter().for_each(|told| out.push_str(&wrap(&format!("  {told}"), width)));
    }
    out
}

fn row(one: &Compared, width: usize) -> String {
    let what = one.seen.what;
    let foreseen = |value: Option<f64>| value.map_or_else(|| "not told".to_owned(), |value| figure(what, value));
    let head = format!("    {:<27}{:>11}  {}", label(&one.seen), figure(what, one.seen.seen), strip(one));
    let then = one.then.filter(|_| one.then != one.before).map(|then| format!(", then {}", figure(what, then)));
    let tail = format!("○ {}, ● {}{}", foreseen(one.before), foreseen(one.after), then.unwrap_or_default());
    if width >= 110 { format!("{head}  {tail}\n") } else { format!("{head}\n{:>44}{tail}\n", "") }
}
