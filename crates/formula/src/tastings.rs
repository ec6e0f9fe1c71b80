//! The tastings of a book: bound to its formulas and trials, and to the formulas that cite them.

use crate::ingredient::{did_you_mean, nearest};
use crate::read::{At, Sample, Tasting, Trial, is_plain, read_tasting};
use crate::source::{MOST_NAMES, Source};
use crate::{Checked, Diagnostic, Formula, Place, fault};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The folder of tastings.
pub const TASTINGS: &str = "tastings/";

/// The tastings among the files of their folder, by name; what they call must be in the book.
pub fn read_tastings(
    files: &[Source],
    formulas: &BTreeMap<String, Source>,
    trials: &[Trial],
) -> Checked<BTreeMap<String, Tasting>> {
    let mut found = Vec::new();
    let mut tastings: BTreeMap<String, Tasting> = BTreeMap::new();
    for source in files {
        let read = read_tasting(source);
        found.extend(read.diagnostics);
        let Some(mut tasting) = read.value else { continue };
        let beginning = Place { file: Arc::clone(&source.file), span: 0..0 };
        if !is_plain(&tasting.name) {
            let message = format!("“{}” cannot be a tasting's file name: it becomes an address", tasting.name);
            found.push(fault::NAME_NOT_PLAIN.at(beginning, message).hint("use small letters, digits and hyphens"));
        } else if let Some(other) = tastings.get(&tasting.name) {
            let message = format!("two tastings are called “{}”: {} and {}", tasting.name, other.file, source.file);
            found.push(fault::NAME_TWICE.at(beginning, message).hint("rename one of the files"));
            continue;
        }
        for sample in &mut tasting.samples {
            found.extend(bind(sample, &source.file, formulas, trials));
        }
        tastings.insert(tasting.name.clone(), tasting);
    }
    Checked { value: tastings, diagnostics: found }
}

/// Looks up what a sample was made by; the formula of a trial becomes the sample's own.
fn bind(sample: &mut Sample, file: &Arc<str>, formulas: &BTreeMap<String, Source>, trials: &[Trial]) -> Option<Diagnostic> {
    if let Some(name) = &sample.trial {
        let Some(trial) = trials.iter().find(|trial| trial.name == name.value) else {
            let known = trials.iter().map(|trial| trial.name.as_str()).collect();
            return Some(unknown(&fault::UNKNOWN_TRIAL, "trial", name, file, known));
        };
        sample.formula.get_or_insert_with(|| At::new(trial.formula.value.clone(), name.span.clone()));
        return None;
    }
    let name = sample.formula.as_ref()?;
    let known = || formulas.keys().map(String::as_str).collect();
    (!formulas.contains_key(&name.value)).then(|| unknown(&fault::UNKNOWN_FORMULA, "formula", name, file, known()))
}

fn unknown(fault: &fault::Fault, what: &str, name: &At<String>, file: &Arc<str>, known: Vec<&str>) -> Diagnostic {
    let found = fault.at(name.place(file), format!("there is no {what} called “{}”", name.value));
    match nearest(&name.value, known.iter().copied()) {
        Some(near) => found.hint(did_you_mean(near)),
        None if known.is_empty() => found.hint(format!("the book has no {what} yet")),
        None => found.hint(format!("the book has: {}", known.iter().take(MOST_NAMES).copied().collect::<Vec<_>>().join(", "))),
    }
}

/// What a formula cites that is no tasting, or one of other formulas.
pub fn cited_wrongly<'b>(formula: &'b Formula, tastings: &'b BTreeMap<String, Tasting>) -> impl Iterator<Item = Diagnostic> + 'b {
    formula.head.evidence.iter().filter_map(move |name| {
        let Some(tasting) = tastings.get(&name.value) else {
            let known = tastings.keys().map(String::as_str).collect();
            return Some(unknown(&fault::UNKNOWN_TASTING, "tasting", name, &formula.file, known));
        };
        let is_own = |sample: &Sample| sample.formula.as_ref().is_some_and(|own| own.value == formula.name);
        let message = || format!("no sample of “{}” was made by this formula", tasting.title);
        let found = || fault::EVIDENCE_OF_OTHERS.at(name.place(&formula.file), message());
        (!tasting.samples.iter().any(is_own)).then(|| found().hint("cite it where its samples were made, or take it out here"))
    })
}
