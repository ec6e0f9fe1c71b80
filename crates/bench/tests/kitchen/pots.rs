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

/// 1,000 g of 40 °Brix to 65 °Brix: 384.6 g of water, by the balance of its sugar, exact.
#[test]
fn a_syrup_loses_the_water_that_its_strength_asks_for() {
    let pot = syrup("20 %", "65 Brix", &kitchen(21.0));
    assert!((pot.brix.0.as_percent() - 40.0).abs() < 0.2 && (pot.brix.1.as_percent() - 50.0).abs() < 0.2, "{:?}", pot.brix);
    let wanted = pot.wanted.expect("it wants 65 °Brix");
    assert!((wanted.water.as_grams() - 384.6).abs() < 2.5, "{}", wanted.water.as_grams());
    // Claassen's table has 3.0 K at 60 % and 5.1 K at 70 % (from memory): between them lies 65 %.
    let boils = wanted.boils_at.as_celsius();
    assert!((103.0..105.1).contains(&boils), "{boils}");
}

/// High up it boils cooler by as much as water does, 5.0 K at 1,500 m (84.6 kPa in the ICAO standard atmosphere, steam tables; from memory).
#[test]
fn high_up_a_syrup_boils_cooler() {
    let at = |metres: f64| syrup("20 %", "65 Brix", &high(metres)).boils_at.as_celsius();
    assert!((at(0.0) - at(1500.0) - 5.0).abs() < 0.2, "{} {}", at(0.0), at(1500.0));
}

/// Sucrose of 60 % runs at 0.0437 Pa·s at 25 °C (the room's reference table) and of 70 % at 0.482 at 20 °C (ICUMSA), so
/// 0.4 Pa·s at 25 °C lies somewhat above 70 %: from 50 °Brix, 400 g of sugar in 800 g, 229 g of water leave for 70 %
/// and 267 g for 75 %. A thinner pour asks for water instead.
#[test]
fn a_stated_pour_asks_for_water_off_or_on() {
    let thick = syrup("20 %", "pours at 0.4 Pa·s", &kitchen(25.0)).pours.expect("it pours").water.expect("it is asked");
    let thin = syrup("42 %", "pours at 0.01 Pa·s", &kitchen(25.0)).pours.expect("it pours").water.expect("it is asked");
    assert!((228.0..267.0).contains(&thick.as_grams()), "{}", thick.as_grams());
    assert!(thin.as_grams() < 0.0, "{}", thin.as_grams());
}
