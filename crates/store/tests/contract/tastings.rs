//! Sittings and answers: nothing lost, nothing doubled, nothing read too early, and what is removed is gone.

use crate::{Places, at, on_each, wait};
use store::{Answering, Cup, Kept, Kind, Laying, Saving, Sitting, Store, StoreFault};

const SAMPLES: i64 = 3;

/// The secret word of a seat's link.
fn word(seat: i64) -> String {
    format!("a word for seat {seat}")
}

/// A tasting of three samples at so many seats.
async fn laid(store: &Store, seats: i64) -> Sitting {
    store.save(&Saving { kind: Kind::Tasting, ..crate::formula("softer", "title = \"Softer\"") }).await.expect("saved");
    store.save(&crate::formula("rye", "title = \"Rye\"")).await.expect("saved");
    let cup = |seat: i64, place: i64| Cup { place, code: 100 + seat * 10 + place, sample: (seat + place) % SAMPLES };
    let seat = |seat: i64| (word(seat), (1..=SAMPLES).map(|place| cup(seat, place)).collect());
    let samples = (0..SAMPLES).map(|_| (Kind::Formula, "rye".to_owned(), 1)).collect();
    let laying = Laying { tasting: ("softer", 1), seed: "7", at: at(0), samples, seats: (1..=seats).map(seat).collect() };
    store.lay(&laying).await.expect("laid")
}

fn answering<'a>(seat: (i64, i64), item: &'a str, value: &'a str, client: &'a str) -> Answering<'a> {
    Answering { seat, item, value, client, at: at(9) }
}

#[test]
fn a_sitting_is_laid_and_its_links_lead_to_its_seats() {
    on_each("laid", |store, _| async move {
        let sitting = laid(&store, 4).await;
        assert_eq!(store.sitting("softer").await.expect("asked"), Some(sitting.clone()));
        for number in 1..=4 {
            let (found, seat) = store.seat_of(&word(number)).await.expect("asked").expect("a seat");
            assert_eq!((found.number, seat.number, seat.cups.len()), (sitting.number, number, 3));
            assert_ne!(seat.link, word(number), "the word itself is not kept");
        }
        assert_eq!(store.seat_of("another word").await.expect("asked"), None);
        let again = Laying { tasting: ("softer", 1), seed: "8", at: at(1), samples: Vec::new(), seats: Vec::new() };
        assert!(matches!(store.lay(&again).await, Err(StoreFault::StillOpen(_))));
        assert!(store.close_sitting(sitting.number, at(2)).await.expect("closed"));
        assert!(!store.close_sitting(sitting.number, at(3)).await.expect("asked"), "it is closed once");
        assert_eq!(store.lay(&again).await.expect("laid").number, sitting.number + 1);
    });
}

#[test]
fn nobody_answers_before_agreeing_nor_after_closing() {
    on_each("agree", |store, _| async move {
        let seat = (laid(&store, 2).await.number, 1);
        let one = answering(seat, "111", "7", "a");
        let refused = |why: StoreFault| matches!(why, StoreFault::NotTaken(_));
        assert!(refused(store.answer(&one).await.expect_err("not agreed")));
        assert!(refused(store.agree((seat.0, 9), at(1)).await.expect_err("no such seat")));
        store.agree(seat, at(1)).await.expect("agreed");
        store.agree(seat, at(2)).await.expect("again does no harm");
        assert_eq!(store.answer(&one).await.expect("kept"), Kept::New);
        store.close_sitting(seat.0, at(3)).await.expect("closed");
        assert!(refused(store.answer(&answering(seat, "112", "3", "b")).await.expect_err("closed")));
        assert!(refused(store.agree((seat.0, 2), at(4)).await.expect_err("closed")));
        assert_eq!(store.answers(seat.0).await.expect("answers").len(), 1);
    });
}

#[test]
fn an_answer_is_kept_once_and_a_correction_keeps_the_earlier_one() {
    on_each("once", |store, _| async move {
        let seat = (laid(&store, 1).await.number, 1);
        store.agree(seat, at(1)).await.expect("agreed");
        for (item, value, client, kept) in [
            ("111", "7", "a", Kept::New),
            ("111", "7", "a", Kept::Already),
            ("111", "7", "another telephone", Kept::Already),
            ("111", "4", "c", Kept::Corrected),
            ("111", "7", "a", Kept::Already),
            ("111", "7", "d", Kept::Corrected),
            ("112", "5", "e", Kept::New),
        ] {
            assert_eq!(store.answer(&answering(seat, item, value, client)).await.expect("kept"), kept, "{item} {value} {client}");
        }
        let used = store.answer(&answering(seat, "113", "1", "a")).await.expect_err("used");
        assert!(matches!(used, StoreFault::NotTaken(_)), "{used}");
        let own = store.answers_at(seat).await.expect("own");
        let told: Vec<_> = own.iter().map(|one| (one.item.as_str(), one.number, one.value.as_str())).collect();
        assert_eq!(told, [("111", 1, "7"), ("111", 2, "4"), ("111", 3, "7"), ("112", 1, "5")]);
    });
}

