//! What every drawing of a dovetail must be.

use super::joint::{Joint, Mate};
use super::{dovetail_boards, dovetail_mated, dovetail_progress, marking_template};
use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;
use crate::drawing::testing::{lines, polygons, text_areas};
use crate::drawing::{Drawing, Paper, Point, Role};
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::joint::dovetail::{
    DovetailPlan, DovetailRequest, MeasuredRequest, SlopeRequest, dovetail,
};
use crate::units::Mm;

pub(super) fn board(thickness: f64) -> Given<BoardRequest> {
    let board = BoardRequest {
        thickness: thickness.into(),
    };
    board.into()
}

pub(super) fn request(rounding: &str) -> DovetailRequest {
    let screw = ScrewRequest {
        lead: 2.0.into(),
        divisions: 100.0.into(),
        rounding: rounding.into(),
        ..ScrewRequest::default()
    };
    DovetailRequest {
        width: 140.0.into(),
        tail: board(18.0),
        pin: board(12.0),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        half_pin: 6.0.into(),
        narrow_pin: 5.0.into(),
        cutter: CutterRequest {
            kerf: 3.2.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: screw.into(),
        ..DovetailRequest::default()
    }
}

fn plan(request: &DovetailRequest) -> DovetailPlan {
    dovetail(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

pub(super) fn drawings(plan: &DovetailPlan) -> Vec<Drawing> {
    let mut all = vec![dovetail_boards(plan), dovetail_mated(plan)];
    for set in &plan.sets {
        let passes = set.stops.len();
        let befores = [0, passes / 2, passes - 1, passes];
        all.extend(befores.map(|before| dovetail_progress(plan, set, before)));
    }
    for paper in [Paper::A4, Paper::Letter] {
        all.extend(marking_template(plan, paper));
    }
    all
}

#[test]
fn flanks_are_where_the_stops_put_them() {
    let plan = plan(&request("division"));
    let drawing = dovetail_boards(&plan);
    let outline = &lines(&drawing, Role::Outline)[0];
    let left = outline.iter().map(|at| at.x).min().unwrap();
    let end = outline.iter().map(|at| at.y).min().unwrap();
    let at_end: Vec<f64> = outline
        .iter()
        .filter(|at| at.y.is_same(end))
        .map(|at| (at.x - left).mm())
        .collect();
    // Left walls of sockets are the first set's nearest passes, right walls the turned-over set's.
    let first_of = |flipped: bool| {
        let set = plan.sets.iter().find(|set| set.flipped == flipped).unwrap();
        let sockets = set.stops.chunk_by(|one, next| one.space == next.space);
        sockets.map(|stops| stops[0].at.mm()).collect::<Vec<_>>()
    };
    let (lefts, rights) = (first_of(false), first_of(true));
    assert_eq!(at_end.len(), lefts.len() + rights.len());
    for (tail, right) in rights.iter().rev().enumerate() {
        assert!((at_end[2 * tail] - (140.0 - right)).abs() < 1e-9);
    }
    for (tail, left) in lefts.iter().enumerate() {
        assert!((at_end[2 * tail + 1] - left).abs() < 1e-9);
    }
}

#[test]
fn turned_over_the_board_is_mirrored() {
    let weights: Vec<Given<f64>> = [2.0, 3.0, 4.0, 6.0].map(Given::from).to_vec();
    let plan = plan(&DovetailRequest {
        weights: weights.into(),
        ..request("division")
    });
    let [usual, turned_over] = [false, true].map(|flipped| {
        let set = plan.sets.iter().find(|set| set.flipped == flipped).unwrap();
        let drawing = dovetail_progress(&plan, set, 0);
        let pass = polygons(&drawing, Role::CurrentPass)[0].clone();
        let bar = lines(&drawing, Role::ReferenceEdge)[0][0].x;
        (drawing, pass, bar, set.stops[0].at)
    });
    for (drawing, pass, bar, at) in [&usual, &turned_over] {
        let margin = (*bar).min(drawing.width - *bar);
        let end = pass.iter().map(|corner| corner.y).max().unwrap();
        let at_end = pass.iter().filter(|corner| corner.y.is_same(end));
        let near = at_end.map(|corner| corner.x).min().unwrap();
        // In either set the stop is measured from the edge at the left.
        assert!((near - margin).is_same(*at), "{near} for {at}");
    }
    assert!(usual.2 < usual.0.width / 2.0);
    assert!(turned_over.2 > turned_over.0.width / 2.0);
    // The blade leans the same way in both: to the right as it goes in, seen with the end down.
    for (_, pass, ..) in [&usual, &turned_over] {
        let deepest = pass.iter().min_by_key(|corner| corner.y).unwrap();
        let at_end = pass
            .iter()
            .max_by_key(|corner| (corner.y, corner.x))
            .unwrap();
        assert!(deepest.x < at_end.x);
    }
}

#[test]
fn all_is_cut_after_the_last_pass() {
    let plan = plan(&request("division"));
    for set in &plan.sets {
        let after = dovetail_progress(&plan, set, set.stops.len());
        assert!(polygons(&after, Role::CurrentPass).is_empty());
        assert!(lines(&after, Role::ToCome).is_empty());
        assert_eq!(after, dovetail_progress(&plan, set, set.stops.len() + 7));
        let wood = |before| -> f64 {
            let drawing = dovetail_progress(&plan, set, before);
            let role = super::marks::wood(set.board);
            polygons(&drawing, role).iter().map(|area| size(area)).sum()
        };
        for before in 0..set.stops.len() {
            assert!(wood(before + 1) < wood(before), "{} {before}", set.name);
        }
    }
}

fn size(corners: &[Point]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let pairs = corners.iter().zip(next);
    let twice: f64 = pairs
        .map(|(a, b)| a.x.mm() * b.y.mm() - b.x.mm() * a.y.mm())
        .sum();
    twice.abs() / 2.0
}

#[test]
fn overlaps_are_hatched_and_named() {
    let measured = MeasuredRequest {
        lean_degrees: 6.125.into(),
        ..MeasuredRequest::default()
    };
    let off = plan(&DovetailRequest {
        measured: measured.into(),
        ..request("division")
    });
    assert!(off.dry_fit.clash);
    let drawing = dovetail_mated(&off);
    assert!(!lines(&drawing, Role::Clash).is_empty());
    let said: Vec<String> = text_areas(&drawing)
        .into_iter()
        .map(|(text, _)| text)
        .collect();
    assert!(said.contains(&"overlap".to_owned()), "{said:?}");
    let size = off.dry_fit.smallest_gap.abs().to_string();
    assert!(said.iter().any(|text| text.starts_with(&size)), "{said:?}");
    let good = dovetail_mated(&plan(&request("none")));
    assert!(polygons(&good, Role::Clash).is_empty());
}

#[test]
fn the_overlap_drawn_is_the_overlap_measured() {
    let measured = MeasuredRequest {
        lean_degrees: 6.125.into(),
        ..MeasuredRequest::default()
    };
    let plan = plan(&DovetailRequest {
        measured: measured.into(),
        ..request("division")
    });
    let joint = Joint::new(&plan);
    let area = |corners: &Vec<(f64, f64)>| {
        let next = corners.iter().cycle().skip(1);
        let pairs = corners.iter().zip(next);
        let twice: f64 = pairs.map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
        twice.abs() / 2.0
    };
    let mates = joint.mates();
    let clash: f64 = mates
        .iter()
        .filter_map(Mate::overlap)
        .map(|part| area(&part))
        .sum();
    let open: f64 = mates
        .iter()
        .filter_map(Mate::open)
        .map(|part| area(&part))
        .sum();
    assert!(clash > 1.0);
    assert!((clash - plan.dry_fit.clash_area_a).abs() < 1e-6);
    assert!((open - plan.dry_fit.gap_area_a).abs() < 1e-6);
}

#[test]
fn every_tile_has_a_bar_of_100_mm_and_the_layout_at_full_size() {
    let plan = plan(&DovetailRequest {
        width: 400.0.into(),
        pin: board(18.0),
        lap: 5.0.into(),
        tails: 9.0.into(),
        ..request("division")
    });
    for paper in [Paper::A4, Paper::Letter] {
        let tiles = marking_template(&plan, paper);
        assert!(tiles.len() > 1);
        for tile in &tiles {
            assert_eq!((tile.width, tile.height), paper.printable());
            let bars = lines(tile, Role::Dimension);
            let length = (bars[0][1].y - bars[0][0].y).mm().abs();
            assert!((length - 100.0).abs() < 1e-9, "{length}");
        }
        // On the first tile the first socket's tip and base are where the layout has them.
        let outlines = lines(&tiles[0], Role::Outline);
        let edge = lines(&tiles[0], Role::ReferenceEdge)[0][0].y;
        let socket = &outlines[0];
        let ys: Vec<f64> = socket.iter().take(4).map(|at| (at.y - edge).mm()).collect();
        let tail = plan.tails[0];
        let expected = [tail.from_tip, tail.to_tip, tail.to_base, tail.from_base].map(Mm::mm);
        for (got, expected) in ys.iter().zip(expected) {
            assert!((got - expected).abs() < 1e-9, "{got} for {expected}");
        }
    }
}

#[test]
fn boards_too_thick_for_the_paper_have_no_template() {
    let plan = plan(&DovetailRequest {
        tail: board(150.0),
        pin: board(150.0),
        slope: SlopeRequest::ratio(20.0).into(),
        ..request("division")
    });
    assert!(marking_template(&plan, Paper::A4).is_empty());
}
