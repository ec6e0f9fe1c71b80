//! What is in a pack: its weight, its portions and servings, and its date.

use super::law::Law;
use formula::Component;
use formula::read::ForLabel;
use quantity::{Count, Mass, TimeSpan};
use science::nutrition::printed::Printed;
use science::nutrition::serving::{Amount, in_pack, metric, of, pieces};

/// What is in a pack.
#[derive(Clone, Debug)]
pub struct Pack {
    /// The pieces in it, and what one weighs when it is done.
    pub pieces: Option<(Count, Mass)>,
    /// What it weighs, as reckoned: a balance decides.
    pub net: Mass,
    /// How high the figures of the net quantity must at least be, in millimetre.
    pub figures_high: f64,
    /// The words for one piece and for more.
    pub piece: (String, String),
}

/// A serving in the sense of American law.
#[derive(Clone, Debug, PartialEq)]
pub struct Serving {
    /// What it weighs.
    pub weighs: Mass,
    /// The gram that are printed.
    pub gram: Printed,
    /// How it is measured: “1 muffin”.
    pub measure: String,
    /// How many are in a pack, and whether that is rounded.
    pub in_pack: (f64, bool),
    /// The customary amount it was taken from.
    pub customary: String,
    /// What must still be decided about it.
    pub open: Option<String>,
}

/// How a date is written on a pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateForm {
    /// Day and month, for what keeps up to three months.
    DayAndMonth,
    /// Month and year, up to eighteen.
    MonthAndYear,
    /// The year alone.
    Year,
}

/// Regulation (EU) No 1169/2011, Annex X: three and eighteen months, reckoned as 92 and 548 days.
#[must_use]
pub fn date_form(keeps: TimeSpan) -> DateForm {
    match keeps.as_hours() / 24.0 {
        days if days <= 92.0 => DateForm::DayAndMonth,
        days if days <= 548.0 => DateForm::MonthAndYear,
        _ => DateForm::Year,
    }
}

/// What is in a pack of a food of so much.
#[must_use]
pub fn pack(label: &ForLabel, main: &Component, whole: Mass) -> Pack {
    let made = main.yields.pieces.filter(|pieces| *pieces > Count::ZERO);
    let piece = made.map(|made| whole / made.as_pieces()).filter(|_| label.net.is_none());
    let in_it = label.pieces.unwrap_or(Count::pieces(1.0));
    let pieces = piece.map(|piece| (in_it, piece));
    let net = label.net.or_else(|| piece.map(|piece| piece * in_it.as_pieces())).unwrap_or(whole);
    Pack { pieces, net, figures_high: figures_high(net), piece: main.yields.piece.clone() }
}

/// Directive 76/211/EEC, Annex I, from memory.
fn figures_high(net: Mass) -> f64 {
    match net.as_grams() {
        gram if gram <= 50.0 => 2.0,
        gram if gram <= 200.0 => 3.0,
        gram if gram <= 1000.0 => 4.0,
        _ => 6.0,
    }
}

/// What one person eats at a time: as stated, or a piece, or an equal share for those it serves; to the gram, as it is
/// written, so that its figures are those of the weight that stands above them.
#[must_use]
pub fn portion(label: &ForLabel, main: &Component, pack: &Pack, whole: Mass) -> Option<Mass> {
    let served = || main.yields.serves.filter(|serves| *serves > Count::ZERO).map(|serves| whole / serves.as_pieces());
    let portion = label.portion.or(pack.pieces.map(|(_, piece)| piece)).or_else(served)?;
    let to_the_gram = Mass::grams((portion.as_grams() + 1e-6).floor());
    (to_the_gram > Mass::ZERO).then_some(to_the_gram)
}

/// The serving by the kind of food that the author chose.
#[must_use]
pub fn serving(label: &ForLabel, pack: &Pack, density: Option<quantity::Density>, law: Law) -> Option<Serving> {
    let customary = of(label.eaten_as.filter(|_| law == Law::Us)?)?;
    let (weighs, measure, open) = match (customary.amount, &pack.pieces) {
        // What is cut is served by the slice that the author states.
        (Amount::Weight(reference), Some((_, piece))) if *piece / reference >= 2.0 && label.portion.is_some() => {
            (label.portion.unwrap_or(*piece), "1 slice".to_owned(), None)
        }
        (Amount::Weight(reference), Some((_, piece))) => {
            let counted = pieces(*piece, reference);
            let word = if counted.pieces == 1.0 { &pack.piece.0 } else { &pack.piece.1 };
            let share = *piece / reference;
            let large = "a piece is twice the customary amount or more: it is one serving only if one \
                         person eats it at once; of what is cut, state a slice as “portion”";
            let open = if counted.or_one {
                Some(format!("one {} may be called a serving as well", pack.piece.0))
            } else {
                (share >= 2.0).then(|| large.to_owned())
            };
            (*piece * counted.pieces, format!("{} {word}", counted.pieces), open)
        }
        (Amount::Weight(reference), None) => {
            (reference, "a visible part of it".to_owned(), Some("say how a buyer sees that much: a slice, a cup".to_owned()))
        }
        (Amount::Room(room), _) => {
            let spoons = room.as_millilitres() / 15.0;
            let assumed = density.is_none().then(|| "its density is not known: a millilitre is taken for a gram".to_owned());
            let weighs = density.map_or(Mass::grams(room.as_millilitres()), |density| room * density);
            (weighs, format!("{} tbsp", metric(spoons)), assumed)
        }
    };
    let servings = pack.net / weighs;
    let told = in_pack(servings).max(1.0);
    Some(Serving {
        weighs,
        gram: metric(weighs.as_grams()),
        measure,
        in_pack: (told, (told - servings).abs() > 0.02 * told),
        customary: customary.covers.clone(),
        open,
    })
}
