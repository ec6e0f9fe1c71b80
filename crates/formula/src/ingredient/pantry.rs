//! All ingredients a book knows: the built-in table, and the author's own over it.

use super::{Composition, Ingredient, Names, builtin_drafts, did_you_mean, nearest, plain_name};
use crate::diagnostic::told_enough;
use crate::read::{At, German, Group, IngredientDraft, Leaven};
use crate::source::LONGEST_CHAIN;
use crate::{Checked, Diagnostic, fault};
use quantity::Fraction;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock};

/// Ingredients by name.
#[derive(Clone, Debug)]
pub struct Pantry {
    own: Arc<Table>,
    built_in: &'static Table,
    names: Option<&'static Names>,
}

/// Ingredients by every name they are found by.
type Table = BTreeMap<String, Arc<Ingredient>>;

/// A file of the author's ingredients, as read.
#[derive(Clone, Debug)]
pub struct StockedFile {
    /// The file.
    pub file: Arc<str>,
    /// Its ingredients.
    pub ingredients: Vec<IngredientDraft>,
}

static BUILT_IN: LazyLock<Table> = LazyLock::new(|| built_in(None));
static COMMON_GERMAN: LazyLock<Table> = LazyLock::new(|| built_in(Names::in_language("de")));
static AUSTRIAN: LazyLock<Table> = LazyLock::new(|| built_in(Names::in_language("de-AT")));
static SWISS: LazyLock<Table> = LazyLock::new(|| built_in(Names::in_language("de-CH")));

fn built_in(names: Option<&Names>) -> Table {
    let mut table = Stocking::default();
    for (group, drafts) in builtin_drafts() {
        let file: Arc<str> = format!("data/ingredients/{}.toml", group.word()).into();
        let drafts = match names {
            Some(names) => drafts.into_iter().map(|draft| names.over(draft)).collect(),
            None => drafts,
        };
        table.lay_out(&file, Some(group), drafts);
    }
    let stocked = table.stock(&BTreeMap::new());
    debug_assert!(stocked.diagnostics.is_empty(), "{:?}", stocked.diagnostics);
    stocked.value
}

/// The built-in table in a language, with its names where it has any.
fn named_in(language: &str) -> (&'static Table, Option<&'static Names>) {
    let table = match German::of(language) {
        None => &BUILT_IN,
        Some(German::Common) => &COMMON_GERMAN,
        Some(German::Austrian) => &AUSTRIAN,
        Some(German::Swiss) => &SWISS,
    };
    (table, Names::in_language(language))
}

impl Pantry {
    /// The built-in table alone.
    #[must_use]
    pub fn built_in() -> Self {
        Self { own: Arc::default(), built_in: &BUILT_IN, names: None }
    }

    /// The built-in table, named in a language, with an author's files over it.
    #[must_use]
    pub fn stocked(files: Vec<StockedFile>, language: &str) -> Checked<Self> {
        let (built_in, names) = named_in(language);
        let mut own = Stocking::default();
        for file in files {
            own.lay_out(&file.file, None, file.ingredients);
        }
        let stocked = own.stock(built_in);
        Checked { value: Self { own: Arc::new(stocked.value), built_in, names }, diagnostics: stocked.diagnostics }
    }

    /// The same ingredients, the built-in ones named in another language.
    #[must_use]
    pub fn told_in(&self, language: &str) -> Self {
        let (built_in, names) = named_in(language);
        Self { own: Arc::clone(&self.own), built_in, names }
    }

    /// The ingredient of that name, as people type it.
    #[must_use]
    pub fn find(&self, typed: &str) -> Option<&Arc<Ingredient>> {
        let by = |name: &str| self.own.get(name).or_else(|| self.built_in.get(name));
        by(typed).or_else(|| by(&plain_name(typed)))
    }

    /// Whether an ingredient is shown in English because it has no name in the language asked for.
    #[must_use]
    pub fn is_untranslated(&self, ingredient: &Ingredient) -> bool {
        self.names.is_some_and(|names| !ingredient.own && !names.has(&ingredient.name))
    }

    /// The known name nearest to an unknown one.
    #[must_use]
    pub fn nearest(&self, typed: &str) -> Option<&str> {
        nearest(typed, self.own.keys().chain(self.built_in.keys()).map(String::as_str))
    }

