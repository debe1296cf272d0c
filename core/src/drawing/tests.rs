//! What every drawing must be, whatever the joint.

use super::{
    Drawing, Item, Point, Role, Shape, board_progress, box_joint_drawing, box_joint_mated,
};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::ScrewRequest;
use crate::dryfit::Swept;
use crate::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, LayoutRequest, box_joint,
};
use crate::stop::{Board, Set};
use crate::units::Mm;

struct Joint {
    width: f64,
    thickness: [f64; 2],
    kerf: f64,
    bevel: Option<f64>,
    count: u32,
}

impl Joint {
    fn plan(&self) -> BoxJointPlan {
        let board = |thickness: f64| BoardRequest {
            thickness: thickness.into(),
        };
        let grind = |bevel: f64| GrindRequest {
            kind: "alternate".into(),
            bevel_degrees: bevel.into(),
        };
        let request = BoxJointRequest {
            width: self.width.into(),
            a: board(self.thickness[0]).into(),
            b: board(self.thickness[1]).into(),
            cutter: CutterRequest {
                kerf: self.kerf.into(),
                grind: self.bevel.map(grind).map(Into::into).unwrap_or_default(),
                ..CutterRequest::default()
            }
            .into(),
            screw: ScrewRequest {
                lead: 1.5.into(),
                divisions: 100.0.into(),
                ..ScrewRequest::default()
            }
            .into(),
            layout: LayoutRequest::count(f64::from(self.count)).into(),
            ..BoxJointRequest::default()
        };
        box_joint(&request).unwrap().plan
    }

    fn drawings(&self) -> Vec<Drawing> {
        let plan = self.plan();
        let set = &plan.sets[0];
        let passes = set.stops.len();
        let saw = [0, 1, passes / 2, passes - 1, passes];
        let saw = saw.map(|current| board_progress(set, plan.width, current));
        let mated = box_joint_mated(&plan, Mm::new(self.thickness[1]).unwrap());
        saw.into_iter()
            .chain([box_joint_drawing(&plan), mated])
            .collect()
    }
}

const USUAL: Joint = Joint {
    width: 140.0,
    thickness: [12.0, 18.0],
    kerf: 3.07,
    bevel: None,
    count: 9,
};

/// From usual to absurd, within what is legal.
fn joints() -> Vec<Joint> {
    let joint = |width, a, b, kerf, bevel, count| Joint {
        width,
        thickness: [a, b],
        kerf,
        bevel,
        count,
    };
    vec![
        USUAL,
        joint(80.0, 12.0, 18.0, 4.0, Some(20.0), 5),
        joint(140.0, 1.0, 1.0, 4.0, Some(45.0), 9),
        joint(2.0, 200.0, 200.0, 0.2, None, 2),
        joint(3000.0, 0.5, 0.5, 0.2, None, 3),
        joint(300.0, 12.0, 18.0, 0.3, None, 500),
    ]
}

fn points(item: &Item) -> Vec<Point> {
    match &item.shape {
        Shape::Polygons { polygons: lines } | Shape::Lines { lines } => lines.concat(),
        Shape::Text { at, .. } => vec![*at],
    }
}

/// The polygons of a role, all together.
fn areas(drawing: &Drawing, role: Role) -> Vec<&[Point]> {
    let shapes = drawing.items.iter().filter(|item| item.role == role);
    let polygons = shapes.filter_map(|item| match &item.shape {
        Shape::Polygons { polygons } => Some(polygons.iter().map(Vec::as_slice)),
        Shape::Lines { .. } | Shape::Text { .. } => None,
    });
    polygons.flatten().collect()
}

fn area(corners: &[Point]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let pairs = corners.iter().zip(next);
    let twice: f64 = pairs
        .map(|(a, b)| a.x.mm() * b.y.mm() - b.x.mm() * a.y.mm())
        .sum();
    twice.abs() / 2.0
}

#[test]
fn everything_lies_within_the_extent() {
    for (index, joint) in joints().iter().enumerate() {
        for drawing in joint.drawings() {
            for item in &drawing.items {
                for point in points(item) {
                    let inside = |place: Mm, extent| place >= Mm::ZERO && place <= extent;
                    assert!(
                        inside(point.x, drawing.width) && inside(point.y, drawing.height),
                        "joint {index}: {:?} at {point:?}",
                        item.role
                    );
                }
            }
        }
    }
}

#[test]
fn however_many_passes_there_are_few_items() {
    for joint in joints() {
        for drawing in joint.drawings() {
            assert!(drawing.items.len() < 50, "{}", drawing.items.len());
        }
    }
}

