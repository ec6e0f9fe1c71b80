//! nutrition against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::{Fraction, Mass};
use science::entry::count;
use science::nutrition::printed::Printed;
use science::nutrition::{
    added_water, american_energy, american_rounding, american_tolerance, carbohydrate, cooking, european_energy,
    european_rounding, front_of_pack, reference_amounts, salt, serving, tolerance,
};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("nutrition::european_energy", european),
    ("nutrition::american_energy", american),
    ("nutrition::carbohydrate", carbohydrates),
    ("nutrition::salt", |at, output| match output {
        "salt" => salt::from_sodium(grams(at, "Na")).as_grams(),
        _ => salt::to_sodium(grams(at, "salt")).as_grams(),
    }),
    ("nutrition::cooking", cook),
    ("nutrition::added_water", |at, _| added_water::to_list(grams(at, "M"), grams(at, "m")).as_grams()),
    ("nutrition::european_rounding", round_european),
    ("nutrition::american_rounding", round_american),
    ("nutrition::tolerance", tolerate),
    ("nutrition::american_tolerance", |at, _| {
        use american_tolerance::{Group, true_to_label};
        let group = match at.word("group") {
            "added" => Group::Added,
            "nature" => Group::ByNature,
            _ => Group::ToLimit,
        };
        f64::from(u8::from(true_to_label(group, Fraction::percent(at.number("x")))))
    }),
    ("nutrition::front_of_pack", |at, _| {
        use front_of_pack::{Band, Nutrient, band};
        let nutrient = match at.word("nutrient") {
            "fat" => Nutrient::Fat,
            "saturates" => Nutrient::Saturates,
            "sugars" => Nutrient::Sugars,
            _ => Nutrient::Salt,
        };
        match band(nutrient, grams(at, "m")) {
            Some(Band::Low) => 0.0,
            Some(Band::Medium) => 1.0,
            Some(Band::High) => 2.0,
            None => f64::NAN,
        }
    }),
    ("nutrition::reference_amounts", |at, _| share(at).as_percent()),
    ("nutrition::serving", |at, output| match output {
        "pieces" => serving::pieces(grams(at, "m"), grams(at, "R")).pieces,
        _ => serving::in_pack(at.number("n")),
    }),
];

fn grams(at: &Inputs, symbol: &str) -> Mass {
    Mass::grams(at.number_or(symbol, 0.0))
}

fn european(at: &Inputs, output: &str) -> f64 {
    let energy = european_energy::energy(&european_energy::Contents {
        fat: grams(at, "fat"),
        carbohydrate: grams(at, "carbohydrate"),
        polyols: grams(at, "polyols"),
        erythritol: grams(at, "erythritol"),
        fibre: grams(at, "fibre"),
        protein: grams(at, "protein"),
        alcohol: grams(at, "alcohol"),
        organic_acids: grams(at, "acids"),
        salatrims: grams(at, "salatrims"),
    });
    if output == "kJ" { energy.kilojoules } else { energy.kilocalories }
}

fn american(at: &Inputs, _: &str) -> f64 {
    let serving = american_energy::Serving {
        fat: grams(at, "fat"),
        carbohydrate: grams(at, "carbohydrate"),
        insoluble_fibre: grams(at, "insoluble"),
        soluble_fibre: grams(at, "soluble"),
        protein: grams(at, "protein"),
        alcohol: grams(at, "alcohol"),
    };
    let less = at.number_or("less", 0.0) > 0.0;
    american_energy::energy(&serving, if less { american_energy::Method::LessFibre } else { american_energy::Method::General })
}

fn carbohydrates(at: &Inputs, output: &str) -> f64 {
    match output {
        "without" => carbohydrate::without_fibre(grams(at, "total"), grams(at, "fibre")),
        "with" => carbohydrate::with_fibre(grams(at, "european"), grams(at, "fibre")),
        _ => carbohydrate::by_difference(
            Mass::grams(100.0),
            &carbohydrate::Beside {
                water: grams(at, "water"),
                protein: grams(at, "protein"),
                fat: grams(at, "fat"),
                ash: grams(at, "ash"),
                alcohol: grams(at, "alcohol"),
            },
        ),
    }
    .as_grams()
}

fn cook(at: &Inputs, output: &str) -> f64 {
    match output {
        "share" => cooking::share_of_finished(grams(at, "m"), grams(at, "M")).as_percent(),
        "loss" => cooking::loss(grams(at, "raw"), grams(at, "finished")).as_percent(),
        _ => cooking::raw_for(Mass::pounds(at.number("finished")), Fraction::percent(at.number("loss"))).as_pounds(),
    }
}

