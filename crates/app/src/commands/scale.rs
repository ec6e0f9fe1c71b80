//! `scale`: the formula in another size.

use super::sheet::{chosen, laid_out, SheetFormat};
use super::{proof_read, Ended, Outcome};
use crate::failure::Failure;
use crate::terminal;
use formula::arithmetic::{factor, scaled, whole_eggs, Target};
use formula::resolve::formula::Content;
use formula::{Book, Formula};
use quantity::{print, Count, Density, Mass, Measure, SpoonSystem};
use std::path::PathBuf;

/// Scales a formula: to pieces, a weight, a flour weight, a tin, an ingredient at hand, or by a factor.
///
///   wellproved scale potato-muffins.toml --pieces 30
///   wellproved scale caraway-rye-tin.toml --tin "round 20 x 8 cm"
///   wellproved scale cardamom-knots.toml --at-hand "egg-whole=3"
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
#[command(group(clap::ArgGroup::new("target").required(true)))]
pub struct Scale {
    /// One formula's file, or a book's folder with --formula.
    book: PathBuf,
    /// The formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    /// To so many pieces.
    #[arg(long, group = "target", value_name = "COUNT")]
    pieces: Option<f64>,
    /// Pieces of this raw weight, with --pieces: "95 g".
    #[arg(long, value_name = "WEIGHT", requires = "pieces")]
    each: Option<String>,
    /// To so much raw, after make-up loss: "2 kg".
    #[arg(long, group = "target", value_name = "WEIGHT")]
    total: Option<String>,
    /// To so much when done, after all losses.
    #[arg(long, group = "target", value_name = "WEIGHT")]
    done: Option<String>,
    /// To so much flour in all: "1 kg".
    #[arg(long, group = "target", value_name = "WEIGHT")]
    flour: Option<String>,
    /// From its tin to this one: "23 x 13 x 7 cm", "round 20 x 5 cm", "2 l".
    #[arg(long, group = "target", value_name = "TIN")]
    tin: Option<String>,
    /// How many such tins.
    #[arg(long, value_name = "COUNT", requires = "tin", default_value_t = 1.0)]
    tins: f64,
    /// To fill this volume, of which --density says what a millilitre weighs: a ring's area times the depth.
    #[arg(long, group = "target", value_name = "TIN", requires = "density")]
    fill: Option<String>,
    /// Gram per millilitre of the raw dough or batter, with --fill.
    #[arg(long, value_name = "G/ML")]
    density: Option<f64>,
    /// To what there is of one ingredient: "egg-whole=3", "milk-whole=400 g".
    #[arg(long, group = "target", value_name = "NAME=AMOUNT")]
    at_hand: Option<String>,
    /// By a factor.
    #[arg(long, group = "target")]
    factor: Option<f64>,
    /// The form of the sheet.
    #[arg(long, value_enum, default_value_t = SheetFormat::Text)]
    format: SheetFormat,
}

impl Scale {
    pub fn run(self) -> Ended {
        let opened = match proof_read(&self.book)? {
            Ok(opened) => opened,
            Err(outcome) => return Ok(outcome),
        };
        let mut formulas = chosen(opened.formulas(), self.formula.as_deref())?;
        if formulas.len() > 1 {
            let names: Vec<&str> = formulas.iter().map(|formula| formula.name.as_str()).collect();
            return Err(Failure::new("which formula?").hint(format!("say --formula with one of: {}", names.join(", "))));
        }
        let Some(formula) = formulas.pop() else { return Err(Failure::new("the book has no formulas")) };
        let target = self.target(&opened.book, &formula)?;
        let by = factor(&formula, &target).map_err(|fault| Failure::new(format!("“{}” cannot be scaled so: {fault}", formula.title)))?;
        let weight = match target {
            Target::Pieces(_, weight) => weight,
            _ => None,
        };
        let large = scaled(&formula, by, weight);
        terminal::remark(&format!("{} × {}", formula.title, print::number(by, 4)));
        let mut out = laid_out(&opened.book, std::slice::from_ref(&large), self.format);
        if self.format == SheetFormat::Text {
            out.push_str(&eggs_in_words(&opened.book, &large));
        }
        terminal::say(&out);
        Ok(Outcome::Fine)
    }

