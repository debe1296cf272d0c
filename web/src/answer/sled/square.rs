//! The five-cut test, this one's and those that were kept.

use notchwright_core::limits;
use notchwright_core::square::{SquareTestPlan, SquareTestRequest, square_test};
use notchwright_core::units::{Mm, parse_length};

use super::{Draft, FieldProblem, Outcome, finish};
use crate::answer::tools::KeptTest;
use crate::state::{Entry, Field, Item, JointField, SquareField, SquareTest, Work};

pub(super) fn outcome(
    work: &Work,
    before: &Outcome<SquareTestPlan>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<SquareTestPlan> {
    let mut draft = Draft::new(work);
    let mut length = |path, field| draft.length(path, Field::Square(field));
    let mut request = SquareTestRequest {
        fence_end: length("fenceEnd", SquareField::FenceEnd),
        free_end: length("freeEnd", SquareField::FreeEnd),
        apart: length("apart", SquareField::Apart),
        pivot_to_adjuster: length("pivotToAdjuster", SquareField::Pivot),
        reading_uncertainty: length("readingUncertainty", SquareField::Uncertainty),
        ..SquareTestRequest::default()
    };
    let thicknesses = [JointField::ThicknessA, JointField::ThicknessB];
    let read = thicknesses.map(|field| read(work.joint.entry(field)));
    // The strip is what it is, whatever is wrong with the boards.
    let can_be = limits::BOARD_THICKNESS.least..=limits::BOARD_THICKNESS.most;
    let thicker = read.into_iter().flatten().max().map(Mm::mm);
    if let Some(thickness) = thicker.filter(|thickness| can_be.contains(thickness)) {
        request.board_thickness = thickness.into();
    }
    finish(draft, square_test(&request), before, problems)
}

fn read(entry: &Entry) -> Option<Mm> {
    parse_length(&entry.text, entry.unit).ok()
}

/// The kept tests of the chosen sled.
pub(super) fn tests(work: &Work) -> Vec<KeptTest> {
    let chosen = work.shop.sleds.chosen().map(Item::id).unwrap_or_default();
    let tests = work.sled.tests.items().iter();
    tests
        .filter(|test| test.sled == chosen)
        .map(again)
        .collect()
}

fn again(test: &SquareTest) -> KeptTest {
    let length = |field| {
        let read = read(test.strip.entry(field));
        read.map_or_else(Default::default, |length| length.mm().into())
    };
    let request = SquareTestRequest {
        fence_end: length(SquareField::FenceEnd),
        free_end: length(SquareField::FreeEnd),
        apart: length(SquareField::Apart),
        pivot_to_adjuster: length(SquareField::Pivot),
        reading_uncertainty: length(SquareField::Uncertainty),
        ..SquareTestRequest::default()
    };
    let plan = square_test(&request).ok().map(|planned| planned.plan);
    KeptTest {
        id: test.id,
        date: test.date.text.clone(),
        per500: plan.as_ref().map(|plan| plan.per500),
        uncertainty: plan.map_or(Mm::ZERO, |plan| {
            Mm::constant(500.0) * plan.uncertainty_radians
        }),
    }
}
