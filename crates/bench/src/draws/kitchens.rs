//! One of many kitchens: the formula as it is weighed there, and its surroundings.

use super::cause::{Cause, Causes, is_salt, is_spooned, is_yeast};
use crate::forecast::Surroundings;
use formula::resolve::formula::StageAt;
use formula::{Formula, Line};
use quantity::TemperatureDifference;

/// A formula and its surroundings as a draw changes them.
pub fn changed(formula: &Formula, around: &Surroundings, causes: &Causes, draw: &[f64]) -> (Formula, Surroundings) {
    let (mut formula, mut around) = (formula.clone(), around.clone());
    for ((cause, deviation), off) in causes.0.iter().zip(draw) {
        let off = off * deviation;
        let kelvin = TemperatureDifference::kelvins(off);
        match cause {
            Cause::Room => {
                around.room.value = around.room.value + kelvin;
                around.course = around.course.clone().shifted(kelvin);
                around.off.room = kelvin;
            }
            Cause::Fridge => {
                around.fridge.value = around.fridge.value + kelvin;
                around.off.fridge = kelvin;
            }
            Cause::Bowl => around.off.bowl = kelvin,
            Cause::Lag => around.calibration.lag.middle += off,
            Cause::Contact => {
                around.calibration.contact.middle += off;
                around.off.contact = off / deviation;
            }
            Cause::Pores => around.off.pores = off,
            Cause::Heat => around.off.heat = kelvin,
            Cause::Spoons => spoon(&mut formula, 1.0 + off),
            Cause::Thickness => thicken(&mut formula, 1.0 + off),
            Cause::Vigour(name) => {
                let mut learnt = around.calibration.vigour(name).clone();
                learnt.middle += off;
                around.calibration.leavens.insert(name.clone(), learnt);
            }
            Cause::Yeast(at) => weigh(&mut formula, *at, 1.0 + off, is_yeast),
            Cause::Salt(at) => weigh(&mut formula, *at, 1.0 + off, is_salt),
        }
    }
    (formula, around)
}

/// Less than this of what is meant no scale lets pass.
const LEAST: f64 = 0.05;

fn weigh(formula: &mut Formula, (c, s): StageAt, factor: f64, which: fn(&Line) -> bool) {
    for line in formula.components[c].stages[s].lines.iter_mut().filter(|line| which(line)) {
        line.mass.value = line.mass.value * factor.max(LEAST);
    }
}

fn spoon(formula: &mut Formula, factor: f64) {
    let lines = formula.components.iter_mut().flat_map(|component| &mut component.stages).flat_map(|stage| &mut stage.lines);
    for line in lines.filter(|line| is_spooned(line)) {
        line.mass.value = line.mass.value * factor.max(LEAST);
    }
}

fn thicken(formula: &mut Formula, factor: f64) {
    for component in &mut formula.components {
        component.yields.thickness = component.yields.thickness.map(|thickness| thickness * factor.max(LEAST));
    }
}
