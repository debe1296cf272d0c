//! Box joints as tables of examples.

use proptest::prelude::ProptestConfig;

use super::{
    BoardRequest, BoxJointPlan, BoxJointRequest, GrooveRequest, LayoutRequest, Make, SawRequest,
    Through, box_joint,
};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::Given;
use crate::problem::Code;

mod legal;
mod properties;
mod proposals;

/// W 140, A 12, B 18, kerf 3.2, overlap 0.3, lead 2 mm, 100 divisions.
fn request(layout: LayoutRequest) -> BoxJointRequest {
    BoxJointRequest {
        width: 140.0.into(),
        a: BoardRequest {
            thickness: 12.0.into(),
        }
        .into(),
        b: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        cutter: cutter(3.2).into(),
        screw: screw(2.0, 100.0).into(),
        layout: layout.into(),
        ..BoxJointRequest::default()
    }
}

fn cutter(kerf: f64) -> CutterRequest {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
}

fn screw(lead: f64, divisions: f64) -> ScrewRequest {
    ScrewRequest {
        lead: lead.into(),
        divisions: divisions.into(),
        ..ScrewRequest::default()
    }
}

fn plan(request: &BoxJointRequest) -> BoxJointPlan {
    box_joint(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

fn problems(request: &BoxJointRequest) -> Vec<(String, Code, Option<f64>)> {
    let problems = box_joint(request).expect_err("a request with problems");
    problems
        .into_iter()
        .map(|problem| (problem.field, problem.code, problem.limit))
        .collect()
}

fn codes(request: &BoxJointRequest) -> Vec<&'static str> {
    box_joint(request)
        .unwrap()
        .notes
        .iter()
        .map(|note| note.code)
        .collect()
}

#[track_caller]
fn near(got: crate::units::Mm, expected: f64) {
    assert!(
        (got.mm() - expected).abs() < 5e-5,
        "{got} for {expected} mm"
    );
}

#[test]
fn nine_fingers_on_140_mm() {
    // Derived: 140 / 9 = 15.5556; inner socket 15.5556 + 0.05; ⌈(15.6056 − 3.2) / 2.9⌉ + 1 = 6 passes.
    let plan = plan(&BoxJointRequest {
        screw: exact().into(),
        ..request(LayoutRequest::count(9.0))
    });
    near(plan.finger_width, 15.5556);
    near(plan.depth_a, 18.0);
    near(plan.depth_b, 12.0);
    assert!(plan.symmetric);
    let [a, b] = plan.sets.as_slice() else {
        panic!("two sets")
    };
    assert_eq!((a.stops.len(), b.stops.len()), (24, 30));
    assert!(a.stops.iter().all(|stop| stop.passes == 6));
    near(a.stops[5].at + a.kerf - a.stops[0].at, 15.6056);
    assert_eq!(plan.dry_fit.flanks.len(), 8);
    near(plan.dry_fit.smallest_gap, 0.05);
    near(plan.dry_fit.largest_gap, 0.05);
}

fn exact() -> ScrewRequest {
    ScrewRequest {
        rounding: "none".into(),
        ..screw(2.0, 100.0)
    }
}

#[test]
fn proud_pins_are_cut_deeper() {
    let plan = plan(&BoxJointRequest {
        proud: 0.5.into(),
        ..request(LayoutRequest::count(9.0))
    });
    near(plan.depth_a, 18.5);
    near(plan.depth_b, 12.5);
    near(plan.dry_fit.floor_gap_a, 0.0);
    near(plan.dry_fit.floor_gap_b, 0.0);
}

#[test]
fn finger_width_becomes_the_nearest_odd_count() {
    // Derived: 140 / 15 = 9.33 → 9; 140 / 14 = 10 is as near to 9 as to 11 → 11; 140 / 70 = 2 → 3.
    for (finger, count) in [(15.0, 9), (14.0, 11), (70.0, 3), (40.0, 3), (16.0, 9)] {
        assert_eq!(
            plan(&request(LayoutRequest::finger(finger))).count,
            count,
            "{finger}"
        );
    }
}

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

#[test]
fn patterns_are_scaled_and_mirrored() {
    let plan = plan(&request(LayoutRequest::pattern(&[1.0, 2.0, 1.0], true)));
    // Derived: 1 2 1 2 1 scaled to 140: 20 40 20 40 20.
    let widths: Vec<f64> = plan
        .boundaries
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).mm().round())
        .collect();
    assert_eq!(widths, [20.0, 40.0, 20.0, 40.0, 20.0]);
    assert!(plan.symmetric);
}

#[test]
fn two_fingers_have_only_open_sockets() {
    let plan = plan(&BoxJointRequest {
        screw: exact().into(),
        ..request(LayoutRequest::count(2.0))
    });
    assert!(!plan.symmetric);
    assert_eq!(plan.dry_fit.flanks.len(), 1);
    near(plan.dry_fit.smallest_gap, 0.05);
}

