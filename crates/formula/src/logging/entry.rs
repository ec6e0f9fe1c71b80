//! An entry is laid into the text of a trial.

use super::Unnoted;
use super::figure::{Figure, Part};
use super::told::bare;
use crate::read::StepSeen;
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value, value};

/// Something that is noted of a trial.
#[derive(Clone, Debug)]
pub enum Entry {
    /// A figure; an empty value takes it out.
    Figure(Figure, String),
    /// What else was seen.
    Note(String),
    /// Why nothing is to be learnt from the trial.
    LeftOut(String),
    /// A photograph.
    Photograph(Shown),
    /// A file of readings beside the trial, of a waiting step.
    Course(Figure, String),
}

/// A photograph that lies beside the trial.
#[derive(Clone, Debug, Default)]
pub struct Shown {
    /// Its file.
    pub file: String,
    /// What it shows.
    pub shows: Option<String>,
    /// How wide that is which it shows from edge to edge.
    pub across: Option<String>,
}

/// What came of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Noted {
    /// It is new.
    New,
    /// It stood there already.
    Unchanged,
    /// The figure of that name was another before.
    Corrected(String, String),
}

/// Notes an entry in the text of a trial, at a moment as RFC 3339 writes it; comments and order stay.
///
/// # Errors
/// Why the text cannot take it.
pub fn note(text: &str, entry: &Entry, at: &str, why: &str) -> Result<(String, Noted), Unnoted> {
    let unread = |_| Unnoted::new("the trial's file is no TOML", "`wellproved check` says what is wrong");
    let mut document: DocumentMut = text.parse().map_err(unread)?;
    let noted = match entry {
        Entry::Figure(figure, value) => noted(&mut document, figure, value)?,
        Entry::Note(words) => listed(&mut document, "notes", words)?,
        Entry::LeftOut(words) => put(document.as_table_mut(), "left-out", words, "left-out"),
        Entry::Photograph(shown) => photograph(&mut document, shown)?,
        Entry::Course(figure, file) => {
            let (Part::Rise(step, is_first) | Part::Reading(step, is_first, _)) = &figure.part else {
                return Err(Unnoted::new("readings are of a waiting step", "name it: STAGE/STEP"));
            };
            let name = format!("{}/{}/course", figure.stage, step.word());
            put(rise_or_cook(&mut document, "rise", figure, *step, *is_first)?, "course", file, &name)
        }
    };
    if let Noted::Corrected(figure, was) = &noted {
        let list = tables(&mut document, "correction")?;
        let mut table = Table::new();
        table["figure"] = value(figure);
        table["was"] = value(was);
        table["at"] = value(at);
        if !why.is_empty() {
            table["why"] = value(why);
        }
        table.decor_mut().set_prefix("\n");
        list.push(table);
    }
    Ok((document.to_string(), noted))
}

fn noted(document: &mut DocumentMut, figure: &Figure, text: &str) -> Result<Noted, Unnoted> {
    let name = figure.name();
    match &figure.part {
        Part::Mix => Ok(put(mix(document, figure)?, figure.key, text, &name)),
        Part::Line(line) => weighed(mix(document, figure)?, line, figure.key, text, &name),
        Part::Rise(step, is_first) => Ok(put(rise_or_cook(document, "rise", figure, *step, *is_first)?, figure.key, text, &name)),
        Part::Cook(step, is_first) => Ok(put(rise_or_cook(document, "cook", figure, *step, *is_first)?, figure.key, text, &name)),
        Part::Reading(step, is_first, after) => {
            let rise = rise_or_cook(document, "rise", figure, *step, *is_first)?;
            reading(rise, after, figure.key, text, &name)
        }
    }
}

/// A list of tables of the trial, begun where there is none.
fn tables<'d>(document: &'d mut DocumentMut, name: &str) -> Result<&'d mut ArrayOfTables, Unnoted> {
    let list = document.entry(name).or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    list.as_array_of_tables_mut().ok_or_else(|| {
        Unnoted::new(format!("“{name}” stands in one line of the trial"), format!("begin each of them with [[{name}]]"))
    })
}

