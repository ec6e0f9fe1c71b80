//! What is printed: on paper of the size that is asked for, the same bytes for the same words, whatever they hold.

use paper::{Form, Sheet, Size, labels, pdf};
use proptest::prelude::*;
use serde_json::{Value, json};

/// Data for a form with one text everywhere.
fn filled(form: Form, text: &str) -> Value {
    match form {
        Form::Card => json!({
            "language": "en", "title": text, "book": text, "author": text, "facts": [[text, text]],
            "components": [{
                "title": text, "needs": [{ "amount": text, "title": text, "more": text }],
                "stages": [{ "title": text, "steps": [{ "text": text, "glance": text }] }],
            }],
            "contains": text, "cautions": [{ "title": text, "text": text }], "storage": text,
            "words": { "method": text, "contains": text, "check": text, "keeping": text, "guidance": text },
        }),
        Form::Sheet => json!({
            "language": "en", "title": text, "foot": text, "silenced": [text],
            "words": { "overall": text, "process": text, "columns": [text, text, text, text, text] },
            "components": [{
                "title": text, "head": [text],
                "overall": { "columns": [text, text], "rows": [[text, text]], "total": [text, text] },
                "stages": [{ "title": text, "columns": [text, text, text, text], "rows": [[text, text, text, text]], "remarks": [text] }],
                "process": [{ "title": text, "steps": [[text, text, text, text]] }],
            }],
        }),
        Form::Prep => json!({
            "language": "en", "title": text, "dishes": [text],
            "days": [{ "day": text, "items": [{ "time": text, "what": text, "weights": [text], "words": text }] }],
        }),
        Form::Labels => json!({
            "language": "en", "title": text, "least": { "by": "x", "high": 1.2 },
            "labels": [{
                "name": text, "runs": [{ "words": text, "strong": false }, { "words": text, "strong": true }], "lines": [text],
                "net": { "words": text, "high": 2.0 }, "after": [text], "draft": text, "facts": null,
                "declaration": { "head": [text, text], "rows": [{ "part": true, "cells": [text, text] }], "note": text },
            }],
        }),
    }
}

/// Texts that would be commands, marks or holes if they were not text.
const HOSTILE: [&str; 9] = [
    "",
    "#panic(\"no\") #read(\"/etc/passwd\") #import \"house.typ\"",
    "$ x^2 $ *bold* _soft_ `raw` <label> @ref \\ // no comment /* nor this */ = Heading",
    "</script><!-- -->\"'`",
    "\u{202e}sdrawkcab\u{202c} \u{200f}\u{2066}",
    "🥯 bagel, 焼きたて, хлеб, ψωμί",
    "nul \u{0}, bell \u{7}, line\nfeed\ttab\r",
    "6–8 min, 21–23\u{a0}°C",
    "Donaudampfschifffahrtsgesellschaftskapitänswitwenrentenauszahlungsstellendonaudampfschifffahrtsgesellschaftskapitänswitwe",
];

#[test]
fn every_form_on_every_paper_whatever_it_says() {
    for form in Form::ALL {
        let all = HOSTILE.into_iter().map(|text| (Size::A5, text)).chain(Size::ALL.map(|size| (size, HOSTILE[7])));
        for (size, text) in all {
            let bytes = pdf(form, size, &filled(form, text)).unwrap_or_else(|why| panic!("{form:?} {size:?} {text:?}: {why}"));
            assert!(bytes.starts_with(b"%PDF-1.7"), "{form:?} {size:?} {text:?}");
        }
    }
}

#[test]
fn the_same_words_give_the_same_bytes() {
    for form in Form::ALL {
        let print = || pdf(form, Size::A4, &filled(form, "Rye")).expect("a PDF");
        assert_eq!(print(), print(), "{form:?}");
    }
}

/// Whatever labels say they are only text; what does not fit is refused, not cut off.
#[test]
fn labels_whatever_they_say() {
    for text in HOSTILE {
        for sheet in Sheet::ALL {
            let places = [None, Some(0), Some(0)];
            match labels(sheet, &places, &filled(Form::Labels, text)) {
                Ok(bytes) => assert!(bytes.starts_with(b"%PDF-1.7"), "{} {text:?}", sheet.name),
                Err(why) => assert!(
                    why.is_for_want_of_room() && (sheet.label.0 < 200.0 || text.len() > 100),
                    "{} {text:?}: {why}",
                    sheet.name
                ),
            }
        }
    }
    let much = "flour, ".repeat(2_000);
    let why = labels(Sheet::ALL[4], &[Some(0)], &filled(Form::Labels, &much)).expect_err("too much");
    assert!(why.is_for_want_of_room(), "{why}");
}

/// Every label lies on its paper, and none on another; each next sheet is larger.
#[test]
fn sheets_of_labels() {
    for sheet in Sheet::ALL {
        let (width, height) = sheet.size.millimetres();
        let (left, top) = sheet.begins();
        assert!(left >= 0.0 && top >= 0.0 && sheet.gap >= 0.0, "{}", sheet.name);
        let across = sheet.places.0 as f64 * (sheet.label.0 + sheet.gap) - sheet.gap;
        let down = sheet.places.1 as f64 * sheet.label.1;
        assert!((2.0 * left + across - width).abs() < 1e-9 && (2.0 * top + down - height).abs() < 1e-9, "{}", sheet.name);
        assert_eq!(Sheet::named(sheet.name), Some(sheet));
        if let Some(larger) = sheet.larger() {
            assert!(larger.label.0 * larger.label.1 > sheet.label.0 * sheet.label.1 && larger.size == sheet.size);
        }
    }
}

/// What a form lacks is told, not printed as nothing.
#[test]
fn a_form_without_its_data_is_refused() {
    let why = pdf(Form::Card, Size::A5, &json!({ "title": "Rye", "language": "en" })).expect_err("no book");
    assert!(why.to_string().contains("book"), "{why}");
}

/// ISO 216: A4 is 210 × 297 mm, A5 half of it; Letter 8.5 × 11 in; a card 5 × 3 in, of 25.4 mm each.
#[test]
fn papers() {
    assert_eq!(Size::A4.millimetres(), (210.0, 297.0));
    assert_eq!(Size::A5.millimetres(), (148.0, 210.0));
    for (size, wide, high) in [(Size::Letter, 8.5, 11.0), (Size::Index, 5.0, 3.0)] {
        let (width, height) = size.millimetres();
        assert!((width - wide * 25.4).abs() < 1e-9 && (height - high * 25.4_f64).abs() < 1e-9, "{size:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]
    #[test]
    fn any_text_is_only_text(text in "\\PC{0,60}") {
        for form in Form::ALL {
            prop_assert!(pdf(form, Size::A5, &filled(form, &text)).is_ok(), "{form:?}");
        }
    }
}
