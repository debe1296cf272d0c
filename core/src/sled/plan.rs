//! What the fit of a sled to a saw is answered with.

use serde::Serialize;

use super::checked::Job;
use crate::units::Mm;

/// Where everything goes on one particular saw; `y` runs along the feed from the arbor's axis, away from the operator.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SledFitPlan {
    /// Height of the blade above the table, mm.
    pub height: Mm,
    /// Half the blade's chord at the table, mm.
    pub half_chord_table: Mm,
    /// Half the blade's chord at the top of the base, mm.
    pub half_chord_base: Mm,
    /// Deepest cut that saw, blade, base and window allow with this board, mm.
    pub deepest_cut: Mm,
    /// Smallest window between carriage face and front rail for this cut, mm.
    pub smallest_window: Mm,
    /// Smallest travel that cuts this board, mm.
    pub smallest_travel: Mm,
    /// The stroke: where the carriage face goes.
    pub travel: Stroke,
    /// Slot through the base, from its near edge, mm.
    pub slot: BaseSlot,
    /// The runner.
    pub runner: RunnerPlan,
    /// The other runner, where the base reaches the other slot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub second_runner: Option<SidePlan>,
    /// The same from the measured left-overs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_measured: Option<Centring>,
    /// How far play lets the sled turn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yaw: Option<Yaw>,
    /// How far slotted screw holes let the runner turn for squaring.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holes: Option<Turning>,
    /// Widest board that the carriage can bring past the blade, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub widest_board: Option<Mm>,
    /// What it was worked out from, for the drawings.
    #[serde(skip)]
    pub(crate) job: Job,
}

/// Where the carriage face goes in one stroke.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Stroke {
    /// Pulled fully back, mm from the arbor's axis.
    pub start: Mm,
    /// Pushed through, mm from the arbor's axis.
    pub end: Mm,
    /// From the one to the other, mm.
    pub length: Mm,
}

/// The slot that the blade works in, mm from the base's near edge.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct BaseSlot {
    /// Near end on top of the base.
    pub top_near: Mm,
    /// Far end on top of the base.
    pub top_far: Mm,
    /// Near end underneath.
    pub under_near: Mm,
    /// Far end underneath.
    pub under_far: Mm,
}

/// Where the runner goes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct RunnerPlan {
    /// Blade line to the runner's centre line, mm.
    pub from_blade: Mm,
    /// Base's left edge to the runner's centre line, mm.
    pub from_base_left: Mm,
    /// How far to move the runner, mm; positive away from the operator.
    pub forward: Mm,
    /// Table left beyond the near contact with the sled pulled back, before moving, mm; negative off the table.
    pub near_left: Mm,
    /// Table left beyond the far contact with the sled pushed through, before moving, mm; negative off the table.
    pub far_left: Mm,
    /// Table left at both ends after moving, mm; negative when the runner is too long.
    pub left_after: Mm,
    /// Longest span of contacts that stays on this table over this travel, mm.
    pub longest_span: Mm,
}

/// A runner's place across the sled.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SidePlan {
    /// Blade line to the runner's centre line, mm.
    pub from_blade: Mm,
    /// Base's left edge to the runner's centre line, mm.
    pub from_base_left: Mm,
}

/// Moving the runner so that both ends have the same left over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Centring {
    /// How far to move it, mm; positive away from the operator.
    pub forward: Mm,
    /// Table left at both ends after moving, mm.
    pub left_after: Mm,
}

/// What side play does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Yaw {
    /// How far the sled can turn, degrees.
    pub degrees: f64,
    /// How far a flank can wander over the board's thickness, mm.
    pub over_thickness: Mm,
    /// How far the far edge of the board can wander, mm, where its width is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_width: Option<Mm>,
}

/// A range of turning, to either side.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Turning {
    /// Degrees.
    pub degrees: f64,
    /// The same as mm over 500 mm.
    pub per500: Mm,
}
