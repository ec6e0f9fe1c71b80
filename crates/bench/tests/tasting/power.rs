//! Power and panel sizes against panels that are made up: within what chance allows.

use crate::{code, found, in_order, odd, tasting};
use bench::tasting::{Finding, advise};
use science::sensory::blind_code::Chance;

const PANELS: usize = 2000;

/// A number from 0 up to 1.
fn even(chance: &mut Chance) -> f64 {
    (chance.bits() >> 11) as f64 / (1_u64 << 53) as f64
}

/// Four standard errors of a share over all made-up panels.
fn allowed(share: f64) -> f64 {
    4.0 * (share * (1.0 - share) / PANELS as f64).sqrt()
}

/// Each taster tells the odd one with a chance, and guesses otherwise.
#[test]
fn triangles_find_as_often_as_is_said() {
    for (tell, panel) in [("50 %", 12), ("40 %", 24), ("30 %", 42)] {
        let triangle = tasting("triangle", 2, &format!("tell = \"{tell}\""));
        let share = triangle.tell.as_ratio();
        let mut chance = Chance::seeded(11);
        let (mut seen, mut said) = (0, 0.0);
        for _ in 0..PANELS {
            let right: Vec<bool> = (0..panel).map(|_| even(&mut chance) < share || even(&mut chance) < 1.0 / 3.0).collect();
            let Finding::Choice(choice) = found(&triangle, panel, |n, seat, _| odd(seat, right[n])).finding else { panic!() };
            seen += usize::from(choice.chance <= triangle.risk);
            said = choice.power.as_ratio();
        }
        let seen = seen as f64 / PANELS as f64;
        assert!((seen - said).abs() <= allowed(said), "{tell} of {panel}: said {said}, seen {seen}");
    }
}

/// The panel that is advised for points finds the difference as often as is said; Student's test, as is said.
#[test]
fn points_find_as_often_as_is_said() {
    let liking = tasting("liking", 2, "apart = 1");
    let advice = advise(&liking).expect("a panel");
    let mut chance = Chance::seeded(12);
    let normal = |chance: &mut Chance| (0..12).map(|_| even(chance)).sum::<f64>() - 6.0;
    let mut seen = 0;
    for _ in 0..PANELS {
        let first: Vec<f64> = (0..advice.seats).map(|_| 1.0 + 2.0 * normal(&mut chance)).collect();
        let nought = vec![0.0; first.len()];
        seen += usize::from(science::sensory::hedonic::paired(&first, &nought).chance <= liking.risk);
    }
    let (seen, said) = (seen as f64 / PANELS as f64, advice.power.as_ratio());
    assert!((seen - said).abs() <= allowed(said) + 0.005, "said {said}, seen {seen}");
}

/// Where nobody tells anything, no test finds something more often than its risk says.
#[test]
fn nothing_is_found_where_nothing_is() {
    let mut chance = Chance::seeded(13);
    let ranking = tasting("ranking", 4, "expected = [\"s0\", \"s1\", \"s2\", \"s3\"]");
    let pair = tasting("preference", 2, "");
    let (mut differ, mut rise, mut preferred) = (0, 0, 0);
    for _ in 0..PANELS {
        let mut rows: Vec<Vec<usize>> = vec![vec![1, 2, 3, 4]; 8];
        rows.iter_mut().for_each(|row| chance.shuffle(row));
        let Finding::Order(order) = found(&ranking, 8, |n, seat, _| in_order(seat, &rows[n])).finding else { panic!() };
        differ += usize::from(order.chance <= ranking.risk);
        rise += usize::from(order.expected.expect("expected").chance <= ranking.risk);
        let votes: Vec<usize> = (0..24).map(|_| chance.below(2)).collect();
        let Finding::Choice(choice) = found(&pair, 24, |n, seat, _| code(seat, votes[n])).finding else { panic!() };
        preferred += usize::from(choice.chance <= pair.risk);
    }
    for (what, found) in [("ranking", differ), ("trend", rise), ("preference", preferred)] {
        let seen = found as f64 / PANELS as f64;
        assert!(seen <= 0.05 + allowed(0.05), "{what}: {seen}");
    }
}
