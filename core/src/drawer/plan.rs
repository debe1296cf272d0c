//! What drawers are answered with.

use serde::Serialize;

use super::checked::Job;
use crate::groove::{FencePass, GrooveSetupRequest};
use crate::joint::box_joint::{BoxJointRequest, Make};
use crate::joint::dovetail::DovetailRequest;
use crate::message::Message;
use crate::stop::Board;
use crate::units::Mm;

/// Drawers, ready to be cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerBoxPlan {
    /// Every drawer that differs, the topmost first.
    pub drawers: Vec<DrawerPlan>,
    /// Where each drawer is in the opening, from the top; empty for drawers of a given outside.
    pub places: Vec<DrawerPlace>,
    /// Opening's height that leaves nothing over above these drawers, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub snug_height: Option<Mm>,
    /// Fronts applied to the boxes, from the top; empty without them.
    pub applied: Vec<AppliedFront>,
    /// All boards and bottoms as rows of a parts list.
    pub parts: Vec<PartRow>,
    /// What was asked for, for drawings.
    #[serde(skip)]
    pub(crate) job: Job,
}

/// One drawer, or several that are alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerPlan {
    /// How many are made like this.
    pub count: u32,
    /// Outside, from side to side, mm.
    pub width: Mm,
    /// Height of its boards as they are cut, mm.
    pub height: Mm,
    /// Outside, from front to back without an applied front, mm.
    pub depth: Mm,
    /// Room inside.
    pub inside: DrawerInside,
    /// What was changed from what was asked, and why.
    pub nudges: Vec<Nudge>,
    /// Its boards.
    pub boards: Vec<DrawerBoard>,
    /// Its bottom.
    pub bottom: BottomPlan,
    /// The bottom's groove.
    pub groove: DrawerGroove,
    /// Its corners.
    pub joint: DrawerJoint,
    /// What its height does with the air; left out for boards that do not move.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub movement: Option<DrawerMovement>,
}

/// Room inside a drawer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerInside {
    /// Between the sides, mm.
    pub width: Mm,
    /// From the groove's upper side to the upper edge, mm.
    pub height: Mm,
    /// Between front and back, mm.
    pub depth: Mm,
}

/// Something that was changed from what was asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Nudge {
    /// What was changed.
    pub what: Nudged,
    /// What it would have been, mm.
    pub from: Mm,
    /// What it is, mm.
    pub to: Mm,
    /// Why.
    pub reason: Message,
}

/// What can be changed from what was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "camelCase")]
pub enum Nudged {
    /// The drawer's height.
    Height,
    /// Lower edge to the groove's lower side.
    Groove,
}

/// A board of the box, its grain along its length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerBoard {
    /// `side`, `front` or `back`.
    pub name: &'static str,
    /// Which board of the joint it is.
    pub board: Board,
    /// How many a drawer has.
    pub count: u32,
    /// Along the grain, with what its pins stand proud by, mm.
    pub length: Mm,
    /// The drawer's height, mm.
    pub width: Mm,
    /// Thickness, mm.
    pub thickness: Mm,
}

/// A bottom as it is cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct BottomPlan {
    /// From side to side, along the grain of a solid one, mm.
    pub length: Mm,
    /// From front to back, mm.
    pub width: Mm,
    /// Thickness, mm.
    pub thickness: Mm,
    /// How deep each edge lies in its groove as it is cut, from front to back, mm.
    pub held: Mm,
    /// What a solid one does with the air.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub movement: Option<BottomMovement>,
}

/// What a solid bottom does with the air, from front to back.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct BottomMovement {
    /// Its width at the dampest, mm.
    pub wettest: Mm,
    /// Its width at the driest, mm.
    pub driest: Mm,
    /// How deep each edge lies in its groove when it is narrowest, with the bottom in the middle, mm.
    pub held_least: Mm,
    /// The same at one edge when the bottom has slid all the way into the other's groove, mm; below 0 it drops out.
    pub held_aside: Mm,
}

