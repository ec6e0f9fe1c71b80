//! How lively each leaven was over the weeks: for the terminal and as a drawing.

use super::Report;
use super::figures::learnt;
use crate::words::wrap;
use bench::calibration::{Evidence, Lesson, Parameter, drift};
use bench::forecast::BAND;
use maud::{Markup, html};
use quantity::print;

/// Columns of a strip to either side of the books.
const SIDE: i32 = 20;
/// A strip and a drawing reach from a third to three times the books.
const REACH: f64 = 1.1;

/// The leavens that were told of by trials with a day, each with its trials in their order.
fn leavens<'r>(report: &'r Report) -> Vec<(&'r Lesson, Vec<(f64, &'r Evidence)>)> {
    let of = |lesson: &'r Lesson| {
        let dated = lesson.evidence.iter().filter_map(|one| Some((day(report, one.trial)?, one))).collect::<Vec<_>>();
        (matches!(lesson.parameter, Parameter::Vigour(_)) && !dated.is_empty()).then_some((lesson, dated))
    };
    report.lessons.lessons.iter().filter_map(of).collect()
}

/// The day of a trial, counted from the beginning of 1970.
pub fn day(report: &Report, trial: usize) -> Option<f64> {
    let date = report.trials.get(trial)?.date?;
    let date =
        jiff::civil::Date::new(i16::try_from(date.year).ok()?, i8::try_from(date.month).ok()?, i8::try_from(date.day).ok()?)
            .ok()?;
    Some(f64::from((date - jiff::civil::date(1970, 1, 1)).get_days()))
}

fn written(report: &Report, trial: usize) -> String {
    report.trials.get(trial).and_then(|trial| trial.date).map(|date| date.to_string()).unwrap_or_default()
}

/// What is to be said of a leaven's drift.
fn in_words(report: &Report, lesson: &Lesson) -> String {
    let percent = |share: f64| print::number(100.0 * (libm::exp(share) - 1.0).abs(), 0);
    match drift(lesson, |trial| day(report, trial)) {
        None => "Three trials on different days tell of a drift.".to_owned(),
        Some(drift) if drift.is_told() => {
            let way = if drift.a_week > 0.0 { "livelier" } else { "weaker" };
            format!("It grows {way} by {}\u{a0}% a week (give or take {}).", percent(drift.a_week), percent(BAND * drift.error))
        }
        Some(drift) => {
            let sign = if drift.a_week < 0.0 { "−" } else { "" };
            format!(
                "{sign}{}\u{a0}% a week, give or take {}: no drift to be told from chance.",
                percent(drift.a_week),
                percent(BAND * drift.error)
            )
        }
    }
}

/// The strips of all leavens, a line each trial.
pub fn text(report: &Report, width: usize) -> String {
    let all = leavens(report);
    if all.is_empty() {
        return String::new();
    }
    let mut out = format!("\nFrom week to week\n{}\n", "─".repeat(17));
    out.push_str(&wrap("In the middle │ the books; ● the trial by itself, ─ how far its readings leave that open. From a third to three times as lively.", width));
    for (lesson, trials) in all {
        let name = print::capital(&report.name(&lesson.parameter));
        out.push_str(&wrap(&format!("\n{name}. {}", in_words(report, lesson)), width));
        for (_, one) in trials {
            out.push_str(&format!(
                "    {:<12}{}  {}\n",
                written(report, one.trial),
                strip(one),
                learnt(&lesson.parameter, one.middle)
            ));
        }
    }
    out
}

fn strip(one: &Evidence) -> String {
    let column = |middle: f64| ((middle / REACH).clamp(-1.0, 1.0) * f64::from(SIDE)).round() as i32;
    let (low, here, high) = (column(one.middle - BAND * one.error), column(one.middle), column(one.middle + BAND * one.error));
    let mark = |at: i32| match at {
        at if at == here => '●',
        0 => '│',
        at if (low..=high).contains(&at) => '─',
        _ => '·',
    };
    (-SIDE..=SIDE).map(mark).collect()
}

/// Width and height of a leaven's drawing, and its margins.
const SIZE: (f64, f64) = (720.0, 260.0);
const LEFT: f64 = 84.0;
const RIGHT: f64 = 20.0;
const TOP: f64 = 56.0;
const BOTTOM: f64 = 40.0;
/// The lines across: times the books.
const LINES: [f64; 5] = [0.5, 0.75, 1.0, 1.5, 2.0];

