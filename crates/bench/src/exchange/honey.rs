//! Sugar for honey, and back: the sweetness kept, the water corrected.

use super::desk::{Desk, water_of};
use super::{Exchange, Unfit, only, those};
use formula::ingredient::Figure;
use formula::read::Group;
use formula::{Formula, Ingredient, Line, Pantry};
use quantity::{Fraction, Mass, print};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "honey",
    about: "sugar for honey, or honey for sugar: equally sweet, the water corrected",
    asks: "--of the sugar or the honey; --into a honey (honey) or a sugar (sugar-caster); --share of it",
    grounds: "relative sweetness by Belitz, Grosch and Schieberle, Food Chemistry (from memory); sugars and water by the ingredient table",
    fits,
    offers,
    make,
};

fn offers(formula: &Formula, pantry: &Pantry) -> Vec<String> {
    let has = |is_so: fn(&Line) -> bool| formula.lines().any(|(_, line)| is_so(line));
    let honeys = only(has(is_sugar), those(pantry, |one| one.is_a("honey")));
    [honeys, only(has(is_honey), those(pantry, |one| one.group == Group::Sugar && one.is_a("sugar")))].concat()
}

/// Sweetness against the same weight of sucrose: Belitz, Grosch and Schieberle, Food Chemistry, table of sugars
/// equally sweet to a 10 % solution of sucrose; from memory. Others give fructose 1.1 to 1.7.
const SWEETNESS: [(Figure, f64); 6] = [
    (Figure::Sucrose, 1.0),
    (Figure::Fructose, 1.14),
    (Figure::Glucose, 0.69),
    (Figure::Galactose, 0.63),
    (Figure::Maltose, 0.46),
    (Figure::Lactose, 0.39),
];

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_sugar(line) || is_honey(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_sugar(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.group == Group::Sugar && one.is_a("sugar"))
}

fn is_honey(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_a("honey"))
}

/// How sweet a gram is against a gram of sucrose; sugars of which the source does not say which count as sucrose.
pub fn sweetness(one: &Ingredient) -> Option<f64> {
    let share = |figure| one.composition.share(figure).map(Fraction::as_ratio);
    let known: f64 = SWEETNESS.iter().filter_map(|(figure, sweet)| Some(share(*figure)? * sweet)).sum();
    let told: f64 = SWEETNESS.iter().filter_map(|(figure, _)| share(*figure)).sum();
    let all = share(Figure::Sugars).or_else(|| share(Figure::AvailableCarbohydrate))?;
    let sweet = known + (all - told).max(0.0);
    (sweet > 0.0).then_some(sweet)
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let (at, line) = desk.line("sugar or honey", |line| is_sugar(line) || is_honey(line))?;
    let one = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let to_honey = is_sugar(line);
    let into = desk.wanted_or(if to_honey { "honey" } else { "sugar-caster" })?;
    if to_honey != into.is_a("honey") {
        return Err(Unfit::NotSo(format!("“{}” is no {}", into.title, if to_honey { "honey" } else { "sugar" })));
    }
    let sweet =
        |one: &Ingredient| sweetness(one).ok_or_else(|| Unfit::NotSo(format!("no source gives the sugars of “{}”", one.title)));
    let share = desk.wishes.share.unwrap_or(Fraction::WHOLE);
    if !(share > Fraction::ZERO && share <= Fraction::WHOLE) {
        return Err(Unfit::NotSaid("--share above nothing and up to 100 %", "such as --share \"50 %\"".to_owned()));
    }
    let (own, rest) = (line.mass.value * share, line.mass.value * share.left());
    let mass = own * (sweet(&one)? / sweet(&into)?);
    let mut parts = vec![(Arc::clone(&into), mass)];
    if rest > Mass::ZERO {
        parts.insert(0, (Arc::clone(&one), rest));
    }
    let names = desk.swap(at, line, &parts, &["temperature", "after-scaling"]);
    let more = mass * water_of(&into) - own * water_of(&one);
    desk.change_water(at, -more, names.last().map_or("", String::as_str))?;
    told(desk, to_honey, own, mass, &one, &into);
    Ok(())
}

fn told(desk: &mut Desk, to_honey: bool, own: Mass, mass: Mass, one: &Ingredient, into: &Ingredient) {
    let sugars = |one: &Ingredient, mass: Mass| mass * one.composition.share(Figure::Sugars).unwrap_or(Fraction::WHOLE);
    let (before, after) = (sugars(one, own), sugars(into, mass));
    desk.minded.push(format!(
        "equally sweet by a published table; fructose tastes sweeter in the cold, and sources differ by a fifth: {} of sugars where there were {}",
        print::mass(after),
        print::mass(before)
    ));
    if to_honey {
        desk.lost.push("honey's own acid and flavour come in; it browns sooner, so that guides bake some 15 °C cooler (university extension advice, 25 °F)".to_owned());
        desk.minded.push("honey, and food made with it, is not for children under one year, because of infant botulism; follow local health advice".to_owned());
    } else {
        desk.lost.push("honey's flavour and acid, and some of the moisture that it keeps in the crumb".to_owned());
    }
}