fn line(at: &Inputs) -> european_rounding::Line {
    use european_rounding::Line;
    match at.word("line") {
        "fat" => Line::Fat,
        "fatty-acids" => Line::FattyAcids,
        "carbohydrate" => Line::Carbohydrate,
        "fibre" => Line::Fibre,
        "protein" => Line::Protein,
        "salt" => Line::Salt,
        _ => Line::Sodium,
    }
}

/// The figure if a figure is wanted and printed, the limit if that; else not a number.
fn figure(printed: Printed, output: &str) -> f64 {
    match (printed, output) {
        (Printed::LessThan { limit, .. }, "less_than") => limit,
        (Printed::Amount { value, .. }, "printed" | "trace" | "daily") => value,
        _ => f64::NAN,
    }
}

fn round_european(at: &Inputs, output: &str) -> f64 {
    use european_rounding::{Trace, print, print_energy, print_trace};
    let printed = match output {
        "trace" => print_trace(if at.word("figures") == "three" { Trace::Coarse } else { Trace::Fine }, at.number("x")),
        _ if at.word("line") == "energy" => print_energy(at.number("m")),
        _ => print(line(at), grams(at, "m")),
    };
    figure(printed, output)
}

fn round_american(at: &Inputs, output: &str) -> f64 {
    use american_rounding::{DailyValue, Line, print, print_daily_value};
    if output == "daily" {
        let of = if at.word("of") == "macro" { DailyValue::Macronutrient } else { DailyValue::VitaminOrMineral };
        let reference = reference_amounts::of(reference_amounts::Region::America, at.word("nutrient")).expect("a daily value");
        return figure(print_daily_value(of, reference_amounts::share(at.number("x"), reference)), output);
    }
    if output == "amount" {
        let daily = reference_amounts::of(reference_amounts::Region::America, at.word("nutrient")).expect("a daily value");
        return american_rounding::print_trace(daily, at.number("x")).value();
    }
    let line = match at.word("line") {
        "calories" => Line::Calories,
        "fat" => Line::Fat,
        "cholesterol" => Line::Cholesterol,
        "sodium" => Line::Sodium,
        _ => Line::Carbohydrate,
    };
    figure(print(line, at.number("x")), output)
}

fn tolerate(at: &Inputs, output: &str) -> f64 {
    if output == "tolerance" {
        return tolerance::either_way(line(at), grams(at, "m")).as_grams();
    }
    let trace = if at.word("trace") == "vitamin" { tolerance::Trace::Vitamin } else { tolerance::Trace::Mineral };
    let between = tolerance::of_trace(trace);
    if output == "least" { between.from.as_percent() } else { between.to.as_percent() }
}

fn share(at: &Inputs) -> Fraction {
    use reference_amounts::Region;
    let region = if at.word("region") == "europe" { Region::Europe } else { Region::America };
    reference_amounts::share(at.number("x"), reference_amounts::of(region, at.word("nutrient")).expect("a reference amount"))
}

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("nutrition", CASES)
}

#[test]
fn every_reference_of_nutrition_is_met() {
    rows();
}

/// The official specimen label of 2016 as it is printed: no decimals but those of little fat.
#[test]
fn an_american_label_prints_whole_figures() {
    use american_rounding::{Line, print};
    let printed = [
        (Line::Calories, 231.0, "230"),
        (Line::Fat, 8.2, "8"),
        (Line::Fat, 1.4, "1.5"),
        (Line::Cholesterol, 0.4, "0"),
        (Line::Cholesterol, 31.0, "30"),
        (Line::Sodium, 158.0, "160"),
        (Line::Carbohydrate, 37.3, "37"),
        (Line::Carbohydrate, 3.4, "3"),
    ];
    for (line, content, text) in printed {
        assert_eq!(print(line, content).to_string(), text, "{line:?} {content}");
    }
}

#[test]
fn every_entry_of_the_reference_amounts_is_read() {
    assert_eq!(reference_amounts::all().len(), count(reference_amounts::DATA, "amount"));
}

/// The words that formulas may choose are those of the list, and each has its amount.
#[test]
fn every_kind_of_food_has_its_customary_amount() {
    let names: Vec<&str> = serving::all().iter().map(|one| one.name.as_str()).collect();
    assert_eq!(names, serving::EATEN_AS);
    assert_eq!(serving::all().len(), count(serving::DATA, "amount"));
}

