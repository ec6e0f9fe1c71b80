//! What is warmed on the way, and what an oven that is off does.

use crate::{LOAF, kitchen, work_out};
use bench::forecast::forecast;
use formula::read::{Kitchen, Oven};
use quantity::Temperature;

/// Half of 200 g of milk at 60 °C and half at 4 °C: the mean, 32 °C, whatever the specific heat.
#[test]
fn part_warmed_and_part_cold_meet_in_the_middle() {
    let text = "title = \"Milk dough\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
        [component.stage.ingredients]\nflour-bread = \"300 g\"\nmilk-whole = { amount = \"200 g\", temperature = \"4 °C\" }\nyeast-instant = \"3 g\"\n\
        [[component.stage.step]]\naction = \"warm\"\ntext = \"Warm {milk-whole: half} to {60 °C}, then add {milk-whole: rest}.\"\ntime = \"5 min\"\n\
        [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix with {flour-bread} and {yeast-instant}.\"\ntime = \"5 min\"\n\
        [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"60 min\"\nuntil = \"doubled\"\n";
    let foreseen = forecast(&work_out(text), &kitchen(20.0));
    let mixed = foreseen.rises[0].mixed.as_ref().expect("it is mixed");
    let warmed = mixed.warmed.first().expect("something is warmed");
    assert!((warmed.comes_to.value.as_celsius() - 32.0).abs() < 1e-9, "{:?}", warmed.comes_to);
    // What was warmed is warm in the dough: the balance of 300 g of flour at 20 °C and 200 g of milk at 32 °C,
    // wetting counted (15.1 kJ a kilogram of flour, Çengel & Boles).
    let (flour, milk) = (0.3 * 1.76, 0.2 * 3.89);
    let balance = (flour * 20.0 + milk * 32.0 + 0.3 * 15.1) / (flour + milk);
    assert!((mixed.computed.value.as_celsius() - balance).abs() < 0.5, "{} for {balance}", mixed.computed.value.as_celsius());
}

/// An oven that is cooler than it says takes longer to bring the middle to a heat and drives off less, and the story says
/// what to set.
#[test]
fn an_oven_that_is_off_is_reckoned_as_it_is() {
    let loaf = work_out(LOAF);
    let point = |set: f64, real: f64| (Temperature::celsius(set), Temperature::celsius(real));
    let oven =
        Oven { fan: true, real: vec![point(180.0, 150.0), point(240.0, 200.0)], falls_by: None, recovers_in: None, decks: None };
    let off = forecast(&loaf, &Kitchen { oven: Some(oven), ..kitchen(21.0) });
    let on = forecast(
        &loaf,
        &Kitchen {
            oven: Some(Oven { fan: true, real: vec![], falls_by: None, recovers_in: None, decks: None }),
            ..kitchen(21.0)
        },
    );
    let reached = |one: &bench::forecast::Forecast| one.cookings[0].reached.as_ref().map(|reached| reached.value.as_minutes());
    assert!(reached(&off).expect("it gets there") > reached(&on).expect("it gets there"));
    assert!(off.cookings[0].loss.value < on.cookings[0].loss.value);
    assert!(
        off.cookings[0].remarks[0].replace('\u{a0}', " ").contains("really at about 183 °C"),
        "{:?}",
        off.cookings[0].remarks
    );
}

/// The trade's rule stands beside the balance: 3 · 76 °F less 72 °F of room, 70 °F of flour and a friction factor of
/// 24 °F are 62 °F of water (worked example of the three-factor rule as trade schools print it; common practice).
#[test]
fn the_trades_rule_stands_beside_the_balance() {
    let text = "title = \"Dough\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
        [component.stage.ingredients]\nflour-bread = { amount = \"500 g\", temperature = \"70 °F\" }\nwater = \"320 g\"\nyeast-instant = \"5 g\"\n\
        [[component.stage.step]]\naction = \"knead\"\ntext = \"Knead {flour-bread}, {water}, {yeast-instant}.\"\ntime = \"10 min\"\ntemperature = \"76 °F\"\n\
        [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"60 min\"\nuntil = \"doubled\"\n";
    let room = Temperature::fahrenheit(72.0);
    let foreseen = forecast(&work_out(text), &Kitchen { room: Some(room), ..kitchen(20.0) });
    let mixed = foreseen.rises[0].mixed.as_ref().expect("it is mixed");
    let rule = mixed.by_rule.expect("it is water");
    assert!((rule.water.as_fahrenheit() - 62.0).abs() < 1e-6, "{} °F", rule.water.as_fahrenheit());
    // With the agreeing factor the rule gives the balance's own water.
    let (_, water) = mixed.liquid.as_ref().expect("a liquid");
    assert!((3.0 * 76.0 - 72.0 - 70.0 - rule.agreeing.as_fahrenheit_degrees() - water.as_fahrenheit()).abs() < 1e-6);
}
