//! Revisions: nothing is lost, nothing is overwritten, nothing is saved twice.

use crate::{at, formula, on_each};
use store::{Kind, Saved, Saving, StoreFault};

#[test]
fn what_is_saved_is_read_again() {
    on_each("read", |store, _| async move {
        let texts =
            ["title = \"Rye\"\n", "title = \"Rye, darker\"\n", "title = \"Roggen é 🥖 'quoted' -- ; DROP TABLE text\"\r\n"];
        for (n, text) in texts.into_iter().enumerate() {
            let saving = Saving { note: "darker", by: "Ada", at: at(n as i64), ..formula("rye", text) };
            let Saved::New(one) = store.save(&saving).await.expect("saved") else { panic!("it is new") };
            assert_eq!((one.number, one.by.as_str(), one.at), (n as i64 + 1, "Ada", at(n as i64)));
        }
        let history = store.history(Kind::Formula, "rye").await.expect("a history");
        assert_eq!(history.iter().map(|one| one.number).collect::<Vec<_>>(), [1, 2, 3]);
        for (one, text) in history.iter().zip(texts) {
            assert_eq!(store.text(Kind::Formula, "rye", one.number).await.expect("a text"), text);
        }
        assert_eq!(store.latest(Kind::Formula, "rye").await.expect("a revision"), history.last().cloned());
    });
}

#[test]
fn the_same_text_is_no_new_revision_and_stands_once() {
    on_each("same", |store, _| async move {
        let first = store.save(&formula("rye", "a = 1")).await.expect("saved");
        let again = store.save(&Saving { at: at(9), note: "again", ..formula("rye", "a = 1") }).await.expect("saved");
        let (Saved::New(first), Saved::Unchanged(again)) = (first, again) else { panic!("new, then unchanged") };
        assert_eq!(first, again);
        store.save(&formula("wheat", "a = 1")).await.expect("saved");
        let records = store.records().await.expect("records");
        assert_eq!(records.matches("\"body\"").count(), 1, "{records}");
    });
}

/// SHA-256 of "abc", FIPS 180-2 appendix B.1.
#[test]
fn a_text_is_named_by_its_sha_256() {
    on_each("hash", |store, _| async move {
        let Saved::New(one) = store.save(&formula("abc", "abc")).await.expect("saved") else { panic!("it is new") };
        assert_eq!(one.hash, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    });
}

#[test]
fn kinds_and_names_are_kept_apart() {
    on_each("apart", |store, _| async move {
        for kind in Kind::ALL {
            store.save(&Saving { kind, ..formula("one", kind.word()) }).await.expect("saved");
        }
        for kind in Kind::ALL {
            assert_eq!(store.text(kind, "one", 1).await.expect("a text"), kind.word());
        }
        assert_eq!(store.revisions().await.expect("all").len(), Kind::ALL.len());
    });
}

/// Two who began from the same revision: the second is told, and loses nothing.
#[test]
fn a_later_revision_is_not_overwritten() {
    on_each("meanwhile", |store, _| async move {
        store.save(&formula("rye", "first")).await.expect("saved");
        store.save(&Saving { from: Some(1), ..formula("rye", "hers") }).await.expect("saved");
        let why = store.save(&Saving { from: Some(1), ..formula("rye", "his") }).await.expect_err("told");
        assert!(matches!(&why, StoreFault::SavedMeanwhile { latest: 2, .. }), "{why}");
        assert_eq!(store.text(Kind::Formula, "rye", 2).await.expect("a text"), "hers");
        store.save(&Saving { from: Some(2), ..formula("rye", "his") }).await.expect("saved");
    });
}

/// Many at once on one document: each is either saved or told, and the numbers have no hole.
#[test]
fn many_at_once() {
    on_each("many", |store, _| async move {
        let savers: Vec<_> = (0..24)
            .map(|n| {
                let store = store.clone();
                tokio::spawn(async move { store.save(&formula("rye", &format!("version {n}"))).await })
            })
            .collect();
        let mut saved = 0;
        for saver in savers {
            match saver.await.expect("no panic") {
                Ok(Saved::New(_)) => saved += 1,
                Ok(Saved::Unchanged(one)) => panic!("{one:?}"),
                Err(StoreFault::SavedMeanwhile { .. }) => {}
                Err(why) => panic!("{why}"),
            }
        }
        let numbers: Vec<i64> =
            store.history(Kind::Formula, "rye").await.expect("a history").iter().map(|one| one.number).collect();
        assert_eq!(numbers, (1..=saved).collect::<Vec<_>>());
        assert!(saved >= 1);
    });
}

#[test]
fn what_is_not_there_is_told() {
    on_each("nothing", |store, _| async move {
        assert_eq!(store.latest(Kind::Trial, "none").await.expect("an answer"), None);
        let why = store.text(Kind::Formula, "rye", 7).await.expect_err("none");
        assert_eq!(why.to_string(), "there is no revision 7 of the formula “rye”");
    });
}
