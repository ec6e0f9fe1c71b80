//! temp
#![allow(clippy::all, clippy::disallowed_methods, clippy::print_stdout, missing_docs)]
use bench::forecast::*;
use formula::source::Source;
use formula::*;
use std::path::Path;
fn cpu() -> f64 { std::fs::read_to_string("/proc/thread-self/schedstat").unwrap().split(" ").next().unwrap().parse::<f64>().unwrap() / 1e9 }
fn main() {
    let folder = Path::new("examples/saltmarsh");
    let mut text = BookText::default();
    for part in ["ingredients", "kitchens", "formulas"] {
        for entry in std::fs::read_dir(folder.join(part)).unwrap().flatten() {
            let file = format!("{part}/{}", entry.file_name().to_string_lossy());
            let source = Source { file: file.as_str().into(), text: std::fs::read_to_string(entry.path()).unwrap() };
            text.files.insert(file, source);
        }
    }
    text.files.insert("book.toml".into(), Source { file: "book.toml".into(), text: std::fs::read_to_string(folder.join("book.toml")).unwrap() });
    let book = Book::open(text).value;
    let kitchen = book.kitchen();
    let around = Surroundings::of(&kitchen);
    let n = 100;
    for name in book.formulas.keys() {
        let formula = book.formula(name).unwrap().value;
        let ways = publish::reader::reader(&book, &formula, &around).ways;
        let mut worst = 0.0f64;
        for f in std::iter::once(&formula).chain(ways.iter().map(|w| &w.formula)) {
            for k in 0..=40 {
                let a = around.clone().with_room(quantity::Temperature::celsius(12.0 + 0.5 * k as f64));
                let (t, u) = (rises_for_a_table(f, &a), rises(f, &a));
                for (x, y) in t.iter().flat_map(|r| &r.steps).zip(u.iter().flat_map(|r| &r.steps)) {
                    match (&x.reached, &y.reached) {
                        (Some(x), Some(y)) => for (p, q) in [(&x.from, &y.from), (&x.to, &y.to)] {
                            let off = (p.value.as_minutes() / q.value.as_minutes() - 1.0).abs();
                            if off > 0.002 { println!("  {name} at {} : {} for {}", 12.0 + 0.5 * k as f64, p.value.as_minutes(), q.value.as_minutes()) }
                            worst = worst.max(off);
                        },
                        (None, None) => {}
                        _ => println!("{name} at {k}: differs"),
                    }
                }
            }
        }
        println!("{name} worst {worst}");
    }

    let mut sum = [0.0; 6];
    for name in book.formulas.keys() {
        if name == "base-syrup" { continue; }
        let t = |f: &mut dyn FnMut()| { let b = cpu(); for _ in 0..n { f() } (cpu() - b) * 1e3 / n as f64 };
        let formula = book.formula(name).unwrap().value;
        let a = t(&mut || { std::hint::black_box(book.formula(name)); });
        let b = t(&mut || { std::hint::black_box(bench::rules::proof_read(&formula, &kitchen, &book.settings)); });
        let c = t(&mut || { std::hint::black_box(publish::reader::reader(&book, &formula, &around)); });
        let r1 = t(&mut || { std::hint::black_box(rises_for_a_table(&formula, &around)); });
        let r2 = t(&mut || { std::hint::black_box(rises(&formula, &around)); });
        let f = t(&mut || { std::hint::black_box(foresee(&formula, &around)); });
        println!("{name:35} read {a:6.2} rules {b:6.2} reader {c:6.2} | table-rises {r1:6.3} full {r2:6.3} foresee {f:6.3}");
        for (s, v) in sum.iter_mut().zip([a, b, c, r1, r2, f]) { *s += v / 5.0 }
    }
    println!("mean {sum:.2?}");
    if std::env::args().nth(1).is_some() {
        for name in book.formulas.keys() {
            let formula = book.formula(name).unwrap().value;
            let data: serde_json::Value = serde_json::from_str(&publish::reader::reader(&book, &formula, &around).data).unwrap();
            for way in data["ways"].as_array().unwrap() {
                let rooms: Vec<usize> = way["rooms"]["parts"].as_array().map_or(vec![], |p| p.iter().map(|p| p["rooms"].as_array().unwrap().len()).collect());
                if rooms.iter().sum::<usize>() > 20 { println!("{}", way["rooms"]); }
                println!("{name} {} {rooms:?} {}", way["key"], rooms.iter().sum::<usize>());
            }
        }
    }
}
