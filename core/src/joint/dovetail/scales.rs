//! The dial for each set-up: where its zero is and how far apart its ticks are along the board.

use super::check::{Boards, Tools};
use super::slope::Slope;
use crate::dial::Scale;

/// One scale for each kind of set-up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scales {
    /// Tail board under the leaning cutter, whichever face is in front.
    pub(super) leaning: Scale,
    /// Tail board under the upright cutter.
    pub(super) upright: Scale,
    /// Pin board turned for the flanks that run towards the reference edge going inwards.
    pub(super) clockwise: Scale,
    /// Pin board turned for the others.
    pub(super) anticlockwise: Scale,
}

impl Scales {
    /// The leaning cutter touches the board's end, `kerf / cos θ` wide there. The turned board touches
    /// with the arris that leads: the outer one when turned clockwise; else the inner one, which is
    /// ahead by the sine of the turn for each millimetre of the board's thickness (derived).
    pub(super) fn new(boards: &Boards, tools: &Tools, slope: Slope) -> Self {
        let (screw, zero) = (tools.screw, tools.zero);
        let kerf = tools.pin_cutter.kerf();
        let ahead = boards.pin * slope.sin;
        let turned = |touch| Scale::turned(screw, zero, touch / slope.cos, slope.cos);
        Self {
            leaning: Scale::new(screw, zero, tools.cutter.kerf() / slope.cos),
            upright: Scale::new(screw, zero, kerf),
            clockwise: turned(kerf),
            anticlockwise: turned(kerf + ahead),
        }
    }
}