#[test]
fn an_open_socket_is_never_too_narrow() {
    // The end fingers are 2 mm, narrower than the 3.2 mm kerf: it runs off the edge.
    let plan = plan(&request(LayoutRequest::pattern(
        &[2.0, 66.0, 4.0, 66.0, 2.0],
        false,
    )));
    let first = plan.sets[1].stops[0];
    assert!(first.at.mm() < 0.0 && first.passes == 1, "{first:?}");
}

#[test]
fn readings_rise_towards_the_reference_edge_too() {
    let away = plan(&request(LayoutRequest::count(9.0)));
    let screw = ScrewRequest {
        rises: "towards".into(),
        ..screw(2.0, 100.0)
    };
    let towards = plan(&BoxJointRequest {
        screw: screw.into(),
        ..request(LayoutRequest::count(9.0))
    });
    for (away, towards) in away.sets.iter().zip(&towards.sets) {
        let places: Vec<_> = towards.stops.iter().rev().map(|stop| stop.at).collect();
        assert_eq!(
            places,
            away.stops.iter().map(|stop| stop.at).collect::<Vec<_>>()
        );
        assert_eq!((towards.stops[0].number, towards.stops[0].pass), (1, 1));
    }
    assert_eq!(away.dry_fit, towards.dry_fit);
}

