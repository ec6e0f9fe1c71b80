//! A day as it is asked for: what is served when, what is there, and what has happened meanwhile.

use super::steps::{fix, happened, named, seen};
use super::{Place, chosen, unknown};
use crate::book::Opened;
use crate::failure::Failure;
use crate::moment;
use bench::calibration::Untold;
use bench::forecast::Surroundings;
use formula::arithmetic::{Target, scaled_to};
use formula::read::DayHours;
use formula::{Book, Formula};
use jiff::ZonedDateTime;
use plan::day::{Begins, MOST_JOBS, Progress, Refusal, Unused, Wanted, Workplace};
use quantity::{Count, TimeSpan};
use std::collections::BTreeSet;
use std::sync::Arc;

/// What is asked of a day.
#[derive(Default, clap::Args)]
pub struct DayAsked {
    /// When it is on the table: "2026-11-29 09:30", or "09:30" for the next time the clock shows that.
    #[arg(long, value_name = "WHEN")]
    pub serve: String,
    /// Only the formula of this name; may be said more than once.
    #[arg(long, value_name = "NAME")]
    pub formula: Vec<String>,
    /// So many pieces instead of what the formula makes: "36", or "potato-muffins=36" where there are several; baked,
    /// griddled and fried batch after batch. May be said more than once.
    #[arg(long, value_name = "COUNT")]
    pub pieces: Vec<String>,
    /// What is made already: the name of a formula that others use; may be said more than once.
    #[arg(long, value_name = "NAME")]
    pub there: Vec<String>,
    /// When the baker sleeps, instead of what the kitchen says: "22:30-06:30".
    #[arg(long, value_name = "HOURS", value_parser = hours)]
    pub asleep: Option<DayHours>,
    /// When nobody is in the kitchen, besides what the kitchen says: "12:00-13:30"; may be said more than once.
    #[arg(long, value_name = "HOURS", value_parser = hours)]
    pub out: Vec<DayHours>,
    /// What is done already, and when: "sponge/ferment=06:10", stage and step by its action or number, the formula
    /// before them where it is not clear; the rest of the day is planned again. May be said more than once.
    #[arg(long, value_name = "STEP=TIME")]
    pub done: Vec<String>,
    /// What goes on, and since when: "dough/bulk=06:25". May be said more than once.
    #[arg(long, value_name = "STEP=TIME")]
    pub begun: Vec<String>,
    /// What was seen of what goes on: how far it has risen since its step began, "dough/bulk=07:10 risen by half", or how
    /// warm it came from the bowl or stands, "dough/mix=22 °C"; the rest of its time is foreseen anew. May be said more than once.
    #[arg(long, value_name = "STEP=SEEN")]
    pub seen: Vec<String>,
    /// A step that begins at that time, the rest being planned around it: "dough/bake=07:00"; a time of the clock alone is
    /// the last such time before serving. May be said more than once.
    #[arg(long, value_name = "STEP=WHEN")]
    pub at: Vec<String>,
    /// A step that does not begin before that: "dough/mix=06:30". May be said more than once.
    #[arg(long, value_name = "STEP=WHEN")]
    pub not_before: Vec<String>,
    /// A step that does not begin after that: "sponge/mix=20:00". May be said more than once.
    #[arg(long, value_name = "STEP=WHEN")]
    pub not_after: Vec<String>,
    /// Where the clock hangs, as the time zone database calls it: "Europe/Vienna"; the system's if left out.
    #[arg(long, value_name = "ZONE")]
    pub zone: Option<String>,
    /// Plans as if it were that time: "2026-11-28 12:00".
    #[arg(long, value_name = "WHEN")]
    pub now: Option<String>,
}

impl DayAsked {
    /// What is wanted of the day, every part of it read.
    pub fn wanted(&self, opened: &Opened, place: &Place) -> Result<Wanted, Failure> {
        let zone = moment::zone(self.zone.as_deref())?;
        let now = moment::now(self.now.as_deref(), &zone)?;
        let serve = moment::read(&self.serve, &zone, &now)?;
        let (place, around) = self.kitchen(opened, place, &serve)?;
        let formulas = self.in_size(chosen(opened.formulas(), &self.formula)?)?.into_iter().map(Arc::new).collect();
        let there = self.there(&opened.book)?;
        let done = self.done.iter().map(|text| happened(text, &zone, &now, Progress::Done));
        let begun = self.begun.iter().map(|text| happened(text, &zone, &now, Progress::Begun));
        let happened = done.chain(begun).collect::<Result<Vec<_>, _>>()?;
        let seen = self.seen.iter().map(|text| seen(text, &zone, &now)).collect::<Result<Vec<_>, _>>()?;
        let fixes = [(Begins::At, &self.at), (Begins::NotBefore, &self.not_before), (Begins::NotAfter, &self.not_after)];
        let fixes = fixes.into_iter().flat_map(|(begins, texts)| texts.iter().map(move |text| (begins, text)));
        let fixes = fixes.map(|(begins, text)| fix(text, begins, &serve)).collect::<Result<Vec<_>, _>>()?;
        Ok(Wanted { formulas, serve, now, there, happened, seen, fixes, place, around })
    }

    /// The kitchen with what the command line says of sleep and absence, and how warm it is until serving.
    fn kitchen(&self, opened: &Opened, place: &Place, serve: &ZonedDateTime) -> Result<(Workplace, Surroundings), Failure> {
        let mut kitchen = place.kitchen(opened)?;
        kitchen.working.asleep = self.asleep.or(kitchen.working.asleep);
        kitchen.working.out.extend(&self.out);
        let clock = TimeSpan::minutes(f64::from(serve.hour()) * 60.0 + f64::from(serve.minute()));
        Ok((Workplace::of(&kitchen), place.surroundings(opened, &kitchen)?.with_serving_at(clock)))
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

/// Two times of a clock.
fn hours(text: &str) -> Result<DayHours, String> {
    DayHours::read(text).ok_or_else(|| "two times of a clock of 24 hours are wanted: 22:30-06:30".to_owned())
}

/// Why there is no day.
pub fn refused(refusal: Refusal, wanted: &Wanted) -> Failure {
    let serve = wanted.serve.strftime("%A %-d %B %Y, %H:%M");
    match refusal {
        Refusal::InThePast => {
            let now = wanted.now.strftime("%A %-d %B %Y, %H:%M");
            Failure::new(format!("{serve} is past: it is {now}")).hint("say a later time with --serve")
        }
        Refusal::Unknown(one) => Failure::new(format!("“{}” is no step of that day, or more than one", named(&one)))
            .hint("name the stage and the step's action or number; put the formula's name before them where it is not clear"),
        Refusal::FarOff(one) => Failure::new(format!("“{}” is fixed to a time more than a fortnight from serving", named(&one)))
            .hint("look at its date"),
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
