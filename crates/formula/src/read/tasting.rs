//! A blind tasting: what is tasted, how, and what is asked. Answers are not kept here but in the store.

use super::fields::{Fields, Reader};
use super::formula::{read_measure, read_name, read_title, stem};
use super::stage::read_word;
use super::words::words;
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Between, Count, Fraction, Kind, SpoonSystem, TimeSpan};
use std::ops::Range;
use std::sync::Arc;
use toml::value::Date;

words! {
    /// How tasters are asked.
    Method {
        /// Three cups, two of them alike: which is the odd one? ISO 4120.
        Triangle = "triangle",
        /// A reference and two cups: which of the two is the reference? ISO 10399.
        DuoTrio = "duo-trio",
        /// Two cups: which has more of what is asked, the direction fixed beforehand? ISO 5495.
        Paired = "paired",
        /// Two cups: which is preferred? ISO 5495.
        Preference = "preference",
        /// Three cups or more, put in order. ISO 8587.
        Ranking = "ranking",
        /// Each cup on the nine-point scale of liking.
        Liking = "liking",
        /// Each cup on a scale of nine points for each attribute. ISO 4121.
        Description = "description",
    }
}

/// The most samples of a tasting: nobody tells more apart.
pub const MOST_SAMPLES: usize = 8;
/// The most seats of a tasting.
pub const MOST_TASTERS: u32 = 500;

impl Method {
    /// How many samples it takes.
    #[must_use]
    pub const fn samples(self) -> Between<usize> {
        match self {
            Self::Triangle | Self::DuoTrio | Self::Paired | Self::Preference => Between { from: 2, to: 2 },
            Self::Ranking => Between { from: 3, to: MOST_SAMPLES },
            Self::Liking | Self::Description => Between { from: 2, to: MOST_SAMPLES },
        }
    }

    /// Whether one of the cups is chosen.
    #[must_use]
    pub const fn is_choice(self) -> bool {
        matches!(self, Self::Triangle | Self::DuoTrio | Self::Paired | Self::Preference)
    }

    /// Whether each cup is given points.
    #[must_use]
    pub const fn is_scored(self) -> bool {
        matches!(self, Self::Liking | Self::Description)
    }

    /// Whether a key that not every method has is of any use to it.
    fn has_use_for(self, key: &str) -> bool {
        match key {
            "tell" => self.is_choice() || self == Self::Ranking,
            "alike" => matches!(self, Self::Triangle | Self::DuoTrio),
            "expected" => matches!(self, Self::Paired | Self::Ranking),
            "ties" => self == Self::Ranking,
            "apart" => self.is_scored(),
            "attribute" => self == Self::Description,
            _ => true,
        }
    }
}

/// A blind tasting.
#[derive(Clone, Debug)]
pub struct Tasting {
    /// The file it stands in.
    pub file: Arc<str>,
    /// The file's name, by which the book calls it.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// How tasters are asked.
    pub method: Method,
    /// What they are asked.
    pub question: String,
    /// The day on which it is held.
    pub date: Option<Date>,
    /// The word for having more of what is asked.
    pub comparative: Option<String>,
    /// What is expected beforehand: samples, counted from the first, most of it first.
    pub expected: Vec<usize>,
    /// How many seats are laid.
    pub panel: Option<u32>,
    /// The difference worth seeing, as the share who truly tell it.
    pub tell: Fraction,
    /// The difference worth seeing, in points.
    pub apart: f64,
    /// The share who may tell them apart where two are to be called alike.
    pub alike: Option<Fraction>,
    /// How often a difference may be found that is none.
    pub risk: Fraction,
    /// How often a difference worth seeing should be found.
    pub power: Fraction,
    /// Whether samples may share a rank.
    pub ties: bool,
    /// How long to wait between two samples.
    pub pause: Option<Between<TimeSpan>>,
    /// What is taken between them.
    pub rinse: Option<String>,
    /// What else tasters must know before they agree.
    pub notice: Option<String>,
    /// What is tasted.
    pub samples: Vec<Sample>,
    /// What is described.
    pub attributes: Vec<Attribute>,
}

