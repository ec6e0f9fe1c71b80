//! Pages of the German book: German alone, in what is seen, what is read aloud, what programs read and what scripts say.

use crate::demo::{formulas, german_book, visible};
use bench::forecast::Surroundings;
use formula::{Book, Formula};
use plan::day::{Workplace, usual};
use publish::page::{Leaf, ON_PAPER, OnPaper, formula_page, sheets};
use publish::reader::reader;
use publish::site::{Card, Dated};
use serde_json::Value;
use std::collections::BTreeMap;

/// English words that are no German ones, those first that pages use: articles, joints and the words of the trade.
const ENGLISH: &str = "the and of with for is are to from at until each makes serves contains cup cups tbsp tsp about not egg \
    eggs size yolk yolks white whites flour sugar salt yeast milk method total ingredient ingredients kept room waiting wait \
    heat bake knead mix ferment proof bulk retard formula formulas page step steps timer stop next previous back grams spoons \
    it its this that these by on or as how many much what which when where than then but only no your you my per into out up \
    down before after between without alone all piece pieces serving servings label notes keeping care sulphites wheat rye \
    barley oats almonds soybeans weigh beat left own dough culture times written oblong round volume long wide high holds tin \
    tins measures amounts degrees eggs whose raises begun served clock kitchen screen published fiber fibre protein fat energy";

fn page_of(book: &Book, formula: &Formula) -> String {
    let around = Surroundings::of(&book.kitchen());
    let reader = reader(book, formula, &around);
    let day = usual(formula, Workplace::of(&book.kitchen()), &around);
    let on_paper = ON_PAPER.map(|name| OnPaper { file: format!("paper/{name}.pdf"), name });
    let leaf = Leaf { reader: Some(&reader), day: day.as_ref(), on_paper: &on_paper, ..Leaf::alone(&book.settings) };
    formula_page(formula, &leaf)
}

/// Every page of the book by its file.
fn pages() -> BTreeMap<String, String> {
    let book = german_book();
    let formulas = formulas(&book);
    let dated = |formula: &Formula| {
        let moment = || "2026-11-25T12:00:00Z".to_owned();
        Dated { card: Card::of(formula, &book.settings), published: moment(), updated: moment() }
    };
    let cards: Vec<Dated> = formulas.iter().map(dated).collect();
    let lists = publish::book_files(&cards, [], &book.settings).into_iter().map(|(file, text)| (file.to_owned(), text));
    let sheet = |formula| publish::sheet::sheet(formula, &book.kitchen(), &book.settings);
    let sheets = sheets(&formulas.iter().map(sheet).collect::<Vec<_>>(), &book.settings);
    let lists = lists.chain([("sheets.html".to_owned(), sheets)]);
    lists.chain(formulas.iter().map(|formula| (format!("{}.html", formula.name), page_of(&book, formula)))).collect()
}

/// What a page says: its text, the attributes that people hear or read, and the words of its data. What is marked as
/// English, attributions that datasets ask for word for word, is left out.
fn said(page: &str) -> Vec<String> {
    let mut all = Vec::new();
    let (head, body) = page.split_once("<body>").unwrap_or(("", page));
    all.extend(head.split("<title>").nth(1).and_then(|rest| rest.split('<').next()).map(str::to_owned));
    for name in ["aria-label", "alt", "title", "data-found", "aria-valuetext", "placeholder", "content"] {
        let begins = format!(" {name}=\"");
        let values = page.split(&begins).skip(1).filter_map(|rest| rest.split('"').next());
        all.extend(values.filter(|value| name != "content" || value.contains(' ')).map(without_braces));
    }
    let mut rest = body;
    let mut text = String::new();
    while let Some((before, after)) = rest.split_once("<script") {
        text.push_str(before);
        let (script, after) = after.split_once("</script>").expect("an end");
        if let Some((_, data)) = script.split_once("id=\"figures\">") {
            words_of("", &serde_json::from_str(data).expect("JSON"), &mut all);
        }
        rest = after;
    }
    text.push_str(rest);
    // A drawing brings its look along, which nobody reads.
    let mut looks = text.split("<style>");
    let first = looks.next().unwrap_or_default().to_owned();
    let text = looks.filter_map(|look| look.split_once("</style>")).fold(first, |text, (_, after)| text + after);
    let mut parts = text.split("<span lang=\"en\">");
    let mut german = parts.next().unwrap_or_default().to_owned();
    german.extend(parts.filter_map(|part| part.split_once("</span>")).map(|(_, after)| after));
    all.push(visible(&format!("<body>{german}")));
    all
}

