//! Drawings of sleds on two saws, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::drawing::{
    Drawing, Paper, hole_line_tiles, sled_base, sled_travel_plan, sled_travel_side,
};
use notchwright_core::given::Given;
use notchwright_core::sled::{
    BaseRequest, BladeRequest, CutRequest, RunnerRequest, SledFitPlan, SledFitRequest, SledRequest,
    TableRequest, sled_fit,
};
use notchwright_core::units::{Mm, write_number};

const STYLE: &str = include_str!("../../golden/sled-style.css");

/// A ten-inch saw with a deep table, and a sled whose runner stays on it.
fn usual() -> SledFitRequest {
    SledFitRequest {
        saw: TableRequest {
            blade_to_slot: 120.0.into(),
            slot_side: "left".into(),
            front_to_arbor: 400.0.into(),
            arbor_to_rear: 300.0.into(),
            greatest_height: 80.0.into(),
            ..TableRequest::default()
        }
        .into(),
        blade: BladeRequest {
            diameter: 254.0.into(),
            kerf: 3.2.into(),
        }
        .into(),
        sled: SledRequest {
            base: BaseRequest {
                thickness: 15.0.into(),
                width: 500.0.into(),
                length: 600.0.into(),
                ..BaseRequest::default()
            }
            .into(),
            carriage_face: 180.0.into(),
            front_rail: 380.0.into(),
            runner: runner(&[40.0, 120.0, 240.0, 400.0]),
            ..SledRequest::default()
        }
        .into(),
        cut: CutRequest {
            depth: 18.5.into(),
            board_thickness: 12.0.into(),
            ..CutRequest::default()
        }
        .into(),
        ..SledFitRequest::default()
    }
}

fn runner(holes: &[f64]) -> Given<RunnerRequest> {
    RunnerRequest {
        contact_near: 20.0.into(),
        contact_far: 420.0.into(),
        width: 19.0.into(),
        holes: holes
            .iter()
            .map(|hole| (*hole).into())
            .collect::<Vec<_>>()
            .into(),
        ..RunnerRequest::default()
    }
    .into()
}

/// The same sled on a saw with a short table in front, a slot on each side, and a deeper cut.
fn short() -> SledFitRequest {
    let mut request = usual();
    request.saw = TableRequest {
        blade_to_slot: 112.0.into(),
        slot_side: "right".into(),
        second_slot: 128.0.into(),
        front_to_arbor: 262.0.into(),
        arbor_to_rear: 330.0.into(),
        greatest_height: 80.0.into(),
        ..TableRequest::default()
    }
    .into();
    if let Given::Value(cut) = &mut request.cut {
        cut.depth = 36.0.into();
    }
    request
}

fn plan(request: &SledFitRequest) -> SledFitPlan {
    sled_fit(request).expect("a good request").plan
}

fn golden(name: &str, drawing: &Drawing) {
    compare(name, STYLE, drawing, |length: Mm| {
        format!("{} mm", write_number(length.mm(), 2))
    });
}

fn travel(name: &str, plan: &SledFitPlan) {
    for (place, pushed) in [("near", 0.0), ("half", 0.5), ("far", 1.0)] {
        let above = sled_travel_plan(plan, pushed);
        golden(&format!("{name}-{place}"), &above);
        let side = sled_travel_side(plan, pushed);
        golden(&format!("{name}-side-{place}"), &side);
    }
}

#[test]
fn over_the_stroke_of_a_usual_saw() {
    travel("sled-travel", &plan(&usual()));
}

#[test]
fn over_the_stroke_of_a_saw_that_the_runner_leaves() {
    travel("sled-travel-short", &plan(&short()));
}

#[test]
fn the_base_of_each() {
    golden("sled-base", &sled_base(&plan(&usual())));
    golden("sled-base-short", &sled_base(&plan(&short())));
}

#[test]
fn the_hole_line_of_each() {
    for (name, request, paper) in [
        ("sled-holes", usual(), Paper::A4),
        ("sled-holes-short", short(), Paper::Letter),
    ] {
        for (index, tile) in hole_line_tiles(&plan(&request), paper).iter().enumerate() {
            golden(&format!("{name}-{}", index + 1), tile);
        }
    }
}
