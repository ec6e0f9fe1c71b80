//! A body on its way through time: the implicit step and the account of heat and water.

use super::face::{Face, Flow, Skin};
use super::grid::Grid;
use super::medium::{Medium, Settled};
use crate::numeric::tridiagonal;
use quantity::Pressure;

/// A step is repeated until the straight lines it assumed hold to this, in kelvin.
const AGREEMENT: f64 = 1e-2;
/// Or this often: a cell that begins to boil or to freeze needs a few.
const MOST_PASSES: usize = 8;

/// Rows for the change of each cell's enthalpy.
struct System {
    lower: Vec<f64>,
    diagonal: Vec<f64>,
    upper: Vec<f64>,
    right: Vec<f64>,
    work: Vec<f64>,
}

impl System {
    fn solve(&mut self) {
        tridiagonal::solve(&self.lower, &self.diagonal, &self.upper, &mut self.right, &mut self.work);
    }
}

/// The cells' state and what has crossed their faces, per square metre of the outer face.
pub(in crate::heat) struct Body<M> {
    pub medium: M,
    pub grid: Grid,
    pub pressure: Pressure,
    /// J/m³.
    pub enthalpy: Vec<f64>,
    /// kg/m³.
    pub water: Vec<f64>,
    pub cells: Vec<Settled>,
    /// Heat that went in through both faces, less what vapour and steam took away, J/m².
    pub heat_in: f64,
    /// The same without its sign: what the balance is measured against.
    pub heat_moved: f64,
    conductivity: Vec<f64>,
    conductance: Vec<f64>,
    start: Vec<f64>,
    system: System,
    flows: [Flow; 2],
}

impl<M: Medium> Body<M> {
    /// A body at one temperature throughout.
    pub fn new(medium: M, grid: Grid, temperature: f64, water: f64) -> Self {
        let n = grid.cells();
        let enthalpy = medium.enthalpy(temperature, water);
        let cell = medium.settle(enthalpy, water);
        let mut body = Self {
            pressure: crate::heat::air_pressure::SEA_LEVEL,
            enthalpy: vec![enthalpy; n],
            water: vec![water; n],
            cells: vec![cell; n],
            heat_in: 0.0,
            heat_moved: 0.0,
            conductivity: vec![0.0; n],
            conductance: vec![0.0; n + 1],
            start: vec![0.0; n],
            system: System {
                lower: vec![0.0; n],
                diagonal: vec![0.0; n],
                upper: vec![0.0; n],
                right: vec![0.0; n],
                work: vec![0.0; n],
            },
            flows: [Flow::default(); 2],
            medium,
            grid,
        };
        body.conduct();
        body
    }

    /// The heat in the body, J/m².
    pub fn content(&self) -> f64 {
        self.enthalpy.iter().zip(&self.grid.volumes).map(|(h, v)| h * v).sum()
    }

    /// The water in the body, kg/m².
    pub fn moisture(&self) -> f64 {
        self.water.iter().zip(&self.grid.volumes).map(|(w, v)| w * v).sum()
    }

    /// Temperatures of the lower and the upper face while they meet these.
    pub fn face_temperatures(&mut self, faces: &[Face; 2]) -> [f64; 2] {
        self.meet(faces);
        let n = self.cells.len();
        [0, 1].map(|end| {
            let (cell, area) = (end * (n - 1), self.grid.areas[end * n]);
            let drop =
                if area > 0.0 { self.flows[end].heat / area * self.grid.width / (2.0 * self.conductivity[cell]) } else { 0.0 };
            self.cells[cell].temperature - drop
        })
    }

    /// Goes on by `dt` seconds; `implicit` is the share of it that looks back from its end: 1 for backward,
    /// ½ for centred in time.
    pub fn step(&mut self, dt: f64, implicit: f64, faces: &[Face; 2]) {
        self.conduct();
        self.meet(faces);
        if implicit < 1.0 {
            self.explicit_part(dt * (1.0 - implicit));
            self.meet(faces);
        }
        self.implicit_part(dt * implicit, faces);
        self.take_vapour();
        self.diffuse_water(dt);
    }

    /// Conductances between the middles of neighbouring cells, W/(m² K).
    fn conduct(&mut self) {
        for (k, (cell, water)) in self.conductivity.iter_mut().zip(self.cells.iter().zip(&self.water)) {
            *k = self.medium.conductivity(cell.temperature, *water);
        }
        for i in 1..self.conductivity.len() {
            let (a, b) = (self.conductivity[i - 1], self.conductivity[i]);
            self.conductance[i] = self.grid.areas[i] * 2.0 * a * b / ((a + b) * self.grid.width);
        }
    }

    /// What leaves through both faces, about the present temperatures.
    fn meet(&mut self, faces: &[Face; 2]) {
        let n = self.cells.len();
        for (end, cell) in [0, n - 1].into_iter().enumerate() {
            let skin = Skin {
                temperature: self.cells[cell].temperature,
                water: self.water[cell],
                resistance: self.grid.width / (2.0 * self.conductivity[cell]),
            };
            let area = self.grid.areas[end * n];
            let flow = faces[end].flow(&skin, &self.medium, self.pressure);
            self.flows[end] = Flow {
                heat: flow.heat * area,
                heat_slope: flow.heat_slope * area,
                vapour: flow.vapour * area,
                vapour_slope: flow.vapour_slope * area,
            };
        }
    }

