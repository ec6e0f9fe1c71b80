//! What trials taught, sentence by sentence: for the terminal and for a page.

use super::figures::{KINDS, error, figure, label, learnt, typed, with_band};
use super::{Report, ground};
use bench::calibration::{Lesson, Parameter, Seen};
use quantity::print;

/// Whether a trial tells anything: a draft that was planned, or begun and left, does not count yet.
pub fn is_told(seen: &Seen) -> bool {
    !seen.figures.is_empty() || seen.untold > 0
}

/// How many trials there are that tell anything.
pub fn counted(report: &Report) -> String {
    let told: Vec<&Seen> = report.lessons.trials.iter().filter(|seen| is_told(seen)).collect();
    let left_out = told.iter().filter(|seen| seen.left_out.is_some()).count();
    let all = if told.len() == 1 { "1 trial".to_owned() } else { format!("{} trials", told.len()) };
    if left_out == 0 { format!("{all}.") } else { format!("{all}, of which {left_out} left out by the author.") }
}

/// How much faster than by the books all goes with a leaven: "Your kitchen runs 8 % faster than the books".
pub fn pace(report: &Report, lesson: &Lesson) -> Option<String> {
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
pub fn slips(report: &Report) -> Vec<Asked> {
    let asked = |question: bench::calibration::Question| {
        let one = &report.lessons.trials[question.trial].figures[question.figure];
        let what = one.seen.what;
        let (seen, expected) = (typed(what, one.seen.seen), figure(what, question.expected));
        let meant = match question.instead {
            Some(instead) => format!("is this {seen}, or {}?", figure(what, instead)),
            None => format!("is this {seen}?"),
        };
        let words = format!(
            "A slip of the pen? {}, {}, {}: {meant} From all else {expected} was expected. It counts as it stands",
            report.called(question.trial),
            one.seen.title,
            label(&one.seen),
        );
        Asked { trial: question.trial, words }
    };
    report.lessons.questions().into_iter().map(asked).collect()
}

/// Trials out of line are asked about, never dropped.
pub fn questions(report: &Report) -> Vec<Asked> {
    let mut all = Vec::new();
    for lesson in &report.lessons.lessons {
        for (trial, apart) in lesson.out_of_line() {
            let said = lesson.evidence.iter().find(|one| one.trial == trial).map_or(f64::NAN, |one| one.middle);
            let words = format!(
                "Out of line? By {} {} is {}, {} standard deviations from what the other trials lead to expect. It counts all the same. Was a figure written down wrongly, or was something else that day: the thermometer, the flour, an old packet?",
                report.called(trial),
                report.name(&lesson.parameter),
                learnt(&lesson.parameter, said),
                print::number(apart.abs(), 1),
            );
            all.push(Asked { trial, words });
        }
    }
    all
}

/// What is asked about a trial.
pub struct Asked {
    /// Which trial.
    pub trial: usize,
    /// The question.
    pub words: String,
}

/// What a trial changed of all that is learnt.
pub fn taught(report: &Report, trial: usize) -> Vec<String> {
    let told = |lesson: &Lesson| {
        let (before, after) = lesson.step(trial)?;
        let parameter = &lesson.parameter;
        let (now, then) = (with_band(parameter, &after), with_band(parameter, &before));
        Some(format!("→ {}: {now}, before this trial {then}", report.name(parameter)))
    };
    report.lessons.lessons.iter().filter_map(told).collect()
}

/// What is known of a figure now, from which trials, and on what grounds.
pub fn lesson_in_words(report: &Report, lesson: &Lesson) -> [String; 3] {
    let Lesson { parameter, before, after, evidence } = lesson;
    let (now, then) = (with_band(parameter, after), with_band(parameter, before));
    let told = match parameter {
        Parameter::Vigour(_) => format!("{now} times that of the books"),
        Parameter::Lag => format!("{now} times as fast as is usual"),
        Parameter::Friction => format!("kneading warms a dough by {now}"),
        Parameter::Contact => format!("{now} times as good as is usual"),
    };
    let trials = if after.trials == 1 { "1 trial".to_owned() } else { format!("{} trials", after.trials) };
    let next = match parameter {
        Parameter::Friction => format!("{}\u{a0}K", print::number(after.next_band(), 1)),
        _ => format!("{}\u{a0}%", print::number(100.0 * after.next_band(), 0)),
    };
    let each: Vec<String> =
        evidence.iter().map(|one| format!("{} {}", report.called(one.trial), learnt(parameter, one.middle))).collect();
    [
        format!("{}, learnt from {trials}; before them {then}.", print::capital(&told)),
        format!("Trial by trial: {}. From one bake to the next it may still differ by {next}.", each.join("; ")),
        format!("Grounds: least squares between seen and foreseen; {}.", ground(parameter)),
    ]
}

/// How far off the forecast was, by the books and as learnt.
pub fn errors(report: &Report) -> Vec<String> {
    let mut all = Vec::new();
    for (what, name) in KINDS {
        let Some(errors) = report.lessons.errors(what) else { continue };
        let others = errors.apart.map(|apart| format!(", {} with each trial foreseen from the others alone", error(what, apart)));
        all.push(format!(
            "{} {name}: off by {} by the books, {} as learnt{}.",
            errors.count,
            error(what, errors.before),
            error(what, errors.after),
            others.unwrap_or_default()
        ));
    }
    all
}

/// What is said beside a trial's name.
pub fn remark(seen: &Seen) -> String {
    let left_out = seen.left_out.as_ref().map(|why| format!(" (left out: {why})")).unwrap_or_default();
    match seen.untold {
        0 => left_out,
        1 => format!("{left_out}; 1 reading before a clear rise or past the peak tells nothing of vigour"),
        more => format!("{left_out}; {more} readings before a clear rise or past the peak tell nothing of vigour"),
    }
}
