//! `exchange`: one thing for another in a formula's own text.

use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, OneFormula};
use crate::book::Opened;
use crate::failure::Failure;
use crate::{files, terminal};
use bench::exchange::{ALL, Exchanged, Wishes, exchange};
use formula::Formula;
use quantity::{Fraction, Kind, Length, Measure, SpoonSystem, TimeSpan, read_number};
use std::path::{Path, PathBuf};

/// Exchanges one thing for another in a formula and shows what changes, what cannot be kept, and the new times.
///
///   wellproved exchange potato-muffins.toml
///   wellproved exchange potato-muffins.toml leaven --of sponge --into rye-culture
///   wellproved exchange cardamom-knots.toml yeast --into yeast-fresh --write knots-fresh.toml
///   wellproved exchange caraway-rye-tin.toml tin --into "2 l"
///
/// Without an exchange's name, lists those that there are and what of the formula each could be made with.
/// Nothing is written unless --write or --in-place asks for it.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Exchange {
    #[command(flatten)]
    asked: OneFormula,
    /// Which exchange.
    exchange: Option<String>,
    /// What is exchanged: a line or a stage by its name in the formula.
    #[arg(long, value_name = "NAME")]
    of: Option<String>,
    /// The stage it stands in, where its name stands in several.
    #[arg(long, value_name = "NAME")]
    stage: Option<String>,
    /// What takes its place: an ingredient, a kind, a size, a tin.
    #[arg(long, value_name = "WHAT")]
    into: Option<String>,
    /// How much of it: "30 %".
    #[arg(long, value_name = "PERCENT")]
    share: Option<String>,
    /// The hydration of what is new: "80 %".
    #[arg(long, value_name = "PERCENT")]
    hydration: Option<String>,
    /// How long what is new may take: "12 h".
    #[arg(long, value_name = "TIME")]
    time: Option<String>,
    /// How high above the sea: "1800 m".
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    altitude: Option<String>,
    /// What it was made in, where the formula does not say.
    #[arg(long, value_name = "TIN")]
    from: Option<String>,
    /// How many of what is new.
    #[arg(long, value_name = "COUNT")]
    count: Option<String>,
    #[command(flatten)]
    kitchen: InKitchen,
    /// Write the new formula into this file, which must not be there yet.
    #[arg(long, value_name = "FILE", conflicts_with = "in_place")]
    write: Option<PathBuf>,
    /// Write the new formula in the place of the old one.
    #[arg(long)]
    in_place: bool,
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Exchange {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.asked.open()?;
        let Some(name) = &self.exchange else {
            self.refuse_to_write_nothing()?;
            terminal::say(&listed(&formula, self.format))?;
            return Ok(Outcome::Fine);
        };
        let wishes = self.wishes()?;
        if let Some(file) = &self.write {
            must_be_new(file)?;
        }
        let around = self.kitchen.of(&opened)?;
        let made = exchange(name, &opened.book, &formula.name, &around, &wishes).map_err(|why| {
            Failure::new(format!("the exchange “{name}” cannot be made in “{}”: {why}", formula.head.title)).hint(why.hint())
        })?;
        terminal::say(&match self.format {
            Format::Text => publish::exchanged::text(&made, terminal::width()),
            Format::Json => format!("{:#}", publish::exchanged::json(&made)),
        })?;
        self.keep(&opened, &formula, &made)?;
        Ok(Outcome::Fine)
    }

    fn refuse_to_write_nothing(&self) -> Result<(), Failure> {
        if self.write.is_some() || self.in_place {
            return Err(Failure::new("which exchange?").hint("there is nothing to write yet: name one of the list"));
        }
        Ok(())
    }

    fn wishes(&self) -> Result<Wishes, Failure> {
        Ok(Wishes {
            of: self.of.clone(),
            stage: self.stage.clone(),
            into: self.into.clone(),
            share: self.share.as_deref().map(percent).transpose()?,
            hydration: self.hydration.as_deref().map(percent).transpose()?,
            time: self.time.as_deref().map(time).transpose()?,
            altitude: self.altitude.as_deref().map(length).transpose()?,
            from: self.from.clone(),
            count: self.count.as_deref().map(count).transpose()?,
        })
    }

    /// Writes the new text where it was asked for.
    fn keep(&self, opened: &Opened, formula: &Formula, made: &Exchanged) -> Result<(), Failure> {
        let path = match &self.write {
            Some(file) => file.clone(),
            // Where the file is a link, what it leads to is changed and the link stays.
            None if self.in_place => {
                let path = opened.folder.join(formula.file.as_ref());
                std::fs::canonicalize(&path).map_err(|error| Failure::file("write", &path, &error))?
            }
            None => {
                terminal::remark("nothing is written: --write FILE writes the new formula, --in-place changes this one");
                return Ok(());
            }
        };
        if self.write.is_some() {
            must_be_new(&path)?;
        }
        files::write(&path, made.text.as_bytes())?;
        terminal::remark(&format!("written: {}", path.display()));
        Ok(())
    }
}

