//! The chosen sled on the chosen saw.

use notchwright_core::given::Given;
use notchwright_core::sled::{
    BaseRequest, BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledFitPlan,
    SledFitRequest, SledRequest, TableRequest, sled_fit,
};
use notchwright_core::units::{Mm, parse_length};

use super::{Draft, FieldProblem, Outcome, finish, none};
use crate::state::{
    CutField, CutterField, Entry, Field, MeasuredFrom, Saw, SawField, Section, Side, Sled,
    SledField, Work,
};

pub(super) fn outcome(
    work: &Work,
    before: &Outcome<SledFitPlan>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<SledFitPlan> {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    finish(draft, sled_fit(&request), before, problems)
}

pub(super) fn request(draft: &mut Draft<'_>) -> SledFitRequest {
    let shop = &draft.work().shop;
    let (saw, sled) = (shop.saws.chosen(), shop.sleds.chosen());
    SledFitRequest {
        saw: match saw {
            Some(saw) => table(draft, saw).into(),
            None => none(draft, "saw", "There is no saw: add one in the shop."),
        },
        blade: blade(draft),
        sled: match sled {
            Some(sled) => on_sled(draft, sled).into(),
            None => none(draft, "sled", "There is no sled: add one in the shop."),
        },
        cut: cut(draft, sled).into(),
        measured: left_over(draft),
        play: draft.length("play", Field::Cut(CutField::Play)),
    }
}

fn table(draft: &mut Draft<'_>, saw: &Saw) -> TableRequest {
    let mut length = |path, field| draft.length(path, Field::Saw(saw.id, field));
    TableRequest {
        blade_to_slot: length("saw.bladeToSlot", SawField::ToSlot),
        measured_from: match saw.measured_from {
            MeasuredFrom::NearTooth => "nearTooth",
            MeasuredFrom::Centre => "centre",
        }
        .into(),
        slot_side: match saw.side {
            Side::Left => "left",
            Side::Right => "right",
        }
        .into(),
        front_to_arbor: length("saw.frontToArbor", SawField::Front),
        arbor_to_rear: length("saw.arborToRear", SawField::Rear),
        greatest_height: length("saw.greatestHeight", SawField::GreatestHeight),
        second_slot: length("saw.secondSlot", SawField::SecondSlot),
        slot_section: match saw.section {
            Section::Plain => "plain",
            Section::T => "t",
        }
        .into(),
    }
}

fn blade(draft: &mut Draft<'_>) -> Given<BladeRequest> {
    let Some(cutter) = draft.work().shop.cutters.chosen() else {
        return none(draft, "blade", "There is no cutter: add one in the shop.");
    };
    let mut length = |path, field| draft.length(path, Field::Cutter(cutter.id, field));
    BladeRequest {
        diameter: length("blade.diameter", CutterField::Diameter),
        kerf: length("blade.kerf", CutterField::Kerf),
    }
    .into()
}

fn on_sled(draft: &mut Draft<'_>, sled: &Sled) -> SledRequest {
    let holes = draft.lengths("sled.runner.holes", Field::Sled(sled.id, SledField::Holes));
    let mut length = |path, field| draft.length(path, Field::Sled(sled.id, field));
    SledRequest {
        base: BaseRequest {
            thickness: length("sled.base.thickness", SledField::Base),
            width: length("sled.base.width", SledField::Width),
            length: length("sled.base.length", SledField::Length),
            margin: length("sled.base.margin", SledField::Margin),
        }
        .into(),
        carriage_face: length("sled.carriageFace", SledField::CarriageFace),
        front_rail: length("sled.frontRail", SledField::FrontRail),
        runner: RunnerRequest {
            contact_near: length("sled.runner.contactNear", SledField::ContactNear),
            contact_far: length("sled.runner.contactFar", SledField::ContactFar),
            width: length("sled.runner.width", SledField::RunnerWidth),
            holes,
            hole_clearance: length("sled.runner.holeClearance", SledField::HoleClearance),
        }
        .into(),
        blade_line: length("sled.bladeLine", SledField::BladeLine),
    }
}

/// What is blank of the cut is the joint's.
fn cut(draft: &mut Draft<'_>, sled: Option<&Sled>) -> CutRequest {
    let joint = &draft.work().joint;
    let read = |entry: &Entry| parse_length(&entry.text, entry.unit).ok();
    let thicker = [&joint.thickness_a, &joint.thickness_b]
        .into_iter()
        .filter_map(read)
        .max();
    let proud = read(&joint.proud).unwrap_or_default();
    let deepest = thicker.map(|thickness| thickness + proud);
    let board_width = read(&joint.width);
    let carriage_travel = sled.map_or(Given::Missing, |sled| {
        draft.length(
            "cut.carriageTravel",
            Field::Sled(sled.id, SledField::Travel),
        )
    });
    let mut length = |path, field| draft.length(path, Field::Cut(field));
    CutRequest {
        depth: or(length("cut.depth", CutField::Depth), deepest),
        board_thickness: or(length("cut.boardThickness", CutField::Thickness), thicker),
        board_width: or(length("cut.boardWidth", CutField::Width), board_width),
        clearance: length("cut.clearance", CutField::Clearance),
        over: length("cut.over", CutField::Over),
        carriage_travel,
    }
}

fn or(given: Given<f64>, joint: Option<Mm>) -> Given<f64> {
    match (given, joint) {
        (Given::Missing, Some(length)) => length.mm().into(),
        (given, _) => given,
    }
}

fn left_over(draft: &mut Draft<'_>) -> Given<LeftOverRequest> {
    let near = draft.length("measured.near", Field::Cut(CutField::Near));
    let far = draft.length("measured.far", Field::Cut(CutField::Far));
    // With one of them alone there is nothing to compare yet.
    if near.is_missing() || far.is_missing() {
        return Given::Missing;
    }
    LeftOverRequest { near, far }.into()
}
