//! The bottom: how large it is cut, how wide its groove is, and whether it stays in there.

use super::plan::{BottomMovement, BottomPlan};
use super::request::{DrawerBottomRequest, DrawerGrooveRequest};
use crate::check::{Checker, optional_part, part};
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;
use crate::wood::{Climate, SolidWood};

/// A bottom and its groove.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bottom {
    pub(crate) thickness: Mm,
    pub(crate) groove: Groove,
    pub(super) clearance: Mm,
    pub(super) wood: Option<SolidWood>,
}

/// A groove before it knows the fingers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Groove {
    pub(super) from_edge: Mm,
    pub(crate) depth: Mm,
    pub(super) clearance: Mm,
    pub(super) bit: Option<Mm>,
}

const USUAL_CLEARANCE: Mm = Mm::constant(0.5);
const USUAL_GROOVE_CLEARANCE: Mm = Mm::constant(0.1);

impl Bottom {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &DrawerBottomRequest, check: &mut Checker<'_>) -> Option<Self> {
        let thickness = check.length("thickness", &request.thickness, &limits::BOARD_THICKNESS);
        let groove = part("groove", &request.groove, check, Groove::check);
        let limit = &limits::PANEL_CLEARANCE;
        let clearance = check.length_or("clearance", &request.clearance, limit, USUAL_CLEARANCE);
        let wood = optional_part("wood", &request.wood, check, SolidWood::check);
        let (groove, clearance) = (groove?, clearance?);
        if !clearance.is_below(groove.depth) {
            let most = groove.depth / 2.0;
            let message = message![
                "The bottom would not reach into its groove, ",
                groove.depth,
                " deep; at most ",
                most,
                " would leave it half of that."
            ];
            check.refuse("clearance", Code::TooLarge, message, Some(most.mm()));
        }
        Some(Self {
            thickness: thickness?,
            groove,
            clearance,
            wood: wood?,
        })
    }

    /// As a share of what it was cut to: the greatest that its width gets, and the least.
    fn extremes(&self, climate: Option<Climate>) -> (f64, f64) {
        self.moves(climate).map_or((1.0, 1.0), |(climate, wood)| {
            climate.extremes(wood.across, wood.moisture)
        })
    }

    fn moves(&self, climate: Option<Climate>) -> Option<(Climate, SolidWood)> {
        climate.zip(self.wood)
    }

    /// Width of the groove: the bottom at its thickest, and the clearance.
    pub(crate) fn groove_width(&self, climate: Option<Climate>) -> Mm {
        self.thickness * self.thickest(climate) + self.groove.clearance
    }

    /// As a share of what it was cut to: the greatest that its thickness gets.
    fn thickest(&self, climate: Option<Climate>) -> f64 {
        self.moves(climate).map_or(1.0, |(climate, wood)| {
            climate.extremes(wood.through, wood.moisture).0
        })
    }

    /// Refuses a bottom for which no groove is wide enough.
    pub(super) fn fits_a_groove(&self, climate: Option<Climate>, check: &mut Checker<'_>) {
        let widest = Mm::constant(limits::GROOVE_WIDTH.most);
        if self.groove_width(climate) > widest {
            // Arithmetic's noise must not put the proposal beyond the bound again.
            let room = widest - self.groove.clearance - Mm::constant(0.01);
            let most = room / self.thickest(climate);
            let message = message![
                "Its groove would be wider than any, ",
                widest,
                "; a bottom of at most ",
                most,
                " would work."
            ];
            check.refuse("thickness", Code::TooLarge, message, Some(most.mm()));
        }
    }

    /// The bottom between boards that are so far apart, from side to side and from front to back.
    pub(super) fn plan(&self, across: Mm, deep: Mm, climate: Option<Climate>) -> BottomPlan {
        let reach = (self.groove.depth - self.clearance) * 2.0;
        let (greatest, least) = self.extremes(climate);
        let width = (deep + reach) / greatest;
        let movement = self.moves(climate).map(|(climate, wood)| {
            let narrowest = width * least;
            let growth = |to| wood.across.growth(wood.moisture, to);
            BottomMovement {
                wettest: width * growth(climate.wettest),
                driest: width * growth(climate.driest),
                held_least: (narrowest - deep) / 2.0,
                held_aside: narrowest - deep - self.groove.depth,
            }
        });
        BottomPlan {
            length: across + reach,
            width,
            thickness: self.thickness,
            held: (width - deep) / 2.0,
            movement,
        }
    }

    /// Depth of groove that holds a solid bottom at the driest by a millimetre at each edge.
    pub(super) fn deep_enough(&self, deep: Mm, climate: Option<Climate>) -> Mm {
        let (greatest, least) = self.extremes(climate);
        ((deep + LEAST_HELD * 2.0) * (greatest / least) - deep) / 2.0 + self.clearance
    }
}

/// A bottom that lies in its groove by less than this is as good as out of it (common practice, no source).
const LEAST_HELD: Mm = Mm::constant(1.0);

impl Groove {
    fn check(request: &DrawerGrooveRequest, check: &mut Checker<'_>) -> Option<Self> {
        let from_edge = check.length("fromEdge", &request.from_edge, &limits::GROOVE_PLACE);
        let depth = check.length("depth", &request.depth, &limits::GROOVE_DEPTH);
        let limit = &limits::PANEL_CLEARANCE;
        let clearance = check.length_or(
            "clearance",
            &request.clearance,
            limit,
            USUAL_GROOVE_CLEARANCE,
        );
        let bit = check.optional_length("bit", &request.bit, &limits::BIT);
        Some(Self {
            from_edge: from_edge?,
            depth: depth?,
            clearance: clearance?,
            bit: bit?,
        })
    }
}
