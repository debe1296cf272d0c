//! A sheet with its parts, to scale: numbered, with the grain, the off-cuts hatched and the cuts numbered.

#[cfg(test)]
mod tests;

use super::item::{Anchor, Drawing, Point, Role};
use super::sheet::{Sheet, closed, hatch, rectangle};
use super::sled::labels::{Area, Spot, text_at_middle, text_width};
use crate::message;
use crate::message::Message;
use crate::sheet::job::Grain;
use crate::sheet::{
    CutStep, LaidPart, LaidSheet, PieceKind, Place, SheetLayoutPlan, Side, StepKind,
};
use crate::units::Mm;

/// One sheet of a layout, its length across the drawing; `cuts` numbers the cuts where they end.
#[must_use]
pub fn sheet_layout_drawing(plan: &SheetLayoutPlan, laid: &LaidSheet, cuts: bool) -> Drawing {
    let mut sheet = Sheet::new(laid.length, laid.width);
    let paper = Paper {
        left: sheet.ems(0.8),
        top: sheet.ems(2.4),
        laid,
    };
    let grain = plan
        .job
        .kinds
        .get(laid.kind)
        .map_or(Grain::None, |kind| kind.grain);
    draw_whole(&mut sheet, &paper);
    draw_parts(&mut sheet, &paper, grain);
    draw_leftovers(&mut sheet, &paper);
    draw_dimensions(&mut sheet, &paper);
    let parts = laid.parts.iter();
    let names: Vec<Area> = parts
        .filter_map(|part| name_part(&mut sheet, &paper, part))
        .collect();
    let corner = Point::new(
        paper.left + laid.length + sheet.ems(6.4),
        paper.top + laid.width + sheet.ems(0.8),
    );
    if cuts {
        draw_cuts(&mut sheet, &paper, names);
    }
    sheet.finish(corner)
}

/// Where the sheet lies in the drawing.
struct Paper<'a> {
    left: Mm,
    top: Mm,
    laid: &'a LaidSheet,
}

impl Paper<'_> {
    fn at(&self, x: Mm, y: Mm) -> Point {
        Point::new(self.left + x, self.top + y)
    }

    fn area(&self, place: &Place) -> Vec<Point> {
        let (from, to) = (
            self.at(place.x, place.y),
            self.at(place.x + place.length, place.y + place.width),
        );
        rectangle(from.x, from.y, to.x, to.y)
    }

    fn middle(&self, place: &Place) -> Point {
        self.at(place.x + place.length / 2.0, place.y + place.width / 2.0)
    }
}

fn draw_whole(sheet: &mut Sheet, paper: &Paper<'_>) {
    let (from, to) = (
        paper.at(Mm::ZERO, Mm::ZERO),
        paper.at(paper.laid.length, paper.laid.width),
    );
    let whole = rectangle(from.x, from.y, to.x, to.y);
    sheet.polygons(Role::SledBase, [whole]);
}

fn draw_parts(sheet: &mut Sheet, paper: &Paper<'_>, grain: Grain) {
    let places = || {
        paper
            .laid
            .parts
            .iter()
            .map(|part| (part, paper.area(&part.place)))
    };
    let now = places().filter(|(part, _)| !part.later);
    sheet.polygons(Role::BoardA, now.map(|(_, area)| area));
    let later = || {
        places()
            .filter(|(part, _)| part.later)
            .map(|(_, area)| area)
    };
    sheet.polygons(Role::BoardB, later());
    if grain != Grain::None {
        let apart = sheet.ems(0.9);
        let lines = paper
            .laid
            .parts
            .iter()
            .flat_map(|part| grain_lines(paper, &part.place, grain, apart));
        sheet.lines(Role::Grain, lines);
    }
    let now = places().filter(|(part, _)| !part.later);
    let outlines: Vec<_> = now.map(|(_, area)| closed(&area)).collect();
    sheet.outline(outlines);
    sheet.lines(Role::ToCome, later().map(|area| closed(&area)));
}

