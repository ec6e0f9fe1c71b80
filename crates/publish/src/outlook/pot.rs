//! What simmers, boils and is reduced.

use super::known::{self, time, whole};
use super::story::Story;
use crate::words::whole_gram as gram;
use bench::forecast::{Pot, Pours, Surroundings};
use quantity::{Between, Mass, print};
use serde_json::{Value, json};

/// Tells a pot.
pub fn tell(story: &mut Story, pot: &Pot, around: &Surroundings) {
    let units = story.units;
    let title = story.formula.stage(pot.at).title.clone();
    story.stage(pot.at, &title);
    let (before, after) = pot.mass;
    let mut words = format!("{} go in, {} come out", gram(before), gram(after));
    if pot.stated > Mass::ZERO {
        words.push_str(&format!("; {} of it leaves as steam, as the formula says", gram(pot.stated)));
    }
    story.say(&format!("{words}."));
    if let Some(driven) = &pot.driven_off {
        story.ground(driven);
        let ring = &around.heat.ring;
        let watts = format!("{} W{}", print::number(ring.power.value.as_watts(), 0), known::from(&ring.power));
        let verdict = if pot.stated < driven.value.from {
            "less than that is meant to go: turn it down, or stop sooner"
        } else if pot.stated > driven.value.to {
            "more than that is meant to go: it will take longer"
        } else {
            "the formula's own figure lies within it"
        };
        let (from, to) = (gram(driven.value.from), gram(driven.value.to));
        story.say(&format!("In its stated time, from a gentle heat to a full one, {from} to {to} of steam can leave (ring of {watts}): {verdict}."));
    }
    let brix = |share: quantity::Fraction| format!("{}\u{a0}°Brix", print::number(share.as_percent(), 0));
    if pot.brix.1 > quantity::Fraction::percent(5.0) {
        let boils = whole(pot.boils_at, units);
        story.say(&format!("It goes from {} to {} and then boils at {boils}.", brix(pot.brix.0), brix(pot.brix.1)));
        let (by, equation) = Pot::BOILS_BY;
        story.rests_on(by, equation);
    }
    if let Some(wanted) = &pot.wanted {
        let at = whole(wanted.boils_at, units);
        let way = if wanted.water >= Mass::ZERO {
            let (from, to) = (time(wanted.takes.from), time(wanted.takes.to));
            format!("{} of water have to boil off, which takes {from} to {to} at a full boil", gram(wanted.water))
        } else {
            format!("{} of water have to be added", gram(wanted.water * -1.0))
        };
        story.say(&format!("For {}: {way}; it boils at {at} then.", brix(wanted.brix)));
    }
    if let Some(pours) = &pot.pours {
        story.ground(&pours.viscosity);
        story.say(&pours_in_words(pours, units));
    }
}

fn pours_in_words(pours: &Pours, units: crate::words::Units) -> String {
    let like = pours.like.map(|like| format!(", much like {like}")).unwrap_or_default();
    let thick = |pascal_seconds: f64| print::number(pascal_seconds, 2);
    let (low, high) = pours.viscosity.band.unwrap_or((pours.viscosity.value, pours.viscosity.value));
    let mut words = format!(
        "At {} it pours at {} to {} Pa·s{like}; pulp and pectin thicken a fruit syrup beyond a clear one",
        whole(pours.at, units),
        thick(low.as_pascal_seconds()),
        thick(high.as_pascal_seconds())
    );
    if let Some(water) = pours.water {
        let way = if water >= Mass::ZERO { "boil off" } else { "add" };
        let water = if water >= Mass::ZERO { water } else { water * -1.0 };
        words.push_str(&format!(". To pour as the method says, {way} {} of water", gram(water)));
    }
    format!("{}.", print::capital(&words))
}

/// A pot for other programs.
pub fn json(pot: &Pot) -> Value {
    let minutes = |range: Between<quantity::TimeSpan>| [range.from.as_minutes(), range.to.as_minutes()];
    json!({
        "goes-in-gram": pot.mass.0.as_grams(),
        "comes-out-gram": pot.mass.1.as_grams(),
        "stated-steam-gram": pot.stated.as_grams(),
        "steam": pot.driven_off.as_ref().map(known::masses),
        "brix": [pot.brix.0.as_percent(), pot.brix.1.as_percent()],
        "boils-at-celsius": pot.boils_at.as_celsius(),
        "wanted": pot.wanted.as_ref().map(|wanted| json!({
            "brix": wanted.brix.as_percent(),
            "boils-at-celsius": wanted.boils_at.as_celsius(),
            "water-to-boil-off-gram": wanted.water.as_grams(),
            "minutes": minutes(wanted.takes),
        })),
        "pours": pot.pours.as_ref().map(|pours| json!({
            "celsius": pours.at.as_celsius(),
            "pascal-seconds": pours.viscosity.value.as_pascal_seconds(),
            "like": pours.like,
            "water-to-boil-off-gram": pours.water.map(Mass::as_grams),
        })),
    })
}
