//! What trials taught for other programs: hours, shares and degrees Celsius, unrounded.

use super::figures::KINDS;
use super::{Report, ground};
use bench::calibration::{Compared, Lesson, Parameter, Seen, What, drift};
use bench::forecast::Learnt;
use serde_json::{Map, Value, json};

/// The report as JSON.
#[must_use]
pub fn json(report: &Report) -> Value {
    let errors: Map<String, Value> = KINDS
        .iter()
        .filter_map(|(what, name)| {
            let errors = report.lessons.errors(*what)?;
            let scale = if what.by_ratio() { "logarithm" } else { "kelvin" };
            let one = json!({
                "figures": errors.count, "scale": scale, "by-the-books": errors.before, "as-learnt": errors.after,
                "from-the-others-alone": errors.apart,
            });
            Some(((*name).to_owned(), one))
        })
        .collect();
    let trials = report.trials.iter().zip(&report.lessons.trials);
    json!({
        "kitchen": report.kitchen,
        "learnt": report.lessons.lessons.iter().map(|lesson| learnt(report, lesson)).collect::<Vec<_>>(),
        "errors": errors,
        "trials": trials.enumerate().map(|(at, (trial, seen))| self::trial(report, at, trial, seen)).collect::<Vec<_>>(),
        "asked": report.lessons.questions().iter().map(|one| {
            let compared = &report.lessons.trials[one.trial].figures[one.figure];
            json!({
                "trial": report.trials.get(one.trial).map(|trial| trial.name.as_str()), "figure": super::figures::label(&compared.seen),
                "stage": compared.seen.title, "seen": compared.seen.seen, "expected": one.expected, "instead": one.instead,
            })
        }).collect::<Vec<_>>(),
    })
}

fn learnt(report: &Report, lesson: &Lesson) -> Value {
    let parameter = &lesson.parameter;
    let scale = |middle: f64| if parameter.is_factor() { libm::exp(middle) } else { middle };
    let known = |known: &Learnt| {
        let band = [scale(known.middle - known.own_band()), scale(known.middle + known.own_band())];
        json!({ "value": scale(known.middle), "band": band, "trials": known.trials, "next-bake-give-or-take": known.next_band() })
    };
    let name = |trial: usize| report.trials.get(trial).map(|trial| trial.name.as_str());
    let evidence =
        lesson.evidence.iter().map(|one| json!({ "trial": name(one.trial), "value": scale(one.middle), "error": one.error }));
    let drift = drift(lesson, |trial| super::drift::day(report, trial)).filter(|_| matches!(parameter, Parameter::Vigour(_)));
    let strange = lesson.out_of_line().map(|(trial, apart)| json!({ "trial": name(trial), "standard-deviations": apart }));
    json!({
        "figure": report.name(parameter),
        "unit": if parameter.is_factor() { "times the usual" } else { "K" },
        "before": known(&lesson.before),
        "after": known(&lesson.after),
        "evidence": evidence.collect::<Vec<_>>(),
        "out-of-line": strange.collect::<Vec<_>>(),
        "drift-a-week": drift.map(|one| json!({ "value": libm::exp(one.a_week), "logarithm": one.a_week, "error": one.error, "is-told": one.is_told() })),
        "grounds": ground(parameter),
    })
}

fn trial(report: &Report, at: usize, trial: &formula::read::Trial, seen: &Seen) -> Value {
    let taught = report.lessons.lessons.iter().filter_map(|lesson| {
        let (before, after) = lesson.step(at)?;
        let scale = |known: &Learnt| {
            let scale = |middle: f64| if lesson.parameter.is_factor() { libm::exp(middle) } else { middle };
            json!({ "value": scale(known.middle), "band": [scale(known.middle - known.own_band()), scale(known.middle + known.own_band())] })
        };
        Some(json!({ "figure": report.name(&lesson.parameter), "before": scale(&before), "after": scale(&after) }))
    });
    json!({
        "name": trial.name,
        "title": trial.title,
        "date": trial.date.map(|date| date.to_string()),
        "formula": trial.formula.value,
        "revision": trial.revision,
        "left-out": seen.left_out,
        "readings-that-tell-nothing": seen.untold,
        "taught": taught.collect::<Vec<_>>(),
        "figures": seen.figures.iter().map(figure).collect::<Vec<_>>(),
    })
}

fn figure(one: &Compared) -> Value {
    let unit = match one.seen.what {
        What::Risen => "times the volume",
        What::Doubled | What::Ripe => "hours",
        What::Dough | What::Bowl | What::Core => "celsius",
    };
    json!({
        "figure": super::figures::label(&one.seen),
        "stage": one.seen.title,
        "step": one.seen.step.word(),
        "after-hours": one.seen.after.map(quantity::TimeSpan::as_hours),
        "unit": unit,
        "seen": one.seen.seen,
        "by-the-books": one.before,
        "as-learnt": one.after,
        "foreseen-then": one.then,
        "from-the-others-alone": one.apart,
    })
}
