//! Allergens: what counts where, and what is set off by type.

use crate::{baked, drafted};
use bench::label::{Label, Law};

fn set_off(label: &Label) -> Vec<&str> {
    let runs = label.list.entries.iter().flat_map(|entry| &entry.runs);
    runs.filter(|run| run.is_strong).map(|run| run.words.as_str()).collect()
}

fn counted(line: &str, law: Law) -> Vec<String> {
    let label = drafted(&baked("Food", &format!("{line} = \"100 g\""), 100.0, 100.0), "", law);
    label.allergens.iter().map(|one| one.code.clone()).collect()
}

/// Regulation (EU) No 1169/2011, Annex II: coconut, chestnut and pine nut are no nuts there; spelt and durum are wheat;
/// ghee and whey are milk; marzipan is almond; peanuts and sesame stand in both lists.
#[test]
fn the_traps_of_annex_ii() {
    for (line, codes) in [
        ("coconut-desiccated", &[][..]),
        ("chestnuts", &[]),
        ("pine-nuts", &[]),
        ("flour-buckwheat", &[]),
        ("flour-spelt", &["wheat"]),
        ("semolina-durum", &["wheat"]),
        ("ghee", &["milk"]),
        ("whey-powder", &["milk"]),
        ("marzipan", &["almond"]),
        ("flour-rye-dark", &["rye"]),
        ("sesame-paste", &["sesame"]),
        ("lecithin-soy", &["soy"]),
    ] {
        assert_eq!(counted(line, Law::Eu), codes, "{line}");
        assert_eq!(counted(line, Law::Uk), codes, "{line}");
    }
}

/// The nine of the United States: no rye, no barley, no sulphites; of nuts the twelve of January 2025, pine nuts among
/// them, coconut and chestnut not (Questions and Answers Regarding Food Allergens, Edition 5, Table 1).
#[test]
fn the_nine_of_america() {
    for (line, codes) in [
        ("pine-nuts", &["pine-nut"][..]),
        ("coconut-desiccated", &[]),
        ("chestnuts", &[]),
        ("flour-rye-dark", &[]),
        ("flour-barley", &[]),
        ("cider-dry", &[]),
        ("almonds", &["almond"]),
        ("sesame-seeds", &["sesame"]),
    ] {
        assert_eq!(counted(line, Law::Us), codes, "{line}");
    }
}

/// Each occurrence is set off, whole words alone: buckwheat is no wheat, and what does not name it has it in brackets.
#[test]
fn each_occurrence_is_set_off() {
    let lines = "flour-strong-white = \"500 g\"\nflour-buckwheat = \"200 g\"\nmilk-whole = \"150 g\"\nbutter-unsalted = \"100 g\"\n\
                 egg-whole = \"50 g\"\nalmonds-blanched = \"40 g\"";
    let label = drafted(&baked("Cake", lines, 1040.0, 1040.0), "", Law::Eu);
    assert_eq!(set_off(&label), ["wheat", "milk", "milk", "egg", "almonds"]);
    let butter = label.list.entries.iter().find(|entry| entry.title == "unsalted butter").expect("butter");
    assert_eq!(butter.runs.iter().map(|run| run.words.as_str()).collect::<String>(), "unsalted butter (milk)");
}

/// What an author declares is searched for every allergen that the row carries.
#[test]
fn a_pack_s_own_list_is_set_off_too() {
    let own = "[spread]\nlike = \"hazelnut-spread\"\ndeclared = \"spread (sugar, hazelnuts, skimmed milk powder, soya lecithin)\"\n\
               allergens = [\"hazelnut\", \"milk\", \"soy\"]\n";
    let label = drafted(&baked("Bun", "flour-bread = \"400 g\"\nspread = \"100 g\"", 500.0, 500.0), own, Law::Eu);
    assert_eq!(set_off(&label), ["wheat", "hazelnuts", "milk", "soya"]);
    assert!(!label.gaps.iter().any(|gap| gap.contains("pack of")), "{:?}", label.gaps);
}

/// What is taken out again leaves its allergens behind, and stays in the list.
#[test]
fn what_is_taken_out_still_counts() {
    let lines = "milk-whole = \"500 g\"\nalmonds = { amount = \"50 g\", taken-out = \"100 %\" }";
    let label = drafted(&baked("Infused milk", lines, 500.0, 500.0), "", Law::Eu);
    assert_eq!(set_off(&label), ["milk", "almonds"]);
    assert!(label.open.iter().any(|line| line.contains("taken out again")));
}

/// What is bought mixed without its pack's list is a gap.
#[test]
fn a_bought_mix_without_its_list_is_a_gap() {
    let label = drafted(&baked("Cake", "flour-bread = \"400 g\"\nchocolate-milk = \"100 g\"", 500.0, 500.0), "", Law::Eu);
    assert!(label.gaps.iter().any(|gap| gap.contains("milk chocolate")), "{:?}", label.gaps);
}
