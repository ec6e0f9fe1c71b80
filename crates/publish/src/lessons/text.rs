//! What trials taught as a readable report.

use super::figures::{KINDS, error, figure, label, learnt, strip, with_band};
use super::{Report, ground};
use crate::words::wrap;
use bench::calibration::{Compared, Lesson, Parameter, Seen};
use quantity::print;

/// The report, lines broken at the width.
#[must_use]
pub fn text(report: &Report, width: usize) -> String {
    let title = format!("What the trials taught: {}", report.kitchen);
    let mut out = format!("{title}\n{}\n\n", "═".repeat(title.chars().count()));
    let mut say = |line: &str| out.push_str(&wrap(line, width));
    if report.trials.is_empty() {
        say(
            "No trial of this kitchen is logged yet: the forecast is that of the books. A trial is a file in trials/, see docs/document.md.",
        );
        return out;
    }
    let left_out = report.lessons.trials.iter().filter(|seen| seen.left_out.is_some()).count();
    say(&format!("{}.", counted(report.trials.len(), left_out)));
    report.lessons.lessons.iter().filter_map(|lesson| pace(report, lesson)).for_each(|told| say(&told));
    for lesson in &report.lessons.lessons {
        out.push_str(&lesson_in_words(report, lesson, width));
    }
    if report.lessons.lessons.is_empty() {
        out.push_str(&wrap(
            "\nThey say nothing that the forecast could learn from: no rise was read, no bowl, no middle.",
            width,
        ));
    }
    out.push_str(&slips(report, width));
    out.push_str(&questions(report, width));
    out.push_str(&errors(report, width));
    out.push_str(&super::drift::text(report, width));
    out.push_str(&chart(report, width));
    out
}

/// How much faster than by the books all goes with a leaven: "Your kitchen runs 8 % faster than the books".
fn pace(report: &Report, lesson: &Lesson) -> Option<String> {
    let Parameter::Vigour(leaven) = &lesson.parameter else { return None };
    let name = report.leavens.get(leaven).unwrap_or(leaven);
    let known = &lesson.after;
    let share = |middle: f64| (100.0 * (libm::exp(middle) - 1.0)).round();
    let told = |percent: f64| {
        let way = if percent < 0.0 { "slower" } else { "faster" };
        format!("{}\u{a0}% {way}", print::number(percent.abs(), 0))
    };
    let (low, high) = (share(known.middle - known.own_band()), share(known.middle + known.own_band()));
    let pace = if share(known.middle) == 0.0 { "as fast as".to_owned() } else { format!("{} than", told(share(known.middle))) };
    Some(format!("With {name} your kitchen runs {pace} the books ({} to {}).", told(low), told(high)))
}

/// Figures that are far off what was expected, each with what may have been meant.
fn slips(report: &Report, width: usize) -> String {
    let mut out = String::new();
    for question in report.lessons.questions() {
        let one = &report.lessons.trials[question.trial].figures[question.figure];
        let what = one.seen.what;
        let (seen, expected) = (figure(what, one.seen.seen), figure(what, question.expected));
        let meant = match question.instead {
            Some(instead) => format!("is this {seen}, or {}?", figure(what, instead)),
            None => format!("is this {seen}?"),
        };
        let line = format!(
            "\nA slip of the pen? {}, {}, {}: {meant} From all else {expected} was expected. It counts as it stands; put it right with `wellproved trial note`.",
            report.called(question.trial),
            one.seen.title,
            label(&one.seen),
        );
        out.push_str(&wrap(&line, width));
    }
    out
}

/// What a trial changed of all that is learnt.
fn taught(report: &Report, trial: usize, width: usize) -> String {
    let mut out = String::new();
    for lesson in &report.lessons.lessons {
        let Some((before, after)) = lesson.step(trial) else { continue };
        let parameter = &lesson.parameter;
        let line = format!(
            "  → {}: {}, before this trial {}",
            report.name(parameter),
            with_band(parameter, &after),
            with_band(parameter, &before)
        );
        out.push_str(&wrap(&line, width));
    }
    out
}

fn counted(trials: usize, left_out: usize) -> String {
    let all = if trials == 1 { "1 trial".to_owned() } else { format!("{trials} trials") };
    if left_out == 0 { all } else { format!("{all}, of which {left_out} left out by the author") }
}

