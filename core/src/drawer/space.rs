//! The room that drawers have: an opening with its clearances, or the outside itself.

use super::request::DrawerSizeRequest;
use crate::check::Checker;
use crate::limits;
use crate::units::Mm;

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Space {
    pub(crate) width: Mm,
    pub(crate) height: Mm,
    pub(crate) depth: Mm,
    /// Clearances, where it is an opening.
    pub(crate) opening: Option<Clearances>,
}

/// Room around each drawer of an opening.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Clearances {
    pub(crate) side: Mm,
    pub(crate) above: Mm,
    pub(crate) below: Mm,
    pub(crate) behind: Mm,
}

#[derive(Clone, Copy, PartialEq)]
enum Slides {
    Runners,
    Side,
    Under,
}

impl Space {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &DrawerSizeRequest, check: &mut Checker<'_>) -> Option<Self> {
        let is_opening = check.word(
            "kind",
            &request.kind,
            &[("opening", true), ("outside", false)],
        );
        let width = check.length("width", &request.width, &limits::DRAWER);
        let height = check.length("height", &request.height, &limits::DRAWER);
        let depth = check.length("depth", &request.depth, &limits::DRAWER);
        let opening = if is_opening? {
            Some(Clearances::check(request, check)?)
        } else {
            let fields = [
                ("slides", request.slides.is_missing()),
                ("sideClearance", request.side_clearance.is_missing()),
                ("above", request.above.is_missing()),
                ("below", request.below.is_missing()),
                ("behind", request.behind.is_missing()),
            ];
            check.unused("the drawer's outside", &fields);
            None
        };
        Some(Self {
            width: width?,
            height: height?,
            depth: depth?,
            opening,
        })
    }

    /// What is left out around a drawer, none where its outside was given.
    pub(crate) fn clearances(&self) -> Clearances {
        self.opening.unwrap_or_default()
    }
}

impl Clearances {
    fn check(request: &DrawerSizeRequest, check: &mut Checker<'_>) -> Option<Self> {
        let kinds = [
            ("runners", Slides::Runners),
            ("side", Slides::Side),
            ("under", Slides::Under),
        ];
        let slides = check.word("slides", &request.slides, &kinds);
        let limit = &limits::CLEARANCE;
        let side = check.length("sideClearance", &request.side_clearance, limit);
        let above = check.length("above", &request.above, limit);
        let behind = check.length_or("behind", &request.behind, limit, Mm::ZERO);
        let below = if slides? == Slides::Runners {
            // It lies on its runners.
            check.unused("wooden runners", &[("below", request.below.is_missing())]);
            Some(Mm::ZERO)
        } else {
            check.length("below", &request.below, limit)
        };
        Some(Self {
            side: side?,
            above: above?,
            below: below?,
            behind: behind?,
        })
    }

    /// Above and below one drawer.
    pub(super) fn upright(&self) -> Mm {
        self.above + self.below
    }
}
