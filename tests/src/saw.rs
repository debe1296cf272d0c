//! A second opinion on layouts: a saw that knows nothing of the search. It takes the sheet, follows the list of
//! cuts, and measures what lies on the bench afterwards.

use std::collections::BTreeMap;

use notchwright_core::sheet::{
    CutStep, LaidSheet, PieceKind, Place, SheetLayoutPlan, Side, StepKind, Yielded,
};

/// A thousandth of a millimetre for each of a few roundings.
pub const SAME: f64 = 0.004;

/// Whether two lengths in mm are the same but for roundings.
#[must_use]
pub fn is_same(one: f64, other: f64) -> bool {
    (one - other).abs() <= SAME
}

/// A piece, by where it lay on its sheet, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wood {
    /// Along the sheet's length.
    pub x: f64,
    /// Along the sheet's width.
    pub y: f64,
    /// Along the sheet's length.
    pub length: f64,
    /// Along the sheet's width.
    pub width: f64,
}

impl Wood {
    fn area(&self) -> f64 {
        self.length * self.width
    }

    fn is_at(&self, place: &Place) -> bool {
        is_same(self.x, place.x.mm())
            && is_same(self.y, place.y.mm())
            && is_same(self.length, place.length.mm())
            && is_same(self.width, place.width.mm())
    }

    fn meets(&self, other: &Self) -> bool {
        self.x < other.x + other.length - SAME
            && other.x < self.x + self.length - SAME
            && self.y < other.y + other.width - SAME
            && other.y < self.y + self.width - SAME
    }
}

/// What the saw is set to.
#[derive(Clone, Copy, Debug)]
pub struct Saws {
    /// Width that the table saw cuts, mm.
    pub kerf: f64,
    /// Width that the hand-held saw cuts, mm.
    pub by_hand: f64,
}

/// What is on the bench once every cut is made.
#[derive(Debug, Default)]
pub struct Bench {
    /// Parts with their numbers.
    pub parts: Vec<(Wood, u32)>,
    /// What is left over.
    pub offcuts: Vec<Wood>,
    /// What was trimmed off edges.
    pub trimmings: Vec<Wood>,
    /// What the blade took, mm².
    pub dust: f64,
    /// Pieces in hand at the table saw.
    pub at_the_saw: Vec<Wood>,
    /// How often the fence was set.
    pub settings: u32,
}

/// Follows the cuts of one sheet.
///
/// # Errors
/// Which cut is wrong, and what is.
pub fn follow(sheet: &LaidSheet, saws: Saws) -> Result<Bench, String> {
    let whole = Wood {
        x: 0.0,
        y: 0.0,
        length: sheet.length.mm(),
        width: sheet.width.mm(),
    };
    let mut bench = Bench::default();
    let mut in_hand = BTreeMap::from([(0, whole)]);
    let mut set = None;
    for (index, cut) in sheet.cuts.iter().enumerate() {
        let wrong = |what: &str| format!("sheet {}, {what}: {cut:?}", sheet.number);
        if cut.step as usize != index + 1 {
            return Err(wrong("out of order"));
        }
        let piece = in_hand
            .remove(&cut.piece)
            .ok_or_else(|| wrong("not in hand"))?;
        if !piece.is_at(&cut.place) {
            return Err(wrong("another piece"));
        }
        let wanted = (cut.across == Side::Length, cut.fence);
        if cut.kind != StepKind::Rough {
            bench.at_the_saw.push(piece);
            if cut.same_setting != (set == Some(wanted)) {
                return Err(wrong("the fence is elsewhere"));
            }
            bench.settings += u32::from(set != Some(wanted));
            set = Some(wanted);
        }
        let kerf = if cut.kind == StepKind::Rough {
            saws.by_hand
        } else {
            saws.kerf
        };
        let pieces = parted(piece, cut, kerf).ok_or_else(|| wrong("not what a saw makes"))?;
        bench.dust += piece.area() - pieces.iter().map(|(wood, _)| wood.area()).sum::<f64>();
        for (wood, yielded) in pieces {
            match yielded.is {
                PieceKind::Piece => {
                    if in_hand.insert(yielded.piece, wood).is_some() {
                        return Err(wrong("a piece twice"));
                    }
                }
                PieceKind::Part => {
                    let number = yielded.part.ok_or_else(|| wrong("which part?"))?;
                    bench.parts.push((wood, number));
                }
                PieceKind::Offcut => bench.offcuts.push(wood),
                PieceKind::Trimming => bench.trimmings.push(wood),
            }
        }
    }
    // A sheet that is a part as it stands needs no cut.
    if let (true, Some(part)) = (sheet.cuts.is_empty(), sheet.parts.first()) {
        in_hand.clear();
        bench.parts.push((whole, part.number));
    }
    if in_hand.is_empty() {
        Ok(bench)
    } else {
        Err(format!("left in hand: {in_hand:?}"))
    }
}