/// A sample of a tasting.
#[derive(Clone, Debug)]
pub struct Sample {
    /// How it is called.
    pub name: At<String>,
    /// What the report calls it.
    pub title: String,
    /// The formula it was made by; that of its trial once the book is known.
    pub formula: Option<At<String>>,
    /// Which revision of that.
    pub revision: Option<u32>,
    /// The trial it was taken from.
    pub trial: Option<At<String>>,
}

/// Something that is described.
#[derive(Clone, Debug)]
pub struct Attribute {
    /// How the answers call it.
    pub name: At<String>,
    /// What tasters read.
    pub title: String,
    /// The word at the scale's beginning.
    pub low: String,
    /// The word at its end.
    pub high: String,
}

/// Reads a tasting. Formulas and trials that it names are bound by the book.
#[must_use]
pub fn read_tasting(source: &Source) -> Checked<Option<Tasting>> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: None, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let fields = Fields::open(&mut reader, &table, source.beginning(), &keys::TASTING);
    let tasting = read(&mut reader, source, &fields);
    Checked { value: tasting, diagnostics: found }
}

fn read(reader: &mut Reader, source: &Source, fields: &Fields) -> Option<Tasting> {
    let method = read_word(reader, fields, "method", Method::WORDS, Method::named);
    let mut samples = Vec::new();
    for (table, span) in fields.tables(reader, "sample") {
        let own = Fields::open(reader, table, span, &keys::SAMPLE);
        samples.push(read_sample(reader, &own));
    }
    let mut attributes = Vec::new();
    for (table, span) in fields.tables(reader, "attribute") {
        let own = Fields::open(reader, table, span, &keys::ATTRIBUTE);
        attributes.push(read_attribute(reader, &own));
    }
    let method = method?;
    check_samples(reader, method, &samples, fields.span());
    check_names(reader, attributes.iter().map(|one| &one.name), "attributes");
    if method == Method::Description && attributes.is_empty() {
        impossible(
            reader,
            fields.span(),
            "nothing is described".to_owned(),
            "add an [[attribute]] with the words at both ends of its scale",
        );
    }
    let expected = read_expected(reader, fields, method, &samples);
    for key in ["tell", "alike", "ties", "apart", "attribute", "expected"] {
        if !method.has_use_for(key)
            && let Some(span) = fields.place_of(key)
        {
            impossible(reader, span, format!("a tasting by {} has no use for “{key}”", method.word()), "take it out");
        }
    }
    let mut text =
        |name: &str| fields.text(reader, name).map(|text| text.value.trim().to_owned()).filter(|text| !text.is_empty());
    let (title, question) = (text("title").unwrap_or_default(), text("question").unwrap_or_default());
    let (comparative, rinse, notice) = (text("comparative"), text("rinse"), text("notice"));
    let percent = Fraction::percent;
    Some(Tasting {
        file: Arc::clone(&source.file),
        name: stem(&source.file).to_owned(),
        title,
        method,
        question,
        date: fields.date(reader, "date").map(|date| date.value),
        comparative,
        expected,
        panel: read_whole(reader, fields, "panel", MOST_TASTERS),
        tell: read_share(reader, fields, "tell").unwrap_or(percent(40.0)),
        apart: read_points(reader, fields).unwrap_or(1.0),
        alike: read_share(reader, fields, "alike"),
        risk: read_share(reader, fields, "risk").unwrap_or(percent(5.0)),
        power: read_share(reader, fields, "power").unwrap_or(percent(80.0)),
        ties: fields.truth(reader, "ties").is_some_and(|ties| ties.value),
        pause: read_measure(reader, fields, "pause", Kind::Time).and_then(|time| time.value.time(SpoonSystem::Metric)),
        rinse,
        notice,
        samples,
        attributes,
    })
}

fn read_sample(reader: &mut Reader, fields: &Fields) -> Sample {
    let name = read_name(reader, fields);
    let title = read_title(reader, fields, &name);
    let mut text = |name: &str| fields.text(reader, name).map(|text| At::new(text.value.to_owned(), text.span));
    let (formula, trial) = (text("formula"), text("trial"));
    if formula.is_some() == trial.is_some() {
        let message = format!("of “{}” it must be told either the formula or the trial", name.value);
        impossible(reader, name.span.clone(), message, "name one of them: formula = \"…\", or trial = \"…\"");
    }
    let revision = read_whole(reader, fields, "revision", u32::MAX);
    Sample { name, title, formula, revision, trial }
}

