//! What a label needs to know beside the formula: read, not judged.

use super::fields::{Fields, Reader};
use super::formula::{read_count, read_mass, read_measure};
use super::stage::read_word;
use super::{At, keys};
use quantity::{Count, Kind, Mass, SpoonSystem, TimeSpan};
use science::nutrition::serving::EATEN_AS;
use std::ops::Range;
use toml::de::DeTable;

/// What the author says for the label.
#[derive(Clone, Debug, Default)]
pub struct ForLabel {
    /// What the food is.
    pub name: Option<String>,
    /// The components that are sold together.
    pub of: Vec<At<String>>,
    /// What else has its quantity stated.
    pub stressed: Vec<At<String>>,
    /// How many pieces are in a pack.
    pub pieces: Option<Count>,
    /// What is in a pack that is not sold by the piece.
    pub net: Option<Mass>,
    /// What one person eats at a time.
    pub portion: Option<Mass>,
    /// The kind of food from which American law takes the serving.
    pub eaten_as: Option<&'static str>,
    /// How long it keeps once packed.
    pub keeps: Option<TimeSpan>,
    /// Whether it must be used by then.
    pub use_by: bool,
    /// How a buyer keeps it.
    pub storage: Option<String>,
}

/// Reads the table.
pub fn read_label(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> ForLabel {
    let fields = Fields::open(reader, table, span, &keys::LABEL);
    let mut text = |name: &str| fields.text(reader, name).map(|text| text.value.to_owned());
    let (name, storage) = (text("name"), text("storage"));
    let keeps = read_measure(reader, &fields, "keeps", Kind::Time).and_then(|keeps| keeps.value.time(SpoonSystem::Metric));
    let known = |word: &str| EATEN_AS.iter().copied().find(|known| *known == word);
    ForLabel {
        name,
        of: fields.texts(reader, "of"),
        stressed: fields.texts(reader, "stressed"),
        pieces: read_count(reader, &fields, "pieces").map(|count| count.value),
        net: read_mass(reader, &fields, "net").map(|mass| mass.value),
        portion: read_mass(reader, &fields, "portion").map(|mass| mass.value),
        eaten_as: read_word(reader, &fields, "eaten-as", EATEN_AS, known),
        // Of a range the shorter counts: nobody is told that it keeps longer than it may.
        keeps: keeps.map(|range| range.from),
        use_by: fields.truth(reader, "use-by").is_some_and(|truth| truth.value),
        storage,
    }
}
