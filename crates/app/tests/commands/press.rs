//! `publish` again and again: only what changed is made, nothing of another's is touched, readers meet whole pages only.

use crate::sandbox::{Sandbox, small_formula};
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};
use std::time::SystemTime;

/// A book of three formulas, one of which is a base for another.
fn book() -> Sandbox {
    let sandbox = Sandbox::empty();
    sandbox.write("book/book.toml", "title = \"Breads\"\naddress = \"https://example.org/breads\"\n");
    sandbox.write(
        "book/formulas/base.toml",
        small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}.").replace("Flat bread", "Base"),
    );
    sandbox.write(
        "book/formulas/crisp.toml",
        small_formula("flour-bread = \"300 g\"", "Mix {flour-bread}.").replace("Flat bread", "Crisp"),
    );
    let lines = "flour-bread = \"400 g\"\nbase = \"100 g\"";
    sandbox.write("book/formulas/flat.toml", small_formula(lines, "Mix {flour-bread} and {base}."));
    sandbox
}

/// What a run says it did.
fn told(sandbox: &Sandbox) -> String {
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert_eq!(ran.status, 0, "{}{}", ran.out, ran.err);
    ran.err.lines().last().unwrap_or_default().split(';').next().unwrap_or_default().to_owned()
}

fn changed_at(sandbox: &Sandbox, file: &str) -> SystemTime {
    std::fs::metadata(sandbox.path(file)).and_then(|meta| meta.modified()).expect("it is there")
}

#[test]
fn only_what_changed_is_made_anew() {
    let sandbox = book();
    assert_eq!(told(&sandbox), "8 files written");
    let before = changed_at(&sandbox, "site/crisp.html");
    assert_eq!(told(&sandbox), "0 files written, 8 unchanged");
    // A note changes one page; the lists tell nothing of it, the feed and the site map that it changed.
    let flat = sandbox.read("book/formulas/flat.toml");
    sandbox.write("book/formulas/flat.toml", flat.replace("A plain flat bread.", "A plain flat bread. It keeps."));
    // Feed and site map follow once the clock has gone on by a second.
    let said = told(&sandbox);
    assert!(["1 file written, 7 unchanged", "3 files written, 5 unchanged"].contains(&said.as_str()), "{said}");
    assert!(sandbox.read("site/flat.html").contains("It keeps."));
    assert_eq!(changed_at(&sandbox, "site/crisp.html"), before);
}

/// What a formula is made of, and what it goes into, is on its page: both follow.
#[test]
fn a_change_reaches_the_pages_that_show_it() {
    let sandbox = book();
    told(&sandbox);
    assert!(sandbox.read("site/base.html").contains("<a href=\"flat.html\">Flat bread</a>"), "the base leads to its use");
    assert!(sandbox.read("site/flat.html").contains("<a href=\"base.html\">"), "the use leads to its base");
    let flat = sandbox.read("book/formulas/flat.toml");
    sandbox.write("book/formulas/flat.toml", flat.replace("Flat bread", "Round bread"));
    told(&sandbox);
    assert!(
        sandbox.read("site/base.html").contains("Round bread") && sandbox.read("site/ingredients.html").contains("Round bread")
    );
    let base = sandbox.read("book/formulas/base.toml");
    sandbox.write("book/formulas/base.toml", base.replace("title = \"Base\"", "title = \"Mother\""));
    told(&sandbox);
    assert!(sandbox.read("site/flat.html").contains("Mother"), "a page follows the formula that it uses");
}

#[test]
fn pages_of_formulas_that_are_gone_go_and_nothing_else() {
    let sandbox = book();
    told(&sandbox);
    sandbox.write("site/notes.txt", "my own");
    sandbox.write("site/album/one.html", "my own");
    std::fs::remove_file(sandbox.path("book/formulas/crisp.toml")).expect("it is there");
    assert!(told(&sandbox).contains("1 removed"));
    assert!(!sandbox.path("site/crisp.html").exists() && !sandbox.read("site/index.html").contains("Crisp"));
    assert_eq!(sandbox.read("site/notes.txt") + &sandbox.read("site/album/one.html"), "my ownmy own");
    // A page that another hand changed since is not this program's to remove.
    sandbox.write("site/flat.html", "mended by hand");
    std::fs::remove_file(sandbox.path("book/formulas/flat.toml")).expect("it is there");
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert!(ran.err.contains("flat.html was changed by another hand"), "{}", ran.err);
    assert_eq!(sandbox.read("site/flat.html"), "mended by hand");
}

