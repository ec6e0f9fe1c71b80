//! What an exchange works on: the formula as it is, its text on the way, and what is noticed meanwhile.

use super::balance::{Balance, grams};
use super::manuscript::Manuscript;
use super::mentions::{is_share, joined, mention, rewrite};
use super::{Unfit, Wishes};
use crate::forecast::Surroundings;
use formula::ingredient::Figure;
use formula::read::Amount;
use formula::resolve::formula::{Content, StageAt};
use formula::source::Source;
use formula::{Book, Checked, Formula, Ingredient, Line, Origin};
use quantity::{Kind, Mass, Measure, SpoonSystem};
use std::sync::Arc;

/// A formula being changed.
pub struct Desk<'d> {
    /// The book it stands in.
    pub book: &'d Book,
    /// Its text as it was.
    pub source: &'d Source,
    /// The formula as it was.
    pub before: &'d Formula,
    /// The kitchen it is made in, as the forecast sees it.
    pub around: &'d Surroundings,
    /// What is asked.
    pub wishes: &'d Wishes,
    /// The text on its way.
    pub manuscript: Manuscript,
    /// What every line should weigh.
    pub balance: Balance,
    /// What cannot be kept.
    pub lost: Vec<String>,
    /// What must be minded.
    pub minded: Vec<String>,
    /// What became of the author's own words.
    pub of_words: Vec<String>,
    /// What computes or taught its new figures, each once.
    pub rests_on: Vec<Origin>,
}

/// Everything that a line can keep.
const WHOLE: [&str; 7] = ["title", "note", "temperature", "taken-out", "after-scaling", "as-flour", "quiet"];

/// What a line may keep when something else takes its place.
pub const KEEP: [&str; 4] = ["temperature", "taken-out", "after-scaling", "as-flour"];

