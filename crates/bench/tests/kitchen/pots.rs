//! Syrups: sugar stays and water leaves.

use crate::{high, kitchen, work_out};
use bench::forecast::{Pot, forecast};
use formula::read::Kitchen;

fn syrup(boil_off: &str, until: &str, kitchen: &Kitchen) -> Pot {
    let text = format!(
        "title = \"Syrup\"\n[[component]]\nname = \"syrup\"\n[[component.stage]]\nname = \"syrup\"\nkind = \"cooked\"\nboil-off = \"{boil_off}\"\n\
         [component.stage.ingredients]\nsugar-granulated = \"400 g\"\nwater = \"600 g\"\n\
         [[component.stage.step]]\naction = \"reduce\"\ntext = \"Boil {{sugar-granulated}} and {{water}}.\"\ntime = \"15 min\"\nuntil = \"{until}\"\n\
         [[component.stage.step]]\naction = \"cool\"\nattention = \"waiting\"\ntext = \"Cool.\"\ntime = \"60 min\"\nuntil = \"25 °C\"\n"
    );
    forecast(&work_out(&text), kitchen).pots.remove(0)
}

/// 1,000 g of 40 °Brix to 65 °Brix: 384.6 g of water, exact (physics of dilution).
#[test]
fn a_syrup_loses_the_water_that_its_strength_asks_for() {
    let pot = syrup("20 %", "65 Brix", &kitchen(21.0));
    assert!((pot.brix.0.as_percent() - 40.0).abs() < 0.2 && (pot.brix.1.as_percent() - 50.0).abs() < 0.2, "{:?}", pot.brix);
    let wanted = pot.wanted.expect("it wants 65 °Brix");
    assert!((wanted.water.as_grams() - 384.6).abs() < 2.5, "{}", wanted.water.as_grams());
    // Sucrose at 65 % boils at 103.8 °C (CRC handbook: 1.9 molal steps; the room's own equation is held to tables).
    assert!((wanted.boils_at.as_celsius() - 103.8).abs() < 0.5, "{}", wanted.boils_at.as_celsius());
}

/// High up it boils cooler by as much as water does, 5.0 K at 1,500 m (standard atmosphere).
#[test]
fn high_up_a_syrup_boils_cooler() {
    let at = |metres: f64| syrup("20 %", "65 Brix", &high(metres)).boils_at.as_celsius();
    assert!((at(0.0) - at(1500.0) - 5.0).abs() < 0.2, "{} {}", at(0.0), at(1500.0));
}

/// 70 % of sucrose at 25 °C runs at about 0.42 Pa·s, 0.48 at 20 °C and 70 % (ICUMSA, physics of sugar); from
/// 50 °Brix to there water has to leave, and from there to a thinner pour it has to be added.
#[test]
fn a_stated_pour_asks_for_water_off_or_on() {
    let thick = syrup("20 %", "pours at 0.4 Pa·s", &kitchen(25.0)).pours.expect("it pours").water.expect("it is asked");
    let thin = syrup("42 %", "pours at 0.01 Pa·s", &kitchen(25.0)).pours.expect("it pours").water.expect("it is asked");
    assert!(thick.as_grams() > 150.0 && thick.as_grams() < 260.0, "{}", thick.as_grams());
    assert!(thin.as_grams() < 0.0, "{}", thin.as_grams());
}
