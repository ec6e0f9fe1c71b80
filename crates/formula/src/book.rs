//! A whole book: its texts, its settings, kitchens and ingredients, and its formulas by name.

use crate::arithmetic;
use crate::ingredient::{StockedFile, nearest, plain_name};
use crate::larder::{LARDER, misplaced as misplaced_larder};
use crate::prices::{PRICES, misplaced as misplaced_prices};
use crate::read::{
    At, BookSettings, Kitchen, Larder, Prices, Tasting, Trial, is_plain, read_book, read_formula, read_ingredients, read_kitchen,
    read_larder, read_prices, read_room_log, stem,
};
use crate::resolve::formula::{Blend, Formula};
use crate::resolve::trial::misplaced;
use crate::resolve::{OtherFormula, Surroundings, resolve};
use crate::source::{LONGEST_CHAIN, Source};
use crate::tastings::{TASTINGS, cited_wrongly, read_tastings};
use crate::translations::mistranslated;
use crate::trials::{TRIALS, read_trials};
use crate::{Checked, Diagnostic, Pantry, Place, fault};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::sync::{Arc, RwLock};

/// The texts of a book by file name, with forward slashes: all that the core is told.
#[derive(Clone, Debug, Default)]
pub struct BookText {
    /// The files.
    pub files: BTreeMap<String, Source>,
}

/// What was found of a formula that another one uses.
#[derive(Clone, Debug)]
enum Other {
    /// What it makes, and the length of the longest chain of formulas from it down.
    Makes(Arc<Blend>, usize),
    Faulty,
    Circle(Vec<String>),
    /// The chain from it down is longer than that.
    LongerThan(usize),
}

impl Other {
    /// The answer where a chain may go on so far; none if it must be worked out anew for that.
    fn answer(self, room: usize) -> Option<OtherFormula> {
        match self {
            Self::Makes(_, length) if length > room => Some(OtherFormula::TooFar),
            Self::Makes(blend, _) => Some(OtherFormula::Makes(blend)),
            Self::Faulty => Some(OtherFormula::Faulty),
            Self::Circle(way) => Some(OtherFormula::Circle(way)),
            Self::LongerThan(length) => (room <= length).then_some(OtherFormula::TooFar),
        }
    }
}

/// What a formula met among those it uses.
#[derive(Default)]
struct Met {
    circle: Option<Vec<String>>,
    too_far: bool,
    longest: usize,
}

/// A book with everything read but its formulas, which are worked out one by one.
#[derive(Debug)]
pub struct Book {
    /// What holds for all of it.
    pub settings: BookSettings,
    /// Its kitchens by name.
    pub kitchens: BTreeMap<String, Kitchen>,
    /// Its ingredients.
    pub pantry: Pantry,
    /// Its formulas' texts by name.
    pub formulas: BTreeMap<String, Source>,
    /// What was seen when they were baked, in the order of days.
    pub trials: Vec<Trial>,
    /// What was tasted blind, or is to be, by name.
    pub tastings: BTreeMap<String, Tasting>,
    /// What its ingredients, energy and work cost.
    pub prices: Prices,
    /// What is there already.
    pub larder: Larder,
    others: RwLock<BTreeMap<String, Other>>,
}

impl Book {
    /// Reads the settings, kitchens and ingredients of a book.
    #[must_use]
    pub fn open(text: BookText) -> Checked<Self> {
        let mut found = Vec::new();
        let mut settings = BookSettings::default();
        let mut kitchens = BTreeMap::new();
        let mut stocked = Vec::new();
        let mut formulas = BTreeMap::new();
        let mut settings_file = None;
        let (mut prices, mut larder) = (Prices::default(), Larder::default());
        let (mut kitchen_files, mut logs, mut tasted) = (Vec::new(), BTreeMap::new(), Vec::new());
        let (seen, files): (BTreeMap<_, _>, BTreeMap<_, _>) =
            text.files.into_iter().partition(|(file, _)| file.starts_with(TRIALS));
        for (file, source) in files {
            if file == "book.toml" {
                settings = kept(read_book(&source), &mut found);
                settings_file = Some(source.file);
            } else if file == PRICES {
                prices = kept(read_prices(&source), &mut found);
            } else if file == LARDER {
                larder = kept(read_larder(&source), &mut found);
            } else if file.starts_with("kitchens/") && file.ends_with(".csv") {
                logs.insert(file, source);
            } else if file.starts_with("kitchens/") {
                let kitchen = kept(read_kitchen(&source), &mut found);
                kitchen_files.push((kitchen.name.clone(), Arc::clone(&source.file)));
                kitchens.insert(kitchen.name.clone(), kitchen);
            } else if file.starts_with(TASTINGS) {
                // Raw data lie beside their tasting for others to work out anew; a book does not read them.
                tasted.extend((!file.ends_with(".csv")).then_some(source));
            } else if file.starts_with("ingredients/") {
                let ingredients = kept(read_ingredients(&source), &mut found);
                stocked.push(StockedFile { file: source.file, ingredients });
            } else {
                let name = stem(&file).to_owned();
                found.extend(no_address(&source, &name));
                if let Some(other) = formulas.get(&name) {
                    found.push(named_twice(&source, other, &name));
                } else {
                    formulas.insert(name, source);
                }
            }
        }
        for (name, file) in kitchen_files {
            if let Some(kitchen) = kitchens.get_mut(&name) {
                found.extend(measured_room(kitchen, &file, &logs));
            }
        }
        let pantry = Pantry::stocked(stocked, &settings.language);
        found.extend(pantry.diagnostics);
        found.extend(misplaced_prices(&prices, &pantry.value, &settings));
        found.extend(misplaced_larder(&larder, &pantry.value));
        let chosen = settings.kitchen.as_ref().zip(settings_file.as_ref());
        found.extend(chosen.and_then(|(kitchen, file)| unknown_kitchen(kitchen, file, &kitchens)));
        let trials = kept(read_trials(&seen, &formulas, &kitchens), &mut found);
        let tastings = kept(read_tastings(&tasted, &formulas, &trials), &mut found);
        let others = RwLock::new(BTreeMap::new());
        Checked {
            value: Self { settings, kitchens, pantry: pantry.value, formulas, trials, tastings, prices, larder, others },
            diagnostics: found,
        }
    }

