//! The author's text, changed in place: order, comments and everything that is not meant stay as they are.

use formula::resolve::formula::StageAt;
use std::ops::Range;
use toml::de::{DeTable, DeValue};

/// A formula's text on its way to another one. It is read anew for every change, so that no place is stale.
#[derive(Clone, Debug)]
pub struct Manuscript {
    /// The text as it stands.
    pub text: String,
}

/// A table of a formula's text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What comes of a component.
    Yield(usize),
    /// A stage.
    Stage(StageAt),
    /// The ingredient lines of a stage.
    Lines(StageAt),
    /// A step of a stage.
    Step(StageAt, usize),
}

/// Where a key and its value stand.
#[derive(Clone, Debug)]
struct Entry {
    key: Range<usize>,
    value: Range<usize>,
}

impl Manuscript {
    /// Begins with a text.
    pub fn new(text: &str) -> Self {
        Self { text: text.to_owned() }
    }

    /// What stands under a key, if it is text.
    pub fn get(&self, part: Part, key: &str) -> Option<String> {
        self.read(part, |table| value(table, key)?.as_str().map(str::to_owned))
    }

    /// Whether a stage stands where it stood.
    pub fn has_stage(&self, at: StageAt, name: &str) -> bool {
        self.get(Part::Stage(at), "name").as_deref() == Some(name)
    }

    /// Writes a text under a key, behind the key `after` where it is new.
    pub fn set(&mut self, part: Part, key: &str, text: &str, after: &str) {
        if let Some(place) = self.place(part, key) {
            self.text.replace_range(place.value, &literal(text));
        } else if let Some(place) = self.place(part, after) {
            self.insert_after(&place, &format!("{key} = {}", literal(text)));
        }
    }

    /// Writes a text under a key that is there already.
    pub fn set_if_there(&mut self, part: Part, key: &str, text: &str) {
        if self.place(part, key).is_some() {
            self.set(part, key, text, key);
        }
    }

    /// Takes a key out with its value; a comment beside it stays.
    pub fn remove(&mut self, part: Part, key: &str) {
        if let Some(place) = self.place(part, key) {
            self.cut(&place);
        }
    }

    /// Takes a key out that stands before the components; whether it stood there.
    pub fn remove_from_head(&mut self, key: &str) -> bool {
        let place = DeTable::parse(&self.text).ok().and_then(|root| entry(root.get_ref(), key));
        if let Some(place) = &place {
            self.cut(place);
        }
        place.is_some()
    }

    /// Takes a line out.
    pub fn remove_line(&mut self, at: StageAt, line: &str) {
        self.remove(Part::Lines(at), line);
    }

    /// Writes another amount into a line, whichever way the line is written.
    pub fn set_amount(&mut self, at: StageAt, line: &str, amount: &str) {
        let place = self.read(Part::Lines(at), |lines| match value(lines, line)? {
            DeValue::Table(table) => entry(table, "amount").or_else(|| entry(table, "share")),
            _ => entry(lines, line),
        });
        if let Some(place) = place {
            self.text.replace_range(place.value, &literal(amount));
        }
    }

    /// Puts another line in a line's place; of its keys those are kept that are named.
    pub fn replace_line(&mut self, at: StageAt, line: &str, name: &str, own: &[(&str, &str)], keep: &[&str]) {
        let kept: Vec<(&str, String)> = self
            .read(Part::Lines(at), |lines| {
                let table = value(lines, line)?.as_table()?;
                let raw = |key: &&'static str| Some((*key, self.text.get(entry(table, key)?.value)?.to_owned()));
                let keep: Vec<&'static str> = KEPT.into_iter().filter(|key| keep.contains(key)).collect();
                Some(keep.iter().filter_map(raw).collect())
            })
            .unwrap_or_default();
        let Some(place) = self.place(Part::Lines(at), line) else { return };
        self.text.replace_range(place.value, &line_value(own, &kept));
        self.text.replace_range(place.key, name);
    }

    /// Adds a line behind another one.
    pub fn insert_line(&mut self, at: StageAt, after: &str, name: &str, own: &[(&str, &str)]) {
        if let Some(place) = self.place(Part::Lines(at), after) {
            self.insert_after(&place, &format!("{name} = {}", line_value(own, &[])));
        }
    }

    /// What stands under a key, as it is written.
    pub fn get_raw(&self, part: Part, key: &str) -> Option<String> {
        let place = self.place(part, key)?;
        self.text.get(place.value).map(str::to_owned)
    }

