//! Every constant of the ferment with its standing, published in `docs/constants.md`.
//!
//! `UPDATE_DOCS=1 cargo test -p science --test references` writes it anew.

use crate::published::{fresh, standing};
use science::Standing;
use science::ferment::PARAMETERS;

const HEAD: &str = "# The constants of the ferment, and how well each is founded\n\n\
Made from `crates/science/data/ferment`. *Published*: as the source prints it. *Fitted*: chosen so that the model meets the observations named \
in its place; the form is the source's, the figure ours. *Common practice* and *from memory*: what they say. What the fitted ones were fitted \
to is no evidence for them; `ferment.md` lists what was held out. Sources are those of `equations.md`.\n";

fn page() -> String {
    let count = |wanted| PARAMETERS.iter().filter(|parameter| parameter.origin.standing == wanted).count();
    let mut page = format!(
        "{HEAD}\n{} constants: {} published, {} fitted, {} common practice, {} from memory.\n\n\
        | constant | value | unit | standing | place | source |\n|---|---|---|---|---|---|\n",
        PARAMETERS.len(),
        count(Standing::Published),
        count(Standing::Fitted),
        count(Standing::CommonPractice),
        count(Standing::FromMemory),
    );
    for parameter in PARAMETERS.iter() {
        let origin = &parameter.origin;
        let standing = match origin.standing {
            Standing::Fitted => "**fitted**",
            other => standing(other),
        };
        let place = origin.place.replace('|', "/");
        page.push_str(&format!(
            "| {} | {} | {} | {standing} | {place} | {} |\n",
            parameter.name, parameter.value, parameter.unit, origin.source
        ));
    }
    page
}

#[test]
fn the_constants_are_fresh() {
    fresh("constants.md", &page());
}
