//! The box joint, and what its request has in common with other joints'.

use std::rc::Rc;

use notchwright_core::cutter::{CutterRequest, GrindRequest};
use notchwright_core::dial::{ScrewRequest, ZeroRequest};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointPlan, BoxJointRequest, Choice, ChoicesRequest, GrooveRequest,
    LayoutRequest, SawRequest, box_joint, choices,
};
use notchwright_core::message;
use notchwright_core::problem::Planned;

use super::FieldProblem;
use super::draft::Draft;
use crate::state::{
    Cutter, CutterField, Edge, Field, First, GrindKind, JointField, LayoutKind, LeadBy, Leftover,
    Rises, Rounding, Saw, SawField, Screw, ScrewField, Sled, SledField, Work, ZeroKind,
};

/// The plan if it is what the fields say, numbers of fingers to choose from, and what is wrong.
pub(super) fn answer(
    work: &Work,
) -> (
    Option<Rc<Planned<BoxJointPlan>>>,
    Vec<Choice>,
    Vec<FieldProblem>,
) {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    let choices = draft
        .has_read(&CHOICES_FOLLOW_FROM)
        .then(|| choices(&choices_request(&request)).ok())
        .flatten();
    let (plan, refused) = match box_joint(&request) {
        Ok(planned) => (Some(Rc::new(planned)), Vec::new()),
        Err(problems) => (None, problems),
    };
    let problems = draft.finish(refused);
    // A plan of a request with an unread field left out is not what the fields say.
    let current = plan.filter(|_| problems.is_empty());
    let choices = choices.map(|planned| planned.plan.choices);
    (current, choices.unwrap_or_default(), problems)
}

/// The request of the joint with the chosen saw, cutter and screw.
fn request(draft: &mut Draft<'_>) -> BoxJointRequest {
    let joint = &draft.work().joint;
    let (saw, sled) = chosen_pair(draft);
    let first = match joint.first {
        First::Pin => "pin",
        First::Socket => "socket",
    };
    BoxJointRequest {
        width: draft.length("width", Field::Joint(JointField::Width)),
        a: board(draft, "a.thickness", JointField::ThicknessA),
        b: board(draft, "b.thickness", JointField::ThicknessB),
        cutter: chosen_cutter(draft),
        screw: chosen_screw(draft, sled),
        zero: zero(draft).into(),
        layout: layout(draft).into(),
        first: first.into(),
        glue_gap: draft.length("glueGap", Field::Joint(JointField::GlueGap)),
        proud: draft.length("proud", Field::Joint(JointField::Proud)),
        groove: groove(draft),
        saw: reach(draft, saw, sled).into(),
    }
}

/// The parts of a request that the choices follow from.
const CHOICES_FOLLOW_FROM: [&str; 6] = ["width", "a", "b", "cutter", "screw", "glueGap"];

/// The request of the choices, from the joint's.
fn choices_request(request: &BoxJointRequest) -> ChoicesRequest {
    ChoicesRequest {
        width: request.width.clone(),
        a: request.a.clone(),
        b: request.b.clone(),
        cutter: request.cutter.clone(),
        screw: request.screw.clone(),
        glue_gap: request.glue_gap.clone(),
    }
}

pub(super) fn board(
    draft: &mut Draft<'_>,
    path: &'static str,
    field: JointField,
) -> Given<BoardRequest> {
    let thickness = draft.length(path, Field::Joint(field));
    BoardRequest { thickness }.into()
}

fn layout(draft: &mut Draft<'_>) -> LayoutRequest {
    let joint = &draft.work().joint;
    match joint.layout {
        LayoutKind::Count => LayoutRequest {
            kind: "count".into(),
            count: draft.number("layout.count", Field::Joint(JointField::Count)),
            ..LayoutRequest::default()
        },
        LayoutKind::Finger => LayoutRequest {
            kind: "finger".into(),
            width: draft.length("layout.width", Field::Joint(JointField::FingerWidth)),
            ..LayoutRequest::default()
        },
        LayoutKind::OnePass => LayoutRequest::one_pass(match joint.leftover {
            Leftover::Ends => "ends",
            Leftover::Far => "far",
            Leftover::Rip => "rip",
        }),
        LayoutKind::Pattern => LayoutRequest {
            kind: "pattern".into(),
            weights: draft.numbers("layout.weights", Field::Joint(JointField::Weights)),
            mirrored: joint.mirrored.into(),
            ..LayoutRequest::default()
        },
    }
}

pub(super) fn zero(draft: &mut Draft<'_>) -> ZeroRequest {
    let kind = |kind: &str| ZeroRequest {
        kind: kind.into(),
        ..ZeroRequest::default()
    };
    match draft.work().joint.zero.kind {
        ZeroKind::Touch => kind("touch"),
        ZeroKind::Flush => kind("flush"),
        ZeroKind::TestKerf => ZeroRequest {
            reading: draft.length("zero.reading", Field::Joint(JointField::ZeroReading)),
            measured: draft.length("zero.measured", Field::Joint(JointField::ZeroMeasured)),
            ..kind("testKerf")
        },
    }
}

