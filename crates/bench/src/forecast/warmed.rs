//! Part of a stage warmed on its own, and the cold rest stirred into it: butter melted in half of the milk.

use super::midway;
use formula::resolve::formula::Word;
use formula::{Known, Stage, Step};
use quantity::{Mass, SpecificHeat, Temperature};
use std::collections::BTreeMap;

/// What was warmed, and what it comes to when the rest has joined it.
#[derive(Clone, Debug)]
pub struct Warmed {
    /// The titles of what was warmed.
    pub heated: Vec<String>,
    /// How warm.
    pub to: Temperature,
    /// The titles of what joined it afterwards.
    pub joined: Vec<String>,
    /// What all of it comes to, before it cools in the air.
    pub comes_to: Known<Temperature>,
}

/// Warmer than this, yeast is harmed: common practice, no source.
pub const HARMS_YEAST: Temperature = Temperature::celsius(45.0);
/// Warmer than this, egg begins to set: common practice, no source.
pub const SETS_EGG: Temperature = Temperature::celsius(60.0);

/// A line's part in the bowl: its mass, specific heat and temperature when it joins.
pub type Portions = BTreeMap<usize, (Mass, SpecificHeat, Temperature)>;

/// Finds what the steps of a stage warm, and lets it come together in `portions`.
pub fn warmed(stage: &Stage, number: usize, portions: &mut Portions) -> Vec<Warmed> {
    stage.steps.iter().filter_map(|step| in_step(stage, number, step, portions)).collect()
}

fn in_step(stage: &Stage, number: usize, step: &Step, portions: &mut Portions) -> Option<Warmed> {
    if !matches!(step.action, formula::read::Action::Warm | formula::read::Action::Melt) {
        return None;
    }
    let turn = step.words.iter().position(|word| temperature(step, word).is_some())?;
    let to = temperature(step, &step.words[turn])?;
    let heated = parts(&step.words[..turn], number);
    let joined = parts(&step.words[turn..], number);
    if heated.is_empty() {
        return None;
    }
    let (mut heat, mut capacity) = (0.0, 0.0);
    let mut add = |line: usize, mass: Mass, at: Option<Temperature>, portions: &Portions| {
        if let Some((_, specific, own)) = portions.get(&line) {
            let one = mass.as_kilograms() * specific.as_joules_per_kilogram_kelvin();
            capacity += one;
            heat += one * at.unwrap_or(*own).as_celsius();
        }
    };
    for (line, mass) in &heated {
        add(*line, *mass, Some(to), portions);
    }
    for (line, mass) in &joined {
        add(*line, *mass, None, portions);
    }
    if capacity <= 0.0 {
        return None;
    }
    let comes_to = Temperature::celsius(heat / capacity);
    let mut together: BTreeMap<usize, Mass> = BTreeMap::new();
    for (line, mass) in heated.iter().chain(&joined) {
        let sum = together.entry(*line).or_default();
        *sum += *mass;
    }
    for (line, warm) in together {
        if let Some((mass, _, temperature)) = portions.get_mut(&line) {
            let share = (warm / *mass).clamp(0.0, 1.0);
            let mixed = temperature.as_celsius() + share * (comes_to.as_celsius() - temperature.as_celsius());
            *temperature = Temperature::celsius(mixed);
        }
    }
    let titles = |lines: &[(usize, Mass)]| lines.iter().map(|(line, _)| stage.lines[*line].title.clone()).collect();
    let source = science::heat::mixing_temperature::EQUATION.name;
    Some(Warmed {
        heated: titles(&heated),
        to,
        joined: titles(&joined),
        comes_to: Known::computed(comes_to, "the balance of heat between the warm part and the cold", source),
    })
}

/// The temperature that a word of a sentence stands for.
fn temperature(step: &Step, word: &Word) -> Option<Temperature> {
    match word {
        Word::Measure(measure) => measure.temperature().map(midway),
        Word::Temperature => step.temperature.map(midway),
        _ => None,
    }
}

/// The lines of this stage that words name, with how much of each.
fn parts(words: &[Word], number: usize) -> Vec<(usize, Mass)> {
    let one = |word: &Word| match word {
        Word::Line { stage, line, mass, .. } if *stage == number => Some((*line, *mass)),
        _ => None,
    };
    words.iter().filter_map(one).collect()
}
