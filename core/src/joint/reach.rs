//! What the saw and the sled on it allow: a joint that they cannot cut is refused.

use super::box_joint::SawRequest;
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

/// One depth of cut, as the saw sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cut<'a> {
    /// How thick the board being cut is along the feed.
    pub(super) thickness: Mm,
    /// The field of the board whose thickness the depth follows.
    pub(super) mate: &'a str,
    /// How deep the cut is.
    pub(super) depth: Mm,
    /// How much deeper that is than the mate is thick; negative where a lap is left.
    pub(super) beyond: Mm,
    /// Cosine of the blade's lean: a leaning blade stands so much lower than it is raised.
    pub(super) cos: f64,
}

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

    /// Refuses a cut where the blade does not come up so far, or the board would stand in it before the cut.
    pub(super) fn allows(&self, cut: &Cut<'_>, diameter: Option<Mm>, check: &mut Checker<'_>) {
        if let Some(deepest) = self.deepest(diameter, cut.cos)
            && cut.depth.is_beyond(deepest)
        {
            beyond_height(cut, deepest, check);
            return;
        }
        if let (Some(window), Some(diameter)) = (self.window, diameter)
            && let Some(blade) = RaisedBlade::new(diameter, cut.depth / cut.cos)
        {
            // The base takes as much from the height as from the axis: only what stands above it counts.
            let needed = blade.half_chord(Mm::ZERO) * 2.0 + cut.thickness + CLEARANCE;
            if needed.is_beyond(window) {
                let room = (window - cut.thickness - CLEARANCE).max(Mm::ZERO) / 2.0;
                let deepest = RaisedBlade::height_of(diameter, room) * cut.cos;
                outside_window(cut, [window, needed], deepest, check);
            }
        }
    }

    /// A blade cannot come up farther than to its own axis, whatever the saw allows.
    fn deepest(&self, diameter: Option<Mm>, cos: f64) -> Option<Mm> {
        let radius = diameter.map(|diameter| diameter / 2.0);
        let height = self.greatest_height.into_iter().chain(radius).min();
        height.map(|height| (height * cos - self.base).max(Mm::ZERO))
    }
}

fn beyond_height(cut: &Cut<'_>, deepest: Mm, check: &mut Checker<'_>) {
    let most = (deepest - cut.beyond).max(Mm::ZERO);
    let message = message![
        "The mating board would be cut ",
        cut.depth,
        " deep; above the base this saw's blade reaches ",
        deepest,
        ". A board of at most ",
        most,
        " would work."
    ];
    check
        .at(cut.mate)
        .refuse("thickness", Code::BeyondHeight, message, Some(most.mm()));
}

fn outside_window(cut: &Cut<'_>, [window, needed]: [Mm; 2], deepest: Mm, check: &mut Checker<'_>) {
    let most = (deepest - cut.beyond).max(Mm::ZERO);
    let message = message![
        "To cut the mating board ",
        cut.depth,
        " deep, this blade needs a window of ",
        needed,
        " between carriage and front rail; the sled has ",
        window,
        ". A board of at most ",
        most,
        " would work."
    ];
    check
        .at(cut.mate)
        .refuse("thickness", Code::BeyondWindow, message, Some(most.mm()));
}
