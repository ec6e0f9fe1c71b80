//! `logger`: what a thermometer's logger wrote, into a trial or a kitchen.

use super::import::{read, refuse};
use super::{Ended, Outcome};
use crate::asked::time;
use crate::failure::{Failure, Stopped};
use crate::logbook::Logbook;
use crate::memory::{Memory, wait};
use crate::{files, terminal};
use clap::ValueEnum;
use formula::import::{Asked, Clock, Log, Scale, as_course, clock, mean, read_logger, with_room_log};
use formula::logging::{Entry, Figure, Noted, Part};
use jiff::civil::DateTime;
use quantity::{Between, Temperature, TimeSpan, print};
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

/// So many rows are shown of what would be written.
const SHOWN: usize = 5;

impl Logger {
    pub fn run(self) -> Ended {
        let table = read(&self.table)?;
        let scale = self.scale.map(|scale| if scale == OfScale::Celsius { Scale::Celsius } else { Scale::Fahrenheit });
        let asked = Asked { column: self.column.clone(), scale, month_first: self.month_first };
        let checked = read_logger(&table, &asked);
        let Some(log) = checked.value else { return refuse(&checked.diagnostics, table) };
        let begins = self.begins.as_deref().map(|text| begins(text, &log)).transpose()?;
        match (&self.trial, &self.kitchen) {
            (Some(trial), _) => self.of_a_trial(trial, &log, begins),
            (None, Some(kitchen)) => self.of_a_room(kitchen, log, begins),
            (None, None) => {
                Err(Failure::new("is it of a trial or of a room?").hint("say --trial and --step, or --kitchen").into())
            }
        }
    }

    fn of_a_trial(&self, trial: &Path, log: &Log, begins: Option<f64>) -> Ended {
        let logbook = Logbook::open(trial)?;
        let formula = logbook.formula()?;
        let step = self.step.as_deref().unwrap_or_default();
        let named = |key: &str| Figure::read(&format!("{step}/{key}"), "1", &formula);
        // A step that does not wait is found too, and told of.
        let found = named("lasted").or_else(|why| named("temperature").or_else(|_| named("core")).map_err(|_| why));
        let (figure, _) = found.map_err(Failure::from)?;
        let Part::Rise(step_seen, is_first) = figure.part.clone() else {
            return Err(Failure::new(format!("“{step}” is no waiting step"))
                .hint("readings are of a step in which something rises")
                .into());
        };
        let rise = logbook
            .trial()?
            .rises
            .iter()
            .find(|rise| rise.of.stage.value == figure.stage && rise.step.map_or(is_first, |step| step == step_seen));
        let lasts = match &self.lasts {
            Some(text) => Some(time(text)?),
            None => rise.and_then(|rise| rise.lasted),
        };
        let first = log.span().map_or(0.0, |span| span.0);
        let from = begins.map_or(first, |begins| if log.clock == Clock::Started { 0.0 } else { begins });
        let readings = log.part(from, lasts.map(TimeSpan::as_seconds));
        let (Some(middle), Some(last)) = (mean(&readings), readings.last()) else {
            let (from, to) = log.span().unwrap_or_default();
            let failure = Failure::new("the logger wrote nothing while that step went on");
            return Err(failure.hint(format!("its rows are from {} to {}", clock(from, log.clock), clock(to, log.clock))).into());
        };
        let lasted = TimeSpan::seconds(last.seconds - from);
        preview(
            log,
            &[format!("of {step}: {} rows, {} long", readings.len(), print::time(print::rounded_time(Between::just(lasted))))],
        )?;
        let (entry, course) = if self.of_the_air {
            let room = print::celsius(Between::just(Temperature::celsius((middle * 10.0).round() / 10.0)));
            terminal::say(&format!("\nThe room of {step}: {room}, the mean"))?;
            (Entry::Figure(Figure { key: "room", ..figure }, room.replace('\u{a0}', " ")), None)
        } else {
            let file = format!("{}-{}-{}.csv", logbook.name, figure.stage, step_seen.word());
            let course = as_course(&readings, from, time(&self.every)?.as_seconds().max(1.0));
            terminal::say(&format!("\ntrials/{file}\n{}", head(&course)))?;
            (Entry::Course(figure, file.clone()), Some((file, course)))
        };
        self.keep(&logbook, entry, course)
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
        preview(&log, &[])?;
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

/// The file of readings that the entry's step has.
fn other_course(logbook: &Logbook, entry: &Entry) -> Option<String> {
    let Entry::Course(figure, _) = entry else { return None };
    let name = figure.name().replace("/lasted", "/course");
    formula::logging::figures(logbook.text())
        .into_iter()
        .find(|(other, _)| publish::logged::is_same_figure(&name, other))
        .map(|(_, file)| file)
}

/// A moment by the logger's clock, in its own seconds.
fn begins(text: &str, log: &Log) -> Result<f64, Failure> {
    let wrong =
        || Failure::new(format!("“{text}” is no moment of the logger's clock")).hint("write \"2026-11-15 08:20\", or \"08:20\"");
    let of_day = |text: &str| crate::asked::time_of_day(text).map(TimeSpan::as_seconds);
    if !text.trim().contains([' ', 'T']) {
        let seconds = of_day(text)?;
        let first = log.span().map_or(0.0, |span| span.0);
        let midnight = (first / 86400.0).floor() * 86400.0;
        let today = midnight + seconds;
        // The first time after the log begins that the clock shows that; a minute before counts as at once.
        return Ok(if today + 60.0 >= first { today } else { today + 86400.0 });
    }
    let moment: DateTime = text.trim().parse().map_err(|_| wrong())?;
    let utc = jiff::tz::TimeZone::UTC.to_timestamp(moment).map_err(|_| wrong())?;
    Ok(utc.as_second() as f64)
}

fn preview(log: &Log, more: &[String]) -> Result<(), Stopped> {
    let celsius = log.readings.iter().map(|one| one.celsius);
    let (least, most) = (celsius.clone().fold(f64::INFINITY, f64::min), celsius.fold(f64::NEG_INFINITY, f64::max));
    let (from, to) = log.span().unwrap_or_default();
    let when = match log.clock {
        Clock::Started => format!("{} long", print::time(print::rounded_time(Between::just(TimeSpan::seconds(to - from))))),
        clocked => format!("{} to {}", clock(from, clocked), clock(to, clocked)),
    };
    let mut lines = log.guessed.clone();
    lines.push(format!("{} readings, {when}, {} to {} °C", log.readings.len(), print::number(least, 1), print::number(most, 1)));
    lines.extend_from_slice(more);
    Ok(terminal::say(&lines.join("\n"))?)
}

/// The first rows of what would be written, and how many follow.
fn head(text: &str) -> String {
    let lines: Vec<&str> = text.lines().collect();
    let mut out: Vec<String> = lines.iter().take(SHOWN + 1).map(|line| format!("  {line}")).collect();
    if let Some(more) = lines.len().checked_sub(SHOWN + 1).filter(|more| *more > 0) {
        out.push(format!("  … {more} more"));
    }
    out.join("\n")
}
