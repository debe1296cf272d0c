//! What every drawing of drawers must be.

use proptest::prelude::*;

use super::{drawer_elevation, drawer_plan_view};
use crate::drawer::{DrawerBoxPlan, drawer_box, example};
use crate::drawing::testing::{assert_legible, polygons};
use crate::drawing::{Drawing, Point, Role};
use crate::units::Mm;

fn drawings(plan: &DrawerBoxPlan) -> Vec<Drawing> {
    let views = (0..plan.drawers.len()).filter_map(|drawer| drawer_plan_view(plan, drawer));
    drawer_elevation(plan).into_iter().chain(views).collect()
}

/// An upright rectangle's extents, across and down.
fn extent(corners: &[Point]) -> (Mm, Mm) {
    (
        (corners[2].x - corners[0].x).abs(),
        (corners[2].y - corners[0].y).abs(),
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

    /// Nothing is drawn beside the sheet, no text lies on another, and drawers are to scale.
    #[test]
    fn everything_is_on_the_sheet(request in example::usual_request()) {
        let Ok(planned) = drawer_box(&request) else {
            return Err(TestCaseError::reject("no such drawers"));
        };
        let plan = planned.plan;
        for drawing in drawings(&plan) {
            assert_legible(&drawing);
        }
        if let Some(drawing) = drawer_elevation(&plan) {
            let fronts = polygons(&drawing, Role::BoardB);
            prop_assert_eq!(fronts.len(), plan.places.len());
            for (place, front) in plan.places.iter().zip(&fronts) {
                let drawer = &plan.drawers[place.drawer];
                let (width, height) = extent(front);
                prop_assert!((width - drawer.width).abs().mm() < 1e-6);
                prop_assert!((height - drawer.height).abs().mm() < 1e-6);
            }
            let opening = &polygons(&drawing, Role::Opening)[0];
            let floor = opening[2].y;
            let below = fronts.last().unwrap()[2].y;
            prop_assert!((floor - below - plan.places.last().unwrap().from_below).abs().mm() < 1e-6);
        }
    }
}

#[test]
fn there_is_no_view_of_what_is_not_there() {
    let plan = drawer_box(&example::chest()).unwrap().plan;
    assert!(drawer_plan_view(&plan, plan.drawers.len()).is_none());
    assert_eq!(drawings(&plan).len(), 2);
}
