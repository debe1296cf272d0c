//! What cannot be made says so at its field, and what it proposes can be made.

use super::legal::{ash, bottom, box_joint, chest, cutter, edit, groove, opening, screw};
use crate::drawer::{
    AppliedFrontRequest, DrawerBottomRequest, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerJointRequest, DrawerLayoutRequest, DrawerSizeRequest, drawer_box,
};
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::joint::dovetail::{ByRequest, SlopeRequest};
use crate::problem::{Code, Problem};
use crate::wood::ClimateRequest;

fn problems(request: &DrawerBoxRequest) -> Vec<(String, Code)> {
    let Err(problems) = drawer_box(request) else {
        return Vec::new();
    };
    let told = |problem: Problem| (problem.field, problem.code);
    problems.into_iter().map(told).collect()
}

fn size(change: impl FnOnce(&mut DrawerSizeRequest)) -> Given<DrawerSizeRequest> {
    edit(opening(), change).into()
}

fn joint(change: impl FnOnce(&mut DrawerJointRequest)) -> Given<DrawerJointRequest> {
    edit(box_joint(), change).into()
}

fn layout(kind: &str) -> DrawerLayoutRequest {
    DrawerLayoutRequest {
        kind: kind.into(),
        ..DrawerLayoutRequest::default()
    }
}

fn bottom_with(change: impl FnOnce(&mut DrawerBottomRequest)) -> Given<DrawerBottomRequest> {
    edit(bottom(), change).into()
}

fn groove_with(change: impl FnOnce(&mut DrawerGrooveRequest)) -> Given<DrawerBottomRequest> {
    bottom_with(|bottom| bottom.groove = edit(groove(), change).into())
}

fn applied(lap: f64, gap: f64) -> Given<AppliedFrontRequest> {
    AppliedFrontRequest {
        thickness: 18.0.into(),
        lap: lap.into(),
        gap: gap.into(),
    }
    .into()
}

/// Drawers with one number in them.
pub(super) type With = fn(f64) -> DrawerBoxRequest;

/// Each is refused at its field with its number, and made with the one that the refusal proposes.
pub(super) fn are_refused_and_made(cases: &[(f64, &str, Code, With)]) {
    for (given, field, code, with) in cases {
        let told = drawer_box(&with(*given)).unwrap_err();
        let [problem] = told.as_slice() else {
            panic!("{field}: {told:#?}")
        };
        assert_eq!((problem.field.as_str(), problem.code), (*field, *code));
        let proposed = problem.limit.unwrap();
        let made = drawer_box(&with(proposed));
        assert!(made.is_ok(), "{field} {proposed}: {:#?}", made.err());
    }
}

fn chest_with(change: impl FnOnce(&mut DrawerBoxRequest)) -> DrawerBoxRequest {
    edit(chest(), change)
}

