//! Drawers, jointed with the chosen cutter on the chosen screw.

use notchwright_core::drawer::{
    AppliedFrontRequest, DrawerBottomRequest, DrawerBoxPlan, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerSizeRequest, drawer_box,
};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::wood::{ClimateRequest, SolidWoodRequest};

use super::corner::corner;
use super::{Draft, FieldProblem, Outcome, finish};
use crate::state::fields::{Known, drawer};
use crate::state::{Field, Work};

pub(super) fn outcome(
    work: &Work,
    before: &Outcome<DrawerBoxPlan>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<DrawerBoxPlan> {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    let mut found = Vec::new();
    let mut outcome = finish(draft, drawer_box(&request), before, &mut found);
    // The shop's fields are not beside these: what is wrong with them is said of all.
    let elsewhere = found
        .iter()
        .filter(|problem| !matches!(problem.field, Some(Field::Making(_))));
    let elsewhere = elsewhere.map(|problem| problem.message.clone());
    outcome.refused.extend(elsewhere);
    problems.extend(found);
    outcome
}

/// The drawers, if they are what the fields say.
pub(crate) fn plan(work: &Work) -> Option<DrawerBoxPlan> {
    let found = outcome(work, &Outcome::default(), &mut Vec::new());
    found.current().map(|planned| planned.plan.clone())
}

/// Room above a drawer in which nothing was typed, mm.
const USUAL_ABOVE: f64 = 2.0;
/// The same for the groove's distance from the lower edge, mm.
const USUAL_FROM_EDGE: f64 = 10.0;
/// The same for the groove's depth, mm, where half of the thinnest board is more.
const USUAL_DEPTH: f64 = 6.0;
/// Temperature of the air of a heated house, °C.
const USUAL_TEMPERATURE: f64 = 20.0;

fn request(draft: &mut Draft<'_>) -> DrawerBoxRequest {
    let is_opening = word(draft, drawer::SIZE) != "outside";
    let size = size(draft, is_opening);
    let count = draft.number("count", drawer::COUNT.alone());
    let side = board(draft, "side.thickness", drawer::SIDE);
    let front = board(draft, "front.thickness", drawer::FRONT);
    let back = board(draft, "back.thickness", drawer::BACK);
    let thinnest = match (&side, &front, &back) {
        (Given::Value(side), Given::Value(front), back) => Some(match back {
            Given::Value(back) => side.min(*front).min(*back),
            _ => side.min(*front),
        }),
        _ => None,
    };
    let wood = boards_wood(draft);
    let bottom = bottom(draft, thinnest);
    let moves = !wood.is_missing() || !bottom.wood.is_missing();
    DrawerBoxRequest {
        size: size.into(),
        count,
        heights: only(is_opening, || heights(draft)),
        between: if is_opening {
            draft.length("between", drawer::BETWEEN.alone())
        } else {
            Given::Missing
        },
        applied: applied(draft),
        joint: corner(draft).into(),
        bottom: bottom.into(),
        climate: only(moves, || climate(draft)),
        wood,
        side: BoardRequest { thickness: side }.into(),
        front: BoardRequest { thickness: front }.into(),
        back: only(!back.is_missing(), || BoardRequest { thickness: back }),
    }
}

fn only<T>(is_asked: bool, what: impl FnOnce() -> T) -> Given<T> {
    if is_asked {
        Given::Value(what())
    } else {
        Given::Missing
    }
}

/// The word chosen for a field; nothing while the first is meant.
pub(super) fn word<'a>(draft: &Draft<'a>, field: Known) -> &'a str {
    draft.work().job.making.drawer.text(field.name())
}

/// What is meant where nothing was typed.
fn usual(given: Given<f64>, usual: f64) -> Given<f64> {
    match given {
        Given::Missing => usual.into(),
        given => given,
    }
}

fn size(draft: &mut Draft<'_>, is_opening: bool) -> DrawerSizeRequest {
    let slides = word(draft, drawer::SLIDES);
    let mut length = |path, field: Known| draft.length(path, field.alone());
    let outside = DrawerSizeRequest {
        kind: "outside".into(),
        width: length("size.width", drawer::WIDTH),
        height: length("size.height", drawer::HEIGHT),
        depth: length("size.depth", drawer::DEPTH),
        ..DrawerSizeRequest::default()
    };
    if !is_opening {
        return outside;
    }
    let slides = if slides.is_empty() { "runners" } else { slides };
    DrawerSizeRequest {
        kind: "opening".into(),
        slides: slides.into(),
        side_clearance: length("size.sideClearance", drawer::ROOM),
        above: usual(length("size.above", drawer::ABOVE), USUAL_ABOVE),
        below: if slides == "runners" {
            Given::Missing
        } else {
            usual(length("size.below", drawer::BELOW), 0.0)
        },
        behind: length("size.behind", drawer::BEHIND),
        ..outside
    }
}

