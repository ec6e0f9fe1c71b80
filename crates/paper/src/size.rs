//! Sheets of paper.

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// ISO 216 A4, 210 × 297 mm.
    A4,
    /// ISO 216 A5, 148 × 210 mm.
    A5,
    /// US Letter, 8½ × 11 in.
    Letter,
    /// An index card, 5 × 3 in, lying.
    Index,
}

impl Size {
    /// Every size.
    pub const ALL: [Self; 4] = [Self::A4, Self::A5, Self::Letter, Self::Index];

    /// Width and height in millimetres, by ISO 216 and by ANSI/ASME Y14.1; an index card is 5 × 3 inches by name.
    #[must_use]
    pub const fn millimetres(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::A5 => (148.0, 210.0),
            Self::Letter => (215.9, 279.4),
            Self::Index => (127.0, 76.2),
        }
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::A5 => "A5",
            Self::Letter => "Letter",
            Self::Index => "Index card",
        }
    }
}
