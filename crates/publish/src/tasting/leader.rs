//! The leader's sheet: what to set where, and the key to the codes, for nobody else's eyes.

use super::method_name;
use super::told::title;
use crate::words::wrap;
use bench::tasting::{Advice, SPREAD, Seat};
use formula::read::{Method, Tasting};
use quantity::print;

/// A table that is laid.
#[derive(Debug)]
pub struct Setting<'s> {
    /// The tasting.
    pub tasting: &'s Tasting,
    /// The seats, in order.
    pub seats: &'s [Seat],
    /// The seed they were drawn with.
    pub seed: &'s str,
    /// The link of each seat, where there are links.
    pub links: &'s [String],
}

/// How many cups of each sample are served.
#[must_use]
pub fn served(setting: &Setting) -> Vec<(String, usize)> {
    let count = |sample: usize| {
        let at = |seat: &Seat| {
            seat.cups.iter().filter(|cup| cup.sample == sample).count() + usize::from(seat.reference == Some(sample))
        };
        setting.seats.iter().map(at).sum()
    };
    setting.tasting.samples.iter().enumerate().map(|(sample, one)| (one.title.clone(), count(sample))).collect()
}

/// The panel that is advised, in a sentence.
#[must_use]
pub fn advice(tasting: &Tasting, advised: Option<Advice>) -> String {
    let percent = |share| print::percent(share, 0);
    let Some(advised) = advised else {
        return "No panel of up to five hundred would see so small a difference so surely: ask for less.".to_owned();
    };
    let difference = match tasting.method {
        _ if tasting.alike.is_some() => {
            let tolerated = tasting.alike.map(percent).unwrap_or_default();
            return format!(
                "To call two alike where at most {tolerated} of people tell them apart, at a risk of {}, takes {} tasters; with {} seats every serving order is used equally often, and two that are quite alike are called so {} times in 100.",
                percent(tasting.risk),
                advised.fewest,
                advised.seats,
                print::number(100.0 * advised.power.as_ratio(), 0)
            );
        }
        Method::Liking | Method::Description => {
            let points = if (tasting.apart - 1.0).abs() < 1e-9 { "point" } else { "points" };
            format!("{} {points} on a scale (answers taken to scatter by {SPREAD} points)", print::number(tasting.apart, 1))
        }
        Method::Ranking => {
            format!(
                "one of {} samples that {} of people truly tell from the others",
                tasting.samples.len(),
                percent(tasting.tell)
            )
        }
        _ => format!("a difference that {} of people truly tell", percent(tasting.tell)),
    };
    format!(
        "To see {difference}, at a risk of {}, takes {} tasters; with {} seats every serving order is used equally often, and such a difference is found {} times in 100.",
        percent(tasting.risk),
        advised.fewest,
        advised.seats,
        print::number(100.0 * advised.power.as_ratio(), 0)
    )
}

/// The leader's sheet, lines broken at the width.
#[must_use]
pub fn key(setting: &Setting, width: usize) -> String {
    let tasting = setting.tasting;
    let head = format!("{}: the leader’s sheet", tasting.title);
    let mut out = format!("{head}\n{}\n\n", "═".repeat(head.chars().count()));
    out.push_str(&wrap(
        &format!(
            "A {} at {} seats. Whoever reads this sheet tastes no more: keep it from tasters and from whoever serves them. Codes and orders are random (seed {}).",
            method_name(tasting.method),
            setting.seats.len(),
            setting.seed
        ),
        width,
    ));
    out.push_str("\nTo prepare\n");
    for (title, cups) in served(setting) {
        out.push_str(&format!("- {cups} of “{title}”\n"));
    }
    out.push_str("- all alike to the eye: size, dish, warmth, light; serve from left to right\n");
    if let Some(between) = between(tasting) {
        out.push_str(&wrap(&format!("- {between}"), width));
    }
    out.push_str("\nSeats\n");
    for (seat, number) in setting.seats.iter().zip(1_usize..) {
        let reference = seat.reference.map(|sample| format!("reference “{}”; ", title(tasting, sample))).unwrap_or_default();
        let cups: Vec<String> = seat.cups.iter().map(|cup| format!("{} “{}”", cup.code, title(tasting, cup.sample))).collect();
        out.push_str(&wrap(&format!("{number}. {reference}{}", cups.join(", ")), width));
        if let Some(link) = setting.links.get(number - 1) {
            out.push_str(&format!("   {link}\n"));
        }
    }
    if !setting.links.is_empty() {
        out.push('\n');
        out.push_str(&wrap("Each link opens one seat and nothing else. It is told this once: only its print is kept.", width));
    }
    out
}

/// What is done between two samples.
#[must_use]
pub fn meanwhile(tasting: &Tasting) -> Option<String> {
    let pause = tasting.pause.map(|pause| format!("wait {}", print::time(pause)));
    let rinse = tasting.rinse.as_ref().map(|rinse| format!("take {rinse}"));
    let both: Vec<String> = rinse.into_iter().chain(pause).collect();
    (!both.is_empty()).then(|| both.join(" and "))
}

/// The same, with when it is done.
#[must_use]
pub fn between(tasting: &Tasting) -> Option<String> {
    let when = match tasting.method {
        Method::DuoTrio => "after the reference and between two samples",
        _ => "between two samples",
    };
    meanwhile(tasting).map(|done| format!("{when} {done}"))
}
