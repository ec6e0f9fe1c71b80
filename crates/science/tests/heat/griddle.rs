//! The griddle against an independent prototype in Python with NumPy: explicit steps of 0.03 s, no common code.
//!
//! A cross-check, not a reference: both are ours. It shows that the implicit steps, the tables and the
//! boiling line of this crate solve the equations that were written down.

use crate::{batter, lethal_minutes};
use quantity::*;
use science::heat::cook::{Piece, Stage, course};
use science::heat::griddle::{kitchen, turned};
use science::heat::*;

struct Variant {
    name: &'static str,
    /// Thickness in mm, pan in °C, contact in W/(m² K), both sides in s, density in kg/m³, start in °C,
    /// saturation of the bubbles, pressure in Pa.
    inputs: [f64; 9],
    /// Top at the flip, core and coldest cell off the pan in °C, water lost in percent, and the second at
    /// which every cell has had the equivalent of 2 min at 70 °C.
    prototype: [f64; 5],
}

const fn v(name: &'static str, inputs: [f64; 9], prototype: [f64; 5]) -> Variant {
    Variant { name, inputs, prototype }
}

/// Allowed differences, in the order of the prototype's figures.
const TOLERANCES: [f64; 5] = [1.5, 1.5, 1.5, 0.7, 10.0];

const VARIANTS: &[Variant] = &[
    v("base 2.5+2.5", [12.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [31.4, 88.3, 69.3, 5.7, 210.0]),
    v("2+2 min", [12.0, 139.0, 300.0, 120.0, 120.0, 800.0, 22.0, 0.5, 101325.0], [26.6, 83.4, 62.1, 4.1, 209.0]),
    v("3+3 min", [12.0, 139.0, 300.0, 180.0, 180.0, 800.0, 22.0, 0.5, 101325.0], [36.6, 91.5, 75.1, 7.2, 224.0]),
    v("4+4 min", [12.0, 139.0, 300.0, 240.0, 240.0, 800.0, 22.0, 0.5, 101325.0], [45.9, 95.3, 82.2, 10.3, 266.0]),
    v("h 200", [12.0, 139.0, 200.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [29.4, 83.6, 60.2, 3.0, 247.0]),
    v("h 450", [12.0, 139.0, 450.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [33.0, 91.4, 75.0, 8.8, 194.0]),
    v("h 650", [12.0, 139.0, 650.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [34.4, 93.4, 78.1, 11.3, 186.0]),
    v(
        "pure conduction (omega 0)",
        [12.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.0, 101325.0],
        [26.2, 71.8, 53.1, 4.0, f64::INFINITY],
    ),
    v("omega 1", [12.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 1.0, 101325.0], [35.1, 89.5, 73.9, 5.7, 196.0]),
    v("rho 1000", [12.0, 139.0, 300.0, 150.0, 150.0, 1000.0, 22.0, 0.5, 101325.0], [28.4, 78.7, 58.8, 4.2, 302.0]),
    v("rho 650", [12.0, 139.0, 300.0, 150.0, 150.0, 650.0, 22.0, 0.5, 101325.0], [37.2, 94.6, 81.3, 7.5, 178.0]),
    v("L 8 mm", [8.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [57.3, 97.3, 88.2, 10.2, 159.0]),
    v("L 10 mm", [10.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [42.3, 93.3, 79.3, 7.4, 177.0]),
    v("L 15 mm", [15.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.5, 101325.0], [23.9, 79.3, 58.3, 4.0, 301.0]),
    v("L 15 mm 4+4", [15.0, 139.0, 300.0, 240.0, 240.0, 800.0, 22.0, 0.5, 101325.0], [32.3, 90.1, 71.2, 7.6, 309.0]),
    v("L 20 mm 4+4", [20.0, 139.0, 300.0, 240.0, 240.0, 800.0, 22.0, 0.5, 101325.0], [23.0, 78.6, 57.4, 5.1, 465.0]),
    v("batter 5 C", [12.0, 139.0, 300.0, 150.0, 150.0, 800.0, 5.0, 0.5, 101325.0], [19.0, 84.9, 63.0, 4.8, 257.0]),
    v("pan 160 2+2", [12.0, 160.0, 300.0, 120.0, 120.0, 800.0, 22.0, 0.5, 101325.0], [27.7, 87.9, 69.5, 7.8, 180.0]),
    v("pan 175 2+1.5", [12.0, 175.0, 300.0, 120.0, 90.0, 800.0, 22.0, 0.5, 101325.0], [28.3, 86.7, 70.0, 8.8, 170.0]),
    v("pan 190 1.5+1", [12.0, 190.0, 300.0, 90.0, 60.0, 800.0, 22.0, 0.5, 101325.0], [24.0, 77.4, 67.3, 7.4, 157.0]),
    v("altitude 2000 m", [12.0, 139.0, 300.0, 150.0, 150.0, 800.0, 22.0, 0.5, 79495.0], [30.4, 84.5, 67.2, 7.9, 223.0]),
    v(
        "worst: omega 0 h200 rho1000 T0 5",
        [12.0, 139.0, 200.0, 150.0, 150.0, 1000.0, 5.0, 0.0, 101325.0],
        [13.6, 61.3, 42.7, 1.6, f64::INFINITY],
    ),
];

fn stages(inputs: &[f64; 9]) -> Vec<Stage> {
    let [_, pan, h, first, second, ..] = *inputs;
    let pan = Face::Contact { transfer: HeatTransfer::watts_per_square_metre_kelvin(h), against: Temperature::celsius(pan) };
    let sides = [first, second].map(TimeSpan::seconds);
    turned(pan, kitchen(Temperature::celsius(25.0)), &sides, TimeSpan::seconds(120.0))
}

fn piece(inputs: &[f64; 9]) -> Piece {
    let [thickness, _, _, _, _, density, start, saturation, pressure] = *inputs;
    let density = Density::kilograms_per_cubic_metre(density);
    Piece {
        saturation: Fraction::ratio(saturation),
        pressure: Pressure::pascals(pressure),
        ..Piece::new(Length::millimetres(thickness), batter(), density, Temperature::celsius(start))
    }
}

fn ours(inputs: &[f64; 9]) -> [f64; 5] {
    let course = course(&piece(inputs), &stages(inputs));
    let at = |seconds: f64| course.times.partition_point(|time| time.as_seconds() < seconds - 1e-9);
    let (flip, off) = (at(inputs[3]), at(inputs[3] + inputs[4]));
    let cells = course.cells[0].len();
    let treated = (0..cells).map(|cell| lethal_minutes(&course.cell(cell), 2.0)).fold(0.0, f64::max);
    [
        course.cells[flip][cells - 1].as_celsius(),
        course.core_at(course.times[off]).expect("recorded").as_celsius(),
        course.coldest().nth(off).expect("recorded").as_celsius(),
        course.loss[off].as_percent(),
        treated,
    ]
}

#[test]
fn every_variant_agrees_with_the_prototype() {
    let mut off = Vec::new();
    for variant in VARIANTS {
        let ours = ours(&variant.inputs);
        for ((ours, theirs), allowed) in ours.iter().zip(&variant.prototype).zip(TOLERANCES) {
            let agree = (ours.is_infinite() && theirs.is_infinite()) || (ours - theirs).abs() <= allowed;
            if !agree {
                off.push(format!("{}: {ours:.2} against {theirs}, allowed ±{allowed}", variant.name));
            }
        }
    }
    assert!(off.is_empty(), "{}", off.join("\n"));
}
