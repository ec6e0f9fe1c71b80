//! Every way people type a figure, and what must be refused.

use crate::read;
use Unit::*;
use quantity::{Fault, Measure, Money, NumberFault, Unit};
use rust_decimal::Decimal;
use std::str::FromStr;

#[track_caller]
fn reads(text: &str, from: f64, to: f64, unit: Unit) {
    let measure = read(text);
    assert_eq!(measure.unit, unit, "{text:?}");
    assert!((measure.value.from - from).abs() <= 1e-12 * from.abs(), "{text:?}: {:?}", measure.value);
    assert!((measure.value.to - to).abs() <= 1e-12 * to.abs(), "{text:?}: {:?}", measure.value);
}

#[test]
fn weights() {
    // Common practice, no source: what recipes and cooks write. The decimal comma is the decimal marker of ISO 80000-1.
    let checks = [
        ("350 g", 350.0, Gram),
        ("350g", 350.0, Gram),
        (" 350  g ", 350.0, Gram),
        ("350\u{a0}g", 350.0, Gram),
        ("350 grams", 350.0, Gram),
        ("350 G", 350.0, Gram),
        ("0.3 g", 0.3, Gram),
        ("0,3 g", 0.3, Gram),
        (",5 g", 0.5, Gram),
        (".5 g", 0.5, Gram),
        ("0,125 g", 0.125, Gram),
        ("1.2 kg", 1.2, Kilogram),
        ("1.2kg", 1.2, Kilogram),
        ("2 KG", 2.0, Kilogram),
        ("2 kilos", 2.0, Kilogram),
        ("500 mg", 500.0, Milligram),
        ("2 oz", 2.0, Ounce),
        ("2 oz.", 2.0, Ounce),
        ("1 lb", 1.0, Pound),
        ("2 lbs", 2.0, Pound),
        ("1 pound", 1.0, Pound),
        ("10\u{a0}000 g", 10_000.0, Gram),
        ("10\u{2009}000 g", 10_000.0, Gram),
        ("10\u{202f}000 g", 10_000.0, Gram),
    ];
    for (text, value, unit) in checks {
        reads(text, value, value, unit);
    }
}

#[test]
fn spoons_pieces_percentages_temperatures_and_lengths() {
    // Common practice, no source.
    let checks = [
        ("250 ml", 250.0, Millilitre),
        ("250 mL", 250.0, Millilitre),
        ("2 cl", 2.0, Centilitre),
        ("1 l", 1.0, Litre),
        ("1 L", 1.0, Litre),
        ("1 1/2 tsp", 1.5, Teaspoon),
        ("1½ tsp", 1.5, Teaspoon),
        ("1 ½ tsp", 1.5, Teaspoon),
        ("½ tsp", 0.5, Teaspoon),
        ("1/2 tsp", 0.5, Teaspoon),
        ("1⁄2 tsp", 0.5, Teaspoon),
        ("1/4 teaspoon", 0.25, Teaspoon),
        ("⅓ cup", 1.0 / 3.0, Cup),
        ("2 2/3 cups", 8.0 / 3.0, Cup),
        ("1 cup", 1.0, Cup),
        ("2 Tbsp", 2.0, Tablespoon),
        ("2 tablespoons", 2.0, Tablespoon),
        ("1 fl oz", 1.0, FluidOunce),
        ("1 fl. oz.", 1.0, FluidOunce),
        ("3", 3.0, Piece),
        ("1/2", 0.5, Piece),
        ("1½", 1.5, Piece),
        ("3 pieces", 3.0, Piece),
        ("68 %", 68.0, Percent),
        ("68%", 68.0, Percent),
        ("2,5 %", 2.5, Percent),
        ("2.4 percent", 2.4, Percent),
        ("180 °C", 180.0, Celsius),
        ("180°C", 180.0, Celsius),
        ("180 C", 180.0, Celsius),
        ("180ºC", 180.0, Celsius),
        ("350 °F", 350.0, Fahrenheit),
        ("350F", 350.0, Fahrenheit),
        ("-18 °C", -18.0, Celsius),
        ("−18 °C", -18.0, Celsius),
        ("20 cm", 20.0, Centimetre),
        ("9 inch", 9.0, Inch),
    ];
    for (text, value, unit) in checks {
        reads(text, value, value, unit);
    }
}

#[test]
fn ranges() {
    // Common practice, no source; the en dash is the one that typesetters use for a range.
    let checks = [
        ("2-3 tbsp", 2.0, 3.0, Tablespoon),
        ("12–18 h", 12.0, 18.0, Hour),
        ("12 – 18 h", 12.0, 18.0, Hour),
        ("12 - 18h", 12.0, 18.0, Hour),
        ("12—18 h", 12.0, 18.0, Hour),
        ("12 to 18 h", 12.0, 18.0, Hour),
        ("20-22 °C", 20.0, 22.0, Celsius),
        ("-20 - -18 °C", -20.0, -18.0, Celsius),
        ("-5–5 °C", -5.0, 5.0, Celsius),
        ("½-¾ tsp", 0.5, 0.75, Teaspoon),
        ("1/2-3/4 tsp", 0.5, 0.75, Teaspoon),
        ("1 1/2-2 cups", 1.5, 2.0, Cup),
        ("2-3", 2.0, 3.0, Piece),
        ("0,3-0,5 g", 0.3, 0.5, Gram),
        ("5-5 g", 5.0, 5.0, Gram),
    ];
    for (text, from, to, unit) in checks {
        reads(text, from, to, unit);
    }
}

