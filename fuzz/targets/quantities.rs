//! Any text as a quantity: read, printed, read again the same; printing holds for any number.

#![no_main]

use libfuzzer_sys::fuzz_target;
use quantity::{Between, Count, Fraction, Length, Mass, Measure, Money, SpoonSystem, Temperature, TimeSpan, Volume, print};

fuzz_target!(|bytes: &[u8]| {
    if let Ok(text) = std::str::from_utf8(bytes) {
        measure(text);
        money(text);
        let _ = quantity::read_number(text);
        let _ = formula::read::Condition::read(text);
    }
    let number = |at: usize| bytes.get(at..at + 8).and_then(|eight| eight.try_into().ok()).map(f64::from_le_bytes);
    if let (Some(from), Some(to)) = (number(0), number(8)) {
        print_everything(Between { from, to });
        print_everything(Between::just(from));
    }
});

fn measure(text: &str) {
    let read = match text.parse::<Measure>() {
        Ok(read) => read,
        Err(fault) => {
            assert!(!fault.to_string().is_empty());
            return;
        }
    };
    assert!(read.value.from.is_finite() && read.value.to.is_finite(), "{text:?} is not finite");
    assert!(read.value.from <= read.value.to, "{text:?} runs backwards");
    let printed = read.to_string();
    assert_eq!(printed.parse(), Ok(read), "{text:?} printed as {printed:?}");
    for spoons in SpoonSystem::ALL {
        let kinds = [
            read.mass(spoons).is_some(),
            read.volume(spoons).is_some(),
            read.count(spoons).is_some(),
            read.time(spoons).is_some(),
            read.share(spoons).is_some(),
            read.length(spoons).is_some(),
            read.power(spoons).is_some(),
            read.temperature().is_some(),
        ];
        assert_eq!(kinds.iter().filter(|kind| **kind).count(), 1, "{text:?} is not one kind of quantity");
    }
    print_everything(read.value);
}

fn money(text: &str) {
    match text.parse::<Money>() {
        Ok(read) => {
            let printed = read.to_string();
            assert_eq!(printed.parse(), Ok(read), "{text:?} printed as {printed:?}");
        }
        Err(fault) => assert!(!fault.to_string().is_empty()),
    }
}

fn print_everything(value: Between<f64>) {
    let one = value.from;
    let words = [
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
    assert!(words.iter().all(|word| !word.is_empty()));
    for system in SpoonSystem::ALL {
        let _ = print::spoons(Volume::millilitres(one), system);
    }
}
