//! A box joint to be marked out, or to check a test cut by, at full size.

use super::dovetail::plane::Window;
use super::item::Drawing;
use super::sled::Paper;
use super::template::{Strip, sheets};
use crate::joint::box_joint::BoxJointPlan;
use crate::message;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// What is shown of a board past the floor of its sockets, mm.
const BODY: f64 = 10.0;

/// The layout at 1:1: the faces of both boards at their end, sockets hatched as the rounded stops will cut
/// them. The boards' width runs down the paper from the reference edge, in tiles that overlap by 10 mm.
///
/// Each drawing is exactly as large as the printable part of the paper; a bar of 100 mm on each says whether
/// it was printed so. None where a socket is deeper than the paper takes, about 95 mm.
#[must_use]
pub fn box_joint_template(plan: &BoxJointPlan, paper: Paper) -> Vec<Drawing> {
    let strip = |board| {
        let sets = plan.sets.iter().filter(move |set| set.board == board);
        sets.map(|set| strip(set, plan.width)).next()
    };
    let (Some(a), Some(b)) = (strip(Board::A), strip(Board::B)) else {
        return Vec::new();
    };
    let words = [
        message!["The face of both boards,"],
        message!["their end to the left"],
        message!["hatched: cut away"],
        message!["depth A ", plan.depth_a],
        message!["depth B ", plan.depth_b],
    ];
    sheets(&[a, b], plan.width, &words, paper)
}

fn strip(set: &Set, width: Mm) -> Strip {
    let depth = set.height.mm();
    let to = depth + BODY;
    let board = corners(0.0, width.mm(), to);
    let sockets: Vec<_> = set
        .stops
        .chunk_by(|one, next| one.socket == next.socket)
        .filter_map(|passes| {
            let left = passes.iter().map(|stop| stop.at).min()?;
            let right = passes.iter().map(|stop| stop.at).max()? + set.kerf;
            let (left, right) = (left.max(Mm::ZERO), right.min(width));
            Some(corners(left.mm(), right.mm(), depth))
        })
        .collect();
    let closed = |corners: &Vec<(f64, f64)>| {
        let again = corners.first().copied();
        corners.iter().copied().chain(again).collect()
    };
    Strip {
        letter: match set.board {
            Board::A => "A",
            Board::B => "B",
        },
        from: 0.0,
        to,
        lines: sockets.iter().chain([&board]).map(closed).collect(),
        waste: sockets,
    }
}

fn corners(left: f64, right: f64, deep: f64) -> Vec<(f64, f64)> {
    let window = Window {
        left,
        right,
        shallow: 0.0,
        deep,
    };
    window.corners().to_vec()
}
