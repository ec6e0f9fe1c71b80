//! A stage brought to a total: what is locked stays, the rest moves in proportion.

use super::Sheet;
use crate::exchange::{Balance, Unfit};
use formula::resolve::formula::StageAt;
use quantity::{Mass, print};

impl Sheet<'_> {
    /// Makes a stage weigh so much in all.
    pub fn total(&mut self, at: StageAt, wanted: Mass, locked: &[String]) -> Result<String, Unfit> {
        let (c, s) = at;
        let stage = self.before.components.get(c).and_then(|component| component.stages.get(s));
        let stage = stage.ok_or_else(|| Unfit::Nothing { wanted: "such a stage".to_owned(), has: Vec::new() })?;
        let mut balance = Balance::of(self.before);
        let moves = |name: &String| !locked.contains(name) && balance.get(at, name) > Mass::ZERO;
        let moving: Vec<String> = stage.lines.iter().map(|line| line.name.clone()).filter(moves).collect();
        let now: Mass = moving.iter().map(|name| balance.get(at, name)).sum();
        let stays = stage.mixed() - now;
        if now <= Mass::ZERO || wanted <= stays {
            let why = format!("what stays as it is weighs {} already", print::mass(stays));
            return Err(Unfit::NotSo(why));
        }
        let by = (wanted - stays) / now;
        for name in &moving {
            let mass = balance.get(at, name) * by;
            balance.set(at, name, mass);
        }
        self.bring(&balance)?;
        Ok(format!("{} brought to {}", stage.title, print::mass(wanted)))
    }

    /// Brings the text to these weights.
    pub fn bring(&mut self, balance: &Balance) -> Result<(), Unfit> {
        let mut manuscript = self.manuscript.clone();
        balance.hold(&mut manuscript, &|text| self.work_out(text))?;
        self.manuscript = manuscript;
        Ok(())
    }
}
