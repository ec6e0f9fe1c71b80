//! Sheets of labels by their plain sizes, smaller labels first.

use crate::Size;

/// A sheet of labels that lie in rows and columns, centred on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Its name: a label's width and height.
    pub name: &'static str,
    /// The paper.
    pub size: Size,
    /// How many labels stand side by side, and how many below each other.
    pub places: (usize, usize),
    /// A label's width and height in millimetres.
    pub label: (f64, f64),
    /// What lies between labels side by side, in millimetres.
    pub gap: f64,
}

const INCH: f64 = 25.4;

const fn a4(name: &'static str, places: (usize, usize), label: (f64, f64)) -> Sheet {
    Sheet { name, size: Size::A4, places, label, gap: 0.0 }
}

const fn letter(name: &'static str, places: (usize, usize), inches: (f64, f64), gap: f64) -> Sheet {
    Sheet { name, size: Size::Letter, places, label: (inches.0 * INCH, inches.1 * INCH), gap: gap * INCH }
}

impl Sheet {
    /// Every sheet. Common practice, no source: what is sold in these sizes lies centred, without gaps on A4; on Letter
    /// 1/8 or 3/16 inch stand between the columns.
    pub const ALL: [Self; 10] = [
        a4("70x36", (3, 8), (70.0, 36.0)),
        a4("105x57", (2, 5), (105.0, 57.0)),
        a4("105x74", (2, 4), (105.0, 74.0)),
        a4("105x148", (2, 2), (105.0, 148.5)),
        a4("210x148", (1, 2), (210.0, 148.5)),
        letter("2.6x1in", (3, 10), (2.625, 1.0), 0.125),
        letter("4x2in", (2, 5), (4.0, 2.0), 0.1875),
        letter("4x3.3in", (2, 3), (4.0, 10.0 / 3.0), 0.1875),
        letter("4x5in", (2, 2), (4.0, 5.0), 0.1875),
        letter("8.5x5.5in", (1, 2), (8.5, 5.5), 0.0),
    ];

    /// The sheet of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.name == name)
    }

    /// The next larger one on the same paper.
    #[must_use]
    pub fn larger(self) -> Option<Self> {
        let after = Self::ALL.into_iter().skip_while(|one| one.name != self.name).skip(1);
        after.into_iter().find(|one| one.size == self.size)
    }

    /// How many labels it holds.
    #[must_use]
    pub const fn holds(self) -> usize {
        self.places.0 * self.places.1
    }

    /// Where its first label begins, from the left and the top, in millimetres.
    #[must_use]
    pub fn begins(self) -> (f64, f64) {
        let (width, height) = self.size.millimetres();
        let (across, down) = (self.places.0 as f64, self.places.1 as f64);
        let wide = across * self.label.0 + (across - 1.0) * self.gap;
        ((width - wide) / 2.0, (height - down * self.label.1) / 2.0)
    }
}
