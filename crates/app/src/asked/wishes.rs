//! What is wished of an exchange or asked of a target, as it is typed.

use super::{count, length, percent, time, time_of_day};
use crate::failure::Failure;
use bench::exchange::Wishes;
use bench::target::{Amount, Asked, Ready, When};
use quantity::Money;

/// What is wished of an exchange.
#[derive(Default, clap::Args)]
pub struct Wished {
    /// What is exchanged: a line or a stage by its name in the formula.
    #[arg(long, value_name = "NAME")]
    pub of: Option<String>,
    /// The stage it stands in, where its name stands in several.
    #[arg(long, value_name = "NAME")]
    pub stage: Option<String>,
    /// What takes its place: an ingredient, a kind, a size, a tin.
    #[arg(long, value_name = "WHAT")]
    pub into: Option<String>,
    /// How much of it: "30 %".
    #[arg(long, value_name = "PERCENT")]
    pub share: Option<String>,
    /// The hydration of what is new: "80 %".
    #[arg(long, value_name = "PERCENT")]
    pub hydration: Option<String>,
    /// How long what is new may take: "12 h".
    #[arg(long, value_name = "TIME")]
    pub time: Option<String>,
    /// How high above the sea: "1800 m".
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub altitude: Option<String>,
    /// What it was made in, where the formula does not say.
    #[arg(long, value_name = "TIN")]
    pub from: Option<String>,
    /// How many of what is new.
    #[arg(long, value_name = "COUNT")]
    pub count: Option<String>,
}

impl Wished {
    /// The wishes, each read.
    pub fn read(&self) -> Result<Wishes, Failure> {
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
}

/// What is asked of a target.
#[derive(Default, clap::Args)]
#[command(group(clap::ArgGroup::new("when")))]
pub struct Sought {
    /// The stage that is meant, by its name in the formula.
    #[arg(long, value_name = "NAME")]
    pub stage: Option<String>,
    /// The line that is free, by its name in the formula.
    #[arg(long, value_name = "NAME")]
    pub of: Option<String>,
    /// What is wanted: "62 %", "24 °C", "65 Brix", "2 Pa·s", "4 l".
    #[arg(long, value_name = "FIGURE", allow_hyphen_values = true)]
    pub to: Option<String>,
    /// An ingredient that comes in.
    #[arg(long, value_name = "INGREDIENT")]
    pub with: Option<String>,
    /// Ripe after so long: "10 h".
    #[arg(long, value_name = "TIME", group = "when", allow_hyphen_values = true)]
    pub ripe_after: Option<String>,
    /// Risen after so long: "90 min".
    #[arg(long, value_name = "TIME", group = "when", allow_hyphen_values = true)]
    pub risen_after: Option<String>,
    /// Ripe by the clock: "07:30".
    #[arg(long, value_name = "CLOCK", group = "when")]
    pub ripe_at: Option<String>,
    /// Risen by the clock: "07:30".
    #[arg(long, value_name = "CLOCK", group = "when")]
    pub risen_at: Option<String>,
    /// When it is mixed: "21:00".
    #[arg(long, value_name = "CLOCK")]
    pub begun: Option<String>,
    /// How many bowls or shelves.
    #[arg(long, value_name = "COUNT", allow_hyphen_values = true)]
    pub count: Option<String>,
    /// A figure and what it should come to: salt="2 %" of all flour, or price="0.60 EUR" a piece.
    #[arg(long, value_name = "FIGURE=SHARE", allow_hyphen_values = true)]
    pub aim: Vec<String>,
    /// How far each line may move: "20 %".
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    pub within: Option<String>,
    /// A line that stays as it is.
    #[arg(long, value_name = "NAME")]
    pub keep: Vec<String>,
}

impl Sought {
    /// The question, each part of it read.
    pub fn read(&self) -> Result<Asked, Failure> {
        let ready = match (&self.ripe_after, &self.risen_after, &self.ripe_at, &self.risen_at) {
            (Some(text), ..) => Some(Ready::After(When::Ripe(time(text)?))),
            (_, Some(text), ..) => Some(Ready::After(When::Risen(time(text)?))),
            (_, _, Some(clock), _) => Some(Ready::RipeAt(time_of_day(clock)?)),
            (.., Some(clock)) => Some(Ready::RisenAt(time_of_day(clock)?)),
            _ => None,
        };
        Ok(Asked {
            of: self.of.clone(),
            stage: self.stage.clone(),
            to: self.to.clone(),
            with: self.with.clone(),
            ready,
            begun: self.begun.as_deref().map(time_of_day).transpose()?,
            count: self.count.as_deref().map(count).transpose()?,
            within: self.within.as_deref().map(percent).transpose()?,
            aims: self.aim.iter().map(|text| aim(text)).collect::<Result<_, _>>()?,
            keep: self.keep.clone(),
        })
    }
}

/// A figure and what it should come to: `salt=2 %`, `price=0.60 EUR`.
fn aim(text: &str) -> Result<(String, Amount), Failure> {
    let wrong = || Failure::new(format!("“{text}” is no aim")).hint("write --aim salt=\"2 %\" or --aim price=\"0.60 EUR\"");
    let (name, figure) = text.split_once('=').ok_or_else(wrong)?;
    let figure = match figure.trim().parse::<Money>() {
        Ok(money) => Amount::Price(money),
        Err(_) => Amount::Share(percent(figure.trim()).map_err(|_| wrong())?),
    };
    Ok((name.trim().to_owned(), figure))
}