    /// The kitchen that formulas are worked out for.
    #[must_use]
    pub fn kitchen(&self) -> Kitchen {
        let chosen = self.settings.kitchen.as_ref().and_then(|name| self.kitchens.get(&name.value));
        chosen.or_else(|| self.kitchens.values().next()).cloned().unwrap_or_else(Kitchen::assumed)
    }

    /// The kitchen that a trial was made in.
    #[must_use]
    pub fn kitchen_of(&self, trial: &Trial) -> Kitchen {
        let own = trial.kitchen.as_ref().and_then(|name| self.kitchens.get(&name.value));
        own.cloned().unwrap_or_else(|| self.kitchen())
    }

    /// What the trials of a formula call by names that it does not have, the tastings it cites that are not its own, and
    /// translations that are none.
    pub fn misplaced<'b>(&'b self, formula: &'b Formula) -> impl Iterator<Item = Diagnostic> + 'b {
        let own = self.trials.iter().filter(|trial| trial.formula.value == formula.name);
        let own = own.flat_map(|trial| misplaced(trial, formula));
        own.chain(cited_wrongly(formula, &self.tastings)).chain(mistranslated(formula, &self.formulas, &self.settings))
    }

    /// Works out the formula of that name.
    #[must_use]
    pub fn formula(&self, name: &str) -> Option<Checked<Formula>> {
        let source = self.formulas.get(name)?;
        Some(self.work_out(source, &[name]).0)
    }

    /// Works out another text of a formula among the book's ingredients and other formulas: a revision of it.
    #[must_use]
    pub fn revised(&self, source: &Source) -> Checked<Formula> {
        self.work_out(source, &[stem(&source.file)]).0
    }

    fn work_out(&self, source: &Source, way: &[&str]) -> (Checked<Formula>, Met) {
        let met = RefCell::new(Met::default());
        let made = read_formula(source).then(|draft| {
            let other = |name: &str| self.meet(name, way, &mut met.borrow_mut());
            let nearest_formula = |name: &str| nearest(name, self.formulas.keys().map(String::as_str)).map(str::to_owned);
            let pantry = self.pantry.told_in(self.settings.language_of(&draft.head));
            let around = Surroundings {
                pantry: &pantry,
                spoons: self.settings.spoons,
                eggs: self.settings.eggs,
                other_formula: &other,
                nearest_formula: &nearest_formula,
            };
            resolve(&draft, &around)
        });
        (made, met.into_inner())
    }

    /// What another formula makes, with a note of what stood in the way; `way` is the chain of formulas that asks.
    fn meet(&self, name: &str, way: &[&str], met: &mut Met) -> OtherFormula {
        let answer = self.other_formula(name, way);
        match &answer {
            OtherFormula::Circle(circle) => met.circle = met.circle.take().or_else(|| Some(circle.clone())),
            OtherFormula::TooFar => met.too_far = true,
            OtherFormula::Makes(_) => met.longest = met.longest.max(self.length(name)),
            OtherFormula::Unknown | OtherFormula::Faulty => {}
        }
        answer
    }

    fn known(&self, name: &str) -> Option<Other> {
        self.others.read().ok()?.get(name).cloned()
    }

    /// The longest chain of formulas from one down, as far as is known.
    fn length(&self, name: &str) -> usize {
        match self.known(name) {
            Some(Other::Makes(_, length)) => length,
            _ => 0,
        }
    }

