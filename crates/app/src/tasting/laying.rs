//! A table is laid: texts kept as revisions, codes and orders drawn, a link for each seat.

use super::{Held, in_book, of_sitting};
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{document, told};
use bench::tasting::{Advice, Seat, advise, lay as draw};
use formula::read::{MOST_TASTERS, Tasting};
use jiff::Timestamp;
use store::{Cup, Kind, Laying, Saved, Saving, Store};

/// A table that was laid.
pub struct Laid {
    /// As it is held.
    pub held: Held,
    /// The panel that was advised.
    pub advice: Option<Advice>,
    /// The secret word of each seat's link: told now and never again.
    pub words: Vec<String>,
}

/// Letters of a link's word: no two are mistaken for each other.
const LETTERS: &[u8; 32] = b"abcdefghijkmnpqrstuvwxyz23456789";
/// So many letters of five bits each: 130 bits that nobody guesses.
const LETTERS_OF_A_WORD: usize = 26;

/// Lays a tasting of a book: at so many seats, with that seed; as the tasting and chance will have it if not told.
pub async fn lay(store: &Store, opened: &Opened, name: &str, seats: Option<u32>, seed: Option<u64>) -> Result<Laid, Failure> {
    let tasting = in_book(opened, name)?;
    let advice = advise(tasting);
    let wanted = seats.or(tasting.panel).or(advice.map(|advice| advice.seats));
    let wanted = wanted.filter(|seats| (1..=MOST_TASTERS).contains(seats)).ok_or_else(|| {
        Failure::new(format!("a table has 1 to {MOST_TASTERS} seats"))
            .hint("say how many with --seats, or as panel in the tasting")
    })?;
    let seed = match seed {
        Some(seed) => seed,
        None => getrandom::u64().map_err(|why| Failure::new(format!("chance gives no number: {why}")))?,
    };
    let at = super::now();
    let revision = remembered(store, opened, Kind::Tasting, name, at).await?;
    let mut samples = Vec::new();
    for sample in &tasting.samples {
        samples.push(made_from(store, opened, tasting, sample, at).await?);
    }
    let table = draw(tasting.method, tasting.samples.len(), wanted as usize, seed);
    let words = (0..table.len()).map(|_| word()).collect::<Result<Vec<_>, _>>()?;
    let seats = words.iter().cloned().zip(table.iter().map(cups)).collect();
    let laying = Laying { tasting: (name, revision), seed: &seed.to_string(), at, samples, seats };
    let sitting = store.lay(&laying).await.map_err(told)?;
    Ok(Laid { held: of_sitting(store, sitting).await?, advice, words })
}

/// The revision that a sample is made from: the one that is asked for, or the text as it is now.
async fn made_from(
    store: &Store,
    opened: &Opened,
    tasting: &Tasting,
    sample: &formula::read::Sample,
    at: Timestamp,
) -> Result<(Kind, String, i64), Failure> {
    let (kind, name) = match (&sample.trial, &sample.formula) {
        (Some(trial), _) => (Kind::Trial, trial.value.as_str()),
        (None, Some(formula)) => (Kind::Formula, formula.value.as_str()),
        (None, None) => {
            return Err(Failure::new(format!("nothing is told of the sample “{}” of “{}”", sample.title, tasting.title)));
        }
    };
    let number = match sample.revision {
        Some(number) => {
            store.text(kind, name, i64::from(number)).await.map_err(|fault| {
                told(fault).hint("`wellproved history` counts the revisions; leave revision out for the text as it is")
            })?;
            i64::from(number)
        }
        None => remembered(store, opened, kind, name, at).await?,
    };
    Ok((kind, name.to_owned(), number))
}

/// The revision of a document as it is in the book, saved if it was not.
async fn remembered(store: &Store, opened: &Opened, kind: Kind, name: &str, at: Timestamp) -> Result<i64, Failure> {
    let is_it = |file: &String| document(file).is_some_and(|(of, called)| of == kind && formula::read::stem(&called) == name);
    let Some((file, source)) = opened.text.files.iter().find(|(file, _)| is_it(file)) else {
        return Err(Failure::new(format!("the {} “{name}” has no file", kind.word())));
    };
    let called = document(file).map(|(_, called)| called).unwrap_or_default();
    let saving = Saving { kind, name: &called, text: &source.text, note: "as it was tasted", by: "", at, from: None };
    match store.save(&saving).await.map_err(told)? {
        Saved::New(one) | Saved::Unchanged(one) => Ok(one.number),
    }
}

fn cups(seat: &Seat) -> Vec<Cup> {
    let place = |sample: usize| i64::try_from(sample).unwrap_or_default();
    let reference = seat.reference.map(|sample| Cup { place: 0, code: 0, sample: place(sample) });
    let cups = seat.cups.iter().zip(1..).map(|(cup, number)| Cup {
        place: number,
        code: i64::from(cup.code),
        sample: place(cup.sample),
    });
    reference.into_iter().chain(cups).collect()
}

/// A word that nobody guesses.
pub fn word() -> Result<String, Failure> {
    let mut bytes = [0_u8; LETTERS_OF_A_WORD];
    getrandom::fill(&mut bytes).map_err(|why| Failure::new(format!("chance gives no number: {why}")))?;
    Ok(bytes.iter().map(|byte| char::from(LETTERS[usize::from(byte % 32)])).collect())
}
