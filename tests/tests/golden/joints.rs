//! Drawings of a few joints, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::cutter::{CutterRequest, GrindRequest};
use notchwright_core::dial::ScrewRequest;
use notchwright_core::drawing::{
    Drawing, Paper, board_progress, box_joint_drawing, box_joint_mated, box_joint_template,
};
use notchwright_core::dryfit::{Seat, Swept, dry_fit};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, LayoutRequest, box_joint,
};
use notchwright_core::units::{Mm, write_number};

/// As drawings are saved.
const STYLE: &str = include_str!("../../../web/src/export/style.css");

/// A joint between boards 12 and 18 mm thick, cut 3.07 mm wide on a screw of 16 threads per inch and 80 divisions.
fn demo(width: f64, layout: LayoutRequest) -> BoxJointRequest {
    BoxJointRequest {
        width: width.into(),
        a: board(12.0),
        b: board(18.0),
        cutter: cutter(3.07),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        layout: layout.into(),
        ..BoxJointRequest::default()
    }
}

fn board(thickness: f64) -> Given<BoardRequest> {
    BoardRequest {
        thickness: thickness.into(),
    }
    .into()
}

fn cutter(kerf: f64) -> Given<CutterRequest> {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
    .into()
}

fn plan(request: &BoxJointRequest) -> BoxJointPlan {
    box_joint(request).expect("a good request").plan
}

fn golden(name: &str, drawing: &Drawing) {
    compare(name, STYLE, drawing, |length: Mm| {
        write_number(length.mm(), 3)
    });
}

#[test]
fn nine_fingers() {
    let plan = plan(&demo(140.0, LayoutRequest::count(9.0)));
    golden("nine-fingers", &box_joint_drawing(&plan));
    golden(
        "nine-fingers-mated",
        &box_joint_mated(&plan, Mm::constant(18.0)),
    );
    golden(
        "nine-fingers-at-the-saw",
        &board_progress(&plan.sets[0], plan.width, 7),
    );
}

#[test]
fn a_template_in_tiles() {
    let plan = plan(&demo(310.0, LayoutRequest::count(15.0)));
    for (index, tile) in box_joint_template(&plan, Paper::A4).iter().enumerate() {
        golden(&format!("box-template-{}", index + 1), tile);
    }
}

#[test]
fn even_count() {
    let plan = plan(&demo(140.0, LayoutRequest::count(8.0)));
    golden("even-count", &box_joint_drawing(&plan));
}

#[test]
fn one_pass_per_socket() {
    for leftover in ["ends", "far", "rip"] {
        let request = BoxJointRequest {
            cutter: cutter(9.53),
            ..demo(140.0, LayoutRequest::one_pass(leftover))
        };
        golden(
            &format!("one-pass-{leftover}"),
            &box_joint_drawing(&plan(&request)),
        );
    }
}

#[test]
fn mirrored_pattern() {
    let layout = LayoutRequest::pattern(&[1.0, 1.0, 2.0, 1.0, 3.0], true);
    golden(
        "mirrored-pattern",
        &box_joint_drawing(&plan(&demo(150.0, layout))),
    );
}

#[test]
fn ridges_under_bevelled_teeth() {
    let grind = GrindRequest {
        kind: "alternate".into(),
        bevel_degrees: 20.0.into(),
    };
    let teeth = CutterRequest {
        kerf: 4.0.into(),
        grind: grind.into(),
        ..CutterRequest::default()
    };
    let request = BoxJointRequest {
        cutter: teeth.into(),
        ..demo(80.0, LayoutRequest::count(5.0))
    };
    let plan = plan(&request);
    golden("bevelled-teeth", &box_joint_drawing(&plan));
    golden(
        "bevelled-teeth-mated",
        &box_joint_mated(&plan, Mm::constant(18.0)),
    );
}

#[test]
fn awkward_sizes() {
    let request = BoxJointRequest {
        a: board(11.6),
        b: board(11.6),
        ..demo(217.3, LayoutRequest::finger(12.0))
    };
    golden("awkward-sizes", &box_joint_drawing(&plan(&request)));
}

#[test]
fn readings_that_rise_towards_the_reference_edge() {
    let screw = ScrewRequest {
        threads_per_inch: 16.0.into(),
        divisions: 80.0.into(),
        rises: "towards".into(),
        ..ScrewRequest::default()
    };
    let request = BoxJointRequest {
        screw: screw.into(),
        ..demo(140.0, LayoutRequest::count(9.0))
    };
    let plan = plan(&request);
    golden("towards-the-edge", &box_joint_drawing(&plan));
    golden(
        "towards-the-edge-at-the-saw",
        &board_progress(&plan.sets[1], plan.width, 7),
    );
}

#[test]
fn two_hundred_fingers() {
    let request = BoxJointRequest {
        cutter: cutter(0.6),
        ..demo(300.0, LayoutRequest::count(200.0))
    };
    let plan = plan(&request);
    golden("two-hundred-fingers", &box_joint_drawing(&plan));
    golden(
        "two-hundred-fingers-mated",
        &box_joint_mated(&plan, Mm::constant(18.0)),
    );
    golden(
        "two-hundred-fingers-at-the-saw",
        &board_progress(&plan.sets[0], plan.width, 120),
    );
}

#[test]
fn narrow_and_thick() {
    let request = BoxJointRequest {
        a: board(50.0),
        b: board(40.0),
        ..demo(20.0, LayoutRequest::count(3.0))
    };
    let plan = plan(&request);
    golden("narrow-and-thick", &box_joint_drawing(&plan));
    golden(
        "narrow-and-thick-mated",
        &box_joint_mated(&plan, Mm::constant(40.0)),
    );
    golden(
        "narrow-and-thick-at-the-saw",
        &board_progress(&plan.sets[1], plan.width, 2),
    );
}

/// As if the carriage had slipped before board B was cut: the drawing must not flatter.
#[test]
fn slipped_stops() {
    let mut plan = plan(&demo(140.0, LayoutRequest::count(9.0)));
    for stop in &mut plan.sets[1].stops {
        stop.at += Mm::constant(1.6);
    }
    let seat = Seat {
        thickness_a: Mm::constant(12.0),
        thickness_b: Mm::constant(18.0),
        proud: Mm::ZERO,
    };
    let swept = |index: usize| Swept::new(&plan.sets[index], plan.width);
    plan.dry_fit = dry_fit(&swept(0), &swept(1), seat);
    assert!(plan.dry_fit.clash);
    golden("slipped-mated", &box_joint_mated(&plan, Mm::constant(18.0)));
}
