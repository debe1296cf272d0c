//! What a pass takes from a dovetail's board, from its stop, the blade's lean and the board's turn alone.

use notchwright_core::stop::{Board, Set, Stop};

use super::requests::Case;

/// A place across the width and a depth from the board's end or outer face.
pub(super) type Corner = (f64, f64);

/// How the tips of a cutter's teeth run across its kerf, as tangents.
#[derive(Clone, Copy, Debug)]
pub(super) enum Tips {
    Flat,
    Alternate(f64),
    Slope(f64),
}

impl Tips {
    /// How much shorter than the longest corner each kind of tooth is, at the kerf's near and far side.
    pub(super) fn short_by(self, kerf: f64) -> Vec<(f64, f64)> {
        match self {
            Self::Flat => vec![(0.0, 0.0)],
            Self::Alternate(rise) => vec![(0.0, kerf * rise), (kerf * rise, 0.0)],
            Self::Slope(rise) => vec![(0.0, kerf * rise)],
        }
    }
}

/// A side of a kerf, straight into the board.
#[derive(Clone, Copy)]
pub(super) struct Line {
    start: f64,
    /// Away from the reference edge for each millimetre into the board.
    drift: f64,
}

impl Line {
    pub(super) fn at(self, depth: f64) -> f64 {
        self.start + self.drift * depth
    }
}

/// The passes of one set.
#[derive(Clone, Copy)]
pub(super) struct Sweep<'a> {
    pub(super) set: &'a Set,
    /// Towards the reference edge as it goes into the board, as the board stands on the sled, radians.
    angle: f64,
    pub(super) tips: Tips,
    /// The board's width, where it is turned face for face.
    turned_over: Option<f64>,
    depth: f64,
}

impl<'a> Sweep<'a> {
    pub(super) fn new(set: &'a Set, case: &Case) -> Self {
        let leans = set.tilt_degrees != 0.0;
        let (angle, depth) = match set.board {
            Board::A if leans => (case.lean, set.height.mm()),
            Board::A => (0.0, set.height.mm()),
            // Clockwise turns flanks along the feed that run towards the reference edge going inwards.
            Board::B => (case.turn * set.yaw_degrees.signum(), case.pin_thickness),
        };
        Self {
            set,
            angle,
            tips: if leans { case.tips } else { case.upright_tips },
            turned_over: set.flipped.then(|| case.plan.width.mm()),
            depth,
        }
    }

    /// Both sides of a kerf, nearer one first.
    pub(super) fn sides(&self, stop: &Stop) -> (Line, Line) {
        let drift = -self.angle.tan();
        let near = stop.at.mm();
        let far = near + self.set.kerf.mm() / self.angle.cos();
        match self.turned_over {
            Some(width) => {
                let seen = |start: f64| Line {
                    start: width - start,
                    drift: -drift,
                };
                (seen(far), seen(near))
            }
            None => (Line { start: near, drift }, Line { start: far, drift }),
        }
    }

    /// The wood that a pass takes, one polygon for each kind of tooth; some of it before the board's end.
    pub(super) fn taken(&self, stop: &Stop) -> Vec<Vec<Corner>> {
        match self.set.board {
            Board::A => self.by_teeth(stop),
            Board::B => {
                let (near, far) = self.sides(stop);
                let deep = self.depth;
                let corners = [near.at(0.0), far.at(0.0), far.at(deep), near.at(deep)];
                let depths = [0.0, 0.0, deep, deep];
                vec![corners.into_iter().zip(depths).collect()]
            }
        }
    }

    /// In the blade's own frame, `along` it from its foot at the board's end and `across` its kerf; the
    /// deepest corner of all teeth is as deep as the cutter was set.
    fn by_teeth(&self, stop: &Stop) -> Vec<Vec<Corner>> {
        let (sin, cos) = self.angle.sin_cos();
        let kerf = self.set.kerf.mm();
        let place = |along: f64, across: f64| {
            let x = stop.at.mm() - along * sin + across * cos;
            let depth = along * cos + across * sin;
            (self.turned_over.map_or(x, |width| width - x), depth)
        };
        let teeth = self.tips.short_by(kerf);
        let deepest = |(near, far): &(f64, f64)| (-near * cos).max(-far * cos + kerf * sin);
        let deepest = teeth.iter().map(deepest).fold(f64::NEG_INFINITY, f64::max);
        let reach = (self.depth - deepest) / cos;
        let tooth = |(near, far): &(f64, f64)| {
            let (near, far) = (reach - near, reach - far);
            let off = near.min(far).min(0.0) - kerf;
            vec![
                place(off, 0.0),
                place(off, kerf),
                place(far, kerf),
                place(near, 0.0),
            ]
        };
        teeth.iter().map(tooth).collect()
    }
}