impl<'d> Desk<'d> {
    /// The language that the formula is written in.
    pub fn language(&self) -> &'d str {
        self.book.settings.language_of(&self.before.head)
    }

    /// Takes note of what a new figure rests on.
    pub fn rest_on(&mut self, origin: Origin) {
        if !self.rests_on.contains(&origin) {
            self.rests_on.push(origin);
        }
    }

    /// A formula before anything is changed.
    pub fn of(book: &'d Book, source: &'d Source, before: &'d Formula, around: &'d Surroundings, wishes: &'d Wishes) -> Self {
        let (manuscript, balance) = (Manuscript::new(&source.text), Balance::of(before));
        Self {
            book,
            source,
            before,
            around,
            wishes,
            manuscript,
            balance,
            lost: Vec::new(),
            minded: Vec::new(),
            of_words: Vec::new(),
            rests_on: Vec::new(),
        }
    }

    /// Whether anything has been changed.
    pub fn is_changed(&self) -> bool {
        self.manuscript.text != self.source.text || self.balance != Balance::of(self.before)
    }

    /// Reads a text in the formula's place.
    pub fn work_out(&self, text: &str) -> Checked<Formula> {
        self.book.revised(&Source { file: Arc::clone(&self.source.file), text: text.to_owned() })
    }

    /// The formula that the text tells once every line weighs what it should.
    pub fn hold(&mut self) -> Result<Formula, Unfit> {
        let mut manuscript = self.manuscript.clone();
        let held = self.balance.hold(&mut manuscript, &|text| self.work_out(text));
        self.manuscript = manuscript;
        held
    }

    /// The one line that is meant among those that fit.
    pub fn line(&self, wanted: &str, fits: impl Fn(&Line) -> bool) -> Result<(StageAt, &'d Line), Unfit> {
        let all: Vec<(StageAt, &'d Line)> = self.before.lines().collect();
        let meant: Vec<_> = all.iter().copied().filter(|(at, line)| fits(line) && self.is_meant(*at, line)).collect();
        match meant[..] {
            [one] => Ok(one),
            [] => Err(Unfit::Nothing { wanted: wanted.to_owned(), has: listed(all.iter().map(|(_, line)| line.name.clone())) }),
            _ => Err(Unfit::Which { wanted: wanted.to_owned(), fitting: self.told(&meant) }),
        }
    }

    /// Every line that is meant among those that fit, at least one.
    pub fn lines(&self, wanted: &str, fits: impl Fn(&Line) -> bool) -> Result<Vec<(StageAt, &'d Line)>, Unfit> {
        let meant: Vec<_> = self.before.lines().filter(|(at, line)| fits(line) && self.is_meant(*at, line)).collect();
        let has = || listed(self.before.lines().map(|(_, line)| line.name.clone()));
        if meant.is_empty() { Err(Unfit::Nothing { wanted: wanted.to_owned(), has: has() }) } else { Ok(meant) }
    }

    /// The one stage that is meant among those that fit.
    pub fn stage(&self, wanted: &str, fits: impl Fn(StageAt, &formula::Stage) -> bool) -> Result<StageAt, Unfit> {
        let name = self.wishes.stage.as_ref().or(self.wishes.of.as_ref());
        let is_meant = |stage: &formula::Stage| name.is_none_or(|name| stage.name == *name);
        let meant: Vec<_> = self.before.stages().filter(|(at, stage)| is_meant(stage) && fits(*at, stage)).collect();
        let names = |stages: &[(StageAt, &formula::Stage)]| listed(stages.iter().map(|(_, stage)| stage.name.clone()));
        match meant[..] {
            [(at, _)] => Ok(at),
            [] => Err(Unfit::Nothing { wanted: wanted.to_owned(), has: names(&self.before.stages().collect::<Vec<_>>()) }),
            _ => Err(Unfit::WhichStage { wanted: wanted.to_owned(), fitting: names(&meant) }),
        }
    }

    /// The ingredient of that name.
    pub fn ingredient(&self, name: &str) -> Result<Arc<Ingredient>, Unfit> {
        let nearest = || self.book.pantry.nearest(name).map(str::to_owned);
        self.book.pantry.find(name).cloned().ok_or_else(|| Unfit::NoSuchIngredient(name.to_owned(), nearest()))
    }

    /// The ingredient that is wanted instead, or the usual one.
    pub fn wanted_or(&self, usual: &str) -> Result<Arc<Ingredient>, Unfit> {
        self.ingredient(self.wishes.into.as_deref().unwrap_or(usual))
    }

    /// Puts ingredients in a line's place and in the sentences that name it; gives their names in the text.
    pub fn swap(&mut self, at: StageAt, line: &Line, into: &[(Arc<Ingredient>, Mass)], keep: &[&str]) -> Vec<String> {
        let mut names: Vec<String> = Vec::new();
        // Where only a share is exchanged, the rest of the line is as its author wrote it.
        let is_rest = into.first().is_some_and(|(first, _)| line.ingredient().is_some_and(|own| own.name == first.name));
        let keep = if is_rest { &WHOLE[..] } else { keep };
        if let Some(note) = line.note.as_ref().filter(|_| !keep.contains(&"note")) {
            self.of_words.push(format!("the note “{note}” went with {}", line.title));
        }
        for (one, mass) in into {
            let name = self.free_name(at, &one.name, &line.name);
            let amount = placeholder(line, *mass, one);
            let mut own = vec![("amount", amount.as_str())];
            if name != one.name {
                own.insert(0, ("ingredient", &one.name));
            }
            match names.last() {
                None => self.manuscript.replace_line(at, &line.name, &name, &own, keep),
                Some(before) => self.manuscript.insert_line(at, before, &name, &own),
            }
            self.balance.set(at, &name, *mass);
            names.push(name);
        }
        self.balance.remove(at, &line.name);
        for ((_, mass), name) in into.iter().zip(&names) {
            self.balance.set(at, name, *mass);
        }
        let shares: Vec<f64> = into.iter().map(|(_, mass)| *mass / line.mass.value).collect();
        let language = self.language();
        self.mention_instead(at, &line.name, |part| instead(&names, &shares, part, language));
        names
    }

    /// The line's own name where nothing else has it, or one that says what it stands for.
    pub fn free_name(&self, at: StageAt, wanted: &str, instead_of: &str) -> String {
        let is_taken = |name: &str| {
            name != instead_of
                && (self.before.stage(at).lines.iter().any(|line| line.name == name) || self.balance.get(at, name) > Mass::ZERO)
        };
        let names = std::iter::once(wanted.to_owned())
            .chain(std::iter::once(format!("{wanted}-for-the-{instead_of}")))
            .chain((2..).map(|n| format!("{wanted}-{n}")));
        names.into_iter().find(|name| !is_taken(name)).unwrap_or_default()
    }

    /// Rewrites what the sentences of a component say of a line of one of its stages.
    pub fn mention_instead(&mut self, at: StageAt, name: &str, instead: impl Fn(Option<&str>) -> String) {
        for s in 0..self.before.components[at.0].stages.len() {
            let here = (at.0, s);
            let is_anothers = here != at && self.before.stage(here).lines.iter().any(|line| line.name == name);
            if is_anothers {
                continue;
            }
            let mut left_out = Vec::new();
            self.manuscript.rewrite_steps(here, |text| {
                let (text, gone) = rewrite(text, |one, part| (one == name).then(|| instead(part)));
                left_out.extend(gone);
                text
            });
            self.of_words.extend(left_out.into_iter().map(|text| format!("the sentence “{text}” is left out of the method")));
        }
    }

    /// A weight that is stated of another stage's product follows where that stage became heavier or lighter, so
    /// that the same part of it is used; what the exchange itself has changed stays.
    pub fn let_products_follow(&mut self) {
        for (at, line) in self.before.lines() {
            let Content::Stage(c, s) = line.content else { continue };
            let (was, now) = (self.before.stage((c, s)).mixed(), self.balance.stage_with_parts((c, s), self.before));
            let is_as_before = self.balance.get(at, &line.name) == line.mass.value;
            if is_as_before
                && was > Mass::ZERO
                && now > Mass::ZERO
                && self.manuscript.has_stage((c, s), &self.before.stage((c, s)).name)
            {
                self.balance.set(at, &line.name, line.mass.value * (now / was));
            }
        }
    }

    fn is_meant(&self, at: StageAt, line: &Line) -> bool {
        let of =
            self.wishes.of.as_ref().is_none_or(|of| line.name == *of || line.ingredient().is_some_and(|one| one.name == *of));
        of && self.wishes.stage.as_ref().is_none_or(|stage| self.before.stage(at).name == *stage)
    }

    fn told(&self, lines: &[(StageAt, &Line)]) -> Vec<String> {
        lines.iter().map(|(at, line)| format!("{} (stage {})", line.name, self.before.stage(*at).name)).collect()
    }
}

