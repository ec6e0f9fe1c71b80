//! Sentences tied to figures: every reference bound, every ingredient used.

use super::Found;
use super::formula::{Formula, Shown, Step, Word};
use super::unnamed;
use crate::Place;
use crate::diagnostic::told_enough;
use crate::fault;
use crate::ingredient::{did_you_mean, nearest, plain_name};
use crate::read::{Draft, StepDraft};
use crate::source::MOST_NAMES;
use quantity::{Kind, Mass, Measure, print};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// Ties every step's sentence, and reports references to nothing and ingredients without a use.
pub fn tie(draft: &Draft, formula: &mut Formula, found: Found) {
    for c in 0..formula.components.len() {
        let mut told = Told { missing: missing(draft, formula, c), ..Told::default() };
        let stages = formula.components[c].stages.len();
        for s in 0..stages {
            let drafts = &draft.components[c].stages[s].steps;
            let steps = drafts.iter().map(|step| tie_step(draft, formula, (c, s), step, &mut told, found)).collect();
            formula.components[c].stages[s].steps = steps;
        }
        // What could not be read may be just the sentence that was looked for.
        if draft.unread.is_empty() && !told.has_gap {
            unnamed::report(draft, formula, c, &told.used, found);
        }
    }
}

/// What the sentences of a component have said so far.
#[derive(Default)]
struct Told {
    /// What is written but could not be read or bound, by name.
    missing: Vec<String>,
    /// How much of each line, by stage and line, is used up.
    used: BTreeMap<(usize, usize), Mass>,
    /// Whether a reference among them means nothing.
    has_gap: bool,
}

fn tie_step(draft: &Draft, formula: &Formula, at: (usize, usize), step: &StepDraft, told: &mut Told, found: Found) -> Step {
    let mut tying = Tying { draft, formula, at, step, told, found };
    let words = tying.words();
    Step {
        action: step.action,
        words,
        time: step.time,
        side_time: step.side_time,
        at_a_time: step.at_a_time,
        decks: step.decks,
        until: step.until.clone(),
        temperature: step.temperature,
        attention: step.attention,
        equipment: step.equipment.clone(),
        place: step.text.place(&draft.file),
    }
}

/// What a component has written, but not so that it could be read or bound: a few names are enough.
fn missing(draft: &Draft, formula: &Formula, c: usize) -> Vec<String> {
    let stages = draft.components[c].stages.iter().zip(&formula.components[c].stages);
    let unbound = stages.filter(|(draft, made)| draft.lines.len() > made.lines.len()).flat_map(|(draft, made)| {
        let bound: BTreeSet<&str> = made.lines.iter().map(|line| line.name.as_str()).collect();
        draft.lines.iter().map(|line| line.name.value.as_str()).filter(move |name| !bound.contains(name))
    });
    draft.unread.iter().map(String::as_str).chain(unbound).take(MOST_NAMES).map(str::to_owned).collect()
}

struct Tying<'t> {
    draft: &'t Draft,
    formula: &'t Formula,
    at: (usize, usize),
    step: &'t StepDraft,
    told: &'t mut Told,
    found: Found<'t>,
}

