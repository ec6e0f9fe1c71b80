//! `scale`: the formula in another size.

use super::sheet::{SheetFormat, laid_out};
use super::{Ended, Outcome};
use crate::asked::OneFormula;
use crate::failure::Failure;
use crate::terminal;
use formula::arithmetic::{EggChoice, ScaleFault, Scaled, Target, at_hand, scaled_to, whole_eggs};
use formula::read::Amount;
use formula::resolve::formula::Content;
use formula::{Book, Formula};
use quantity::{Count, Density, Fraction, Mass, Measure, NumberFault, SpoonSystem, print, read_number};

/// Scales a formula: to pieces, a weight, a flour weight, a tin, an ingredient at hand, or by a factor.
///
///   wellproved scale potato-muffins.toml --pieces 30
///   wellproved scale caraway-rye-tin.toml --tin "round 20 x 8 cm"
///   wellproved scale cardamom-knots.toml --at-hand "egg-whole=3"
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
#[command(group(clap::ArgGroup::new("target").required(true)))]
pub struct Scale {
    #[command(flatten)]
    asked: OneFormula,
    /// To so many pieces.
    #[arg(long, group = "target", value_name = "COUNT", value_parser = above_nothing, allow_negative_numbers = true)]
    pieces: Option<f64>,
    /// Pieces of this raw weight, with --pieces: "95 g".
    #[arg(long, value_name = "WEIGHT")]
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
    /// How many such tins, with --tin; one where nothing is said.
    #[arg(long, value_name = "COUNT", value_parser = above_nothing, allow_negative_numbers = true)]
    tins: Option<f64>,
    /// To fill this volume, of which --density says what a millilitre weighs: a ring's area times the depth.
    #[arg(long, group = "target", value_name = "TIN", requires = "density")]
    fill: Option<String>,
    /// Gram per millilitre of the raw dough or batter, with --fill.
    #[arg(long, value_name = "G/ML", value_parser = above_nothing, allow_negative_numbers = true)]
    density: Option<f64>,
    /// To what there is of one ingredient: "egg-whole=3", "egg-whole=2 large", "milk-whole=1/2 l".
    #[arg(long, group = "target", value_name = "NAME=AMOUNT")]
    at_hand: Option<String>,
    /// By a factor: 2, 0.5, 1/3.
    #[arg(long, group = "target", value_parser = above_nothing, allow_negative_numbers = true)]
    factor: Option<f64>,
    /// The form of the sheet.
    #[arg(long, value_enum, default_value_t = SheetFormat::Text)]
    format: SheetFormat,
}

impl Scale {
    pub fn run(self) -> Ended {
        self.refuse_what_says_nothing()?;
        let (opened, formula) = self.asked.open()?;
        let target = self.target(&opened.book, &formula)?;
        let Scaled { factor, formula: large } = scaled_to(&formula, &target).map_err(|fault| not_so(&formula, &fault))?;
        terminal::remark(&format!("{} × {}", formula.head.title, print::number(factor, 4)));
        let mut out = laid_out(&opened.book, std::slice::from_ref(&large), self.format);
        if self.format == SheetFormat::Text {
            out.push_str(&eggs_in_words(&opened.book, &large));
        }
        terminal::say(&out)?;
        Ok(Outcome::Fine)
    }

    /// Refuses an option that only says more of another one which is not there.
    fn refuse_what_says_nothing(&self) -> Result<(), Failure> {
        let alone = [
            ("--each", self.each.is_some() && self.pieces.is_none(), "--pieces"),
            ("--tins", self.tins.is_some() && self.tin.is_none(), "--tin"),
            ("--density", self.density.is_some() && self.fill.is_none(), "--fill"),
        ];
        match alone.into_iter().find(|(_, is_alone, _)| *is_alone) {
            Some((option, _, other)) => Err(Failure::new(format!("{option} says nothing without {other}"))),
            None => Ok(()),
        }
    }

