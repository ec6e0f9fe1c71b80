//! The demo formulas made in other ways.

use crate::checker::faults;
use crate::demo::{book, wanted};
use bench::forecast::rises;
use formula::Formula;
use formula::read::{Action, Condition};
use plan::alternatives::{Alternative, Change, NotSo, NotThatWay, Way, alternatives};
use plan::engine::{Patient, Propagation};
use quantity::Mass;

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";
const NOW: &str = "2026-11-26T12:00[Europe/Vienna]";

fn ways(name: &str) -> Vec<Alternative> {
    let book = book();
    alternatives(&book, &wanted(&book, &[name], SERVE, NOW), &Propagation, &mut Patient).expect("the day as written")
}

fn one(all: &[Alternative], way: Way) -> &Alternative {
    all.iter().find(|one| one.way == way).expect("every way is told")
}

fn main_formula(one: &Alternative) -> &Formula {
    let day = one.day.as_ref().expect("a day");
    &day.timeline.dishes.iter().find(|dish| dish.is_served).expect("a dish").formula
}

#[test]
fn each_day_stands_the_check_and_keeps_its_flour() {
    for name in ["potato-muffins", "cardamom-knots", "buckwheat-chickpea-griddle-bread", "cider-apple-fritters"] {
        let all = ways(name);
        let flour = |formula: &Formula| -> Mass { formula.stages().map(|(_, stage)| stage.flour).sum() };
        let written = all.iter().find(|one| one.is_as_written).expect("as written");
        for one in all.iter().filter(|one| one.day.is_ok()) {
            let day = one.day.as_ref().expect("a day");
            assert_eq!(faults(&day.timeline), Vec::<String>::new(), "{name}, {:?}", one.way);
            let apart = (flour(main_formula(one)) - flour(main_formula(written))).abs();
            assert!(apart < Mass::grams(0.1), "{name}, {:?}: the flour is the same in all", one.way);
            assert_eq!(one.is_as_written, day.changes.is_empty(), "{name}, {:?}", one.way);
        }
    }
}

#[test]
fn the_dose_brings_the_dough_up_in_the_middle_of_its_time() {
    let book = book();
    for name in ["potato-muffins", "cardamom-knots", "buckwheat-chickpea-griddle-bread", "cider-apple-fritters"] {
        for one in ways(name).iter().filter(|one| one.day.is_ok() && !one.is_as_written) {
            let around = wanted(&book, &[name], SERVE, NOW).around;
            let foreseen = rises(main_formula(one), &around);
            let first =
                foreseen.iter().flat_map(|rise| &rise.steps).find(|step| matches!(step.until, Some(Condition::RisenBy(_))));
            let first = first.expect("a rise");
            let stated = first.stated.expect("a stated time");
            let reached = first.reached.as_ref().expect("it gets there").from.value;
            let off = (reached - (stated.from + stated.to) * 0.5).abs();
            assert!(off < reached * 0.01, "{name}, {:?}: {reached:?} of {stated:?}", one.way);
        }
    }
}

#[test]
fn the_muffins_differ_as_they_should() {
    let all = ways("potato-muffins");
    assert!(one(&all, Way::Overnight).is_as_written);
    let up = |way: Way| one(&all, way).day.as_ref().ok().and_then(|day| day.up()?.0.cloned()).expect("some sleep");
    assert!(up(Way::SameDay) < up(Way::Overnight), "a dough that is mixed in the morning is mixed earlier");
    assert_eq!(up(Way::Cold).strftime("%H:%M").to_string(), "06:30", "one that rose at night lets the baker sleep");
    let has = |way: Way, action: Action| main_formula(one(&all, way)).steps().any(|(_, step)| step.action == action);
    assert!(!has(Way::SameDay, Action::Ferment) && !has(Way::SameDay, Action::Retard) && has(Way::Cold, Action::Retard));
}

#[test]
fn what_cannot_be_is_told_so() {
    let rye = ways("caraway-rye-tin");
    assert!(one(&rye, Way::Overnight).is_as_written);
    for way in [Way::SameDay, Way::Cold] {
        assert!(matches!(one(&rye, way).day, Err(NotThatWay::Formula(NotSo::NothingToDose))), "a culture is not dosed");
    }
    let knots = ways("cardamom-knots");
    assert!(one(&knots, Way::Cold).is_as_written);
    assert!(matches!(one(&knots, Way::Overnight).day, Err(NotThatWay::Formula(NotSo::Exchange(_)))), "all their water is milk");
    let same = one(&knots, Way::SameDay).day.as_ref().expect("a day");
    assert!(same.changes.iter().any(|change| matches!(change, Change::NotRetarded(_))));
}