#[test]
fn times_of_several_parts() {
    // BIPM SI brochure (9th ed.), 5.4.3: time may be given in several units at once, as in 1 h 30 min.
    let checks = [
        ("1 h 30 min", 5400.0),
        ("1h30min", 5400.0),
        ("1 hour 30 minutes", 5400.0),
        ("1 d 2 h", 93_600.0),
        ("1 d 2 h 3 min 4 s", 93_784.0),
        ("90 min", 5400.0),
        ("1 1/2 h", 5400.0),
        ("1.5 h", 5400.0),
        ("45 s", 45.0),
        ("36 h", 129_600.0),
        ("2 min 30 s", 150.0),
    ];
    for (text, seconds) in checks {
        let time = read(text).time(Default::default()).unwrap_or_else(|| panic!("{text} is no time"));
        assert!((time.from.as_seconds() - seconds).abs() < 1e-9, "{text:?}: {time:?}");
    }
}

#[test]
fn what_could_mean_two_things_is_refused() {
    // ISO 80000-1, 7.3: neither the point nor the comma may part groups of digits, as each is a decimal sign somewhere.
    for text in ["1,000 g", "12,500 g", "1,000", "2,000-3,000 g", "1,000/2 g"] {
        assert_eq!(Measure::from_str(text), Err(Fault::Number(NumberFault::Ambiguous)), "{text:?}");
    }
    // A plain space may part groups, or two figures.
    for text in
        ["10 000 g", "1 000 g", "1 2 g", "1 h 30", "1h30", "1-1 h 30 min", "1 min 1 h", "1 h 1 h", "1 kg 200 g", "1 lb 2 oz"]
    {
        assert!(matches!(Measure::from_str(text), Err(Fault::UnknownUnit(_))), "{text:?}: {:?}", Measure::from_str(text));
    }
}

#[test]
fn what_is_no_figure_is_refused() {
    let number = |fault| Fault::Number(fault);
    let checks = [
        ("", number(NumberFault::Missing)),
        (" ", number(NumberFault::Missing)),
        ("g", number(NumberFault::Missing)),
        ("a pinch", number(NumberFault::Missing)),
        (".", number(NumberFault::Missing)),
        (",", number(NumberFault::Missing)),
        ("-", number(NumberFault::Missing)),
        ("--1 g", number(NumberFault::Missing)),
        ("2- g", number(NumberFault::Missing)),
        ("nan g", number(NumberFault::Missing)),
        ("inf g", number(NumberFault::Missing)),
        ("½½", Fault::UnknownUnit("½".into())),
        ("1/0 g", number(NumberFault::NotFinite)),
        ("1/0.0 g", number(NumberFault::NotFinite)),
        ("-1 g", Fault::Negative),
        ("-1", Fault::Negative),
        ("-1 %", Fault::Negative),
        ("-2-3 g", Fault::Negative),
        ("3-2 g", Fault::Backwards),
        ("-18 - -20 °C", Fault::Backwards),
        ("1-1/2 tsp", Fault::Backwards),
        ("1 gg", Fault::UnknownUnit("gg".into())),
        ("1e3 g", Fault::UnknownUnit("e3 g".into())),
        ("3 x 200 g", Fault::UnknownUnit("x 200 g".into())),
        ("200 g (7 oz)", Fault::UnknownUnit("g (7 oz)".into())),
        ("1 cup/2", Fault::UnknownUnit("cup/2".into())),
        ("5 K", Fault::UnknownUnit("K".into())),
    ];
    for (text, fault) in checks {
        assert_eq!(Measure::from_str(text), Err(fault), "{text:?}");
    }
    assert_eq!(Measure::from_str(&"9".repeat(400)), Err(Fault::Number(NumberFault::NotFinite)));
    assert!(Measure::from_str(&format!("{} d 1 s", "9".repeat(308))).is_err());
    assert!(Measure::from_str(&"1h".repeat(200_000)).is_err());
}

#[test]
fn money_is_a_decimal_and_three_letters() {
    // ISO 4217: a currency's code is three capital letters. What is written is kept to the last digit.
    for (text, amount, currency, printed) in [
        ("1.20 EUR", "1.20", "EUR", "1.20\u{a0}EUR"),
        ("EUR 1,20", "1.20", "EUR", "1.20\u{a0}EUR"),
        ("0.1 GBP", "0.1", "GBP", "0.1\u{a0}GBP"),
        ("1250 JPY", "1250", "JPY", "1250\u{a0}JPY"),
        ("1.20\u{a0}EUR", "1.20", "EUR", "1.20\u{a0}EUR"),
    ] {
        let money: Money = text.parse().unwrap_or_else(|fault| panic!("{text:?} was refused: {fault}"));
        assert_eq!(
            (money.amount, money.currency.as_str()),
            (Decimal::from_str(amount).expect("a decimal"), currency),
            "{text:?}"
        );
        assert_eq!(money.to_string(), printed);
    }
    for text in [
        "",
        "1.20",
        "EUR",
        "1.20 €",
        "1.20 eur",
        "1.20 EURO",
        "1.20 EUR 3",
        "one EUR",
        "1.2.3 EUR",
        "EUR GBP",
        "nan EUR",
        "1,000 EUR",
        "EUR 12,500",
        "1/2 EUR",
    ] {
        assert!(Money::from_str(text).is_err(), "{text:?} was taken");
    }
    // The trap of binary fractions: 0.1 + 0.2 is 0.3.
    let sum = Decimal::from_str("0.1").expect("a decimal") + Decimal::from_str("0.2").expect("a decimal");
    assert_eq!(sum.to_string(), "0.3");
}