fn groove(draft: &mut Draft<'_>) -> Given<GrooveRequest> {
    let groove = &draft.work().joint.groove;
    if !groove.on {
        return Given::Missing;
    }
    let edge = match groove.edge {
        Edge::Reference => "reference",
        Edge::Far => "far",
    };
    GrooveRequest {
        from_edge: draft.length("groove.fromEdge", Field::Joint(JointField::GrooveFromEdge)),
        width: draft.length("groove.width", Field::Joint(JointField::GrooveWidth)),
        depth: draft.length("groove.depth", Field::Joint(JointField::GrooveDepth)),
        edge: edge.into(),
    }
    .into()
}

pub(super) fn chosen_cutter(draft: &mut Draft<'_>) -> Given<CutterRequest> {
    let Some(cutter) = draft.work().shop.cutters.chosen() else {
        draft.refuse(
            "cutter",
            None,
            message!["There is no cutter: add one in the shop."],
        );
        return Given::Missing;
    };
    cutter_request(draft, cutter).into()
}

pub(super) fn chosen_pair<'a>(draft: &Draft<'a>) -> (Option<&'a Saw>, Option<&'a Sled>) {
    let shop = &draft.work().shop;
    (shop.saws.chosen(), shop.sleds.chosen())
}

pub(super) fn chosen_screw(draft: &mut Draft<'_>, sled: Option<&Sled>) -> Given<ScrewRequest> {
    let Some(screw) = draft.work().shop.screws.chosen() else {
        draft.refuse(
            "screw",
            None,
            message!["There is no screw: add one in the shop."],
        );
        return Given::Missing;
    };
    let travel = sled.map_or(Given::Missing, |sled| {
        draft.length("screw.travel", Field::Sled(sled.id, SledField::Travel))
    });
    ScrewRequest {
        travel,
        ..screw_request(draft, screw)
    }
    .into()
}

pub(super) fn cutter_request(draft: &mut Draft<'_>, cutter: &Cutter) -> CutterRequest {
    cutter_at(draft, "cutter", cutter)
}

/// A cutter at this place of a request.
pub(super) fn cutter_at(draft: &mut Draft<'_>, place: &str, cutter: &Cutter) -> CutterRequest {
    let field = |field| Field::Cutter(cutter.id, field);
    let path = |name: &str| format!("{place}.{name}").into();
    let grind = match cutter.grind {
        GrindKind::Flat => GrindRequest {
            kind: "flat".into(),
            ..GrindRequest::default()
        },
        GrindKind::Alternate => GrindRequest {
            kind: "alternate".into(),
            bevel_degrees: draft.number_at(path("grind.bevelDegrees"), field(CutterField::Bevel)),
        },
        GrindKind::Slope => GrindRequest {
            kind: "slope".into(),
            ..GrindRequest::default()
        },
    };
    CutterRequest {
        kerf: draft.length_at(path("kerf"), field(CutterField::Kerf)),
        diameter: draft.length_at(path("diameter"), field(CutterField::Diameter)),
        grind: grind.into(),
        overlap: draft.length_at(path("overlap"), field(CutterField::Overlap)),
    }
}

pub(super) fn screw_request(draft: &mut Draft<'_>, screw: &Screw) -> ScrewRequest {
    let field = |field| Field::Screw(screw.id, field);
    let (lead, threads_per_inch) = match screw.by {
        LeadBy::Lead => (
            draft.length("screw.lead", field(ScrewField::Lead)),
            Given::Missing,
        ),
        LeadBy::Threads => {
            let threads = draft.number("screw.threadsPerInch", field(ScrewField::Threads));
            draft.answers_for("screw.threadsPerInch", "screw.lead");
            (Given::Missing, threads)
        }
    };
    let rounding = match screw.rounding {
        Rounding::Division => "division",
        Rounding::Half => "half",
        Rounding::None => "none",
    };
    let rises = match screw.rises {
        Rises::Away => "away",
        Rises::Towards => "towards",
    };
    ScrewRequest {
        lead,
        threads_per_inch,
        divisions: draft.number("screw.divisions", field(ScrewField::Divisions)),
        backlash: draft.length("screw.backlash", field(ScrewField::Backlash)),
        rounding: rounding.into(),
        rises: rises.into(),
        travel: Given::Missing,
    }
}

/// What the saw and the sled allow; what is blank sets no bound.
pub(super) fn reach(draft: &mut Draft<'_>, saw: Option<&Saw>, sled: Option<&Sled>) -> SawRequest {
    let greatest_height = saw.map_or(Given::Missing, |saw| {
        draft.length(
            "saw.greatestHeight",
            Field::Saw(saw.id, SawField::GreatestHeight),
        )
    });
    let mut of_sled = |path, field| {
        sled.map_or(Given::Missing, |sled| {
            draft.length(path, Field::Sled(sled.id, field))
        })
    };
    let base = of_sled("saw.base", SledField::Base);
    let rail = of_sled("saw.window", SledField::FrontRail);
    let face = of_sled("saw.window", SledField::CarriageFace);
    SawRequest {
        greatest_height,
        base,
        window: match (rail, face) {
            // A rail before the carriage leaves no window; the sled's own place says what is wrong with it.
            (Given::Value(rail), Given::Value(face)) => (rail - face).max(0.0).into(),
            _ => Given::Missing,
        },
    }
}
