//! Drawers by worked examples; every value is derived unless a source is named beside it.

mod backs;
mod corners;
pub(crate) mod legal;
mod properties;
mod refusals;

use super::{
    AppliedFrontRequest, DrawerBoxPlan, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerJointRequest, DrawerLayoutRequest, DrawerSizeRequest, Nudged,
    drawer_box,
};
use crate::given::Given;
use crate::joint::box_joint::Make;
use crate::joint::dovetail::SlopeRequest;
use crate::stop::Board;
use crate::units::Mm;
use legal::{chest, edit};

fn plan(request: &DrawerBoxRequest) -> DrawerBoxPlan {
    drawer_box(request).unwrap().plan
}

fn close(got: Mm, expected: f64) {
    assert!(
        (got.mm() - expected).abs() < 5e-4,
        "{got} is not {expected}"
    );
}

fn layout(kind: &str, count: Option<f64>, width: Option<f64>) -> Given<DrawerLayoutRequest> {
    DrawerLayoutRequest {
        kind: kind.into(),
        count: count.map_or(Given::Missing, Given::from),
        width: width.map_or(Given::Missing, Given::from),
    }
    .into()
}

/// Eight ash drawers in an opening 640 high: seven dividers of 10 and eight gaps of 2 leave 554, 69.25 each
/// at the dampest. Flat-sawn ash, 0.00274 a percent (Wood Handbook, table 13-5), from 8 to 12 % grows by
/// 1.096 %, so that each is cut to 69.25 / 1.01096 = 68.4993.
#[test]
fn the_chart_chest_is_divided() {
    let plan = plan(&chest());
    assert_eq!((plan.drawers.len(), plan.places.len()), (1, 8));
    let drawer = &plan.drawers[0];
    assert_eq!(drawer.count, 8);
    close(drawer.height, 68.4993);
    close(drawer.width, 880.0);
    close(drawer.depth, 590.0);
    // Boards: sides as long as the drawer is deep, fronts as long as it is wide.
    let boards: Vec<_> = drawer
        .boards
        .iter()
        .map(|board| {
            (
                board.name,
                board.count,
                board.length.mm(),
                board.thickness.mm(),
            )
        })
        .collect();
    assert_eq!(
        boards,
        [
            ("side", 2, 590.0, 12.0),
            ("front", 1, 880.0, 14.0),
            ("back", 1, 880.0, 14.0)
        ]
    );
    // Bottom: 880 − 2·12 + 2·(6 − 0.5) = 867 by 590 − 2·14 + 11 = 573, held by 5.5.
    close(drawer.bottom.length, 867.0);
    close(drawer.bottom.width, 573.0);
    close(drawer.bottom.held, 5.5);
    // The driest is 6 %: 68.4993·(1 − 2·0.00274) = 68.1239; room is 69.25 + 2.
    let movement = drawer.movement.unwrap();
    close(movement.driest, 68.1239);
    close(movement.wettest, 69.25);
    for place in &plan.places {
        close(place.gap_above.now, 2.7507);
        close(place.gap_above.wettest, 2.0);
        close(place.gap_above.driest, 3.1261);
    }
    // From the top: 640 − 71.25, then 81.25 for each; the lowest lies on the opening's floor.
    close(plan.places[0].from_below, 568.75);
    close(plan.places[7].from_below, 0.0);
    close(plan.snug_height.unwrap(), 640.0);
}

/// Five fingers of 68.4993 / 5 = 13.6999: the groove of 6.1 asked for from 10 to 16.1 runs across a boundary;
/// the nearest place behind one finger is the second finger from its beginning, 13.6999.
#[test]
fn the_groove_is_moved_behind_a_finger() {
    let request = edit(chest(), |drawer| {
        drawer.joint = edit(legal::box_joint(), |joint| {
            joint.layout = layout("count", Some(5.0), None);
        })
        .into();
    });
    let drawer = &plan(&request).drawers[0];
    assert_eq!(drawer.nudges.len(), 1);
    let nudge = &drawer.nudges[0];
    assert_eq!(nudge.what, Nudged::Groove);
    close(nudge.from, 10.0);
    // The first finger ends at 13.6999 and holds the groove up to 7.5999, which is nearer: 2.4 against 3.7.
    close(nudge.to, 7.5999);
    assert!(drawer.groove.hidden);
    // The side has a pin at the lower edge, so the front has the socket there and is grooved from end to end.
    let makes: Vec<_> = drawer
        .groove
        .runs
        .iter()
        .map(|run| (run.board, run.make))
        .collect();
    assert_eq!(
        makes,
        [(Board::A, Make::Stopped), (Board::B, Make::Through)]
    );
    // The side's groove need not go past the front's groove floor: 14 − 6 from the end.
    let stop = drawer.groove.runs[0].stopped.unwrap();
    close(stop.from, 8.0);
    close(stop.to, 582.0);
    // Fence to bit: from the lower edge to the groove's near side.
    close(drawer.groove.runs[1].passes[0].fence_to_bit, 7.5999);
}