    fn target(&self, book: &Book, formula: &Formula) -> Result<Target, Failure> {
        let mass_of = |text: &Option<String>| text.as_deref().map(mass).transpose();
        if let Some(pieces) = self.pieces {
            return Ok(Target::Pieces(Count::pieces(pieces), mass_of(&self.each)?));
        }
        for (text, target) in
            [(&self.total, Target::Total as fn(Mass) -> Target), (&self.done, Target::Done), (&self.flour, Target::Flour)]
        {
            if let Some(mass) = mass_of(text)? {
                return Ok(target(mass));
            }
        }
        if let Some(tin) = &self.tin {
            return Ok(Target::Tins(volume(tin)?, Count::pieces(self.tins.unwrap_or(1.0))));
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
    let mass = measure
        .mass(SpoonSystem::Metric)
        .ok_or_else(|| Failure::new(format!("“{text}” is no weight")).hint("write it with its unit: \"2 kg\""))?;
    Ok(mass.to)
}

fn volume(text: &str) -> Result<quantity::Volume, Failure> {
    formula::read::tin_volume(text).ok_or_else(|| {
        Failure::new(format!("“{text}” is no tin")).hint("write \"23 x 13 x 7 cm\", \"round 20 x 5 cm\" or \"2 l\"")
    })
}

/// "egg-whole=3": what there is of an ingredient, in gram.
fn at_hand_target(book: &Book, formula: &Formula, text: &str) -> Result<Target, Failure> {
    let written = "write --at-hand \"egg-whole=3\", \"egg-whole=2 large\", \"milk-whole=1/2 l\" or \"milk-whole=400 g\"";
    let (name, amount) = text
        .split_once('=')
        .ok_or_else(|| Failure::new(format!("“{text}” names no ingredient with its amount")).hint(written))?;
    let (name, amount) = (name.trim(), amount.trim());
    let read = Amount::parse(amount).map_err(|fault| Failure::new(format!("“{amount}” is no amount: {fault}")).hint(written))?;
    let settings = &book.settings;
    let mass = at_hand(formula, name, &read, settings.spoons.unwrap_or_default(), settings.eggs);
    Ok(Target::AtHand(name.to_owned(), mass.map_err(|fault| not_so(formula, &fault))?))
}

/// Why a formula cannot be scaled as was asked.
fn not_so(formula: &Formula, fault: &ScaleFault) -> Failure {
    Failure::new(format!("“{}” cannot be scaled so: {fault}", formula.head.title))
}

/// A number as people write it: 2, 0.5, "0,5", "1/2".
fn above_nothing(text: &str) -> Result<f64, String> {
    match read_number(text) {
        Ok((number, "")) if number > 0.0 => Ok(number),
        Ok((_, "")) | Err(NumberFault::Missing) => Err("a number above nothing is wanted: 2, 0.5 or 1/2".to_owned()),
        Ok((_, rest)) => Err(format!("“{}” does not belong to a number", rest.trim())),
        Err(fault) => Err(fault.to_string()),
    }
}

/// What to do about eggs, which come whole.
fn eggs_in_words(book: &Book, formula: &Formula) -> String {
    let mut words = String::new();
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    for line in lines {
        let Content::Ingredient(ingredient) = &line.content else { continue };
        let size = line.egg_size(book.settings.eggs);
        let Some(choices) = whole_eggs(ingredient, line.mass.value, size) else { continue };
        let told: Vec<String> = choices.iter().map(choice_in_words).collect();
        words.push_str(&format!(
            "{}, {} asked, size {}: {}\n",
            line.title,
            print::mass(line.mass.value),
            size.word(),
            told.join("; ")
        ));
    }
    words
}

fn choice_in_words(choice: &EggChoice) -> String {
    let used = print::mass(choice.used);
    if choice.left > Mass::ZERO {
        return format!("{} beaten, {used} used, {} left", choice.eggs, print::mass(choice.left));
    }
    let off = print::percent(choice.off, 1);
    let is_shown = off != print::percent(Fraction::ZERO, 1);
    let sign = if choice.off > Fraction::ZERO { "+" } else { "" };
    format!("{} whole is {used}{}", choice.eggs, if is_shown { format!(" ({sign}{off})") } else { String::new() })
}