/// The pieces of one cut, from edge to edge: one stays against the fence, at one end or the other, and beyond the
/// kerf the other falls off, unless the blade takes all of it.
fn parted(piece: Wood, cut: &CutStep, kerf: f64) -> Option<Vec<(Wood, Yielded)>> {
    let along = |wood: &Wood| {
        if cut.across == Side::Length {
            wood.length
        } else {
            wood.width
        }
    };
    let fence = cut.fence.mm();
    let rest = along(&piece) - fence - kerf;
    if fence <= 0.0 || fence >= along(&piece) {
        return None;
    }
    let slice = |from: f64, long: f64| match cut.across {
        Side::Length => Wood {
            x: piece.x + from,
            length: long,
            ..piece
        },
        Side::Width => Wood {
            y: piece.y + from,
            width: long,
            ..piece
        },
    };
    let low = [slice(0.0, fence), slice(fence + kerf, rest)];
    let high = [slice(along(&piece) - fence, fence), slice(0.0, rest)];
    let expected = if rest > SAME { 2 } else { 1 };
    if cut.yields.len() != expected && !(cut.yields.len() == 2 && rest.abs() <= SAME) {
        return None;
    }
    let fits = |ends: &[Wood; 2]| {
        cut.yields
            .iter()
            .zip(ends)
            .all(|(yielded, wood)| wood.is_at(&yielded.place))
    };
    let ends = [low, high].into_iter().find(fits)?;
    Some(ends.into_iter().zip(cut.yields.iter().copied()).collect())
}

/// What was asked for of one part: its size as it is cut, how many, and whether it may turn.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// Its number.
    pub number: u32,
    /// Along the grain, mm.
    pub length: f64,
    /// Across the grain, mm.
    pub width: f64,
    /// How many.
    pub count: u32,
    /// Whether its grain may run across.
    pub may_turn: bool,
}

/// Follows every sheet and compares what is on the bench with what was asked for; `across` where the grain runs along
/// the sheets' width.
///
/// # Errors
/// What is not as it was asked for.
pub fn prove(
    plan: &SheetLayoutPlan,
    wanted: &[Wanted],
    saws: Saws,
    across: bool,
) -> Result<Vec<Bench>, String> {
    let mut left: BTreeMap<u32, u32> = wanted
        .iter()
        .map(|part| (part.number, part.count))
        .collect();
    let mut benches = Vec::new();
    for sheet in &plan.sheets {
        let bench = follow(sheet, saws)?;
        for (wood, number) in &bench.parts {
            let part = wanted
                .iter()
                .find(|part| part.number == *number)
                .ok_or("which part?")?;
            let lies = |length: f64, width: f64| {
                is_same(wood.length, length) && is_same(wood.width, width)
            };
            let (with, against) = (lies(part.length, part.width), lies(part.width, part.length));
            let (right, turned) = if across {
                (against, with)
            } else {
                (with, against)
            };
            if !(right || part.may_turn && turned) {
                return Err(format!("part {number} is {wood:?}"));
            }
            let count = left.get_mut(number).ok_or("which part?")?;
            *count = count
                .checked_sub(1)
                .ok_or(format!("too many of {number}"))?;
        }
        listed(sheet, &bench)?;
        adds_up(sheet, &bench)?;
        benches.push(bench);
    }
    match left.iter().find(|(_, count)| **count > 0) {
        Some(missing) => Err(format!("missing: {missing:?}")),
        None => Ok(benches),
    }
}

/// What the plan lists is what lies there, and no two things lie at one place.
///
/// # Errors
/// What is not so.
pub fn listed(sheet: &LaidSheet, bench: &Bench) -> Result<(), String> {
    let parts: Vec<Wood> = bench.parts.iter().map(|(wood, _)| *wood).collect();
    let pairs = [
        (
            &parts,
            sheet
                .parts
                .iter()
                .map(|part| part.place)
                .collect::<Vec<_>>(),
        ),
        (
            &bench.offcuts,
            sheet.offcuts.iter().map(|offcut| offcut.place).collect(),
        ),
    ];
    for (found, listed) in pairs {
        let all = found.len() == listed.len()
            && found
                .iter()
                .all(|wood| listed.iter().any(|place| wood.is_at(place)));
        if !all {
            return Err(format!("listed {listed:?}, found {found:?}"));
        }
    }
    let all: Vec<Wood> = parts
        .iter()
        .chain(&bench.offcuts)
        .chain(&bench.trimmings)
        .copied()
        .collect();
    for (index, one) in all.iter().enumerate() {
        if all.iter().skip(index + 1).any(|other| one.meets(other)) {
            return Err(format!("something else lies at {one:?}"));
        }
    }
    if sheet.settings == bench.settings {
        Ok(())
    } else {
        Err("settings are counted wrong".to_owned())
    }
}

/// Parts, what is left over and dust are the sheet.
///
/// # Errors
/// What does not add up.
pub fn adds_up(sheet: &LaidSheet, bench: &Bench) -> Result<(), String> {
    let area = sheet.length.mm() * sheet.width.mm();
    let parts: f64 = bench.parts.iter().map(|(wood, _)| wood.area()).sum();
    let rest: f64 = bench
        .offcuts
        .iter()
        .chain(&bench.trimmings)
        .map(Wood::area)
        .sum();
    if (parts + rest + bench.dust - area).abs() > 1.0 {
        return Err(format!("{parts} + {rest} + {} is not {area}", bench.dust));
    }
    if (parts / area - sheet.share).abs() > 1e-4 {
        return Err(format!("share {} is not {}", sheet.share, parts / area));
    }
    Ok(())
}
