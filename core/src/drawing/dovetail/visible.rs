//! What can be seen of the edges that overlapping passes leave.

use super::plane::{Place, Window};

/// Nearer to a side than this is on it, mm.
const ON: f64 = 1e-9;
/// How far inside the board its own edges are looked at, so that passes that end along them take them too.
const INSET: f64 = 1e-6;

/// The outline of a board within a window that these convex passes have been taken from: the window's sides
/// that `is_edge` names as left, right, shallow and deep, and walls and floors of the passes.
pub(super) fn outline(
    board: &Window,
    is_edge: [bool; 4],
    passes: &[Vec<Place>],
) -> Vec<Vec<Place>> {
    let inset = Window {
        left: board.left + INSET,
        right: board.right - INSET,
        shallow: board.shallow + INSET,
        deep: board.deep - INSET,
    };
    let [a, b, c, d] = inset.corners();
    let sides = [[d, a], [b, c], [a, b], [c, d]];
    let edges = sides.into_iter().zip(is_edge);
    let edges = edges.filter_map(|(side, is_edge)| is_edge.then_some(side));
    let walls = passes.iter().flat_map(|pass| {
        let next = pass.iter().cycle().skip(1);
        pass.iter().zip(next).map(|(from, to)| [*from, *to])
    });
    let walls = walls.flat_map(|wall| inset.line(&wall));
    let walls = walls.filter_map(|wall| Some([*wall.first()?, *wall.last()?]));
    let lines = edges.chain(walls);
    lines.flat_map(|line| uncovered(line, passes)).collect()
}

/// The parts of a line that are inside none of the passes.
fn uncovered([from, to]: [Place; 2], passes: &[Vec<Place>]) -> Vec<Vec<Place>> {
    let mut covered: Vec<(f64, f64)> = passes
        .iter()
        .filter_map(|pass| share_inside([from, to], pass))
        .collect();
    covered.sort_by(|a, b| a.0.total_cmp(&b.0));
    let at = |share: f64| {
        (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        )
    };
    let mut parts = Vec::new();
    let mut reached = 0.0_f64;
    for (enters, leaves) in covered.into_iter().chain([(1.0, 1.0)]) {
        if enters - reached > ON {
            parts.push(vec![at(reached), at(enters)]);
        }
        reached = reached.max(leaves);
    }
    parts
}

/// Between which shares of a line it is inside a convex outline, its sides left out.
pub(super) fn share_inside([from, to]: [Place; 2], outline: &[Place]) -> Option<(f64, f64)> {
    let next = outline.iter().cycle().skip(1);
    let sides = || outline.iter().zip(next.clone());
    let twice: f64 = sides().map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (a, b) in sides() {
        let along = (b.0 - a.0, b.1 - a.1);
        let length = (along.0 * along.0 + along.1 * along.1).sqrt();
        if length <= ON {
            continue;
        }
        let off = |place: Place| {
            let cross = along.0 * (place.1 - a.1) - along.1 * (place.0 - a.0);
            cross / length * twice.signum()
        };
        let (start, end) = (off(from), off(to));
        if start.max(end) <= ON {
            return None;
        }
        let crossing = start / (start - end);
        if start < 0.0 {
            enters = enters.max(crossing);
        } else if end < 0.0 {
            leaves = leaves.min(crossing);
        }
    }
    (enters < leaves).then_some((enters, leaves))
}

#[cfg(test)]
mod tests {
    use super::{outline, share_inside};
    use crate::drawing::dovetail::plane::Window;

    const BOARD: Window = Window {
        left: 0.0,
        right: 10.0,
        shallow: 0.0,
        deep: 10.0,
    };

    fn block(left: f64, right: f64, deep: f64) -> Vec<(f64, f64)> {
        vec![(left, 0.0), (right, 0.0), (right, deep), (left, deep)]
    }

    #[test]
    fn a_line_is_inside_between_two_sides() {
        let pass = block(2.0, 4.0, 5.0);
        assert_eq!(
            share_inside([(0.0, 1.0), (10.0, 1.0)], &pass),
            Some((0.2, 0.4))
        );
        assert_eq!(share_inside([(0.0, 6.0), (10.0, 6.0)], &pass), None);
        // Along a side is not inside.
        assert_eq!(share_inside([(2.0, 0.0), (2.0, 5.0)], &pass), None);
    }

    #[test]
    fn walls_inside_other_passes_are_gone() {
        let passes = [block(2.0, 4.0, 5.0), block(3.0, 6.0, 5.0)];
        let lines = outline(&BOARD, [false, false, true, false], &passes);
        let upright: Vec<f64> = lines
            .iter()
            .filter(|line| line[0].0 == line[1].0)
            .map(|line| line[0].0)
            .collect();
        assert_eq!(upright, [2.0, 6.0]);
        let along_end: Vec<(f64, f64)> = lines
            .iter()
            .filter(|line| line[0].1 < 1e-3 && line[1].1 < 1e-3)
            .map(|line| (line[0].0, line[1].0))
            .collect();
        assert_eq!(along_end.len(), 2);
        assert!((along_end[0].1 - 2.0).abs() < 1e-5 && (along_end[1].0 - 6.0).abs() < 1e-5);
    }
}
