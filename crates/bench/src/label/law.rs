//! Whose rules a label follows, and the rules by name and date.

/// Whose rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Law {
    /// The European Union's.
    Eu,
    /// The United Kingdom's.
    Uk,
    /// The United States'.
    Us,
}

/// A rule by its name and date, with what it decides here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rule {
    /// What it decides.
    pub decides: &'static str,
    /// Its name and number.
    pub name: &'static str,
    /// Its date.
    pub date: &'static str,
}

const fn rule(decides: &'static str, name: &'static str, date: &'static str) -> Rule {
    Rule { decides, name, date }
}

const EUROPE: [Rule; 9] = [
    rule("order of ingredients, added water", "Regulation (EU) No 1169/2011, Art. 18 and Annex VII", "25 October 2011"),
    rule("stated quantities", "the same, Art. 22 and Annex VIII; Commission Notice 2017/C 393/05", "21 November 2017"),
    rule("allergens", "the same, Art. 21 and Annex II", "25 October 2011"),
    rule("nutrition declaration and its energy", "the same, Art. 30 to 35, Annexes I, XIII, XIV and XV", "25 October 2011"),
    rule("rounding", "Commission guidance on tolerances, Table 4; guidance, not law", "December 2012"),
    rule("size of letters", "Regulation (EU) No 1169/2011, Art. 13 and Annex IV", "25 October 2011"),
    rule("date marking", "the same, Art. 24 and Annex X", "25 October 2011"),
    rule("strength of drinks over 1.2 % vol", "the same, Art. 28 and Annex XII", "25 October 2011"),
    rule("height of the net quantity, from memory", "Directive 76/211/EEC, Annex I", "20 January 1976"),
];

const KINGDOM: [Rule; 4] = [
    rule(
        "the same as law of the United Kingdom",
        "retained Regulation (EU) No 1169/2011; Food Information Regulations 2014",
        "13 December 2014",
    ),
    rule(
        "food packed where it is sold",
        "Food Information (Amendment) Regulations 2019, in force 1 October 2021",
        "5 September 2019",
    ),
    rule("additions to wheat flour, from memory", "Bread and Flour Regulations 1998", "31 January 1998"),
    rule("folic acid in flour, from memory", "Bread and Flour (Amendment) Regulations, from 13 December 2026 in England", "2024"),
];

const STATES: [Rule; 7] = [
    rule("order of ingredients, \u{201c}contains 2 % or less\u{201d}, from memory", "21 CFR 101.4", "as of 2016"),
    rule("allergens", "Food Allergen Labeling and Consumer Protection Act; FASTER Act", "2 August 2004; 23 April 2021"),
    rule("which tree nuts count", "Questions and Answers Regarding Food Allergens, Edition 5, Table 1", "6 January 2025"),
    rule("nutrition facts and daily values", "21 CFR 101.9; 81 FR 33742", "27 May 2016"),
    rule("rounding", "Food Labeling Guide, Appendix H", "October 2009"),
    rule("vitamins and minerals", "21 CFR 101.9(c)(8); agency questions and answers", "December 2019"),
    rule("serving size", "21 CFR 101.9(b) and 101.12; 81 FR 34000", "27 May 2016"),
];

impl Law {
    /// Whose rules a book's language suggests.
    #[must_use]
    pub fn by_language(language: &str) -> Self {
        match language {
            "en-GB" => Self::Uk,
            "en-US" => Self::Us,
            _ => Self::Eu,
        }
    }

    /// Every one.
    pub const ALL: [Self; 3] = [Self::Eu, Self::Uk, Self::Us];

    /// The rules that its labels follow here.
    #[must_use]
    pub fn rules(self) -> Vec<Rule> {
        match self {
            Self::Eu => EUROPE.to_vec(),
            Self::Uk => EUROPE.into_iter().chain(KINGDOM).collect(),
            Self::Us => STATES.to_vec(),
        }
    }

    /// Where it holds.
    #[must_use]
    pub const fn place(self) -> &'static str {
        match self {
            Self::Eu => "the European Union",
            Self::Uk => "the United Kingdom",
            Self::Us => "the United States",
        }
    }

    /// Whether it is the European regulation, kept or not.
    #[must_use]
    pub const fn is_european(self) -> bool {
        matches!(self, Self::Eu | Self::Uk)
    }

    /// What small sellers may be spared, which only their authority decides.
    #[must_use]
    pub const fn spared(self) -> &'static [&'static str] {
        match self {
            Self::Eu => &[
                "Food that a small maker hands to the consumer, or to a shop nearby, may need no nutrition declaration \
                 (Annex V, point 19); what small and near mean, each country says. A nutrition or health claim ends that.",
                "Food sold loose has rules of each country's own; allergens are told everywhere.",
                "Bakers' wares that are normally eaten within 24 hours of making need no date (Annex X).",
            ],
            Self::Uk => &[
                "Food that a micro-business hands to the consumer, or to a shop in its county or within 35 miles, may need no \
                 nutrition declaration (Annex V, point 19, as it is read there). A nutrition or health claim ends that.",
                "Packed where it is sold, before it is chosen, it needs its name, this list and the allergens set off \
                 (since 1 October 2021); that reaches market stalls, but not distance selling.",
                "Bakers' wares that are normally eaten within 24 hours of making need no date (Annex X).",
            ],
            Self::Us => &[
                "Small retailers, and makers with few hands and units who give notice each year, may need no nutrition facts \
                 (21 CFR 101.9(j)(1) and (18)). A nutrient or health claim ends that.",
                "What is made at home and sold comes under the state's cottage food law, with words of its own.",
            ],
        }
    }
}
