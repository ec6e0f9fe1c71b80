//! `day`: everything that is made, counted back from serving.

use super::{Ended, Outcome};
use crate::asked::day::{DayAsked, refused};
use crate::asked::{Place, proof_read};
use crate::failure::Failure;
use crate::paper::{OnPaper, Printed};
use crate::{terminal, watch};
use formula::Book;
use formula::read::BookSettings;
use plan::alternatives::{Alternative, NotThatWay, Way, alternatives, planned};
use plan::day::{Timeline, Wanted, timeline};
use plan::engine::Propagation;
use plan::relief::relief;
use std::borrow::Cow;
use std::path::PathBuf;
use std::time::Duration;

/// Plans a day: what is done when, so that everything is on the table at the time you say.
///
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30"
///   wellproved day saltmarsh --formula potato-muffins --formula cardamom-knots --serve 09:30
///   wellproved day saltmarsh --serve "2026-11-29 09:30" --format calendar > day.ics
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30" --pdf list.pdf
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30" --alternatives
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30" --not-before "dough/mix=06:30"
///
/// Wishes are weighed in this order: steps as fixed (--at, --not-before, --not-after), on time, room,
/// nothing past its best, out when wished, asleep at night, fresh at serving, unhurried, waiting where
/// it keeps, close together. Ctrl-C gives the best so far.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Day {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    #[command(flatten)]
    asked: DayAsked,
    /// The longest time to look for a better order, in seconds.
    #[arg(long, value_name = "SECONDS", default_value_t = 10, value_parser = clap::value_parser!(u64).range(1..=3600))]
    patience: u64,
    /// Sets the ways side by side in which the one formula can be made: on the same day, overnight at room temperature,
    /// long and cold, each dosed so that it works.
    #[arg(long, conflicts_with_all = ["done", "begun", "seen", "way", "pieces"])]
    alternatives: bool,
    /// Plans the one formula made another way, dosed for it: "same-day", "overnight" or "cold".
    #[arg(long, value_parser = way, conflicts_with_all = ["done", "begun", "seen", "pieces"])]
    way: Option<Way>,
    #[command(flatten)]
    place: Place,
    /// The form of the day.
    #[arg(long, value_enum, default_value_t = DayFormat::Text)]
    format: DayFormat,
    #[command(flatten)]
    on_paper: OnPaper,
}

/// The forms of a day.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum DayFormat {
    /// By the clock, for the terminal.
    Text,
    /// What to do by day and hour, with the weights.
    Prep,
    /// What to buy, by aisle, less what larder.toml says is there.
    Shopping,
    /// A drawing by component and station, SVG.
    Chart,
    /// For a calendar, iCalendar.
    Calendar,
    /// For other programs.
    Json,
}

impl Day {
    pub fn run(self) -> Ended {
        let opened = proof_read(&self.book)?;
        let wanted = self.asked.wanted(&opened, &self.place)?;
        let mut watch = watch::Watcher::new(Duration::from_secs(self.patience));
        if self.alternatives || self.way.is_some() {
            one_alone(&wanted)?;
        }
        if self.alternatives {
            let all = alternatives(&opened.book, &wanted, &Propagation, &mut watch);
            watch.finish();
            let all = all.map_err(|refusal| refused(refusal, &wanted))?;
            terminal::say(&self.side_by_side(&all, &wanted)?)?;
            return Ok(Outcome::Fine);
        }
        let planned = match self.way {
            Some(way) => planned(way, &opened.book, &wanted, &Propagation, &mut watch).map(|day| day.timeline),
            None => timeline(&wanted, &Propagation, &mut watch).map_err(NotThatWay::Day).map(|day| {
                let relief = relief(&opened.book, &wanted, &day, &Propagation, &mut watch);
                Timeline { relief, ..day }
            }),
        };
        watch.finish();
        let day = planned.map_err(|why| not_that_way(why, &wanted))?;
        if self.on_paper.is_asked() {
            let settings = &*own_settings(&opened.book, &wanted);
            let words = publish::print::prep(&day, &settings.language, publish::Units::for_readers(settings));
            self.on_paper.print(Printed::Prep, &words)?;
            return Ok(Outcome::Fine);
        }
        terminal::say(&self.laid_out(&day, &opened.book, &wanted))?;
        Ok(Outcome::Fine)
    }

    fn side_by_side(&self, all: &[Alternative], wanted: &Wanted) -> Result<String, Failure> {
        match self.format {
            DayFormat::Text => Ok(publish::day::alternatives(all, wanted, terminal::width())),
            DayFormat::Json => Ok(format!("{:#}", publish::day::alternatives_json(all))),
            _ => {
                let failure = Failure::new("the ways are set side by side as text or as JSON");
                Err(failure.hint("plan one of them with --way, in any form"))
            }
        }
    }

    fn laid_out(&self, day: &Timeline, book: &Book, wanted: &Wanted) -> String {
        let units = publish::Units::for_readers(&own_settings(book, wanted));
        match self.format {
            DayFormat::Text => publish::day::text(day, terminal::width()),
            DayFormat::Prep => publish::day::prep(day, units, terminal::width()),
            DayFormat::Shopping => publish::day::shopping(day, &book.prices, &book.larder),
            DayFormat::Chart => publish::day::chart(day, units.tongue),
            DayFormat::Calendar => publish::day::calendar(day, units, &wanted.now),
            DayFormat::Json => format!("{:#}", publish::day::json(day)),
        }
    }
}

/// The settings as they hold for the one formula that is made, or the book's for several.
fn own_settings<'b>(book: &'b Book, wanted: &Wanted) -> Cow<'b, BookSettings> {
    match &wanted.formulas[..] {
        [one] => book.settings.told_for(&one.head),
        _ => Cow::Borrowed(&book.settings),
    }
}

/// Ways are of one formula.
fn one_alone(wanted: &Wanted) -> Result<(), Failure> {
    match wanted.formulas[..] {
        [_] => Ok(()),
        _ => Err(Failure::new(format!("ways are set side by side for one formula, and these are {}", wanted.formulas.len()))
            .hint("name it with --formula")),
    }
}

fn way(text: &str) -> Result<Way, String> {
    let words: Vec<&str> = Way::ALL.iter().map(|way| way.word()).collect();
    Way::named(text).ok_or_else(|| format!("there are: {}", words.join(", ")))
}

fn not_that_way(why: NotThatWay, wanted: &Wanted) -> Failure {
    match why {
        NotThatWay::Day(refusal) => refused(refusal, wanted),
        NotThatWay::Formula(_) => Failure::new(format!("it cannot be made that way: {}", publish::day::reason(&why)))
            .hint("see the other ways with --alternatives"),
    }
}
