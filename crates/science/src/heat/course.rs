//! The course of a cook: temperatures of every cell and face, water lost, and the balance of heat.

use super::cook::Piece;
use super::transient::crumb::Crumb;
use super::transient::{Body, Shape};
use quantity::{Fraction, Temperature, TimeSpan};

/// Temperatures of a cook, second by second or coarser for long ones.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// The shape of the piece, which says where its core is.
    pub shape: Shape,
    /// Since the start.
    pub times: Vec<TimeSpan>,
    /// Every cell's temperature at each time, from the face that was below first.
    pub cells: Vec<Vec<Temperature>>,
    /// The two faces' temperatures at each time.
    pub faces: Vec<[Temperature; 2]>,
    /// Water lost since the start, a share of the piece's mass, at each time.
    pub loss: Vec<Fraction>,
    /// Moisture of every cell at the end, water over solids.
    pub moisture: Vec<Fraction>,
    /// Heat that crossed the faces and is not found in the piece, as a share of what crossed.
    pub imbalance: f64,
}

impl Course {
    /// The temperature of the middle plane of a slab, or of the axis or centre of a round piece, at the end.
    #[must_use]
    pub fn core(&self) -> Temperature {
        self.cells.last().map_or(Temperature::celsius(f64::NAN), |row| self.core_of(row))
    }

    /// The core's temperature at a recorded time, the first not before `time`.
    #[must_use]
    pub fn core_at(&self, time: TimeSpan) -> Option<Temperature> {
        self.cells.get(self.times.partition_point(|at| *at < time)).map(|row| self.core_of(row))
    }

    fn core_of(&self, row: &[Temperature]) -> Temperature {
        match (self.shape, row.len() / 2) {
            (Shape::Slab, half) if half > 0 => row[half - 1] + (row[half] - row[half - 1]) * 0.5,
            _ => row.first().copied().unwrap_or(Temperature::celsius(f64::NAN)),
        }
    }

    /// The course of one cell, counted from the face that was below first.
    #[must_use]
    pub fn cell(&self, cell: usize) -> Vec<(TimeSpan, Temperature)> {
        self.times.iter().zip(&self.cells).filter_map(|(time, row)| Some((*time, *row.get(cell)?))).collect()
    }

    /// The courses of the two faces, the one that was below first.
    #[must_use]
    pub fn face_courses(&self) -> [Vec<(TimeSpan, Temperature)>; 2] {
        [0, 1].map(|face| self.times.iter().zip(&self.faces).map(|(time, pair)| (*time, pair[face])).collect())
    }

    /// The coldest cell at each recorded time.
    pub fn coldest(&self) -> impl Iterator<Item = Temperature> + '_ {
        self.cells
            .iter()
            .map(|row| row.iter().copied().fold(Temperature::celsius(f64::INFINITY), |a, b| if b < a { b } else { a }))
    }
}

/// Takes notes of a cook.
pub(super) struct Log {
    course: Course,
    /// When the present stage began.
    pub started: f64,
    heat: f64,
    water: f64,
    mass: f64,
    solids: f64,
}

impl Log {
    pub fn new(body: &Body<Crumb>, piece: &Piece) -> Self {
        let volume: f64 = body.grid.volumes.iter().sum();
        let density = piece.density.as_kilograms_per_cubic_metre();
        let course = Course {
            shape: piece.shape,
            times: Vec::new(),
            cells: Vec::new(),
            faces: Vec::new(),
            loss: Vec::new(),
            moisture: Vec::new(),
            imbalance: 0.0,
        };
        let solids = density * (piece.composition.total() - piece.composition.water).as_ratio();
        let mass = density * volume * piece.composition.total().as_ratio();
        let mut log = Self { course, started: 0.0, heat: body.content(), water: body.moisture(), mass, solids };
        log.note(body, 0.0, [piece.start.as_celsius(); 2]);
        log
    }

    pub fn note(&mut self, body: &Body<Crumb>, time: f64, faces: [f64; 2]) {
        self.course.times.push(TimeSpan::seconds(time));
        self.course.cells.push(body.cells.iter().map(|cell| Temperature::celsius(cell.temperature)).collect());
        self.course.faces.push(faces.map(Temperature::celsius));
        self.course.loss.push(Fraction::ratio((self.water - body.moisture()) / self.mass));
    }

    pub fn close(mut self, body: &Body<Crumb>) -> Course {
        self.course.moisture = body.water.iter().map(|water| Fraction::ratio(water / self.solids)).collect();
        if body.heat_moved > 0.0 {
            self.course.imbalance = (body.content() - self.heat - body.heat_in) / body.heat_moved;
        }
        self.course
    }
}