/// Strokes along the grain, short ones beside long ones.
fn grain_lines(paper: &Paper<'_>, place: &Place, grain: Grain, apart: Mm) -> Vec<Vec<Point>> {
    const ENDS: [(f64, f64); 3] = [(0.06, 0.94), (0.1, 0.42), (0.55, 0.9)];
    const MOST: f64 = 40.0;
    let along_width = grain == Grain::Width;
    let (long, broad) = if along_width {
        (place.width, place.length)
    } else {
        (place.length, place.width)
    };
    let apart = apart.max(broad / MOST);
    let mut lines = Vec::new();
    let mut across = apart;
    while (across + apart / 2.0).is_below(broad) {
        let (from, to) = ENDS
            .get(lines.len() % ENDS.len())
            .copied()
            .unwrap_or((0.0, 1.0));
        let ends = [long * from, long * to].map(|along| {
            let (x, y) = if along_width {
                (across, along)
            } else {
                (along, across)
            };
            paper.at(place.x + x, place.y + y)
        });
        lines.push(ends.to_vec());
        across += apart;
    }
    lines
}

/// Off-cuts that are kept have their outline; the rest and what is trimmed off is only hatched.
fn draw_leftovers(sheet: &mut Sheet, paper: &Paper<'_>) {
    let offcuts = paper.laid.offcuts.iter();
    let yielded = paper.laid.cuts.iter().flat_map(|cut| &cut.yields);
    let trimmed = yielded.filter(|yielded| yielded.is == PieceKind::Trimming);
    let waste = offcuts
        .clone()
        .map(|offcut| offcut.place)
        .chain(trimmed.map(|yielded| yielded.place));
    let apart = sheet.ems(0.8);
    let lines: Vec<_> = waste
        .flat_map(|place| hatch(&paper.area(&place), apart))
        .collect();
    sheet.lines(Role::Uncut, lines);
    let kept = offcuts.filter(|offcut| offcut.keep);
    sheet.lines(
        Role::Leader,
        kept.clone()
            .map(|offcut| closed(&paper.area(&offcut.place))),
    );
    for offcut in kept {
        let text = size(&offcut.place);
        write_within(
            sheet,
            paper,
            (Role::Words, Role::Words),
            &offcut.place,
            1.0,
            &[text],
        );
    }
}

fn size(place: &Place) -> Message {
    message![place.length, " × ", place.width]
}

/// Number and size, or as much of that as has room; in small type where nothing else has. Gives where it stands.
fn name_part(sheet: &mut Sheet, paper: &Paper<'_>, part: &LaidPart) -> Option<Area> {
    let number = || message![part.number];
    let place = &part.place;
    let row = message![part.number, ": ", place.length, " × ", place.width];
    let groups: [(f64, &[Message]); 6] = [
        (1.0, &[number(), size(place)]),
        (
            1.0,
            &[number(), message![place.length], message![place.width]],
        ),
        (SMALL, &[number(), size(place)]),
        (SMALL, &[row]),
        (1.0, &[number()]),
        (SMALL, &[number()]),
    ];
    groups.into_iter().find_map(|(scale, rows)| {
        write_within(
            sheet,
            paper,
            (Role::Letter, Role::Dimension),
            place,
            scale,
            rows,
        )
    })
}

/// Small type, as a share of the usual.
const SMALL: f64 = 0.45;

/// Writes rows into a place if they have room there: the first in one role, the others in another.
fn write_within(
    sheet: &mut Sheet,
    paper: &Paper<'_>,
    roles: (Role, Role),
    place: &Place,
    scale: f64,
    rows: &[Message],
) -> Option<Area> {
    let usual = sheet.type_size;
    sheet.type_size = usual * scale;
    let row = sheet.ems(1.1);
    let widths = rows.iter().map(|text| text_width(text, sheet.type_size));
    let width = widths.max().unwrap_or_default();
    let height: Mm = rows.iter().map(|_| row).sum();
    let middle = paper.middle(place);
    let area = (!width.is_above(place.length) && !height.is_above(place.width)).then(|| {
        let (top, bottom) = (middle.y - height / 2.0, middle.y + height / 2.0);
        let mut y = top + row / 2.0;
        for (index, text) in rows.iter().enumerate() {
            let role = if index == 0 { roles.0 } else { roles.1 };
            let spot = Spot::new(middle.x, y, Anchor::Middle);
            text_at_middle(sheet, role, spot, text.clone());
            y += row;
        }
        Area::of_text(middle, Anchor::Middle, width, top, bottom)
    });
    sheet.type_size = usual;
    area
}

