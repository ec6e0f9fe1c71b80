//! Strokes: kept with both their texts, undone, done again, forgotten when another way is taken.

use crate::{at, on_each};
use store::{Kind, Making, Store, Stroke, hash};

async fn made(store: &Store, before: &str, after: &str) -> Stroke {
    let making = Making { kind: Kind::Formula, name: "rye", before, after, what: "salt: 2 %", by: "Ada", at: at(1) };
    store.stroke(&making).await.expect("a stroke")
}

async fn undone(store: &Store) -> Vec<(i64, bool)> {
    let strokes = store.strokes(Kind::Formula, "rye").await.expect("strokes");
    strokes.iter().map(|one| (one.number, one.undone)).collect()
}

#[test]
fn a_stroke_keeps_what_was_before_and_what_is_after() {
    on_each("strokes", |store, _| async move {
        let stroke = made(&store, "one", "two").await;
        assert_eq!((stroke.before.as_str(), stroke.after.as_str()), (hash("one").as_str(), hash("two").as_str()));
        assert_eq!(store.kept(&stroke.before).await.expect("kept").as_deref(), Some("one"));
        assert_eq!(store.kept(&stroke.after).await.expect("kept").as_deref(), Some("two"));
        assert_eq!(store.kept(&hash("never")).await.expect("asked"), None);
    });
}

/// A new stroke after something was undone takes another way: what was undone is not done again by mistake.
#[test]
fn what_was_undone_is_forgotten_when_another_way_is_taken() {
    on_each("ways", |store, _| async move {
        made(&store, "one", "two").await;
        let second = made(&store, "two", "three").await;
        store.mark(&second, true).await.expect("undone");
        assert_eq!(undone(&store).await, [(1, false), (2, true)]);
        store.mark(&second, false).await.expect("done again");
        assert_eq!(undone(&store).await, [(1, false), (2, false)]);
        store.mark(&second, true).await.expect("undone");
        let other = made(&store, "two", "four").await;
        assert_eq!(other.number, 2);
        assert_eq!(undone(&store).await, [(1, false), (2, false)]);
        assert_eq!(store.kept(&hash("three")).await.expect("kept").as_deref(), Some("three"));
    });
}

#[test]
fn strokes_of_one_document_are_not_those_of_another() {
    on_each("apart", |store, _| async move {
        made(&store, "one", "two").await;
        assert_eq!(store.strokes(Kind::Trial, "rye").await.expect("none"), []);
        assert_eq!(store.strokes(Kind::Formula, "wheat").await.expect("none"), []);
    });
}