    /// Every ingredient once, the author's own first, each group in its order.
    pub fn all(&self) -> impl Iterator<Item = &Arc<Ingredient>> {
        let shadowed = |name: &str| self.own.contains_key(name);
        let own = self.own.iter().filter(|(name, row)| **name == row.name);
        let built_in = self.built_in.iter().filter(move |(name, row)| **name == row.name && !shadowed(name));
        own.chain(built_in).map(|(_, row)| row)
    }
}

/// Drafts on their way to ingredients.
#[derive(Default)]
struct Stocking {
    drafts: Vec<(Arc<str>, Option<Group>, IngredientDraft)>,
    by_name: BTreeMap<String, usize>,
    found: Vec<Diagnostic>,
}

impl Stocking {
    fn lay_out(&mut self, file: &Arc<str>, group: Option<Group>, drafts: Vec<IngredientDraft>) {
        for draft in drafts {
            let name = plain_name(&draft.name.value);
            if self.by_name.contains_key(&name) {
                let message = format!("the ingredient “{name}” is described twice");
                let place = draft.name.place(file);
                self.found.push(fault::NAME_TWICE.at(place, message).hint("keep one, or give the other another name"));
                continue;
            }
            self.by_name.insert(name, self.drafts.len());
            self.drafts.push((Arc::clone(file), group, draft));
        }
    }

    fn stock(mut self, below: &Table) -> Checked<Table> {
        let mut made: BTreeMap<usize, Arc<Ingredient>> = BTreeMap::new();
        for index in 0..self.drafts.len() {
            self.make(index, &mut made, below, &mut Vec::new());
        }
        let mut table = BTreeMap::new();
        for ingredient in made.into_values() {
            for other in &ingredient.also {
                table.entry(plain_name(other)).or_insert_with(|| Arc::clone(&ingredient));
            }
            table.insert(ingredient.name.clone(), ingredient);
        }
        Checked { value: table, diagnostics: self.found }
    }

    /// Makes an ingredient, those it starts from first; `path` is what is being made already.
    fn make(
        &mut self,
        index: usize,
        made: &mut BTreeMap<usize, Arc<Ingredient>>,
        below: &Table,
        path: &mut Vec<usize>,
    ) -> Option<Arc<Ingredient>> {
        if let Some(done) = made.get(&index) {
            return Some(Arc::clone(done));
        }
        path.push(index);
        let (file, group, draft) = self.drafts[index].clone();
        let mut named = |this: &mut Self, name: &At<String>| {
            let plain = plain_name(&name.value);
            // An author's row of a built-in name starts from the built-in one.
            match this.by_name.get(&plain).copied() {
                Some(other) if other == index && below.contains_key(&plain) => below.get(&plain).cloned(),
                Some(other) if path.contains(&other) => {
                    let message = format!("“{}” is described by way of itself", name.value);
                    let found = fault::CIRCULAR_INGREDIENTS.at(name.place(&file), message);
                    this.found.push(found.hint("state the figures of one of them"));
                    None
                }
                Some(other) if path.len() >= LONGEST_CHAIN && !made.contains_key(&other) => {
                    let message = format!(
                        "“{}” is reached by way of more than {LONGEST_CHAIN} ingredients that each start from the next",
                        name.value
                    );
                    this.found
                        .push(fault::NESTED_TOO_DEEP.at(name.place(&file), message).hint("state the figures of one of them"));
                    None
                }
                Some(other) => this.make(other, made, below, path),
                None => below.get(&plain).cloned().or_else(|| {
                    if told_enough(&this.found, fault::UNKNOWN_INGREDIENT.code) {
                        return None;
                    }
                    let known = this.by_name.keys().chain(below.keys()).map(String::as_str);
                    let near = nearest(&plain, known).map(did_you_mean);
                    let mut found =
                        fault::UNKNOWN_INGREDIENT.at(name.place(&file), format!("“{}” is no known ingredient", name.value));
                    found.hint = near;
                    this.found.push(found);
                    None
                }),
            }
        };
        let base = draft.like.as_ref().and_then(|like| named(self, like));
        let parts = draft.made_of.iter().filter_map(|(name, share)| Some((named(self, name)?, *share))).collect();
        path.pop();
        let ingredient = Arc::new(assemble(draft, group, base.as_deref(), parts));
        made.insert(index, Arc::clone(&ingredient));
        Some(ingredient)
    }
}

