//! Orders of convergence, conservation of energy, and the same bits on repeat.

use crate::batter;
use quantity::*;
use science::heat::cook::{Piece, course};
use science::heat::griddle::{baked, immersed, kitchen, oven, turned};
use science::heat::*;

fn pan() -> Face {
    Face::Contact { transfer: HeatTransfer::watts_per_square_metre_kelvin(300.0), against: Temperature::celsius(139.0) }
}

fn cake() -> Piece {
    let density = Density::kilograms_per_cubic_metre(800.0);
    Piece::new(Length::millimetres(12.0), batter(), density, Temperature::celsius(22.0))
}

fn griddle_stages() -> Vec<cook::Stage> {
    turned(pan(), kitchen(Temperature::celsius(25.0)), &[TimeSpan::seconds(150.0); 2], TimeSpan::seconds(120.0))
}

/// The slab with Bi 10 below and 0.6 above at Fo 0.2; exact values by the series, computed with scipy 1.17.1.
#[test]
fn conduction_converges_with_the_square_of_the_cell() {
    let exact = [(0.25, 0.58807453), (0.5, 0.35823274), (0.75, 0.21015204)];
    let error = |cells: u16| {
        let solid = conduction::Solid {
            shape: Shape::Slab,
            thickness: Length::metres(1.0),
            cells,
            conductivity: Conductivity::watts_per_metre_kelvin(1.0),
            density: Density::kilograms_per_cubic_metre(1.0),
            heat: SpecificHeat::joules_per_kilogram_kelvin(1.0),
            start: Temperature::celsius(0.0),
        };
        let contact = |bi: f64, t: f64| Face::Contact {
            transfer: HeatTransfer::watts_per_square_metre_kelvin(bi),
            against: Temperature::celsius(t),
        };
        let after = conduction(&solid, [contact(10.0, 1.0), contact(0.6, 0.0)], TimeSpan::seconds(0.2));
        assert!(after.imbalance.abs() < 1e-9, "{}", after.imbalance);
        exact.iter().map(|(x, theta)| (after.at(Length::metres(*x)).as_celsius() - theta).abs()).fold(0.0, f64::max)
    };
    let order = libm::log2(error(8) / error(24)) / libm::log2(3.0);
    assert!(order > 1.8, "order {order}, errors {} and {}", error(8), error(24));
    assert!(error(48) < 0.001, "{}", error(48));
}

/// A moving evaporation front makes the first order of the grid, so each halving halves the change.
#[test]
fn a_cook_converges_on_its_grid() {
    let core = |cells: u16| {
        let course = course(&Piece { cells, ..cake() }, &griddle_stages());
        course.core_at(TimeSpan::seconds(300.0)).expect("recorded").as_celsius()
    };
    let (coarse, usual, fine, finest) = (core(24), core(48), core(96), core(192));
    assert!((usual - fine).abs() < 0.7 * (coarse - usual).abs(), "{coarse} {usual} {fine}");
    assert!((fine - finest).abs() < 0.7 * (usual - fine).abs(), "{usual} {fine} {finest}");
    assert!((usual - finest).abs() < 1.0, "{usual} {finest}");
}

#[test]
fn no_heat_is_lost() {
    let hot = oven(Temperature::celsius(220.0), HeatTransfer::watts_per_square_metre_kelvin(20.0));
    let tin = HeatTransfer::watts_per_square_metre_kelvin(25.0);
    let thick = Piece { thickness: Length::millimetres(60.0), ..cake() };
    let round = Piece { shape: Shape::Cylinder, ..cake() };
    let ball = Piece { shape: Shape::Sphere, crust: Crust::Free, pressure: Pressure::kilopascals(79.495), ..cake() };
    let oil = immersed(Temperature::celsius(180.0), TimeSpan::minutes(3.0));
    let cooks = [
        (cake(), griddle_stages()),
        (thick, baked(hot, tin, TimeSpan::minutes(45.0))),
        (cake(), oil.clone()),
        (round, oil.clone()),
        (ball, oil),
    ];
    for (piece, stages) in cooks {
        let course = course(&piece, &stages);
        assert!(course.imbalance.abs() < 1e-6, "{:e} {piece:?}", course.imbalance);
        assert!(course.loss.windows(2).all(|pair| pair[1] >= pair[0] - Fraction::percent(0.2)), "{piece:?}");
    }
}

#[test]
fn a_repeat_gives_the_same_bits() {
    assert_eq!(course(&cake(), &griddle_stages()), course(&cake(), &griddle_stages()));
}

/// A thick loaf by few cells and few moments: no step is so long that its middle swings below where it began or over the boil.
#[test]
fn a_coarse_thick_loaf_does_not_swing() {
    let loaf = Piece { shape: Shape::Cylinder, thickness: Length::millimetres(45.0), cells: 24, moments: 40, ..cake() };
    let air = griddle::oven(Temperature::celsius(220.0), HeatTransfer::watts_per_square_metre_kelvin(20.0));
    let stage = cook::Stage { lasts: TimeSpan::minutes(65.0), below: Face::Insulated, above: Face::Open(air) };
    for saturation in [0.0, 0.5, 1.0] {
        let coarse = cook::course(&Piece { saturation: Fraction::ratio(saturation), ..loaf }, &[stage]);
        let fine = cook::course(&Piece { saturation: Fraction::ratio(saturation), cells: 48, moments: 600, ..loaf }, &[stage]);
        for core in coarse.times.iter().filter_map(|time| coarse.core_at(*time)) {
            assert!(core >= loaf.start - TemperatureDifference::kelvins(0.5) && core.as_celsius() < 115.0, "{core:?}");
        }
        assert!(
            (coarse.core().as_celsius() - fine.core().as_celsius()).abs() < 3.0,
            "{saturation}: {:?} {:?}",
            coarse.core(),
            fine.core()
        );
    }
}
