//! Backs of their own thickness and lap; every value is derived.

use super::legal::{board, bottom, box_joint, chest, cutter, edit, groove, screw};
use super::refusals::{With, are_refused_and_made};
use super::{close, layout, plan};
use crate::drawer::{
    DrawerBottomRequest, DrawerBoxRequest, DrawerJointRequest, DrawerPlan, DrawerSizeRequest,
    Nudged, drawer_box,
};
use crate::given::Given;
use crate::joint::box_joint::{Make, SawRequest};
use crate::joint::dovetail::{ByRequest, DovetailRequest, SlopeRequest};
use crate::problem::Code;

/// Two tails, half-pins of 8 and a pin of 6 at 1:7.
fn tails() -> DrawerJointRequest {
    DrawerJointRequest {
        kind: "dovetail".into(),
        slope: SlopeRequest::ratio(7.0).into(),
        tails: 2.0.into(),
        half_pin: 8.0.into(),
        narrow_pin: 6.0.into(),
        cutter: cutter(2.4).into(),
        screw: screw().into(),
        ..DrawerJointRequest::default()
    }
}

fn grooved(depth: f64) -> Given<DrawerBottomRequest> {
    edit(bottom(), |bottom| {
        bottom.groove = edit(groove(), |groove| groove.depth = depth.into()).into();
    })
    .into()
}

/// One drawer, 400 wide, 90 high and 300 deep, of plywood: sides of 12, a half-blind front of 19 with a lap of 5, and a
/// through back of 10.
fn drawer() -> DrawerBoxRequest {
    edit(chest(), |drawer| {
        drawer.size = DrawerSizeRequest {
            kind: "outside".into(),
            width: 400.0.into(),
            height: 90.0.into(),
            depth: 300.0.into(),
            ..DrawerSizeRequest::default()
        }
        .into();
        (drawer.between, drawer.wood, drawer.climate) =
            (Given::Missing, Given::Missing, Given::Missing);
        drawer.front = board(19.0);
        drawer.back = board(10.0);
        drawer.joint = edit(tails(), |joint| {
            joint.lap = 5.0.into();
            joint.back_lap = 0.0.into();
        })
        .into();
        drawer.bottom = grooved(5.0);
    })
}

fn with_joint(change: impl FnOnce(&mut DrawerJointRequest)) -> DrawerBoxRequest {
    edit(drawer(), |drawer| {
        if let Given::Value(joint) = &mut drawer.joint {
            change(joint);
        }
    })
}

fn at_back(drawer: &DrawerPlan) -> &DovetailRequest {
    let back = drawer.joint.back.as_ref().unwrap();
    back.dovetail.as_ref().unwrap()
}

/// Sides: 300 less the lap of 5. Inside: 300 − 19 − 10 = 271 deep, the bottom 271 + 2·(5 − 0.5) = 280 by
/// 400 − 24 + 9 = 385. The groove from 10 to 16.1 lies behind the first tail at both ends: at its baseline that begins
/// at 8 + 14/7 = 10 in front and at 8 + 10/7 = 9.43 at the back. A side's groove begins at the floor of the front's, 19 − 5
/// = 14 behind the face, where the side begins at 5; it ends at the floor of the back's, 10 − 5 from the side's end.
#[test]
fn a_half_blind_front_and_a_through_back() {
    let plan = plan(&drawer());
    let drawer = &plan.drawers[0];
    let boards: Vec<_> = drawer
        .boards
        .iter()
        .map(|board| (board.name, board.length.mm(), board.thickness.mm()))
        .collect();
    assert_eq!(
        boards,
        [
            ("side", 295.0, 12.0),
            ("front", 400.0, 19.0),
            ("back", 400.0, 10.0)
        ]
    );
    close(drawer.inside.depth, 271.0);
    close(drawer.bottom.width, 280.0);
    close(drawer.bottom.length, 385.0);
    assert_eq!(drawer.nudges, []);
    assert!(drawer.groove.hidden);
    let side = &drawer.groove.runs[0];
    let stop = side.stopped.unwrap();
    close(stop.from, 9.0);
    close(stop.to, 290.0);
    // The other side mirrors it: back end first, from 5 to 295 − 9.
    let Given::Value(turned) = &side.back_first.as_ref().unwrap().stopped else {
        panic!("{side:?}")
    };
    assert_eq!((&turned.from, &turned.to), (&5.0.into(), &286.0.into()));
    assert_eq!(drawer.groove.runs[1].make, Make::Through);
    let front = drawer.joint.dovetail.as_ref().unwrap();
    assert_eq!((&front.pin, &front.lap), (&board(19.0), &5.0.into()));
    let back = at_back(drawer);
    assert_eq!((&back.pin, &back.lap), (&board(10.0), &0.0.into()));
    let stocks: Vec<_> = plan.parts.iter().map(|row| row.stock).collect();
    assert_eq!(stocks, ["sides", "fronts", "backs", "bottoms"]);
}