    fn target(&self, book: &Book, formula: &Formula) -> Result<Target, Failure> {
        let mass_of = |text: &Option<String>| text.as_deref().map(mass).transpose();
        if let Some(pieces) = self.pieces {
            return Ok(Target::Pieces(Count::pieces(pieces), mass_of(&self.each)?));
        }
        for (text, target) in [(&self.total, Target::Total as fn(Mass) -> Target), (&self.done, Target::Done), (&self.flour, Target::Flour)] {
            if let Some(mass) = mass_of(text)? {
                return Ok(target(mass));
            }
        }
        if let Some(tin) = &self.tin {
            return Ok(Target::Tins(volume(tin)?, Count::pieces(self.tins)));
        }
        if let (Some(fill), Some(density)) = (&self.fill, self.density) {
            return Ok(Target::Filled(volume(fill)?, Density::grams_per_millilitre(density)));
        }
        if let Some(at_hand) = &self.at_hand {
            return at_hand_target(book, formula, at_hand);
        }
        Ok(Target::Factor(self.factor.unwrap_or(1.0)))
    }
}

fn mass(text: &str) -> Result<Mass, Failure> {
    let measure: Measure = text.parse().map_err(|fault| Failure::new(format!("“{text}” is no weight: {fault}")))?;
    let mass = measure.mass(SpoonSystem::Metric).ok_or_else(|| Failure::new(format!("“{text}” is no weight")).hint("write it with its unit: \"2 kg\""))?;
    Ok(mass.to)
}

fn volume(text: &str) -> Result<quantity::Volume, Failure> {
    formula::read::tin_volume(text)
        .ok_or_else(|| Failure::new(format!("“{text}” is no tin")).hint("write \"23 x 13 x 7 cm\", \"round 20 x 5 cm\" or \"2 l\""))
}

/// "egg-whole=3": what there is of an ingredient, in gram.
fn at_hand_target(book: &Book, formula: &Formula, text: &str) -> Result<Target, Failure> {
    let usage = || Failure::new(format!("“{text}” names no ingredient and amount")).hint("write --at-hand \"egg-whole=3\" or \"milk-whole=400 g\"");
    let (name, amount) = text.split_once('=').ok_or_else(usage)?;
    let (name, measure) = (name.trim(), amount.parse::<Measure>().map_err(|_| usage())?);
    if let Some(mass) = measure.mass(SpoonSystem::Metric) {
        return Ok(Target::AtHand(name.to_owned(), mass.to));
    }
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let ingredient = lines.filter(|line| line.name == name).find_map(|line| match &line.content {
        Content::Ingredient(ingredient) => Some(ingredient.clone()),
        _ => None,
    });
    let ingredient = ingredient.or_else(|| book.pantry.find(name).cloned()).ok_or_else(usage)?;
    let count = measure.count(SpoonSystem::Metric).ok_or_else(usage)?.to.as_pieces();
    let one = formula::ingredient::eggs::one(&ingredient, book.settings.eggs).or(ingredient.piece.as_ref().map(|piece| piece.weighs));
    let one = one.ok_or_else(|| Failure::new(format!("no piece weight is known for “{}”", ingredient.title)).hint("give a weight"))?;
    Ok(Target::AtHand(name.to_owned(), one * count))
}

/// What to do about eggs, which come whole.
fn eggs_in_words(book: &Book, formula: &Formula) -> String {
    let mut words = String::new();
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    for line in lines {
        let Content::Ingredient(ingredient) = &line.content else { continue };
        let Some(choices) = whole_eggs(ingredient, line.mass.value, book.settings.eggs) else { continue };
        let told: Vec<String> = choices
            .iter()
            .map(|choice| match choice.left > Mass::ZERO {
                true => format!("{} beaten, {} used, {} left", choice.eggs, print::mass(choice.used), print::mass(choice.left)),
                false => format!("{} whole is {} ({:+.1} %)", choice.eggs, print::mass(choice.used), choice.off.as_percent()),
            })
            .collect();
        words.push_str(&format!("{}, {} asked, size {}: {}\n", line.title, print::mass(line.mass.value), book.settings.eggs.word(), told.join("; ")));
    }
    words
}
