//! The same recipe in several languages: formulas of a book that name each other.

use crate::ingredient::{did_you_mean, nearest};
use crate::read::{At, BookSettings, read_formula};
use crate::source::Source;
use crate::{Diagnostic, Formula, fault};
use std::collections::BTreeMap;

/// What a formula calls a translation that the book does not have, or that is in its own language.
pub fn mistranslated<'b>(
    formula: &'b Formula,
    formulas: &'b BTreeMap<String, Source>,
    settings: &'b BookSettings,
) -> impl Iterator<Item = Diagnostic> + 'b {
    let own = settings.language_of(&formula.head);
    formula.head.translations.iter().filter_map(move |name| {
        let Some(source) = formulas.get(&name.value) else { return Some(unknown(name, formula, formulas)) };
        let other = read_formula(source).value.head;
        let message = || format!("“{}” is written in “{own}” as this formula is", name.value);
        let found = || fault::TRANSLATION_IN_ONE_LANGUAGE.at(name.place(&formula.file), message());
        settings
            .language_of(&other)
            .eq_ignore_ascii_case(own)
            .then(|| found().hint("say in which language each is written: language = \"de\""))
    })
}

fn unknown(name: &At<String>, formula: &Formula, formulas: &BTreeMap<String, Source>) -> Diagnostic {
    let found = fault::UNKNOWN_FORMULA.at(name.place(&formula.file), format!("there is no formula called “{}”", name.value));
    match nearest(&name.value, formulas.keys().map(String::as_str)) {
        Some(near) => found.hint(did_you_mean(near)),
        None => found.hint("name a file of formulas/ without its ending"),
    }
}