/// Ballots of paper are taken down all or none, and only taken ones say that somebody agreed.
#[test]
fn ballots_are_taken_all_or_none() {
    on_each("ballots", |store, _| async move {
        let sitting = laid(&store, 3).await.number;
        store.forget((sitting, 2), at(1)).await.expect("given up");
        let first = answering((sitting, 1), "111", "7", "a");
        let refused = store.answer_all(&[first, answering((sitting, 2), "111", "7", "b")]).await.expect_err("given up");
        assert!(matches!(refused, StoreFault::NotTaken(_)), "{refused}");
        assert!(store.progress(sitting).await.expect("a count").iter().all(|one| !one.agreed && one.answered == 0));
        let again = answering((sitting, 1), "111", "7", "c");
        let other = answering((sitting, 1), "111", "4", "d");
        let kept = store.answer_all(&[first, again, other, answering((sitting, 3), "111", "7", "e")]).await.expect("taken");
        assert_eq!(kept, [Kept::New, Kept::Already, Kept::Corrected, Kept::New]);
        store.close_sitting(sitting, at(2)).await.expect("closed");
        assert_eq!(store.answers(sitting).await.expect("answers").len(), 3);
        assert!(store.answer_all(&[answering((sitting, 3), "111", "8", "f")]).await.is_err());
    });
}

#[test]
fn results_are_not_read_before_closing() {
    on_each("early", |store, _| async move {
        let sitting = laid(&store, 3).await.number;
        store.agree((sitting, 2), at(1)).await.expect("agreed");
        store.answer(&answering((sitting, 2), "111", "7", "a")).await.expect("kept");
        assert!(matches!(store.answers(sitting).await, Err(StoreFault::StillOpen(name)) if name == "softer"));
        let progress = store.progress(sitting).await.expect("a count");
        let told: Vec<_> = progress.iter().map(|one| (one.seat, one.agreed, one.answered)).collect();
        assert_eq!(told, [(1, false, 0), (2, true, 1), (3, false, 0)]);
        store.close_sitting(sitting, at(2)).await.expect("closed");
        assert_eq!(store.answers(sitting).await.expect("answers").len(), 1);
    });
}

/// Sixty at once; every tenth sends everything twice at the same moment, three lose the network midway and send all again.
#[test]
fn sixty_tasters_at_once() {
    on_each("sixty", |store, _| async move {
        let sitting = laid(&store, 60).await.number;
        let taster = |number: i64, from: i64, to: i64| {
            let store = store.clone();
            async move {
                let seat = (sitting, number);
                store.agree(seat, at(number)).await.expect("agreed");
                for place in from..=to {
                    let (item, client) = (format!("{}", 100 + number * 10 + place), format!("{number}-{place}"));
                    let value = format!("{}", 1 + (number + place) % 9);
                    store.answer(&answering(seat, &item, &value, &client)).await.expect("kept");
                }
            }
        };
        let mut tasters = Vec::new();
        for number in 1..=60 {
            let is_cut_off = [7, 23, 41].contains(&number);
            tasters.push(tokio::spawn(taster(number, 1, if is_cut_off { 2 } else { SAMPLES })));
            if number % 30 == 0 {
                tasters.push(tokio::spawn(taster(number, 1, SAMPLES)));
            }
        }
        for taster in tasters {
            taster.await.expect("no panic");
        }
        for number in [7, 23, 41] {
            taster(number, 1, SAMPLES).await;
        }
        store.close_sitting(sitting, at(100)).await.expect("closed");
        let answers = store.answers(sitting).await.expect("answers");
        assert_eq!(answers.len(), 180);
        for one in &answers {
            let place = one.item.parse::<i64>().expect("a code") - 100 - one.seat * 10;
            assert_eq!((one.number, one.value.as_str()), (1, (1 + (one.seat + place) % 9).to_string().as_str()));
        }
    });
}

