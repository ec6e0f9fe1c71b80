//! `trial begin`: a new trial, with what is expected of it.

use crate::asked::{OneFormula, Place};
use crate::book::Opened;
use crate::commands::{Ended, Format, Outcome};
use crate::failure::Failure;
use crate::logbook::{Wanted, begin, remember_begun};
use crate::memory::{Memory, told, wait};
use crate::{moment, terminal};
use bench::forecast::foresee;
use formula::source::Source;
use formula::{Formula, Severity};
use publish::logged::expected;
use store::Kind;

/// Begins a trial: shows the weights and hours that are expected, and writes trials/DATE-FORMULA.toml.
///
///   wellproved trial begin saltmarsh/formulas/potato-muffins.toml
///   wellproved trial begin saltmarsh --formula cardamom-knots --revision 2 --title "Less cardamom"
///   wellproved trial begin saltmarsh --formula cardamom-knots --only-show
///
/// The formula's text is remembered with the trial, so that it can be told later what was baked.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Begin {
    #[command(flatten)]
    asked: OneFormula,
    /// That saved revision of the formula instead of the text as it stands.
    #[arg(long, value_name = "NUMBER")]
    revision: Option<i64>,
    /// What the trial is called; the formula's title where nothing is said.
    #[arg(long, value_name = "WORDS")]
    title: Option<String>,
    /// The trial's file, without the date before it and the ending.
    #[arg(long, value_name = "NAME")]
    name: Option<String>,
    /// The day, where it is not today: "2026-11-21".
    #[arg(long, value_name = "DATE")]
    date: Option<String>,
    #[command(flatten)]
    place: Place,
    /// Show what is expected, and write nothing.
    #[arg(long)]
    only_show: bool,
    /// The form of what is shown.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    #[command(flatten)]
    memory: Memory,
}

impl Begin {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.asked.open()?;
        let source = opened.book.formulas.get(&formula.name).cloned();
        let source = source.ok_or_else(|| Failure::new("the formula's text is not in the book"))?;
        let (formula, text) = match self.revision {
            None => (formula, source.text),
            Some(number) => wait(self.revised(&opened, &formula.name, number))??,
        };
        let kitchen = self.place.kitchen(&opened)?;
        let around = self.place.surroundings(&opened, &kitchen)?;
        let units = publish::Units::of(&opened.book.settings);
        let expected = expected(&formula, &foresee(&formula, &around), units);
        let date = self.day()?;
        let wanted = Wanted {
            formula: &formula,
            text: &text,
            kitchen: &kitchen.name,
            title: self.title.as_deref(),
            name: self.name.as_deref(),
            date: &date,
        };
        let written = if self.only_show { None } else { Some(begin(&opened, &wanted)?) };
        terminal::say(&match self.format {
            Format::Text => expected.text(terminal::width()),
            Format::Json => {
                let mut json = expected.json();
                json["trial"] = written.as_ref().map(|path| path.display().to_string()).into();
                format!("{json:#}")
            }
        })?;
        if let Some(path) = written {
            let remembered = wait(async {
                let store = self.memory.open(&opened.folder).await?;
                remember_begun(&store, &wanted, &path).await?;
                store.close().await;
                Ok::<_, Failure>(())
            })?;
            // What is written is kept, whatever becomes of the memory.
            if let Err(failure) = remembered {
                terminal::remark(&format!("begun, but not remembered as a revision: {failure}"));
            }
            terminal::remark(&format!("written: {}", path.display()));
        }
        Ok(Outcome::Fine)
    }

    /// A saved revision, worked out in the book as it is now.
    async fn revised(&self, opened: &Opened, name: &str, number: i64) -> Result<(Formula, String), Failure> {
        let store = self.memory.open_there(&opened.folder).await?;
        let text = store.text(Kind::Formula, name, number).await.map_err(told)?;
        let checked = opened.book.revised(&Source { file: format!("formulas/{name}.toml").into(), text: text.clone() });
        if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
            let failure = Failure::new(format!("revision {number} of “{name}” has faults in the book as it is now"));
            return Err(failure.hint("`wellproved history --show` prints it"));
        }
        Ok((checked.value, text))
    }

    fn day(&self) -> Result<String, Failure> {
        let zone = moment::zone(None)?;
        let Some(said) = &self.date else { return Ok(moment::now(None, &zone)?.date().to_string()) };
        let day: Option<jiff::civil::Date> = said.trim().parse().ok();
        day.map(|day| day.to_string())
            .ok_or_else(|| Failure::new(format!("“{said}” is no day")).hint("write it as \"2026-11-21\""))
    }
}
