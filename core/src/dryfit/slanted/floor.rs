//! What stands on the floors of the pin board's sockets.

use super::Teeth;
use super::piece::Family;
use super::ridge::ridge;
use super::socket::Socket;
use super::strip::Strips;
use crate::dryfit::Uncut;
use crate::stop::Board;
use crate::units::Mm;

/// Ridges that teeth leave on the floor of one socket of the pin board; its area is the one at the outer face.
pub(super) fn floor(socket: &Socket) -> Option<Uncut> {
    if socket
        .cuts
        .iter()
        .all(|cut| cut.strips.teeth == Teeth::Flat)
    {
        return None;
    }
    let drifts = socket.cuts.iter().map(|cut| cut.strips.drift.abs());
    let run = drifts.fold(0.0, f64::max) * socket.depth;
    let from = socket.left_at(0.0).min(socket.left_at(socket.depth)) - run;
    let to = socket.right_at(0.0).max(socket.right_at(socket.depth)) + run;
    let pieces = |turns: fn(&Strips) -> bool| {
        let own = socket.cuts.iter().filter(|cut| turns(&cut.strips));
        let strips = own.clone().map(|cut| &cut.strips).next();
        let starts = own.flat_map(|cut| cut.near.iter().copied()).collect();
        strips.map(|strips| {
            let family = Family {
                starts,
                width: strips.width,
                kerf: strips.kerf,
                teeth: strips.teeth,
                depth: strips.height,
            };
            family.pieces(from, to)
        })
    };
    let clockwise = pieces(|strips| strips.drift < 0.0)?;
    let anticlockwise = pieces(|strips| strips.drift > 0.0)?;
    let ridge = ridge(&clockwise, &anticlockwise, run * 2.0);
    let height = Mm::new(ridge.height)?;
    (!height.is_same(Mm::ZERO)).then_some(Uncut {
        board: Board::B,
        area: ridge.area,
        height,
        near: Mm::new(socket.middle())?,
    })
}
