//! The five-cut test's pictures.

use proptest::prelude::*;

use super::{assert_tidy, least, middle, most, place_of, shapes, texts};
use crate::drawing::item::{Drawing, Point, Role};
use crate::drawing::tools::{HistoryPoint, five_cut_steps, square_correction, square_history};
use crate::square::{SquareTestRequest, Towards, square_test};
use crate::units::Mm;

fn letters(drawing: &Drawing) -> Vec<String> {
    let mut letters: Vec<_> = texts(drawing, Role::Letter)
        .into_iter()
        .map(|(text, ..)| text)
        .collect();
    letters.sort();
    letters
}

#[test]
fn each_step_numbers_the_edges_that_were_cut() {
    let steps = five_cut_steps();
    let expected: [&[&str]; 5] = [
        &["1"],
        &["1", "2"],
        &["1", "2", "3"],
        &["1", "2", "3", "4"],
        &["1", "2", "3", "4", "5", "A", "B"],
    ];
    for (step, expected) in steps.iter().zip(expected) {
        assert_tidy(step);
        assert_eq!(letters(step), expected);
    }
}

/// As the panel of the square test's own check is turned: its right edge comes down onto the fence.
#[test]
fn from_cut_to_cut_the_panel_turns_clockwise() {
    let steps = five_cut_steps();
    let panel = &shapes(&steps[0], Role::BoardA)[0];
    let centre = middle(panel);
    let side = |drawing: &Drawing, edge: usize| {
        let place = place_of(drawing, Role::Letter, &edge.to_string());
        let (right, down) = (place.x.mm() - centre.0, place.y.mm() - centre.1);
        match right.abs() > down.abs() {
            true if right > 0.0 => 0,
            true => 2,
            false if down > 0.0 => 1,
            false => 3,
        }
    };
    for cut in 1..=4 {
        assert_eq!(side(&steps[cut - 1], cut), 0, "cut {cut} is at the blade");
        for edge in 1..=cut {
            let quarters = side(&steps[cut], edge) + 4 - side(&steps[cut - 1], edge);
            assert_eq!(quarters % 4, 1, "edge {edge} after cut {cut}");
        }
    }
}

#[test]
fn the_strip_is_cut_off_the_first_side() {
    let steps = five_cut_steps();
    let last = &steps[4];
    let strip = &shapes(last, Role::BoardA)[1];
    let kerf = &shapes(last, Role::CurrentPass)[0];
    let fence = &shapes(last, Role::Rail)[0];
    assert!(least(strip, |p| p.x) >= most(kerf, |p| p.x));
    let [a, b, first] = ["A", "B", "1"].map(|name| place_of(last, Role::Letter, name));
    let end = |place: Point| most(strip, |p| p.y) - place.y.mm();
    assert_eq!(most(strip, |p| p.y), least(fence, |p| p.y));
    assert!(end(a) < end(b), "A is at the fence");
    for letter in [a, b] {
        assert!(letter.x.mm() > least(strip, |p| p.x) && letter.x.mm() < most(strip, |p| p.x));
    }
    assert!(
        first.x.mm() > most(strip, |p| p.x),
        "the first edge is outside"
    );
    for (words, letter) in [("fence end", a), ("free end", b)] {
        let beside = place_of(last, Role::Words, words);
        assert!((beside.y - letter.y).abs() < Mm::constant(2.0), "{words}");
    }
}

fn correction(taper: f64, arm: f64) -> (Drawing, Towards) {
    let request = SquareTestRequest {
        fence_end: (500.0 + taper).into(),
        free_end: 500.0.into(),
        apart: 340.0.into(),
        pivot_to_adjuster: arm.into(),
        ..SquareTestRequest::default()
    };
    let plan = square_test(&request).unwrap().plan;
    (square_correction(&plan), plan.towards)
}

/// The panel's angle at the blade's corner less a right angle has the sign of the error.
fn out_of_square(drawing: &Drawing) -> f64 {
    let panel = &shapes(drawing, Role::BoardA)[0];
    let (corner, outer) = (panel[2], panel[3]);
    (outer.y - corner.y).mm()
}

