//! The router table's picture.

use proptest::prelude::*;

use super::{assert_tidy, least, most, place_of, shapes, texts};
use crate::drawing::item::{Drawing, Point, Role};
use crate::drawing::tools::groove_setup_drawing;
use crate::groove::{GrooveSetupRequest, StoppedRequest, groove_setup};

fn request(from_edge: f64, width: f64, bit: f64) -> GrooveSetupRequest {
    GrooveSetupRequest {
        from_edge: from_edge.into(),
        width: width.into(),
        bit: bit.into(),
        ..GrooveSetupRequest::default()
    }
}

fn stopped(from: f64, to: f64) -> StoppedRequest {
    StoppedRequest {
        from: from.into(),
        to: to.into(),
    }
}

fn drawn(request: &GrooveSetupRequest) -> Drawing {
    groove_setup_drawing(&groove_setup(request).unwrap().plan)
}

/// Left and right end.
fn across(corners: &[Point]) -> [f64; 2] {
    [least(corners, |p| p.x), most(corners, |p| p.x)]
}

/// Places across: the fence's face and the groove's sides in the end view.
fn face_and_groove(drawing: &Drawing) -> [f64; 3] {
    let fence = &shapes(drawing, Role::Rail)[0];
    let board = &shapes(drawing, Role::BoardA)[0];
    let floor = &board[4..6];
    assert_eq!(most(fence, |p| p.x), least(board, |p| p.x), "they touch");
    [most(fence, |p| p.x), floor[0].x.mm(), floor[1].x.mm()]
}

#[test]
fn passes_are_at_their_distances_from_the_fence() {
    // Derived: first e − w/2, last e + w/2 − d; four passes of 6 mm in a groove of 16.
    let drawing = drawn(&request(20.0, 16.0, 6.0));
    assert_tidy(&drawing);
    let [face, near, far] = face_and_groove(&drawing);
    let scale = (far - face) / 28.0;
    assert!((near - face - 12.0 * scale).abs() < 1e-9);
    let mut bits = shapes(&drawing, Role::Blade);
    bits.extend(shapes(&drawing, Role::Pass));
    let expected = [12.0, 12.0 + 10.0 / 3.0, 12.0 + 20.0 / 3.0, 22.0];
    assert_eq!(bits.len(), expected.len());
    for (bit, from_fence) in bits.iter().zip(expected) {
        let [left, right] = across(bit);
        assert!((left - face - from_fence * scale).abs() < 1e-9);
        assert!((right - left - 6.0 * scale).abs() < 1e-9);
    }
    place_of(&drawing, Role::Dimension, "first pass 12 mm");
    place_of(&drawing, Role::Dimension, "last pass 22 mm");
}

#[test]
fn a_groove_far_from_the_fence_is_still_to_be_seen() {
    let drawing = drawn(&request(612.5, 9.3, 6.35));
    assert_tidy(&drawing);
    let [face, near, far] = face_and_groove(&drawing);
    assert!(far - near > 20.0 && near - face > 20.0);
    let [left, right] = across(&shapes(&drawing, Role::Blade)[0]);
    assert!((left - near).abs() < 1e-9);
    assert!(((right - left) / (far - near) - 6.35 / 9.3).abs() < 1e-9);
    assert_eq!(shapes(&drawing, Role::Opening).len(), 1, "broken board");
}

#[test]
fn one_pass_is_said_once() {
    let drawing = drawn(&request(12.0, 6.0, 6.0));
    let said: Vec<_> = texts(&drawing, Role::Dimension);
    assert_eq!(said.len(), 1);
    assert_eq!(said[0].0, "fence to bit 9 mm");
    assert_eq!(shapes(&drawing, Role::Pass), Vec::<Vec<Point>>::new());
}

#[test]
fn a_stopped_groove_starts_and_stops_at_the_bits_sides() {
    let drawing = drawn(&GrooveSetupRequest {
        stopped: stopped(40.0, 100.0).into(),
        depth: 7.0.into(),
        ..request(20.0, 16.0, 16.0)
    });
    assert_tidy(&drawing);
    let [far_side, near_side] = across(&shapes(&drawing, Role::Blade)[1]);
    let scale = (near_side - far_side) / 16.0;
    // Derived: leading end 40 past the far side at the start, 100 past the near side at the stop.
    let start = least(&shapes(&drawing, Role::BoardA)[1], |p| p.x);
    let stop = least(&shapes(&drawing, Role::ToCome)[0], |p| p.x);
    assert!((far_side - start - 40.0 * scale).abs() < 1e-9);
    assert!((near_side - stop - 100.0 * scale).abs() < 1e-9);
    // The board is fed that way.
    let arrow = shapes(&drawing, Role::Arrow)
        .into_iter()
        .find(|line| line.len() == 2)
        .unwrap();
    assert_eq!(arrow[1].x < arrow[0].x, stop < start);
    for words in ["start 40 mm", "stop 100 mm", "7 mm"] {
        place_of(&drawing, Role::Dimension, words);
    }
}

proptest! {
    #[test]
    fn every_legal_groove_is_tidy(
        width in 0.2..200.0_f64,
        share in 0.01..=1.0_f64,
        room in 0.0..2900.0_f64,
        near: bool,
        from in 0.0..2000.0_f64,
        longer in 0.0..900.0_f64,
        depth in proptest::option::of(0.1..200.0_f64),
        is_stopped: bool,
    ) {
        let bit = (width * share).max(0.5);
        let width = width.max(bit).min(200.0);
        let bit = bit.min(100.0);
        let edge = width / 2.0 + if near { room / 1000.0 } else { room };
        let ends = stopped(from, from + bit + longer);
        let request = GrooveSetupRequest {
            stopped: if is_stopped { ends.into() } else { Default::default() },
            depth: depth.map(Into::into).unwrap_or_default(),
            ..request(edge, width, bit)
        };
        assert_tidy(&drawn(&request));
    }
}
