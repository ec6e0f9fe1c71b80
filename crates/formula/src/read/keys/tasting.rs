//! The keys of a blind tasting.

use super::Value::{Date, Figure as Fig, Tables, Text, Texts, Truth, Word};
use super::{Table, may, must};
use crate::read::tasting::Method;

/// A tasting: what is tasted blind, how, and what is asked.
pub static TASTING: Table = Table {
    title: "a tasting",
    keys: &[
        must("title", Text, "what it is called"),
        must("method", Word(Method::WORDS), "how the tasters are asked"),
        must("question", Text, "what each of them is asked, in one sentence"),
        may("date", Date, "the day on which it is held"),
        may("comparative", Text, "the word for having more of what is asked: \"softer\"; a page that cites it uses this word"),
        may("expected", Texts, "what is expected before anybody tastes: the sample with more of it, or all of them, most first"),
        may(
            "panel",
            Fig("a number of people"),
            "how many seats are laid; as many as the difference worth seeing asks for if left out",
        ),
        may(
            "tell",
            Fig("a percentage, such as \"30 %\""),
            "the difference worth seeing: the share of people who truly tell it; 40 % if left out",
        ),
        may("apart", Fig("a number of points"), "the difference worth seeing, in points of the scale; 1 if left out"),
        may(
            "alike",
            Fig("a percentage, such as \"30 %\""),
            "where it is asked whether two are alike: the share who may tell them apart nevertheless",
        ),
        may("risk", Fig("a percentage, such as \"5 %\""), "how often a difference may be found that is none; 5 % if left out"),
        may(
            "power",
            Fig("a percentage, such as \"80 %\""),
            "how often a difference worth seeing should be found; 80 % if left out",
        ),
        may("ties", Truth, "whether two samples may share a rank; a taster must decide if left out"),
        may("pause", Fig("a time, such as \"1 min\""), "how long to wait between two samples"),
        may("rinse", Text, "what is taken between two samples: \"water and a plain cracker\""),
        may(
            "notice",
            Text,
            "what tasters must know before they agree, beside allergens and alcohol, which are told by themselves",
        ),
        must("sample", Tables(&SAMPLE), "what is tasted"),
        may("attribute", Tables(&ATTRIBUTE), "what is described, each on its own scale of nine points"),
    ],
};

/// A sample.
pub static SAMPLE: Table = Table {
    title: "a sample",
    keys: &[
        must("name", Text, "how the rest of the text calls it: small letters, digits and hyphens"),
        may("title", Text, "what the report calls it; the name with its hyphens opened if left out"),
        may("formula", Text, "the formula it was made by: a file of formulas/"),
        may(
            "revision",
            Fig("a number, from 1"),
            "which revision of it, as `history` counts them; the text as it is when the tasting is laid if left out",
        ),
        may("trial", Text, "the trial it was taken from, instead of a formula: a file of trials/"),
    ],
};

/// An attribute.
pub static ATTRIBUTE: Table = Table {
    title: "an attribute",
    keys: &[
        must("name", Text, "how the answers call it: small letters, digits and hyphens"),
        may("title", Text, "what tasters read; the name with its hyphens opened if left out"),
        must("low", Text, "the word at the scale's beginning: \"dry\""),
        must("high", Text, "the word at its end: \"moist\""),
    ],
};