#[test]
fn a_file_of_anothers_is_not_written_over() {
    let sandbox = book();
    sandbox.write("site/index.html", "<h1>My own front page</h1>");
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert_eq!(ran.status, 2, "{}", ran.err);
    assert!(ran.err.contains("is there already and is no page of this program"), "{}", ran.err);
    assert_eq!(sandbox.files("site"), ["index.html"], "nothing was moved");
    std::fs::remove_file(sandbox.path("site/index.html")).expect("it is there");
    std::fs::create_dir(sandbox.path("site/tags.html")).expect("a folder");
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert!(ran.status == 2 && ran.err.contains("is a folder"), "{}", ran.err);
    assert!(sandbox.files("site").is_empty(), "nothing was moved");
}

#[test]
fn a_lost_or_damaged_record_does_no_harm() {
    let sandbox = book();
    told(&sandbox);
    let page = sandbox.read("site/flat.html");
    for record in ["", "{", "{\"form\":1,\"formulas\":{},\"files\":{\"../book/book.toml\":[\"0\",\"\"]}}", "{\"form\":99}"] {
        sandbox.write("site/.edition/record.json", record);
        assert_eq!(told(&sandbox), "8 files written", "{record}");
        assert_eq!(sandbox.read("site/flat.html"), page);
        assert!(sandbox.path("book/book.toml").exists());
    }
    std::fs::remove_file(sandbox.path("site/base.html")).expect("it is there");
    sandbox.write("site/.edition/next/half.html", "what an interrupted run left");
    assert_eq!(told(&sandbox), "1 file written, 7 unchanged");
    assert!(!sandbox.path("site/.edition/next").exists());
}

/// Someone reads while the book is published over and over: every page is whole, and every link leads somewhere.
#[test]
fn readers_meet_whole_pages_only() {
    let sandbox = book();
    told(&sandbox);
    std::thread::scope(|scope| {
        let writer = scope.spawn(|| {
            for round in 0..12 {
                let crisp = small_formula("flour-bread = \"300 g\"", "Mix {flour-bread}.")
                    .replace("Flat bread", &format!("Crisp {round}"));
                sandbox.write(&format!("book/formulas/crisp-{round}.toml"), crisp);
                told(&sandbox);
            }
        });
        while !writer.is_finished() {
            let index = sandbox.read("site/index.html");
            assert!(index.ends_with("</html>"), "half a page");
            for link in index.split("<h2><a href=\"").skip(1).filter_map(|rest| rest.split('"').next()) {
                assert!(sandbox.read(&format!("site/{link}")).ends_with("</html>"), "half of {link}");
            }
        }
    });
}

#[test]
fn one_formulas_file_adds_its_page() {
    let sandbox = book();
    let ran = sandbox.run(&["publish", "book/formulas/flat.toml", "--out", "site"]);
    assert_eq!(ran.status, 0, "{}", ran.err);
    assert!(sandbox.path("site/base.html").exists(), "what it is made by way of comes along");
    assert!(!sandbox.path("site/crisp.html").exists());
    sandbox.fine(&["publish", "book/formulas/crisp.toml", "--out", "site"]);
    let index = sandbox.read("site/index.html");
    assert!(["flat.html", "base.html", "crisp.html"].iter().all(|page| index.contains(page)), "the others stay");
}

#[test]
fn two_presses_do_not_meet_in_one_folder() {
    let sandbox = book();
    told(&sandbox);
    let lock = std::fs::File::options().write(true).open(sandbox.path("site/.edition/lock")).expect("it is there");
    lock.try_lock().expect("nobody is at work");
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert!(ran.status == 2 && ran.err.contains("another wellproved is publishing into site"), "{}", ran.err);
}

/// What the program says while it looks on, line by line.
#[test]
fn looking_on_publishes_each_change() {
    let sandbox = book();
    let mut program = Command::new(env!("CARGO_BIN_EXE_wellproved"))
        .args(["publish", "book", "--out", "site", "--watch"])
        .current_dir(sandbox.path("."))
        .stderr(Stdio::piped())
        .stdout(Stdio::null())
        .spawn()
        .expect("the program runs");
    let mut lines = BufReader::new(program.stderr.take().expect("its words")).lines().map_while(Result::ok);
    let mut until = |words: &str| lines.by_ref().find(|line| line.contains(words)).expect("it goes on");
    until("looking on");
    let flat = sandbox.read("book/formulas/flat.toml");
    sandbox.write("book/formulas/flat.toml", flat.replace("Flat bread", "Round bread"));
    until("unchanged");
    assert!(sandbox.read("site/flat.html").contains("Round bread"));
    sandbox.write("book/formulas/flat.toml", "title = ");
    until("nothing was written");
    assert!(sandbox.read("site/flat.html").contains("Round bread"), "the last whole edition stays");
    program.kill().expect("it was looking on");
    program.wait().expect("it ends");
}
