//! What the saw and the sled on it allow: a joint that they cannot cut is refused.

use super::request::SawRequest;
use crate::check::Checker;
use crate::cutter::RaisedBlade;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

/// How far the blade comes up through the base, and the window that the board stands in.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    greatest_height: Option<Mm>,
    base: Mm,
    window: Option<Mm>,
}

/// A board's field, and its thickness.
type Board<'a> = (&'a str, Mm);

/// Room between board and blade before the cut (common practice, no source).
const CLEARANCE: Mm = Mm::constant(5.0);

impl Reach {
    pub(super) fn check(request: &SawRequest, check: &mut Checker<'_>) -> Option<Self> {
        let greatest_height = check.optional_length(
            "greatestHeight",
            &request.greatest_height,
            &limits::SAW_HEIGHT,
        );
        let base = check.length_or("base", &request.base, &limits::SLED_BASE, Mm::ZERO);
        let window = check.optional_length("window", &request.window, &limits::ON_SLED);
        Some(Self {
            greatest_height: greatest_height?,
            base: base?,
            window: window?,
        })
    }

    /// Refuses a cut of `board` as deep as `mate` is thick where the blade does not come up so far, or
    /// the board would stand in it before the cut.
    pub(super) fn allows(
        &self,
        board: Board<'_>,
        mate: Board<'_>,
        proud: Mm,
        diameter: Option<Mm>,
        check: &mut Checker<'_>,
    ) {
        let depth = mate.1 + proud;
        if let Some(deepest) = self.deepest(diameter)
            && depth.is_above(deepest)
        {
            beyond_height(mate.0, depth, deepest, proud, check);
            return;
        }
        if let (Some(window), Some(diameter)) = (self.window, diameter)
            && let Some(blade) = RaisedBlade::new(diameter, depth)
        {
            // The base takes as much from the height as from the axis: only what stands above it counts.
            let needed = blade.half_chord(Mm::ZERO) * 2.0 + board.1 + CLEARANCE;
            if needed.is_above(window) {
                let room = (window - board.1 - CLEARANCE).max(Mm::ZERO) / 2.0;
                let deepest = RaisedBlade::height_of(diameter, room);
                outside_window(mate.0, [depth, window, needed], deepest - proud, check);
            }
        }
    }

    /// A blade cannot come up farther than to its own axis, whatever the saw allows.
    fn deepest(&self, diameter: Option<Mm>) -> Option<Mm> {
        let radius = diameter.map(|diameter| diameter / 2.0);
        let height = self.greatest_height.into_iter().chain(radius).min();
        height.map(|height| (height - self.base).max(Mm::ZERO))
    }
}

fn beyond_height(mate: &str, depth: Mm, deepest: Mm, proud: Mm, check: &mut Checker<'_>) {
    let most = (deepest - proud).max(Mm::ZERO);
    let message = message![
        "The mating board would be cut ",
        depth,
        " deep; above the base this saw's blade reaches ",
        deepest,
        ". A board of at most ",
        most,
        " would work."
    ];
    check
        .at(mate)
        .refuse("thickness", Code::BeyondHeight, message, Some(most.mm()));
}

fn outside_window(mate: &str, lengths: [Mm; 3], most: Mm, check: &mut Checker<'_>) {
    let [depth, window, needed] = lengths;
    let most = most.max(Mm::ZERO);
    let message = message![
        "To cut the mating board ",
        depth,
        " deep, this blade needs a window of ",
        needed,
        " between carriage and front rail; the sled has ",
        window,
        ". A board of at most ",
        most,
        " would work."
    ];
    check
        .at(mate)
        .refuse("thickness", Code::BeyondWindow, message, Some(most.mm()));
}
