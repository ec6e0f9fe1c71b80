//! The long round loaf and the ball that heat through as slowly as a bar or a flat round piece.

use crate::{Equation, Standing};
use quantity::Length;
use std::f64::consts::PI;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::equal_radius",
    source: "carslaw-jaeger-1959",
    place: "first eigenvalues of sphere, cylinder, disc and rectangular bar",
    standing: Standing::Published,
    valid: &[],
};

/// The first zero of the Bessel function J₀.
const FIRST_ZERO: f64 = 2.404_825_557_695_773;

/// Returns the radius of the long cylinder whose slowest mode of conduction dies away as that of a long bar.
///
/// ```text
/// (j₀/R)² = (π/a)² + (π/b)²
/// ```
///
/// | symbol | meaning                        | unit |
/// |--------|--------------------------------|------|
/// | `R`    | radius of the cylinder         | mm   |
/// | `a`, `b` | width and height of the bar  | mm   |
/// | `j₀`   | first zero of J₀, 2.404 826    | –    |
///
/// Exact for the slowest mode with faces held at one temperature; Carslaw & Jaeger, Conduction of Heat in
/// Solids, 2nd ed., §5.6 and §7.6.
///
/// ```
/// # use quantity::Length;
/// let square = Length::millimetres(100.0);
/// let radius = science::heat::equal_radius::cylinder([square, square]);
/// assert_eq!(format!("{:.1} mm", radius.as_millimetres()), "54.1 mm");
/// ```
#[must_use]
pub fn cylinder([width, height]: [Length; 2]) -> Length {
    let (a, b) = (PI / width.as_millimetres(), PI / height.as_millimetres());
    Length::millimetres(FIRST_ZERO / libm::sqrt(a * a + b * b))
}

/// Returns the radius of the ball whose slowest mode of conduction dies away as that of a flat round piece.
///
/// ```text
/// (π/R)² = (π/h)² + (2·j₀/d)²
/// ```
///
/// | symbol | meaning                     | unit |
/// |--------|-----------------------------|------|
/// | `R`    | radius of the ball          | mm   |
/// | `h`    | height of the piece         | mm   |
/// | `d`    | its diameter                | mm   |
///
/// Exact as [`cylinder`] is.
///
/// ```
/// # use quantity::Length;
/// let radius = science::heat::equal_radius::sphere(Length::millimetres(42.0), Length::millimetres(80.0));
/// assert_eq!(format!("{:.1} mm", radius.as_millimetres()), "32.7 mm");
/// ```
#[must_use]
pub fn sphere(height: Length, diameter: Length) -> Length {
    let (a, b) = (PI / height.as_millimetres(), 2.0 * FIRST_ZERO / diameter.as_millimetres());
    Length::millimetres(PI / libm::sqrt(a * a + b * b))
}