    /// Heat that leaves a cell at the present temperatures, W/m².
    fn outflow(&self, i: usize) -> f64 {
        let n = self.cells.len();
        let t = self.cells[i].temperature;
        let below = if i > 0 { self.conductance[i] * (t - self.cells[i - 1].temperature) } else { self.flows[0].heat };
        let above = if i + 1 < n { self.conductance[i + 1] * (t - self.cells[i + 1].temperature) } else { self.flows[1].heat };
        below + above
    }

    fn explicit_part(&mut self, dt: f64) {
        for i in 0..self.cells.len() {
            self.enthalpy[i] -= dt * self.outflow(i) / self.grid.volumes[i];
        }
        self.book(dt, [0.0; 2]);
        self.evaporate(dt, [0.0; 2]);
        for i in 0..self.cells.len() {
            self.cells[i] = self.medium.settle(self.enthalpy[i], self.water[i]);
        }
    }

    /// Solves for the enthalpies at the end of the step by repeated straight lines.
    fn implicit_part(&mut self, dt: f64, faces: &[Face; 2]) {
        let n = self.cells.len();
        self.start.clone_from(&self.enthalpy);
        for pass in 0..MOST_PASSES {
            if pass > 0 {
                self.meet(faces);
            }
            self.assemble(dt);
            self.system.solve();
            let mut disagreement: f64 = 0.0;
            let ends = [0, n - 1].map(|i| self.cells[i].slope * self.system.right[i]);
            for i in 0..n {
                let foreseen = self.cells[i].temperature + self.cells[i].slope * self.system.right[i];
                self.enthalpy[i] += self.system.right[i];
                self.cells[i] = self.medium.settle(self.enthalpy[i], self.water[i]);
                disagreement = disagreement.max((self.cells[i].temperature - foreseen).abs());
            }
            if disagreement < AGREEMENT || pass + 1 == MOST_PASSES {
                self.book(dt, ends);
                self.evaporate(dt, ends);
                break;
            }
        }
    }

    /// Rows for the change of each cell's enthalpy from the present guess.
    fn assemble(&mut self, dt: f64) {
        let n = self.cells.len();
        for i in 0..n {
            let volume = self.grid.volumes[i] / dt;
            let mut leaving = 0.0;
            if i > 0 {
                leaving += self.conductance[i];
                self.system.lower[i] = -self.conductance[i] * self.cells[i - 1].slope;
            } else {
                leaving += self.flows[0].heat_slope;
            }
            if i + 1 < n {
                leaving += self.conductance[i + 1];
                self.system.upper[i] = -self.conductance[i + 1] * self.cells[i + 1].slope;
            } else {
                leaving += self.flows[1].heat_slope;
            }
            self.system.diagonal[i] = volume + leaving * self.cells[i].slope;
            self.system.right[i] = -volume * (self.enthalpy[i] - self.start[i]) - self.outflow(i);
        }
    }

    /// Books the heat through both faces, whose cells warmed by `rise` after the flows were drawn up.
    fn book(&mut self, dt: f64, rise: [f64; 2]) {
        for (flow, rise) in self.flows.iter().zip(rise) {
            let heat = (flow.heat + flow.heat_slope * rise) * dt;
            self.heat_in -= heat;
            self.heat_moved += heat.abs();
        }
    }

    /// Takes the evaporated water from the end cells with the heat it held as a liquid; the latent heat is in the flow.
    fn evaporate(&mut self, dt: f64, rise: [f64; 2]) {
        let n = self.cells.len();
        for (end, cell) in [0, n - 1].into_iter().enumerate() {
            let flow = &self.flows[end];
            let wanted = (flow.vapour + flow.vapour_slope * rise[end]) * dt / self.grid.volumes[cell];
            let vapour = wanted.min(self.water[cell] - self.cells[cell].boiled);
            let heat = vapour * self.medium.water_heat() * self.cells[cell].temperature;
            self.water[cell] -= vapour;
            self.enthalpy[cell] -= heat;
            self.heat_in -= heat * self.grid.volumes[cell];
            self.heat_moved += (heat * self.grid.volumes[cell]).abs();
        }
    }

    /// Lets the steam of boiling cells go, with its heat.
    fn take_vapour(&mut self) {
        let steam = self.medium.steam();
        for i in 0..self.cells.len() {
            let boiled = self.cells[i].boiled;
            if boiled > 0.0 {
                self.water[i] -= boiled;
                self.enthalpy[i] -= boiled * steam;
                self.heat_in -= boiled * steam * self.grid.volumes[i];
                self.heat_moved += boiled * steam * self.grid.volumes[i];
                self.cells[i].boiled = 0.0;
            }
        }
    }

    /// Liquid water creeps from wetter to drier cells and takes its heat along.
    fn diffuse_water(&mut self, dt: f64) {
        let diffusion = self.medium.water_diffusion();
        if diffusion == 0.0 {
            return;
        }
        let mut below = [0.0; 2];
        for i in 0..self.water.len() {
            let above = match self.water.get(i + 1) {
                Some(next) => {
                    let flow = diffusion * (self.water[i] - next) / self.grid.width * self.grid.areas[i + 1] * dt;
                    let from = if flow > 0.0 { i } else { i + 1 };
                    [flow, flow * self.medium.water_heat() * self.cells[from].temperature]
                }
                None => [0.0; 2],
            };
            self.water[i] += (below[0] - above[0]) / self.grid.volumes[i];
            self.enthalpy[i] += (below[1] - above[1]) / self.grid.volumes[i];
            below = above;
        }
        for (cell, (enthalpy, water)) in self.cells.iter_mut().zip(self.enthalpy.iter().zip(&self.water)) {
            cell.temperature = self.medium.settle(*enthalpy, *water).temperature;
        }
    }
}