impl Tying<'_> {
    fn words(&mut self) -> Vec<Word> {
        let text = self.step.text.value.as_str();
        let mut words = Vec::new();
        let mut plain = String::new();
        let mut at = 0;
        while let Some(brace) = text[at..].find(['{', '}']) {
            let here = at + brace;
            self.look_for_figures(&text[at..here], at);
            plain.push_str(&text[at..here]);
            let doubled = text[here + 1..].starts_with(&text[here..=here]);
            if doubled {
                plain.push_str(&text[here..=here]);
                at = here + 2;
                continue;
            }
            let Some(end) = text[here..].find('}').filter(|_| text[here..].starts_with('{')) else {
                self.report(
                    &fault::REFERENCE_UNREADABLE,
                    here..here + 1,
                    "a brace without its partner".to_owned(),
                    "write {{ or }} for a brace that should be printed",
                );
                at = here + 1;
                continue;
            };
            let inner = &text[here + 1..here + end];
            if !plain.is_empty() {
                words.push(Word::Text(std::mem::take(&mut plain)));
            }
            words.push(self.reference(inner, here + 1..here + end));
            at = here + end + 1;
        }
        self.look_for_figures(&text[at..], at);
        plain.push_str(&text[at..]);
        if !plain.is_empty() {
            words.push(Word::Text(plain));
        }
        words
    }

    /// The place of a stretch of the sentence in the file.
    fn place(&self, span: Range<usize>) -> Place {
        match self.step.letters {
            Some(start) => Place { file: self.draft.file.clone(), span: start + span.start..start + span.end },
            None => self.step.text.place(&self.draft.file),
        }
    }

    fn report(&mut self, fault: &fault::Fault, span: Range<usize>, message: String, hint: &str) {
        if told_enough(self.found, fault.code) {
            return;
        }
        let place = self.place(span);
        self.told.has_gap |= fault.code == fault::REFERENCE_UNREADABLE.code;
        self.found.push(fault.at(place, message).hint(hint));
    }

    fn reference(&mut self, inner: &str, span: Range<usize>) -> Word {
        let (name, how) = inner.split_once(':').map_or((inner, None), |(name, how)| (name, Some(how.trim())));
        let name = name.trim();
        if name.starts_with(|c: char| c.is_ascii_digit() || "½¼¾⅓⅔-−".contains(c)) {
            return self.figure(inner, span);
        }
        if let (None, Some(word)) = (how, self.own_figure(name)) {
            return word;
        }
        if let Some((stage, line)) = self.find_line(name) {
            return self.line(stage, line, how, span);
        }
        if let Some((c, s)) = self.find_stage(name) {
            if let Some(how) = how.filter(|how| *how != "name") {
                let message = format!("“{how}” cannot be told of “{name}”, which is no line of this stage");
                self.report(&fault::REFERENCE_UNREADABLE, span, message, "give the stage a line that uses it, or name it alone");
            }
            return Word::Stage(c, s);
        }
        self.nothing(name, span)
    }

    fn figure(&mut self, inner: &str, span: Range<usize>) -> Word {
        match inner.trim().parse::<Measure>() {
            Ok(measure) => Word::Measure(measure),
            Err(why) => {
                self.report(
                    &fault::REFERENCE_UNREADABLE,
                    span,
                    format!("“{{{inner}}}” is no figure: {why}"),
                    "write a number and a unit: {20 cm}, {170 °C}",
                );
                Word::Text(inner.to_owned())
            }
        }
    }

    /// A figure of the step or the yield, if the name is one and the figure is stated.
    fn own_figure(&self, name: &str) -> Option<Word> {
        let yields = &self.formula.components[self.at.0].yields;
        let stage = &self.formula.components[self.at.0].stages[self.at.1];
        let step = self.step;
        match name {
            "time" => step.time.map(|_| Word::Time),
            "side-time" => step.side_time.map(|_| Word::SideTime),
            "until" => step.until.as_ref().map(|_| Word::Until),
            "temperature" => step.temperature.map(|_| Word::Temperature),
            "pieces" => yields.pieces.map(|_| Word::Pieces),
            "scaling-weight" => yields.scaling_weight.map(|_| Word::ScalingWeight),
            "at-a-time" => step.at_a_time.map(|_| Word::AtATime),
            "serves" => yields.serves.map(|_| Word::Serves),
            "kept-back" => (stage.kept_back > Mass::ZERO).then_some(Word::KeptBack),
            _ => None,
        }
    }

    /// A line of this stage, or else of the nearest earlier stage of the component.
    fn find_line(&self, name: &str) -> Option<(usize, usize)> {
        let stages = &self.formula.components[self.at.0].stages;
        (0..=self.at.1).rev().find_map(|s| {
            let line = stages[s].lines.iter().position(|line| line.name == name)?;
            Some((s, line))
        })
    }

    fn find_stage(&self, name: &str) -> Option<(usize, usize)> {
        let components = &self.formula.components;
        let own = components[self.at.0].stages.iter().position(|stage| stage.name == name).map(|s| (self.at.0, s));
        own.or_else(|| {
            let c = components.iter().position(|component| component.name == name)?;
            Some((c, components[c].stages.len().checked_sub(1)?))
        })
    }

    fn line(&mut self, stage: usize, line: usize, how: Option<&str>, span: Range<usize>) -> Word {
        let written = &self.formula.components[self.at.0].stages[stage].lines[line];
        let all = written.mass.value;
        let used = self.told.used.get(&(stage, line)).copied().unwrap_or(Mass::ZERO);
        let left = (all - used).max(Mass::ZERO);
        let (mass, shown) = match how {
            None => (all, Shown::Both),
            Some("name") => (Mass::ZERO, Shown::Name),
            Some("amount") => (all, Shown::Amount),
            Some("rest") => (left, Shown::Both),
            Some("temperature") => {
                return written.temperature.map_or_else(|| self.nothing("temperature", span), Word::LineTemperature);
            }
            Some(how) => match part_of(how, all) {
                Some(mass) => (mass, Shown::Both),
                None => {
                    let message = format!("“{how}” says nothing of how much of “{}” is meant", written.name);
                    self.report(
                        &fault::REFERENCE_UNREADABLE,
                        span,
                        message,
                        "write half, a third, rest, name, amount, temperature, or a weight such as 100 g",
                    );
                    return Word::Text(written.title.clone());
                }
            },
        };
        let total = used + mass;
        let whole = mass >= all * 0.999;
        // Naming the same line in full twice repeats it; only parts add up.
        let adds_up = !(whole && used > Mass::ZERO);
        if adds_up && total > all * 1.005 {
            let message =
                format!("{} of “{}” are told of so far, but {} are weighed", print::mass(total), written.name, print::mass(all));
            self.report(
                &fault::MORE_REFERRED_THAN_WEIGHED,
                span,
                message,
                "the parts of a line make up the whole; {x: rest} is what is left",
            );
        }
        self.told.used.insert((stage, line), if adds_up { total } else { all });
        Word::Line { stage, line, mass, whole, shown }
    }

    fn nothing(&mut self, name: &str, span: Range<usize>) -> Word {
        self.told.has_gap = true;
        if nearest(name, self.told.missing.iter().map(String::as_str)).is_some() {
            return Word::Text(name.to_owned());
        }
        if told_enough(self.found, fault::REFERENCE_TO_NOTHING.code) {
            return Word::Text(name.to_owned());
        }
        let stages = &self.formula.components[self.at.0].stages;
        let known: Vec<&str> =
            stages[..=self.at.1].iter().flat_map(|stage| stage.lines.iter().map(|line| line.name.as_str())).collect();
        let own = ["time", "temperature", "until", "pieces", "scaling-weight"];
        let place = self.place(span);
        let found = fault::REFERENCE_TO_NOTHING.at(place, format!("“{name}” is nothing that this step, stage or yield states"));
        let near = nearest(&plain_name(name), known.iter().copied()).map(str::to_owned);
        self.found.push(match near {
            Some(near) => found.hint(did_you_mean(&near)).replace_with(format!("write “{near}”"), near),
            None if own.contains(&name) => found.hint(format!("give the step or the yield its {name}")),
            None => found.hint(format!("known here: {}", known[..known.len().min(MOST_NAMES)].join(", "))),
        });
        Word::Text(name.to_owned())
    }

    /// Advises when a bare figure with a unit stands in the words, where it cannot be converted or checked.
    fn look_for_figures(&mut self, plain: &str, start: usize) {
        let Some((at, len)) = bare_figure(plain) else { return };
        if told_enough(self.found, fault::FIGURE_OUTSIDE_BRACES.code) {
            return;
        }
        let figure = &plain[at..at + len];
        let message = format!("“{figure}” stands in the words, so it cannot follow the formula or be converted");
        let place = self.place(start + at..start + at + len);
        let found = fault::FIGURE_OUTSIDE_BRACES.at(place, message).hint("put it in braces, or refer to the step's own figure");
        self.found.push(found.replace_with("put it in braces", format!("{{{figure}}}")));
    }
}

