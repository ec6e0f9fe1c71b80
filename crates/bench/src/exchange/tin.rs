//! Another pan or tin: everything by the ratio of volumes, or of areas where the depth stays.

use super::desk::Desk;
use super::manuscript::Part;
use super::{Exchange, Unfit, balance::grams};
use formula::Formula;
use formula::read::tin_volume;
use quantity::{Area, Length, Mass, SpoonSystem, Volume, print};

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "tin",
    about: "another pan or tin: by volume, or by area where the depth stays",
    asks: "--into a tin (\"23 x 13 x 7 cm\", \"round 24 x 6 cm\", \"2 l\") or an area (\"round 26 cm\", \"20 x 30 cm\"); --from the old one where the formula does not say; --count of the new",
    grounds: "the ratio of volumes, or of areas at the same depth",
    fits,
    offers: |_, _| Vec::new(),
    make,
};

fn fits(formula: &Formula) -> Vec<String> {
    formula.components.first().filter(|one| one.yields.tin.is_some()).map(|one| one.name.clone()).into_iter().collect()
}

/// What a pan is known by.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Pan {
    Volume(Volume),
    Area(Area),
}

/// Reads a pan: three sides or a content are a volume, two sides or a diameter an area.
fn pan(text: &str) -> Option<Pan> {
    if let Some(volume) = tin_volume(text) {
        return Some(Pan::Volume(volume));
    }
    let (round, sides) = text.strip_prefix("round ").map_or((false, text), |rest| (true, rest));
    let sides: Vec<&str> = sides.split(['x', '×']).map(str::trim).collect();
    let unit = sides.last()?.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == ',').trim().to_owned();
    let length = |side: &str| {
        let written = if side.ends_with(|c: char| c.is_ascii_digit()) { format!("{side} {unit}") } else { side.to_owned() };
        written.parse::<quantity::Measure>().ok()?.length(SpoonSystem::Metric).map(|range| range.to)
    };
    let area = |a: Length, b: Length| Area::square_centimetres(a.as_centimetres() * b.as_centimetres());
    match (round, &sides[..]) {
        (true, [across]) => Some(Pan::Area(area(length(across)?, length(across)?) * (std::f64::consts::PI / 4.0))),
        (false, [a, b]) => Some(Pan::Area(area(length(a)?, length(b)?))),
        _ => None,
    }
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let how = "write \"23 x 13 x 7 cm\", \"round 20 x 5 cm\", \"2 l\", or for the same depth \"round 26 cm\" or \"20 x 30 cm\"";
    let said = |text: &Option<String>| match text.as_deref() {
        None => Ok(None),
        Some(text) => pan(text).map(Some).ok_or_else(|| Unfit::NotSaid("a tin", format!("“{text}” is none: {how}"))),
    };
    let component =
        desk.before.components.first().ok_or_else(|| Unfit::Nothing { wanted: "component".to_owned(), has: Vec::new() })?;
    let own = component.yields.tin;
    let into = said(&desk.wishes.into)?.ok_or_else(|| Unfit::NotSaid("--into, the new tin", how.to_owned()))?;
    let from = match (said(&desk.wishes.from)?, own) {
        (Some(from), _) => from,
        (None, Some((volume, _))) => Pan::Volume(volume),
        (None, None) => return Err(Unfit::NotSaid("--from, the old tin", format!("the formula does not state its tin; {how}"))),
    };
    let tins = own.map_or(1.0, |(_, tins)| tins.as_pieces());
    let count = desk.wishes.count.unwrap_or(tins);
    let one = match (into, from) {
        (Pan::Volume(into), Pan::Volume(from)) => into / from,
        (Pan::Area(into), Pan::Area(from)) => into / from,
        _ => return Err(Unfit::NotSo("one pan is given by its volume and the other by its area: give both alike".to_owned())),
    };
    let factor = one * count / tins;
    if !(factor.is_finite() && factor > 1e-3 && factor < 1e3) {
        return Err(Unfit::NotSo("no kitchen has a tin of that size".to_owned()));
    }
    grow(desk, factor);
    write_yield(desk, factor, one, count);
    told(desk, factor, matches!(into, Pan::Area(_)));
    Ok(())
}