fn draw_dimensions(sheet: &mut Sheet, paper: &Paper<'_>) {
    let (left, right) = (paper.left, paper.left + paper.laid.length);
    let line = paper.top - sheet.ems(0.8);
    sheet.dimension_across(line, left, right);
    let above = Point::new((left + right) / 2.0, line - sheet.ems(0.35));
    sheet.text(
        Role::Dimension,
        above,
        Anchor::Middle,
        message![paper.laid.length],
    );
    let beside = right + sheet.ems(0.7);
    sheet.dimension_down(
        beside,
        paper.top,
        paper.top + paper.laid.width,
        message![paper.laid.width],
    );
}

/// Each cut's line from edge to edge of the piece in hand, with its number on it where nothing else is written;
/// rough cuts look otherwise.
fn draw_cuts(sheet: &mut Sheet, paper: &Paper<'_>, mut taken: Vec<Area>) {
    // Cuts lie closer together than parts are wide.
    sheet.type_size = sheet.ems(0.8);
    let mut sawn = Vec::new();
    let mut rough = Vec::new();
    let mut numbers = Vec::new();
    for cut in &paper.laid.cuts {
        let Some((from, to)) = line_of(paper, cut) else {
            continue;
        };
        let lines = if cut.kind == StepKind::Rough {
            &mut rough
        } else {
            &mut sawn
        };
        lines.push(vec![from, to]);
        let area = free_on(sheet, (from, to), cut, &taken);
        taken.push(area);
        numbers.push((area, cut.step));
    }
    sheet.lines(Role::Pass, sawn);
    sheet.lines(Role::CentreLine, rough);
    for (area, step) in numbers {
        let spot = Spot::new(
            (area.left + area.right) / 2.0,
            (area.top + area.bottom) / 2.0,
            Anchor::Middle,
        );
        text_at_middle(sheet, Role::CurrentPass, spot, message![step]);
    }
}

fn line_of(paper: &Paper<'_>, cut: &CutStep) -> Option<(Point, Point)> {
    let kept = cut.yields.first()?.place;
    let piece = &cut.place;
    let at_far_end = kept.x.is_above(piece.x) || kept.y.is_above(piece.y);
    Some(match cut.across {
        Side::Length => {
            let x = if at_far_end {
                kept.x
            } else {
                kept.x + kept.length
            };
            (paper.at(x, piece.y), paper.at(x, piece.y + piece.width))
        }
        Side::Width => {
            let y = if at_far_end {
                kept.y
            } else {
                kept.y + kept.width
            };
            (paper.at(piece.x, y), paper.at(piece.x + piece.length, y))
        }
    })
}

/// Where a cut's number stands: at the first of some places along its line that is free, or else at its beginning.
fn free_on(sheet: &Sheet, (from, to): (Point, Point), cut: &CutStep, taken: &[Area]) -> Area {
    const PLACES: u32 = 24;
    let (width, half) = (
        text_width(&message![cut.step], sheet.type_size),
        sheet.ems(0.5),
    );
    let long = (to.x - from.x).max(to.y - from.y);
    let begin = sheet.ems(0.8).min(long / 2.0);
    let step = ((long - begin * 2.0) / f64::from(PLACES)).max(Mm::ZERO);
    let areas = (0..=PLACES).map(|place| {
        let along = begin + step * f64::from(place);
        let at = match cut.across {
            Side::Length => Point::new(from.x, from.y + along),
            Side::Width => Point::new(from.x + along, from.y),
        };
        Area::of_text(at, Anchor::Middle, width, at.y - half, at.y + half)
    });
    let mut areas = areas.peekable();
    let first = areas.peek().copied();
    let free = areas.find(|area| !taken.iter().any(|other| other.meets(area)));
    free.or(first)
        .unwrap_or(Area::of_text(from, Anchor::Middle, width, from.y, from.y))
}
