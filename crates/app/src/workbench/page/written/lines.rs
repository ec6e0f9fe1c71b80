//! Fields of several lines, a name and its figure each: "flour-rye-dark = 50 %".

use super::figures::figure;
use super::plain;
use super::writing::{Writer, put};
use crate::workbench::answer::Refusal;
use formula::Ingredient;
use formula::read::Group;
use formula::read::keys::{Key, Value};
use quantity::SpoonSystem;
use quantity::print::capital;
use std::collections::BTreeSet;
use toml_edit::{InlineTable, Item, TableLike, value};

impl Writer<'_> {
    /// Lines of names and figures: those that are gone are taken out, those that say something else are changed.
    pub(super) fn write_lines(&mut self, key: &Key, written: &mut dyn TableLike, field: &str, text: &str) -> Result<(), Refusal> {
        if written.get(key.name).and_then(Item::as_table_like).is_none() {
            put(written, key.name, value(InlineTable::new()));
        }
        let Some(table) = written.get_mut(key.name).and_then(Item::as_table_like_mut) else { return Ok(()) };
        let pairs = pairs(key, text).map_err(|refusal| refusal.of(field))?;
        let kept: BTreeSet<&str> = pairs.iter().map(|(name, _)| name.as_str()).collect();
        let gone: Vec<String> =
            table.iter().map(|(name, _)| name.to_owned()).filter(|name| !kept.contains(name.as_str())).collect();
        for name in gone {
            table.remove(&name);
            self.told.gone(&name);
        }
        for (name, text) in &pairs {
            if table.get(name).and_then(plain).as_deref() == Some(*text) {
                continue;
            }
            if matches!(key.value, Value::Amounts) {
                self.counts_pieces(name, text).map_err(|refusal| refusal.of(field))?;
            }
            put(table, name, figure(text));
            self.told.line(name, text);
        }
        Ok(())
    }

    /// Refuses a bare number of what nobody counts in pieces: the unit is forgotten.
    fn counts_pieces(&self, name: &str, text: &str) -> Result<(), Refusal> {
        let ware = self.opened.book.pantry.find(name).filter(|ware| text.parse::<f64>().is_ok() && !self.is_counted(ware));
        match ware {
            None => Ok(()),
            Some(ware) => Err(Refusal::unfit(
                format!("“{name} = {text}”: {text} of what? “{}” is not counted in pieces. Nothing was written.", ware.title),
                format!("write the unit: {name} = {text} g"),
            )),
        }
    }

    /// Whether an ingredient is bought by the piece; butter comes in sticks only where cups are those of the US.
    fn is_counted(&self, ware: &Ingredient) -> bool {
        let is_of_the_us = matches!(self.opened.book.settings.spoons, Some(SpoonSystem::UsCustomary | SpoonSystem::UsLabel));
        ware.piece.is_some() && (ware.own || ware.group != Group::Dairy || is_of_the_us)
    }
}

/// The names and figures of a field's lines.
fn pairs<'t>(key: &Key, text: &'t str) -> Result<Vec<(String, &'t str)>, Refusal> {
    let mut pairs = Vec::new();
    for (n, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        let bare = |part: &'t str| part.trim().trim_matches('"');
        let pair = line.split_once(['=', ':']).map(|(name, figure)| (bare(name), bare(figure)));
        let Some((name, figure)) = pair.filter(|(name, figure)| !name.is_empty() && !figure.is_empty()) else {
            let message = format!(
                "{}, line {}, “{}”: it has no name with “=” and a figure. Nothing was written.",
                capital(key.name),
                n + 1,
                line.trim()
            );
            return Err(Refusal::unfit(message, format!("write {}", remedy(key.value, line.trim()))));
        };
        pairs.push((name.to_owned(), figure));
    }
    Ok(pairs)
}

/// The line as it should be, where it can be guessed: "flour-strong-white 320 g" lacks only its sign.
fn remedy(value: Value, line: &str) -> String {
    let parted = line.find(|c: char| c.is_ascii_digit()).map(|at| (line[..at].trim_end(), &line[at..]));
    match parted.filter(|(name, _)| !name.is_empty() && !name.contains(['=', ':'])) {
        Some((name, figure)) => format!("{name} = {figure}"),
        None => super::example(value).to_owned(),
    }
}
