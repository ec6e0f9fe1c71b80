//! What is asked of the day, as the address says it.

use super::Pairs;
use crate::asked::Place;
use crate::asked::day::DayAsked;
use crate::book::Opened;
use crate::workbench::answer::Refusal;
use crate::workbench::page::formula::Wanted as Kitchen;
use ::formula::Content;
use ::formula::read::DayHours;
use maud::{Markup, html};
use plan::alternatives::Way;
use plan::day::Wanted;
use std::collections::BTreeSet;

/// What the address says.
pub struct Asked {
    pub pairs: Pairs,
}

/// What is told of steps, and in which words.
pub const TOLD: [(&str, &str); 3] = [("done", "done"), ("begun", "begun"), ("seen", "seen")];

/// How steps are fixed, and in which words.
pub const FIXED: [(&str, &str); 3] = [("at", "at"), ("not-before", "not before"), ("not-after", "not after")];

impl Asked {
    pub fn get(&self, key: &str) -> Option<&str> {
        let said = self.pairs.iter().find(|(name, _)| name == key).map(|(_, value)| value.trim());
        said.filter(|value| !value.is_empty())
    }

    pub fn has(&self, key: &str) -> bool {
        self.get(key).is_some()
    }

    pub fn all(&self, key: &str) -> Vec<String> {
        let said = self.pairs.iter().filter(|(name, value)| name == key && !value.trim().is_empty());
        said.map(|(_, value)| value.trim().to_owned()).collect()
    }

    /// Whether anything is told of what happened.
    pub fn has_told(&self) -> bool {
        TOLD.iter().any(|(key, _)| self.has(key))
    }

    /// The same address with one thing more, or other.
    pub fn with(&self, key: &str, value: &str) -> Pairs {
        let mut pairs = self.without(key);
        pairs.push((key.to_owned(), value.to_owned()));
        pairs
    }

    /// The same without a key.
    pub fn without(&self, key: &str) -> Pairs {
        self.pairs.iter().filter(|(name, value)| name != key && !value.is_empty()).cloned().collect()
    }

    /// The same without one of the things that are said under a key.
    pub fn without_one(&self, key: &str, text: &str) -> Pairs {
        self.pairs.iter().filter(|(name, value)| !(name == key && value.trim() == text)).cloned().collect()
    }

    /// What is fixed, each with how, in the order in which the day tells it.
    pub fn fixes(&self) -> Vec<(&'static str, String)> {
        FIXED.iter().flat_map(|(key, _)| self.all(key).into_iter().map(move |text| (*key, text))).collect()
    }

    /// When it is on the table.
    pub fn serve(&self) -> &str {
        self.get("serve").unwrap_or("09:30")
    }

    /// Whether a time of the clock alone says when, and nothing of the day is settled yet.
    pub fn is_any_day(&self) -> bool {
        let is_free = ["way", "at", "not-before", "not-after"].iter().all(|key| !self.has(key)) && !self.has_told();
        is_free && !self.serve().contains('-')
    }

    /// The kitchen that is meant.
    pub fn place(&self) -> Place {
        let said = |key| self.get(key).map(str::to_owned);
        Kitchen { kitchen: said("kitchen"), room: said("room"), fridge: said("fridge"), ..Kitchen::default() }.place()
    }

    /// The way to spread it that is meant, if another than is written.
    pub fn way(&self) -> Result<Option<Way>, Refusal> {
        let Some(word) = self.get("way").filter(|_| !self.has_told()) else { return Ok(None) };
        Way::named(word).map(Some).ok_or_else(|| Refusal::no_such(format!("There is no way called “{word}”.")))
    }

    /// The day as the command line would ask for it.
    pub fn day(&self) -> Result<DayAsked, Refusal> {
        let pieces = self.pairs.iter().filter_map(|(key, value)| Some((key.strip_prefix("pieces-")?, value.trim())));
        let pieces = pieces.filter(|(name, value)| !value.is_empty() && self.all("formula").iter().any(|one| one == name));
        let out =
            self.all("out").iter().flat_map(|text| text.split(',').map(hours).collect::<Vec<_>>()).collect::<Result<_, _>>()?;
        Ok(DayAsked {
            serve: self.serve().to_owned(),
            formula: self.all("formula"),
            pieces: pieces.map(|(name, count)| format!("{name}={count}")).collect(),
            there: self.all("there"),
            asleep: self.get("asleep").map(hours).transpose()?,
            out,
            done: self.all("done"),
            begun: self.all("begun"),
            seen: self.all("seen"),
            at: self.all("at"),
            not_before: self.all("not-before"),
            not_after: self.all("not-after"),
            zone: self.get("zone").map(str::to_owned),
            now: self.get("now").map(str::to_owned),
        })
    }
}

