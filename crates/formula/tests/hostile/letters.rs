//! Bytes that are no text, and letters that hide or turn others.

use crate::{open, open_formula, with_lines};

const FILES: [&str; 4] = ["book.toml", "kitchens/x.toml", "ingredients/x.toml", "formulas/x.toml"];

#[test]
fn bytes_that_are_no_letters_are_refused_in_every_file() {
    let streams: [&[u8]; 5] =
        [b"title = \"caf\xe9\"", b"\xff\xfe\x00t", b"\xc3", b"a = \"\xed\xa0\x80\"", b"\xf8\x88\x80\x80\x80"];
    for file in FILES {
        for bytes in streams {
            open(&[(file, bytes.to_vec())]).refused_as("not-text");
        }
    }
}

#[test]
fn an_empty_file_is_read_and_a_formula_asks_for_what_it_lacks() {
    for file in FILES {
        for text in ["", "\n", "\r\n\r\n", "# only a remark", "   \t"] {
            let outcome = open(&[(file, text.as_bytes().to_vec())]);
            if file == "formulas/x.toml" {
                outcome.refused_as("key-missing");
            }
        }
    }
}

#[test]
fn a_byte_order_mark_does_no_harm() {
    let text = format!("\u{feff}{}", with_lines("water = \"1 kg\""));
    let outcome = open_formula(&text);
    assert!(!outcome.codes().contains("not-toml"), "{:?}", outcome.said);
    assert_eq!(outcome.formulas["x"].head.title, "x");
    for file in FILES {
        open(&[(file, b"\xef\xbb\xbf".to_vec())]);
        open(&[(file, "\u{feff}é = 1".as_bytes().to_vec())]);
    }
}

#[test]
fn a_file_may_begin_with_a_letter_of_several_bytes() {
    for file in FILES {
        for text in ["é", "é = 1", "½", "\u{1f956} = 2", "\u{202e}"] {
            open(&[(file, text.as_bytes().to_vec())]);
        }
    }
}

#[test]
fn control_characters_are_refused() {
    for letter in (0_u8..32).filter(|letter| !b"\t\n\r".contains(letter)).chain([127]) {
        let text = format!("title = \"a{}b\"\n[[component]]\nname = \"c\"", letter as char);
        open_formula(&text).refused_as("not-toml");
    }
    open_formula("title = \"a\rb\"").refused_as("not-toml");
    open_formula(&"\0".repeat(1000)).refused_as("not-toml");
}

#[test]
fn escaped_control_characters_are_text_but_no_names() {
    open_formula("title = \"a\\u0000b\"\n[[component]]\nname = \"a\\u0000b\"").refused_as("name-not-plain");
    open_formula(&with_lines("\"wa\\u0000ter\" = \"1 kg\"")).refused_as("unknown-ingredient");
    open_formula(&with_lines("water = \"1\\u0000 kg\"")).refused_as("unknown-unit");
}

#[test]
fn marks_that_turn_the_writing_are_no_part_of_names_or_figures() {
    for mark in ['\u{202e}', '\u{202b}', '\u{2067}', '\u{200f}', '\u{200b}', '\u{2060}'] {
        open_formula(&with_lines(&format!("\"wa{mark}ter\" = \"1 kg\""))).refused_as("unknown-ingredient");
        open_formula(&with_lines(&format!("water = \"1{mark} kg\""))).refused_as("unknown-unit");
        open_formula(&with_lines(&format!("water = \"{mark}1 kg\""))).refused_as("not-an-amount");
        open_formula(&format!("[[component]]\nname = \"c{mark}\"")).refused_as("name-not-plain");
    }
}

#[test]
fn sentences_of_braces_and_letters_of_several_bytes_keep_their_places() {
    let sentences = [
        "5 g…{{ {water}",
        "5 g… }} 7 g… {{ {water} 3 g…",
        "é{",
        "é}",
        "{é",
        "}é{é}",
        "{{{{{{é}}}",
        "{}",
        "{:}",
        "{ : é}",
        "{½ é}",
        "{-é}",
        "{water: é}",
        "5 gé{{5 g…",
        "…5 g",
        "{water:}5 g…",
        "{{5 °C…",
        "{water: name: name}",
        "{{}}{{}}5 min{é}",
        "12 h½{{½",
        "{5\u{a0}°C}…",
    ];
    for sentence in sentences {
        for quotes in ["\"", "'", "\"\"\"", "'''", "\"\"\"\n", "\"\"\"\\\n   "] {
            let end = if quotes.len() > 1 { &quotes[..3] } else { quotes };
            let method =
                format!("water = \"1 kg\"\n[[component.stage.step]]\naction = \"mix\"\ntext = {quotes}{sentence}{end}\n");
            open_formula(&with_lines(&method));
            open_formula(&with_lines(&method.replace('…', "\\u2026")));
            open_formula(&with_lines(&method.replace('\n', "\r\n")));
        }
    }
}