#[test]
fn the_arrow_goes_where_the_fence_must_go() {
    for (taper, towards) in [(0.7, Towards::Panel), (-0.7, Towards::Away)] {
        let (drawing, told) = correction(taper, 600.0);
        assert_eq!(told, towards);
        let arrow = shapes(&drawing, Role::Arrow)
            .into_iter()
            .find(|line| line.len() == 2)
            .unwrap();
        let up = (arrow[0].y - arrow[1].y).mm();
        let panel = middle(&shapes(&drawing, Role::BoardA)[0]);
        let fence = middle(&shapes(&drawing, Role::Rail)[0]);
        assert!(panel.1 < fence.1, "the panel lies above the fence");
        assert_eq!(up > 0.0, towards == Towards::Panel);
        assert_eq!(out_of_square(&drawing) > 0.0, towards == Towards::Panel);
        // From the adjuster as it is to the adjuster of the square fence.
        let adjuster = middle(&shapes(&drawing, Role::Hole)[1]);
        let square = middle(&shapes(&drawing, Role::ToCome)[0][..4]);
        assert!((arrow[0].y.mm() - adjuster.1).abs() < 1e-9);
        assert!((arrow[1].y.mm() - square.1).abs() < 1e-9);
        let way = match towards {
            Towards::Panel => "towards the panel",
            _ => "away from the panel",
        };
        // Derived: 0.7 / (4 · 340) · 600 = 0.3088 mm.
        let said = &texts(&drawing, Role::Dimension)[0].0;
        assert!(said.starts_with("0.308") && said.ends_with(way), "{said}");
    }
}

#[test]
fn a_result_within_the_noise_moves_nothing() {
    let (drawing, _) = correction(0.01, 600.0);
    assert_tidy(&drawing);
    assert_eq!(shapes(&drawing, Role::Arrow), Vec::<Vec<Point>>::new());
    assert_eq!(out_of_square(&drawing), 0.0);
    place_of(&drawing, Role::Dimension, "leave the fence as it is");
}

fn history(tests: &[(f64, f64)]) -> Option<Drawing> {
    let tests: Vec<_> = tests
        .iter()
        .map(|(error, uncertainty)| HistoryPoint {
            error_per_500: Mm::new(*error).unwrap(),
            uncertainty_per_500: Mm::new(*uncertainty).unwrap(),
        })
        .collect();
    square_history(&tests)
}

#[test]
fn a_history_takes_two_tests() {
    assert_eq!(history(&[]), None);
    assert_eq!(history(&[(0.1, 0.1)]), None);
    assert!(history(&[(0.1, 0.1), (0.0, 0.1)]).is_some());
}

#[test]
fn a_history_is_to_scale() {
    let tests = [(0.6, 0.1), (-0.2, 0.1), (0.0, 0.2)];
    let drawing = history(&tests).unwrap();
    assert_tidy(&drawing);
    let all = shapes(&drawing, Role::MeasuredUp);
    let (markers, lines): (Vec<_>, Vec<_>) = all.iter().partition(|shape| shape.len() > 2);
    let bars: Vec<_> = lines.iter().filter(|line| line[0].x == line[1].x).collect();
    let places: Vec<_> = markers.iter().map(|marker| middle(marker)).collect();
    assert_eq!((places.len(), bars.len()), (3, 3));
    // The third test found zero; the first is 0.6 above it.
    let zero = places[2].1;
    let scale = (zero - places[0].1) / 0.6;
    assert!(scale > 0.0 && places[0].0 < places[1].0 && places[1].0 < places[2].0);
    for ((place, bar), (error, uncertainty)) in places.iter().zip(&bars).zip(tests) {
        assert!((zero - place.1 - scale * error).abs() < 1e-9);
        assert!((bar[0].x.mm() - place.0).abs() < 1e-9);
        assert!((bar[0].y.mm() - place.1 - scale * uncertainty).abs() < 1e-9);
        assert!((place.1 - bar[1].y.mm() - scale * uncertainty).abs() < 1e-9);
    }
    let zero_line = shapes(&drawing, Role::Axis)
        .into_iter()
        .filter(|line| (line[0].y.mm() - zero).abs() < 1e-9);
    assert_eq!(zero_line.count(), 1);
}

proptest! {
    #[test]
    fn corrections_are_tidy(taper in -499.0..499.0_f64, arm in 10.0..5000.0_f64) {
        assert_tidy(&correction(taper, arm).0);
    }

    #[test]
    fn histories_are_tidy(
        tests in proptest::collection::vec((-60.0..60.0_f64, 0.0..5.0_f64), 2..80),
        scale in 0.0..1.0_f64,
    ) {
        let tests: Vec<_> = tests.iter().map(|(error, noise)| (error * scale, noise * scale)).collect();
        assert_tidy(&history(&tests).unwrap());
    }
}
