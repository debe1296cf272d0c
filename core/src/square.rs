//! The five-cut test: how square a fence is to the blade.
//!
//! Four sides of a panel are cut, each time with the edge just cut turned against the fence; then a strip
//! is cut off the first side. Each cut adds the fence's error, so the strip tapers by four times it.

use serde::Serialize;

use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::message;
use crate::problem::{Checked, Note, Planned, Severity};
use crate::units::Mm;

request! {
    /// A strip of the five-cut test, measured.
    pub struct SquareTestRequest {
        /// Width of the strip at the end that was against the fence, mm.
        pub fence_end: Given<f64> = "fenceEnd",
        /// Width of the strip at its free end, mm.
        pub free_end: Given<f64> = "freeEnd",
        /// Distance between the two measurements, mm.
        pub apart: Given<f64> = "apart",
        /// Fence's pivot to where it is adjusted, mm.
        pub pivot_to_adjuster: Given<f64> = "pivotToAdjuster",
        /// Uncertainty of each reading, mm; 0.02 when left out.
        pub reading_uncertainty: Given<f64> = "readingUncertainty",
        /// Thickness of a board, mm, to say what the error does to its joint.
        pub board_thickness: Given<f64> = "boardThickness",
    }
}

/// The fence's error and what to do about it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SquareTestPlan {
    /// The error, radians: the angle inside the panel between fence and cut is a right angle plus this.
    pub error_radians: f64,
    /// The same in degrees.
    pub error_degrees: f64,
    /// The same as mm over 500 mm.
    pub per500: Mm,
    /// The angle between fence and cut, degrees.
    pub angle_degrees: f64,
    /// How far to move the fence at its point of adjustment, mm.
    #[serde(rename = "move")]
    pub travel: Mm,
    /// Which way.
    pub towards: Towards,
    /// What the readings leave uncertain of the error, radians.
    pub uncertainty_radians: f64,
    /// Whether the error is greater than its uncertainty.
    pub significant: bool,
    /// Slant of a flank over the board's thickness, mm, where that is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_thickness: Option<Mm>,
}

/// Which way the fence's outer end goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Towards {
    /// Towards the panel.
    Panel,
    /// Away from the panel.
    Away,
    /// It stays.
    None,
}

const USUAL_UNCERTAINTY: Mm = Mm::constant(0.02);

struct Strip {
    taper: Mm,
    apart: Mm,
    arm: Mm,
    uncertainty: Mm,
    thickness: Option<Mm>,
}

/// Works out a five-cut test: `ε = (A − B) / (4 L)`, and the correction `P · ε` (derived; confirmed by cutting
/// a polygon five times in this crate's tests).
///
/// # Errors
/// Every problem of the request at once.
pub fn square_test(request: &SquareTestRequest) -> Checked<SquareTestPlan> {
    let mut problems = Vec::new();
    match read(request, &mut Checker::new(&mut problems)) {
        Some(strip) if problems.is_empty() => Ok(answer(&strip)),
        _ => Err(problems),
    }
}

fn read(request: &SquareTestRequest, check: &mut Checker<'_>) -> Option<Strip> {
    let fence = check.length("fenceEnd", &request.fence_end, &limits::STRIP);
    let free = check.length("freeEnd", &request.free_end, &limits::STRIP);
    let apart = check.length("apart", &request.apart, &limits::STRIP_LENGTH);
    let arm = check.length(
        "pivotToAdjuster",
        &request.pivot_to_adjuster,
        &limits::STRIP_LENGTH,
    );
    let uncertainty = check.length_or(
        "readingUncertainty",
        &request.reading_uncertainty,
        &limits::UNCERTAINTY,
        USUAL_UNCERTAINTY,
    );
    let thickness = check.optional_length(
        "boardThickness",
        &request.board_thickness,
        &limits::BOARD_THICKNESS,
    );
    Some(Strip {
        taper: fence? - free?,
        apart: apart?,
        arm: arm?,
        uncertainty: uncertainty?,
        thickness: thickness?,
    })
}

fn answer(strip: &Strip) -> Planned<SquareTestPlan> {
    let error = strip.taper / (strip.apart * 4.0);
    let uncertainty = core::f64::consts::SQRT_2 * (strip.uncertainty / (strip.apart * 4.0));
    let significant = error.abs() > uncertainty;
    let plan = SquareTestPlan {
        error_radians: error,
        error_degrees: error.to_degrees(),
        per500: Mm::constant(500.0) * error,
        angle_degrees: 90.0 + error.to_degrees(),
        travel: (strip.arm * error).abs(),
        towards: match error {
            error if error > 0.0 => Towards::Panel,
            error if error < 0.0 => Towards::Away,
            _ => Towards::None,
        },
        uncertainty_radians: uncertainty,
        significant,
        over_thickness: strip.thickness.map(|thickness| thickness * error.abs()),
    };
    let notes = [noise(&plan), coarse(&plan)]
        .into_iter()
        .flatten()
        .collect();
    Planned { plan, notes }
}

fn noise(plan: &SquareTestPlan) -> Option<Note> {
    let message = message![
        "The error is no greater than what the readings leave uncertain, ",
        Mm::constant(500.0) * plan.uncertainty_radians,
        " over 500 mm: leave the fence as it is, or repeat with a larger panel."
    ];
    (!plan.significant).then(|| Note::new("within-noise", Severity::Info, message))
}

/// A fence farther out than this was set by eye.
const BY_EYE: f64 = 0.02;

fn coarse(plan: &SquareTestPlan) -> Option<Note> {
    let message = message![
        "More than a degree out: check that the same edge went against the fence each time, then correct and repeat."
    ];
    (plan.error_radians.abs() > BY_EYE).then(|| Note::new("far-out", Severity::Warning, message))
}

#[cfg(test)]
mod tests;
