//! The pages of the next edition: those whose inputs changed are laid out on all cores.

use super::folder::Folder;
use super::inputs::{Hash, Hasher, hash};
use super::papers::{self, With};
use super::pictures;
use super::proof::Proofed;
use super::record::{Kept, Left, Record};
use crate::asked::Place;
use crate::book::{Opened, progress};
use crate::failure::Failure;
use crate::tasting::evidence::Evidence;
use bench::forecast::Surroundings;
use plan::day::{Workplace, usual};
use publish::page::{Leaf, formula_page};
use publish::reader::reader;
use publish::site::{Dated, Links, page_name};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// What the pages are made from.
pub struct Pages<'p> {
    /// The book.
    pub opened: &'p Opened,
    /// What is printed of each formula.
    pub with: &'p [With],
    /// What was tasted.
    pub evidence: &'p Evidence,
    /// The last edition.
    pub record: &'p Record,
    /// The formulas of this one.
    pub formulas: BTreeMap<String, Proofed>,
    /// The moment, as RFC 3339 writes it.
    pub now: String,
    /// The kitchen that readers start from, with what its trials taught; worked out when the first page asks.
    pub around: OnceLock<Surroundings>,
}

impl Pages<'_> {
    /// Lays out what changed, and gives the record of the whole edition.
    pub fn lay_out(&self, folder: &Folder) -> Result<Record, Failure> {
        let settings = &self.opened.book.settings;
        let links = Links::of(self.formulas.values().map(|one| &one.card));
        let bar = progress(self.formulas.len());
        let each = |(name, proofed): (&String, &Proofed)| {
            let kept = self.page(folder, name, proofed, &links);
            bar.inc(1);
            Ok((name.clone(), kept?))
        };
        let formulas: BTreeMap<String, Kept> = self.formulas.par_iter().map(each).collect::<Result<_, Failure>>()?;
        bar.finish_and_clear();
        let dated: Vec<Dated> = formulas.values().map(dated).collect();
        let sheets = self.evidence.sheets(self.opened);
        let lists = publish::book_files(&dated, sheets.keys().map(String::as_str), settings);
        for (name, text) in &lists {
            folder.stage(name, text.as_bytes())?;
        }
        for (name, text) in &sheets {
            folder.stage(name, text.as_bytes())?;
        }
        let own = formulas.values().flat_map(|kept| &kept.files).map(String::as_str);
        let names = own.chain(lists.keys().copied()).chain(sheets.keys().map(String::as_str));
        let left = |name: &str| {
            let unknown = || Left { bytes: 0, stamp: String::new() };
            (name.to_owned(), self.record.files.get(name).cloned().unwrap_or_else(unknown))
        };
        Ok(Record { files: names.map(left).collect(), formulas })
    }

    /// A formula's page, made anew if anything that it depends on changed or its files are not as they were left.
    fn page(&self, folder: &Folder, name: &str, proofed: &Proofed, links: &Links) -> Result<Kept, Failure> {
        let old = self.record.formulas.get(name);
        let page = print_of(proofed.prints.all, name, links, self.with);
        let is_right = |kept: &&Kept| kept.page == page && kept.files.iter().all(|file| folder.is_as_left(file));
        if let Some(kept) = old.filter(|kept| !proofed.is_due || is_right(kept)) {
            return Ok(kept.clone());
        }
        let files = self.make(folder, name, links)?;
        let published = old.map_or_else(|| self.now.clone(), |kept| kept.published.clone());
        let same_words = old.filter(|kept| kept.words == proofed.prints.words);
        let updated = same_words.map_or_else(|| self.now.clone(), |kept| kept.updated.clone());
        Ok(Kept {
            text: proofed.prints.text,
            words: proofed.prints.words,
            all: proofed.prints.all,
            page,
            is_spotless: proofed.is_spotless,
            photograph: proofed.photograph.clone(),
            published,
            updated,
            files,
            card: proofed.card.clone(),
        })
    }

    fn around(&self) -> &Surroundings {
        self.around.get_or_init(|| {
            let kitchen = self.opened.book.kitchen();
            Place::default().surroundings(self.opened, &kitchen).unwrap_or_else(|_| Surroundings::of(&kitchen))
        })
    }

    /// Makes a formula's page and its pictures, and names the files.
    fn make(&self, folder: &Folder, name: &str, links: &Links) -> Result<Vec<String>, Failure> {
        let Some(checked) = self.opened.book.formula(name) else { return Ok(Vec::new()) };
        let formula = checked.value;
        let book = &self.opened.book;
        let settings = &book.settings;
        let (picture, mut files) = match &formula.head.photograph {
            Some(photograph) => pictures::ready(&self.opened.folder, name, photograph, settings.photographs, folder)?,
            None => (None, Vec::new()),
        };
        let reader = reader(book, &formula, self.around());
        let on_paper = papers::ready(book, &formula, self.with, folder)?;
        let claims = self.evidence.claims(&formula);
        let day = usual(&formula, Workplace::of(&book.kitchen()), self.around());
        let (picture, reader) = (picture.as_ref(), Some(&reader));
        let leaf = Leaf {
            used_in: links.used_in(name),
            translations: links.translations(name),
            picture,
            claims: &claims,
            reader,
            day: day.as_ref(),
            on_paper: &on_paper,
            ..Leaf::alone(settings)
        };
        let file = page_name(name);
        folder.stage(&file, formula_page(&formula, &leaf).as_bytes())?;
        files.push(file);
        files.extend(on_paper.into_iter().map(|one| one.file));
        Ok(files)
    }
}

/// The print of all that a page depends on.
fn print_of(all: Hash, name: &str, links: &Links, with: &[With]) -> Hash {
    let mut page = Hasher::of("page");
    page.add(&all.to_le_bytes());
    for (kind, linked) in [("used in", links.used_in(name)), ("translated", links.translations(name))] {
        page.add(kind.as_bytes());
        for link in linked {
            page.add(link.name.as_bytes());
            page.add(&hash(link.title.as_bytes()).to_le_bytes());
            page.add(link.language.as_deref().unwrap_or_default().as_bytes());
        }
    }
    with.iter().for_each(|one| page.add(one.name().as_bytes()));
    page.end()
}

fn dated(kept: &Kept) -> Dated {
    Dated { card: kept.card.clone(), published: kept.published.clone(), updated: kept.updated.clone() }
}