/// A part of a line told in words or as a weight.
fn part_of(how: &str, all: Mass) -> Option<Mass> {
    if let Some(share) = crate::read::part(how) {
        return Some(all * share);
    }
    let measure: Measure = how.parse().ok()?;
    match measure.unit.kind() {
        Kind::Mass => measure.mass(Default::default()).map(|mass| mass.to),
        Kind::Share => measure.share(Default::default()).map(|share| all * share.to),
        _ => None,
    }
}

/// The first number with a unit of mass, volume, temperature, time or length in plain words.
fn bare_figure(plain: &str) -> Option<(usize, usize)> {
    let mut from = 0;
    while let Some(digit) = plain[from..].find(|c: char| c.is_ascii_digit()) {
        let start = from + digit;
        let number = plain[start..].bytes().take_while(|b| b.is_ascii_digit() || b".,-".contains(b)).count();
        let after = &plain[start + number..];
        let space = after.len() - after.trim_start_matches([' ', '\u{a0}']).len();
        let word: String = after[space..].chars().take_while(|c| c.is_alphabetic() || *c == '°').collect();
        let measures = !word.is_empty() && quantity::Unit::named(&word).is_some_and(|unit| unit.kind() != Kind::Count);
        let starts_word = plain[..start].chars().next_back().is_none_or(|c| !c.is_alphanumeric());
        if measures && starts_word && plain[start..start + number].parse::<f64>().is_ok() {
            return Some((start, number + space + word.len()));
        }
        from = start + number;
    }
    None
}
