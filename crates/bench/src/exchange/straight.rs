//! A preferment into its dough: everything is mixed at once.

use super::desk::Desk;
use super::mentions::{joined, mention};
use super::preferment::{insert, only_user, remove_stage};
use super::{Exchange, Unfit, remarks};
use formula::read::Leaven;
use formula::resolve::formula::{Content, StageAt};
use formula::{Formula, Line, Stage};
use quantity::Mass;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "straight",
    about: "a preferment mixed into its dough at once",
    asks: "--of the preferment",
    grounds: "the baker's arithmetic: every gram stays",
    fits,
    offers: |_, _| Vec::new(),
    make,
};

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| is_preferment(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn is_preferment(stage: &Stage) -> bool {
    stage.kind.is_preferment() && stage.flour > Mass::ZERO
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let at = desk.stage("preferment", |_, stage| is_preferment(stage))?;
    let stage = desk.before.stage(at);
    if let Some(line) = stage.lines.iter().find(|line| !matches!(line.content, Content::Ingredient(_))) {
        return Err(Unfit::NotSo(format!("“{}” itself uses {}: exchange that first", stage.title, line.title)));
    }
    let (user, product) = only_user(desk, at)?;
    let share = stage.share(product.mass.value);
    let news = move_lines(desk, stage, user, product, share);
    desk.manuscript.remove_line(user, &product.name);
    desk.balance.remove(user, &product.name);
    let language = desk.language();
    desk.mention_instead(user, &product.name, |part| match part {
        Some("name" | "amount" | "temperature") => String::new(),
        _ => joined(&news.iter().map(|name| mention(name, None)).collect::<Vec<_>>(), language),
    });
    remove_stage(desk, at);
    desk.lost.push(remarks::HOURS_GONE.to_owned());
    let is_culture = stage.lines.iter().any(|line| line.ingredient().is_some_and(|one| one.leaven == Some(Leaven::Culture)));
    desk.minded.push(if is_culture { remarks::CULTURE_UNBUILT } else { remarks::YEAST_UNBUILT }.to_owned());
    if stage.kept_back > Mass::ZERO {
        desk.minded.push(remarks::NOTHING_KEPT.to_owned());
    }
    Ok(())
}

/// Adds each line to a line of the same ingredient in the dough, or puts it there; gives the names of the new.
fn move_lines(desk: &mut Desk, stage: &Stage, user: StageAt, product: &Line, share: f64) -> Vec<String> {
    let mut news: Vec<String> = Vec::new();
    for line in &stage.lines {
        let (Some(one), mass) = (line.ingredient(), line.mass.value * share) else { continue };
        let is_same =
            |other: &&Line| other.ingredient().is_some_and(|own| own.name == one.name) && other.is_flour == line.is_flour;
        match desk.before.stage(user).lines.iter().find(is_same) {
            Some(other) => {
                let has = desk.balance.get(user, &other.name);
                desk.balance.set(user, &other.name, has + mass);
            }
            None => {
                let after = news.last().cloned().unwrap_or_else(|| product.name.clone());
                news.push(insert(desk, user, &after, one, mass));
            }
        }
    }
    news
}
