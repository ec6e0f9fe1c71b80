//! What simmers, boils and is reduced.

use super::known::{self, time, whole};
use super::story::Story;
use crate::words::whole_gram as gram;
use bench::forecast::{Pot, Pours, Surroundings};
use bench::grounds::{By, by};
use formula::Formula;
use formula::read::Condition;
use quantity::{Fraction, Mass, Temperature, TimeSpan, Viscosity, print};
use serde_json::{Value, json};

/// Tells a pot.
pub fn tell(story: &mut Story, pot: &Pot, around: &Surroundings) {
    let units = story.units;
    let title = story.formula.stage(pot.at).title.clone();
    story.stage(pot.at, &title);
    let (before, after) = pot.mass;
    let ground = story.by(by::YIELD);
    let mut words = format!("{} go in, {} come out{ground}", gram(before), gram(after));
    if pot.stated > Mass::ZERO {
        words.push_str(&format!("; {} of it leaves as steam, as the formula says", gram(pot.stated)));
    }
    story.say(&format!("{words}."));
    if let Some(driven) = &pot.driven_off {
        let ground = story.ground(driven);
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
        story.say(&format!("In its stated time, from a gentle heat to a full one, {from} to {to} of steam can leave (ring of {watts}){ground}: {verdict}."));
    }
    let brix = |share: Fraction| format!("{}\u{a0}°Brix", print::number(share.as_percent(), 0));
    if pot.brix.1 > Fraction::percent(5.0) {
        let boils = whole(pot.boils_at, units);
        let (sweet, ground) = (story.by(by::BRIX), story.by(by::BOILS));
        let (from, to) = (brix(pot.brix.0), brix(pot.brix.1));
        story.say(&format!("It goes from {from} to {to}{sweet} and then boils at {boils}{ground}."));
    }
    if let Some(wanted) = &pot.wanted {
        let at = whole(wanted.boils_at, units);
        let way = if wanted.water >= Mass::ZERO {
            let (from, to) = (time(wanted.takes.from), time(wanted.takes.to));
            format!("{} of water have to boil off, which takes {from} to {to} at a full boil", gram(wanted.water))
        } else {
            format!("{} of water have to be added", gram(wanted.water * -1.0))
        };
        let (off, ground) = (story.by(by::BOIL_OFF), story.by(by::BOILS));
        story.say(&format!("For {}: {way}{off}; it boils at {at}{ground} then.", brix(wanted.brix)));
    }
    if let Some(pours) = &pot.pours {
        let ground = story.ground(&pours.viscosity);
        story.say(&pours_in_words(pours, units, &ground));
    }
}

fn pours_in_words(pours: &Pours, units: crate::words::Units, ground: &str) -> String {
    let like = pours.like.map(|like| format!(", much like {like}")).unwrap_or_default();
    let thick = |pascal_seconds: f64| print::number(pascal_seconds, 2);
    let (low, high) = pours.viscosity.band.unwrap_or((pours.viscosity.value, pours.viscosity.value));
    let mut words = format!(
        "At {} it pours at {} to {} Pa·s{ground}{like}; pulp and pectin thicken a fruit syrup beyond a clear one",
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
pub fn json(formula: &Formula, pot: &Pot) -> Value {
    let gram = |by: By, mass: Mass| known::by(by, mass.as_grams(), "gram");
    let brix = |share: Fraction| known::by(by::BRIX, share.as_percent(), "°Brix");
    let boils = |at: Temperature| known::by(by::BOILS, at.as_celsius(), "celsius");
    let asked = formula.stage(pot.at).steps.iter().find(|step| matches!(step.until, Some(Condition::Brix(_))));
    json!({
        "goes-in": gram(by::YIELD, pot.mass.0),
        "comes-out": gram(by::YIELD, pot.mass.1),
        "stated-steam": gram(by::YIELD, pot.stated),
        "steam": pot.driven_off.as_ref().map(|driven| known::range(driven, "gram", Mass::as_grams)),
        "brix-before": brix(pot.brix.0),
        "brix-after": brix(pot.brix.1),
        "boils-at": boils(pot.boils_at),
        "wanted": pot.wanted.as_ref().map(|wanted| json!({
            "brix": asked.map(|step| known::stated(&step.place, wanted.brix.as_percent(), "°Brix")),
            "boils-at": boils(wanted.boils_at),
            "water-to-boil-off": gram(by::BOIL_OFF, wanted.water),
            "takes": known::range(&by::BOIL_OFF.known(wanted.takes), "minutes", TimeSpan::as_minutes),
        })),
        "pours": pot.pours.as_ref().map(|pours| json!({
            "at": known::by(by::PLACE, pours.at.as_celsius(), "celsius"),
            "viscosity": known::figure(&pours.viscosity, "pascal-seconds", Viscosity::as_pascal_seconds),
            "like": pours.like.map(|like| json!({ "value": like, "origin": known::origin(&by::LIKE.known(()).origin) })),
            "water-to-boil-off": pours.water.map(|water| gram(by::POUR, water)),
        })),
    })
}