fn lesson_in_words(report: &Report, lesson: &Lesson, width: usize) -> String {
    let Lesson { parameter, before, after, evidence } = lesson;
    let name = print::capital(&report.name(parameter));
    let mut out = format!("\n{name}\n{}\n", "─".repeat(name.chars().count()));
    let (now, then) = (with_band(parameter, after), with_band(parameter, before));
    let told = match parameter {
        Parameter::Vigour(_) => format!("{now} times that of the books"),
        Parameter::Lag => format!("{now} times as fast as is usual"),
        Parameter::Friction => format!("kneading warms a dough by {now}"),
        Parameter::Contact => format!("{now} times as good as is usual"),
    };
    let trials = if after.trials == 1 { "1 trial".to_owned() } else { format!("{} trials", after.trials) };
    out.push_str(&wrap(&format!("{}, learnt from {trials}; before them {then}.", print::capital(&told)), width));
    let next = match parameter {
        Parameter::Friction => format!("{}\u{a0}K", print::number(after.next_band(), 1)),
        _ => format!("{}\u{a0}%", print::number(100.0 * after.next_band(), 0)),
    };
    let each: Vec<String> =
        evidence.iter().map(|one| format!("{} {}", report.called(one.trial), learnt(parameter, one.middle))).collect();
    out.push_str(&wrap(
        &format!("Trial by trial: {}. From one bake to the next it may still differ by {next}.", each.join("; ")),
        width,
    ));
    out.push_str(&wrap(&format!("Grounds: least squares between seen and foreseen; {}.", ground(parameter)), width));
    out
}

/// Trials out of line are asked about, never dropped.
fn questions(report: &Report, width: usize) -> String {
    let mut out = String::new();
    for lesson in &report.lessons.lessons {
        for (trial, apart) in lesson.out_of_line() {
            let said = lesson.evidence.iter().find(|one| one.trial == trial).map_or(f64::NAN, |one| one.middle);
            let line = format!(
                "\nOut of line? By {} {} is {}, {} standard deviations from what the other trials lead to expect. It counts all the same. Was a figure written down wrongly, or was something else that day: the thermometer, the flour, an old packet? Put the file right, or write left-out = \"why\" into it.",
                report.called(trial),
                report.name(&lesson.parameter),
                learnt(&lesson.parameter, said),
                print::number(apart.abs(), 1),
            );
            out.push_str(&wrap(&line, width));
        }
    }
    out
}

fn errors(report: &Report, width: usize) -> String {
    let mut out = String::new();
    for (what, name) in KINDS {
        let Some(errors) = report.lessons.errors(what) else { continue };
        let others = errors.apart.map(|apart| format!(", {} with each trial foreseen from the others alone", error(what, apart)));
        let line = format!(
            "{} {name}: off by {} by the books, {} as learnt{}.",
            errors.count,
            error(what, errors.before),
            error(what, errors.after),
            others.unwrap_or_default()
        );
        out.push_str(&wrap(&line, width));
    }
    if out.is_empty() { out } else { format!("\nHow far off the forecast is\n{}\n{out}", "─".repeat(27)) }
}

/// What was seen beside what is foreseen, trial by trial.
fn chart(report: &Report, width: usize) -> String {
    let mut out = format!("\nForeseen and seen\n{}\n", "─".repeat(17));
    out.push_str(&wrap(
        "In the middle │ what was seen; ○ foreseen by the books, ● as learnt; “then”, where it differs, what the trials before that one led to expect; → what it taught. Times and volumes from half to double, temperatures 10 K to either side.",
        width,
    ));
    for (trial, seen) in report.lessons.trials.iter().enumerate() {
        out.push_str(&wrap(&format!("\n{}{}", print::capital(&report.called(trial)), remark(seen)), width));
        let mut title = "";
        for one in &seen.figures {
            if one.seen.title != title {
                title = &one.seen.title;
                out.push_str(&format!("  {title}\n"));
            }
            out.push_str(&row(one, width));
        }
        out.push_str(&taught(report, trial, width));
    }
    out
}

fn remark(seen: &Seen) -> String {
    let left_out = seen.left_out.as_ref().map(|why| format!(" (left out: {why})")).unwrap_or_default();
    match seen.untold {
        0 => left_out,
        1 => format!("{left_out}; 1 reading before a clear rise or past the peak tells nothing of vigour"),
        more => format!("{left_out}; {more} readings before a clear rise or past the peak tell nothing of vigour"),
    }
}

fn row(one: &Compared, width: usize) -> String {
    let what = one.seen.what;
    let foreseen = |value: Option<f64>| value.map_or_else(|| "not told".to_owned(), |value| figure(what, value));
    let head = format!("    {:<27}{:>11}  {}", label(&one.seen), figure(what, one.seen.seen), strip(one));
    let then = one.then.filter(|_| one.then != one.before).map(|then| format!(", then {}", figure(what, then)));
    let tail = format!("○ {}, ● {}{}", foreseen(one.before), foreseen(one.after), then.unwrap_or_default());
    if width >= 110 { format!("{head}  {tail}\n") } else { format!("{head}\n{:>44}{tail}\n", "") }
}