/// The bottom's groove.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerGroove {
    /// Lower edge to the groove's lower side, mm.
    pub from_edge: Mm,
    /// Width, mm.
    pub width: Mm,
    /// Depth, mm.
    pub depth: Mm,
    /// Whether one finger covers it, so that nothing of it shows outside.
    pub hidden: bool,
    /// How it is made in the sides, and in front and back.
    pub runs: Vec<GrooveRun>,
}

/// The groove in one kind of board.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GrooveRun {
    /// Which board of the joint.
    pub board: Board,
    /// From end to end, or stopped.
    pub make: Make,
    /// Where a stopped one begins and ends; in a side from its front end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stopped: Option<GrooveStop>,
    /// Fence settings for the bit, nearest first; empty without one.
    pub passes: Vec<FencePass>,
    /// The request that plans it on the router table; left out without a bit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup: Option<GrooveSetupRequest>,
    /// The same for the side that is fed back end first; left out where it is grooved like the other.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back_first: Option<GrooveSetupRequest>,
}

/// Where a stopped groove begins and ends, from the same end of the board; 0 or its length where it runs out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GrooveStop {
    /// Where it begins, mm.
    pub from: Mm,
    /// Where it ends, mm.
    pub to: Mm,
}

/// The joint of a drawer's corners: of all four, or of the front's where the back has its own.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerJoint {
    /// Number of fingers, or of tails.
    pub count: u32,
    /// Width of a finger, mm, in a box joint.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finger_width: Option<Mm>,
    /// The request that plans it as a box joint, groove included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub box_joint: Option<BoxJointRequest>,
    /// The request that plans it as a dovetail.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dovetail: Option<DovetailRequest>,
    /// The joint of the back's corners, with the same fingers or tails; left out where it is the front's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub back: Option<DrawerBackJoint>,
}

/// The joint of the back's corners, where it is not the front's: one of both.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerBackJoint {
    /// The request that plans it as a box joint, groove included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub box_joint: Option<BoxJointRequest>,
    /// The request that plans it as a dovetail.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dovetail: Option<DovetailRequest>,
}

/// What a drawer's height does with the air.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerMovement {
    /// The wood's moisture at the driest, percent.
    pub driest_moisture: f64,
    /// The wood's moisture at the dampest, percent.
    pub wettest_moisture: f64,
    /// Height at the driest, mm.
    pub driest: Mm,
    /// Height at the dampest, mm.
    pub wettest: Mm,
}

/// Where one drawer is in its opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DrawerPlace {
    /// From the top, from 1.
    pub number: u32,
    /// Which of the plan's `drawers` it is, from 0.
    pub drawer: usize,
    /// Opening's lower edge to the drawer's lower edge, mm.
    pub from_below: Mm,
    /// From the drawer's upper edge to what is above it.
    pub gap_above: GapAbove,
}

/// Room above a drawer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GapAbove {
    /// As the boards are cut, mm.
    pub now: Mm,
    /// At the dampest, mm; never less than was asked for.
    pub wettest: Mm,
    /// At the driest, mm.
    pub driest: Mm,
}

/// A front applied to a box.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct AppliedFront {
    /// Which drawer, from the top, from 1.
    pub number: u32,
    /// From side to side, along the grain, mm.
    pub width: Mm,
    /// Height, mm.
    pub height: Mm,
    /// Thickness, mm.
    pub thickness: Mm,
    /// How far it reaches below the box's lower edge, mm; negative where it ends above it.
    pub below: Mm,
}

/// A row of a parts list.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct PartRow {
    /// What it is called.
    pub name: String,
    /// How many of it.
    pub count: u32,
    /// Along the grain, mm.
    pub length: Mm,
    /// Across the grain, mm.
    pub width: Mm,
    /// Thickness, mm.
    pub thickness: Mm,
    /// What it is cut from: `sides`, `fronts`, `backs` (not as thick as fronts), `bottoms` or `applied fronts`.
    pub stock: &'static str,
    /// Whether it may lie across the grain of its sheet.
    pub may_turn: bool,
}
