//! Doughs made up at random, and how they are written down: in one stage or in more, by weight or by percentage.

use proptest::prelude::*;
use std::fmt::Write;

const FLOURS: [&str; 3] = ["flour-strong-white", "flour-wholemeal-strong", "flour-rye-dark"];
const OTHERS: [&str; 6] = ["water", "milk-whole", "salt", "yeast-instant", "egg-whole", "butter-unsalted"];

/// Ingredients and their gram.
type Lines = Vec<(&'static str, f64)>;

/// A dough: gram of each ingredient, and the shares of each that go into a sponge and a soaker.
#[derive(Clone, Debug)]
pub struct Dough {
    /// The flours, the first of which is never missing.
    pub flours: Lines,
    /// The rest, water first.
    pub others: Lines,
    /// For each ingredient, flours first, the share that a first stage takes.
    pub first: Vec<f64>,
    /// For each ingredient, the share of the rest that a second stage takes.
    pub second: Vec<f64>,
}

/// A weight as a scale of 0.01 g shows it, so that its text says it in full.
fn weight(from: u32, to: u32) -> impl Strategy<Value = f64> {
    (from * 100..=to * 100).prop_map(|hundredths| f64::from(hundredths) / 100.0)
}

pub fn dough() -> impl Strategy<Value = Dough> {
    let flours = (weight(50, 2000), proptest::collection::vec(weight(1, 800), 0..=2));
    let others = (weight(20, 1500), proptest::collection::vec(weight(1, 300), 0..=5));
    let shares = || proptest::collection::vec((5_u32..=95).prop_map(|percent| f64::from(percent) / 100.0), 9);
    (flours, others, shares(), shares()).prop_map(|((flour, flours), (water, others), first, second)| Dough {
        flours: FLOURS.into_iter().zip(std::iter::once(flour).chain(flours)).collect(),
        others: OTHERS.into_iter().zip(std::iter::once(water).chain(others)).collect(),
        first,
        second,
    })
}

impl Dough {
    /// Gram of all flour.
    pub fn flour(&self) -> f64 {
        self.flours.iter().map(|(_, grams)| grams).sum()
    }

    /// Gram of everything.
    pub fn total(&self) -> f64 {
        self.flour() + self.others.iter().map(|(_, grams)| grams).sum::<f64>()
    }

    fn all(&self) -> impl Iterator<Item = (&'static str, f64)> {
        self.flours.iter().chain(&self.others).copied()
    }

    /// All in one stage, by weight.
    pub fn in_one_stage(&self) -> String {
        formula(&[("dough", "final-mix", "", weights(self.all()))])
    }

    /// A sponge that takes its share of everything, and a final mix that takes the rest.
    pub fn in_two_stages(&self) -> String {
        let (first, rest) = self.parted();
        formula(&[("sponge", "sponge", "", weights(first)), ("dough", "final-mix", "sponge = \"all\"\n", weights(rest))])
    }

    /// A sponge, a scald that takes its share of what the sponge left, and a final mix of both.
    pub fn in_three_stages(&self) -> String {
        let (first, rest) = self.parted();
        let second = rest.iter().zip(&self.second).map(|((name, grams), share)| (*name, grams * share));
        let last = rest.iter().zip(&self.second).map(|((name, grams), share)| (*name, grams - grams * share));
        formula(&[
            ("sponge", "sponge", "", weights(first)),
            ("scald", "scald", "", weights(second)),
            ("dough", "final-mix", "sponge = \"all\"\nscald = \"all\"\n", weights(last)),
        ])
    }

    fn parted(&self) -> (Lines, Lines) {
        let first = self.all().zip(&self.first).map(|((name, grams), share)| (name, grams * share));
        let rest = self.all().zip(&self.first).map(|((name, grams), share)| (name, grams - grams * share));
        (first.collect(), rest.collect())
    }

    /// Flours by weight, the rest as percentages of them.
    pub fn by_percentage_of_weighed_flour(&self) -> String {
        let lines = weights(self.flours.iter().copied()) + &self.percentages(&self.others);
        formula(&[("dough", "final-mix", "", lines)])
    }

    /// Everything as percentages, with the stage's size stated under `flour` or `weight`.
    pub fn by_percentage(&self, size: &str) -> String {
        let lines = self.percentages(&self.flours) + &self.percentages(&self.others);
        let text = formula(&[("dough", "final-mix", "", lines)]);
        text.replacen("[component.stage.ingredients]", &format!("{size}\n[component.stage.ingredients]"), 1)
    }

    fn percentages(&self, lines: &[(&'static str, f64)]) -> String {
        lines.iter().fold(String::new(), |mut text, (name, grams)| {
            let _ = writeln!(text, "{name} = \"{} %\"", grams / self.flour() * 100.0);
            text
        })
    }
}

fn weights(lines: impl IntoIterator<Item = (&'static str, f64)>) -> String {
    lines.into_iter().fold(String::new(), |mut text, (name, grams)| {
        let _ = writeln!(text, "{name} = \"{grams} g\"");
        text
    })
}

/// A formula of stages: name, kind, lines that name other stages, and lines of ingredients.
fn formula(stages: &[(&str, &str, &str, String)]) -> String {
    let head = String::from("title = \"Made up\"\n[[component]]\nname = \"bread\"\n");
    stages.iter().fold(head, |mut text, (name, kind, uses, lines)| {
        let _ = writeln!(
            text,
            "[[component.stage]]\nname = \"{name}\"\nkind = \"{kind}\"\n[component.stage.ingredients]\n{uses}{lines}"
        );
        text
    })
}
