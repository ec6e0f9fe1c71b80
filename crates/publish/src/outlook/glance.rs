//! A forecast at a glance: the figures that a hand looks up to while it shapes a formula.

use super::known::{degrees, time, whole};
use crate::costing::money::money;
use crate::words::{Units, until, whole_gram};
use bench::forecast::{Cooking, Forecast, Pot, Rise, Surely, Verdict};
use bench::label::Label;
use formula::Formula;
use formula::arithmetic::{figures, overall};
use quantity::print;

/// One figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Glance {
    /// A name under which it stays the same figure while it changes.
    pub key: String,
    /// What it is.
    pub what: String,
    /// What it is now.
    pub figure: String,
    /// How it stands to what the formula says, or how sure it is; empty where there is nothing to say.
    pub beside: String,
    /// Whether it asks for a second look.
    pub minds: bool,
    /// Whether what stands beside it takes longer and follows.
    pub follows: bool,
}

/// The figures of a formula and its forecast.
#[must_use]
pub fn glance(formula: &Formula, forecast: &Forecast, units: Units) -> Vec<Glance> {
    let mut all = water(formula);
    for (r, rise) in forecast.rises.iter().enumerate() {
        all.extend(of_rise(rise, r, units));
    }
    all.extend(forecast.cookings.iter().enumerate().map(|(n, one)| of_cooking(one, n, units)));
    all.extend(forecast.pots.iter().enumerate().filter_map(|(n, one)| steam(formula, one, n)));
    all.extend(forecast.pots.iter().enumerate().filter_map(|(n, one)| of_pot(formula, one, n, units)));
    all.extend(forecast.keepings.iter().map(|one| {
        let title = &formula.components[one.component].title;
        let figure = time(one.fridge.value);
        plain(format!("keeps-{}", one.component), format!("{title}: in the fridge"), format!("at most {figure}"))
    }));
    all.extend(forecast.cost.as_ref().map(|cost| {
        let missing = if cost.missing.is_empty() { String::new() } else { format!("without {}", cost.missing.join(", ")) };
        let minds = !missing.is_empty();
        let (figure, of) = match cost.a_piece(cost.total()) {
            Some(piece) => (piece, "a piece"),
            None => (cost.total(), "in all"),
        };
        let figure = format!("{} {of}", money(figure, &cost.currency));
        Glance { beside: missing, minds, ..plain("cost".to_owned(), "Costs".to_owned(), figure) }
    }));
    all
}

/// What a label will have to set off, and what it cannot say yet.
#[must_use]
pub fn of_label(label: &Label) -> Glance {
    let names: Vec<&str> = label.allergens.iter().map(|one| one.title.as_str()).collect();
    let figure = if names.is_empty() { "no allergen of the law's list".to_owned() } else { names.join(", ") };
    let gaps = label.gaps.len();
    let beside = match gaps {
        0 => "a draft, nothing missing".to_owned(),
        1 => format!("a draft, one gap: {}", label.gaps[0]),
        more => format!("a draft with {more} gaps"),
    };
    Glance { beside, ..plain("label".to_owned(), "Set off on the label".to_owned(), figure) }
}

fn plain(key: String, what: String, figure: String) -> Glance {
    Glance { key, what, figure, beside: String::new(), minds: false, follows: false }
}

/// Water as the trade counts it, and all there is.
fn water(formula: &Formula) -> Vec<Glance> {
    let with_flour = (0..formula.components.len()).filter_map(|c| Some((c, figures(&overall(formula, c))?)));
    let told = with_flour.map(|(c, figures)| {
        let title = &formula.components[c].title;
        let figure = print::percent(figures.true_hydration.value, 1);
        let nominal = print::percent(figures.nominal_hydration, 1);
        let beside = format!("{nominal} as water alone");
        Glance { beside, ..plain(format!("water-{c}"), format!("{title}: true water"), figure) }
    });
    told.collect()
}

