//! A line's amount as it is typed, and whether it holds its weight or its percentage.

use super::{Holding, Sheet};
use crate::exchange::{Balance, Unfit, grams};
use formula::read::Amount;
use formula::resolve::formula::{Content, StageAt};
use formula::{Line, Severity};
use quantity::{Fraction, Kind, Mass};

impl Sheet<'_> {
    /// Writes an amount as typed. A percentage is a share of the stage's own flour, as the sheet shows it, whatever
    /// the document counts percentages of there.
    pub fn amount(&mut self, at: StageAt, name: &str, typed: &str) -> Result<String, Unfit> {
        let line = self.line(at, name)?.clone();
        let typed = typed.trim();
        let amount = Amount::parse(typed).map_err(|fault| Unfit::NotSo(format!("“{typed}” is no amount: {fault}")))?;
        let share = match amount {
            Amount::Measure(measure) if measure.unit.kind() == Kind::Share => Some(Fraction::percent(measure.value.middle())),
            _ => None,
        };
        match share {
            Some(share) if line.is_flour => self.share_of_flours(at, &line, share)?,
            Some(share) => self.share(at, &line, share, typed)?,
            None => {
                let mass = self.written(at, &line, typed)?;
                if line.is_flour {
                    self.weigh(at, name, mass)?;
                } else {
                    self.manuscript.set_amount(at, name, typed);
                }
            }
        }
        Ok(format!("{}: {typed}", line.title))
    }

    /// What a line weighs once it is written so, beside an amount that is refused with its own words.
    fn written(&self, at: StageAt, line: &Line, typed: &str) -> Result<Mass, Unfit> {
        let mut trying = self.manuscript.clone();
        trying.set_amount(at, &line.name, typed);
        let checked = self.work_out(&trying.text);
        let of_line = |name: &str| checked.value.lines().find(|(one, line)| *one == at && line.name == name);
        match of_line(&line.name) {
            Some((_, line)) => Ok(line.mass.value),
            None => {
                let said = checked.diagnostics.iter().find(|found| found.severity == Severity::Error);
                Err(Unfit::Broken(said.map_or_else(|| "the line cannot be read".to_owned(), |found| found.message.clone())))
            }
        }
    }

    fn share(&mut self, at: StageAt, line: &Line, share: Fraction, typed: &str) -> Result<(), Unfit> {
        let flour = self.flour(at)?;
        let wanted = flour * share;
        let is_so = |mass: Mass| (mass - wanted).abs() <= Mass::grams(0.006).max(wanted * Fraction::percent(0.01));
        if !matches!(line.content, Content::Stage(..)) && self.written(at, line, typed).is_ok_and(is_so) {
            self.manuscript.set_amount(at, &line.name, typed);
            return Ok(());
        }
        self.weigh(at, &line.name, wanted)
    }

    /// One flour takes a share of all of a stage's flour; the others make room for it in their own proportion.
    fn share_of_flours(&mut self, at: StageAt, line: &Line, share: Fraction) -> Result<(), Unfit> {
        let flour = self.flour(at)?;
        let stage = self.before.stage(at);
        let others: Mass = stage.lines.iter().filter(|one| one.is_flour && one.name != line.name).map(|one| one.mass.value).sum();
        if others <= Mass::ZERO {
            let only = "it is the only flour of the stage, which is 100 % by itself: type its weight";
            return Err(Unfit::NotSo(only.to_owned()));
        }
        if !(0.0..1.0).contains(&share.as_ratio()) {
            return Err(Unfit::NotSo("one of several flours is less than 100 % of them".to_owned()));
        }
        let room = flour * share.left() / others;
        let mut balance = Balance::of(self.before);
        for one in stage.lines.iter().filter(|one| one.is_flour) {
            let mass = if one.name == line.name { flour * share } else { one.mass.value * room };
            balance.set(at, &one.name, mass);
        }
        self.bring(&balance)
    }

    /// Writes another weight of one line; what is a percentage of flour follows where that line is flour.
    fn weigh(&mut self, at: StageAt, name: &str, mass: Mass) -> Result<(), Unfit> {
        let line = self.line(at, name)?;
        let is_weight = matches!(line.written, Amount::Measure(measure) if measure.unit.kind() == Kind::Mass);
        if is_weight || !line.is_flour {
            self.manuscript.set_amount(at, name, &grams(mass));
            return Ok(());
        }
        // Flours by percentage are sized from elsewhere: they become weights, and the rest follows them.
        let stage = self.before.stage(at);
        let mut balance = Balance::of(self.before);
        let flour: Mass = stage.lines.iter().filter(|one| one.is_flour).map(|one| one.mass.value).sum();
        let grown = (flour - line.mass.value + mass) / flour;
        for one in &stage.lines {
            let follows = matches!(one.written, Amount::Measure(measure) if measure.unit.kind() == Kind::Share);
            if !one.is_flour && follows {
                balance.set(at, &one.name, one.mass.value * grown);
            }
        }
        balance.set(at, name, mass);
        self.bring(&balance)
    }

    /// Makes a line hold its weight, or its share of the flour.
    pub fn hold(&mut self, at: StageAt, name: &str, holding: Holding) -> Result<String, Unfit> {
        let line = self.line(at, name)?.clone();
        if line.is_flour {
            return Err(Unfit::NotSo("percentages are shares of the flour, so flour holds its weight".to_owned()));
        }
        match holding {
            Holding::Weight => {
                self.manuscript.set_amount(at, name, &grams(line.mass.value));
                Ok(format!("{} holds its weight", line.title))
            }
            Holding::Share => {
                let percent = line.mass.value / self.flour(at)? * 100.0;
                let written = (1..6).map(|decimals| format!("{} %", trimmed(percent, decimals)));
                let is_so = |mass: Mass| (mass - line.mass.value).abs() <= Mass::grams(0.006);
                let told = written.into_iter().find(|text| self.written(at, &line, text).is_ok_and(is_so));
                let told =
                    told.ok_or_else(|| Unfit::NotSo("percentages of this stage are shares of something else".to_owned()))?;
                self.manuscript.set_amount(at, name, &told);
                Ok(format!("{} holds its percentage", line.title))
            }
        }
    }

    fn flour(&self, at: StageAt) -> Result<Mass, Unfit> {
        let flour = self.before.stage(at).flour;
        if flour > Mass::ZERO { Ok(flour) } else { Err(Unfit::NotSo("the stage has no flour to be a share of".to_owned())) }
    }
}

/// A number with at most so many decimals, none of them an idle zero.
fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
