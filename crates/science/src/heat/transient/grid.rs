//! The cells of a body, from its lower or inner face to its upper or outer one.

/// How the area that heat crosses grows along the body.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shape {
    /// A disc, slab or tin: the same everywhere; the thickness is the whole.
    #[default]
    Slab,
    /// A stick or a long loaf, from its axis outwards; the thickness is the radius.
    Cylinder,
    /// A ball, from its centre outwards; the thickness is the radius.
    Sphere,
}

/// Cell width, and areas and volumes per area of the outer face.
pub(in crate::heat) struct Grid {
    pub width: f64,
    pub areas: Vec<f64>,
    pub volumes: Vec<f64>,
}

/// Fewer cells than this cannot show a profile.
const FEWEST: usize = 2;
/// More cells than this would take longer than anybody waits.
const MOST: usize = 512;

impl Grid {
    pub fn new(shape: Shape, thickness: f64, cells: u16) -> Self {
        let cells = usize::from(cells).clamp(FEWEST, MOST);
        let width = thickness / cells as f64;
        let power = match shape {
            Shape::Slab => 0,
            Shape::Cylinder => 1,
            Shape::Sphere => 2,
        };
        let share = |i: usize| i as f64 / cells as f64;
        let areas = (0..=cells).map(|i| share(i).powi(power)).collect();
        let within = |i: usize| thickness * share(i).powi(power + 1) / f64::from(power + 1);
        let volumes = (0..cells).map(|i| within(i + 1) - within(i)).collect();
        Self { width, areas, volumes }
    }

    pub fn cells(&self) -> usize {
        self.volumes.len()
    }

    /// The middle of a cell, from the lower or inner face.
    pub fn middle(&self, cell: usize) -> f64 {
        (cell as f64 + 0.5) * self.width
    }
}
