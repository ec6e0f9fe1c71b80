//! A form's whole way into its file: written, and held against what the book would say then.

use super::{Said, Writer, place};
use crate::book::Opened;
use crate::workbench::answer::Refusal;
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::hand::Change;
use crate::workbench::proof;
use formula::read::keys::Table;
use quantity::print::capital;
use toml_edit::{DocumentMut, Item, TableLike};

/// What a form says, in the words of the file that it is about.
#[derive(Debug)]
pub struct Made {
    /// The file's new text.
    pub text: String,
    /// What that changes, after what the file is called.
    pub what: String,
}

/// A file of the book that a form writes in.
pub struct Target<'t> {
    /// The file, as named in the book.
    pub file: &'t str,
    /// Its keys, or those of the one table of it that is meant.
    pub keys: &'static Table,
    /// That table; empty for the whole file.
    pub table: &'t str,
}

impl Target<'_> {
    /// Writes what a form says into the file, unless somebody else has changed it since the form was seen; `what` begins
    /// the words for it.
    ///
    /// # Errors
    /// As [`Target::made`], and a conflict where the file says something else by now.
    pub async fn write(
        &self,
        (desk, visitor): (&Desk, &Visitor),
        document: DocumentMut,
        said: &Said,
        what: &str,
    ) -> Result<(), Refusal> {
        let from = super::from(said)?;
        let made = self.made(&desk.book(), document, said, what)?;
        desk.write(Change { file: self.file, from, text: made.text, what: &made.what, by: &visitor.name }).await.map(drop)
    }

    /// Writes what a form says into the document; `what` begins the words for it.
    ///
    /// # Errors
    /// Where something cannot be understood: of which field, and in the form's words.
    pub fn made(&self, opened: &Opened, mut document: DocumentMut, said: &Said, what: &str) -> Result<Made, Refusal> {
        let mut writer = Writer::of(opened, said);
        let is_whole = self.table.is_empty();
        let written: Option<&mut dyn TableLike> =
            if is_whole { Some(document.as_table_mut()) } else { document.get_mut(self.table).and_then(Item::as_table_like_mut) };
        if let Some(written) = written {
            writer.write(self.keys, written, "", is_whole)?;
        }
        let what = writer.told(what);
        let text = document.to_string();
        match proof::fault(opened, self.file, &text) {
            None => Ok(Made { text, what }),
            Some(fault) => {
                let own = opened.text.files.get(self.file).map_or(self.file, |source| &*source.file);
                let field =
                    if *fault.place.file == *own { place::field(&fault, (self.keys, self.table), &text, said) } else { None };
                Err(refusal(&fault, field))
            }
        }
    }
}

/// Why a form's text is not written, as the field says that it is about.
fn refusal(fault: &formula::Diagnostic, field: Option<place::Field>) -> Refusal {
    let hint = fault.hint.clone().unwrap_or_default();
    let refusal = |words: String| Refusal::unfit(format!("{words}. Nothing was written."), hint);
    match field {
        None => refusal(capital(&fault.message)),
        Some(field) if field.is_missing => {
            refusal(format!("{}: nothing is said there, and it is needed", field.words)).of(&field.name)
        }
        Some(field) => refusal(format!("{}: {}", field.words, fault.message)).of(&field.name),
    }
}
