//! `new`: a starter that is fine as it stands, and nothing written over.

use crate::sandbox::Sandbox;

#[test]
fn a_new_book_is_fine_and_can_be_published() {
    let sandbox = Sandbox::empty();
    insta::assert_snapshot!("new_book", sandbox.fine(&["new", "my-book"]));
    let ran = sandbox.run(&["check", "my-book"]);
    assert_eq!((ran.status, ran.out.trim()), (0, ""), "{}", ran.err);
    sandbox.fine(&["publish", "my-book", "--out", "site"]);
    assert!(sandbox.read("site/first-loaf.html").contains("First loaf"));
}

#[test]
fn one_more_formula() {
    let sandbox = Sandbox::empty();
    sandbox.fine(&["new", "my-book"]);
    sandbox.fine(&["new", "my-book/formulas/buns.toml"]);
    assert!(sandbox.run(&["check", "my-book"]).err.contains("2 formulas"));
}

#[test]
fn nothing_is_written_over() {
    let sandbox = Sandbox::empty();
    sandbox.write("my-book/book.toml", "title = \"Mine\"\n");
    let ran = sandbox.run(&["new", "my-book"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("is there already"), "{}", ran.err);
    assert_eq!(sandbox.read("my-book/book.toml"), "title = \"Mine\"\n");
    assert!(!sandbox.path("my-book/formulas").exists());
}

#[test]
fn nothing_is_written_that_the_book_would_not_read() {
    let sandbox = Sandbox::empty();
    sandbox.fine(&["new", "my-book"]);
    for (path, reason) in [
        ("my-book/formulas/buns.txt", "end in “.toml”"),
        ("my-book/formulas/buns", "a book holds no other book"),
        ("my-book/formulas/sweet/buns", "a book holds no other book"),
    ] {
        let ran = sandbox.run(&["new", path]);
        assert_eq!(ran.status, 2, "{path}");
        assert!(ran.err.contains(reason), "{path}: {}", ran.err);
        assert!(!sandbox.path(path).exists());
    }
    sandbox.fine(&["new", "my-book/formulas/../../other-book"]);
    sandbox.fine(&["new", "book-2.0"]);
}