/// Each is refused with its number, and made with the one that the refusal proposes.
#[test]
fn what_is_proposed_can_be_made() {
    let cases: [(f64, &str, Code, With); 15] = [
        (50.0, "size.width", Code::TooSmall, |x| {
            chest_with(|drawer| drawer.size = size(|size| size.width = x.into()))
        }),
        (47.0, "size.depth", Code::TooSmall, |x| {
            chest_with(|drawer| drawer.size = size(|size| size.depth = x.into()))
        }),
        // Less than dividers and clearances.
        (80.0, "size.height", Code::TooSmall, |x| {
            chest_with(|drawer| {
                drawer.size = size(|size| size.height = x.into());
                drawer.bottom = groove_with(|groove| groove.from_edge = 1.0.into());
                drawer.joint = joint(|joint| {
                    joint.layout = layout("onePass").into();
                    joint.cutter = cutter(2.0).into();
                });
            })
        }),
        // Enough for those, but for no three fingers.
        (200.0, "size.height", Code::TooSmall, |x| {
            chest_with(|drawer| {
                drawer.size = size(|size| size.height = x.into());
                drawer.bottom = groove_with(|groove| groove.from_edge = 1.0.into());
                drawer.joint = joint(|joint| joint.layout = layout("onePass").into());
            })
        }),
        // The topmost of a steep graduation has nothing left.
        (640.0, "size.height", Code::TooSmall, |x| {
            chest_with(|drawer| {
                drawer.size = size(|size| size.height = x.into());
                drawer.heights = DrawerHeightsRequest {
                    kind: "graduated".into(),
                    step: 18.0.into(),
                    ..DrawerHeightsRequest::default()
                }
                .into();
                drawer.joint = joint(|joint| joint.cutter = cutter(1.0).into());
                drawer.bottom = groove_with(|groove| groove.from_edge = 1.0.into());
            })
        }),
        (8.0, "joint.layout.count", Code::Conflict, |x| {
            chest_with(|drawer| {
                let mut even = layout("count");
                even.count = x.into();
                drawer.joint = joint(|joint| joint.layout = even.into());
            })
        }),
        (15.0, "joint.layout.count", Code::CutterTooWide, |x| {
            chest_with(|drawer| {
                let mut many = layout("count");
                many.count = x.into();
                drawer.joint = joint(|joint| joint.layout = many.into());
            })
        }),
        (4.0, "joint.layout.width", Code::CutterTooWide, |x| {
            chest_with(|drawer| {
                let mut narrow = layout("finger");
                narrow.width = x.into();
                drawer.joint = joint(|joint| joint.layout = narrow.into());
            })
        }),
        (30.0, "joint.layout.width", Code::TooLarge, |x| {
            chest_with(|drawer| {
                let mut wide = layout("finger");
                wide.width = x.into();
                drawer.joint = joint(|joint| joint.layout = wide.into());
            })
        }),
        (7.0, "bottom.groove.depth", Code::TooLarge, |x| {
            chest_with(|drawer| drawer.bottom = groove_with(|groove| groove.depth = x.into()))
        }),
        (64.0, "bottom.groove.fromEdge", Code::TooLarge, |x| {
            chest_with(|drawer| drawer.bottom = groove_with(|groove| groove.from_edge = x.into()))
        }),
        (6.35, "bottom.groove.bit", Code::CutterTooWide, |x| {
            chest_with(|drawer| drawer.bottom = groove_with(|groove| groove.bit = x.into()))
        }),
        (6.0, "bottom.clearance", Code::TooLarge, |x| {
            chest_with(|drawer| {
                drawer.bottom = bottom_with(|bottom| bottom.clearance = x.into());
            })
        }),
        (200.0, "bottom.thickness", Code::TooLarge, |x| {
            chest_with(|drawer| {
                drawer.count = 1.0.into();
                drawer.bottom = bottom_with(|bottom| bottom.thickness = x.into());
            })
        }),
        // A flat-sawn bottom that shrinks from 12 to 6 %.
        (3.0, "bottom.groove.depth", Code::TooSmall, |x| {
            chest_with(|drawer| {
                drawer.bottom = edit(bottom(), |bottom| {
                    bottom.groove = edit(groove(), |groove| groove.depth = x.into()).into();
                    bottom.wood = ash("quarter").into();
                })
                .into();
            })
        }),
    ];
    are_refused_and_made(&cases);
}

/// A tail of slope 1:3 through 18, as wide as the pins beside it and cut 9 wide: drawers of 20 have no room for it.
#[test]
fn a_height_is_proposed_that_takes_a_tail() {
    let with = |height: f64| {
        chest_with(|drawer| {
            drawer.size = size(|size| size.height = height.into());
            drawer.front = edit(BoardRequest::default(), |front| {
                front.thickness = 18.0.into()
            })
            .into();
            drawer.bottom = groove_with(|groove| groove.from_edge = 5.0.into());
            drawer.joint = DrawerJointRequest {
                kind: "dovetail".into(),
                slope: SlopeRequest::ratio(3.0).into(),
                tails: 1.0.into(),
                by: edit(ByRequest::default(), |by| by.kind = "equal".into()).into(),
                cutter: cutter(9.0).into(),
                screw: screw().into(),
                ..DrawerJointRequest::default()
            }
            .into();
        })
    };
    for low in [250.0, 290.0] {
        let told = drawer_box(&with(low)).unwrap_err();
        let [problem] = told.as_slice() else {
            panic!("{told:#?}")
        };
        assert_eq!(
            (problem.field.as_str(), problem.code),
            ("size.height", Code::TooSmall)
        );
        let proposed = problem.limit.unwrap();
        assert!(proposed > low);
        assert_eq!(problems(&with(proposed)), []);
    }
}

/// Three fingers of 20 − 0.05, as wide as this cutter makes them, are 59.85 at the least: what is wrong with fingers of 7
/// is said once there is room for those.
#[test]
fn a_height_is_proposed_that_the_cutter_can_divide() {
    let with = |height: f64| {
        chest_with(|drawer| {
            drawer.size = size(|size| size.height = height.into());
            drawer.joint = joint(|joint| {
                joint.cutter = cutter(20.0).into();
                joint.layout = edit(layout("finger"), |layout| layout.width = 7.0.into()).into();
            });
        })
    };
    let told = drawer_box(&with(500.0)).unwrap_err();
    assert_eq!(told[0].field, "size.height");
    let proposed = told[0].limit.unwrap();
    // Eight of 59.85 at the dampest, seven dividers and eight gaps.
    assert!(
        (proposed - (8.0 * 59.85 * 1.010_96 + 86.0)).abs() < 1e-6,
        "{proposed}"
    );
    assert_eq!(
        problems(&with(proposed)),
        [("joint.layout.width".to_owned(), Code::CutterTooWide)]
    );
}

