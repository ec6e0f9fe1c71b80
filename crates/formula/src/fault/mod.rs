//! Every fault that reading and resolving can find, each with its page of explanation.

pub mod page;

use crate::{Diagnostic, Place, Severity};

/// A kind of fault.
#[derive(Debug)]
pub struct Fault {
    /// A readable phrase that names it.
    pub code: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// Why it is one, with a bad and a good example: the text of `explain`.
    pub page: &'static str,
}

impl Fault {
    /// This fault, found at a place.
    #[must_use]
    pub fn at(&self, place: Place, message: impl Into<String>) -> Diagnostic {
        Diagnostic { code: self.code, severity: self.severity, place, message: message.into(), hint: None, fix: None }
    }
}

macro_rules! faults {
    ($($name:ident, $code:literal, $severity:ident;)+) => {
        $(
            #[doc = concat!("The fault `", $code, "`; its page says why.")]
            pub const $name: Fault = Fault { code: $code, severity: Severity::$severity, page: include_str!(concat!($code, ".md")) };
        )+
        /// All faults, in the order of the manual.
        pub const ALL: &[Fault] = &[$($name,)+];
    };
}

faults! {
    NOT_TEXT, "not-text", Error;
    FILE_TOO_LARGE, "file-too-large", Error;
    TOO_MANY_LINES, "too-many-lines", Error;
    NOT_TOML, "not-toml", Error;
    NESTED_TOO_DEEP, "nested-too-deep", Error;
    UNKNOWN_KEY, "unknown-key", Error;
    KEY_MISSING, "key-missing", Error;
    WRONG_KIND, "wrong-kind", Error;
    UNKNOWN_WORD, "unknown-word", Error;
    NAME_TWICE, "name-twice", Error;
    NAME_UNTRANSLATED, "name-untranslated", Advice;
    NAME_NOT_PLAIN, "name-not-plain", Error;
    NOT_A_LANGUAGE, "not-a-language", Error;
    TRANSLATION_IN_ONE_LANGUAGE, "translation-in-one-language", Error;
    NOT_AN_AMOUNT, "not-an-amount", Error;
    UNKNOWN_UNIT, "unknown-unit", Error;
    AMOUNT_MISSING, "amount-missing", Error;
    AMOUNT_NEGATIVE, "amount-negative", Error;
    AMOUNT_NOT_FINITE, "amount-not-finite", Error;
    WRONG_QUANTITY, "wrong-quantity", Error;
    NOT_HOURS_OF_THE_DAY, "not-hours-of-the-day", Error;
    BELOW_ABSOLUTE_ZERO, "below-absolute-zero", Error;
    LOSS_OVER_WHOLE, "loss-over-whole", Error;
    UNKNOWN_INGREDIENT, "unknown-ingredient", Error;
    UNKNOWN_STAGE, "unknown-stage", Error;
    UNKNOWN_COMPONENT, "unknown-component", Error;
    UNKNOWN_FORMULA, "unknown-formula", Error;
    UNKNOWN_KITCHEN, "unknown-kitchen", Error;
    KITCHEN_IMPOSSIBLE, "kitchen-impossible", Error;
    UNKNOWN_ROOM_LOG, "unknown-room-log", Error;
    FAULTY_FORMULA, "faulty-formula", Error;
    CIRCULAR_STAGES, "circular-stages", Error;
    CIRCULAR_FORMULAS, "circular-formulas", Error;
    CIRCULAR_INGREDIENTS, "circular-ingredients", Error;
    PERCENTAGE_WITHOUT_FLOUR, "percentage-without-flour", Error;
    TWO_BASES, "two-bases", Error;
    FLOURS_NOT_WHOLE, "flours-not-whole", Error;
    STAGE_WITHOUT_SIZE, "stage-without-size", Error;
    MORE_USED_THAN_MADE, "more-used-than-made", Error;
    STAGE_NEVER_USED, "stage-never-used", Warning;
    STAGE_LEFT_OVER, "stage-left-over", Advice;
    NOTHING_IN_IT, "nothing-in-it", Error;
    NO_DENSITY, "no-density", Error;
    NO_PIECE_WEIGHT, "no-piece-weight", Error;
    YIELD_IMPOSSIBLE, "yield-impossible", Error;
    YIELD_LEAVES_OVER, "yield-leaves-over", Warning;
    INGREDIENT_NEVER_USED, "ingredient-never-used", Warning;
    REFERENCE_TO_NOTHING, "reference-to-nothing", Error;
    REFERENCE_UNREADABLE, "reference-unreadable", Error;
    MORE_REFERRED_THAN_WEIGHED, "more-referred-than-weighed", Warning;
    FIGURE_OUTSIDE_BRACES, "figure-outside-braces", Advice;
    MIXED_UNITS, "mixed-units", Warning;
    SPOONS_NOT_NAMED, "spoons-not-named", Warning;
    NO_METHOD, "no-method", Advice;
    ALT_TEXT_MISSING, "alt-text-missing", Warning;
    NOT_AN_ADDRESS, "not-an-address", Error;
    PHOTOGRAPH_NOT_USABLE, "photograph-not-usable", Warning;
    COMPOSITION_OVER_WHOLE, "composition-over-whole", Warning;
    NOT_A_DATE, "not-a-date", Error;
    NOT_MONEY, "not-money", Error;
    TWO_CURRENCIES, "two-currencies", Error;
    COURSE_MISSING, "course-missing", Error;
    COURSE_UNREADABLE, "course-unreadable", Error;
    READING_OF_NOTHING, "reading-of-nothing", Error;
    RISE_WITHOUT_BEGINNING, "rise-without-beginning", Warning;
    TASTING_IMPOSSIBLE, "tasting-impossible", Error;
    UNKNOWN_TRIAL, "unknown-trial", Error;
    UNKNOWN_TASTING, "unknown-tasting", Error;
    EVIDENCE_OF_OTHERS, "evidence-of-others", Error;
    EVIDENCE_NOT_HELD, "evidence-not-held", Advice;
    CHANGED_SINCE_TASTED, "changed-since-tasted", Warning;
}

/// The fault of that code.
#[must_use]
pub fn named(code: &str) -> Option<&'static Fault> {
    ALL.iter().find(|fault| fault.code == code)
}