/// Every line of the main component that many times, and of the components that go into it; what is kept back for
/// next time stays as it is.
pub fn grow(desk: &mut Desk, factor: f64) {
    let inside = components_inside(desk.before);
    for (at, stage) in desk.before.stages().filter(|(at, _)| inside.contains(&at.0)) {
        let whole = stage.made() + stage.kept_back;
        let by = if stage.kept_back > Mass::ZERO { (stage.made() * factor + stage.kept_back) / whole } else { factor };
        for line in &stage.lines {
            let has = desk.balance.get(at, &line.name);
            if has > Mass::ZERO {
                desk.balance.set(at, &line.name, has * by);
            }
        }
    }
}

/// The main component and those whose products go into it, as a filling does.
fn components_inside(formula: &Formula) -> Vec<usize> {
    let mut inside = vec![0];
    let mut next = 0;
    while let Some(component) = inside.get(next).copied() {
        next += 1;
        for used in formula.components[component].stages.iter().flat_map(formula::Stage::uses) {
            if !inside.contains(&used.0) {
                inside.push(used.0);
            }
        }
    }
    inside
}

/// Pieces, servings and weight of a main component so many times as large; of a tin a piece `count` tins, each `one`
/// times as large.
pub fn write_yield(desk: &mut Desk, factor: f64, one: f64, count: f64) {
    let yields = &desk.before.components[0].yields;
    let was = yields.tin.map(|(_, tins)| tins);
    let part = Part::Yield(0);
    let whole = |number: f64| print::number(number.round().max(1.0), 0);
    // A tin a piece: the pieces are the tins, each larger; else there are more pieces of the same weight.
    let is_tin_a_piece = was.is_some() && was == yields.pieces;
    if let Some(pieces) = yields.pieces {
        let now = if is_tin_a_piece { count } else { (pieces.as_pieces() * factor).round().max(1.0) };
        desk.manuscript.set_if_there(part, "pieces", &print::number(now, 2));
        if let Some(weight) = yields.scaling_weight {
            let now = if is_tin_a_piece { weight * one } else { weight * (pieces.as_pieces() * factor / now) };
            desk.manuscript.set_if_there(part, "scaling-weight", &grams(now));
        }
    }
    if let Some(serves) = yields.serves {
        desk.manuscript.set_if_there(part, "serves", &whole(serves.as_pieces() * factor));
    }
    desk.manuscript.set_if_there(part, "total", &grams(yields.raw() * factor));
    let Some(into) = desk.wishes.into.clone().filter(|into| tin_volume(into).is_some()) else { return };
    let old = desk.manuscript.get(part, "tin");
    desk.manuscript.set_if_there(part, "tin", &into);
    desk.manuscript.set_if_there(part, "tins", &print::number(count, 2));
    // A sentence that names the old tin as a figure names the new one.
    if let Some(old) = old {
        for s in 0..desk.before.components[0].stages.len() {
            let is_figure = into.parse::<quantity::Measure>().is_ok();
            desk.manuscript.rewrite_steps((0, s), |text| {
                if is_figure {
                    text.replace(&format!("{{{old}}}"), &format!("{{{into}}}"))
                } else {
                    text.replace(&format!("{{{old}}}"), &into)
                }
            });
        }
    }
}

fn told(desk: &mut Desk, factor: f64, same_depth: bool) {
    desk.minded.push(format!(
        "{} times as much of the main component and what goes into it; what is served beside it is as it was",
        print::number(factor, 3)
    ));
    if same_depth {
        desk.minded.push("the depth is the same, and so nearly is the time of baking".to_owned());
    } else {
        desk.lost.push("the time of baking: a deeper tin takes longer, by the square of the thickness where it is otherwise alike; go by the core".to_owned());
    }
    if desk.before.components[0].stages.iter().flat_map(|stage| &stage.lines).any(|line| line.pieces.is_some()) {
        desk.minded.push("what was counted is written by weight now".to_owned());
    }
}

#[cfg(test)]
mod tests {
    use super::{Pan, pan};

    #[test]
    fn pans_by_volume_and_by_area() {
        for (text, square_centimetres) in [("20 x 30 cm", 600.0), ("round 20 cm", 314.159), ("round 8 in", 324.293)] {
            let Some(Pan::Area(area)) = pan(text) else { panic!("{text}: {:?}", pan(text)) };
            assert!((area.as_square_centimetres() - square_centimetres).abs() < 0.01, "{text}: {area:?}");
        }
        assert!(matches!(pan("23 x 13 x 7 cm"), Some(Pan::Volume(_))));
        assert!(pan("a large one").is_none() && pan("round x cm").is_none());
    }
}
