//! Text into drafts: every key known, every figure a quantity, every fault with its place.

mod amount;
mod course;
mod draft;
pub(crate) mod fields;
mod formula;
mod head;
mod ingredients;
pub mod keys;
mod kitchen;
mod label;
mod larder;
pub(crate) mod lines;
mod prices;
pub mod schema;
mod settings;
mod stage;
mod step;
mod tasting;
mod toml_text;
mod trial;
mod words;
mod working;

pub use amount::{Amount, MOST_AMOUNT, part};
pub use draft::{ComponentDraft, Draft, IngredientDraft, LineDraft, Quiet, StageDraft, StepDraft, Uses, YieldDraft};
pub use formula::{is_plain, read_formula, stem, tin_volume};
pub use head::{Head, Photograph, Places};
pub use ingredients::read_ingredients;
pub use kitchen::{FRIDGES, Fryer, HEIGHTS, Hob, Kitchen, Oven, Pan, ROOMS, Scale, Taken, Vessel, read_kitchen, read_room_log};
pub use label::ForLabel;
pub use larder::{Larder, read_larder};
pub use prices::{Pack, Prices, Wanted, read_prices};
pub use settings::{BookSettings, German, is_german, read_book};
pub use tasting::{Attribute, MOST_SAMPLES, MOST_TASTERS, Method, Sample, Tasting, read_tasting};
pub use trial::{
    CookSeen, Correction, MixSeen, OfStage, PhotographSeen, Reading, RiseSeen, StepSeen, Trial, WeighedSeen, read_trial,
};
pub use words::{Action, Attention, Condition, EggSize, Group, HeatsBy, Leaven, Material, PercentOf, PictureKeeping, StageKind};
pub use working::{DayHours, DayTime, Working};

use crate::Place;
use std::ops::Range;
use std::sync::Arc;

/// A value with the stretch of text it was read from.
#[derive(Clone, Debug, PartialEq)]
pub struct At<T> {
    /// The value.
    pub value: T,
    /// The bytes of the text.
    pub span: Range<usize>,
}

impl<T> At<T> {
    /// A value at a stretch of text.
    pub const fn new(value: T, span: Range<usize>) -> Self {
        Self { value, span }
    }

    /// The place in that file.
    pub fn place(&self, file: &Arc<str>) -> Place {
        Place { file: Arc::clone(file), span: self.span.clone() }
    }
}
