//! Dovetails.

use notchwright_core::cutter::CutterRequest;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::dovetail::{
    ByRequest, DovetailChoicesRequest, DovetailRequest, MeasuredRequest, SlopeRequest, dovetail,
    dovetail_choices,
};
use notchwright_core::math::atan2;

use super::{Draft, SlantedAnswer, finish, joint, none};
use crate::state::{DovetailField, Field, JointField, PinsBy, SlopeBy, Work};

/// The parts of a request that the choices follow from.
const CHOICES_FOLLOW_FROM: [&str; 13] = [
    "width",
    "tail",
    "pin",
    "slope",
    "halfPin",
    "narrowPin",
    "by",
    "lap",
    "glueGap",
    "proud",
    "cutter",
    "pinCutter",
    "screw",
];

pub(super) fn add(work: &Work, answer: &mut SlantedAnswer) {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    let choices = draft
        .has_read(&CHOICES_FOLLOW_FROM)
        .then(|| dovetail_choices(&choices_request(&request)).ok())
        .flatten();
    answer.choices = choices
        .map(|planned| planned.plan.choices)
        .unwrap_or_default();
    let checked = dovetail(&request);
    answer.dovetail = finish(draft, checked, &answer.dovetail, &mut answer.problems);
}

fn choices_request(request: &DovetailRequest) -> DovetailChoicesRequest {
    DovetailChoicesRequest {
        width: request.width.clone(),
        tail: request.tail.clone(),
        pin: request.pin.clone(),
        slope: request.slope.clone(),
        half_pin: request.half_pin.clone(),
        narrow_pin: request.narrow_pin.clone(),
        by: request.by.clone(),
        lap: request.lap.clone(),
        glue_gap: request.glue_gap.clone(),
        proud: request.proud.clone(),
        cutter: request.cutter.clone(),
        pin_cutter: request.pin_cutter.clone(),
        screw: request.screw.clone(),
    }
}

fn request(draft: &mut Draft<'_>) -> DovetailRequest {
    let joint = |field| Field::Joint(field);
    let (saw, sled) = joint::chosen_pair(draft);
    DovetailRequest {
        width: draft.length("width", joint(JointField::Width)),
        tail: board(draft, "tail.thickness", JointField::ThicknessA),
        pin: board(draft, "pin.thickness", JointField::ThicknessB),
        slope: slope(draft).into(),
        tails: draft.number("tails", Field::Dovetail(DovetailField::Tails)),
        weights: draft.numbers("weights", Field::Dovetail(DovetailField::Weights)),
        by: by(draft).into(),
        half_pin: half_pin(draft),
        narrow_pin: narrow_pin(draft),
        lap: draft.length("lap", Field::Dovetail(DovetailField::Lap)),
        glue_gap: draft.length("glueGap", joint(JointField::GlueGap)),
        proud: draft.length("proud", joint(JointField::Proud)),
        cutter: cutter(draft),
        pin_cutter: pin_cutter(draft),
        screw: joint::chosen_screw(draft, sled),
        zero: joint::zero(draft).into(),
        saw: joint::reach(draft, saw, sled).into(),
        measured: measured(draft),
    }
}

fn board(draft: &mut Draft<'_>, path: &'static str, field: JointField) -> Given<BoardRequest> {
    let thickness = draft.length(path, Field::Joint(field));
    BoardRequest { thickness }.into()
}

fn slope(draft: &mut Draft<'_>) -> SlopeRequest {
    match draft.work().joint.dovetail.slope_by {
        SlopeBy::Run => SlopeRequest {
            kind: "ratio".into(),
            run: draft.number("slope.run", Field::Dovetail(DovetailField::Run)),
            ..SlopeRequest::default()
        },
        SlopeBy::Degrees => SlopeRequest {
            kind: "angle".into(),
            degrees: draft.number("slope.degrees", Field::Dovetail(DovetailField::Degrees)),
            ..SlopeRequest::default()
        },
    }
}

fn by(draft: &mut Draft<'_>) -> ByRequest {
    let kind = match draft.work().joint.dovetail.by {
        PinsBy::Widths => "widths",
        PinsBy::Ratio => "ratio",
        PinsBy::Equal => "equal",
        PinsBy::Narrowest => "narrowest",
    };
    let tail_to_pin = match draft.work().joint.dovetail.by {
        PinsBy::Ratio => draft.number("by.tailToPin", Field::Dovetail(DovetailField::Ratio)),
        _ => Given::Missing,
    };
    ByRequest {
        kind: kind.into(),
        tail_to_pin,
    }
}

fn narrow_pin(draft: &mut Draft<'_>) -> Given<f64> {
    match draft.work().joint.dovetail.by {
        PinsBy::Widths => draft.length("narrowPin", Field::Dovetail(DovetailField::NarrowPin)),
        _ => Given::Missing,
    }
}

fn half_pin(draft: &mut Draft<'_>) -> Given<f64> {
    match draft.work().joint.dovetail.by {
        PinsBy::Widths | PinsBy::Narrowest => {
            draft.length("halfPin", Field::Dovetail(DovetailField::HalfPin))
        }
        PinsBy::Ratio | PinsBy::Equal => Given::Missing,
    }
}

fn cutter(draft: &mut Draft<'_>) -> Given<CutterRequest> {
    match draft.work().shop.cutters.chosen() {
        Some(cutter) => joint::cutter_request(draft, cutter).into(),
        None => none(draft, "cutter", "There is no cutter: add one in the shop."),
    }
}

fn pin_cutter(draft: &mut Draft<'_>) -> Given<CutterRequest> {
    let id = draft.work().joint.dovetail.pin_cutter;
    let cutter = draft.work().shop.cutters.get(id);
    cutter.map_or(Given::Missing, |cutter| {
        joint::cutter_at(draft, "pinCutter", cutter).into()
    })
}

/// The lean of the blade, once offset and height of it have been measured.
fn measured(draft: &mut Draft<'_>) -> Given<MeasuredRequest> {
    let mut length = |path, field| draft.length(path, Field::Dovetail(field));
    let offset = length("measured.leanDegrees", DovetailField::LeanOffset);
    let height = length("measured.leanDegrees", DovetailField::LeanHeight);
    match (offset, height) {
        (Given::Value(offset), Given::Value(height)) if height > 0.0 => MeasuredRequest {
            lean_degrees: atan2(offset, height).to_degrees().into(),
            ..MeasuredRequest::default()
        }
        .into(),
        _ => Given::Missing,
    }
}
