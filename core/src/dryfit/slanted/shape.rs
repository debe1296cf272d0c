//! Shapes in the plane, for drawings.

use super::socket::{Socket, sockets};
use super::uncovered::areas_left;
use super::{Bench, Point};
use crate::stop::{Board, Set};

/// A socket as its stops open it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SocketShape {
    /// Which space of the layout it is, counted along the width from 0.
    pub(crate) space: usize,
    /// Its corners: left and right at the board's end or outer face, then right and left at its depth.
    pub(crate) corners: [Point; 4],
    /// Whether it has a left wall; else it is open at the board's edge.
    pub(crate) has_left: bool,
    /// Whether it has a right wall.
    pub(crate) has_right: bool,
    /// What no pass reaches in it.
    pub(crate) uncut: Vec<Vec<Point>>,
}

/// The sockets of a board as these sets open them, from the reference edge.
pub(crate) fn socket_shapes(sets: &[Set], bench: &Bench, board: Board) -> Vec<SocketShape> {
    sockets(sets, bench, board).iter().map(shape).collect()
}

fn shape(socket: &Socket) -> SocketShape {
    let corners = socket.outline();
    SocketShape {
        space: socket.space,
        corners,
        has_left: socket.left.is_some(),
        has_right: socket.right.is_some(),
        uncut: wood_left(&corners, &socket.outlines()),
    }
}

/// What `passes` leave of a convex region, without what only arithmetic leaves.
pub(crate) fn wood_left(region: &[Point], passes: &[Vec<Point>]) -> Vec<Vec<Point>> {
    /// Smaller areas are noise, mm².
    const NO_AREA: f64 = 1e-6;
    let areas = areas_left(region, passes).into_iter();
    areas.filter(|corners| area(corners) > NO_AREA).collect()
}

fn area(corners: &[Point]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let pairs = corners.iter().zip(next);
    let twice: f64 = pairs.map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
    twice.abs() / 2.0
}
