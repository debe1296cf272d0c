//! What every drawing of a sled must be.

use proptest::prelude::*;

use super::saws::{Saw, legal, saws, usual};
use super::{Paper, hole_line_tiles, sled_base, sled_travel_plan, sled_travel_side};
use crate::drawing::testing::{assert_legible, polygons, text_areas};
use crate::drawing::{Drawing, Point, Role, Shape};
use crate::sled::SledFitPlan;
use crate::units::Mm;

fn middle(corners: &[Point]) -> Point {
    let count = f64::from(u32::try_from(corners.len()).unwrap());
    let x: Mm = corners.iter().map(|corner| corner.x).sum();
    let y: Mm = corners.iter().map(|corner| corner.y).sum();
    Point::new(x / count, y / count)
}

const PUSHED: [f64; 5] = [0.0, 0.2, 0.5, 0.9, 1.0];

fn travels(plan: &SledFitPlan) -> Vec<Drawing> {
    PUSHED
        .into_iter()
        .flat_map(|pushed| {
            [
                sled_travel_plan(plan, pushed),
                sled_travel_side(plan, pushed),
            ]
        })
        .collect()
}

fn drawings(plan: &SledFitPlan) -> Vec<Drawing> {
    let tiles = [Paper::A4, Paper::Letter].map(|paper| hole_line_tiles(plan, paper));
    let mut all = travels(plan);
    all.push(sled_base(plan));
    all.extend(tiles.concat());
    all
}

/// The contacts off the table are drawn so, and said so.
fn assert_contacts(plan: &SledFitPlan) {
    let job = &plan.job;
    let sides = 1 + usize::from(plan.second_runner.is_some());
    for pushed in PUSHED {
        let face = plan.travel.start * (1.0 - pushed) + plan.travel.end * pushed;
        let off = [job.contact_near, job.contact_far].map(|contact| {
            let at = face - job.carriage_face + contact;
            (at + job.front_to_arbor).is_below(Mm::ZERO)
                || (job.arbor_to_rear - at).is_below(Mm::ZERO)
        });
        let off = off.into_iter().filter(|off| *off).count();
        for (drawing, runners) in [
            (sled_travel_plan(plan, pushed), sides),
            (sled_travel_side(plan, pushed), 1),
        ] {
            assert_eq!(polygons(&drawing, Role::ContactOff).len(), off * runners);
            assert_eq!(polygons(&drawing, Role::Contact).len(), (2 - off) * runners);
            let said = text_areas(&drawing)
                .into_iter()
                .filter(|(text, _)| text.contains(" off"));
            assert_eq!(said.count(), off, "pushed {pushed}");
        }
    }
}

/// Where the plan says what is left at the ends of the stroke, the picture says the same.
fn assert_left_over(plan: &SledFitPlan) {
    let [near, far] = [(0.0, plan.runner.near_left), (1.0, plan.runner.far_left)];
    for (pushed, left) in [near, far] {
        let table = plan.job.front_to_arbor + plan.job.arbor_to_rear;
        if left.is_above(table) {
            continue;
        }
        let words = if left.is_below(Mm::ZERO) { " off" } else { "" };
        let said = format!("{}{words}", left.abs());
        let drawing = sled_travel_side(plan, pushed);
        let texts = text_areas(&drawing);
        let found = texts.iter().any(|(text, _)| {
            let text = text.replace(" of table left", "").replace(" the table", "");
            text == said
        });
        assert!(found, "{said} in {texts:?}");
    }
}

fn assert_holes_on_base(plan: &SledFitPlan) {
    let drawing = sled_base(plan);
    let base = &polygons(&drawing, Role::SledBase)[0];
    let near_edge = base.iter().map(|corner| corner.y).max().unwrap();
    let left_edge = base.iter().map(|corner| corner.x).min().unwrap();
    let holes = polygons(&drawing, Role::Hole);
    let first = &holes[..plan.job.holes.len()];
    for (drawn, hole) in first.iter().zip(&plan.job.holes) {
        let at = middle(drawn);
        assert!((near_edge - at.y).is_same(*hole + plan.runner.forward));
        assert!((at.x - left_edge).is_same(plan.runner.from_base_left));
    }
}

