//! Checked sheets and parts, in whole micrometres.
//!
//! The search adds and compares the same lengths in many orders; whole numbers give the same sums in each of
//! them, natively and as wasm. Parts and kerf are rounded down and sheets up, so that what fits exactly still does.

use crate::units::Mm;

/// A length in whole micrometres.
pub(crate) type Um = i64;

const UM_PER_MM: f64 = 1000.0;
/// What decimals of a typed number leave behind, in micrometres.
const NOISE: f64 = 1e-4;

#[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
pub(super) fn floor(length: Mm) -> Um {
    (length.mm() * UM_PER_MM + NOISE).floor() as Um
}

#[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
pub(super) fn ceil(length: Mm) -> Um {
    (length.mm() * UM_PER_MM - NOISE).ceil() as Um
}

/// Back to millimetres.
pub(crate) fn mm(length: Um) -> Mm {
    Mm::new(length as f64 / UM_PER_MM).unwrap_or_default()
}

/// One of the two directions on a sheet: `X` along its length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Axis {
    X,
    Y,
}

impl Axis {
    pub(super) fn other(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }
}

/// An upright rectangle's sides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Size {
    pub(crate) x: Um,
    pub(crate) y: Um,
}

impl Size {
    pub(super) fn along(self, axis: Axis) -> Um {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }

    pub(super) fn with(self, axis: Axis, length: Um) -> Self {
        match axis {
            Axis::X => Self { x: length, ..self },
            Axis::Y => Self { y: length, ..self },
        }
    }

    pub(super) fn turned(self) -> Self {
        Self {
            x: self.y,
            y: self.x,
        }
    }

    pub(super) fn fits(self, room: Self) -> bool {
        self.x <= room.x && self.y <= room.y
    }

    pub(super) fn area(self) -> Um {
        self.x * self.y
    }
}

/// Lengths at the four edges of a rectangle.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Sides {
    pub(crate) start: Um,
    pub(crate) end: Um,
    pub(crate) near: Um,
    pub(crate) far: Um,
}

impl Sides {
    pub(super) fn along(self, axis: Axis) -> Um {
        match axis {
            Axis::X => self.start + self.end,
            Axis::Y => self.near + self.far,
        }
    }
}

/// Where the grain of a sheet runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Grain {
    Length,
    Width,
    None,
}

impl Grain {
    /// The direction of a rip: along the grain, or along the length where there is none.
    pub(crate) fn rip(self) -> Axis {
        match self {
            Self::Width => Axis::Y,
            Self::Length | Self::None => Axis::X,
        }
    }
}

/// One kind of sheet.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Kind {
    pub(crate) name: Option<String>,
    pub(crate) stock: Option<String>,
    /// Number of its stock among those of the job.
    pub(crate) group: usize,
    pub(crate) thickness: Option<Mm>,
    pub(crate) size: Size,
    pub(crate) grain: Grain,
    pub(crate) trim: Sides,
    /// `None` for as many as needed.
    pub(crate) quantity: Option<u32>,
    pub(crate) price: Option<f64>,
    /// kg for one.
    pub(crate) mass: Option<f64>,
    pub(crate) offcut: bool,
}

impl Kind {
    /// What is left once its edges are trimmed.
    pub(crate) fn usable(&self) -> Size {
        Size {
            x: self.size.x - self.trim.along(Axis::X),
            y: self.size.y - self.trim.along(Axis::Y),
        }
    }
}

/// One part, as many times as it is needed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Part {
    pub(crate) name: Option<String>,
    pub(crate) number: u32,
    pub(crate) count: u32,
    /// As it is cut, allowances included: `x` along the grain.
    pub(crate) size: Size,
    /// As it will be.
    pub(crate) finished: (Mm, Mm),
    pub(crate) may_turn: bool,
    /// Number of its stock among those of the job.
    pub(crate) group: usize,
    pub(crate) later: bool,
}

impl Part {
    /// Its sides on a sheet of this grain; none where its grain would run the wrong way.
    pub(super) fn on(&self, grain: Grain, turned: bool) -> Option<Size> {
        let across = turned != (grain == Grain::Width);
        let allowed = !turned || self.may_turn || grain == Grain::None;
        allowed.then(|| {
            if across {
                self.size.turned()
            } else {
                self.size
            }
        })
    }
}

/// The largest piece that comes to the table saw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rough {
    /// Names of the fields that the longer and the shorter bound were given in.
    pub(super) fields: [&'static str; 2],
    pub(crate) longest: Um,
    pub(crate) widest: Um,
    pub(crate) heaviest: Option<f64>,
    pub(crate) allowance: Um,
    pub(crate) kerf: Um,
}

impl Rough {
    /// From one piece's clean edge to the next one's.
    pub(super) fn gap(&self) -> Um {
        self.kerf + 2 * self.allowance
    }

    /// What is still to be trimmed from a piece at each edge, at most.
    pub(super) fn around(&self, kind: &Kind) -> Um {
        let Sides {
            start,
            end,
            near,
            far,
        } = kind.trim;
        self.allowance.max(start).max(end).max(near).max(far)
    }

    /// Whether a person lifts a piece of this size, of a sheet of this kind.
    pub(super) fn lifts(&self, piece: Size, kind: &Kind) -> bool {
        let (long, short) = (piece.x.max(piece.y), piece.x.min(piece.y));
        let light = match (self.heaviest, kind.mass) {
            (Some(most), Some(mass)) => {
                mass * piece.area() as f64 <= most * kind.size.area() as f64
            }
            _ => true,
        };
        long <= self.longest && short <= self.widest && light
    }
}

/// Where a search begins and how far it goes.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Budget {
    pub(crate) from: u32,
    pub(crate) steps: u32,
    pub(crate) best: Option<String>,
}

/// Everything that a layout is made from.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Job {
    pub(crate) kinds: Vec<Kind>,
    pub(crate) parts: Vec<Part>,
    pub(crate) kerf: Um,
    pub(crate) rough: Option<Rough>,
    /// Longer side first.
    pub(crate) least_offcut: (Um, Um),
    pub(crate) budget: Budget,
}

impl Job {
    /// Whether an off-cut is worth keeping.
    pub(crate) fn worth_keeping(&self, size: Size) -> bool {
        let (long, short) = (size.x.max(size.y), size.x.min(size.y));
        long >= self.least_offcut.0 && short >= self.least_offcut.1
    }

    /// Whether a clean piece is lifted with what is still to be trimmed from it.
    pub(super) fn lifts_with_margins(&self, clean: Size, kind: &Kind) -> bool {
        self.rough.is_none_or(|rough| {
            let around = 2 * rough.around(kind);
            let piece = Size {
                x: clean.x + around,
                y: clean.y + around,
            };
            self.lifts(kind.size, kind) || rough.lifts(piece, kind)
        })
    }

    /// Whether a piece of this kind of sheet comes to the table saw as it is.
    pub(super) fn lifts(&self, piece: Size, kind: &Kind) -> bool {
        self.rough.is_none_or(|rough| rough.lifts(piece, kind))
    }
}
