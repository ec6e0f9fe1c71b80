//! Formulas that nobody would write: no rule panics or takes long on them.

use crate::proof_read;
use formula::BookText;
use formula::fault::page::Page;
use formula::source::Source;
use std::collections::BTreeMap;

fn book(text: String) -> BookText {
    let file = "formulas/example.toml";
    BookText { files: BTreeMap::from([(file.to_owned(), Source { file: file.into(), text })]) }
}

/// A row of numbers that looks random and is the same each time: the generator of Knuth's MMIX.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap_or(0) % end.max(1)
    }
}

/// Every page's example with lines of it, and figures of it, exchanged, doubled and taken out.
#[test]
fn nothing_panics_on_spoilt_examples() {
    const FIGURES: [&str; 8] = ["\"0 g\"", "\"-273 °C\"", "\"1e9 g\"", "\"0 %\"", "0", "\"100000 h\"", "\"\"", "\"5000 °C\""];
    let mut numbers = Numbers(7);
    for rule in bench::rules::ALL {
        for example in Page::read(rule.page).bad {
            let text = example.files.get("formulas/example.toml").expect("an example");
            for _ in 0..40 {
                let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
                for _ in 0..3 {
                    let (at, other) = (numbers.below(lines.len()), numbers.below(lines.len()));
                    match numbers.below(4) {
                        0 => drop(lines.remove(at)),
                        1 => lines.swap(at, other),
                        2 => lines.insert(at, lines[other].clone()),
                        _ => {
                            if let Some((key, _)) = lines[at].clone().split_once(" = ") {
                                lines[at] = format!("{key} = {}", FIGURES[numbers.below(FIGURES.len())]);
                            }
                        }
                    }
                }
                proof_read(book(lines.join("\n")));
            }
        }
    }
}

#[test]
fn a_formula_as_long_as_may_be_is_read() {
    let mut text = String::from(
        "title = \"Long\"\n[[component]]\nname = \"long\"\n[[component.stage]]\nname = \"long\"\nkind = \"final-mix\"\n\
         [component.stage.ingredients]\nyeast-instant = \"1 g\"\n",
    );
    for line in 0..4000 {
        text.push_str(&format!("flour-{line} = {{ ingredient = \"flour-bread\", amount = \"1 g\" }}\n"));
    }
    for line in (0..4000).rev() {
        text.push_str(&format!("[[component.stage.step]]\naction = \"proof\"\ntext = \"Taste the dough, {{flour-{line}}}.\"\n"));
    }
    let found = proof_read(book(text));
    assert!(found.len() < 5000, "{} are told", found.len());
}