/// Fingers of exactly 10 in 68.4993: six would not be odd, so five, 50 high.
#[test]
fn heights_are_lowered_for_whole_fingers() {
    let with = |layout: Given<DrawerLayoutRequest>| {
        edit(chest(), |drawer| {
            drawer.joint = edit(legal::box_joint(), |joint| joint.layout = layout).into();
        })
    };
    let ten = plan(&with(layout("finger", None, Some(10.0))));
    let drawer = &ten.drawers[0];
    close(drawer.height, 50.0);
    let nudge = &drawer.nudges[0];
    assert_eq!(nudge.what, Nudged::Height);
    close(nudge.from, 68.4993);
    close(nudge.to, 50.0);
    // The opening that wastes nothing: 8·50·1.01096 + 86.
    close(ten.snug_height.unwrap(), 490.384);
    // One pass of 6.35 less a gap of 0.05 is 6.3, 315 divisions of 0.02; eleven of them do not fit, nine do.
    let one = plan(&with(layout("onePass", None, None)));
    let drawer = &one.drawers[0];
    close(drawer.joint.finger_width.unwrap(), 6.3);
    assert_eq!(drawer.joint.count, 9);
    close(drawer.height, 56.7);
}

/// Three drawers in 300 + 2·10 + 3·2 without wood: graduated by 20 they are 80, 100 and 120; at a ratio of 2,
/// 300/7 = 42.857, 85.714 and 171.429.
#[test]
fn drawers_are_graduated() {
    let with = |heights: DrawerHeightsRequest| {
        edit(chest(), |drawer| {
            drawer.wood = Given::Missing;
            drawer.climate = Given::Missing;
            drawer.count = 3.0.into();
            drawer.heights = heights.into();
            drawer.joint = edit(legal::box_joint(), |joint| {
                joint.layout = layout("count", Some(5.0), None);
            })
            .into();
            drawer.size = edit(legal::opening(), |size| size.height = 326.0.into()).into();
        })
    };
    let steps = DrawerHeightsRequest {
        kind: "graduated".into(),
        step: 20.0.into(),
        ..DrawerHeightsRequest::default()
    };
    let ratio = DrawerHeightsRequest {
        kind: "ratio".into(),
        ratio: 2.0.into(),
        ..DrawerHeightsRequest::default()
    };
    for (heights, expected) in [
        (steps, [80.0, 100.0, 120.0]),
        (ratio, [42.8571, 85.7143, 171.4286]),
    ] {
        let plan = plan(&with(heights));
        assert_eq!(plan.drawers.len(), 3);
        for (drawer, expected) in plan.drawers.iter().zip(expected) {
            close(drawer.height, expected);
            assert_eq!(drawer.count, 1);
        }
    }
}

/// A front that laps 10 over the opening all around, 3 between two: the topmost reaches from 650 to the middle
/// of its divider, 563.75, and half the gap above it, 565.25.
#[test]
fn applied_fronts_meet_in_the_middle_of_dividers() {
    let request = edit(chest(), |drawer| {
        drawer.applied = AppliedFrontRequest {
            thickness: 18.0.into(),
            lap: 10.0.into(),
            gap: 3.0.into(),
        }
        .into();
    });
    let plan = plan(&request);
    assert_eq!(plan.applied.len(), 8);
    close(plan.applied[0].width, 920.0);
    close(plan.applied[0].height, 84.75);
    close(plan.applied[0].below, 3.5);
    close(plan.applied[1].height, 78.25);
    close(plan.applied[7].below, 10.0);
    let high: Mm = plan.applied.iter().map(|front| front.height).sum();
    close(high + Mm::constant(7.0 * 3.0), 660.0);
}

/// Flat-sawn ash 573 from front to back at 8 %, of which it is the dampest that must fit: 573/1.01096 =
/// 566.788; at 6 % that is 563.682, held by (563.682 − 562)/2 = 0.841 at each edge, and it can slide out.
#[test]
fn a_solid_bottom_is_held_at_the_driest() {
    let solid = edit(chest(), |drawer| {
        drawer.bottom = edit(legal::bottom(), |bottom| {
            bottom.wood = legal::ash("flat").into();
        })
        .into();
    });
    let planned = drawer_box(&solid).unwrap();
    let bottom = &planned.plan.drawers[0].bottom;
    close(bottom.width, 566.7880);
    let movement = bottom.movement.unwrap();
    close(movement.wettest, 573.0);
    close(movement.driest, 563.6820);
    close(movement.held_least, 0.8410);
    close(movement.held_aside, -4.3180);
    let told = |code| planned.notes.iter().any(|note| note.code == code);
    assert!(told("bottom-can-drop"));
    // Its thickness swells by the radial 0.00169·4: 6·1.00676 + 0.1.
    close(planned.plan.drawers[0].groove.width, 6.1406);
    assert!(!planned.plan.parts[3].may_turn);
}

