//! How fast a book is published, whole and after one change, beside a general-purpose template engine in the same run.
//!
//! `cargo bench -p app --bench press` prints seconds and ratios; nothing here passes or fails.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, missing_docs)]

#[path = "../book/generated.rs"]
mod generated;

use bench::forecast::Surroundings;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use generated::generated;
use publish::page::{Leaf, formula_page};
use rayon::prelude::*;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let small = whole(&root, 1_000);
    let large = whole(&root, 4_000);
    println!("growth from 1,000 to 4,000 formulas: {:.1} times (4 is linear)", large / small);
}

/// A book published cold, again, and after one formula changed.
fn whole(root: &Path, formulas: usize) -> f64 {
    let book = generated(root, formulas);
    let out = root.join(format!("target/bench/pages-{formulas}"));
    let cold = (0..3)
        .map(|_| {
            let _ = std::fs::remove_dir_all(&out);
            publish(&book, &out).0
        })
        .fold(f64::INFINITY, f64::min);
    let (_, memory) = publish(&book, &out);
    let file = book.join("formulas/cardamom-knots-00002.toml");
    let text = std::fs::read_to_string(&file).expect("a formula");
    let changed = (0..3)
        .map(|round| {
            std::fs::write(&file, text.replacen("title = \"", &format!("title = \"Changed {round}, "), 1)).expect("a formula");
            publish(&book, &out).0
        })
        .fold(f64::INFINITY, f64::min);
    let _ = std::fs::remove_dir_all(&out);
    let (_, at_most) = publish(&book, &out);
    println!("{formulas} formulas published cold: {cold:.2} s (wanted for 1,000: under 10 s), {at_most:.0} MB at the most");
    println!("  one of them changed: {changed:.3} s (wanted for 1,000: under 0.5 s), {memory:.0} MB");
    if formulas == 1_000 {
        beside_a_template_engine(root, &book, &out);
    }
    cold
}

/// One run of the program: seconds, and the most memory it held, by way of Python's resource module.
fn publish(book: &Path, out: &Path) -> (f64, f64) {
    let script = "import resource,subprocess,sys,time; t=time.perf_counter(); subprocess.run(sys.argv[1:], capture_output=True, check=True); \
                  print(time.perf_counter()-t, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024)";
    let program = env!("CARGO_BIN_EXE_wellproved");
    let output = Command::new("python3")
        .args(["-c", script, program, "publish"])
        .arg(book)
        .arg("--out")
        .arg(out)
        .output()
        .expect("python3");
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut words = text.split_whitespace().filter_map(|word| word.parse().ok());
    (words.next().unwrap_or(f64::NAN), words.next().unwrap_or(f64::NAN))
}

/// Both sides have every figure worked out beforehand, fill pages of the same content, and write them.
fn beside_a_template_engine(root: &Path, book: &Path, pages: &Path) {
    let opened = opened(book);
    let formulas: Vec<Formula> = opened.formulas.keys().filter_map(|name| Some(opened.formula(name)?.value)).collect();
    let settings = formula::read::BookSettings { title: "Bench".to_owned(), ..Default::default() };
    let readers = publish::reader::readers(&opened, &formulas, &Surroundings::of(&opened.kitchen()));
    let out = root.join("target/bench/filled");
    let fill = |formula: &Formula| {
        let leaf = Leaf { reader: readers.get(&formula.name), ..Leaf::alone(&settings) };
        std::fs::write(out.join(format!("{}.html", formula.name)), formula_page(formula, &leaf)).expect("a page");
    };
    let timed = |work: &dyn Fn()| {
        let _ = std::fs::remove_dir_all(&out);
        std::fs::create_dir_all(&out).expect("a folder under target");
        let begun = Instant::now();
        work();
        begun.elapsed().as_secs_f64()
    };
    let best = |work: &dyn Fn()| (0..3).map(|_| timed(work)).fold(f64::INFINITY, f64::min);
    let on_one = best(&|| formulas.iter().for_each(&fill));
    let on_all = best(&|| formulas.par_iter().for_each(fill));
    println!("  laid out and written alone: {on_one:.2} s on one core, {on_all:.2} s on all");
    let python = root.join("target/venv/bin/python");
    let script = root.join("crates/app/benches/press/filling.py");
    let _ = std::fs::remove_dir_all(&out);
    std::fs::create_dir_all(&out).expect("a folder under target");
    match Command::new(python).arg(script).arg(pages).arg(&out).output() {
        Ok(output) if output.status.success() => {
            let text = String::from_utf8_lossy(&output.stdout).into_owned();
            let figures: Vec<f64> = text.split_whitespace().filter_map(|word| word.parse().ok()).collect();
            let [one, all, size] = figures[..] else { return println!("  {text}") };
            println!(
                "  Jinja2 with precomputed figures, pages {size:.2} times as large: {one:.2} s on one core ({:.1} times as long), {all:.2} s on all ({:.1} times)",
                one / on_one,
                all / on_all
            );
        }
        _ => println!("  Jinja2 is not here: tools/test/prepare.sh installs it"),
    }
}

/// A book as it was generated.
fn opened(folder: &Path) -> Book {
    let mut text = BookText::default();
    for part in ["ingredients", "kitchens", "formulas"] {
        for entry in std::fs::read_dir(folder.join(part)).expect("the generated book").flatten() {
            let file = format!("{part}/{}", entry.file_name().to_string_lossy());
            let source = Source { file: file.as_str().into(), text: std::fs::read_to_string(entry.path()).expect("a file") };
            text.files.insert(file, source);
        }
    }
    Book::open(text).value
}