/// The keys of a line of an ingredient: only its amount where the line goes by the ingredient's name.
pub fn named<'k>(ingredient: &'k str, name: &str, amount: &'k str) -> Vec<(&'k str, &'k str)> {
    let mut own = vec![("amount", amount)];
    if name != ingredient {
        own.insert(0, ("ingredient", ingredient));
    }
    own
}

/// An ingredient line's share of water, or nothing where no source says.
pub fn water_of(one: &Ingredient) -> f64 {
    if one.is_water() { 1.0 } else { one.composition.share(Figure::Water).unwrap_or_default().as_ratio() }
}

/// A figure of an ingredient as a share, or why the exchange cannot be reckoned.
pub fn figure(one: &Ingredient, figure: Figure) -> Result<f64, Unfit> {
    let lacking = || Unfit::NotSo(format!("no source gives the {} of “{}”", figure.title(), one.title));
    one.composition.share(figure).map(quantity::Fraction::as_ratio).ok_or_else(lacking)
}

fn listed(names: impl Iterator<Item = String>) -> Vec<String> {
    let mut listed: Vec<String> = Vec::new();
    names.for_each(|name| {
        if !listed.contains(&name) {
            listed.push(name)
        }
    });
    listed
}

/// A first amount in the way the old line is written, which the balance then makes right.
fn placeholder(line: &Line, mass: Mass, one: &Ingredient) -> String {
    match line.written {
        Amount::Measure(measure) if measure.unit.kind() == Kind::Share && !one.counts_as_flour && !line.is_flour => {
            let percent = format!("{:.1}", (measure.value.middle() * (mass / line.mass.value)).max(0.1));
            format!("{} %", percent.trim_end_matches(".0"))
        }
        _ => grams(mass),
    }
}

/// What is said of several lines where one was: the same share of each, or of a weight its parts.
fn instead(names: &[String], shares: &[f64], part: Option<&str>, language: &str) -> String {
    let all = |part: Option<&str>| joined(&names.iter().map(|name| mention(name, part)).collect::<Vec<_>>(), language);
    let Some(said) = part else { return all(None) };
    if is_share(said) {
        return all(part);
    }
    match said.parse::<Measure>().ok().and_then(|measure| measure.mass(SpoonSystem::Metric)) {
        Some(mass) => {
            let each = names.iter().zip(shares).map(|(name, share)| mention(name, Some(&grams(mass.to * *share))));
            joined(&each.collect::<Vec<_>>(), language)
        }
        // A name, an amount or a temperature is that of what took the line's place.
        None => names.first().map(|name| mention(name, part)).unwrap_or_default(),
    }
}

/// Whether a line is the product of that stage.
pub fn is_product_of(line: &Line, at: StageAt) -> bool {
    matches!(line.content, Content::Stage(c, s) if (c, s) == at)
}
