//! What is known of each line that a reader may measure otherwise: its density, its eggs.

use crate::needs::needs;
use crate::tongue::Tongue;
use crate::words::Units;
use formula::ingredient::eggs::{self, EggPart};
use formula::read::{BookSettings, EggSize, Group};
use formula::{Formula, Ingredient};
use quantity::Mass;
use serde_json::{Map, Value, json};

/// Of each line and each need by its key: density `d` in gram a millilitre, `w` for plain water, part of an egg `e`
/// with its size class `size`, `n` pieces and what one and more of them are called.
pub fn lines(formula: &Formula, settings: &BookSettings) -> Value {
    let tongue = Tongue::of(&settings.language);
    let mut all = Map::new();
    for (c, component) in formula.components.iter().enumerate() {
        for (s, stage) in component.stages.iter().enumerate() {
            for (l, line) in stage.lines.iter().enumerate() {
                let Some(one) = line.ingredient() else { continue };
                let (single, more) = (quantity::Count::pieces(1.0), quantity::Count::pieces(2.0));
                let called = [single, more].map(|count| crate::words::counted_title(line, count, tongue));
                let told = told(one, line.egg_size(settings.eggs), line.pieces.is_some());
                put(&mut all, format!("{c}.{s}.{l}"), told, line.pieces.map(|_| called));
            }
        }
        for (n, need) in needs(formula, c, Units::for_readers(settings), settings.eggs).iter().enumerate() {
            if let Some(one) = &need.ingredient {
                let called = need.pieces.map(|_| [tongue.piece().to_owned(), tongue.pieces().to_owned()]);
                put(&mut all, format!("n.{c}.{n}"), told(one, need.egg, need.pieces.is_some()), called);
            }
        }
    }
    Value::Object(all)
}

fn put(all: &mut Map<String, Value>, key: String, mut told: Map<String, Value>, called: Option<[String; 2]>) {
    if let Some([one, more]) = called {
        told.insert("called".into(), json!([one, more]));
    }
    if !told.is_empty() {
        all.insert(key, Value::Object(told));
    }
}

fn told(one: &Ingredient, size: EggSize, counted: bool) -> Map<String, Value> {
    let mut told = Map::new();
    if one.group == Group::Egg {
        told.insert("e".into(), json!(part(one)));
        told.insert("size".into(), json!(size.word()));
        return told;
    }
    // What is counted is not spooned.
    if let Some((density, _)) = one.density.as_ref().filter(|_| !counted) {
        told.insert("d".into(), super::short(density.as_grams_per_millilitre()));
    }
    if one.is_water() {
        told.insert("w".into(), json!(1));
    }
    told
}

const fn index(part: EggPart) -> usize {
    match part {
        EggPart::Whole => 0,
        EggPart::White => 1,
        EggPart::Yolk => 2,
    }
}

fn part(one: &Ingredient) -> usize {
    index(one.piece_of_egg())
}

/// What an egg, a white and a yolk of each size class weigh, where the formula has egg in it.
pub fn eggs(formula: &Formula, usual: EggSize) -> Value {
    let kinds: Vec<&Ingredient> = formula
        .lines()
        .filter_map(|(_, line)| line.ingredient())
        .map(|one| &**one)
        .filter(|one| one.group == Group::Egg)
        .collect();
    if kinds.is_empty() {
        return Value::Null;
    }
    let weights = EggSize::WORDS.iter().filter_map(|word| Some((word, EggSize::named(word)?))).map(|(word, size)| {
        let mut three = [Value::Null, Value::Null, Value::Null];
        for one in &kinds {
            three[part(one)] = json!(eggs::one(one, size).map(Mass::as_grams));
        }
        ((*word).to_owned(), json!(three))
    });
    json!({ "usual": usual.word(), "weigh": Value::Object(weights.collect()) })
}
