//! Labels on sheets of them: how many, from which place on, and what is done where they do not fit.

use crate::failure::Failure;
use crate::{files, terminal};
use bench::label::{Label, Law};
use clap::builder::PossibleValuesParser;
use formula::read::BookSettings;
use publish::print::Meant;
use std::path::PathBuf;

/// The sheets by their names; a label's width and height in millimetres on A4, in inches on Letter.
pub const SHEETS: [&str; 10] =
    ["70x36", "105x57", "105x74", "105x148", "210x148", "2.6x1in", "4x2in", "4x3.3in", "4x5in", "8.5x5.5in"];

/// Where a PDF of labels goes, and on what sheet.
#[derive(clap::Args)]
pub struct OnSheets {
    /// Print the labels into this file instead, a PDF of sheets of labels; one that is there is replaced.
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    pdf: Option<PathBuf>,
    /// The sheet by the size of its labels: millimetres on A4, inches on Letter; the smallest on which all can be read if
    /// left out.
    #[arg(long, value_name = "SIZE", requires = "pdf", value_parser = PossibleValuesParser::new(SHEETS))]
    sheet: Option<String>,
    /// How many of each label; as many as fill the sheet if left out.
    #[arg(long, value_name = "COUNT", requires = "pdf", value_parser = clap::value_parser!(u16).range(1..=2000))]
    copies: Option<u16>,
    /// The first free place on a part-used sheet, counted by rows from the top left.
    #[arg(long, value_name = "PLACE", requires = "sheet", value_parser = clap::value_parser!(u16).range(1..=30))]
    from: Option<u16>,
    /// The largest face of the pack is under 80 cm², where European law allows letters of 0.9 mm.
    #[arg(long, requires = "pdf")]
    small_pack: bool,
    /// Leave the word "Draft" out: you have checked every word with your authority. Refused while something is missing.
    #[arg(long, requires = "pdf")]
    checked: bool,
}

impl OnSheets {
    /// Whether a PDF is asked for.
    pub const fn is_asked(&self) -> bool {
        self.pdf.is_some()
    }

    /// Prints, where it is asked for.
    pub fn print(&self, labels: &[Label], settings: &BookSettings) -> Result<(), Failure> {
        let Some(file) = &self.pdf else { return Ok(()) };
        if let Some(lacking) = labels.iter().find(|one| self.checked && !one.gaps.is_empty()) {
            let missing = lacking.gaps.first().map(String::as_str).unwrap_or_default();
            return Err(Failure::new(format!("the label of “{}” lacks: {missing}", lacking.name))
                .hint("mend what is missing first (without --pdf all of it is told), or print drafts without --checked"));
        }
        let meant = Meant { as_drafts: !self.checked, for_small_packs: self.small_pack };
        let words = publish::print::labels(labels, settings, meant);
        let first = self.sheet.as_deref().unwrap_or_else(|| smallest(labels));
        let wanted =
            Wanted { labels: labels.len(), copies: self.copies.map(usize::from), from: usize::from(self.from.unwrap_or(1)) };
        let printed = set(first, wanted, &words)?;
        files::write(file, &printed.bytes)?;
        if printed.sheet != first && self.sheet.is_some() {
            terminal::remark(&format!(
                "labels of {first} have no room for letters as large as they must be: these are {}",
                printed.sheet
            ));
        }
        terminal::remark(&format!("printed: {}, labels of {}", file.display(), printed.sheet));
        for one in labels.iter().filter(|one| !one.gaps.is_empty()) {
            terminal::remark(&format!("“{}” has gaps: without --pdf they are told", one.name));
        }
        Ok(())
    }
}

/// The sheet to begin with.
pub fn smallest(labels: &[Label]) -> &'static str {
    if labels.iter().any(|one| one.law == Law::Us) { "2.6x1in" } else { "70x36" }
}

/// So many labels, each so often, from a place on.
#[cfg_attr(not(feature = "pdf"), expect(dead_code, reason = "only what sets type asks"))]
#[derive(Clone, Copy)]
pub struct Wanted {
    /// How many different labels.
    pub labels: usize,
    /// How many of each; as many as fill the sheet if left out.
    pub copies: Option<usize>,
    /// The first place, counted from one.
    pub from: usize,
}

/// Labels that were set in type, and on which sheet.
pub struct Set {
    /// The PDF.
    pub bytes: Vec<u8>,
    /// The sheet's name.
    pub sheet: &'static str,
}

/// Sets labels in type, on the first sheet from the one asked for on that has room for them.
#[cfg(feature = "pdf")]
pub fn set(first: &str, wanted: Wanted, words: &serde_json::Value) -> Result<Set, Failure> {
    let Wanted { labels, copies, from } = wanted;
    let mut next = paper::Sheet::named(first);
    while let Some(sheet) = next {
        if from > sheet.holds() {
            return Err(Failure::new(format!("a sheet of {} has {} places, not {from}", sheet.name, sheet.holds())));
        }
        let copies = copies.unwrap_or_else(|| ((sheet.holds() + 1 - from) / labels.max(1)).max(1));
        let empty = std::iter::repeat_n(None, from - 1);
        let places: Vec<Option<usize>> =
            empty.chain((0..labels).flat_map(|one| std::iter::repeat_n(Some(one), copies))).collect();
        match paper::labels(sheet, &places, words) {
            Ok(bytes) => return Ok(Set { bytes, sheet: sheet.name }),
            Err(why) if !why.is_for_want_of_room() => return Err(Failure::new(why.to_string())),
            Err(_) if from > 1 => {
                let hint = sheet.larger().map_or("", |_| "name a larger sheet with --sheet, or begin a fresh one without --from");
                return Err(Failure::new(format!(
                    "labels of {} have no room for all of it in letters as large as they must be",
                    sheet.name
                ))
                .hint(hint));
            }
            Err(_) => next = sheet.larger(),
        }
    }
    Err(Failure::new("no sheet of labels has room for all of it in letters as large as they must be")
        .hint("print the draft instead: --format html"))
}

/// This program was built without.
#[cfg(not(feature = "pdf"))]
pub fn set(_: &str, _: Wanted, _: &serde_json::Value) -> Result<Set, Failure> {
    Err(crate::paper::built_without())
}

#[cfg(all(test, feature = "pdf"))]
mod tests {
    use super::*;

    #[test]
    fn every_sheet_is_offered_by_its_name() {
        assert_eq!(SHEETS, paper::Sheet::ALL.map(|sheet| sheet.name));
    }
}