fn read_attribute(reader: &mut Reader, fields: &Fields) -> Attribute {
    let name = read_name(reader, fields);
    let title = read_title(reader, fields, &name);
    let mut text = |name: &str| fields.text(reader, name).map(|text| text.value.to_owned()).unwrap_or_default();
    Attribute { title, low: text("low"), high: text("high"), name }
}

/// What is expected, as places in the list of samples.
fn read_expected(reader: &mut Reader, fields: &Fields, method: Method, samples: &[Sample]) -> Vec<usize> {
    let names = fields.texts(reader, "expected");
    let Some(span) = names.first().map(|first| first.span.clone()) else { return Vec::new() };
    let mut places: Vec<usize> = Vec::new();
    for name in &names {
        let place = samples.iter().position(|sample| sample.name.value == name.value);
        match place {
            Some(place) if !places.contains(&place) => places.push(place),
            _ => impossible(
                reader,
                name.span.clone(),
                format!("“{}” is no sample of its own", name.value),
                "name each sample once",
            ),
        }
    }
    let wanted = if method == Method::Paired { 1 } else { samples.len() };
    if method.has_use_for("expected") && places.len() == names.len() && places.len() != wanted {
        let hint =
            if wanted == 1 { "name the one that is expected to have more of it" } else { "name all samples, most of it first" };
        impossible(reader, span, format!("{} samples are expected here, not {}", wanted, places.len()), hint);
        return Vec::new();
    }
    places
}

fn check_samples(reader: &mut Reader, method: Method, samples: &[Sample], span: Range<usize>) {
    check_names(reader, samples.iter().map(|one| &one.name), "samples");
    let takes = method.samples();
    if (takes.from..=takes.to).contains(&samples.len()) {
        return;
    }
    let wanted = if takes.from == takes.to { format!("{}", takes.from) } else { format!("{} to {}", takes.from, takes.to) };
    let message = format!("a tasting by {} has {wanted} samples, and here are {}", method.word(), samples.len());
    impossible(reader, span.start..span.start, message, "add or take out a [[sample]], or choose another method");
}

fn check_names<'n>(reader: &mut Reader, names: impl Iterator<Item = &'n At<String>>, what: &str) {
    let mut met: Vec<&str> = Vec::new();
    for name in names {
        if met.contains(&name.value.as_str()) {
            let message = format!("two {what} are called “{}”", name.value);
            reader.report(&fault::NAME_TWICE, name.span.clone(), message, "rename one of them");
        }
        met.push(&name.value);
    }
}

fn impossible(reader: &mut Reader, span: Range<usize>, message: String, hint: &str) {
    reader.report(&fault::TASTING_IMPOSSIBLE, span, message, hint);
}

/// A share of people: more than nobody and fewer than all.
fn read_share(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Fraction> {
    let share = read_measure(reader, fields, name, Kind::Share)?;
    let value = share.value.share(SpoonSystem::Metric)?.to;
    if value > Fraction::ZERO && value < Fraction::WHOLE {
        return Some(value);
    }
    impossible(reader, share.span, format!("“{name}” is neither nobody nor everybody"), "write it between 1 % and 99 %");
    None
}

/// A whole number from one on.
fn read_whole(reader: &mut Reader, fields: &Fields, name: &str, most: u32) -> Option<u32> {
    let count = read_measure(reader, fields, name, Kind::Count)?;
    let value = count.value.count(SpoonSystem::Metric)?.to.as_pieces();
    if value >= 1.0 && value <= f64::from(most) && value.fract() <= 0.0 {
        return Some(value as u32);
    }
    impossible(reader, count.span, format!("“{name}” is no whole number from 1 to {most}"), "write it in figures: 24");
    None
}

/// Points of a scale of nine: more than none, and fewer than from one end to the other.
fn read_points(reader: &mut Reader, fields: &Fields) -> Option<f64> {
    let count = read_measure(reader, fields, "apart", Kind::Count)?;
    let value = count.value.count(SpoonSystem::Metric).map(|count| count.to).map(Count::as_pieces)?;
    if value > 0.0 && value < 8.0 {
        return Some(value);
    }
    impossible(reader, count.span, "no two samples lie so far apart on nine points".to_owned(), "write a number of points: 1");
    None
}