/// Tails 5 on 60: whatever the layout, the groove runs behind a tail or a pin.
#[test]
fn dovetailed_corners_hide_the_groove() {
    let request = edit(chest(), |drawer| {
        drawer.joint = DrawerJointRequest {
            kind: "dovetail".into(),
            slope: SlopeRequest::ratio(7.0).into(),
            tails: 2.0.into(),
            half_pin: 8.0.into(),
            narrow_pin: 6.0.into(),
            cutter: legal::cutter(2.4).into(),
            screw: legal::screw().into(),
            ..DrawerJointRequest::default()
        }
        .into();
    });
    let drawer = &plan(&request).drawers[0];
    assert!(drawer.groove.hidden);
    // The groove asked for at 10 to 16.1: the first tail is from 8 + 14/7 = 10 at its baseline.
    close(drawer.groove.from_edge, 10.0);
    assert_eq!(drawer.groove.runs[1].make, Make::Through);
    assert!(drawer.joint.dovetail.is_some() && drawer.joint.box_joint.is_none());
}

/// A groove wider than a finger shows whatever is done.
#[test]
fn a_groove_behind_no_finger_is_told() {
    let request = edit(chest(), |drawer| {
        drawer.joint = edit(legal::box_joint(), |joint| {
            joint.layout = layout("count", Some(13.0), None);
            joint.cutter = legal::cutter(3.2).into();
        })
        .into();
    });
    let planned = drawer_box(&request).unwrap();
    let groove = &planned.plan.drawers[0].groove;
    assert!(!groove.hidden);
    assert!(groove.runs.iter().all(|run| run.make == Make::Stopped));
    assert!(planned.notes.iter().any(|note| note.code == "groove-shows"));
}

/// The outside itself: no opening, no places, nothing above it.
/// The chest's drawers at an outside of their own.
fn outside(height: f64) -> DrawerBoxRequest {
    edit(chest(), |drawer| {
        drawer.between = Given::Missing;
        drawer.size = DrawerSizeRequest {
            kind: "outside".into(),
            width: 400.0.into(),
            height: height.into(),
            depth: 300.0.into(),
            ..DrawerSizeRequest::default()
        }
        .into();
    })
}

/// Nine fingers of 10 are 90: a height that is taken for that is divided as it is.
#[test]
fn fingers_fill_a_height_to_the_last_of_it() {
    let request = edit(outside(90.000_9), |drawer| {
        drawer.joint = edit(legal::box_joint(), |joint| {
            joint.layout = layout("finger", None, Some(10.0));
        })
        .into();
    });
    let drawer = &plan(&request).drawers[0];
    assert_eq!((drawer.height.mm(), drawer.joint.count), (90.000_9, 9));
    assert_eq!(drawer.joint.finger_width.unwrap(), drawer.height / 9.0);
}

/// Three fingers of 7 in 27 are 21: a groove 6.1 wide, asked for at 16, would end above them.
#[test]
fn wood_is_left_above_the_groove() {
    let request = edit(outside(27.0), |drawer| {
        drawer.joint = edit(legal::box_joint(), |joint| {
            joint.layout = layout("finger", None, Some(7.0));
        })
        .into();
        drawer.bottom = edit(legal::bottom(), |bottom| {
            bottom.groove = edit(legal::groove(), |groove| groove.from_edge = 16.0.into()).into();
        })
        .into();
    });
    let drawer = &plan(&request).drawers[0];
    close(drawer.height, 21.0);
    // Derived: 21 less 6.1 and a millimetre.
    assert!(
        drawer.groove.from_edge.mm() < 13.9 + 1e-9,
        "{:?}",
        drawer.groove
    );
    assert!(
        drawer.inside.height.mm() > 1.0 - 1e-9,
        "{:?}",
        drawer.inside
    );
}

#[test]
fn an_outside_is_taken_as_it_is() {
    let request = outside(90.0);
    let plan = plan(&request);
    close(plan.drawers[0].height, 90.0);
    assert_eq!(plan.drawers[0].count, 8);
    assert!(plan.places.is_empty() && plan.snug_height.is_none());
    let counts: Vec<_> = plan
        .parts
        .iter()
        .map(|row| (row.name.as_str(), row.count))
        .collect();
    assert_eq!(
        counts,
        [
            ("drawer side", 16),
            ("drawer front", 8),
            ("drawer back", 8),
            ("drawer bottom", 8)
        ]
    );
}

#[test]
fn a_bit_is_needed_for_fence_settings() {
    let request = edit(chest(), |drawer| {
        drawer.bottom = edit(legal::bottom(), |bottom| {
            bottom.groove = edit(legal::groove(), |groove: &mut DrawerGrooveRequest| {
                groove.bit = Given::Missing;
            })
            .into();
        })
        .into();
    });
    for run in &plan(&request).drawers[0].groove.runs {
        assert!(run.setup.is_none() && run.passes.is_empty());
    }
}
