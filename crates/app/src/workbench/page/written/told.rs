//! What a form changed, in a few words: "milk-whole 1.39 EUR", for the list of what was changed.

use super::figures::is_money;
use formula::read::keys::{Key, Value};

/// So many changes are told; the rest is counted.
const MOST: usize = 3;

/// What was changed so far, and in which row.
#[derive(Debug, Default)]
pub struct Told {
    all: Vec<(Vec<String>, String)>,
    within: Vec<String>,
}

impl Told {
    /// What follows belongs to a row or a part of that name.
    pub fn within(&mut self, name: &str) {
        self.within.push(name.to_owned());
    }

    /// No longer.
    pub fn outside(&mut self) {
        self.within.pop();
    }

    /// A key says something new.
    pub fn came(&mut self, key: &Key, text: &str) {
        let is_about_the_row = !self.within.is_empty() && self.within.last().is_some_and(|row| row == text);
        let says_itself = matches!(key.value, Value::Figure(words) if is_money(words) && key.name == "costs");
        match (is_about_the_row, says_itself) {
            (true, _) => self.note(String::new()),
            (_, true) => self.note(text.to_owned()),
            _ => self.note(format!("{} {text}", key.name.replace('-', " "))),
        }
    }

    /// A line says something new.
    pub fn line(&mut self, name: &str, text: &str) {
        self.note(format!("{name} {text}"));
    }

    /// Something was taken out.
    pub fn gone(&mut self, name: &str) {
        self.note(format!("{} taken out", name.replace('-', " ")));
    }

    fn note(&mut self, words: String) {
        match self.all.last_mut().filter(|(within, _)| *within == self.within && !within.is_empty()) {
            Some((_, said)) if said.is_empty() => *said = words,
            Some((_, said)) if !words.is_empty() => *said = format!("{said}, {words}"),
            Some(_) => {}
            None => self.all.push((self.within.clone(), words)),
        }
    }

    /// All of it after what it is about.
    pub fn after(&self, what: &str) -> String {
        let one = |(within, said): &(Vec<String>, String)| {
            let words = within.iter().map(String::as_str).chain([said.as_str()]).filter(|word| !word.is_empty());
            words.collect::<Vec<_>>().join(" ").replace('\n', "; ")
        };
        let mut told: Vec<String> = self.all.iter().take(MOST).map(one).collect();
        if self.all.len() > MOST {
            told.push(format!("and {} more", self.all.len() - MOST));
        }
        if told.is_empty() { what.to_owned() } else { format!("{what}: {}", told.join("; ")) }
    }
}
