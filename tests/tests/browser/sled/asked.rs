//! What is asked of the core: the page must show its answers.

use anyhow::{Result, bail};
use notchwright_core::given::Given;
use notchwright_core::problem::{Planned, Problem};
use notchwright_core::sled::{
    BaseRequest, BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledFitPlan,
    SledFitRequest, SledRequest, TableRequest, sled_fit,
};

/// A sled on a saw, in parts that a test can change.
#[derive(Clone)]
pub(super) struct Asked {
    pub(super) saw: TableRequest,
    pub(super) blade: BladeRequest,
    pub(super) base: BaseRequest,
    pub(super) sled: SledRequest,
    pub(super) runner: RunnerRequest,
    pub(super) cut: CutRequest,
    pub(super) measured: Given<LeftOverRequest>,
}

impl Asked {
    /// What the page opens on; the cut is the joint's.
    pub(super) fn worked() -> Self {
        Self {
            saw: TableRequest {
                blade_to_slot: 118.5.into(),
                measured_from: "nearTooth".into(),
                slot_side: "left".into(),
                front_to_arbor: 305.0.into(),
                arbor_to_rear: 372.0.into(),
                greatest_height: 80.0.into(),
                second_slot: 142.0.into(),
                slot_section: "plain".into(),
            },
            blade: BladeRequest {
                diameter: 254.0.into(),
                kerf: 3.07.into(),
            },
            base: BaseRequest {
                thickness: 15.0.into(),
                width: 520.0.into(),
                length: 560.0.into(),
                margin: 20.0.into(),
            },
            sled: SledRequest {
                carriage_face: 170.0.into(),
                front_rail: 370.0.into(),
                ..SledRequest::default()
            },
            runner: RunnerRequest {
                contact_near: 20.0.into(),
                contact_far: 440.0.into(),
                width: 19.0.into(),
                holes: [60.0, 230.0, 400.0].map(Given::from).to_vec().into(),
                hole_clearance: 0.5.into(),
            },
            cut: CutRequest {
                depth: 18.0.into(),
                board_thickness: 18.0.into(),
                board_width: 140.0.into(),
                carriage_travel: 320.0.into(),
                ..CutRequest::default()
            },
            measured: Given::Missing,
        }
    }

    /// With the left-overs measured at both ends.
    pub(super) fn measured(self, near: f64, far: f64) -> Self {
        let (near, far) = (near.into(), far.into());
        Self {
            measured: LeftOverRequest { near, far }.into(),
            ..self
        }
    }

    fn request(&self) -> SledFitRequest {
        let sled = SledRequest {
            base: self.base.clone().into(),
            runner: self.runner.clone().into(),
            ..self.sled.clone()
        };
        SledFitRequest {
            saw: self.saw.clone().into(),
            blade: self.blade.clone().into(),
            sled: sled.into(),
            cut: self.cut.clone().into(),
            measured: self.measured.clone(),
            play: 0.1.into(),
        }
    }

    /// The core's answer with its notes, which must not be a refusal.
    pub(super) fn answer(&self) -> Result<Planned<SledFitPlan>> {
        match sled_fit(&self.request()) {
            Ok(planned) => Ok(planned),
            Err(problems) => bail!("this sled does not go on this saw: {problems:?}"),
        }
    }

    /// Its plan.
    pub(super) fn plan(&self) -> Result<SledFitPlan> {
        Ok(self.answer()?.plan)
    }

    /// The one problem of what cannot be.
    pub(super) fn problem(&self) -> Result<Problem> {
        match sled_fit(&self.request()) {
            Ok(_) => bail!("this sled goes on this saw"),
            Err(problems) => match <[Problem; 1]>::try_from(problems) {
                Ok([problem]) => Ok(problem),
                Err(problems) => bail!("not one problem but {problems:?}"),
            },
        }
    }
}
