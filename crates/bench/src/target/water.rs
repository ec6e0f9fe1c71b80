//! How warm, or how icy, the water must be for a wanted dough temperature.

use super::{Amount, Answer, Asked, Target};
use crate::exchange::{Desk, Unfit};
use crate::forecast::{ByRule, HARMS_YEAST, Mixed, is_mixing, mixed_cold, rises_until};
use formula::resolve::formula::StageAt;
use formula::{Formula, Line};
use quantity::{Between, Mass, Measure, Temperature, print};
use science::heat::{factor_rule, liquid_temperature};

/// The target.
pub static TARGET: Target = Target {
    name: "water",
    about: "how warm the water must be for a wanted dough temperature, or how much of it ice",
    asks: "--stage; --to \"24 °C\", else what its mixing step states",
    grounds: "the balance of heat in mixing, the wetting of flour and the mixer's work counted (Çengel & Boles 2006); beside it the trade's rule of factors",
    fits,
    solve,
};

/// Below this, water alone is not cold enough to be had: some of it is weighed as ice.
const COLDEST: Temperature = Temperature::celsius(1.0);
/// The doughs for which the trade's rule of factors is made.
const RULED: std::ops::RangeInclusive<f64> = 18.0..=32.0;
/// The doughs for which the question makes sense.
const DOUGHS: Between<f64> = Between { from: 5.0, to: 45.0 };

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| mixes(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn mixes(stage: &formula::Stage) -> bool {
    stage.flour > Mass::ZERO && stage.steps.iter().any(|step| is_mixing(step.action))
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let at = desk.stage("stage with flour that is mixed", |_, stage| mixes(stage))?;
    let (mixed, wanted) = mixed(desk, at, asked)?;
    let stage = desk.before.stage(at);
    let (title, needed) = mixed
        .liquid
        .clone()
        .ok_or_else(|| Unfit::NotSo(format!("“{}” has no water or milk of its own whose warmth could be chosen", stage.title)))?;
    let line = stage.lines.iter().find(|line| line.title == title);
    let source = science::heat::liquid_temperature::EQUATION.name;
    let mut answer = Answer::default();
    answer.tell(
        if needed < COLDEST { format!("{title} would have to be as cold as") } else { format!("{title} at") },
        Amount::Temperature(needed),
        "the balance of heat in mixing, solved for the liquid",
        source,
    );
    answer.tell(
        "as the kitchen's things stand, it would come to",
        Amount::Temperature(mixed.computed.value),
        "the balance of heat in mixing, wetting of the flour counted",
        science::heat::mixing_temperature::EQUATION.name,
    );
    if needed < COLDEST {
        ice(desk, &mut answer, line, needed, &title)?;
    }
    if needed >= HARMS_YEAST {
        desk.minded.push(format!(
            "{title} at {} would harm yeast, and from about 60 °C set egg: warm the flour or the bowl instead, or accept a cooler dough",
            print::celsius(Between::just(needed))
        ));
    }
    if let Some(rule) = mixed.by_rule.filter(|_| RULED.contains(&wanted.as_celsius())) {
        tell_rule(&mut answer, &rule);
    }
    Ok(answer)
}

/// How it is mixed when its mixing step asks for the wanted temperature, and that temperature.
fn mixed(desk: &Desk, at: StageAt, asked: &Asked) -> Result<(Mixed, Temperature), Unfit> {
    let mut formula = desk.before.clone();
    let mut steps = formula.components[at.0].stages[at.1].steps.iter_mut();
    let step = steps.rfind(|step| is_mixing(step.action));
    let step = step.ok_or_else(|| Unfit::NotSo("it has no mixing step".to_owned()))?;
    let how = "say --to \"24 °C\"";
    if let Some(text) = &asked.to {
        let no = || Unfit::NotSaid("--to, the dough's temperature", format!("“{text}” is none: {how}"));
        step.temperature = Some(text.parse::<Measure>().ok().and_then(|one| one.temperature()).ok_or_else(no)?);
    }
    let range = step
        .temperature
        .ok_or_else(|| Unfit::NotSaid("--to, the dough's temperature", format!("no mixing step states one: {how}")))?;
    let wanted = Temperature::celsius(f64::midpoint(range.from.as_celsius(), range.to.as_celsius()));
    if !(DOUGHS.from..=DOUGHS.to).contains(&wanted.as_celsius()) {
        return Err(Unfit::NotSo(format!(
            "no dough is mixed to {}: from 5 °C to 45 °C is reckoned",
            print::celsius(Between::just(wanted))
        )));
    }
    // Earlier steps that state a temperature of their own do not stand in the way of the last.
    let risen = rises_until(&formula, desk.around, at).into_iter().find(|rise| rise.at == at).and_then(|rise| rise.mixed);
    Ok((risen.unwrap_or_else(|| mixed_cold(&formula, at, desk.around)), wanted))
}

/// The part of the water that is weighed as ice.
fn ice(desk: &mut Desk, answer: &mut Answer, line: Option<&Line>, needed: Temperature, title: &str) -> Result<(), Unfit> {
    let water = line.filter(|line| line.ingredient().is_some_and(|one| one.is_water()));
    let Some((line, one)) = water.and_then(|line| Some((line, line.ingredient()?))) else {
        desk.minded.push(format!("{title} cannot be had so cold: chill the flour and everything else first"));
        return Ok(());
    };
    let tap = desk.around.stored(one).value;
    let ice = liquid_temperature::ice_in(line.mass.value, tap, needed);
    if ice > line.mass.value {
        return Err(Unfit::NotSo(format!(
            "even all of the {title} as ice would leave the dough too warm: chill the flour, or accept a warmer dough"
        )));
    }
    let source = liquid_temperature::EQUATION.name;
    answer.tell("of it as ice", Amount::Mass(ice), "the heat that melting ice takes up", source);
    answer.tell(format!("the rest as {title} at"), Amount::Temperature(tap), "what the kitchen has", "the kitchen's own figures");
    desk.minded.push("ice is to be crushed, so that it melts before the dough is mixed, and from water fit to drink".to_owned());
    Ok(())
}

/// What the trade's rule of factors says, and the one figure in which all that the balance counts is hidden.
fn tell_rule(answer: &mut Answer, rule: &ByRule) {
    let name = factor_rule::EQUATION.name;
    answer.tell(
        "by the trade's rule of factors",
        Amount::Temperature(rule.water),
        "the rule of factors, which knows no weights",
        name,
    );
    answer.tell("with the usual friction factor", Amount::Warming(rule.friction), "common practice, no source", name);
    answer.tell("the rule agrees with", Amount::Warming(rule.agreeing), "the rule solved for its friction", name);
}