/// A drawing of every leaven's liveliness over the days, one below the other; nothing where none was told of.
#[must_use]
pub fn drawing(report: &Report) -> Option<String> {
    let all = leavens(report);
    let height = SIZE.1 * all.len() as f64;
    let parts = all.iter().enumerate().map(|(row, (lesson, trials))| part(report, lesson, trials, SIZE.1 * row as f64));
    let drawn = html! {
        svg xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {} {height}", SIZE.0)) width=(SIZE.0) height=(height)
            role="img" aria-labelledby="title" font-family="system-ui, sans-serif" font-size="13" {
            title id="title" { "How lively the leavens of " (report.kitchen) " were from trial to trial" }
            style { "svg{color:#222;background:#fff}@media(prefers-color-scheme:dark){svg{color:#eee;background:#191714}}" }
            @for part in parts { (part) }
        }
    };
    (!all.is_empty()).then(|| drawn.into_string())
}

/// The drawing of each leaven by itself, in the colours of the page on which it stands, with what it says in words.
pub fn charts(report: &Report) -> Vec<(String, Markup)> {
    let drawn = |(lesson, trials): &(&Lesson, Vec<(f64, &Evidence)>)| {
        let told = in_words(report, lesson);
        let name = print::capital(&report.name(&lesson.parameter));
        let chart = html! {
            svg viewBox=(format!("0 0 {} {}", SIZE.0, SIZE.1)) role="img" aria-label={ (name) " from trial to trial. " (told) } font-size="13" {
                (part(report, lesson, trials, 0.0))
            }
        };
        (format!("{name}. {told}"), chart)
    };
    leavens(report).iter().map(drawn).collect()
}

fn part(report: &Report, lesson: &Lesson, trials: &[(f64, &Evidence)], top: f64) -> Markup {
    let (first, last) = (trials.first().map_or(0.0, |one| one.0), trials.last().map_or(0.0, |one| one.0));
    let span = (last - first).max(1.0);
    let x = |day: f64| LEFT + 20.0 + (SIZE.0 - LEFT - RIGHT - 60.0) * (day - first) / span;
    let y = |middle: f64| {
        let inner = SIZE.1 - TOP - BOTTOM;
        top + TOP + inner * (0.5 - 0.5 * (middle / 0.9).clamp(-1.0, 1.0))
    };
    let tenth = |value: f64| format!("{value:.1}");
    let known = &lesson.after;
    let (above, below) = (y(known.middle + known.own_band()), y(known.middle - known.own_band()));
    html! {
        text x=(LEFT) y=(tenth(top + 20.0)) font-weight="600" fill="currentColor" { (print::capital(&report.name(&lesson.parameter))) }
        text x=(LEFT) y=(tenth(top + 38.0)) fill="currentColor" { (in_words(report, lesson)) }
        rect x=(LEFT) y=(tenth(above)) width=(SIZE.0 - LEFT - RIGHT) height=(tenth((below - above).max(1.0))) fill="currentColor" fill-opacity="0.1" {}
        @for line in LINES {
            @let at = y(libm::log(line));
            line x1=(LEFT) x2=(SIZE.0 - RIGHT) y1=(tenth(at)) y2=(tenth(at)) stroke="currentColor" stroke-opacity=(if line == 1.0 { "0.8" } else { "0.25" }) {}
            text x=(LEFT - 8.0) y=(tenth(at + 4.0)) text-anchor="end" fill="currentColor" {
                @if line == 1.0 { "the books" } @else { "× " (print::number(line, 2)) }
            }
        }
        @for (day, one) in trials {
            @let at = tenth(x(*day));
            line x1=(at) x2=(at) y1=(tenth(y(one.middle - BAND * one.error))) y2=(tenth(y(one.middle + BAND * one.error)))
                stroke="currentColor" stroke-width="2" {}
            circle cx=(at) cy=(tenth(y(one.middle))) r="5" fill="currentColor" {
                title { (report.called(one.trial)) ": " (learnt(&lesson.parameter, one.middle)) }
            }
        }
        @for (place, (day, one)) in trials.iter().enumerate() {
            // Days that stand close together are named once.
            @if place == 0 || x(*day) - x(trials[place - 1].0) > 90.0 {
                text x=(tenth(x(*day))) y=(tenth(top + SIZE.1 - BOTTOM + 20.0)) text-anchor="middle" fill="currentColor" { (written(report, one.trial)) }
            }
        }
    }
}
