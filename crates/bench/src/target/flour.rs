//! The blend of two flours with which the flour of a stage has a wanted protein.

use super::hydration::share;
use super::{Amount, Answer, Asked, Target};
use crate::exchange::{Desk, KEEP, Unfit, figure};
use formula::arithmetic::{FlourFault, two_flours};
use formula::ingredient::Figure;
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Stage};
use quantity::{Fraction, Mass, print};
use std::sync::Arc;

/// The target.
pub static TARGET: Target = Target {
    name: "flour",
    about: "the blend of two flours with which a stage's flour has a wanted protein",
    asks: "--to \"10.5 %\"; --with the other flour; --of the flour that gives way, --stage where it stands in several",
    grounds: "the baker's arithmetic; protein by the ingredient table, as sold",
    fits,
    solve,
};

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_flour(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_flour(line: &Line) -> bool {
    line.is_flour && line.ingredient().is_some() && line.mass.value > Mass::ZERO
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let wanted = share(asked.to.as_deref(), "--to, the protein", "such as --to \"10.5 %\"", Fraction::percent(90.0))?;
    let (at, line) = desk.line("flour", is_flour)?;
    let with = asked.with.as_deref();
    let with =
        desk.ingredient(with.ok_or_else(|| Unfit::NotSaid("--with, the other flour", "such as --with flour-cake".to_owned()))?)?;
    let one = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    if one.name == with.name {
        return Err(Unfit::NotSo(format!("it is {} already: a blend needs another flour", with.called)));
    }
    let stage = desk.before.stage(at);
    let other =
        stage.lines.iter().find(|other| other.name != line.name && other.ingredient().is_some_and(|own| own.name == with.name));
    // What the two flours weigh together stays; the rest of the stage's flour is as it is.
    let pair = line.mass.value + other.map_or(Mass::ZERO, |other| other.mass.value);
    let of_pair = protein_of_pair(stage, &[Some(line), other], wanted, pair)?;
    let share = two_flours(&one, &with, of_pair).map_err(|fault| refused(fault, of_pair))?;
    let (rest, new) = (pair * share, pair * share.left());
    put(desk, (at, line), other, &with, (rest, new));
    let mut answer = Answer::default();
    for (flour, mass) in [(&one, rest), (&with, new)] {
        let protein = flour.composition.share(Figure::Protein).unwrap_or_default();
        let what = format!("{}, of {} protein", flour.title, print::percent(protein, 2));
        answer.tell(what, Amount::Mass(mass), "the blend of two flours", "arithmetic");
    }
    answer.tell("protein of the stage's flour", Amount::Share(wanted), "protein as sold", "the sources of the flours");
    let more = crate::exchange::takes_up(&with, &one).unwrap_or_default()
        * (new - other.map_or(Mass::ZERO, |other| other.mass.value)).as_grams();
    desk.minded.push(format!(
        "the water is left as it is; by protein and bran the blend takes up about {} {}",
        print::mass(Mass::grams(more.as_ratio().abs())),
        if more < Fraction::ZERO { "less" } else { "more" }
    ));
    Ok(answer)
}

/// The protein that the two must have together so that all flour of the stage has what is wanted.
fn protein_of_pair(stage: &Stage, pair: &[Option<&Line>], wanted: Fraction, weight: Mass) -> Result<Fraction, Unfit> {
    let is_one = |line: &Line| pair.iter().flatten().any(|one| one.name == line.name);
    let mut protein = 0.0;
    let mut flour = weight;
    for line in stage.lines.iter().filter(|line| is_flour(line) && !is_one(line)) {
        let Some(one) = line.ingredient() else { continue };
        protein += line.mass.value.as_grams() * figure(one, Figure::Protein)?;
        flour += line.mass.value;
    }
    Ok(Fraction::ratio((flour.as_grams() * wanted.as_ratio() - protein) / weight.as_grams()))
}

fn refused(fault: FlourFault, wanted: Fraction) -> Unfit {
    Unfit::NotSo(format!("the two flours would need {} of protein together: {fault}", print::percent(wanted, 2)))
}

/// Writes both flours, each only where some of it is left.
fn put(desk: &mut Desk, (at, line): (StageAt, &Line), other: Option<&Line>, with: &Arc<Ingredient>, (rest, new): (Mass, Mass)) {
    let some = |mass: Mass| mass > Mass::grams(0.005);
    let one = line.ingredient().cloned();
    match (other, one) {
        (Some(other), _) => {
            for (name, mass) in [(&line.name, rest), (&other.name, new)] {
                if some(mass) {
                    desk.balance.set(at, name, mass);
                } else {
                    desk.manuscript.remove_line(at, name);
                    desk.balance.remove(at, name);
                    desk.mention_instead(at, name, |_| String::new());
                }
            }
        }
        (None, Some(one)) => {
            let parts = [(one, rest), (Arc::clone(with), new)];
            let parts: Vec<_> = parts.into_iter().filter(|(_, mass)| some(*mass)).collect();
            if some(new) {
                desk.swap(at, line, &parts, &KEEP);
            }
        }
        (None, None) => {}
    }
}
