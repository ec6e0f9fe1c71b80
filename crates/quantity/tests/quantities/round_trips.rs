//! What is printed reads back as the same, and conversions return to where they began.

use proptest::prelude::*;
use quantity::{
    Between, Count, Fraction, Kind, Length, Mass, Measure, Money, SpoonSystem, Temperature, TimeSpan, Unit, Volume, print,
};
use rust_decimal::Decimal;

/// Prints a figure in every way there is; nothing may panic.
pub fn print_everything(value: Between<f64>) {
    let one = value.from;
    let words = [
        print::number(one, 0),
        print::number(one, 3),
        print::mass(Mass::grams(one)),
        print::large_mass(Mass::grams(one)),
        print::ounces(Mass::grams(one)),
        print::volume(Volume::millilitres(one)),
        print::percent(Fraction::ratio(one), 1),
        print::bakers_percent(Fraction::ratio(one)),
        print::count(Count::pieces(one)),
        print::celsius(value.map(Temperature::celsius)),
        print::fahrenheit(value.map(Temperature::celsius)),
        print::time(value.map(TimeSpan::seconds)),
        print::length(value.map(Length::millimetres)),
        print::inches(value.map(Length::millimetres)),
        TimeSpan::seconds(one).iso_8601(),
    ];
    assert!(words.iter().all(|word| !word.is_empty()), "{value:?}: {words:?}");
    for system in SpoonSystem::ALL {
        let _ = print::spoons(Volume::millilitres(one), system);
    }
}

fn unit() -> impl Strategy<Value = Unit> {
    proptest::sample::select(Unit::ALL)
}

/// Two units of the same kind, temperatures left out: they are not multiples.
fn two_of_a_kind() -> impl Strategy<Value = (Unit, Unit)> {
    let multiples: Vec<Unit> = Unit::ALL.iter().copied().filter(|unit| unit.kind() != Kind::Temperature).collect();
    proptest::sample::select(multiples).prop_flat_map(|unit| {
        let alike: Vec<Unit> = Unit::ALL.iter().copied().filter(|other| other.kind() == unit.kind()).collect();
        (Just(unit), proptest::sample::select(alike))
    })
}

/// Any figure a measure may hold: from nothing up, and for temperatures below nothing too.
fn figure() -> impl Strategy<Value = f64> {
    prop_oneof![
        0.0..1e4_f64,
        (0_u32..100_000).prop_map(f64::from),
        proptest::num::f64::POSITIVE | proptest::num::f64::SUBNORMAL | proptest::num::f64::ZERO
    ]
    .prop_map(f64::abs)
}

proptest! {
    #[test]
    fn a_measure_reads_back_as_it_was_printed(a in figure(), b in figure(), single in any::<bool>(), below: bool, unit in unit()) {
        let (mut from, mut to) = if single { (a, a) } else { (a.min(b), a.max(b)) };
        if below && matches!(unit, Unit::Celsius | Unit::Fahrenheit) {
            (from, to) = (-to, -from);
        }
        let measure = Measure { value: Between { from, to }, unit };
        let printed = measure.to_string();
        prop_assert_eq!(printed.parse(), Ok(measure), "{}", printed);
    }

    #[test]
    fn what_was_read_reads_back_as_it_was_printed(text in "[-−]?[0-9]{1,4}([.,/½ ][0-9]{1,2})?( ?[-–] ?[0-9]{1,4})? ?(g|kg|tsp|cup|h|min|d|°C|%|in|)") {
        if let Ok(measure) = text.parse::<Measure>() {
            let printed = measure.to_string();
            prop_assert_eq!(printed.parse(), Ok(measure), "{} printed as {}", text, printed);
        }
    }

    #[test]
    fn any_text_is_read_or_refused_and_never_worse(text in "\\PC{0,40}") {
        let _ = text.parse::<Measure>();
        let _ = text.parse::<Money>();
        let _ = quantity::read_number(&text);
    }

    #[test]
    fn weights_convert_there_and_back(grams in 0.0..1e6_f64) {
        let mass = Mass::grams(grams);
        for back in [
            Mass::kilograms(mass.as_kilograms()), Mass::milligrams(mass.as_milligrams()), Mass::ounces(mass.as_ounces()), Mass::pounds(mass.as_pounds()),
        ] {
            prop_assert!((back.as_grams() - grams).abs() <= 4.0 * f64::EPSILON * grams);
        }
    }

    #[test]
    fn temperatures_convert_there_and_back(celsius in -273.15..1000.0_f64) {
        let temperature = Temperature::celsius(celsius);
        for back in [Temperature::fahrenheit(temperature.as_fahrenheit()), Temperature::kelvins(temperature.as_kelvins())] {
            prop_assert!((back.as_celsius() - celsius).abs() < 1e-9);
        }
    }

    #[test]
    fn a_unit_measures_the_same_written_in_another(value in 0.0..1e5_f64, (unit, other) in two_of_a_kind(), at in 0_usize..4) {
        let spoons = SpoonSystem::ALL[at];
        let there = value * unit.size(spoons) / other.size(spoons);
        let back = there * other.size(spoons) / unit.size(spoons);
        prop_assert!((back - value).abs() <= 4.0 * f64::EPSILON * value);
    }

    #[test]
    fn a_unit_is_known_by_the_symbol_it_is_printed_with(unit in unit()) {
        prop_assert_eq!(Unit::named(unit.symbol()), Some(unit));
    }

    #[test]
    fn money_reads_back_as_it_was_printed(digits in -1_000_000_000_i64..1_000_000_000, scale in 0_u32..8, currency in "[A-Z]{3}") {
        let money = Money { amount: Decimal::new(digits, scale), currency };
        prop_assert_eq!(money.to_string().parse(), Ok(money));
    }

    #[test]
    fn printing_never_panics(from in any::<f64>(), to in any::<f64>()) {
        print_everything(Between { from, to });
        print_everything(Between::just(from));
    }

    #[test]
    fn a_spoon_measure_is_off_by_no_more_than_it_says(millilitres in 0.3..3000.0_f64, at in 0_usize..4) {
        let system = SpoonSystem::ALL[at];
        if let Some((text, off)) = print::spoons(Volume::millilitres(millilitres), system) {
            let read: Measure = text.parse().expect("a printed spoon measure");
            let volume = read.volume(system).expect("a volume").from;
            let truly = volume.as_millilitres() / millilitres - 1.0;
            prop_assert!((truly - off.as_ratio()).abs() < 1e-9, "{} for {} ml is off by {}, not {}", text, millilitres, truly, off.as_ratio());
            prop_assert!(truly.abs() <= 0.1 + 1e-9);
        }
    }
}
