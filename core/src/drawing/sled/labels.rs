//! Words that keep clear of one another.

use core::iter::repeat_n;

use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::{CAP_HEIGHT, Sheet, rectangle};
use crate::message::Message;
use crate::units::{Mm, write_number};

/// Width of a character as a share of the type's height: figures of the wider usual sans-serif faces.
const CHARACTER: f64 = 0.58;
/// From row to row, in type heights.
pub(super) const ROW: f64 = 1.2;

/// How wide a text is about to be, lengths written as millimetres with two decimals.
pub(in crate::drawing) fn text_width(text: &Message, size: Mm) -> Mm {
    let shown = text.show(|length| format!("{} mm", write_number(length.mm(), 2)));
    shown.chars().map(|_| size * CHARACTER).sum()
}

/// An upright rectangle on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::drawing) struct Area {
    pub(in crate::drawing) left: Mm,
    pub(in crate::drawing) top: Mm,
    pub(in crate::drawing) right: Mm,
    pub(in crate::drawing) bottom: Mm,
}

impl Area {
    pub(super) fn corners(&self) -> Vec<Point> {
        rectangle(self.left, self.top, self.right, self.bottom)
    }

    pub(in crate::drawing) fn meets(&self, other: &Self) -> bool {
        self.left.is_below(other.right)
            && other.left.is_below(self.right)
            && self.top.is_below(other.bottom)
            && other.top.is_below(self.bottom)
    }

    pub(in crate::drawing) fn is_within(&self, outer: &Self) -> bool {
        !self.left.is_below(outer.left)
            && !self.right.is_above(outer.right)
            && !self.top.is_below(outer.top)
            && !self.bottom.is_above(outer.bottom)
    }

    /// Around a middle.
    pub(super) fn around(middle: Point, reach: Mm) -> Self {
        Self {
            left: middle.x - reach,
            top: middle.y - reach,
            right: middle.x + reach,
            bottom: middle.y + reach,
        }
    }

    /// Where a text of this width stands.
    pub(in crate::drawing) fn of_text(
        at: Point,
        anchor: Anchor,
        width: Mm,
        top: Mm,
        bottom: Mm,
    ) -> Self {
        let left = match anchor {
            Anchor::Start => at.x,
            Anchor::Middle => at.x - width / 2.0,
            Anchor::End => at.x - width,
        };
        Self {
            left,
            top,
            right: left + width,
            bottom,
        }
    }
}

/// Where words may stand: their anchor, at the middle of their height.
#[derive(Clone, Copy, Debug)]
pub(in crate::drawing) struct Spot {
    pub(super) at: Point,
    pub(super) anchor: Anchor,
}

impl Spot {
    pub(in crate::drawing) fn new(x: Mm, y: Mm, anchor: Anchor) -> Self {
        Self {
            at: Point::new(x, y),
            anchor,
        }
    }
}

/// Writes words where there is room for them.
#[derive(Debug)]
pub(super) struct Labels {
    extent: Area,
    taken: Vec<Area>,
    avoided: Vec<Area>,
}

impl Labels {
    /// For a drawing as far as its lower right corner.
    pub(super) fn new(corner: Point) -> Self {
        let extent = Area {
            left: Mm::ZERO,
            top: Mm::ZERO,
            right: corner.x,
            bottom: corner.y,
        };
        Self {
            extent,
            taken: Vec::new(),
            avoided: Vec::new(),
        }
    }

    /// No words stand there.
    pub(super) fn keep_clear(&mut self, area: Area) {
        self.taken.push(area);
    }

    /// Words stand elsewhere if they can: lines run there.
    pub(super) fn avoid(&mut self, area: Area) {
        self.avoided.push(area);
    }