/// 21 CFR 101.9(b)(7): whole gram from five on, halves from two, tenths below; from memory.
#[test]
fn a_serving_is_printed_in_whole_gram() {
    for (grams, printed) in [(76.4, "76"), (55.5, "56"), (4.3, "4.5"), (3.9, "4"), (1.26, "1.3"), (1.0, "1")] {
        assert_eq!(serving::metric(grams).to_string(), printed, "{grams}");
    }
}

/// Regulation (EU) No 1169/2011, Annex XIII B lists no fibre; 21 CFR 101.9 no trans fat, no total sugars.
#[test]
fn what_has_no_reference_gets_no_percentage() {
    use reference_amounts::{Region, of};
    assert!(of(Region::Europe, "fibre").is_none());
    assert!(of(Region::America, "trans-fat").is_none());
    assert!(of(Region::America, "sugars").is_none());
}

/// Charging polyols once as carbohydrate and once as polyols would give 930 kJ and 222.6 kcal.
#[test]
fn polyols_are_not_counted_twice() {
    use european_energy::{Contents, energy};
    let g = Mass::grams;
    let food = Contents {
        fat: g(10.0),
        carbohydrate: g(20.0),
        polyols: g(4.0),
        protein: g(5.0),
        fibre: g(3.0),
        alcohol: g(2.0),
        organic_acids: g(1.0),
        ..Contents::default()
    };
    assert!((energy(&food).kilojoules - 862.0).abs() < 1e-9);
}

/// The kilocalories of a label are not its kilojoules divided by 4.184: 224 kcal would be 937 kJ, not 939.
#[test]
fn kilocalories_come_from_their_own_factors() {
    use european_energy::{Contents, energy};
    let g = Mass::grams;
    let cake = energy(&Contents { fat: g(9.2), carbohydrate: g(28.4), protein: g(6.3), fibre: g(1.1), ..Contents::default() });
    assert!((cake.kilojoules / cake.kilocalories - 4.184).abs() > 0.005);
}

/// The whole panel of a griddle cake as it is printed; rules as in the European guidance, Table 4.
#[test]
fn a_whole_panel_is_printed() {
    use european_rounding::{Line, print};
    let panel = [
        (Line::Fat, 9.2, "9.2"),
        (Line::FattyAcids, 4.37, "4.4"),
        (Line::Carbohydrate, 28.4, "28"),
        (Line::Carbohydrate, 6.02, "6.0"),
        (Line::Fibre, 1.1, "1.1"),
        (Line::Protein, 6.3, "6.3"),
        (Line::Salt, 0.62, "0.62"),
        (Line::Fat, 9.96, "10"),
        (Line::Salt, 0.996, "1.0"),
        (Line::FattyAcids, 0.10, "<0.1"),
        (Line::Salt, 0.0125, "<0.01"),
    ];
    for (line, content, text) in panel {
        assert_eq!(print(line, Mass::grams(content)).to_string(), text);
    }
    assert_eq!(print(Line::Fat, Mass::grams(f64::NAN)).to_string(), "not known");
}

/// 21 CFR 101.9(c)(1)(i)(F), from memory.
#[test]
fn sugar_alcohols_have_their_own_factors() {
    use american_energy::SugarAlcohol::*;
    let factors = [
        (Isomalt, 2.0),
        (Lactitol, 2.0),
        (Xylitol, 2.4),
        (Maltitol, 2.1),
        (Sorbitol, 2.6),
        (HydrogenatedStarchHydrolysate, 3.0),
        (Mannitol, 1.6),
        (Erythritol, 0.0),
    ];
    for (alcohol, factor) in factors {
        assert_eq!(alcohol.kilocalories_per_gram(), factor);
    }
}

/// Regulation (EU) No 1169/2011, Annex VII, Part A: up to 5 % of the finished food, added water may be left out of the
/// list; the biscuit's 25 g of 585 g may, the bread's 447 g of 1482 g may not.
#[test]
fn little_water_may_be_left_out() {
    assert_eq!(added_water::MAY_BE_LEFT_OUT.as_percent(), 5.0);
    let share = |finished, others| {
        let water = added_water::to_list(Mass::grams(finished), Mass::grams(others));
        cooking::share_of_finished(water, Mass::grams(finished))
    };
    assert!(share(585.0, 560.0) <= added_water::MAY_BE_LEFT_OUT);
    assert!((share(1482.0, 1035.0).as_percent() - 30.16).abs() < 0.005);
}