/// Lays what is stated over what it starts from; `group` is that of its built-in file.
fn assemble(
    draft: IngredientDraft,
    group: Option<Group>,
    base: Option<&Ingredient>,
    parts: Vec<(Arc<Ingredient>, Fraction)>,
) -> Ingredient {
    let name = plain_name(&draft.name.value);
    let own_title = draft.title.clone();
    let title = draft.title.or_else(|| base.map(|base| base.title.clone())).unwrap_or_else(|| name.replace('-', " "));
    let called = draft.called.or(own_title).or_else(|| base.map(|base| base.called.clone())).unwrap_or_else(|| title.clone());
    let mixed = Composition::mixed(parts.iter().map(|(part, share)| (&part.composition, *share)));
    let below = match base {
        Some(base) => base.composition.clone(),
        None if parts.is_empty() => Composition::default(),
        None => mixed,
    };
    let mut allergens = draft.allergens.or_else(|| base.map(|base| base.allergens.clone())).unwrap_or_default();
    allergens.extend(parts.iter().flat_map(|(part, _)| part.allergens.iter().cloned()));
    allergens.sort();
    allergens.dedup();
    let parts = single(parts);
    let counts_as_flour = draft.counts_as_flour.or(base.map(|base| base.counts_as_flour)).unwrap_or(false);
    let leaven = draft.leaven.or(base.and_then(|base| base.leaven));
    let kinds = std::iter::once(name.clone()).chain(base.iter().flat_map(|base| base.kinds.iter().cloned())).collect();
    Ingredient {
        kinds,
        title,
        called,
        declared: draft.declared.or_else(|| base.and_then(|base| base.declared.clone())),
        compound: draft.compound.or(base.map(|base| base.compound)).unwrap_or(false),
        also: draft.also,
        group: draft.group.or(group).or(base.map(|base| base.group)).unwrap_or_else(|| likely_group(counts_as_flour, leaven)),
        counts_as_flour,
        leaven,
        composition: draft.composition.over(&below),
        density: draft.density.or_else(|| base.and_then(|base| base.density.clone())),
        piece: draft.piece.or_else(|| base.and_then(|base| base.piece.clone())),
        edible: draft.edible.or(base.map(|base| base.edible)).unwrap_or(Fraction::WHOLE),
        allergens,
        heat_treated: draft.heat_treated.or(base.map(|base| base.heat_treated)).unwrap_or(false),
        whole_nut: draft.whole_nut.or(base.map(|base| base.whole_nut)).unwrap_or(false),
        carbohydrate_basis: draft.carbohydrate_basis.unwrap_or_default(),
        sum_note: draft.sum_note.unwrap_or_default(),
        added_sugar: draft.added_sugar.or(base.map(|base| base.added_sugar)).unwrap_or(false),
        source: draft.source.or_else(|| base.map(|base| base.source.clone())).unwrap_or_default(),
        notes: draft.notes.or_else(|| base.map(|base| base.notes.clone())).unwrap_or_default(),
        parts,
        name,
        own: group.is_none(),
    }
}

/// The group of an author's ingredient that states none and starts from none.
const fn likely_group(counts_as_flour: bool, leaven: Option<Leaven>) -> Group {
    match leaven {
        _ if counts_as_flour => Group::Flour,
        Some(_) => Group::Leaven,
        None => Group::Other,
    }
}

/// Parts down to single ingredients, each once: mixes of mixes are not followed again and again.
fn single(parts: Vec<(Arc<Ingredient>, Fraction)>) -> Vec<(Arc<Ingredient>, Fraction)> {
    let mut singles: BTreeMap<String, (Arc<Ingredient>, Fraction)> = BTreeMap::new();
    for (part, share) in parts {
        for (single, inner) in part.singles() {
            let sum = singles.entry(single.name.clone()).or_insert_with(|| (single, Fraction::ZERO));
            sum.1 += inner.of(share);
        }
    }
    singles.into_values().collect()
}
