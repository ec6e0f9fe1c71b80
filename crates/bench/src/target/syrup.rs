//! A syrup of a wanted strength, or one that pours as is wanted: by the water that is boiled off, or by its sugar.

use super::{Amount, Answer, Asked, Target, let_pieces_follow};
use crate::exchange::{Desk, Part, Unfit, figure, water_of};
use crate::forecast::{Held, boils, in_the_pot, poured_at, reached_in_pot};
use formula::ingredient::Figure;
use formula::read::{Condition, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Line, Stage};
use quantity::{Between, Fraction, Mass, Temperature, Viscosity, print};
use science::sugar::viscosity::{EQUATION, sucrose, viscosity};

/// The target.
pub static TARGET: Target = Target {
    name: "syrup",
    about: "a syrup of a wanted strength or pour: the water to boil off or to add, or how much to weigh in of a sugar that is named",
    asks: "--to \"65 Brix\" or \"2 Pa·s\"; --stage; --of a sugar, where that is free and the boiling stays as stated",
    grounds: "the balance of sugar and water; how a clear sucrose syrup pours; fruit and acid make it thicker",
    fits,
    solve,
};

/// Strengths of a syrup: below it is sweet water, above it grains or is sweets.
const WEAKEST: Fraction = Fraction::percent(10.0);
const STRONGEST: Fraction = Fraction::percent(85.0);
/// A clear syrup stronger than this grains when it is cold: sucrose at 20 °C.
const SATURATED: Fraction = Fraction::percent(66.7);

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| is_syrup(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn is_syrup(stage: &Stage) -> bool {
    let has_sugar =
        |line: &Line| line.ingredient().and_then(|one| one.composition.share(Figure::Sugars)) >= Some(Fraction::percent(30.0));
    stage.kind == StageKind::Cooked && stage.steps.iter().any(boils) && stage.lines.iter().any(has_sugar)
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    // What `--of` names is the line that is free, not the stage.
    let fitting: Vec<StageAt> = desk.before.stages().filter(|(_, stage)| is_syrup(stage)).map(|(at, _)| at).collect();
    let at = match fitting[..] {
        [one] if asked.stage.is_none() => one,
        _ => desk.stage("cooked stage with sugar that boils", |_, stage| is_syrup(stage))?,
    };
    let warm = poured_at(desk.before.stage(at), desk.around);
    let wanted = Wished::read(asked.to.as_deref())?;
    let brix = wanted.brix(warm);
    if !(brix >= WEAKEST && brix <= STRONGEST) {
        return Err(Unfit::NotSo(format!("that would be {} of sugar: from 10 to 85 Brix is reckoned", print::percent(brix, 1))));
    }
    let before = in_the_pot(desk.before, at);
    let mut answer = Answer::default();
    if asked.of.is_some() {
        by_sugar(desk, at, &before, brix, &mut answer)?;
    } else {
        by_water(desk, at, &before, brix, &mut answer)?;
    }
    let boils = reached_in_pot(&before, brix, desk.around).boils_at;
    tell((brix, warm, boils), wanted, &mut answer);
    desk.minded.push(format!(
        "where a sentence names the temperature at its end, that is now about {}",
        print::celsius(Between::just(Temperature::celsius((boils.as_celsius() * 2.0).round() / 2.0)))
    ));
    state(desk, at, brix, wanted);
    if before.untold > Mass::ZERO {
        desk.minded.push(format!("for {} of it no source gives the water: go by the refractometer", print::mass(before.untold)));
    }
    desk.minded.push("boiling syrup burns badly: a deep pan, no children near it, and nothing tasted hot".to_owned());
    Ok(answer)
}

/// What is wanted of a syrup.
#[derive(Clone, Copy)]
enum Wished {
    Brix(Fraction),
    Pours(Viscosity),
}

impl Wished {
    fn read(text: Option<&str>) -> Result<Self, Unfit> {
        let how = "such as --to \"65 Brix\" or --to \"2 Pa·s\"";
        let text = text.ok_or_else(|| Unfit::NotSaid("--to, the strength or the pour", how.to_owned()))?.trim();
        let pours = format!("pours at {}", text.replace("Pa s", "Pa·s"));
        match (Condition::read(&text.replace("°Bx", "Brix")), Condition::read(&pours)) {
            (Condition::Brix(brix), _) if brix.is_finite() => Ok(Self::Brix(Fraction::percent(brix))),
            (_, Condition::Pours(thick)) if thick.is_finite() && thick > 0.0 => Ok(Self::Pours(Viscosity::pascal_seconds(thick))),
            _ => Err(Unfit::NotSaid("--to, the strength or the pour", format!("“{text}” is neither: {how}"))),
        }
    }

    fn brix(self, warm: Temperature) -> Fraction {
        match self {
            Self::Brix(brix) => brix,
            Self::Pours(thick) => sucrose(thick, warm),
        }
    }
}

/// Boils off what is too much, or adds what is lacking.
fn by_water(desk: &mut Desk, at: StageAt, before: &Held, brix: Fraction, answer: &mut Answer) -> Result<(), Unfit> {
    let stage = desk.before.stage(at);
    let needs = reached_in_pot(before, brix, desk.around);
    let stated = stage.mixed() * stage.boil_off;
    let balance = science::sugar::boil_off::EQUATION.name;
    answer.tell("steam as the formula states it", Amount::Mass(stated), "the stated share of what goes in", "the formula");
    if needs.water >= Mass::ZERO {
        let share = Fraction::ratio(needs.water / stage.mixed());
        answer.tell("water to boil off", Amount::Mass(needs.water), "the balance of sugar and water", balance);
        answer.tell("of what goes in", Amount::Share(share), "the balance of sugar and water", balance);
        answer.tell(
            "on this ring at the least, after",
            Amount::Time(needs.takes.from),
            "the heat that arrives in the pan",
            balance,
        );
        desk.manuscript.set(Part::Stage(at), "boil-off", &percent(share), "kind");
        let_pieces_follow(desk, at.0, (before.total - needs.water) / (before.total - stated));
        return Ok(());
    }
    answer.tell("water to add", Amount::Mass(-needs.water), "the balance of sugar and water", balance);
    desk.manuscript.remove(Part::Stage(at), "boil-off");
    let beside = stage.lines.last().map(|line| line.name.clone()).unwrap_or_default();
    desk.minded.push(
        "it is strong enough before it boils: it is only brought to the boil, and what steam leaves is to be made good"
            .to_owned(),
    );
    desk.change_plain_water(at, -needs.water, &beside)
}

/// The sugar with which the syrup comes out so strong after the boiling that is stated.
fn by_sugar(desk: &mut Desk, at: StageAt, before: &Held, brix: Fraction, answer: &mut Answer) -> Result<(), Unfit> {
    let name = desk.wishes.of.clone().unwrap_or_default();
    let stage = desk.before.stage(at);
    let is_meant = |line: &&Line| line.name == name || line.ingredient().is_some_and(|one| one.name == name);
    let line = stage.lines.iter().find(is_meant);
    let has = || stage.lines.iter().map(|line| line.name.clone()).collect();
    let (line, one) = line
        .and_then(|line| Some((line, line.ingredient()?)))
        .ok_or_else(|| Unfit::Nothing { wanted: format!("sugar called “{name}” in that stage"), has: has() })?;
    let (sugar, water, steam, b) = (figure(one, Figure::Sugars)?, water_of(one), stage.boil_off.as_ratio(), brix.as_ratio());
    // Sugars and water after the boiling, both linear in what more of the line brings, less the share of all that leaves.
    let brings = sugar - b * (sugar + water - steam);
    let lacks = b * (before.sugars() + before.water - stage.mixed() * steam).as_grams() - before.sugars().as_grams();
    let needed = line.mass.value + Mass::grams(lacks / brings);
    if !(needed.is_finite() && needed > Mass::ZERO && brings > 0.0 && needed < Mass::kilograms(1000.0)) {
        return Err(Unfit::NotSo(format!("no weight of {} makes it so strong: change what is boiled off instead", line.title)));
    }
    let needed = Mass::grams((needed.as_grams() * 100.0).round() / 100.0);
    desk.balance.set(at, &line.name, needed);
    answer.tell(&line.title, Amount::Mass(needed), "the balance of sugar and water", "the sources of the ingredients");
    answer.tell("as the formula states it", Amount::Mass(line.mass.value), "stated", "the formula");
    Ok(())
}

/// How strong, how hot and how thick it then is.
fn tell((brix, warm, boils): (Fraction, Temperature, Temperature), wanted: Wished, answer: &mut Answer) {
    let asked = ("what was asked for", "the question");
    let by_viscosity = ("the viscosity of a clear sugar syrup", EQUATION.name);
    let (strength, pour) = match wanted {
        Wished::Brix(_) => (asked, by_viscosity),
        Wished::Pours(_) => (by_viscosity, asked),
    };
    answer.tell("its sugar then", Amount::Share(brix), strength.0, strength.1);
    answer.tell(
        "boiling in the end at",
        Amount::Temperature(boils),
        "the boiling point of a sugar solution",
        science::sugar::boiling_point::EQUATION.name,
    );
    answer.tell("poured at", Amount::Temperature(warm), "its cooling step, or the room", "the formula");
    answer.tell("there it pours as a clear syrup at", Amount::Viscosity(viscosity(brix, warm)), pour.0, pour.1);
}

/// Writes the strength into the step that boils it down, and the pour where the step goes by that.
fn state(desk: &mut Desk, at: StageAt, brix: Fraction, wanted: Wished) {
    for (index, step) in desk.before.stage(at).steps.iter().enumerate() {
        let until = match (&step.until, wanted) {
            (Some(Condition::Brix(_)), _) => format!("{} Brix", print::number(brix.as_percent(), 1)),
            (Some(Condition::Pours(_)), Wished::Pours(thick)) => {
                format!("pours at {} Pa·s", print::number(thick.as_pascal_seconds(), 3))
            }
            _ => continue,
        };
        desk.manuscript.set(Part::Step(at, index), "until", &until, "text");
    }
    if brix > SATURATED {
        desk.minded.push("a clear syrup so strong grains when it is cold, unless acid or glucose keeps it from that".to_owned());
    }
}

fn percent(share: Fraction) -> String {
    format!("{:.3} %", share.as_percent())
}
