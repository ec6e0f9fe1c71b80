//! What a target finds, read again from the new text, is what was asked; held to exact algebra where there is any.

use super::{RICH, SYRUP, after, around, close, figure, solved, work_out};
use bench::forecast::foresee;
use formula::Formula;
use formula::arithmetic::{figures, overall};
use quantity::{Temperature, Volume};

fn sheet(formula: &Formula) -> formula::arithmetic::Figures {
    figures(&overall(formula, 0)).expect("flour")
}

#[test]
fn true_hydration() {
    for percent in [40.0, 62.0, 75.5] {
        let formula = after(RICH, "hydration", &[("to", &format!("{percent} %"))]);
        close(sheet(&formula).true_hydration.value.as_percent(), percent, 0.01, "true hydration");
        let salt = |formula: &Formula| sheet(formula).salt.as_percent();
        close(salt(&formula), salt(&work_out(RICH)), 1e-9, "salt stays");
    }
}

/// Two flours by the rule of mixtures; here flour and the other are in the dough already.
#[test]
fn flour_blends() {
    for (with, percent) in [("flour-cake", 10.5), ("flour-cake", 11.0), ("flour-wholewheat", 12.0)] {
        let formula = after(RICH, "flour", &[("of", "flour-bread"), ("with", with), ("to", &format!("{percent} %"))]);
        let now = sheet(&formula);
        close(now.flour_protein.value.as_percent(), percent, 0.01, with);
        close(overall(&formula, 0).total_flour.as_grams(), 500.0, 0.02, "all flour stays");
    }
}

/// Exact algebra: of 1,000 g at 40 Brix 1000·(1 − 40/65) = 384.6 g of water leave to 65 Brix.
#[test]
fn syrup_by_boiling() {
    let answer = solved(SYRUP, "syrup", &[("to", "65 Brix")]).expect("an answer");
    close(figure(&answer, "water to boil off"), 1000.0 * (1.0 - 40.0 / 65.0), 0.3, "steam");
    let changed = answer.changed.expect("a change");
    assert!(changed.text.contains("until = \"65 Brix\""), "{}", changed.text);
    let pot = &foresee(&changed.formula, &around(22.0)).pots[0];
    close(pot.brix.1.as_percent(), 65.0, 0.02, "Brix put back");
    let weaker = after(SYRUP, "syrup", &[("to", "30 Brix")]);
    close(foresee(&weaker, &around(22.0)).pots[0].brix.1.as_percent(), 30.0, 0.02, "water added");
}

/// Exact algebra: with a fifth boiled off, x of sugar in 600 g of water: x = 0.65·(x + 600 − 0.2·(600 + x)), x = 650 g
/// but for what granulated sugar holds besides sucrose.
#[test]
fn syrup_by_its_sugar() {
    let answer = solved(SYRUP, "syrup", &[("to", "65 Brix"), ("of", "sugar-granulated")]).expect("an answer");
    close(figure(&answer, "ranulated"), 0.65 * 480.0 / (1.0 - 0.65 * 0.8), 2.0, "sugar");
    let formula = answer.changed.expect("a change").formula;
    close(foresee(&formula, &around(22.0)).pots[0].brix.1.as_percent(), 65.0, 0.02, "Brix put back");
}

#[test]
fn syrup_that_pours() {
    for pascal_seconds in [0.05, 0.2, 1.0] {
        let formula = after(SYRUP, "syrup", &[("to", &format!("{pascal_seconds} Pa·s"))]);
        let pours = foresee(&formula, &around(22.0)).pots[0].pours.clone().expect("a pour");
        assert_eq!(pours.at, Temperature::celsius(40.0));
        close(pours.viscosity.value.as_pascal_seconds(), pascal_seconds, 0.01 * pascal_seconds, "pour");
    }
}

/// The water found, put in, brings the dough to what was asked.
#[test]
fn water_for_a_dough() {
    let plain = RICH
        .replace("milk-whole = \"120 g\"\n", "")
        .replace("{milk-whole}, ", "")
        .replace("water = \"120 g\"", "water = \"240 g\"");
    for celsius in [22.0, 25.0, 28.0] {
        let answer = solved(&plain, "water", &[("to", &format!("{celsius} °C"))]).expect("an answer");
        let needed = figure(&answer, "at");
        let warmed =
            plain.replace("water = \"240 g\"", &format!("water = {{ amount = \"240 g\", temperature = \"{needed} °C\" }}"));
        let mixed = foresee(&work_out(&warmed), &around(22.0)).rises[0].mixed.clone().expect("mixed");
        close(mixed.computed.value.as_celsius(), celsius, 0.05, "dough");
    }
}

/// Ice: what melts takes up as much heat as the colder water would; by hand, m·(334 + 4.18·t) = M·4.18·(t − T).
#[test]
fn ice_for_a_cold_dough() {
    let warm = RICH.replace("milk-whole = \"120 g\"\n", "").replace("{milk-whole}, ", "").replace("120 g", "240 g");
    let answer = bench::target::solve("water", &super::book(&warm), "example", &around(30.0), &super::asked(&[("to", "19 °C")]))
        .expect("ice");
    let (needed, ice) = (figure(&answer, "as cold as"), figure(&answer, "as ice"));
    assert!(needed < 1.0 && answer.changed.is_none());
    close(ice, 240.0 * 4.18 * (30.0 - needed) / (334.0 + 4.18 * 30.0), 1.5, "ice");
}

/// The batch that is found fits, and one more piece would not.
#[test]
fn batches() {
    for (to, room) in [("4 l", 3600.0), ("50 x 30 x 18 cm", 27_000.0 * 0.63)] {
        let answer = solved(RICH, "batch", &[("to", to)]).expect("an answer");
        close(figure(&answer, "room there is"), room, 1e-6 * room, to);
        let (takes, pieces) = (figure(&answer, "the batch then takes"), figure(&answer, "in the batch"));
        assert!(takes <= room + 1e-6 && takes * (pieces + 1.0) / pieces > room, "{to}: {takes} of {room}");
        let yields = &answer.changed.expect("a change").formula.components[0].yields;
        close(yields.pieces.expect("pieces").as_pieces(), pieces, 1e-9, "pieces");
        assert!(Volume::millilitres(takes).is_finite());
    }
}