/// Many corrections of one answer at the same moment: each is kept, in some order, without a hole.
#[test]
fn corrections_at_once() {
    on_each("turns", |store, _| async move {
        let seat = (laid(&store, 1).await.number, 1);
        store.agree(seat, at(1)).await.expect("agreed");
        let corrections: Vec<_> = (0..8)
            .map(|n| {
                let store = store.clone();
                tokio::spawn(async move { store.answer(&answering(seat, "111", &n.to_string(), &n.to_string())).await })
            })
            .collect();
        for one in corrections {
            one.await.expect("no panic").expect("kept");
        }
        let numbers: Vec<i64> = store.answers_at(seat).await.expect("own").iter().map(|one| one.number).collect();
        assert_eq!(numbers, (1..=8).collect::<Vec<_>>());
    });
}

/// Whoever closes while others answer: what was acknowledged is in the result, nothing comes after.
#[test]
fn closing_while_they_answer() {
    on_each("closing", |store, _| async move {
        let sitting = laid(&store, 20).await.number;
        for number in 1..=20 {
            store.agree((sitting, number), at(1)).await.expect("agreed");
        }
        let tasters: Vec<_> = (1..=20)
            .map(|number| {
                let store = store.clone();
                tokio::spawn(async move { store.answer(&answering((sitting, number), "111", "7", "a")).await.is_ok() })
            })
            .collect();
        store.close_sitting(sitting, at(2)).await.expect("closed");
        let seen = store.answers(sitting).await.expect("answers").len();
        let mut acknowledged = 0;
        for taster in tasters {
            acknowledged += usize::from(taster.await.expect("no panic"));
        }
        assert_eq!(store.answers(sitting).await.expect("answers").len(), acknowledged);
        assert_eq!(seen, acknowledged);
    });
}

#[test]
fn a_taster_s_answers_are_removed_for_good() {
    const SECRET: &str = "this must not be found again";
    wait(async {
        let places = Places::new();
        for address in places.all("forget").await {
            let store = Store::open(&address).await.expect("a store");
            let sitting = laid(&store, 3).await.number;
            for number in 1..=3 {
                store.agree((sitting, number), at(1)).await.expect("agreed");
                let value = if number == 2 { SECRET } else { "7" };
                store.answer(&answering((sitting, number), "111", value, "a")).await.expect("kept");
            }
            assert_eq!(store.forget((sitting, 2), at(2)).await.expect("removed"), 1);
            let refused = store.answer(&answering((sitting, 2), "111", "1", "b")).await;
            assert!(matches!(refused, Err(StoreFault::NotTaken(_))));
            assert!(store.forget((sitting, 9), at(2)).await.is_err(), "no such seat");
            store.close_sitting(sitting, at(3)).await.expect("closed");
            let seats: Vec<i64> = store.answers(sitting).await.expect("answers").iter().map(|one| one.seat).collect();
            assert_eq!(seats, [1, 3]);
            let records = store.records().await.expect("records");
            assert!(!records.contains(SECRET) && records.contains("\"forgotten\":\"2"), "{records}");
            store.close().await;
            if let store::Address::File(file) = &address {
                let log = file.with_extension("sqlite-wal");
                for file in [file, &log].into_iter().filter(|file| file.exists()) {
                    let bytes = std::fs::read(file).expect("a file");
                    assert!(!bytes.windows(SECRET.len()).any(|part| part == SECRET.as_bytes()), "{}", file.display());
                }
            }
        }
    });
}

/// A whole history, tastings and all, from every database into every database.
#[test]
fn tastings_go_round() {
    wait(async {
        let places = Places::new();
        for (n, from) in places.all("tasted").await.into_iter().enumerate() {
            let from = Store::open(&from).await.expect("a store");
            let sitting = laid(&from, 3).await.number;
            for (seat, value) in [(1, "7"), (1, "é 🥖 ' -- "), (3, "2")] {
                from.agree((sitting, seat), at(seat)).await.expect("agreed");
                from.answer(&answering((sitting, seat), "111", value, value)).await.expect("kept");
            }
            from.forget((sitting, 3), at(5)).await.expect("removed");
            from.close_sitting(sitting, at(6)).await.expect("closed");
            laid_again(&from).await;
            let records = from.records().await.expect("records");
            for into in places.all(&format!("tasted_into{n}")).await {
                let into = Store::open(&into).await.expect("a store");
                into.read_records(&records).await.expect("read");
                assert_eq!(into.records().await.expect("records"), records);
                assert_eq!(into.answers(sitting).await.expect("answers"), from.answers(sitting).await.expect("answers"));
            }
        }
    });
}

async fn laid_again(store: &Store) {
    let seats = vec![("another".to_owned(), vec![Cup { place: 0, code: 0, sample: 0 }])];
    let laying = Laying { tasting: ("softer", 1), seed: "8", at: at(9), samples: Vec::new(), seats };
    store.lay(&laying).await.expect("laid");
}
