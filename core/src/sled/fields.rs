//! What each field of a fit allows by itself.

use super::checked::{Section, Side};
use super::request::{
    BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledRequest, TableRequest,
};
use crate::check::{Checker, part};
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

pub(super) fn blade(request: &BladeRequest, check: &mut Checker<'_>) -> Option<(Mm, Mm)> {
    let diameter = check.length("diameter", &request.diameter, &limits::DIAMETER);
    let kerf = check.length("kerf", &request.kerf, &limits::KERF);
    Some((diameter?, kerf?))
}

pub(super) struct Table {
    pub(super) to_slot: Mm,
    pub(super) from_near_tooth: bool,
    pub(super) side: Side,
    pub(super) second: Option<Mm>,
    pub(super) section: Section,
    pub(super) front_to_arbor: Mm,
    pub(super) arbor_to_rear: Mm,
    pub(super) greatest_height: Mm,
}

pub(super) fn table(request: &TableRequest, check: &mut Checker<'_>) -> Option<Table> {
    let to_slot = check.length("bladeToSlot", &request.blade_to_slot, &limits::SLOT_PLACE);
    let places = [("centre", false), ("nearTooth", true)];
    let from_near_tooth = check.word_or("measuredFrom", &request.measured_from, &places, false);
    let side = check.word(
        "slotSide",
        &request.slot_side,
        &[("left", Side::Left), ("right", Side::Right)],
    );
    let front_to_arbor = check.length("frontToArbor", &request.front_to_arbor, &limits::TABLE);
    let arbor_to_rear = check.length("arborToRear", &request.arbor_to_rear, &limits::TABLE);
    let greatest_height = check.length(
        "greatestHeight",
        &request.greatest_height,
        &limits::SAW_HEIGHT,
    );
    let second = check.optional_length("secondSlot", &request.second_slot, &limits::SLOT_PLACE);
    let sections = [("plain", Section::Plain), ("t", Section::T)];
    let section = check.word_or(
        "slotSection",
        &request.slot_section,
        &sections,
        Section::Plain,
    );
    Some(Table {
        to_slot: to_slot?,
        from_near_tooth: from_near_tooth?,
        side: side?,
        second: second?,
        section: section?,
        front_to_arbor: front_to_arbor?,
        arbor_to_rear: arbor_to_rear?,
        greatest_height: greatest_height?,
    })
}

pub(super) struct Sled {
    pub(super) thickness: Mm,
    pub(super) width: Mm,
    pub(super) length: Mm,
    pub(super) margin: Mm,
    pub(super) blade_line: Option<Mm>,
    pub(super) carriage_face: Mm,
    pub(super) front_rail: Mm,
    pub(super) runner: Runner,
}

pub(super) fn sled(request: &SledRequest, check: &mut Checker<'_>) -> Option<Sled> {
    let base = part("base", &request.base, check, |base, check| {
        let thickness = check.length("thickness", &base.thickness, &limits::SLED_BASE);
        let width = check.length("width", &base.width, &limits::SLED);
        let length = check.length("length", &base.length, &limits::SLED);
        let margin = check.length_or("margin", &base.margin, &limits::MARGIN, Mm::ZERO);
        Some((thickness?, width?, length?, margin?))
    });
    let carriage_face = check.length("carriageFace", &request.carriage_face, &limits::ON_SLED);
    let front_rail = check.length("frontRail", &request.front_rail, &limits::ON_SLED);
    let runner = part("runner", &request.runner, check, runner);
    let blade_line = check.optional_length("bladeLine", &request.blade_line, &limits::ON_SLED);
    let (thickness, width, length, margin) = base?;
    Some(Sled {
        thickness,
        width,
        length,
        margin,
        blade_line: blade_line?,
        carriage_face: carriage_face?,
        front_rail: front_rail?,
        runner: runner?,
    })
}

pub(super) struct Runner {
    pub(super) near: Mm,
    pub(super) far: Mm,
    pub(super) width: Mm,
    pub(super) holes: Vec<Mm>,
    pub(super) hole_clearance: Option<Mm>,
}

fn runner(request: &RunnerRequest, check: &mut Checker<'_>) -> Option<Runner> {
    let near = check.length("contactNear", &request.contact_near, &limits::ON_RUNNER);
    let far = check.length("contactFar", &request.contact_far, &limits::ON_RUNNER);
    let width = check.length("width", &request.width, &limits::RUNNER_WIDTH);
    let holes = check.optional_lengths("holes", &request.holes, &limits::ON_RUNNER);
    let clearance = check.optional_length("holeClearance", &request.hole_clearance, &limits::PLAY);
    let (mut holes, hole_clearance) = (holes?, clearance?);
    holes.sort_unstable();
    holes.dedup();
    if hole_clearance.is_some() && holes.len() < 2 {
        let message = message!["Say where the holes are: at least the first and the last."];
        check.refuse("holes", Code::Missing, message, None);
    }
    Some(Runner {
        near: near?,
        far: far?,
        width: width?,
        holes,
        hole_clearance,
    })
}

pub(super) struct Cut {
    pub(super) depth: Mm,
    pub(super) board_thickness: Mm,
    pub(super) board_width: Option<Mm>,
    pub(super) clearance: Mm,
    pub(super) over: Mm,
    pub(super) carriage_travel: Option<Mm>,
}

const USUAL_CLEARANCE: Mm = Mm::constant(5.0);
const USUAL_OVER: Mm = Mm::constant(2.0);

pub(super) fn cut(request: &CutRequest, check: &mut Checker<'_>) -> Option<Cut> {
    let depth = check.length("depth", &request.depth, &limits::CUT_DEPTH);
    let board_thickness = check.length(
        "boardThickness",
        &request.board_thickness,
        &limits::BOARD_THICKNESS,
    );
    let board_width =
        check.optional_length("boardWidth", &request.board_width, &limits::BOARD_WIDTH);
    let clearance = check.length_or(
        "clearance",
        &request.clearance,
        &limits::MARGIN,
        USUAL_CLEARANCE,
    );
    let over = check.length_or("over", &request.over, &limits::MARGIN, USUAL_OVER);
    let carriage_travel =
        check.optional_length("carriageTravel", &request.carriage_travel, &limits::TRAVEL);
    Some(Cut {
        depth: depth?,
        board_thickness: board_thickness?,
        board_width: board_width?,
        clearance: clearance?,
        over: over?,
        carriage_travel: carriage_travel?,
    })
}

pub(super) fn left_over(request: &LeftOverRequest, check: &mut Checker<'_>) -> Option<(Mm, Mm)> {
    let near = check.length("near", &request.near, &limits::LEFT_OVER);
    let far = check.length("far", &request.far, &limits::LEFT_OVER);
    Some((near?, far?))
}
