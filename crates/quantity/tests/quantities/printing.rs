//! Figures as they are printed, held against the SI brochure and ISO 8601.

use crate::read;
use quantity::{Between, Count, Fraction, Length, Mass, SpoonSystem, Temperature, TimeSpan, Volume, print};

#[test]
fn a_space_stands_between_number_and_symbol_percent_and_degrees_too() {
    // BIPM SI brochure (9th ed.), 5.4.3: a space always parts number and unit, for °C too; 5.4.7: and for %.
    // NIST SP 811, 7.2 says the same. The space does not break: common practice in typesetting.
    let celsius = |t: f64| Between::just(Temperature::celsius(t));
    let checks = [
        (print::mass(Mass::grams(350.0)), "350\u{a0}g"),
        (print::celsius(celsius(23.0)), "23\u{a0}°C"),
        (print::fahrenheit(celsius(23.0)), "73\u{a0}°F"),
        (print::percent(Fraction::percent(2.0), 1), "2\u{a0}%"),
        (print::volume(Volume::millilitres(250.0)), "250\u{a0}ml"),
        (print::length(Between::just(Length::centimetres(20.0))), "20\u{a0}cm"),
        (print::time(Between::just(TimeSpan::minutes(90.0))), "1\u{a0}h 30\u{a0}min"),
        (read("350g").to_string(), "350\u{a0}g"),
        (read("12-18h").to_string(), "12–18\u{a0}h"),
        (read("68%").to_string(), "68\u{a0}%"),
        (read("3").to_string(), "3"),
    ];
    for (printed, expected) in checks {
        assert_eq!(printed, expected);
    }
}

#[test]
fn digits_stand_in_groups_of_three_from_five_on() {
    // BIPM SI brochure (9th ed.), 5.4.4: groups of three parted by a thin space, neither points nor commas;
    // four digits need not be parted. ISO 80000-1, 7.3.2: a number below one has its zero.
    let checks = [
        (0.5, 1, "0.5"),
        (1234.0, 0, "1234"),
        (12_345.0, 0, "12\u{202f}345"),
        (1_234_567.0, 0, "1\u{202f}234\u{202f}567"),
        (0.25, 2, "0.25"),
        (2.0, 2, "2"),
        (-18.0, 0, "\u{2212}18"),
        (-0.01, 1, "0"),
        (100.0, 0, "100"),
        (100.0, 1, "100"),
    ];
    for (value, decimals, expected) in checks {
        assert_eq!(print::number(value, decimals), expected, "{value}");
    }
}

#[test]
fn ranges_take_an_en_dash_and_one_symbol() {
    let celsius = |from, to| Between { from: Temperature::celsius(from), to: Temperature::celsius(to) };
    let hours = |from, to| Between { from: TimeSpan::hours(from), to: TimeSpan::hours(to) };
    assert_eq!(print::celsius(celsius(180.0, 190.0)), "180–190\u{a0}°C");
    assert_eq!(print::time(hours(12.0, 18.0)), "12–18\u{a0}h");
    assert_eq!(print::time(hours(0.0, 24.0)), "0–24\u{a0}h");
    assert_eq!(print::time(hours(1.5, 2.5)), "1.5–2.5\u{a0}h");
    assert_eq!(print::celsius(celsius(20.0, 20.04)), "20\u{a0}°C", "a range that prints as one figure");
    // NIST SP 811, Appendix B.8: 350 °F is 176.7 °C; the page's oven figures go to the nearest five.
    assert_eq!(print::fahrenheit(celsius(180.0, 190.0)), "355–375\u{a0}°F");
}

#[test]
fn durations_are_those_of_iso_8601() {
    // ISO 8601-1, 5.5.2, as RFC 3339 Appendix A gives its grammar: P, then days, then T and hours, minutes, seconds;
    // at least one figure must follow the P and one the T.
    let checks = [
        (TimeSpan::minutes(20.0), "PT20M"),
        (TimeSpan::minutes(90.0), "PT1H30M"),
        (TimeSpan::hours(26.0), "P1DT2H"),
        (TimeSpan::hours(36.0), "P1DT12H"),
        (TimeSpan::days(2.0), "P2D"),
        (TimeSpan::seconds(45.0), "PT45S"),
        (TimeSpan::seconds(90.0), "PT1M30S"),
        (TimeSpan::seconds(3601.0), "PT1H1S"),
        (TimeSpan::ZERO, "PT0S"),
        (TimeSpan::seconds(-5.0), "PT0S"),
        (TimeSpan::seconds(0.4), "PT0S"),
        (TimeSpan::minutes(20.0) + TimeSpan::minutes(30.0), "PT50M"),
    ];
    for (span, expected) in checks {
        assert_eq!(span.iso_8601(), expected);
    }
}

#[test]
fn no_duration_is_left_empty() {
    for seconds in (0..200_000).step_by(7) {
        let text = TimeSpan::seconds(f64::from(seconds)).iso_8601();
        assert!(text.starts_with('P') && text.len() > 2 && !text.ends_with('T') && !text.ends_with('P'), "{text}");
        assert!(!text.contains("PT") || text.len() > 3, "{text}");
    }
}

#[test]
fn counts_and_spoons_take_the_common_fractions() {
    // Common practice, no source: measuring sets hold these fractions of a cup and a spoon.
    for (pieces, expected) in
        [(2.0, "2"), (1.5, "1½"), (0.25, "¼"), (1.0 / 3.0, "⅓"), (2.75, "2¾"), (0.125, "⅛"), (0.0, "0"), (1.2, "1.2")]
    {
        assert_eq!(print::count(Count::pieces(pieces)), expected);
    }
    let cup = SpoonSystem::UsCustomary.cup();
    for (volume, expected) in [
        (cup, "1\u{a0}cup"),
        (cup * 0.5, "½\u{a0}cup"),
        (cup * 1.75, "1¾\u{a0}cups"),
        (SpoonSystem::UsCustomary.teaspoon() * 0.5, "½\u{a0}tsp"),
    ] {
        let (text, off) = print::spoons(volume, SpoonSystem::UsCustomary).expect("a measure that a kitchen has");
        assert_eq!(text, expected);
        assert!(off.abs() < Fraction::percent(1e-9), "{text} is off by {off:?}");
    }
}

#[test]
fn printing_holds_for_any_number_there_is() {
    let numbers = [
        0.0,
        -0.0,
        1e-320,
        1e-9,
        0.999_999_9,
        1e15,
        1e300,
        f64::MAX,
        f64::MIN,
        f64::MIN_POSITIVE,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::NAN,
    ];
    for from in numbers {
        for to in numbers {
            crate::round_trips::print_everything(Between { from, to });
        }
    }
}