/// The table of a list that fits, or a new one.
fn fitting(list: &mut ArrayOfTables, fits: impl Fn(&Table) -> bool, new: impl FnOnce(&mut Table)) -> Option<&mut Table> {
    let found = list.iter().position(fits);
    let at = found.unwrap_or(list.len());
    if found.is_none() {
        let mut table = Table::new();
        table.decor_mut().set_prefix("\n");
        new(&mut table);
        list.push(table);
    }
    list.get_mut(at)
}

fn says(table: &Table, key: &str, text: &str) -> bool {
    table.get(key).and_then(Item::as_str) == Some(text)
}

fn is_of(table: &Table, figure: &Figure) -> bool {
    let component = figure.component.as_ref().is_none_or(|name| says(table, "component", name));
    says(table, "stage", &figure.stage) && component
}

fn name_stage(table: &mut Table, figure: &Figure) {
    table["stage"] = value(&figure.stage);
    if let Some(component) = &figure.component {
        table["component"] = value(component);
    }
}

const LOST: &str = "the trial's file cannot be written to";

fn mix<'d>(document: &'d mut DocumentMut, figure: &Figure) -> Result<&'d mut Table, Unnoted> {
    let list = tables(document, "mix")?;
    fitting(list, |table| is_of(table, figure), |table| name_stage(table, figure)).ok_or_else(|| Unnoted::new(LOST, ""))
}

fn rise_or_cook<'d>(
    document: &'d mut DocumentMut,
    list: &str,
    figure: &Figure,
    step: StepSeen,
    is_first: bool,
) -> Result<&'d mut Table, Unnoted> {
    let fits =
        |table: &Table| is_of(table, figure) && table.get("step").map_or(is_first, |said| said.as_str() == Some(&*step.word()));
    let new = |table: &mut Table| {
        name_stage(table, figure);
        table["step"] = value(step.word());
    };
    fitting(tables(document, list)?, fits, new).ok_or_else(|| Unnoted::new(LOST, ""))
}

/// Puts a text under a key, or takes the key out; tells what was there.
fn put(table: &mut dyn TableLike, key: &str, text: &str, name: &str) -> Noted {
    let was = table.get(key).and_then(Item::as_value).map(bare);
    if was.as_deref() == Some(text) || (was.is_none() && text.is_empty()) {
        return Noted::Unchanged;
    }
    if text.is_empty() {
        table.remove(key);
    } else {
        let mut new = written(text);
        if let Some(old) = table.get(key).and_then(Item::as_value) {
            *new.decor_mut() = old.decor().clone();
        }
        table.insert(key, Item::Value(new));
    }
    was.map_or(Noted::New, |was| Noted::Corrected(name.to_owned(), was))
}

/// A bare number is written as one, everything else in quotes.
fn written(text: &str) -> Value {
    match text.parse::<i64>() {
        Ok(number) => Value::from(number),
        Err(_) => text.parse::<f64>().ok().filter(|number| number.is_finite()).map_or_else(|| Value::from(text), Value::from),
    }
}

/// A line's weight may stand alone, or in a table with how warm it was.
fn weighed(mix: &mut Table, line: &str, key: &str, text: &str, name: &str) -> Result<Noted, Unnoted> {
    let lines = mix.entry("ingredients").or_insert_with(|| value(InlineTable::new()));
    let lines =
        lines.as_table_like_mut().ok_or_else(|| Unnoted::new("“ingredients” is no table there", "write ingredients = { }"))?;
    let alone = lines.get(line).and_then(Item::as_value).filter(|one| !one.is_inline_table()).map(bare);
    match (alone, lines.get(line).is_some()) {
        (Some(_), _) if key == "amount" => return Ok(put(lines, line, text, name)),
        (None, false) if key == "amount" => return Ok(put(lines, line, text, name)),
        (Some(weight), _) => {
            let mut own = InlineTable::new();
            own.insert("amount", written(&weight));
            lines.insert(line, value(own));
        }
        (None, false) => drop(lines.insert(line, value(InlineTable::new()))),
        (None, true) => {}
    }
    let own = lines.get_mut(line).and_then(Item::as_table_like_mut);
    let noted = own.map(|own| put(own, key, text, name)).ok_or_else(|| Unnoted::new(LOST, ""));
    if let Some(own) = lines.get_mut(line).and_then(Item::as_inline_table_mut) {
        own.fmt();
    }
    noted
}

