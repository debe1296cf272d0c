//! One pass a socket.

use super::{codes, cutter, near, plan, request, screw};
use crate::joint::box_joint::{BoxJointRequest, LayoutRequest};

#[test]
fn one_pass_per_socket_suits_the_dial() {
    // Derived: kerf − gap = 9.48; at 0.02 a step that is 474 steps, a pitch of 948, an even number of them.
    for (leftover, count, far, near_edge) in [
        ("ends", 15, 8.38, 8.38),
        ("far", 15, 7.28, 9.48),
        ("rip", 14, 9.48, 9.48),
    ] {
        let plan = plan(&BoxJointRequest {
            cutter: cutter(9.53).into(),
            ..request(LayoutRequest::one_pass(leftover))
        });
        near(plan.finger_width, 9.48);
        near(plan.glue_gap, 0.05);
        assert_eq!(plan.count, count, "{leftover}");
        near(plan.boundaries[1], near_edge);
        near(plan.boundaries[count] - plan.boundaries[count - 1], far);
        for set in &plan.sets {
            for stop in set
                .stops
                .iter()
                .filter(|stop| stop.space > 0 && stop.space + 1 < count)
            {
                assert_eq!(stop.passes, 1, "{leftover}");
            }
        }
        near(plan.dry_fit.smallest_gap, 0.05);
        near(plan.dry_fit.largest_gap, 0.05);
    }
}

#[test]
fn one_pass_says_what_to_rip_to() {
    let plan = plan(&BoxJointRequest {
        cutter: cutter(9.53).into(),
        ..request(LayoutRequest::one_pass("rip"))
    });
    let rip = plan.rip_to.unwrap();
    near(rip.below, 132.72);
    near(rip.above, 142.2);
    near(plan.width, 132.72);
}

#[test]
fn one_pass_on_a_coarse_dial_says_the_gap_that_results() {
    // Derived: kerf 6.35 − 0.05 = 6.3; steps of 0.5 → 13 steps, finger 6.5, gap −0.15: the pins are too wide.
    let request = BoxJointRequest {
        cutter: cutter(6.35).into(),
        screw: screw(2.0, 4.0).into(),
        ..request(LayoutRequest::one_pass("ends"))
    };
    let plan = plan(&request);
    near(plan.glue_gap, -0.15);
    near(plan.dry_fit.smallest_gap, -0.15);
    assert!(plan.dry_fit.clash);
    assert!(codes(&request).contains(&"clash"));
}

#[test]
fn noise_in_the_kerf_leaves_no_flank_at_the_edge() {
    // Derived: fingers of 7 mm, each a whole number of steps; the kerf is short of them by what the dry fit just
    // takes for wood, and eight flanks lie between nine fingers.
    let plan = plan(&BoxJointRequest {
        width: 60.0.into(),
        cutter: cutter(6.999_999_999).into(),
        screw: screw(0.5, 40.0).into(),
        first: "socket".into(),
        glue_gap: 0.0.into(),
        ..request(LayoutRequest::one_pass("far"))
    });
    assert_eq!((plan.count, plan.dry_fit.flanks.len()), (9, 8));
}
