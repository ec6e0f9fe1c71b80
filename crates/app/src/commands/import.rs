//! `import`: prices and ingredients from a table.

use super::{Ended, Format, Outcome};
use crate::asked::proof_read;
use crate::book::Opened;
use crate::failure::{Failure, Stopped};
use crate::{files, findings, terminal};
use formula::import::{Change, Does, Imported, import_ingredients, import_prices};
use formula::prices::{PRICES, currency};
use formula::source::{MOST_BYTES, Source, too_large};
use formula::{Book, BookText, Checked, Diagnostic, Severity};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Brings prices or your own ingredients in from a table, and shows first what changes.
///
///   wellproved import prices autumn.csv saltmarsh
///   wellproved import prices autumn.csv saltmarsh --in-place
///   wellproved import ingredients mill.csv saltmarsh --into ingredients/mill.toml
///
/// The first line names the columns by the keys of the file: of, pack, costs, on, from, edible for
/// prices; name, title, like, allergens and figures in 100 g such as protein or salt for
/// ingredients. An empty cell says nothing. One wrong cell refuses the whole table; comments and
/// order of what is there stay as they are.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Import {
    /// What the rows are.
    what: What,
    /// The table.
    table: PathBuf,
    /// The book's folder.
    book: PathBuf,
    /// The book's file that new ingredients go into.
    #[arg(long, value_name = "FILE", default_value = "ingredients/imported.toml")]
    into: String,
    /// Change the book; without it the changes are only shown.
    #[arg(long)]
    in_place: bool,
    /// The form of the preview.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// What rows are.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum What {
    /// What packs cost.
    Prices,
    /// Ingredients of the book's own.
    Ingredients,
}

impl Import {
    pub fn run(self) -> Ended {
        let opened = proof_read(&self.book)?;
        let table = read(&self.table)?;
        let Checked { value: imported, diagnostics } = match self.what {
            What::Prices => {
                let currency = currency(&opened.book.prices, &opened.book.settings);
                import_prices(&table, opened.text.files.get(PRICES), &opened.book.pantry, currency.as_deref())
            }
            What::Ingredients => import_ingredients(&table, &own(&opened), &self.file()?, &opened.book.pantry),
        };
        if diagnostics.iter().any(|found| found.severity == Severity::Error) {
            return refuse(&diagnostics, table);
        }
        sound(&opened, &imported, &diagnostics, &table)?;
        terminal::say(&match self.format {
            Format::Text => preview(&imported),
            Format::Json => format!("{:#}", as_json(&imported)),
        })?;
        self.keep(&opened, &imported)?;
        Ok(Outcome::Fine)
    }

    /// The file for new ingredients, which must lie among the book's.
    fn file(&self) -> Result<String, Failure> {
        let file = self.into.replace('\\', "/");
        let is_inside = file.starts_with("ingredients/") && file.ends_with(".toml") && !file.split('/').any(|part| part == "..");
        if is_inside {
            return Ok(file);
        }
        Err(Failure::new(format!("“{}” is no file of a book's ingredients", self.into))
            .hint("write --into ingredients/mill.toml"))
    }

    fn keep(&self, opened: &Opened, imported: &Imported) -> Result<(), Failure> {
        if imported.files.is_empty() {
            terminal::remark("nothing is written: the book says all of it already");
            return Ok(());
        }
        if !self.in_place {
            terminal::remark("nothing is written: --in-place changes the book");
            return Ok(());
        }
        for (file, text) in &imported.files {
            let path = opened.folder.join(file);
            // Where the file is a link, what it leads to is changed and the link stays.
            let path = std::fs::canonicalize(&path).unwrap_or(path);
            files::write(&path, text.as_bytes())?;
            terminal::remark(&format!("written: {}", path.display()));
        }
        Ok(())
    }
}

/// The table's text.
pub fn read(path: &Path) -> Result<Source, Stopped> {
    let shown = path.display().to_string();
    let failed = |error: std::io::Error| Failure::file("read", path, &error);
    let meta = std::fs::metadata(path).map_err(failed)?;
    if !meta.is_file() {
        return Err(Failure::new(format!("{shown} is no file")).into());
    }
    let checked = match meta.len() {
        size if size > MOST_BYTES => Checked { value: None, diagnostics: vec![too_large(&shown, size)] },
        _ => Source::from_bytes(&shown, std::fs::read(path).map_err(failed)?),
    };
    match checked.value {
        Some(source) => Ok(source),
        None => {
            terminal::show(&findings::text(&checked.diagnostics, &BookText::default()))?;
            Err(Stopped::Faults)
        }
    }
}

