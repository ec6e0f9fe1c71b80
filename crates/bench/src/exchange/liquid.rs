//! Water that comes in or goes out at the desk, by a stage's own liquid.

use super::Unfit;
use super::balance::grams;
use super::desk::{Desk, named};
use super::mentions::{joined, mention};
use formula::ingredient::Figure;
use formula::resolve::formula::StageAt;
use formula::{Ingredient, Line};
use quantity::Mass;

/// Which liquids may make up for water.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Liquid {
    WaterAlone,
    MilkToo,
}

/// A text's figures are rounded to hundredths of a gram, and a hundredth of milk powder is eight of water.
const ROUNDING: Mass = Mass::grams(0.1);

impl Desk<'_> {
    /// Adds water to a stage or takes it away: its plain water, or else the water of its milk; where there is
    /// neither, new water is named beside a line.
    pub fn change_water(&mut self, at: StageAt, by: Mass, beside: &str) -> Result<(), Unfit> {
        self.change(at, by, beside, Liquid::MilkToo)
    }

    /// The same with plain water alone, so that the milk of the overall formula stays.
    pub fn change_plain_water(&mut self, at: StageAt, by: Mass, beside: &str) -> Result<(), Unfit> {
        self.change(at, by, beside, Liquid::WaterAlone)
    }

    fn change(&mut self, at: StageAt, by: Mass, beside: &str, liquid: Liquid) -> Result<(), Unfit> {
        if by.abs() < Mass::grams(0.005) {
            return Ok(());
        }
        let lines = self.before.stage(at).lines.iter().filter(|line| self.balance.get(at, &line.name) > Mass::ZERO);
        if let Some((line, share)) = liquid_of(lines, liquid == Liquid::MilkToo) {
            let (name, title) = (line.name.clone(), line.title.clone());
            if share < 1.0 {
                self.lost.push(format!("the water is balanced by the {title}, whose solids change with it"));
            }
            return self.change_liquid(at, name, &title, by / share);
        }
        if by < Mass::ZERO {
            let stage = &self.before.stage(at).title;
            let take = quantity::print::mass(-by);
            let what = if liquid == Liquid::MilkToo { "neither water nor milk" } else { "no plain water" };
            return Err(Unfit::NotSo(format!("“{stage}” has {what} from which {take} could be taken")));
        }
        let name = self.free_name(at, "water", beside);
        self.manuscript.insert_line(at, beside, &name, &named("water", &name, &grams(by)));
        self.balance.set(at, &name, by);
        let language = self.language();
        self.mention_instead(at, beside, |part| match part {
            Some("name" | "amount" | "temperature") => mention(beside, part),
            _ => joined(&[mention(beside, part), mention(&name, part)], language),
        });
        Ok(())
    }

    /// Takes so much more of a liquid, or less of it.
    fn change_liquid(&mut self, at: StageAt, name: String, title: &str, by: Mass) -> Result<(), Unfit> {
        let has = self.balance.get(at, &name);
        if has + by < -ROUNDING {
            let (take, has) = (quantity::print::mass(-by), quantity::print::mass(has));
            let stage = &self.before.stage(at).title;
            return Err(Unfit::NotSo(format!("{take} of {title} would have to be taken from “{stage}”, which has only {has}")));
        }
        if has + by < Mass::grams(0.05) {
            self.manuscript.remove_line(at, &name);
            self.balance.remove(at, &name);
            self.mention_instead(at, &name, |_| String::new());
        } else {
            self.balance.set(at, &name, has + by);
        }
        Ok(())
    }
}

/// The liquid of a stage that gives and takes water, and its share of water: plain water, or else milk where that
/// may be; of several lines the heaviest.
pub fn liquid_of<'l>(lines: impl Iterator<Item = &'l Line> + Clone, milk_too: bool) -> Option<(&'l Line, f64)> {
    let most = |test: &dyn Fn(&Ingredient) -> bool| {
        let fitting = lines.clone().filter(|line| line.ingredient().is_some_and(|one| test(one)));
        fitting.max_by(|a, b| a.mass.value.as_grams().total_cmp(&b.mass.value.as_grams()))
    };
    if let Some(water) = most(&Ingredient::is_water) {
        return Some((water, 1.0));
    }
    let milk = if milk_too { most(&Ingredient::is_milk)? } else { return None };
    Some((milk, milk.ingredient()?.composition.share(Figure::Water)?.as_ratio()))
}