/// Every hole is on a tile, and whatever a tile shows is where the strip has it.
fn assert_tiles(plan: &SledFitPlan, paper: Paper) {
    let (width, height) = paper.printable();
    let tiles = hole_line_tiles(plan, paper);
    let holes: Vec<Mm> = plan
        .job
        .holes
        .iter()
        .map(|hole| *hole + plan.runner.forward)
        .collect();
    assert_eq!(tiles.is_empty(), holes.is_empty());
    let start = holes.iter().copied().fold(Mm::ZERO, Mm::min) - Mm::constant(15.0);
    let mut found = vec![false; holes.len()];
    let mut low = start;
    for tile in &tiles {
        assert_eq!((tile.width, tile.height), (width, height));
        for drawn in polygons(tile, Role::Hole) {
            let place = low + height - middle(&drawn).y;
            let index = holes.iter().position(|hole| hole.is_same(place));
            found[index.unwrap_or_else(|| panic!("a hole at {place}"))] = true;
        }
        assert_bar(tile);
        low += height - Mm::constant(10.0);
    }
    assert!(found.iter().all(|found| *found), "{found:?} of {holes:?}");
}

fn assert_bar(tile: &Drawing) {
    let dimensions = tile
        .items
        .iter()
        .filter(|item| item.role == Role::Dimension);
    let bars: Vec<f64> = dimensions
        .filter_map(|item| match &item.shape {
            Shape::Lines { lines } => Some((lines[0][0].y - lines[0][1].y).mm()),
            Shape::Polygons { .. } | Shape::Text { .. } => None,
        })
        .collect();
    assert_eq!(bars, [100.0]);
}

#[test]
fn examples_are_drawn_in_full() {
    for (index, saw) in saws().iter().enumerate() {
        let plan = saw.plan().unwrap_or_else(|| panic!("saw {index}"));
        for drawing in drawings(&plan) {
            assert_legible(&drawing);
        }
        assert_contacts(&plan);
        assert_left_over(&plan);
        assert_holes_on_base(&plan);
        assert_tiles(&plan, Paper::A4);
    }
}

#[test]
fn the_examples_show_a_runner_on_and_off_the_table() {
    let off = |saw: &Saw| {
        let runner = saw.plan().unwrap().runner;
        [runner.near_left, runner.far_left, runner.left_after].map(|left| left.is_below(Mm::ZERO))
    };
    let cases: Vec<_> = saws().iter().map(off).collect();
    for case in [
        [false; 3],
        [true, false, false],
        [false, true, false],
        [true; 3],
    ] {
        assert!(cases.contains(&case), "{case:?} in {cases:?}");
    }
}

#[test]
fn the_sled_moves_by_its_travel_and_the_saw_stays() {
    let plan = usual().plan().unwrap();
    let at = |pushed, role| middle(&polygons(&sled_travel_plan(&plan, pushed), role)[0]);
    for role in [Role::SledBase, Role::Rail, Role::Runner] {
        let moved = at(0.0, role).y - at(1.0, role).y;
        assert!(moved.is_same(plan.travel.length), "{role:?}: {moved}");
    }
    for role in [Role::Table, Role::Blade] {
        assert_eq!(at(0.0, role), at(1.0, role));
    }
    assert_eq!(
        sled_travel_plan(&plan, f64::NAN),
        sled_travel_plan(&plan, 0.0)
    );
    assert_eq!(sled_travel_side(&plan, 7.0), sled_travel_side(&plan, 1.0));
}

proptest! {
    #[test]
    fn every_legal_sled_is_drawn_in_full(plan in legal()) {
        for drawing in drawings(&plan) {
            assert_legible(&drawing);
        }
    }

    #[test]
    fn the_frame_is_the_same_however_far_it_is_pushed(plan in legal(), pushed in 0.0..1.0_f64) {
        let extent = |drawing: Drawing| (drawing.width, drawing.height);
        prop_assert_eq!(extent(sled_travel_plan(&plan, 0.0)), extent(sled_travel_plan(&plan, pushed)));
        prop_assert_eq!(extent(sled_travel_side(&plan, 0.0)), extent(sled_travel_side(&plan, pushed)));
    }

    #[test]
    fn contacts_and_holes_are_where_the_plan_has_them(plan in legal()) {
        assert_contacts(&plan);
        assert_left_over(&plan);
        assert_holes_on_base(&plan);
        assert_tiles(&plan, Paper::A4);
        assert_tiles(&plan, Paper::Letter);
    }
}
