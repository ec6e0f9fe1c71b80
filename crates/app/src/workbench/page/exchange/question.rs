//! What a page asks: which exchange or target, with what wishes, in which kitchen.

use super::{Made, Pairs};
use crate::asked::{Sought, Wished};
use crate::workbench::answer::{Refusal, spoken};
use crate::workbench::page::formula::{OnBench, Wanted};
use ::formula::{Formula, Pantry};
use bench::exchange::{self, exchange};
use bench::target::{self, solve};

/// An exchange or a target.
pub enum Kind {
    Exchange(&'static exchange::Exchange),
    Target(&'static target::Target),
}

impl Kind {
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Exchange(one) => one.name,
            Self::Target(one) => one.name,
        }
    }

    pub fn about(&self) -> String {
        spoken(match self {
            Self::Exchange(one) => one.about,
            Self::Target(one) => one.about,
        })
    }

    /// What it must or may be told, in words of a page.
    pub fn asks(&self) -> String {
        spoken(match self {
            Self::Exchange(one) => one.asks,
            Self::Target(one) => one.asks,
        })
    }

    /// The keys that it takes, in the order in which it asks for them.
    pub fn takes(&self) -> Vec<&'static str> {
        let asks = match self {
            Self::Exchange(one) => one.asks,
            Self::Target(one) => one.asks,
        };
        let mut keys = Vec::new();
        for part in asks.split("--").skip(1) {
            let key = part.split(|c: char| c != '-' && !c.is_ascii_lowercase()).next().unwrap_or_default();
            if !keys.contains(&key) {
                keys.push(key);
            }
        }
        keys
    }

    /// What of a formula it can be made with, each name once.
    pub fn fits(&self, formula: &Formula) -> Vec<String> {
        let mut names: Vec<String> = Vec::new();
        let all = match self {
            Self::Exchange(one) => (one.fits)(formula),
            Self::Target(one) => (one.fits)(formula),
        };
        for name in all {
            if !names.contains(&name) {
                names.push(name);
            }
        }
        names
    }

    /// What can take its place, by name and title, the likeliest first.
    pub fn offers(&self, formula: &Formula, pantry: &Pantry) -> Vec<(String, String)> {
        let Self::Exchange(one) = self else { return Vec::new() };
        let title = |name: &str| pantry.find(name).map_or_else(|| name.to_owned(), |one| one.title.clone());
        (one.offers)(formula, pantry).into_iter().map(|name| (name.clone(), title(&name))).collect()
    }

    /// What is written beside a stroke that keeps it.
    pub fn stroke(&self) -> String {
        match self {
            Self::Exchange(one) => format!("exchange: {}", one.name),
            Self::Target(one) => format!("target: {}", one.name),
        }
    }
}

/// What a page asks.
pub struct Question<'q> {
    pub pairs: &'q Pairs,
}

impl Question<'_> {
    /// What is said under a key, if it says anything.
    pub fn get(&self, key: &str) -> Option<String> {
        let said = self.pairs.iter().find(|(name, _)| name == key).map(|(_, value)| value.trim());
        said.filter(|value| !value.is_empty()).map(str::to_owned)
    }

    fn all(&self, key: &str) -> Vec<String> {
        let said = self.pairs.iter().filter(|(name, value)| name == key && !value.trim().is_empty());
        said.map(|(_, value)| value.clone()).collect()
    }

    /// Whether an answer is wanted already.
    pub fn is_asked(&self) -> bool {
        self.get("ask").is_some()
    }

    /// What is chosen.
    pub fn kind(&self) -> Result<Option<Kind>, Refusal> {
        let no_such = |what: &str, name: &str| Refusal::no_such(format!("There is no {what} called “{name}”."));
        if let Some(name) = self.get("exchange") {
            let found = exchange::ALL.iter().find(|one| one.name == name).ok_or_else(|| no_such("exchange", &name))?;
            return Ok(Some(Kind::Exchange(found)));
        }
        let Some(name) = self.get("target") else { return Ok(None) };
        let found = target::ALL.iter().find(|one| one.name == name).ok_or_else(|| no_such("target", &name))?;
        Ok(Some(Kind::Target(found)))
    }

    /// The kitchen that is meant.
    pub fn wanted(&self) -> Wanted {
        Wanted { kitchen: self.get("kitchen"), room: self.get("room"), ..Wanted::default() }
    }

    /// What comes of it.
    pub fn answer(&self, kind: &Kind, one: &OnBench) -> Result<Made, Refusal> {
        let book = &one.opened.book;
        let around = self.wanted().around(one.opened)?;
        let name = one.name();
        let unfit = |why: bench::exchange::Unfit| Refusal::unfit(capital(&spoken(&why.to_string())), spoken(&why.hint()));
        match kind {
            Kind::Exchange(which) => {
                let wishes = self.wished().read().map_err(|failure| Refusal::amiss(&failure))?;
                exchange(which.name, book, name, &around, &wishes).map(|made| Made::Exchanged(Box::new(made))).map_err(unfit)
            }
            Kind::Target(which) => {
                let asked = self.sought().read().map_err(|failure| Refusal::amiss(&failure))?;
                solve(which.name, book, name, &around, &asked).map(|made| Made::Solved(Box::new(made))).map_err(unfit)
            }
        }
    }

    fn wished(&self) -> Wished {
        Wished {
            of: self.get("of"),
            stage: self.get("stage"),
            into: self.get("into"),
            share: self.get("share").map(|text| with_unit(text, "%")),
            hydration: self.get("hydration").map(|text| with_unit(text, "%")),
            time: self.get("time").map(|text| with_unit(text, "h")),
            altitude: self.get("altitude").map(|text| with_unit(text, "m")),
            from: self.get("from"),
            count: self.get("count"),
        }
    }

    fn sought(&self) -> Sought {
        let aims = self.pairs.iter().filter_map(|(key, value)| Some((key.strip_prefix("aim-")?, value.trim())));
        let aims = aims.filter(|(_, value)| !value.is_empty());
        let unit = |name: &str| if name == "price" { "" } else { "%" };
        Sought {
            of: self.get("of"),
            stage: self.get("stage"),
            to: self.get("to"),
            with: self.get("with"),
            ripe_after: self.get("ripe-after").map(|text| with_unit(text, "h")),
            risen_after: self.get("risen-after").map(|text| with_unit(text, "min")),
            ripe_at: self.get("ripe-at"),
            risen_at: self.get("risen-at"),
            begun: self.get("begun"),
            count: self.get("count"),
            aim: aims.map(|(name, value)| format!("{name}={}", with_unit(value.to_owned(), unit(name)))).collect(),
            within: self.get("within").map(|text| with_unit(text, "%")),
            keep: self.all("keep"),
        }
    }
}

/// A bare number in the unit that is meant.
fn with_unit(text: String, unit: &str) -> String {
    if !unit.is_empty() && text.parse::<f64>().is_ok() { format!("{text} {unit}") } else { text }
}

fn capital(words: &str) -> String {
    quantity::print::capital(words)
}
