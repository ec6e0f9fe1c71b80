//! Answers are read, or refused in words; only whole sheets are reckoned with.

use crate::{answered, in_order, odd, tasting};
use bench::tasting::{Finding, Sheet, Wrong, find, lay, read};
use proptest::prelude::*;

#[test]
fn what_is_no_answer_is_refused() {
    let ranking = tasting("ranking", 3, "");
    let seat = &lay(ranking.method, 3, 1, 7)[0];
    let codes: Vec<String> = seat.cups.iter().map(|cup| cup.code.to_string()).collect();
    let [a, b, c] = &codes[..] else { panic!("three cups") };
    let said = |value: &str| read(&ranking, seat, "rank", value);
    assert_eq!(said(&format!("{b} {a} {c}")), Ok(vec![(1, 0, 1), (0, 0, 2), (2, 0, 3)]));
    assert_eq!(said(&format!("{b} {a}")), Err(Wrong::NotAll));
    assert_eq!(said(&format!("{b} {a} {a}")), Err(Wrong::NotAll));
    assert_eq!(
        said(&format!("{b} {a} 999")),
        Err(Wrong::NoSuchCup("999".to_owned(), seat.cups.iter().map(|cup| cup.code).collect()))
    );
    assert_eq!(said(&format!("{b}={a} {c}")), Err(Wrong::Tied));
    assert_eq!(read(&ranking, seat, "chosen", a), Err(Wrong::NotAsked));
    let with_ties = tasting("ranking", 3, "ties = true");
    assert_eq!(read(&with_ties, seat, "rank", &format!("{b}={a} {c}")), Ok(vec![(1, 0, 1), (0, 0, 1), (2, 0, 3)]));
    let liking = tasting("liking", 3, "");
    for (value, is_one) in [("1", true), ("9", true), ("0", false), ("10", false), ("7.5", false), ("", false)] {
        assert_eq!(read(&liking, seat, a, value).is_ok(), is_one, "{value}");
    }
    let triangle = tasting("triangle", 2, "");
    let seat = &lay(triangle.method, 2, 1, 7)[0];
    assert_eq!(read(&triangle, seat, "chosen", ""), Err(Wrong::NotOne), "a choice is forced");
    let there: Vec<String> = seat.cups.iter().map(|cup| cup.code.to_string()).collect();
    let none = read(&triangle, seat, "chosen", "999").expect_err("it does not stand there");
    assert_eq!(none.at(4), format!("no cup 999 stands at seat 4; there stand {}", there.join(", ")));
    let none = read(&liking, &lay(liking.method, 3, 1, 7)[0], "999", "5").expect_err("it does not stand there");
    assert!(none.at(1).starts_with("no cup 999 stands at seat 1; "));
}

/// Whoever answers in part is counted, and not reckoned with.
#[test]
fn sheets_in_part_are_left_out() {
    let liking = tasting("liking", 2, "");
    let seats = lay(liking.method, 2, 8, 7);
    let mut sheets = answered(&liking, &seats, |_, seat, item| if item == crate::code(seat, 0) { "8" } else { "5" }.to_owned());
    sheets[3].cups[1].answers[0] = None;
    sheets[5] = Sheet::empty(&liking, 6, &seats[5]);
    let found = find(&liking, &sheets);
    assert_eq!((found.seats, found.whole, found.in_part), (8, 6, 1));
    let Finding::Points(points) = found.finding else { panic!("points") };
    assert_eq!((points[0].tasters, points[0].pairs[0].more), (6, 0));
}

#[test]
fn nobody_answered() {
    let triangle = tasting("triangle", 2, "");
    let sheets: Vec<Sheet> =
        lay(triangle.method, 2, 6, 7).iter().zip(1..).map(|(seat, n)| Sheet::empty(&triangle, n, seat)).collect();
    assert_eq!(find(&triangle, &sheets).finding, Finding::Nothing);
    assert_eq!(find(&triangle, &[]).finding, Finding::Nothing);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever is sent in, nothing panics, and a seat tells of no cup twice.
    #[test]
    fn anything_may_be_sent(value in "[0-9= ]{0,16}|\\PC{0,12}", item in "rank|chosen|[0-9]{3}|\\PC{0,8}", seed: u64) {
        for (method, samples) in [("ranking", 4), ("triangle", 2), ("duo-trio", 2), ("liking", 3), ("description", 2)] {
            let tasting = tasting(method, samples, "");
            let seat = &lay(tasting.method, samples, 1, seed)[0];
            if let Ok(read) = read(&tasting, seat, &item, &value) {
                prop_assert!(read.iter().all(|(cup, ..)| *cup < seat.cups.len()));
            }
        }
    }

    /// What the answers say does not hang on the order in which seats come.
    #[test]
    fn the_order_of_seats_says_nothing(right in prop::collection::vec(any::<bool>(), 6..30), turn in 0_usize..30) {
        let triangle = tasting("triangle", 2, "");
        let seats = lay(triangle.method, 2, right.len(), 7);
        let sheets = answered(&triangle, &seats, |number, seat, _| odd(seat, right[number]));
        let mut turned = sheets.clone();
        turned.rotate_left(turn % right.len());
        prop_assert_eq!(find(&triangle, &sheets), find(&triangle, &turned));
    }
}

#[test]
fn ranks_that_are_shared_are_reckoned_with() {
    let ranking = tasting("ranking", 3, "ties = true");
    let seats = lay(ranking.method, 3, 6, 7);
    let sheets = answered(&ranking, &seats, |_, seat, _| in_order(seat, &[1, 1, 3]));
    let Finding::Order(order) = find(&ranking, &sheets).finding else { panic!("ranks") };
    assert_eq!(order.sums, [9.0, 9.0, 18.0]);
    assert_eq!((order.pairs[0].before, order.pairs[0].of), (0, 0));
}
