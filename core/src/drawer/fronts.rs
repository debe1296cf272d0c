//! Fronts that are applied to the boxes.

use super::checked::Job;
use super::plan::{AppliedFront, DrawerPlace, DrawerPlan};
use super::request::AppliedFrontRequest;
use crate::check::Checker;
use crate::limits;
use crate::units::Mm;

/// A checked applied front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Applied {
    pub(crate) thickness: Mm,
    pub(crate) lap: Mm,
    pub(super) gap: Mm,
}

const USUAL_GAP: Mm = Mm::constant(2.0);

impl Applied {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &AppliedFrontRequest, check: &mut Checker<'_>) -> Option<Self> {
        let thickness = check.length("thickness", &request.thickness, &limits::BOARD_THICKNESS);
        let lap = check.length("lap", &request.lap, &limits::FRONT_LAP);
        let gap = check.length_or("gap", &request.gap, &limits::CLEARANCE, USUAL_GAP);
        Some(Self {
            thickness: thickness?,
            lap: lap?,
            gap: gap?,
        })
    }

    /// What it takes of an opening's depth: its thickness where it lies inside.
    pub(super) fn inside(&self) -> Mm {
        if self.lap.is_below(Mm::ZERO) {
            self.thickness
        } else {
            Mm::ZERO
        }
    }
}

/// One front for each drawer: they meet in the middle of what is between two drawers, but for their gap.
pub(super) fn fronts(
    job: &Job,
    drawers: &[DrawerPlan],
    places: &[DrawerPlace],
) -> Vec<AppliedFront> {
    let Some(applied) = job.applied else {
        return Vec::new();
    };
    let front = |number, height, below| AppliedFront {
        number,
        width: job.space.width + applied.lap * 2.0,
        height,
        thickness: applied.thickness,
        below,
    };
    if places.is_empty() {
        let height = drawers.first().map_or(Mm::ZERO, |drawer| drawer.height) + applied.lap * 2.0;
        return (1..=job.count)
            .map(|number| front(number, height, applied.lap))
            .collect();
    }
    let below = job.space.clearances().below;
    // Lower end of each slot, from the top.
    let floors: Vec<_> = places
        .iter()
        .map(|place| place.from_below - below)
        .collect();
    let mut top = job.space.height + applied.lap;
    let mut fronts = Vec::new();
    for (index, (place, floor)) in places.iter().zip(&floors).enumerate() {
        let bottom = if index + 1 == places.len() {
            -applied.lap
        } else {
            *floor - (job.between - applied.gap) / 2.0
        };
        fronts.push(front(place.number, top - bottom, place.from_below - bottom));
        top = bottom - applied.gap;
    }
    fronts
}
