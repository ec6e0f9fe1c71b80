//! What scales can show, by the rectangular distribution of JCGM 100:2008 (GUM) 4.3.7 and F.2.2.1.

use bench::weighing::{smallest_batch, solution, weigh};
use formula::read::{Kitchen, Scale};
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::{Mass, SpoonSystem};

fn dough(lines: &str) -> Formula {
    let text = format!(
        "title = \"Dough\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"mix\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n{lines}"
    );
    let files = [("formulas/dough.toml".to_owned(), Source { file: "formulas/dough.toml".into(), text })].into();
    Book::open(BookText { files }).value.formula("dough").expect("the dough").value
}

fn kitchen(steps: &[(f64, f64)]) -> Kitchen {
    let scale =
        |(shows, up_to): &(f64, f64)| Scale { title: String::new(), shows: Mass::grams(*shows), up_to: Mass::grams(*up_to) };
    Kitchen { scales: steps.iter().map(scale).collect(), ..Kitchen::assumed() }
}

#[track_caller]
fn close(got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{got} is not {expected} ± {tolerance}");
}

/// 5 g on a scale in steps of 1 g is uncertain by 5.77 %, 250 g by 0.115 %; on 0.1 g steps 5 g by 0.577 %.
#[test]
fn uncertainty_of_a_reading() {
    let formula = dough("flour-bread = \"250 g\"\nsalt = \"5 g\"\n");
    let coarse = weigh(&formula, &kitchen(&[(1.0, 5000.0)]), SpoonSystem::Metric);
    close(coarse[0].uncertainty.as_percent(), 0.115, 0.0005);
    close(coarse[1].uncertainty.as_percent(), 5.77, 0.005);
    let fine = weigh(&formula, &kitchen(&[(0.1, 500.0)]), SpoonSystem::Metric);
    close(fine[1].uncertainty.as_percent(), 0.577, 0.0005);
}

/// Each line goes on the coarsest scale that is fine enough for it and can carry it.
#[test]
fn the_right_scale_for_each_line() {
    let formula = dough("flour-bread = \"1000 g\"\nsalt = \"20 g\"\nyeast-instant = \"3 g\"\n");
    let weighed = weigh(&formula, &kitchen(&[(0.1, 500.0), (1.0, 5000.0)]), SpoonSystem::Metric);
    let steps: Vec<f64> = weighed.iter().map(|one| one.scale.shows.as_grams()).collect();
    assert_eq!(steps, [1.0, 1.0, 0.1]);
    assert!(weighed.iter().all(|one| one.remedy.is_none()));
}

#[test]
fn a_tenth_of_a_gram_needs_a_remedy() {
    let formula = dough("flour-bread = \"300 g\"\nwater = \"200 g\"\nyeast-instant = \"0.3 g\"\n");
    let weighed = weigh(&formula, &kitchen(&[(1.0, 5000.0)]), SpoonSystem::Metric);
    let yeast = &weighed[2];
    assert_eq!(yeast.shown, Mass::ZERO, "the display shows nothing");
    let remedy = yeast.remedy.as_ref().expect("a remedy");
    let solution = remedy.solution.as_ref().expect("yeast can be stirred up");
    // 10 g in 323 g of water; 10 g of those 333 g hold 10 · 10 / 333 g.
    assert_eq!((solution.weigh, solution.water, solution.take), (Mass::grams(10.0), Mass::grams(323.0), Mass::grams(10.0)));
    close((solution.take - solution.water_taken).as_grams(), 100.0 / 333.0, 1e-12);
    close(solution.water_taken.as_grams(), 10.0 - 100.0 / 333.0, 1e-12);
}

/// Without water in the stage there is nothing to stir it into.
#[test]
fn no_water_no_solution() {
    let formula = dough("flour-bread = \"300 g\"\nyeast-instant = \"0.3 g\"\n");
    let weighed = weigh(&formula, &kitchen(&[(1.0, 5000.0)]), SpoonSystem::Metric);
    assert!(weighed[1].remedy.as_ref().expect("a remedy").solution.is_none());
}

/// Ten times in water and a tenth of it, where the scale can show the amount at all.
#[test]
fn ten_times_in_water() {
    let fine = solution(Mass::grams(0.3), Mass::grams(0.1));
    close(fine.weigh.as_grams(), 3.0, 1e-9);
    close(fine.water.as_grams(), 27.0, 1e-9);
    close(fine.take.as_grams(), 3.0, 1e-9);
    close((fine.take - fine.water_taken).as_grams(), 0.3, 1e-9);
    for grams in [0.07, 0.13, 0.86, 1.34, 2.0, 4.9] {
        let solution = solution(Mass::grams(grams), Mass::grams(1.0));
        close((solution.take - solution.water_taken).as_grams() / grams, 1.0, 0.01);
    }
}

/// Half a display step is then a twentieth of the amount.
#[test]
fn the_smallest_batch_for_five_percent() {
    close(smallest_batch(Mass::grams(2.0), Mass::grams(1.0)), 5.0, 1e-12);
    close(smallest_batch(Mass::grams(40.0), Mass::grams(1.0)), 1.0, 1e-12);
}