    /// The key that is written last in a part, of those that have a value on their own line.
    pub fn last_key(&self, part: Part) -> Option<String> {
        self.read(part, |table| {
            let plain = table.iter().filter(|(_, value)| !matches!(value.get_ref(), DeValue::Table(_) | DeValue::Array(_)));
            plain.max_by_key(|(key, _)| key.span().start).map(|(key, _)| key.get_ref().to_string())
        })
    }

    /// Adds a line behind the last one; false where the stage has no list of ingredients.
    pub fn append_line(&mut self, at: StageAt, name: &str, amount: &str) -> bool {
        let last = self.read(Part::Lines(at), |lines| {
            lines.iter().max_by_key(|(key, _)| key.span().start).map(|(key, _)| key.get_ref().to_string())
        });
        let Some(last) = last else { return false };
        self.insert_line(at, &last, name, &[("amount", amount)]);
        true
    }

    /// Lets two lines change places, each with the comment beside it.
    pub fn swap_lines(&mut self, at: StageAt, one: &str, other: &str) {
        let (Some(a), Some(b)) = (self.place(Part::Lines(at), one), self.place(Part::Lines(at), other)) else { return };
        let (first, second) = if a.key.start < b.key.start { (a, b) } else { (b, a) };
        let (first, second) = (self.whole_line(&first), self.whole_line(&second));
        if first.end > second.start {
            return;
        }
        let (upper, lower) = (self.text[first.clone()].to_owned(), self.text[second.clone()].to_owned());
        self.text.replace_range(second, &upper);
        self.text.replace_range(first, &lower);
    }

    /// A key with its value: all of its line and of the comments that lead to it, or its part of a table on one line.
    fn whole_line(&self, place: &Entry) -> Range<usize> {
        let begin = self.line_begin(place.key.start);
        if self.text[begin..place.key.start].contains(['{', ',']) {
            return place.key.start..place.value.end;
        }
        self.above_comments(begin)..self.line_end(place.value.end)
    }

    /// Rewrites the sentences of a stage, one after the other.
    pub fn rewrite_steps(&mut self, at: StageAt, mut with: impl FnMut(&str) -> String) {
        let places = self.read(Part::Stage(at), |stage| {
            let steps = value(stage, "step")?.as_array()?.iter().filter_map(|step| step.get_ref().as_table());
            Some(steps.filter_map(|step| Some(entry(step, "text")?.value)).collect::<Vec<_>>())
        });
        let places = places.unwrap_or_default();
        let written: Vec<String> = places.iter().map(|place| with(&self.text[place.clone()])).collect();
        // The last one first, so that the places of those before it stay.
        for (place, written) in places.into_iter().zip(written).rev() {
            self.text.replace_range(place, &written);
        }
    }

    /// Puts a whole stage before another one and the comments that lead to it.
    pub fn insert_stage(&mut self, before: StageAt, text: &str) {
        if let Some(header) = self.header(before) {
            let begin = self.above_comments(header);
            self.text.insert_str(begin, &format!("{text}\n"));
        }
    }

    /// Takes a whole stage out; its comments stay.
    pub fn remove_stage(&mut self, (c, s): StageAt) {
        let Some(begin) = self.header((c, s)) else { return };
        let next = self.header((c, s + 1)).or_else(|| self.header((c + 1, 0)).map(|stage| self.component_above(stage)));
        let end = next.map_or(self.text.len(), |next| self.above_comments(next)).max(begin);
        let is_comment = |line: &&str| line.trim_start().starts_with('#');
        let comments: String = self.text[begin..end].lines().filter(is_comment).map(|line| format!("{line}\n")).collect();
        self.text.replace_range(begin..end, &comments);
    }

    fn read<T>(&self, part: Part, take: impl FnOnce(&DeTable) -> Option<T>) -> Option<T> {
        let root = DeTable::parse(&self.text).ok()?;
        take(part.of(root.get_ref())?)
    }

    fn place(&self, part: Part, key: &str) -> Option<Entry> {
        self.read(part, |table| entry(table, key))
    }

    fn insert_after(&mut self, place: &Entry, written: &str) {
        let begin = self.line_begin(place.key.start);
        let before = &self.text[begin..place.key.start];
        // On a line of its own, behind the dots of a dotted key; in a table written on one line, after a comma.
        let is_own_line = before.trim().is_empty() || (before.ends_with('.') && !before.contains(['{', ',']));
        let (at, insertion) = if is_own_line {
            (self.line_end(place.value.end), format!("\n{before}{written}"))
        } else {
            (place.value.end, format!(", {written}"))
        };
        self.text.insert_str(at, &insertion);
    }