fn must_be_new(file: &Path) -> Result<(), Failure> {
    if std::fs::symlink_metadata(file).is_ok() {
        return Err(Failure::new(format!("{} is there already", file.display()))
            .hint("give another name; --in-place changes the formula itself"));
    }
    Ok(())
}

/// Every exchange with what of a formula it could be made with.
fn listed(formula: &Formula, format: Format) -> String {
    if format == Format::Json {
        let all = ALL.iter().map(
            |one| serde_json::json!({ "name": one.name, "about": one.about, "asks": one.asks, "fits": (one.fits)(formula) }),
        );
        return format!("{:#}", serde_json::Value::Array(all.collect()));
    }
    let mut out = format!("Exchanges in {}\n", formula.head.title);
    for one in ALL {
        let mut fits = (one.fits)(formula);
        fits.dedup();
        let with = if fits.is_empty() { "nothing here".to_owned() } else { fits.join(", ") };
        out.push_str(&format!("\n{}: {}\nwith: {with}\n", one.name, one.about));
        out.push_str(&publish::words::wrap(&format!("asks: {}", one.asks), terminal::width()));
    }
    out
}

fn measure(text: &str, kind: Kind, wanted: &str) -> Result<Measure, Failure> {
    let wrong = || Failure::new(format!("“{text}” is no {wanted}"));
    let hint = match kind {
        Kind::Share => "write it in percent: \"30 %\"",
        Kind::Time => "write it with its unit: \"12 h\", \"90 min\"",
        _ => "write it with its unit: \"1800 m\"",
    };
    let measure: Measure = text.parse().map_err(|_| wrong().hint(hint))?;
    if measure.unit.kind() == kind { Ok(measure) } else { Err(wrong().hint(hint)) }
}

fn percent(text: &str) -> Result<Fraction, Failure> {
    let measure = measure(text, Kind::Share, "percentage")?;
    let share = measure.share(SpoonSystem::Metric).map(|range| range.to);
    share.filter(|share| *share <= Fraction::percent(1000.0)).ok_or_else(|| Failure::new(format!("“{text}” is no percentage")))
}

fn time(text: &str) -> Result<TimeSpan, Failure> {
    let measure = measure(text, Kind::Time, "time")?;
    let range = measure.time(SpoonSystem::Metric).ok_or_else(|| Failure::new(format!("“{text}” is no time")))?;
    Ok((range.from + range.to) * 0.5)
}

fn length(text: &str) -> Result<Length, Failure> {
    let measure = measure(text, Kind::Length, "altitude")?;
    measure.length(SpoonSystem::Metric).map(|range| range.to).ok_or_else(|| Failure::new(format!("“{text}” is no altitude")))
}

fn count(text: &str) -> Result<f64, Failure> {
    match read_number(text) {
        Ok((number, "")) if number > 0.0 && number <= 10_000.0 => Ok(number),
        _ => Err(Failure::new(format!("“{text}” is no count")).hint("a number above nothing is wanted")),
    }
}
