//! Sleds on saws for tests.

use proptest::prelude::*;

use crate::given::Given;
use crate::sled::{
    BaseRequest, BladeRequest, CutRequest, RunnerRequest, SledFitPlan, SledFitRequest, SledRequest,
    TableRequest, sled_fit,
};

/// A sled on a saw, in millimetres.
#[derive(Clone, Debug)]
pub(super) struct Saw {
    front: f64,
    rear: f64,
    slot: f64,
    second: Option<f64>,
    base: [f64; 3],
    face: f64,
    window: f64,
    contacts: [f64; 2],
    holes: Vec<f64>,
    depth: f64,
}

pub(super) fn usual() -> Saw {
    Saw {
        front: 400.0,
        rear: 300.0,
        slot: 120.0,
        second: None,
        base: [500.0, 600.0, 15.0],
        face: 180.0,
        window: 200.0,
        contacts: [20.0, 420.0],
        holes: vec![40.0, 120.0, 240.0, 400.0],
        depth: 18.5,
    }
}

/// From usual to absurd, within what is legal.
pub(super) fn saws() -> Vec<Saw> {
    let usual = usual();
    let saw = |change: fn(&mut Saw)| {
        let mut saw = usual.clone();
        change(&mut saw);
        saw
    };
    vec![
        usual.clone(),
        saw(|saw| saw.front = 262.0),
        saw(|saw| saw.rear = 180.0),
        saw(|saw| [saw.front, saw.rear] = [210.0, 200.0]),
        saw(|saw| saw.second = Some(128.0)),
        saw(|saw| [saw.slot, saw.face] = [8.0, 0.0]),
        saw(|saw| saw.base = [3000.0, 600.0, 0.0]),
        saw(|saw| {
            saw.base = [60.0, 3000.0, 60.0];
            [saw.slot, saw.window] = [8.0, 400.0];
        }),
        saw(|saw| saw.contacts = [-300.0, 380.0]),
        saw(|saw| saw.holes = (0..90).map(|hole| f64::from(hole) * 3.0).collect()),
        saw(|saw| saw.holes = vec![-150.0, 900.0]),
        // Little room for the words of two contacts off the table, and less yet.
        Saw {
            front: 60.0,
            rear: 424.68,
            slot: 5.0,
            second: Some(179.14),
            base: [1198.0, 949.4, 0.0],
            face: 0.0,
            window: 388.5,
            contacts: [495.1, 937.4],
            holes: vec![],
            depth: 0.1,
        },
        Saw {
            front: 1278.7,
            rear: 60.0,
            slot: 343.66,
            second: Some(5.0),
            base: [1176.9, 615.7, 0.0],
            face: 0.0,
            window: 344.9,
            contacts: [406.0, 878.2],
            holes: vec![],
            depth: 0.1,
        },
    ]
}

impl Saw {
    pub(super) fn plan(&self) -> Option<SledFitPlan> {
        let [width, length, thickness] = self.base;
        let request = SledFitRequest {
            saw: TableRequest {
                blade_to_slot: self.slot.into(),
                slot_side: "left".into(),
                front_to_arbor: self.front.into(),
                arbor_to_rear: self.rear.into(),
                greatest_height: 200.0.into(),
                second_slot: self.second.map(Given::from).unwrap_or_default(),
                ..TableRequest::default()
            }
            .into(),
            blade: BladeRequest {
                diameter: 300.0.into(),
                kerf: 3.2.into(),
            }
            .into(),
            sled: SledRequest {
                base: BaseRequest {
                    thickness: thickness.into(),
                    width: width.into(),
                    length: length.into(),
                    ..BaseRequest::default()
                }
                .into(),
                carriage_face: self.face.into(),
                front_rail: (self.face + self.window).into(),
                runner: RunnerRequest {
                    contact_near: self.contacts[0].into(),
                    contact_far: self.contacts[1].into(),
                    width: 19.0.into(),
                    holes: self
                        .holes
                        .iter()
                        .map(|hole| (*hole).into())
                        .collect::<Vec<_>>()
                        .into(),
                    ..RunnerRequest::default()
                }
                .into(),
                ..SledRequest::default()
            }
            .into(),
            cut: CutRequest {
                depth: self.depth.into(),
                board_thickness: 12.0.into(),
                ..CutRequest::default()
            }
            .into(),
            ..SledFitRequest::default()
        };
        sled_fit(&request).ok().map(|planned| planned.plan)
    }
}

pub(super) fn legal() -> impl Strategy<Value = SledFitPlan> {
    let table = (60.0..1500.0_f64, 60.0..1500.0_f64);
    let slots = (5.0..400.0_f64, prop::option::of(5.0..400.0_f64));
    let base = (60.0..1500.0_f64, 100.0..1500.0_f64, 0.0..60.0_f64);
    let stands = (0.0..600.0_f64, 20.0..600.0_f64);
    let runner = (
        -200.0..500.0_f64,
        1.0..900.0_f64,
        prop::collection::vec(-200.0..1500.0_f64, 0..14),
    );
    (table, slots, base, stands, runner, 0.1..90.0_f64).prop_filter_map(
        "a sled that can be",
        |(table, slots, base, stands, runner, depth)| {
            let saw = Saw {
                front: table.0,
                rear: table.1,
                slot: slots.0,
                second: slots.1,
                base: [base.0, base.1, base.2],
                face: stands.0,
                window: stands.1,
                contacts: [runner.0, runner.0 + runner.1],
                holes: runner.2,
                depth,
            };
            saw.plan()
        },
    )
}