    /// Writes rows of words at the first spot that has room for them, one that crosses nothing if there is
    /// any; nothing where no spot has room. Gives whether they are written.
    pub(super) fn write(
        &mut self,
        sheet: &mut Sheet,
        role: Role,
        rows: &[Message],
        spots: impl IntoIterator<Item = Spot>,
    ) -> bool {
        let row = sheet.ems(ROW);
        let widths = rows.iter().map(|text| text_width(text, sheet.type_size));
        let width = widths.max().unwrap_or_default();
        let half: Mm = repeat_n(row / 2.0, rows.len()).sum();
        let mut free = spots.into_iter().filter_map(|spot| {
            let (top, bottom) = (spot.at.y - half, spot.at.y + half);
            let area = Area::of_text(spot.at, spot.anchor, width, top, bottom);
            let clear = self.taken.iter().all(|taken| !taken.meets(&area));
            (clear && area.is_within(&self.extent)).then_some((spot, area))
        });
        let Some(first) = free.next() else {
            return false;
        };
        let crosses = |(_, area): &(Spot, Area)| self.avoided.iter().any(|line| line.meets(area));
        let (spot, area) = [first]
            .into_iter()
            .chain(free)
            .find(|found| !crosses(found))
            .unwrap_or(first);
        self.taken.push(area);
        let mut middle = area.top + row / 2.0;
        for text in rows {
            text_at_middle(
                sheet,
                role,
                Spot::new(spot.at.x, middle, spot.anchor),
                text.clone(),
            );
            middle += row;
        }
        true
    }
}

/// Writes a text with the middle of its capitals and figures at the spot.
pub(in crate::drawing) fn text_at_middle(sheet: &mut Sheet, role: Role, spot: Spot, text: Message) {
    let baseline = spot.at.y + sheet.ems(CAP_HEIGHT / 2.0);
    sheet.text(role, Point::new(spot.at.x, baseline), spot.anchor, text);
}

/// Moves things that stand in a row, each wanted in ascending order at a place and of a size, as little as
/// keeps them from overlapping; gives their new places.
///
/// Least squares: what would overlap is pooled, and a pool stands where its members want it on average.
pub(in crate::drawing) fn spread(wanted: &[(Mm, Mm)]) -> Vec<Mm> {
    let mut before = Vec::new();
    let mut taken = Mm::ZERO;
    for (_, size) in wanted {
        before.push(taken + *size / 2.0);
        taken += *size;
    }
    let mut pools: Vec<(Mm, u32)> = Vec::new();
    for ((place, _), before) in wanted.iter().zip(&before) {
        let mut pool = (*place - *before, 1);
        while let Some(last) = pools.pop() {
            if mean(last) < mean(pool) {
                pools.push(last);
                break;
            }
            pool = (last.0 + pool.0, last.1 + pool.1);
        }
        pools.push(pool);
    }
    let starts = pools
        .into_iter()
        .flat_map(|pool| (0..pool.1).map(move |_| mean(pool)));
    starts
        .zip(before)
        .map(|(start, before)| start + before)
        .collect()
}

fn mean((sum, count): (Mm, u32)) -> Mm {
    sum / f64::from(count)
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::spread;
    use crate::units::Mm;

    fn mm(mm: f64) -> Mm {
        Mm::new(mm).unwrap()
    }

    #[test]
    fn what_has_room_stays() {
        let wanted = [(mm(0.0), mm(2.0)), (mm(5.0), mm(2.0)), (mm(7.0), mm(2.0))];
        assert_eq!(spread(&wanted), [mm(0.0), mm(5.0), mm(7.0)]);
    }

    #[test]
    fn what_has_none_moves_apart_evenly() {
        let wanted = [
            (mm(10.0), mm(4.0)),
            (mm(10.0), mm(4.0)),
            (mm(40.0), mm(4.0)),
        ];
        assert_eq!(spread(&wanted), [mm(8.0), mm(12.0), mm(40.0)]);
    }

    proptest! {
        #[test]
        fn nothing_overlaps_and_the_order_is_kept(
            things in vec((-500.0..500.0_f64, 0.1..60.0_f64), 1..20),
        ) {
            let mut wanted: Vec<_> = things.iter().map(|(at, size)| (mm(*at), mm(*size))).collect();
            wanted.sort();
            let places = spread(&wanted);
            prop_assert_eq!(places.len(), wanted.len());
            for (pair, sizes) in places.windows(2).zip(wanted.windows(2)) {
                let apart = (sizes[0].1 + sizes[1].1) / 2.0;
                prop_assert!((pair[1] - pair[0] - apart).mm() > -1e-9);
            }
        }
    }
}
