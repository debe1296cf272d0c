//! Sleds on saws: handbook rows, refusals, and what holds for all of them.

use proptest::prelude::*;

use super::{
    BaseRequest, BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledFitPlan,
    SledFitRequest, SledRequest, TableRequest, sled_fit,
};
use crate::given::Given;
use crate::problem::Code;
use crate::units::Mm;

/// D 254, base 15, depth 18.5, T 12, clearance 5, over 2; a window of 200 and a runner from 20 to 420.
fn request() -> SledFitRequest {
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
            runner: RunnerRequest {
                contact_near: 20.0.into(),
                contact_far: 420.0.into(),
                width: 19.0.into(),
                ..RunnerRequest::default()
            }
            .into(),
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

pub(crate) fn saw(change: impl FnOnce(&mut TableRequest)) -> SledFitRequest {
    let mut request = request();
    if let Given::Value(saw) = &mut request.saw {
        change(saw);
    }
    request
}

fn sled(change: impl FnOnce(&mut SledRequest)) -> SledFitRequest {
    let mut request = request();
    if let Given::Value(sled) = &mut request.sled {
        change(sled);
    }
    request
}

fn runner(change: impl FnOnce(&mut RunnerRequest)) -> SledFitRequest {
    sled(|sled| {
        if let Given::Value(runner) = &mut sled.runner {
            change(runner);
        }
    })
}

fn cut(change: impl FnOnce(&mut CutRequest)) -> SledFitRequest {
    let mut request = request();
    if let Given::Value(cut) = &mut request.cut {
        change(cut);
    }
    request
}

fn plan(request: &SledFitRequest) -> SledFitPlan {
    sled_fit(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

fn codes(request: &SledFitRequest) -> Vec<&'static str> {
    sled_fit(request)
        .unwrap()
        .notes
        .iter()
        .map(|note| note.code)
        .collect()
}

#[track_caller]
fn near(got: Mm, expected: f64) {
    assert!(
        (got.mm() - expected).abs() < 6e-4,
        "{got} for {expected} mm"
    );
}

#[test]
fn a_ten_inch_blade_through_a_15_mm_base() {
    // Derived: H 33.5, c(0) 85.946, c(base) 66.006, smallest travel 85.006, smallest window 149.011.
    let plan = plan(&request());
    near(plan.height, 33.5);
    near(plan.half_chord_table, 85.946);
    near(plan.half_chord_base, 66.006);
    near(plan.smallest_travel, 85.006);
    near(plan.smallest_window, 149.011);
    // Derived: the face starts 200 − 66.006 before the axis and ends 2 past it.
    near(plan.travel.start, -133.994);
    near(plan.travel.end, 2.0);
    near(plan.travel.length, 135.994);
    // Derived: the blade reaches the rail on top of the base at the start of the stroke.
    near(plan.slot.top_far, 380.0);
    near(plan.slot.under_far, 380.0 + 85.946 - 66.006);
    near(plan.slot.top_near, 180.0 - 2.0 - 66.006);
    // Derived: 80 − 15 = 65 for the saw, but the window of 200 leaves (200 − 12 − 5) / 2 = 91.5 on either side:
    // 127 − √(127² − 91.5²) = 38.928.
    near(plan.deepest_cut, 38.928);
}

#[test]
fn a_large_blade_and_a_deep_cut() {
    // Derived: D 315, base 15, depth 65, T 19, 5, 3 → c(base) 127.475, smallest travel 154.475, smallest window 278.951.
    let mut request = sled(|sled| sled.front_rail = 480.0.into());
    request.blade = BladeRequest {
        diameter: 315.0.into(),
        kerf: 3.2.into(),
    }
    .into();
    request.cut = CutRequest {
        depth: 65.0.into(),
        board_thickness: 19.0.into(),
        over: 3.0.into(),
        ..CutRequest::default()
    }
    .into();
    let plan = plan(&request);
    near(plan.half_chord_base, 127.475);
    near(plan.smallest_travel, 154.475);
    near(plan.smallest_window, 278.951);
}

#[test]
fn twenty_and_a_hundred_left_over_move_forty() {
    // Common practice: 20 left at the near end and 100 at the far end → 40 forward.
    let measured = LeftOverRequest {
        near: 20.0.into(),
        far: 100.0.into(),
    };
    let plan = plan(&SledFitRequest {
        measured: measured.into(),
        ..request()
    });
    let measured = plan.from_measured.unwrap();
    near(measured.forward, 40.0);
    near(measured.left_after, 60.0);
}

#[test]
fn the_runner_goes_beside_the_blade() {
    // Derived: blade line in the middle of a 500 mm base; slots at 120 on the left and 118 from the tooth on the right.
    let left = plan(&request()).runner;
    near(left.from_blade, 120.0);
    near(left.from_base_left, 130.0);
    let right = saw(|saw| {
        saw.slot_side = "right".into();
        saw.measured_from = "nearTooth".into();
        saw.blade_to_slot = 118.0.into();
        saw.second_slot = 120.0.into();
    });
    let plan = plan(&right);
    near(plan.runner.from_blade, 119.6);
    near(plan.runner.from_base_left, 369.6);
    near(plan.second_runner.unwrap().from_base_left, 250.0 - 121.6);
}

#[test]
fn play_lets_the_sled_turn() {
    // Derived: 0.1 over 400 → 0.00025 rad; over 12 mm 0.003, over 140 mm 0.035.
    let mut request = cut(|cut| cut.board_width = 140.0.into());
    request.play = 0.1.into();
    let yaw = plan(&request).yaw.unwrap();
    assert!((yaw.degrees - 0.014_324).abs() < 1e-6);
    near(yaw.over_thickness, 0.003);
    near(yaw.over_width.unwrap(), 0.035);
    let holes = runner(|runner| {
        runner.hole_clearance = 0.5.into();
        runner.holes = vec![90.0.into(), 340.0.into()].into();
    });
    near(plan(&holes).holes.unwrap().per500, 1.0);
    near(
        plan(&cut(|cut| cut.carriage_travel = 320.0.into()))
            .widest_board
            .unwrap(),
        316.8,
    );
}

#[test]
fn what_cannot_be_is_refused_with_what_could() {
    let cases = [
        (
            "blade smaller than its height",
            {
                let mut r = request();
                r.blade = BladeRequest {
                    diameter: 60.0.into(),
                    kerf: 2.0.into(),
                }
                .into();
                r
            },
            "blade.diameter",
            Code::TooSmall,
            Some(67.0),
        ),
        (
            "deeper than the saw reaches",
            cut(|cut| cut.depth = 70.0.into()),
            "cut.depth",
            Code::BeyondHeight,
            Some(65.0),
        ),
        (
            "window too small",
            sled(|sled| sled.front_rail = 300.0.into()),
            "sled.frontRail",
            Code::TooSmall,
            Some(329.011),
        ),
        (
            "contacts crossed",
            runner(|runner| runner.contact_far = 10.0.into()),
            "sled.runner.contactFar",
            Code::TooSmall,
            Some(20.0),
        ),
        (
            "runner longer than the table",
            runner(|runner| runner.contact_far = 800.0.into()),
            "sled.runner.contactFar",
            Code::TooLarge,
            Some(720.0),
        ),
        (
            "runner beside the base",
            saw(|saw| saw.blade_to_slot = 245.0.into()),
            "sled.bladeLine",
            Code::TooSmall,
            None,
        ),
        (
            "rail off the base",
            sled(|sled| sled.front_rail = 610.0.into()),
            "sled.frontRail",
            Code::TooLarge,
            Some(600.0),
        ),
        (
            "clearance of one hole",
            runner(|runner| {
                runner.hole_clearance = 0.5.into();
                runner.holes = vec![90.0.into()].into();
            }),
            "sled.runner.holes",
            Code::Missing,
            None,
        ),
    ];
    for (what, request, field, code, limit) in cases {
        let problems = sled_fit(&request).expect_err(what);
        let found = problems
            .iter()
            .find(|problem| problem.field == field && problem.code == code);
        let found = found.unwrap_or_else(|| panic!("{what}: {problems:?}"));
        if let Some(limit) = limit {
            assert!(
                found.limit.is_some_and(|got| (got - limit).abs() < 1e-3),
                "{what}: {found:?}"
            );
        }
    }
}

#[test]
fn an_empty_request_names_what_it_needs() {
    let problems = sled_fit(&SledFitRequest::default()).unwrap_err();
    let fields: Vec<_> = problems
        .iter()
        .map(|problem| problem.field.as_str())
        .collect();
    assert_eq!(fields, ["blade", "saw", "sled", "cut"]);
}

#[test]
fn notes_come_when_they_should() {
    assert!(!codes(&request()).contains(&"leaves-table"));
    assert!(codes(&saw(|saw| saw.front_to_arbor = 250.0.into())).contains(&"leaves-table"));
    let short = saw(|saw| {
        saw.front_to_arbor = 250.0.into();
        saw.arbor_to_rear = 200.0.into();
    });
    assert!(codes(&short).contains(&"runner-too-long"));
    assert!(codes(&saw(|saw| saw.slot_section = "t".into())).contains(&"t-slot"));
    assert!(codes(&request()).contains(&"plain-slot"));
    let measured = LeftOverRequest {
        near: 20.0.into(),
        far: 100.0.into(),
    };
    assert!(
        codes(&SledFitRequest {
            measured: measured.into(),
            ..request()
        })
        .contains(&"measured-otherwise")
    );
}

proptest! {
    /// Moving the runner by `forward` leaves the same at both ends; the stroke begins with the rail at the blade's
    /// far end and ends with the face past its top.
    #[test]
    fn moving_the_runner_centres_it(
        front in 200.0..900.0_f64, rear in 150.0..600.0_f64, near_end in 0.0..200.0_f64, span in 50.0..340.0_f64,
        depth in 1.0..60.0_f64,
    ) {
        let mut first = saw(|saw| { saw.front_to_arbor = front.into(); saw.arbor_to_rear = rear.into(); });
        if let Given::Value(sled) = &mut first.sled {
            sled.front_rail = 560.0.into();
            if let Given::Value(runner) = &mut sled.runner {
                runner.contact_near = near_end.into();
                runner.contact_far = (near_end + span).into();
            }
        }
        if let Given::Value(cut) = &mut first.cut {
            cut.depth = depth.into();
        }
        let plan = plan(&first);
        let moved = plan.runner.forward.mm();
        let mut second = first.clone();
        if let Given::Value(sled) = &mut second.sled
            && let Given::Value(runner) = &mut sled.runner
        {
            runner.contact_near = (near_end + moved).into();
            runner.contact_far = (near_end + span + moved).into();
        }
        let after = super::sled_fit(&second).unwrap().plan.runner;
        prop_assert!((after.near_left - after.far_left).abs().mm() < 1e-9);
        prop_assert!((after.near_left - plan.runner.left_after).abs().mm() < 1e-9);
        prop_assert!((plan.runner.longest_span.mm() - span - 2.0 * after.left_after.mm()).abs() < 1e-9 || plan.runner.longest_span == Mm::ZERO);
        prop_assert!((plan.travel.start + Mm::constant(560.0 - 180.0) - plan.half_chord_base).abs().mm() < 1e-9);
        prop_assert!((plan.travel.end - plan.travel.start - plan.travel.length).abs().mm() < 1e-9);
    }
}