/// Tells every wrong cell; nothing is taken.
pub fn refuse(found: &[Diagnostic], table: Source) -> Ended {
    let texts = BookText { files: BTreeMap::from([(table.file.to_string(), table)]) };
    terminal::show(&findings::text(found, &texts))?;
    let errors = found.iter().filter(|one| one.severity == Severity::Error).count();
    let faults = if errors == 1 { "one fault".to_owned() } else { format!("{errors} faults") };
    terminal::remark(&format!("refused: {faults} in the table, and nothing of it is taken"));
    Err(Stopped::Faults)
}

/// Warnings are told; a book that would have an error is refused.
fn sound(opened: &Opened, imported: &Imported, warned: &[Diagnostic], table: &Source) -> Result<(), Stopped> {
    let texts = BookText { files: BTreeMap::from([(table.file.to_string(), table.clone())]) };
    if !warned.is_empty() {
        terminal::remark(&findings::text(warned, &texts));
    }
    let mut text = opened.text.clone();
    for (file, new) in &imported.files {
        text.files.insert(file.clone(), Source { file: file.as_str().into(), text: new.clone() });
    }
    let mut found = Book::open(text.clone()).diagnostics;
    found.retain(|one| one.severity == Severity::Error);
    if found.is_empty() {
        return Ok(());
    }
    terminal::show(&findings::text(&found, &text))?;
    terminal::remark("refused: the book would have these faults, and nothing of the table is taken");
    Err(Stopped::Faults)
}

/// The book's own files of ingredients.
fn own(opened: &Opened) -> BTreeMap<String, Source> {
    let files = opened.text.files.iter().filter(|(file, _)| file.starts_with("ingredients/"));
    files.map(|(file, source)| (file.clone(), source.clone())).collect()
}

fn preview(imported: &Imported) -> String {
    let mut out = String::new();
    let mut file = "";
    for change in imported.changes.iter().filter(|change| change.does != Does::Nothing) {
        if change.file != file {
            file = &change.file;
            out.push_str(&format!("{file}\n"));
        }
        match &change.does {
            Does::Adds(what) => out.push_str(&format!("  new      {}: {what}\n", change.title)),
            Does::Changes(keys) => {
                out.push_str(&format!(
                    "  changed  {}: {}\n",
                    change.title,
                    keys.iter().map(changed).collect::<Vec<_>>().join("; ")
                ));
            }
            Does::Nothing => {}
        }
    }
    let count = |is: fn(&Change) -> bool| imported.changes.iter().filter(|change| is(change)).count();
    let (new, changed) = (count(|c| matches!(c.does, Does::Adds(_))), count(|c| matches!(c.does, Does::Changes(_))));
    let same = count(|c| c.does == Does::Nothing);
    let rows = imported.changes.len();
    out.push_str(&format!(
        "{rows} {} read: {new} new, {changed} changed, {same} as in the book\n",
        if rows == 1 { "row" } else { "rows" }
    ));
    out
}

fn changed((key, was, is): &(String, Option<String>, String)) -> String {
    match was {
        Some(was) => format!("{key} {was} → {is}"),
        None => format!("{key} {is}, which was not stated"),
    }
}

fn as_json(imported: &Imported) -> Value {
    let changes = imported.changes.iter().map(|change| {
        let does = match &change.does {
            Does::Adds(what) => json!({ "adds": what }),
            Does::Changes(keys) => {
                let keys: Vec<Value> =
                    keys.iter().map(|(key, was, is)| json!({ "key": key, "before": was, "then": is })).collect();
                json!({ "changes": keys })
            }
            Does::Nothing => json!({ "nothing": true }),
        };
        json!({ "file": change.file, "of": change.title, "does": does })
    });
    json!({ "rows": changes.collect::<Vec<_>>(), "files": imported.files })
}
