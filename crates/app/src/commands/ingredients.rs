//! `ingredients`: searches the ingredient table and shows figures with their sources.

use super::{Ended, Format, Outcome};
use crate::failure::Failure;
use crate::ingredient::{facts, search, source};
use crate::{book, terminal};
use comfy_table::{CellAlignment, ContentArrangement, Table};
use formula::arithmetic::{blended_protein, two_flours};
use formula::ingredient::{Figure, datasets, did_you_mean};
use formula::{Ingredient, Pantry};
use quantity::{Fraction, Measure, SpoonSystem, print};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;

/// Searches the ingredient table; with one match, shows all its figures and their sources.
///
///   wellproved ingredients rye
///   wellproved ingredients milk-whole
///   wellproved ingredients --sources
///   wellproved ingredients --blend flour-cake flour-bread --to-protein "10.5 %"
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Ingredients {
    /// Words that the name or title holds.
    words: Vec<String>,
    /// Also the ingredients of this book.
    #[arg(long)]
    book: Option<PathBuf>,
    /// Two flours to be blended, with --to-protein.
    #[arg(long, num_args = 2, value_names = ["FLOUR", "FLOUR"], requires = "to_protein", conflicts_with = "words")]
    blend: Vec<String>,
    /// The protein that the blend should have: "10.5 %".
    #[arg(long, value_name = "SHARE", requires = "blend")]
    to_protein: Option<String>,
    /// Lists the datasets with their licences and attributions.
    #[arg(long)]
    sources: bool,
    /// The form of the answer.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Ingredients {
    pub fn run(self) -> Ended {
        if self.sources {
            terminal::say(&sources())?;
            return Ok(Outcome::Fine);
        }
        let pantry = match &self.book {
            Some(path) => book::open(path)?.book.pantry,
            None => Pantry::built_in(),
        };
        if let (Some(target), [first, second]) = (&self.to_protein, &self.blend[..]) {
            terminal::say(&blended(&pantry, first, second, target)?)?;
            return Ok(Outcome::Fine);
        }
        let found = search(&pantry, &self.words);
        if found.is_empty() {
            let asked = self.words.join(" ");
            let near = pantry.nearest(&asked).map_or_else(String::new, did_you_mean);
            return Err(Failure::new(format!("no ingredient matches “{asked}”")).hint(near).into());
        }
        terminal::say(&match (self.format, &found[..]) {
            (Format::Json, _) => format!("{:#}", Value::Array(found.iter().map(|one| as_json(one)).collect())),
            (Format::Text, [one]) => in_full(one),
            (Format::Text, many) => list(many),
        })?;
        Ok(Outcome::Fine)
    }
}

/// The shares of two flours with which they have a protein.
fn blended(pantry: &Pantry, first: &str, second: &str, target: &str) -> Result<String, Failure> {
    let find = |name: &str| {
        let near = pantry.nearest(name).map_or_else(String::new, did_you_mean);
        pantry.find(name).ok_or_else(|| Failure::new(format!("no ingredient is called “{name}”")).hint(near))
    };
    let (first, second) = (find(first)?, find(second)?);
    let wanted = target.parse::<Measure>().ok().and_then(|measure| measure.share(SpoonSystem::Metric));
    let wanted =
        wanted.ok_or_else(|| Failure::new(format!("“{target}” is no percentage")).hint("write --to-protein \"10.5 %\""))?.to;
    let share = two_flours(first, second, wanted).map_err(|fault| Failure::new(format!("that cannot be blended: {fault}")))?;
    let told = |flour: &Ingredient, share: Fraction| {
        let protein = flour.composition.share(Figure::Protein).unwrap_or_default();
        format!("{:>8}  {} (protein {})\n", print::percent(share, 1), flour.title, print::percent(protein, 2))
    };
    let blend = blended_protein(&[(first, share), (second, share.left())]).unwrap_or_default();
    Ok(format!("{}{}{:>8}  protein of the blend", told(first, share), told(second, share.left()), print::percent(blend, 2)))
}

fn list(many: &[Arc<Ingredient>]) -> String {
    let mut table = Table::new();
    table
        .load_style(publish::sheet::RULED)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(terminal::width() as u16);
    table.set_header(["name", "title", "water", "protein", "fat", "sugars", "g/ml"]);
    let shown =
        |one: &Ingredient, figure| one.composition.get(figure).map_or_else(|| "–".to_owned(), |value| print::number(value, 1));
    for one in many {
        let density = one
            .density
            .as_ref()
            .map_or_else(|| "–".to_owned(), |(density, _)| print::number(density.as_grams_per_millilitre(), 3));
        let figures = [Figure::Water, Figure::Protein, Figure::Fat, Figure::Sugars].map(|figure| shown(one, figure));
        table.add_row([one.name.clone(), one.title.clone()].into_iter().chain(figures).chain([density]));
    }
    for column in 2..7 {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    format!("{}\n\ng per 100 g; – is not known, never nothing. Name one alone to see all of it.", table.trim_fmt())
}

fn in_full(one: &Ingredient) -> String {
    let mut out = format!("{}\n{}\n\n", one.title, "═".repeat(one.title.chars().count()));
    for (label, value) in facts(one) {
        out.push_str(&format!("{label:24} {value}\n"));
    }
    out.push_str("\nper 100 g edible portion\n");
    for figure in Figure::ALL {
        let value = one
            .composition
            .get(*figure)
            .map_or_else(|| "not known".to_owned(), |value| format!("{} {}", print::number(value, 3), figure.unit()));
        out.push_str(&format!("  {:28} {value}\n", figure.title()));
    }
    out
}

fn as_json(one: &Ingredient) -> Value {
    let figures: serde_json::Map<String, Value> =
        Figure::ALL.iter().map(|figure| (figure.name().to_owned(), json!(one.composition.get(*figure)))).collect();
    json!({
        "name": one.name,
        "title": one.title,
        "also": one.also,
        "group": one.group.word(),
        "declared": one.declared,
        "compound": one.compound,
        "carbohydrate-basis": one.carbohydrate_basis,
        "sum-note": one.sum_note,
        "counts-as-flour": one.counts_as_flour,
        "per-100-g": figures,
        "grams-per-ml": one.density.as_ref().map(|(density, _)| density.as_grams_per_millilitre()),
        "piece-grams": one.piece.as_ref().map(|piece| piece.weighs.as_grams()),
        "edible": one.edible.as_ratio(),
        "allergens": one.allergens,
        "added-sugar": one.added_sugar,
        "source": source(one),
        "notes": one.notes,
    })
}

fn sources() -> String {
    datasets()
        .iter()
        .map(|set| {
            format!("{} ({})\n  {}\n  licence: {}\n  {}\n\n", set.title, set.key, set.release, set.licence, set.attribution)
        })
        .collect()
}
