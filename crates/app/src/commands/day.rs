//! `day`: everything that is made, counted back from serving.

use super::{Ended, Outcome};
use crate::asked::steps::{happened, named, seen};
use crate::asked::{Place, chosen, proof_read, unknown};
use crate::book::Opened;
use crate::failure::Failure;
use crate::paper::{OnPaper, Printed};
use crate::{moment, terminal, watch};
use bench::calibration::Untold;
use bench::forecast::Surroundings;
use formula::arithmetic::{Target, scaled_to};
use formula::read::DayHours;
use formula::{Book, Formula};
use jiff::ZonedDateTime;
use plan::alternatives::{Alternative, NotThatWay, Way, alternatives, planned};
use plan::day::{MOST_JOBS, Progress, Refusal, Timeline, Unused, Wanted, Workplace, timeline};
use plan::engine::Propagation;
use plan::relief::relief;
use quantity::{Count, TimeSpan};
use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

/// Plans a day: what is done when, so that everything is on the table at the time you say.
///
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30"
///   wellproved day saltmarsh --formula potato-muffins --formula cardamom-knots --serve 09:30
///   wellproved day saltmarsh --serve "2026-11-29 09:30" --format calendar > day.ics
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30" --pdf list.pdf
///   wellproved day potato-muffins.toml --serve "2026-11-29 09:30" --alternatives
///
/// Wishes are weighed in this order: on time, nothing past its best, out when wished, asleep at night,
/// fresh at serving, unhurried, close together. Ctrl-C gives the best so far.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Day {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// When it is on the table: "2026-11-29 09:30", or "09:30" for the next time the clock shows that.
    #[arg(long, value_name = "WHEN")]
    serve: String,
    /// Only the formula of this name; may be said more than once.
    #[arg(long, value_name = "NAME")]
    formula: Vec<String>,
    /// So many pieces instead of what the formula makes: "36", or "potato-muffins=36" where there are several; baked,
    /// griddled and fried batch after batch. May be said more than once.
    #[arg(long, value_name = "COUNT")]
    pieces: Vec<String>,
    /// What is made already: the name of a formula that others use; may be said more than once.
    #[arg(long, value_name = "NAME")]
    there: Vec<String>,
    /// When the baker sleeps, instead of what the kitchen says: "22:30-06:30".
    #[arg(long, value_name = "HOURS", value_parser = hours)]
    asleep: Option<DayHours>,
    /// When nobody is in the kitchen, besides what the kitchen says: "12:00-13:30"; may be said more than once.
    #[arg(long, value_name = "HOURS", value_parser = hours)]
    out: Vec<DayHours>,
    /// What is done already, and when: "sponge/ferment=06:10", stage and step by its action or number, the formula
    /// before them where it is not clear; the rest of the day is planned again. May be said more than once.
    #[arg(long, value_name = "STEP=TIME")]
    done: Vec<String>,
    /// What goes on, and since when: "dough/bulk=06:25". May be said more than once.
    #[arg(long, value_name = "STEP=TIME")]
    begun: Vec<String>,
    /// What was seen of what goes on: how far it has risen since its step began, "dough/bulk=07:10 risen by half", or how
    /// warm it came from the bowl or stands, "dough/mix=22 °C"; the rest of its time is foreseen anew. May be said more than once.
    #[arg(long, value_name = "STEP=SEEN")]
    seen: Vec<String>,
    /// Where the clock hangs, as the time zone database calls it: "Europe/Vienna"; the system's if left out.
    #[arg(long, value_name = "ZONE")]
    zone: Option<String>,
    /// Plans as if it were that time: "2026-11-28 12:00".
    #[arg(long, value_name = "WHEN")]
    now: Option<String>,
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
        let zone = moment::zone(self.zone.as_deref())?;
        let now = moment::now(self.now.as_deref(), &zone)?;
        let serve = moment::read(&self.serve, &zone, &now)?;
        let opened = proof_read(&self.book)?;
        let (place, around) = self.kitchen(&opened, &serve)?;
        let formulas = self.in_size(chosen(opened.formulas(), &self.formula)?)?.into_iter().map(Arc::new).collect();
        let there = self.there(&opened.book)?;
        let done = self.done.iter().map(|text| happened(text, &zone, &now, Progress::Done));
        let begun = self.begun.iter().map(|text| happened(text, &zone, &now, Progress::Begun));
        let happened = done.chain(begun).collect::<Result<Vec<_>, _>>()?;
        let seen = self.seen.iter().map(|text| seen(text, &zone, &now)).collect::<Result<Vec<_>, _>>()?;
        let wanted = Wanted { formulas, serve, now, there, happened, seen, place, around };
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
            let settings = &opened.book.settings;
            let words = publish::print::prep(&day, &settings.language, publish::Units::of(settings));
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
        let units = publish::Units::of(&book.settings);
        match self.format {
            DayFormat::Text => publish::day::text(day, terminal::width()),
            DayFormat::Prep => publish::day::prep(day, units, terminal::width()),
            DayFormat::Shopping => publish::day::shopping(day, &book.prices, &book.larder),
            DayFormat::Chart => publish::day::chart(day),
            DayFormat::Calendar => publish::day::calendar(day, units, &wanted.now),
            DayFormat::Json => format!("{:#}", publish::day::json(day)),
        }
    }

    /// The kitchen with what the command line says of sleep and absence, and how warm it is until serving.
    fn kitchen(&self, opened: &Opened, serve: &ZonedDateTime) -> Result<(Workplace, Surroundings), Failure> {
        let mut kitchen = self.place.kitchen(opened)?;
        kitchen.working.asleep = self.asleep.or(kitchen.working.asleep);
        kitchen.working.out.extend(&self.out);
        let clock = TimeSpan::minutes(f64::from(serve.hour()) * 60.0 + f64::from(serve.minute()));
        Ok((Workplace::of(&kitchen), self.place.surroundings(opened, &kitchen)?.with_serving_at(clock)))
    }

    /// The formulas, those as large as was asked of which that is said.
    fn in_size(&self, mut formulas: Vec<Formula>) -> Result<Vec<Formula>, Failure> {
        for text in &self.pieces {
            let (name, count) = match (text.split_once('='), &formulas[..]) {
                (Some((name, count)), _) => (name.trim().to_owned(), count),
                (None, [one]) => (one.name.clone(), text.as_str()),
                (None, _) => {
                    return Err(
                        Failure::new(format!("“{text}” does not say of what")).hint("write --pieces \"potato-muffins=36\"")
                    );
                }
            };
            let count = count.trim().parse::<f64>().ok().filter(|count| *count >= 1.0 && count.fract() == 0.0);
            let count = count.ok_or_else(|| {
                Failure::new(format!("“{text}” is no number of pieces")).hint("write a whole number: --pieces 36")
            })?;
            let Some(one) = formulas.iter_mut().find(|one| one.name == name) else {
                return Err(unknown("formula", &name, formulas.iter().map(|one| one.name.as_str())));
            };
            let large = scaled_to(one, &Target::Pieces(Count::pieces(count), None));
            *one = large.map_err(|fault| Failure::new(format!("“{}” cannot be made so: {fault}", one.head.title)))?.formula;
        }
        Ok(formulas)
    }

    fn there(&self, book: &Book) -> Result<BTreeSet<String>, Failure> {
        match self.there.iter().find(|name| !book.formulas.contains_key(*name)) {
            None => Ok(self.there.iter().cloned().collect()),
            Some(name) => Err(unknown("formula", name, book.formulas.keys().map(String::as_str))),
        }
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

fn hours(text: &str) -> Result<DayHours, String> {
    DayHours::read(text).ok_or_else(|| "two times of a clock of 24 hours are wanted: 22:30-06:30".to_owned())
}

/// Why there is no day.
fn refused(refusal: Refusal, wanted: &Wanted) -> Failure {
    let serve = wanted.serve.strftime("%A %-d %B %Y, %H:%M");
    match refusal {
        Refusal::InThePast => {
            let now = wanted.now.strftime("%A %-d %B %Y, %H:%M");
            Failure::new(format!("{serve} is past: it is {now}")).hint("say a later time with --serve")
        }
        Refusal::Unknown(one) => Failure::new(format!("“{}” is no step of that day, or more than one", named(&one)))
            .hint("name the stage and the step's action or number; put the formula's name before them where it is not clear"),
        Refusal::Unused(seen, why) => {
            let of = named(&seen.of);
            let (reason, hint) = match why {
                Unused::NotBegun => ("it is not told since when that goes on", format!("say --begun \"{of}=TIME\"")),
                Unused::NotThen => ("that was before it began, or is still to come", "look at the times".to_owned()),
                Unused::Untold(Untold::NothingForeseen) => {
                    ("nothing is foreseen of how that rises", "say when it is done, with --done".to_owned())
                }
                Unused::Untold(Untold::DoesNotFit) => {
                    ("no leaven is so quick or so slow", "look again, or say when it is done, with --done".to_owned())
                }
            };
            Failure::new(format!("what was seen of “{of}” cannot be used: {reason}")).hint(hint)
        }
        Refusal::NothingToDo => {
            Failure::new("nothing has to be done for that").hint("leave out a --there, or name another formula")
        }
        Refusal::TooMany(jobs) => Failure::new(format!("that is {jobs} steps; up to {MOST_JOBS} are planned"))
            .hint("name fewer formulas with --formula"),
        Refusal::TooLong => Failure::new("that takes longer than a fortnight, which is the most that is planned")
            .hint("shorten a step's time, or say with --there what is made already"),
        Refusal::Impossible => Failure::new("there is no order in which that can be done, whatever gives way")
            .hint("look for a step that needs more than the kitchen has of something"),
        Refusal::Stopped => Failure::new("no order was found in the time there was").hint("give it longer with --patience"),
    }
}