/// A through back of 24 narrows the first tail to begin at 8 + 24/7 = 11.4286: there the groove lies behind it at both
/// ends.
#[test]
fn the_groove_is_hidden_at_both_ends() {
    let thick = edit(drawer(), |drawer| drawer.back = board(24.0));
    let drawer = &plan(&thick).drawers[0];
    close(drawer.groove.from_edge, 11.4286);
    assert_eq!(drawer.nudges[0].what, Nudged::Groove);
    assert!(drawer.groove.hidden);
}

/// A side that ends behind the front's groove is grooved to that end: 19 − 8 of lap leave it 11, the groove 8 of that.
#[test]
fn a_deep_lap_leaves_the_groove_open_at_that_end() {
    let request = edit(with_joint(|joint| joint.lap = 14.0.into()), |drawer| {
        drawer.bottom = grooved(5.0);
    });
    let side = &plan(&request).drawers[0].groove.runs[0];
    let stop = side.stopped.unwrap();
    close(stop.from, 0.0);
    // 300 − 14 long, less 10 − 5.
    close(stop.to, 281.0);
}

/// Three to one on two tails of 45 each: pins of 11.25 at mid thickness, 11.25 − 14/7 = 9.25 at the front's outer face.
/// The back takes that, and with it the stops of the sides.
#[test]
fn proportions_hold_at_the_front() {
    let request = with_joint(|joint| {
        joint.by = ByRequest::ratio(3.0).into();
        (joint.half_pin, joint.narrow_pin) = (Given::Missing, Given::Missing);
    });
    let plan = plan(&request);
    let back = at_back(&plan.drawers[0]);
    let width = |given: &Given<f64>| match given {
        Given::Value(width) => *width,
        _ => panic!("{back:?}"),
    };
    assert!((width(&back.narrow_pin) - 9.25).abs() < 1e-9);
    assert!((width(&back.half_pin) - 4.625).abs() < 1e-9);
    assert!(back.by.is_missing());
}

/// Fingers are as high at both ends, and as deep as each board.
#[test]
fn fingers_meet_a_thin_back() {
    let request = edit(drawer(), |drawer| {
        drawer.joint = edit(box_joint(), |joint| {
            joint.layout = layout("count", Some(7.0), None);
        })
        .into();
    });
    let drawer = &plan(&request).drawers[0];
    close(drawer.boards[0].length, 300.0);
    let back = drawer.joint.back.as_ref().unwrap();
    let (front, back) = (
        drawer.joint.box_joint.as_ref().unwrap(),
        back.box_joint.as_ref().unwrap(),
    );
    assert_eq!((&front.b, &back.b), (&board(19.0), &board(10.0)));
    assert_eq!(
        (&front.width, &front.layout, &front.groove),
        (&back.width, &back.layout, &back.groove)
    );
}

/// What was asked before there was a back of its own means what it meant.
#[test]
fn a_back_that_is_left_out_is_as_the_front() {
    for lap in [Given::Missing, 5.0.into()] {
        let left_out = edit(
            with_joint(|joint| joint.back_lap = Given::Missing),
            |drawer| {
                drawer.back = Given::Missing;
                if let Given::Value(joint) = &mut drawer.joint {
                    joint.lap = lap.clone();
                }
            },
        );
        let said = edit(left_out.clone(), |drawer| {
            drawer.back = board(19.0);
            if let Given::Value(joint) = &mut drawer.joint {
                joint.back_lap = match &lap {
                    Given::Missing => 0.0.into(),
                    lap => lap.clone(),
                };
            }
        });
        let (left_out, said) = (plan(&left_out), plan(&said));
        assert_eq!(left_out.drawers, said.drawers);
        assert_eq!(left_out.parts, said.parts);
        assert_eq!(left_out.drawers[0].joint.back, None);
        assert!(left_out.drawers[0].groove.runs[0].back_first.is_none());
    }
}

