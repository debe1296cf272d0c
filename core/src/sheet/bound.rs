//! What no layout can do without: lower bounds that need no search.
//!
//! A part and the kerf beside it, in a sheet with one kerf more at two edges: so a layout with kerfs is one
//! without. Sides are weighed by dual feasible functions (Fekete and Schepers, "A general framework for bounds
//! for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations Research 60, 2004):
//! weights such that whatever fits into a length weighs no more than that length.

use super::job::{Axis, Job, Kind, Part, Size, Um};

/// A weight of lengths: what fits side by side into `room` weighs at most as much as `room` itself does.
#[derive(Clone, Copy, Debug)]
enum Weight {
    Itself,
    /// Short lengths weigh nothing, what leaves room only for such ones weighs as much as the room.
    Rounded(Um),
    /// How many more of it than this many do not fit.
    Shares(Um),
}

impl Weight {
    fn of(self, length: Um, room: Um) -> Um {
        match self {
            Self::Itself => length,
            Self::Rounded(short) if length > room - short => room,
            Self::Rounded(short) if length < short => 0,
            Self::Rounded(_) => length,
            Self::Shares(shares) => ((shares + 1) * length - 1).checked_div(room).unwrap_or(0),
        }
    }
}

fn weights(room: Um) -> [Weight; 7] {
    [
        Weight::Itself,
        Weight::Rounded(room / 2),
        Weight::Rounded(room / 3),
        Weight::Rounded(room / 4),
        Weight::Shares(1),
        Weight::Shares(2),
        Weight::Shares(3),
    ]
}

/// Fewest sheets of one kind that take all pieces, and the least length of the last one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Bound {
    pub(crate) sheets: u32,
    pub(crate) used: Um,
}

/// The bound for sheets of one kind. With rough cuts it still holds, since they lose more than the kerf.
pub(super) fn bound<'a>(
    job: &Job,
    kind: &Kind,
    pieces: &(impl Iterator<Item = (&'a Part, u32)> + Clone),
) -> Bound {
    let usable = kind.usable();
    let kerf = match &job.rough {
        Some(rough) => job.kerf.min(rough.gap()),
        None => job.kerf,
    };
    let room = Size {
        x: usable.x + kerf,
        y: usable.y + kerf,
    };
    let total = |x: Weight, y: Weight| -> i128 {
        let all = pieces.clone().map(|(part, count)| {
            let lying = [false, true]
                .into_iter()
                .filter_map(|turned| part.on(kind.grain, turned));
            let least = lying.filter(|size| size.fits(usable)).map(|size| {
                i128::from(x.of(size.x + kerf, room.x)) * i128::from(y.of(size.y + kerf, room.y))
            });
            least.min().unwrap_or(0) * i128::from(count)
        });
        all.sum()
    };
    let mut sheets: i128 = 1;
    for x in weights(room.x) {
        for y in weights(room.y) {
            let each = i128::from(x.of(room.x, room.x)) * i128::from(y.of(room.y, room.y));
            sheets = sheets.max(divided_up(total(x, y), each));
        }
    }
    // The last sheet holds one part at least, and a single one all of them.
    let sides = pieces
        .clone()
        .filter_map(|(part, _)| along(kind, part).min());
    let mut used = if sheets > 1 { sides.min() } else { sides.max() }.unwrap_or(0);
    // Along the length nothing may be rounded: it is what is asked for.
    for y in weights(room.y) {
        let each = i128::from(y.of(room.y, room.y));
        let length = divided_up(total(Weight::Itself, y), each) - (sheets - 1) * i128::from(room.x);
        used = used.max(Um::try_from(length).unwrap_or(0) - kerf);
    }
    Bound {
        sheets: u32::try_from(sheets).unwrap_or(u32::MAX),
        used,
    }
}

fn divided_up(total: i128, each: i128) -> i128 {
    if each > 0 {
        (total + each - 1) / each
    } else {
        0
    }
}

fn along<'a>(kind: &'a Kind, part: &'a Part) -> impl Iterator<Item = Um> + 'a {
    let lying = [false, true]
        .into_iter()
        .filter_map(|turned| part.on(kind.grain, turned));
    lying
        .filter(|size| size.fits(kind.usable()))
        .map(|size| size.along(Axis::X))
}