/// A page's body up to what only scripts use.
fn body(page: &str) -> String {
    let (_, body) = page.split_once("<body>").expect("a body");
    let text = body.split("<template").next().and_then(|text| text.split("<script").next()).unwrap_or_default();
    format!("<body>{text}")
}

/// The texts of a page's data that its reader meets; names that only scripts ask for are none.
fn words_of(key: &str, value: &Value, all: &mut Vec<String>) {
    match value {
        Value::String(text) if !["key", "name", "language", "household", "size", "uses", "stage"].contains(&key) => {
            all.push(without_braces(text));
        }
        Value::Array(items) => items.iter().for_each(|item| words_of(key, item, all)),
        Value::Object(fields) => fields.iter().for_each(|(key, item)| words_of(key, item, all)),
        _ => {}
    }
}

/// A message without what it is filled with.
fn without_braces(text: &str) -> String {
    let mut parts = text.split('{');
    let first = parts.next().unwrap_or_default().to_owned();
    parts.filter_map(|part| part.split_once('}')).fold(first, |whole, (_, after)| format!("{whole} {after}"))
}

#[test]
fn no_english_word_is_left() {
    let english: Vec<&str> = ENGLISH.split_whitespace().collect();
    for (file, page) in pages().into_iter().filter(|(file, _)| file.ends_with(".html")) {
        assert!(page.contains("<html lang=\"de\">"), "{file}");
        // The policy is written for browsers.
        for text in said(&page).into_iter().filter(|text| !text.starts_with("default-src")) {
            let words: Vec<&str> = text.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
            let left = words.iter().position(|word| english.contains(&word.to_lowercase().as_str()));
            let around = left.map(|at| words[at.saturating_sub(5)..(at + 6).min(words.len())].join(" "));
            assert!(around.is_none(), "{file} says “{}”", around.unwrap_or_default());
        }
    }
}

#[test]
fn figures_have_decimal_commas() {
    let pages = pages();
    let knots = visible(&pages["kardamomknoten.html"]);
    for told in ["5,9 g gemahlener Kardamom (1 EL), frisch gemahlen", "13,5–18,5 h", "103 g Ei (2 Eier, Größe M)", "1.176 g"]
    {
        assert!(knots.contains(told), "{told}");
    }
    let is_point = |word: &str| {
        let part = word.split_once('.').filter(|(whole, _)| whole.parse::<u32>().is_ok()).map(|(_, part)| part);
        // Three digits after a point are a group of thousands.
        part.is_some_and(|part| (1..3).contains(&part.len()) && part.parse::<u32>().is_ok())
    };
    let told = |page: &str| visible(page).split([' ', '\u{a0}', '–']).any(is_point);
    let html = pages.iter().filter(|(file, _)| file.ends_with(".html"));
    let left: Vec<&String> = html.filter(|(_, page)| told(&body(page))).map(|(file, _)| file).collect();
    assert!(left.is_empty(), "a decimal point is left in {left:?}");
}

/// RFC 4287 and schema.org: the language stands where programs look for it.
#[test]
fn programs_are_told_the_language() {
    let pages = pages();
    assert!(pages["feed.xml"].contains("xml:lang=\"de\""));
    assert!(pages["kardamomknoten.html"].contains("\"inLanguage\":\"de\""));
}

/// What a reader reads, from top to bottom.
#[test]
fn a_page_reads_as_german() {
    let page = &pages()["poolish-fladen.html"];
    let lines = [
        "</p>",
        "</li>",
        "</dd>",
        "</dt>",
        "</h1>",
        "</h2>",
        "</h3>",
        "</label>",
        "</tr>",
        "</legend>",
        "</caption>",
        "</option>",
        "</button>",
        "</summary>",
    ];
    let broken = lines.iter().fold(body(page), |text, end| text.replace(end, &format!("¶{end}")));
    let broken = broken.replace("</td>", " </td>").replace("</th>", " </th>").replace("</span><span>", "</span> <span>");
    let text: Vec<String> =
        visible(&broken).split('¶').map(|line| line.trim().to_owned()).filter(|line| !line.is_empty()).collect();
    insta::assert_snapshot!(text.join("\n"));
}