/// Readings stand in one list, each with its time.
fn reading(rise: &mut Table, after: &str, key: &str, text: &str, name: &str) -> Result<Noted, Unnoted> {
    let same =
        |table: &dyn TableLike| table.get("after").and_then(Item::as_value).is_some_and(|said| time(&bare(said)) == time(after));
    let list = rise.entry("reading").or_insert_with(|| value(Array::new()));
    if let Some(list) = list.as_array_of_tables_mut() {
        let new = |table: &mut Table| table["after"] = value(after);
        let table = fitting(list, |table| same(table), new).ok_or_else(|| Unnoted::new(LOST, ""))?;
        return Ok(put(table, key, text, name));
    }
    let list = list.as_array_mut().ok_or_else(|| Unnoted::new("“reading” is no list there", "write reading = [ ]"))?;
    let found = list.iter().position(|one| one.as_inline_table().is_some_and(|table| same(table)));
    // In the order of time, a line each.
    let later = |one: &Value| one.as_inline_table().and_then(|table| time(table.get("after")?.as_str()?));
    let at = found.or_else(|| list.iter().position(|one| later(one) > time(after))).unwrap_or(list.len());
    if found.is_none() {
        let mut table = InlineTable::new();
        table.insert("after", Value::from(after));
        let mut new = Value::InlineTable(table);
        new.decor_mut().set_prefix("\n  ");
        list.insert_formatted(at, new);
        list.set_trailing_comma(true);
        list.set_trailing("\n");
    }
    let table = list.get_mut(at).and_then(Value::as_inline_table_mut).ok_or_else(|| Unnoted::new(LOST, ""))?;
    let noted = put(table, key, text, name);
    table.fmt();
    Ok(noted)
}

/// Seconds of a time as people write it.
fn time(text: &str) -> Option<i64> {
    let measure: quantity::Measure = text.parse().ok()?;
    Some(measure.time(quantity::SpoonSystem::Metric)?.to.as_seconds().round() as i64)
}

/// Adds a text to a list of texts; a single one becomes a list.
fn listed(document: &mut DocumentMut, key: &str, text: &str) -> Result<Noted, Unnoted> {
    let there = document.as_table_mut().entry(key).or_insert_with(|| value(Array::new()));
    if let Some(single) = there.as_str().map(str::to_owned) {
        *there = value(Array::from_iter([single]));
    }
    let list =
        there.as_array_mut().ok_or_else(|| Unnoted::new(format!("“{key}” is no list there"), format!("write {key} = [ ]")))?;
    if list.iter().any(|one| one.as_str() == Some(text)) {
        return Ok(Noted::Unchanged);
    }
    list.push(text);
    Ok(Noted::New)
}

fn photograph(document: &mut DocumentMut, shown: &Shown) -> Result<Noted, Unnoted> {
    let list = tables(document, "photograph")?;
    let new = |table: &mut Table| table["file"] = value(&shown.file);
    let table = fitting(list, |table| says(table, "file", &shown.file), new).ok_or_else(|| Unnoted::new(LOST, ""))?;
    for (key, text) in [("shows", &shown.shows), ("across", &shown.across)] {
        if let Some(text) = text {
            table[key] = value(text);
        }
    }
    Ok(Noted::New)
}

/// Takes note that an entry of that number was received; false where it was before, so that it is not taken twice.
///
/// # Errors
/// Why the text cannot take it.
pub fn receive(text: &str, number: &str) -> Result<Option<String>, Unnoted> {
    let unread = |_| Unnoted::new("the trial's file is no TOML", "`wellproved check` says what is wrong");
    let mut document: DocumentMut = text.parse().map_err(unread)?;
    Ok((listed(&mut document, "received", number)? == Noted::New).then(|| document.to_string()))
}