    fn cut(&mut self, place: &Entry) {
        let begin = self.line_begin(place.key.start);
        let before = &self.text[begin..place.key.start];
        if before.contains(['{', ',']) {
            let rest = &self.text[place.value.end..];
            let range = if let Some(after) = rest.trim_start().strip_prefix(',') {
                place.key.start..self.text.len() - after.trim_start().len()
            } else {
                self.text[..place.key.start].trim_end().trim_end_matches(',').len()..place.value.end
            };
            self.text.replace_range(range, "");
            return;
        }
        let end = self.line_end(place.value.end);
        match self.text[place.value.end..end].trim() {
            "" => self.text.replace_range(begin..(end + 1).min(self.text.len()), ""),
            comment => {
                let comment = comment.to_owned();
                self.text.replace_range(place.key.start..end, &comment);
            }
        }
    }

    /// Where the line `[[component.stage]]` of a stage begins.
    fn header(&self, at: StageAt) -> Option<usize> {
        let name = self.place(Part::Stage(at), "name")?.key.start;
        Some(self.line_begin(self.text[..name].rfind("[[")?))
    }

    /// Where the line `[[component]]` above a component's first stage begins.
    fn component_above(&self, stage: usize) -> usize {
        let headers = self.text[..stage].match_indices("[[component]]");
        headers.last().map_or(stage, |(at, _)| self.line_begin(at))
    }

    /// The beginning of the comments that stand right above a place.
    fn above_comments(&self, mut place: usize) -> usize {
        while place > 0 {
            let begin = self.line_begin(place - 1);
            if !self.text[begin..place].trim_start().starts_with('#') {
                break;
            }
            place = begin;
        }
        place
    }

    fn line_begin(&self, at: usize) -> usize {
        self.text[..at].rfind('\n').map_or(0, |end| end + 1)
    }

    fn line_end(&self, at: usize) -> usize {
        self.text[at..].find('\n').map_or(self.text.len(), |end| at + end)
    }
}

/// The keys of a line that can be carried over to another line, in the order in which they are written.
const KEPT: [&str; 7] = ["title", "note", "temperature", "taken-out", "after-scaling", "as-flour", "quiet"];

impl Part {
    fn of<'r, 't>(self, root: &'r DeTable<'t>) -> Option<&'r DeTable<'t>> {
        match self {
            Self::Yield(c) => value(nth(root, "component", c)?, "yield")?.as_table(),
            Self::Stage((c, s)) => nth(nth(root, "component", c)?, "stage", s),
            Self::Lines(at) => value(Self::Stage(at).of(root)?, "ingredients")?.as_table(),
            Self::Step(at, step) => nth(Self::Stage(at).of(root)?, "step", step),
        }
    }
}

fn nth<'r, 't>(table: &'r DeTable<'t>, key: &str, index: usize) -> Option<&'r DeTable<'t>> {
    value(table, key)?.as_array()?.get(index)?.get_ref().as_table()
}

fn value<'r, 't>(table: &'r DeTable<'t>, key: &str) -> Option<&'r DeValue<'t>> {
    table.iter().find(|(name, _)| name.get_ref() == key).map(|(_, value)| value.get_ref())
}

fn entry(table: &DeTable, key: &str) -> Option<Entry> {
    let (key, value) = table.iter().find(|(name, _)| name.get_ref() == key)?;
    Some(Entry { key: key.span(), value: value.span() })
}

/// A value as TOML writes it: whole numbers plain, all else in quotes.
fn literal(text: &str) -> String {
    let is_plain =
        !text.is_empty() && text.len() < 10 && text.bytes().all(|byte| byte.is_ascii_digit()) && !text.starts_with('0');
    if is_plain { text.to_owned() } else { quoted(text) }
}

/// A text in quotes, whatever stands in it.
fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            letter if letter.is_control() => out.push_str(&format!("\\u{:04X}", u32::from(letter))),
            letter => out.push(letter),
        }
    }
    out.push('"');
    out
}

/// What stands behind the equals sign of a line: only its amount, or a table.
fn line_value(own: &[(&str, &str)], kept: &[(&str, String)]) -> String {
    if let ([("amount", amount)], []) = (own, kept) {
        return literal(amount);
    }
    let own = own.iter().map(|(key, text)| format!("{key} = {}", literal(text)));
    let kept = kept.iter().map(|(key, raw)| format!("{key} = {raw}"));
    format!("{{ {} }}", own.chain(kept).collect::<Vec<_>>().join(", "))
}