#[test]
fn the_wood_drawn_is_the_wood_left() {
    for joint in joints() {
        let plan = joint.plan();
        let drawing = box_joint_drawing(&plan);
        for (set, role) in plan.sets.iter().zip([Role::BoardA, Role::BoardB]) {
            let swept = Swept::new(set, plan.width);
            let open: Mm = swept.open.iter().map(|span| span.length()).sum();
            let uncut = plan.dry_fit.uncut.iter();
            let uncut: f64 = uncut
                .filter(|uncut| uncut.board == set.board)
                .map(|uncut| uncut.area)
                .sum();
            let wood = areas(&drawing, role);
            let [wood] = wood.as_slice() else {
                panic!("{role:?} is one piece: {}", wood.len())
            };
            let height = wood.iter().map(|point| point.y).max().unwrap()
                - wood.iter().map(|point| point.y).min().unwrap();
            let left = plan.width.mm() * height.mm() - open.mm() * set.height.mm() + uncut;
            // Ridges thinner than a line are not drawn.
            let unseen = if set.ridge < plan.width * 0.001 {
                uncut
            } else {
                0.0
            };
            assert!(
                (area(wood) - left).abs() < unseen + 1e-6,
                "{} for {left}",
                area(wood)
            );
        }
    }
}

#[test]
fn the_saw_cuts_what_the_plan_draws() {
    let plan = USUAL.plan();
    let set = &plan.sets[0];
    let passes = set.stops.len();
    for current in 0..=passes {
        let drawing = board_progress(set, plan.width, current);
        let lit = areas(&drawing, Role::CurrentPass);
        let dashed = drawing.items.iter().any(|item| item.role == Role::ToCome);
        // The pass and the arrowhead below it.
        assert_eq!(lit.len(), if current < passes { 2 } else { 0 });
        assert_eq!(dashed, current < passes);
    }
    assert_eq!(
        board_progress(set, plan.width, passes),
        board_progress(set, plan.width, passes + 7)
    );
}

#[test]
fn narrow_passes_are_enlarged_where_they_are() {
    let joint = Joint {
        width: 300.0,
        kerf: 0.6,
        count: 200,
        ..USUAL
    };
    let plan = joint.plan();
    let set = &plan.sets[0];
    for current in [0, set.stops.len() / 2, set.stops.len() - 1] {
        let drawing = board_progress(set, plan.width, current);
        let passes: Vec<f64> = areas(&drawing, Role::CurrentPass)
            .iter()
            .filter(|corners| corners.len() == 4)
            .map(|corners| (corners[1].x - corners[0].x).mm())
            .collect();
        let [narrow, wide] = passes.as_slice() else {
            panic!("{passes:?}")
        };
        assert!(*narrow <= 0.6 + 1e-9);
        // A phone 320 px wide shows a whole pass 12 px wide; at an edge half of it may be off the board.
        assert!(*wide / drawing.width.mm() * 320.0 > 6.0, "{wide}");
    }
}

#[test]
fn sets_cut_from_the_far_side_look_alike() {
    let plan = USUAL.plan();
    let backwards = |set: &Set| Set {
        stops: set.stops.iter().rev().copied().collect(),
        ..set.clone()
    };
    let reversed = BoxJointPlan {
        sets: plan.sets.iter().map(backwards).collect(),
        ..plan.clone()
    };
    let passes_sorted = |plan: &BoxJointPlan| {
        let drawing = box_joint_drawing(plan);
        let mut passes: Vec<Vec<Point>> = areas(&drawing, Role::Pass)
            .iter()
            .map(|corners| corners.to_vec())
            .collect();
        passes.sort_by_key(|corners| (corners[0].y, corners[0].x));
        let wood = areas(&drawing, Role::BoardA).concat();
        (passes, wood)
    };
    assert_eq!(passes_sorted(&plan), passes_sorted(&reversed));
    let current = |set: &Set, index| {
        let drawing = board_progress(set, plan.width, index);
        areas(&drawing, Role::CurrentPass)[0].to_vec()
    };
    let (forth, back) = (&plan.sets[0], &reversed.sets[0]);
    assert_eq!(current(forth, 0), current(back, back.stops.len() - 1));
    assert_eq!(plan.sets[0].board, Board::A);
}

#[test]
fn a_gap_is_enlarged_by_what_is_said() {
    let plan = USUAL.plan();
    let drawing = box_joint_mated(&plan, Mm::new(18.0).unwrap());
    let gaps = areas(&drawing, Role::Gap);
    let said: Vec<String> = drawing
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Text { text, .. } if item.role == Role::Dimension => {
                Some(text.show(|length| length.mm().to_string()))
            }
            _ => None,
        })
        .collect();
    assert_eq!(gaps.len(), said.len());
    for (gap, said) in gaps.iter().zip(&said) {
        let (size, times) = said.split_once(", ×").unwrap();
        let enlarged = size.parse::<f64>().unwrap() * times.parse::<f64>().unwrap();
        let drawn = (gap[1].x - gap[0].x).mm();
        assert!((drawn - enlarged).abs() < 1e-9, "{drawn} for {said}");
    }
}
