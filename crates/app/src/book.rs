//! A book opened from the disk and worked out on all cores.

use crate::failure::Failure;
use crate::files;
use crate::learning::learning;
use crate::photographs;
use crate::rests_on::Rests;
use crate::terminal;
use bench::forecast::Calibration;
use bench::rules::proof_read;
use formula::read::Kitchen;
use formula::{Book, BookText, Checked, Diagnostic, Formula, Severity};
use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// A book with its texts.
pub struct Opened {
    /// Its folder.
    pub folder: PathBuf,
    /// Its texts.
    pub text: BookText,
    /// The book.
    pub book: Book,
    found: Vec<Diagnostic>,
    only: Option<String>,
    taught: Mutex<BTreeMap<String, Calibration>>,
    /// What its answers rest on.
    pub(crate) rests: Rests,
}

/// Opens the book at a path.
pub fn open(path: &Path) -> Result<Opened, Failure> {
    Ok(opened(files::find(path)?))
}

/// Opens the book in a folder, which may have no formula yet.
pub fn begin(folder: &Path) -> Result<Opened, Failure> {
    Ok(opened(files::find_if_any(folder)?))
}

fn opened(found: files::Found) -> Opened {
    let files::Found { folder, text, refused, only } = found;
    let Checked { value: book, diagnostics } = Book::open(text.clone());
    let found = refused.into_iter().chain(diagnostics).collect();
    Opened { folder, text, book, found, only, taught: Mutex::default(), rests: Rests::default() }
}

impl Opened {
    /// The names of the formulas that were asked for.
    pub fn names(&self) -> Vec<&str> {
        match &self.only {
            Some(only) => self.book.formulas.keys().map(String::as_str).filter(|name| name == only).collect(),
            None => self.book.formulas.keys().map(String::as_str).collect(),
        }
    }

    /// Takes over what trials taught of the book as it was before a change, where that rests on nothing that changed.
    pub fn taught_as(mut self, before: &Self) -> Self {
        if self.is_taught_alike(before) {
            self.taught = Mutex::new(before.taught.lock().unwrap_or_else(PoisonError::into_inner).clone());
        }
        self
    }

    /// What the trials of a kitchen taught, worked out when it is first asked for.
    pub fn taught(&self, kitchen: &Kitchen) -> Calibration {
        let mut taught = self.taught.lock().unwrap_or_else(PoisonError::into_inner);
        taught.entry(kitchen.name.clone()).or_insert_with(|| learning(self, kitchen).lessons.calibration).clone()
    }

    /// Everything that is wrong, in the order of files and places.
    pub fn check(&self) -> Vec<Diagnostic> {
        let kitchen = self.book.kitchen();
        let worked_out = self.each(&self.names(), |checked| self.proof_read(checked, &kitchen));
        self.in_order(worked_out.into_iter().flatten().collect())
    }

    /// Everything that is wrong with one formula.
    pub fn proof_read(&self, checked: Checked<Formula>, kitchen: &Kitchen) -> Vec<Diagnostic> {
        // What the rules say of a formula that cannot be computed would only follow from its errors.
        let is_sound = checked.diagnostics.iter().all(|found| found.severity < Severity::Error);
        let by_rules = is_sound.then(|| proof_read(&checked.value, kitchen, &self.book.settings));
        let misplaced: Vec<Diagnostic> = self.book.misplaced(&checked.value).collect();
        let photograph = checked.value.head.photograph.as_ref();
        let unusable = photograph.and_then(|photograph| photographs::judge(&self.folder, photograph));
        checked.diagnostics.into_iter().chain(misplaced).chain(unusable).chain(by_rules.into_iter().flatten()).collect()
    }

    /// What was found in the formulas that were asked for and in the book around them, in the order of files and places.
    pub fn in_order(&self, in_formulas: Vec<Diagnostic>) -> Vec<Diagnostic> {
        let mut found: Vec<Diagnostic> = self.found.iter().cloned().chain(in_formulas).collect();
        if self.only.is_some() {
            let names = self.names();
            let own = |d: &Diagnostic| {
                self.book.formulas.iter().any(|(name, source)| names.contains(&name.as_str()) && source.file == d.place.file)
            };
            found.retain(|d| own(d) || !d.place.file.starts_with("formulas/"));
        }
        found.sort_by(|a, b| (&a.place.file, a.place.span.start, a.code).cmp(&(&b.place.file, b.place.span.start, b.code)));
        found
    }

    /// The formulas that were asked for, worked out, in the order of their names.
    pub fn formulas(&self) -> Vec<Formula> {
        self.each(&self.names(), |checked| checked.value)
    }

    /// Works out the formulas of these names, on all cores, with progress when it takes long.
    pub fn each<T: Send>(&self, names: &[&str], take: impl Fn(Checked<Formula>) -> T + Sync) -> Vec<T> {
        let bar = progress(names.len());
        let each = |name: &&str| {
            let checked = self.book.formula(name);
            bar.inc(1);
            checked.map(&take)
        };
        let made = names.par_iter().filter_map(each).collect();
        bar.finish_and_clear();
        made
    }
}

/// A bar that shows itself only to a person, and only when there is much to do.
pub fn progress(count: usize) -> ProgressBar {
    let target = if terminal::is_watched() && count > 500 { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
    let bar = ProgressBar::with_draw_target(Some(count as u64), target);
    if let Ok(style) = ProgressStyle::with_template("{bar:40} {pos}/{len} formulas, {eta} left") {
        bar.set_style(style);
    }
    bar
}
