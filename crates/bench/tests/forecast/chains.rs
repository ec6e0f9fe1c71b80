//! Stages that each use the one before them twice: whoever follows every line walks two ways at every stage.

use crate::{kitchen, work_out};
use bench::cautions::cautions;
use bench::forecast::forecast;
use bench::rules;
use formula::read::BookSettings;

/// Thirty stages in a row; every way through them followed by itself would be 2³⁰ ways, and this would never end.
#[test]
fn a_chain_of_stages_is_walked_once() {
    const LENGTH: usize = 30;
    let mut text = String::from(
        "title = \"Chain\"\n[[component]]\nname = \"chain\"\nyield = { pieces = 2, bake-loss = \"10 %\" }\n\
         [[component.stage]]\nname = \"s0\"\nkind = \"sponge\"\n[component.stage.ingredients]\n\
         flour-bread = \"500 g\"\nwater = \"65 %\"\negg-whole = \"1 M\"\nyeast-instant = \"1 g\"\n",
    );
    for stage in 1..LENGTH {
        let kind = if stage + 1 == LENGTH { "final-mix" } else { "mixed" };
        let before = stage - 1;
        text.push_str(&format!(
            "[[component.stage]]\nname = \"s{stage}\"\nkind = \"{kind}\"\n[component.stage.ingredients]\n\
             one = {{ stage = \"s{before}\", share = \"50 %\" }}\nother = {{ stage = \"s{before}\", share = \"50 %\" }}\n\
             [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\n\
             text = \"Mix {{one}} and {{other}}, and leave for {{time}}.\"\ntime = \"10 min\"\n"
        ));
    }
    text.push_str(
        "[[component.stage.step]]\naction = \"bake\"\ntext = \"Bake at {temperature} for {time}.\"\n\
         temperature = \"220 °C\"\ntime = \"30 min\"\n",
    );
    let formula = work_out(&text);
    let foreseen = forecast(&formula, &kitchen(22.0));
    assert_eq!(foreseen.rises.iter().flat_map(|rise| &rise.steps).count(), LENGTH - 1);
    assert!(!cautions(&formula).is_empty());
    assert!(!rules::proof_read(&formula, &kitchen(22.0), &BookSettings::default()).is_empty());
}
