//! Forecasts beside each other: when preferments are ripe, when doughs have risen, how hot the middle gets.

use super::grade::Step;
use super::{Courses, Row, Unit};
use crate::forecast::{Forecast, Foreseen, Point, Rise};
use formula::read::Condition;
use formula::{Formula, Known};
use quantity::{Temperature, TimeSpan};

/// Times are noticed from a sixth on, cores from two degrees: common practice, no source.
const TIME: Step = Step::Share(1.0 / 6.0);
const CORE: Step = Step::Points(2.0);

/// A figure of a forecast: what it is of, in what unit, and the figure.
type Told = (String, Unit, Known<f64>);

/// The rows of a component's forecasts; a row of one formula belongs to the row of the same words of another.
pub fn rows(formulas: &[&Formula], at: &[Option<usize>], forecasts: &[Forecast]) -> Vec<Row> {
    let each = formulas.iter().zip(forecasts).zip(at);
    let told: Vec<Vec<Told>> =
        each.map(|((one, forecast), at)| at.map_or_else(Vec::new, |at| figures(one, at, forecast))).collect();
    let mut titles: Vec<(&str, Unit)> = Vec::new();
    for (title, unit, _) in told.iter().flatten() {
        if !titles.iter().any(|(known, _)| known == title) {
            titles.push((title, *unit));
        }
    }
    let row = |(title, unit): (&str, Unit)| {
        let cell = |one: &Vec<Told>| one.iter().find(|(known, ..)| known == title).map(|(.., value)| value.clone());
        Row::new(title.to_owned(), unit, told.iter().map(cell).collect(), if unit == Unit::Celsius { CORE } else { TIME })
    };
    titles.into_iter().map(row).collect()
}

fn figures(formula: &Formula, component: usize, forecast: &Forecast) -> Vec<Told> {
    let mut told: Vec<Told> = Vec::new();
    for rise in forecast.rises.iter().filter(|rise| rise.at.0 == component) {
        let whose = whose(formula, rise);
        for step in &rise.steps {
            told.extend(step_figures(whose, step));
        }
    }
    for cooking in forecast.cookings.iter().filter(|cooking| cooking.at.0 == component) {
        let celsius = |(from, to): (Temperature, Temperature)| (from.as_celsius(), to.as_celsius());
        let Known { value, band, origin } = cooking.core.clone();
        let core = Known { value: value.as_celsius(), band: band.map(celsius), origin };
        told.push((format!("{}: core", cooking.action.word()), Unit::Celsius, core));
    }
    numbered(told)
}

/// Preferments of another kind stand in each other's place; a dough goes by the word of its step.
fn whose(formula: &Formula, rise: &Rise) -> &'static str {
    if formula.stage(rise.at).kind.is_preferment() { "preferment" } else { "dough" }
}

/// How each rise of a component goes, a formula's first dough beside another's first.
pub fn courses(formulas: &[&Formula], at: &[Option<usize>], forecasts: &[Forecast]) -> Vec<Courses> {
    let mut all: Vec<Courses> = Vec::new();
    for (f, ((formula, forecast), at)) in formulas.iter().zip(forecasts).zip(at).enumerate() {
        let rises = forecast.rises.iter().filter(|rise| Some(rise.at.0) == *at && !rise.points.is_empty());
        for rise in rises {
            let whose = if rise.mixed.is_none() { "shaped dough" } else { whose(formula, rise) };
            let points: Vec<Point> = rise.points.clone();
            match all.iter_mut().find(|one| one.whose == whose && one.of[f].is_empty()) {
                Some(one) => one.of[f] = points,
                None => {
                    let mut of = vec![Vec::new(); formulas.len()];
                    of[f] = points;
                    all.push(Courses { whose, of });
                }
            }
        }
    }
    all
}

fn step_figures(whose: &str, step: &Foreseen) -> Vec<Told> {
    let action = step.action.word();
    let hours = |known: &Known<TimeSpan>| Known {
        value: known.value.as_hours(),
        band: known.band.map(|(from, to)| (from.as_hours(), to.as_hours())),
        origin: known.origin.clone(),
    };
    match (&step.reached, &step.until) {
        (Some(window), Some(Condition::RisenBy(_))) => {
            vec![(format!("{whose}, {action}: risen as asked after"), Unit::Hours, hours(&window.from))]
        }
        (Some(window), _) => vec![
            (format!("{whose}, {action}: ripe from"), Unit::Hours, hours(&window.from)),
            (format!("{whose}, {action}: ripe until"), Unit::Hours, hours(&window.to)),
        ],
        (None, _) => Vec::new(),
    }
}

/// The same words twice are told apart by a number.
fn numbered(told: Vec<Told>) -> Vec<Told> {
    let mut out: Vec<Told> = Vec::new();
    for (title, unit, value) in told {
        let before =
            out.iter().filter(|(known, ..)| known.strip_suffix(char::is_numeric).unwrap_or(known).trim() == title).count();
        let title = if before > 0 { format!("{title} {}", before + 1) } else { title };
        out.push((title, unit, value));
    }
    out
}