#[test]
fn fronts_are_left_between_their_gaps() {
    for (lap, gap, field) in [(10.0, 100.0, "applied.gap"), (-40.0, 2.0, "applied.lap")] {
        let with = |lap, gap| chest_with(|drawer| drawer.applied = applied(lap, gap));
        let told = drawer_box(&with(lap, gap)).unwrap_err();
        assert_eq!(told[0].field, field);
        let proposed = told[0].limit.unwrap();
        let (lap, gap) = if field == "applied.gap" {
            (lap, proposed)
        } else {
            (proposed, gap)
        };
        let plan = drawer_box(&with(lap, gap)).unwrap().plan;
        assert!(plan.applied.iter().all(|front| front.height.mm() > 0.0));
    }
}

/// A bottom that no groove in these boards could hold has no depth to propose.
#[test]
fn a_bottom_that_shrinks_too_far_wants_another_wood() {
    let request = chest_with(|drawer| {
        drawer.size = size(|size| size.depth = 1200.0.into());
        drawer.bottom = bottom_with(|bottom| bottom.wood = ash("flat").into());
    });
    let told = drawer_box(&request).unwrap_err();
    assert_eq!(
        (told[0].field.as_str(), told[0].code, told[0].limit),
        ("bottom.groove.depth", Code::TooSmall, None)
    );
    let quarter = chest_with(|drawer| {
        drawer.bottom = bottom_with(|bottom| bottom.wood = ash("quarter").into());
    });
    assert!(drawer_box(&quarter).is_ok());
}

#[test]
fn fields_that_do_not_go_together_are_named() {
    let cases: Vec<(DrawerBoxRequest, Vec<(&str, Code)>)> = vec![
        (
            chest_with(|drawer| drawer.between = Given::Missing),
            vec![("between", Code::Missing)],
        ),
        (
            chest_with(|drawer| drawer.climate = Given::Missing),
            vec![("climate", Code::Missing)],
        ),
        (
            chest_with(|drawer| drawer.wood = Given::Missing),
            vec![("climate", Code::Conflict)],
        ),
        (
            chest_with(|drawer| drawer.size = size(|size| size.slides = "runners".into())),
            vec![("size.below", Code::Conflict)],
        ),
        (
            chest_with(|drawer| drawer.size = size(|size| size.slides = "rollers".into())),
            vec![("size.slides", Code::UnknownWord)],
        ),
        (
            chest_with(|drawer| drawer.size = size(|size| size.kind = "outside".into())),
            vec![
                ("size.slides", Code::Conflict),
                ("size.sideClearance", Code::Conflict),
                ("size.above", Code::Conflict),
                ("size.below", Code::Conflict),
                ("size.behind", Code::Conflict),
                ("between", Code::Conflict),
            ],
        ),
        (
            chest_with(|drawer| drawer.joint = joint(|joint| joint.tails = 3.0.into())),
            vec![("joint.tails", Code::Conflict)],
        ),
        (
            chest_with(|drawer| {
                drawer.joint = joint(|joint| {
                    joint.kind = "dovetail".into();
                    joint.layout = Given::Missing;
                });
            }),
            vec![
                ("joint.slope", Code::Missing),
                ("joint.tails", Code::Missing),
            ],
        ),
    ];
    for (request, expected) in cases {
        let told = problems(&request);
        let told: Vec<_> = told
            .iter()
            .map(|(field, code)| (field.as_str(), *code))
            .collect();
        for one in &expected {
            assert!(told.contains(one), "{one:?} is missing in {told:?}");
        }
    }
}

/// What is wrong everywhere is said at once, the joint's own fields among it.
#[test]
fn every_problem_comes_at_once() {
    let request = chest_with(|drawer| {
        drawer.count = 0.0.into();
        drawer.side = BoardRequest {
            thickness: (-1.0).into(),
        }
        .into();
        drawer.joint = joint(|joint| {
            joint.cutter = cutter(100.0).into();
            joint.glue_gap = 5.0.into();
            joint.screw = Given::Missing;
        });
        drawer.bottom = groove_with(|groove| groove.depth = Given::Wrong("the text «6»".into()));
        drawer.climate = ClimateRequest::default().into();
    });
    let told = problems(&request);
    let fields: Vec<_> = told.iter().map(|(field, _)| field.as_str()).collect();
    assert_eq!(
        fields,
        [
            "count",
            "side.thickness",
            "joint.cutter.kerf",
            "joint.screw",
            "joint.glueGap",
            "bottom.groove.depth",
            "climate.kind"
        ]
    );
    assert!(problems(&DrawerBoxRequest::default()).len() >= 5);
}
