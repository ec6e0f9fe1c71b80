//! What is said of the exchanges that a reader's page offers, word for word: whoever tells it in another language finds
//! it by these.

/// Yeast became a culture.
pub const ACID_COMES: &str = "acid: a culture sours the crumb, and keeps it longer; a yeasted preferment does not";
/// A culture became yeast.
pub const ACID_GOES: &str = "acid: what the culture's bacteria soured is gone, and with it some flavour and keeping";
/// A culture beside the dough's own yeast.
pub const YEAST_STAYS: &str = "the dough keeps its own yeast, which still does most of the raising";
/// A culture by itself.
pub const CULTURE_ALONE: &str = "the culture alone raises the dough now: take it when it is ripe, not by the clock";
/// A culture out of work.
pub const CULTURE_UNFED: &str = "a culture that is not fed from this build any more must be fed on its own";
/// No preferment any more.
pub const HOURS_GONE: &str = "what the hours of the preferment gave: flavour, acid, and flour that has soaked and softened";
/// No build of the culture any more.
pub const CULTURE_UNBUILT: &str = "the culture is not built up first any more: so little of it raises a dough slowly, if at all";
/// No preferment in which yeast multiplies.
pub const YEAST_UNBUILT: &str = "the yeast is the same in all; in the preferment it had already multiplied";
/// Nothing put by for the next baking.
pub const NOTHING_KEPT: &str = "nothing is kept back any more: feed the culture on its own";
/// Between a weight and the flour that a culture brings.
pub const FLOUR_OF_CULTURE: &str = " of the flour is now the culture's own: ";