fn hours(text: &str) -> Result<DayHours, Refusal> {
    let wrong =
        || Refusal::unfit(format!("“{}” are no hours.", text.trim()), "two times of a clock of 24 hours are wanted: 22:30-06:30");
    DayHours::read(text.trim()).ok_or_else(wrong)
}

/// The form that asks.
pub fn form(opened: &Opened, asked: &Asked, wanted: Option<&Wanted>) -> Markup {
    let chosen = asked.all("formula");
    let serve = match wanted {
        Some(wanted) => wanted.serve.strftime("%Y-%m-%dT%H:%M").to_string(),
        None => asked.get("serve").filter(|text| text.contains('T')).unwrap_or_default().to_owned(),
    };
    let kitchen = asked.get("kitchen").map_or_else(|| opened.book.kitchen().name, str::to_owned);
    html! {
        form.fields.day-form method="get" action="/day" {
            @for key in ["zone", "now", "done", "begun", "seen", "at", "not-before", "not-after"] {
                @for value in asked.all(key) { input type="hidden" name=(key) value=(value); }
            }
            fieldset {
                legend { "What is served" }
                @for formula in opened.formulas() {
                    @let name = &formula.name;
                    div.served {
                        label.tick { input type="checkbox" name="formula" value=(name) checked[chosen.contains(name)]; " " (formula.head.title) }
                        @if formula.components.first().is_some_and(|one| one.yields.pieces.is_some()) {
                            label.pieces { span.apart { (formula.head.title) ": " } "pieces " input type="text" inputmode="numeric" size="4" name={ "pieces-" (name) }
                                value=(asked.get(&format!("pieces-{name}")).unwrap_or_default()) placeholder=(own_pieces(&formula)); }
                        }
                    }
                }
            }
            label { "On the table at" input type="datetime-local" name="serve" value=(serve); }
            label { "Asleep" input type="text" name="asleep" size="12" value=(asked.get("asleep").unwrap_or_default()) placeholder="22:30-06:30"; }
            label { "Out of the kitchen" input type="text" name="out" size="14" value=(asked.all("out").join(", ")) placeholder="12:00-13:30"; }
            @if opened.book.kitchens.len() > 1 {
                label { "In the kitchen" select name="kitchen" {
                    @for (name, one) in &opened.book.kitchens { option value=(name) selected[*name == kitchen] { (one.title) } }
                } }
            }
            label { "Room, °C" input type="text" inputmode="decimal" size="5" name="room" value=(asked.get("room").unwrap_or_default()); }
            (there(opened, asked, wanted))
            button { "Plan it" }
        }
    }
}

fn own_pieces(formula: &::formula::Formula) -> String {
    let pieces = formula.components.first().and_then(|one| one.yields.pieces);
    pieces.map(quantity::print::count).unwrap_or_default()
}

/// The formulas that what is chosen is made with, which may be there already.
fn there(opened: &Opened, asked: &Asked, wanted: Option<&Wanted>) -> Markup {
    let mut names: BTreeSet<String> = asked.all("there").into_iter().collect();
    for formula in wanted.into_iter().flat_map(|wanted| &wanted.formulas) {
        for (_, line) in formula.lines() {
            if let Content::Formula(blend) = &line.content {
                names.insert(blend.name.clone());
            }
        }
    }
    let held = asked.all("there");
    html! {
        @if !names.is_empty() {
            fieldset {
                legend { "Made already" }
                @for name in &names {
                    @let title = opened.book.formula(name).map_or_else(|| name.clone(), |checked| checked.value.head.title);
                    label.tick { input type="checkbox" name="there" value=(name) checked[held.contains(name)]; " " (title) }
                }
            }
        }
    }
}