#[test]
fn every_problem_is_told_at_once() {
    let bad = BoxJointRequest {
        width: Given::Wrong("the text «wide»".to_owned()),
        a: BoardRequest {
            thickness: 0.0.into(),
        }
        .into(),
        b: BoardRequest {
            thickness: f64::NAN.into(),
        }
        .into(),
        cutter: CutterRequest {
            kerf: (-3.2).into(),
            overlap: 1e9.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: screw(0.0, 0.0).into(),
        layout: LayoutRequest::pattern(&[1.0, 0.0, 1.0], false).into(),
        first: "tail".into(),
        glue_gap: f64::INFINITY.into(),
        ..BoxJointRequest::default()
    };
    let fields: Vec<_> = problems(&bad)
        .into_iter()
        .map(|(field, code, _)| (field, code))
        .collect();
    let expected = [
        ("width", Code::WrongKind),
        ("a.thickness", Code::TooSmall),
        ("b.thickness", Code::NotFinite),
        ("cutter.kerf", Code::TooSmall),
        ("cutter.overlap", Code::TooLarge),
        ("screw.lead", Code::TooSmall),
        ("screw.divisions", Code::TooSmall),
        ("layout.weights.1", Code::TooSmall),
        ("first", Code::UnknownWord),
        ("glueGap", Code::NotFinite),
    ];
    assert_eq!(
        fields,
        expected.map(|(field, code)| (field.to_owned(), code))
    );
}

#[test]
fn an_empty_request_names_what_it_needs() {
    let fields: Vec<_> = problems(&BoxJointRequest::default())
        .into_iter()
        .map(|(field, ..)| field)
        .collect();
    assert_eq!(fields, ["width", "a", "b", "cutter", "screw", "layout"]);
}

fn blade(diameter: f64) -> Given<CutterRequest> {
    CutterRequest {
        kerf: 3.07.into(),
        diameter: diameter.into(),
        ..CutterRequest::default()
    }
    .into()
}

#[test]
fn refusals_say_what_would_work() {
    let base = || request(LayoutRequest::count(9.0));
    let with = |change: fn(&mut BoxJointRequest)| {
        let mut request = base();
        change(&mut request);
        request
    };
    let cases: [(&str, BoxJointRequest, &str, Code, Option<f64>); 17] = [
        (
            "cutter wider than a socket",
            with(|r| r.cutter = cutter(16.0).into()),
            "layout.count",
            Code::CutterTooWide,
            Some(8.0),
        ),
        (
            "finger narrower than the cutter",
            with(|r| r.layout = LayoutRequest::finger(3.0).into()),
            "layout.width",
            Code::CutterTooWide,
            // Derived: sockets of 3.15 take the cutter, 44.4 of them; the next lower odd number is 43.
            Some(140.0 / 43.0),
        ),
        (
            "finger wider than half",
            with(|r| r.layout = LayoutRequest::finger(71.0).into()),
            "layout.width",
            Code::TooLarge,
            Some(70.0),
        ),
        (
            "narrow space",
            with(|r| r.layout = LayoutRequest::pattern(&[5.0, 1.0, 60.0], true).into()),
            "layout.weights.1",
            Code::CutterTooWide,
            None,
        ),
        (
            "too many fingers",
            with(|r| r.layout = LayoutRequest::count(501.0).into()),
            "layout.count",
            Code::TooLarge,
            Some(500.0),
        ),
        (
            "a part of a finger",
            with(|r| r.layout = LayoutRequest::count(9.5).into()),
            "layout.count",
            Code::NotWhole,
            None,
        ),
        (
            "overlap over half the kerf",
            with(|r| {
                r.cutter = CutterRequest {
                    overlap: 1.7.into(),
                    ..cutter(3.2)
                }
                .into()
            }),
            "cutter.overlap",
            Code::TooLarge,
            Some(1.6),
        ),
        (
            "wider than the travel",
            with(|r| {
                r.screw = ScrewRequest {
                    travel: 100.0.into(),
                    ..screw(2.0, 100.0)
                }
                .into()
            }),
            "width",
            Code::BeyondTravel,
            // Derived: the last pass of B starts at 124.44 + 15.58 − … and reads 142.0: 42 too far.
            None,
        ),
        (
            "blade too low",
            with(|r| {
                r.saw = SawRequest {
                    greatest_height: 32.0.into(),
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondHeight,
            Some(17.0),
        ),
        (
            "a blade that comes up to its axis first",
            with(|r| {
                r.cutter = blade(60.0);
                r.saw = SawRequest {
                    base: 15.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondHeight,
            Some(15.0),
        ),
        (
            // Derived: R 127; for A, 12 thick and cut 18 deep, (145 − 12 − 5) / 2 = 64 → 127 − √(127² − 64²) = 17.305.
            "a window too small for the deeper cut",
            with(|r| {
                r.cutter = blade(254.0);
                r.saw = SawRequest {
                    window: 145.0.into(),
                    ..SawRequest::default()
                }
                .into()
            }),
            "b.thickness",
            Code::BeyondWindow,
            Some(127.0 - (127.0_f64 * 127.0 - 64.0 * 64.0).sqrt()),
        ),
        (
            "proud beyond the board",
            with(|r| r.proud = 12.5.into()),
            "proud",
            Code::TooLarge,
            Some(12.0),
        ),
        (
            "steps wider than the kerf",
            with(|r| r.screw = screw(10.0, 2.0).into()),
            "screw.divisions",
            Code::DialTooCoarse,
            None,
        ),
        (
            "board narrower than two fingers",
            with(|r| {
                r.layout = LayoutRequest::one_pass("far").into();
                r.width = 5.3.into();
                r.cutter = cutter(6.0).into();
                r.screw = screw(2.0, 20.0).into();
            }),
            "cutter.kerf",
            Code::CutterTooWide,
            // Derived: two fingers of 26 steps of 0.1 fit, and the gap comes on top.
            Some(2.65),
        ),
        (
            "board narrower than two steps",
            with(|r| {
                r.layout = LayoutRequest::one_pass("far").into();
                r.width = 5.4.into();
                r.screw = screw(3.0, 1.0).into();
            }),
            "screw.divisions",
            Code::DialTooCoarse,
            None,
        ),
        (
            "gap that eats the pins",
            with(|r| {
                r.layout = LayoutRequest::count(43.0).into();
                r.cutter = cutter(1.0).into();
                r.glue_gap = 2.0.into();
                r.screw = screw(100.0, 65.0).into();
            }),
            "glueGap",
            Code::TooLarge,
            None,
        ),
        (
            "groove off the board",
            with(|r| r.groove = groove(136.0, 6.0, 4.0).into()),
            "groove.fromEdge",
            Code::TooLarge,
            Some(134.0),
        ),
    ];
    for (what, request, field, code, limit) in cases {
        let found = problems(&request);
        let matching = found
            .iter()
            .find(|(got, got_code, _)| got == field && *got_code == code);
        let (_, _, got) = matching.unwrap_or_else(|| panic!("{what}: {found:?}"));
        if let Some(limit) = limit {
            assert!(
                got.is_some_and(|got| (got - limit).abs() < 1e-9),
                "{what}: {got:?}"
            );
        }
    }
}

fn groove(from_edge: f64, width: f64, depth: f64) -> GrooveRequest {
    GrooveRequest {
        from_edge: from_edge.into(),
        width: width.into(),
        depth: depth.into(),
        edge: Given::Missing,
    }
}

#[test]
fn a_groove_shows_where_it_leaves_through_a_pin() {
    // Fingers of 15.56: A has its first socket from 15.56 to 31.11.
    for (from, a, b) in [
        (
            5.0,
            (Through::Pin, Make::Stopped),
            (Through::Socket, Make::Through),
        ),
        (
            20.0,
            (Through::Socket, Make::Through),
            (Through::Pin, Make::Stopped),
        ),
        (
            12.0,
            (Through::Both, Make::Stopped),
            (Through::Both, Make::Stopped),
        ),
    ] {
        let groove = plan(&BoxJointRequest {
            groove: groove(from, 6.0, 4.0).into(),
            ..request(LayoutRequest::count(9.0))
        })
        .groove
        .unwrap();
        let [end_a, end_b] = groove.ends;
        assert_eq!(
            ((end_a.through, end_a.make), (end_b.through, end_b.make)),
            (a, b),
            "{from}"
        );
        assert_eq!(groove.better.is_empty(), from != 12.0);
    }
}

#[test]
fn a_better_groove_is_near_and_settles_it() {
    for edge in ["reference", "far"] {
        let ask = |from: f64| GrooveRequest {
            edge: edge.into(),
            ..groove(from, 6.0, 4.0)
        };
        let joint = |from: f64| {
            plan(&BoxJointRequest {
                groove: ask(from).into(),
                ..request(LayoutRequest::count(9.0))
            })
        };
        let better = joint(12.0).groove.unwrap().better;
        near(better[0].from_edge, 140.0 / 9.0 - 6.0);
        for place in better {
            let moved = joint(place.from_edge.mm()).groove.unwrap();
            let end = moved
                .ends
                .iter()
                .find(|end| end.board == place.through)
                .unwrap();
            assert_eq!(end.make, Make::Through, "{edge} {place:?}");
        }
    }
}

#[test]
fn alternately_ground_teeth_leave_ridges() {
    // Derived: kerf / 2 · tan β; 3.2 and 15° → 0.429 mm.
    let grind = GrindRequest {
        kind: "alternate".into(),
        bevel_degrees: 15.0.into(),
    };
    let request = BoxJointRequest {
        cutter: CutterRequest {
            grind: grind.into(),
            ..cutter(3.2)
        }
        .into(),
        ..request(LayoutRequest::count(9.0))
    };
    let plan = plan(&request);
    assert!(
        (plan.dry_fit.floor_gap_a.mm() + 0.4287).abs() < 5e-5,
        "{}",
        plan.dry_fit.floor_gap_a
    );
    assert_eq!(plan.dry_fit.uncut.len(), 9);
    assert!(!plan.dry_fit.clash);
    assert!(codes(&request).contains(&"floor-ridge"));
}

#[test]
fn notes_come_when_they_should() {
    let base = || request(LayoutRequest::count(9.0));
    let plain = codes(&base());
    for code in [
        "not-symmetric",
        "thin-fingers",
        "gap-finer-than-dial",
        "coarse-dial",
        "floor-ridge",
        "clash",
        "rip-first",
    ] {
        assert!(!plain.contains(&code), "{code}");
    }
    for code in [
        "four-corners",
        "unplug",
        "hands",
        "guard",
        "scrap",
        "manual",
    ] {
        assert!(plain.contains(&code), "{code}");
    }
    let cases = [
        (
            "not-symmetric",
            BoxJointRequest {
                layout: LayoutRequest::count(8.0).into(),
                ..base()
            },
        ),
        (
            "thin-fingers",
            BoxJointRequest {
                layout: LayoutRequest::count(25.0).into(),
                ..base()
            },
        ),
        (
            "wide-fingers",
            BoxJointRequest {
                layout: LayoutRequest::count(5.0).into(),
                ..base()
            },
        ),
        (
            "gap-finer-than-dial",
            BoxJointRequest {
                glue_gap: 0.0.into(),
                ..base()
            },
        ),
        (
            "wide-glue-line",
            BoxJointRequest {
                glue_gap: 0.3.into(),
                ..base()
            },
        ),
        (
            "coarse-dial",
            BoxJointRequest {
                screw: screw(2.0, 10.0).into(),
                ..base()
            },
        ),
        (
            "fine-dial",
            BoxJointRequest {
                screw: ScrewRequest {
                    rounding: "half".into(),
                    ..screw(1.0, 250.0)
                }
                .into(),
                ..base()
            },
        ),
        (
            "wide-stock",
            BoxJointRequest {
                width: 700.0.into(),
                ..base()
            },
        ),
        (
            "rip-first",
            BoxJointRequest {
                layout: LayoutRequest::one_pass("rip").into(),
                ..base()
            },
        ),
    ];
    for (code, request) in cases {
        assert!(
            codes(&request).contains(&code),
            "{code}: {:?}",
            codes(&request)
        );
    }
}

#[test]
fn zero_by_test_kerf_moves_every_reading_alike() {
    let zero = ZeroRequest {
        kind: "testKerf".into(),
        reading: 40.0.into(),
        measured: 12.5.into(),
    };
    let plan = plan(&BoxJointRequest {
        zero: zero.into(),
        ..request(LayoutRequest::count(9.0))
    });
    for set in &plan.sets {
        for stop in &set.stops {
            assert!(
                (stop.dial.reading.mm() - (40.0 + stop.at.mm() - 12.5)).abs() < 1e-9,
                "{stop:?}"
            );
        }
    }
}
