//! Published figures, each with its source.

use super::{close, made, weighed};
use bench::exchange::Exchanged;

/// A plain dough with lines put in.
fn dough(lines: &str) -> String {
    let names: Vec<String> = lines.lines().filter_map(|line| Some(format!("{{{}}}", line.split_once(" = ")?.0))).collect();
    format!(
        "title = \"Plain\"\n[[component]]\nname = \"bread\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n{lines}\n\
         [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {}.\"\ntime = \"5 min\"\n",
        names.join(" and ")
    )
}

#[track_caller]
fn after(lines: &str, name: &str, say: &[(&str, &str)]) -> Exchanged {
    made(&dough(lines), name, say).unwrap_or_else(|why| panic!("{name}: {why}")).1
}

#[track_caller]
fn grams(lines: &str, name: &str, say: &[(&str, &str)], of: &str) -> f64 {
    weighed(&after(lines, name, say).formula).get(of).copied().unwrap_or(0.0)
}

/// Hamelman (2004), yeast conversions: 30 g fresh are 12 g active dry or 9.9 g instant.
#[test]
fn yeasts() {
    let lines = "flour-bread = \"1000 g\"\nwater = \"600 g\"\nyeast-fresh = \"30 g\"";
    close(grams(lines, "yeast", &[("into", "yeast-dry")], "yeast-dry"), 12.0, 1e-6, "active dry");
    close(grams(lines, "yeast", &[("into", "yeast-instant")], "yeast-instant"), 9.9, 1e-6, "instant");
}

/// Delegated Regulation (EU) 2023/2465: the middle of class M is 58 g and of L 68 g in the shell; without the
/// shell's 11 % they are 51.6 g and 60.5 g. Six of M are 309.7 g, which five of L come nearest to.
#[test]
fn egg_classes() {
    let lines = "flour-bread = \"1000 g\"\nwater = \"300 g\"\negg-whole = \"6 M\"";
    close(grams(lines, "egg-size", &[("into", "L")], "egg-whole"), 5.0 * 60.52, 0.01, "five of L");
    close(grams(lines, "egg-size", &[("into", "weight")], "egg-whole"), 309.72, 0.01, "by weight");
}

/// USDA SR28 (from memory): an envelope of 91 g of skimmed milk powder makes a quart, four cups of 245 g. The
/// table's own composition, which the exchange goes by, comes within 3 % of that.
#[test]
fn milk_powder_makes_a_quart() {
    let lines = "flour-bread = \"1000 g\"\nmilk-skim = \"980 g\"";
    close(grams(lines, "milk", &[], "milk-powder-skim"), 91.0, 0.03 * 91.0, "powder");
}

/// Semi-skimmed milk needs both powders; together they bring its fat of 1.55 % (the table's BLS/CoFID row).
#[test]
fn semi_skimmed_milk_is_of_both_powders() {
    let made = after("flour-bread = \"1000 g\"\nmilk-semi = \"1000 g\"", "milk", &[]);
    let all = weighed(&made.formula);
    close(all["milk-powder-whole"] * 0.2671 + all["milk-powder-skim"] * 0.0077, 15.5, 0.05, "fat");
    close(all["milk-powder-whole"] * 0.9753 + all["milk-powder-skim"] * 0.9684, 106.0, 0.05, "solids");
}

/// USDA SR28 no. 01145, unsalted butter: 81.11 % fat, 17.94 % water.
#[test]
fn butter_is_fat_and_water() {
    let lines = "flour-bread = \"1000 g\"\nbutter-unsalted = \"100 g\"";
    close(grams(lines, "butter", &[], "oil-sunflower"), 81.11, 0.01, "oil");
    close(grams(lines, "butter", &[], "water"), 17.94, 0.01, "water");
}

/// University extension advice (several guides): a quarter cup of liquid, 59 g, is left out for each cup of
/// honey, 339 g (USDA); and two thirds of a cup to a cup of it stand for a cup of sugar, 200 g.
#[test]
fn honey_as_the_guides_have_it() {
    let lines = "flour-bread = \"1000 g\"\nwater = \"600 g\"\nsugar-granulated = \"200 g\"";
    let honey = grams(lines, "honey", &[], "honey");
    assert!((226.0..=339.0).contains(&honey), "{honey} g of honey for a cup of sugar");
    let left_out = 600.0 - grams(lines, "honey", &[], "water");
    close(left_out / honey, 59.0 / 339.0, 0.01, "liquid left out");
}

/// The caution about infants (health authorities everywhere) stands by every honey.
#[test]
fn honey_is_not_for_infants() {
    let made = after("flour-bread = \"1000 g\"\nwater = \"600 g\"\nsugar-granulated = \"80 g\"", "honey", &[]);
    assert!(made.minded.iter().any(|words| words.contains("under one year")), "{:?}", made.minded);
}

/// Farrand (1969; from memory): a percent of protein more takes up 1.4 % more water. Bread flour against all-purpose flour by the table's rows, worked by hand from it.
#[test]
fn flour_takes_up_water_by_protein() {
    let pantry = formula::Pantry::built_in();
    let of = |name: &str, figure| pantry.find(name).expect("a flour").composition.get(figure).expect("a figure");
    use formula::ingredient::Figure::{Fibre, Protein};
    let apart = |figure| of("flour-bread", figure) - of("flour-all-purpose", figure);
    let percent = 1.4 * apart(Protein) + 0.8 * apart(Fibre);
    let water = grams("flour-all-purpose = \"1000 g\"\nwater = \"600 g\"", "flour", &[("into", "flour-bread")], "water");
    close(water, 600.0 + 10.0 * percent, 0.02, "water");
    assert!(percent > 0.0, "stronger flour takes up more");
}

/// Areas of circles: a round pan of 26 cm takes (26/20)² = 1.69 times what one of 20 cm takes at the same depth.
#[test]
fn pans_by_area() {
    let lines = "flour-bread = \"1000 g\"\nwater = \"600 g\"";
    close(grams(lines, "tin", &[("from", "round 20 cm"), ("into", "round 26 cm")], "flour-bread"), 1690.0, 0.01, "flour");
}

/// University of Wyoming Extension, altitude adjustments for cakes, at 5,000 feet: baking powder less by an
/// eighth to a quarter, sugar by nothing to two tablespoons a cup, liquid more by two to four tablespoons a cup.
#[test]
fn altitude_as_the_guide_has_it() {
    let lines = "flour-bread = \"1000 g\"\nmilk-whole = \"800 g\"\nsugar-caster = \"400 g\"\nbaking-powder = \"40 g\"";
    let all = weighed(&after(lines, "altitude", &[("feet", "5000")]).formula);
    assert!((30.0..=35.0).contains(&all["baking-powder"]), "{all:?}");
    assert!((350.0..=400.0).contains(&all["sugar-caster"]), "{all:?}");
    assert!((900.0..=1000.0).contains(&all["milk-whole"]), "{all:?}");
}
