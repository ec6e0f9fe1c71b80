//! `logger`: what a thermometer's logger wrote, into a trial or a kitchen.

use super::import::{read, refuse};
use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::logbook::Logbook;
use crate::memory::{Memory, wait};
use crate::readings::{Wanted, begins, guessed, head, other_course, ready};
use crate::{files, terminal};
use clap::ValueEnum;
use formula::import::{Asked, Clock, Log, Scale, read_logger, with_room_log};
use formula::logging::{Entry, Noted};
use std::path::{Path, PathBuf};

/// Brings in what a thermometer's logger wrote, as the course of a rise or as the log of a room, and shows first what it
/// makes of the table.
///
///   wellproved logger probe.csv --trial saltmarsh/trials/2026-11-14-muffins.toml --step dough/bulk \
///     --begins "2026-11-15 08:20"
///   wellproved logger probe.csv --trial saltmarsh/trials/2026-11-14-muffins.toml --step dough/bulk --of-the-air
///   wellproved logger room.csv --kitchen saltmarsh/kitchens/boathouse.toml --in-place
///
/// Columns, form of the times, decimal commas and scale are guessed and told. What cannot be read, or could be two things,
/// is refused with its row and column.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Logger {
    /// The table.
    table: PathBuf,
    /// The trial's file that it belongs to.
    #[arg(long, value_name = "FILE", requires = "step", conflicts_with = "kitchen")]
    trial: Option<PathBuf>,
    /// The trial's waiting step: "dough/bulk".
    #[arg(long, value_name = "STAGE/STEP", requires = "trial")]
    step: Option<String>,
    /// The thermometer hung in the air beside the dough: its mean becomes the step's room.
    #[arg(long, requires = "trial")]
    of_the_air: bool,
    /// The kitchen's file whose room it is of.
    #[arg(long, value_name = "FILE", required_unless_present = "trial")]
    kitchen: Option<PathBuf>,
    /// When the step began by the logger's clock, or when the logger was started: "2026-11-15 08:20"; its first row, if left
    /// out.
    #[arg(long, value_name = "MOMENT")]
    begins: Option<String>,
    /// How long the step lasted; what the trial says, if left out, or else to the last row.
    #[arg(long, value_name = "TIME", requires = "trial")]
    lasts: Option<String>,
    /// Average readings over that time.
    #[arg(long, value_name = "TIME", default_value = "15 min")]
    every: String,
    /// The heading of the column of temperatures, where several could be.
    #[arg(long, value_name = "HEADING")]
    column: Option<String>,
    /// The scale of its figures, where the table does not tell.
    #[arg(long, value_enum)]
    scale: Option<OfScale>,
    /// The month stands before the day.
    #[arg(long)]
    month_first: bool,
    /// Write it into the book; without it, it is only shown.
    #[arg(long)]
    in_place: bool,
    #[command(flatten)]
    memory: Memory,
}

/// A scale of temperature.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum OfScale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

impl Logger {
    pub fn run(self) -> Ended {
        let table = read(&self.table)?;
        let scale = self.scale.map(|scale| if scale == OfScale::Celsius { Scale::Celsius } else { Scale::Fahrenheit });
        let asked = Asked { column: self.column.clone(), scale, month_first: self.month_first };
        let checked = read_logger(&table, &asked);
        let Some(log) = checked.value else { return refuse(&checked.diagnostics, table) };
        match (&self.trial, &self.kitchen) {
            (Some(trial), _) => self.of_a_trial(trial, &log),
            (None, Some(kitchen)) => {
                let begins = self.begins.as_deref().map(|text| begins(text, &log)).transpose()?;
                self.of_a_room(kitchen, log, begins)
            }
            (None, None) => {
                Err(Failure::new("is it of a trial or of a room?").hint("say --trial and --step, or --kitchen").into())
            }
        }
    }

    fn of_a_trial(&self, trial: &Path, log: &Log) -> Ended {
        let logbook = Logbook::open(trial)?;
        let wanted = Wanted {
            step: self.step.as_deref().unwrap_or_default(),
            begins: self.begins.as_deref(),
            lasts: self.lasts.as_deref(),
            every: &self.every,
            of_the_air: self.of_the_air,
        };
        let ready = ready(&logbook, log, &wanted)?;
        terminal::say(&ready.told.join("\n"))?;
        if let Some((file, course)) = &ready.course {
            terminal::say(&format!("\ntrials/{file}\n{}", head(course)))?;
        }
        self.keep(&logbook, ready.entry, ready.course)
    }

    fn keep(&self, logbook: &Logbook, entry: Entry, course: Option<(String, String)>) -> Ended {
        let name = course.as_ref().map(|(file, _)| file.as_str());
        if let Some(other) = other_course(logbook, &entry).filter(|other| Some(other.as_str()) != name) {
            let failure = Failure::new(format!("the step has its readings already, in {other}"));
            return Err(failure.hint("add the rows there, or take the line “course” out of the trial first").into());
        }
        if !self.in_place {
            terminal::remark("nothing is written: --in-place does");
            return Ok(Outcome::Fine);
        }
        if let Some((file, course)) = &course {
            let path = logbook.path.with_file_name(file);
            match std::fs::read_to_string(&path) {
                Ok(there) if there != *course => {
                    let failure = Failure::new(format!("{} is there already and says something else", path.display()));
                    return Err(failure.hint("trials are not altered in silence: move it away first").into());
                }
                Ok(_) => {}
                Err(_) => files::write_new(&path, course.as_bytes())?,
            }
        }
        // Opened anew, so that the readings beside it are known.
        let folder = logbook.path.clone();
        let (noted, text) = logbook.reread()?.note(&[entry], None, "")?;
        if let Some(text) = text {
            wait(logbook.keep(&self.memory, &text, "the readings of a logger"))??;
        }
        let word = if noted == [Noted::Unchanged] { "as written before" } else { "written" };
        terminal::remark(&format!("{word}: {}", folder.display()));
        Ok(Outcome::Fine)
    }

    fn of_a_room(&self, kitchen: &Path, log: Log, begins: Option<f64>) -> Ended {
        let text = std::fs::read_to_string(kitchen).map_err(|error| Failure::file("read", kitchen, &error))?;
        let log = match (log.clock, begins) {
            (Clock::Started, None) => {
                let failure = Failure::new("the logger counts from its start, and a room's log needs the clock");
                return Err(failure.hint("say when it was started: --begins \"2026-11-15 08:20\"").into());
            }
            (_, begins) => log.started_at(begins.unwrap_or(0.0)),
        };
        let room = log.as_room();
        let stem = formula::read::stem(&kitchen.to_string_lossy()).to_owned();
        let (file, new) = with_room_log(&text, &format!("{stem}-room.csv"))
            .ok_or_else(|| Failure::new(format!("{} is no TOML", kitchen.display())))?;
        terminal::say(&guessed(&log).join("\n"))?;
        terminal::say(&format!("\nkitchens/{file}\n{}", head(&room)))?;
        if !self.in_place {
            terminal::remark("nothing is written: --in-place does");
            return Ok(Outcome::Fine);
        }
        let path = kitchen.with_file_name(&file);
        files::write(&path, room.as_bytes())?;
        terminal::remark(&format!("written: {}", path.display()));
        if new != text {
            files::write(kitchen, new.as_bytes())?;
            terminal::remark(&format!("written: {}", kitchen.display()));
        }
        Ok(Outcome::Fine)
    }
}
