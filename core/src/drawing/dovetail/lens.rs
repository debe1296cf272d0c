//! The smallest and the largest gap of a dovetail, enlarged: neither could be seen without.

use super::joint::Mate;
use super::mated::Corner;
use super::plane::{Place, View, Window, mm};
use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::{Sheet, rectangle};
use crate::message;
use crate::order::in_order;
use crate::units::Mm;

/// One enlarged part.
pub(super) struct Lens {
    title: &'static str,
    /// Gap or overlap, mm.
    size: Mm,
    /// What must be in its middle.
    focus: Place,
    gap: Option<Vec<Place>>,
}

impl Lens {
    /// Room that one takes downwards, in type heights.
    pub(super) const HEIGHT: f64 = 8.4;
    const ACROSS: f64 = 6.4;
    const DOWN: f64 = 4.2;

    fn new(title: &'static str, spot: &Spot) -> Self {
        let title = if spot.gap < 0.0 { "overlap" } else { title };
        Self {
            title,
            size: mm(spot.gap.abs()),
            focus: spot.place,
            gap: spot.mate.open(),
        }
    }

    /// The greatest round enlargement that leaves what is shown a third of the lens.
    fn enlargement(&self, sheet: &Sheet) -> u32 {
        const ROUND: [u32; 7] = [100, 50, 40, 20, 10, 5, 2];
        let room = sheet.ems(Self::DOWN) / 3.0;
        ROUND
            .into_iter()
            .find(|times| self.size * f64::from(*times) <= room)
            .unwrap_or(1)
    }

    /// Draws the lens, the middle of its upper side a little below `middle`.
    pub(super) fn draw(&self, sheet: &mut Sheet, corner: &Corner, whole: &View, middle: Point) {
        let times = self.enlargement(sheet);
        let half = sheet.ems(Self::ACROSS / 2.0);
        let top = middle.y + sheet.ems(1.4);
        let (left, right, bottom) = (
            middle.x - half,
            middle.x + half,
            top + sheet.ems(Self::DOWN),
        );
        let enlarged = f64::from(times);
        let (across, along) = (
            half.mm() / enlarged,
            sheet.ems(Self::DOWN / 2.0).mm() / enlarged,
        );
        let view = View {
            window: Window {
                left: self.focus.0 - across,
                right: self.focus.0 + across,
                shallow: self.focus.1 - along,
                deep: self.focus.1 + along,
            },
            corner: Point::new(left, top),
            across: enlarged,
            along: enlarged,
        };
        sheet.polygons(Role::Frame, [rectangle(left, top, right, bottom)]);
        corner.draw(sheet, &view);
        let gap: Vec<_> = self.gap.iter().cloned().collect();
        sheet.polygons(Role::Gap, view.areas(&gap));
        sheet.frame(left, top, right, bottom);
        let from = whole.place(self.focus);
        let lead = |x| vec![from, Point::new(x, top)];
        sheet.lines(Role::Leader, [lead(left), lead(right)]);
        let rows = [
            (1.1, Role::Words, message![self.title]),
            (2.3, Role::Dimension, message![self.size, ", ×", times]),
        ];
        for (row, role, text) in rows {
            let at = Point::new(middle.x, bottom + sheet.ems(row));
            sheet.text(role, at, Anchor::Middle, text);
        }
    }
}

/// A gap at one place between two flanks.
#[derive(Clone, Copy)]
struct Spot {
    mate: Mate,
    place: Place,
    gap: f64,
}

impl Spot {
    /// The gap at both faces, or in the middle between them where it is the same.
    fn of(mate: Mate) -> Vec<Self> {
        let [outer, inner] = mate.gaps();
        let spot = |share: f64| {
            let along = |[from, to]: [f64; 2]| from + (to - from) * share;
            let middle = |[tail, pin]: [Place; 2]| [(tail.0 + pin.0) / 2.0, tail.1];
            let (from, to) = (middle(mate.outer), middle(mate.inner));
            Self {
                mate,
                place: (along([from[0], to[0]]), along([from[1], to[1]])),
                gap: along([outer, inner]),
            }
        };
        if mm(outer).is_same(mm(inner)) {
            vec![spot(0.5)]
        } else {
            vec![spot(0.0), spot(1.0)]
        }
    }
}

/// What deserves a lens, from the reference edge.
pub(super) fn lenses(corner: &Corner) -> Vec<Lens> {
    let mates = corner.joint.mates();
    let spots: Vec<Spot> = mates.into_iter().flat_map(Spot::of).collect();
    let by_gap = |one: &&Spot, other: &&Spot| one.gap.total_cmp(&other.gap);
    let (Some(smallest), Some(largest)) =
        (spots.iter().min_by(by_gap), spots.iter().max_by(by_gap))
    else {
        return Vec::new();
    };
    if mm(smallest.gap).is_same(mm(largest.gap)) {
        return vec![Lens::new("every gap", smallest)];
    }
    let both = vec![
        Lens::new("smallest gap", smallest),
        Lens::new("largest gap", largest),
    ];
    in_order(both, |one, other| one.focus.0.total_cmp(&other.focus.0))
}
