//! The groove on the router table.

use notchwright_core::given::Given;
use notchwright_core::groove::{GrooveSetupPlan, GrooveSetupRequest, StoppedRequest, groove_setup};
use notchwright_core::message;

use super::{Draft, FieldProblem, Outcome, finish};
use crate::state::{Field, RoutField, WidthBy, Work};

pub(super) fn outcome(
    work: &Work,
    before: &Outcome<GrooveSetupPlan>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<GrooveSetupPlan> {
    let mut draft = Draft::new(work);
    let request = request(&mut draft);
    finish(draft, groove_setup(&request), before, problems)
}

fn request(draft: &mut Draft<'_>) -> GrooveSetupRequest {
    let width = width(draft);
    let mut length = |path, field| draft.length(path, Field::Rout(field));
    let from = length("stopped.from", RoutField::From);
    let to = length("stopped.to", RoutField::To);
    GrooveSetupRequest {
        from_edge: length("fromEdge", RoutField::FromEdge),
        width,
        bit: length("bit", RoutField::Bit),
        stopped: if from.is_missing() && to.is_missing() {
            Given::Missing
        } else {
            StoppedRequest { from, to }.into()
        },
        pass_depth: length("passDepth", RoutField::PassDepth),
        depth: length("depth", RoutField::Depth),
    }
}

fn width(draft: &mut Draft<'_>) -> Given<f64> {
    match draft.work().sled.rout.by {
        WidthBy::Width => draft.length("width", Field::Rout(RoutField::Width)),
        WidthBy::Sheet => {
            let sheet = draft.length("width", Field::Rout(RoutField::Sheet));
            let room = draft.length("width", Field::Rout(RoutField::Clearance));
            match (sheet, room) {
                (Given::Value(_), Given::Value(room)) if room < 0.0 => {
                    let says = message!["Room for the sheet cannot be less than none."];
                    draft.refuse("width", Some(Field::Rout(RoutField::Clearance)), says);
                    Given::Missing
                }
                (Given::Value(sheet), Given::Value(room)) => (sheet + room).into(),
                (sheet, _) => sheet,
            }
        }
    }
}