/// A saw whose blade comes up by 20.
fn low_saw() -> Given<SawRequest> {
    SawRequest {
        greatest_height: 20.0.into(),
        ..SawRequest::default()
    }
    .into()
}

#[test]
fn what_is_proposed_for_a_back_can_be_made() {
    let cases: [(f64, &str, Code, With); 7] = [
        (9.8, "joint.backLap", Code::TooLarge, |x| {
            with_joint(|joint| joint.back_lap = x.into())
        }),
        // Left out it is the front's, which is too much for this back.
        (10.0, "joint.backLap", Code::TooLarge, |x| {
            with_joint(|joint| {
                joint.lap = 10.0.into();
                joint.back_lap = if x < 10.0 { x.into() } else { Given::Missing };
            })
        }),
        (5.5, "bottom.groove.depth", Code::TooLarge, |x| {
            edit(drawer(), |drawer| drawer.bottom = grooved(x))
        }),
        (38.0, "size.depth", Code::TooSmall, |x| {
            edit(drawer(), |drawer| {
                if let Given::Value(size) = &mut drawer.size {
                    size.depth = x.into();
                }
            })
        }),
        (25.0, "back.thickness", Code::BeyondHeight, |x| {
            edit(with_joint(|joint| joint.saw = low_saw()), |drawer| {
                drawer.back = board(x);
            })
        }),
        // As thick as the front, and no lap leaves the saw less to cut.
        (25.0, "front.thickness", Code::BeyondHeight, |x| {
            edit(with_joint(|joint| joint.saw = low_saw()), |drawer| {
                (drawer.front, drawer.back) = (board(x), Given::Missing);
            })
        }),
        // Four tails stand in front, but a thick back narrows them at their baselines.
        (4.0, "joint.tails", Code::TooLarge, |x| {
            edit(with_joint(|joint| joint.tails = x.into()), |drawer| {
                drawer.back = board(50.0);
            })
        }),
    ];
    are_refused_and_made(&cases);
}

/// Where both ends bound the same, the narrower bound is proposed: pins as proud as the thinner of 12 and 10.
#[test]
fn the_stricter_end_has_the_word() {
    for joint in [box_joint(), tails()] {
        let request = |proud: f64| {
            edit(drawer(), |drawer| {
                drawer.joint = edit(joint.clone(), |joint| joint.proud = proud.into()).into();
            })
        };
        let told = drawer_box(&request(13.0)).unwrap_err();
        assert_eq!(told.len(), 1);
        assert_eq!(
            (told[0].field.as_str(), told[0].limit),
            ("joint.proud", Some(10.0))
        );
        let narrower = drawer_box(&request(10.0)).err().unwrap_or_default();
        assert!(narrower.iter().all(|told| told.field != "joint.proud"));
    }
}

/// Front and back are asked at once, and what is wrong only there says so.
#[test]
fn both_ends_have_their_say() {
    let request = edit(
        with_joint(|joint| joint.back_lap = (-1.0).into()),
        |drawer| {
            drawer.back = board(1000.0);
            drawer.bottom = grooved(-1.0);
        },
    );
    let told = drawer_box(&request).unwrap_err();
    let fields: Vec<_> = told.iter().map(|problem| problem.field.as_str()).collect();
    assert_eq!(
        fields,
        ["back.thickness", "joint.backLap", "bottom.groove.depth"]
    );
    let crowded = edit(with_joint(|joint| joint.tails = 4.0.into()), |drawer| {
        drawer.back = board(50.0);
    });
    let told = drawer_box(&crowded).unwrap_err();
    let text = told[0].message.show(|mm| format!("{mm}"));
    assert!(text.starts_with("At the back: "), "{text}");
    let fingers = edit(drawer(), |drawer| {
        drawer.joint = edit(box_joint(), |joint| joint.back_lap = 0.0.into()).into();
    });
    let told = drawer_box(&fingers).unwrap_err();
    assert_eq!(
        (told[0].field.as_str(), told[0].code),
        ("joint.backLap", Code::Conflict)
    );
}