fn heights(draft: &mut Draft<'_>) -> DrawerHeightsRequest {
    match word(draft, drawer::HEIGHTS) {
        "graduated" => DrawerHeightsRequest {
            kind: "graduated".into(),
            step: draft.length("heights.step", drawer::STEP.alone()),
            ..DrawerHeightsRequest::default()
        },
        "ratio" => DrawerHeightsRequest {
            kind: "ratio".into(),
            ratio: draft.number("heights.ratio", drawer::RATIO.alone()),
            ..DrawerHeightsRequest::default()
        },
        _ => DrawerHeightsRequest {
            kind: "equal".into(),
            ..DrawerHeightsRequest::default()
        },
    }
}

fn board(draft: &mut Draft<'_>, path: &'static str, field: Known) -> Given<f64> {
    draft.length(path, field.alone())
}

/// A front is applied as soon as anything is said of it.
fn applied(draft: &mut Draft<'_>) -> Given<AppliedFrontRequest> {
    let fields = [drawer::APPLIED, drawer::APPLIED_LAP, drawer::APPLIED_GAP];
    let is_asked = fields.iter().any(|field| !word(draft, *field).is_empty());
    let mut length = |path, field: Known| draft.length(path, field.alone());
    only(is_asked, || AppliedFrontRequest {
        thickness: length("applied.thickness", drawer::APPLIED),
        lap: usual(length("applied.lap", drawer::APPLIED_LAP), 0.0),
        gap: length("applied.gap", drawer::APPLIED_GAP),
    })
}

fn bottom(draft: &mut Draft<'_>, thinnest: Option<f64>) -> DrawerBottomRequest {
    let depth = thinnest.map_or(USUAL_DEPTH, |thinnest| USUAL_DEPTH.min(thinnest / 2.0));
    let mut length = |path, field: Known| draft.length(path, field.alone());
    let from_edge = length("bottom.groove.fromEdge", drawer::GROOVE_FROM);
    DrawerBottomRequest {
        thickness: length("bottom.thickness", drawer::BOTTOM),
        clearance: length("bottom.clearance", drawer::BOTTOM_ROOM),
        groove: DrawerGrooveRequest {
            from_edge: usual(from_edge, USUAL_FROM_EDGE),
            depth: usual(length("bottom.groove.depth", drawer::GROOVE_DEPTH), depth),
            clearance: length("bottom.groove.clearance", drawer::GROOVE_ROOM),
            bit: length("bottom.groove.bit", drawer::GROOVE_BIT),
        }
        .into(),
        wood: bottom_wood(draft),
    }
}

fn boards_wood(draft: &mut Draft<'_>) -> Given<SolidWoodRequest> {
    wood(
        draft,
        [drawer::WOOD, drawer::SAWN, drawer::MOISTURE],
        "wood.moisture",
    )
}

fn bottom_wood(draft: &mut Draft<'_>) -> Given<SolidWoodRequest> {
    let fields = [
        drawer::BOTTOM_WOOD,
        drawer::BOTTOM_SAWN,
        drawer::BOTTOM_MOISTURE,
    ];
    wood(draft, fields, "bottom.wood.moisture")
}

/// Solid wood, once its species is chosen.
fn wood(
    draft: &mut Draft<'_>,
    [species, sawn, moisture]: [Known; 3],
    at: &'static str,
) -> Given<SolidWoodRequest> {
    let species = word(draft, species);
    let sawn = match word(draft, sawn) {
        "" => "flat",
        sawn => sawn,
    };
    only(!species.is_empty(), || SolidWoodRequest {
        species: species.into(),
        sawn: sawn.into(),
        moisture: draft.number(at, moisture.alone()),
        ..SolidWoodRequest::default()
    })
}

fn climate(draft: &mut Draft<'_>) -> ClimateRequest {
    let by_moisture = word(draft, drawer::AIR) == "moisture";
    let mut number = |path, field: Known| draft.number(path, field.alone());
    let both = ClimateRequest {
        kind: "moisture".into(),
        driest: number("climate.driest", drawer::DRIEST),
        wettest: number("climate.wettest", drawer::WETTEST),
        ..ClimateRequest::default()
    };
    if by_moisture {
        return both;
    }
    let temperature = number("climate.temperature", drawer::TEMPERATURE);
    ClimateRequest {
        kind: "humidity".into(),
        temperature: usual(temperature, USUAL_TEMPERATURE),
        ..both
    }
}
