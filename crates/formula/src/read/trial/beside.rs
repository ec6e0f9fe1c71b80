//! What stands in a trial beside its figures of mixing, rising and cooking: photographs, corrections, acidity.

use super::read_length;
use crate::fault;
use crate::read::At;
use crate::read::fields::{Fields, Reader};
use crate::read::keys;
use quantity::{Length, read_number};

/// A photograph that was taken of a trial.
#[derive(Clone, Debug)]
pub struct PhotographSeen {
    /// Its file, beside the trial.
    pub file: At<String>,
    /// What it shows.
    pub shows: Option<String>,
    /// How wide that is which it shows from edge to edge.
    pub across: Option<Length>,
}

/// A figure that was put right.
#[derive(Clone, Debug)]
pub struct Correction {
    /// Which figure.
    pub figure: String,
    /// What it was before.
    pub was: String,
    /// When it was put right.
    pub at: Option<String>,
    /// Why.
    pub why: Option<String>,
}

/// The photographs of a trial.
pub fn read_photographs(reader: &mut Reader, fields: &Fields) -> Vec<PhotographSeen> {
    let mut all = Vec::new();
    for (table, span) in fields.tables(reader, "photograph") {
        let own = Fields::open(reader, table, span, &keys::PHOTOGRAPH_SEEN);
        let shows = own.text(reader, "shows").map(|text| text.value.to_owned());
        let across = read_length(reader, &own, "across").filter(|across| *across > Length::ZERO);
        let Some(file) = own.text(reader, "file") else { continue };
        if file.value.contains(['/', '\\']) || file.value.starts_with('.') {
            let message = format!("“{}” does not lie beside this trial", file.value);
            reader.report(&fault::COURSE_MISSING, file.span, message, "a photograph lies in the same folder, called by its name");
            continue;
        }
        all.push(PhotographSeen { file: At::new(file.value.to_owned(), file.span), shows, across });
    }
    all
}

/// The corrections of a trial, in the order in which they were made.
pub fn read_corrections(reader: &mut Reader, fields: &Fields) -> Vec<Correction> {
    let mut all = Vec::new();
    for (table, span) in fields.tables(reader, "correction") {
        let own = Fields::open(reader, table, span, &keys::CORRECTION);
        let was = own.figure(reader, "was").map(|was| was.value);
        let mut text = |name: &str| own.text(reader, name).map(|text| text.value.to_owned());
        let (figure, at, why) = (text("figure"), text("at"), text("why"));
        if let (Some(figure), Some(was)) = (figure, was) {
            all.push(Correction { figure, was, at, why });
        }
    }
    all
}

/// A pH, from 0 to 14.
pub fn read_ph(reader: &mut Reader, fields: &Fields) -> Option<f64> {
    let text = fields.figure(reader, "ph")?;
    match read_number(&text.value) {
        Ok((ph, "")) if (0.0..=14.0).contains(&ph) => Some(ph),
        _ => {
            let message = format!("“{}” is no pH", text.value);
            reader.report(&fault::WRONG_QUANTITY, text.span, message, "a pH is a number from 0 to 14: ph = 4.6");
            None
        }
    }
}
