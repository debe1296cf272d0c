//! A groove along both boards, and where it meets the fingers.

use super::layout::Layout;
use super::plan::{GrooveEnd, GroovePlace, GroovePlan, Make, Through};
use super::request::GrooveRequest;
use crate::check::Checker;
use crate::limits;
use crate::message;
use crate::order::in_order;
use crate::problem::Code;
use crate::stop::Board;
use crate::units::Mm;

/// A groove that fits on the boards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Groove {
    from_edge: Mm,
    width: Mm,
    depth: Mm,
    from_far: bool,
}

impl Groove {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &GrooveRequest, check: &mut Checker<'_>) -> Option<Self> {
        let from_edge = check.length("fromEdge", &request.from_edge, &limits::GROOVE_PLACE);
        let width = check.length("width", &request.width, &limits::GROOVE_WIDTH);
        let depth = check.length("depth", &request.depth, &limits::GROOVE_DEPTH);
        let from_far = check.word_or(
            "edge",
            &request.edge,
            &[("reference", false), ("far", true)],
            false,
        );
        Some(Self {
            from_edge: from_edge?,
            width: width?,
            depth: depth?,
            from_far: from_far?,
        })
    }

    /// Checks it against the boards.
    pub(super) fn fits(
        self,
        board: Mm,
        a: Option<Mm>,
        b: Option<Mm>,
        check: &mut Checker<'_>,
    ) -> Option<Self> {
        let mut check = check.at("groove");
        let room = board - self.width;
        let beside = self.from_edge.is_above(room);
        if beside {
            let most = room.max(Mm::ZERO);
            let message = message![
                "The groove would leave the board; at most ",
                most,
                " from the edge would work."
            ];
            check.refuse("fromEdge", Code::TooLarge, message, Some(most.mm()));
        }
        let thinner = [a, b]
            .into_iter()
            .flatten()
            .min()
            .filter(|thinner| !self.depth.is_below(*thinner));
        if let Some(thinner) = thinner {
            let message = message![
                "The groove would go through the thinner board, ",
                thinner,
                "."
            ];
            check.refuse("depth", Code::TooLarge, message, Some(thinner.mm()));
        }
        (!beside && thinner.is_none()).then_some(self)
    }

    /// Where it meets the fingers, and where it would do so better.
    pub(super) fn plan(self, layout: &Layout) -> GroovePlan {
        let from = self.on_board(self.from_edge, layout);
        let to = from + self.width;
        let ends = [Board::A, Board::B].map(|board| end(board, from, to, layout));
        let settled = ends.iter().any(|end| end.make == Make::Through);
        let better = if settled {
            Vec::new()
        } else {
            self.better(layout)
        };
        GroovePlan {
            from,
            to,
            ends,
            better,
        }
    }

    fn on_board(self, from_edge: Mm, layout: &Layout) -> Mm {
        // The same formula turns a place on the board back into a distance from the far edge.
        if self.from_far {
            layout.width() - self.width - from_edge
        } else {
            from_edge
        }
    }

    /// The nearest place inside one finger, for each board that could then be grooved from end to end.
    fn better(self, layout: &Layout) -> Vec<GroovePlace> {
        let here = self.on_board(self.from_edge, layout);
        let place = |board: Board| {
            let places = layout.sockets(board).filter_map(|space| {
                let (least, most) = (
                    layout.boundary(space),
                    layout.boundary(space + 1) - self.width,
                );
                (!most.is_below(least)).then(|| here.max(least).min(most))
            });
            let nearest = places.min_by_key(|place| (*place - here).abs())?;
            Some(GroovePlace {
                from_edge: self.on_board(nearest, layout),
                through: board,
            })
        };
        let off = |place: &GroovePlace| (place.from_edge - self.from_edge).abs();
        in_order(
            [Board::A, Board::B].into_iter().filter_map(place),
            |x, y| off(x).cmp(&off(y)),
        )
    }
}

/// A board's groove may run out where the board has a socket, since the mating pin covers it; where it
/// has a pin, a hole would show in the pin's end.
fn end(board: Board, from: Mm, to: Mm, layout: &Layout) -> GrooveEnd {
    // A place that was proposed must do as it was read.
    let meets = |space: usize| {
        to.is_beyond(layout.boundary(space)) && layout.boundary(space + 1).is_beyond(from)
    };
    let sockets = layout.sockets(board).filter(|space| meets(*space)).count();
    let all = (0..layout.count()).filter(|space| meets(*space)).count();
    let (through, make) = match sockets {
        0 => (Through::Pin, Make::Stopped),
        sockets if sockets == all => (Through::Socket, Make::Through),
        _ => (Through::Both, Make::Stopped),
    };
    GrooveEnd {
        board,
        through,
        make,
    }
}
