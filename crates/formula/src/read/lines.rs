//! A table of separated values, line by line, with the place of each cell.

use crate::source::Source;
use std::ops::Range;

/// The lines of a table with the place of each cell.
pub struct Lines<'s> {
    text: &'s str,
    records: csv::StringRecordsIntoIter<&'s [u8]>,
}

impl<'s> Lines<'s> {
    /// Parted by commas, or by semicolons or tabs where the headings are.
    pub fn of(source: &'s Source) -> Self {
        let heading = source.text.lines().next().unwrap_or_default();
        let delimiter = match heading {
            heading if heading.contains(',') => b',',
            heading if heading.contains(';') => b';',
            heading if heading.contains('\t') => b'\t',
            _ => b',',
        };
        Self::parted_by(source, delimiter)
    }

    /// Parted by that sign.
    pub fn parted_by(source: &'s Source, delimiter: u8) -> Self {
        let reader =
            csv::ReaderBuilder::new().has_headers(false).flexible(true).delimiter(delimiter).from_reader(source.text.as_bytes());
        Self { text: &source.text, records: reader.into_records() }
    }
}

impl Iterator for Lines<'_> {
    type Item = Vec<(String, Range<usize>)>;

    fn next(&mut self) -> Option<Self::Item> {
        // The text is whole and in memory, so nothing can go wrong that another line would not tell.
        let record = self.records.next()?.ok()?;
        let begins = record.position().map_or(0, |position| usize::try_from(position.byte()).unwrap_or(0));
        let mut at = self.text.floor_char_boundary(begins.min(self.text.len()));
        let mut cells = Vec::new();
        for cell in &record {
            let span = match self.text[at..].find(cell).filter(|_| !cell.is_empty()) {
                Some(offset) => at + offset..at + offset + cell.len(),
                None => at..at,
            };
            at = span.end;
            cells.push((cell.to_owned(), span));
        }
        Some(cells)
    }
}
