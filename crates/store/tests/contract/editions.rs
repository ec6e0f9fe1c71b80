//! Editions: what was published, and from which revisions.

use crate::{at, formula, on_each};
use store::{Kind, StoreFault};

#[test]
fn editions_are_numbered_and_keep_their_revisions() {
    on_each("editions", |store, _| async move {
        for text in ["one", "two"] {
            store.save(&formula("rye", text)).await.expect("saved");
        }
        store.save(&formula("wheat", "one")).await.expect("saved");
        let all = store.revisions().await.expect("all");
        let first = store.published(&all[..1], "spring", at(1)).await.expect("an edition");
        let second = store.published(&all[1..], "summer", at(2)).await.expect("an edition");
        assert_eq!((first.number, second.number), (1, 2));
        assert_eq!(second.parts, [(Kind::Formula, "rye".to_owned(), 2), (Kind::Formula, "wheat".to_owned(), 1)]);
        assert_eq!(store.editions().await.expect("editions"), [first, second]);
    });
}

/// An edition of what was never saved would be a claim without its ground.
#[test]
fn an_edition_of_what_is_not_there_is_refused_whole() {
    on_each("refused", |store, _| async move {
        store.save(&formula("rye", "one")).await.expect("saved");
        let mut all = store.revisions().await.expect("all");
        all.push(store::Revision { number: 9, ..all[0].clone() });
        assert!(matches!(store.published(&all, "", at(1)).await, Err(StoreFault::Refused(_))));
        assert_eq!(store.editions().await.expect("editions"), []);
    });
}
