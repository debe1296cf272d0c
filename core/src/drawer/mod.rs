//! Drawers: from an opening or an outside size to boards, bottoms, grooves and a joint that is ready to plan.
//!
//! Board A of the joint is the side, board B the front and the back; the reference edge is the lower one. The
//! drawer's width runs from side to side, its depth from front to back. A back of its own thickness or lap has a
//! joint of its own, with the front's fingers or tails.

mod bottom;
mod checked;
mod corner;
mod fingers;
mod fit;
mod fronts;
mod groove;
mod heights;
mod jointing;
mod notes;
mod parts;
mod plan;
mod request;
mod space;
#[cfg(test)]
mod tests;
#[cfg(test)]
pub(crate) use tests::legal as example;

pub(crate) use checked::End;
pub use plan::{
    AppliedFront, BottomMovement, BottomPlan, DrawerBackJoint, DrawerBoard, DrawerBoxPlan,
    DrawerGroove, DrawerInside, DrawerJoint, DrawerMovement, DrawerPlace, DrawerPlan, GapAbove,
    GrooveRun, GrooveStop, Nudge, Nudged, PartRow,
};
pub use request::{
    AppliedFrontRequest, DrawerBottomRequest, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerJointRequest, DrawerLayoutRequest, DrawerSizeRequest,
};

use crate::problem::{Checked, Planned};

/// Plans the drawers of one opening, or of one outside size.
///
/// Heights follow from the opening: what dividers and clearances leave is shared out, less what solid sides
/// swell by at the dampest. Where the fingers ask for it a height is lowered, never raised, and where it hides
/// the groove that is moved; each such nudge is told with its reason.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn drawer_box(request: &DrawerBoxRequest) -> Checked<DrawerBoxPlan> {
    let job = checked::check(request)?;
    let fitted = fit::fit(&job)?;
    let notes = notes::notes(&job, &fitted);
    Ok(Planned {
        plan: fitted.plan,
        notes,
    })
}
