//! Lines that come in, go out and change places.

use super::{Neighbour, Sheet};
use crate::exchange::{Unfit, mentions_without};
use formula::read::Amount;
use formula::resolve::formula::StageAt;

impl Sheet<'_> {
    /// Adds an ingredient by any of its names.
    pub fn add(&mut self, at: StageAt, typed: &str, amount: &str) -> Result<String, Unfit> {
        let (c, s) = at;
        let stage = self.before.components.get(c).and_then(|component| component.stages.get(s));
        let stage = stage.ok_or_else(|| Unfit::Nothing { wanted: "such a stage".to_owned(), has: Vec::new() })?;
        let nearest = || self.book.pantry.nearest(typed).map(str::to_owned);
        let found = self.book.pantry.find(typed.trim());
        let one = found.ok_or_else(|| Unfit::NoSuchIngredient(typed.trim().to_owned(), nearest()))?.clone();
        let amount = amount.trim();
        Amount::parse(amount).map_err(|fault| Unfit::NotSo(format!("“{amount}” is no amount: {fault}")))?;
        if stage.lines.iter().any(|line| line.name == one.name) {
            return Err(Unfit::NotSo(format!("{} is there already: change its amount", one.title)));
        }
        if !self.manuscript.append_line(at, &one.name, amount) {
            return Err(Unfit::NotSo("the stage has no list of ingredients yet: write one in the text".to_owned()));
        }
        Ok(format!("{amount} of {} added", one.called))
    }

    /// Takes a line out, and what the sentences say of it.
    pub fn take_out(&mut self, at: StageAt, name: &str) -> Result<String, Unfit> {
        let title = self.line(at, name)?.title.clone();
        self.manuscript.remove_line(at, name);
        let mut gone = Vec::new();
        for s in 0..self.before.components[at.0].stages.len() {
            let here = (at.0, s);
            let is_anothers = here != at && self.before.stage(here).lines.iter().any(|line| line.name == name);
            if is_anothers {
                continue;
            }
            self.manuscript.rewrite_steps(here, |text| {
                let (text, left_out) = mentions_without(text, name);
                gone.extend(left_out);
                text
            });
        }
        let sentences: String = gone.iter().map(|text| format!("; the sentence “{text}” went with it")).collect();
        Ok(format!("{title} taken out{sentences}"))
    }

    /// Moves a line past its neighbour.
    pub fn shift(&mut self, at: StageAt, name: &str, past: Neighbour) -> Result<String, Unfit> {
        let title = self.line(at, name)?.title.clone();
        let names: Vec<&str> = self.before.stage(at).lines.iter().map(|line| line.name.as_str()).collect();
        let here = names.iter().position(|one| *one == name).unwrap_or_default();
        let (other, way) = match past {
            Neighbour::Below => (names.get(here + 1), "down"),
            Neighbour::Above => (here.checked_sub(1).and_then(|above| names.get(above)), "up"),
        };
        let Some(other) = other else { return Ok(format!("{title} stays where it is")) };
        self.manuscript.swap_lines(at, name, other);
        Ok(format!("{title} moved {way}"))
    }
}