fn of_rise(rise: &Rise, r: usize, units: Units) -> Vec<Glance> {
    let mixed = rise.mixed.as_ref().map(|mixed| {
        let wanted = mixed.wanted.map(|wanted| format!("{} wanted", degrees(wanted, units))).unwrap_or_default();
        let off = mixed.wanted.map_or(0.0, |wanted| (wanted.as_celsius() - mixed.computed.value.as_celsius()).abs());
        let figure = degrees(mixed.computed.value, units);
        Glance { beside: wanted, minds: off > 1.5, ..plain(format!("mixed-{r}"), format!("{}: comes to", rise.title), figure) }
    });
    let steps = rise.steps.iter().enumerate().filter_map(|(s, step)| {
        let window = step.reached.as_ref()?;
        let condition = step.until.as_ref().map_or_else(|| "ready".to_owned(), |condition| until(condition, units));
        let (from, to) = (&window.from, &window.to);
        let figure = if from == to {
            format!("after {}", time(from.value))
        } else {
            format!("{} to {}", time(from.value), time(to.value))
        };
        let band = if from == to { from.band } else { None };
        let beside = match (step.verdict, band) {
            (Verdict::NotAsked, _) => String::new(),
            (verdict, Some((least, most))) => format!("{} to {}; {}", time(least), time(most), verdict.in_words()),
            (verdict, None) => verdict.in_words().to_owned(),
        };
        let minds = !matches!(step.verdict, Verdict::Agrees | Verdict::NotAsked | Verdict::PastAndUsable);
        Some(Glance { beside, minds, ..plain(format!("rise-{r}-{s}"), format!("{}: {condition}", rise.title), figure) })
    });
    mixed.into_iter().chain(steps).collect()
}

fn of_cooking(cooking: &Cooking, n: usize, units: Units) -> Glance {
    let range = cooking.core_range();
    let band = format!("{} to {}", whole(range.from, units), whole(range.to, units));
    let surely = match cooking.surely() {
        Surely::Enough => "",
        Surely::Usually => "; probe it",
        Surely::NotEnough => "; not surely safe: probe it",
    };
    let wanted = cooking.wanted.map(|wanted| format!(", {} wanted", whole(wanted, units))).unwrap_or_default();
    let what = format!("{}: the middle", print::capital(cooking.action.word()));
    let minds = cooking.surely() == Surely::NotEnough;
    let figure = whole(cooking.core.value, units);
    let follows = cooking.core.band.is_none();
    Glance { beside: format!("{band}{wanted}{surely}"), minds, follows, ..plain(format!("core-{n}"), what, figure) }
}

/// What leaves a pot as steam on this ring and in this pan, beside what its formula says.
fn steam(formula: &Formula, pot: &Pot, n: usize) -> Option<Glance> {
    let driven = pot.driven_off.as_ref()?.value;
    let figure = format!("{} to {}", whole_gram(driven.from), whole_gram(driven.to));
    let minds = pot.stated < driven.from || pot.stated > driven.to;
    let what = format!("{}: leaves as steam", formula.stage(pot.at).title);
    Some(Glance {
        beside: format!("{} by the formula", whole_gram(pot.stated)),
        minds,
        ..plain(format!("steam-{n}"), what, figure)
    })
}

fn of_pot(formula: &Formula, pot: &Pot, n: usize, units: Units) -> Option<Glance> {
    let pours = pot.pours.as_ref()?;
    let title = &formula.stage(pot.at).title;
    let thick = format!("{}\u{a0}Pa·s", print::number(pours.viscosity.value.as_pascal_seconds(), 2));
    let like = pours.like.map(|like| format!(" like {like}")).unwrap_or_default();
    let beside = format!("at {}{like}; {} sugar", degrees(pours.at, units), print::percent(pot.brix.1, 0));
    Some(Glance { beside, ..plain(format!("pours-{n}"), format!("{title}: pours at"), thick) })
}