    fn other_formula(&self, name: &str, way: &[&str]) -> OtherFormula {
        if let Some(at) = way.iter().position(|other| *other == name) {
            return OtherFormula::Circle(circle(&way[at..]));
        }
        let Some(source) = self.formulas.get(name) else { return OtherFormula::Unknown };
        let room = LONGEST_CHAIN.saturating_sub(way.len());
        if room == 0 {
            return OtherFormula::TooFar;
        }
        if let Some(answer) = self.known(name).and_then(|known| known.answer(room)) {
            return answer;
        }
        // Worked out without holding the lock: two threads may do it twice, none can wait for another.
        let longer: Vec<&str> = way.iter().copied().chain([name]).collect();
        let (made, met) = self.work_out(source, &longer);
        let other = judge(name, &made, met, room);
        if let Ok(mut others) = self.others.write() {
            others.insert(name.to_owned(), other.clone());
        }
        other.answer(room).unwrap_or(OtherFormula::Faulty)
    }
}

/// What was read, its faults put with the others.
fn kept<T>(read: Checked<T>, found: &mut Vec<Diagnostic>) -> T {
    found.extend(read.diagnostics);
    read.value
}

/// A kitchen that the settings choose and no file is of.
fn unknown_kitchen(kitchen: &At<String>, file: &Arc<str>, kitchens: &BTreeMap<String, Kitchen>) -> Option<Diagnostic> {
    let known: Vec<&str> = kitchens.keys().map(String::as_str).collect();
    let found = fault::UNKNOWN_KITCHEN.at(kitchen.place(file), format!("there is no kitchen called “{}”", kitchen.value));
    let hint = match known[..] {
        [] => "there is no file in kitchens/ yet: write one, or take this line out".to_owned(),
        _ => format!("the files in kitchens/ are: {}", known.join(", ")),
    };
    (!kitchens.contains_key(&kitchen.value)).then(|| found.hint(hint))
}

/// What a formula that another one uses turned out to be.
fn judge(name: &str, made: &Checked<Formula>, met: Met, room: usize) -> Other {
    // One that only leads to a circle is no part of it.
    if let Some(circle) = met.circle.filter(|circle| circle.iter().any(|one| one == name)) {
        return Other::Circle(circle);
    }
    if met.too_far {
        return Other::LongerThan(room);
    }
    let broken = made.diagnostics.iter().any(|found| found.severity == crate::Severity::Error);
    let blend = if broken { None } else { arithmetic::blend(&made.value) };
    blend.map_or(Other::Faulty, |blend| Other::Makes(Arc::new(blend), met.longest + 1))
}

/// Reads the log of a kitchen's room, if it names one; gives what is wrong with it.
fn measured_room(kitchen: &mut Kitchen, file: &Arc<str>, logs: &BTreeMap<String, Source>) -> Vec<Diagnostic> {
    let Some(name) = &kitchen.room_log else { return Vec::new() };
    let Some(source) = logs.get(&format!("kitchens/{}", name.value)) else {
        let message = format!("there is no file kitchens/{}", name.value);
        return vec![
            fault::UNKNOWN_ROOM_LOG.at(name.place(file), message).hint("put the logger's rows there, or take this line out"),
        ];
    };
    let read = read_room_log(source);
    kitchen.room_by_clock = read.value;
    read.diagnostics
}

/// A circle of names told from its first in the alphabet, so that it reads the same whoever asks.
fn circle(way: &[&str]) -> Vec<String> {
    let first = way.iter().enumerate().min_by_key(|(_, name)| **name).map_or(0, |(at, _)| at);
    let turned = way[first..].iter().chain(&way[..=first]);
    turned.map(|name| (*name).to_owned()).collect()
}

/// The pages of a published book that are no formula's, and what they hold.
pub const BOOK_PAGES: [(&str, &str); 3] = [("index", "the index"), ("tags", "the tags"), ("ingredients", "the ingredients")];

/// A formula whose file name cannot become a page's address: pages are named after files, and disks do not all
/// tell capitals apart.
fn no_address(source: &Source, name: &str) -> Option<Diagnostic> {
    let place = Place { file: Arc::clone(&source.file), span: 0..0 };
    let (message, hint) = if let Some((_, holds)) = BOOK_PAGES.iter().find(|(page, _)| *page == name) {
        (format!("a formula cannot be called “{name}”: its page would take the place of {holds}"), "rename the file".to_owned())
    } else if is_plain(name) {
        return None;
    } else {
        let better = plain_name(name);
        let hint = if is_plain(&better) { format!("call it {better}.toml") } else { "rename the file".to_owned() };
        (format!("“{name}” cannot be a formula's file name: it becomes the address of its page"), hint)
    };
    Some(fault::NAME_NOT_PLAIN.at(place, message).hint(hint))
}

fn named_twice(source: &Source, other: &Source, name: &str) -> Diagnostic {
    let place = Place { file: Arc::clone(&source.file), span: 0..0 };
    let message = format!("two formulas are called “{name}”: {} and {}", other.file, source.file);
    fault::NAME_TWICE.at(place, message).hint("rename one of the files; other formulas call them by that name")
}
