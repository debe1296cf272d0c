//! What a dovetail is answered with.

use serde::Serialize;

use crate::dryfit::DryFit;
use crate::dryfit::slanted::Bench;
use crate::stop::Set;
use crate::units::Mm;

/// A dovetail, ready to cut. Board A is the tail board, board B the pin board.
///
/// Widths are nominal, before the glue gap is taken off. The outer face is the pin board's, where the
/// tails' tips show; in a half-blind joint it is the plane that the tips touch, behind the lap.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DovetailPlan {
    /// Number of tails.
    pub count: usize,
    /// Width of both boards, mm.
    pub width: Mm,
    /// Slope of the flanks: tangent of the angle.
    pub slope: f64,
    /// Slope of the flanks, degrees from square.
    pub angle_degrees: f64,
    /// Width of a tail at its tip, mm; the mean where they differ.
    pub tail_tip: Mm,
    /// Width of a tail at the baseline, mm; the mean where they differ.
    pub tail_base: Mm,
    /// Width of a pin at the outer face, mm.
    pub pin_outer: Mm,
    /// Width of a pin at the inner face, mm.
    pub pin_inner: Mm,
    /// Width of a half-pin at the outer face, mm.
    pub half_pin_outer: Mm,
    /// Width of a half-pin at the inner face, mm.
    pub half_pin_inner: Mm,
    /// Narrowest pin at the outer face that the leaning cutter can clear the place of, mm.
    pub narrowest_pin: Mm,
    /// Narrowest half-pin whose place takes the leaning cutter whole, mm, where this joint's is narrower:
    /// the kerf then runs off the board's edge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub narrowest_half_pin: Option<Mm>,
    /// How far the flank's corner is short of the baseline under the leaning cutter, mm: for the chisel.
    pub corner_left: Mm,
    /// Glue gap at each flank, mm.
    pub glue_gap: Mm,
    /// Every tail, from the reference edge.
    pub tails: Vec<Tail>,
    /// Whether the layout reads the same from both edges.
    pub symmetric: bool,
    /// Depth of cut in the tail board, mm.
    pub depth_a: Mm,
    /// Depth of cut in the pin board, mm.
    pub depth_b: Mm,
    /// Wood left in front of the tails, mm; 0 in a through joint.
    pub lap: Mm,
    /// Thickness of the tail board, mm.
    pub thickness_a: Mm,
    /// Thickness of the pin board, mm.
    pub thickness_b: Mm,
    /// The sets of stops in the order of use; in a half-blind joint only the tail board's.
    pub sets: Vec<Set>,
    /// What the cuts really make.
    pub dry_fit: DryFit,
    /// What the dry fit knew besides the sets.
    #[serde(skip)]
    pub bench: Bench,
}

/// One tail's place on the tail board, from the reference edge, before the glue gap is taken off.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Tail {
    /// Nearer side at the tip, mm.
    pub from_tip: Mm,
    /// Farther side at the tip, mm.
    pub to_tip: Mm,
    /// Nearer side at the baseline, mm.
    pub from_base: Mm,
    /// Farther side at the baseline, mm.
    pub to_base: Mm,
}
